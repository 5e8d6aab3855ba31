"""A plan is kept with the very inputs that it came from, and can be worked out again."""

import dataclasses
import json
from pathlib import Path

import numpy as np
import pytest
import sqlalchemy as sa

from said import said
from stickwright.codes.doing import Doing
from stickwright.codes.kept_plans import KeptPlans
from stickwright.codes.message import Name, message
from stickwright.codes.trail import Trail
from stickwright.errors import BadInput
from stickwright.files.folder import read_case
from stickwright.files.results import plan_json
from stickwright.model.wishes import Keep, Wishes
from stickwright.planning.plan import plan
from stickwright.store import plans as plans_module
from stickwright.store.audit_log import trail
from stickwright.store.cases import case_of, import_case
from stickwright.store.documents import documents, save_document
from stickwright.store.loans import lend
from stickwright.store.opening import memory_store
from stickwright.store.plans import (
    make_again,
    make_plan,
    plan_again,
    plan_changes,
    plan_kept,
    plan_result,
    plan_text,
    plans,
    reproduce,
    told_apart,
)
from stickwright.store.players import add_player, visit
from stickwright.store.recordings import append_samples, begin_recording, finish_recording, set_aside
from stickwright.store.schema import plan as plan_table
from stickwright.store.schema import plan_input

DEMO = Path(__file__).parents[2] / "examples" / "demo"
DRAWS = 20
PLAYER = b"""code = "K7"
visit = "2026-03-14"
[[site]]
name = "right index"
part = "fingertip"
[[site.reading]]
direction_deg = 0
force_n = [0.50, 0.52]
reach_mm = [9, 10]
[[site.reading]]
direction_deg = 90
force_n = [0.61, 0.60]
reach_mm = [11, 10]
[[site.reading]]
direction_deg = 180
force_n = [0.45, 0.44]
reach_mm = [9, 9.5]
[[site.reading]]
direction_deg = 270
force_n = [0.55, 0.58]
reach_mm = [10, 10.5]
"""
KIT = b"""[[stick]]
name = "ash"
start_force_n = 0.05
full_force_n = 0.20
travel_mm = 5
contact_height_mm = 18
in_stock = 1
[[stick]]
name = "elm"
start_force_n = 0.10
full_force_n = 0.50
travel_mm = 6
contact_height_mm = 20
in_stock = 2
"""


@pytest.fixture
def small(store):
    row = import_case(store, {"player.toml": PLAYER, "kit.toml": KIT}, who="ot")
    return store, row.id


def made(store, visit_id, **more):
    return make_plan(store, visit_id, who="ot", draws=DRAWS, seed=3, made_on="2026-03-15", **more)


def test_a_plan_is_the_one_that_the_folder_gives(small):
    """Made from the records it is the plan that the same files give on disk, and it is numbered, and in the trail."""
    store, visit_id = small
    told = []
    row = made(store, visit_id, progress=lambda what, share: told.append((what, share)))
    case = read_case({"player.toml": PLAYER, "kit.toml": KIT}, "2026-03-15")
    case = dataclasses.replace(case, name="K7 2026-03-14")
    assert plan_result(store, row.id) == json.loads(plan_json(plan(case, draws=DRAWS, seed=3)))
    assert told[-1] == (message(Doing.done), 1.0)
    assert (row.number, visit(store, visit_id).plans) == (1, 1)
    assert made(store, visit_id).number == 2
    assert [one.number for one in plans(store, visit_id)] == [1, 2]
    assert trail(store).rows[0].what == message(Trail.plan_made, visit=1, plan=2)


def test_worked_out_again_it_is_the_same_whatever_came_since(small):
    """Readings corrected, the shelf's kit changed, a recording gone on and set aside, kit lent: the plan of that day comes out
    the same to the last digit, while a new one does not."""
    store, visit_id = small
    recording = begin_recording(
        store,
        visit_id,
        site="right index",
        task="rim",
        columns=("time_s", "x", "y"),
        source="browser",
        stick="ash",
        who="ot",
    )
    turn = np.linspace(0, 12 * np.pi, 1200)
    rows = np.column_stack([np.arange(1200) / 60, 0.7 * np.cos(turn), 0.6 * np.sin(turn)])
    append_samples(store, recording.id, rows[:700], first=0)
    wishes = Wishes(without=("helper",), only_kit=True, keep=(Keep("right index", "elm"),))
    row = made(store, visit_id)
    before = plan_result(store, row.id)
    wished = made(store, visit_id, wishes=wishes)
    append_samples(store, recording.id, rows[700:], first=700)
    finish_recording(store, recording.id, "done", who="ot")
    set_aside(store, recording.id, who="ot")
    save_document(store, visit_id, "player.toml", PLAYER.replace(b"0.50, 0.52", b"0.20, 0.21"), who="ot")
    save_document(store, visit_id, "game.toml", b'name = "kites"\narchetype = "racing"\n', who="ot")
    other = add_player(store, "K8", who="ot")
    lend(store, other.id, "ash", kit=case_of(store, visit_id)[0].kit, on_date="2026-03-20", due="2026-04-20", who="ot")
    assert reproduce(store, row.id) == (
        True,
        message(KeptPlans.made_again),
    )
    assert json.loads(plan_json(plan_again(store, row.id))) == before
    assert reproduce(store, wished.id)[0]
    assert plan_result(store, made(store, visit_id).id) != before


