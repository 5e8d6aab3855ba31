"""Changes to a TOML file of a case, one table at a time: comments, order and what was typed elsewhere stay as they are.

A place in the file is a path as in `toml_lines`: ``("site", 0, "reading", 2)`` is the third reading of the first site; one
step past the last is a new table.
"""

from __future__ import annotations

import copy
import tomllib
from collections.abc import Mapping
from itertools import pairwise
from typing import Any

import tomlkit
import tomlkit.exceptions
from tomlkit.container import Container
from tomlkit.items import AoT, Table

from stickwright.codes.case_files import CaseFiles
from stickwright.codes.message import Name, Text, message
from stickwright.codes.remedies import Remedies
from stickwright.errors import BadInput, Problem
from stickwright.files.toml_lines import FieldPath, parse_toml

__all__ = ["Numeral", "at_path", "with_fields", "without_table"]


class Numeral(str):
    """A number for a file, as it was typed: 0.40 stays 0.40."""

    def __new__(cls, text: str) -> Numeral:
        return super().__new__(cls, text)


def at_path(text: str, path: FieldPath) -> Any:
    """What stands at a place: a table, a list of tables, a value, or None.

    Parameters
    ----------
    text : str
        TOML.
    path : tuple

    Examples
    --------
    >>> at_path('[[site]]\\nname = "chin"', ("site", 0, "name"))
    'chin'
    """
    found: Any = tomllib.loads(text)
    for step in path:
        try:
            found = found[step]
        except (KeyError, IndexError, TypeError):
            return None
    return found


def with_fields(text: str, path: FieldPath, fields: Mapping[str, Any], *, name: str = "") -> str:
    """The file with some keys of one table set, or taken away where the value is None.

    Parameters
    ----------
    text : str
        TOML.
    path : tuple
        Of the table; tables on the way, and one past the last of a list, are made.
    fields : mapping
        Key -> words, number, `Numeral`, yes or no, list of these, or None.
    name : str
        Of the file, for the sentence when the text cannot be read.

    Returns
    -------
    str

    Raises
    ------
    BadInput
        The text is no TOML, or there is no such place.

    Examples
    --------
    >>> print(with_fields('code = "K1"  # never a name', ("site", 0), {"name": "chin", "minds": Numeral("3")}))
    code = "K1"  # never a name
    <BLANKLINE>
    [[site]]
    name = "chin"
    minds = 3
    <BLANKLINE>
    """
    wanted = _plain(text, name)
    table = _made(wanted, path, name)
    for key, value in fields.items():
        if value is None:
            table.pop(key, None)
        else:
            table[key] = _bare(value)
    document = _with_comments(text, name)
    _set(_made_in(document, path), fields)
    return _checked(tomlkit.dumps(document), wanted, text)


def without_table(text: str, path: FieldPath, *, name: str = "") -> str:
    """The file without one table, or one key.

    Parameters
    ----------
    text : str
        TOML.
    path : tuple
        Of what goes.
    name : str
        Of the file, for the sentence when the text cannot be read.

    Raises
    ------
    BadInput
        The text is no TOML, or nothing stands there.
    """
    wanted = _plain(text, name)
    *way, last = path
    around = _found(wanted, tuple(way), name)
    try:
        del around[last]
        if isinstance(around, list) and not around:
            del _found(wanted, tuple(way[:-1]), name)[way[-1]]
    except (KeyError, IndexError, TypeError):
        raise _no_such_place(path, name) from None
    document = _with_comments(text, name)
    holder: Any = document
    for step in way:
        holder = holder[step]
    if isinstance(holder, AoT) and len(holder) == 1:
        outer: Any = document
        for step in way[:-1]:
            outer = outer[step]
        outer.remove(way[-1])
    elif isinstance(last, int):
        del holder[last]
    else:
        holder.remove(last)
    return _checked(tomlkit.dumps(document), wanted, text)


def _with_comments(text: str, name: str) -> tomlkit.TOMLDocument:
    try:
        return tomlkit.parse(text)
    except tomlkit.exceptions.TOMLKitError as refused:  # such as a list in a list, a hundred deep
        found, wanted = message(CaseFiles.unchangeable, reason=Name(str(refused))), message(CaseFiles.changeable)
        raise BadInput(Problem(_file(name), found, wanted, message(Remedies.edit_as_text))) from None


def _file(name: str) -> tuple[Text, ...]:
    return (name,) if name else (message(CaseFiles.file),)


