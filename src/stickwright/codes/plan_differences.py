"""Two plans of one visit beside each other."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name, Text, Topic

__all__ = ["ComparedRow", "PlanDifferences"]

ComparedRow = Literal["stick", "deflection", "effort", "control", "unintended", "mount"]


class PlanDifferences(Topic):
    """Two plans of one visit beside each other."""

    @abstractmethod
    def not_in_plan(self) -> str:
        """Cell: the action is not in this plan."""

    @abstractmethod
    def done_by(self, *, how: Literal["option", "dropped", "chord", "helper"]) -> str:
        """Cell: how an action is done without a device of its own."""

    @abstractmethod
    def site_on(self, *, site: Name, device: Text) -> str:
        """Cell: a control site on a device."""

    @abstractmethod
    def row(self, *, site: Name, what: ComparedRow) -> str:
        """First cell of a row: what is compared at a control site."""

    @abstractmethod
    def bits(self, *, value: Estimate) -> str:
        """Cell: control in bits, with its interval."""

    @abstractmethod
    def mounted(self, *, mount: Name, on: Name) -> str:
        """Cell: a mount and what it is fixed to."""

    @abstractmethod
    def nothing_said(self) -> str:
        """Cell: mounts were not planned."""

    @abstractmethod
    def nothing_holds(self) -> str:
        """Cell: no mount passes."""

    @abstractmethod
    def none_common(self) -> str:
        """The plans share no action."""

    @abstractmethod
    def actions_changed(self, *, changed: int, of: int) -> str:
        """So many actions are done in another way."""

    @abstractmethod
    def whole(self, *, actions: Text) -> str:
        """The sentence without scores."""

    @abstractmethod
    def same_score(self, *, actions: Text) -> str:
        """Both plans score the same."""

    @abstractmethod
    def better(self, *, actions: Text, first: bool, gap_points: float) -> str:
        """One plan scores more."""

    @abstractmethod
    def other_games(self, *, first: Name, second: Name) -> str:
        """The plans were made for different games."""

    @abstractmethod
    def asked_otherwise(self, *, actions: tuple[Name, ...]) -> str:
        """The game has the same name but other needs for some actions."""

    @abstractmethod
    def other_sticks(self, *, first: tuple[Name, ...], second: tuple[Name, ...]) -> str:
        """Sticks that only one of the plans had to choose from."""

    @abstractmethod
    def other_parts(self, *, first: tuple[Text, ...], second: tuple[Text, ...]) -> str:
        """Parts that only one of the plans uses."""
