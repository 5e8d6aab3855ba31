"""Set-ups out of a kit: how well a stick's forces are known."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from stickwright.mechanics.setups import UNBENCHED_SD, bench_log_sd
from stickwright.model.kit import Stick

SD = st.floats(0.005, 0.6)


def stick(**more: Any) -> Stick:
    return Stick.model_validate({"name": "willow", "start_force_n": 0.4, "full_force_n": 1.1, "travel_mm": 8, **more})


def ends(middle: float, sd: float) -> list[float]:
    """The 95 % interval of a lognormal, by scipy."""
    return [float(end) for end in stats.lognorm.interval(0.95, sd, scale=middle)]


@given(start=SD, full=SD)
def test_sd_of_a_bench_is_that_of_the_lognormal_with_its_intervals(start: float, full: float) -> None:
    """Both ends benched: the mean of the two; one of them: that one. Independent route: scipy's lognormal."""
    at_start, at_full = ends(0.4, start), ends(1.1, full)
    both = stick(start_force_interval_n=at_start, full_force_interval_n=at_full)
    assert bench_log_sd(both) == pytest.approx((start + full) / 2, rel=1e-4)
    assert bench_log_sd(stick(start_force_interval_n=at_start)) == pytest.approx(start, rel=1e-4)
    assert bench_log_sd(stick(full_force_interval_n=at_full)) == pytest.approx(full, rel=1e-4)


def test_sd_without_a_bench_is_the_usual_one() -> None:
    """No interval, or one whose lower end is nothing (no logarithm): the usual figure, which is marked elsewhere as assumed."""
    assert bench_log_sd(stick()) == UNBENCHED_SD
    assert bench_log_sd(stick(start_force_interval_n=[0.0, 0.8])) == UNBENCHED_SD
    assert math.isfinite(bench_log_sd(stick(start_force_interval_n=[0.0, 0.8], full_force_interval_n=ends(1.1, 0.2))))
