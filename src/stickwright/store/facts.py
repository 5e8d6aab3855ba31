"""What is looked up about visits without reading their files again: date, sites, game, and each reading.

Derived: made anew in the same transaction as each change of a file, and of no weight of its own. A file that is half typed
never keeps anybody from saving; what cannot be read is counted, and stands in the file as it was typed.
"""

from __future__ import annotations

import datetime
import math
import zlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

import sqlalchemy as sa

from stickwright import units
from stickwright.errors import BadInput
from stickwright.files.game_files import GAME_FILES
from stickwright.files.held import HeldFile, HeldPlace
from stickwright.files.toml_lines import read_toml
from stickwright.files.typed_document import read_document
from stickwright.store.schema import document, reading, version, visit_fact

__all__ = ["Facts", "ReadingFact", "facts_of", "newest_version", "refresh_facts"]

_LONGEST = 200
_MEASURED = {  # kind of reading: table within the site, key of its repeats
    "rest": ("rest", "force"),
    "hold": ("hold", "duration"),
    "press": ("press", "force"),
}


@dataclass(frozen=True)
class ReadingFact:
    """Repeats of one reading.

    Parameters
    ----------
    file : str
        Where it stands.
    site : str
    kind : str
        ``force``, ``reach``, ``rest``, ``hold`` (seconds), ``press``.
    direction_rad : float, optional
    repeats : tuple of float
        SI.
    typed : str
        As typed, with the unit's key.
    """

    file: str
    site: str
    kind: str
    direction_rad: float | None
    repeats: tuple[float, ...]
    typed: str


@dataclass(frozen=True)
class Facts:
    """What the files of one visit say.

    Parameters
    ----------
    on_date : str
        YYYY-MM-DD, empty when not said.
    sites : tuple of str
    game : str
        Names of the games, the first one first.
    problems : int
        Things that could not be read.
    readings : tuple of ReadingFact
    """

    on_date: str = ""
    sites: tuple[str, ...] = ()
    game: str = ""
    problems: int = 0
    readings: tuple[ReadingFact, ...] = ()


class _Unread(Exception):
    """Not of the shape that a reading has."""


def facts_of(files: Mapping[str, HeldFile]) -> Facts:
    """What the files of a visit say, as far as they can be read.

    Parameters
    ----------
    files : mapping
        Name -> what it says, or its bytes: ``player.toml``, the games and the gauge readings named in it.
    """
    player, problems = _table(files, "player.toml")
    games, wrong = zip(*(_table(files, name) for name in GAME_FILES), strict=True)
    named = ", ".join(words for one in games if (words := _words(one.get("name", ""))))
    found = Facts(on_date=_date(player.get("visit", "")), game=named[:_LONGEST], problems=problems + sum(wrong))
    if player.get("visit", "") != "" and not found.on_date:
        found = replace(found, problems=found.problems + 1)
    sites = player.get("site", [])
    if not isinstance(sites, list):
        return replace(found, problems=found.problems + 1)
    for site in sites:
        name = _words(site.get("name", "")) if isinstance(site, dict) else ""
        if not name:
            found = replace(found, problems=found.problems + 1)
            continue
        readings, wrong = _of_site(name, site, files)
        found = replace(
            found, sites=(*found.sites, name), readings=(*found.readings, *readings), problems=found.problems + wrong
        )
    return found


def newest_version() -> sa.ScalarSelect[int]:
    """Id of the last version of a document, within a question about documents."""
    later = version.alias()
    last = sa.select(sa.func.max(later.c.id)).where(later.c.document_id == document.c.id)
    return last.correlate(document).scalar_subquery()


def refresh_facts(connection: sa.Connection, visit_id: int) -> None:
    """Make the derived rows of a visit anew from its files.

    Parameters
    ----------
    connection : Connection
        Of a `Store.write`.
    visit_id : int
    """
    versions, files = _newest(connection, visit_id, ("player.toml", *GAME_FILES))
    gauges = _gauge_files(files)
    if gauges:
        more_versions, more_files = _newest(connection, visit_id, gauges)
        versions, files = more_versions | versions, more_files | files
    facts = facts_of(files)
    if _table(files, "player.toml")[1]:
        before = _last_readable(connection, visit_id)  # a half-typed file leaves the visit where it was in the list
        facts = replace(facts, on_date=before.on_date, sites=before.sites)
    connection.execute(sa.delete(reading).where(reading.c.visit_id == visit_id))
    connection.execute(sa.delete(visit_fact).where(visit_fact.c.visit_id == visit_id))
    connection.execute(
        sa.insert(visit_fact).values(
            visit_id=visit_id, on_date=facts.on_date, sites=list(facts.sites), game=facts.game, problems=facts.problems
        )
    )
    rows = [
        {
            "visit_id": visit_id, "version_id": versions[one.file], "site": one.site, "kind": one.kind,
            "direction_rad": one.direction_rad, "repeats": list(one.repeats), "typed": one.typed,
        }
        for one in facts.readings
    ]  # fmt: skip
    if rows:
        connection.execute(sa.insert(reading), rows)


