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

from stickwright.errors import BadInput, Problem
from stickwright.model.estimate import Estimate
from stickwright.model.recorded import TremorReport
from stickwright.trace.intervals import jackknife
from stickwright.trace.spectrum import MOST_SMOOTHED, Spectra, background, spectra, welch_sum
from stickwright.trace.stamps import Stretch, checked_columns, checked_times, stretches, thinned
from stickwright.units import figures

__all__ = ["DominantTremor", "crossing_frequency", "dominant_tremor", "tremor_report"]

LOW_HZ = 2.0
"""Slower than this, tremor and voluntary movement cannot be told apart."""

HIGH_HZ = 25.0
"""Faster than this, no tremor of a limb has been described."""

USABLE_SHARE = 0.4
"""Of the sampling rate; nearer to half of it, what is faster folds back."""

FALSE_ALARMS = 0.035  # of each of two looks that mostly agree: about 5 in 100 together
LEAST_RATIO, LEAST_WIDE_RATIO = 1.5, 1.25
"""A peak that rises less above its background is of no use, however certain."""

WIDE_HZ = 1.0  # tremor wanders: besides single bins, means over this width are tested
ABOUT_HZ = 1.0  # "about the peak": this far to either side
BELL_HZ, GRID_HZ = 1.0, 0.02  # the bell that finds the middle of a peak, and the steps in which it is moved
CLOCK = 1e-4  # share by which a computer's clock may run wrong: no interval of a frequency is narrower
SEGMENTS_SHARED = 1 / 6
"""Correlation that half-overlapping Hann segments can have at most: that of their amplitudes [welch-1967]."""
SEGMENT_S = 5.12  # 512 samples at 100 Hz
LEAST_SEGMENT_S = 2.0
LEAST_TOP_HZ = 5.0
THINNED_HZ = 200.0  # uneven samples that come faster are averaged together: 25 Hz loses 3 % of its size


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
    peak = _largest(frequency_hz, power, LOW_HZ, top_hz)
    band = (frequency_hz >= LOW_HZ) & (frequency_hz <= top_hz)
    if power[band].sum() <= 0:
        raise BadInput(Problem("xy", "the same value throughout", "movement", "Record again with the stick live."))
    near = band & _about(frequency_hz, frequency_hz[peak])
    bin_hz = float(frequency_hz[1])
    rms = math.sqrt(float(power[near].sum()) * bin_hz)
    return DominantTremor(_vertex(frequency_hz, power, peak), rms, float(power[near].sum() / power[band].sum()))


def crossing_frequency(xy: ArrayLike, rate_hz: float, *, low_hz: float = 0.0) -> float:
    """Mean frequency of an involuntary movement: how often a second it passes its mean upwards.

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
        raise BadInput(Problem("xy", "the same value throughout", "movement", "Record again with the stick live."))
    return _crossing(frequency_hz, power, low_hz, top_hz)


def tremor_report(times_s: ArrayLike, xy: ArrayLike, *, still: bool = False) -> TremorReport:
    """Whether a rhythmic movement stands out, with intervals; "none stands out" is an answer.

    Voluntary movement is slow, so only 2 Hz and faster is searched, and a peak is judged against the smooth
    background that the rest of the spectrum gives: it stands out when a single bin, or the mean over 1 Hz,
    is higher than chance would make any of those searched in about 95 of 100 recordings without a peak.

    Parameters
    ----------
    times_s : array, shape (n,)
        Seconds, possibly uneven: small jitter is evened out at the usual rate, larger is taken as it is
        (Lomb-Scargle). Steps over 0.25 s are gaps and are never bridged.
    xy : array, shape (n, 2)
        Any number of columns from 1, any unit; NaN where a cell was empty.
    still : bool, default False
        The player was asked to keep still: nothing is voluntary then, so that no peak is put down to a voluntary
        pace, and `crossing_hz` counts the slow sway too. Otherwise it counts 2 Hz and faster.

    Returns
    -------
    TremorReport
        `rms` and `share` are of what rises above the background within 1 Hz of the peak, at the usual level of
        movement (stretches more violent than the middle one are scaled down); without a peak
        `rms` is of the whole band, and `frequency_hz` and `share` are NaN with the reason.

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
    The background is taken at its higher when two ways of finding it differ. Tried on recordings of 20 and 60 s at 60
    and 100 Hz without a peak (white, 1/f, 1/f^2, low-pass and bursting noise, aimed movements, sway of 0.8 to 1.8 Hz): 0
    to 8 false alarms in 100, 4 on average. What only rises towards 2 Hz is the side of slower sway, not a peak. A rhythm
    that somebody means to make is a peak too.
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
        return _no_answer("There are too few samples in a row to look for a tremor.")
    rate_hz, uneven = _sampling(parts)
    if uneven and rate_hz > THINNED_HZ:
        parts = [thinned(part, THINNED_HZ) for part in parts]
        rate_hz, uneven = _sampling(parts)
    top_hz = min(HIGH_HZ, USABLE_SHARE * rate_hz)
    if top_hz < LEAST_TOP_HZ:
        return _no_answer(
            f"Sampled {figures(rate_hz, 3)} times a second, only movement up to {figures(top_hz)} Hz can be told: too slow "
            "to look for a tremor. Record again at 50 samples a second or more."
        )
    whole = _whole(parts, rate_hz, top_hz, uneven)
    if isinstance(whole, str):
        return _no_answer(whole)
    return _told(whole, top_hz, rate_hz, uneven, still)


