"""TOML [toml] with its line numbers: where in the file a field stands, and syntax errors in plain words.

The parser of the standard library forgets where it read a value, so a second, much simpler
pass over a file that is known to be valid notes the line of every key and list item.
"""

from __future__ import annotations

import bisect
import re
import tomllib
from dataclasses import dataclass
from typing import Any, Literal

from stickwright import units
from stickwright.codes.expected import Contents, Expected
from stickwright.codes.file_places import FilePlaces
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.remedies import Remedies
from stickwright.codes.toml_faults import Fault, TomlFaults
from stickwright.errors import BadInput, Problem
from stickwright.files.held import FilePlace, HeldPlace, ParsedFile
from stickwright.files.plain_text import read_text, shortened

__all__ = ["FieldPath", "Lines", "PlaceInFile", "TomlFile", "TypedFloat", "parse_toml", "read_toml"]

FieldPath = tuple[str | int, ...]
PlaceInFile = tuple[Text, ...]
"""A place in a file, from the outside inwards: its name, the line or row, the table, the key."""
_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")
_AT = re.compile(r" \(at (?:line (\d+), column (\d+)|end.*)\)$")
_STRING_OPEN = ('"""', "'''", '"', "'")


class TypedFloat(float):
    """A number that remembers how it was typed: ``0.40`` stays '0.40' in a sentence."""

    text: str

    def __new__(cls, text: str) -> TypedFloat:
        number = super().__new__(cls, text)
        number.text = text
        return number


class Lines:
    """Lines of the keys, tables and list items of a valid TOML text; looked for when the first is asked for.

    Parameters
    ----------
    text : str
        TOML that the parser has accepted.

    Examples
    --------
    >>> lines = Lines('[[site]]\\nname = "chin"\\n[[site.reading]]\\nforce_n = [\\n  1.2,\\n  1.3,\\n]')
    >>> lines.line(("site", 0, "reading", 0, "force_n", 1)), lines.line(("site", 0, "no such key"))
    (6, 1)
    """

    def __init__(self, text: str) -> None:
        self._text = text.replace("\r\n", "\n")
        self._starts = [0] + [match.end() for match in re.finditer("\n", self._text)]
        self._lines: dict[FieldPath, int] = {(): 1}
        self._tables: dict[FieldPath, int] = {}
        self._at = 0
        self._is_read = False

    def read(self) -> None:
        """Look for them now."""
        if not self._is_read:
            self._is_read = True
            self._read_document()

    def line(self, path: FieldPath) -> int:
        """Line of what stands at `path`, or of the nearest table around it."""
        self.read()
        for length in range(len(path), -1, -1):
            if path[:length] in self._lines:
                return self._lines[path[:length]]
        return 1

    def _note(self, path: FieldPath) -> None:
        self._lines.setdefault(path, bisect.bisect_right(self._starts, self._at))

    def _skip(self, also: str = "") -> None:
        """Past blanks, comments and the characters of `also`."""
        while self._at < len(self._text):
            character = self._text[self._at]
            if character == "#":
                end = self._text.find("\n", self._at)
                self._at = len(self._text) if end < 0 else end
            elif character in " \t\n" or character in also:
                self._at += 1
            else:
                return

    def _read_document(self) -> None:
        table: FieldPath = ()
        self._skip()
        while self._at < len(self._text):
            if self._text.startswith("[", self._at):
                table = self._header()
            else:
                self._pair(table)
            self._skip()

    def _header(self) -> FieldPath:
        many = self._text.startswith("[[", self._at)
        start = self._at
        self._at += 2 if many else 1
        keys = self._keys()
        self._skip("]")
        end, self._at = self._at, start
        path: FieldPath = ()
        for place, key in enumerate(keys):
            path += (key,)
            if many and place == len(keys) - 1:
                self._tables[path] = self._tables.get(path, 0) + 1
            self._note(path)
            if path in self._tables:
                path += (self._tables[path] - 1,)
                self._note(path)
        self._at = end
        return path

    def _keys(self) -> list[str]:
        keys = []
        while True:
            self._skip(".")
            if self._text[self._at] in "\"'":
                start = self._at
                self._string()
                keys.append(str(tomllib.loads(f"key = {self._text[start : self._at]}")["key"]))
            else:
                match = _BARE_KEY.match(self._text, self._at)
                if match is None:
                    return keys
                keys.append(match.group())
                self._at = match.end()
            while self._text[self._at] in " \t":
                self._at += 1
            if self._text[self._at] != ".":
                return keys

    def _pair(self, table: FieldPath) -> None:
        start = self._at
        keys = self._keys()
        end, self._at = self._at, start
        for length in range(1, len(keys) + 1):
            self._note((*table, *keys[:length]))
        self._at = end
        self._skip("=")
        self._value((*table, *keys))

    def _value(self, path: FieldPath) -> None:
        opening = self._text[self._at]
        if opening in "\"'":
            self._string()
        elif opening == "[":
            self._items(path, "]")
        elif opening == "{":
            self._items(path, "}")
        else:
            while self._at < len(self._text) and self._text[self._at] not in ",]}#\n":
                self._at += 1

    def _items(self, path: FieldPath, closing: str) -> None:
        self._at += 1
        self._skip(",")
        index = 0
        while self._text[self._at] != closing:
            if closing == "}":
                self._pair(path)
            else:
                self._note((*path, index))
                self._value((*path, index))
            index += 1
            self._skip(",")
        self._at += 1

    def _string(self) -> None:
        quote = next(mark for mark in _STRING_OPEN if self._text.startswith(mark, self._at))
        self._at += len(quote)
        while not self._text.startswith(quote, self._at):
            self._at += 2 if quote[0] == '"' and self._text[self._at] == "\\" else 1
        self._at += len(quote)
        while len(quote) == 3 and self._text.startswith(quote[0], self._at):  # a quote may stand before the closing
            self._at += 1


