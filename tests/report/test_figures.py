"""Charts: finished results in, the same SVG bytes out, legible without colour, intervals drawn."""

from __future__ import annotations

import math
import xml.etree.ElementTree as ET
from dataclasses import replace

import numpy as np
import pytest
from sample_plan import (
    DIRECTIONS,
    bare_plan,
    bench_result,
    crowded_plan,
    finger_site,
    sample_plan,
    thumb_site,
    trace_report,
    tuning,
    without_intervals,
)

from said import said
from stickwright.model.plan import SitePlan
from stickwright.report import figures, tables
from stickwright.report.figures_tuning import thinned
from stickwright.report.paper import SERIES, width_mm

SVG = "{http://www.w3.org/2000/svg}"


def texts(svg: str) -> list[str]:
    return ["".join(node.itertext()) for node in ET.fromstring(svg).iter(f"{SVG}text")]


@pytest.fixture(scope="module")
def drawn() -> dict[str, str]:
    return figures.all_figures(sample_plan())


def test_every_figure_of_the_plan_is_drawn(drawn: dict[str, str]) -> None:
    """Set-up, ability, reach, force and travel, ranking, tuning, curve and recording, each under a file name."""
    for kind in (
        "set-up",
        "ability",
        "reach",
        "force-travel",
        "ranking",
        "tuning-dew",
        "curve-dew",
        "recording-1-rim-csv",
    ):
        assert f"site-1-right-index-finger-{kind}" in drawn
    assert "site-2-left-thumb-set-up" not in drawn, "nothing fits there: nothing to set up is drawn"


def test_equal_plans_give_equal_bytes(drawn: dict[str, str]) -> None:
    """The same plan drawn again is the same file, byte for byte, and holds no date."""
    assert figures.all_figures(sample_plan()) == drawn
    assert not any("2026-" in svg for svg in drawn.values())


def test_every_figure_names_itself_to_a_screen_reader(drawn: dict[str, str]) -> None:
    """Each file opens with a title of at least a sentence, and its text is real text."""
    for name, svg in drawn.items():
        root = ET.fromstring(svg)
        title = root.find(f"{SVG}title")
        assert title is not None, name
        assert len(title.text or "") > 40, name
        assert texts(svg), name


def test_series_keep_contrast_on_white() -> None:
    """WCAG 2.2, 1.4.3 (from memory): relative luminance L of sRGB; contrast on white 1.05/(L + 0.05) of 4.5 or more;
    grey print keeps the luminance. Lines and markers are all different besides."""

    def luminance(colour: str) -> float:
        parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
        linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
        return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]

    assert all(1.05 / (luminance(series.colour) + 0.05) >= 4.5 for series in SERIES)
    assert len({series.marker for series in SERIES}) == len({str(series.line) for series in SERIES}) == len(SERIES)


def test_ability_names_the_weakest_direction_and_the_unmeasured_one() -> None:
    """Weakest is named with its interval; a direction without readings is told apart."""
    said = " ".join(texts(figures.capability_polar(finger_site())))
    assert "least: forward 0.26 N (0.22 to 0.30)" in said
    assert "not measured here" in said
    everything_read = replace(finger_site(), capability=replace(
        finger_site().capability,
        directions=tuple(replace(one, measured_force_n=(0.3,), measured_reach_m=(0.005,))
                         for one in finger_site().capability.directions)))  # fmt: skip
    assert "not measured here" not in " ".join(texts(figures.capability_polar(everything_read)))


def test_interval_is_drawn_only_where_there_is_one() -> None:
    """The band of the ability chart goes when the intervals go; the readings stay."""
    site = without_intervals(finger_site())
    assert isinstance(site, SitePlan)
    said = " ".join(texts(figures.capability_polar(site)))
    assert "95% interval" not in said
    assert "reading" in said
    assert "95% interval" in " ".join(texts(figures.capability_polar(finger_site())))


def test_weakest_and_most_used_direction_are_shown() -> None:
    """Weights 0.3 forward, else alike; the best stick is weakest forward: forward comes first, none twice."""
    chosen = tables.main_directions(finger_site(), most=3)
    assert chosen[0] == DIRECTIONS[2]
    assert len(set(chosen)) == len(chosen)