def _sampling(parts: list[Stretch]) -> tuple[float, bool]:
    """Samples a second, and whether they come too unevenly to be evened out."""
    steps = np.concatenate([np.diff(part.times_s) for part in parts])
    usual = float(np.median(steps))
    uneven = float(np.quantile(np.abs(steps - usual), 0.99)) > 0.5 * usual
    return 1 / (float(steps.mean()) if uneven else usual), uneven


def _whole(parts: list[Stretch], rate_hz: float, top_hz: float, uneven: bool) -> Spectra | str:
    """Spectra of the recording, or the sentence why there are none."""
    spans = np.array([part.times_s[-1] - part.times_s[0] for part in parts])
    longest = float(spans.max())
    segment_s = min(SEGMENT_S, max(LEAST_SEGMENT_S, float(spans.sum()) / 4.5))
    if float(spans[spans >= segment_s].sum()) < 2 * segment_s:
        segment_s = LEAST_SEGMENT_S
    if longest < 2 * LEAST_SEGMENT_S:
        return (
            f"The longest stretch without a gap is {longest:.2g} s: too short to look for a tremor. "
            "Record 20 s without a break."
        )
    found = spectra(parts, rate_hz, round(segment_s * rate_hz), uneven=uneven, top_hz=top_hz)
    return "Nothing moved faster than 2 Hz: no tremor peak stands out." if found is None else found


def _told(found: Spectra, top_hz: float, rate_hz: float, uneven: bool, still: bool) -> TremorReport:
    frequency_hz, bin_hz = found.frequency_hz, found.bin_hz
    band = (frequency_hz >= LOW_HZ) & (frequency_hz <= top_hz)
    power, without = found.power, found.power_without()
    low_hz = 0.0 if still else LOW_HZ
    crossing = jackknife(
        _crossing(frequency_hz, power, low_hz, top_hz),
        [_crossing(frequency_hz, each, low_hz, top_hz) for each in without],
        positive=True,
    )
    limit = f"between {LOW_HZ:g} and {figures(top_hz)} Hz"
    limit += f" (sampled {figures(rate_hz, 3)} times a second{', unevenly' if uneven else ''})"
    peak = _standing_out(found, top_hz, still)
    measured = (
        [] if peak is None else [_measured(frequency_hz, p, peak, found.dof(), top_hz) for p in (power, *without)]
    )
    if not measured or measured[0].rms == 0:
        why = "No tremor peak stands out."
        rms = [math.sqrt(float(each[band].sum()) * bin_hz) for each in (power, *without)]
        nowhere = Estimate.unbounded(math.nan, why, n=found.parts.shape[0])
        size = jackknife(rms[0], rms[1:], positive=True)
        sentence = f"No tremor peak stands out {limit}; all movement there is {figures(size.value)} rms."
        return TremorReport(False, nowhere, size, nowhere, crossing, sentence)
    frequency = jackknife(
        measured[0].frequency_hz, [each.frequency_hz for each in measured[1:]],
        least_half_width=CLOCK * measured[0].frequency_hz,
    )  # fmt: skip
    size = jackknife(measured[0].rms, [each.rms for each in measured[1:]], positive=True)
    share = jackknife(measured[0].share, [each.share for each in measured[1:]])
    if frequency.has_interval:
        # Parts of the recording share half a segment with their neighbours, so that they tell less than they seem to.
        half = min(ABOUT_HZ, (frequency.high - frequency.value) * math.sqrt(1 + 2 * SEGMENTS_SHARED))
        frequency = replace(frequency, low=frequency.value - half, high=frequency.value + half)
    if share.has_interval:
        share = replace(share, low=max(0.0, share.low), high=min(1.0, share.high))
    ends = f" ({frequency.low:.1f} to {frequency.high:.1f})" if frequency.has_interval else ""
    sentence = (
        f"A rhythmic movement at {frequency.value:.1f} Hz{ends} stands out: {figures(size.value)} rms, "
        f"{_percent(share.value)} of the movement {limit}."
    )
    if not still and frequency.value < 4:
        sentence += " A rhythm as slow as this may also be meant: look at the task, or record while keeping still."
    return TremorReport(True, frequency, size, share, crossing, sentence)


