"""Does a rhythmic involuntary movement stand out, and at what frequency?

All of it holds for any unit: stick deflection, force or acceleration. A frequency is printed, never the
name of a disease: the bands of different conditions overlap [bhatia-2018].
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.file_places import FilePlaces
from stickwright.codes.message import Message, Text, message
from stickwright.codes.signals import Signals
from stickwright.codes.tremors import Tremors
from stickwright.errors import BadInput, Problem
from stickwright.model.recorded import TremorReport
from stickwright.trace.band_size import (
    Banded,
    banded,
    banded_uneven,
    crossing_estimate,
    principal_axis,
    rms_estimate,
    share_estimate,
)
from stickwright.trace.intervals import jackknife, left_one_out
from stickwright.trace.peaks import (
    ABOUT_HZ,
    HIGH_HZ,
    LOW_HZ,
    PACE_HZ,
    TREMOR_HZ,
    Looked,
    Peak,
    about,
    excess_of,
    largest,
    look,
    middle_of,
    vertex,
)
from stickwright.trace.spectrum import Spectra, spectra, welch_sum
from stickwright.trace.stamps import Stretch, checked_columns, checked_times, even, mean_rate_hz, stretches, thinned

__all__ = ["DominantTremor", "crossing_frequency", "dominant_tremor", "tremor_report"]

USABLE_SHARE = 0.4
"""Of the sampling rate; nearer to half of it, what is faster folds back."""

SIZED_HZ = (3.0, 12.0)
"""Band in which the size of tremor is always told, whether or not a peak stands out: nearly all tremor of limbs lies in
it [bhatia-2018], and meant movement mostly below. The choice is a judgement."""

SLOWEST_HZ = 0.2
"""Slower sway than this is drift: the 5 s blocks of `stickwright.trace.unsteady` take it out as well, and the
zero-crossing frequency belongs to that rms."""

LARGER = 1.1  # times the usual rms: below that it is no larger
VIOLENT = 1.5  # times the usual rms: below that only the kind of movement differs
CLOCK = 1e-4  # share by which a computer's clock may run wrong: no interval of a frequency is narrower
SEGMENTS_SHARED = 1 / 6
"""Correlation that half-overlapping Hann segments can have at most: that of their amplitudes [welch-1967]."""
SEGMENT_S = 5.12  # 512 samples at 100 Hz
LEAST_SEGMENT_S = 2.0
LEAST_TOP_HZ = 5.0
THINNED_HZ = 200.0  # uneven samples that come faster are averaged together: 25 Hz loses 3 % of its size
_MEANT = message(Tremors.meant)


class DominantTremor(NamedTuple):
    """The largest peak in the band, whether or not it stands out.

    Parameters
    ----------
    frequency_hz : float
        Where it is.
    rms : float
        Of the vector of all columns, within 1 Hz of the peak, in the unit of the columns.
    share : float
        Of the power between 2 Hz and the upper limit, 0 to 1, that lies within 1 Hz of the peak.
    """

    frequency_hz: float
    rms: float
    share: float


def dominant_tremor(xy: ArrayLike, rate_hz: float, *, segment: int | None = None) -> DominantTremor:
    """Frequency, size and share of the largest peak from 2 Hz to 25 Hz (or 0.4 of the rate, when lower).

    Sum of the Welch spectra of the columns; largest bin of the band that is no lower than its neighbours
    (a spectrum that only falls has no such bin: then the largest); parabola through the logarithm of three bins.

    Parameters
    ----------
    xy : array, shape (n, 2)
        Even samples without empty cells; any number of columns from 1, any unit.
    rate_hz : float
        Samples a second.
    segment : int or None
        Samples in a segment of the spectrum; None for the power of two nearest to 5 s.

    Returns
    -------
    DominantTremor
        `frequency_hz`, `rms`, `share`.

    Raises
    ------
    BadInput
        Less than 2 s of samples, empty cells, no movement, or a rate that leaves no band.

    Notes
    -----
    Source: [welch-1967]; the parabola, [smith-serra-1987]. Whether the peak means anything is for `tremor_report`.

    Examples
    --------
    >>> import numpy as np
    >>> t = np.arange(2000) / 100
    >>> xy = np.column_stack([0.04 * np.sin(2 * np.pi * 4.6 * t), 0.02 * np.cos(2 * np.pi * 4.6 * t)])
    >>> found = dominant_tremor(xy, 100.0)
    >>> round(found.frequency_hz, 2), round(found.rms, 4), round(found.share, 2)
    (4.6, 0.0316, 1.0)
    """
    values = _checked_even(xy, rate_hz)
    top_hz = min(HIGH_HZ, USABLE_SHARE * rate_hz)
    length = segment if segment is not None else _power_of_two(SEGMENT_S * rate_hz, values.shape[0])
    if not 8 <= length <= values.shape[0] or top_hz < LOW_HZ + 3 * rate_hz / length:
        raise BadInput(_too_short(values.shape[0], rate_hz))
    frequency_hz, power = welch_sum(values, rate_hz, length)
    peak = largest(frequency_hz, power, LOW_HZ, top_hz)
    band = (frequency_hz >= LOW_HZ) & (frequency_hz <= top_hz)
    if power[band].sum() <= 0:
        raise BadInput(
            Problem(
                "xy",
                message(Signals.found, what="same_value"),
                message(Signals.expected, what="movement"),
                message(Signals.remedy, what="stick_live"),
            )
        )
    near = band & about(frequency_hz, frequency_hz[peak])
    bin_hz = float(frequency_hz[1])
    rms = math.sqrt(float(power[near].sum()) * bin_hz)
    return DominantTremor(vertex(frequency_hz, power, peak), rms, float(power[near].sum() / power[band].sum()))


def crossing_frequency(xy: ArrayLike, rate_hz: float, *, low_hz: float = 0.0) -> float:
    """Zero-crossing frequency of an involuntary movement: how often a second it passes its mean upwards.

    sqrt(m2/m0) of the summed spectrum (m0 its area, m2 its area weighted with the square of the frequency),
    up to 25 Hz or 0.4 of the rate. All that moves is taken as involuntary: give a recording made while
    keeping still, or say with `low_hz` where the voluntary part ends.

    Parameters
    ----------
    xy : array, shape (n, 2)
        Even samples without empty cells; any number of columns from 1, any unit.
    rate_hz : float
        Samples a second.
    low_hz : float, default 0.0
        Slower movement is left out.

    Returns
    -------
    float
        Hertz.

    Raises
    ------
    BadInput
        Less than 2 s of samples, empty cells, or no movement.

    Notes
    -----
    Source: [rice-1944]. Assumed: a Gaussian movement. Drift slower than a segment of 5 s is not seen.

    Examples
    --------
    >>> import numpy as np
    >>> t = np.arange(2000) / 100
    >>> round(crossing_frequency(np.column_stack([np.sin(2 * np.pi * 3 * t), np.cos(2 * np.pi * 3 * t)]), 100.0), 1)
    3.0
    """
    values = _checked_even(xy, rate_hz)
    length = _power_of_two(SEGMENT_S * rate_hz, values.shape[0])
    frequency_hz, power = welch_sum(values, rate_hz, length)
    top_hz = min(HIGH_HZ, USABLE_SHARE * rate_hz)
    if power[frequency_hz >= low_hz].sum() <= 0:
        raise BadInput(
            Problem(
                "xy",
                message(Signals.found, what="same_value"),
                message(Signals.expected, what="movement"),
                message(Signals.remedy, what="stick_live"),
            )
        )
    return _crossing(frequency_hz, power, low_hz, top_hz)


def tremor_report(times_s: ArrayLike, xy: ArrayLike, *, still: bool = False, step: float = 0.0) -> TremorReport:
    """Whether a rhythmic movement stands out, with intervals; "none stands out" is an answer.

    Voluntary movement is slow, so only 2 Hz and faster is searched, and a peak is judged against the smooth
    background that the rest of the spectrum gives: it stands out when a single bin, or the mean over 1 Hz,
    is higher than chance would make any of those searched in about 95 of 100 recordings without a peak.

    Parameters
    ----------
    times_s : array, shape (n,)
        Seconds, possibly uneven: rounding is taken out, small jitter evened out at the mean rate, larger is taken as it is
        (Lomb-Scargle). Steps over 0.25 s are gaps and are never bridged.
    xy : array, shape (n, 2)
        Any number of columns from 1, any unit; NaN where a cell was empty.
    still : bool, default False
        The player was asked to keep still: nothing is meant then, so that no peak is put down to the pace of a meant
        movement, and the zero-crossing frequency is told.
    step : float, default 0.0
        Step of the output; a peak no larger than rounding to it is not told as a rhythm.

    Returns
    -------
    TremorReport
        Every size is of the whole recording, violent stretches included; see the fields.

    Raises
    ------
    BadInput
        Shapes that do not fit, or a clock that runs backwards.

    Notes
    -----
    Sources: averaged spectra [welch-1967]; uneven stamps [lomb-1976] [scargle-1982]; chi-square of an averaged
    spectrum, degrees of freedom from the scatter of its segments and never more than steady noise would give;
    the number of bins searched is counted as independent [sidak-1967]; intervals by leaving out one part of the
    recording at a time [tukey-1958]. Each segment is first divided by its own level, so that a burst
    does not pass for a rhythm. Limit: a frequency above 0.4 of the sampling rate is not told.
    The background is taken at its higher when two ways of finding it differ. False alarms in 100 recordings without a peak,
    least and most over lengths of 20, 30 and 60 s at 60 and 100 Hz, 400 of each on seeds that nothing was set with
    (``python benchmarks/tremor_alarms.py``): white noise 0.8 to 3.5, 1/f 0.2 to 1.0, 1/f^2 0 to 1.2, low-pass noise 0 to 0.8,
    bursting noise 1.0 to 3.2, sway of 0.8 to 1.8 Hz 1.8 to 7.5 (the most at 60 s), aimed movements 0.5 to 1.5; 1.5 on
    average. What only rises towards 2 Hz is the side of slower sway, not a peak. A rhythm that somebody means to make is a peak too.
    The edge of a device's low-pass is none: a peak must also rise above
    what slower movement leads to expect, so that its slower side falls. Peaks above 15 Hz are said, not called a rhythm.
    Rounding to a step q moves the output by q/sqrt(12) rms [bennett-1948], and a slow movement through the steps
    does so rhythmically: a peak that rises above the background by no more than that, all columns together, is not told.
    The frequency is that of the bell, 1 Hz to either side, that holds most of the peak; its interval allows for what
    overlapping segments share: on simulated tremor that wanders by 0.15 or 0.4 Hz it held the middle in 92 to 97 of 100
    recordings of 20 and 60 s, on a steady rhythm in nearly all, then within some thousandths of a hertz.

    Examples
    --------
    >>> import numpy as np
    >>> rng = np.random.default_rng(1)
    >>> t = np.arange(2000) / 100
    >>> xy = np.cumsum(rng.normal(0, 0.002, (2000, 2)), axis=0)
    >>> tremor_report(t, xy).stands_out
    False
    >>> report = tremor_report(t, xy + 0.02 * np.sin(2 * np.pi * 5 * t)[:, None])
    >>> report.stands_out, round(report.frequency_hz.value, 1)
    (True, 5.0)
    """
    times = checked_times(times_s)
    values = checked_columns("xy", xy, times.size, None)
    parts = stretches(times, values)
    if not parts:
        return _no_answer(message(Tremors.too_few))
    rate_hz, uneven = _sampling(parts)
    if uneven and rate_hz > THINNED_HZ:
        parts = [thinned(part, THINNED_HZ) for part in parts]
        rate_hz, uneven = _sampling(parts)
    top_hz = min(HIGH_HZ, USABLE_SHARE * rate_hz)
    if top_hz < LEAST_TOP_HZ:
        return _no_answer(message(Tremors.too_slow, rate_hz=rate_hz, top_hz=top_hz))
    if not uneven:
        parts = [_evened(part, rate_hz) for part in parts]
    whole = _whole(parts, rate_hz, top_hz, uneven)
    if isinstance(whole, Message):
        return _no_answer(whole)
    return _told(_Sized(parts, rate_hz, uneven, whole), top_hz, still, step * math.sqrt(values.shape[1] / 12))


def _evened(part: Stretch, rate_hz: float) -> Stretch:
    values = even(part, rate_hz)
    return Stretch(part.times_s[0] + np.arange(len(values)) / rate_hz, values)


def _sampling(parts: list[Stretch]) -> tuple[float, bool]:
    """Samples a second, and whether they come too unevenly to be evened out."""
    steps = np.concatenate([np.diff(part.times_s) for part in parts])
    usual = float(np.median(steps))
    return mean_rate_hz(parts), float(np.quantile(np.abs(steps - usual), 0.99)) > 0.5 * usual


def _whole(parts: list[Stretch], rate_hz: float, top_hz: float, uneven: bool) -> Spectra | Message:
    """Spectra of the recording, or why there are none."""
    spans = np.array([part.times_s[-1] - part.times_s[0] for part in parts])
    longest = float(spans.max())
    segment_s = min(SEGMENT_S, max(LEAST_SEGMENT_S, float(spans.sum()) / 4.5))
    if float(spans[spans >= segment_s].sum()) < 2 * segment_s:
        segment_s = LEAST_SEGMENT_S
    if longest < 2 * LEAST_SEGMENT_S:
        return message(Tremors.too_short, longest_s=longest)
    found = spectra(parts, rate_hz, round(segment_s * rate_hz), uneven=uneven, top_hz=top_hz)
    return message(Tremors.nothing_fast, low_hz=LOW_HZ) if found is None else found


class _Sized(NamedTuple):
    """The movement by bands, of all that was recorded."""

    parts: list[Stretch]
    rate_hz: float
    uneven: bool
    found: Spectra

    def band(self, low_hz: float, high_hz: float) -> Banded:
        if self.uneven:
            return banded_uneven(self.found, low_hz, high_hz)
        return banded([part.values for part in self.parts], self.rate_hz, low_hz, high_hz)

    def crossing(self, top_hz: float) -> Estimate:
        # Uneven stamps leave a floor of noise in a spectrum of sinusoids, which the square of the frequency would raise.
        evened = [_evened(part, self.rate_hz) if self.uneven else part for part in self.parts]
        return crossing_estimate(banded([part.values for part in evened], self.rate_hz, SLOWEST_HZ, top_hz))


def _told(sized: _Sized, top_hz: float, still: bool, rounding_rms: float) -> TremorReport:
    found = sized.found
    looked = look(found, top_hz, still=still)
    sized_hz = (SIZED_HZ[0], min(SIZED_HZ[1], top_hz))
    crossing = Estimate.missing(_MEANT, n=0)
    if still:
        crossing = sized.crossing(top_hz)
    searched = message(Tremors.searched, low_hz=LOW_HZ, top_hz=top_hz, rate_hz=sized.rate_hz, uneven=sized.uneven)
    in_band = sized.band(*sized_hz)
    nowhere = Estimate.missing(message(Tremors.peak_none), n=found.parts.shape[0])
    report = TremorReport(
        stands_out=False,
        frequency_hz=nowhere,
        band_rms=rms_estimate(in_band),
        peak_rms=nowhere,
        excess_rms=nowhere,
        share=nowhere,
        crossing_hz=crossing,
        sentence=message(Tremors.none, searched=searched),
        band_hz=sized_hz,
        crossing_band_hz=(SLOWEST_HZ, top_hz),
        pace_hz=looked.pace_hz,
        multiples=looked.multiples,
        other_hz=looked.other_hz,
        set_aside_s=found.set_aside.seconds if found.set_aside else 0.0,
        set_aside_times=found.set_aside.times if found.set_aside else None,
    )
    strongest, further = in_band, list[Text]()
    if looked.peak is not None:
        with_peak, in_peak = _with_peak(report, sized, looked.peak, top_hz, searched)
        if with_peak.excess_rms.number > rounding_rms:
            report, strongest = with_peak, in_peak
        else:
            further.append(message(Tremors.below_rounding, peak_hz=with_peak.frequency_hz.number))
    axis = principal_axis(strongest)
    if axis is not None:
        report = replace(report, axis=axis.direction, axis_share=axis.share)
    further += _further(report, looked, still)
    if further:
        report = replace(report, sentence=message(Tremors.whole, told=report.sentence, further=tuple(further)))
    return report


def _with_peak(
    report: TremorReport, sized: _Sized, peak: Peak, top_hz: float, searched: Text
) -> tuple[TremorReport, Banded]:  # fmt: skip
    """The report with a peak's frequency and sizes, and the movement in the peak's band."""
    frequency = _frequency(sized.found, peak, top_hz)
    low_hz, high_hz = peak.low_hz, peak.high_hz
    if not peak.broad:
        low_hz, high_hz = max(LOW_HZ, frequency.number - ABOUT_HZ), min(top_hz, frequency.number + ABOUT_HZ)
    near, every = sized.band(low_hz, high_hz), sized.band(LOW_HZ, top_hz)
    share = share_estimate(near, every)
    sentence = message(
        Tremors.broad if peak.broad else Tremors.rhythm,
        frequency=frequency,
        share=share,
        low_hz=low_hz,
        high_hz=high_hz,
        searched=searched,
    )
    return replace(
        report, stands_out=True, frequency_hz=frequency, peak_rms=rms_estimate(near), share=share,
        excess_rms=_excess(sized.found, peak, top_hz), sentence=sentence, peak_hz=(low_hz, high_hz), broad=peak.broad,
    ), near  # fmt: skip


def _frequency(found: Spectra, peak: Peak, top_hz: float) -> Estimate:
    """The middle of a peak, at the usual level of movement; no interval where it may lie beyond the band."""
    told = [
        middle_of(found.frequency_hz, power, peak, found.dof(), top_hz)
        for power in (found.power, *found.power_without())
    ]  # fmt: skip
    value = told[0][0]
    if any(at_end for _, at_end in told):
        edge = LOW_HZ if value < (LOW_HZ + top_hz) / 2 else top_hz
        why = message(Tremors.at_edge, edge_hz=edge)
        if min(abs(value - LOW_HZ), abs(value - top_hz)) > 1.5 * ABOUT_HZ:
            why = message(Tremors.parts_differ)
        return Estimate.unbounded(value, why, n=found.parts.shape[0])
    frequency = jackknife(value, [each for each, _ in told[1:]], least_half_width=CLOCK * value)
    if not frequency.has_interval:
        return frequency
    # Parts of the recording share half a segment with their neighbours, so that they tell less than they seem to.
    most = max(ABOUT_HZ, (peak.high_hz - peak.low_hz) / 2)
    half = min(most, (frequency.upper - value) * math.sqrt(1 + 2 * SEGMENTS_SHARED))
    return replace(frequency, low=value - half, high=value + half)


def _excess(found: Spectra, peak: Peak, top_hz: float) -> Estimate:
    """Rms of what rises above the background in a peak's band, of the whole recording."""
    power, segments = found.whole_power, found.segments
    every = segments @ power / segments.sum()
    without = (
        [every] if len(segments) < 2 else left_one_out(segments[:, None] * power) / left_one_out(segments)[:, None]
    )
    squares = [excess_of(found.frequency_hz, each, peak, found.dof(), top_hz) for each in (every, *without)]
    return jackknife(math.sqrt(squares[0]), np.sqrt(squares[1:]), positive=True)


