"""Measuring live: choose what is measured, run a guided task on a stick, see what it tells while the player is still there."""

from __future__ import annotations

import asyncio
import json
import secrets
import time
from collections import OrderedDict
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import partial
from typing import Any, Literal

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import BaseRoute, Route, WebSocketRoute
from starlette.websockets import WebSocket, WebSocketDisconnect, WebSocketState

from stickwright.catalogue import say
from stickwright.codes.measure_page import MeasurePage
from stickwright.codes.measuring import Measuring, SourceName
from stickwright.codes.message import Message, Name, Text, message
from stickwright.errors import BadInput, Problem
from stickwright.files.folder import read_case
from stickwright.measure.batches import MOST_BYTES
from stickwright.measure.browser import BrowserSource
from stickwright.measure.comparison import comparison
from stickwright.measure.progress import progress, warm_up
from stickwright.measure.steps import STOP, Task
from stickwright.measure.tasks import TASKS, guided_task
from stickwright.model.recording import Recording
from stickwright.store.cases import case_files
from stickwright.store.documents import documents
from stickwright.store.plans import plans
from stickwright.store.recordings import (
    RecordingRow,
    recordings,
    samples_of,
    set_aside,
    take_back,
)
from stickwright.store.summaries import summaries_of
from stickwright.web.live import Live, LiveAsked, RecordSink
from stickwright.web.plans import tunings_here
from stickwright.web.render import done, form, page, put_right
from stickwright.web.request_context import At, Locked, at_visit, desk_of, session_of
from stickwright.web.visit_files import conditions_here, names_here

__all__ = ["ROUTES", "live_page", "measure_page", "settings_of"]

TURN_S = 1 / 30
KNOWN_EACH_S = 1.5
MOST_OPEN = 8
LEFT_S = 3.0
"""A page that loads anew is back sooner."""
OVER = 4404
"""How a line is closed when its task is over: the page does not try again."""
LINE_LOST_S = 300.0
"""How long a task waits for a page that went away before it is closed."""
FIELDS: dict[Text, str] = {
    message(MeasurePage.site): "site",
    message(MeasurePage.source): "source",
    message(MeasurePage.state): "condition",
}
SOURCES: tuple[SourceName, ...] = ("browser", "computer", "practice", "replay")
LINES: tuple[Literal["broken", "back", "closed"], ...] = ("broken", "back", "closed")
SHORTER: dict[str, dict[str, object]] = {
    "push": {"directions": 4, "rounds": 2}, "rest": {"rests": 2}, "rim": {"laps": 1}, "aim": {"targets": 5},
    "follow": {"lasts_s": 30.0}, "hold": {"cap_s": 30.0}, "press": {"rounds": 1}, "play": {"lasts_s": 30.0},
}  # fmt: skip
"""What 'a short one' leaves out: for the last minutes of somebody's effort."""


@dataclass
class Open:
    """A task that is on, or waits for its page."""

    live: Live
    who: str
    place: tuple[str, int]
    seen_s: float
    sockets: int = 0


@dataclass
class RunningTasks:
    """All tasks that are on."""

    open: OrderedDict[str, Open] = field(default_factory=OrderedDict)

    def make_room(self, *, for_sticks: bool) -> None:
        """Close tasks that nobody looks at: too many, left too long, or holding the sticks of this computer.

        Parameters
        ----------
        for_sticks : bool
            The next one reads the sticks of this computer, which one task at a time can do.
        """
        now_s = time.monotonic()
        for key, other in tuple(self.open.items()):
            holds = for_sticks and other.live.asked.source != "browser"
            if not other.sockets and (holds or len(self.open) >= MOST_OPEN or now_s - other.seen_s > LINE_LOST_S):
                with other.live.lock:
                    other.live.close()
                del self.open[key]
        if len(self.open) >= MOST_OPEN:
            raise BadInput(Problem((), "", "", message(MeasurePage.too_many_tasks, most=MOST_OPEN)))

    def close_left(self, place: tuple[str, int]) -> None:
        """End the tasks of a visit whose page was left for good: somebody looks at another page of it.

        Parameters
        ----------
        place : (str, int)
            Store and visit.
        """
        for key, one in tuple(self.open.items()):
            if one.place == place and not one.sockets and time.monotonic() - one.seen_s > LEFT_S:
                with one.live.lock:
                    one.live.close()
                del self.open[key]

    def close_all(self, places: set[tuple[str, int]]) -> None:
        """End the tasks of visits that are about to go, looked at or not.

        Parameters
        ----------
        places : set of (str, int)
            Store and visit of each.
        """
        for key, one in tuple(self.open.items()):
            if one.place in places:
                with one.live.lock:
                    one.live.close()
                del self.open[key]

    def put(self, one: Open) -> str:
        """Keep a task under a key that cannot be guessed."""
        key = secrets.token_urlsafe(16)
        self.open[key] = one
        return key


