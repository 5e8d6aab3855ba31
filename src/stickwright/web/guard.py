"""The door: who may ask, from where, how much at once, and what a browser may do with the answer.

One after the other, so that nothing is read of a request that is not meant for us:

1. Host must be ours, with our port: a foreign name that points here (DNS rebinding) is refused [owasp-csrf].
2. What changes something must come from our own page: Origin equal to Host, Sec-Fetch-Site same-origin or none [fetch-metadata].
3. The cookie of this start, SameSite=Strict and HttpOnly, given once for the token in the address printed at the start.
4. A body is read whole, in memory, up to a bound, and only then parsed; forms carry a token of their own [owasp-csrf].
5. Readers change nothing.

Static files need no cookie: they are the program's, the same for everybody.
"""

from __future__ import annotations

import secrets
from collections.abc import AsyncGenerator
from typing import NamedTuple
from urllib.parse import parse_qsl, urlencode, urlsplit

from starlette.datastructures import FormData, Headers, MutableHeaders
from starlette.formparsers import FormParser, MultiPartException, MultiPartParser
from starlette.requests import HTTPConnection, Request
from starlette.responses import PlainTextResponse, RedirectResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from stickwright.catalogue import say
from stickwright.codes.message import Text, message
from stickwright.codes.refusals import Refusals
from stickwright.web.request_context import RequestContext, Session

__all__ = ["BODY_BYTES", "FIELDS", "UPLOAD_BYTES", "Guard", "policy"]

BODY_BYTES = 2 * 2**20
UPLOAD_BYTES = 256 * 2**20
FIELDS = 2000
SAFE = frozenset({"GET", "HEAD"})


def policy(*, frames: bool = False, framed: bool = False) -> str:
    """What a browser may do with a page: nothing that is not ours, nothing inline.

    Parameters
    ----------
    frames : bool
        The page shows another of our documents in a frame (the sheet).
    framed : bool
        The answer is such a document.
    """
    parts = {
        "default-src": "'none'",
        "script-src": "'self'",
        "style-src": "'self'",
        "img-src": "'self' data:",
        "connect-src": "'self'",
        "form-action": "'self'",
        "frame-ancestors": "'self'" if framed else "'none'",
        "base-uri": "'none'",
    }
    if frames:
        parts |= {"frame-src": "'self'", "object-src": "'self'"}
    return "; ".join(f"{name} {value}" for name, value in parts.items())


HEADERS = {
    "content-security-policy": policy(),
    "x-content-type-options": "nosniff",
    "referrer-policy": "same-origin",  # with no-referrer a browser would send "Origin: null" with our own forms
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "camera=(), microphone=(), geolocation=(), gamepad=(self)",
    "cache-control": "no-store",
}


class Refusal(NamedTuple):
    """Why a request was turned away."""

    status: int
    words: Text


class _InMemory(MultiPartParser):
    """Uploads stay in memory: a case must not lie unencrypted in a folder for temporary files."""

    spool_max_size = UPLOAD_BYTES


