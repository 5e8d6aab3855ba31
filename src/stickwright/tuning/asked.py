"""The stretches of a recording in which the player was asked for one thing.

A stretch ends where the task changes, where the place asked for changes (unless it moves by itself, as
in following), and where no sample came for a quarter of a second: nothing is carried across a gap.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.message import Name, message
from stickwright.codes.tunings import Tunings
from stickwright.model.recorded import Finding
from stickwright.model.recording import Recording

__all__ = ["AskedStretch", "asked_for", "usable"]

Array = NDArray[np.float64]
GAP_S = 0.25  # A stick that sends nothing for so long was unplugged or asleep.


@dataclass(frozen=True, eq=False)
class AskedStretch:
    """Samples of one request.

    Parameters
    ----------
    times_s : array, shape (n,)
        Seconds.
    xy : array, shape (n, 2)
        Output, without empty cells.
    target_xy : array, shape (n, 2), or None
        Where the player was asked to be; None when no place was named.
    """

    times_s: Array
    xy: Array
    target_xy: Array | None = None


def asked_for(recording: Recording, *tasks: str) -> list[AskedStretch]:
    """Stretches of a recording in which one of some tasks was asked for.

    Parameters
    ----------
    recording : Recording
        With a cue for each sample, or one task for the whole.
    tasks : str
        Words of `Recording.cue`: 'rest', 'push', 'hold' and so on.

    Returns
    -------
    list of AskedStretch
        In order of time; samples with an empty cell left out.

    Examples
    --------
    >>> recording = Recording("demo", np.arange(4) * 0.01, np.zeros((4, 2)), np.array(["", "rest", "rest", ""]))
    >>> [len(stretch.times_s) for stretch in asked_for(recording, "rest")]
    [2]
    """
    whole: NDArray[np.bool_] = np.asarray(np.isfinite(recording.xy).all(axis=1))
    cue = recording.cue if recording.cue is not None and np.any(recording.cue != "") else None
    wanted: NDArray[np.bool_]
    if cue is not None:
        wanted = np.isin(cue, tasks) & whole
    elif recording.task in tasks:
        wanted = whole
    else:
        return []
    rows = np.flatnonzero(wanted)
    if len(rows) == 0:
        return []
    times, target = recording.times_s, recording.cue_xy
    between: NDArray[np.bool_] = np.asarray(np.diff(times[rows]) > GAP_S)
    if cue is not None:
        # Rows with an empty cell do not part a stretch; rows of another task do.
        run = np.cumsum(np.concatenate([[False], cue[1:] != cue[:-1]]))
        between |= np.diff(run[rows]) > 0
    if target is not None and "follow" not in tasks:
        here = np.nan_to_num(target[rows], nan=np.inf)
        between = between | (here[1:] != here[:-1]).any(axis=1)
    stretches = []
    for part in np.split(rows, np.flatnonzero(between) + 1):
        place = None if target is None or not np.isfinite(target[part]).all() else target[part]
        stretches.append(AskedStretch(times[part], recording.xy[part], place))
    return stretches


def usable(recordings: Sequence[Recording], site: str, stick: str) -> tuple[list[Recording], list[Finding]]:
    """The recordings that can tune this stick at this site, with what was left out.

    Parameters
    ----------
    recordings : sequence of Recording
        As read.
    site, stick : str
        Where, and on what, the response is to work.

    Returns
    -------
    recordings : list of Recording
        In share of full output, on this stick and site as far as they say, time running forwards.
    findings : list of Finding
        One sentence for each recording left out and for rows whose clock stood or ran backwards.

    Examples
    --------
    >>> foreign = Recording("pen", np.arange(3) * 0.01, np.zeros((3, 2)), unit="px")
    >>> kept, findings = usable([foreign], "chin", "birch")
    >>> len(kept), findings[0].about
    (0, 'foreign_unit')
    """
    kept: list[Recording] = []
    findings: list[Finding] = []
    for recording in recordings:
        name = Name(recording.name)
        its_site, its_stick = (
            Name(there) if there is not None and there != here else None
            for here, there in ((site, recording.site), (stick, recording.stick))
        )
        if recording.unit != "share":
            text = message(Tunings.foreign_unit, recording=name, unit=Name(recording.unit))
            findings.append(Finding("query", "foreign_unit", text))
        elif its_site is not None or its_stick is not None:
            text = message(
                Tunings.other_stick,
                recording=name,
                its_site=its_site,
                its_stick=its_stick,
                site=Name(site),
                stick=Name(stick),
            )
            findings.append(Finding("query", "other_stick", text))
        else:
            kept.append(_forwards(recording, findings))
    return kept, findings


def _forwards(recording: Recording, findings: list[Finding]) -> Recording:
    """The recording without rows whose time is missing or not later than all before."""
    times = recording.times_s
    known = np.where(np.isfinite(times), times, -np.inf)
    latest = np.maximum.accumulate(known)
    forward = np.isfinite(times) & np.concatenate([[True], known[1:] > latest[:-1]])[: len(times)]
    if forward.all():
        return recording
    text = message(Tunings.clock, recording=Name(recording.name), left_out=int((~forward).sum()), samples=len(times))
    findings.append(Finding("note", "clock", text))
    return replace(
        recording,
        times_s=times[forward],
        xy=recording.xy[forward],
        cue=None if recording.cue is None else recording.cue[forward],
        cue_xy=None if recording.cue_xy is None else recording.cue_xy[forward],
        selected=None if recording.selected is None else recording.selected[forward],
        stroke=None if recording.stroke is None else recording.stroke[forward],
        z=None if recording.z is None else recording.z[forward],
    )
