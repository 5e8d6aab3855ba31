"""Intervals of a bench that allow for what a gauge held by hand gets wrong besides scatter.

Repeated readings average scatter away, but not these:

* a spring that is not straight: its sag between centre and stop, which a straight line would put into both ends;
* directions that read high or low as a whole, because the gauge was held otherwise there, or the preload differs;
* drift from one reading to the next: the gauge's zero, or a spring that warms, counted from the first reading;
* a gauge held off square all along: it reads low by the cosine of the angle, and no reading shows it.

The first three show in the readings. How large they are is weighed by how well the readings go with each of a grid of
sizes, none at all included, and the interval is that of the weighted mixture. The fourth is assumed.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass
from functools import cache

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.bench_notes import BenchNotes
from stickwright.codes.message import message
from stickwright.mechanics.bench_readings import GaugeScatter, LeverReadings
from stickwright.mechanics.robust_fit import RobustFit
from stickwright.model.recorded import Finding

__all__ = ["ALLOWED_FOR", "CoefficientSpread", "bench_doubt", "drift_findings"]

Array = NDArray[np.float64]

_OFF_SQUARE_SD_RAD = math.radians(11)
"""Sd of the angle by which a gauge held by hand is off square: common practice, no source."""
ALLOWED_FOR = message(
    BenchNotes.allowed_for, off_square_rad=2 * _OFF_SQUARE_SD_RAD, low_share=1 - math.cos(2 * _OFF_SQUARE_SD_RAD)
)
"""For people who read the interval: twice the sd above, and its cosine."""
_SURE_OF_DRIFT = 0.95
_SAG, _APART, _DRIFT = (0.0, 1.0, 3.0, 10.0), (0.0, 0.7, 1.5, 4.0), (0.0, 0.12, 0.3, 0.8)
# Sizes tried, in multiples of the scatter of one reading; each beyond none has a quarter of the weight of none (judgement). The other
# way round for drift where one line was read out and back once: creep then looks like friction, and most gauges creep (judgement).
_LEAST_FREEDOM = 3  # with fewer degrees of freedom the readings cannot tell one size from another
_ANY_WEIGHT = 0.25
_LEAST_WEIGHT = 3e-4  # sizes less likely than this, beside the likeliest, change no interval
_SQUARE_STEPS = 10
_HALVINGS = 22
_TABLE = 60_000


@dataclass(frozen=True, eq=False)
class CoefficientSpread:
    """What the readings tell of the coefficients, over all sizes of the errors besides scatter.

    Parameters
    ----------
    weight : array, shape (k,)
        How well each size goes with the readings; adds up to 1.
    means : array, shape (k, p)
        Coefficients for each.
    covariances : array, shape (k, p, p)
        Their covariance, scatter counted.
    degrees_of_freedom : int
    readings : int
        Readings behind it.
    drift_chance : float
        Chance that the readings drift.
    """

    weight: Array
    means: Array
    covariances: Array
    degrees_of_freedom: int
    readings: int
    drift_chance: float

    @property
    def coefficients(self) -> Array:
        """Best single figures: the mean over all sizes."""
        best: Array = self.weight @ self.means
        return best

    @property
    def covariance(self) -> Array:
        """Of the coefficients over all sizes, a gauge off square left out."""
        off = self.means - self.coefficients
        within = np.einsum("k,kij->ij", self.weight, self.covariances)
        whole: Array = within + np.einsum("k,ki,kj->ij", self.weight, off, off)
        return whole

    def interval(self, weights: Array, level: float) -> tuple[float, float]:
        """Ends between which a weighted sum of the coefficients lies, a gauge off square counted.

        Parameters
        ----------
        weights : array, shape (p,)
        level : float

        Notes
        -----
        Quantiles of a mixture of Student's t, by halving. A gauge held off square by an angle reads its cosine, so the
        true figure is the read one over the cosine: the interval is longer upwards.
        """
        from scipy.special import stdtrit

        times, share = _off_square()
        value = self.means @ weights
        sd = np.sqrt(np.maximum(np.einsum("i,kij,j->k", weights, self.covariances, weights), 0.0))
        middle = (value[:, None] * times).ravel()
        spread = np.maximum((sd[:, None] * times).ravel(), 1e-15 + 1e-12 * np.abs(middle))
        chance = (self.weight[:, None] * share).ravel()

        below = _student(self.degrees_of_freedom)
        ends = []
        for wanted in (0.5 - level / 2, 0.5 + level / 2):
            each = middle + spread * float(stdtrit(self.degrees_of_freedom, wanted))
            low, high = float(each.min()), float(each.max())  # the mixture's quantile lies between those of its parts
            for _ in range(_HALVINGS):
                at = (low + high) / 2
                bent = np.arctan((at - middle) / spread) * (_TABLE / math.pi) + _TABLE / 2
                low, high = (at, high) if float(chance @ below[bent.astype(np.int64)]) < wanted else (low, at)
            ends.append((low + high) / 2)
        return ends[0], ends[1]


@cache
def _student(degrees_of_freedom: int) -> Array:
    """Chance below in Student's distribution, in equal steps of the arc tangent."""
    from scipy.special import stdtr

    bent = (np.arange(_TABLE + 1) + 0.5) / _TABLE * math.pi - math.pi / 2
    return np.asarray(stdtr(degrees_of_freedom, np.tan(np.minimum(bent, math.pi / 2 - 1e-9))))


