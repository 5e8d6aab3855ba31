"""The rooms of the worked cases: whole, without a doubt, and with the figures that the cases give."""

from __future__ import annotations

import dataclasses
import math
from pathlib import Path

import pytest

from said import said
from stickwright.files.folder import check_case, read_case, write_case
from worked_cases import van_kit, whole_case
from worked_rooms import NAMES, mount_kit, room


@pytest.mark.parametrize("name", NAMES)
def test_each_room_goes_with_its_case(name: str, tmp_path: Path) -> None:
    """Written with its case and read again it is the same; nothing of the room, the mounts or the fasteners is doubtful."""
    case = dataclasses.replace(whole_case(name), room=room(name), kit=van_kit(**mount_kit()))
    write_case(case, tmp_path)
    assert read_case(tmp_path).room == case.room
    problems, queries = check_case(tmp_path)
    assert problems == ()
    assert [
        text
        for text in (said(one.text) for one in queries)
        if "room.toml" in text or "mount" in text or "fastener" in text
    ] == []


def test_the_cases_say_what_tilts() -> None:
    """Tove's seat tilts 10 to 25 degrees in play, Marit's 5 to 45; her chin is 900 mm from the axle, so 40 degrees move it by
    about 600 mm (two radii times the sine of half the angle, by hand: 616)."""
    tilts = {
        name: [round(math.degrees(tilt)) for tilt in (room(name).tilt_from_rad, room(name).tilt_to_rad)]
        for name in NAMES
    }
    assert tilts == {"tove": [10, 25], "idris": [0, 0], "marit": [5, 45], "joss": [0, 0], "rune": [0, 0]}
    marit = room("marit")
    (chin,) = [place.at_m for place in marit.place if place.site == "chin"]
    assert chin is not None
    assert marit.tilt_pivot_m is not None
    assert math.dist(chin, marit.tilt_pivot_m) == pytest.approx(0.900, abs=0.0005)


def test_the_van_holds_what_the_table_lists() -> None:
    """Mounts and fasteners of the van as the cases list them: links, moments, give, strengths."""
    kit = van_kit(**mount_kit())
    told = {mount.name: mount for mount in kit.mount}
    assert told["short arm"].links_m == (0.14, 0.12)
    assert told["long arm"].holding_nm == (7.0,)
    assert told["gooseneck"].give_n_per_m == 150.0
    assert told["floor plate"].mass_kg == 4.2
    assert told["breakaway coupling"].release_n == (5.0, 20.0)
    strengths = [(one.shear_pa, one.tension_pa, one.friction) for one in kit.fastener]
    assert strengths == [(60e3, 35e3, None), (210e3, 180e3, None), (None, None, 0.9)]
