"""Forms made from the nouns themselves."""

from __future__ import annotations

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stickwright.catalogue.en.field_words import CHOICES, FIELDS, TABLES
from stickwright.errors import BadInput
from stickwright.files.archetypes import ARCHETYPES
from stickwright.files.editing import with_fields
from stickwright.files.fields import fields_of
from stickwright.model.game import Action, Game
from stickwright.model.hub import BUTTON_ROLES, STICK_ROLES, Hubs
from stickwright.model.kit import Kit, Stick
from stickwright.model.player import Player, Site
from stickwright.model.room import Room, Tube
from stickwright.web.noun_forms import FIRST, form_fields, inner_tables, sent_fields
from stickwright.web.noun_views import VIEWS, groups_of, noun_at, path_of, path_text


def nouns_in(model):
    """Every noun that can stand in a file."""
    yield model
    for _, inner, _ in inner_tables(model):
        yield from nouns_in(inner)


NOUNS = sorted(
    {noun for file in (Player, Kit, Room, Hubs, Game) for noun in nouns_in(file)}, key=lambda noun: noun.__name__
)


@pytest.mark.parametrize("noun", NOUNS, ids=lambda noun: noun.__name__)
def test_every_noun_has_a_form(noun):
    """Whatever may stand in a file can be entered: each field has a control, a label, and choices where it has choices."""
    fields = form_fields(noun, {})
    tables = {name for name, _, _ in inner_tables(noun)}
    assert {field.name for field in fields} == set(noun.model_fields) - tables
    assert all(field.label for field in fields)
    assert all(field.choices for field in fields if field.kind in ("choice", "ticks"))


def test_every_field_choice_and_table_has_words_of_its_own():
    """A new field is given a label, a new choice its word; and no label stays behind for what is gone."""
    wanted = {(noun.__name__, name): shape for noun in NOUNS for name, shape in fields_of(noun).items()}
    fields = {(noun, name) for (noun, name), shape in wanted.items() if shape.kind != "table"}
    labelled = {f"{noun}.{name}" if f"{noun}.{name}" in FIELDS else name for noun, name in fields}
    assert not labelled ^ FIELDS.keys()
    assert not {name for noun in NOUNS for name, _, _ in inner_tables(noun)} ^ TABLES.keys()
    chosen = {word for shape in wanted.values() for word in shape.choices} - {*STICK_ROLES, *BUTTON_ROLES}
    assert not (chosen | {*ARCHETYPES, "none"}) ^ CHOICES.keys()


@pytest.mark.parametrize("noun", sorted(FIRST, key=lambda noun: noun.__name__), ids=lambda noun: noun.__name__)
def test_what_is_asked_first_exists(noun):
    """A field asked first that was renamed would silently move under 'more'."""
    assert set(FIRST[noun]) <= set(noun.model_fields)


@pytest.mark.parametrize("view", VIEWS.values(), ids=lambda view: view.name)
def test_columns_of_the_lists_exist(view):
    """A column that was renamed would stay empty for ever."""
    for group in view.groups:
        assert set(group.columns) <= set(group.model.model_fields)
        assert noun_at(view.model, (group.key, 0)) is group.model


def test_a_form_sent_back_unchanged_changes_nothing():
    """Opening a form and keeping it must not alter a number, its unit, or a word."""
    table = {
        "name": "elm",
        "start_force_gf": 41.50,
        "full_force_gf": 90,
        "travel_mm": 6,
        "in_stock": 2,
        "takes_toppers": False,
    }
    sent = {}
    for field in form_fields(Stick, table):
        sent[field.name] = field.value
        if field.unit_name:
            sent[field.unit_name] = next(key for key, words in field.unit_choices if words == field.unit)
    after = tomllib.loads(with_fields('[[stick]]\nname = "x"', ("stick", 0), sent_fields(Stick, sent)))["stick"][0]
    assert after == table


def test_the_unit_of_the_gauge_is_chosen_for_what_is_not_typed_yet():
    """A practitioner chooses the unit of the gauge once."""
    fields = {field.name: field for field in form_fields(Stick, {"full_force_n": 3}, wanted_units={"force": "gf"})}
    assert (fields["start_force_n"].unit, fields["full_force_n"].unit) == ("gf", "N")


def test_another_unit_replaces_the_first():
    """Two units for one number would be refused by the reader."""
    text = '[[stick]]\nname = "elm"\nfull_force_n = 3\n'
    after = with_fields(text, ("stick", 0), sent_fields(Stick, {"full_force_n": "300", "full_force_n.unit": "gf"}))
    assert tomllib.loads(after)["stick"][0] == {"name": "elm", "full_force_gf": 300}


def test_what_was_refused_is_shown_as_it_was_typed():
    """Nothing typed is lost, and the sentence stands beside its field."""
    with pytest.raises(BadInput) as refused:
        sent_fields(Stick, {"travel_m": "six", "travel_m.unit": "mm"}, where="elm")
    fields = {
        f.name: f
        for f in form_fields(Stick, {}, typed={"travel_m": "six", "travel_m.unit": "mm"}, refused=refused.value)
    }
    assert fields["travel_m"].value == "six"
    assert "six" in fields["travel_m"].problem
    assert not fields["full_force_n"].problem


def test_actions_of_the_game_are_offered():
    """Names are chosen, not typed: a typing slip would part an action from its site."""
    fields = {
        field.name: field for field in form_fields(Site, {"action": "look"}, offered={"action": ("move", "jump")})
    }
    assert [value for value, _ in fields["action"].choices] == ["", "move", "jump", "look"]
    ticks = {field.name: field for field in form_fields(Action, {}, offered={"together": ("move", "jump")})}
    assert ticks["together"].kind == "ticks"


def test_three_numbers_make_a_point():
    """Right, forward, up."""
    after = with_fields(
        "", ("tube", 0), sent_fields(Tube, {"name": "front", "from_m": "-100 350; 20.5", "from_m.unit": "mm"})
    )
    assert tomllib.loads(after)["tube"][0]["from_mm"] == [-100, 350, 20.5]


@pytest.mark.parametrize(
    "text", ["site", "site/0/rest/9", "site/x", "stick/0", "site/0/press/0/x", "site/2", "site/0/name"]
)
def test_addresses_of_nothing_are_nothing(text):
    """An address typed by hand, or long out of date, never writes somewhere else."""
    tables = {"site": [{"name": "chin"}, {"name": "foot"}]}
    with pytest.raises(KeyError):
        path_of(text, Player, tables)


@given(st.integers(0, 3), st.integers(0, 3))
def test_an_address_and_its_place_belong_together(site, rest):
    """Law: what a list links to is what the form opens."""
    tables = {"site": [{"name": f"s{number}", "rest": [{}] * 4} for number in range(4)]}
    path = ("site", site, "rest", rest)
    assert path_of(path_text(path), Player, tables) == path
    assert path_of(f"site/{site}/rest/new", Player, tables) == ("site", site, "rest", 4)


def test_a_list_names_its_tables():
    """The name, or what stands for one."""
    group = VIEWS["sites"].groups[1]
    ((_, _, rows),) = groups_of((group,), {"together": [{"sites": ["chin", "foot"], "alone_per_min": 78}]})
    assert (rows[0].name, rows[0].cells) == ("chin and foot", ("", "78\N{NO-BREAK SPACE}/min", ""))
