"""One guided task on one stick, from the page or from this computer, into the records: what comes in, what goes out.

Nothing here knows the network: `measure` hands on what a socket brings and sends what comes back. The raw samples go to the
records before anybody is told that they are kept.
"""

from __future__ import annotations

import math
import threading
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any, Literal

import numpy as np
from numpy.typing import NDArray

from stickwright.catalogue import say
from stickwright.codes.devices import Devices
from stickwright.codes.live_figures import LiveFigures
from stickwright.codes.measuring import Measuring, SourceName
from stickwright.codes.message import Message, Text, message
from stickwright.codes.steps import Steps
from stickwright.measure.browser import BrowserSource
from stickwright.measure.detect_stick import wiggled
from stickwright.measure.devices import AXES, Device, DeviceSamples, Event, Gone, Source, StickAxes, stick_xy, sticks_of
from stickwright.measure.events import Confirm, Effect, Ignored, KeepEvent, MarkEvent, Repeat, Resume, Shorten, Stop
from stickwright.measure.events import Event as TaskEvent
from stickwright.measure.events import Start as StartEvent
from stickwright.measure.lines import Line, Progress
from stickwright.measure.live_tuning import LiveTuning
from stickwright.measure.merging import ConfirmSwitch
from stickwright.measure.pictures import picture, picture_of
from stickwright.measure.progress import progress
from stickwright.measure.recorder import Recorder, Took
from stickwright.measure.replay import Replay, replayed_cues
from stickwright.measure.sdl import SdlSource
from stickwright.measure.shapes import Picture, Ring, plain_picture
from stickwright.measure.steps import RECORDED_COLUMNS, Task
from stickwright.measure.task import TABLE
from stickwright.measure.tasks import play_task
from stickwright.measure.virtual import VirtualStick
from stickwright.measure.virtual import VirtualStickState as StickState
from stickwright.model.recording import Recording
from stickwright.model.response import Tuning
from stickwright.store.opening import Store
from stickwright.store.recordings import CONDITION, append_samples, begin_recording, finish_recording, note_recording
from stickwright.store.summaries import summarise
from stickwright.web.practice import practice_feed

__all__ = ["SAID", "Live", "LiveAsked", "RecordSink", "known_words"]

Array = NDArray[np.float64]
Said = Stop | Resume | Shorten | Repeat | Confirm
WIGGLED_EVENTS = 400
"""Batches looked at for a wiggle: some seconds."""
SAID: dict[str, type[Said]] = {"stop": Stop, "resume": Resume, "shorten": Shorten, "repeat": Repeat, "confirm": Confirm}
MAY: tuple[tuple[str, type[TaskEvent]], ...] = (("start", StartEvent), *SAID.items())
_AT_REST = StickState((0.0, 0.0, 0.0, 0.0))


@dataclass(frozen=True)
class LiveAsked:
    """What is to be measured.

    Parameters
    ----------
    site : str
    task : Task
    source : {"browser", "computer", "practice", "replay"}
        Where the stick is read; the last two move a made-up stick: an invented player, and a recording played back.
    stick, topper, extension : str
        What the player's part is on; '' when not said.
    replayed : Recording or None
        For the last source.
    tuned : Tuning or None
        Settings that may be switched on.
    condition : str
        State of the site; '' for the usual one.
    """

    site: str
    task: Task
    source: SourceName = "browser"
    stick: str = ""
    topper: str = ""
    extension: str = ""
    replayed: Recording | None = None
    tuned: Tuning | None = None
    condition: str = ""


def _with_condition(asked: LiveAsked) -> dict[str, Any]:
    return {**asked.task.asked, **({CONDITION: asked.condition} if asked.condition else {})}


