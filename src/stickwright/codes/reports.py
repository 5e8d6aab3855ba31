"""What a practitioner reads of a plan in the terminal."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name, Text, Topic
from stickwright.codes.sites import Part

__all__ = ["Heading", "Reports", "Verdict"]

Heading = Literal[
    "devices", "next", "cautions", "assumed", "findings", "ability", "recordings",
]  # fmt: skip
Verdict = Literal["fits", "fits with its range widened", "does not fit"]


class Reports(Topic):
    """Headings, and lines that are sentences or begin with a label."""

    @abstractmethod
    def head(self, *, player: Name, made_on: Name | None, version: Name) -> str:
        """First line: whose plan, made when (YYYY-MM-DD), by which version of the program."""

    @abstractmethod
    def heading(self, *, part: Heading) -> str:
        """Headings: settings and modes of devices, the next reading, cautions, what is assumed, findings, ability at a
        site, recordings."""

    @abstractmethod
    def caution(self, *, text: Text) -> str:
        """A caution beside the figures that it concerns."""

    @abstractmethod
    def assumption(self, *, what: Text, value: Text, why: Text, confirm: Text) -> str:
        """What is assumed, why, and what would replace it."""

    @abstractmethod
    def simulations(self, *, count: int, seed: int) -> str:
        """Last line: how many simulations, the start of their random numbers, and what the intervals are."""

    @abstractmethod
    def site(self, *, site: Name, part: Part | None, action: Name | None) -> str:
        """Heading of a control site: its name, part of the body, and the action that it was judged for (None: any)."""

    @abstractmethod
    def ranked_heading(self, *, setups: int) -> str:
        """Heading of the sticks at a site, of so many set-ups."""

    @abstractmethod
    def none_computed(self) -> str:
        """In its place where no set-up could be computed."""

    @abstractmethod
    def ranked(self, *, rank: int, setup: Text, verdict: Verdict, confirm: bool) -> str:
        """A set-up in the ranking and whether it fits; `confirm`: only at figures nobody measured."""

    @abstractmethod
    def ranked_low(self, *, rank: int, setup: Text, limit: Text) -> str:
        """A set-up far down, and what limits it."""

    @abstractmethod
    def figures(
        self,
        *,
        direction_rad: float,
        weakest: Estimate,
        effort: Text,
        unintended: Text,
        dead_zone_share: float,
        bits: Estimate,
        best_share: float,
    ) -> str:
        """Predicted figures of a set-up: travel in the weakest direction, effort, unintended activations at a dead zone,
        precision, chance that it is best or as good."""

    @abstractmethod
    def ability(self, *, direction: Text, force: Text, reach: Text, readings: Text) -> str:
        """Comfortable force and movement range in one direction, and how many readings of force."""

    @abstractmethod
    def resting(self, *, rest: Estimate, involuntary: Estimate) -> str:
        """Resting force of the limb, and the involuntary force."""

    @abstractmethod
    def stiffness(self, *, stiffness: Estimate) -> str:
        """The limb's own stiffness."""

    @abstractmethod
    def lost(self, *, lost: Estimate) -> str:
        """Share of the force lost from the first to the last reading."""

    @abstractmethod
    def told_of(self, *, recordings: tuple[Name, ...], finding: Text) -> str:
        """A finding, behind the recordings that it was made in."""

    @abstractmethod
    def quiet(self, *, recordings: tuple[Name, ...]) -> str:
        """Recordings in which there is nothing to look at."""

    @abstractmethod
    def setting(self, *, step: Text, told: Text) -> str:
        """A step of a tuning and its setting."""
