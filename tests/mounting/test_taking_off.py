"""How long what holds a device takes to get out of the way."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from sample_mounts import arm, finger_mount

from said import said
from stickwright.model.kit import Kit
from stickwright.mounting.choose import _rank
from stickwright.mounting.taking_off import too_slow, with_take_off

STICK = {"name": "dew", "start_force_n": 0.2, "full_force_n": 0.4, "travel_mm": 7}


def kit(**mount: Any) -> Kit:
    """One stick, and the arm of the sample with these figures."""
    fit = arm()
    return Kit.model_validate({"stick": [STICK], "mount": [{"name": fit.mount, "kind": fit.kind, **mount}]})


def test_what_was_timed_counts():
    """A stop watch beats what is usual, and then nothing is assumed; swinging aside or not."""
    for swings in (False, True):
        fit = with_take_off(arm(), kit(take_off_s=7.0, swings_away=swings))
        assert fit.take_off_s == 7.0
        assert fit.assumed == arm().assumed


@pytest.mark.parametrize(("swings", "usual", "how"), [(False, 20.0, "come off"), (True, 5.0, "swing aside")])
def test_what_was_not_timed_is_usual_and_marked(swings, usual, how):
    """Common practice, no source: about 20 s to unclamp a friction arm, 5 s to swing one aside that is made for it."""
    fit = with_take_off(arm(), kit(swings_away=swings))
    assert fit.take_off_s == usual
    assert f"takes to {how} was not timed" in said(fit.assumed[-1])


def test_a_tray_of_the_room_is_lifted_off():
    """A tray is no mount of the kit: what is usual for its kind stands in."""
    fit = with_take_off(replace(arm(), kind="tray", mount="half tray", take_off_s=None), kit())
    assert fit.take_off_s == 15.0
    assert (fit.assumed[-1].text, fit.assumed[-1].param("mount")) == ("take_off", "half tray")


def test_the_quicker_of_two_alike_comes_first():
    """Both hold, lose the same throw and have as many parts: the one that comes off in 6 s is ranked before the one that
    takes 25 s, though that has more margin; less throw lost still wins over both."""
    fit = arm()
    quick, slow = replace(fit, take_off_s=6.0, margin=1.5), replace(fit, take_off_s=25.0, margin=9.0)
    stiff = replace(slow, lost_share=max(0.0, fit.lost_share - 0.02))
    assert fit.lost_share >= 0.02
    assert sorted([slow, quick, stiff], key=_rank) == [stiff, quick, slow]


def test_longer_than_an_emergency_bears():
    """10 s with one hand: at the limit it is quick enough, beyond it is not, and what nobody timed is not called slow."""
    assert [too_slow(time) for time in (10.0, 10.5, None)] == [False, True, False]


def test_the_sample_is_an_arm():
    """What these tests stand on: an arm chosen for a finger."""
    assert finger_mount().choice is not None
    assert arm().kind == "friction arm"
