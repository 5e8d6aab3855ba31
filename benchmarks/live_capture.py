"""A stick at 1 kHz through SDL, thread, queue and recorder, against a bare SDL loop in the same run.

A made-up stick shows another value every round; the recorder takes 30 times a second with a guided task and a
tuning running beside, and hands on to a sink. Prints samples lost (by number and by value), intervals between
stamps (p1, p50, p99), share of one core, and what a take costs. The bare loop does no more than update, read
two axes and append. Ten minutes unless shortened:

    python benchmarks/live_capture.py --seconds 20
"""

from __future__ import annotations

import argparse
import threading
import time

import numpy as np

from stickwright.catalogue import say
from stickwright.measure.devices import StickAxes
from stickwright.measure.live_tuning import LiveTuning
from stickwright.measure.recorder import Recorder
from stickwright.measure.sdl import SdlSource, sdl_library
from stickwright.measure.tasks import guided_task
from stickwright.measure.virtual import VirtualStick, VirtualStickState
from stickwright.tuning.filters import Filter
from stickwright.tuning.shaping import Response

PERIOD_NS = 1_000_000


def level(number: int) -> int:
    """Value that a round shows: tells which round it was, within 65521 rounds (a prime, so no beat with batches)."""
    return number % 65521 - 32760


class Shown:
    """A feed that counts what it showed."""

    def __init__(self) -> None:
        self.count, self.on = 0, True

    def __call__(self, now_s: float) -> VirtualStickState | None:  # noqa: ARG002 - shows by count
        if not self.on:
            return None
        share = level(self.count) / 32767.0
        self.count += 1
        return VirtualStickState((share, -share, 0.0, 0.0))


class Rows:
    """A sink in memory."""

    def __init__(self) -> None:
        self.rows: list[np.ndarray] = []
        self.held = 0

    def append(self, rows: np.ndarray, first: int) -> int:
        if first != self.held:
            raise RuntimeError(f"row {first} after {self.held}")
        self.rows.append(rows)
        self.held += len(rows)
        return self.held


def ours(seconds: float) -> dict[str, float]:
    shown, sink, costs_ms = Shown(), Rows(), []
    respond_once = LiveTuning(Response(filter=Filter("1-euro", 1.0, 2.0), dead_zone=0.05, curve_ratio=1.0))
    respond_once.add(np.zeros(1), np.zeros((1, 2)))  # compiled, or from the cache
    respond_once.begin_anew()
    with SdlSource([VirtualStick(shown)]) as source:
        device = source.devices()[0]
        recorder = Recorder(
            guided_task("play", seed=0, lasts_s=seconds + 60.0), sink, StickAxes(device.id), live=respond_once
        )
        source.take()
        first = shown.count
        recorder.start(time.perf_counter())
        begun, busy = time.perf_counter(), time.process_time()
        gaps: list[str] = []
        while time.perf_counter() - begun < seconds:
            time.sleep(1 / 30)
            taken = time.perf_counter()
            gaps += recorder.take(source.take()).words
            costs_ms.append(1000 * (time.perf_counter() - taken))
        ran, cpu = time.perf_counter() - begun, time.process_time() - busy
        shown.on = False
        while source.devices():
            time.sleep(0.01)
    recorder.take(source.take())
    rows = np.concatenate(sink.rows)
    for words in gaps:
        print(f"  told: {say(words)}")
    # Samples between the first look and the start belong to no recording.
    before = shown.count - first - len(rows)
    wanted = np.array([level(number) for number in range(first + before, shown.count)])
    return {
        "samples": len(rows), "lost": int(np.count_nonzero(np.diff(np.round(rows[:, 1] * 32767)) % 65521 != 1)),
        "values": int(np.count_nonzero(np.round(rows[:, 1] * 32767) != wanted)), "before": before,
        "cpu": cpu / ran, "rate": len(rows) / (rows[-1, 0] - rows[0, 0]), "take50": float(np.percentile(costs_ms, 50)),
        "take99": float(np.percentile(costs_ms, 99)), **intervals(rows[:, 0]),
    }  # fmt: skip


def bare(seconds: float) -> dict[str, float]:
    """The same loop with nothing around it."""
    sdl = sdl_library()
    sdl.SDL_Init(sdl.SDL_INIT_JOYSTICK)
    index = sdl.SDL_JoystickAttachVirtual(sdl.SDL_JOYSTICK_TYPE_GAMECONTROLLER, 4, 15, 0)
    handle = sdl.SDL_JoystickOpen(index)
    for kind in range(sdl.SDL_JOYAXISMOTION, sdl.SDL_JOYDEVICEREMOVED + 1):
        sdl.SDL_EventState(kind, sdl.SDL_IGNORE)
    rows: list[tuple[int, int, int]] = []

    def loop() -> None:
        next_ns = end_ns = time.perf_counter_ns()
        end_ns += round(seconds * 1e9)
        number = 0
        while (now_ns := time.perf_counter_ns()) < end_ns:
            if next_ns > now_ns:
                time.sleep((next_ns - now_ns) * 1e-9)
            next_ns += PERIOD_NS
            sdl.SDL_JoystickSetVirtualAxis(handle, 0, level(number))
            sdl.SDL_JoystickSetVirtualAxis(handle, 1, -level(number))
            number += 1
            sdl.SDL_JoystickUpdate()
            stamp = time.perf_counter_ns()
            rows.append((stamp, sdl.SDL_JoystickGetAxis(handle, 0), sdl.SDL_JoystickGetAxis(handle, 1)))

    begun, busy = time.perf_counter(), time.process_time()
    thread = threading.Thread(target=loop)
    thread.start()
    thread.join()
    ran, cpu = time.perf_counter() - begun, time.process_time() - busy
    sdl.SDL_JoystickClose(handle)
    sdl.SDL_QuitSubSystem(sdl.SDL_INIT_JOYSTICK)
    times_s = np.array([row[0] for row in rows]) * 1e-9
    return {
        "samples": len(rows),
        "cpu": cpu / ran,
        "rate": len(rows) / (times_s[-1] - times_s[0]),
        **intervals(times_s),
    }


def intervals(times_s: np.ndarray) -> dict[str, float]:
    steps_us = np.diff(times_s) * 1e6
    low, middle, high = np.percentile(steps_us, [1, 50, 99])
    return {"p1": low, "p50": middle, "p99": high, "longest": float(steps_us.max())}


def line(name: str, one: dict[str, float]) -> str:
    return (
        f"{name}: {one['samples']:.0f} samples, {one['rate']:.1f} Hz, interval p1/p50/p99 "
        f"{one['p1']:.0f}/{one['p50']:.0f}/{one['p99']:.0f} us, longest {one['longest'] / 1000:.1f} ms, "
        f"{100 * one['cpu']:.1f} % of one core"
    )


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument(
        "--seconds", type=float, default=600.0, help="how long ours runs (the bare loop: a tenth, at least 5)"
    )
    seconds = parser.parse_args().seconds
    measured, peer = ours(seconds), bare(max(5.0, seconds / 10))
    print(line("recorder", measured))
    print(line("bare SDL loop", peer))
    print(f"samples lost: {measured['lost']:.0f}, values wrong: {measured['values']:.0f} (wanted: 0 and 0)")
    print(f"{measured['before']:.0f} samples came before the start")
    print(f"a take with task, tuning and sink: median {measured['take50']:.2f} ms, p99 {measured['take99']:.2f} ms")
    print(f"processor against the bare loop: {measured['cpu'] / peer['cpu']:.1f} times")


if __name__ == "__main__":
    main()
