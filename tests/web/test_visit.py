"""The pages of a visit, on the demo player: what is entered is kept, what is wrong is told beside its field, all can be undone."""

from __future__ import annotations

import html
import re
import tomllib

import pytest
from starlette.testclient import TestClient

from stickwright.store.documents import documents, history, save_document
from stickwright.web.demo import set_out
from stickwright.web.request_context import RequestContext

PLAYER, KIT = "player.toml", "kit.toml"


@pytest.fixture
def visit(client: TestClient, desk: RequestContext) -> TestClient:
    """A browser at the demo's visit."""
    set_out(desk)
    return client


def tables(desk: RequestContext, name: str = PLAYER) -> dict:
    assert desk.demo is not None
    return tomllib.loads(documents(desk.demo, 1)[name].body.decode())


def number(desk: RequestContext, name: str = PLAYER) -> str:
    assert desk.demo is not None
    return str(documents(desk.demo, 1)[name].number)


def words(page: str) -> str:
    return re.sub(r"\s+", " ", html.unescape(re.sub(r"<[^>]+>", " ", page)))


def undo(client: TestClient, page: str) -> None:
    (key,) = re.findall(r'name="key" value="([^"]+)"', page)
    client.post("/undo", data={"key": key})


STEPS = (
    "",
    "sites",
    "readings",
    "measure",
    "kit",
    "game",
    "hub",
    "room",
    "plan",
    "mounts",
    "sheet",
    "files",
    "compare",
)


@pytest.mark.parametrize("step", STEPS)
def test_every_step_answers_and_has_one_heading(visit: TestClient, step: str) -> None:
    """No page of a visit is missing, and each says in one heading what it is."""
    page = visit.get(f"/visits/d1/{step}".rstrip("/"))
    assert page.status_code == 200
    assert len(re.findall(r"<h1[ >]", page.text)) == 1


def test_a_table_is_kept_and_taken_back(visit: TestClient, desk: RequestContext) -> None:
    """One field changed is one line changed; Undo brings back the file as it was, as a further version."""
    assert desk.demo is not None
    before = documents(desk.demo, 1)[PLAYER]
    sent = {"support": "cushion", "based_on": number(desk)}
    page = visit.post("/visits/d1/sites/edit/site/0", data=sent)
    assert tables(desk)["site"][0]["support"] == "cushion"
    assert "right index saved." in words(page.text)
    undo(visit, page.text)
    after = documents(desk.demo, 1)[PLAYER]
    assert (after.body, after.number) == (before.body, before.number + 2)


def test_a_field_that_cannot_be_read_keeps_what_was_typed(visit: TestClient, desk: RequestContext) -> None:
    """Nothing is written, the sentence stands beside the field, the field holds what was typed."""
    sent = {"travel_m": "six", "travel_m.unit": "mm", "name": "elm", "based_on": number(desk, KIT)}
    page = visit.post("/visits/d1/kit/edit/stick/0", data=sent)
    assert page.status_code == 422
    assert 'value="six"' in page.text
    assert 'found "six", expected a number' in words(page.text)
    assert tables(desk, KIT)["stick"][0]["name"] != "elm"


def test_a_table_is_added_and_taken_away(visit: TestClient, desk: RequestContext) -> None:
    """A new helper at the end; taken away with what offers it back."""
    count = len(tables(desk).get("helper", []))
    visit.post("/visits/d1/sites/edit/helper/new", data={"name": "neighbour", "based_on": number(desk)})
    assert tables(desk)["helper"][-1] == {"name": "neighbour"}
    page = visit.post(f"/visits/d1/sites/remove/helper/{count}")
    assert len(tables(desk).get("helper", [])) == count
    undo(visit, page.text)
    assert tables(desk)["helper"][-1] == {"name": "neighbour"}


def test_another_window_is_not_written_over(visit: TestClient, desk: RequestContext) -> None:
    """Two windows on one site: the second is told what stands there now, and keeps what it typed."""
    assert desk.demo is not None
    seen = number(desk)
    visit.post("/visits/d1/sites/edit/site/0", data={"support": "cushion", "based_on": seen})
    page = visit.post("/visits/d1/sites/edit/site/0", data={"support": "strap", "based_on": seen})
    assert page.status_code == 422
    assert "cushion" in words(page.text)
    assert 'value="strap"' in page.text
    assert tables(desk)["site"][0]["support"] == "cushion"


def test_readings_are_entered_direction_by_direction(visit: TestClient, desk: RequestContext) -> None:
    """Numbers stay as typed, under the unit that was chosen; an emptied direction goes."""
    thumb = 2
    sent = {
        "site": str(thumb), "based_on": number(desk), "direction.0": "90", "force.0": "41 45.50; 38", "force_unit.0": "gf",
        "reach.0": "6", "reach_unit.0": "mm", "direction.1": "0", "force.1": "", "reach.1": "", "again": "35", "again_unit": "gf",
    }  # fmt: skip
    page = visit.post("/visits/d1/readings", data=sent)
    assert page.status_code == 200
    site = tables(desk)["site"][thumb]
    assert site["reading"] == [{"direction_deg": 90, "force_gf": [41, 45.5, 38], "reach_mm": [6]}]
    assert site["again_force_gf"] == [35]
    assert "45.50" in documents(desk.demo, 1)[PLAYER].body.decode()  # type: ignore[arg-type]
    visit.post("/visits/d1/readings", data=sent | {"force.0": "", "reach.0": "", "based_on": number(desk)})
    assert "reading" not in tables(desk)["site"][thumb]