def _standing_out(found: Spectra, top_hz: float, still: bool) -> int | None:
    """Bin of the strongest peak that neither chance nor a voluntary pace (unless still) explains, or None.

    Two looks: single bins, and means over 1 Hz. A mean over m bins of a Hann spectrum counts as
    independent every m/2 bins.
    """
    from scipy.stats import chi2

    frequency_hz, power, bin_hz = found.frequency_hz, found.power, found.bin_hz
    smooth = background(frequency_hz, power, found.dof(), LOW_HZ / 2, top_hz)
    band = (frequency_hz >= LOW_HZ) & (frequency_hz <= top_hz)
    wide = min(MOST_SMOOTHED, max(3, round(WIDE_HZ / bin_hz) | 1))

    def limit(dof: float, looks: float, least: float) -> float:
        return max(least, float(chi2.isf(1 - (1 - FALSE_ALARMS) ** (1 / looks), dof)) / dof)

    bins = int(band.sum())
    narrow_limit = limit(found.dof(), bins, LEAST_RATIO)
    wide_limit = limit(found.dof(wide), 2 * bins / wide, LEAST_WIDE_RATIO)
    pace_hz = None if still else _slow_pace(frequency_hz, power)
    ratio = power / smooth
    while True:
        mean_ratio = np.convolve(ratio, np.full(wide, 1 / wide), "same")
        raised = band & ((np.nan_to_num(ratio) > narrow_limit) | (np.nan_to_num(mean_ratio) > wide_limit))
        if not raised.any():
            return None
        peak = int(np.argmax(np.where(raised, smooth * (np.maximum(ratio, mean_ratio) - 1), -np.inf)))
        near = np.abs(np.arange(ratio.size) - peak) <= wide // 2
        top = int(np.argmax(np.where(near, np.nan_to_num(ratio), -np.inf)))
        multiple = _is_multiple(_vertex(frequency_hz, power, top), pace_hz, bin_hz)
        if not multiple and not _is_slope(frequency_hz, power, top):
            return peak
        # The foot of a Hann peak is two bins wide; with it gone, the rest of the band is looked at again.
        ratio[max(0, top - 2) : top + 3] = 1.0
        ratio[peak] = 1.0


def _is_slope(frequency_hz: NDArray[np.float64], power: NDArray[np.float64], top: int) -> bool:
    """Whether what is raised at the lower limit is the side of something slower: power still rises downwards.

    Sway of one to two hertz falls off more steeply than any smooth background and reaches over the limit.
    """
    return bool(frequency_hz[top] < LOW_HZ + ABOUT_HZ and power[max(0, top - 3) : top].max(initial=0.0) >= power[top])


def _slow_pace(frequency_hz: NDArray[np.float64], power: NDArray[np.float64]) -> float | None:
    """Pace of a steady voluntary movement below 2 Hz: three bins hold most of the movement from 0.3 to 2 Hz."""
    slow = (frequency_hz >= 0.3) & (frequency_hz < LOW_HZ)
    top = _largest(frequency_hz, power, 0.3, LOW_HZ - 1e-9)
    if not slow.any() or float(power[top - 1 : top + 2].sum()) < 0.6 * float(power[slow].sum()):
        return None
    return _vertex(frequency_hz, power, top)


def _is_multiple(frequency: float, pace_hz: float | None, bin_hz: float) -> bool:
    """Whether a peak lies at 2, 3, 4 ... times a voluntary pace.

    Somebody who follows to and fro once a second leaves peaks at 2, 3, 4 ... Hz: they are the shape of the movement,
    not a tremor. A tremor that lies on one of them exactly is missed. Higher multiples of a pace that
    wavers by 3 % run into each other and are not told apart.
    """
    if pace_hz is None:
        return False
    times = round(frequency / pace_hz)
    off = max(0.6 * bin_hz, 0.03 * times * pace_hz)
    told_apart = times <= 4 or 2 * off <= 0.6 * pace_hz
    return times >= 2 and told_apart and abs(frequency - times * pace_hz) <= off


def _measured(
    frequency_hz: NDArray[np.float64], power: NDArray[np.float64], peak: int, dof: float, top_hz: float
) -> DominantTremor:
    """Frequency, rms and share of the peak near bin `peak`, above the background."""
    bin_hz = float(frequency_hz[1])
    smooth = background(frequency_hz, power, dof, LOW_HZ / 2, top_hz, corners=False)
    band = (frequency_hz >= LOW_HZ) & (frequency_hz <= top_hz)
    near = band & _about(frequency_hz, frequency_hz[peak])
    middle_hz = _middle(frequency_hz, np.nan_to_num(np.maximum(power - smooth, 0.0)), frequency_hz[near])
    excess = max(0.0, float((power[near] - smooth[near]).sum())) * bin_hz
    return DominantTremor(middle_hz, math.sqrt(excess), excess / (float(power[band].sum()) * bin_hz))


