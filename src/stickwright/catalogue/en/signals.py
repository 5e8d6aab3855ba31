"""What is wrong with samples and times, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.signals import Counted, ExpectedSignal, FoundSignal, SignalRemedy, Signals, SignalStep

__all__ = ["Texts"]

_COUNTED: dict[Counted, tuple[str, str]] = {
    "movements": ("movement", "movements"),
    "usable": ("usable sample", "usable samples"),
    "rows": ("row", "rows"),
    "independent": ("independent sample", "independent samples"),
}
_FOUND: dict[FoundSignal, str] = {
    "no_target": "no target",
    "empty_cell": "an empty cell",
    "no_scatter": "no scatter at all",
    "behind_starts": "selections behind their starts",
    "start_on_target": "a start on its target",
    "no_direction": "no direction",
    "not_a_direction": "a direction that is not a number",
    "no_samples": "no samples",
    "one_sample": "one sample",
    "no_number": "no number",
    "no_value": "no value on either axis",
    "no_usable_stretch": "no usable stretch",
    "straight_line": "a straight line",
    "empty_or_negative": "an empty cell or a negative value",
    "no_movement": "no movement",
    "no_long_stretch": "no stretch long enough",
    "still_target": "a target that stands still",
    "same_place": "the same place throughout",
    "same_value": "the same value throughout",
    "empty_or_infinite": "an empty or infinite value",
    "no_time_between": "no time between samples",
    "direction_twice": "the same direction twice",
    "negative_sd": "a negative standard deviation, or no degree of freedom",
}
_EXPECTED: dict[ExpectedSignal, str] = {
    "width_above_0": "a width above 0",
    "place_asked": "where the player was asked to go",
    "two_places": "two different places",
    "zero_or_more": "0 or more",
    "numbers": "numbers",
    "length_or_0": "a length of 0 or more",
    "length_above_0": "a length above 0",
    "two_or_more": "at least two, because their scatter is needed",
    "scattered_selections": "selections that scatter about their targets",
    "one_column": "one column",
    "durations_above_0": "durations above 0",
    "one_angle": "one angle or more",
    "some_seconds": "a recording of some seconds",
    "seconds": "seconds",
    "times_onwards": "times that never go back",
    "x_or_y": "numbers for x, y or both",
    "two": "at least two",
    "two_moving": "two samples or more that move",
    "cutoff_and_threshold": "a cut-off above 0 Hz and a threshold from 0 to below 1",
    "movement_that_stops": "a movement that starts and stops",
    "three_samples": "one column of at least three samples",
    "rate": "a number of samples a second above 0",
    "numbers_or_0": "numbers of 0 or more",
    "one_stamp": "one column of at least one time stamp",
    "number_of_seconds": "a number of seconds",
    "rising_stamps": "time stamps that rise",
    "two_movements": "at least two movements",
    "press_times": "the time of each press",
    "times_forward": "times that run forward",
    "one_end_each": "one end for each",
    "ends_after_starts": "ends after beginnings",
    "target_place": "where the target was",
    "moving_target": "a moving target",
    "movement": "movement",
    "a_movement": "a movement",
    "number": "a number",
    "path_shape": "shape (n, 2), at least two samples",
    "seconds_or_0": "seconds, 0 or more",
    "centre_scatter": "scatter near the centre, above 0",
    "scatter_growth": "growth of the scatter, 0 or more",
    "shares": "shares between 0 and 1",
    "as_many_each": "as many of each",
    "sds": "standard deviations of two or more samples",
    "own_dead_zone": "a share of the output, 0 to 0.97",
    "open_share": "a share above 0 and below 1",
    "one_or_more": "1 or more",
    "xy_rows": "one row of x and y for each sample",
    "rest_recording": "a recording of rest",
    "seconds_each": "a number of seconds for each sample",
    "time_onwards": "time that does not run backwards",
    "above_0": "a number above 0",
    "moving_stamps": "time stamps that move on",
    "one_stretch": "one stretch of time",
    "share_below_1": "a share of full output, 0 to below 1",
    "straight_or_more": "0 (straight) or more",
    "share_above_0": "a share of full output above 0",
    "direction_once": "each direction once",
    "one_each_direction": "one for each direction",
}
_REMEDY: dict[SignalRemedy, str] = {
    "guided_task": "Use the guided task.",
    "tracking": "For a target that moves all the time, use tracking.",
    "leave_out_movement": "Leave out that movement.",
    "leave_out_cells": "Leave empty cells out.",
    "record_or_choose": "Record again, or choose another file.",
    "rows_without_time": "Delete these rows, or give them their times.",
    "split_file": "Are there two recordings in one file, or was the clock set? Split the file there.",
    "columns": "Check which columns were chosen.",
    "record_again": "Record again.",
    "recording_time": "Use the time from the start of the recording, not the time of day.",
    "only": "Were all rows left out by --only?",
    "press_10_s": "Press for 10 s.",
    "leave_out_row": "Leave out that row.",
    "time_of_press": "Is it the time of each press, not how long it lasted?",
    "columns_exchanged": "Are the two columns exchanged?",
    "pointing": "For jumps, use pointing.",
    "stick_live": "Record again while the stick moves.",
    "record_20_s": "Record 20 s, at 50 samples a second or more.",
    "tremor_report": "Use tremor_report, which allows for gaps.",
    "in_seconds": "In seconds: 60 ms is 0.06.",
    "record_following": "Record one minute of following a moving target.",
    "as_share": "Write 20% as 0.20.",
    "as_share_95": "Write 95% as 0.95.",
    "rank": "1 is the largest sample.",
    "longer_rest": "Record a longer rest, with the hands as in play but not trying.",
    "record_rest": "Record 20 s of rest.",
    "split_recording": "Are there two recordings in one, or was the clock set back? Split the recording there.",
    "time_in_seconds": "Record the time in seconds.",
    "split_at_gap": "Split the recording at its long gap.",
    "higher_rate": "Record at a higher rate, or choose a lower frequency.",
}
_STEP: dict[SignalStep, str] = {
    "recording": "the recording",
    "start_target": "start, target",
    "movements": "starts, targets, selections",
    "rest": "rest samples",
    "stamps": "time stamps",
    "samples": "samples",
}


class Texts(Signals):
    """Parts of problems: where, found, expected, remedy."""

    w: English

    def step(self, *, what: SignalStep) -> str:
        return _STEP[what]

    def sample(self, *, number: int) -> str:
        return f"sample {self.w.whole(number)}"

    def found(self, *, what: FoundSignal) -> str:
        return _FOUND[what]

    def expected(self, *, what: ExpectedSignal) -> str:
        return _EXPECTED[what]

    def remedy(self, *, what: SignalRemedy) -> str:
        return _REMEDY[what]

    def shape(self, *, shape: tuple[int, ...]) -> str:
        return f"shape {self._shape(shape)}"

    def shape_for_times(self, *, shape: tuple[int, ...], or_more: bool) -> str:
        return f"shape {self._shape(shape, ' or more' if or_more else '')}, one row for each time"

    def backwards(self, *, now_s: float, before_s: float) -> str:
        return f"{self._time(now_s)} after {self._time(before_s)}"

    def press_backwards(self, *, number: int, now_s: float, before_s: float) -> str:
        return f"press {self.w.whole(number)} at {self._time(now_s)} after {self._time(before_s)}"

    def press_ends_early(self, *, number: int, down_s: float, up_s: float) -> str:
        return f"press {self.w.whole(number)} from {self._time(down_s)} to {self._time(up_s)}"

    def press_ends(self, *, ends: int, presses: int) -> str:
        return f"{self.w.whole(ends)} {self.w.plural(ends, one='end', other='ends')} of {self.w.whole(presses)} presses"

    def count(self, *, count: int, of: Counted) -> str:
        return f"{self.w.whole(count)} {self.w.plural(count, one=_COUNTED[of][0], other=_COUNTED[of][1])}"

    def at_least(self, *, count: int) -> str:
        return f"at least {self.w.whole(count)}"

    def one_each(self, *, samples: int) -> str:
        return f"one for each of the {self.w.whole(samples)} samples"

    def few_samples(self, *, samples: int, rate_hz: float) -> str:
        return f"{self.w.whole(samples)} samples at {self.w.trimmed(rate_hz, 3)} a second"

    def enough_samples(self, *, least_s: float) -> str:
        return f"at least {self.w.trimmed_amount(least_s, 's')} at 10 samples a second"

    def followed_least(self, *, least_s: float) -> str:
        return f"{self.w.trimmed_amount(least_s, 's')} of following without a gap"

    def followed(self, *, time_s: float) -> str:
        return f"{self.w.trimmed_amount(time_s, 's')} with a moving target"

    def time_least(self, *, least_s: float) -> str:
        return f"{self.w.trimmed_amount(least_s, 's')} or more"

    def target_stays(self, *, time_s: float) -> str:
        return f"a target that stays for {self.w.amount(time_s, 's')}"

    def targets_stay(self, *, least_s: float) -> str:
        return f"targets that stay for {self.w.trimmed_amount(least_s, 's')} or more"

    def coverage(self, *, least: int, coverage_share: float, confidence_share: float) -> str:
        return (
            f"at least {self.w.whole(least)} for {self.w.fine_share_figures(coverage_share)} of rest at "
            f"{self.w.fine_share_figures(confidence_share)} confidence"
        )

    def below_half_rate(self, *, limit_hz: float) -> str:
        return f"below {self.w.trimmed_amount(limit_hz, 'hz', 3)}, half the rate of this recording"

    def apart(self, *, samples: int, span_s: float, interval_s: float) -> str:
        return (
            f"{self.w.whole(samples)} samples over {self.w.trimmed_amount(span_s, 's', 3)}, most of them "
            f"{self.w.trimmed_amount(interval_s, 's', 3)} apart"
        )

    def scatter_counts(self, *, levels: int, sds: int, degrees: int) -> str:
        return (
            f"{self.w.whole(levels)} levels, {self.w.whole(sds)} standard deviations, {self.w.whole(degrees)} degrees of "
            "freedom"
        )

    def gains(self, *, gains: int, directions: int) -> str:
        return f"{self.w.whole(gains)} for {self.w.whole(directions)} directions"

    def _shape(self, shape: tuple[int, ...], more: str = "") -> str:
        return f"({', '.join(str(one) for one in shape)}{more}{',' if len(shape) == 1 else ''})"

    def _time(self, time_s: float) -> str:
        return self.w.trimmed_amount(time_s, "s", 6)
