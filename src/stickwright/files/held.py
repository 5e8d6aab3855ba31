"""Files of a case that are held in memory, with just what the readers ask of a file.

The readers take a `FilePlace`: a path on disk, or the same place in a folder that was never written to disk. What is held as it
means (a file that is parsed already, a recording as samples) is taken as it is, and never written out to be read.
"""

from __future__ import annotations

import errno
import io
import os
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import PurePosixPath
from typing import BinaryIO, Literal, Protocol

from stickwright.model.recording import Recording

__all__ = ["FilePlace", "FileSize", "HeldFile", "HeldPlace", "ParsedFile"]


class ParsedFile:
    """A file that is parsed already."""


HeldFile = bytes | ParsedFile | Recording
"""A file as its bytes, or what it says."""


class FileSize(Protocol):
    """How long a file is."""

    @property
    def st_size(self) -> int:
        """Bytes."""
        ...


class FilePlace(Protocol):
    """A file or folder to read from; `pathlib.Path` is one."""

    @property
    def name(self) -> str:
        """Last part of the name."""
        ...

    def exists(self) -> bool:
        """Whether anything is there."""
        ...

    def is_dir(self) -> bool:
        """Whether it is a folder."""
        ...

    def is_file(self) -> bool:
        """Whether it is a file."""
        ...

    def stat(self) -> FileSize:
        """How long it is."""
        ...

    def read_bytes(self) -> bytes:
        """All of it."""
        ...

    def open(self, mode: Literal["rb"]) -> BinaryIO:
        """As a stream."""
        ...


@dataclass(frozen=True)
class _Length:
    st_size: int


class HeldPlace:
    """A place in a folder held in memory.

    Parameters
    ----------
    files : mapping
        Name from the folder on, with ``/`` -> bytes, or what the file says.
    inside : str
        The place; '' is the folder itself.

    Examples
    --------
    >>> folder = HeldPlace({"readings/chin.csv": b"direction_deg"})
    >>> (folder / "readings").is_dir(), (folder / "readings/./chin.csv").read_bytes()
    (True, b'direction_deg')
    """

    def __init__(self, files: Mapping[str, HeldFile], inside: str = "") -> None:
        self._files = files
        self._inside = PurePosixPath(inside)

    def __truediv__(self, name: str) -> HeldPlace:
        return HeldPlace(self._files, str(self._inside / name))

    def __str__(self) -> str:
        return str(self._inside)

    @property
    def name(self) -> str:
        """Last part of the name."""
        return self._inside.name

    def exists(self) -> bool:
        """Whether anything is there."""
        return self.is_file() or self.is_dir()

    def is_dir(self) -> bool:
        """Whether it is a folder: the case itself, or a name that others begin with."""
        start = f"{self._inside}/"
        return self._inside == PurePosixPath() or any(name.startswith(start) for name in self._files)

    def is_file(self) -> bool:
        """Whether it is a file."""
        return str(self._inside) in self._files

    def stat(self) -> FileSize:
        """How long it is."""
        return _Length(len(self.read_bytes()))

    @property
    def says(self) -> ParsedFile | Recording | None:
        """What the file says, where it is held so; None where it has to be read."""
        held = self._files.get(str(self._inside))
        return None if isinstance(held, bytes) else held

    def read_bytes(self) -> bytes:
        """All of it; FileNotFoundError when there is no such file, as on a disk."""
        held = self._files.get(str(self._inside))
        if not isinstance(held, bytes):
            raise FileNotFoundError(errno.ENOENT, os.strerror(errno.ENOENT), str(self._inside))
        return held

    def open(self, mode: Literal["rb"] = "rb") -> BinaryIO:
        """As a stream of bytes; there is no other way to open it."""
        if mode != "rb":
            raise ValueError(f"mode {mode!r}")
        return io.BytesIO(self.read_bytes())
