"""Several games in words: a row for each device, a column for each game, what the common set costs, and what changes between them."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable
from typing import Any

from stickwright.catalogue import say
from stickwright.codes.game_columns import GameColumns
from stickwright.codes.glance import Glance
from stickwright.codes.message import Message, Name, Text, message
from stickwright.model.layouts import Layout
from stickwright.model.plan import Plan
from stickwright.model.sharing import Placement
from stickwright.report.between_games import games_settings
from stickwright.report.printed import wrapped
from stickwright.report.sharing_words import device_words, press_of, socket_name
from stickwright.report.tell import named, tell

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
    common = plan.together.outcome == "common"
    title = f"{'-' * width}\n{tell(GameColumns.title, games=len(games), common=common)}"
    table = _table([tell(Glance.heading, part="device"), *games], [cells for _, *cells in _rows(plan)], width)
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
    first = Name(plan.layouts[0].game)
    return [
        tell(
            GameColumns.change, first=first, then=Name(layout.game),
            steps=(*(one.words for one in layout.replugs), *(one.words for one in layout.refits)),
        )
        for layout in plan.layouts[1:]
    ]  # fmt: skip


def _costs(plan: Plan) -> list[str]:
    return [_cost(layout) for layout in plan.layouts if layout.points is not None]


def _cost(layout: Layout) -> str:
    hours = layout.hours_per_week
    return tell(
        GameColumns.score, game=Name(layout.game), each_week_s=None if hours is None else 3600 * hours,
        score_points=layout.points or 0.0, alone_points=layout.points_alone, lost_points=layout.cost, because=layout.because,
    )  # fmt: skip


def _rows(plan: Plan) -> list[tuple[str, ...]]:
    """Site, device, and the action in each game: devices first, then what the player does not do."""
    out: dict[tuple[int, str, Text], list[list[Message]]] = {}
    for number, layout in enumerate(plan.layouts):
        for one in layout.sharing.placements if layout.sharing is not None else ():
            cells = out.setdefault(_row_key(one), [[] for _ in plan.layouts])
            cells[number].append(message(GameColumns.action, action=Name(one.action), how=_how(one)))
    rows = sorted(out.items(), key=lambda item: item[0][0])
    return [
        (site, say(what), *(tell(GameColumns.actions, actions=tuple(cell)) if cell else "" for cell in cells))
        for (_, site, what), cells in rows
    ]


def _how(one: Placement) -> Text | None:
    """What stands behind an action: how it is pressed, or the game's option."""
    if one.how == "option":
        return named(one.label)
    press = press_of(one) if one.how == "site" else "plain"
    return None if press == "plain" else message(Glance.held if press == "held" else Glance.latching)


def _row_key(one: Placement) -> tuple[int, str, Text]:
    if one.how == "site":
        site = one.site or ""
        device = Name(one.device or "") if one.kind == "controller" else device_words(one)
        socket = socket_name(one.socket) if one.connection == "socket" and one.socket else None
        return 0, site, message(GameColumns.device, site=Name(site), device=device, socket=socket)
    order = ("chord", "option", "helper", "dropped").index(one.how) + 1
    return order, "", named(one.helper) or message(GameColumns.left_to, how=one.how)


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
