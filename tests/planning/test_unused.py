"""What is noted by half is said to be left out, and what is whole is not."""

from __future__ import annotations

from typing import Any

import pytest

from said import said
from stickwright.model.kit import Kit
from stickwright.model.player import Site
from stickwright.planning.unused import unused_findings

READING = [{"direction_deg": 0, "force_n": [2.0], "reach_mm": [20]}]
FIGURES = {"start_force_n": 0.3, "full_force_n": 0.9, "travel_mm": 5.0, "contact_height_mm": 20.0}


def told(*, kit: dict[str, Any] | None = None, **site: Any) -> list[tuple[str, str]]:
    who = Site.model_validate({"name": "here", "part": "hand", "reading": READING, "movement_tilt_deg": 0, **site})
    whole = Kit.model_validate({"stick": [{"name": "dew", **FIGURES}], **(kit or {})})
    return [(one.level, one.text) for one in unused_findings(whole, [who])]


@pytest.mark.parametrize(
    ("hold", "words"),
    [
        (
            {"duration_s": [24, 19]},
            "the hold of 24 s and 19 s is not used, because neither its effort nor its force is recorded.",
        ),
        (
            {"duration_s": [], "effort_share": 0.5},
            "a hold is not used, because how long it was kept up is not recorded. Time it.",
        ),
        ({"duration_s": [9], "force_n": 0.0}, "because its force is 0."),
        ({"duration_s": [9], "effort_share": 0.5}, None),
        ({"duration_s": [9], "force_n": 1.0}, None),
    ],
)
def test_a_hold_that_lacks_something_is_told(hold: dict[str, Any], words: str | None) -> None:
    found = told(hold=[hold])
    assert [level for level, _ in found] == (["query"] if words else [])
    assert all(words is not None and words in said(text) for _, text in found)


def test_a_hold_by_its_force_needs_a_force_to_compare_it_with() -> None:
    found = told(hold=[{"duration_s": [9], "force_n": 1.0}], reading=[{"direction_deg": 0, "reach_mm": [20]}])
    assert "no comfortable force was measured here" in said(found[0][1])


@pytest.mark.parametrize("missing", [*FIGURES])
def test_a_controller_of_which_one_figure_is_missing(missing: str) -> None:
    """Its sticks are then offered to nobody; with all four, or without sticks, there is nothing to say."""
    pad = {"name": "pad", **{key: value for key, value in FIGURES.items() if key != missing}}
    ((level, text),) = told(kit={"controller": [pad]})
    assert level == "query"
    assert said(text).startswith("pad: its sticks are not offered to any control site, because ")
    assert said(text).endswith("is not given. Measure it if the player may use these sticks.")
    assert told(kit={"controller": [{"name": "pad", **FIGURES}]}) == []
    assert told(kit={"controller": [pad | {"sticks": []}]}) == []


def test_a_controller_without_forces_is_a_note() -> None:
    ((level, text),) = told(kit={"controller": [{"name": "pad"}]})
    assert (level, "actuation force, force at full travel, travel and contact height are not given" in said(text)) == (
        "note",
        True,
    )


def test_a_stick_tried_without_a_result() -> None:
    ((level, text),) = told(on_stick=[{"stick": "dew", "direction_deg": 0}])
    assert (level, "neither how far the player got nor the tremor" in said(text)) == ("query", True)
    assert told(on_stick=[{"stick": "dew", "direction_deg": 0, "reached_share": [0.5]}]) == []


def test_slopes_that_are_not_tried() -> None:
    """Three slopes can be built, and the slope of the movement is not known: one is tried, and that is said."""
    ((level, text),) = told(kit={"tilt_deg": [0, 15, 30]}, movement_tilt_deg=None)
    assert (level, "only the most level of 3 slopes" in said(text)) == ("note", True)
    assert told(kit={"tilt_deg": [0, 15, 30]}) == []
    assert told(kit={"tilt_deg": [0]}, movement_tilt_deg=None) == []
