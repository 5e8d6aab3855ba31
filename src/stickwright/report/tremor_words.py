"""How the size of a tremor is printed: always with its band and its unit."""

from __future__ import annotations

from dataclasses import replace

from stickwright.codes.aimed_lines import AimedLines
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Message, Name, Text, message
from stickwright.model.recorded import TraceReport
from stickwright.report.printed import printed_pair, shown

__all__ = ["axis_words", "in_own_unit", "tremor_size"]


def axis_words(direction: tuple[float, ...]) -> Message:
    """A line in space by its parts along the recorded axes.

    Parameters
    ----------
    direction : tuple of float
        Of length one.

    Examples
    --------
    >>> from stickwright.catalogue import say
    >>> say(axis_words((0.6, -0.8))), say(axis_words((0.0, 0.6, 0.8)))
    ('(x 0.60, y -0.80)', '(x 0.00, y 0.60, z 0.80)')
    """
    return message(AimedLines.axis, parts_share=direction)


def in_own_unit(estimate: Estimate, report: TraceReport) -> Text:
    """An estimate in the recording's unit, which stands behind the number.

    Parameters
    ----------
    estimate : Estimate
    report : TraceReport
        A share of full output is printed as per cent.
    """
    if estimate.value is None:
        return shown(estimate, "foreign")
    percent = report.unit == "share"
    value, beside = printed_pair(replace(estimate, assumed=None), "percent" if percent else "foreign")
    unit = None if percent else Name(report.unit)
    return message(AimedLines.size, value=value, beside=beside, unit=unit)


def _in_band(estimate: Estimate, report: TraceReport, band_hz: tuple[float, float]) -> Message:
    low_hz, high_hz = band_hz
    return message(AimedLines.in_band, told=in_own_unit(estimate, report), low_hz=low_hz, high_hz=high_hz)


def tremor_size(report: TraceReport) -> Text:
    """Size from 3 to 12 Hz, of the peak's own band, and what of it rises above the background.

    Parameters
    ----------
    report : TraceReport
        With a tremor part.
    """
    tremor = report.tremor
    if tremor is None:
        return ""
    peak = excess = None
    if tremor.peak_hz is not None:
        peak = _in_band(tremor.peak_rms, report, tremor.peak_hz)
        excess = in_own_unit(tremor.excess_rms, report)
    band = _in_band(tremor.band_rms, report, tremor.band_hz)
    return message(AimedLines.tremor_size, band=band, peak=peak, excess=excess)
