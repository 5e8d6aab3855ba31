"""Why a set-up does not fit, what limits one that does, and the one change that would help, with figures."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.fit_reasons import FitReasons, Others
from stickwright.codes.message import Message, message
from stickwright.codes.sites import Part
from stickwright.mechanics.equilibrium import best_lever_ratio, linear_share
from stickwright.mechanics.fit import ALWAYS, Evaluated, evaluate, spasms_above_per_min
from stickwright.mechanics.setups import SetupArrays
from stickwright.mechanics.site_inputs import Rules, SiteInputs, central
from stickwright.mechanics.suiting import unsuited
from stickwright.mechanics.unread import Rule
from stickwright.model.fit import Doubt
from stickwright.model.plan import Demand
from stickwright.units import figures

__all__ = [
    "NOTHING_NEAR", "Broken", "SiteSetups", "Situation", "best_extensions", "broken_rules", "extension_note", "helping_change", "limit_of",
    "weakest_place",
]  # fmt: skip

Array = NDArray[np.float64]
_Fits = Callable[[SetupArrays, SiteInputs], bool]
LONGEST_EXTENSION_M = 0.060
"""Longer than this is another stick, not an extension: common practice, no source."""
NOTHING_NEAR = message(FitReasons.nothing_near)
"""Said of a set-up that no rule comes near to."""
OTHER_VERSION = 4.0
"""Lighter or firmer than this factor is another stick, not a version of it: common practice, no source."""


@dataclass(frozen=True)
class Situation:
    """What the reasons need to know of the player at this site."""

    site: str
    rest_n: float
    involuntary_n: float
    comfortable_of_maximal: float
    """Comfortable force as a share of the largest."""
    can_lift: bool | None
    room_m: tuple[float, float] | None
    longest_hold_s: float | None
    supported: bool
    """Whether the limb's weight is already taken by a support."""
    body_part: Part | None = None
    """What would have to lift off a touch surface; sizes are not judged without it."""


@dataclass(frozen=True, eq=False)
class SiteSetups:
    """Set-ups worked out at one site, and what the rules and the reasons need to know of it.

    Parameters
    ----------
    setups, found, inputs : SetupArrays, Evaluated, SiteInputs
        Of the same set-ups, in the same order.
    direction_rad : array, shape (k,)
    demand : Demand
    rules : Rules
    situation : Situation
    """

    setups: SetupArrays
    found: Evaluated
    inputs: SiteInputs
    direction_rad: Array
    demand: Demand
    rules: Rules
    situation: Situation


@dataclass(frozen=True)
class Broken:
    """A rule that a set-up breaks."""

    rule: Rule
    text: Message
    untried: bool = False
    """Whether nobody tried what the rule asks: then it refuses nothing."""


def broken_rules(place: int, here: SiteSetups) -> tuple[Broken, ...]:
    """Each rule that the set-up breaks at the site's figures, read or assumed; empty when it keeps all."""
    setups, inputs, situation = here.setups, here.inputs, here.situation
    out: list[Broken] = []
    stick = setups.kit.stick[setups.stick[place]]
    if setups.touch[place] and not situation.can_lift:
        tried = situation.can_lift is not None
        lifts = message(FitReasons.cannot_lift, part=situation.body_part, tried=tried)
        out.append(Broken("touch", lifts, not tried))
    if situation.room_m and stick.base_m and stick.stands(situation.room_m) == "too large":
        turned = stick.model_copy(update={"crosswise": True}).stands(situation.room_m) == "crosswise"
        large = message(
            FitReasons.base_too_large,
            base_m=(stick.base_m[0], stick.base_m[1]),
            room_m=situation.room_m,
            crosswise=turned,
        )
        out.append(Broken("room", large))
    if situation.body_part:
        told_size = unsuited(situation.body_part, setups, place, float(inputs.force_n[0, inputs.needed].min()))
        out += [Broken(one.rule, one.text, not one.plain) for one in told_size]
    out += [Broken("reach", text) for text in _reach_failures(place, here)]
    out += [Broken("effort", text) for text in _effort_failures(place, here)]
    out += [Broken("unintended", text) for text in _false_failures(place, here)]
    if setups.home_share[place] > here.found.dead_zone[place] + 1e-9:
        stays = message(FitReasons.stays_off_centre, stays_share=float(setups.home_share[place]))
        out.append(Broken("home", stays))
    return tuple(out)


