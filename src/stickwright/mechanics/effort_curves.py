"""How long a push can be held, and how hard one may push how often: published models.

The rules of this file:

* Effort is a share of the maximal force, 0 to 1, never a percentage and never newton. A share of
  the comfortable force is converted before it comes here.
* All curves come from healthy adults who held to exhaustion. They rank set-ups; they do not predict
  a person, and the player's own measured hold always wins.
* There is no curve for neck, chin, lip or head. None is invented for them.
* The reviewed models are in minutes, the meta-analysis in seconds; everything here is in seconds.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Literal, NamedTuple, overload

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.holds import Holds, Joint
from stickwright.codes.message import Message, Name, message
from stickwright.codes.stick_problems import StickProblems
from stickwright.errors import BadInput, Problem, did_you_mean

__all__ = [
    "ENDURANCE_MODELS", "JOINTS", "JOINT_OF_PART", "EnduranceSpread", "acceptable_duty",
    "acceptable_effort", "domain_note", "endurance_s", "endurance_spread", "rest_allowance",
]  # fmt: skip

Array = NDArray[np.float64]

ENDURANCE_MODELS: dict[str, str] = {
    "frey-law-avin": "Frey Law & Avin 2010",
    "rohmert": "Rohmert 1960 (elbow and shoulder: 1986)",
    "huijgens": "Huijgens 1981",
    "sato": "Sato 1984",
    "manenica": "Manenica 1986",
    "sjogaard": "Sjøgaard 1986",
    "rose": "Rose 1992",
    "monod-scherrer": "Monod & Scherrer 1965",
    "garg": "Garg 2002",
    "hincapie-ramos": "Hincapié-Ramos 2014",
}
"""Model names as they are typed, and as the page names them."""

JOINT_OF_PART: dict[str, Joint | None] = {
    "fingertip": "hand", "thumb": "hand", "hand": "hand", "forearm": "elbow", "elbow": "elbow", "shoulder": "shoulder",
    "knee": "knee", "thigh": "knee", "foot": "ankle", "toe": "ankle", "trunk": "trunk", "chin": None, "lip": None,
    "cheek": None, "tongue": None, "head": None,
}  # fmt: skip
"""Which joint's curve stands for which part of the body: an assumption. The hand's curve was
measured on grip, not on one finger; a forearm pushes from the elbow and often the shoulder too; a
thigh presses from the hip, for which there is no curve, and the knee's is taken. None: no curve."""

_SHORTEST_DUTY = 1 / 28800  # one second in a working day of eight hours


def _power(b0_s: float, b1: float) -> Callable[[Array], Array]:
    return lambda f: b0_s * f**b1


def _exponential(minutes: float, rate: float) -> Callable[[Array], Array]:
    return lambda f: 60 * minutes * np.exp(-rate * f)


def _above(lowest: float, minutes: Callable[[Array], Array], *, at_it: bool = False) -> Callable[[Array], Array]:
    """A model that says "unlimited" up to a lowest effort; `at_it`: that effort itself is still limited."""

    def seconds(f: Array) -> Array:
        limited = f >= lowest if at_it else f > lowest
        safe = np.where(limited, f, 0.5)
        return np.where(limited, 60 * minutes(safe), math.inf)

    return seconds


# Frey Law & Avin 2010, Table 2: b0 in seconds, b1.
_BY_JOINT = {
    "general": (21.92, -1.98), "hand": (33.55, -1.61), "elbow": (17.98, -2.21), "shoulder": (14.86, -1.83),
    "knee": (19.38, -1.88), "ankle": (34.71, -2.06), "trunk": (22.69, -2.27),
}  # fmt: skip
JOINTS: tuple[str, ...] = tuple(_BY_JOINT)
"""Joints with a curve; "general" is the one over all joints."""

