"""Leads that a cable lacks, and what its length is made of."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Message, Name, Topic
from stickwright.codes.plugs import PlugKind

__all__ = ["Cables", "LeadKind"]

LeadKind = Literal["extension", "adapter", "splitter"]


class Cables(Topic):
    """Each a label or a clause; `label`: as the name of a part, else within a sentence."""

    @abstractmethod
    def extension(self, *, plug: PlugKind, least_m: float, label: bool) -> str:
        """An extension lead to look for: its plug, and how long it is at least."""

    @abstractmethod
    def adapter(self, *, plug: PlugKind, socket: PlugKind, label: bool) -> str:
        """An adapter to look for: what goes into it, and the socket that it goes to."""

    @abstractmethod
    def splitter(self, *, plug: PlugKind, ways: int, label: bool) -> str:
        """A splitter to look for: its plug, and how many ways it has."""

    @abstractmethod
    def lacks(self, *, kind: LeadKind, least_m: float | None) -> str:
        """In a drawing: a lead that is missing; how long it is at least, where that matters."""

    @abstractmethod
    def way_assumed(self, *, to_hub_m: float) -> str:
        """The way of a cable was not measured with a tape: what stands in for it."""

    @abstractmethod
    def parts(
        self, *, tags: tuple[Name, ...], tied_m: float, assumed: bool, mount_m: float | None, joints_m: float | None,
        tilt_m: float | None, loop_m: float | None, needed_m: float,
    ) -> str:  # fmt: skip
        """What the length of one or more cables is made of: tied to the hub (or assumed), along the mount, for its joints to move,
        for the tilt, a loop (None: nothing); and their sum."""

    @abstractmethod
    def all_of(self, *, leads: tuple[Message, ...]) -> str:
        """Everything that one cable lacks."""
