"""What is pressed, and the arithmetic of pressing: hits, presses that are not meant, presses a minute.

The limits are those that practitioners sign: common practice, no source, unless one is named.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.presses import Presses
from stickwright.mechanics.fit import ALWAYS
from stickwright.model.game import Action
from stickwright.model.hub import Role
from stickwright.model.kit import Controller, Switch
from stickwright.model.player import Player

__all__ = [
    "BUDGET_SHARE", "FREQUENT_EFFORT_SHARE", "FREQUENT_PER_MIN", "HELD_KINDS", "HOLD_SHARE", "INVOLUNTARY_SDS",
    "LEAST_HIT_SHARE", "MOST_COUNTED", "OVER", "PRESSED_KINDS", "RARE_EFFORT_SHARE", "REST_FACTOR", "SLIGHT_SWITCH_SHARE",
    "SUSTAINED_SHARE", "UNKNOWN_HIT_SHARE",
    "USUAL_BUTTON_FACE_M", "USUAL_BUTTON_FORCE_N",
    "USUAL_PRESSES_PER_MIN", "WANTED_HIT_SHARE", "Pressed", "crossings_per_min", "hit_share", "presses_per_min",
    "spasms_per_s",
]  # fmt: skip

FREQUENT_PER_MIN = 6.0
"""More presses than this in the busy minute are frequent ones."""
FREQUENT_EFFORT_SHARE = 0.5
RARE_EFFORT_SHARE = 0.7
"""Operating force over comfortable force, at most."""
REST_FACTOR, INVOLUNTARY_SDS = 1.5, 3.0
"""Operating force is at least so many times the resting force, plus so many times the involuntary rms."""
HOLD_SHARE = 0.5
"""Of the measured hold, at most."""
SUSTAINED_SHARE = 0.5
"""Of the rate of ten seconds, what can be kept up."""
BUDGET_SHARE = 0.6
"""Of the busy minute, at most, for all presses of one part together."""
LEAST_HIT_SHARE = 0.9
"""Presses that must land; 95 of 100 are wanted."""
WANTED_HIT_SHARE = 0.95
USUAL_BUTTON_FORCE_N = 1.5
"""Of a controller's button that nobody put on the gauge (assumed)."""
SLIGHT_SWITCH_SHARE = 0.02
"""Operating force over comfortable force, below which a switch may go off at a touch or break: to be tried."""
USUAL_BUTTON_FACE_M = 0.010
"""Across a controller's button, that nobody measured (assumed)."""
UNKNOWN_HIT_SHARE = 0.9
"""Presses that land on a switch of a size that nobody measured (assumed)."""
USUAL_PRESSES_PER_MIN = 6.0
"""In the busy minute, where nobody counted (assumed)."""
MOST_COUNTED = 4.0
"""Times the limit beyond which more unintended presses cost no more."""
PRESSED_KINDS = ("press", "hold", "repeat", "trigger")
"""Kinds of action that a switch can do."""
HELD_KINDS = ("hold", "trigger")
OVER = 1 + 1e-9
"""A limit that is met exactly is met."""


@dataclass(frozen=True)
class Pressed:
    """What is pressed: a switch, or a button of a controller.

    Parameters
    ----------
    name : Text
        As people will read it.
    force_n : float
        To operate it; 0 for a proximity switch, NaN when nobody benched it.
    travel_m : float
        To the end of its way; NaN when not known.
    face_m : tuple of float
        Diameter of a round face; width and length of a strip; empty when not known.
    proximity : bool
        Senses without touch.
    senses_at_m : float or None
        Distance at which a proximity switch acts.
    assumed : Message or None
        What of this was not benched and stands in.
    button : bool
        Of a controller.
    """

    name: Text
    force_n: float
    travel_m: float
    face_m: tuple[float, ...]
    proximity: bool
    senses_at_m: float | None = None
    assumed: Message | None = None
    button: bool = False

    @classmethod
    def of_switch(cls, switch: Switch) -> Pressed:
        """A switch of the kit; the force of a pressed one that the kit does not say is not known."""
        proximity = switch.kind == "proximity"
        told = proximity or "force_n" in switch.model_fields_set
        return cls(
            Name(switch.name), switch.force_n if told else math.nan, switch.travel_m, switch.face_m, proximity,
            switch.senses_at_m if proximity else None,
        )  # fmt: skip

    @classmethod
    def of_button(cls, controller: Controller, role: Role) -> Pressed:
        """One button of a controller; its usual force, marked, when it was not benched."""
        force, assumed, name = controller.press_force_n, None, Name(controller.name)
        if force is None:
            force = USUAL_BUTTON_FORCE_N
            assumed = message(Presses.button_force, controller=name, force_n=force)
        button = message(Presses.button, controller=name, role=role)
        return cls(
            button, force, math.nan, (USUAL_BUTTON_FACE_M,), proximity=False, assumed=assumed, button=True
        )  # fmt: skip


