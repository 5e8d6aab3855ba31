"""The schema files obey the same rules as the reader."""

from __future__ import annotations

import json
import tomllib
from importlib import resources
from pathlib import Path

import jsonschema
import pytest
from hypothesis import given, settings

from noun_strategies import nouns
from stickwright import units
from stickwright.files.nouns_text import file_text
from stickwright.files.schemas import FILES, file_schema, schema_texts, write_schemas
from stickwright.model.game import Game
from stickwright.model.hub import Hubs
from stickwright.model.kit import Kit
from stickwright.model.player import Player
from stickwright.model.room import Room

ROOT = Path(__file__).parents[2]


def validator(model):
    return jsonschema.Draft202012Validator(file_schema(model))


@pytest.mark.parametrize("name", ["player", "kit", "game", "hub", "room", "plan"])
def test_the_schema_files_are_fresh(name):
    """The files under schemas/ are what the nouns say today: python -m stickwright.files.schemas writes them."""
    text = (ROOT / "schemas" / f"{name}.schema.json").read_text(encoding="utf-8")
    assert text == schema_texts()[f"{name}.schema.json"]


@pytest.mark.parametrize("name", ["player", "kit", "game", "hub", "room"])
def test_schema_is_a_schema_and_the_starter_obeys_it(name):
    """Each is valid JSON Schema, draft 2020-12, and the starter file passes it."""
    schema = file_schema(FILES[name])
    jsonschema.Draft202012Validator.check_schema(schema)
    starter = (resources.files("stickwright.files") / "starter" / f"{name}.toml").read_text(encoding="utf-8")
    jsonschema.Draft202012Validator(schema).validate(tomllib.loads(starter))


@pytest.mark.parametrize("model", [Player, Kit, Game, Hubs, Room])
def test_whatever_is_written_obeys_the_schema(model):
    """Law: any noun, written as a file, passes the schema."""
    check = validator(model)

    @given(noun=nouns(model))
    @settings(max_examples=40, deadline=None)
    def law(noun):
        data = json.loads(json.dumps(tomllib.loads(file_text(noun))))
        assert [error.message for error in check.iter_errors(data)] == []

    law()


STICK = {"name": "ash", "start_force_n": 0.2, "full_force_n": 0.5, "travel_mm": 6}


@pytest.mark.parametrize(
    "stick",
    [
        {key: value for key, value in STICK.items() if key != "travel_mm"},
        STICK | {"travel_cm": 0.6},
        STICK | {"travel_mm": 400},
        STICK | {"start_force_gf": 20},
        STICK | {"mass_g": 80, "mass_kg": 0.08},
        STICK | {"travel_mm": "6"},
        STICK | {"base_mm": [54, 50]},
        STICK | {"kind": "levver"},
        STICK | {"colour": "grey"},
        STICK | {"name": ""},
        STICK | {"in_stock": 1.5},
    ],
)
def test_broken_sticks_do_not_pass(stick):
    """Missing, doubled, absurd, mistyped: what the reader refuses, the schema refuses."""
    assert validator(Kit).is_valid({"stick": [STICK]})
    assert not validator(Kit).is_valid({"stick": [stick]})


def test_broken_players_and_games_do_not_pass():
    """No site, no code, levels of one, a list where a number stands alone."""
    site = {"name": "chin", "part": "chin", "press_rate_per_min": 60}
    assert validator(Player).is_valid({"code": "K1", "site": [site]})
    assert not validator(Player).is_valid({"code": "K1", "site": []})
    assert not validator(Player).is_valid({"site": [site]})
    assert not validator(Player).is_valid({"code": "K1", "site": [site | {"gauge_step_n": [0.1]}]})
    action = {"name": "move", "kind": "press"}
    assert validator(Game).is_valid({"name": "g", "action": [action | {"levels": 2}]})
    assert not validator(Game).is_valid({"name": "g", "action": [action | {"levels": 1}]})


def test_every_unit_is_offered_with_its_limits():
    """A travel may be typed in all units of length; 0.3 m is 300 mm, 30 cm, 11.81 inch (by hand)."""
    travel = file_schema(Kit)["$defs"]["Stick"]["properties"]
    assert [key for key in travel if key.startswith("travel_")] == list(units.units_of("travel_m"))
    assert travel["travel_inch"]["maximum"] == pytest.approx(11.81, abs=0.005)
    assert travel["travel_mm"]["maximum"] == 300
    assert travel["travel_mm"]["description"] == "Travel of the contact point from centre to stop."


def test_written_into_a_folder(tmp_path):
    """Five files, whole."""
    assert [path.name for path in write_schemas(tmp_path / "schemas")] == [
        "player.schema.json", "kit.schema.json", "game.schema.json", "hub.schema.json", "room.schema.json", "plan.schema.json",
    ]  # fmt: skip


def test_broken_hubs_do_not_pass():
    """A role in other words, a socket without what it takes, a fraction of a device."""
    socket = {"name": "west", "takes": "USB", "role": "assignable"}
    hub = {"name": "tray hub", "current_ma": 300, "socket": [socket]}
    assert validator(Hubs).is_valid({"hub": [hub, hub | {"socket": [socket | {"role": "left stick"}]}]})
    for broken in (
        hub | {"socket": [socket | {"role": "stick"}]}, hub | {"socket": [{"name": "west"}]},
        hub | {"most_devices": 1.5}, hub | {"current_ma": 0.3, "current_a": 0.3}, hub | {"colour": "grey"},
    ):  # fmt: skip
        assert not validator(Hubs).is_valid({"hub": [broken]})


def test_broken_rooms_do_not_pass():
    """A point with two values, a tube without its thickness, a minus before a thickness, an unknown side of things."""
    tube = {"name": "armrest tube", "from_mm": [250, 100, 200], "to_mm": [250, 400, 200], "diameter_mm": 25}
    assert validator(Room).is_valid({"tube": [tube, tube | {"moves_with": "base"}], "posture": "bed"})
    for broken in (
        tube | {"from_mm": [250, 100]}, {key: tube[key] for key in tube if key != "diameter_mm"}, tube | {"diameter_mm": -25},
        tube | {"to_m": [0, 0, 0]}, tube | {"moves_with": "house"},
    ):  # fmt: skip
        assert not validator(Room).is_valid({"tube": [broken]})
    assert not validator(Room).is_valid({"tilt_deg": 4})
