"""The next reading worth the player's effort, over all sites that compete for one action."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.mechanics.ability import Ability
from stickwright.mechanics.fit import Rules
from stickwright.mechanics.next_reading import Candidate, chance_after, chance_now, right_or_none
from stickwright.model.plan import Assumption, NextReading, SitePlan, direction_words
from stickwright.model.player import Site
from stickwright.units import chance_words

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
    sticks : tuple of str
        Names of the rows of `stick_utility`.
    """

    site: Site
    plan: SitePlan
    known: Ability
    stick_utility: Array
    used: NDArray[np.bool_]
    assumptions: tuple[Assumption, ...]
    sticks: tuple[str, ...]


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
    ranks: list[tuple[str, float | None, str, float]] = []
    best: tuple[float, Candidate, _Question, float] | None = None
    questions = [
        _question([work for work in works if work.plan.demand.action == action], rules)
        for action in dict.fromkeys(work.plan.demand.action for work in works)
    ]
    for question in questions:
        candidates = [candidate for work in question.works for candidate in _candidates(work)]
        now = chance_now(question.right)
        after = chance_after(question.right, candidates, rng)
        for place, chance in sorted(after.items(), key=lambda item: (-item[1], item[0])):
            candidate = candidates[place]
            ranks.append((candidate.site, candidate.direction_rad, candidate.what, chance))
            gain = chance - now
            if (
                now < ENOUGH_CHANCE
                and gain > WORTH_GAIN
                and (best is None or gain > best[0] + _nearer(candidate, best))
            ):
                best = (gain, candidate, question, chance)
    ranks.sort(key=lambda rank: -rank[3])
    if best is None:
        return _enough(min(questions, key=lambda one: one.chance), len(questions) > 1, ranks)
    _, candidate, question, then = best
    now, then = question.chance, max(then, question.chance)
    sentence = (
        f"Most worth the player's effort: {_asked(candidate)}. It would raise the chance that {question.claim} from "
        f"{chance_words(now)} to about {chance_words(then)}."
    )
    phi = candidate.direction_rad
    return NextReading(False, candidate.site, phi, candidate.what, now, then, sentence, tuple(ranks[:8]))  # type: ignore[arg-type]


ALIKE_GAIN = 0.01
"""Gains that differ by less are alike: the draws tell no better."""


def _nearer(candidate: Candidate, best: tuple[float, Candidate, _Question, float]) -> float:
    """What a gain must be ahead by: of two alike, the reading at the site that is to do the action comes first."""
    _, other, question, _ = best
    chosen = question.works[0].site.name
    if candidate.site == chosen and other.site != chosen:
        return -ALIKE_GAIN
    return ALIKE_GAIN if other.site == chosen and candidate.site != chosen else 0.0


@dataclass(frozen=True, eq=False)
class _Question:
    """One action: which stick at which of its sites is right, in each draw, or that none is.

    Parameters
    ----------
    works : sequence of SiteWork
        Best site first.
    right : array of bool, shape (options + 1, draws)
        Each stick at each site, and last that no stick of the kit fits.
    chance : float
        That what the plan proposes is right.
    sticks : int
        How many were compared.
    """

    works: Sequence[SiteWork]
    right: NDArray[np.bool_]
    chance: float
    sticks: int

    @property
    def claim(self) -> str:
        """What has that chance."""
        first = self.works[0]
        if first.plan.choice is None:
            return "no stick of this kit fits"
        where = f"{first.plan.choice.stick} at {first.site.name}"
        if self.sticks == 1 and len(self.works) == 1:
            return f"{where} keeps every limit"
        return f"{where} is the right one of {self.compared}"

    @property
    def compared(self) -> str:
        """What was compared with what."""
        sticks = "one stick" if self.sticks == 1 else f"{self.sticks} sticks"
        sites = "" if len(self.works) == 1 else f" at {len(self.works)} sites"
        return f"{sticks}{sites}"


def _question(works: Sequence[SiteWork], rules: Rules) -> _Question:
    utility = np.concatenate([work.stick_utility[:, 1:] for work in works])
    right = right_or_none(utility, rules.tie_bits)
    choice = works[0].plan.choice
    row = len(right) - 1 if choice is None else works[0].sticks.index(choice.stick)
    return _Question(
        works, right, float(right[row].mean()), len(dict.fromkeys(name for work in works for name in work.sticks))
    )


def _asked(candidate: Candidate) -> str:
    if candidate.what == "recording":
        return f"20 s of holding still on a stick of the kit at {candidate.site}, recorded"
    where = f" {direction_words(candidate.direction_rad)}" if candidate.direction_rad is not None else ""
    return f"{candidate.what}{where} at {candidate.site}, three times"


def _enough(question: _Question, several: bool, ranks: Sequence[tuple[str, float | None, str, float]]) -> NextReading:
    """That no reading is worth it, told of the action whose choice is least sure."""
    first, chance = question.works[0], question.chance
    doing = f" for {first.plan.demand.action}, the least sure of all," if several else ""
    if first.plan.choice is None:
        could = float((first.stick_utility[:, 1:].max(axis=0) >= 0).mean())
        sentence = (
            f"More readings{doing} would not make a stick of this kit fit (the chance that one does is "
            f"{chance_words(could)}); change the support, the kit or what the game asks instead."
        )
    elif chance >= ENOUGH_CHANCE:
        sentence = (
            f"More readings{doing} would not change the choice; the chance that {question.claim} is "
            f"{chance_words(chance)}, by what was read and what is assumed."
        )
    else:
        sentence = (
            f"No single reading{doing} raises the chance of {chance_words(chance)} that {question.claim} by "
            f"more than {100 * WORTH_GAIN:.0f} %; let the player try the {'stick' if question.sticks == 1 else 'first two sticks'} "
            "instead."
        )
    return NextReading(True, None, None, "", chance, chance, sentence, tuple(ranks[:8]))


def _candidates(work: SiteWork) -> list[Candidate]:
    """Readings that could be taken at a site, three repeats each."""
    known, name = work.known, work.site.name
    out = []
    for k in np.flatnonzero(work.used):
        phi = float(known.direction_rad[k])
        for what, values, scatter in (
            ("force", known.force_n / known.day_factor[:, None], known.report.force_scatter_share.number),
            ("reach", known.reach_m, known.report.reach_scatter_share.number),
        ):
            out.append(Candidate(name, what, phi, np.log(values[1:, k]), max(scatter, 0.03) / math.sqrt(3)))
    rest = known.rest_force_n[1:]
    if rest.std() > 0:
        out.append(Candidate(name, "rest force", None, np.log(np.maximum(rest, 1e-6)), 0.15 / math.sqrt(3)))
    shaken = known.involuntary_n[1:]
    if known.report.involuntary_force_n.n == 0 and shaken.std() > 0:  # recorded once, once more would tell little
        out.append(Candidate(name, "recording", None, np.log(shaken), 0.10))
    return out
