"""Movement spectra averaged over segments, and the smooth background that a peak must rise above.

A segment spectrum is scaled so that its square is the one-sided power density summed over the
columns (x and y of a stick, or the axes of an accelerometer). The same scale holds for even stamps
(Fourier transform) and uneven ones (least-squares sinusoids), so all that follows is shared.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from statistics import median
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from stickwright.trace.intervals import left_one_out
from stickwright.trace.stamps import Stretch, even

__all__ = ["MOST_SMOOTHED", "SetAside", "Spectra", "background", "from_below", "spectra", "welch_sum"]

OVERLAP_LOSS = 1 / (1 + 2 / 36)
"""Hann segments that overlap by half share 1/36 of the variance of their powers with each neighbour [welch-1967]."""

BURST = 4.0  # times the usual power in one octave; chance alone hardly ever gives it
BLOCK = 128  # segments transformed at once: a few megabytes, however long the recording
HANN_SHARED = np.array([1.0, 4 / 9, 1 / 36])
"""Variance that Hann-weighted powers share with themselves and with bins one and two apart [harris-1978]."""

DEGREE = 3  # of the background in log frequency: a higher one would follow a broad peak
MEDIAN_HZ = 3.0  # to either side; a peak may be as wide before the middle notices
BELOW_HZ, LEAST_BELOW = (1.2, 4.0), 4  # where the slower side of a peak is read: so far below it; bins at least
FEW_BELOW = 10  # bins; a slope told from fewer is not taken at its word
SPREAD_OF_MIDDLE = 2.4  # variance of a middle over that of a mean (1.57), of Hann bins that share two thirds (1.5)
MOST_SMOOTHED = 9  # neighbouring bins that may be averaged
MOST_UNEVEN_SEGMENTS = 150  # uneven stamps cost a sum per frequency: of a long recording, this many even draws


class SetAside(NamedTuple):
    """What was too violent to look for a rhythm in, and was scaled down.

    Parameters
    ----------
    seconds : float
        How much of the recording.
    times : float
        Rms there over the usual rms, from 2 Hz to the upper limit.
    """

    seconds: float
    times: float


@dataclass(frozen=True, eq=False)
class Spectra:
    """Averaged spectra of one recording: at the usual level for telling a rhythm, and as they are for its size.

    Parameters
    ----------
    frequency_hz : array, shape (f,)
        Even grid from 0.
    parts : array, shape (parts, f)
        Power density summed over the segments of successive parts of the recording. A segment more violent
        than the middle one is scaled down to it, so that a burst does not drown or feign a rhythm.
    weights : array, shape (parts,)
        Segments in each part; a segment quieter than the middle one counts for less.
    shared_variance : array, shape (9,)
        Relative covariance of `power` at bins 0, 1, 2 ... apart, as the segments themselves scatter: this
        counts how many there are, their overlap, how alike the columns are, and movement that comes and goes.
    whole : array, shape (parts, f, c, c)
        Real part of the cross-spectra summed over the segments of each part, nothing scaled down.
    segments : array, shape (parts,)
        Segments in each part.
    set_aside : SetAside or None
        None when no segment was violent.
    """

    frequency_hz: NDArray[np.float64]
    parts: NDArray[np.float64]
    weights: NDArray[np.float64]
    shared_variance: NDArray[np.float64]
    whole: NDArray[np.float64]
    segments: NDArray[np.float64]
    set_aside: SetAside | None = None

    @property
    def bin_hz(self) -> float:
        return float(self.frequency_hz[1])

    def dof(self, bins: int = 1) -> float:
        """Degrees of freedom of the mean of so many neighbouring bins of `power`: 2 / relative variance."""
        apart = np.arange(bins)
        pairs = np.where(apart == 0, 1.0, 2.0) * (1 - apart / bins) / bins
        variance = float(pairs @ self.shared_variance[:bins])
        return 2 / max(variance, float(self.shared_variance[0]) / bins)

    @property
    def power(self) -> NDArray[np.float64]:
        """Mean power density at the usual level of movement, shape (f,)."""
        return np.asarray(self.parts.sum(axis=0) / self.weights.sum())

    @property
    def whole_power(self) -> NDArray[np.float64]:
        """Mean power density of each part as it is, shape (parts, f)."""
        return np.asarray(np.einsum("kfii->kf", self.whole) / self.segments[:, None])

    def power_without(self) -> NDArray[np.float64]:
        """The same with each part left out in turn, shape (parts, f)."""
        return left_one_out(self.parts) / left_one_out(self.weights)[:, None]


def _hann(length: int) -> NDArray[np.float64]:
    return np.asarray(0.5 - 0.5 * np.cos(2 * np.pi * np.arange(length) / length))


def _even_segments(runs: list[NDArray[np.float64]], rate_hz: float, length: int) -> Iterator[NDArray[np.complex128]]:
    """Blocks of scaled transforms, shape (segments, f, columns), half overlapping, each about its own mean."""
    window = _hann(length)
    scale = np.full(length // 2 + 1, np.sqrt(2 / (rate_hz * float((window**2).sum()))))
    scale[0] /= np.sqrt(2)
    if length % 2 == 0:
        scale[-1] /= np.sqrt(2)
    for run in runs:
        if run.shape[0] < length:
            continue
        windows = np.lib.stride_tricks.sliding_window_view(run, length, axis=0)[:: max(1, length - length // 2)]
        for first in range(0, windows.shape[0], BLOCK):
            block = windows[first : first + BLOCK]
            centred = (block - block.mean(axis=2, keepdims=True)) * window
            yield np.fft.rfft(centred, axis=2).transpose(0, 2, 1) * scale[:, None]


def _uneven_segments(
    parts: list[Stretch], rate_hz: float, length: int, frequency_hz: NDArray[np.float64]
) -> Iterator[NDArray[np.complex128]]:
    """The same from stamps as they are: one least-squares sinusoid per frequency, Hann weighted.

    The slow, large part goes first, since on uneven stamps its leakage would fill the whole spectrum; it is a smooth
    curve, so that its own transform is taken from even readings of it and added again.
    """
    from scipy.signal import lombscargle

    span_s = length / rate_hz
    parted = [(part, *_without_slow_part(part)) for part in parts]
    starts = [
        (one, float(start))
        for one in parted
        for start in np.arange(one[0].times_s[0], one[0].times_s[-1] - span_s + 1e-9, span_s / 2)
    ]
    if len(starts) > MOST_UNEVEN_SEGMENTS:
        starts = [starts[k] for k in np.linspace(0, len(starts) - 1, MOST_UNEVEN_SEGMENTS).astype(int)]
    for (_, part, slow), start in starts:
        a, b = np.searchsorted(part.times_s, (start, start + span_s))
        if b - a < length // 2:
            continue
        times = part.times_s[a:b] - start
        weights = 0.5 - 0.5 * np.cos(2 * np.pi * times / span_s)
        bandwidth_hz = rate_hz * float((weights**2).sum()) / float(weights.sum()) ** 2
        angular = 2 * np.pi * frequency_hz[1:]
        values = part.values[a:b] - np.average(part.values[a:b], axis=0, weights=weights + 1e-12)
        columns = [lombscargle(times, column, angular, normalize="amplitude", weights=weights) for column in values.T]
        # scipy gives the amplitude of the cosine plus i times that of the sine: the conjugate of Fourier's.
        amplitudes = np.conj(np.column_stack(columns)) / np.sqrt(2 * bandwidth_hz)
        found = np.vstack([np.zeros((1, values.shape[1])), amplitudes])[None]
        if slow is not None:
            again = slow(start + np.arange(length) / rate_hz)
            (of_slow,) = _even_segments([again], rate_hz, length)
            found = found + of_slow[:, : found.shape[1]]
        yield found


def _without_slow_part(
    part: Stretch, below_hz: float = 0.8
) -> tuple[Stretch, Callable[[NDArray[np.float64]], NDArray[np.float64]] | None]:
    """What is left without the slow part, and the slow part; None where the stretch is too short to tell it."""
    from scipy.interpolate import CubicSpline
    from scipy.signal import butter, sosfiltfilt

    rate_hz = 8.0 * max(1.0, below_hz)
    span_s = part.times_s[-1] - part.times_s[0]
    if span_s < 4 / below_hz:
        return part, None
    means = _bin_means(part, rate_hz)
    smooth = sosfiltfilt(butter(2, below_hz, fs=rate_hz, output="sos"), means, axis=0)
    grid = part.times_s[0] + (np.arange(smooth.shape[0]) + 0.5) / rate_hz
    # Straight lines between so few points would leave images of the slow movement about 8 Hz.
    slow = CubicSpline(grid, smooth)
    return Stretch(part.times_s, part.values - slow(part.times_s)), slow


def _bin_means(part: Stretch, rate_hz: float) -> NDArray[np.float64]:
    bins = ((part.times_s - part.times_s[0]) * rate_hz).astype(np.intp)
    counts = np.bincount(bins)
    grid = np.arange(counts.size)
    filled = counts > 0
    return np.column_stack([
        np.interp(grid, grid[filled], np.bincount(bins, column)[filled] / counts[filled])
        for column in part.values.T
    ])  # fmt: skip


def welch_sum(values: NDArray[np.float64], rate_hz: float, length: int) -> tuple[NDArray[np.float64], ...]:
    """Welch's spectrum, summed over the columns.

    Parameters
    ----------
    values : array, shape (n, c)
        Even samples.
    rate_hz : float
        Samples a second.
    length : int
        Samples in a segment, at most n; Hann window, half overlapping, each about its own mean.

    Returns
    -------
    frequency_hz : array, shape (f,)
        From 0 to half the rate.
    power : array, shape (f,)
        Unit of the values squared, per hertz.

    Notes
    -----
    Source: [welch-1967].
    """
    total, count = np.zeros(length // 2 + 1), 0
    for block in _even_segments([values], rate_hz, length):
        total += (np.abs(block) ** 2).sum(axis=(0, 2))
        count += block.shape[0]
    return np.arange(total.size) * rate_hz / length, total / count


def spectra(
    stretches: list[Stretch], rate_hz: float, length: int, *, uneven: bool, top_hz: float,
    parts: int = 24,
) -> Spectra | None:  # fmt: skip
    """Averaged spectra of all stretches that hold at least one segment.

    Parameters
    ----------
    stretches : list of Stretch
        Parts of the recording without gaps.
    rate_hz : float
        Usual samples a second.
    length : int
        Samples in a segment.
    uneven : bool
        Take the stamps as they are (Lomb-Scargle) instead of evening them out first.
    top_hz : float
        No frequency above this is worked out for uneven stamps.
    parts : int, default 24
        Into how many successive parts the recording is cut at most.

    Returns
    -------
    Spectra or None
        None when no segment fits, or nothing moves in any.
    """
    frequency_hz = np.arange(length // 2 + 1) * rate_hz / length
    if uneven:
        frequency_hz = frequency_hz[frequency_hz <= top_hz + 3 * rate_hz / length]
        fitted = list(_uneven_segments(stretches, rate_hz, length, frequency_hz))
        runs: list[NDArray[np.float64]] = []
    else:
        runs = [even(stretch, rate_hz) for stretch in stretches]

    def blocks() -> Iterator[NDArray[np.complex128]]:
        return iter(fitted) if uneven else _even_segments(runs, rate_hz, length)

    judged = (frequency_hz >= 2.0) & (frequency_hz <= top_hz)
    levels = [_levels(frequency_hz, (np.abs(block) ** 2).sum(axis=2), judged) for block in blocks()]
    level = np.concatenate(levels) if levels else np.zeros((0, 1))
    moving = level[:, 0] > 0
    if not moving.any():
        return None
    shares, factors, largest = _equalising(level, moving)
    part_of = np.arange(shares.size) * min(parts, shares.size) // shares.size
    columns, count = stretches[0].values.shape[1], int(part_of[-1]) + 1
    sums = np.zeros((count, frequency_hz.size))
    whole = np.zeros((count, frequency_hz.size, columns, columns))
    square = np.zeros(shares.size)
    tally = _Tally(frequency_hz.size, columns)
    first = 0
    for block in blocks():
        rows = slice(first, first + block.shape[0])
        cross = np.einsum("kfi,kfj->kfij", block, block.conj()).real
        np.add.at(whole, part_of[rows], cross)
        as_is = np.einsum("kfii->kf", cross)
        square[rows] = as_is[:, judged].sum(axis=1)
        powers = as_is * factors[rows, None]
        np.add.at(sums, part_of[rows], powers)
        tally.add(block, powers, factors[rows], shares[rows])
        first += block.shape[0]
    return Spectra(
        frequency_hz=frequency_hz,
        parts=sums,
        weights=np.bincount(part_of, shares).astype(np.float64),
        shared_variance=tally.shared_variance(judged),
        whole=whole,
        segments=np.bincount(part_of).astype(np.float64),
        set_aside=_set_aside(square, largest, 0.5 * length / rate_hz),
    )


def _set_aside(square: NDArray[np.float64], largest: NDArray[np.float64], each_s: float) -> SetAside | None:
    """How long the violent segments last, and how large the movement is there; each stands for half its length."""
    violent = largest > BURST
    usual = float(np.median(square[~violent])) if not violent.all() else 0.0
    if not violent.any() or usual <= 0:
        return None
    return SetAside(float(violent.sum()) * each_s, float(np.sqrt(square[violent].mean() / usual)))


def _levels(
    frequency_hz: NDArray[np.float64], powers: NDArray[np.float64], judged: NDArray[np.bool_]
) -> NDArray[np.float64]:
    """Middle power of each segment: over all judged bins, then over each octave of them."""
    octaves = [judged & (frequency_hz >= low) & (frequency_hz < 2 * low) for low in (2.0, 4.0, 8.0, 16.0)]
    return np.column_stack([np.median(powers[:, each], axis=1) for each in (judged, *octaves) if each.any()])


def _equalising(
    level: NDArray[np.float64], moving: NDArray[np.bool_]
) -> tuple[NDArray[np.float64], NDArray[np.float64], NDArray[np.float64]]:
    """Weight of each segment, the factor on its powers, and its largest power over the usual, of all bins or one octave.

    A burst is scaled down to the usual level, also when it fills one octave alone (a tremor is narrower than
    that); a quiet segment is not scaled up, it has little to tell.
    """
    usual = np.median(level[moving], axis=0)
    relative = np.divide(level, usual, out=np.zeros_like(level), where=usual > 0)
    whole = relative[:, 0]
    inside = relative[:, 1:].max(axis=1, initial=0.0) / np.maximum(1.0, whole)
    calm = np.where(inside > BURST, 1 / np.maximum(inside, BURST), 1.0)
    shares = np.minimum(1.0, whole) * calm
    return shares, np.where(moving, calm / np.maximum(1.0, whole), 0.0), relative.max(axis=1)


class _Tally:
    """Sums over segments at the usual level from which their mean and its variance follow."""

    def __init__(self, bins: int, columns: int) -> None:
        self.share = self.share_squared = 0.0
        self.count = 0
        self.power, self.power_share = np.zeros(bins), np.zeros(bins)
        self.products = np.zeros((MOST_SMOOTHED, bins))
        self.cross = np.zeros((bins, columns, columns), dtype=np.complex128)

    def add(
        self,
        block: NDArray[np.complex128],
        powers: NDArray[np.float64],
        factors: NDArray[np.float64],
        shares: NDArray[np.float64],
    ) -> None:
        self.count += shares.size
        self.share += float(shares.sum())
        self.share_squared += float((shares**2).sum())
        self.cross += np.einsum("k,kfi,kfj->fij", factors, block, block.conj())
        self.power += powers.sum(axis=0)
        self.power_share += shares @ powers
        bins = powers.shape[1]
        for apart in range(min(MOST_SMOOTHED, bins)):
            self.products[apart, : bins - apart] += (powers[:, : bins - apart] * powers[:, apart:]).sum(axis=0)

    def shared_variance(self, judged: NDArray[np.bool_]) -> NDArray[np.float64]:
        """Relative covariance of the mean at bins 0, 1, 2 ... apart, averaged over the judged bins.

        Never less than steady noise would give: few segments can look alike by chance.
        """
        seen = np.zeros(MOST_SMOOTHED)
        index = np.flatnonzero(judged)
        mean = self.power / self.share
        unbiased = OVERLAP_LOSS * max(1, self.count - 1) / self.count * self.share**2
        for apart in range(min(MOST_SMOOTHED, index.size)):
            f, g = index[: index.size - apart], index[apart:]
            scatter = (
                self.products[apart, f]
                - mean[f] * self.power_share[g]
                - mean[g] * self.power_share[f]
                + mean[f] * mean[g] * self.share_squared
            )
            seen[apart] = float((scatter / (mean[f] * mean[g])).mean()) / unbiased
        segments = self.share**2 / self.share_squared
        steady = np.zeros(MOST_SMOOTHED)
        steady[:3] = HANN_SHARED * _alikeness(self.cross[judged], segments) / (segments * OVERLAP_LOSS)
        return np.maximum(seen, steady)


def _alikeness(matrix: NDArray[np.complex128], segments: float) -> float:
    """Share that the columns have in common: 1 when one column tells all, 1/c when c columns are equal and apart.

    tr(S^2)/tr(S)^2 of the true spectral matrix S, from its estimate C over K segments: for a complex Wishart
    matrix, E tr(C^2) = tr(S^2) + tr(S)^2/K and E tr(C)^2 = tr(S)^2 + tr(S^2)/K [goodman-1963].
    """
    columns = int(matrix.shape[1])
    if columns == 1 or segments < 2:
        return 1.0
    squared = np.einsum("fij,fji->f", matrix, matrix).real
    seen = float(np.median(squared / np.einsum("fii->f", matrix).real ** 2))
    true = float((seen - 1 / segments) / (1 - seen / segments))
    return min(1.0, max(1 / columns, true))


def background(
    frequency_hz: NDArray[np.float64],
    power: NDArray[np.float64],
    dof: float,
    low_hz: float,
    high_hz: float,
    *,
    corners: bool = True,
) -> NDArray[np.float64]:
    """The smooth spectrum under any peak.

    A cubic in log power over log frequency, equal weight for each octave, fitted robustly: bins that rise
    far above it (a peak and its multiples) lose their weight.

    Parameters
    ----------
    frequency_hz, power : array, shape (f,)
        Averaged spectrum.
    dof : float
        Degrees of freedom of one bin.
    low_hz, high_hz : float
        Where to fit; a little below the band in which peaks are sought.
    corners : bool, default True
        Be cautious at corners: see Notes. Right for telling whether a peak stands out, not for its size.

    Returns
    -------
    array, shape (f,)
        Expected power of a bin without a peak; NaN outside the fitted range.

    Notes
    -----
    Corners: where the middle power within 3 Hz to either side is higher than the curve, it takes its place: a
    spectrum that drops steeply onto a flat floor, as aimed movements give, has a corner that no smooth
    curve follows, while the middle of a falling row is the row itself.
    The mean of the logarithm of a chi-square over its degrees of freedom, digamma(d/2) - log(d/2), is
    taken out, and its spread, sqrt(trigamma(d/2)), sets what counts as far [abramowitz-1964].
    """
    from scipy.special import digamma, polygamma

    used = (frequency_hz >= low_hz) & (frequency_hz <= high_hz) & (power > 0)
    log_f = np.log(frequency_hz[used])
    log_p = np.log(power[used]) - float(digamma(dof / 2) - np.log(dof / 2))
    spread = float(np.sqrt(polygamma(1, dof / 2)))
    middle, half = (log_f[0] + log_f[-1]) / 2, (log_f[-1] - log_f[0]) / 2
    design = np.polynomial.legendre.legvander((log_f - middle) / half, DEGREE)
    octave = np.sqrt(1 / frequency_hz[used])
    robust = np.ones_like(log_f)
    for _ in range(30):
        weight = octave * np.sqrt(robust)
        fit = np.linalg.lstsq(design * weight[:, None], log_p * weight, rcond=None)[0]
        off = (log_p - design @ fit) / spread
        scale = max(1.0, float(np.median(np.abs(off))) / 0.6745)
        now = np.where(np.abs(off) < 4.685 * scale, (1 - (off / (4.685 * scale)) ** 2) ** 2, 0.0)
        settled = np.abs(now - robust).max() < 1e-4
        robust = now
        if settled:
            break
    under = np.full(frequency_hz.size, np.nan)
    under[used] = np.exp(design @ fit)
    return np.asarray(np.maximum(under, _running_median(frequency_hz, power, dof))) if corners else under


def _running_median(frequency_hz: NDArray[np.float64], power: NDArray[np.float64], dof: float) -> NDArray[np.float64]:
    """Middle power within 3 Hz to either side: follows a sharp corner, ignores a narrow peak."""
    from scipy.ndimage import median_filter

    half = max(1, round(MEDIAN_HZ / float(frequency_hz[1])))
    middle = median_filter(power, size=2 * half + 1, mode="nearest")
    return np.asarray(middle / (1 - 2 / (9 * dof)) ** 3)


def from_below(frequency_hz: NDArray[np.float64], power: NDArray[np.float64], dof: float) -> NDArray[np.float64]:
    """The power that slower movement leads to expect: what a peak must rise above on its lower side.

    Before the edge of a device's low-pass the power is no higher than at slower movement, although it stands above
    any smooth curve through the edge.

    Parameters
    ----------
    frequency_hz, power : array, shape (f,)
        Averaged spectrum.
    dof : float
        Degrees of freedom of one bin.

    Returns
    -------
    array, shape (f,)
        Expected power of a bin; 0 where there are too few bins below.

    Notes
    -----
    The middle power from 4 to 1.2 Hz below, with one standard error, taken to the place by a power law: the slope is
    that between the middles of the lower and the upper half of those bins (of fewer than ten: less steep by one
    standard error) and never rises.
    """
    bin_hz = float(frequency_hz[1])
    near, far = max(3, round(BELOW_HZ[0] / bin_hz)), round(BELOW_HZ[1] / bin_hz)
    expected = np.zeros(frequency_hz.size)
    middle_of = (1 - 2 / (9 * dof)) ** 3
    powers: list[float] = power.tolist()
    for place in range(near + LEAST_BELOW, frequency_hz.size):
        first, stop = max(1, place - far), place - near
        half = (first + stop) // 2
        lower, upper, level = median(powers[first:half]), median(powers[half:stop]), median(powers[first:stop])
        if min(lower, upper) <= 0:
            continue
        at = np.log([(first + half - 1) / 2, (half + stop - 1) / 2, (first + stop - 1) / 2, place])
        few = stop - first < FEW_BELOW
        of_ratio = np.sqrt(2 / dof * SPREAD_OF_MIDDLE * (1 / (half - first) + 1 / (stop - half))) if few else 0.0
        slope = min(0.0, float((np.log(upper / lower) + of_ratio) / (at[1] - at[0])))
        error = np.sqrt(2 / dof * SPREAD_OF_MIDDLE / (stop - first))
        expected[place] = level * (1 + error) * np.exp(slope * (at[3] - at[2])) / middle_of
    return expected
