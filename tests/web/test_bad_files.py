"""Files of a visit as nobody should write them: every page answers, in words, and none with a fault of the program."""

from __future__ import annotations

import re
from html import unescape

import pytest
from starlette.testclient import TestClient

from stickwright.store.documents import save_document
from stickwright.web.demo import set_out
from stickwright.web.request_context import RequestContext

PLAYER = "player.toml"
HUGE = "9" * 400
BAD = {
    "no TOML": "[[site\n",
    "nothing in it": "",
    "tables that are words": 'site = "x"\nstick = "y"\naction = "z"\n',
    "names that are numbers": 'code = "K7"\n[[site]]\nname = 5\npart = []\n',
    "numbers that are none": 'code = "K7"\n[[site]]\nname = "chin"\npart = "chin"\n'
    "[[site.reading]]\ndirection_deg = nan\nforce_gf = [nan, inf]\n"
    "[[site.reading]]\ndirection_deg = inf\nreach_mm = -inf\n[[site.reading]]\ndirection_rad = 1e308\n",
    "numbers beyond any": f'code = "K7"\n[[site]]\nname = "chin"\npart = "chin"\n'
    f"[[site.reading]]\ndirection_deg = {HUGE}\nforce_n = [{HUGE}]\n",
    "one site that is no list": 'code = "K7"\n[site]\nname = "chin"\n[site.reading]\nx = 1\n',
    "inner tables that are words": 'code = "K7"\n[[site]]\nname = "chin"\nreading = "x"\nrest = 5\nrecording = 7\n',
    "lists in lists": "a = " + "[" * 300 + "]" * 300 + "\n",
    "dates": 'code = 1979-05-27\nsite = [{ name = 1979-05-27, part = true }]\n',
}  # fmt: skip
PAGES = (
    "", "sites", "sites/edit", "sites/edit/site/0", "sites/edit/site/new", "readings", "readings?site=1", "measure",
    "plan", "mounts", "sheet", "files", "files/player.toml", "case.zip",
)  # fmt: skip
SENT = (
    ("sites/edit/site/new", {"name": "q"}),
    ("sites/edit/site/0", {"name": "q"}),
    ("sites/remove/site/0", {}),
    ("readings", {"site": "0", "direction.0": "90", "force.0": "1 2"}),
    ("readings", {"site": "0", "direction.0": "nan", "force.0": "1", "direction.1": "1e999", "reach.1": "1"}),
    ("readings/take", {"site": "0"}),
    ("measure", {"site": "chin", "task": "rest", "source": "browser"}),
)


@pytest.fixture
def visit(client: TestClient, desk: RequestContext) -> TestClient:
    set_out(desk)
    return client


@pytest.mark.parametrize("what", BAD)
def test_no_file_brings_a_page_down(visit: TestClient, what: str) -> None:
    """It is kept as typed, each page says what is wrong or shows what can be shown, and its text can be put right."""
    kept = visit.post("/visits/d1/files/player.toml", data={"text": BAD[what]})
    assert kept.status_code == 200
    answers = {path: visit.get(f"/visits/d1/{path}".rstrip("/")).status_code for path in PAGES}
    answers |= {
        f"{place} {path}": visit.post(f"/visits/d1/{path}", data=sent, follow_redirects=False).status_code
        for place, (path, sent) in enumerate(SENT)
    }
    assert {path: status for path, status in answers.items() if status >= 500} == {}
    assert visit.get("/visits/d1/files/player.toml").status_code == 200


def test_a_gauge_file_in_another_encoding_is_told(visit: TestClient, desk: RequestContext) -> None:
    assert desk.demo is not None
    name = "readings/typed.csv"
    player = f'code = "K7"\n[[site]]\nname = "chin"\npart = "chin"\ngauge_readings = "{name}"\n'
    save_document(desk.demo, 1, PLAYER, player.encode(), who="test")
    save_document(desk.demo, 1, name, "direction_deg,force_gf\n0,41 \xb0\n".encode("latin-1"), who="test")
    told = visit.post("/visits/d1/readings/take", data={"site": "0"})
    assert told.status_code == 422
    assert "This file is not in UTF-8." in unescape(re.sub(r"<[^>]+>", "", told.text))
