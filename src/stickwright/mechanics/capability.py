"""Ability at a site: force and reach in every direction, with honest intervals.

Errors of a push are proportional, so everything happens in the logarithm. The scatter is pooled
over directions. Directions are smoothed round the circle by a Gaussian process whose covariance
is a short cosine series: a mean, a first and a second order (an ellipse off centre), a little
third order, and what is each direction's own. The same formula serves eight directions, four, or
any set of angles, and tells how little is known where nobody measured.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.ability_findings import AbilityFindings
from stickwright.codes.estimate import Estimate
from stickwright.codes.estimate_notes import EstimateNotes
from stickwright.codes.matters import Matter
from stickwright.codes.message import Name, Text, message
from stickwright.codes.stand_ins import Quantity
from stickwright.model.recorded import Finding

__all__ = [
    "ASSUMED_SCATTER", "Readings", "Round", "coarse_gauge_finding", "expected_from_others", "grid_directions",
    "moderated", "pooled_scatter", "round_the_circle", "tiring",
]  # fmt: skip

Array = NDArray[np.float64]

ASSUMED_SCATTER = 0.15
"""Scatter of one reading where no direction was repeated: common practice, no source."""
ASSUMED_SCATTER_DF = 4
ENOUGH_DF = 8
"""Degrees of freedom from which on the readings' own scatter stands alone: assumed."""
SERIES_SD = (0.50, 0.25, 0.15)
"""Prior sd of the first, second and third order of the log ability round the circle: assumed.
Wide: a player twice as strong one way as the other is ordinary."""
OWN_SD = 0.10
"""Prior sd of what is a direction's own: assumed."""
QUERY_SD = 3.0
_OFF: dict[Quantity, Matter] = {"force": "force_off", "reach": "reach_off"}
EIGHT = np.arange(8) * math.pi / 4


@dataclass(frozen=True, eq=False)
class Readings:
    """Repeats per direction of one quantity.

    Parameters
    ----------
    direction_rad : array, shape (m,)
        Directions that were read at least once.
    repeats : sequence of m arrays
        The readings of each direction, all above zero.
    extra_sd : array, shape (m,)
        Relative sd that repeating does not lessen: the gauge's step, or a value worked out otherwise.
    visit_cov : array, shape (m, m)
        Covariance of the log means that comes of the order of the readings; more readings lessen it.
    """

    direction_rad: Array
    repeats: tuple[Array, ...]
    extra_sd: Array
    visit_cov: Array

    @classmethod
    def of(cls, pairs: Sequence[tuple[float, Sequence[float]]], step: float = 0.0) -> Readings:
        """From (direction, repeats) pairs; directions given twice are pooled, zero readings stand for half a step.

        Parameters
        ----------
        pairs : sequence of (float, sequence of float)
            Direction in radian and its repeats, SI.
        step : float, default 0
            The gauge's step: adds its rounding sd, step/sqrt(12), which repeats do not average away.
        """
        together: dict[float, list[float]] = {}
        for direction, values in pairs:
            key = round(direction % (2 * math.pi), 6) % round(2 * math.pi, 6)
            together.setdefault(key, []).extend(values)
        kept = {key: values for key, values in sorted(together.items()) if values}
        positive = [value for values in kept.values() for value in values if value > 0]
        floor = step / 2 if step > 0 else 0.5 * min(positive, default=1.0)
        repeats = tuple(np.array([value if value > 0 else floor for value in values]) for values in kept.values())
        means = np.array([float(np.exp(np.log(values).mean())) for values in repeats])
        rounding = step / math.sqrt(12) / means if len(means) else np.zeros(0)
        return cls(np.array(list(kept)), repeats, rounding, np.zeros((len(kept), len(kept))))

    @property
    def log_means(self) -> Array:
        return np.array([np.log(values).mean() for values in self.repeats])

    @property
    def counts(self) -> NDArray[np.int64]:
        return np.array([len(values) for values in self.repeats], dtype=np.int64)


