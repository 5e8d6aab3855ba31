"""``stickwright new``: a starter case."""

from __future__ import annotations

import argparse

TYPE_CHECKING = False  # spelt out: importing typing would cost the help text a third of its time
if TYPE_CHECKING:
    from pathlib import Path

__all__ = ["options", "run"]


def options(command: argparse.ArgumentParser) -> None:
    """What may be typed after the command.

    Parameters
    ----------
    command : argparse.ArgumentParser
    """
    command.add_argument("case", metavar="CASE", help="folder to make")
    command.add_argument("--game", metavar="NAME", help="kind of game to start from, as 'stickwright games' lists them")
    command.add_argument(
        "--from", dest="old", metavar="OLD", help="case folder of an earlier version, to be written in today's form"
    )


def run(options: argparse.Namespace) -> int:
    """Do it; 0 done, 2 something to put right.

    Parameters
    ----------
    options : argparse.Namespace
    """
    from pathlib import Path

    from stickwright.records.folder import new_case

    if options.old is not None:
        return _renewed(Path(options.old), Path(options.case), options.game)
    for path in new_case(Path(options.case), options.game):
        print(f"wrote {path}")
    print(f"Fill in player.toml, kit.toml, game.toml, hub.toml and room.toml, then: stickwright check {options.case}")
    return 0


def _renewed(old: Path, folder: Path, game: str | None) -> int:
    from stickwright.errors import BadInput, Problem
    from stickwright.records.renewing import renewed_case

    if game is not None:
        raise BadInput(Problem("--game", "--from as well", "one of the two"))
    written, left_out = renewed_case(folder, old)
    for path in written:
        print(f"wrote {path}")
    print(
        f"Copied {old}. Entries that are no longer used and were left out: {left_out}. Next: stickwright check {folder}"
    )
    return 0
