"""From samples to what is kept: cues, a second stick, a switch, a sink that fails, tuning beside the raw stick."""

import math
from collections.abc import Iterable

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from OneEuroFilter import OneEuroFilter
from scipy.signal import butter, iirnotch, lfilter, lfilter_zi

from stickwright.catalogue import say
from stickwright.codes.devices import Devices
from stickwright.codes.live_notes import LiveNotes
from stickwright.codes.live_warnings import LiveWarnings
from stickwright.codes.message import message
from stickwright.errors import BadInput, Problem
from stickwright.measure.detect_stick import wiggled
from stickwright.measure.devices import Appeared, Device, DeviceSamples, Gap, Gone, StickAxes, axes_of, buttons_of
from stickwright.measure.events import MarkEvent, Stop
from stickwright.measure.inbox import Inbox
from stickwright.measure.live_tuning import LiveTuning, filter_lag_s
from stickwright.measure.merging import ConfirmSwitch, Merger
from stickwright.measure.recorder import Keeper, Recorder
from stickwright.measure.replay import StepReplay
from stickwright.measure.report_rate import rate_text, report_rate
from stickwright.measure.sdl import SdlReader
from stickwright.measure.steps import RECORDED_COLUMNS
from stickwright.measure.tasks import guided_task
from stickwright.measure.virtual import VirtualStick
from stickwright.model.recording import Recording
from stickwright.tuning.filters import Filter
from stickwright.tuning.shaping import Response, respond

PAD = Device("pad", "pad", axes_of(4, standard=True), buttons_of(1, standard=False), "computer")
LEVER = Device("lever", "lever", axes_of(3, standard=False), (), "browser")


class Box:
    """A sink in memory that holds what it is told to, as the store does: a row sent twice is held once."""

    def __init__(self) -> None:
        self.rows = np.empty((0, len(RECORDED_COLUMNS)))
        self.fails, self.holds_part = False, False

    def append(self, rows: np.ndarray, first: int) -> int:
        if self.fails:
            raise BadInput(Problem("records", "a full disk", "room for the recording", "Make room."))
        assert first <= len(self.rows), f"a gap: {first} after {len(self.rows)}"
        upto = len(rows) // 2 if self.holds_part else len(rows)
        self.rows = np.concatenate([self.rows[:first], rows[:upto]])
        return len(self.rows)


def samples(times_s: Iterable[float], device_id: str = "pad", buttons: int = 0, first: int = 0) -> DeviceSamples:
    """Samples whose axes carry the time in thousandths."""
    stamps = np.array(list(times_s), dtype=np.float64)
    axes = np.column_stack([stamps / 1000.0, -stamps / 2000.0, stamps / 4000.0, -stamps / 8000.0])
    return DeviceSamples(device_id, first, stamps, axes, np.full(len(stamps), buttons, dtype=np.int64))


def recorder_of(sink: Box, **more: object) -> Recorder:
    return Recorder(guided_task("play", seed=0, lasts_s=60.0), sink, StickAxes("pad"), **more)  # type: ignore[arg-type]


def test_what_is_kept() -> None:
    """Every sample after the start is kept with time from 0, y forward, what was asked, and nothing else."""
    box = Box()
    recorder = recorder_of(box)
    recorder.take([samples([99.0, 99.5])])
    recorder.start(100.0)
    took = recorder.take([samples(100.0 + np.arange(5) / 100.0)])
    assert recorder.acknowledged == len(box.rows) == 5
    assert recorder.waiting == 0
    assert box.rows[:, 0] == pytest.approx(np.arange(5) / 100.0, abs=1e-9)
    assert box.rows[:, 1] == pytest.approx(0.1 + np.arange(5) / 1e5, abs=1e-12)
    assert box.rows[:, 2] == pytest.approx(0.05 + np.arange(5) / 2e5, abs=1e-12)
    assert set(box.rows[:, 6]) == {8.0}  # play
    assert np.isnan(box.rows[:, 7:9]).all()
    assert (took.rows.shape, took.tuned_xy, took.words) == ((5, 7), None, ())


