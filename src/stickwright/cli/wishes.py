"""What-if on the command line: without this, keeping that."""

from __future__ import annotations

import argparse

TYPE_CHECKING = False  # spelt out: importing typing would cost the help text a third of its time
if TYPE_CHECKING:
    from stickwright.model.wishes import Wishes

__all__ = ["wish_options", "wishes"]


def wish_options(command: argparse.ArgumentParser) -> None:
    """What-if, without editing a file.

    Parameters
    ----------
    command : argparse.ArgumentParser
    """
    group = command.add_argument_group("what if")
    group.add_argument(
        "--without", action="append", default=[], metavar="NAME",
        help="do without this: anything of the kit, a site, hub, socket or helper by its name, or the word helper or "
        "option for none at all; repeatable",
    )  # fmt: skip
    group.add_argument(
        "--keep", action="append", default=[], metavar="WHAT=WHERE",
        help="a choice that is to stay: an action at a site, on a device, left to option, helper or dropped, or a "
        "device at a site ('look=chin', 'chin=larch'); repeatable",
    )  # fmt: skip
    group.add_argument("--only-kit", action="store_true", help="only what is in stock")
    group.add_argument("--budget", type=float, metavar="MONEY", help="most that may be spent on what is not in stock")
    group.add_argument("--max-parts", type=int, metavar="N", help="maximum number of devices")


def wishes(options: argparse.Namespace, alternatives: int = 5) -> Wishes:
    """The wishes as typed.

    Parameters
    ----------
    options : argparse.Namespace
    alternatives : int
        How many next best plans are wanted.
    """
    from stickwright.errors import BadInput, Problem
    from stickwright.model.wishes import Keep, Wishes

    keep, problems = [], []
    for text in options.keep:
        what, equals, where = (part.strip() for part in text.partition("="))
        if equals and what and where:
            keep.append(Keep(what, where))
        else:
            remedy = "For example: --keep 'look=chin'."
            problems.append(Problem("--keep", f'"{text}"', "WHAT=WHERE, an equals sign between the two", remedy))
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
