"""Why an arm cannot hold a device, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.arm_reasons import ArmReasons, Line
from stickwright.codes.message import Message, Name

__all__ = ["Texts"]


class Texts(ArmReasons):
    """Each a sentence, except what is in the way."""

    w: English

    def no_links(self, *, mount: Name) -> str:
        return f"{self.w.name(mount)} is not a mounting arm: it has no links."

    def no_clamp(self, *, mount: Name) -> str:
        return (
            f"What the clamp of {self.w.name(mount)} holds is not known: enter the thinnest and thickest tube or edge."
        )

    def nothing(self) -> str:
        return "The room has no tube or edge that a clamp could hold."

    def barred(self, *, line: Line, holder: Name, why: Name) -> str:
        return f"{self._line(line, holder, start=True)} is not for clamps: {self.w.typed(why)}."

    def wrong_line(self, *, line: Line, holder: Name, mount: Name) -> str:
        lines = "tubes" if line == "tube" else "edges"
        return f"The clamp of {self.w.name(mount)} holds no {lines}, so not {self._line(line, holder)}."

    def wrong_size(self, *, line: Line, holder: Name, mount: Name, size_m: float, low_m: float, high_m: float) -> str:
        return (
            f"{self._line(line, holder, start=True)} is {self.w.amount(size_m, 'mm')}; the clamp of {self.w.name(mount)} holds "
            f"{self.w.amount(low_m, 'mm')} to {self.w.amount(high_m, 'mm')}."
        )

    def no_room(self, *, line: Line, holder: Name, mount: Name, free_m: float, needs_m: float) -> str:
        return (
            f"{self._line(line, holder, start=True)} is free for {self.w.amount(free_m, 'mm')}; the clamp of "
            f"{self.w.name(mount)} needs {self.w.amount(needs_m, 'mm')}: {self.w.amount(needs_m - free_m, 'mm')} too little."
        )

    def no_depth(self, *, holder: Name, mount: Name, free_m: float, needs_m: float) -> str:
        return (
            f"{self._line('edge', holder, start=True)} has {self.w.amount(free_m, 'mm')} behind it; the jaw of "
            f"{self.w.name(mount)} reaches {self.w.amount(needs_m, 'mm')} in: {self.w.amount(needs_m - free_m, 'mm')} too little."
        )

    def moves_apart(self, *, line: Line, holder: Name, site: Name, shift_m: float, allowed_m: float | None) -> str:
        may = (
            f"{self.w.amount(allowed_m, 'mm')} is acceptable"
            if allowed_m is not None
            else "how much is acceptable is not known"
        )
        return (
            f"{self._line(line, holder, start=True)} does not move with the {self.w.name(site)}: over the tilts used in play they "
            f"move {self.w.amount(shift_m, 'mm')} apart; {may}."
        )

    def too_tight(
        self, *, line: Line, holder: Name, mount: Name, radius_m: float | None, least_m: float, assumed: bool
    ) -> str:
        bent = f"to a radius of {self.w.amount(radius_m, 'mm')}" if radius_m is not None else "back on itself"
        mark = f", {self.w.assumed}" if assumed else ""
        return (
            f"From {self._line(line, holder)}, {self.w.name(mount)} would have to be bent {bent}, tighter than its least radius "
            f"({self.w.amount(least_m, 'mm')}{mark})."
        )

    def base_in(self, *, box: Name) -> str:
        return f"The base itself would stand in {self.w.name(box)}, which must stay free, whatever holds it."

    def runs_through(self, *, line: Line, holder: Name, mount: Name) -> str:
        return (
            f"From {self._line(line, holder)}, {self.w.name(mount)} is long enough, but every way runs through what it carries or "
            "through the control site."
        )

    def blocked(self, *, line: Line, holder: Name, mount: Name, by: Message) -> str:
        return (
            f"From {self._line(line, holder)}, {self.w.name(mount)} is long enough, but {self.say(by)} is in the way."
        )

    def too_short(self, *, line: Line, holder: Name, mount: Name, missing_m: float) -> str:
        return (
            f"{self.w.name(mount)} is {self.w.amount(missing_m, 'mm')} too short from the nearest point of "
            f"{self._line(line, holder)}, with a tenth of its length left for adjustment."
        )

    def no_point(self, *, line: Line, holder: Name, mount: Name) -> str:
        return f"{self.w.name(mount)} does not end there from any clamp point of {self._line(line, holder)}: too near or too far."

    def too_near(self, *, line: Line, holder: Name, mount: Name, near_m: float) -> str:
        return f"{self.w.name(mount)} cannot fold so far: {self._line(line, holder)} is {self.w.amount(near_m, 'mm')} too near."

    def keep_out(self, *, box: Name) -> str:
        return f"keep-out {self.w.name(box)}"

    def surface(self, *, surface: Name) -> str:
        return f"surface {self.w.name(surface)}"

    def tube(self, *, tube: Name) -> str:
        return f"tube {self.w.name(tube)}"

    def edge(self, *, edge: Name) -> str:
        return f"edge {self.w.name(edge)}"

    def other_site(self, *, site: Name) -> str:
        return f"the control site {self.w.name(site)}"

    def itself(self) -> str:
        return "what it carries"

    def _line(self, line: Line, holder: Name, *, start: bool = False) -> str:
        kind = {"tube": "tube", "edge": "edge"}[line]
        return f"{kind.capitalize() if start else kind} {self.w.name(holder)}"
