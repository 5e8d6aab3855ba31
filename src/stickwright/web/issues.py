"""What is wrong with the files of a visit, and what looks odd: what the command line says, with pages for places."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from stickwright.catalogue import say
from stickwright.codes.file_places import FilePlaces
from stickwright.codes.file_tables import FileTables
from stickwright.codes.found import Found
from stickwright.codes.message import Message, Text, message, replaced
from stickwright.codes.tables_page import TablesPage
from stickwright.errors import Problem
from stickwright.files.folder import check_case
from stickwright.model.recorded import Finding
from stickwright.store.cases import case_files
from stickwright.web.noun_views import VIEWS
from stickwright.web.request_context import At

__all__ = ["Noticed", "noticed_about", "on_pages", "problem_on_pages"]

_LINE = message(FilePlaces.line, number=1).code
_AT = message(FilePlaces.at, where=(), told="").code
_PAGES = {view.name: view.title for view in VIEWS.values()}
NO_KIT = message(TablesPage.no_kit)


class Noticed(NamedTuple):
    """One sentence; `level` is 'wrong' when it stops a plan, 'query' when it asks to look, 'note' when it informs."""

    level: str
    words: str


def noticed_about(here: At, name: str = "", *, as_files: bool = False) -> tuple[Noticed, ...]:
    """What was noticed in the files of a visit: what stops a plan first.

    Parameters
    ----------
    here : At
    name : str
        Only what concerns this file; all when ''.
    as_files : bool, default False
        Places by file and line, for whoever edits the text, in place of pages.
    """
    problems, queries = check_case(case_files(here.store, here.visit_id), here.desk.today().isoformat())
    wrong = [one for one in problems if not name or name in one.where]
    odd = [one for one in queries if not name or _concerns(one, name)]
    told = [Noticed("wrong", str(one) if as_files else say(problem_on_pages(one))) for one in wrong]
    told += [Noticed(one.level, say(one.text if as_files else on_pages(one.text))) for one in odd]
    return tuple(told)


def _concerns(finding: Finding, name: str) -> bool:
    text = finding.text
    if isinstance(text, Message):
        places = [part.param("where") for part in text.parts() if part.code == _AT]
        return any(name in where for where in places) or name in say(text)
    return name in text


def problem_on_pages(problem: Problem) -> Message:
    """A problem of a file, for somebody who fills in pages."""
    if problem.where == ("kit.toml",) and problem.found == message(Found.no_file):
        return NO_KIT
    found, expected, remedy = (_by_page(text) for text in (problem.found, problem.expected, problem.remedy))
    return Problem(_places(problem.where), found, expected, remedy).sentence


def on_pages(text: Text) -> Text:
    """What was noticed, with its place by the page that it is on."""
    if not isinstance(text, Message) or text.code != _AT:
        return _by_page(text)
    return message(FilePlaces.at, where=_places(text.param("where")), told=_by_page(text.param("told")))


def _by_page(text: Text) -> Text:
    """A text with the tables of files by the page that they are on."""
    return replaced(text, _entry)


def _entry(told: Message) -> Message:
    return message(TablesPage.entry, table=told.param("table")) if told.topic == FileTables.__name__ else told


def _places(where: Iterable[Text]) -> tuple[Text, ...]:
    """Steps of a place: the page for its file, and no lines."""
    steps = [step for step in where if not (isinstance(step, Message) and step.code == _LINE)]
    return tuple(_PAGES.get(step, step) if isinstance(step, str) else step for step in steps)
