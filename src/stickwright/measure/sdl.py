"""Sticks plugged into this computer, read by SDL at full rate, on a thread of its own.

Rules of this file: every SDL call happens on the thread that reads; a stamp is taken right after the update
that made a value visible; events are drained before values are read, so that the zeros SDL leaves behind when
a stick is pulled out never become samples; nothing is dropped without being counted and told.

SDL's joystick part needs no window and no screen. On macOS SDL wants its events on the main thread (not tried).
"""

from __future__ import annotations

import ctypes
import threading
import time
import warnings
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from types import ModuleType, TracebackType
from typing import Any, Protocol

from stickwright.codes.capture_problems import CaptureProblems
from stickwright.codes.live_notes import LiveNotes
from stickwright.codes.message import Message, message
from stickwright.errors import BadInput, Problem
from stickwright.measure.devices import (
    AXES,
    BUTTONS,
    MOST_AXES,
    MOST_BUTTONS,
    Appeared,
    Device,
    Event,
    Gap,
    GapKind,
    Gone,
    Roster,
    axes_of,
    buttons_of,
)
from stickwright.measure.inbox import Inbox, Row

__all__ = ["FULL_SCALE", "RATE_HZ", "Driver", "SdlReader", "SdlSource", "sdl_library"]

RATE_HZ = 1000.0
FULL_SCALE = 32767.0
"""Value of an axis that is full output; the lowest, -32768, is a hair beyond it and is kept as it is."""

_SLEPT_NS = 1_000_000_000
_LATE_NS = 250_000_000  # As long as a gap in a recording, `stickwright.trace.stamps.GAP_S`.
_ONE_READER = threading.Lock()  # SDL holds one list of devices and one queue of events for the whole program.

_AXIS_ROLES = (*AXES, BUTTONS[6], BUTTONS[7])
"""In the order of SDL's own axes: two sticks, then the two lower front buttons, which are levers."""
_BUTTON_PLACES = (0, 1, 2, 3, 8, 16, 9, 10, 11, 4, 5, 12, 13, 14, 15)
"""Place in the standard mapping of each of SDL's own buttons."""
_BOUND_BUTTON, _BOUND_AXIS = 1, 2


class Driver(Protocol):
    """Moves a made-up stick from inside the reading thread, so that it is read on the true path."""

    def before_update(self, sdl: ModuleType, now_ns: int) -> None:
        """Called before every update.

        Parameters
        ----------
        sdl : module
            The library.
        now_ns : int
            The reader's clock.
        """
        ...

    def close(self, sdl: ModuleType) -> None:
        """Called once when reading ends."""
        ...


def sdl_library() -> ModuleType:
    """The SDL library, loaded when first asked for.

    Returns
    -------
    module

    Raises
    ------
    BadInput
        It cannot be loaded on this computer.
    """
    try:
        with warnings.catch_warnings():
            warnings.filterwarnings("ignore", message="Using SDL2 binaries", category=UserWarning)
            import sdl2
    except (ImportError, OSError) as error:
        raise BadInput(
            Problem(
                message(CaptureProblems.step, what="sticks"),
                str(error),
                message(CaptureProblems.expected, what="sdl"),
                message(CaptureProblems.remedy, what="reinstall"),
            )
        ) from error
    return sdl2  # type: ignore[no-any-return]


def _day_clock() -> Callable[[], int]:
    """A clock that goes on while the computer sleeps: since it was started where there is one, else of the day."""
    since_start = getattr(time, "CLOCK_BOOTTIME", None)
    return time.time_ns if since_start is None else lambda: time.clock_gettime_ns(since_start)


class _Values:
    """SDL's calls that read one value, without letting go of the interpreter: they take a fraction of a microsecond.

    An ordinary foreign call lets other threads in and queues up behind them again; with twenty values a round, a busy
    page would delay every round by milliseconds.
    """

    def __init__(self, sdl: ModuleType) -> None:
        def held(function: Any, result: Any) -> Callable[[Any, int], int]:
            address = ctypes.cast(function, ctypes.c_void_p).value or 0  # a function that was loaded has one
            return ctypes.PYFUNCTYPE(result, ctypes.c_void_p, ctypes.c_int)(address)

        self.axis = held(sdl.SDL_JoystickGetAxis, ctypes.c_int16)
        self.button = held(sdl.SDL_JoystickGetButton, ctypes.c_uint8)
        self.hat = held(sdl.SDL_JoystickGetHat, ctypes.c_uint8)