def test_crossing_is_where_the_plan_says() -> None:
    """By hand: F 0.26 N, d 5 mm, start 0.025 N, stiffness 0.085/9 N/mm meet at 3.82 mm and 0.061 N."""
    meet_mm = (0.26 - 0.025) / (0.26 / 5 + 0.085 / 9)
    rows = tables.force_travel(finger_site(), (math.pi / 2,)).rows
    assert rows[0][5].startswith(f"{meet_mm:.1f} mm")
    assert rows[0][5].endswith("at 0.061 N")


def test_rank_of_each_stick_stands_at_its_line() -> None:
    """Ranks 1 to 4 are written at the lines, and the legend gives the names."""
    said = texts(figures.force_travel(finger_site()))
    assert {"1", "2", "3", "4"} <= set(said)
    assert any(text.startswith("1 dew") for text in said)


def test_stick_that_does_not_fit_says_so_in_the_ranking() -> None:
    """Not by colour: the words stand beside the bar."""
    said = texts(figures.ranking(finger_site()))
    assert sum("does not fit" in text for text in said) == 4
    assert any(text == "78%" for text in said)


def test_long_names_are_cut_in_charts_and_whole_in_tables() -> None:
    """A chart cuts a long name with an ellipsis; the table beside it does not."""
    site = crowded_plan().sites[0]
    assert any(text.endswith("…") for text in texts(figures.ranking(site)))
    assert tables.ranking(site).rows[0][0] == said(site.fits[0].named)


def test_missing_parts_still_make_figures() -> None:
    """No interval, no recording, one stick: every remaining figure is drawn."""
    drawn = figures.all_figures(bare_plan())
    assert len(drawn) == 5
    for svg in drawn.values():
        assert not {"nan", "inf", "None"} & set(" ".join(texts(svg)).split())


def test_thinning_keeps_order_and_ends_small() -> None:
    """A long recording is drawn with at most a few thousand of its own samples, in order."""
    xy = np.column_stack([np.arange(100_001.0), np.zeros(100_001)])
    kept = thinned(xy)
    assert len(kept) <= 2500
    assert np.all(np.diff(kept[:, 0]) > 0)
    assert len(thinned(xy[:100])) == 100


def test_trace_overview_with_and_without_the_trace() -> None:
    """With the samples a second panel shows them against time; without, rest and reach alone."""
    shown = tuning()
    alone = figures.trace_overview(trace_report())
    beside = figures.trace_overview(trace_report(), shown.shown_times_s, shown.before_xy)
    assert width_mm(alone) < width_mm(beside)
    assert "time, s (grey: at rest)" in texts(beside)
    bare = figures.trace_overview(trace_report(reach=None, rest=None, bursts=None))
    assert "no task that shows reach" in (ET.fromstring(bare).findtext(f"{SVG}title") or "")


def test_bench_shows_readings_left_out_and_both_lines() -> None:
    """Out, back, left out, and the two fitted lines each have their own mark; no line back without friction."""
    said = texts(figures.bench(bench_result()))
    for name in ("fitted, pushing out", "fitted, letting back", "reading out", "reading back", "reading out, left out"):
        assert name in said
    line = bench_result().pooled
    one_way = bench_result(pooled=replace(line, friction_nm=replace(line.friction_nm, low=math.nan, high=math.nan)))
    assert "fitted, letting back" not in texts(figures.bench(one_way))


def test_tables_have_a_cell_for_every_column() -> None:
    """Each figure's table is complete, and its sentence is one that can be read aloud."""
    made = [
        tables.capability_polar(finger_site()), tables.reach_polygon(finger_site()), tables.force_travel(finger_site()),
        tables.ranking(finger_site()), tables.curve(tuning()), tables.tuning_before_after(tuning()),
        tables.tuning_numbers(tuning()), tables.trace_overview(trace_report()),
        tables.bench(bench_result()), tables.ranking(thumb_site()),
    ]  # fmt: skip
    for table in made:
        assert table.rows
        assert all(len(row) == len(table.columns) for row in table.rows), table.caption
        assert table.alt.strip().endswith((".", "yes")), table.caption
        assert "nan" not in table.alt.split()


def test_site_without_sticks_says_so() -> None:
    """No set-up computed: the tables say it."""
    site = replace(finger_site(), fits=(), choice=None, alternatives=())
    assert "No set-up was computed" in tables.ranking(site).alt
    assert "No set-up was computed" in tables.reach_polygon(site).alt
