"""A file is written whole, then renamed: whoever reads it finds the old one or the new one, never half of either."""

from __future__ import annotations

import os
import secrets
from contextlib import suppress
from pathlib import Path

from stickwright.codes.case_files import CaseFiles
from stickwright.codes.expected import Expected
from stickwright.codes.found import Found
from stickwright.codes.message import message
from stickwright.codes.remedies import Remedies
from stickwright.errors import BadInput, Problem
from stickwright.files.plain_text import reason_of

__all__ = ["make_folder", "take_away", "write_whole"]


def write_whole(path: Path, content: str | bytes) -> None:
    """Write `content` to a temporary file in the same folder, bring it to the disc, then rename it to `path`.

    Parameters
    ----------
    path : Path
        File to write or to replace. Its folder must exist.
    content : str or bytes
        All of it; text is written as UTF-8, line ends as they are.

    Raises
    ------
    BadInput
        The folder is missing, read-only or full. What stood at `path` is then unchanged.
    """
    data = content.encode("utf-8") if isinstance(content, str) else content
    part = path.with_name(f".{path.name}.{secrets.token_hex(4)}.part")
    try:
        handle = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), 0o666)
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        os.replace(part, path)
    except OSError as error:
        with suppress(OSError):  # the part file may not have come into being; the error below is what matters
            part.unlink()
        found, wanted = message(Found.unwritable, reason=reason_of(error)), message(Expected.writable)
        raise BadInput(Problem((str(path),), found, wanted, message(Remedies.free_space))) from error
    _keep_folder(path.parent)


def _keep_folder(folder: Path) -> None:
    """Bring the rename itself to the disc, where the system lets a folder be opened (not on Windows)."""
    if not hasattr(os, "O_DIRECTORY"):
        return
    handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def take_away(path: Path) -> None:
    """Take a file away, if it is there; BadInput when it cannot be."""
    try:
        path.unlink(missing_ok=True)
    except OSError as error:
        found, wanted = message(Found.undeletable, reason=reason_of(error)), message(CaseFiles.not_here)
        remedy = message(Remedies.another_folder, or_delete=True)
        raise BadInput(Problem((str(path),), found, wanted, remedy)) from error


def make_folder(folder: Path) -> None:
    """Make a folder and those around it; BadInput when it cannot be made."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except (OSError, ValueError) as error:
        found, wanted = message(Found.unwritable, reason=reason_of(error)), message(Expected.writable)
        remedy = message(Remedies.another_folder, or_delete=False)
        raise BadInput(Problem((str(folder),), found, wanted, remedy)) from error
