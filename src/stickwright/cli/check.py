"""``stickwright check``: everything that is wrong with a case."""

from __future__ import annotations

import argparse

from stickwright.cli.help_texts import help_text
from stickwright.cli.telling import say_problems

__all__ = ["options", "run"]


def options(command: argparse.ArgumentParser) -> None:
    """What may be typed after the command."""
    command.add_argument("case", metavar="CASE", help=help_text("case"))


def run(options: argparse.Namespace) -> int:
    """Do it; 0 done, 2 something to put right."""
    from pathlib import Path

    from stickwright.catalogue import say
    from stickwright.codes.message import Name, message
    from stickwright.codes.terminal import Terminal
    from stickwright.files.folder import check_case

    problems, queries = check_case(Path(options.case))
    say_problems([str(problem) for problem in problems])
    for query in queries:
        print(f"? {say(query.text)}")
    if problems:
        return 2
    print(say(message(Terminal.no_problems, case=Name(options.case), queries=len(queries))))
    return 0
