"""Requests that cannot all be met: what stands against what, and what would resolve it."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.inputs import Role
from stickwright.codes.message import Name, Text, Topic

__all__ = ["LIMBS", "Clashes", "Limb", "limb_named"]

Limb = Literal["hands", "arm", "left arm", "right arm", "leg", "left leg", "right leg", "head", "trunk"]

LIMBS: tuple[Limb, ...] = Limb.__args__  # type: ignore[attr-defined]


def limb_named(limb: str) -> Limb:
    """A limb, or both hands; without its side where that is not recorded.

    Parameters
    ----------
    limb : str
        As `stickwright.allocation.concurrency.limb_of` names it, or ``hands``.
    """
    bare = limb.removeprefix("unsaid ")
    return next(one for one in LIMBS if one == bare)


class Clashes(Topic):
    """Clauses without full stop, unless said otherwise. Ways out are instructions: "leave jump out"."""

    @abstractmethod
    def sentence(self, *, told: tuple[Text, ...], more: int, out: tuple[Text, ...], one_each: bool) -> str:
        """Sentences: what cannot be met, what else (and so many conflicts more), and what would resolve it; `one_each`: one of the ways
        out is enough for the single conflict."""

    @abstractmethod
    def both_need(self, *, first: Name, second: Name, site: Text) -> str:
        """Two actions must be possible at the same time, and both need the same site."""

    @abstractmethod
    def not_at_once(self, *, first: Name, second: Name, first_by: tuple[Text, ...], second_by: tuple[Text, ...]) -> str:
        """Two actions must be possible at the same time; who alone can do each, and these cannot act together."""

    @abstractmethod
    def all_need(self, *, actions: tuple[Name, ...], site: Text) -> str:
        """Several actions need one site, which cannot take so many."""

    @abstractmethod
    def wanted(self, *, actions: tuple[Name, ...], by: tuple[Text, ...]) -> str:
        """Actions are wanted; who alone can do them (nobody named: several can)."""

    @abstractmethod
    def chord_wanted(self, *, action: Name, members: tuple[Name, ...]) -> str:
        """A chord is wanted, by pressing its actions together."""

    @abstractmethod
    def not_all(self, *, requests: tuple[Text, ...]) -> str:
        """These requests and facts cannot all hold; without any one of them the rest can."""

    @abstractmethod
    def cannot(self, *, action: Name) -> str:
        """An action cannot be done."""

    @abstractmethod
    def nobody(self, *, action: Name, nearest: Text | None) -> str:
        """Nobody can do an action with this kit, and what comes nearest."""

    @abstractmethod
    def the_game(self) -> str:
        """The game itself, as one that could do an action."""

    @abstractmethod
    def leaving_out(self) -> str:
        """Leaving it out, in the place of one who could do an action."""

    @abstractmethod
    def stock(self, *, device: Name, in_stock: int) -> str:
        """How many of a device there are."""

    @abstractmethod
    def together(self, *, first: Name, second: Name) -> str:
        """Two actions must be possible at the same time."""

    @abstractmethod
    def chord(self, *, chord: Name, member: Name) -> str:
        """A chord needs one of its actions, which the player has to press."""

    @abstractmethod
    def site_takes(self, *, site: Name, switches: int) -> str:
        """What one site can take."""

    @abstractmethod
    def limb_takes(self, *, limb: Limb) -> str:
        """A limb, or both hands, take one controller."""

    @abstractmethod
    def control_takes(self, *, control: Role | None, device: Name) -> str:
        """A button of a controller (None: its stick) does one action."""

    @abstractmethod
    def limb_holds(self, *, limb: Limb, controller: Name) -> str:
        """A limb holds a controller and does nothing else meanwhile."""

    @abstractmethod
    def fixed(self, *, stick: Name, controller: Name) -> str:
        """A stick is fixed to the grip of a controller, and one hand works both."""

    @abstractmethod
    def presses(self, *, site: Name, most_share: float) -> str:
        """Share of the busiest minute that a site may press."""

    @abstractmethod
    def one_input(self, *, role: Role) -> str:
        """The game cannot tell two devices of one role apart."""

    @abstractmethod
    def current(self, *, source: Name) -> str:
        """A hub or socket supplies only so much current."""

    @abstractmethod
    def second_controllers(self, *, count: int) -> str:
        """How many second controllers the hub can pair."""

    @abstractmethod
    def budget(self, *, limit_price: float) -> str:
        """The most that may be spent."""

    @abstractmethod
    def devices(self, *, count: int) -> str:
        """The maximum number of devices."""

    @abstractmethod
    def keep(self, *, what: Name, where: Text) -> str:
        """Something is to stay where it is."""

    @abstractmethod
    def keep_impossible(self, *, what: Name, where: Text, why: Text | None) -> str:
        """Something is to stay where it cannot be, and why it cannot."""

    @abstractmethod
    def no_option(self) -> str:
        """Why not: no option of the game is entered for it."""

    @abstractmethod
    def no_helper(self) -> str:
        """Why not: there is no helper for it."""

    @abstractmethod
    def no_drop_cost(self) -> str:
        """Why not: the cost to the player of leaving it out is not entered."""

    @abstractmethod
    def place(self, *, how: Literal["option", "helper", "dropped"]) -> str:
        """With the game, with a helper, or left out, as a place where an action is to stay."""

    @abstractmethod
    def without(self, *, name: Name) -> str:
        """Something is not to be used."""

    @abstractmethod
    def helper(self, *, helper: Name, count: int) -> str:
        """How many actions a helper takes over."""

    @abstractmethod
    def slows(self) -> str:
        """One site slows another."""

    @abstractmethod
    def shut_out(self, *, hub: Name, first: tuple[Name, ...], second: tuple[Name, ...]) -> str:
        """Sockets of a hub that cannot be used together."""

    @abstractmethod
    def sockets_alike(self, *, hub: Name, sockets: tuple[Name, ...]) -> str:
        """A hub has only these sockets of a kind."""

    @abstractmethod
    def hub_takes(self, *, hub: Name, count: int) -> str:
        """How many devices a hub takes."""

    @abstractmethod
    def splitter_ways(self, *, splitter: Name, count: int) -> str:
        """How many sockets a splitter has."""

    @abstractmethod
    def plug_unknown(self, *, device: Text) -> str:
        """The plug of a device is not recorded, so no socket can be chosen."""

    @abstractmethod
    def no_socket(self, *, device: Text, plugs: tuple[Name, ...]) -> str:
        """No socket takes a device with such a plug."""

    @abstractmethod
    def no_current(self, *, device: Text, current_a: float) -> str:
        """No socket supplies the current that a device needs."""

    @abstractmethod
    def few_sockets(self, *, count: int, device: Text, plugs: tuple[Name, ...]) -> str:
        """Only so many sockets take a device with such a plug."""

    @abstractmethod
    def stick_as(self, *, role: Role | None) -> str:
        """A stick, and as which the game sees it."""

    @abstractmethod
    def switch_as(self, *, role: Role | None) -> str:
        """A switch, and as which button the game sees it."""

    @abstractmethod
    def give_up_all(self, *, parts: tuple[Text, ...]) -> str:
        """Several instructions that are needed together."""

    @abstractmethod
    def leave_out(self, *, actions: tuple[Name, ...]) -> str:
        """Leave actions out, or find an option of the game or a helper."""

    @abstractmethod
    def one_by_one(self, *, first: Name, second: Name) -> str:
        """Do two actions one after the other."""

    @abstractmethod
    def get_more(self, *, device: Name, count: int, priced: bool) -> str:
        """So many more of a device; `priced`: it may be bought at all, but none may be in this request."""

    @abstractmethod
    def other_hub(self, *, first: tuple[Name, ...], second: tuple[Name, ...]) -> str:
        """Use a hub on which these sockets can be used together."""

    @abstractmethod
    def more_sockets(self, *, count: int, socket: Name, hub: Name) -> str:
        """Add a hub or a splitter with so many sockets like one."""

    @abstractmethod
    def second_hub(self, *, hub: Name) -> str:
        """Add a second hub."""

    @abstractmethod
    def record_plug(self, *, device: Text) -> str:
        """Record the plug of a device in the kit."""

    @abstractmethod
    def hub_for(self, *, device: Text, plugs: tuple[Name, ...]) -> str:
        """Add a hub with one more socket for a device."""

    @abstractmethod
    def more_current(self, *, source: Name) -> str:
        """Feed devices from a powered splitter, or use a second hub."""

    @abstractmethod
    def pairing_hub(self, *, count: int) -> str:
        """Use a hub that pairs so many second controllers."""

    @abstractmethod
    def spend(self, *, new_price: float, old_price: float) -> str:
        """Spend so much instead."""

    @abstractmethod
    def more_devices(self, *, new: int, old: int) -> str:
        """Allow so many devices instead."""

    @abstractmethod
    def let_go(self, *, what: Name, where: Text) -> str:
        """Let something go elsewhere."""

    @abstractmethod
    def use_anyway(self, *, name: Name) -> str:
        """Use something after all."""

    @abstractmethod
    def helper_more(self, *, helper: Name, count: int) -> str:
        """Let a helper take over so many actions."""

    @abstractmethod
    def slow_game(self, *, site: Name) -> str:
        """Slow the game down, so that a site presses less often."""