_CURVES: dict[tuple[str, str], Callable[[Array], Array]] = {
    **{("frey-law-avin", joint): _power(*coefficients) for joint, coefficients in _BY_JOINT.items()},
    # The polynomial itself is regular at 0.15, where the author's curve begins.
    ("rohmert", "general"): _above(0.15, lambda f: -1.5 + 2.1 / f - 0.6 / f**2 + 0.1 / f**3, at_it=True),
    ("rohmert", "elbow"): _power(60 * 0.2285, -1.391),
    ("rohmert", "shoulder"): _power(60 * 0.2955, -1.658),
    ("huijgens", "general"): _above(0.15, lambda f: 0.865 * ((1 - f) / (f - 0.15)) ** (1 / 1.4)),
    ("sato", "general"): _above(0.04, lambda f: 0.3802 * (f - 0.04) ** -1.44),
    ("sato", "elbow"): _power(60 * 0.195, -2.52),
    ("sato", "shoulder"): _power(60 * 0.398, -1.29),
    ("manenica", "general"): _exponential(14.88, 4.48),
    ("manenica", "hand"): _exponential(16.6099, 4.5),
    ("manenica", "elbow"): _exponential(20.6972, 4.5),
    ("sjogaard", "general"): _power(60 * 0.2997, -2.14),
    ("rose", "general"): _exponential(7.96, 4.16),
    ("monod-scherrer", "general"): _above(0.14, lambda f: 0.4167 * (f - 0.14) ** -2.4),
    ("garg", "shoulder"): _power(60 * 0.5618, -1.7551),
    ("hincapie-ramos", "shoulder"): _above(0.15, lambda f: (1236.5 / (100 * f - 15) ** 0.618 - 72.5) / 60),
}
_NOT_IN_SPREAD = ("monod-scherrer",)  # near-singular at its lower end and far above all others everywhere


@overload
def endurance_s(effort_share: float, model: str = ..., joint: str | None = ...) -> float: ...
@overload
def endurance_s(effort_share: ArrayLike, model: str = ..., joint: str | None = ...) -> Array: ...
def endurance_s(effort_share: ArrayLike, model: str = "frey-law-avin", joint: str | None = None) -> float | Array:
    """How long healthy adults keep a static push, by a published curve.

    Parameters
    ----------
    effort_share : float or array, shape (n,)
        Share of the maximal force, more than 0 and up to 1.
    model : str, default "frey-law-avin"
        First author: see `ENDURANCE_MODELS`.
    joint : str, optional
        "hand", "elbow", "shoulder", "knee", "ankle", "trunk" or "general". When not given: the
        hand for the default model, the author's general curve for the others (shoulder for those
        that have no other). An author without a curve for that joint gives the general one.

    Returns
    -------
    float or array, shape (n,)
        Time to exhaustion, s; infinite where the model says "unlimited".

    Raises
    ------
    BadInput
        Effort of 0 or less or above 1 (a percentage), unknown model, unknown joint, or a joint
        without any curve (neck and face).

    Notes
    -----
    Default: meta-analysis by joint [frey-law-avin-2010], ``b0 * effort**b1``; use it from 0.10 up
    (see `domain_note`). Others as reviewed by [el-ahrache-2006] and tabulated by [ma-2009]:
    [rohmert-1960], [huijgens-1981], [sato-1984], [manenica-1986], [sjogaard-1986], [rose-1992],
    [monod-scherrer-1965], [rohmert-1986], [garg-2002]; [hincapie-ramos-2014] for the shoulder.

    Examples
    --------
    >>> round(endurance_s(0.5), 1), round(endurance_s(0.5, model="rohmert"), 1)
    (102.4, 66.0)
    >>> endurance_s([0.1, 0.5], model="rohmert").round(1).tolist()
    [inf, 66.0]
    """
    effort = _efforts(effort_share)
    seconds = _curve(model, joint)(effort)
    return float(seconds) if np.ndim(effort_share) == 0 else seconds


class EnduranceSpread(NamedTuple):
    """What the published models say, from lowest to highest.

    Parameters
    ----------
    low_s, high_s : float or array, shape (n,)
        Shortest and longest time, s, over the models that hold at that effort.
    models : tuple of str
        Names of the models used.
    note : Message or None
        Where the curves must be read with care; empty when not.
    """

    low_s: float | Array
    high_s: float | Array
    models: tuple[str, ...]
    note: Message | None


