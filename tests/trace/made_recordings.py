"""Recordings made for a test: every figure in them is invented."""

from __future__ import annotations

from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from stickwright.model.recorded import Finding
from stickwright.model.recording import Recording

THUMBSTICK = Path(__file__).parents[1] / "data" / "thumbstick"


def about(findings: tuple[Finding, ...] | list[Finding], key: str) -> list[Finding]:
    return [finding for finding in findings if finding.about == key]


def slow_noise(rng: np.random.Generator, n: int, sd: float, forgets: float = 0.9) -> NDArray[np.float64]:
    """First-order noise on two axes; neighbours correlate by `forgets`."""
    drawn = rng.normal(0.0, sd * np.sqrt(1 - forgets**2), (n, 2))
    drawn[0] /= np.sqrt(1 - forgets**2)
    for k in range(1, n):
        drawn[k] += forgets * drawn[k - 1]
    return drawn


def pushes(
    rng: np.random.Generator,
    *,
    directions_deg: tuple[float, ...] = (0, 45, 90, 135, 180, 225, 270, 315),
    repeats: int = 3,
    turn_deg: float | dict[float, float] = 0.0,
    matrix: NDArray[np.float64] | None = None,
    reach: float = 0.8,
    noise: float = 0.005,
    aim_sd_deg: float = 2.0,
) -> Recording:
    """Cued pushes of 1.5 s at 100 Hz, 1 s of rest between."""
    rest, push = 100, 150
    rows, cues, targets = [], [], []
    for direction in [d for d in directions_deg for _ in range(repeats)]:
        turned = turn_deg[direction] if isinstance(turn_deg, dict) else turn_deg
        angle = np.radians(direction + turned + rng.normal(0, aim_sd_deg))
        level = reach * (1 + rng.normal(0, 0.03)) * np.sin(np.linspace(0, np.pi, push)) ** 0.3
        path = level[:, None] * [np.cos(angle), np.sin(angle)]
        rows += [np.zeros((rest, 2)), path if matrix is None else path @ matrix.T]
        cues += ["rest"] * rest + ["push"] * push
        asked = np.radians(direction)
        targets += [[np.nan, np.nan]] * rest + [[np.cos(asked), np.sin(asked)]] * push
    xy = np.concatenate(rows)
    xy += rng.normal(0, noise, xy.shape)
    times_s = np.arange(len(xy)) / 100
    return Recording("pushes.csv", times_s, xy, cue=np.array(cues), cue_xy=np.array(targets, dtype=np.float64))


def thumbstick(name: str, *, raw: bool = False) -> Recording:
    """A real recording, raw sideways axis only or both axes as processed."""
    table = np.genfromtxt(THUMBSTICK / name, delimiter=",", names=True)
    if raw:
        xy = np.column_stack((table["raw_x_count"] / 80, np.full(len(table), np.nan)))
    else:
        xy = np.column_stack((table["stick_x"], table["stick_y"]))
    return Recording(name, table["time_s"], xy)
