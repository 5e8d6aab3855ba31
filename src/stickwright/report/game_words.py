"""What a game asks, as plain text: one line a game, or one line an action; 100 columns."""

from __future__ import annotations

import textwrap
from collections.abc import Mapping, Sequence
from typing import Literal

from stickwright.catalogue import say
from stickwright.codes.game_lists import Column, GameLists
from stickwright.codes.message import Message, Name, message
from stickwright.model.game import Action, Game
from stickwright.report.tell import names, tell

__all__ = ["game_words", "games_words", "together_groups"]

WIDTH = 100
_GAP = "  "
_NOT_SAID = "-"
_NO_BREAK = "\u00a0"
_ON_STICK = ("two-axis", "one-axis")


def games_words(games: Mapping[str, Game]) -> str:
    """Games beside each other: sticks, number of actions, what is needed together, the shortest reaction.

    Parameters
    ----------
    games : mapping
        Name, as it is typed, to game.

    Returns
    -------
    str
        Lines of at most 100 columns.
    """
    rows = [
        (
            name,
            say(_sticks(game)),
            str(len(game.action)),
            "; ".join(" + ".join(_whole(group)) for group in together_groups(game)) or tell(GameLists.none_together),
            _shortest(game),
        )
        for name, game in games.items()
    ]
    return _table(_heads("game", "sticks", "actions", "needed_together", "reaction"), rows, (22, 24, 7, 31, 8))


def game_words(game: Game) -> str:
    """The actions of a game: how long, how often, how quick, what with, and what the game itself can do.

    Parameters
    ----------
    game : Game
        Any game.

    Returns
    -------
    str
        A heading, the table and how to read it, in lines of at most 100 columns.
    """
    rows = [_action_row(action) for action in game.action]
    head = _heads("action", "kind", "importance", "time", "hold", "per_minute", "reaction", "together", "option")
    table = _table(head, rows, (12, 8, 10, 5, 6, 9, 8, 10, 16)) if rows else f"{tell(GameLists.no_action)}\n"
    lead = tell(GameLists.title, game=Name(game.name), actions=len(game.action), sticks=_sticks(game))
    paragraphs = [lead, tell(GameLists.legend), *([costs] if (costs := _costs(game)) else [])]
    told = [textwrap.fill(one, WIDTH) for one in paragraphs]
    return "\n\n".join([told[0], table.rstrip("\n"), *told[1:]]) + "\n"


def _heads(*columns: Column) -> tuple[str, ...]:
    return tuple(tell(GameLists.column, column=column) for column in columns)


def _costs(game: Game) -> str:
    """What leaving each action to others is taken to cost, for the practitioner to ask about."""
    told: list[Message] = []
    for action in game.action:
        costs = (
            *((_cost("option", action.option_price),) if action.option else ()),
            *((_cost("helper", action.helper_price),) if action.helper else ()),
            *((_cost("dropped", action.drop_price),) if action.drop_price is not None else ()),
        )
        if costs:
            told.append(message(GameLists.costs_of, action=Name(action.name), costs=costs))
    return tell(GameLists.costs, told=tuple(told)) if told else ""


def _cost(how: Literal["option", "helper", "dropped"], price: float | None) -> Message:
    return message(GameLists.cost, how=how, cost_points=price)


def together_groups(game: Game) -> tuple[tuple[str, ...], ...]:
    """Actions that must be possible at the same time, in groups in which each needs each, largest first.

    Parameters
    ----------
    game : Game
        Any game; an action needed with one that does not name it back counts all the same, and so do the parts of a
        chord.

    Examples
    --------
    >>> together_groups(Game.model_validate({"name": "g", "action": [
    ...     {"name": "steer", "kind": "one-axis", "together": ["go", "stop"]},
    ...     {"name": "go", "kind": "trigger"}, {"name": "stop", "kind": "trigger"}]}))
    (('steer', 'go'), ('steer', 'stop'))
    """
    names = [action.name for action in game.action]
    near: dict[str, set[str]] = {name: set() for name in names}
    for action in game.action:
        for other in action.together:
            _join(near, (action.name, other))
        _join(near, action.of)
    groups: list[tuple[str, ...]] = []
    for start in names:
        for second in (name for name in names if name in near[start]):
            whole = _grown([start, second], names, near)
            if whole not in groups:
                groups.append(whole)
    return tuple(sorted(groups, key=len, reverse=True))


