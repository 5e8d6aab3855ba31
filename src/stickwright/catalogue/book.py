"""A book: all the words of one language. Which book is open is known to whatever reports, not to the engine."""

from __future__ import annotations

import contextlib
import contextvars
import functools
import importlib.util
from collections.abc import Iterator
from importlib import import_module
from typing import TYPE_CHECKING, Any, cast

from stickwright.codes.message import Message, Text, module_of

if TYPE_CHECKING:
    from stickwright.catalogue.writer import Writer

__all__ = ["FAMILY_LANGUAGES", "LANGUAGES", "Book", "book", "own_name", "say", "speaking"]

LANGUAGES = ("en",)
"""Folders of this room, each a language with every topic."""
FAMILY_LANGUAGES = ("en", "de", "ar")
"""Languages that the family's pages can be printed in: those that are not in `LANGUAGES` have these pages' texts alone, and say all
else in English, marked as that."""


class Book:
    """The words of one language; a topic is loaded when it is first needed.

    Parameters
    ----------
    language : str
        One of `LANGUAGES`.
    """

    def __init__(self, language: str) -> None:
        self.language = language
        self.writer: Writer = import_module(f"stickwright.catalogue.{language}").writer
        self._topics: dict[str, Any] = {}

    def say(self, text: Text) -> str:
        """The words of a message; a text that is one already stays as it is."""
        if isinstance(text, str):
            return text
        if not self._has(text):
            return self.writer.in_english(_opened(LANGUAGES[0]).say(text))
        return cast(str, getattr(self.topic(module_of(text.topic)), text.text)(**dict(text.params)))

    def _has(self, text: Message) -> bool:
        """Whether this language has words of its own for a message: a language of the family's pages has some topics, and of some
        only what those pages say."""
        if self.language in LANGUAGES:
            return True
        module = module_of(text.topic)
        known = importlib.util.find_spec(f"stickwright.catalogue.{self.language}.{module}") is not None
        return known and hasattr(self.topic(module), text.text)

    def topic(self, module: str) -> Any:
        """All texts of a topic, each a method that says it.

        Parameters
        ----------
        module : str
            Of the topic: ``consent_page``.
        """
        if module not in self._topics:
            texts = import_module(f"stickwright.catalogue.{self.language}.{module}").Texts
            self._topics[module] = texts(self.writer, self.say)
        return self._topics[module]


_opened = functools.cache(Book)
_language: contextvars.ContextVar[str] = contextvars.ContextVar("language", default=LANGUAGES[0])


def book() -> Book:
    """The book that is open here: English, unless `speaking` opened another."""
    return _opened(_language.get())


def own_name(language: str) -> str:
    """What a language calls itself.

    Parameters
    ----------
    language : str
        One of `FAMILY_LANGUAGES`.

    Examples
    --------
    >>> own_name("de")
    'Deutsch'
    """
    return _opened(language).writer.locale.get_language_name() or language


def say(text: Text) -> str:
    """The words of a message in the language that is spoken here."""
    return book().say(text)


@contextlib.contextmanager
def speaking(language: str) -> Iterator[Book]:
    """Open the book of a language for what is done inside, in this thread or task alone.

    Parameters
    ----------
    language : str
        One of `FAMILY_LANGUAGES`.
    """
    if language not in FAMILY_LANGUAGES:
        raise ValueError(f"language: found '{language}', expected one of {', '.join(FAMILY_LANGUAGES)}")
    token = _language.set(language)
    try:
        yield book()
    finally:
        _language.reset(token)
