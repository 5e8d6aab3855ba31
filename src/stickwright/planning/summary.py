"""The plan in sentences: the answer with the second best beside it, and what is to be looked at."""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence
from dataclasses import replace

import numpy as np

from stickwright.codes.message import Message, Name, message
from stickwright.codes.setups import Setups
from stickwright.codes.stand_ins import StandIns
from stickwright.mechanics import setups as offers
from stickwright.mechanics.ability import Ability
from stickwright.mechanics.explain import NOTHING_NEAR
from stickwright.mechanics.fit import evaluate
from stickwright.mechanics.site_inputs import Rules, SiteInputs, central
from stickwright.model.fit import Assumption, Fit
from stickwright.model.kit import Controller, Fastener, Kit, Lead, Mount, Stick, Switch, Topper
from stickwright.model.mounting import SiteMount
from stickwright.model.parts import NEEDS_CLEARANCE, SUITED_FORMS
from stickwright.model.plan import Demand, SitePlan
from stickwright.model.player import Site
from stickwright.model.recorded import Finding
from stickwright.model.sharing import Sharing

__all__ = ["kit_assumptions", "kit_notes", "names_used", "rule_assumptions", "site_findings", "site_sentence", "tired"]


COARSE_BITS = 1.0
"""Under one bit a direction, hardly more than on and off can be steered: common practice."""


def kit_notes(kit: Kit, used: Collection[str | None]) -> list[Finding]:
    """What the kit's file notes of the things that are used, each in its own words.

    Parameters
    ----------
    kit : Kit
    used : collection of str
        Names of what is used; a stick's also with its setting.
    """
    noted: list[Stick | Topper | Switch | Controller | Lead | Mount | Fastener] = [
        *kit.stick, *kit.topper, *kit.switch, *kit.controller, *kit.lead, *kit.mount, *kit.fastener,
    ]  # fmt: skip
    told = {one.name: one.note for one in noted if one.note and one.name in used}
    return [
        Finding("note", "kit_note", message(Setups.kit_note, device=Name(name), note=Name(note)))
        for name, note in told.items()
    ]


def names_used(
    sites: Sequence[SitePlan], sharing: Sharing | None, mounts: Sequence[SiteMount]
) -> frozenset[str | None]:
    """Names of all that the plan takes from the kit.

    Parameters
    ----------
    sites : sequence of SitePlan
        Those with a stick that is used.
    sharing : Sharing or None
    mounts : sequence of SiteMount
    """
    fits = [site.choice for site in sites if site.choice is not None]
    placements = sharing.placements if sharing is not None else ()
    wired = sharing.wiring.parts if sharing is not None and sharing.wiring is not None else ()
    held = [mount.choice for mount in mounts if mount.choice is not None]
    return frozenset(
        [
            *(name for fit in fits for name in (fit.stick.split(" (")[0], fit.topper, fit.extension)),
            *(placement.device for placement in placements if placement.how == "site"),
            *(one.name for one in wired if isinstance(one.name, str)),
            *(name for one in held for name in (one.mount, *one.parts) if isinstance(name, str)),
        ]
    )


def _whole(share: float) -> int:
    return round(100 * share)


def _least_of_all(fit: Fit, demand: Demand) -> tuple[float, float, bool] | None:
    """The weakest of all directions, where the game hardly asks for it and it falls short of the weakest needed: share
    reached, direction, and whether the game uses it at all."""
    least = fit.weakest_of_all
    if least.direction_rad == fit.weakest_rad or _whole(least.reach_share.number) == _whole(fit.weakest_share.number):
        return None
    uses = dict(zip((direction.direction_rad for direction in fit.directions), demand.direction_weights, strict=True))
    return least.reach_share.number, least.direction_rad, uses[least.direction_rad] > 0


