"""The first page: choose a passphrase, unlock, practise, or look round with an invented player. And the lock."""

from __future__ import annotations

from pathlib import Path
from typing import Any, Literal

from starlette.requests import Request
from starlette.responses import JSONResponse, RedirectResponse, Response
from starlette.routing import Route

from stickwright.catalogue import say
from stickwright.codes.frame import Frame
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.refusals import Refusals
from stickwright.codes.start_page import StartPage
from stickwright.errors import BadInput, Problem
from stickwright.store.opening import Store, create_store, kind_at, open_store
from stickwright.store.recordings import recover
from stickwright.web.passphrase import accepted, strength
from stickwright.web.render import done, form, page
from stickwright.web.request_context import RequestContext, desk_of, end_measuring, session_of

__all__ = [
    "ROUTES",
    "home",
    "lock",
    "practice_place",
    "practise",
    "start",
    "start_page",
    "strength_words",
    "undo",
    "unlock",
]

PRACTICE = "practice.db"
FIELDS: dict[Text, str] = {message(StartPage.confirm): "again", "": "passphrase"}


def home(request: Request) -> Response:
    """To the players, or to the start while the records are closed."""
    return RedirectResponse("/start" if desk_of(request).store is None else "/players", 303)


def start_page(desk: RequestContext, *, then: str = "", idle: bool = False) -> dict[str, Any]:
    """What the first page shows.

    Parameters
    ----------
    desk : RequestContext
    then : str
        Page to go on to.
    idle : bool
        The app locked itself.
    """
    kind = kind_at(desk.place) if isinstance(desk.place, Path) else "none"
    titles: dict[str, Literal["none", "encrypted", "other"]] = {"none": "none", "encrypted": "encrypted"}
    return {
        "kind": kind,
        "emptied": True,  # a passphrase is never sent back
        "title": message(StartPage.title, kind=titles.get(kind, "other")),
        "place": str(desk.place),
        "then": then if then.startswith("/") and not then.startswith("//") else "",
        "idle": idle,
        "wait_s": desk.tries.wait_s(desk.clock.now()),
    }


def start(request: Request) -> Response:
    """The first page."""
    desk, asked = desk_of(request), request.query_params
    if desk.store is not None:
        return RedirectResponse("/players", 303)
    return page(request, "start.html", start_page(desk, then=asked.get("then", ""), idle="idle" in asked))


def unlock(request: Request) -> Response:
    """Open the records with the passphrase, or make them with a new one."""
    desk, typed = desk_of(request), form(request)
    assert isinstance(desk.place, Path)
    passphrase, again, then = (str(typed.get(name, "")) for name in ("passphrase", "again", "then"))
    shown = start_page(desk, then=then)
    if desk.store is not None:
        return RedirectResponse(shown["then"] or "/players", 303)
    try:
        if shown["kind"] == "none":
            desk.place.parent.mkdir(parents=True, exist_ok=True)
            store = create_store(desk.place, passphrase=accepted(passphrase, again), clock=desk.clock)
            _open(request, store)
            return done(request, "/players", message(StartPage.created, strength=strength(passphrase).words))
        desk.tries.check(desk.clock.now())
        try:
            store = open_store(desk.place, passphrase=passphrase, clock=desk.clock)
        except BadInput:
            desk.tries.failed(desk.clock.now())
            raise
        desk.tries.succeeded()
    except BadInput as refused:
        return page(request, "start.html", shown | start_page(desk, then=then), refused=refused, fields=FIELDS)
    _open(request, store)
    session = session_of(request)
    if session.pending is not None:
        (path, sent), session.pending = session.pending, None
        return page(request, "pending.html", {"path": path, "sent": sent})
    return RedirectResponse(shown["then"] or "/players", 303)


def practise(request: Request) -> Response:
    """Open practice records: not encrypted, apart from the real ones."""
    desk = desk_of(request)
    assert isinstance(desk.place, Path)
    if desk.store is None:
        place = practice_place(desk.place)
        kind = kind_at(place)
        if kind == "none":
            place.parent.mkdir(parents=True, exist_ok=True)
            store = create_store(place, passphrase=None, clock=desk.clock)
        elif kind == "plain":
            store = open_store(place, clock=desk.clock)
        else:
            raise BadInput(Problem((), "", "", message(StartPage.other_kind, place=Name(str(place)))))
        _open(request, store)
    return RedirectResponse("/players", 303)


def practice_place(place: Path) -> Path:
    """Where practice records lie: beside the real ones.

    Parameters
    ----------
    place : Path
        The real records.
    """
    return place if place.name == PRACTICE else place.with_name(PRACTICE)


def _open(request: Request, store: Store) -> None:
    """The records lie open; what an earlier end cut short is put right, and said."""
    desk, session = desk_of(request), session_of(request)
    with desk.guard:
        desk.store = store
    desk.touch(session)
    for row in recover(store):
        session.say(message(StartPage.cut_short, recording=Name(row.name)))


def lock(request: Request) -> Response:
    """Close the records."""
    end_measuring(request)
    desk_of(request).lock()
    return RedirectResponse("/start", 303)


def strength_words(request: Request) -> Response:
    """What a passphrase is worth, while it is typed."""
    return JSONResponse({"words": say(strength(str(form(request).get("passphrase", ""))).words)})


def undo(request: Request) -> Response:
    """Take back a change that a message offered to take back."""
    session = session_of(request)
    found = session.undos.pop(str(form(request).get("key", "")), None)
    if found is None:
        raise BadInput(Problem((), "", "", message(Refusals.undo_too_late)))
    words, take_back, to = found
    take_back()
    undone = message(Frame.undone, what=words)
    if isinstance(words, Message) and words.code == undone.code:
        return done(request, to, words.param("what"), undo=take_back)
    return done(request, to, undone, undo=take_back)


ROUTES = (
    Route("/", home),
    Route("/start", start),
    Route("/start", unlock, methods=["POST"]),
    Route("/start/practise", practise, methods=["POST"]),
    Route("/start/strength", strength_words, methods=["POST"]),
    Route("/lock", lock, methods=["POST"]),
    Route("/undo", undo, methods=["POST"]),
)
