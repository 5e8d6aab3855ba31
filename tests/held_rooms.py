"""Places, poses, and what holds one device or several in rooms drawn by lot: what the held figures of whole rooms are taken of."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

import numpy as np

from stickwright.codes.estimate import Estimate
from stickwright.errors import BadInput
from stickwright.model.kit import Kit, Switch
from stickwright.model.player import PARTS, Player, Site
from stickwright.model.room import Room
from stickwright.mounting.held import HeldDevice, held_controller, held_switch
from stickwright.mounting.pose import Placed, placed, pose_of, whole_turn_rad
from stickwright.mounting.statics import Pushes
from stickwright.mounting.together import WantedMount, mounts_together

Rng = np.random.Generator
MATERIALS = ("wood", "steel", "smooth plastic", "carpet", "vinyl")
MARKS = {
    "bolt": (250, 0, 200), "front": (250, 400, 200), "left bolt": (-250, 100, 200), "corner": (0, 600, 150),
    "head rest": (0, -90, 640),
}  # fmt: skip


def _some(rng: Rng, share: float, **values: Any) -> dict[str, Any]:
    return {name: value for name, value in values.items() if rng.random() < share}


def _mm(rng: Rng, low: float, high: float) -> int:
    return int(rng.integers(low, high))


def _body(rng: Rng) -> dict[str, Any]:
    """Distances of a body and its seat, left out by lot."""
    return _some(
        rng, 0.5, seat_to_armrest_mm=_mm(rng, 180, 260), armrest_front_mm=_mm(rng, 330, 450), armrests_apart_mm=_mm(rng, 400, 560),
        seat_to_chin_mm=_mm(rng, 560, 720), seat_to_eyes_mm=_mm(rng, 700, 830), seat_to_tray_mm=_mm(rng, 190, 280),
        tilt_to_deg=_mm(rng, 5, 40),
    )  # fmt: skip


def _places(rng: Rng) -> Any:
    """Every part, told by a point, by three tapes or more, some of which do not meet, or by nothing; and how a base must then stand."""
    out: list[Any] = []
    for number in range(3 * len(PARTS)):
        part = PARTS[number % len(PARTS)]
        side = ("left", "right", "middle")[number % 3]
        site = Site.model_validate(
            {"name": f"the {part}", "part": part} | _some(rng, 0.8, side=side, movement_tilt_deg=_mm(rng, 0, 40))
        )
        at_mm = rng.uniform((-250, 150, 150), (250, 450, 400)).round()
        marks = [str(one) for one in rng.permutation(list(MARKS))[: (3, 4, 3, 5)[number % 4]]]
        off = (0.0, 3.0, 100.0)[number % 3]
        tape = [
            {"landmark": name, "distance_mm": max(5.0, float(math.dist(at_mm, MARKS[name]) + rng.normal(0, off)))}
            for name in marks
        ]
        told = ({"at_mm": at_mm.tolist()}, {"tape": tape}, {"tape": tape}, {})[number % 4]
        place = {"site": site.name, **told} | _some(
            rng, 0.6, forward_deg=_mm(rng, -170, 170), slope_deg=_mm(rng, 0, 40), moves_with=str(rng.choice(["base", "room"]))
        )  # fmt: skip
        landmark = [
            {"name": name, "at_mm": at, "moves_with": "room" if name == "corner" else "seat"}
            for name, at in MARKS.items()
        ]
        posture = str(rng.choice(["wheelchair", "chair", "bed"], p=[0.6, 0.3, 0.1]))
        room = Room.model_validate(
            {"posture": posture, "landmark": landmark, "place": [place] if rng.random() < 0.8 else []} | _body(rng)
        )
        try:
            where = placed(site, room)
        except BadInput as refused:
            out.append(refused.problems)
            continue
        out.append((where, None if where is None else _stood(rng, site, where, number)))
    return out


def _stood(rng: Rng, site: Site, where: Placed, number: int) -> Any:
    """How a base stands: level and tilted, turned by recordings and not, of a height that nobody took."""
    turn_rad = float(rng.uniform(-3, 3))
    recorded = Estimate(turn_rad, turn_rad - 0.1, turn_rad + 0.2) if number % 2 else None
    directions = np.arange(4 + number % 5) * 2 * math.pi / (4 + number % 5)
    more = _some(rng, 0.6, tilt_rad=float(rng.uniform(-0.3, 0.6)), own_slope_rad=float(rng.uniform(-0.3, 0.3)))
    pose = pose_of(
        site, where, base_height_m=None if number % 5 == 0 else float(rng.uniform(0.02, 0.1)),
        contact_height_m=float(rng.uniform(0.005, 0.06)), direction_rad=directions,
        reach_m=rng.uniform(0.005, 0.05, len(directions)), recorded_turn=recorded, **more,
    )  # fmt: skip
    return pose, whole_turn_rad(where.forward_rad, recorded)


def _room(rng: Rng) -> Room:
    """A chair that tilts or not, with tubes, a table, a floor, edges, boxes to keep out of, each there or not."""
    tubes = [
        {"name": f"{side} tube", "from_mm": [x, 90, 190], "to_mm": [x, 390, 190 + _mm(rng, 0, 20)], "diameter_mm": _mm(rng, 18, 38)}
        for side, x in (("left", -250), ("right", 250))
        if rng.random() < 0.7
    ]  # fmt: skip
    table = {
        "name": "table", "corner_mm": [-600, _mm(rng, 200, 330), _mm(rng, 200, 240)], "size_mm": [1200, 600], "moves_with": "room",
    } | _some(rng, 0.7, material=str(rng.choice(MATERIALS)), mass_kg=float(rng.uniform(3, 30)),
              rated_kg=float(rng.uniform(2, 20)))  # fmt: skip
    floor = {"name": "floor", "kind": "floor", "corner_mm": [-1300, -700, -500], "size_mm": [2600, 2600]} | _some(
        rng, 0.7, material=str(rng.choice(MATERIALS))
    )
    edge = {
        "name": "table's edge", "from_mm": [-600, 330, 220], "to_mm": [600, 330, 220], "thickness_mm": _mm(rng, 15, 40),
        "depth_mm": _mm(rng, 40, 200), "moves_with": "room",
    }  # fmt: skip
    box = {
        "name": "a control", "kind": "chair control", "low_mm": [280, 380, 220], "high_mm": [380, 480, 330],
    } | _some(rng, 0.3, moves_with="base")  # fmt: skip
    way = {
        "name": "the left side",
        "kind": "transfer side",
        "low_mm": [-950, 0, -400],
        "high_mm": [-330, 600, 700],
        "moves_with": "base",
    }
    places = [
        {"site": name, "at_mm": [x + _mm(rng, -30, 30), _mm(rng, 380, 470), _mm(rng, 250, 320)]}
        | _some(rng, 0.4, forward_deg=_mm(rng, -40, 40))
        for name, x in (("right hand", 200), ("left hand", -200), ("right thumb", 120))
    ]  # fmt: skip
    if rng.random() < 0.3:  # in front of the stick, as high as a switch on its flat
        x, y, z = places[0]["at_mm"]
        places[1]["at_mm"] = [x, y + 50, z - 30]
    tilts = {"tilt_from_deg": 5, "tilt_to_deg": _mm(rng, 8, 30), "tilt_pivot_mm": [0, 100, -150]}
    return Room.model_validate(
        {
            "posture": "wheelchair", "seat_to_floor_mm": 500, "tube": tubes, "place": places,
            "surface": [one for one in (table, floor) if rng.random() < 0.7],
            "edge": [edge] if rng.random() < 0.3 else [], "keep_out": [one for one in (box, way) if rng.random() < 0.3],
            "landmark": [{"name": name, "at_mm": at} for name, at in MARKS.items() if rng.random() < 0.6],
        } | (tilts if rng.random() < 0.4 else {}) | _some(rng, 0.5, width_mm=650, narrowest_door_mm=_mm(rng, 660, 800))
    )  # fmt: skip


def _kit(rng: Rng) -> Kit:
    """One or two of each mount, figures left out by lot; a pad with a flat on it."""
    arm = {"kind": "friction arm", "tube_mm": [16, 40]}
    mounts = [
        {"name": "arm", **arm, "links_mm": [200, _mm(rng, 150, 220)], "holding_nm": [float(rng.uniform(1, 9))],
         "give_n_per_mm": float(rng.uniform(0.3, 3)), "in_stock": _mm(rng, 1, 3)}
        | _some(rng, 0.6, mass_g=600, setup_min=2, swings_away=True),
        {"name": "soft arm", **arm, "links_mm": [220, 200], "holding_nm": [float(rng.uniform(1, 6))], "in_stock": _mm(rng, 0, 2)}
        | _some(rng, 0.6, give_n_per_mm=0.4, mass_g=500, edge_mm=[10, 40]),
        {"name": "neck", "kind": "gooseneck", "links_mm": [380], "holding_nm": [float(rng.uniform(0.5, 3))], "edge_mm": [10, 40],
         "tube_mm": [16, 40], "give_n_per_mm": 0.15, "mass_g": 350},
        {"name": "stand", "kind": "floor stand"} | _some(rng, 0.75, size_mm=[_mm(rng, 400, 700), _mm(rng, 350, 600)], friction=0.6,
         mass_kg=float(rng.uniform(5, 20)), give_n_per_mm=float(rng.uniform(0.5, 4)), take_off_s=float(rng.uniform(3, 40))),
    ]  # fmt: skip
    sheet = {"test_method": "invented data sheet"}
    fasteners = [
        {"name": "tape", "kind": "hook-and-loop", "shear_kpa": 60, "tension_kpa": 35, "in_stock": _mm(rng, 1, 3), **sheet},
        {"name": "strong one", "kind": "mushroom-head", "shear_kpa": 210, "tension_kpa": 180, "in_stock": _mm(rng, 0, 2), **sheet},
        {"name": "sheet", "kind": "anti-slip sheet", "friction": float(rng.uniform(0.5, 1)), "in_stock": 1},
    ]  # fmt: skip
    stick = {"name": "ash", "contact_height_mm": 50, "start_force_n": 0.5, "full_force_n": 2, "travel_mm": 10,
             "flat": {"at_mm": [0, 50, 40], "size_mm": [70, 60]}}  # fmt: skip
    pad = {"name": "pad", "press_force_n": 0.9} | _some(rng, 0.6, mass_g=260, base_mm=[120, 90, 40])
    return Kit.model_validate(
        {
            "stick": [stick], "controller": [pad], "mount": [one for one in mounts if rng.random() < 0.7], "fastener": fasteners,
        }
    )  # fmt: skip


def _held(rng: Rng, name: str, kit: Kit) -> HeldDevice:
    """The device of a hand: a stick at the right one, a switch or a few at the left, a switch or a pad at the thumb."""
    if name == "right hand":
        base: Any = (0.15, 0.10, 0.04) if rng.random() < 0.7 else None
        more = _some(rng, 0.6, mass_kg=float(rng.uniform(0.1, 0.8)), pivot_height_m=0.035)
        return HeldDevice(
            "ash", base, more.get("mass_kg"), 0.05, 2.0, 0.01, tilt_rad=float(rng.choice([0, 0, 0.2])),
            pivot_height_m=more.get("pivot_height_m")
        )  # fmt: skip
    if name == "right thumb" and rng.random() < 0.5:
        return held_controller("pad", kit)
    figures = {"name": "disc", "force_n": float(rng.uniform(0.2, 3)), "travel_m": float(rng.uniform(0.001, 0.008))}
    known = _some(rng, 0.6, face_m=(0.045,), mass_kg=0.06, base_m=(0.06, 0.05, 0.02))
    pieces, presses_in_m = (1, 1, 2)[_mm(rng, 0, 3)], float(rng.uniform(0.001, 0.02))
    return held_switch(
        Switch.model_validate(figures | known), pieces=pieces, presses_in_m=presses_in_m if rng.random() < 0.5 else None
    )


def _together(rng: Rng) -> Any:
    """Two or three devices at once: what holds each, what it would have had, what stands on what."""
    sites = [
        {"name": name, "part": "thumb" if name == "right thumb" else "hand"}
        for name in ("right hand", "left hand", "right thumb")
    ]
    player = Player.model_validate({"code": "P1", "site": sites})
    out = []
    for number in range(4):
        room, kit = _room(rng), _kit(rng)
        wanted = []
        for site in player.site[: 2 + number % 2]:
            directions = tuple((np.arange(4) * math.pi / 2).tolist()) if site.name == "right hand" else ()
            spasm = float(rng.uniform(3, 15)) if rng.random() < 0.3 else 0.0
            wanted.append(
                WantedMount(
                    site, _held(rng, site.name, kit), Pushes(float(rng.uniform(0.5, 6)), spasm), float(_mm(rng, 0, 10)),
                    directions, tuple(rng.uniform(0.01, 0.04, len(directions)).tolist()),
                )
            )  # fmt: skip
        out.append(mounts_together(wanted, room, kit, player))
    return out


DRAWN: dict[str, tuple[Callable[[Rng], Any], int]] = {"places": (_places, 3), "together": (_together, 5)}
"""Each with how many seeds of it are held."""


def results() -> dict[str, Callable[[], Any]]:
    """Everything of this module that is held, by name."""
    return {
        f"{name} {seed}": lambda made=made, name=name, seed=seed: made(
            np.random.default_rng([79, seed, *name.encode()])
        )
        for name, (made, seeds) in DRAWN.items()
        for seed in range(seeds)
    }
