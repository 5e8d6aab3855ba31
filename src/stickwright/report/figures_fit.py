"""Which stick, and why: how far each gets, where force and stick meet, how they rank."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from stickwright.catalogue import say
from stickwright.codes.charts import Charts
from stickwright.codes.message import message
from stickwright.model.fit import DirectionFit, Fit
from stickwright.model.plan import DirectionCapability, SitePlan
from stickwright.report import tables
from stickwright.report.paper import FAINT, INK, MIDDLE, SERIES, Series, bare, figure_svg, name_directions
from stickwright.report.printed import folded, in_unit, percent
from stickwright.report.tell import tell

if TYPE_CHECKING:
    from matplotlib.figure import Figure

__all__ = ["force_travel", "ranking", "reach_polygon"]

_MOST_BARS = 12
_FOUR_ABREAST = 22  # letters of a label of which four stand side by side
_HEADROOM = 1.35  # of the player's highest force: above that a stick's line only squeezes the triangle


def reach_polygon(site: SitePlan) -> str:
    """Polygon of the travel reached on the best set-up, with its interval; the second set-up dashed.

    Parameters
    ----------
    site : SitePlan
        One site of a finished plan.

    Returns
    -------
    str
        SVG, 60 mm wide.
    """

    def draw(figure: Figure) -> None:
        axes = figure.subplots()
        bare(axes)
        for radius, line in ((1.0, "-"), (0.5, ":")):
            axes.plot(
                *_ring([radius] * 73, [math.radians(5 * step) for step in range(73)]), ls=line, color=MIDDLE, lw=0.9
            )
        name_directions(axes)
        for fit, series in reversed(list(zip(site.fits[:2], SERIES[:2], strict=False))):
            _polygon(axes, fit, series, folded(tell(Charts.ranked, rank=site.fits.index(fit) + 1, setup=fit.named), 31))
        handles, names = axes.get_legend_handles_labels()
        figure.legend(handles[::-1], names[::-1], loc="outside lower left", frameon=False, handlelength=2.2)
        if site.fits:
            best = site.fits[0]
            least = message(Charts.least, direction_rad=best.weakest_rad, figure=percent(best.weakest_share))
            axes.set_title(tell(Charts.reach_title, least=least), fontsize=8.5, fontweight="normal")

    return figure_svg(draw, (62, 58), tables.reach_polygon(site).alt)


def _ring(radii: list[float], angles: list[float]) -> tuple[list[float], list[float]]:
    return (
        [r * math.cos(a) for r, a in zip(radii, angles, strict=True)],
        [r * math.sin(a) for r, a in zip(radii, angles, strict=True)],
    )


def _polygon(axes: Any, fit: Fit, series: Series, name: str) -> None:
    around = [*fit.directions, fit.directions[0]]
    angles = [one.direction_rad for one in around]
    banded = series is SERIES[0] and all(one.reach_share.has_interval for one in around)
    if banded:
        outer = _ring([one.reach_share.upper for one in around], angles)
        inner = _ring([one.reach_share.lower for one in around], angles)
        axes.fill([*outer[0], *inner[0][::-1]], [*outer[1], *inner[1][::-1]], color=FAINT, lw=0)
    for one in fit.directions:
        if one.reach_share.has_interval:
            axes.plot(*_ring([one.reach_share.lower, one.reach_share.upper], [one.direction_rad] * 2),
                      color=series.colour, lw=0.9, ls="-")  # fmt: skip
    axes.plot(*_ring([one.reach_share.number for one in around], angles), color=series.colour, ls=series.line,
              marker=series.marker, ms=4, lw=series.width, label=name)  # fmt: skip


def force_travel(site: SitePlan, directions: tuple[float, ...] | None = None) -> str:
    """The player's force falling with reach, each stick's force rising with travel: the crossing is the answer.

    Parameters
    ----------
    site : SitePlan
        One site of a finished plan.
    directions : tuple of float, optional
        Radians, one panel each; the weakest and the most used when not said.

    Returns
    -------
    str
        SVG, 180 mm wide.
    """
    chosen = tables.main_directions(site) if directions is None else directions
    fits = tables.shown_fits(site)

    def draw(figure: Figure) -> None:
        panels = figure.subplots(1, len(chosen), squeeze=False)[0]
        for axes, direction in zip(panels, chosen, strict=True):
            _crossing_panel(axes, site, fits, direction)
        handles, names = panels[0].get_legend_handles_labels()
        longest = max(len(line) for name in names for line in name.split("\n"))
        figure.legend(handles, names, loc="outside lower center", ncols=4 if longest <= _FOUR_ABREAST else 3,
                      frameon=False, handlelength=2.6, columnspacing=1.2)  # fmt: skip

    return figure_svg(draw, (184, 62), tables.force_travel(site, chosen).alt)


def _crossing_panel(axes: Any, site: SitePlan, fits: tuple[Fit, ...], direction_rad: float) -> None:
    able = min(
        site.capability.directions, key=lambda one: abs(math.remainder(one.direction_rad - direction_rad, math.tau))
    )
    top_n, far_m = _frame(able, fits)
    _triangle(axes, able)
    felt = _nearest(fits[0], direction_rad) if fits else None
    if felt is not None and felt.firm_force_n is not None:
        axes.plot([0, in_unit(able.reach_m.number, "mm")], [felt.available_force_n, 0], color=INK, lw=1.4, ls=":",
                  label=tell(Charts.label, label="flex"))  # fmt: skip
    ends = []
    for rank, (fit, series) in enumerate(zip(fits, SERIES, strict=False), start=1):
        one = _nearest(fit, direction_rad)
        ends.append((*_stick_line(axes, fit, one, series, rank, (far_m, top_n)), str(rank), series.colour))
    _rank_labels(axes, ends, top_n)
    axes.set_xlim(0, in_unit(far_m, "mm"))
    axes.set_ylim(0, top_n)
    axes.set_xlabel(tell(Charts.label, label="travel_axis"))
    axes.set_ylabel(tell(Charts.label, label="force_axis"))
    axes.set_title(tell(Charts.direction, direction_rad=able.direction_rad), loc="left")


def _nearest(fit: Fit, direction_rad: float) -> DirectionFit:
    return min(fit.directions, key=lambda way: abs(math.remainder(way.direction_rad - direction_rad, math.tau)))


def _frame(able: DirectionCapability, fits: tuple[Fit, ...]) -> tuple[float, float]:
    """Upper ends of force and travel: the best stick whole, the triangle as far as the sticks stay legible."""
    force = able.force_n.upper if able.force_n.high is not None else able.force_n.number
    reach = able.reach_m.upper if able.reach_m.high is not None else able.reach_m.number
    longest = max((fit.travel_m for fit in fits), default=reach)
    wide = max([min(reach, 1.8 * longest), *(min(fit.travel_m, 2.5 * reach) for fit in fits[:1])])
    tall = max([force * _HEADROOM, *(fit.full_force_n for fit in fits[:1] if fit.full_force_n < 2.0 * force)])
    return tall * 1.05, wide * 1.12


def _triangle(axes: Any, able: DirectionCapability) -> None:
    force, reach = able.force_n, able.reach_m
    axes.plot(
        [0, in_unit(reach.number, "mm")],
        [force.number, 0],
        color=INK,
        lw=2.6,
        label=tell(Charts.label, label="player_has"),
    )
    if force.has_interval and reach.has_interval:
        axes.fill(
            [0, in_unit(reach.upper, "mm"), in_unit(reach.lower, "mm"), 0], [force.upper, 0, 0, force.lower],
            color=FAINT, lw=0, label=tell(Charts.interval, of="player"), zorder=0,
        )  # fmt: skip
    axes.plot([], [], ls="", marker="o", color=INK, ms=7, label=tell(Charts.label, label="meet"))


def _stick_line(
    axes: Any, fit: Fit, one: DirectionFit, series: Series, rank: int, frame: tuple[float, float]
) -> tuple[float, float]:
    """The force one stick needs from centre to stop and its crossing; returns where its rank can stand."""
    far_m, top_n = frame
    name = f"{rank} {say(fit.named)}"
    travel_mm = in_unit(fit.travel_m, "mm")
    axes.plot([0, travel_mm], [one.start_force_n, one.needed_force_n], color=series.colour, ls=series.line,
              lw=series.width, marker=series.marker, ms=4.5, mfc="white",
              label=folded(name, 34))  # fmt: skip
    reached = one.reach_travel_m
    starts = one.start_force_n < one.available_force_n
    if starts and reached.has_interval:
        axes.plot([in_unit(reached.lower, "mm"), in_unit(reached.upper, "mm")], [one.force_used_n] * 2,
                  color=series.colour, lw=3.2, alpha=0.55, solid_capstyle="butt")  # fmt: skip
    if starts:
        axes.plot([in_unit(reached.number, "mm")], [one.force_used_n], marker=series.marker, color=series.colour, ms=8)
    if starts and rank == 1:
        axes.plot([in_unit(reached.number, "mm")] * 2, [0, one.force_used_n], color=series.colour, lw=0.8, ls=":")
    end_m = min(fit.travel_m, far_m * 0.97)
    slope = (one.needed_force_n - one.start_force_n) / fit.travel_m
    if slope > 0:
        end_m = min(end_m, max(0.0, (top_n * 0.95 - one.start_force_n) / slope))
    return in_unit(end_m, "mm"), min(one.start_force_n + slope * end_m, top_n * 0.95)


def _rank_labels(axes: Any, ends: list[tuple[float, float, str, str]], top_n: float) -> None:
    """Ranks at the ends of the lines, pushed up where they would lie on each other."""
    gap, last = 0.085 * top_n, -top_n
    for travel_mm, force_n, rank, colour in sorted(ends, key=lambda end: (end[1], end[2])):
        last = max(force_n + 0.02 * top_n, last + gap)
        axes.annotate(rank, (travel_mm, last), ha="center", va="bottom", fontsize=8.5, fontweight="bold", color=colour,
                      annotation_clip=False)  # fmt: skip


def ranking(site: SitePlan) -> str:
    """Bars of precision in bits, best first, with interval and chance of being the best; hatched where it does not fit.

    Parameters
    ----------
    site : SitePlan
        One site of a finished plan.

    Returns
    -------
    str
        SVG, 110 mm wide; at most twelve bars.
    """
    fits = site.fits[:_MOST_BARS]

    def draw(figure: Figure) -> None:
        axes = figure.subplots()
        most = max([1.0, *(_upper(fit) for fit in fits)])
        for row, fit in enumerate(fits):
            fitting = fit.verdict != "does not fit"
            axes.barh(row, max(0.0, fit.bits.number), height=0.62, color=MIDDLE if fitting else "white", edgecolor=INK,
                      hatch=None if fitting else "////", lw=0.9)  # fmt: skip
            if fit.bits.has_interval:
                axes.plot([fit.bits.lower, fit.bits.upper], [row, row], color=INK, lw=1.8, marker="|", ms=8, mew=1.6)
            words = tell(Charts.bar, chance_share=fit.probability_best, fits=fitting)
            axes.annotate(words, (max(0.0, _upper(fit)), row), xytext=(5, 0), textcoords="offset points", va="center")
        axes.set_yticks(
            range(len(fits)),
            [folded(tell(Charts.ranked, rank=row, setup=fit.named), 26) for row, fit in enumerate(fits, start=1)],
        )
        axes.set_ylim(len(fits) - 0.4, -0.6)
        axes.set_xlim(0, most * 2.1)
        axes.set_xlabel(tell(Charts.label, label="bits_axis"))
        axes.tick_params(axis="y", length=0)

    return figure_svg(draw, (125, 18 + 8.5 * max(1, len(fits))), tables.ranking(site).alt)


def _upper(fit: Fit) -> float:
    return fit.bits.upper if fit.bits.high is not None else fit.bits.number