def _reach_failures(place: int, here: SiteSetups) -> list[Message]:
    setups, inputs, direction_rad, rules = here.setups, here.inputs, here.direction_rad, here.rules
    share = here.found.reach_share[place]
    travel = _travel(place, setups, share)
    needed = np.flatnonzero(inputs.needed)
    if share[needed].min() >= rules.weakest_share:
        return []
    if share[needed].min() >= rules.widened_share and travel[needed].min() >= rules.widened_travel_m:
        return []
    short = [int(k) for k in needed if share[k] < rules.widened_share or travel[k] < rules.widened_travel_m]
    worst = weakest_place(short, share, inputs)
    reason = reach_reason(place, setups, inputs, direction_rad, int(worst), float(share[worst]))
    also = [int(k) for k in sorted(short, key=lambda k: share[k]) if k != worst]
    if not also:
        return [reason]
    others, others_rad = _named(also, direction_rad, inputs)
    return [message(FitReasons.short_in_others, reason=reason, others=others, others_rad=others_rad)]


def weakest_place(places: Sequence[int] | NDArray[np.int64], share: Array, inputs: SiteInputs) -> int:
    """The direction that reaches least; where several do not start at all, the one with the least force.

    Parameters
    ----------
    places : sequence of int
        Directions to choose from, as places in `share`.
    share : array, shape (k,)
        Share of the throw reached.
    inputs : SiteInputs
    """
    return min((int(k) for k in places), key=lambda k: (round(float(share[k]), 9), float(inputs.force_n[0, k]), k))


def _named(places: Sequence[int], direction_rad: Array, inputs: SiteInputs) -> tuple[Others, tuple[float, ...]]:
    """Further directions: whether they are all others (that the game needs), and which."""
    if not places:
        return "none", ()
    others = int(inputs.needed.sum()) - 1
    if len(places) >= others > 1:
        return "every" if inputs.needed.all() else "every_needed", ()
    return "listed", tuple(float(direction_rad[k]) for k in places)


def _travel(place: int, setups: SetupArrays, share: Array) -> Array:
    if setups.touch[place]:
        pad: Array = share * setups.height_m[place]
        return pad
    travel: Array = setups.height_m[place] * np.sin(share * setups.stop_rad[place])
    return travel


def reach_reason(
    place: int, setups: SetupArrays, inputs: SiteInputs, direction_rad: Array, k: int, share: float
) -> Message:
    """Whether force or movement range keeps the player from full travel in one direction, with figures."""
    where = float(direction_rad[k])
    force, reach = float(inputs.force_n[0, k]), float(inputs.reach_m[0, k])
    start, full = float(setups.start_force_n[place]), float(setups.full_force_n[place])
    travel = float(setups.travel_m[place])
    firm = _firm(inputs, k)
    if force <= start:
        return message(FitReasons.too_stiff_to_move, direction_rad=where, start_n=start, available_n=force, firm_n=firm)
    ratio = float(best_lever_ratio(force, reach, start, full, travel)) if full > start else 0.0
    if ratio > 1.1 or full > force:
        return message(
            FitReasons.too_stiff, direction_rad=where, full_n=full, start_n=start, available_n=force, firm_n=firm,
            reach_m=reach, reached_share=share,
        )  # fmt: skip
    reached = float(_travel(place, setups, np.array([share]))[0])
    return message(
        FitReasons.travel_too_long, direction_rad=where, travel_m=travel, reached_m=reached, reached_share=share
    )


def _firm(inputs: SiteInputs, k: int) -> float | None:
    """The force on something firm, which is what was read, where a mount's flex is counted and changes it as printed."""
    if inputs.firm_force_n is None:
        return None
    firm = float(inputs.firm_force_n[k])
    return None if figures(firm) == figures(float(inputs.force_n[0, k])) else firm


def _effort_failures(place: int, here: SiteSetups) -> list[Message]:
    """Where the stick moves and is too much for long; one that does not even start is too stiff, and told as that."""
    inputs, direction_rad, rules, asked = here.inputs, here.direction_rad, here.rules, here.found.effort[place]
    effort = np.where(inputs.needed & (asked <= 1.0), asked, 0.0)
    if effort.max() <= rules.effort_share:
        return []
    worst = int(np.argmax(effort))
    over = [int(k) for k in np.flatnonzero(effort > rules.effort_share) if k != worst]
    others, others_rad = _named(over, direction_rad, inputs)
    return [
        message(
            FitReasons.too_tiring, direction_rad=float(direction_rad[worst]), others=others, others_rad=others_rad,
            effort_share=float(effort[worst]), limit_share=rules.effort_share, duty_share=here.demand.duty_share,
        )
    ]  # fmt: skip


