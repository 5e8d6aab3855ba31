"""Sticks of this computer on the true path: a made-up stick is plugged into SDL and read back as any other.

Nothing here looks at a wall clock: rounds are counted, and where the reader runs by hand its clock is made up.
"""

import threading
import time
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest

from stickwright.codes.live_notes import LiveNotes
from stickwright.codes.message import message
from stickwright.errors import BadInput
from stickwright.measure.devices import Appeared, DeviceSamples, Event, Gap, Gone, StickAxes, stick_xy, sticks_of
from stickwright.measure.inbox import Inbox
from stickwright.measure.replay import Replay, StepReplay, replayed_cues
from stickwright.measure.sdl import SdlReader, SdlSource, sdl_library
from stickwright.measure.virtual import VirtualStick, VirtualStickState
from stickwright.model.recording import Recording

STEP = 1 / 32767
DEMO = Path(__file__).parents[2] / "examples" / "demo" / "recordings"


class Clock:
    """A clock that only goes on when told."""

    def __init__(self) -> None:
        self.now_ns, self.slept_ns = 5_000_000_000, 0

    def __call__(self) -> int:
        return self.now_ns

    def day_ns(self) -> int:
        return self.now_ns + self.slept_ns


class Bench:
    """A reader that runs by hand, a millisecond a round."""

    def __init__(self, *drivers: VirtualStick, most: int = 600_000) -> None:
        self.clock, self.inbox = Clock(), Inbox(most)
        self.reader = SdlReader(self.inbox, drivers, self.clock, self.clock.day_ns)

    def rounds(self, count: int) -> tuple[Event, ...]:
        for _ in range(count):
            self.reader.step()
            self.clock.now_ns += 1_000_000
        return self.inbox.take()


@pytest.fixture
def opened() -> Iterator[list[Bench]]:
    benches: list[Bench] = []
    yield benches
    for bench in benches:
        bench.reader.close()


def bench_of(opened: list[Bench], *drivers: VirtualStick, most: int = 600_000) -> Bench:
    bench = Bench(*drivers, most=most)
    bench.reader.open()
    opened.append(bench)
    return bench


def moved(count: int, seed: int = 1) -> Recording:
    """An invented recording whose values are whole steps of a stick, so that they can come back exactly."""
    rng = np.random.default_rng(seed)
    return Recording("made", np.arange(count) / 1000.0, rng.integers(-32767, 32768, (count, 2)) / 32767.0)


def rows_of(events: tuple[Event, ...], device_id: str) -> list[DeviceSamples]:
    return [event for event in events if isinstance(event, DeviceSamples) and event.device_id == device_id]


def xy_of(events: tuple[Event, ...], device_id: str) -> np.ndarray:
    return np.concatenate([stick_xy(one, StickAxes(device_id)) for one in rows_of(events, device_id)])


def test_every_value_comes_back(opened: list[Bench]) -> None:
    """Two thousand samples through SDL: each comes back, once, in order, with the very value."""
    recording = moved(2000)
    bench = bench_of(opened, VirtualStick(StepReplay(recording)))
    events = bench.rounds(2000)
    (appeared,) = [event for event in events if isinstance(event, Appeared)]
    assert np.array_equal(xy_of(events, appeared.device.id), recording.xy)
    (samples,) = rows_of(events, appeared.device.id)
    assert samples.times_s == pytest.approx(5.0 + np.arange(2000) / 1000.0, abs=1e-9)
    assert (appeared.device.source, appeared.again, samples.first) == ("replay", False, 0)
    assert sticks_of(appeared.device)[0] == StickAxes(appeared.device.id, 0, 1)


def test_the_lowest_value_is_kept(opened: list[Bench]) -> None:
    """A stick's lowest value is a hair beyond full output, and is kept as it is."""
    bench = bench_of(opened, VirtualStick(lambda _: VirtualStickState((-1.5, 1.5, 0.0, 0.0))))
    samples = bench.rounds(1)[-1]
    assert isinstance(samples, DeviceSamples)
    assert samples.axes[0, :2].tolist() == [-32768 / 32767, 1.0]


def test_the_demo_player_replays(opened: list[Bench]) -> None:
    """A demo recording at its own times comes back to half a step of sixteen bits, and its cues with it."""
    from stickwright.files.recordings import read_recording

    recording = read_recording(DEMO / "push.csv")
    bench = bench_of(opened, VirtualStick(Replay(recording, again=False)))
    count = 3000
    events = bench.rounds(count)
    (samples,) = [event for event in events if isinstance(event, DeviceSamples)]
    into_s = np.arange(count) / 1000.0
    place = np.searchsorted(recording.times_s - recording.times_s[0], into_s + 1e-9, "right") - 1
    assert stick_xy(samples, StickAxes("")) == pytest.approx(recording.xy[place], abs=STEP / 2 + 1e-12)
    assert recording.cue is not None
    words = replayed_cues(recording, into_s)[:, 3]
    assert {int(word) for word in words} == {1, 4}  # rest and push
    assert [int(word) == 1 for word in words] == [str(word) == "rest" for word in recording.cue[place]]


