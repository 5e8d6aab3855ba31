"""From figures to an order: which set-up of each stick, which stick first, and the rules each one breaks."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, fields, replace

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.holds import Holds
from stickwright.codes.message import Message, message
from stickwright.mechanics.default_values import USUAL_COMFORTABLE_OF_MAXIMAL
from stickwright.mechanics.endurance import JOINT_OF_PART, acceptable_effort, hold_estimate
from stickwright.mechanics.explain import SiteSetups, broken_rules, extension_note, limit_of, weakest_place
from stickwright.mechanics.fit import Detail, Evaluated, detail
from stickwright.mechanics.fit_warnings import favoured, refused_and_doubted
from stickwright.mechanics.setups import SetupArrays
from stickwright.mechanics.site_inputs import Rules
from stickwright.mechanics.value_of_information import right_or_none
from stickwright.mechanics.widening import widening_gain
from stickwright.model.fit import DirectionFit, Fit
from stickwright.model.kit import Kit, Stick
from stickwright.model.player import Site

__all__ = ["Ranked", "fits_of", "ranked", "rules_at_duty"]

Array = NDArray[np.float64]
LONGEST_HOLD_S = 3600.0
LEAST_TIRING_SHARE = 0.15
"""Share of the largest force that can be kept up without rest [rohmert-1973] (from memory)."""

WORKED_OUT = frozenset(
    {"contact_height_m", "start_force_n", "full_force_n", "travel_m", "setting", "crosswise", "turns_output"}
)
"""What a fit says otherwise than the kit does: at the contact point, with what is on it, as it is set and stands."""
AS_LISTED = tuple(one.name for one in fields(Fit) if one.name in Stick.model_fields and one.name not in WORKED_OUT)
"""What a fit says of its stick as the kit does."""


@dataclass(frozen=True)
class Ranked:
    """Places of set-ups, best first.

    Parameters
    ----------
    best : tuple of int
        The best set-up of each stick, best stick first.
    others : tuple of int
        Other set-ups of the first stick, best first.
    """

    best: tuple[int, ...]
    others: tuple[int, ...]


def ranked(
    setups: SetupArrays,
    found: Evaluated,
    liked: Sequence[str],
    rules: Rules,
    *,
    most: int = 40,
    forms: Sequence[str] = (),
) -> Ranked:
    """Order of the set-ups.

    The most bits come first; within a tie of `Rules.tie_bits` the liked, then the topper that is usual for the part,
    then the simpler, then the smaller,
    then the one with more reach in its weakest direction, then the less tiring one.

    Parameters
    ----------
    setups : SetupArrays
    found : Evaluated
    liked : sequence of str
        Sticks the player said they like.
    rules : Rules
    most : int
        Sticks reported at most.
    forms : sequence of str
        Forms of topper, the most usual first; a bare shaft comes last. None when the toppers were named.
    """
    names = [stick.name for stick in setups.kit.stick]

    def full_name(place: int) -> str:
        stick: Stick = setups.kit.stick[setups.stick[place]]
        return stick.as_set(int(setups.setting[place])).full_name

    def simpler(place: int) -> tuple[object, ...]:
        return (
            not {names[setups.stick[place]], full_name(place)} & set(liked),
            _form_rank(setups, place, forms),
            int(setups.parts[place]),
            float(setups.bulk_m3[place]),
            -round(float(found.weakest[place]), 3),
            round(float(found.most_effort[place]), 3),
            place,
        )

    def order(places: Sequence[int], wanted: int) -> list[int]:
        left = sorted(places, key=lambda place: (-found.utility[place], place))
        out: list[int] = []
        while left and len(out) < wanted:
            top = found.utility[left[0]]
            tied = [place for place in left if found.utility[place] >= top - rules.tie_bits]
            chosen = min(tied, key=simpler)
            out.append(chosen)
            left.remove(chosen)
        return out

    by_stick = [np.flatnonzero(setups.stick == stick).tolist() for stick in np.unique(setups.stick)]
    firsts = [order(places, 1)[0] for places in by_stick]
    best = order(firsts, most)
    same = [place for place in np.flatnonzero(setups.stick == setups.stick[best[0]]).tolist() if place != best[0]]
    return Ranked(tuple(best), tuple(order(same, 6)))


def _form_rank(setups: SetupArrays, place: int, forms: Sequence[str]) -> int:
    """How usual the topper is for the part; all alike where the toppers were named, or the stick takes none."""
    stick = setups.kit.stick[setups.stick[place]]
    if not forms or stick.kind == "touch" or not stick.takes_toppers:
        return 0
    if setups.topper[place] < 0:
        return len(forms)
    return list(forms).index(setups.kit.topper[setups.topper[place]].form)


def _quantiles(values: Array, centre: float, n: int) -> Estimate:
    """The figure worked out from the best single figures, with the interval of the draws.

    Where a best single figure lies at the edge of its draws, what is worked out from it may lie beyond their quantiles: the
    interval is then as wide as to hold it.
    """
    drawn = values[1:]
    if len(drawn) < 20:
        return Estimate.unbounded(centre, message(Holds.few_simulations), n=n)
    low, high = np.quantile(drawn, (0.025, 0.975))
    return Estimate(centre, min(float(low), centre), max(float(high), centre), 0.95, n)


def fits_of(places: Sequence[int], here: SiteSetups, site: Site, helps: Sequence[Message | None]) -> tuple[Fit, ...]:
    """The set-ups at `places` with intervals, the rules they break and what limits them.

    Parameters
    ----------
    places : sequence of int
    here : SiteSetups
        Of all set-ups; `inputs.static` with one entry for each.
    site : Site
    helps : sequence of Message or None
        The change that would help each.
    """
    kept = np.asarray(places, dtype=np.int64)
    found = here.found
    some = here.setups.take(kept)
    drawn = detail(some, here.inputs.at(kept), found.dead_zone[kept], here.rules)
    drawn_utility = found.stick_utility[:, 1:] if found.stick_utility.shape[1] > 1 else found.stick_utility
    better = favoured(places, here)
    right = right_or_none(drawn_utility, here.rules.tie_bits).mean(axis=1)
    return tuple(
        _fit(
            _Drawn(row, place, drawn, better),
            here,
            site,
            helps=helps[row],
            chance=float(right[here.setups.stick[place]]),
        )
        for row, place in enumerate(places)
    )


@dataclass(frozen=True, eq=False)
class _Drawn:
    """One set-up: its row among those worked out draw by draw, and its place among all."""

    row: int
    place: int
    detail: Detail
    better: Sequence[SiteSetups]

    def share(self, column: Array, k: int) -> Array:
        """Its draws in one direction."""
        own: Array = column[self.row, :, k]
        return own


def _fit(one: _Drawn, here: SiteSetups, site: Site, *, helps: Message | None, chance: float) -> Fit:
    row, place, drawn = one.row, one.place, one.detail
    setups, found, inputs, rules, situation = here.setups, here.found, here.inputs, here.rules, here.situation
    direction_rad, demand = here.direction_rad, here.demand
    kit: Kit = setups.kit
    stick = kit.stick[setups.stick[place]].as_set(int(setups.setting[place]))
    topper = kit.topper[setups.topper[place]] if setups.topper[place] >= 0 else None
    extension = kit.extension[setups.extension[place]] if setups.extension[place] >= 0 else None
    draws = len(inputs.rest_n)
    start, full, travel = (
        float(column[place]) for column in (setups.start_force_n, setups.full_force_n, setups.travel_m)
    )
    directions = tuple(_direction_fit(one, here, k) for k in range(len(direction_rad)))
    needed = np.flatnonzero(inputs.needed)
    weakest = weakest_place(needed, found.reach_share[place], inputs)
    effort = directions[int(needed[np.argmax(found.effort[place][needed])])].effort_share
    hold, model = _hold(site, effort.number)
    fails, doubts = refused_and_doubted(
        broken_rules(place, here), row, one.better,
        read_shortfall=float(found.shortfall[place]), figures=inputs.unread.figures,
    )  # fmt: skip
    wide = found.weakest[place] < rules.weakest_share
    verdict = "does not fit" if fails else "fits with its range widened" if wide else "fits"
    false = _quantiles(
        np.where(drawn.false_rate[row] < 1e-4, 0.0, drawn.false_rate[row]),
        float(found.false_rate[place]) if found.false_rate[place] >= 1e-4 else 0.0,
        draws,
    )
    rest = max(0.0, situation.rest_n - start)
    stiffness = float(setups.contact_stiffness_n_per_m[place])
    crosswise = stick.stands(situation.room_m) == "crosswise"
    return Fit(
        site=site.name,
        stick=stick.name,
        topper=topper.name if topper else None,
        extension=extension.name if extension else None,
        tilt_rad=float(setups.slopes_rad[setups.slope[place]]),
        contact_height_m=float(setups.height_m[place]),
        lever_ratio=1.0
        if setups.touch[place]
        else float(setups.height_m[place] / (stick.contact_height_m or math.nan)),
        start_force_n=start,
        full_force_n=full,
        travel_m=travel,
        stiffness_n_per_m=stiffness,
        returns_share=float(setups.home_share[place]),
        directions=_widened(directions) if wide and not fails else directions,
        weakest_rad=float(direction_rad[weakest]),
        weakest_share=directions[weakest].reach_share,
        mean_share=float(found.reach_share[place] @ inputs.weight),
        bits=_quantiles(drawn.weighted_bits[row], float(found.weighted_bits[place]), draws),
        effort_share=effort,
        duty_effort_limit=_tiring_limit(demand.duty_share, situation.comfortable_of_maximal),
        hold_s=hold,
        hold_model=model,
        dead_zone_share=float(found.dead_zone[place]),
        false_per_min=false,
        rest_deflection_share=min(1.0, rest / stiffness / travel) if rest > 0 and stiffness > 0 else 0.0,
        probability_best=chance,
        verdict=verdict,  # type: ignore[arg-type]
        fails=fails,
        limit=limit_of(place, here, weakest, fails, doubts, most_false_per_min=false.upper),
        doubts=doubts,
        help=helps,
        topper_form=topper.form if topper else "",
        single_player=bool(topper and topper.single_player),
        built_tilt_rad=float(kit.tilt_rad[setups.tilt[place]]),
        impossible=bool(inputs.static is not None and inputs.static[place] > 0),
        lever_note=extension_note(setups, place, found, inputs, direction_rad),
        setting=stick.set_as,
        how_to_set=stick.set_how,
        crosswise=crosswise,
        crosswise_assumed=crosswise and stick.crosswise is None,
        turns_output=stick.turns_output if crosswise else "",
        **{name: getattr(stick, name) for name in AS_LISTED},
    )


def _direction_fit(one: _Drawn, here: SiteSetups, k: int) -> DirectionFit:
    place, drawn, setups, found, inputs = one.place, one.detail, here.setups, here.found, here.inputs
    draws, drawn_share = len(inputs.rest_n), one.share(drawn.reach_share, k)
    share = found.reach_share[place][k]
    angle = share * setups.stop_rad[place]
    height = setups.height_m[place]
    if setups.touch[place]:
        ways, used = drawn_share * height, float(setups.start_force_n[place])
        way = share * height
    else:
        ways = height * np.sin(drawn_share * setups.stop_rad[place])
        way = height * math.sin(angle)
        used = (setups.start_moment_nm[place] + setups.stiffness_nm_per_rad[place] * angle) / height
    return DirectionFit(
        direction_rad=float(here.direction_rad[k]),
        reach_share=_quantiles(drawn_share, float(share), draws),
        reach_travel_m=_quantiles(ways, float(way), draws),
        force_used_n=float(used),
        needed_force_n=float(setups.full_force_n[place]),
        start_force_n=float(setups.start_force_n[place]),
        available_force_n=float(inputs.force_n[0, k]),
        effort_share=_quantiles(one.share(drawn.effort, k), float(found.effort[place][k]), draws),
        bits=_quantiles(one.share(drawn.bits, k), float(found.bits[place][k]), draws),
        firm_force_n=None if inputs.firm_force_n is None else float(inputs.firm_force_n[k]),
    )


def _widened(directions: tuple[DirectionFit, ...]) -> tuple[DirectionFit, ...]:
    return tuple(replace(direction, gain=widening_gain(direction.reach_share.number)) for direction in directions)


def rules_at_duty(rules: Rules, duty: float, comfortable_of_maximal: float) -> Rules:
    """The rules for a stick that is in use for a share of the time: what is used seldom may take more effort.

    Parameters
    ----------
    rules : Rules
        ``effort_share`` is the limit for use without a break, and stays where the curve would ask for less: the curve
        is written for a working day of eight hours.
    duty : float
        Share of the time in use.
    comfortable_of_maximal : float
        Comfortable force as a share of the largest.

    Notes
    -----
    Source: [potvin-2012]; that play at a high duty keeps the limit of common practice is a judgement.

    Examples
    --------
    >>> [round(rules_at_duty(Rules(), duty, 0.5).effort_share, 2) for duty in (0.0, 0.05, 0.2, 0.9)]
    [1.0, 1.0, 0.64, 0.5]
    """
    return replace(rules, effort_share=max(rules.effort_share, _duty_limit(duty, comfortable_of_maximal)))


def _duty_limit(duty: float, comfortable_of_maximal: float) -> float:
    """Acceptable share of the comfortable force at the game's duty (Potvin 2012), no more than all of it."""
    return min(1.0, float(acceptable_effort(min(max(duty, 1 / 28800), 1.0))) / comfortable_of_maximal)


