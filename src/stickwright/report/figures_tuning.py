"""What the response does to the player's own recording, and the curve it follows."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any, Literal

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.charts import Charts
from stickwright.codes.figure_tables import FigureTables
from stickwright.model.response import Tuning
from stickwright.report import tables
from stickwright.report.paper import INK, MIDDLE, SERIES, bare, figure_svg, name_directions
from stickwright.report.printed import in_unit
from stickwright.report.tell import tell

if TYPE_CHECKING:
    from matplotlib.figure import Figure

__all__ = ["curve", "plane", "thinned", "tuning_before_after"]

_MOST_POINTS = 2500


def thinned(xy: NDArray[np.float64]) -> NDArray[np.float64]:
    """Every so many-th row, so that a figure holds at most a few thousand points.

    Parameters
    ----------
    xy : array, shape (n, k)
        Samples in order.

    Returns
    -------
    array, shape (m, k)
        The same rows, some left out.
    """
    return xy[:: max(1, math.ceil(len(xy) / _MOST_POINTS))]


def plane(axes: Any, title: str, dead_zone: float | None = None) -> None:
    """An output plane: circle of full output, dead zone, directions named.

    Parameters
    ----------
    axes : matplotlib Axes
        To draw on.
    title : str
        Above the plane.
    dead_zone : float, optional
        Radius, share of full output.
    """
    bare(axes)
    ring = np.linspace(0, math.tau, 73)
    axes.plot(np.cos(ring), np.sin(ring), color=MIDDLE, lw=0.9)
    axes.plot([-1, 1], [0, 0], color=MIDDLE, lw=0.5, ls=":")
    axes.plot([0, 0], [-1, 1], color=MIDDLE, lw=0.5, ls=":")
    if dead_zone is not None and math.isfinite(dead_zone):
        axes.plot(dead_zone * np.cos(ring), dead_zone * np.sin(ring), color=INK, lw=1.1, ls="--")
    name_directions(axes)
    axes.set_title(title)


def tuning_before_after(tuning: Tuning) -> str:
    """The player's own recording, before and after the response, with the target where there was one.

    Parameters
    ----------
    tuning : Tuning
        A finished response.

    Returns
    -------
    str
        SVG, 52 mm wide, one above the other, so that the numbers can stand beside them.
    """

    def draw(figure: Figure) -> None:
        panels = figure.subplots(2, 1)
        shown: tuple[tuple[Literal["before", "after"], NDArray[np.float64], float | None], ...] = (
            ("before", tuning.before_xy, tuning.dead_zone.value),
            ("after", tuning.after_xy, None),
        )
        for axes, (stage, xy, zone) in zip(panels, shown, strict=True):
            plane(axes, tell(FigureTables.stage, stage=stage), zone)
            if tuning.shown_target_xy is not None:
                goal = thinned(tuning.shown_target_xy)
                axes.plot(
                    goal[:, 0],
                    goal[:, 1],
                    color=SERIES[1].colour,
                    lw=1.6,
                    ls="--",
                    label=tell(Charts.label, label="target"),
                )
            path = thinned(xy)
            axes.plot(
                path[:, 0], path[:, 1], color=INK, lw=0.6, alpha=0.75, label=tell(Charts.label, label="own_output")
            )
        panels[0].plot([], [], color=INK, lw=1.1, ls="--", label=tell(Charts.label, label="dead_zone"))
        handles, names = panels[0].get_legend_handles_labels()
        figure.legend(handles, names, loc="outside lower center", frameon=False)

    return figure_svg(draw, (46, 88), tables.tuning_before_after(tuning).alt)


def curve(tuning: Tuning) -> str:
    """Output against deflection.

    Parameters
    ----------
    tuning : Tuning
        A finished response.

    Returns
    -------
    str
        SVG, 60 mm wide.
    """

    def draw(figure: Figure) -> None:
        axes = figure.subplots()
        percent_in = [in_unit(value, "percent") for value in tuning.curve_in]
        percent_out = [in_unit(value, "percent") for value in tuning.curve_out]
        axes.plot(
            percent_in, percent_out, color=INK, lw=1.8, marker="o", ms=3, label=tell(Charts.label, label="this_curve")
        )
        axes.plot([0, 100], [0, 100], color=MIDDLE, lw=1.0, ls="--", label=tell(Charts.label, label="straight"))
        axes.set_xlim(0, 100)
        axes.set_ylim(0, 105)
        axes.set_xlabel(tell(Charts.label, label="deflection_percent"))
        axes.set_ylabel(tell(Charts.label, label="output_percent"))
        axes.legend(frameon=False, loc="lower right")

    return figure_svg(draw, (60, 60), tables.curve(tuning).alt)
