"""Requests that cannot all be met, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.clashes import Clashes, Limb
from stickwright.codes.inputs import Role
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_PLACES = {"option": "the game itself", "helper": "a helper", "dropped": "those left out"}


class Texts(Clashes):
    """What stands against what, and what would resolve it."""

    w: English

    def _capital(self, text: str) -> str:
        return f"{text[:1].upper()}{text[1:]}"

    def _any(self, texts: tuple[Text, ...]) -> str:
        return self.w.any_of(tuple(self.say(one) for one in texts)) or "nobody"

    def _many(self, count: int, one: str) -> str:
        return f"{count} {self.w.plural(count, one=one, other=f'{one}s')}"

    def sentence(self, *, told: tuple[Text, ...], more: int, out: tuple[Text, ...], one_each: bool) -> str:
        first, *others = (self.clause(one) for one in told)
        said = [f"{self._capital(first)}."]
        said += [f"Also, {one}." for one in others]
        said += (
            [f"There {self.w.plural(more, one='is', other='are')} {self._many(more, 'more conflict')}."] if more else []
        )
        if out:
            ways = "; ".join(self.clause(one) for one in out)
            said.append(f"Resolve by one of: {ways}." if one_each or len(out) > 1 else f"To resolve: {ways}.")
        return " ".join(said)

    def both_need(self, *, first: Name, second: Name, site: Text) -> str:
        return f"{self.together(first=first, second=second)}, but both need the {self.say(site)}"

    def not_at_once(self, *, first: Name, second: Name, first_by: tuple[Text, ...], second_by: tuple[Text, ...]) -> str:
        return (
            f"{self.together(first=first, second=second)}, but only {self._any(first_by)} can do {self.w.name(first)}, only "
            f"{self._any(second_by)} can do {self.w.name(second)}, and these cannot be used together"
        )

    def all_need(self, *, actions: tuple[Name, ...], site: Text) -> str:
        return f"{self.w.names(actions)} all need the {self.say(site)}, which cannot take so many"

    def wanted(self, *, actions: tuple[Name, ...], by: tuple[Text, ...]) -> str:
        told = f"{self.w.names(actions)} {self.w.plural(len(actions), one='is', other='are')} wanted"
        it = self.w.plural(len(actions), one="it", other="them")
        return f"{told}, and only {self._any(by)} can do {it}" if by else told

    def chord_wanted(self, *, action: Name, members: tuple[Name, ...]) -> str:
        return f"{self.w.name(action)} is wanted, by pressing {self.w.names(members)} together"

    def not_all(self, *, requests: tuple[Text, ...]) -> str:
        told = "; ".join(self.clause(one) for one in requests)
        return f"these cannot all be met: {told}. Without any one of them, the others can"

    def cannot(self, *, action: Name) -> str:
        return f"{self.w.name(action)} cannot be done"

    def nobody(self, *, action: Name, nearest: Text | None) -> str:
        why = f" ({self.clause(nearest)})" if nearest is not None else ""
        return f"nobody can do {self.w.name(action)} with this kit{why}"

    def the_game(self) -> str:
        return "the game itself"

    def leaving_out(self) -> str:
        return "leaving it out"

    def stock(self, *, device: Name, in_stock: int) -> str:
        if in_stock == 0:
            return f"no {self.w.name(device)} is in stock"
        only = "only one is" if in_stock == 1 else f"only {in_stock} are"
        return f"of {self.w.name(device)}, {only} in stock"

    def together(self, *, first: Name, second: Name) -> str:
        return f"{self.w.name(first)} and {self.w.name(second)} must be possible at the same time"

    def chord(self, *, chord: Name, member: Name) -> str:
        return f"{self.w.name(chord)} includes {self.w.name(member)}, which the player has to press"

    def site_takes(self, *, site: Name, switches: int) -> str:
        most = "one switch" if switches == 1 else f"up to {switches} switches"
        return f"the {self.w.name(site)} can work one stick, or {most}, or a controller, but not two kinds"

    def limb_takes(self, *, limb: Limb) -> str:
        return f"the {limb} can hold one controller"

    def control_takes(self, *, control: Role | None, device: Name) -> str:
        what = "stick" if control is None else self.w.role(control)
        return f"the {what} of {self.w.name(device)} does one action"

    def limb_holds(self, *, limb: Limb, controller: Name) -> str:
        return f"the {limb} holds {self.w.name(controller)} and does nothing else meanwhile"

    def fixed(self, *, stick: Name, controller: Name) -> str:
        return f"{self.w.name(stick)} is fixed to the grip of {self.w.name(controller)}, and one hand works both"

    def presses(self, *, site: Name, most_share: float) -> str:
        return f"the {self.w.name(site)} may press for no more than {self.w.share(most_share)} of the busiest minute"

    def one_input(self, *, role: Role) -> str:
        return f"the game cannot tell two devices apart that both arrive as the {self.w.role(role)}, so only one can be used"

    def current(self, *, source: Name) -> str:
        return f"{self.w.name(source)} supplies only so much current"

    def second_controllers(self, *, count: int) -> str:
        few = "no second controller" if count == 0 else f"only {self._many(count, 'second controller')}"
        return f"the hub takes {few}"

    def budget(self, *, limit_price: float) -> str:
        return f"no more than {self.w.number(limit_price)} may be spent"

    def devices(self, *, count: int) -> str:
        return f"no more than {self._many(count, 'device')} may be used"

    def keep(self, *, what: Name, where: Text) -> str:
        return f"{self.w.name(what)} is to stay with {self.say(where)}"

    def keep_impossible(self, *, what: Name, where: Text, why: Text | None) -> str:
        reason = f" ({self.clause(why)})" if why is not None else ""
        return f"{self.keep(what=what, where=where)}, which is not possible{reason}"

    def no_option(self) -> str:
        return "no option of the game is entered for it"

    def no_helper(self) -> str:
        return "there is no helper for it"

    def no_drop_cost(self) -> str:
        return "it is left out only if the cost to the player of going without is entered"

    def place(self, *, how: Literal["option", "helper", "dropped"]) -> str:
        return _PLACES[how]

    def without(self, *, name: Name) -> str:
        return f"{self.w.name(name)} is not to be used"

    def helper(self, *, helper: Name, count: int) -> str:
        most = "nothing" if count == 0 else f"only {self._many(count, 'action')}"
        return f"{self.w.name(helper)} can take over {most}"

    def slows(self) -> str:
        return "one control site slows another"

    def shut_out(self, *, hub: Name, first: tuple[Name, ...], second: tuple[Name, ...]) -> str:
        return f"on {self.w.name(hub)}, {self.w.names(first)} and {self.w.names(second)} cannot be used together"

    def sockets_alike(self, *, hub: Name, sockets: tuple[Name, ...]) -> str:
        return f"{self.w.name(hub)} has only {self._many(len(sockets), 'socket')} like {self.w.names(sockets)}"

    def hub_takes(self, *, hub: Name, count: int) -> str:
        return f"{self.w.name(hub)} takes only {self._many(count, 'device')}"

    def splitter_ways(self, *, splitter: Name, count: int) -> str:
        return f"{self.w.name(splitter)} has only {self._many(count, 'socket')}"

    def plug_unknown(self, *, device: Text) -> str:
        return f"the kit does not say what plug {self.say(device)} has, so no socket can be chosen"

    def no_socket(self, *, device: Text, plugs: tuple[Name, ...]) -> str:
        return f"no socket takes {self.say(device)} with a {self._any(plugs)} plug"

    def no_current(self, *, device: Text, current_a: float) -> str:
        return f"no socket supplies the {self.w.amount(current_a, 'ma')} that {self.say(device)} needs"

    def few_sockets(self, *, count: int, device: Text, plugs: tuple[Name, ...]) -> str:
        few = self.w.plural(count, one="only one socket takes", other=f"only {count} sockets take")
        return f"{few} {self.say(device)} with a {self._any(plugs)} plug"

    def stick_as(self, *, role: Role | None) -> str:
        return "a stick" if role is None else f"a stick as {self.w.role(role)}"

    def switch_as(self, *, role: Role | None) -> str:
        return "a switch" if role is None else f"a switch as {self.w.role(role)}"

    def give_up_all(self, *, parts: tuple[Text, ...]) -> str:
        return self.w.all_of(tuple(self.clause(one) for one in parts))

    def leave_out(self, *, actions: tuple[Name, ...]) -> str:
        for_them = self.w.plural(len(actions), one="a helper for it", other="helpers for them")
        options = self.w.plural(len(actions), one="an option of the game", other="options of the game")
        return f"leave out {self.w.names(actions)} (or find {options} or {for_them})"

    def one_by_one(self, *, first: Name, second: Name) -> str:
        return f"do {self.w.name(first)} and {self.w.name(second)} one after the other"

    def get_more(self, *, device: Name, count: int, priced: bool) -> str:
        verb = "borrow" if priced else "get"
        return (
            f"{verb} one more {self.w.name(device)}" if count == 1 else f"{verb} {count} more of {self.w.name(device)}"
        )

    def other_hub(self, *, first: tuple[Name, ...], second: tuple[Name, ...]) -> str:
        return f"use a hub on which {self.w.names(first)} and {self.w.names(second)} can be used together"

    def more_sockets(self, *, count: int, socket: Name, hub: Name) -> str:
        few = "one more socket" if count == 1 else f"{count} more sockets"
        return f"add a hub or a splitter with {few} like {self.w.name(socket)} on {self.w.name(hub)}"

    def second_hub(self, *, hub: Name) -> str:
        return f"add a second hub beside {self.w.name(hub)}"

    def record_plug(self, *, device: Text) -> str:
        return f"record in the kit what plug {self.say(device)} has"

    def hub_for(self, *, device: Text, plugs: tuple[Name, ...]) -> str:
        return f"add a hub with one more socket for {self.say(device)} ({self._any(plugs)} plug)"

    def more_current(self, *, source: Name) -> str:
        return f"supply what is plugged into {self.w.name(source)} from a powered splitter, or use a second hub"

    def pairing_hub(self, *, count: int) -> str:
        return f"use a hub that takes {self._many(count, 'second controller')}"

    def spend(self, *, new_price: float, old_price: float) -> str:
        return f"spend {self.w.fixed(new_price)} instead of {self.w.fixed(old_price)}"

    def more_devices(self, *, new: int, old: int) -> str:
        return f"allow {self._many(new, 'device')} instead of {old}"

    def let_go(self, *, what: Name, where: Text) -> str:
        return f"let {self.w.name(what)} go elsewhere than {self.say(where)}"

    def use_anyway(self, *, name: Name) -> str:
        return f"use {self.w.name(name)} after all"

    def helper_more(self, *, helper: Name, count: int) -> str:
        return f"let {self.w.name(helper)} take over {self._many(count, 'action')}"

    def slow_game(self, *, site: Name) -> str:
        return f"slow the game down, so that the {self.w.name(site)} presses less often"