@dataclass
class RecordSink:
    """Where the samples of one task go: a recording of the visit, begun with its first sample.

    Parameters
    ----------
    store : Store
    visit_id : int
    asked : LiveAsked
    who : str
    device : str
        As it names itself.
    """

    store: Store
    visit_id: int
    asked: LiveAsked
    who: str
    device: str = ""
    recording_id: int | None = field(default=None, init=False)
    name: str = field(default="", init=False)
    kept: list[Array] = field(default_factory=list, init=False)

    def append(self, rows: Array, first: int) -> int:
        """Keep rows; returns how many are held, once they are committed.

        Parameters
        ----------
        rows : array, shape (n, 11)
        first : int
        """
        if self.recording_id is None:
            row = begin_recording(
                self.store, self.visit_id, site=self.asked.site, task=self.asked.task.name,
                columns=list(RECORDED_COLUMNS), source=self.asked.source, device=self.device, stick=self.asked.stick,
                topper=self.asked.topper, extension=self.asked.extension, asked=_with_condition(self.asked), who=self.who,
            )  # fmt: skip
            self.recording_id, self.name = row.id, row.name
        rows = self._with_cues(rows)
        held: int = append_samples(self.store, self.recording_id, rows, first=first)
        self.kept.append(rows[: held - first] if held >= first else rows[:0])
        return held

    def note(self, what: str, detail: str = "") -> None:
        """Something that happened to the recording: 'paused', 'resumed', 'gap'."""
        if self.recording_id is not None:
            note_recording(self.store, self.recording_id, what, who=self.who, detail=detail)

    def finish(self, what: str) -> None:
        """The recording is over: 'done' or 'stopped'."""
        if self.recording_id is not None:
            row = finish_recording(self.store, self.recording_id, what, who=self.who)
            if row.samples:
                summarise(self.store, row)

    def _with_cues(self, rows: Array) -> Array:
        """A replay carries what was asked when it was recorded."""
        if self.asked.replayed is None:
            return rows
        out = rows.copy()
        out[:, 3:7] = replayed_cues(self.asked.replayed, rows[:, 0])
        return out


