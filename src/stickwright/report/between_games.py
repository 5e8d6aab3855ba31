"""What is plugged in and set otherwise from game to game: cables that move, and the settings of each stick in each game."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Literal

from stickwright.catalogue import say
from stickwright.codes.game_columns import GameColumns
from stickwright.codes.message import Message, Name, message
from stickwright.codes.stick_settings import StickSettings
from stickwright.model.layouts import GameSettings, Layout
from stickwright.model.plan import Plan
from stickwright.model.sharing import Wire
from stickwright.report.tell import named, names, tell
from stickwright.report.tuned import undo_words
from stickwright.report.wiring_drawing import wiring_rows

__all__ = ["games_settings", "moved_cables", "set_in_each_game", "wired_findings"]

What = Literal["to_set", "to_undo", "jump", "filter"]


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
        rows += _rows_of(key, found)
    return {
        "columns": [tell(StickSettings.setting), *(layout.game for layout in plan.layouts)],
        "rows": rows,
        "note": tell(StickSettings.profiles),
    }


def _rows_of(key: tuple[str, str], found: list[GameSettings | None]) -> list[list[str]]:
    def row(what: What, cell: Callable[[GameSettings], Message]) -> list[str]:
        head = message(StickSettings.of_stick, stick=Name(key[1]), site=Name(key[0]), what=what)
        return [say(head), *(tell(StickSettings.unused) if one is None else say(cell(one)) for one in found)]

    rows = [row("to_set", _to_set)]
    told = [one for one in found if one is not None and one.simple is not None]
    if told:
        rows.append(row("to_undo", lambda one: undo_words(one.settings_before, one.own_dead_zone_share)))
    if any(one.inner_jump for one in told):
        rows.append(row("jump", lambda one: message(StickSettings.output_start, start_share=one.inner_jump)))
    if any(one.too_late_s is not None for one in told):
        rows.append(row("filter", lambda one: message(StickSettings.filter_stays, late_s=one.too_late_s)))
    return rows


def _to_set(one: GameSettings) -> Message:
    if one.simple is None:
        return message(StickSettings.change_nothing, why=one.why or "")
    zone, gain = one.simple.dead_zone_percent / 100, one.simple.sensitivity_percent / 100
    return message(
        StickSettings.numbers_offered, dead_zone_share=zone if "dead zone" in one.settable else None,
        sensitivity_share=gain if "sensitivity" in one.settable else None,
    )  # fmt: skip


def set_in_each_game(plan: Plan, site: str) -> str:
    """What a family sets for the sticks of a site, game by game; nothing for one game or where nothing is to be set.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    site : str
    """
    here = [(layout.game, one) for layout in plan.layouts for one in layout.settings if one.site == site]
    told = [(game, one) for game, one in here if one.simple is not None]
    if not told:
        return ""
    return tell(
        StickSettings.in_each_game, sticks=names(dict.fromkeys(one.stick for _, one in here)),
        games=names(game for game, _ in told), numbers=tuple(_to_set(one) for _, one in told),
    )  # fmt: skip


def moved_cables(plan: Plan) -> list[list[str]]:
    """Cables of the further games that are plugged in otherwise, in the columns of the table of cables.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    """
    return [row for _, row in _moved(plan)]


def _moved(plan: Plan) -> list[tuple[str, list[str]]]:
    """Each cable that moves, with the game for which it does."""
    known = _wires(plan)
    rows = []
    for layout in plan.layouts[1:]:
        for row, wire in zip(_layout_rows(layout), _layout_wires(layout), strict=True):
            if any(_same_plug(wire, one) for one in known):
                continue
            tag = next((one.tag for one in known if (one.device, one.at) == (wire.device, wire.at)), None)
            rows.append((layout.game, [tell(GameColumns.tag_for, tag=named(tag), game=Name(layout.game)), *row[1:]]))
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
    moved = {game for game, _ in _moved(plan)}
    return [
        [tell(GameColumns.for_game, game=Name(layout.game)), say(one.text)]
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
    return same and bool({*one.at} & {*other.at})
