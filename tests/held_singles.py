"""Single functions of `tuning` and `mechanics` on series and readings drawn by lot: filters, shapes, dead zones, levers, brackets."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import fields
from typing import Any

import numpy as np

from simulated import hump_noise
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name
from stickwright.errors import BadInput
from stickwright.mechanics.agreement import agreement
from stickwright.mechanics.endurance import hold_estimate
from stickwright.mechanics.fit import Evaluated
from stickwright.mechanics.force_from_trials import StickResult, bracket, limb_stiffness
from stickwright.mechanics.lever import Lever, fit_lever
from stickwright.mechanics.output_gain import output_gain
from stickwright.mechanics.states import played, states_of, worst_of
from stickwright.mechanics.value_of_information import Candidate, chance_after, chance_now, right_choice, right_or_none
from stickwright.model.parts import COMFORT
from stickwright.model.player import Site
from stickwright.model.recorded import ReachReport
from stickwright.tuning.curve import curve_table, equal_precision, equal_precision_input, fit_scatter, inner_jump
from stickwright.tuning.dead_zone import (
    dead_zone,
    dead_zone_estimate,
    effective_samples,
    lag_one_correlation,
    largest_rank,
    smallest_sample,
)
from stickwright.tuning.filters import (
    Filter,
    filtered,
    low_pass,
    low_pass_alpha,
    low_pass_cutoff_hz,
    low_pass_lag_s,
    low_pass_left,
    one_euro,
)
from stickwright.tuning.rotation_calibration import bearing
from stickwright.tuning.series import even_grid
from stickwright.tuning.shaping import Response, gain_towards, placed, respond, shaped, shaped_one_euro

Rng = np.random.Generator
EIGHT = tuple((np.arange(8) * math.pi / 4).tolist())


def _filters(rng: Rng) -> Any:
    """Every filter on a wandering series, stamps even and uneven; shapes of every kind; a few samples written out."""
    even_s = np.arange(400) / 100
    uneven_s = np.sort(even_s + rng.uniform(-0.004, 0.004, 400))
    xy = 0.4 * hump_noise(400, 100.0, 0.8, 0.4, rng) + 0.03 * hump_noise(400, 100.0, 5.0, 0.3, rng)
    kinds = [
        Filter(), Filter("low-pass", cutoff_hz=3.0), Filter("butterworth", cutoff_hz=4.0), Filter("1-euro", cutoff_hz=1.2, beta=0.8),
        Filter("notch", cutoff_hz=5.0, quality=2.0),
    ]  # fmt: skip
    settings = [
        Response(), Response((0.03, -0.02), 0.3, EIGHT, tuple(rng.uniform(0.6, 1.6, 8).tolist()), 0.08, 0.05, 2.0, kinds[1], 1.0),
        Response(dead_zone=0.15, filter=kinds[3]), Response((0.0, 0.1), -1.2, EIGHT[:3], (1.2, 0.8, 1.5), inner_jump=0.1, outer_limit=0.9),
        Response(curve_ratio=6.0, filter=kinds[4]), Response(output_rotation_rad=math.pi, filter=kinds[2]),
    ]  # fmt: skip
    out: list[Any] = []
    for times_s in (even_s, uneven_s):
        series = [filtered(xy, times_s, one) for one in kinds] + [respond(xy, times_s, one) for one in settings]
        series += [low_pass(xy, times_s, 2.0), one_euro(xy, times_s, 1.0, 0.5), one_euro(xy, times_s, 0.5, 2.0, 3.0)]
        series.append(shaped_one_euro(xy, times_s, 1.0, 0.7, dead_zone=0.06, inner_jump=0.04, curve_ratio=1.5))
        out += [[one[::37], one.std(axis=0), one.mean(axis=0)] for one in series]
    out += [placed(xy, one)[::37] for one in settings]
    shapes = [(0.0, 0.0, 0.0), (0.1, 0.0, 0.0), (0.1, 0.2, 0.0), (0.05, 0.0, 3.0), (0.2, 0.1, 0.4)]
    out += [shaped(xy, *shape)[::37] for shape in shapes]
    out.append(gain_towards(np.linspace(-4, 8, 25), EIGHT, rng.uniform(0.5, 2, 8)))
    out += [gain_towards([0.1, 2.0], [0.5], [1.3]), *even_grid(xy[:50], uneven_s[:50])]
    for hz in (0.5, 2.0, 9.0):
        out += [
            low_pass_alpha(hz, 0.01),
            low_pass_lag_s(hz),
            low_pass_lag_s(hz, 0.01),
            low_pass_cutoff_hz(0.1 / hz),
            low_pass_left(hz, 0.03),
        ]
    return {str(number): one for number, one in enumerate(out)}


def _rests(rng: Rng) -> Any:
    """Dead zones of one rest and several, with a memory, with an odd sample, with too few."""
    calm = rng.normal(0, 0.01, (900, 2))
    slow = 0.02 * hump_noise(900, 100.0, 0.8, 0.4, rng)
    holes = np.where(rng.random((900, 1)) < 0.05, np.nan, calm)
    odd = np.concatenate([calm[:100], [[0.4, 0.3]]])
    rests = [
        [calm],
        [slow],
        [calm[:200], slow[:300] + 0.02, calm[:250] - 0.03],
        [odd],
        [calm[:8]],
        [np.zeros((50, 2))],
        [holes],
    ]
    return {
        "estimates": [dead_zone_estimate(each) for each in rests],
        "stricter": dead_zone_estimate(rests[2], 0.99, 0.9),
        "plain": [dead_zone(calm), dead_zone(slow, 0.9, 0.9), dead_zone(holes)],
        "memory": [lag_one_correlation(each) for each in (calm, slow, odd)],
        "worth": [effective_samples(each) for each in (calm, slow, odd)],
        "sizes": [smallest_sample(), smallest_sample(0.9, 0.99), smallest_sample(0.95, 0.95, 3)],
        "ranks": [largest_rank(n) for n in (59, 93, 124, 600)],
    }  # fmt: skip


def _curves(rng: Rng) -> Any:
    """Curves of equal precision and their turning round; scatter that grows, stays, shrinks."""
    x = np.linspace(0, 1, 9)
    levels = np.array([0.1, 0.3, 0.5, 0.7, 0.9])
    degrees = np.array([8.0, 12.0, 9.0, 14.0, 6.0])
    drawn = [
        (a + b * levels) * np.exp(rng.normal(0, 0.15, 5))
        for a, b in ((0.02, 0.08), (0.05, 0.0), (0.06, -0.04), (0.001, 0.1))
    ]
    return {
        "curves": [equal_precision(x, 0.02, b) for b in (0.0, 0.02, 0.2)],
        "back": [equal_precision_input(x, 0.02, b) for b in (0.0, 0.02, 0.2)],
        "tables": [curve_table(ratio) for ratio in (0.0, 1.0, 7.5)], "short table": curve_table(2.0, 5),
        "fits": [fit_scatter(levels, sds, degrees, np.random.default_rng(3)) for sds in drawn],
        "jumps": [inner_jump(share) for share in (None, 0.0, 0.08, 0.24)],
        "bearings": [bearing(np.array(EIGHT) + turn + rng.normal(0, sd, 8), EIGHT) for turn, sd in ((0.2, 0.05), (3.1, 0.2), (-1.0, 1.5))],
    }  # fmt: skip


def _levers(rng: Rng) -> Any:
    """Levers of readings out alone, both ways, few, rounded, with a slip; their forces; what a reading would be worth."""
    out: list[Any] = []
    for number in range(10):
        angle = np.linspace(0, 0.35, 3 + number % 5)
        both = number % 2 == 0
        angle, outward = (
            (np.concatenate([angle, angle]), np.arange(2 * len(angle)) < len(angle))
            if both
            else (angle, np.ones(len(angle), bool))
        )
        preload, stiffness, friction = rng.uniform(0, 0.01), rng.uniform(0.01, 0.05), rng.uniform(0, 0.003)
        force_n = (preload + np.where(outward, friction, -friction) + stiffness * angle) / 0.022
        force_n = np.maximum(force_n * (1 + rng.normal(0, 0.03, len(angle))), 0.001)
        if number % 4 == 3:
            force_n[1] *= 1.7
        step_n = 0.05 if number % 3 == 0 else None
        try:
            fit = fit_lever(0.022, force_n, angle, outward if both else None, max_angle_rad=0.4, gauge_step_n=step_n)
        except BadInput as refused:
            out.append(refused.problems)
            continue
        out.append((fit, fit.returns, fit.residual_angle_rad))
    gains = np.linspace(0, 0.35, 7)
    reads = [(gains, np.clip(gains / stop + rng.normal(0, 0.01, 7), 0, 1)) for stop in (0.2, 0.35, 0.6)]
    utility = rng.normal(2, 0.6, (4, 200)) - np.array([0.0, 0.1, 0.4, 3.5])[:, None]
    right = right_choice(utility, 0.1)
    what: Any = "force"
    asked = [Candidate("hand", what, float(n), utility[n] + rng.normal(0, 0.4, 200), 0.1 + 0.1 * n) for n in range(3)]
    return {
        "levers": out, "gains": [output_gain(angle, output, 0.35, 0.95) for angle, output in reads],
        "made": Lever(0.01, 0.03, 0.002, 0.02, 0.4), "right": (right, right_or_none(utility, 0.1), chance_now(right)),
        "after": chance_after(right, asked, np.random.default_rng(5), outcomes=40),
        "holds": [hold_estimate(share, None, found) for share in (0.1, 0.4, 0.8) for found in (None, (0.5, 20.0), (0.3, (40.0, 60.0)))],
    }  # fmt: skip


def _brackets(rng: Rng) -> Any:
    """Force and reach from how far sticks were pushed: to the stop, not at all, between, and with a gauge reading beside them."""
    out: list[Any] = []
    comfort = COMFORT["fingertip"]
    for number in range(4):
        results = [
            StickResult(
                full / 2, full, 0.007, 0.016, tuple(np.clip(rng.normal(share, 0.05, 1 + number % 3), 0, 1).tolist())
            )
            for full, share in ((0.5, 0.9), (1.2, 0.55), (3.0, 0.1 * number))[: 1 + number % 3]
        ]
        gauge: dict[str, Any] = {"force_n": [0.9, 1.1], "reach_m": [0.012], "gauge_step_n": 0.1} if number % 2 else {}
        found = bracket(results, comfort, **gauge)
        out.append((found.estimates(len(results)), found.log_moments(), found.draws(np.random.default_rng(7), 5)))
    tremor = [[0.004, 0.0043], [0.002, 0.0021, 0.0018]]
    return [*out, limb_stiffness(tremor, [20.0, 150.0], np.random.default_rng(9))]


def _states(rng: Rng) -> Any:
    """Sites read again in other states: all directions, some, force alone, nothing but tremor; the worst for each set-up."""
    out: list[Any] = []
    for number in range(12):
        degrees = [0, 90, 180, 270][: 2 + number % 3]

        def readings(of: list[int], scale: float, *, reach: bool = True) -> list[dict[str, Any]]:
            each = [
                {"direction_deg": deg, "force_n": (scale * rng.uniform(0.5, 3, int(rng.integers(1, 4)))).tolist()}
                for deg in of
            ]
            return [one | ({"reach_mm": (scale * rng.uniform(4, 20, 2)).tolist()} if reach else {}) for one in each]  # fmt: skip

        again = [
            {"condition": "tired", "kind": "tiredness", "after_min": 30, "reading": readings(degrees[: 1 + number % 2], 0.6)},
            {"condition": "before food", "kind": "food", "plays": number % 3 == 0, "reading": readings(degrees[::2], 0.8, reach=False)},
            {"condition": "propped", "kind": "support", "reading": readings([360, *degrees[1:]], 1.4, reach=number % 2 == 0)},
            {"condition": "shaky", "involuntary_force_n": 0.3, "crossing_hz": 4.0, "rest": [{"force_n": [0.1, 0.2]}]},
        ][number % 4 :]  # fmt: skip
        own = {
            "name": "hand", "part": "hand", "reading": readings(degrees, 1.0), "under": again, "plays_so": number % 2 == 0,
            "again_force_n": [1.0], "involuntary_force_n": 0.05, "condition": "fresh",
        }  # fmt: skip
        site = Site.model_validate(own)
        try:
            out.append((states_of(site), [one.name for one in played(site)]))
        except BadInput as refused:
            out.append(refused.problems)

    def found() -> Evaluated:
        return Evaluated(**{field.name: rng.normal(0, 1, (5, 4)) if field.name in ("reach_share", "effort", "bits", "stick_utility")
                            else rng.normal(0, 1, 5) for field in fields(Evaluated)})  # fmt: skip

    return {"states": out, "worst": [worst_of([found() for _ in range(many)]) for many in (1, 2, 4)]}


def _agreements(rng: Rng) -> Any:
    """Predicted reach against recorded: alike, apart, mirrored, turned, with directions that nobody recorded or that lie far off."""
    out: list[Any] = []
    for number in range(24):
        many = (8, 8, 5, 4)[number % 4]
        predicted = rng.uniform(0.2, 1.0, many)
        towards = np.arange(many) * math.tau / many
        turn_rad = float(rng.choice([0.0, 0.0, 0.5, -1.2]))
        share = predicted + rng.normal(0, (0.03, 0.12, 0.3)[number % 3], many)
        if number % 5 == 4:
            share = np.interp(np.mod(math.pi - towards, math.tau), towards, predicted, period=math.tau)
        kept = rng.random(many) < (1.0 if number % 2 else 0.7)
        there = towards + turn_rad + rng.normal(0, 0.1, many)
        reach = tuple(Estimate(*(float(s) for s in (at, at - 0.03, at + 0.03))) if in_it else Estimate.missing(Name("not tried"))
                      for at, in_it in zip(share, kept, strict=True))  # fmt: skip
        recorded = ReachReport(tuple(there.tolist()), reach, Estimate(0.7, 0.6, 0.8), 0.0)
        turned = math.nan if number == 7 else turn_rad
        what: Any = ("push", "rim")[number % 2]
        out.append(agreement(towards, predicted, recorded, turned, setup=Name("ash"), task=what, recording="one.csv"))
    return out


DRAWN: dict[str, Callable[[Rng], Any]] = {
    "filters": _filters, "rests": _rests, "curves": _curves, "levers": _levers, "brackets": _brackets, "states": _states,
    "agreements": _agreements,
}  # fmt: skip


def results() -> dict[str, Callable[[], Any]]:
    """Everything of this module that is held, by name: two seeds of each."""
    return {
        f"{name} {seed}": lambda name=name, seed=seed: DRAWN[name](np.random.default_rng([73, seed, *name.encode()]))
        for name in DRAWN
        for seed in range(2)
    }
