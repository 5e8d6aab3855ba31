"""What of the kit is with whom, since when, and due when."""

from __future__ import annotations

from stickwright.store.loans import loans
from stickwright.web.desk import At

__all__ = ["loan_rows"]


def loan_rows(here: At) -> list[tuple[str, str, str, str]]:
    """Kit that is with this player: item, since, due, and a word when it is overdue.

    Parameters
    ----------
    here : At
    """
    today = here.desk.today().isoformat()
    rows = (loan for loan in loans(here.store, here.player_id) if not loan.back_on)
    return [(loan.item, loan.out_on, loan.due_on, "overdue" if loan.due_on < today else "") for loan in rows]