def _performance(fit: Fit, demand: Demand) -> Message:
    least_share, least_rad, used = _least_of_all(fit, demand) or (None, None, False)
    return message(
        Setups.performance,
        weakest_share=fit.weakest_share.number,
        weakest_rad=fit.weakest_rad,
        least_share=least_share,
        least_rad=least_rad,
        least_used=used,
        effort_share=fit.effort_share.number,
        unintended=fit.false_per_min,
        dead_zone_share=fit.dead_zone_share,
    )


def _second(first: Fit, second: Fit, demand: Demand, tie_bits: float) -> Message:
    if second.verdict == "does not fit":
        return message(Setups.no_second, nearest=second.named, limit=second.limit)
    more = second.bits.number - first.bits.number
    performance = _performance(second, demand)
    return message(
        Setups.second, setup=second.named, performance=performance, more_bits=more, tie=abs(more) <= tie_bits
    )


def site_sentence(site: Site, demand: Demand, best: Sequence[Fit], choice: Fit | None, tie_bits: float) -> Message:
    """The answer for one site in one paragraph.

    Parameters
    ----------
    site : Site
    demand : Demand
    best : sequence of Fit
        The best set-up of each stick, best first.
    choice : Fit or None
        The first, when it fits.
    tie_bits : float
        Difference in bits that does not count.
    """
    first, name = best[0], Name(site.name)
    if choice is None:
        return message(Setups.none_fits, site=name, nearest=first.named, fails=first.fails, helps=first.help)
    confirm = tuple(one.sentence for one in first.doubts)
    liked = [fit for fit in best if {fit.stick, fit.full_name} & set(site.liked) and fit.stick != first.stick]
    return message(
        Setups.chosen,
        setup=first.named,
        site=name,
        performance=_performance(first, demand),
        to_confirm=confirm,
        limit=None if confirm or first.limit == NOTHING_NEAR else first.limit,
        second=_second(first, best[1], demand, tie_bits) if len(best) > 1 else None,
        liked=tuple(_liked(fit) for fit in liked),
    )


def _liked(fit: Fit) -> Message:
    fits = fit.verdict != "does not fit"
    limit = fit.limit if fit.doubts or not fits else None
    return message(Setups.liked, stick=Name(fit.stick), setup=fit.named, fits=fits, limit=limit)


def site_findings(site: Site, demand: Demand, best: Sequence[Fit]) -> list[Finding]:
    """What is to be looked at before the set-up is trusted.

    Parameters
    ----------
    site : Site
    demand : Demand
    best : sequence of Fit
        The best set-up of each stick, best first.
    """
    out, name = list[Finding](), Name(site.name)
    if site.part in NEEDS_CLEARANCE and site.cleared != "yes":
        out.append(Finding("query", "clearance", message(Setups.clearance, site=name, asked=site.cleared == "ask")))
    first = best[0]
    if first.bits.number < COARSE_BITS and first.weakest_share.number >= 1 / 3:
        text = message(Setups.coarse, setup=first.named, precision_bits=first.bits.number)
        out.append(Finding("note", "coarse", text))
    choice = first if first.verdict != "does not fit" else None
    if choice is not None:
        out += _hold_findings(choice, demand)
        out += _duty_findings(choice, demand)
    rests = [entry for entry in site.rest if entry.force_n]
    if len(rests) > 1:
        before, after = (float(np.mean(entry.force_n)) for entry in (rests[0], rests[-1]))
        if after < 0.7 * before:
            support = Name(rests[-1].support) if rests[-1].support else None
            text = message(Setups.support, support=support, before_n=before, after_n=after)
            out.append(Finding("note", "support", text))
    return out


def _hold_findings(choice: Fit, demand: Demand) -> list[Finding]:
    longest, hold = demand.longest_hold_s, choice.hold_s.number
    if not longest or not math.isfinite(hold) or hold >= longest or choice.hold_model is None:
        return []
    text = message(Setups.long_hold, setup=choice.named, longest_s=longest, hold_s=hold, model=choice.hold_model)
    return [Finding("query", "hold", text)]


