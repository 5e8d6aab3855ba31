"""What the bench told about a stick: results of `stickwright.mechanics.bench`, as they travel to kit and sheet."""

from __future__ import annotations

from dataclasses import dataclass

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Text
from stickwright.model.recorded import Finding

__all__ = ["BenchLine", "BenchReading", "BenchResult", "OutputGain"]


@dataclass(frozen=True)
class BenchReading:
    """One reading as it was taken, and whether it was used."""

    number: int
    """Counted from 1, in the order given."""
    direction_rad: float | None
    angle_rad: float
    force_n: float
    outward: bool
    height_m: float
    output_share: float | None
    used: bool
    """False when it was left out: the others contradict it, or the stick stayed where it was."""
    expected_n: Estimate | None = None
    """What a reading that was contradicted should have been."""


@dataclass(frozen=True)
class BenchLine:
    """Force against angle in one direction, or in all (direction None); forces at the stated height."""

    direction_rad: float | None
    preload_nm: Estimate
    stiffness_nm_per_rad: Estimate
    friction_nm: Estimate
    """NaN interval, and why, when all readings were taken one way: then the preload holds both."""
    start_force_n: Estimate
    """Pushing out, to leave the centre."""
    full_force_n: Estimate
    """Pushing out, at the stop."""


@dataclass(frozen=True)
class OutputGain:
    """Output against throw."""

    full_output_share: Estimate
    """Share of the throw at which the output reaches 1; above 1 when the stop comes first."""
    dead_share: Estimate
    """Dead travel at the centre, as a share of the throw."""


@dataclass(frozen=True)
class BenchResult:
    """A benched stick: force, throw, friction and output, with the readings they come from."""

    name: str
    height_m: float
    """Height of the contact point above the pivot at which forces are stated."""
    max_angle_rad: float
    travel_m: Estimate
    """Travel of the contact point from centre to stop."""
    pooled: BenchLine
    """Over all directions; intervals span the directions when they are unequal."""
    directions: tuple[BenchLine, ...]
    """Each direction by itself; empty when the readings are too few for that."""
    unequal: bool
    """The spring is not the same in all directions."""
    friction_force_n: Estimate
    residual_share: Estimate
    """Share of the throw down to which it comes home by itself; 0: it comes home."""
    returns: Text
    """Whether it returns to centre, or what it leaves."""
    scatter_share: float
    """Scatter of one reading as a share of the middle force."""
    output: OutputGain | None
    readings: tuple[BenchReading, ...]
    findings: tuple[Finding, ...]
    benched: str = ""
    """Date, YYYY-MM-DD."""
    level: float = 0.95
    """Coverage of the intervals."""
