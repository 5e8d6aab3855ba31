"""The app put together: pages, door, look."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncGenerator
from contextlib import asynccontextmanager
from importlib import import_module

from starlette.applications import Starlette
from starlette.concurrency import run_in_threadpool
from starlette.middleware import Middleware
from starlette.routing import BaseRoute, Mount
from starlette.staticfiles import StaticFiles

from stickwright.web.desk import Desk
from stickwright.web.errors import HANDLERS
from stickwright.web.guard import Guard

__all__ = ["TOPICS", "make_app"]

TOPICS: tuple[str, ...] = (
    "start", "demo", "players", "player", "loans", "consent", "whole", "imports", "visit", "settings", "backup",
    "team", "tables", "files", "readings", "measure", "plans",
)  # fmt: skip
"""Modules with pages, in the order in which their addresses are looked through."""


IDLE_LOOK_S = 15


@asynccontextmanager
async def _locking(app: Starlette) -> AsyncGenerator[None, None]:
    """While the app is up: look now and then whether it should lock itself, so that no key stays open on a forgotten laptop."""

    async def look() -> None:
        while True:
            await asyncio.sleep(IDLE_LOOK_S)
            await run_in_threadpool(app.state.desk.lock_if_idle)

    looking = asyncio.create_task(look())
    try:
        yield
    finally:
        looking.cancel()


def make_app(desk: Desk) -> Starlette:
    """The app around a desk.

    Parameters
    ----------
    desk : Desk
        What lies open.
    """
    routes: list[BaseRoute] = []
    for topic in TOPICS:
        routes.extend(import_module(f"stickwright.web.{topic}").ROUTES)
    routes.append(Mount("/static", StaticFiles(packages=[("stickwright.web", "static")]), name="static"))
    app = Starlette(
        routes=routes, middleware=[Middleware(Guard, desk=desk)], exception_handlers=HANDLERS, lifespan=_locking
    )
    app.state.desk = desk
    return app
