"""Who did what, the newest first. Saved files and recordings say so themselves and are not repeated here."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import sqlalchemy as sa

from stickwright.codes.message import Text
from stickwright.store.opening import Store
from stickwright.store.players import Page
from stickwright.store.schema import act, player
from stickwright.store.texts import entry_read

__all__ = ["Act", "trail"]


@dataclass(frozen=True)
class Act:
    """One entry.

    Parameters
    ----------
    id : int
        Entries are ordered by it; the clock may have gone backwards in between.
    at, who : str
    what : Message or str
        A message of `Trail`; words where an earlier version wrote the entry.
    detail : str
        More words of an earlier version.
    code : str
        Of the player whom it is about; empty when about none, or one who has been erased.
    """

    id: int
    at: str
    who: str
    what: Text
    detail: str
    code: str


def trail(store: Store, *, player_id: int | None = None, page: int = 1, per_page: int = 100) -> Page[Act]:
    """Entries, the newest first.

    Parameters
    ----------
    store : Store
    player_id : int, optional
        Only those about one player.
    page : int
        From 1; a page past the end is the last.
    per_page : int
    """
    matches = sa.true() if player_id is None else act.c.player_id == player_id
    with store.read() as connection:
        total = connection.execute(sa.select(sa.func.count()).select_from(act).where(matches)).scalar_one()
        number = min(max(1, page), max(1, -(-total // per_page)))
        rows = connection.execute(
            sa.select(act.c.id, act.c.at, act.c.who, act.c.what, act.c.detail, sa.func.coalesce(player.c.code, ""))
            .join(player, player.c.id == act.c.player_id, isouter=True)
            .where(matches)
            .order_by(act.c.id.desc())
            .limit(per_page)
            .offset((number - 1) * per_page)
        ).all()
    return Page(tuple(_act(row) for row in rows), total, number, per_page)


def _act(row: Any) -> Act:
    what, detail = entry_read(row[3], row[4])
    return Act(row[0], row[1], row[2], what, detail, row[5])
