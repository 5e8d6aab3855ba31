"""What is wrong with the files of a visit, and what looks odd: the very sentences that the command line says."""

from __future__ import annotations

import re
from typing import NamedTuple

from stickwright.catalogue import say
from stickwright.records.folder import check_case
from stickwright.store.cases import tree_of
from stickwright.web.desk import At

__all__ = ["Noticed", "for_pages", "noticed_about"]

TABLES = {
    "site": "a site on the page 'Sites'",
    "site.reading": "a reading on the page 'Readings'",
    "site.on_stick": "how far on a stick, on the page 'Readings'",
    "site.rest": "a resting force on the page 'Readings'",
    "site.press": "presses on the page 'Readings'",
    "site.recording": "a recording on the page 'Measure'",
    "stick": "a stick on the page 'Kit'",
    "action": "an action on the page 'Game'",
    "place": "a place on the page 'Room'",
    "hub": "a hub on the page 'Hub'",
}
"""Tables of the files, as whoever never sees a file would look for them."""
_TABLE = re.compile(r"(?:(?:one|an|a) )?\[\[?([a-z_.]+)\]\]?")
_NO_KIT = re.compile(r"^kit\.toml: found no such file.*$")


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
    told = [Noticed("wrong", for_pages(str(problem))) for problem in problems]
    told += [Noticed(finding.level, for_pages(say(finding.text))) for finding in queries]
    return tuple(one for one in told if not name or name in one.words)


def for_pages(sentence: str) -> str:
    """A sentence about a file, for somebody who fills in pages: tables by the page that they are on.

    Parameters
    ----------
    sentence : str

    Examples
    --------
    >>> for_pages("nothing was measured here yet. Add one [[site.reading]]; four directions are enough.")
    "nothing was measured here yet. Add a reading on the page 'Readings'; four directions are enough."
    """
    if _NO_KIT.match(sentence):
        return "kit.toml: there is no kit yet. Add the sticks that are there to choose from on the page 'Kit'."
    return _TABLE.sub(lambda found: TABLES.get(found[1], found[0]), sentence)
