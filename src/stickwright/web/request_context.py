"""What lies open: the records, what is worked on without being kept, the demo, and who uses it.

Three stores may be open side by side. The kept records are behind a passphrase; players without a consent to keep are worked
with in memory; the demo is in memory too, with a kit of its own. A visit or player is named in an address with the letter of
its store in front (`Key`), so that the pages need not ask where somebody is.
"""

from __future__ import annotations

import secrets
import threading
from collections import OrderedDict
from collections.abc import Callable
from dataclasses import asdict, dataclass, field, replace
from datetime import date, datetime, timedelta
from pathlib import Path
from typing import Literal
from urllib.parse import quote

import sqlalchemy as sa
from starlette.exceptions import HTTPException, WebSocketException
from starlette.requests import HTTPConnection, Request

from stickwright.catalogue import say
from stickwright.codes.frame import MenuEntry
from stickwright.codes.message import Text, message
from stickwright.codes.refusals import Refusals
from stickwright.errors import BadInput, Problem
from stickwright.store.consents import may_keep
from stickwright.store.documents import documents, remove_document, save_document
from stickwright.store.opening import SYSTEM_CLOCK, Clock, Store, memory_store
from stickwright.store.players import PlayerRow, VisitRow, player_named, visit
from stickwright.store.schema import player
from stickwright.store.settings import choose
from stickwright.web.preferences import Preferences, keep_preferences, own_preferences
from stickwright.web.tries import Tries

__all__ = [
    "At",
    "Locked",
    "NotHere",
    "RequestContext",
    "Session",
    "at_player",
    "at_shelf",
    "at_visit",
    "desk_of",
    "end_measuring",
    "session_of",
]

Key = Literal["", "m", "d"]
"""Where a player is: among the records, among what is not kept, in the demo."""
Entries = tuple[tuple[str, MenuEntry], ...]
MESSAGES = 5
UNDOS = 40


class Locked(Exception):
    """The records are closed: the passphrase is wanted first."""

    def __init__(self) -> None:
        super().__init__("closed")


class NotHere(HTTPException):
    """Nothing at this address; `words` say what of several things it is that there is not."""

    def __init__(self, words: Text) -> None:
        super().__init__(404)
        self.words = words


@dataclass
class Session:
    """One browser that was let in.

    `csrf` must come back with every form. `messages` are said once; what can be undone is kept by key.
    """

    id: str
    csrf: str
    who: str
    role: Literal["practitioner", "reader"]
    seen: datetime
    messages: list[tuple[Text, str]] = field(default_factory=list)
    undos: OrderedDict[str, tuple[Text, Callable[[], object], str]] = field(default_factory=OrderedDict)
    preferences: Preferences | None = None
    pending: tuple[str, list[tuple[str, str]]] | None = None

    def say(self, words: Text, undo: Callable[[], object] | None = None, to: str = "/") -> None:
        """Keep a message for the next page, with what takes the change back.

        Parameters
        ----------
        words : Message or str
            What happened, one sentence.
        undo : callable, optional
            Takes it back, and called again brings it again.
        to : str
            Page to show after it was taken back.
        """
        key = ""
        if undo is not None:
            key = secrets.token_urlsafe(12)
            self.undos[key] = (words, undo, to)
            while len(self.undos) > UNDOS:
                self.undos.popitem(last=False)
        self.messages = [*self.messages, (words, key)][-MESSAGES:]