def test_the_whole_true_path() -> None:
    """A made-up stick, through SDL, the recorder and a task into the sink: every value, cue beside it."""
    rng = np.random.default_rng(3)
    recording = Recording("made", np.arange(500) / 1000.0, rng.integers(-32767, 32768, (500, 2)) / 32767.0)
    ticks = iter(range(10_000_000, 10_000_000_000, 500_000))  # two looks at the clock a round
    reader = SdlReader(inbox := Inbox(), [VirtualStick(StepReplay(recording))], lambda: next(ticks), lambda: 0)
    reader.open()
    box, taken, recorder = Box(), 0, None
    try:
        for number in range(500):
            reader.step()
            if number % 16 == 0 or number == 499:
                events = inbox.take()
                if recorder is None:
                    recorder = Recorder(
                        guided_task("rest", seed=0), box, StickAxes(reader.devices()[0].id), live=LiveTuning(Response())
                    )
                    recorder.start(0.0)
                took = recorder.take(events)
                taken += len(took.rows)
    finally:
        reader.close()
    assert taken == len(box.rows) == 500
    assert np.array_equal(box.rows[:, 1:3], recording.xy)
    assert set(box.rows[:, 6]) == {1.0}  # rest


def test_unplugging_pauses_and_replugging_resumes() -> None:
    """The task pauses when the stick goes and goes on when it is back; what was kept stays, what comes is numbered on."""
    box = Box()
    recorder = recorder_of(box)
    recorder.start(10.0)
    recorder.take([samples(10.0 + np.arange(4) / 100.0)])
    took = recorder.take([Gone("pad", 10.05)])
    assert recorder.state.phase == "paused"
    assert took.words == (message(Devices.unplugged, which="main"),)
    took = recorder.take([Appeared(PAD, 12.0, again=True), samples(12.0 + np.arange(4) / 100.0)])
    assert recorder.state.phase in ("resting", "asking")
    assert [effect.what for effect in took.effects if isinstance(effect, MarkEvent)] == ["resumed"]
    assert box.rows[:, 0] == pytest.approx([0.0, 0.01, 0.02, 0.03, 2.0, 2.01, 2.02, 2.03], abs=1e-9)


def test_sleep_stops_the_task() -> None:
    """After the laptop slept the task stands stopped where it was, says why, and can be resumed."""
    box = Box()
    recorder = recorder_of(box)
    recorder.start(0.0)
    gap = Gap("sleep", message(LiveNotes.slept, time_s=90.0), 90.02, seconds=90.0)
    took = recorder.take([samples([0.0, 0.01]), gap, samples([90.03, 90.04])])
    assert recorder.state.phase == "stopped"
    assert took.words == (gap.words,)
    assert [effect.what for effect in took.effects if isinstance(effect, MarkEvent)] == ["gap", "stopped"]
    assert len(box.rows) == 2


def test_stop_by_word() -> None:
    """Stopping keeps all that came before."""
    box = Box()
    recorder = recorder_of(box)
    recorder.start(0.0)
    recorder.take([samples([0.0, 0.01])])
    recorder.say(Stop, 0.015)
    recorder.take([samples([0.02, 0.03])])
    assert (recorder.state.phase, len(box.rows)) == ("stopped", 2)


def test_a_sink_that_fails() -> None:
    """While the disk is full everything is held, with a sentence; afterwards nothing is missing or doubled."""
    box = Box()
    recorder = recorder_of(box)
    recorder.start(0.0)
    recorder.take([samples([0.0, 0.01])])
    box.fails = True
    took = recorder.take([samples([0.02, 0.03])])
    assert "a full disk" in took.words[0]
    assert took.words[1] == message(LiveNotes.waiting, samples=2)
    recorder.take([samples([0.04])])
    assert (recorder.acknowledged, recorder.waiting) == (2, 3)
    box.fails = False
    assert recorder.tick(0.05).words == ()
    assert box.rows[:, 0] == pytest.approx([0.0, 0.01, 0.02, 0.03, 0.04], abs=1e-9)


