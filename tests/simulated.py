"""Simulated sticks and players whose truth is known: for recovery tests and for the demo case.

Written apart from the package's own models, so that what the package recovers is checked by an independent
route. Everything is drawn from the generator that is passed in: the same seed gives the same numbers.

The model
---------
Stick: a sprung lever. Pushing out takes ``(preload + friction + stiffness * angle) / height`` at the contact
point, letting back ``(preload - friction + stiffness * angle) / height``, never below zero. A curved spring sags below
(or bulges above) that line between centre and stop, most half-way.

Gauge: errors in proportion and, when asked for, what repeating does not average away (`GaugeFaults`): held off square, held
otherwise in each direction, drifting from reading to reading. A visit's readings likewise (`VisitFaults`): a player who
tires from repeat to repeat or over the visit, one who has another day, a reading that slipped.

Player: in each direction a comfortable force at the centre and a free reach, straight between the eight
directions in the logarithm. The push left falls in a straight line to nothing at the end of the reach, and with
the minutes of effort by `tiring_per_min`. On a stick the player gets to where the push left meets the push
needed, or to the stop.

Involuntary force: Gaussian, alike and independent on both axes. Sway has a hump-shaped spectrum whose mean
frequency of upward crossings is `crossing_hz`; a tremor, if any, is a narrow hump at `tremor_hz` (sd 0.15 Hz).
Motor noise is slow, in proportion to the force in use. All of them move limb and stick together by force over
``stick stiffness + limb stiffness``, quasi-statically: no inertia, and the preload hides them only at rest.

Resting: the weight of the limb and the involuntary force together; below the start force the stick stays at home.

Seeing or feeling: pushes, holds and laps along the edge are made by feel, so that a base that was put on turned
shows in them; targets are aimed at and followed on a screen, so that the player's eye corrects turn and offset.

Sensor: output is the way over the throw, turned by `turn_rad`, plus an offset, plus white noise, cut to +-1 and
rounded to ``2 / 2**bits``; the clock jitters.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from stickwright.model.recording import Recording

Array = NDArray[np.float64]
EIGHT_RAD = np.arange(8) * math.pi / 4


@dataclass(frozen=True)
class SimulatedStick:
    """A lever whose true numbers are known; SI."""

    preload_nm: float
    stiffness_nm_per_rad: float
    friction_nm: float
    height_m: float
    stop_rad: float
    sag_share: float = 0.0
    """How far the force half-way lies below the straight line, as a share of the full force; minus is above it."""

    @classmethod
    def of(
        cls, start_n: float, full_n: float, travel_m: float, height_m: float, friction_n: float = 0.0
    ) -> SimulatedStick:
        """From what a practitioner knows of a stick: forces pushing out at the contact point, friction included."""
        stop = math.asin(travel_m / height_m)
        stiffness = (full_n - start_n) * height_m / stop
        return cls((start_n - friction_n) * height_m, stiffness, friction_n * height_m, height_m, stop)

    @property
    def travel_m(self) -> float:
        return self.height_m * math.sin(self.stop_rad)

    @property
    def start_n(self) -> float:
        return float(self.force_n(np.array(0.0)))

    @property
    def full_n(self) -> float:
        return float(self.force_n(np.array(self.stop_rad)))

    @property
    def contact_stiffness_n_per_m(self) -> float:
        return (self.full_n - self.start_n) / self.travel_m

    def force_n(self, angle_rad: Array, outward: NDArray[np.bool_] | bool = True) -> Array:
        """Force at the contact point, pushing out or letting back."""
        sign = np.where(outward, 1.0, -1.0)
        moment = self.preload_nm + sign * self.friction_nm + self.stiffness_nm_per_rad * angle_rad
        if self.sag_share:
            share = angle_rad / self.stop_rad
            whole = self.preload_nm + self.friction_nm + self.stiffness_nm_per_rad * self.stop_rad
            moment = moment - self.sag_share * whole * 4 * share * (1 - share)
        return np.asarray(np.maximum(moment, 0.0) / self.height_m)


@dataclass(frozen=True, eq=False)
class BenchTable:
    """Bench readings of one stick as they would be written down; one row each."""

    direction_rad: Array
    travel_m: Array
    outward: NDArray[np.bool_]
    force_n: Array


@dataclass(frozen=True)
class GaugeFaults:
    """What is wrong with a bench besides scatter."""

    off_square_rad: float = 0.0
    """The gauge is held off square by so much all along: it reads the cosine."""
    apart_share: float = 0.0
    """Sd of a factor on all readings of a direction."""
    apart_n: float = 0.0
    """Sd of a preload that each direction has more or less."""
    drift_n: float = 0.0
    """Creep of the zero from each reading to the next, either way."""
    wander_n: float = 0.0
    """Sd of a step of the zero from each reading to the next."""

    def factors(self, directions: int, rng: np.random.Generator) -> tuple[Array, Array]:
        """A factor and an addition for each direction."""
        times = np.exp(rng.normal(0, self.apart_share, directions)) if self.apart_share else np.ones(directions)
        more = rng.normal(0, self.apart_n, directions) if self.apart_n else np.zeros(directions)
        return np.asarray(math.cos(self.off_square_rad) * times), np.asarray(more)

    def zeros(self, n: int, rng: np.random.Generator) -> Array:
        """Zero of the gauge at each reading; true at the first."""
        creep = self.drift_n * rng.choice([-1, 1]) * np.arange(n) if self.drift_n else np.zeros(n)
        steps = np.concatenate([[0.0], rng.normal(0, self.wander_n, n - 1)]) if self.wander_n else np.zeros(n)
        return np.asarray(creep + np.cumsum(steps))


@dataclass(frozen=True)
class VisitFaults:
    """What is wrong with a visit's gauge readings of a player besides scatter."""

    lost_per_repeat: float = 0.0
    """Share of the force lost from each repeat to the next; the player is fresh again at the next direction."""
    lost_over_visit: float = 0.0
    """Share lost from the first direction to the end of the visit."""
    day: float = 1.0
    """Factor on all forces of this day."""
    slip_chance: float = 0.0
    slip_factor: float = 0.5
    """Chance that a reading slips, and what is then read of it."""

    def left(self, repeats: Array, place: float) -> Array:
        """Share of the fresh force of an ordinary day at each repeat, `place` of the visit gone."""
        over = (1 - self.lost_over_visit) ** place
        return np.asarray(self.day * over * (1 - self.lost_per_repeat) ** repeats)


