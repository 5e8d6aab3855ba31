"""What is doubtful in a kit: one name for one device, plugs that can be told, stock and prices that make sense."""

from __future__ import annotations

import pytest

from said import said
from stickwright.errors import Problem
from stickwright.files.kit_warnings import kit_warnings
from stickwright.files.toml_lines import parse_toml
from stickwright.files.validation_errors import validated
from stickwright.model.kit import Kit

STICK = '[[stick]]\nname = "willow"\nstart_force_n = 0.2\nfull_force_n = 0.5\ntravel_mm = 6\nplug = "USB"\n'
SWITCH = '[[switch]]\nname = "clover"\nforce_n = 0.35\nplug = "2-conductor"\n'
PAD = '[[controller]]\nname = "pad"\n'
LEAD = '[[lead]]\nname = "plus 1 m"\nplug = "2-conductor"\n'


def told(text, has_hub=True):
    """Sentences of what is noticed: '!' refused, '?' asked, '.' noted."""
    noticed = kit_warnings(parse_toml(text, "kit.toml"), has_hub=has_hub)
    mark = {"query": "?", "note": "."}
    return [
        f"! {said(one.sentence)}" if isinstance(one, Problem) else f"{mark[one.level]} {said(one.text)}"
        for one in noticed
    ]


def test_a_whole_kit_raises_no_warning():
    """Stick, switch, controller and lead, each with its own name and plug."""
    assert told(STICK + SWITCH + PAD + LEAD + 'sockets = ["2-conductor", "3-conductor"]\n') == []


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (
            STICK + SWITCH + SWITCH.replace("clover", "Clover"),
            '! kit.toml, line 12, switch "Clover", name: found a second switch called "Clover" (the first: line '
            "7), expected a different name for each switch. Choose another name, or delete one of the two.",
        ),
        (STICK + PAD + PAD, 'found a second controller called "pad" (the first: line 7)'),
        (STICK + LEAD + LEAD, 'found a second lead called "plus 1 m" (the first: line 7)'),
        (
            STICK + SWITCH.replace("clover", "Willow"),
            '! kit.toml, line 8, switch "Willow", name: found a switch with the name of the stick "Willow" (line '
            "1), expected a different name for each device, as plans and requests use the name alone. Choose "
            "another name for the switch.",
        ),
        (
            STICK + SWITCH.replace("clover", "Helper"),
            'line 8, switch "Helper", name: found a switch called "Helper", expected a name other than '
            "option, helper or dropped: in a request these words say what happens to an action. Choose another "
            "name.",
        ),
        (
            STICK.replace("USB", "5-conductor"),
            '! kit.toml, line 6, stick "willow", plug: found "5-conductor", expected "USB-A", "USB-C", "2-conductor", '
            '"3-conductor" or "4-conductor" (3.5 mm, unless 2.5 mm or 6.3 mm is written before it). Look at the plug, and write '
            'for example: plug = "2-conductor".',
        ),
        (STICK + SWITCH.replace("2-cond", "1-cond"), 'switch "clover", plug: found "1-conductor", expected "USB-A"'),
        (STICK + PAD + 'plug = "wire"\n', 'controller "pad", plug: found "wire"'),
        (STICK + LEAD + 'sockets = ["2-conductor", "two"]\n', 'lead "plus 1 m", sockets, 2nd value: found "two"'),
        (STICK + LEAD + 'sockets = "two"\n', 'lead "plus 1 m", sockets: found "two"'),
        (
            STICK + SWITCH + "in_stock = 0\n" + LEAD + "in_stock = 0\n",
            '? kit.toml: none in stock and no price, so never used: "clover" (line 7) and "plus 1 m" (line 12). '
            "Enter in_stock when there is one, or a price if one may be bought.",
        ),
        (
            STICK + SWITCH + "in_stock = 0\nprice = 40\n",
            '. kit.toml: none in stock, so to order: "clover" (line 7).',
        ),
        (
            STICK.replace('plug = "USB"\n', "") + SWITCH.replace('plug = "2-conductor"\n', ""),
            '? kit.toml: no plug is recorded for "willow" (line 1) and "clover" (line 6). A device without one '
            'cannot be connected to a hub. Look at the plug: plug = "USB", "4-conductor" or "2-conductor".',
        ),
        (
            STICK + SWITCH.replace("force_n = 0.35\n", ""),
            '? kit.toml, line 7, switch "clover": no activation force is recorded, so it counts as none. Measure '
            'it, or enter kind = "proximity" if the switch works without touch.',
        ),
        (
            STICK + SWITCH.replace("force_n = 0.35", 'kind = "proximity"'),
            "a proximity switch without the distance at which it activates. Add senses_at_mm.",
        ),
    ],
)
def test_one_warning_is_one_sentence(text, words):
    """Each slip by itself is told once, at its device or for all devices together."""
    (sentence,) = told(text)
    assert words in sentence


def test_everything_out_of_stock():
    """A kit on loan: asked about as a whole, beside what counts as something to buy; leads do not make a kit usable."""
    found = told(STICK + "in_stock = 0\nprice = 90\n" + LEAD)
    assert len(found) == 2
    assert "every device is out of stock" in found[1]
    assert "needs in_stock = 1 or more" in found[1]


def test_a_plug_matters_only_with_a_hub():
    """Without a hub nothing is wired; what is not in stock is not asked about."""
    assert told(STICK.replace('plug = "USB"\n', ""), has_hub=False) == []
    away = SWITCH.replace('plug = "2-conductor"', "in_stock = 0\nprice = 3")
    assert [one[0] for one in told(STICK + away)] == ["."]


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("price = -5", 'stick "willow", price: found -5, expected 0 to 100,000. Leave out the minus sign.'),
        ("in_stock = -1", "in_stock: found -1, expected 0 to 1,000. Leave out the minus sign."),
        ("cable_m = -1", "cable_m: found -1, expected 0 to 20 m, without a sign. Leave out the minus sign."),
    ],
)
def test_negative_stock_and_prices(line, words):
    """Nothing is less than free or less than none."""
    _, (problem,) = validated(Kit, parse_toml(STICK + line, "kit.toml"))
    assert words in said(problem.sentence)


def test_no_stick_of_a_controller():
    """usb_stick takes a stick or none; another word is refused with both offered."""
    kit, problems = validated(Kit, parse_toml(STICK + PAD + 'usb_stick = "none"', "kit.toml"))
    assert problems == []
    assert kit is not None
    assert kit.controller[0].usb_stick is None
    _, (problem,) = validated(Kit, parse_toml(STICK + PAD + 'usb_stick = "no"', "kit.toml"))
    assert "usb_stick: found \"no\", expected one of left stick, right stick or none. Did you mean 'none'?" in str(
        problem
    )
