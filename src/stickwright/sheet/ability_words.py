"""What stands beside the figures of an ability: the readings they were smoothed from, and one site's figures in a line."""

from __future__ import annotations

from stickwright.model.plan import Capability, DirectionCapability, direction_words
from stickwright.sheet.printed import plain, shown

__all__ = ["SMOOTHED", "ability_lines", "readings_behind"]

SMOOTHED = "Smoothed round the circle; the readings themselves are the points drawn, and stand in the plan's JSON file."
"""Where there is no room for `readings_behind`."""


def readings_behind(able: Capability) -> str:
    """What was read, where the figures are smoothed round the circle; nothing where nothing was read.

    Parameters
    ----------
    able : Capability

    Returns
    -------
    str
        As 'Smoothed round the circle; sticks are judged by these figures. Means of the readings themselves: right 0.48 N,
        9.4 mm; ...'.
    """
    read = [line for line in map(_read, able.directions) if line]
    if not read:
        return ""
    return (
        "Smoothed round the circle; sticks are judged by these figures. Means of the readings themselves: "
        f"{'; '.join(read)}."
    )


def _read(one: DirectionCapability) -> str:
    """A direction with the means of its repeats; nothing where there are none."""
    told = [
        plain(sum(values) / len(values), unit)
        for values, unit in ((one.measured_force_n, "n"), (one.measured_reach_m, "mm"))
        if values
    ]
    return f"{direction_words(one.direction_rad)} {', '.join(told)}" if told else ""


def ability_lines(able: Capability) -> str:
    """Force and movement range of a site in every direction, in one run of text.

    Parameters
    ----------
    able : Capability
    """
    lines = [
        f"{direction_words(one.direction_rad)} {shown(one.force_n, 'n')}, {shown(one.reach_m, 'mm')}"
        for one in able.directions
    ]
    return f"Comfortable force and movement range, smoothed round the circle: {'; '.join(lines)}."
