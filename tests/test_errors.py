"""A person's mistakes: one sentence each, all at once, with the nearest known name."""

from __future__ import annotations

import subprocess
import sys

import pytest

from said import place, said
from stickwright.errors import BadInput, Problem, did_you_mean


def test_a_problem_is_one_sentence_with_its_place() -> None:
    """Where, what was found, what was expected, what to do."""
    problem = Problem(("player.toml", "line 12", "force_gf"), '"two"', "a number in gf", "Type 2 for two.")
    assert str(problem) == 'player.toml, line 12, force_gf: found "two", expected a number in gf. Type 2 for two.'
    assert str(Problem("", "nothing", "a stick")) == "found nothing, expected a stick."


def test_a_comma_in_a_name_parts_nothing() -> None:
    """A file whose name has a comma is one step of the place."""
    assert Problem("left, right.csv", "a", "b").where == ("left, right.csv",)


def test_told_from_further_out_the_place_grows() -> None:
    """The same problem, with the file before the field, and no comma where there was no place."""
    inner = Problem("force_n", "-1 N", "0 N or more")
    assert place(inner.inside("player.toml")) == "player.toml, force_n"
    assert place(inner.inside("")) == "force_n"
    assert place(Problem("", "a", "b").inside("kit.toml")) == "kit.toml"
    assert inner.inside("player.toml").found == inner.found


def test_all_problems_are_told_at_once() -> None:
    """Two mistakes, two lines; each keeps its own place when told from further out."""
    refused = BadInput(Problem(f"row {row}", "x", "y") for row in (1, 2)).inside("bench.csv")
    assert [place(problem) for problem in refused.problems] == ["bench.csv, row 1", "bench.csv, row 2"]
    assert str(refused) == "bench.csv, row 1: found x, expected y.\nbench.csv, row 2: found x, expected y."
    assert len(BadInput(Problem("a", "b", "c")).problems) == 1


@pytest.mark.parametrize(
    "typed,words",
    [
        ("halfforce", "Did you mean 'half-force'?"),
        ("Half Force", "Did you mean 'half-force'?"),
        ("brich", "Did you mean 'birch'?"),
        ("zzz", "Known: birch, half-force."),
    ],
)
def test_the_nearest_known_name_is_offered(typed: str, words: str) -> None:
    """A slip of the pen is answered with the name that was meant; anything else with the names there are."""
    assert said(did_you_mean(typed, ["half-force", "birch"])) == words


def test_with_no_name_to_choose_from_it_says_so() -> None:
    """An empty list is not printed as an empty list."""
    assert said(did_you_mean("oak", [])) == "There is none to choose from yet."


def test_a_refusal_is_in_words_where_nothing_else_was_loaded() -> None:
    """At a prompt of its own, with nothing but the function that refuses."""
    code = "from stickwright.errors import Problem; print(Problem('stick', 'ash', 'elm'))"
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert told.stdout == "stick: found ash, expected elm.\n"
