"""Table and tray against elbow and trunk: differences worked by hand, a hand's breadth from the published table."""

from __future__ import annotations

import pytest

from said import said
from stickwright.model.player import Player
from stickwright.model.room import Room
from stickwright.mounting.heights import height_findings

HAND_MM = (88 + 78) / 2  # medians of men and of women


def player(part: str = "thumb", **more: object) -> Player:
    return Player.model_validate({"code": "X1", "site": [{"name": "here", "part": part}], **more})


def told(part: str = "thumb", age_band: str = "adult", **room: object) -> list[str]:
    found = height_findings(Room.model_validate({"posture": "chair", **room}), player(part, age_band=age_band))
    assert all(one.level == "query" for one in found)
    return [said(one.text) for one in found]


@pytest.mark.parametrize(
    "table_mm,words",
    [(680 + HAND_MM + 1, "84 mm above the elbow"), (680 - HAND_MM - 1, "84 mm below the elbow")],
)
def test_a_table_a_hand_off_the_elbow_is_told(table_mm: float, words: str) -> None:
    """Seat at 450 mm, elbow 230 mm above: the elbow is 680 mm above the floor."""
    (text,) = told(seat_to_floor_mm=450, seat_to_elbow_mm=230, table_height_mm=table_mm)
    assert f"The table is {words}:" in text
    assert "assumed" not in text


@pytest.mark.parametrize("table_mm", [680 - HAND_MM + 1, 680, 680 + HAND_MM - 1])
def test_a_table_within_a_hand_is_right(table_mm: float) -> None:
    """Above or below."""
    assert told(seat_to_floor_mm=450, seat_to_elbow_mm=230, table_height_mm=table_mm) == []


def test_what_stands_in_for_the_elbow_is_said() -> None:
    """The armrest, then the median of adults (240 mm, halfway between 246 and 233); of a child neither is made up."""
    (armrest,) = told(seat_to_tray_mm=330, seat_to_armrest_mm=230)
    assert "The tray is 100 mm above the elbow (assumed at the armrest's top" in armrest
    (median,) = told(seat_to_tray_mm=340)
    assert "assumed at the published median of adults" in median
    assert told(age_band="8", seat_to_tray_mm=340) == []


def test_heights_matter_to_arms_of_those_who_sit() -> None:
    """Not to a chin or a foot, nor in bed."""
    high = {"seat_to_floor_mm": 450, "seat_to_elbow_mm": 230, "table_height_mm": 900}
    assert told("chin", **high) == []
    assert told(**{**high, "posture": "bed"}) == []
    (asked,) = told(table_height_mm=900)
    assert "seat_to_floor_mm" in asked


def test_a_tray_close_to_the_trunk_is_told() -> None:
    """10 mm is less than a finger; 30 mm is enough. A seat that tilts is named."""
    assert "10 mm from the front of the trunk" in told(trunk_to_tray_mm=10)[0]
    assert told(trunk_to_tray_mm=30) == []
    assert "or the seat tilts" in told(trunk_to_tray_mm=10, tilt_to_deg=20)[0]
    assert "the seat tilts" not in told(trunk_to_tray_mm=10)[0]


def test_without_a_room_nothing_is_told() -> None:
    """No distances, no findings."""
    assert height_findings(None, player()) == []
