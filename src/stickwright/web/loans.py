"""Kit on loan: what is with whom and due when; lending, giving back, cleaning, and taking each of them back.

The kit that is lent is the one on the shelf. The same forms stand on the page of loans, where all players are, and on the page of
each player; the address says which, and where the answer goes back to.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta
from functools import partial
from typing import Any, get_args

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from stickwright.codes.loans import Loans
from stickwright.codes.loans_page import Kind, LoansPage
from stickwright.codes.message import Message, Name, Text, message
from stickwright.errors import BadInput, Problem
from stickwright.store.loans import LoanRow, cleaned, extend, give_back, lend, loans, overdue, undo_loan
from stickwright.store.players import player_named, players
from stickwright.web.render import done, form, page
from stickwright.web.request_context import At, at_player, at_shelf

__all__ = ["ROUTES", "loans_page", "loans_part"]

WEEKS = 6
"""A first proposal for how long something stays, and for how much longer."""
DUE = message(Loans.due)
FIELDS: dict[Text, str] = {
    DUE: "due",
    message(Loans.lent_on): "on_date",
    "item": "item",
    "player": "code",
    "note": "note",
}
KINDS: tuple[Kind, ...] = get_args(Kind)
ACTS = {"back": give_back, "cleaned": cleaned}


def loans_part(here: At, typed: Mapping[str, str] | None = None) -> dict[str, Any]:
    """What the part on loans shows of a player, or without one of all.

    Parameters
    ----------
    here : At
    typed : mapping, optional
        What was sent and refused.
    """
    today = here.desk.today()
    typed = typed or {}
    mine = here.player.id if here.player is not None else None
    rows = loans(here.store, mine)
    kit = _shelf_kit(here)
    out = [row for row in rows if not row.back_on]
    return {
        "base": _base(here),
        "out": [
            (row, row.due_on < today.isoformat(), typed.get(f"longer-{row.loan}", _longer(row, today))) for row in out
        ],
        "back": [row for row in reversed(rows) if row.back_on],
        "items": _items(kit) if kit is not None else (),
        "kit_wrong": kit is None and _shelf_text(here) is not None,
        "today": today.isoformat(),
        "typed": {
            "item": typed.get("item", ""),
            "code": typed.get("code", ""),
            "on_date": typed.get("on_date", today.isoformat()),
            "due": typed.get("due", (today + timedelta(weeks=WEEKS)).isoformat()),
            "note": typed.get("note", ""),
        },
    }


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
    """All loans.

    Parameters
    ----------
    request : Request
    """
    here = at_shelf(request)
    return page(request, "loans.html", loans_page(here), here=here)


def lend_one(request: Request) -> Response:
    """Something goes out.

    Parameters
    ----------
    request : Request
    """
    here, typed = _at(request), _typed(request)
    try:
        if here.key == "m":
            raise BadInput(Problem("player", "", "", message(LoansPage.not_kept)))
        kit = _shelf_kit(here)
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
    """It came back, was cleaned, or may stay longer.

    Parameters
    ----------
    request : Request
    """
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


def _longer(row: LoanRow, today: date) -> str:
    """A day to propose: some weeks after it was due, or from now on when that is past."""
    return (max(date.fromisoformat(row.due_on), today) + timedelta(weeks=WEEKS)).isoformat()


def _refused(
    request: Request, here: At, typed: Mapping[str, str], refused: BadInput, own: Mapping[Text, str] | None = None
) -> Response:
    fields: dict[Text, str] = {**FIELDS, typed.get("item", "").strip() or "item": "item", **(own or {})}
    if here.player is None:
        return page(request, "loans.html", loans_page(here, typed), here=here, refused=refused, fields=fields)
    from stickwright.web.player import player_page  # which shows this part, and so knows this module

    return page(request, "player.html", player_page(here, lent=typed), here=here, refused=refused, fields=fields)


def _at(request: Request) -> At:
    return at_player(request) if "code" in request.path_params else at_shelf(request)


def _typed(request: Request) -> dict[str, str]:
    return {name: str(value)[:200] for name, value in form(request).items()}


def _base(here: At) -> str:
    return here.player_url("loans") if here.player is not None else "/loans"


def _back_to(here: At) -> str:
    return here.player_url() if here.player is not None else "/loans"


def _codes(here: At) -> tuple[tuple[str, str], ...]:
    """Every kept player, to choose from."""
    found = players(here.store, per_page=100_000)
    return tuple((row.code, row.code) for row in sorted(found.rows, key=lambda row: row.code.casefold()))


def _shelf_text(here: At) -> str | None:
    from stickwright.store.documents import documents

    held = documents(here.store, None).get("kit.toml")
    return held.body.decode("utf-8", "replace") if held else None


def _shelf_kit(here: At) -> Any:
    """The kit with the stock as owned; None where there is none, or something in it is to be put right."""
    from stickwright.files.toml_lines import parse_toml
    from stickwright.files.validation_errors import validated
    from stickwright.model.kit import Kit

    text = _shelf_text(here)
    if text is None:
        return None
    try:
        return validated(Kit, parse_toml(text, "kit.toml"))[0]
    except BadInput:  # the page of the kit lists what is wrong, and this part points there
        return None


def _items(kit: Any) -> tuple[tuple[str, Message], ...]:
    """What is owned, each with its kind."""
    return tuple(
        (
            item.name,
            message(LoansPage.item_of, item=Name(item.name), kind=kind, for_one=getattr(item, "single_player", False)),
        )
        for kind in KINDS
        for item in getattr(kit, kind)
        if item.in_stock
    )


ROUTES = (
    Route("/loans", show),
    Route("/loans", lend_one, methods=["POST"]),
    Route("/loans/{loan:int}/{what}", note, methods=["POST"]),
    Route("/players/{code}/loans", lend_one, methods=["POST"]),
    Route("/players/{code}/loans/{loan:int}/{what}", note, methods=["POST"]),
)