def _further(report: TremorReport, looked: Looked, still: bool) -> list[Text]:
    """What a reader must know beside the peak: pace, multiples of it, violent stretches."""
    said: list[Text] = []
    if looked.within is not None:
        said.append(message(Tremors.strongest_of, low_hz=looked.within[0], high_hz=looked.within[1]))
    if report.stands_out and not still and (looked.is_pace or report.frequency_hz.number < PACE_HZ[1]):
        said.append(message(Tremors.may_be_meant))
    if report.multiples and report.pace_hz is not None:
        times, peaks_hz = zip(*report.multiples, strict=True)
        said.append(message(Tremors.multiples, times=times, peaks_hz=peaks_hz, pace_hz=report.pace_hz))
    if report.other_hz is not None:
        said.append(message(Tremors.other, other_hz=report.other_hz))
    if looked.faster_hz is not None:
        said.append(message(Tremors.faster, faster_hz=looked.faster_hz, hand_hz=TREMOR_HZ))
    if report.set_aside_times is not None:
        larger = report.set_aside_times
        said.append(
            message(
                Tremors.set_aside,
                time_s=report.set_aside_s,
                times_factor=larger,
                kind="violent" if larger >= VIOLENT else "larger" if larger >= LARGER else "unlike",
            )
        )
    return said