@cache
def _off_square() -> tuple[Array, Array]:
    """One over the cosine of the gauge's angle off square, and the share of gauges held so (a half normal)."""
    from scipy.special import ndtri

    share = (np.arange(_SQUARE_STEPS) + 0.5) / _SQUARE_STEPS
    times: Array = 1 / np.cos(_OFF_SQUARE_SD_RAD * ndtri(0.5 + share / 2))
    return times, np.full(_SQUARE_STEPS, 1 / _SQUARE_STEPS)


def bench_doubt(
    design: Array,
    readings: LeverReadings,
    scatter: GaugeScatter,
    fit: RobustFit,
    direction_rad: Array | None = None,
    *,
    out_and_back_once: bool = False,
) -> CoefficientSpread | None:
    """What the readings tell of a design's coefficients when errors besides scatter are allowed for.

    Parameters
    ----------
    design : array, shape (n, p)
        One row a reading.
    readings : LeverReadings
        In the order taken.
    scatter : GaugeScatter
    fit : RobustFit
        The fit of the readings to the design: which are kept, and their units.
    direction_rad : array, shape (n,), optional
        Direction of each reading; without it the directions are not judged apart.
    out_and_back_once : bool, default False
        One line out and back: drift then looks like friction, so that readings without a sign of it are no sign of none.

    Returns
    -------
    BenchDoubt or None
        None without a degree of freedom.

    Notes
    -----
    A linear mixed model whose variance ratios are integrated out over a grid: restricted likelihood
    [patterson-thompson-1971], generalised least squares for each grid point.
    """
    if fit.degrees_of_freedom < 1:
        return None
    kept = fit.kept
    unit = fit.unit[kept]
    rows, target = design[kept] / unit[:, None], readings.moment_nm[kept] / unit
    told = fit.degrees_of_freedom >= _LEAST_FREEDOM
    parts = _error_parts(readings, scatter, fit, direction_rad)
    sizes = list(itertools.product(*(steps if told and part is not None else (0.0,) for steps, part in parts)))
    n, p = rows.shape
    shape = np.zeros((len(sizes), n, n)) + np.eye(n)
    for place, (_, part) in enumerate(parts):
        if part is not None:
            shape += np.array([size[place] ** 2 for size in sizes])[:, None, None] * part
    prior = np.array([_ANY_WEIGHT ** sum(one > 0 for one in size) for size in sizes])
    log_weight, means, covariances = _each_size(rows, target, shape, scatter.floor)
    drifts = np.array([size[2] > 0 for size in sizes])
    log_weight += np.log(prior)
    drift = float(_shares(log_weight)[drifts].sum())
    if out_and_back_once:
        log_weight -= np.where(drifts, 2 * math.log(_ANY_WEIGHT), 0.0)
    weight = _shares(log_weight)
    likely = weight > 0.0
    return CoefficientSpread(weight[likely], means[likely], covariances[likely], n - p, n, drift)


