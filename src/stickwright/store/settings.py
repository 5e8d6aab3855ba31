"""Choices that travel with the records; the last word on each counts, earlier ones stay."""

from __future__ import annotations

from typing import Any

import sqlalchemy as sa

from stickwright.codes.message import Name, message
from stickwright.codes.trail import Trail
from stickwright.store.opening import Store
from stickwright.store.schema import setting

__all__ = ["choose", "settings"]


def settings(store: Store) -> dict[str, Any]:
    """All choices as they stand."""
    last = sa.select(sa.func.max(setting.c.id)).group_by(setting.c.name)
    with store.read() as connection:
        rows = connection.execute(
            sa.select(setting.c.name, setting.c.value).where(setting.c.id.in_(last)).order_by(setting.c.name)
        ).all()
    return {row.name: row.value for row in rows}


def choose(store: Store, name: str, value: Any, *, who: str) -> None:
    """Make a choice.

    Parameters
    ----------
    store : Store
    name : str
    value : object
        Anything that JSON can hold.
    who : str
    """
    with store.write(who, message(Trail.setting_changed, name=Name(name))) as connection:
        connection.execute(sa.insert(setting).values(at=store.at(), who=who, name=name, value=value))
