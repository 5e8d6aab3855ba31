"""What a game asks, as a practitioner reads it in the terminal."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from noun_strategies import nouns
from stickwright.files.archetypes import ARCHETYPES, archetype
from stickwright.model.game import Game
from stickwright.report.game_words import game_words, games_words, together_groups


def game(*actions, **more):
    return Game.model_validate({"name": "g", "action": list(actions), **more})


def of(name, kind="press", **more):
    return {"name": name, "kind": kind, **more}


@pytest.mark.parametrize("name", ARCHETYPES)
def test_fits_the_terminal(name):
    """Every table fits 100 columns and names every action in the words of the game."""
    found = archetype(name)
    text = game_words(found)
    assert max(len(line) for line in text.splitlines()) <= 100
    begun = [line[:12].strip() for line in text.splitlines()]
    assert all(any(action.name.startswith(line) for line in begun if line) for action in found.action)


def test_one_line_a_game():
    """Name, sticks with their share of the time, number of actions, what is needed together, shortest reaction."""
    lines = games_words({name: archetype(name) for name in ARCHETYPES}).splitlines()
    assert max(len(line) for line in lines) <= 100
    assert lines[0].split("  ")[0] == "game"
    (row,) = [line for line in lines if line.startswith("racing")]
    assert " ".join(row.split()) == "racing steer 90% 8 steer + accelerate; steer + 400 ms"
    (row,) = [line for line in lines if line.startswith("turn-based")]
    assert " ".join(row.split()) == "turn-based-strategy point 20% 6 nothing -"
    (row,) = [line for line in lines if line.startswith("rhythm")]
    assert row.split()[:3] == ["rhythm", "none", "7"]


def test_one_line_an_action():
    """Importance, share of time, hold, presses on average and busy, reaction, together, option and toggle with price."""
    text = game_words(
        game(
            of("aim", "hold", importance=7, duty_share=0.1, longest_hold_s=15, presses_per_min=1, busy_presses_per_min=4,
               reaction_ms=250, together=["fire"], option="locks on", option_price=2, toggle="tap", toggle_price=1),
            of("fire", importance=9, duty_share=0.25, presses_per_min=20),
            of("both", "chord", of=["aim", "fire"], busy_presses_per_min=3),
        )
    )  # fmt: skip
    lines = text.splitlines()
    assert lines[0] == "g: 3 actions; sticks: none"
    rows = [line for line in lines if line.startswith(("aim", "fire", "both"))]
    assert " ".join(rows[0].split()) == "aim hold 7 10% 15 s 1 (4) 250 ms fire locks on (2);"
    assert "latching: tap" in lines[lines.index(rows[0]) + 1]
    assert " ".join(rows[1].split()) == "fire press 9 25% - 20 (?) - - -"
    assert " ".join(rows[2].split()) == "both chord 5 50% - ? (3) - made of -"
    assert "the cost to the player in brackets" in " ".join(text.split())


def test_a_game_without_actions():
    """Half described: said in a sentence, no empty table."""
    text = game_words(game())
    assert "No action is named." in text
    assert games_words({"g": game()}).splitlines()[2].split() == ["g", "none", "0", "nothing", "-"]


def test_groups_are_those_in_which_each_needs_each():
    """Three that all need each other are one group; a pair that shares one of them is another; chords count."""
    found = together_groups(
        game(of("a", together=["b", "c"]), of("b", together=["c"]), of("c"), of("d", together=["a"]),
             of("e"), of("ce", "chord", of=["c", "e"]))
    )  # fmt: skip
    assert found == (("a", "b", "c"), ("a", "d"), ("c", "e"))


@given(names=st.permutations(["a", "b", "c", "d", "e"]), pairs=st.sets(st.tuples(*[st.integers(0, 4)] * 2)))
@settings(max_examples=60, deadline=None)
def test_every_pair_is_in_a_group(names, pairs):
    """Law: whoever names whom, each pair stands in a group, and in a group each is needed with each."""
    pairs = {pair for pair in pairs if pair[0] != pair[1]}
    groups = together_groups(
        game(*(of(name, together=[names[b] for a, b in pairs if a == place]) for place, name in enumerate(names)))
    )
    needed = {frozenset((names[a], names[b])) for a, b in pairs}
    inside = {frozenset((one, other)) for group in groups for one in group for other in group if one != other}
    assert inside == needed


@given(found=nouns(Game))
@settings(max_examples=40, deadline=None)
def test_any_game_can_be_told(found):
    """Law: whatever a game says, the table has no line wider than the terminal."""
    assert all(len(line) <= 100 for text in (game_words(found), games_words({"g": found})) for line in text.split("\n"))
