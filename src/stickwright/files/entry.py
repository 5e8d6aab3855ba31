"""What somebody types into a form, turned into what a file of a case may hold.

A number is kept as it was typed, and its unit is chosen beside it; several repeats stand in one field with blanks between them.
A comma is a decimal sign or a separator depending on where one grew up: where it could be either, it is asked.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from stickwright import units
from stickwright.codes.expected import Expected
from stickwright.codes.file_keys import FileKeys
from stickwright.codes.found import Found
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.remedies import Remedies
from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.files.editing import Numeral
from stickwright.files.fields import FieldShape, fields_of, typed_keys
from stickwright.files.plain_text import shortened
from stickwright.model.measured import Measured, canonical_key

__all__ = ["LONGEST", "entered", "shown", "typed_numbers"]

LONGEST = 2000
"""Characters in one field."""
_NUMBER = re.compile(r"[+-]?(?:\d+(?:\.\d*)?|\.\d+)")
_YES, _NO = ("yes", "true", "on", "1"), ("no", "false", "off", "0")


def typed_numbers(text: str) -> tuple[Numeral, ...]:
    """The numbers in a field.

    Parameters
    ----------
    text : str
        Blanks or semicolons between them; a decimal point, or a decimal comma where there is no doubt.

    Raises
    ------
    BadInput
        Something that is no number, or a comma that could mean two things; `where` is left to the caller.

    Examples
    --------
    >>> typed_numbers("41  45.50; 38")
    ('41', '45.50', '38')
    >>> typed_numbers("0,44 0,51")
    ('0.44', '0.51')
    """
    if len(text) > LONGEST:
        raise BadInput(_too_long(text, message(Remedies.repeats_only)))
    parts = [part for part in re.split(r"[\s;]+|,(?=\s)", text.strip()) if part]
    if len(parts) == 1 and "," in parts[0]:
        _refuse_comma(parts[0])
    numbers = []
    for part in parts:
        number = part.replace(",", ".") if part.count(",") == 1 else part
        if not _NUMBER.fullmatch(number):
            raise _no(part, message(Expected.number, unit=None), message(Remedies.spaces_between))
        sign, digits = ("-" if number.startswith("-") else ""), number.lstrip("+-")
        whole, point, rest = digits.partition(".")
        numbers.append(Numeral(f"{sign}{whole.lstrip('0') or '0'}{point and '.'}{rest or ('0' if point else '')}"))
    return tuple(numbers)


def _refuse_comma(part: str) -> None:
    pieces = part.split(",")
    if len(pieces) == 2 and pieces[0] in ("0", "-0", "+0", "") and pieces[1]:
        return  # 0,44 can hardly be two readings
    several, one = Name(" ".join(pieces)), Name(".".join(pieces[:2]))
    raise _no(
        part, message(Expected.clear_comma), message(Remedies.say_comma, several=several, count=len(pieces), one=one)
    )


def _no(typed: str, wanted: Message, remedy: Text = "") -> BadInput:
    return BadInput(Problem((), f'"{shortened(typed, 30)}"', wanted, remedy))


def _too_long(text: str, remedy: Message) -> Problem:
    found, wanted = message(Found.characters, count=len(text)), message(Expected.at_most, characters=LONGEST)
    return Problem((), found, wanted, remedy)


def entered(model: type[Measured], form: Mapping[str, str], *, where: tuple[Text, ...] = ()) -> dict[str, Any]:
    """The fields of one table from a form, ready for `editing.with_fields`.

    Parameters
    ----------
    model : type
        The noun that the table is.
    form : mapping
        Typed key -> text. An empty field takes its key away, in all units; fields of the model that the form does not hold
        are left alone. Tables inside the table are not edited here.
    where : tuple of Message or str
        Said before the field: a site, one of its readings.

    Returns
    -------
    dict
        Key -> value or None; the same number under another unit is taken away.

    Raises
    ------
    BadInput
        All fields that cannot be read, at once; `where` of each ends in the key.

    Examples
    --------
    >>> from stickwright.model.player import DirectionReading
    >>> entered(DirectionReading, {"direction_deg": "90", "force_gf": "41 45", "reach_mm": ""})["force_gf"]
    ['41', '45']
    """
    shapes = fields_of(model)
    out: dict[str, Any] = {}
    problems: list[Problem] = []
    for key, text in form.items():
        name = canonical_key(key, model.model_fields)
        shape = shapes.get(name)
        if shape is None or shape.kind == "table":
            known = [typed for field in model.model_fields for typed in typed_keys(model, field)]
            found = message(FileKeys.field, typed=Name(shortened(key, 40)))
            problems.append(Problem(where, found, message(FileKeys.known_field), did_you_mean(key, known)))
            continue
        out |= dict.fromkeys(typed_keys(model, name))
        try:
            value = _value(shape, text)
        except BadInput as refused:
            problems += refused.inside((*where, key)).problems
            continue
        out[key] = value
    if problems:
        raise BadInput(problems)
    return out


def _value(shape: FieldShape, text: str) -> Any:
    text = text.strip()
    if not text:
        return None
    if len(text) > LONGEST:
        raise BadInput(_too_long(text, message(Remedies.shorter)))
    if shape.kind in ("number", "whole"):
        numbers = typed_numbers(text)
        if shape.kind == "whole" and any("." in number for number in numbers):
            raise _no(text, message(Expected.whole_number))
        if shape.many:
            return list(numbers)
        if shape.count is not None:
            if len(numbers) != shape.count:
                raise _no(text, message(Expected.numbers, count=shape.count, spaced=True))
            return list(numbers)
        if len(numbers) != 1:
            raise _no(text, message(Expected.numbers, count=1, spaced=False))
        return numbers[0]
    if shape.kind == "yes-no":
        if text.casefold() in _YES + _NO:
            return text.casefold() in _YES
        raise _no(text, message(Expected.yes_or_no))
    if shape.many or shape.count is not None:
        return [part.strip() for part in re.split(r"[\n;]+", text) if part.strip()]
    return " ".join(text.split())


def shown(model: type[Measured], name: str, table: Mapping[str, Any]) -> tuple[str, str]:
    """A field of a table as a form shows it.

    Parameters
    ----------
    model : type
        The noun that the table is.
    name : str
        Declared field.
    table : mapping
        As parsed from the file.

    Returns
    -------
    key : str
        Under which it was typed; in the unit that people read where it was not.
    text : str
        Its value, empty where there is none.

    Examples
    --------
    >>> from stickwright.model.player import DirectionReading
    >>> shown(DirectionReading, "force_n", {"force_gf": [41, 45.5]}), shown(DirectionReading, "reach_m", {})
    (('force_gf', '41 45.5'), ('reach_mm', ''))
    """
    keys = typed_keys(model, name)
    key = next((one for one in keys if one in table), None)
    if key is None:
        quantity = units.quantity_of(name) if len(keys) > 1 else None
        key = name if quantity is None else f"{units.split_key(name)[0]}_{quantity.shown}"  # type: ignore[index]
        return key, ""
    value, joint = table[key], " " if fields_of(model)[name].kind in ("number", "whole") else "\n"
    return key, joint.join(_text(one) for one in value) if isinstance(value, list) else _text(value)


def _text(value: Any) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return str(getattr(value, "text", value))
