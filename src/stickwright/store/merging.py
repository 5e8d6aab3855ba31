"""Two changes to one file since the version both began from.

Each value that only one of the two changed is taken from that one. First line by line, so that comments and what was typed
stay as they are; where lines touch, value by value. Either result counts only when, read as TOML, it holds exactly the values
that the two writers meant. Where both changed the same value, or one took away what the other changed, only a person can choose.

Tables of a list that have names (`[[site]]`) are told apart by them. A list without (`[[site.reading]]`) is one value.
"""

from __future__ import annotations

import tomllib
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from difflib import SequenceMatcher
from typing import Any

from stickwright.codes.message import Message, Name, message
from stickwright.codes.versions import Versions
from stickwright.errors import Problem

__all__ = ["MergeConflict", "merged"]

_Path = tuple[str, ...]
_Leaves = dict[_Path, Any]
_GONE = object()
_THERE = ""
"""Last step of the path that says whether a named table is there at all: no key of a case is empty."""


@dataclass(frozen=True)
class MergeConflict:
    """Why two changes cannot both be kept.

    Parameters
    ----------
    problems : tuple of Problem
        Both values of each thing.
    """

    problems: tuple[Problem, ...]


def merged(base: bytes, theirs: bytes, mine: bytes, name: str, who: str, at: str) -> bytes | MergeConflict:
    """Both changes in one file, or what stands in the way.

    Parameters
    ----------
    base, theirs, mine : bytes
        What both began from, what has been saved since, what is to be saved.
    name : str
        Of the file.
    who, at : str
        Who saved `theirs`, and when.
    """
    if mine in (base, theirs):
        return theirs
    whole = MergeConflict((_problem((name,), message(Versions.two_changes, who=Name(who), at=Name(at[11:16]))),))
    if not name.endswith(".toml"):
        return whole
    try:
        texts = [body.decode("utf-8") for body in (base, theirs, mine)]
        before, there, here = (dict(_leaves(tomllib.loads(text))) for text in texts)
    except (UnicodeDecodeError, tomllib.TOMLDecodeError):
        return whole  # half typed: nothing can be said about its values
    changed_there, changed_here = _changes(before, there), _changes(before, here)
    problems = [
        _problem(
            (name, _spoken(b)),
            message(
                Versions.two_values,
                mine=_shown(changed_here[b]),
                theirs=_shown(changed_there[a]),
                who=Name(who),
                at=Name(at[11:16]),
            ),
        )
        for a in changed_there
        for b in changed_here
        if _at_odds(a, changed_there[a], b, changed_here[b])
    ]
    if problems:
        return MergeConflict(tuple(dict.fromkeys(problems)))
    wanted = {path: value for path, value in (there | changed_here).items() if value is not _GONE}
    base_text, their_text, my_text = texts
    for text in (
        _by_lines(base_text, their_text, my_text),
        _by_setting(base_text, their_text, my_text, changed_here),
    ):
        if text is not None and _reads_as(text, wanted):
            return text.encode("utf-8")
    return whole


def _problem(where: tuple[str, ...], found: Message) -> Problem:
    return Problem(where, found, message(Versions.one_change), message(Versions.look_at_both))


def _leaves(table: dict[str, Any], before: _Path = ()) -> Iterator[tuple[_Path, Any]]:
    for key, value in table.items():
        path = (*before, key)
        if isinstance(value, dict):
            yield from _leaves(value, path)
        elif _is_named(value):
            for item in value:
                yield (*path, item["name"], _THERE), True
                yield from _leaves(item, (*path, item["name"]))
        else:
            yield path, value


def _is_named(value: Any) -> bool:
    if not isinstance(value, list) or not value or not all(isinstance(item, dict) for item in value):
        return False
    names = [item.get("name") for item in value]
    return all(isinstance(name, str) and name for name in names) and len(set(names)) == len(names)


def _changes(before: _Leaves, after: _Leaves) -> _Leaves:
    return {
        path: after.get(path, _GONE)
        for path in {**before, **after}
        if path not in before or path not in after or before[path] != after[path]
    }


