"""The app around a desk of its own, asked in this process; a clock that stands where it is put."""

from __future__ import annotations

import threading
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
import uvicorn

with warnings.catch_warnings():  # the client wants a newer name of the same library, which is not one of ours to choose
    warnings.filterwarnings("ignore", message="Using `httpx` with `starlette.testclient`")
    from starlette.testclient import TestClient

from kept import plans_kept
from stickwright.store.cases import import_case
from stickwright.store.consents import give_consent
from stickwright.store.opening import memory_store
from stickwright.store.plans import make_plan
from stickwright.store.players import visit
from stickwright.web.app import make_app
from stickwright.web.demo import demo_case
from stickwright.web.request_context import RequestContext
from stickwright.web.serving import address, bound

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
def desk(tmp_path: Path, clock: StandingClock) -> Iterator[RequestContext]:
    """A desk on an empty folder: nothing is open yet."""
    made = RequestContext(tmp_path / "records.db", clock, preferences_file=tmp_path / "settings.toml")
    yield made
    made.close()


@pytest.fixture
def stranger(desk: RequestContext) -> TestClient:
    """A browser that was not let in."""
    return TestClient(make_app(desk), base_url=ADDRESS, raise_server_exceptions=False)


@pytest.fixture
def client(stranger: TestClient, desk: RequestContext) -> TestClient:
    """The browser that was started with the app: it has the cookie, and sends its forms as a page would (`post`)."""
    stranger.get(f"/?start={desk.token}")
    stranger.headers["origin"] = ADDRESS
    (session,) = desk.sessions.values()
    stranger.headers["x-csrf"] = session.csrf
    return stranger


def demo_with_plan(desk: RequestContext) -> int:
    """Records with one visit, the demo's, and one plan of it: the visit."""
    desk.store = memory_store(desk.clock)
    row = import_case(desk.store, demo_case(), who="ot")
    give_consent(
        desk.store, visit(desk.store, row.id).player_id, scope=("measure", "keep"), given_on="2026-03-09",
        until="2027-03-09", given_by="the player", who="ot",
    )  # fmt: skip
    with plans_kept():
        make_plan(desk.store, row.id, who="ot", draws=20, seed=3, made_on="2026-03-09")
    return row.id


@contextmanager
def serving(desk: RequestContext) -> Iterator[str]:
    """The app in a thread; the address that its start would print."""
    held = bound(0)
    config = uvicorn.Config(
        make_app(desk), log_level="critical", log_config=None, lifespan="off", ws="websockets-sansio"
    )
    server = uvicorn.Server(config)
    thread = threading.Thread(target=server.run, kwargs={"sockets": [held]})
    thread.start()
    try:
        yield address(desk, held)
    finally:
        server.should_exit = True
        thread.join()
        held.close()


@pytest.fixture
def served(desk: RequestContext) -> Iterator[str]:
    """The app as a browser meets it: the address with the token."""
    with serving(desk) as printed:
        yield printed
