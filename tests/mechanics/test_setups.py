"""Set-ups out of a kit: how well a stick's forces are known."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from stickwright.mechanics.setups import UNBENCHED_SD, USUAL_FRICTION_SHARE, bench_log_sd, setups_of
from stickwright.mechanics.suiting import unsuited
from stickwright.model.kit import Kit, Stick

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
    assert bench_log_sd(both) == pytest.approx(((start + full) / 2,) * 2, rel=1e-4)
    assert bench_log_sd(stick(start_force_interval_n=at_start)) == pytest.approx((start, start), rel=1e-4)
    assert bench_log_sd(stick(full_force_interval_n=at_full)) == pytest.approx((full, full), rel=1e-4)


@given(down=SD, up=SD)
def test_an_interval_that_is_longer_upwards_is_so_in_the_draws(down: float, up: float) -> None:
    """Of the forces drawn, one in forty lies below the lower end and one in forty above the upper end, and half below the
    figure itself: by the normal quantiles, whatever the lengths of the two sides."""
    interval = [ends(0.4, down)[0], ends(0.4, up)[1]]
    doubt = bench_log_sd(stick(start_force_interval_n=interval))
    drawn = 0.4 * doubt.factors(stats.norm.ppf((np.arange(4000) + 0.5) / 4000))
    assert np.mean(drawn < interval[0]) == pytest.approx(0.025, abs=0.001)
    assert np.mean(drawn > interval[1]) == pytest.approx(0.025, abs=0.001)
    assert np.mean(drawn < 0.4) == pytest.approx(0.5, abs=0.001)


def test_sd_without_a_bench_is_the_usual_one() -> None:
    """No interval, or one whose lower end is nothing (no logarithm): the usual figure, which is marked elsewhere as assumed."""
    usual = (UNBENCHED_SD, UNBENCHED_SD)
    assert bench_log_sd(stick()) == usual
    assert bench_log_sd(stick(start_force_interval_n=[0.0, 0.8])) == usual
    half = bench_log_sd(stick(start_force_interval_n=[0.0, 0.8], full_force_interval_n=ends(1.1, 0.2)))
    assert half == pytest.approx((0.2, 0.2), rel=1e-4)


def home_share(**more: Any) -> float:
    kit = Kit.model_validate({"stick": [stick(contact_height_mm=16, **more)]})
    return float(setups_of(kit).home_share[0])


def test_friction_that_nobody_benched_is_not_taken_for_none() -> None:
    """By hand, of a push of 0.02 N that starts it usual friction is 3 % of 0.5 N, 0.015 N, and the spring the other 0.005 N; on the
    way back the spring holds against friction until 0.01 N more, 0.01 of 0.48 N of travel. A stick benched with none comes home,
    and so does one with a preload above the usual friction. Friction is never more than what starts the stick."""
    loose = {"start_force_n": 0.02, "full_force_n": 0.5}
    assert USUAL_FRICTION_SHARE == 0.03
    assert home_share(**loose) == pytest.approx(0.01 / 0.48, rel=1e-9)
    assert home_share(start_force_n=0.0, full_force_n=0.5) == 0.0
    assert home_share(**loose, friction_force_n=0.0) == 0.0
    assert home_share(start_force_n=0.2, full_force_n=0.5) == 0.0


def test_a_topper_that_nobody_measured_is_judged_by_its_form_and_never_refused_for_it() -> None:
    """A bar is usually 90 mm wide: for a fingertip (35 mm at most) that is to be tried; measured at 90 mm it plainly does not
    suit. A dish of unknown width suits a fingertip."""

    def told(**topper: Any) -> list[bool]:
        kit = Kit.model_validate(
            {"stick": [stick(contact_height_mm=16)], "topper": [{"name": "on top", "height_mm": 5, **topper}]}
        )
        setups = setups_of(kit, toppers=("on top",))
        (place,) = [place for place in range(len(setups)) if setups.topper[place] >= 0]
        return [one.plain for one in unsuited("fingertip", setups, place, 0.3) if one.rule == "size"]

    assert told(form="bar") == [False]
    assert told(form="bar", width_mm=90) == [True]
    assert told(form="dish") == []


@pytest.mark.parametrize(("friction_n", "home"), [(0.055, 1.0), (0.045, 0.0)])
def test_a_topper_too_heavy_for_the_spring(friction_n: float, home: float) -> None:
    """By hand: 0.66 mN m/rad of spring against 2.2 of weight. Of 0.1 N to start, friction takes 0.055 and leaves 0.045: once
    pushed it stays out. Where it takes 0.045, the 0.055 left bring it home: 1.1 mN m over 0.3 rad are more than the weight."""
    loose = {"start_force_n": 0.1, "full_force_n": 0.11, "travel_mm": 6, "contact_height_mm": 20}
    topper = {"name": "dish", "form": "dish", "mass_g": 10, "height_mm": 4}
    kit = Kit.model_validate({"stick": [{"name": "oak", **loose, "friction_force_n": friction_n}], "topper": [topper]})
    topped = setups_of(kit, toppers=("dish",))
    assert [float(share) for share in topped.home_share[-1:]] == [home]
