"""The first tables."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None

_ID = sa.BigInteger().with_variant(sa.Integer(), "sqlite")


def upgrade() -> None:
    """Make them."""
    op.create_table(
        "account",
        sa.Column("id", _ID, nullable=False),
        sa.Column("at", sa.String(length=24), nullable=False),
        sa.Column("who", sa.String(length=80), nullable=False),
        sa.Column("name", sa.String(length=80), nullable=False),
        sa.Column("role", sa.String(length=20), nullable=False),
        sa.Column("password", sa.String(length=200), nullable=False),
        sa.Column("closed", sa.Boolean(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_account")),
        comment="Versions: the last row of a name counts",
    )
    op.create_index(op.f("ix_account_name"), "account", ["name"], unique=False)
    op.create_table(
        "player",
        sa.Column("id", _ID, nullable=False),
        sa.Column("at", sa.String(length=24), nullable=False),
        sa.Column("who", sa.String(length=80), nullable=False),
        sa.Column("code", sa.String(length=40), nullable=False),
        sa.Column("code_key", sa.String(length=40), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_player")),
        sa.UniqueConstraint("code_key", name=op.f("uq_player_code_key")),
    )
    op.create_table(
        "setting",
        sa.Column("id", _ID, nullable=False),
        sa.Column("at", sa.String(length=24), nullable=False),
        sa.Column("who", sa.String(length=80), nullable=False),
        sa.Column("name", sa.String(length=80), nullable=False),
        sa.Column("value", sa.JSON(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_setting")),
        comment="Versions: the last row of a name counts",
    )
    op.create_index(op.f("ix_setting_name"), "setting", ["name"], unique=False)
    op.create_table(
        "act",
        sa.Column("id", _ID, nullable=False),
        sa.Column("at", sa.String(length=24), nullable=False),
        sa.Column("who", sa.String(length=80), nullable=False),
        sa.Column("what", sa.String(length=40), nullable=False),
        sa.Column("player_id", _ID, nullable=True),
        sa.Column("detail", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["player_id"], ["player.id"], name=op.f("fk_act_player_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_act")),
        comment="Who did what: the trail. Says nothing about a player that has been erased.",
    )
    op.create_index(op.f("ix_act_player_id"), "act", ["player_id"], unique=False)
    op.create_table(
        "consent",
        sa.Column("id", _ID, nullable=False),
        sa.Column("at", sa.String(length=24), nullable=False),
        sa.Column("who", sa.String(length=80), nullable=False),
        sa.Column("player_id", _ID, nullable=False),
        sa.Column("given_on", sa.String(length=10), nullable=False),
        sa.Column("until", sa.String(length=10), nullable=False),
        sa.Column("given_by", sa.String(length=80), nullable=False),
        sa.Column("scope", sa.JSON(), nullable=False),
        sa.Column("explained", sa.Text(), nullable=False),
        sa.Column("withdrawn", sa.Boolean(), nullable=False),
        sa.ForeignKeyConstraint(["player_id"], ["player.id"], name=op.f("fk_consent_player_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_consent")),
        comment="Versions: the last row of a player counts",
    )
    op.create_index(op.f("ix_consent_player_id"), "consent", ["player_id"], unique=False)
    op.create_table(
        "loan_act",
        sa.Column("id", _ID, nullable=False),
        sa.Column("at", sa.String(length=24), nullable=False),
        sa.Column("who", sa.String(length=80), nullable=False),
        sa.Column("loan", sa.Integer(), nullable=False),
        sa.Column("player_id", _ID, nullable=False),
        sa.Column("item", sa.String(length=200), nullable=False),
        sa.Column("what", sa.String(length=20), nullable=False),
        sa.Column("on_date", sa.String(length=10), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["player_id"], ["player.id"], name=op.f("fk_loan_act_player_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_loan_act")),
    )
    op.create_index(op.f("ix_loan_act_loan"), "loan_act", ["loan"], unique=False)
    op.create_index(op.f("ix_loan_act_player_id"), "loan_act", ["player_id"], unique=False)
    op.create_table(
        "visit",
        sa.Column("id", _ID, nullable=False),
        sa.Column("at", sa.String(length=24), nullable=False),
        sa.Column("who", sa.String(length=80), nullable=False),
        sa.Column("player_id", _ID, nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["player_id"], ["player.id"], name=op.f("fk_visit_player_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_visit")),
        sa.UniqueConstraint("player_id", "number", name=op.f("uq_visit_player_id_number")),
    )
    op.create_index(op.f("ix_visit_player_id"), "visit", ["player_id"], unique=False)
    op.create_table(
        "document",
        sa.Column("id", _ID, nullable=False),
        sa.Column("visit_id", _ID, nullable=True),
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.ForeignKeyConstraint(["visit_id"], ["visit.id"], name=op.f("fk_document_visit_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_document")),
        sa.UniqueConstraint("visit_id", "name", name=op.f("uq_document_visit_id_name")),
        comment="Without a visit: the shelf",
    )
    op.create_index(op.f("ix_document_visit_id"), "document", ["visit_id"], unique=False)
    op.create_index(
        "uq_document_shelf",
        "document",
        ["name"],
        unique=True,
        sqlite_where=sa.text("visit_id IS NULL"),
        postgresql_where=sa.text("visit_id IS NULL"),
    )
    op.create_table(
        "plan",
        sa.Column("id", _ID, nullable=False),
        sa.Column("at", sa.String(length=24), nullable=False),
        sa.Column("who", sa.String(length=80), nullable=False),
        sa.Column("visit_id", _ID, nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("program", sa.String(length=40), nullable=False),
        sa.Column("asked", sa.JSON(), nullable=False),
        sa.Column("result", sa.LargeBinary(), nullable=False),
        sa.Column("digest", sa.String(length=64), nullable=False),
        sa.ForeignKeyConstraint(["visit_id"], ["visit.id"], name=op.f("fk_plan_visit_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_plan")),
        sa.UniqueConstraint("visit_id", "number", name=op.f("uq_plan_visit_id_number")),
    )
    op.create_index(op.f("ix_plan_visit_id"), "plan", ["visit_id"], unique=False)
    op.create_table(
        "recording",
        sa.Column("id", _ID, nullable=False),
        sa.Column("at", sa.String(length=24), nullable=False),
        sa.Column("who", sa.String(length=80), nullable=False),
        sa.Column("visit_id", _ID, nullable=False),
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("site", sa.String(length=200), nullable=False),
        sa.Column("task", sa.String(length=20), nullable=False),
        sa.Column("stick", sa.String(length=200), nullable=False),
        sa.Column("topper", sa.String(length=200), nullable=False),
        sa.Column("extension", sa.String(length=200), nullable=False),
        sa.Column("source", sa.String(length=20), nullable=False),
        sa.Column("device", sa.String(length=200), nullable=False),
        sa.Column("columns", sa.JSON(), nullable=False),
        sa.Column("asked", sa.JSON(), nullable=False),
        sa.ForeignKeyConstraint(["visit_id"], ["visit.id"], name=op.f("fk_recording_visit_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_recording")),
        sa.UniqueConstraint("visit_id", "name", name=op.f("uq_recording_visit_id_name")),
    )
    op.create_index(op.f("ix_recording_visit_id"), "recording", ["visit_id"], unique=False)
    op.create_table(
        "visit_fact",
        sa.Column("visit_id", _ID, nullable=False),
        sa.Column("on_date", sa.String(length=10), nullable=False),
        sa.Column("sites", sa.JSON(), nullable=False),
        sa.Column("game", sa.String(length=200), nullable=False),
        sa.Column("problems", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["visit_id"], ["visit.id"], name=op.f("fk_visit_fact_visit_id")),
        sa.PrimaryKeyConstraint("visit_id", name=op.f("pk_visit_fact")),
        comment="Derived from the documents of the visit",
    )
    op.create_table(
        "chunk",
        sa.Column("recording_id", _ID, nullable=False),
        sa.Column("first", sa.BigInteger(), nullable=False),
        sa.Column("samples", sa.Integer(), nullable=False),
        sa.Column("body", sa.LargeBinary(), nullable=False),
        sa.Column("digest", sa.String(length=64), nullable=False),
        sa.ForeignKeyConstraint(["recording_id"], ["recording.id"], name=op.f("fk_chunk_recording_id")),
        sa.PrimaryKeyConstraint("recording_id", "first", name=op.f("pk_chunk")),
    )
    op.create_table(
        "recording_act",
        sa.Column("id", _ID, nullable=False),
        sa.Column("at", sa.String(length=24), nullable=False),
        sa.Column("who", sa.String(length=80), nullable=False),
        sa.Column("recording_id", _ID, nullable=False),
        sa.Column("what", sa.String(length=40), nullable=False),
        sa.Column("sample", sa.BigInteger(), nullable=False),
        sa.Column("detail", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["recording_id"], ["recording.id"], name=op.f("fk_recording_act_recording_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_recording_act")),
    )
    op.create_index(op.f("ix_recording_act_recording_id"), "recording_act", ["recording_id"], unique=False)
    op.create_table(
        "tail",
        sa.Column("recording_id", _ID, nullable=False),
        sa.Column("sample", sa.BigInteger(), nullable=False),
        sa.Column("body", sa.LargeBinary(), nullable=False),
        sa.ForeignKeyConstraint(["recording_id"], ["recording.id"], name=op.f("fk_tail_recording_id")),
        sa.PrimaryKeyConstraint("recording_id", "sample", name=op.f("pk_tail")),
        comment="Samples of a running recording, not yet packed",
    )
    op.create_table(
        "version",
        sa.Column("id", _ID, nullable=False),
        sa.Column("at", sa.String(length=24), nullable=False),
        sa.Column("who", sa.String(length=80), nullable=False),
        sa.Column("document_id", _ID, nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("body", sa.LargeBinary(), nullable=False),
        sa.Column("digest", sa.String(length=64), nullable=False),
        sa.Column("why", sa.Text(), nullable=False),
        sa.Column("removed", sa.Boolean(), nullable=False),
        sa.ForeignKeyConstraint(["document_id"], ["document.id"], name=op.f("fk_version_document_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_version")),
        sa.UniqueConstraint("document_id", "number", name=op.f("uq_version_document_id_number")),
    )
    op.create_index(op.f("ix_version_document_id"), "version", ["document_id"], unique=False)
    op.create_table(
        "plan_input",
        sa.Column("id", _ID, nullable=False),
        sa.Column("plan_id", _ID, nullable=False),
        sa.Column("version_id", _ID, nullable=True),
        sa.Column("recording_id", _ID, nullable=True),
        sa.Column("samples", sa.BigInteger(), nullable=True),
        sa.ForeignKeyConstraint(["plan_id"], ["plan.id"], name=op.f("fk_plan_input_plan_id")),
        sa.ForeignKeyConstraint(["recording_id"], ["recording.id"], name=op.f("fk_plan_input_recording_id")),
        sa.ForeignKeyConstraint(["version_id"], ["version.id"], name=op.f("fk_plan_input_version_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_plan_input")),
        comment="The exact documents and recordings that a plan came from",
    )
    op.create_index(op.f("ix_plan_input_plan_id"), "plan_input", ["plan_id"], unique=False)
    op.create_index(op.f("ix_plan_input_recording_id"), "plan_input", ["recording_id"], unique=False)
    op.create_index(op.f("ix_plan_input_version_id"), "plan_input", ["version_id"], unique=False)
    op.create_table(
        "reading",
        sa.Column("id", _ID, nullable=False),
        sa.Column("visit_id", _ID, nullable=False),
        sa.Column("version_id", _ID, nullable=False),
        sa.Column("site", sa.String(length=200), nullable=False),
        sa.Column("kind", sa.String(length=20), nullable=False),
        sa.Column("direction_rad", sa.Float(), nullable=True),
        sa.Column("repeats", sa.JSON(), nullable=False),
        sa.Column("typed", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["version_id"], ["version.id"], name=op.f("fk_reading_version_id")),
        sa.ForeignKeyConstraint(["visit_id"], ["visit.id"], name=op.f("fk_reading_visit_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_reading")),
        comment="Derived from the documents of the visit",
    )
    op.create_index(op.f("ix_reading_version_id"), "reading", ["version_id"], unique=False)
    op.create_index(op.f("ix_reading_visit_id"), "reading", ["visit_id"], unique=False)
