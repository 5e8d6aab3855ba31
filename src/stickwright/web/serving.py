"""Bringing the app up on this machine: the socket, the one opening of a file, the browser, and a quiet end."""

from __future__ import annotations

import socket
import sys
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import IO

import uvicorn

from stickwright.codes.message import Name, message
from stickwright.codes.terminal import Terminal
from stickwright.errors import BadInput, Problem
from stickwright.web.app import make_app
from stickwright.web.request_context import RequestContext

__all__ = ["address", "bound", "made_folder", "only_here", "serve"]

LOOPBACK = "127.0.0.1"
MESSAGE_BYTES = 2**20
"""Longest message over a WebSocket."""


def bound(port: int) -> socket.socket:
    """A socket that only this machine reaches.

    Parameters
    ----------
    port : int
        0 for any that is free.

    Raises
    ------
    BadInput
        Port taken, or not allowed.
    """
    held = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    if sys.platform != "win32":  # there it would let two programs share the port
        held.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        held.bind((LOOPBACK, port))
        held.listen(128)  # who comes before the app is up waits, instead of being turned away
    except OSError as refused:
        held.close()
        taken = message(Terminal.port_taken, port=Name(str(port)), fault=Name(str(refused.strerror)))
        raise BadInput(Problem("--port", "", "", taken)) from None
    return held


def address(desk: RequestContext, held: socket.socket) -> str:
    """What the browser opens: with the token of this start."""
    plain = f"http://{LOOPBACK}:{held.getsockname()[1]}/"
    return plain if desk.team else f"{plain}?start={desk.token}"


@contextmanager
def only_here(place: Path) -> Iterator[None]:
    """While this lasts, no second app opens the same file.

    Parameters
    ----------
    place : Path
        The records. The lock is a small file beside them, and ends with the process, however that ends.

    Raises
    ------
    BadInput
        The file is open in another start of the app, or nothing can be written where it lies.
    """
    made_folder(place)
    try:
        lock = open(place.with_name(place.name + ".in-use"), "a+b")  # noqa: SIM115 - closed just below
    except OSError as refused:
        raise _unwritable(place, refused) from None
    with lock:
        if not _locked(lock):
            raise BadInput(Problem((Name(str(place)),), "", "", message(Terminal.in_use)))
        yield


def made_folder(place: Path) -> None:
    """Make the folder in which the records will lie, unless it is there.

    Parameters
    ----------
    place : Path
        The records.

    Raises
    ------
    BadInput
        It cannot be made.
    """
    try:
        place.parent.mkdir(parents=True, exist_ok=True)
    except OSError as refused:
        raise _unwritable(place, refused) from None


def _unwritable(place: Path, refused: OSError) -> BadInput:
    unwritable = message(Terminal.unwritable, fault=Name(str(refused.strerror)))
    return BadInput(Problem((Name(str(place.parent)),), "", "", unwritable))


def _locked(lock: IO[bytes]) -> bool:
    try:
        if sys.platform == "win32":
            import msvcrt

            lock.seek(0)
            msvcrt.locking(lock.fileno(), msvcrt.LK_NBLCK, 1)
        else:
            import fcntl

            fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        return False
    return True


def serve(desk: RequestContext, held: socket.socket, *, browser: Callable[[str], object] | None = None) -> None:
    """Answer until told to stop; then close everything.

    Parameters
    ----------
    desk : RequestContext
    held : socket
        From `bound`.
    browser : callable, optional
        Opens an address for the person.
    """
    config = uvicorn.Config(
        make_app(desk, warm=True),
        log_level="critical",
        log_config=None,
        access_log=False,
        server_header=False,
        proxy_headers=desk.team,
        lifespan="on",
        ws="websockets-sansio",
        ws_max_size=MESSAGE_BYTES,
        timeout_graceful_shutdown=3,
    )
    if browser is not None:
        timer = threading.Timer(0.3, browser, (address(desk, held),))
        timer.daemon = True
        timer.start()
    try:
        uvicorn.Server(config).run(sockets=[held])
    except KeyboardInterrupt:  # Ctrl-C is how the app is ended
        if sys.stdout.isatty():
            print()  # after the ^C that the terminal shows
    finally:
        desk.close()
        held.close()
