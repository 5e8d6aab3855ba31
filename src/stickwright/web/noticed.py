"""What is wrong with the files of a visit, and what looks odd: the very sentences that the command line says."""

from __future__ import annotations

from typing import NamedTuple

from stickwright.catalogue import say
from stickwright.codes.file_places import FilePlaces
from stickwright.codes.file_tables import FileTables
from stickwright.codes.found import Found
from stickwright.codes.message import Message, Text, message, replaced
from stickwright.codes.page_tables import PageTables
from stickwright.errors import Problem
from stickwright.records.folder import check_case
from stickwright.store.cases import tree_of
from stickwright.web.desk import At

__all__ = ["Noticed", "for_pages", "noticed_about"]

_KIT = "kit.toml"


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
    told = [Noticed("wrong", say(_about(problem))) for problem in problems]
    told += [Noticed(finding.level, say(for_pages(finding.text))) for finding in queries]
    return tuple(one for one in told if not name or name in one.words)


def _about(problem: Problem) -> Text:
    if problem.where == (_KIT,) and problem.found == message(Found.no_file):
        return message(FilePlaces.at, where=problem.where, told=message(PageTables.no_kit))
    return for_pages(problem.sentence)


def for_pages(text: Text) -> Text:
    """What is told of a file, for somebody who fills in pages: tables by the page that they are on.

    Parameters
    ----------
    text : Message or str

    Examples
    --------
    >>> from stickwright.codes.remedies import Remedies
    >>> say(for_pages(message(Remedies.as_recording, table=message(FileTables.one, table="site.recording"))))
    "This looks like a recording: enter it as a recording on the page 'Measure'."
    """
    return replaced(text, _on_page)


def _on_page(told: Message) -> Message:
    of_file = told.topic == FileTables.__name__
    return message(PageTables.one, table=told.param("table")) if of_file else told