def test_own_visits_tell_how_much_days_differ(small):
    """With two visits the usual spread is assumed; with three the player's own stands in the plan, with its interval. A plan of the
    second visit comes out the same after the third."""
    store, _ = small
    kit = {"kit.toml": KIT}
    weaker = PLAYER.replace(b"2026-03-14", b"2026-03-28").replace(b"[0.50, 0.52]", b"[0.40, 0.42]")
    second = import_case(store, {"player.toml": weaker, **kit}, who="ot")
    two = made(store, second.id)
    third = import_case(store, {"player.toml": PLAYER.replace(b"2026-03-14", b"2026-04-11"), **kit}, who="ot")
    three = made(store, third.id)

    def said(row):
        (site,) = plan_result(store, row.id)["sites"]
        notes = [one["text"] for one in site["capability"]["findings"] if one["about"] == "own_days"]
        assumed = [
            one for one in plan_result(store, row.id)["assumptions"] if one["what"]["code"] == "StandIns.another_day"
        ]
        return notes, assumed

    notes, assumed = said(two)
    assert (notes, len(assumed)) == ([], 1)
    (note,), assumed = said(three)
    assert note["code"] == "AbilityFindings.own_days"
    assert note["visits"] == 3
    assert assumed == []
    assert reproduce(store, two.id)[0]
    assert reproduce(store, three.id)[0]
    assert made(store, second.id).id != two.id
    assert said(two) == said(plans(store, second.id)[-1])


def test_the_inputs_are_listed(small):
    """Exact versions and, of a recording, how many samples there then were; wishes and settings as asked."""
    store, visit_id = small
    recording = begin_recording(
        store, visit_id, site="right index", task="rest", columns=("time_s", "x", "y"), source="browser", who="ot"
    )
    append_samples(
        store, recording.id, np.column_stack([np.arange(200) / 60, np.full(200, 0.01), np.zeros(200)]), first=0
    )
    row = made(store, visit_id, wishes=Wishes(without=("elm",)))
    with store.read() as connection:
        rows = connection.execute(sa.select(plan_input).where(plan_input.c.plan_id == row.id)).mappings().all()
    held = documents(store, visit_id)
    assert {one["version_id"] for one in rows if one["version_id"]} == {one.version_id for one in held.values()}
    assert [(one["recording_id"], one["samples"]) for one in rows if one["recording_id"]] == [(recording.id, 200)]
    asked = row.asked
    assert (asked["draws"], asked["seed"], asked["made_on"], asked["wishes"]["without"]) == (
        DRAWS,
        3,
        "2026-03-15",
        ["elm"],
    )


def test_kit_with_others_is_not_planned(small):
    """The only ash is with another player: the plan does not count on it, and says so when worked out again after it is back."""
    store, visit_id = small
    other = add_player(store, "K8", who="ot")
    free = made(store, visit_id)
    lend(store, other.id, "ash", kit=case_of(store, visit_id)[0].kit, on_date="2026-03-10", due="2026-04-20", who="ot")
    row = made(store, visit_id)
    assert (row.asked["away"], free.asked["away"]) == ({"ash": 1}, {})
    assert reproduce(store, row.id)[0]
    assert reproduce(store, free.id)[0]


