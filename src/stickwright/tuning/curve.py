"""The response curve that gives the player equal precision along the whole range.

Scatter of a held or aimed deflection grows with the level: sd = a + b * level. The curve
g(x) = ln(1 + b x / a) / ln(1 + b / a) has a slope in inverse proportion to that scatter, so the same
scatter comes out at every level. With b = 0 it is a straight line.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import message
from stickwright.codes.signals import Signals
from stickwright.codes.tunings import Tunings
from stickwright.errors import BadInput, Problem
from stickwright.model.recorded import Finding

__all__ = [
    "RATIO_LIMIT",
    "ScatterFit",
    "curve_table",
    "equal_precision",
    "equal_precision_input",
    "fit_scatter",
    "inner_jump",
]

Array = NDArray[np.float64]

# Slope of the curve at the centre is ratio / ln(1 + ratio): 3.0 here. The same limit as for the range, and for
# the same reason: what is stretched carries its noise with it. (Judgement, not a source.)
RATIO_LIMIT = 5.71
JUMP_MARGIN = 0.02  # How far beyond the game's own dead zone the output starts. (Judgement.)
_DRAWS = 400


def equal_precision(x: ArrayLike, a: float, b: float) -> Array:
    """Output at deflection `x` for scatter a + b x.

    Parameters
    ----------
    x : array, shape (n,)
        Share of the range, 0 to 1.
    a : float
        Scatter near the centre, share of the range, above 0.
    b : float
        Growth of the scatter over the whole range, share of the range, 0 or more.

    Returns
    -------
    array, shape (n,)
        ln(1 + b x / a) / ln(1 + b / a), 0 to 1; `x` itself when b is 0.

    Raises
    ------
    BadInput
        a of 0 or less, b below 0, or x outside 0 to 1.

    Notes
    -----
    Source: slope in inverse proportion to the scatter, integrated and scaled to end at 1; that scatter
    grows about in proportion to force [jones-2002]. Assumed: scatter on a straight line.

    Examples
    --------
    >>> equal_precision([0.1, 0.5, 0.9], a=0.02, b=0.10).round(6)
    array([0.226294, 0.69918 , 0.951438])
    """
    level, ratio = _checked(x, a, b)
    return level.copy() if ratio <= 1e-9 else np.log1p(ratio * level) / math.log1p(ratio)


def equal_precision_input(y: ArrayLike, a: float, b: float) -> Array:
    """Deflection that gives output `y`: the inverse of `equal_precision`.

    Parameters
    ----------
    y : array, shape (n,)
        Output, 0 to 1.
    a, b : float
        As in `equal_precision`.

    Returns
    -------
    array, shape (n,)
        Share of the range, 0 to 1.

    Raises
    ------
    BadInput
        As in `equal_precision`.

    Notes
    -----
    Source: `equal_precision` solved for x.

    Examples
    --------
    >>> equal_precision_input([0.226294, 0.69918], a=0.02, b=0.10).round(4)
    array([0.1, 0.5])
    """
    level, ratio = _checked(y, a, b)
    if ratio <= 1e-9:
        return level.copy()
    inverse: Array = np.minimum(np.expm1(level * math.log1p(ratio)) / ratio, 1.0)  # rounding may pass 1 by a hair
    return inverse


def _checked(x: ArrayLike, a: float, b: float) -> tuple[Array, float]:
    level = np.asarray(x, dtype=np.float64)
    problems = []
    if not (math.isfinite(a) and a > 0.0):
        problems.append(Problem("a", f"{a:g}", message(Signals.expected, what="centre_scatter")))
    if not (math.isfinite(b) and b >= 0.0):
        problems.append(Problem("b", f"{b:g}", message(Signals.expected, what="scatter_growth")))
    if level.size and not bool(np.all((level >= 0.0) & (level <= 1.0))):
        problems.append(
            Problem("level", f"{level.min():g} to {level.max():g}", message(Signals.expected, what="shares"))
        )
    if problems:
        raise BadInput(problems)
    return level, b / a


def curve_table(ratio: float, points: int = 21) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """The curve as points to draw or to type.

    Parameters
    ----------
    ratio : float
        b/a, 0 or more, dimensionless.
    points : int, default 21
        How many, evenly spaced, the ends included.

    Returns
    -------
    curve_in, curve_out : tuple of float
        Shares of the range between the dead zone and full deflection, and of the output.

    Examples
    --------
    >>> [tuple(round(value, 3) for value in line) for line in curve_table(5.0, points=5)]
    [(0.0, 0.25, 0.5, 0.75, 1.0), (0.0, 0.453, 0.699, 0.87, 1.0)]
    """
    level = np.linspace(0.0, 1.0, points)
    out = equal_precision(level, 1.0, ratio)
    return tuple(level.tolist()), tuple(out.tolist())


@dataclass(frozen=True)
class ScatterFit:
    """Scatter against level, and the curve's one number from it.

    Parameters
    ----------
    a, b : Estimate
        Scatter near the centre and its growth over the whole range, share of full output.
    ratio : float
        b/a as the curve uses it: limited, 0 when growth cannot be told from none.
    findings : tuple of Finding
        Too few levels, a limit that was met.
    """

    a: Estimate
    b: Estimate
    ratio: float
    findings: tuple[Finding, ...] = ()


def _lines(levels: Array, sds: Array, degrees: Array) -> tuple[Array, Array]:
    """Weighted straight lines with a, b >= 0, one for each row of `sds`.

    An sd from f degrees of freedom has a standard error of sd / sqrt(2 f); the sd in it is that of the
    line, so the weights are worked out again a few times.
    """
    fitted = np.broadcast_to(sds.mean(axis=1, keepdims=True), sds.shape).copy()
    a = b = np.zeros(len(sds))
    for _ in range(12):
        w = 2.0 * degrees / np.maximum(fitted, 1e-9) ** 2
        sw, sx, sy = w.sum(axis=1), (w * levels).sum(axis=1), (w * sds).sum(axis=1)
        sxx, sxy = (w * levels**2).sum(axis=1), (w * levels * sds).sum(axis=1)
        b = (sw * sxy - sx * sy) / (sw * sxx - sx**2)
        a = (sy - b * sx) / sw
        falls, through_zero = b < 0.0, a < 0.0
        a = np.where(falls, sy / sw, np.where(through_zero, 0.0, a))
        b = np.where(falls, 0.0, np.where(through_zero, sxy / sxx, b))
        fitted = a[:, None] + b[:, None] * levels
    return a, b


def fit_scatter(
    levels: ArrayLike, sds: ArrayLike, degrees: ArrayLike, rng: np.random.Generator | None = None
) -> ScatterFit:
    """Scatter a + b * level from holds or aimed endpoints at several levels.

    Parameters
    ----------
    levels : array, shape (k,)
        Levels asked for, share of the range.
    sds : array, shape (k,)
        Standard deviation at each, share of full output.
    degrees : array, shape (k,)
        Degrees of freedom of each (independent samples less one).
    rng : numpy.random.Generator or None
        Draws behind the intervals; a fixed seed when None, so that the same readings give the same page.

    Returns
    -------
    ScatterFit
        a and b with 95 % intervals from redrawing each sd (chi-square) about the line; the curve's ratio;
        findings. Fewer than three levels, or a growth whose interval starts at 0: straight, and it says so.

    Raises
    ------
    BadInput
        Lists of different length, a negative sd, or no degree of freedom.

    Notes
    -----
    Source: standard error of a standard deviation, sd / sqrt(2 f) [ahn-fessler-2003]. Assumed: normal
    scatter; scatter on a straight line.

    Examples
    --------
    >>> fit = fit_scatter([0.25, 0.5, 0.75, 1.0], [0.045, 0.07, 0.095, 0.12], [200, 200, 200, 200])
    >>> round(fit.a.value, 3), round(fit.b.value, 3), round(fit.ratio, 2)
    (0.02, 0.1, 5.0)
    """
    level, sd, f = (np.asarray(values, dtype=np.float64).ravel() for values in (levels, sds, degrees))
    if not len(level) == len(sd) == len(f):
        raise BadInput(
            Problem(
                "scatter",
                message(Signals.scatter_counts, levels=len(level), sds=len(sd), degrees=len(f)),
                message(Signals.expected, what="as_many_each"),
            )
        )
    if len(sd) and not (float(sd.min()) >= 0.0 and float(f.min()) >= 1.0):
        raise BadInput(
            Problem("scatter", message(Signals.found, what="negative_sd"), message(Signals.expected, what="sds"))
        )
    steps = np.unique(np.round(level, 1))
    if len(steps) < 3 or float(np.ptp(level)) < 0.3 or not bool((sd > 0.0).all()):
        return _too_few_levels(len(steps), sd, f)
    a, b = (float(values[0]) for values in _lines(level, sd[None, :], f))
    generator = np.random.default_rng(1) if rng is None else rng
    line = np.maximum(a + b * level, 1e-9)
    redrawn = line * np.sqrt(generator.chisquare(f, size=(_DRAWS, len(f))) / f)
    ends = [np.quantile(values, (0.025, 0.975)) for values in _lines(level, redrawn, f)]
    n = int(f.sum()) + len(f)
    fits = [
        Estimate(value, min(value, float(low)), max(value, float(high)), n=n)
        for value, (low, high) in zip((a, b), ends, strict=True)
    ]
    ratio, findings = _ratio(fits[0], fits[1])
    return ScatterFit(fits[0], fits[1], ratio, findings)


def _ratio(a: Estimate, b: Estimate) -> tuple[float, tuple[Finding, ...]]:
    if b.lower <= 0.0:
        return 0.0, (Finding("note", "straight_curve", message(Tunings.straight_curve)),)
    if b.number > RATIO_LIMIT * a.number:
        return RATIO_LIMIT, (Finding("note", "curve_limited", message(Tunings.curve_limited)),)
    return b.number / a.number, ()


def _too_few_levels(count: int, sd: Array, f: Array) -> ScatterFit:
    why = message(Tunings.why_few_levels, levels=count)
    text = message(Tunings.few_levels, why=why)
    a = math.sqrt(float((f * sd**2).sum() / f.sum())) if len(sd) else math.nan
    n = int(f.sum()) + len(f)
    return ScatterFit(
        Estimate.unbounded(a, why, n=n),
        Estimate.unbounded(0.0, why, n=n, assumed=message(Tunings.assumed_even)),
        0.0,
        (Finding("note", "straight_curve", text),),
    )


def inner_jump(own_dead_zone_share: float | None) -> float:
    """Output with which to start, just beyond the dead zone inside the game.

    Parameters
    ----------
    own_dead_zone_share : float or None
        The game's own dead zone, share of the stick's output; None when not known.

    Returns
    -------
    float
        A little (0.02) more than the game's own dead zone; 0 when that is 0 or not known.

    Raises
    ------
    BadInput
        A dead zone outside 0 to 0.97.

    Notes
    -----
    Two dead zones one behind the other add up, and that is the commonest fault of tuning: the game's is
    leapt over, ours stays as small as rest allows. Assumed: margin of 0.02 (judgement).

    Examples
    --------
    >>> round(inner_jump(0.20), 2), inner_jump(0.0), inner_jump(None)
    (0.22, 0.0, 0.0)
    """
    if own_dead_zone_share is None or own_dead_zone_share == 0.0:
        return 0.0
    if not 0.0 < own_dead_zone_share <= 0.97:
        found = f"{own_dead_zone_share:g}"
        raise BadInput(
            Problem(
                "own_dead_zone_share",
                found,
                message(Signals.expected, what="own_dead_zone"),
                message(Signals.remedy, what="as_share"),
            )
        )
    return own_dead_zone_share + JUMP_MARGIN
