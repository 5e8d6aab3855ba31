"""How hard a text is to read: the Flesch-Kincaid grade [kincaid-1975], with syllables by a plain rule.

Kincaid, Fishburne, Rogers and Chissom 1975, Derivation of new readability formulas for Navy enlisted personnel, Research Branch
Report 8-75: grade = 0.39 words a sentence + 11.8 syllables a word - 15.59.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import Any

from stickwright.model.plan import Plan
from stickwright.report.family import first_page, trouble
from stickwright.report.who import who_page

__all__ = ["grade", "hold_grade", "syllables"]

HIGHEST = 6.0
HIGHEST_OF_A_TEXT = 10.0
"""Of one text alone: a list of directions is long, and each of its words is short."""

_WORD = re.compile(r"[A-Za-z][A-Za-z'’-]*|\d[\d.,:]*")


def syllables(word: str) -> int:
    """Groups of vowels, without a silent e at the end; a number counts as one.

    Examples
    --------
    >>> [syllables(word) for word in ("stick", "table", "place", "player", "removed", "12")]
    [1, 2, 1, 2, 2, 1]
    """
    letters = re.sub(r"[^a-z]", "", word.casefold())
    if not letters:
        return 1
    stem = re.sub(r"(?<![aeiouyl])e$|(?<=[aeiouy])le$|(?<![td])ed$|(?<![szxc])es$", "", letters) or letters
    return max(1, len(re.findall(r"[aeiouy]+", stem)))


def grade(texts: Iterable[str]) -> float:
    """The grade of several texts together; a text ends a sentence, and so does a full stop, a question or an exclamation mark.

    Parameters
    ----------
    texts : iterable of str
    """
    sentences = [one for text in texts for one in re.split(r"[.?!](?:\s|$)", text) if _WORD.search(one)]
    words = [word for one in sentences for word in _WORD.findall(one)]
    return 0.39 * len(words) / len(sentences) + 11.8 * sum(syllables(word) for word in words) / len(words) - 15.59


def strings(told: Any) -> Iterator[str]:
    """Every text of a page's dictionary but its drawings."""
    if isinstance(told, str):
        yield told
    elif isinstance(told, dict):
        yield from (one for key, value in told.items() if key != "svg" for one in strings(value))
    elif isinstance(told, list | tuple):
        yield from (one for value in told for one in strings(value))


def sentences(made: Plan) -> list[str]:
    """What the family reads as sentences: labels and names would only make it look easier."""
    one, two = first_page(made), who_page(made)
    told = {key: one[key] for key in ("lead", "picture", "steps", "boxes", "stop")}
    told |= {f"{key} of controls": two[key] for key in ("lead", "order", "paired", "cautions")}
    return [text for text in strings([told, trouble(made)]) if text.endswith((".", "?"))]


def hold_grade(made: Plan) -> None:
    """Grade 6 for all together, and no text that is much harder."""
    told = sentences(made)
    assert len(told) > 10
    assert grade(told) <= HIGHEST
    assert [text for text in told if len(text.split()) > 4 and grade([text]) > HIGHEST_OF_A_TEXT] == []
