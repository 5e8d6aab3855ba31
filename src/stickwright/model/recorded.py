"""What a recording told: results of `stickwright.trace`, as they travel in a plan.

Lengths are shares of full output unless `unit` of the report says otherwise. A part that the
recording cannot tell is None, and a finding says why.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from stickwright.codes.estimate import Estimate
from stickwright.codes.matters import Matter
from stickwright.codes.message import Text

__all__ = [
    "BiasReport", "BurstReport", "Finding", "HoldReport", "PointingReport", "ReachReport", "RestReport",
    "SmoothnessReport", "TableReport", "TapReport", "TraceReport", "TrackingReport", "TremorReport",
]  # fmt: skip


@dataclass(frozen=True)
class Finding:
    """Something noticed, in one sentence.

    Parameters
    ----------
    level : {"note", "query", "fault"}
        A note informs, a query asks the practitioner to look, a fault limits what can be concluded.
    about : str
        Key of the matter, for those who look for it: see `stickwright.codes.matters`. Never printed.
    text : Message or str
        What was seen, with figures, and what to do.
    """

    level: Literal["note", "query", "fault"]
    about: Matter
    text: Text


@dataclass(frozen=True)
class RestReport:
    """Where the stick lies when left alone."""

    offset_x: Estimate
    """Plus is right."""
    offset_y: Estimate
    """Plus is forward."""
    noise_rms: Estimate
    """Within a rest: rms per axis about each rest's own centre."""
    drift_per_min: Estimate
    """Length of the drift of the centre."""
    rests: tuple[tuple[float, float, float, float], ...] = ()
    """Start s, end s, centre x, centre y of each stretch of rest."""
    return_scatter: Estimate | None = None
    """Between rests: sd per axis of the centre from one rest to the next, as the stick returns to a different place."""
    pooled_rms: Estimate | None = None
    """Pooled: rms per axis of a sample of any rest about the common centre, noise and scatter together. None with one rest."""


@dataclass(frozen=True)
class ReachReport:
    """How far the output got, per direction."""

    direction_rad: tuple[float, ...]
    reach: tuple[Estimate, ...]
    """Largest output kept, one for each direction."""
    area_share: Estimate
    """Covered area as a share of the full disc."""
    weakest_rad: float


@dataclass(frozen=True)
class BiasReport:
    """Produced against cued direction."""

    error_rotation_rad: Estimate
    """Circular mean of produced minus cued, measured; plus is anticlockwise. Minus this puts the output right."""
    resultant_length: float
    """0 when the errors point everywhere, 1 when they are all alike."""
    rayleigh_p: float
    """Chance of so long a resultant from errors that point everywhere."""
    mirrored: bool
    quarter_turns: int
    """0, 1, 2, 3: by how many quarter turns anticlockwise the output came out; the base stood as many clockwise."""
    per_direction: tuple[tuple[float, Estimate], ...]
    """Cued direction, mean error there."""
    cross_talk: Estimate
    """Movement across the cued direction as a share of movement along it."""


@dataclass(frozen=True)
class TremorReport:
    """A peak in the movement spectrum, if one stands out, and the size of the movement by bands.

    Sizes are the rms of all columns together, over the whole recording, violent stretches included.
    """

    stands_out: bool
    frequency_hz: Estimate
    band_rms: Estimate
    """From `band_hz[0]` to `band_hz[1]`, whether or not a peak stands out."""
    peak_rms: Estimate
    """In the peak's own band, `peak_hz`."""
    excess_rms: Estimate
    """What of that rises above the background that the rest of the spectrum gives."""
    share: Estimate
    """Share of the power from 2 Hz to the upper limit that lies in the peak's band."""
    crossing_hz: Estimate
    """Zero-crossing frequency: upward crossings of the mean a second, from `crossing_band_hz`; while keeping still."""
    sentence: Text
    band_hz: tuple[float, float] = (3.0, 12.0)
    peak_hz: tuple[float, float] | None = None
    crossing_band_hz: tuple[float, float] = (0.2, 25.0)
    broad: bool = False
    """The peak is wider than a rhythm that merely wanders."""
    axis: tuple[float, ...] = ()
    """Direction in which the movement of the peak's band (or else of `band_hz`) is largest: a unit vector."""
    axis_share: float | None = None
    """Share of that movement's squares along it."""
    set_aside_s: float = 0.0
    """How long the movement was too violent to look for a rhythm."""
    set_aside_times: float | None = None
    """Rms there over the usual rms, from 2 Hz to the upper limit."""
    pace_hz: float | None = None
    """Pace of a meant movement."""
    multiples: tuple[tuple[int, float], ...] = ()
    """Peaks that are harmonics of it: how many times, frequency."""
    other_hz: float | None = None
    """Where the peak is the pace itself: a further peak that is no harmonic."""


