"""``stickwright games``: ten kinds of game to start from."""

from __future__ import annotations

import argparse

from stickwright.cli.help_texts import help_text

__all__ = ["options", "run"]


def options(command: argparse.ArgumentParser) -> None:
    """What may be typed after the command."""
    command.add_argument("name", metavar="NAME", nargs="?", help=help_text("games.name"))
    command.add_argument("--all", action="store_true", help=help_text("games.all"))


def run(options: argparse.Namespace) -> int:
    """Do it; 0 done, 2 something to put right."""
    from stickwright.catalogue import say
    from stickwright.codes.message import message
    from stickwright.codes.terminal import Terminal
    from stickwright.files.archetypes import ARCHETYPES, archetype
    from stickwright.report.game_words import game_words, games_words

    if options.name or options.all:
        names = ARCHETYPES if options.all else (options.name,)
        print("\n".join(game_words(archetype(name)) for name in names), end="")
    else:
        print(games_words({name: archetype(name) for name in ARCHETYPES}), end="")
        print(f"\n{say(message(Terminal.games_next))}")
    print(say(message(Terminal.games_source)))
    return 0
