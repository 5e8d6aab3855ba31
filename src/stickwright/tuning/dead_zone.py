"""How far the output strays while the player rests, and so how large the dead zone must be.

The radius is a one-sided tolerance limit after Wilks: an order statistic of the distances from the
centre that covers a stated share of rest, at a stated confidence, whatever their distribution. It
holds for independent samples; samples of one rest, milliseconds apart, are not, so each rest is
thinned by its correlation first, once.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy.special import betainc

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import message
from stickwright.codes.signals import Signals
from stickwright.codes.tunings import Tunings
from stickwright.errors import BadInput, Problem
from stickwright.model.recorded import Finding
from stickwright.trace.rest_samples import independent

__all__ = [
    "dead_zone",
    "dead_zone_estimate",
    "effective_samples",
    "lag_one_correlation",
    "largest_rank",
    "smallest_sample",
]  # fmt: skip

Array = NDArray[np.float64]
COVERAGE = 0.95
CONFIDENCE = 0.95


def _checked_shares(coverage: float, confidence: float) -> None:
    problems = [
        Problem(
            name,
            f"{value:g}",
            message(Signals.expected, what="open_share"),
            message(Signals.remedy, what="as_share_95"),
        )
        for name, value in (("coverage", coverage), ("confidence", confidence))
        if not 0.0 < value < 1.0
    ]
    if problems:
        raise BadInput(problems)


def _confidence_reached(n: int, rank: int | Array, coverage: float) -> Array:
    """Confidence that the `rank`-th largest of `n` covers `coverage`: 1 - BinomCDF(rank - 1; n, 1 - coverage)."""
    return np.asarray(betainc(rank, n - rank + 1.0, 1.0 - coverage), dtype=np.float64)


def smallest_sample(coverage: float = COVERAGE, confidence: float = CONFIDENCE, rank: int = 1) -> int:
    """Fewest independent rest samples that support a tolerance limit.

    Parameters
    ----------
    coverage : float, default 0.95
        Share of rest that must lie inside the limit.
    confidence : float, default 0.95
        How sure that must be.
    rank : int, default 1
        Which sample, counted from the largest, is to be the limit.

    Returns
    -------
    int
        Number of samples, dimensionless.

    Raises
    ------
    BadInput
        A share outside 0 to 1, or a rank below 1.

    Notes
    -----
    Source: one-sided tolerance limits [wilks-1941]. Assumed: independent samples.

    Examples
    --------
    >>> smallest_sample(), smallest_sample(0.90), smallest_sample(0.95, 0.95, rank=2)
    (59, 29, 93)
    """
    _checked_shares(coverage, confidence)
    if rank < 1:
        raise BadInput(
            Problem(
                "rank", str(rank), message(Signals.expected, what="one_or_more"), message(Signals.remedy, what="rank")
            )
        )
    low, high = rank - 1, rank
    while _confidence_reached(high, rank, coverage) < confidence:
        low, high = high, 2 * high
    while high - low > 1:
        middle = (low + high) // 2
        if _confidence_reached(middle, rank, coverage) >= confidence:
            high = middle
        else:
            low = middle
    return high


def largest_rank(n: int, coverage: float = COVERAGE, confidence: float = CONFIDENCE) -> int:
    """Which of `n` rest samples, counted from the largest, is the smallest sufficient limit.

    Parameters
    ----------
    n : int
        Number of independent samples.
    coverage, confidence : float, default 0.95
        As in `smallest_sample`.

    Returns
    -------
    int
        Rank from the top; 0 when even the largest sample is not enough.

    Raises
    ------
    BadInput
        A share outside 0 to 1.

    Notes
    -----
    Source: one-sided tolerance limits [wilks-1941].

    Examples
    --------
    >>> [largest_rank(n) for n in (58, 59, 100, 1000)]
    [0, 1, 2, 39]
    """
    _checked_shares(coverage, confidence)
    if n < 1:
        return 0
    ranks = np.arange(1.0, math.ceil(n * (1.0 - coverage)) + 2.0)
    ranks = ranks[ranks <= n]
    return int(np.count_nonzero(_confidence_reached(n, ranks, coverage) >= confidence))


def _rows(rest_xy: ArrayLike) -> Array:
    """Samples as (n, 2), those with an empty cell left out."""
    xy = np.asarray(rest_xy, dtype=np.float64)
    if xy.ndim != 2 or xy.shape[1] != 2:
        raise BadInput(
            Problem(
                message(Signals.step, what="rest"),
                message(Signals.shape, shape=xy.shape),
                message(Signals.expected, what="xy_rows"),
            )
        )
    return xy[np.isfinite(xy).all(axis=1)]


def dead_zone(rest_xy: ArrayLike, coverage: float = COVERAGE, confidence: float = CONFIDENCE) -> float:
    """Radius about (0, 0) that covers a stated share of rest at a stated confidence.

    Parameters
    ----------
    rest_xy : array, shape (n, 2)
        Independent rest samples, measured from the centre in use (take the offset off first), share of
        full output. Rows with an empty cell (NaN) do not count.
    coverage, confidence : float, default 0.95
        As in `smallest_sample`.

    Returns
    -------
    float
        Radius, share of full output: the distance from the centre that has the largest rank allowed.

    Raises
    ------
    BadInput
        Too few samples for this coverage and confidence, a share outside 0 to 1, or another shape.

    Notes
    -----
    Source: one-sided tolerance limits [wilks-1941]. Assumed: independent samples, see
    `stickwright.trace.rest_samples.independent`; a round dead zone.

    Examples
    --------
    >>> rest_xy = [(0.001 * i, 0.0) for i in range(100)]
    >>> dead_zone(rest_xy)
    0.098
    """
    xy = _rows(rest_xy)
    rank = largest_rank(len(xy), coverage, confidence)
    if rank == 0:
        needed = smallest_sample(coverage, confidence)
        raise BadInput(
            Problem(
                message(Signals.step, what="rest"),
                message(Signals.count, count=len(xy), of="independent"),
                message(Signals.coverage, least=needed, coverage_share=coverage, confidence_share=confidence),
                message(Signals.remedy, what="longer_rest"),
            )
        )
    return float(np.sort(np.hypot(xy[:, 0], xy[:, 1]))[-rank])


def lag_one_correlation(rest_xy: ArrayLike) -> float:
    """Correlation of each rest sample with the next, both axes pooled.

    Parameters
    ----------
    rest_xy : array, shape (n, 2)
        Rest samples in order of time, share of full output.

    Returns
    -------
    float
        0 to below 1, dimensionless; what chance alone would give (2 / sqrt(n)) reads 0, and so does a
        rest that never moves.

    Examples
    --------
    >>> slow_xy = [(i // 10 % 2, 0.0) for i in range(400)]
    >>> round(lag_one_correlation(slow_xy), 1)
    0.8
    """
    xy = _rows(rest_xy)
    if len(xy) < 3:
        return 0.0
    about = xy - xy.mean(axis=0)
    power = float((about**2).sum())
    if power <= 1e-24 * len(xy) or power == 0.0:
        return 0.0
    rho = float((about[1:] * about[:-1]).sum()) / power
    return 0.0 if rho < 2.0 / math.sqrt(len(xy)) else min(rho, 1.0 - 1.0 / len(xy))


def effective_samples(rest_xy: ArrayLike) -> float:
    """Number of independent samples that a correlated rest is worth.

    Parameters
    ----------
    rest_xy : array, shape (n, 2)
        Rest samples in order of time, evenly spaced, share of full output.

    Returns
    -------
    float
        n (1 - rho) / (1 + rho), dimensionless, with rho from `lag_one_correlation`.

    Notes
    -----
    Source: effective number of samples of a first-order autoregressive series [bayley-hammersley-1946].
    Assumed: correlation that dies away as in such a series.

    Examples
    --------
    >>> slow_xy = [(i // 10 % 2, 0.0) for i in range(400)]
    >>> round(effective_samples(slow_xy))
    44
    """
    rho = lag_one_correlation(rest_xy)
    return len(_rows(rest_xy)) * (1.0 - rho) / (1.0 + rho)


def dead_zone_estimate(
    rests: Sequence[ArrayLike], coverage: float = COVERAGE, confidence: float = CONFIDENCE
) -> tuple[Estimate, tuple[Finding, ...]]:
    """Dead zone from recordings of rest, correlation allowed for, with its interval.

    Parameters
    ----------
    rests : sequence of array, shape (n, 2)
        All samples of each rest in order of time, evenly spaced, offset taken off, share of full output; not thinned
        before: that is done here.
    coverage, confidence : float, default 0.95
        As in `smallest_sample`.

    Returns
    -------
    estimate : Estimate
        The tolerance limit as value and upper end; the lower end is the same for the lower side, so that
        the true radius that covers `coverage` of rest lies between them at level 2 `confidence` - 1.
        Too few independent samples: none is set (0, assumed), with the reason; the largest distance seen stands in
        the finding, for it is no setting.
    findings : tuple of Finding
        Too short a rest, or one that never moves.

    Raises
    ------
    BadInput
        No sample at all, a share outside 0 to 1, or another shape.

    Notes
    -----
    Source: one-sided tolerance limits [wilks-1941], on samples far enough apart to be independent within their rest.

    Examples
    --------
    >>> wobble_xy = [(0.01 * (-1) ** i, 0.0001 * (i * 37 % 101)) for i in range(200)]
    >>> estimate, findings = dead_zone_estimate([wobble_xy])
    >>> round(estimate.value, 4), round(estimate.low, 4), round(estimate.level, 2), findings
    (0.014, 0.0137, 0.9, ())
    """
    _checked_shares(coverage, confidence)
    parts = [part for part in map(_rows, rests) if len(part)]
    if not parts:
        raise BadInput(
            Problem(
                message(Signals.step, what="rest"),
                "none",
                message(Signals.expected, what="rest_recording"),
                message(Signals.remedy, what="record_rest"),
            )
        )
    xy = np.concatenate(parts)
    findings: list[Finding] = []
    if len(xy) > 1 and float(np.ptp(xy, axis=0).max()) <= 1e-12:
        findings.append(Finding("query", "frozen_rest", message(Tunings.frozen_rest)))
    kept = independent(parts)
    radius = np.sort(np.hypot(kept[:, 0], kept[:, 1]))
    rank = largest_rank(len(kept), coverage, confidence)
    if rank == 0:
        needed = smallest_sample(coverage, confidence)
        why = message(
            Tunings.why_short_rest,
            samples=len(kept),
            needed=needed,
            coverage_share=coverage,
            confidence_share=confidence,
        )
        largest = float(np.hypot(xy[:, 0], xy[:, 1]).max())
        text = message(Tunings.short_rest, why=why, largest_share=largest, longer_factor=needed / len(kept))
        findings.append(Finding("fault", "short_rest", text))
        return Estimate.unbounded(0.0, why, n=0, assumed=message(Tunings.assumed_no_zone)), tuple(findings)
    # The lower side: the highest order statistic from below that covers at most `coverage`.
    below = np.arange(1.0, len(kept) + 1.0)
    enough = np.asarray(betainc(below, len(kept) - below + 1.0, coverage)) >= confidence
    low = float(radius[max(int(np.count_nonzero(enough)) - 1, 0)])
    value = float(radius[-rank])
    return Estimate(value, low, value, level=round(2.0 * confidence - 1.0, 12), n=len(kept)), tuple(findings)
