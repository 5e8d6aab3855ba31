"""Smoothed figures and the readings behind them stand side by side, so that neither looks like a slip of the other."""

from __future__ import annotations

import math
from dataclasses import replace

from sample_plan import about, finger_site, sample_plan

from stickwright.model.plan import DirectionCapability, SitePlan
from stickwright.report.ability_words import ability_lines, readings_behind
from stickwright.report.technical import technical_pages
from stickwright.report.words import plan_words


def with_readings() -> SitePlan:
    """Left read three times, 0.44 N by hand and 9.1 mm, beside the smoothed 0.41 N; forward read for its range alone."""
    site = finger_site()
    left = DirectionCapability(
        math.pi, about(0.41), about(0.0095), about(0.41), (0.40, 0.44, 0.48), (0.0090, 0.0091, 0.0092), "enough"
    )
    forward = DirectionCapability(math.pi / 2, about(0.30), about(0.005), about(0.30), (), (0.0052,), "not enough")
    back = DirectionCapability(3 * math.pi / 2, about(0.30), about(0.005), about(0.30), (), (), "not measured")
    return replace(site, capability=replace(site.capability, directions=(left, forward, back), weakest_rad=math.pi))


def test_the_means_of_the_readings_stand_beside_the_smoothed_figures() -> None:
    """(0.40 + 0.44 + 0.48)/3 = 0.44 N, (9.0 + 9.1 + 9.2)/3 = 9.1 mm; what was not read is not named."""
    said = readings_behind(with_readings().capability)
    assert said.startswith("Smoothed round the circle; sticks are judged by these figures. ")
    assert said.endswith("Means of the readings themselves: left 0.44 N, 9.1 mm; forward 5.2 mm.")


def test_nothing_is_said_where_nothing_was_read() -> None:
    """A site known from tried sticks alone has no readings behind its figures."""
    able = with_readings().capability
    unread = tuple(replace(one, measured_force_n=(), measured_reach_m=()) for one in able.directions)
    assert readings_behind(replace(able, directions=unread)) == ""


def test_terminal_and_technical_page_say_it_once() -> None:
    """Each place that prints the smoothed table says what was read; forces of further sites are on the sheet too."""
    plan = sample_plan()
    said = readings_behind(plan.sites[0].capability)
    terminal = " ".join(plan_words(plan).split())
    assert terminal.count(said) == 1
    tech = technical_pages(plan)
    assert tech["ability"]["read"] == said
    others = [one["ability"] for one in tech["others"]]
    assert others == [ability_lines(site.capability) for site in plan.sites[1:]]
    assert others[0].startswith("Comfortable force and movement range, smoothed round the circle: right ")
