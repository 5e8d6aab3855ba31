"""What is wrong with samples, times and numbers that are handed to an analysis: parts of a problem."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Topic

__all__ = ["Counted", "ExpectedSignal", "FoundSignal", "SignalRemedy", "SignalStep", "Signals"]

Counted = Literal["movements", "usable", "rows", "independent"]
"""Movements, usable samples, rows, samples that are independent of each other."""
FoundSignal = Literal[
    "no_target", "empty_cell", "no_scatter", "behind_starts", "start_on_target", "no_direction", "not_a_direction",
    "no_samples", "one_sample", "no_number", "no_value", "no_usable_stretch", "straight_line", "empty_or_negative",
    "no_movement", "no_long_stretch", "still_target", "same_place", "same_value", "empty_or_infinite",
    "no_time_between", "direction_twice", "negative_sd",
]  # fmt: skip
"""What was found instead."""
ExpectedSignal = Literal[
    "width_above_0", "place_asked", "two_places", "zero_or_more", "numbers", "length_or_0", "length_above_0",
    "two_or_more", "scattered_selections", "one_column", "durations_above_0", "one_angle", "some_seconds",
    "seconds", "times_onwards", "x_or_y", "two", "two_moving", "cutoff_and_threshold", "movement_that_stops",
    "three_samples", "rate", "numbers_or_0", "one_stamp", "number_of_seconds", "rising_stamps", "two_movements",
    "press_times", "times_forward", "one_end_each", "ends_after_starts", "target_place", "moving_target",
    "movement", "a_movement", "number", "path_shape", "seconds_or_0", "centre_scatter", "scatter_growth", "shares",
    "as_many_each", "sds", "own_dead_zone", "open_share", "one_or_more", "xy_rows", "rest_recording",
    "seconds_each", "time_onwards", "above_0", "moving_stamps", "one_stretch", "share_below_1", "straight_or_more",
    "share_above_0", "direction_once", "one_each_direction",
]  # fmt: skip
"""What would have been accepted."""
SignalRemedy = Literal[
    "guided_task", "tracking", "leave_out_movement", "leave_out_cells", "record_or_choose", "rows_without_time",
    "split_file", "columns", "record_again", "recording_time", "only", "press_10_s", "leave_out_row",
    "time_of_press", "columns_exchanged", "pointing", "stick_live", "record_20_s", "tremor_report", "in_seconds",
    "record_following", "as_share", "as_share_95", "rank", "longer_rest", "record_rest", "split_recording",
    "time_in_seconds", "split_at_gap", "higher_rate",
]  # fmt: skip
"""What to do."""
SignalStep = Literal[
    "recording", "start_target", "movements", "rest", "stamps", "samples",
]  # fmt: skip
"""What the problem is about."""


class Signals(Topic):
    """Parts of problems: where, found, expected, remedy."""

    @abstractmethod
    def step(self, *, what: SignalStep) -> str:
        """Where: what the problem is about."""

    @abstractmethod
    def sample(self, *, number: int) -> str:
        """Where: a sample by its place, the first is 1."""

    @abstractmethod
    def found(self, *, what: FoundSignal) -> str:
        """Found, without figures."""

    @abstractmethod
    def expected(self, *, what: ExpectedSignal) -> str:
        """Expected, without figures."""

    @abstractmethod
    def remedy(self, *, what: SignalRemedy) -> str:
        """What to do: one or two whole sentences."""

    @abstractmethod
    def shape(self, *, shape: tuple[int, ...]) -> str:
        """Found: an array of another shape, rows first."""

    @abstractmethod
    def shape_for_times(self, *, shape: tuple[int, ...], or_more: bool) -> str:
        """Expected: the shape of an array with one row for each time; whether more columns would do."""

    @abstractmethod
    def backwards(self, *, now_s: float, before_s: float) -> str:
        """Found: a time that is before the one before it."""

    @abstractmethod
    def press_backwards(self, *, number: int, now_s: float, before_s: float) -> str:
        """Found: a press that begins before the one before it."""

    @abstractmethod
    def press_ends_early(self, *, number: int, down_s: float, up_s: float) -> str:
        """Found: a press that ends before it begins."""

    @abstractmethod
    def press_ends(self, *, ends: int, presses: int) -> str:
        """Found: another number of ends than of presses."""

    @abstractmethod
    def count(self, *, count: int, of: Counted) -> str:
        """Found: so many of them."""

    @abstractmethod
    def at_least(self, *, count: int) -> str:
        """Expected: so many or more."""

    @abstractmethod
    def one_each(self, *, samples: int) -> str:
        """Expected: one time for each of so many samples."""

    @abstractmethod
    def few_samples(self, *, samples: int, rate_hz: float) -> str:
        """Found: too few samples."""

    @abstractmethod
    def enough_samples(self, *, least_s: float) -> str:
        """Expected: so long at 10 samples a second."""

    @abstractmethod
    def followed_least(self, *, least_s: float) -> str:
        """Expected: following for so long without a gap."""

    @abstractmethod
    def followed(self, *, time_s: float) -> str:
        """Found: so long with a moving target."""

    @abstractmethod
    def time_least(self, *, least_s: float) -> str:
        """Expected: so long or longer."""

    @abstractmethod
    def target_stays(self, *, time_s: float) -> str:
        """Found: a target that stays for so short a time."""

    @abstractmethod
    def targets_stay(self, *, least_s: float) -> str:
        """Expected: targets that stay so long."""

    @abstractmethod
    def coverage(self, *, least: int, coverage_share: float, confidence_share: float) -> str:
        """Expected: enough samples for a share of rest at a confidence."""

    @abstractmethod
    def below_half_rate(self, *, limit_hz: float) -> str:
        """Expected: a frequency below half the sampling rate."""

    @abstractmethod
    def apart(self, *, samples: int, span_s: float, interval_s: float) -> str:
        """Found: samples over a long time, most of them close together."""

    @abstractmethod
    def scatter_counts(self, *, levels: int, sds: int, degrees: int) -> str:
        """Found: unlike numbers of levels, standard deviations and degrees of freedom."""

    @abstractmethod
    def gains(self, *, gains: int, directions: int) -> str:
        """Found: so many gains for so many directions."""
