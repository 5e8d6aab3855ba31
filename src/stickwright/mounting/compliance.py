"""What a mount that gives costs: throw lost, droop, swinging, and the player's own force as the stick then feels it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.message import message
from stickwright.codes.mount_answers import MountAnswers
from stickwright.codes.mount_problems import MountPart, MountProblems
from stickwright.errors import BadInput, Problem
from stickwright.model.recorded import Finding
from stickwright.units import STANDARD_GRAVITY

__all__ = [
    "LOST_TOO_MUCH", "SWINGS_BELOW_HZ", "Cantilever", "TipShares", "cantilever", "droop_m", "droop_rad", "force_with_give", "give_findings",
    "in_series_n_per_m", "lost_share", "ringing_hz", "tip_shares",
]  # fmt: skip

Array = NDArray[np.float64]

SWINGS_BELOW_HZ = 6.0
"""Below this a lightly damped arm makes output of its own when the chair is touched [fitting-practice]."""
LOST_TOO_MUCH = 0.1
"""Share of the throw that may go into the mount before somebody should look [fitting-practice]."""
SLOPE_OVER_DROOP = 1.5
"""Slope at the end of a cantilever over its droop per length: (F L^2/2EI) / (F L^3/3EI) x L [hibbeler-mechanics]."""


class Cantilever(NamedTuple):
    """A tube held at one end and loaded at the other."""

    droop_m: float
    droop_rad: float
    stress_pa: float
    """Largest, at the clamp, in pascal."""
    stiffness_n_per_m: float


class TipShares(NamedTuple):
    """Of an arm's own mass, how much counts as if it sat on its end."""

    swings: float
    """When it swings."""
    sinks: float
    """When it sinks under its own weight, held out level."""


_LIKE_A_BEAM = TipShares(33 / 140, 3 / 8)


def tip_shares(links_m: Sequence[float], *, bends: bool = False) -> TipShares:
    """How much of an arm's own mass counts at its end.

    Rayleigh's method on the arm held out straight, as its give is measured. It gives in its joints, at the root of each link, all
    alike: a force F at the end turns the joint at a distance l from the end by c F l. So the place at x from the clamp moves by the
    sum of l (x - x_j) over the joints before it, over the sum of l^2 at the end; the mass counts with the square of that. Its own
    weight w for each metre turns the same joint by c w l^2/2 and sinks the end by the sum of w l^3/2 where a mass m sinks it by the
    sum of m g l^2.

    Parameters
    ----------
    links_m : sequence of floats
        From the clamp; the mass is spread evenly along them.
    bends : bool, default False
        Whether it bends all along instead, as a gooseneck does: the shares of a uniform cantilever, whatever the lengths.

    Returns
    -------
    TipShares

    Raises
    ------
    BadInput
        No link, or one without length.

    Notes
    -----
    Source: Rayleigh's energy method; a uniform cantilever counts with 33/140 of its mass, a rod on a hinge with a third
    [thomson-vibration]; 3/8 from w L^4/8EI [hibbeler-mechanics]. Assumed: every joint gives alike, which nobody measures one by
    one. Rayleigh's figure is never below the true frequency: of a beam without a load it is 1.5 percent high, with one less.

    Examples
    --------
    One stiff link on a joint at the clamp, and two of the same length:

    >>> [round(share, 4) for share in (*tip_shares([0.4]), *tip_shares([0.2, 0.2]))]
    [0.3333, 0.5, 0.2867, 0.45]
    """
    if bends:
        return _LIKE_A_BEAM
    if not links_m or min(links_m) <= 0:
        raise BadInput(
            Problem(
                message(MountProblems.part, part="arm"),
                message(MountProblems.without_length),
                message(MountProblems.with_length),
            )
        )
    length = sum(links_m)
    root = np.concatenate([[0.0], np.cumsum(np.asarray(links_m, dtype=np.float64))[:-1]])
    left = length - root
    whole = float(np.sum(left**2))
    share, weight = np.polynomial.legendre.leggauss(
        3
    )  # exact up to the fifth power; the square of the shape is of the second
    counted = 0.0
    for start, link in zip(root, links_m, strict=True):
        at = start + 0.5 * link * (share + 1.0)
        moved = (left * np.maximum(at[:, None] - root, 0.0)).sum(axis=1) / whole
        counted += float(np.sum(0.5 * link * weight * moved**2))
    return TipShares(counted / length, float(np.sum(left**3)) / (2.0 * length * whole))


