"""What is slow to load is loaded when it is asked for, and answers as it would otherwise."""

from __future__ import annotations

import asyncio
import re
import subprocess
import sys
import threading
from functools import partial

import pytest
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import PlainTextResponse
from starlette.routing import Mount, Route, WebSocketRoute
from starlette.types import Receive, Scope, Send
from tests.web.conftest import TestClient

from stickwright.web.app import SLOW, make_app
from stickwright.web.lazy_routes import QUIET_S, Later, WarmUp
from stickwright.web.request_context import RequestContext


@pytest.mark.parametrize("topic", SLOW)
def test_every_address_of_a_topic_is_in_its_pattern(topic: str) -> None:
    """A route that the pattern left out would never answer."""
    later = Later(f"stickwright.web.{topic}", SLOW[topic])
    for route in later.routes():
        assert isinstance(route, Route | WebSocketRoute)
        path = re.sub(r"\{[^}]*\}", "7", route.path)
        assert later.addresses.fullmatch(path), f"{topic}: {path}"


def test_the_app_comes_up_without_what_is_slow_to_load() -> None:
    """Planning, figures and tables of numbers wait until they are needed."""
    code = (
        "import sys; from pathlib import Path; from stickwright.web.app import make_app;"
        "from stickwright.web.request_context import RequestContext;"
        "make_app(RequestContext(Path('nowhere.db')));"
        "print(*[m for m in ('stickwright.planning.plan', 'numba', 'scipy', 'matplotlib', 'polars', 'typst', 'ortools')"
        " if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == ""


def test_what_is_slow_is_loaded_in_the_quiet_after_the_first_page_and_ends_with_the_app() -> None:
    """Nothing before the first page; one job that fails leaves the others; no thread goes on after the end."""
    done: list[str] = []

    async def answer(scope: Scope, receive: Receive, send: Send) -> None:
        await PlainTextResponse(f"{len(done)} done")(scope, receive, send)

    def broken() -> None:
        done.append("broken")
        raise ImportError("not here")

    app = WarmUp(
        Starlette(routes=[Mount("/", answer)]), (lambda: done.append("first"), broken, lambda: done.append("last"))
    )
    with TestClient(app) as client:
        assert client.get("/").text == "0 done"
        (thread,) = [one for one in threading.enumerate() if one.name == "warm-up"]
        thread.join(20)
        assert client.get("/").text == "3 done"
    assert done == ["first", "broken", "last"]
    assert len(app.done) == 2
    assert not [one for one in threading.enumerate() if one.name == "warm-up"]


def test_the_end_waits_for_no_further_job() -> None:
    """Ctrl-C right after the first page: what has not begun is left."""
    done: list[str] = []
    app = WarmUp(Starlette(), [partial(done.append, str(number)) for number in range(1000)])
    with TestClient(app) as client:
        client.get("/")
    assert len(done) < 1000
    assert not [one for one in threading.enumerate() if one.name == "warm-up"]


def test_an_app_in_a_test_warms_nothing_up_unless_asked(desk: RequestContext) -> None:
    """The app that `stickwright open` serves does; one made otherwise starts no thread."""
    names = [[one.cls for one in make_app(desk, warm=warm).user_middleware] for warm in (False, True)]
    assert [WarmUp in one for one in names] == [False, True]


def test_a_page_that_takes_long_is_not_made_longer() -> None:
    """What is loaded in the quiet waits for a page under way, however long it takes."""
    done: list[str] = []

    async def answer(request: Request) -> PlainTextResponse:
        await asyncio.sleep(float(request.query_params["for"]))
        return PlainTextResponse(f"{len(done)} done")

    app = WarmUp(Starlette(routes=[Route("/", answer)]), (lambda: done.append("job"),))
    with TestClient(app) as client:
        client.get("/?for=0")
        assert client.get(f"/?for={5 * QUIET_S}").text == "0 done"
