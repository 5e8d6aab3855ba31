"""The tables. A row once written is never changed: what is corrected gets a further version, with who and when.

A visit is a typed case in versions. Each part of it (player, kit, hub, room, each game) is a JSON document with the number of its
schema, `version.typed`: the tree of what was entered, numbers as typed with the unit in the key, half filled or not
(`stickwright.files.typed_document`). It is made once, when the part is saved, by the one parser of case files, and it is what the
program reads from then on. Beside it, in the same row, `version.body` keeps the file as somebody brought or typed it, with its
comments, byte for byte; other files of the folder (photographs, gauge and bench tables), and a part that cannot be read yet,
are kept as that alone. Documents without a visit are the specialist's own shelf (`kit.toml` and its benches), used where a visit
has none of its own. Recordings made live are kept as samples, not as files, and go into the case as they are.

Tables that hold no truth of their own and may be made anew from the others at any time: `visit_fact` and `reading`, which let
a player be looked at through time without reading all documents again, `recording_summary`, what lists say of a recording, and
`tail`, the samples of a running recording that have not yet been packed into a `chunk`.
"""

from __future__ import annotations

import sqlalchemy as sa

__all__ = [
    "METADATA", "account", "act", "chunk", "consent", "document", "loan_act", "plan", "plan_input", "player", "reading",
    "recording", "recording_act", "recording_summary", "setting", "tail", "version", "visit", "visit_fact",
]  # fmt: skip

METADATA = sa.MetaData(
    naming_convention={
        "ix": "ix_%(table_name)s_%(column_0_N_name)s",
        "uq": "uq_%(table_name)s_%(column_0_N_name)s",
        "ck": "ck_%(table_name)s_%(constraint_name)s",
        "fk": "fk_%(table_name)s_%(column_0_N_name)s",
        "pk": "pk_%(table_name)s",
    }
)
_ID = sa.BigInteger().with_variant(sa.Integer, "sqlite")
"""SQLite counts up by itself only what it calls INTEGER."""


def _id() -> sa.Column[int]:
    return sa.Column("id", _ID, primary_key=True)


def _of(table: str, *, name: str | None = None, nullable: bool = False) -> sa.Column[int]:
    return sa.Column(name or f"{table}_id", _ID, sa.ForeignKey(f"{table}.id"), nullable=nullable, index=True)


def _when() -> tuple[sa.Column[str], sa.Column[str]]:
    """When (UTC, ISO 8601, to the millisecond, always ending in Z so that text sorts as time) and who."""
    return sa.Column("at", sa.String(24), nullable=False), sa.Column("who", sa.String(80), nullable=False)


account = sa.Table(
    "account", METADATA, _id(), *_when(),
    sa.Column("name", sa.String(80), nullable=False, index=True),
    sa.Column("role", sa.String(20), nullable=False),  # practitioner, reader
    sa.Column("password", sa.String(200), nullable=False),  # argon2id, with its salt and cost
    sa.Column("closed", sa.Boolean, nullable=False, default=False),
    comment="Versions: the last row of a name counts",
)  # fmt: skip

act = sa.Table(
    "act", METADATA, _id(), *_when(),
    sa.Column("what", sa.String(40), nullable=False),
    _of("player", nullable=True),
    sa.Column("detail", sa.Text, nullable=False, default=""),
    comment="Who did what: the trail. Says nothing about a player that has been erased.",
)  # fmt: skip

player = sa.Table(
    "player", METADATA, _id(), *_when(),
    sa.Column("code", sa.String(40), nullable=False),
    sa.Column("code_key", sa.String(40), nullable=False, unique=True),  # casefolded
)  # fmt: skip

consent = sa.Table(
    "consent", METADATA, _id(), *_when(), _of("player"),
    sa.Column("given_on", sa.String(10), nullable=False),
    sa.Column("until", sa.String(10), nullable=False),
    sa.Column("given_by", sa.String(80), nullable=False),  # in what role, never a name
    sa.Column("scope", sa.JSON, nullable=False),  # list of the words in `consents.SCOPES`
    sa.Column("explained", sa.Text, nullable=False, default=""),
    sa.Column("withdrawn", sa.Boolean, nullable=False, default=False),
    comment="Versions: the last row of a player counts",
)  # fmt: skip

visit = sa.Table(
    "visit", METADATA, _id(), *_when(), _of("player"),
    sa.Column("number", sa.Integer, nullable=False),
    sa.UniqueConstraint("player_id", "number"),
)  # fmt: skip

visit_fact = sa.Table(
    "visit_fact", METADATA,
    sa.Column("visit_id", _ID, sa.ForeignKey("visit.id"), primary_key=True),
    sa.Column("on_date", sa.String(10), nullable=False, default=""),
    sa.Column("sites", sa.JSON, nullable=False),
    sa.Column("game", sa.String(200), nullable=False, default=""),
    sa.Column("problems", sa.Integer, nullable=False, default=0),
    comment="Derived from the documents of the visit",
)  # fmt: skip

document = sa.Table(
    "document", METADATA, _id(), _of("visit", nullable=True),
    sa.Column("name", sa.String(200), nullable=False),
    sa.UniqueConstraint("visit_id", "name"),
    sa.Index("uq_document_shelf", "name", unique=True, sqlite_where=sa.text("visit_id IS NULL"),
             postgresql_where=sa.text("visit_id IS NULL")),
    comment="Without a visit: the shelf",
)  # fmt: skip

