"""Lines about aimed movements, presses, smoothness and tremor, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.aimed_lines import AimedLines, Clock, Figure
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_CLOCK: dict[Clock, str] = {
    "selection": "timed to the selection",
    "dwell": "timed to when the target is entered to stay (the stay is not counted)",
    "table": "timed as the table says",
}
_FIGURES: dict[Figure, str] = {
    "throughput": "throughput",
    "missed": "missed",
    "movement_time": "movement time",
    "press_time": "a press lasts",
    "target_reentries": "re-entries into the target",
    "task_axis_crossings": "crossings of the straight line",
    "movement_direction_changes": "changes of direction across the line",
    "orthogonal_direction_changes": "changes of direction along the line",
    "movement_variability": "scatter across the line",
    "movement_error": "distance from the line",
    "movement_offset": "offset to one side (plus is left)",
}
_OF: dict[Figure, str] = {
    "throughput": "bit/s",
    "movement_time": "(median of the movements)",
    "press_time": "(median of the presses)",
}
_AXES = "xyz"


class Texts(AimedLines):
    """Lines without a full stop."""

    w: English

    def movements(self, *, movements: int, clock: Clock) -> str:
        many = f"{movements} {self.w.plural(movements, one='movement', other='movements')}"
        return f"{many}, {_CLOCK[clock]}"

    def serial(self) -> str:
        return "each movement starts at the target before: distances are corrected by where the movement before ended"

    def figure(self, *, what: Figure, told: Text, known: bool) -> str:
        of = f" {_OF[what]}" if known and what in _OF else ""
        return f"{_FIGURES[what]} {self.say(told)}{of}"

    def both(self, *, first: Text, second: Text) -> str:
        return f"{self.say(first)}; {self.say(second)}"

    def beside(self, *, told: Text) -> str:
        return f"({self.say(told)})"

    def counts_follow(self) -> str:
        return "on average for each movement:"

    def lengths_follow(self) -> str:
        return "about the straight line to the target (median of the movements):"

    def entry(self, *, what: Figure, told: Text) -> str:
        return f"{_FIGURES[what]}: {self.say(told)}"

    def in_unit(self, *, told: Text, unit: Name) -> str:
        return f"{self.say(told)} {self.w.name(unit)}"

    def counts_assume(self, *, assumed: tuple[Text, ...]) -> str:
        return f"in these counts {self.w.all_of(tuple(self.clause(one) for one in assumed))} (assumed)"

    def left_out(self, *, what: Text) -> str:
        return f"left out: {self.say(what)}"

    def smoothness_unknown(self, *, why: Text) -> str:
        return f"not known: {self.clause(why)}"

    def smoothness_of(self, *, count: int, strokes: bool, few: bool) -> str:
        one, other = ("stroke", "strokes") if strokes else ("movement", "movements")
        least = " (no intervals: at least 6 are needed)" if few else ""
        return f"{count} {self.w.plural(count, one=one, other=other)}{least}"

    def smoothness(self, *, jerk: Text, arc: Text, strokes: bool) -> str:
        compare = (
            "compare the same drawing only" if strokes else "a reach without any correction has \u22125.3 and \u22121.4"
        )
        return (
            f"jerkiness (log dimensionless jerk) {self.say(jerk)}; unevenness of the speed (spectral arc length) "
            f"{self.say(arc)}: nearer 0 is smoother; {compare}"
        )

    def presses(self, *, presses: int, rate: Text, known: bool) -> str:
        many = f"{presses} {self.w.plural(presses, one='press', other='presses')}"
        return f"{many}: {self.say(rate)}{' a second' if known else ''}"

    def variation(self, *, told: Text) -> str:
        return f"time from press to press varies by {self.say(told)} (standard deviation)"

    def slowing(self, *, told: Text) -> str:
        return f"it changes by {self.say(told)} a second (plus is slowing)"

    def tremor_size(self, *, band: Text, peak: Text | None, excess: Text | None) -> str:
        parts = [self.say(band)]
        if peak is not None:
            parts.append(f"{self.say(peak)}, the peak's band")
        if excess is not None:
            parts.append(f"of that {self.say(excess)} above the background")
        return "; ".join(parts)

    def in_band(self, *, told: Text, low_hz: float, high_hz: float) -> str:
        low, high = (f"{end:.1f}".removesuffix(".0") for end in (low_hz, high_hz))
        return f"{self.say(told)} from {low} to {high} Hz"

    def axis(self, *, parts_share: tuple[float, ...]) -> str:
        return f"({', '.join(f'{name} {part:.2f}' for name, part in zip(_AXES, parts_share, strict=False))})"

    def size(self, *, value: Text, beside: Text, unit: Name | None) -> str:
        of = "of full output" if unit is None else self.w.name(unit)
        return " ".join(part for part in (self.say(value), of, self.say(beside)) if part)
