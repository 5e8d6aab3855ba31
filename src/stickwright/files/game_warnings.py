"""What is contradictory or half said in a game: names, demands in a ring, prices without what they are the price of.

What is missing is asked about once for all actions, so that a half-described game stays readable; it is planned with
all the same.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any, Literal

from stickwright.codes.game_warnings import GameWarnings
from stickwright.codes.message import Name, message
from stickwright.codes.warnings import Warnings
from stickwright.errors import Problem
from stickwright.files.fields import typed_key
from stickwright.files.toml_lines import FieldPath, TomlFile
from stickwright.files.typed_tables import (
    Noticed,
    assigned,
    doubled_names,
    name_of,
    names_in,
    number,
    placed,
    query,
    shown_name,
    tables,
    texts,
    unknown,
)
from stickwright.files.typed_values import as_typed
from stickwright.model.game import Action
from stickwright.model.hub import BUTTON_ROLES, STICK_ROLES
from stickwright.model.recorded import Finding

__all__ = ["game_warnings"]

_PRESSED = ("press", "repeat", "chord")
_KEPT = ("hold", "trigger")
_ON_STICK = ("two-axis", "one-axis")
_QUICKEST_S = 0.02
"""Nobody answers faster; a time below it was typed in another unit."""
_Table = tuple[FieldPath, dict[str, Any]]


def game_warnings(game: TomlFile, sticks: Sequence[str] | None = None) -> list[Noticed]:
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
        noticed += unknown(game, (*path, "stick"), before.get("stick"), sticks, "stick", "kit.toml")
    for path, action in actions:
        for key in ("together", "of"):
            for place, name in texts(action, key):
                noticed += unknown(game, (*path, key, place), name, known, "action", game.name)
        noticed += _names_itself(game, path, action)
        noticed += _chord_warnings(game, path, action)
        noticed += _price_warnings(game, path, action)
        noticed += _figure_warnings(game, path, action)
    noticed += _chords_in_a_circle(game, actions)
    noticed += _one_input_twice(game, actions)
    noticed += _rings(game, actions)
    noticed += _not_said(game, actions)
    return noticed


# ---- names and demands


def _names_itself(game: TomlFile, path: FieldPath, action: dict[str, Any]) -> Iterator[Problem]:
    keys: tuple[Literal["together", "of"], ...] = ("together", "of")
    for key in keys:
        for place, name in texts(action, key):
            if name == name_of(action):
                found = message(GameWarnings.names_itself, action=shown_name(name), key=key)
                expected, remedy = message(GameWarnings.another_action), message(Warnings.take_out)
                yield Problem(game.where((*path, key, place)), found, expected, remedy)


def _chord_warnings(game: TomlFile, path: FieldPath, action: dict[str, Any]) -> Iterator[Noticed]:
    parts = list(dict.fromkeys(name for _, name in texts(action, "of")))
    if action.get("kind") == "chord" and len(parts) < 2:
        where = (*path, "of") if "of" in action else path
        found = message(GameWarnings.short_chord, action=shown_name(parts[0]) if parts else None)
        expected, remedy = message(GameWarnings.chord_of_actions), message(GameWarnings.write_of)
        yield Problem(game.where(where), found, expected, remedy)
    elif parts and isinstance(action.get("kind"), str) and action["kind"] != "chord":
        told = message(GameWarnings.no_chord, kind=shown_name(action["kind"]))
        yield query("chord", game.where((*path, "of")), told)


def _chords_in_a_circle(game: TomlFile, actions: list[_Table]) -> Iterator[Problem]:
    chords = {
        name: [part for _, part in texts(action, "of")]
        for _, action in actions
        if action.get("kind") == "chord" and (name := name_of(action))
    }
    for ring in _circles({name: [part for part in parts if part in chords] for name, parts in chords.items()}):
        path = next(path for path, action in actions if name_of(action) == ring[0])
        found = message(GameWarnings.chords_in_a_circle, ring=_closed(ring))
        expected, remedy = message(GameWarnings.chords_of_single_actions), message(GameWarnings.name_single_actions)
        yield Problem(game.where((*path, "of")), found, expected, remedy)


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
        told = message(GameWarnings.needed_in_a_circle, ring=_closed(ring))
        yield query("together", game.where((*path, "together")), told)


def _closed(ring: list[str]) -> tuple[Name, ...]:
    return tuple(shown_name(name) for name in (*ring, ring[0]))


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
            name = name_of(other)
            found = message(
                GameWarnings.input_again,
                role=as_typed(role),
                action=shown_name(name) if name else None,
                line=game.lines.line((*there, "input")),
            )
            expected, remedy = message(GameWarnings.input_of_its_own), message(GameWarnings.look_at_controls)
            yield Problem(game.where((*path, "input")), found, expected, remedy)
        first.setdefault(role, (path, action))


# ---- figures and prices


def _price_warnings(game: TomlFile, path: FieldPath, action: dict[str, Any]) -> Iterator[Finding]:
    things: tuple[Literal["option", "toggle"], ...] = ("option", "toggle")
    for thing in things:
        price = f"{thing}_price"
        if number(action, Action, price) and not action.get(thing):
            told = message(GameWarnings.cost_without, key=Name(price), thing=thing)
            yield query("price", game.where((*path, price)), told)
    if number(action, Action, "helper_price") and action.get("helper") is False:
        told = message(GameWarnings.cost_without_helper, key=Name("helper_price"))
        yield query("price", game.where((*path, "helper_price")), told)


def _figure_warnings(game: TomlFile, path: FieldPath, action: dict[str, Any]) -> Iterator[Finding]:
    usual, busy = (number(action, Action, name) for name in ("presses_per_s", "busy_presses_per_s"))
    if usual and busy and busy[1] < usual[1]:
        told = message(
            GameWarnings.fewer_when_busy,
            busy=assigned(busy[0], action[busy[0]]),
            usual=assigned(usual[0], action[usual[0]]),
        )
        yield query("presses", game.where((*path, busy[0])), told)
    reaction = number(action, Action, "reaction_s")
    if reaction and 0 < reaction[1] < _QUICKEST_S:
        told = message(GameWarnings.too_quick, typed=as_typed(action[reaction[0]]))
        yield query("unit", game.where((*path, reaction[0])), told)
    kind, role = action.get("kind"), action.get("input")
    if isinstance(kind, str) and kind in _ON_STICK and role in BUTTON_ROLES:
        told = message(GameWarnings.stick_action_on_button, kind=Name(kind), role=as_typed(role))
        yield query("input", game.where((*path, "input")), told)
    elif isinstance(kind, str) and kind in (*_PRESSED, *_KEPT) and role in STICK_ROLES:
        told = message(GameWarnings.press_on_stick, kind=Name(kind), role=as_typed(role))
        yield query("input", game.where((*path, "input")), told)


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
        yield query("importance", game.name, message(GameWarnings.no_importance, actions=placed(game, without)))
    without = [
        found for found in lacking("presses_per_s", _PRESSED) if not typed_key(found[1], Action, "busy_presses_per_s")
    ]
    if without:
        yield query("presses", game.name, message(GameWarnings.no_presses, actions=placed(game, without)))
    without = lacking("longest_hold_s", _KEPT)
    if without:
        yield query("hold", game.name, message(GameWarnings.no_hold, actions=placed(game, without)))
