"""Why a set-up does not fit, what limits one that does, and the one change that would help, with figures."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stickwright.mechanics.crossing import best_lever_ratio, linear_share
from stickwright.mechanics.fit import ALWAYS, Evaluated, Rules, SiteInputs, central, evaluate, spasms_above_per_min
from stickwright.mechanics.setups import Setups
from stickwright.mechanics.suiting import unsuited
from stickwright.mechanics.unread import Rule
from stickwright.model.plan import Demand, Doubt, direction_words
from stickwright.units import figures, spoken

__all__ = [
    "NOTHING_NEAR", "Broken", "Situation", "best_extensions", "broken_rules", "extension_sentence", "helping_change",
    "limit_sentence",
    "weakest_place",
]  # fmt: skip

Array = NDArray[np.float64]
LONGEST_EXTENSION_M = 0.060
"""Longer than this is another stick, not an extension: common practice, no source."""
NOTHING_NEAR = "nothing near a limit"
"""Said of a set-up that no rule comes near to."""
OTHER_VERSION = 4.0
"""Lighter or firmer than this factor is another stick, not a version of it: common practice, no source."""


@dataclass(frozen=True)
class Situation:
    """What the sentences need to know of the player at this site."""

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
    part: str = "finger"
    """What would have to lift off a touch surface."""
    body_part: str = ""
    """As in `stickwright.model.player.PARTS`; sizes are not judged without it."""


def _percent(share: float) -> str:
    return f"{100 * share:.0f} %" if share >= 0.095 or share == 0 else f"{100 * share:.1f} %"


@dataclass(frozen=True)
class Broken:
    """A rule that a set-up breaks."""

    rule: Rule
    text: str
    untried: bool = False
    """Whether nobody tried what the rule asks: then it refuses nothing."""


def broken_rules(
    place: int,
    setups: Setups,
    found: Evaluated,
    inputs: SiteInputs,
    direction_rad: Array,
    demand: Demand,
    rules: Rules,
    situation: Situation,
) -> tuple[Broken, ...]:
    """Each rule that the set-up breaks at the site's figures, read or assumed, in a sentence; empty when it keeps all.

    Parameters
    ----------
    place : int
    setups, found, inputs : Setups, Evaluated, SiteInputs
    direction_rad : array, shape (k,)
    demand : Demand
    rules : Rules
    situation : Situation
    """
    out: list[Broken] = []
    stick = setups.kit.stick[setups.stick[place]]
    if setups.touch[place] and not situation.can_lift:
        tried = situation.can_lift is not None
        why = (
            f"the {situation.part} cannot lift off"
            if tried
            else f"nobody has tried whether the {situation.part} can lift off"
        )
        out.append(Broken("touch", f"touch surface: {why}, and resting on it is input", not tried))
    if situation.room_m and stick.base_m and stick.stands(situation.room_m) == "too large":
        turned = stick.model_copy(update={"crosswise": True}).stands(situation.room_m) == "crosswise"
        text = (
            f"too large: its base is {stick.base_m[0] * 1e3:.0f} x {stick.base_m[1] * 1e3:.0f} mm, "
            f"the free place {situation.room_m[0] * 1e3:.0f} x {situation.room_m[1] * 1e3:.0f} mm"
            f"{'; it would fit crosswise, but cannot be used so' if turned else ''}"
        )
        out.append(Broken("room", text))
    if situation.body_part:
        told_size = unsuited(situation.body_part, setups, place, float(inputs.force_n[0, inputs.needed].min()))
        out += [Broken(one.rule, one.text, not one.plain) for one in told_size]
    out += [Broken("reach", text) for text in _reach_failures(place, setups, found, inputs, direction_rad, rules)]
    out += [Broken("effort", text) for text in _effort_failures(place, found, inputs, direction_rad, demand, rules)]
    out += [Broken("unintended", text) for text in _false_failures(place, setups, found, inputs, situation)]
    if setups.home_share[place] > found.dead_zone[place] + 1e-9:
        home = _percent(float(setups.home_share[place]))
        out.append(Broken("home", f"does not come home: it stays at {home} of its throw by itself"))
    return tuple(out)


def _reach_failures(
    place: int, setups: Setups, found: Evaluated, inputs: SiteInputs, direction_rad: Array, rules: Rules
) -> list[str]:
    share = found.reach_share[place]
    travel = _travel(place, setups, share)
    needed = np.flatnonzero(inputs.needed)
    if share[needed].min() >= rules.weakest_share:
        return []
    if share[needed].min() >= rules.widened_share and travel[needed].min() >= rules.widened_travel_m:
        return []
    short = [int(k) for k in needed if share[k] < rules.widened_share or travel[k] < rules.widened_travel_m]
    worst = weakest_place(short, share, inputs)
    words = [reach_sentence(place, setups, inputs, direction_rad, int(worst), float(share[worst]))]
    others = [int(k) for k in sorted(short, key=lambda k: share[k]) if k != worst]
    if others:
        words[0] += f"; it also falls short {_named(others, direction_rad, inputs)}"
    return words


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


def _named(places: Sequence[int], direction_rad: Array, inputs: SiteInputs) -> str:
    """Directions in words; all others that the game needs in one."""
    others = int(inputs.needed.sum()) - 1
    if len(places) >= others > 1:
        return "in every other direction" + ("" if inputs.needed.all() else " needed")
    return _listed(places, direction_rad)


def _listed(places: Sequence[int], direction_rad: Array) -> str:
    names = [direction_words(float(direction_rad[k])) for k in places]
    return " and ".join(part for part in (", ".join(names[:-1]), names[-1]) if part)


def _travel(place: int, setups: Setups, share: Array) -> Array:
    if setups.touch[place]:
        pad: Array = share * setups.height_m[place]
        return pad
    travel: Array = setups.height_m[place] * np.sin(share * setups.stop_rad[place])
    return travel


def reach_sentence(place: int, setups: Setups, inputs: SiteInputs, direction_rad: Array, k: int, share: float) -> str:
    """Whether force or reach keeps the player from the stop in one direction, with figures."""
    where = direction_words(float(direction_rad[k]))
    force, reach = float(inputs.force_n[0, k]), float(inputs.reach_m[0, k])
    start, full = float(setups.start_force_n[place]), float(setups.full_force_n[place])
    travel = float(setups.travel_m[place])
    if force <= start:
        return f"too heavy {where}: takes {spoken(start, 'n')} to start, the player has {_has(inputs, k)}"
    ratio = float(best_lever_ratio(force, reach, start, full, travel)) if full > start else 0.0
    if ratio > 1.1 or full > force:
        return (
            f"too heavy {where}: needs {spoken(full, 'n')} at the stop and {spoken(start, 'n')} to start, "
            f"the player has {_has(inputs, k)} at the centre and none at {spoken(reach, 'mm')}, so it reaches "
            f"{_percent(share)} of the throw"
        )
    way = float(_travel(place, setups, np.array([share]))[0])
    return (
        f"throw too long {where}: the stop is at {spoken(travel, 'mm')}, the player gets to {spoken(way, 'mm')} "
        f"({_percent(share)}); reach, not force, limits"
    )


def _has(inputs: SiteInputs, k: int) -> str:
    """The force at the centre; where a mount's flex is counted, without it too, since that is what was read."""
    told = spoken(float(inputs.force_n[0, k]), "n")
    if inputs.firm_force_n is None or spoken(float(inputs.firm_force_n[k]), "n") == told:
        return told
    return f"{told} through the flex of its mount ({spoken(float(inputs.firm_force_n[k]), 'n')} without it)"


