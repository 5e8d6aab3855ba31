"""What the player can do at a site: comfortable force and movement range, direction by direction."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from stickwright.codes.charts import Chart, Charts
from stickwright.codes.estimate import Estimate
from stickwright.model.plan import DirectionCapability
from stickwright.report import tables
from stickwright.report.paper import FAINT, INK, MIDDLE, figure_svg
from stickwright.report.printed import in_unit, label_of, shown
from stickwright.report.tell import tell

if TYPE_CHECKING:
    from matplotlib.figure import Figure

__all__ = ["capability_polar"]


def capability_polar(site: tables.Able) -> str:
    """Two polar charts, comfortable force and movement range, with band, readings and the weakest direction named.

    Parameters
    ----------
    site : Able
        A site of a plan, or one that is still being measured.

    Returns
    -------
    str
        SVG, 122 mm wide.
    """
    able = site.capability

    def draw(figure: Figure) -> None:
        force, reach = figure.subplots(1, 2, subplot_kw={"projection": "polar"})
        forces = tuple((one.force_n, one.measured_force_n, one) for one in able.directions)
        reaches = tuple((one.reach_m, one.measured_reach_m, one) for one in able.directions)
        _rose(force, forces, "n", "comfortable_force")
        _rose(reach, reaches, "mm", "movement_range")
        handles, names = force.get_legend_handles_labels()
        figure.legend(handles, names, loc="outside lower center", ncols=4, frameon=False, handletextpad=0.4)

    return figure_svg(draw, (122, 58), tables.capability_polar(site).alt)


def _rose(
    axes: Any,
    directions: tuple[tuple[Estimate, tuple[float, ...], DirectionCapability], ...],
    ending: str,
    chart: Chart,
) -> None:
    """One polar chart: value, interval and every reading of each direction."""
    angles = [one.direction_rad for _, _, one in directions]
    values = [in_unit(estimate.number, ending) for estimate, _, _ in directions]
    lows = [in_unit(estimate.lower, ending) for estimate, _, _ in directions]
    highs = [in_unit(estimate.upper, ending) for estimate, _, _ in directions]
    around = [*angles, angles[0] + math.tau]
    if all(math.isfinite(end) for end in (*lows, *highs)) and len(angles) > 2:
        axes.fill_between(
            around, [*lows, lows[0]], [*highs, highs[0]], color=FAINT, lw=0, label=tell(Charts.interval, of="figures")
        )
    for angle, low, high in zip(angles, lows, highs, strict=True):
        if math.isfinite(low) and math.isfinite(high):
            axes.plot([angle, angle], [low, high], color=MIDDLE, lw=1.2, solid_capstyle="butt")
    axes.plot(around, [*values, values[0]], color=INK, lw=1.3)
    got = [(a, v) for a, v, (_, readings, _) in zip(angles, values, directions, strict=True) if readings]
    missing = [(a, v) for a, v, (_, readings, _) in zip(angles, values, directions, strict=True) if not readings]
    axes.plot(
        [a for a, _ in got], [v for _, v in got], "o", color=INK, ms=5, label=tell(Charts.label, label="estimate")
    )
    if missing:
        axes.plot([a for a, _ in missing], [v for _, v in missing], "o", mfc="white", mec=INK, ms=6,
                  label=tell(Charts.label, label="not_measured"))  # fmt: skip
    taken = [(one.direction_rad, in_unit(value, ending)) for _, readings, one in directions for value in readings]
    axes.plot(
        [a for a, _ in taken],
        [v for _, v in taken],
        "x",
        color=MIDDLE,
        ms=4,
        mew=0.9,
        label=tell(Charts.label, label="reading"),
    )
    _name_directions(axes)
    weakest = min(directions, key=lambda one: one[0].number)
    axes.set_title(tell(Charts.polar_title, chart=chart, unit=label_of(ending)), y=1.13)
    axes.set_xlabel(
        tell(Charts.least, direction_rad=weakest[2].direction_rad, figure=shown(weakest[0], ending)),
        labelpad=4,
        fontsize=8.5,
    )


def _name_directions(axes: Any) -> None:
    from matplotlib.ticker import MaxNLocator

    angles = [math.radians(45 * step) for step in range(8)]
    names = ["" if step % 2 else tell(Charts.direction, direction_rad=angle) for step, angle in enumerate(angles)]
    axes.set_xticks(angles, names)
    axes.tick_params(axis="x", pad=-1)
    axes.set_rlim(bottom=0)
    axes.set_rlabel_position(22.5)
    axes.set_yticks([tick for tick in MaxNLocator(3).tick_values(0, axes.get_rmax()) if 0 < tick <= axes.get_rmax()])
    axes.tick_params(axis="y", labelsize=8, zorder=5)
    for label in axes.get_yticklabels():
        label.set_bbox({"facecolor": "white", "edgecolor": "none", "pad": 0.3, "alpha": 0.8})
    axes.grid(color=FAINT, lw=0.6)
    axes.spines["polar"].set_color(MIDDLE)
