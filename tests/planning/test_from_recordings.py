"""What recordings add to a plan, held against simulated players whose truth is known."""

from __future__ import annotations

import math

import numpy as np
import pytest

from simulated import Sensor, SimulatedPlayer, SimulatedStick, Visit
from stickwright.codes.estimate import Estimate
from stickwright.model.case import Case
from stickwright.model.game import Game
from stickwright.model.kit import Kit
from stickwright.model.player import Player, Site
from stickwright.model.recording import Recording
from stickwright.planning.from_recordings import recorded_steadiness
from stickwright.planning.site_planning import known_site
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

LIMB = Estimate.unbounded(42.0, "given as one figure")


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
        out.append(recorded_steadiness(KIT, Site.model_validate(SITE), recordings, reports, LIMB)[0])
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
    told, findings = recorded_steadiness(KIT, site, [recording], [trace_report(recording)], LIMB)
    assert told.force_n is None
    assert findings == ()


def test_nothing_is_told_without_the_stick() -> None:
    """A recording on an unnamed stick gives no force: its stiffness is not known."""
    recording = visit().still(np.random.default_rng(1))
    told, _ = recorded_steadiness(KIT, Site.model_validate(SITE), [recording], [trace_report(recording)], LIMB)
    assert told.force_n is None


def test_one_stiffness_of_the_limb_serves_the_recording_and_the_plan() -> None:
    """Law: the force that moves stick and limb is the movement times the stiffness of both; here (0.16 - 0.06) N/5 mm =
    20 N/m of the stick, and what the same page gives for the limb. Two forces and two reaches, so that the ratio of
    the medians (by hand 0.7 x 0.45/0.0075 = 42 N/m) is not the median of the ratios."""
    site = Site.model_validate(
        {
            "name": "index", "part": "fingertip",
            "reading": [
                {"direction_deg": 0, "force_n": [0.6], "reach_m": [0.006]},
                {"direction_deg": 180, "force_n": [0.3], "reach_m": [0.009]},
            ],
        }
    )  # fmt: skip
    recording = named(visit().still(np.random.default_rng(1), seconds=20))
    case = Case("case", Player(code="P", site=(site,)), KIT, Game.model_validate({"name": "even"}), (recording,))
    found = known_site(case, site, np.random.default_rng(2), 50, [])
    assert found is not None
    report = found.ability.report
    limb = report.limb_stiffness_n_per_m
    alone, _ = recorded_steadiness(KIT, site, [recording], [trace_report(recording)], Estimate.unbounded(0.0, "none"))
    assert alone.force_n is not None
    per_stick = report.involuntary_force_n.value / alone.force_n.value
    assert per_stick == pytest.approx((20.0 + limb.value) / 20.0, rel=1e-6)
    widened = (20.0 + limb.high) / (20.0 + limb.value)
    ends = report.involuntary_force_n.high / report.involuntary_force_n.value
    assert ends == pytest.approx(widened * alone.force_n.high / alone.force_n.value, rel=1e-6)
