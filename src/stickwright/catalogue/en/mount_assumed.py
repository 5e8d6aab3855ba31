"""What nobody measured of a mount and what stands in for it, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.message import Message, Name
from stickwright.codes.mount_assumed import Ground, MountAssumed

__all__ = ["Texts"]


class Texts(MountAssumed):
    """Each a clause."""

    w: English

    def friction(
        self, *, foot: Literal["rubber", "smooth plastic", "tray"], ground: Ground | None, taken_factor: float, dusty: bool,
        measure: Message,
    ) -> str:  # fmt: skip
        pair = f"{foot} on {ground or 'an unknown surface'}"
        taken = f"{pair} taken as {self.w.number(taken_factor)}"
        said = f"{taken}, as when dusty" if dusty else f"clean, dry {taken}"
        return f"friction not measured: {said}; to confirm: {self.clause(measure)}"

    def fastening(self) -> str:
        return "what fastens it was not measured"

    def test_method(self, *, fastener: Name) -> str:
        return f"strength of {self.w.name(fastener)}: its test method is not recorded"

    def weakest_joint(self, *, held_nm: float) -> str:
        return f"no figure for this joint; taken as the weakest of the others, {self.w.amount(held_nm, 'nm')}"

    def release_limit(self) -> str:
        return "the clinic has not said how hard it may be pushed"

    def thighs(self, *, apart_m: float) -> str:
        return f"thighs not measured: their middles taken as {self.w.amount(apart_m, 'mm')} apart"

    def chair_centre(self) -> str:
        return "the centre of mass of chair and player is taken in the middle between the wheels"

    def base(self, *, device: Name, long_m: float, short_m: float) -> str:
        return f"the base of {self.w.name(device)} was not measured: taken as {self.w.sizes((long_m, short_m))}"

    def weight(self, *, device: Name) -> str:
        return f"{self.w.name(device)} was not weighed: its weight is left out"

    def loose(self, *, surface: Name) -> str:
        return (
            f"{self.w.name(surface)} is loose and was not weighed, so whether it slides or tips is not calculated: weigh it, or "
            "test it with the hardest push"
        )

    def switch_base(self, *, device: Name, long_m: float, short_m: float, height_m: float) -> str:
        return (
            f"the base of {self.w.name(device)} was not measured: taken as {self.w.sizes((long_m, short_m))}, "
            f"{self.w.amount(height_m, 'mm')} high; put a smaller one on a plate of that size"
        )

    def senses(self, *, clear_m: float) -> str:
        return f"its face is kept {self.w.amount(clear_m, 'mm')} off the control site at rest, the distance at which it acts"

    def flex(self, *, mount: Name) -> str:
        return f"the flex of {self.w.name(mount)} was not measured: hang a kilogram on its end and measure the drop"

    def mount_weight(self, *, mount: Name) -> str:
        return f"{self.w.name(mount)} was not weighed: its weight is left out, and its natural frequency is not known"

    def screwed(self, *, device: Name, mount: Name) -> str:
        return f"nothing in the kit fixes {self.w.name(device)} to {self.w.name(mount)}: taken as screwed to it"

    def facing(self, *, device: Name) -> str:
        return f"which way the face of {self.w.name(device)} looks is not recorded: turn it square to the press"

    def side_by_side(self, *, pieces: int, plate: Name | None, weighed: bool, apart_m: float) -> str:
        on = self.w.name(plate) if plate is not None else "one mounting plate, which the kit does not have"
        weight = "" if weighed else ", its weight left out"
        return (
            f"the {pieces} are side by side on {on}{weight}, their middles {self.w.amount(apart_m, 'mm')} apart; the middle of all "
            "of them is where the control site rests"
        )

    def unlevel(self, *, surface: Name, off_m: float, below: bool, allowed_m: float) -> str:
        return (
            f"{self.w.name(surface)} is {self.w.amount(off_m, 'mm')} {'below' if below else 'above'} where the underside of the base "
            f"should be: up to {self.w.amount(allowed_m, 'mm')} is accepted, and the control site rests so much "
            f"{'lower' if below else 'higher'}"
        )

    def take_off(self, *, mount: Name, swings: bool, time_s: float) -> str:
        how = "swing aside" if swings else "come off"
        return (
            f"how long {self.w.name(mount)} takes to {how} was not timed: {self.w.amount(time_s, 's')} is taken, usual for its kind; "
            "time it with one hand"
        )

    def thickness(self, *, mount: Name, thick_m: float, head_m: float | None) -> str:
        thick = f"{self.w.name(mount)} is taken to be {self.w.amount(thick_m, 'mm')} thick"
        if head_m is None:
            return thick
        return (
            f"{thick}, and the middle of its last ball {self.w.amount(head_m, 'mm')} below the base, mounting plate included: "
            "measure both"
        )

    def neck_shape(self, *, mount: Name) -> str:
        return f"{self.w.name(mount)} is taken to meet the base square from below, in two even bends as drawn"

    def neck_bend(self, *, mount: Name, radius_m: float) -> str:
        return (
            f"how tightly {self.w.name(mount)} may be bent is not recorded: taken as a radius of {self.w.amount(radius_m, 'mm')}; "
            "bend it as drawn and see whether it stays"
        )

    def base_size(self, *, site: Name) -> str:
        return f"the size of the base at the {self.w.name(site)} is not known: only its middle was kept clear"

    def board(self, *, surface: Name, thick_m: float) -> str:
        return f"{self.w.name(surface)} is taken to be {self.w.amount(thick_m, 'mm')} thick"

    def chair_place(self, *, holders: tuple[Name, ...], mount: Name, within_m: float | None) -> str:
        within = f", within {self.w.amount(within_m, 'mm')}" if within_m is not None else ""
        return (
            f"on {self.w.names(holders)}, {self.w.name(mount)} is right only while the chair stands where it stood: mark its place "
            f"on the floor{within}"
        )

    def pivot(self) -> str:
        return (
            "the tilt pivot was not measured: taken at the seat reference point. Tilt the chair, find the point that stays where it "
            "is, and measure how far forward of the seat and how far below it that point lies"
        )

    def tape(self, *, site: Name, by: Literal["upper", "usual"]) -> str:
        taken = "the upper one" if by == "upper" else "the one nearer to where such a control site usually rests"
        return f"the tape distances leave two places for {self.w.name(site)}; {taken} was taken. A fourth distance settles it"

    def base_height(self, *, site: Name) -> str:
        return f"the height of the base at the {self.w.name(site)} is not known and left out: measure from its underside to the pivot"

    def press_along(self, *, device: Name) -> str:
        return f"a press on {self.w.name(device)} counts as if it pushed along the face as hard as into it"

    def press_force(self, *, site: Name, force_n: float) -> str:
        return f"how hard the {self.w.name(site)} presses was not measured: taken as {self.w.amount(force_n, 'n')}"

    def grip_weight(self, *, device: Name) -> str:
        return f"{self.w.name(device)} on its grip was not weighed: not counted"

    def on_top_weight(self, *, device: Name, pieces: int) -> str:
        return f"{self.w.pieces(pieces, device)} on it was not weighed: not counted"