def _crossing(frequency_hz: NDArray[np.float64], power: NDArray[np.float64], low_hz: float, top_hz: float) -> float:
    # The mean is taken out of each segment, which spoils bins 0 and 1 alone.
    used = (frequency_hz > 0) & (frequency_hz >= low_hz) & (frequency_hz <= top_hz)
    area = float(power[used].sum())
    return math.sqrt(float((power[used] * frequency_hz[used] ** 2).sum()) / area) if area > 0 else math.nan


def _power_of_two(samples: float, most: int) -> int:
    return int(2 ** min(round(math.log2(max(samples, 1))), math.floor(math.log2(max(most, 1)))))


def _checked_even(xy: ArrayLike, rate_hz: float) -> NDArray[np.float64]:
    if not (math.isfinite(rate_hz) and rate_hz > 0):
        raise BadInput(Problem("rate_hz", str(rate_hz), message(Signals.expected, what="rate")))
    values = np.asarray(xy, dtype=np.float64)
    values = checked_columns("xy", values, values.shape[0] if values.ndim else 0, None)
    if values.shape[0] < LEAST_SEGMENT_S * rate_hz:
        raise BadInput(_too_short(values.shape[0], rate_hz))
    if not np.isfinite(values).all():
        row = int(np.flatnonzero(~np.isfinite(values).all(axis=1))[0])
        raise BadInput(
            Problem(
                ("xy", message(FilePlaces.row, number=row + 1)),
                message(Signals.found, what="empty_cell"),
                message(Signals.expected, what="number"),
                message(Signals.remedy, what="tremor_report"),
            )
        )
    return values


def _too_short(samples: int, rate_hz: float) -> Problem:
    return Problem(
        "xy", message(Signals.few_samples, samples=samples, rate_hz=rate_hz), message(Signals.enough_samples, least_s=LEAST_SEGMENT_S),
        message(Signals.remedy, what="record_20_s"),
    )  # fmt: skip


def _no_answer(sentence: Message) -> TremorReport:
    unknown = Estimate.missing(sentence, n=0)
    return TremorReport(
        stands_out=False,
        frequency_hz=unknown,
        band_rms=unknown,
        peak_rms=unknown,
        excess_rms=unknown,
        share=unknown,
        crossing_hz=unknown,
        sentence=sentence,
    )
