"""What a database says when it cannot go on, in words that help. Anything not known here is a defect and stays as it is."""

from __future__ import annotations

from collections.abc import Callable

import sqlalchemy as sa

from stickwright.codes.message import Message, Text, message
from stickwright.codes.records_file import RecordsFile
from stickwright.errors import BadInput, Problem

__all__ = ["busy", "damaged", "told"]


def _refusal(place: Text, found: Message, expected: Message, remedy: Message) -> BadInput:
    return BadInput(Problem((place,), found, expected, remedy))


def busy(place: Text) -> BadInput:
    """Somebody else has been writing for longer than we wait."""
    found, expected = message(RecordsFile.busy), message(RecordsFile.free_moment)
    return _refusal(place, found, expected, message(RecordsFile.save_again))


def damaged(place: Text) -> BadInput:
    """A page of the file does not pass its own check."""
    found, expected = message(RecordsFile.damaged), message(RecordsFile.whole_records)
    return _refusal(place, found, expected, message(RecordsFile.keep_and_restore))


def _full(place: Text) -> BadInput:
    found, expected = message(RecordsFile.disk_full), message(RecordsFile.room_to_save)
    return _refusal(place, found, expected, message(RecordsFile.make_room))


def _shut(place: Text) -> BadInput:
    found, expected = message(RecordsFile.read_only), message(RecordsFile.own_folder)
    return _refusal(place, found, expected, message(RecordsFile.move_records))


def _failing(place: Text) -> BadInput:
    found, expected = message(RecordsFile.disk_error), message(RecordsFile.working_disk)
    return _refusal(place, found, expected, message(RecordsFile.check_disk))


def _silent(place: Text) -> BadInput:
    found, expected = message(RecordsFile.no_answer), message(RecordsFile.working_server)
    return _refusal(place, found, expected, message(RecordsFile.check_network))


_BY_WORDS: tuple[tuple[str, Callable[[Text], BadInput]], ...] = (
    ("database is locked", busy),
    ("database table is locked", busy),
    ("database or disk is full", _full),
    ("readonly database", _shut),
    ("unable to open database file", _shut),
    ("disk i/o error", _failing),
    ("malformed", damaged),
    ("file is not a database", damaged),
)
_BY_STATE: dict[str, Callable[[Text], BadInput]] = {"55P03": busy, "57014": busy, "53100": _full, "25006": _shut}
"""PostgreSQL, appendix A: lock not available, cancelled (our own time limit), disk full, read only."""


def told(error: Exception, place: Text) -> BadInput | None:
    """The sentence for what a database said, or None when a person cannot put it right.

    Parameters
    ----------
    error : Exception
        From the database, or as SQLAlchemy wraps it.
    place : Message or str
        Where the records are, for people.
    """
    cause = error.orig if isinstance(error, sa.exc.DBAPIError) else error
    state = getattr(cause, "sqlstate", None)
    if state in _BY_STATE:
        return _BY_STATE[state](place)
    gone = isinstance(error, sa.exc.DBAPIError) and error.connection_invalidated
    words = str(cause).casefold()
    if gone or (state is None and "connection" in words and type(cause).__module__.startswith("psycopg")):
        return _silent(place)
    return next((sentence(place) for part, sentence in _BY_WORDS if part in words), None)
