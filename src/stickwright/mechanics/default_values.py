"""What is known beside force and reach, and the figure that stands in where nobody measured.

Every stand-in is marked twice: in the estimate's `assumed`, and as an `Assumption` that names the reading which
would replace it.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.ability_findings import AbilityFindings
from stickwright.codes.estimate import Estimate
from stickwright.codes.estimate_notes import EstimateNotes
from stickwright.codes.message import Message, Name, message
from stickwright.codes.problems import Problems
from stickwright.codes.stand_ins import Quantity, StandIns
from stickwright.errors import BadInput
from stickwright.mechanics import capability as cap
from stickwright.mechanics.force_from_trials import SHARE_SD, TriedStick, limb_stiffness
from stickwright.mechanics.unread import MEASURE
from stickwright.model.fit import Assumption
from stickwright.model.parts import COMFORT
from stickwright.model.player import Site
from stickwright.model.recorded import Finding

__all__ = [
    "USUAL_COMFORTABLE_OF_MAXIMAL", "Steadiness", "direction_assumptions", "effort_assumptions", "grid_place",
    "has_positive_interval", "limb_stiffness_of", "lognormal", "noise_and_fall_off", "percent", "shaken_force",
]  # fmt: skip

Array = NDArray[np.float64]

USUAL_COMFORTABLE_OF_MAXIMAL = 0.5
"""Comfortable over maximal force where nobody measured it: common practice, no source."""
USUAL_NOISE_SHARE = 0.05
"""Unsteadiness of a push as a share of it, where nobody measured it: common practice, no source."""


@dataclass(frozen=True)
class Steadiness:
    """What recordings told of unsteadiness; None where they did not.

    Parameters
    ----------
    force_n, crossing_hz : Estimate or None
        Involuntary force, rms per axis, and its zero-crossing frequency.
    noise_share : Estimate or None
        Scatter of a kept push as a share of it.
    """

    force_n: Estimate | None = None
    crossing_hz: Estimate | None = None
    noise_share: Estimate | None = None


def direction_assumptions(
    site: Site,
    forces: cap.Readings,
    reaches: cap.Readings,
    degrees_of_freedom: tuple[int, int],
    bracketed_rad: Sequence[float],
    grid_rad: Array,
) -> list[Assumption]:
    """What stands in for force and reach readings that were not taken or not repeated.

    Parameters
    ----------
    site : Site
    forces, reaches : Readings
        What was read.
    degrees_of_freedom : pair of int
        Of the scatter of a force and of a reach reading; 0 when it is assumed.
    bracketed_rad : sequence of float
        Directions worked out from the tried sticks.
    grid_rad : array, shape (k,)
        Directions judged.
    """
    f_df, d_df = degrees_of_freedom
    out = []
    at = (Name(site.name),)
    zeros = tuple(r.direction_rad for r in site.reading if 0.0 in r.force_n)
    if zeros:
        out.append(
            Assumption(
                message(StandIns.zero_force, directions_rad=zeros, sites=at),
                message(StandIns.half_step) if site.gauge_step_n else message(StandIns.half_smallest),
                message(StandIns.zero_was_read), message(StandIns.finer_gauge),
            )
        )  # fmt: skip
    if len(forces.direction_rad) and not f_df:
        out.append(
            Assumption(
                message(StandIns.scatter, what="force", sites=at),
                message(StandIns.share, value_share=cap.ASSUMED_SCATTER), _scatter_unknown(forces),
                message(StandIns.three_each),
            )
        )  # fmt: skip
    if len(reaches.direction_rad) and not d_df:
        out.append(
            Assumption(
                message(StandIns.scatter, what="reach", sites=at),
                message(StandIns.share, value_share=cap.ASSUMED_SCATTER), _scatter_unknown(reaches),
                message(StandIns.more_reach),
            )
        )  # fmt: skip
    return out + _read_off(site, forces, reaches, bracketed_rad, grid_rad)


def _scatter_unknown(readings: cap.Readings) -> Message:
    return message(StandIns.repeats_alike) if (readings.counts > 1).any() else message(StandIns.read_once)


def _read_off(
    site: Site, forces: cap.Readings, reaches: cap.Readings, bracketed_rad: Sequence[float], grid: Array
) -> list[Assumption]:
    """Directions whose force or reach stands for something nobody read: bracketed, or read off the neighbours."""
    out, at = list[Assumption](), (Name(site.name),)
    if bracketed_rad:
        out.append(
            Assumption(
                message(StandIns.bracketed, directions_rad=tuple(sorted(bracketed_rad)), sites=at),
                message(StandIns.from_tried), message(StandIns.gauge_not_fine, scatter_share=SHARE_SD),
                message(StandIns.gauge_and_tape),
            )
        )  # fmt: skip
    both: tuple[tuple[Quantity, cap.Readings], ...] = (("force", forces), ("reach", reaches))
    for what, readings in both:
        known = [*readings.direction_rad, *bracketed_rad]
        apart = [min((abs(math.remainder(phi - other, 2 * math.pi)) for other in known), default=9.0) for phi in grid]
        unread = tuple(float(phi) for phi, gap in zip(grid, apart, strict=True) if gap > 1e-5)
        if not known:
            band = COMFORT[site.part]
            out.append(
                Assumption(
                    message(StandIns.movement_range, sites=at),
                    message(StandIns.range_about, low_m=band.travel_low_m, high_m=band.travel_high_m),
                    message(StandIns.usual_range_of, part=site.part), message(StandIns.range_by_tape),
                )
            )  # fmt: skip
        elif unread:
            out.append(
                Assumption(
                    message(StandIns.unread_directions, what=what, directions_rad=unread, sites=at),
                    message(StandIns.from_neighbours), message(StandIns.wider_there),
                    message(StandIns.read_there, what=what),
                )
            )  # fmt: skip
    return out


def effort_assumptions(site: Site, findings: list[Finding]) -> list[Assumption]:
    """What stands in for the largest force and for the peaks of spasms.

    Parameters
    ----------
    site : Site
    findings : list of Finding
        Spasms and tried sticks that cannot be counted are added here.
    """
    out, at = list[Assumption](), (Name(site.name),)
    if site.comfortable_of_maximal_share is None:
        out.append(
            Assumption(
                message(StandIns.comfortable_share, sites=at),
                message(StandIns.share, value_share=USUAL_COMFORTABLE_OF_MAXIMAL),
                message(StandIns.largest_not_measured), message(StandIns.team_figure),
            )
        )  # fmt: skip
    if site.spasm is not None and len(site.spasm.peak_n) == 1:
        out.append(
            Assumption(
                message(StandIns.spasm_force, sites=at),
                message(StandIns.spasms_evenly, most_n=site.spasm.peak_n[0]),
                message(StandIns.strongest_only), MEASURE["spasms"],
            )
        )  # fmt: skip
    if site.spasm is not None and not site.spasm.peak_n:
        findings.append(Finding("fault", "spasms", message(AbilityFindings.spasms_without_force)))
    for entry in site.on_stick:
        if entry.direction_rad is None and entry.reached_share:
            undirected = message(AbilityFindings.no_direction, stick=Name(entry.stick))
            findings.append(Finding("query", "no_direction", undirected))
    return out


def percent(share: float) -> str:
    """A share in whole per cent, as everywhere in the plan.

    Parameters
    ----------
    share : float

    Examples
    --------
    >>> percent(0.1234)
    '12 %'
    """
    return f"{100 * share:.0f} %"


def lognormal(rng: np.random.Generator, middle: float, log_sd: float, draws: int) -> Array:
    """Draws about a middle figure, which is the first of them.

    Parameters
    ----------
    rng : numpy Generator
    middle, log_sd : float
    draws : int
    """
    values = middle * np.exp(log_sd * rng.standard_normal(draws))
    values[0] = middle
    return values


def has_positive_interval(estimate: Estimate) -> bool:
    """Whether an interval can be put on a log scale.

    Parameters
    ----------
    estimate : Estimate
    """
    return estimate.has_interval and estimate.lower > 0


def limb_stiffness_of(
    site: Site,
    tried: Mapping[int, TriedStick],
    force: Array,
    reach: Array,
    rng: np.random.Generator,
    draws: int,
    *,
    assumptions: list[Assumption],
    findings: list[Finding],
) -> tuple[Estimate, Array]:
    """The limb's own stiffness (N/m) and its draws: typed, else from tremor on two tried sticks, else the usual figure.

    Parameters
    ----------
    site : Site
    tried : mapping of int to TriedStick
        For each place in ``site.on_stick``, the stick's figures.
    force, reach : array, shape (k,)
        Best single figures: 0.7 of their ratio stands in.
    rng : numpy Generator
    draws : int
    assumptions : list of Assumption
        Stand-ins are added here.
    findings : list of Finding
        Why two tremor figures do not tell the stiffness is added here.
    """
    if site.limb_stiffness_n_per_m is not None:
        value = site.limb_stiffness_n_per_m
        return Estimate.unbounded(value, message(EstimateNotes.one_figure)), lognormal(rng, value, 0.2, draws)
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
            findings.append(
                Finding(
                    "fault",
                    "limb_stiffness",
                    message(
                        AbilityFindings.limb_stiffness_refused,
                        site=Name(site.name),
                        problem=message(
                            Problems.sentences, parts=tuple(problem.sentence for problem in refused.problems)
                        ),
                    ),
                )
            )
        else:
            return found, lognormal(
                rng, found.number, max(0.05, math.log(found.upper / found.lower) / (2 * 1.96)), draws
            )
    value = 0.7 * float(np.median(force / reach))
    assumptions.append(
        Assumption(
            message(StandIns.limb_stiffness, sites=(Name(site.name),)),
            message(StandIns.usual_stiffness, stiffness_n_per_m=value, within_factor=2.0),
            message(StandIns.usual_stiffness_rule), message(StandIns.two_sticks),
        )
    )  # fmt: skip
    return (
        Estimate(value, value / 2, value * 2, 0.95, 0, assumed=message(EstimateNotes.usual_stiffness)),
        lognormal(rng, value, 0.35, draws),
    )


def shaken_force(site: Site, tried: Mapping[int, TriedStick], limb_n_per_m: Estimate) -> Estimate | None:
    """Involuntary force (N, rms per axis) from how much the tried sticks shook; None when that was not noted.

    Below about 3 Hz an involuntary force moves stick and limb by force/(stick + limb).

    Parameters
    ----------
    site : Site
    tried : mapping of int to TriedStick
        For each place in ``site.on_stick``, the stick's figures.
    limb_n_per_m : Estimate
        The limb's own stiffness, whose interval widens this one.
    """
    shaken = [
        (tried[k].stiffness_n_per_m, value)
        for k, entry in enumerate(site.on_stick)
        for value in entry.tremor_m
        if k in tried and value > 0
    ]
    if not shaken:
        return None

    def force(limb: float) -> Array:
        return np.array([value * (stick + limb) for stick, value in shaken])

    middle = force(limb_n_per_m.number)
    spread = cap.ASSUMED_SCATTER if len(shaken) < 3 else float(np.log(middle).std(ddof=1))
    half = math.exp(2 * spread / math.sqrt(len(shaken)))
    low, high = (
        (limb_n_per_m.lower, limb_n_per_m.upper)
        if has_positive_interval(limb_n_per_m)
        else (limb_n_per_m.number / 1.5, limb_n_per_m.number * 1.5)
    )
    return Estimate(
        float(np.exp(np.log(middle).mean())), float(np.exp(np.log(force(low)).mean())) / half,
        float(np.exp(np.log(force(high)).mean())) * half, 0.95, len(shaken),
        assumed=message(EstimateNotes.shaken),
    )  # fmt: skip


def noise_and_fall_off(
    site: Site,
    force_round: cap.Round,
    reach_round: cap.Round,
    assumptions: list[Assumption],
    recorded: Steadiness,
) -> tuple[Estimate, float | None]:
    """Unsteadiness of a push as a share of it, and the power of the fall-off of force along the reach (None: not read).

    Parameters
    ----------
    site : Site
    force_round, reach_round : Round
        Ability round the circle, to compare the readings along the reach with.
    assumptions : list of Assumption
        Stand-ins are added here.
    recorded : Steadiness
        What holds on a tried stick told.
    """
    at = (Name(site.name),)
    if site.force_noise_share is not None:
        noise = Estimate.unbounded(site.force_noise_share, message(EstimateNotes.one_figure))
    elif recorded.noise_share is not None:
        noise = recorded.noise_share
    else:
        usual = message(StandIns.noise_share, value_share=USUAL_NOISE_SHARE)
        noise = Estimate.unbounded(USUAL_NOISE_SHARE, message(EstimateNotes.not_measured), n=0, assumed=usual)
        assumptions.append(
            Assumption(
                message(StandIns.push_noise, sites=at), usual, message(StandIns.noise_grows),
                message(StandIns.half_and_full),
            )
        )  # fmt: skip
    powers = []
    for entry in site.along:
        place = grid_place(force_round.direction_rad, entry.direction_rad)
        full, far = math.exp(force_round.log_mean[place]), math.exp(reach_round.log_mean[place])
        for value in entry.force_n:
            kept, way = value / full, entry.at_reach_m / far
            if 0.05 < way < 0.95 and 0.02 < kept < 0.98:
                powers.append(math.log(1 - kept) / math.log(way))
    if powers:
        return noise, float(np.clip(np.median(powers), 0.3, 4.0))
    assumptions.append(
        Assumption(
            message(StandIns.fall_off, sites=at), message(StandIns.straight),
            message(StandIns.near_the_ends) if site.along else message(StandIns.centre_only),
            MEASURE["fall-off"],
        )
    )  # fmt: skip
    return noise, None


def grid_place(grid: Array, phi: float) -> int:
    """Place of the direction of the grid nearest to `phi`.

    Parameters
    ----------
    grid : array, shape (k,)
        Radian.
    phi : float
        Radian.

    Examples
    --------
    >>> grid_place(np.array([0.0, 1.6, 3.1, 4.7]), -0.1)
    0
    """
    return int(np.argmin(np.abs((grid - phi + math.pi) % (2 * math.pi) - math.pi)))
