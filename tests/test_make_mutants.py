"""The sampler of mutants: its interval is the published one, and the rooms it names are there."""

from __future__ import annotations

import dataclasses

import make_mutants
import mutant_changes
import pytest
from scipy.stats import binomtest


@pytest.mark.parametrize("noticed, of", [(9, 10), (0, 7), (7, 7), (108, 120), (1, 1)])
def test_interval_is_wilsons(noticed: int, of: int) -> None:
    """scipy's score interval of a share."""
    wanted = binomtest(noticed, of).proportion_ci(0.95, method="wilson")
    assert make_mutants.wilson(noticed, of) == pytest.approx((wanted.low, wanted.high), abs=1e-6)


@pytest.mark.parametrize("room", make_mutants.ROOMS)
def test_modules_and_tests_of_a_room_are_there(room: str) -> None:
    """A file renamed must not fall out of the sample, or out of its tests, in silence."""
    modules, tests = make_mutants.ROOMS[room]
    for pattern in modules:
        assert list((make_mutants.ROOT / "src" / "stickwright").glob(pattern)), pattern
    for path in tests:
        assert (make_mutants.ROOT / "tests" / path).exists(), path


def names(source: str) -> list[str]:
    """What each mutant of a module changes."""
    return [one.name for one in mutant_changes.mutants(source)]


@pytest.mark.parametrize(
    "formula, changed",
    [
        ("a + b", {"a - b", "a", "b"}),
        ("a * b", {"a / b"}),
        ("a < b", {"a <= b", "a > b"}),
        ("a and b", {"a or b"}),
        ("-a", {"a"}),
        ("a if b else c", {"a if not b else c"}),
        ("4.0", {"5.0"}),
        ("a == 0", {"a != 0", "a == 1"}),
        ("min(a, b)", {"max(a, b)"}),
        ("np.sin(a)", {"np.cos(a)"}),
        ("math.sqrt(a)", {"a"}),
        ("f(a, b)", {"f(b, a)"}),
        ("f(a, b=c)", {"f(a)"}),
        ("f(a - b).g", {"a + b", "a", "b"}),
        ("x['a' + b]", set()),
        ("f'{a}' + b", set()),
        ("hypot(a, b)", {"a"}),
        ("plot(a, lw=2 * b, color=c)", set()),
    ],
)
def test_what_is_made_of_a_formula(formula: str, changed: set[str]) -> None:
    """A turned sign, a term, an argument or a function left out, a limit, a number: each one, and no change of a text."""
    found = [name.removeprefix("f: ").partition(" -> ")[2] for name in names(f"def f(a, b, c):\n    return {formula}")]
    assert {name.removeprefix("return ") for name in found} == changed


def test_words_and_types_are_left_alone() -> None:
    """Refusals, types and decorators hold no formula."""
    source = "@frozen(order=True)\nclass A:\n    x: Literal[1] = y\n\ndef f(a: T[2]) -> T[3]:\n    raise Problem('far', a + 1)"
    assert names(source) == []


def test_a_mutant_is_the_module_with_its_one_change() -> None:
    """Taken back before the next is made; two alike are told apart; the lines are those of the statement."""
    source = "x = 1\n\ndef f(a):\n    return (\n        a * 2\n        + a * 2\n    )"
    wanted = {"f: a * 2 -> a / 2", "f: a * 2 -> a / 2 (no. 2)"}
    found = [one for one in mutant_changes.mutants(source, wanted) if one.source]
    assert [one.source.splitlines()[-1].strip() for one in found] == ["return a / 2 + a * 2", "return a * 2 + a / 2"]
    assert {(one.first, one.last) for one in found} == {(4, 7)}


def test_compiled_functions_are_known() -> None:
    """No watching sees their lines run."""
    (one,) = mutant_changes.mutants("@njit(cache=True)\ndef f(a):\n    return -a")
    assert one.compiled


def test_a_sample_keeps_its_mutants_when_others_come() -> None:
    """Of twice as many a larger share is new, but none comes in the place of one whose lot is lower."""
    few = [("a.py", one) for one in mutant_changes.mutants("x = a + b * c - d / e")]
    more = [("b.py", one) for one in mutant_changes.mutants("y = a + b")]
    kept = [one for one in make_mutants.drawn(few + more, 5, 1) if one[0] == "a.py"]
    assert set(kept) <= set(make_mutants.drawn(few, 5, 1))
    assert make_mutants.drawn(few, 5, 1) != make_mutants.drawn(few, 5, 2)


def test_which_tests_are_run_first() -> None:
    """The quickest of those that run a line; all of the module's, and then the room's, where nothing sees which do."""
    learnt = make_mutants.Learnt(
        {"a.py": {"1": [], "4": ["slow", "quick"], "5": ["other"]}}, {"slow": 2.0, "quick": 1.0}
    )
    constant, formula = mutant_changes.mutants("x = -y\n\ndef f(a):\n    return -a")
    never = dataclasses.replace(formula, first=9, last=9)
    assert learnt.tests_of("a.py", formula) == (["quick", "slow"], False)
    assert learnt.tests_of("a.py", constant) == (["other", "quick", "slow"], True)
    assert learnt.tests_of("a.py", never) == ([], False)
    assert learnt.tests_of("a.py", dataclasses.replace(never, compiled=True)) == (["other", "quick", "slow"], True)


def test_held_figures_that_do_not_run_a_module_are_left_out() -> None:
    """Of other files every test stays, as they may share what one of them made."""
    held = f"tests/{make_mutants.HELD}"
    learnt = make_mutants.Learnt({"a.py": {"4": [f"{held}::b[x y]", "t.py::c"], "5": [f"{held}::a"]}}, {})
    assert learnt.without_idle("a.py", ["t.py", held]) == ["t.py", f"{held}::a", f"{held}::b[x y]"]
    assert learnt.without_idle("b.py", [held, "t.py"]) == ["t.py"]
    assert learnt.without_idle("a.py", ["t.py"]) == ["t.py"]
