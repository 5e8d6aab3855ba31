"""One site as numbers, the rules a set-up is held against there, and the site at its best where figures were assumed."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stickwright.mechanics.unread import (
    BENT_FALL_OFF,
    LEAST_CROSSING_HZ,
    LEAST_LEVEL_SHARE,
    LEAST_STRONG_SHARE,
    NOTHING_UNREAD,
    REACH_FACTORS,
    Unread,
)

__all__ = ["Rules", "SiteInputs", "central", "favourable"]

Array = NDArray[np.float64]


@dataclass(frozen=True)
class Rules:
    """What practitioners would sign: common practice, no source.

    A set-up is dropped when its weakest needed direction reaches under `weakest_share` (unless at least
    `widened_share` and `widened_travel_m`, which its own range per direction can widen: a gain of 3 at most,
    as noise is widened with it), when the game's usual
    level asks more than `effort_share` of the comfortable force (more for what is seldom used: `rules_at_duty`), or when
    false input passes the limit.
    """

    weakest_share: float = 0.6
    widened_share: float = 1 / 3
    widened_travel_m: float = 0.003
    effort_share: float = 0.5
    tie_bits: float = 0.15


@dataclass(frozen=True, eq=False)
class SiteInputs:
    """One site, as numbers.

    Parameters
    ----------
    force_n, reach_m : array, shape (draws, k)
        Draw 0 is the best single figure.
    weight : array, shape (k,)
        Of the directions, adding up to 1.
    needed : array of bool, shape (k,)
        Directions that count for weakest and effort.
    plane : array, shape (slopes, k)
        Share of force and reach that lies in the stick's plane at each slope of `Setups.slopes_rad`.
    level_share : float
        The game's usual level.
    rest_n, involuntary_n, crossing_hz, limb_n_per_m : array, shape (draws,)
    noise_share, fall_off : float
    spasm_per_min : float
    spasm_peak_n : tuple of float
    false_limit_per_min : float
    stick_scale : array, shape (sticks, draws), or None
        Factor on each stick's forces in each draw: what its bench leaves open; 1 when None.
    static : array, shape (s,), or None
        Violations that do not depend on the readings (base too large, finger cannot lift), in the same measure.
    static_doubt : array, shape (s,), or None
        The same for what nobody tried (whether the finger can lift, whether so small a stick suits): it refuses nothing.
    unread : Unread
        Which of the figures were assumed.
    effort_limit_share : float or None
        Limit on effort instead of that of the rules.
    firm_force_n : array, shape (k,), or None
        Best single figures of the force on something firm, where `force_n` is what a stick feels through its mount.
    """

    force_n: Array
    reach_m: Array
    weight: Array
    needed: NDArray[np.bool_]
    plane: Array
    level_share: float
    rest_n: Array
    involuntary_n: Array
    crossing_hz: Array
    limb_n_per_m: Array
    noise_share: float
    fall_off: float
    spasm_per_min: float
    spasm_peak_n: tuple[float, ...]
    false_limit_per_min: float
    stick_scale: Array | None = None
    static: Array | None = None
    static_doubt: Array | None = None
    unread: Unread = NOTHING_UNREAD
    effort_limit_share: float | None = None
    firm_force_n: Array | None = None

    def rules(self, rules: Rules) -> Rules:
        """The limits that hold here."""
        return rules if self.effort_limit_share is None else replace(rules, effort_share=self.effort_limit_share)

    def at(self, places: NDArray[np.int64]) -> SiteInputs:
        """What belongs to some set-ups only."""
        return replace(
            self,
            static=None if self.static is None else self.static[places],
            static_doubt=None if self.static_doubt is None else self.static_doubt[places],
        )


def central(inputs: SiteInputs) -> SiteInputs:
    """The best single figures alone, without what no reading changes."""
    return replace(
        inputs,
        force_n=inputs.force_n[:1],
        reach_m=inputs.reach_m[:1],
        rest_n=inputs.rest_n[:1],
        involuntary_n=inputs.involuntary_n[:1],
        crossing_hz=inputs.crossing_hz[:1],
        limb_n_per_m=inputs.limb_n_per_m[:1],
        stick_scale=None,
        static=None,
        static_doubt=None,
    )


def favourable(inputs: SiteInputs) -> tuple[SiteInputs, ...]:
    """The site with its assumed figures where they suit a set-up best; none when everything was read.

    Returns
    -------
    tuple of SiteInputs
        Several where no single end suits every rule: more reach brings the stop nearer and asks more force. A set-up
        that breaks a rule in each of them is refused by what was read.
    """
    unread = inputs.unread
    if not unread.figures:
        return ()
    best = replace(
        inputs,
        rest_n=np.zeros_like(inputs.rest_n) if "resting force" in unread.figures else inputs.rest_n,
        involuntary_n=np.zeros_like(inputs.involuntary_n) if "involuntary force" in unread.figures else inputs.involuntary_n,
        crossing_hz=np.minimum(inputs.crossing_hz, LEAST_CROSSING_HZ) if "frequency" in unread.figures else inputs.crossing_hz,
        spasm_per_min=inputs.spasm_per_min * (LEAST_STRONG_SHARE if "spasms" in unread.figures else 1.0),
        level_share=min(inputs.level_share, LEAST_LEVEL_SHARE) if "level" in unread.figures else inputs.level_share,
        force_n=inputs.force_n if unread.force_up is None else inputs.force_n * unread.force_up,
        reach_m=inputs.reach_m if unread.reach_up is None else inputs.reach_m * unread.reach_up,
        effort_limit_share=unread.effort_limit_share,
        firm_force_n=inputs.firm_force_n if unread.force_up is None else None,
        unread=NOTHING_UNREAD,
    )  # fmt: skip
    if "movement range" in unread.figures:
        return tuple(replace(best, reach_m=best.reach_m * factor) for factor in REACH_FACTORS)
    if "fall-off" in unread.figures:
        return best, replace(best, fall_off=BENT_FALL_OFF)
    return (best,)
