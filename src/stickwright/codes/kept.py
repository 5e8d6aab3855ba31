"""A message read back from JSON: the topic's own signature says what each parameter is."""

from __future__ import annotations

import functools
import inspect
import re
import typing
from collections.abc import Mapping
from importlib import import_module

from pydantic import TypeAdapter

from stickwright.codes.message import Message, module_of

__all__ = ["message_of"]


def message_of(data: object) -> Message:
    """The message that was kept.

    Parameters
    ----------
    data : object
        A mapping: ``code``, and every parameter by its name, as `stickwright.files.results.as_data` writes it.

    Raises
    ------
    ValueError
        No message, one that this version does not know, or other parameters than it has.

    Examples
    --------
    >>> message_of({"code": "Cautions.forbidden_grip", "site": "chin", "note": "no pinching"}).params
    (('note', 'no pinching'), ('site', 'chin'))
    """
    if isinstance(data, Message):
        return data
    if not isinstance(data, Mapping) or not isinstance(data.get("code"), str):
        raise ValueError("expected a message")
    code = data["code"]
    kinds = _parameters(code)
    given = {str(name): value for name, value in data.items() if name != "code"}
    if given.keys() != kinds.keys():
        raise ValueError(f"{code}: found {', '.join(given) or 'nothing'}, expected {', '.join(kinds) or 'nothing'}")
    return Message(code, tuple(sorted((name, kinds[name].validate_python(value)) for name, value in given.items())))


@functools.cache
def _parameters(code: str) -> Mapping[str, TypeAdapter[typing.Any]]:
    topic, _, text = code.partition(".")
    topic = re.sub("Doubts$", "Warnings", topic)  # as plans of before 2026-12 name them
    try:
        written = getattr(getattr(import_module(f"stickwright.codes.{module_of(topic)}"), topic), text)
    except (ImportError, AttributeError) as unknown:
        raise ValueError(f"{code}: not a message of this version") from unknown
    hints = typing.get_type_hints(written)
    return {name: TypeAdapter(hints[name]) for name in inspect.signature(written).parameters if name != "self"}
