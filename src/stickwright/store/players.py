"""Players under their codes, and their visits."""

from __future__ import annotations

import datetime
import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Generic, TypeVar

import sqlalchemy as sa

from stickwright.codes.entries import Entries
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.player_records import PlayerRecords
from stickwright.codes.trail import Trail
from stickwright.codes.versions import Versions
from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.store.consents import consent_state, consents_of
from stickwright.store.documents import documents, save_document
from stickwright.store.next_visit import begun, carried_over
from stickwright.store.opening import Store, new_id, note_act
from stickwright.store.schema import plan, player, reading, recording, visit_fact
from stickwright.store.schema import visit as visit_table

__all__ = [
    "Page",
    "PlayerRow",
    "ReadingRow",
    "VisitRow",
    "add_player",
    "add_visit",
    "player_named",
    "players",
    "readings_through_time",
    "visit",
    "visits",
]

Row = TypeVar("Row")
_LONGEST_CODE = 24
_ADDRESS = re.compile(r"\S+@\S+")
_DAY_OF_BIRTH = re.compile(r"(19|20)\d\d[-./]?\d\d[-./]?\d\d|\d{1,2}[-./]\d{1,2}[-./](\d\d){1,2}|\d{8}")
_OUTSIDE_CODE = re.compile(r"[^\w.-]")


