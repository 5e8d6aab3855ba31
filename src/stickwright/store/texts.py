"""Messages in the tables: kept as code and figures, read back as messages; words of an earlier version stay words."""

from __future__ import annotations

import json
from typing import Any

from stickwright.codes.message import Message, Name, Text, message, message_of
from stickwright.codes.trail import Trail

__all__ = ["entry_kept", "entry_read", "text_kept", "text_read"]

_CLOCK = "clock_stood_before"


def text_kept(text: Text) -> str:
    """A text for one column: JSON of a message; words as they are."""
    return text if isinstance(text, str) else json.dumps(_data(text), ensure_ascii=False)


def text_read(kept: str) -> Text:
    """A text as `text_kept` wrote it."""
    if not kept.startswith('{"code": '):
        return kept
    try:
        return message_of(json.loads(kept))
    except ValueError:
        return kept


def entry_kept(what: Text, clock_stood_before: str = "") -> tuple[str, str]:
    """An entry of the trail for its two columns: the code, so that it can be looked for, and the figures.

    Parameters
    ----------
    what : Message or str
    clock_stood_before : str
        Time of the entry before, where the clock has gone back since.
    """
    if isinstance(what, str):
        return what, ""
    figures = {name: value for name, value in _data(what).items() if name != "code"}
    if clock_stood_before:
        figures[_CLOCK] = clock_stood_before
    return what.code, json.dumps(figures, ensure_ascii=False) if figures else ""


def entry_read(what: str, detail: str) -> tuple[Text, str]:
    """An entry as `entry_kept` wrote it, with nothing beside it; one in words of an earlier version, with its detail."""
    try:
        figures = json.loads(detail or "{}")
        last = figures.pop(_CLOCK, "")
        told = message_of({"code": what, **figures})
    except (ValueError, AttributeError, TypeError):
        return what, detail
    return (message(Trail.clock_stood_before, what=told, last=Name(last)) if last else told), ""


def _data(text: Message) -> dict[str, Any]:
    return {"code": text.code, **{name: _data(one) if isinstance(one, Message) else one for name, one in text.params}}
