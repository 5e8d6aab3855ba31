"""How long what holds a device takes to get out of the way: for a transfer, and in an emergency.

What was timed counts. Where nobody did, what is usual for its kind stands in and is marked; it puts mounts in order and is no
promise.
"""

from __future__ import annotations

from dataclasses import replace

from stickwright.codes.message import Name, message
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.model.kit import Kit
from stickwright.model.mounting import MountFit

__all__ = ["EMERGENCY_S", "SWINGS_S", "USUAL_S", "too_slow", "with_take_off"]

EMERGENCY_S = 10.0
"""With one hand, for a transfer or in an emergency [fitting-practice]: common practice, no measured source."""
SWINGS_S = 5.0
"""To swing aside what is made for it: common practice, no source."""
USUAL_S = {
    "tray": 15.0, "lap tray": 5.0, "table": 5.0, "bed table": 5.0, "floor": 5.0, "table clamp": 20.0, "tube clamp": 20.0,
    "friction arm": 20.0, "gooseneck": 15.0, "plate": 10.0, "floor plate": 5.0, "floor stand": 5.0, "strap": 10.0,
    "breakaway coupling": 2.0,
}  # fmt: skip
"""By kind, of what was not timed: to unclamp an arm, to lift a tray off, to push a table or a stand away: common practice, no source."""


def with_take_off(fit: MountFit, kit: Kit) -> MountFit:
    """The mount with the time that it takes to come off: as timed, else as is usual for its kind, and then marked."""
    mount = next((one for one in kit.mount if one.name == fit.mount and one.kind == fit.kind), None)
    if mount is not None and mount.take_off_s is not None:
        return replace(fit, take_off_s=mount.take_off_s)
    swings = mount is not None and mount.swings_away
    usual = SWINGS_S if swings else USUAL_S.get(fit.kind)
    if usual is None:
        return fit
    told = message(MountAssumed.take_off, mount=Name(fit.mount), swings=swings, time_s=usual)
    return replace(fit, take_off_s=usual, assumed=(*fit.assumed, told))


def too_slow(take_off_s: float | None) -> bool:
    """Whether it takes longer to come off than is acceptable in an emergency.

    Examples
    --------
    >>> too_slow(8.0), too_slow(None), too_slow(25.0)
    (False, False, True)
    """
    return take_off_s is not None and take_off_s > EMERGENCY_S
