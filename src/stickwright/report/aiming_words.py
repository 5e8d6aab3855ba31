"""What is said of aimed movements, presses and smoothness in the terminal."""

from __future__ import annotations

from dataclasses import replace

from stickwright.catalogue import say
from stickwright.codes.aimed_lines import AimedLines, Clock, Figure
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Message, Name, Text, message
from stickwright.model.recorded import PointingReport, SmoothnessReport, TapReport
from stickwright.report.printed import plain, shown
from stickwright.report.tell import tell
from stickwright.trace.usual import TAPPING, THROUGHPUT

__all__ = ["pointing_lines", "smoothness_lines", "tap_lines"]

_CLOCKS: dict[str, Clock] = {"selection": "selection", "dwell": "dwell", "table": "table"}
_COUNTED: tuple[Figure, ...] = (
    "target_reentries",
    "task_axis_crossings",
    "movement_direction_changes",
    "orthogonal_direction_changes",
)
_LENGTHS: tuple[Figure, ...] = ("movement_variability", "movement_error", "movement_offset")


def _figure(what: Figure, estimate: Estimate, ending: str) -> Message:
    return message(AimedLines.figure, what=what, told=shown(estimate, ending), known=estimate.value is not None)


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
    lines = [tell(AimedLines.movements, movements=pointing.movements, clock=_CLOCKS[pointing.ended_by])]
    if pointing.serial:
        lines.append(tell(AimedLines.serial))
    throughput = _figure("throughput", pointing.throughput_bit_per_s, "")
    lines.append(tell(AimedLines.both, first=throughput, second=_figure("missed", pointing.error_rate, "percent")))
    if pointing.throughput_bit_per_s.value is not None:
        lines.append(tell(AimedLines.beside, told=THROUGHPUT))
    if pointing.movement_time_s is not None:
        lines.append(say(_figure("movement_time", pointing.movement_time_s, "s")))
    counted = [(name, replace(figures[name], assumed=None)) for name in _COUNTED if name in figures]
    if counted:
        lines.append(tell(AimedLines.counts_follow))
        lines += [_entry(name, shown(value, "")) for name, value in counted]
    lengths = [(name, replace(figures[name], assumed=None)) for name in _LENGTHS if name in figures]
    if lengths:
        lines.append(tell(AimedLines.lengths_follow))
        lines += [_entry(name, _length(value, unit)) for name, value in lengths]
    assumed = tuple(dict.fromkeys(value.assumed for value in figures.values() if value.assumed))
    if assumed:
        lines.append(tell(AimedLines.counts_assume, assumed=assumed))
    return [*lines, *_left_out(pointing.left_out)]


def _entry(what: Figure, told: Text) -> str:
    """A line of the block that its heading opens, set in."""
    return f"  {tell(AimedLines.entry, what=what, told=told)}"


def _length(estimate: Estimate, unit: str) -> Text:
    if unit == "share":
        return shown(estimate, "percent")
    told = shown(estimate, "foreign")
    return message(AimedLines.in_unit, told=told, unit=Name(unit)) if unit and estimate.value is not None else told


def _left_out(what: tuple[Text, ...]) -> list[str]:
    return [tell(AimedLines.left_out, what=one) for one in what]


def smoothness_lines(smooth: SmoothnessReport) -> list[str]:
    """Both measures in words, what they are compared with, or why there are none.

    Parameters
    ----------
    smooth : SmoothnessReport
        A finished report.
    """
    jerk, arc = smooth.log_dimensionless_jerk, smooth.spectral_arc_length
    if not smooth.movements:
        return [tell(AimedLines.smoothness_unknown, why=arc.why or "")]
    few, strokes = bool(arc.why), smooth.strokes
    return [
        tell(AimedLines.smoothness_of, count=smooth.movements, strokes=strokes, few=few),
        tell(AimedLines.smoothness, jerk=_smoothness(jerk), arc=_smoothness(arc), strokes=strokes),
    ]


def _smoothness(estimate: Estimate) -> str:
    """Without the reason why it has no interval: that stands in the line above."""
    return plain(estimate.number, "") if estimate.why else shown(estimate, "")


def tap_lines(taps: TapReport) -> list[str]:
    """Rate with what is usual, evenness, slowing, how long a press lasts, and what was left out.

    Parameters
    ----------
    taps : TapReport
        A finished report.
    """
    lines = [
        tell(
            AimedLines.presses, presses=taps.presses, rate=shown(taps.rate_hz, ""), known=taps.rate_hz.value is not None
        ),
        tell(AimedLines.beside, told=TAPPING),
        tell(AimedLines.variation, told=shown(taps.variation, "percent")),
        tell(AimedLines.slowing, told=shown(taps.slowing_per_s, "percent")),
    ]
    if taps.held_s is not None:
        lines.append(say(_figure("press_time", taps.held_s, "s")))
    return [*lines, *_left_out(taps.left_out)]
