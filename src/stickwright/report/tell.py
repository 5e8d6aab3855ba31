"""Messages of the catalogue as the words of a page."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any, Concatenate, ParamSpec

from stickwright.catalogue import say
from stickwright.codes.message import Name, message

__all__ = ["named", "names", "tell"]

P = ParamSpec("P")


def tell(text: Callable[Concatenate[Any, P], str], /, *none: P.args, **params: P.kwargs) -> str:
    """A message of the catalogue in the words of the language that is spoken here.

    Parameters
    ----------
    text : function
        Abstract method of a topic: ``Family.seat``.
    *none
        Nothing: parameters are given by their names.
    **params
        As that method declares them.
    """
    return say(message(text, *none, **params))


def named(typed: str | None) -> Name | None:
    """What a person typed; None where nobody typed anything."""
    return Name(typed) if typed and typed.strip() else None


def names(typed: Iterable[str]) -> tuple[Name, ...]:
    """Several of the same, as they come."""
    return tuple(Name(one) for one in typed)
