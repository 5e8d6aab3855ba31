"""The first page: choose a passphrase, unlock, or look round with an invented player."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from stickwright.web.desk import desk_of
from stickwright.web.render import page

__all__ = ["ROUTES", "home", "start"]


def home(request: Request) -> Response:
    """To the players, or to the start while the records are closed.

    Parameters
    ----------
    request : Request
    """
    return RedirectResponse("/start" if desk_of(request).store is None else "/players", 303)


def start(request: Request) -> Response:
    """The first page.

    Parameters
    ----------
    request : Request
    """
    return page(request, "start.html", {})


ROUTES = (Route("/", home), Route("/start", start))
