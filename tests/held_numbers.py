"""The numbers of a result as they are held: one figure for each kind of place, and how two such lists differ.

All numbers that stand in like places (``fits[0].effort``, ``fits[1].effort``) are held as one sum in which each counts for its place,
so that one changed, one more, or two exchanged are noticed. A word, and which message is said, is held as a number made from its letters.
"""

from __future__ import annotations

import math
import zlib
from collections.abc import Iterator
from typing import Any

import numpy as np

from lasting import parts
from stickwright.codes.message import Message

RELATIVE, ABSOLUTE = 1e-5, 1e-9
"""What another machine's arithmetic may change, as a share of the sum without signs."""

NO_NUMBER = -1.5
"""What stands for one that is none or has no end: small, so that its share of the sum hides no change of another."""

Figures = dict[str, tuple[float, float]]
"""By path without places: the sum, and the same sum without signs."""


def figures(result: Any) -> Figures:
    """Every number and word of a result; of messages which one it is, and its parameters by their names."""
    gathered: dict[str, list[float]] = {}
    for path, value in _numbers(result, ""):
        gathered.setdefault(path, []).append(value)
    out = {}
    for path, values in gathered.items():
        held = np.asarray(values)
        held = np.where(np.isfinite(held), held, NO_NUMBER)
        weights = 1 + np.arange(1, held.size + 1) / (held.size + 1)
        out[path] = (float((weights * held).sum()), float((weights * np.abs(held)).sum()))
    return out


def _numbers(result: Any, path: str) -> Iterator[tuple[str, float]]:
    if isinstance(result, bool | np.bool_ | int | float | np.number):
        yield path, float(result)
    elif isinstance(result, str):
        yield f"{path} in words", _as_number(result)
    elif isinstance(result, np.ndarray):
        if result.dtype.kind in "fiub":
            yield from ((path, float(value)) for value in result.ravel())
    elif isinstance(result, frozenset):
        for one in sorted(result, key=repr):  # a set has no order of its own
            yield from _numbers(one, path)
    elif isinstance(result, Message):
        yield f"{path}/said", _as_number(result.text)
        for name, value in result.params:
            yield from _numbers(value, f"{path}/{name}")
    else:
        for name, part in parts(result):
            yield from _numbers(part, path if name.startswith("[") and name[1:-1].isdigit() else f"{path}{name}")


def _as_number(word: str) -> float:
    return float(zlib.crc32(word.encode()) % 10_007)


def differences(held: dict[str, float], today: Figures) -> list[str]:
    """Where the figures of today differ from those held: ``path: held -> today``."""
    out = []
    for path in [*held, *(path for path in today if path not in held)]:
        before, (now, size) = held.get(path), today.get(path, (None, 0.0))
        if before is None or now is None or not math.isclose(before, now, abs_tol=ABSOLUTE + RELATIVE * size):
            out.append(f"{path}: {before} -> {now if now is None else f'{now:.7g}'}")
    return out
