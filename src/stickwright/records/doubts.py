"""What one table alone cannot tell: names that point nowhere, figures that contradict each other,
readings that look like another unit. All of it is looked for in what was typed, so that it is told
beside everything else that is wrong, and in the unit that was typed.
"""

from __future__ import annotations

import datetime
import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from stickwright import units
from stickwright.errors import Problem, did_you_mean
from stickwright.model.game import Game
from stickwright.model.kit import Stick, Topper
from stickwright.model.measured import Measured
from stickwright.model.player import DirectionReading, Site
from stickwright.model.recorded import Finding
from stickwright.records.bands import TypedList, unlikely
from stickwright.records.fields import fields_of, typed_key
from stickwright.records.gauge import GaugeReadings
from stickwright.records.refusals import as_typed
from stickwright.records.toml_lines import FieldPath, TomlFile

__all__ = ["Names", "Noticed", "game_doubts", "kit_doubts", "names_in", "player_doubts", "site_tables"]

Noticed = Problem | Finding
_FORMS = fields_of(Topper)["form"].choices
_SPREAD = 8.0
"""Repeats of one direction that differ by more were hardly read in the same unit; scatter is about 15 %."""
_FINE = 10.0
"""A gauge is fine enough for scatter to show when a reading is this many of its steps."""


def _tables(data: Any, key: str, path: FieldPath = ()) -> Iterator[tuple[FieldPath, dict[str, Any]]]:
    """The tables of an array, as far as they are tables."""
    items = data.get(key) if isinstance(data, dict) else None
    for place, item in enumerate(items if isinstance(items, list) else []):
        if isinstance(item, dict):
            yield (*path, key, place), item


def site_tables(player: TomlFile | None) -> list[tuple[FieldPath, dict[str, Any]]]:
    """Every ``[[site]]`` of a player file with its path."""
    return list(_tables(player.data, "site")) if player is not None else []


def _number(table: dict[str, Any], model: type[Measured], name: str) -> tuple[str, float] | None:
    """Typed key and SI value of a plain finite number."""
    key = typed_key(table, model, name)
    value = table.get(key) if key is not None else None
    if key is None or isinstance(value, bool) or not isinstance(value, int | float) or not abs(value) < 1e15:
        return None
    parts = units.split_key(key)
    numeric = parts is not None and units.quantity_of(name) is not None
    return key, units.to_si(float(value), parts[1]) if numeric and parts else float(value)


# ---- names


@dataclass(frozen=True)
class Names:
    """Names that may be referred to; None when the file that would hold them cannot be read."""

    sticks: tuple[str, ...] | None
    toppers: tuple[str, ...] | None
    extensions: tuple[str, ...] | None
    actions: tuple[str, ...] | None


def names_in(file: TomlFile | None, key: str) -> tuple[str, ...] | None:
    """Names of the tables of an array: all sticks of a kit."""
    if file is None:
        return None
    return tuple(table["name"] for _, table in _tables(file.data, key) if isinstance(table.get("name"), str))


def _doubled_names(file: TomlFile, key: str) -> Iterator[Problem]:
    first: dict[str, FieldPath] = {}
    for path, table in _tables(file.data, key):
        name = table.get("name")
        if not isinstance(name, str):
            continue
        folded = name.strip().casefold()
        if folded in first:
            yield Problem(
                file.where((*path, "name")),
                f"a second {key} called {as_typed(name)} (the first: line {file.lines.line(first[folded])})",
                f"another name for each {key}",
                "Choose another name, or delete one of the two.",
            )
        first.setdefault(folded, path)


def _unknown(
    file: TomlFile, path: FieldPath, value: Any, known: Sequence[str] | None, what: str, home: str
) -> Iterator[Problem]:
    if known is None or not isinstance(value, str) or value in known:
        return
    yield Problem(file.where(path), as_typed(value), f"the name of {what} in {home}", did_you_mean(value, known))


# ---- kit


def kit_doubts(kit: TomlFile) -> list[Noticed]:
    """What is contradictory in a kit."""
    noticed: list[Noticed] = []
    for key in ("stick", "topper", "extension"):
        noticed += _doubled_names(kit, key)
    for path, stick in _tables(kit.data, "stick"):
        noticed += _stick_doubts(kit, path, stick)
    return noticed


def _stick_doubts(kit: TomlFile, path: FieldPath, stick: dict[str, Any]) -> Iterator[Noticed]:
    start, full = (_number(stick, Stick, name) for name in ("start_force_n", "full_force_n"))
    if start and full and full[1] < start[1]:
        yield Problem(
            kit.where((*path, full[0])),
            f"{full[0]} = {as_typed(stick[full[0]])} below {start[0]} = {as_typed(stick[start[0]])}",
            "a force at the stop that is at least the force to leave the centre",
            "Look whether the two are swapped, or in different units.",
        )
    height, travel = (_number(stick, Stick, name) for name in ("contact_height_m", "travel_m"))
    if height and travel and stick.get("kind", "lever") == "lever" and travel[1] > height[1]:
        yield Problem(
            kit.where((*path, travel[0])),
            f"{travel[0]} = {as_typed(stick[travel[0]])} with {height[0]} = {as_typed(stick[height[0]])}",
            "a travel no longer than the contact height (travel is height times the sine of the angle)",
            "Measure travel from the centre to the stop, not from stop to stop, and height from the pivot.",
        )
    for name in ("start_force", "full_force", "friction_force"):
        yield from _interval_doubts(kit, path, stick, name)


