"""Several games in words: a row for each device, a column for each game, what the common set costs, and what changes between them."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable
from typing import Any

from stickwright.catalogue import say
from stickwright.model.layouts import Layout
from stickwright.model.plan import Plan
from stickwright.model.points import counted, points
from stickwright.model.sharing import Placement
from stickwright.sheet.between_games import games_settings
from stickwright.sheet.printed import wrapped
from stickwright.sheet.sharing_words import device_words, mode_words, socket_name

__all__ = ["all_placements", "between_games", "common_headlines", "games_blocks", "games_page"]

_GAP = 2
_NARROWEST = 9


def all_placements(plan: Plan) -> tuple[Placement, ...]:
    """How each action of every game is done.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    """
    if not plan.layouts:
        return plan.sharing.placements if plan.sharing is not None else ()
    return tuple(one for layout in plan.layouts if layout.sharing is not None for one in layout.sharing.placements)


def common_headlines(plan: Plan) -> tuple[str, ...]:
    """What stands before everything else where there are several games: one that loses much, and what would spare it that.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    """
    return tuple(say(one) for one in plan.together.headlines) if plan.together is not None else ()


def games_page(plan: Plan, numbers: dict[str, str]) -> dict[str, Any] | None:
    """The table with a column for each game, and what changes between them; None for one game.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    numbers : dict
        Of the control sites in the picture.
    """
    if plan.together is None:
        return None
    rows = _rows(plan)
    return {
        "columns": [layout.game for layout in plan.layouts],
        "rows": [[numbers.get(site, ""), *cells] for site, *cells in rows],
        "headlines": [say(one) for one in plan.together.headlines],
        "costs": [
            *(_cost(layout) for layout in plan.layouts if layout.cost),
            *(say(one.text) for one in plan.together.findings),
        ],
        "changes": between_games(plan),
        "settings": games_settings(plan),
    }


def games_blocks(plan: Plan, width: int) -> list[str]:
    """The same for the terminal; nothing for one game.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    width : int
        Columns of the terminal.
    """
    if plan.together is None:
        return []
    games = [layout.game for layout in plan.layouts]
    told = [wrapped([line], width, "- ", "  ") for line in (*_costs(plan), *between_games(plan))]
    title = f"{'-' * width}\nOne set of devices for {len(games)} games"
    if plan.together.outcome != "common":
        title = f"{'-' * width}\n{len(games)} games, each with its own devices"
    table = _table(["device", *games], [cells for _, *cells in _rows(plan)], width)
    settings = games_settings(plan)
    typed = [_table(settings["columns"], settings["rows"], width)] if settings is not None else []
    return ["\n".join((title, wrapped([say(plan.together.sentence)], width), table, *told, *typed))]


def between_games(plan: Plan) -> list[str]:
    """What is plugged in or set up otherwise than for the first game, game by game.

    Parameters
    ----------
    plan : Plan
        A finished plan with several games.
    """
    first = plan.layouts[0].game
    out = []
    for layout in plan.layouts[1:]:
        steps = [*(say(one.words) for one in layout.replugs), *(say(one.words) for one in layout.refits)]
        told = " ".join(steps) if steps else "plug nothing in again; choose its profile on the hub."
        out.append(f"From {first} to {layout.game}: {told}")
    return out


def _costs(plan: Plan) -> list[str]:
    return [_cost(layout) for layout in plan.layouts if layout.points is not None]


def _cost(layout: Layout) -> str:
    hours = f", {layout.hours_per_week:g} hours a week" if layout.hours_per_week is not None else ""
    start = f"{layout.game}{hours}: {counted(layout.points or 0.0)}"
    if layout.points_alone is None or not layout.cost:
        return f"{start}, as many as with devices of its own."
    because = f", because of {'; '.join(say(one) for one in layout.because)}" if layout.because else ""
    return (
        f"{start}; with devices of its own {points(layout.points_alone)}. The common set costs this game "
        f"{counted(layout.cost)}{because}."
    )


def _rows(plan: Plan) -> list[tuple[str, ...]]:
    """Site, what does it, and what it does in each game: devices first, then what the player does not do."""
    out: dict[tuple[int, str, str, str], list[list[str]]] = {}
    for number, layout in enumerate(plan.layouts):
        for one in layout.sharing.placements if layout.sharing is not None else ():
            cells = out.setdefault(_row_key(one), [[] for _ in plan.layouts])
            mode = mode_words(one) if one.how == "site" else one.label if one.how == "option" else ""
            cells[number].append(f"{one.action} ({mode})" if mode else one.action)
    rows = sorted(out.items(), key=lambda item: item[0][0])
    return [
        (site, f"{what}{f', {socket_name(socket)}' if socket else ''}", *("; ".join(cell) for cell in cells))
        for (_, site, what, socket), cells in rows
    ]


def _row_key(one: Placement) -> tuple[int, str, str, str]:
    if one.how == "site":
        site, device = one.site or "", one.device if one.kind == "controller" else device_words(one)
        return 0, site, f"{site}: {device}", one.socket or "" if one.connection == "socket" else ""
    told = {
        "chord": (1, "pressed together"),
        "option": (2, "the game itself"),
        "helper": (3, one.helper or "helper"),
        "dropped": (4, "left out"),
    }
    order, words = told[one.how]
    return order, "", words, ""


def _table(heads: list[str], rows: Iterable[tuple[str, ...] | list[str]], width: int) -> str:
    """One row for each device, in columns no wider than what they hold."""
    cells = [heads, *([cell or "-" for cell in row] for row in rows)]
    widths = [max(len(row[at]) for row in cells) for at in range(len(heads))]
    while sum(widths) + _GAP * len(widths) > width and max(widths) > _NARROWEST:
        widths[widths.index(max(widths))] -= 1
    lines = []
    for row in cells:
        told = [textwrap.wrap(cell, wide) or [""] for cell, wide in zip(row, widths, strict=True)]
        for at in range(max(len(cell) for cell in told)):
            parts = ((cell[at] if at < len(cell) else "").ljust(wide) for cell, wide in zip(told, widths, strict=True))
            lines.append(f"  {'  '.join(parts)}".rstrip())
    return "\n".join(lines)
