"""The files of a case that hold games: game.toml for the first, game-2.toml to game-9.toml for the others."""

from __future__ import annotations

from collections.abc import Collection

__all__ = ["FURTHER_GAMES", "GAME_FILES", "games_among"]

FURTHER_GAMES = tuple(f"game-{number}.toml" for number in range(2, 10))
"""Files of the games besides game.toml."""
GAME_FILES = ("game.toml", *FURTHER_GAMES)


def games_among(names: Collection[str]) -> tuple[str, ...]:
    """Those of some files that hold a game, the first game first.

    Examples
    --------
    >>> games_among(["player.toml", "game-3.toml", "game.toml"])
    ('game.toml', 'game-3.toml')
    """
    return tuple(name for name in GAME_FILES if name in names)
