"""What a message says, with plain spaces: for tests that look for words."""

from __future__ import annotations

from stickwright.catalogue import say
from stickwright.codes.message import Text
from stickwright.errors import Problem

__all__ = ["place", "said"]


def said(text: Text) -> str:
    """The words, each space that does not break as a plain one."""
    return say(text).replace("\N{NO-BREAK SPACE}", " ")


def place(problem: Problem) -> str:
    """Where a problem is, as one text."""
    return ", ".join(said(step) for step in problem.where)
