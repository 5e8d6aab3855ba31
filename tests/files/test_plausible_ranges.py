"""Typing checks by body part."""

from __future__ import annotations

import pytest

from said import said
from stickwright import units
from stickwright.errors import Problem
from stickwright.files.plausible_ranges import BANDS, TypedList, likelier_unit, unlikely


def typed(key, *values):
    places = tuple(f"player.toml, line {place}" for place in range(len(values)))
    return TypedList(key, tuple(map(float, values)), tuple(map(str, values)), places, "90°")


@pytest.mark.parametrize(
    ("true_n", "part", "ending"),
    [(0.44, "fingertip", "gf"), (0.44, "thumb", "gf"), (1.7, "chin", "gf"), (0.56, "chin", "kgf")],
)
def test_a_gauge_read_in_another_unit(true_n, part, ending):
    """Forces of one site, typed as newton though the gauge showed another unit (factors 102, 0.102, 4.45 by hand:
    1 N is 101.97 gf, 0.10197 kgf, 0.2248 lbf), are asked about with that unit."""
    per_newton = {"gf": 101.97, "kgf": 0.10197, "lb": 0.22481}[ending]
    values = [round(true_n * per_newton * spread, 3) for spread in (0.95, 1.0, 1.05)]
    assert likelier_unit(values, "n", BANDS[part, "force"], "force") == ending


@pytest.mark.parametrize(
    ("true_n", "unit", "per_newton"), [(1.9, "kilograms-force", 0.10197), (1.6, "pounds-force", 0.22481)]
)
def test_a_gauge_whose_figures_could_be_a_weak_player(true_n, unit, per_newton):
    """A chin of 0.2 or 0.36 N is weak and possible: the other unit is named, and not as what it looks like."""
    values = [round(true_n * per_newton * spread, 3) for spread in (0.95, 1.0, 1.05)]
    (found,) = unlikely("chin", "site", [typed("force_n", *values)])
    assert (found.level, found.about) == ("query", "unusual")
    assert f"check the unit (as {unit}: " in said(found.text)


@pytest.mark.parametrize(
    ("part", "key", "values"),
    [
        ("hand", "reach_mm", (25, 28)),  # 250 mm if these were centimetres
        ("thumb", "reach_mm", (3, 3.5)),  # 30 mm
        ("hand", "force_n", (0.4, 0.6)),
        ("foot", "force_n", (0.8, 0.9)),
        ("fingertip", "reach_mm", (2.5, 2.0)),
    ],
)
def test_small_hands_and_weak_players_are_not_another_unit(part, key, values):
    """Somewhat under what is usual is the usual player here: it is asked about, and no unit is put in its place."""
    (found,) = unlikely(part, "site", [typed(key, *values)])
    assert (found.level, found.about) == ("query", "unusual")


def test_no_unit_is_offered_that_lands_outside_the_usual_range():
    """Law, for every part and every value over six decades: what a suggested unit makes of it is usual for the part."""
    for (part, sort), (low, high) in BANDS.items():
        ending = {"force": "n", "length": "mm"}[sort]
        for power in range(-60, 61):
            value = 10 ** (power / 20)
            other = likelier_unit([value], ending, (low, high), sort)
            assert other is None or low <= units.to_si(value, other) <= high, (part, sort, value)


@pytest.mark.parametrize(("true_mm", "ending", "per_mm"), [(10, "inch", 1 / 25.4), (9, "cm", 0.1)])
def test_a_tape_read_in_another_unit(true_mm, ending, per_mm):
    """Inches or centimetres typed as millimetres are asked about."""
    assert likelier_unit([round(true_mm * per_mm, 2)], "mm", BANDS["fingertip", "length"], "length") == ending


def test_newton_typed_as_grams_force():
    """The other way round: 0.4 under force_gf."""
    assert likelier_unit([0.4, 0.5], "gf", BANDS["fingertip", "force"], "force") == "n"


def test_the_question_names_the_list():
    """Beyond the usual but not absurd: a question, with the converted figure, and nothing is converted."""
    (found,) = unlikely("fingertip", 'player.toml, line 2, site "right index"', [typed("force_n", 45, 48, 39)])
    assert not isinstance(found, Problem)
    assert (found.level, found.about) == ("query", "unit")
    assert said(found.text) == (
        'player.toml, line 2, site "right index", force_n: found 3 values: 39 to 48 N, expected 0.1 to 5 N, the '
        "usual comfortable force of a fingertip. These look like grams-force (39 would be 0.38 N): if so, name the "
        "lists force_gf. Nothing was converted."
    )


def test_a_400_newton_thumb():
    """Ten times the top of the usual range is refused, at the value, with the limit in the unit typed."""
    (found,) = unlikely("thumb", "site", [typed("force_n", 3, 400)])
    assert isinstance(found, Problem)
    assert said(found.sentence) == (
        "player.toml, line 1: found 400 N, expected 0 to 80 N for a thumb (usually 0.2 to 8 N). "
        "If the gauge shows UNIT."
    ).replace("UNIT", likeliest(400))


def likeliest(value):
    """The unit whose reading of `value` lies nearest to the middle of a thumb's range, worked out here again."""
    middle = (0.2 * 8) ** 0.5
    names = {"mn": "millinewtons", "gf": "grams-force"}
    factors = {"mn": 0.001, "gf": 0.00980665}
    best = min(factors, key=lambda ending: max(value * factors[ending] / middle, middle / (value * factors[ending])))
    return f"{names[best]} ({value} would be {value * factors[best]:.2g} N), name the list force_{best}"


def test_a_whole_gauge_beyond_the_absurd_is_one_problem():
    """Twenty-four values in the wrong unit are one sentence, not twenty-four."""
    found = unlikely("fingertip", "site", [typed("force_n", *range(60, 84))])
    assert len(found) == 1
    assert isinstance(found[0], Problem)
    assert "24 values: 60 to 83 N" in said(found[0].sentence)
    assert "name the lists force_gf" in str(found[0])


@pytest.mark.parametrize(("part", "force_n"), [("fingertip", 0.44), ("thumb", 0.0), ("foot", 12), ("shoulder", 400)])
def test_usual_values_zero_and_unknown_parts_pass(part, force_n):
    """What is usual is not asked about; nor is 0, which says 'cannot'; parts without a range are not judged."""
    assert unlikely(part, "site", [typed("force_n", force_n)]) == []


def test_a_weak_player_is_asked_about_not_refused():
    """Below the usual: a question only."""
    (found,) = unlikely("hand", "site", [typed("force_n", 1.5, 2.5)])
    assert not isinstance(found, Problem)
    assert "1 value of comfortable force (1.5 N) is below the usual range for a hand (2 to 40 N)" in said(found.text)


def test_ranges_stand_in_si():
    """A fingertip travels 3 to 25 mm: kept in metres."""
    assert BANDS["fingertip", "length"] == pytest.approx((units.to_si(3, "mm"), units.to_si(25, "mm")), rel=1e-12)
