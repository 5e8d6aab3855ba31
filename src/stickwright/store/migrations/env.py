"""Run by `stickwright.store.migrating` with a connection of ours, inside a transaction of ours."""

from alembic import context

from stickwright.store.schema import METADATA

connection = context.config.attributes["connection"]
context.configure(
    connection=connection,
    target_metadata=METADATA,
    render_as_batch=connection.dialect.name == "sqlite",  # SQLite changes a table by copying it
    transactional_ddl=True,
    compare_type=True,
)
context.run_migrations()