def _middle(frequency_hz: NDArray[np.float64], excess: NDArray[np.float64], near_hz: NDArray[np.float64]) -> float:
    """Where a bell of 1 Hz to either side holds most of what rises above the background.

    Single bins of a wandering tremor scatter; the bell shows where its middle is. Being smooth, and wide beside a bin,
    it finds a steady rhythm between bins without error.
    """
    ends = float(near_hz[0]), float(near_hz[-1])
    centre_hz = np.linspace(*ends, 2 + round((ends[1] - ends[0]) / GRID_HZ))
    some = (excess > 0) & (frequency_hz > ends[0] - BELL_HZ) & (frequency_hz < ends[1] + BELL_HZ)
    off = np.abs(centre_hz[:, None] - frequency_hz[None, some]) / BELL_HZ
    return _vertex(centre_hz, np.where(off < 1, np.cos(0.5 * np.pi * off) ** 2, 0.0) @ excess[some])


def _largest(frequency_hz: NDArray[np.float64], power: NDArray[np.float64], low_hz: float, top_hz: float) -> int:
    band = (frequency_hz >= low_hz) & (frequency_hz <= top_hz)
    summit = np.zeros(power.size, dtype=bool)
    summit[1:-1] = (power[1:-1] >= power[:-2]) & (power[1:-1] >= power[2:])
    among = band & summit if (band & summit).any() else band
    return int(np.argmax(np.where(among, power, -np.inf)))


def _vertex(frequency_hz: NDArray[np.float64], power: NDArray[np.float64], peak: int | None = None) -> float:
    """Frequency at the top of the parabola through the logarithm of three bins; the highest bin when none is named."""
    peak = int(np.argmax(power)) if peak is None else peak
    centre = float(frequency_hz[peak])
    if not 0 < peak < power.size - 1 or power[peak - 1 : peak + 2].min() <= 0:
        return centre
    left, middle, right = (math.log(each) for each in power[peak - 1 : peak + 2])
    bend = left - 2 * middle + right
    if bend >= 0:
        return centre
    return centre + min(0.5, max(-0.5, 0.5 * (left - right) / bend)) * float(frequency_hz[1] - frequency_hz[0])


def _about(frequency_hz: NDArray[np.float64], centre_hz: float) -> NDArray[np.bool_]:
    """Bins about a peak; at least three to either side, the foot of a Hann peak."""
    return np.abs(frequency_hz - centre_hz) <= max(ABOUT_HZ, 3.01 * float(frequency_hz[1]))


def _crossing(frequency_hz: NDArray[np.float64], power: NDArray[np.float64], low_hz: float, top_hz: float) -> float:
    # The mean is taken out of each segment, which spoils bins 0 and 1 alone.
    used = (frequency_hz > 0) & (frequency_hz >= low_hz) & (frequency_hz <= top_hz)
    area = float(power[used].sum())
    return math.sqrt(float((power[used] * frequency_hz[used] ** 2).sum()) / area) if area > 0 else math.nan


def _power_of_two(samples: float, most: int) -> int:
    return int(2 ** min(round(math.log2(max(samples, 1))), math.floor(math.log2(max(most, 1)))))


def _checked_even(xy: ArrayLike, rate_hz: float) -> NDArray[np.float64]:
    if not (math.isfinite(rate_hz) and rate_hz > 0):
        raise BadInput(Problem("rate_hz", str(rate_hz), "samples a second, above 0"))
    values = np.asarray(xy, dtype=np.float64)
    values = checked_columns("xy", values, values.shape[0] if values.ndim else 0, None)
    if values.shape[0] < LEAST_SEGMENT_S * rate_hz:
        raise BadInput(_too_short(values.shape[0], rate_hz))
    if not np.isfinite(values).all():
        row = int(np.flatnonzero(~np.isfinite(values).all(axis=1))[0])
        raise BadInput(
            Problem(f"xy, row {row + 1}", "an empty cell", "a number", "Use tremor_report, which allows for gaps.")
        )
    return values


def _too_short(samples: int, rate_hz: float) -> Problem:
    return Problem(
        "xy", f"{samples} samples at {rate_hz:g} a second", f"at least {LEAST_SEGMENT_S:g} s at 10 samples a second",
        "Record 20 s, at 50 samples a second or more.",
    )  # fmt: skip


def _percent(share: float) -> str:
    return f"{100 * share:.0f} %" if share >= 0.01 else "less than 1 %"


def _no_answer(sentence: str) -> TremorReport:
    unknown = Estimate.unbounded(math.nan, sentence, n=0)
    return TremorReport(False, unknown, unknown, unknown, unknown, sentence)
