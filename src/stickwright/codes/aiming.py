"""Aimed movements, presses, following and smoothness: what was left out, and why a figure is not known."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Topic

__all__ = ["Aiming", "Without"]

Without = Literal[
    "before-start", "no-selection", "too-few-samples", "break", "began-inside", "no-movement", "nearer-start", "empty-cell",
    "no-time", "start-on-target", "selected-nearer-start", "far-from-target", "time-apart",
]  # fmt: skip
"""Why a movement does not count."""


class Aiming(Topic):
    """Lines beside a table of figures, and whole sentences why a figure is not known."""

    @abstractmethod
    def movement_out(self, *, number: int, at_s: float, why: Without) -> str:
        """A movement that was left out, counted from 1, when it was asked for, and why."""

    @abstractmethod
    def rows_out(self, *, rows: tuple[int, ...], why: Without) -> str:
        """Rows of a table that were left out for one reason."""

    @abstractmethod
    def jitter(self, *, jitter_factor: float) -> str:
        """Clause, what is assumed of a path: jitter up to so much to either side, in the recording's unit, does not count."""

    @abstractmethod
    def few_for_throughput(self, *, movements: int, least: int) -> str:
        """Why: too few movements."""

    @abstractmethod
    def no_scatter(self) -> str:
        """Why: the selections do not scatter."""

    @abstractmethod
    def widths_unknown(self) -> str:
        """Why: no widths of targets."""

    @abstractmethod
    def none_to_count(self) -> str:
        """Why: no movement to count."""

    @abstractmethod
    def bounce(self, *, at_s: float) -> str:
        """A press that was left out: within 0.03 s of the press before."""

    @abstractmethod
    def pause(self, *, pause_s: float, at_s: float) -> str:
        """A pause between presses that does not count."""

    @abstractmethod
    def presses_alike(self) -> str:
        """Why: all presses are the same time apart."""

    @abstractmethod
    def movement_unit(self, *, time_s: float) -> str:
        """The median movement takes unlikely long or short: ask for the unit."""

    @abstractmethod
    def press_unit(self, *, rate_hz: float) -> str:
        """An unlikely rate of presses: ask for the unit."""

    @abstractmethod
    def rows_lost(self, *, lost: int, rows: int) -> str:
        """Many rows of a table were left out."""

    @abstractmethod
    def no_stroke(self) -> str:
        """Why: no whole stroke of a drawing."""

    @abstractmethod
    def few_samples(self, *, rate_hz: float, least_hz: float) -> str:
        """Why: too few samples a second for smoothness."""

    @abstractmethod
    def always_moving(self, *, moving_share: float) -> str:
        """Why: it hardly ever stops."""
