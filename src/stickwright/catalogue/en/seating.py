"""The chair and the furniture, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Message, Name
from stickwright.codes.mount_checks import Side
from stickwright.codes.seating import ElbowFrom, Furniture, Seating

__all__ = ["Texts"]


class Texts(Seating):
    """Each a sentence, except where the topic says clause."""

    w: English

    def hangs_out(
        self, *, side: Side, mass_kg: float, out_m: float, added_nm: float, keeps_nm: float | None, before_rad: float | None,
        after_rad: float | None,
    ) -> str:  # fmt: skip
        said = (
            f"{self.w.amount(mass_kg, 'kg')} at {self.w.amount(out_m, 'mm')} outside the wheels ({side}) add "
            f"{self.w.amount(added_nm, 'nm')}"
        )
        if keeps_nm is None or before_rad is None or after_rad is None:
            return f"{said}."
        return (
            f"{said}, against {self.w.amount(keeps_nm, 'nm')} that keep it from tipping {side} on level ground. By statics the slope at "
            f"which it tips {side} falls from {self.w.amount(before_rad, 'deg', 3)} to {self.w.amount(after_rad, 'deg', 3)}. Brakes, "
            "the flex of the tyres, a seat that tilts and a player who leans are not included."
        )

    def where_wheels(self, *, mass_kg: float) -> str:
        return (
            f"{self.w.amount(mass_kg, 'kg')} hang on the chair, and where its wheels touch the floor was not measured. Measure between "
            "the outer edges of the tyres (track_mm), and forward from the seat reference point to the wheels (rear_wheel_mm, "
            "front_wheel_mm)."
        )

    def weigh(self) -> str:
        return "Weigh chair and player, on the clinic's scales (chair_kg, player_kg)."

    def ask_slope(self, *, sideways: bool) -> str:
        keys = "tips_sideways_deg" if sideways else "tips_forward_deg and tips_back_deg"
        return (
            f"Ask the wheelchair service at what slope the chair with the player tips ({keys}, ISO 7176-1): it settles how much the "
            "mount takes from that."
        )

    def seat_height(self) -> str:
        return "Measure from the seat down to the floor (seat_to_floor_mm): without it the height of the mount is not known."

    def ask(self, *, site: Name, known: Message | None, question: Message) -> str:
        said = f"{self.say(known)} " if known is not None else ""
        return f"{self.w.name(site)}: {said}{self.say(question)}"

    def tips(self, *, site: Name, check: Message) -> str:
        return f"{self.w.name(site)}: by statics the chair tips on level ground: {self.clause(check)}."

    def height_unknown(self) -> str:
        return "The table's height cannot be compared with the elbow: measure from the seat down to the floor (seat_to_floor_mm)."

    def tray_close(self, *, gap_m: float, least_m: float, tilts: bool) -> str:
        tilted = " or the seat tilts" if tilts else ""
        return (
            f"The tray's edge is {self.w.amount(gap_m, 'mm')} from the front of the trunk: it presses when the player leans "
            f"forward{tilted}, and a finger can be caught. Leave at least {self.w.amount(least_m, 'mm')}, and check in every position "
            "used in play."
        )

    def height(self, *, what: Furniture, off_m: float, above: bool, elbow: ElbowFrom) -> str:
        measure = "to confirm: measure from the seat up to the elbow, seat_to_elbow_mm"
        basis = {
            "measured": "",
            "armrest": f" (assumed at the armrest's top; {measure})",
            "median": f" (assumed at the published median of adults; {measure})",
        }[elbow]
        thing = {"table": "table", "tray": "tray"}[what]
        told = (
            f"it lifts the shoulders, and the arms tire. Lower the {thing}, raise the seat, or mount the devices lower."
            if above
            else f"the player has to lean down, or the arm hangs. Raise the {thing}, lower the seat, or support the forearm."
        )
        return f"The {thing} is {self.w.amount(off_m, 'mm')} {'above' if above else 'below'} the elbow{basis}: {told}"