NO_GAUGE_FAULTS, NO_VISIT_FAULTS = GaugeFaults(), VisitFaults()


def bench_table(
    stick: SimulatedStick,
    rng: np.random.Generator,
    *,
    directions_rad: tuple[float, ...] = (0.0,),
    shares: tuple[float, ...] = (0.0, 0.33, 0.67, 1.0),
    back: bool = True,
    scatter: float = 0.02,
    gauge_step_n: float = 0.0,
    unequal: tuple[float, ...] | None = None,
    slipped: tuple[int, float] | None = None,
    faults: GaugeFaults = NO_GAUGE_FAULTS,
) -> BenchTable:
    """Readings out and back in each direction.

    `shares` of the throw; `scatter` of one reading as a share of it; `unequal` a factor on the spring in each
    direction; `slipped` the row (from 0) whose force is multiplied, as when the gauge slid off.
    """
    rows: list[tuple[float, float, bool, float]] = []
    times, more = faults.factors(len(directions_rad), rng)
    zero = faults.zeros(len(directions_rad) * len(shares) * (2 if back else 1), rng)
    for place, direction in enumerate(directions_rad):
        factor = unequal[place] if unequal is not None else 1.0
        for way in (True, False) if back else (True,):
            for share in shares if way else shares[::-1]:
                angle = share * stick.stop_rad
                true = float(stick.force_n(np.array(angle), way)) * factor
                force = (true * times[place] + more[place]) * (1 + rng.normal(0, scatter)) + zero[len(rows)]
                force = max(force, 0.001)
                rows.append((direction, stick.height_m * math.sin(angle), way, _rounded(force, gauge_step_n)))
    direction_rad, travel_m, outward, force_n = zip(*rows, strict=True)
    force = np.array(force_n)
    if slipped is not None:
        force[slipped[0]] = _rounded(force[slipped[0]] * slipped[1], gauge_step_n)
    return BenchTable(np.array(direction_rad), np.array(travel_m), np.array(outward), force)


def _rounded(value: float, step: float) -> float:
    return round(value / step) * step if step > 0 else value


