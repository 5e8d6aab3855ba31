"""What one recording, a table of trials or a bench tells, in the terminal."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name, Text, Topic

__all__ = ["Heading", "Traces"]

Heading = Literal[
    "findings", "rest", "reach", "direction", "tremor", "bursts", "holds", "aiming", "following", "smoothness", "presses",
    "contact_point", "by_direction",
]  # fmt: skip


class Traces(Topic):
    """Headings, and lines without a full stop. `unit` is the recording's own where it is not a share of full output."""

    @abstractmethod
    def heading(self, *, part: Heading) -> str:
        """Headings: what is to be looked at, then the parts of a recording (rest, reach, direction, tremor, sudden
        movements, holds, aiming, following, smoothness, presses) and of a bench (all directions at the contact point,
        each direction)."""

    @abstractmethod
    def recording(
        self, *, recording: Name, task: Name, time_s: float, samples: int, rate_hz: float, unit: Name | None
    ) -> str:
        """First line of a recording: its name, task, length, samples, sampling rate, unit."""

    @abstractmethod
    def table(self, *, table: Name, kind: Literal["trials", "taps"], rows: int) -> str:
        """First line of a table of aimed movements or of presses."""

    @abstractmethod
    def bench(self, *, stick: Name, benched_on: Name | None) -> str:
        """First line of a bench: the stick, and the day (YYYY-MM-DD)."""

    @abstractmethod
    def no_centre(self, *, unit: Name) -> str:
        """Finding: no rest was asked for, so nothing that needs a centre can be told in the recording's own unit."""

    @abstractmethod
    def centre(self, *, told: Text) -> str:
        """Where the stick rests."""

    @abstractmethod
    def noise_unknown(self) -> str:
        """Noise and drift are not known, for the reason given for the centre."""

    @abstractmethod
    def noise_and_drift(self, *, value: Estimate, unit: Name | None) -> str:
        """Noise and drift are not known, for one reason."""

    @abstractmethod
    def noise(self, *, within: Estimate, between: Estimate | None, pooled: Estimate | None, unit: Name | None) -> str:
        """Movement at rest, rms for each axis: within a rest, from one rest to the next, over all of them."""

    @abstractmethod
    def drift(self, *, drift: Estimate, unit: Name | None) -> str:
        """How fast the centre drifts."""

    @abstractmethod
    def reach(self, *, direction_rad: float, reach: Estimate, unit: Name | None) -> str:
        """How far the stick gets in one direction."""

    @abstractmethod
    def reach_unknown(self, *, directions_rad: tuple[float, ...], why: Text | None) -> str:
        """Directions in which it is not known how far the stick gets, and why."""

    @abstractmethod
    def least_reach(self, *, direction_rad: float, area: Estimate) -> str:
        """Where the stick gets least far, and the area covered, of the disc of full travel."""

    @abstractmethod
    def rotation(self, *, turn: Estimate, resultant_share: float) -> str:
        """By how much pushes come out rotated against what was asked (anticlockwise), and how well they agree (1: all
        alike)."""

    @abstractmethod
    def cross_talk(self, *, cross_talk: Estimate) -> str:
        """Movement across the asked direction, as a share of that along it."""

    @abstractmethod
    def mirrored(self) -> str:
        """One axis of the stick is reversed."""

    @abstractmethod
    def base_stood(self, *, quarter_turns: Literal[1, 2, 3]) -> str:
        """How the base stood, by the quarter turns anticlockwise by which pushes came out rotated; where its own forward
        pointed; how to turn it."""

    @abstractmethod
    def tremor_size(self, *, told: Text) -> str:
        """Size of the tremor, with its bands."""

    @abstractmethod
    def tremor_line(self, *, axis: Text, power_share: float, low_hz: float | None, high_hz: float | None) -> str:
        """The line along which the tremor is strongest, and its share of the power of the peak (None), or of a band of
        frequencies."""

    @abstractmethod
    def crossing(self, *, frequency: Estimate, low_hz: float, high_hz: float) -> str:
        """How often the movement crosses its mean, and the band that was used."""

    @abstractmethod
    def no_bursts(self, *, rate: Estimate) -> str:
        """No sudden movement was seen; how many there may be all the same."""

    @abstractmethod
    def bursts(self, *, length: Estimate, why: Text | None) -> str:
        """How long sudden movements last; why their largest size is not told."""

    @abstractmethod
    def hold(
        self,
        *,
        direction_rad: float,
        level: Estimate,
        time_s: float,
        scatter: Estimate,
        slope: Estimate,
        unit: Name | None,
    ) -> str:
        """A hold: direction, deflection, how long, scatter, and how the deflection changes."""

    @abstractmethod
    def following(self, *, error: Estimate, without_lag: Estimate, unit: Name | None) -> str:
        """Error in following a target, rms, and what it would be if the movement were not late."""

    @abstractmethod
    def following_gain(self, *, gain: Estimate, lag: Estimate) -> str:
        """Size of the movement against the target's, and how late it is."""

    @abstractmethod
    def figure(self, *, what: Text, told: Text) -> str:
        """A figure of a bench behind its name."""

    @abstractmethod
    def bench_direction(self, *, direction_rad: float | None, start: Estimate, full: Estimate) -> str:
        """Actuation force and force at full travel in one direction, or in all (None)."""

    @abstractmethod
    def readings_used(self, *, used: int, readings: int, scatter_share: float, allowed: Text) -> str:
        """How many readings of a bench were used, the scatter of one, and what the intervals allow for."""
