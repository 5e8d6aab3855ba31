"""The command line: parse, one call, print. Heavy imports wait inside the command that needs them.

Each command is a module of its own name with `options` and `run`, imported only when it is asked for.
"""

from __future__ import annotations

import argparse
import sys
from importlib import import_module

from stickwright.cli.help_texts import help_text

TYPE_CHECKING = False  # spelt out: importing typing would cost the help text a third of its time
if TYPE_CHECKING:
    from collections.abc import Sequence
    from types import ModuleType

__all__ = ["COMMANDS", "command_parser", "main", "parser"]

COMMANDS = ("open", "plan", "why", "check", "new", "games", "bench", "trace")
"""Names of the commands; each is a module of this room, and has its texts under its name."""


def parser(only: str | None = None) -> argparse.ArgumentParser:
    """All commands and options.

    Parameters
    ----------
    only : str, optional
        The one command whose options are wanted; the help of all commands is then quicker to make.
    """
    top = argparse.ArgumentParser(prog="stickwright", description=help_text("about"), epilog=help_text("foot"))
    top.add_argument("--version", action="store_true", help=help_text("version"))
    commands = top.add_subparsers(dest="command", metavar="COMMAND")
    for name in COMMANDS:
        command = commands.add_parser(name, help=help_text(name), description=help_text(f"{name}.long"))
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
    command = argparse.ArgumentParser(prog=f"stickwright {name}", description=help_text(f"{name}.long"))
    _module(name).options(command)
    return command


def _module(name: str) -> ModuleType:
    return import_module(f"stickwright.cli.{name}")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; 0 done, 1 our fault, 2 something for the person to put right, 3 a plan that cannot meet every request.

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
    from stickwright.catalogue import say
    from stickwright.cli.telling import say_problems
    from stickwright.codes.message import Name, message
    from stickwright.codes.terminal import Terminal
    from stickwright.errors import BadInput

    try:
        status: int = _module(options.command).run(options)
        return status
    except BadInput as refused:
        say_problems([str(problem) for problem in refused.problems])
        return 2
    except KeyboardInterrupt:
        print(f"\n{say(message(Terminal.stopped))}", file=sys.stderr)
        return 130
    except BrokenPipeError:  # the reader of our output closed it: not an error of anybody's
        sys.stderr.close()
        return 0
    except OSError as refused:
        file = Name(str(refused.filename or say(message(Terminal.some_file))))
        say_problems([say(message(Terminal.file_fault, file=file, fault=Name(refused.strerror or str(refused))))])
        return 2
    except Exception:  # the outermost edge: anything else is our defect, told with its report kept in a file
        return _our_fault()


def _our_fault() -> int:
    import tempfile
    import traceback

    from stickwright.catalogue import say
    from stickwright.codes.message import Name, message
    from stickwright.codes.terminal import Terminal

    with tempfile.NamedTemporaryFile(
        "w", prefix="stickwright-report-", suffix=".txt", delete=False, encoding="utf-8"
    ) as report:
        traceback.print_exc(file=report)
    print(say(message(Terminal.our_fault, report=Name(report.name))), file=sys.stderr)
    return 1
