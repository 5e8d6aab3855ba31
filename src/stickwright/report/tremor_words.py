"""How the size of a tremor is printed: always with its band and its unit."""

from __future__ import annotations

from dataclasses import replace

from stickwright.codes.estimate import Estimate
from stickwright.model.recorded import TraceReport
from stickwright.report.printed import shown

__all__ = ["axis_words", "band_words", "in_own_unit", "tremor_size"]

_AXES = "xyz"


def band_words(band_hz: tuple[float, float]) -> str:
    """A band of frequencies.

    Examples
    --------
    >>> band_words((3.0, 12.0)), band_words((4.62, 6.62))
    ('3 to 12 Hz', '4.6 to 6.6 Hz')
    """
    low, high = (f"{end:.1f}".removesuffix(".0") for end in band_hz)
    return f"{low} to {high} Hz"


def axis_words(direction: tuple[float, ...]) -> str:
    """A line in space by its parts along the recorded axes.

    Examples
    --------
    >>> axis_words((0.6, -0.8)), axis_words((0.0, 0.6, 0.8))
    ('(x 0.60, y -0.80)', '(x 0.00, y 0.60, z 0.80)')
    """
    return f"({', '.join(f'{name} {part:.2f}' for name, part in zip(_AXES, direction, strict=False))})"


def in_own_unit(estimate: Estimate, report: TraceReport) -> str:
    """An estimate in the recording's unit, which stands behind the number.

    Parameters
    ----------
    estimate : Estimate
    report : TraceReport
        A share of full output is printed as per cent.
    """
    if report.unit == "share":
        return shown(estimate, "percent").replace("%", "% of full output", 1)
    if estimate.value is None:
        return shown(estimate, "foreign")
    value, _, beside = shown(replace(estimate, assumed=None), "foreign").partition(" ")
    return f"{value} {report.unit} {beside}".rstrip()


def tremor_size(report: TraceReport) -> str:
    """Size from 3 to 12 Hz, of the peak's own band, and what of it rises above the background.

    Parameters
    ----------
    report : TraceReport
        With a tremor part.
    """
    tremor = report.tremor
    if tremor is None:
        return ""
    parts = [f"{in_own_unit(tremor.band_rms, report)} from {band_words(tremor.band_hz)}"]
    if tremor.peak_hz is not None:
        parts.append(f"{in_own_unit(tremor.peak_rms, report)} from {band_words(tremor.peak_hz)}, the peak's band")
        parts.append(f"of that {in_own_unit(tremor.excess_rms, report)} above the background")
    return "; ".join(parts)
