"""Kit that is with a player. Each loan is a list of acts: out, due again, back, cleaned; undone takes the last one back.

Parts that touch a face or a mouth (`single_player` in the kit) stay with one player for good: once lent they never go to another,
and what each player has had counts against the stock of all others.
"""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from typing import Any, Literal

import sqlalchemy as sa

from stickwright.codes.entries import Entries
from stickwright.codes.loans import Loans
from stickwright.codes.message import Name, Text, message
from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.model.kit import Kit
from stickwright.store.opening import Store
from stickwright.store.schema import loan_act, player

__all__ = [
    "LoanRow",
    "available",
    "cleaned",
    "extend",
    "give_back",
    "lend",
    "loans",
    "overdue",
    "undo_loan",
    "with_others",
]

_KINDS = ("stick", "topper", "extension", "switch", "controller", "lead", "mount", "fastener")

_ACTS = {
    "out": message(Loans.lent_on),
    "due": message(Loans.due),
    "back": message(Loans.back),
    "cleaned": message(Loans.cleaned),
}
"""Where the day of each act was entered."""


@dataclass(frozen=True)
class LoanRow:
    """One thing lent.

    Parameters
    ----------
    loan : int
        Number of the loan.
    player_id : int
    code : str
        Of the player.
    item : str
        Name in the kit.
    out_on, due_on : str
        YYYY-MM-DD.
    back_on, cleaned_on : str
        Empty as long as it is not back, or not cleaned.
    note : str
    """

    loan: int
    player_id: int
    code: str
    item: str
    out_on: str
    due_on: str
    back_on: str
    cleaned_on: str
    note: str


def lend(
    store: Store, player_id: int, item: str, *, kit: Kit, on_date: str, due: str, who: str, note: str = ""
) -> LoanRow:
    """Lend one of something.

    Parameters
    ----------
    store : Store
    player_id : int
    item : str
        Name in the kit.
    kit : Kit
        With the stock as owned, nothing lent taken off.
    on_date, due : str
        YYYY-MM-DD.
    who, note : str

    Raises
    ------
    BadInput
        No such item or player, none left, a part that was another player's, dates that are none or the wrong way round.
    """
    problems = [*_date_problems(_ACTS["out"], on_date), *_date_problems(_ACTS["due"], due)]
    if not problems and due < on_date:
        problems.append(
            Problem(_ACTS["due"], due, message(Entries.date_from, date=Name(on_date)), message(Loans.type_due))
        )
    if problems:
        raise BadInput(problems)
    with store.write(who, "") as connection:
        if connection.execute(sa.select(player.c.id).where(player.c.id == player_id)).first() is None:
            raise BadInput(
                Problem("player", str(player_id), message(Entries.kept_player), message(Entries.back_to_players))
            )
        owned = _owned(kit, item)
        rows = _loans(connection)
        taken = _taken(rows, owned.name, single=_is_single(owned))
        mine = taken.pop(player_id, 0)
        if _is_single(owned):  # what this player has had is this player's own, and may go out to him or her again
            mine = sum(1 for row in rows if (row.player_id, row.item, row.back_on) == (player_id, owned.name, ""))
        left = owned.in_stock - sum(taken.values()) - mine
        if left < 1:
            raise BadInput(_none_left(owned, rows))
        number = (connection.execute(sa.select(sa.func.max(loan_act.c.loan))).scalar() or 0) + 1
        values = {"loan": number, "player_id": player_id, "item": owned.name, "who": who}
        _act(store, connection, values | {"what": "out", "on_date": on_date, "note": note})
        _act(store, connection, values | {"what": "due", "on_date": due, "note": ""})
        return _loans(connection, loan_act.c.loan == number)[0]


def give_back(store: Store, loan: int, *, on_date: str, who: str, note: str = "") -> LoanRow:
    """It is back.

    Parameters
    ----------
    store : Store
    loan : int
    on_date : str
        YYYY-MM-DD.
    who, note : str

    Raises
    ------
    BadInput
        It is back already, or there is no such loan.
    """
    return _went_on(store, loan, "back", on_date, who, note)


