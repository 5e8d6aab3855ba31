"""``stickwright new``: a starter case."""

from __future__ import annotations

import argparse

__all__ = ["options", "run"]


def options(command: argparse.ArgumentParser) -> None:
    """What may be typed after the command.

    Parameters
    ----------
    command : argparse.ArgumentParser
    """
    command.add_argument("case", metavar="CASE", help="folder to make")
    command.add_argument("--game", metavar="NAME", help="kind of game to start from, as 'stickwright games' lists them")


def run(options: argparse.Namespace) -> int:
    """Do it; 0 done, 2 something to put right.

    Parameters
    ----------
    options : argparse.Namespace
    """
    from pathlib import Path

    from stickwright.records.folder import new_case

    for path in new_case(Path(options.case), options.game):
        print(f"wrote {path}")
    print(f"Fill in player.toml, kit.toml, game.toml, hub.toml and room.toml, then: stickwright check {options.case}")
    return 0
