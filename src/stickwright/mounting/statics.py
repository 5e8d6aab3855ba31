"""Whether the joints of an arm hold: weight and the hardest push, from the worst side, against what each joint holds.

Rules of this file: a wanted push counts one and a half times and must be held twofold; a spasm counts as it was measured and
must be held 1.3-fold, or the arm lets go on purpose. A figure that nobody gave is not made up.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Literal, cast

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.message import Message, message
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.codes.mount_checks import CheckName, MountChecks
from stickwright.codes.mount_problems import MountProblems
from stickwright.errors import BadInput, Problem
from stickwright.model.mounting import Check
from stickwright.units import STANDARD_GRAVITY, to_si

__all__ = [
    "LIGHT_PUSH_N",
    "PUSH_COUNTS",
    "WANTED",
    "Pushes",
    "ReleaseWindow",
    "arm_weights",
    "check_of",
    "joint_checks",
    "joint_moment_nm",
    "name_of",
    "release_check",
    "release_window",
    "unknown_check",
    "weight_moment_nm",
]  # fmt: skip

Array = NDArray[np.float64]
Weight = tuple[Sequence[float], float]
Kind = Literal["working", "involuntary", "weight", ""]

PUSH_COUNTS = 1.5
"""How often a comfortable push counts: in the heat of a game people push harder than when asked [fitting-practice]."""
WANTED: dict[str, float] = {"working": 2.0, "involuntary": 1.3, "weight": 2.0}
"""Least factor of a joint for each kind of push [fitting-practice]."""
RELEASE_OVER_WORK = 1.5
"""A coupling lets go at no less than so many times what it carries in play [fitting-practice]."""
LIGHT_PUSH_N = 3.0
"""Up to here a push needs no figures of what holds it [fitting-practice]."""


@dataclass(frozen=True)
class Pushes:
    """The hardest pushes at a site.

    Parameters
    ----------
    working_n : float
        Strongest comfortable push, in any direction.
    involuntary_n : float, default 0.0
        Strongest spasm, cough or jerk; 0 when there is none.
    """

    working_n: float
    involuntary_n: float = 0.0

    def counted(self) -> tuple[tuple[Literal["working", "involuntary"], float], ...]:
        """Each kind of push and the force, in newton, that a mount must be judged by."""
        spasm: tuple[tuple[Literal["working", "involuntary"], float], ...] = (
            (("involuntary", self.involuntary_n),) if self.involuntary_n > 0 else ()
        )
        return (("working", PUSH_COUNTS * self.working_n), *spasm)

    @property
    def hardest_n(self) -> float:
        """The largest of them."""
        return max(force for _, force in self.counted())


@dataclass(frozen=True)
class ReleaseWindow:
    """Between what moments at a joint or coupling the release may be set."""

    low_nm: float
    """Below this it would let go in play or under its load."""
    high_nm: float
    """Above this a push along with the weight would exceed the agreed force; infinity when none is agreed."""
    any_way_high_nm: float
    """The same for a push against the weight, which the weight holds back: the strictest of all directions."""
    weight_nm: float
    reach_m: float
    """From the joint to the contact point."""
    limit_n: float | None

    @property
    def empty(self) -> bool:
        """Whether no setting would do."""
        return self.high_nm < self.low_nm

    def force_n(self, set_nm: float) -> tuple[float, float]:
        """Push at which a setting lets go: along with the weight, and against it.

        Parameters
        ----------
        set_nm : float
            Moment at which the joint slips.
        """
        return (set_nm - self.weight_nm) / self.reach_m, (set_nm + self.weight_nm) / self.reach_m

    @property
    def words(self) -> Message:
        """The window in a sentence."""
        if self.limit_n is None:
            return message(MountChecks.release_ask, low_nm=self.low_nm)
        if self.empty:
            return message(MountChecks.release_none, low_nm=self.low_nm, limit_n=self.limit_n, high_nm=self.high_nm)
        against = self.force_n(self.low_nm)[1]
        return message(
            MountChecks.release_between,
            low_nm=self.low_nm, high_nm=self.high_nm, limit_n=self.limit_n,
            against_n=against if against > self.limit_n * (1 + 1e-9) else None,
        )  # fmt: skip


def _down(tilt_rad: float) -> Array:
    """Which way weight pulls, seen from a seat that is tilted back."""
    return np.array([0.0, -math.sin(tilt_rad), -math.cos(tilt_rad)])


def weight_moment_nm(joint_m: Sequence[float], weights: Sequence[Weight], tilt_rad: float = 0.0) -> Array:
    """Moment of weights about a point.

    Parameters
    ----------
    joint_m : sequence of 3 floats
        The point.
    weights : sequence of (point, kg)
        Where each mass is, in metre, and the mass.
    tilt_rad : float, default 0.0
        Tilt of the seat, when the points are told with the seat level and tilt with it.

    Returns
    -------
    array, shape (3,)
        In N m.

    Examples
    --------
    >>> print(weight_moment_nm((0, 0, 0), [((0.2, 0.0, 0.1), 1.0)]).round(3))
    [0.    1.961 0.   ]
    """
    total = np.zeros(3)
    pull = STANDARD_GRAVITY * _down(tilt_rad)
    for point, mass in weights:
        total += mass * np.cross(np.asarray(point, dtype=np.float64) - np.asarray(joint_m, dtype=np.float64), pull)
    return total


def joint_moment_nm(
    joint_m: Sequence[float],
    end_m: Sequence[float],
    push_n: float,
    weights: Sequence[Weight],
    tilt_rad: float = 0.0,
) -> float:
    """Largest moment about a joint, whichever way the push goes.

    With a the moment of the weights and r the way from joint to contact, r x F is any vector across r of length at most
    abs(r) F. So the part of a along r stays, and the part across r grows by abs(r) F when the push goes with it:
    sqrt(a_along^2 + (abs(a_across) + abs(r) F)^2).

    Parameters
    ----------
    joint_m, end_m : sequence of 3 floats
        Joint, and contact point that is pushed.
    push_n : float
        0 or more.
    weights : sequence of (point, kg)
        What hangs beyond the joint.
    tilt_rad : float, default 0.0
        Of the seat, when the points tilt with it.

    Returns
    -------
    float
        In N m.

    Notes
    -----
    Source: moments of forces in space [hibbeler-statics].

    Examples
    --------
    A cough of 25 N at 340 mm, and a weight that alone makes 1.8 N m:

    >>> weight = [((0.17, 0.0, 0.0), 1.8 / 0.17 / 9.80665)]
    >>> round(joint_moment_nm((0, 0, 0), (0.34, 0.0, 0.0), 25.0, weight), 1)
    10.3
    """
    arm = np.asarray(end_m, dtype=np.float64) - np.asarray(joint_m, dtype=np.float64)
    length = float(np.linalg.norm(arm))
    moment = weight_moment_nm(joint_m, weights, tilt_rad)
    if length == 0.0:
        return float(np.linalg.norm(moment))
    along = float(moment @ arm) / length
    across = float(np.linalg.norm(moment - along * arm / length))
    return math.hypot(along, across + length * push_n)


def arm_weights(
    points_m: Sequence[Sequence[float]], mount_kg: float, device_m: Sequence[float], device_kg: float
) -> tuple[Weight, ...]:
    """Masses of an arm and of what it carries, each where it hangs.

    Parameters
    ----------
    points_m : sequence of points
        Clamp, elbows, end.
    mount_kg : float
        Of the whole arm: shared among the links by length, each at its middle.
    device_m : sequence of 3 floats
        Middle of the stick or switch.
    device_kg : float

    Returns
    -------
    tuple of (point, kg)
        Links from the clamp on, then the device.
    """
    points = [np.asarray(point, dtype=np.float64) for point in points_m]
    lengths = [float(np.linalg.norm(b - a)) for a, b in pairwise(points)]
    whole = sum(lengths)
    links = [
        (tuple((a + b) / 2), mount_kg * length / whole)
        for (a, b), length in zip(pairwise(points), lengths, strict=True)
        if whole > 0
    ]
    return (*links, (tuple(float(value) for value in device_m), device_kg))


def check_of(
    what: str,
    push: Kind,
    load_si: float,
    limit_si: float,
    *,
    unit: str,
    wanted: float,
    words: Message,
    assumed: Message | None = None,
) -> Check:
    """A check with its factor and whether it holds.

    Parameters
    ----------
    what : str
        What must hold.
    push : {"working", "involuntary", "weight", ""}
        What loads it.
    load_si, limit_si : float
        In SI; the check tells them in `unit`.
    unit : str
        Ending as in `units`.
    wanted : float
        Least factor.
    words : Message
        The sentence.
    assumed : Message, optional
        What was assumed.

    Returns
    -------
    Check
    """
    one = to_si(1.0, unit)
    factor = limit_si / load_si if load_si > 0 else math.inf
    holds = factor >= wanted * (1 - 1e-12)
    return Check(
        what=what,
        push=push,
        load=load_si / one,
        limit=limit_si / one,
        unit=unit,
        factor=factor,
        wanted=wanted,
        holds=holds,
        words=words,
        assumed=assumed,
    )


def name_of(what: str) -> tuple[CheckName, int]:
    """What a check is called, and which joint it is of: 0 where there is only one.

    Parameters
    ----------
    what : str
        As of a check: 'joint_2'.

    Examples
    --------
    >>> name_of("joint_2"), name_of("fastener_peel")
    (('joint', 2), ('fastener_peel', 0))
    """
    name, _, number = what.rpartition("_")
    return (cast(CheckName, name), int(number)) if number.isdigit() else (cast(CheckName, what), 0)


def unknown_check(
    what: str, push: Kind, load_si: float, push_n: float, *, unit: str, wanted: float, lacks: Message
) -> Check:
    """A check whose limit nobody gave: it holds for light pushes only.

    Parameters
    ----------
    what : str
        What must hold.
    push : {"working", "involuntary", "weight", ""}
        What loads it.
    load_si : float
        In SI.
    push_n : float
        Force at the contact.
    unit : str
        Ending as in `units`.
    wanted : float
        Least factor, were the limit known.
    lacks : Message
        What is not known and how to find out, a clause.

    Returns
    -------
    Check
        Limit and factor NaN.
    """
    light = push_n <= LIGHT_PUSH_N
    name, number = name_of(what)
    words = message(
        MountChecks.unknown, what=name, number=number, push_n=push_n, lacks=lacks, light=light, load_nm=load_si if unit == "nm" else None,
        load_n=load_si if unit == "n" else None, load_pa=load_si if unit == "kpa" else None,
    )  # fmt: skip
    return Check(
        what=what,
        push=push,
        load=load_si / to_si(1.0, unit),
        limit=math.nan,
        unit=unit,
        factor=math.nan,
        wanted=wanted,
        holds=light,
        words=words,
        assumed=lacks,
    )


def _holding_of(holding_nm: Sequence[float], joints: int) -> list[tuple[float, Message | None]]:
    """What each joint holds, and what was assumed for it."""
    if len(holding_nm) > joints:
        raise BadInput(
            Problem(
                ("mount", "holding_nm"),
                message(MountProblems.holding, count=len(holding_nm)),
                message(MountProblems.holding_for, joints=joints),
            )
        )
    if not holding_nm:
        return [(math.nan, None)] * joints
    if len(holding_nm) == 1:
        return [(holding_nm[0], None)] * joints
    weakest = min(holding_nm)
    missing = message(MountAssumed.weakest_joint, held_nm=weakest)
    return [(value, None) for value in holding_nm] + [(weakest, missing)] * (joints - len(holding_nm))


def joint_checks(
    points_m: Sequence[Sequence[float]],
    holding_nm: Sequence[float],
    pushes: Pushes,
    weights: Sequence[Weight],
    *,
    contact_m: Sequence[float] | None = None,
    tilts_rad: Sequence[float] = (0.0,),
    lets_go: bool = False,
    names: Sequence[str] = (),
) -> tuple[Check, ...]:
    """Each joint against the wanted push and against the spasm, from the worst side and at the worst tilt.

    Parameters
    ----------
    points_m : sequence of points
        The joints, from the clamp to the plate at the end.
    holding_nm : sequence of floats
        Moment that each joint holds, from the clamp; one figure for all; none when not known.
    pushes : Pushes
    weights : sequence of (point, kg)
        All masses of arm and device. A joint carries those that lie beyond it: link i's mass hangs from joint i, as
        `arm_weights` gives them; what comes after the links hangs from all.
    contact_m : sequence of 3 floats, optional
        Where the push acts; the last joint when not said.
    tilts_rad : sequence of floats, default (0.0,)
        Tilts of the seat to look at, when the arm tilts with it.
    lets_go : bool, default False
        Whether a breakaway coupling, or the joint itself on purpose, may give way to a spasm.
    names : sequence of str, optional
        Of the joints; 'joint_1', 'joint_2' and so on when not said.

    Returns
    -------
    tuple of Check
        For each joint the working push, then the involuntary one.

    Raises
    ------
    BadInput
        More holding figures than joints.

    Notes
    -----
    Source: `joint_moment_nm`; factors are common practice [fitting-practice]. Assumed: each joint holds the same about every
    axis, which is safe for a hinge, whose frame carries part of the moment.

    Examples
    --------
    >>> arm = joint_checks([(0, 0, 0)], [7.0], Pushes(2.4, 25.0), [((0.17, 0, 0), 1.08)], contact_m=(0.34, 0, 0))
    >>> [(check.push, round(check.times, 1), check.holds) for check in arm]
    [('working', 2.3, True), ('involuntary', 0.7, False)]
    """
    contact = points_m[-1] if contact_m is None else contact_m
    holding = _holding_of(holding_nm, len(points_m))
    out = []
    for place, (joint, (held, assumed)) in enumerate(zip(points_m, holding, strict=True)):
        name = names[place] if place < len(names) else f"joint_{place + 1}"
        carried = [*weights[place:]] if len(weights) >= len(points_m) else list(weights)
        for push, force in pushes.counted():
            load = max(joint_moment_nm(joint, contact, force, carried, tilt) for tilt in tilts_rad)
            out.append(_joint_check(name, push, load, held, force, lets_go=lets_go, assumed=assumed))
    return tuple(out)


def _joint_check(
    name: str,
    push: Literal["working", "involuntary"],
    load: float,
    held: float,
    force: float,
    *,
    lets_go: bool,
    assumed: Message | None,
) -> Check:
    wanted = WANTED[push]
    if math.isnan(held):
        return unknown_check(name, push, load, force, unit="nm", wanted=wanted, lacks=message(MountChecks.lacks_joint))
    factor = held / load if load > 0 else math.inf
    what, number = name_of(name)
    words = message(
        MountChecks.joint, what=what, number=number, load_nm=load, push_n=force, held_nm=held,
        safety_factor=factor if load > 0 else None, required_factor=wanted,
        lets_go=factor < wanted and push == "involuntary" and lets_go,
    )  # fmt: skip
    check = check_of(name, push, load, held, unit="nm", wanted=wanted, words=words, assumed=assumed)
    if push == "involuntary" and lets_go and not check.holds:
        return replace(check, holds=True)
    return check


def release_window(weight_nm: float, working_n: float, reach_m: float, limit_n: float | None) -> ReleaseWindow:
    """Moments between which a joint or coupling may be set to let go.

    Lower end: 1.5 times what it carries in play, weight and push together. Upper end: what the agreed force makes along with
    the weight. A push against the weight has to lift it too; that stricter end is told beside it.

    Parameters
    ----------
    weight_nm : float
        Moment of the weight alone.
    working_n : float
        Strongest comfortable push.
    reach_m : float
        From the joint to the contact point.
    limit_n : float or None
        Force at the contact that the clinic agrees to; None when it has not been asked.

    Returns
    -------
    ReleaseWindow

    Raises
    ------
    BadInput
        A reach of 0 or less.

    Notes
    -----
    Source: equilibrium of moments [hibbeler-statics]; the 1.5 is common practice [fitting-practice].

    Examples
    --------
    >>> window = release_window(1.8, 2.4, 0.34, 12.0)
    >>> round(window.low_nm, 1), round(window.high_nm, 1), window.empty
    (3.9, 5.9, False)
    """
    if not reach_m > 0:
        raise BadInput(
            Problem(
                message(MountProblems.part, part="release"),
                message(MountProblems.joint_to_contact, reach_m=reach_m),
                message(MountProblems.some_length),
            )
        )
    low = RELEASE_OVER_WORK * (weight_nm + working_n * reach_m)
    if limit_n is None:
        return ReleaseWindow(low, math.inf, math.inf, weight_nm, reach_m, None)
    return ReleaseWindow(low, weight_nm + limit_n * reach_m, limit_n * reach_m - weight_nm, weight_nm, reach_m, limit_n)


def release_check(window: ReleaseWindow, settable_n: tuple[float, float] | None = None) -> Check:
    """Whether a release can be set so that it carries its load and still lets go in time.

    Parameters
    ----------
    window : ReleaseWindow
    settable_n : tuple of 2 floats, optional
        Least and most force, at the contact, at which the coupling can be set to let go.

    Returns
    -------
    Check
        Load: the least moment it must carry; limit: the most it may.
    """
    low, high = window.low_nm, window.high_nm
    words = window.words
    if settable_n is not None:
        least, most = (force * window.reach_m for force in settable_n)
        if most < low:
            words = message(MountChecks.release_too_weak, most_n=settable_n[1], needed_n=low / window.reach_m)
        elif least > high:
            words = message(MountChecks.release_too_strong, least_n=settable_n[0], allowed_n=high / window.reach_m)
        low, high = max(low, least), min(high, most)
    assumed = message(MountAssumed.release_limit) if window.limit_n is None else None
    return check_of("release", "", low, high, unit="nm", wanted=1.0, words=words, assumed=assumed)
