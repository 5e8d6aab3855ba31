"""'Wiggle it': which of the devices, and which of its axes, is the stick meant."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.devices import Devices
from stickwright.codes.live_warnings import LiveWarnings
from stickwright.codes.message import Message, message
from stickwright.measure.devices import Device, DeviceSamples, StickAxes, sticks_of
from stickwright.model.recorded import Finding

__all__ = ["ENOUGH", "SECOND_AXIS", "Wiggled", "wiggled"]

ENOUGH = 0.2
"""Share of full output that counts as a wiggle: beyond drift and tremor at rest. (Judgement.)"""

SECOND_AXIS = 0.25
"""Movement of the other axis, of the first's, below which the stick is taken for a lever with one axis. (Judgement.)"""

_DOUBT = 0.5  # A rival that moved half as far may have been bumped, or be the one that was meant.


@dataclass(frozen=True)
class Wiggled:
    """What moved most.

    Parameters
    ----------
    stick : StickAxes or None
        None when nothing moved enough.
    moved : float
        Range of its widest axis, share of full output (2 is the whole throw).
    findings : tuple of Finding
        Nothing moved, two moved, one axis only.
    """

    stick: StickAxes | None
    moved: float
    findings: tuple[Finding, ...] = ()


def wiggled(events: Iterable[object], devices: Iterable[Device]) -> Wiggled:
    """The stick that moved most while the practitioner said 'wiggle it'.

    Parameters
    ----------
    events : iterable
        What a source gave meanwhile; only `DeviceSamples` count.
    devices : iterable of Device
        Those that may be meant.

    Returns
    -------
    Wiggled
        Axes by their words where the device has them; otherwise the two axes that moved most, the lower number
        taken as horizontal.

    Notes
    -----
    Assumed: the one meant moves more than whatever else is bumped meanwhile.

    Examples
    --------
    >>> from stickwright.measure.devices import axes_of
    >>> pad = Device("a", "pad", axes_of(4, standard=True), (), "browser")
    >>> swing = np.array([[0.0, 0.0, -0.5, -0.5], [0.0, 0.1, 0.5, 0.5]])
    >>> wiggled([DeviceSamples("a", 0, np.array([0.0, 0.1]), swing, np.zeros(2, np.int64))], [pad]).stick
    StickAxes(device_id='a', horizontal=2, vertical=3)
    """
    known = {device.id: device for device in devices}
    ranges = _ranges(events, known)
    sticks = [found for device_id, moved in ranges.items() for found in _candidates(known[device_id], moved)]
    sticks.sort(key=lambda found: -found[0])
    if not sticks or sticks[0][0] < ENOUGH:
        nothing = Finding("query", "no_wiggle", message(LiveWarnings.no_wiggle))
        return Wiggled(None, sticks[0][0] if sticks else 0.0, (nothing,))
    moved, stick = sticks[0]
    return Wiggled(stick, moved, tuple(_doubts(sticks, known)))


def _ranges(events: Iterable[object], known: Mapping[str, Device]) -> dict[str, NDArray[np.float64]]:
    """Range of every axis of every device."""
    low: dict[str, NDArray[np.float64]] = {}
    high: dict[str, NDArray[np.float64]] = {}
    for event in events:
        if isinstance(event, DeviceSamples) and event.device_id in known and len(event.axes):
            least, most = event.axes.min(axis=0), event.axes.max(axis=0)
            low[event.device_id] = np.minimum(low.get(event.device_id, least), least)
            high[event.device_id] = np.maximum(high.get(event.device_id, most), most)
    return {device_id: high[device_id] - low[device_id] for device_id in low}


def _candidates(device: Device, moved: NDArray[np.float64]) -> list[tuple[float, StickAxes]]:
    """Sticks of a device with how far each moved."""
    named = [(float(max(moved[one.horizontal], moved[one.vertical])), one) for one in sticks_of(device)]
    taken = {place for _, one in named for place in (one.horizontal, one.vertical)}
    free = [place for place in range(len(moved)) if place not in taken]
    if named and not any(moved[place] > max(far for far, _ in named) for place in free):
        return named
    order = sorted(free, key=lambda place: -moved[place])
    if not order:
        return named
    first = order[0]
    pair = [first]
    if len(order) > 1 and moved[order[1]] >= SECOND_AXIS * moved[first]:
        pair.append(order[1])
    pair.sort()
    vertical = pair[1] if len(pair) > 1 else None
    return [*named, (float(moved[first]), StickAxes(device.id, pair[0], vertical))]


def _doubts(sticks: list[tuple[float, StickAxes]], known: Mapping[str, Device]) -> list[Finding]:
    (moved, stick), rivals = sticks[0], sticks[1:]
    found = []
    if rivals and rivals[0][0] >= max(ENOUGH, _DOUBT * moved):
        names = [_called(one, known) for one in (stick, rivals[0][1])]
        two = message(LiveWarnings.two_moved, most=names[0], other=names[1])
        found.append(Finding("query", "two_moved", two))
    if stick.vertical is None:
        found.append(Finding("note", "one_axis", message(LiveWarnings.one_axis, stick=_called(stick, known))))
    return found


def _called(stick: StickAxes, known: Mapping[str, Device]) -> Message:
    device = known[stick.device_id]
    axes = tuple(device.axes[place] for place in (stick.horizontal, stick.vertical) if place is not None)
    return message(Devices.axes_of, device=device.called, axes=axes)
