"""The next reading worth the player's effort, over all sites that compete for one action."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.message import Message, Name, message
from stickwright.codes.next_readings import NextReadings, Reading
from stickwright.mechanics.ability import Ability
from stickwright.mechanics.site_inputs import Rules
from stickwright.mechanics.value_of_information import Candidate, chance_after, chance_now, right_or_none
from stickwright.model.fit import Assumption
from stickwright.model.plan import NextReading, SitePlan
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
        return NextReading(
            enough=True,
            site=None,
            direction_rad=None,
            what="",
            chance_now=0.0,
            chance_then=0.0,
            sentence=message(NextReadings.no_site),
        )
    if not works:
        return NextReading(
            enough=False, site=unread[0], direction_rad=math.pi / 2, what="force", chance_now=0.0, chance_then=0.0,
            sentence=message(NextReadings.first_force, site=Name(unread[0])),
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
    phi = candidate.direction_rad
    sentence = message(
        NextReadings.take, what=candidate.what, direction_rad=phi, site=Name(candidate.site), claim=question.claim,
        now_share=now, then_share=then,
    )  # fmt: skip
    return NextReading(
        enough=False,
        site=candidate.site,
        direction_rad=phi,
        what=candidate.what,
        chance_now=now,
        chance_then=then,
        sentence=sentence,
        ranked=tuple(ranks[:8]),
    )


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
    def claim(self) -> Message:
        """What has that chance."""
        first = self.works[0]
        if first.plan.choice is None:
            return message(NextReadings.none_fits)
        stick, site = Name(first.plan.choice.stick), Name(first.site.name)
        if self.sticks == 1 and len(self.works) == 1:
            return message(NextReadings.keeps_limits, stick=stick, site=site)
        return message(NextReadings.right_one, stick=stick, site=site, sticks=self.sticks, sites=len(self.works))


def _question(works: Sequence[SiteWork], rules: Rules) -> _Question:
    utility = np.concatenate([work.stick_utility[:, 1:] for work in works])
    right = right_or_none(utility, rules.tie_bits)
    choice = works[0].plan.choice
    row = len(right) - 1 if choice is None else works[0].sticks.index(choice.stick)
    return _Question(
        works, right, float(right[row].mean()), len(dict.fromkeys(name for work in works for name in work.sticks))
    )


def _enough(question: _Question, several: bool, ranks: Sequence[tuple[str, float | None, str, float]]) -> NextReading:
    """That no reading is worth it, told of the action whose choice is least sure."""
    first, chance = question.works[0], question.chance
    action = Name(first.plan.demand.action) if several else None
    if first.plan.choice is None:
        could = float((first.stick_utility[:, 1:].max(axis=0) >= 0).mean())
        sentence = message(NextReadings.enough_none_fits, action=action, could_share=could)
    elif chance >= ENOUGH_CHANCE:
        sentence = message(NextReadings.enough, action=action, claim=question.claim, chance_share=chance)
    else:
        sentence = message(
            NextReadings.no_single, action=action, claim=question.claim, chance_share=chance, gain_share=WORTH_GAIN,
            sticks=question.sticks,
        )  # fmt: skip
    return NextReading(
        enough=True,
        site=None,
        direction_rad=None,
        what="",
        chance_now=chance,
        chance_then=chance,
        sentence=sentence,
        ranked=tuple(ranks[:8]),
    )


def _candidates(work: SiteWork) -> list[Candidate]:
    """Readings that could be taken at a site, three repeats each."""
    known, name = work.known, work.site.name
    out = []
    for k in np.flatnonzero(work.used):
        phi = float(known.direction_rad[k])
        readable: tuple[tuple[Reading, Array, float], ...] = (
            ("force", known.force_n / known.day_factor[:, None], known.report.force_scatter_share.number),
            ("reach", known.reach_m, known.report.reach_scatter_share.number),
        )
        for what, values, scatter in readable:
            out.append(Candidate(name, what, phi, np.log(values[1:, k]), max(scatter, 0.03) / math.sqrt(3)))
    rest = known.rest_force_n[1:]
    if rest.std() > 0:
        out.append(Candidate(name, "rest force", None, np.log(np.maximum(rest, 1e-6)), 0.15 / math.sqrt(3)))
    shaken = known.involuntary_n[1:]
    if known.report.involuntary_force_n.n == 0 and shaken.std() > 0:  # recorded once, once more would tell little
        out.append(Candidate(name, "recording", None, np.log(shaken), 0.10))
    return out
