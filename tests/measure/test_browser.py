"""Messages of the measuring page: in order, once each, what is missing said, clocks that jump survived."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stickwright.codes.live_notes import LiveNotes
from stickwright.codes.message import Name, message
from stickwright.errors import BadInput
from stickwright.measure.batches import Batch, encode
from stickwright.measure.browser import MOST_HELD, BrowserSource, Receiver
from stickwright.measure.devices import AXES, Appeared, Device, DeviceSamples, Event, Gap, Gone, StickAxes, stick_xy

NAME = "Trial stick"


def named(sequence: int = 0, at_ms: float = 0.0, slot: int = 0, page: int = 1, text: str = NAME) -> Batch:
    return Batch(
        "appeared", slot, sequence, at_ms, 1e12 + at_ms, axes=2, buttons=4, text=text, standard=True, page=page
    )


def samples(sequence: int, first: int, rows: int = 4, slot: int = 0, page: int = 1, wall_ms: float = 0.0) -> Batch:
    """Samples 4 ms apart whose number stands in the first axis; sent just after the last one."""
    numbers = np.arange(first, first + rows)
    table = np.column_stack([4.0 * numbers, np.zeros(rows), numbers / 1000.0, np.full(rows, -0.5)])
    sent_ms = 4.0 * (first + rows)
    return Batch("samples", slot, sequence, sent_ms, 1e12 + sent_ms + wall_ms, first, table, 2, 4, page=page)


def feed(source: BrowserSource, *batches: Batch, from_s: float = 50.0) -> tuple[Event, ...]:
    for batch in batches:
        source.receive(encode(batch), from_s + batch.sent_ms / 1000.0)
    return source.take()


def only(events: tuple[Event, ...], kind: type) -> list:
    return [event for event in events if isinstance(event, kind)]


def numbers_of(events: tuple[Event, ...]) -> list[int]:
    return [round(1000 * share) for one in only(events, DeviceSamples) for share in one.axes[:, 0].tolist()]


def test_a_page_as_a_source() -> None:
    """A stick appears with the words of the standard mapping; its samples carry the computer's time, y forward."""
    source = BrowserSource()
    events = feed(source, named(), samples(1, 0))
    appeared, came = events
    assert isinstance(appeared, Appeared)
    assert isinstance(came, DeviceSamples)
    assert appeared.device == Device(NAME, NAME, AXES[:2], appeared.device.buttons, "browser")
    assert source.devices() == (appeared.device,)
    assert came.times_s == pytest.approx([50.0, 50.004, 50.008, 50.012], abs=1e-9)
    assert stick_xy(came, StickAxes(NAME)).tolist() == [[0.0, 0.5], [0.001, 0.5], [0.002, 0.5], [0.003, 0.5]]


@given(st.lists(st.integers(0, 11), max_size=60))
def test_any_order_any_repeats(order: list[int]) -> None:
    """However messages are repeated and shuffled, every sample arrives once and in order."""
    source = BrowserSource()
    sent = [named(), *(samples(number, 4 * (number - 1)) for number in range(1, 12))]
    events = feed(source, *(sent[place] for place in order), *sent)
    assert numbers_of(events) == list(range(44))
    assert not only(events, Gap)


@given(st.sets(st.integers(1, 9), min_size=1))
def test_lost_for_good(lost: set[int]) -> None:
    """What the page had to throw away is counted exactly, and the rest arrives."""
    source = BrowserSource()
    sent = [
        replace(samples(number, 4 * (number - 1)), lost_before=True) for number in range(1, 11) if number not in lost
    ]
    events = feed(source, named(), *sent)
    assert len(numbers_of(events)) == 4 * (10 - len(lost))
    assert sum(gap.samples for gap in only(events, Gap)) == 4 * len(lost)


def test_waits_for_a_missing_message() -> None:
    """A message that came too early is held and not acknowledged until the one before it came."""
    source = BrowserSource()
    feed(source, named())
    reply = source.receive(encode(samples(2, 4)), 51.0)
    assert (reply.acknowledged, source.take()) == (1, ())
    reply = source.receive(encode(samples(1, 0)), 51.0)
    assert reply.acknowledged == 3
    assert numbers_of(source.take()) == list(range(8))


def test_does_not_wait_for_ever() -> None:
    """When too many wait for one that does not come, it is given up, and that is said."""
    receiver = Receiver()
    early = [Batch("alive", 0, number, 1.0, 1.0) for number in range(1, MOST_HELD + 2)]
    taken = [receiver.take(one, 0.0) for one in early]
    assert not any(one.batches for one in taken[:-1])
    assert len(taken[-1].batches) == MOST_HELD + 1
    assert taken[-1].gaps[0].words == message(LiveNotes.messages_lost, messages=1)
    assert receiver.acknowledged == MOST_HELD + 2


def test_unplugged_and_plugged_in_again() -> None:
    """A stick that comes back in another place is known again, and its samples go on counting."""
    source = BrowserSource()
    gone = Batch("gone", 0, 2, 20.0, 1e12 + 20.0, page=1)
    back = replace(samples(4, 0, slot=3), sent_ms=60.0, wall_ms=1e12 + 60.0)
    back.rows[:, 0] += 40.0
    events = feed(source, named(), samples(1, 0), gone, named(3, 30.0, slot=3), back)
    assert [type(event) for event in events] == [Appeared, DeviceSamples, Gone, Appeared, DeviceSamples]
    assert events[3].again
    assert events[3].device.id == NAME
    assert events[4].first == 4


