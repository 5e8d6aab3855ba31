"""Bringing the app up: loopback only, one at a time, ended quietly."""

from __future__ import annotations

import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from urllib.request import HTTPCookieProcessor, build_opener

import pytest

from stickwright.errors import BadInput
from stickwright.web.serving import bound, only_here

OPEN = (sys.executable, "-m", "stickwright", "open", "--no-browser")


@contextmanager
def begun(*words: str | Path) -> Iterator[tuple[subprocess.Popen[str], str]]:
    with subprocess.Popen(
        [*OPEN, *map(str, words)], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    ) as process:
        assert process.stdout is not None
        try:
            yield process, process.stdout.readline()
        finally:
            process.kill()


def test_open_answers_and_ends_with_nothing_lost(tmp_path: Path) -> None:
    """The address that is printed shows the first page; a second start is told so meanwhile; Ctrl-C ends it with a sentence."""
    place = tmp_path / "deep" / "records.db"
    with begun("--place", place) as (process, line):
        assert line.startswith("stickwright is open at http://127.0.0.1:")
        browser = build_opener(HTTPCookieProcessor())
        with browser.open(line.split()[-1], timeout=20) as answer:
            assert b"Create records for your players" in answer.read()
        second = subprocess.run([*OPEN, "--place", str(place)], capture_output=True, text=True, timeout=60, check=False)
        assert second.returncode == 2
        assert "These records are open already." in second.stderr
        assert "Traceback" not in second.stderr
        process.send_signal(signal.SIGINT)
        out, err = process.communicate(timeout=30)
    assert (process.returncode, err) == (0, "")
    assert out.strip().endswith("Closed. Everything that was saved is kept.")


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        (("--port", "70000"), "0 to 65535"),
        (("--team",), "the team's server such as postgresql"),
        (("--place", "postgresql://u@h/n"), "Add --team"),
    ],
)
def test_what_cannot_be_opened_is_said(words: tuple[str, ...], sentence: str) -> None:
    ended = subprocess.run([*OPEN, *words], capture_output=True, text=True, timeout=60, check=False)
    assert ended.returncode == 2
    assert sentence in ended.stderr


def test_only_this_machine_reaches_it_and_a_taken_port_is_said() -> None:
    held = bound(0)
    try:
        assert held.getsockname()[0] == "127.0.0.1"
        with pytest.raises(BadInput, match="cannot be used"):
            bound(held.getsockname()[1])
    finally:
        held.close()


def test_a_file_is_open_once_and_again_after(tmp_path: Path) -> None:
    place = tmp_path / "records.db"
    with only_here(place), pytest.raises(BadInput, match="open already"), only_here(place):
        raise AssertionError("opened twice")
    with only_here(place):
        assert not place.exists()
