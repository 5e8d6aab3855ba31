"""A plate under several switches on one arm, and a wedge under a base that is tilted."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise
from typing import Any

import numpy as np
import pytest

from said import said
from stickwright.model.kit import Kit
from stickwright.model.mounting import MountFit, SiteMount
from stickwright.model.player import Player
from stickwright.model.room import Room
from stickwright.mounting.choose import site_mount
from stickwright.mounting.held import HeldDevice
from stickwright.mounting.mount_parts import mount_parts, needs_of
from stickwright.mounting.statics import Pushes

G = 9.80665
FOUR = [math.radians(turn) for turn in (0, 90, 180, 270)]
TUBE = {"name": "armrest tube", "from_mm": [250, 100, 200], "to_mm": [250, 400, 200], "diameter_mm": 25}
TABLE = {"name": "table", "corner_mm": [-600, 250, 200], "size_mm": [1200, 700], "material": "wood", "mass_kg": 60}
ARM = {"name": "arm", "kind": "friction arm", "links_mm": [200, 200], "holding_nm": [9], "give_n_per_mm": 2,
       "mass_g": 600, "tube_mm": [16, 40], "head_mm": 30}  # fmt: skip
STRONG = {"name": "strong", "kind": "screw", "shear_kpa": 4000, "tension_kpa": 4000, "test_method": "sheet"}
PLATE = {"name": "board", "kind": "plate", "size_mm": [80, 150], "mass_g": 300}
TWO = HeldDevice("disc", (0.06, 0.06, 0.02), 0.1, 0.0, 1.0, 0.002, kind="switch", pieces=2, tolerance_m=0.02)
STICK = HeldDevice("stick", (0.10, 0.08, 0.05), 0.5, 0.05, 2.0, 0.010, pivot_height_m=0.05)


def mounted(
    held: HeldDevice, mounts: list[dict[str, Any]], push: float = 2.0, up_mm: float = 300, **room: Any
) -> tuple[SiteMount, Kit]:
    stick = {"name": "stick", "contact_height_mm": 50, "start_force_n": 0.5, "full_force_n": 2, "travel_mm": 10}
    kit = Kit.model_validate({"stick": [stick], "mount": mounts, "fastener": [STRONG]})
    player = Player.model_validate({"code": "P1", "site": [{"name": "hand", "part": "knee", "cleared": "yes"}]})
    placed = Room.model_validate({"place": [{"site": "hand", "at_mm": [200, 450, up_mm]}], **room})
    found = site_mount(
        player.site[0], held, placed, kit, Pushes(push), player=player, direction_rad=FOUR, reach_m=[0.03] * 4
    )  # fmt: skip
    return found, kit


def first_joint_nm(fit: MountFit, carried_kg: float, at_m: Any, push_n: float, contact_m: Any) -> float:
    """By hand, of a level seat: each mass times its level way from the clamp, and the push square to its lever in the worst direction."""
    assert fit.arm is not None
    clamp, points = np.array(fit.arm.points_m[0]), np.array(fit.arm.points_m)
    lengths = np.linalg.norm(np.diff(points, axis=0), axis=1)
    masses = [
        (0.6 * length / lengths.sum(), (a + b) / 2) for (a, b), length in zip(pairwise(points), lengths, strict=True)
    ]
    moment = sum(np.cross(at - clamp, [0, 0, -G * kg]) for kg, at in [*masses, (carried_kg, np.array(at_m))])
    lever = np.array(contact_m) - clamp
    way = np.linalg.norm(lever)
    along = moment @ lever / way
    return math.hypot(along, math.sqrt(moment @ moment - along**2) + way * push_n)


def test_a_plate_weighs_and_carries_the_push_aside() -> None:
    """Two discs of 60 mm on a plate of 300 g: the clamp carries all three masses, and the push on the outer of the two, 30 mm from the
    middle, whichever loads it more."""
    found, kit = mounted(TWO, [ARM, PLATE], tube=[TUBE])
    fit = found.choice
    assert fit is not None
    assert fit.plate == "board"
    assert found.pose is not None
    check = next(one for one in fit.checks if (one.what, one.push) == ("joint_1", "working"))
    x, y, z = found.pose.contact_m
    ends = [first_joint_nm(fit, 0.5, found.pose.base_m, 3.0, (x + aside, y, z)) for aside in (-0.03, 0.03)]
    assert check.load == pytest.approx(max(ends), rel=1e-9)
    assert needs_of(fit, 2) == {"arm": 1, "board": 1, "strong": 2}
    assert [(line.name, line.count) for line in mount_parts([found], kit)] == [("arm", 1), ("board", 1), ("strong", 2)]
    assert any("side by side on board, their middles 60 mm apart" in said(one) for one in fit.assumed)
    assert not any("board" in said(one.told) for one in fit.doubts)


def test_the_smallest_plate_that_takes_them_all() -> None:
    """120 by 60 mm: neither the plate of 100 mm nor the large one; one device takes none."""
    small, large = {**PLATE, "name": "small", "size_mm": [100, 100]}, {**PLATE, "name": "large", "size_mm": [300, 300]}
    found, _ = mounted(TWO, [ARM, small, large, PLATE], tube=[TUBE])
    assert found.choice is not None
    assert found.choice.plate == "board"
    single, _ = mounted(replace(TWO, pieces=1), [ARM, PLATE], tube=[TUBE])
    assert single.choice is not None
    assert single.choice.plate is None
    assert "board" not in single.choice.parts


def test_without_a_plate_its_weight_is_to_be_found_out() -> None:
    """The kit has none: what is left out is said, and where a heavy plate would be too much for the joints it is to be confirmed."""
    easy, _ = mounted(TWO, [ARM], tube=[TUBE])
    just = 2.2 * max(check.load for check in easy.fits[0].checks if check.unit == "nm")
    found, _ = mounted(TWO, [{**ARM, "holding_nm": [just]}], tube=[TUBE])
    fit = found.fits[0]
    assert fit.verdict == "holds"
    assert any("find or make a plate of at least 120 × 60 mm" in said(one.told) for one in fit.doubts)
    assert any("which the kit does not have, its weight left out" in said(one) for one in fit.assumed)


def test_a_tilted_base_stands_on_a_wedge() -> None:
    """By hand: 100 mm at 20 degrees rise 34 mm; with the middle of the underside 17 mm up its lower edge is on the table. In the parts, in
    the sentence and in the parts list; a level base has none."""
    tilted = replace(STICK, tilt_rad=math.radians(20))
    rise = 100 * math.sin(math.radians(20))
    up = 200 + 100 * math.cos(math.radians(20)) + rise / 2
    found, kit = mounted(tilted, [], up_mm=up, surface=[TABLE])
    assert found.choice is not None
    (wedge,) = found.choice.under
    assert said(wedge) == "wedge of 20° under the whole base, its far edge 34 mm higher"
    assert said(wedge) in said(found.sentence)
    assert [(line.kind, line.buy) for line in mount_parts([found], kit) if line.name == wedge] == [("wedge", 1)]
    level, _ = mounted(STICK, [], surface=[TABLE])
    assert level.choice is not None
    assert level.choice.under == ()


def test_a_tilted_base_does_not_sink_into_its_table() -> None:
    """With the middle of the underside level with the table its lower edge would be 17 mm in it; a part that cannot be raised is told."""
    tilted = replace(STICK, tilt_rad=math.radians(20))
    found, _ = mounted(tilted, [], up_mm=200 + 100 * math.cos(math.radians(20)), surface=[TABLE])
    assert found.choice is None
    assert all(
        "17 mm too high: the base would stand in it with its lower edge" in said(fit.fails[0]) for fit in found.fits
    )