def _effort_failures(
    place: int, found: Evaluated, inputs: SiteInputs, direction_rad: Array, demand: Demand, rules: Rules
) -> list[str]:
    """Where the stick moves and is too much for long; one that does not even start is too heavy, and told as that."""
    effort = np.where(inputs.needed & (found.effort[place] <= 1.0), found.effort[place], 0.0)
    if effort.max() <= rules.effort_share:
        return []
    worst = int(np.argmax(effort))
    where = direction_words(float(direction_rad[worst]))
    over = [int(k) for k in np.flatnonzero(effort > rules.effort_share) if k != worst]
    more = f" (and {_named(over, direction_rad, inputs)})" if over else ""
    share = _over(float(effort[worst]), rules.effort_share)
    return [
        f"too tiring {where}{more}: at the game's usual level it asks {share} of the comfortable force "
        f"(limit {_percent(rules.effort_share)}), and the game uses the stick {_percent(demand.duty_share)} of the time"
    ]


def _over(share: float, limit: float) -> str:
    """A share above its limit, never printed as the limit itself."""
    return _percent(share) if _percent(share) != _percent(limit) else f"just over {_percent(limit)}"


def _false_failures(
    place: int, setups: Setups, found: Evaluated, inputs: SiteInputs, situation: Situation
) -> list[str]:
    rate = float(found.false_rate[place])
    if rate <= inputs.false_limit_per_min:
        return []
    zone = float(found.dead_zone[place])
    start, full = float(setups.start_force_n[place]), float(setups.full_force_n[place])
    edge = start + zone * (full - start)
    limit = f"limit {inputs.false_limit_per_min:g}"
    if situation.rest_n > start:
        stiffness = float(setups.contact_stiffness_n_per_m[place])
        lies = (situation.rest_n - start) / stiffness if stiffness > 0 else math.inf
        travel = float(setups.travel_m[place])
        where = (
            f"by {spoken(lies, 'mm')}, {_percent(lies / travel)} of the throw"
            if lies < travel
            else "all the way to the stop"
        )
        text = f"too light: the resting limb ({spoken(situation.rest_n, 'n')}) keeps it deflected {where}"
        return [text + ("" if rate >= ALWAYS else f", and {figures(rate)} false inputs a minute remain ({limit})")]
    if rate >= ALWAYS:
        return [
            f"too light: involuntary movement ({spoken(situation.involuntary_n, 'n')} rms) is about as strong as the "
            f"stick even with a dead zone of {_percent(zone)} ({spoken(edge, 'n')}): always on"
        ]
    above = float(spasms_above_per_min(np.array([edge]), inputs.spasm_per_min, inputs.spasm_peak_n)[0])
    spasms = above > 0.5 * rate
    cause = "spasms pass" if spasms else f"involuntary movement ({spoken(situation.involuntary_n, 'n')} rms) passes"
    return [
        f"{'not held back' if spasms else 'too light'}: {cause} a dead zone of {_percent(zone)} "
        f"({spoken(edge, 'n')}) {figures(rate)} times a minute ({limit})"
    ]


