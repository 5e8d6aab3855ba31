"""What a database says when it cannot go on, in words that help. Anything not known here is a defect and stays as it is."""

from __future__ import annotations

from collections.abc import Callable

import sqlalchemy as sa

from stickwright.errors import BadInput, Problem

__all__ = ["busy", "damaged", "told"]

_NOTHING_LOST = "Nothing that was saved before is lost."


def busy(place: str) -> BadInput:
    """Somebody else has been writing for longer than we wait."""
    return BadInput(
        Problem(place, "another window or program still writing to it", "a moment in which it is free",
                f"Save again in a moment; close a second stickwright if one is open. {_NOTHING_LOST}")
    )  # fmt: skip


def damaged(place: str) -> BadInput:
    """A page of the file does not pass its own check."""
    return BadInput(
        Problem(place, "a damaged part", "records that pass their own check",
                "Keep this file as it is, and restore the last backup beside it.")
    )  # fmt: skip


def _full(place: str) -> BadInput:
    return BadInput(
        Problem(place, "no room left on the disk", "room to save",
                f"Empty the bin or move large files away, then save again. {_NOTHING_LOST}")
    )  # fmt: skip


def _shut(place: str) -> BadInput:
    return BadInput(
        Problem(place, "a folder or file that may not be written", "a folder of your own",
                f"Move the records to a folder that you may write to, or ask for the right to write there. {_NOTHING_LOST}")
    )  # fmt: skip


def _failing(place: str) -> BadInput:
    return BadInput(
        Problem(place, "an error from the disk itself", "a disk that answers",
                f"Check that the disk or stick is still plugged in, then open the records again. {_NOTHING_LOST}")
    )  # fmt: skip


def _silent(place: str) -> BadInput:
    return BadInput(
        Problem(place, "no answer from the team's server", "a server that answers",
                f"Check the network, then try again. {_NOTHING_LOST}")
    )  # fmt: skip


_BY_WORDS: tuple[tuple[str, Callable[[str], BadInput]], ...] = (
    ("database is locked", busy),
    ("database table is locked", busy),
    ("database or disk is full", _full),
    ("readonly database", _shut),
    ("unable to open database file", _shut),
    ("disk i/o error", _failing),
    ("malformed", damaged),
    ("file is not a database", damaged),
)
_BY_STATE: dict[str, Callable[[str], BadInput]] = {"55P03": busy, "57014": busy, "53100": _full, "25006": _shut}
"""PostgreSQL, appendix A: lock not available, cancelled (our own time limit), disk full, read only."""


def told(error: Exception, place: str) -> BadInput | None:
    """The sentence for what a database said, or None when a person cannot put it right.

    Parameters
    ----------
    error : Exception
        From the database, or as SQLAlchemy wraps it.
    place : str
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