def _table(app: Any) -> RunningTasks:
    if not hasattr(app.state, "measuring"):
        app.state.measuring = RunningTasks()
    table: RunningTasks = app.state.measuring
    return table


def measure_page(here: At, asked_site: str = "") -> dict[str, Any]:
    """What can be measured, and what has been.

    Parameters
    ----------
    here : At
    asked_site : str
        Name of the site.
    """
    sites = _site_names(here)
    site = asked_site if asked_site in sites else (sites[0] if sites else "")
    kit = _kit_names(here)
    rows = recordings(here.store, here.visit_id)
    told = summaries_of(here.store, rows)
    return {
        "title": message(MeasurePage.title),
        "sites": tuple((name, name) for name in sites),
        "site": site,
        "kit": {
            key: (("", say(message(Measuring.not_recorded))), *((name, name) for name in names))
            for key, names in kit.items()
        },
        "conditions": (
            ("", say(message(Measuring.usual_state))),
            *(
                (one, one)
                for one in dict.fromkeys(condition for name in sites for condition in conditions_here(here, name))
            ),
        ),
        "sources": tuple(
            (one, say(message(Measuring.source, source=one)), say(message(Measuring.source_hint, source=one)))
            for one in SOURCES
            if one != "replay" or _replayable(here)
        ),
        "source": "practice" if here.key == "d" else "browser",
        "tasks": tuple(_task_card(name) for name in TASKS),
        "pairs": _comparable(here),
        "done": tuple(_recording_line(here, row, told.get(row.id, "")) for row in rows),
        "stop_words": say(STOP),
        "has_plan": bool(plans(here.store, here.visit_id)),
        "writes": here.writes,
    }


def _task_card(name: str) -> dict[str, Any]:
    task, short = guided_task(name, seed=1), guided_task(name, seed=1, **SHORTER[name])
    return {
        "name": name,
        "title": say(task.title),
        "purpose": say(task.for_practitioner.purpose),
        "watch": say(task.for_practitioner.watch),
        "minutes": _minutes(task.expected_s),
        "short": _minutes(short.expected_s),
    }


def _minutes(seconds: float) -> str:
    return say(message(Measuring.lasts, time_s=seconds))


def _recording_line(here: At, row: RecordingRow, told: Text) -> dict[str, Any]:
    return {
        "row": row, "known": say(told), "seconds": message(Measuring.seconds, time_s=row.seconds),
        "on": say(message(Measuring.device, parts=tuple(Name(one) for one in (row.stick, row.topper, row.extension) if one))),
        "condition": row.condition,
        "aside": here.url(f"recordings/{row.id}/{'back' if row.aside else 'aside'}"),
    }  # fmt: skip


def _comparable(here: At) -> tuple[tuple[str, str], ...]:
    """Recordings that may be compared, when there are two of one task."""
    rows = [row for row in recordings(here.store, here.visit_id) if not row.aside and row.samples]
    tasks = [row.task for row in rows]
    return tuple((str(row.id), say(_named(row))) for row in rows if tasks.count(row.task) > 1)


def _named(row: RecordingRow) -> Message:
    stick = Name(row.stick) if row.stick else None
    return message(Measuring.recording_on, recording=Name(row.name), stick=stick)


def comparison_page(here: At, first: str, second: str) -> dict[str, Any]:
    """Two recordings of one task beside each other, judged fairly.

    Parameters
    ----------
    here : At
    first, second : str
        Numbers of the recordings.

    Raises
    ------
    BadInput
        Not two recordings of one task.
    """
    rows = {str(row.id): row for row in recordings(here.store, here.visit_id)}
    one, other = rows.get(first), rows.get(second)
    if one is None or other is None or one.id == other.id or one.task != other.task:
        raise BadInput(Problem((), "", "", message(MeasurePage.not_comparable)))
    known = []
    for row in (one, other):
        task = guided_task(**dict(row.task_asked))
        known.append((task, progress(task, samples_of(here.store, row.id))))
    order = ("before", "after") if one.id < other.id else ("after", "before")
    found = comparison(known[0][0], known[0][1], known[1][0], known[1][1], order=order)
    return {
        "title": say(message(Measuring.compare)),
        "first": one,
        "second": other,
        "sentence": say(found.sentence),
        "cautions": tuple(say(one) for one in found.cautions),
        "rows": tuple(
            tuple(say(cell) for cell in (each.label, each.before.words, each.after.words, each.words))
            for each in found.differences
        ),
        "back": here.url("measure"),
    }


