"""A person's mistakes, apart from ours.

`BadInput` is what a person can put right: it carries every problem found, as codes with what was typed, and every
adapter (command line, page, JSON) says each in the same words. Any other exception is a defect of the program.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from importlib import import_module

from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.problems import Problems

__all__ = ["BadInput", "Problem", "did_you_mean", "near_name", "nearest", "spoken_by"]


def _first(text: Text) -> str:
    """Load the catalogue, which then says all: whoever works at a prompt reads a refusal in words as well.

    By name, when the first refusal is printed: nothing that works figures out depends on words.
    """
    import_module("stickwright.catalogue")
    return _say(text)


_say: Callable[[Text], str] = _first


def spoken_by(say: Callable[[Text], str]) -> None:
    """From now on `str` of a problem gives these words: the catalogue tells it here when it is loaded.

    Parameters
    ----------
    say : callable
        Turns a text into words.
    """
    global _say
    _say = say


@dataclass(frozen=True, init=False)
class Problem:
    """One thing that a person can put right.

    Parameters
    ----------
    where : Message or str, or tuple of such
        From the outside inwards: file, row or line, field.
    found : Message or str
        What stands there, as typed.
    expected : Message or str
        What would have been accepted, with unit.
    remedy : Message or str
        What to do next, as an instruction. May be empty when `expected` says it all.
    """

    where: tuple[Text, ...]
    found: Text
    expected: Text
    remedy: Text

    def __init__(self, where: Text | tuple[Text, ...], found: Text, expected: Text, remedy: Text = "") -> None:
        steps = where if isinstance(where, tuple) else (where,)
        object.__setattr__(self, "where", tuple(step for step in steps if step))
        object.__setattr__(self, "found", found)
        object.__setattr__(self, "expected", expected)
        object.__setattr__(self, "remedy", remedy)

    @property
    def field(self) -> Text:
        """The innermost step of where: a field by its key; '' where the problem has no place."""
        return self.where[-1] if self.where else ""

    @property
    def sentence(self) -> Message:
        """The whole problem as one message."""
        return message(
            Problems.sentence, where=self.where, found=self.found, expected=self.expected, remedy=self.remedy
        )

    @property
    def without_place(self) -> Message:
        """The same where the place is seen: beside its field."""
        return message(Problems.sentence, where=(), found=self.found, expected=self.expected, remedy=self.remedy)

    def __str__(self) -> str:
        return _say(self.sentence)

    def inside(self, where: Text | tuple[Text, ...]) -> Problem:
        """The same problem, told from one step further out."""
        outer = Problem(where, self.found, self.expected, self.remedy)
        return Problem((*outer.where, *self.where), self.found, self.expected, self.remedy)


class BadInput(ValueError):
    """One or more problems with what was given, all of them at once."""

    def __init__(self, problems: Problem | Iterable[Problem]) -> None:
        self.problems: tuple[Problem, ...] = (problems,) if isinstance(problems, Problem) else tuple(problems)
        super().__init__(*self.problems)

    def __str__(self) -> str:
        return "\n".join(str(problem) for problem in self.problems)

    def inside(self, where: Text | tuple[Text, ...]) -> BadInput:
        """The same problems, told from one step further out."""
        return BadInput(problem.inside(where) for problem in self.problems)


def did_you_mean(name: str, known: Iterable[str]) -> Message:
    """A sentence that offers the nearest known name, or lists the known ones.

    Parameters
    ----------
    name : str
        What was typed.
    known : iterable of str
        The names that would have been understood.
    """
    names = sorted(set(known))
    offer = nearest(name, names)
    if offer is not None:
        return offer
    if not names:
        return message(Problems.none_to_choose)
    return message(Problems.known, names=tuple(Name(one) for one in names))


def nearest(name: str, known: Iterable[str]) -> Message | None:
    """An offer of the nearest known name; None when none is near."""
    near = near_name(name, known)
    return message(Problems.did_you_mean, name=Name(near)) if near is not None else None


def near_name(name: str, known: Iterable[str]) -> str | None:
    """The known name that is nearest to what was typed; None when none is near."""
    from difflib import get_close_matches

    folded = {candidate.casefold().replace(" ", "").replace("-", "").replace("_", ""): candidate for candidate in known}
    near = get_close_matches(
        name.casefold().replace(" ", "").replace("-", "").replace("_", ""), folded, n=1, cutoff=0.6
    )
    return folded[near[0]] if near else None
