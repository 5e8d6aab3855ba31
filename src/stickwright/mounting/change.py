"""The smallest change that would make a mount hold: one sentence, tried on the same checks before it is told."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from stickwright.model.kit import Fastener, Mount
from stickwright.model.mounting import Check
from stickwright.mounting.footing import Foot, area_words, foot_checks, patch_needed_m
from stickwright.mounting.standing import stand_checks
from stickwright.mounting.statics import Pushes
from stickwright.units import figures, spoken

__all__ = ["Reach", "Stand", "smallest_change", "stand_change"]

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
    floor: str | None
    pressed: bool = False

    def holds(self, pushes: Pushes) -> bool:
        """Whether it neither slides nor tips.

        Parameters
        ----------
        pushes : Pushes
        """
        checks = stand_checks(
            self.mount, pushes, self.height_m, self.carried_kg, floor=self.floor, pressed=self.pressed
        )
        return all(check.holds for check in checks)

    def on(self, sheet: Fastener) -> Stand:
        """The same with an anti-slip sheet under it.

        Parameters
        ----------
        sheet : Fastener
        """
        return replace(self, mount=self.mount.model_copy(update={"friction": sheet.friction}))


def stand_change(stand: Stand, pushes: Pushes, fasteners: Sequence[Fastener]) -> str:
    """The least that has to change for a board or stand to stay on its floor: an anti-slip sheet of the kit under it, a lower contact
    point, weight on it, a larger board; or two of them, the sheet first. Each is tried on its own checks before it is told.

    Parameters
    ----------
    stand : Stand
        That does not hold.
    pushes : Pushes
    fasteners : sequence of Fastener
        What the kit has.

    Returns
    -------
    str
        A sentence; empty when none of them would do.

    Examples
    --------
    >>> board = Mount(name="board", kind="floor plate", size_m=(0.4, 0.35), mass_kg=3.0, friction=0.3)
    >>> sheet = Fastener(name="grip mat", kind="anti-slip sheet", friction=0.9)
    >>> stand_change(Stand(board, 0.08, 0.5, "wood"), Pushes(11.0), (sheet,))
    'Lay grip mat under board.'
    """
    name = stand.mount.name
    if stand.mount.size_m is None or stand.mount.mass_kg is None:
        return f"Measure and weigh {name}."
    sheets = sorted(
        (one for one in fasteners if one.kind == "anti-slip sheet" and one.in_stock and one.friction is not None),
        key=lambda one: one.friction or 0.0,
    )
    tried = [("", stand), *((f"lay {sheet.name} under {name}", stand.on(sheet)) for sheet in sheets)]
    for told, one in tried[1:]:
        if one.holds(pushes):
            return _sentence(told)
    for told, one in (tried[0], *tried[:0:-1][:1]):
        for way in (_lower_contact, _weigh_down, _larger_board):
            if found := way(one, pushes):
                return _sentence("; ".join(part for part in (told, found) if part))
    return ""


def _sentence(told: str) -> str:
    return f"{told[:1].upper()}{told[1:]}."


def _least(low: float, high: float, step: float, holds: Callable[[float], bool]) -> float | None:
    """Least value that holds, to a step, when the highest does."""
    if not holds(high):
        return None
    while high - low > step / 2:
        middle = (low + high) / 2
        low, high = (low, middle) if holds(middle) else (middle, high)
    return math.ceil(high / step - 1e-6) * step


def _lower_contact(stand: Stand, pushes: Pushes) -> str:
    lower = _least(
        -stand.height_m, -LOWEST_M, 0.001, lambda minus: replace(stand, height_m=-minus).holds(pushes)
    ) if stand.height_m > LOWEST_M else None  # fmt: skip
    return (
        ""
        if lower is None
        else f"lower the contact point from {spoken(stand.height_m, 'mm')} to {spoken(-lower, 'mm')} above the floor"
    )


def _weigh_down(stand: Stand, pushes: Pushes) -> str:
    own = stand.mount.mass_kg or 0.0

    def holds(more: float) -> bool:
        return replace(stand, mount=stand.mount.model_copy(update={"mass_kg": own + more})).holds(pushes)

    more = _least(0.0, HEAVIEST_KG, 0.1, holds)
    return "" if more is None else f"weigh {stand.mount.name} down with {figures(more)} kg in its middle"


def _larger_board(stand: Stand, pushes: Pushes) -> str:
    wide, deep = sorted(stand.mount.size_m or (0.0, 0.0), reverse=True)
    if stand.mount.kind != "floor plate" or deep >= LARGEST_M:
        return ""

    def holds(side: float) -> bool:
        return replace(stand, mount=stand.mount.model_copy(update={"size_m": (max(side, wide), side)})).holds(pushes)

    side = _least(deep, LARGEST_M, 0.01, holds)
    return (
        "" if side is None else f"use a board of at least {spoken(side, 'mm')} each way in place of {stand.mount.name}"
    )


@dataclass(frozen=True)
class Reach:
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
    arm: Reach | None = None,
    tray: str = "tray",
) -> str:
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
    arm : Reach, optional
        When joints are among the checks.
    tray : str, default 'tray'
        What the tray is called.

    Returns
    -------
    str
        Empty when everything holds, or when no change of this kind would make it hold.

    Examples
    --------
    >>> tape = Fastener(name="tape", kind="hook-and-loop", shear_pa=60e3, tension_pa=35e3)
    >>> strong = Fastener(name="mushrooms", kind="mushroom-head", shear_pa=210e3, tension_pa=180e3)
    >>> foot, hit = Foot((0.15, 0.11), 0.095, 0.9, fastener=tape), Pushes(10.0, 85.0)
    >>> smallest_change(foot_checks(foot, hit), foot=foot, pushes=hit, fasteners=(tape, strong))
    'Fix the base with mushrooms instead of tape.'
    """
    failing = [check for check in checks if not check.holds]
    if not failing:
        return ""
    out: list[str] = []
    kinds = {check.what for check in failing}
    if "tray" in kinds or ("tipping" in kinds and foot is None):
        lap = any("lap tray" in check.words.lower() for check in failing)
        out.append("use a table or the tray of the chair" if lap else f"fasten the {tray} with clamps or bolts")
    out += [_lighter(check) for check in failing if check.what == "rating"]
    if foot is not None and pushes is not None and kinds & _FOOT:
        found = _for_foot(foot, pushes, fasteners, failing)
        if not found:
            return ""
        out.append(found)
    joints = [check for check in failing if check.unit == "nm" and check.what not in (*_FOOT, "tray", "release")]
    if joints:
        found = _for_arm(joints, arm)
        if not found:
            return ""
        out.append(found)
    told = "; ".join(dict.fromkeys(out))
    return f"{told[:1].upper()}{told[1:]}." if told else ""


