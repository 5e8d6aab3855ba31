"""What was noted and cannot be used because something beside it is missing: each is said, so that nobody counts on it."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from stickwright.codes.message import Name, message
from stickwright.codes.unused import Figure, HoldLacks, Unused
from stickwright.model.kit import Controller, Kit
from stickwright.model.player import Hold, Site
from stickwright.model.recorded import Finding

__all__ = ["unused_findings"]

_STICK_FIGURES: dict[str, Figure] = {
    "start_force_n": "start_force",
    "full_force_n": "full_force",
    "travel_m": "travel",
    "contact_height_m": "contact_height",
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
    missing = tuple(figure for name, figure in _STICK_FIGURES.items() if getattr(controller, name) is None)
    if not controller.sticks or not missing:
        return
    begun = len(missing) < len(_STICK_FIGURES)
    text = message(Unused.controller_sticks, controller=Name(controller.name), missing=missing)
    yield Finding("query" if begun else "note", "controller", text)


def _holds(site: Site) -> Iterator[Finding]:
    for hold in site.hold:
        lacks = _hold_lacks(site, hold)
        if lacks is not None:
            text = message(Unused.hold, site=Name(site.name), held_s=tuple(hold.duration_s), lacks=lacks)
            yield Finding("query", "hold", text)


def _hold_lacks(site: Site, hold: Hold) -> HoldLacks | None:
    """What keeps a hold from being used; None when it is used."""
    if not hold.duration_s:
        return "time"
    if hold.effort_share is not None:
        return None
    if hold.force_n is None:
        return "effort_and_force"
    if not hold.force_n > 0:
        return "no_force"
    if not math.fsum(force for reading in site.reading for force in reading.force_n) > 0:
        return "comfortable_force"
    return None


def _tried(site: Site) -> Iterator[Finding]:
    for entry in site.on_stick:
        if not entry.reached_share and not entry.tremor_m:
            text = message(Unused.tried, site=Name(site.name), stick=Name(entry.stick))
            yield Finding("query", "on_stick", text)


def _slopes(kit: Kit, sites: Sequence[Site]) -> Iterator[Finding]:
    """Without the slope of the movement only the most level base is tried."""
    unread = [site.name for site in sites if site.reading and site.movement_tilt_rad is None]
    if unread and len(kit.tilt_rad) > 1:
        text = message(Unused.slope, sites=tuple(map(Name, unread)), slopes=len(kit.tilt_rad))
        yield Finding("note", "slope", text)
