"""``stickwright why``: why an action is where it is."""

from __future__ import annotations

import argparse

from stickwright.cli.help_texts import help_text
from stickwright.cli.telling import progress
from stickwright.cli.wishes import wish_options, wishes

__all__ = ["options", "run"]


def options(command: argparse.ArgumentParser) -> None:
    """What may be typed after the command."""
    command.add_argument("case", metavar="CASE", help=help_text("case"))
    command.add_argument("action", metavar="ACTION", help=help_text("why.action"))
    command.add_argument("--at", metavar="PLACE", help=help_text("why.at"))
    command.add_argument("--draws", type=int, default=500, metavar="N", help=help_text("plan.draws"))
    wish_options(command)


def run(options: argparse.Namespace) -> int:
    """Do it; 0 done, 2 something to put right."""
    from pathlib import Path

    from stickwright.catalogue import say
    from stickwright.codes.message import message
    from stickwright.codes.terminal import Terminal
    from stickwright.files.folder import read_case

    tell, close = progress()
    try:
        tell(message(Terminal.doing, what="reading_case"), 0.02)
        case = read_case(Path(options.case))
        from stickwright.planning.plan import plan
        from stickwright.report.what_if import wishes_words
        from stickwright.report.why_words import why_words

        result = plan(
            case, draws=options.draws, wishes=wishes(options, 0), why=options.action,
            progress=lambda what, share: tell(what, 0.05 + 0.9 * share),
        )  # fmt: skip
    finally:
        close()
    sharings = [result.sharing, *(layout.sharing for layout in result.layouts)]
    names = ((one, {name.casefold() for name, _ in one.elsewhere}) for one in sharings if one is not None)
    # plan refuses an action that no game names
    sharing = next((one for one, known in names if options.action.strip().casefold() in known), result.sharing)
    assert sharing is not None
    if result.wishes.what_if:
        print(f"{say(message(Terminal.what_if, wishes=wishes_words(result.wishes)))}\n")
    print(why_words(sharing, options.action, options.at))
    return 0