_FOOT = frozenset({"sliding", "tipping", "fastener shear", "fastener tension", "fastener peel"})


def _lighter(check: Check) -> str:
    return f"take {figures(check.loads - check.most)} kg off"


def _for_foot(foot: Foot, pushes: Pushes, fasteners: Sequence[Fastener], failing: Sequence[Check]) -> str:
    """First change, in the order of the trouble it makes, after which everything about the base holds."""

    def holds(changed: Foot) -> bool:
        return all(check.holds for check in foot_checks(changed, pushes))

    ways: tuple[Callable[[], str], ...] = (
        lambda: _larger_patch(foot, pushes, holds),
        lambda: _other_fastener(foot, fasteners, holds),
        lambda: _lower_stick(foot, holds),
        lambda: _more_mass(foot, holds),
    )
    for way in ways:
        if found := way():
            return found
    unread = any((check.factor is None and not check.unloaded) for check in failing)
    return f"read the label of {foot.fastener.name} and enter its strengths" if unread and foot.fastener else ""


def _larger_patch(foot: Foot, pushes: Pushes, holds: Callable[[Foot], bool]) -> str:
    if foot.fastener is None or foot.patch_m is None:
        return ""
    needs = [patch_needed_m(force, foot.height_m, foot.fastener, foot.patch) for _, force in pushes.counted()]
    sizes = [size for size in needs if size is not None]
    long, short = sorted(foot.base_m, reverse=True)
    if sizes:
        size = max(sizes)
        if size[0] <= long and size[1] <= short and holds(replace(foot, patch_m=size)):
            return f"enlarge the patch of {foot.fastener.name} from {_cm2(foot.patch)} to {_cm2(size)} ({area_words(size)})"
    if (long, short) != foot.patch and holds(replace(foot, patch_m=(long, short))):
        return f"enlarge the patch of {foot.fastener.name} from {_cm2(foot.patch)} to {_cm2((long, short))}, the whole base"
    return ""


