"""A made-up stick that SDL cannot tell from a real one: for practice without hardware, and for tests.

It is plugged into SDL and read back by the same calls as any other; only its movement comes from a `Feed`.
"""

from __future__ import annotations

import ctypes
from collections.abc import Callable
from dataclasses import dataclass
from types import ModuleType

from stickwright.measure.sdl import FULL_SCALE

__all__ = ["Feed", "VirtualStick", "VirtualStickState"]


@dataclass(frozen=True)
class VirtualStickState:
    """Where a made-up stick is.

    Parameters
    ----------
    axes : tuple of float
        Share of full output as a device gives it, vertical axes growing downwards.
    buttons : int
        Bit mask.
    """

    axes: tuple[float, ...] = (0.0, 0.0, 0.0, 0.0)
    buttons: int = 0


Feed = Callable[[float], VirtualStickState | None]
"""Where the stick is now (seconds on the reader's clock); None while it is unplugged."""


class VirtualStick:
    """A stick for `SdlSource` whose movement comes from a feed.

    Parameters
    ----------
    feed : callable
        Asked before every update, on the reading thread; may be exchanged while it runs.
    name : str, default 'practice'
        As it names itself to SDL; sticks of one name are of one kind.
    axes, buttons : int
        How many it has; 4 axes and 15 buttons make a standard mapping.
    """

    def __init__(self, feed: Feed, name: str = "practice", axes: int = 4, buttons: int = 15) -> None:
        self.feed = feed
        self.name, self.axes, self.buttons = name, axes, buttons
        self._index: int | None = None
        self._handle: object = None
        self._shown: tuple[tuple[int, ...], int] = ((), -1)

    def before_update(self, sdl: ModuleType, now_ns: int) -> None:
        """Plug in, move or pull out, as the feed says.

        Parameters
        ----------
        sdl : module
            The library.
        now_ns : int
            The reader's clock.
        """
        state = self.feed(now_ns * 1e-9)
        if state is None:
            self.close(sdl)
            return
        if self._handle is None:
            self._plug_in(sdl)
        levels = tuple(max(-32768, min(32767, round(share * FULL_SCALE))) for share in state.axes[: self.axes])
        before, pressed = self._shown
        self._shown = levels, state.buttons
        for place, level in enumerate(levels):  # what did not change is not set again: each call lets others in
            if place >= len(before) or level != before[place]:
                sdl.SDL_JoystickSetVirtualAxis(self._handle, place, level)
        if state.buttons != pressed:
            for place in range(self.buttons):
                sdl.SDL_JoystickSetVirtualButton(self._handle, place, state.buttons >> place & 1)

    def close(self, sdl: ModuleType) -> None:
        """Pull out.

        Parameters
        ----------
        sdl : module
            The library.
        """
        if self._handle is None:
            return
        instance = sdl.SDL_JoystickInstanceID(self._handle)
        sdl.SDL_JoystickClose(self._handle)
        self._handle, self._shown = None, ((), -1)
        for index in range(sdl.SDL_NumJoysticks()):  # places move up when another is pulled out
            if sdl.SDL_JoystickGetDeviceInstanceID(index) == instance:
                sdl.SDL_JoystickDetachVirtual(index)
                return

    def _plug_in(self, sdl: ModuleType) -> None:
        about = sdl.SDL_VirtualJoystickDesc()
        about.version, about.type = 1, sdl.SDL_JOYSTICK_TYPE_GAMECONTROLLER
        about.naxes, about.nbuttons = self.axes, self.buttons
        about.name = self.name.encode("utf-8")
        index = sdl.SDL_JoystickAttachVirtualEx(ctypes.byref(about))
        self._handle = sdl.SDL_JoystickOpen(index) if index >= 0 else None
        if not self._handle:
            raise RuntimeError(f"SDL took no made-up stick: {sdl.SDL_GetError().decode('utf-8', 'replace')}")
