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

from stickwright.errors import Problem
from stickwright.model.ages import age_group
from stickwright.model.game import Game
from stickwright.model.kit import Topper
from stickwright.model.player import DirectionReading, Site
from stickwright.model.recorded import Finding
from stickwright.records.bands import TypedList, unlikely
from stickwright.records.fields import fields_of, typed_key
from stickwright.records.gauge import GaugeReadings
from stickwright.records.repeats import list_doubts, typed_lists
from stickwright.records.sharing_doubts import press_doubts, sharing_doubts
from stickwright.records.toml_lines import FieldPath, TomlFile
from stickwright.records.typed_tables import (
    Noticed,
    doubled_names,
    names_in,
    number,
    query,
    tables,
    taken_names,
    unknown,
)
from stickwright.records.typed_values import as_typed

__all__ = ["Names", "game_for_even_use", "player_doubts", "site_tables"]

_FORMS = fields_of(Topper)["form"].choices


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
    noticed: list[Noticed] = [
        *doubled_names(player, tables(player.data, "site"), "site"),
        *_visit_doubts(player, made_on),
        *_age_doubts(player),
    ]
    noticed += taken_names(player, site_tables(player), "site")
    for path, site in site_tables(player):
        noticed += _reference_doubts(player, path, site, names)
        noticed += _reading_doubts(player, path, site, gauges.get(path))
        step = number(site, Site, "gauge_step_n")
        noticed += press_doubts(player, path, site, step[1] if step else None)
    noticed += sharing_doubts(player, names_in(player, "site") or (), names.controllers)
    return noticed


def _age_doubts(player: TomlFile) -> Iterator[Noticed]:
    band = player.data.get("age_band")
    if isinstance(band, str) and age_group(band) == "not understood":
        yield query(
            "age_band",
            f"{player.where(('age_band',))}: {as_typed(band)} tells neither a child nor an adult, so what is said of a child is left "
            'out. Write "child", "teenager" or "adult", or ages in years ("6-11"); no date of birth.',
        )


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
        for where, table in tables(site, key, path):
            for field, known in (("stick", names.sticks), ("topper", names.toppers), ("extension", names.extensions)):
                article = "an" if field == "extension" else "a"
                yield from unknown(player, (*where, field), table.get(field), known, f"{article} {field}", "kit.toml")
    states = [one.get("condition") for _, one in tables(site, "under", path)]
    conditions = [one for one in (site.get("condition"), *states) if isinstance(one, str)]
    for where, table in tables(site, "recording", path):
        if table.get("condition") != "":
            said = table.get("condition")
            yield from unknown(player, (*where, "condition"), said, conditions, "the condition of a state", "this site")
    suited = None if names.toppers is None else (*names.toppers, *_FORMS)
    for key, known, what in (("liked", names.sticks, "a stick"), ("toppers", suited, "a topper, or a form of topper,")):
        items = site.get(key)
        for place, name in enumerate(items if isinstance(items, list) else []):
            yield from unknown(player, (*path, key, place), name, known, what, "kit.toml")
    yield from unknown(player, (*path, "action"), site.get("action"), names.actions, "an action", "game.toml")


def _reading_doubts(
    player: TomlFile, path: FieldPath, site: dict[str, Any], gauge: GaugeReadings | None
) -> Iterator[Noticed]:
    lists = [*_site_lists(player, path, site), *(gauge.lists if gauge else ())]
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
    step = number(site, Site, "gauge_step_n")
    yield from list_doubts(player.where(path), lists, step[1] if step else None)
    measured = ("reading", "gauge_readings", "on_stick", "recording", "press_rate_per_s", "press_rate_per_min", "press")
    if not any(site.get(key) for key in measured):
        yield Finding(
            "query", "nothing_measured",
            f"{player.where(path)}: nothing was measured here yet. Add one [[site.reading]], or what was reached on a "
            "stick ([[site.on_stick]]); four directions are enough to begin with.",
        )  # fmt: skip
    for where, table in tables(site, "reading", path):
        if not any(typed_key(table, DirectionReading, name) for name in ("force_n", "reach_m")):
            yield Finding(
                "query", "empty_reading",
                f"{player.where(where)}: neither force nor reach. Not taken? Then leave this direction out.",
            )  # fmt: skip


def _site_lists(player: TomlFile, path: FieldPath, site: dict[str, Any]) -> Iterator[TypedList]:
    """Comfortable forces and travels of a site as typed; involuntary and resting forces have no usual range."""
    yield from typed_lists(player, path, site, ("again_force",), "the first direction")
    for key, stems in (("reading", ("force", "reach")), ("along", ("force", "at_reach"))):
        for spot, table in tables(site, key, path):
            yield from typed_lists(player, spot, table, stems, _direction_text(table))


def _direction_text(table: dict[str, Any]) -> str:
    key = typed_key(table, DirectionReading, "direction_rad")
    return f"{as_typed(table[key])}{'°' if key.endswith('_deg') else ' rad'}" if key else "the first direction"


def _doubled_directions(
    player: TomlFile, path: FieldPath, site: dict[str, Any], gauge: GaugeReadings | None
) -> Iterator[Problem]:
    first: dict[int, str] = {}
    for reading in gauge.reading if gauge else ():
        first.setdefault(_turn(reading.direction_rad), f"in {as_typed(site.get('gauge_readings'))}")
    for where, table in tables(site, "reading", path):
        direction = number(table, DirectionReading, "direction_rad")
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


def game_for_even_use(player: TomlFile | None) -> Game:
    """Stands for a missing game: every direction counts alike, each action that a site names is a stick action."""
    named = [
        site["action"] for _, site in site_tables(player) if isinstance(site.get("action"), str) and site["action"]
    ]
    actions = [{"name": name, "kind": "two-axis"} for name in dict.fromkeys(named)]
    return Game.model_validate({"name": "even use", "action": actions or [{"name": "move", "kind": "two-axis"}]})
