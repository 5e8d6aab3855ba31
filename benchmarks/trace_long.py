"""Time and memory of a recording's report at 1 kHz, against the same report of 15 minutes.

Prints minutes, seconds, the ratio of seconds to the first run, that ratio over the ratio of lengths
(1 is linear), and the peak memory above the imports, in units of the samples themselves (24 bytes each:
time, x, y). Each run is a process of its own, so that peaks do not hide each other.

    python benchmarks/trace_long.py [minutes ...]
"""

from __future__ import annotations

import resource
import subprocess
import sys
import time

RATE_HZ = 1000
SAMPLE_BYTES = 24


def peak_bytes() -> int:
    """Largest resident size so far; Linux counts kilobytes."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * 1024


def run(minutes: float) -> tuple[float, float]:
    """Seconds, and peak memory over the samples' size, of one report."""
    import numpy as np

    from stickwright.model.recording import Recording
    from stickwright.trace.report import trace_report

    rng = np.random.default_rng(1)
    trace_report(played(0.5, rng))  # imports and compiles whatever is loaded at first use
    baseline = peak_bytes()
    recording = played(minutes, rng)
    assert isinstance(recording, Recording)
    started = time.perf_counter()
    report = trace_report(recording, rng)
    seconds = time.perf_counter() - started
    if report.rest is None or report.reach is None:
        raise SystemExit("the made recording should tell rest and reach")
    return seconds, (peak_bytes() - baseline) / (SAMPLE_BYTES * len(recording.times_s))


def played(minutes: float, rng):  # type: ignore[no-untyped-def]
    """Pushes of a second in all directions with a second of rest between, a little noise; made in place."""
    import numpy as np

    from stickwright.model.recording import Recording

    n = round(minutes * 60 * RATE_HZ)
    times_s = np.arange(n, dtype=np.float64)
    times_s /= RATE_HZ
    xy = np.empty((n, 2))
    stroke = 0.9 * np.sin(np.linspace(0, np.pi, RATE_HZ)) ** 0.5
    for start in range(0, n, 2 * RATE_HZ):
        angle, home = rng.uniform(0, 2 * np.pi), rng.normal(0, 0.01, 2)
        part = xy[start : start + 2 * RATE_HZ]
        part[:] = home + rng.normal(0, 0.004, part.shape)
        push = part[RATE_HZ:]
        push += stroke[: len(push), None] * [np.cos(angle), np.sin(angle)]
    return Recording("made.csv", times_s, xy, task="play")


def main(lengths_min: list[float]) -> None:
    """One process per length, one line each."""
    print("minutes  seconds  ratio  per length  peak memory / samples")
    first: tuple[float, float] | None = None
    for minutes in lengths_min:
        answer = subprocess.run(
            [sys.executable, __file__, "--one", str(minutes)], capture_output=True, text=True, check=True
        )
        seconds, memory = map(float, answer.stdout.split())
        first = first or (minutes, seconds)
        ratio = seconds / first[1]
        print(f"{minutes:7g}  {seconds:7.2f}  {ratio:5.2f}  {ratio / (minutes / first[0]):10.2f}  {memory:6.2f}")


if __name__ == "__main__":
    if sys.argv[1:2] == ["--one"]:
        print(*run(float(sys.argv[2])))
    else:
        main([float(argument) for argument in sys.argv[1:]] or [15.0, 30.0, 60.0])
