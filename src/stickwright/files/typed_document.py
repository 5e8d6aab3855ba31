"""What a file of a case says as a JSON document: the form in which records hold it.

    {"schema": 1, "noun": "player", "typed": {"code": "K7", "site": [{"name": "chin", "reading": [{"force_gf": [34, 36.0]}]}]}}

`typed` is the tree of what was entered: numbers digit by digit as they were typed, each with its unit in its key. It may be half
filled; whether it makes a `Player`, and what it still lacks, the readers of a case tell of the tree as they do of the file, at
the line where it stands in the file beside it. What JSON has no word for stands in a table of one key: ``{"$date": "2026-03-14"}``
for dates and times, ``{"$number": "inf"}`` for numbers that JSON would not take; a key that itself begins with ``$`` gets another.

A document stays as it was written. One of an earlier schema is brought up to the present one each time that it is read, by the
steps of `UPGRADES`, one schema at a time; one of a later schema is refused.
"""

from __future__ import annotations

import datetime
import json
import re
from collections.abc import Callable
from typing import Any

from stickwright.codes.message import Name, message
from stickwright.codes.records_file import RecordsFile
from stickwright.errors import BadInput, Problem
from stickwright.files.game_files import GAME_FILES
from stickwright.files.held import HeldPlace
from stickwright.files.plain_text import read_text
from stickwright.files.toml_lines import Lines, TomlFile, TypedFloat, parse_toml

__all__ = ["SCHEMA", "UPGRADES", "Upgrade", "check_schema", "document_json", "noun_of", "read_document"]

Upgrade = Callable[[str, dict[str, Any]], dict[str, Any]]
"""The noun and the tree of a document of one schema -> its tree in the next."""

SCHEMA = 1
"""Of the documents written now; raised when a key of the frame, or of the tree, means something else."""
UPGRADES: dict[int, Upgrade] = {}
"""Schema -> the step from it to the next; one for every schema before `SCHEMA`."""
_NOUNS = {"player.toml": "player", "kit.toml": "kit", "hub.toml": "hub", "room.toml": "room"}
_JSON_NUMBER = re.compile(r"-?(0|[1-9]\d*)(\.\d+)?([eE][-+]?\d+)?")
_DATE, _NUMBER = "$date", "$number"
_DEEPEST = 100
"""Tables in tables: a case has six; what is deeper stays a text."""


def noun_of(name: str) -> str:
    """Which part of a case a file holds; '' for a file that is only kept.

    Examples
    --------
    >>> noun_of("game-3.toml"), noun_of("notes.toml")
    ('game', '')
    """
    return "game" if name in GAME_FILES else _NOUNS.get(name, "")


def document_json(name: str, body: bytes) -> bytes | None:
    """What a file says, as JSON; None for a file that is no part of a case, says nothing, or cannot be read.

    Examples
    --------
    >>> document_json("player.toml", b'code = "K7"  # never a name')
    b'{"schema": 1, "noun": "player", "typed": {"code": "K7"}}'
    >>> document_json("player.toml", b"code = ") is None
    True
    """
    noun = noun_of(name)
    if not noun:
        return None
    try:
        typed = parse_toml(read_text(HeldPlace({name: body}, name), name, "player"), name).data
    except BadInput:
        return None
    if not typed or _depth(typed) > _DEEPEST:
        return None
    return f'{{"schema": {SCHEMA}, "noun": "{noun}", "typed": {_json(typed)}}}'.encode()


def read_document(document: bytes, name: str, body: bytes) -> TomlFile:
    """A document as the file that it came from says it.

    Parameters
    ----------
    document : bytes
        JSON.
    name : str
        Of the file.
    body : bytes
        The file: looked at only when a line has to be told.

    Raises
    ------
    BadInput
        Written by a newer program.

    Examples
    --------
    >>> body = b'# K7' + chr(10).encode() + b'visit = 2026-03-14'
    >>> file = read_document(document_json("player.toml", body), "player.toml", body)
    >>> file.data, file.lines.line(("visit",))
    ({'visit': datetime.date(2026, 3, 14)}, 2)
    """
    held = json.loads(document, parse_float=TypedFloat, object_pairs_hook=_table)
    _refuse_newer(held["schema"], name)
    typed = held["typed"]
    for schema in range(held["schema"], SCHEMA):
        typed = UPGRADES[schema](held["noun"], typed)
    return TomlFile(name, typed, Lines(body.decode("utf-8-sig")))


def check_schema(document: bytes, name: str) -> None:
    """Refuse a document of a newer program, so that nothing is saved over what this program cannot read.

    Raises
    ------
    BadInput
        Written by a newer program.
    """
    _refuse_newer(json.loads(document)["schema"], name)


def _refuse_newer(schema: int, name: str) -> None:
    if schema > SCHEMA:
        raise BadInput(
            Problem(
                (name,),
                message(RecordsFile.newer, schema=Name(str(schema))),
                message(RecordsFile.older_schema, schema=Name(str(SCHEMA))),
                message(RecordsFile.install_newer),
            )
        )


def _depth(value: Any) -> int:
    """How many tables and lists lie in each other; without recursion, since that is what it guards against."""
    depth, level = 0, [value]
    while level:
        depth += 1
        level = [
            inner
            for one in level
            if isinstance(one, dict | list)
            for inner in (one.values() if isinstance(one, dict) else one)
        ]
    return depth


def _json(value: Any) -> str:
    if isinstance(value, dict):
        pairs = (f"{json.dumps(_escaped(key), ensure_ascii=False)}: {_json(one)}" for key, one in value.items())
        return f"{{{', '.join(pairs)}}}"
    if isinstance(value, list):
        return f"[{', '.join(map(_json, value))}]"
    if isinstance(value, TypedFloat):
        return value.text if _JSON_NUMBER.fullmatch(value.text) else json.dumps({_NUMBER: value.text})
    if isinstance(value, datetime.date | datetime.time):
        return json.dumps({_DATE: value.isoformat()})
    return json.dumps(value, ensure_ascii=False)


def _escaped(key: str) -> str:
    return f"${key}" if key.startswith("$") else key


def _table(pairs: list[tuple[str, Any]]) -> Any:
    """A table of the document, or the value for which it stands."""
    if len(pairs) == 1 and pairs[0][0] == _NUMBER:
        return TypedFloat(pairs[0][1])
    if len(pairs) == 1 and pairs[0][0] == _DATE:
        return _moment(pairs[0][1])
    return {key[1:] if key.startswith("$$") else key: value for key, value in pairs}


def _moment(text: str) -> datetime.date | datetime.time:
    if ":" not in text:
        return datetime.date.fromisoformat(text)
    return datetime.datetime.fromisoformat(text) if "T" in text else datetime.time.fromisoformat(text)
