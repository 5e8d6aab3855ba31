"""A recording: what came out of a stick over time."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

__all__ = ["Recording"]


@dataclass(frozen=True, eq=False)
class Recording:
    """Output of one stick over time, as read, nothing removed.

    Parameters
    ----------
    name : str
        Where it came from, for sentences: the file's name.
    times_s : array, shape (n,)
        Seconds; may be irregular.
    xy : array, shape (n, 2)
        Share of full output, x right, y forward/up, usually -1..1; NaN where a cell was empty.
    cue : array of str, shape (n,), or None
        What was asked at each sample: '', 'rest', 'still', 'rim', 'push', 'hold', 'aim', 'follow', 'play'.
    cue_xy : array, shape (n, 2), or None
        Where the player was asked to be; NaN where nothing was asked.
    cue_width : float or None
        Width of aimed targets, in the same unit as `xy`.
    task : str
        The task of the whole recording when there is no `cue` column.
    site, stick, topper, extension : str or None
        On what it was made.
    unit : str
        'share' of full output, or the name of a foreign unit (then reach is not judged against full output).
    notes : tuple of str
        What was noticed at reading.
    selected : array of bool, shape (n,), or None
        Where a target was being selected: a button that is down, or a row with an event.
    stroke : array of int, shape (n,), or None
        Number of the stroke of a drawing, below 0 where the pen was up.
    """

    name: str
    times_s: NDArray[np.float64]
    xy: NDArray[np.float64]
    cue: NDArray[np.str_] | None = None
    cue_xy: NDArray[np.float64] | None = None
    cue_width: float | None = None
    task: str = "play"
    site: str | None = None
    stick: str | None = None
    topper: str | None = None
    extension: str | None = None
    unit: str = "share"
    notes: tuple[str, ...] = field(default_factory=tuple)
    selected: NDArray[np.bool_] | None = None
    stroke: NDArray[np.int64] | None = None
