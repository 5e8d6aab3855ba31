"""The app put together: pages, door, look."""

from __future__ import annotations

from importlib import import_module

from starlette.applications import Starlette
from starlette.middleware import Middleware
from starlette.routing import BaseRoute, Mount
from starlette.staticfiles import StaticFiles

from stickwright.web.desk import Desk
from stickwright.web.errors import HANDLERS
from stickwright.web.guard import Guard

__all__ = ["TOPICS", "make_app"]

TOPICS: tuple[str, ...] = (
    "start", "demo", "players", "player", "consent", "whole", "imports", "visit", "settings", "backup",
    "team",
)  # fmt: skip
"""Modules with pages, in the order in which their addresses are looked through."""


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
    app = Starlette(routes=routes, middleware=[Middleware(Guard, desk=desk)], exception_handlers=HANDLERS)
    app.state.desk = desk
    return app
