"""Draw docs/architecture.svg: the rooms of the program, one above the other as `pyproject.toml` lays them down, each with its one line.

python docs/make_architecture.py
"""

from __future__ import annotations

import ast
import tomllib
from html import escape
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
SOURCE = ROOT / "src" / "stickwright"
PICTURE = Path(__file__).with_name("architecture.svg")
WIDE, TALL, GAP, LETTERS = 980, 62, 14, 58
"""Of the picture, a row, what is between rows, and letters on a line of a whole row."""


def layers() -> list[list[str]]:
    """Rooms from the top down; those of one row know nothing of each other."""
    contracts = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["tool"]["importlinter"][
        "contracts"
    ]
    return [[room.strip() for room in row.split("|")] for row in contracts[0]["layers"]]


def line_of(room: str) -> str:
    """What is in a room: the first sentence of its docstring."""
    path = SOURCE / room / "__init__.py"
    text = (
        ast.get_docstring(ast.parse((path if path.exists() else SOURCE / f"{room}.py").read_text(encoding="utf-8")))
        or ""
    )
    return text.split("\n\n")[0].replace("\n", " ").split(". ")[0].rstrip(".") + "."


def folded(text: str, letters: int) -> list[str]:
    """Words on lines of so many letters."""
    lines = [""]
    for word in text.split():
        if len(lines[-1]) + len(word) >= letters and lines[-1]:
            lines.append("")
        lines[-1] = f"{lines[-1]} {word}".strip()
    return lines


def drawn() -> str:
    """The picture as SVG."""
    rows = layers()
    high = len(rows) * (TALL + GAP) + GAP
    out = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDE} {high}" width="{WIDE}" role="img" aria-labelledby="t">',
        '<title id="t">The rooms of stickwright: each may use those below it, never those above or beside it</title>',
        f'<rect width="{WIDE}" height="{high}" fill="#ffffff"/>',
    ]
    for number, row in enumerate(rows):
        top, wide = GAP + number * (TALL + GAP), (WIDE - GAP * (len(row) + 1)) / len(row)
        for place, room in enumerate(row):
            left = GAP + place * (wide + GAP)
            out.append(
                f'<rect x="{left:.0f}" y="{top}" width="{wide:.0f}" height="{TALL}" rx="6" fill="#eef3f8" stroke="#2f4a66"/>'
            )
            name = f'<text x="{left + 12:.0f}" y="{top + 20}" font-family="sans-serif" font-size="15" font-weight="bold" fill="#14273a">'
            out.append(f"{name}{escape(room)}</text>")
            lines = folded(line_of(room), int(LETTERS * 2.5 / len(row)))[:3]
            for at, text in enumerate(lines):
                y = top + 36 + 12 * at if len(lines) > 2 else top + 38 + 15 * at
                out.append(
                    f'<text x="{left + 12:.0f}" y="{y}" font-family="sans-serif" font-size="{11 if len(lines) > 2 else 12}" '
                    f'fill="#14273a">{escape(text)}</text>'
                )
        if number + 1 < len(rows):
            y = top + TALL
            out.append(
                f'<path d="M{WIDE / 2:.0f} {y} v{GAP - 4} m-4 -5 l4 5 l4 -5" fill="none" stroke="#2f4a66" stroke-width="1.5"/>'
            )
    return "\n".join([*out, "</svg>"]) + "\n"


if __name__ == "__main__":
    PICTURE.write_text(drawn(), encoding="utf-8")
