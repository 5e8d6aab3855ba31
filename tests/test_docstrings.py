"""What the docstrings promise: parameters as they are, sources that can be found, examples that run."""

from __future__ import annotations

import ast
import dataclasses
import doctest
import importlib
import inspect
import pkgutil
import re
from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest
from numpy.typing import ArrayLike
from pydantic import BaseModel

import stickwright

SOURCES = Path(__file__).parents[1] / "docs"
HEADING = re.compile(r"^(\w[\w ]*)\n-{3,}$", re.MULTILINE)
KEY = re.compile(r"\[([a-z]+[a-z0-9]*(?:-[a-z0-9]+)+|[a-z]+[0-9]+)\]")
ARRAYS = re.compile(r"\b(ArrayLike|Array|NDArray\[np\.float64\])(?!\w)")
NUMBERS = re.compile(r"\b(float|Estimate|Array|NDArray\[np\.float64\])\b")
TELLING = re.compile(
    r"_(n|m|rad|s|hz|kg|nm|a|share|percent|bits|per_(min|s|m|rad)|low|high|fraction|ratio|sd|m3|nm_per_rad|n_per_m|mm)$|"
    r"^(mean|draws?)_"
)
"""Endings by which a number says what it is: a unit, or a share of what."""


TOPICS = re.compile(r"stickwright\.(codes\.(?!message$)\w+|catalogue\.\w+\.\w+)$")
"""Texts of the catalogue: each has a note, and parameters whose names carry their units (`tests/catalogue`)."""


def modules() -> list[str]:
    found = pkgutil.walk_packages(stickwright.__path__, "stickwright.")
    return [one.name for one in found if not one.name.endswith("__main__") and not TOPICS.match(one.name)]


MODULES = modules()
EDGES = ("stickwright.report", "stickwright.files", "stickwright.store", "stickwright.web", "stickwright.cli")
"""Here a sentence may do; in the core each array and each number whose name holds no unit is explained."""


def public(module: ModuleType) -> Iterator[tuple[str, Any]]:
    """Functions and classes of `__all__` that were written in this module."""
    for name in getattr(module, "__all__", ()):
        thing = getattr(module, name)
        if (inspect.isfunction(thing) or inspect.isclass(thing)) and thing.__module__ == module.__name__:
            yield name, thing


def documented(docstring: str | None) -> list[str] | None:
    """Names of the Parameters section, in order; None when there is none."""
    text = inspect.cleandoc(docstring or "")
    parts = HEADING.split(text)
    sections = dict(zip(parts[1::2], parts[2::2], strict=True))
    if "Parameters" not in sections:
        return None
    heads = [line for line in sections["Parameters"].splitlines() if line and not line[0].isspace()]
    return [name.strip().lstrip("*") for head in heads for name in head.split(" : ")[0].split(",")]


def parameters(thing: Any) -> list[str]:
    """Names that a caller may give."""
    if dataclasses.is_dataclass(thing):
        return [field.name for field in dataclasses.fields(thing) if field.init]
    if getattr(thing, "_is_protocol", False):  # nobody makes one
        return []
    return [name for name in inspect.signature(thing).parameters if name not in ("self", "cls")]


def inherited(thing: Any) -> set[str]:
    """Fields that a record has from another one, which documents them."""
    bases = thing.__mro__[1:] if inspect.isclass(thing) else ()
    return {field.name for base in bases if dataclasses.is_dataclass(base) for field in dataclasses.fields(base)}


def unexplained(thing: Any, names: list[str]) -> list[str]:
    """Parameters that their name and type do not explain: an array wants its shape, a number its unit or meaning."""
    signature = inspect.signature(thing).parameters
    kinds = {name: str(signature[name].annotation) for name in names}
    return [
        name
        for name, kind in kinds.items()
        if ARRAYS.search(kind)
        or (NUMBERS.search(kind) and not TELLING.search(name))
        or kind == str(inspect.Parameter.empty)
    ]


@lru_cache
def tree(module: str) -> ast.Module:
    return ast.parse(inspect.getsource(importlib.import_module(module)))


def attributes(module: str, name: str) -> dict[str, tuple[str, bool]]:
    """Annotated fields of a class: what they are, and whether a string below says it in words."""
    (body,) = (node.body for node in tree(module).body if isinstance(node, ast.ClassDef) and node.name == name)
    out = {}
    for place, node in enumerate(body):
        if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
            after = body[place + 1] if place + 1 < len(body) else None
            told = isinstance(after, ast.Expr) and isinstance(after.value, ast.Constant)
            out[node.target.id] = (ast.unparse(node.annotation), told)
    return out


def strings(module: str) -> Iterator[tuple[int, str]]:
    """Every docstring, those below constants and fields too."""
    for node in ast.walk(tree(module)):
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant) and isinstance(node.value.value, str):
            yield node.lineno, node.value.value


