"""How far a visit is: each step in words, what it still lacks, and the one thing to do next.

Looks at the documents as they were typed, so that a visit with gaps, or with a mistake in it, has a state like any other: missing
is a state, not an error. What is wrong is told where it is entered.
"""

from __future__ import annotations

import csv
import io
import math
from collections import Counter
from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple, get_args

from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.visit_page import Counted, Needed, ReadToo, VisitPage
from stickwright.errors import BadInput
from stickwright.files.game_files import games_among
from stickwright.files.held import HeldFile, HeldPlace
from stickwright.files.toml_lines import read_toml
from stickwright.web.steps import STEPS, VisitStep

__all__ = ["Done", "StepState", "next_step", "step_states"]

NEEDED = ("sites", "readings", "kit", "game", "plan", "sheet")
"""Without these there is no sheet; the others make it better."""
READ_TOO: tuple[ReadToo, ...] = get_args(ReadToo)
FULL_ROUND = 8
"""Directions of a full round, one each 45 degrees."""


class StepState(NamedTuple):
    """One step: what is there; what it lacks, '' for nothing; whether that is enough to go on."""

    step: VisitStep
    words: Message
    lacks: Text
    enough: bool


Found = tuple[Message, Text, bool]
NOTHING_YET = message(VisitPage.nothing_yet)


class Done(NamedTuple):
    """What is not in the documents: live recordings by site, number and age of the last plan."""

    recordings: Mapping[str, int]
    plan: int | None = None
    plan_is_old: bool = False


def step_states(tree: Mapping[str, HeldFile], done: Done) -> tuple[StepState, ...]:
    """The state of each step.

    Parameters
    ----------
    tree : mapping of str to bytes or TomlFile
        What the documents of the visit say, by name, with the kit of the shelf where the visit has none.
    done : Done
    """
    read = {name: _read(tree.get(f"{name}.toml")) for name in ("player", "kit", "room")}
    sites = _tables(read["player"], "site")
    told: dict[str, Found] = {
        "room": _room(read["room"]),
        "sites": _sites(sites),
        "readings": _readings(sites, tree),
        "measure": _measure(sites, done.recordings),
        "kit": _kit(read["kit"]),
        "game": _games([_read(tree[name]) for name in games_among(tree)]),
        "plan": _plan(done),
        "mounts": _mounts(read["room"], done),
        "sheet": (message(VisitPage.ready), "", True) if done.plan else (NOTHING_YET, _needed("plan"), False),
    }
    return tuple(StepState(step, *told[step.key]) for step in STEPS)


def next_step(states: Sequence[StepState]) -> StepState:
    """The one thing to do next: the first needed step that is not enough yet; the sheet when all is there."""
    open_steps = [state for state in states if state.step.key in NEEDED and not state.enough]
    return open_steps[0] if open_steps else states[-1]


def _read(held: HeldFile | None) -> dict[str, Any] | None:
    """The document; None when there is none; empty when it cannot be read, which its own page says."""
    if held is None:
        return None
    try:
        return read_toml(HeldPlace({"file": held}, "file"), "file", "player").data
    except BadInput:
        return {}


def _tables(read: Mapping[str, Any] | None, name: str) -> list[Mapping[str, Any]]:
    found = (read or {}).get(name, [])
    return [table for table in found if isinstance(table, dict)] if isinstance(found, list) else []


def _count(number: int, thing: Counted) -> Message:
    return message(VisitPage.counted, thing=thing, count=number)


def _called(table: Mapping[str, Any]) -> Name:
    return Name(str(table.get("name", "?")))


def _needed(what: Needed) -> Message:
    return message(VisitPage.needed, what=what)


def _room(read: Mapping[str, Any] | None) -> Found:
    things: tuple[Counted, ...] = ("tube", "edge", "surface")
    holds = [_count(len(_tables(read, key)), key) for key in things if _tables(read, key)]
    if not read or not (holds or "posture" in read):
        return NOTHING_YET, _needed("room"), False
    places = len(_tables(read, "place"))
    posture = (Name(str(read["posture"])),) if "posture" in read else ()
    words = message(VisitPage.listed, parts=(*posture, *holds))
    return words, "" if places else _needed("places"), bool(holds and places)


def _sites(sites: Sequence[Mapping[str, Any]]) -> Found:
    if not sites:
        return NOTHING_YET, _needed("site"), False
    return message(VisitPage.sites_entered, count=len(sites), names=tuple(map(_called, sites))), "", True


