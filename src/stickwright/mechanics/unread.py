"""What nobody measured, and how far the truth may lie on a set-up's side.

A set-up is refused by readings, never by an assumed figure alone: it is refused only where it breaks a rule whatever the
assumed figures are within their plausible range. Where it breaks one at the assumed figures only, it stays in, pays for
that in the ranking, and carries what is to be measured.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.message import Message, message
from stickwright.codes.to_confirm import ToConfirm

__all__ = [
    "CONFIRM_BITS", "MEASURE", "NOTHING_UNREAD", "RESTS_ON", "Figure", "Rule", "Unread", "doubted_utility",
    "to_confirm",
]  # fmt: skip

Array = NDArray[np.float64]
Figure = Literal[
    "involuntary force", "frequency", "resting force", "movement range", "directions", "fall-off", "level", "duty", "comfortable",
    "spasms", "lifting", "size", "bench", "weight", "press steadiness", "press force", "press rate", "landing", "count", "clear",
    "button",
]  # fmt: skip
Rule = Literal[
    "reach", "effort", "unintended", "home", "touch", "room", "size", "strength", "press force", "press unintended", "landing",
    "clear",
]  # fmt: skip

CONFIRM_BITS = 0.5
"""Bits taken off a set-up that breaks a rule at assumed figures only, before they are divided by how far it is off: three
ties, so that one whose figures were read goes first; common practice, no source."""
LEAST_CROSSING_HZ = 0.2
"""Slower than any sway of neck or trunk: where the frequency of involuntary movement was not read (common practice)."""
BENT_FALL_OFF = 2.0
"""Power of a force that holds up along the reach: the other end where only a straight fall-off was assumed (common practice)."""
LEAST_LEVEL_SHARE = 0.5
"""Walking instead of running, where the game's file does not say how far the stick is pushed (common practice)."""
LEAST_DUTY_SHARE = 0.1
"""Time in use where the game's file does not say it (common practice)."""
LEAST_COMFORTABLE_SHARE = 0.3
"""Comfortable over maximal force, where nobody measured it: a careful player's (common practice)."""
LEAST_STRONG_SHARE = 0.25
"""Of the spasms whose peaks were not read, how many at least are as strong as if they were spread evenly (common practice)."""
REACH_FACTORS = (1.0, 2.0, 4.0, 16.0)
"""Times the usual movement range, where none was read."""

MEASURE: dict[Figure, Message] = {
    "involuntary force": message(ToConfirm.hold_still),
    "frequency": message(ToConfirm.hold_still),
    "resting force": message(ToConfirm.resting_force),
    "movement range": message(ToConfirm.movement_range),
    "directions": message(ToConfirm.other_directions),
    "fall-off": message(ToConfirm.half_way_force),
    "level": message(ToConfirm.usual_deflection),
    "duty": message(ToConfirm.time_in_use),
    "comfortable": message(ToConfirm.comfortable_share),
    "spasms": message(ToConfirm.spasm_peaks),
    "lifting": message(ToConfirm.lifts_off),
    "size": message(ToConfirm.stays_on),
    "weight": message(ToConfirm.resting_weight),
    "press steadiness": message(ToConfirm.rest_steadiness),
    "press force": message(ToConfirm.press_force),
    "press rate": message(ToConfirm.press_rate),
    "landing": message(ToConfirm.landing),
    "count": message(ToConfirm.press_count),
    "clear": message(ToConfirm.rests_clear),
    "button": message(ToConfirm.button_force),
    "bench": message(ToConfirm.bench),
}
"""The reading that would replace an assumed figure."""

_TRIED: frozenset[Figure] = frozenset({"lifting", "size", "clear"})
"""What is tried and not measured."""

RESTS_ON: dict[Rule, tuple[Figure, ...]] = {
    "reach": ("movement range", "directions", "fall-off", "bench"),
    "effort": ("level", "duty", "comfortable", "directions", "movement range", "fall-off", "bench"),
    "unintended": ("resting force", "involuntary force", "frequency", "spasms", "bench"),
    "home": ("bench",),
    "touch": ("lifting",),
    "room": (),
    "size": ("size",),
    "strength": ("size",),
    "press force": ("press force", "button", "count"),
    "press unintended": ("weight", "press steadiness", "frequency", "spasms", "button"),
    "landing": ("landing",),
    "clear": ("clear",),
}
"""The figures that each rule uses and that may be assumed."""


@dataclass(frozen=True, eq=False)
class Unread:
    """Which figures of a site were assumed.

    Parameters
    ----------
    figures : frozenset of str
    force_up, reach_up : array, shape (k,), or None
        How many times more the player may have in each direction: above 1 where it was read off the neighbours.
    effort_limit_share : float or None
        Limit on effort at the least time in use and the most force there may be; None when both are known.
    """

    figures: frozenset[Figure] = frozenset()
    force_up: Array | None = None
    reach_up: Array | None = None
    effort_limit_share: float | None = None

    def with_figures(self, *more: Figure) -> Unread:
        """The same with further figures assumed."""
        return replace(self, figures=self.figures | set(more))


NOTHING_UNREAD = Unread()


def to_confirm(rule: Rule, figures: Collection[Figure]) -> Message:
    """What is to be done before a rule can be trusted that rests on assumed figures.

    Parameters
    ----------
    rule : str
    figures : collection of str
        Those that were assumed.

    Examples
    --------
    >>> [one.text for one in to_confirm("unintended", {"involuntary force", "frequency", "level"}).param("readings")]
    ['hold_still']
    >>> [one.text for one in to_confirm("touch", {"lifting"}).param("trials")]
    ['lifts_off']
    """
    assumed = [one for one in RESTS_ON[rule] if one in figures or one in _TRIED]
    return message(
        ToConfirm.steps,
        trials=tuple(dict.fromkeys(MEASURE[one] for one in assumed if one in _TRIED)),
        readings=tuple(dict.fromkeys(MEASURE[one] for one in assumed if one not in _TRIED)),
    )


def doubted_utility(bits: Array | float, shortfall: Array | float) -> Array:
    """What a set-up is worth that breaks a rule at assumed figures only: never below 0, so always before a refused one.

    Parameters
    ----------
    bits : array
        Weighted over directions.
    shortfall : array
        How far off it is at the assumed figures, in doublings.

    Examples
    --------
    >>> float(doubted_utility(2.5, 1.0)), float(doubted_utility(0.2, 3.0))
    (1.0, 0.0)
    """
    worth: Array = np.maximum(0.0, np.asarray(bits) - CONFIRM_BITS) / (1.0 + np.asarray(shortfall))
    return worth
