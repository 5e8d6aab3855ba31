"""Sticks as a maker offers to build them: the forces and travels from which one is chosen."""

from __future__ import annotations

from itertools import pairwise

import pytest

from stickwright.mechanics.to_order import STEPS, kit_to_order
from stickwright.model.kit import Kit, MadeToOrder, Stick

KIT = Kit(stick=(Stick(name="a", start_force_n=1, full_force_n=2, travel_m=0.006),))


@pytest.mark.parametrize("ends", [(0.0512, 0.4099), (0.1, 0.2), (0.0, 0.1)])
def test_what_is_offered_is_tried_from_end_to_end(ends: tuple[float, float]) -> None:
    """Two digits, as one would order them, but never beyond what is offered; evenly by factor, from zero evenly."""
    offer = MadeToOrder(
        name="bench",
        start_force_n=ends,
        full_force_n=(1.0, 1.0),
        travel_m=(0.006, 0.006),
        contact_height_m=(0.02, 0.02),
    )
    made = kit_to_order(KIT, offer)
    assert made is not None
    tried = sorted({stick.start_force_n for stick in made.stick})
    assert len(tried) == STEPS
    assert (tried[0], tried[-1]) == pytest.approx(ends, rel=0.03)
    assert min(tried) >= ends[0]
    assert max(tried) <= ends[1]
    gaps = [after / before if ends[0] else after - before for before, after in pairwise(tried)]
    assert gaps == pytest.approx([gaps[0]] * len(gaps), rel=0.2)
