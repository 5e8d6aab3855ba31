"""What a player has agreed to, until when. The last word of a player counts; earlier ones stay.

Missing consent never keeps anybody from helping today: it keeps results from being kept.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

import sqlalchemy as sa

from stickwright.codes.entries import Entries
from stickwright.codes.message import Message, Name, message
from stickwright.codes.player_records import PlayerRecords
from stickwright.codes.trail import Trail
from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.store.opening import Store
from stickwright.store.schema import consent

__all__ = ["SCOPES", "Consent", "consent_of", "consent_state", "consents_of", "give_consent", "may_keep", "withdraw"]

SCOPES = ("measure", "keep", "photos", "share", "teach", "follow up")


@dataclass(frozen=True)
class Consent:
    """A consent as it stands.

    Parameters
    ----------
    id, player_id : int
    given_on, until : str
        YYYY-MM-DD; the last day included.
    given_by : str
        In what role, never a name.
    scope : tuple of str
        Of `SCOPES`.
    explained : str
        What was explained, and how the player said yes.
    withdrawn : bool
    at, who : str
        When and by whom it was written down.
    valid : bool
        Neither withdrawn nor over, on the day asked about.
    """

    id: int
    player_id: int
    given_on: str
    until: str
    given_by: str
    scope: tuple[str, ...]
    explained: str
    withdrawn: bool
    at: str
    who: str
    valid: bool


def give_consent(
    store: Store,
    player_id: int,
    *,
    given_on: str,
    until: str,
    given_by: str,
    scope: Iterable[str],
    explained: str = "",
    who: str,
) -> Consent:
    """Write down a consent.

    Parameters
    ----------
    store : Store
    player_id : int
    given_on, until : str
        YYYY-MM-DD.
    given_by : str
        In what role: "the player, an adult".
    scope : iterable of str
        Of `SCOPES`.
    explained : str
    who : str

    Raises
    ------
    BadInput
        No date, an end before the beginning, an unknown word in `scope`, nobody who gave it.
    """
    words = tuple(dict.fromkeys(scope))
    problems = [
        Problem("scope", word, message(PlayerRecords.a_scope), did_you_mean(word, SCOPES))
        for word in words
        if word not in SCOPES
    ]
    days = []
    for where, text in (("given_on", given_on), ("until", until)):
        try:
            days.append(datetime.date.fromisoformat(text))
        except ValueError:
            problems.append(Problem(where, text or message(Entries.nothing), message(Entries.a_date)))
    if len(days) == 2 and days[1] < days[0]:
        problems.append(Problem("until", until, message(Entries.date_from, date=Name(given_on))))
    if not given_by.strip() or len(given_by) > 80:
        problems.append(Problem("given_by", given_by or message(Entries.nothing), message(PlayerRecords.who_gave)))
    if problems:
        raise BadInput(problems)
    row = {
        "player_id": player_id, "given_on": days[0].isoformat(), "until": days[1].isoformat(), "given_by": given_by.strip(),
        "scope": [word for word in SCOPES if word in words], "explained": explained, "withdrawn": False,
    }  # fmt: skip
    return _append(store, row, who, message(Trail.consent_recorded), days[0])


def withdraw(store: Store, player_id: int, *, who: str) -> Consent:
    """Take the last consent back.

    Raises
    ------
    BadInput
        There is none, or it has been taken back already.
    """
    today = store.clock.now().date()
    with store.write(who, ""):
        now = consent_of(store, player_id, today)
        if now is None or now.withdrawn:
            found, expected = message(PlayerRecords.none_to_withdraw), message(PlayerRecords.given_consent)
            raise BadInput(Problem(message(PlayerRecords.consent), found, expected))
        row = {
            "player_id": player_id, "given_on": now.given_on, "until": now.until, "given_by": now.given_by,
            "scope": list(now.scope), "explained": now.explained, "withdrawn": True,
        }  # fmt: skip
        return _append(store, row, who, message(Trail.consent_withdrawn), today)


def consent_of(store: Store, player_id: int, today: datetime.date) -> Consent | None:
    """The last word of a player; None when nothing is written down.

    Parameters
    ----------
    store : Store
    player_id : int
    today : date
        The day that `Consent.valid` is about.
    """
    with store.read() as connection:
        return consents_of(connection, (player_id,), today).get(player_id)


def may_keep(store: Store, player_id: int, today: datetime.date) -> bool:
    """Whether results of today may be kept."""
    now = consent_of(store, player_id, today)
    return now is not None and now.valid and "keep" in now.scope


def consents_of(connection: sa.Connection, player_ids: Sequence[int], today: datetime.date) -> dict[int, Consent]:
    """The last word of each of several players."""
    last = sa.select(sa.func.max(consent.c.id)).where(consent.c.player_id.in_(player_ids)).group_by(consent.c.player_id)
    rows = connection.execute(sa.select(consent).where(consent.c.id.in_(last))).mappings()
    return {row["player_id"]: _consent(dict(row), today) for row in rows}


def consent_state(now: Consent | None) -> Message:
    """How it stands, for a list of players."""
    if now is None:
        return message(PlayerRecords.not_asked)
    if now.withdrawn:
        return message(PlayerRecords.withdrawn)
    if not now.valid:
        return message(PlayerRecords.ended, date=Name(now.until))
    return message(PlayerRecords.until, date=Name(now.until), keep="keep" in now.scope)


def _append(store: Store, row: dict[str, object], who: str, what: Message, today: datetime.date) -> Consent:
    player_id = int(str(row["player_id"]))
    with store.write(who, what, player_id) as connection:
        connection.execute(sa.insert(consent).values(at=store.at(), who=who, **row))
        return consents_of(connection, (player_id,), today)[player_id]


def _consent(row: dict[Any, Any], today: datetime.date) -> Consent:
    valid = not row["withdrawn"] and str(row["until"]) >= today.isoformat()
    return Consent(**{**row, "scope": tuple(row["scope"])}, valid=valid)
