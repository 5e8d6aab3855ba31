"""The smallest change that would make a mount pass, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.catalogue.en.mount_checks import Texts as Checks
from stickwright.catalogue.en.mount_checks import capital, thing_words
from stickwright.codes.message import Message, Name
from stickwright.codes.mount_changes import MountChanges
from stickwright.codes.mount_checks import CheckName, Thing

__all__ = ["Texts"]


class Texts(MountChanges):
    """Each a clause in the imperative."""

    w: English

    def all_of(self, *, changes: tuple[Message, ...]) -> str:
        return f"{capital('; '.join(self.clause(one) for one in changes))}."

    def both(self, *, first: Message, second: Message) -> str:
        return f"{self.say(first)} {self.say(second)}"

    def measure(self, *, mount: Name) -> str:
        return f"measure and weigh {self.w.name(mount)}"

    def lay(self, *, sheet: Name, under: Name) -> str:
        return f"lay {self.w.name(sheet)} under {self.w.name(under)}"

    def lower(self, *, from_m: float, to_m: float, above: Thing | None) -> str:
        ground = "the floor" if above is None else f"what {thing_words(self.w, above)} stands on"
        return (
            f"lower the contact point from {self.w.amount(from_m, 'mm')} to {self.w.amount(to_m, 'mm')} above {ground}"
        )

    def weigh_down(self, *, mount: Name, more_kg: float) -> str:
        return f"weigh {self.w.name(mount)} down with {self.w.amount(more_kg, 'kg')} in its middle"

    def larger_board(self, *, side_m: float, mount: Name) -> str:
        return f"use a board of at least {self.w.amount(side_m, 'mm')} each way instead of {self.w.name(mount)}"

    def other_surface(self) -> str:
        return "use a table or the tray of the chair"

    def fasten(self, *, thing: Thing) -> str:
        return f"fasten {thing_words(self.w, thing)} with clamps or bolts"

    def lighten(self, *, over_kg: float) -> str:
        return f"take {self.w.amount(over_kg, 'kg')} off"

    def read_label(self, *, fastener: Name) -> str:
        return f"read the label of {self.w.name(fastener)} and enter its strengths"

    def larger_patch(
        self, *, fastener: Name, from_area: int, to_area: int, long_m: float | None, short_m: float | None
    ) -> str:
        size = "the whole base" if long_m is None or short_m is None else self.w.sizes((long_m, short_m))
        areas = f"from {self.w.whole(from_area)} to {self.w.whole(to_area)} cm²"
        return f"enlarge the patch of {self.w.name(fastener)} {areas} ({size})"

    def other_fastener(self, *, fastener: Name, instead: Name | None, whole: bool, thing: Thing) -> str:
        old = f" instead of {self.w.name(instead)}" if instead is not None else ""
        under = ", under the whole base" if whole else ""
        return f"fix {thing_words(self.w, thing)} with {self.w.name(fastener)}{old}{under}"

    def add_mass(self, *, more_kg: float, thing: Thing) -> str:
        return f"add {self.w.amount(more_kg, 'kg')} to {thing_words(self.w, thing)}"

    def let_go(self, *, coupling: Name) -> str:
        return f"let it go on purpose: fit {self.w.name(coupling)}"

    def test_joints(self) -> str:
        return "find out what each joint holds: hang weights on the end until it slips"

    def stronger_joint(self, *, what: CheckName, number: int, needed_nm: float) -> str:
        return f"use a mounting arm whose {self._joint(what, number)} holds {self.w.amount(needed_nm, 'nm')}"

    def shorter_arm(self, *, from_m: float, to_m: float, what: CheckName, number: int, needed_nm: float) -> str:
        return (
            f"shorten the arm from {self.w.amount(from_m, 'mm')} to {self.w.amount(to_m, 'mm')}, or use one whose "
            f"{self._joint(what, number)} holds {self.w.amount(needed_nm, 'nm')}"
        )

    def _joint(self, what: CheckName, number: int) -> str:
        return Checks(self.w, self.say).named(what=what, number=number)
