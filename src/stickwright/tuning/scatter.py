"""How unsteady the player is at each level of deflection, from holds or from aimed endpoints."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from stickwright.model.recording import Recording
from stickwright.tuning.asked import AskedStretch, asked_for
from stickwright.tuning.dead_zone import effective_samples
from stickwright.tuning.shaping import Response, placed

__all__ = ["aim_scatter", "hold_scatter", "player_scatter"]

Array = NDArray[np.float64]
SETTLE_S = 1.0  # Time to get there and settle; at most a quarter of the hold.
END_S = 0.1  # What counts as the endpoint of an aimed movement.
Scatter = list[tuple[float, float, float]]


def hold_scatter(stretches: Sequence[AskedStretch]) -> Scatter:
    """Level, sd and degrees of freedom of each hold.

    Parameters
    ----------
    stretches : sequence of AskedStretch
        Holds, in the player's own range.

    Returns
    -------
    list of (level, sd, degrees)
        Along the direction held, a steady drift (tiring) taken off; degrees from the number of independent
        samples. Holds of less than 1 s, or near the centre (0.05), are left out.

    Examples
    --------
    >>> times_s = np.arange(400) * 0.01
    >>> shake = 0.5 + 0.02 * np.where(np.arange(400) % 2, 1.0, -1.0)
    >>> (level, sd, degrees), = hold_scatter([AskedStretch(times_s, np.column_stack([shake, 0 * shake]))])
    >>> round(level, 2), round(sd, 2)
    (0.5, 0.02)
    """
    found = []
    for stretch in stretches:
        seconds = float(stretch.times_s[-1] - stretch.times_s[0])
        if seconds < 1.0:
            continue
        settled = stretch.times_s >= stretch.times_s[0] + min(SETTLE_S, 0.25 * seconds)
        xy, times = stretch.xy[settled], stretch.times_s[settled]
        middle = np.median(xy, axis=0)
        level = math.hypot(*middle)
        if level < 0.05 or len(xy) < 10:
            continue
        along = xy @ (middle / level)
        off = along - np.polyval(np.polyfit(times - times[0], along, 1), times - times[0])
        degrees = max(1.0, effective_samples(np.column_stack([off, np.zeros_like(off)])) - 2.0)
        found.append((level, float(np.sqrt((off**2).sum() / (len(off) - 2))), degrees))
    return found


def aim_scatter(stretches: Sequence[AskedStretch]) -> Scatter:
    """Level, sd and degrees of freedom of the endpoints of aimed movements.

    Parameters
    ----------
    stretches : sequence of AskedStretch
        Aimed movements with their targets, in the player's own range.

    Returns
    -------
    list of (level, sd, degrees)
        By distance of the target from the centre in steps of 0.1; the endpoint is the mean of the last
        0.1 s, its error counted along the target's direction. Fewer than three endpoints: left out.

    Examples
    --------
    >>> def aim(end):
    ...     return AskedStretch(np.arange(5) * 0.1, np.full((5, 2), [end, 0.0]), np.full((5, 2), [0.5, 0.0]))
    >>> aim_scatter([aim(0.48), aim(0.50), aim(0.52)])
    [(0.5, 0.02, 2.0)]
    """
    errors: dict[int, list[tuple[float, float]]] = {}
    for stretch in stretches:
        if stretch.target_xy is None:
            continue
        target = stretch.target_xy[-1]
        level = math.hypot(*target)
        if level < 0.05:
            continue
        end = stretch.xy[stretch.times_s >= stretch.times_s[-1] - END_S].mean(axis=0)
        errors.setdefault(round(10 * level), []).append((level, float((end - target) @ target / level)))
    return [
        (float(np.mean([level for level, _ in group])), round(float(np.std([e for _, e in group], ddof=1)), 12),
         len(group) - 1.0)
        for group in (errors[step] for step in sorted(errors))
        if len(group) >= 3
    ]  # fmt: skip


def player_scatter(recordings: Sequence[Recording], settings: Response) -> tuple[Scatter, str]:
    """Scatter by level within the range beyond the dead zone, and the task it came from.

    Parameters
    ----------
    recordings : sequence of Recording
        All that can be used.
    settings : Response
        Centre, rotation, range and dead zone as they will be; the curve works on what they leave.

    Returns
    -------
    scatter : list of (level, sd, degrees)
        Share of the range between the dead zone and full deflection; holds where they give three levels or
        no fewer than the aims, otherwise aims.
    task : str
        'hold' or 'aim'; empty when there is neither.

    Examples
    --------
    >>> player_scatter([], Response())
    ([], '')
    """

    def in_range(stretch: AskedStretch) -> AskedStretch:
        target = None if stretch.target_xy is None else placed(stretch.target_xy, _without_seat(settings))
        return AskedStretch(stretch.times_s, placed(stretch.xy, settings), target)

    holds = hold_scatter([in_range(one) for each in recordings for one in asked_for(each, "hold")])
    aims = aim_scatter([in_range(one) for each in recordings for one in asked_for(each, "aim")])
    task, found = ("hold", holds) if _levels(holds) >= min(3, _levels(aims)) else ("aim", aims)
    beyond = 1.0 - settings.dead_zone
    kept = [
        ((level - settings.dead_zone) / beyond, sd / beyond, degrees)
        for level, sd, degrees in found
        if level > settings.dead_zone and sd > 0.0
    ]
    return kept, task if kept else ""


def _levels(scatter: Scatter) -> int:
    return len({round(level, 1) for level, _, _ in scatter})


def _without_seat(settings: Response) -> Response:
    """The range alone: a target has no offset and is not turned."""
    return Response(direction_rad=settings.direction_rad, gain=settings.gain)
