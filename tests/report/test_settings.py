"""What is to be set, for which stick, and what is never printed as a setting."""

from __future__ import annotations

import json
from dataclasses import replace

from sample_plan import finger_site, sample_plan

from stickwright.codes.estimate import Estimate
from stickwright.files.results import plan_json
from stickwright.mechanics.widening import widening_gain
from stickwright.model.game import SettingsBefore
from stickwright.model.plan import Plan
from stickwright.model.response import SimpleSettings
from stickwright.report.family import first_page
from stickwright.report.technical import technical_pages
from stickwright.report.tuned import line_of_tuning, set_unrecorded, typed_basis, unrecorded_basis
from stickwright.report.words import plan_words


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
        "page one": first_page(plan)["boxes"][0]["game"],
        "tuning": " ".join(part[key] for key in ("heading", "type", "basis", "lost", "zones")),
        "line": line_of_tuning(tuning),
        "terminal": " ".join(plan_words(plan).split()),
    }


def test_settings_name_their_stick_and_what_was_set_before() -> None:
    """Two sticks, two blocks: each by name; to undo means what somebody wrote down, and nothing that nobody read."""
    known, unknown = everywhere(with_tuning(own_dead_zone_share=0.12)), everywhere(with_tuning())
    assert known["page one"].startswith("Set in the game for dew: dead zone 20%")
    assert "To undo: dead zone 12%; note the sensitivity set now before you change it." in known["tuning"]
    written = SettingsBefore.model_validate({"stick": "dew", "sensitivity_share": 0.8, "words": "curve: linear"})
    told = everywhere(with_tuning(own_dead_zone_share=0.12, settings_before=written))["tuning"]
    assert "To undo: dead zone 12%, sensitivity 80%, curve: linear." in told
    assert "output starts at 15%, just above the game's own 12%" in known["terminal"]
    assert "To undo: note the dead zone and sensitivity set now before you change them." in unknown["tuning"]


def test_a_stick_that_needs_its_range_widened_has_that_printed_without_a_recording() -> None:
    """By hand: 1 / 0.44 = 2.3 back, 1 / 0.25 held at 3, nothing for the direction that is reached in full."""
    choice = finger_site().choice
    assert choice is not None
    shares = (1.0, 0.44, 0.25, *(1.0,) * (len(choice.directions) - 3))
    directions = tuple(
        replace(one, reach_share=Estimate(share, share, share), gain=widening_gain(share))
        for one, share in zip(choice.directions, shares, strict=True)
    )
    wide = replace(choice, directions=directions, verdict="fits with its range widened")
    assert "in the hub or the game: 2.3 forward-right and 3.0 forward (assumed" in set_unrecorded(wide)
    full = tuple(replace(one, gain=None) for one in directions)
    assert set_unrecorded(replace(wide, verdict="fits", directions=full)) == ""
    assert "at most 3: 1 ÷ 44% forward-right and 1 ÷ 25% forward." in unrecorded_basis(wide)
    plan = sample_plan()
    page = first_page(replace(plan, sites=(replace(plan.sites[0], choice=wide, tunings=()), *plan.sites[1:])))
    assert page["boxes"][0]["game"] == set_unrecorded(wide)


def test_gains_of_a_stick_without_a_recording_stand_in_terminal_technical_page_and_json() -> None:
    """Each place of a practitioner prints them with the reach they come from; the file has them as numbers."""
    choice = finger_site().choice
    assert choice is not None
    wide = replace(choice, directions=tuple(replace(one, gain=2.5) for one in choice.directions))
    plan = sample_plan()
    plan = replace(plan, sites=(replace(plan.sites[0], choice=wide, tunings=()), *plan.sites[1:]))
    assert unrecorded_basis(wide) in " ".join(plan_words(plan).split())
    assert technical_pages(plan)["tuning"]["why"].endswith(unrecorded_basis(wide))
    told = json.loads(plan_json(plan))["sites"][0]["choice"]["directions"]
    assert [one["gain"] for one in told] == [2.5] * 8


def test_the_two_numbers_say_what_they_come_from() -> None:
    """By hand: 4.13 % off centre and a radius of 5.0 % need 9.1 %, which is typed as 10 %."""
    tuning = with_tuning().sites[0].tunings[0]
    simple = SimpleSettings(10, 106, 0.04, "", 0.0413, 0.05, (0.82, 1.0))
    said = typed_basis(replace(tuning, simple=simple, range_task="rim"))
    assert said.startswith(
        "Dead zone 10%: 4.1% by which rest is off centre + 5.0% radius of rest = 9.1% of full output, rounded up to a whole per "
        "cent. Sensitivity 106%: "
    )
    assert "over the player's reach of 82% to 100% in the task Around the edge, with output =" in said
    assert "comes nearest to the full response; rest needs" in typed_basis(
        replace(tuning, simple=replace(simple, dead_zone_percent=14))
    )
    assert "the game offers none" in typed_basis(replace(tuning, simple=replace(simple, dead_zone_percent=0)))
    plan = with_tuning()
    plan = replace(plan, sites=(replace(plan.sites[0], tunings=(replace(tuning, simple=simple),)), *plan.sites[1:]))
    for where in ("tuning", "terminal"):
        assert "rounded up to a whole per cent" in everywhere(plan)[where]
        assert "for dew: dead zone 10%, sensitivity 106%" in everywhere(plan)[where]
