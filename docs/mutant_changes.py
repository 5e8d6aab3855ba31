"""One small wrong turn in a module's formulas, at each place where there can be one."""

from __future__ import annotations

import ast
from collections.abc import Callable, Container, Iterator
from dataclasses import dataclass, replace
from functools import partial
from typing import Any

OPERATORS: dict[type[ast.operator], ast.operator] = {
    ast.Add: ast.Sub(),
    ast.Sub: ast.Add(),
    ast.Mult: ast.Div(),
    ast.Div: ast.Mult(),
    ast.Pow: ast.Mult(),
    ast.FloorDiv: ast.Div(),
    ast.Mod: ast.Mult(),
}
COMPARISONS: dict[type[ast.cmpop], tuple[ast.cmpop, ...]] = {
    ast.Lt: (ast.LtE(), ast.Gt()),
    ast.LtE: (ast.Lt(), ast.GtE()),
    ast.Gt: (ast.GtE(), ast.Lt()),
    ast.GtE: (ast.Gt(), ast.LtE()),
    ast.Eq: (ast.NotEq(),),
    ast.NotEq: (ast.Eq(),),
    ast.Is: (ast.IsNot(),),
    ast.IsNot: (ast.Is(),),
    ast.In: (ast.NotIn(),),
    ast.NotIn: (ast.In(),),
}
PAIRS = ("min max", "any all", "sin cos", "floor ceil", "minimum maximum", "argmin argmax")
OTHER_FUNCTION = {one: two for pair in PAIRS for one, two in (pair.split(), pair.split()[::-1])}
SELF_ALONE = ("abs", "sqrt", "radians", "degrees", "hypot", "log", "exp")
"""Functions that a mutant leaves away, their first argument alone staying."""
EITHER_WAY = ("hypot", "isclose", "allclose", "isinstance")
"""Functions whose first two arguments are not swapped: it makes no difference, or says nothing."""


LOOKS = (
    *(
        "alpha",
        "bold",
        "color",
        "columnspacing",
        "ec",
        "fc",
        "fill",
        "fontsize",
        "fontweight",
        "frameon",
        "handlelength",
    ),
    *(
        "handletextpad",
        "labelpad",
        "labelsize",
        "linewidth",
        "lw",
        "mec",
        "mew",
        "ms",
        "ncols",
        "pad",
        "rx",
        "solid_capstyle",
    ),
    *("stroke", "stroke_linecap", "stroke_linejoin", "stroke_width", "zorder"),
)
"""Arguments that only say how a thing looks; they are left alone."""
NO_FORMULA = ("annotation", "returns", "decorator_list", "format_spec")
"""Parts of a node that are not looked into."""


@dataclass(frozen=True)
class Mutant:
    """One change of one module.

    Attributes
    ----------
    name
        The function it is in, what stood there and what stands there now; it stays the same when other lines change.
    first, last
        Lines of the statement that is changed.
    compiled
        Whether it is in a function that is compiled, so that nothing sees its lines run.
    source
        The module with the change, without its comments; empty where it was not asked for.
    """

    name: str
    first: int
    last: int
    compiled: bool
    source: str


def is_text(node: ast.AST) -> bool:
    """Whether an expression is a text as written."""
    if isinstance(node, ast.BinOp):
        return is_text(node.left) or is_text(node.right)
    return isinstance(node, ast.JoinedStr) or (isinstance(node, ast.Constant) and isinstance(node.value, str))


def other_number(value: object) -> object:
    """Another number in the place of one; another answer in the place of yes or no."""
    if isinstance(value, bool):
        return not value
    if isinstance(value, int):
        return value + 1
    return value * 1.25 if value else 1.0  # type: ignore[operator]


def replacements(node: ast.AST) -> Iterator[tuple[str, Any]]:
    """What could stand in a part of the node instead: the part's name and its other value."""
    match node:
        case ast.BinOp(left=left, op=op, right=right) if type(op) in OPERATORS and not is_text(node):
            yield "op", OPERATORS[type(op)]
            if isinstance(op, ast.Add | ast.Sub):
                yield "", left
                yield "", right
        case ast.AugAssign(op=op) if type(op) in OPERATORS and not is_text(node.value):
            yield "op", OPERATORS[type(op)]
        case ast.Compare(ops=[op, *others]):
            for other in COMPARISONS[type(op)]:
                yield "ops", [other, *others]
        case ast.BoolOp(op=op):
            yield "op", ast.Or() if isinstance(op, ast.And) else ast.And()
        case ast.UnaryOp(op=ast.USub() | ast.Not(), operand=operand):
            yield "", operand
        case ast.IfExp(test=test) | ast.If(test=test) if not isinstance(test, ast.Compare | ast.UnaryOp):
            yield "test", ast.UnaryOp(ast.Not(), test)
        case ast.Constant(value=bool() | int() | float() as value):
            yield "value", other_number(value)
        case ast.Call():
            yield from other_calls(node)


