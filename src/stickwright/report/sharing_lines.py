"""The sharing in the terminal: a table of who does what, how sure it is, what else there is, and the cables."""

from __future__ import annotations

from stickwright.catalogue import say
from stickwright.codes.layout_pages import LayoutPages
from stickwright.codes.plan_report import ColumnCode, SectionCode
from stickwright.codes.wiring_pages import WiringPages
from stickwright.model.plan import Plan
from stickwright.model.sharing import Wiring
from stickwright.report.printed import sentence, wrapped
from stickwright.report.score import score_of, score_words
from stickwright.report.sharing_words import wire_words
from stickwright.report.tell import tell
from stickwright.report.to_terminal import lines_words, section_words, table_words
from stickwright.report.view import Report
from stickwright.report.why_so import NO_HUB

__all__ = ["sharing_blocks"]

_COLUMNS: tuple[ColumnCode, ...] = ("action", "by", "with", "socket")
_REASONS: tuple[SectionCode, ...] = ("order", "alternatives", "loads", "together")
_WIRED: tuple[SectionCode, ...] = ("current", "parts")


def sharing_blocks(plan: Plan, report: Report, width: int = 80) -> list[str]:
    """Blocks of text about the sharing; none when nothing is shared out.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    report : Report
        What is told of it.
    width : int, default 80
        Columns of the terminal.
    """
    sharing = plan.sharing
    if sharing is None:
        return []
    table = report.tables("controls")[0]
    blocks = [
        f"{'-' * width}\n{say(table.caption)}\n{table_words(table, _COLUMNS, width)}",
        section_words(report, "clash", width),
        wrapped([sentence(sharing.sentence), sentence(sharing.solved)], width),
        wrapped(
            [tell(LayoutPages.total, sum=score_words(score_of(sharing))) if sharing.placements else ""], width, "", "  "
        ),
        *(section_words(report, code, width) for code in _REASONS),
        _wiring(sharing.wiring, width),
        *(section_words(report, code, width) for code in _WIRED),
    ]
    return [block for block in blocks if block]


def _wiring(wiring: Wiring | None, width: int) -> str:
    if wiring is None or not wiring.wires:
        return wrapped([say(NO_HUB)], width)
    lines = lines_words([wire_words(wire) for wire in wiring.wires], width)
    return f"{tell(WiringPages.heading, part='wiring')}\n{lines}"
