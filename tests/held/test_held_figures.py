"""No figure changes unseen: what recordings, benches, players and plans gave when their figures were last held, they give today.

These figures are not known to be right: other tests say what is right. A change that is meant is held anew, and the commit says why:

    python tests/held/hold.py            what differs
    python tests/held/hold.py --write    hold the figures of today
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from held_numbers import differences, figures
from held_results import ALL
from stickwright.codes.message import message
from stickwright.codes.movements import Movements

HELD = {name: json.loads(Path(__file__).with_name(f"{name}.json").read_text(encoding="utf-8")) for name in ALL}


@pytest.mark.parametrize(("name", "one"), [(name, one) for name in ALL for one in ALL[name]])
def test_the_figures_are_those_that_were_held(name: str, one: str) -> None:
    """Number by number; when one differs on purpose, hold it anew."""
    assert differences(HELD[name][one], figures(ALL[name][one]())) == []


def test_a_changed_an_exchanged_and_a_lost_number_are_noticed() -> None:
    """Of a list: one a thousandth larger, two exchanged, one left out; rounding in the seventh digit is let pass."""
    held = {path: total for path, (total, _) in figures({"a": (1.0, 2.0, 3.0)}).items()}
    for today in ((1.0, 2.002, 3.0), (2.0, 1.0, 3.0), (1.0, 2.0)):
        assert len(differences(held, figures({"a": today}))) == 1
    assert differences(held, figures({"a": (1.0, 2.0 + 2e-7, 3.0)})) == []
    assert len(differences(held, figures({"b": (1.0, 2.0, 3.0)}))) == 2


def test_another_word_and_another_message_are_noticed() -> None:
    """Of a result that holds no number at all; the same ones are not."""
    said = {path: total for path, (total, _) in figures(("left", message(Movements.one_push_way))).items()}
    assert len(differences(said, figures(("right", message(Movements.one_push_way))))) == 1
    assert len(differences(said, figures(("left", message(Movements.pushes_alike))))) == 1
    assert differences(said, figures(("left", message(Movements.one_push_way)))) == []


def test_a_set_is_held_in_an_order_of_its_own() -> None:
    """Words come out of a set in another order in each run."""
    words = ("rest", "hold", "press", "aim", "follow")
    held = {path: total for path, (total, _) in figures(sorted(words)).items()}
    assert differences(held, figures(frozenset(words))) == []
