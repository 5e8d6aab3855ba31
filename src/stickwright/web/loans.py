"""Kit on loan: lending, giving back, cleaning, and taking each of them back.

The kit that is lent is the one on the shelf. The same forms stand on the page of loans, where all players are, and on the page of
each player; the address says which, and where the answer goes back to.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial
from typing import Any

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from stickwright.codes.loans import Loans
from stickwright.codes.loans_page import LoansPage
from stickwright.codes.message import Message, Name, Text, message
from stickwright.errors import BadInput, Problem
from stickwright.store.loans import LoanRow, cleaned, extend, give_back, lend, loans, overdue, undo_loan
from stickwright.store.players import player_named, players
from stickwright.web.loans_part import loans_part, shelf_kit
from stickwright.web.player import player_page
from stickwright.web.render import done, form, page
from stickwright.web.request_context import At, at_player, at_shelf

__all__ = ["ROUTES", "loans_page"]

DUE = message(Loans.due)
FIELDS: dict[Text, str] = {
    DUE: "due",
    message(Loans.lent_on): "on_date",
    "item": "item",
    "player": "code",
    "note": "note",
}
ACTS = {"back": give_back, "cleaned": cleaned}


def loans_page(here: At, typed: Mapping[str, str] | None = None) -> dict[str, Any]:
    """What the page of all loans shows.

    Parameters
    ----------
    here : At
    typed : mapping, optional
        What was sent and refused.
    """
    late = overdue(here.store, here.desk.today().isoformat())
    codes = _codes(here)
    return {"loan": loans_part(here, typed), "late": late, "codes": codes}


def show(request: Request) -> Response:
    """All loans."""
    here = at_shelf(request)
    return page(request, "loans.html", loans_page(here), here=here)


def lend_one(request: Request) -> Response:
    """Something goes out."""
    here, typed = _at(request), _typed(request)
    try:
        if here.key == "m":
            raise BadInput(Problem("player", "", "", message(LoansPage.not_kept)))
        kit = shelf_kit(here)
        if kit is None:
            raise BadInput(Problem("item", "", "", message(LoansPage.kit_wrong)))
        player_id = here.player_id if here.player is not None else player_named(here.store, typed.get("code", "")).id
        row = lend(
            here.store, player_id, typed.get("item", ""), kit=kit, who=here.who,
            on_date=typed.get("on_date", ""), due=typed.get("due", ""), note=typed.get("note", "").strip(),
        )  # fmt: skip
    except BadInput as refused:
        return _refused(request, here, typed, refused)
    return done(
        request, _back_to(here), message(LoansPage.lent, item=Name(row.item), code=Name(row.code), due_on=row.due_on),
        undo=partial(undo_loan, here.store, row.loan, who=here.who),
    )  # fmt: skip


def note(request: Request) -> Response:
    """It came back, was cleaned, or may stay longer."""
    here, typed = _at(request), _typed(request)
    loan, what = int(request.path_params["loan"]), str(request.path_params["what"])
    known = [row.loan for row in loans(here.store, here.player.id if here.player is not None else None)]
    if loan not in known or what not in (*ACTS, "longer"):
        raise HTTPException(404)
    said = typed.get("note", "").strip()
    own = {f"longer-{loan}": typed.get("due", "")} if what == "longer" else {}
    try:
        if what == "longer":
            row = extend(here.store, loan, due=typed.get("due", ""), who=here.who, note=said)
        else:
            row = ACTS[what](here.store, loan, on_date=here.desk.today().isoformat(), who=here.who, note=said)
    except BadInput as refused:
        return _refused(request, here, own, refused, {DUE: f"longer-{loan}"} if own else {})
    return done(
        request, _back_to(here), _words(row, what), undo=partial(undo_loan, here.store, loan, who=here.who)
    )  # fmt: skip


def _words(row: LoanRow, what: str) -> Message:
    item, code = Name(row.item), Name(row.code)
    if what == "back":
        return message(LoansPage.came_back, item=item, code=code)
    if what == "cleaned":
        return message(LoansPage.was_cleaned, item=item)
    return message(LoansPage.extended, item=item, code=code, due_on=row.due_on)


def _refused(
    request: Request, here: At, typed: Mapping[str, str], refused: BadInput, own: Mapping[Text, str] | None = None
) -> Response:
    fields: dict[Text, str] = {**FIELDS, typed.get("item", "").strip() or "item": "item", **(own or {})}
    if here.player is None:
        return page(request, "loans.html", loans_page(here, typed), here=here, refused=refused, fields=fields)
    return page(request, "player.html", player_page(here, lent=typed), here=here, refused=refused, fields=fields)


def _at(request: Request) -> At:
    return at_player(request) if "code" in request.path_params else at_shelf(request)


def _typed(request: Request) -> dict[str, str]:
    return {name: str(value)[:200] for name, value in form(request).items()}


def _back_to(here: At) -> str:
    return here.player_url() if here.player is not None else "/loans"


def _codes(here: At) -> tuple[tuple[str, str], ...]:
    """Every kept player, to choose from."""
    found = players(here.store, per_page=100_000)
    return tuple((row.code, row.code) for row in sorted(found.rows, key=lambda row: row.code.casefold()))


ROUTES = (
    Route("/loans", show),
    Route("/loans", lend_one, methods=["POST"]),
    Route("/loans/{loan:int}/{what}", note, methods=["POST"]),
    Route("/players/{code}/loans", lend_one, methods=["POST"]),
    Route("/players/{code}/loans/{loan:int}/{what}", note, methods=["POST"]),
)
