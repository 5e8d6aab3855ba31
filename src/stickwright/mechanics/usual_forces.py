"""Resting and involuntary force of a part that pushes a stick: as read, else the usual figures of an unaffected part.

A usual figure belongs to the part and does not grow with what the player can do: a strong, steady hand shakes no more.
"""

from __future__ import annotations

import math
from statistics import NormalDist

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.estimate_notes import EstimateNotes
from stickwright.codes.message import Message, Name, message
from stickwright.codes.stand_ins import StandIns
from stickwright.mechanics import capability as cap
from stickwright.mechanics.default_values import Steadiness, has_positive_interval, lognormal
from stickwright.mechanics.unread import MEASURE
from stickwright.model.fit import Assumption
from stickwright.model.parts import USUAL, USUAL_FACTOR
from stickwright.model.player import Site

__all__ = ["USUAL_CROSSING_HZ", "USUAL_FACTORS", "involuntary_force", "resting_force"]

Array = NDArray[np.float64]
USUAL_CROSSING_HZ = 1.5
"""Zero-crossing frequency of involuntary movement that was not recorded: common practice, no source."""
_USUAL_LOG_SD = math.log(USUAL_FACTOR) / 1.96
USUAL_FACTORS = tuple(math.exp(_USUAL_LOG_SD * NormalDist().inv_cdf((place + 0.5) / 9)) for place in range(9))
"""Times the usual figure, at the middles of nine equally likely parts of its range."""


def _usual_estimate(value: float, why: Message) -> Estimate:
    return Estimate(value, value / USUAL_FACTOR, value * USUAL_FACTOR, 0.95, 0, assumed=why)


def resting_force(
    site: Site, rng: np.random.Generator, draws: int, assumptions: list[Assumption]
) -> tuple[Estimate, Array]:
    """Resting force of the last support noted, and its draws.

    Parameters
    ----------
    site : Site
    rng : numpy Generator
    draws : int
    assumptions : list of Assumption
        Stand-ins are added here.

    Notes
    -----
    The scatter is the readings' own, moderated by `ASSUMED_SCATTER` with its few degrees of freedom [smyth-2004], so
    that two or three readings that happen to agree do not pretend to be sure; Student's t.
    """
    from scipy import stats

    last, at = site.rest[-1] if site.rest else None, (Name(site.name),)
    if last is None or not last.force_n:
        assumptions.append(
            Assumption(
                message(StandIns.resting_force, sites=at),
                message(
                    StandIns.usual_force, force_n=USUAL[site.part].rest_n, within_factor=USUAL_FACTOR, rms=False
                ),
                message(StandIns.usual_supported, part=site.part), MEASURE["resting force"],
            )
        )  # fmt: skip
        usual = _usual_estimate(USUAL[site.part].rest_n, message(EstimateNotes.usual_supported, part=site.part))
        return usual, lognormal(rng, usual.number, _USUAL_LOG_SD, draws)
    values = np.asarray(last.force_n)
    middle = float(values.mean())
    if middle <= 0:
        return Estimate.unbounded(0.0, message(EstimateNotes.all_zero), n=len(values)), np.zeros(draws)
    df = len(values) - 1
    prior = cap.ASSUMED_SCATTER_DF
    scatter = math.sqrt((prior * cap.ASSUMED_SCATTER**2 + df * (values / middle).var(ddof=min(df, 1))) / (prior + df))
    log_sd = scatter / math.sqrt(len(values))
    half = float(stats.t.ppf(0.975, prior + df)) * log_sd
    if not df:
        assumptions.append(
            Assumption(
                message(StandIns.resting_scatter, sites=at),
                message(StandIns.share, value_share=cap.ASSUMED_SCATTER), message(StandIns.rest_read_once),
                message(StandIns.two_more_rests),
            )
        )  # fmt: skip
    drawn = middle * np.exp(log_sd * rng.standard_t(prior + df, draws))
    drawn[0] = middle
    mark = None if df else message(EstimateNotes.scatter_once, value_share=cap.ASSUMED_SCATTER)
    return Estimate(middle, middle * math.exp(-half), middle * math.exp(half), 0.95, len(values), assumed=mark), drawn


def involuntary_force(
    site: Site,
    rng: np.random.Generator,
    draws: int,
    assumptions: list[Assumption],
    recorded: Steadiness,
) -> tuple[Estimate, Estimate, Array, Array]:
    """Involuntary force (N, rms per axis) and its zero-crossing frequency (Hz), with the draws of both.

    Parameters
    ----------
    site : Site
        A typed figure wins.
    rng : numpy Generator
    draws : int
    assumptions : list of Assumption
        Stand-ins are added here.
    recorded : Steadiness
        The same two from a recording, where there is one.
    """
    at = (Name(site.name),)
    if site.involuntary_force_n is not None:
        sigma = Estimate.unbounded(site.involuntary_force_n, message(EstimateNotes.one_figure))
        log_sd = 0.10
    elif recorded.force_n is not None:
        sigma = recorded.force_n
        told = has_positive_interval(sigma)
        log_sd = max(0.05, math.log(sigma.upper / sigma.lower) / 3.92) if told else 0.2
    else:
        value = USUAL[site.part].steady_n
        assumptions.append(
            Assumption(
                message(StandIns.involuntary_force, sites=at),
                message(StandIns.usual_force, force_n=value, within_factor=USUAL_FACTOR, rms=True),
                message(StandIns.usual_steady, part=site.part), MEASURE["involuntary force"],
            )
        )  # fmt: skip
        sigma = _usual_estimate(value, message(EstimateNotes.usual_steady, part=site.part))
        log_sd = _USUAL_LOG_SD
    crossing_log_sd = 0.15
    if site.crossing_hz is not None:
        crossing = Estimate.unbounded(site.crossing_hz, message(EstimateNotes.one_figure))
    elif recorded.crossing_hz is not None and recorded.crossing_hz.number > 0:
        crossing = recorded.crossing_hz
    else:
        crossing_log_sd = math.log(2) / 1.96
        assumptions.append(
            Assumption(
                message(StandIns.crossing_frequency, sites=at),
                message(StandIns.usual_frequency, frequency_hz=USUAL_CROSSING_HZ, within_factor=2.0),
                message(StandIns.not_recorded), MEASURE["frequency"],
            )
        )  # fmt: skip
        value = USUAL_CROSSING_HZ
        crossing = Estimate(value, value / 2, value * 2, 0.95, 0, assumed=message(EstimateNotes.usual_figure))
    shaken = lognormal(rng, sigma.number, log_sd, draws)
    return sigma, crossing, shaken, lognormal(rng, crossing.number, crossing_log_sd, draws)
