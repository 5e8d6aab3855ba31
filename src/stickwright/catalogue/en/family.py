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
    "socket": "Compare it with the socket named above.",
    "standby": "Wake the console or computer, then wait.",
    "touched": "Unplug it. Take your hands off the stick. Plug it in again.",
    "moved": "Put it back as drawn.",
}
_HEADINGS: dict[Heading, str] = {
    "steps": "Set up in three steps",
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

    def stick_title(self, *, player: Name) -> str:
        return f"Stick set-up for player {self.w.name(player)}"

    def title(self, *, player: Name) -> str:
        return f"Set-up for player {self.w.name(player)}"

    def none_fits_title(self, *, player: Name) -> str:
        return f"No stick fits yet: player {self.w.name(player)}"

    def no_plan_title(self, *, player: Name) -> str:
        return f"No plan yet: player {self.w.name(player)}"

    def lead(self, *, site: Name, game: Name | None, coarse: Name | None) -> str:
        out = f"For the {self.w.name(site)}{f', to play: {self.w.name(game)}' if game else ''}."
        if coarse:
            out += (
                f" {self.w.name(coarse)} comes nearest but breaks a rule of practice: it will be coarse or tiring. Try it "
                "together with the practitioner first."
            )
        return out

    def switches_lead(self, *, game: Name | None) -> str:
        to_play = f"To play: {self.w.name(game)}. " if game else ""
        return f"{to_play}This set-up has no stick. The next page shows each control and what it does."

    def not_instructions(self, *, measured: bool) -> str:
        told = "what was found and what would help" if measured else "what still needs to be measured"
        return f"Do not set anything up from this page. It says {told}."

    def seat(self, *, support: Name | None) -> str:
        return f"Seat the player in their gaming position.{f' Support: {self.w.typed(support)}.' if support else ''}"

    def place_switches(self) -> str:
        return "Place each switch and controller where the picture on the next page shows its number."

    def fit_parts(self, *, stick: Name, extension: Name | None, topper: Name | None) -> str:
        below = [f"the extension {self.w.name(extension)}"] if extension else []
        parts = [*below, *([f"the {self.w.name(topper)}"] if topper else [])]
        if not parts:
            return f"Take {self.w.name(stick)}."
        return f"Put {self.w.all_of(tuple(parts))} on {self.w.name(stick)}."

    def raise_edge(self, *, edge: Literal["far", "near"], angle_rad: float) -> str:
        return f"Raise the {edge} edge of the base by {self.w.amount(angle_rad, 'deg')}."

    def place_stick(self, *, site: Name, touch: bool) -> str:
        how = "touches the middle of the surface" if touch else "rests on its top without pushing it over"
        return f"Place it as drawn, so that the {self.w.name(site)} {how}."

    def drawn_turned(self, *, turn_rad: float) -> str:
        return f"The drawing shows the base turned {self.w.turn(turn_rad)} from straight ahead, seen from above."

    def turn_base(self, *, turn_rad: float) -> str:
        return f"Turn its base {self.w.turn(turn_rad)} from straight ahead, seen from above."

    def plug_in_stick(self) -> str:
        return "Hands off the stick while you plug it in. Start the game."

    def plug_in_switches(self, *, wiring_page: bool) -> str:
        where = "the socket that the page Wiring names" if wiring_page else "its socket"
        return f"Hands off while you plug them in, each into {where}. Start the game."

    def try_stick(self) -> str:
        return "Then try forward, right, back and left."

    def try_switches(self) -> str:
        return "Then press each one once."

    def plug(self, *, plug: Name | None) -> str:
        return f"Plug: {self.w.name(plug)}." if plug else "Plug: see the lead."

    def socket(self, *, socket: Text, hub: Name, tag: Name) -> str:
        return f"{self.say(socket)} on {self.w.name(hub)} (cable {self.w.name(tag)})."

    def plug_into(self, *, plug: Text, socket: Text) -> str:
        return f"{self.say(plug)} Socket: {self.say(socket)}"

    def cause(self, *, cause: Cause) -> str:
        return _CAUSES[cause]

    def remedy(self, *, cause: Cause, turned: bool) -> str:
        return "Put it back as drawn, turned as in step 2." if cause == "moved" and turned else _REMEDIES[cause]

    def check_sockets(self, *, wiring_page: bool) -> str:
        return "Compare it with the page Wiring." if wiring_page else "Compare it with the marks on the leads."

    def other_controls(self) -> str:
        return "All other controls: next page."

    def further_stick(self, *, site: Name, setup: Text) -> str:
        return f"For the {self.w.name(site)}: {self.clause(setup)}. Its drawing is on a later page."

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
