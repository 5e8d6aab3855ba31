"""How a device is set, held and switched to the right mode, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.device_steps import DeviceSteps, TurnedBy
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_TURNED_BY: dict[TurnedBy, str] = {
    "itself": "in the stick's own settings",
    "hub": "in the hub's settings",
    "game": "in the game's settings",
}
_CROSSWISE = "Stand the base crosswise, with its front to the left. Turn its output a quarter turn anticlockwise"


class Texts(DeviceSteps):
    """Steps of a set-up, and what to order."""

    w: English

    def set_to(self, *, device: Name, setting: Name, how: Name | None) -> str:
        how_to = f": {self.w.typed(how)}" if how else ""
        return f"Set {self.w.name(device)} to “{self.w.name(setting)}”{how_to}."

    def crosswise(self, *, turned_by: TurnedBy | None) -> str:
        where = _TURNED_BY[turned_by] if turned_by is not None else ""
        told = f" {where}." if where else ". Look in the manual of the stick, the hub or the game for where."
        return f"{_CROSSWISE}{told}"

    def crosswise_told(self, *, told: Name) -> str:
        return f"{_CROSSWISE}: {self.w.typed(told)}."

    def hold_in_one_hand(self, *, device: Name, sites: tuple[Name, ...]) -> str:
        return f"Hold {self.w.name(device)} in one hand, the one of {self.w.sites(sites)}."

    def hold_in_two_hands(self, *, device: Name) -> str:
        return f"Hold {self.w.name(device)} in both hands."

    def rest_it(self, *, device: Name, why: Text | None) -> str:
        reason = f": {self.clause(why)}" if why is not None else ""
        return f"Rest {self.w.name(device)} on a mount or tray, not in the hand{reason}."

    def fix_to_grip(self, *, stick: Name, controller: Name) -> str:
        return f"Fix {self.w.name(stick)} to the grip of {self.w.name(controller)}. The same hand works both."

    def check_mode(self, *, device: Name, mode: Name, sign: Name | None) -> str:
        seen = f": {self.w.typed(sign)}" if sign else ""
        return f"Check that {self.w.name(device)} is in mode “{self.w.name(mode)}”{seen}."

    def other_mode(self, *, device: Name) -> str:
        return f"Is {self.w.name(device)} in another mode?"

    def mode_back(self, *, mode: Name, back: Name | None) -> str:
        if not back:
            return f"It must be in “{self.w.name(mode)}”. Its manual says how."
        return f"{self.w.capital(self.w.typed(back))}. It must be in “{self.w.name(mode)}”."

    def to_order(
        self,
        *,
        offer: Name,
        start_force_n: float,
        full_force_n: float,
        travel_m: float,
        height_m: float,
        topper: Name | None,
        delivery_s: float | None,
        order_price: float | None,
        better_bits: float | None,
        weakest: Estimate,
        chance_share: float,
    ) -> str:
        with_it = f", to be used with {self.w.name(topper)}" if topper else ""
        terms = [f"about {self.w.trimmed(delivery_s / 604800)} weeks"] if delivery_s is not None else []
        terms += [f"{self.w.fixed(order_price)} in the currency of the kit's prices"] if order_price is not None else []
        ends = f" ({'; '.join(terms)})" if terms else ""
        gain = (
            "No stick of this kit fits."
            if better_bits is None
            else f"It gives about {self.w.number(better_bits)} bits more than the best stick of this kit."
        )
        return (
            f"Made to order ({self.w.name(offer)}): ask for an actuation force of {self.w.amount(start_force_n, 'n')}, "
            f"{self.w.amount(full_force_n, 'n')} at full travel, {self.w.amount(travel_m, 'mm')} of travel and the contact point "
            f"{self.w.amount(height_m, 'mm')} above the pivot{with_it}{ends}. {gain} It would reach "
            f"{self.w.share_estimate(weakest)}{self.because(weakest.why)} of its travel in the weakest direction. It keeps every rule in "
            f"{self.w.share(chance_share)} of the simulations."
        )
