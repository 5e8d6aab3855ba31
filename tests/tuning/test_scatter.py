"""Scatter by level from holds and from aimed endpoints."""

import numpy as np
import pytest

from stickwright.model.recording import Recording
from stickwright.tuning.asked import AskedStretch
from stickwright.tuning.scatter import aim_scatter, hold_scatter, player_scatter
from stickwright.tuning.shaping import Response

TIMES_S = np.arange(1200) * 0.01


def hold(level, sd, rng, drift_per_s=0.0):
    along = level + drift_per_s * TIMES_S + rng.normal(0, sd, 1200)
    along[:50] = np.linspace(0, level, 50)  # on the way out
    return AskedStretch(TIMES_S, np.column_stack([0.6 * along, 0.8 * along]))


def test_hold_scatter_leaves_out_the_way_there_and_the_tiring():
    """A hold with 2 % scatter that slowly gives way: 2 % is found, at the middle level."""
    ((level, sd, degrees),) = hold_scatter([hold(0.7, 0.02, np.random.default_rng(1), drift_per_s=-0.005)])
    assert level == pytest.approx(0.7 - 0.005 * 6.5, abs=0.005)
    assert sd == pytest.approx(0.02, rel=0.1)
    assert degrees > 900


def test_giving_way_evenly_is_no_scatter():
    """A straight line from 90 to 50 % of full, ten samples a second: nothing is left beside the line."""
    along = np.linspace(0.9, 0.5, 100)
    ((_, sd, _),) = hold_scatter([AskedStretch(np.arange(100) * 0.1, np.column_stack([along, 0 * along]))])
    assert sd == pytest.approx(0.0, abs=1e-9)


def test_short_and_central_holds_do_not_count():
    """Less than a second, or at the centre: no hold."""
    short = AskedStretch(TIMES_S[:90], np.full((90, 2), 0.5))
    central = AskedStretch(TIMES_S, np.random.default_rng(1).normal(0, 0.01, (1200, 2)))
    barely_out = AskedStretch(TIMES_S, np.full((1200, 2), 0.02) + np.random.default_rng(1).normal(0, 0.001, (1200, 2)))
    assert hold_scatter([short, central, barely_out]) == []


def test_slow_scatter_is_worth_fewer_samples():
    """Sway that lasts is not counted once for each sample."""
    slow = 0.5 + 0.02 * np.sin(2 * np.pi * 0.8 * TIMES_S)
    ((_, _, degrees),) = hold_scatter([AskedStretch(TIMES_S, np.column_stack([slow, 0 * slow]))])
    assert degrees < 20


def aim(target, end):
    xy = np.vstack([np.linspace([0, 0], end, 40), np.tile(end, (20, 1))])
    return AskedStretch(np.arange(60) * 0.02, xy, np.tile(target, (60, 1)))


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


def test_aim_scatter_is_counted_along_the_way_to_the_target():
    """By hand: targets at 0.8 of full, 37 degrees off; ends short or long of it by 0.03 and as far to the side: sd 0.03. What comes
    before the last 0.1 s does not count, however far off."""
    along, aside = np.array([0.8, 0.6]), np.array([-0.6, 0.8])
    aims = [
        aim(0.8 * along, (0.8 + off) * along + side * aside) for off, side in ((-0.03, 0.2), (0.0, -0.1), (0.03, 0.05))
    ]
    for off, stretch in zip((0.5, -0.4, 0.1), aims, strict=True):
        stretch.xy[:54] += off  # all but the last six samples, which are 0.1 s
    ((level, sd, degrees),) = aim_scatter(aims)
    assert (level, sd, degrees) == pytest.approx((0.8, 0.03, 2.0), abs=1e-9)


def test_aims_count_with_those_of_their_own_distance():
    """Targets at 0.42 and 0.38 are of one distance, 0.4; those at 0.7 of another; those at the centre of none. Each distance has its
    own sd and one degree of freedom less than it has aims."""
    near = [aim([at, 0.0], [at + off, 0.0]) for at, off in ((0.42, -0.01), (0.38, 0.0), (0.40, 0.01))]
    far = [aim([0.0, -0.7], [0.0, -0.7 - off]) for off in (-0.06, -0.02, 0.02, 0.06)]
    central = [aim([0.01, 0.0], [off, 0.0]) for off in (0.3, 0.0, -0.3)]
    first, second = aim_scatter([*far, *central, *near])
    assert first == pytest.approx((0.40, 0.01, 2.0), abs=1e-9)
    assert second == pytest.approx((0.70, np.std([-0.06, -0.02, 0.02, 0.06], ddof=1), 3.0), abs=1e-9)
