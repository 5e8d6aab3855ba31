"""Samples of every message: the topics' own signatures say what may stand in each place."""

from __future__ import annotations

import importlib
import inspect
import itertools
import pkgutil
import types
import typing
from collections.abc import Callable, Iterator
from typing import Any

import stickwright.codes
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Message, Name, Topic

NAME = Name("Tarn's left-hand box")
NESTED = Message("Cautions.pain")


def topics() -> list[type[Topic]]:
    """Every topic class of the room of codes."""
    for module in pkgutil.iter_modules(stickwright.codes.__path__):
        importlib.import_module(f"stickwright.codes.{module.name}")
    found = (topic for topic in Topic.__subclasses__() if topic.__module__.startswith("stickwright.codes."))
    return sorted(found, key=lambda topic: topic.__name__)


def texts(topic: type[Topic]) -> dict[str, Callable[..., str]]:
    """Its texts, by name."""
    return {name: getattr(topic, name) for name in sorted(topic.__abstractmethods__)}


def kinds(text: Callable[..., str]) -> dict[str, Any]:
    """Type of each parameter of a text."""
    hints = typing.get_type_hints(text)
    return {name: hints[name] for name in inspect.signature(text).parameters if name != "self"}


def values(kind: Any) -> list[Any]:
    """Some values of a type: all of a short list of words, and numbers that plurals and signs turn on."""
    origin, inside = typing.get_origin(kind), typing.get_args(kind)
    if origin in (typing.Union, types.UnionType):
        members = [one for one in inside if one is not str or Message not in inside]
        return [value for one in members for value in values(one)]
    if origin is typing.Literal:
        return list(inside)
    if origin is tuple:
        one = values(inside[0])[0]
        return [(one,), (one, one)] if inside[-1] is Ellipsis else [tuple(values(each)[0] for each in inside)]
    simple: dict[Any, list[Any]] = {
        type(None): [None], bool: [False, True], int: [0, 1, 2, 5, 22], float: [0.3, 1.0, 2.5], Name: [NAME], str: [NAME],
        Message: [NESTED], Estimate: [Estimate(0.42, 0.31, 0.55), Estimate(0.42, 0.31, 0.55, assumed="x")],
    }  # fmt: skip
    if kind not in simple:
        raise TypeError(f"no sample for {kind}: give it one in tests/catalogue/samples.py")
    return simple[kind]


def samples(topic: type[Topic], name: str) -> Iterator[Message]:
    """Messages of one text: every value of each parameter in turn, the others at their first."""
    places = kinds(texts(topic)[name])
    choices = {place: values(kind) for place, kind in places.items()}
    first = {place: some[0] for place, some in choices.items()}
    seen = set()
    for place, value in itertools.chain([("", None)], ((at, one) for at, some in choices.items() for one in some)):
        given = first | ({place: value} if place else {})
        made = Message(f"{topic.__name__}.{name}", tuple(sorted(given.items())))
        if made not in seen:
            seen.add(made)
            yield made