@dataclass(frozen=True)
class BurstReport:
    """Sudden involuntary movements: kept out of the voluntary estimate."""

    count: int
    per_min: Estimate
    """Bursts a minute."""
    peak: Estimate
    """Largest movement away from where the output was."""
    duration_s: Estimate
    times_s: tuple[float, ...]


@dataclass(frozen=True)
class HoldReport:
    """A kept deflection."""

    direction_rad: float
    level: Estimate
    """Mean output kept."""
    sd: Estimate
    """Scatter about it."""
    slope_per_s: Estimate
    """Change of the level a second, as a share of the level: minus is tiring."""
    duration_s: float


@dataclass(frozen=True)
class SmoothnessReport:
    """Over the movements found."""

    movements: int
    spectral_arc_length: Estimate
    """0 or less, dimensionless; nearer to 0 is smoother."""
    log_dimensionless_jerk: Estimate
    """Minus the logarithm, dimensionless; nearer to 0 is smoother."""
    strokes: bool = False
    """Over whole strokes of a drawing, from pen down to pen up."""


@dataclass(frozen=True)
class PointingReport:
    """Aimed movements."""

    movements: int
    throughput_bit_per_s: Estimate
    error_rate: Estimate
    """Share of the targets missed."""
    path_measures: tuple[tuple[str, Estimate], ...]
    """Name and figure of each: means of counts, medians of lengths."""
    left_out: tuple[Text, ...]
    """Which movements were left out, and why: once for each reason."""
    ended_by: Literal["selection", "dwell", "table"] = "dwell"
    """What stopped the clock: a selection, entering the target to stay (the stay not counted), or the table's own time."""
    movement_time_s: Estimate | None = None
    """Middle of the durations."""
    serial: bool = False
    """Starts are the targets before: each distance was corrected by where the movement before ended."""


@dataclass(frozen=True)
class TapReport:
    """Pressing again and again."""

    presses: int
    rate_hz: Estimate
    """Presses a second, pauses left out."""
    variation: Estimate
    """Standard deviation of the time from press to press, as a share of its mean."""
    slowing_per_s: Estimate
    """Change of the time from press to press a second, as a share of its mean: plus is slowing."""
    held_s: Estimate | None
    """How long a press lasts; None when its end was not recorded."""
    left_out: tuple[Text, ...]
    """Pauses and bounces."""


@dataclass(frozen=True)
class TableReport:
    """What a table of movements or presses told."""

    name: str
    kind: Literal["trials", "taps"]
    rows: int
    findings: tuple[Finding, ...]
    pointing: PointingReport | None = None
    taps: TapReport | None = None


@dataclass(frozen=True)
class TrackingReport:
    """Following a moving target."""

    rms_error: Estimate
    """Distance from the target."""
    gain: Estimate
    """Movement made over movement asked."""
    lag_s: Estimate
    error_without_lag: Estimate
    """Distance from where the target was, the lag taken off."""


@dataclass(frozen=True)
class TraceReport:
    """All that one recording told."""

    name: str
    task: str
    unit: str
    samples: int
    duration_s: float
    rate_hz: float
    findings: tuple[Finding, ...]
    site: str | None = None
    stick: str | None = None
    rest: RestReport | None = None
    reach: ReachReport | None = None
    bias: BiasReport | None = None
    tremor: TremorReport | None = None
    bursts: BurstReport | None = None
    holds: tuple[HoldReport, ...] = ()
    smoothness: SmoothnessReport | None = None
    pointing: PointingReport | None = None
    tracking: TrackingReport | None = None
