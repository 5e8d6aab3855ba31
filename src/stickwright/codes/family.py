"""Page one of the sheet: for the family member who sets everything up tonight."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Cause", "Family", "Heading"]

Cause = Literal["unplugged", "socket", "standby", "touched", "moved"]
"""The five usual causes of trouble, quickest to rule out first."""
Heading = Literal["steps", "trouble", "found", "nearest", "help", "next", "stop", "safety", "socket", "contact", "date"]
"""Fixed words of the page; `stop` and `safety` stand over the same cautions, with and without a set-up."""


class Family(Topic):
    """Grade 6 or lower, second person, one instruction a sentence; no technical figure."""

    @abstractmethod
    def stick_title(self, *, player: Name) -> str:
        """Heading of a page that sets up a stick."""

    @abstractmethod
    def title(self, *, player: Name) -> str:
        """Heading of a page that sets up switches and controllers only."""

    @abstractmethod
    def none_fits_title(self, *, player: Name) -> str:
        """Heading where no stick fits yet."""

    @abstractmethod
    def no_plan_title(self, *, player: Name) -> str:
        """Heading where nothing could be planned."""

    @abstractmethod
    def lead(self, *, site: Name, game: Name | None, coarse: Name | None) -> str:
        """For which site and game; `coarse` names a stick that breaks a rule of practice, since none keeps them all."""

    @abstractmethod
    def switches_lead(self, *, game: Name | None) -> str:
        """Under the heading where there is no stick."""

    @abstractmethod
    def not_instructions(self, *, measured: bool) -> str:
        """This page is no set-up instruction: it says what would help (`measured`) or what is still to be measured."""

    @abstractmethod
    def seat(self, *, support: Name | None) -> str:
        """The first step: the person."""

    @abstractmethod
    def place_switches(self) -> str:
        """Place switches and controllers by their numbers in the picture on the next page."""

    @abstractmethod
    def fit_parts(self, *, stick: Name, extension: Name | None, topper: Name | None) -> str:
        """What goes on the stick, from below: a shaft extension, a topper; neither: take the stick as it is."""

    @abstractmethod
    def raise_edge(self, *, edge: Literal["far", "near"], angle_rad: float) -> str:
        """Raise an edge of the base."""

    @abstractmethod
    def place_stick(self, *, site: Name, touch: bool) -> str:
        """Place the stick as drawn, so that the site rests on it (or touches the surface)."""

    @abstractmethod
    def drawn_turned(self, *, turn_rad: float) -> str:
        """The base is drawn turned, from straight ahead, anticlockwise seen from above."""

    @abstractmethod
    def turn_base(self, *, turn_rad: float) -> str:
        """Turn the base so far from straight ahead, anticlockwise seen from above."""

    @abstractmethod
    def plug_in_stick(self) -> str:
        """Hands off the stick, plug in, start the game."""

    @abstractmethod
    def plug_in_switches(self, *, wiring_page: bool) -> str:
        """Hands off, plug each in (by the page Wiring, where there is one), start the game."""

    @abstractmethod
    def try_stick(self) -> str:
        """Try the stick in four directions."""

    @abstractmethod
    def try_switches(self) -> str:
        """Press each one once."""

    @abstractmethod
    def plug(self, *, plug: Name | None) -> str:
        """Which plug; None: it is seen on the lead."""

    @abstractmethod
    def socket(self, *, socket: Text, hub: Name, tag: Name) -> str:
        """Socket of a hub and the tag of the cable in it; stands behind the heading `socket`."""

    @abstractmethod
    def plug_into(self, *, plug: Text, socket: Text) -> str:
        """The two above in one line, for a further stick."""

    @abstractmethod
    def cause(self, *, cause: Cause) -> str:
        """A usual cause of trouble, as a short question."""

    @abstractmethod
    def remedy(self, *, cause: Cause, turned: bool) -> str:
        """What to do about it; `turned`: step 2 turns the base."""

    @abstractmethod
    def check_sockets(self, *, wiring_page: bool) -> str:
        """What to do about a wrong socket where there is no stick."""

    @abstractmethod
    def other_controls(self) -> str:
        """That all other controls are on the next page."""

    @abstractmethod
    def further_stick(self, *, site: Name, setup: Text) -> str:
        """A further stick, drawn on a page further back."""

    @abstractmethod
    def none_fits(self, *, setups: int, site: Name) -> str:
        """So many set-ups were tried and none fits."""

    @abstractmethod
    def comes_nearest(self, *, setup: Text, why: Text) -> str:
        """The set-up that comes nearest, and sentences on why it does not fit."""

    @abstractmethod
    def other_site(self, *, site: Name, told: Text) -> str:
        """The answer for another site."""

    @abstractmethod
    def nothing_tried(self) -> str:
        """No set-up could be computed."""

    @abstractmethod
    def nothing_helps(self) -> str:
        """No single change helps."""

    @abstractmethod
    def heading(self, *, part: Heading) -> str:
        """Headings: the steps of the set-up, what to do if it does not work, what was found, what comes nearest, what would help most,
        what to do next, safety. Labels of lines: socket, whom to contact, date."""

    @abstractmethod
    def undated(self) -> str:
        """In the place of a date."""