def test_faster_than_it_was(opened: list[Bench]) -> None:
    """At ten times the speed each round shows the tenth sample on, and it starts anew at the end."""
    recording = moved(100)
    bench = bench_of(opened, VirtualStick(Replay(recording, speed=10.0)))
    events = bench.rounds(20)
    (appeared, *_) = events
    assert isinstance(appeared, Appeared)
    assert np.array_equal(xy_of(events, appeared.device.id), recording.xy[[*range(0, 100, 10), *range(0, 100, 10)]])


def test_unplugged_in_the_middle(opened: list[Bench]) -> None:
    """Pulled out, it makes no sample (no zeros); plugged in again, the same device goes on where its count was."""
    recording = moved(300)
    stick = VirtualStick(StepReplay(recording))
    feed, bench = stick.feed, bench_of(opened, stick)
    first = bench.rounds(100)
    stick.feed = lambda _: None
    away = bench.rounds(50)
    assert bench.reader.devices() == ()
    stick.feed = feed
    again = bench.rounds(200)
    appeared, back = first[0], again[0]
    assert isinstance(appeared, Appeared)
    assert isinstance(back, Appeared)
    assert [type(event) for event in away] == [Gone]
    assert (back.device, back.again) == (appeared.device, True)
    assert np.array_equal(xy_of((*first, *away, *again), appeared.device.id), recording.xy)
    assert rows_of(again, appeared.device.id)[0].first == 100


def test_two_sticks_of_one_kind(opened: list[Bench]) -> None:
    """Two sticks alike are told apart, each with its own samples; the one that comes back is the one that went."""
    one, two = moved(60, seed=1), moved(60, seed=2)
    sticks = VirtualStick(StepReplay(one)), VirtualStick(StepReplay(two))
    bench = bench_of(opened, *sticks)
    events = bench.rounds(30)
    first, second = (event.device for event in events if isinstance(event, Appeared))
    assert second.id == f"{first.id}#2"
    feed = sticks[0].feed
    sticks[0].feed = lambda _: None
    events += bench.rounds(10)
    sticks[0].feed = feed
    events += bench.rounds(20)
    assert [event.device_id for event in events if isinstance(event, Gone)] == [first.id]
    assert [event.device.id for event in events if isinstance(event, Appeared)] == [first.id, second.id, first.id]
    assert np.array_equal(xy_of(events, first.id), one.xy[:50])
    assert np.array_equal(xy_of(events, second.id), two.xy[:60])


def test_a_second_stick_and_a_switch(opened: list[Bench]) -> None:
    """The right stick of a device and its buttons are read beside the left stick."""
    presses = ((0.010, 0.015, 3),)
    bench = bench_of(opened, VirtualStick(StepReplay(moved(40), moved(40, seed=2), presses)))
    samples = bench.rounds(40)[-1]
    assert isinstance(samples, DeviceSamples)
    assert np.array_equal(stick_xy(samples, StickAxes("", 2, 3)), moved(40, seed=2).xy)
    assert np.flatnonzero(samples.buttons == 8).tolist() == [10, 11, 12, 13, 14]
    assert samples.buttons.sum() == 5 * 8


def test_nobody_takes(opened: list[Bench]) -> None:
    """What finds no room is counted to the sample and told; the numbers of the samples show it too."""
    bench = bench_of(opened, VirtualStick(StepReplay(moved(200))), most=50)
    events = bench.rounds(120)
    (gap,) = [event for event in events if isinstance(event, Gap)]
    assert (gap.kind, gap.samples) == ("overflow", 70)
    assert gap.words == message(LiveNotes.overflow, samples=70, device=None)
    (before,), (after,) = rows_of(events, gap.device_id), rows_of(bench.rounds(10), gap.device_id)
    assert (len(before.times_s), after.first, len(after.times_s)) == (50, 120, 10)


def test_the_computer_sleeps(opened: list[Bench]) -> None:
    """The monotonic clock stands still in sleep: the time that was missed is put in, and said."""
    bench = bench_of(opened, VirtualStick(StepReplay(moved(50))))
    before = bench.rounds(10)[-1]
    bench.clock.slept_ns += 90_000_000_000
    gap, after = bench.rounds(10)
    assert isinstance(gap, Gap)
    assert (gap.kind, gap.words) == ("sleep", message(LiveNotes.slept, time_s=pytest.approx(90.0)))
    assert after.times_s[0] - before.times_s[-1] == pytest.approx(90.001, abs=1e-6)


