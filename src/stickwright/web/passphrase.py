"""How hard a passphrase is to guess, in words.

Whoever has the file can try passphrases without asking us. Each try costs about a tenth of a second of one core (argon2id with
64 MiB), so that a thousand rented cores try some ten thousand a second: 2**38 in a year. What a person makes up holds far less
than what a machine draws: about 11 bits for each unrelated word, as in lists of some two thousand words that people know, and
about 2.5 bits for each character otherwise [nist-63b] (its older edition: 2 bits for most characters of a chosen password).
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import NamedTuple

from stickwright.codes.message import Message, message
from stickwright.codes.passphrases import Passphrases
from stickwright.codes.start_page import StartPage
from stickwright.errors import BadInput, Problem

__all__ = ["ENOUGH_BITS", "STRONG_BITS", "Strength", "accepted", "strength"]

ENOUGH_BITS = 38.0
STRONG_BITS = 52.0
BITS_OF_WORD = 11.0
BITS_OF_CHARACTER = 2.5
LONGEST = 400
RUNS = ("abcdefghijklmnopqrstuvwxyz", "qwertyuiop", "asdfghjkl", "zxcvbnm", "01234567890")
COMMON = frozenset(
    {"password", "passwort", "passphrase", "letmein", "welcome", "secret", "admin", "login", "stickwright"}
)


class Strength(NamedTuple):
    """What a passphrase is worth: bits at least, and a sentence."""

    bits: float
    words: Message


def strength(passphrase: str) -> Strength:
    """How hard a passphrase is to guess.

    Returns
    -------
    Strength
        Bits, counted cautiously: what repeats, follows the alphabet or the keyboard, or is tried first counts once or not at all.

    Examples
    --------
    >>> strength("letmein").words.param("level")
    'seconds'
    >>> strength("kettle orbit mossy lantern nine").words.param("level")
    'strong'
    """
    words = {
        word for word in re.split(r"[\s\-_.,;:/]+", passphrase.casefold()) if len(word) >= 3 and not _follows(word)
    }
    by_words = BITS_OF_WORD * len(words - COMMON)
    by_characters = BITS_OF_CHARACTER * _characters(passphrase)
    bits = max(by_words, by_characters)
    if bits < 20:
        return Strength(bits, message(Passphrases.strength, level="seconds"))
    if bits < ENOUGH_BITS:
        return Strength(bits, message(Passphrases.strength, level="months"))
    if bits < STRONG_BITS:
        return Strength(bits, message(Passphrases.strength, level="enough"))
    return Strength(bits, message(Passphrases.strength, level="strong"))


def accepted(passphrase: str, again: str) -> str:
    """A new passphrase, typed twice.

    Raises
    ------
    BadInput
        Too easy to guess, too long, or the two differ.
    """
    worth = strength(passphrase)
    problems = []
    if len(passphrase) > LONGEST:
        problems.append(_wrong(StartPage.passphrase, message(Passphrases.too_long, most=LONGEST)))
    elif worth.bits < ENOUGH_BITS:
        problems.append(_wrong(StartPage.passphrase, message(Passphrases.too_easy)))
    if passphrase != again:
        problems.append(_wrong(StartPage.confirm, message(Passphrases.differ)))
    if problems:
        raise BadInput(problems)
    return passphrase


def _wrong(label: Callable[..., str], words: Message) -> Problem:
    return Problem(message(label), "", "", words)


def _characters(passphrase: str) -> int:
    """Characters that are not the one before, nor what follows it in the alphabet or on the keyboard; common words count one."""
    folded = passphrase.casefold()
    for word in COMMON:
        folded = folded.replace(word, word[0])
    pairs = {run[at : at + 2] for run in RUNS for at in range(len(run) - 1)}
    count = sum(
        before != after and before + after not in pairs and after + before not in pairs
        for before, after in zip("\0" + folded, folded, strict=False)
    )
    return min(count, 3 * len(set(folded)))


def _follows(word: str) -> bool:
    return len(set(word)) < 3 or any(word in run or word in run[::-1] for run in RUNS)
