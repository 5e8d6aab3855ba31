"""What is drawn stands where the numbers say: every coordinate of every chart, read back from the axes.

The expected places come from the plan's own figures by plain trigonometry: right is +x, forward is +y, a
direction is counted anticlockwise from the right. The figures themselves are invented (`sample_plan`).
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from types import ModuleType
from typing import Any

import numpy as np
import pytest
from sample_plan import DIRECTIONS, bench_result, finger_site, trace_report, tuning

from stickwright.model.fit import Fit
from stickwright.model.kit import Kit
from stickwright.model.plan import DirectionCapability
from stickwright.report import (
    figures_ability,
    figures_bench,
    figures_fit,
    figures_kit,
    figures_recording,
    figures_tuning,
    paper,
)

Drawn = Callable[..., list[Any]]


@pytest.fixture
def axes_of(monkeypatch: pytest.MonkeyPatch) -> Drawn:
    """The axes that a chart draws, laid out as they are printed."""

    def of(module: ModuleType, chart: Callable[..., str], *given: Any) -> list[Any]:
        kept: list[Any] = []

        def spy(draw: Callable[[Any], None], size_mm: tuple[float, float], title: str) -> str:
            def both(figure: Any) -> None:
                draw(figure)
                kept.append(figure)

            return paper.figure_svg(both, size_mm, title)

        monkeypatch.setattr(module, "figure_svg", spy)
        chart(*given)
        return list(kept[0].axes)

    return of


def line(axes: Any, label: str) -> list[tuple[float, float]]:
    """Points of the one line whose name begins so."""
    (found,) = [one for one in axes.lines if str(one.get_label()).startswith(label)]
    return points(found)


def points(one: Any) -> list[tuple[float, float]]:
    return [(float(x), float(y)) for x, y in zip(one.get_xdata(), one.get_ydata(), strict=True)]


def has_line(axes: Any, wanted: Sequence[tuple[float, float]]) -> bool:
    """Whether some line of the chart goes through exactly these points."""
    return any(
        len(one.get_xdata()) == len(wanted) and np.allclose(points(one), np.asarray(wanted), rtol=1e-9, atol=1e-9)
        for one in axes.lines
    )


def on_plane(radius: float, angle_rad: float) -> tuple[float, float]:
    return radius * math.cos(angle_rad), radius * math.sin(angle_rad)


def corners(patch: Any) -> np.ndarray:
    return np.asarray(patch.get_path().vertices)


# ---- ability


def test_each_direction_of_ability_stands_at_its_own_angle(axes_of: Drawn) -> None:
    """Force in newton and movement range in millimetre, each at the direction it was read in."""
    site = finger_site()
    force, reach = axes_of(figures_ability, figures_ability.capability_polar, site)
    able = site.capability.directions
    read = [one for one in able if one.measured_force_n]
    assert line(force, "estimate") == [(one.direction_rad, one.force_n.value) for one in read]
    assert [r for _, r in line(reach, "estimate")] == pytest.approx(
        [1e3 * one.reach_m.value for one in read], rel=1e-12
    )
    unread = [one for one in able if not one.measured_force_n]
    assert line(force, "not measured here") == [(one.direction_rad, one.force_n.value) for one in unread]
    taken = [(one.direction_rad, value) for one in able for value in one.measured_force_n]
    assert line(force, "reading") == taken
    for one in able:
        assert has_line(force, [(one.direction_rad, one.force_n.low), (one.direction_rad, one.force_n.high)])
        assert has_line(
            reach, [(one.direction_rad, 1e3 * one.reach_m.low), (one.direction_rad, 1e3 * one.reach_m.high)]
        )


def test_right_is_right_and_forward_is_up_on_the_rose(axes_of: Drawn) -> None:
    """On the paper a reading to the right lies right of the centre, one forward above it, and the names lie there too."""
    for axes in axes_of(figures_ability, figures_ability.capability_polar, finger_site()):
        middle = axes.transData.transform((0.0, 0.0))
        for angle, (across, up) in (
            (0.0, (1, 0)),
            (math.pi / 2, (0, 1)),
            (math.pi, (-1, 0)),
            (3 * math.pi / 2, (0, -1)),
        ):
            there = axes.transData.transform((angle, axes.get_rmax())) - middle
            assert there / np.hypot(*there) == pytest.approx((across, up), abs=1e-6)
        named = {text.get_text(): angle for text, angle in zip(axes.get_xticklabels(), axes.get_xticks(), strict=True)}
        assert named["right"] == pytest.approx(0.0, abs=1e-12)
        assert named["forward"] == pytest.approx(math.pi / 2, rel=1e-12)
        assert named["left"] == pytest.approx(math.pi, rel=1e-12)
        assert named["back"] == pytest.approx(3 * math.pi / 2, rel=1e-12)


# ---- set-ups


def fits() -> tuple[Fit, ...]:
    return finger_site().fits


def test_the_polygon_has_each_share_in_its_direction(axes_of: Drawn) -> None:
    """Right +x, forward +y; the rim is full travel; the second set-up and the intervals likewise."""
    (axes,) = axes_of(figures_fit, figures_fit.reach_polygon, finger_site())
    for rank, fit in enumerate(fits()[:2], start=1):
        wanted = [on_plane(one.reach_share.value, one.direction_rad) for one in (*fit.directions, fit.directions[0])]
        assert np.allclose(line(axes, f"{rank} {fit.stick}"), wanted, rtol=1e-12, atol=1e-12)
        for one in fit.directions:
            ends = [on_plane(end, one.direction_rad) for end in (one.reach_share.low, one.reach_share.high)]
            assert has_line(axes, ends)
    radii = sorted({round(max(abs(x) for x, _ in points(one)), 6) for one in axes.lines if len(one.get_xdata()) == 73})
    assert radii == [0.5, 1.0]
    named = {text.get_text(): text.xy for text in axes.texts}
    assert named["forward"][1] > 1.0
    assert named["right"][0] > 1.0
    assert named["left"][0] < -1.0
    assert named["back"][1] < -1.0


def force_panel(axes_of: Drawn, direction_rad: float) -> tuple[Any, DirectionCapability]:
    site = finger_site()
    (axes,) = axes_of(figures_fit, figures_fit.force_travel, site, (direction_rad,))
    return axes, next(one for one in site.capability.directions if one.direction_rad == direction_rad)


@pytest.mark.parametrize("direction_rad", DIRECTIONS[:3])
def test_the_force_line_falls_from_force_to_reach(axes_of: Drawn, direction_rad: float) -> None:
    """All force at the centre, none where the movement range ends; the band by the ends of both intervals."""
    axes, able = force_panel(axes_of, direction_rad)
    assert line(axes, "force the player has") == [
        (0.0, able.force_n.value),
        (pytest.approx(1e3 * able.reach_m.value), 0.0),
    ]
    (band,) = [corners(patch) for patch in axes.patches if str(patch.get_label()).startswith("95% interval of that")]
    wanted = [
        (0, able.force_n.high), (1e3 * able.reach_m.high, 0), (1e3 * able.reach_m.low, 0), (0, able.force_n.low),
    ]  # fmt: skip
    assert np.allclose(band[:4], wanted, rtol=1e-12)


@pytest.mark.parametrize("direction_rad", DIRECTIONS[:3])
def test_the_mark_lies_where_both_lines_meet(axes_of: Drawn, direction_rad: float) -> None:
    """Each stick's line goes from the force that leaves the centre to the force at full travel; where it meets the
    player's line, by the equation of two straight lines, there is the mark."""
    axes, able = force_panel(axes_of, direction_rad)
    for rank, fit in enumerate(fits()[:3], start=1):
        (from_mm, from_n), (to_mm, to_n) = line(axes, f"{rank} {fit.stick}")
        assert (from_mm, from_n) == (0.0, fit.start_force_n)
        assert (to_mm, to_n) == (pytest.approx(1e3 * fit.travel_m), fit.full_force_n)
        falls = able.force_n.value / (1e3 * able.reach_m.value)
        rises = (to_n - from_n) / to_mm
        meet_mm = min(to_mm, (able.force_n.value - from_n) / (falls + rises))
        assert has_line(axes, [(meet_mm, from_n + rises * meet_mm)])


