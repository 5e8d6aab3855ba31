"""Nouns written as TOML read back to the same bits."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from noun_strategies import nouns
from stickwright.files.nouns_text import file_text, table_text
from stickwright.files.toml_lines import parse_toml
from stickwright.files.validation_errors import validated
from stickwright.model.game import Game
from stickwright.model.hub import Hubs
from stickwright.model.kit import Controller, Kit, Stick
from stickwright.model.player import Player


@pytest.mark.parametrize("model", [Player, Kit, Game, Hubs])
def test_any_noun_reads_back_equal(model):
    """Law: writing a noun and reading it back changes nothing, not even the last bit of a number."""

    @given(noun=nouns(model))
    @settings(max_examples=60, deadline=None)
    def law(noun):
        assert validated(model, parse_toml(file_text(noun), "file")) == (noun, [])

    law()


def test_written_in_the_units_people_use():
    """A stick is written in newton and millimetres, as it would be typed."""
    stick = Stick(name="ash", start_force_n=0.25, full_force_n=0.5, travel_mm=6.5, mass_g=80)
    assert table_text(stick, "[[stick]]") == [
        "[[stick]]", 'name = "ash"', "start_force_n = 0.25", "full_force_n = 0.5", "travel_mm = 6.5", "mass_g = 80",
    ]  # fmt: skip


def test_what_equals_its_default_is_left_out():
    """A noun with nothing but what is needed is written with nothing but that."""
    assert file_text(Game(name="even")) == 'name = "even"\n'


def test_none_is_a_word_where_leaving_out_means_something_else():
    """A controller of which a hub passes no stick on: left out, the key would mean the left stick."""
    text = file_text(Kit(stick=(Stick(name="a", start_force_n=0, full_force_n=1, travel_m=0.01),),
                         controller=(Controller(name="pad", usb_stick=None),)))  # fmt: skip
    assert 'usb_stick = "none"\n' in text
    kit, problems = validated(Kit, parse_toml(text, "kit.toml"))
    assert problems == []
    assert kit is not None
    assert kit.controller[0].usb_stick is None
