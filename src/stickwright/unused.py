"""What was noted and cannot be used because something beside it is missing: each is said, so that nobody counts on it."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from stickwright.model.kit import Controller, Kit
from stickwright.model.player import Hold, Site
from stickwright.model.recorded import Finding
from stickwright.units import spoken

__all__ = ["unused_findings"]

_STICK_FIGURES = {
    "start_force_n": "actuation force",
    "full_force_n": "force at full travel",
    "travel_m": "travel",
    "contact_height_m": "contact height",
}


def unused_findings(kit: Kit, sites: Sequence[Site]) -> list[Finding]:
    """Readings and devices that the plan leaves out because they are half described.

    Parameters
    ----------
    kit : Kit
        As it is described.
    sites : sequence of Site
        Those that may be used.

    Returns
    -------
    list of Finding
        A query where something was begun and lacks a figure, a note where nothing was begun.
    """
    found = [one for controller in kit.controller for one in _sticks_left_out(controller)]
    for site in sites:
        found += _holds(site)
        found += _tried(site)
    return [*found, *_slopes(kit, sites)]


def _sticks_left_out(controller: Controller) -> Iterator[Finding]:
    """A controller's sticks are offered only with all four figures."""
    missing = [words for name, words in _STICK_FIGURES.items() if getattr(controller, name) is None]
    if not controller.sticks or not missing:
        return
    begun = len(missing) < len(_STICK_FIGURES)
    remedy = "Measure them" if len(missing) > 1 else "Measure it"
    text = (
        f"{controller.name}: its sticks are offered to no control site, because {_listed(missing)} "
        f"{'are' if len(missing) > 1 else 'is'} not given. {remedy} if the player may use them."
    )
    yield Finding("query" if begun else "note", "controller", text)


def _holds(site: Site) -> Iterator[Finding]:
    for hold in site.hold:
        why = _hold_lacks(site, hold)
        if why:
            kept = (
                f"the hold of {' and '.join(spoken(one, 's') for one in hold.duration_s)}"
                if hold.duration_s
                else "a hold"
            )
            yield Finding("query", "hold", f"{site.name}: {kept} is not used, because {why}")


def _hold_lacks(site: Site, hold: Hold) -> str:
    """What keeps a hold from being used, with the remedy; nothing when it is used."""
    if not hold.duration_s:
        return "how long it was kept is not given. Time it."
    if hold.effort_share is not None:
        return ""
    if hold.force_n is None:
        return (
            "it has neither an effort nor a force. Note the force that was held, or its share of the comfortable force."
        )
    if not hold.force_n > 0:
        return "its force is 0. Note the force that was held."
    if not math.fsum(force for reading in site.reading for force in reading.force_n) > 0:
        return "no comfortable force was read here to compare its force with. Read the comfortable force."
    return ""


def _tried(site: Site) -> Iterator[Finding]:
    for entry in site.on_stick:
        if not entry.reached_share and not entry.tremor_m:
            text = (
                f"{site.name}: {entry.stick} was noted as tried, and neither how far the player got nor the tremor, so it is "
                "not used. Note one of them."
            )
            yield Finding("query", "on stick", text)


def _slopes(kit: Kit, sites: Sequence[Site]) -> Iterator[Finding]:
    """Without the slope of the movement only the most level base is tried."""
    unread = [site.name for site in sites if site.reading and site.movement_tilt_rad is None]
    if unread and len(kit.tilt_rad) > 1:
        text = (
            f"{_listed(unread)}: the slope of the movement was not taken, so only the most level of the {len(kit.tilt_rad)} slopes "
            "that can be built under a base was tried. Take the slope to try the others."
        )
        yield Finding("note", "slope", text)


def _listed(names: Sequence[str]) -> str:
    return " and ".join(([", ".join(names[:-1])] if len(names) > 1 else []) + [names[-1]])
