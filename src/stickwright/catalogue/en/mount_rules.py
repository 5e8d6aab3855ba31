"""Hard safety rules of mounts, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Message, Name
from stickwright.codes.mount_rules import DeviceKind, MountRules, Space

__all__ = ["Texts"]

_SPACES: dict[str, str] = {
    "face": "the space in front of the face", "neck": "the space around the neck", "chest": "the space in front of the chest",
    "chair control": "the space of the chair's own control", "tubing": "the space of the tubing",
}  # fmt: skip


class Texts(MountRules):
    """Each a sentence, except where it says clause."""

    w: English

    def not_cleared(self, *, site: Name) -> str:
        return f"{self.w.name(site)}: the treating team has said no to this control site."

    def barred(self, *, holder: Name, why: Name) -> str:
        return f"{self.w.name(holder)}: nothing may be clamped here ({self.w.typed(why)})."

    def seating_part(self, *, holder: Name) -> str:
        return f"{self.w.name(holder)}: mount on a headrest or a moving part of the seat only if the seating clinic has agreed."

    def enters(self, *, box: Name, space: Space) -> str:
        return f"{self.w.name(box)}: the mount enters {_SPACES[space]}."

    def must_release(self, *, site: Name) -> str:
        return f"{self.w.name(site)}: a mount at the face must let go; fit a breakaway coupling or set a joint to slip."

    def release_unmeasured(self, *, site: Name, coupling: Name, measure: Message) -> str:
        return (
            f"{self.w.name(site)}: a mount at the face must let go, and at what force {self.w.name(coupling)} lets go is not known, "
            f"so it does not count as a breakaway. To confirm: {self.clause(measure)}."
        )

    def release_fails(self, *, site: Name, why: Message) -> str:
        return f"{self.w.name(site)}: {self.clause(why)}."

    def tilt_unsure(
        self, *, site: Name, device: DeviceKind, most_m: float, tolerance_m: float, measure: Message
    ) -> str:
        return (
            f"{self.w.name(site)}: over the tilts used in play it may move {self.w.amount(most_m, 'mm')} against the {device}, "
            f"because the tilt pivot is only assumed; {self.w.amount(tolerance_m, 'mm')} is acceptable. {self._strict()} "
            f"To lift this, {self.clause(measure)}."
        )

    def tilt_stand(self, *, site: Name, device: DeviceKind, from_rad: float, to_rad: float, shift_m: float) -> str:
        return (
            f"A floor stand for a chair that tilts: {self._tilting(from_rad, to_rad)} moves {self.w.name(site)} by "
            f"{self.w.amount(shift_m, 'mm')} away from the {device}."
        )

    def tilt_apart(
        self, *, site: Name, device: DeviceKind, with_seat: bool, from_rad: float, to_rad: float, shift_m: float,
        tolerance_m: float | None,
    ) -> str:  # fmt: skip
        accepted = (
            f"{self.w.amount(tolerance_m, 'mm')} is acceptable"
            if tolerance_m is not None
            else "how much is acceptable is not known"
        )
        who = (
            "moves with the seat and the mount does not"
            if with_seat
            else "does not move with the seat and the mount does"
        )
        return (
            f"{self.w.name(site)} {who}: {self._tilting(from_rad, to_rad)} moves {self.w.name(site)} by "
            f"{self.w.amount(shift_m, 'mm')} against the {device}; {accepted}."
        )

    def tilt_assumed(self, *, site: Name, holder: Name, shift_m: float, tolerance_m: float) -> str:
        return (
            f"with the tilt pivot at the seat reference point, tilting moves {self.w.name(site)} and {self.w.name(holder)} "
            f"{self.w.amount(shift_m, 'mm')} apart; {self.w.amount(tolerance_m, 'mm')} is acceptable"
        )

    def too_wide(self, *, width_m: float, door_m: float, most_m: float) -> str:
        return (
            f"With the mount the chair is {self.w.amount(width_m, 'mm', 3)} wide; the narrowest door of "
            f"{self.w.amount(door_m, 'mm', 3)} takes at most {self.w.amount(most_m, 'mm', 3)}. Swing the mount aside or take it off "
            "for the door."
        )

    def to_confirm(self, *, measures: tuple[Message, ...], told: Message) -> str:
        return f"To confirm: {self._listed(measures)} (as assumed: {self.clause(told)})."

    def may_be(self, *, why: Message) -> str:
        return f"it passes as assumed, but this is possible: {self.clause(why)}"

    def at_face(self, *, why: Message, measures: tuple[Message, ...]) -> str:
        return f"{self.clause(why)}. {self._strict()} To lift this, {self._listed(measures)}."

    def _listed(self, measures: tuple[Message, ...]) -> str:
        return "; ".join(self.clause(one) for one in measures)

    def _strict(self) -> str:
        return "At the face nothing rests on an assumed figure, because a wrong guess there could hurt somebody."

    def _tilting(self, from_rad: float, to_rad: float) -> str:
        return f"tilting from {self.w.amount(from_rad, 'deg')} to {self.w.amount(to_rad, 'deg')}"
