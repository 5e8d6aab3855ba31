"""How much prose stands in the code outside the catalogue: texts with two words in a row, by file.

    python tests/catalogue/prose.py           what stands there now, and how much more or less than recorded
    python tests/catalogue/prose.py --write   record it; a file's number never rises

Not counted: docstrings, the catalogue itself, notes of the topics, database statements.
"""

from __future__ import annotations

import ast
import json
import re
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SOURCE = ROOT / "src" / "stickwright"
RECORD = Path(__file__).with_name("prose.json")
TWO_WORDS = re.compile(r"[A-Za-z]{2,}[,;:]? [a-z]{2,}")
_STATEMENT = re.compile(
    r"^\s*(SELECT|INSERT|UPDATE|DELETE|CREATE|DROP|ALTER|SET|VACUUM|PRAGMA|GRANT|LOCK|COMMENT|DO)\b"
)
_DOCUMENTED = (ast.Module, ast.ClassDef, ast.FunctionDef, ast.AsyncFunctionDef)


def prose(tree: ast.AST) -> int:
    """Texts of two words or more in a row; an f-string counts once."""
    skipped: set[int] = set()
    for node in ast.walk(tree):
        body = getattr(node, "body", None)
        for one in body if isinstance(body, list) else ():
            if isinstance(one, ast.Expr) and isinstance(one.value, ast.Constant):
                skipped.add(id(one.value))  # docstrings, also of attributes
        if isinstance(node, ast.JoinedStr):
            skipped |= {id(part) for part in ast.walk(node) if part is not node}
    count = 0
    for node in ast.walk(tree):
        if id(node) in skipped:
            continue
        if isinstance(node, ast.JoinedStr):
            text = "{}".join(str(part.value) for part in node.values if isinstance(part, ast.Constant))
        elif isinstance(node, ast.Constant) and isinstance(node.value, str):
            text = node.value
        else:
            continue
        count += bool(TWO_WORDS.search(text)) and not _STATEMENT.match(text)
    return count


def now() -> dict[str, int]:
    """Number of texts by file, from the source's folder; files without any left out."""
    found = {}
    for path in sorted(SOURCE.rglob("*.py")):
        if path.is_relative_to(SOURCE / "catalogue") or path.is_relative_to(SOURCE / "codes"):
            continue
        count = prose(ast.parse(path.read_text(encoding="utf-8")))
        if count:
            found[path.relative_to(SOURCE).as_posix()] = count
    return found


def recorded() -> dict[str, int]:
    """As it was when it was last written down."""
    found: dict[str, int] = json.loads(RECORD.read_text(encoding="utf-8"))
    return found


def main(write: bool) -> None:
    """Print the difference, or record it."""
    there, before = now(), recorded() if RECORD.exists() else {}
    for name in sorted(there.keys() | before.keys()):
        if there.get(name, 0) != before.get(name, 0):
            print(f"{name}: {before.get(name, 0)} -> {there.get(name, 0)}")
    print(f"{sum(there.values())} texts in {len(there)} files")
    if write:
        RECORD.write_text(json.dumps(there, indent=0) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main("--write" in sys.argv[1:])
