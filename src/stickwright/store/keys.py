"""From a passphrase to the key of a file, and what the first bytes of a file say about it.

Everything needed to open the file with its passphrase stands in the file itself, so that a copy on a stick, a backup or a
restored folder is whole with one file. SQLCipher writes the 16 bytes of its salt in clear at the very beginning; they are
chosen here: three letters that tell our files from others, one byte that names the cost of the derivation, twelve random
bytes. The same 16 bytes are the salt of argon2id [rfc9106]. A separate file for salt and cost would be lost the first time that
somebody copies `records.db` alone, and with it every record; a plain header within the file (`cipher_plaintext_header_size`)
takes the place of the salt and would need that separate file again.

Twelve random bytes are enough: RFC 9106 asks for a salt that does not repeat, recommends 16 bytes and allows 8.
"""

from __future__ import annotations

import secrets
import unicodedata
from dataclasses import dataclass
from typing import Literal

__all__ = ["APPLICATION_ID", "HEAD_BYTES", "Kind", "as_pragma", "derived_key", "kind_of", "new_salt"]

Kind = Literal["none", "encrypted", "plain", "not ours"]
APPLICATION_ID = 0x53544B57
"""In the header of an unencrypted file, where SQLite has a place for the program that a file belongs to."""
HEAD_BYTES = 72
_SALT_BYTES = 16
_MARK = b"STK"
_PLAIN = b"SQLite format 3\x00"


@dataclass(frozen=True)
class _Cost:
    passes: int
    memory_kib: int
    lanes: int


_COSTS = {1: _Cost(passes=3, memory_kib=64 * 1024, lanes=4)}
"""By the fourth byte of a file. The first is what RFC 9106, section 4, recommends where memory is scarce: 64 MiB, 3 passes."""


def new_salt() -> bytes:
    """The first 16 bytes of a new file."""
    return _MARK + bytes([max(_COSTS)]) + secrets.token_bytes(_SALT_BYTES - len(_MARK) - 1)


def kind_of(head: bytes) -> Kind:
    """What a file is, by its first bytes.

    Parameters
    ----------
    head : bytes
        The first `HEAD_BYTES` of the file, fewer when it is shorter.

    Returns
    -------
    str
        ``encrypted``, ``plain``, ``not ours``; ``none`` for an empty file.
    """
    if not head:
        return "none"
    if head.startswith(_PLAIN):
        ours = head[68:72] == APPLICATION_ID.to_bytes(4, "big")
        return "plain" if ours else "not ours"
    known = head.startswith(_MARK) and len(head) == HEAD_BYTES and head[len(_MARK)] in _COSTS
    return "encrypted" if known else "not ours"


def derived_key(passphrase: str, salt: bytes) -> bytes:
    """The key that goes with a passphrase and the first bytes of a file.

    Parameters
    ----------
    passphrase : str
        As typed. Letters with accents give the same key however the keyboard composes them.
    salt : bytes
        At least the first 16 bytes of the file.

    Returns
    -------
    bytes
        256 bits of argon2id [rfc9106].
    """
    from argon2.low_level import Type, hash_secret_raw

    cost = _COSTS[salt[len(_MARK)]]
    return hash_secret_raw(
        unicodedata.normalize("NFKC", passphrase).encode(), salt[:_SALT_BYTES], time_cost=cost.passes,
        memory_cost=cost.memory_kib, parallelism=cost.lanes, hash_len=32, type=Type.ID,
    )  # fmt: skip


def as_pragma(key: bytes, salt: bytes) -> str:
    """Key and salt in the words of SQLCipher: a raw key, so that its own derivation is not run on top."""
    return f"\"x'{key.hex()}{salt[:_SALT_BYTES].hex()}'\""
