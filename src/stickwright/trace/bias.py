"""Produced against cued direction: is the stick turned, mirrored, swapped, or does it just not reach?"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.bases import Bases, WrongAxes
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Message, message
from stickwright.codes.movements import Movements
from stickwright.model.recorded import BiasReport, Finding
from stickwright.model.turns import STOOD, quarters_of, rotated
from stickwright.trace.reach import circular_half_width, circular_mean, direction_word
from stickwright.trace.recording import Cleaned

__all__ = ["bias_report"]

TURNED_RAD = math.radians(10)
"""A smaller turn is within how people aim; common practice."""

QUARTER_RAD = math.radians(40)
"""A larger turn is a quarter turn or a mounting error, from 10 to 40 deg the base is turned; common practice."""

_WRONG: tuple[WrongAxes, ...] = ("y_sign", "swapped", "x_sign", "swapped_both_signs")
"""What mirrors the output, by the quarter turns that are left once the forward axis is mirrored back."""


class _Push(NamedTuple):
    """One cued push: unit vector asked, unit vector produced, share of movement across."""

    cued: NDArray[np.float64]
    produced: NDArray[np.float64]
    path: NDArray[np.float64]


def bias_report(
    clean: Cleaned, *, centre: tuple[float, float] | None = (0.0, 0.0), keep: NDArray[np.bool_] | None = None
) -> tuple[BiasReport | None, list[Finding]]:
    """Turn, mirroring and cross-talk of the output against the direction asked.

    Parameters
    ----------
    clean : Cleaned
        Usable samples.
    centre : (float, float) or None, default (0, 0)
        Rest centre; None where it is not known.
    keep : array of bool, shape (n,), or None
        False where involuntary bursts are left out.

    Returns
    -------
    BiasReport or None
        None when no direction was cued, or only along one line, with a finding why.
    list of Finding
        What to do: turn the base, swap, set a sign, or leave it.

    Notes
    -----
    The 2 x 2 map from asked to produced unit vectors is fitted by least squares; a negative determinant means a
    mirrored axis. The turn is the circular mean of produced minus asked [zar-2010], after undoing a mirrored forward
    axis. Its interval counts each direction once (t, directions less one), so that pushes repeated in one
    direction do not make it look surer than it is. One-sided errors in only some directions are reach, not a turn.
    """
    if centre is None or not all(clean.recorded):
        why = message(Movements.direction_unknown, why="centre" if centre is None else "one-axis")
        return None, [Finding("note", "direction_not_told", why)]
    pushes = _cued_pushes(clean, centre, keep)
    if len(pushes) < 2 or _on_one_line(pushes):
        why = message(Movements.direction_unknown, why="one-line")
        return None, [Finding("note", "direction_not_told", why)]
    cued = np.array([push.cued for push in pushes])
    produced = np.array([push.produced for push in pushes])
    fitted = np.linalg.lstsq(cued, produced, rcond=None)[0].T
    sizes = np.linalg.svd(fitted, compute_uv=False)
    told = bool(sizes[1] > 0.2 * sizes[0])
    mirrored = told and float(np.linalg.det(fitted)) < 0
    used = cued * [1.0, -1.0] if mirrored else cued
    errors = np.arctan2(
        used[:, 0] * produced[:, 1] - used[:, 1] * produced[:, 0], (used * produced).sum(axis=1)
    )  # fmt: skip
    found = circular_mean(errors)
    per_direction = _per_direction(cued, errors, found.mean_rad)
    rotation = _rotation(found.mean_rad, errors, per_direction, mirrored)
    quarter_turns = 0 if mirrored else quarters_of(found.mean_rad)
    cross_talk = _cross_talk(pushes, used, found.mean_rad)
    report = BiasReport(
        error_rotation_rad=rotation,
        resultant_length=found.resultant_length,
        rayleigh_p=found.rayleigh_p,
        mirrored=mirrored,
        quarter_turns=quarter_turns,
        per_direction=per_direction,
        cross_talk=cross_talk,
    )
    return report, _advice(report)


def _cued_pushes(clean: Cleaned, centre: tuple[float, float], keep: NDArray[np.bool_] | None) -> list[_Push]:
    """Mean direction of the outer half of each push."""
    pushes: list[_Push] = []
    if clean.cue_xy is None:
        return pushes
    word = "push" if clean.asked("push").any() else "hold"
    for start, stop in clean.asked_pieces(word):
        toward = clean.cue_xy[start]
        if not np.isfinite(toward).all() or not toward.any():
            continue
        part = clean.xy[start:stop] if keep is None else clean.xy[start:stop][keep[start:stop]]
        path = part - centre
        radius = np.hypot(path[:, 0], path[:, 1])
        if len(path) < 3 or radius.max() < 0.1 * clean.scale:
            continue
        outer = path[radius >= 0.5 * radius.max()].mean(axis=0)
        size = math.hypot(*outer)
        if size > 0:
            pushes.append(_Push(toward / math.hypot(*toward), outer / size, path))
    return pushes


def _on_one_line(pushes: list[_Push]) -> bool:
    sizes = np.linalg.svd(np.array([push.cued for push in pushes]), compute_uv=False)
    return bool(sizes[-1] < 0.2 * sizes[0])


def _wrapped(angle: NDArray[np.float64]) -> NDArray[np.float64]:
    return np.asarray((angle + math.pi) % (2 * math.pi) - math.pi)


def _per_direction(
    cued: NDArray[np.float64], errors: NDArray[np.float64], middle: float
) -> tuple[tuple[float, Estimate], ...]:
    """Mean error toward each asked direction; scatter pooled over the directions."""
    from scipy.stats import t

    asked = np.rint(np.degrees(np.arctan2(cued[:, 1], cued[:, 0]))).astype(np.int64) % 360
    near = middle + _wrapped(errors - middle)  # unwrapped about the overall turn: 179 and -179 deg are neighbours
    directions = np.unique(asked)
    groups = [near[asked == direction] for direction in directions]
    degrees = len(near) - len(directions)
    pooled = sum(float(((group - group.mean()) ** 2).sum()) for group in groups) / max(degrees, 1)
    result = []
    for direction, group in zip(directions, groups, strict=True):
        value = float(group.mean())
        if degrees < 1 or pooled == 0:
            why = message(Movements.one_push_way) if degrees < 1 else message(Movements.pushes_alike)
            estimate = Estimate.unbounded(value, why, n=len(group))
        else:
            half = float(t.ppf(0.975, degrees)) * math.sqrt(pooled / len(group))
            estimate = Estimate(value, value - half, value + half, n=len(group))
        result.append((math.radians(int(direction)), estimate))
    return tuple(result)


def _rotation(
    mean_rad: float,
    errors: NDArray[np.float64],
    per_direction: tuple[tuple[float, Estimate], ...],
    mirrored: bool,
) -> Estimate:
    """Circular mean with its interval: by directions when there are three or more, else by pushes."""
    from scipy.stats import t

    assumed = message(Movements.mirror_undone) if mirrored else None
    means = np.array([estimate.number for _, estimate in per_direction])
    units = means if len(means) >= 3 else errors
    apart = _wrapped(units - mean_rad)
    if len(units) < 3 or float(np.ptp(apart)) == 0:
        why = message(Movements.few_directions) if len(units) < 3 else message(Movements.directions_agree)
        return Estimate.unbounded(mean_rad, why, n=len(errors), assumed=assumed)
    if circular_mean(units).resultant_length >= 0.9:  # close together a circle is a line, and t suits few directions
        half = float(t.ppf(0.975, len(units) - 1)) * float(apart.std(ddof=1)) / math.sqrt(len(units))
    else:
        half = circular_half_width(units)
    if not math.isfinite(half):
        why = message(Movements.directions_disagree)
        return Estimate.unbounded(mean_rad, why, n=len(errors), assumed=assumed)
    return Estimate(mean_rad, mean_rad - half, mean_rad + half, n=len(errors), assumed=assumed)


def _cross_talk(pushes: list[_Push], used: NDArray[np.float64], turn_rad: float) -> Estimate:
    """Movement across over movement along, the turn taken out: a turned stick is not cross-talk."""
    from scipy.stats import t

    shares = []
    for push, (x, y) in zip(pushes, used, strict=True):
        along = np.array(rotated(x, y, turn_rad))
        across = np.array([-along[1], along[0]])
        lengthwise = float(np.ptp(push.path @ along))
        if lengthwise > 0:
            shares.append(float(np.ptp(push.path @ across)) / lengthwise)
    n = len(shares)
    if n == 0:
        return Estimate.missing(message(Movements.none_along), n=0)
    value = float(np.mean(shares))
    if n < 3:
        return Estimate.unbounded(value, message(Movements.few_pushes), n=n)
    half = float(t.ppf(0.975, n - 1)) * float(np.std(shares, ddof=1)) / math.sqrt(n)
    return Estimate(value, max(0.0, value - half), value + half, n=n)


def _advice(report: BiasReport) -> list[Finding]:
    """What to do about it, in one sentence."""
    turn = report.error_rotation_rad.number
    if report.mirrored:
        return [_mirror_finding(turn)]
    if report.resultant_length < 0.7:
        text = message(Movements.direction_unclear, resultant_share=report.resultant_length)
        return [Finding("query", "direction_unclear", text)]
    if abs(turn) > QUARTER_RAD:
        return [_quarter_finding(report)]
    one_sided = _one_sided(report)
    if one_sided:
        return [Finding("note", "reach_not_rotation", one_sided)]
    sure = (
        report.error_rotation_rad.has_interval and report.error_rotation_rad.lower * report.error_rotation_rad.upper > 0
    )
    if abs(turn) >= TURNED_RAD and (sure or not report.error_rotation_rad.has_interval):
        text = message(
            Movements.turned,
            turn_rad=turn,
            low_rad=report.error_rotation_rad.lower if sure else None,
            high_rad=report.error_rotation_rad.upper if sure else None,
        )
        return [Finding("query", "turned_base", text)]
    return []


def _mirror_finding(turn: float) -> Finding:
    text = message(Bases.mirrored, axes=_WRONG[round(turn / (math.pi / 2)) % 4])
    left = abs(turn - (math.pi / 2) * round(turn / (math.pi / 2)))
    if left >= TURNED_RAD:
        text = message(Movements.mirrored_and_turned, mirror=text, left_rad=left)
    return Finding("fault", "mirrored", text)


def _quarter_finding(report: BiasReport) -> Finding:
    turn = report.error_rotation_rad.number
    if report.quarter_turns:
        text = message(Bases.quarter, error_rad=turn, stood=STOOD[report.quarter_turns])
        return Finding("fault", "quarter_turn", text)
    return Finding("query", "turned_far", message(Movements.turned_far, turn_rad=turn))


def _one_sided(report: BiasReport) -> Message | None:
    """Large error in some directions and none in others."""
    errors = [(direction, estimate.number) for direction, estimate in report.per_direction]
    off = [(d, e) for d, e in errors if abs(e) >= TURNED_RAD]
    straight = [d for d, e in errors if abs(e) < TURNED_RAD / 2]
    mixed = any(e > 0 for _, e in off) and any(e < 0 for _, e in off)
    if not off or len(errors) < 3 or (len(straight) < len(errors) / 3 and not mixed):
        return None
    ways = tuple(message(Movements.askew, way=direction_word(d), error_rad=e) for d, e in off)
    return message(Movements.some_askew, ways=ways)