def test_behind_a_mount_that_flexes_the_marks_lie_on_the_line_drawn_for_it(axes_of: Drawn) -> None:
    """0.20 N felt of 0.26 N: a second line from 0.20 N to the same range; without flex there is none."""
    site, forward = finger_site(), DIRECTIONS[2]
    felt = tuple(
        replace(
            fit, directions=tuple(replace(one, available_force_n=0.20, firm_force_n=0.26) for one in fit.directions)
        )
        for fit in site.fits
    )
    (axes,) = axes_of(figures_fit, figures_fit.force_travel, replace(site, fits=felt), (forward,))
    reach_mm = 1e3 * next(one for one in site.capability.directions if one.direction_rad == forward).reach_m.value
    assert line(axes, "after the flex of the mount") == [(0.0, 0.20), (pytest.approx(reach_mm), 0.0)]
    (firm,) = axes_of(figures_fit, figures_fit.force_travel, site, (forward,))
    assert "after the flex of the mount" not in {one.get_label() for one in firm.lines}


def test_bars_of_the_ranking_are_as_long_as_the_bits(axes_of: Drawn) -> None:
    """Best on top; hatched where the set-up does not fit; the interval over each bar."""
    (axes,) = axes_of(figures_fit, figures_fit.ranking, finger_site())
    bars = sorted(axes.patches, key=lambda bar: bar.get_y())
    assert [bar.get_width() for bar in bars] == pytest.approx([fit.bits.value for fit in fits()])
    assert [bar.get_x() for bar in bars] == [0.0] * len(bars)
    assert [bool(bar.get_hatch()) for bar in bars] == [fit.verdict == "does not fit" for fit in fits()]
    for row, fit in enumerate(fits()):
        assert has_line(axes, [(fit.bits.low, row), (fit.bits.high, row)])
    assert axes.get_ylim()[0] > axes.get_ylim()[1]