def pooled_scatter(readings: Readings, what: Quantity = "force") -> tuple[float, int, tuple[Finding, ...]]:
    """Relative sd of one reading, pooled over directions, and its degrees of freedom.

    Directions whose repeats are all the same to the last digit tell nothing of the scatter when
    others do differ (copied or rounded), and are left out of the pooling. Where nothing was
    repeated, or all repeats agree, the scatter is assumed.

    Parameters
    ----------
    readings : Readings
        Repeats per direction.
    what : {"force", "reach"}
        Of what, for the findings.

    Returns
    -------
    tuple of (float, int, tuple of Finding)
        Scatter as a share, degrees of freedom (0 when assumed), what was noticed.

    Notes
    -----
    Source: pooled variance, any textbook of statistics.
    """
    logs = [np.log(values) for values in readings.repeats]
    spread = [(float(((log - log.mean()) ** 2).sum()), len(log) - 1) for log in logs]
    alike = [square < 1e-18 and df >= 1 for square, df in spread]
    told = [(square, df) for (square, df), same in zip(spread, alike, strict=True) if df and not same]
    df = sum(part for _, part in told)
    findings: list[Finding] = []
    if df and any(alike):
        there = tuple(float(phi) for phi, same in zip(readings.direction_rad, alike, strict=True) if same)
        same_there = message(AbilityFindings.identical_repeats, what=what, directions_rad=there)
        findings.append(Finding("query", "identical_repeats", same_there))
    if not df:
        if any(alike):
            same = message(AbilityFindings.all_identical, what=what, scatter_share=ASSUMED_SCATTER)
            findings.append(Finding("query", "identical_repeats", same))
        return ASSUMED_SCATTER, 0, tuple(findings)
    return math.sqrt(sum(square for square, _ in told) / df), df, tuple(findings)


def grid_directions(measured_rad: Array) -> Array:
    """Directions to judge: the eight, and each measured one that is not among them.

    Parameters
    ----------
    measured_rad : array, shape (m,)
        Directions read, any angles.

    Returns
    -------
    array, shape (k,)
        Sorted, 0 up to 2 pi; a standard direction nearer than 10 degrees to a measured one gives way to it.
    """
    kept = list(np.mod(measured_rad, 2 * math.pi))
    for phi in EIGHT:
        nearest = min((abs(_turned(phi - other)) for other in kept), default=math.pi)
        if nearest > math.radians(10):
            kept.append(float(phi))
    return np.array(sorted(0.0 if 2 * math.pi - phi < 1e-5 else float(phi) for phi in kept))


def _turned(angle: float) -> float:
    return (angle + math.pi) % (2 * math.pi) - math.pi


def _covariance(a_rad: Array, b_rad: Array, mean_sd: float) -> Array:
    gap = a_rad[:, None] - b_rad[None, :]
    total = np.full(gap.shape, float(mean_sd**2))
    for order, sd in enumerate(SERIES_SD, start=1):
        total += sd**2 * np.cos(order * gap)
    same = np.abs((gap + math.pi) % (2 * math.pi) - math.pi) < 1e-5
    own: Array = total + OWN_SD**2 * same
    return own


@dataclass(frozen=True, eq=False)
class Round:
    """What is known of one quantity round the circle, in the logarithm.

    Parameters
    ----------
    direction_rad : array, shape (k,)
        Directions of the grid.
    log_mean : array, shape (k,)
        Best figure.
    own_root, noise_root : array, shape (k, k)
        Square roots of the covariance in two parts: what more repeats would not lessen (directions nobody read, the
        gauge's step), and what comes of the scatter of the readings.
    df : float
        Degrees of freedom of the scatter.
    scatter : float
        Relative sd of one reading, as used.
    measured : array of bool, shape (k,)
        Which directions were read.
    """

    direction_rad: Array
    log_mean: Array
    own_root: Array
    noise_root: Array
    df: float
    scatter: float
    measured: NDArray[np.bool_]

    @property
    def sd(self) -> Array:
        spread: Array = np.sqrt((self.own_root**2).sum(axis=1) + (self.noise_root**2).sum(axis=1))
        return spread

    def draws(self, rng: np.random.Generator, n: int) -> Array:
        """Draws of the quantity (not its logarithm), shape (n, k): the part from scatter by Student's t."""
        own, noise = (rng.standard_normal((n, len(self.log_mean))) for _ in range(2))
        stretch = np.sqrt(self.df / rng.chisquare(self.df, size=(n, 1)))
        values: Array = np.exp(self.log_mean + own @ self.own_root.T + stretch * (noise @ self.noise_root.T))
        return values

    def estimates(
        self, counts: dict[int, int], assumed: Text | None = None, level: float = 0.95
    ) -> tuple[Estimate, ...]:
        """One estimate a direction; `counts` maps a grid place to its number of readings."""
        from scipy import stats

        z, t = float(stats.norm.ppf(0.5 + level / 2)), float(stats.t.ppf(0.5 + level / 2, self.df))
        half = np.hypot(z * np.sqrt((self.own_root**2).sum(axis=1)), t * np.sqrt((self.noise_root**2).sum(axis=1)))
        out = []
        for place, (mean, width) in enumerate(zip(self.log_mean, half, strict=True)):
            n = counts.get(place, 0)
            mark = assumed if n else (assumed or message(EstimateNotes.neighbours))
            out.append(Estimate(math.exp(mean), math.exp(mean - width), math.exp(mean + width), level, n, assumed=mark))
        return tuple(out)


