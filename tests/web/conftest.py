"""The app around a desk of its own, asked in this process; a clock that stands where it is put."""

from __future__ import annotations

import warnings
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

with warnings.catch_warnings():  # the client wants a newer name of the same library, which is not one of ours to choose
    warnings.filterwarnings("ignore", message="Using `httpx` with `starlette.testclient`")
    from starlette.testclient import TestClient

from stickwright.web.app import make_app
from stickwright.web.desk import Desk

ADDRESS = "http://127.0.0.1:8123"


class StandingClock:
    """Time goes on only when the test says so."""

    def __init__(self) -> None:
        self.time = datetime(2026, 3, 9, 10, 0, tzinfo=UTC)

    def now(self) -> datetime:
        return self.time

    def go_on(self, **ahead: float) -> None:
        self.time += timedelta(**ahead)


@pytest.fixture
def clock() -> StandingClock:
    return StandingClock()


@pytest.fixture
def desk(tmp_path: Path, clock: StandingClock) -> Iterator[Desk]:
    """A desk on an empty folder: nothing is open yet."""
    made = Desk(tmp_path / "records.db", clock, preferences_file=tmp_path / "settings.toml")
    yield made
    made.close()


@pytest.fixture
def stranger(desk: Desk) -> TestClient:
    """A browser that was not let in."""
    return TestClient(make_app(desk), base_url=ADDRESS, raise_server_exceptions=False)


@pytest.fixture
def client(stranger: TestClient, desk: Desk) -> TestClient:
    """The browser that was started with the app: it has the cookie, and sends its forms as a page would (`post`)."""
    stranger.get(f"/?start={desk.token}")
    stranger.headers["origin"] = ADDRESS
    (session,) = desk.sessions.values()
    stranger.headers["x-csrf"] = session.csrf
    return stranger