def _shares(log_weight: Array) -> Array:
    """Weights that add up to 1, those too small to change an interval 0."""
    weight = np.exp(log_weight - log_weight.max())
    weight[weight <= _LEAST_WEIGHT] = 0.0
    return np.asarray(weight / weight.sum())


def drift_findings(doubt: CoefficientSpread | None) -> tuple[Finding, ...]:
    """Whether the readings drift in the order they were taken, beyond doubt."""
    if doubt is None or doubt.drift_chance < _SURE_OF_DRIFT:
        return ()
    return (Finding("query", "drift", message(BenchNotes.drift)),)


def _error_parts(
    readings: LeverReadings, scatter: GaugeScatter, fit: RobustFit, direction_rad: Array | None
) -> list[tuple[tuple[float, ...], Array | None]]:
    """Covariance of each kind of error for a size of one scatter, in units of scatter; None where it cannot show."""
    kept = fit.kept
    unit, angle = fit.unit[kept], readings.angle_rad[kept]
    height = readings.height_m[kept]
    middle_nm = height * math.hypot(scatter.middle_force_n, scatter.constant_n)
    share = angle / readings.max_angle_rad
    sag = 4 * share * (1 - share) * middle_nm / unit  # nothing at centre and stop, so both ends keep their meaning
    apart = None
    if direction_rad is not None:
        codes = direction_rad[kept]
        same = (codes[:, None] == codes[None, :]).astype(np.float64)
        read = np.maximum(fit.fitted[kept], 0.0) / unit
        if len(np.unique(codes)) > 1:
            apart = 0.5 * same * (np.outer(read, read) * (1 + (scatter.constant_n / scatter.middle_force_n) ** 2)
                                  + np.outer(middle_nm / unit, middle_nm / unit))  # fmt: skip
    taken = readings.number[kept].astype(np.float64) - 1.0
    walk = np.minimum(taken[:, None], taken[None, :]) * np.outer(middle_nm / unit, middle_nm / unit)
    bends = len(np.unique(np.round(share, 2))) > 2
    return [
        (_SAG, np.outer(sag, sag) if bends else None),
        (_APART, apart),
        (_DRIFT, walk),
    ]


def _each_size(rows: Array, target: Array, shape: Array, floor: float) -> tuple[Array, Array, Array]:
    """Restricted log likelihood, coefficients and their covariance for each covariance of the errors."""
    freedom = rows.shape[0] - rows.shape[1]
    lower = np.linalg.cholesky(shape)
    white = np.linalg.solve(
        lower, np.broadcast_to(np.column_stack([rows, target]), (*shape.shape[:2], rows.shape[1] + 1))
    )
    x, y = white[:, :, :-1], white[:, :, -1]
    information = np.swapaxes(x, 1, 2) @ x
    inverse = np.linalg.inv(information)
    means = np.einsum("kij,klj,kl->ki", inverse, x, y)
    left = np.sum((y - np.einsum("kli,ki->kl", x, means)) ** 2, axis=1)
    variance = np.maximum(left / freedom, floor**2)
    log_weight = (
        -np.log(np.diagonal(lower, axis1=1, axis2=2)).sum(axis=1)
        - 0.5 * np.linalg.slogdet(information)[1]
        - freedom / 2 * np.log(left + freedom * floor**2)
    )
    return log_weight, means, variance[:, None, None] * inverse
