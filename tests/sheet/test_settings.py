"""What is to be set, for which stick, and what is never printed as a setting."""

from __future__ import annotations

from dataclasses import replace

from sample_plan import finger_site, sample_plan

from stickwright.model.estimate import Estimate
from stickwright.model.plan import Plan
from stickwright.sheet.family import first_page
from stickwright.sheet.technical import technical_pages
from stickwright.sheet.tuned import line_of_tuning, set_unrecorded
from stickwright.sheet.words import plan_words


def with_tuning(**changed: object) -> Plan:
    plan = sample_plan()
    (tuning,) = plan.sites[0].tunings
    first = replace(plan.sites[0], tunings=(replace(tuning, **changed),))
    return replace(plan, sites=(first, *plan.sites[1:]))


def everywhere(plan: Plan) -> dict[str, str]:
    """The words of page one, the practitioner's tuning part, the line of a further tuning and the terminal."""
    (tuning,) = plan.sites[0].tunings
    part = technical_pages(plan)["tuning"]
    return {
        "page one": first_page(plan)["game"],
        "tuning": " ".join(part[key] for key in ("heading", "type", "lost", "zones")),
        "line": line_of_tuning(tuning),
        "terminal": " ".join(plan_words(plan).split()),
    }


def test_settings_name_their_stick_and_what_was_set_before() -> None:
    """Two sticks, two blocks: each by name; to undo means the game's own dead zone where it is known."""
    known, unknown = everywhere(with_tuning(own_dead_zone_share=0.12)), everywhere(with_tuning())
    assert known["page one"].startswith("Set in the game for dew: dead zone 20 %")
    assert "To undo: dead zone 12 % (the game's own), sensitivity 100 %." in known["tuning"]
    assert "output starts at 15 %, just above the game's own 12 %" in known["terminal"]
    assert "To undo: the dead zone that the game showed before" in unknown["tuning"]


def test_a_stick_that_needs_its_range_widened_has_that_printed_without_a_recording() -> None:
    """By hand: 1 / 0.44 = 2.3 back, 1 / 0.25 held at 3, nothing for the direction that is reached in full."""
    choice = finger_site().choice
    assert choice is not None
    shares = (1.0, 0.44, 0.25, *(1.0,) * (len(choice.directions) - 3))
    directions = tuple(
        replace(one, reach_share=Estimate(share, share, share))
        for one, share in zip(choice.directions, shares, strict=True)
    )
    wide = replace(choice, directions=directions, verdict="fits with its range widened")
    assert "gain by direction: forward-right 2.3 and forward 3.0 (assumed" in set_unrecorded(wide)
    assert set_unrecorded(replace(wide, verdict="fits")) == ""
    plan = sample_plan()
    page = first_page(replace(plan, sites=(replace(plan.sites[0], choice=wide, tunings=()), *plan.sites[1:])))
    assert page["game"] == set_unrecorded(wide)