def limit_sentence(
    place: int,
    setups: Setups,
    found: Evaluated,
    inputs: SiteInputs,
    direction_rad: Array,
    weakest: int,
    fails: Sequence[str],
    rules: Rules,
    doubts: Sequence[Doubt] = (),
    *,
    most_false_per_min: float = 0.0,
) -> str:
    """What limits the set-up: the first broken rule, else what is to be confirmed, else the nearest rule.

    Parameters
    ----------
    place : int
    setups, found, inputs : Setups, Evaluated, SiteInputs
    direction_rad : array, shape (k,)
    weakest : int
        Place of the weakest needed direction.
    fails : sequence of str
        Rules broken by what was read.
    rules : Rules
    doubts : sequence of Doubt
        Rules broken at assumed figures only.
    most_false_per_min : float
        Upper end of the interval of false input: where that passes the limit, it is told.
    """
    if fails or doubts:
        return fails[0] if fails else doubts[0].sentence
    share = float(found.reach_share[place][weakest])
    if share < rules.weakest_share:
        return (
            reach_sentence(place, setups, inputs, direction_rad, weakest, share)
            + f"; its range there is to be widened {1 / share:.1f} times in the tuning"
        )
    margins = {
        "reach": share / rules.weakest_share,
        "effort": rules.effort_share / max(float(found.most_effort[place]), 1e-9),
        "false": inputs.false_limit_per_min / max(float(found.false_rate[place]), 1e-9),
    }
    nearest = min(margins, key=lambda key: (margins[key], key))
    if nearest == "reach" and share < 0.999:
        where = direction_words(float(direction_rad[weakest]))
        return f"reach {where}, {_percent(share)} of the throw, is the first to give"
    if nearest == "false" or (nearest == "effort" and found.most_effort[place] < 0.5 * rules.effort_share):
        zone = float(found.dead_zone[place])
        rate = float(found.false_rate[place])
        if rate < 0.005 and most_false_per_min > inputs.false_limit_per_min:
            most = "all the time" if most_false_per_min >= ALWAYS / 10 else f"{figures(most_false_per_min)} a minute"
            return (
                f"steadiness is not sure: false input could be up to {most} with a dead zone of {_percent(zone)} "
                f"(limit {inputs.false_limit_per_min:g}); measure 60 s at rest"
            )
        if rate < 0.005:
            return NOTHING_NEAR
        return f"steadiness: {figures(rate)} false inputs a minute with a dead zone of {_percent(zone)}"
    worst = int(np.argmax(np.where(inputs.needed, found.effort[place], 0.0)))
    return (
        f"effort: pushing {direction_words(float(direction_rad[worst]))} asks "
        f"{_percent(float(found.effort[place][worst]))} of the comfortable force at the game's usual level"
    )


