"""Each figure's data as table rows and one sentence: for those who cannot see the figure, and for checking it.

The functions bear the names of the figures in `stickwright.report.figures` and take the same results.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal, Protocol

import numpy as np
from numpy.typing import NDArray

from stickwright.catalogue import say
from stickwright.codes.estimate import Estimate
from stickwright.codes.figure_tables import Benched, Column, FigureTables, Step
from stickwright.codes.filters import FilterFrequency, FilterNumber, Filters
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.setups import Setups
from stickwright.model.bench import BenchResult
from stickwright.model.fit import Fit
from stickwright.model.plan import Capability, SitePlan
from stickwright.model.recorded import TraceReport
from stickwright.model.response import FilterChoice, Tuning
from stickwright.report.printed import (
    ASSUMED,
    centre_words,
    clause,
    percent,
    plain,
    sentence,
    share,
    shown,
    sided,
)
from stickwright.report.tell import tell

if TYPE_CHECKING:
    from stickwright.model.fit import DirectionFit

__all__ = [
    "Able", "FigureTable", "bench", "best_note", "capability_polar", "curve", "day_note", "effort_words", "force_travel",
    "limiting_sentence", "main_directions", "range_words", "ranking", "reach_polygon", "shown_fits", "toward",
    "trace_overview", "tuning_before_after", "tuning_numbers", "verdict_of",
]  # fmt: skip

_TIE_BITS = 0.15
"""From there one stick counts as better than another: that of `stickwright.mechanics.site_inputs.Rules`."""

_WIDENED = 1.05
"""Gain from which a direction is named by itself: less is within what a push differs from the next."""


@dataclass(frozen=True)
class FigureTable:
    """What a figure shows, in rows.

    Parameters
    ----------
    caption : str
        What the rows are, with the site.
    columns : tuple of str
        Headers, units in the cells.
    rows : tuple of tuple of str
        One text a cell.
    alt : str
        The figure in one sentence: what it shows and what is to be seen in it.
    """

    caption: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    alt: str


def shown_fits(site: SitePlan, most: int = 4) -> tuple[Fit, ...]:
    """The fits drawn over the player's ability: the best first, never more than can be told apart.

    Parameters
    ----------
    site : SitePlan
        One site of the plan.
    most : int, default 4
        How many at most.
    """
    return site.fits[:most]


def main_directions(site: SitePlan, most: int = 2) -> tuple[float, ...]:
    """The directions worth a figure: the weakest of the best set-up, then the most used, then the weakest push.

    Parameters
    ----------
    site : SitePlan
        One site of the plan.
    most : int, default 2
        How many at most.

    Returns
    -------
    tuple of float
        Radians, no direction twice.
    """
    weights = site.demand.direction_weights
    by_use = sorted(range(len(weights)), key=lambda step: -weights[step])
    most_used = [site.capability.directions[step].direction_rad for step in by_use]
    weakest = [site.fits[0].weakest_rad] if site.fits else []
    order = [*weakest, *most_used[:1], site.capability.weakest_rad, *most_used[1:]]
    return tuple(dict.fromkeys(order))[:most]


class Able(Protocol):
    """A site with its ability: a site of a plan, or one that is still being measured."""

    @property
    def name(self) -> str: ...

    @property
    def capability(self) -> Capability: ...


def day_note(able: Capability) -> str:
    """Which day the forces are of, and what another day may bring where the player is weakest."""
    weakest = next((one for one in able.directions if one.direction_rad == able.weakest_rad), able.directions[0])
    other = weakest.force_other_day_n
    if not other.has_interval:
        return tell(FigureTables.rested)
    return tell(
        FigureTables.other_day, direction_rad=weakest.direction_rad, low=plain(other.lower, "n"), high=plain(other.upper, "n"),
        own=any(one.about == "own_days" for one in able.findings),
    )  # fmt: skip


def best_note() -> str:
    """What the chance beside each stick means."""
    return tell(FigureTables.best_note, tie_bits=_TIE_BITS)


def toward(direction_rad: float) -> str:
    """A direction of the player, in a cell."""
    return tell(FigureTables.direction, direction_rad=direction_rad)


def verdict_of(fit: Fit) -> Message:
    """Whether a set-up fits, and that it is to be confirmed where that hangs on figures nobody measured."""
    confirm = bool(fit.doubts) and fit.verdict != "does not fit"
    return message(FigureTables.verdict, verdict=fit.verdict, confirm=confirm)


def _columns(*columns: Column) -> tuple[str, ...]:
    return tuple(tell(FigureTables.column, column=one) for one in columns)


def capability_polar(site: Able) -> FigureTable:
    """Comfortable force and movement range per direction."""
    able = site.capability
    rows = tuple(
        (
            toward(one.direction_rad),
            shown(one.force_n, "n"),
            shown(one.reach_m, "mm"),
            tell(FigureTables.status, status=one.status),
            tell(FigureTables.counts, force=len(one.measured_force_n), reach=len(one.measured_reach_m)),
        )
        for one in able.directions
    )
    weakest = next((one for one in able.directions if one.direction_rad == able.weakest_rad), able.directions[0])
    strongest = max(able.directions, key=lambda one: one.force_n.number)
    alt = tell(
        FigureTables.ability_alt, site=Name(site.name), directions=len(able.directions),
        weakest_rad=weakest.direction_rad, force=shown(weakest.force_n, "n"), reach=shown(weakest.reach_m, "mm"),
        strongest_rad=strongest.direction_rad, strongest=shown(strongest.force_n, "n"),
    )  # fmt: skip
    columns = _columns("direction", "comfortable_force", "movement_range", "sufficient", "readings")
    return FigureTable(tell(FigureTables.ability, site=Name(site.name)), columns, rows, alt)


def _direction(fit: Fit, direction_rad: float) -> DirectionFit:
    return min(fit.directions, key=lambda one: abs(math.remainder(one.direction_rad - direction_rad, math.tau)))


def reach_polygon(site: SitePlan) -> FigureTable:
    """Share of travel reached per direction, on the best set-up and the second."""
    fits = site.fits[:2]
    caption = tell(FigureTables.reach, site=Name(site.name))
    if not fits:
        return FigureTable(caption, _columns("direction"), (), tell(FigureTables.none_computed, site=Name(site.name)))
    best = fits[0]
    rows = tuple(
        (toward(one.direction_rad), *(percent(_direction(fit, one.direction_rad).reach_share) for fit in fits))
        for one in best.directions
    )
    alt = tell(
        FigureTables.reach_alt, setup=best.named, site=Name(site.name), weakest_rad=best.weakest_rad,
        weakest=percent(best.weakest_share), mean_share=best.mean_share, second=fits[1].named if len(fits) > 1 else None,
    )  # fmt: skip
    return FigureTable(caption, (*_columns("direction"), *(say(fit.named) for fit in fits)), rows, alt)


def force_travel(site: SitePlan, directions: tuple[float, ...] | None = None) -> FigureTable:
    """Where the player's force and each stick's force meet, per direction."""
    chosen = main_directions(site) if directions is None else directions
    rows = []
    for direction in chosen:
        for fit in shown_fits(site):
            one = _direction(fit, direction)
            rows.append(
                (
                    toward(direction),
                    say(fit.named),
                    plain(one.start_force_n, "n"),
                    plain(one.needed_force_n, "n"),
                    plain(one.available_force_n, "n"),
                    tell(
                        FigureTables.meets, travel=shown(one.reach_travel_m, "mm"), force=plain(one.force_used_n, "n")
                    ),
                    percent(one.reach_share),
                )
            )
    best = site.fits[0] if site.fits else None
    told = None
    if best is not None and chosen:
        one = _direction(best, chosen[0])
        told = message(
            FigureTables.best_crossing, direction_rad=chosen[0], setup=best.named, reached=shown(one.reach_travel_m, "mm"),
            travel=plain(best.travel_m, "mm"), force=plain(one.force_used_n, "n"),
        )  # fmt: skip
    alt = tell(FigureTables.crossing_alt, site=Name(site.name), directions_rad=tuple(chosen), best=told)
    columns = _columns("direction", "setup", "actuation_force", "full_force", "player_has", "meet", "of_travel")
    return FigureTable(tell(FigureTables.crossing, site=Name(site.name)), columns, tuple(rows), alt)


def ranking(site: SitePlan) -> FigureTable:
    """Every stick's best set-up, ranked, with what limits it."""
    rows = tuple(
        (
            say(fit.named),
            say(verdict_of(fit)),
            tell(FigureTables.weakest, direction_rad=fit.weakest_rad, share=percent(fit.weakest_share)),
            effort_words(fit),
            tell(
                FigureTables.at_dead_zone,
                rate=shown(fit.false_per_min, "a_minute"),
                dead_zone_share=fit.dead_zone_share,
            ),
            shown(fit.bits, ""),
            tell(FigureTables.chance, chance_share=fit.probability_best),
            limiting_sentence(fit),
        )
        for fit in site.fits
    )
    alt = tell(FigureTables.none_computed, site=Name(site.name))
    if site.fits:
        first, second = site.fits[0], site.fits[1] if len(site.fits) > 1 else None
        told_second = None
        if second is not None:
            told_second = message(FigureTables.second, setup=second.named, bits=shown(second.bits, ""))
        alt = tell(
            FigureTables.ranking_alt, sticks=len(site.fits), site=Name(site.name), first=first.named, bits=shown(first.bits, ""),
            chance_share=first.probability_best, second=told_second,
        )  # fmt: skip
    columns = _columns("setup", "verdict", "weakest", "effort", "unintended", "bits", "best", "limit")
    return FigureTable(tell(FigureTables.ranking, site=Name(site.name)), columns, rows, alt)


