"""What recordings add to a plan, held against simulated players whose truth is known."""

from __future__ import annotations

import math

import numpy as np
import pytest

from simulated import Sensor, SimulatedPlayer, SimulatedStick, Visit
from stickwright.listening import recorded_steadiness
from stickwright.model.kit import Kit
from stickwright.model.player import Site
from stickwright.model.recording import Recording
from stickwright.trace.report import trace_report

STICK = SimulatedStick.of(start_n=0.06, full_n=0.16, travel_m=0.005, height_m=0.018)
KIT = Kit.model_validate(
    {"stick": [{"name": "moss", "contact_height_mm": 18, "start_force_n": 0.06, "full_force_n": 0.16, "travel_mm": 5}]}
)
PLAYER = SimulatedPlayer(
    force_n=(0.5,) * 8,
    reach_m=(0.009,) * 8,
    sway_n=0.007,
    crossing_hz=1.3,
    tremor_hz=5.4,
    tremor_n=0.006,
    limb_n_per_m=42.0,
    noise_share=0.06,
)
SITE = {
    "name": "index",
    "part": "fingertip",
    "limb_stiffness_n_per_m": 42.0,
    "reading": [{"direction_rad": 0.0, "force_n": [0.5], "reach_m": [0.009]}],
}


def named(recording: Recording) -> Recording:
    from dataclasses import replace

    return replace(recording, site="index", stick="moss")


def visit() -> Visit:
    return Visit(PLAYER, STICK, Sensor(noise=0.002, bits=12, rate_hz=100.0), site="index")


@pytest.fixture(scope="module")
def heard():  # type: ignore[no-untyped-def]
    """Ten visits of the same player: keeping still for 20 s, and holds at three levels in two directions."""
    out = []
    for seed in range(10):
        rng = np.random.default_rng(seed)
        recordings = [named(visit().still(rng, seconds=20)), named(visit().hold(rng))]
        reports = [trace_report(recording) for recording in recordings]
        out.append(recorded_steadiness(KIT, Site.model_validate(SITE), recordings, reports)[0])
    return out


def test_involuntary_force_counts_sway_and_tremor(heard) -> None:  # type: ignore[no-untyped-def]
    """Sway 7 mN and tremor 6 mN per axis: hypot is 9.2 mN, and not the tremor peak's 6 mN alone.

    The little that motor noise adds at a quarter of the throw (6 % of 0.085 N) is in the recording too."""
    truth = math.hypot(math.hypot(0.007, 0.006), 0.06 * 0.085)
    told = [one.force_n.value for one in heard]
    assert np.median(told) == pytest.approx(truth, rel=0.15)
    assert math.hypot(0.007, 0.006) * 0.8 < np.median(told)


def test_noise_growing_with_the_push_is_told_with_an_interval(heard) -> None:  # type: ignore[no-untyped-def]
    """6 % of the push: within the interval in most of ten visits, and of the right size."""
    shares = [one.noise_share for one in heard if one.noise_share is not None]
    assert len(shares) >= 8
    inside = [share.low <= 0.06 <= share.high for share in shares]
    assert np.mean(inside) >= 0.7
    assert 0.03 < np.median([share.value for share in shares]) < 0.12


def test_typed_figures_win() -> None:
    """A figure typed in player.toml is not read from a recording."""
    rng = np.random.default_rng(1)
    recording = named(visit().still(rng))
    site = Site.model_validate({**SITE, "involuntary_force_n": 0.02})
    told, findings = recorded_steadiness(KIT, site, [recording], [trace_report(recording)])
    assert told.force_n is None
    assert findings == ()


def test_nothing_is_told_without_the_stick() -> None:
    """A recording on an unnamed stick gives no force: its stiffness is not known."""
    recording = visit().still(np.random.default_rng(1))
    told, _ = recorded_steadiness(KIT, Site.model_validate(SITE), [recording], [trace_report(recording)])
    assert told.force_n is None