def compare_recordings(request: Request) -> Response:
    """Before and after, on two sticks or with two settings."""
    here = at_visit(request)
    asked = request.query_params
    try:
        data = comparison_page(here, asked.get("a", ""), asked.get("b", ""))
    except BadInput as refused:
        return page(request, "measure.html", measure_page(here), here=here, refused=refused, fields=FIELDS)
    return page(request, "recordings.html", data, here=here)


def settings_of(sent: Mapping[str, str], seed: int) -> Task:
    """The task that a form asks for.

    Parameters
    ----------
    sent : mapping
        ``task``, and for some of them ``short``, ``directions``, ``mapping``, ``hand``, ``way``, ``level``.
    seed : int

    Raises
    ------
    BadInput
        No such task or setting.
    """
    name = sent.get("task", "")
    settings: dict[str, object] = dict(SHORTER.get(name, {})) if sent.get("short") else {}
    if name == "push" and sent.get("directions") in ("4", "8"):
        settings["directions"] = int(sent["directions"])
    if name == "push" and sent.get("levels") == "held":
        settings["levels"] = (0.3, 0.6, 1.0)
    if name == "aim" and sent.get("mapping") in ("position", "velocity"):
        settings["mapping"] = sent["mapping"]
    if name == "aim" and sent.get("by_switch"):
        settings["by_switch"] = True
    if name == "rest" and sent.get("hand") in ("off", "resting"):
        settings["hand"] = sent["hand"]
    if name == "hold" and (way := sent.get("way", "")):
        settings["direction_deg"] = float(way) if way in ("0", "90", "180", "270") else 90.0
    return guided_task(name, seed=seed, **settings)


def live_page(here: At, key: str, one: Open) -> dict[str, Any]:
    """What the page of a running task shows before its script has begun."""
    task = one.live.asked.task
    return {
        "title": say(task.title),
        "for_player": say(task.for_player),
        "watch": say(task.for_practitioner.watch),
        "asked": one.live.asked,
        "lines": {state: say(message(Measuring.line, state=state)) for state in LINES},
        "socket": here.url(f"live/{key}/socket"),
        "back": here.url("measure"),
        "by_page": one.live.asked.source == "browser",
        "expected": _minutes(task.expected_s),
        "stop_words": say(STOP),
        "tunable": one.live.asked.tuned is not None,
    }


def measure(request: Request) -> Response:
    """What can be measured."""
    here = at_visit(request)
    _table(request.app).close_left((here.key, here.visit_id))
    return page(request, "measure.html", measure_page(here, request.query_params.get("site", "")), here=here)


def begin(request: Request) -> Response:
    """Open a task; nothing is recorded before somebody starts it."""
    here, sent = at_visit(request), form(request)
    typed = {key: str(value) for key, value in sent.items()}
    try:
        asked = _asked(here, typed)
        if typed.get("tuned"):
            asked = _with_tuning(request, here, asked)
        _table(request.app).make_room(for_sticks=asked.source != "browser")
        sink = RecordSink(here.store, here.visit_id, asked, here.who)
        live = Live(asked, sink)
        key = _table(request.app).put(Open(live, here.who, (here.key, here.visit_id), time.monotonic()))
    except BadInput as refused:
        data = measure_page(here, typed.get("site", ""))
        return page(request, "measure.html", data, here=here, refused=refused, fields=FIELDS)
    return Response(status_code=303, headers={"location": here.url(f"live/{key}")})


def live(request: Request) -> Response:
    """The page of a running task: large, calm, with 'stop' always there."""
    here = at_visit(request)
    key = str(request.path_params["key"])
    one = _table(request.app).open.get(key)
    if one is None or one.place != (here.key, here.visit_id):
        return done(request, here.url("measure"), say(message(Measuring.task_over)))
    return page(request, "live.html", live_page(here, key, one), here=here)


