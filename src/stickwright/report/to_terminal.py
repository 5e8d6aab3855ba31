"""The report on a terminal: sections as titles with indented lines, tables in columns no wider than what they hold."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from stickwright.catalogue import say
from stickwright.codes.message import Text
from stickwright.codes.plan_report import ColumnCode, SectionCode
from stickwright.codes.reports import Reports
from stickwright.codes.wiring_pages import WiringPages
from stickwright.report.printed import sentence, wrapped
from stickwright.report.tell import tell
from stickwright.report.view import (
    Bar,
    Block,
    CautionBlock,
    Cell,
    FactBlock,
    LineBlock,
    Paragraph,
    Report,
    Section,
    Table,
)

__all__ = ["WIDTH", "cell_text", "columns_words", "lines_words", "screen_words", "section_words", "table_words"]

WIDTH = 80
_GAP = 2
_SCREEN_COLUMNS: tuple[ColumnCode, ...] = ("action", "control", "chance", "effort")
_UNTITLED: tuple[SectionCode, ...] = ("answer", "clash", "controls", "to_order", "parts")
"""Sections that open with words that say what they are."""


def screen_words(report: Report, width: int = WIDTH) -> str:
    """One screen: what everybody is shown.

    Parameters
    ----------
    report : Report
        Of a finished plan.
    width : int, default 80
        Columns of the terminal.
    """
    head = [say(report.head)] if report.what_if is None else [say(report.what_if), say(report.head)]
    parts = [wrapped(head, width), *(_first(section, width) for section in report.first)]
    return "\n\n".join(part for part in parts if part) + "\n"


def _first(section: Section, width: int) -> str:
    """A section of the screen: the answer and what clashes without a heading, for they open with what they are."""
    if section.code == "to_order":
        told = wrapped(
            [say(text) for one in section.blocks if isinstance(one, LineBlock) for text in one.texts], width, "", "  "
        )
    elif section.code == "cautions":  # under that heading nothing need say what it is
        cautions = [
            say(text) for one in section.blocks if isinstance(one, CautionBlock | LineBlock) for text in one.texts
        ]
        told = lines_words(cautions, width)
    else:
        told = "\n".join(one for block in section.blocks if (one := _block(block, width, _SCREEN_COLUMNS)))
    return told if section.code in _UNTITLED else f"{say(section.title)}\n{told}"


def section_words(report: Report, code: SectionCode, width: int = WIDTH) -> str:
    """One section under its heading; empty where the plan has nothing to tell there.

    Parameters
    ----------
    report : Report
        Of a finished plan.
    code : str
        Of the section.
    width : int, default 80
        Columns of the terminal.
    """
    section = report.section(code)
    if section is None:
        return ""
    title = [] if code in _UNTITLED else [say(section.title)]
    return "\n".join((*title, *(_block(one, width, ()) for one in section.blocks)))


def _block(block: Block, width: int, columns: tuple[ColumnCode, ...]) -> str:
    if isinstance(block, Paragraph):
        return wrapped([sentence(one) for one in block.texts], width)
    if isinstance(block, CautionBlock):
        return lines_words([tell(Reports.caution, text=one) for one in block.texts], width)
    if isinstance(block, LineBlock):
        lines = lines_words(_numbered(block), width)
        return f"{say(block.title)}\n{lines}" if block.title is not None else lines
    if isinstance(block, FactBlock):
        return lines_words([tell(Reports.setting, step=label, told=value) for label, value in block.rows], width)
    if isinstance(block, Table):
        notes = [*_row_notes(block), *([say(block.note)] if block.note is not None else [])]
        shown = columns or tuple(column.code for column in block.columns if column.code != "note")
        told = (say(block.caption), table_words(block, shown, width), lines_words(notes, width))
        return "\n".join(one for one in told if one)
    return ""  # a picture: its table says the same


def _row_notes(table: Table) -> list[str]:
    """The notes of rows, which are too long for a column, each as a line that opens with the row's own name."""
    notes = table.only("note").rows
    return [
        tell(WiringPages.noted, part=cell_text(row[0]), note=cell_text(note[0]))
        for row, note in zip(table.rows, notes, strict=True)
        if note and note[0] is not None
    ]


def _numbered(block: LineBlock) -> list[str]:
    if not block.numbered:
        return [say(one) for one in block.texts]
    return [f"{number}. {sentence(one)}" for number, one in enumerate(block.texts, start=1)]


def lines_words(lines: Sequence[str], width: int = WIDTH) -> str:
    """Lines under a heading, those that go on a little further in.

    Parameters
    ----------
    lines : sequence of str
    width : int, default 80
        Columns of the terminal.
    """
    return wrapped(lines, width, "  ", "    ")


def table_words(table: Table, codes: tuple[ColumnCode, ...] = (), width: int = WIDTH) -> str:
    """A table in columns, some of them where they are named.

    Parameters
    ----------
    table : Table
    codes : tuple of str, default ()
        Columns to print; all that hold something where none are named.
    width : int, default 80
        Columns of the terminal.
    """
    table = table.only(*(codes or tuple(column.code for column in table.columns)))
    heads = [say(column.title) for column in table.columns]
    return columns_words([heads, *([say(cell_text(cell)) for cell in row] for row in table.rows)], width)


def cell_text(cell: Cell) -> Text:
    """What a cell says; nothing for an empty one."""
    return cell.text if isinstance(cell, Bar) else cell or ""


def columns_words(rows: Sequence[Sequence[str]], width: int = WIDTH) -> str:
    """Rows of cells, the widest column giving way first; a row takes as many lines as its longest cell.

    Parameters
    ----------
    rows : sequence of sequence of str
        The heads first.
    width : int, default 80
        Columns of the terminal.
    """
    wanted = [max(len(row[at]) for row in rows) for at in range(len(rows[0]))]
    room = width - _GAP * len(wanted)
    widths = list(wanted)
    while sum(widths) > room:
        widths[widths.index(max(widths))] -= 1
    widths = [_used(rows, at, wide) for at, wide in enumerate(widths)]
    spare = max(range(len(wanted)), key=lambda at: wanted[at] - widths[at])
    widths[spare] = min(wanted[spare], widths[spare] + room - sum(widths))
    return "\n".join(line for row in rows for line in _row(row, widths))


def _used(rows: Sequence[Sequence[str]], at: int, wide: int) -> int:
    """How much of a column's width its longest line takes."""
    return max(len(line) for row in rows for line in _wrapped(row[at], wide))


def _wrapped(cell: str, wide: int) -> list[str]:
    return textwrap.wrap(cell, wide, break_on_hyphens=False) or [""]


def _row(row: Sequence[str], widths: Sequence[int]) -> list[str]:
    cells = [_wrapped(cell, wide) for cell, wide in zip(row, widths, strict=True)]
    tall = max(len(cell) for cell in cells)
    lines = (
        (" " * _GAP).join(
            (cell[at] if at < len(cell) else "").ljust(wide) for cell, wide in zip(cells, widths, strict=True)
        )
        for at in range(tall)
    )
    return [f"{' ' * _GAP}{line}".rstrip() for line in lines]
