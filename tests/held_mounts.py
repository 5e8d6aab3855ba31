"""Feet, boards, trays, arms, clamps, chairs and tapes drawn by lot: what the held figures of `mounting` are taken of, all invented."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

import numpy as np

from stickwright.errors import BadInput
from stickwright.model.kit import Fastener, Mount
from stickwright.model.room import Room, Surface
from stickwright.mounting.arm import (
    elbows,
    forward,
    inverse,
    joint_angles,
    joints_in_words,
    plate_joint,
    reaches,
    too_short_m,
)
from stickwright.mounting.base_stability import (
    Foot,
    foot_checks,
    patch_needed_m,
    sliding_checks,
    tipping_checks,
    with_fastener,
)
from stickwright.mounting.chair_stability import chair_stability, outside_wheels, stability_findings
from stickwright.mounting.change import ArmChange, Stand, smallest_change, stand_change
from stickwright.mounting.compliance import (
    cantilever,
    droop_m,
    droop_rad,
    force_with_give,
    give_findings,
    in_series_n_per_m,
    lost_share,
    ringing_hz,
    tip_shares,
)
from stickwright.mounting.frames import relative_shift_m, tilted, turned
from stickwright.mounting.friction import assumed_friction, friction_between, friction_range
from stickwright.mounting.pose import tolerance_m
from stickwright.mounting.statics import Pushes, arm_weights, joint_checks, release_check, release_window
from stickwright.mounting.support_stability import (
    axis_moment_nm,
    clamp_checks,
    clamp_slip_nm,
    stand_checks,
    surface_checks,
)
from stickwright.mounting.tape import TapePoint, taped_point

Rng = np.random.Generator
MATERIALS = ("wood", "steel", "smooth plastic", "carpet", "vinyl")


def _some(rng: Rng, share: float, **values: Any) -> dict[str, Any]:
    return {name: value for name, value in values.items() if rng.random() < share}


def _pushes(rng: Rng, scale: float = 1.0) -> Pushes:
    spasm = float(scale * rng.uniform(2, 40)) if rng.random() < 0.5 else 0.0
    return Pushes(float(scale * 10 ** rng.uniform(-0.5, 1.2)), spasm)


def _point(rng: Rng, size: float = 0.4) -> tuple[float, float, float]:
    x, y, z = rng.uniform(-size, size, 3).tolist()
    return x, y, z


def _fasteners(rng: Rng) -> list[Fastener]:
    """One of each kind, with figures of its data sheet left out by lot."""
    out = []
    for kind in ("hook-and-loop", "mushroom-head", "screw", "suction", "anti-slip sheet", "strap"):
        figures = _some(
            rng, 0.75, shear_pa=float(10 ** rng.uniform(3.5, 5.5)), tension_pa=float(10 ** rng.uniform(3.5, 5.5)),
            peel_n_per_m=float(10 ** rng.uniform(1.5, 3)), friction=float(rng.uniform(0.4, 1.2)), openings=5000,
        )  # fmt: skip
        out.append(
            Fastener.model_validate({"name": kind, "kind": kind, "in_stock": int(rng.integers(0, 3)), **figures})
        )
    return out


def _feet(rng: Rng) -> Any:
    """Bases loose and fastened, level and tilted, and what would have to change."""
    out: list[Any] = []
    for _ in range(12):
        base_m = (float(rng.uniform(0.04, 0.2)), float(rng.uniform(0.04, 0.15)))
        pushes, fasteners, height_m, mass_kg = (
            _pushes(rng),
            _fasteners(rng),
            float(rng.uniform(0.02, 0.12)),
            float(rng.uniform(0.2, 2.0)),
        )
        more = _some(
            rng, 0.5, friction=float(rng.uniform(0.2, 1.0)), tilt_rad=float(rng.uniform(0, 0.7)), down_n=float(rng.uniform(0, 8)),
            pressed=bool(rng.random() < 0.5),
        )  # fmt: skip
        foot = Foot(base_m, height_m, mass_kg, **more)
        kept = with_fastener(
            foot, fasteners[int(rng.integers(6))], (0.6 * base_m[0], 0.7 * base_m[1]) if rng.random() < 0.5 else None
        )
        for one in (foot, kept):
            checks = foot_checks(one, pushes)
            out.append((checks, smallest_change(checks, foot=one, pushes=pushes, fasteners=fasteners)))
        out.append([patch_needed_m(pushes.hardest_n, height_m, one, base_m) for one in fasteners])
        out.append(tipping_checks(pushes, height_m, mass_kg, base_m[0], overhang_nm=float(rng.uniform(0, 0.3))))
        out.append(sliding_checks(pushes, mass_kg, more.get("friction"), down_n=2.0, tilt_rad=0.2))
    return out


def _boards(rng: Rng) -> Any:
    """Boards and stands on floors, heavy and light, high and low, and what would keep them there."""
    out: list[Any] = []
    for number in range(16):
        kind = "floor stand" if number % 3 == 0 else "floor plate"
        size_m = (float(rng.uniform(0.2, 0.6)), float(rng.uniform(0.2, 0.5)))
        given = _some(
            rng, 0.85, size_m=size_m, mass_kg=float(rng.uniform(1, 8)), friction=float(rng.uniform(0.15, 0.8))
        )
        mount = Mount.model_validate({"name": "board", "kind": kind, **given})
        floor: Any = MATERIALS[number % 5] if rng.random() < 0.8 else None
        height_m, carried_kg, pushes = float(rng.uniform(0.03, 0.6)), float(rng.uniform(0.2, 3)), _pushes(rng, 1.5)
        pressed = number % 4 == 0
        out.append(
            stand_checks(mount, pushes, height_m, carried_kg, float(rng.uniform(0, 0.5)), floor, pressed=pressed)
        )
        if "size_m" in given and "mass_kg" in given:
            stand = Stand(mount, height_m, carried_kg, floor, pressed)
            out.append(
                (stand.holds(pushes), stand_change(stand, pushes, _fasteners(rng)), stand_change(stand, pushes, ()))
            )
    return out


def _narrow_boards(rng: Rng) -> Any:
    """Boards that neither a lower contact nor weight keeps from tipping over: a larger one, and what it takes beside a sheet."""
    out: list[Any] = []
    for number in range(10):
        size_m = (float(rng.uniform(0.04, 0.1)), float(rng.uniform(0.04, 0.4)))
        mount = Mount.model_validate(
            {"name": "board", "kind": "floor plate", "size_m": size_m[:: 1 - 2 * (number % 2)], "mass_kg": float(rng.uniform(2, 6)),
             "friction": float(rng.uniform(1.0, 2.0))}
        )  # fmt: skip
        pushes = Pushes(float(rng.uniform(90, 250)))
        stand = Stand(mount, float(rng.uniform(0.015, 0.022)), float(rng.uniform(0.2, 2)), "wood", pressed=True)
        out.append((stand.holds(pushes), stand_change(stand, pushes, _fasteners(rng))))
    return out


def _surfaces(rng: Rng) -> Any:
    """Tables and trays, rated and not, fastened and loose."""
    out = []
    for number in range(20):
        kind = ("table", "tray", "lap tray", "floor", "bed table")[number % 5]
        more = _some(
            rng, 0.6, mass_kg=float(rng.uniform(0.5, 10)), rated_kg=float(rng.uniform(1, 20)), friction=float(rng.uniform(0.2, 0.9)),
            base_friction=float(rng.uniform(0.2, 0.9)), fastened=bool(rng.random() < 0.4), material=MATERIALS[number % 4],
        )  # fmt: skip
        surface = Surface.model_validate(
            {"name": "here", "kind": kind, "corner_m": (0, 0, 0), "size_m": (0.5, 0.4), **more}
        )
        leg_m = float(rng.uniform(0.05, 0.2)) if rng.random() < 0.5 else None
        checks = surface_checks(
            surface,
            _pushes(rng),
            float(rng.uniform(0.03, 0.2)),
            float(rng.uniform(0.3, 3)),
            float(rng.uniform(0, 2)),
            leg_m,
        )
        out.append((checks, smallest_change(checks)))
    return out


def _arms(rng: Rng) -> Any:
    """Arms of one and two links: where they reach, how their joints stand, what they hold, where they let go."""
    out: list[Any] = []
    for number in range(12):
        links_m = rng.uniform(0.1, 0.4, 1 + number % 2).tolist()
        clamp, end = _point(rng, 0.2), _point(rng, 0.3)
        gone_m = math.dist(clamp, end)
        out.append((bool(reaches(gone_m, links_m)), too_short_m(gone_m, links_m)))
        pushes, tilt_rad, coupling = _pushes(rng), float(rng.uniform(0, 0.6)), number % 3 == 0
        points: Any = [clamp, end]
        if len(links_m) == 2 and reaches(gone_m, links_m):
            points = inverse(clamp, end, links_m, float(rng.uniform(-3, 3)))
            angles = joint_angles(points)
            out.append((angles, forward(clamp, links_m, angles), joints_in_words(points, 0.3, 0.2)))
            out.append(elbows(np.array(clamp), np.array(end), links_m, np.linspace(-3, 3, 7)))
        weights = arm_weights(points, float(rng.uniform(0.2, 2)), end, float(rng.uniform(0.1, 1)))
        checks = joint_checks(
            points[:-1], rng.uniform(2, 30, len(points) - 1).tolist(), pushes, weights,
            contact_m=end, tilts_rad=(0.0, tilt_rad), lets_go=coupling,
        )  # fmt: skip
        out.append((weights, checks, smallest_change(checks, arm=ArmChange(gone_m, "coupling" if coupling else None))))
        window = release_window(
            float(rng.uniform(0.1, 3)), pushes.working_n, gone_m, float(rng.uniform(5, 60)) if number % 4 else None
        )
        out.append(
            (
                window,
                release_check(window),
                release_check(window, (float(rng.uniform(1, 10)), float(rng.uniform(10, 60)))),
            )
        )
        along = np.asarray(_point(rng))
        along = along / np.linalg.norm(along)
        slips_nm = clamp_slip_nm(float(rng.uniform(50, 900)), 0.4, 0.025)
        out.append((slips_nm, axis_moment_nm(clamp, along, end, pushes.working_n, weights, tilt_rad)))
        for known in (slips_nm, None):
            clamped = clamp_checks(
                clamp, along, end, pushes, weights, known, tilts_rad=(0.0, tilt_rad), lets_go=coupling
            )
            out.append((clamped, smallest_change(clamped)))
    return [*out, plate_joint(0.4, 0.3)]


def _give(rng: Rng) -> Any:
    """What gives under a push: tubes, joints, what rings, what is lost of the travel."""
    out: list[Any] = []
    for bends in (False, True):
        out += [tip_shares(rng.uniform(0.1, 0.4, many).tolist(), bends=bends) for many in (1, 2, 3)]
    for _ in range(8):
        give = float(10 ** rng.uniform(2, 4.5))
        stiffer = in_series_n_per_m(give, 3 * give, math.inf)
        outer_m = float(rng.uniform(0.01, 0.03))
        sunk_m = droop_m(float(rng.uniform(0.1, 2)), give)
        hz = ringing_hz(give, float(rng.uniform(0.2, 2)))
        full_n, travel_m = float(rng.uniform(0.3, 6)), float(rng.uniform(0.003, 0.02))
        forces, ways = np.array([full_n, 2 * full_n]), np.array([0.02, 0.01])
        out += [
            stiffer, sunk_m, droop_rad(sunk_m, 0.3), hz, lost_share(full_n, give, travel_m), force_with_give(forces, ways, give),
            cantilever(full_n, float(rng.uniform(0.1, 0.5)), outer_m, 0.8 * outer_m, 7e10), give_findings(full_n, give, travel_m, hz),
            give_findings(full_n, give, travel_m, None),
        ]  # fmt: skip
    out += [ringing_hz(math.inf, 1.0), ringing_hz(900.0, None), in_series_n_per_m(math.inf)]
    return {str(number): one for number, one in enumerate(out)}


def _chairs(rng: Rng) -> Any:
    """Mounts within and outside the wheels of chairs whose figures are known in part."""
    out: list[Any] = []
    for number in range(24):
        figures = {
            "chair_kg": float(rng.uniform(15, 90)), "player_kg": float(rng.uniform(20, 110)), "track_mm": float(rng.uniform(450, 650)),
            "rear_wheel_mm": float(rng.uniform(-120, 20)), "front_wheel_mm": float(rng.uniform(300, 480)), "seat_to_floor_mm": 500,
            "tips_sideways_deg": float(rng.uniform(9, 20)), "tips_back_deg": float(rng.uniform(6, 14)),
            "tips_forward_deg": float(rng.uniform(12, 25)),
        }  # fmt: skip
        kept = figures if number % 2 else _some(rng, 0.8, **figures)
        room = Room.model_validate({"posture": "wheelchair", **kept})
        point = (float(rng.uniform(-0.6, 0.6)), float(rng.uniform(-0.4, 0.9)), float(rng.uniform(-0.3, 0.5)))
        moves_with: Any = ("seat", "base", "room")[number % 3]
        known = chair_stability(room, moves_with, point, float(rng.uniform(0.3, 6)))
        out.append((outside_wheels(room, point), known, stability_findings("chin", known)))
    return out


def _tapes(rng: Rng) -> Any:
    """Points from three to six tape distances, exact, a little off, far off, and from landmarks nearly in a line."""
    out: list[Any] = []
    for number in range(16):
        landmarks = [_point(rng, 0.6) for _ in range(3 + number % 4)]
        if number % 5 == 4:
            landmarks = [(x, 0.02 * y, 0.02 * z) for x, y, z in landmarks]
        point = _point(rng)
        off_m = rng.normal(0, (0.0, 0.004, 0.03)[number % 3], len(landmarks))
        told = [
            TapePoint(f"mark {n}", at, math.dist(at, point) + float(off))
            for n, (at, off) in enumerate(zip(landmarks, off_m, strict=True))
        ]
        try:
            out.append(taped_point(told))
        except BadInput as refused:
            out.append(refused.problems)
    return out


def _turned(rng: Rng) -> Any:
    """Points of tilted seats, tolerances of a place, friction of pairs of materials."""
    points = rng.uniform(-0.5, 0.5, (6, 3))
    pivot = _point(rng)
    directions = np.arange(8) * math.pi / 4
    pairs = [(one, other) for one in MATERIALS for other in ("rubber", "wood", "skin")]
    given: list[Any] = [*MATERIALS, None]
    return {
        "tilted": [tilted(points, tilt_rad, pivot) for tilt_rad in (-0.2, 0.3, 0.6)],
        "turned": [turned(turn_rad, tilt_rad) for turn_rad in (0.4, 2.0) for tilt_rad in (0.0, 0.5)],
        "shifts": [relative_shift_m(point, pivot, 0.4) for point in points],
        "tolerances": [tolerance_m(directions, rng.uniform(0.005, 0.04, 8)) for _ in range(6)],
        "few directions": [tolerance_m(directions[::step], rng.uniform(0.005, 0.04, 8)[::step]) for step in (2, 3)],
        "friction": [friction_between(*pair) for pair in pairs],
        "ranges": [friction_range(one) for one in given],
        "assumed": [assumed_friction(one, measure=plate_joint(0.0, 0.0).words)[0] for one in given],
    }  # fmt: skip


DRAWN: dict[str, Callable[[Rng], Any]] = {
    "feet": _feet, "boards": _boards, "narrow boards": _narrow_boards, "surfaces": _surfaces, "arms": _arms, "give": _give,
    "chairs": _chairs, "tapes": _tapes,
    "turned": _turned,
}  # fmt: skip


def results() -> dict[str, Callable[[], Any]]:
    """Everything of this module that is held, by name: three seeds of each."""
    return {
        f"{name} {seed}": lambda name=name, seed=seed: DRAWN[name](np.random.default_rng([71, seed, *name.encode()]))
        for name in DRAWN
        for seed in range(3)
    }
