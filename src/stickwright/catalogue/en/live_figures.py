"""What a measuring task tells while the player is still there, in English."""

from __future__ import annotations

import math
from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.estimate import Estimate
from stickwright.codes.live_figures import FigureUnit, LiveFigures, Reason, Repeatable
from stickwright.codes.message import Text
from stickwright.codes.ways import Way

__all__ = ["Texts"]

_MORE: dict[Repeatable, tuple[str, str]] = {
    "rest": ("more rest after a small movement", "more rests, each after a small movement"),
    "edge": ("more time round the edge", "more times round the edge"),
    "push": ("more push", "more pushes"),
    "hold": ("more hold after a rest", "more holds, each after a rest"),
    "circle": ("more circle of targets", "more circles of targets"),
    "following": ("more round of following", "more rounds of following"),
    "presses": ("more round of presses", "more rounds of presses"),
    "repeat": ("more repeat", "more repeats"),
}
_REASONS: dict[Reason, str] = {
    "not-tried": "not tried yet",
    "counted": "counted",
    "one-hold": "one hold, without its first second",
    "one-press": "fewer than two presses were made",
    "alike": "all presses were exactly the same time apart",
    "few-released": "the switch was released fewer than three times",
    "few-on-the-beat": "fewer than three presses",
    "too-little": "too little was recorded",
}
_UNITS: dict[FigureUnit, str] = {
    "share": "%",
    "share/s": "% per second",
    "s": "\N{NO-BREAK SPACE}s",
    "bit/s": " bits per second",
    "per-s": " presses per second",
    "rad": "°",
}


class Texts(LiveFigures):
    """Row headings, figures and verdicts."""

    w: English

    def reach(self, *, way: Way) -> str:
        return f"Furthest deflection, {way}"

    def centre(self, *, axis: Literal["sideways", "forward"]) -> str:
        return f"Resting position, {'left (-) or right (+)' if axis == 'sideways' else 'back (-) or forward (+)'}"

    def rest_time(self) -> str:
        return "Time at rest"

    def rest_noise(self) -> str:
        return "Movement at rest, rms (typical size)"

    def area(self) -> str:
        return "Area covered, of full travel"

    def turned(self) -> str:
        return "Rotation of all pushes"

    def hold_scatter(self, *, way: Way, level_share: float) -> str:
        return f"Scatter when holding {way} at {self.w.share(level_share)}"

    def level_held(self) -> str:
        return "Deflection held"

    def level_change(self) -> str:
        return "Change in the deflection held"

    def held_for(self) -> str:
        return "Time held"

    def throughput(self) -> str:
        return "Throughput (speed and accuracy together)"

    def missed(self) -> str:
        return "Targets missed"

    def off_target(self) -> str:
        return "Distance from the target"

    def lag(self) -> str:
        return "Delay behind the target"

    def off_without_lag(self) -> str:
        return "Distance from the target without the delay"

    def gain(self) -> str:
        return "Size of the movement, of the target's"

    def away(self) -> str:
        return "Time away from centre"

    def full(self) -> str:
        return "Time at full travel"

    def press_rate(self) -> str:
        return "Press rate"

    def press_held(self) -> str:
        return "Time held down per press"

    def behind_beat(self) -> str:
        return "Delay behind the beat"

    def figure(self, *, value: Estimate, unit: FigureUnit) -> str:
        if value.value is None:
            return f"not known ({self._why(value)})"
        if value.endless:
            return f"{self._amount(value.value, unit)} (at least {self._amount(value.lower, unit)})"
        if not value.has_interval:
            return f"{self._amount(value.value, unit)}, no interval ({self._why(value)})"
        low, high = self._bare(value.lower, unit), self._amount(value.upper, unit)
        return f"{self._amount(value.value, unit)} ({low} to {high})"

    def figure_alone(self, *, value: Estimate, unit: FigureUnit) -> str:
        return self._amount(value.number, unit)

    def within_share(self, *, half_width_share: float) -> str:
        return f"±{self._amount(half_width_share, 'share')}"

    def within_time(self, *, half_width_s: float) -> str:
        return f"±{self._amount(half_width_s, 's')}"

    def within_bits(self, *, half_width_per_s: float) -> str:
        return f"±{self._amount(half_width_per_s, 'bit/s')}"

    def within_presses(self, *, half_width_per_s: float) -> str:
        return f"±{self._amount(half_width_per_s, 'per-s')}"

    def at_least(self, *, least_s: float) -> str:
        return f"at least {self._amount(least_s, 's')}"

    def more(self, *, count: int, what: Repeatable, way: Way | None) -> str:
        one, other = _MORE[what]
        towards = "" if way is None else f" to the {way}" if way in ("left", "right") else f" {way}"
        return f"{self.w.whole(count)} {self.w.plural(count, one=one, other=other)}{towards}"

    def reason(self, *, reason: Reason) -> str:
        return _REASONS[reason]

    def few_presses(self, *, presses: int) -> str:
        return f"{self.w.whole(presses)} {self.w.plural(presses, one='press is', other='presses are')} too few"

    def counted_play(self, *, time_s: float) -> str:
        return f"counted over {self.w.amount(time_s, 's')} of play"

    def nothing_recorded(self, *, task: Text) -> str:
        return f"{self.say(task)}: nothing has been recorded yet."

    def nothing_told(self, *, task: Text) -> str:
        return f"{self.say(task)}: too little has been recorded for any figure."

    def seen(self) -> str:
        return "Enough. Repeating this task would not make its figures more certain."

    def enough(self, *, label: Text, value: Text, wanted: Text) -> str:
        return f"Enough. The least certain figure is good enough. {self._told(label, value, wanted)}"

    def not_enough(self, *, nearly: bool, more: tuple[Text, ...], label: Text, value: Text, wanted: Text) -> str:
        asked = self.w.clause(self.w.all_of(tuple(self.say(one) for one in more)))
        return f"{'Nearly enough' if nearly else 'Not enough yet'}. Ask for {asked}. {self._told(label, value, wanted)}"

    def so_far(self, *, verdict: Literal["not-enough", "nearly", "enough"], steps: int) -> str:
        if verdict == "enough":
            last = self.w.plural(steps, one="step", other=f"{self.w.whole(steps)} steps")
            return f"Enough so far. You may leave out the last {last}."
        left = f"{self.w.whole(steps)} {self.w.plural(steps, one='step', other='steps')}"
        return f"{'Nearly enough' if verdict == 'nearly' else 'Not enough'} so far. Carry on: {left} to go."

    def known(self, *, line: Literal["information", "enough", "more"]) -> str:
        return {"information": "for information", "enough": "enough", "more": "more would help"}[line]

    def _told(self, label: Text, value: Text, wanted: Text) -> str:
        said, enough = self.clause(value), self.clause(wanted)
        return f"{self.say(label)}: {said}; wanted: {enough}."

    def _why(self, value: Estimate) -> str:
        return self.clause(value.why) if value.why else _REASONS["too-little"]

    def _bare(self, value: float, unit: FigureUnit) -> str:
        shown = 100 * value if unit in ("share", "share/s") else math.degrees(value) if unit == "rad" else value
        return self.w.number(shown) if math.isfinite(shown) else self.w.unknown

    def _amount(self, value: float, unit: FigureUnit) -> str:
        return f"{self._bare(value, unit)}{_UNITS[unit]}" if math.isfinite(value) else self.w.unknown
