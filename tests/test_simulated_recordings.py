"""What the simulated player recorded counts for nothing in a real player's plan, and what is played back counts once."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np

from said import said
from stickwright.files.folder import read_case
from stickwright.files.results import as_data
from stickwright.model.case import Case
from stickwright.planning.plan import plan
from stickwright.store.cases import case_of, export_case, import_case
from stickwright.store.opening import memory_store
from stickwright.store.recordings import append_samples, begin_recording, finish_recording

DEMO = Path(__file__).parents[1] / "examples" / "demo"
PLAYER = b"""code = "R1"
visit = "2026-03-14"
[[site]]
name = "chin"
part = "chin"
"""


def of(case: Case, *, example: bool) -> Case:
    """The demo's case with every recording by the simulated player, its player real or an example."""
    player = case.player.model_copy(update={"example": example})
    return replace(case, player=player, recordings=tuple(replace(one, simulated=True) for one in case.recordings))


def test_a_real_players_plan_is_the_same_with_and_without_them() -> None:
    """Ranking, dead zones, tuning and the turn of the base: everything but the sentence that says what was left out."""
    case = replace(read_case(DEMO), room=None)
    with_them = plan(of(case, example=False), draws=20)
    without = plan(replace(of(case, example=False), recordings=()), draws=20)
    assert as_data(with_them.sites) == as_data(without.sites)
    assert as_data(with_them.sharing) == as_data(without.sharing)
    (told,) = [one for one in with_them.findings if one not in without.findings]
    assert (told.level, told.about) == ("query", "simulated_player")
    assert "push.csv" in said(told.text)
    assert all(site.base_turn_rad is None and not site.tunings for site in with_them.sites)
    invented = plan(of(case, example=True), draws=20)
    assert any(site.tunings and site.base_turn_rad is not None for site in invented.sites)
    assert not [one for one in invented.findings if one.about == "simulated_player"]


def test_a_recording_played_back_changes_nothing_but_one_sentence() -> None:
    """The demo's recordings and each of them played back: the plan of the recordings alone, and it is said. A copy without
    the mark would count as new evidence."""
    case = replace(read_case(DEMO), room=None)
    again = tuple(replace(one, name=f"again-{one.name}", replayed=True) for one in case.recordings)
    once, twice = (
        plan(replace(case, recordings=those), draws=20) for those in (case.recordings, case.recordings + again)
    )
    assert as_data(twice.sites) == as_data(once.sites)
    assert as_data(twice.sharing) == as_data(once.sharing)
    (told,) = [one for one in twice.findings if one not in once.findings]
    assert (told.level, told.about) == ("note", "played_back")
    assert "again-push.csv" in said(told.text)
    unmarked = tuple(replace(one, replayed=False) for one in again)
    counted = plan(replace(case, recordings=case.recordings + unmarked), draws=20)
    assert as_data(counted.sites) != as_data(once.sites)


def test_the_mark_goes_out_with_the_folder_and_comes_in_again(tmp_path: Path) -> None:
    """Also of a recording kept before there was a mark: its source tells it. A real one beside it carries none."""
    store, other = memory_store(), memory_store()
    kit = (DEMO / "kit.toml").read_bytes()
    row = import_case(store, {"player.toml": PLAYER, "kit.toml": kit}, who="ot")
    for source in ("practice", "browser", "replay"):
        made = begin_recording(
            store, row.id, site="chin", task="rest", columns=("time_s", "x", "y"), source=source, who="ot"
        )
        append_samples(store, made.id, np.column_stack([np.arange(50) * 0.01, np.zeros((50, 2))]), first=0)
        assert finish_recording(store, made.id, "done", who="ot").simulated is (source == "practice")
    export_case(store, row.id, tmp_path / "case")
    assert (tmp_path / "case" / "player.toml").read_text().count("simulated = true") == 1
    assert (tmp_path / "case" / "player.toml").read_text().count("replayed = true") == 1
    again = import_case(other, tmp_path / "case", who="ot")
    for held, visit_id in ((store, row.id), (other, again.id)):
        marks = {one.name: (one.simulated, one.replayed) for one in case_of(held, visit_id)[0].recordings}
        assert marks == {
            "rest-chin-1.csv": (True, False), "rest-chin-2.csv": (False, False), "rest-chin-3.csv": (False, True)
        }  # fmt: skip
    store.close()
    other.close()