def _at_odds(a: _Path, there: Any, b: _Path, here: Any) -> bool:
    if a == b:
        return bool(there is not here if _GONE in (there, here) else there != here)
    if there is _GONE and here is _GONE:
        return False
    if a[-1] == _THERE:
        return there is _GONE and b[: len(a) - 1] == a[:-1]
    if b[-1] == _THERE:
        return here is _GONE and a[: len(b) - 1] == b[:-1]
    shorter = min(len(a), len(b))
    return a[:shorter] == b[:shorter]  # a table in one is a value in the other


def _spoken(path: _Path) -> str:
    return " ".join(f"'{step}'" if " " in step else step for step in path if step != _THERE)


def _shown(value: Any) -> Name | None:
    if value is _GONE:
        return None
    text = str(value)
    return Name(text if len(text) <= 60 else f"{text[:57]}...")


def _reads_as(text: str, wanted: _Leaves) -> bool:
    try:
        return dict(_leaves(tomllib.loads(text))) == wanted
    except tomllib.TOMLDecodeError:
        return False


def _by_lines(base: str, theirs: str, mine: str) -> str | None:
    """Lines changed by one are taken from that one; None where both changed the same."""
    lines = base.splitlines(keepends=True)
    hunks = sorted([*_hunks(lines, theirs, 0), *_hunks(lines, mine, 1)], key=lambda hunk: hunk[:3])
    done: list[str] = []
    at = 0
    last: tuple[int, int, list[str]] | None = None
    for first, end, _, instead in hunks:
        if last == (first, end, instead):
            continue  # both did the same
        if first < at:
            return None
        done += lines[at:first]
        if done and not done[-1].endswith("\n"):
            done[-1] += "\n"
        done += instead
        at, last = end, (first, end, instead)
    return "".join(done + lines[at:])


def _hunks(lines: list[str], text: str, writer: int) -> Iterator[tuple[int, int, int, list[str]]]:
    after = text.splitlines(keepends=True)
    for kind, first, end, start, stop in SequenceMatcher(None, lines, after, autojunk=False).get_opcodes():
        if kind != "equal":
            yield first, end, writer, after[start:stop]


def _by_setting(base: str, theirs: str, mine: str, changes: _Leaves) -> str | None:
    """My values set in their text; None where my comments, or tables of mine, would be lost."""
    import tomlkit
    from tomlkit.exceptions import TOMLKitError

    try:
        if Counter(_comments(tomlkit.parse(mine))) != Counter(_comments(tomlkit.parse(base))):
            return None
        document = tomlkit.parse(theirs)
        for path, value in changes.items():
            table: Any = document
            for step in path[:-1]:
                is_list = isinstance(table, list)
                table = next(item for item in table if item["name"] == step) if is_list else table[step]
            if path[-1] == _THERE:  # no key of the file: the table was found above; to take it away is for its lines
                if value is _GONE:
                    return None
            elif value is _GONE:
                del table[path[-1]]
            else:
                table[path[-1]] = value
        return tomlkit.dumps(document)
    except (TOMLKitError, KeyError, TypeError, StopIteration):
        return None


def _comments(item: Any) -> Iterator[str]:
    """Comments of a document as tomlkit has read it; a # within a value is none."""
    from tomlkit.container import Container
    from tomlkit.items import AbstractTable, AoT, Array, Null, Whitespace

    inner: list[Any] = []
    if isinstance(item, Container):
        inner = [value for _, value in item.body]
    elif isinstance(item, AbstractTable):
        inner = [item.value]
    elif isinstance(item, AoT):
        inner = list(item.body)
    elif isinstance(item, Array):
        inner = list(item._iter_items())
    if not isinstance(item, Container | Null | Whitespace | AoT) and item.trivia.comment:
        yield item.trivia.comment.removeprefix("#").strip()
    for one in inner:
        yield from _comments(one)