@dataclass(frozen=True)
class Sensor:
    """What stands between the stick and the recording."""

    offset: tuple[float, float] = (0.0, 0.0)
    noise: float = 0.003
    bits: int = 10
    rate_hz: float = 100.0
    jitter_s: float = 0.0005
    turn_rad: float = 0.0
    """The output comes out turned by so much, plus is anticlockwise."""

    def read(self, way_share: Array, rng: np.random.Generator, *, turned: bool = True) -> Array:
        """Output for a true way (share of the throw): what the player's hand did, as the recording has it."""
        seen = turn(way_share, self.turn_rad) if turned else way_share
        output = seen + np.asarray(self.offset) + rng.normal(0, self.noise, way_share.shape)
        step = 2.0 / 2**self.bits
        return np.asarray(np.round(np.clip(output, -1.0, 1.0) / step) * step)

    def clock(self, seconds: float, rng: np.random.Generator) -> Array:
        """Time stamps that never run backwards."""
        n = round(seconds * self.rate_hz)
        jitter = np.clip(rng.normal(0, self.jitter_s, n), -0.4 / self.rate_hz, 0.4 / self.rate_hz)
        times = np.arange(n) / self.rate_hz + jitter
        return np.asarray(times - times[0])


def turn(xy: Array, angle_rad: float) -> Array:
    """Rows turned anticlockwise."""
    c, s = math.cos(angle_rad), math.sin(angle_rad)
    return np.asarray(xy @ np.array([[c, s], [-s, c]]))


def unit(direction_rad: float) -> Array:
    return np.array([math.cos(direction_rad), math.sin(direction_rad)])


def hump_noise(
    n: int, rate_hz: float, mean_hz: float, sd_hz: float, rng: np.random.Generator, columns: int = 2
) -> Array:
    """Gaussian noise of unit variance with a hump-shaped spectrum; longer than asked, then cut, so as not to repeat."""
    size = 2 ** math.ceil(math.log2(max(1.5 * n, 64)))
    frequency = np.fft.rfftfreq(size, 1 / rate_hz)
    power = np.exp(-0.5 * ((frequency - mean_hz) / sd_hz) ** 2)
    power[0] = 0.0
    white = rng.normal(size=(len(frequency), columns)) + 1j * rng.normal(size=(len(frequency), columns))
    series = np.fft.irfft(white * np.sqrt(power)[:, None], size, axis=0)
    # the variance that this spectrum has on average: each bin counts twice, both its parts with variance 1
    return np.asarray(series[:n] / (2 * math.sqrt(power.sum()) / size))


def minimum_jerk(share_of_time: Array) -> Array:
    """Way of a smooth movement from 0 to 1 [flash-hogan-1985]."""
    t = np.clip(share_of_time, 0.0, 1.0)
    return np.asarray(10 * t**3 - 15 * t**4 + 6 * t**5)


