"""The players: a list that can be searched, and a new one by code."""

from __future__ import annotations

from typing import Any
from urllib.parse import urlencode

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from stickwright.errors import BadInput, Problem
from stickwright.store.consents import consent_of
from stickwright.store.opening import Store
from stickwright.store.players import add_player, players
from stickwright.web.desk import At, Desk, desk_of, session_of
from stickwright.web.render import done, form, page

__all__ = ["ROUTES", "add", "players_page", "show"]

PER_PAGE = 50


def players_page(desk: Desk, *, search: str = "", number: int = 1, typed: str = "") -> dict[str, Any]:
    """What the list shows.

    Parameters
    ----------
    desk : Desk
    search : str
        Part of a code.
    number : int
        Page, from 1.
    typed : str
        Code of a new player, as typed so far.
    """
    found = players(desk.kept(), search=search, page=number, per_page=PER_PAGE)
    at = At(desk, "", desk.kept(), "", True)
    rows = [(_at(at, row).player_url(), row) for row in found.rows]
    unkept = [
        (_at(At(desk, "m", desk.memory, "", True), row).player_url(), row)
        for row in (players(desk.memory, search=search).rows if desk.memory is not None else ())
    ]

    def link(to: int) -> str:
        return "/players?" + urlencode({"search": search, "page": to} if search else {"page": to})

    return {
        "rows": rows,
        "unkept": unkept,
        "total": found.total,
        "search": search,
        "number": found.number,
        "pages": found.pages,
        "earlier": link(found.number - 1) if found.number > 1 else "",
        "later": link(found.number + 1) if found.number < found.pages else "",
        "typed": typed,
    }
