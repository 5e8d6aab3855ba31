"""Page one of the sheet, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.family import Cause, Family, Heading
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_CAUSES = {
    "unplugged": "Is it plugged in?",
    "socket": "Is it in the right socket?",
    "standby": "Is it in standby?",
    "touched": "Was the stick touched at switch-on?",
    "moved": "Has the base moved?",
}
_REMEDIES = {
    "unplugged": "Push the plug fully in, at both ends.",
    "socket": "Compare each cable with the steps on page 1.",
    "standby": "Wake the console or computer. Then wait.",
    "touched": "Unplug it. Take your hands off the stick. Plug it in again.",
    "moved": "Put it back as drawn.",
}
_HEADINGS: dict[Heading, str] = {
    "steps": "Set it up in this order",
    "trouble": "If it does not work",
    "found": "What was found",
    "nearest": "What comes nearest",
    "help": "What would help most",
    "next": "What to do next",
    "stop": "Safety: when to stop",
    "safety": "Safety",
    "socket": "Socket:",
    "contact": "Contact:",
    "date": "Date:",
}


class Texts(Family):
    """For the family member who sets everything up tonight."""

    w: English

    def title(self, *, player: Name) -> str:
        return f"Set-up for player {self.w.name(player)}"

    def lead(self, *, games: tuple[Name, ...], sticks: int, coarse: Name | None) -> str:
        told = [f"To play: {self.w.names(games)}."] if games else []
        told += ["This set-up has no stick."] if not sticks else []
        if coarse:
            told += [
                f"No stick fits well yet. {self.w.name(coarse)} is the nearest, but it breaks a rule of practice. It may be coarse or "
                "tiring. Try it with the practitioner first."
            ]
        return " ".join(told)

    def none_fits_title(self, *, player: Name) -> str:
        return f"No stick fits yet: player {self.w.name(player)}"

    def no_plan_title(self, *, player: Name) -> str:
        return f"No plan yet: player {self.w.name(player)}"

    def not_instructions(self, *, measured: bool) -> str:
        told = "what was found and what would help" if measured else "what still needs to be measured"
        return f"Do not set anything up from this page. It says {told}."

    def seat(self, *, support: Name | None) -> str:
        return f"Seat the player in their gaming position.{f' Support: {self.w.typed(support)}.' if support else ''}"

    def place_switches(self, *, controllers: bool) -> str:
        what = "each switch and each controller" if controllers else "each switch"
        return f"Place {what} where the picture shows its number."

    def set_arms(self) -> str:
        return "Set each arm as its own page shows."

    def hands_off(self) -> str:
        return "Keep hands off the sticks while you plug in."

    def plug_in_stick(self, *, stick: Name) -> str:
        return f"Plug in {self.w.name(stick)}."

    def plug_in_others(self) -> str:
        return "Plug in each switch."

    def plug_cables(self, *, hubs: tuple[Name, ...]) -> str:
        return f"Plug each cable into its socket on {self.w.names(hubs)}:"

    def cable(self, *, tag: Name, device: Name, socket: Text, hub: Name | None) -> str:
        on = f" on {self.w.name(hub)}" if hub else ""
        return f"{self.w.name(tag)} ({self.w.name(device)}): {self.say(socket)}{on}"

    def switch_on(self, *, device: Name) -> str:
        return f"Switch on {self.w.name(device)}."

    def start_game(self) -> str:
        return "Start the game."

    def try_sticks(self, *, sticks: int) -> str:
        which = self.w.plural(sticks, one="the stick", other="each stick")
        return f"Try {which} forward, right, back and left."

    def fit_parts(self, *, stick: Name, extension: Name | None, topper: Name | None) -> str:
        below = [f"the extension {self.w.name(extension)}"] if extension else []
        parts = [*below, *([f"the {self.w.name(topper)}"] if topper else [])]
        if not parts:
            return f"Take {self.w.name(stick)}."
        return f"Put {self.w.all_of(tuple(parts))} on {self.w.name(stick)}."

    def raise_edge(self, *, edge: Literal["far", "near"], angle_rad: float) -> str:
        return f"Raise the {edge} edge of the base by {self.w.amount(angle_rad, 'deg')}."

    def place_stick(self, *, site: Name, number: Name | None, touch: bool) -> str:
        where = f"where the picture shows {self.w.name(number)}" if number else "as drawn"
        how = "touches the middle of its surface" if touch else "rests on its top and does not push it over"
        return f"Place it {where}. Check that the {self.w.name(site)} {how}."

    def turn_base(self, *, turn_rad: float) -> str:
        return f"Turn its base {self.w.turn(turn_rad)} from straight ahead, seen from above."

    def try_switches(self) -> str:
        return "Press each switch once."

    def plug(self, *, plug: Name | None) -> str:
        return f"Plug: {self.w.name(plug)}." if plug else "Plug: see the lead."

    def socket(self, *, socket: Text, hub: Name, tag: Name) -> str:
        return f"{self.say(socket)} on {self.w.name(hub)} (cable {self.w.name(tag)})."

    def plug_into(self, *, plug: Text, socket: Text) -> str:
        return f"{self.say(plug)} Socket: {self.say(socket)}"

    def stick_box(self, *, number: Name, stick: Name, site: Name) -> str:
        return f"Settings for {self.w.name(number)}: {self.w.name(stick)} ({self.w.name(site)})"

    def no_settings(self) -> str:
        return "Leave the settings in the game as they are."

    def cause(self, *, cause: Cause) -> str:
        return _CAUSES[cause]

    def remedy(self, *, cause: Cause, turned: bool, wired: bool) -> str:
        if cause == "moved" and turned:
            return "Put it back as drawn. Turn it as its step says."
        if cause == "socket" and not wired:
            return "Compare it with the marks on the leads."
        return _REMEDIES[cause]

    def none_fits(self, *, setups: int, site: Name) -> str:
        tried = self.w.plural(
            setups, one="One set-up was tried, and it does", other=f"{setups} set-ups were tried, and none of them"
        )
        return f"{tried}{self.w.plural(setups, one=' not fit', other=' fits')} the {self.w.name(site)} yet."

    def comes_nearest(self, *, setup: Text, why: Text) -> str:
        return f"{self.clause(setup)}. {self.say(why)}"

    def other_site(self, *, site: Name, told: Text) -> str:
        return f"{self.w.name(site)}: {self.say(told)}"

    def nothing_tried(self) -> str:
        return "No set-up could be tried."

    def nothing_helps(self) -> str:
        return "No single change of stick, topper, extension or tilt helps."

    def heading(self, *, part: Heading) -> str:
        return _HEADINGS[part]

    def undated(self) -> str:
        return "not dated"
