"""What is contradictory or half said in a game: names, demands in a ring, prices without what they are the price of.

What is missing is asked about once for all actions, so that a half-described game stays readable; it is planned with
all the same.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from stickwright.errors import Problem
from stickwright.model.game import Action
from stickwright.model.hub import BUTTON_ROLES, STICK_ROLES
from stickwright.model.recorded import Finding
from stickwright.records.fields import typed_key
from stickwright.records.toml_lines import FieldPath, TomlFile
from stickwright.records.typed_tables import (
    Noticed,
    doubled_names,
    name_of,
    names_in,
    number,
    placed,
    query,
    tables,
    texts,
    unknown,
)
from stickwright.records.typed_values import as_typed

__all__ = ["game_doubts"]

_PRESSED = ("press", "repeat", "chord")
_KEPT = ("hold", "trigger")
_ON_STICK = ("two-axis", "one-axis")
_QUICKEST_S = 0.02
"""Nobody answers faster; a time below it was typed in another unit."""
_Table = tuple[FieldPath, dict[str, Any]]


def game_doubts(game: TomlFile, sticks: Sequence[str] | None = None) -> list[Noticed]:
    """What is doubtful in a game.

    Parameters
    ----------
    game : TomlFile
        The file as parsed.
    sticks : sequence of str, optional
        Names that the sticks of the kit have; None when they cannot be told.
    """
    actions = list(tables(game.data, "action"))
    known = names_in(game, "action")
    noticed: list[Noticed] = [*doubled_names(game, actions, "action")]
    for path, before in tables(game.data, "settings_before"):
        noticed += unknown(game, (*path, "stick"), before.get("stick"), sticks, "a stick", "kit.toml")
    for path, action in actions:
        for key in ("together", "of"):
            for place, name in texts(action, key):
                noticed += unknown(game, (*path, key, place), name, known, "an action", game.name)
        noticed += _names_itself(game, path, action)
        noticed += _chord_doubts(game, path, action)
        noticed += _price_doubts(game, path, action)
        noticed += _figure_doubts(game, path, action)
    noticed += _chords_in_a_circle(game, actions)
    noticed += _one_input_twice(game, actions)
    noticed += _rings(game, actions)
    noticed += _not_said(game, actions)
    return noticed


# ---- names and demands


def _names_itself(game: TomlFile, path: FieldPath, action: dict[str, Any]) -> Iterator[Problem]:
    for key, what in (("together", "needed together with itself"), ("of", "part of itself")):
        for place, name in texts(action, key):
            if name == name_of(action):
                yield Problem(
                    game.where((*path, key, place)),
                    f"{as_typed(name)}, {what}",
                    "another action",
                    "Take it out of the list.",
                )


def _chord_doubts(game: TomlFile, path: FieldPath, action: dict[str, Any]) -> Iterator[Noticed]:
    parts = list(dict.fromkeys(name for _, name in texts(action, "of")))
    if action.get("kind") == "chord" and len(parts) < 2:
        where = (*path, "of") if "of" in action else path
        yield Problem(
            game.where(where),
            f"a chord of {as_typed(parts[0])} alone" if parts else "a chord without its actions",
            "the two or more actions that it is made of",
            'Write of = ["lane 1", "lane 2"], say, with the names of actions of this file.',
        )
    elif parts and isinstance(action.get("kind"), str) and action["kind"] != "chord":
        yield query(
            "chord",
            f'{game.where((*path, "of"))}: counts only for kind = "chord"; this is a {action["kind"]}. Meant as a chord, '
            "or as together?",
        )


def _chords_in_a_circle(game: TomlFile, actions: list[_Table]) -> Iterator[Problem]:
    chords = {
        name: [part for _, part in texts(action, "of")]
        for _, action in actions
        if action.get("kind") == "chord" and (name := name_of(action))
    }
    for ring in _circles({name: [part for part in parts if part in chords] for name, parts in chords.items()}):
        path = next(path for path, action in actions if name_of(action) == ring[0])
        yield Problem(
            game.where((*path, "of")),
            f"chords that contain each other: {_chain(ring, 'contains')}",
            "chords made of single actions",
            "Name in each chord the actions that are pressed, not another chord that leads back.",
        )


def _rings(game: TomlFile, actions: list[_Table]) -> Iterator[Finding]:
    asked = {
        name: {other for _, other in texts(action, "together")} for _, action in actions if (name := name_of(action))
    }
    one_way = {
        name: [other for other in others if other in asked and other != name and name not in asked[other]]
        for name, others in asked.items()
    }
    for ring in _circles(one_way):
        path = next(path for path, action in actions if name_of(action) == ring[0])
        yield query(
            "together",
            f"{game.where((*path, 'together'))}: a circle, {_chain(ring, 'is needed with')}. Counted as pairs, not as all "
            'at the same moment. Must all be possible at one moment? Then add an action of kind = "chord" with all of '
            "them in its list of.",
        )


def _chain(ring: list[str], verb: str) -> str:
    return f" {verb} ".join(as_typed(name) for name in (*ring, ring[0]))


def _circles(follows: Mapping[str, list[str]]) -> list[list[str]]:
    """Circles in "names" relations, each told once, from its first name on: the shortest through every name."""
    found: list[list[str]] = []
    told: set[str] = set()
    for start in follows:
        if start in told:
            continue
        ways = [[start]]
        seen: set[str] = set()
        while ways:
            way = ways.pop(0)
            following = follows[way[-1]]
            if start in following and len(way) > 1:
                found.append(way)
                told.update(way)
                break
            for name in following:
                if name not in seen and name != start:
                    seen.add(name)
                    ways.append([*way, name])
    return found


def _one_input_twice(game: TomlFile, actions: list[_Table]) -> Iterator[Problem]:
    first: dict[str, _Table] = {}
    for path, action in actions:
        role = action.get("input")
        if not isinstance(role, str) or action.get("kind") == "chord":
            continue
        if role in first:
            there, other = first[role]
            yield Problem(
                game.where((*path, "input")),
                f"{as_typed(role)}, which does {as_typed(other.get('name', 'another action'))} too "
                f"(line {game.lines.line((*there, 'input'))})",
                "an input for each action: pressing one would do the other",
                "Look into the game's list of controls, or leave input out where any will do.",
            )
        first.setdefault(role, (path, action))


# ---- figures and prices


def _price_doubts(game: TomlFile, path: FieldPath, action: dict[str, Any]) -> Iterator[Finding]:
    for price, thing, missing in (
        ("option_price", "option", 'what the game itself can do: option = "the camera follows"'),
        ("toggle_price", "toggle", 'how the game does it: toggle = "press once to start, once to stop"'),
    ):
        if number(action, Action, price) and not action.get(thing):
            yield query(
                "price", f"{game.where((*path, price))}: a price without {thing}, so it is never paid. Add {missing}."
            )
    if number(action, Action, "helper_price") and action.get("helper") is False:
        yield query(
            "price",
            f"{game.where((*path, 'helper_price'))}: a price beside helper = false, so it is never paid. Which holds?",
        )


def _figure_doubts(game: TomlFile, path: FieldPath, action: dict[str, Any]) -> Iterator[Finding]:
    usual, busy = (number(action, Action, name) for name in ("presses_per_s", "busy_presses_per_s"))
    if usual and busy and busy[1] < usual[1]:
        yield query(
            "presses",
            f"{game.where((*path, busy[0]))}: fewer presses in the busiest minute ({busy[0]} = {as_typed(action[busy[0]])}) "
            f"than on average ({usual[0]} = {as_typed(action[usual[0]])}). Swapped, or in another unit?",
        )
    reaction = number(action, Action, "reaction_s")
    if reaction and 0 < reaction[1] < _QUICKEST_S:
        yield query(
            "unit",
            f"{game.where((*path, reaction[0]))}: {as_typed(action[reaction[0]])} is faster than anybody. Seconds? Then "
            "name it reaction_s. Nothing was converted.",
        )
    kind, role = action.get("kind"), action.get("input")
    if kind in _ON_STICK and role in BUTTON_ROLES:
        yield query("input", f"{game.where((*path, 'input'))}: a {kind} action on {as_typed(role)}. Is it a press?")
    elif isinstance(kind, str) and kind in (*_PRESSED, *_KEPT) and role in STICK_ROLES:
        yield query("input", f"{game.where((*path, 'input'))}: a {kind} on {as_typed(role)}. Is it two-axis?")


def _not_said(game: TomlFile, actions: list[_Table]) -> Iterator[Finding]:
    """What is missing, once for all actions."""

    def lacking(name: str, kinds: tuple[str, ...] | None = None) -> list[_Table]:
        return [
            found
            for found in actions
            if (kinds is None or found[1].get("kind") in kinds) and not typed_key(found[1], Action, name)
        ]

    without = lacking("importance")
    if without:
        yield query(
            "importance",
            f"{game.name}: importance not said, counted as 5, for {placed(game, without)}. Ask what doing it is worth to "
            "the player, 0 to 10: importance = 8.",
        )
    without = [
        found for found in lacking("presses_per_s", _PRESSED) if not typed_key(found[1], Action, "busy_presses_per_s")
    ]
    if without:
        yield query(
            "presses",
            f"{game.name}: presses a minute not said for {placed(game, without)}, so nobody can tell whether a site keeps "
            "up. Watch ten minutes and count: presses_per_min = 12, busy_presses_per_min = 25.",
        )
    without = lacking("longest_hold_s", _KEPT)
    if without:
        yield query(
            "hold",
            f"{game.name}: longest hold not said for {placed(game, without)}, so it cannot be held against what the player "
            "can keep. Watch and time it: longest_hold_s = 6.",
        )