def test_two_of_a_kind() -> None:
    """Two sticks of one name are two devices."""
    source = BrowserSource()
    feed(source, named(), named(1, 1.0, slot=1))
    assert [device.id for device in source.devices()] == [NAME, f"{NAME}#2"]


def test_the_line_breaks_and_the_page_sends_on() -> None:
    """When the line breaks the stick is gone; when the page goes on sending, nothing of it is lost or doubled."""
    source = BrowserSource()
    feed(source, named(), samples(1, 0))
    source.lost_page(51.0)
    events = (*source.take(), *feed(source, samples(1, 0), samples(2, 4)))
    assert [type(event) for event in events] == [Gone, Appeared, DeviceSamples]
    assert numbers_of(events) == [4, 5, 6, 7]


def test_a_reload_takes_over() -> None:
    """A reloaded page begins anew; the old window is told to close."""
    source = BrowserSource()
    feed(source, named(), samples(1, 0))
    events = feed(source, named(page=2), samples(1, 0, page=2), from_s=51.0)
    assert [type(event) for event in events] == [Gone, Appeared, DeviceSamples]
    with pytest.raises(BadInput, match=r"an older window.*Close this window"):
        source.receive(encode(samples(2, 4)), 52.0)


def test_time_never_falls_across_a_reload() -> None:
    """The first page's clock was tied a second late: the reloaded one is held until it has caught up, and that is told."""
    source = BrowserSource()
    source.receive(encode(named()), 51.5)
    (before,) = only(feed(source, samples(1, 0)), DeviceSamples)
    events = feed(source, named(page=2), samples(1, 0, page=2), from_s=51.0)
    (after,) = only(events, DeviceSamples)
    assert after.times_s[0] >= before.times_s[-1]
    assert [gap.kind for gap in only(events, Gap)] == ["clock-back"]


def test_the_laptop_sleeps() -> None:
    """A jump of the clock of the day against the page's is a gap as long as the sleep."""
    source = BrowserSource()
    events = feed(source, named(), samples(1, 0), samples(2, 4, wall_ms=600_000.0))
    (gap,) = only(events, Gap)
    assert (gap.kind, round(gap.seconds)) == ("sleep", 600)
    before, after = only(events, DeviceSamples)
    assert after.times_s[0] - before.times_s[-1] == pytest.approx(600.004, abs=1e-6)


def test_the_clock_of_the_day_is_put_back() -> None:
    """Putting the clock back an hour does not touch the time in the recording."""
    source = BrowserSource()
    events = feed(source, named(), samples(1, 0), samples(2, 4, wall_ms=-3_600_000.0))
    (gap,) = only(events, Gap)
    assert (gap.kind, gap.words) == ("clock-back", message(LiveNotes.clock_back, back_s=pytest.approx(3600.0)))
    times_s = np.concatenate([one.times_s for one in only(events, DeviceSamples)])
    assert np.diff(times_s) == pytest.approx(0.004, abs=1e-9)


def test_the_pages_clock_runs_backwards() -> None:
    """Stamps that go back are held at the last one, and said."""
    source = BrowserSource()
    back = samples(2, 24)
    back.rows[:, 0] -= 30.0
    events = feed(source, named(), samples(1, 20), back)
    times_s = np.concatenate([one.times_s for one in only(events, DeviceSamples)])
    assert (np.diff(times_s) >= 0).all()
    (back_gap,) = [gap for gap in only(events, Gap) if gap.kind == "clock-back"]
    assert back_gap.words == message(LiveNotes.stamps_back, device=Name(NAME), back_s=pytest.approx(0.026))


def test_the_whole_page_goes_back() -> None:
    """When the page's own clock goes back, time goes on from where it was."""
    source = BrowserSource()
    earlier = replace(samples(2, 4), sent_ms=10.0, wall_ms=1e12 + 10.0)
    earlier.rows[:, 0] = [0.0, 3.0, 6.0, 9.0]
    events = feed(source, named(), samples(1, 0), earlier)
    assert next(gap.kind for gap in only(events, Gap)) == "clock-back"
    times_s = np.concatenate([one.times_s for one in only(events, DeviceSamples)])
    assert (np.diff(times_s) >= 0).all()


def test_a_silent_page() -> None:
    """A page that says nothing for a minute is told."""
    source = BrowserSource()
    events = feed(source, named(), Batch("alive", 0, 1, 60_000.0, 1e12 + 60_000.0, page=1))
    (gap,) = only(events, Gap)
    assert (gap.kind, gap.words) == ("late", message(LiveNotes.page_silent, time_s=pytest.approx(60.0)))


def test_samples_without_a_name() -> None:
    """Samples of a stick that never said its name are left out, and counted."""
    source = BrowserSource()
    (gap,) = feed(source, samples(0, 0))
    assert isinstance(gap, Gap)
    assert gap.samples == 4


def test_nobody_takes() -> None:
    """When nobody takes the samples, what finds no room is counted and told."""
    source = BrowserSource(most_waiting=6)
    events = feed(source, named(), samples(1, 0), samples(2, 4), samples(3, 8))
    assert numbers_of(events) == [0, 1, 2, 3]
    assert sum(gap.samples for gap in only(events, Gap) if gap.kind == "overflow") == 8
    assert numbers_of(feed(source, samples(4, 12))) == [12, 13, 14, 15]
