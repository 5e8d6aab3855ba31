"""Each figure's data as table rows and one sentence: for those who cannot see the figure, and for checking it.

The functions bear the names of the figures in `stickwright.sheet.figures` and take the same results.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, Protocol

from stickwright.catalogue import say
from stickwright.codes.filters import FilterFrequency, FilterNumber, Filters
from stickwright.codes.message import Message, Text, message
from stickwright.codes.setups import Setups
from stickwright.model.bench import BenchResult
from stickwright.model.estimate import Estimate
from stickwright.model.plan import Capability, Fit, SitePlan, direction_words
from stickwright.model.recorded import TraceReport
from stickwright.model.response import FilterChoice, Tuning
from stickwright.sheet.printed import (
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
from stickwright.units import chance_words

if TYPE_CHECKING:
    from stickwright.model.plan import DirectionFit

__all__ = [
    "BEST_NOTE", "Able", "Table", "bench", "capability_polar", "curve", "day_note", "effort_words", "force_travel", "limiting_sentence",
    "main_directions", "range_words", "ranking", "reach_polygon", "shown_fits", "trace_overview",
    "tuning_before_after", "tuning_numbers", "tuning_range",
]  # fmt: skip

BEST_NOTE = (
    "Best or as good: the chance that no other stick beats it by more than 0.15 bit. Equals count for each, so these "
    "add up to more than 100 %."
)
"""What the chance beside each stick means; the difference is that of `stickwright.mechanics.fit.Rules`."""

_WIDENED = 1.05
"""Gain from which a direction is named by itself: less is within what a push differs from the next."""


@dataclass(frozen=True)
class Table:
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
    """Which day the forces are of, and what another day may bring where the player is weakest.

    Parameters
    ----------
    able : Capability
    """
    weakest = next((one for one in able.directions if one.direction_rad == able.weakest_rad), able.directions[0])
    other = weakest.force_other_day_n
    if not other.has_interval:
        return "Forces are of a fresh player on the day of the visit."
    own = any(one.about == "own_days" for one in able.findings)
    spread = "spread from day to day as at the player's own visits" if own else "spread from day to day assumed"
    return (
        f"Forces are of a fresh player on the day of the visit. On another day the force "
        f"{direction_words(weakest.direction_rad)} may be {plain(other.lower, 'n')} to {plain(other.upper, 'n')} (95 %, "
        f"{spread}): the ranking of the sticks counts on that."
    )


def capability_polar(site: Able) -> Table:
    """Comfortable force and free reach per direction."""
    able = site.capability
    rows = tuple(
        (
            direction_words(one.direction_rad),
            shown(one.force_n, "n"),
            shown(one.reach_m, "mm"),
            one.status,
            f"{len(one.measured_force_n)} and {len(one.measured_reach_m)}",
        )
        for one in able.directions
    )
    weakest = next((one for one in able.directions if one.direction_rad == able.weakest_rad), able.directions[0])
    strongest = max(able.directions, key=lambda one: one.force_n.number)
    alt = (
        f"Two polar charts of the {site.name}, comfortable force and free reach in {len(able.directions)} directions, "
        f"with readings and 95 % bands: weakest is {direction_words(weakest.direction_rad)} with "
        f"{shown(weakest.force_n, 'n')} and {shown(weakest.reach_m, 'mm')}; strongest is "
        f"{direction_words(strongest.direction_rad)} with {shown(strongest.force_n, 'n')}."
    )
    columns = (
        "direction",
        "comfortable force",
        "free reach",
        "force readings sufficient?",
        "readings: force and reach",
    )
    return Table(f"What the {site.name} can do", columns, rows, alt)


def _direction(fit: Fit, direction_rad: float) -> DirectionFit:
    return min(fit.directions, key=lambda one: abs(math.remainder(one.direction_rad - direction_rad, math.tau)))


def reach_polygon(site: SitePlan) -> Table:
    """Share of the throw reached per direction, on the best set-up and the second."""
    fits = site.fits[:2]
    if not fits:
        return Table(f"Reach at the {site.name}", ("direction",), (), f"No set-up was computed for the {site.name}.")
    best = fits[0]
    rows = tuple(
        (direction_words(one.direction_rad), *(percent(_direction(fit, one.direction_rad).reach_share) for fit in fits))
        for one in best.directions
    )
    beside = f"; dashed beside it {fits[1].label}" if len(fits) > 1 else ""
    alt = (
        f"Polygon of the throw reached on {best.label} at the {site.name}, inside a circle of the full throw: weakest "
        f"is {direction_words(best.weakest_rad)} with {percent(best.weakest_share)}, "
        f"mean {share(best.mean_share)}{beside}."
    )
    return Table(
        f"Predicted share of the throw reached, {site.name}", ("direction", *(f.label for f in fits)), rows, alt
    )


def force_travel(site: SitePlan, directions: tuple[float, ...] | None = None) -> Table:
    """Where the player's force and each stick's force meet, per direction."""
    chosen = main_directions(site) if directions is None else directions
    rows = []
    for direction in chosen:
        for fit in shown_fits(site):
            one = _direction(fit, direction)
            rows.append(
                (
                    direction_words(direction),
                    fit.label,
                    plain(one.start_force_n, "n"),
                    plain(one.needed_force_n, "n"),
                    plain(one.available_force_n, "n"),
                    f"{shown(one.reach_travel_m, 'mm')} at {plain(one.force_used_n, 'n')}",
                    percent(one.reach_share),
                )
            )
    best = site.fits[0] if site.fits else None
    told = ""
    if best is not None and chosen:
        one = _direction(best, chosen[0])
        told = (
            f" {direction_words(chosen[0]).capitalize()} on {best.label} they meet at "
            f"{shown(one.reach_travel_m, 'mm')} of {plain(best.travel_m, 'mm')}, with {plain(one.force_used_n, 'n')}."
        )
    alt = (
        f"Force against travel at the {site.name}, {' and '.join(direction_words(phi) for phi in chosen)}: the force "
        f"the player has falls with reach, the force each stick needs rises; where they cross is how far the stick "
        f"gets.{told}"
    )
    columns = (
        "direction",
        "set-up",
        "to start",
        "at the stop",
        "player has",
        "predicted to meet at",
        "of the throw, predicted",
    )
    return Table(f"Where force and stick meet, {site.name}", columns, tuple(rows), alt)


def ranking(site: SitePlan) -> Table:
    """Every stick's best set-up, ranked, with what limits it."""
    rows = tuple(
        (
            fit.label,
            fit.verdict_words,
            f"{direction_words(fit.weakest_rad)} {percent(fit.weakest_share)}",
            effort_words(fit),
            f"{shown(fit.false_per_min, 'a_minute')} at {share(fit.dead_zone_share)}",
            shown(fit.bits, ""),
            chance_words(fit.probability_best),
            limiting_sentence(fit),
        )
        for fit in site.fits
    )
    alt = f"No set-up was computed for the {site.name}."
    if site.fits:
        first = site.fits[0]
        second = f"; second {site.fits[1].label} with {shown(site.fits[1].bits, '')}" if len(site.fits) > 1 else ""
        alt = (
            f"Bars of predicted control in bits for {len(site.fits)} sticks at the {site.name}, with intervals and the chance "
            f"that each is the best or as good: first {first.label} with {shown(first.bits, '')} bits, "
            f"{chance_words(first.probability_best)}{second}; hatched bars do not fit."
        )
    columns = ("set-up", "verdict", "predicted weakest direction", "predicted effort",
               "predicted false inputs at dead zone", "predicted bits",
               "best or as good", "what limits it")  # fmt: skip
    return Table(f"Sticks ranked, {site.name}", columns, rows, alt)


