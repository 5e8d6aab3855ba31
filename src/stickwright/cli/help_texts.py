"""Help texts from the catalogue's own file, read without importing the catalogue: help must come at once."""

from __future__ import annotations

import os

__all__ = ["FILE", "help_text", "read"]

FILE = os.path.join(os.path.dirname(os.path.dirname(__file__)), "catalogue", "en", "commands.txt")
_held: dict[str, str] = {}


def help_text(key: str) -> str:
    """A text by its key.

    Parameters
    ----------
    key : str
        ``plan.pdf``: command and option.
    """
    if not _held:
        _held.update(read(FILE))
    return _held[key]


def read(file: str) -> dict[str, str]:
    """All texts of a file: one on each line, key and text parted by a colon; notes begin with #."""
    with open(file, encoding="utf-8") as lines:
        parted = (line.strip().partition(": ") for line in lines if line.strip() and not line.startswith("#"))
        return {key: text for key, _, text in parted}
