"""Several games of a visit in the app: added, edited, deleted, taken in with a folder and given back with one."""

from __future__ import annotations

import io
import tomllib
import zipfile
from pathlib import Path

import pytest
from starlette.testclient import TestClient
from tests.web.test_visit import tables, undo, words

from stickwright.files.folder import read_case
from stickwright.store.documents import documents
from stickwright.store.facts import facts_of
from stickwright.web.demo import set_out
from stickwright.web.request_context import RequestContext


@pytest.fixture
def visit(client: TestClient, desk: RequestContext) -> TestClient:
    """A browser at the demo's visit."""
    set_out(desk)
    return client


def test_a_game_is_added_edited_and_deleted(visit: TestClient, desk: RequestContext) -> None:
    """The page of the new game is the page of any game; hours and actions go into its own file; deleting can be undone."""
    assert desk.demo is not None
    first = tables(desk, "game.toml")
    page = visit.post("/visits/d1/game/another", data={"game_name": "evening race", "kind": "racing"})
    assert page.url.path == "/visits/d1/game-2"
    assert tables(desk, "game-2.toml")["name"] == "evening race"
    assert len(tables(desk, "game-2.toml")["action"]) >= 3
    based = documents(desk.demo, 1)["game-2.toml"].number
    visit.post("/visits/d1/game-2/edit", data={"hours_per_week": "3.5", "based_on": str(based)})
    visit.post(
        "/visits/d1/game-2/edit/action/new",
        data={"name": "honk", "kind": "press", "importance": "2", "based_on": str(based + 1)},
    )
    assert tables(desk, "game-2.toml")["hours_per_week"] == 3.5
    assert tables(desk, "game-2.toml")["action"][-1]["name"] == "honk"
    for address in ("game", "game-2"):
        shown = words(visit.get(f"/visits/d1/{address}").text)
        assert first["name"] in shown
        assert "evening race 3.5 h a week" in shown
    assert tables(desk, "game.toml") == first
    gone = visit.post("/visits/d1/game-2/delete")
    assert gone.url.path == "/visits/d1/game"
    assert "game-2.toml" not in documents(desk.demo, 1)
    undo(visit, gone.text)
    assert tables(desk, "game-2.toml")["name"] == "evening race"


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("", "Enter the player's word for the game"),
        ("x" * 101, "up to 100 characters"),
        (None, "is the name of another game"),
    ],
)
def test_a_game_that_cannot_be_added_says_why(
    visit: TestClient, desk: RequestContext, name: str | None, told: str
) -> None:
    """Beside the field, with what was typed still in it; nothing is written."""
    name = tables(desk, "game.toml")["name"] if name is None else name
    page = visit.post("/visits/d1/game/another", data={"game_name": name, "kind": ""})
    assert page.status_code == 422
    assert told in words(page.text)
    assert desk.demo is not None
    assert "game-2.toml" not in documents(desk.demo, 1)


def test_no_more_games_than_a_folder_holds(visit: TestClient) -> None:
    """Nine: the tenth is refused in a sentence."""
    for number in range(2, 10):
        assert visit.post("/visits/d1/game/another", data={"game_name": f"game {number}"}).status_code == 200
    assert "at most 9 games" in words(visit.post("/visits/d1/game/another", data={"game_name": "one more"}).text)


def test_usual_actions_leave_the_name_and_the_hours(visit: TestClient, desk: RequestContext) -> None:
    """Two games of the same kind would otherwise get the same name."""
    visit.post("/visits/d1/game/another", data={"game_name": "evening race"})
    visit.post("/visits/d1/game-2/edit", data={"hours_per_week": "3", "based_on": "1"})
    visit.post("/visits/d1/game-2/usual", data={"archetype": "racing"})
    found = tables(desk, "game-2.toml")
    assert (found["name"], found["hours_per_week"], found["archetype"]) == ("evening race", 3, "racing")
    assert found["action"]


def test_a_site_is_offered_the_actions_of_all_games(visit: TestClient) -> None:
    """Together with other actions, only those of the same game."""
    visit.post("/visits/d1/game/another", data={"game_name": "evening race", "kind": "racing"})
    assert '<option value="steer"' in visit.get("/visits/d1/sites/edit/site/0").text
    assert 'value="steer"' not in visit.get("/visits/d1/game/edit/action/0").text
    assert 'value="steer"' in visit.get("/visits/d1/game-2/edit/action/1").text


def test_several_games_come_back_as_a_folder(visit: TestClient, tmp_path: Path) -> None:
    """Exported, they are the files that a case folder has; read, the games of one player."""
    visit.post("/visits/d1/game/another", data={"game_name": "evening race", "kind": "racing"})
    with zipfile.ZipFile(io.BytesIO(visit.get("/visits/d1/case.zip").content)) as packed:
        packed.extractall(tmp_path)
    (found,) = tmp_path.rglob("game-2.toml")
    assert tomllib.loads(found.read_text())["name"] == "evening race"
    assert [game.name for game in read_case(found.parent).games][1:] == ["evening race"]


@pytest.mark.parametrize("address", ["game-3", "game-1", "game-10"])
def test_a_game_that_is_not_there(visit: TestClient, address: str) -> None:
    """Nothing to delete, and no page to find one on."""
    assert visit.post(f"/visits/d1/{address}/delete").status_code == 404
    assert visit.get(f"/visits/d1/{address}").status_code == 404
    assert visit.post(f"/visits/d1/{address}/edit", data={"name": "x", "based_on": "0"}).status_code == 404


def test_the_list_of_visits_names_all_games() -> None:
    """A further game that cannot be read counts as one thing to put right."""
    files = {"game.toml": b'name = "kites"\n', "game-2.toml": b'name = "boats"\n', "game-4.toml": b"name = \n"}
    assert (facts_of(files).game, facts_of(files).problems) == ("kites, boats", 1)
