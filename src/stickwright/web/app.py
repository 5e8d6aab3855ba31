"""The app put together: pages, door, look."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncGenerator, Callable
from contextlib import asynccontextmanager
from functools import partial
from importlib import import_module

from starlette.applications import Starlette
from starlette.concurrency import run_in_threadpool
from starlette.middleware import Middleware
from starlette.routing import BaseRoute, Mount
from starlette.staticfiles import StaticFiles

from stickwright.web.errors import HANDLERS
from stickwright.web.guard import Guard
from stickwright.web.lazy_routes import Later, WarmUp
from stickwright.web.request_context import RequestContext

__all__ = ["TOPICS", "make_app"]

TOPICS: tuple[str, ...] = (
    "start", "demo", "players", "player", "loans", "consent", "export", "imports", "visit", "settings", "backup",
    "team", "tables", "files", "readings", "measure", "plans",
)  # fmt: skip
"""Modules with pages, in the order in which their addresses are looked through."""


_VISIT = "/visits/[^/]+"
SLOW: dict[str, str] = {
    "demo": "/demo",
    "player": "/players/[^/]+(/visits)?",
    "loans": "(/players/[^/]+)?/loans(/.*)?",
    "consent": "/players/[^/]+/(consent|consent/withdraw|unkept)",
    "export": "/players/[^/]+/(everything.zip|erase)",
    "imports": "/import",
    "visit": f"{_VISIT}(/case.zip)?",
    "tables": f"/kit(/.*)?|{_VISIT}/(sites|kit|game(-[2-9])?|hub|room)(/.*)?",
    "files": f"{_VISIT}/(files|fetch)(/.*)?",
    "readings": f"{_VISIT}/readings(/take)?",
    "measure": f"{_VISIT}/(measure|recordings|live)(/.*)?",
    "plans": f"{_VISIT}/(plan|making|plans|mounts|sheet|sheet.pdf|compare)(/.*)?",
}
"""Topics that bring planning, records or figures with them, and the addresses that are theirs: see `lazy_routes.Later`."""

IDLE_LOOK_S = 15


def _slow_jobs() -> tuple[Callable[[], object], ...]:
    """What is loaded in the quiet, in the order of a visit: small modules first, then what the first measurement needs."""
    modules = [f"stickwright.web.{topic}" for topic in SLOW]
    return (*(partial(import_module, module) for module in modules), _ready_to_measure)


def _ready_to_measure() -> None:
    from stickwright.measure.progress import warm_up  # brings scipy with it

    warm_up()


def _summarise_one(desk: RequestContext) -> None:
    """The guard is held, so that the records are not locked meanwhile."""
    with desk.guard:
        if desk.store is None:
            return
        from stickwright.store.summaries import summarise_next  # brings scipy with it

        summarise_next(desk.store)


@asynccontextmanager
async def _locking(app: Starlette) -> AsyncGenerator[None, None]:
    """While the app is up: look now and then whether it should lock itself, so that no key stays open on a forgotten laptop.

    Where nothing is measured at the time, each look also summarises one recording that an earlier version left without.
    """

    async def look() -> None:
        while True:
            await asyncio.sleep(IDLE_LOOK_S)
            await run_in_threadpool(app.state.desk.lock_if_idle)
            measuring = getattr(app.state, "measuring", None)
            if measuring is None or not measuring.open:
                await run_in_threadpool(_summarise_one, app.state.desk)

    looking = asyncio.create_task(look())
    try:
        yield
    finally:
        looking.cancel()


def make_app(desk: RequestContext, *, warm: bool = False) -> Starlette:
    """The app around a desk.

    Parameters
    ----------
    desk : RequestContext
        What lies open.
    warm : bool, default False
        Load the slow topics in a thread after the first page, so that the first click does not wait for them.
    """
    routes: list[BaseRoute] = []
    for topic in TOPICS:
        module = f"stickwright.web.{topic}"
        if topic in SLOW:
            routes.append(Later(module, SLOW[topic]))
        else:
            routes.extend(import_module(module).ROUTES)
    routes.append(Mount("/static", StaticFiles(packages=[("stickwright.web", "static")]), name="static"))
    doors = [Middleware(WarmUp, jobs=_slow_jobs())] if warm else []
    app = Starlette(
        routes=routes, middleware=[*doors, Middleware(Guard, desk=desk)], exception_handlers=HANDLERS, lifespan=_locking
    )
    app.state.desk = desk
    return app
