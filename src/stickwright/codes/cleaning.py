"""What is wrong with a recording before anything is taken from it: its times, its cells, and what the output gives away."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic
from stickwright.codes.ways import Way

__all__ = ["Axis", "Cleaning"]

Axis = Literal["x", "y"]


class Cleaning(Topic):
    """Findings of a recording, each with its figures and what to do."""

    @abstractmethod
    def rows(self, *, runs: tuple[tuple[int, int], ...], more: int) -> str:
        """Rows counted from 1, in brackets behind their number: runs of rows from first to last, and how many more there are."""

    @abstractmethod
    def nothing_moves(self) -> str:
        """The value is the same throughout."""

    @abstractmethod
    def one_axis(self, *, recorded: Axis) -> str:
        """Only one of two axes was recorded: what cannot be worked out."""

    @abstractmethod
    def empty_cells(self, *, lost: int, samples: int, rows: Text) -> str:
        """Some samples hold no number; which rows."""

    @abstractmethod
    def coarse_clock(self, *, repeated: int, clock_step_s: float, interval_s: float) -> str:
        """Stamps repeat since the clock counts in coarse steps; all fit an even interval, and even times are used."""

    @abstractmethod
    def same_time(self, *, repeated: int, rows: Text) -> str:
        """Samples bear the time of the one before; which rows."""

    @abstractmethod
    def unknown_task(self, *, task: Name, known: Text) -> str:
        """The task named in the recording is not one of the known; the nearest known, or all."""

    @abstractmethod
    def unknown_cue(self, *, cue: Name, rows: Text, known: Text) -> str:
        """A cue word is not one of the known; which rows; the nearest known, or all."""

    @abstractmethod
    def too_large(self, *, largest_factor: float) -> str:
        """Values larger than a share of full output can be."""

    @abstractmethod
    def milliseconds(self, *, interval_s: float) -> str:
        """One sample in a second or more: the times may be milliseconds."""

    @abstractmethod
    def uneven_time(self, *, interval_s: float, longest_s: float, trusted_hz: float) -> str:
        """Time steps are uneven: the median, what one in a hundred exceeds, and up to where tremor is trusted."""

    @abstractmethod
    def slow_sampling(self, *, rate_hz: float, interval_s: float, longest_s: float, trusted_hz: float) -> str:
        """Few samples a second: mean step, what one in a hundred exceeds, and up to where tremor is trusted."""

    @abstractmethod
    def gaps(self, *, gaps: int, limit_s: float, missing_share: float, longest_s: float, at_s: float) -> str:
        """Gaps longer than a limit, their share of the time, the longest and when it begins."""

    @abstractmethod
    def lost_while_away(self, *, at_s: float, more: int, missing_s: float) -> str:
        """No samples come while the stick is away from its centre, and then it is elsewhere; how often more."""

    @abstractmethod
    def before_start(self, *, samples: int, start_s: float, stop_s: float) -> str:
        """The first samples are exactly 0, then jump: left out."""

    @abstractmethod
    def zeros(self, *, start_s: float, stop_s: float, jump: Text) -> str:
        """Exact zeros that begin with a jump from a size of output: left out."""

    @abstractmethod
    def frozen(self, *, x: Text, y: Text, start_s: float, stop_s: float, cue_moves: bool) -> str:
        """The value stands still: while the cue moves it is left out, otherwise kept and asked about."""

    @abstractmethod
    def coarse_steps(self, *, step: Text, steps: int, of_travel: bool) -> str:
        """The output moves in coarse steps; how many across all travel, or across all that was seen."""

    @abstractmethod
    def dead_zone(
        self, *, size: Text, kind: Literal["square", "radial"], steps: int | None, step: Text | None, near: int | None
    ) -> str:
        """A dead zone was applied before recording: its size, of how many steps, on each axis (square) or by distance (radial),
        and how few samples lie near it where they are few."""

    @abstractmethod
    def rest_cleaned(self, *, zero_share: float, longest_s: float, widest_share: float | None, sure: bool) -> str:
        """Most samples about the centre are exactly 0, for how long at a stretch; how far the output goes where it is beyond a
        stick's; other software did it, or the rest is quieter than one step."""

    @abstractmethod
    def clipping(self, *, edge: bool, limits: tuple[Text, ...]) -> str:
        """Samples at an exact limit of the output, by direction (`limit`); of edge and push samples or of all."""

    @abstractmethod
    def limit(self, *, clipped_share: float, limit: Text, way: Way) -> str:
        """In a list: the share of samples at one limit of the output, and toward where."""
