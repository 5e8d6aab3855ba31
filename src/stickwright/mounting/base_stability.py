"""Whether a base stays where it is put: sliding, tipping, and what fixes it, on a plate, tray, table or floor.

Rules of this file: the strength of a fastener comes from its own label and is used to a third, a tenth of it for loads that stand;
where the label was not read, nothing but a light push is trusted to it. Friction is used to two thirds.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal, NamedTuple

from stickwright.codes.message import Message, Name, message
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.codes.mount_checks import MountChecks, Thing
from stickwright.model.kit import Fastener
from stickwright.model.mounting import Check
from stickwright.mounting.statics import Pushes, check_of, unknown_check
from stickwright.units import STANDARD_GRAVITY

__all__ = [
    "CREEP_SHARE", "FASTENER_FACTOR", "FRICTION_FACTOR", "Foot", "fastener_checks", "foot_checks", "patch_needed_m", "sliding_checks",
    "tipping_checks", "with_fastener",
]  # fmt: skip

FASTENER_FACTOR = 3.0
"""Least factor on a fastener's strength [fitting-practice]."""
FRICTION_FACTOR = 1.5
"""Least factor on friction, and against tipping [handbook-friction]."""
CREEP_SHARE = 0.1
"""Share of a fastener's strength for a load that stands: under a constant load it creeps [handbook-fasteners]."""
_REMOVABLE = ("hook-and-loop", "mushroom-head", "screw", "suction", "strap")


@dataclass(frozen=True)
class Foot:
    """How a base stands, or what fixes it.

    Parameters
    ----------
    base_m : tuple of 2 floats
        Length and width of the underside.
    height_m : float
        Contact point above the underside.
    mass_kg : float
        Of what stands on it.
    fastener : Fastener, optional
        What fixes it.
    patch_m : tuple of 2 floats, optional
        Of the fastener; the whole underside when not said.
    friction : float, optional
        Under it, as a share of the weight.
    assumed : Message, optional
        What was assumed for the friction.
    tilt_rad : float, default 0.0
        Slope of what it stands on.
    down_n : float, default 0.0
        What else presses it down while it is pushed.
    thing : Name or str, default 'base'
        What it is called in the sentences.
    pressed : bool, default False
        Whether a working push goes as hard into it as along it: a press from above.
    """

    base_m: tuple[float, float]
    height_m: float
    mass_kg: float
    fastener: Fastener | None = None
    patch_m: tuple[float, float] | None = None
    friction: float | None = None
    assumed: Message | None = None
    tilt_rad: float = 0.0
    down_n: float = 0.0
    thing: Thing = "base"
    pressed: bool = False

    @property
    def patch(self) -> tuple[float, float]:
        """Of the fastener, longer side first."""
        long, short = sorted(self.patch_m or self.base_m, reverse=True)
        return long, short


def _long_short(size_m: Sequence[float]) -> tuple[float, float]:
    long, short = sorted(size_m, reverse=True)
    return long, short


def _known(factor: float) -> float | None:
    """The factor, or that nothing loads it."""
    return factor if math.isfinite(factor) else None


def sliding_checks(
    pushes: Pushes,
    mass_kg: float,
    friction: float | None,
    *,
    down_n: float = 0.0,
    tilt_rad: float = 0.0,
    thing: Thing = "base",
    what: str = "sliding",
    assumed: Message | None = None,
    pressed: bool = False,
) -> tuple[Check, ...]:
    """Whether friction keeps a thing in its place: push and down-slope weight against friction times what presses it down.

    Parameters
    ----------
    pushes : Pushes
    mass_kg : float
        Of all that stands on the ground together.
    friction : float or None
        As a share of the weight; None when not known.
    down_n : float, default 0.0
        What else presses it down.
    tilt_rad : float, default 0.0
        Slope of the ground.
    thing : Name or str, default 'base'
        What slides.
    what : str, default 'sliding'
        What the check is called.
    assumed : Message, optional
        What was assumed.
    pressed : bool, default False
        Whether a working push goes as hard into it as along it, and so adds to what presses it down; a spasm never does.

    Returns
    -------
    tuple of Check
        One for each kind of push.

    Notes
    -----
    Source: dry friction [hibbeler-statics]; factor [handbook-friction].

    Examples
    --------
    A tray of 2.6 kg with a stick of 0.9 kg and an arm of 1.5 kg on anti-slip sheet, hit by 85 N:

    >>> hit = sliding_checks(Pushes(0.0, 85.0), 2.6 + 0.9 + 1.5, 0.9, thing="tray")[1]
    >>> round(hit.limit), hit.holds
    (44, False)
    """
    weight = mass_kg * STANDARD_GRAVITY
    slope = weight * math.sin(abs(tilt_rad))
    out = []
    for push, force in pushes.counted():
        load = force + slope
        if friction is None:
            lacks = message(MountChecks.lacks_friction)
            out.append(unknown_check(what, push, load, force, unit="n", wanted=FRICTION_FACTOR, lacks=lacks))
            continue
        into = force if pressed and push == "working" else 0.0
        grip = friction * (weight * math.cos(tilt_rad) + down_n + into)
        factor = grip / load if load > 0 else math.inf
        words = message(
            MountChecks.sliding,
            thing=thing, load_n=load, grip_n=grip, safety_factor=_known(factor), required_factor=FRICTION_FACTOR,
        )  # fmt: skip
        out.append(check_of(what, push, load, grip, unit="n", wanted=FRICTION_FACTOR, words=words, assumed=assumed))
    return tuple(out)