def test_directions_near_each_other_stay_two(visit: TestClient, desk: RequestContext) -> None:
    """100 degrees is not 90: a direction between the eight keeps a row of its own, and is found again by its degrees."""
    sent = {"site": "2", "based_on": number(desk), "direction.0": "90", "force.0": "4", "force_unit.0": "n",
            "direction.8": "100", "force.8": "5", "force_unit.8": "n"}  # fmt: skip
    visit.post("/visits/d1/readings", data=sent)
    page = visit.get("/visits/d1/readings?site=2").text
    assert 'name="direction.8" value="100"' in page
    visit.post("/visits/d1/readings", data=sent | {"force.8": "6", "based_on": number(desk)})
    told = [(one["direction_deg"], one["force_n"]) for one in tables(desk)["site"][2]["reading"]]
    assert told == [(90, [4]), (100, [6])]


def test_a_comma_that_could_mean_two_things_is_asked(visit: TestClient, desk: RequestContext) -> None:
    """Beside its field, with both ways to write it; nothing is kept meanwhile."""
    sent = {"site": "2", "based_on": number(desk), "direction.0": "90", "force.0": "41,45", "force_unit.0": "gf"}
    page = visit.post("/visits/d1/readings", data=sent)
    assert page.status_code == 422
    assert "Type 41 45 for 2 numbers, or 41.45 for one." in words(page.text)
    assert 'value="41,45"' in page.text
    assert "reading" not in tables(desk)["site"][2]


def test_a_gauge_file_is_taken_over_into_the_form(visit: TestClient, desk: RequestContext) -> None:
    """The same readings, now each by itself, and what the player can do is the same as before."""

    def told(page: str) -> list[str]:
        return re.findall(r"<td>([\d.]+ (?:N|mm) \([^<]*\))</td>", page)

    before = told(visit.get("/visits/d1/readings?site=0").text)
    visit.post("/visits/d1/readings/take", data={"site": "0"})
    site = tables(desk)["site"][0]
    assert "gauge_readings" not in site
    assert len(site["reading"]) == 8
    rows = documents(desk.demo, 1)["readings/right-index.csv"].body.decode().split()[1:]  # type: ignore[arg-type]
    forces = [*(force for one in site["reading"] for force in one["force_n"]), *site["again_force_n"]]
    assert sorted(forces) == sorted(float(row.split(",")[1]) for row in rows)
    assert told(visit.get("/visits/d1/readings?site=0").text) == before != []


def test_a_unit_slip_is_asked_about(visit: TestClient, desk: RequestContext) -> None:
    """Gram-force typed as newton: asked, never converted unasked."""
    sent = {"site": "2", "based_on": number(desk), "direction.0": "90", "force.0": "140 150 145", "force_unit.0": "n"}
    page = visit.post("/visits/d1/readings", data=sent)
    assert "These look like grams-force (140 would be 1.4 N)" in words(page.text)
    assert "Nothing was converted." in words(page.text)
    assert tables(desk)["site"][2]["reading"][0]["force_n"] == [140, 150, 145]


def test_a_file_is_shown_with_every_version(visit: TestClient, desk: RequestContext) -> None:
    """Typed as text, broken for a moment: kept, told with its line, and every version is there."""
    assert desk.demo is not None
    page = visit.post(
        "/visits/d1/files/room.toml", data={"text": "posture = \n", "based_on": number(desk, "room.toml")}
    )
    assert "room.toml, line 1" in words(page.text)
    assert visit.get("/visits/d1/room").status_code == 422
    undo(
        visit,
        visit.post("/visits/d1/files/room.toml", data={"text": "# n\n", "based_on": number(desk, "room.toml")}).text,
    )
    page = visit.get("/visits/d1/files/room.toml")
    assert words(page.text).count("edited as text") >= 2
    assert [version.number for version in history(desk.demo, 1, "room.toml")] == [1, 2, 3, 4]


def test_usual_actions_begin_a_game(visit: TestClient, desk: RequestContext) -> None:
    """A kind of game is a beginning, and can be taken back."""
    assert desk.demo is not None
    save_document(desk.demo, 1, "game.toml", b'name = "new"\n', who="t")
    assert "Game type" in words(visit.get("/visits/d1/game").text)
    page = visit.post("/visits/d1/game/usual", data={"archetype": "racing"})
    assert len(tables(desk, "game.toml")["action"]) >= 3
    undo(visit, page.text)
    assert tables(desk, "game.toml") == {"name": "new"}


@pytest.mark.parametrize("address", ["sites/edit/site/9", "sites/edit/stick/0", "kit/edit/name", "files/none.toml", "plans/7",
                                     "making/x", "plans/7/sheet.pdf", "fetch/../../x"])  # fmt: skip
def test_addresses_of_nothing_are_not_found(visit: TestClient, address: str) -> None:
    """An old bookmark is a plain 'not found', never an error of ours."""
    assert visit.get(f"/visits/d1/{address}").status_code == 404