def put_aside(request: Request) -> Response:
    """A recording left out of everything, or taken back; its samples stay."""
    here = at_visit(request)
    number = int(request.path_params["number"])
    row = next((one for one in recordings(here.store, here.visit_id) if one.id == number), None)
    if row is None:
        raise HTTPException(404)
    aside = request.url.path.endswith("/aside")
    turn, back = (set_aside, take_back) if aside else (take_back, set_aside)
    turn(here.store, number, who=here.who)
    words = say(message(Measuring.put_aside, recording=Name(row.name), aside=aside))
    return done(request, here.url("measure"), words, undo=partial(back, here.store, number, who=here.who))


async def socket(line: WebSocket) -> None:
    """The line between the page and its task."""
    try:
        here = await asyncio.to_thread(at_visit, line)
    except (Locked, HTTPException):  # the records were closed meanwhile, or the visit is gone
        await _turned_away(line)
        return
    one = _table(line.app).open.get(str(line.path_params["key"]))
    if one is None or one.place != (here.key, here.visit_id):
        await _turned_away(line)
        return
    await line.accept()
    one.sockets += 1
    warming = asyncio.create_task(asyncio.to_thread(warm_up))
    turns = asyncio.create_task(_turns(line, one))
    reading = asyncio.create_task(_read(line, one))
    try:
        ended, _ = await asyncio.wait((turns, reading), return_when=asyncio.FIRST_COMPLETED)
        gone = line.client_state is WebSocketState.DISCONNECTED
        for task in ended:
            fault = task.exception()
            if fault is not None and not gone and not isinstance(fault, WebSocketDisconnect):
                raise fault  # the line ends, and the page says so: one that stands still would look as if it measured
    finally:
        for task in (turns, reading, warming):
            task.cancel()
        one.sockets -= 1
        one.seen_s = time.monotonic()
        await asyncio.to_thread(_left, line.app, str(line.path_params["key"]), one)


async def _turned_away(line: WebSocket) -> None:
    """Tell the page that there is nothing to come back to; a line that was never taken up could not be told why."""
    await line.accept()
    await line.close(OVER)


async def _read(line: WebSocket, one: Open) -> None:
    while True:
        await _taken(line, one, await line.receive())


def _left(app: Any, key: str, one: Open) -> None:
    """A page that went away: a task that it fed itself pauses and waits for it; any other is stopped, since nobody sees it."""
    if one.sockets:  # another window looks on, or the same one came back quicker than this
        return
    with one.live.lock:
        if isinstance(one.live.source, BrowserSource):
            one.live.source.lost_page(time.perf_counter())
            one.live.turn(time.perf_counter())
        else:
            one.live.say({"do": "stop"}, time.perf_counter())
        if one.live.over:
            one.live.close()
            _table(app).open.pop(key, None)


async def _taken(line: WebSocket, one: Open, sent: Mapping[str, Any]) -> None:
    if sent["type"] == "websocket.disconnect":
        raise WebSocketDisconnect(sent.get("code", 1000))
    desk_of(line).touch(session_of(line))
    raw, text = sent.get("bytes"), sent.get("text")
    try:
        if raw is not None:
            if len(raw) > MOST_BYTES:
                raise BadInput(Problem((), "", "", message(MeasurePage.message_too_long)))
            arrived_s = time.perf_counter()  # before anything is waited for: the page's clock is tied to it
            await line.send_json(await asyncio.to_thread(_received, one, raw, arrived_s))
        elif text is not None and len(text) < 4096:
            command = json.loads(text)
            if isinstance(command, dict):
                await asyncio.to_thread(_said, one, command)
    except (BadInput, ValueError) as refused:
        await line.send_json({"kind": "said", "words": [str(refused)]})


def _received(one: Open, raw: bytes, arrived_s: float) -> dict[str, Any]:
    with one.live.lock:
        return one.live.receive(raw, arrived_s)


def _said(one: Open, command: Mapping[str, Any]) -> None:
    with one.live.lock:
        one.live.say(command, time.perf_counter())