version = sa.Table(
    "version", METADATA, _id(), *_when(), _of("document"),
    sa.Column("number", sa.Integer, nullable=False),
    sa.Column("body", sa.LargeBinary, nullable=False),  # zlib
    sa.Column("digest", sa.String(64), nullable=False),  # SHA-256 of the body as it was before packing
    sa.Column("why", sa.Text, nullable=False, default=""),
    sa.Column("removed", sa.Boolean, nullable=False, default=False),
    sa.Column("typed", sa.LargeBinary, nullable=True),  # what the body says, as JSON, zlib; null where it says nothing readable
    sa.UniqueConstraint("document_id", "number"),
)  # fmt: skip

reading = sa.Table(
    "reading", METADATA, _id(), _of("visit"), _of("version"),
    sa.Column("site", sa.String(200), nullable=False),
    sa.Column("kind", sa.String(20), nullable=False),  # force, reach, rest, hold, press
    sa.Column("direction_rad", sa.Float, nullable=True),
    sa.Column("repeats", sa.JSON, nullable=False),  # SI
    sa.Column("typed", sa.Text, nullable=False, default=""),
    comment="Derived from the documents of the visit",
)  # fmt: skip

recording = sa.Table(
    "recording", METADATA, _id(), *_when(), _of("visit"),
    sa.Column("name", sa.String(200), nullable=False),
    sa.Column("site", sa.String(200), nullable=False),
    sa.Column("task", sa.String(20), nullable=False),
    sa.Column("stick", sa.String(200), nullable=False, default=""),
    sa.Column("topper", sa.String(200), nullable=False, default=""),
    sa.Column("extension", sa.String(200), nullable=False, default=""),
    sa.Column("source", sa.String(20), nullable=False),  # browser, computer, replay
    sa.Column("device", sa.String(200), nullable=False, default=""),
    sa.Column("columns", sa.JSON, nullable=False),  # names of the float64 columns, time_s first
    sa.Column("asked", sa.JSON, nullable=False),  # settings of the task, seed among them
    sa.UniqueConstraint("visit_id", "name"),
)  # fmt: skip

recording_act = sa.Table(
    "recording_act", METADATA, _id(), *_when(), _of("recording"),
    sa.Column("what", sa.String(40), nullable=False),  # began, paused, resumed, stopped, done, set aside, taken back
    sa.Column("sample", sa.BigInteger, nullable=False),
    sa.Column("detail", sa.Text, nullable=False, default=""),
)  # fmt: skip

chunk = sa.Table(
    "chunk", METADATA,
    sa.Column("recording_id", _ID, sa.ForeignKey("recording.id"), primary_key=True),
    sa.Column("first", sa.BigInteger, primary_key=True),
    sa.Column("samples", sa.Integer, nullable=False),
    sa.Column("body", sa.LargeBinary, nullable=False),
    sa.Column("digest", sa.String(64), nullable=False),
)  # fmt: skip

tail = sa.Table(
    "tail", METADATA,
    sa.Column("recording_id", _ID, sa.ForeignKey("recording.id"), primary_key=True),
    sa.Column("sample", sa.BigInteger, primary_key=True),
    sa.Column("body", sa.LargeBinary, nullable=False),
    comment="Samples of a running recording, not yet packed",
)  # fmt: skip

recording_summary = sa.Table(
    "recording_summary", METADATA,
    sa.Column("recording_id", _ID, sa.ForeignKey("recording.id"), primary_key=True),
    sa.Column("program", sa.String(40), nullable=False),  # version that worked it out
    sa.Column("samples", sa.BigInteger, nullable=False),  # from how many
    sa.Column("told", sa.Text, nullable=False),
    comment="Derived from the samples of the recording",
)  # fmt: skip

plan = sa.Table(
    "plan", METADATA, _id(), *_when(), _of("visit"),
    sa.Column("number", sa.Integer, nullable=False),
    sa.Column("program", sa.String(40), nullable=False),
    sa.Column("asked", sa.JSON, nullable=False),  # draws, seed, date, wishes
    sa.Column("result", sa.LargeBinary, nullable=False),  # the plan as JSON, zlib
    sa.Column("digest", sa.String(64), nullable=False),
    sa.UniqueConstraint("visit_id", "number"),
)  # fmt: skip

plan_input = sa.Table(
    "plan_input", METADATA, _id(), _of("plan"), _of("version", nullable=True), _of("recording", nullable=True),
    sa.Column("samples", sa.BigInteger, nullable=True),  # of the recording, as long as it then was
    comment="The exact documents and recordings that a plan came from",
)  # fmt: skip

loan_act = sa.Table(
    "loan_act", METADATA, _id(), *_when(),
    sa.Column("loan", sa.Integer, nullable=False, index=True),
    _of("player"),
    sa.Column("item", sa.String(200), nullable=False),
    sa.Column("what", sa.String(20), nullable=False),  # out, due, back, cleaned, undone
    sa.Column("on_date", sa.String(10), nullable=False),
    sa.Column("note", sa.Text, nullable=False, default=""),
)  # fmt: skip

setting = sa.Table(
    "setting", METADATA, _id(), *_when(),
    sa.Column("name", sa.String(80), nullable=False, index=True),
    sa.Column("value", sa.JSON, nullable=False),
    comment="Versions: the last row of a name counts",
)  # fmt: skip
