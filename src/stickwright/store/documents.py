"""Files of a visit, and of the shelf, in versions. What was saved is never changed: undo, too, is a further version."""

from __future__ import annotations

import hashlib
import zlib
from dataclasses import dataclass

import sqlalchemy as sa

from stickwright.codes.entries import Entries
from stickwright.codes.message import Name, Text, message
from stickwright.codes.records_file import RecordsFile
from stickwright.codes.versions import Versions
from stickwright.errors import BadInput, Problem
from stickwright.files.held import HeldFile
from stickwright.files.typed_document import check_schema, document_json, read_document
from stickwright.store.facts import newest_version, refresh_facts
from stickwright.store.merging import MergeConflict, merged
from stickwright.store.opening import Store, new_id
from stickwright.store.schema import document as document_table
from stickwright.store.schema import version, visit
from stickwright.store.texts import text_kept, text_read

__all__ = [
    "Conflict",
    "Document",
    "documents",
    "history",
    "remove_document",
    "save_document",
    "undo_document",
]

_LONGEST_NAME = 200
_LARGEST_BYTES = 64 * 2**20


@dataclass(frozen=True)
class Document:
    """One version of a file.

    Parameters
    ----------
    id, version_id : int
        Of the file and of this version.
    name : str
        ``player.toml``, ``readings/right-index.csv``.
    number : int
        Of the version, from 1.
    body : bytes
        Byte for byte as it was saved.
    at, who : str
        When and by whom.
    why : Message or str
        What for.
    removed : bool
        The file was taken away with this version; the body is still the one before.
    digest : str
        SHA-256 of the body.
    typed : bytes, optional
        What the body says, as JSON (`stickwright.files.typed_document`); None where it is no part of a case or cannot be read.
    """

    id: int
    version_id: int
    name: str
    number: int
    body: bytes
    at: str
    who: str
    why: Text
    removed: bool
    digest: str
    typed: bytes | None = None

    @property
    def says(self) -> HeldFile:
        """The file for the readers of a case: what it says where that is known, else its bytes."""
        return self.body if self.typed is None else read_document(self.typed, self.name, self.body)


class Conflict(BadInput):
    """Two people, or two windows, changed the same thing. Nothing was saved, and nothing is lost.

    Parameters
    ----------
    problems : tuple of Problem
        Both values of each thing that differs.
    theirs : Document
        What stands now.
    mine : bytes
        What was to be saved.
    """

    def __init__(self, problems: tuple[Problem, ...], theirs: Document, mine: bytes) -> None:
        super().__init__(problems)
        self.theirs = theirs
        self.mine = mine


def documents(store: Store, visit_id: int | None) -> dict[str, Document]:
    """The files as they stand now, by name.

    Parameters
    ----------
    store : Store
    visit_id : int or None
        None: the shelf.
    """
    wanted = (
        _versions(visit_id).where(version.c.id == newest_version(), ~version.c.removed).order_by(document_table.c.name)
    )
    with store.read() as connection:
        found = [_document(store, row) for row in connection.execute(wanted)]
    return {one.name: one for one in found}


def history(store: Store, visit_id: int | None, name: str) -> tuple[Document, ...]:
    """All that a file has ever been, the oldest first.

    Parameters
    ----------
    store : Store
    visit_id : int or None
        None: the shelf.
    name : str
    """
    with store.read() as connection:
        return _history(store, connection, visit_id, name)


