"""Scatter by level from holds and from aimed endpoints."""

import numpy as np
import pytest

from stickwright.model.recording import Recording
from stickwright.tuning.asked import Stretch
from stickwright.tuning.scatter import aim_scatter, hold_scatter, player_scatter
from stickwright.tuning.shaping import Response

TIMES_S = np.arange(1200) * 0.01


def hold(level, sd, rng, drift_per_s=0.0):
    along = level + drift_per_s * TIMES_S + rng.normal(0, sd, 1200)
    along[:50] = np.linspace(0, level, 50)  # on the way out
    return Stretch(TIMES_S, np.column_stack([0.6 * along, 0.8 * along]))


def test_hold_scatter_leaves_out_the_way_there_and_the_tiring():
    """A hold with 2 % scatter that slowly gives way: 2 % is found, at the middle level."""
    ((level, sd, degrees),) = hold_scatter([hold(0.7, 0.02, np.random.default_rng(1), drift_per_s=-0.005)])
    assert level == pytest.approx(0.7 - 0.005 * 6.5, abs=0.005)
    assert sd == pytest.approx(0.02, rel=0.1)
    assert degrees > 900


def test_short_and_central_holds_do_not_count():
    """Less than a second, or at the centre: no hold."""
    short = Stretch(TIMES_S[:90], np.full((90, 2), 0.5))
    central = Stretch(TIMES_S, np.random.default_rng(1).normal(0, 0.01, (1200, 2)))
    assert hold_scatter([short, central]) == []


def test_slow_scatter_is_worth_fewer_samples():
    """Sway that lasts is not counted once for each sample."""
    slow = 0.5 + 0.02 * np.sin(2 * np.pi * 0.8 * TIMES_S)
    ((_, _, degrees),) = hold_scatter([Stretch(TIMES_S, np.column_stack([slow, 0 * slow]))])
    assert degrees < 20


def aim(target, end):
    xy = np.vstack([np.linspace([0, 0], end, 40), np.tile(end, (20, 1))])
    return Stretch(np.arange(60) * 0.02, xy, np.tile(target, (60, 1)))


def test_aim_scatter_by_hand():
    """Endpoints 0.48, 0.50, 0.52 for a target at 0.5 forward, off to the side by as much as you like: sd 0.02."""
    aims = [aim([0.0, 0.5], [side, ahead]) for side, ahead in ((0.1, 0.48), (-0.1, 0.50), (0.0, 0.52))]
    ((level, sd, degrees),) = aim_scatter(aims)
    assert (level, sd, degrees) == pytest.approx((0.5, 0.02, 2.0), abs=1e-9)


def test_two_endpoints_are_too_few():
    """No scatter from two."""
    assert aim_scatter([aim([0.0, 0.5], [0.0, 0.48])] * 2) == []


def test_scatter_is_told_in_the_range_beyond_the_dead_zone():
    """By hand: dead zone 0.2, level 0.6 is half way, and 2 % becomes 2.5 %."""
    rng = np.random.default_rng(4)
    recordings = [
        Recording(f"hold {level}", TIMES_S, hold(level, 0.02, rng).xy, task="hold") for level in (0.4, 0.6, 0.9)
    ]
    scatter, task = player_scatter(recordings, Response(dead_zone=0.2))
    assert task == "hold"
    assert [level for level, _, _ in scatter] == pytest.approx([0.25, 0.5, 0.875], abs=0.005)
    assert [sd for _, sd, _ in scatter] == pytest.approx([0.025] * 3, rel=0.1)
