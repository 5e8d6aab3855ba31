"""What was done in memory and is kept after all: the same samples, versions and plans, in each of the places."""

import numpy as np
import pytest

from stickwright.codes.counts import Counts
from stickwright.codes.message import message
from stickwright.measure.steps import RECORDED_COLUMNS
from stickwright.store.documents import documents, history, save_document
from stickwright.store.opening import memory_store, new_id
from stickwright.store.plans import plan_result, plans
from stickwright.store.players import add_player, add_visit, visits
from stickwright.store.recordings import (
    append_samples,
    begin_recording,
    finish_recording,
    recordings,
    samples_of,
    set_aside,
)
from stickwright.store.schema import plan, plan_input
from stickwright.store.transfer import carry_player


@pytest.fixture
def unkept(clock):
    made = memory_store(clock)
    yield made
    made.close()


def recorded(store, visit_id, many, *, site="chin", finish=True):
    rows = np.random.default_rng(many).normal(size=(many, len(RECORDED_COLUMNS)))
    rows[:, 0] = np.arange(many) / 1000
    rows[::7, -3] = np.nan
    made = begin_recording(store, visit_id, site=site, task="rim", columns=RECORDED_COLUMNS, source="browser", who="ot")
    for first in range(0, many, 400):
        append_samples(store, made.id, rows[first : first + 400], first=first)
    if finish:
        finish_recording(store, made.id, "done", who="ot")
    return made, rows


def planned(store, visit_id, recording_id, shelf_version):
    """A plan's rows as planning leaves them, without the minutes it takes."""
    import hashlib
    import zlib

    import sqlalchemy as sa

    text = b'{"sites": []}'
    with store.write("ot", "") as connection:
        values = {"at": store.at(), "who": "ot", "visit_id": visit_id, "number": 1, "program": "p", "asked": {"seed": 7},
                  "result": zlib.compress(text), "digest": hashlib.sha256(text).hexdigest()}  # fmt: skip
        number = new_id(connection, sa.insert(plan).values(values))
        for one in (
            {"version_id": documents(store, visit_id)["player.toml"].version_id, "recording_id": None, "samples": None},
            {"version_id": shelf_version, "recording_id": None, "samples": None},
            {"version_id": None, "recording_id": recording_id, "samples": 900},
        ):
            connection.execute(sa.insert(plan_input).values(plan_id=number, **one))


def test_kept_after_all_is_the_same_bit_for_bit(unkept, store):
    """Two visits of one day stay two; samples finished, set aside, and cut off in the middle; each version of each file; the plan."""
    shelf, _ = (save_document(one, None, "kit.toml", b"# the shelf\n", who="ot") for one in (unkept, store))
    who = add_player(unkept, "R4", who="ot").id
    first, second = (add_visit(unkept, who, "2026-03-14", who="ot").id for _ in range(2))
    body = documents(unkept, first)["player.toml"].body
    save_document(unkept, first, "player.toml", body + b"# corrected\n", who="ot", why="a slip")
    made = [recorded(unkept, first, 2500), recorded(unkept, first, 333), recorded(unkept, second, 1234, finish=False)]
    set_aside(unkept, made[1][0].id, who="ot")
    planned(unkept, first, made[0][0].id, shelf.version_id)

    add_player(store, "Q1", who="ot")  # so that numbers differ
    there = add_player(store, "R4", who="ot").id
    carried = carry_player(unkept, store, who, there, who="ot")
    assert (carried.visits, carried.recordings, carried.plans, carried.left) == (2, 3, 1, ())

    new = sorted(visits(store, there), key=lambda row: row.number)
    assert [row.on_date for row in new] == ["2026-03-14", "2026-03-14"]
    assert [len(recordings(store, row.id)) for row in new] == [2, 1]
    kept = [one for row in new for one in recordings(store, row.id)]
    for (before, rows), after in zip(made, kept, strict=True):
        assert samples_of(store, after.id).tobytes() == rows.tobytes()
        assert (after.name, after.site, after.at, after.columns) == (
            before.name,
            before.site,
            before.at,
            before.columns,
        )
    assert [one.aside for one in kept] == [False, True, False]
    assert [one.state for one in kept] == ["done", "done", "running"]
    versions = [(one.number, one.body, one.at, one.why) for one in history(unkept, first, "player.toml")]
    assert [(one.number, one.body, one.at, one.why) for one in history(store, new[0].id, "player.toml")] == versions
    (carried_plan,) = plans(store, new[0].id)
    assert plan_result(store, carried_plan.id) == {"sites": []}
    assert carried_plan.asked == {"seed": 7}


def test_a_plan_whose_kit_is_nowhere_is_left_behind_and_said(unkept, store):
    """The shelf in memory was another than the one kept."""
    shelf = save_document(unkept, None, "kit.toml", b"# another\n", who="ot")
    who = add_player(unkept, "R4", who="ot").id
    visit_id = add_visit(unkept, who, "2026-03-14", who="ot").id
    made, _ = recorded(unkept, visit_id, 950)
    planned(unkept, visit_id, made.id, shelf.version_id)
    carried = carry_player(unkept, store, who, add_player(store, "R4", who="ot").id, who="ot")
    assert (carried.recordings, carried.plans) == (1, 0)
    assert carried.left == (message(Counts.kit_gone, plan=1, visit=1),)
