"""The answer in one sentence with the second best beside it, and what else is to be said with it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from stickwright.mechanics.fit import Rules, SiteInputs, evaluate
from stickwright.mechanics.setups import Setups
from stickwright.model.estimate import Estimate
from stickwright.model.parts import NEEDS_CLEARANCE
from stickwright.model.plan import Demand, Fit, direction_words
from stickwright.model.player import Site
from stickwright.model.recorded import Finding
from stickwright.units import spoken

__all__ = ["answer_sentence", "false_input_words", "site_findings", "tired_findings"]

COARSE_BITS = 1.0
"""Under one bit a direction, hardly more than on and off can be steered: common practice."""


def false_input_words(per_min: float) -> str:
    """False input in words: by the minute, by the hour when it is rarer, and never 'none' of what can still happen.

    Parameters
    ----------
    per_min : float

    Examples
    --------
    >>> false_input_words(0.22), false_input_words(0.05), false_input_words(0.001)
    ('0.22 false inputs a minute', '3 false inputs an hour', 'less than one false input an hour')
    """
    if per_min > 1e5:
        return "always on"
    if per_min >= 0.1:
        return f"{per_min:.2g} false inputs a minute"
    hourly = round(60 * per_min)
    if hourly >= 1:
        return f"{hourly} false input{'' if hourly == 1 else 's'} an hour"
    return "less than one false input an hour"


def _figures(fit: Fit) -> str:
    zone = f" with a dead zone of {100 * fit.dead_zone_share:.0f} %" if fit.dead_zone_share else ""
    way = (
        "the stop in every direction needed"
        if fit.weakest_share.value >= 0.999
        else f"{100 * fit.weakest_share.value:.0f} % of its throw in the weakest direction ({direction_words(fit.weakest_rad)})"
    )
    rate = false_input_words(fit.false_per_min.value)
    return f"reaches {way}, asks {100 * fit.effort_share.value:.0f} % of the comfortable force, gives {rate}{zone}"


def answer_sentence(site: Site, best: Sequence[Fit], tie_bits: float) -> str:
    """What to take at a site, what limits it, and what comes second.

    Parameters
    ----------
    site : Site
    best : sequence of Fit
        The best set-up of each stick, best first.
    tie_bits : float
        Difference in bits that does not count.
    """
    first = best[0]
    if first.verdict == "does not fit":
        change = f" What would help: {first.help}." if first.help else ""
        return f"Nothing in the kit fits {site.name}. Nearest comes {first.label}: {'; '.join(first.fails)}.{change}"
    text = f"{first.label} at {site.name}: {_figures(first)}."
    if first.limit and first.limit != "nothing near a limit":
        text += f" What limits it: {first.limit}."
    if len(best) > 1:
        second = best[1]
        if second.verdict == "does not fit":
            text += f" No other stick fits; nearest comes {second.label}: {second.limit}."
        else:
            text += f" Second: {second.label}, which {_figures(second)} ({_bits_apart(first, second, tie_bits)})."
    for fit in best[1:]:
        if fit.stick in site.liked:
            ends = "it fits too" if fit.verdict != "does not fit" else f"it does not fit ({fit.limit})"
            text += f" The player likes {fit.stick}: as {fit.label} {ends}; their word counts."
    return text


def _bits_apart(first: Fit, second: Fit, tie_bits: float) -> str:
    apart = second.bits.value - first.bits.value
    if abs(apart) < 0.05:
        return "the same bits"
    words = f"{abs(apart):.1f} bit {'more' if apart > 0 else 'less'}"
    return f"{words}, which counts as equal" if abs(apart) <= tie_bits else words


def site_findings(site: Site, demand: Demand, best: Fit) -> list[Finding]:
    """What is to be looked at with the answer: clearance, hold, duty, support, coarse steering.

    Parameters
    ----------
    site : Site
    demand : Demand
    best : Fit
        The first set-up, whether it fits or comes nearest.
    """
    out = []
    if site.part in NEEDS_CLEARANCE and site.cleared != "yes":
        word = "is still to be asked for" if site.cleared == "ask" else "is not recorded"
        out.append(
            Finding(
                "query", "clearance",
                f"{site.name}: the treating team's word {word}; ask before anything touches face or head.",
            )
        )  # fmt: skip
    fits = best.verdict != "does not fit"
    if fits and demand.longest_hold_s and best.hold_s.value < demand.longest_hold_s:  # a NaN hold is said elsewhere
        out.append(
            Finding(
                "query", "hold",
                f"{best.label}: the longest hold the game asks is {demand.longest_hold_s:.0f} s; at this effort "
                f"{best.hold_s.value:.0f} s are to be expected ({best.hold_model}). Let the game toggle it, or plan a rest.",
            )
        )  # fmt: skip
    if fits and best.effort_share.value > best.duty_effort_limit:
        out.append(
            Finding(
                "note", "duty",
                f"{best.label}: {100 * best.effort_share.value:.0f} % of the comfortable force for "
                f"{100 * demand.duty_share:.0f} % of the time is above the {100 * best.duty_effort_limit:.0f} % that Potvin "
                "(2012) gives for a whole working day of healthy adults. That is strict for play; watch for tiring.",
            )
        )  # fmt: skip
    if best.bits.value < COARSE_BITS and best.weakest_share.value >= 1 / 3:
        out.append(
            Finding(
                "note", "coarse",
                f"{best.label}: {best.bits.value:.1f} bit a direction, so direction and speed will be coarse. Let play with one "
                "button, options of the game or a helper carry what needs aim.",
            )
        )  # fmt: skip
    return out + _support_findings(site)


def _support_findings(site: Site) -> list[Finding]:
    rests = [entry for entry in site.rest if entry.force_n]
    if len(rests) < 2:
        return []
    before, after = (float(np.mean(entry.force_n)) for entry in (rests[0], rests[-1]))
    if after >= 0.7 * before:
        return []
    return [
        Finding(
            "note", "support",
            f"{rests[-1].support or 'The support'} takes the resting force from {spoken(before, 'n')} to {spoken(after, 'n')}: "
            "the plan counts on it. Without it, look again.",
        )
    ]  # fmt: skip


def tired_findings(
    lost: Estimate | None, setups: Setups, inputs: SiteInputs, place: int, fits: bool, rules: Rules
) -> list[Finding]:
    """What the first set-up would do for the player when tired.

    Parameters
    ----------
    lost : Estimate or None
        Share of the force lost from the first to the last reading.
    setups : Setups
    inputs : SiteInputs
    place : int
        Of the first set-up.
    fits : bool
        Whether it fits the player when fresh.
    rules : Rules
    """
    if lost is None or lost.value < 0.05:
        return []
    centre = replace(
        inputs, force_n=inputs.force_n[:1] * (1 - lost.value), reach_m=inputs.reach_m[:1], rest_n=inputs.rest_n[:1],
        involuntary_n=inputs.involuntary_n[:1], crossing_hz=inputs.crossing_hz[:1],
        limb_n_per_m=inputs.limb_n_per_m[:1], static=None,
    )  # fmt: skip
    tired = evaluate(setups.take([place]), centre, rules)
    name = setups.kit.stick[setups.stick[place]].name
    still = ""
    if fits:
        still = "; it would still fit" if tired.shortfall[0] <= 0 else "; it would no longer fit"
    effort = float(tired.most_effort[0])
    asked = "more than all" if effort > 1 else f"{100 * effort:.0f} %"
    return [
        Finding(
            "note", "tired",
            f"Tired ({100 * lost.value:.0f} % less force), {name} would reach {100 * float(tired.weakest[0]):.0f} % of its throw in "
            f"the weakest direction and ask {asked} of the force that is then comfortable{still}.",
        )
    ]  # fmt: skip
