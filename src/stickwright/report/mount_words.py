"""Where each stick goes and what holds it, in words: for the terminal, and for the lines of the sheet's pages."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from stickwright.catalogue import book, say
from stickwright.codes.joint_settings import JointSettings
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.mount_answers import MountAnswers
from stickwright.codes.mount_checks import MountChecks
from stickwright.codes.mount_lines import MountLines, Result
from stickwright.codes.mount_poses import MountPoses
from stickwright.codes.mount_upkeep import MountUpkeep
from stickwright.codes.reports import Reports
from stickwright.model.fit import Caution
from stickwright.model.mounting import Check, MountFit, Pose, SiteMount
from stickwright.model.plan import Plan
from stickwright.mounting.compliance import SWINGS_BELOW_HZ
from stickwright.mounting.statics import PUSH_COUNTS, name_of
from stickwright.report.mount_distances import clamp_place, clamp_range_words, distances
from stickwright.report.printed import sentence, wrapped
from stickwright.report.why_so import findings_rows
from stickwright.units import to_si

__all__ = [
    "PLACED_M",
    "PLACED_RAD",
    "assumed_words",
    "beside_a_number",
    "cable_words",
    "check_cell",
    "check_factor",
    "check_words",
    "clearance_words",
    "clock_words",
    "confirm_words",
    "counted_words",
    "fails_words",
    "give_words",
    "joint_words",
    "least_words",
    "lever_words",
    "mount_blocks",
    "parts_words",
    "patch_words",
    "photos",
    "pose_words",
    "quantity",
    "release_words",
    "result_of",
]

PLACED_M, PLACED_RAD = (0.002, 0.005), math.radians(5.0)
"""How near a base is put to where it is to stand: no finer than a tape, no coarser than by what a rebuild from the sheet is judged
[fitting-practice]."""
_LEAST_M = 0.0005
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
    told = mount.sentence, plan.sentence, *(one.text for one in plan.findings)
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
        for level, text in findings_rows(tuple(one for one in mount.findings if one.text not in told))
    ]
    body = wrapped(lines, width, "  ", "    ")
    return wrapped([say(message(MountLines.block, site=Name(mount.site)))], width) + f"\n{body}"


def _held(plan: Plan, mount: SiteMount, choice: MountFit) -> Iterator[str]:
    yield say(
        message(
            MountLines.held_by,
            mount=Name(choice.mount),
            on=_other(choice.on, choice.mount),
            fixed=patch_words(choice) or None,
            along=None,
        )
    )
    if plan.room is not None and (place := clamp_place(mount, plan.room)) is not None:
        yield say(message(MountPoses.clamp, along=place))
        if other := clamp_range_words(mount, plan.room):
            yield other
    if choice.arm is not None and choice.arm.joints:
        yield clock_words()
    yield from joint_words(choice)
    if released := release_words(choice):
        yield released
    yield from (say(one) for one in distances(mount))
    if counted := counted_words(choice):
        yield counted
    if lever := lever_words(choice):
        yield lever
    for check in choice.checks:
        yield check_words(check)
        yield from _cautions(one for one in mount.cautions if _beside(one, check))
    yield from give_words(choice, mount.kind)
    yield from _cautions(one for one in mount.cautions if one.about in _GIVE)
    yield from clearance_words(choice)
    if choice.take_off_s is not None:
        yield say(message(MountLines.comes_off, time_s=choice.take_off_s))
    yield from _cautions(one for one in mount.cautions if one.about == "transfer")
    if told := cable_words(choice):
        yield told
    yield from _cautions(one for one in mount.cautions if one.about == "cable")
    yield from confirm_words(choice)
    if choice.fails or choice.refused:
        yield fails_words(choice)
    yield from (assumed_words(one) for one in choice.assumed)


def _other(on: str, mount: str) -> Name | None:
    """What a mount is on; None where that is the mount itself, or nothing."""
    return None if on in ("", mount) else Name(on)


def _cautions(cautions: Iterable[Caution]) -> list[str]:
    return [say(message(Reports.caution, text=one.text)) for one in cautions]


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


def assumed_words(text: Text) -> str:
    """What stands in for something that was not measured, marked as such.

    Parameters
    ----------
    text : Message or str
        A clause.
    """
    return say(message(MountLines.assumed, text=text))


def clock_words() -> str:
    """How directions on a clock face are meant."""
    return say(message(MountPoses.clock))


# --- the place --------------------------------------------------------------------------------------------------------------


def pose_words(pose: Pose, device: str, kind: str = "stick") -> list[str]:
    """Where the base must be and how it is turned, with how far off it may be, and what was assumed.

    Parameters
    ----------
    pose : Pose
        The mount.
    device : str
        What goes there.
    kind : str, default 'stick'
        Stick, switch or controller.

    Examples
    --------
    >>> told = pose_words(Pose("chin", (0, 0, 0), (0.0, 0.17, 0.52), 0.0, 0.4363, 0.003, 0.122), "birch")
    >>> told[0].replace("\\N{NO-BREAK SPACE}", " ")
    'Middle of the underside of birch: 170 mm forward, 520 mm up from the seat reference point (±3 mm).'
    """
    right, forward, up = pose.base_m
    known = math.isfinite(pose.may_be_off_m) and pose.may_be_off_m > 0
    least, most = PLACED_M
    base = message(
        MountPoses.base, device=Name(device), right_m=right, forward_m=forward, up_m=up,
        off_m=min(max(pose.may_be_off_m, least), most) if known else least, known=known,
    )  # fmt: skip
    lost = None
    if known:
        fine = pose.may_be_off_m < least
        lost = message(MountPoses.lost, kind=kind, off_m=pose.may_be_off_m, turned_rad=pose.tolerance_rad, fine=fine)  # type: ignore[arg-type]
    turned = message(
        MountPoses.turned, turn_rad=pose.turn_rad, tilt_rad=pose.tilt_rad, off_rad=PLACED_RAD, lost=lost, why=pose.turn_words
    )  # fmt: skip
    return [say(base), say(turned), *(assumed_words(one) for one in pose.assumed)]


def release_words(choice: MountFit) -> str:
    """The breakaway coupling, by its name, and between what ends it is set; empty without one.

    Parameters
    ----------
    choice : MountFit
        A way to hold it.
    """
    if choice.coupling is None or choice.release_nm is None:
        return ""
    low, high = choice.release_nm
    least, most = choice.release_n or (None, None)
    return say(
        message(
            MountLines.release, coupling=Name(choice.coupling), low_nm=low, high_nm=high, low_n=least, high_n=most,
            agreed=choice.release_agreed,
        )
    )  # fmt: skip


def counted_words(choice: MountFit) -> str:
    """How a working push is counted; empty where no check has one.

    Parameters
    ----------
    choice : MountFit
        A way to hold it.
    """
    if not any(check.push == "working" for check in choice.checks):
        return ""
    return say(message(MountLines.counted, times_factor=PUSH_COUNTS))


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
    return say(message(MountLines.lever, device_m=device, under_m=under if under >= _LEAST_M else None))


def cable_words(choice: MountFit) -> str:
    """The length of the cable along what holds it, with its parts; empty when it is not known.

    Parameters
    ----------
    choice : MountFit
        A way to hold it.
    """
    if choice.cable_m is None:
        return ""
    slack = choice.cable_slack_m if choice.cable_slack_m > 0 else None
    return say(message(MountLines.cable, whole_m=choice.cable_m, slack_m=slack))


def clearance_words(choice: MountFit) -> list[str]:
    """The minimum clearance of an arm; none where nothing is near it.

    Parameters
    ----------
    choice : MountFit
        A way to hold it.
    """
    arm = choice.arm
    if arm is None or not arm.nearest:
        return []
    return [say(message(MountLines.clearance, clear_m=arm.clearance_m, nearest=Name(arm.nearest)))]


def confirm_words(choice: MountFit) -> list[str]:
    """What is to be confirmed that stands beside none of its checks: whether it reaches, its level, its flex, the tilt.

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
    long, short = choice.patch_m
    return say(message(MountLines.patch, fastener=Name(choice.fastener), long_m=long, short_m=short))


