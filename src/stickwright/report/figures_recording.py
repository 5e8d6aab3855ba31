"""What one recording told: rest, reach and the trace itself."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.charts import Charts
from stickwright.model.recorded import ReachReport, RestReport, TraceReport
from stickwright.report import tables
from stickwright.report.figures_tuning import plane, thinned
from stickwright.report.paper import FAINT, INK, MIDDLE, SERIES, figure_svg
from stickwright.report.printed import folded
from stickwright.report.tell import tell

if TYPE_CHECKING:
    from matplotlib.figure import Figure

__all__ = ["trace_overview"]


def trace_overview(
    report: TraceReport, times_s: NDArray[np.float64] | None = None, xy: NDArray[np.float64] | None = None
) -> str:
    """Rest and reach on the output plane; beside it the trace against time when it is handed in.

    Parameters
    ----------
    report : TraceReport
        What the recording told.
    times_s : array, shape (n,), optional
        Seconds.
    xy : array, shape (n, 2), optional
        The recording itself.

    Returns
    -------
    str
        SVG, 180 mm wide with the trace, 75 mm without.
    """
    with_trace = times_s is not None and xy is not None and len(xy) > 0

    def draw(figure: Figure) -> None:
        if times_s is not None and xy is not None and with_trace:
            left, right = figure.subplots(1, 2, width_ratios=(1, 1.5))
            _against_time(right, report, times_s, xy)
            path = thinned(xy)
            left.plot(path[:, 0], path[:, 1], color=MIDDLE, lw=0.5, alpha=0.7)
        else:
            left = figure.subplots()
        plane(left, folded(report.name, 34))
        if report.reach is not None:
            _reach(left, report.reach)
        if report.rest is not None:
            _rest(left, report.rest)
        handles, names = left.get_legend_handles_labels()
        if handles:
            figure.legend(handles, names, loc="outside lower left", frameon=False, ncols=2)

    return figure_svg(draw, (180, 80) if with_trace else (75, 80), tables.trace_overview(report).alt)


def _reach(axes: Any, reach: ReachReport) -> None:
    angles = [*reach.direction_rad, reach.direction_rad[0]]
    values = [one.number for one in (*reach.reach, reach.reach[0])]
    name = tell(Charts.reach, direction_rad=float(reach.weakest_rad))
    axes.plot([r * math.cos(a) for r, a in zip(values, angles, strict=True)],
              [r * math.sin(a) for r, a in zip(values, angles, strict=True)],
              color=INK, lw=1.5, marker="o", ms=4, label=name)  # fmt: skip
    for angle, one in zip(reach.direction_rad, reach.reach, strict=True):
        if one.has_interval:
            axes.plot([one.lower * math.cos(angle), one.upper * math.cos(angle)],
                      [one.lower * math.sin(angle), one.upper * math.sin(angle)], color=INK, lw=3, alpha=0.35)  # fmt: skip


def _rest(axes: Any, rest: RestReport) -> None:
    x, y = rest.offset_x, rest.offset_y
    axes.plot(
        [x.number], [y.number], marker="s", ls="", color=SERIES[1].colour, ms=5, label=tell(Charts.label, label="rest")
    )
    if x.has_interval:
        axes.plot([x.lower, x.upper], [y.number] * 2, color=SERIES[1].colour, lw=1.2)
    if y.has_interval:
        axes.plot([x.number] * 2, [y.lower, y.upper], color=SERIES[1].colour, lw=1.2)


def _against_time(axes: Any, report: TraceReport, times_s: NDArray[np.float64], xy: NDArray[np.float64]) -> None:
    path = thinned(np.column_stack([times_s, xy]))
    for start, end, _, _ in report.rest.rests if report.rest is not None else ():
        axes.axvspan(start, end, color=FAINT, lw=0)
    axes.plot(path[:, 0], path[:, 1], color=SERIES[0].colour, lw=0.9, label=tell(Charts.label, label="to_the_right"))
    axes.plot(
        path[:, 0], path[:, 2], color=SERIES[1].colour, lw=0.9, ls="--", label=tell(Charts.label, label="forward")
    )
    for step, at in enumerate(report.bursts.times_s if report.bursts is not None else ()):
        axes.axvline(at, color=INK, lw=0.9, ls=":", label=tell(Charts.label, label="burst") if step == 0 else None)
    axes.set_xlabel(tell(Charts.label, label="time_axis"))
    axes.set_ylabel(tell(Charts.label, label="output_axis") if report.unit == "share" else report.unit)
    axes.legend(frameon=False, loc="upper center", bbox_to_anchor=(0.5, 1.16), ncols=3)