async def _turns(line: WebSocket, one: Open) -> None:
    """Thirty times a second: take, keep, show. What is known is worked out beside, when something new was kept."""
    told, next_s, kept = "", 0.0, -1
    working: asyncio.Task[dict[str, Any]] | None = None
    while True:
        shown = await asyncio.to_thread(_turned, one)
        if one.live.closed:  # the records were locked, or the player erased: the page is told that it is over
            await line.close(OVER)
            return
        text = json.dumps(shown)
        if text != told:
            await line.send_text(text)
            told = text
        if shown["phase"] in ("asking", "resting"):  # nobody need touch the laptop while a player plays
            desk_of(line).touch(session_of(line))
        if working is not None and working.done():
            await line.send_json(working.result())
            working = None
        now_s = time.monotonic()
        if working is None and now_s >= next_s and shown["kept"] != kept:
            kept, next_s = shown["kept"], now_s + KNOWN_EACH_S
            working = asyncio.create_task(asyncio.to_thread(one.live.known))
        await asyncio.sleep(TURN_S)


def _turned(one: Open) -> dict[str, Any]:
    with one.live.lock:
        try:
            one.live.turn(time.perf_counter())
        except BadInput as refused:  # said on the page; the samples wait and are tried again
            return {**one.live.shown(), "words": [str(problem) for problem in refused.problems]}
        return one.live.shown()


def _asked(here: At, typed: Mapping[str, str]) -> LiveAsked:
    names = _site_names(here)
    site = typed.get("site", "")
    if site not in names:
        raise BadInput(put_right(message(MeasurePage.site), message(MeasurePage.unknown_site)))
    source = typed.get("source", "browser")
    if source not in SOURCES:
        raise BadInput(put_right(message(MeasurePage.source), message(MeasurePage.unknown_source)))
    task = settings_of(typed, secrets.randbelow(2**31))
    kit = _kit_names(here)
    on = {key: typed.get(key, "") if typed.get(key, "") in names_ else "" for key, names_ in kit.items()}
    replayed = _replay(here, site, task.name) if source == "replay" else None
    condition = typed.get("condition", "")
    if condition and condition not in conditions_here(here, site):
        raise BadInput(put_right(message(MeasurePage.state), message(MeasurePage.unknown_state, site=Name(site))))
    asked = LiveAsked(
        site=site,
        task=task,
        source=source,
        stick=on["stick"],
        topper=on["topper"],
        extension=on["extension"],
        replayed=replayed,
    )
    return replace(asked, condition=condition)


def _with_tuning(request: Request, here: At, asked: LiveAsked) -> LiveAsked:
    """The settings that the latest plan found for this site, ready to be switched on: those of this stick when it is said."""
    found = tunings_here(request, here, asked.site)
    mine = [one for one in found if one.stick == asked.stick] or ([] if asked.stick else list(found))
    if not mine:
        none = message(MeasurePage.no_tuning, site=Name(asked.site), stick=Name(asked.stick))
        raise BadInput(Problem((), "", "", none))
    if mine[0].faults:
        raise BadInput(Problem((), "", "", message(MeasurePage.bad_tuning, fault=mine[0].faults[0].text)))
    return replace(asked, tuned=mine[0])


def _replayable(here: At) -> bool:
    return here.key == "d" or any(name.startswith("recordings/") for name in documents(here.store, here.visit_id))


def _replay(here: At, site: str, task: str) -> Recording:
    """The visit's own recording of a task, to be played back."""
    case = read_case(case_files(here.store, here.visit_id))
    found = [one for one in case.recordings if one.task == task or (task == "play" and one.cue is None)]
    mine = [one for one in found if one.site == site] or found
    if not mine:
        have = tuple(Name(one) for one in sorted({one.task for one in case.recordings}))
        title = guided_task(task, seed=1).title
        raise BadInput(Problem((), "", "", message(MeasurePage.nothing_to_replay, task=title, have=have)))
    return mine[0]


def _site_names(here: At) -> tuple[str, ...]:
    return names_here(here, "player.toml", "site")


def _kit_names(here: At) -> dict[str, tuple[str, ...]]:
    return {key: names_here(here, "kit.toml", key) for key in ("stick", "topper", "extension")}


ROUTES: tuple[BaseRoute, ...] = (
    Route("/visits/{id}/measure", measure),
    Route("/visits/{id}/measure", begin, methods=["POST"]),
    Route("/visits/{id}/recordings", compare_recordings),
    Route("/visits/{id}/live/{key}", live),
    WebSocketRoute("/visits/{id}/live/{key}/socket", socket),
    Route("/visits/{id}/recordings/{number:int}/aside", put_aside, methods=["POST"]),
    Route("/visits/{id}/recordings/{number:int}/back", put_aside, methods=["POST"]),
)
