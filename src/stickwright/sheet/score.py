"""The score of a plan as a sum that adds up in the digits printed: every part of it, and what each part is made of.

Parts are rounded to a tenth so that they add up to the total printed (the largest remainders go up), and what a part is
made of so that it adds up to the part; nothing is printed more than a tenth away from what it is.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from stickwright.catalogue import say
from stickwright.codes.message import message
from stickwright.codes.scores import Scores
from stickwright.model.points import tenths, tenths_words
from stickwright.model.sharing import Placement, Sharing, Term
from stickwright.sheet.printed import clause

__all__ = ["Score", "ScorePart", "adding_up", "score_of", "score_words", "terms_words"]


@dataclass(frozen=True)
class ScorePart:
    """One part of a score, in tenths of a point.

    Parameters
    ----------
    what : str
        The action, or what is counted once for the whole plan.
    tenths : int
        As printed, signed.
    terms : tuple of (Term, int)
        What it is made of, each with its tenths; they add up to the part. Empty for what is counted once.
    """

    what: str
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
        ScorePart(one.action, number, _terms(one, number))
        for one, number in zip(sharing.placements, printed, strict=False)
    )
    rest = printed[len(sharing.placements) :]
    once = tuple(ScorePart(say(term.words), number) for term, number in zip(sharing.shared, rest, strict=True))
    return Score(total, actions, once)


def _terms(placement: Placement, number: int) -> tuple[tuple[Term, int], ...]:
    """What an action's points are made of, in tenths that add up to the number printed for it."""
    thousandths = adding_up([term.points * 1000 for term in placement.terms], round(placement.points * 1000))
    return tuple(zip(placement.terms, adding_up([one / 100 for one in thousandths], number), strict=True))


def terms_words(part: ScorePart) -> str:
    """What an action's points are made of, as a sum with its reasons.

    Parameters
    ----------
    part : ScorePart
        One action.
    """
    parts: list[str] = []
    for term, number in part.terms:
        if not number:
            continue
        sign = ("" if not parts else " + ") if number > 0 else ("−" if not parts else " − ")
        why = clause(term.words)
        why = f"{why}: {clause(term.basis)}" if why and term.basis else why
        beside = f" ({why})" if why and term.what != "importance" else ""
        parts.append(f"{sign}{tenths_words(abs(number))} {say(message(Scores.kind, what=term.what))}{beside}")
    points = tenths_words(part.tenths)
    return f"{points} = {''.join(parts)}" if parts else points


def score_words(score: Score) -> str:
    """The total as a sum of its parts.

    Parameters
    ----------
    score : Score

    Examples
    --------
    >>> score_words(Score(77, (ScorePart("jump", 80),), (ScorePart("chin: 3 min to set up", -3),)))
    'Score: 7.7 = 8 jump − 0.3 (chin: 3 min to set up)'
    """
    parts: list[str] = []
    named = [(part, part.what) for part in score.actions]
    named += [(part, f"({part.what})") for part in score.once if part.tenths]
    for part, what in named:
        sign = ("" if not parts else " + ") if part.tenths >= 0 else ("−" if not parts else " − ")
        parts.append(f"{sign}{tenths_words(abs(part.tenths))} {what}")
    points = tenths_words(score.tenths)
    return f"Score: {points} = {''.join(parts)}" if parts else f"Score: {points}"
