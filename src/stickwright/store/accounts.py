"""Accounts of a team: who may read, who may write.

Passwords are kept as argon2id with the cost that RFC 9106 recommends where memory is scarce [rfc9106]. A name that nobody has
takes as long to refuse as a wrong password, in the same words, and is locked out like any other, so that nobody learns who works
here. Refusals are counted in the trail; a name typed that is no account stands there as a digest only, since what people type
there by mistake is their password.
"""

from __future__ import annotations

import datetime
import hashlib
import unicodedata
from dataclasses import dataclass
from functools import cache
from typing import Any

import sqlalchemy as sa

from stickwright.codes.entries import Entries
from stickwright.codes.message import Message, Name, message
from stickwright.codes.player_records import PlayerRecords
from stickwright.codes.trail import Trail
from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.store.opening import Store, stamp
from stickwright.store.schema import account, act
from stickwright.store.texts import entry_kept

__all__ = ["ROLES", "Account", "accounts", "add_account", "check_password", "close_account"]

ROLES = ("practitioner", "reader")
SHORTEST_PASSWORD = 12
"""Letters. NIST SP 800-63B asks for length, not for kinds of letters [nist-800-63b]."""
FAILURES = 5
LOCKED_FOR = datetime.timedelta(minutes=15)


@dataclass(frozen=True)
class Account:
    """An account as it stands.

    Parameters
    ----------
    name : str
    role : str
        Of `ROLES`.
    closed : bool
    since : str
        When it was last changed.
    """

    name: str
    role: str
    closed: bool
    since: str


def accounts(store: Store) -> tuple[Account, ...]:
    """All accounts by name, closed ones too."""
    last = sa.select(sa.func.max(account.c.id)).group_by(account.c.name)
    with store.read() as connection:
        rows = connection.execute(sa.select(account).where(account.c.id.in_(last)).order_by(account.c.name)).all()
    return tuple(_account(row) for row in rows)


def add_account(store: Store, name: str, *, role: str, password: str, who: str) -> Account:
    """Open an account, or give one that is there a new password and role.

    Parameters
    ----------
    store : Store
    name : str
        Capitals make no difference.
    role : str
        Of `ROLES`.
    password : str
        At least 12 letters.
    who : str

    Raises
    ------
    BadInput
        No name, an unknown role, a short password.
    """
    name = _key(name)
    problems = []
    if not name or len(name) > 80:
        problems.append(Problem("name", name or message(Entries.nothing), message(PlayerRecords.account_name)))
    if role not in ROLES:
        expected = message(PlayerRecords.a_role, roles=tuple(Name(one) for one in ROLES))
        problems.append(Problem("role", role or message(Entries.nothing), expected, did_you_mean(role, ROLES)))
    if len(password) < SHORTEST_PASSWORD:
        problems.append(
            Problem(
                "password",
                message(Entries.letters, count=len(password)),
                message(PlayerRecords.long_password, least=SHORTEST_PASSWORD),
                message(PlayerRecords.several_words),
            )
        )
    if problems:
        raise BadInput(problems)
    held = _hasher().hash(_plain(password))
    with store.write(who, message(Trail.account_opened, name=Name(name), role=Name(role))) as connection:
        at = store.at()
        row = {"at": at, "who": who, "name": name, "role": role, "password": held, "closed": False}
        connection.execute(sa.insert(account).values(row))
    return Account(name, role, False, at)


def close_account(store: Store, name: str, *, who: str) -> Account:
    """Close an account: nobody signs in with it until it is opened again; what it did stays in the trail.

    Raises
    ------
    BadInput
        There is none of that name, or it is closed.
    """
    name = _key(name)
    with store.write(who, message(Trail.account_closed, name=Name(name))) as connection:
        now = _last(connection, name)
        if now is None or now.closed:
            open_ones = [one.name for one in accounts(store) if not one.closed]
            raise BadInput(Problem("account", name, message(PlayerRecords.open_account), did_you_mean(name, open_ones)))
        at = store.at()
        row = {"at": at, "who": who, "name": name, "role": now.role, "password": now.password, "closed": True}
        connection.execute(sa.insert(account).values(row))
    return Account(name, now.role, True, at)


def check_password(store: Store, name: str, password: str) -> Account:
    """Who signs in.

    Raises
    ------
    BadInput
        In the same words whether name or password is wrong, the account is closed or there is none; after five refusals
        within a quarter of an hour, also for the right password, until a quarter of an hour has passed.
    """
    name = _key(name)
    with store.read() as connection:
        now = _last(connection, name)
        digest = Name(hashlib.sha256(name.encode()).hexdigest()[:16]) if now is None else None
        refused = message(Trail.sign_in_refused, name=Name(name) if digest is None else None, digest=digest)
        signed_in = message(Trail.signed_in, name=Name(name))
        locked = _failures(connection, refused, signed_in, store.clock.now()) >= FAILURES
    fits = _fits(now.password if now is not None else _nobody(), password)  # outside any transaction: it takes a while
    if locked:
        raise BadInput(
            Problem(
                message(PlayerRecords.sign_in),
                message(PlayerRecords.refusals, count=FAILURES),
                message(PlayerRecords.a_pause),
                message(PlayerRecords.wait),
            )
        )
    if now is None or now.closed or not fits:
        with store.write("nobody", refused):
            pass
        raise BadInput(
            Problem(
                message(PlayerRecords.sign_in),
                message(PlayerRecords.not_together),
                message(PlayerRecords.of_open_account),
                message(PlayerRecords.enter_both),
            )
        )
    with store.write(name, signed_in):
        pass
    return _account(now)


def _failures(connection: sa.Connection, refused: Message, signed_in: Message, now: datetime.datetime) -> int:
    """Refusals of a name since it last signed in, within the time that counts."""
    (refusal, of), (entered, by) = entry_kept(refused), entry_kept(signed_in)
    signed = sa.select(sa.func.max(act.c.id)).where(act.c.what == entered, act.c.detail == by).scalar_subquery()
    wanted = sa.select(sa.func.count()).where(
        act.c.what == refusal,
        act.c.detail == of,
        act.c.at > stamp(now - LOCKED_FOR),
        act.c.id > sa.func.coalesce(signed, 0),
    )
    return connection.execute(wanted).scalar_one()


def _last(connection: sa.Connection, name: str) -> Any:
    return connection.execute(sa.select(account).where(account.c.name == name).order_by(account.c.id.desc())).first()


def _account(row: Any) -> Account:
    return Account(row.name, row.role, bool(row.closed), row.at)


def _key(name: str) -> str:
    return " ".join(unicodedata.normalize("NFKC", name).casefold().split())


def _plain(password: str) -> bytes:
    return unicodedata.normalize("NFKC", password).encode()


def _fits(held: str, password: str) -> bool:
    from argon2.exceptions import VerifyMismatchError

    try:
        return bool(_hasher().verify(held, _plain(password)))
    except VerifyMismatchError:
        return False


@cache
def _hasher() -> Any:
    from argon2 import PasswordHasher, profiles

    return PasswordHasher.from_parameters(profiles.RFC_9106_LOW_MEMORY)


@cache
def _nobody() -> str:
    """What a password of nobody is held against, so that it takes as long."""
    return str(_hasher().hash(b"nobody has this one"))
