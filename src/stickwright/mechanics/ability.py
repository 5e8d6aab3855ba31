"""One site's ability, put together from whatever was read: estimates for people, draws for the fits."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.errors import BadInput
from stickwright.mechanics import capability as cap
from stickwright.mechanics.bracket import Bracket, StickResult, bracket, limb_stiffness
from stickwright.model.estimate import Estimate
from stickwright.model.parts import COMFORT
from stickwright.model.plan import Assumption, Capability, DirectionCapability, direction_words
from stickwright.model.player import Site
from stickwright.model.recorded import Finding

__all__ = ["Ability", "TriedStick", "ability"]

Array = NDArray[np.float64]

ENOUGH, NEARLY = 0.22, 0.45
"""Half-width of the log interval of the force below which a direction is 'enough' or 'nearly' known: common practice."""


UNREAD_REST_SHARE = 0.05
"""Spread of a resting force nobody read, as a share of the comfortable force: assumed; lets the chances show it."""


@dataclass(frozen=True)
class TriedStick:
    """A benched stick as it was tried: figures at the contact point with what was on it."""

    start_force_n: float
    full_force_n: float
    travel_m: float
    height_m: float

    @property
    def stiffness_n_per_m(self) -> float:
        return (self.full_force_n - self.start_force_n) / self.travel_m


@dataclass(frozen=True, eq=False)
class Ability:
    """Draws of everything a fit needs of one site; draw 0 is the best single figure.

    Parameters
    ----------
    direction_rad : array, shape (k,)
        Directions judged.
    force_n, reach_m : array, shape (draws, k)
    rest_force_n, involuntary_n, crossing_hz, limb_stiffness_n_per_m : array, shape (draws,)
    force_noise_share, fall_off : float
    rest_direction_rad : float or None
    spasm_rate_per_s, spasm_peak_n
        Rate and the peaks read; rate 0 when none.
    report : Capability
        The same for people.
    assumptions : tuple of Assumption
    """

    direction_rad: Array
    force_n: Array
    reach_m: Array
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


def ability(
    site: Site,
    rng: np.random.Generator,
    draws: int,
    *,
    tried: Mapping[int, TriedStick] | None = None,
    recorded_involuntary: tuple[Estimate, Estimate] | None = None,
    lightest_stick: str | None = None,
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
    recorded_involuntary : pair of Estimate, optional
        Involuntary force (N, rms per axis) and its mean frequency from a recording; a typed figure wins.
    lightest_stick : str, optional
        Offered as a gauge when the gauge is too coarse.

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
    d_scatter, d_df, noticed = cap.pooled_scatter(reaches)
    findings += [Finding(f.level, f.about, f"Reach: {f.text}") for f in noticed]
    d_band = (math.log(comfort.travel_low_m), math.log(comfort.travel_high_m))
    d_prior = (0.5 * sum(d_band), 3.0 if len(reaches.direction_rad) else (d_band[1] - d_band[0]) / 4)
    findings += cap.expected_from_others(
        reaches, d_scatter, d_df, prior_log_mean=d_prior[0], prior_log_sd=d_prior[1], what="reach"
    )
    force_round = cap.round_the_circle(
        _with_brackets(forces, brackets, 0, f_scatter),
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
        place = _place(grid, phi)
        force[1:, place], reach[1:, place] = found.draws(rng, draws - 1)
        force[0, place], reach[0, place] = (estimate.value for estimate in found.estimates(1))
    directions = _direction_reports(site, grid, forces, reaches, force_round, reach_round, brackets)
    assumptions += _direction_assumptions(site, forces, reaches, f_df, d_df, directions)

    rest, rest_draws = _rest(site, float(np.median(force[0])), rng, draws, assumptions)
    sigma, crossing, sigma_draws, crossing_draws = _involuntary(
        site, float(np.median(force[0])), rng, draws, assumptions, recorded_involuntary
    )
    stiff, stiff_draws = _limb(site, tried, force[0], reach[0], rng, draws, assumptions, findings)
    noise, fall_off = _noise_and_fall_off(site, force_round, reach_round, assumptions)
    first = site.reading[0].force_n if site.reading else ()
    lost = cap.tiring([f for f in first if f > 0], [f for f in site.again_force_n if f > 0], f_scatter, f_df)
    if lost is not None and lost.value > 0.15:
        findings.append(
            Finding(
                "query",
                "tiring",
                f"The first direction, repeated last, had lost {lost.value:.0%} (95 %: {lost.low:.0%} to {lost.high:.0%}): "
                "the player tires. The plan is worked out fresh; look at the tired figure beside it and offer a rest.",
            )
        )
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
        grid, force, reach, rest_draws, sigma_draws, crossing_draws, stiff_draws, noise.value, fall_off,
        report.rest_direction_rad, site.spasm.rate_per_s if site.spasm else 0.0, site.spasm.peak_n if site.spasm else (),
        report, tuple(assumptions),
    )  # fmt: skip


def _force_readings(site: Site, step: float) -> tuple[cap.Readings, list[Finding]]:
    findings: list[Finding] = []
    readings = cap.Readings.of([(reading.direction_rad, reading.force_n) for reading in site.reading], step)
    if site.gauge_limit_n:
        ends = [
            direction_words(r.direction_rad) for r in site.reading if any(f >= site.gauge_limit_n for f in r.force_n)
        ]
        if ends:
            findings.append(
                Finding(
                    "fault",
                    "end of the gauge",
                    f"Readings {', '.join(ends)} are at the end of the gauge's scale: at least {site.gauge_limit_n:g} N, "
                    "taken as that much.",
                )
            )
    zeros = [direction_words(r.direction_rad) for r in site.reading if any(f == 0 for f in r.force_n)]
    if zeros:
        findings.append(
            Finding(
                "query",
                "zero force",
                f"A force of 0 was read {', '.join(zeros)}: taken as half the smallest amount that could be read. "
                "If the player cannot push that way, say so to the game instead (weight 0).",
            )
        )
    if site.gauge_no_load_n is not None and len(readings.direction_rad):
        least = float(np.exp(readings.log_means).min())
        if abs(site.gauge_no_load_n) > 0.1 * least:
            findings.append(
                Finding(
                    "query",
                    "gauge zero",
                    f"The gauge read {site.gauge_no_load_n:g} N without load, more than a tenth of the weakest force: "
                    "set it to zero and read again; nothing was subtracted.",
                )
            )
    return readings, findings


def _brackets(
    site: Site, tried: Mapping[int, TriedStick], forces: cap.Readings, reaches: cap.Readings, step: float
) -> dict[float, Bracket]:
    """Directions to be read off the sticks: those tried there, where the gauge did not do."""
    results: dict[float, list[StickResult]] = {}
    for place, entry in enumerate(site.on_stick):
        if entry.direction_rad is not None and entry.reached_share and place in tried:
            stick = tried[place]
            phi = round(entry.direction_rad % (2 * math.pi), 6)
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
    return cap.Readings(np.array(directions)[order], tuple(repeats[k] for k in order), np.array(extra)[order])


def _place(grid: Array, phi: float) -> int:
    return int(np.argmin(np.abs((grid - phi + math.pi) % (2 * math.pi) - math.pi)))


def _of(readings: cap.Readings, phi: float) -> tuple[float, ...]:
    for direction, values in zip(readings.direction_rad, readings.repeats, strict=True):
        if abs((direction - phi + math.pi) % (2 * math.pi) - math.pi) < 1e-5:
            return tuple(float(value) for value in values)
    return ()


def _direction_reports(
    site: Site,
    grid: Array,
    forces: cap.Readings,
    reaches: cap.Readings,
    force_round: cap.Round,
    reach_round: cap.Round,
    brackets: Mapping[float, Bracket],
) -> tuple[DirectionCapability, ...]:
    f_counts = {k: len(_of(forces, float(phi))) for k, phi in enumerate(grid)}
    d_counts = {k: len(_of(reaches, float(phi))) for k, phi in enumerate(grid)}
    no_reach = None if len(reaches.direction_rad) else f"usual band of a {site.part}: reach was not measured"
    f_all = list(force_round.estimates(f_counts))
    d_all = list(reach_round.estimates(d_counts, no_reach))
    for phi, found in brackets.items():
        place = _place(grid, phi)
        n = sum(
            len(e.reached_share)
            for e in site.on_stick
            if e.direction_rad is not None and abs(e.direction_rad % (2 * math.pi) - phi) < 1e-5
        )
        f_all[place], d_all[place] = found.estimates(n)
    out = []
    for k, phi in enumerate(grid):
        width = 0.5 * math.log(f_all[k].high / f_all[k].low)
        measured = f_counts[k] > 0 or any(abs(phi - b) < 1e-5 for b in brackets)
        status = "enough" if width < ENOUGH else "nearly" if width < NEARLY else "not enough"
        out.append(
            DirectionCapability(
                float(phi),
                f_all[k],
                d_all[k],
                _of(forces, float(phi)),
                _of(reaches, float(phi)),
                status if measured else "not measured",  # type: ignore[arg-type]
            )  # fmt: skip
        )
    return tuple(out)


def _direction_assumptions(
    site: Site,
    forces: cap.Readings,
    reaches: cap.Readings,
    f_df: int,
    d_df: int,
    directions: tuple[DirectionCapability, ...],
) -> list[Assumption]:
    out = []
    if len(forces.direction_rad) and not f_df:
        out.append(
            Assumption(
                f"Scatter of a force reading at {site.name}", f"{cap.ASSUMED_SCATTER:.0%}",
                "no direction was read twice", "three readings in each direction",
            )
        )  # fmt: skip
    if len(reaches.direction_rad) and not d_df:
        out.append(
            Assumption(
                f"Scatter of a reach reading at {site.name}", f"{cap.ASSUMED_SCATTER:.0%}",
                "no reach was read twice", "two or three reach readings in the weakest directions",
            )
        )  # fmt: skip
    if not len(reaches.direction_rad) and not site.on_stick:
        out.append(
            Assumption(
                f"Free reach at {site.name}",
                f"{directions[0].reach_m.value * 1e3:.0f} mm, anywhere from {directions[0].reach_m.low * 1e3:.0f} to {directions[0].reach_m.high * 1e3:.0f} mm",
                f"no reach was measured; this is the usual band of a {site.part}", "tape or dot on paper, two minutes",
            )
        )  # fmt: skip
    return out


def _scatter_estimate(scatter: float, df: int, n: int) -> Estimate:
    if not df:
        return Estimate.unbounded(scatter, "no direction was repeated", n=n, assumed="usual scatter, not measured")
    from scipy import stats

    ends = [scatter * math.sqrt(df / float(stats.chi2.ppf(share, df))) for share in (0.975, 0.025)]
    return Estimate(scatter, ends[0], ends[1], 0.95, n)


def _lognormal(rng: np.random.Generator, middle: float, log_sd: float, draws: int) -> Array:
    values = middle * np.exp(log_sd * rng.standard_normal(draws))
    values[0] = middle
    return values


def _rest(
    site: Site, usual_force: float, rng: np.random.Generator, draws: int, assumptions: list[Assumption]
) -> tuple[Estimate, Array]:
    last = site.rest[-1] if site.rest else None
    if last is None or not last.force_n:
        assumptions.append(
            Assumption(
                f"Resting force at {site.name}", "0 N", "the limb's weight on the control was not measured",
                "limb resting on a postal scale or the gauge, 10 s, three times",
            )
        )  # fmt: skip
        none = Estimate.unbounded(0.0, "resting force was not measured", n=0, assumed="no resting force")
        unsure = np.abs(UNREAD_REST_SHARE * usual_force * rng.standard_normal(draws))
        unsure[0] = 0.0
        return none, unsure
    values = np.asarray(last.force_n)
    middle = float(values.mean())
    if middle <= 0:
        return Estimate.unbounded(0.0, "every reading was 0", n=len(values)), np.zeros(draws)
    sd = float(values.std(ddof=1)) / middle if len(values) > 1 else cap.ASSUMED_SCATTER
    log_sd = max(sd, 0.02) / math.sqrt(len(values))
    return (
        Estimate(middle, middle * math.exp(-1.96 * log_sd), middle * math.exp(1.96 * log_sd), 0.95, len(values),
                 assumed=None if len(values) > 1 else "scatter of 15 % assumed"),
        _lognormal(rng, middle, log_sd, draws),
    )  # fmt: skip


def _involuntary(
    site: Site,
    usual_force: float,
    rng: np.random.Generator,
    draws: int,
    assumptions: list[Assumption],
    recorded: tuple[Estimate, Estimate] | None,
) -> tuple[Estimate, Estimate, Array, Array]:
    if site.involuntary_force_n is not None:
        sigma = Estimate.unbounded(site.involuntary_force_n, "given as one figure")
        log_sd = 0.10
    elif recorded is not None:
        sigma, log_sd = (
            recorded[0],
            max(0.05, 0.25 * math.log(recorded[0].high / recorded[0].low)) if recorded[0].has_interval else 0.2,
        )
    else:
        value = 0.03 * usual_force
        assumptions.append(
            Assumption(
                f"Involuntary force at {site.name}", f"{value:.2g} N rms, up to twice either way",
                "neither typed nor recorded: 3 % of the comfortable force is a usual figure of a steady hand",
                "20 s of holding still on a stick of known stiffness",
            )
        )  # fmt: skip
        sigma = Estimate(value, value / 2, value * 2, 0.95, 0, assumed="3 % of the comfortable force, not measured")
        log_sd = 0.35
    if site.crossing_hz is not None:
        crossing = Estimate.unbounded(site.crossing_hz, "given as one figure")
    elif recorded is not None:
        crossing = recorded[1]
    else:
        assumptions.append(
            Assumption(
                f"Mean frequency of involuntary movement at {site.name}", "1.5 Hz", "not recorded", "20 s of holding still",
            )
        )  # fmt: skip
        crossing = Estimate(1.5, 0.75, 3.0, 0.95, 0, assumed="usual figure, not measured")
    return (
        sigma, crossing, _lognormal(rng, sigma.value, log_sd, draws), _lognormal(rng, crossing.value, 0.15, draws),
    )  # fmt: skip


def _limb(
    site: Site,
    tried: Mapping[int, TriedStick],
    force: Array,
    reach: Array,
    rng: np.random.Generator,
    draws: int,
    assumptions: list[Assumption],
    findings: list[Finding],
) -> tuple[Estimate, Array]:
    if site.limb_stiffness_n_per_m is not None:
        value = site.limb_stiffness_n_per_m
        return Estimate.unbounded(value, "given as one figure"), _lognormal(rng, value, 0.2, draws)
    shaken = sorted(
        (
            (tried[k].stiffness_n_per_m, entry.tremor_m)
            for k, entry in enumerate(site.on_stick)
            if entry.tremor_m and k in tried
        ),
        key=lambda pair: pair[0],
    )
    if len(shaken) >= 2:
        try:
            found = limb_stiffness([shaken[0][1], shaken[-1][1]], [shaken[0][0], shaken[-1][0]], rng)
        except BadInput as refused:
            findings.append(Finding("fault", "limb stiffness", f"At {site.name}: {refused}"))
        else:
            return found, _lognormal(rng, found.value, max(0.05, math.log(found.high / found.low) / 4), draws)
    value = 0.7 * float(np.median(force / reach))
    assumptions.append(
        Assumption(
            f"The limb's own stiffness at {site.name}", f"{value / 1e3:.2g} N/mm, up to twice either way",
            "not measured: 0.7 of comfortable force over comfortable reach is a usual figure",
            "tremor or holding still on two sticks of different stiffness",
        )
    )  # fmt: skip
    return (
        Estimate(value, value / 2, value * 2, 0.95, 0, assumed="0.7 of comfortable force over reach, not measured"),
        _lognormal(rng, value, 0.35, draws),
    )


def _noise_and_fall_off(
    site: Site, force_round: cap.Round, reach_round: cap.Round, assumptions: list[Assumption]
) -> tuple[Estimate, float]:
    if site.force_noise_share is not None:
        noise = Estimate.unbounded(site.force_noise_share, "given as one figure")
    else:
        noise = Estimate.unbounded(0.05, "not measured", n=0, assumed="5 % of the force used")
        assumptions.append(
            Assumption(
                f"Unsteadiness of a push at {site.name}", "5 % of the force used",
                "motor noise grows with force; the share was not measured", "holding half and full on a tried stick",
            )
        )  # fmt: skip
    powers = []
    for entry in site.along:
        place = _place(force_round.direction_rad, entry.direction_rad)
        full, far = math.exp(force_round.log_mean[place]), math.exp(reach_round.log_mean[place])
        for value in entry.force_n:
            kept, way = value / full, entry.at_reach_m / far
            if 0.05 < way < 0.95 and 0.02 < kept < 0.98:
                powers.append(math.log(1 - kept) / math.log(way))
    if powers:
        return noise, float(np.clip(np.median(powers), 0.3, 4.0))
    assumptions.append(
        Assumption(
            f"Fall-off of force along the reach at {site.name}", "straight, from full force at the centre to none at the end of the reach",
            "force was read at the centre only", "force at half the reach in the two main directions",
        )
    )  # fmt: skip
    return noise, 1.0
