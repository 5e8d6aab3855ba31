"""Sticks and switches, wherever they are read: one interface for the browser and for this computer.

Rules of this file: a device is recognised when it comes back; its axes carry the words of the W3C standard
mapping; samples stay as the device gave them (vertical axes grow downwards), and are turned so that y grows
forward in one place only, `stick_xy`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Literal, Protocol

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.capture_problems import CaptureProblems
from stickwright.codes.devices import ButtonPlace, Devices
from stickwright.codes.message import Message, Name, Text, message
from stickwright.errors import BadInput, Problem

__all__ = [
    "AXES",
    "BUTTONS",
    "MOST_AXES",
    "MOST_BUTTONS",
    "Appeared",
    "Device",
    "DeviceSamples",
    "Event",
    "Gap",
    "GapKind",
    "Gone",
    "Roster",
    "Source",
    "SourceKind",
    "StickAxes",
    "axes_of",
    "buttons_of",
    "stick_xy",
    "sticks_of",
]  # fmt: skip

Array = NDArray[np.float64]
SourceKind = Literal["browser", "computer", "replay"]
GapKind = Literal["lost", "overflow", "sleep", "clock-back", "late"]

MOST_AXES = 16
MOST_BUTTONS = 52
"""So many buttons fit into the whole numbers of a float64."""

_SIDES: tuple[Literal["left", "right"], ...] = ("left", "right")
_DIRECTIONS: tuple[Literal["horizontal", "vertical"], ...] = ("horizontal", "vertical")
_PLACES: tuple[ButtonPlace, ...] = ButtonPlace.__args__  # type: ignore[attr-defined]

AXES = tuple(message(Devices.axis, stick=side, axis=axis) for side in _SIDES for axis in _DIRECTIONS)
"""Axes 0 to 3 in the order of the standard mapping [w3c-gamepad]."""

BUTTONS = tuple(message(Devices.button, place=place) for place in _PLACES)
"""Buttons 0 to 16 in the same order."""


@dataclass(frozen=True)
class Device:
    """One stick, controller or switch that is plugged in, or was.

    Parameters
    ----------
    id : str
        Alike when it is unplugged and comes back; of two of a kind the second ends in ``#2``.
    name : str
        As the device names itself; '' where it does not.
    axes : tuple of Message
        Those of the standard mapping where it is known, otherwise numbered from 1.
    buttons : tuple of Message
        The same.
    source : {"browser", "computer", "replay"}
        Where it is read.
    """

    id: str
    name: str
    axes: tuple[Message, ...]
    buttons: tuple[Message, ...]
    source: SourceKind

    @property
    def called(self) -> Text:
        """Its name, to be said."""
        return Name(self.name) if self.name else message(Devices.nameless)


@dataclass(frozen=True)
class StickAxes:
    """Which axes of which device are 'the stick'.

    Parameters
    ----------
    device_id : str
        The device.
    horizontal, vertical : int or None
        Places in `Device.axes`; None for a lever with one axis.
    """

    device_id: str
    horizontal: int | None = 0
    vertical: int | None = 1


@dataclass(frozen=True, eq=False)
class DeviceSamples:
    """Samples of one device, in order.

    Parameters
    ----------
    device_id : str
        Whose they are.
    first : int
        Number of the first one since the device was first seen, from 0; a jump is samples lost.
    times_s : array, shape (n,)
        Seconds on the computer's monotonic clock, never falling.
    axes : array, shape (n, k)
        Share of full output as the device gave it: vertical axes grow downwards.
    buttons : array of int64, shape (n,)
        Bit mask: bit 0 is the first button.
    """

    device_id: str
    first: int
    times_s: Array
    axes: Array
    buttons: NDArray[np.int64]


@dataclass(frozen=True)
class Appeared:
    """A device was plugged in.

    Parameters
    ----------
    device : Device
    at_s : float
        Seconds on the computer's monotonic clock.
    again : bool
        It had been here before and was unplugged.
    """

    device: Device
    at_s: float
    again: bool = False


@dataclass(frozen=True)
class Gone:
    """A device was unplugged.

    Parameters
    ----------
    device_id : str
    at_s : float
        Seconds on the computer's monotonic clock.
    """

    device_id: str
    at_s: float


@dataclass(frozen=True)
class Gap:
    """Something is missing between the samples before and after, or the time between them is in doubt.

    Parameters
    ----------
    kind : {"lost", "overflow", "sleep", "clock-back", "late"}
        What happened.
    words : Message
        The same, for the practitioner.
    at_s : float
        Seconds on the computer's monotonic clock.
    device_id : str
        Whose samples; empty for all.
    samples : int
        How many are missing, 0 when none or not known.
    seconds : float
        For how long.
    """

    kind: GapKind
    words: Message
    at_s: float
    device_id: str = ""
    samples: int = 0
    seconds: float = 0.0


Event = DeviceSamples | Appeared | Gone | Gap


class Source(Protocol):
    """Where samples come from: the browser, or the sticks of this computer."""

    def devices(self) -> tuple[Device, ...]:
        """What is plugged in now."""
        ...

    def take(self) -> tuple[Event, ...]:
        """What happened since the last call, in order; does not wait."""
        ...

    def close(self) -> None:
        """Stop reading; calling it again does nothing."""
        ...


def axes_of(count: int, *, standard: bool) -> tuple[Message, ...]:
    """A device's axes.

    Parameters
    ----------
    count : int
        How many there are.
    standard : bool
        Whether they stand in the order of the standard mapping [w3c-gamepad].

    Returns
    -------
    tuple of Message

    Examples
    --------
    >>> axes_of(3, standard=True)[2] == AXES[2], axes_of(2, standard=False)[1].param("number")
    (True, 2)
    """
    known = AXES[:count] if standard else ()
    return known + tuple(message(Devices.numbered_axis, number=place + 1) for place in range(len(known), count))


def buttons_of(count: int, *, standard: bool) -> tuple[Message, ...]:
    """A device's buttons.

    Parameters
    ----------
    count : int
        How many there are.
    standard : bool
        Whether they stand in the order of the standard mapping [w3c-gamepad].

    Returns
    -------
    tuple of Message

    Examples
    --------
    >>> buttons_of(1, standard=True)[0].param("place"), buttons_of(1, standard=False)[0].param("number")
    (0, 1)
    """
    known = BUTTONS[:count] if standard else ()
    return known + tuple(message(Devices.numbered_button, number=place + 1) for place in range(len(known), count))


def sticks_of(device: Device) -> tuple[StickAxes, ...]:
    """Sticks that a device's axes make: left before right.

    Returns
    -------
    tuple of StickAxes
        Empty when its mapping is not known: then a wiggle tells.

    Examples
    --------
    >>> pad = Device("a", "pad", axes_of(4, standard=True), (), "browser")
    >>> sticks_of(pad)[1]
    StickAxes(device_id='a', horizontal=2, vertical=3)
    """
    found = []
    for across, along in (AXES[:2], AXES[2:]):
        if across in device.axes and along in device.axes:
            found.append(StickAxes(device.id, device.axes.index(across), device.axes.index(along)))
    return tuple(found)


def stick_xy(samples: DeviceSamples, stick: StickAxes) -> Array:
    """Where the stick was: x right, y forward.

    The one place where the vertical axis is turned: devices give it growing downwards [w3c-gamepad].

    Parameters
    ----------
    samples : DeviceSamples
        As the device gave them.
    stick : StickAxes
        Which axes.

    Returns
    -------
    array, shape (n, 2)
        Share of full output; NaN for an axis that the stick has not.

    Raises
    ------
    BadInput
        An axis that the device has not.

    Examples
    --------
    >>> once = DeviceSamples("a", 0, np.zeros(1), np.array([[0.5, -1.0]]), np.zeros(1, np.int64))
    >>> stick_xy(once, StickAxes("a"))
    array([[0.5, 1. ]])
    """
    count = samples.axes.shape[1]
    for place in (stick.horizontal, stick.vertical):
        if place is not None and not 0 <= place < count:
            raise BadInput(
                Problem(
                    "stick",
                    message(CaptureProblems.axis, number=place + 1),
                    message(CaptureProblems.axes, axes=count),
                    message(CaptureProblems.remedy, what="wiggle"),
                )
            )
    xy = np.full((len(samples.axes), 2), np.nan)
    if stick.horizontal is not None:
        xy[:, 0] = samples.axes[:, stick.horizontal]
    if stick.vertical is not None:
        xy[:, 1] = 0.0 - samples.axes[:, stick.vertical]  # not -0.0 at rest
    return xy


@dataclass
class Roster:
    """Who has been here: gives a device that comes back the id it had.

    Parameters
    ----------
    source : {"browser", "computer", "replay"}
        Where its devices are read.
    """

    source: SourceKind
    _known: dict[str, Device] = field(init=False, default_factory=dict)
    _here: dict[str, None] = field(init=False, default_factory=dict)

    def appear(
        self, key: str, name: str, axes: Sequence[Message], buttons: Sequence[Message], source: SourceKind | None = None
    ) -> tuple[Device, bool]:  # fmt: skip
        """A device that was plugged in, and whether it had been here before.

        Parameters
        ----------
        key : str
            What devices of this kind have in common: a GUID, the browser's id.
        name : str
            As it names itself.
        axes, buttons : sequence of Message
        source : str or None
            Where it is read when not where the roster's others are.

        Returns
        -------
        (Device, bool)
        """
        number = 1
        while (id_ := key if number == 1 else f"{key}#{number}") in self._here:
            number += 1
        again = id_ in self._known
        device = Device(id_, name, tuple(axes), tuple(buttons), source or self.source)
        self._known[id_] = device
        self._here[id_] = None
        return device, again

    def leave(self, device_id: str) -> None:
        """Note that a device was unplugged; one that is not here is no matter."""
        self._here.pop(device_id, None)

    def back(self, device_id: str) -> None:
        """Note that a known device is here again."""
        self._here[device_id] = None

    def here(self) -> tuple[Device, ...]:
        """Devices that are plugged in now, in the order in which they came."""
        return tuple(self._known[id_] for id_ in tuple(self._here))