def joint_words(choice: MountFit) -> list[str]:
    """How each joint is set, counted from the clamp as in the drawing.

    Parameters
    ----------
    choice : MountFit
        A way to hold it.
    """
    joints = enumerate(choice.arm.joints if choice.arm is not None else (), start=1)
    return [
        say(message(JointSettings.set, joint=joint.name, number=number, setting=joint.words))
        for number, joint in joints
    ]


# --- the checks -------------------------------------------------------------------------------------------------------------


def quantity(value: float, unit: str, limit: bool = False) -> str:
    """A load or limit in its unit; a limit without idle zeros.

    Examples
    --------
    >>> [quantity(3.14, "nm"), quantity(7.0, "nm", limit=True)] == ["3.1\\N{NO-BREAK SPACE}N m", "7\\N{NO-BREAK SPACE}N m"]
    True
    """
    writer = book().writer
    if not math.isfinite(value):
        return writer.unknown
    if not unit:
        return writer.number(value)
    return writer.trimmed_amount(to_si(value, unit), unit) if limit else writer.amount(to_si(value, unit), unit)


def check_words(check: Check) -> str:
    """One check in a line: load, limit, safety factor, required.

    Parameters
    ----------
    check : Check
        What must hold.

    Examples
    --------
    >>> told = check_words(Check("joint_1", "working", 3.1, 7.0, "nm", 2.258, 2.0, True, None))
    >>> told.replace("\\N{NO-BREAK SPACE}", " ")
    'joint 1, working push: 3.1 N m of 7 N m, safety factor 2.3, required 2.'
    """
    figures = check.limitless or (check.load is not None and check.limit is not None)
    return say(
        message(
            MountLines.check, name=_name(check), push=check.push or None, result=result_of(check), told=_told(check),
            why=None if figures else check.words, confirm=check.confirm, assumed=check.assumed,
        )
    )  # fmt: skip