class Live:
    """One guided task while it runs.

    Parameters
    ----------
    asked : LiveAsked
    sink : RecordSink
    source : Source, optional
        Where samples come from; made from `asked` when not given.
    """

    def __init__(self, asked: LiveAsked, sink: RecordSink, source: Source | None = None) -> None:
        self.asked = asked
        self.sink = sink
        self._stick = VirtualStick(lambda _now_s: _AT_REST) if asked.source in ("practice", "replay") else None
        self.source: Source = source or _source(asked.source, self._stick)
        self._recorder: Recorder | None = None
        self._chosen: StickAxes | None = None
        self._second: StickAxes | None = None
        self._switch: ConfirmSwitch | None = None
        self._waiting: list[Event] = []
        self._words: list[Text] = []
        self._raw = (math.nan, math.nan)
        self._tuned: tuple[float, float] | None = None
        self._over = ""
        self._on = False
        self.lock = threading.Lock()
        self.closed = False
        self.reduced_motion = False

    @property
    def over(self) -> str:
        """'done' or 'stopped' once it is; '' while it runs or waits."""
        phase = self._recorder.state.phase if self._recorder is not None else "ready"
        return phase if phase in ("done", "stopped") else ""

    def receive(self, message: bytes, arrived_s: float) -> dict[str, Any]:
        """A batch of the page's samples; says which messages the page may forget.

        Parameters
        ----------
        message : bytes
        arrived_s : float
            Seconds on the computer's monotonic clock.

        Raises
        ------
        BadInput
            No message of ours, or of an older window.
        """
        if not isinstance(self.source, BrowserSource):
            return {"kind": "ack", "next": 0}
        reply = self.source.receive(message, arrived_s)
        return {"kind": "ack", "next": reply.acknowledged}

    def say(self, command: Mapping[str, Any], now_s: float) -> None:
        """What somebody pressed: start, stop, resume, shorten, repeat, confirm, choose, tuned, motion.

        Parameters
        ----------
        command : mapping
            ``{"do": "start"}``; anything that is no command is passed over.
        now_s : float
            Seconds on the computer's monotonic clock.
        """
        if self.closed:
            return
        do = command.get("do")
        if do == "choose":
            self._choose(command)
        elif do == "tuned" and self.asked.tuned is not None:
            self._on = bool(command.get("on"))
            if self._recorder is not None and self._recorder.live is not None:
                self._recorder.live.on = self._on
        elif do == "motion":
            self.reduced_motion = bool(command.get("reduced"))
        elif do == "start":
            self._start(now_s)
        elif do in SAID and self._recorder is not None:
            steps = command.get("steps")
            wanted = [one for one in steps if isinstance(one, int)] if isinstance(steps, list) else []
            took = self._recorder.say(SAID[do], now_s, wanted)
            self._told(took)
            self._words += [effect.why for effect in took.effects if isinstance(effect, Ignored)]

    def turn(self, now_s: float) -> None:
        """Take what the sticks gave since the last turn, and let time go on.

        Parameters
        ----------
        now_s : float
            Seconds on the computer's monotonic clock.
        """
        if self.closed:
            return
        events = self.source.take()
        if self._recorder is None:
            self._waiting = [*self._waiting, *events][-WIGGLED_EVENTS:]
            self._find_stick()
            self._look_at(events)
            return
        if events:
            self._told(self._recorder.take(events))
        self._told(self._recorder.tick(now_s))
        self._end_replay()

    def shown(self) -> dict[str, Any]:
        """What the page shows now."""
        words, self._words = [say(one) for one in self._words], []
        devices = self.source.devices()
        if self._recorder is None:
            return {
                "kind": "show", "phase": "waiting", "words": words, "hint": say(self._hint(devices)),
                "devices": [_device(one) for one in devices], "chosen": _chosen(self._chosen), "second": _chosen(self._second),
                "raw": _pair(self._raw),
                "picture": plain_picture(Picture((), self.asked.task.for_player), say), "may": ["start"] if self._chosen else [],
                "where": "", "kept": 0, "kept_words": say(message(Measuring.kept, samples=0, waiting=0)),
            }  # fmt: skip
        state, kept = self._recorder.state, self._recorder.acknowledged
        return {
            "kind": "show", "phase": state.phase, "words": words, "hint": "",
            "devices": [_device(one) for one in devices], "chosen": _chosen(self._chosen), "second": _chosen(self._second),
            "raw": _pair(self._raw),
            "tuned": _pair(self._tuned) if self._tuned is not None and self._on else None,
            "picture": plain_picture(self._picture(), say),
            "where": say(message(Measuring.step, number=state.step + 1, steps=len(state.task.steps))),
            "left_s": round(state.left_s, 1) if math.isfinite(state.left_s) else None,
            "may": [name for name, event in MAY if TABLE[state.phase, event].kind == "acts"],
            "kept": kept, "kept_words": say(message(Measuring.kept, samples=kept, waiting=self._recorder.waiting)),
            "lag": say(self._recorder.live.lag_text) if self._recorder.live is not None and self._on else "",
        }  # fmt: skip

    def known(self) -> dict[str, Any]:
        """What is known so far, in words; takes some tens of milliseconds."""
        with self.lock:
            rows = np.concatenate(self.sink.kept) if self.sink.kept else np.empty((0, len(RECORDED_COLUMNS)))
            ahead = self._recorder.state.queue if self._recorder is not None and self.asked.replayed is None else ()
        return known_words(progress(self.asked.task, rows, ahead=ahead))

    def close(self) -> None:
        """End: all that was recorded is kept, and how it ended is noted.

        Until then a stopped task may go on in the same recording, and samples from before a stop still come in.
        """
        self.closed = True
        if self._recorder is not None:
            self._told(self._recorder.finish())
            self.sink.finish(self._over or "stopped")
            self._recorder = None
        self.source.close()

    def _start(self, now_s: float) -> None:
        if self._recorder is None:
            if self._chosen is None:
                return
            name = next((one.name for one in self.source.devices() if one.id == self._chosen.device_id), "")
            self.sink.device = name
            live = LiveTuning(self.asked.tuned, on=self._on) if self.asked.tuned is not None else None
            task = self.asked.task if self.asked.replayed is None else play_task(lasts_s=self._replay_s() + 1.0)
            self._recorder = Recorder(task, self.sink, self._chosen, self._second, self._switch, live)
        if self._stick is not None and self.asked.replayed is not None and self._recorder.state.phase == "ready":
            self._stick.feed = Replay(self.asked.replayed, again=False)
        self._told(self._recorder.start(now_s))

    def _replay_s(self) -> float:
        times = self.asked.replayed.times_s if self.asked.replayed is not None else np.zeros(1)
        return float(times[-1] - times[0])

    def _end_replay(self) -> None:
        """A replay ends with its recording."""
        assert self._recorder is not None
        state = self._recorder.state
        if self.asked.replayed is not None and state.phase == "asking" and state.now_s >= self._replay_s():
            self._told(self._recorder.say(Confirm, state.now_s))
            if self._recorder.state.phase == "asking":
                self._told(self._recorder.say(Stop, state.now_s))

    def _told(self, took: Took) -> None:
        """Look at what came of it: where the stick is, what is to be said, what is to be noted."""
        if len(took.rows):
            self._raw = (float(took.rows[-1, 1]), float(took.rows[-1, 2]))
        if took.tuned_xy is not None and len(took.tuned_xy):
            self._tuned = (float(took.tuned_xy[-1, 0]), float(took.tuned_xy[-1, 1]))
        self._words += took.words
        for effect in took.effects:
            self._note(effect)

    def _note(self, effect: Effect) -> None:
        if isinstance(effect, KeepEvent) or not isinstance(effect, MarkEvent):
            return
        if effect.what in ("done", "stopped"):
            self._over = effect.what
        elif effect.what != "began":
            self.sink.note(effect.what, say(effect.detail))
            if effect.what in ("resumed", "repeated"):
                self._over = ""

    def _find_stick(self) -> None:
        """The only stick there is, or the one that is wiggled."""
        devices = self.source.devices()
        if self._chosen is not None and self._chosen.device_id not in {one.id for one in devices}:
            self._chosen = None
        if self._chosen is not None:
            return
        found = [stick for one in devices for stick in sticks_of(one)]
        if self._stick is not None and found:
            self._chosen = found[0]
            self._switch = ConfirmSwitch(found[0].device_id, 0)
            if self.asked.source == "practice":
                self._stick.feed = practice_feed(lambda: self._recorder.state if self._recorder is not None else None)
            return
        moved = wiggled(self._waiting, devices)
        if moved.stick is not None:
            self._chosen = moved.stick
            self._words += [finding.text for finding in moved.findings]

    def _choose(self, command: Mapping[str, Any]) -> None:
        """A stick, a second one beside it, or a button as confirm switch, by name."""
        if self._recorder is not None:
            return
        known = {one.id: one for one in self.source.devices()}
        device = known.get(str(command.get("device", "")))
        if device is None:
            return
        button = command.get("button")
        if isinstance(button, int) and 0 <= button < len(device.buttons):
            self._switch = ConfirmSwitch(device.id, button)
            return
        axes = [command.get(name) for name in ("horizontal", "vertical")]
        if not all(isinstance(one, int) and 0 <= one < len(device.axes) for one in axes):
            return
        stick = StickAxes(device.id, *axes)
        if command.get("second"):
            self._second = stick
        else:
            self._chosen = stick

    def _look_at(self, events: Sequence[Event]) -> None:
        for event in events:
            if isinstance(event, DeviceSamples):
                self._find_switch(event)
            if isinstance(event, Gone):
                self._words.append(message(Devices.unplugged, which="before"))
            elif (
                isinstance(event, DeviceSamples)
                and self._chosen is not None
                and event.device_id == self._chosen.device_id
            ):
                x, y = stick_xy(event, self._chosen)[-1]
                self._raw = (float(x), float(y))

    def _find_switch(self, samples: DeviceSamples) -> None:
        """The button that is pressed before the start, on whatever device, is the confirm switch."""
        pressed = int(np.bitwise_or.reduce(samples.buttons)) if len(samples.buttons) else 0
        device = next((one for one in self.source.devices() if one.id == samples.device_id), None)
        if not pressed or device is None:
            return
        switch = ConfirmSwitch(device.id, (pressed & -pressed).bit_length() - 1)
        if switch != self._switch and switch.button < len(device.buttons):
            self._switch = switch
            button = device.buttons[switch.button]
            self._words.append(message(Devices.confirm_switch, button=button, device=device.called))

    def _hint(self, devices: Sequence[Device]) -> Message:
        if self._chosen is not None:
            return message(Devices.found, switch=self._switch is not None)
        if devices:
            return message(Devices.move_round)
        return message(Devices.wake) if self.asked.source == "browser" else message(Devices.plug_in)

    def _picture(self) -> Picture:
        assert self._recorder is not None
        state = self._recorder.state
        if self.asked.replayed is None:
            return picture_of(state, reduced_motion=self.reduced_motion)
        drawn = picture(self.asked.task, 0, "ready", 0.0, player_xy=state.cursor_xy, reduced_motion=self.reduced_motion)
        if state.phase not in ("asking", "resting"):
            return replace(drawn, words=message(Steps.over, phase="done") if state.phase == "done" else drawn.words)
        x, y, width = replayed_cues(self.asked.replayed, np.array([state.now_s]))[0, :3]
        ring = (
            (Ring(float(x), float(y), float(width) / 2 if math.isfinite(width) else 0.12),) if math.isfinite(x) else ()
        )
        return Picture((*drawn.shapes, *ring), message(Steps.played_back))


