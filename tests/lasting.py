"""What a result must be to last: no number in it that JSON cannot hold."""

from __future__ import annotations

import dataclasses
import math
from collections.abc import Iterator
from typing import Any

import numpy as np
from pydantic import BaseModel


def parts(result: Any) -> Iterator[tuple[str, Any]]:
    """What a result is made of, each part with its name; nothing for a number, a text or an array."""
    if isinstance(result, BaseModel):
        yield from ((f".{name}", getattr(result, name)) for name in type(result).model_fields)
    elif dataclasses.is_dataclass(result):
        yield from ((f".{field.name}", getattr(result, field.name)) for field in dataclasses.fields(result))
    elif isinstance(result, dict):
        yield from ((f"[{key!r}]", value) for key, value in result.items())
    elif isinstance(result, tuple | list | frozenset):
        yield from ((f"[{place}]", one) for place, one in enumerate(result))
    elif not isinstance(result, str | int | float | bool | np.number | np.bool_ | np.ndarray | None):
        raise TypeError(f"{type(result).__name__}: how is it kept?")


def not_finite(result: Any, path: str = "") -> Iterator[tuple[str, float]]:
    """Every number that is none or has no end, with where it stands; an array of samples may have empty cells."""
    if isinstance(result, float | np.floating) and not math.isfinite(result):
        yield path, float(result)
    for name, part in parts(result):
        yield from not_finite(part, f"{path}{name}")
