"""What the family looks at each month, for each mount."""

from __future__ import annotations

import datetime

from stickwright.model.mounting import MountFit

__all__ = ["monthly"]


def monthly(choice: MountFit, from_day: str = "") -> list[str]:
    """What the family looks at each month, for this mount.

    Parameters
    ----------
    choice : MountFit
        What was chosen.
    from_day : str
        Day on which it is first used, YYYY-MM-DD; '' when not known.
    """
    lines = []
    if choice.arm is not None or choice.kind in ("friction arm", "tube clamp", "table clamp", "gooseneck"):
        lines.append(
            "the clamp does not turn or slide when pulled by hand, and the tape mark beside it is still in line"
        )
    if choice.arm is not None and choice.arm.joints:
        lines.append(
            "the tape marks across the joints are still in line: an arm that sags looks like a stick that stopped working"
        )
    if choice.fastener is not None:
        lines.append(f"the {choice.fastener} is clean, no corner lifts, both halves grip over the whole patch")
    if choice.fastener is not None and choice.openings:
        lines.append(f"the {choice.fastener} is not worn: {_worn_words(choice.openings, from_day)}")
    if choice.kind in ("tray", "lap tray", "plate", "floor plate", "floor stand"):
        lines.append("it does not slide when pushed as hard as in play")
    if choice.anti_slip is not None:
        lines.append(f"the {choice.anti_slip} is washed and dry: dust takes its grip")
    if choice.coupling is not None:
        lines.append(f"the breakaway coupling ({choice.coupling}) lets go by hand as it did on the first day")
    return [*lines, "the distances in the table are still right"]


def _worn_words(openings: int, from_day: str) -> str:
    """After how many openings a fastener is half as strong, and the day by which it is to be replaced."""
    half = f"it is half as strong after {openings:,} openings"
    try:
        start = datetime.date.fromisoformat(from_day)
        once, twice = (start + datetime.timedelta(days=openings / often) for often in (1, 2))
    except (ValueError, OverflowError):  # not dated, or further than a calendar goes
        return f"{half}; replace it before"
    return f"{half}, so replace it by {once} if it is opened once a day (assumed), by {twice} if twice"
