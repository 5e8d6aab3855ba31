"""What is said of aimed movements, presses and smoothness in the terminal."""

from __future__ import annotations

from dataclasses import replace

from stickwright.catalogue import say
from stickwright.codes.estimate import Estimate
from stickwright.model.recorded import PointingReport, SmoothnessReport, TapReport
from stickwright.report.printed import clause, listed, plain, shown
from stickwright.trace.usual import TAPPING, THROUGHPUT

__all__ = ["known", "pointing_lines", "smoothness_lines", "tap_lines"]

_CLOCK = {
    "selection": "timed to the selection",
    "dwell": "timed to where the target is entered to stay; the stay is not counted",
    "table": "timed as the table says",
}
_COUNTED = {
    "target_reentries": "re-entries into the target",
    "task_axis_crossings": "crossings of the straight line",
    "movement_direction_changes": "changes of direction across the line",
    "orthogonal_direction_changes": "changes of direction along the line",
}
_LENGTHS = {
    "movement_variability": "scatter across the line",
    "movement_error": "distance from the line",
    "movement_offset": "offset to one side (plus is left)",
}


def known(name: str, estimate: Estimate, ending: str, of: str = "") -> str:
    """A number with its name before and what it is of behind it; where it is not known, only why.

    Parameters
    ----------
    name : str
        What it is.
    estimate : Estimate
        The number.
    ending : str
        Unit, as for `shown`.
    of : str, default ''
        What it is of: 'rms per axis'.

    Examples
    --------
    >>> known("throughput", Estimate(2.4, 2.1, 2.7), "", "bit/s")
    'throughput 2.4 (2.1 to 2.7) bit/s'
    """
    if estimate.value is None:
        return f"{name} {shown(estimate, ending)}"
    return f"{name} {shown(estimate, ending)}{f' {of}' if of else ''}"


def pointing_lines(pointing: PointingReport, unit: str) -> list[str]:
    """Throughput, misses, what is usual, path measures, and what was left out.

    Parameters
    ----------
    pointing : PointingReport
        A finished report.
    unit : str
        Of the places: 'share', or the name of a foreign unit.
    """
    figures = dict(pointing.path_measures)
    shared = {say(value.assumed) for value in figures.values() if value.assumed}
    count = f"{pointing.movements} movement{'s' if pointing.movements != 1 else ''}"
    lines = [f"{count}, {_CLOCK[pointing.ended_by]}"]
    if pointing.serial:
        lines.append("starts are the targets before: each distance is corrected by where the movement before ended")
    lines.append(
        f"{known('throughput', pointing.throughput_bit_per_s, '', 'bit/s')}; "
        f"{known('missed', pointing.error_rate, 'percent')}"
    )
    if pointing.throughput_bit_per_s.value is not None:
        lines.append(f"({say(THROUGHPUT)})")
    if pointing.movement_time_s is not None:
        lines.append(known("movement time", pointing.movement_time_s, "s", "(middle of the movements)"))
    counted = [(words, figures[name]) for name, words in _COUNTED.items() if name in figures]
    if counted:
        lines.append("on average for each movement:")
        lines += [f"  {words}: {shown(replace(value, assumed=None), '')}" for words, value in counted]
    lengths = [(words, figures[name]) for name, words in _LENGTHS.items() if name in figures]
    if lengths:
        lines.append("about the straight line to the target (middle of the movements):")
        lines += [f"  {words}: {_length(replace(value, assumed=None), unit)}" for words, value in lengths]
    if shared:
        lines.append(f"in these counts {listed(sorted(shared))} (assumed)")
    return [*lines, *(f"left out: {say(reason)}" for reason in pointing.left_out)]


def _length(estimate: Estimate, unit: str) -> str:
    if unit == "share":
        return shown(estimate, "percent")
    return known("", estimate, "foreign", unit).strip()


def smoothness_lines(smooth: SmoothnessReport) -> list[str]:
    """Both measures in words, what they are compared with, or why there are none.

    Parameters
    ----------
    smooth : SmoothnessReport
        A finished report.
    """
    jerk, arc = smooth.log_dimensionless_jerk, smooth.spectral_arc_length
    if not smooth.movements:
        return [f"not known: {clause(arc.why or '')}"]
    what = "stroke" if smooth.strokes else "movement"
    # A minimum-jerk reach has -5.3 and -1.4 [balasubramanian-2015].
    compare = "compare the same drawing only" if smooth.strokes else "a reach without any correction has -5.3 and -1.4"
    few = " (no intervals: at least 6 are needed)" if arc.why else ""
    return [
        f"{smooth.movements} {what}{'s' if smooth.movements != 1 else ''}{few}",
        f"jerkiness (log dimensionless jerk) {_figure(jerk)}; unevenness of the speed (spectral arc length) "
        f"{_figure(arc)}: nearer 0 is smoother; {compare}",
    ]


def _figure(estimate: Estimate) -> str:
    return plain(estimate.number, "") if estimate.why else shown(estimate, "")


def tap_lines(taps: TapReport) -> list[str]:
    """Rate with what is usual, evenness, slowing, how long a press lasts, and what was left out.

    Parameters
    ----------
    taps : TapReport
        A finished report.
    """
    lines = [
        f"{taps.presses} presses: {known('', taps.rate_hz, '', 'a second').strip()}",
        f"({say(TAPPING)})",
        f"time from press to press varies by {shown(taps.variation, 'percent')} (standard deviation)",
        f"it changes by {shown(taps.slowing_per_s, 'percent')} a second (plus is slowing)",
    ]
    if taps.held_s is not None:
        lines.append(known("a press lasts", taps.held_s, "s", "(middle of the presses)"))
    return [*lines, *(f"left out: {say(reason)}" for reason in taps.left_out)]