def tipping_checks(
    pushes: Pushes,
    height_m: float,
    mass_kg: float,
    depth_m: float,
    *,
    overhang_nm: float = 0.0,
    thing: Thing = "base",
    what: str = "tipping",
) -> tuple[Check, ...]:
    """Whether the weight keeps a thing from tipping over its shorter side: F h against m g b/2.

    Parameters
    ----------
    pushes : Pushes
    height_m : float
        At which it is pushed.
    mass_kg : float
        Its own, in the middle of its foot.
    depth_m : float
        Shorter side of its foot.
    overhang_nm : float, default 0.0
        Moment about its edge of what hangs over; negative when it lies inside.
    thing : Name or str, default 'base'
        What tips.
    what : str, default 'tipping'
        What the check is called.

    Returns
    -------
    tuple of Check
        One for each kind of push.

    Notes
    -----
    Source: equilibrium about the edge [hibbeler-statics].

    Examples
    --------
    >>> check = tipping_checks(Pushes(2.0), 0.15, 18 / 9.80665, 0.12)[0]
    >>> round(check.load, 2), round(check.limit, 2), check.holds
    (0.45, 1.08, True)
    """
    kept = mass_kg * STANDARD_GRAVITY * depth_m / 2
    out = []
    for push, force in pushes.counted():
        load = max(0.0, force * height_m + overhang_nm)
        factor = kept / load if load > 0 else math.inf
        words = message(
            MountChecks.tipping, thing=thing, push_n=force, height_m=height_m, load_nm=load, kept_nm=kept,
            safety_factor=_known(factor), required_factor=FRICTION_FACTOR,
        )  # fmt: skip
        out.append(check_of(what, push, load, kept, unit="nm", wanted=FRICTION_FACTOR, words=words))
    return tuple(out)


def patch_needed_m(
    force_n: float, height_m: float, fastener: Fastener, patch_m: tuple[float, float]
) -> tuple[float, float] | None:
    """Smallest patch of the same proportions that a push allows.

    Shear wants an area of 3 F/s, overturning a short side of (18 F h/(q t))^(1/3), q the long side over the short one; the
    peel line 3 F h/p of area. The largest of them counts.

    Parameters
    ----------
    force_n : float
        The push.
    height_m : float
        Contact point above the patch.
    fastener : Fastener
    patch_m : tuple of 2 floats
        The patch there is.

    Returns
    -------
    tuple of 2 floats or None
        Long and short side; None when the label was not read.

    Notes
    -----
    Source: as `fastener_checks`, solved for the size.

    Examples
    --------
    >>> tape = Fastener(name="tape", kind="hook-and-loop", shear_pa=60e3, tension_pa=35e3)
    >>> print([round(1000 * side) for side in patch_needed_m(85.0, 0.095, tape, (0.15, 0.11))])
    [198, 145]
    """
    if fastener.shear_pa is None or fastener.tension_pa is None:
        return None
    long, short = sorted(patch_m, reverse=True)
    q = long / short
    by_shear = math.sqrt(FASTENER_FACTOR * force_n / fastener.shear_pa / q)
    by_tension = (6 * FASTENER_FACTOR * force_n * height_m / (q * fastener.tension_pa)) ** (1 / 3)
    by_peel = (
        math.sqrt(FASTENER_FACTOR * force_n * height_m / fastener.peel_n_per_m / q) if fastener.peel_n_per_m else 0.0
    )
    side = max(by_shear, by_tension, by_peel)
    return q * side, side