@dataclass(frozen=True)
class SimulatedPlayer:
    """One body part whose true numbers are known; forces and reaches in the eight directions from 0, SI."""

    force_n: tuple[float, ...]
    reach_m: tuple[float, ...]
    rest_n: tuple[float, float] = (0.0, 0.0)
    """Resting force on the stick, right and forward."""
    sway_n: float = 0.0
    """Involuntary force, sd per axis, tremor left out."""
    crossing_hz: float = 1.3
    tremor_hz: float | None = None
    tremor_n: float = 0.0
    """Sd per axis."""
    limb_n_per_m: float = 50.0
    noise_share: float = 0.05
    tiring_per_min: float = 0.0
    reaction_s: float = 0.30
    aim_scatter: float = 0.04
    """Sd of an endpoint as a share of the way to it."""
    lag_s: float = 0.30
    follow_gain: float = 0.9

    def force_at(self, direction_rad: float, minutes: float = 0.0) -> float:
        return _round_circle(self.force_n, direction_rad) * math.exp(-self.tiring_per_min * minutes)

    def reach_at(self, direction_rad: float) -> float:
        return _round_circle(self.reach_m, direction_rad)

    def share_on(self, stick: SimulatedStick, direction_rad: float, minutes: float = 0.0) -> float:
        """Share of the throw at which the push left meets the push needed, by halving."""
        force, reach = self.force_at(direction_rad, minutes), self.reach_at(direction_rad)

        def left(angle: float) -> float:
            way = stick.height_m * math.sin(angle)
            return force * (1 - way / reach) - float(stick.force_n(np.array(angle)))

        if left(0.0) <= 0:
            return 0.0
        if left(stick.stop_rad) >= 0:
            return 1.0
        low, high = 0.0, stick.stop_rad
        for _ in range(60):
            middle = (low + high) / 2
            low, high = (middle, high) if left(middle) > 0 else (low, middle)
        return low / stick.stop_rad

    def gauge_readings(
        self,
        rng: np.random.Generator,
        *,
        directions_rad: Array = EIGHT_RAD,
        repeats: int = 3,
        scatter: float = 0.12,
        reach_scatter: float = 0.06,
        gauge_step_n: float = 0.0,
        tape_step_m: float = 0.0,
        minutes: float = 0.0,
        faults: VisitFaults = NO_VISIT_FAULTS,
    ) -> list[tuple[float, list[float], list[float]]]:
        """(direction, forces, reaches) with errors in proportion, rounded to the gauge and the tape.

        The whole session takes `minutes` of effort: the force sinks from the first reading to the last.
        """
        out = []
        for place, phi in enumerate(directions_rad):
            spent = minutes * place / max(1, len(directions_rad) - 1)
            forces = self.force_at(float(phi), spent) * np.exp(rng.normal(0, scatter, repeats))
            forces = forces * faults.left(np.arange(repeats), place / len(directions_rad))
            if faults.slip_chance:
                forces = np.where(rng.random(repeats) < faults.slip_chance, faults.slip_factor * forces, forces)
            reaches = self.reach_at(float(phi)) * np.exp(rng.normal(0, reach_scatter, repeats))
            out.append(
                (
                    float(phi),
                    [_rounded(float(f), gauge_step_n) for f in forces],
                    [_rounded(float(d), tape_step_m) for d in reaches],
                )
            )
        return out

    def again_n(
        self, rng: np.random.Generator, direction_rad: float, *, repeats: int = 3, scatter: float = 0.12,
        faults: VisitFaults = NO_VISIT_FAULTS,
    ) -> list[float]:  # fmt: skip
        """The first direction read again at the end of the visit."""
        forces = self.force_at(direction_rad) * np.exp(rng.normal(0, scatter, repeats))
        return [float(force) for force in forces * faults.left(np.arange(repeats), 1.0)]

    def involuntary_n(self, n: int, rate_hz: float, rng: np.random.Generator) -> Array:
        """Involuntary force of n samples, shape (n, 2)."""
        # A hump with this mean and sd has its mean upward crossings at crossing_hz: sqrt(mean^2 + sd^2).
        sd = 0.4 * self.crossing_hz
        mean = math.sqrt(self.crossing_hz**2 - sd**2)
        force = self.sway_n * hump_noise(n, rate_hz, mean, sd, rng)
        if self.tremor_hz is not None:
            force = force + self.tremor_n * hump_noise(n, rate_hz, self.tremor_hz, 0.15, rng)
        return np.asarray(force)


def _round_circle(values: tuple[float, ...], direction_rad: float) -> float:
    place = (direction_rad % (2 * math.pi)) / (math.pi / 4)
    low = int(place) % 8
    logs = np.log(values)
    return float(np.exp(logs[low] + (place - int(place)) * (logs[(low + 1) % 8] - logs[low])))


