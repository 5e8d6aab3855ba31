"""No function takes, and no call passes, more figures by their place than a reader can keep apart."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

SOURCE = Path(__file__).resolve().parents[1] / "src" / "stickwright"
MOST = 6
"""By place; whatever comes after has its name in the call."""
IN_A_ROW = {
    "sa.Table": "its columns",
    "op.create_table": "its columns",
    "sa.select": "columns",
    "_HEAD.pack": "the fields of the bytes, in the order of the table above it",
}
"""Functions of other packages that take any number of things of one kind."""

Function = ast.FunctionDef | ast.AsyncFunctionDef


def functions(tree: ast.AST, *, of_class: bool = False) -> Iterator[tuple[Function, int]]:
    """Every function, with how many parameters can be given by place: its own object not counted."""
    for node in ast.iter_child_nodes(tree):
        if isinstance(node, Function):
            static = any(isinstance(one, ast.Name) and one.id == "staticmethod" for one in node.decorator_list)
            yield node, len(node.args.posonlyargs) + len(node.args.args) - (of_class and not static)
            yield from functions(node)
        elif not isinstance(node, ast.expr):
            yield from functions(node, of_class=isinstance(node, ast.ClassDef) or of_class)


def variadic(tree: ast.AST) -> set[str]:
    """Names of functions that take any number of things of one kind."""
    return {node.name for node, _ in functions(tree) if node.args.vararg is not None}


def too_many(text: str) -> list[str]:
    """Functions and calls of a module with too much by place."""
    tree = ast.parse(text)
    rows = {*IN_A_ROW, *variadic(tree)}
    found = [f"{node.lineno} def {node.name}: {count}" for node, count in functions(tree) if count > MOST]
    calls = [node for node in ast.walk(tree) if isinstance(node, ast.Call)]
    found += [
        f"{call.lineno} {ast.unparse(call.func)}: {len(call.args)}"
        for call in calls
        if len(call.args) > MOST and ast.unparse(call.func) not in rows
    ]
    return found


@pytest.mark.parametrize("path", sorted(SOURCE.rglob("*.py")), ids=lambda path: str(path.relative_to(SOURCE)))
def test_at_most_six_by_place(path: Path) -> None:
    """Compiled functions too: what belongs together is a small tuple with names."""
    assert not too_many(path.read_text(encoding="utf-8"))


def test_a_seventh_is_found() -> None:
    """In a function, in a method beside its object, and in a call; by name there may be as many as there are."""
    assert too_many("def f(a, b, c, d, e, f, /, g): ...") == ["1 def f: 7"]
    assert too_many("class A:\n    def f(self, a, b, c, d, e, f, *, g): ...") == []
    assert too_many("class A:\n    async def f(self, a, b, c, d, e, f, g): ...") == ["2 def f: 7"]
    assert too_many("f(1, 2, 3, 4, 5, 6, 7)\nf(1, 2, 3, 4, 5, 6, g=7)") == ["1 f: 7"]
    assert too_many("def row(*cells): ...\nrow(1, 2, 3, 4, 5, 6, 7)") == []
