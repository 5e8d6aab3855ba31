"""A text file as it comes from somebody's laptop: missing, empty, a folder, another encoding.

Shared by the readers of TOML and of small CSV tables, so that each says it in the same words.
"""

from __future__ import annotations

from decimal import Decimal

from stickwright.codes.expected import Contents, Expected
from stickwright.codes.file_places import FilePlaces
from stickwright.codes.file_tables import FileTables
from stickwright.codes.found import Found
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.remedies import Remedies
from stickwright.errors import BadInput, Problem
from stickwright.files.held import FilePlace

__all__ = [
    "LARGEST_BYTES", "as_recording", "empty_file", "number_text", "odd_byte", "read_text", "reason_of", "refuse_encoding",
    "refuse_unreadable", "shortened",
]  # fmt: skip

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
    return f"{Decimal(f'{value:.3g}'):f}" if abs(value) < 1e15 else f"{value:.3g}"


def shortened(text: str, longest: int = 60) -> str:
    """One line of at most `longest` characters, control characters made visible."""
    shown = "".join(character if character.isprintable() else "·" for character in text.strip())
    return shown if len(shown) <= longest else shown[: longest - 3] + "..."


def refuse_unreadable(path: FilePlace, shown: str, contents: Contents) -> None:
    """Raise BadInput when there is no such file, it is a folder, or it is empty.

    Parameters
    ----------
    path : FilePlace
        The file.
    shown : str
        Its name in sentences.
    contents : str
        What it should hold.
    """
    wanted = message(Expected.file_with, contents=contents)
    try:
        if path.is_dir():
            raise BadInput(Problem((shown,), message(Found.folder), wanted, message(Remedies.name_file_inside)))
        if not path.exists():
            raise BadInput(Problem((shown,), message(Found.no_file), wanted, message(Remedies.check_spelling)))
        size = path.stat().st_size
    except (OSError, ValueError) as error:
        raise _closed(error, shown, contents) if not isinstance(error, BadInput) else error from error
    if size == 0:
        raise BadInput(empty_file(shown, contents))


def empty_file(shown: str, contents: Contents) -> Problem:
    """A file with nothing in it.

    Parameters
    ----------
    shown : str
        Its name in sentences.
    contents : str
        What it should hold.
    """
    wanted = message(Expected.file_with, contents=contents)
    return Problem((shown,), message(Found.empty_file), wanted, message(Remedies.saved))


def reason_of(error: Exception) -> Name | None:
    """The system's own reason for refusing a file; None where the name is one that no file can have."""
    reason = getattr(error, "strerror", None)
    return Name(reason.lower()) if isinstance(reason, str) else None


def _closed(error: Exception, shown: str, contents: Contents) -> BadInput:
    found, wanted = message(Found.closed, reason=reason_of(error)), message(Expected.file_with, contents=contents)
    return BadInput(Problem((shown,), found, wanted, message(Remedies.rights)))


def refuse_encoding(data: bytes, shown: str) -> None:
    """Raise BadInput with line and byte when `data` is not UTF-8."""
    if data[:2] in _UTF16:
        first = (shown, message(FilePlaces.line, number=1))
        raise BadInput(Problem(first, message(Found.utf16), message(Expected.utf8), message(Remedies.save_utf8)))
    try:
        data.decode("utf-8")
    except UnicodeDecodeError as error:
        line_start = data.rfind(b"\n", 0, error.start) + 1
        line = message(FilePlaces.line, number=data.count(b"\n", 0, error.start) + 1)
        raise BadInput(odd_byte((shown, line), data[error.start], error.start - line_start + 1)) from error


def odd_byte(where: tuple[Text, ...], byte: int, number: int) -> Problem:
    """A byte that is not UTF-8.

    Parameters
    ----------
    where : tuple of Message or str
        File, and line or row.
    byte : int
    number : int
        Its place in the line, from 1.
    """
    letter = bytes([byte]).decode("latin-1")
    found = message(Found.odd_byte, byte=Name(f"{byte:02X}"), latin_1=Name(letter) if letter.isprintable() else None)
    place = (*where, message(FilePlaces.byte, number=number))
    return Problem(place, found, message(Expected.utf8), message(Remedies.save_utf8))


def as_recording() -> Message:
    """What to do with a file that is far too long to have been typed."""
    return message(Remedies.as_recording, table=message(FileTables.one, table="site.recording"))


def read_text(path: FilePlace, shown: str, contents: Contents) -> str:
    """All of a small text file, without a byte order mark.

    Raises
    ------
    BadInput
        Missing, a folder, empty, too large to be typed by hand, not UTF-8.
    """
    refuse_unreadable(path, shown, contents)
    try:
        size = path.stat().st_size
        data = path.read_bytes() if size <= LARGEST_BYTES else b""
    except OSError as error:
        raise _closed(error, shown, contents) from error
    if size > LARGEST_BYTES:
        wanted = message(Expected.at_most_bytes, contents=contents, millions=LARGEST_BYTES // 1_000_000)
        found = message(Found.size, millions=size // 1_000_000)
        raise BadInput(Problem((shown,), found, wanted, as_recording()))
    refuse_encoding(data, shown)
    text = data.decode("utf-8-sig")
    if not text.strip():
        raise BadInput(empty_file(shown, contents))
    return text