def best_extensions(
    setups: Setups, place: int, inputs: SiteInputs, direction_rad: Array
) -> tuple[tuple[str, float, float], ...]:
    """Per needed direction: words, best lever ratio by the closed form, extra length (minus: shorten).

    Parameters
    ----------
    setups : Setups
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
        (direction_words(float(direction_rad[k])), float(ratios[k]), float(height * (ratios[k] - 1)))
        for k in np.flatnonzero(inputs.needed)
    )


def extension_sentence(setups: Setups, place: int, found: Evaluated, inputs: SiteInputs, direction_rad: Array) -> str:
    """Whether lengthening helps in the weakest needed direction, by the closed form.

    Parameters
    ----------
    setups : Setups
    place : int
    found, inputs : Evaluated, SiteInputs
    direction_rad : array, shape (k,)
    """
    needed = np.flatnonzero(inputs.needed)
    k = weakest_place(needed, found.reach_share[place], inputs)
    if setups.touch[place] or found.reach_share[place][k] >= 0.999:
        return ""
    start, full, travel = (
        float(column[place]) for column in (setups.start_force_n, setups.full_force_n, setups.travel_m)
    )
    force, reach = float(inputs.force_n[0, k]), float(inputs.reach_m[0, k])
    ratio = float(best_lever_ratio(force, reach, start, full, travel))
    where = direction_words(float(direction_rad[k]))
    here = float(linear_share(force, reach, start, full, travel))
    there = float(linear_share(force, reach, start / ratio, full / ratio, travel * ratio))
    if ratio <= 1.0:
        return f"a longer lever would lower the reach {where}: reach, not force, limits (best lever ratio {ratio:.2f})"
    if ratio <= 1.05 or _percent(here) == _percent(there):
        return f"a longer lever would hardly change the reach {where} (best lever ratio {ratio:.2f})"
    extra = float(setups.height_m[place]) * (ratio - 1)
    if extra > LONGEST_EXTENSION_M:
        return ""
    gain = "still only brings" if there < 0.3 else "brings"
    further = "best further" if setups.extension[place] >= 0 or setups.topper[place] >= 0 else "best"
    return (
        f"its {further} extension {where} is {spoken(extra, 'mm')} and {gain} it from "
        f"{_percent(here)} to {_percent(there)} of the throw (small-angle formula), at {ratio:.1f} times the travel"
    )


def helping_change(
    place: int,
    setups: Setups,
    found: Evaluated,
    inputs: SiteInputs,
    direction_rad: Array,
    rules: Rules,
    situation: Situation,
) -> str:
    """The one change that would make the set-up fit, worked out by trying each; empty when it fits or none does.

    Parameters
    ----------
    place : int
    setups, found, inputs : Setups, Evaluated, SiteInputs
    direction_rad : array, shape (k,)
    rules : Rules
    situation : Situation
    """
    if found.shortfall[place] <= 0 or (inputs.static is not None and inputs.static[place] > 0):
        return ""
    one = setups.take([place])
    centre = central(inputs)

    def fits(some: Setups, site: SiteInputs) -> bool:
        return bool(evaluate(some, site, rules).shortfall[0] <= 0)

    return (
        _support_change(one, centre, situation, fits)
        or _force_change(one, centre, rules)
        or _need_change(one, centre, direction_rad, found.reach_share[place], fits)
    )


def _support_change(one: Setups, centre: SiteInputs, situation: Situation, fits) -> str:  # type: ignore[no-untyped-def]
    if situation.rest_n > 0 and fits(one, replace(centre, rest_n=np.zeros(1))):
        more = "more of the limb's weight" if situation.supported else "the limb's weight"
        return f"a support that takes {more} ({spoken(situation.rest_n, 'n')} now) would make it fit"
    if centre.spasm_per_min > 0 and fits(one, replace(centre, spasm_per_min=0.0)):
        return "a gate in the software that fades out spasms would make it fit"
    if fits(one, replace(centre, involuntary_n=centre.involuntary_n / 2)):
        return "support at the nearer joint that halves the involuntary movement would make it fit"
    return ""


def _force_change(one: Setups, centre: SiteInputs, rules: Rules) -> str:
    factors = np.geomspace(1 / OTHER_VERSION, OTHER_VERSION, 81)
    would = evaluate(one.versions(0, factors), centre, rules).shortfall <= 0
    if not would.any():
        return ""
    factor = float(min(factors[would], key=lambda value: abs(math.log(value))))
    start, full = float(one.start_force_n[0] * factor), float(one.full_force_n[0] * factor)
    word = "lighter" if factor < 1 else "firmer"
    return f"the same stick {word}, about {spoken(start, 'n')} to start and {spoken(full, 'n')} at the stop, would fit"


def _need_change(one: Setups, centre: SiteInputs, direction_rad: Array, reach_share: Array, fits) -> str:  # type: ignore[no-untyped-def]
    order = [int(k) for k in np.argsort(reach_share) if centre.needed[k]]
    for count in range(1, min(3, len(order) - 1) + 1):
        needed = centre.needed.copy()
        needed[order[:count]] = False
        if fits(one, replace(centre, needed=needed)):
            return f"it would fit if the game did not need {_listed(order[:count], direction_rad)}"
    return ""
