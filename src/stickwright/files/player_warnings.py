"""What one table alone cannot tell of a player: names that point nowhere, figures that contradict each other,
readings that look like another unit. All of it is looked for in what was typed, so that it is told
beside everything else that is wrong, and in the unit that was typed.
"""

from __future__ import annotations

import datetime
import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from stickwright.codes.expected import Expected
from stickwright.codes.file_tables import FileTable, FileTables
from stickwright.codes.message import Message, Name, message
from stickwright.codes.player_warnings import PlayerWarnings
from stickwright.codes.remedies import Remedies
from stickwright.codes.warnings import Named, Warnings
from stickwright.errors import Problem, did_you_mean
from stickwright.files.fields import fields_of, typed_key
from stickwright.files.gauge import GaugeReadings
from stickwright.files.plausible_ranges import TypedList, unlikely
from stickwright.files.repeats import list_warnings, typed_lists
from stickwright.files.sharing_warnings import press_warnings, sharing_warnings
from stickwright.files.toml_lines import FieldPath, TomlFile
from stickwright.files.typed_tables import (
    Noticed,
    doubled_names,
    names_in,
    number,
    query,
    tables,
    taken_names,
    unknown,
)
from stickwright.files.typed_values import as_typed
from stickwright.model.ages import age_group
from stickwright.model.game import Game
from stickwright.model.kit import Topper
from stickwright.model.player import DirectionReading, Site

__all__ = ["Names", "game_for_even_use", "player_warnings", "site_tables"]

_FORMS = fields_of(Topper)["form"].choices


_FIRST: tuple[FileTable, ...] = ("site.reading", "site.on_stick")
"""What to begin with, where nothing was measured."""


@dataclass(frozen=True)
class Names:
    """Names that may be referred to; None when the file that would hold them cannot be read."""

    sticks: tuple[str, ...] | None
    toppers: tuple[str, ...] | None
    extensions: tuple[str, ...] | None
    actions: tuple[str, ...] | None
    controllers: tuple[str, ...] | None = None


def site_tables(player: TomlFile | None) -> list[tuple[FieldPath, dict[str, Any]]]:
    """Every ``[[site]]`` of a player file with its path."""
    return list(tables(player.data, "site")) if player is not None else []


