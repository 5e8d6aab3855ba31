"""The command line: parse, one call, print. Heavy imports wait inside the command that needs them.

Each command is a module of its own name with `options` and `run`, imported only when it is asked for.
"""

from __future__ import annotations

import argparse
import sys
from importlib import import_module

TYPE_CHECKING = False  # spelt out: importing typing would cost the help text a third of its time
if TYPE_CHECKING:
    from collections.abc import Sequence
    from types import ModuleType

__all__ = ["COMMANDS", "command_parser", "main", "parser"]

_ABOUT = "Fits an analogue stick to a disabled player: from measured movement to a chosen, tuned, documented set-up."
_FOOT = (
    "Everything stays on this machine. Not a medical device: local rules, the seating clinic and the treating team "
    "come first."
)

COMMANDS: dict[str, tuple[str, str]] = {
    "open": (
        "the app: players, measuring, plans, on this machine",
        "Open the app in the browser: players' records, live measuring, plans and sheets, on this machine only.",
    ),
    "plan": (
        "choose, explain and tune: the main job",
        "Choose the stick for each site, explain the choice, tune the stick that was tried, and write the sheet.",
    ),
    "why": (
        "why an action is where it is, and why not elsewhere",
        "Why an action is done where it is, what comes second, and what every other place would cost the whole plan, or why "
        "it cannot be there.",
    ),
    "check": (
        "check a case",
        "Read a case and say all problems at once; nothing is changed.",
    ),
    "new": (
        "write a starter case",
        "Write a commented starter case to fill in with a text editor.",
    ),
    "games": (
        "show ten kinds of game to start from",
        "Show what ten kinds of game usually ask: actions, how often, how long, what together, and what the game itself "
        "can do. From general knowledge, to be written over.",
    ),
    "bench": (
        "work out a stick from bench readings",
        "Work out preload, stiffness, friction and travel of a stick from gauge readings, with intervals.",
    ),
    "trace": (
        "analyse a recording",
        "Say what a recording of a stick tells: rest, reach, direction, tremor, holds, aiming, following, and what is "
        "wrong with it.",
    ),
}
"""Name of each command: in a few words, in a sentence."""


def parser(only: str | None = None) -> argparse.ArgumentParser:
    """All commands and options.

    Parameters
    ----------
    only : str, optional
        The one command whose options are wanted; the help of all commands is then quicker to make.
    """
    top = argparse.ArgumentParser(prog="stickwright", description=_ABOUT, epilog=_FOOT)
    top.add_argument("--version", action="store_true", help="print the version")
    commands = top.add_subparsers(dest="command", metavar="COMMAND")
    for name, (short, long) in COMMANDS.items():
        command = commands.add_parser(name, help=short, description=long)
        if only is None or only == name:
            _module(name).options(command)
    return top


def command_parser(name: str) -> argparse.ArgumentParser:
    """One command with its options, as the help page shows it.

    Parameters
    ----------
    name : str
        One of `COMMANDS`.
    """
    _, long = COMMANDS[name]
    command = argparse.ArgumentParser(prog=f"stickwright {name}", description=long)
    _module(name).options(command)
    return command


def _module(name: str) -> ModuleType:
    return import_module(f"stickwright.cli.{name}")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; 0 done, 2 something for the person to put right, 1 our fault.

    Parameters
    ----------
    arguments : sequence of str, optional
        As typed; from the command line when not given.
    """
    typed = sys.argv[1:] if arguments is None else list(arguments)
    top = parser(next((word for word in typed if word in COMMANDS), ""))
    options = top.parse_args(typed)
    if options.version:
        from stickwright import __version__

        print(f"stickwright {__version__}")
        return 0
    if options.command is None:
        top.print_help()
        return 0
    return _run(options)


def _run(options: argparse.Namespace) -> int:
    from stickwright.cli.telling import say_problems
    from stickwright.errors import BadInput

    try:
        status: int = _module(options.command).run(options)
        return status
    except BadInput as refused:
        say_problems([str(problem) for problem in refused.problems])
        return 2
    except KeyboardInterrupt:
        print("\nStopped; nothing was written.", file=sys.stderr)
        return 130
    except BrokenPipeError:  # the reader of our output closed it: not an error of anybody's
        sys.stderr.close()
        return 0
    except OSError as refused:
        where = refused.filename or "a file"
        say_problems([f"{where}: {refused.strerror or refused}. Choose another place or free it, then try again."])
        return 2
    except Exception:  # the outermost edge: anything else is our defect, told with its report kept in a file
        return _our_fault()


def _our_fault() -> int:
    import tempfile
    import traceback

    with tempfile.NamedTemporaryFile(
        "w", prefix="stickwright-report-", suffix=".txt", delete=False, encoding="utf-8"
    ) as report:
        traceback.print_exc(file=report)
    print(
        "This is a fault of the program, not yours. Nothing was lost; your files are as they were. "
        f"The report is in {report.name}",
        file=sys.stderr,
    )
    return 1
