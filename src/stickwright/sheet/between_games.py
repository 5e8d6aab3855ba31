"""What is plugged in and set otherwise from game to game: cables that move, and the settings of each stick in each game."""

from __future__ import annotations

from typing import Any

from stickwright.catalogue import say
from stickwright.model.layouts import GameSettings, Layout
from stickwright.model.plan import Plan
from stickwright.model.sharing import Wire
from stickwright.sheet.printed import plain, share
from stickwright.sheet.tuned import undo_words
from stickwright.sheet.wiring_drawing import wiring_rows

__all__ = ["games_settings", "moved_cables", "set_in_each_game", "wired_findings"]

_UNUSED = "not used"


def games_settings(plan: Plan) -> dict[str, Any] | None:
    """The settings of each stick as a table with a column for each game; None for one game, or without sticks.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    """
    by_game = [{(one.site, one.stick): one for one in layout.settings} for layout in plan.layouts]
    sticks = dict.fromkeys(key for settings in by_game for key in settings)
    if not sticks:
        return None
    rows = []
    for key in sticks:
        found = [settings.get(key) for settings in by_game]
        rows += _rows_of(f"{key[1]} ({key[0]})", found)
    return {
        "columns": ["setting", *(layout.game for layout in plan.layouts)],
        "rows": rows,
        "note": "Keep one profile on the hub for each game where it has profiles.",
    }


def _rows_of(name: str, found: list[GameSettings | None]) -> list[list[str]]:
    rows = [[f"{name}: to set", *(_to_set(one) for one in found)]]
    told = [one for one in found if one is not None and one.simple is not None]
    if told:
        rows.append([f"{name}: to undo", *(_undo(one) for one in found)])
    if any(one.inner_jump for one in told):
        rows.append([f"{name}: in the hub, output starts at", *(_jump(one) for one in found)])
    if any(one.too_late_s is not None for one in told):
        rows.append([f"{name}: in the hub, filter", *(_filter(one) for one in found)])
    return rows


def _to_set(one: GameSettings | None) -> str:
    if one is None:
        return _UNUSED
    if one.simple is None:
        return f"change nothing yet: {say(one.why or '')}"
    values = {"dead zone": one.simple.dead_zone_percent, "sensitivity": one.simple.sensitivity_percent}
    missing = [f"no {what} offered" for what in values if what not in one.settable]
    return ", ".join([*(f"{what} {values[what]:.0f} %" for what in one.settable), *missing])


def _undo(one: GameSettings | None) -> str:
    return _UNUSED if one is None else undo_words(one.settings_before, one.own_dead_zone_share)


def _jump(one: GameSettings | None) -> str:
    return _UNUSED if one is None else "not known" if one.inner_jump is None else share(one.inner_jump)


def _filter(one: GameSettings | None) -> str:
    if one is None:
        return _UNUSED
    return "as found" if one.too_late_s is None else f"off: {plain(one.too_late_s, 'ms')} is too late for this game"


def set_in_each_game(plan: Plan, site: str) -> str:
    """What a family sets for the sticks of a site, game by game; nothing for one game or where nothing is to be set.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    site : str
    """
    told = []
    for layout in plan.layouts:
        for one in layout.settings:
            if one.site == site and one.simple is not None:
                told.append(f"{layout.game}: {_to_set(one)}")
    sticks = dict.fromkeys(one.stick for layout in plan.layouts for one in layout.settings if one.site == site)
    return f"Set in each game for {' and '.join(sticks)}: {'; '.join(told)}." if told else ""


def moved_cables(plan: Plan) -> list[list[str]]:
    """Cables of the further games that are plugged in otherwise, in the columns of the table of cables.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    """
    known = _wires(plan)
    rows = []
    for layout in plan.layouts[1:]:
        for row, wire in zip(_layout_rows(layout), _layout_wires(layout), strict=True):
            if any(_same_plug(wire, one) for one in known):
                continue
            tag = next((one.tag for one in known if (one.device, one.at) == (wire.device, wire.at)), "new")
            rows.append([f"{tag}, for {layout.game}", *row[1:]])
    return rows


def wired_findings(plan: Plan) -> list[list[str]]:
    """What is wrong with the cables of a further game alone, where something moves for it.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    """
    wiring = plan.sharing.wiring if plan.sharing is not None else None
    known = {one.text for one in wiring.findings} if wiring is not None else set()
    moved = {row[0].partition(", for ")[2] for row in moved_cables(plan)}
    return [
        [f"For {layout.game}", say(one.text)]
        for layout in plan.layouts[1:]
        if layout.game in moved and layout.sharing is not None and layout.sharing.wiring is not None
        for one in layout.sharing.wiring.findings
        if one.level == "fault" and one.text not in known
    ]


def _wires(plan: Plan) -> tuple[Wire, ...]:
    return plan.sharing.wiring.wires if plan.sharing is not None and plan.sharing.wiring is not None else ()


def _layout_wires(layout: Layout) -> tuple[Wire, ...]:
    return layout.sharing.wiring.wires if layout.sharing is not None and layout.sharing.wiring is not None else ()


def _layout_rows(layout: Layout) -> tuple[tuple[str, ...], ...]:
    return (
        wiring_rows(layout.sharing.wiring) if layout.sharing is not None and layout.sharing.wiring is not None else ()
    )


def _same_plug(one: Wire, other: Wire) -> bool:
    """A controller is at all hands that play it, which may be others in another game."""
    same = (one.device, one.hub, one.socket) == (other.device, other.hub, other.socket)
    return same and bool({*one.at.split(" and ")} & {*other.at.split(" and ")})
