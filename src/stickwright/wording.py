"""The plan in sentences: the answer with the second best beside it, and what is to be looked at."""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence
from dataclasses import replace

import numpy as np

from stickwright.mechanics.ability import Ability
from stickwright.mechanics.explain import NOTHING_NEAR
from stickwright.mechanics.fit import Rules, SiteInputs, central, evaluate
from stickwright.mechanics.setups import UNBENCHED_SD, Setups
from stickwright.model.kit import Controller, Fastener, Kit, Lead, Mount, Stick, Switch, Topper
from stickwright.model.mounting import SiteMount
from stickwright.model.parts import NEEDS_CLEARANCE, SUITED_FORMS
from stickwright.model.plan import Assumption, Demand, Fit, SitePlan, direction_words
from stickwright.model.player import Site
from stickwright.model.rates import rate_words
from stickwright.model.recorded import Finding
from stickwright.model.sharing import Sharing
from stickwright.units import spoken

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
    told = {one.name: one.note.strip().rstrip(".") for one in noted if one.note and one.name in used}
    return [Finding("note", "kit note", f"{name}, noted in the kit: {note}.") for name, note in told.items()]


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
    fits = [one.choice for one in sites if one.choice is not None]
    placements = sharing.placements if sharing is not None else ()
    wired = sharing.wiring.parts if sharing is not None and sharing.wiring is not None else ()
    held = [one.choice for one in mounts if one.choice is not None]
    return frozenset(
        [
            *(name for fit in fits for name in (fit.stick.split(" (")[0], fit.topper, fit.extension)),
            *(one.device for one in placements if one.how == "site"),
            *(one.name for one in wired),
            *(name for one in held for name in (one.mount, *one.parts)),
        ]
    )


def _least_of_all(fit: Fit, demand: Demand) -> str:
    """The weakest of all directions, where the game hardly asks for it and it falls short of the weakest needed."""
    least = fit.weakest_of_all
    told = f"{100 * least.reach_share.number:.0f} %"
    if least.direction_rad == fit.weakest_rad or told == f"{100 * fit.weakest_share.number:.0f} %":
        return ""
    uses = dict(zip((one.direction_rad for one in fit.directions), demand.direction_weights, strict=True))
    how = "hardly uses" if uses[least.direction_rad] > 0 else "does not use"
    return f", and {told} {direction_words(least.direction_rad)}, which the game {how}"


def _figures(fit: Fit, demand: Demand) -> str:
    rate = rate_words(fit.false_per_min, "false input")
    zone = f" with a dead zone of {100 * fit.dead_zone_share:.0f} %" if fit.dead_zone_share else ""
    least = _least_of_all(fit, demand)
    needed = " needed" if least else ""
    weakest = f"{100 * fit.weakest_share.number:.0f} % of its throw in the weakest direction{needed}"
    way = f"{weakest} ({direction_words(fit.weakest_rad)})"
    return (
        f"predicted to reach {'the stop in every direction needed' if fit.weakest_share.number >= 0.999 else way}{least}, to ask "
        f"{100 * fit.effort_share.number:.0f} % of the comfortable force and to give {rate}{zone}"
    )


def _second(first: Fit, second: Fit, demand: Demand, tie_bits: float) -> str:
    if second.verdict == "does not fit":
        return f" No other stick fits; nearest comes {second.label}: {second.limit}."
    bits = second.bits.number - first.bits.number
    beside = f"{abs(bits):.1f} bit {'more' if bits > 0 else 'less'}"
    if abs(bits) < 0.05:
        beside = "the same bits"
    elif abs(bits) <= tie_bits:
        beside += ", which counts as equal"
    return f" Second: {second.label}, which is {_figures(second, demand)} ({beside})."


def site_sentence(site: Site, demand: Demand, best: Sequence[Fit], choice: Fit | None, tie_bits: float) -> str:
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
    first = best[0]
    if choice is None:
        change = f" What would help: {first.help}." if first.help else ""
        return f"Nothing in the kit fits {site.name}. Nearest comes {first.label}: {'; '.join(first.fails)}.{change}"
    text = f"{first.label} at {site.name}: {_figures(first, demand)}."
    if first.doubts:
        text += "".join(f" {one.sentence[0].upper()}{one.sentence[1:]}." for one in first.doubts)
    elif first.limit and first.limit != NOTHING_NEAR:
        text += f" What limits it: {first.limit}."
    if len(best) > 1:
        text += _second(first, best[1], demand, tie_bits)
    for fit in best:
        if {fit.stick, fit.full_name} & set(site.liked) and fit.stick != first.stick:
            how = "does not fit" if fit.verdict == "does not fit" else "fits too"
            how += f" ({fit.limit})" if fit.verdict == "does not fit" or fit.doubts else ""
            text += f" The player likes {fit.stick}: {fit.label} {how}. Their word counts."
    return text


