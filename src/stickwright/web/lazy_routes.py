"""Topics whose modules are slow to load: loaded when somebody first asks for one of their pages, or in the quiet after the first."""

from __future__ import annotations

import re
import threading
from collections.abc import Callable, Sequence
from importlib import import_module
from typing import Any

from starlette.routing import BaseRoute, Match
from starlette.types import ASGIApp, Message, Receive, Scope, Send

__all__ = ["QUIET_S", "Later", "WarmUp"]

QUIET_S = 0.2
"""Nobody has asked for anything for so long: a page with its style, script and picture has come. (Judgement.)"""
LONGEST_S = 3.0
"""Waited for a job at the end; a daemon thread then goes with the process."""


class Later(BaseRoute):
    """The routes of a module, without the module until an address of its is asked for.

    Parameters
    ----------
    module : str
        With ``ROUTES``.
    addresses : str
        Pattern that every address of the module matches whole.
    """

    def __init__(self, module: str, addresses: str) -> None:
        self.module, self.addresses = module, re.compile(addresses)

    def routes(self) -> Sequence[BaseRoute]:
        """The module's own routes; loads it."""
        routes: Sequence[BaseRoute] = import_module(self.module).ROUTES
        return routes

    def matches(self, scope: Scope) -> tuple[Match, Scope]:
        """As a route of the module matches."""
        if scope["type"] not in ("http", "websocket") or not self.addresses.fullmatch(scope["path"]):
            return Match.NONE, {}
        best: tuple[Match, dict[str, Any]] = (Match.NONE, {})
        for route in self.routes():
            match, child = route.matches(scope)
            if match.value > best[0].value:
                best = match, {**child, "stickwright.route": route}
        return best

    async def handle(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let the route that matched answer.

        Parameters
        ----------
        scope, receive, send
            As ASGI has them.
        """
        route: BaseRoute = scope["stickwright.route"]
        await route.handle(scope, receive, send)


class WarmUp:
    """Does slow work in the quiet after the first page: once, in a thread, one job after the other.

    Loading takes turns with answering (Python runs one of them at a time), so it begins only when nobody has asked for anything
    for `QUIET_S`, and waits again before each job. An error is left to the page that needs the job: there it is seen.

    Parameters
    ----------
    app : ASGIApp
    jobs : sequence of callable
        Each as short as can be: the next page waits for at most one.
    """

    def __init__(self, app: ASGIApp, jobs: Sequence[Callable[[], object]]) -> None:
        self.app, self.jobs = app, tuple(jobs)
        self.done: list[Callable[[], object]] = []
        self._ending, self._asked = threading.Event(), threading.Event()
        self._under_way = 0
        self._thread: threading.Thread | None = None

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] == "lifespan":
            await self.app(scope, self._until_told(receive), send)
            return
        page = scope["type"] == "http"  # the line of a measurement is open for minutes, and no wait
        self._under_way += page
        self._asked.set()
        try:
            await self.app(scope, receive, send)
        finally:
            self._under_way -= page
            self._asked.set()
            if self._thread is None and page:
                self._thread = threading.Thread(target=self._work, name="warm-up", daemon=True)
                self._thread.start()

    def _until_told(self, receive: Receive) -> Receive:
        async def told() -> Message:
            message = await receive()
            if message["type"] == "lifespan.shutdown":
                self.end()
            return message

        return told

    def end(self) -> None:
        """Begin no further job, and wait for the one that is being done, a moment at most."""
        self._ending.set()
        if self._thread is not None:
            self._thread.join(LONGEST_S)

    def _work(self) -> None:
        for job in self.jobs:
            while (self._asked.is_set() or self._under_way) and not self._ending.is_set():
                self._asked.clear()  # and whoever asks meanwhile makes it wait for another moment
                self._ending.wait(QUIET_S)
            if self._ending.is_set():
                return
            try:
                job()
            except Exception:  # the page that needs it does the same again, and tells what is wrong
                continue
            self.done.append(job)