def _false_failures(place: int, here: SiteSetups) -> list[Message]:
    setups, found, inputs, situation = here.setups, here.found, here.inputs, here.situation
    rate = float(found.false_rate[place])
    limit = inputs.false_limit_per_min
    if rate <= limit:
        return []
    zone = float(found.dead_zone[place])
    start, full = float(setups.start_force_n[place]), float(setups.full_force_n[place])
    edge = start + zone * (full - start)
    if situation.rest_n > start:
        return [_rest_failure(place, setups, situation.rest_n, rate, limit)]
    if rate >= ALWAYS:
        return [message(FitReasons.always_on, involuntary_n=situation.involuntary_n, dead_zone_share=zone, edge_n=edge)]
    above = float(spasms_above_per_min(np.array([edge]), inputs.spasm_per_min, inputs.spasm_peak_n)[0])
    if above > 0.5 * rate:
        return [
            message(FitReasons.spasms_pass, dead_zone_share=zone, edge_n=edge, often_per_min=rate, limit_per_min=limit)
        ]
    return [
        message(
            FitReasons.movement_passes, involuntary_n=situation.involuntary_n, dead_zone_share=zone, edge_n=edge,
            often_per_min=rate, limit_per_min=limit,
        )
    ]  # fmt: skip


def _rest_failure(place: int, setups: SetupArrays, rest_n: float, rate_per_min: float, limit_per_min: float) -> Message:
    start, travel = float(setups.start_force_n[place]), float(setups.travel_m[place])
    stiffness = float(setups.contact_stiffness_n_per_m[place])
    lies = (rest_n - start) / stiffness if stiffness > 0 else math.inf
    within = lies < travel
    return message(
        FitReasons.resting_force_holds,
        rest_n=rest_n,
        lies_m=lies if within else None,
        lies_share=lies / travel if within else None,
        remain_per_min=None if rate_per_min >= ALWAYS else rate_per_min,
        limit_per_min=limit_per_min,
    )


def limit_of(
    place: int,
    here: SiteSetups,
    weakest: int,
    fails: Sequence[Message],
    doubts: Sequence[Doubt] = (),
    *,
    most_false_per_min: float = 0.0,
) -> Message:
    """What limits the set-up: the first broken rule, else what is to be confirmed, else the nearest rule.

    Parameters
    ----------
    place : int
    here : SiteSetups
    weakest : int
        Place of the weakest needed direction.
    fails : sequence of Message
        Rules broken by what was read.
    doubts : sequence of Doubt
        Rules broken at assumed figures only.
    most_false_per_min : float
        Upper end of the interval of false input: where that passes the limit, it is told.
    """
    if fails or doubts:
        return fails[0] if fails else doubts[0].sentence
    found, inputs, direction_rad, rules = here.found, here.inputs, here.direction_rad, here.rules
    share = float(found.reach_share[place][weakest])
    if share < rules.weakest_share:
        reason = reach_reason(place, here.setups, inputs, direction_rad, weakest, share)
        return message(FitReasons.widened, reason=reason, gain_factor=1 / share)
    margins = {
        "reach": share / rules.weakest_share,
        "effort": rules.effort_share / max(float(found.most_effort[place]), 1e-9),
        "false": inputs.false_limit_per_min / max(float(found.false_rate[place]), 1e-9),
    }
    nearest = min(margins, key=lambda key: (margins[key], key))
    if nearest == "reach" and share < 0.999:
        return message(FitReasons.limiting_direction, direction_rad=float(direction_rad[weakest]), reached_share=share)
    if nearest == "false" or (nearest == "effort" and found.most_effort[place] < 0.5 * rules.effort_share):
        zone = float(found.dead_zone[place])
        rate = float(found.false_rate[place])
        if rate < 0.005 and most_false_per_min > inputs.false_limit_per_min:
            return message(
                FitReasons.unsure_steadiness,
                most_per_min=None if most_false_per_min >= ALWAYS / 10 else most_false_per_min,
                dead_zone_share=zone,
                limit_per_min=inputs.false_limit_per_min,
            )
        if rate < 0.005:
            return NOTHING_NEAR
        return message(FitReasons.steadiness, often_per_min=rate, dead_zone_share=zone)
    worst = int(np.argmax(np.where(inputs.needed, found.effort[place], 0.0)))
    return message(
        FitReasons.effort,
        direction_rad=float(direction_rad[worst]),
        effort_share=float(found.effort[place][worst]),
    )


def best_extensions(
    setups: SetupArrays, place: int, inputs: SiteInputs, direction_rad: Array
) -> tuple[tuple[float, float, float], ...]:
    """Per needed direction: direction (rad), best lever ratio by the closed form, extra length (minus: shorten).

    Parameters
    ----------
    setups : SetupArrays
    place : int
        Of the set-up to be lengthened or shortened.
    inputs : SiteInputs
    direction_rad : array, shape (k,)
    """
    if setups.touch[place]:
        return ()
    start, full, travel = (
        float(column[place]) for column in (setups.start_force_n, setups.full_force_n, setups.travel_m)
    )
    height = float(setups.height_m[place])
    ratios = best_lever_ratio(inputs.force_n[0], inputs.reach_m[0], start, full, travel)
    return tuple(
        (float(direction_rad[k]), float(ratios[k]), float(height * (ratios[k] - 1)))
        for k in np.flatnonzero(inputs.needed)
    )


