"""Steps, dead zones and cleaned rests, made ones and real ones."""

from __future__ import annotations

import numpy as np
import pytest
from made_recordings import about, slow_noise, thumbstick

from said import said
from stickwright.model.recording import Recording
from stickwright.trace.recording import cleaned


def wandering(seed: int = 2, n: int = 6000, sd: float = 0.4) -> Recording:
    xy = slow_noise(np.random.default_rng(seed), n, sd, 0.97)
    return Recording("play.csv", np.arange(n) / 100, np.clip(xy, -1, 1))


def test_step_of_eight_bits():
    """An output in steps of 1/127 is said to move in 254 steps; an unrounded one is not."""
    recording = wandering()
    stepped = Recording("steps.csv", recording.times_s, np.rint(recording.xy * 127) / 127)
    clean, findings = cleaned(stepped)
    assert clean.step == pytest.approx(1 / 127, rel=1e-3)
    assert "254 steps across the travel" in said(about(findings, "coarse_steps")[0].text)
    assert cleaned(recording)[0].step == 0.0


def test_square_dead_zone():
    """A dead zone of 0.2 on each axis for itself is found with its size and said to be square."""
    recording = wandering()
    xy = np.where(np.abs(recording.xy) < 0.2, 0.0, recording.xy)
    clean, findings = cleaned(Recording("square.csv", recording.times_s, xy))
    assert clean.dead_zone == pytest.approx(0.2, abs=0.005)
    assert "(square)" in said(about(findings, "dead_zone")[0].text)


def test_radial_dead_zone():
    """A dead zone by distance lets small sideways values through when pushed forward, and is said to be radial."""
    recording = wandering()
    inside = np.hypot(*recording.xy.T) < 0.2
    clean, findings = cleaned(Recording("round.csv", recording.times_s, np.where(inside[:, None], 0.0, recording.xy)))
    assert clean.dead_zone == pytest.approx(0.2, abs=0.005)
    assert "(radial)" in said(about(findings, "dead_zone")[0].text)


def test_no_dead_zone_in_a_plain_output():
    """A coarse but plain output with many exact zeros has no dead zone."""
    recording = wandering(sd=0.05)
    clean, findings = cleaned(Recording("plain.csv", recording.times_s, np.rint(recording.xy * 80) / 80))
    assert clean.dead_zone == 0.0
    assert not about(findings, "dead_zone")


def test_real_square_dead_zone():
    """Real thumbstick: 22 counts of 80 are set to zero on each axis, so 23/80 = 0.2875 is the smallest value left."""
    clean, findings = cleaned(thumbstick("play-2-person-D-0-to-30-s.csv"))
    assert clean.dead_zone == pytest.approx(23 / 80, abs=1e-9)
    assert clean.step == pytest.approx(1 / 80, abs=1e-9)
    text = said(about(findings, "dead_zone")[0].text)
    assert "29% (23 steps of 1.2%)" in text
    assert "(square)" in text


def test_real_rest_cleaned_by_other_software():
    """Real thumbstick: one recording rests at exactly 0 for up to 9.7 s and reaches 127/80 = 1.59 of full output;
    another, resting at 0, 1, 2 and other counts, is not called cleaned."""
    clean, findings = cleaned(thumbstick("play-3-person-A-63-to-93-s.csv", raw=True))
    text = said(about(findings, "rest_cleaned")[0].text)
    assert clean.rest_cleaned
    assert "up to 9.7 s at a stretch" in text
    assert "159% of full output" in text
    honest, findings = cleaned(thumbstick("play-2-person-D-0-to-30-s.csv", raw=True))
    assert not honest.rest_cleaned
    assert not about(findings, "rest_cleaned")


def test_held_at_the_edge_is_not_asleep():
    """Full throw kept for 3 s is not asked about as a frozen value."""
    xy = wandering().xy.copy()
    xy[1000:1300] = [1.0, 0.0]
    _, findings = cleaned(Recording("edge.csv", np.arange(6000) / 100, xy))
    assert not about(findings, "frozen")
