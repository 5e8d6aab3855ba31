"""What a what-if plan was asked, in the words that mark it on every page, on the screen and in the list of plans."""

from __future__ import annotations

from stickwright.model.wishes import Wishes
from stickwright.sheet.printed import clipped, listed

__all__ = ["what_if_mark", "wishes_words"]

_MOST_LETTERS = 110  # of a line at the head of a page


def wishes_words(wishes: Wishes) -> str:
    """What was wished besides the case, in a few words; nothing when nothing was.

    Parameters
    ----------
    wishes : Wishes

    Examples
    --------
    >>> wishes_words(Wishes(without=("ivy", "chin"), only_kit=True, most_parts=1))
    'without ivy and chin; only what is in stock; with at most 1 device'
    """
    keep = listed(f"{one.what} at {one.where}" for one in wishes.keep)
    parts = [
        f"without {listed(wishes.without)}" if wishes.without else "",
        f"keeping {keep}" if keep else "",
        "only what is in stock" if wishes.only_kit else "",
        f"for at most {wishes.budget:g}" if wishes.budget is not None else "",
    ]
    if wishes.most_parts is not None:
        parts.append(f"with at most {wishes.most_parts} device{'' if wishes.most_parts == 1 else 's'}")
    return "; ".join(part for part in parts if part)


def what_if_mark(wishes: Wishes) -> str:
    """The line that marks a what-if; nothing for a plan of the case as it is.

    Parameters
    ----------
    wishes : Wishes

    Examples
    --------
    >>> what_if_mark(Wishes(only_kit=True)), what_if_mark(Wishes())
    ('WHAT IF: only what is in stock', '')
    """
    return clipped(f"WHAT IF: {wishes_words(wishes)}", _MOST_LETTERS) if wishes.what_if else ""
