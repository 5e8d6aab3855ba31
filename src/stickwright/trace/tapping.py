"""Presses one after the other: how many a second, how even, and whether they slow down."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.aiming import Aiming
from stickwright.codes.estimate import Estimate
from stickwright.codes.intervals import Intervals
from stickwright.codes.message import Text, message
from stickwright.codes.signals import Signals
from stickwright.errors import BadInput, Problem
from stickwright.model.recorded import TapReport
from stickwright.trace.intervals import median_estimate
from stickwright.trace.return_to_centre import effective_count

__all__ = ["tap_report"]

BOUNCE_S = 0.03
"""A press so soon after the one before is the switch's bouncing, not a finger; common practice."""

PAUSE = 4.0
"""Times the usual time from press to press: longer is a pause, not a slow press; common practice."""

LEAST_PRESSES = 5


def tap_report(down_s: ArrayLike, up_s: ArrayLike | None = None) -> TapReport:
    """Rate, evenness and slowing of presses.

    Parameters
    ----------
    down_s : array, shape (n,)
        When each press began, seconds, rising.
    up_s : array, shape (n,), or None
        When each ended.

    Returns
    -------
    TapReport
        Bounces (within 0.03 s) and pauses (over four times the usual time from press to press) are left out and named.

    Raises
    ------
    BadInput
        Fewer than five presses, an empty cell, times that go back, or a press that ends before it began.

    Notes
    -----
    Rate: one over the mean time from press to press; its interval from the t distribution on as many intervals as
    the series is worth [bayley-hammersley-1946]. Slowing: straight line by least squares through those times.

    Examples
    --------
    >>> report = tap_report(np.arange(51) * 0.2 + 0.01 * np.sin(np.arange(51) ** 2))
    >>> report.presses, round(report.rate_hz.value, 1)
    (51, 5.0)
    """
    down = np.asarray(down_s, dtype=np.float64)
    up = None if up_s is None else np.asarray(up_s, dtype=np.float64)
    _refuse(down, up)
    bounced = np.concatenate([[False], np.diff(down) < BOUNCE_S])
    left_out: list[Text] = [message(Aiming.bounce, at_s=at) for at in down[bounced].tolist()]
    kept = down[~bounced]
    between = np.diff(kept)
    usual = float(np.median(between))
    paused = between > PAUSE * usual
    left_out += [
        message(Aiming.pause, pause_s=each, at_s=at)
        for each, at in zip(between[paused].tolist(), kept[:-1][paused].tolist(), strict=True)
    ]
    used, at_s = between[~paused], kept[1:][~paused]
    held = None if up is None else median_estimate((up - down)[~bounced])
    rate, variation = _rate(used)
    return TapReport(len(kept), rate, variation, _slowing(at_s, used), held, tuple(left_out))


def _refuse(down: NDArray[np.float64], up: NDArray[np.float64] | None) -> None:
    if down.ndim != 1 or down.size < LEAST_PRESSES:
        raise BadInput(
            Problem(
                "presses",
                f"{down.size}",
                message(Signals.at_least, count=LEAST_PRESSES),
                message(Signals.remedy, what="press_10_s"),
            )
        )
    if not np.isfinite(down).all():
        raise BadInput(
            Problem(
                "presses",
                message(Signals.found, what="empty_cell"),
                message(Signals.expected, what="press_times"),
                message(Signals.remedy, what="leave_out_row"),
            )
        )
    back = np.flatnonzero(np.diff(down) <= 0)
    if back.size:
        k = int(back[0]) + 1
        found = message(Signals.press_backwards, number=k + 1, now_s=float(down[k]), before_s=float(down[k - 1]))
        raise BadInput(
            Problem(
                "presses",
                found,
                message(Signals.expected, what="times_forward"),
                message(Signals.remedy, what="time_of_press"),
            )
        )
    if up is not None and up.shape != down.shape:
        raise BadInput(
            Problem(
                "presses",
                message(Signals.press_ends, ends=up.size, presses=down.size),
                message(Signals.expected, what="one_end_each"),
            )
        )
    if up is not None and bool((up < down).any()):
        k = int(np.flatnonzero(up < down)[0])
        found = message(Signals.press_ends_early, number=k + 1, down_s=float(down[k]), up_s=float(up[k]))
        raise BadInput(
            Problem(
                "presses",
                found,
                message(Signals.expected, what="ends_after_starts"),
                message(Signals.remedy, what="columns_exchanged"),
            )
        )


def _rate(between: NDArray[np.float64]) -> tuple[Estimate, Estimate]:
    """Presses a second and the variation of the time between them."""
    from scipy.stats import chi2, t

    n, mean = between.size, float(between.mean())
    sd = float(between.std(ddof=1))
    worth = effective_count(between)
    if worth < 3 or sd == 0:
        why = message(Aiming.presses_alike) if sd == 0 else message(Intervals.few_readings, what="press")
        return Estimate.unbounded(1 / mean, why, n=n), Estimate.unbounded(sd / mean, why, n=n)
    half = float(t.ppf(0.975, worth - 1)) * sd / math.sqrt(worth)
    rate = Estimate(1 / mean, 1 / (mean + half), 1 / (mean - half) if mean > half else math.inf, n=n)
    low, high = (sd / mean * math.sqrt((worth - 1) / float(chi2.ppf(q, worth - 1))) for q in (0.975, 0.025))
    return rate, Estimate(sd / mean, low, high, n=n)


def _slowing(at_s: NDArray[np.float64], between: NDArray[np.float64]) -> Estimate:
    from scipy.stats import t

    n, mean = between.size, float(between.mean())
    about = at_s - at_s.mean()
    power = float(about @ about)
    slope = float(about @ between) / power
    left = between - mean - slope * about
    worth = effective_count(left)
    if worth < 4:
        return Estimate.unbounded(slope / mean, message(Intervals.few_readings, what="press"), n=n)
    error = math.sqrt(float(left @ left) / (n - 2) / power * n / worth)
    half = float(t.ppf(0.975, worth - 2)) * error
    return Estimate(slope / mean, (slope - half) / mean, (slope + half) / mean, n=n)