@given(st.lists(st.tuples(st.integers(0, 5), st.booleans(), st.booleans()), max_size=30))
def test_any_failures(steps: list[tuple[int, bool, bool]]) -> None:
    """However often the sink fails or takes a part, at the end it holds every row once, in order."""
    box = Box()
    keeper = Keeper(box)
    total = 0
    for count, fails, part in steps:
        rows = np.full((count, len(RECORDED_COLUMNS)), 0.0)
        rows[:, 0] = total + np.arange(count)
        keeper.keep(rows)
        total += count
        box.fails, box.holds_part = fails, part
        keeper.send()
        assert keeper.acknowledged == len(box.rows)
    box.fails = box.holds_part = False
    keeper.send()
    assert box.rows[:, 0].tolist() == list(range(total))


def test_a_sink_that_lies() -> None:
    """A sink that says it holds more than it was given is a defect, not believed."""

    class Liar:
        def append(self, rows: np.ndarray, first: int) -> int:
            return first + len(rows) + 1

    keeper = Keeper(Liar())
    keeper.keep(np.zeros((2, len(RECORDED_COLUMNS))))
    with pytest.raises(RuntimeError, match="3 rows, of 2"):
        keeper.send()
    assert keeper.waiting == 2


def test_a_second_stick_beside() -> None:
    """A row waits for the second stick's message, and then has its latest value at or before the row's time."""
    merger = Merger(StickAxes("pad"), StickAxes("other", 0, 1), ConfirmSwitch("other", 2))
    assert merger.take([samples([1.00, 1.01, 1.02])]) == ()
    (merged,) = merger.take([samples([0.995, 1.015, 1.03], "other", buttons=4)])
    assert merged.rows[:, 3] == pytest.approx([0.000995, 0.000995, 0.001015], abs=1e-12)
    assert merged.rows[:, 4] == pytest.approx([0.0004975, 0.0004975, 0.0005075], abs=1e-12)
    assert merged.rows[:, 5].tolist() == [1.0, 1.0, 1.0]


def test_it_does_not_wait_for_ever() -> None:
    """A second stick that says nothing holds the main one back by a quarter of a second at most."""
    merger = Merger(StickAxes("pad"), StickAxes("other"))
    assert merger.take([samples([1.0])]) == ()
    (merged,) = merger.take([samples([1.3])])
    assert merged.rows[0, 0] == 1.0
    assert np.isnan(merged.rows[0, 3])
    (last,) = merger.finish()
    assert last.rows[0, 0] == 1.3


def test_the_second_stick_is_pulled_out() -> None:
    """From then on its columns are empty, not frozen, and the main stick goes on."""
    merger = Merger(StickAxes("pad"), StickAxes("other"))
    merged = merger.take(
        [samples([1.0], "other"), Gone("other", 1.05), samples([1.0, 1.1])]
    )  # fmt: skip
    rows = np.concatenate([one.rows for one in merged])
    assert rows[0, 3] == pytest.approx(0.001, abs=1e-12)
    assert np.isnan(rows[1, 3])


@settings(max_examples=20, deadline=None)
@given(
    cuts=st.lists(st.integers(1, 400), max_size=12),
    by=st.sampled_from(
        [
            Filter(),
            Filter("low-pass", 2.0),
            Filter("butterworth", 3.0),
            Filter("1-euro", 1.0, 2.0),
            Filter("notch", 4.0),
        ]
    ),
)
def test_live_is_the_whole_series(cuts: list[int], by: Filter) -> None:
    """The tuning applied batch by batch is the tuning of the whole series, to a hundred-thousandth of full output."""
    rng = np.random.default_rng(8)
    times_s = np.arange(4000) * 0.004
    xy = np.clip(np.cumsum(rng.normal(0.0, 0.02, (4000, 2)), axis=0), -1.0, 1.0)
    tuned = Response(centre_xy=(0.02, -0.01), dead_zone=0.05, curve_ratio=1.0, filter=by, outer_limit=1.0)
    live, out, start = LiveTuning(tuned), [], 0
    for cut in [*cuts, *[311] * 13]:
        out.append(live.add(times_s[start : start + cut], xy[start : start + cut]))
        start += cut
    assert np.concatenate(out) == pytest.approx(respond(xy, times_s, tuned), abs=1e-5)


