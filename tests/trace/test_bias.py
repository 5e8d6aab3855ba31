"""Turned, mirrored, swapped, or only out of reach."""

from __future__ import annotations

import math
import re

import numpy as np
import pytest
from made_recordings import about, pushes

from said import said
from stickwright.codes.bases import Bases
from stickwright.codes.message import message
from stickwright.codes.movements import Movements
from stickwright.model.recorded import BiasReport, Finding
from stickwright.trace.bias import bias_report
from stickwright.trace.recording import cleaned


def told(seed: int = 1, **made: object) -> tuple[BiasReport, list[Finding]]:
    report, findings = bias_report(cleaned(pushes(np.random.default_rng(seed), **made))[0])  # type: ignore[arg-type]
    assert report is not None
    return report, findings


def test_straight_stick_needs_nothing():
    """Aim within a few degrees: no turn, no mirror, no advice."""
    report, findings = told()
    assert abs(math.degrees(report.error_rotation_rad.value)) < 3
    assert report.error_rotation_rad.low < 0 < report.error_rotation_rad.high
    assert (report.mirrored, report.quarter_turns) == (False, 0)
    assert findings == []


@pytest.mark.parametrize("turn, sense", [(20.0, "anticlockwise"), (-25.0, "clockwise")])
def test_turned_base(turn: float, sense: str):
    """All directions off by 20 or 25 deg: turn the base by as much, in the sense of the player's error."""
    report, findings = told(turn_deg=turn)
    low, high = math.degrees(report.error_rotation_rad.low), math.degrees(report.error_rotation_rad.high)
    assert low < turn < high
    assert high - low < 8
    text = said(about(findings, "turned_base")[0].text)
    assert f"Turn the base {abs(math.degrees(report.error_rotation_rad.value)):.0f}° {sense}" in text


@pytest.mark.parametrize(
    "turn, quarters, cure",
    [(90, 1, "a quarter turn anticlockwise"), (180, 2, "half a turn"), (-90, 3, "a quarter turn clockwise")],
)
def test_quarter_turns(turn: float, quarters: int, cure: str):
    """A stick mounted a quarter or half round is said so, with the cure."""
    report, findings = told(turn_deg=turn)
    assert report.quarter_turns == quarters
    assert not report.mirrored
    assert cure in said(about(findings, "quarter_turn")[0].text)


@pytest.mark.parametrize(
    "matrix, axes",
    [
        ([[1, 0], [0, -1]], "y_sign"),
        ([[-1, 0], [0, 1]], "x_sign"),
        ([[0, 1], [1, 0]], "swapped"),
        ([[0, -1], [-1, 0]], "swapped_both_signs"),
    ],
)
def test_mirrored_axes(matrix: list[list[int]], axes: str):
    """A negative determinant is a mirrored output: which axis, and that turning cannot cure it."""
    report, findings = told(matrix=np.array(matrix, dtype=np.float64))
    assert report.mirrored
    assert about(findings, "mirrored")[0].text == message(Bases.mirrored, axes=axes)


def test_one_sided_error_is_reach():
    """Forward and forward-left off by 30 deg, the others straight: reach, do not turn the base."""
    off = dict.fromkeys((0, 45, 90, 135, 180, 225, 270, 315), 0.0) | {90: -30.0, 135: -30.0}
    report, findings = told(turn_deg=off)
    text = said(about(findings, "reach_not_rotation")[0].text)
    assert re.search(r"forward by 3\d° clockwise", text)
    assert "Do not turn the base" in text
    assert not about(findings, "turned_base")
    errors = {round(math.degrees(d)): math.degrees(e.value) for d, e in report.per_direction}
    assert errors[90] == pytest.approx(-30, abs=4)
    assert errors[0] == pytest.approx(0, abs=4)


def test_a_third_of_the_directions_straight_is_reach():
    """One of three directions straight and two off by 30 deg to the same side: a turned stick would turn all three."""
    recording = pushes(
        np.random.default_rng(1), directions_deg=(0, 120, 240), turn_deg={0: 0.0, 120: 30.0, 240: 30.0}, aim_sd_deg=0.5
    )
    _, findings = bias_report(cleaned(recording)[0])
    assert about(findings, "reach_not_rotation")


@pytest.mark.parametrize("nowhere", [0.0, math.nan])
def test_a_push_asked_for_nowhere_does_not_count(nowhere: float):
    """A cue at the centre, or none, has no direction: what was pushed then changes nothing."""
    recording = pushes(np.random.default_rng(1), turn_deg=20.0)
    cue_xy = recording.cue_xy.copy()
    cue_xy[100:250] = nowhere
    swept = recording.xy.copy()
    swept[100:250] *= -1
    clean = cleaned(type(recording)("p", recording.times_s, swept, recording.cue, cue_xy))[0]
    rest = cleaned(
        type(recording)("p", recording.times_s[250:], recording.xy[250:], recording.cue[250:], cue_xy[250:])
    )[0]
    report, _ = bias_report(clean)
    without, _ = bias_report(rest)
    assert report.error_rotation_rad == without.error_rotation_rad


def test_interval_of_the_turn_covers_it():
    """Of 60 recordings with a turn of 15 deg, at least 54 intervals hold it."""
    inside = 0
    for seed in range(60):
        report, _ = told(seed, turn_deg=15.0)
        inside += report.error_rotation_rad.low <= math.radians(15) <= report.error_rotation_rad.high
    assert inside >= 54


def test_cross_talk_is_not_the_turn():
    """A stick turned by 20 deg has no more cross-talk than a straight one; output that bends sideways has."""
    straight, turned = told()[0], told(turn_deg=20.0)[0]
    assert turned.cross_talk.value == pytest.approx(straight.cross_talk.value, abs=0.03)
    recording = pushes(np.random.default_rng(1), directions_deg=(0, 90, 180, 270))
    bent = recording.xy.copy()
    bent[:, 1] += 0.4 * recording.xy[:, 0] ** 2
    report, _ = bias_report(cleaned(type(recording)("b", recording.times_s, bent, recording.cue, recording.cue_xy))[0])
    assert report is not None
    assert report.cross_talk.value > straight.cross_talk.value + 0.05


def test_pushes_on_one_line_cannot_tell():
    """Right and left alone cannot tell a turn from a mirror: None, and a finding."""
    report, findings = bias_report(cleaned(pushes(np.random.default_rng(1), directions_deg=(0, 180)))[0])
    assert report is None
    assert about(findings, "direction_not_told")[0].text == message(Movements.direction_unknown, why="one-line")


def test_directions_at_random_are_not_a_turn():
    """Pushes that have nothing to do with the cue: no turn is advised."""
    rng = np.random.default_rng(5)
    off = {d: float(rng.uniform(-180, 180)) for d in (0, 45, 90, 135, 180, 225, 270, 315)}
    _, findings = told(turn_deg=off)
    assert about(findings, "direction_unclear") or about(findings, "mirrored") or about(findings, "turned_far")
    assert not about(findings, "turned_base")