def check_cell(check: Check, why: Text | None = None) -> str:
    """Its name in a table, with what is to be confirmed and what was assumed.

    Parameters
    ----------
    check : Check
        What must hold.
    why : Message or str, optional
        A sentence instead of numbers.
    """
    return say(
        message(
            MountLines.check_cell, name=_name(check), why=why, confirm=check.confirm, assumed=check.assumed
        )
    )  # fmt: skip


def result_of(check: Check) -> Result:
    """Whether a check passes; or that assumed figures decide it.

    Parameters
    ----------
    check : Check
        What must hold.
    """
    return "confirm" if check.confirm else "pass" if check.holds else "fail"


def _name(check: Check) -> Message:
    what, number = name_of(check.what)
    return message(MountChecks.named, what=what, number=number)


def _told(check: Check) -> Text:
    """Load of limit, safety factor and the one required."""
    if check.load is None and check.limit is None and not check.limitless:
        return message(MountLines.not_known)
    if check.limitless:
        return check.words if check.words is not None else message(MountLines.unloaded)
    load, limit = quantity(check.loads, check.unit), quantity(check.most, check.unit, limit=True)
    return message(MountLines.load_of, load=load, limit=limit, factor=_factor(check))


def _factor(check: Check) -> Message:
    return message(MountLines.factor, safety_factor=check.factor, unloaded=check.unloaded, required_factor=check.wanted)


def check_factor(check: Check) -> str:
    """How many times the load the limit is, never rounded up to what is required.

    Parameters
    ----------
    check : Check
        What must hold.
    """
    return say(
        message(
            MountLines.factor_cell, safety_factor=check.factor, unloaded=check.unloaded, required_factor=check.wanted
        )
    )  # fmt: skip


def least_words(choice: MountFit, kind: str) -> str:
    """The check with the least to spare; what the flex takes stands beside what holds it, unless it is not known.

    Parameters
    ----------
    choice : MountFit
        A way to hold it.
    kind : str
        Stick, switch or controller.
    """
    told = give_words(choice, kind, lost=False)
    judged = [one for one in choice.checks if math.isfinite(one.times) and one.wanted > 0]
    if judged:
        worst = min(judged, key=lambda one: one.times / one.wanted)
        told.insert(0, say(message(MountLines.least, name=_name(worst), factor=_factor(worst))))
    return " ".join(told) or sentence(message(MountLines.unloaded))


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
    told = []
    if choice.lost_share is None:
        told.append(message(MountLines.flex_unknown))
    elif choice.lost_share > 0 and lost:
        told.append(message(MountLines.flex, lost_share=choice.lost_share, kind=kind))  # type: ignore[arg-type]
    if choice.droop_m > 0 or choice.droop_rad > 0:
        told.append(message(MountLines.sags, droop_m=choice.droop_m, droop_rad=choice.droop_rad))
    if choice.ringing_hz is not None and kind != "switch":
        slow = choice.ringing_hz < SWINGS_BELOW_HZ
        told.append(message(MountLines.natural, natural_hz=choice.ringing_hz, least_hz=SWINGS_BELOW_HZ, slow=slow))
    return [say(one) for one in told]


def fails_words(other: MountFit) -> str:
    """Another way to hold it: that it also passes, or what fails, why it is refused, and the smallest change.

    Parameters
    ----------
    other : MountFit
        Not the chosen one.
    """
    fastener = Name(other.fastener) if other.fastener else None
    way = message(MountAnswers.way, mount=Name(other.mount), on=_other(other.on, other.mount), fastener=fastener)
    if other.verdict == "holds":
        told = message(
            MountLines.also_passes, way=way, spare_factor=other.margin, lost_share=other.lost_share or None,
            taken_by=tuple(map(Name, other.taken_by)), confirm=tuple(one.told for one in other.doubts),
        )  # fmt: skip
        return say(told)
    why = (*other.refused, *other.fails)
    return say(message(MountLines.fails, way=way, refused=other.verdict == "refused", why=why, change=other.change))


# --- for the family ---------------------------------------------------------------------------------------------------------


def photos(mount: SiteMount) -> list[str]:
    """From where to photograph it on the first day, with a tape in the picture.

    Parameters
    ----------
    mount : SiteMount
        With its choice.
    """
    told = [message(MountUpkeep.from_above), message(MountUpkeep.from_right)]
    arm = mount.choice.arm if mount.choice is not None else None
    if arm is not None:
        told.append(message(MountUpkeep.clamp_close))
        told += [
            message(MountUpkeep.joint_straight, number=number, joint=one.name)
            for number, one in enumerate(arm.joints, 1)
            if number > 1
        ]
    elif mount.choice is not None and mount.choice.fastener is not None:
        told.append(message(MountUpkeep.halves))
    return [say(one) for one in told]


def parts_words(choice: MountFit) -> str:
    """What is needed for it, in one row."""
    parts = (*choice.parts[:1], *choice.under, *choice.parts[1:])
    return say(message(MountLines.parts, parts=parts)) if parts else choice.mount
