"""What is wrong with the files of a visit, and what looks odd: the very sentences that the command line says."""

from __future__ import annotations

from typing import NamedTuple

from stickwright.records.folder import check_case
from stickwright.store.cases import tree_of
from stickwright.web.desk import At

__all__ = ["Noticed", "noticed_about"]


class Noticed(NamedTuple):
    """One sentence; `level` is 'wrong' when it stops a plan, 'query' when it asks to look, 'note' when it informs."""

    level: str
    words: str


def noticed_about(here: At, name: str = "") -> tuple[Noticed, ...]:
    """What was noticed in the files of a visit: what stops a plan first.

    Parameters
    ----------
    here : At
    name : str
        Only what concerns this file; all when ''.
    """
    problems, queries = check_case(tree_of(here.store, here.visit_id), here.desk.today().isoformat())
    told = [Noticed("wrong", str(problem)) for problem in problems]
    told += [Noticed(finding.level, finding.text) for finding in queries]
    return tuple(one for one in told if not name or name in one.words)