@dataclass(frozen=True)
class TomlFile(ParsedFile):
    """What a TOML file says, and where.

    Parameters
    ----------
    name : str
        As it is called in sentences.
    data : dict
        As parsed; floats remember how they were typed.
    lines : Lines
        Where each field stands.
    """

    name: str
    data: dict[str, Any]
    lines: Lines

    def where(self, path: FieldPath) -> PlaceInFile:
        """File, line, and the field as the file calls it: ``player.toml, line 14, site "chin", force_gf``."""
        line = message(FilePlaces.line, number=self.lines.line(path))
        return (self.name, line, *_steps(self.data, path))


def _steps(data: Any, path: FieldPath) -> list[Text]:
    steps: list[Text] = []
    here = data
    for place, step in enumerate(path):
        if isinstance(step, str):
            here = here.get(step) if isinstance(here, dict) else None
            is_array_of_tables = isinstance(here, list) and any(isinstance(item, dict) for item in here)
            if not (is_array_of_tables and place + 1 < len(path)):
                steps.append(step)
        else:
            here = here[step] if isinstance(here, list) and step < len(here) else None
            if isinstance(here, dict):
                steps.append(_called(Name(str(path[place - 1])), step, here))
            else:
                steps.append(message(FilePlaces.value, number=step + 1))
    return steps


def _called(key: Name, index: int, table: dict[str, Any]) -> Message:
    """A table of an array by its name, its direction or its number."""
    for name in ("name", "file", "stick", "site", "landmark"):
        if isinstance(table.get(name), str):
            return message(FilePlaces.named, key=key, name=Name(shortened(table[name], 40)))
    for typed, value in table.items():
        parts = units.split_key(typed)
        if parts in (("direction", "deg"), ("direction", "rad")) and isinstance(value, int | float):
            unit: Literal["deg", "rad"] = "deg" if parts[1] == "deg" else "rad"
            return message(FilePlaces.towards, key=key, angle=Name(getattr(value, "text", str(value))), unit=unit)
    return message(FilePlaces.table, key=key, number=index + 1)