def site_findings(site: Site, demand: Demand, best: Sequence[Fit]) -> list[Finding]:
    """What is to be looked at before the set-up is trusted.

    Parameters
    ----------
    site : Site
    demand : Demand
    best : sequence of Fit
        The best set-up of each stick, best first.
    """
    out = []
    if site.part in NEEDS_CLEARANCE and site.cleared != "yes":
        word = "is still to be asked for" if site.cleared == "ask" else "is not recorded"
        text = f"{site.name}: the treating team's word {word}; ask before anything touches face or head."
        out.append(Finding("query", "clearance", text))
    first = best[0]
    if first.bits.number < COARSE_BITS and first.weakest_share.number >= 1 / 3:
        text = (
            f"{first.label}: {first.bits.number:.1f} bit a direction, so direction and speed will be coarse. Let play with "
            "one button, options of the game or a helper carry what needs aim."
        )
        out.append(Finding("note", "coarse", text))
    choice = first if first.verdict != "does not fit" else None
    if choice is not None:
        out += _hold_findings(choice, demand)
        out += _duty_findings(choice, demand)
    rests = [entry for entry in site.rest if entry.force_n]
    if len(rests) > 1:
        before, after = (float(np.mean(entry.force_n)) for entry in (rests[0], rests[-1]))
        if after < 0.7 * before:
            what = rests[-1].support or "the support"
            text = (
                f"{what[0].upper()}{what[1:]} takes the resting force from {spoken(before, 'n')} to {spoken(after, 'n')}: "
                "the plan counts on it. Without it, look again."
            )
            out.append(Finding("note", "support", text))
    return out


def _hold_findings(choice: Fit, demand: Demand) -> list[Finding]:
    longest, hold = demand.longest_hold_s, choice.hold_s.number
    if not longest or not math.isfinite(hold) or hold >= longest:
        return []
    text = (
        f"{choice.label}: the longest hold the game asks is {longest:.0f} s; at this effort {hold:.0f} s are to be "
        f"expected ({choice.hold_model}). Let the game toggle it, or plan a rest."
    )
    return [Finding("query", "hold", text)]


def _duty_findings(choice: Fit, demand: Demand) -> list[Finding]:
    if choice.effort_share.number <= choice.duty_effort_limit:
        return []
    text = (
        f"{choice.label}: {100 * choice.effort_share.number:.0f} % of the comfortable force for "
        f"{100 * demand.duty_share:.0f} % of the time is above the {100 * choice.duty_effort_limit:.0f} % that is acceptable "
        "through a whole working day of healthy adults (Potvin 2012; where that leaves less than 15 % of the largest force, "
        "those 15 % of Rohmert 1973). That is strict for play; watch for tiring."
    )
    return [Finding("note", "duty", text)]


def tired(setups: Setups, inputs: SiteInputs, place: int, known: Ability, rules: Rules) -> list[Finding]:
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
    name = setups.kit.stick[setups.stick[place]].name
    verdict = " It would still fit." if after.shortfall[0] <= 0 else " It would no longer fit."
    if fresh.shortfall[0] > 0 or (inputs.static is not None and inputs.static[place] > 0):
        verdict = ""
    effort = float(after.most_effort[0])
    asked = "more than all" if effort > 1 else f"{100 * effort:.0f} %"
    text = (
        f"Tired ({100 * lost.number:.0f} % less force), the player would reach {100 * after.weakest[0]:.0f} % of {name}'s throw "
        f"in the weakest direction needed, at {asked} of the force that is then comfortable.{verdict}"
    )
    return [Finding("note", "tired", text)]


def rule_assumptions(rules: Rules) -> tuple[Assumption, ...]:
    """The limits of practice, as assumptions.

    Parameters
    ----------
    rules : Rules
    """
    return (
        Assumption(
            "Limits of practice",
            f"weakest direction {100 * rules.weakest_share:.0f} % of the throw (or {100 * rules.widened_share:.0f} % and "
            f"{rules.widened_travel_m * 1e3:.0f} mm, widened), effort {100 * rules.effort_share:.0f} % of comfortable, and more where "
            "the game uses the stick seldom (Potvin 2012)",
            "common practice, no source", "the player's own trial",
        ),
    )  # fmt: skip


def kit_assumptions(site_plan: SitePlan, site: Site, kit: Kit) -> tuple[Assumption, ...]:
    """What was not benched of the proposed stick, and which toppers were offered.

    Parameters
    ----------
    site_plan : SitePlan
    site : Site
    kit : Kit
    """
    first = site_plan.fits[0]
    stick = next(
        stick
        for one in kit.stick
        for stick in (one.as_set(place) for place in range(-1, len(one.setting)))
        if stick.full_name == first.full_name
    )
    out = []
    if stick.kind == "lever" and stick.friction_force_n is None:
        out.append(
            Assumption(
                f"Friction of {stick.name}", "none: comes home by itself", "only pushing out was benched",
                "bench it out and back",
            )
        )  # fmt: skip
    if stick.start_force_interval_n is None and stick.full_force_interval_n is None:
        out.append(
            Assumption(
                f"Forces of {stick.name}", f"as listed, give or take {200 * UNBENCHED_SD:.0f} %",
                "listed without an interval", "bench it: eight readings, ten minutes",
            )
        )  # fmt: skip
    if first.crosswise_assumed:
        out.append(
            Assumption(
                f"{stick.name} crosswise", "can stand so, with its output turned to match",
                f"lengthwise it does not fit the free place at {site.name}, and nobody said whether it can stand crosswise",
                "its manual: crosswise and turns_output in kit.toml",
            )
        )  # fmt: skip
    suited = SUITED_FORMS[site.part]
    if not site.toppers and any(topper.form not in suited for topper in kit.topper):
        out.append(
            Assumption(
                f"Toppers tried at {site.name}", ", ".join(sorted(suited)), f"the forms usual for a {site.part}",
                "toppers in player.toml, when another suits",
            )
        )  # fmt: skip
    return tuple(out)
