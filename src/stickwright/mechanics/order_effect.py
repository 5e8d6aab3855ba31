"""How force changes with the order of the readings, and from one day to another.

A player who tires pushes less from repeat to repeat and from the first direction to the last. The fresh force is the one
at the first reading of all; each reading is carried back to it, and how little is known of the change widens the interval.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.ability_findings import AbilityFindings
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name, message
from stickwright.codes.stand_ins import StandIns
from stickwright.mechanics.capability import Readings, moderated
from stickwright.model.case import ForceRead
from stickwright.model.fit import Assumption
from stickwright.model.recorded import Finding

__all__ = [
    "DAY_SD", "LEAST_VISITS", "USUAL_DAYS", "DaySpread", "carried_back", "day_assumption", "day_finding", "days_of",
    "on_another_day",
]  # fmt: skip

Array = NDArray[np.float64]

DAY_SD = 0.17
"""Relative sd between the force of one day and that of another: limits of agreement of knee extension read twice by
hand-held dynamometry, 33.6 % [chamorro-2017], over 1.96. Assumed to hold for a comfortable push at any site."""
LEAST_VISITS = 3
"""From so many visits on, a player's own spread from day to day stands in place of the usual one (common practice)."""
CHANGE_CHANCE = 0.3
"""Chance beforehand that force changes with the repeats, and that it changes over the visit: assumed."""
REPEAT_SD = 0.08
"""Prior sd of the change of the log force from one repeat to the next: assumed."""
VISIT_SD = 0.15
"""Prior sd of the change of the log force from the first direction to the last: assumed."""


def carried_back(
    readings: Readings,
    order_rad: Sequence[float],
    first: Sequence[float],
    again: Sequence[float],
    scatter: tuple[float, int],
) -> Readings:
    """Readings as they would have been fresh.

    Parameters
    ----------
    readings : Readings
        Repeats of each direction in the order taken.
    order_rad : sequence of float
        Directions in the order taken.
    first, again : sequence of float
        The first direction's forces, and the same direction read again at the end, newton, above zero; without `again`
        nothing tells a change over the visit, and none is counted.
    scatter : (float, int)
        From `pooled_scatter`.

    Notes
    -----
    Log force falls in a straight line with the number of the repeat, alike in all directions, and with the place of the
    direction in the visit (assumed). Each rate by least squares; none at all is weighed against it, so that repeats
    that fall by chance move the figure little: spike and slab [mitchell-beauchamp-1988]. Force that rises (a player who
    warms up or learns the push) is not carried back: the last readings are then as good as the first.

    Examples
    --------
    >>> tired = Readings.of([(0.0, [1.0, 0.9, 0.81]), (2.0, [0.8, 0.72, 0.65]), (4.0, [0.5, 0.45, 0.405])])
    >>> carried_back(tired, [0.0, 2.0, 4.0], [1.0, 0.9, 0.81], [], (0.02, 6)).log_means.round(2).tolist()
    [-0.01, -0.23, -0.7]
    """
    used, _ = moderated(*scatter)
    numbers = [np.arange(len(values), dtype=np.float64) for values in readings.repeats]
    spread = sum(float(((number - number.mean()) ** 2).sum()) for number in numbers)
    change = readings.visit_cov
    repeats = readings.repeats
    if spread > 0:
        slope = sum(
            float((number - number.mean()) @ np.log(values)) for number, values in zip(numbers, repeats, strict=True)
        ) / spread  # fmt: skip
        rate, variance = _weighed(slope, used**2 / spread, REPEAT_SD)
        repeats = tuple(values * np.exp(-rate * number) for number, values in zip(numbers, repeats, strict=True))
        mean = np.array([number.mean() for number in numbers])
        change = change + variance * np.outer(mean, mean)
    if first and again and min(*first, *again) > 0 and len(readings.direction_rad) > 1:
        slope = float(np.log(again).mean() - np.log(first).mean())
        rate, variance = _weighed(slope, used**2 * (1 / len(first) + 1 / len(again)), VISIT_SD)
        place = _places(readings.direction_rad, order_rad)
        repeats = tuple(values * math.exp(-rate * where) for where, values in zip(place, repeats, strict=True))
        change = change + variance * np.outer(place, place)
    return replace(readings, repeats=repeats, visit_cov=change)


def _weighed(slope: float, variance: float, prior_sd: float) -> tuple[float, float]:
    """A rate and its variance: none at all and a rate as its prior has it, weighed by how well each goes with the slope."""
    if slope >= 0:
        return 0.0, 0.0
    whole = prior_sd**2 + variance
    share = prior_sd**2 / whole
    times = math.sqrt(variance / whole) * math.exp(0.5 * slope**2 * share / variance)  # of the chances, rate over none
    chance = CHANGE_CHANCE * times / (1 - CHANGE_CHANCE + CHANGE_CHANCE * times)
    rate = share * slope
    return chance * rate, chance * (share * variance + (1 - chance) * rate**2)


def _places(direction_rad: Array, order_rad: Sequence[float]) -> Array:
    """Place of each direction in the visit, 0 the first and 1 when the first is read again after the last."""
    first: list[float] = []
    for phi in order_rad:
        if all(abs(math.remainder(phi - other, 2 * math.pi)) > 1e-5 for other in first):
            first.append(phi)
    nearest = [
        min(range(len(first)), key=lambda k: abs(math.remainder(first[k] - float(phi), 2 * math.pi)))
        for phi in direction_rad
    ]
    return np.array(nearest, dtype=np.float64) / len(first)