def moderated(scatter: float, df: int) -> tuple[float, float]:
    """Scatter and degrees of freedom with the usual scatter counted in, so that few repeats that happen to agree do
    not pretend to be sure, and few that happen to differ do not make everything unknown.

    Parameters
    ----------
    scatter, df : float, int
        From `pooled_scatter`.

    Notes
    -----
    Source: moderated variance [smyth-2004], with `ASSUMED_SCATTER` on `ASSUMED_SCATTER_DF` degrees of freedom, fewer the
    more the readings have of their own and none from `ENOUGH_DF` on (assumed).

    Examples
    --------
    >>> moderated(0.15, 0), moderated(0.12, 16), round(moderated(0.30, 2)[0], 3)
    ((0.15, 4.0), (0.12, 16.0), 0.222)
    """
    prior = ASSUMED_SCATTER_DF * max(0.0, 1.0 - df / ENOUGH_DF)
    together = prior + df
    return math.sqrt((prior * ASSUMED_SCATTER**2 + df * scatter**2) / together), together


def round_the_circle(
    readings: Readings, grid_rad: Array, scatter: float, df: int, *, prior_log_mean: float, prior_log_sd: float
) -> Round:
    """Ability at each direction of the grid from repeats at some of them.

    Parameters
    ----------
    readings : Readings
        Repeats per direction; may be empty, and then the prior is all that is known.
    grid_rad : array, shape (k,)
        Directions wanted.
    scatter, df : float, int
        From `pooled_scatter`.
    prior_log_mean, prior_log_sd : float
        What is known of the level beforehand, in the logarithm; wide.

    Returns
    -------
    Round
        Posterior mean and covariance root.

    Notes
    -----
    Source: Gaussian process regression with known noise [rasmussen-williams], eq. 2.23 to 2.24; the
    cosine series as covariance is the smoothness of practice put as a prior (assumed).
    """
    seen = readings.direction_rad
    used, own_df = moderated(scatter, df)
    measured = np.array(
        [bool(np.any(np.abs((phi - seen + math.pi) % (2 * math.pi) - math.pi) < 1e-5)) for phi in grid_rad]
    )
    own = _covariance(grid_rad, grid_rad, prior_log_sd)
    if len(seen) == 0:
        nothing = np.zeros(own.shape)
        return Round(
            direction_rad=grid_rad,
            log_mean=np.full(len(grid_rad), prior_log_mean),
            own_root=_root(own),
            noise_root=nothing,
            df=own_df,
            scatter=used,
            measured=measured,
        )
    cross = _covariance(grid_rad, seen, prior_log_sd)
    inner = _covariance(seen, seen, prior_log_sd) + np.diag(readings.extra_sd**2)
    weights = np.linalg.solve(inner + np.diag(used**2 / readings.counts) + readings.visit_cov, cross.T).T
    mean = prior_log_mean + weights @ (readings.log_means - prior_log_mean)
    whole = own - weights @ cross.T
    unlessened = own - np.linalg.solve(inner + 1e-12 * np.eye(len(seen)), cross.T).T @ cross.T
    return Round(
        direction_rad=grid_rad,
        log_mean=mean,
        own_root=_root(unlessened),
        noise_root=_root(whole - unlessened),
        df=own_df,
        scatter=used,
        measured=measured,
    )


def _root(covariance: Array) -> Array:
    values, vectors = np.linalg.eigh((covariance + covariance.T) / 2)
    root: Array = vectors * np.sqrt(np.clip(values, 0.0, None))
    return root


