"""Fixed words that several topics choose among: the eight directions of a player."""

from __future__ import annotations

from typing import Literal

__all__ = ["WAYS", "Way"]

Way = Literal["right", "forward-right", "forward", "forward-left", "left", "back-left", "back", "back-right"]
WAYS: tuple[Way, ...] = Way.__args__  # type: ignore[attr-defined]
"""From the right, anticlockwise, an eighth of a turn each."""