def extension_note(
    setups: SetupArrays, place: int, found: Evaluated, inputs: SiteInputs, direction_rad: Array
) -> Message | None:
    """Whether lengthening helps in the weakest needed direction, by the closed form; None where it makes no sense.

    Parameters
    ----------
    setups : SetupArrays
    place : int
    found, inputs : Evaluated, SiteInputs
    direction_rad : array, shape (k,)
    """
    needed = np.flatnonzero(inputs.needed)
    k = weakest_place(needed, found.reach_share[place], inputs)
    if setups.touch[place] or found.reach_share[place][k] >= 0.999:
        return None
    start, full, travel = (
        float(column[place]) for column in (setups.start_force_n, setups.full_force_n, setups.travel_m)
    )
    force, reach = float(inputs.force_n[0, k]), float(inputs.reach_m[0, k])
    ratio = float(best_lever_ratio(force, reach, start, full, travel))
    where = float(direction_rad[k])
    here = float(linear_share(force, reach, start, full, travel))
    there = float(linear_share(force, reach, start / ratio, full / ratio, travel * ratio))
    if ratio <= 1.0:
        return message(FitReasons.longer_is_worse, direction_rad=where, best_factor=ratio)
    if ratio <= 1.05 or _whole(here) == _whole(there):
        return message(FitReasons.longer_is_same, direction_rad=where, best_factor=ratio)
    extra = float(setups.height_m[place]) * (ratio - 1)
    if extra > LONGEST_EXTENSION_M:
        return None
    return message(
        FitReasons.longer_is_better,
        direction_rad=where,
        further=bool(setups.extension[place] >= 0 or setups.topper[place] >= 0),
        extra_m=extra,
        from_share=here,
        to_share=there,
        best_factor=ratio,
    )


def _whole(share: float) -> float:
    """A share as it is printed: in whole per cent, a small one with a decimal."""
    return round(share, 2 if share >= 0.095 else 3)


def helping_change(place: int, here: SiteSetups) -> Message | None:
    """The one change that would make the set-up fit, worked out by trying each; None when it fits or none does."""
    found, inputs, rules = here.found, here.inputs, here.rules
    if found.shortfall[place] <= 0 or (inputs.static is not None and inputs.static[place] > 0):
        return None
    one = here.setups.take([place])
    centre = central(inputs)

    def fits(some: SetupArrays, site: SiteInputs) -> bool:
        return bool(evaluate(some, site, rules).shortfall[0] <= 0)

    return (
        _support_change(one, centre, here.situation, fits)
        or _force_change(one, centre, rules)
        or _need_change(one, centre, here.direction_rad, found.reach_share[place], fits)
    )


def _support_change(one: SetupArrays, centre: SiteInputs, situation: Situation, fits: _Fits) -> Message | None:
    if situation.rest_n > 0 and fits(one, replace(centre, rest_n=np.zeros(1))):
        return message(FitReasons.support_helps, rest_n=situation.rest_n, more=situation.supported)
    if centre.spasm_per_min > 0 and fits(one, replace(centre, spasm_per_min=0.0)):
        return message(FitReasons.filter_helps)
    if fits(one, replace(centre, involuntary_n=centre.involuntary_n / 2)):
        return message(FitReasons.steadying_helps)
    return None


def _force_change(one: SetupArrays, centre: SiteInputs, rules: Rules) -> Message | None:
    factors = np.geomspace(1 / OTHER_VERSION, OTHER_VERSION, 81)
    would = evaluate(one.versions(0, factors), centre, rules).shortfall <= 0
    if not would.any():
        return None
    factor = float(min(factors[would], key=lambda value: abs(math.log(value))))
    start, full = float(one.start_force_n[0] * factor), float(one.full_force_n[0] * factor)
    return message(FitReasons.version_helps, softer=factor < 1, start_n=start, full_n=full)


def _need_change(
    one: SetupArrays, centre: SiteInputs, direction_rad: Array, reach_share: Array, fits: _Fits
) -> Message | None:
    order = [int(k) for k in np.argsort(reach_share) if centre.needed[k]]
    for count in range(1, min(3, len(order) - 1) + 1):
        needed = centre.needed.copy()
        needed[order[:count]] = False
        if fits(one, replace(centre, needed=needed)):
            without = tuple(float(direction_rad[k]) for k in order[:count])
            return message(FitReasons.fewer_directions_help, directions_rad=without)
    return None