def effort_words(fit: Fit) -> str:
    """Effort as a share of the comfortable force; no figure where it asks more than there is.

    Parameters
    ----------
    fit : Fit
        The set-up.
    """
    return tell(FigureTables.more_than_all) if fit.effort_share.number > 1.0 else percent(fit.effort_share)


def limiting_sentence(fit: Fit, with_help: bool = True) -> str:
    """What limits a set-up: the broken rules, what is to be confirmed, the nearest rule; then the one change that would help.

    Parameters
    ----------
    fit : Fit
        The set-up.
    with_help : bool, default True
        Whether to add the change that would help.
    """
    parts: list[Text] = [*fit.fails, *(one.sentence for one in fit.doubts), fit.limit]
    if fit.help and with_help:
        parts.append(message(Setups.would_help, change=fit.help))
    return " ".join(dict.fromkeys(sentence(part) for part in parts))


def tuning_numbers(tuning: Tuning) -> FigureTable:
    """The whole response in the order it is applied."""
    told: list[tuple[Step, str]] = [
        ("centre", tell(FigureTables.centre, centre=centre_words(tuning.offset_x, tuning.offset_y, "percent"))),
        ("rotation", _rotation(tuning)),
        ("range", range_words(tuning)),
        ("dead_zone", _dead_zone(tuning)),
        ("curve", clause(tuning.curve_sentence)),
    ]
    if tuning.filter is not None:
        told.append(("filter", _filter(tuning.filter)))
    if tuning.outer_limit < 1.0:
        told.append(("outer_limit", share(tuning.outer_limit)))
    stick, site = Name(tuning.stick), Name(tuning.site)
    rows = tuple((tell(FigureTables.step, step=step), setting) for step, setting in told)
    alt = tell(FigureTables.tuning_alt, stick=stick, site=site)
    return FigureTable(tell(FigureTables.tuning, stick=stick, site=site), _columns("step", "setting"), rows, alt)


