"""Which reading is most worth the player's effort, or that it is enough.

From the same draws as the fits: a further reading of one direction would make some draws likelier than
others. The chance that the chosen stick is the right one is worked out as it would be after each
possible outcome of that reading, and averaged over the outcomes.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.next_readings import Reading

__all__ = ["Candidate", "chance_after", "chance_now", "right_choice", "right_or_none"]

Array = NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class Candidate:
    """A reading that could be taken.

    Parameters
    ----------
    site, what : str
    direction_rad : float or None
        None where a direction has no meaning.
    log_draws : array, shape (draws,)
        Log of the quantity in each draw.
    reading_sd : float
        Relative sd of the mean of the repeats that would be taken.
    """

    site: str
    what: Reading
    direction_rad: float | None
    log_draws: Array
    reading_sd: float


def right_choice(utility: Array, tie: float) -> NDArray[np.bool_]:
    """In which draw each stick is best or ties with the best.

    Parameters
    ----------
    utility : array, shape (options, draws)
        Bits of the best set-up of each stick; below -1 where it breaks a rule.
    tie : float
        Difference in bits that does not count.

    Returns
    -------
    array of bool, shape (options, draws)
    """
    right: NDArray[np.bool_] = utility >= utility.max(axis=0, keepdims=True) - tie
    return right


def right_or_none(utility: Array, tie: float) -> NDArray[np.bool_]:
    """In which draw each stick keeps every limit and is best or ties with the best; and last, in which none keeps them.

    Parameters
    ----------
    utility : array, shape (options, draws)
        As for `right_choice`: 0 or more only where every rule is kept.
    tie : float
        Difference in bits that does not count.

    Returns
    -------
    array of bool, shape (options + 1, draws)

    Examples
    --------
    >>> right_or_none(np.array([[2.0, -1.5]]), 0.15).tolist()
    [[True, False], [False, True]]
    """
    fits = utility >= 0
    return np.vstack([right_choice(utility, tie) & fits, ~fits.any(axis=0)])


def chance_now(right: NDArray[np.bool_]) -> float:
    """Chance that the option with the best chance is right.

    Parameters
    ----------
    right : array of bool, shape (options, draws)
        From `right_choice`.
    """
    return float(right.mean(axis=1).max())


def chance_after(
    right: NDArray[np.bool_], candidates: Sequence[Candidate], rng: np.random.Generator, *, outcomes: int = 150
) -> Mapping[int, float]:
    """Expected chance that the then chosen option is right, after each candidate reading.

    Parameters
    ----------
    right : array of bool, shape (options, draws)
        From `right_choice`.
    candidates : sequence of Candidate
    rng : numpy Generator
    outcomes : int
        Possible outcomes of each reading that are tried.

    Returns
    -------
    mapping of int to float
        Place of the candidate to its expected chance.

    Notes
    -----
    Source: expected value of sample information by importance weighting of one sample [raiffa-schlaifer], with the
    chance of the right choice as the value. The optimism of weighting a finite sample is measured on the
    same draws in shuffled order, where a reading can tell nothing, and taken off.
    """
    options = right.astype(np.float64)
    draws = options.shape[1]
    now = chance_now(right)
    picked = rng.choice(draws, size=min(outcomes, draws), replace=False)
    out = {}
    for place, candidate in enumerate(candidates):
        noise = candidate.reading_sd * rng.standard_normal(len(picked))
        told = _expected_best(options, candidate.log_draws, picked, noise, candidate.reading_sd)
        nothing = np.mean(
            [
                _expected_best(options, rng.permutation(candidate.log_draws), picked, noise, candidate.reading_sd)
                for _ in range(2)
            ]
        )
        out[place] = float(np.clip(now + told - nothing, now, 1.0))
    return out


def _expected_best(options: Array, log_draws: Array, picked: NDArray[np.int64], noise: Array, sd: float) -> float:
    outcome = log_draws[picked] + noise
    log_weight = -0.5 * ((outcome[:, None] - log_draws[None, :]) / sd) ** 2
    weight = np.exp(log_weight - log_weight.max(axis=1, keepdims=True))
    weight /= weight.sum(axis=1, keepdims=True)
    return float((weight @ options.T).max(axis=1).mean())