@dataclass(frozen=True)
class Visit:
    """A player on a stick through a sensor: makes the recordings of the guided tasks."""

    player: SimulatedPlayer
    stick: SimulatedStick
    sensor: Sensor = field(default_factory=Sensor)
    site: str | None = None
    name: str | None = None
    """Name of the stick, for `Recording.stick`."""

    def rest(
        self, rng: np.random.Generator, *, seconds: float = 20.0, releases: int = 1, home: float = 0.0
    ) -> Recording:
        """Not trying, limb as in play; with several releases the stick comes home to places `home` apart (sd)."""
        times = self.sensor.clock(seconds, rng)
        n = len(times)
        force = np.asarray(self.player.rest_n) + self.player.involuntary_n(n, self.sensor.rate_hz, rng)
        size = np.hypot(force[:, 0], force[:, 1])
        over = np.maximum(size - self.stick.start_n, 0.0) / self.stick.contact_stiffness_n_per_m
        way = force / np.maximum(size, 1e-12)[:, None] * (over / self.stick.travel_m)[:, None]
        places = rng.normal(0, home, (releases, 2)) if home > 0 else np.zeros((releases, 2))
        number = np.minimum(np.arange(n) * releases // n, releases - 1)
        way = way + places[number]
        cue = None
        if releases > 1:
            # two thirds of each piece are rest, the rest a small push that nobody asked about
            within = np.arange(n) * releases / n - number
            way = way + np.where(within > 0.67, np.sin((within - 0.67) / 0.33 * math.pi), 0.0)[:, None] * [0.4, 0.2]
            cue = np.where(within <= 0.67, "rest", "push")
        return self._recording("rest", times, way, rng, cue=cue)

    def still(self, rng: np.random.Generator, *, seconds: float = 20.0, share: float = 0.25) -> Recording:
        """Keeping still a little way out (forward), where no preload hides what the limb does."""
        times = self.sensor.clock(seconds, rng)
        way = share * unit(math.pi / 2) + self._shake(len(times), share, math.pi / 2, rng)
        return self._recording("still", times, way, rng)

    def rim(self, rng: np.random.Generator, *, laps: int = 4, lap_s: float = 6.0) -> Recording:
        """Slow laps along the edge, each direction as far as it goes."""
        times = self.sensor.clock(laps * lap_s + 1.0, rng)
        angle = math.pi / 2 + 2 * math.pi * np.maximum(times - 1.0, 0.0) / lap_s
        reach = np.array([self.player.share_on(self.stick, phi) for phi in np.radians(np.arange(360))])
        share = reach[np.round(np.degrees(angle)).astype(int) % 360]
        wander = 1 + 0.02 * hump_noise(len(times), self.sensor.rate_hz, 0.5, 0.2, rng, 1)
        out = minimum_jerk(times / 0.8)[:, None] * share[:, None] * wander
        way = self._stopped(
            out * np.column_stack([np.cos(angle), np.sin(angle)]) + self._shake(len(times), 0.8, 0.0, rng)
        )
        return self._recording("rim", times, way, rng)

    def push(
        self,
        rng: np.random.Generator,
        *,
        repeats: int = 3,
        aim_sd_rad: float = 0.09,
        directions_rad: Array = EIGHT_RAD,
        push_s: float = 1.8,
        rest_s: float = 0.8,
    ) -> Recording:
        """As far as comfortable in each direction, in shuffled order, and back."""
        order = np.concatenate([rng.permutation(directions_rad) for _ in range(repeats)])
        piece = push_s + rest_s
        times = self.sensor.clock(len(order) * piece + rest_s, rng)
        way = np.zeros((len(times), 2))
        cue = np.full(len(times), "rest", dtype="<U6")
        cue_xy = np.full((len(times), 2), np.nan)
        for number, phi in enumerate(order):
            start = rest_s + number * piece
            rows = (times >= start) & (times < start + push_s)
            cue[rows], cue_xy[rows] = "push", unit(float(phi))
            since = times - start - self.player.reaction_s
            minutes = start / 60
            reach = self.player.share_on(self.stick, float(phi), minutes) * (1 + rng.normal(0, 0.04))
            produced = float(phi) + rng.normal(0, aim_sd_rad)
            there = minimum_jerk(since / 0.4) * (1 - minimum_jerk((since - 1.05) / 0.35))
            way += (reach * there)[:, None] * unit(produced)
        moving = np.hypot(way[:, 0], way[:, 1])[:, None] > 0.02
        way = self._stopped(way + np.where(moving, self._shake(len(times), 0.6, 0.0, rng), 0.0))
        return self._recording("push", times, way, rng, cue=cue, cue_xy=cue_xy)

    def hold(
        self,
        rng: np.random.Generator,
        *,
        levels: tuple[float, ...] = (0.25, 0.5, 0.75),
        directions_rad: tuple[float, ...] = (math.pi / 2, 0.0),
        hold_s: float = 5.0,
        rest_s: float = 1.5,
        sinking_per_s: float = 0.0,
    ) -> Recording:
        """Half-way positions kept; unsteadier the more force they take."""
        asked = [(phi, level) for phi in directions_rad for level in levels]
        times = self.sensor.clock(len(asked) * (hold_s + rest_s) + rest_s, rng)
        way = np.zeros((len(times), 2))
        cue = np.full(len(times), "rest", dtype="<U6")
        cue_xy = np.full((len(times), 2), np.nan)
        for number, (phi, level) in enumerate(asked):
            start = rest_s + number * (hold_s + rest_s)
            rows = np.flatnonzero((times >= start) & (times < start + hold_s))
            cue[rows], cue_xy[rows] = "hold", level * unit(phi)
            since = times[rows] - start - self.player.reaction_s
            kept = min(level, self.player.share_on(self.stick, phi)) * (1 - sinking_per_s * np.maximum(since, 0.0))
            there = minimum_jerk(since / 0.5)
            shake = self._shake(len(rows), level, phi, rng)
            way[rows] = there[:, None] * (kept[:, None] * unit(phi) + shake)
        return self._recording("hold", times, self._stopped(way), rng, cue=cue, cue_xy=cue_xy)

    def aim(
        self,
        rng: np.random.Generator,
        *,
        targets: int = 24,
        each_s: float = 1.8,
        share: float = 0.55,
        width: float = 0.2,
    ) -> Recording:
        """Targets that jump across the middle; smooth movements whose endpoints scatter in proportion to the way."""
        seconds = targets * each_s
        times = self.sensor.clock(seconds, rng)
        way = np.zeros((len(times), 2))
        cue_xy = np.zeros((len(times), 2))
        here = np.zeros(2)
        # opposite directions by turns, one step round the circle each time: all ways of like length
        for number in range(targets):
            phi = math.pi * number + (number // 2) * 2 * math.pi / 9
            target = share * unit(phi)
            start = number * each_s
            rows = np.flatnonzero((times >= start) & (times < start + each_s))
            distance = float(np.hypot(*(target - here)))
            took = 0.25 + 0.18 * math.log2(distance / width + 1)
            end = target + rng.normal(0, self.player.aim_scatter * distance, 2)
            late = self.player.reaction_s * math.exp(rng.normal(0, 0.15))
            along = minimum_jerk((times[rows] - start - late) / took)
            way[rows] = here + along[:, None] * (end - here)
            cue_xy[rows] = target
            here = end
        way = self._stopped(way + self._shake(len(times), 0.4, 0.0, rng))
        return self._recording("aim", times, way, rng, cue_xy=cue_xy, cue_width=width, turned=False)

    def follow(self, rng: np.random.Generator, *, seconds: float = 45.0, size: float = 0.5) -> Recording:
        """A target that wanders smoothly (below half a hertz), followed late and a little short of it."""
        times = self.sensor.clock(seconds, rng)
        frequencies = np.array([0.07, 0.13, 0.23, 0.37])
        weights = np.array([1.0, 0.8, 0.5, 0.3])
        phases = rng.uniform(0, 2 * math.pi, (4, 2))

        def target(at: Array) -> Array:
            waves = np.sin(2 * math.pi * frequencies[None, :, None] * at[:, None, None] + phases[None])
            return np.asarray(size * (waves * weights[None, :, None]).sum(axis=1) / weights.sum() * 1.4)

        remnant = 0.02 * hump_noise(len(times), self.sensor.rate_hz, 0.6, 0.25, rng)
        way = self.player.follow_gain * target(times - self.player.lag_s) + remnant
        way = self._stopped(way + self._shake(len(times), 0.4, 0.0, rng))
        return self._recording("follow", times, way, rng, cue_xy=target(times), turned=False)

    def _shake(self, n: int, share: float, direction_rad: float, rng: np.random.Generator) -> Array:
        """Involuntary movement and motor noise at a level of deflection, share of the throw."""
        player, rate_hz = self.player, self.sensor.rate_hz
        give = (self.stick.contact_stiffness_n_per_m + player.limb_n_per_m) * self.stick.travel_m
        used = float(self.stick.force_n(np.array(share * self.stick.stop_rad)))
        motor = player.noise_share * used * hump_noise(n, rate_hz, 0.8, 0.35, rng, 1)
        force = player.involuntary_n(n, rate_hz, rng) + motor * unit(direction_rad)
        return np.asarray(force / give)

    def _stopped(self, way_share: Array) -> Array:
        """The round stop: nothing goes beyond the throw."""
        size = np.hypot(way_share[:, 0], way_share[:, 1])
        return np.asarray(way_share / np.maximum(size, 1.0)[:, None])

    def _recording(
        self,
        task: str,
        times_s: Array,
        way_share: Array,
        rng: np.random.Generator,
        *,
        cue: NDArray[np.str_] | None = None,
        cue_xy: Array | None = None,
        cue_width: float | None = None,
        turned: bool = True,
    ) -> Recording:
        return Recording(
            f"{task}.csv", times_s, self.sensor.read(way_share, rng, turned=turned), cue=cue, cue_xy=cue_xy,
            cue_width=cue_width, task=task, site=self.site, stick=self.name,
        )  # fmt: skip
