"""The file under the records: its first bytes, making it whole, and which files this process has open."""

from __future__ import annotations

import errno
import os
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from stickwright.codes.message import Name, message
from stickwright.codes.records_file import RecordsFile
from stickwright.errors import BadInput, Problem
from stickwright.store.keys import HEAD_BYTES

__all__ = ["OpenFile", "head", "made_whole"]

_LOCK = threading.Lock()
_HELD: dict[tuple[int, int], list[bytes]] = {}
"""Device and inode of each file that is open here -> its first bytes, once for each time it is open."""


def _same(path: Path) -> tuple[int, int]:
    known = os.stat(path)
    return known.st_dev, known.st_ino


def head(path: Path) -> bytes:
    """The first bytes of a file; none when there is no file. A file that is open here is not opened a second time.

    Raises
    ------
    BadInput
        It may not be read.
    """
    try:
        with _LOCK:
            held = _HELD.get(_same(path))
            if held:
                return held[0]
            with path.open("rb") as file:
                return file.read(HEAD_BYTES)
    except (FileNotFoundError, NotADirectoryError):
        return b""
    except OSError as error:
        raise _refused(path, error) from error


class OpenFile:
    """A file that is open, until it is let go."""

    def __init__(self, path: Path) -> None:
        first = head(path)
        with _LOCK:
            self._which = _same(path)
            _HELD.setdefault(self._which, []).append(first)

    def let_go(self) -> None:
        """It is closed."""
        with _LOCK:
            heads = _HELD[self._which]
            heads.pop()
            if not heads:
                del _HELD[self._which]


@contextmanager
def made_whole(path: Path) -> Iterator[Path]:
    """A name beside the file to make it under; it gets its own name when it is whole, and is gone when it went wrong.

    Parameters
    ----------
    path : Path
        Where the file is to be; the folder is made for this user alone.

    Raises
    ------
    BadInput
        The folder cannot be made or written, or there is a file of that name by now.
    """
    part = path.with_name(f"{path.name}.new-{os.getpid()}-{threading.get_ident()}")
    try:
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        os.close(os.open(part, os.O_CREAT | os.O_EXCL | os.O_RDWR, 0o600))
    except OSError as error:
        raise _refused(path, error) from error
    try:
        yield part
        try:
            os.link(part, path)  # unlike renaming, never takes the place of another
        except FileExistsError as error:
            raise BadInput(
                Problem(
                    (str(path),),
                    message(RecordsFile.file_there),
                    message(RecordsFile.new_name),
                    message(RecordsFile.open_or_rename),
                )
            ) from error
        except OSError:  # a stick whose file system knows no second names
            os.rename(part, path)
    except OSError as error:
        raise _refused(path, error) from error
    finally:
        for name in (part, part.with_name(part.name + "-wal"), part.with_name(part.name + "-shm")):
            name.unlink(missing_ok=True)


def _refused(path: Path, error: OSError) -> BadInput:
    if error.errno == errno.ENOSPC:
        found, expected = message(RecordsFile.disk_full), message(RecordsFile.room_for_records)
        return BadInput(Problem((str(path),), found, expected, message(RecordsFile.empty_bin)))
    found = message(RecordsFile.cannot_use, reason=Name(str(error.strerror)))
    expected, remedy = message(RecordsFile.own_folder), message(RecordsFile.another_folder)
    return BadInput(Problem((str(path),), found, expected, remedy))