@dataclass
class RequestContext:
    """Everything that the pages share.

    `store` is None until unlocked. `place` is the file, or the address of the team's server.
    """

    place: Path | str
    clock: Clock = SYSTEM_CLOCK
    store: Store | None = None
    preferences: Preferences = field(default_factory=Preferences)
    preferences_file: Path | None = None
    team: bool = False
    hosts: tuple[str, ...] = ("127.0.0.1", "localhost")
    token: str = field(default_factory=lambda: secrets.token_urlsafe(24))
    memory: Store | None = None
    demo: Store | None = None
    sessions: dict[str, Session] = field(default_factory=dict)
    tries: Tries = field(default_factory=Tries)
    login_csrf: str = field(default_factory=lambda: secrets.token_urlsafe(24))
    seen: datetime | None = None
    guard: threading.RLock = field(default_factory=threading.RLock)

    @property
    def idle(self) -> timedelta:
        """How long nobody may touch the app before it locks."""
        return timedelta(minutes=self.preferences.idle_minutes)

    @property
    def locks_itself(self) -> bool:
        """Whether there is something open that a passphrase closes."""
        return not self.team and self.store is not None and self.store.kind == "encrypted"

    def preferences_of(self, session: Session | None) -> Preferences:
        """What is set: on this machine, or, in a team, by who is logged in."""
        return session.preferences if session is not None and session.preferences is not None else self.preferences

    def prefer(self, preferences: Preferences, session: Session) -> None:
        """Set the preferences, and keep them for the next start of this machine."""
        if self.team:
            session.preferences = preferences
            choose(self.kept(), own_preferences(session.who), asdict(preferences), who=session.who)
            return
        self.preferences = preferences
        session.who = preferences.who
        if self.preferences_file is not None:
            keep_preferences(self.preferences_file, preferences)

    def menu(self, here: At | None) -> tuple[tuple[str, MenuEntry], ...]:
        """Addresses and entries of the main menu.

        Parameters
        ----------
        here : At or None
            The demo has a menu of its own.
        """
        if self.store is None or (here is not None and here.key == "d"):
            demo: Entries = (("/demo", "demo"), ("/kit?in=d", "demo_kit")) if self.demo is not None else ()
            return (*demo, ("/players" if self.store else "/start", "own_players" if self.demo else "start"))
        team: Entries = (("/trail", "trail"), ("/accounts", "accounts")) if self.team else (("/backup", "backup"),)
        return (("/players", "players"), ("/kit", "kit"), *team, ("/settings", "settings"))

    def expired(self, session: Session) -> bool:
        """Whether a team's session has been left alone for too long; it then is forgotten."""
        if not self.team or self.clock.now() - session.seen < self.idle:
            return False
        self.sessions.pop(session.id, None)
        return True

    def kept(self) -> Store:
        """The records; Locked while they are closed."""
        if self.store is None:
            raise Locked
        return self.store

    def unkept(self) -> Store:
        """Where players are whose results are not kept; made when first needed, with the same shelf."""
        kept = self.kept()
        with self.guard:
            if self.memory is None:
                self.memory = memory_store(self.clock)
            carry_shelf(kept, self.memory)
            return self.memory

    def at(self, key: Key) -> Store:
        """The store with this letter.

        Parameters
        ----------
        key : str
            Where the player is.
        """
        if key == "":
            return self.kept()
        if key == "m":
            return self.unkept()
        if self.demo is None:
            raise HTTPException(404)
        return self.demo

    def today(self) -> date:
        """The date here."""
        return self.clock.now().astimezone().date()

    def touch(self, session: Session) -> None:
        """Somebody is working: nothing locks itself now."""
        self.seen = session.seen = self.clock.now()

    def lock(self) -> None:
        """Close the records. What is not kept stays in memory, out of sight until unlocked."""
        with self.guard:
            store, self.store = self.store, None
        if store is not None:
            store.close()

    def lock_if_idle(self) -> bool:
        """Lock when nobody has worked for the time set; says whether it did."""
        if not self.locks_itself or self.seen is None or self.clock.now() - self.seen < self.idle:
            return False
        self.lock()
        return True

    def admit(self, who: str, role: Literal["practitioner", "reader"]) -> Session:
        """Let a browser in.

        Parameters
        ----------
        who : str
            Written beside every change.
        role : {"practitioner", "reader"}
            A reader changes nothing.
        """
        session = Session(secrets.token_urlsafe(24), secrets.token_urlsafe(24), who, role, self.clock.now())
        self.sessions[session.id] = session
        return session

    def forget_pages(self) -> None:
        """Let no page that is open anywhere change anything: somebody was erased, and the next one may get the same numbers."""
        for session in self.sessions.values():
            session.csrf = secrets.token_urlsafe(24)
            session.undos.clear()
            session.pending = None

    def close(self) -> None:
        """Close all stores; what was saved is saved."""
        self.lock()
        for other in (self.memory, self.demo):
            if other is not None:
                other.close()
        self.memory = self.demo = None


@dataclass(frozen=True)
class At:
    """Where a page is: the store, the player, and the visit if it is one's.

    `key` is the letter of the store in addresses, `writes` whether this person may change anything.
    """

    desk: RequestContext
    key: Key
    store: Store
    who: str
    writes: bool
    player: PlayerRow | None = None
    visit: VisitRow | None = None

    def url(self, step: str = "") -> str:
        """Address of a page of this visit; '' is the visit's own page.

        Parameters
        ----------
        step : str
            What follows the visit in the address: ``readings``, ``sheet.pdf``.
        """
        assert self.visit is not None
        return self.visit_url(self.visit.id) + (f"/{step}" if step else "")

    def visit_url(self, visit_id: int) -> str:
        """Address of a visit in the same store."""
        return f"/visits/{self.key}{visit_id}"

    def player_url(self, step: str = "") -> str:
        """Address of a page of this player.

        Parameters
        ----------
        step : str
            What follows the player in the address: ``consent``.
        """
        assert self.player is not None
        code = f"{self.key}~{self.player.code}" if self.key else self.player.code
        return f"/players/{quote(code, safe='~')}" + (f"/{step}" if step else "")

    @property
    def kit_url(self) -> str:
        """Address of the shelf that this visit draws on."""
        return "/kit?in=d" if self.key == "d" else "/kit"

    @property
    def kept(self) -> bool:
        """Whether what is entered here is there tomorrow."""
        return self.key == ""

    @property
    def player_id(self) -> int:
        """Number of the player in this store."""
        assert self.player is not None
        return self.player.id

    @property
    def visit_id(self) -> int:
        """Number of the visit in this store."""
        assert self.visit is not None
        return self.visit.id