# Single words of the parser's own sentences, all of which stand in one, and what a person did. First match counts.
_SYNTAX: tuple[tuple[tuple[str, ...], Fault], ...] = (
    (("overwrite",), "key-twice"),
    (("Duplicate",), "key-twice"),
    (("declare",), "table-twice"),
    (("mutate",), "closed-table"),
    (("redefine",), "used-otherwise"),
    (("Illegal", "'\\n'"), "quote"),
    (("Unterminated",), "quote"),
    (("Expected", "'\"'"), "quote"),
    (("Expected", '"\'"'), "quote"),
    (("Unclosed", "array"), "list-open"),
    (("Unclosed", "inline"), "table-open"),
    (("table", "declaration"), "heading-open"),
    (("array", "declaration"), "list-heading-open"),
    (("Expected", "'='"), "equals"),
    (("Invalid", "statement"), "statement"),
    (("initial",), "key-sign"),
    (("Unescaped",), "backslash"),
    (("Illegal",), "sign"),
    (("Expected", "newline"), "rest"),
)
_DECIMAL_COMMA = re.compile(r"=\s*[-+]?\d+,\d+\s*(#.*)?$")
_BARE_WORD = re.compile(r"=\s*[A-Za-z][^\"'\[]*$")
_WITH_UNIT = re.compile(r"=\s*[-+]?[\d.]+\s*[A-Za-z]+[^=]*$")


def _syntax_problem(text: str, shown: str, refusal: str) -> Problem:
    lines = text.replace("\r\n", "\n").split("\n")
    match = _AT.search(refusal)
    number = int(match.group(1)) if match and match.group(1) else len(text.rstrip().replace("\r\n", "\n").split("\n"))
    typed = lines[number - 1] if number <= len(lines) else ""
    where = (shown, message(FilePlaces.line, number=number))
    line = Name(shortened(typed)) if typed.strip() else None
    found: Text = f"'{line}'" if line is not None else message(TomlFaults.end)
    if _DECIMAL_COMMA.search(typed):
        return Problem(where, found, message(TomlFaults.decimal_comma), message(TomlFaults.write_point))
    for words, fault in _SYNTAX:
        if all(word in refusal for word in words) and not (fault == "rest" and _WITH_UNIT.search(typed)):
            found = message(TomlFaults.found, typed=line, fault=fault)
            return Problem(where, found, message(TomlFaults.line), message(TomlFaults.remedy, fault=fault))
    if _WITH_UNIT.search(typed):
        return Problem(where, found, message(Expected.number_alone, unit=None), message(Remedies.unit_in_key))
    if _BARE_WORD.search(typed):
        return Problem(where, found, message(Expected.text, in_list=False), message(TomlFaults.quote_words))
    return Problem(where, found, message(TomlFaults.value), message(TomlFaults.check_value))


def parse_toml(text: str, shown: str) -> TomlFile:
    """A TOML text with its lines.

    Parameters
    ----------
    text : str
        All of the file.
    shown : str
        Its name in sentences.

    Raises
    ------
    BadInput
        Not TOML; the line and plain words say why.
    """
    try:
        data = tomllib.loads(text, parse_float=TypedFloat)
        lines = Lines(text)
        lines.read()
    except RecursionError as error:
        raise BadInput(
            Problem((shown,), message(TomlFaults.deep), message(TomlFaults.lists), message(TomlFaults.stray_brackets))
        ) from error
    except ValueError as error:  # TOMLDecodeError, and numbers or dates that Python itself refuses
        raise BadInput(_syntax_problem(text, shown, str(error))) from error
    return TomlFile(shown, data, lines)


def read_toml(path: FilePlace, shown: str, contents: Contents) -> TomlFile:
    """A TOML file with its lines; one that is held as what it says is taken as it is.

    Raises
    ------
    BadInput
        Missing, a folder, empty, not UTF-8, not TOML.
    """
    if isinstance(path, HeldPlace) and isinstance(path.says, TomlFile):
        return path.says
    return parse_toml(read_text(path, shown, contents), shown)
