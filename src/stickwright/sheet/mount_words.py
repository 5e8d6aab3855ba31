"""Where each stick goes and what holds it, in words: for the terminal, and for the lines of the sheet's pages."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from stickwright.catalogue import say
from stickwright.codes.message import message
from stickwright.codes.mount_checks import MountChecks
from stickwright.model.mounting import Check, MountFit, Pose, SiteMount
from stickwright.model.plan import Caution, Plan
from stickwright.mounting.give import SWINGS_BELOW_HZ
from stickwright.mounting.statics import PUSH_COUNTS, name_of
from stickwright.sheet.mount_drawing import along_words, clamp_range_words, dimension_rows, joint_label
from stickwright.sheet.printed import (
    ASSUMED,
    base_turned,
    clause,
    in_unit,
    label_of,
    listed,
    plain,
    sentence,
    share,
    wrapped,
)
from stickwright.sheet.why_so import findings_rows
from stickwright.units import to_si

__all__ = [
    "CLOCK",
    "COUNTED",
    "PLACED_M",
    "PLACED_RAD",
    "asked_of",
    "beside_a_number",
    "cable_words",
    "check_factor",
    "check_name",
    "check_words",
    "confirm_words",
    "fails_words",
    "give_words",
    "joint_words",
    "lever_words",
    "mount_blocks",
    "parts_words",
    "patch_words",
    "photos",
    "pose_words",
    "quantity",
    "release_words",
    "to_measure",
]

_PUSHES = {"working": "working push", "involuntary": "strongest involuntary push", "weight": "weight", "": ""}
PLACED_M, PLACED_RAD = (0.002, 0.005), math.radians(5.0)
"""How near a base is put to where it is to stand: no finer than a tape, no coarser than by what a rebuild from the sheet is judged
[fitting-practice]."""
_LOST = {
    "stick": "{far} off costs a tenth of the movement range, and turned {turned} off a tenth of a push",
    "switch": "{far} off, a press meant for its middle lands beside it",
    "controller": "{far} off, a press lands on the next button; turned {turned} off, a tenth of a push is lost",
}
CLOCK = "Clock directions are seen from above, 12 o'clock straight ahead of the player"
COUNTED = (
    f"A working push is the hardest comfortable push, counted {PUSH_COUNTS:g} times, as people push harder in play"
)
_GIVE = ("give", "droop", "ringing")
_BY_LEVER = ("tipping", "fastener_tension", "fastener_peel")
_PLACE = ("pose", "place", "position", "tolerance")


def mount_blocks(plan: Plan, width: int = 80) -> list[str]:
    """Blocks of text, a site each; none when the room is not described.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    width : int, default 80
        Columns of the terminal.
    """
    return [_block(plan, mount, width) for mount in plan.mounts]


def _block(plan: Plan, mount: SiteMount, width: int) -> str:
    told = say(mount.sentence), say(plan.sentence), *(say(one.text) for one in plan.findings)
    lines = [sentence(mount.sentence), *_cautions(one for one in mount.cautions if not beside_a_number(one, mount))]
    if mount.pose is not None:
        lines += [
            *pose_words(mount.pose, mount.device, mount.kind),
            *_cautions(one for one in mount.cautions if one.about in _PLACE),
        ]
    if mount.choice is not None:
        lines += _held(plan, mount, mount.choice)
    for other in mount.fits:
        if other is not mount.choice and other != mount.choice:
            lines.append(fails_words(other))
    lines += [
        f"{level}: {text}"
        for level, text in findings_rows(tuple(one for one in mount.findings if say(one.text) not in told))
    ]
    body = wrapped(lines, width, "  ", "    ")
    return wrapped([f"Where it goes, and what holds it: {mount.site}"], width) + f"\n{body}"


def _held(plan: Plan, mount: SiteMount, choice: MountFit) -> Iterator[str]:
    fixed = patch_words(choice)
    on = f", on {choice.on}" if choice.on not in ("", choice.mount) else ""
    yield f"Held by: {choice.mount}{on}{f'; {fixed}' if fixed else ''}."
    if plan.room is not None and (along := along_words(mount, plan.room)):
        yield f"Clamp {along}."
        if other := clamp_range_words(mount, plan.room):
            yield other
    if choice.arm is not None and choice.arm.joints:
        yield f"{CLOCK}."
    yield from (f"{line}." for line in joint_words(choice))
    if released := release_words(choice):
        yield f"{sentence(released)}"
    rows = [row for row in dimension_rows(mount) if "named in" not in row[2]]
    for start, to in dict.fromkeys(row[:2] for row in rows):
        yield f"From {start} to {to}: {listed(far for *ends, far in rows if ends == [start, to])}."
    if any(check.push == "working" for check in choice.checks):
        yield f"{COUNTED}."
    if lever := lever_words(choice):
        yield lever
    for check in choice.checks:
        yield f"{check_words(check)}."
        yield from _cautions(one for one in mount.cautions if _beside(one, check))
    yield from give_words(choice, mount.kind)
    yield from _cautions(one for one in mount.cautions if one.about in _GIVE)
    if choice.arm is not None and choice.arm.nearest:
        yield (
            f"Minimum clearance: {plain(choice.arm.clearance_m, 'mm')} from {choice.arm.nearest}, over the whole tilt."
        )
    if choice.take_off_s is not None:
        yield f"Comes off in {_trimmed(plain(choice.take_off_s, 's'))}."
    yield from _cautions(one for one in mount.cautions if one.about == "transfer")
    if told := cable_words(choice):
        yield told
    yield from _cautions(one for one in mount.cautions if one.about == "cable")
    yield from confirm_words(choice)
    if choice.fails or choice.refused:
        yield fails_words(choice)
    yield from (f"{ASSUMED}: {clause(one)}." for one in choice.assumed)


def _cautions(cautions: Iterable[Caution]) -> list[str]:
    return [f"CAUTION ({one.about}): {say(one.text)}" for one in cautions]


def _beside(caution: Caution, check: Check) -> bool:
    """Whether a caution belongs to the number of a check: 'fastener' to its shear, 'joint' to joint 1."""
    return caution.about in (check.what, check.what.partition("_")[0])


def beside_a_number(caution: Caution, mount: SiteMount) -> bool:
    """Whether a caution stands beside a number of this mount, and not with the answer.

    Parameters
    ----------
    caution : Caution
        One of the mount's.
    mount : SiteMount
        Whose numbers are told.
    """
    checks = mount.choice.checks if mount.choice is not None else ()
    posed = mount.pose is not None and caution.about in _PLACE
    given = mount.choice is not None and caution.about in (*_GIVE, "cable", "transfer")
    return posed or given or any(_beside(caution, check) for check in checks)


# --- the place --------------------------------------------------------------------------------------------------------------


def pose_words(pose: Pose, device: str, kind: str = "stick") -> list[str]:
    """Where the base must be and how it is turned, with how far off it may be, and what was assumed.

    Parameters
    ----------
    pose : Pose
        Where it goes.
    device : str
        What goes there.
    kind : str, default 'stick'
        Stick, switch or controller.

    Examples
    --------
    >>> pose_words(Pose("chin", (0, 0, 0), (0.0, 0.17, 0.52), 0.0, 0.4363, 0.003, 0.122), "birch")[0]
    'Middle of the underside of birch: 170 mm forward, 520 mm up from the seat reference point (±3 mm).'
    """
    x, y, z = pose.base_m
    ways = ((x, "right", "left"), (y, "forward", "back"), (z, "up", "down"))
    far = [
        f"{in_unit(abs(at), 'mm'):.0f} mm {plus if at > 0 else minus}" for at, plus, minus in ways if abs(at) >= 0.0005
    ]
    slope, turn = in_unit(pose.tilt_rad, "deg"), base_turned(pose.turn_rad)
    turned = f"turned {turn} seen from above" if turn else "not turned"
    level = "level" if abs(slope) < 0.5 else f"{'far' if slope > 0 else 'near'} edge {abs(slope):.0f}° higher"
    lines = [
        f"Middle of the underside of {device}: {', '.join(far) or 'at it, 0 mm'} from the seat reference point "
        f"({_placed(pose.may_be_off_m)}).",
        f"Its base is {turned} (±{_trimmed(plain(PLACED_RAD, 'deg', 1))}) and {level}.{_lost(pose, kind)}"
        f"{'' if pose.turn_words is None else f' {say(pose.turn_words)}'}",
    ]
    return [*lines, *(f"{ASSUMED}: {clause(one)}." for one in pose.assumed)]


def _placed(tolerance_m: float) -> str:
    """How near it is to be put, as it can be done with a tape."""
    if not (math.isfinite(tolerance_m) and tolerance_m > 0):
        return f"how far off it may be is not known: ±{plain(PLACED_M[0], 'mm', 1)}"
    return f"±{_trimmed(plain(min(max(tolerance_m, PLACED_M[0]), PLACED_M[1]), 'mm', 1))}"


def _lost(pose: Pose, kind: str) -> str:
    """What is lost how far off; and, where that is finer than a tape, that the player settles it."""
    if not (math.isfinite(pose.may_be_off_m) and pose.may_be_off_m > 0):
        return ""
    far = plain(pose.may_be_off_m, "mm", 1 if in_unit(pose.may_be_off_m, "mm") < 1 else 2)
    said = _LOST[kind].format(far=_trimmed(far), turned=_trimmed(plain(pose.tolerance_rad, "deg")))
    fine = ": finer than a tape, so settle it with the player" if pose.may_be_off_m < PLACED_M[0] else ""
    return f" {said[:1].upper()}{said[1:]}{fine}."


def release_words(choice: MountFit) -> str:
    """The breakaway coupling, by its name and kind, and between what ends it is set; empty without one.

    Parameters
    ----------
    choice : MountFit
        A way to hold it.
    """
    if choice.coupling is None or choice.release_nm is None:
        return ""
    low, high = choice.release_nm
    ends = f"at {plain(low, 'nm')} or more" if high is None else f"between {plain(low, 'nm')} and {plain(high, 'nm')}"
    at_tip = ""
    if choice.release_n is not None and choice.release_n[1] is not None:
        least, most = plain(choice.release_n[0], "n"), plain(choice.release_n[1], "n")
        at_tip = f" ({least} to {most} along with the weight at the contact point)"
    agreed = "" if choice.release_agreed else "; the clinic has not agreed the upper end: ask before it is used"
    return f"{choice.coupling} is the breakaway coupling: set it to let go {ends} at the clamp{at_tip}{agreed}"


def lever_words(choice: MountFit) -> str:
    """The lever at which a push tips a base or pulls at its fastener, with its parts; empty where nothing depends on it.

    Parameters
    ----------
    choice : MountFit
        A way to hold it.
    """
    if choice.lever_m is None or not any(check.what in _BY_LEVER for check in choice.checks):
        return ""
    device, under = choice.lever_m
    if under < 0.0005:
        return f"Its lever: {plain(device, 'mm')}, contact point to underside."
    parts = f"{plain(device, 'mm')} from contact point to underside and {plain(under, 'mm')} from there to what it stands on"
    return f"Its lever: {plain(device + under, 'mm')}, {parts}."


def cable_words(choice: MountFit) -> str:
    """The way of the cable along what holds it, with its parts; empty when it is not known.

    Parameters
    ----------
    choice : MountFit
        A way to hold it.
    """
    if choice.cable_m is None:
        return ""
    if choice.cable_slack_m <= 0:
        return f"Cable along it: {plain(choice.cable_m, 'mm')}."
    bare = plain(choice.cable_m - choice.cable_slack_m, "mm")
    return f"Cable along it: {bare} + {plain(choice.cable_slack_m, 'mm')} for the joints to move = {plain(choice.cable_m, 'mm')}."


def confirm_words(choice: MountFit) -> list[str]:
    """What is to be confirmed that stands beside none of its checks: whether it reaches, its level, its give, the tilt.

    Parameters
    ----------
    choice : MountFit
        A way to hold it.
    """
    beside = {check.what for check in choice.checks if check.confirm}
    return [sentence(one.told) for one in choice.doubts if one.rule not in beside]


def patch_words(choice: MountFit) -> str:
    """The fastener and its size; empty when nothing is stuck.

    Parameters
    ----------
    choice : MountFit
        A way to hold it.
    """
    if choice.fastener is None:
        return ""
    if choice.patch_m is None:
        return choice.fastener
    long, wide = (f"{in_unit(side, 'mm'):.0f}" for side in choice.patch_m)
    return f"{choice.fastener}, a patch of {long} × {wide} mm"


def joint_words(choice: MountFit) -> list[str]:
    """How each joint is set, counted from the clamp as in the drawing.

    Parameters
    ----------
    choice : MountFit
        A way to hold it.
    """
    joints = enumerate(choice.arm.joints if choice.arm is not None else (), start=1)
    return [f"{joint_label(number, joint.name)}: {clause(joint.words)}" for number, joint in joints]


# --- the checks -------------------------------------------------------------------------------------------------------------


def quantity(value: float, unit: str, bare: bool = False) -> str:
    """A load or limit, told in its unit, without the unit when the next number carries it.

    Examples
    --------
    >>> quantity(3.14, "nm"), quantity(27.0, "kpa"), quantity(3.14, "nm", bare=True)
    ('3.1 N m', '27 kPa', '3.1')
    """
    text = plain(to_si(value, unit), unit) if unit else plain(value, "")
    label = label_of(unit)
    return text.removesuffix(label).rstrip() if bare and label and math.isfinite(value) else text


def check_words(check: Check) -> str:
    """One check in a line: load, limit, safety factor, required.

    Parameters
    ----------
    check : Check
        What must hold.

    Examples
    --------
    >>> check_words(Check("joint_1", "working", 3.1, 7.0, "nm", 2.258, 2.0, True, None))
    'joint 1, working push: 3.1 of 7 N m, safety factor 2.3, required 2'
    """
    what = ", ".join(part for part in (check_name(check), _PUSHES.get(check.push, check.push)) if part)
    mark = "TO CONFIRM: " if check.confirm else "" if check.holds else "FAILS: "
    confirm = f"; {to_measure(check)}" if check.confirm else ""
    assumed = f" ({ASSUMED}: {clause(check.assumed)})" if check.assumed else ""
    told = asked_of(check)
    figures = check.limitless or (check.load is not None and check.limit is not None)
    said = f"; {clause(check.words)}" if check.words is not None and not figures else ""
    return f"{mark}{what}: {told}{said}{confirm}{assumed}"


def check_name(check: Check) -> str:
    """What is checked, as a label.

    Parameters
    ----------
    check : Check
        What must hold.
    """
    what, number = name_of(check.what)
    return say(message(MountChecks.named, what=what, number=number))


def to_measure(check: Check) -> str:
    """What is to be measured before it can be trusted.

    Parameters
    ----------
    check : Check
        That assumed figures decide.
    """
    return "; ".join(clause(one) for one in check.confirm)


def asked_of(check: Check) -> str:
    """Load of limit, safety factor and the one required.

    Parameters
    ----------
    check : Check
        What must hold.
    """
    if check.load is None and check.limit is None and not check.limitless:
        return "not known"
    if check.limitless:
        return clause(check.words) if check.words is not None else "nothing loads it"
    load = quantity(check.loads, check.unit, bare=check.limit is not None)
    limit = _trimmed(quantity(check.most, check.unit))
    return f"{load} of {limit}, {factor_words(check)}"


def factor_words(check: Check) -> str:
    """The safety factor and the one required."""
    return f"{'' if check.unloaded else 'safety factor '}{check_factor(check)}, required {check.wanted:g}"


def check_factor(check: Check) -> str:
    """How many times the load the limit is, never rounded up to what is required.

    Parameters
    ----------
    check : Check
        What must hold.
    """
    if check.factor is None and not check.unloaded:
        return "not known"
    return "nothing loads it" if check.unloaded else _cut(check.times, check.wanted)


def _cut(factor: float, wanted: float) -> str:
    """Never rounded up to what is wanted: 1.97 of 2 is 1.9, not 2.0."""
    text = f"{factor:.1f}" if factor < 10 else f"{factor:.0f}"
    return f"{math.floor(factor * 10) / 10:.1f}" if factor < wanted <= float(text) else text


def _trimmed(text: str) -> str:
    """A limit without the noughts that say nothing: 7 N m, not 7.0 N m."""
    number, gap, unit = text.partition(" ") if " " in text else (text.rstrip("°"), "°" if "°" in text else "", "")
    return f"{number.rstrip('0').rstrip('.') if '.' in number else number}{gap}{unit}"


def give_words(choice: MountFit, kind: str = "stick", *, lost: bool = True) -> list[str]:
    """What the mount's flex costs: travel, droop, swing.

    Parameters
    ----------
    choice : MountFit
        A way to hold it.
    kind : str, default 'stick'
        Stick, switch or controller.
    lost : bool, default True
        Whether the travel that it takes is told; that it is not known always is.
    """
    push = "when it is pressed" if kind == "switch" else "at full push"
    lines = []
    if choice.lost_share is None:
        lines.append("How much travel its flex takes is not known: hang a kilogram on it and measure the drop.")
    elif choice.lost_share > 0 and lost:
        lines.append(f"Its flex takes {share(choice.lost_share)} of the travel {push}.")
    if choice.droop_m > 0 or choice.droop_rad > 0:
        lines.append(f"It sags {plain(choice.droop_m, 'mm')} and {plain(choice.droop_rad, 'deg')} under its load.")
    if choice.ringing_hz is not None and kind != "switch":
        slow = f", slower than {SWINGS_BELOW_HZ:g} Hz: a knock on the chair can come through as input"
        lines.append(
            f"Natural frequency about {plain(choice.ringing_hz, 'hz')}, the arm's own mass counted"
            f"{slow if choice.ringing_hz < SWINGS_BELOW_HZ else ''}."
        )
    return lines


def fails_words(other: MountFit) -> str:
    """Another way to hold it: that it would hold too, or what fails, why it is refused, and the smallest change.

    Parameters
    ----------
    other : MountFit
        Not the chosen one.
    """
    named = f"{other.mount} on {other.on}" if other.on not in ("", other.mount) else other.mount
    named += f" with {other.fastener}" if other.fastener else ""
    change = f" Smallest change: {sentence(other.change)}" if other.change is not None else ""
    if other.verdict == "holds":
        spare = f", {_cut(other.margin, 1.0)} times what is required" if other.margin is not None else ""
        lost = f"; its flex takes {share(other.lost_share)} of the travel" if other.lost_share else ""
        taken = f"; but what it needs is used at the {listed(other.taken_by)}" if other.taken_by else ""
        confirm = "".join(f" {sentence(one.told)}" for one in other.doubts)
        return f"{'May also pass' if confirm else 'Also passes'}: {named}{spare}{lost}{taken}.{confirm}"
    told = " ".join(sentence(one) for one in (*other.refused, *other.fails))
    return f"{'REFUSED' if other.verdict == 'refused' else 'Fails'}: {named}. {told}{change}".rstrip()


# --- for the family ---------------------------------------------------------------------------------------------------------


def photos(mount: SiteMount) -> list[str]:
    """From where to photograph it on the first day, with a tape in the picture.

    Parameters
    ----------
    mount : SiteMount
        With its choice.
    """
    places = ["from straight above", "from the player's right, seat level"]
    arm = mount.choice.arm if mount.choice is not None else None
    if arm is not None:
        places.append("the clamp close up, a tape along the tube")
        places += [
            f"{joint_label(number, one.name)} straight on" for number, one in enumerate(arm.joints, 1) if number > 1
        ]
    elif mount.choice is not None and mount.choice.fastener is not None:
        places.append("both halves of the fastener, before they are joined")
    return places


def parts_words(choice: MountFit) -> str:
    """What is needed for it, in one row."""
    parts = (*choice.parts[:1], *choice.under, *choice.parts[1:])
    return listed(say(one) for one in parts) if parts else choice.mount