def fastener_checks(
    pushes: Pushes,
    height_m: float,
    fastener: Fastener,
    patch_m: tuple[float, float],
    *,
    standing_n: float = 0.0,
    base_m: tuple[float, float] | None = None,
) -> tuple[Check, ...]:
    """Shear, overturning and peel of a fastener under a push at a height, each from the worst side.

    Shear F/A; overturning about the short side, peak tension 6 F h/(L b^2); peel along the long edge, F h/(L b) for each
    metre, when the label gives a peel strength.

    Parameters
    ----------
    pushes : Pushes
    height_m : float
        Contact point above the patch.
    fastener : Fastener
        With the strengths of its label.
    patch_m : tuple of 2 floats
        Length and width of the patch.
    standing_n : float, default 0.0
        Load along the patch that never ends: the weight on a slope.
    base_m : tuple of 2 floats, optional
        Of the base, to say whether a larger patch would find room.

    Returns
    -------
    tuple of Check
        For each kind of push shear, tension and, where known, peel; then the standing load when there is one.

    Notes
    -----
    Source: bending stress of a rectangle, M b/2 / I [hibbeler-mechanics]; factor 3, and a tenth for standing loads
    [handbook-fasteners]. The weight's own pressure, which helps, is left out. Assumed: the base is stiff and the patch closed
    all over.

    Examples
    --------
    >>> tape = Fastener(name="tape", kind="hook-and-loop", shear_pa=60e3, tension_pa=35e3)
    >>> for check in fastener_checks(Pushes(0.0, 85.0), 0.095, tape, (0.15, 0.11))[2:]:
    ...     print(check.what, round(check.load, 1), round(check.times, 1), check.holds)
    fastener_shear 5.2 11.6 True
    fastener_tension 26.7 1.3 False
    """
    long, short = sorted(patch_m, reverse=True)
    area = long * short
    out: list[Check] = []
    for push, force in pushes.counted():
        pushed = _Pushed(fastener, push, force, height_m, (long, short), base_m)
        moment = force * height_m
        out.append(_strength(pushed, "fastener_shear", force / area, fastener.shear_pa))
        out.append(_strength(pushed, "fastener_tension", 6 * moment / (long * short**2), fastener.tension_pa))
        if fastener.peel_n_per_m is not None:
            out.append(_peel(pushed, moment / area, fastener.peel_n_per_m))
    if standing_n > 0:
        out.append(_standing(fastener, standing_n, (long, short)))
    return tuple(out)


class _Pushed(NamedTuple):
    """A patch of fastener under one push at a height."""

    fastener: Fastener
    push: Literal["working", "involuntary"]
    force_n: float
    height_m: float
    patch_m: tuple[float, float]
    base_m: tuple[float, float] | None

    @property
    def larger(self) -> Message | None:
        """Which patch it would take, where that is a larger one."""
        needed = patch_needed_m(self.force_n, self.height_m, self.fastener, self.patch_m)
        if needed is None or needed[1] <= min(self.patch_m):
            return None
        base = None if self.base_m is None else _long_short(self.base_m)
        return message(
            MountChecks.larger_patch, long_m=needed[0], short_m=needed[1], base_long_m=None if base is None else base[0],
            base_short_m=None if base is None else base[1],
            fits=base is not None and needed[0] <= base[0] and needed[1] <= base[1],
        )  # fmt: skip


def _strength(
    one: _Pushed, what: Literal["fastener_shear", "fastener_tension"], load_pa: float, strength_pa: float | None
) -> Check:
    if strength_pa is None:
        return _unread(one.fastener, what, one.push, load_pa, one.force_n)
    factor = strength_pa / load_pa if load_pa > 0 else math.inf
    words = message(
        MountChecks.fastener, mode=what, fastener=Name(one.fastener.name), push_n=one.force_n, height_m=one.height_m,
        long_m=one.patch_m[0], short_m=one.patch_m[1], load_pa=load_pa, strength_pa=strength_pa, safety_factor=_known(factor),
        required_factor=FASTENER_FACTOR, larger=one.larger if factor < FASTENER_FACTOR else None,
    )  # fmt: skip
    return check_of(
        what, one.push, load_pa, strength_pa, unit="kpa", wanted=FASTENER_FACTOR, words=words, assumed=_untested(one.fastener)
    )  # fmt: skip