def save_document(
    store: Store,
    visit_id: int | None,
    name: str,
    body: bytes,
    *,
    who: str,
    why: Text = "",
    based_on: int | None = None,
) -> Document:
    """Keep a file as it now is.

    Where somebody else has saved the same file since, both changes are kept when they are about different things; what
    stands then is told by `why`. Saving what stands already makes no further version.

    Parameters
    ----------
    store : Store
    visit_id : int or None
        None: the shelf.
    name : str
    body : bytes
    who : str
    why : Message or str
    based_on : int, optional
        Number of the version that was changed, 0 for none; not asked when None.

    Returns
    -------
    Document
        As it now stands.

    Raises
    ------
    Conflict
        The same thing was changed by both.
    BadInput
        A name that no file may have, a file of more than 64 MB, no such visit or version, a file that a newer program has saved.
    """
    _check_name(name)
    if len(body) > _LARGEST_BYTES:
        raise BadInput(
            Problem(
                (name,),
                message(Entries.megabytes, count=len(body) // 2**20),
                message(Entries.small_file),
                message(Entries.leave_out_videos),
            )
        )
    with store.write(who, "") as connection:
        past = _history(store, connection, visit_id, name)
        now = past[-1] if past else None
        standing = now is not None and not now.removed
        if now is not None and standing and now.body == body:
            return now
        seen = 0 if now is None or not standing else now.number
        if based_on is not None and based_on not in (seen, now.number if now else 0):
            body, why = _both(past, based_on, body, why, name)
            if now is not None and standing and now.body == body:
                return now
        return _append(store, connection, visit_id, name, past, body, who=who, why=why)


def remove_document(store: Store, visit_id: int | None, name: str, *, who: str, why: Text = "") -> Document:
    """Take a file away; all its versions stay, and undo brings it back.

    Parameters
    ----------
    store : Store
    visit_id : int or None
        None: the shelf.
    name : str
    who : str
    why : Message or str

    Raises
    ------
    BadInput
        There is no such file, or a newer program has saved it.
    """
    with store.write(who, "") as connection:
        past = _history(store, connection, visit_id, name)
        if not past or past[-1].removed:
            raise _no_such(name)
        return _append(store, connection, visit_id, name, past, past[-1].body, who=who, why=why, removed=True)


def undo_document(store: Store, visit_id: int | None, name: str, *, who: str) -> Document:
    """A further version with what stood before the last; undoing once more brings the last back.

    Parameters
    ----------
    store : Store
    visit_id : int or None
        None: the shelf.
    name : str
    who : str

    Raises
    ------
    BadInput
        There is no such file, or a newer program has saved it.
    """
    with store.write(who, "") as connection:
        past = _history(store, connection, visit_id, name)
        if not past:
            raise _no_such(name)
        before = past[-2] if len(past) > 1 else None
        body = past[-1].body if before is None else before.body
        gone = before is None or before.removed
        return _append(
            store, connection, visit_id, name, past, body, who=who, why=message(Versions.undone), removed=gone
        )


def _both(past: tuple[Document, ...], based_on: int, mine: bytes, why: Text, name: str) -> tuple[bytes, Text]:
    """My change and theirs in one."""
    bases = [one for one in past if one.number == based_on]
    if based_on and not bases:
        raise BadInput(
            Problem(
                (name,),
                message(Versions.version, number=based_on),
                message(Versions.version_up_to, number=past[-1].number if past else 0),
                message(Entries.reload),
            )
        )
    theirs = past[-1]
    if not theirs.removed:
        outcome = merged(bases[0].body if bases else b"", theirs.body, mine, name, theirs.who, theirs.at)
        if isinstance(outcome, bytes):
            return outcome, message(Versions.together, why=why, who=Name(theirs.who))
        clash = outcome
    else:
        clash = MergeConflict((
            Problem(
                (name,),
                message(Versions.deleted_meanwhile, who=Name(theirs.who), at=Name(theirs.at)),
                message(Versions.one_of_two),
                message(Versions.undo_delete),
            ),
        ))  # fmt: skip
    raise Conflict(clash.problems, theirs, mine)


def _append(
    store: Store, connection: sa.Connection, visit_id: int | None, name: str, past: tuple[Document, ...], body: bytes,
    *, who: str, why: Text, removed: bool = False,
) -> Document:  # fmt: skip
    at, digest = store.at(), hashlib.sha256(body).hexdigest()
    if past and past[-1].typed is not None:
        check_schema(past[-1].typed, name)
    if past:
        document_id = past[-1].id
    else:
        if (
            visit_id is not None
            and connection.execute(sa.select(visit.c.id).where(visit.c.id == visit_id)).first() is None
        ):
            raise BadInput(
                Problem(
                    (name,),
                    message(Versions.visit, number=visit_id),
                    message(Entries.kept_visit),
                    message(Entries.back_to_player),
                )
            )
        document_id = new_id(connection, sa.insert(document_table).values(visit_id=visit_id, name=name))
    number = past[-1].number + 1 if past else 1
    row = {
        "at": at,
        "who": who,
        "document_id": document_id,
        "number": number,
        "digest": digest,
        "why": text_kept(why),
        "removed": removed,
    }
    typed = document_json(name, body)
    packed = {"body": zlib.compress(body, 6), "typed": None if typed is None else zlib.compress(typed, 6)}
    version_id = new_id(connection, sa.insert(version).values(**row, **packed))
    if visit_id is not None:
        refresh_facts(connection, visit_id)
    return Document(
        id=document_id,
        version_id=version_id,
        name=name,
        number=number,
        body=body,
        at=at,
        who=who,
        why=why,
        removed=removed,
        digest=digest,
        typed=typed,
    )


def _versions(visit_id: int | None) -> sa.Select[tuple[object, ...]]:
    owner = document_table.c.visit_id.is_(None) if visit_id is None else document_table.c.visit_id == visit_id
    return (
        sa.select(version, document_table.c.name)
        .join(document_table, document_table.c.id == version.c.document_id)
        .where(owner)
    )


def _history(store: Store, connection: sa.Connection, visit_id: int | None, name: str) -> tuple[Document, ...]:
    wanted = _versions(visit_id).where(document_table.c.name == name).order_by(version.c.number)
    return tuple(_document(store, row) for row in connection.execute(wanted))


def _document(store: Store, row: sa.Row[tuple[object, ...]]) -> Document:
    held = row._mapping
    typed = None
    try:
        body = zlib.decompress(held["body"])
        typed = None if held["typed"] is None else zlib.decompress(held["typed"])
    except zlib.error:
        body = b""
    if hashlib.sha256(body).hexdigest() != held["digest"]:
        raise BadInput(
            Problem(
                (store.place, message(RecordsFile.version_of, file=Name(held["name"]), number=held["number"])),
                message(RecordsFile.changed_bytes),
                message(RecordsFile.saved_bytes),
                message(RecordsFile.restore_backup),
            )
        )
    names = ("name", "number", "at", "who", "digest")
    return Document(
        id=held["document_id"], version_id=held["id"], body=body, removed=bool(held["removed"]), why=text_read(held["why"]),
        typed=typed,
        **{one: held[one] for one in names},
    )  # fmt: skip


def _check_name(name: str) -> None:
    parts = name.split("/")
    bad = not name or len(name) > _LONGEST_NAME or "\\" in name or any(ord(letter) < 32 for letter in name)
    if bad or name.startswith("/") or any(part in ("", ".", "..") for part in parts) or ":" in parts[0]:
        raise BadInput(
            Problem(
                message(Versions.file_name),
                repr(name),
                message(Versions.a_file_name),
                message(Entries.another_name),
            )
        )


def _no_such(name: str) -> BadInput:
    return BadInput(Problem((name,), message(Versions.no_file), message(Versions.a_file), message(Entries.reload)))