@dataclass
class _Open:
    device: Device
    handle: Any
    address: ctypes.c_void_p
    axes: int
    buttons: int
    hats: int


class SdlReader:
    """One round after another: update, stamp, read. `SdlSource` runs it on a thread; tests run it by hand.

    Parameters
    ----------
    inbox : Inbox
        Where samples and events go.
    drivers : sequence of Driver, optional
        Made-up sticks.
    clock_ns : callable
        Monotonic clock, nanoseconds.
    day_ns : callable or None
        A clock that goes on while the computer sleeps; None for the computer's own.
    """

    def __init__(
        self,
        inbox: Inbox,
        drivers: Sequence[Driver] = (),
        clock_ns: Callable[[], int] = time.perf_counter_ns,
        day_ns: Callable[[], int] | None = None,
    ) -> None:
        self._sdl = sdl_library()
        self._values = _Values(self._sdl)
        self._inbox, self._drivers = inbox, tuple(drivers)
        self._clock_ns, self._day_ns = clock_ns, day_ns or _day_clock()
        self._roster = Roster("computer")
        self._open: dict[int, _Open] = {}
        self._event = self._sdl.SDL_Event()
        self._slept_ns = 0
        self._last_ns: int | None = None
        self._ahead_ns = 0

    def open(self) -> None:
        """Start SDL's joystick part.

        Raises
        ------
        BadInput
            Another reader is at work, or SDL does not start.
        """
        if not _ONE_READER.acquire(blocking=False):
            raise BadInput(
                Problem(
                    message(CaptureProblems.step, what="sticks"),
                    message(CaptureProblems.found, what="second_reader"),
                    message(CaptureProblems.expected, what="one_reader"),
                    message(CaptureProblems.remedy, what="stop_other"),
                )
            )
        sdl = self._sdl
        for hint in (
            sdl.SDL_HINT_JOYSTICK_ALLOW_BACKGROUND_EVENTS,  # the program has no window that could be in front
            sdl.SDL_HINT_NO_SIGNAL_HANDLERS,  # Ctrl-C stays Python's
            sdl.SDL_HINT_JOYSTICK_THREAD,  # Windows: devices are found without a window
        ):
            sdl.SDL_SetHint(hint, b"1")
        sdl.SDL_SetHint(b"SDL_AUTO_UPDATE_JOYSTICKS", b"0")  # polling events must not update behind the stamp
        if sdl.SDL_Init(sdl.SDL_INIT_JOYSTICK | sdl.SDL_INIT_GAMECONTROLLER | sdl.SDL_INIT_EVENTS) != 0:
            said = sdl.SDL_GetError().decode("utf-8", "replace")
            _ONE_READER.release()
            raise BadInput(
                Problem(
                    message(CaptureProblems.step, what="sticks"),
                    said,
                    message(CaptureProblems.expected, what="sdl_start"),
                    message(CaptureProblems.remedy, what="browser"),
                )
            )
        for kind in range(sdl.SDL_JOYAXISMOTION, sdl.SDL_JOYBUTTONUP + 1):
            sdl.SDL_EventState(kind, sdl.SDL_IGNORE)  # values are polled: an unchanged one makes no event
        for kind in range(sdl.SDL_CONTROLLERAXISMOTION, sdl.SDL_CONTROLLERDEVICEREMAPPED + 1):
            sdl.SDL_EventState(kind, sdl.SDL_IGNORE)

    def step(self) -> None:
        """One round."""
        now_ns = self._clock_ns()
        for driver in self._drivers:
            driver.before_update(self._sdl, now_ns)
        self._sdl.SDL_JoystickUpdate()
        stamp_ns = self._clock_ns()
        at_s = self._stamp(stamp_ns)
        self._drain(at_s)
        if self._open:
            self._inbox.put_rows([(one.device.id, self._row(one, at_s)) for one in self._open.values()])

    def devices(self) -> tuple[Device, ...]:
        """What is plugged in now."""
        return self._roster.here()

    def close(self) -> None:
        """Let go of every stick and of SDL."""
        sdl = self._sdl
        for one in self._open.values():
            sdl.SDL_JoystickClose(one.handle)
        self._open = {}
        for driver in self._drivers:
            driver.close(sdl)
        sdl.SDL_QuitSubSystem(sdl.SDL_INIT_JOYSTICK | sdl.SDL_INIT_GAMECONTROLLER | sdl.SDL_INIT_EVENTS)
        _ONE_READER.release()

    def _stamp(self, stamp_ns: int) -> float:
        """Seconds, with the time added that the monotonic clock missed while the computer slept."""
        ahead_ns = self._day_ns() - stamp_ns
        if self._last_ns is None:
            self._last_ns, self._ahead_ns = stamp_ns, ahead_ns
        jump_ns, self._ahead_ns = ahead_ns - self._ahead_ns, ahead_ns
        ran_ns, self._last_ns = stamp_ns - self._last_ns, stamp_ns
        if jump_ns > _SLEPT_NS:
            self._slept_ns += jump_ns
            self._tell("sleep", message(LiveNotes.slept, time_s=jump_ns / 1e9), stamp_ns, jump_ns)
        elif jump_ns < -_SLEPT_NS:
            words = message(LiveNotes.clock_back, back_s=-jump_ns / 1e9)
            self._tell("clock-back", words, stamp_ns, -jump_ns)
        elif ran_ns > _LATE_NS:
            words = message(LiveNotes.computer_busy, time_s=ran_ns / 1e9)
            self._tell("late", words, stamp_ns, ran_ns)
        return (stamp_ns + self._slept_ns) * 1e-9

    def _tell(self, kind: GapKind, words: Message, stamp_ns: int, for_ns: int) -> None:
        self._inbox.put(Gap(kind, words, (stamp_ns + self._slept_ns) * 1e-9, seconds=for_ns / 1e9))

    def _drain(self, at_s: float) -> None:
        sdl, event = self._sdl, self._event
        while sdl.SDL_PollEvent(ctypes.byref(event)):
            if event.type == sdl.SDL_JOYDEVICEADDED:
                self._appear(event.jdevice.which, at_s)
            elif event.type == sdl.SDL_JOYDEVICEREMOVED:
                self._leave(event.jdevice.which, at_s)

    def _appear(self, index: int, at_s: float) -> None:
        sdl = self._sdl
        handle = sdl.SDL_JoystickOpen(index)
        instance = sdl.SDL_JoystickInstanceID(handle) if handle else -1
        if not handle or instance in self._open:
            return  # pulled out again before it could be opened; or told twice
        axes = min(sdl.SDL_JoystickNumAxes(handle), MOST_AXES)
        hats = min(sdl.SDL_JoystickNumHats(handle), 1)
        buttons = min(sdl.SDL_JoystickNumButtons(handle), MOST_BUTTONS - 4 * hats)
        made_up = bool(sdl.SDL_JoystickIsVirtual(index))
        key = ctypes.create_string_buffer(33)
        sdl.SDL_JoystickGetGUIDString(sdl.SDL_JoystickGetGUID(handle), key, 33)
        name = (sdl.SDL_JoystickName(handle) or b"").decode("utf-8", "replace")
        words = _words(sdl, index, axes, buttons, hats)
        device, again = self._roster.appear(
            key.value.decode("ascii"), name, *words, "replay" if made_up else "computer"
        )  # fmt: skip
        self._open[instance] = _Open(device, handle, ctypes.cast(handle, ctypes.c_void_p), axes, buttons, hats)
        self._inbox.put(Appeared(device, at_s, again))

    def _leave(self, instance: int, at_s: float) -> None:
        one = self._open.pop(instance, None)
        if one is not None:
            self._sdl.SDL_JoystickClose(one.handle)
            self._roster.leave(one.device.id)
            self._inbox.put(Gone(one.device.id, at_s))

    def _row(self, one: _Open, at_s: float) -> Row:
        values, stick = self._values, one.address
        mask = 0
        for place in range(one.buttons):
            if values.button(stick, place):
                mask |= 1 << place
        if one.hats:
            mask |= values.hat(stick, 0) << one.buttons
        return (at_s, float(mask), *[values.axis(stick, place) / FULL_SCALE for place in range(one.axes)])