def _readings(sites: Sequence[Mapping[str, Any]], tree: Mapping[str, HeldFile]) -> Found:
    if not sites:
        return NOTHING_YET, _needed("sites_first"), False
    told: list[Message] = []
    lacking: list[Name] = []
    for site in sites:
        words = _readings_of(site, tree)
        if words is None:
            lacking.append(_called(site))
        else:
            told.append(message(VisitPage.named, name=_called(site), what=words))
    lacks = message(VisitPage.nothing_for, sites=tuple(lacking)) if lacking and told else ""
    return message(VisitPage.many_listed, parts=tuple(told)) if told else NOTHING_YET, lacks, bool(told)


def _readings_of(site: Mapping[str, Any], tree: Mapping[str, HeldFile]) -> Message | None:
    """What was taken at one site: ``8 of 8 directions, 3 times each; resting force; hold``; None for nothing."""
    repeats: Counter[float] = Counter()
    for table in _tables(site, "reading"):
        taken = [_length(value) for key, value in table.items() if key.startswith(("force_", "reach_"))]
        if taken and (towards := _direction_deg(table)) is not None:
            repeats[towards] += max(taken)
    for row in _rows(tree.get(str(site.get("gauge_readings", "")))):
        towards = _direction_deg(row)
        if towards is not None and any(key.startswith("force_") and value for key, value in row.items()):
            repeats[towards] += 1
    parts = []
    if repeats:
        full = max(FULL_ROUND, len(repeats))
        parts.append(message(VisitPage.directions, read=len(repeats), of=full, repeats=min(repeats.values())))
    parts += [message(VisitPage.read_too, what=key) for key in READ_TOO if site.get(key)]
    return message(VisitPage.many_listed, parts=tuple(parts)) if parts else None


def _measure(sites: Sequence[Mapping[str, Any]], live: Mapping[str, int]) -> Found:
    counts = Counter({str(site.get("name", "?")): len(_tables(site, "recording")) for site in sites}) + Counter(live)
    if not counts:
        return NOTHING_YET, _needed("recording"), False
    told = (
        message(VisitPage.counted_at, thing="recording", count=number, site=Name(site))
        for site, number in counts.items()
    )
    return message(VisitPage.many_listed, parts=tuple(told)), "", True


def _kit(read: Mapping[str, Any] | None) -> Found:
    kinds: tuple[Counted, ...] = ("stick", "switch", "controller", "mount")
    told = tuple(_count(len(_tables(read, kind)), kind) for kind in kinds if _tables(read, kind))
    if not told:
        return NOTHING_YET, _needed("kit"), False
    has_stick = bool(_tables(read, "stick"))
    return message(VisitPage.listed, parts=told), "" if has_stick else _needed("stick"), has_stick


def _games(games: Sequence[Mapping[str, Any] | None]) -> Found:
    told = tuple(
        message(VisitPage.named, name=_called(read), what=_count(len(actions), "action"))
        for read in games
        if read and (actions := _tables(read, "action"))
    )
    if not told:
        return NOTHING_YET, _needed("game"), False
    unsaid = len(games) - len(told)
    lacks = message(VisitPage.actions_of_games, count=unsaid) if unsaid else ""
    return message(VisitPage.many_listed, parts=told), lacks, True


def _plan(done: Done) -> Found:
    if not done.plan:
        return NOTHING_YET, "", False
    older = _needed("new_plan") if done.plan_is_old else ""
    return message(VisitPage.plan_made, number=done.plan), older, not done.plan_is_old


def _mounts(room: Mapping[str, Any] | None, done: Done) -> Found:
    if not room or not _tables(room, "place"):
        return NOTHING_YET, _needed("seating"), False
    return (message(VisitPage.mounts_drawn), "", True) if done.plan else (NOTHING_YET, _needed("plan"), False)


def _rows(table: HeldFile | None) -> list[dict[str, str]]:
    if not isinstance(table, bytes):  # not there, or another part of the case
        return []
    lines = [line for line in table.decode("utf-8-sig", "replace").splitlines() if not line.startswith("#")]
    return [
        {str(key): str(value or "") for key, value in row.items()}
        for row in csv.DictReader(io.StringIO("\n".join(lines)))
    ]


def _length(value: object) -> int:
    return len(value) if isinstance(value, list) else 1


def _direction_deg(taken: Mapping[str, Any]) -> float | None:
    """Direction in whole degrees; None when none is said, or it is no number."""
    for key, in_degrees in (("direction_deg", 1.0), ("direction_rad", 180 / math.pi)):
        try:
            towards = round(float(taken[key]) * in_degrees, 1) % 360
        except (KeyError, TypeError, ValueError, OverflowError):
            continue
        if math.isfinite(towards):
            return towards
    return None
