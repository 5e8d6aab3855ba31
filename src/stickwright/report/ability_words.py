"""What stands beside the figures of an ability: the readings they were smoothed from, and one site's figures in a line."""

from __future__ import annotations

from stickwright.codes.ability_lines import AbilityLines
from stickwright.codes.message import Message, message
from stickwright.model.plan import Capability, DirectionCapability
from stickwright.report.printed import plain, shown
from stickwright.report.tell import tell

__all__ = ["ability_lines", "readings_behind", "smoothed_note"]


def smoothed_note() -> str:
    """Where there is no room for `readings_behind`."""
    return tell(AbilityLines.smoothed)


def readings_behind(able: Capability) -> str:
    """What was read, where the figures are smoothed round the circle; nothing where nothing was read.

    Returns
    -------
    str
        As 'Smoothed round the circle; sticks are judged by these figures. Means of the readings themselves: right 0.48 N,
        9.4 mm; ...'.
    """
    read = tuple(told for one in able.directions if (told := _read(one)) is not None)
    return tell(AbilityLines.readings, directions=read) if read else ""


def _read(one: DirectionCapability) -> Message | None:
    """A direction with the means of its repeats; None where there are none."""
    means = tuple(
        plain(sum(values) / len(values), unit)
        for values, unit in ((one.measured_force_n, "n"), (one.measured_reach_m, "mm"))
        if values
    )
    return message(AbilityLines.direction, direction_rad=one.direction_rad, figures=means) if means else None


def ability_lines(able: Capability) -> str:
    """Force and movement range of a site in every direction, in one run of text."""
    lines = tuple(
        message(
            AbilityLines.direction,
            direction_rad=one.direction_rad,
            figures=(shown(one.force_n, "n"), shown(one.reach_m, "mm")),
        )
        for one in able.directions
    )
    return tell(AbilityLines.ability, directions=lines)