def player_warnings(
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
    noticed: list[Noticed] = [
        *doubled_names(player, tables(player.data, "site"), "site"),
        *_visit_warnings(player, made_on),
        *_age_warnings(player),
    ]
    noticed += taken_names(player, site_tables(player), "site")
    for path, site in site_tables(player):
        noticed += _reference_warnings(player, path, site, names)
        noticed += _reading_warnings(player, path, site, gauges.get(path))
        step = number(site, Site, "gauge_step_n")
        noticed += press_warnings(player, path, site, step[1] if step else None)
    noticed += sharing_warnings(player, names_in(player, "site") or (), names.controllers)
    return noticed


def _age_warnings(player: TomlFile) -> Iterator[Noticed]:
    band = player.data.get("age_band")
    if isinstance(band, str) and age_group(band) == "not understood":
        yield query("age_band", player.where(("age_band",)), message(PlayerWarnings.age_band, typed=as_typed(band)))


def _visit_warnings(player: TomlFile, made_on: str) -> Iterator[Noticed]:
    visit = player.data.get("visit", "")
    if isinstance(visit, datetime.date):
        visit = visit.isoformat()[:10]
    if not isinstance(visit, str) or not visit:
        return
    try:
        day = datetime.date.fromisoformat(visit)
    except ValueError:
        expected, remedy = message(Expected.date), message(Remedies.example_date)
        yield Problem(player.where(("visit",)), as_typed(visit), expected, remedy)
        return
    if made_on and day.isoformat() > made_on:
        told = message(PlayerWarnings.visit_in_future, visit=Name(visit), today=Name(made_on))
        yield query("date", player.where(("visit",)), told)


def _reference_warnings(player: TomlFile, path: FieldPath, site: dict[str, Any], names: Names) -> Iterator[Problem]:
    for key in ("on_stick", "recording"):
        for where, table in tables(site, key, path):
            for field, known in _known_parts(names):
                yield from unknown(player, (*where, field), table.get(field), known, field, "kit.toml")
    states = [one.get("condition") for _, one in tables(site, "under", path)]
    conditions = [one for one in (site.get("condition"), *states) if isinstance(one, str)]
    for where, table in tables(site, "recording", path):
        said = table.get("condition", "")
        if isinstance(said, str) and said and said not in conditions:
            expected = message(Warnings.condition_of_state)
            yield Problem(player.where((*where, "condition")), as_typed(said), expected, did_you_mean(said, conditions))
    suited = None if names.toppers is None else (*names.toppers, *_FORMS)
    wishes: tuple[tuple[str, tuple[str, ...] | None, Named], ...] = (
        ("liked", names.sticks, "stick"),
        ("toppers", suited, "topper_or_form"),
    )
    for key, known, what in wishes:
        items = site.get(key)
        for place, name in enumerate(items if isinstance(items, list) else []):
            yield from unknown(player, (*path, key, place), name, known, what, "kit.toml")
    yield from unknown(player, (*path, "action"), site.get("action"), names.actions, "action", "game.toml")


def _known_parts(names: Names) -> tuple[tuple[Named, tuple[str, ...] | None], ...]:
    return (("stick", names.sticks), ("topper", names.toppers), ("extension", names.extensions))


def _reading_warnings(
    player: TomlFile, path: FieldPath, site: dict[str, Any], gauge: GaugeReadings | None
) -> Iterator[Noticed]:
    lists = [*_site_lists(player, path, site), *(gauge.lists if gauge else ())]
    yield from _doubled_directions(player, path, site, gauge)
    if gauge and gauge.again_force_n and typed_key(site, Site, "again_force_n"):
        key = typed_key(site, Site, "again_force_n") or ""
        yield Problem(
            player.where((*path, key)),
            message(PlayerWarnings.first_again, key=Name(key), file=as_typed(site.get("gauge_readings"))),
            message(PlayerWarnings.first_once),
            message(Warnings.delete_one),
        )
    part = site.get("part")
    if isinstance(part, str):
        yield from unlikely(part, player.where(path), lists)
    step = number(site, Site, "gauge_step_n")
    yield from list_warnings(player.where(path), lists, step[1] if step else None)
    measured = ("reading", "gauge_readings", "on_stick", "recording", "press_rate_per_s", "press_rate_per_min", "press")
    if not any(site.get(key) for key in measured):
        reading, on_stick = (message(FileTables.one, table=each) for each in _FIRST)
        told = message(PlayerWarnings.nothing_measured, reading=reading, on_stick=on_stick)
        yield query("nothing_measured", player.where(path), told)
    for where, table in tables(site, "reading", path):
        if not any(typed_key(table, DirectionReading, name) for name in ("force_n", "reach_m")):
            yield query("empty_reading", player.where(where), message(PlayerWarnings.empty_reading))


def _site_lists(player: TomlFile, path: FieldPath, site: dict[str, Any]) -> Iterator[TypedList]:
    """Comfortable forces and travels of a site as typed; involuntary and resting forces have no usual range."""
    yield from typed_lists(player, path, site, ("again_force",), message(Warnings.at_first))
    for key, stems in (("reading", ("force", "reach")), ("along", ("force", "at_reach"))):
        for spot, table in tables(site, key, path):
            yield from typed_lists(player, spot, table, stems, _direction_of(table))


def _direction_of(table: dict[str, Any]) -> Message:
    key = typed_key(table, DirectionReading, "direction_rad")
    if key is None:
        return message(Warnings.at_first)
    return message(
        Warnings.at_degrees if key.endswith("_deg") else Warnings.at_radians, typed=Name(as_typed(table[key]))
    )


def _doubled_directions(
    player: TomlFile, path: FieldPath, site: dict[str, Any], gauge: GaugeReadings | None
) -> Iterator[Problem]:
    first: dict[int, int | None] = {}  # the line; None where it is in the file of gauge readings
    for reading in gauge.reading if gauge else ():
        first.setdefault(_turn(reading.direction_rad), None)
    for where, table in tables(site, "reading", path):
        direction = number(table, DirectionReading, "direction_rad")
        if direction is None:
            continue
        turn = _turn(direction[1])
        if turn in first:
            line = first[turn]
            found = message(
                PlayerWarnings.direction_again,
                typed=Name(as_typed(table[direction[0]])),
                unit="deg" if direction[0].endswith("_deg") else "rad",
                line=line,
                file=as_typed(site.get("gauge_readings")) if line is None else None,
            )
            expected, remedy = message(PlayerWarnings.direction_once), message(PlayerWarnings.one_list)
            yield Problem(player.where((*where, direction[0])), found, expected, remedy)
        first.setdefault(turn, player.lines.line(where))


def _turn(direction_rad: float) -> int:
    """Hundredths of a degree, whole turns taken off, so that 0 and 360 are one direction."""
    return round(math.degrees(direction_rad) * 100) % 36_000


def game_for_even_use(player: TomlFile | None) -> Game:
    """Stands for a missing game: every direction counts alike, each action that a site names is a stick action."""
    named = [
        site["action"] for _, site in site_tables(player) if isinstance(site.get("action"), str) and site["action"]
    ]
    actions = [{"name": name, "kind": "two-axis"} for name in dict.fromkeys(named)]
    return Game.model_validate({"name": "any", "action": actions or [{"name": "move", "kind": "two-axis"}]})
