"""What lists say of a recording is worked out once for each version of the program, and is what the samples tell."""

import numpy as np
import pytest

from stickwright.measure.progress import progress
from stickwright.measure.steps import RECORDED_COLUMNS, cue_code
from stickwright.measure.tasks import guided_task
from stickwright.store import summaries
from stickwright.store.cases import import_case
from stickwright.store.export import erase_player
from stickwright.store.recordings import (
    append_samples,
    begin_recording,
    finish_recording,
    recording_named,
    recordings,
    samples_of,
    set_aside,
)
from stickwright.store.summaries import summaries_of, summarise_next

ASKED = {"task": "rest", "seed": 7}


def recorded(store, visit_id, *, seed=1, ended=True, asked=ASKED):
    rng = np.random.default_rng(seed)
    rows = np.full((1500, len(RECORDED_COLUMNS)), np.nan)
    rows[:, 0] = np.arange(len(rows)) * 0.01
    rows[:, 1:3] = rng.normal(0, 0.01, (len(rows), 2))
    rows[:, 6] = cue_code("rest")
    row = begin_recording(
        store, visit_id, site="chin", task="rest", columns=RECORDED_COLUMNS, source="browser", asked=asked, who="ot"
    )
    append_samples(store, row.id, rows, first=0)
    return finish_recording(store, row.id, "done", who="ot") if ended else recording_named(store, row.id)


@pytest.fixture
def counted(monkeypatch):
    """How often a summary is worked out."""
    times = []

    def counting(*given, **named):
        times.append(given[0].name)
        return progress(*given, **named)

    monkeypatch.setattr(summaries, "progress", counting)
    return times


@pytest.fixture
def visit(store):
    return import_case(store, {"player.toml": b'code = "K7"\nvisit = "2026-03-14"\n'}, who="ot")


def test_a_summary_is_worked_out_once(store, visit, counted):
    """The sentence that the samples tell, and the kept one the next time; anew for another version of the program."""
    row = recorded(store, visit.id)
    told = progress(guided_task(**ASKED), samples_of(store, row.id)).sentence
    assert summaries_of(store, [row]) == {row.id: told}
    assert summaries_of(store, recordings(store, visit.id)) == {row.id: told}
    assert len(counted) == 1
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(summaries, "program", lambda: "a later one")
        assert summaries_of(store, [row]) == {row.id: told}
    assert len(counted) == 2


def test_a_running_recording_is_looked_at_each_time(store, visit, counted):
    """It is not over: nothing is kept of it."""
    row = recorded(store, visit.id, ended=False)
    assert list(summaries_of(store, [row])) == [row.id]
    assert list(summaries_of(store, [row])) == [row.id]
    assert len(counted) == 2
    assert not summarise_next(store)


def test_in_the_quiet_one_after_the_other(store, visit, counted):
    """Each call summarises one that has none, whatever its settings are; then the page works nothing out."""
    first, other = recorded(store, visit.id), recorded(store, visit.id, seed=2, asked={"task": "rest", "moons": 3})
    assert [summarise_next(store), summarise_next(store), summarise_next(store)] == [True, True, False]
    seen = len(counted)
    told = summaries_of(store, [first, other])
    assert len(counted) == seen
    assert told[other.id].code == "Measuring.of_another_version"


def test_what_is_set_aside_tells_nothing_and_erasing_takes_all(store, visit):
    """No summary stays of a player who is erased."""
    row = recorded(store, visit.id)
    assert summaries_of(store, [row])
    assert summaries_of(store, [set_aside(store, row.id, who="ot")]) == {}
    assert "player" in erase_player(store, visit.player_id, who="ot")
    assert not summarise_next(store)
