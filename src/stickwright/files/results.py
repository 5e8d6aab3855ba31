"""A plan as JSON, and a plan from it: everything in it, SI, in a fixed order.

What is missing is null, and an estimate says in `why` what is missing.
"""

from __future__ import annotations

import dataclasses
import functools
import json
import math
from collections.abc import Mapping
from typing import Any

import numpy as np
from pydantic import BaseModel, TypeAdapter, ValidationError

from stickwright.catalogue import say
from stickwright.codes.kept_plans import KeptPlans
from stickwright.codes.message import Message, Name, message
from stickwright.model.fit import Fit
from stickwright.model.measured import Measured
from stickwright.model.plan import Plan
from stickwright.model.response import Tuning

__all__ = [
    "FORMAT",
    "UNITS",
    "UnreadPlan",
    "as_data",
    "as_json",
    "kept_plan",
    "label_of",
    "plan_from_json",
    "plan_json",
    "read_json",
]

FORMAT = 3
"""Raised when a key changes its meaning or goes; a new key that may be left out does not raise it. Since 3 a plan can be read back;
before, null stood for what is missing, for what has no end and for what nothing loads alike."""

UNITS = "SI, named by the ending of each key; a share is 0 to 1"

_NAMED_BEFORE = {("bias", "rotation_rad"): "error_rotation_rad", ("tunings", "rotation_rad"): "output_rotation_rad"}
"""Keys of format 1 by where they stood: one name had two signs."""

_TREMOR_BEFORE = "rms"
"""Key of an earlier tremor: the size of the calm windows alone about the peak, or of the whole movement without one. It is
none of the sizes told today, so that none of them can be read from it."""
_TREMOR_SIZES = ("band_rms", "peak_rms", "excess_rms")
_OTHER_SIZE = message(KeptPlans.other_tremor)


def plan_json(plan: Plan) -> str:
    """The whole plan as JSON text, the same for the same plan.

    Parameters
    ----------
    plan : Plan
        A finished plan.

    Returns
    -------
    str
        Keys in the order of the plan's fields, SI units as the keys' endings say.
    """
    return as_json(plan, {"what_if": plan.wishes.what_if})


@functools.cache
def kept_plan() -> TypeAdapter[Plan]:
    """What reads a plan from JSON, made from the types of its fields."""
    return TypeAdapter(Plan)


def plan_from_json(text: str | bytes) -> Plan:
    """The plan that was written.

    Parameters
    ----------
    text : str or bytes
        As `plan_json` wrote it.

    Returns
    -------
    Plan
        Equal to the one that was written, and written again the same text.

    Raises
    ------
    UnreadPlan
        Another format than today's, or a part that today's plan does not have so.
    """
    try:
        found = _Head.model_validate_json(text).format
    except ValidationError:
        raise UnreadPlan(message(KeptPlans.no_plan)) from None
    if found != FORMAT:
        raise UnreadPlan(message(KeptPlans.other_format, kept=found, today=FORMAT))
    try:
        return kept_plan().validate_json(text)
    except ValidationError as unlike:
        place = ".".join(str(step) for step in unlike.errors(include_url=False)[0]["loc"])
        raise UnreadPlan(message(KeptPlans.other_parts, place=Name(place))) from unlike


class UnreadPlan(ValueError):
    """What was kept is no plan as it is written today.

    Parameters
    ----------
    why : Message
        One sentence.
    """

    def __init__(self, why: Message) -> None:
        super().__init__(why.code)
        self.why = why


class _Head(BaseModel):
    """The key that is read before the others."""

    format: int


def label_of(fit: Fit) -> str:
    """The set-up in words: stick, then what is on it."""
    return say(fit.named)


def as_json(result: Any, first: Mapping[str, Any] | None = None) -> str:
    """Any finished result (a plan, a bench, what a recording told) as JSON text.

    Parameters
    ----------
    result : object
        A result dataclass.
    first : mapping, optional
        Keys that stand before its own.

    Returns
    -------
    str
        Keys in the order of its fields, SI units as the keys' endings say.
    """
    data = {
        "format": FORMAT,
        "units": UNITS,
        **(first or {}),
        **as_data(result),
    }
    return json.dumps(data, ensure_ascii=False, indent=1, allow_nan=False) + "\n"


def read_json(text: str | bytes) -> dict[str, Any]:
    """A kept plan, bench or recording's report as data, with the keys of today.

    Parameters
    ----------
    text : str or bytes
        As this or an earlier version wrote it.

    Returns
    -------
    dict
        What was written; keys that have another name now have that name.

    Examples
    --------
    >>> read_json('{"format": 1, "bias": {"rotation_rad": {"value": 0.2}}}')
    {'format': 1, 'bias': {'error_rotation_rad': {'value': 0.2}}}
    """
    data: dict[str, Any] = json.loads(text)
    found: dict[str, Any] = _with_todays_keys(data, "", data.get("format", FORMAT) == 1)
    return found


def _with_todays_keys(value: Any, under: str, first_format: bool) -> Any:
    if isinstance(value, list):
        return [_with_todays_keys(item, under, first_format) for item in value]
    if not isinstance(value, dict):
        return value
    named = _NAMED_BEFORE if first_format else {}
    found = {named.get((under, key), key): _with_todays_keys(item, key, first_format) for key, item in value.items()}
    if under == "tremor" and _TREMOR_BEFORE in found and "band_rms" not in found:
        del found[_TREMOR_BEFORE]
        # Told by the keys alone: the size went while the format was still counted as 2.
        unknown = {
            "value": None,
            "low": None,
            "high": None,
            "level": 0.95,
            "n": 0,
            "assumed": None,
            "why": as_data(_OTHER_SIZE),
        }
        found |= {size: dict(unknown) for size in _TREMOR_SIZES}
    return found


def as_data(value: Any) -> Any:
    """Any result as plain JSON data.

    Parameters
    ----------
    value : object
        A result dataclass, an array, a tuple, a number or a text.

    Returns
    -------
    object
        Dicts, lists, texts, finite numbers, booleans and None.

    Examples
    --------
    >>> as_data((0.26, None)) == [0.26, None]
    True
    """
    if isinstance(value, Message):
        return {"code": value.code, **{name: as_data(one) for name, one in value.params}}
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        fields = {field.name: as_data(getattr(value, field.name)) for field in dataclasses.fields(value)}
        if isinstance(value, Tuning):
            return {"at_fault": bool(value.faults), **fields}
        return {"label": label_of(value), **fields} if isinstance(value, Fit) else fields
    if isinstance(value, Measured):
        return {name: as_data(getattr(value, name)) for name in type(value).model_fields}
    if isinstance(value, dict):
        return {str(key): as_data(item) for key, item in value.items()}
    if isinstance(value, np.ndarray):
        return as_data(value.tolist())
    if isinstance(value, tuple | list):
        return [as_data(item) for item in value]
    if isinstance(value, bool | np.bool_):
        return bool(value)
    if isinstance(value, float | np.floating):
        return float(value) if math.isfinite(value) else None
    if isinstance(value, np.integer):
        return int(value)
    return value