def extend(store: Store, loan: int, *, due: str, who: str, note: str = "") -> LoanRow:
    """It may stay longer.

    Parameters
    ----------
    store : Store
    loan : int
    due : str
        YYYY-MM-DD.
    who, note : str
    """
    return _went_on(store, loan, "due", due, who, note)


def cleaned(store: Store, loan: int, *, on_date: str, who: str, note: str = "") -> LoanRow:
    """What came back was cleaned.

    Parameters
    ----------
    store : Store
    loan : int
    on_date : str
        YYYY-MM-DD.
    who, note : str
    """
    return _went_on(store, loan, "cleaned", on_date, who, note)


def _went_on(
    store: Store, loan: int, what: Literal["back", "due", "cleaned"], on_date: str, who: str, note: str
) -> LoanRow:
    if problems := _date_problems(_ACTS[what], on_date):
        raise BadInput(problems)
    with store.write(who, "") as connection:
        row = _one(connection, loan)
        if what == "cleaned" and not row.back_on:
            found, expected = message(Loans.still_with, code=Name(row.code)), message(Loans.returned_item)
            raise BadInput(Problem((row.item,), found, expected, message(Loans.return_first)))
        if what != "cleaned" and row.back_on:
            found, expected = message(Loans.back_since, date=Name(row.back_on)), message(Loans.lent_item)
            raise BadInput(Problem((row.item,), found, expected, message(Loans.lend_again)))
        if on_date < row.out_on:
            expected = message(Loans.since_lent, date=Name(row.out_on))
            raise BadInput(Problem(_ACTS[what], on_date, expected, message(Entries.correct_date)))
        values = {"loan": loan, "player_id": row.player_id, "item": row.item, "who": who}
        _act(store, connection, values | {"what": what, "on_date": on_date, "note": note})
        return _one(connection, loan)


def undo_loan(store: Store, loan: int, *, who: str) -> LoanRow | None:
    """Take back the last thing that was noted of a loan; None when with that the loan itself is undone."""
    with store.write(who, "") as connection:
        row = _one(connection, loan)
        values = {"loan": loan, "player_id": row.player_id, "item": row.item, "who": who, "note": ""}
        _act(store, connection, values | {"what": "undone", "on_date": row.out_on})
        left = _loans(connection, loan_act.c.loan == loan)
        return left[0] if left else None


def loans(store: Store, player_id: int | None = None) -> tuple[LoanRow, ...]:
    """What is or was lent, in the order lent.

    Parameters
    ----------
    store : Store
    player_id : int, optional
        Only what one player has or had.
    """
    with store.read() as connection:
        return _loans(connection, sa.true() if player_id is None else loan_act.c.player_id == player_id)


def overdue(store: Store, today: str) -> tuple[LoanRow, ...]:
    """What should be back by now, the longest overdue first.

    Parameters
    ----------
    store : Store
    today : str
        YYYY-MM-DD.
    """
    late = [row for row in loans(store) if not row.back_on and row.due_on < today]
    return tuple(sorted(late, key=lambda row: (row.due_on, row.loan)))


def with_others(kit: Kit, rows: tuple[LoanRow, ...], player_id: int | None) -> dict[str, int]:
    """How many of each item a player cannot have because others have them, or have had them where they are for one player.

    Parameters
    ----------
    kit : Kit
    rows : tuple of LoanRow
    player_id : int or None
        None: somebody who has nothing.
    """
    out = {}
    for kind in _KINDS:
        for item in getattr(kit, kind):
            taken = _taken(rows, item.name, single=_is_single(item))
            taken.pop(player_id or 0, 0)
            if sum(taken.values()):
                out[item.name] = sum(taken.values())
    return out


def available(kit: Kit, rows: tuple[LoanRow, ...], player_id: int | None = None) -> Kit:
    """The kit as one player can have it: what is with others is not in stock, what this player has is.

    Parameters
    ----------
    kit : Kit
    rows : tuple of LoanRow
        All loans.
    player_id : int, optional
    """
    return without_stock(kit, with_others(kit, rows, player_id))


def without_stock(kit: Kit, away: dict[str, int]) -> Kit:
    """The kit with so many of each item less.

    Parameters
    ----------
    kit : Kit
    away : dict of int
        By name.
    """
    changed: dict[str, Any] = {}
    for kind in _KINDS:
        items = getattr(kit, kind)
        if any(item.name in away for item in items):
            changed[kind] = tuple(
                item.model_copy(update={"in_stock": max(0, item.in_stock - away.get(item.name, 0))}) for item in items
            )
    return kit.model_copy(update=changed) if changed else kit


