"""A recording that the store keeps, as the rest of stickwright reads it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.message import Message, message
from stickwright.codes.recording_faults import RecordingFaults
from stickwright.measure.steps import trace_words, unknown_cues
from stickwright.model.recording import Recording
from stickwright.store.opening import Store
from stickwright.store.recordings import recording_named, samples_of

__all__ = ["recording_of"]


def recording_of(
    store: Store, recording_id: int, *, upto: int | None = None, stick: Literal["first", "second"] = "first"
) -> Recording:
    """A recording as the rest of stickwright reads it.

    Parameters
    ----------
    store : Store
    recording_id : int
    upto : int, optional
        Only the first so many samples.
    stick : {"first", "second"}
        Of two sticks that were recorded beside each other.

    Returns
    -------
    Recording
        Targets of more than one width have none here; `samples_of` has each.
    """
    row = recording_named(store, recording_id)
    samples = samples_of(store, recording_id, upto=upto)
    place = {name: number for number, name in enumerate(row.columns)}
    axes = [place[name] for name in (("x", "y") if stick == "first" else ("second_x", "second_y"))]
    notes: list[Message] = []
    if row.state == "cut short":
        notes.append(message(RecordingFaults.cut_short, samples=row.samples))
    width: float | None = None
    if "cue_width" in place:
        widths = np.unique(samples[:, place["cue_width"]])
        widths = widths[np.isfinite(widths)]
        width = float(widths[0]) if len(widths) == 1 and widths[0] > 0 else None
        if len(widths) > 1:
            notes.append(message(RecordingFaults.target_widths))
    if "cue" in place and (unknown := unknown_cues(samples[:, place["cue"]])):
        notes.append(_unknown(unknown))
    cued = [place[name] for name in ("cue_x", "cue_y") if name in place]
    cue_xy = samples[:, cued] if len(cued) == 2 and np.isfinite(samples[:, cued]).any() else None
    return Recording(
        f"{row.name}.csv",
        samples[:, 0].copy(),
        samples[:, axes].copy(),
        cue=trace_words(samples[:, place["cue"]]) if "cue" in place else None,
        cue_xy=cue_xy,
        cue_width=width,
        task=row.task,
        site=row.site,
        stick=row.stick or None,
        topper=row.topper or None,
        extension=row.extension or None,
        simulated=row.simulated,
        replayed=row.replayed,
        notes=tuple(notes),
        selected=_pressed(samples, place),
    )


def _unknown(cues: Mapping[int, int]) -> Message:
    told = (message(RecordingFaults.cue, cue=cue, samples=many) for cue, many in cues.items())
    return message(RecordingFaults.unknown_cues, cues=tuple(told))


def _pressed(samples: NDArray[np.float64], place: Mapping[str, int]) -> NDArray[np.bool_] | None:
    """Where the switch that selects was down; None when it never was, or none was recorded."""
    if "confirm" not in place:
        return None
    down: NDArray[np.bool_] = samples[:, place["confirm"]] > 0
    return down if down.any() else None
