"""A recording: what came out of a stick over time."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.message import Text

__all__ = ["CUE_CODES", "Recording", "Taps", "Trials"]

CUE_CODES: Mapping[str, int] = MappingProxyType({
    "": 0, "rest": 1, "still": 2, "rim": 3, "push": 4, "hold": 5, "aim": 6, "follow": 7, "play": 8, "press": 9,
})  # fmt: skip
"""The number that stands for each cue word in every kept recording: a new word takes the next free number, and no number ever
changes or is used again. 'press' has no place on the stick: readers of stick traces take it as nothing asked."""


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
    simulated : bool
        Made by the simulated player, for training: counts in the plan of an invented player only.
    replayed : bool
        Another recording, played back: counts nowhere, since that one counts already.
    condition : str
        State of the site in which it was made; empty for the usual one.
    notes : tuple of Message
        What was noticed at reading.
    selected : array of bool, shape (n,), or None
        Where a target was being selected: a button that is down, or a row with an event.
    stroke : array of int, shape (n,), or None
        Number of the stroke of a drawing, below 0 where the pen was up.
    z : array, shape (n,), or None
        Third axis of a sensor, in the unit of `xy`; NaN where a cell was empty.
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
    notes: tuple[Text, ...] = field(default_factory=tuple)
    selected: NDArray[np.bool_] | None = None
    stroke: NDArray[np.int64] | None = None
    simulated: bool = False
    replayed: bool = False
    condition: str = ""
    z: NDArray[np.float64] | None = None


@dataclass(frozen=True, eq=False)
class Trials:
    """A table of aimed movements, one a row, as read; NaN where a cell was empty.

    Parameters
    ----------
    name : str
        Where it came from, for sentences.
    start_xy, target_xy, selection_xy : array, shape (n, 2)
        Where each movement began, the centre of its target, where the target was selected; any unit, the same throughout.
    times_s : array, shape (n,)
        Duration of each movement.
    width : array, shape (n,), or None
        Diameter of each target, in the same unit.
    hit : array of float, shape (n,), or None
        1 where the target was hit, 0 where it was missed.
    row : array of int, shape (n,)
        Row of the table, as a spreadsheet counts.
    notes : tuple of Message
        What was noticed at reading.
    """

    name: str
    start_xy: NDArray[np.float64]
    target_xy: NDArray[np.float64]
    selection_xy: NDArray[np.float64]
    times_s: NDArray[np.float64]
    width: NDArray[np.float64] | None
    hit: NDArray[np.float64] | None
    row: NDArray[np.int64]
    notes: tuple[Text, ...] = field(default_factory=tuple)


@dataclass(frozen=True, eq=False)
class Taps:
    """A table of presses, as read.

    Parameters
    ----------
    name : str
        Where it came from, for sentences.
    down_s : array, shape (n,)
        When each press began.
    up_s : array, shape (n,), or None
        When it ended; NaN where that is not known.
    notes : tuple of Message
        What was noticed at reading.
    """

    name: str
    down_s: NDArray[np.float64]
    up_s: NDArray[np.float64] | None = None
    notes: tuple[Text, ...] = field(default_factory=tuple)