def _words(sdl: ModuleType, index: int, axes: int, buttons: int, hats: int) -> tuple[list[Message], list[Message]]:
    """Axes and buttons of the standard mapping where SDL knows how the device maps onto it, numbered ones elsewhere."""
    axis_names = list(axes_of(axes, standard=False))
    button_names = list(buttons_of(buttons, standard=False))
    if sdl.SDL_IsGameController(index):
        pad = sdl.SDL_GameControllerOpen(index)
        if pad:
            for role, word in enumerate(_AXIS_ROLES):
                bound = sdl.SDL_GameControllerGetBindForAxis(pad, role)
                if bound.bindType == _BOUND_AXIS and bound.value.axis < axes:
                    axis_names[bound.value.axis] = word
                elif bound.bindType == _BOUND_BUTTON and bound.value.button < buttons:
                    button_names[bound.value.button] = word
            for role, place in enumerate(_BUTTON_PLACES):
                bound = sdl.SDL_GameControllerGetBindForButton(pad, role)
                if bound.bindType == _BOUND_BUTTON and bound.value.button < buttons:
                    button_names[bound.value.button] = BUTTONS[place]
            sdl.SDL_GameControllerClose(pad)
    if hats:  # bits of a hat: up, right, down, left
        button_names += [BUTTONS[place] for place in (12, 15, 13, 14)]
    return axis_names, button_names


