"""What nobody measured of a mount, and how far the truth may lie on its side.

A mount is turned down by what was measured, never by an assumed figure alone: it is turned down only where it breaks a rule
whatever the assumed figures are within their plausible range. Where it breaks one at some of them only, it stays in, goes behind
all that hold on measured figures, and carries what is to be measured. By the face nothing is left to an assumed figure.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Generic, Protocol, TypeVar

from stickwright.codes.message import Message, Name, message
from stickwright.codes.mount_answers import MountAnswers
from stickwright.codes.mount_rules import MountRules
from stickwright.codes.to_measure import ToMeasure
from stickwright.model.kit import Fastener, Mount
from stickwright.model.mounting import Check, MountDoubt
from stickwright.mounting.held import HeldDevice

__all__ = [
    "BASE_M",
    "GIVE",
    "GIVE_N_PER_M",
    "HoldingWay",
    "JudgedMount",
    "Reading",
    "Unmeasured",
    "give_reading",
    "judged",
    "of_device",
    "of_fastener",
    "of_mount",
    "reading_of",
]  # fmt: skip

DEVICE_KG = {"stick": (0.05, 1.5), "controller": (0.15, 0.6), "switch": (0.02, 0.4)}
"""Of a device that nobody weighed: common practice, no source; like all ranges here."""
BASE_M = (0.20, 0.15)
"""Largest base of a device that nobody measured; the least is what stands in for it."""
PIVOT_M = (0.0, 0.06)
"""Pivot above the underside, where neither it nor the base was measured."""
PIVOT_SHARE = 1 / 3
"""Of the height of the base, at which the pivot lies at least where only the base was measured."""
ARM_KG = (0.1, 2.5)
"""Of an arm or neck that nobody weighed."""
HOLDING_NM = 30.0
"""The most that a joint holds whose papers nobody read."""
LEAST_OF_OTHERS = 0.5
"""Of the weakest joint of an arm, what one of its joints holds at least that has no figure of its own."""
GIVE_N_PER_M = 200.0
"""The limpest mount that anybody fits."""
STAND_KG, STAND_M = 20.0, (0.6, 0.6)
"""The heaviest and widest stand or board that is carried to a visit."""
STRONGEST_PA = {
    "hook-and-loop": (170e3, 70e3), "mushroom-head": (500e3, 400e3), "screw": (5e6, 5e6), "suction": (60e3, 60e3), "strap": (1e6, 1e6),
}  # fmt: skip
"""Shear and tension, the most that a label of the kind tells; suction by the pressure of the air."""
GRIPPIEST = 1.0
"""Friction of an anti-slip sheet that nobody pulled: the most."""
BY_TEST_METHOD = 2.0
"""By so many times two test methods may differ on the same fastener."""

GIVE = "give"
"""The rule of the throw that is lost: nobody is hurt by it."""

W = TypeVar("W", bound="HoldingWay")
Key = tuple[str, str, str]


@dataclass(frozen=True)
class Reading:
    """How one rule comes out.

    Parameters
    ----------
    what, push : str
        As in a check: which rule it is.
    factor : float
        What there is over what is asked; NaN when not known.
    holds : bool
    words : Message or None
        What breaks it; None where nothing does.
    check : Check, optional
        Where it is one with a load and a limit.
    part : str, default ''
        Of which part, where two have a rule of the same name.
    """

    what: str
    push: str
    factor: float
    holds: bool
    words: Message | None
    check: Check | None = None
    part: str = ""

    @property
    def key(self) -> Key:
        """By which it is found again at other figures."""
        return self.what, self.push, self.part


class HoldingWay(Protocol):
    """A way to hold something, with all figures that it is judged by."""

    def readings(self) -> tuple[Reading, ...]:
        """All rules that it keeps or breaks."""


@dataclass(frozen=True)
class Unmeasured(Generic[W]):
    """One figure that nobody measured.

    Parameters
    ----------
    measure : Message
        What to do: weigh it.
    good, bad : callable
        The way with the figure at the end that speaks for it, and at the other.
    either : bool, default False
        Whether each end speaks for it in some rule.
    """

    measure: Message
    good: Callable[[W], W]
    bad: Callable[[W], W]
    either: bool = False


@dataclass(frozen=True)
class JudgedMount:
    """What became of a way.

    Parameters
    ----------
    checks : tuple of Check
        At the figures measured or assumed; those that are to be confirmed say what to do.
    fails : tuple of Message
        What it breaks whatever the assumed figures are, or by the face at some of them.
    doubts : tuple of MountDoubt
        What it breaks, or nobody knows, at assumed figures only; empty where something fails.
    """

    checks: tuple[Check, ...]
    fails: tuple[Message, ...]
    doubts: tuple[MountDoubt, ...]


def reading_of(check: Check, part: str = "") -> Reading:
    """A check as one of the rules.

    Parameters
    ----------
    check : Check
    part : str, default ''
        Of what, where two parts are checked alike.
    """
    return Reading(
        what=check.what,
        push=check.push,
        factor=check.times,
        holds=check.holds,
        words=check.words,
        check=check,
        part=part,
    )


def give_reading(held: HeldDevice, mount: Mount) -> tuple[Reading, ...]:
    """Whether a mount leaves anything of the throw; not known where its give was not measured."""
    if held.full_force_n == 0 or held.travel_m == 0:
        return ()
    if mount.give_n_per_m is None:
        return (Reading(GIVE, "", math.nan, True, message(MountAnswers.flex_unknown, mount=Name(mount.name))),)
    lost = held.lost_share(mount.give_n_per_m)
    given, name = lost * held.travel_m, Name(mount.name)
    if held.kind == "switch":
        words = message(
            MountAnswers.flex_stops_switch,
            device=Name(held.device), mount=name, force_n=held.full_force_n, flex_m=given, travel_m=held.travel_m,
        )  # fmt: skip
    else:
        words = message(MountAnswers.flex_takes_all, mount=name, flex_m=given)
    return (Reading(GIVE, "", 1 / lost, lost < 1, words),)


def _at(way: W, figures: Iterable[Unmeasured[W]], good: bool, turned: bool = False) -> W:
    """The way with all of these at one end; `turned`: those that speak both ways at the other."""
    for one in figures:
        at_good = good is not (turned and one.either)
        way = one.good(way) if at_good else one.bad(way)
    return way


def _corners(way: W, figures: Sequence[Unmeasured[W]], good: bool) -> list[W]:
    turns = (False, True) if any(one.either for one in figures) else (False,)
    return [_at(way, figures, good, turned) for turned in turns]


def judged(way: W, figures: Sequence[Unmeasured[W]], *, by_face: bool = False) -> JudgedMount:
    """Whether a way holds, does not hold, or is to be confirmed.

    Parameters
    ----------
    way : HoldingWay
        At the figures measured, and what stands in for the others.
    figures : sequence of Unmeasured
        What nobody measured of it.
    by_face : bool, default False
        Whether an assumed figure turns it down.

    Notes
    -----
    All figures are tried together at the ends that speak for it, and all at the ends that speak against it; every rule is
    monotonic in each of them.
    """
    told = {one.key: one for one in way.readings()}
    checks = tuple(one.check for one in told.values() if one.check is not None)
    broken = {key for key, one in told.items() if not one.holds}
    if not figures:
        return JudgedMount(checks, _said(one.words for one in told.values() if not one.holds), ())
    best = [_broken(one) for one in _corners(way, figures, True)]
    if all(best):  # whatever the assumed figures are
        always = [one.words for key, one in told.items() if key in broken and all(key in each for each in best)]
        return JudgedMount(checks, _said(always or best[0].values()), ())
    worst: dict[Key, Message | None] = {}
    for one in _corners(way, figures, False):
        worst = _broken(one) | worst
    unknown = {key for key, one in told.items() if one.holds and math.isnan(one.factor)}
    doubted = [
        key for key in (*told, *(key for key in worst if key not in told)) if key in broken | set(worst) | unknown
    ]
    rests = {key: _rests_on(way, figures, key) for key in doubted}
    words = {key: told[key].words if key in broken | unknown else _may_be(worst[key]) for key in doubted}
    said = {key: one for key, one in words.items() if one is not None}
    if by_face and (strict := [key for key in said if key[0] != GIVE and (key not in unknown or key in worst)]):
        refused = tuple(message(MountRules.at_face, why=said[key], measures=rests[key]) for key in strict)
        return JudgedMount(checks, refused, ())
    doubts = tuple(MountDoubt(key[0], rests[key], one) for key, one in said.items())
    marked = tuple(replace(one.check, confirm=rests.get(key, ())) for key, one in told.items() if one.check is not None)
    return JudgedMount(marked, (), doubts)


def _said(words: Iterable[Message | None]) -> tuple[Message, ...]:
    return tuple(one for one in words if one is not None)


def _may_be(words: Message | None) -> Message | None:
    """That it may come to this at other figures than the assumed ones."""
    return None if words is None else message(MountRules.may_be, why=words)


def _broken(way: HoldingWay) -> dict[Key, Message | None]:
    return {one.key: one.words for one in way.readings() if not one.holds}


def _rests_on(way: W, figures: Sequence[Unmeasured[W]], key: Key) -> tuple[Message, ...]:
    """What to measure for one rule: the figures that move it, alone or with all others at their best."""
    best = _at(way, figures, True)
    found = []
    for one in figures:
        ways = [(way, one.good(way)), (way, one.bad(way)), (one.good(best), one.bad(best))]
        if any(_factor(a, key) != _factor(b, key) for a, b in ways):
            found.append(one.measure)
    return tuple(dict.fromkeys(found or [one.measure for one in figures]))


def _factor(way: HoldingWay, key: Key) -> tuple[bool, float] | None:
    """Equal for equal readings, those that are not known too."""
    found = next((one for one in way.readings() if one.key == key), None)
    return None if found is None else (found.holds, -1.0 if math.isnan(found.factor) else found.factor)


# --- the figures of things -------------------------------------------------------------------------------------------------


def of_device(
    held: HeldDevice, at: Callable[[Callable[[HeldDevice], HeldDevice]], Callable[[W], W]], *, heavy: bool
) -> list[Unmeasured[W]]:
    """What nobody measured of a device.

    Parameters
    ----------
    held : HeldDevice
    at : callable
        Makes of a change of the device one of the way.
    heavy : bool
        Whether its weight may help to keep it in its place.
    """
    out, name = [], Name(held.device)
    if held.mass_kg is None:
        least, most = DEVICE_KG[held.kind]
        light = at(lambda one: replace(one, mass_kg=least))
        much = at(lambda one: replace(one, mass_kg=most))
        good, bad = (much, light) if heavy else (light, much)
        out.append(Unmeasured(message(ToMeasure.weigh, thing=name), good, bad, either=heavy))
    if held.base_m is None:
        large = at(lambda one: replace(one, base_m=(*BASE_M, 0.0), pivot_height_m=one.pivot_m or 0.0))
        out.append(Unmeasured(message(ToMeasure.base, device=name), large, _same))
    if held.pivot_height_m is None and held.kind == "stick":
        low, high = PIVOT_M if held.base_m is None else (PIVOT_SHARE * held.base_m[2], held.base_m[2])
        out.append(
            Unmeasured(
                message(ToMeasure.pivot, device=name),
                at(lambda one: replace(one, pivot_height_m=low)), at(lambda one: replace(one, pivot_height_m=high)), either=True,
            )
        )  # fmt: skip
    return out


def _same(way: W) -> W:
    return way


def of_fastener(
    fastener: Fastener | None, at: Callable[[Callable[[Fastener], Fastener]], Callable[[W], W]]
) -> list[Unmeasured[W]]:
    """What nobody read of a fastener.

    Parameters
    ----------
    fastener : Fastener or None
    at : callable
        Makes of a change of the fastener one of the way.
    """
    if fastener is None:
        return []
    name = Name(fastener.name)
    if fastener.kind == "anti-slip sheet":
        if fastener.friction is not None:
            return []
        grips = at(lambda one: one.model_copy(update={"friction": GRIPPIEST}))
        return [Unmeasured(message(ToMeasure.pull_sheet, fastener=name), grips, _same)]
    shear, tension = STRONGEST_PA[fastener.kind]
    if fastener.shear_pa is None or fastener.tension_pa is None:
        most = at(
            lambda one: one.model_copy(
                update={
                    "shear_pa": shear if one.shear_pa is None else one.shear_pa,
                    "tension_pa": tension if one.tension_pa is None else one.tension_pa,
                }
            )
        )
        return [Unmeasured(message(ToMeasure.strength, fastener=name), most, _same)]
    if fastener.test_method:
        return []
    measure = message(ToMeasure.test_method, fastener=name)
    return [Unmeasured(measure, at(_stronger(BY_TEST_METHOD)), at(_stronger(1 / BY_TEST_METHOD)))]


def _stronger(times: float) -> Callable[[Fastener], Fastener]:
    def changed(one: Fastener) -> Fastener:
        known = {name: getattr(one, name) for name in ("shear_pa", "tension_pa", "peel_n_per_m")}
        return one.model_copy(update={name: times * value for name, value in known.items() if value is not None})

    return changed


def of_mount(
    mount: Mount, joints: int, at: Callable[[Callable[[Mount], Mount]], Callable[[W], W]]
) -> list[Unmeasured[W]]:
    """What nobody measured of an arm, a neck, a stand or a board.

    Parameters
    ----------
    mount : Mount
    joints : int
        How many joints must hold; 0 for what has none.
    at : callable
        Makes of a change of the mount one of the way.
    """

    def to(**update: object) -> Callable[[W], W]:
        return at(lambda one: one.model_copy(update=update))

    out: list[Unmeasured[W]] = []
    name = Name(mount.name)
    if joints:
        if mount.mass_kg is None:
            out.append(Unmeasured(message(ToMeasure.weigh, thing=name), to(mass_kg=ARM_KG[0]), to(mass_kg=ARM_KG[1])))
        held = mount.holding_nm
        if not held:
            measure = message(ToMeasure.joints, mount=name)
            out.append(Unmeasured(measure, to(holding_nm=(HOLDING_NM,)), _same))
        elif 1 < len(held) < joints:
            rest = joints - len(held)
            good, bad = (*held, *[max(held)] * rest), (*held, *[LEAST_OF_OTHERS * min(held)] * rest)
            measure = message(ToMeasure.every_joint, mount=name)
            out.append(Unmeasured(measure, to(holding_nm=good), to(holding_nm=bad)))
    else:
        if mount.size_m is None or mount.mass_kg is None:
            large = to(mass_kg=mount.mass_kg or STAND_KG, size_m=mount.size_m or STAND_M)
            out.append(Unmeasured(message(ToMeasure.stand, mount=name), large, _same))
    if mount.give_n_per_m is None and mount.kind != "floor plate":
        measure = message(ToMeasure.flex, mount=name)
        out.append(Unmeasured(measure, _same, to(give_n_per_m=GIVE_N_PER_M)))
    return out