def other_calls(node: ast.Call) -> Iterator[tuple[str, Any]]:
    """Arguments swapped or left out, another function, none at all."""
    called = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
    if called in OTHER_FUNCTION:
        named = OTHER_FUNCTION[called]
        same = isinstance(node.func, ast.Attribute)
        yield "func", ast.Attribute(node.func.value, named, ast.Load()) if same else ast.Name(named, ast.Load())  # type: ignore[union-attr]
    if called in SELF_ALONE and node.args and not isinstance(node.args[0], ast.Starred):
        yield "", node.args[0]
    starred = any(isinstance(one, ast.Starred) for one in node.args)
    if called not in (*OTHER_FUNCTION, *EITHER_WAY) and len(node.args) > 1 and not starred:
        first, second, *others = node.args
        if not (ast.dump(first) == ast.dump(second) or is_text(first) or is_text(second)):
            yield "args", [second, first, *others]
    for place, keyword in enumerate(node.keywords):
        if keyword.arg and keyword.arg not in LOOKS and not is_text(keyword.value):
            yield "keywords", [*node.keywords[:place], *node.keywords[place + 1 :]]


def is_formula(node: ast.AST) -> bool:
    """Whether to look into a node: not texts of refusals, assertions, types, what is brought in, or how a thing looks."""
    if isinstance(node, ast.Raise | ast.Assert | ast.Import | ast.ImportFrom):
        return False
    if isinstance(node, ast.keyword) and node.arg in LOOKS:
        return False
    refusal = isinstance(node, ast.Call) and getattr(node.func, "id", "") in ("Problem", "TypeVar", "NewType", "field")
    return not refusal


def mutants(source: str, wanted: Container[str] = ()) -> Iterator[Mutant]:
    """Every mutant of a module, one by one, in the order of its text; the changed module with those wanted, by name.

    Examples
    --------
    >>> [one.name for one in mutants("def far(a, b):\\n    return a - b")]
    ['far: a - b -> a + b', 'far: a - b -> a', 'far: a - b -> b']
    >>> next(mutants("far = 2 * 3", {"module: 2 * 3 -> 2 / 3"})).source
    'far = 2 / 3'
    """
    tree = ast.parse(source)
    seen: dict[str, int] = {}
    for spot in spots(tree, tree, lambda _: None, Place()):
        for part, value in replacements(spot.node):
            before = ast.unparse(spot.shown)
            old = getattr(spot.node, part) if part else spot.node
            put = partial(setattr, spot.node, part) if part else spot.put
            put(value)
            name = f"{spot.place.path}: {short(before, ast.unparse(spot.shown if part else value))}"
            seen[name] = seen.get(name, 0) + 1
            name += f" (no. {seen[name]})" if seen[name] > 1 else ""
            at = spot.place
            yield Mutant(name, at.first, at.last, at.compiled, ast.unparse(tree) if name in wanted else "")
            put(old)


@dataclass(frozen=True)
class Place:
    """Where a node is: the function or class, first and last line of the statement, whether numba compiles it."""

    path: str = "module"
    first: int = 0
    last: int = 0
    compiled: bool = False

    def inside(self, node: ast.AST) -> Place:
        """Where the parts of a node are; of a statement with a body, the lines of its head alone."""
        place = self
        if isinstance(node, ast.FunctionDef | ast.ClassDef):
            path = node.name if self.path == "module" else f"{self.path}.{node.name}"
            compiled = any("njit" in ast.unparse(one) for one in node.decorator_list)
            place = replace(place, path=path, compiled=self.compiled or compiled)
        if isinstance(node, ast.stmt):
            body = getattr(node, "body", None)
            last = body[0].lineno - 1 if isinstance(body, list) else node.end_lineno or node.lineno
            place = replace(place, first=node.lineno, last=max(last, node.lineno))
        return place


@dataclass(frozen=True)
class Spot:
    """A node where there may be changes, the one it stands in, what puts another there, and where that is."""

    node: ast.AST
    parent: ast.AST
    put: Callable[[object], None]
    place: Place

    @property
    def shown(self) -> ast.AST:
        """What to show of it: a number alone says little."""
        whole = isinstance(self.parent, ast.expr | ast.keyword | ast.Assign | ast.Return)
        if isinstance(self.node, ast.Constant) and whole:
            return self.parent
        return self.node.test if isinstance(self.node, ast.If) else self.node


def spots(node: ast.AST, parent: ast.AST, put: Callable[[object], None], outside: Place) -> Iterator[Spot]:
    """The nodes of a module where there may be changes, outer ones first."""
    if not is_formula(node):
        return
    place = outside.inside(node)
    if place.first:
        yield Spot(node, parent, put, place)
    for name, value in ast.iter_fields(node):
        if name in NO_FORMULA or (name == "slice" and is_text(value)):
            continue
        if isinstance(value, list):
            for at, one in enumerate(value):
                if isinstance(one, ast.AST):
                    yield from spots(one, node, partial(value.__setitem__, at), place)
        elif isinstance(value, ast.AST):
            yield from spots(value, node, partial(setattr, node, name), place)


def short(before: str, after: str, most: int = 100) -> str:
    """What stood there and what stands there now, on one line; of long texts the part that differs."""
    one, other = (" ".join(text.split()) for text in (before, after))
    if max(len(one), len(other)) > most:
        pairs = enumerate(zip(one, other, strict=False))
        start = max(0, next((place for place, (a, b) in pairs if a != b), most) - most // 3)
        one, other = (f"… {text[start : start + most]} …" for text in (one, other))
    return f"{one} -> {other}"
