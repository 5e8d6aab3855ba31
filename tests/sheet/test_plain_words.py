"""What the terminal shows of a plan, a recording and a bench."""

from __future__ import annotations

from typing import Any

import pytest
from sample_plan import (
    bare_plan,
    bench_result,
    crowded_plan,
    empty_plan,
    nothing_fits_plan,
    sample_plan,
    trace_report,
)

from stickwright.sheet.words import bench_words, plan_words, trace_words


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
        wanted += [site.sentence, *(fit.label for fit in site.fits), *(one.text for one in site.findings)]
    for words in wanted:
        assert flat(words) in said
    assert not {"nan", "inf", "None"} & set(said.replace("(", " ").replace(",", " ").split())


def test_caution_stands_beside_its_number() -> None:
    """The false-input caution follows the ranked sticks, the force caution follows the other site's ability."""
    text = flat(plan_words(sample_plan()))
    ranked, tuned = text.index("Sticks ranked"), text.index("Tuning of dew")
    assert ranked < text.index("CAUTION (false input)") < tuned
    thumb = text.index("left thumb (thumb)")
    assert thumb < text.index("CAUTION (force)") < text.index("Sticks ranked", thumb)


def test_assumed_number_is_marked_in_the_terminal() -> None:
    """The limb stiffness nobody measured is marked there too."""
    assert "limb stiffness 0.030 N/mm (0.015 to 0.060), assumed" in plan_words(sample_plan())


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
    assert "centre: right 0.031 (0.022 to 0.040)" in text


def test_bench_in_words() -> None:
    """Start and full force, friction, returning, each direction, and the contradicted reading."""
    said = flat(bench_words(bench_result()))
    for words in ("start force: 0.52 N (0.47 to 0.57)", "full force: 1.1 N (1.0 to 1.1)", "Returns by itself: yes.",
                  "forward: start", "10 of 11 readings used", "take it again"):  # fmt: skip
        assert words in said
