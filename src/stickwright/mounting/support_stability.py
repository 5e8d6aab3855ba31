"""What the mount itself stands on or holds on to: trays, lap trays, stands, clamps on tubes, and the chair beneath them all."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.message import Name, message
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.codes.mount_checks import MountChecks, Thing
from stickwright.codes.mount_problems import MountProblems
from stickwright.codes.to_measure import ToMeasure
from stickwright.errors import BadInput, Problem
from stickwright.model.kit import Mount
from stickwright.model.mounting import Check
from stickwright.model.room import Material, Surface
from stickwright.mounting.base_stability import FRICTION_FACTOR, sliding_checks, tipping_checks
from stickwright.mounting.friction import assumed_friction
from stickwright.mounting.statics import WANTED, Pushes, Weight, check_of, unknown_check, weight_moment_nm
from stickwright.units import STANDARD_GRAVITY

__all__ = [
    "LAP_TRAY_N", "THIGHS_RANGE_M", "axis_moment_nm", "clamp_checks", "clamp_slip_nm", "lap_tray_checks", "rating_check",
    "stability_angle_rad",
    "stand_checks", "surface_checks", "tray_checks",
]  # fmt: skip

Array = NDArray[np.float64]

LAP_TRAY_N = 3.0
"""Hardest push for a tray that lies on the lap [fitting-practice]."""
THIGHS_M = 0.09
"""From the middle of the body to the middle of a thigh: a quarter of the median hip breadth, sitting [gordon-2014]."""
THIGHS_RANGE_M = (0.06, 0.12)
"""The same from somebody slight to somebody broad: common practice, no source."""


def tray_checks(
    pushes: Pushes,
    *,
    mass_kg: float | None,
    carried_kg: float,
    resting_kg: float = 0.0,
    fastened: bool = False,
    friction: float | None = None,
    rated_kg: float | None = None,
    thing: Thing = "tray",
) -> tuple[Check, ...]:
    """Whether a tray stays under the push, and whether it is rated for what it carries.

    A loose tray is kept by friction alone: of itself, of what stands on it, and of the arm that rests on it.

    Parameters
    ----------
    pushes : Pushes
    mass_kg : float or None
        Of the tray; None when it was not weighed.
    carried_kg : float
        Of the devices on it.
    resting_kg : float, default 0.0
        Of the arm that rests on it while it is pushed.
    fastened : bool, default False
        Whether it is bolted or clamped.
    friction : float, optional
        Under it; taken as dusty when not known.
    rated_kg : float, optional
        Mass it may carry.
    thing : Name or str, default 'tray'
        What it is called.

    Returns
    -------
    tuple of Check

    Examples
    --------
    >>> loose = tray_checks(Pushes(0.0, 85.0), mass_kg=2.6, carried_kg=0.9, resting_kg=1.5, friction=0.9)
    >>> [(check.push, round(check.limit), check.holds) for check in loose]
    [('working', 44, True), ('involuntary', 44, False)]
    """
    out: list[Check] = []
    if fastened:
        words, assumed = message(MountChecks.fastened, thing=thing), message(MountAssumed.fastening)
        out.append(check_of("tray", "", 0.0, math.inf, unit="n", wanted=1.0, words=words, assumed=assumed))
    elif mass_kg is None:
        lacks = message(MountChecks.lacks_mass, thing=thing)
        out += [
            unknown_check("tray", push, force, force, unit="n", wanted=FRICTION_FACTOR, lacks=lacks)
            for push, force in pushes.counted()
        ]
    else:
        pull = message(ToMeasure.friction_under, thing=Name(thing))
        grip, taken = (friction, None) if friction is not None else assumed_friction(None, "tray", measure=pull)
        out += sliding_checks(pushes, mass_kg + carried_kg + resting_kg, grip, thing=thing, what="tray", assumed=taken)
    if rated_kg is not None:
        out.append(rating_check(carried_kg + resting_kg, rated_kg, thing))
    return tuple(out)


def rating_check(carried_kg: float, rated_kg: float, thing: Thing = "tray") -> Check:
    """Whether what a thing carries is within its rating.

    Parameters
    ----------
    carried_kg : float
        All of it.
    rated_kg : float
        What its maker allows.
    thing : Name or str, default 'tray'
        What it is called.

    Returns
    -------
    Check
    """
    words = message(MountChecks.rating, thing=thing, carried_kg=carried_kg, rated_kg=rated_kg)
    return check_of("rating", "weight", carried_kg, rated_kg, unit="kg", wanted=1.0, words=words)


def lap_tray_checks(
    pushes: Pushes, height_m: float, mass_kg: float | None, leg_m: float | None = None
) -> tuple[Check, ...]:
    """Whether a tray on the lap will do: light pushes only, and none that tips it over a thigh.

    Parameters
    ----------
    pushes : Pushes
    height_m : float
        Contact point above the thighs.
    mass_kg : float or None
        Of the tray and all on it; None when it was not weighed.
    leg_m : float, optional
        From its middle to the middle of a thigh, over which it tips; a usual one, marked, when not measured.

    Returns
    -------
    tuple of Check
        The push in play as measured, then tipping for each kind of push.

    Notes
    -----
    Source: equilibrium about the thigh [hibbeler-statics]; the limit of 3 N is common practice [fitting-practice].

    Examples
    --------
    >>> [(check.what, check.holds) for check in lap_tray_checks(Pushes(0.5), 0.09, 1.6)]
    [('lap_tray', True), ('tipping', True)]
    """
    hardest = max(pushes.working_n, pushes.involuntary_n)
    push: Literal["working", "involuntary"] = "involuntary" if pushes.involuntary_n > pushes.working_n else "working"
    words = message(MountChecks.lap_tray, limit_n=LAP_TRAY_N, hardest_n=hardest)
    out = [check_of("lap_tray", push, hardest, LAP_TRAY_N, unit="n", wanted=1.0, words=words)]
    if mass_kg is None:
        lacks = message(MountChecks.lacks_lap_mass)
        return (
            *out,
            *(
                unknown_check("tipping", kind, force * height_m, force, unit="nm", wanted=FRICTION_FACTOR, lacks=lacks)
                for kind, force in pushes.counted()
            ),
        )
    side = THIGHS_M if leg_m is None else leg_m
    told = message(MountAssumed.thighs, apart_m=2 * THIGHS_M) if leg_m is None else None
    tips = tipping_checks(pushes, height_m, mass_kg, 2 * side, thing="lap_tray")
    return (*out, *(replace(check, assumed=told) for check in tips))


def surface_checks(
    surface: Surface,
    pushes: Pushes,
    height_m: float,
    carried_kg: float,
    resting_kg: float = 0.0,
    leg_m: float | None = None,
) -> tuple[Check, ...]:
    """Whether the table or tray that a base stands on stays itself.

    Parameters
    ----------
    surface : Surface
    pushes : Pushes
    height_m : float
        Contact point above it.
    carried_kg : float
        Of the devices on it.
    resting_kg : float, default 0.0
        Of the arm that rests on it.
    leg_m : float, optional
        Of a lap tray: from its middle to the middle of a thigh; a usual one, marked, when not measured.

    Returns
    -------
    tuple of Check
        None for a floor; for a table that was not weighed, its rating alone.
    """
    if surface.kind == "floor":
        return ()
    if surface.kind == "lap tray":
        whole = None if surface.mass_kg is None else surface.mass_kg + carried_kg
        rated = () if surface.rated_kg is None else (rating_check(carried_kg, surface.rated_kg, Name(surface.name)),)
        return (*lap_tray_checks(pushes, height_m, whole, leg_m), *rated)
    if surface.kind == "table" and surface.mass_kg is None and not surface.fastened:
        return (
            ()
            if surface.rated_kg is None
            else (rating_check(carried_kg + resting_kg, surface.rated_kg, Name(surface.name)),)
        )
    return tray_checks(
        pushes,
        mass_kg=surface.mass_kg,
        carried_kg=carried_kg,
        resting_kg=resting_kg,
        fastened=surface.fastened,
        friction=surface.friction,
        rated_kg=surface.rated_kg,
        thing=Name(surface.name),
    )


def stand_checks(
    mount: Mount,
    pushes: Pushes,
    height_m: float,
    carried_kg: float,
    out_m: float = 0.0,
    floor: Material | None = None,
    *,
    pressed: bool = False,
) -> tuple[Check, ...]:
    """Whether a floor stand or floor plate slides or tips.

    Parameters
    ----------
    mount : Mount
        With size, mass and friction.
    pushes : Pushes
    height_m : float
        Contact point above the floor.
    carried_kg : float
        Of the devices on it.
    out_m : float, default 0.0
        How far from the middle of its foot they hang.
    floor : str, optional
        What the floor is of, when friction was not measured.
    pressed : bool, default False
        Whether a working push goes as hard into it as along it: a press from above.

    Returns
    -------
    tuple of Check
        A check that says what is missing, when size or mass are not known.

    Notes
    -----
    Source: equilibrium about the edge of the foot [hibbeler-statics].

    Examples
    --------
    >>> plate = Mount(name="plate", kind="floor plate", size_m=(0.45, 0.35), mass_kg=4.2, friction=0.9)
    >>> [(check.what, check.holds) for check in stand_checks(plate, Pushes(10.0), 0.05, 0.7)]
    [('sliding', True), ('tipping', True)]
    """
    if mount.size_m is None or mount.mass_kg is None:
        lacks = message(MountChecks.lacks_stand, mount=Name(mount.name))
        return tuple(
            unknown_check("tipping", push, force * height_m, force, unit="nm", wanted=FRICTION_FACTOR, lacks=lacks)
            for push, force in pushes.counted()
        )
    name = Name(mount.name)
    pull = message(ToMeasure.friction_under, thing=name)
    known = mount.friction is not None
    friction, assumed = (mount.friction, None) if known else assumed_friction(floor, measure=pull)
    depth = min(mount.size_m)
    overhang = carried_kg * STANDARD_GRAVITY * (out_m - depth / 2)
    return (
        *sliding_checks(pushes, mount.mass_kg + carried_kg, friction, thing=name, assumed=assumed, pressed=pressed),
        *tipping_checks(pushes, height_m, mount.mass_kg, depth, overhang_nm=overhang, thing=name),
    )


def axis_moment_nm(
    clamp_m: Sequence[float],
    along: Sequence[float],
    contact_m: Sequence[float],
    push_n: float,
    weights: Sequence[Weight],
    tilt_rad: float = 0.0,
) -> float:
    """Largest moment that turns a clamp about its tube, whichever way the push goes.

    With u along the tube, a the moment of the weights and r the way to the contact: abs(u a) + abs(u x r) F.

    Parameters
    ----------
    clamp_m, contact_m : sequence of 3 floats
        Clamp, and contact point.
    along : sequence of 3 floats
        Direction of the tube, of any length.
    push_n : float
        0 or more.
    weights : sequence of (point, kg)
        All that hangs from the clamp.
    tilt_rad : float, default 0.0
        Of the seat, when all of it tilts with the seat.

    Returns
    -------
    float
        In N m.

    Raises
    ------
    BadInput
        A tube without length.

    Notes
    -----
    Source: moment of a force about an axis [hibbeler-statics].

    Examples
    --------
    >>> round(axis_moment_nm((0, 0, 0), (0, 1, 0), (0.3, 0.2, 0.0), 10.0, []), 3)
    3.0
    """
    axis = np.asarray(along, dtype=np.float64)
    length = float(np.linalg.norm(axis))
    if length == 0.0:
        raise BadInput(
            Problem(
                message(MountProblems.part, part="tube"),
                message(MountProblems.one_point),
                message(MountProblems.with_direction),
            )
        )
    axis = axis / length
    arm = np.asarray(contact_m, dtype=np.float64) - np.asarray(clamp_m, dtype=np.float64)
    weight = abs(float(weight_moment_nm(clamp_m, weights, tilt_rad) @ axis))
    return weight + push_n * float(np.linalg.norm(np.cross(axis, arm)))


def clamp_slip_nm(clamp_n: float, friction: float, diameter_m: float) -> float:
    """Moment about the tube at which a clamp of two jaws slips.

    Parameters
    ----------
    clamp_n : float
        Force with which each jaw presses.
    friction : float
        Between jaw and tube.
    diameter_m : float
        Of the tube.

    Returns
    -------
    float
        Two jaws, each friction times force at half the diameter.

    Notes
    -----
    Source: dry friction [hibbeler-statics].

    Examples
    --------
    >>> round(clamp_slip_nm(400.0, 0.5, 0.025), 2)
    5.0
    """
    return 2 * friction * clamp_n * diameter_m / 2


def clamp_checks(
    clamp_m: Sequence[float],
    along: Sequence[float],
    contact_m: Sequence[float],
    pushes: Pushes,
    weights: Sequence[Weight],
    slips_nm: float | None,
    *,
    tilts_rad: Sequence[float] = (0.0,),
    lets_go: bool = False,
) -> tuple[Check, ...]:
    """Whether a clamp turns on its tube.

    Parameters
    ----------
    clamp_m, contact_m : sequence of 3 floats
        Clamp, and contact point.
    along : sequence of 3 floats
        Direction of the tube.
    pushes : Pushes
    weights : sequence of (point, kg)
        All that hangs from the clamp.
    slips_nm : float or None
        Moment at which it turns: the clamp joint's own figure, or `clamp_slip_nm`.
    tilts_rad : sequence of floats, default (0.0,)
        Tilts of the seat, when all of it tilts.
    lets_go : bool, default False
        Whether it may give way to a spasm on purpose.

    Returns
    -------
    tuple of Check
        One for each kind of push.
    """
    out = []
    for push, force in pushes.counted():
        load = max(axis_moment_nm(clamp_m, along, contact_m, force, weights, tilt) for tilt in tilts_rad)
        wanted = WANTED[push]
        if slips_nm is None:
            lacks = message(MountChecks.lacks_clamp)
            out.append(unknown_check("clamp", push, load, force, unit="nm", wanted=wanted, lacks=lacks))
            continue
        factor = slips_nm / load if load > 0 else math.inf
        on_purpose = push == "involuntary" and lets_go and factor < wanted
        words = message(
            MountChecks.clamp, load_nm=load, held_nm=slips_nm, safety_factor=factor if load > 0 else None, required_factor=wanted,
            lets_go=on_purpose,
        )  # fmt: skip
        check = check_of("clamp", push, load, slips_nm, unit="nm", wanted=wanted, words=words)
        out.append(replace(check, holds=True) if on_purpose else check)
    return tuple(out)


def stability_angle_rad(from_axis_m: float, height_m: float) -> float:
    """Slope at which a chair with its wheels held starts to tip.

    The platform of the test tilts until the line of the weight passes through the tipping axis. The seating clinic decides;
    this only tells by how much a mount changes it.

    Parameters
    ----------
    from_axis_m : float
        Level distance of the centre of mass of chair, player and kit from the tipping axis (line of the wheels' contact).
    height_m : float
        Of the centre of mass above the ground.

    Returns
    -------
    float
        atan(distance / height), in radian; negative when it already lies beyond the axis.

    Raises
    ------
    BadInput
        A height of 0 or less.

    Notes
    -----
    Source: tipping angle of the static test, wheels held, tyres and frame stiff [iso-7176-1]; formula: equilibrium about the axis
    [hibbeler-statics].

    Examples
    --------
    >>> round(math.degrees(stability_angle_rad(0.2, 0.6)), 1)
    18.4
    """
    if not height_m > 0:
        raise BadInput(
            Problem(
                message(MountProblems.part, part="centre_of_mass"),
                message(MountProblems.length, length_m=height_m),
                message(MountProblems.some_length),
            )
        )
    return math.atan2(from_axis_m, height_m)
