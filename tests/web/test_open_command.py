"""`stickwright open` as a person lives with it: first start, wrong passphrase, no room, and every way in which it ends too early."""

from __future__ import annotations

import json
import os
import re
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from html import unescape
from http.cookiejar import CookieJar
from pathlib import Path
from typing import Any
from urllib.error import HTTPError
from urllib.parse import urlencode
from urllib.request import HTTPCookieProcessor, Request, build_opener

import numpy as np
import pytest
from websockets.sync.client import ClientConnection, connect

from stickwright.store.cases import import_case
from stickwright.store.consents import give_consent
from stickwright.store.opening import create_store, open_store
from stickwright.store.recordings import recordings, samples_of
from stickwright.web.demo import demo_case

WORDS = "kettle orbit mossy lantern nine"
OPEN = (sys.executable, "-m", "stickwright", "open", "--no-browser")
PATIENCE_S = 60.0
HALTED_S = 2.5
"""Longer than what counts as a gap, shorter than what stops a task (5 s)."""


@dataclass
class Window:
    """A browser without scripts in front of a running app."""

    process: subprocess.Popen[str]
    address: str
    html: str = ""
    url: str = ""
    jar: CookieJar = field(default_factory=CookieJar)
    csrf: str = ""

    @property
    def home(self) -> str:
        return self.address.partition("?")[0].rstrip("/")

    def get(self, path: str) -> str:
        return self._asked(Request(self.home + path))

    def post(self, path: str, **sent: str) -> str:
        body = urlencode({"csrf": self.csrf, **sent}).encode()
        return self._asked(Request(self.home + path, body, {"Origin": self.home}))

    def line(self, path: str) -> ClientConnection:
        cookies = "; ".join(f"{one.name}={one.value}" for one in self.jar)
        return connect(
            f"ws{self.home[4:]}{path}", additional_headers={"Cookie": cookies}, origin=self.home, proxy=None  # type: ignore[arg-type]
        )  # fmt: skip

    def end(self) -> tuple[str, str]:
        self.process.send_signal(signal.SIGINT)
        return self.process.communicate(timeout=PATIENCE_S)

    def _asked(self, request: Request) -> str:
        try:
            answer: Any = build_opener(HTTPCookieProcessor(self.jar)).open(request, timeout=PATIENCE_S)
        except HTTPError as refused:
            answer = refused
        with answer:
            self.url, self.html = answer.url, answer.read().decode()
        found = re.search(r'name="csrf" value="([^"]+)"', self.html)
        self.csrf = found[1] if found else self.csrf
        return " ".join(unescape(re.sub(r"<[^>]+>", " ", self.html)).split())


@contextmanager
def opened(*words: str | Path) -> Iterator[Window]:
    """The app, started as a person starts it, with its first page."""
    with subprocess.Popen(
        [*OPEN, *map(str, words)], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, start_new_session=True
    ) as process:
        assert process.stdout is not None
        try:
            window = Window(process, process.stdout.readline().split()[-1])
            window.get("/" + window.address.rpartition("/")[2])
            yield window
        finally:
            process.kill()


def refused(*words: str | Path, **more: Any) -> str:
    ended = subprocess.run([*OPEN, *map(str, words)], capture_output=True, text=True, timeout=60, check=False, **more)
    assert (ended.returncode, ended.stdout) == (2, "")
    assert "Traceback" not in ended.stderr
    return ended.stderr.strip()


@pytest.mark.slow
def test_first_start_wrong_passphrase_and_the_same_records_again(tmp_path: Path) -> None:
    """Made with a passphrase; after Ctrl-C, a wrong one is told so, and the right one brings back what was entered."""
    place = tmp_path / "records.db"
    with opened("--place", place) as window:
        assert "This is too easy to guess." in window.post("/start", passphrase="hello", again="hello")
        assert not place.exists()
        assert "Records created." in window.post("/start", passphrase=WORDS, again=WORDS)
        window.post("/players", code="R4")
        today = datetime.now().astimezone().date()
        given = {
            "scope": "keep",
            "given_on": str(today),
            "until": str(today + timedelta(days=300)),
            "given_by": "player",
        }
        window.post(window.url.removeprefix(window.home), **given)
        out, err = window.end()
        assert (window.process.returncode, err) == (0, "")
        assert out.splitlines()[-1] == "Closed. Everything that was saved is kept."
    with opened("--place", place) as window:
        assert "Unlock your records" in window.get("/start")
        assert "does not open these records" in window.post("/start", passphrase=WORDS + "s")
        assert "R4" in window.post("/start", passphrase=WORDS)
        window.end()


def test_practice_records_lie_apart_and_open_without_a_passphrase(tmp_path: Path) -> None:
    with opened("--practice", "--place", tmp_path / "practice.db") as window:
        assert window.url.endswith("/players")
        window.end()
    assert (tmp_path / "practice.db").read_bytes()[:15] == b"SQLite format 3"


