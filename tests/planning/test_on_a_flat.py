"""A switch on the flat of a stick's housing, the whole way to the page. The player and the devices are invented."""

from __future__ import annotations

from dataclasses import replace

from test_kit_as_it_is import DRAWS, LIGHT, SHELL, case

from stickwright.model.game import Game
from stickwright.model.kit import Kit
from stickwright.model.player import Player
from stickwright.model.room import Room
from stickwright.planning.plan import plan
from stickwright.report.mount_page import switch_rows
from stickwright.report.words import plan_words

PRESS = {"force_n": [0.7], "rate_per_s": [2.0], "hold_s": [20], "release_s": [0.2], "travel_mm": 10}
TRAY = {
    "name": "tray",
    "corner_mm": [-280, 220, 240],
    "size_mm": [560, 340],
    "moves_with": "seat",
    "mass_kg": 2,
    "fastened": True,
}


def test_the_sheet_says_where_the_switch_stands() -> None:
    """Thumb on the stick, index above its flat: the switch is fixed to the flat, the room of the plan has the flat where the
    base is (400 mm forward, the flat 45 mm further), the parts list counts the tape for both, and the sheet says it."""
    box = {"name": "spur", **SHELL, **LIGHT, "base_mm": [140, 60, 30], "mass_g": 300,
           "flat": {"at_mm": [0, 45, 30], "size_mm": [60, 50]}}  # fmt: skip
    disc = {"name": "disc", "force_n": 0.3, "travel_mm": 2, "face_mm": [30], "plug": "2-conductor", "mass_g": 40,
            "base_mm": [40, 40, 15]}  # fmt: skip
    tape = {"name": "tape", "kind": "hook-and-loop", "shear_kpa": 60, "tension_kpa": 35, "peel_n_per_m": 1000,
            "test_method": "sheet", "in_stock": 9}  # fmt: skip
    actions = [
        {"name": "steer", "kind": "two-axis", "importance": 9},
        {"name": "jump", "kind": "press", "importance": 5, "busy_presses_per_min": 6},
    ]
    given = case(box)
    (thumb,) = given.player.site
    index = {"name": "left index", "part": "fingertip", "press": PRESS}
    places = [{"site": "left thumb", "at_mm": [0, 400, 286]}, {"site": "left index", "at_mm": [0, 445, 285]}]
    made = plan(
        replace(
            given, kit=Kit.model_validate({"stick": [box], "switch": [disc], "fastener": [tape]}),
            game=Game.model_validate({"name": "a road", "action": actions}),
            player=Player.model_validate({"code": "Q1", "site": [thumb.model_dump(exclude_defaults=True), index]}),
            room=Room.model_validate({"surface": [TRAY], "place": places}),
        ),
        draws=DRAWS,
    )  # fmt: skip
    held = {one.device: one.choice.on for one in made.mounts if one.choice is not None}
    assert held == {"spur": "tray", "disc": "flat of spur"}
    assert made.room is not None
    (flat,) = [one for one in made.room.surface if one.name == "flat of spur"]
    assert [round(1000 * (corner + size / 2)) for corner, size in zip(flat.corner_m, flat.size_m, strict=False)] == [
        0,
        445,
    ]
    assert {one.name: one.count for one in made.mount_parts} == {"tape": 2}
    (row,) = switch_rows(made)["rows"]
    assert row[1].startswith("On the flat of spur, fixed with tape")
    assert "disc stands on the flat of spur" in " ".join(plan_words(made).split())