def _duty_findings(choice: Fit, demand: Demand) -> list[Finding]:
    if choice.effort_share.number <= choice.duty_effort_limit:
        return []
    text = message(
        Setups.duty, setup=choice.named, effort_share=choice.effort_share.number, duty_share=demand.duty_share,
        limit_share=choice.duty_effort_limit,
    )  # fmt: skip
    return [Finding("note", "duty", text)]


def tired(setups: offers.SetupArrays, inputs: SiteInputs, place: int, known: Ability, rules: Rules) -> list[Finding]:
    """How the set-up would do after as much tiring as was seen.

    Parameters
    ----------
    setups : Setups
    inputs : SiteInputs
    place : int
        Of the set-up.
    known : Ability
    rules : Rules
    """
    lost = known.report.tiring_share
    if lost is None or lost.number < 0.05:
        return []
    one = central(inputs)
    fresh = evaluate(setups.take([place]), one, rules)
    after = evaluate(setups.take([place]), replace(one, force_n=one.force_n * (1 - lost.number)), rules)
    unsaid = fresh.shortfall[0] > 0 or (inputs.static is not None and inputs.static[place] > 0)
    text = message(
        Setups.tired,
        stick=Name(setups.kit.stick[setups.stick[place]].name),
        lost_share=lost.number,
        weakest_share=float(after.weakest[0]),
        effort_share=float(after.most_effort[0]),
        fits="unsaid" if unsaid else "yes" if after.shortfall[0] <= 0 else "no",
    )
    return [Finding("note", "tired", text)]


def rule_assumptions(rules: Rules) -> tuple[Assumption, ...]:
    """The limits of practice, as assumptions."""
    return (
        Assumption(
            message(StandIns.limits),
            message(
                StandIns.practice, weakest_share=rules.weakest_share, widened_share=rules.widened_share,
                widened_m=rules.widened_travel_m, effort_share=rules.effort_share,
            ),
            message(StandIns.common_practice), message(StandIns.own_trial),
        ),
    )  # fmt: skip


def kit_assumptions(site_plan: SitePlan, site: Site, kit: Kit) -> tuple[Assumption, ...]:
    """What was not benched of the proposed stick, and which toppers were offered."""
    first = site_plan.fits[0]
    stick = next(
        stick
        for one in kit.stick
        for stick in (one.as_set(place) for place in range(-1, len(one.setting)))
        if stick.full_name == first.full_name
    )
    out, name, at = list[Assumption](), Name(stick.name), (Name(site.name),)
    if stick.kind == "lever" and stick.friction_force_n is None:
        out.append(
            Assumption(
                message(StandIns.friction, stick=name),
                message(StandIns.share_of_full_force, value_share=offers.USUAL_FRICTION_SHARE),
                message(StandIns.outward_only), message(StandIns.bench_both_ways),
            )
        )  # fmt: skip
    if stick.start_force_interval_n is None and stick.full_force_interval_n is None:
        out.append(
            Assumption(
                message(StandIns.stick_forces, stick=name),
                message(StandIns.as_listed, spread_share=2 * offers.UNBENCHED_SD),
                message(StandIns.listed_without_interval), message(StandIns.bench),
            )
        )  # fmt: skip
    if first.crosswise_assumed:
        out.append(
            Assumption(
                message(StandIns.crosswise, stick=name), message(StandIns.can_stand_so),
                message(StandIns.too_long_for_space, site=Name(site.name)), message(StandIns.manual),
            )
        )  # fmt: skip
    suited = SUITED_FORMS[site.part]
    if not site.toppers and any(topper.form not in suited for topper in kit.topper):
        out.append(
            Assumption(
                message(StandIns.toppers, sites=at), message(StandIns.forms, forms=tuple(sorted(suited))),
                message(StandIns.usual_forms_of, part=site.part), message(StandIns.name_toppers),
            )
        )  # fmt: skip
    return tuple(out)