@lru_cache
def known_keys() -> frozenset[str]:
    pages = [SOURCES / "sources.md"]
    return frozenset(key for page in pages for key in re.findall(r"^- \[([^\]]+)\]", page.read_text(), re.MULTILINE))


def lacks(module: ModuleType, name: str, thing: Any) -> list[str]:
    """What is missing of one function or class, in words."""
    where = f"{module.__name__}.{name}"
    if not inspect.getdoc(thing) or not thing.__doc__:
        return [f"{where}: no docstring"]
    is_model = inspect.isclass(thing) and issubclass(thing, BaseModel)
    is_record = inspect.isclass(thing) and (dataclasses.is_dataclass(thing) or is_model or hasattr(thing, "_fields"))
    told = documented(thing.__doc__)
    if told is None and is_record:
        silent = [
            field
            for field, (kind, said) in attributes(module.__name__, name).items()
            if NUMBERS.search(kind) and not said and not TELLING.search(field)
        ]
        silent = [] if is_model or module.__name__.startswith(EDGES) else silent
        return [f"{where}: number '{field}' has neither a unit nor a docstring" for field in silent]
    given = [one for one in parameters(thing) if one not in inherited(thing)]
    if told is None and module.__name__.startswith(EDGES):
        return []
    if told is None:
        open_ = unexplained(thing, given)
        return [f"{where}: no Parameters section for {', '.join(open_)}"] if open_ else []
    said_below = (
        {field for field, (_, said) in attributes(module.__name__, name).items() if said} if is_record else set()
    )
    out = [f"{where}: '{missing}' is not documented" for missing in given if missing not in {*told, *said_below}]
    return out + [f"{where}: '{extra}' is documented and does not exist" for extra in told if extra not in given]


@pytest.mark.parametrize("module", MODULES)
def test_parameters_are_documented_as_they_are(module: str) -> None:
    """What a function takes is what its docstring says it takes, no more and no less."""
    found = importlib.import_module(module)
    missing = [line for name, thing in public(found) for line in lacks(found, name, thing)]
    assert not missing, "\n".join(missing)


@pytest.mark.parametrize("module", MODULES)
def test_sources_can_be_found(module: str) -> None:
    """Every [key] in a docstring stands in docs/sources.md with author, title and place."""
    lost = [
        f"{module}, line {line}: [{key}] is not in docs/sources.md"
        for line, text in strings(module)
        for key in KEY.findall(text)
        if key not in known_keys()
    ]
    assert not lost, "\n".join(lost)


@pytest.mark.parametrize("module", MODULES)
def test_examples_run(module: str) -> None:
    """What an example prints is what the function gives."""
    found = importlib.import_module(module)
    runner = doctest.DocTestRunner(optionflags=doctest.NORMALIZE_WHITESPACE, verbose=False)
    told: list[str] = []
    for example in doctest.DocTestFinder(exclude_empty=True).find(found, module):
        runner.run(example, out=told.append)
    assert runner.failures == 0, "".join(told)


class TestTheseChecks:
    """The checks themselves must be able to fail."""

    def test_a_wrong_name_is_told(self) -> None:
        def push(angle_rad: float, height_m: float) -> float:
            """Force.

            Parameters
            ----------
            angle_rad, length_m : float
                Deflection.
            """
            return angle_rad * height_m

        found = ModuleType("made.up")
        assert lacks(found, "push", push) == [
            "made.up.push: 'height_m' is not documented",
            "made.up.push: 'length_m' is documented and does not exist",
        ]

    def test_an_array_and_a_number_want_words(self) -> None:
        def push(path: ArrayLike, height: float, reach_m: float, name: str) -> None:
            """Force."""

        found = ModuleType("made.up")
        assert lacks(found, "push", push) == ["made.up.push: no Parameters section for path, height"]

    def test_a_lost_source_is_told(self) -> None:
        assert KEY.findall("Source: [hibbeler-statics], contrast [wcag22], place [0], list [k].") == [
            "hibbeler-statics",
            "wcag22",
        ]
        assert "hibbeler-statics" in known_keys()
        assert "nobody-1900" not in known_keys()

    def test_every_module_is_walked(self) -> None:
        assert {"stickwright.planning.plan", "stickwright.mechanics.fit", "stickwright.trace.rest"} <= set(MODULES)


def test_every_citation_stands_once() -> None:
    """One line a source, in order of its key; and none that nobody names."""
    page = (SOURCES / "sources.md").read_text(encoding="utf-8")
    keys = re.findall(r"^- \[([^\]]+)\]", page, re.MULTILINE)
    assert keys == sorted(set(keys))
    named = "".join(
        path.read_text(encoding="utf-8")
        for room in ("src", "tests", "examples")
        for path in (SOURCES.parent / room).rglob("*.py")
    )
    assert [key for key in keys if f"[{key}]" not in named and f"[{key}]" not in page.replace(f"- [{key}]", "")] == []
