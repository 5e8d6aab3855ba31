"""The report as data: what is told of a plan, in which order, with the figure, table or caution that belongs to it.

`stickwright.report.gather.report_of` makes it once from a plan; terminal, page and sheet are renderings. Every text is a
`Message`, or the `Name` that a person typed, so that the same fact has the same words and digits everywhere: it is the same object.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass
from typing import Any, ClassVar, Literal

from stickwright.codes.message import Message, Text
from stickwright.codes.plan_report import ColumnCode, SectionCode
from stickwright.report.body import BodyMark

__all__ = [
    "Bar", "Block", "CautionBlock", "Cell", "Column", "FactBlock", "LineBlock", "Paragraph", "PictureBlock", "Report", "Section", "Table",
    "texts_in",
]  # fmt: skip


@dataclass(frozen=True)
class Paragraph:
    """One or more sentences that follow each other."""

    kind: ClassVar[str] = "paragraph"

    texts: tuple[Text, ...]
    strong: bool = False
    """Whether it is the answer itself."""


@dataclass(frozen=True)
class FactBlock:
    """Labels, each with what is known of it."""

    kind: ClassVar[str] = "facts"

    rows: tuple[tuple[Text, Text], ...]


@dataclass(frozen=True)
class Bar:
    """A share that may be drawn as a bar, and the words that stand beside it in any case."""

    kind: ClassVar[str] = "bar"

    text: Text
    share: float
    """From 0 to 1; more is drawn as 1."""
    limit_share: float | None = None
    """Where it must not get to."""


Cell = Text | Bar | None


@dataclass(frozen=True)
class Column:
    """One column; a rendering may leave out a column for which it has no room."""

    code: ColumnCode
    title: Text


@dataclass(frozen=True)
class Table:
    """Rows of cells; None is an empty cell."""

    kind: ClassVar[str] = "table"

    caption: Text
    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]
    note: Text | None = None
    """What must be known to read it."""

    def only(self, *codes: ColumnCode) -> Table:
        """The same table with some of its columns, in the order asked for; one without any cell is left out."""
        at = {column.code: place for place, column in enumerate(self.columns)}
        kept = [at[code] for code in codes if code in at and any(row[at[code]] is not None for row in self.rows)]
        rows = tuple(tuple(row[place] for place in kept) for row in self.rows)
        return Table(self.caption, tuple(self.columns[place] for place in kept), rows, self.note)


@dataclass(frozen=True)
class PictureBlock:
    """The player from the front with numbered controls, and the same in words."""

    kind: ClassVar[str] = "picture"

    alt: Message
    marks: tuple[BodyMark, ...]


@dataclass(frozen=True)
class CautionBlock:
    """Cautions that belong together."""

    kind: ClassVar[str] = "cautions"

    texts: tuple[Text, ...]


@dataclass(frozen=True)
class LineBlock:
    """One line for each; in a fixed order where `numbered`."""

    kind: ClassVar[str] = "lines"

    texts: tuple[Text, ...]
    numbered: bool = False
    title: Text | None = None


Block = Paragraph | FactBlock | Table | PictureBlock | CautionBlock | LineBlock


@dataclass(frozen=True)
class Section:
    """What is told under one heading."""

    code: SectionCode
    title: Text
    blocks: tuple[Block, ...]
    level: Literal["first", "folded"] = "first"
    """Whether everybody is shown it, or those who open it."""


@dataclass(frozen=True)
class Report:
    """A plan as it is told."""

    head: Message
    what_if: Message | None
    """The mark of a what-if."""
    sections: tuple[Section, ...]

    def section(self, code: SectionCode) -> Section | None:
        """One of its sections; None where the plan has nothing to tell there."""
        return next((one for one in self.sections if one.code == code), None)

    @property
    def first(self) -> tuple[Section, ...]:
        """What everybody is shown."""
        return tuple(one for one in self.sections if one.level == "first")

    def tables(self, code: SectionCode) -> tuple[Table, ...]:
        """The tables of one section."""
        section = self.section(code)
        return tuple(one for one in section.blocks if isinstance(one, Table)) if section is not None else ()


def texts_in(part: object) -> Iterator[object]:
    """Every text of a report, or of a part of one."""
    if isinstance(part, Message | str):
        yield part
    elif isinstance(part, tuple):
        for one in part:
            yield from texts_in(one)
    elif is_dataclass(part) and not isinstance(part, BodyMark):
        told: Any = part
        for one in fields(told):
            if one.name not in ("code", "level"):
                yield from texts_in(getattr(told, one.name))