def test_another_program_says_what_differs(small, monkeypatch):
    """Made by another version, with another library, and another stick comes out: that is said in words."""
    store, visit_id = small
    row = made(store, visit_id)
    data = plan_result(store, row.id)
    then = data["sites"][0]["choice"]["label"]
    data["sites"][0]["choice"]["label"] = "oak"
    _kept_as(store, row, data, program="0.0.9 (0123456789ab)", numpy="1.0")
    same, told = reproduce(store, row.id)
    words = said(told)
    assert not same
    assert words.startswith("The program has changed (made with stickwright 0.0.9 (0123456789ab), now ")
    assert "numpy 1.0, now " in words
    assert words.endswith(f"The choice is different at right index: oak before, {then} now.")
    data["sites"][0]["choice"]["label"] = then
    data["seed"] = 4
    _kept_as(store, row, data)
    assert "The same sticks are chosen, but 1 entry differs, the first at seed (4 before, 3 now)." in said(
        reproduce(store, row.id)[1]
    )

    def refuses(*_args, **_more):
        raise BadInput(plans_module.Problem("kit.toml", "a stick", "another"))

    monkeypatch.setattr(plans_module, "plan", refuses)
    assert said(reproduce(store, row.id)[1]).endswith(
        "It no longer accepts the inputs: kit.toml: found a stick, expected another."
    )


def _kept_as(store, row, data, program=None, numpy=None):
    import hashlib
    import zlib

    text = (json.dumps(data, ensure_ascii=False, indent=1) + "\n").encode()
    asked = dict(row.asked)
    asked["libraries"] = asked["libraries"] | ({"numpy": numpy} if numpy else {})
    values = {"result": zlib.compress(text), "digest": hashlib.sha256(text).hexdigest(), "asked": asked}
    with store.write("test", "") as connection:
        change = sa.update(plan_table).where(plan_table.c.id == row.id)
        connection.execute(change.values(values | ({"program": program} if program else {})))


def test_changed_bytes_are_told(small):
    """A kept plan with other bytes than were kept is refused, and so is a number that no plan has."""
    store, visit_id = small
    row = made(store, visit_id)
    with store.write("test", "") as connection:
        connection.execute(sa.update(plan_table).values(result=b"x"))
    with pytest.raises(
        BadInput, match=r"plan 1: found contents that differ from what was saved.*Restore the last backup"
    ):
        plan_result(store, row.id)
    with pytest.raises(BadInput, match="plan: found number 99, expected a plan in the records"):
        reproduce(store, 99)


def test_what_cannot_be_planned_leaves_nothing():
    """A half-typed file: told in the words of the folder; no plan is kept."""
    store = memory_store()
    row = import_case(store, {"player.toml": PLAYER, "kit.toml": KIT[:-5]}, who="ot")
    with pytest.raises(BadInput, match=r"kit\.toml, line 1"):
        made(store, row.id)
    assert plans(store, row.id) == ()
    store.close()


def test_the_demo_is_planned_from_memory():
    """The demo with its recordings and its room: planned from the records, and the same when worked out again."""
    store = memory_store()
    row = import_case(store, DEMO, who="ot")
    one = made(store, row.id)
    assert reproduce(store, one.id)[0]
    store.close()


def test_why_two_plans_differ(small):
    """A second plan with another seed and a wish, after a reading was corrected: each is named; of the same plan nothing is."""
    store, visit_id = small
    first = made(store, visit_id)
    save_document(store, visit_id, "player.toml", PLAYER.replace(b"0.50, 0.52", b"0.20, 0.21"), who="ot")
    second = make_plan(
        store, visit_id, who="ot", draws=DRAWS, seed=4, made_on="2026-03-15", wishes=Wishes(without=("elm",))
    )
    assert plan_changes(store, first, second) == (
        message(KeptPlans.seeds, first=3, second=4),
        message(KeptPlans.wishes),
        message(KeptPlans.inputs, names=(Name("player.toml"),)),
    )
    assert plan_changes(store, first, first) == (message(KeptPlans.nothing),)
    assert told_apart(plan_text(store, first.id), plan_text(store, first.id)) == message(KeptPlans.same)


def test_made_again_it_is_a_plan_of_its_own(small):
    """From the very inputs of the first, though a reading was corrected since: the same bytes, another number; the first stays."""
    store, visit_id = small
    first = made(store, visit_id, wishes=Wishes(without=("elm",)))
    save_document(store, visit_id, "player.toml", PLAYER.replace(b"0.50, 0.52", b"0.20, 0.21"), who="ot")
    again = make_again(store, first.id, who="ot")
    assert (again.number, again.asked["again"]) == (2, 1)
    assert plan_text(store, again.id) == plan_text(store, first.id)
    assert plan_changes(store, first, again) == (message(KeptPlans.nothing),)
    assert reproduce(store, again.id)[0]
    assert plan_kept(store, first.id) == plan_kept(store, again.id)
    _kept_as(store, first, plan_result(store, first.id), program="0.0.9 (0123456789ab)", numpy="1.0")
    (old, _) = plans(store, visit_id)
    assert [one.text for one in plan_changes(store, old, again)] == ["programs", "library"]
