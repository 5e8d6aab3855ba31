"""How often the 95 % intervals hold the truth, on simulated benches, players and rests that are not as the estimators assume.

Used by docs/make_coverage.py (1,000 of each, written to docs/coverage.md) and by the test that recomputes a part.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np
from scipy.signal import lfilter

from simulated import (
    EIGHT_RAD,
    NO_GAUGE_FAULTS,
    NO_VISIT_FAULTS,
    GaugeFaults,
    SimulatedPlayer,
    SimulatedStick,
    VisitFaults,
    bench_table,
)
from stickwright.codes.estimate import Estimate
from stickwright.mechanics.ability import ability
from stickwright.mechanics.bench import bench_stick
from stickwright.model.player import Site
from stickwright.model.recording import Recording
from stickwright.trace.recording import cleaned
from stickwright.trace.rest import rest_report

STICK = SimulatedStick.of(0.24, 0.52, 0.0065, 0.016, 0.015)
SCATTER = 0.03  # of a bench reading
PLAYER_SCATTER = 0.15  # of a push
SEED = 20260101

Rng = np.random.Generator
Held = dict[str, list[bool]]
FRESH, OTHER = "fresh force, that day", "force on another day"


@dataclass(frozen=True)
class Run:
    """One line of the table."""

    name: str
    draw: Callable[[Rng], Held]
    """One simulated bench or player: whether the intervals of each figure held the truth."""
    holds_model: bool = False
    """Nothing is wrong but what the model assumes."""

    def shares(self, number: int) -> dict[str, float]:
        """Share of intervals that held the truth by figure, of so many, each with a seed of its own."""
        held: dict[str, list[bool]] = {}
        for one in range(number):
            for figure, found in self.draw(np.random.default_rng([SEED, one])).items():
                held.setdefault(figure, []).extend(found)
        return {figure: float(np.mean(found)) for figure, found in held.items()}


def _holds(estimate: Estimate, truth: float) -> bool:
    return estimate.has_interval and estimate.low <= truth <= estimate.high


def _bench(
    faults: GaugeFaults = NO_GAUGE_FAULTS, *, sag: float = 0.0, directions: int = 4, slips: bool = False
) -> Callable[[Rng], Held]:
    stick = replace(STICK, sag_share=sag)

    def draw(rng: Rng) -> Held:
        table = bench_table(
            stick, rng, directions_rad=tuple(EIGHT_RAD[:: 8 // directions].tolist()), scatter=SCATTER, faults=faults,
            slipped=(int(rng.integers(8 * directions)), 1.8) if slips else None,
        )  # fmt: skip
        result = bench_stick(
            table.force_n, name="yew", height_m=stick.height_m, travel_m=table.travel_m,
            direction_rad=table.direction_rad, outward=table.outward, max_travel_m=stick.travel_m,
        )  # fmt: skip
        return {
            "actuation force": [_holds(result.pooled.start_force_n, stick.start_n)],
            "force at full travel": [_holds(result.pooled.full_force_n, stick.full_n)],
            "friction": [_holds(result.friction_force_n, stick.friction_nm / stick.height_m)],
        }

    return draw


def some_player(rng: Rng) -> SimulatedPlayer:
    """Anybody: stronger one way than the other, and every direction with something of its own."""
    level, lean, squeeze = rng.uniform(-1.0, 1.0), rng.uniform(0.0, 0.5), rng.uniform(0.0, 0.25)
    towards, axis = rng.uniform(0, 2 * math.pi, 2)
    logs = level + lean * np.cos(EIGHT_RAD - towards) + squeeze * np.cos(2 * (EIGHT_RAD - axis))
    force = 0.6 * np.exp(logs + rng.normal(0, 0.08, 8))
    return SimulatedPlayer(tuple(force.tolist()), tuple((0.015 * force).tolist()))


def _player(
    faults: VisitFaults = NO_VISIT_FAULTS,
    *,
    directions: int = 8,
    again: bool = False,
    day_sd: float = 0.0,
    day_shift: float = 0.0,
) -> Callable[[Rng], Held]:
    """Whether each direction's intervals hold the fresh force of the day, and that of an ordinary day."""

    def draw(rng: Rng) -> Held:
        player = some_player(rng)
        day = math.exp(day_sd * rng.standard_normal()) * (1 + day_shift * rng.choice([-1, 1]))
        here = replace(faults, day=day)
        taken = player.gauge_readings(
            rng, directions_rad=EIGHT_RAD[:: 8 // directions], scatter=PLAYER_SCATTER, faults=here
        )
        site = Site.model_validate(
            {
                "name": "site", "part": "fingertip",
                "reading": [{"direction_rad": phi, "force_n": force, "reach_m": reach} for phi, force, reach in taken],
                "again_force_n": player.again_n(rng, 0.0, scatter=PLAYER_SCATTER, faults=here) if again else [],
            }
        )  # fmt: skip
        known = ability(site, rng, 2)
        assert known is not None
        measured = [
            (one, player.force_at(one.direction_rad)) for one in known.report.directions if one.measured_force_n
        ]
        held = {FRESH: [_holds(one.force_n, force * day) for one, force in measured]}
        if day_sd or day_shift:
            held[OTHER] = [_holds(one.force_other_day_n, force) for one, force in measured]
        return held

    return draw


def _rests(number: int, seconds: float, memory: float, home_share: float) -> Callable[[Rng], Held]:
    """Whether noise within a rest and all rests pooled are held: noise of 1 % of full output that forgets by `memory` from one
    sample to the next (100 a second), and a place after each release that scatters by `home_share` (sd)."""
    noise_share, n, gone = 0.01, round(100 * seconds), 50

    def draw(rng: Rng) -> Held:
        rows, cue = [], []
        for _ in range(number):
            white = rng.normal(0, math.sqrt(1 - memory**2), (n + 600, 2))
            slow = lfilter([1.0], [1.0, -memory], white, axis=0)[600:]
            away = np.sin(math.pi * np.arange(gone) / gone)[:, None] * [0.5, 0.2]
            rows += [noise_share * slow + rng.normal(0, home_share, 2), away]
            cue += ["rest"] * n + ["push"] * gone
        xy = np.concatenate(rows)
        recording = Recording("rest.csv", np.arange(len(xy)) / 100, xy, cue=np.array(cue))
        report, _ = rest_report(cleaned(recording)[0])
        assert report is not None
        assert report.pooled_rms is not None
        return {
            "noise within a rest": [_holds(report.noise_rms, noise_share)],
            "all rests pooled": [_holds(report.pooled_rms, math.hypot(noise_share, home_share))],
        }

    return draw


def runs() -> tuple[Run, ...]:
    """Every line of the table, in order."""
    askew = [GaugeFaults(off_square_rad=math.radians(angle)) for angle in (15, 20)]
    creep, wander = GaugeFaults(drift_n=0.002), GaugeFaults(wander_n=0.006)
    return (
        Run("bench, 4 directions: scatter only", _bench(), True),
        Run("bench, 4 directions: curved spring, 10 % below the line half-way", _bench(sag=0.10)),
        Run("bench, 4 directions: strongly curved spring, 25 %", _bench(sag=0.25)),
        Run("bench, 4 directions: each reads 5 % (sd) apart", _bench(GaugeFaults(apart_share=0.05))),
        Run("bench, 4 directions: preloads 0.02 N (sd) apart", _bench(GaugeFaults(apart_n=0.02))),
        Run("bench, 4 directions: zero creeps by 0.002 N a reading", _bench(creep)),
        Run("bench, 4 directions: zero wanders by 0.006 N (sd) a reading", _bench(wander)),
        Run("bench, 4 directions: gauge held 15° off square", _bench(askew[0])),
        Run("bench, 4 directions: gauge held 20° off square", _bench(askew[1])),
        Run("bench, 4 directions: one reading slips to 1.8 times", _bench(slips=True)),
        Run("bench, 1 direction: scatter only", _bench(directions=1), True),
        Run("bench, 1 direction: curved spring, 10 %", _bench(directions=1, sag=0.10)),
        Run("bench, 1 direction: strongly curved spring, 25 %", _bench(directions=1, sag=0.25)),
        Run("bench, 1 direction: zero creeps by 0.002 N a reading", _bench(creep, directions=1)),
        Run("bench, 1 direction: gauge held 15° off square", _bench(askew[0], directions=1)),
        Run("player, 8 directions: scatter only", _player(), True),
        Run("player, 4 directions: scatter only", _player(directions=4), True),
        Run("player, 8 directions: tires by 10 % from repeat to repeat", _player(VisitFaults(lost_per_repeat=0.10))),
        Run("player, 8 directions: tires by 15 % from repeat to repeat", _player(VisitFaults(lost_per_repeat=0.15))),
        Run("player, 8 directions: tires by 20 % over the visit, first direction read again",
            _player(VisitFaults(lost_over_visit=0.20), again=True)),
        Run("player, 8 directions: one reading in twenty slips to half", _player(VisitFaults(slip_chance=0.05))),
        Run("player, 8 directions: days differ by 17 % (sd)", _player(day_sd=0.17), True),
        Run("player, 4 directions: days differ by 17 % (sd)", _player(directions=4, day_sd=0.17), True),
        Run("player, 8 directions: the whole visit 20 % off an ordinary day", _player(day_shift=0.20)),
        Run("stick at rest: 4 rests of 4 s, quick noise, one place", _rests(4, 4.0, 0.6, 0.0)),
        Run("stick at rest: 4 rests of 4 s, slow noise, places 1 % (sd) apart", _rests(4, 4.0, 0.9, 0.01)),
        Run("stick at rest: 6 rests of 4 s, slow noise, places 3 % (sd) apart", _rests(6, 4.0, 0.9, 0.03)),
        Run("stick at rest: 6 rests of 10 s, very slow noise, places 2 % (sd) apart", _rests(6, 10.0, 0.97, 0.02)),
        Run("stick at rest: 10 rests of 3 s, quick noise, places 4 % (sd) apart", _rests(10, 3.0, 0.6, 0.04)),
    )  # fmt: skip