def _interval_doubts(kit: TomlFile, path: FieldPath, stick: dict[str, Any], name: str) -> Iterator[Noticed]:
    key = typed_key(stick, Stick, f"{name}_interval_n")
    ends = stick.get(key) if key else None
    if key is None or not isinstance(ends, list) or len(ends) != 2:
        return
    if not all(isinstance(end, int | float) and not isinstance(end, bool) for end in ends):
        return
    if ends[0] > ends[1]:
        yield Problem(kit.where((*path, key)), as_typed(ends), "the lower end first", "Swap the two.")
        return
    value = _number(stick, Stick, f"{name}_n")
    low, high = (units.to_si(float(end), units.ending_of(key)) for end in ends)
    if value and not low <= value[1] <= high:
        yield Finding(
            "query",
            "interval",
            f"{kit.where((*path, value[0]))}: {as_typed(stick[value[0]])} lies outside its own interval "
            f"{key} = {as_typed(ends)}. Was one of them typed in another unit, or not brought up to date?",
        )


# ---- game


def game_doubts(game: TomlFile) -> list[Noticed]:
    """Names of actions that are doubled or point nowhere."""
    noticed: list[Noticed] = [*_doubled_names(game, "action")]
    actions = names_in(game, "action")
    for path, action in _tables(game.data, "action"):
        together = action.get("together")
        for place, name in enumerate(together if isinstance(together, list) else []):
            noticed += _unknown(game, (*path, "together", place), name, actions, "an action", game.name)
    return noticed


# ---- player


def player_doubts(
    player: TomlFile, names: Names, gauges: dict[FieldPath, GaugeReadings], made_on: str = ""
) -> list[Noticed]:
    """What is doubtful in a player file.

    Parameters
    ----------
    player : TomlFile
        The file as parsed.
    names : Names
        What may be referred to.
    gauges : dict
        Path of a site -> its gauge readings, already read.
    made_on : str
        Today, YYYY-MM-DD, to ask about visits in the future; '' when not known.
    """
    noticed: list[Noticed] = [*_doubled_names(player, "site"), *_visit_doubts(player, made_on)]
    for path, site in site_tables(player):
        noticed += _reference_doubts(player, path, site, names)
        noticed += _reading_doubts(player, path, site, gauges.get(path))
    return noticed


def _visit_doubts(player: TomlFile, made_on: str) -> Iterator[Noticed]:
    visit = player.data.get("visit", "")
    if isinstance(visit, datetime.date):
        visit = visit.isoformat()[:10]
    if not isinstance(visit, str) or not visit:
        return
    try:
        day = datetime.date.fromisoformat(visit)
    except ValueError:
        yield Problem(player.where(("visit",)), as_typed(visit), "a date as YYYY-MM-DD", "For example 2026-03-01.")
        return
    if made_on and day.isoformat() > made_on:
        yield Finding(
            "query",
            "date",
            f"{player.where(('visit',))}: the visit ({visit}) lies after today ({made_on}). Wrong clock?",
        )


def _reference_doubts(player: TomlFile, path: FieldPath, site: dict[str, Any], names: Names) -> Iterator[Problem]:
    for key in ("on_stick", "recording"):
        for where, table in _tables(site, key, path):
            for field, known in (("stick", names.sticks), ("topper", names.toppers), ("extension", names.extensions)):
                article = "an" if field == "extension" else "a"
                yield from _unknown(player, (*where, field), table.get(field), known, f"{article} {field}", "kit.toml")
    suited = None if names.toppers is None else (*names.toppers, *_FORMS)
    for key, known, what in (("liked", names.sticks, "a stick"), ("toppers", suited, "a topper, or a form of topper,")):
        items = site.get(key)
        for place, name in enumerate(items if isinstance(items, list) else []):
            yield from _unknown(player, (*path, key, place), name, known, what, "kit.toml")
    yield from _unknown(player, (*path, "action"), site.get("action"), names.actions, "an action", "game.toml")


