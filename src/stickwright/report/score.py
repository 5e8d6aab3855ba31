"""The score of a plan as a sum that adds up in the digits printed: every part of it, and what each part is made of.

Parts are rounded to a tenth so that they add up to the total printed (the largest remainders go up), and what a part is
made of so that it adds up to the part; nothing is printed more than a tenth away from what it is.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from stickwright.codes.layout_pages import LayoutPages
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.scores import Scores
from stickwright.model.points import tenths
from stickwright.model.sharing import Placement, Sharing, Term

__all__ = ["Score", "ScorePart", "adding_up", "score_of", "score_words", "terms_words"]


@dataclass(frozen=True)
class ScorePart:
    """One part of a score, in tenths of a point.

    Parameters
    ----------
    what : Name or Message
        The action, or what is counted once for the whole plan.
    tenths : int
        As printed, signed.
    terms : tuple of (Term, int)
        What it is made of, each with its tenths; they add up to the part. Empty for what is counted once.
    """

    what: Text
    tenths: int
    terms: tuple[tuple[Term, int], ...] = ()


@dataclass(frozen=True)
class Score:
    """A score whose parts add up to it.

    Parameters
    ----------
    tenths : int
        As printed.
    actions : tuple of ScorePart
        One for each action, in the order of the game.
    once : tuple of ScorePart
        What belongs to no single action: sites in use, controllers, things to buy.
    """

    tenths: int
    actions: tuple[ScorePart, ...]
    once: tuple[ScorePart, ...]


def adding_up(values: Sequence[float], total: int) -> list[int]:
    """Whole numbers that add up to a total, each the one below or above its value: the largest remainders go up.

    Parameters
    ----------
    values : sequence of float
        Numbers whose sum rounds to the total, up or down.
    total : int

    Examples
    --------
    >>> adding_up([3.4, 3.4, 3.4], 10), adding_up([9.0, -3.5, -1.3], 4)
    ([4, 3, 3], [9, -4, -1])
    """
    floors = [math.floor(value + 1e-9) for value in values]
    up = total - sum(floors)
    order = sorted(range(len(values)), key=lambda place: (floors[place] - values[place], place))
    return [floor + (place in order[: max(0, up)]) for place, floor in enumerate(floors)]


def score_of(sharing: Sharing) -> Score:
    """The score of a plan, part by part.

    Parameters
    ----------
    sharing : Sharing
        With a plan.
    """
    total = tenths(sharing.points)
    parts = [*(one.points for one in sharing.placements), *(term.points for term in sharing.shared)]
    printed = adding_up([round(value * 1000) / 100 for value in parts], total)
    actions = tuple(
        ScorePart(Name(one.action), number, _terms(one, number))
        for one, number in zip(sharing.placements, printed, strict=False)
    )
    rest = printed[len(sharing.placements) :]
    once = tuple(ScorePart(term.words, number) for term, number in zip(sharing.shared, rest, strict=True))
    return Score(total, actions, once)


def _terms(placement: Placement, number: int) -> tuple[tuple[Term, int], ...]:
    """What an action's points are made of, in tenths that add up to the number printed for it."""
    thousandths = adding_up([term.points * 1000 for term in placement.terms], round(placement.points * 1000))
    return tuple(zip(placement.terms, adding_up([one / 100 for one in thousandths], number), strict=True))


def terms_words(part: ScorePart) -> Message:
    """What an action's points are made of, as a sum with its reasons.

    Parameters
    ----------
    part : ScorePart
        One action.
    """
    terms: list[Message] = []
    for term, number in part.terms:
        if not number:
            continue
        why: Text | None = term.words or None
        if why is not None and term.basis:
            why = message(LayoutPages.basis, why=why, basis=term.basis)
        what = message(Scores.kind, what=term.what)
        terms.append(_term(number, what, why if term.what != "importance" else None, first=not terms))
    return message(LayoutPages.sum, total_points=part.tenths / 10, terms=tuple(terms))


def score_words(score: Score) -> Message:
    """The total as a sum of its parts."""
    named = [(part, part.what) for part in score.actions]
    named += [(part, message(LayoutPages.once, what=part.what)) for part in score.once if part.tenths]
    terms = tuple(_term(part.tenths, what, None, first=not place) for place, (part, what) in enumerate(named))
    return message(LayoutPages.sum, total_points=score.tenths / 10, terms=terms)


def _term(number: int, what: Text, why: Text | None, *, first: bool) -> Message:
    return message(LayoutPages.term, term_points=number / 10, first=first, what=what, why=why)
