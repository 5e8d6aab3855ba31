"""Each mistake is told with file, line, field, what was found and what to do, in the unit that was typed."""

from __future__ import annotations

import pytest

from said import said
from stickwright.files.toml_lines import parse_toml
from stickwright.files.validation_errors import validated
from stickwright.model.game import Game
from stickwright.model.kit import Kit
from stickwright.model.player import Player

AT_90 = 'player.toml, line 7, site "chin", reading at 90°, '
MINUS = "Left is a direction, not a minus: give direction_deg = 180 and the number without its sign."
SITE = 'code = "K1"\n[[site]]\nname = "chin"\npart = "chin"\n'
STICK = '[[stick]]\nname = "ash"\nstart_force_n = 0.2\nfull_force_n = 0.5\ntravel_mm = 6\n'


def sentences(model, text, name="player.toml"):
    noun, problems = validated(model, parse_toml(text, name))
    assert (noun is None) == bool(problems)
    return [said(problem.sentence) for problem in problems]


def reading(line):
    return SITE + "  [[site.reading]]\n  direction_deg = 90\n  " + line + "\n"


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        (
            "force_n = [1.2, 4000]",
            'player.toml, line 7, site "chin", reading at 90°, force_n, 2nd value: found 4000, expected 0 to 500 N. '
            "If the gauge shows mN, name the list force_mn; if gf, name it force_gf.",
        ),
        (
            "force_gf = [45, -3.50]",
            f"{AT_90}force_gf, 2nd value: found -3.50, expected 0 to 51,000 gf, without a sign. {MINUS}",
        ),
        (
            "reach_mm = -5",
            f"{AT_90}reach_mm: found -5, expected 0 to 1,000 mm, without a sign. {MINUS}",
        ),
        (
            "force_mm = 3",
            f"{AT_90}force_mm: found force_mm, which ends in a unit of length, expected"
            " a unit of force: force_n, force_mn, force_cn, force_gf, force_kgf, force_oz or force_lb. "
            "Change the ending to the unit that you measured in.",
        ),
        (
            "force = 3",
            'player.toml, line 7, site "chin", reading at 90°, force: found force without a unit, expected force_n, '
            "force_mn, force_cn, force_gf, force_kgf, force_oz or force_lb. Add the unit.",
        ),
        (
            "forse_gf = 45",
            'player.toml, line 7, site "chin", reading at 90°, forse_gf: found the unknown key forse_gf, '
            "expected a known key of [[reading]]. Did you mean 'force_gf'?",
        ),
        (
            'force_n = ["0,44"]',
            'player.toml, line 7, site "chin", reading at 90°, force_n, 1st value: found "0,44", '
            "expected a number without quotes. Write 0.44.",
        ),
        (
            "force_n = true",
            'player.toml, line 7, site "chin", reading at 90°, force_n: found true, expected a number. '
            "true and false answer yes-or-no questions only.",
        ),
        (
            "force_n = [0.4, nan]",
            'player.toml, line 7, site "chin", reading at 90°, force_n, 2nd value: found nan, expected a number. '
            "Leave out the key, or this one value, if it was not measured.",
        ),
        (
            "force_n = [0.4, -inf]",
            'player.toml, line 7, site "chin", reading at 90°, force_n, 2nd value: found -inf, expected a number. '
            "Leave out the key, or this one value, if it was not measured.",
        ),
        (
            "force_n = 0.44\n  force_gf = 45",
            'player.toml, line 8, site "chin", reading at 90°, force_gf: found force_gf = 45 with force_n = 0.44, '
            "expected only one of the two. They give the same number: delete the one that is not in the unit of your gauge.",
        ),
        (
            "force_n = 0.4\n  gauge_step_n = 0.01",
            'player.toml, line 8, site "chin", reading at 90°, gauge_step_n: found gauge_step_n inside [[reading]], '
            "expected gauge_step_n in [[site]]. Move the line up, above the first table inside [[site]].",
        ),
    ],
)
def test_one_wrong_reading(line, expected):
    """A wrong reading is told once, as it was typed, with the remedy that fits it."""
    assert sentences(Player, reading(line)) == [expected]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (
            STICK.replace("travel_mm = 6\n", ""),
            'kit.toml, line 1, stick "ash": found no travel, expected travel_m, travel_cm, travel_mm or travel_inch '
            "(travel of the contact point from centre to stop). Add it in the unit that you measured in.",
        ),
        (
            STICK + 'kind = "levver"',
            'kit.toml, line 6, stick "ash", kind: found "levver", expected lever or touch. Did you mean \'lever\'?',
        ),
        (
            STICK + "base_mm = [54, 50]",
            'kit.toml, line 6, stick "ash", base_mm: found 2 values, expected 3 values. Length, width, height.',
        ),
        (
            STICK + "full_output_share = 80",
            'kit.toml, line 6, stick "ash", full_output_share: found 80, expected 0.05 to 1 '
            "(a share: 1 is all, 0.5 is half). 50% is 0.5.",
        ),
        (STICK + "in_stock = 1.5", 'kit.toml, line 6, stick "ash", in_stock: found 1.5, expected a whole number.'),
        (
            STICK + "note = 7",
            'kit.toml, line 6, stick "ash", note: found 7, expected text in quotes. Write note = "7".',
        ),
        (STICK.replace("[[stick]]", "[stick]"), None),
        ("stick = []", "kit.toml, line 1, stick: found [], expected at least one [[stick]]."),
        ('[[stick]]\nname = ""\nstart_force_n = 1\nfull_force_n = 2\ntravel_mm = 3', None),
    ],
)
def test_a_wrong_kit(text, expected):
    """A kit's mistakes: what is missing is named in all its units, words are offered, lists are counted."""
    found = sentences(Kit, text, "kit.toml")
    if expected is not None:
        assert found == [expected]
    else:
        assert len(found) == 1


