"""A stick made to measure: which force, travel and height to ask for."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

import numpy as np

from stickwright.model.kit import Kit, MadeToOrder, Stick

__all__ = ["kit_to_order"]

STEPS = 6
"""Forces and travels tried between the least and the most that can be had, evenly by factor."""
HEIGHTS = 3
"""Heights tried likewise."""
FULL_OVER_START = 1.2
"""Least ratio of the force at the stop to the one at the start that a spring is asked to give: common practice, no source."""
HIGHEST_ANGLE_RAD = 0.6
"""Largest deflection asked for, about 34 degrees: common practice, no source."""


def kit_to_order(kit: Kit, offer: MadeToOrder) -> Kit | None:
    """The kit with the sticks that could be ordered instead of its own, bare of extensions; None when none can be.

    Parameters
    ----------
    kit : Kit
    offer : MadeToOrder
        What can be had.

    Examples
    --------
    >>> offer = MadeToOrder(name="bench", start_force_n=(0.05, 0.1), full_force_n=(0.2, 0.3), travel_m=(0.005, 0.006),
    ...                     contact_height_m=(0.02, 0.02))
    >>> made = kit_to_order(Kit(stick=(Stick(name="a", start_force_n=1, full_force_n=2, travel_m=0.006),)), offer)
    >>> sorted({(one.start_force_n, one.full_force_n) for one in made.stick})[0]
    (0.05, 0.2)
    """
    sticks = tuple(_sticks(offer))
    return kit.model_copy(update={"stick": sticks, "extension": ()}) if sticks else None


def _between(ends: tuple[float, float], steps: int) -> list[float]:
    """Values from the least to the most, evenly by factor, rounded to two digits as one would order them."""
    low, high = ends
    if low <= 0:
        values = np.linspace(low, high, steps)
    else:
        values = np.geomspace(low, high, steps)
    rounded = (min(max(float(f"{value:.2g}"), low), high) for value in values)
    return list(dict.fromkeys(rounded))


def _sticks(offer: MadeToOrder) -> Iterator[Stick]:
    number = 0
    for start, full, travel, height in product(
        _between(offer.start_force_n, STEPS), _between(offer.full_force_n, STEPS), _between(offer.travel_m, STEPS),
        _between(offer.contact_height_m, HEIGHTS),
    ):  # fmt: skip
        if full < FULL_OVER_START * start or travel > height * np.sin(HIGHEST_ANGLE_RAD):
            continue
        number += 1
        yield Stick(
            name=f"{offer.name} {number}", start_force_n=start, full_force_n=full, travel_m=travel,
            contact_height_m=height, base_m=offer.base_m, plug=offer.plug, friction_force_n=0.0,
        )  # fmt: skip