def _rotation(tuning: Tuning) -> str:
    """How far the output is turned, and what to do with the base before that."""
    rotation = tuning.output_rotation_rad
    base = sentence(tuning.turn_base)
    if rotation.assumed:
        return tell(FigureTables.no_rotation, base=base)
    turned = sided(rotation, "deg", "anticlockwise", "clockwise")
    return tell(FigureTables.rotation, turned=turned, until_turned=tuning.base == "turn", base=base)


def _dead_zone(tuning: Tuning) -> str:
    """Its radius; where the output starts past it, and why there: just above the game's own dead zone."""
    own = tuning.own_dead_zone_share
    return tell(
        FigureTables.dead_zone, radius=_radius(tuning.dead_zone), starts_share=tuning.inner_jump,
        game_share=own if own and tuning.inner_jump > own else None,
    )  # fmt: skip


def _radius(dead_zone: Estimate) -> Message:
    """The radius in software, and what set it where that was not the spread of rest."""
    if dead_zone.has_interval or not dead_zone.why:
        return message(FigureTables.radius, radius=percent(dead_zone), why=None)
    mark = f", {ASSUMED}" if dead_zone.assumed else ""
    return message(FigureTables.radius, radius=f"{share(dead_zone.number)}{mark}", why=dead_zone.why)


def _filter(choice: FilterChoice) -> str:
    """The filter kept, or that there is none, with its reason."""
    return say(
        message(
            Filters.row,
            kind=choice.chosen.kind,
            settings=tuple(_setting(name, value) for name, value in choice.chosen.settings),
            lag_s=choice.chosen.lag_s,
            lag_budget_s=choice.lag_budget_s,
            reason=choice.sentence,
        )
    )


def range_words(tuning: Tuning) -> str:
    """The directions that are widened, each with its reach; the others together.

    Parameters
    ----------
    tuning : Tuning
        A finished response.
    """
    every = tuple(zip(tuning.direction_rad, tuning.range_share, tuning.gain, strict=True))
    if not every:
        return tell(FigureTables.sensitivity_unknown)
    named = [(phi, one, gain) for phi, one, gain in every if gain >= _WIDENED]
    parts = [
        message(FigureTables.widened, direction_rad=float(phi), reached=percent(one), gain_factor=float(gain))
        for phi, one, gain in named
    ]
    others = [(one.number, gain) for _, one, gain in every if gain < _WIDENED]
    if others:
        reached = [one for one, _ in others]
        parts.append(
            message(
                FigureTables.others,
                all_round=not named,
                least_share=min(reached),
                most_share=max(reached),
                gain_factor=float(max(gain for _, gain in others)),
            )
        )
    return tell(FigureTables.sensitivity, recorded=tuning.range_task, parts=tuple(parts))


