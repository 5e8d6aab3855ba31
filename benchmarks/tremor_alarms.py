"""How often a recording without a tremor is told to hold one, for each kind of noise; the docstring of `tremor_report` states it.

Prints for each kind, length and rate the false alarms in 100 recordings, with the 95 % interval of that share. Seeds begin
far above those that the thresholds were set with and those of the tests, so that nothing was fitted to these recordings.

    python benchmarks/tremor_alarms.py [recordings of each kind, 400]
"""

from __future__ import annotations

import sys
from concurrent.futures import ProcessPoolExecutor
from itertools import product

import numpy as np
from numpy.typing import NDArray
from scipy.signal import lfilter
from scipy.stats import beta

from stickwright.trace.tremor import tremor_report

SEED = 7_300_000
SECONDS = (20.0, 30.0, 60.0)
RATES_HZ = (60.0, 100.0)

Array = NDArray[np.float64]
Rng = np.random.Generator


def falling(exponent: float, n: int, rate_hz: float, rng: Rng) -> Array:
    """Two columns with power falling as 1/f^exponent, cut out of a longer run so that the ends do not meet."""
    frequency_hz = np.fft.rfftfreq(4 * n, 1 / rate_hz)
    frequency_hz[0] = frequency_hz[1]
    white = np.fft.rfft(rng.standard_normal((4 * n, 2)), axis=0)
    return np.asarray(np.fft.irfft(white * frequency_hz[:, None] ** (-exponent / 2), axis=0)[n : 2 * n])


def low_passed(n: int, rate_hz: float, rng: Rng) -> Array:
    """White noise after a first-order low-pass at 1 to 5 Hz."""
    kept = np.exp(-2 * np.pi * rng.uniform(1.0, 5.0) / rate_hz)
    return np.asarray(lfilter([1 - kept], [1.0, -kept], rng.standard_normal((n + 1000, 2)), axis=0)[1000:])


def bursting(n: int, rate_hz: float, rng: Rng) -> Array:
    """White noise whose size comes and goes over seconds, by a factor of three each way."""
    slow = lfilter([1.0], [1.0, -np.exp(-1 / (2.0 * rate_hz))], rng.standard_normal(n + 2000))[2000:]
    return rng.standard_normal((n, 2)) * np.asarray(np.exp(1.1 * slow / slow.std()))[:, None]


def aimed(n: int, rate_hz: float, rng: Rng) -> Array:
    """Minimum-jerk movements from place to place, with pauses and a little sensor noise."""
    pieces: list[Array] = []
    here, done = np.zeros(2), 0
    while done < n:
        there = rng.uniform(-1, 1, 2)
        s = np.linspace(0, 1, int(rng.uniform(0.4, 1.2) * rate_hz))[:, None]
        pieces += [here + (there - here) * (10 * s**3 - 15 * s**4 + 6 * s**5)]
        pieces += [np.repeat(there[None], int(rng.uniform(0.2, 0.6) * rate_hz), axis=0)]
        here, done = there, done + len(pieces[-1]) + len(pieces[-2])
    return np.vstack(pieces)[:n] + rng.normal(0, 0.002, (n, 2))


def sway(n: int, rate_hz: float, rng: Rng) -> Array:
    """A hump of slow sway between 0.8 and 1.8 Hz over a little white noise."""
    middle_hz = rng.uniform(0.8, 1.8)
    frequency_hz = np.fft.rfftfreq(4 * n, 1 / rate_hz)
    shape = np.exp(-0.5 * ((frequency_hz - middle_hz) / (0.35 * middle_hz)) ** 2)
    white = np.fft.rfft(rng.standard_normal((4 * n, 2)), axis=0)
    moved = np.fft.irfft(white * shape[:, None], axis=0)[n : 2 * n]
    return np.asarray(moved / moved.std() + rng.normal(0, 0.02, (n, 2)))


KINDS = {
    "white noise": lambda n, rate_hz, rng: falling(0.0, n, rate_hz, rng),
    "1/f noise": lambda n, rate_hz, rng: falling(1.0, n, rate_hz, rng),
    "1/f^2 noise": lambda n, rate_hz, rng: falling(2.0, n, rate_hz, rng),
    "low-pass noise": low_passed,
    "bursting noise": bursting,
    "sway of 0.8 to 1.8 Hz": sway,
    "aimed movements": aimed,
}


def alarms(job: tuple[str, float, float, int]) -> int:
    """Of so many recordings of one kind, length and rate, those in which a tremor stands out."""
    kind, seconds, rate_hz, number = job
    n = round(seconds * rate_hz)
    place = list(KINDS).index(kind)
    still = kind not in ("aimed movements", "1/f noise", "1/f^2 noise")
    found = 0
    for one in range(number):
        rng = np.random.default_rng([SEED + one, place, n, round(rate_hz)])
        found += tremor_report(np.arange(n) / rate_hz, KINDS[kind](n, rate_hz, rng), still=still).stands_out
    return found


def ends(found: int, number: int) -> tuple[float, float]:
    """Exact 95 % interval of a share, from the binomial distribution."""
    low = float(beta.ppf(0.025, found, number - found + 1)) if found else 0.0
    high = float(beta.ppf(0.975, found + 1, number - found)) if found < number else 1.0
    return low, high


def main(number: int) -> None:
    """Print the table."""
    jobs = [(kind, seconds, rate_hz, number) for kind, seconds, rate_hz in product(KINDS, SECONDS, RATES_HZ)]
    print(
        "| recordings without a tremor | length, s | samples a second | false alarms in 100 | 95% interval |\n|---|---|---|---|---|"
    )
    total = 0
    with ProcessPoolExecutor() as pool:
        for (kind, seconds, rate_hz, _), found in zip(jobs, pool.map(alarms, jobs), strict=True):
            low, high = ends(found, number)
            total += found
            print(
                f"| {kind} | {seconds:g} | {rate_hz:g} | {100 * found / number:.1f} | {100 * low:.1f} to {100 * high:.1f} |",
                flush=True,
            )
    low, high = ends(total, number * len(jobs))
    share = total / (number * len(jobs))
    print(f"| all | | | {100 * share:.1f} | {100 * low:.1f} to {100 * high:.1f} |")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 400)
