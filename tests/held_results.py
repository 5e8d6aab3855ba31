"""Results whose figures are held: recordings, tunings, abilities, benches and plans, all seeded; every player in them is invented."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
from small_cases import fit

import held_mounts
import held_rooms
import held_shares
import held_singles
import held_traces
import worked_cases
import worked_rooms
from coverage_runs import STICK, some_player
from simulated import (
    EIGHT_RAD,
    NO_GAUGE_FAULTS,
    NO_VISIT_FAULTS,
    GaugeFaults,
    Sensor,
    SimulatedPlayer,
    SimulatedStick,
    Visit,
    VisitFaults,
    bench_table,
    hump_noise,
)
from stickwright.codes.estimate import Estimate
from stickwright.errors import BadInput
from stickwright.mechanics.ability import ability
from stickwright.mechanics.bench import bench_stick
from stickwright.model.game import Game
from stickwright.model.player import PARTS, Site
from stickwright.model.recorded import Finding
from stickwright.model.recording import Recording
from stickwright.model.sharing import Placement
from stickwright.planning.plan import plan
from stickwright.trace.report import trace_report
from stickwright.tuning.another_game import set_before, settings_in, simple_in
from stickwright.tuning.pipeline import tune
from test_claims import random_case

DATA = Path(__file__).parent / "data"
LIGHT = SimulatedStick.of(0.12, 0.3, 0.005, 0.012, 0.01)
EVEN = (1.0,) * 8
VISITS = {
    "steady": Visit(SimulatedPlayer(EVEN, (0.02,) * 8, sway_n=0.004, noise_share=0.02), STICK),
    "trembling": Visit(
        SimulatedPlayer((0.9, 0.8, 0.7, 0.6, 0.5, 0.6, 0.7, 0.8), (0.02,) * 8, sway_n=0.02, tremor_hz=5.2, tremor_n=0.05),
        LIGHT, Sensor(offset=(0.04, -0.03), noise=0.004, bits=8, turn_rad=0.4),
    ),
    "weak one way": Visit(
        SimulatedPlayer((0.5, 0.4, 0.3, 0.2, 0.12, 0.2, 0.3, 0.4), (0.01,) * 8, rest_n=(0.06, -0.1), sway_n=0.03, tiring_per_min=0.1),
        LIGHT, Sensor(rate_hz=60.0, jitter_s=0.003, bits=12),
    ),
    "quarter turn": Visit(
        SimulatedPlayer(EVEN, (0.03,) * 8, sway_n=0.01, reaction_s=0.5, aim_scatter=0.1, lag_s=0.6, follow_gain=0.6),
        STICK, Sensor(rate_hz=240.0, jitter_s=0.0, turn_rad=math.pi / 2),
    ),
}  # fmt: skip
TASKS: dict[str, Callable[[Visit, np.random.Generator], Recording]] = {
    "rest": lambda visit, rng: visit.rest(rng),
    "rest again": lambda visit, rng: visit.rest(rng, seconds=30, releases=6, home=0.02),
    "still": lambda visit, rng: visit.still(rng),
    "rim": lambda visit, rng: visit.rim(rng),
    "push": lambda visit, rng: visit.push(rng),
    "hold": lambda visit, rng: visit.hold(rng, sinking_per_s=0.02),
    "aim": lambda visit, rng: visit.aim(rng),
    "follow": lambda visit, rng: visit.follow(rng),
}


def recorded(task: str, player: str) -> Recording:
    """One task of one player."""
    return TASKS[task](VISITS[player], np.random.default_rng([11, list(TASKS).index(task), list(VISITS).index(player)]))


def rounded(recording: Recording) -> Recording:
    """Stamps to the millisecond, as many programs write them."""
    return replace(recording, times_s=np.round(recording.times_s, 3))


def with_gap(recording: Recording) -> Recording:
    """Two seconds are missing, and the first are the same number again and again."""
    keep = (recording.times_s < 7) | (recording.times_s > 9)
    xy = recording.xy.copy()
    xy[:50] = xy[0]
    thinner = {name: kept[keep] for name in ("cue", "cue_xy") if (kept := getattr(recording, name)) is not None}
    return replace(recording, times_s=recording.times_s[keep], xy=xy[keep], **thinner)


def jerky(recording: Recording) -> Recording:
    """Involuntary jerks of a quarter of a second, each some seconds after the one before."""
    xy = recording.xy.copy()
    for number, start in enumerate(np.arange(3.0, float(recording.times_s[-1]) - 1, 4.7)):
        rows = (recording.times_s >= start) & (recording.times_s < start + 0.25)
        xy[rows] += 0.4 * np.array([math.cos(number), math.sin(number)])
    return replace(recording, xy=np.clip(xy, -1, 1))


def played(seconds: float = 40.0) -> Recording:
    """Free play: slow wandering that often reaches the end stop, a cut corner on the left, and springing back."""
    rng = np.random.default_rng(23)
    times_s = np.arange(int(seconds * 100)) / 100
    xy = np.clip(0.7 * hump_noise(times_s.size, 100.0, 0.5, 0.3, rng), [-0.75, -1.0], 1.0)
    return Recording("play.csv", times_s, np.asarray(xy) + rng.normal(0, 0.003, xy.shape), task="play")


def measured(name: str) -> Recording:
    """Real recordings of people without and with a disability; sources in the folders of tests/data."""
    folder, _, file = name.partition("/")
    rows = np.genfromtxt(DATA / folder / f"{file}.csv", delimiter=",", skip_header=1)
    if folder == "tremor":
        return Recording(name, rows[:, 0], rows[:, 1:3] / np.abs(rows[:, 1:3]).max(), task="still")
    if folder == "tracking":
        size = np.abs(rows[:, 1:5]).max()
        return Recording(name, rows[:, 0], rows[:, 3:5] / size, task="follow", cue_xy=rows[:, 1:3] / size)
    table = np.genfromtxt(DATA / folder / f"{file}.csv", delimiter=",", names=True)
    return Recording(name, table["time_s"], np.column_stack((table["stick_x"], table["stick_y"])), task="play")


MEASURED = (
    "tremor/postural-right-hand", "tremor/rest-right-leg", "tracking/ellipse-0.67-hz", "tracking/random-difficulty-50",
    "tracking/random-difficulty-80", "thumbstick/play-2-person-D-0-to-30-s", "thumbstick/play-3-person-A-63-to-93-s",
)  # fmt: skip


def _told(made: Callable[[], Recording]) -> Callable[[], Any]:
    return lambda: trace_report(made())


def _tuned(player: str) -> Any:
    recordings = [replace(recorded(task, player), site="hand", stick="oak") for task in TASKS]
    return tune(
        recordings, site="hand", stick="oak", own_dead_zone_share=0.08, offers=("dead zone", "sensitivity", "curve")
    )


TRACE: dict[str, Callable[[], Any]] = {
    **{f"{task}, {one}": _told(lambda task=task, one=one: recorded(task, one)) for task in TASKS for one in VISITS},
    **{
        f"{task}, stamps rounded": _told(lambda task=task: rounded(recorded(task, "trembling")))
        for task in ("rest", "aim", "follow")
    },
    **{
        f"{task}, with a gap": _told(lambda task=task: with_gap(recorded(task, "weak one way")))
        for task in ("rest", "push", "follow", "still")
    },
    **{
        f"{task}, jerky": _told(lambda task=task: jerky(recorded(task, "steady")))
        for task in ("rest", "still", "hold", "push")
    },
    "play": _told(played),
    **{name: _told(lambda name=name: measured(name)) for name in MEASURED},
    **held_traces.results(),
}
TUNING: dict[str, Callable[[], Any]] = {player: lambda player=player: _tuned(player) for player in VISITS}


def _settings_in_games(player: str) -> Any:
    """What to set in games that offer one setting or both, that may not be late, with a dead zone of their own, set before or not."""
    tasks = ("rest", "still", "push", "rim", "follow")
    recordings = [replace(recorded(task, player), site="hand", stick="oak") for task in tasks]
    tuned = tune(recordings, site="hand", stick="oak", own_dead_zone_share=0.08, offers=("dead zone", "sensitivity"))
    faulty = replace(tuned, stick="ash", findings=(*tuned.findings, Finding("fault", "centre", "")))
    late = [replace(tuned, filter=replace(tuned.filter, chosen=replace(tuned.filter.chosen, lag_s=lag)))
            for lag in (Estimate(0.05, 0.04, 0.06), Estimate(0.08, 0.07, 0.09)) if tuned.filter is not None]  # fmt: skip
    placements = tuple(
        Placement(f"action {number}", "site", site, stick, kind, fit=fit(site, stick))
        for number, (site, stick, kind) in enumerate(
            [("hand", "oak", "stick"), ("hand", "ash", "stick"), ("chin", "elm", "stick"), ("hand", "oak", "stick"),
             ("hand", "oak", "switch")]
        )
    )  # fmt: skip
    shared = replace(_planned("random 0").sharing, placements=placements)
    before = [{"stick": "oak", "dead_zone_share": 0.1}, {"stick": "ash (soft)", "sensitivity_share": 1.2}]
    told = (
        {}, {"offers": ["dead zone"], "own_dead_zone_share": 0.2}, {"offers": ["sensitivity"], "lag_budget_s": 0.05},
        {"offers": ["dead zone", "curve", "sensitivity"], "own_dead_zone_share": 0.0, "settings_before": before},
        {"offers": ["curve"], "lag_budget_s": 0.0, "settings_before": before[1:]},
    )  # fmt: skip
    games = [Game.model_validate({"name": "walk", **one}) for one in told]
    return {
        "settings": [settings_in(shared, {"hand": [faulty, one]}, game) for one in (tuned, *late) for game in games],
        "nobody": [settings_in(None, {"hand": [tuned]}, games[0]), settings_in(shared, {}, games[0])],
        "numbers": [simple_in(tuned, game) for game in games],
        "before": [set_before(game, stick) for game in games for stick in ("oak", "oak (soft)", "ash", "ash (soft)")],
    }


def _bench(name: str) -> Any:
    faults = {"plain": NO_GAUGE_FAULTS, "askew": GaugeFaults(apart_share=0.08), "drifting": GaugeFaults(drift_n=0.004)}
    stick = replace(STICK, sag_share=0.2 if name == "curved" else 0.0)
    table = bench_table(
        stick, np.random.default_rng(31), directions_rad=tuple(EIGHT_RAD[::2].tolist()), gauge_step_n=0.01,
        scatter=0.03, faults=faults.get(name, NO_GAUGE_FAULTS), slipped=(5, 1.8) if name == "slipped" else None,
    )  # fmt: skip
    return bench_stick(
        table.force_n, name="yew", height_m=stick.height_m, travel_m=table.travel_m, direction_rad=table.direction_rad,
        outward=table.outward, max_travel_m=stick.travel_m,
    )  # fmt: skip


def _drawn_bench(seed: int) -> Any:
    """Directions, shares of the throw, faults and the gauge's step drawn by lot; one way out, or a slip, in some."""
    rng = np.random.default_rng([37, seed])
    faults = GaugeFaults(
        off_square_rad=float(rng.choice([0, 0.3])), apart_share=float(rng.choice([0, 0.1])), apart_n=float(rng.choice([0, 0.03])),
        drift_n=float(rng.choice([0, 0.006])), wander_n=float(rng.choice([0, 0.01])),
    )  # fmt: skip
    stick = replace(STICK, sag_share=float(rng.choice([0, 0, 0.3, -0.2])))
    many, shares = int(rng.choice([1, 2, 4, 8])), ((0.0, 1.0), (0.0, 0.5, 1.0), (0.0, 0.25, 0.5, 0.75, 1.0))[seed % 3]
    table = bench_table(
        stick, rng, directions_rad=tuple(EIGHT_RAD[:: 8 // many].tolist()), shares=shares, back=bool(seed % 4),
        gauge_step_n=float(rng.choice([0.01, 0.05])), scatter=float(rng.choice([0.01, 0.05])), faults=faults,
        unequal=tuple(rng.uniform(0.8, 1.3, many).tolist()) if seed % 5 == 0 else None, slipped=(1, 2.5) if seed % 4 == 1 else None,
    )  # fmt: skip
    try:
        return bench_stick(
            table.force_n, name="yew", height_m=stick.height_m, travel_m=table.travel_m, direction_rad=table.direction_rad,
            outward=table.outward, max_travel_m=stick.travel_m if seed % 3 else None,
        )  # fmt: skip
    except BadInput as refused:
        return refused.problems


def _able(seed: int) -> Any:
    rng = np.random.default_rng([41, seed])
    faults = NO_VISIT_FAULTS if seed % 2 else VisitFaults(lost_per_repeat=0.05, day=0.8)
    if seed >= 8 and not seed % 4:
        faults = VisitFaults(lost_over_visit=0.3, slip_chance=0.2)
    taken = some_player(rng).gauge_readings(rng, directions_rad=EIGHT_RAD[:: 1 + seed % 3], scatter=0.15, faults=faults)
    readings = [{"direction_rad": phi, "force_n": force, "reach_m": reach} for phi, force, reach in taken]
    given = {"name": "site", "part": PARTS[seed % len(PARTS)], "reading": readings, "again_force_n": [0.5, 0.55]}
    if seed >= 8:
        more = {
            "rest": [{"force_n": rng.uniform(0, 0.1, 3).tolist()}], "involuntary_force_n": 0.03, "crossing_hz": 2.5,
            "force_noise_share": 0.06, "limb_stiffness_n_per_m": 70.0, "comfortable_of_maximal_share": 0.6, "movement_tilt_deg": 20.0,
            "spasm": {"rate_per_s": 0.02, "peak_n": [1.0, 1.4]}, "hold": [{"effort_share": 0.4, "duration_s": [20.0, 26.0]}],
        }  # fmt: skip
        given |= {name: value for name, value in more.items() if rng.random() < 0.5}
        if seed % 5 == 0:
            del given["again_force_n"]
    return ability(Site.model_validate(given), rng, 200)


@cache
def _planned(name: str) -> Any:
    if name.startswith("random"):
        return plan(random_case(np.random.default_rng([13, int(name.split()[1])])), draws=24)
    kit = worked_cases.van_kit(**worked_rooms.mount_kit())
    return plan(replace(worked_cases.whole_case(name), kit=kit, room=worked_rooms.room(name)), draws=30)


GAMES: dict[str, Callable[[], Any]] = {
    player: lambda player=player: _settings_in_games(player) for player in ("trembling", "quarter turn")
}
BENCHES = {
    **{name: lambda name=name: _bench(name) for name in ("plain", "curved", "askew", "drifting", "slipped")},
    **{f"drawn {seed}": lambda seed=seed: _drawn_bench(seed) for seed in range(16)},
}
ABILITIES = {f"player {seed}": lambda seed=seed: _able(seed) for seed in range(24)}
PLANS = {
    name: lambda name=name: _planned(name) for name in (*worked_rooms.NAMES, *(f"random {seed}" for seed in range(8)))
}
ALL: dict[str, dict[str, Callable[[], Any]]] = {
    "trace": TRACE, "shares": held_shares.results(), "mounts": held_mounts.results(), "rooms": held_rooms.results(),
    "singles": held_singles.results(), "tuning": TUNING, "games": GAMES, "benches": BENCHES, "abilities": ABILITIES, "plans": PLANS,
}  # fmt: skip
"""What is held, by the file that holds it."""
