"""What is doubtful of a hub is told with line, socket and what to do."""

from __future__ import annotations

import pytest

from said import said
from stickwright.errors import Problem
from stickwright.files.hub_warnings import hub_warnings
from stickwright.files.toml_lines import parse_toml
from stickwright.files.validation_errors import validated
from stickwright.model.hub import Hubs

HUB = '[[hub]]\nname = "tray hub"\n'


def socket(name, takes="USB", more='role = "assignable"'):
    return f'[[hub.socket]]\nname = "{name}"\ntakes = "{takes}"\n{more}\n'


def told(text):
    """Sentences of what is noticed, refusals with an exclamation mark before them."""
    noticed = hub_warnings(parse_toml(text, "hub.toml"))
    return [f"! {said(one.sentence)}" if isinstance(one, Problem) else f"? {said(one.text)}" for one in noticed]


def test_a_whole_hub_raises_no_warning():
    """Fixed and assignable roles, an exclusion, two hubs with sockets of the same name."""
    sockets = (
        socket("west", "USB", 'role = "assignable"\nroles = ["left stick"]')
        + socket("north", "4-conductor", 'role = "left stick"\nexcludes = ["west"]')
        + socket("dot", "6.3 mm 2-conductor", 'role = "top left front button"')
    )
    assert told(HUB + sockets + '[[hub]]\nname = "box"\nplug = "USB-C"\n' + socket("west")) == []


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (
            HUB + socket("a") + '[[hub]]\nname = "Tray hub"\n' + socket("a"),
            '! hub.toml, line 8, hub "Tray hub", name: found a second hub called "Tray hub" (the first: line 1), '
            "expected a different name for each hub. Choose another name, or delete one of the two.",
        ),
        (
            HUB + socket("a") + socket("A"),
            'line 8, hub "tray hub", socket "A", name: found a second socket called "A" (the first: line 3)',
        ),
        (
            HUB + socket("a", more=""),
            '! hub.toml, line 3, hub "tray hub", socket "a": found no role, expected role = "assignable", or '
            'what the socket feeds: "left stick", "bottom button in right cluster" and so on. A socket without a '
            "role feeds nothing.",
        ),
        (
            HUB + socket("a", "round plug"),
            'socket "a", takes: found "round plug", expected "USB-A", "USB-C", "2-conductor"',
        ),
        (HUB + 'plug = "mains"\n' + socket("a"), '! hub.toml, line 3, hub "tray hub", plug: found "mains", expected "USB-A"'),
        (
            HUB + socket("a", "2-conductor", 'role = "left stick"'),
            '? hub.toml, line 6, hub "tray hub", socket "a", role: "left stick" on a 3.5 mm mono jack (TS), which '
            "carries one switch, not a stick. Check takes and role at the socket.",
        ),
        (
            HUB + socket("a", "4-conductor", 'role = "top left front button"'),
            'role: "top left front button" on a 3.5 mm four-pole jack (TRRS), which carries a stick.',
        ),
        (
            HUB + socket("a", "2-conductor", 'role = "assignable"\nroles = ["top left front button", "right stick"]'),
            'socket "a", roles, 2nd value: "right stick" on a 3.5 mm mono jack (TS)',
        ),
        (
            HUB + socket("a", more='role = "left stick"\nroles = ["right stick"]'),
            'line 7, hub "tray hub", socket "a", roles: this list is used only with role = "assignable", '
            "and this socket feeds the left stick. Which is right?",
        ),
        (
            HUB + socket("west") + socket("b", more='role = "assignable"\nexcludes = ["wset"]'),
            'excludes, 1st value: found "wset", expected the name of a socket of the same hub. Did you mean \'west\'?',
        ),
        (
            HUB + socket("a", more='role = "assignable"\nexcludes = ["a"]'),
            'excludes, 1st value: found "a", the socket itself, expected another socket. Take it out of the list.',
        ),
        (HUB, '? hub.toml, line 1, hub "tray hub": no socket, so nothing can be plugged in. Add a [[hub.socket]]'),
        ("# nothing yet\n", "? hub.toml: no hub is described, so no sockets are chosen and nothing is wired."),
    ],
)  # fmt: skip
def test_one_warning_is_one_sentence(text, words):
    """Each slip by itself is told once, at its socket."""
    (sentence,) = told(text)
    assert words in sentence


def test_all_warnings_at_once():
    """Names, roles, plugs and exclusions of one file are told together."""
    text = (
        HUB
        + socket("a", "plug", "")
        + socket("A")
        + socket("b", "2-conductor", 'role = "left stick"\nexcludes = ["c", "b"]')
    )
    assert len(told(text + HUB)) == 8


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ('role = "asignable"', 'role: found "asignable", expected one of left stick, right stick,'),
        ('role = "asignable"', "Did you mean 'assignable'?"),
        ("role = 3", "role: found 3, expected one of left stick, right stick,"),
        ('role = "left stick"\ncurrent_ma = 90000', "current_ma: found 90000, expected 0 to 5,000 mA."),
        ("", ""),
    ],
)
def test_what_a_socket_cannot_say(line, words):
    """Roles in other words are refused with the nearest; a socket without one is left to the doubts."""
    _, problems = validated(Hubs, parse_toml(HUB + socket("a", more=line), "hub.toml"))
    assert len(problems) == (1 if words else 0)
    assert not words or words in said(problems[0].sentence)