def _plain(text: str, name: str) -> dict[str, Any]:
    """The file as plain tables; refused in the words of the reader when it is no TOML."""
    parse_toml(text, name or "file")
    return tomllib.loads(text)


def _checked(text: str, wanted: dict[str, Any], before: str) -> str:
    """The edited text; written anew, without its comments, should it not say what was wanted."""
    for candidate in (_aired(text, before), text):
        try:
            if tomllib.loads(candidate) == wanted:
                return candidate
        except tomllib.TOMLDecodeError:
            continue
    return tomlkit.dumps(wanted)


def _aired(text: str, before: str) -> str:
    """One blank line before each table that is new here, and never two where there were none."""
    old = before.split("\n")
    known = set(pairwise(old))
    lines: list[str] = []
    for line in text.split("\n"):
        last = lines[-1] if lines else None
        if last is not None and (last, line) not in known:
            if not line.strip() and not last.strip():
                continue
            if line.lstrip().startswith("[") and last.strip() and not last.lstrip().startswith("#"):
                lines.append("")
        lines.append(line)
    return "\n".join(lines)


def _no_such_place(path: FieldPath, name: str) -> BadInput:
    place = Name(", ".join(str(step + 1) if isinstance(step, int) else step for step in path))
    found, wanted = message(CaseFiles.nothing_at, place=place), message(CaseFiles.table_there)
    return BadInput(Problem(_file(name), found, wanted, message(Remedies.open_again)))


def _found(plain: Any, path: FieldPath, name: str) -> Any:
    for step in path:
        try:
            plain = plain[step]
        except (KeyError, IndexError, TypeError):
            raise _no_such_place(path, name) from None
    return plain


def _made(plain: Any, path: FieldPath, name: str) -> dict[str, Any]:
    """The table at a place in plain tables, made where it is not there yet."""
    here = plain
    for place, step in enumerate(path):
        try:
            if isinstance(step, int):
                if step == len(here):
                    here.append({})
                here = here[step]
            else:
                empty: Any = [] if place + 1 < len(path) and isinstance(path[place + 1], int) else {}
                here = here.setdefault(step, empty)
        except (AttributeError, IndexError, KeyError, TypeError):
            raise _no_such_place(path, name) from None
    if not isinstance(here, dict):
        raise _no_such_place(path, name)
    return here


def _made_in(document: tomlkit.TOMLDocument, path: FieldPath) -> Any:
    """The same in the document with its comments."""
    here: Any = document
    for place, step in enumerate(path):
        if isinstance(step, int):
            if step == len(here):
                here.append(_new_table(here))
            here = here[step]
            continue
        if step not in here:
            many = place + 1 < len(path) and isinstance(path[place + 1], int)
            here.append(step, tomlkit.aot() if many else _new_table(None))
        here = here[step]
    return here


def _new_table(among: Any) -> Any:
    if among is not None and not isinstance(among, AoT):
        return tomlkit.inline_table()
    table = tomlkit.table()
    table.trivia.indent = "\n"
    return table


def _set(table: Any, fields: Mapping[str, Any]) -> None:
    for key, value in fields.items():
        if value is None:
            if key in table:
                table.remove(key)
        elif key in table:
            table[key] = _item(value)
        else:
            _add(table, key, _item(value))


def _add(table: Any, key: str, item: Any) -> None:
    """A new key stands before the tables inside its table: below them it would belong to the last of these."""
    container: Any = table.value if isinstance(table, Table) else table
    inner = [
        found.key
        for found, value in getattr(container, "body", [])
        if found is not None and isinstance(value, Table | AoT)
    ]
    if not inner or not isinstance(container, Container):
        table.append(key, item)
        return
    bodies = container.body
    before = None
    for found, value in bodies:
        if found is None:
            continue
        if isinstance(value, Table | AoT):
            break
        before = found
    if before is None:
        container._insert_at(0, key, item)
    else:
        container._insert_after(before, key, item)


def _item(value: Any) -> Any:
    if isinstance(value, list | tuple):
        array = tomlkit.array()
        for one in value:
            array.append(_item(one))
        return array
    return tomlkit.value(str(value)) if isinstance(value, Numeral) else tomlkit.item(copy.copy(value))


def _bare(value: Any) -> Any:
    if isinstance(value, list | tuple):
        return [_bare(one) for one in value]
    return tomllib.loads(f"x = {value}")["x"] if isinstance(value, Numeral) else value