def _grown(group: list[str], names: list[str], near: dict[str, set[str]]) -> tuple[str, ...]:
    """The group with everybody who is needed with all of it, one after the other."""
    for name in names:
        if all(name in near[other] for other in group):
            group.append(name)
    return tuple(name for name in names if name in group)


def _join(near: dict[str, set[str]], names: Sequence[str]) -> None:
    for one in names:
        for other in names:
            if one != other and one in near and other in near:
                near[one].add(other)


def _whole(names: Sequence[str]) -> list[str]:
    """Names that are not cut at their blanks when a cell is folded."""
    return [name.replace(" ", _NO_BREAK) for name in names]


def _sticks(game: Game) -> Message:
    used = [action for action in game.action if action.kind in _ON_STICK]
    if not used:
        return message(GameLists.no_sticks)
    return message(
        GameLists.sticks, actions=names(one.name for one in used), duty_share=tuple(one.duty_share for one in used)
    )


def _shortest(game: Game) -> str:
    asked = [action.reaction_s for action in game.action if action.reaction_s is not None]
    return _reaction(min(asked, default=None))


def _reaction(time_s: float | None) -> str:
    return _NOT_SAID if time_s is None else tell(GameLists.reaction, time_s=time_s)


def _action_row(action: Action) -> tuple[str, ...]:
    return (
        action.name,
        tell(GameLists.kind, kind=action.kind),
        str(action.importance),
        tell(GameLists.share, duty_share=action.duty_share),
        _NOT_SAID if action.longest_hold_s is None else tell(GameLists.time, time_s=action.longest_hold_s),
        _presses(action),
        _reaction(action.reaction_s),
        _with(action),
        _game_can(action),
    )


def _presses(action: Action) -> str:
    usual, busy = (None if rate is None else 60 * rate for rate in (action.presses_per_s, action.busy_presses_per_s))
    if usual is None and busy is None:
        return _NOT_SAID
    return tell(GameLists.presses, usual_per_min=usual, busy_per_min=busy)


def _with(action: Action) -> str:
    parts = [", ".join(_whole(action.together))] if action.together else []
    parts += [tell(GameLists.made_of, actions=names(_whole(action.of)))] if action.of else []
    return "; ".join(parts) or _NOT_SAID


def _game_can(action: Action) -> str:
    parts = []
    for words, price, latching in (
        (action.option, action.option_price, False),
        (action.toggle, action.toggle_price, True),
    ):
        if words:
            parts.append(tell(GameLists.option, words=Name(words), latching=latching, cost_points=price))
    return "; ".join(parts) or _NOT_SAID


def _table(head: tuple[str, ...], rows: Sequence[tuple[str, ...]], widths: tuple[int, ...]) -> str:
    """Columns of fixed width under their heads; what is too long goes on below, in its own column."""
    lines = [_line(head, widths), _line(tuple("-" * width for width in widths), widths)]
    for row in rows:
        cells = [textwrap.wrap(cell, width) or [""] for cell, width in zip(row, widths, strict=True)]
        for place in range(max(len(cell) for cell in cells)):
            lines.append(_line(tuple(cell[place] if place < len(cell) else "" for cell in cells), widths))
    return "\n".join(lines) + "\n"


def _line(cells: tuple[str, ...], widths: tuple[int, ...]) -> str:
    return (
        _GAP.join(cell.ljust(width) for cell, width in zip(cells, widths, strict=True)).replace(_NO_BREAK, " ").rstrip()
    )