def test_single_brackets():
    """[stick] for [[stick]] is told as what it is."""
    text = STICK.replace("[[stick]]", "[stick]")
    assert sentences(Kit, text, "kit.toml") == [
        "kit.toml, line 1, stick: found [stick], expected a table [[stick]]. Use double brackets, once for each."
    ]


def test_double_brackets_where_there_is_only_one():
    """[[site.press]] for [site.press] is told with the heading as it should stand."""
    assert sentences(Player, SITE + "[[site.press]]\nforce_n = 1\n") == [
        'player.toml, line 5, site "chin", press: found [[site.press]], expected a table [site.press]. '
        "Use single brackets: there is only one."
    ]


@pytest.mark.parametrize(
    ("line", "words"),
    [
        (
            'price = "40 crowns"',
            'price: found "40 crowns", expected a number, alone. Put words after a #, or in note.',
        ),
        ('mass_g = "40 gram"', "expected a number, alone. Put the unit in the key, e.g. force_gf = 45."),
        ("price = -1", "price: found -1, expected 0 to 100,000. Leave out the minus sign."),
    ],
)
def test_numbers_with_words(line, words):
    """A currency is no unit: it has no place in the key."""
    (sentence,) = sentences(Kit, STICK + line, "kit.toml")
    assert words in sentence


def test_a_long_list_of_words_is_not_read_out():
    """Of all roles only the ends, when the one that was meant is plain; all of them when it is not."""
    text = 'name = "g"\n[[action]]\nname = "move"\nkind = "press"\ninput = "{}"\n'
    (near,) = sentences(Game, text.format("Left Stick"), "game.toml")
    assert near == (
        'game.toml, line 5, action "move", input: found "Left Stick", expected one of left stick, right stick, bottom '
        "button in right cluster or 16 more. Did you mean 'left stick'?"
    )
    (far,) = sentences(Game, text.format("7"), "game.toml")
    assert "top button in left cluster" in far


def test_all_at_once_in_the_order_of_the_file():
    """Six mistakes give six sentences, in the order in which they stand, and none twice."""
    text = (
        'code = 7\n[[site]]\nname = "a"\npart = "thum"\npress_rate_per_s = [1, 99]\n'
        '  [[site.reading]]\n  force_n = "x"\n'
        '[[site]]\npart = "chin"\nunknown = 1\n'
    )
    found = sentences(Player, text)
    assert [sentence.split(":")[0] for sentence in found] == [
        "player.toml, line 1, code",
        'player.toml, line 4, site "a", part',
        'player.toml, line 5, site "a", press_rate_per_s, 2nd value',
        'player.toml, line 6, site "a", 1st reading',
        'player.toml, line 7, site "a", 1st reading, force_n',
        "player.toml, line 8, 2nd site",
        "player.toml, line 10, 2nd site, unknown",
    ]


def test_a_date_without_quotes_is_a_date():
    """TOML knows dates; visit = 2026-03-01 and visit = "2026-03-01" mean the same."""
    player, problems = validated(Player, parse_toml("visit = 2026-03-01\n" + SITE, "player.toml"))
    assert problems == []
    assert player is not None
    assert player.visit == "2026-03-01"


def test_a_bare_number_is_a_list_of_one():
    """One number stands for one repeat."""
    player, _ = validated(Player, parse_toml(reading("force_n = 0.5"), "player.toml"))
    assert player is not None
    assert player.site[0].reading[0].force_n == (0.5,)


def test_whole_numbers_in_a_game():
    """Importance beyond ten is told with its limits."""
    text = 'name = "g"\n[[action]]\nname = "move"\nkind = "press"\nimportance = 11\n'
    assert sentences(Game, text, "game.toml") == [
        'game.toml, line 5, action "move", importance: found 11, expected 0 to 10.'
    ]