def _is_single(item: Any) -> bool:
    return bool(getattr(item, "single_player", False))


def _owned(kit: Kit, name: str) -> Any:
    items = [item for kind in _KINDS for item in getattr(kit, kind)]
    found = next((item for item in items if item.name.casefold() == name.strip().casefold()), None)
    if found is None:
        raise BadInput(
            Problem("item", f'"{name}"', message(Loans.of_the_kit), did_you_mean(name, [one.name for one in items]))
        )
    return found


def _none_left(owned: Any, rows: tuple[LoanRow, ...]) -> Problem:
    out = tuple(
        message(Loans.with_player, code=Name(row.code), due=Name(row.due_on))
        for row in rows
        if row.item == owned.name and not row.back_on
    )
    if _is_single(owned):
        had = tuple(Name(code) for code in sorted({row.code for row in rows if row.item == owned.name}))
        found = message(Loans.none_for_another, codes=had)
        return Problem((owned.name,), found, message(Loans.a_new_one), message(Loans.buy_one))
    found = message(Loans.none_left, owned=int(owned.in_stock), out=out)
    return Problem((owned.name,), found, message(Loans.one_in_stock), message(Loans.ask_back))


def _taken(rows: tuple[LoanRow, ...], item: str, *, single: bool) -> dict[int, int]:
    """Player -> how many count as that player's: those out; of a part for one player, the most that were ever out at once."""
    mine: dict[int, list[LoanRow]] = {}
    for row in rows:
        if row.item == item:
            mine.setdefault(row.player_id, []).append(row)
    if not single:
        return {who: sum(1 for row in had if not row.back_on) for who, had in mine.items()}
    most = {}
    for who, had in mine.items():
        most[who] = max(
            sum(1 for row in had if row.loan <= one.loan and (not row.back_on or row.back_on > one.out_on))
            for one in had
        )
    return {who: max(1, count) for who, count in most.items()}


def _loans(connection: sa.Connection, matches: sa.ColumnElement[bool] | None = None) -> tuple[LoanRow, ...]:
    wanted = (
        sa.select(loan_act, player.c.code).join(player, player.c.id == loan_act.c.player_id).order_by(loan_act.c.id)
    )
    if matches is not None:
        wanted = wanted.where(matches)
    acts: dict[int, list[Any]] = {}
    for row in connection.execute(wanted).mappings():
        course = acts.setdefault(row["loan"], [])
        if row["what"] == "undone":
            last = course.pop()
            if last["what"] == "due" and len(course) == 1:  # a loan begins with two: out, and when it is due
                course.pop()
        else:
            course.append(row)
    return tuple(_row(number, course) for number, course in acts.items() if course)


def _row(number: int, course: list[Any]) -> LoanRow:
    first = course[0]
    days = dict.fromkeys(("out", "due", "back", "cleaned"), "") | {one["what"]: one["on_date"] for one in course}
    note = "; ".join(one["note"] for one in course if one["note"])
    return LoanRow(
        loan=number,
        player_id=first["player_id"],
        code=first["code"],
        item=first["item"],
        out_on=days["out"],
        due_on=days["due"],
        back_on=days["back"],
        cleaned_on=days["cleaned"],
        note=note,
    )


def _one(connection: sa.Connection, loan: int) -> LoanRow:
    found = _loans(connection, loan_act.c.loan == loan)
    if not found:
        raise BadInput(
            Problem("loan", message(Entries.number, number=loan), message(Loans.a_loan), message(Entries.reload))
        )
    return found[0]


def _act(store: Store, connection: sa.Connection, values: dict[str, Any]) -> None:
    connection.execute(sa.insert(loan_act).values(at=store.at(), **values))


def _date_problems(where: Text, text: str) -> list[Problem]:
    try:
        datetime.date.fromisoformat(text)
    except ValueError:
        found = text or message(Entries.nothing)
        return [Problem(where, found, message(Entries.a_date), message(Entries.type_date))]
    return []