class DaySpread(NamedTuple):
    """How much the force of one day differs from that of another.

    Parameters
    ----------
    sd : float
        Of the difference in log force between one day and another.
    degrees : float
        Degrees of freedom of `sd`; infinite for the usual figure.
    visits : int
        At how many visits it was read; 0 for the usual figure.
    """

    sd: float
    degrees: float = math.inf
    visits: int = 0

    def logs(self, normal: Array) -> Array:
        """The log force of other days for standard normal draws: t distributed where few visits tell the spread.

        Parameters
        ----------
        normal : array
        """
        if math.isinf(self.degrees):
            return self.sd * normal
        from scipy.special import ndtr, stdtrit

        return np.asarray(self.sd * stdtrit(self.degrees, ndtr(normal)))

    def half_width(self, level: float) -> float:
        """How far the log force of another day may be off, at a level of confidence.

        Parameters
        ----------
        level : float
        """
        from scipy.special import ndtri

        return float(self.logs(np.array(ndtri(0.5 + level / 2))))

    def estimate(self) -> Estimate:
        """The spread with its own 95 % interval, of the player's own visits."""
        from scipy.special import chdtri

        low, high = (self.sd * math.sqrt(self.degrees / float(chdtri(self.degrees, q))) for q in (0.025, 0.975))
        return Estimate(self.sd, low, high, n=self.visits)


USUAL_DAYS = DaySpread(DAY_SD)


def days_of(forces: Sequence[ForceRead]) -> DaySpread:
    """The spread from day to day of a player's own visits; the usual one where fewer than three can be compared.

    Parameters
    ----------
    forces : sequence of ForceRead
        Of one site.

    Notes
    -----
    Each visit's mean log force over the directions that were read at all of them; root 2 times the sd of these means,
    since two days differ. It holds the scatter of the readings as well, and is never below what that scatter alone would
    give. A steady change over the months counts as days that differ. Visits that share no direction with the latest are
    left out.

    Examples
    --------
    >>> forces = [ForceRead(f"2026-03-0{day}", "chin", 0.0, (force,)) for day, force in ((1, 0.9), (2, 1.0), (3, 1.1111))]
    >>> days = days_of(forces)
    >>> round(days.sd, 3), days.degrees, days.visits, days_of(forces[:2]).visits
    (0.149, 2, 3, 0)
    """
    visits: dict[str, dict[float, list[float]]] = {}
    for one in forces:
        read = [math.log(force) for force in one.force_n if force > 0]
        if read and one.on_date:
            visits.setdefault(one.on_date, {}).setdefault(round(one.direction_rad % (2 * math.pi), 3), []).extend(read)
    if len(visits) < LEAST_VISITS:
        return USUAL_DAYS
    latest = visits[max(visits)].keys()
    compared = [held for _, held in sorted(visits.items()) if held.keys() & latest]
    shared = sorted(set(latest).intersection(*(held.keys() for held in compared)))
    if len(compared) < LEAST_VISITS or not shared:
        return USUAL_DAYS
    means = [math.fsum(math.fsum(held[phi]) / len(held[phi]) for phi in shared) / len(shared) for held in compared]
    groups = [np.array(held[phi]) for held in compared for phi in shared]
    spare = sum(len(group) - 1 for group in groups)
    scatter = sum(float(((group - group.mean()) ** 2).sum()) for group in groups) / spare if spare else 0.0
    alone = scatter * sum(1 / len(group) for group in groups) / len(groups) / len(shared)
    sd = math.sqrt(2 * max(float(np.var(means, ddof=1)), alone))
    return DaySpread(sd, len(means) - 1, len(means)) if sd > 0 else USUAL_DAYS


def day_assumption(site: str) -> Assumption:
    """That the force of another day differs, for the list of what was not measured."""
    return Assumption(
        message(StandIns.another_day, sites=(Name(site),)), message(StandIns.day_spread, spread_share=DAY_SD),
        message(StandIns.few_visits, visits=LEAST_VISITS), message(StandIns.more_visits, visits=LEAST_VISITS),
    )  # fmt: skip


def day_finding(site: str, days: DaySpread) -> Finding:
    """How much the player's own days differ, and how surely that is known.

    Parameters
    ----------
    site : str
    days : DaySpread
        Of the player's own visits.
    """
    told = days.estimate()
    text = message(
        AbilityFindings.own_days,
        site=Name(site),
        visits=days.visits,
        spread_share=told.number,
        low_share=told.lower,
        high_share=told.upper,
        usual_share=DAY_SD,
    )
    return Finding("note", "own_days", text)


def on_another_day(today: Estimate, days: DaySpread = USUAL_DAYS) -> Estimate:
    """The force on a day that was not measured, from what is known of today's.

    Parameters
    ----------
    today : Estimate
    days : DaySpread
        How much days differ.

    Examples
    --------
    >>> other = on_another_day(Estimate(0.50, 0.43, 0.58))
    >>> round(other.low, 2), round(other.high, 2)
    (0.35, 0.72)
    """
    if not today.has_interval or today.level is None or today.lower <= 0 or today.number <= 0:
        return today
    half = days.half_width(today.level)
    low = today.number * math.exp(-math.hypot(math.log(today.number / today.lower), half))
    high = today.number * math.exp(math.hypot(math.log(today.upper / today.number), half))
    return replace(today, low=low, high=high)