def effort_words(fit: Fit) -> str:
    """Effort as a share of the comfortable force; no figure where it asks more than there is.

    Parameters
    ----------
    fit : Fit
        The set-up.
    """
    return "more than all" if fit.effort_share.number > 1.0 else percent(fit.effort_share)


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


def tuning_numbers(tuning: Tuning) -> Table:
    """The whole response in the order it is applied."""
    rows = [
        ("centre", f"{centre_words(tuning.offset_x, tuning.offset_y, 'percent')}: taken off"),
        ("rotation", _rotation(tuning)),
        ("range", range_words(tuning)),
        ("dead zone", f"{_radius(tuning.dead_zone)}; {_starts(tuning)}"),
        ("curve", clause(tuning.curve_sentence)),
    ]
    if tuning.filter is not None:
        rows.append(("filter", _filter(tuning.filter)))
    if tuning.outer_limit < 1.0:
        rows.append(("outer limit", share(tuning.outer_limit)))
    alt = f"Numbers of the response for {tuning.stick} at the {tuning.site}, in the order they are applied."
    return Table(f"Tuning of {tuning.stick}, {tuning.site}", ("step", "setting"), tuple(rows), alt)


def _rotation(tuning: Tuning) -> str:
    """How far the output is turned, and what to do with the base before that."""
    rotation = tuning.output_rotation_rad
    base = sentence(tuning.turn_base)
    if rotation.assumed:
        return f"none. {base}"
    turned = f"output turned {sided(rotation, 'deg', 'anticlockwise', 'clockwise')}"
    return f"{turned}{' until the base is put right' if tuning.base == 'turn' else ''}. {base}"


def _starts(tuning: Tuning) -> str:
    """Where the output starts past the dead zone, and why there: just above the game's own dead zone."""
    starts = f"output starts at {share(tuning.inner_jump)}"
    own = tuning.own_dead_zone_share
    return f"{starts}, just above the game's own {share(own)}" if own and tuning.inner_jump > own else starts


def _radius(dead_zone: Estimate) -> str:
    """The radius in software, and what set it where that was not the spread of rest."""
    if dead_zone.has_interval or not dead_zone.why:
        return f"{percent(dead_zone)} of the range"
    mark = f", {ASSUMED}" if dead_zone.assumed else ""
    return f"{share(dead_zone.number)} of the range{mark}: {clause(dead_zone.why)}"


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


_RANGE_FROM = {"rim": "recorded in the rim task: ", "push": "recorded in full pushes: ", "": ""}


