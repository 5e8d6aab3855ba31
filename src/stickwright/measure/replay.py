"""A recording played through a made-up stick, so that practice runs the whole true path.

Rules of this file: values are the recording's own to one step of a stick's sixteen bits; between its samples the
stick stands still, as a stick between reports; an empty cell leaves it where it was.
"""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.capture_problems import CaptureProblems
from stickwright.codes.message import Name, message
from stickwright.errors import BadInput, Problem
from stickwright.measure.virtual import VirtualStickState
from stickwright.model.recording import Recording
from stickwright.trace.sensing import cue_code
from stickwright.trace.stamps import mean_rate_hz, stretches

__all__ = ["Presses", "Replay", "StepReplay", "replayed_cues"]

Array = NDArray[np.float64]
Presses = tuple[tuple[float, float, int], ...]
"""From when to when (seconds of the recording) which button is down."""


class _Played:
    """A recording as states of a stick."""

    def __init__(self, recording: Recording, second: Recording | None, presses: Presses) -> None:
        for one in (recording, *(() if second is None else (second,))):
            if len(one.times_s) == 0:
                raise BadInput(
                    Problem(
                        one.name,
                        message(CaptureProblems.found, what="no_samples"),
                        message(CaptureProblems.expected, what="recording"),
                        message(CaptureProblems.remedy, what="other_recording"),
                    )
                )
            if one.unit != "share":
                raise BadInput(
                    Problem(
                        one.name,
                        message(CaptureProblems.own_unit, unit=Name(one.unit)),
                        message(CaptureProblems.expected, what="full_output"),
                        message(CaptureProblems.remedy, what="other_recording"),
                    )
                )
        self.times_s = recording.times_s - recording.times_s[0]
        self._main = _held(recording.xy)
        self._second_times_s = None if second is None else second.times_s - second.times_s[0]
        self._second = None if second is None else _held(second.xy)
        self._presses = presses

    def state(self, place: int, at_s: float) -> VirtualStickState:
        x, y = self._main[place].tolist()
        x2 = y2 = 0.0
        if self._second is not None and self._second_times_s is not None:
            x2, y2 = self._second[max(0, int(np.searchsorted(self._second_times_s, at_s, "right")) - 1)].tolist()
        mask = 0
        for down_s, up_s, button in self._presses:
            mask |= (down_s <= at_s < up_s) << button
        return VirtualStickState((x, -y, x2, -y2), mask)


def _held(xy: Array) -> Array:
    """Empty cells filled with the value before, 0 where there is none."""
    filled = xy.copy()
    for axis in range(2):
        known = np.isfinite(filled[:, axis])
        last = np.maximum.accumulate(np.where(known, np.arange(len(filled)), -1))
        filled[:, axis] = np.where(last >= 0, filled[np.maximum(last, 0), axis], 0.0)
    return filled


class Replay:
    """A recording at its own times, from the first moment it is asked.

    Parameters
    ----------
    recording : Recording
        What the left stick does.
    second : Recording or None
        What the right stick does.
    speed : float, default 1.0
        Seconds of the recording to a second of the reader's clock.
    again : bool, default True
        Start anew at the end; otherwise the stick stays where it was.
    presses : tuple
        Which button is down from when to when.

    Raises
    ------
    BadInput
        A recording without samples or in a foreign unit, or no speed.

    Examples
    --------
    >>> rec = Recording("rec", np.array([0.0, 0.1]), np.array([[0.5, 0.25], [0.6, 0.0]]))
    >>> replay = Replay(rec)
    >>> replay(100.0).axes[:2], replay(100.11).axes[:1]
    ((0.5, -0.25), (0.6,))
    """

    def __init__(
        self, recording: Recording, second: Recording | None = None, speed: float = 1.0, again: bool = True,
        presses: Presses = (),
    ) -> None:  # fmt: skip
        if not (math.isfinite(speed) and speed > 0.0):
            raise BadInput(Problem("speed", f"{speed:g}", message(CaptureProblems.expected, what="speed")))
        self._played, self._speed, self._again = _Played(recording, second, presses), speed, again
        parts = stretches(recording.times_s, np.zeros((len(recording.times_s), 1)))
        usual_s = 1.0 / mean_rate_hz(parts) if parts else 0.0
        self._length_s = float(self._played.times_s[-1]) + usual_s
        self._began_s: float | None = None

    def __call__(self, now_s: float) -> VirtualStickState:
        if self._began_s is None:
            self._began_s = now_s
        at_s = (now_s - self._began_s) * self._speed
        if self._again and self._length_s > 0.0:
            at_s %= self._length_s
        # Half a nanosecond: clocks are counted in whole ones.
        place = int(np.searchsorted(self._played.times_s, at_s + 5e-10, "right")) - 1
        return self._played.state(max(place, 0), at_s)


class StepReplay:
    """A recording sample by sample, one at each round whatever the clock says; then unplugged. For tests.

    Parameters
    ----------
    recording : Recording
    second : Recording or None
        What the right stick does.
    presses : tuple
        Which button is down from when to when.
    """

    def __init__(self, recording: Recording, second: Recording | None = None, presses: Presses = ()) -> None:
        self._played = _Played(recording, second, presses)
        self._place = 0

    def __call__(self, now_s: float) -> VirtualStickState | None:  # noqa: ARG002 - the clock is what it does without
        if self._place >= len(self._played.times_s):
            return None
        place, self._place = self._place, self._place + 1
        return self._played.state(place, float(self._played.times_s[place]))


def replayed_cues(recording: Recording, times_s: Array) -> Array:
    """What was asked at any time of a recording: columns for a live recording of its replay.

    Parameters
    ----------
    recording : Recording
    times_s : array, shape (n,)
        Seconds since its first sample.

    Returns
    -------
    array, shape (n, 4)
        cue_x, cue_y, cue_width (NaN where nothing was asked) and the number of the cue word.

    Examples
    --------
    >>> rec = Recording("rec", np.array([0.0, 0.1]), np.zeros((2, 2)), np.array(["rest", "push"]))
    >>> replayed_cues(rec, np.array([0.05, 0.3]))[:, 3]
    array([1., 4.])
    """
    own_s = recording.times_s - recording.times_s[0]
    place = np.clip(np.searchsorted(own_s, np.asarray(times_s) + 5e-10, "right") - 1, 0, len(own_s) - 1)
    columns = np.full((len(place), 4), np.nan)
    if recording.cue_xy is not None:
        columns[:, :2] = recording.cue_xy[place]
    if recording.cue_width is not None:
        columns[:, 2] = recording.cue_width
    words = np.full(len(own_s), recording.task) if recording.cue is None else recording.cue
    columns[:, 3] = np.array([cue_code(str(word)) for word in words[place]])
    return columns
