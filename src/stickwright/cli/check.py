"""``stickwright check``: everything that is wrong with a case."""

from __future__ import annotations

import argparse

from stickwright.catalogue import say
from stickwright.cli.telling import say_problems

__all__ = ["options", "run"]


def options(command: argparse.ArgumentParser) -> None:
    """What may be typed after the command.

    Parameters
    ----------
    command : argparse.ArgumentParser
    """
    command.add_argument("case", metavar="CASE", help="case folder")


def run(options: argparse.Namespace) -> int:
    """Do it; 0 done, 2 something to put right.

    Parameters
    ----------
    options : argparse.Namespace
    """
    from pathlib import Path

    from stickwright.records.folder import check_case

    problems, queries = check_case(Path(options.case))
    say_problems([str(problem) for problem in problems])
    for query in queries:
        print(f"? {say(query.text)}")
    if problems:
        return 2
    look = f", {len(queries)} to look at" if queries else ""
    print(f"{options.case}: no problems{look}. Next: stickwright plan {options.case}")
    return 0
