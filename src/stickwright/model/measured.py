"""What all validated nouns share: unit endings on keys, repeats as lists, plausible ranges.

A noun declares its fields in SI (``force_n``). What is typed may use any unit of the same
kind (``force_gf``); the number is converted here, once.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from typing import Any, ClassVar

from pydantic import BaseModel, BeforeValidator, ConfigDict, model_validator
from pydantic_core import PydanticCustomError, core_schema

from stickwright import units

__all__ = ["ONE_OR_MORE", "Measured", "Plausible", "canonical_key", "is_retired"]


def canonical_key(key: str, fields: Collection[str]) -> str:
    """The declared field that a typed key means, or the key itself when it means none.

    Parameters
    ----------
    key : str
        As typed.
    fields : collection of str
        Names of the declared fields.

    Examples
    --------
    >>> canonical_key("force_gf", {"force_n": None})
    'force_n'
    """
    if key in fields:
        return key
    for same in units.units_of(key):
        if same in fields:
            return same
    return key


def _converted(value: Any, ending: str) -> Any:
    """Numbers, and numbers inside lists, to SI; anything else is left for the field to refuse."""
    if isinstance(value, bool):
        return value
    if isinstance(value, int | float):
        try:
            return units.to_si(float(value), ending)
        except OverflowError:  # a whole number that no float holds: as refused as an infinite one
            return math.inf
    if isinstance(value, list | tuple):
        return [_converted(item, ending) for item in value]
    return value


class Measured(BaseModel):
    """A frozen noun whose numbers carry their unit in the key when typed, and are SI inside."""

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False, use_attribute_docstrings=True)

    retired: ClassVar[tuple[str, ...]] = ()
    """Fields that files of earlier versions may still hold: read over, and told to the reader, never refused."""

    @model_validator(mode="before")
    @classmethod
    def _to_si(cls, data: Any) -> Any:
        if not isinstance(data, Mapping):
            return data
        given: dict[str, str] = {}
        out: dict[str, Any] = {}
        for key, value in data.items():
            if is_retired(str(key), cls):
                continue
            field = canonical_key(str(key), cls.model_fields)
            if field in given:
                raise PydanticCustomError(
                    "given_twice",
                    "{first} and {second} mean the same number",
                    {"first": given[field], "second": key},
                )
            given[field] = str(key)
            parts = units.split_key(str(key))
            is_number = field in cls.model_fields and parts is not None and units.quantity_of(field) is not None
            out[field] = _converted(value, parts[1]) if is_number and parts else value
        return out


def is_retired(key: str, model: type[Measured]) -> bool:
    """Whether a typed key belongs to a field that the program no longer has.

    Parameters
    ----------
    key : str
        As typed, in any unit.
    model : type
        The noun whose table holds it.
    """
    return canonical_key(key, model.retired) in model.retired


@dataclass(frozen=True)
class Plausible:
    """A range outside which a number is refused, in SI; the sentence shows it in the unit that was typed.

    Parameters
    ----------
    low, high : float
        Ends, in SI, both allowed.
    """

    low: float
    high: float

    def __get_pydantic_core_schema__(self, source: Any, handler: Any) -> core_schema.CoreSchema:
        def check(value: float) -> float:
            if not self.low <= value <= self.high:
                raise PydanticCustomError(
                    "implausible", "expected {low} to {high} (SI)", {"low": self.low, "high": self.high}
                )
            return value

        return core_schema.no_info_after_validator_function(check, handler(source))

    def __get_pydantic_json_schema__(self, schema: Any, handler: Any) -> dict[str, Any]:
        found: dict[str, Any] = handler(schema)
        found.update(minimum=self.low, maximum=self.high)
        return found


def _as_list(value: Any) -> Any:
    return value if isinstance(value, list | tuple) else [value]


ONE_OR_MORE = BeforeValidator(_as_list)
"""A list of repeats; one bare number is a list of one."""
