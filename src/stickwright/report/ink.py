"""Black on white: lines, boxes, words that fit, flags and plugs, of which the drawing of the wiring is made."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import TYPE_CHECKING

from stickwright.catalogue import say
from stickwright.codes.message import message
from stickwright.codes.plugs import PlugKind, Plugs
from stickwright.model.plugs import conductors_of, is_usb

if TYPE_CHECKING:
    import drawsvg

__all__ = [
    "FLAG_MM",
    "FONT",
    "LINE_MM",
    "PLUG_MM",
    "TYPE_MM",
    "Ink",
    "fitted",
    "flag",
    "plug_symbol",
    "plug_words",
    "text_mm",
]

TYPE_MM, LINE_MM = 3.1, 3.9  # 8.8 points, on lines of 11
FLAG_MM, PLUG_MM = (8.4, 4.6), 8.0
FONT = "DejaVu Sans, sans-serif"  # of all drawings
_WIDTHS_EM = {
    **dict.fromkeys("ijl|'", 0.29), **dict.fromkeys(" .,:;", 0.34), **dict.fromkeys("frt()/-", 0.42),
    **dict.fromkeys("cszJ", 0.56), **dict.fromkeys("mwMW%+@…", 1.0),
}  # fmt: skip
_LETTER_EM, _CAPITAL_EM, _BOLD = 0.64, 0.79, 1.11


def text_mm(text: str, bold: bool = False) -> float:
    """About as wide as it will be printed, on the wide side."""
    em = sum(_WIDTHS_EM.get(letter, _CAPITAL_EM if letter.isupper() else _LETTER_EM) for letter in text)
    return em * TYPE_MM * (_BOLD if bold else 1.0)


def fitted(text: str, room_mm: float, most: int = 9, bold: bool = False) -> list[str]:
    """Lines that fit, broken between words, or inside one that is too long for any line; shortened after `most`.

    Examples
    --------
    >>> fitted("an extension lead of 1 m", 32.0)
    ['an extension lead', 'of 1 m']
    """
    lines = [""]
    for word in re.sub(r"(\d) (m|mm|mA)\b", "\\1\u00a0\\2", " ".join(text.split())).split(" "):
        while len(word) > 1 and text_mm(word, bold) > room_mm:
            cut = next(n for n in range(len(word) - 1, 0, -1) if n == 1 or text_mm(word[:n] + "-", bold) <= room_mm)
            lines += [f"{word[:cut]}-"]
            word = word[cut:]
        longer = f"{lines[-1]} {word}".strip()
        if text_mm(longer, bold) <= room_mm:
            lines[-1] = longer
        else:
            lines.append(word)
    lines = [line for line in lines if line]
    if len(lines) > most:
        rest = " ".join(lines[most - 1 :])
        while rest and text_mm(f"{rest}…", bold) > room_mm:
            rest = rest[:-1].rstrip(" ,")
        lines = [*lines[: most - 1], f"{rest}…"]
    return [line.replace("\u00a0", " ") for line in lines]


class Ink:
    """Black on white, in hundredths of a millimetre: the same text on every machine."""

    def __init__(self, drawing: drawsvg.Drawing) -> None:
        self._drawing = drawing

    def line(self, *points: tuple[float, float], dash: str = "", width: float = 0.6) -> None:
        import drawsvg

        flat = [round(number, 2) for point in points for number in point]
        more = {"stroke_dasharray": dash} if dash else {}
        self._drawing.append(drawsvg.Lines(*flat, fill="none", stroke="black", stroke_width=width, **more))

    def box(
        self, left: float, top: float, width: float, height: float, *, dash: str = "", round_mm: float = 0.0,
        fill: str = "white", line_mm: float = 0.3,
    ) -> None:  # fmt: skip
        import drawsvg

        numbers = [round(number, 2) for number in (left, top, width, height)]
        more = {"stroke_dasharray": dash} if dash else {}
        self._drawing.append(
            drawsvg.Rectangle(*numbers, rx=round_mm, fill=fill, stroke="black", stroke_width=line_mm, **more)
        )

    def words(self, text: str, at: tuple[float, float], *, bold: bool = False, anchor: str = "start") -> None:
        import drawsvg

        weight = {"font_weight": "bold"} if bold else {}
        x, y = (round(number, 2) for number in at)
        self._drawing.append(
            drawsvg.Text(text, TYPE_MM, x, y, text_anchor=anchor, font_family=FONT, fill="black", **weight)
        )

    def paragraph(self, lines: Sequence[str], left: float, middle: float, bold: int = 0) -> None:
        """Lines below each other about a height, the first so many bold."""
        top = middle - len(lines) * LINE_MM / 2
        for place, line in enumerate(lines):
            self.words(line, (left, top + LINE_MM * (place + 0.76)), bold=place < bold)


def flag(ink: Ink, left: float, middle: float, tag: str) -> None:
    """A tag as it is tied to the end of a cable."""
    wide, high = FLAG_MM
    ink.box(left, middle - high / 2, wide, high, line_mm=0.4)
    ink.words(tag, (left + wide / 2, middle + TYPE_MM * 0.36), bold=True, anchor="middle")


def plug_symbol(ink: Ink, left: float, middle: float, plug: str) -> None:
    """A handle and, pointing right, a flat tongue for USB or a pin with a ring for every contact but one."""
    if not plug:
        ink.line((left, middle), (left + PLUG_MM, middle))
        return
    ink.box(left, middle - 1.7, 2.6, 3.4, fill="black", round_mm=0.4)
    if is_usb(plug):
        ink.box(left + 2.6, middle - 1.4, PLUG_MM - 2.6, 2.8, round_mm=1.4 if plug == "USB-C" else 0.0)
        if plug != "USB-C":
            for place in (4.2, 6.0):
                ink.box(left + place, middle - 0.4, 0.8, 0.8, fill="black", line_mm=0.1)
        return
    thick = {"2.5": 1.2, "6.3": 2.6}.get(plug[:3], 1.8)
    ink.box(left + 2.6, middle - thick / 2, PLUG_MM - 2.6, thick, round_mm=0.5)
    for ring in range(len(conductors_of(plug)) - 1):
        ink.box(left + 3.5 + 1.35 * ring, middle - thick / 2, 0.5, thick, fill="black", line_mm=0.1)


def plug_words(plug: PlugKind) -> str:
    """How a plug's symbol is told from others.

    Examples
    --------
    >>> plug_words("3.5 mm 4-conductor")
    '3.5 mm four-pole jack (TRRS): 3 rings'
    """
    rings = 0 if is_usb(plug) else len(conductors_of(plug)) - 1
    return say(message(Plugs.drawn, plug=plug, rings=rings))
