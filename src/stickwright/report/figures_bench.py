"""What the bench told about a stick: force against travel, the readings on it, and the fitted lines out and back."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.charts import Charts
from stickwright.model.bench import BenchReading, BenchResult
from stickwright.report import tables
from stickwright.report.paper import FAINT, INK, MIDDLE, figure_svg
from stickwright.report.printed import folded, in_unit, label_of
from stickwright.report.tell import tell

if TYPE_CHECKING:
    from matplotlib.figure import Figure

__all__ = ["bench"]

Array = NDArray[np.float64]


def bench(result: BenchResult) -> str:
    """Force against travel at the stated height: readings out and back, fitted lines, interval of start and full force.

    Parameters
    ----------
    result : BenchResult
        A finished bench.

    Returns
    -------
    str
        SVG, 120 mm wide.
    """

    def draw(figure: Figure) -> None:
        axes = figure.subplots()
        angles = np.linspace(0.0, result.max_angle_rad, 41)
        _lines(axes, result, angles)
        for outward, used in ((True, True), (False, True), (True, False), (False, False)):
            _readings(axes, result, outward, used)
        _ends(axes, result)
        axes.set_xlim(left=min(0.0, axes.get_xlim()[0]))
        axes.set_ylim(bottom=0.0)
        axes.set_xlabel(tell(Charts.bench_travel, full=f"{in_unit(result.travel_m.number, 'mm'):.1f} {label_of('mm')}"))
        axes.set_ylabel(tell(Charts.bench_force, height_m=result.height_m))
        axes.set_title(folded(result.name, 48), loc="left")
        axes.legend(frameon=False, loc="upper left")

    return figure_svg(draw, (120, 85), tables.bench(result).alt)


def _travel_mm(result: BenchResult, angles: Array) -> Array:
    return np.asarray([in_unit(result.height_m * math.sin(angle), "mm") for angle in angles])


def _lines(axes: Any, result: BenchResult, angles: Array) -> None:
    """Fitted force pushing out and letting back; one line when friction could not be told apart."""
    line = result.pooled
    travel = _travel_mm(result, angles)
    spring = line.preload_nm.number + line.stiffness_nm_per_rad.number * angles
    friction = line.friction_nm.number if line.friction_nm.has_interval else 0.0
    axes.plot(
        travel, (spring + friction) / result.height_m, color=INK, lw=1.8, label=tell(Charts.label, label="pushing_out")
    )
    if line.friction_nm.has_interval:
        axes.plot(travel, (spring - friction) / result.height_m, color=MIDDLE, lw=1.4, ls="--",
                  label=tell(Charts.label, label="letting_back"))  # fmt: skip


def _readings(axes: Any, result: BenchResult, outward: bool, used: bool) -> None:
    chosen = [one for one in result.readings if one.outward is outward and one.used is used]
    if not chosen:
        return
    marker = ("o" if outward else "s") if used else ("x" if outward else "+")
    axes.plot([_at_mm(result, one) for one in chosen], [one.force_n * one.height_m / result.height_m for one in chosen],
              ls="", marker=marker, ms=5.5 if used else 7, mfc="white" if not outward else MIDDLE, mec=INK,
              label=tell(Charts.bench_reading, outward=outward, used=used))  # fmt: skip


def _at_mm(result: BenchResult, one: BenchReading) -> float:
    return in_unit(result.height_m * math.sin(one.angle_rad), "mm")


def _ends(axes: Any, result: BenchResult) -> None:
    """Interval of the push outwards: of start and full force, joined across the travel."""
    stop = in_unit(result.height_m * math.sin(result.max_angle_rad), "mm")
    start, full = result.pooled.start_force_n, result.pooled.full_force_n
    if start.has_interval and full.has_interval:
        axes.fill_between([0.0, stop], [start.low, full.low], [start.high, full.high], color=FAINT, lw=0, zorder=0,
                          label=tell(Charts.interval, of="pushing_out"))  # fmt: skip