def _newest(
    connection: sa.Connection, visit_id: int, names: Sequence[str]
) -> tuple[dict[str, int], dict[str, HeldFile]]:
    rows = connection.execute(
        sa.select(document.c.name, version.c.id, version.c.body, version.c.typed)
        .select_from(document)
        .join(version, version.c.id == newest_version())
        .where(document.c.visit_id == visit_id, document.c.name.in_(names), ~version.c.removed)
    ).all()
    return {row.name: row.id for row in rows}, {row.name: _says(row.name, row.body, row.typed) for row in rows}


def _says(name: str, body: bytes, typed: bytes | None) -> HeldFile:
    text = zlib.decompress(body)
    return text if typed is None else read_document(zlib.decompress(typed), name, text)


def _last_readable(connection: sa.Connection, visit_id: int) -> Facts:
    readable = (version.c.typed.is_not(None), document.c.visit_id == visit_id, document.c.name == "player.toml")
    row = connection.execute(
        sa.select(version.c.body, version.c.typed)
        .join(document, document.c.id == version.c.document_id)
        .where(*readable)
        .order_by(version.c.number.desc())
        .limit(1)
    ).first()
    return Facts() if row is None else facts_of({"player.toml": _says("player.toml", row.body, row.typed)})


def _gauge_files(files: Mapping[str, HeldFile]) -> list[str]:
    sites = _table(files, "player.toml")[0].get("site", [])
    named = [site.get("gauge_readings") for site in sites if isinstance(site, dict)] if isinstance(sites, list) else []
    return [name for name in named if isinstance(name, str)]


def _table(files: Mapping[str, HeldFile], name: str) -> tuple[dict[str, Any], int]:
    """What a file says, and whether it cannot be read; one that is not there, or blank, says nothing."""
    if name not in files or (isinstance(held := files[name], bytes) and not held.strip()):
        return {}, 0
    try:
        return read_toml(HeldPlace(files, name), name, "player").data, 0
    except BadInput:
        return {}, 1


def _date(value: Any) -> str:
    try:
        day = value if isinstance(value, datetime.date) else datetime.date.fromisoformat(str(value))
    except ValueError:
        return ""
    return day.isoformat()[:10]


def _words(value: Any) -> str:
    return value.replace("\x00", "")[:_LONGEST] if isinstance(value, str) else ""


def _of_site(name: str, site: dict[str, Any], files: Mapping[str, HeldFile]) -> tuple[list[ReadingFact], int]:
    found: list[ReadingFact] = []
    wrong = 0
    for table, kind, stem in (
        *((one, kind, kind) for one in _tables(site.get("reading")) for kind in ("force", "reach")),
        *((one, kind, stem) for kind, (key, stem) in _MEASURED.items() for one in _tables(site.get(key))),
    ):
        try:
            one = _reading(name, table, kind, stem)
        except _Unread:
            wrong += 1
        else:
            found += [one] if one else []
    gauge = site.get("gauge_readings")
    if isinstance(gauge, str):
        try:
            found += _of_gauge(name, gauge, files)
        except (BadInput, _Unread, UnicodeDecodeError):
            wrong += 1
    return found, wrong


def _tables(value: Any) -> list[Any]:
    return [] if value is None else value if isinstance(value, list) else [value]


def _reading(site: str, table: Any, kind: str, stem: str) -> ReadingFact | None:
    if not isinstance(table, dict):
        raise _Unread
    key = next((key for key in table if (units.split_key(key) or ("",))[0] == stem), None)
    if key is None:
        return None
    typed = table[key] if isinstance(table[key], list) else [table[key]]
    turned = next((one for one in table if (units.split_key(one) or ("",))[0] == "direction"), None)
    direction_rad = None if turned is None else _si(turned, table[turned])
    text = ", ".join(getattr(value, "text", str(value)) for value in typed)
    return ReadingFact(
        "player.toml", site, kind, direction_rad, tuple(_si(key, value) for value in typed), f"{key} = {text}"
    )


def _si(key: str, value: Any) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise _Unread
    try:
        value_si = units.to_si(float(value), units.ending_of(key))
    except OverflowError as error:  # a whole number of hundreds of digits
        raise _Unread from error
    if not math.isfinite(value_si):
        raise _Unread
    return value_si


def _of_gauge(site: str, file: str, files: Mapping[str, HeldFile]) -> list[ReadingFact]:
    from stickwright.files.gauge import gauge_of

    table = files.get(file)
    if not isinstance(table, bytes):  # not there, or another part of the case
        raise _Unread
    gauge = gauge_of(table.decode("utf-8-sig"), file)
    lists = iter(gauge.lists)
    found = []
    for one in gauge.reading:
        for kind, repeats in (("force", one.force_n), ("reach", one.reach_m)):
            if repeats:
                typed = next(lists)
                text = f"{typed.key} = {', '.join(typed.texts)}"
                found.append(ReadingFact(file, site, kind, one.direction_rad, repeats, text))
    return found
