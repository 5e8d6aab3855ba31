"""What a what-if plan was asked, in the words that mark it on every page, on the screen and in the list of plans."""

from __future__ import annotations

from stickwright.codes.message import Message, Name, message
from stickwright.codes.sheets import Sheets
from stickwright.model.wishes import Wishes
from stickwright.report.printed import clipped
from stickwright.report.tell import names, tell

__all__ = ["what_if_mark", "what_if_told", "wishes_words"]

_MOST_LETTERS = 110  # of a line at the head of a page


def wishes_words(wishes: Wishes) -> str:
    """What was wished besides the case, in a few words; nothing when nothing was.

    Examples
    --------
    >>> wishes_words(Wishes(without=("short arm", "chin"), only_kit=True, most_parts=1))
    'without short arm and chin; only what is in stock; with at most 1 device'
    """
    told = _told(wishes)
    return tell(Sheets.wishes, wishes=told) if told else ""


def _told(wishes: Wishes) -> tuple[Message, ...]:
    kept = tuple(message(Sheets.kept, what=Name(one.what), where=Name(one.where)) for one in wishes.keep)
    return (
        *((message(Sheets.without, names=names(wishes.without)),) if wishes.without else ()),
        *((message(Sheets.keeping, kept=kept),) if kept else ()),
        *((message(Sheets.only_stock),) if wishes.only_kit else ()),
        *((message(Sheets.budget, budget_price=float(wishes.budget)),) if wishes.budget is not None else ()),
        *((message(Sheets.most_devices, count=wishes.most_parts),) if wishes.most_parts is not None else ()),
    )


def what_if_told(wishes: Wishes) -> Message:
    """The same for the terminal, with the reminder that it is not the plan of the case."""
    return message(Sheets.what_if_only, wishes=_told(wishes))


def what_if_mark(wishes: Wishes) -> str:
    """The line that marks a what-if; nothing for a plan of the case as it is.

    Examples
    --------
    >>> what_if_mark(Wishes(only_kit=True)), what_if_mark(Wishes())
    ('WHAT IF: only what is in stock', '')
    """
    return clipped(tell(Sheets.what_if, wishes=_told(wishes)), _MOST_LETTERS) if wishes.what_if else ""
