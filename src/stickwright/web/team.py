"""A team's records: logging in, accounts, and the trail of who did what.

Passwords are checked by the store, which refuses a name after some wrong ones for a while, in the same words whatever was wrong.
Nobody sees a password again; who forgot it is given a new one by a practitioner.
"""

from __future__ import annotations

from typing import Any, Literal

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from stickwright.codes.message import Name, Text, message
from stickwright.codes.start_page import StartPage
from stickwright.codes.team_page import TeamPage
from stickwright.errors import BadInput, Problem
from stickwright.store.accounts import Account, accounts, add_account, check_password, close_account
from stickwright.store.audit_log import trail as entries
from stickwright.store.opening import Store
from stickwright.store.settings import settings
from stickwright.web.guard import give_cookie
from stickwright.web.passphrase import accepted
from stickwright.web.preferences import Preferences, own_preferences
from stickwright.web.render import done, form, number_in, page, put_right
from stickwright.web.request_context import RequestContext, desk_of, session_of

__all__ = ["ROUTES", "add", "close", "log_in", "log_out", "login", "show_accounts", "trail", "trail_page"]

ROLES: tuple[Literal["practitioner", "reader"], ...] = ("practitioner", "reader")
FIELDS: dict[Text, str] = {
    message(TeamPage.token): "token",
    "name": "name",
    message(StartPage.confirm): "again",
    message(StartPage.passphrase): "password",
    "password": "password",
    message(TeamPage.role): "role",
    "role": "role",
}


def login(request: Request) -> Response:
    """The form; on a server without accounts it makes the first one."""
    desk = _team(request)
    return page(request, "login.html", {"first": not _open(desk.kept()), "name": ""})


def log_in(request: Request) -> Response:
    """Let somebody in by name and password."""
    desk, typed = _team(request), form(request)
    store = desk.kept()
    name, password, again = (str(typed.get(key, "")) for key in ("name", "password", "again"))
    first = not _open(store)
    try:
        if first:
            _refuse_first(desk, request)
            add_account(store, name, role="practitioner", password=accepted(password, again), who=name.strip())
        found = check_password(store, name, password)
    except BadInput as refused:
        return page(request, "login.html", {"first": first, "name": name}, refused=refused, fields=FIELDS)
    session = desk.admit(found.name, "practitioner" if found.role == "practitioner" else "reader")
    held = settings(store).get(own_preferences(found.name), {})
    session.preferences = Preferences().changed(**{key: str(value) for key, value in held.items()}) if held else None
    answer = RedirectResponse("/players", 303)
    give_cookie(answer, request, session)
    return answer


def _open(store: Store) -> tuple[Account, ...]:
    return tuple(row for row in accounts(store) if not row.closed)


def _refuse_first(desk: RequestContext, request: Request) -> None:
    """The first account is made by who started the app: with the token that was printed there, not by who comes first."""
    import secrets

    given = str(form(request).get("token", ""))
    if not secrets.compare_digest(given.encode(), desk.token.encode()):
        raise BadInput(put_right(message(TeamPage.token), message(TeamPage.wrong_token)))


def log_out(request: Request) -> Response:
    """Forget the session."""
    desk, session = _team(request), session_of(request)
    desk.sessions.pop(session.id, None)
    return RedirectResponse("/login", 303)


def show_accounts(request: Request) -> Response:
    """Who may come in."""
    desk = _team(request)
    return page(request, "accounts.html", _accounts_page(desk, request))


def _accounts_page(desk: RequestContext, request: Request, name: str = "") -> dict[str, Any]:
    session = session_of(request)
    return {
        "rows": _open(desk.kept()),
        "roles": tuple(
            (role, message(TeamPage.role_of, role=role), message(TeamPage.role_hint, role=role)) for role in ROLES
        ),
        "name": name,
        "own": session.who,
        "writes": session.role == "practitioner",
    }


def add(request: Request) -> Response:
    """A further account, or a new password for one."""
    desk, session, typed = _team(request), session_of(request), form(request)
    name, role, password, again = (str(typed.get(key, "")) for key in ("name", "role", "password", "again"))
    try:
        chosen = next((one for one in ROLES if one == role), None)
        if chosen is None:
            raise BadInput(put_right(message(TeamPage.role), message(TeamPage.choose_role)))
        made = add_account(desk.kept(), name, role=chosen, password=accepted(password, again), who=session.who)
    except BadInput as refused:
        return page(request, "accounts.html", _accounts_page(desk, request, name), refused=refused, fields=FIELDS)
    _end_sessions(desk, made.name, session.id)
    return done(request, "/accounts", message(TeamPage.added, name=Name(made.name), role=chosen))


def close(request: Request) -> Response:
    """Close an account; who is logged in with it is out at once."""
    desk, session = _team(request), session_of(request)
    name = str(form(request).get("name", ""))
    if name == session.who:
        raise BadInput(Problem((), "", "", message(TeamPage.own_account)))
    close_account(desk.kept(), name, who=session.who)
    _end_sessions(desk, name, "")
    return done(request, "/accounts", message(TeamPage.closed, name=Name(name)))


def _end_sessions(desk: RequestContext, name: str, but: str) -> None:
    for key in [key for key, session in desk.sessions.items() if session.who == name and key != but]:
        desk.sessions.pop(key, None)


def trail_page(store: Store, number: int = 1) -> dict[str, Any]:
    """Who did what, the last first.

    Parameters
    ----------
    store : Store
    number : int
        Page, from 1.
    """
    found = entries(store, page=number)
    return {
        "rows": [(message(TeamPage.at, at=row.at), row.who, row.what, row.code, row.detail) for row in found.rows],
        "later": f"/trail?page={found.number - 1}" if found.number > 1 else "",
        "earlier": f"/trail?page={found.number + 1}" if found.number < found.pages else "",
    }


def trail(request: Request) -> Response:
    """Who did what."""
    asked = request.query_params.get("page", "1")
    number = number_in(asked) or 1
    return page(request, "trail.html", trail_page(_team(request).kept(), max(1, number)))


def _team(request: Request) -> RequestContext:
    desk = desk_of(request)
    if not desk.team:
        raise HTTPException(404)
    return desk


ROUTES = (
    Route("/login", login),
    Route("/login", log_in, methods=["POST"]),
    Route("/logout", log_out, methods=["POST"]),
    Route("/accounts", show_accounts),
    Route("/accounts", add, methods=["POST"]),
    Route("/accounts/close", close, methods=["POST"]),
    Route("/trail", trail),
)
