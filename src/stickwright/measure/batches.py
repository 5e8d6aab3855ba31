"""Samples on their way from the browser: the bytes, and what is refused.

One message is one batch of one device. All numbers are little-endian; the head is 48 bytes long so that the
float64 after it are aligned.

====== ======= ========= ==================================================================================
byte   type    name      meaning
====== ======= ========= ==================================================================================
0      4 bytes           the letters ``swcb``
4      uint8   version   1
5      uint8   kind      1 samples, 2 appeared, 3 gone, 4 alive (nothing new, the clock only)
6      uint8   slot      place of the device in the browser's list, 0 to 15; 0 for kind 4
7      uint8   flags     bit 0: batches before this one that were not acknowledged are lost for good;
                         bit 1 (kind 2): axes and buttons stand in the standard mapping; others 0
8      uint32  sequence  number of the message, from 0, one more each
12     uint32  first     number of the first sample of this device since it appeared, from 0; 0 for other kinds
16     uint16  rows      samples in it, 1 to 2048; 0 for other kinds
18     uint8   axes      axes of the device, 0 to 16 (kinds 1 and 2)
19     uint8   buttons   buttons of the device, 0 to 52 (kinds 1 and 2)
20     uint32  text      bytes of text at the end, up to 256 (kind 2), else 0
24     uint64  page      a number that the page draws when it is loaded, so that a reload is told from a repeat
32     float64 sent_ms   ``performance.now()`` when it was sent; no sample is later
40     float64 wall_ms   ``Date.now()`` when it was sent: goes on while a laptop sleeps
48     float64           kind 1: for each sample ``performance.now()`` in ms, bit mask of the buttons as a
                         number, then each axis as the browser gives it (-1 to 1, vertical growing downwards)
48     bytes             kind 2: the browser's id of the device, UTF-8
====== ======= ========= ==================================================================================

Nothing may follow. Whatever does not fit is refused with a sentence (`BadInput`) and nothing of it is used.
"""

from __future__ import annotations

import math
import struct
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.batches import Batches, BatchKind, ExpectedBatch, FoundBatch
from stickwright.codes.message import Message, Name, message
from stickwright.errors import BadInput, Problem
from stickwright.measure.devices import MOST_AXES, MOST_BUTTONS

__all__ = [
    "HEAD_BYTES", "MOST_BYTES", "MOST_ROWS", "MOST_SLOTS", "MOST_TEXT_BYTES", "VERSION", "Batch", "Kind", "decode",
    "encode",
]  # fmt: skip

Array = NDArray[np.float64]
Kind = BatchKind

VERSION = 1
HEAD_BYTES = 48
MOST_ROWS = 2048
MOST_SLOTS = 16
MOST_TEXT_BYTES = 256
MOST_BYTES = HEAD_BYTES + MOST_ROWS * (2 + MOST_AXES) * 8

_HEAD = struct.Struct("<4sBBBBIIHBBIQdd")
_LETTERS = b"swcb"
_KINDS: dict[int, Kind] = {1: "samples", 2: "appeared", 3: "gone", 4: "alive"}
_NUMBERS = {kind: number for number, kind in _KINDS.items()}
_LOST, _STANDARD = 1, 2
_LARGEST_AXIS = 10.0  # Browsers give a hat at rest as 1.29 or 3.29: allowed, though no stick.
_LARGEST_MS = 1e14  # Some three thousand years.


def _no_rows() -> Array:
    return np.empty((0, 2))


@dataclass(frozen=True, eq=False)
class Batch:
    """One message of the page.

    Parameters
    ----------
    kind : {"samples", "appeared", "gone", "alive"}
    slot : int
        Place of the device in the browser's list.
    sequence : int
        Number of the message.
    sent_ms, wall_ms : float
        Clocks of the page when it was sent: since the page began, and of the day.
    first : int
        Number of the first sample.
    rows : array, shape (n, 2 + axes)
        time_ms, button mask, axes as the browser gives them.
    axes, buttons : int
        How many the device has.
    text : str
        The browser's id of a device that appeared.
    standard : bool
        Whether it has the standard mapping.
    lost_before : bool
        What is missing before this message will not come any more.
    page : int
        The number that the page drew when it was loaded.
    """

    kind: Kind
    slot: int
    sequence: int
    sent_ms: float
    wall_ms: float
    first: int = 0
    rows: Array = field(default_factory=_no_rows)
    axes: int = 0
    buttons: int = 0
    text: str = ""
    standard: bool = False
    lost_before: bool = False
    page: int = 0


def encode(batch: Batch) -> bytes:
    """The bytes of a message.

    Returns
    -------
    bytes
        As the module's table says.

    Raises
    ------
    BadInput
        What `decode` would refuse.

    Examples
    --------
    >>> len(encode(Batch("alive", 0, 7, 1000.0, 1.7e12)))
    48
    """
    text = batch.text.encode("utf-8", "surrogatepass")
    rows = np.ascontiguousarray(batch.rows, dtype="<f8")
    flags = _LOST * batch.lost_before + _STANDARD * batch.standard
    try:
        head = _HEAD.pack(
            _LETTERS, VERSION, _NUMBERS[batch.kind], batch.slot, flags, batch.sequence, batch.first, len(rows),
            batch.axes, batch.buttons, len(text), batch.page, batch.sent_ms, batch.wall_ms,
        )  # fmt: skip
    except struct.error as error:
        raise _refused(_found("large_number"), _expected("table")) from error
    packed = head + rows.tobytes() + text
    decode(packed)
    return packed


