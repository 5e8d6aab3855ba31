"""How far a visit is: each step in words, what it still lacks, and the one thing to do next.

Looks at the documents as they were typed, so that a visit with gaps, or with a mistake in it, has a state like any other: missing
is a state, not an error. What is wrong is told where it is entered.
"""

from __future__ import annotations

import csv
import io
import math
import tomllib
from collections import Counter
from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from stickwright.records.game_files import games_among
from stickwright.web.steps import STEPS, Step

__all__ = ["Done", "StepState", "next_step", "step_states"]

NEEDED = ("sites", "readings", "kit", "game", "plan", "sheet")
"""Without these there is no sheet; the others make it better."""
FULL_ROUND = 8
"""Directions of a full round, one each 45 degrees."""


class StepState(NamedTuple):
    """One step: what is there, in words; what it lacks; whether that is enough to go on."""

    step: Step
    words: str
    lacks: str
    enough: bool


class Done(NamedTuple):
    """What is not in the documents: live recordings by site, number and age of the last plan."""

    recordings: Mapping[str, int]
    plan: int | None = None
    plan_is_old: bool = False


def step_states(tree: Mapping[str, bytes], done: Done) -> tuple[StepState, ...]:
    """The state of each step.

    Parameters
    ----------
    tree : mapping of str to bytes
        Documents of the visit by name, with the kit of the shelf where the visit has none.
    done : Done
    """
    read = {name: _read(tree.get(f"{name}.toml")) for name in ("player", "kit", "room")}
    sites = _tables(read["player"], "site")
    told = {
        "room": _room(read["room"]),
        "sites": _sites(sites),
        "readings": _readings(sites, tree),
        "measure": _measure(sites, done.recordings),
        "kit": _kit(read["kit"]),
        "game": _games([_read(tree[name]) for name in games_among(tree)]),
        "plan": _plan(done),
        "mounts": _mounts(read["room"], done),
        "sheet": ("ready to print", "", True) if done.plan else ("nothing yet", "comes with the plan", False),
    }
    return tuple(StepState(step, *told[step.key]) for step in STEPS)


def next_step(states: Sequence[StepState]) -> StepState:
    """The one thing to do next: the first needed step that is not enough yet; the sheet when all is there.

    Parameters
    ----------
    states : sequence of StepState
    """
    open_steps = [state for state in states if state.step.key in NEEDED and not state.enough]
    return open_steps[0] if open_steps else states[-1]


def _read(body: bytes | None) -> dict[str, Any] | None:
    """The document; None when there is none; empty when it cannot be read, which its own page says."""
    if body is None:
        return None
    try:
        return tomllib.loads(body.decode("utf-8"))
    except ValueError:
        return {}


def _tables(read: Mapping[str, Any] | None, name: str) -> list[Mapping[str, Any]]:
    found = (read or {}).get(name, [])
    return [table for table in found if isinstance(table, dict)] if isinstance(found, list) else []


def _listed(names: Sequence[object]) -> str:
    return ", ".join(str(name) for name in names)


def _count(number: int, one: str, many: str = "") -> str:
    return f"{number} {one if number == 1 else many or one + 's'}"


def _room(read: Mapping[str, Any] | None) -> tuple[str, str, bool]:
    holds = [_count(len(_tables(read, key)), key) for key in ("tube", "edge", "surface") if _tables(read, key)]
    if not read or not (holds or "posture" in read):
        return "nothing yet", "needed only for mounts", False
    places = len(_tables(read, "place"))
    words = _listed([*([read["posture"]] if "posture" in read else []), *holds])
    return words, "" if places else "where each site is", bool(holds and places)


def _sites(sites: Sequence[Mapping[str, Any]]) -> tuple[str, str, bool]:
    if not sites:
        return "nothing yet", "one site is enough to begin", False
    return f"{_count(len(sites), 'site')}: {_listed([site.get('name', '?') for site in sites])}", "", True


def _readings(sites: Sequence[Mapping[str, Any]], tree: Mapping[str, bytes]) -> tuple[str, str, bool]:
    if not sites:
        return "nothing yet", "say first which sites there are", False
    told: list[str] = []
    lacking: list[str] = []
    for site in sites:
        words = _readings_of(site, tree)
        (told if words else lacking).append(
            f"{site.get('name', '?')}: {words}" if words else str(site.get("name", "?"))
        )
    lacks = f"nothing yet for {_listed(lacking)}" if lacking and told else ""
    return "; ".join(told) or "nothing yet", lacks, bool(told)


def _readings_of(site: Mapping[str, Any], tree: Mapping[str, bytes]) -> str:
    """What was taken at one site: ``8 of 8 directions, three repeats; resting force; hold``; '' for nothing."""
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
        fewest = min(repeats.values())
        often = {1: "once each", 2: "two repeats", 3: "three repeats"}.get(fewest, f"{fewest} repeats")
        parts.append(f"{len(repeats)} of {max(FULL_ROUND, len(repeats))} directions, {often}")
    for key, words in (("rest", "resting force"), ("hold", "hold"), ("press", "press"), ("on_stick", "on a stick")):
        if site.get(key):
            parts.append(words)
    return "; ".join(parts)


def _measure(sites: Sequence[Mapping[str, Any]], live: Mapping[str, int]) -> tuple[str, str, bool]:
    counts = Counter({str(site.get("name", "?")): len(_tables(site, "recording")) for site in sites}) + Counter(live)
    if not counts:
        return "nothing yet", "optional: a recording shows tremor and lets the stick be tuned", False
    told = [f"{_count(number, 'recording')} at {site}" for site, number in counts.items()]
    return "; ".join(told), "", True


def _kit(read: Mapping[str, Any] | None) -> tuple[str, str, bool]:
    kinds = ("stick", "switch", "controller", "mount")
    plural = {"switch": "switches"}
    told = [_count(len(_tables(read, kind)), kind, plural.get(kind, "")) for kind in kinds if _tables(read, kind)]
    if not told:
        return "nothing yet", "the sticks that you could lend", False
    return _listed(told), "" if _tables(read, "stick") else "no stick yet", bool(_tables(read, "stick"))


def _games(games: Sequence[Mapping[str, Any] | None]) -> tuple[str, str, bool]:
    told = [
        f"{read.get('name', 'a game')}: {_count(len(actions), 'action')}"
        for read in games
        if read and (actions := _tables(read, "action"))
    ]
    if not told:
        return "nothing yet", "without it, a stick used evenly in all directions is assumed", False
    unsaid = len(games) - len(told)
    return "; ".join(told), f"actions of {_count(unsaid, 'game')}" if unsaid else "", True


def _plan(done: Done) -> tuple[str, str, bool]:
    if not done.plan:
        return "nothing yet", "", False
    older = "something was changed since it was made" if done.plan_is_old else ""
    return f"plan {done.plan} is made", older, not done.plan_is_old


def _mounts(room: Mapping[str, Any] | None, done: Done) -> tuple[str, str, bool]:
    if not room or not _tables(room, "place"):
        return "nothing yet", "needs how the player sits, and where each site is", False
    return ("drawn with the plan", "", True) if done.plan else ("nothing yet", "comes with the plan", False)


def _rows(body: bytes | None) -> list[dict[str, str]]:
    if body is None:
        return []
    lines = [line for line in body.decode("utf-8-sig", "replace").splitlines() if not line.startswith("#")]
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