def _cm2(size_m: Sequence[float]) -> str:
    return f"{math.ceil(1e4 * size_m[0] * size_m[1] - 1e-6)} cm2"


def _strength(fastener: Fastener) -> float:
    return fastener.tension_pa or fastener.shear_pa or 0.0


def _other_fastener(foot: Foot, fasteners: Sequence[Fastener], holds: Callable[[Foot], bool]) -> str:
    for other in sorted(fasteners, key=_strength):
        if other.in_stock < 1 or other == foot.fastener:
            continue
        for patch in (foot.patch_m, None):
            if holds(replace(foot, fastener=other, patch_m=patch)):
                instead = f" instead of {foot.fastener.name}" if foot.fastener is not None else ""
                whole = ", under the whole base" if patch is None and foot.patch_m is not None else ""
                return f"fix the {foot.thing} with {other.name}{instead}{whole}"
    return ""


def _lower_stick(foot: Foot, holds: Callable[[Foot], bool]) -> str:
    if not holds(replace(foot, height_m=LOWEST_M)):
        return ""
    low, high = LOWEST_M, foot.height_m
    while high - low > 0.0005:
        middle = (low + high) / 2
        low, high = (middle, high) if holds(replace(foot, height_m=middle)) else (low, middle)
    lower = math.floor(1000 * low) / 1000
    return f"lower the contact point from {spoken(foot.height_m, 'mm')} to {spoken(lower, 'mm')} above what the {foot.thing} stands on"


def _more_mass(foot: Foot, holds: Callable[[Foot], bool]) -> str:
    if foot.fastener is not None and foot.fastener.kind != "anti-slip sheet":
        return ""
    if not holds(replace(foot, mass_kg=HEAVIEST_KG)):
        return ""
    low, high = foot.mass_kg, HEAVIEST_KG
    while high - low > 0.005:
        middle = (low + high) / 2
        low, high = (low, middle) if holds(replace(foot, mass_kg=middle)) else (middle, high)
    return f"add {figures(math.ceil(100 * (high - foot.mass_kg)) / 100)} kg to the {foot.thing}"


def _for_arm(failing: Sequence[Check], arm: Reach | None) -> str:
    """A coupling when only spasms are too much; else a reach at which the worst joint holds. Moments shrink with the arm at
    least in proportion, for push and weight act at distances that shrink alike."""
    if arm is not None and arm.coupling is not None and all(check.push == "involuntary" for check in failing):
        return f"let it go on purpose: fit {arm.coupling}"
    if any((check.factor is None and not check.unloaded) for check in failing):
        return "find out what each joint holds: hang weights on the end until it slips"
    worst = min(failing, key=lambda check: check.times / check.wanted)
    needed = spoken(worst.loads * worst.wanted, "nm")
    if arm is None:
        return f"use an arm whose {worst.what} holds {needed}"
    shorter = math.floor(1000 * arm.reach_m * worst.times / worst.wanted) / 1000
    return f"shorten the arm from {spoken(arm.reach_m, 'mm')} to {spoken(shorter, 'mm')}, or use one whose {worst.what} holds {needed}"
