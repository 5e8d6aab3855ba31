"""What holds a device, with its numbers, for the pages of the mounts and the terminal."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Message, Name, Text, Topic
from stickwright.codes.mount_rules import DeviceKind

__all__ = ["Head", "MountLines", "Push", "Result", "Row"]

Push = Literal["working", "involuntary", "weight"]
"""What loads a mount: the hardest comfortable push, a spasm, its own weight."""
Result = Literal["pass", "confirm", "fail"]
Row = Literal["part", "fastener", "clamp", "breakaway", "other_places", "place", "turn"]

Head = Literal[
    "fixed_points", "from", "to", "distance", "set_joints", "monthly", "photos", "strength", "what", "push", "load", "limit",
    "factor", "required", "result", "others", "switches", "switch", "held_by", "least", "unmounted",
]  # fmt: skip
"""Headings of a page about mounts and of its tables."""


class MountLines(Topic):
    """Each a sentence, except where it says label or clause. Load and limit are amounts with their units."""

    @abstractmethod
    def heading(self, *, device: Name, site: Name) -> str:
        """Heading of a page: a device at a control site."""

    @abstractmethod
    def block(self, *, site: Name) -> str:
        """Heading of a block of lines about one control site."""

    @abstractmethod
    def of_player(self, *, player: Name) -> str:
        """Heading of the page that shows all mounts of a player."""

    @abstractmethod
    def device_at(self, *, device: Name, pieces: int, site: Name) -> str:
        """Label: a device, how many of it, and its control site."""

    @abstractmethod
    def head(self, *, head: Head) -> str:
        """Heading of a part of a page, or of a column: from a landmark, to a point of the mount; what a check is of; with the least
        to spare; devices without a page of their own."""

    @abstractmethod
    def row(self, *, row: Row) -> str:
        """Label of a row that says how one thing is set."""

    @abstractmethod
    def caution_in_line(self, *, text: Text) -> str:
        """A caution within a paragraph."""

    @abstractmethod
    def for_sites(self, *, sites: tuple[Name, ...], text: Text) -> str:
        """A caution that concerns these control sites alone."""

    @abstractmethod
    def assumed(self, *, text: Text) -> str:
        """Something that was not measured, and what stands in for it: a clause, marked as assumed."""

    @abstractmethod
    def assumed_head(self) -> str:
        """Label before everything that is assumed."""

    @abstractmethod
    def all_assumed(self, *, texts: tuple[Text, ...]) -> str:
        """Everything that is assumed, in one sentence; clauses."""

    @abstractmethod
    def clock_head(self) -> str:
        """Label before what is said of directions on a clock face."""

    @abstractmethod
    def held_by(self, *, mount: Name, on: Name | None, fixed: Text | None, along: Text | None) -> str:
        """What holds it, on what; its fastener, and where its clamp sits (clauses)."""

    @abstractmethod
    def patch(self, *, fastener: Name, long_m: float, short_m: float) -> str:
        """Clause: a fastener and the size of its patch."""

    @abstractmethod
    def parts(self, *, parts: tuple[Text, ...]) -> str:
        """Label: all that it takes."""

    @abstractmethod
    def release(
        self, *, coupling: Name, low_nm: float, high_nm: float | None, low_n: float | None, high_n: float | None, agreed: bool
    ) -> str:  # fmt: skip
        """The breakaway coupling and between what moments at the clamp it is set to let go (None: no upper end); the same at the
        contact point, for a push along with the weight; `agreed`: whether the clinic agreed the upper end."""

    @abstractmethod
    def counted(self, *, times_factor: float) -> str:
        """How a working push is counted."""

    @abstractmethod
    def lever(self, *, device_m: float, under_m: float | None) -> str:
        """The lever at which a push tips the base or pulls at its fastener: contact point to underside, and (None: nothing) from
        there to what it stands on."""

    @abstractmethod
    def cable(self, *, whole_m: float, slack_m: float | None) -> str:
        """The cable along the mount, and how much of it lets the joints move."""

    @abstractmethod
    def clearance(self, *, clear_m: float, nearest: Name) -> str:
        """Minimum clearance to a space that must stay free, over the whole tilt."""

    @abstractmethod
    def comes_off(self, *, time_s: float) -> str:
        """How long it takes to take off."""

    @abstractmethod
    def push(self, *, push: Push) -> str:
        """Label in a table: which push."""

    @abstractmethod
    def result(self, *, result: Result) -> str:
        """Label in a table: whether a check passes, or what was assumed decides it."""

    @abstractmethod
    def check(
        self, *, name: Message, push: Push | None, result: Result, told: Text, why: Text | None, confirm: tuple[Text, ...],
        assumed: Text | None,
    ) -> str:  # fmt: skip
        """One check in a line: its name, its push, load of limit; a clause where figures do not say it all; what to measure."""

    @abstractmethod
    def check_cell(self, *, name: Message, why: Text | None, confirm: tuple[Text, ...], assumed: Text | None) -> str:
        """The name of a check in a table, with what belongs to its number."""

    @abstractmethod
    def load_of(self, *, load: Text, limit: Text, factor: Message) -> str:
        """Clause: load, limit, and the safety factor."""

    @abstractmethod
    def factor(self, *, safety_factor: float | None, unloaded: bool, required_factor: float) -> str:
        """Clause: the safety factor there is (None: not known; `unloaded`: nothing loads it) and the one required."""

    @abstractmethod
    def factor_cell(self, *, safety_factor: float | None, unloaded: bool, required_factor: float) -> str:
        """The safety factor in a table, never rounded up to what is required."""

    @abstractmethod
    def unloaded(self) -> str:
        """Clause: nothing loads it."""

    @abstractmethod
    def not_known(self) -> str:
        """Clause: load or limit is not known."""

    @abstractmethod
    def least(self, *, name: Message, factor: Message) -> str:
        """The check with the least to spare."""

    @abstractmethod
    def flex_unknown(self) -> str:
        """How much of the travel the flex of the mount takes is not known; how to find out."""

    @abstractmethod
    def flex(self, *, lost_share: float, kind: DeviceKind) -> str:
        """How much of the travel the flex of the mount takes."""

    @abstractmethod
    def sags(self, *, droop_m: float, droop_rad: float) -> str:
        """How far it bends down, and turns, under its load."""

    @abstractmethod
    def natural(self, *, natural_hz: float, least_hz: float, slow: bool) -> str:
        """The natural frequency of the mount; `slow`: lower than the least, so that a knock becomes input."""

    @abstractmethod
    def also_passes(
        self, *, way: Message, spare_factor: float | None, lost_share: float | None, taken_by: tuple[Name, ...],
        confirm: tuple[Text, ...],
    ) -> str:  # fmt: skip
        """Another way of mounting that passes: how many times what is required, its flex, which sites have what it needs, what to
        confirm first."""

    @abstractmethod
    def fails(self, *, way: Message, refused: bool, why: tuple[Text, ...], change: Text | None) -> str:
        """A way of mounting that fails, or that a safety rule refuses: why, and the smallest change."""

    @abstractmethod
    def more(self, *, count: int) -> str:
        """So many other ways of mounting are not printed; where they are."""
