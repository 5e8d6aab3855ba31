"""A bad day, through the pages: no room on the disk, records that somebody else holds, what is not there, files that are none."""

from __future__ import annotations

import html
import re
import subprocess
import sys
from pathlib import Path

import pytest
import sqlalchemy as sa
from starlette.testclient import TestClient

from stickwright.store import engines
from stickwright.store.documents import documents
from stickwright.store.opening import create_store
from stickwright.web.request_context import RequestContext

PLAYER = "player.toml"
HOLDS = """
import sqlite3, sys
held = sqlite3.connect(sys.argv[1], isolation_level=None)
held.execute("BEGIN IMMEDIATE")
print("held", flush=True)
sys.stdin.read()
"""
"""A program of its own: within one process, two libraries do not see each other's locks."""


def words(page: str) -> str:
    return re.sub(r"\s+", " ", html.unescape(re.sub(r"<[^>]+>", " ", page)))


@pytest.fixture
def kept(client: TestClient, desk: RequestContext, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> TestClient:
    """Records on the disk, not encrypted, with a player who agreed and a visit; nobody waits long for a lock."""
    monkeypatch.setattr(engines, "WAIT_S", 0.2)
    desk.store = create_store(tmp_path / "practice.db", passphrase=None, clock=desk.clock)
    client.post("/players", data={"code": "R4"})
    client.post(
        "/players/m~R4/consent",
        data={"scope": ["measure", "keep"], "given_on": "2026-03-09", "until": "2027-03-09", "given_by": "player"},
    )
    client.post("/players/R4/visits", data={"on_date": "2026-03-09"})
    assert client.get("/visits/1").status_code == 200
    return client


def typed(client: TestClient) -> str:
    """A site sent; the page that comes, with what was typed."""
    answer = client.post(
        "/visits/1/sites/edit/site/new", data={"name": "left thumb", "part": "thumb", "support": "wedge"}
    )
    assert answer.status_code == 422
    assert 'value="wedge"' in answer.text, "what was typed is gone"
    assert "Traceback" not in answer.text
    return words(answer.text)


def test_no_room_on_the_disk(kept: TestClient, desk: RequestContext) -> None:
    """Said in a sentence, nothing typed is lost; with room again the same form is kept."""
    assert desk.store is not None

    @sa.event.listens_for(desk.store.engine, "begin")
    def full(connection: sa.Connection) -> None:
        connection.exec_driver_sql("PRAGMA max_page_count = 1")

    before = documents(desk.store, 1)[PLAYER].number
    text = "x = '" + "".join(f"{number:x}" for number in range(60_000)) + "'"
    answer = kept.post("/visits/1/files/player.toml", data={"text": text})
    assert answer.status_code == 422
    assert "room" in words(answer.text)
    assert documents(desk.store, 1)[PLAYER].number == before
    assert text[:200] in html.unescape(answer.text)
    sa.event.remove(desk.store.engine, "begin", full)
    with desk.store.engine.connect() as connection:
        connection.exec_driver_sql("PRAGMA max_page_count = 1073741823")
    assert kept.post("/visits/1/files/player.toml", data={"text": 'code = "R4"\n'}).status_code == 200


def test_somebody_else_holds_the_records(kept: TestClient, tmp_path: Path) -> None:
    """A backup program, a second start by other means: told, nothing typed is lost, and it works once they let go."""
    with subprocess.Popen(
        [sys.executable, "-c", HOLDS, str(tmp_path / "practice.db")], stdin=subprocess.PIPE, stdout=subprocess.PIPE
    ) as other:
        assert other.stdout is not None
        assert other.stdout.readline() == b"held\n"
        assert "Your entries are still in the form." in typed(kept)
        other.communicate(b"let go")
    answer = kept.post("/visits/1/sites/edit/site/new", data={"name": "left thumb", "part": "thumb"})
    assert "left thumb saved" in words(answer.text)


@pytest.mark.parametrize(
    "path", ["/visits/99", "/visits/99/readings", "/visits/zz/plan", "/visits/1/plans/7", "/players/nobody"]
)
def test_what_is_not_there_is_said(kept: TestClient, path: str) -> None:
    answer = kept.get(path)
    assert answer.status_code == 404
    assert "Page not found" in words(answer.text)


@pytest.mark.parametrize("body", [b"", b"no zip at all", b"PK\x03\x04 cut short", b"\x00" * 1000])
def test_an_upload_that_is_no_case_folder(kept: TestClient, body: bytes) -> None:
    answer = kept.post("/import", data={"into": ""}, files={"file": ("case.zip", body, "application/zip")})
    assert answer.status_code == 422
    assert "This ZIP file" in words(answer.text) or "case folder" in words(answer.text)


def test_a_form_sent_after_the_records_were_closed_is_held(kept: TestClient, desk: RequestContext) -> None:
    """Locked by hand in another window: what was typed here waits behind the start page, and is not lost."""
    desk.lock()
    answer = kept.post("/visits/1/sites/edit/site/new", data={"name": "left thumb", "part": "thumb"})
    assert answer.url.path == "/start"
    (session,) = desk.sessions.values()
    assert session.pending == ("/visits/1/sites/edit/site/new", [("name", "left thumb"), ("part", "thumb")])