def area(ring: Sequence[tuple[float, float]] | np.ndarray) -> float:
    """Of a closed outline, plus when it runs anticlockwise: half the sum of the cross products."""
    x, y = np.asarray(ring, dtype=float).T
    return float(np.sum(x * np.roll(y, -1) - np.roll(x, -1) * y)) / 2


def test_the_band_of_the_polygon_is_that_of_the_best(axes_of: Drawn) -> None:
    """One band, as large as what lies between the ring through the upper and the ring through the lower ends of the best set-up."""
    (axes,) = axes_of(figures_fit, figures_fit.reach_polygon, finger_site())
    (band,) = axes.patches
    ways = fits()[0].directions
    low, high = (
        [on_plane(getattr(one.reach_share, end), one.direction_rad) for one in ways] for end in ("low", "high")
    )
    assert area(corners(band)[:-1]) == pytest.approx(area(high) - area(low), rel=1e-9)
    assert area(high) > area(low) > 0


@pytest.mark.parametrize("direction_rad", DIRECTIONS[:3])
def test_each_rank_stands_just_above_its_own_line(axes_of: Drawn, direction_rad: float) -> None:
    """Not on it, not beyond its end, and the lowest no further off than a thirtieth of the panel; one dotted line leads down from where the
    best meets the player's force."""
    axes, _ = force_panel(axes_of, direction_rad)
    top = axes.get_ylim()[1]
    off = []
    for rank, fit in enumerate(fits()[:3], start=1):
        (from_mm, from_n), (to_mm, to_n) = line(axes, f"{rank} {fit.stick}")
        (named,) = [text for text in axes.texts if text.get_text() == str(rank)]
        at_mm, at_n = named.xy
        assert from_mm < at_mm <= to_mm
        off.append((at_n, at_n - (from_n + (to_n - from_n) * at_mm / to_mm)))
    assert all(above > 0 for _, above in off)
    assert min(off)[1] < top / 30
    down = [points(one) for one in axes.lines if one.get_linestyle() == ":" and len(one.get_xdata()) == 2]
    ((foot, head),) = down
    assert foot == (head[0], 0.0)
    assert has_line(axes, [head])


