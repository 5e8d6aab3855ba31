"""Which peak of an averaged spectrum stands out, where its middle lies, and what is the shape of a meant movement.

Frequencies are sought in one band for all tasks.
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from stickwright.trace.spectrum import MOST_SMOOTHED, Spectra, background, from_below

__all__ = [
    "ABOUT_HZ",
    "HIGH_HZ",
    "LOW_HZ",
    "TREMOR_HZ",
    "Looked",
    "Peak",
    "about",
    "excess_of",
    "largest",
    "look",
    "middle_of",
    "vertex",
]

Array = NDArray[np.float64]

LOW_HZ = 2.0
"""Slower than this, tremor and voluntary movement cannot be told apart."""

HIGH_HZ = 25.0
"""Up to here the movement is looked at and its size told."""

TREMOR_HZ = 15.0
"""A peak that is faster is not called a rhythm of the hand: tremor of arms and hands is slower, and only that of
standing legs is faster [bhatia-2018]."""

FALSE_ALARMS = 0.035  # of each of two looks that mostly agree: about 5 in 100 together
LEAST_RATIO, LEAST_WIDE_RATIO = 1.5, 1.25
"""A peak that rises less above its background is of no use, however certain."""

WIDE_HZ = 1.0  # tremor wanders: besides single bins, means over this width are tested
ABOUT_HZ = 1.0  # "about the peak": this far to either side
BELL_HZ, GRID_HZ = 1.0, 0.02  # the bell that finds the middle of a peak, and the steps in which it is moved
PACE_HZ = (0.3, 4.0)
"""Paces that a task can have: to and fro, turning, tapping as fast as possible."""

PACE_SHARE = 0.6  # of the movement below its double lies in the three bins of a pace
BROAD_FALL = 4.0  # times lower on both sides: a hump of its own, not the side of something slower
BROAD_SHARE = 0.5  # of the movement in the band lies in such a hump
NARROW_SHARE = 0.5  # of a hump; a peak in it that holds less, 1 Hz to either side, is one of many
MOST_LOOKS = 16  # peaks looked at, strongest first


class Peak(NamedTuple):
    """A peak that stands out.

    Parameters
    ----------
    bin : int
        Where it is strongest.
    low_hz, high_hz : float
        The band that it takes up.
    broad : bool
        Wider than a rhythm that merely wanders.
    """

    bin: int
    low_hz: float
    high_hz: float
    broad: bool


class Looked(NamedTuple):
    """What a look at a spectrum found.

    Parameters
    ----------
    peak : Peak or None
        The strongest that is not a multiple of the pace.
    pace_hz : float or None
        Pace of a meant movement.
    is_pace : bool
        The peak is that pace.
    multiples : tuple of (int, float)
        How many times the pace, and frequency, of the peaks that are the shape of the movement.
    other_hz : float or None
        Where the peak is the pace: a further one that is no multiple of it.
    within : tuple of float or None
        Ends of a broad hump that the peak stands in, hertz.
    faster_hz : float or None
        The strongest peak above `TREMOR_HZ`: no movement of a hand.
    """

    peak: Peak | None
    pace_hz: float | None = None
    is_pace: bool = False
    multiples: tuple[tuple[int, float], ...] = ()
    other_hz: float | None = None
    within: tuple[float, float] | None = None
    faster_hz: float | None = None


def look(found: Spectra, top_hz: float, *, still: bool) -> Looked:
    """The strongest peak that neither chance nor the shape of a meant movement explains.

    Three looks: single bins, means over 1 Hz, and humps that hold most of the movement. A mean over m bins of a Hann
    spectrum counts as independent every m/2 bins.

    Parameters
    ----------
    found : Spectra
    top_hz : float
        Upper end of the band.
    still : bool
        Nothing is meant: no pace is sought.

    Returns
    -------
    Looked
    """
    frequency_hz, power = found.frequency_hz, found.power
    pace_hz = None if still else pace(frequency_hz, power)
    main, is_pace, multiples, other, faster = None, False, list[tuple[int, float]](), None, None
    for peak, top in _raised(found, top_hz):
        at_hz = vertex(frequency_hz, power, top)
        if _is_slope(frequency_hz, power, top):
            continue
        if at_hz > TREMOR_HZ:
            faster = faster or at_hz
            continue
        of_pace = pace_hz is not None and abs(at_hz - pace_hz) <= max(1.5 * found.bin_hz, 0.05 * pace_hz)
        if of_pace and pace_hz is not None and pace_hz < LOW_HZ:
            continue  # the side of a pace below the band
        if _is_multiple(at_hz, pace_hz, found.bin_hz):
            multiples.append((round(at_hz / float(pace_hz or 1.0)), at_hz))
        elif main is None:
            main, is_pace = peak, of_pace
        elif is_pace and other is None and abs(at_hz - float(frequency_hz[main])) > ABOUT_HZ:
            other = at_hz
        if main is not None and not is_pace:
            break
    hump = _hump(found, top_hz)
    told = {} if pace_hz is None else dict(reversed(multiples))
    if main is None:
        alone = hump if hump is not None and not told else None
        return Looked(alone, pace_hz, False, tuple(sorted(told.items())), faster_hz=faster)
    middle = float(frequency_hz[main])
    band = Peak(main, max(LOW_HZ, middle - ABOUT_HZ), min(top_hz, middle + ABOUT_HZ), False)
    within = None
    if hump is not None and hump.broad and hump.low_hz <= middle <= hump.high_hz and not told:
        within = (hump.low_hz, hump.high_hz)
        if _power_from(found, band) < NARROW_SHARE * _power_from(found, hump):
            band, within = hump, None  # the strongest of many alike
    return Looked(
        peak=band,
        pace_hz=pace_hz,
        is_pace=is_pace,
        multiples=tuple(sorted(told.items())),
        other_hz=other,
        within=within,
        faster_hz=faster,
    )


def _power_from(found: Spectra, peak: Peak) -> float:
    inside = (found.frequency_hz >= peak.low_hz) & (found.frequency_hz <= peak.high_hz)
    return float(found.power[inside].sum())


def _raised(found: Spectra, top_hz: float) -> list[tuple[int, int]]:
    """Peaks that chance does not explain, strongest first: the bin that is raised, and the highest bin about it."""
    from scipy.stats import chi2

    frequency_hz, power, bin_hz = found.frequency_hz, found.power, found.bin_hz
    smooth = background(frequency_hz, power, found.dof(), LOW_HZ / 2, top_hz)
    smooth = np.maximum(smooth, from_below(frequency_hz, power, found.dof()))
    band = (frequency_hz >= LOW_HZ) & (frequency_hz <= top_hz)
    wide = min(MOST_SMOOTHED, max(3, round(WIDE_HZ / bin_hz) | 1))

    def limit(dof: float, looks: float, least: float) -> float:
        return max(least, float(chi2.isf(1 - (1 - FALSE_ALARMS) ** (1 / looks), dof)) / dof)

    bins = int(band.sum())
    narrow_limit = limit(found.dof(), bins, LEAST_RATIO)
    wide_limit = limit(found.dof(wide), 2 * bins / wide, LEAST_WIDE_RATIO)
    ratio = power / smooth
    peaks: list[tuple[int, int]] = []
    while len(peaks) < MOST_LOOKS:
        mean_ratio = np.convolve(ratio, np.full(wide, 1 / wide), "same")
        raised = band & ((np.nan_to_num(ratio) > narrow_limit) | (np.nan_to_num(mean_ratio) > wide_limit))
        if not raised.any():
            break
        peak = int(np.argmax(np.where(raised, smooth * (np.maximum(ratio, mean_ratio) - 1), -np.inf)))
        near = np.abs(np.arange(ratio.size) - peak) <= wide // 2
        top = int(np.argmax(np.where(near, np.nan_to_num(ratio), -np.inf)))
        peaks.append((peak, top))
        # The foot of a Hann peak is two bins wide; with it gone, the rest of the band is looked at again.
        ratio[max(0, top - 2) : top + 3] = 1.0
        ratio[peak] = 1.0
    return peaks


def _hump(found: Spectra, top_hz: float) -> Peak | None:
    """A hump that falls to a quarter on both sides and holds half of the movement: too broad for any background.

    Neither falling nor flat spectra have one: they do not fall towards slower movement. Tremor that wanders by hertz has.
    """
    frequency_hz, power, bin_hz = found.frequency_hz, found.power, found.bin_hz
    wide = min(MOST_SMOOTHED, max(3, round(WIDE_HZ / bin_hz) | 1))
    smooth = np.convolve(power, np.full(wide, 1 / wide), "same")
    band = (frequency_hz >= LOW_HZ) & (frequency_hz <= top_hz)
    top = int(np.argmax(np.where(band, smooth, -np.inf)))
    if frequency_hz[top] > TREMOR_HZ:
        return None
    low_end, high_end = smooth[top] / BROAD_FALL, smooth[top] / BROAD_FALL
    below = np.flatnonzero((smooth < low_end) & (frequency_hz >= LOW_HZ / 2) & (np.arange(power.size) < top))
    above = np.flatnonzero((smooth < high_end) & (frequency_hz <= top_hz) & (np.arange(power.size) > top))
    if not below.size or not above.size:
        return None
    inside = slice(int(below[-1]) + 1, int(above[0]))
    low_hz, high_hz = float(frequency_hz[inside][0]), float(frequency_hz[inside][-1])
    if float(power[inside].sum()) < BROAD_SHARE * float(power[band].sum()) or low_hz < LOW_HZ - bin_hz:
        return None
    return Peak(top, low_hz, high_hz, high_hz - low_hz > 2 * ABOUT_HZ + wide * bin_hz)


def pace(frequency_hz: Array, power: Array) -> float | None:
    """Pace of a steady meant movement: three bins hold most of the movement below its double.

    Parameters
    ----------
    frequency_hz, power : array, shape (f,)
        Averaged spectrum.

    Returns
    -------
    float or None
        Hertz, 0.3 to 4.

    Notes
    -----
    A recording of acceleration raises the double and the triple above the pace itself: where a half or a third of the
    strongest has a line of its own, that is the pace.
    """
    for high_hz in (PACE_HZ[1], LOW_HZ - 1e-9):
        top = largest(frequency_hz, power, PACE_HZ[0], high_hz)
        found = vertex(frequency_hz, power, top)
        slower = (frequency_hz >= PACE_HZ[0]) & (frequency_hz < max(LOW_HZ, 1.9 * found))
        if float(power[top - 1 : top + 2].sum()) >= PACE_SHARE * float(power[slower].sum()) > 0:
            return _undivided(frequency_hz, power, found)
    return None


def _undivided(frequency_hz: Array, power: Array, found_hz: float) -> float:
    bin_hz = float(frequency_hz[1])
    for times in (3, 2):
        part = found_hz / times
        if part < PACE_HZ[0] + 2 * bin_hz:
            continue
        near = largest(frequency_hz, power, part - 1.01 * bin_hz, part + 1.01 * bin_hz)
        beside = np.median(np.concatenate([power[max(1, near - 5) : near - 2], power[near + 3 : near + 6]]))
        if (
            power[near] > 6 * beside
            and power[near] > 0.05 * power[largest(frequency_hz, power, found_hz - bin_hz, found_hz + bin_hz)]
        ):
            return vertex(frequency_hz, power, near)
    return found_hz


def _is_slope(frequency_hz: Array, power: Array, top: int) -> bool:
    """Whether what is raised at the lower limit is the side of something slower: power still rises downwards.

    Sway of one to two hertz falls off more steeply than any smooth background and reaches over the limit.
    """
    return bool(frequency_hz[top] < LOW_HZ + ABOUT_HZ and power[max(0, top - 3) : top].max(initial=0.0) >= power[top])


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


def largest(frequency_hz: Array, power: Array, low_hz: float, top_hz: float) -> int:
    """Bin of the highest summit of a band; of the highest value, where it has no summit.

    Parameters
    ----------
    frequency_hz, power : array, shape (f,)
    low_hz, top_hz : float
    """
    band = (frequency_hz >= low_hz) & (frequency_hz <= top_hz)
    summit = np.zeros(power.size, dtype=bool)
    summit[1:-1] = (power[1:-1] >= power[:-2]) & (power[1:-1] >= power[2:])
    among = band & summit if (band & summit).any() else band
    return int(np.argmax(np.where(among, power, -np.inf)))


def vertex(frequency_hz: Array, power: Array, peak: int | None = None) -> float:
    """Frequency at the top of the parabola through the logarithm of three bins.

    Parameters
    ----------
    frequency_hz, power : array, shape (f,)
    peak : int or None
        The middle bin; None for the highest.
    """
    peak = int(np.argmax(power)) if peak is None else peak
    centre = float(frequency_hz[peak])
    if not 0 < peak < power.size - 1 or power[peak - 1 : peak + 2].min() <= 0:
        return centre
    left, middle, right = (math.log(each) for each in power[peak - 1 : peak + 2])
    bend = left - 2 * middle + right
    if bend >= 0:
        return centre
    return centre + min(0.5, max(-0.5, 0.5 * (left - right) / bend)) * float(frequency_hz[1] - frequency_hz[0])


def about(frequency_hz: Array, centre_hz: float) -> NDArray[np.bool_]:
    """Bins about a peak; at least three to either side, the foot of a Hann peak.

    Parameters
    ----------
    frequency_hz : array, shape (f,)
    centre_hz : float
    """
    return np.asarray(np.abs(frequency_hz - centre_hz) <= max(ABOUT_HZ, 3.01 * float(frequency_hz[1])))


def middle_of(frequency_hz: Array, power: Array, peak: Peak, dof: float, top_hz: float) -> tuple[float, bool]:
    """Where the middle of a peak lies, and whether it ran against an end of where it was sought.

    Parameters
    ----------
    frequency_hz, power : array, shape (f,)
        Averaged spectrum, of all parts or with one left out.
    peak : Peak
    dof : float
        Degrees of freedom of one bin.
    top_hz : float
        Upper end of the band.

    Returns
    -------
    float
        Hertz. A narrow peak: where a bell of 1 Hz to either side holds most of what rises above the background. A broad one: the
        mean frequency of its band, weighted with power.
    bool
        True: the peak may lie beyond, so that no interval can be told.

    Notes
    -----
    Single bins of a wandering tremor scatter; the bell shows where its middle is. Being smooth, and wide beside a bin,
    it finds a steady rhythm between bins without error. It may leave the band by its width, so that an end of the
    band does not hold it.
    """
    if peak.broad:
        inside = (frequency_hz >= peak.low_hz) & (frequency_hz <= peak.high_hz)
        return float(frequency_hz[inside] @ power[inside] / power[inside].sum()), False
    high_hz = min(top_hz + BELL_HZ, float(frequency_hz[-1]))
    smooth = background(frequency_hz, power, dof, LOW_HZ / 2, high_hz, corners=False)
    excess = np.nan_to_num(np.maximum(power - smooth, 0.0))
    ends = max(LOW_HZ / 2, float(frequency_hz[peak.bin]) - ABOUT_HZ), float(frequency_hz[peak.bin]) + ABOUT_HZ
    centre_hz = np.linspace(*ends, 2 + round((ends[1] - ends[0]) / GRID_HZ))
    some = (excess > 0) & (frequency_hz > ends[0] - BELL_HZ) & (frequency_hz < ends[1] + BELL_HZ)
    off = np.abs(centre_hz[:, None] - frequency_hz[None, some]) / BELL_HZ
    held = np.where(off < 1, np.cos(0.5 * np.pi * off) ** 2, 0.0) @ excess[some]
    best = int(np.argmax(held))
    found = vertex(centre_hz, held)
    at_end = best in (0, len(centre_hz) - 1) or not LOW_HZ <= found <= top_hz
    return min(max(found, LOW_HZ), top_hz), at_end


def excess_of(frequency_hz: Array, power: Array, peak: Peak, dof: float, top_hz: float) -> float:
    """Power of a peak above the background that the rest of the spectrum gives.

    Parameters
    ----------
    frequency_hz, power : array, shape (f,)
        Averaged spectrum.
    peak : Peak
    dof : float
        Degrees of freedom of one bin.
    top_hz : float
        Upper end of the band.

    Returns
    -------
    float
        Square of the unit of the values, 0 or more. Under a broad peak the background is the straight line, in
        logarithms, between its two ends.
    """
    bin_hz = float(frequency_hz[1])
    if peak.broad:
        inside = (frequency_hz >= peak.low_hz) & (frequency_hz <= peak.high_hz)
        index = np.flatnonzero(inside)
        ends = [float(np.mean(power[k - 1 : k + 2])) for k in (max(1, index[0] - 1), index[-1] + 1)]
        at = np.log(frequency_hz[[max(1, index[0] - 1), index[-1] + 1]])
        under = np.exp(np.interp(np.log(frequency_hz[inside]), at, np.log(np.maximum(ends, 1e-300))))
        return max(0.0, float((power[inside] - under).sum())) * bin_hz
    band = (frequency_hz >= LOW_HZ) & (frequency_hz <= top_hz)
    near = band & about(frequency_hz, float(frequency_hz[peak.bin]))
    smooth = background(frequency_hz, power, dof, LOW_HZ / 2, top_hz, corners=False)
    return max(0.0, float((power[near] - smooth[near]).sum())) * bin_hz