def endurance_spread(effort_share: ArrayLike, joint: str = "hand") -> EnduranceSpread:
    """How far the published models lie apart at this effort.

    Parameters
    ----------
    effort_share : float or array, shape (n,)
        Share of the maximal force, more than 0 and up to 1.
    joint : str, default "hand"
        As in `endurance_s`. Each author's curve for the joint is used, or else the general one.

    Returns
    -------
    EnduranceSpread
        Shortest and longest time, s. Models that say "unlimited" at an effort are left out there:
        later measurements contradict them. Monod & Scherrer is left out everywhere.

    Raises
    ------
    BadInput
        As `endurance_s`.

    Notes
    -----
    Fourfold at 15 % effort [el-ahrache-2006]. Beside that, the 95 % prediction curve of one model
    lies 29 to 47 % from its mean [frey-law-looft-2012].

    Examples
    --------
    >>> spread = endurance_spread(0.15)
    >>> round(spread.low_s, 1), round(spread.high_s, 1)
    (255.9, 1042.3)
    """
    effort = _efforts(effort_share)
    _curve("frey-law-avin", joint)
    names = [
        name for name in ENDURANCE_MODELS
        if name not in _NOT_IN_SPREAD and ((name, joint) in _CURVES or (name, "general") in _CURVES)
    ]  # fmt: skip
    times = np.stack([_curve(name, joint)(effort) for name in names])
    low, high = np.min(times, axis=0), np.max(np.where(np.isfinite(times), times, -math.inf), axis=0)
    note = domain_note(float(np.min(effort)))
    if np.ndim(effort_share) == 0:
        return EnduranceSpread(float(low), float(high), tuple(names), note)
    return EnduranceSpread(low, high, tuple(names), note)


def domain_note(effort_share: float) -> Message | None:
    """Where an endurance curve must be read with care, in a sentence; None where not.

    Parameters
    ----------
    effort_share : float
        Share of the maximal force.

    Examples
    --------
    >>> domain_note(0.3) is None, domain_note(0.08).text
    (True, 'below_tenth')
    """
    if effort_share < 0.10:
        return message(Holds.below_tenth)
    if effort_share < 0.25:
        return message(Holds.below_quarter)
    return None


@overload
def acceptable_effort(duty_cycle: float) -> float: ...
@overload
def acceptable_effort(duty_cycle: ArrayLike) -> Array: ...
def acceptable_effort(duty_cycle: ArrayLike) -> float | Array:
    """Largest effort that is acceptable when it is made for this share of the time.

    Parameters
    ----------
    duty_cycle : float or array, shape (n,)
        Share of the time with effort, more than 0 and up to 1.

    Returns
    -------
    float or array, shape (n,)
        Share of the maximal force. 1 for less than one second in eight hours. At a duty of 1 the
        equation leaves nothing: use the endurance curve as well and take the smaller.

    Raises
    ------
    BadInput
        Duty of 0 or less, or above 1 (a percentage).

    Notes
    -----
    ``1 - (duty - 1/28800)**0.24`` [potvin-2012] (equation from memory), written for a working day of
    eight hours: strict for an hour of play, so it ranks and flags.

    Examples
    --------
    >>> round(acceptable_effort(0.25), 3)
    0.283
    """
    duty = _shares(duty_cycle, "duty_cycle", "time")
    effort = 1 - np.maximum(0.0, duty - _SHORTEST_DUTY) ** 0.24
    return float(effort) if np.ndim(duty_cycle) == 0 else effort


