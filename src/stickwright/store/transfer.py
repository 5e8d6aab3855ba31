"""A player carried from one store to another as kept there: every version of every file, every sample, every plan.

It is what happens when somebody worked with in memory agrees to be kept after all. Rows are copied as they are and get numbers
of the other store; nothing is written out and read in again in between, so nothing is rounded, renamed or merged.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import sqlalchemy as sa

from stickwright.codes.counts import Counts
from stickwright.codes.message import Message, message
from stickwright.codes.trail import Trail
from stickwright.store.facts import refresh_facts
from stickwright.store.opening import Store, new_id, note_act
from stickwright.store.schema import (
    chunk,
    document,
    plan,
    plan_input,
    recording,
    recording_act,
    tail,
    version,
    visit,
)

__all__ = ["Transferred", "carry_player"]


@dataclass(frozen=True)
class Transferred:
    """What was carried.

    Parameters
    ----------
    visits, recordings, plans : int
    left : tuple of Message
        What could not be carried, a sentence each; empty when everything was.
    """

    visits: int
    recordings: int
    plans: int
    left: tuple[Message, ...]


def carry_player(source: Store, target: Store, player_id: int, to_player: int, *, who: str) -> Transferred:
    """Copy all visits of a player into another store. The trail of the first store and its consents stay behind.

    Parameters
    ----------
    source, target : Store
        The kit on the shelf is not carried: a plan that used one which the target never had cannot be worked out again there, and
        is left behind, with a sentence.
    player_id, to_player : int
        The player in the one, and, without visits of the same numbers, in the other.
    who : str
    """
    many = {"visits": 0, "recordings": 0, "plans": 0}
    left: list[Message] = []
    with source.read() as held, target.write(who, "") as kept:
        for row in _rows(held, visit, visit.c.player_id == player_id):
            visit_id = _copied(kept, visit, row, player_id=to_player)
            many["visits"] += 1
            versions = _documents(held, kept, row["id"], visit_id)
            recordings = _recordings(held, kept, row["id"], visit_id)
            many["recordings"] += len(recordings)
            for made in _rows(held, plan, plan.c.visit_id == row["id"]):
                inputs = _inputs(held, kept, made["id"], versions, recordings)
                if inputs is None:
                    left.append(message(Counts.kit_gone, plan=made["number"], visit=row["number"]))
                    continue
                plan_id = _copied(kept, plan, made, visit_id=visit_id)
                for one in inputs:
                    _copied(kept, plan_input, one, plan_id=plan_id)
                many["plans"] += 1
            refresh_facts(kept, visit_id)
        note_act(target, kept, who, message(Trail.carried_over, visits=many["visits"]), to_player)
    return Transferred(**many, left=tuple(left))


def _documents(held: sa.Connection, kept: sa.Connection, old: int, new: int) -> dict[int, int]:
    """Files with all their versions; number of each version in the one store -> in the other."""
    numbers = {}
    for row in _rows(held, document, document.c.visit_id == old):
        document_id = _copied(kept, document, row, visit_id=new)
        for one in _rows(held, version, version.c.document_id == row["id"]):
            numbers[one["id"]] = _copied(kept, version, one, document_id=document_id)
    return numbers


def _recordings(held: sa.Connection, kept: sa.Connection, old: int, new: int) -> dict[int, int]:
    """Recordings with their course and all their samples, packed or not; old number -> new number."""
    numbers = {}
    for row in _rows(held, recording, recording.c.visit_id == old):
        numbers[row["id"]] = recording_id = _copied(kept, recording, row, visit_id=new)
        for act in _rows(held, recording_act, recording_act.c.recording_id == row["id"]):
            _copied(kept, recording_act, act, recording_id=recording_id)
        for table, order in ((chunk, chunk.c.first), (tail, tail.c.sample)):
            for one in held.execute(
                sa.select(table).where(table.c.recording_id == row["id"]).order_by(order)
            ).mappings():
                kept.execute(sa.insert(table).values({**one, "recording_id": recording_id}))
    return numbers


def _inputs(
    held: sa.Connection, kept: sa.Connection, plan_id: int, versions: dict[int, int], recordings: dict[int, int]
) -> list[dict[str, Any]] | None:
    """What a plan came from, in the numbers of the other store; None where that store lacks a file of the shelf."""
    made = []
    for row in _rows(held, plan_input, plan_input.c.plan_id == plan_id):
        number = row["version_id"]
        if number is not None:
            number = versions.get(number) or _on_shelf(held, kept, number)
            if number is None:
                return None
        recorded = row["recording_id"]
        made.append({**row, "version_id": number, "recording_id": recordings[recorded] if recorded else None})
    return made


def _on_shelf(held: sa.Connection, kept: sa.Connection, version_id: int) -> int | None:
    """The same bytes under the same name on the other shelf, be it an earlier version."""
    named = sa.join(version, document, version.c.document_id == document.c.id)
    name, digest = held.execute(
        sa.select(document.c.name, version.c.digest).select_from(named).where(version.c.id == version_id)
    ).one()
    same = (document.c.visit_id.is_(None), document.c.name == name, version.c.digest == digest, ~version.c.removed)
    found = kept.execute(sa.select(sa.func.max(version.c.id)).select_from(named).where(*same)).scalar()
    return None if found is None else int(found)


def _rows(held: sa.Connection, table: sa.Table, matches: sa.ColumnElement[bool]) -> list[dict[str, Any]]:
    return [dict(row) for row in held.execute(sa.select(table).where(matches).order_by(table.c.id)).mappings()]


def _copied(kept: sa.Connection, table: sa.Table, row: dict[str, Any], **changed: int) -> int:
    """The row in the other store, with a number of its own."""
    values = {name: value for name, value in row.items() if name != "id"} | changed
    return new_id(kept, sa.insert(table).values(values))
