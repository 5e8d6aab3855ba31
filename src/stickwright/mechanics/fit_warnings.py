"""Which broken rules refuse a set-up, and which only ask for a reading."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.message import Message
from stickwright.mechanics.explain import Broken, Situation, broken_rules
from stickwright.mechanics.fit import Evaluated, evaluate
from stickwright.mechanics.setups import SetupArrays
from stickwright.mechanics.site_inputs import Rules, SiteInputs, central, favourable
from stickwright.mechanics.unread import Figure, Rule, to_confirm
from stickwright.model.fit import Doubt
from stickwright.model.plan import Demand

__all__ = ["Favoured", "favoured", "refused_and_doubted"]

Array = NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class Favoured:
    """Some set-ups with the assumed figures where they suit them best.

    Parameters
    ----------
    setups, found, inputs : SetupArrays, Evaluated, SiteInputs
        Of those set-ups, in their order.
    """

    setups: SetupArrays
    found: Evaluated
    inputs: SiteInputs


def favoured(places: Sequence[int], setups: SetupArrays, inputs: SiteInputs, rules: Rules) -> tuple[Favoured, ...]:
    """The set-ups at `places` at each favourable end of the assumed figures; none when everything was read.

    Parameters
    ----------
    places : sequence of int
    setups : SetupArrays
    inputs : SiteInputs
    rules : Rules
    """
    some = setups.take(places)
    out = []
    for one in favourable(inputs):
        centre = central(one)
        out.append(Favoured(some, evaluate(some, centre, rules), centre))
    return tuple(out)


def refused_and_doubted(
    told: Sequence[Broken],
    row: int,
    better: Sequence[Favoured],
    read_shortfall: float,
    figures: Collection[Figure],
    direction_rad: Array,
    demand: Demand,
    rules: Rules,
    situation: Situation,
) -> tuple[tuple[Message, ...], tuple[Doubt, ...]]:
    """Sentences of the rules broken by what was read, and the rules broken at assumed figures only.

    Parameters
    ----------
    told : sequence of Broken
        At the figures of the site, read or assumed.
    row : int
        Of the set-up in `better`.
    better : sequence of Favoured
    read_shortfall : float
        How far the set-up is off whatever the assumed figures are (`Evaluated.shortfall`).
    figures : collection of str
        Those that were assumed.
    direction_rad : array, shape (k,)
    demand : Demand
    rules : Rules
    situation : Situation
    """
    always: set[Rule] = {one.rule for one in told if not one.untried}
    by_reading: dict[Rule, Message] = {}
    for each in better:
        here = replace(
            situation, rest_n=float(each.inputs.rest_n[0]), involuntary_n=float(each.inputs.involuntary_n[0])
        )
        limits = each.inputs.rules(rules)
        broken = broken_rules(row, each.setups, each.found, each.inputs, direction_rad, demand, limits, here)
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
