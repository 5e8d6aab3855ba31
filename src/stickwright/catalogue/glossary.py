"""The glossary in the language that is spoken: every term with what it means."""

from __future__ import annotations

from stickwright.catalogue.book import say
from stickwright.codes.glossary_meanings import GlossaryMeanings
from stickwright.codes.glossary_terms import GlossaryTerms
from stickwright.codes.message import Message

__all__ = ["glossary"]


def glossary() -> tuple[tuple[str, str], ...]:
    """Terms with their meanings, in the order of the work.

    Returns
    -------
    tuple of (str, str)
    """
    names = [name for name in vars(GlossaryTerms) if name in GlossaryTerms.__abstractmethods__]
    return tuple((_said(GlossaryTerms, name), _said(GlossaryMeanings, name)) for name in names)


def _said(topic: type, name: str) -> str:
    return say(Message(f"{topic.__name__}.{name}"))
