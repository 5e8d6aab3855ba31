"""How much prose stands in the code outside the catalogue: texts with two words in a row, by file.

    python tests/catalogue/prose.py           what stands there now, and where
    python tests/catalogue/prose.py --write   record fewer; a file that is new in prose.json needs its reason, by hand

Not counted, since nobody reads it as a sentence: docstrings; statements to a database; markup; the fixed words of a
`Literal` (keys: a text of the catalogue says each); settings of other libraries by the name of their parameter; what an
error says that is a defect of the program, whose traceback only a developer reads. Such errors of `model` count: its
checks are read by whoever wrote the file.
"""

from __future__ import annotations

import ast
import json
import re
import sys
from collections.abc import Collection, Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SOURCE = ROOT / "src" / "stickwright"
RECORD = Path(__file__).with_name("prose.json")
TWO_WORDS = re.compile(r"[A-Za-z]{2,}[,;:]? [a-z]{2,}")
_STATEMENT = re.compile(
    r"^\s*(SELECT|INSERT|UPDATE|DELETE|CREATE|DROP|ALTER|SET|VACUUM|PRAGMA|GRANT|LOCK|COMMENT|DO)\b"
)
_MARKUP = re.compile(r"^<[a-z]+[ >]")
_DEFECTS = ("AssertionError", "KeyError", "RuntimeError", "TypeError", "ValueError")
_SETTINGS = ("bbox_to_anchor", "comment", "loc", "textcoords", "xycoords")
"""Parameters of matplotlib and of SQLAlchemy: where a legend stands, what a table of the database is for."""


def keys(tree: ast.AST) -> set[str]:
    """Fixed words: what stands in a `Literal`."""
    return {
        one.value
        for node in ast.walk(tree)
        if isinstance(node, ast.Subscript) and isinstance(node.value, ast.Name) and node.value.id == "Literal"
        for one in ast.walk(node.slice)
        if isinstance(one, ast.Constant) and isinstance(one.value, str)
    }


def _unread(node: ast.AST, defects: bool) -> Iterator[ast.AST]:
    """Parts of a statement or call that are no text to anybody."""
    body = getattr(node, "body", None)
    for one in body if isinstance(body, list) else ():
        if isinstance(one, ast.Expr) and isinstance(one.value, ast.Constant):
            yield one.value  # docstrings, also of attributes
    if isinstance(node, ast.JoinedStr):
        yield from (part for part in ast.walk(node) if part is not node)
    if isinstance(node, ast.Call):
        yield from (part for word in node.keywords if word.arg in _SETTINGS for part in ast.walk(word.value))
    if isinstance(node, ast.Assert) and node.msg is not None:
        yield from ast.walk(node.msg)
    error = node.exc.func if isinstance(node, ast.Raise) and isinstance(node.exc, ast.Call) else None
    if defects and isinstance(error, ast.Name) and error.id in _DEFECTS:
        yield from ast.walk(node)


def prose(tree: ast.AST, known: Collection[str] = (), *, defects: bool = True) -> list[tuple[int, str]]:
    """Line and text of everything with two words or more in a row; an f-string is one text.

    Parameters
    ----------
    tree : AST
    known : collection of str
        Keys, which are no prose.
    defects : bool, default True
        Whether built-in errors are read by developers only.
    """
    skipped = {id(part) for node in ast.walk(tree) for part in _unread(node, defects)}
    found = []
    for node in ast.walk(tree):
        if id(node) in skipped:
            continue
        if isinstance(node, ast.JoinedStr):
            text = "{}".join(str(part.value) for part in node.values if isinstance(part, ast.Constant))
        elif isinstance(node, ast.Constant) and isinstance(node.value, str):
            text = node.value
        else:
            continue
        if TWO_WORDS.search(text) and text not in known and not _STATEMENT.match(text) and not _MARKUP.match(text):
            found.append((node.lineno, text))
    return sorted(found)


def texts() -> dict[str, list[tuple[int, str]]]:
    """Line and text of all prose by file, from the source's folder; files without any left out."""
    trees = {path: ast.parse(path.read_text(encoding="utf-8")) for path in sorted(SOURCE.rglob("*.py"))}
    known = set().union(*(keys(tree) for tree in trees.values()))
    found = {}
    for path, tree in trees.items():
        if path.is_relative_to(SOURCE / "catalogue") or path.is_relative_to(SOURCE / "codes"):
            continue
        told = prose(tree, known, defects=not path.is_relative_to(SOURCE / "model"))
        if told:
            found[path.relative_to(SOURCE).as_posix()] = told
    return found


def now() -> dict[str, int]:
    """Number of texts by file."""
    return {name: len(told) for name, told in texts().items()}


def recorded() -> dict[str, tuple[int, str]]:
    """Number of texts that may stand in a file, and why they are no text of the catalogue."""
    found: dict[str, list[object]] = json.loads(RECORD.read_text(encoding="utf-8"))
    return {name: (int(str(count)), str(why)) for name, (count, why) in found.items()}


def main(write: bool) -> None:
    """Print what stands there, or record it: a number that fell, a file that has none any more. Nothing is ever added."""
    there, before = texts(), recorded()
    for name, told in there.items():
        print(f"{name}: {before.get(name, (0, ''))[0]} recorded")
        for line, text in told:
            print(f"  {line}: {text[:100]!r}")
    print(f"{sum(map(len, there.values()))} texts in {len(there)} files")
    if write:
        kept = {name: [min(count, len(there[name])), why] for name, (count, why) in before.items() if name in there}
        RECORD.write_text(json.dumps(kept, indent=1) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main("--write" in sys.argv[1:])