@dataclass(frozen=True)
class Page(Generic[Row]):
    """A page of a longer list.

    Parameters
    ----------
    rows : tuple
    total : int
        Of all pages.
    number, per_page : int
        Which page, from 1, and how many rows a page has.
    """

    rows: tuple[Row, ...]
    total: int
    number: int
    per_page: int

    @property
    def pages(self) -> int:
        """How many pages there are, at least 1."""
        return max(1, -(-self.total // self.per_page))


@dataclass(frozen=True)
class PlayerRow:
    """A player in a list.

    Parameters
    ----------
    id : int
    code : str
    visits : int
        How many.
    last_visit : str
        YYYY-MM-DD, empty when there is none with a date.
    recordings : int
    consent_words : Message
        How the consent stands today.
    """

    id: int
    code: str
    visits: int
    last_visit: str
    recordings: int
    consent_words: Message


@dataclass(frozen=True)
class VisitRow:
    """A visit in a list.

    Parameters
    ----------
    id, player_id, number : int
        The number counts the player's visits from 1.
    on_date : str
        YYYY-MM-DD, empty when not said.
    game : str
    sites : tuple of str
    problems : int
        Things in its files that could not be read.
    recordings, plans : int
        How many.
    """

    id: int
    player_id: int
    number: int
    on_date: str
    game: str
    sites: tuple[str, ...]
    problems: int
    recordings: int
    plans: int


@dataclass(frozen=True)
class ReadingRow:
    """One reading of one visit.

    Parameters
    ----------
    visit_id : int
    on_date, site, kind : str
        See `facts.ReadingFact`.
    direction_rad : float, optional
    repeats : tuple of float
        SI.
    typed : str
        As typed, with its unit.
    """

    visit_id: int
    on_date: str
    site: str
    kind: str
    direction_rad: float | None
    repeats: tuple[float, ...]
    typed: str


def players(store: Store, *, search: str = "", page: int = 1, per_page: int = 50) -> Page[PlayerRow]:
    """Players, those seen last first.

    Parameters
    ----------
    store : Store
    search : str
        Part of the code; all when empty.
    page : int
        From 1; a page past the end is the last.
    per_page : int
    """
    matches = player.c.code_key.contains(search.strip().casefold(), autoescape=True) if search.strip() else sa.true()
    seen = (
        sa.select(
            visit_table.c.player_id, sa.func.max(visit_fact.c.on_date).label("last"), sa.func.count().label("many")
        )
        .join(visit_fact, visit_fact.c.visit_id == visit_table.c.id, isouter=True)
        .group_by(visit_table.c.player_id)
        .subquery()
    )
    last = sa.func.coalesce(seen.c.last, "")
    with store.read() as connection:
        total = connection.execute(sa.select(sa.func.count()).select_from(player).where(matches)).scalar_one()
        number = min(max(1, page), max(1, -(-total // per_page)))
        rows = connection.execute(
            sa.select(player.c.id, player.c.code, sa.func.coalesce(seen.c.many, 0), last)
            .join(seen, seen.c.player_id == player.c.id, isouter=True)
            .where(matches)
            .order_by(last.desc(), player.c.code_key)
            .limit(per_page)
            .offset((number - 1) * per_page)
        ).all()
        ids = [row[0] for row in rows]
        recorded: dict[int, int] = dict(
            connection.execute(
                sa.select(visit_table.c.player_id, sa.func.count())
                .join(recording, recording.c.visit_id == visit_table.c.id)
                .where(visit_table.c.player_id.in_(ids))
                .group_by(visit_table.c.player_id)
            ).all()
        )
        agreed = consents_of(connection, ids, store.clock.now().date())
    found = tuple(
        PlayerRow(row[0], row[1], row[2], row[3], recorded.get(row[0], 0), consent_state(agreed.get(row[0])))
        for row in rows
    )
    return Page(found, total, number, per_page)


def player_named(store: Store, code: str) -> PlayerRow:
    """The player with a code, whatever its capitals.

    Raises
    ------
    BadInput
        There is none.
    """
    with store.read() as connection:
        key = connection.execute(
            sa.select(player.c.code_key).where(player.c.code_key == code.strip().casefold())
        ).scalar()
        known = [] if key else list(connection.execute(sa.select(player.c.code)).scalars())
    if key is None:
        raise BadInput(Problem("player", code, message(PlayerRecords.a_players_code), did_you_mean(code, known)))
    found = players(store, search=key, per_page=10_000)
    return next(row for row in found.rows if row.code.casefold() == key)


def add_player(store: Store, code: str, *, who: str) -> PlayerRow:
    """Take in a player under a code.

    Parameters
    ----------
    store : Store
    code : str
        Never a name: letters, digits, hyphen, dot, at most 24.
    who : str

    Raises
    ------
    BadInput
        What looks like a person's name, an e-mail address or a date of birth; a code that is taken.
    """
    code = code.strip()
    _check_code(code)
    with store.write(who, "") as connection:
        known = connection.execute(sa.select(player.c.code).where(player.c.code_key == code.casefold())).scalar()
        if known is not None:
            remedy = message(PlayerRecords.open_or_recode, code=Name(known))
            raise BadInput(Problem("code", code, message(PlayerRecords.new_code), remedy))
        row = sa.insert(player).values(at=store.at(), who=who, code=code, code_key=code.casefold())
        player_id = new_id(connection, row)
        note_act(store, connection, who, message(Trail.player_added), player_id)
    return PlayerRow(player_id, code, 0, "", 0, consent_state(None))


def visits(store: Store, player_id: int) -> tuple[VisitRow, ...]:
    """The visits of a player, the newest first."""
    return _visits(store, visit_table.c.player_id == player_id)


def visit(store: Store, visit_id: int) -> VisitRow:
    """One visit.

    Raises
    ------
    BadInput
        There is none.
    """
    found = _visits(store, visit_table.c.id == visit_id)
    if not found:
        raise BadInput(Problem("visit", str(visit_id), message(Entries.kept_visit), message(Entries.back_to_player)))
    return found[0]


def add_visit(store: Store, player_id: int, on_date: str, *, who: str, like: int | None = None) -> VisitRow:
    """Begin a visit.

    Parameters
    ----------
    store : Store
    player_id : int
    on_date : str
        YYYY-MM-DD.
    who : str
    like : int, optional
        Earlier visit of the same player: sites, game, hub, room and kit are carried over, measurements are not. Without,
        the visit begins with code and date alone: nothing invented stands among what will be measured.

    Raises
    ------
    BadInput
        No date, no such player or visit, a `like` whose player.toml cannot be read.
    """
    try:
        day = datetime.date.fromisoformat(on_date.strip())
    except ValueError as error:
        raise BadInput(_no_date(on_date)) from error
    with store.write(who, "") as connection:
        code = connection.execute(sa.select(player.c.code).where(player.c.id == player_id)).scalar()
        if code is None:
            raise BadInput(
                Problem("player", str(player_id), message(Entries.kept_player), message(Entries.back_to_players))
            )
        if like is None:
            files = {"player.toml": begun(code, day)}
        else:
            if visit(store, like).player_id != player_id:
                raise BadInput(
                    Problem(
                        message(PlayerRecords.visit_to_copy),
                        str(like),
                        message(PlayerRecords.visit_of, code=Name(code)),
                        message(PlayerRecords.choose_from_list),
                    )
                )
            before = {name: one.body for name, one in documents(store, like).items()}
            files = carried_over(before, code, day)
        visit_id = _new_visit(store, connection, player_id, who)
        why = message(Versions.begun) if like is None else message(Versions.carried_over)
        for name, body in files.items():
            save_document(store, visit_id, name, body, who=who, why=why)
        note_act(store, connection, who, message(Trail.visit_begun, date=Name(day.isoformat())), player_id)
        return visit(store, visit_id)


def _new_visit(store: Store, connection: sa.Connection, player_id: int, who: str) -> int:
    last = sa.select(sa.func.max(visit_table.c.number)).where(visit_table.c.player_id == player_id)
    number = (connection.execute(last).scalar() or 0) + 1
    row = sa.insert(visit_table).values(at=store.at(), who=who, player_id=player_id, number=number)
    return new_id(connection, row)


def readings_through_time(store: Store, player_id: int) -> tuple[ReadingRow, ...]:
    """All readings of a player, the oldest visit first."""
    wanted = (
        sa.select(reading, visit_fact.c.on_date)
        .join(visit_table, visit_table.c.id == reading.c.visit_id)
        .join(visit_fact, visit_fact.c.visit_id == visit_table.c.id)
        .where(visit_table.c.player_id == player_id)
        .order_by(visit_fact.c.on_date, visit_table.c.number, reading.c.id)
    )
    with store.read() as connection:
        rows = connection.execute(wanted).mappings().all()
    names = ("visit_id", "on_date", "site", "kind", "direction_rad", "typed")
    return tuple(ReadingRow(**{name: row[name] for name in names}, repeats=tuple(row["repeats"])) for row in rows)


def _visits(store: Store, matches: sa.ColumnElement[bool]) -> tuple[VisitRow, ...]:
    recorded, planned = (
        sa.select(sa.func.count()).where(table.c.visit_id == visit_table.c.id).correlate(visit_table).scalar_subquery()
        for table in (recording, plan)
    )
    wanted = (
        sa.select(
            visit_table.c.id, visit_table.c.player_id, visit_table.c.number, visit_fact.c.on_date, visit_fact.c.game,
            visit_fact.c.sites, visit_fact.c.problems, recorded.label("recordings"), planned.label("plans"),
        )
        .join(visit_fact, visit_fact.c.visit_id == visit_table.c.id, isouter=True)
        .where(matches)
        .order_by(sa.func.coalesce(visit_fact.c.on_date, "").desc(), visit_table.c.number.desc())
    )  # fmt: skip
    with store.read() as connection:
        return tuple(_visit(row) for row in connection.execute(wanted).mappings())


def _visit(row: Mapping[Any, Any]) -> VisitRow:
    named = {str(name): row[name] for name in ("id", "player_id", "number", "recordings", "plans")}
    return VisitRow(
        **named, on_date=row["on_date"] or "", game=row["game"] or "", sites=tuple(row["sites"] or ()),
        problems=row["problems"] or 0,
    )  # fmt: skip


def _no_date(typed: str) -> Problem:
    found = typed or message(Entries.nothing)
    return Problem(message(PlayerRecords.date_of_visit), found, message(Entries.a_date))


def _check_code(code: str) -> None:
    found: Text = ""
    if not code:
        found = message(Entries.nothing)
    elif _ADDRESS.search(code):
        found = message(PlayerRecords.like_address)
    elif _DAY_OF_BIRTH.search(code):
        found = message(PlayerRecords.like_birth, code=Name(code))
    elif " " in code:
        found = message(PlayerRecords.like_name, code=Name(code))
    elif len(code) > _LONGEST_CODE or _OUTSIDE_CODE.search(code):
        short = len(code) <= 2 * _LONGEST_CODE
        found = message(Entries.typed, typed=Name(code)) if short else message(Entries.letters, count=len(code))
    if found:
        expected = message(PlayerRecords.a_code, longest=_LONGEST_CODE)
        raise BadInput(Problem("code", found, expected, message(PlayerRecords.use_a_code)))