def test_the_clock_is_put_back(opened: list[Bench]) -> None:
    """A clock put back an hour is told, and touches no stamp."""
    bench = bench_of(opened, VirtualStick(StepReplay(moved(50))))
    before = bench.rounds(10)[-1]
    bench.clock.slept_ns -= 3600_000_000_000
    gap, after = bench.rounds(10)
    assert (gap.kind, gap.seconds) == ("clock-back", 3600.0)
    assert after.times_s[0] - before.times_s[-1] == pytest.approx(0.001, abs=1e-9)


def test_a_busy_computer(opened: list[Bench]) -> None:
    """A round that comes half a second late is told as a gap."""
    bench = bench_of(opened, VirtualStick(StepReplay(moved(50))))
    bench.rounds(10)
    bench.clock.now_ns += 500_000_000
    gap, _ = bench.rounds(10)
    assert (gap.kind, gap.words) == ("late", message(LiveNotes.computer_busy, time_s=pytest.approx(0.5, abs=0.01)))


def test_no_stick() -> None:
    """Without a stick there is an empty list, and nothing fails."""
    with SdlSource() as source:
        devices = tuple(one for one in source.devices() if one.source == "replay")
        assert devices == ()


def test_one_reader_at_a_time() -> None:
    """A second reader is refused in words; after the first has closed, the next may."""
    with SdlSource(), pytest.raises(BadInput, match="found a second reader, expected one at a time"):
        SdlSource()
    with SdlSource() as source:
        assert source.running


def test_a_thousand_a_second_loses_none() -> None:
    """Some seconds at full rate on the thread, another thread taking: every value shown is read, by count."""
    count = 3000
    recording, shown = moved(count), []
    steps = StepReplay(recording)

    def feed(now_s: float) -> VirtualStickState | None:
        state = steps(now_s)
        if state is None:
            finished.set()
        else:
            shown.append(state)
        return state

    finished = threading.Event()
    taken: list[Event] = []
    with SdlSource([VirtualStick(feed)]) as source:
        while not finished.wait(0.05):
            taken += source.take()
    taken += source.take()
    appeared = next(event for event in taken if isinstance(event, Appeared))
    samples = rows_of(tuple(taken), appeared.device.id)
    assert len(shown) == count
    assert np.array_equal(xy_of(tuple(taken), appeared.device.id), recording.xy)
    assert all(one.first + len(one.times_s) == two.first for one, two in pairwise(samples))
    assert (np.diff(np.concatenate([one.times_s for one in samples])) > 0).all()
    assert len(samples) > 5
    assert not [event for event in taken if isinstance(event, Gap) and event.kind != "late"]


def test_the_thread_ends() -> None:
    """After closing, no thread is left and SDL holds nothing."""
    before = threading.active_count()
    source = SdlSource([VirtualStick(Replay(moved(100)))])
    source.close()
    source.close()
    assert (source.running, threading.active_count()) == (False, before)
    assert sdl_library().SDL_WasInit(0) == 0


def test_a_failing_feed_is_told() -> None:
    """When the thread fails, whoever takes is told why, and the next reader can start."""

    def feed(now_s: float) -> VirtualStickState | None:
        raise LookupError(f"no state at {now_s:.0f}")

    with pytest.raises(LookupError, match="no state at"):
        SdlSource([VirtualStick(feed)])
    SdlSource().close()


def test_it_fails_later() -> None:
    """A failure after the start is told at the next take."""
    fail = threading.Event()

    def feed(now_s: float) -> VirtualStickState | None:
        if fail.is_set():
            raise LookupError(f"no state at {now_s:.0f}")
        return VirtualStickState()

    source = SdlSource([VirtualStick(feed)])
    fail.set()
    while source.running:
        time.sleep(0.001)
    with pytest.raises(RuntimeError, match="has stopped"):
        source.take()
    source.close()


def test_what_cannot_be_replayed() -> None:
    """A recording without samples, or in pixels, is refused."""
    with pytest.raises(BadInput, match="no samples"):
        Replay(Recording("empty", np.empty(0), np.empty((0, 2))))
    with pytest.raises(BadInput, match="values in px"):
        Replay(Recording("pad", np.zeros(1), np.zeros((1, 2)), unit="px"))
    with pytest.raises(BadInput, match="speed"):
        Replay(moved(3), speed=0.0)


def test_an_empty_cell_leaves_the_stick() -> None:
    """Where a recording has an empty cell the stick stays where it was."""
    recording = Recording("r", np.arange(3.0), np.array([[np.nan, 0.1], [0.5, np.nan], [np.nan, 0.3]]))
    steps = StepReplay(recording)
    assert [steps(0.0), steps(0.0), steps(0.0), steps(0.0)] == [
        VirtualStickState((0.0, -0.1, 0.0, 0.0)), VirtualStickState((0.5, -0.1, 0.0, 0.0)), VirtualStickState((0.5, -0.3, 0.0, 0.0)), None
    ]  # fmt: skip