def in_series_n_per_m(*stiffness_n_per_m: float) -> float:
    """Stiffness of things that give one after the other.

    Parameters
    ----------
    *stiffness_n_per_m : float
        Of each; infinity for what does not give.

    Returns
    -------
    float
        Infinity when nothing gives.

    Raises
    ------
    BadInput
        A stiffness of 0 or less, or not a number.

    Notes
    -----
    Source: springs in series, 1/k = 1/k1 + 1/k2 [hibbeler-mechanics].

    Examples
    --------
    >>> round(in_series_n_per_m(150.0, 2000.0), 3)
    139.535
    """
    for stiffness in stiffness_n_per_m:
        _refuse_limp(stiffness)
    given = sum(1.0 / stiffness for stiffness in stiffness_n_per_m)
    return 1.0 / given if given > 0 else math.inf


def _refuse_limp(give_n_per_m: float) -> None:
    if not give_n_per_m > 0:
        raise BadInput(
            Problem(
                message(MountProblems.part, part="flex"),
                message(MountProblems.stiffness, give_n_per_m=None if math.isnan(give_n_per_m) else give_n_per_m),
                message(MountProblems.stiff),
                message(MountProblems.hang),
            )
        )


def _no_length(part: MountPart, length_m: float) -> BadInput:
    found = message(MountProblems.length, length_m=length_m)
    return BadInput(Problem(message(MountProblems.part, part=part), found, message(MountProblems.some_length)))


def lost_share(full_force_n: float, give_n_per_m: float, travel_m: float) -> float:
    """Share of the throw that goes into the mount instead of the stick, at full push.

    Parameters
    ----------
    full_force_n : float
        At the stop.
    give_n_per_m : float
        Stiffness of all that holds the stick; infinity when nothing gives.
    travel_m : float
        Of the contact point, from centre to stop.

    Returns
    -------
    float
        F / (k T): above 1 the mount moves further than the stick.

    Raises
    ------
    BadInput
        A stiffness or travel of 0 or less.

    Examples
    --------
    3.9 N on 0.5 N/mm is 7.8 of 24 mm:

    >>> round(lost_share(3.9, 500.0, 0.024), 3), lost_share(3.9, math.inf, 0.024)
    (0.325, 0.0)
    """
    _refuse_limp(give_n_per_m)
    if not travel_m > 0:
        raise _no_length("travel", travel_m)
    return full_force_n / give_n_per_m / travel_m


def droop_m(mass_kg: float, give_n_per_m: float) -> float:
    """How far the end sinks under a mass.

    Parameters
    ----------
    mass_kg : float
        On the end.
    give_n_per_m : float
        Measured stiffness at the end.

    Returns
    -------
    float
        In metre.

    Raises
    ------
    BadInput
        A stiffness of 0 or less.

    Examples
    --------
    >>> round(1000 * droop_m(0.08, 900.0), 2)
    0.87
    """
    _refuse_limp(give_n_per_m)
    return mass_kg * STANDARD_GRAVITY / give_n_per_m


def droop_rad(sunk_m: float, length_m: float) -> float:
    """How far the end turns when it sinks.

    Parameters
    ----------
    sunk_m : float
        Droop of the end.
    length_m : float
        From the clamp to the end.

    Returns
    -------
    float
        1.5 times droop over length: exact for a level tube that bends, an upper figure for an arm whose joints give.

    Raises
    ------
    BadInput
        A length of 0 or less.
    """
    if not length_m > 0:
        raise _no_length("arm", length_m)
    return SLOPE_OVER_DROOP * sunk_m / length_m


def cantilever(force_n: float, length_m: float, outer_m: float, inner_m: float, modulus_pa: float) -> Cantilever:
    """Droop, slope, stress and stiffness of a level round tube.

    Parameters
    ----------
    force_n : float
        At its free end, across it.
    length_m, outer_m, inner_m : float
        Free length, outer and inner diameter.
    modulus_pa : float
        Of elasticity.

    Returns
    -------
    Cantilever

    Raises
    ------
    BadInput
        A tube without wall, length or stiffness.

    Notes
    -----
    Source: F L^3/(3 E I), F L^2/(2 E I), F L c/I with I = pi (D^4 - d^4)/64 [hibbeler-mechanics].

    Examples
    --------
    >>> tube = cantilever(10.0, 0.4, 0.019, 0.016, 69e9)
    >>> round(1000 * tube.droop_m, 3), round(tube.stiffness_n_per_m)
    (0.972, 10286)
    """
    if not (0 <= inner_m < outer_m and length_m > 0 and modulus_pa > 0):
        tube = message(MountProblems.wall, outer_m=outer_m, inner_m=inner_m, length_m=length_m)
        raise BadInput(Problem(message(MountProblems.part, part="tube"), tube, message(MountProblems.some_wall)))
    second_moment = math.pi * (outer_m**4 - inner_m**4) / 64
    stiffness = 3 * modulus_pa * second_moment / length_m**3
    return Cantilever(
        force_n / stiffness,
        force_n * length_m**2 / (2 * modulus_pa * second_moment),
        force_n * length_m * outer_m / 2 / second_moment,
        stiffness,
    )


