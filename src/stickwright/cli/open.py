"""``stickwright open``: the app, on this machine only."""

from __future__ import annotations

import argparse

TYPE_CHECKING = False  # as in the module of all commands
if TYPE_CHECKING:
    from stickwright.web.desk import Desk

__all__ = ["options", "run"]


def options(command: argparse.ArgumentParser) -> None:
    """What may be typed after the command.

    Parameters
    ----------
    command : argparse.ArgumentParser
    """
    command.add_argument(
        "--place", metavar="FILE|URL", help="records to open: a file, or with --team the address of a PostgreSQL server"
    )
    command.add_argument("--port", type=int, default=0, metavar="N", help="port on this machine (any that is free)")
    command.add_argument("--no-browser", action="store_true", help="print the address and open no browser")
    command.add_argument(
        "--practice", action="store_true", help="open practice records, not encrypted and apart from the real ones"
    )
    command.add_argument(
        "--team", action="store_true",
        help="records of a team on PostgreSQL, with accounts; the address may stand in STICKWRIGHT_PLACE, see docs/app.md",
    )  # fmt: skip
    command.add_argument(
        "--name", action="append", default=[], metavar="HOST",
        help="with --team: name under which the team reaches the app; repeatable",
    )  # fmt: skip


def run(options: argparse.Namespace) -> int:
    """Bring the app up until Ctrl-C; 0 done, 2 something to put right.

    Parameters
    ----------
    options : argparse.Namespace
    """
    import webbrowser
    from contextlib import nullcontext
    from pathlib import Path

    from stickwright.web.serving import address, bound, only_here, serve

    if not 0 <= options.port <= 65535:
        from stickwright.errors import BadInput, Problem

        raise BadInput(Problem("--port", str(options.port), "0 to 65535"))
    desk = _team(options) if options.team else _own(options)
    with only_here(desk.place) if isinstance(desk.place, Path) else nullcontext():
        held = bound(options.port)
        print(f"stickwright is open at {address(desk, held)}", flush=True)
        if options.team:
            print(f"The word for the first account: {desk.token}", flush=True)
        print("The address works on this machine only, until you end it here with Ctrl-C.", flush=True)
        serve(desk, held, browser=None if options.no_browser else webbrowser.open)
    print("Closed. Everything that was saved is kept.")
    return 0


def _own(options: argparse.Namespace) -> Desk:
    from pathlib import Path

    from stickwright.errors import BadInput, Problem
    from stickwright.store.opening import create_store, default_place, kind_at, open_store
    from stickwright.web.desk import Desk
    from stickwright.web.preferences import preferences_at
    from stickwright.web.serving import made_folder
    from stickwright.web.start import practice_place

    if options.place and "://" in options.place:
        raise BadInput(Problem("--place", "the address of a server", "a file", "Add --team for records on a server."))
    place = Path(options.place).expanduser() if options.place else default_place()
    if options.practice and not options.place:
        place = practice_place(place)
    if place.is_dir():
        remedy = "Name a file in it, which is then made: records.db."
        raise BadInput(Problem(str(place), "a folder", "a file", remedy))
    file = place.with_name("settings.toml")
    desk = Desk(place, preferences=preferences_at(file), preferences_file=file)
    kind = kind_at(place)
    if kind == "not ours":
        remedy = "It is left as it is; name another."
        raise BadInput(
            Problem(str(place), "a file that is not records of stickwright", "records, or no file yet", remedy)
        )
    if options.practice and kind == "encrypted":
        remedy = "Leave --practice out to open them, or name another file."
        raise BadInput(Problem(str(place), "encrypted records", "practice records", remedy))
    if kind == "plain":
        desk.store = open_store(place)
    elif options.practice:
        made_folder(place)
        desk.store = create_store(place, passphrase=None)
    return desk


def _team(options: argparse.Namespace) -> Desk:
    import os

    from stickwright.errors import BadInput, Problem
    from stickwright.store.opening import open_store
    from stickwright.web.desk import Desk

    place = options.place or os.environ.get("STICKWRIGHT_PLACE", "")
    if not place.startswith("postgresql"):
        found = "nothing" if not place else "a place that is not a PostgreSQL server"
        expected = "postgresql+psycopg://USER@HOST/NAME"
        raise BadInput(Problem("--place", found, expected, "A team's records are kept on a server of its own."))
    desk = Desk(place, team=True)
    desk.hosts = (*desk.hosts, *(name.lower() for name in options.name))
    desk.store = open_store(place)
    return desk
