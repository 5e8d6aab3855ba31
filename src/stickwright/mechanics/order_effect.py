"""How force changes with the order of the readings, and from one day to another.

A player who tires pushes less from repeat to repeat and from the first direction to the last. The fresh force is the one
at the first reading of all; each reading is carried back to it, and how little is known of the change widens the interval.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from stickwright.mechanics.capability import Readings, moderated
from stickwright.model.estimate import Estimate
from stickwright.model.plan import Assumption

__all__ = ["DAY_SD", "carried_back", "day_assumption", "on_another_day"]

Array = NDArray[np.float64]

DAY_SD = 0.17
"""Relative sd between the force of one day and that of another: limits of agreement of knee extension read twice by
hand-held dynamometry, 33.6 % [chamorro-2017], over 1.96. Assumed to hold for a comfortable push at any site."""
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


def day_assumption(site: str) -> Assumption:
    """That the force of another day differs, for the list of what was not measured.

    Parameters
    ----------
    site : str
    """
    return Assumption(
        f"Force on another day at {site}", f"{100 * DAY_SD:.0f} % more or less (sd)",
        "read at one visit; published figures of strength read twice stand in", "the same readings on another day",
    )  # fmt: skip


def on_another_day(today: Estimate) -> Estimate:
    """The force on a day that was not measured, from what is known of today's.

    Parameters
    ----------
    today : Estimate

    Examples
    --------
    >>> other = on_another_day(Estimate(0.50, 0.43, 0.58))
    >>> round(other.low, 2), round(other.high, 2)
    (0.35, 0.72)
    """
    if not today.has_interval or today.low <= 0 or today.value <= 0:
        return today
    from scipy.special import ndtri

    days = float(ndtri(0.5 + today.level / 2)) * DAY_SD
    low = today.value * math.exp(-math.hypot(math.log(today.value / today.low), days))
    high = today.value * math.exp(math.hypot(math.log(today.high / today.value), days))
    return replace(today, low=low, high=high)
