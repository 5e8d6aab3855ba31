"""Where the five of the worked cases sit, and the van's mounts and fasteners.

The cases give tilts, what is clamped to what and the figures of mounts and fasteners; all distances are chosen, plausible for
somebody of middle height (a seat with its armrests 235 mm above it, a chin 690 mm above it). Points are [right, forward, up]
from the seat reference point, in mm.
"""

from __future__ import annotations

from typing import Any

from stickwright.model.room import Room

WOOD_ON_WOOD = 0.35
NAMES = ("tove", "idris", "marit", "joss", "rune")

_FACE = {"name": "face", "kind": "face", "low_mm": [-85, 50, 735], "high_mm": [85, 215, 930]}
_ARMRESTS = [
    {"name": f"{side} armrest tube", "from_mm": [x, 120, 205], "to_mm": [x, 400, 205], "diameter_mm": 25}
    for side, x in (("left", -255), ("right", 255))
]
_ENDS = [
    {"name": "left armrest, front end", "at_mm": [-255, 420, 235]},
    {"name": "right armrest, front end", "at_mm": [255, 420, 235]},
    {"name": "left armrest, rear bolt", "at_mm": [-275, 90, 180]},
    {"name": "middle of the seat's front edge", "at_mm": [0, 460, 0]},
]
_CHAIR = {
    "posture": "wheelchair", "seat_to_armrest_mm": 235, "armrest_front_mm": 420, "armrests_apart_mm": 510,
    "seat_to_chin_mm": 690, "seat_to_eyes_mm": 800, "width_mm": 650, "narrowest_door_mm": 800, "landmark": _ENDS,
}  # fmt: skip

_ROOMS: dict[str, dict[str, Any]] = {
    # tilts 10 to 25 in play; the control at the right hand stays usable, so the game stick comes from the tube beside it
    "tove": {
        **_CHAIR, "tilt_from_deg": 10, "tilt_to_deg": 25, "tilt_pivot_mm": [0, 200, -160], "seat_to_floor_mm": 500,
        "tube": _ARMRESTS,
        "surface": [_floor := {"name": "floor", "kind": "floor", "corner_mm": [-1300, -700, -500], "size_mm": [2600, 2600],
                               "material": "carpet"}],
        "keep_out": [
            _FACE,
            {"name": "chair's own control", "kind": "chair control", "low_mm": [285, 390, 225], "high_mm": [375, 490, 340]},
            {"name": "left side, for getting out", "kind": "transfer side", "low_mm": [-950, 0, -400], "high_mm": [-340, 600, 700],
             "moves_with": "base"},
            {"name": "ventilator tubing", "kind": "tubing", "low_mm": [-150, -400, 300], "high_mm": [150, -160, 750]},
        ],
        "place": [
            {"site": "right index", "at_mm": [220, 430, 300]},  # on the wedge
            {"site": "left index", "at_mm": [-225, 435, 280]},
            {"site": "left thumb", "at_mm": [-190, 400, 285]},
            {"site": "lower lip", "at_mm": [0, 200, 712]},
        ],
    },
    # manual chair, fixed tray; the ball of the stick 95 mm above the tray
    "idris": {
        **_CHAIR, "seat_to_floor_mm": 480, "seat_to_tray_mm": 240, "trunk_to_tray_mm": 30,
        "surface": [
            {"name": "chair's own tray", "kind": "tray", "corner_mm": [-280, 210, 240], "size_mm": [560, 380], "material": "wood",
             "mass_kg": 2.6, "fastened": True, "friction": 0.9, "moves_with": "seat"},
            {**_floor, "corner_mm": [-1300, -700, -480]},
        ],
        "keep_out": [_FACE],
        "place": [
            {"site": "right fist", "at_mm": [120, 390, 335]},
            {"site": "left fist", "at_mm": [-150, 390, 300]},
            {"site": "knee", "at_mm": [130, 530, 120]},
        ],
    },
    # tilts 5 to 45; the chin is 900 mm from the axle; the drive arm parks on the left, the game arm comes from the right back tube
    "marit": {
        **_CHAIR, "tilt_from_deg": 5, "tilt_to_deg": 45, "tilt_pivot_mm": [0, 150, -209], "seat_to_floor_mm": 520,
        "tube": [
            {"name": "right back tube", "from_mm": [200, -60, 320], "to_mm": [200, -60, 620], "diameter_mm": 25},
            {"name": "left back tube", "from_mm": [-200, -60, 320], "to_mm": [-200, -60, 620], "diameter_mm": 25},
            {"name": "head rest tube", "from_mm": [0, -90, 480], "to_mm": [0, -90, 660], "diameter_mm": 20,
             "not_for_clamps": "carries the head rest"},
        ],
        "surface": [{**_floor, "corner_mm": [-1300, -700, -520]}],
        "keep_out": [
            _FACE,
            {"name": "drive arm, swung away", "kind": "chair control", "low_mm": [-420, -60, 350], "high_mm": [-230, 330, 720]},
            {"name": "right side, for getting out", "kind": "transfer side", "low_mm": [340, 0, -400], "high_mm": [950, 600, 600],
             "moves_with": "base"},
        ],
        "place": [
            {"site": "chin", "at_mm": [0, 190, 690], "slope_deg": 25},
            {"site": "cheek", "at_mm": [93, 120, 725]},
            {"site": "left head side", "at_mm": [-95, 10, 790]},
            {"site": "right head side", "at_mm": [95, 10, 790]},
        ],
    },
    # at a desk, elbow on a pad, the end of the forearm 125 mm above the desk
    "joss": {
        "posture": "chair", "seat_to_floor_mm": 480, "seat_to_eyes_mm": 800, "table_height_mm": 730,
        "edge": [{"name": "front edge of the desk", "from_mm": [-700, 330, 250], "to_mm": [700, 330, 250], "thickness_mm": 25,
                  "depth_mm": 150}],
        "surface": [
            {"name": "desk", "kind": "table", "corner_mm": [-700, 330, 250], "size_mm": [1400, 700], "material": "wood",
             "mass_kg": 30, "rated_kg": 60},
            {**_floor, "corner_mm": [-1300, -700, -480], "material": "wood"},
        ],
        "landmark": [
            {"name": "right front corner of the desk", "at_mm": [700, 330, 250], "moves_with": "room"},
            {"name": "left front corner of the desk", "at_mm": [-700, 330, 250], "moves_with": "room"},
        ],
        "place": [
            {"site": "right forearm", "at_mm": [200, 480, 375]},
            {"site": "left thumb", "at_mm": [-150, 490, 300]},
            {"site": "left index", "at_mm": [-140, 520, 290]},
            {"site": "left middle finger", "at_mm": [-140, 525, 270]},
            {"site": "right foot", "at_mm": [120, 600, -440]},
            {"site": "left foot", "at_mm": [-120, 600, -440]},
        ],
    },
    # armchair with a loose tray across its arms
    "rune": {
        "posture": "armchair", "seat_to_floor_mm": 430, "seat_to_tray_mm": 260, "seat_to_eyes_mm": 790,
        "edge": [{"name": "far edge of the tray", "from_mm": [-280, 600, 260], "to_mm": [280, 600, 260], "thickness_mm": 18,
                  "depth_mm": 100, "moves_with": "seat"}],
        "surface": [
            {"name": "tray", "kind": "tray", "corner_mm": [-280, 220, 260], "size_mm": [560, 380], "material": "wood",
             "mass_kg": 2.6, "friction": WOOD_ON_WOOD, "moves_with": "seat"},
            {**_floor, "corner_mm": [-1300, -700, -430]},
        ],
        "keep_out": [_FACE],
        "landmark": [
            {"name": "right near corner of the tray", "at_mm": [280, 220, 260]},
            {"name": "left near corner of the tray", "at_mm": [-280, 220, 260]},
        ],
        "place": [
            {"site": "right index", "at_mm": [150, 410, 312]},
            {"site": "right thumb", "at_mm": [105, 380, 290]},
            {"site": "left head side", "at_mm": [-98, 10, 790]},
            {"site": "right head side", "at_mm": [98, 10, 790]},
            {"site": "left toe", "at_mm": [-110, 660, -380]},
        ],
    },
}  # fmt: skip


