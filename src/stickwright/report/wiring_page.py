"""Page three: what is plugged into what, and which parts there are and are not."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any, get_args

from stickwright.catalogue import say
from stickwright.codes.message import Message, Name, Text
from stickwright.codes.wiring_pages import Column, Heading, WiringPages
from stickwright.model.plan import Plan
from stickwright.model.plugs import is_usb
from stickwright.model.sharing import Wire, Wiring
from stickwright.report.between_games import moved_cables, wired_findings
from stickwright.report.games_words import between_games
from stickwright.report.gather import parts_blocks
from stickwright.report.paper import width_mm
from stickwright.report.sharing_words import power_words
from stickwright.report.tell import names, tell
from stickwright.report.to_terminal import cell_text
from stickwright.report.view import Paragraph, Table
from stickwright.report.who import for_the_cables
from stickwright.report.why_so import findings_rows
from stickwright.report.wiring_drawing import way_parts, wiring_alt, wiring_drawing, wiring_rows

__all__ = ["wiring_page"]

_HEADINGS: tuple[Heading, ...] = get_args(Heading)
_COLUMNS: tuple[Column, ...] = ("tag", "from", "plug", "through", "to", "as", "length")


def wiring_page(plan: Plan, shrink_share: float = 1.0, conductors: bool = True) -> dict[str, Any] | None:
    """Everything printed on the page of the wiring; None when nothing is wired.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    shrink_share : float, default 1
        Size of the drawing as a share of its own.
    conductors : bool, default True
        Whether to say what each contact carries.

    Returns
    -------
    dict or None
        Texts, tables and one drawing, for the template.
    """
    wiring = plan.sharing.wiring if plan.sharing is not None else None
    if wiring is None or not (wiring.wires or plan.parts):
        return None
    drawing = wiring_drawing(wiring, wiring.hubs) if wiring.wires else ""
    return {
        "words": {part: tell(WiringPages.heading, part=part) for part in _HEADINGS},
        "title": tell(WiringPages.title, player=Name(plan.player), wired=bool(wiring.wires)),
        "missing": _missing(wiring),
        "drawing": {"svg": drawing, "alt": wiring_alt(wiring), "width_mm": width_mm(drawing) * shrink_share}
        if drawing
        else None,
        "cables": _table(_COLUMNS, (*wiring_rows(wiring), *moved_cables(plan))),
        "changes": between_games(plan) if plan.layouts else [],
        "power": _together(tuple(power_words(line) for line in wiring.power)),
        "ways": _together(way_parts(wiring)),
        "steps": [say(step) for step in wiring.steps],
        **_parts(plan),
        "conductors": _conductors(wiring.wires) if conductors else [],
        "findings": [*findings_rows(wiring.findings), *wired_findings(plan)],
        "cautions": [say(one.text) for one in for_the_cables(plan)],
    }


def _together(parts: tuple[Text, ...]) -> str:
    return tell(WiringPages.together, parts=parts) if parts else ""


def _table(columns: Sequence[Column], rows: Iterable[Sequence[str]]) -> dict[str, Any]:
    """A table without the columns that say nothing."""
    told = [list(row) for row in rows]
    kept = [place for place, _ in enumerate(columns) if any(row[place] for row in told)]
    return {
        "columns": [tell(WiringPages.column, column=columns[place]) for place in kept],
        "kinds": [columns[place] for place in kept],
        "rows": [[row[place] for place in kept] for row in told],
    }


def _missing(wiring: Wiring) -> list[str]:
    """What is needed for a cable and not there, cable by cable."""
    return [
        tell(WiringPages.missing, tag=Name(wire.tag), missing=wire.lacks)
        for wire in wiring.wires
        if wire.lacks is not None
    ]


def _parts(plan: Plan) -> dict[str, Any]:
    """The parts list of the report and what is to be ordered, for the template."""
    page: dict[str, Any] = {"parts": {"columns": [], "kinds": [], "rows": []}, "bought": ""}
    for block in parts_blocks(plan):
        if isinstance(block, Table):
            page["parts"] = {
                "columns": [say(column.title) for column in block.columns],
                "kinds": [column.code for column in block.columns],
                "rows": [[say(cell_text(cell)) for cell in row] for row in block.rows],
            }
        elif isinstance(block, Paragraph):
            page["bought"] = " ".join(map(say, block.texts))
    return page


def _conductors(wires: tuple[Wire, ...]) -> list[str]:
    """What each contact of a round plug carries; cables that are alike in one entry. USB is the same everywhere."""
    told: dict[tuple[Message, ...], list[str]] = {}
    for wire in wires:
        if wire.conductors and not is_usb(wire.plug):
            told.setdefault(wire.conductors, []).append(wire.tag)
    return [tell(WiringPages.contacts, tags=names(tags), contacts=carried) for carried, tags in told.items()]
