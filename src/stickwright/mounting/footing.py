"""Whether a base stays where it is put: sliding, tipping, and what fixes it, on a plate, tray, table or floor.

Rules of this file: the strength of a fastener comes from its own label and is used to a third, a tenth of it for loads that stand;
where the label was not read, nothing but a light push is trusted to it. Friction is used to two thirds.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

from stickwright.model.kit import Fastener
from stickwright.model.mounting import Check
from stickwright.mounting.statics import Pushes, check_of, unknown_check
from stickwright.units import STANDARD_GRAVITY, figures, spoken

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
_LABEL = "read the label or the data sheet of the fastener"
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
    assumed : str, optional
        What was assumed for the friction.
    tilt_rad : float, default 0.0
        Slope of what it stands on.
    down_n : float, default 0.0
        What else presses it down while it is pushed.
    thing : str, default 'base'
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
    assumed: str | None = None
    tilt_rad: float = 0.0
    down_n: float = 0.0
    thing: str = "base"
    pressed: bool = False

    @property
    def patch(self) -> tuple[float, float]:
        """Of the fastener, longer side first."""
        long, short = sorted(self.patch_m or self.base_m, reverse=True)
        return long, short


def area_words(size_m: Sequence[float]) -> str:
    """A rectangle as people say it: '150 x 110 mm', longer side first."""
    long, short = sorted(size_m, reverse=True)
    return f"{1000 * long:.0f} x {1000 * short:.0f} mm"


def _verdict(factor: float, wanted: float) -> str:
    if math.isinf(factor):
        return "nothing loads it"
    if factor >= wanted * (1 - 1e-12):
        return f"{figures(factor)} times, {figures(wanted)} wanted"
    return f"{figures(factor)} times where {figures(wanted)} is wanted"


def sliding_checks(
    pushes: Pushes,
    mass_kg: float,
    friction: float | None,
    *,
    down_n: float = 0.0,
    tilt_rad: float = 0.0,
    thing: str = "base",
    what: str = "sliding",
    assumed: str | None = None,
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
    thing : str, default 'base'
        What slides.
    what : str, default 'sliding'
        What the check is called.
    assumed : str, optional
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
            out.append(
                unknown_check(
                    what,
                    push,
                    load,
                    force,
                    unit="n",
                    wanted=FRICTION_FACTOR,
                    lacks="friction is not known: pull it with the gauge",
                )
            )
            continue
        into = force if pressed and push == "working" else 0.0
        grip = friction * (weight * math.cos(tilt_rad) + down_n + into)
        factor = grip / load if load > 0 else math.inf
        words = f"Sliding of the {thing}: {spoken(load, 'n')} against {spoken(grip, 'n')} of friction: {_verdict(factor, FRICTION_FACTOR)}."
        out.append(check_of(what, push, load, grip, unit="n", wanted=FRICTION_FACTOR, words=words, assumed=assumed))
    return tuple(out)


def tipping_checks(
    pushes: Pushes,
    height_m: float,
    mass_kg: float,
    depth_m: float,
    *,
    overhang_nm: float = 0.0,
    thing: str = "base",
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
    thing : str, default 'base'
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
        said = f"{spoken(force, 'n')} at {spoken(height_m, 'mm')} make {spoken(load, 'nm')} against {spoken(kept, 'nm')} of its weight"
        words = f"Tipping of the {thing}: {said}: {_verdict(factor, FRICTION_FACTOR)}."
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
    fastener shear 5.2 11.6 True
    fastener tension 26.7 1.3 False
    """
    long, short = sorted(patch_m, reverse=True)
    area = long * short
    out: list[Check] = []
    for push, force in pushes.counted():
        at = f"{spoken(force, 'n')} at {spoken(height_m, 'mm')} on {area_words(patch_m)}"
        more = _room_words(force, height_m, fastener, patch_m, base_m)
        moment = force * height_m
        out.append(_strength(fastener, "fastener shear", push, force / area, fastener.shear_pa, force, at, more))
        tension = 6 * moment / (long * short**2)
        out.append(_strength(fastener, "fastener tension", push, tension, fastener.tension_pa, force, at, more))
        if fastener.peel_n_per_m is not None:
            out.append(_peel(fastener, push, moment / area, fastener.peel_n_per_m, at, more))
    if standing_n > 0:
        at = f"a standing {spoken(standing_n, 'n')} on {area_words(patch_m)}"
        strength = None if fastener.shear_pa is None else CREEP_SHARE * fastener.shear_pa
        out.append(
            _strength(
                fastener,
                "fastener shear",
                "weight",
                standing_n / area,
                strength,
                standing_n,
                at,
                "",
                "a tenth, as it creeps: ",
            )
        )
    return tuple(out)


def _room_words(
    force: float, height_m: float, fastener: Fastener, patch_m: tuple[float, float], base_m: tuple[float, float] | None
) -> str:
    needed = patch_needed_m(force, height_m, fastener, patch_m)
    if needed is None or needed[1] <= min(patch_m):
        return ""
    size = area_words(needed)
    if base_m is None:
        return f" It needs {size}."
    fits = needed[0] <= max(base_m) and needed[1] <= min(base_m)
    return f" It needs {size}; the base is {area_words(base_m)}{' and has the room' if fits else ', too small'}."


def _strength(
    fastener: Fastener,
    what: str,
    push: Literal["working", "involuntary", "weight"],
    load_pa: float,
    strength_pa: float | None,
    force: float,
    at: str,
    more: str,
    share: str = "",
) -> Check:
    if strength_pa is None:
        lacks = f"the strength of {fastener.name} is not known: {_LABEL}"
        return unknown_check(what, push, load_pa, force, unit="kpa", wanted=FASTENER_FACTOR, lacks=lacks)
    factor = strength_pa / load_pa if load_pa > 0 else math.inf
    held = f"{fastener.name} bears {share}{spoken(strength_pa, 'kpa')}"
    words = f"{what.capitalize()}: {at} make {spoken(load_pa, 'kpa')}; {held}: {_verdict(factor, FASTENER_FACTOR)}."
    if factor < FASTENER_FACTOR:
        words += more
    return check_of(
        what, push, load_pa, strength_pa, unit="kpa", wanted=FASTENER_FACTOR, words=words, assumed=_untested(fastener)
    )


def _peel(
    fastener: Fastener, push: Literal["working", "involuntary"], line: float, strength: float, at: str, more: str
) -> Check:
    factor = strength / line if line > 0 else math.inf
    held = f"{fastener.name} bears {spoken(strength, 'n_per_mm')}"
    words = f"Fastener peel: {at} pull the edge with {spoken(line, 'n_per_mm')}; {held}: {_verdict(factor, FASTENER_FACTOR)}."
    if factor < FASTENER_FACTOR:
        words += more
    return check_of(
        "fastener peel",
        push,
        line,
        strength,
        unit="n_per_mm",
        wanted=FASTENER_FACTOR,
        words=words,
        assumed=_untested(fastener),
    )


def _untested(fastener: Fastener) -> str | None:
    return None if fastener.test_method else f"strength of {fastener.name}: test method not told"


def foot_checks(foot: Foot, pushes: Pushes) -> tuple[Check, ...]:
    """All that a base must stand: friction and weight when it lies free, the fastener when it is fixed.

    Parameters
    ----------
    foot : Foot
    pushes : Pushes

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