def expected_from_others(
    readings: Readings, scatter: float, df: int, *, prior_log_mean: float, prior_log_sd: float, what: Quantity
) -> tuple[Finding, ...]:
    """Directions that lie far from what all the others lead one to expect, and single repeats far from their own.

    Parameters
    ----------
    readings : Readings
        Repeats per direction.
    scatter, df : float, int
        From `pooled_scatter`.
    prior_log_mean, prior_log_sd : float
        As for `round_the_circle`.
    what : str
        'force' or 'reach', for the sentence.
    """
    findings = []
    number = len(readings.direction_rad)
    for place in range(number if number >= 4 else 0):
        others = [k for k in range(number) if k != place]
        rest = Readings(
            readings.direction_rad[others],
            tuple(readings.repeats[k] for k in others),
            readings.extra_sd[others],
            readings.visit_cov[np.ix_(others, others)],
        )
        phi = readings.direction_rad[[place]]
        told = round_the_circle(rest, phi, scatter, df, prior_log_mean=prior_log_mean, prior_log_sd=prior_log_sd)
        sd = math.sqrt(
            float(told.sd[0]) ** 2 + scatter**2 / readings.counts[place] + float(readings.extra_sd[place]) ** 2
        )
        off = float(readings.log_means[place] - told.log_mean[0])
        if abs(off) > QUERY_SD * sd:
            unlike = message(
                AbilityFindings.unlike_neighbours, what=what, direction_rad=float(phi[0]), off_factor=math.exp(off)
            )
            findings.append(Finding("query", _OFF[what], unlike))
    findings.extend(_odd_repeats(readings, what))
    return tuple(findings)


def _odd_repeats(readings: Readings, what: Quantity) -> list[Finding]:
    """Repeats far from the other repeats of their direction, by the robust scatter of all directions."""
    offs = [np.log(values) - np.median(np.log(values)) for values in readings.repeats]
    pooled = (
        np.concatenate([off for off in offs if len(off) >= 3]) if any(len(off) >= 3 for off in offs) else np.zeros(0)
    )
    if len(pooled) < 9:
        return []
    apart = np.abs(pooled[np.abs(pooled) > 1e-12])  # the middle repeat of three is always at 0 and tells nothing
    robust = max(1.4826 * float(np.median(apart)) if len(apart) else 0.0, 0.05)
    return [
        Finding(
            "query",
            _OFF[what],
            message(
                AbilityFindings.odd_repeat,
                number=k + 1,
                what=what,
                direction_rad=float(phi),
                off_factor=math.exp(off[k]),
            ),
        )
        for phi, off in zip(readings.direction_rad, offs, strict=True)
        if len(off) >= 3
        for k in range(len(off))
        if abs(off[k]) > max(4.0 * robust, 0.35)
    ]


def coarse_gauge_finding(readings: Readings, step: float, *, finest_stick: str | None = None) -> tuple[Finding, ...]:
    """Whether the gauge's step is too coarse for the forces read: below ten steps (common practice, no source).

    Parameters
    ----------
    readings : Readings
        Forces per direction, newton.
    step : float
        The gauge's step, newton.
    finest_stick : str or None
        Lightest benched stick, offered as a gauge.
    """
    if step <= 0:
        return ()
    low = tuple(
        float(phi)
        for phi, mean in zip(readings.direction_rad, np.exp(readings.log_means), strict=True)
        if mean < 10 * step
    )
    if not low:
        return ()
    stick = Name(finest_stick) if finest_stick else None
    coarse = message(AbilityFindings.coarse_gauge, step_n=step, directions_rad=low, stick=stick)
    return (Finding("fault", "coarse_gauge", coarse),)


def tiring(first: Sequence[float], again: Sequence[float], scatter: float, df: int) -> Estimate | None:
    """Loss of force between the first readings of a direction and the same direction read last.

    Parameters
    ----------
    first, again : sequence of float
        Readings in newton, above zero.
    scatter, df : float, int
        From `pooled_scatter`.

    Returns
    -------
    Estimate or None
        Share lost, plus is a loss; None when it was not repeated.
    """
    from scipy import stats

    if not first or not again or min(*first, *again) <= 0:
        return None
    difference = float(np.log(again).mean() - np.log(first).mean())
    half = float(stats.t.ppf(0.975, df or ASSUMED_SCATTER_DF)) * scatter * math.sqrt(1 / len(first) + 1 / len(again))
    return Estimate(
        1 - math.exp(difference), 1 - math.exp(difference + half), 1 - math.exp(difference - half), 0.95, len(again)
    )
