"""States of a site in the app: entered on its page, chosen where something is measured, written into the folder."""

from __future__ import annotations

import re

import numpy as np
import pytest
from starlette.testclient import TestClient
from tests.web.test_visit import number, tables, words

from stickwright.store.cases import tree_of
from stickwright.store.recordings import append_samples, begin_recording, finish_recording, recordings
from stickwright.web.demo import set_out
from stickwright.web.request_context import RequestContext

TIRED = "tired, after 40 min"


@pytest.fixture
def visit(client: TestClient, desk: RequestContext) -> TestClient:
    """A browser at the demo's visit."""
    set_out(desk)
    return client


def add_state(visit: TestClient, desk: RequestContext) -> None:
    sent = {"condition": TIRED, "kind": "tiredness", "plays": "yes", "after_s": "40", "after_s.unit": "min"}
    visit.post("/visits/d1/sites/edit/site/0/under/new", data=sent | {"based_on": number(desk)})


def test_a_state_and_its_readings_are_entered_on_the_page_of_the_site(visit: TestClient, desk: RequestContext) -> None:
    """The state in words, after how much play, whether the player plays so; then what was read in it, direction by direction."""
    shown = words(visit.get("/visits/d1/sites/edit/site/0").text)
    assert "Readings in another state" in shown
    add_state(visit, desk)
    (state,) = tables(desk)["site"][0]["under"]
    assert state == {"condition": TIRED, "kind": "tiredness", "plays": True, "after_min": 40}
    page = visit.get("/visits/d1/sites/edit/site/0/under/0")
    assert TIRED in words(page.text)
    assert "under/0/reading/new" in page.text
    sent = {
        "direction_rad": "90",
        "direction_rad.unit": "deg",
        "force_n": "31 29",
        "force_n.unit": "gf",
        "based_on": number(desk),
    }
    visit.post("/visits/d1/sites/edit/site/0/under/0/reading/new", data=sent)
    assert tables(desk)["site"][0]["under"][0]["reading"] == [{"direction_deg": 90, "force_gf": [31, 29]}]


def test_each_field_of_a_state_has_a_label_and_can_be_reached_by_keyboard(visit: TestClient) -> None:
    """Every control of the form is a labelled field: nothing needs a pointer."""
    page = visit.get("/visits/d1/sites/edit/site/0/under/new").text
    named = re.findall(r'<(?:input|select|textarea) id="([^"]+)"', page)
    assert {"condition", "kind", "plays", "after_s", "note"} <= {*named}
    assert all(f'<label for="{one}"' in page for one in named)
    assert "Player will play in this state" in words(page)


def test_a_recording_names_its_state(visit: TestClient, desk: RequestContext) -> None:
    """Chosen on the page Measure; told there, and in the folder that the plan is made from."""
    assert desk.demo is not None
    assert "State of the player" not in words(visit.get("/visits/d1/measure").text)
    add_state(visit, desk)
    assert "State of the player" in words(visit.get("/visits/d1/measure").text)
    refused = visit.post(
        "/visits/d1/measure", data={"site": "right index", "source": "practice", "task": "rest", "condition": "asleep"}
    )
    assert "a state of right index" in words(refused.text)
    row = begin_recording(
        desk.demo, 1, site="right index", task="rest", columns=["time_s", "x", "y"], source="computer",
        asked={"name": "rest", "seed": 1, "condition": TIRED}, who="t",
    )  # fmt: skip
    append_samples(desk.demo, row.id, np.zeros((3, 3)) + np.arange(3)[:, None] * [0.01, 0.0, 0.0], first=0)
    finish_recording(desk.demo, row.id, "done", who="t")
    (made,) = [one for one in recordings(desk.demo, 1) if one.id == row.id]
    assert (made.condition, "condition" in made.task_asked) == (TIRED, False)
    assert TIRED in words(visit.get("/visits/d1/measure").text)
    text = tree_of(desk.demo, 1)["player.toml"].decode()
    assert f'condition = "{TIRED}"' in text.split("recordings/")[-1]
