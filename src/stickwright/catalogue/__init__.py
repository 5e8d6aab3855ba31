"""The words of every language, and how a language forms numbers, plurals, lists and dates. Only what reports to people imports this."""

from __future__ import annotations

from stickwright import errors
from stickwright.catalogue.book import FAMILY_LANGUAGES, LANGUAGES, Book, book, own_name, say, speaking

__all__ = ["FAMILY_LANGUAGES", "LANGUAGES", "Book", "book", "own_name", "say", "speaking"]

errors.spoken_by(say)
