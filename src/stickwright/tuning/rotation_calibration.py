"""Whether the stick sits turned, mirrored or a quarter round under the player's hand.

Signs are those of `stickwright.model.turns`: the error is produced minus cued direction, the base is turned by it, the
output by its opposite. An error in some directions only is missing reach there, not rotation.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy.special import fdtrc, stdtr, stdtrit

from stickwright.codes.bases import Bases, WrongAxes
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Message, message
from stickwright.model.recorded import Finding
from stickwright.model.response import BaseAdvice
from stickwright.model.turns import STOOD, opposite, quarters_of
from stickwright.trace.reach import circular_mean
from stickwright.tuning.asked import AskedStretch

__all__ = ["Bearing", "bearing", "push_direction"]

Array = NDArray[np.float64]
WORTH_TURNING = math.radians(3)  # Below this a base cannot be turned by hand with any accuracy. (Judgement.)


BY_CHANCE = 0.01  # share of turned sticks that may be taken for missing reach


@dataclass(frozen=True)
class Bearing:
    """How the output must be turned.

    Parameters
    ----------
    output_rotation_rad : Estimate
        To be added to the produced direction; 0 with a reason when it cannot be told.
    mirrored : bool
        One axis runs the wrong way.
    turn_base : Message
        What to do with the base first, one sentence.
    base : {'turn', 'stays', 'mend_first', 'not_known'}
        The same for a program: 'mend_first' where a mirror or a quarter turn must be put right.
    findings : tuple of Finding
        Mirror, quarter turn, reach taken for rotation, no pushes.
    turn_base_rad : Estimate or None
        How far the base is to be turned, anticlockwise seen from above; None when it stays, or when a mirror or a quarter turn
        must be put right first.
    """

    output_rotation_rad: Estimate
    mirrored: bool
    turn_base: Message
    base: BaseAdvice
    findings: tuple[Finding, ...] = ()
    turn_base_rad: Estimate | None = None


def push_direction(stretch: AskedStretch) -> tuple[float, float] | None:
    """Produced and cued direction of one push.

    Parameters
    ----------
    stretch : AskedStretch
        Output about the centre, with the place asked for.

    Returns
    -------
    produced_rad, cued_rad : float, or None
        Direction of the mean of those samples that lie beyond half of the push's own peak; None when no
        direction was asked for, or the stick hardly moved (0.02 of full output).

    Examples
    --------
    >>> out = np.linspace(0.0, 0.8, 9)[:, None]
    >>> push = AskedStretch(np.arange(9) * 0.1, out * [0.0, 1.0], np.tile([0.0, 1.0], (9, 1)))
    >>> [round(float(np.degrees(angle))) for angle in push_direction(push)]
    [90, 90]
    """
    if stretch.target_xy is None or len(stretch.xy) == 0:
        return None
    cued = stretch.target_xy[0]
    length = np.hypot(stretch.xy[:, 0], stretch.xy[:, 1])
    peak = float(length.max())
    if math.hypot(*cued) < 1e-6 or peak < 0.02:
        return None
    x, y = stretch.xy[length >= 0.5 * peak].mean(axis=0)
    return math.atan2(y, x), math.atan2(cued[1], cued[0])


def _wrapped(angle_rad: Array | float) -> Array:
    return np.asarray((np.asarray(angle_rad) + math.pi) % (2 * math.pi) - math.pi, dtype=np.float64)


class _Directions(NamedTuple):
    """One row for each cued direction, in order round the circle; directions within 15 degrees are one."""

    cued_rad: Array
    error_rad: Array
    error_variance: float
    """Of one direction's mean, as its pushes scatter; NaN when none was repeated."""
    degrees_of_freedom: int


def _by_direction(errors: Array, cued: Array) -> _Directions:
    step = math.radians(15)
    place = np.round(np.mod(cued, 2 * math.pi) / step).astype(int) % 24
    places, counts = np.unique(place, return_counts=True)
    means = np.array([circular_mean(errors[place == one]).mean_rad for one in places])
    about = _wrapped(errors - means[np.searchsorted(places, place)])
    spare = len(errors) - len(places)
    variance = float((about**2).sum() / spare * (1 / counts).mean()) if spare else math.nan
    return _Directions(places * step, means, variance, spare)


