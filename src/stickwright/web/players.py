"""The players: a list that can be searched, and a new one by code."""

from __future__ import annotations

from typing import Any
from urllib.parse import urlencode

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from stickwright.codes.message import Name, message
from stickwright.codes.players_page import PlayersPage
from stickwright.errors import BadInput
from stickwright.store.opening import Store
from stickwright.store.players import PlayerRow, add_player, player_named, players
from stickwright.web.render import form, number_in, page, put_right
from stickwright.web.request_context import At, Key, RequestContext, desk_of, session_of

__all__ = ["ROUTES", "add", "players_page", "show"]

PER_PAGE = 50


def players_page(
    desk: RequestContext, *, writes: bool, search: str = "", number: int = 1, typed: str = ""
) -> dict[str, Any]:
    """What the list shows.

    Parameters
    ----------
    desk : RequestContext
    writes : bool
        Whether this person may add a player.
    search : str
        Part of a code.
    number : int
        Page, from 1.
    typed : str
        Code of a new player, as typed so far.
    """
    found = players(desk.kept(), search=search, page=number, per_page=PER_PAGE)
    number, pages = found.number, found.pages

    def link(to: int) -> str:
        return "/players?" + urlencode({"search": search, "page": to} if search else {"page": to})

    return {
        "rows": [(_url(desk, "", row), row) for row in found.rows],
        "unkept": []
        if desk.memory is None
        else [(_url(desk, "m", row), row) for row in players(desk.memory, search=search).rows],
        "total": found.total,
        "search": search,
        "number": number,
        "pages": pages,
        "earlier": link(number - 1) if number > 1 else "",
        "later": link(number + 1) if number < pages else "",
        "typed": typed,
        "writes": writes,
    }


def _url(desk: RequestContext, key: Key, row: PlayerRow) -> str:
    return At(desk, key, desk.at(key), "", False, row).player_url()


def show(request: Request) -> Response:
    """The list."""
    asked, desk = request.query_params, desk_of(request)
    number = asked.get("page", "1")
    data = players_page(
        desk,
        writes=session_of(request).role == "practitioner",
        search=asked.get("search", "").strip()[:40],
        number=number_in(number) or 1,
    )
    return page(request, "players.html", data)


def add(request: Request) -> Response:
    """A new player: in memory, until there is a consent to keep."""
    desk, session = desk_of(request), session_of(request)
    code = str(form(request).get("code", "")).strip()
    try:
        for store in (desk.kept(), desk.memory):
            if store is not None and _is_there(store, code):
                raise BadInput(put_right(message(PlayersPage.code), message(PlayersPage.taken, code=Name(code))))
        row = add_player(desk.unkept(), code, who=session.who)
    except BadInput as refused:
        data = players_page(desk, writes=True, typed=code)
        return page(request, "players.html", data, refused=refused, fields={"": "code"})
    return RedirectResponse(At(desk, "m", desk.unkept(), session.who, True, row).player_url("consent"), 303)


def _is_there(store: Store, code: str) -> bool:
    try:
        player_named(store, code)
    except BadInput:
        return False
    return True


ROUTES = (Route("/players", show), Route("/players", add, methods=["POST"]))
