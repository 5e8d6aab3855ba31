"""What is doubtful in what a player presses, does at the same moment, reaches, and leaves to helpers."""

from __future__ import annotations

import pytest

from said import said
from stickwright.errors import Problem
from stickwright.files.player_warnings import Names, player_warnings
from stickwright.files.toml_lines import parse_toml

SITES = (
    'code = "K1"\n[[site]]\nname = "left thumb"\npart = "thumb"\npress_rate_per_s = 1.2\n'
    '[[site]]\nname = "right foot"\npart = "foot"\npress_rate_per_s = 1.2\n'
)
PAIR = '[[together]]\nsites = ["left thumb", "right foot"]\n'


def told(text, controllers=()):
    """Sentences of what is noticed, refusals with an exclamation mark before them."""
    names = Names((), (), (), (), controllers)
    noticed = player_warnings(parse_toml(text, "player.toml"), names, {})
    return [f"! {said(one.sentence)}" if isinstance(one, Problem) else f"? {said(one.text)}" for one in noticed]


def pressed(lines):
    """The first site with a press table."""
    return SITES.replace("press_rate_per_s = 1.2\n[[site]]", f"  [site.press]\n{lines}\n[[site]]")


def test_what_is_whole_raises_no_warning():
    """A pair each way, by a word and by rates; a press; a helper; buttons within reach of a controller."""
    back = '[[together]]\nsites = ["right foot", "left thumb"]\nalone_per_s = 1.3\nboth_per_s = 1.2\n'
    text = pressed("force_gf = [95, 102, 90]\nrate_per_s = [1.3, 1.4]\nhold_s = 8\nreaction_s = [0.4, 0.6]")
    text = text.replace('part = "thumb"', 'part = "thumb"\nreaches = ["left stick pressed button"]')
    assert told(f'{text}{PAIR}says = "slows"\n{back}[[helper]]\nname = "sister"\n', ("pad",)) == []


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (
            SITES + '[[together]]\nsites = ["left thum", "right foot"]\nsays = "no"',
            '! player.toml, line 11, 1st together, sites, 1st value: found "left thum", expected the name of a site in '
            "player.toml. Did you mean 'left thumb'?",
        ),
        (
            SITES + '[[together]]\nsites = ["left thumb", "left thumb"]\nsays = "no"',
            '! player.toml, line 11, 1st together, sites: found "left thumb" twice, expected two sites. Name the '
            "site that holds first and the site that presses second.",
        ),
        (
            f'{SITES}{PAIR}says = "no"\n{PAIR}says = "yes"',
            'line 14, 2nd together, sites: found "left thumb" with "right foot" a second time (the first: line 10)',
        ),
        (
            f'{SITES}{PAIR}says = "no"\nalone_per_s = 1',
            '! player.toml, line 12, 1st together, says: found says = "no" together with press rates, expected '
            "either the word or the two rates, as only one can be used. If the rates were counted, delete the "
            "word.",
        ),
        (
            SITES + PAIR,
            "? player.toml, line 10, 1st together: neither a word nor press rates, so this says nothing. Try "
            'both at once for 20 s, then enter says = "yes", "slows" or "no", or alone_per_s and both_per_s.',
        ),
        (
            f"{SITES}{PAIR}alone_per_min = 60",
            "line 10, 1st together: alone_per_min without both_per_s, so the two cannot be compared. Count "
            "the other as well, 20 s each.",
        ),
        (
            f"{SITES}{PAIR}alone_per_s = 0\nboth_per_s = 0",
            "? player.toml, line 12, 1st together, alone_per_s: the second site made no press even alone, so the "
            "two cannot be compared.",
        ),
        (
            f"{SITES}{PAIR}alone_per_s = 1.0\nboth_per_s = 1.4",
            "line 13, 1st together, both_per_s: more presses while the first site holds (both_per_s = 1.4) "
            "than without (alone_per_s = 1.0). Were they swapped, or did the player warm up in between?",
        ),
        (
            SITES + '[[helper]]\nname = "sister"\n[[helper]]\nname = "Sister"',
            '! player.toml, line 13, helper "Sister", name: found a second helper called "Sister" (the first: line 10)',
        ),
        (
            SITES.replace('part = "thumb"', 'part = "thumb"\nreaches = ["left stick pressed button"]'),
            '? player.toml, line 5, site "left thumb", reaches: buttons within reach are given, but kit.toml has '
            "no [[controller]], so none is used. Add the controller that was tried.",
        ),
        (SITES.replace("left thumb", "option"), 'line 3, site "option", name: found a site called "option", expected a name'),
        (
            pressed("force_n = [95, 102, 90]"),
            '! player.toml, line 6, site "left thumb", press, force_n, 1st value: found 3 values: 90 to 102 N, '
            "expected 0.2 to 8 N, the usual comfortable force of a thumb. These look like grams-force (90 would "
            "be 0.88 N): if so, name the lists force_gf. Nothing was converted.",
        ),
        (
            pressed("force_n = [45, 52]"),
            '? player.toml, line 5, site "left thumb", press, force_n: found 2 values: 45 to 52 N, expected 0.2 '
            "to 8 N, the usual comfortable force of a thumb. These look like grams-force (45 would be 0.44 N)",
        ),
        (pressed("force_n = [1, 1, 1]"), 'player.toml, line 5, site "left thumb", press: all repeats of the press are identical, first in '
            'player.toml, line 6, site "left thumb", press, force_n, 1st value. Were they copied or rounded?'),
        (pressed("force_n = [1, 1, 1]"), "Were they copied or rounded? If they were copied, measure again."),
        (pressed("hold_s = [8, 90]"), 'line 6, site "left thumb", press, hold_s, 1st value: the repeats of the press run from 8 to '
            "90."),
        (
            pressed("rate_per_min = [1.3, 1.4]"),
            'line 6, site "left thumb", press, rate_per_min, 1st value: 1.3 a minute is very slow for '
            "pressing. If it was a second, name the key rate_per_s. Nothing was converted.",
        ),
        (
            pressed("reaction_ms = [0.4, 0.5]"),
            'line 6, site "left thumb", press, reaction_ms, 1st value: 0.4 ms is faster than anyone can '
            "be. If it was seconds, name the key reaction_s.",
        ),
        (
            pressed("most_switches = 1"),
            '? player.toml, line 5, site "left thumb", press: nothing was measured of the press. Add force_n',
        ),
    ],
)  # fmt: skip
def test_one_warning_is_one_sentence(text, words):
    """Each slip by itself is told once, at its line."""
    (sentence,) = told(text)
    assert words in sentence


def test_a_press_is_a_measurement():
    """A site where only pressing was tried was measured; one with nothing at all is asked about as before."""
    assert told(pressed("force_n = 1.1")) == []
    (sentence,) = told(SITES.replace("press_rate_per_s = 1.2\n[[site]]", "[[site]]"))
    assert 'site "left thumb": nothing has been measured here yet' in sentence


def test_reach_is_not_asked_about_when_the_kit_cannot_be_read():
    """What a kit holds is not guessed at."""
    text = SITES.replace('part = "thumb"', 'part = "thumb"\nreaches = ["left stick pressed button"]')
    assert told(text, None) == []


def test_all_warnings_at_once():
    """Pairs, helpers, presses and reach of one file are told together."""
    text = pressed("force_n = [45, 52]\nreaction_ms = 0.4").replace(
        'part = "thumb"', 'part = "thumb"\nreaches = ["left stick pressed button"]'
    )
    text += f'{PAIR}{PAIR}[[together]]\nsites = ["nobody", "left thumb"]\nsays = "no"\n'
    assert len(told(f'{text}[[helper]]\nname = "s"\n[[helper]]\nname = "s"')) == 8
