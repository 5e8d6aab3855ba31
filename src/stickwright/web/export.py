"""Everything that is held about one player: to hand over, and to erase."""

from __future__ import annotations

from typing import Any

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from stickwright.codes.counts import Counts
from stickwright.codes.erase_page import ErasePage
from stickwright.codes.message import Name, message
from stickwright.errors import BadInput
from stickwright.store.export import elsewhere, erase_player, packed_player, what_would_go
from stickwright.store.players import visits
from stickwright.web.render import done, download, form, page, put_right
from stickwright.web.request_context import At, at_player, end_measuring

__all__ = ["ROUTES", "ask", "erase", "erase_page", "everything"]


def everything(request: Request) -> Response:
    """All of it in one file."""
    here = at_player(request)
    assert here.player is not None
    body = packed_player(
        here.store, here.player_id
    )  # in memory: nothing of a player lies in a folder for temporary files
    return download(body, f"{here.player.code}-everything.zip", "application/zip")


def erase_page(here: At) -> dict[str, Any]:
    """What would go."""
    told = elsewhere(here.store) if here.kept else ()
    counts = what_would_go(here.store, here.player_id)
    would_go = tuple((message(Counts.label, what=what), count) for what, count in counts.items())
    return {"would_go": would_go, "elsewhere": told}


def ask(request: Request) -> Response:
    """What would go, before anything does."""
    here = at_player(request)
    return page(request, "erase.html", erase_page(here), here=here)


def erase(request: Request) -> Response:
    """Erase the player, once the code is typed."""
    here = at_player(request)
    assert here.player is not None
    typed = str(form(request).get("code", "")).strip()
    if typed.casefold() != here.player.code.casefold():
        other = message(ErasePage.other_code, code=Name(here.player.code))
        refused = BadInput(put_right(message(ErasePage.type_code), other))
        return page(request, "erase.html", erase_page(here), here=here, refused=refused, fields={"": "code"})
    end_measuring(request, {(here.key, one.id) for one in visits(here.store, here.player_id)})
    went = erase_player(here.store, here.player_id, who=here.who)
    here.desk.forget_pages()
    counts = tuple(message(Counts.counted, what=what, count=count) for what, count in went.items() if count)
    to = "/demo" if here.key == "d" else "/players"
    return done(request, to, message(ErasePage.erased, code=Name(here.player.code), counts=counts))


ROUTES = (
    Route("/players/{code}/everything.zip", everything),
    Route("/players/{code}/erase", ask),
    Route("/players/{code}/erase", erase, methods=["POST"]),
)