# ---- bench


def test_bench_readings_and_lines_stand_at_travel_and_force(axes_of: Drawn) -> None:
    """Moment over height is force, height times sine is travel: out with friction added, back with it taken off."""
    result = bench_result()
    (axes,) = axes_of(figures_bench, figures_bench.bench, result)
    angles = np.linspace(0.0, 0.40, 41)
    travel_mm = 16.0 * np.sin(angles)
    for label, friction_nm in (("fitted, pushing out", 0.0008), ("fitted, letting back", -0.0008)):
        wanted = np.column_stack([travel_mm, (0.0076 + 0.022 * angles + friction_nm) / 0.016])
        assert np.allclose(line(axes, label), wanted, rtol=1e-9)
    for label, outward, used in (
        ("reading out", True, True),
        ("reading back", False, True),
        ("reading out, left", True, False),
    ):
        taken = [one for one in result.readings if one.outward is outward and one.used is used]
        wanted = np.array([(16.0 * math.sin(one.angle_rad), one.force_n) for one in taken])
        mark = next(one for one in axes.lines if str(one.get_label()).startswith(label))
        assert np.allclose(points(mark), wanted, rtol=1e-9)
    band = axes.collections[0].get_paths()[0].vertices
    full_mm = 16.0 * math.sin(0.40)
    assert {
        (0.0, round(result.pooled.start_force_n.low, 9)),
        (round(full_mm, 9), round(result.pooled.full_force_n.high, 9)),
    } <= {(round(float(x), 9), round(float(y), 9)) for x, y in band}


def test_a_reading_at_another_height_is_drawn_at_the_force_it_stands_for(axes_of: Drawn) -> None:
    """By hand: 0.8 N at 20 mm above the pivot is the moment of 1.0 N at 16 mm; its travel is told at 16 mm as well."""
    result = bench_result()
    one = replace(result.readings[0], height_m=0.020, force_n=0.8, angle_rad=0.25, outward=True, used=True)
    (axes,) = axes_of(figures_bench, figures_bench.bench, replace(result, readings=(one,)))
    assert line(axes, "reading out") == [(pytest.approx(16.0 * math.sin(0.25)), pytest.approx(1.0))]


# ---- tuning and recordings


def test_before_and_after_are_the_samples(axes_of: Drawn) -> None:
    """x to the right, y forward, the dead zone a circle of its own radius about the middle."""
    shown = tuning()
    before, after = axes_of(figures_tuning, figures_tuning.tuning_before_after, shown)
    assert np.allclose(line(before, "the player's output"), shown.before_xy)
    assert np.allclose(line(after, "the player's output"), shown.after_xy)
    assert shown.shown_target_xy is not None
    assert np.allclose(line(before, "target"), shown.shown_target_xy)
    radii = {
        round(float(np.hypot(*point)), 9) for one in before.lines for point in points(one) if len(one.get_xdata()) == 73
    }
    assert radii == {1.0, shown.dead_zone.value}


def test_the_curve_is_output_over_deflection(axes_of: Drawn) -> None:
    """In per cent, from the same pairs as the table; straight beside it."""
    shown = tuning()
    (axes,) = axes_of(figures_tuning, figures_tuning.curve, shown)
    wanted = [(100 * x, 100 * y) for x, y in zip(shown.curve_in, shown.curve_out, strict=True)]
    assert np.allclose(line(axes, "this curve"), wanted)
    assert line(axes, "straight") == [(0.0, 0.0), (100.0, 100.0)]


