"""Weighted least squares that finds the readings which do not belong, and says so.

The rules of this file:

* A reading is left out only when the others, fitted without it, put it beyond the critical value
  of Student's t for the largest of n (Bonferroni; the many-outlier procedure of [rosner-1983]
  carried over to a straight-line model). Clean readings lose one in about a hundred fits, so the
  intervals keep their coverage.
* With few readings their own scatter says little, so the usual scatter of such readings is
  counted in as if it were known from four more (the moderated t of [smyth-2004]).
* All sets of one, two and three readings are tried, not only the largest residual: two bad
  readings cannot hide one another. The change that leaving out a set makes follows from the
  fit of all readings [cook-weisberg-1982], so nothing is fitted again while searching.
* The scatter is never taken to be below a stated floor: readings by hand that happen to lie on a
  line are not perfect readings.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

__all__ = ["RobustFit", "robust_fit"]

Array = NDArray[np.float64]
Mask = NDArray[np.bool_]

_FALSE_ALARM = 0.01  # chance that a clean set of readings loses one
_USUAL_FREEDOM = 4  # degrees of freedom that the usual scatter counts for (judgement)
_USUAL_BELIEVED = 1.5  # readings that scatter by more than this many times the usual speak for themselves
_MOST_BAD = 3
_ALIKE = 1e-6  # share by which two sums may differ and still be the same but for rounding
_MOST_SETS = 6000  # above this many sets only the readings that lie furthest off are combined


@dataclass(frozen=True)
class RobustFit:
    """A linear model fitted to the readings that belong together.

    Parameters
    ----------
    coefficients : array, shape (p,)
        Estimates.
    unscaled_covariance : array, shape (p, p)
        Covariance for a scatter of 1.
    scatter : float
        Standard deviation of one reading in multiples of its unit, degrees of freedom counted,
        not below the floor. NaN without degrees of freedom.
    degrees_of_freedom : int
        Readings kept minus coefficients.
    kept : array of bool, shape (n,)
        False for a reading that was left out.
    fitted : array, shape (n,)
        What each reading should have been, also those left out.
    unit : array, shape (n,)
        Unit of scatter of each reading.
    leverage : array, shape (n,)
        x (X'WX)^-1 x' / unit^2 of each reading, for prediction intervals.
    residuals : array, shape (n,)
        Reading minus fit, in units of scatter, also of readings left out.
    """

    coefficients: Array
    unscaled_covariance: Array
    scatter: float
    degrees_of_freedom: int
    kept: Mask
    fitted: Array
    unit: Array
    leverage: Array
    residuals: Array

    def quantile(self, level: float) -> float:
        """Student's t for a two-sided interval of that level; NaN without degrees of freedom."""
        from scipy.special import stdtrit

        if self.degrees_of_freedom < 1:
            return math.nan
        return float(stdtrit(self.degrees_of_freedom, 0.5 + level / 2))

    def combination(self, weights: Array, level: float) -> tuple[float, float, float]:
        """Value and two-sided interval of a weighted sum of the coefficients."""
        value = float(weights @ self.coefficients)
        sd = self.scatter * math.sqrt(max(0.0, float(weights @ self.unscaled_covariance @ weights)))
        half = self.quantile(level) * sd
        return value, value - half, value + half

    def expected(self, index: int, level: float) -> tuple[float, float, float]:
        """What reading `index` should have been, with the interval in which one more would lie."""
        value = float(self.fitted[index])
        half = self.quantile(level) * self.scatter * float(self.unit[index]) * math.sqrt(1 + self.leverage[index])
        return value, value - half, value + half

    @property
    def residual_sum(self) -> float:
        """Sum of squares of what is left, in units of scatter, over the readings kept; no floor."""
        return float(np.sum(self.residuals[self.kept] ** 2))


def robust_fit(
    design: Array,
    readings: Array,
    unit_of: Callable[[Array], Array],
    *,
    floor: float = 0.0,
    usual: float = 0.0,
    kept: Mask | None = None,
    narrower: Array | None = None,
) -> RobustFit:
    """Fit a linear model; leave out the readings that the others contradict.

    Parameters
    ----------
    design : array, shape (n, p)
        One row a reading, one column a coefficient.
    readings : array, shape (n,)
        What was read.
    unit_of : callable
        Unit of scatter of each reading, shape (n,), from what the fit expects there. Its size is
        free: the scatter in these units is estimated.
    floor : float, default 0.0
        Smallest scatter believed, in units of scatter.
    usual : float, default 0.0
        Scatter that is usual for such readings, in units of scatter; 0 when nothing is known. It
        only helps to judge which readings belong when they are few; no interval is made from it.
    kept : array of bool, shape (n,), optional
        Which readings to use; found when not given.
    narrower : array, shape (n, q), optional
        A narrower model of the same readings. Of three readings of one line any may be the wrong one as far as the line goes;
        the one is left out without which this model fits best.

    Returns
    -------
    RobustFit
        The fit, with the readings left out marked.

    Notes
    -----
    The unit follows the fitted values, not the readings: a reading that is too low by chance
    must not gain weight by it. Three rounds settle it. Leaving out stops at three readings, at one
    in four, and while a degree of freedom is left.

    Examples
    --------
    >>> angle = np.linspace(0.0, 0.4, 9)
    >>> moment = 0.008 + 0.02 * angle + 1e-4 * np.array([1, -1, 2, 0, -2, 1, 0, -1, 1])
    >>> moment[6] = 0.025
    >>> fit = robust_fit(np.column_stack([np.ones(9), angle]), moment, np.ones_like)
    >>> np.flatnonzero(~fit.kept).tolist()
    [6]
    """
    search = kept is None
    mask = np.ones(len(readings), dtype=bool) if kept is None else kept
    unit = unit_of(np.full(len(readings), float(np.median(readings))))
    for round_number in range(3):
        if search and round_number < 2:
            mask = _kept(design, readings, unit, floor, usual, narrower)
        fit = _weighted(design, readings, unit, mask, floor)
        unit = unit_of(fit.fitted)
    return _weighted(design, readings, unit, mask, floor)


def _weighted(design: Array, readings: Array, unit: Array, mask: Mask, floor: float) -> RobustFit:
    rows, target = design / unit[:, None], readings / unit
    _, upper = np.linalg.qr(rows[mask])
    inverse = np.linalg.pinv(upper)
    covariance = inverse @ inverse.T
    coefficients = covariance @ (rows[mask].T @ target[mask])
    residuals = target - rows @ coefficients
    freedom = int(mask.sum()) - design.shape[1]
    scatter = math.nan
    if freedom > 0:
        scatter = max(floor, math.sqrt(float(np.sum(residuals[mask] ** 2)) / freedom))
    leverage = np.einsum("ij,jk,ik->i", rows, covariance, rows)
    return RobustFit(
        coefficients=coefficients,
        unscaled_covariance=covariance,
        scatter=scatter,
        degrees_of_freedom=freedom,
        kept=mask,
        fitted=design @ coefficients,
        unit=unit,
        leverage=leverage,
        residuals=residuals,
    )


def _kept(
    design: Array, readings: Array, unit: Array, floor: float, usual: float, narrower: Array | None = None
) -> Mask:
    """Which readings belong together, by the largest set that every member of it contradicts."""
    n, p = design.shape
    everything = np.ones(n, dtype=bool)
    q, _ = np.linalg.qr(design / unit[:, None])
    target = readings / unit
    residuals = target - q @ (q.T @ target)
    hat = q @ q.T
    total = float(residuals @ residuals)
    for size in range(min(_MOST_BAD, max(1, n // 4), n - p - 1), 0, -1):
        sets, gains = _sets(residuals, hat, size)
        if not len(sets):
            continue
        best = int(np.argmax(gains))
        if narrower is not None:
            best = _best_of_equal(sets, gains, narrower / unit[:, None], target)
        members, gain = sets[best], float(gains[best])
        block = np.linalg.inv(np.eye(size) - hat[np.ix_(members, members)])
        off = block @ residuals[members]
        freedom = n - p - size
        scatter = math.sqrt(max(0.0, total - gain) / freedom)
        if scatter <= _USUAL_BELIEVED * usual:
            known = freedom + _USUAL_FREEDOM
            scatter, freedom = math.sqrt((freedom * scatter**2 + _USUAL_FREEDOM * usual**2) / known), known
        if _each_contradicted(off, np.diag(block), scatter, floor, freedom, n - size + 1):
            mask = everything.copy()
            mask[members] = False
            return mask
    return everything


def _each_contradicted(
    off: Array, variance: Array, scatter: float, floor: float, freedom: int, candidates: int
) -> bool:
    """Whether each reading left out lies too far from what the readings kept expect of it."""
    from scipy.special import stdtrit

    critical = float(stdtrit(freedom, 1 - _FALSE_ALARM / (2 * candidates)))
    beyond_chance = np.abs(off) > critical * scatter * np.sqrt(variance)
    # Readings that lie on a line by rounding would condemn the next for nothing: it must also be
    # further off than four times the smallest scatter anybody should believe.
    return bool(np.all(beyond_chance & (np.abs(off) > 4 * floor * np.sqrt(variance)) & (np.abs(off) > 1e-9)))


def _best_of_equal(sets: NDArray[np.intp], gains: Array, narrower: Array, target: Array) -> int:
    """Of the sets whose leaving out lowers the residual sum most, and alike, the one without which a narrower model fits best."""
    alike = np.flatnonzero(gains >= float(gains.max()) * (1 - _ALIKE))
    if len(alike) == 1:
        return int(alike[0])

    def left(place: np.intp) -> float:
        rows, readings = np.delete(narrower, sets[place], axis=0), np.delete(target, sets[place])
        off = readings - rows @ np.linalg.lstsq(rows, readings, rcond=None)[0]
        return float(off @ off)

    return int(min(alike, key=left))


def _sets(residuals: Array, hat: Array, size: int) -> tuple[NDArray[np.intp], Array]:
    """Sets of `size` readings that may be left out, and by how much leaving each out lowers the residual sum."""
    n = len(residuals)
    order = np.argsort(-np.abs(residuals) / np.sqrt(np.maximum(1e-12, 1 - np.diag(hat))), kind="stable")
    while math.comb(len(order), size) > _MOST_SETS:
        order = order[:-1]
    sets = np.array(list(combinations(sorted(order.tolist()), size)), dtype=np.intp)
    blocks = np.eye(size) - hat[sets[:, :, None], sets[:, None, :]]
    usable = np.linalg.det(blocks) > 1e-9  # below: the rest could not carry the model
    if n <= size:
        usable = np.zeros(len(sets), dtype=bool)
    sets, blocks = sets[usable], blocks[usable]
    chosen = residuals[sets]
    gains = np.einsum("ij,ij->i", chosen, np.linalg.solve(blocks, chosen[:, :, None])[:, :, 0])
    return sets, gains
