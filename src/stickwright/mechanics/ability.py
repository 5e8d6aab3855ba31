"""One site's ability, put together from whatever was read: estimates for people, draws for the fits."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.ability_findings import AbilityFindings
from stickwright.codes.estimate import Estimate
from stickwright.codes.estimate_notes import EstimateNotes
from stickwright.codes.file_places import FilePlaces
from stickwright.codes.message import Name, message
from stickwright.codes.stand_ins import StandIns
from stickwright.codes.stick_problems import StickProblems
from stickwright.errors import BadInput, Problem
from stickwright.mechanics import capability as cap
from stickwright.mechanics.default_values import (
    Steadiness,
    direction_assumptions,
    effort_assumptions,
    grid_place,
    limb_stiffness_of,
    noise_and_fall_off,
    shaken_force,
)
from stickwright.mechanics.force_from_trials import Bracket, StickResult, TriedStick, bracket
from stickwright.mechanics.order_effect import (
    USUAL_DAYS,
    DaySpread,
    carried_back,
    day_assumption,
    day_finding,
    on_another_day,
)
from stickwright.mechanics.unread import Figure, Unread
from stickwright.mechanics.usual_forces import involuntary_force, resting_force
from stickwright.model.fit import Assumption
from stickwright.model.parts import COMFORT
from stickwright.model.plan import Capability, DirectionCapability
from stickwright.model.player import Site
from stickwright.model.recorded import Finding

__all__ = ["Ability", "ability"]

Array = NDArray[np.float64]

ENOUGH, NEARLY = 0.22, 0.45
"""Half-width of the log interval of the force below which a direction is 'enough' or 'nearly' known:
common practice."""


@dataclass(frozen=True, eq=False)
class Ability:
    """Draws of everything a fit needs of one site; draw 0 is the best single figure.

    Parameters
    ----------
    direction_rad : array, shape (k,)
        Directions judged.
    force_n, reach_m : array, shape (draws, k)
        The force on another day.
    day_factor : array, shape (draws,)
        Force of that other day over that of the visit: no further reading at the visit tells it.
    rest_force_n, involuntary_n, crossing_hz, limb_stiffness_n_per_m : array, shape (draws,)
    force_noise_share, fall_off : float
    rest_direction_rad : float or None
    spasm_rate_per_s, spasm_peak_n
        Rate and the peaks read; rate 0 when none.
    report : Capability
        The same for people.
    assumptions : tuple of Assumption
    unread : Unread
        Which of the figures were assumed.
    firm_force_n : array, shape (k,), or None
        Best single figures of the force on something firm, where `force_n` is what a stick feels through its mount.
    """

    direction_rad: Array
    force_n: Array
    reach_m: Array
    day_factor: Array
    rest_force_n: Array
    involuntary_n: Array
    crossing_hz: Array
    limb_stiffness_n_per_m: Array
    force_noise_share: float
    fall_off: float
    rest_direction_rad: float | None
    spasm_rate_per_s: float
    spasm_peak_n: tuple[float, ...]
    report: Capability
    assumptions: tuple[Assumption, ...]
    unread: Unread
    firm_force_n: Array | None = None


def ability(
    site: Site,
    rng: np.random.Generator,
    draws: int,
    *,
    tried: Mapping[int, TriedStick] | None = None,
    recorded: Callable[[Estimate], Steadiness] | None = None,
    lightest_stick: str | None = None,
    days: DaySpread = USUAL_DAYS,
) -> Ability | None:
    """What the player can do at a site, or None where neither force nor a stick was tried.

    Parameters
    ----------
    site : Site
        Readings as validated.
    rng : numpy Generator
        For the draws.
    draws : int
        Number of draws, the best single figure included.
    tried : mapping of int to TriedStick
        For each place in ``site.on_stick``, the stick's figures.
    recorded : callable, optional
        What recordings tell of unsteadiness, given the limb's own stiffness; a typed figure wins.
    lightest_stick : str, optional
        Offered as a gauge when the gauge is too coarse.
    days : DaySpread
        How much the player's force differs from day to day.

    Returns
    -------
    Ability or None

    Notes
    -----
    Sources: `capability`, `bracket`. Every stand-in is an `Assumption` in the result.
    """
    tried = tried or {}
    comfort = COMFORT[site.part]
    step = site.gauge_step_n or 0.0
    forces, findings = _force_readings(site, step)
    reaches = cap.Readings.of([(reading.direction_rad, reading.reach_m) for reading in site.reading])
    brackets = _brackets(site, tried, forces, reaches, step)
    if not len(forces.direction_rad) and not brackets:
        return None
    seen = np.concatenate([forces.direction_rad, reaches.direction_rad, np.array(list(brackets), dtype=float)])
    grid = cap.grid_directions(np.unique(np.round(seen, 6)))
    assumptions: list[Assumption] = []

    f_scatter, f_df, noticed = cap.pooled_scatter(forces)
    findings += [*noticed]
    f_prior = (math.log(math.sqrt(comfort.force_low_n * comfort.force_high_n)), 3.0)
    findings += cap.expected_from_others(
        forces, f_scatter, f_df, prior_log_mean=f_prior[0], prior_log_sd=f_prior[1], what="force"
    )
    findings += cap.coarse_gauge_finding(forces, step, finest_stick=lightest_stick)
    d_scatter, d_df, noticed = cap.pooled_scatter(reaches, "reach")
    findings += [*noticed]
    d_band = (math.log(comfort.travel_low_m), math.log(comfort.travel_high_m))
    d_prior = (0.5 * sum(d_band), 3.0 if len(reaches.direction_rad) else (d_band[1] - d_band[0]) / 4)
    findings += cap.expected_from_others(
        reaches, d_scatter, d_df, prior_log_mean=d_prior[0], prior_log_sd=d_prior[1], what="reach"
    )
    first = [f for f in site.reading[0].force_n if f > 0] if site.reading else []
    again = [f for f in site.again_force_n if f > 0]
    order = [reading.direction_rad for reading in site.reading if reading.force_n]
    force_round = cap.round_the_circle(
        _with_brackets(carried_back(forces, order, first, again, (f_scatter, f_df)), brackets, 0, f_scatter),
        grid,
        f_scatter,
        f_df,
        prior_log_mean=f_prior[0],
        prior_log_sd=f_prior[1],
    )
    reach_round = cap.round_the_circle(
        _with_brackets(reaches, brackets, 2, d_scatter),
        grid,
        d_scatter,
        d_df,
        prior_log_mean=d_prior[0],
        prior_log_sd=d_prior[1],
    )
    force = force_round.draws(rng, draws)
    reach = reach_round.draws(rng, draws)
    force[0], reach[0] = np.exp(force_round.log_mean), np.exp(reach_round.log_mean)
    for phi, found in brackets.items():
        place = grid_place(grid, phi)
        force[1:, place], reach[1:, place] = found.draws(rng, draws - 1)
        force[0, place], reach[0, place] = (estimate.number for estimate in found.estimates(1))
    day = np.exp(days.logs(rng.spawn(1)[0].standard_normal(draws)))
    day[0] = 1.0
    force *= day[:, None]  # the player plays on other days
    directions = _direction_reports(site, grid, (forces, reaches), (force_round, reach_round), brackets, days)
    if days.visits:
        findings.append(day_finding(site.name, days))
    else:
        assumptions.append(day_assumption(site.name))
    assumptions += effort_assumptions(site, findings)
    assumptions += direction_assumptions(site, forces, reaches, (f_df, d_df), list(brackets), grid)

    rest, rest_draws = resting_force(site, rng, draws, assumptions)
    stiff, stiff_draws = limb_stiffness_of(
        site, tried, force[0], reach[0], rng, draws, assumptions=assumptions, findings=findings
    )
    heard = recorded(stiff) if recorded is not None else Steadiness()
    if heard.force_n is None:
        heard = replace(heard, force_n=shaken_force(site, tried, stiff))
    sigma, crossing, sigma_draws, crossing_draws = involuntary_force(site, rng, draws, assumptions, heard)
    noise, fall_off = noise_and_fall_off(site, force_round, reach_round, assumptions, heard)
    lost = cap.tiring(first, again, f_scatter, f_df)
    if lost is not None and lost.number > 0.15:
        tires = message(AbilityFindings.tires, lost_share=lost.number, least_share=lost.lower, most_share=lost.upper)
        findings.append(Finding("query", "tiring", tires))
    report = Capability(
        directions=directions,
        force_scatter_share=_scatter_estimate(f_scatter, f_df, int(forces.counts.sum()) if len(forces.counts) else 0),
        reach_scatter_share=_scatter_estimate(d_scatter, d_df, int(reaches.counts.sum()) if len(reaches.counts) else 0),
        tiring_share=lost,
        weakest_rad=float(grid[int(np.argmin(force[0]))]),
        rest_force_n=rest,
        rest_direction_rad=site.rest[-1].direction_rad if site.rest else None,
        involuntary_force_n=sigma,
        crossing_hz=crossing,
        limb_stiffness_n_per_m=stiff,
        force_noise_share=noise,
        findings=tuple(findings),
    )
    return Ability(
        direction_rad=grid,
        force_n=force,
        reach_m=reach,
        day_factor=day,
        rest_force_n=rest_draws,
        involuntary_n=sigma_draws,
        crossing_hz=crossing_draws,
        limb_stiffness_n_per_m=stiff_draws,
        force_noise_share=noise.number,
        fall_off=1.0 if fall_off is None else fall_off,
        rest_direction_rad=report.rest_direction_rad,
        spasm_rate_per_s=site.spasm.rate_per_s if site.spasm else 0.0,
        spasm_peak_n=site.spasm.peak_n if site.spasm else (),
        report=report,
        assumptions=tuple(assumptions),
        unread=_unread(site, report, bool(len(reaches.direction_rad) or brackets), fall_off is None),
    )


def _unread(site: Site, report: Capability, reach_read: bool, straight: bool) -> Unread:
    """Which figures stand in, and how much more the player may have where a direction was read off its neighbours."""
    figures: set[Figure] = set()
    told: tuple[tuple[Figure, Estimate], ...] = (
        ("resting force", report.rest_force_n), ("involuntary force", report.involuntary_force_n),
        ("frequency", report.crossing_hz),
    )  # fmt: skip
    figures |= {figure for figure, one in told if _stands_in(one)}
    if straight:
        figures.add("fall-off")
    if site.spasm is not None and len(site.spasm.peak_n) == 1:
        figures.add("spasms")
    if not reach_read:
        figures.add("movement range")
    force_up = _up([direction.force_n for direction in report.directions])
    reach_up = _up([direction.reach_m for direction in report.directions]) if reach_read else np.ones_like(force_up)
    if max(force_up.max(), reach_up.max()) > 1:
        figures.add("directions")
    return Unread(frozenset(figures), force_up, reach_up)


def _stands_in(estimate: Estimate) -> bool:
    return estimate.n == 0 and estimate.assumed is not None


def _up(estimates: Sequence[Estimate]) -> Array:
    """How many times more each may be, where it was not read."""
    return np.array(
        [
            estimate.upper / estimate.number if _stands_in(estimate) and estimate.has_interval else 1.0
            for estimate in estimates
        ]
    )


def _force_readings(site: Site, step: float) -> tuple[cap.Readings, list[Finding]]:
    findings: list[Finding] = []
    readings = cap.Readings.of([(reading.direction_rad, reading.force_n) for reading in site.reading], step)
    if site.gauge_limit_n:
        ends = tuple(r.direction_rad for r in site.reading if any(f >= site.gauge_limit_n for f in r.force_n))
        if ends:
            text = message(AbilityFindings.end_of_gauge, directions_rad=ends, limit_n=site.gauge_limit_n)
            findings.append(Finding("fault", "end_of_the_gauge", text))
    zeros = tuple(r.direction_rad for r in site.reading if any(f == 0 for f in r.force_n))
    if zeros:
        if not step and not any(f > 0 for r in site.reading for f in r.force_n):
            raise BadInput(
                Problem(
                    ("player.toml", message(FilePlaces.named, key=Name("site"), name=Name(site.name)), "force"),
                    message(StickProblems.found, what="all_zero"),
                    message(StickProblems.expected, what="one_force"),
                    message(StickProblems.remedy, what="gauge_step"),
                )
            )
        instead = message(StandIns.half_step) if step else message(StandIns.half_smallest)
        text = message(AbilityFindings.zero_force, directions_rad=zeros, instead=instead)
        findings.append(Finding("query", "zero_force", text))
    if site.gauge_no_load_n is not None and len(readings.direction_rad):
        least = float(np.exp(readings.log_means).min())
        if abs(site.gauge_no_load_n) > 0.1 * least:
            text = message(AbilityFindings.gauge_zero, no_load_n=site.gauge_no_load_n)
            findings.append(Finding("query", "gauge_zero", text))
    return readings, findings


def _brackets(
    site: Site, tried: Mapping[int, TriedStick], forces: cap.Readings, reaches: cap.Readings, step: float
) -> dict[float, Bracket]:
    """Directions to be read off the sticks: those tried there, where the gauge did not do."""
    results: dict[float, list[StickResult]] = {}
    for place, entry in enumerate(site.on_stick):
        if entry.direction_rad is not None and entry.reached_share and place in tried:
            stick = tried[place]
            phi = round(entry.direction_rad % (2 * math.pi), 6) % round(2 * math.pi, 6)
            results.setdefault(phi, []).append(
                StickResult(
                    stick.start_force_n, stick.full_force_n, stick.travel_m, stick.height_m, entry.reached_share
                )
            )
    out = {}
    for phi, found in results.items():
        gauged = [
            float(value)
            for direction, values in zip(forces.direction_rad, forces.repeats, strict=True)
            if abs(direction - phi) < 1e-5
            for value in values
        ]
        if gauged and min(gauged) >= 10 * step:
            continue  # the gauge is fine enough and is nearer to the truth than the sticks
        taped = [
            float(value)
            for direction, values in zip(reaches.direction_rad, reaches.repeats, strict=True)
            if abs(direction - phi) < 1e-5
            for value in values
        ]
        out[phi] = bracket(found, COMFORT[site.part], force_n=gauged, reach_m=taped, gauge_step_n=step)
    return out


def _with_brackets(
    readings: cap.Readings, brackets: Mapping[float, Bracket], first: int, scatter: float
) -> cap.Readings:
    """Bracketed directions as one reading each, whose own uncertainty repeats do not lessen."""
    if not brackets:
        return readings
    keep = [k for k, phi in enumerate(readings.direction_rad) if not any(abs(phi - b) < 1e-5 for b in brackets)]
    directions, repeats, extra = (
        list(readings.direction_rad[keep]),
        [readings.repeats[k] for k in keep],
        list(readings.extra_sd[keep]),
    )
    for phi, found in brackets.items():
        moments = found.log_moments()
        directions.append(phi)
        repeats.append(np.array([math.exp(moments[first])]))
        extra.append(math.sqrt(max(moments[first + 1] ** 2 - scatter**2, 1e-6)))
    order = np.argsort(directions)
    visit = np.zeros((len(directions), len(directions)))
    visit[: len(keep), : len(keep)] = readings.visit_cov[np.ix_(keep, keep)]
    return cap.Readings(
        np.array(directions)[order],
        tuple(repeats[k] for k in order),
        np.array(extra)[order],
        visit[np.ix_(order, order)],
    )


def _of(readings: cap.Readings, phi: float) -> tuple[float, ...]:
    for direction, values in zip(readings.direction_rad, readings.repeats, strict=True):
        if abs((direction - phi + math.pi) % (2 * math.pi) - math.pi) < 1e-5:
            return tuple(float(value) for value in values)
    return ()


def _read(site: Site, phi: float, what: Literal["force_n", "reach_m"]) -> tuple[float, ...]:
    """Readings of a direction as they were taken, a 0 as 0."""
    return tuple(
        float(value)
        for reading in site.reading
        if abs(math.remainder(reading.direction_rad - phi, 2 * math.pi)) < 1e-5
        for value in getattr(reading, what)
    )


def _direction_reports(
    site: Site,
    grid: Array,
    read: tuple[cap.Readings, cap.Readings],
    rounds: tuple[cap.Round, cap.Round],
    brackets: Mapping[float, Bracket],
    days: DaySpread,
) -> tuple[DirectionCapability, ...]:
    """Each direction of the grid; `read` and `rounds` are those of the force, then of the reach."""
    (forces, reaches), (force_round, reach_round) = read, rounds
    f_counts = {k: len(_of(forces, float(phi))) for k, phi in enumerate(grid)}
    d_counts = {k: len(_of(reaches, float(phi))) for k, phi in enumerate(grid)}
    told = len(reaches.direction_rad) or brackets
    no_reach = None if told else message(EstimateNotes.usual_range, part=site.part)
    f_all = list(force_round.estimates(f_counts))
    d_all = list(reach_round.estimates(d_counts, no_reach))
    for phi, found in brackets.items():
        place = grid_place(grid, phi)
        n = sum(
            len(e.reached_share)
            for e in site.on_stick
            if e.direction_rad is not None and abs(e.direction_rad % (2 * math.pi) - phi) < 1e-5
        )
        f_all[place], d_all[place] = found.estimates(n)
    for k, phi in enumerate(grid):
        if f_all[k].assumed is None and 0.0 in _read(site, float(phi), "force_n"):
            f_all[k] = replace(f_all[k], assumed=message(EstimateNotes.zero_read))
    out = []
    for k, phi in enumerate(grid):
        width = 0.5 * math.log(f_all[k].upper / f_all[k].lower)
        measured = f_counts[k] > 0 or any(abs(phi - b) < 1e-5 for b in brackets)
        status = "enough" if width < ENOUGH else "nearly" if width < NEARLY else "not enough"
        out.append(
            DirectionCapability(
                direction_rad=float(phi),
                force_n=f_all[k],
                reach_m=d_all[k],
                force_other_day_n=on_another_day(f_all[k], days),
                measured_force_n=_read(site, float(phi), "force_n"),
                measured_reach_m=_read(site, float(phi), "reach_m"),
                status=status if measured else "not measured",  # type: ignore[arg-type]
            )
        )
    return tuple(out)


def _scatter_estimate(scatter: float, df: int, n: int) -> Estimate:
    if not df:
        return Estimate.unbounded(
            scatter, message(EstimateNotes.nothing_repeated), n=n, assumed=message(EstimateNotes.usual_scatter)
        )
    from scipy import stats

    ends = [scatter * math.sqrt(df / float(stats.chi2.ppf(share, df))) for share in (0.975, 0.025)]
    return Estimate(scatter, ends[0], ends[1], 0.95, n)