class SdlSource:
    """Sticks of this computer, read at full rate until `close`.

    Parameters
    ----------
    drivers : sequence of Driver, optional
        Made-up sticks for practice.
    rate_hz : float, default 1000
        Rounds a second.
    most_waiting : int, default 600_000
        Samples kept until somebody takes them.

    Raises
    ------
    BadInput
        Another reader is at work, or SDL does not start.
    """

    def __init__(
        self, drivers: Sequence[Driver] = (), rate_hz: float = RATE_HZ, most_waiting: int = 600_000
    ) -> None:  # fmt: skip
        if not 1.0 <= rate_hz <= 4000.0:
            raise BadInput(Problem("rate_hz", f"{rate_hz:g}", message(CaptureProblems.expected, what="rate")))
        self._inbox = Inbox(most_waiting)
        self._reader = SdlReader(self._inbox, drivers)
        self._period_ns = round(1e9 / rate_hz)
        self._stop, self._ready = threading.Event(), threading.Event()
        self._failure: BaseException | None = None
        self._thread = threading.Thread(target=self._run, name="sticks", daemon=True)
        self._thread.start()
        self._ready.wait()
        if self._failure is not None:
            self._thread.join()
            raise self._failure

    def devices(self) -> tuple[Device, ...]:
        """What is plugged in now; empty when nothing is."""
        return self._reader.devices()

    def take(self) -> tuple[Event, ...]:
        """What happened since the last call, in order."""
        if self._failure is not None:
            raise RuntimeError("reading the sticks has stopped") from self._failure
        return self._inbox.take()

    def close(self) -> None:
        """End the thread; what waits can still be taken."""
        self._stop.set()
        self._thread.join()

    @property
    def running(self) -> bool:
        """Whether the thread reads."""
        return self._thread.is_alive()

    def __enter__(self) -> SdlSource:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:  # fmt: skip
        self.close()

    def _run(self) -> None:
        try:
            self._reader.open()
        except BaseException as error:
            self._failure = error
            self._ready.set()
            return
        try:
            self._reader.step()
            self._ready.set()
            self._rounds()
        except BaseException as error:  # handed to whoever takes next
            self._failure = error
        finally:
            self._reader.close()
            self._ready.set()

    def _rounds(self) -> None:
        period_ns, clock_ns, wait = self._period_ns, time.perf_counter_ns, time.sleep
        next_ns = clock_ns() + period_ns
        while not self._stop.is_set():
            early_ns = next_ns - clock_ns()
            if early_ns > 0:
                wait(early_ns * 1e-9)
            elif early_ns < -50 * period_ns:
                next_ns = clock_ns()  # far behind (asleep, busy): go on from now, do not race
            self._reader.step()
            next_ns += period_ns
