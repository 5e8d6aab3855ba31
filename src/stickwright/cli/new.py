"""``stickwright new``: a starter case."""

from __future__ import annotations

import argparse

from stickwright.cli.help_texts import help_text

TYPE_CHECKING = False  # spelt out: importing typing would cost the help text a third of its time
if TYPE_CHECKING:
    from pathlib import Path

__all__ = ["options", "run"]


def options(command: argparse.ArgumentParser) -> None:
    """What may be typed after the command."""
    command.add_argument("case", metavar="CASE", help=help_text("new.case"))
    command.add_argument("--game", metavar="NAME", help=help_text("new.game"))
    command.add_argument("--from", dest="old", metavar="OLD", help=help_text("new.from"))


def run(options: argparse.Namespace) -> int:
    """Do it; 0 done, 2 something to put right."""
    from pathlib import Path

    from stickwright.catalogue import say
    from stickwright.codes.message import Name, message
    from stickwright.codes.terminal import Terminal
    from stickwright.files.folder import new_case

    if options.old is not None:
        return _renewed(Path(options.old), Path(options.case), options.game)
    for path in new_case(Path(options.case), options.game):
        print(say(message(Terminal.wrote, path=Name(str(path)))))
    print(say(message(Terminal.fill_in, case=Name(options.case))))
    return 0


def _renewed(old: Path, folder: Path, game: str | None) -> int:
    from stickwright.catalogue import say
    from stickwright.codes.message import Name, message
    from stickwright.codes.terminal import Terminal
    from stickwright.errors import BadInput, Problem
    from stickwright.files.renewing import renewed_case

    if game is not None:
        raise BadInput(Problem("--game", "", "", message(Terminal.one_of_two, other=Name("--from"))))
    written, left_out = renewed_case(folder, old)
    for path in written:
        print(say(message(Terminal.wrote, path=Name(str(path)))))
    print(say(message(Terminal.renewed, old=Name(str(old)), case=Name(str(folder)), left_out=left_out)))
    return 0
