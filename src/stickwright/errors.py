"""A person's mistakes, apart from ours.

`BadInput` is what a person can put right: it carries every problem found, and every
adapter (command line, page, JSON) prints the same sentence for each. Any other exception
is a defect of the program.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

__all__ = ["BadInput", "Problem", "did_you_mean", "near_name"]


@dataclass(frozen=True)
class Problem:
    """One thing that a person can put right.

    Parameters
    ----------
    where : str
        File, then row or line, then field: ``player.toml, line 12, force_gf, 3rd value``.
    found : str
        What stands there, as typed.
    expected : str
        What would have been accepted, with unit.
    remedy : str
        What to do next, as an instruction. May be empty when `expected` says it all.
    """

    where: str
    found: str
    expected: str
    remedy: str = ""

    def __str__(self) -> str:
        place = f"{self.where}: " if self.where else ""
        sentence = f"{place}found {self.found}, expected {self.expected}."
        return f"{sentence} {self.remedy}".rstrip()

    def inside(self, where: str) -> Problem:
        """The same problem, told from one step further out."""
        return Problem(", ".join(part for part in (where, self.where) if part), self.found, self.expected, self.remedy)


class BadInput(ValueError):
    """One or more problems with what was given, all of them at once.

    Parameters
    ----------
    problems : Problem or iterable of Problem
    """

    def __init__(self, problems: Problem | Iterable[Problem]) -> None:
        self.problems: tuple[Problem, ...] = (problems,) if isinstance(problems, Problem) else tuple(problems)
        super().__init__("\n".join(str(problem) for problem in self.problems))

    def inside(self, where: str) -> BadInput:
        """The same problems, told from one step further out."""
        return BadInput(problem.inside(where) for problem in self.problems)


def did_you_mean(name: str, known: Iterable[str]) -> str:
    """A sentence that offers the nearest known name, or lists the known ones.

    Parameters
    ----------
    name : str
        What was typed.
    known : iterable of str
        The names that would have been understood.
    """
    names = sorted(set(known))
    near = near_name(name, names)
    if near is not None:
        return f"Did you mean '{near}'?"
    if not names:
        return "There is none to choose from yet."
    return f"Known: {', '.join(names)}."


def near_name(name: str, known: Iterable[str]) -> str | None:
    """The known name that is nearest to what was typed; None when none is near.

    Parameters
    ----------
    name : str
    known : iterable of str
    """
    from difflib import get_close_matches

    folded = {candidate.casefold().replace(" ", "").replace("-", "").replace("_", ""): candidate for candidate in known}
    near = get_close_matches(
        name.casefold().replace(" ", "").replace("-", "").replace("_", ""), folded, n=1, cutoff=0.6
    )
    return folded[near[0]] if near else None
