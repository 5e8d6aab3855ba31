"""What the terminal shows of a plan, a recording and a bench."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from sample_plan import (
    bare_plan,
    bench_result,
    crowded_plan,
    empty_plan,
    finger_site,
    nothing_fits_plan,
    sample_plan,
    trace_report,
)

from stickwright.catalogue import say
from stickwright.codes.bench_notes import BenchNotes
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Text, message
from stickwright.mechanics.site_inputs import Rules
from stickwright.model.recorded import Finding
from stickwright.report.tables import best_note, effort_words
from stickwright.report.technical import technical_pages
from stickwright.report.words import bench_words, plan_words, trace_words


def flat(text: str) -> str:
    return " ".join(text.split())


@pytest.mark.parametrize("make", [sample_plan, nothing_fits_plan, crowded_plan, bare_plan, empty_plan])
def test_report_is_whole_and_narrow(make: Any) -> None:
    """Every caution, assumption, finding and stick is there; no line is wider than 80; nothing unprintable."""
    plan = make()
    text = plan_words(plan)
    said = flat(text)
    assert max(map(len, text.splitlines())) <= 80
    wanted = [plan.sentence, plan.next_reading.sentence]
    wanted += [one.text for one in (*plan.cautions, *plan.findings)]
    wanted += [part for one in plan.assumptions for part in (one.what, one.value, one.replace_by)]
    for site in plan.sites:
        wanted += [site.sentence, *(say(fit.named) for fit in site.fits), *(one.text for one in site.findings)]
    for words in wanted:
        assert flat(words) in said
    assert not {"nan", "inf", "None"} & set(said.replace("(", " ").replace(",", " ").split())


def one_of(about: str) -> Text:
    return next(one.text for one in sample_plan().cautions if one.about == about)


def test_caution_stands_beside_its_number() -> None:
    """The false-input caution follows the ranked sticks, the force caution follows the other site's ability."""
    text = flat(plan_words(sample_plan()))
    ranked, tuned = text.index("Sticks ranked"), text.index("Tuning of dew")
    assert ranked < text.index("CAUTION: " + say(one_of("false_input"))) < tuned
    thumb = text.index("left thumb (thumb)")
    assert thumb < text.index("CAUTION: " + say(one_of("force"))) < text.index("Sticks ranked", thumb)


def test_assumed_number_is_marked_in_the_terminal() -> None:
    """The limb stiffness nobody measured is marked there too."""
    assert "limb stiffness 0.030 N/mm (0.015 to 0.060), assumed" in flat(plan_words(sample_plan()))


def test_recording_in_words() -> None:
    """Findings first, then what was told, with units and intervals."""
    text = trace_words(trace_report())
    said = flat(text)
    assert max(map(len, text.splitlines())) <= 80
    assert said.index("unplugged" if "unplugged" in said else "the plug came out") < said.index("Rest")
    for words in ("14° (9 to 19)", "No peak stands out", "1.9 (1.5 to 2.3) bit/s", "least forward", "60 s"):
        assert words in said


def test_recording_without_parts_says_what_it_has() -> None:
    """A recording that tells nothing but findings prints those alone."""
    empty = trace_report(rest=None, reach=None, bias=None, tremor=None, bursts=None, holds=(), smoothness=None,
                         pointing=None, tracking=None)  # fmt: skip
    text = trace_words(empty)
    assert "Rest" not in text.splitlines()
    assert "Limits what can be said" in text


def test_foreign_unit_is_not_called_per_cent() -> None:
    """A recording in its own unit is not judged against full output."""
    text = trace_words(trace_report(unit="digitiser steps"))
    assert "in digitiser steps" in text
    assert "centre: 0.031 (0.022 to 0.040) right, 0.048 (0.036 to 0.060) back" in text


def test_bench_in_words() -> None:
    """Start and full force, friction, returning, each direction, and the contradicted reading."""
    said = flat(bench_words(bench_result()))
    for words in ("actuation force: 0.52 N (0.47 to 0.57)", "force at full travel: 1.1 N (1.0 to 1.1)", "Returns by itself: yes.",
                  "forward: actuation force", "10 of 11 readings used", "take it again"):  # fmt: skip
        assert words in said


def test_reason_that_several_numbers_share_is_said_once() -> None:
    """A recording of dead silence: centre, noise and drift have one reason; directions not tried stand together."""
    why = "The rest is exactly zero throughout"
    zero, unknown = Estimate.unbounded(0.0, why), Estimate.missing(why)
    missing = Estimate.missing("this direction was not tried")
    told = trace_report()
    assert told.rest is not None
    assert told.reach is not None
    rest = replace(told.rest, offset_x=zero, offset_y=zero, noise_rms=unknown, drift_per_min=unknown)
    reach = replace(told.reach, reach=(*told.reach.reach[:6], missing, missing))
    said = flat(trace_words(replace(told, rest=rest, reach=reach)))
    assert said.count("exactly zero") == 1
    assert "back, back-right: not known (this direction was not tried)" in said
    assert "noise and drift: not known, for the same reason" in said


def test_turned_stick_is_told_by_its_side() -> None:
    """Minus is clockwise: said in words, with the interval the right way round."""
    told = trace_report()
    assert told.bias is not None
    turned = Estimate(math.radians(-12), math.radians(-15), math.radians(-9))
    said = flat(trace_words(replace(told, bias=replace(told.bias, error_rotation_rad=turned))))
    assert "comes out rotated by 12° (9 to 15) clockwise from what was asked" in said


def test_bench_tells_returning_once() -> None:
    """Coming home is one sentence; where a finding says it with its advice, the finding alone."""
    words = message(BenchNotes.returns_not, stays_share=0.4, low_share=None, high_share=None)
    finding = Finding("note", "returns", message(BenchNotes.leaves_off_centre, returns=words))
    said = flat(bench_words(bench_result(returns=words, findings=(finding,))))
    assert said.count("it stops 40% of its travel short") == 1
    assert "Set the dead zone above that" in said
    assert "all draws" not in said


def test_ranked_sticks_say_what_the_chance_means() -> None:
    """The chances beside the sticks add up to more than 100 %: a line says why, with the difference the plan uses."""
    said = flat(plan_words(sample_plan()))
    assert "best or as good: 78%" in said
    assert f"by more than {Rules().tie_bits:g} bit" in best_note()
    assert best_note() in said


def test_effort_above_all_there_is_has_no_figure() -> None:
    """657 % of the comfortable force says no more than that it is more than all of it."""
    heavy = replace(finger_site().fits[0], effort_share=Estimate(6.57, 5.1, 8.0))
    assert effort_words(heavy) == "more than all"
    assert effort_words(finger_site().fits[0]).endswith(")")


def test_what_was_worked_out_is_called_predicted() -> None:
    """Reach, effort, hold, false input and control of a set-up are a model's figures: headline, headings, captions and the
    terminal say so."""
    plan = sample_plan()
    tech = technical_pages(plan)
    heads = [head for head in tech["ranking"]["columns"] if head]
    assert all(head.startswith("predicted") for head in heads[:4])
    rows = [row[0] for row in tech["answer"]["numbers"]]
    assert {"predicted effort", "predicted hold", "predicted unintended activation"} <= {*rows}
    assert all(head.startswith("predicted") for head in tech["ability"]["columns"][4:])
    assert " predicted: " in " ".join(plan_words(plan).split())