@overload
def acceptable_duty(effort_share: float) -> float: ...
@overload
def acceptable_duty(effort_share: ArrayLike) -> Array: ...
def acceptable_duty(effort_share: ArrayLike) -> float | Array:
    """Largest share of the time for which this effort is acceptable: `acceptable_effort` turned round.

    Parameters
    ----------
    effort_share : float or array, shape (n,)
        Share of the maximal force, more than 0 and up to 1.

    Returns
    -------
    float or array, shape (n,)
        Share of the time, up to 1.

    Raises
    ------
    BadInput
        Effort of 0 or less, or above 1 (a percentage).

    Notes
    -----
    [potvin-2012], solved for the duty cycle (equation from memory).

    Examples
    --------
    >>> round(acceptable_duty(0.5), 4)
    0.0557
    """
    effort = _efforts(effort_share)
    duty = np.minimum(1.0, (1 - effort) ** (1 / 0.24) + _SHORTEST_DUTY)
    return float(duty) if np.ndim(effort_share) == 0 else duty


@overload
def rest_allowance(hold_share: float, effort_share: float) -> float: ...
@overload
def rest_allowance(hold_share: ArrayLike, effort_share: ArrayLike) -> Array: ...
def rest_allowance(hold_share: ArrayLike, effort_share: ArrayLike) -> float | Array:
    """Rest that a static hold needs afterwards, as a multiple of the hold.

    Parameters
    ----------
    hold_share : float or array, shape (n,)
        Length of the hold over the longest hold possible at that effort, more than 0 and up to 1.
    effort_share : float or array, shape (n,)
        Share of the maximal force, more than 0 and up to 1.

    Returns
    -------
    float or array, shape (n,)
        Rest over hold: 3.4 means 3.4 times as long as the hold. 0 at 15 % effort and below.

    Raises
    ------
    BadInput
        A share of 0 or less, or above 1 (a percentage).

    Notes
    -----
    ``18 * hold_share**1.4 * (effort - 0.15)**0.5`` [rohmert-1973] (from memory).

    Examples
    --------
    >>> round(rest_allowance(0.5, 0.4), 2)
    3.41
    """
    hold = _shares(hold_share, "hold_share", "hold")
    effort = _efforts(effort_share)
    rest = np.asarray(18 * hold**1.4 * np.sqrt(np.maximum(0.0, effort - 0.15)))
    return float(rest) if rest.ndim == 0 else rest


def _curve(model: str, joint: str | None) -> Callable[[Array], Array]:
    if model not in ENDURANCE_MODELS:
        raise BadInput(
            Problem(
                "model",
                f"'{model}'",
                message(StickProblems.expected, what="model"),
                did_you_mean(model, ENDURANCE_MODELS),
            )
        )
    if joint is None:
        joint = "hand" if model == "frey-law-avin" else "general"
        return _CURVES.get((model, joint)) or _CURVES[model, "shoulder"]
    if joint in _FACE_AND_NECK:
        raise BadInput(
            Problem(
                "joint",
                f"'{joint}'",
                message(StickProblems.expected, what="joint"),
                message(StickProblems.remedy, what="neck_or_face"),
            )
        )
    if joint not in JOINTS:
        raise BadInput(
            Problem("joint", f"'{joint}'", message(StickProblems.expected, what="joint"), did_you_mean(joint, JOINTS))
        )
    curve = _CURVES.get((model, joint)) or _CURVES.get((model, "general"))
    if curve is None:
        what = message(StickProblems.shoulder_only, model=Name(ENDURANCE_MODELS[model]))
        raise BadInput(Problem("joint", f"'{joint}'", what, message(StickProblems.remedy, what="other_model")))
    return curve


_FACE_AND_NECK = ("neck", *(part for part, joint in JOINT_OF_PART.items() if joint is None))


def _efforts(effort_share: ArrayLike) -> Array:
    return _shares(effort_share, "effort_share", "force")


def _shares(values: ArrayLike, name: str, of: Literal["time", "hold", "force"]) -> Array:
    shares = np.asarray(values, dtype=np.float64)
    bad = ~((shares > 0) & (shares <= 1))  # NaN is caught as well
    if bad.any():
        first = float(shares[bad].flat[0])
        remedy = message(StickProblems.percentage, value_share=first / 100) if 1 < first <= 100 else ""
        raise BadInput(Problem(name, f"{first:.4g}", message(StickProblems.share_of, of=of), remedy))
    return shares
