"""All set-ups that could be built at a site: stick, topper, extension, tilt."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal, NamedTuple

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.file_places import FilePlaces
from stickwright.codes.message import Name, message
from stickwright.codes.stick_problems import StickProblems
from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.mechanics.equilibrium import lever_moments
from stickwright.mechanics.force_from_trials import TriedStick
from stickwright.model.kit import Extension, Kit, Stick, Topper
from stickwright.model.parts import SUITED_FORMS
from stickwright.units import STANDARD_GRAVITY

__all__ = [
    "UNBENCHED_SD",
    "USUAL_FRICTION_SHARE",
    "BenchDoubt",
    "SetupArrays",
    "at_contact",
    "bench_log_sd",
    "setups_of",
]

Array = NDArray[np.float64]
USUAL_FRICTION_SHARE = 0.03
"""Friction of a stick that was not benched out and back, of its force at full travel: common practice, no source. It costs precision
where the stick has little preload, and refuses nothing by itself."""
UNBENCHED_SD = 0.05
"""Relative sd of the forces of a stick that is listed without an interval: assumed."""


@dataclass(frozen=True, eq=False)
class SetupArrays:
    """Set-ups side by side, one entry each, ready for arithmetic.

    Parameters
    ----------
    stick, topper, extension, tilt : array of int, shape (s,)
        Places in the kit; -1 for none.
    setting : array of int, shape (s,)
        Place among the stick's settings; -1 for the one that is listed with the stick itself.
    slope : array of int, shape (s,)
        Place in `slopes_rad` of the whole tilt: the stick's own base and what is built under it.
    start_moment_nm, stiffness_nm_per_rad, height_m, stop_rad : array, shape (s,)
        The lever with all that stands on it; the weight of topper and extension is taken off the spring. The stop is
        where the output is full, if that comes before the mechanical one.
    home_share : array, shape (s,)
        Share of the throw at which the stick stays by friction.
    touch : array of bool, shape (s,)
    parts : array of int, shape (s,)
        Pieces added to the bare stick.
    bulk_m3 : array, shape (s,)
        Volume of the base, 0 when not known.
    slopes_rad : array, shape (slopes,)
        The different whole tilts.
    kit : Kit
    """

    stick: NDArray[np.int64]
    topper: NDArray[np.int64]
    extension: NDArray[np.int64]
    tilt: NDArray[np.int64]
    setting: NDArray[np.int64]
    slope: NDArray[np.int64]
    start_moment_nm: Array
    stiffness_nm_per_rad: Array
    height_m: Array
    stop_rad: Array
    home_share: Array
    touch: NDArray[np.bool_]
    parts: NDArray[np.int64]
    bulk_m3: Array
    slopes_rad: Array
    kit: Kit

    def __len__(self) -> int:
        return len(self.stick)

    def take(self, places: Sequence[int] | NDArray[np.int64]) -> SetupArrays:
        """The set-ups at some places only."""
        kept = np.asarray(places, dtype=np.int64)
        fields = {
            name: getattr(self, name)[kept]
            for name in (
                "stick", "topper", "extension", "tilt", "setting", "slope", "start_moment_nm", "stiffness_nm_per_rad", "height_m",
                "stop_rad", "home_share", "touch", "parts", "bulk_m3",
            )
        }  # fmt: skip
        return SetupArrays(**fields, slopes_rad=self.slopes_rad, kit=self.kit)

    def versions(self, place: int, factors: Array) -> SetupArrays:
        """One set-up with all spring and friction moments multiplied by each factor: lighter and firmer versions."""
        same = self.take(np.full(len(factors), place))
        return replace(
            same,
            start_moment_nm=same.start_moment_nm * factors,
            stiffness_nm_per_rad=same.stiffness_nm_per_rad * factors,
        )

    @property
    def travel_m(self) -> Array:
        travel: Array = np.where(self.touch, self.height_m, self.height_m * np.sin(self.stop_rad))
        return travel

    @property
    def start_force_n(self) -> Array:
        return self.start_moment_nm / self.height_m

    @property
    def full_force_n(self) -> Array:
        full: Array = (self.start_moment_nm + self.stiffness_nm_per_rad * self.stop_rad) / self.height_m
        return full

    @property
    def contact_stiffness_n_per_m(self) -> Array:
        stiffness: Array = np.where(self.touch, 0.0, self.stiffness_nm_per_rad / self.height_m**2)
        return stiffness


def _friction_force_n(stick: Stick) -> float:
    """Friction at the contact point; the usual one where nobody benched it, and no more than the push that starts the stick."""
    if stick.friction_force_n is not None:
        return stick.friction_force_n
    return min(USUAL_FRICTION_SHARE * stick.full_force_n, stick.start_force_n)


def _lever(
    stick: Stick, topper: Topper | None, extension: Extension | None
) -> tuple[float, float, float, float, float]:
    """Start moment, stiffness, height, stop and home share of one set-up; a touch surface is its half pad."""
    if stick.kind == "touch":
        return stick.start_force_n * stick.travel_m, 0.0, stick.travel_m, 1.0, 0.0
    if stick.contact_height_m is None:
        raise BadInput(
            Problem(
                (message(FilePlaces.named, key=Name("stick"), name=Name(stick.name)), "contact_height_m"),
                message(StickProblems.found, what="nothing"),
                message(StickProblems.expected, what="contact_height"),
                message(StickProblems.remedy, what="contact_height"),
            )
        )
    start, stiffness, stop = lever_moments(
        stick.start_force_n, stick.full_force_n, stick.travel_m, stick.contact_height_m
    )
    stop *= stick.full_output_share  # what lies beyond full output need not be reached
    height = stick.contact_height_m
    sag = 0.0
    if extension is not None:
        sag += extension.mass_kg * STANDARD_GRAVITY * (height + extension.length_m / 2)
        height += extension.length_m
    if topper is not None:
        sag += topper.mass_kg * STANDARD_GRAVITY * (height + topper.height_m / 2)
        height += topper.height_m
    loaded = stiffness - sag  # small angles: the weight pulls outwards by m g h sin(theta)
    unread = stick.friction_force_n is None
    friction = _friction_force_n(stick) * stick.contact_height_m
    preload = start - friction
    if loaded <= 0:
        home = 1.0 if (friction > preload and not unread) or stiffness <= sag - preload / stop else 0.0
        loaded = 1e-6 * max(stiffness, 1e-6)
    else:
        home = min(1.0, max(0.0, (friction - preload) / loaded / stop))
    return start, loaded, height, stop, home


def setups_of(
    kit: Kit,
    *,
    toppers: Sequence[str] = (),
    tilts: Sequence[int] = (0,),
    in_stock_only: bool = True,
    site: str = "",
    part: str | None = None,
    room_m: tuple[float, float] | None = None,
) -> SetupArrays:
    """Every stick with every allowed topper, extension and tilt.

    Parameters
    ----------
    kit : Kit
        As benched.
    toppers : sequence of str
        Names or forms that suit the site; when empty, the forms usual for its part, and none.
    tilts : sequence of int
        Places in ``kit.tilt_rad`` to try.
    in_stock_only : bool
        Leave out what is neither in stock nor has a price at which one could be bought.
    site : str
        For the sentence when a topper is not known.
    part : str, optional
        Body part of the site; every form is offered when it is not given.
    room_m : tuple of 2 floats, optional
        Free place for the base: one that stands crosswise in it slopes sideways, and no more towards the player.

    Raises
    ------
    BadInput
        A topper that the kit lacks, or nothing left to try.
    """
    known = {topper.name for topper in kit.topper} | {topper.form for topper in kit.topper}
    wrong = [name for name in toppers if name not in known]
    if wrong:
        raise BadInput(
            Problem(
                (message(FilePlaces.named, key=Name("site"), name=Name(site)), "toppers"),
                f'"{name}"',
                message(StickProblems.expected, what="topper"),
                did_you_mean(name, known),
            )
            for name in wrong
        )
    sticks = [k for k, stick in enumerate(kit.stick) if stick.in_stock or stick.price is not None or not in_stock_only]
    caps = [
        k
        for k, t in enumerate(kit.topper)
        if (t.in_stock or not in_stock_only)
        and (t.name in toppers or t.form in toppers if toppers else part is None or t.form in SUITED_FORMS[part])
    ]
    rods = [k for k, e in enumerate(kit.extension) if e.in_stock or not in_stock_only]
    rows: list[tuple[int, int, int, int, int]] = []
    for s in sticks:
        stick = kit.stick[s]
        heaviest = stick.heaviest_topper_kg if stick.heaviest_topper_kg is not None else math.inf
        alone = stick.kind == "touch" or not stick.takes_toppers
        bare = [-1] if not toppers or alone else []
        for t in bare if alone else bare + [k for k in caps if kit.topper[k].mass_kg <= heaviest]:
            rows.extend(
                (s, t, e, b, setting)
                for e in ([-1] if alone else [-1, *rods])
                for b in tilts
                for setting in range(-1, len(stick.setting))
            )
    if not rows:
        raise BadInput(
            Problem(
                "kit.toml",
                message(StickProblems.found, what="no_stick"),
                message(StickProblems.expected, what="one"),
                message(StickProblems.remedy, what="stock"),
            )
        )
    levers = [
        _lever(kit.stick[s].as_set(k), kit.topper[t] if t >= 0 else None, kit.extension[e] if e >= 0 else None)
        for s, t, e, _, k in rows
    ]
    table = np.array(rows, dtype=np.int64)
    figures = np.array(levers)
    own = [0.0 if stick.stands(room_m) == "crosswise" else stick.base_tilt_rad for stick in kit.stick]
    whole = np.array([own[s] + kit.tilt_rad[b] for s, _, _, b, _ in rows])
    slopes, slope = np.unique(np.round(whole, 9), return_inverse=True)
    bases = [kit.stick[s].base_m for s, *_ in rows]
    return SetupArrays(
        stick=table[:, 0],
        topper=table[:, 1],
        extension=table[:, 2],
        tilt=table[:, 3],
        setting=table[:, 4],
        slope=slope.astype(np.int64),
        start_moment_nm=figures[:, 0],
        stiffness_nm_per_rad=figures[:, 1],
        height_m=figures[:, 2],
        stop_rad=figures[:, 3],
        home_share=figures[:, 4],
        touch=np.array([kit.stick[s].kind == "touch" for s, *_ in rows]),
        parts=(table[:, 1:3] >= 0).sum(axis=1) + (np.abs(np.asarray(kit.tilt_rad)[table[:, 3]]) > 1e-9),
        bulk_m3=np.array([math.prod(base) if base else 0.0 for base in bases]),
        slopes_rad=slopes,
        kit=kit,
    )


class BenchDoubt(NamedTuple):
    """How far a stick's forces may be off, as sds of their logarithm to either side.

    Parameters
    ----------
    down, up : float
    """

    down: float
    up: float

    def factors(self, normal: Array) -> Array:
        """Factors on the forces for standard normal draws: each side by its own sd.

        Parameters
        ----------
        normal : array
        """
        return np.asarray(np.exp(np.where(normal < 0, self.down, self.up) * normal))


def bench_log_sd(stick: Stick) -> BenchDoubt:
    """How far the stick's forces may be off, less or more: of its settings, the one known least on each side.

    Parameters
    ----------
    stick : Stick
        With the intervals that its bench gave; `UNBENCHED_SD` without (assumed).

    Notes
    -----
    An interval is longer upwards than downwards where the gauge may have been held off square, which only reads less: each end
    is taken as 1.96 sd of a normal distribution of its own in the logarithm, half of the chance on either side (two-piece
    normal, common practice).
    """
    each = [_bench_log_sd(stick.as_set(place)) for place in range(-1, len(stick.setting))]
    return BenchDoubt(max(one.down for one in each), max(one.up for one in each))


def _bench_log_sd(stick: Stick) -> BenchDoubt:
    sides = []
    for value, interval in (
        (stick.start_force_n, stick.start_force_interval_n), (stick.full_force_n, stick.full_force_interval_n)
    ):  # fmt: skip
        if interval is None or not 0 < interval[0] <= interval[1]:
            continue
        middle = min(max(value or 0.0, interval[0]), interval[1])
        sides.append((math.log(middle / interval[0]) / 1.96, math.log(interval[1] / middle) / 1.96))
    if not sides:
        return BenchDoubt(UNBENCHED_SD, UNBENCHED_SD)
    return BenchDoubt(*(sum(side) / len(sides) for side in zip(*sides, strict=True)))


def at_contact(kit: Kit, stick: str, topper: str | None, extension: str | None) -> TriedStick:
    """Figures at the contact point of one stick as it was tried.

    Parameters
    ----------
    kit : Kit
    stick, topper, extension : str
        Names in the kit, the stick's with its setting in brackets where it was set otherwise than listed; topper and
        extension may be None.

    Raises
    ------
    BadInput
        A name that the kit lacks; the nearest is offered.
    """

    def find(
        name: str | None, pieces: Sequence[Topper] | Sequence[Extension], what: Literal["topper", "extension"]
    ) -> int:
        if name is None:
            return -1
        names = [piece.name for piece in pieces]
        if name not in names:
            raise BadInput(
                Problem(what, f'"{name}"', message(StickProblems.piece_of_kit, piece=what), did_you_mean(name, names))
            )
        return names.index(name)

    named = kit.stick_named(stick)
    if named is None:
        names = [name for one in kit.stick for name in one.names]
        raise BadInput(
            Problem("stick", f'"{stick}"', message(StickProblems.expected, what="stick"), did_you_mean(stick, names))
        )
    t, e = find(topper, kit.topper, "topper"), find(extension, kit.extension, "extension")
    used = kit.stick[named[0]].as_set(named[1])
    start, stiffness, height, stop, _ = _lever(
        used, kit.topper[t] if t >= 0 else None, kit.extension[e] if e >= 0 else None
    )
    if used.kind == "touch":
        return TriedStick(used.start_force_n, used.full_force_n, used.travel_m, height)
    return TriedStick(start / height, (start + stiffness * stop) / height, height * math.sin(stop), height)
