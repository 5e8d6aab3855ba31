"""Page three: what is plugged into what, and which parts there are and are not."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from stickwright.catalogue import say
from stickwright.model.plan import Plan
from stickwright.model.sharing import PartLine, Wire, Wiring
from stickwright.sheet.between_games import moved_cables, wired_findings
from stickwright.sheet.games_words import between_games
from stickwright.sheet.paper import width_mm
from stickwright.sheet.printed import clause, sentence
from stickwright.sheet.sharing_words import bought_words, lacking, power_words
from stickwright.sheet.who import for_the_cables
from stickwright.sheet.why_so import findings_rows
from stickwright.sheet.wiring_drawing import way_parts, wiring_alt, wiring_drawing, wiring_rows

__all__ = ["wiring_page"]

_COLUMNS = ["tag", "from", "plug", "through", "to", "as", "length"]
_PARTS = ["part", "kind", "needed", "in stock", "to order", "price", "note"]


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
        "title": f"{'Wiring and parts' if wiring.wires else 'Parts'}: player {plan.player}",
        "missing": _missing(wiring),
        "drawing": {"svg": drawing, "alt": wiring_alt(wiring), "width_mm": width_mm(drawing) * shrink_share}
        if drawing
        else None,
        "cables": _table(_COLUMNS, (*wiring_rows(wiring), *moved_cables(plan))),
        "changes": between_games(plan) if plan.layouts else [],
        "power": [power_words(line) for line in wiring.power],
        "ways": list(way_parts(wiring)),
        "steps": [step if step.endswith("?") else sentence(step) for step in wiring.steps],
        "parts": _table(_PARTS, (_part(line) for line in plan.parts)),
        "bought": bought_words(plan.parts, lacking(wiring)),
        "conductors": _conductors(wiring.wires) if conductors else [],
        "findings": [*findings_rows(wiring.findings), *wired_findings(plan)],
        "cautions": [say(one.text) for one in for_the_cables(plan)],
    }


def _table(columns: Sequence[str], rows: Iterable[Sequence[str]]) -> dict[str, Any]:
    """A table without the columns that say nothing."""
    told = [list(row) for row in rows]
    kept = [place for place, _ in enumerate(columns) if any(row[place] for row in told)]
    return {"columns": [columns[place] for place in kept], "rows": [[row[place] for place in kept] for row in told]}


def _missing(wiring: Wiring) -> list[str]:
    """What is needed for a cable and not there, cable by cable."""
    return [f"cable {wire.tag}: {clause(wire.missing)}." for wire in wiring.wires if wire.missing]


def _part(line: PartLine) -> list[str]:
    get = str(line.buy) if line.buy else ""
    price = "" if not line.buy else "not known" if line.price is None else f"{line.price:.2f}"
    return [say(line.name), line.kind, str(line.count), str(line.in_stock), get, price, sentence(line.note)]


def _conductors(wires: tuple[Wire, ...]) -> list[list[str]]:
    """What each contact of a round plug carries; cables that are alike in one entry. USB is the same everywhere."""
    told: dict[str, list[str]] = {}
    for wire in wires:
        if wire.plug.startswith("USB"):
            continue
        carried = "; ".join(f"{contact}: {carries}" if carries else contact for contact, carries in wire.conductors)
        if carried:
            told.setdefault(carried, []).append(wire.tag)
    return [[f"{', '.join(tags)}:", carried] for carried, tags in told.items()]
