"""Movements and presses from tables: when the unit of time is asked about."""

from __future__ import annotations

import numpy as np
import pytest
from made_recordings import about

from stickwright.trace.tables import Trials, trials_report


@pytest.mark.parametrize("middle_s, asked", [(0.04, True), (0.05, False), (0.8, False), (60.0, False), (61.0, True)])
def test_the_unit_of_time_is_asked_about_outside_a_twentieth_of_a_second_to_a_minute(
    middle_s: float, asked: bool
) -> None:
    """Nobody aims in under 50 ms, or takes more than a minute: those are milliseconds, or minutes, that were read as seconds."""
    rng = np.random.default_rng(2)
    targets = np.tile([[100.0, 0.0]], (9, 1))
    times_s = middle_s * np.array([0.9, 1.0, 1.1] * 3)
    trials = Trials(
        "a.csv", np.zeros((9, 2)), targets, targets + rng.normal(0, 3, (9, 2)), times_s, None, None, np.arange(9) + 2
    )
    assert bool(about(trials_report(trials).findings, "unit")) is asked
