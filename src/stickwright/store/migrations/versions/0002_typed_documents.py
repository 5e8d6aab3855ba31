"""Parts of a case as typed documents beside their files, and summaries of recordings."""

import zlib

import sqlalchemy as sa
from alembic import op

from stickwright.files.typed_document import document_json, noun_of

revision = "0002"
down_revision = "0001"

_ID = sa.BigInteger().with_variant(sa.Integer(), "sqlite")


def upgrade() -> None:
    """Make the column and the table, and a document of every version of every part; no row loses anything."""
    op.add_column("version", sa.Column("typed", sa.LargeBinary(), nullable=True))
    op.create_table(
        "recording_summary",
        sa.Column("recording_id", _ID, nullable=False),
        sa.Column("program", sa.String(length=40), nullable=False),
        sa.Column("samples", sa.BigInteger(), nullable=False),
        sa.Column("told", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["recording_id"], ["recording.id"], name=op.f("fk_recording_summary_recording_id")),
        sa.PrimaryKeyConstraint("recording_id", name=op.f("pk_recording_summary")),
        comment="Derived from the samples of the recording",
    )
    _fill(op.get_bind())


def _fill(connection: sa.Connection) -> None:
    names = connection.execute(
        sa.text("SELECT version.id, document.name FROM version JOIN document ON document.id = version.document_id")
    ).all()
    body_of = sa.text("SELECT body FROM version WHERE id = :id")
    kept = sa.text("UPDATE version SET typed = :typed WHERE id = :id").bindparams(
        sa.bindparam("typed", type_=sa.LargeBinary())
    )
    for number, name in names:
        if not noun_of(name):
            continue
        try:
            body = zlib.decompress(connection.execute(body_of, {"id": number}).scalar_one())
        except zlib.error:
            continue  # damaged bytes stay as they are, and are told when they are asked for
        document = document_json(name, body)
        if document is not None:
            connection.execute(kept, {"id": number, "typed": zlib.compress(document, 6)})
