"""How far the player gets in each direction, and the multiplier that lets that fill the output."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.special import stdtrit

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import message
from stickwright.codes.tunings import Tunings
from stickwright.mechanics.widening import GAIN_LIMIT
from stickwright.model.recorded import Finding
from stickwright.tuning.asked import AskedStretch

__all__ = ["Span", "player_span", "push_reaches", "rim_reaches"]

Array = NDArray[np.float64]
SECTORS = 12
_WIDEST_GAP = math.radians(120) + 1e-6


@dataclass(frozen=True)
class Span:
    """Reach and multiplier by direction.

    Parameters
    ----------
    direction_rad : tuple of float
        Directions, 0 to 2 pi, ascending; empty when the range is left alone.
    reach : tuple of Estimate
        Share of full output reached there.
    gain : tuple of float
        1 / reach, at most 3.
    findings : tuple of Finding
        Limits met, directions missing.
    """

    direction_rad: tuple[float, ...] = ()
    reach: tuple[Estimate, ...] = ()
    gain: tuple[float, ...] = ()
    findings: tuple[Finding, ...] = ()


def push_reaches(stretches: Sequence[AskedStretch]) -> list[tuple[float, float]]:
    """Cued direction and reach of each push.

    Parameters
    ----------
    stretches : sequence of AskedStretch
        Pushes, centred and turned, share of full output.

    Returns
    -------
    list of (direction_rad, reach)
        Reach is the 95 % point of the movement along the cue; pushes without a cued direction are left out.

    Examples
    --------
    >>> push = AskedStretch(np.arange(3.0), np.array([[0, 0], [0, 0.4], [0, 0.4]]), np.tile([0.0, 1.0], (3, 1)))
    >>> [(round(direction, 2), round(reach, 2)) for direction, reach in push_reaches([push])]
    [(1.57, 0.4)]
    """
    found = []
    for stretch in stretches:
        if stretch.target_xy is None or math.hypot(*stretch.target_xy[0]) < 1e-6:
            continue
        along = stretch.target_xy[0] / math.hypot(*stretch.target_xy[0])
        found.append((math.atan2(along[1], along[0]), float(np.quantile(stretch.xy @ along, 0.95))))
    return found


def rim_reaches(stretches: Sequence[AskedStretch]) -> list[tuple[float, float]]:
    """Direction and reach of each pass through each sector while the player went round the rim.

    Parameters
    ----------
    stretches : sequence of AskedStretch
        Rim tasks, centred and turned, share of full output.

    Returns
    -------
    list of (direction_rad, reach)
        Middle of the sector (twelve of 30 degrees) and the 95 % point of the distance in that pass; a pass
        that stays within half of the sector's best was on its way elsewhere and is left out.

    Examples
    --------
    >>> turn = np.linspace(0.0, 2 * np.pi, 721)
    >>> lap = AskedStretch(turn, 0.5 * np.column_stack([np.cos(turn), np.sin(turn)]))
    >>> reaches = rim_reaches([lap])
    >>> len({direction for direction, _ in reaches}), round(reaches[0][1], 2)
    (12, 0.5)
    """
    width = 2 * math.pi / SECTORS
    passes: dict[int, list[float]] = {}
    for stretch in stretches:
        length = np.hypot(stretch.xy[:, 0], stretch.xy[:, 1])
        sector = np.round(np.arctan2(stretch.xy[:, 1], stretch.xy[:, 0]) / width).astype(int) % SECTORS
        for rows in np.split(np.arange(len(sector)), np.flatnonzero(np.diff(sector)) + 1):
            if len(rows):
                passes.setdefault(int(sector[rows[0]]), []).append(float(np.quantile(length[rows], 0.95)))
    return [
        (sector * width, reach)
        for sector, reaches in sorted(passes.items())
        for reach in reaches
        if reach >= 0.5 * max(reaches)
    ]


def player_span(readings: Sequence[tuple[float, float]]) -> Span:
    """Reach per direction with intervals, and the multiplier there.

    Parameters
    ----------
    readings : sequence of (direction_rad, reach)
        Repeats, in any order; directions within 7.5 degrees are one.

    Returns
    -------
    Span
        Geometric mean per direction; 95 % interval from the scatter pooled over directions, in logarithms,
        since errors are in proportion. Fewer than three directions, or a gap beyond 120 degrees: no range,
        and a finding says which pushes would give it.

    Notes
    -----
    Source: pooled variance and Student's t [student-1908]. Assumed: the same proportional scatter in every
    direction.

    Examples
    --------
    >>> readings = [(quarter * np.pi / 2, reach) for quarter in range(4) for reach in (0.48, 0.52)]
    >>> span = player_span(readings)
    >>> [round(value, 2) for value in span.gain], round(span.reach[0].low, 2)
    ([2.0, 2.0, 2.0, 2.0], 0.45)
    """
    step = math.radians(15)
    groups: dict[int, list[tuple[float, float]]] = {}
    for direction, reached in readings:
        groups.setdefault(round((direction % (2 * math.pi)) / step) % 24, []).append((direction, max(reached, 1e-3)))
    directions = {
        place: math.atan2(*np.mean([(math.sin(d), math.cos(d)) for d, _ in group], axis=0).tolist()) % (2 * math.pi)
        for place, group in groups.items()
    }
    order = sorted(groups, key=lambda place: directions[place])
    towards = [directions[place] for place in order]
    if len(order) < 3 or _widest_gap(towards) > _WIDEST_GAP:
        return _no_span(len(order))
    logs = [np.log([reached for _, reached in groups[place]]) for place in order]
    reach = tuple(_pooled(logs))
    gain = tuple(min(GAIN_LIMIT, 1.0 / one.number) for one in reach)
    return Span(tuple(towards), reach, gain, tuple(_limits(towards, reach)))


def _widest_gap(towards: Sequence[float]) -> float:
    return float(np.diff([*towards, towards[0] + 2 * math.pi]).max())


def _no_span(count: int) -> Span:
    return Span(findings=(Finding("note", "range", message(Tunings.no_range, directions=count)),))


def _pooled(logs: Sequence[Array]) -> list[Estimate]:
    freedom = sum(len(one) - 1 for one in logs)
    square = sum(float(((one - one.mean()) ** 2).sum()) for one in logs)
    out = []
    for one in logs:
        value = math.exp(float(one.mean()))
        if freedom == 0:
            out.append(Estimate.unbounded(value, message(Tunings.why_one_each), n=len(one)))
            continue
        half = float(stdtrit(freedom, 0.975)) * math.sqrt(square / freedom / len(one))
        out.append(Estimate(value, value * math.exp(-half), value * math.exp(half), n=len(one)))
    return out


def _limits(towards: Sequence[float], reach: Sequence[Estimate]) -> list[Finding]:
    short = [
        (direction, one.number) for direction, one in zip(towards, reach, strict=True) if one.number < 1 / GAIN_LIMIT
    ]
    if not short:
        return []
    text = message(
        Tunings.gain_limit,
        directions_rad=tuple(direction for direction, _ in short),
        reach_share=tuple(reached for _, reached in short),
    )
    return [Finding("query", "gain_limit", text)]