def range_words(tuning: Tuning) -> str:
    """The directions that are widened, each with its reach; the others together.

    Parameters
    ----------
    tuning : Tuning
        A finished response.
    """
    every = tuple(zip(tuning.direction_rad, tuning.range_share, tuning.gain, strict=True))
    if not every:
        return "not set: reach is not known all round"
    named = [(phi, one, gain) for phi, one, gain in every if gain >= _WIDENED]
    parts = [f"{direction_words(phi)} reached {percent(one)}, times {gain:.2f}" for phi, one, gain in named]
    others = [(one.number, gain) for _, one, gain in every if gain < _WIDENED]
    if others:
        least, most = share(min(one for one, _ in others)), share(max(one for one, _ in others))
        spread = least if least == most else f"{least.removesuffix(' %')} to {most}"
        parts.append(
            f"{'elsewhere' if named else 'all round'} reached {spread}, times {max(g for _, g in others):.2f} at most"
        )
    return _RANGE_FROM[tuning.range_task] + "; ".join(parts)


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


def tuning_range(tuning: Tuning) -> Table:
    """Range and gain per direction."""
    rows = tuple(
        (direction_words(phi), percent(reached), f"{gain:.2f}")
        for phi, reached, gain in zip(tuning.direction_rad, tuning.range_share, tuning.gain, strict=True)
    )
    weakest = min(range(len(rows)), key=lambda step: tuning.range_share[step].number)
    alt = f"Least range is {rows[weakest][0]} with {rows[weakest][1]}, widened {rows[weakest][2]} times."
    return Table(f"Range per direction, {tuning.stick}", ("direction", "reached", "multiplied by"), rows, alt)


def curve(tuning: Tuning) -> Table:
    """Output against deflection."""
    rows = tuple((share(a), share(b)) for a, b in zip(tuning.curve_in, tuning.curve_out, strict=True))
    alt = (
        f"Response curve of {tuning.stick}: output against deflection from the dead zone of "
        f"{percent(tuning.dead_zone)} outwards, starting at {share(tuning.inner_jump)}. "
        f"{sentence(tuning.curve_sentence)}"
    )
    return Table(f"Response curve, {tuning.stick}", ("deflection", "output"), rows, alt)


def tuning_before_after(tuning: Tuning) -> Table:
    """The player's own recording before and after the response."""
    rows = tuple(
        (name, plain(float(abs(xy[:, 0]).max()), "percent"), plain(float(abs(xy[:, 1]).max()), "percent"))
        for name, xy in (("before", tuning.before_xy), ("after", tuning.after_xy))
        if len(xy)
    )
    target = ", with the target" if tuning.shown_target_xy is not None else ""
    alt = (
        f"The player's own recording {tuning.shown_recording} on {tuning.stick} before and after tuning{target}; "
        f"circles mark full output and the dead zone."
    )
    return Table(f"Before and after, {tuning.shown_recording}", ("", "most sideways", "most fore and aft"), rows, alt)


def trace_overview(report: TraceReport) -> Table:
    """Where the stick rested and how far it got in one recording."""
    rows: list[tuple[str, str]] = []
    unit = "percent" if report.unit == "share" else ""
    if report.rest is not None:
        rows.append(("rest", centre_words(report.rest.offset_x, report.rest.offset_y, unit)))
    told = "it holds no task that shows reach"
    if report.reach is not None:
        rows += [
            (f"reach {direction_words(phi)}", shown(reached, unit))
            for phi, reached in zip(report.reach.direction_rad, report.reach.reach, strict=True)
        ]
        least = min(range(len(report.reach.reach)), key=lambda step: report.reach.reach[step].number)  # type: ignore[union-attr]
        told = f"weakest is {direction_words(report.reach.weakest_rad)} with {shown(report.reach.reach[least], unit)}"
    alt = f"Recording {report.name}, {plain(report.duration_s, 's')}: rest and reach of the output; {told}."
    return Table(f"Recording {report.name}", ("what", "value"), tuple(rows), alt)


def bench(result: BenchResult) -> Table:
    """Force, throw and friction of a benched stick."""
    line = result.pooled
    rows = [
        ("start force", shown(line.start_force_n, "n")),
        ("full force", shown(line.full_force_n, "n")),
        ("friction", shown(result.friction_force_n, "n")),
        ("travel", shown(result.travel_m, "mm")),
        ("contact height", plain(result.height_m, "mm")),
        ("throw", plain(result.max_angle_rad, "deg")),
    ]
    if result.output is not None:
        rows.append(("output full at", f"{percent(result.output.full_output_share)} of the throw"))
        rows.append(("dead travel", f"{percent(result.output.dead_share)} of the throw"))
    used = sum(one.used for one in result.readings)
    alt = (
        f"Force against travel of {result.name}: {used} of {len(result.readings)} readings with fitted lines, from "
        f"{shown(line.start_force_n, 'n')} to start to {shown(line.full_force_n, 'n')} at the stop. {sentence(result.returns)}"
    )
    return Table(f"Bench of {result.name}", ("what", "value"), tuple(rows), alt)