def room(name: str, **more: Any) -> Room:
    """Where one of the five sits.

    Parameters
    ----------
    name : str
        The invented first name the case goes by.
    more : object
        Fields instead of those of the case, as in a room file.
    """
    return Room.model_validate({**_ROOMS[name], **more})


def mount_kit() -> dict[str, list[dict[str, Any]]]:
    """The van's mounts and fasteners, as in a kit file: ``van_kit(**mount_kit())``.

    Links, holding moments, give, clamp ranges, masses of trays and the plate, tilts, releases, strengths and frictions are the
    cases'. Chosen: masses of the arms (the long arm's makes the 1.8 N m that the third case tells), the gooseneck's clamp,
    that arms swing away, and times.
    """
    arm = {"kind": "friction arm", "tube_mm": [16, 40], "swings_away": True, "setup_min": 2}
    mounts: list[dict[str, Any]] = [
        {"name": "short arm", **arm, "links_mm": [140, 120], "holding_nm": [4], "give_n_per_mm": 2.2, "mass_g": 450},
        {"name": "long arm", **arm, "links_mm": [220, 200], "holding_nm": [7], "give_n_per_mm": 0.9, "mass_g": 900},
        {"name": "gooseneck", "kind": "gooseneck", "links_mm": [350], "holding_nm": [1.2], "give_n_per_mm": 0.15, "mass_g": 350,
         "tube_mm": [16, 40], "edge_mm": [10, 40]},
        {"name": "tray", "kind": "tray", "size_mm": [560, 380], "mass_g": 2600},
        {"name": "lap tray", "kind": "lap tray", "mass_g": 1100, "note": "on a beanbag"},
        {"name": "floor plate", "kind": "floor plate", "size_mm": [450, 350], "mass_g": 4200, "tilts_deg": [0, 30],
         "friction": 0.9},
        {"name": "breakaway coupling", "kind": "breakaway coupling", "release_n": [5, 20]},
    ]  # fmt: skip
    sheet = {"test_method": "invented data sheet", "in_stock": 10}
    fasteners: list[dict[str, Any]] = [
        {"name": "hook-and-loop", "kind": "hook-and-loop", "shear_kpa": 60, "tension_kpa": 35, **sheet},
        {"name": "mushroom-head fastener", "kind": "mushroom-head", "shear_kpa": 210, "tension_kpa": 180, **sheet},
        {"name": "anti-slip sheet", "kind": "anti-slip sheet", "friction": 0.9, "in_stock": 4},
    ]
    return {"mount": mounts, "fastener": fasteners}