def known_words(known: Progress) -> dict[str, Any]:
    """What is known so far, as the page says it."""
    return {
        "kind": "known", "verdict": known.verdict, "sentence": say(known.sentence),
        "lines": [{"label": say(line.label), "words": say(line.words), "known": _known(line)} for line in known.lines],
        "more": [{"words": say(message(Measuring.ask_for, more=one.text)), "steps": list(one.steps)} for one in known.more],
        "doubts": [{"level": one.level, "about": one.about, "text": say(one.text)} for one in known.doubts],
    }  # fmt: skip


def _known(line: Line) -> str:
    if not line.decides:
        return say(message(LiveFigures.known, line="information"))
    return say(message(LiveFigures.known, line="enough" if line.enough else "more"))


def _source(name: SourceName, stick: VirtualStick | None) -> Source:
    if name == "browser":
        return BrowserSource()
    return SdlSource((stick,) if stick is not None else ())


def _device(device: Device) -> dict[str, Any]:
    return {
        "id": device.id, "name": say(device.called),
        "sticks": [
            {"horizontal": one.horizontal, "vertical": one.vertical, **_stick_names(device, one)}
            for one in sticks_of(device)
        ],
    }  # fmt: skip


def _stick_names(device: Device, stick: StickAxes) -> dict[str, str]:
    """What stands on the buttons that choose it: as the stick that is measured, and as a second one."""
    side: Literal["left", "right"] = "left" if device.axes[stick.horizontal or 0] == AXES[0] else "right"
    which = message(Devices.stick, side=side)
    return {
        name: say(message(Measuring.stick_button, device=device.called, stick=which, beside=beside))
        for name, beside in (("name", False), ("beside", True))
    }


def _chosen(stick: StickAxes | None) -> dict[str, Any] | None:
    return (
        None
        if stick is None
        else {"device": stick.device_id, "horizontal": stick.horizontal, "vertical": stick.vertical}
    )


def _pair(xy: tuple[float, float] | None) -> list[float] | None:
    return None if xy is None or not all(map(math.isfinite, xy)) else [round(one, 4) for one in xy]
