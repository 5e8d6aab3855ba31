"""Where the base of a device goes, in English."""

from __future__ import annotations

import math

from stickwright.catalogue.en import English
from stickwright.codes.arm_reasons import Line
from stickwright.codes.message import Message, Name
from stickwright.codes.mount_poses import Along, End, LineEnd, MountPoses
from stickwright.codes.mount_rules import DeviceKind

__all__ = ["Texts"]

_SEEN_M, _SEEN_RAD = 0.0005, math.radians(0.5)
_ENDS: dict[LineEnd, str] = {
    "right": "right end", "left": "left end", "front": "front end", "back": "back end", "upper": "upper end",
    "lower": "lower end",
}  # fmt: skip
_IN_LINE: dict[Along, str] = {
    "up": "level with it", "down": "level with it", "left": "on the centre line", "right": "on the centre line",
    "forward": "in line with it", "back": "in line with it",
}  # fmt: skip


class Texts(MountPoses):
    """Each a sentence, except where the topic says otherwise."""

    w: English

    def base(self, *, device: Name, right_m: float, forward_m: float, up_m: float, off_m: float, known: bool) -> str:
        ways = ((right_m, "right", "left"), (forward_m, "forward", "back"), (up_m, "up", "down"))
        far = [
            f"{self.w.millimetres(abs(at))} {plus if at > 0 else minus}"
            for at, plus, minus in ways
            if abs(at) >= _SEEN_M
        ]
        where = f"{', '.join(far)} from" if far else "at"
        near = f"±{self.w.trimmed_amount(off_m, 'mm', 1)}"
        off = near if known else f"how far off it may be is not known: {near}"
        return f"Middle of the underside of {self.w.name(device)}: {where} the seat reference point ({off})."

    def turned(
        self, *, turn_rad: float, tilt_rad: float, off_rad: float, lost: Message | None, why: Message | None
    ) -> str:
        straight, level = abs(turn_rad) < _SEEN_RAD, abs(tilt_rad) < _SEEN_RAD
        near = f"±{self.w.trimmed_amount(off_rad, 'deg', 1)}"
        higher = f"{'far' if tilt_rad > 0 else 'near'} edge {self.w.whole(abs(math.degrees(tilt_rad)))}° higher"
        slope = "level" if level else f"its {higher}"
        if straight:
            base = f"Its base is square and level ({near})." if level else f"Its base is square ({near}), {slope}."
        else:
            base = f"Its base is turned {self.w.turn(turn_rad)}, seen from above ({near}), and {slope}."
        return " ".join([base, *(self.say(one) for one in (lost, why) if one is not None)])

    def lost(self, *, kind: DeviceKind, off_m: float, turned_rad: float, fine: bool) -> str:
        off = self.w.trimmed_amount(off_m, "mm", 1 if off_m < 0.001 else 2)
        turned = self.w.trimmed_amount(turned_rad, "deg")
        said = {
            "stick": f"If it is {off} off, a tenth of the movement range is lost; if it is turned {turned} off, a tenth of each "
            "push is lost",
            "switch": f"If it is {off} off, a press meant for its middle lands beside it",
            "controller": f"If it is {off} off, a press lands on the next button; if it is turned {turned} off, a tenth of each push "
            "is lost",
        }[kind]
        return f"{said}{': finer than a tape can show, so settle it with the player' if fine else ''}."

    def clock(self) -> str:
        return "Clock directions are seen from above, with 12 o'clock straight ahead of the player."

    def distances(self, *, start: Name, to: End, far: tuple[Message, ...]) -> str:
        told = self.w.all_of(tuple(self.clause(one) for one in far))
        return f"From {self.w.name(start)} to {self.end(to=to)}: {told}."

    def far(self, *, distance_m: float, along: Along) -> str:
        return _IN_LINE[along] if distance_m < _SEEN_M else f"{self.w.millimetres(distance_m)} {along}"

    def end(self, *, to: End) -> str:
        return "middle of the base" if to == "base" else "clamp"

    def along(self, *, line: Line, end: LineEnd | None, along_m: float) -> str:
        start = _ENDS[end] if end is not None else "first end"
        return f"along the {line} from its {start}: {self.w.millimetres(along_m)}"

    def clamp(self, *, along: Message) -> str:
        return f"Clamp {self.clause(along)}."

    def only_place(self) -> str:
        return "The clamp fits in no other place here: set the distance exactly."

    def places(self, *, from_m: tuple[float, ...], to_m: tuple[float, ...], end: LineEnd, line: Name) -> str:
        told = self.w.all_of(
            tuple(
                f"{self.w.whole(low * 1000)} to {self.w.millimetres(high)}"
                for low, high in zip(from_m, to_m, strict=False)
            )
        )
        return f"The clamp may sit {told} from the {_ENDS[end]} of the {self.w.name(line)}; then set the joints again."
