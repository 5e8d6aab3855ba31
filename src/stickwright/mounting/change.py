"""The smallest change that would make a mount hold: one sentence, tried on the same checks before it is told."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from stickwright.codes.message import Message, Name, message
from stickwright.codes.mount_changes import MountChanges
from stickwright.codes.mount_checks import Thing
from stickwright.model.kit import Fastener, Mount
from stickwright.model.mounting import Check
from stickwright.model.room import Material
from stickwright.mounting.base_stability import Foot, foot_checks, patch_needed_m
from stickwright.mounting.statics import Pushes, name_of
from stickwright.mounting.support_stability import stand_checks

__all__ = ["ArmChange", "Stand", "smallest_change", "stand_change"]

LOWEST_M = 0.02
"""No stick is lower than this above what it stands on."""
HEAVIEST_KG = 10.0
"""More than this nobody loads on a tray to keep a stick in its place."""


LARGEST_M = 0.8
"""No board is larger than this under a chair or in front of it."""


@dataclass(frozen=True)
class Stand:
    """A board or a stand on the floor, as it was checked.

    Parameters
    ----------
    mount : Mount
    height_m : float
        Contact point above the floor.
    carried_kg : float
        Of the devices on it.
    floor : str or None
        What the floor is of.
    pressed : bool, default False
        Whether a press from above is what loads it.
    """

    mount: Mount
    height_m: float
    carried_kg: float
    floor: Material | None
    pressed: bool = False

    def holds(self, pushes: Pushes) -> bool:
        """Whether it neither slides nor tips."""
        checks = stand_checks(
            self.mount, pushes, self.height_m, self.carried_kg, floor=self.floor, pressed=self.pressed
        )
        return all(check.holds for check in checks)

    def on(self, sheet: Fastener) -> Stand:
        """The same with an anti-slip sheet under it."""
        return replace(self, mount=self.mount.model_copy(update={"friction": sheet.friction}))


def stand_change(stand: Stand, pushes: Pushes, fasteners: Sequence[Fastener]) -> Message | None:
    """The least that has to change for a board or stand to stay on its floor: an anti-slip sheet of the kit under it, a lower contact
    point, weight on it, a larger board; or two of them, the sheet first. Each is tried on its own checks before it is told.

    Parameters
    ----------
    stand : Stand
        That fails.
    pushes : Pushes
    fasteners : sequence of Fastener
        What the kit has.

    Returns
    -------
    Message or None
        A sentence; None when none of them would do.

    Examples
    --------
    >>> board = Mount(name="board", kind="floor plate", size_m=(0.4, 0.35), mass_kg=3.0, friction=0.3)
    >>> sheet = Fastener(name="grip mat", kind="anti-slip sheet", friction=0.9)
    >>> [one.text for one in stand_change(Stand(board, 0.08, 0.5, "wood"), Pushes(11.0), (sheet,)).param("changes")]
    ['lay']
    """
    name = Name(stand.mount.name)
    if stand.mount.size_m is None or stand.mount.mass_kg is None:
        return _sentence(message(MountChanges.measure, mount=name))
    sheets = sorted(
        (
            fastener
            for fastener in fasteners
            if fastener.kind == "anti-slip sheet" and fastener.in_stock and fastener.friction is not None
        ),
        key=lambda one: one.friction or 0.0,
    )
    tried: list[tuple[tuple[Message, ...], Stand]] = [((), stand)]
    tried += [((message(MountChanges.lay, sheet=Name(sheet.name), under=name),), stand.on(sheet)) for sheet in sheets]
    for told, one in tried[1:]:
        if one.holds(pushes):
            return _sentence(*told)
    for told, one in (tried[0], *tried[:0:-1][:1]):
        for way in (_lower_contact, _weigh_down, _larger_board):
            if (found := way(one, pushes)) is not None:
                return _sentence(*told, found)
    return None


def _sentence(*changes: Message) -> Message:
    return message(MountChanges.all_of, changes=changes)


def _least(low: float, high: float, step: float, holds: Callable[[float], bool]) -> float | None:
    """Least value that holds, to a step, when the highest does."""
    if not holds(high):
        return None
    while high - low > step / 2:
        middle = (low + high) / 2
        low, high = (low, middle) if holds(middle) else (middle, high)
    return math.ceil(high / step - 1e-6) * step


def _lower_contact(stand: Stand, pushes: Pushes) -> Message | None:
    lower = _least(
        -stand.height_m, -LOWEST_M, 0.001, lambda minus: replace(stand, height_m=-minus).holds(pushes)
    ) if stand.height_m > LOWEST_M else None  # fmt: skip
    if lower is None:
        return None
    return message(MountChanges.lower, from_m=stand.height_m, to_m=-lower, above=None)


def _weigh_down(stand: Stand, pushes: Pushes) -> Message | None:
    own = stand.mount.mass_kg or 0.0

    def holds(more: float) -> bool:
        return replace(stand, mount=stand.mount.model_copy(update={"mass_kg": own + more})).holds(pushes)

    more = _least(0.0, HEAVIEST_KG, 0.1, holds)
    if more is None:
        return None
    return message(MountChanges.weigh_down, mount=Name(stand.mount.name), more_kg=more)


def _larger_board(stand: Stand, pushes: Pushes) -> Message | None:
    wide, deep = sorted(stand.mount.size_m or (0.0, 0.0), reverse=True)
    if stand.mount.kind != "floor plate" or deep >= LARGEST_M:
        return None

    def holds(side: float) -> bool:
        return replace(stand, mount=stand.mount.model_copy(update={"size_m": (max(side, wide), side)})).holds(pushes)

    side = _least(deep, LARGEST_M, 0.01, holds)
    if side is None:
        return None
    return message(MountChanges.larger_board, side_m=side, mount=Name(stand.mount.name))


@dataclass(frozen=True)
class ArmChange:
    """What could be changed about an arm.

    Parameters
    ----------
    reach_m : float
        From the joint that fails to the contact point.
    coupling : str, optional
        Name of a breakaway coupling in stock.
    """

    reach_m: float
    coupling: str | None = None


def smallest_change(
    checks: Sequence[Check],
    *,
    foot: Foot | None = None,
    pushes: Pushes | None = None,
    fasteners: Sequence[Fastener] = (),
    arm: ArmChange | None = None,
    tray: Thing = "tray",
) -> Message | None:
    """The least that has to change for all failing checks to hold.

    For a base: a larger patch of the same fastener, then the weakest stronger fastener in stock, then a lower stick, then more mass;
    each is tried on the checks of the base. For a tray: fasten it. For an arm: a coupling that lets go (spasm), or a shorter
    reach.

    Parameters
    ----------
    checks : sequence of Check
        All checks of one mount.
    foot : Foot, optional
        The base that was checked.
    pushes : Pushes, optional
        What it was checked against; needed with `foot`.
    fasteners : sequence of Fastener
        What the kit has.
    arm : ArmChange, optional
        When joints are among the checks.
    tray : Name or str, default 'tray'
        What the tray is called.

    Returns
    -------
    Message or None
        None when everything holds, or when no change of this kind would make it hold.

    Examples
    --------
    >>> tape = Fastener(name="tape", kind="hook-and-loop", shear_pa=60e3, tension_pa=35e3)
    >>> strong = Fastener(name="mushrooms", kind="mushroom-head", shear_pa=210e3, tension_pa=180e3)
    >>> foot, hit = Foot((0.15, 0.11), 0.095, 0.9, fastener=tape), Pushes(10.0, 85.0)
    >>> found = smallest_change(foot_checks(foot, hit), foot=foot, pushes=hit, fasteners=(tape, strong))
    >>> [(one.text, one.param("fastener")) for one in found.param("changes")]
    [('other_fastener', 'mushrooms')]
    """
    failing = [check for check in checks if not check.holds]
    if not failing:
        return None
    out: list[Message] = []
    kinds = {check.what for check in failing}
    if {"tray", "lap_tray"} & kinds or ("tipping" in kinds and foot is None):
        lap = any(check.what == "lap_tray" for check in checks)
        fasten = message(MountChanges.fasten, thing=tray)
        out.append(message(MountChanges.other_surface) if lap else fasten)
    out += [_lighter(check) for check in failing if check.what == "rating"]
    if foot is not None and pushes is not None and kinds & _FOOT:
        found = _for_foot(foot, pushes, fasteners, failing)
        if found is None:
            return None
        out.append(found)
    joints = [
        check for check in failing if check.unit == "nm" and check.what not in (*_FOOT, "tray", "lap_tray", "release")
    ]
    if joints:
        out.append(_for_arm(joints, arm))
    return _sentence(*dict.fromkeys(out)) if out else None


_FOOT = frozenset({"sliding", "tipping", "fastener_shear", "fastener_tension", "fastener_peel"})


def _lighter(check: Check) -> Message:
    return message(MountChanges.lighten, over_kg=check.loads - check.most)


def _for_foot(foot: Foot, pushes: Pushes, fasteners: Sequence[Fastener], failing: Sequence[Check]) -> Message | None:
    """First change, in the order of the trouble it makes, after which everything about the base holds."""

    def holds(changed: Foot) -> bool:
        return all(check.holds for check in foot_checks(changed, pushes))

    ways: tuple[Callable[[], Message | None], ...] = (
        lambda: _larger_patch(foot, pushes, holds),
        lambda: _other_fastener(foot, fasteners, holds),
        lambda: _lower_stick(foot, holds),
        lambda: _more_mass(foot, holds),
    )
    for way in ways:
        if (found := way()) is not None:
            return found
    unread = any((check.factor is None and not check.unloaded) for check in failing)
    if not unread or foot.fastener is None:
        return None
    return message(MountChanges.read_label, fastener=Name(foot.fastener.name))


def _larger_patch(foot: Foot, pushes: Pushes, holds: Callable[[Foot], bool]) -> Message | None:
    if foot.fastener is None or foot.patch_m is None:
        return None
    name, now = Name(foot.fastener.name), _cm2(foot.patch)
    needs = [patch_needed_m(force, foot.height_m, foot.fastener, foot.patch) for _, force in pushes.counted()]
    sizes = [size for size in needs if size is not None]
    long, short = sorted(foot.base_m, reverse=True)
    if sizes:
        size = max(sizes)
        if size[0] <= long and size[1] <= short and holds(replace(foot, patch_m=size)):
            return message(
                MountChanges.larger_patch,
                fastener=name, from_area=now, to_area=_cm2(size), long_m=size[0], short_m=size[1],
            )  # fmt: skip
    if (long, short) != foot.patch and holds(replace(foot, patch_m=(long, short))):
        whole = _cm2((long, short))
        return message(
            MountChanges.larger_patch, fastener=name, from_area=now, to_area=whole, long_m=None, short_m=None
        )
    return None


def _cm2(size_m: Sequence[float]) -> int:
    """Area in square centimetre, rounded up."""
    return math.ceil(1e4 * size_m[0] * size_m[1] - 1e-6)


def _strength(fastener: Fastener) -> float:
    return fastener.tension_pa or fastener.shear_pa or 0.0


def _other_fastener(foot: Foot, fasteners: Sequence[Fastener], holds: Callable[[Foot], bool]) -> Message | None:
    for other in sorted(fasteners, key=_strength):
        if other.in_stock < 1 or other == foot.fastener:
            continue
        for patch in (foot.patch_m, None):
            if holds(replace(foot, fastener=other, patch_m=patch)):
                return message(
                    MountChanges.other_fastener, fastener=Name(other.name), thing=foot.thing,
                    instead=None if foot.fastener is None else Name(foot.fastener.name),
                    whole=patch is None and foot.patch_m is not None,
                )  # fmt: skip
    return None


def _lower_stick(foot: Foot, holds: Callable[[Foot], bool]) -> Message | None:
    if not holds(replace(foot, height_m=LOWEST_M)):
        return None
    low, high = LOWEST_M, foot.height_m
    while high - low > 0.0005:
        middle = (low + high) / 2
        low, high = (middle, high) if holds(replace(foot, height_m=middle)) else (low, middle)
    lower = math.floor(1000 * low) / 1000
    return message(MountChanges.lower, from_m=foot.height_m, to_m=lower, above=foot.thing)


def _more_mass(foot: Foot, holds: Callable[[Foot], bool]) -> Message | None:
    if foot.fastener is not None and foot.fastener.kind != "anti-slip sheet":
        return None
    if not holds(replace(foot, mass_kg=HEAVIEST_KG)):
        return None
    low, high = foot.mass_kg, HEAVIEST_KG
    while high - low > 0.005:
        middle = (low + high) / 2
        low, high = (low, middle) if holds(replace(foot, mass_kg=middle)) else (middle, high)
    more = math.ceil(100 * (high - foot.mass_kg)) / 100
    return message(MountChanges.add_mass, more_kg=more, thing=foot.thing)


def _for_arm(failing: Sequence[Check], arm: ArmChange | None) -> Message:
    """A coupling when only spasms are too much; else a reach at which the worst joint holds. Moments shrink with the arm at
    least in proportion, for push and weight act at distances that shrink alike."""
    if arm is not None and arm.coupling is not None and all(check.push == "involuntary" for check in failing):
        return message(MountChanges.let_go, coupling=Name(arm.coupling))
    if any((check.factor is None and not check.unloaded) for check in failing):
        return message(MountChanges.test_joints)
    worst = min(failing, key=lambda check: check.times / check.wanted)
    needed, (what, number) = worst.loads * worst.wanted, name_of(worst.what)
    if arm is None:
        return message(MountChanges.stronger_joint, what=what, number=number, needed_nm=needed)
    shorter = math.floor(1000 * arm.reach_m * worst.times / worst.wanted) / 1000
    return message(
        MountChanges.shorter_arm, from_m=arm.reach_m, to_m=shorter, what=what, number=number, needed_nm=needed
    )