def _reading_doubts(
    player: TomlFile, path: FieldPath, site: dict[str, Any], gauge: GaugeReadings | None
) -> Iterator[Noticed]:
    lists = [*_typed_lists(player, path, site), *(gauge.lists if gauge else ())]
    yield from _doubled_directions(player, path, site, gauge)
    if gauge and gauge.again_force_n and typed_key(site, Site, "again_force_n"):
        key = typed_key(site, Site, "again_force_n") or ""
        yield Problem(
            player.where((*path, key)),
            f"{key} beside a first direction repeated at the end of {as_typed(site.get('gauge_readings'))}",
            "the repeated first direction in one place",
            "Delete one of the two.",
        )
    part = site.get("part")
    if isinstance(part, str):
        yield from unlikely(part, player.where(path), lists)
    step = _number(site, Site, "gauge_step_n")
    yield from _list_doubts(player.where(path), lists, step[1] if step else None)
    measured = ("reading", "gauge_readings", "on_stick", "recording", "press_rate_per_s", "press_rate_per_min")
    if not any(site.get(key) for key in measured):
        yield Finding(
            "query", "nothing measured",
            f"{player.where(path)}: nothing was measured here yet. Add one [[site.reading]], or what was reached on a "
            "stick ([[site.on_stick]]); four directions are enough to begin with.",
        )  # fmt: skip
    for where, table in _tables(site, "reading", path):
        if not any(typed_key(table, DirectionReading, name) for name in ("force_n", "reach_m")):
            yield Finding(
                "query", "empty reading",
                f"{player.where(where)}: neither force nor reach. Not taken? Then leave this direction out.",
            )  # fmt: skip


def _typed_lists(player: TomlFile, path: FieldPath, site: dict[str, Any]) -> Iterator[TypedList]:
    """Comfortable forces and travels of a site as typed; involuntary and resting forces have no usual range."""
    where: list[tuple[FieldPath, dict[str, Any], tuple[str, ...]]] = [(path, site, ("again_force",))]
    where += [(spot, table, ("force", "reach")) for spot, table in _tables(site, "reading", path)]
    where += [(spot, table, ("force", "at_reach")) for spot, table in _tables(site, "along", path)]
    for spot, table, stems in where:
        for key, value in table.items():
            parts = units.split_key(key)
            if parts is None or parts[0] not in stems:
                continue
            items = value if isinstance(value, list) else [value]
            numbers = [
                (place, float(item))
                for place, item in enumerate(items)
                if isinstance(item, int | float) and not isinstance(item, bool) and abs(item) < 1e15
            ]
            if numbers:
                yield TypedList(
                    key,
                    tuple(number for _, number in numbers),
                    tuple(as_typed(items[place]) for place, _ in numbers),
                    tuple(
                        player.where((*spot, key, place) if isinstance(value, list) else (*spot, key))
                        for place, _ in numbers
                    ),
                    _direction_text(table),
                )


def _direction_text(table: dict[str, Any]) -> str:
    key = typed_key(table, DirectionReading, "direction_rad")
    return f"{as_typed(table[key])}{'°' if key.endswith('_deg') else ' rad'}" if key else "the first direction"


def _doubled_directions(
    player: TomlFile, path: FieldPath, site: dict[str, Any], gauge: GaugeReadings | None
) -> Iterator[Problem]:
    first: dict[int, str] = {}
    for reading in gauge.reading if gauge else ():
        first.setdefault(_turn(reading.direction_rad), f"in {as_typed(site.get('gauge_readings'))}")
    for where, table in _tables(site, "reading", path):
        direction = _number(table, DirectionReading, "direction_rad")
        if direction is None:
            continue
        turn = _turn(direction[1])
        if turn in first:
            yield Problem(
                player.where((*where, direction[0])),
                f"the direction {_direction_text(table)} a second time (the first: {first[turn]})",
                "each direction once",
                "Put all repeats of a direction into one list.",
            )
        first.setdefault(turn, f"line {player.lines.line(where)}")


def _turn(direction_rad: float) -> int:
    """Hundredths of a degree, whole turns taken off, so that 0 and 360 are one direction."""
    return round(math.degrees(direction_rad) * 100) % 36_000


def _list_doubts(where: str, lists: Iterable[TypedList], gauge_step_n: float | None) -> Iterator[Finding]:
    same = []
    for typed in lists:
        positive = [value for value in typed.values if value > 0]
        fine = gauge_step_n is None or typed.sort != "force" or min(typed.si) >= _FINE * gauge_step_n
        if typed.sort == "force" and len(typed.values) >= 3 and len(set(typed.values)) == 1 and positive and fine:
            same.append(typed)
        elif len(positive) > 1 and max(positive) > _SPREAD * min(positive):
            low, high = (typed.texts[typed.values.index(pick(positive))] for pick in (min, max))
            yield Finding(
                "query",
                "repeats apart",
                f"{typed.places[0]}: the repeats at {typed.direction} run from {low} to {high}. A slipped decimal "
                "point, a decimal comma (0,44 in a list is two numbers), or one in another unit?",
            )
    if same:
        directions = ", ".join(dict.fromkeys(typed.direction for typed in same))
        yield Finding(
            "query",
            "identical repeats",
            f"{where}: all repeats are identical at {directions}, first at {same[0].places[0]}. Copied or rounded? "
            "Scatter will be taken from the other directions.",
        )


def game_for_even_use(player: TomlFile | None) -> Game:
    """Stands for a missing game: every direction counts alike, each action that a site names is a stick action."""
    named = [
        site["action"] for _, site in site_tables(player) if isinstance(site.get("action"), str) and site["action"]
    ]
    actions = [{"name": name, "kind": "two-axis"} for name in dict.fromkeys(named)]
    return Game.model_validate({"name": "even use", "action": actions or [{"name": "move", "kind": "two-axis"}]})
