"""The next reading worth the player's effort, over all sites that compete for one action."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.mechanics.ability import Ability
from stickwright.mechanics.fit import Rules
from stickwright.mechanics.next_reading import Candidate, chance_after, chance_now, right_choice
from stickwright.model.plan import Assumption, NextReading, SitePlan, direction_words
from stickwright.model.player import Site

__all__ = ["ENOUGH_CHANCE", "WORTH_GAIN", "SiteWork", "next_reading"]

Array = NDArray[np.float64]
ENOUGH_CHANCE = 0.90
"""Chance that the chosen stick is right above which more readings are not asked for: common practice."""
WORTH_GAIN = 0.02
"""Gain of that chance below which a reading is not worth the player's effort: common practice."""


@dataclass(frozen=True, eq=False)
class SiteWork:
    """One site's plan with what is needed to ask further.

    Parameters
    ----------
    site : Site
    plan : SitePlan
    known : Ability
    stick_utility : array, shape (sticks, draws)
        Best utility of each stick in each draw.
    used : array of bool, shape (k,)
        Directions that the game uses, however little: what a reading there is worth is worked out, not supposed.
    assumptions : tuple of Assumption
    """

    site: Site
    plan: SitePlan
    known: Ability
    stick_utility: Array
    used: NDArray[np.bool_]
    assumptions: tuple[Assumption, ...]


def next_reading(
    works: Sequence[SiteWork], unread: Sequence[str], rng: np.random.Generator, rules: Rules
) -> NextReading:
    """The reading that most raises the chance that the chosen stick is the right one, or that it is enough.

    Sites that are to do the same action compete; each action is judged by itself.

    Parameters
    ----------
    works : sequence of SiteWork
        Best site first.
    unread : sequence of str
        Sites without any reading.
    rng : numpy Generator
    rules : Rules
    """
    if not works and not unread:
        nothing = "No site is left to measure: choose another with the treating team."
        return NextReading(True, None, None, "", 0.0, 0.0, nothing)
    if not works:
        return NextReading(
            False, unread[0], math.pi / 2, "force", 0.0, 0.0,
            f"Take the comfortable force at {unread[0]} forward, right, left and back, three times each.",
        )  # fmt: skip
    ranks: list[tuple[str, float, str, float]] = []
    best: tuple[float, Candidate, float, float] | None = None
    chance_of_first = 0.0
    for action in dict.fromkeys(work.plan.demand.action for work in works):
        group = [work for work in works if work.plan.demand.action == action]
        right = right_choice(np.concatenate([work.stick_utility[:, 1:] for work in group]), rules.tie_bits)
        now = chance_now(right)
        if group[0] is works[0]:
            chance_of_first = now
        candidates = [candidate for work in group for candidate in _candidates(work)]
        after = chance_after(right, candidates, rng)
        for place, chance in sorted(after.items(), key=lambda item: (-item[1], item[0])):
            candidate = candidates[place]
            ranks.append((candidate.site, candidate.direction_rad, candidate.what, chance))
            if now < ENOUGH_CHANCE and chance - now > max(best[0] if best else 0.0, WORTH_GAIN):
                best = (chance - now, candidate, now, chance)
    ranks.sort(key=lambda rank: -rank[3])
    if best is None:
        return _enough(works[0], chance_of_first, ranks)
    _, candidate, now, then = best
    sentence = (
        f"Most worth the player's effort: {_asked(candidate)}. It would raise the chance that the chosen stick is the "
        f"right one from {_chance(now)} to about {_chance(then)}."
    )
    phi = candidate.direction_rad if math.isfinite(candidate.direction_rad) else None
    return NextReading(False, candidate.site, phi, candidate.what, now, then, sentence, tuple(ranks[:8]))  # type: ignore[arg-type]


def _asked(candidate: Candidate) -> str:
    if candidate.what == "recording":
        return f"20 s of holding still on a stick of the kit at {candidate.site}, recorded"
    where = f" {direction_words(candidate.direction_rad)}" if math.isfinite(candidate.direction_rad) else ""
    return f"{candidate.what}{where} at {candidate.site}, three times"


def _enough(first: SiteWork, chance: float, ranks: Sequence[tuple[str, float, str, float]]) -> NextReading:
    if first.plan.choice is None:
        could = float((first.stick_utility[:, 1:].max(axis=0) > 0).mean())
        sentence = (
            f"Enough: more readings would not make a stick of this kit fit (the chance that one does is "
            f"{_chance(could)}); change the support, the kit or what the game asks instead."
        )
    elif chance >= ENOUGH_CHANCE:
        sentence = (
            "Enough: more readings would not change the choice; the chosen stick is right with a chance of "
            f"{_chance(chance)}."
        )
    else:
        sentence = (
            f"Enough: no single reading raises the chance of {_chance(chance)} that the chosen stick is right by "
            f"more than {100 * WORTH_GAIN:.0f} %; let the player try the first two sticks instead."
        )
    return NextReading(True, None, None, "", chance, chance, sentence, tuple(ranks[:8]))


def _chance(share: float) -> str:
    """In per cent, and never certain: it is counted over some hundred draws."""
    return "over 99 %" if share > 0.99 else "under 1 %" if share < 0.01 else f"{100 * share:.0f} %"


def _candidates(work: SiteWork) -> list[Candidate]:
    """Readings that could be taken at a site, three repeats each."""
    known, name = work.known, work.site.name
    out = []
    for k in np.flatnonzero(work.used):
        phi = float(known.direction_rad[k])
        for what, values, scatter in (
            ("force", known.force_n, known.report.force_scatter_share.value),
            ("reach", known.reach_m, known.report.reach_scatter_share.value),
        ):
            out.append(Candidate(name, what, phi, np.log(values[1:, k]), max(scatter, 0.03) / math.sqrt(3)))
    rest = known.rest_force_n[1:]
    if rest.std() > 0:
        out.append(Candidate(name, "rest force", math.nan, np.log(np.maximum(rest, 1e-6)), 0.15 / math.sqrt(3)))
    shaken = known.involuntary_n[1:]
    if known.report.involuntary_force_n.n == 0 and shaken.std() > 0:  # recorded once, once more would tell little
        out.append(Candidate(name, "recording", math.nan, np.log(shaken), 0.10))
    return out