def test_reach_and_rest_of_a_recording_stand_where_they_were(axes_of: Drawn) -> None:
    """Each direction's reach at its angle; the rest at its offset; the samples against time, grey where at rest."""
    report = trace_report()
    assert report.reach is not None
    assert report.rest is not None
    times_s = np.arange(200) / 50.0
    xy = np.column_stack([np.sin(times_s), np.cos(2 * times_s)])
    plane, trace = axes_of(figures_recording, figures_recording.trace_overview, report, times_s, xy)
    values = [one.value for one in report.reach.reach]
    wanted = [on_plane(r, a) for r, a in zip([*values, values[0]], [*DIRECTIONS, DIRECTIONS[0]], strict=True)]
    assert np.allclose(line(plane, "reach"), wanted)
    for one, angle in zip(report.reach.reach, report.reach.direction_rad, strict=True):
        assert has_line(plane, [on_plane(one.low, angle), on_plane(one.high, angle)])
    x, y = report.rest.offset_x, report.rest.offset_y
    assert has_line(plane, [(x.low, y.value), (x.high, y.value)])
    assert has_line(plane, [(x.value, y.low), (x.value, y.high)])
    assert line(plane, "rest") == [(report.rest.offset_x.value, report.rest.offset_y.value)]
    assert np.allclose(line(trace, "to the right"), np.column_stack([times_s, xy[:, 0]]))
    assert np.allclose(line(trace, "forward"), np.column_stack([times_s, xy[:, 1]]))
    (grey,) = trace.patches
    assert (grey.get_x(), grey.get_x() + grey.get_width()) == pytest.approx(report.rest.rests[0][:2])
    assert [points(one)[0][0] for one in trace.lines if len(one.get_xdata()) == 2] == list(report.bursts.times_s)  # type: ignore[union-attr]


# ---- kit


def test_kit_bars_go_from_the_centre_to_full_travel(axes_of: Drawn) -> None:
    """Force to leave the centre at one end, force at full travel at the other; lightest on top."""
    kit = Kit.model_validate(
        {"stick": [
            {"name": "oak", "start_force_n": 1.0, "full_force_n": 2.5, "travel_mm": 9},
            {"name": "elm", "start_force_n": 0.2, "full_force_n": 0.5, "travel_mm": 6.5},
        ]}
    )  # fmt: skip
    (axes,) = axes_of(figures_kit, figures_kit.kit_forces, kit)
    for row, (low, high) in enumerate(((0.2, 0.5), (1.0, 2.5))):
        assert has_line(axes, [(low, row), (high, row)])
        assert has_line(axes, [(low, row)])
        assert has_line(axes, [(high, row)])
    assert [text.get_text() for text in axes.get_yticklabels()] == ["elm", "oak"]
    legend = axes.get_legend() or axes.figure.legends[0]
    assert len({text.get_text() for text in legend.get_texts()}) == 2, "what each mark means"
    assert axes.get_xscale() == "log"


@pytest.mark.parametrize("direction_rad", DIRECTIONS[:2])
def test_force_and_travel_stand_with_their_units(axes_of: Drawn, direction_rad: float) -> None:
    """Each axis says what it is and in which unit."""
    axes, _ = force_panel(axes_of, direction_rad)
    assert axes.get_xlabel().endswith(", mm")
    assert axes.get_ylabel().endswith(", N")


def test_no_chart_names_a_line_twice(axes_of: Drawn) -> None:
    """Each name of a legend stands for one line: else a check here could read the wrong one."""
    for module, chart, given in (
        (figures_ability, figures_ability.capability_polar, finger_site()),
        (figures_fit, figures_fit.reach_polygon, finger_site()),
        (figures_fit, figures_fit.force_travel, finger_site()),
        (figures_tuning, figures_tuning.curve, tuning()),
    ):
        for axes in axes_of(module, chart, given):
            named = [str(one.get_label()) for one in axes.lines if not re.match(r"_", str(one.get_label()))]
            assert len(named) == len(set(named))
