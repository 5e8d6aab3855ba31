"""What is doubtful in a game is told with line, field and what to do, all of it at once."""

from __future__ import annotations

import pytest

from said import said
from stickwright.errors import Problem
from stickwright.files.game_warnings import game_warnings
from stickwright.files.toml_lines import parse_toml
from stickwright.files.validation_errors import validated
from stickwright.model.game import Game

WHOLE = {
    "two-axis": "importance = 5",
    "press": "importance = 5\npresses_per_min = 4",
    "hold": "importance = 5\nlongest_hold_s = 4",
    "chord": "importance = 5\npresses_per_min = 4",
}


def action(name, kind="press", more="", whole=True):
    return f'[[action]]\nname = "{name}"\nkind = "{kind}"\n{WHOLE[kind] if whole else ""}\n{more}\n'


def told(*actions):
    """Sentences of what is noticed, refusals with an exclamation mark before them."""
    noticed = game_warnings(parse_toml('name = "g"\n' + "".join(actions), "game.toml"))
    return [f"! {said(one.sentence)}" if isinstance(one, Problem) else f"? {said(one.text)}" for one in noticed]


def test_a_whole_game_raises_no_warning():
    """Each need said once, pairs named one way, a chord of two: nothing to ask."""
    assert told(
        action("move", "two-axis", 'together = ["jump"]\ninput = "left stick"'),
        action("jump", more='input = "bottom button in right cluster"\noption = "by itself"\noption_price = 2'),
        action("aim", "hold", 'together = ["jump", "move"]\ntoggle = "press once"\ntoggle_price = 1'),
        action("both", "chord", 'of = ["jump", "aim"]\ninput = "bottom button in right cluster"'),
    ) == []  # fmt: skip


@pytest.mark.parametrize(
    ("actions", "words"),
    [
        (
            [action("move", "two-axis", 'together = ["mov"]')],
            '! game.toml, line 6, action "move", together, 1st value: found "mov", expected the name of an action in '
            "game.toml. Did you mean 'move'?",
        ),
        (
            [action("a"), action("b"), action("ab", "chord", 'of = ["a", "bb", "b"]')],
            'action "ab", of, 2nd value: found "bb", expected the name of an action in game.toml.',
        ),
        (
            [action("move", "two-axis", 'together = ["move"]')],
            '! game.toml, line 6, action "move", together, 1st value: found "move", needed together with itself, expected '
            "another action. Take it out of the list.",
        ),
        (
            [action("a"), action("b"), action("c", "chord", 'of = ["a", "b", "c"]')],
            'of, 3rd value: found "c", part of itself, expected another action.',
        ),
        (
            [action("both", "chord")],
            '! game.toml, line 2, action "both": found a chord without its actions, expected the two or more '
            'actions of which it is made. Use the names of actions in this file, for example of = ["lane 1", '
            '"lane 2"].',
        ),
        (
            [action("a"), action("both", "chord", 'of = ["a", "a"]')],
            'line 13, action "both", of: found a chord of "a" alone, expected the two or more',
        ),
        (
            [action("a"), action("b"), action("c", more='of = ["a", "b"]')],
            '? game.toml, line 19, action "c", of: this list is used only with kind = "chord", and the kind is '
            "press. Is it a chord, or are the actions needed together?",
        ),
        (
            [action("a"), action("x", "chord", 'of = ["a", "y"]'), action("y", "chord", 'of = ["x", "a"]')],
            '! game.toml, line 13, action "x", of: found chords that contain each other: "x" contains "y" contains "x", '
            "expected chords made of single actions.",
        ),
        (
            [action("a", more='together = ["b"]'), action("b", more='together = ["c"]'), action("c", more='together = ["a"]')],
            '? game.toml, line 7, action "a", together: the actions form a circle: "a" is needed with "b" is '
            'needed with "c" is needed with "a". They are counted as pairs, not as all at once. If all must be '
            'possible at once, add an action of kind = "chord" with all of them in its list of.',
        ),
        (
            [action("jump", more='input = "top left front button"'), action("dig", more='input = "top left front button"')],
            '! game.toml, line 13, action "dig", input: found "top left front button", which already does "jump" '
            "(line 7), expected a different input for each action, as pressing one would also do the other.",
        ),
        (
            [action("a", more="option_price = 2")],
            '? game.toml, line 7, action "a", option_price: option_price without option, so it is never used.',
        ),
        (
            [action("a", "hold", "toggle_price = 2")],
            'line 7, action "a", toggle_price: toggle_price without toggle, so it is never used. Add how '
            'the game does it, for example toggle = "press on, press off".',
        ),
        (
            [action("a", more="helper = false\nhelper_price = 2")],
            'line 8, action "a", helper_price: helper_price with helper = false, so it is never used. '
            "Which is right?",
        ),
        (
            [action("a", more="busy_presses_per_min = 2")],
            "busy_presses_per_min: fewer presses in the busiest minute (busy_presses_per_min = 2) than on average "
            "(presses_per_min = 4).",
        ),
        (
            [action("a", more="reaction_ms = 0.4")],
            'line 7, action "a", reaction_ms: 0.4 is faster than anyone can be. If it was seconds, name '
            "the key reaction_s. Nothing was converted.",
        ),
        (
            [action("move", "two-axis", 'input = "top left front button"')],
            'input: a two-axis action on "top left front button". Is it a press?',
        ),
        ([action("a", more='input = "left stick"')], 'input: a press on "left stick". Is it two-axis?'),
        (
            [action("move", "two-axis", whole=False), action("dig", "hold", "longest_hold_s = 3", whole=False)],
            '? game.toml: importance is not recorded for "move" (line 2) and "dig" (line 7), so it is taken as '
            "5. Ask the player how important each action is, from 0 to 10: importance = 8.",
        ),
        (
            [action("a", more="importance = 3", whole=False)],
            '? game.toml: presses a minute are not recorded for "a" (line 2), so it is not known whether a site '
            "can keep up. Watch for ten minutes and count: presses_per_min = 12, busy_presses_per_min = 25.",
        ),
        (
            [action("a", "hold", "importance = 3", whole=False)],
            '? game.toml: the longest hold is not recorded for "a" (line 2), so it cannot be compared with how '
            "long the player can hold. Watch and time it: longest_hold_s = 6.",
        ),
    ],
)  # fmt: skip
def test_one_warning_is_one_sentence(actions, words):
    """Each slip by itself is told once, a contradiction as a refusal, a gap as a question."""
    (sentence,) = told(*actions)
    assert words in sentence