def _map_determinant(produced: Array, cued: Array) -> float:
    """Determinant of the 2x2 map from cued to produced unit vectors; NaN when the cues lie on one line."""
    asked = np.column_stack([np.cos(cued), np.sin(cued)])
    if float(np.linalg.eigvalsh(asked.T @ asked / len(asked))[0]) < 0.05:
        return math.nan
    got = np.column_stack([np.cos(produced), np.sin(produced)])
    return float(np.linalg.det(np.linalg.lstsq(asked, got, rcond=None)[0]))


def bearing(produced_rad: ArrayLike, cued_rad: ArrayLike) -> Bearing:
    """Rotation of the output from pushes with a cued direction.

    Parameters
    ----------
    produced_rad, cued_rad : array, shape (n,)
        Direction of each push as it came and as it was asked for, radians.

    Returns
    -------
    Bearing
        Minus the circular mean of produced minus cued, with a 95 % interval from the directions as units
        (from the pushes when there are fewer than three directions), or the reason why none is set.

    Notes
    -----
    Source: circular mean [zar-2010]. Assumed: errors spread over much less than a half turn, so that
    Student's t holds for their mean.
    A turned stick turns all directions alike. That is given up for an error in some directions only when two
    neighbouring groups of directions differ by more than chance gives in 99 of 100 turned sticks, over all ways to part
    the circle in two (t test of the best one, p times their number [bonferroni-1936]): with one push each, an error of
    25 degrees in one direction mostly passes for scatter; with three pushes each it is told.

    Examples
    --------
    >>> cued = np.radians([0, 90, 180, 270])
    >>> found = bearing(cued + np.radians([19, 21, 20, 20]), cued)
    >>> round(float(np.degrees(found.output_rotation_rad.value)))
    -20
    >>> found.turn_base.text, round(math.degrees(found.turn_base.param("turn_rad")))
    ('turn', 20)
    """
    produced, cued = (np.asarray(values, dtype=np.float64).ravel() for values in (produced_rad, cued_rad))
    if len(produced) == 0:
        finding = Finding("note", "rotation", message(Bases.no_pushes))
        why, told = message(Bases.why_no_pushes), message(Bases.unknown_without_pushes)
        return _left_alone(why, 0, told, "not_known", finding)
    if _map_determinant(produced, cued) < 0.0:
        return _mirrored(produced, cued)
    errors = _wrapped(produced - cued)
    mean = circular_mean(errors)
    if mean.resultant_length < 0.7:
        finding = Finding("query", "rotation", message(Bases.against_cues, resultant_share=mean.resultant_length))
        why, told = message(Bases.why_against_cues), message(Bases.unknown_against_cues)
        return _left_alone(why, len(errors), told, "not_known", finding)
    groups = _by_direction(errors, cued)
    apart = _apart(groups)
    if apart is None:
        return _turned(mean.mean_rad, errors, groups.error_rad)
    fewer, others = groups.cued_rad[apart], groups.cued_rad[~apart]
    straight = [_is_straight(groups.error_rad[side], groups) for side in (~apart, apart)]
    if straight[0] or (straight[1] and len(fewer) > len(groups.cued_rad) / 3):
        off = fewer if straight[0] else others
        text = message(Bases.some_directions, directions_rad=tuple(off.tolist()), of=len(groups.cued_rad))
        why, told = message(Bases.why_some_directions), message(Bases.stays_short_of_reach)
        return _left_alone(why, len(errors), told, "stays", Finding("query", "reach_not_rotation", text))
    rest = groups.error_rad[~apart]
    found = _turned(circular_mean(rest).mean_rad, rest, rest)
    text = message(Bases.besides_turn, directions_rad=tuple(fewer.tolist()), of=len(groups.cued_rad))
    return replace(found, findings=(*found.findings, Finding("query", "reach_besides_rotation", text)))