def hit_share(face_m: tuple[float, ...], landing_m: float) -> float:
    """Share of presses that land on a face centred where they fall on average.

    Parameters
    ----------
    face_m : tuple of float
        Diameter of a round face; width and length of a strip.
    landing_m : float
        Scatter, rms per axis; Gaussian, the same in both axes (assumed).

    Returns
    -------
    float
        NaN when either is not known.

    Notes
    -----
    A circle of radius r catches 1 - exp(-r^2/(2 s^2)) (Rayleigh's distribution); a strip the product of two normal
    probabilities, erf(a/(2 sqrt(2) s)) along each side a.

    Examples
    --------
    >>> round(hit_share((0.130,), 0.028), 2)
    0.93
    """
    if not face_m or math.isnan(landing_m):
        return math.nan
    if landing_m <= 0:
        return 1.0
    if len(face_m) == 1:
        radius_sds = face_m[0] / (2 * landing_m)
        return -math.expm1(-0.5 * radius_sds * radius_sds)
    return math.prod(math.erf(side / (2 * math.sqrt(2) * landing_m)) for side in face_m)


def crossings_per_min(threshold_n: float, rest_n: float, involuntary_n: float, crossing_hz: float) -> float:
    """Times a minute that involuntary force about a resting force rises above the operating force.

    Parameters
    ----------
    threshold_n : float
        Operating force.
    rest_n : float
        Resting force along the press.
    involuntary_n : float
        Rms along the press.
    crossing_hz : float
        Zero-crossing frequency: upward crossings of the resting force a second.

    Returns
    -------
    float
        A minute; `stickwright.mechanics.fit.ALWAYS` where the threshold lies within one sd of the resting force.

    Notes
    -----
    Source: upward crossings of a level by Gaussian noise in one dimension, f0 exp(-(U - m)^2/(2 s^2)) [rice-1944].

    Examples
    --------
    >>> round(crossings_per_min(0.10, 0.02, 0.03, 1.5), 2)
    2.57
    """
    if involuntary_n <= 0:
        return 0.0 if threshold_n > rest_n else ALWAYS
    if threshold_n - rest_n < involuntary_n:
        return ALWAYS
    above_sds = (threshold_n - rest_n) / involuntary_n
    return 60 * crossing_hz * math.exp(-0.5 * above_sds * above_sds)


def presses_per_min(action: Action, *, toggle: bool = False) -> tuple[float, Message | None]:
    """Presses in the busy minute, and what stands in for a count.

    Parameters
    ----------
    action : Action
    toggle : bool, default False
        A press to start and a press to stop: twice as many.

    Examples
    --------
    >>> jump = Action(name="jump", kind="press", busy_presses_per_s=0.25)
    >>> presses_per_min(jump), presses_per_min(jump, toggle=True)
    ((15.0, None), (30.0, None))
    """
    doubled = 2.0 if toggle else 1.0
    if action.busy_presses_per_s is not None:
        return doubled * 60 * action.busy_presses_per_s, None
    if action.presses_per_s is not None:
        count = 60 * action.presses_per_s
        return doubled * count, message(Presses.count_average, action=Name(action.name), count_per_min=count)
    usual = message(Presses.count_usual, action=Name(action.name), count_per_min=USUAL_PRESSES_PER_MIN)
    return doubled * USUAL_PRESSES_PER_MIN, usual


def spasms_per_s(player: Player) -> float | None:
    """How often spasms come, by whichever site noted most; None when none did."""
    return max((site.spasm.rate_per_s for site in player.site if site.spasm is not None), default=None)
