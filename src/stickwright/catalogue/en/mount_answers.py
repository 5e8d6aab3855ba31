"""Where a device goes and what holds it, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.catalogue.en.mount_checks import Texts as Checks
from stickwright.codes.message import Message, Name, Text
from stickwright.codes.mount_answers import MountAnswers
from stickwright.codes.mount_checks import CheckName

__all__ = ["Texts"]

_SIDES = {"left": "left", "right": "right", "near": "near side", "far": "far side"}


class Texts(MountAnswers):
    """Each a sentence, except where the topic says otherwise."""

    w: English

    def held(
        self, *, device: Name, pieces: int, site: Name, how: Message, under: tuple[Message, ...], lost_share: float | None,
        confirm: tuple[Message, ...],
    ) -> str:  # fmt: skip
        row = self.row(how=how, under=under, lost_share=lost_share, confirm=confirm)
        return f"{self.w.pieces(pieces, device)} for {self.w.name(site)}: {row}"

    def row(
        self, *, how: Message, under: tuple[Message, ...], lost_share: float | None, confirm: tuple[Message, ...]
    ) -> str:
        parts = "".join(f"; with {self.clause(one)}" for one in under)
        lost = f"; its flex takes {self.w.share(lost_share)} of the travel" if lost_share is not None else ""
        asked = "".join(f" {self.say(one)}" for one in confirm)
        return f"on {self.clause(how)}{parts}{lost}.{asked}"

    def how(self, *, mount: Name | None, on: Name, clamped: bool, fastener: Name | None) -> str:
        fixed = f", fixed with {self.w.name(fastener)}" if fastener is not None else ""
        if mount is None:
            return f"the {self.w.name(on)}{fixed}"
        where = f", clamped to the {self.w.name(on)}" if clamped else f" on the {self.w.name(on)}"
        return f"{self.w.name(mount)}{where}{fixed}"

    def confirm(self, *, measure: Message, rules: tuple[CheckName, ...]) -> str:
        checks = Checks(self.w, self.say)
        names = ", ".join(dict.fromkeys(checks.named(what=one, number=0) for one in rules))
        return f"To confirm: {self.clause(measure)} (for: {names})."

    def nothing_near(self, *, device: Name, pieces: int, site: Name) -> str:
        return f"Nothing in the kit or the room comes near where {self.w.pieces(pieces, device)} must stand for {self.w.name(site)}."

    def not_held(
        self, *, device: Name, pieces: int, site: Name, nearest: Name, why: Message | None, change: Message | None
    ) -> str:
        reason = "it fails" if why is None else self.clause(why)
        more = f" {self.say(change)}" if change is not None else ""
        return (
            f"Nothing here holds {self.w.pieces(pieces, device)} for {self.w.name(site)}. {self.w.name(nearest)} comes nearest: "
            f"{reason}.{more}"
        )

    def no_place(self, *, device: Name, pieces: int, site: Name) -> str:
        return (
            f"Where the {self.w.name(site)} rests was not measured, so what could hold {self.w.pieces(pieces, device)} is not known. "
            "Enter its place in the room ([[place]] in room.toml)."
        )

    def no_point(self, *, site: Name, why: Text) -> str:
        return f"The tape distances for {self.w.name(site)} do not lead to a point. {self.say(why)}"

    def may_not_fire(self, *, device: Name, mount: Name, travel_m: float, flex_m: float, presses_in_m: float) -> str:
        return (
            f"{self.w.name(device)} on {self.w.name(mount)} may not activate: its travel of {self.w.amount(travel_m, 'mm')} and the "
            f"mount's flex of {self.w.amount(flex_m, 'mm')} are more than the {self.w.amount(presses_in_m, 'mm')} that the control "
            "site pushes in. Shorten the arm or brace it."
        )

    def flexes(self, *, flex_m: float, travel_m: float, lost_share: float) -> str:
        return (
            f"At full push the mount flexes {self.w.amount(flex_m, 'mm')} of {self.w.amount(travel_m, 'mm')}: "
            f"{self.w.share(lost_share)} of the travel is lost, and the end stop feels soft. Shorten the arm or brace it."
        )

    def swings(self, *, natural_hz: float, least_hz: float) -> str:
        return (
            f"Natural frequency of the mount about {self.w.amount(natural_hz, 'hz')}: below {self.w.amount(least_hz, 'hz')} it makes "
            "output of its own when the chair moves or is touched. Shorten, brace or lighten it."
        )

    def flex_unknown(self, *, mount: Name) -> str:
        return f"the flex of {self.w.name(mount)} was not measured"

    def flex_stops_switch(self, *, device: Name, mount: Name, force_n: float, flex_m: float, travel_m: float) -> str:
        return (
            f"{self.w.name(device)} may not activate: its activation force of {self.w.amount(force_n, 'n')} flexes "
            f"{self.w.name(mount)} by {self.w.amount(flex_m, 'mm')}, more than its whole travel of {self.w.amount(travel_m, 'mm')}"
        )

    def flex_takes_all(self, *, mount: Name, flex_m: float) -> str:
        return f"at full push {self.w.name(mount)} flexes {self.w.amount(flex_m, 'mm')}, more than the stick's whole travel"

    def too_low(self, *, surface: Name, gap_m: float) -> str:
        return f"{self.w.name(surface)} is {self.w.amount(gap_m, 'mm')} below the underside of the base: too far to pack up"

    def too_high(self, *, surface: Name, over_m: float, lower_edge: bool) -> str:
        edge = " with its lower edge" if lower_edge else ""
        return f"{self.w.name(surface)} is {self.w.amount(over_m, 'mm')} too high: the base would stand in it{edge}"

    def overhangs(self, *, surface: Name, sides: tuple[Literal["left", "right", "near", "far"], ...]) -> str:
        where = self.w.all_of(tuple(_SIDES[side] for side in sides))
        return f"the base would hang over the {where} of {self.w.name(surface)}"

    def nothing_to_clamp(self) -> str:
        return "There is nothing to clamp it to."

    def pieces(self, *, count: int, device: Name) -> str:
        return self.w.pieces(count, device)

    def wedge(self, *, angle_rad: float, far: bool, higher_m: float) -> str:
        return (
            f"wedge of {self.w.amount(angle_rad, 'deg')} under the whole base, its {'far' if far else 'near'} edge "
            f"{self.w.amount(higher_m, 'mm')} higher"
        )

    def packing(self, *, height_m: float, under_wedge: bool) -> str:
        under = "wedge" if under_wedge else "base"
        return f"packing {self.w.amount(height_m, 'mm')} high, screwed or bonded under the {under}"

    def support(self, *, higher_m: float) -> str:
        return f"support under the control site, {self.w.amount(higher_m, 'mm')} higher than now"

    def had_first(
        self, *, site: Name, device: Name, way: Message, lacking: tuple[Name, ...], stock: tuple[int, ...], sites: tuple[Name, ...],
        more: bool, other_way: bool,
    ) -> str:  # fmt: skip
        there = self.w.all_of(
            tuple(
                f"{'the only' if count == 1 else f'each of the {self.w.whole(count)}'} {self.w.name(name)}"
                for name, count in zip(lacking, stock, strict=False)
            )
        )
        then = "This is the next best." if other_way else "Nothing else in the kit holds it: borrow one more."
        return (
            f"{self.w.name(site)}: {self.w.name(device)} would have had {self.say(way)}, but {there} in the kit "
            f"{self.w.plural(len(lacking), one='is', other='are')} needed at {self.w.names(sites)}, which "
            f"{'matters more' if more else 'was entered first'}. {then}"
        )

    def way(self, *, mount: Name, on: Name | None, fastener: Name | None) -> str:
        where = f" on the {self.w.name(on)}" if on is not None else ""
        fixed = f" with {self.w.name(fastener)}" if fastener is not None else ""
        return f"{self.w.name(mount)}{where}{fixed}"

    def flat_not_both(self, *, device: Name, switch: Name, pieces: int) -> str:
        return (
            f"{self.w.name(device)} has a flat for {self.w.pieces(pieces, switch)}, but its mount would not hold both."
        )

    def flat_both(self, *, device: Name, switch: Name, pieces: int, flat: Name) -> str:
        return (
            f"{self.w.pieces(pieces, switch)} stands on the {self.w.name(flat)}: the mount of {self.w.name(device)} was checked with "
            "both pushes and the mass of both."
        )

    def on_grip(self, *, device: Name, controller: Name) -> str:
        return (
            f"{self.w.name(device)} is fixed to the grip of {self.w.name(controller)}: the mount must take the pushes on both. They "
            "count here where the controller itself is pushed; a long stick pulls more, so test it before it is used."
        )

    def crosswise(self, *, device: Name) -> str:
        return (
            f"{self.w.name(device)} stands crosswise: its own front points to the player's left before any turn given here, and its "
            "output is turned a quarter turn anticlockwise."
        )

    def reached_from(self, *, device: Name, site: Name, others: tuple[Name, ...]) -> str:
        return f"{self.w.name(device)} stands where the {self.w.name(site)} rests; {self.w.names(others)} must reach it from there."

    def side_by_side(self, *, site: Name, devices: tuple[Name, ...]) -> str:
        return (
            f"The {self.w.name(site)} plays {self.w.names(devices)} too: both stand side by side, about where it rests."
        )
