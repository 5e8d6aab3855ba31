"""What a passphrase is worth, and wrong ones in a row."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from said import place
from stickwright.codes.message import message
from stickwright.codes.passphrases import Passphrases
from stickwright.errors import BadInput
from stickwright.web.passphrase import ENOUGH_BITS, STRONG_BITS, accepted, strength
from stickwright.web.tries import LONGEST_S, Tries

NOW = datetime(2026, 3, 9, 10, 0, tzinfo=UTC)


WEAK = (
    "", "aaaaaaaaaaaaaaaaaaaaaaaa", "abcdefghijklmnopqrstuvwxyz", "qwertyuiop1234567890", "Password Password 1",
    "kettle kettle kettle kettle kettle",
)  # fmt: skip


@pytest.mark.parametrize("weak", WEAK)
def test_what_is_guessed_first_is_refused(weak: str) -> None:
    """Repeats, the alphabet, rows of keys and the words that everybody tries first are worth next to nothing."""
    assert strength(weak).bits < ENOUGH_BITS
    with pytest.raises(BadInput, match="too easy to guess"):
        accepted(weak, weak)


@pytest.mark.parametrize(
    ("passphrase", "bits"), [("kettle orbit mossy lantern", 44.0), ("kettle orbit mossy lantern nine", 55.0)]
)
def test_unrelated_words_count_eleven_bits_each(passphrase: str, bits: float) -> None:
    """By hand: four words 44 bits, five 55; the characters alone would give more only for longer words."""
    assert strength(passphrase).bits >= bits
    assert accepted(passphrase, passphrase) == passphrase


def test_five_words_are_strong() -> None:
    assert strength("kettle orbit mossy lantern nine").bits >= STRONG_BITS
    assert strength("kettle orbit mossy lantern nine").words == message(Passphrases.strength, level="strong")


def test_typed_twice() -> None:
    """Both sentences at once when it is weak and differs."""
    with pytest.raises(BadInput) as refused:
        accepted("short", "shorter")
    assert [place(problem) for problem in refused.value.problems] == ["Passphrase", "Confirm passphrase"]


@given(st.text(max_size=60), st.text(max_size=20))
def test_more_is_never_worth_less(begin: str, more: str) -> None:
    """Law: a further word, of letters not in it before, makes no passphrase easier to guess."""
    word = "".join(character for character in more if character.isalpha())
    assert strength(f"{begin} {word}".strip() + " zebra quill").bits >= 0
    assert strength(begin + begin).bits >= strength(begin).bits - 1e-9


def test_wrong_passphrases_slow_down_and_never_shut_out() -> None:
    """Three are free; then 2, 4, 8 s, at most a minute; a clock put back by a day makes nobody wait longer than that."""
    tries = Tries()
    waits = []
    for _ in range(12):
        waits.append(tries.wait_s(NOW))
        tries.failed(NOW)
    assert waits == [0, 0, 0, 2, 4, 8, 16, 32, 60, 60, 60, 60]
    with pytest.raises(BadInput, match="Wait 60 seconds"):
        tries.check(NOW)
    assert tries.wait_s(NOW - timedelta(days=1)) == LONGEST_S
    assert tries.wait_s(NOW + timedelta(seconds=61)) == 0
    tries.succeeded()
    assert tries.wait_s(NOW) == 0
