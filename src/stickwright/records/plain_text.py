"""A text file as it comes from somebody's laptop: missing, empty, a folder, another encoding.

Shared by the readers of TOML and of small CSV tables, so that each says it in the same words.
"""

from __future__ import annotations

import math
from decimal import Decimal

from stickwright.codes.file_places import FilePlaces
from stickwright.codes.message import message
from stickwright.errors import BadInput, Problem
from stickwright.records.held import Place

__all__ = ["LARGEST_BYTES", "number_text", "read_text", "refuse_encoding", "refuse_unreadable", "shortened"]

LARGEST_BYTES = 20_000_000
"""A hand-typed file is thousands of times smaller; beyond this it is something else."""

_UTF16 = (b"\xff\xfe", b"\xfe\xff")


def number_text(value: float) -> str:
    """A limit or a converted figure for a sentence: three digits, no exponent.

    Examples
    --------
    >>> number_text(50985.81), number_text(0.44130), number_text(5.0), number_text(11.811)
    ('51000', '0.441', '5', '11.8')
    """
    if not math.isfinite(value):
        return "no number"
    return f"{Decimal(f'{value:.3g}'):f}" if abs(value) < 1e15 else f"{value:.3g}"


def shortened(text: str, longest: int = 60) -> str:
    """One line of at most `longest` characters, control characters made visible."""
    shown = "".join(character if character.isprintable() else "·" for character in text.strip())
    return shown if len(shown) <= longest else shown[: longest - 3] + "..."


def refuse_unreadable(path: Place, shown: str, what: str) -> None:
    """Raise BadInput when there is no such file, it is a folder, or it is empty.

    Parameters
    ----------
    path : Place
        The file.
    shown : str
        Its name in sentences.
    what : str
        What it should hold: 'gauge readings'.
    """
    try:
        if path.is_dir():
            raise BadInput(Problem(shown, "a folder", f"a file with {what}", "Name the file inside it."))
        if not path.exists():
            raise BadInput(
                Problem(
                    shown,
                    "no such file",
                    f"a file with {what}",
                    "Check the spelling and the folder, or take the name out.",
                )
            )
        size = path.stat().st_size
    except (OSError, ValueError) as error:
        raise _closed(error, shown, what) if not isinstance(error, BadInput) else error from error
    if size == 0:
        raise BadInput(Problem(shown, "an empty file", f"a file with {what}", "Was it saved before it was copied?"))


def _closed(error: Exception, shown: str, what: str) -> BadInput:
    reason = (getattr(error, "strerror", None) or "not a usable file name").lower()
    return BadInput(
        Problem(shown, f"a file that cannot be opened ({reason})", f"a file with {what}", "Check its name and rights.")
    )


def refuse_encoding(data: bytes, shown: str) -> None:
    """Raise BadInput with line and byte when `data` is not UTF-8."""
    if data[:2] in _UTF16:
        raise BadInput(
            Problem(f"{shown}, line 1", "text in UTF-16", "text in UTF-8", "Save it again as 'CSV UTF-8' or 'UTF-8'.")
        )
    try:
        data.decode("utf-8")
    except UnicodeDecodeError as error:
        line_start = data.rfind(b"\n", 0, error.start) + 1
        line = data.count(b"\n", 0, error.start) + 1
        byte = data[error.start]
        likely = bytes([byte]).decode("latin-1")
        guess = f" ('{likely}' if it was saved as Latin-1)" if likely.isprintable() else ""
        raise BadInput(
            Problem(
                (
                    shown,
                    message(FilePlaces.line, number=line),
                    message(FilePlaces.byte, number=error.start - line_start + 1),
                ),
                f"the byte {byte:02X}, which is not UTF-8{guess}",
                "text in UTF-8",
                "Save the file again and choose 'UTF-8' or 'CSV UTF-8' as its encoding.",
            )
        ) from error


def read_text(path: Place, shown: str, what: str) -> str:
    """All of a small text file, without a byte order mark.

    Raises
    ------
    BadInput
        Missing, a folder, empty, too large to be typed by hand, not UTF-8.
    """
    refuse_unreadable(path, shown, what)
    try:
        size = path.stat().st_size
        data = path.read_bytes() if size <= LARGEST_BYTES else b""
    except OSError as error:
        raise _closed(error, shown, what) from error
    if size > LARGEST_BYTES:
        raise BadInput(
            Problem(
                shown,
                f"a file of {size // 1_000_000} MB",
                f"{what}, at most {LARGEST_BYTES // 1_000_000} MB",
                "This looks like a recording: name it under [[site.recording]].",
            )
        )
    refuse_encoding(data, shown)
    text = data.decode("utf-8-sig")
    if not text.strip():
        raise BadInput(Problem(shown, "an empty file", f"a file with {what}", "Was it saved before it was copied?"))
    return text
