"""What-if on the command line: without this, keeping that."""

from __future__ import annotations

import argparse

from stickwright.cli.help_texts import help_text

TYPE_CHECKING = False  # spelt out: importing typing would cost the help text a third of its time
if TYPE_CHECKING:
    from stickwright.model.wishes import Wishes

__all__ = ["wish_options", "wishes"]


def wish_options(command: argparse.ArgumentParser) -> None:
    """What-if, without editing a file."""
    group = command.add_argument_group(help_text("wishes"))
    group.add_argument(
        "--without", action="append", default=[], metavar="NAME",
        help=help_text("wishes.without"),
    )  # fmt: skip
    group.add_argument(
        "--keep", action="append", default=[], metavar="WHAT=WHERE",
        help=help_text("wishes.keep"),
    )  # fmt: skip
    group.add_argument("--only-kit", action="store_true", help=help_text("wishes.only-kit"))
    group.add_argument("--budget", type=float, metavar="MONEY", help=help_text("wishes.budget"))
    group.add_argument("--max-parts", type=int, metavar="N", help=help_text("wishes.max-parts"))


def wishes(options: argparse.Namespace, alternatives: int = 5) -> Wishes:
    """The wishes as typed.

    Parameters
    ----------
    options : argparse.Namespace
    alternatives : int
        How many next best plans are wanted.
    """
    from stickwright.codes.message import Name, message
    from stickwright.codes.terminal import Terminal
    from stickwright.errors import BadInput, Problem
    from stickwright.model.wishes import Keep, Wishes

    keep, problems = [], []
    for text in options.keep:
        what, equals, where = (part.strip() for part in text.partition("="))
        if equals and what and where:
            keep.append(Keep(what, where))
        else:
            problems.append(Problem("--keep", "", "", message(Terminal.keep, typed=Name(text))))
    if problems:
        raise BadInput(problems)
    return Wishes(
        without=tuple(name.strip() for name in options.without),
        only_kit=options.only_kit,
        budget=options.budget,
        most_parts=options.max_parts,
        keep=tuple(keep),
        alternatives=alternatives,
    )
