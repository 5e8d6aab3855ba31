"""JSON Schema of a plan as it is written, from the types and the docstrings of its fields [json-schema]."""

from __future__ import annotations

import ast
import dataclasses
import inspect
import pkgutil
import textwrap
from importlib import import_module
from itertools import pairwise
from typing import Any

import stickwright.model
from stickwright.files.results import FORMAT, UNITS, kept_plan, label_of
from stickwright.model.plan import Plan
from stickwright.model.response import Tuning
from stickwright.model.wishes import Wishes

__all__ = ["plan_schema"]

_DRAFT = "https://json-schema.org/draft/2020-12/schema"
_BESIDES = {
    "Fit": ("label", {"type": "string", "description": inspect.getdoc(label_of)}),
    "Tuning": (
        "at_fault",
        {"type": "boolean", "description": inspect.getdoc(Tuning.faults)},
    ),
}
"""What is written besides the fields."""


def plan_schema() -> dict[str, Any]:
    """JSON Schema (draft 2020-12) of what `stickwright.files.results.plan_json` writes.

    Returns
    -------
    dict
        Every key of a result is required, since null stands for what is missing; no others are there.
    """
    found = kept_plan().json_schema(mode="serialization", by_alias=False)
    inner = found.pop("$defs")
    nouns = _results()
    for name, table in inner.items():
        _described(table, nouns.get(name))
        if name in _BESIDES:
            key, told = _BESIDES[name]
            table["properties"] = {key: told, **table["properties"]}
            table["required"] = [key, *table["required"]]
    _described(found, Plan)
    head = {
        "format": {"const": FORMAT},
        "units": {"const": UNITS},
        "what_if": {"type": "boolean", "description": inspect.getdoc(Wishes.what_if)},
    }
    return {
        "$schema": _DRAFT, "title": "Plan", "description": found["description"], "type": "object", "additionalProperties": False,
        "properties": {**head, **found["properties"]}, "required": [*head, *found["required"]], "$defs": inner,
    }  # fmt: skip


def _results() -> dict[str, type]:
    """Every class of the model, by its name."""
    modules = [
        import_module(f"stickwright.model.{one.name}") for one in pkgutil.iter_modules(stickwright.model.__path__)
    ]
    found = (noun for module in modules for noun in vars(module).values() if inspect.isclass(noun))
    return {noun.__name__: noun for noun in found if noun.__module__.startswith("stickwright.model.")}


def _described(table: dict[str, Any], noun: type | None) -> None:
    """A result's table with what its docstrings say, and nothing besides its keys."""
    told = _docstrings(noun) if noun is not None and dataclasses.is_dataclass(noun) else {}
    for name, one in table.get("properties", {}).items():
        one.pop("title", None)
        if name in told:
            table["properties"][name] = {"description": told[name], **one}
    if "properties" in table:
        table["additionalProperties"] = False
    if "description" in table:
        table["description"] = table["description"].partition("\n\n")[0].replace("\n", " ")


def _docstrings(noun: type) -> dict[str, str]:
    """Name of a field -> the string that stands below it."""
    (body,) = ast.parse(textwrap.dedent(inspect.getsource(noun))).body
    told = {}
    lines = body.body if isinstance(body, ast.ClassDef) else []
    for field, below in pairwise(lines):
        if isinstance(field, ast.AnnAssign) and isinstance(field.target, ast.Name) and isinstance(below, ast.Expr):
            text = ast.literal_eval(below.value) if isinstance(below.value, ast.Constant) else ""
            told[field.target.id] = " ".join(str(text).split())
    return told