class Guard:
    """Lets in what is meant for us."""

    def __init__(self, app: ASGIApp, desk: RequestContext) -> None:
        self.app = app
        self.desk = desk

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] == "lifespan":
            await self.app(scope, receive, send)
            return
        connection = HTTPConnection(scope)
        refusal = foreign(connection, self.desk)
        if refusal is None and scope["type"] == "http" and (entered := self._enter(connection)) is not None:
            await entered(scope, receive, _with_headers(send))
            return
        if refusal is None and not _is_open(connection.url.path):
            refusal = self._session(connection)
            if refusal is not None and self.desk.team and scope["type"] == "http":
                await RedirectResponse("/login", 303)(scope, receive, _with_headers(send))
                return
        if refusal is None and scope["type"] == "websocket" and connection.state.session.role == "reader":
            refusal = READER
        if refusal is None and scope["type"] == "http" and scope["method"] not in SAFE:
            refusal = await self._form(Request(scope, receive))
            receive = _already_read
        if refusal is not None:
            await _turn_away(refusal, scope, receive, send)
            return
        try:
            await self.app(scope, receive, _with_headers(send) if scope["type"] == "http" else send)
        finally:
            if scope["type"] == "http" and scope["method"] not in SAFE:
                await scope["state"]["form"].close()  # uploads lie in memory until then

    def _enter(self, connection: HTTPConnection) -> Response | None:
        """The address printed at the start carries the token: it is swapped for the cookie and leaves the address."""
        token = connection.query_params.get("start")
        if token is None or self.desk.team or not secrets.compare_digest(token.encode(), self.desk.token.encode()):
            return None
        rest = [(name, value) for name, value in parse_qsl(connection.url.query) if name != "start"]
        session = self.desk.admit(self.desk.preferences.who, "practitioner")
        answer = RedirectResponse(connection.url.path + ("?" + urlencode(rest) if rest else ""), 303)
        give_cookie(answer, connection, session)
        return answer

    def _session(self, connection: HTTPConnection) -> Refusal | None:
        session = self.desk.sessions.get(connection.cookies.get(cookie_name(connection), ""))
        if session is None or self.desk.expired(session):
            return STRANGER
        connection.scope.setdefault("state", {})["session"] = session
        self.desk.lock_if_idle()
        self.desk.touch(session)
        return None

    async def _form(self, request: Request) -> Refusal | None:
        """Read what was sent, bounded; check its token; leave the form where `render.form` finds it."""
        kind = request.headers.get("content-type", "").partition(";")[0].strip().lower()
        limit = UPLOAD_BYTES if kind == "multipart/form-data" else BODY_BYTES
        body = await _body(request, limit)
        if body is None:
            return Refusal(413, message(Refusals.too_large, most_mb=limit // 2**20))
        form = FormData()
        if kind in ("multipart/form-data", "application/x-www-form-urlencoded"):
            try:
                form = await _parsed(kind, request.headers, body)
            except (MultiPartException, ValueError, KeyError):
                return Refusal(400, message(Refusals.damaged))
        state = request.scope.setdefault("state", {})
        state["form"], state["body"] = form, body
        session = state.get("session")
        given = form.get("csrf") or request.headers.get("x-csrf", "")
        wanted = session.csrf if isinstance(session, Session) else self.desk.login_csrf
        if not isinstance(given, str) or not secrets.compare_digest(given.encode(), wanted.encode()):
            return Refusal(403, message(Refusals.earlier_start))
        if isinstance(session, Session) and session.role == "reader" and request.url.path not in ("/logout", "/look"):
            return READER
        return None


STRANGER = Refusal(403, message(Refusals.stranger))
READER = Refusal(403, message(Refusals.reader))


def foreign(connection: HTTPConnection, desk: RequestContext) -> Refusal | None:
    """Whether a request comes from outside our own pages, or was meant for somebody else.

    Parameters
    ----------
    connection : HTTPConnection
    desk : RequestContext
        Whose names are ours.
    """
    host = connection.headers.get("host", "")
    name, _, port = host.rpartition(":") if host.rpartition(":")[2].isdigit() else (host, "", "")
    server = connection.scope.get("server") or ("", None)
    ours = name.lower() in desk.hosts and (desk.team or not port or port == str(server[1]))
    if not ours or connection.headers.getlist("host") != [host]:
        return Refusal(400, message(Refusals.other_address))
    origin = connection.headers.get("origin")
    changes = connection.scope["type"] == "websocket" or connection.scope["method"] not in SAFE
    if origin is not None and urlsplit(origin).netloc != host:
        return Refusal(403, message(Refusals.other_page))
    if changes and origin is None:
        return Refusal(403, message(Refusals.no_origin))
    if changes and connection.headers.get("sec-fetch-site", "same-origin") not in ("same-origin", "none"):
        return Refusal(403, message(Refusals.other_page))
    return None


def cookie_name(connection: HTTPConnection) -> str:
    """Cookies do not tell ports apart: two starts side by side need two names."""
    server = connection.scope.get("server") or ("", 0)
    return f"stickwright-{server[1]}"


def give_cookie(answer: Response, connection: HTTPConnection, session: Session) -> None:
    """Let a browser be known again."""
    secure = connection.url.scheme == "https" or connection.headers.get("x-forwarded-proto") == "https"
    answer.set_cookie(cookie_name(connection), session.id, httponly=True, samesite="strict", secure=secure, path="/")


def _is_open(path: str) -> bool:
    return path.startswith("/static/") or path == "/login"


async def _body(request: Request, limit: int) -> bytes | None:
    declared = request.headers.get("content-length", "0")
    if not declared.isdigit() or int(declared) > limit:
        return None
    held = bytearray()
    async for part in request.stream():
        held += part
        if len(held) > limit:
            return None
    return bytes(held)


async def _parsed(kind: str, headers: Headers, body: bytes) -> FormData:
    async def stream() -> AsyncGenerator[bytes, None]:
        yield body

    if kind == "multipart/form-data":
        parser = _InMemory(headers, stream(), max_files=FIELDS, max_fields=FIELDS, max_part_size=UPLOAD_BYTES)
        return await parser.parse()
    if body.count(b"&") > FIELDS:
        raise ValueError("too many fields")
    return await FormParser(headers, stream()).parse()


async def _already_read() -> Message:
    return {"type": "http.disconnect"}


def _with_headers(send: Send) -> Send:
    async def wrapped(message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            for name, value in HEADERS.items():
                headers.setdefault(name, value)
        await send(message)

    return wrapped


async def _turn_away(refusal: Refusal, scope: Scope, receive: Receive, send: Send) -> None:
    if scope["type"] == "websocket":
        await send({"type": "websocket.close", "code": 1008, "reason": say(refusal.words)[:120]})
        return
    await PlainTextResponse(say(refusal.words) + "\n", refusal.status)(scope, receive, _with_headers(send))
