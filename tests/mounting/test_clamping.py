"""Whether a clamp has the room that it takes."""

from __future__ import annotations

import numpy as np
import pytest

from said import said
from stickwright.model.kit import Mount
from stickwright.model.mounting import Pose
from stickwright.model.room import Edge, Room, Tube
from stickwright.mounting.clamping import clear_of_ends, too_little_room
from stickwright.mounting.search import arm_reaches

ARM = {"name": "arm", "kind": "friction arm", "links_mm": [140, 120], "tube_mm": [16, 40], "edge_mm": [10, 30]}


def mount(**more: float) -> Mount:
    return Mount.model_validate({**ARM, **more})


def edge(depth_mm: float | None, long_mm: float = 400) -> Edge:
    depth = {} if depth_mm is None else {"depth_mm": depth_mm}
    ends = {"from_mm": [0, 500, 200], "to_mm": [long_mm, 500, 200], "thickness_mm": 25}
    return Edge.model_validate({"name": "table", **ends, **depth})


def tube(long_mm: float) -> Tube:
    ends = {"from_mm": [300, 0, 200], "to_mm": [300, long_mm, 200], "diameter_mm": 25}
    return Tube.model_validate({"name": "stub", **ends})


@pytest.mark.parametrize(("depth_mm", "lacks"), [(20, "35 mm"), (54, "1.0 mm"), (55, ""), (80, ""), (None, "")])
def test_the_jaw_needs_depth_behind_the_edge(depth_mm, lacks):
    """A jaw that reaches 55 mm in: 20 mm are 35 mm too little, 55 mm just do; where nobody measured, nothing is said."""
    told = too_little_room(mount(jaw_depth_mm=55), edge(depth_mm))
    assert said(told).endswith(f"{lacks} too little.") if lacks else told is None


@pytest.mark.parametrize(("long_mm", "lacks"), [(45, "15 mm"), (60, ""), (300, "")])
def test_the_clamp_needs_a_length_of_tube(long_mm, lacks):
    """A clamp 60 mm wide on a tube free for 45 mm: 15 mm too little; 60 mm just do. An edge counts as well."""
    for thing in (tube(long_mm), edge(None, long_mm)):
        told = too_little_room(mount(clamp_width_mm=60), thing)
        assert said(told).endswith(f"{lacks} too little.") if lacks else told is None
    assert too_little_room(mount(), tube(long_mm)) is None


def test_the_whole_clamp_is_on_the_tube():
    """60 mm wide: its middle is never nearer than 30 mm to an end; where it just goes on, it goes in the middle."""
    along = np.linspace(0.0, 0.3, 61)
    kept = along[clear_of_ends(mount(clamp_width_mm=60), along)]
    assert (kept[0], kept[-1]) == pytest.approx((0.03, 0.27), abs=1e-9)
    assert clear_of_ends(mount(), along).all()
    tight = np.linspace(0.0, 0.06, 14)
    only = tight[clear_of_ends(mount(clamp_width_mm=60), tight)]
    assert only == pytest.approx([0.03], abs=0.0025)


def test_an_arm_is_not_offered_where_its_clamp_has_no_room():
    """By hand: the arm's ball 100 mm above the end of a tube, the best clamp point is that end; a clamp 60 mm wide sits 30 mm in. On a
    stub of 50 mm it does not go on, and the reason says by how much."""
    at = Pose("hand", (0.3, 0.0, 0.38), (0.3, 0.0, 0.33), 0.0, 0.0, 0.004, 0.4)
    bare, wide = (arm_reaches(at, Room(tube=(tube(400),)), [one])[0] for one in (mount(), mount(clamp_width_mm=60)))
    assert bare.poses[0].along_m == pytest.approx(0.0, abs=1e-9)
    assert wide.poses[0].along_m == pytest.approx(0.03, abs=1e-9)
    (none,) = arm_reaches(at, Room(tube=(tube(50),)), [mount(clamp_width_mm=60)])
    assert none.poses == ()
    assert said(none.reasons[0]).endswith("10 mm too little.")
