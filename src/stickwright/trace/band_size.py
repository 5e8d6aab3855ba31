"""How large the movement is within a band of frequencies: of all that was recorded, nothing set aside.

Even samples are cut to the band and squared sample by sample, ends included. Very uneven ones are taken from the
averaged spectrum, where the ends count for less.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.intervals import Intervals
from stickwright.codes.message import message
from stickwright.trace.intervals import jackknife, left_one_out
from stickwright.trace.spectrum import Spectra

__all__ = [
    "Axis", "Banded", "banded", "banded_uneven", "crossing_estimate", "only_band", "principal_axis", "rms_estimate",
    "share_estimate",
]  # fmt: skip

Array = NDArray[np.float64]

BLOCKS = 24
LEAST_BLOCK_S = 1.0  # a shorter block is not independent of its neighbours
BEYOND_S = 5.0  # mirrored at either end, so that the ends count as much as the middle


@dataclass(frozen=True, eq=False)
class Banded:
    """Squares of the movement in one band, block by block.

    Parameters
    ----------
    squares : array, shape (k, c, c)
        Sum over the samples of each block of the products of the columns.
    slopes : array, shape (k,)
        Sum of the squares of frequency times movement, all columns: for the zero-crossing frequency.
    samples : array, shape (k,)
        How many samples each block holds.
    """

    squares: Array
    slopes: Array
    samples: Array


@dataclass(frozen=True)
class Axis:
    """The direction in which the movement of a band is largest.

    Parameters
    ----------
    direction : tuple of float
        Unit vector, one part for each column; the largest part is positive.
    share : float
        Of the squares of all columns, 0 to 1.
    """

    direction: tuple[float, ...]
    share: float


def only_band(values: Array, rate_hz: float, low_hz: float, high_hz: float, *, slope: bool = False) -> Array:
    """Even samples with everything outside a band taken out, without delay.

    Parameters
    ----------
    values : array, shape (n, c)
        Even samples.
    rate_hz : float
        Samples a second.
    low_hz, high_hz : float
        The band, both ends included.
    slope : bool, default False
        Multiply each frequency with itself (Hz): the slope, divided by 2 pi.

    Returns
    -------
    array, shape (n, c)
        About zero.

    Examples
    --------
    >>> t = np.arange(2000) / 100
    >>> slow, fast = np.sin(2 * np.pi * 0.5 * t), 0.1 * np.sin(2 * np.pi * 6 * t)
    >>> bool(np.abs(only_band((slow + fast)[:, None], 100.0, 3.0, 12.0)[:, 0] - fast)[100:-100].max() < 0.003)
    True
    """
    n = values.shape[0]
    beyond = min(n - 1, round(BEYOND_S * rate_hz))
    before = 2 * values[0] - values[beyond:0:-1]
    after = 2 * values[-1] - values[-2 : -beyond - 2 : -1]
    longer = np.concatenate([before, values, after])
    line = np.linspace(0.0, 1.0, len(longer))[:, None]
    longer = longer - (longer[0] + (longer[-1] - longer[0]) * line)  # else a jump where the ends meet
    frequency_hz = np.fft.rfftfreq(len(longer), 1 / rate_hz)
    gain = ((frequency_hz >= low_hz) & (frequency_hz <= high_hz)).astype(np.float64)
    if slope:
        gain *= frequency_hz
    kept = np.fft.irfft(np.fft.rfft(longer, axis=0) * gain[:, None], len(longer), axis=0)
    return np.asarray(kept[beyond : beyond + n])


def banded(runs: list[Array], rate_hz: float, low_hz: float, high_hz: float) -> Banded:
    """Squares in a band of even samples.

    Parameters
    ----------
    runs : list of array, shape (n, c)
        Even samples of each stretch without a gap.
    rate_hz : float
        Samples a second.
    low_hz, high_hz : float
        The band.

    Returns
    -------
    Banded
        In up to 24 blocks of a second or more.
    """
    total = sum(run.shape[0] for run in runs)
    length = max(LEAST_BLOCK_S * rate_hz, total / BLOCKS)
    squares, slopes, samples = [], [], []
    for run in runs:
        if run.shape[0] < 8:
            continue
        kept = only_band(run, rate_hz, low_hz, high_hz)
        slope = only_band(run, rate_hz, low_hz, high_hz, slope=True)
        blocks = max(1, math.floor(run.shape[0] / length + 1e-9))
        for piece in np.array_split(np.arange(run.shape[0]), blocks):
            squares.append(kept[piece].T @ kept[piece])
            slopes.append(float((slope[piece] ** 2).sum()))
            samples.append(len(piece))
    return Banded(np.array(squares), np.array(slopes), np.array(samples, dtype=np.float64))


def banded_uneven(found: Spectra, low_hz: float, high_hz: float) -> Banded:
    """The same from averaged spectra of uneven stamps.

    Parameters
    ----------
    found : Spectra
    low_hz, high_hz : float
        The band.

    Returns
    -------
    Banded
        One block for each part; a segment counts as one sample.
    """
    used = (found.frequency_hz > 0) & (found.frequency_hz >= low_hz) & (found.frequency_hz <= high_hz)
    inside = found.whole[:, used] * found.bin_hz
    slopes = np.einsum("kfii,f->k", inside, found.frequency_hz[used] ** 2)
    return Banded(np.asarray(inside.sum(axis=1)), np.asarray(slopes), found.segments)


def _totals(band: Banded) -> tuple[Array, Array]:
    """Mean square of all columns together: of everything, and with each block left out."""
    square = np.einsum("kii->k", band.squares)
    whole = np.asarray(square.sum() / band.samples.sum())
    if len(square) < 2:
        return whole, np.zeros(0)
    return whole, left_one_out(square) / left_one_out(band.samples)


def rms_estimate(band: Banded) -> Estimate:
    """Rms of the vector of all columns in a band.

    Returns
    -------
    Estimate
        Interval by leaving out one block at a time [tukey-1958].

    Examples
    --------
    >>> t = np.arange(2000) / 100
    >>> wave = 0.1 * np.sqrt(2) * np.sin(2 * np.pi * 5 * t)
    >>> round(rms_estimate(banded([wave[:, None]], 100.0, 3.0, 12.0)).value, 3)
    0.1
    """
    whole, without = _totals(band)
    return jackknife(math.sqrt(float(whole)), np.sqrt(without), positive=True)


def share_estimate(part: Banded, of: Banded) -> Estimate:
    """Share of the squares of one band in those of a wider one.

    Parameters
    ----------
    part, of : Banded
        In the same blocks.

    Returns
    -------
    Estimate
        0 to 1.
    """
    inside, without_inside = _totals(part)
    every, without_every = _totals(of)
    if float(every) <= 0:
        return Estimate.missing(message(Intervals.nothing_moved), n=0)
    found = jackknife(min(1.0, float(inside / every)), without_inside / np.maximum(without_every, 1e-300))
    if not found.has_interval:
        return found
    return Estimate(found.number, max(0.0, found.lower), min(1.0, found.upper), found.level, found.n)


def crossing_estimate(band: Banded) -> Estimate:
    """How often a second the movement of a band passes its mean upwards: the root of m2 over m0 [rice-1944].

    Returns
    -------
    Estimate
        Hertz.

    Examples
    --------
    >>> t = np.arange(2000) / 100
    >>> round(crossing_estimate(banded([np.sin(2 * np.pi * 3 * t)[:, None]], 100.0, 0.2, 25.0)).value, 2)
    3.0
    """
    square = np.einsum("kii->k", band.squares)
    if float(square.sum()) <= 0:
        return Estimate.missing(message(Intervals.nothing_moved), n=0)
    without = np.zeros(0)
    if len(square) > 1:
        without = np.sqrt(left_one_out(band.slopes) / np.maximum(left_one_out(square), 1e-300))
    return jackknife(math.sqrt(float(band.slopes.sum() / square.sum())), without, positive=True)


def principal_axis(band: Banded) -> Axis | None:
    """The direction in which a band moves most; None for one column.

    Returns
    -------
    Axis or None

    Examples
    --------
    >>> wave = np.sin(np.arange(2000) / 3)
    >>> found = principal_axis(banded([np.column_stack([0.6 * wave, 0 * wave, 0.8 * wave])], 100.0, 3.0, 12.0))
    >>> [round(part, 2) for part in found.direction], round(found.share, 3)
    ([0.6, 0.0, 0.8], 1.0)
    """
    matrix = band.squares.sum(axis=0)
    if matrix.shape[0] < 2 or not float(np.trace(matrix)) > 0:
        return None
    sizes, ways = np.linalg.eigh(matrix)
    way = ways[:, -1] * np.sign(ways[int(np.argmax(np.abs(ways[:, -1]))), -1])
    return Axis(tuple(float(part) + 0.0 for part in way), float(sizes[-1] / sizes.sum()))
