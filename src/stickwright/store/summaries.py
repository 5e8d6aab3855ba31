"""What lists say of a recording, kept with it: worked out when it is over, not each time that somebody looks.

Derived from the samples, and of no weight of its own. A summary counts only for the version of the program that worked it out
and for as many samples as there were; any other is made anew, in the quiet or when it is first asked for.
"""

from __future__ import annotations

import json
from collections.abc import Sequence

import sqlalchemy as sa

from stickwright.codes.measuring import Measuring
from stickwright.codes.message import Message, Text, message
from stickwright.errors import BadInput
from stickwright.files.results import as_data
from stickwright.measure.progress import progress
from stickwright.measure.tasks import guided_task
from stickwright.store.opening import Store
from stickwright.store.plans import program
from stickwright.store.recordings import ENDS, RecordingRow, recording_named, samples_of
from stickwright.store.schema import recording_act, recording_summary
from stickwright.store.texts import text_read

__all__ = ["summaries_of", "summarise", "summarise_next"]


def summaries_of(store: Store, rows: Sequence[RecordingRow]) -> dict[int, Text]:
    """What each recording told; those that are set aside, or have no samples, tell nothing.

    Returns
    -------
    dict of Message
        By the number of the recording.
    """
    counted = [row for row in rows if not row.aside and row.samples]
    with store.read() as connection:
        wanted = sa.select(recording_summary).where(
            recording_summary.c.recording_id.in_([row.id for row in counted]), recording_summary.c.program == program()
        )
        read = {(one.recording_id, one.samples): text_read(one.told) for one in connection.execute(wanted)}
        kept = {key: text for key, text in read.items() if isinstance(text, Message)}
    told: dict[int, Text] = {}
    for row in counted:
        known = kept.get((row.id, row.samples))
        told[row.id] = summarise(store, row) if known is None else known
    return told


def summarise(store: Store, row: RecordingRow) -> Text:
    """Work out what a recording tells, and keep it when the recording is over."""
    told = _worked_out(store, row)
    if row.state in ENDS:
        _keep(store, row, told)
    return told


def _keep(store: Store, row: RecordingRow, told: Text) -> bool:
    """Whether it could be kept: where somebody else writes, it is told all the same, and kept another time."""
    values = {"program": program(), "samples": row.samples, "told": json.dumps(as_data(told), ensure_ascii=False)}
    try:
        with store.write("", "") as connection:
            connection.execute(sa.delete(recording_summary).where(recording_summary.c.recording_id == row.id))
            connection.execute(sa.insert(recording_summary).values(recording_id=row.id, **values))
    except BadInput:
        return False
    return True


def summarise_next(store: Store) -> bool:
    """Summarise one recording that has no summary by this version; says whether there was one."""
    over = sa.select(recording_act.c.recording_id).where(recording_act.c.what.in_(ENDS), recording_act.c.sample > 0)
    done = sa.select(recording_summary.c.recording_id).where(recording_summary.c.program == program())
    with store.read() as connection:
        missing = over.where(recording_act.c.recording_id.not_in(done)).order_by(recording_act.c.recording_id.desc())
        number = connection.execute(missing.limit(1)).scalar()
    if number is None:
        return False
    row = recording_named(store, number)
    if row.state in ENDS:
        summarise(store, row)
    return row.state in ENDS


def _worked_out(store: Store, row: RecordingRow) -> Text:
    try:
        samples = samples_of(store, row.id)
        task = guided_task(**dict(row.task_asked)) if row.task_asked else guided_task(row.task, seed=1)
        return progress(task, samples).sentence
    except (BadInput, TypeError):  # settings of a task of another version: the samples are there all the same
        return message(Measuring.of_another_version)