def end_measuring(connection: HTTPConnection, places: set[tuple[str, int]] | None = None) -> None:
    """End what is being measured: what was recorded is kept, and the page is told.

    Parameters
    ----------
    connection : HTTPConnection
    places : set of (str, int), optional
        Store and visit of each; everything when not said.
    """
    table = getattr(connection.app.state, "measuring", None)  # there once the pages that measure are loaded
    if table is not None:
        table.close_all(places if places is not None else {one.place for one in table.open.values()})


def desk_of(connection: HTTPConnection) -> RequestContext:
    """The desk behind a request or socket."""
    desk = connection.app.state.desk
    assert isinstance(desk, RequestContext)
    return desk


def session_of(connection: HTTPConnection) -> Session:
    """The browser behind a request or socket; the guard has let it in."""
    session = connection.state.session
    assert isinstance(session, Session)
    return session


def at_visit(connection: HTTPConnection) -> At:
    """Where a page of a visit is: by ``{id}`` of its address; 404 when there is no such visit.

    Parameters
    ----------
    connection : HTTPConnection
        Request or WebSocket.

    Raises
    ------
    BadInput
        The request would add something, and there is no consent to keep it; a WebSocket is closed instead.
    """
    text = str(connection.path_params["id"])
    key = _key(text)
    digits = text[len(key) :]
    if not (digits.isascii() and digits.isdigit() and len(digits) < 19):
        raise HTTPException(404)
    desk, session = desk_of(connection), session_of(connection)
    store = desk.at(key)
    try:
        row = visit(store, int(digits))
    except BadInput:
        raise HTTPException(404) from None
    here = At(desk=desk, key=key, store=store, who=session.who, writes=False, player=_player_of(store, row), visit=row)
    here = replace(here, writes=session.role == "practitioner" and may_add(here))
    if connection.scope["type"] == "websocket" and not here.writes:
        raise WebSocketException(1008, say(message(Refusals.no_consent_live)))
    if connection.scope["type"] == "http" and connection.scope["method"] not in ("GET", "HEAD"):
        refuse_without_consent(here)
    return here


def at_player(connection: HTTPConnection, *, adds: bool = False) -> At:
    """Where a page of a player is: by ``{code}`` of its address; 404 when there is no such player.

    Parameters
    ----------
    connection : HTTPConnection
    adds : bool
        Something is to be added; refused without a consent to keep it.

    Raises
    ------
    BadInput
        No consent, when something is to be added.
    """
    text = str(connection.path_params["code"])
    letter, tilde, code = text.partition("~")
    key: Key = _key(letter) if tilde else ""
    if tilde and (letter != key or not key):
        raise HTTPException(404)
    desk, session = desk_of(connection), session_of(connection)
    store = desk.at(key)
    try:
        row = player_named(store, code if tilde else text)
    except BadInput as unknown:
        raise NotHere(str(unknown)) from None
    here = At(desk, key, store, session.who, session.role == "practitioner", row)
    if adds:
        refuse_without_consent(replace(here, writes=here.writes and may_add(here)))
    return here


def may_add(here: At) -> bool:
    """Whether there is a consent to keep what is added; nothing is asked of what is not kept."""
    return here.key != "" or may_keep(here.store, here.player_id, here.desk.today())


def refuse_without_consent(here: At) -> None:
    """Raise the sentence that says why nothing may be added here."""
    if not here.writes:
        assert here.player is not None
        raise BadInput(Problem(here.player.code, "", "", message(Refusals.no_consent)))


def at_shelf(request: Request) -> At:
    """Where a page of the shelf is: the records' own, or with ``?in=d`` the demo's."""
    desk, session = desk_of(request), session_of(request)
    key: Key = "d" if request.query_params.get("in") == "d" else ""
    return At(desk, key, desk.at(key), session.who, session.role == "practitioner")


def carry_shelf(source: Store, target: Store) -> None:
    """Make the shelf of `target` that of `source`."""
    there, here = documents(source, None), documents(target, None)
    for name, document in there.items():
        if name not in here or here[name].digest != document.digest:
            save_document(target, None, name, document.body, who=document.who, why="shelf")
    for name in here.keys() - there.keys():
        remove_document(target, None, name, who="stickwright", why="shelf-deleted")


def _key(text: str) -> Key:
    return "m" if text[:1] == "m" else "d" if text[:1] == "d" else ""


def _player_of(store: Store, row: VisitRow) -> PlayerRow:
    with store.read() as connection:
        code = connection.execute(sa.select(player.c.code).where(player.c.id == row.player_id)).scalar_one()
    return player_named(store, code)
