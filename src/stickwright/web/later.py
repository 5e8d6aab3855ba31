"""Topics whose modules are slow to load: loaded when somebody first asks for one of their pages, or in the quiet after the first."""

from __future__ import annotations

import re
from collections.abc import Sequence
from importlib import import_module
from typing import Any

from starlette.routing import BaseRoute, Match
from starlette.types import Receive, Scope, Send

__all__ = ["Later"]


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
        """As a route of the module matches.

        Parameters
        ----------
        scope : Scope
        """
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
