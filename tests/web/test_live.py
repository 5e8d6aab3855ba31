"""A guided task between a source of samples and the records, step by step, without a clock or a network."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from sample_plan import tuning

from stickwright.catalogue import say
from stickwright.codes.devices import Devices
from stickwright.codes.message import message
from stickwright.codes.task_states import TaskStates
from stickwright.errors import BadInput
from stickwright.measure.devices import Appeared, Device, DeviceSamples, Event, Gone, axes_of, buttons_of
from stickwright.measure.tasks import guided_task
from stickwright.model.recorded import Finding
from stickwright.store.cases import import_case
from stickwright.store.opening import Store, memory_store
from stickwright.store.recordings import recordings, samples_of
from stickwright.web import measure
from stickwright.web.demo import demo_case
from stickwright.web.live import Live, LiveAsked, RecordSink

PAD = Device("pad", "pad", axes_of(4, standard=True), buttons_of(17, standard=True), "computer")
SWITCH = Device("switch", "foot switch", (), buttons_of(2, standard=False), "computer")


class Given:
    """A source that gives what the test puts in."""

    def __init__(self, *devices: Device) -> None:
        self.here = list(devices)
        self.events: list[Event] = [Appeared(one, 0.0) for one in devices]
        self.closed = False

    def devices(self) -> tuple[Device, ...]:
        return tuple(self.here)

    def take(self) -> tuple[Event, ...]:
        events, self.events = self.events, []
        return tuple(events)

    def close(self) -> None:
        self.closed = True

    def move(self, times_s: np.ndarray, x: float, y: float, *, device: Device = PAD, buttons: int = 0) -> None:
        """Samples with the left stick there; devices give y growing downwards."""
        axes = np.zeros((len(times_s), len(device.axes)))
        if len(device.axes) > 1:
            axes[:, 0], axes[:, 1] = x, -y
        self.events.append(DeviceSamples(device.id, 0, times_s, axes, np.full(len(times_s), buttons, dtype=np.int64)))


@pytest.fixture
def store() -> Iterator[Store]:
    made = memory_store()
    import_case(made, demo_case(), who="test")
    yield made
    made.close()


def live(store: Store, source: Given, name: str = "play", **settings: object) -> Live:
    asked = LiveAsked("right index", guided_task(name, seed=1, **settings), "computer", stick="light stick 5 mm")
    return Live(asked, RecordSink(store, 1, asked, "test"), source)


def wiggle(running: Live, source: Given) -> None:
    for place, (x, y) in enumerate(((0.9, 0.0), (-0.9, 0.0), (0.0, 0.9), (0.0, -0.9))):
        source.move(np.array([0.01 * place]), x, y)
    running.turn(0.1)


def test_the_stick_that_is_wiggled_is_measured(store: Store) -> None:
    """Nothing can start before it is known which stick is meant."""
    source = Given(PAD)
    running = live(store, source)
    running.turn(0.0)
    assert running.shown()["may"] == []
    wiggle(running, source)
    shown = running.shown()
    assert (shown["chosen"]["device"], shown["may"]) == ("pad", ["start"])
    source.move(np.array([0.2]), 0.25, 0.5)
    running.turn(0.2)
    assert running.shown()["raw"] == [0.25, 0.5]  # forward is up, before the start too


def test_what_was_acknowledged_is_kept_as_it_was_given(store: Store) -> None:
    """Every sample after the start, none before, y turned forward once, and the task noted as done when its page is left."""
    source = Given(PAD)
    running = live(store, source, lasts_s=1.0)
    wiggle(running, source)
    running.say({"do": "start"}, 10.0)
    times_s = 10.0 + np.arange(1, 151) / 100.0
    source.move(times_s[:60], 0.25, 0.5)
    running.turn(10.6)
    shown = running.shown()
    assert (shown["kept"], shown["kept_words"], shown["where"]) == (60, "60 samples saved", "Step 1 of 1")
    source.move(times_s[60:], -0.125, 0.75)
    running.turn(11.5)
    assert running.shown()["phase"] == "done"
    running.close()
    (row,) = [one for one in recordings(store, 1) if one.task == "play"]
    kept = samples_of(store, row.id)
    assert (row.state, row.stick, row.site, source.closed) == ("done", "light stick 5 mm", "right index", True)
    assert kept[:60, 1].tolist() == [0.25] * 60
    assert kept[:60, 2].tolist() == [0.5] * 60
    assert np.array_equal(kept[:60, 0], times_s[:60] - 10.0)
    assert np.isclose(kept[-1, 0], 1.0, atol=0.011)


def test_stop_goes_on_in_the_same_recording(store: Store) -> None:
    """Stopped at once, resumed when the player is ready: one recording, nothing lost."""
    source = Given(PAD)
    running = live(store, source, lasts_s=30.0)
    wiggle(running, source)
    running.say({"do": "start"}, 0.0)
    source.move(np.array([0.1, 0.2]), 0.1, 0.1)
    running.turn(0.2)
    running.say({"do": "stop"}, 0.3)
    assert running.over == "stopped"
    assert "resume" in running.shown()["may"]
    running.say({"do": "resume"}, 5.0)
    source.move(np.array([12.0, 12.1]), 0.2, 0.2)
    running.turn(12.1)
    running.close()
    (row,) = [one for one in recordings(store, 1) if one.task == "play"]
    assert samples_of(store, row.id)[:, 0].tolist() == [0.1, 0.2, 12.0, 12.1]


def test_what_cannot_be_done_now_is_not_offered_and_is_said(store: Store) -> None:
    """While a task runs it can be stopped, shortened, repeated and confirmed, not started or resumed; a key that asks for it all the
    same is answered. Once it is stopped, stopping again is not offered."""
    source = Given(PAD)
    running = live(store, source, lasts_s=30.0)
    wiggle(running, source)
    running.say({"do": "start"}, 0.0)
    assert running.shown()["may"] == ["stop", "shorten", "repeat", "confirm"]
    running.say({"do": "resume"}, 0.1)
    assert running.shown()["words"] == [say(message(TaskStates.why, why="running"))]
    running.say({"do": "stop"}, 0.2)
    assert running.shown()["may"] == ["resume", "repeat"]
    running.close()


def test_unplugging_pauses_and_plugging_in_goes_on(store: Store) -> None:
    """The task waits; the step begins anew after a rest."""
    source = Given(PAD)
    running = live(store, source, lasts_s=30.0)
    wiggle(running, source)
    running.say({"do": "start"}, 0.0)
    source.move(np.array([0.1]), 0.1, 0.1)
    source.events.append(Gone("pad", 0.2))
    running.turn(0.2)
    shown = running.shown()
    assert shown["phase"] == "paused"
    assert any("unplugged" in words for words in shown["words"])
    source.events.append(Appeared(PAD, 3.0, again=True))
    running.turn(3.0)
    assert running.shown()["phase"] in ("resting", "asking")
    running.close()


def test_a_switch_pressed_before_the_start_is_the_confirm_switch(store: Store) -> None:
    """Nobody looks up the number of a button: it is pressed once, and said by its name."""
    source = Given(PAD, SWITCH)
    running = live(store, source)
    wiggle(running, source)
    source.move(np.array([0.2]), 0, 0, device=SWITCH, buttons=2)
    running.turn(0.2)
    shown = running.shown()
    assert "Confirm switch: button 2 of foot switch." in shown["words"]
    assert shown["hint"] == say(message(Devices.found, switch=True))
    running.close()


def test_a_second_stick_is_recorded_beside(store: Store) -> None:
    """Two sticks at once, in one recording, on one clock."""
    source = Given(PAD)
    running = live(store, source, lasts_s=30.0)
    wiggle(running, source)
    running.say({"do": "choose", "device": "pad", "horizontal": 2, "vertical": 3, "second": True}, 0.0)
    shown = running.shown()
    assert shown["second"] == {"device": "pad", "horizontal": 2, "vertical": 3}
    right = shown["devices"][0]["sticks"][1]
    assert (right["name"], right["beside"]) == ("pad: right stick", "pad: right stick, recorded as second stick")
    running.say({"do": "start"}, 0.0)
    axes = np.tile([0.1, -0.2, 0.3, -0.4], (5, 1))
    source.events.append(DeviceSamples("pad", 0, np.arange(1, 6) / 10.0, axes, np.zeros(5, dtype=np.int64)))
    running.turn(0.6)
    running.close()
    (row,) = [one for one in recordings(store, 1) if one.task == "play"]
    kept = dict(zip(row.columns, samples_of(store, row.id)[0], strict=True))
    assert [kept[name] for name in ("x", "y", "second_x", "second_y")] == [0.1, 0.2, 0.3, 0.4]


def test_a_command_that_is_none_is_passed_over(store: Store) -> None:
    """Whatever a page sends: nothing breaks, nothing starts."""
    source = Given(PAD)
    running = live(store, source)
    wiggle(running, source)
    for command in ({}, {"do": 3}, {"do": "erase"}, {"do": "choose", "device": "pad", "horizontal": 99, "vertical": "x"},
                    {"do": "choose", "device": "nobody"}, {"do": "stop"}, {"do": "repeat", "steps": ["x", 99]}):  # fmt: skip
        running.say(command, 1.0)
        running.turn(1.0)
    assert running.shown()["phase"] == "waiting"
    running.close()
    assert [one for one in recordings(store, 1) if one.task == "play"] == []


def test_what_was_ended_from_elsewhere_stays_ended(store: Store) -> None:
    """Locked or erased in another window: nothing that is pressed on the old page writes anything more."""
    source = Given(PAD)
    running = live(store, source, lasts_s=30.0)
    wiggle(running, source)
    running.say({"do": "start"}, 0.0)
    source.move(np.array([0.1, 0.2]), 0.1, 0.1)
    running.turn(0.2)
    running.close()
    running.say({"do": "start"}, 1.0)
    source.move(np.array([1.1]), 0.3, 0.3)
    running.turn(1.2)
    (row,) = [one for one in recordings(store, 1) if one.task == "play"]
    assert (running.closed, row.state, row.samples) == (True, "stopped", 2)


def test_leaving_before_the_start_keeps_nothing(store: Store) -> None:
    """Looking at a stick is no recording."""
    source = Given(PAD)
    running = live(store, source)
    wiggle(running, source)
    before = len(recordings(store, 1))
    running.close()
    assert len(recordings(store, 1)) == before


def test_settings_with_a_fault_are_not_switched_on(monkeypatch: pytest.MonkeyPatch) -> None:
    """The latest plan's settings carry a fault: refused with what it is; without the fault the same settings are taken."""
    good = tuning()
    bad = replace(good, findings=(Finding("fault", "wide dead zone", "The dead zone would take 60 % of the range."),))
    asked = LiveAsked(good.site, guided_task("rest", seed=1), stick=good.stick)
    nothing: Any = None
    monkeypatch.setattr(measure, "tunings_here", lambda *_: (bad,))
    with pytest.raises(BadInput, match="The dead zone would take 60 % of the range"):
        measure._with_tuning(nothing, nothing, asked)
    monkeypatch.setattr(measure, "tunings_here", lambda *_: (good,))
    assert measure._with_tuning(nothing, nothing, asked).tuned is good