def test_all_warnings_at_once():
    """Doubled names, names that point nowhere, circles and gaps of one file are told together."""
    found = told(
        action("a", more='together = ["b"]\noption_price = 1'), action("A", whole=False),
        action("b", more='together = ["c"]'), action("c", more='together = ["a", "nobody"]'),
        action("x", "chord", 'of = ["y", "a"]'), action("y", "chord", 'of = ["x", "a"]'), action("z", "chord"),
    )  # fmt: skip
    kinds = (
        'a second action called "A"', "option_price without option", '"nobody"', "a chord without", "contain each other",
        "form a circle", "importance is not recorded", "presses a minute are not recorded",
    )  # fmt: skip
    assert len(found) == len(kinds)
    for kind in kinds:
        assert any(kind in sentence for sentence in found), kind


def test_named_back_is_no_circle():
    """Three that all name each other are all meant: no question."""
    three = ("a", "b", "c")
    actions = [action(one, more=f"together = {[other for other in three if other != one]}") for one in three]
    assert told(*actions) == []


def test_two_circles_are_two_questions():
    """A circle of four beside one of three: each is told once, with its own names."""
    names = ("a", "b", "c", "d", "p", "q", "r")
    nexts = ("b", "c", "d", "a", "q", "r", "p")
    found = told(*(action(one, more=f'together = ["{other}"]') for one, other in zip(names, nexts, strict=True)))
    assert len(found) == 2
    assert '"a" is needed with "b" is needed with "c" is needed with "d" is needed with "a"' in found[0]
    assert '"p" is needed with "q" is needed with "r" is needed with "p"' in found[1]


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("option_price = -1", "option_price: found -1, expected 0 to 10. Leave out the minus sign."),
        ("importance = -3", "importance: found -3, expected 0 to 10. Leave out the minus sign."),
        ("drop_price = 12", "drop_price: found 12, expected 0 to 10."),
        (
            "presses_per_s = 84",
            "found 84, expected 0 to 20 /s. If you counted per minute, name the key presses_per_min.",
        ),
        ('input = "left stik"', "Did you mean 'left stick'?"),
        ('helper = "sister"', 'helper: found "sister", expected true or false.'),
    ],
)
def test_prices_and_figures_out_of_range(line, words):
    """Negative prices, shares of another scale, words nobody knows: refused with what to do."""
    _, (problem,) = validated(
        Game, parse_toml(f'name = "g"\n[[action]]\nname = "a"\nkind = "press"\n{line}\n', "game.toml")
    )
    assert str(problem).startswith('game.toml, line 5, action "a", ')
    assert words in said(problem.sentence)