def ringing_hz(give_n_per_m: float, mass_kg: float | None) -> float:
    """Natural frequency of a mount: at which it swings when the stick is let go.

    Parameters
    ----------
    give_n_per_m : float
        Stiffness at the end; infinity when nothing gives.
    mass_kg : float or None
        That swings at the end: the device, and the share of the arm's own mass that `tip_shares` gives; None when nobody weighed
        one of them.

    Returns
    -------
    float
        sqrt(k/m) / 2 pi; NaN when the mass is not known or 0; infinity when nothing gives.

    Raises
    ------
    BadInput
        A stiffness of 0 or less.

    Notes
    -----
    Source: free vibration of one mass on one spring [hibbeler-mechanics].

    Examples
    --------
    >>> round(ringing_hz(900.0, 0.8), 1)
    5.3
    """
    _refuse_limp(give_n_per_m)
    if math.isinf(give_n_per_m):
        return math.inf
    return math.sqrt(give_n_per_m / mass_kg) / (2 * math.pi) if mass_kg else math.nan


def force_with_give(force_n: ArrayLike, reach_m: ArrayLike, give_n_per_m: float) -> Array:
    """The player's own force line as a stick feels it behind a mount that gives.

    A stick pushed by x with force f stands on a mount that has moved by f/k, so the limb has gone x + f/k and has left
    F (1 - (x + f/k)/d). The stick takes as much as the limb has left, f = F (1 - (x + f/k)/d); solved for f:
    f (1 + F/(d k)) = F (1 - x/d), that is f = F' (1 - x/d) with F' = F/(1 + F/(d k)). So every stick, whatever it needs,
    comes to the same x as on a rigid mount under a player whose reach is the same, d' = d, and whose force is F'.

    Parameters
    ----------
    force_n, reach_m : float or array
        Comfortable force at the centre, comfortable free reach; straight fall-off between them.
    give_n_per_m : float
        Stiffness of the mount; infinity when nothing gives.

    Returns
    -------
    array
        F', of the same shape; 0 where the force or the reach is 0 and something gives.

    Raises
    ------
    BadInput
        A stiffness of 0 or less.

    Notes
    -----
    Source: equilibrium of springs in series [hibbeler-mechanics].

    Examples
    --------
    >>> print(force_with_give([2.0, 20.0], [0.02, 0.1], 500.0).round(3))
    [ 1.667 14.286]
    """
    _refuse_limp(give_n_per_m)
    force, reach = np.broadcast_arrays(np.asarray(force_n, dtype=np.float64), np.asarray(reach_m, dtype=np.float64))
    if math.isinf(give_n_per_m):
        return force.copy()
    room = reach * give_n_per_m
    with np.errstate(invalid="ignore"):
        felt = force * room / (room + force)
    out: Array = np.where(force > 0, felt, 0.0 * force)
    return out


def give_findings(
    full_force_n: float, give_n_per_m: float, travel_m: float, swings_hz: float | None
) -> tuple[Finding, ...]:
    """What is worth saying about a mount's give, with the figures.

    Parameters
    ----------
    full_force_n, travel_m : float
        Of the stick.
    give_n_per_m : float
        Stiffness of what holds it.
    swings_hz : float or None
        Its natural frequency; NaN when not known.

    Returns
    -------
    tuple of Finding
        Empty when the mount is stiff enough and does not swing.

    Examples
    --------
    >>> [finding.about for finding in give_findings(3.9, 500.0, 0.024, 4.0)]
    ['give', 'swinging']
    """
    out = []
    lost = lost_share(full_force_n, give_n_per_m, travel_m)
    if lost > LOST_TOO_MUCH:
        flex = full_force_n / give_n_per_m
        text = message(MountAnswers.flexes, flex_m=flex, travel_m=travel_m, lost_share=lost)
        out.append(Finding("query", "give", text))
    if swings_hz is not None and swings_hz < SWINGS_BELOW_HZ:
        text = message(MountAnswers.swings, natural_hz=swings_hz, least_hz=SWINGS_BELOW_HZ)
        out.append(Finding("query", "swinging", text))
    return tuple(out)
