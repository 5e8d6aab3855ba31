"""A message: a code and the figures that belong to it, in SI units, as the names of its parameters say.

The code is the name of an abstract method of a `Topic`, so that a type checker knows every message, its parameters
and their types; a language implements the topic. A message is data: it is compared, kept and read back
without any language.
"""

from __future__ import annotations

import functools
import inspect
import re
import typing
from abc import ABC
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from importlib import import_module
from typing import TYPE_CHECKING, Any, Concatenate, ParamSpec

if TYPE_CHECKING:
    from pydantic import TypeAdapter

__all__ = ["Message", "Name", "Param", "Text", "Topic", "message", "message_of", "module_of", "replaced"]

P = ParamSpec("P")


class Name(str):
    """What a person typed: the name of a device, an action, a place. It is never translated, inflected or read."""

    __slots__ = ()

    def __new__(cls, typed: str) -> Name:
        """As it was typed."""
        return super().__new__(cls, typed)

    @classmethod
    def __get_pydantic_core_schema__(cls, source: Any, handler: Any) -> Any:
        """How it is read back: a string."""
        from pydantic_core import core_schema

        return core_schema.no_info_after_validator_function(cls, core_schema.str_schema())


Param = Any
"""None (an optional part left out), bool, int, float (SI, or a share), a fixed word, `Name`, `Estimate`, a `Message`, or a
tuple of such: hashable, and equal when read back from JSON."""


@dataclass(frozen=True)
class Message:
    """One thing to say.

    Parameters
    ----------
    code : str
        Topic and text: ``Cautions.neck``.
    params : tuple of (str, object)
        In alphabetical order, so that equal messages are equal.
    """

    code: str
    params: tuple[tuple[str, Param], ...] = ()

    @property
    def topic(self) -> str:
        """Name of the topic's class."""
        return self.code.partition(".")[0]

    @property
    def text(self) -> str:
        """Name of the text within its topic."""
        return self.code.partition(".")[2]

    def param(self, name: str) -> Param:
        """One of its parameters; raises KeyError where it has none of that name."""
        return dict(self.params)[name]

    def parts(self) -> Iterator[Message]:
        """Itself and every message nested in it."""
        yield self
        for _, value in self.params:
            for one in value if isinstance(value, tuple) else (value,):
                if isinstance(one, Message):
                    yield from one.parts()

    def __str__(self) -> str:
        """A message has no words of its own: printing one by mistake is a defect."""
        raise TypeError(f"{self.code} is to be said by a book of the catalogue, not printed")

    def __format__(self, spec: str) -> str:
        """The same inside an f-string."""
        return str(self)

    @classmethod
    def __get_pydantic_core_schema__(cls, source: Any, handler: Any) -> Any:
        """How it is read back: by `message_of`."""
        from pydantic_core import core_schema

        return core_schema.no_info_plain_validator_function(message_of)

    @classmethod
    def __get_pydantic_json_schema__(cls, schema: Any, handler: Any) -> dict[str, Any]:
        """What it looks like in JSON."""
        code = {"type": "string", "pattern": "^[A-Z][A-Za-z]*[.][a-z_0-9]+$"}
        return {"type": "object", "title": cls.__name__, "properties": {"code": code}, "required": ["code"]}


Text = Message | str
"""What is said somewhere: a message, or a sentence not yet in the catalogue."""


def message(text: Callable[Concatenate[Any, P], str], /, *none: P.args, **params: P.kwargs) -> Message:
    """A message of the catalogue, its parameters checked by the type checker.

    Parameters
    ----------
    text : function
        Abstract method of a topic: ``Cautions.pain``.
    *none
        Nothing: parameters are given by their names.
    **params
        As that method declares them.

    Examples
    --------
    >>> class Trays(Topic):
    ...     def slides(self, *, force_n: float) -> str: ...
    >>> message(Trays.slides, force_n=2.0)
    Message(code='Trays.slides', params=(('force_n', 2.0),))
    """
    del none  # keyword parameters only: the topics' signatures see to it
    return Message(text.__qualname__.rpartition("<locals>.")[2], tuple(sorted(params.items())))


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
def _parameters(code: str) -> Mapping[str, TypeAdapter[Any]]:
    from pydantic import TypeAdapter

    topic, _, text = code.partition(".")
    topic = re.sub("Doubts$", "Warnings", topic)  # as plans of before 2026-12 name them
    try:
        written = getattr(getattr(import_module(f"stickwright.codes.{module_of(topic)}"), topic), text)
    except (ImportError, AttributeError) as unknown:
        raise ValueError(f"{code}: not a message of this version") from unknown
    hints = typing.get_type_hints(written)
    return {name: TypeAdapter(hints[name]) for name in inspect.signature(written).parameters if name != "self"}


def replaced(text: Text, by: Callable[[Message], Message]) -> Text:
    """A text with other messages in the place of some that are nested in it.

    Parameters
    ----------
    text : Message or str
    by : callable
        What is said in place of each message: often that message itself.
    """

    def inside(value: Param) -> Param:
        if isinstance(value, tuple):
            return tuple(inside(one) for one in value)
        return replaced(value, by) if isinstance(value, Message) else value

    if isinstance(text, str):
        return text
    return by(Message(text.code, tuple((name, inside(value)) for name, value in text.params)))


def module_of(topic: str) -> str:
    """Module of a topic, the same here and in every language: ``MountChecks`` is in ``mount_checks``."""
    return "".join(f"_{sign.lower()}" if sign.isupper() else sign for sign in topic).lstrip("_")


class Topic(ABC):
    """Base of the topics: one class for each matter, one abstract method for each text.

    Parameters
    ----------
    writer : object
        How the language forms numbers, plurals and lists.
    say : callable
        Turns a nested message into text.
    """

    w: Any

    def __init__(self, writer: object, say: Callable[[Text], str]) -> None:
        self.w = writer
        self.say = say

    def clause(self, text: Text) -> str:
        """A text as it stands within a sentence: without its full stop."""
        return self.say(text).strip().rstrip(".")

    def because(self, why: Text | None) -> str:
        """Why a figure is not known, or has no interval, in brackets behind it; nothing where it has one."""
        return f" ({self.clause(why)})" if why is not None else ""