def test_a_port_that_is_taken_is_said(tmp_path: Path) -> None:
    with socket.create_server(("127.0.0.1", 0)) as held:
        port = held.getsockname()[1]
        assert f"--port: Port {port} cannot be used (" in (
            said := refused("--place", tmp_path / "records.db", "--port", str(port))
        )
    assert said.endswith("Leave out --port: the app then takes one that is free.")


@pytest.mark.parametrize("practice", [(), ("--practice",)])
def test_where_nothing_can_be_written_is_said_before_anything_is_typed(
    tmp_path: Path, practice: tuple[str, ...]
) -> None:
    """No page on which a passphrase is chosen for records that cannot be made."""
    (tmp_path / "plain").write_text("a file, where a folder is wanted")
    said = refused(*practice, "--place", tmp_path / "plain" / "records.db")
    assert "Nothing can be written in this folder" in said
    assert "Name a file elsewhere with --place" in said


def test_a_folder_or_another_program_s_file_is_left_as_it_is(tmp_path: Path) -> None:
    (tmp_path / "list.db").write_text("bread, milk\n" * 100)
    assert "This is a folder." in refused("--place", tmp_path)
    assert "This is not a records file of stickwright." in refused("--place", tmp_path / "list.db")
    assert (tmp_path / "list.db").read_text() == "bread, milk\n" * 100


@pytest.fixture
def place(tmp_path: Path) -> Path:
    """Encrypted records with an invented player, and a consent to keep."""
    store = create_store(tmp_path / "records.db", passphrase=WORDS)
    row = import_case(store, demo_case(), who="test")
    now = datetime.now(UTC).date()
    give_consent(
        store, row.player_id, scope=("measure", "keep"), given_on=str(now), until=str(now + timedelta(days=30)),
        given_by="the player", who="test",
    )  # fmt: skip
    store.close()
    return tmp_path / "records.db"


@contextmanager
def measuring(window: Window) -> Iterator[ClientConnection]:
    """An invented player plays: the line, once samples of it are kept."""
    window.post("/start", passphrase=WORDS)
    window.get("/visits/1/measure")
    site = unescape(re.findall(r'<option value="([^"]+)"', window.html)[0])
    window.post("/visits/1/measure", site=site, source="practice", task="play")
    with window.line(window.url.removeprefix(window.home) + "/socket") as line:
        shown(line, lambda one: "start" in one.get("may", ()))
        line.send(json.dumps({"do": "start"}))
        shown(line, lambda one: one.get("kept", 0) > 300)
        yield line


def shown(line: ClientConnection, wanted: Any) -> dict[str, Any]:
    """The first message that is wanted."""
    until = time.monotonic() + PATIENCE_S
    while time.monotonic() < until:
        said: dict[str, Any] = json.loads(line.recv(timeout=PATIENCE_S))
        if wanted(said):
            return said
    raise AssertionError("it never came")


def last_recording(place: Path) -> tuple[str, np.ndarray]:
    """How the last recording ended, and its samples, from the file itself."""
    store = open_store(place, passphrase=WORDS)
    row = recordings(store, 1)[-1]
    samples = samples_of(store, row.id)
    store.close()
    return row.state, samples


@pytest.mark.slow
def test_ctrl_c_during_a_measurement_keeps_what_was_shown_as_kept(place: Path) -> None:
    """It ends with its sentence, and the recording ends as one that was stopped."""
    with opened("--place", place) as window, measuring(window) as line:
        kept = shown(line, lambda one: one.get("kept", 0) > 600)["kept"]
        out, err = window.end()
        assert (window.process.returncode, err) == (0, "")
        assert out.splitlines()[-1] == "Closed. Everything that was saved is kept."
    state, samples = last_recording(place)
    assert state == "stopped"
    assert len(samples) >= kept


@pytest.mark.slow
def test_killed_during_a_measurement_says_so_at_the_next_start(place: Path) -> None:
    """Every sample that was shown as kept is there, times rise, and the first page after says what happened."""
    with opened("--place", place) as window, measuring(window) as line:
        kept = shown(line, lambda one: one.get("kept", 0) > 600)["kept"]
        window.process.kill()
        window.process.wait(PATIENCE_S)
    with opened("--place", place) as window:
        said = window.post("/start", passphrase=WORDS)
        assert re.search(r"Recording .* was interrupted earlier. What it held up to then is kept.", said)
        window.end()
    state, samples = last_recording(place)
    assert state == "cut short"
    assert len(samples) >= kept
    assert np.all(np.diff(samples[:, 0]) >= 0)


@pytest.mark.slow
def test_halted_during_a_measurement_is_told_as_a_gap(place: Path) -> None:
    """The laptop stood still while the player played on: said at once, and the samples have the hole where it was."""
    with opened("--place", place) as window, measuring(window) as line:
        os.kill(window.process.pid, signal.SIGSTOP)
        time.sleep(HALTED_S)
        os.kill(window.process.pid, signal.SIGCONT)
        said = shown(line, lambda one: any("gap" in words for words in one.get("words", ())))
        shown(line, lambda one: one.get("kept", 0) > said["kept"] + 100)
        window.end()
    _, samples = last_recording(place)
    assert np.max(np.diff(samples[:, 0])) > 0.9 * HALTED_S
