"""The part of a page on what is on loan: what is with whom and due when. On the page of a player, and on that of all loans."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta
from typing import Any, get_args

from stickwright.codes.loans_page import Kind, LoansPage
from stickwright.codes.message import Message, Name, message
from stickwright.errors import BadInput
from stickwright.store.loans import LoanRow, loans
from stickwright.web.request_context import At

__all__ = ["loans_part", "shelf_kit"]

WEEKS = 6
"""A first proposal for how long something stays, and for how much longer."""
KINDS: tuple[Kind, ...] = get_args(Kind)


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
    kit = shelf_kit(here)
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


def shelf_kit(here: At) -> Any:
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


def _shelf_text(here: At) -> str | None:
    from stickwright.store.documents import documents

    held = documents(here.store, None).get("kit.toml")
    return held.body.decode("utf-8", "replace") if held else None


def _longer(row: LoanRow, today: date) -> str:
    """A day to propose: some weeks after it was due, or from now on when that is past."""
    return (max(date.fromisoformat(row.due_on), today) + timedelta(weeks=WEEKS)).isoformat()


def _base(here: At) -> str:
    return here.player_url("loans") if here.player is not None else "/loans"


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
