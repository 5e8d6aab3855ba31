"""Why a file cannot be read, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name
from stickwright.codes.toml_faults import Fault, TomlFaults

__all__ = ["Texts"]

_DOUBLE = "Use double brackets, [[...]], if there are several."
_TOLD: dict[Fault, tuple[str, str]] = {
    "key-twice": ("this key is in the table already", "Give each key once; repeats go in a list."),
    "table-twice": ("this table was started above", _DOUBLE),
    "closed-table": ("a table written on one line and added to later", "Write it in one place."),
    "used-otherwise": ("this name was used above in another way", _DOUBLE),
    "quote": ("the closing quote is missing", 'Put " at both ends of the text.'),
    "list-open": (
        "the list is not closed",
        "Put a comma between values and ] at the end, on this line or the one above.",
    ),
    "table-open": ("the one-line table is not closed", "Close it with a curly bracket."),
    "heading-open": ("the heading has no closing ]", "Write [name] or [[name]]."),
    "list-heading-open": ("the heading has no closing ]]", "Write [[name]]."),
    "equals": ("the key has no =", "Write key = value."),
    "statement": ("neither key = value nor a [table] heading", "Put # in front of a comment."),
    "key-sign": ("the key begins with a symbol", "Keys are made of letters, digits and _."),
    "backslash": ("a backslash inside a text", "Write / in file names."),
    "sign": ("a character that is not allowed here", "Delete it and type it again."),
    "rest": ("something after the value", "Write one key = value on each line."),
}


class Texts(TomlFaults):
    """Lines that cannot be read."""

    w: English

    def found(self, *, typed: Name | None, fault: Fault) -> str:
        line = f"'{self.w.name(typed)}'" if typed is not None else self.end()
        return f"{line}: {_TOLD[fault][0]}"

    def end(self) -> str:
        return "the end of the file"

    def line(self) -> str:
        return "key = value, or a [table] heading"

    def value(self) -> str:
        return "a number, text in quotes, true, false or a list in [ ]"

    def remedy(self, *, fault: Fault) -> str:
        return _TOLD[fault][1]

    def check_value(self) -> str:
        return "Check for a missing value, comma or quote, on this line or the one above."

    def decimal_comma(self) -> str:
        return "a decimal point"

    def write_point(self) -> str:
        return "Write 0.44, not 0,44."

    def quote_words(self) -> str:
        return 'Write part = "chin". Yes and no are true and false.'

    def deep(self) -> str:
        return "brackets inside brackets, too many to read"

    def lists(self) -> str:
        return "lists of numbers"

    def stray_brackets(self) -> str:
        return "Check for stray brackets."
