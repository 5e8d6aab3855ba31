"""``stickwright games``: ten kinds of game to start from."""

from __future__ import annotations

import argparse

__all__ = ["options", "run"]


def options(command: argparse.ArgumentParser) -> None:
    """What may be typed after the command.

    Parameters
    ----------
    command : argparse.ArgumentParser
    """
    command.add_argument("name", metavar="NAME", nargs="?", help="kind of game whose actions are wanted")
    command.add_argument("--all", action="store_true", help="the actions of all ten")


def run(options: argparse.Namespace) -> int:
    """Do it; 0 done, 2 something to put right.

    Parameters
    ----------
    options : argparse.Namespace
    """
    from stickwright.records.archetypes import ARCHETYPES, archetype
    from stickwright.sheet.game_words import game_words, games_words

    if options.name or options.all:
        names = ARCHETYPES if options.all else (options.name,)
        print("\n".join(game_words(archetype(name)) for name in names), end="")
    else:
        print(games_words({name: archetype(name) for name in ARCHETYPES}), end="")
        print("\nThe actions of one: stickwright games racing. To start from it: stickwright new CASE --game racing")
    print("Usual figures from general knowledge, no source: write over them with what you see.")
    return 0
