"""The tuned response beside the raw stick while the player moves it: for looking at, never for keeping.

The filters of `stickwright.tuning` know whole series. Live, the last stretch is passed through them again with
every batch, long enough for what lies before it to have died away: 14 time constants of the slowest part, 18 of a
notch, so that less than a millionth of full output is left of it.
"""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.live_notes import LiveNotes
from stickwright.codes.message import Message, message
from stickwright.model.response import Tuning
from stickwright.trace.stamps import GAP_S
from stickwright.tuning.filters import Filter, low_pass_lag_s
from stickwright.tuning.pipeline import response_of
from stickwright.tuning.shaping import Response, respond

__all__ = ["LiveTuning", "filter_lag_s"]

Array = NDArray[np.float64]

_TIME_CONSTANTS = 14.0  # exp(-14) is 0.8 millionths
_NOTCH_TIME_CONSTANTS = 18.0  # of quality 0.5 it rings with exp(-t) (1 - 2 t): half a millionth at 18
_SPEED_S = 1.0 / (2.0 * math.pi)  # of the 1-euro filter's own low-pass of the speed, at 1 Hz


def filter_lag_s(by: Filter) -> float:
    """By how much a filter delays slow movement.

    Returns
    -------
    float
        Seconds; of the 1-euro filter at rest, it is less in movement.

    Notes
    -----
    Source: group delay at frequency 0 of each filter's formula [oppenheim-signals].

    Examples
    --------
    >>> [round(filter_lag_s(Filter(kind, 4.0)), 4) for kind in ("none", "low-pass", "butterworth", "notch")]
    [0.0, 0.0398, 0.0563, 0.0159]
    """
    if by.kind == "none":
        return 0.0
    one_pole_s = low_pass_lag_s(by.cutoff_hz)
    if by.kind == "butterworth":
        return math.sqrt(2.0) * one_pole_s
    return one_pole_s / by.quality if by.kind == "notch" else one_pole_s


def _memory_s(by: Filter) -> float:
    """For how long a filter remembers, seconds."""
    if by.kind == "none":
        return 0.0
    slowest_s = 1.0 / (2.0 * math.pi * by.cutoff_hz)
    if by.kind == "1-euro":
        slowest_s += _SPEED_S
    elif by.kind == "butterworth":
        slowest_s *= math.sqrt(2.0)
    elif by.kind == "notch":
        wide = math.sqrt(max(0.0, 1.0 - 4.0 * by.quality**2))  # above 0 where two real poles stand for the pair
        return _NOTCH_TIME_CONSTANTS * slowest_s * 2.0 * by.quality / (1.0 - wide)
    return _TIME_CONSTANTS * slowest_s


class LiveTuning:
    """A response applied batch by batch.

    Parameters
    ----------
    settings : Response or Tuning
        As chosen for this stick and player.
    on : bool, default True
        Before (False) or after (True); may be switched at any time without a jump in the filter.

    Examples
    --------
    >>> live = LiveTuning(Response(centre_xy=(0.1, 0.0)))
    >>> live.add(np.array([0.0]), np.array([[0.3, 0.0]])).round(3)
    array([[0.2, 0. ]])
    >>> live.on = False
    >>> live.add(np.array([0.01]), np.array([[0.3, 0.0]]))
    array([[0.3, 0. ]])
    """

    def __init__(self, settings: Response | Tuning, on: bool = True) -> None:
        self.settings = response_of(settings) if isinstance(settings, Tuning) else settings
        self.on = on
        self._measured = settings.filter.chosen.lag_s if isinstance(settings, Tuning) and settings.filter else None
        self.memory_s = _memory_s(self.settings.filter)
        self._times_s = np.empty(0)
        self._xy = np.empty((0, 2))

    @property
    def lag(self) -> Estimate:
        """By how much the tuned output trails the stick, seconds: as measured when it was chosen, else by formula."""
        if self._measured is not None:
            return self._measured
        lag_s = filter_lag_s(self.settings.filter)
        return Estimate.unbounded(lag_s, message(LiveNotes.lag_reason), n=0, assumed=message(LiveNotes.lag_assumed))

    @property
    def lag_text(self) -> Message:
        """The same, to be said."""
        lag = self.lag
        if self.settings.filter.kind == "none":
            return message(LiveNotes.no_lag)
        return message(LiveNotes.lag, lag_s=lag.number, low_s=lag.low, high_s=lag.high)

    def add(self, times_s: Array, xy: Array) -> Array:
        """What the game would get for the next samples.

        Parameters
        ----------
        times_s : array, shape (n,)
            Stamps after those before.
        xy : array, shape (n, 2)
            The stick, x right, y forward; NaN where empty.

        Returns
        -------
        array, shape (n, 2)
            The stick itself while switched off. After a gap the filter begins anew.
        """
        if not len(times_s):
            return np.empty((0, 2))
        if len(self._times_s) and times_s[0] - self._times_s[-1] > GAP_S:
            self.begin_anew()
        self._times_s = np.concatenate([self._times_s, times_s])
        self._xy = np.concatenate([self._xy, xy])
        out = respond(self._xy, self._times_s, self.settings)[-len(times_s) :] if self.on else np.array(xy)
        self._forget()
        return out

    def begin_anew(self) -> None:
        """Forget what came before: after a gap, or when the stick was plugged in again."""
        self._times_s, self._xy = np.empty(0), np.empty((0, 2))

    def _forget(self) -> None:
        keep = int(np.searchsorted(self._times_s, self._times_s[-1] - self.memory_s))
        if self.memory_s == 0.0:
            keep = len(self._times_s) - 1
        if keep > len(self._times_s) // 2:  # now and then, not with every batch
            self._times_s, self._xy = self._times_s[keep:].copy(), self._xy[keep:].copy()