RATE_HZ = 2000.0


def textbook(by: Filter, x: np.ndarray) -> np.ndarray:
    """The filter by scipy's coefficients, or by the authors' package of the 1-euro filter."""
    if by.kind == "1-euro":
        peer = OneEuroFilter(RATE_HZ, by.cutoff_hz, by.beta, 1.0)
        return np.array([peer(value, 1.0 + place / RATE_HZ) for place, value in enumerate(x)])
    if by.kind == "low-pass":
        pole = math.exp(-2 * math.pi * by.cutoff_hz / RATE_HZ)
        return lfilter([1 - pole], [1, -pole], x, zi=[pole * x[0]])[0]
    b, a = (
        butter(2, by.cutoff_hz, fs=RATE_HZ) if by.kind == "butterworth" else iirnotch(by.cutoff_hz, by.quality, RATE_HZ)
    )
    return lfilter(b, a, x, zi=lfilter_zi(b, a) * x[0])[0]


@pytest.mark.parametrize(
    ("by", "needless"),
    [
        (Filter("low-pass", 2.0), 0.9),
        (Filter("low-pass", 0.7), 0.9),
        (Filter("butterworth", 3.0), 0.85),
        (Filter("notch", 4.0), 0.65),
        (Filter("notch", 4.0, quality=1.0), 0.65),
        (Filter("notch", 4.0, quality=0.5), 0.9),
        (Filter("notch", 4.0, quality=0.3), 0.65),
        (Filter("1-euro", 2.0, 0.0), 0.0),
        (Filter("1-euro", 2.0, 2.0), 0.0),
    ],
    ids=str,
)
def test_a_filter_is_remembered_as_long_as_it_remembers(by: Filter, needless: float) -> None:
    """Independent route: from full output let go at once, scipy's filter has less than a millionth left after the memory, and more
    than that after a good part of it: no shorter than needed, and not for ever. (Of the 1-euro filter, whose own speed filter is
    counted in, only that it is long enough.)"""
    memory_s = LiveTuning(Response(filter=by)).memory_s
    held = round(RATE_HZ * memory_s) + 1
    left = np.abs(textbook(by, np.concatenate([np.ones(held), np.zeros(2 * held)]))[held:])
    assert left[round(RATE_HZ * memory_s) :].max() < 1e-6
    assert left[round(RATE_HZ * needless * memory_s) :].max() > 1e-6


def test_before_and_after() -> None:
    """Switching the tuning off shows the raw stick, on again the same as if it had never been off; raw is kept."""
    times_s, xy = np.arange(300) * 0.01, np.column_stack([np.sin(np.arange(300) * 0.1), np.zeros(300)])
    tuned = Response(filter=Filter("low-pass", 2.0))
    live = LiveTuning(tuned)
    live.add(times_s[:100], xy[:100])
    live.on = False
    assert np.array_equal(live.add(times_s[100:200], xy[100:200]), xy[100:200])
    live.on = True
    assert live.add(times_s[200:], xy[200:]) == pytest.approx(respond(xy, times_s, tuned)[200:], abs=1e-6)


