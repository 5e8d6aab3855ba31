"""What to set for a stick in a game or a hub, how the numbers come about, and how to undo them."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name, Text, Topic

__all__ = ["Offered", "StickSettings"]

Offered = Literal["dead zone", "sensitivity"]
"""What a game may let one set, as its file says it."""


class StickSettings(Topic):
    """Read by the family and the practitioner alike: an instruction a sentence."""

    @abstractmethod
    def in_game(self, *, stick: Name, numbers: Text) -> str:
        """The two numbers to set in the game, for the family."""

    @abstractmethod
    def in_each_game(self, *, sticks: tuple[Name, ...], games: tuple[Name, ...], numbers: tuple[Text, ...]) -> str:
        """The same where there are several games: the numbers of each."""

    @abstractmethod
    def nothing_yet(self) -> str:
        """Nothing is to be set in the game yet."""

    @abstractmethod
    def change_nothing(self, *, why: Text) -> str:
        """Nothing is to be set in a game yet, and why (a clause); a table cell."""

    @abstractmethod
    def numbers(self, *, dead_zone_share: float, sensitivity_share: float) -> str:
        """The two numbers, as they stand on every page: a clause."""

    @abstractmethod
    def numbers_offered(self, *, dead_zone_share: float | None, sensitivity_share: float | None) -> str:
        """The same in a table cell; None for what the game does not offer."""

    @abstractmethod
    def set_for(self, *, stick: Name, numbers: Text) -> str:
        """The two numbers to set in the game, for the practitioner."""

    @abstractmethod
    def gains(self, *, stick: Name, directions_rad: tuple[float, ...], gains_factor: tuple[float, ...]) -> str:
        """The sensitivity in each of some directions of a stick that was not recorded; that it is assumed, and what to
        record."""

    @abstractmethod
    def gains_basis(
        self, *, directions_rad: tuple[float, ...], reach_share: tuple[float, ...], limit_factor: float
    ) -> str:
        """What these are worked out from: 1 over the share of travel that the readings predict."""

    @abstractmethod
    def other_stick(self, *, tuned: Name, stick: Name) -> str:
        """The settings were found on another stick."""

    @abstractmethod
    def other_setup(self, *, without: tuple[Text, ...], having: tuple[Text, ...]) -> str:
        """The settings were found on another set-up: without some parts, with others."""

    @abstractmethod
    def extension(self, *, extension: Name) -> str:
        """A shaft extension, in a list of parts."""

    @abstractmethod
    def zone_basis(
        self,
        *,
        dead_zone_share: float,
        off_centre_share: float,
        radius_share: float,
        how: Literal["none", "rounded_up", "nearest"],
    ) -> str:
        """How the dead zone for the game comes about: rest lies so far off centre and has such a radius; the game offers
        none, the sum is rounded up, or another number comes nearest to the full response."""

    @abstractmethod
    def sensitivity_basis(
        self, *, sensitivity_share: float, low_share: float, high_share: float, task: Literal["rim", "push", ""]
    ) -> str:
        """How the sensitivity for the game comes about: fitted over the player's reach in such a task."""

    @abstractmethod
    def no_settings(self, *, faults: tuple[Text, ...]) -> str:
        """No settings are given, and the faults of the recordings (sentences)."""

    @abstractmethod
    def undo(self, *, dead_zone_share: float | None, sensitivity_share: float | None, others: Name | None) -> str:
        """What to go back to (None: nobody noted it, so note it before anything is changed), and what else somebody noted.
        A clause."""

    @abstractmethod
    def to_undo(self, *, told: Text) -> str:
        """The same as a sentence."""

    @abstractmethod
    def which_zone(
        self, *, counted_share: float | None, corrected_share: float, typed_share: float, off_centre_share: float | None
    ) -> str:
        """Which dead zone on the page is which: the one that the choice of the stick counts on (None: another stick), the
        one for software that corrects the centre first, the one to set in the game, and why they differ (None: rest is
        centred)."""

    @abstractmethod
    def in_short(self, *, stick: Name, dead_zone: Estimate, rotation: Text, numbers: Text) -> str:
        """A further tuning in one line: dead zone, rotation, the two numbers for the game."""

    @abstractmethod
    def in_short_none(self, *, stick: Name, told: Text) -> str:
        """A further tuning in one line, where no settings are given."""

    @abstractmethod
    def rotation(self, *, turn: Estimate) -> str:
        """By how much the output is turned, with its interval; also in brackets."""

    @abstractmethod
    def tuning_of(self, *, setup: Text) -> str:
        """Heading of a tuning."""

    @abstractmethod
    def settings_of(self, *, stick: Name) -> str:
        """Heading of settings that were not recorded."""

    @abstractmethod
    def found_in(self, *, recordings: tuple[Name, ...]) -> str:
        """Which recordings a tuning comes from; the table of its steps follows."""

    @abstractmethod
    def found_in_many(self, *, recordings: int, setup: Text) -> str:
        """The same for more than can be named."""

    @abstractmethod
    def own_recording(self, *, recording: Name) -> str:
        """Caption of a recording before and after tuning."""

    @abstractmethod
    def row(self, *, part: Literal["deflection", "output"]) -> str:
        """Head of a row in the table of a curve."""

    @abstractmethod
    def of_stick(self, *, stick: Name, site: Name, what: Literal["to_set", "to_undo", "jump", "filter"]) -> str:
        """Head of a row in the table of settings by game: what to set for a stick at a site, in the game or in the hub."""

    @abstractmethod
    def setting(self) -> str:
        """Head of the first column of that table."""

    @abstractmethod
    def profiles(self) -> str:
        """Under that table."""

    @abstractmethod
    def unused(self) -> str:
        """Table cell: the game does not use the stick."""

    @abstractmethod
    def output_start(self, *, start_share: float | None) -> str:
        """Table cell: output just outside the dead zone; None: not known."""

    @abstractmethod
    def filter_stays(self, *, late_s: float | None) -> str:
        """Table cell: the filter stays as it was found, or is switched off because it makes the game late by so much."""
