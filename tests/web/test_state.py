"""How far a visit is, in words."""

from __future__ import annotations

from said import said
from stickwright.web.demo import demo_case
from stickwright.web.state import Done, next_step, step_states

PLAYER = b"""
code = "K1"
[[site]]
name = "chin"
part = "chin"
  [[site.reading]]
  direction_deg = 0
  force_gf = [41, 45, 38]
  [[site.reading]]
  direction_deg = 180
  force_gf = [52, 47]
[[site]]
name = "left foot"
part = "foot"
"""


def words(tree: dict[str, bytes], done: Done | None = None) -> dict[str, str]:
    return {state.step.key: said(state.words) for state in step_states(tree, done or Done({}))}


def test_an_empty_visit_begins_with_the_sites() -> None:
    states = step_states({}, Done({}))
    assert {said(state.words) for state in states} == {"nothing yet"}
    assert next_step(states).step.key == "sites"


def test_gaps_are_a_state() -> None:
    """Two directions, the fewest repeats said; a site without readings is named and stops nobody."""
    states = {state.step.key: state for state in step_states({"player.toml": PLAYER}, Done({}))}
    assert said(states["readings"].words) == "chin: 2 of 8 directions, twice each"
    assert said(states["readings"].lacks) == "readings of left foot"
    assert next_step(tuple(states.values())).step.key == "kit"


def test_the_demo_lacks_only_its_plan() -> None:
    """Counted by hand in the demo's files."""
    told = words(demo_case())
    assert told["readings"].startswith("right index: 8 of 8 directions, 3 times each; resting force; hold")
    assert "chin: 6 of 8 directions" in told["readings"]
    assert told["measure"] == "7 recordings at right index"
    assert next_step(step_states(demo_case(), Done({}))).step.key == "plan"


def test_after_the_plan_comes_the_sheet_and_an_old_plan_is_made_again() -> None:
    fresh, old = Done({}, plan=2), Done({}, plan=2, plan_is_old=True)
    assert next_step(step_states(demo_case(), fresh)).step.key == "sheet"
    assert next_step(step_states(demo_case(), old)).step.key == "plan"
    assert words(demo_case(), fresh)["plan"] == "plan 2"


def test_live_recordings_count_with_those_in_files() -> None:
    assert words(demo_case(), Done({"chin": 1}))["measure"] == "7 recordings at right index; 1 recording at chin"


def test_a_document_that_cannot_be_read_has_a_state_too() -> None:
    """What is wrong in it is told on its own page; the visit's page must still come."""
    told = words({"player.toml": b"[[site", "game.toml": b"\xff\xfe", "kit.toml": b'stick = "no table"'})
    assert told["sites"] == told["game"] == told["kit"] == "nothing yet"