_FREQUENCIES: dict[str, FilterFrequency] = {
    "cutoff_hz": "cutoff",
    "min_cutoff_hz": "min_cutoff",
    "derivative_cutoff_hz": "derivative_cutoff",
    "frequency_hz": "frequency",
}
_NUMBERS: dict[str, FilterNumber] = {"beta": "beta", "order": "order", "quality": "quality"}


def _setting(name: str, value: float) -> Message:
    """A filter's setting by its key: ``min_cutoff_hz`` becomes `minimum cut-off 1.5 Hz`."""
    if name in _FREQUENCIES:
        return message(Filters.setting, setting=_FREQUENCIES[name], frequency_hz=value)
    return message(Filters.plain_setting, setting=_NUMBERS[name], value_factor=value)


def curve(tuning: Tuning) -> FigureTable:
    """Output against deflection."""
    rows = tuple((share(a), share(b)) for a, b in zip(tuning.curve_in, tuning.curve_out, strict=True))
    stick = Name(tuning.stick)
    alt = tell(
        FigureTables.curve_alt, stick=stick, dead_zone=percent(tuning.dead_zone), starts_share=tuning.inner_jump,
        told=sentence(tuning.curve_sentence),
    )  # fmt: skip
    return FigureTable(tell(FigureTables.curve, stick=stick), _columns("deflection", "output"), rows, alt)


def tuning_before_after(tuning: Tuning) -> FigureTable:
    """The player's own recording before and after the response."""
    stages: tuple[tuple[Literal["before", "after"], NDArray[np.float64]], ...] = (
        ("before", tuning.before_xy),
        ("after", tuning.after_xy),
    )
    rows = tuple(
        (
            tell(FigureTables.stage, stage=stage),
            plain(float(abs(xy[:, 0]).max()), "percent"),
            plain(float(abs(xy[:, 1]).max()), "percent"),
        )
        for stage, xy in stages
        if len(xy)
    )
    recording = Name(tuning.shown_recording)
    alt = tell(
        FigureTables.before_after_alt, recording=recording, stick=Name(tuning.stick), target=tuning.shown_target_xy is not None
    )  # fmt: skip
    columns = _columns("recording", "sideways", "fore_and_aft")
    return FigureTable(tell(FigureTables.before_after, recording=recording), columns, rows, alt)


def trace_overview(report: TraceReport) -> FigureTable:
    """Where the stick rested and how far it got in one recording."""
    rows: list[tuple[str, str]] = []
    unit = "percent" if report.unit == "share" else ""
    if report.rest is not None:
        rows.append((tell(FigureTables.rest), centre_words(report.rest.offset_x, report.rest.offset_y, unit)))
    weakest = None
    if report.reach is not None:
        rows += [
            (tell(FigureTables.reach_in, direction_rad=float(phi)), shown(reached, unit))
            for phi, reached in zip(report.reach.direction_rad, report.reach.reach, strict=True)
        ]
        least = shown(min(report.reach.reach, key=lambda one: one.number), unit)
        weakest_rad = float(report.reach.weakest_rad)
        weakest = message(FigureTables.weakest_reach, direction_rad=weakest_rad, reached=least)
    recording = Name(report.name)
    alt = tell(FigureTables.recording_alt, recording=recording, time_s=report.duration_s, weakest=weakest)
    return FigureTable(tell(FigureTables.recording, recording=recording), _columns("what", "value"), tuple(rows), alt)


def bench(result: BenchResult) -> FigureTable:
    """Force, travel and friction of a benched stick."""
    line = result.pooled
    told: list[tuple[Benched, str]] = [
        ("actuation_force", shown(line.start_force_n, "n")),
        ("full_force", shown(line.full_force_n, "n")),
        ("friction", shown(result.friction_force_n, "n")),
        ("travel", shown(result.travel_m, "mm")),
        ("contact_height", plain(result.height_m, "mm")),
        ("angle", plain(result.max_angle_rad, "deg")),
    ]
    if result.output is not None:
        of_travel: tuple[tuple[Benched, Estimate], ...] = (
            ("full_output", result.output.full_output_share),
            ("dead_travel", result.output.dead_share),
        )
        told += [(figure, tell(FigureTables.of_travel, share=percent(one))) for figure, one in of_travel]
    rows = tuple((tell(FigureTables.benched, figure=figure), value) for figure, value in told)
    alt = tell(
        FigureTables.bench_alt, stick=Name(result.name), used=sum(one.used for one in result.readings),
        readings=len(result.readings), start=shown(line.start_force_n, "n"), full=shown(line.full_force_n, "n"),
        returns=sentence(result.returns),
    )  # fmt: skip
    return FigureTable(tell(FigureTables.bench, stick=Name(result.name)), _columns("what", "value"), rows, alt)
