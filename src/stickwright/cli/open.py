"""``stickwright open``: the app, on this machine only."""

from __future__ import annotations

import argparse

from stickwright.cli.help_texts import help_text

TYPE_CHECKING = False  # as in the module of all commands
if TYPE_CHECKING:
    from stickwright.web.request_context import RequestContext

__all__ = ["options", "run"]


def options(command: argparse.ArgumentParser) -> None:
    """What may be typed after the command."""
    command.add_argument("--place", metavar="FILE|URL", help=help_text("open.place"))
    command.add_argument("--port", type=int, default=0, metavar="N", help=help_text("open.port"))
    command.add_argument("--no-browser", action="store_true", help=help_text("open.no-browser"))
    command.add_argument("--practice", action="store_true", help=help_text("open.practice"))
    command.add_argument(
        "--team", action="store_true",
        help=help_text("open.team"),
    )  # fmt: skip
    command.add_argument(
        "--name", action="append", default=[], metavar="HOST",
        help=help_text("open.name"),
    )  # fmt: skip


def run(options: argparse.Namespace) -> int:
    """Bring the app up until Ctrl-C; 0 done, 2 something to put right."""
    import webbrowser
    from contextlib import nullcontext
    from pathlib import Path

    from stickwright.catalogue import say
    from stickwright.codes.message import Name, message
    from stickwright.codes.terminal import Terminal
    from stickwright.web.serving import address, bound, only_here, serve

    if not 0 <= options.port <= 65535:
        from stickwright.errors import BadInput, Problem

        raise BadInput(Problem("--port", "", "", message(Terminal.port, typed=Name(str(options.port)))))
    desk = _team(options) if options.team else _own(options)
    with only_here(desk.place) if isinstance(desk.place, Path) else nullcontext():
        held = bound(options.port)
        print(say(message(Terminal.opened, address=Name(address(desk, held)))), flush=True)
        if options.team:
            print(say(message(Terminal.start_code, code=Name(desk.token))), flush=True)
        print(say(message(Terminal.until)), flush=True)
        serve(desk, held, browser=None if options.no_browser else webbrowser.open)
    print(say(message(Terminal.closed)))
    return 0


def _own(options: argparse.Namespace) -> RequestContext:
    from pathlib import Path

    from stickwright.codes.message import Name, message
    from stickwright.codes.terminal import Terminal
    from stickwright.errors import BadInput, Problem
    from stickwright.store.opening import create_store, default_place, kind_at, open_store
    from stickwright.web.preferences import preferences_at
    from stickwright.web.request_context import RequestContext
    from stickwright.web.serving import made_folder
    from stickwright.web.start import practice_place

    if options.place and "://" in options.place:
        raise BadInput(Problem("--place", "", "", message(Terminal.server_place)))
    place = Path(options.place).expanduser() if options.place else default_place()
    if options.practice and not options.place:
        place = practice_place(place)
    if place.is_dir():
        raise BadInput(Problem((Name(str(place)),), "", "", message(Terminal.is_folder)))
    file = place.with_name("settings.toml")
    desk = RequestContext(place, preferences=preferences_at(file), preferences_file=file)
    kind = kind_at(place)
    if kind == "not ours":
        raise BadInput(Problem((Name(str(place)),), "", "", message(Terminal.not_records)))
    if options.practice and kind == "encrypted":
        raise BadInput(Problem((Name(str(place)),), "", "", message(Terminal.encrypted)))
    if kind == "plain":
        desk.store = open_store(place)
    elif options.practice:
        made_folder(place)
        desk.store = create_store(place, passphrase=None)
    return desk


def _team(options: argparse.Namespace) -> RequestContext:
    import os

    from stickwright.codes.message import message
    from stickwright.codes.terminal import Terminal
    from stickwright.errors import BadInput, Problem
    from stickwright.store.opening import open_store
    from stickwright.web.request_context import RequestContext

    place = options.place or os.environ.get("STICKWRIGHT_PLACE", "")
    if not place.startswith("postgresql"):
        raise BadInput(Problem("--place", "", "", message(Terminal.team_place, nothing=not place)))
    desk = RequestContext(place, team=True)
    desk.hosts = (*desk.hosts, *(name.lower() for name in options.name))
    desk.store = open_store(place)
    return desk
