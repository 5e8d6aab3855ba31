"""Arms that reach at the figures measured or assumed; and where only an assumed one keeps an arm away, those that may reach."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from stickwright.codes.message import Message, Name, message
from stickwright.codes.mount_rules import MountRules
from stickwright.codes.to_measure import ToMeasure
from stickwright.model.kit import Mount
from stickwright.model.mounting import MountDoubt
from stickwright.mounting.asked import MountRequest
from stickwright.mounting.search import HANGS_ON, ArmReach, arm_reaches

__all__ = ["arms_that_reach"]

HEADS_M = (0.015, 0.060)
"""From the last ball to the base, where nobody measured it: common practice, no source."""
TIGHTEST_BEND_M = 0.030
"""Least radius of a thin neck, where its papers do not tell: common practice, no source."""


def arms_that_reach(asked: MountRequest, arms: Sequence[Mount]) -> tuple[ArmReach, ...]:
    """Ways to hold a device with each of some arms, or why there is none.

    Returns
    -------
    tuple of ArmReach
        One for each arm. A way that is there only with an assumed figure elsewhere in its range says what is to be measured;
        by the face there is none such, and the reason says so.
    """
    found = _reaches(asked, arms)
    return tuple(
        reach if reach.poses else _elsewhere(asked, mount, reach) for mount, reach in zip(arms, found, strict=True)
    )


def _reaches(asked: MountRequest, arms: Sequence[Mount]) -> tuple[ArmReach, ...]:
    return arm_reaches(asked.pose, asked.room, arms, moves_with=asked.moves_with, base_m=asked.held.outline_m)


def _others(mount: Mount) -> Iterator[tuple[Mount, Message]]:
    """The arm with its assumed figure elsewhere, and what to measure."""
    if mount.kind == "gooseneck":
        if mount.least_bend_m is None:
            told = message(ToMeasure.bend, mount=Name(mount.name))
            yield mount.model_copy(update={"least_bend_m": TIGHTEST_BEND_M}), told
    elif mount.head_m is None:
        told = message(ToMeasure.last_ball, mount=Name(mount.name))
        for head in HEADS_M:
            yield mount.model_copy(update={"head_m": head}), told


def _elsewhere(asked: MountRequest, mount: Mount, none: ArmReach) -> ArmReach:
    why = next((one for one in none.reasons if one.code in HANGS_ON), None)
    if why is None:  # nothing of it hangs on an assumed figure
        return none
    for other, measure in _others(mount):
        (found,) = _reaches(asked, [other])
        if not found.poses:
            continue
        if asked.by_face:
            strict = message(MountRules.at_face, why=why, measures=(measure,))
            return replace(none, reasons=(strict, *none.reasons))
        doubt = MountDoubt("reach", (measure,), why)
        return replace(found, poses=tuple(replace(pose, doubts=(doubt,)) for pose in found.poses))
    return none
