"""Aimed movements and presses, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.aiming import Aiming, Without

__all__ = ["Texts"]

_WITHOUT: dict[Without, str] = {
    "before-start": "asked for before the recording began",
    "no-selection": "no selection",
    "too-few-samples": "too few samples",
    "break": "a break in the recording",
    "began-inside": "began inside the target",
    "no-movement": "no movement",
    "nearer-start": "ended nearer to its start than to the target",
    "empty-cell": "an empty cell",
    "no-time": "no time passed",
    "start-on-target": "the start is on the target",
    "selected-nearer-start": "selected nearer to the start than to the target",
    "far-from-target": "selected far from the target, unlike the other movements",
    "time-apart": "its time is far from that of the other movements",
}


class Texts(Aiming):
    """Lines beside a table of figures, and whole sentences why a figure is not known."""

    w: English

    def movement_out(self, *, number: int, at_s: float, why: Without) -> str:
        return f"movement {self.w.whole(number)} at {self.w.trimmed_amount(at_s, 's', 3)}: {_WITHOUT[why]}"

    def rows_out(self, *, rows: tuple[int, ...], why: Without) -> str:
        return (
            f"{self.w.plural(len(rows), one='row', other='rows')} {self.w.all_of(tuple(self.w.whole(one) for one in rows))}: "
            f"{_WITHOUT[why]}"
        )

    def jitter(self, *, jitter_factor: float) -> str:
        return f"jitter up to {self.w.number(jitter_factor, 3)} to either side does not count"

    def few_for_throughput(self, *, movements: int, least: int) -> str:
        return (
            f"{self.w.whole(movements)} {self.w.plural(movements, one='movement is', other='movements are')} too few for "
            f"throughput. Record at least {self.w.whole(least)}."
        )

    def no_scatter(self) -> str:
        return "The selections do not scatter about their targets."

    def widths_unknown(self) -> str:
        return "The widths of the targets are not known."

    def none_to_count(self) -> str:
        return "There was no movement to count."

    def bounce(self, *, at_s: float) -> str:
        return f"press at {self.w.trimmed_amount(at_s, 's', 3)}: within 0.03 s of the press before, a bouncing switch"

    def pause(self, *, pause_s: float, at_s: float) -> str:
        return f"pause of {self.w.amount(pause_s, 's')} after {self.w.trimmed_amount(at_s, 's', 3)}"

    def presses_alike(self) -> str:
        return "The presses are all exactly the same time apart."

    def movement_unit(self, *, time_s: float) -> str:
        return f"The median movement takes {self.w.trimmed_amount(time_s, 's', 3)}. If that is the wrong unit of time, set --time-unit."

    def press_unit(self, *, rate_hz: float) -> str:
        return f"There are {self.w.trimmed(rate_hz, 3)} presses a second. If that is the wrong unit of time, set --time-unit."

    def rows_lost(self, *, lost: int, rows: int) -> str:
        return (
            f"{self.w.whole(lost)} of {self.w.whole(rows)} rows were left out. Are these the right columns, with one unit of "
            "length throughout?"
        )

    def no_stroke(self) -> str:
        return "No stroke was whole, without a gap, and long enough."

    def few_samples(self, *, rate_hz: float, least_hz: float) -> str:
        return f"{self.w.trimmed(rate_hz, 3)} samples a second are too few. Record at {self.w.whole(least_hz)} or more."

    def always_moving(self, *, moving_share: float) -> str:
        return (
            f"The stick moves for {self.w.share(moving_share)} of the time and hardly ever stops, so single movements cannot "
            "be told apart. For a drawing, name the column that numbers its strokes."
        )