def _apart(groups: _Directions) -> NDArray[np.bool_] | None:
    """The neighbouring directions, at most half of them, whose error differs from that of the rest beyond chance."""
    n = len(groups.error_rad)
    if n < 3:
        return None
    about = _wrapped(groups.error_rad - circular_mean(groups.error_rad).mean_rad)
    parts = [
        np.isin((np.arange(n) - first) % n, np.arange(size))
        for size in range(1, n // 2 + 1)
        for first in range(n if 2 * size < n else size)
    ]
    gaps = np.array([abs(about[part].mean() - about[~part].mean()) for part in parts])
    weights = np.array([part.sum() * (~part).sum() / n for part in parts])
    best = int(np.argmax(gaps**2 * weights))
    left = max(0.0, float((about**2).sum() - n * about.mean() ** 2 - gaps[best] ** 2 * weights[best]))
    variance, spare = _variance(left, n - 2, groups)
    if variance == 0.0:
        return parts[best] if gaps[best] > WORTH_TURNING else None
    chance = 2.0 * float(stdtr(spare, -gaps[best] * math.sqrt(weights[best] / variance)))
    return parts[best] if chance * len(parts) < BY_CHANCE and gaps[best] > WORTH_TURNING else None


def _variance(left: float, spare: int, groups: _Directions) -> tuple[float, int]:
    """Variance of one direction's mean, with its degrees of freedom.

    From what the directions leave and from the scatter of their pushes, together; from the directions alone where
    they scatter by more than their pushes explain (F test, 5 %): each then has an error of its own.
    """
    more = groups.degrees_of_freedom
    if more == 0:
        return left / spare, spare
    own = groups.error_variance == 0.0 or fdtrc(spare, more, left / spare / groups.error_variance) < 0.05
    if own and left > 0.0:
        return left / spare, spare
    return (left + more * groups.error_variance) / (spare + more), spare + more


def _is_straight(error_rad: Array, groups: _Directions) -> bool:
    """Whether these directions come out as cued, within their scatter or what is worth turning."""
    mean, n = float(error_rad.mean()), len(error_rad)
    variances = [groups.error_variance] if groups.degrees_of_freedom else []
    variances += [float(error_rad.var(ddof=1))] if n > 1 else []
    spread = math.sqrt(max(variances, default=0.0) / n)
    return abs(mean) < max(WORTH_TURNING, 2.6 * spread)


def _left_alone(why: Message, n: int, turn_base: Message, base: BaseAdvice, finding: Finding) -> Bearing:
    rotation = Estimate.unbounded(0.0, why, n=n, assumed=message(Bases.assumed_straight))
    return Bearing(rotation, False, turn_base, base, (finding,))


_STAYING_LINE: dict[WrongAxes, float] = {
    "y_sign": 0.0,
    "swapped": math.pi / 4,
    "x_sign": math.pi / 2,
    "swapped_both_signs": 3 * math.pi / 4,
}
"""Direction of the line that a mirror leaves where it is, radians."""


def _mirrored(produced: Array, cued: Array) -> Bearing:
    # A mirror sends direction c to 2m - c, m the line that stays: produced plus cued is the same for all pushes.
    line = float(np.mod(circular_mean(produced + cued).mean_rad, 2 * math.pi)) / 2
    axes = min(_STAYING_LINE, key=lambda one: abs(math.remainder(line - _STAYING_LINE[one], math.pi)))
    why, turn = message(Bases.why_mirrored), message(Bases.mirror_first)
    finding = Finding("fault", "mirror", message(Bases.mirrored, axes=axes))
    found = _left_alone(why, len(cued), turn, "mend_first", finding)
    return replace(found, mirrored=True)


def _turned(error_rad: float, errors: Array, groups: Array) -> Bearing:
    units = groups if len(groups) >= 3 else errors
    about = _wrapped(units - error_rad)
    n = len(errors)
    if len(units) < 2:
        error = Estimate.unbounded(error_rad, message(Bases.why_one_push), n=n)
    else:
        half = float(stdtrit(len(units) - 1, 0.975)) * float(np.std(about, ddof=1)) / math.sqrt(len(units))
        error = Estimate(error_rad, error_rad - half, error_rad + half, n=n)
    rotation = opposite(error)
    quarters = quarters_of(error_rad)
    if quarters:
        return _quarter(rotation, quarters, error_rad)
    unsure = error.has_interval and error.lower <= 0.0 <= error.upper
    if abs(error_rad) < WORTH_TURNING or unsure:
        return Bearing(rotation, False, message(Bases.stays, off_rad=abs(error_rad)), "stays")
    return Bearing(rotation, False, message(Bases.turn, turn_rad=error_rad), "turn", turn_base_rad=error)


def _quarter(rotation: Estimate, quarters: int, error_rad: float) -> Bearing:
    """A stick mounted a quarter or half turn round: how its base stood, which is against the sense of the output."""
    stood = STOOD[quarters]
    finding = Finding("fault", "quarter_turn", message(Bases.quarter, error_rad=error_rad, stood=stood))
    return Bearing(rotation, False, message(Bases.quarter_first, stood=stood), "mend_first", (finding,))
