"""What the family looks at each month, for each mount."""

from __future__ import annotations

import datetime

from stickwright.catalogue import say
from stickwright.codes.message import Message, Name, message
from stickwright.codes.mount_upkeep import MountUpkeep
from stickwright.model.mounting import MountFit

__all__ = ["monthly"]

_CLAMPED = ("friction arm", "tube clamp", "table clamp", "gooseneck")
_SLIDES = ("tray", "lap tray", "plate", "floor plate", "floor stand")


def monthly(choice: MountFit, from_day: str = "") -> list[str]:
    """What the family looks at each month, for this mount.

    Parameters
    ----------
    choice : MountFit
        What was chosen.
    from_day : str
        Day on which it is first used, YYYY-MM-DD; '' when not known.
    """
    return [say(one) for one in _checks(choice, from_day)]


def _checks(choice: MountFit, from_day: str) -> list[Message]:
    told = []
    if choice.arm is not None or choice.kind in _CLAMPED:
        told.append(message(MountUpkeep.clamp))
    if choice.arm is not None and choice.arm.joints:
        told.append(message(MountUpkeep.joints))
    if choice.fastener is not None:
        told.append(message(MountUpkeep.fastener, fastener=Name(choice.fastener)))
    if choice.fastener is not None and choice.openings:
        told.append(_worn(choice.fastener, choice.openings, from_day))
    if choice.kind in _SLIDES:
        told.append(message(MountUpkeep.slides))
    if choice.anti_slip is not None:
        told.append(message(MountUpkeep.anti_slip, sheet=Name(choice.anti_slip)))
    if choice.coupling is not None:
        told.append(message(MountUpkeep.breakaway, coupling=Name(choice.coupling)))
    return [*told, message(MountUpkeep.distances)]


def _worn(fastener: str, openings: int, from_day: str) -> Message:
    """After how many openings a fastener is half as strong, and the day by which it is to be replaced."""
    try:
        start = datetime.date.fromisoformat(from_day)
        once, twice = (Name((start + datetime.timedelta(days=openings / often)).isoformat()) for often in (1, 2))
    except (ValueError, OverflowError):  # not dated, or further than a calendar goes
        return message(MountUpkeep.worn, fastener=Name(fastener), openings=openings, once=None, twice=None)
    return message(MountUpkeep.worn, fastener=Name(fastener), openings=openings, once=once, twice=twice)