def _tiring_limit(duty: float, comfortable_of_maximal: float) -> float:
    """What tiring is counted against, as a share of the comfortable force: the acceptable effort at the game's duty, and never
    less than what needs no rest at all [rohmert-1973]. Alone the curve leaves nothing for a stick that is always in use."""
    return min(1.0, max(_duty_limit(duty, comfortable_of_maximal), LEAST_TIRING_SHARE / comfortable_of_maximal))


def _hold(site: Site, effort: float) -> tuple[Estimate, Message | None]:
    """Expected hold at the game's usual level, and where the figure comes from."""
    comfortable = site.comfortable_of_maximal_share or USUAL_COMFORTABLE_OF_MAXIMAL
    joint = JOINT_OF_PART[site.part]
    measured: list[tuple[float, tuple[float, ...]]] = []
    for entry in site.hold:
        share = entry.effort_share
        if share is None and entry.force_n is not None:
            forces = _forces_towards(site, entry.direction_rad)
            share = entry.force_n / (sum(forces) / len(forces)) if forces and sum(forces) > 0 else None
        if share and entry.duration_s:
            measured.append((min(share * comfortable, 1.0), entry.duration_s))
    wanted = min(max(effort * comfortable, 1e-6), 1.0)
    nearest = min(
        measured,
        key=lambda pair: (joint is None and pair[0] < wanted, abs(math.log(pair[0] / wanted))),
        default=None,
    )
    if joint is None and nearest is None:
        return Estimate.missing(message(Holds.no_curve), n=0), None
    hold = hold_estimate(wanted, joint, measured=nearest)
    if hold.number > LONGEST_HOLD_S:
        hold = Estimate.unbounded(LONGEST_HOLD_S, message(Holds.over_an_hour), n=hold.n, assumed=hold.assumed)
    if joint is not None and nearest is None:
        return hold, message(Holds.published, joint=joint)
    if joint is not None and hold.assumed is not None:
        return hold, message(Holds.own_carried, joint=joint)
    return hold, message(Holds.own)


def _forces_towards(site: Site, direction_rad: float | None) -> list[float]:
    """Forces read in the direction of a hold; all of them when it has none or was not read there."""
    there = [
        force
        for reading in site.reading
        if direction_rad is not None and abs(math.remainder(reading.direction_rad - direction_rad, 2 * math.pi)) < 1e-5
        for force in reading.force_n
    ]
    return there or [force for reading in site.reading for force in reading.force_n]
