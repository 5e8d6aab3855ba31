"""A switch on the flat of a housing, by hand: where the flat lies, and what holds the device must hold both."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest

from stickwright.codes.message import message
from stickwright.codes.mount_answers import MountAnswers
from stickwright.model.kit import Kit, Switch
from stickwright.model.player import Player
from stickwright.model.room import Room
from stickwright.mounting.choose import site_mount
from stickwright.mounting.held import HeldDevice, held_switch
from stickwright.mounting.on_housing import both_pushes, flat_name, flats_of
from stickwright.mounting.statics import Pushes
from stickwright.mounting.together import WantedMount, mounts_together

PLAYER = Player.model_validate(
    {"code": "P1", "site": [{"name": name, "part": "hand"} for name in ("right hand", "left hand")]}
)
RIGHT, LEFT = PLAYER.site
BOX = HeldDevice("dew", (0.15, 0.10, 0.04), 0.2, 0.05, 2.0, 0.01, pivot_height_m=0.04)
DISC = held_switch(
    Switch(name="disc", force_n=0.9, travel_m=0.003, face_m=(0.045,), mass_kg=0.06, base_m=(0.05, 0.05, 0.02))
)
ROOM = Room.model_validate({
    "place": [{"site": "right hand", "at_mm": [200, 450, 290]}, {"site": "left hand", "at_mm": [200, 500, 260]}],
    "tube": [{"name": "armrest tube", "from_mm": [250, 100, 200], "to_mm": [250, 400, 200], "diameter_mm": 25,
              "moves_with": "seat"}],
})  # fmt: skip
ROUND, REACH = (0.0, math.pi / 2, math.pi, -math.pi / 2), (0.02,) * 4
LEVER_M = math.hypot(0.035, 0.080, 0.040)
"""Farthest corner of the flat from the middle of the underside: 35 mm aside, 50 + 30 mm forward, 40 mm up."""


def kit(**arm: Any) -> Kit:
    return Kit.model_validate({
        "stick": [{"name": "dew", "contact_height_mm": 50, "start_force_n": 0.5, "full_force_n": 2, "travel_mm": 10,
                   "flat": {"at_mm": [0, 50, 40], "size_mm": [70, 60]}}],
        "mount": [{"name": "arm", "kind": "friction arm", "links_mm": [200, 200], "holding_nm": [12], "give_n_per_mm": 2,
                   "mass_g": 600, "tube_mm": [16, 40], **arm}],
        "fastener": [{"name": "tape", "kind": "hook-and-loop", "shear_kpa": 60, "tension_kpa": 35, "test_method": "sheet",
                      "in_stock": 9}],
    })  # fmt: skip


def both(this: Kit) -> tuple[Any, Any]:
    wanted = [WantedMount(RIGHT, BOX, Pushes(3.0), 8.0, ROUND, REACH), WantedMount(LEFT, DISC, Pushes(2.0), 5.0)]
    found = {one.site: one for one in mounts_together(wanted, ROOM, this, PLAYER)}
    return found["right hand"], found["left hand"]


def alone(this: Kit, held: HeldDevice = BOX, pushes: Pushes | None = None) -> Any:
    push = pushes or Pushes(3.0)
    return site_mount(RIGHT, held, ROOM, this, push, player=PLAYER, direction_rad=ROUND, reach_m=REACH)


def test_moments_add_up() -> None:
    """3 N at 90 mm and 2 N at the far corner: 0.270 + 0.192 = 0.462 Nm, which one push at 90 mm gives too."""
    counted = both_pushes(Pushes(3.0), Pushes(2.0), 0.090, LEVER_M)
    assert counted.working_n * 0.090 == pytest.approx(3.0 * 0.090 + 2.0 * LEVER_M)
    assert counted.involuntary_n == 0.0


def test_a_short_lever_makes_no_press_smaller() -> None:
    """Forces add up as well: the press never counts for less than it is; a spasm meets the other's ordinary push."""
    assert both_pushes(Pushes(3.0, 8.0), Pushes(2.0), 0.090, 0.020) == Pushes(5.0, 10.0)


def test_where_the_flat_lies() -> None:
    """Base at (200, 450, 200): the middle of the flat is 50 mm further forward and 40 mm up, its near left corner 35 and 30 mm
    off that."""
    flat = flats_of([alone(kit())], ROOM, kit())["right hand"]
    assert flat.corner_m == pytest.approx((0.165, 0.470, 0.240))
    assert flat.size_m == (0.070, 0.060)


def test_the_arm_is_checked_with_both() -> None:
    """The switch stands on the flat; the checks of the arm are those of 260 g and of the push that counts for both."""
    stick, switch = both(kit())
    assert switch.choice.on == flat_name("dew")
    counted = Pushes(3.0 + 2.0 * LEVER_M / 0.090)
    expected = alone(kit(), replace(BOX, mass_kg=0.26), counted)
    assert [(one.what, one.load) for one in stick.choice.checks] == [
        (one.what, pytest.approx(one.load, rel=1e-3)) for one in expected.choice.checks
    ]
    (told,) = [one.text for one in stick.findings if one.about == "flat"]
    assert told == message(MountAnswers.flat_both, device="dew", switch="disc", pieces=1, flat="flat of dew")


def test_an_arm_that_would_not_hold_both() -> None:
    """Its joint holds the stick alone, and not the press as well: the switch is not put there, and that is said."""
    needed = max(one.load * one.wanted for one in alone(kit()).choice.checks if one.unit == "nm")
    stick, switch = both(kit(holding_nm=[needed * 1.05]))
    assert stick.choice is not None
    assert switch.choice is None or switch.choice.on != flat_name("dew")
    assert "flat_not_both" in {one.text.text for one in switch.findings}


def test_a_device_without_a_flat_changes_nothing() -> None:
    """Nothing to stand on."""
    bare = kit().model_copy(update={"stick": tuple(one.model_copy(update={"flat": None}) for one in kit().stick)})
    stick, switch = both(bare)
    assert stick.choice.checks == alone(bare).choice.checks
    assert switch.choice is None or switch.choice.on != flat_name("dew")