def _unread(
    fastener: Fastener, what: str, push: Literal["working", "involuntary", "weight"], load_pa: float, force_n: float
) -> Check:
    lacks = message(MountChecks.lacks_strength, fastener=Name(fastener.name))
    return unknown_check(what, push, load_pa, force_n, unit="kpa", wanted=FASTENER_FACTOR, lacks=lacks)


def _standing(fastener: Fastener, standing_n: float, patch_m: tuple[float, float]) -> Check:
    """The weight on a slope, that never ends."""
    load_pa = standing_n / (patch_m[0] * patch_m[1])
    if fastener.shear_pa is None:
        return _unread(fastener, "fastener_shear", "weight", load_pa, standing_n)
    strength_pa = CREEP_SHARE * fastener.shear_pa
    words = message(
        MountChecks.fastener_standing, fastener=Name(fastener.name), standing_n=standing_n, long_m=patch_m[0], short_m=patch_m[1],
        load_pa=load_pa, strength_pa=strength_pa, safety_factor=strength_pa / load_pa, required_factor=FASTENER_FACTOR,
    )  # fmt: skip
    return check_of(
        "fastener_shear", "weight", load_pa, strength_pa, unit="kpa", wanted=FASTENER_FACTOR, words=words, assumed=_untested(fastener)
    )  # fmt: skip


def _peel(one: _Pushed, line_n_per_m: float, strength_n_per_m: float) -> Check:
    factor = strength_n_per_m / line_n_per_m if line_n_per_m > 0 else math.inf
    words = message(
        MountChecks.peel, fastener=Name(one.fastener.name), push_n=one.force_n, height_m=one.height_m, long_m=one.patch_m[0],
        short_m=one.patch_m[1], load_n_per_m=line_n_per_m, strength_n_per_m=strength_n_per_m, safety_factor=_known(factor),
        required_factor=FASTENER_FACTOR, larger=one.larger if factor < FASTENER_FACTOR else None,
    )  # fmt: skip
    return check_of(
        "fastener_peel", one.push, line_n_per_m, strength_n_per_m, unit="n_per_mm", wanted=FASTENER_FACTOR, words=words,
        assumed=_untested(one.fastener),
    )  # fmt: skip


def _untested(fastener: Fastener) -> Message | None:
    return None if fastener.test_method else message(MountAssumed.test_method, fastener=Name(fastener.name))


def foot_checks(foot: Foot, pushes: Pushes) -> tuple[Check, ...]:
    """All that a base must stand: friction and weight when it lies free, the fastener when it is fixed.

    Returns
    -------
    tuple of Check

    Examples
    --------
    >>> free = Foot((0.15, 0.11), 0.095, 0.9, friction=0.35)
    >>> [(check.what, check.holds) for check in foot_checks(free, Pushes(1.0))]
    [('sliding', True), ('tipping', True)]
    """
    if foot.fastener is not None and foot.fastener.kind in _REMOVABLE:
        standing = foot.mass_kg * STANDARD_GRAVITY * math.sin(abs(foot.tilt_rad))
        return fastener_checks(
            pushes, foot.height_m, foot.fastener, foot.patch, standing_n=standing, base_m=foot.base_m
        )
    friction, assumed = foot.friction, foot.assumed
    if foot.fastener is not None:
        friction, assumed = foot.fastener.friction, None
    return (
        *sliding_checks(
            pushes,
            foot.mass_kg,
            friction,
            down_n=foot.down_n,
            tilt_rad=foot.tilt_rad,
            thing=foot.thing,
            assumed=assumed,
            pressed=foot.pressed,
        ),
        *tipping_checks(pushes, foot.height_m, foot.mass_kg, min(foot.base_m), thing=foot.thing),
    )


def with_fastener(foot: Foot, fastener: Fastener | None, patch_m: tuple[float, float] | None = None) -> Foot:
    """The same base, fixed otherwise.

    Parameters
    ----------
    foot : Foot
    fastener : Fastener or None
        None when it lies free.
    patch_m : tuple of 2 floats, optional
        Of the fastener; the whole underside when not said.
    """
    return replace(foot, fastener=fastener, patch_m=patch_m)
