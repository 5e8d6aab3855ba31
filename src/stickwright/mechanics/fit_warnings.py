"""Which broken rules refuse a set-up, and which only ask for a reading."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace

from stickwright.codes.message import Message
from stickwright.mechanics.explain import Broken, SiteSetups, broken_rules
from stickwright.mechanics.fit import evaluate
from stickwright.mechanics.site_inputs import central, favourable
from stickwright.mechanics.unread import Figure, Rule, to_confirm
from stickwright.model.fit import Doubt

__all__ = ["favoured", "refused_and_doubted"]


def favoured(places: Sequence[int], here: SiteSetups) -> tuple[SiteSetups, ...]:
    """The set-ups at `places` at each favourable end of the assumed figures; none when everything was read.

    Parameters
    ----------
    places : sequence of int
    here : SiteSetups
        Of all set-ups.
    """
    some = here.setups.take(places)
    out = []
    for one in favourable(here.inputs):
        centre = central(one)
        out.append(
            replace(
                here,
                setups=some,
                found=evaluate(some, centre, here.rules),
                inputs=centre,
                rules=centre.rules(here.rules),
                situation=replace(
                    here.situation, rest_n=float(centre.rest_n[0]), involuntary_n=float(centre.involuntary_n[0])
                ),
            )
        )
    return tuple(out)


def refused_and_doubted(
    told: Sequence[Broken],
    row: int,
    better: Sequence[SiteSetups],
    *,
    read_shortfall: float,
    figures: Collection[Figure],
) -> tuple[tuple[Message, ...], tuple[Doubt, ...]]:
    """Sentences of the rules broken by what was read, and the rules broken at assumed figures only.

    Parameters
    ----------
    told : sequence of Broken
        At the figures of the site, read or assumed.
    row : int
        Of the set-up in `better`.
    better : sequence of SiteSetups
        As `favoured` gives them.
    read_shortfall : float
        How far the set-up is off whatever the assumed figures are (`Evaluated.shortfall`).
    figures : collection of str
        Those that were assumed.
    """
    always: set[Rule] = {one.rule for one in told if not one.untried}
    by_reading: dict[Rule, Message] = {}
    for each in better:
        broken = broken_rules(row, each)
        always &= {one.rule for one in broken}
        by_reading |= {one.rule: one.text for one in broken if one.rule == "unintended"}  # names no assumed force
    if read_shortfall <= 0:
        always = set()
    elif not always:  # each rule can be kept, but not all of them at once
        always = {one.rule for one in told if not one.untried}
    fails = tuple(by_reading.get(one.rule, one.text) for one in told if one.rule in always and not one.untried)
    doubts = tuple(
        Doubt(one.rule, to_confirm(one.rule, figures), one.text)
        for one in told
        if one.untried or one.rule not in always
    )
    return fails, doubts if not fails else ()