def test_the_lag_is_stated() -> None:
    """The lag shown is the one seen on a slow ramp: a filter trails a ramp by its lag, whatever its kind."""
    times_s = np.arange(8000) * 0.001
    ramp = np.column_stack([0.01 * times_s, np.zeros(8000)])
    for by in (Filter("low-pass", 2.0), Filter("butterworth", 2.0), Filter("1-euro", 2.0, 0.0), Filter("notch", 3.0)):
        out = respond(ramp, times_s, Response(filter=by))
        assert filter_lag_s(by) == pytest.approx((ramp[-1, 0] - out[-1, 0]) / 0.01, abs=0.0011)
    live = LiveTuning(Response(filter=Filter("low-pass", 2.0)))
    # By hand: 1/(2 pi 2 Hz) = 0.0796 s.
    assert live.lag_text == message(LiveNotes.lag, lag_s=pytest.approx(0.079577, abs=1e-6), low_s=None, high_s=None)
    assert LiveTuning(Response()).lag_text == message(LiveNotes.no_lag)


def swing(*ranges: float, device_id: str) -> DeviceSamples:
    axes = np.array([[0.0] * len(ranges), list(ranges)])
    return DeviceSamples(device_id, 0, np.array([0.0, 0.1]), axes, np.zeros(2, np.int64))


def test_wiggle_finds_the_stick() -> None:
    """The stick that moved most is the one meant; a rival nearly as large is asked about."""
    found = wiggled([swing(0.1, 0.0, 0.9, 0.8, device_id="pad"), swing(0.1, 0.0, 0.0, device_id="lever")], [PAD, LEVER])
    assert (found.stick, found.findings) == (StickAxes("pad", 2, 3), ())
    found = wiggled([swing(0.0, 0.0, 0.9, 0.8, device_id="pad"), swing(0.1, 0.7, 0.6, device_id="lever")], [PAD, LEVER])
    assert found.stick == StickAxes("pad", 2, 3)
    assert [one.level for one in found.findings] == ["query"]
    assert "'lever' (axis 2 and axis 3)" in say(found.findings[0].text)


def test_wiggle_of_an_unknown_mapping() -> None:
    """Without words for its axes, the two that moved most are the stick; a lever with one axis is told."""
    assert wiggled([swing(0.6, 0.0, 0.9, device_id="lever")], [LEVER]).stick == StickAxes("lever", 0, 2)
    found = wiggled([swing(0.05, 0.0, 0.9, device_id="lever")], [LEVER])
    assert found.stick == StickAxes("lever", 2, None)
    assert found.findings[0].text.text == "one_axis"


def test_no_wiggle() -> None:
    """Tremor at rest is no wiggle."""
    found = wiggled([swing(0.1, 0.1, 0.0, 0.0, device_id="pad")], [PAD])
    assert found.stick is None
    assert found.findings[0].text == message(LiveWarnings.no_wiggle)


@pytest.mark.parametrize("rate_hz", [50.0, 90.0, 125.0, 250.0])
def test_the_rate_of_a_slow_device(rate_hz: float) -> None:
    """A device that reports less often than it is looked at: its rate is found, and the interval holds it."""
    rng = np.random.default_rng(int(rate_hz))
    looks = np.cumsum(np.full(6000, 0.001) + rng.normal(0.0, 3e-5, 6000))
    reports = np.floor((looks + 0.0003) * rate_hz)
    values = np.round(100.0 * np.sin(0.02 * reports))  # coarse: many reports repeat the value
    rate = report_rate(looks, values)
    assert rate.low <= rate_hz <= rate.high
    assert rate.high - rate.low < 0.1 * rate_hz


def test_the_rate_of_a_fast_device() -> None:
    """A device that reports as often as it is looked at: at least that, with no upper end."""
    looks = np.arange(2000) * 0.001
    rate = report_rate(looks, np.sin(looks * 10.0))
    assert (rate.value, rate.upper) == (pytest.approx(1000.0, abs=0.5), np.inf)
    assert rate_text(rate) == message(LiveWarnings.rate_at_least, rate_hz=rate.value)


def test_no_movement_no_rate() -> None:
    """A stick that stood still tells no rate, and says so."""
    rate = report_rate(np.arange(1000) * 0.001, np.zeros((1000, 2)))
    assert rate.value is None
    why = message(LiveWarnings.rate_reason, reason="hardly-moved")
    assert rate_text(rate) == message(LiveWarnings.rate_unknown, why=why)
