"""What is typed into a form."""

from __future__ import annotations

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from said import place, said
from stickwright.codes.expected import Expected
from stickwright.codes.message import message
from stickwright.errors import BadInput
from stickwright.files.editing import with_fields
from stickwright.files.entry import entered, shown, typed_numbers
from stickwright.model.game import Action
from stickwright.model.kit import Stick
from stickwright.model.player import DirectionReading, Site


@pytest.mark.parametrize(
    "text, numbers",
    [
        ("41 45 38", ["41", "45", "38"]),
        ("41; 45;38", ["41", "45", "38"]),
        ("41, 45, 38", ["41", "45", "38"]),
        ("0,44", ["0.44"]),
        ("0,44 1,05", ["0.44", "1.05"]),
        (" 007 .5 3. ", ["7", "0.5", "3.0"]),
        ("", []),
    ],
)
def test_numbers_as_people_type_them(text, numbers):
    """Blanks, semicolons, a decimal comma where there is no doubt; what was typed stays as precise as it was."""
    assert list(typed_numbers(text)) == numbers


@pytest.mark.parametrize("text", ["41,45", "1,5", "41,45,38"])
def test_a_comma_that_could_mean_two_things_is_asked(text):
    """41,45 is two readings in one country and one in the next: never a guess."""
    with pytest.raises(BadInput) as refused:
        typed_numbers(text)
    assert "comma" in said(refused.value.problems[0].expected)
    assert " ".join(text.split(",")) in said(refused.value.problems[0].remedy)


@pytest.mark.parametrize("text", ["4l", "forty", "1e3", "--4", "4-5", "12 N", "1.2.3", "∞"])
def test_what_is_no_number_is_refused(text):
    """No number is made of a word."""
    with pytest.raises(BadInput) as refused:
        typed_numbers(text)
    assert refused.value.problems[0].expected == message(Expected.number, unit=None)


@given(st.lists(st.decimals(0, 999, places=2), min_size=1, max_size=6))
def test_what_is_shown_can_be_typed_again(numbers):
    """Law: a field shown and sent back unchanged changes nothing."""
    text = " ".join(str(number) for number in numbers)
    fields = entered(DirectionReading, {"direction_deg": "0", "force_gf": text})
    table = tomllib.loads(with_fields("", ("reading",), fields))["reading"]
    key, again = shown(DirectionReading, "force_n", table)
    assert entered(DirectionReading, {key: again})[key] == fields["force_gf"] or [
        float(one) for one in typed_numbers(again)
    ] == [float(number) for number in numbers]


def test_another_unit_takes_the_place_of_the_first():
    """One number under two units would be refused by the reader: the form leaves one."""
    text = with_fields("", ("reading",), {"direction_deg": 0, "force_n": [0.4]})
    after = with_fields(text, ("reading",), entered(DirectionReading, {"force_gf": "41"}))
    assert tomllib.loads(after)["reading"] == {"direction_deg": 0, "force_gf": [41]}


def test_every_wrong_field_is_told_at_once():
    """A tired person corrects a form once, not four times."""
    with pytest.raises(BadInput) as refused:
        entered(
            Stick,
            {"travel_mm": "six", "in_stock": "1.5", "takes_toppers": "perhaps", "base_mm": "40 30"},
            where=("oak",),
        )
    assert [place(problem) for problem in refused.value.problems] == [
        "oak, travel_mm", "oak, in_stock", "oak, takes_toppers", "oak, base_mm",
    ]  # fmt: skip


def test_an_unknown_field_is_refused_with_the_nearest_name():
    """A field that nobody declared never reaches the file."""
    with pytest.raises(BadInput) as refused:
        entered(Site, {"involuntary_force_nn": "3"})
    assert "involuntary_force_n" in said(refused.value.problems[0].remedy)


def test_lists_of_words_stand_line_by_line():
    """Goals and names may hold commas."""
    assert entered(Action, {"together": "jump\n look, slowly \n"})["together"] == ["jump", "look, slowly"]
