"""What each declared field takes, read off the nouns themselves: for sentences, schemas and writing back."""

from __future__ import annotations

import types
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import BeforeValidator
from pydantic.fields import FieldInfo

from stickwright import units
from stickwright.model.measured import Measured, Plausible, canonical_key

__all__ = ["NONE", "FieldShape", "fields_of", "shape_of", "typed_key", "typed_keys", "typed_names"]

Kind = Literal["number", "whole", "yes-no", "words", "choice", "table"]
NONE = "none"
"""TOML has no word for nothing; where leaving a choice out stands for one of its words, this says that it has none."""
_PLAIN: dict[Any, Kind] = {float: "number", int: "whole", bool: "yes-no", str: "words"}


@dataclass(frozen=True)
class FieldShape:
    """What a field takes.

    Parameters
    ----------
    kind : str
        What one item is.
    many : bool
        A list of any length.
    count : int or None
        Length, when it is a list of fixed length.
    or_single : bool
        One bare item stands for a list of one.
    low, high : float or None
        Limits, SI.
    choices : tuple of str
        Words that may be chosen from.
    model : type or None
        The noun inside, when it is a table.
    shortest, longest : int or None
        Limits of the length of the words or the list.
    or_none : bool
        The word "none" may be typed: leaving the key out would mean something else.
    """

    kind: Kind
    many: bool = False
    count: int | None = None
    or_single: bool = False
    low: float | None = None
    high: float | None = None
    choices: tuple[str, ...] = ()
    model: type[Measured] | None = None
    shortest: int | None = None
    longest: int | None = None
    or_none: bool = False


def _with_limits(shape: FieldShape, metadata: Any) -> FieldShape:
    for item in metadata:
        if isinstance(item, FieldInfo):  # Annotated[int, Field(ge=2)] inside an optional
            shape = _with_limits(shape, item.metadata)
        elif isinstance(item, Plausible):
            shape = replace(shape, low=item.low, high=item.high)
        elif isinstance(item, BeforeValidator):
            shape = replace(shape, or_single=True)
        for name, part in (("ge", "low"), ("le", "high"), ("min_length", "shortest"), ("max_length", "longest")):
            if getattr(item, name, None) is not None:
                shape = replace(shape, **{part: getattr(item, name)})
    return shape


def _shape(annotation: Any) -> FieldShape:
    origin = get_origin(annotation)
    if origin is Annotated:
        inner, *metadata = get_args(annotation)
        return _with_limits(_shape(inner), metadata)
    if origin in (Union, types.UnionType):
        first, *others = [_shape(item) for item in get_args(annotation) if item is not type(None)]
        assert all(first.kind == shape.kind == "choice" for shape in others)  # only words can be of several kinds
        return replace(first, choices=tuple(word for shape in (first, *others) for word in shape.choices))
    if origin is tuple:
        items = get_args(annotation)
        if len(items) == 2 and items[1] is Ellipsis:
            return replace(_shape(items[0]), many=True)
        return replace(_shape(items[0]), count=len(items))
    if origin is Literal:
        return FieldShape("choice", choices=tuple(str(item) for item in get_args(annotation)))
    if isinstance(annotation, type) and issubclass(annotation, Measured):
        return FieldShape("table", model=annotation)
    return FieldShape(_PLAIN[annotation])


def shape_of(field: FieldInfo) -> FieldShape:
    """What a declared field takes."""
    shape = _with_limits(_shape(field.annotation), field.metadata)
    may_lack = type(None) in get_args(field.annotation) and not field.is_required() and field.default is not None
    return replace(shape, or_none=may_lack and shape.kind == "choice")


def fields_of(model: type[Measured]) -> dict[str, FieldShape]:
    """All declared fields of a noun."""
    return {name: shape_of(field) for name, field in model.model_fields.items()}


def typed_keys(model: type[Measured], name: str) -> tuple[str, ...]:
    """The keys that may be typed for a declared field, in all units."""
    numeric = shape_of(model.model_fields[name]).kind == "number"
    return units.units_of(name) if numeric else (name,)


def typed_names(model: type[Measured]) -> Iterator[str]:
    """All keys that may be typed in a table."""
    for name in model.model_fields:
        yield from typed_keys(model, name)


def typed_key(table: Any, model: type[Measured], name: str) -> str | None:
    """The key by which a table gives a declared field, if it does."""
    if not isinstance(table, dict):
        return None
    return next((key for key in table if canonical_key(key, model.model_fields) == name), None)