def decode(packed: bytes) -> Batch:
    """The message in some bytes.

    Parameters
    ----------
    packed : bytes
        As it arrived, from whomever.

    Returns
    -------
    Batch

    Raises
    ------
    BadInput
        Anything that the module's table does not allow; nothing else is ever raised.

    Examples
    --------
    >>> decode(encode(Batch("alive", 0, 7, 1000.0, 1.7e12))).sequence
    7
    """
    if not HEAD_BYTES <= len(packed) <= MOST_BYTES:
        raise _refused(
            message(Batches.length, count=len(packed)), message(Batches.lengths, least=HEAD_BYTES, most=MOST_BYTES)
        )
    letters, version, number, slot, flags, sequence, first, count, axes, buttons, text_bytes, page, sent_ms, wall_ms = (
        _HEAD.unpack_from(packed)
    )  # fmt: skip
    if letters != _LETTERS:
        raise _refused(_found("other_letters"), _expected("page"))
    if version != VERSION:
        raise _refused(message(Batches.version, version=version), message(Batches.version, version=VERSION))
    kind = _KINDS.get(number)
    if kind is None:
        raise _refused(message(Batches.kind, kind=number), message(Batches.kinds, least=min(_KINDS), most=max(_KINDS)))
    _check_head(kind, slot, flags, first=first, count=count, axes=axes, buttons=buttons, text_bytes=text_bytes)
    _check_clock("sent_ms", sent_ms)
    _check_clock("wall_ms", wall_ms)
    body = count * (2 + axes) * 8 if kind == "samples" else text_bytes
    if len(packed) != HEAD_BYTES + body:
        raise _refused(
            message(Batches.body, count=len(packed) - HEAD_BYTES), message(Batches.body_expected, count=body)
        )
    rows, text = _no_rows(), ""
    if kind == "samples":
        rows = np.frombuffer(packed, dtype="<f8", offset=HEAD_BYTES).reshape(count, 2 + axes).astype(np.float64)
        _check_rows(rows, buttons, sent_ms)
    elif kind == "appeared":
        text = _text(packed[HEAD_BYTES:])
    return Batch(
        kind=kind,
        slot=slot,
        sequence=sequence,
        sent_ms=sent_ms,
        wall_ms=wall_ms,
        first=first,
        rows=rows,
        axes=axes,
        buttons=buttons,
        text=text,
        standard=bool(flags & _STANDARD),
        lost_before=bool(flags & _LOST),
        page=page,
    )


def _refused(found: Message, expected: Message) -> BadInput:
    return BadInput(Problem(message(Batches.where), found, expected, message(Batches.remedy)))


def _found(what: FoundBatch) -> Message:
    return message(Batches.found, what=what)


def _expected(what: ExpectedBatch) -> Message:
    return message(Batches.expected, what=what)


def _check_head(
    kind: Kind, slot: int, flags: int, *, first: int, count: int, axes: int, buttons: int, text_bytes: int
) -> None:  # fmt: skip
    sampled, appeared = kind == "samples", kind == "appeared"
    allowed = (
        ("slot", slot, 0, 0 if kind == "alive" else MOST_SLOTS - 1),
        ("flags", flags, 0, _LOST + _STANDARD * appeared),
        ("first", first, 0, 2**32 - 1 if sampled else 0),
        ("rows", count, int(sampled), MOST_ROWS if sampled else 0),
        ("axes", axes, 0, MOST_AXES if sampled or appeared else 0),
        ("buttons", buttons, 0, MOST_BUTTONS if sampled or appeared else 0),
        ("text", text_bytes, 0, MOST_TEXT_BYTES if appeared else 0),
    )
    for name, value, least, most in allowed:
        if not least <= value <= most:
            raise _refused(
                message(Batches.field, key=Name(name), value=value, kind=kind),
                message(Batches.limits, least=least, most=most),
            )


def _check_clock(name: str, value_ms: float) -> None:
    if not (math.isfinite(value_ms) and 0.0 <= value_ms <= _LARGEST_MS):
        raise _refused(message(Batches.clock, key=Name(name), value=Name(f"{value_ms:g}")), _expected("milliseconds"))


def _check_rows(rows: Array, buttons: int, sent_ms: float) -> None:
    times_ms, masks, axes = rows[:, 0], rows[:, 1], rows[:, 2:]
    if not bool(np.all((times_ms >= 0.0) & (times_ms <= sent_ms))):
        raise _refused(_found("bad_time"), _expected("milliseconds_to_sent"))
    if not bool(np.all((masks >= 0.0) & (masks < 2.0**buttons) & (masks == np.floor(masks)))):
        raise _refused(_found("unknown_buttons"), message(Batches.mask, buttons=buttons))
    if not bool(np.all(np.abs(axes) <= _LARGEST_AXIS)):
        raise _refused(_found("bad_axis"), _expected("axis"))


def _text(body: bytes) -> str:
    try:
        text = body.decode("utf-8")
    except UnicodeDecodeError as error:
        raise _refused(_found("bad_text"), _expected("utf8")) from error
    return "".join(sign if sign.isprintable() else " " for sign in text).strip()
