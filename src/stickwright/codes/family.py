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
    def title(self, *, player: Name) -> str:
        """Heading of a page that sets up switches and controllers only."""

    @abstractmethod
    def lead(self, *, games: tuple[Name, ...], sticks: int, coarse: Name | None) -> str:
        """Which games it is for; that it has no stick of its own; `coarse`: that a stick breaks a rule of practice and is to be
        tried together with the practitioner."""

    @abstractmethod
    def none_fits_title(self, *, player: Name) -> str:
        """Heading where no stick fits yet."""

    @abstractmethod
    def no_plan_title(self, *, player: Name) -> str:
        """Heading where nothing could be planned."""

    @abstractmethod
    def not_instructions(self, *, measured: bool) -> str:
        """This page is no set-up instruction: it says what would help (`measured`) or what is still to be measured."""

    @abstractmethod
    def seat(self, *, support: Name | None) -> str:
        """The first step: the person."""

    @abstractmethod
    def place_switches(self, *, controllers: bool) -> str:
        """Place each switch where the picture shows its number; `controllers`: and each controller."""

    @abstractmethod
    def set_arms(self) -> str:
        """Set the mounting arms as their own pages of the sheet say."""

    @abstractmethod
    def hands_off(self) -> str:
        """Nobody touches a stick while it is plugged in."""

    @abstractmethod
    def plug_in_stick(self, *, stick: Name) -> str:
        """Plug in a stick; its socket is not known."""

    @abstractmethod
    def plug_in_others(self) -> str:
        """Plug in all the switches; their sockets are not known."""

    @abstractmethod
    def plug_cables(self, *, hubs: tuple[Name, ...]) -> str:
        """Plug each cable into its socket of this hub (or these): a list of `cable` follows. Ends with a colon."""

    @abstractmethod
    def cable(self, *, tag: Name, device: Name, socket: Text, hub: Name | None) -> str:
        """In that list: tag and device of a cable, and its socket; its hub where there are several."""

    @abstractmethod
    def switch_on(self, *, device: Name) -> str:
        """A controller without a cable, paired: switch it on."""

    @abstractmethod
    def start_game(self) -> str:
        """Start the game."""

    @abstractmethod
    def try_sticks(self, *, sticks: int) -> str:
        """Try the stick, or each of several, in four directions."""

    @abstractmethod
    def fit_parts(self, *, stick: Name, extension: Name | None, topper: Name | None) -> str:
        """What goes on the stick, from below: a shaft extension, a topper; neither: take the stick as it is."""

    @abstractmethod
    def raise_edge(self, *, edge: Literal["far", "near"], angle_rad: float) -> str:
        """Raise an edge of the base."""

    @abstractmethod
    def place_stick(self, *, site: Name, number: Name | None, touch: bool) -> str:
        """Place the stick where the picture shows its number (None: as drawn); the site rests on it, or touches the surface."""

    @abstractmethod
    def turn_base(self, *, turn_rad: float) -> str:
        """Turn the base so far from straight ahead, anticlockwise seen from above."""

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
    def stick_box(self, *, number: Name, stick: Name, site: Name) -> str:
        """Title of a box with what is set for one stick: its number in the picture, its name, its control site."""

    @abstractmethod
    def no_settings(self) -> str:
        """Nothing is to be set for a stick in the game."""

    @abstractmethod
    def cause(self, *, cause: Cause) -> str:
        """A usual cause of trouble, as a short question."""

    @abstractmethod
    def remedy(self, *, cause: Cause, turned: bool, wired: bool) -> str:
        """What to do about it; `turned`: a step turns a base; `wired`: a step names each socket."""

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
