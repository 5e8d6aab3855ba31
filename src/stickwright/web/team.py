"""A team's records: logging in, accounts, and the trail of who did what.

Passwords are checked with argon2 by the store; wrong ones slow down the next try of the same name, for everybody alike, so that
waiting says nothing about whether the name exists. Nobody sees a password again; who forgot it gets a new account row.
"""

from __future__ import annotations

from typing import Any

import sqlalchemy as sa
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from stickwright.errors import BadInput, Problem
from stickwright.store.accounts import accounts, add_account, check_password, close_account
from stickwright.store.opening import Store
from stickwright.store.schema import act, player
from stickwright.web.desk import Desk, desk_of, session_of
from stickwright.web.guard import give_cookie
from stickwright.web.passphrase import accepted
from stickwright.web.render import done, form, page
from stickwright.web.tries import Tries

__all__ = ["ROUTES", "add", "close", "log_in", "log_out", "login", "show_accounts", "trail", "trail_page"]

PER_PAGE = 100
MOST_NAMES = 1000
ROLES = (
    ("practitioner", "Practitioner", "Enters, measures, plans, erases."),
    ("reader", "Reader", "Looks at everything and changes nothing."),
)
FIELDS = {
    "word from the start": "token",
    "name": "name",
    "the same again": "again",
    "passphrase": "password",
    "password": "password",
    "role": "role",
}


def login(request: Request) -> Response:
    """The form; on a server without accounts it makes the first one.

    Parameters
    ----------
    request : Request
    """
    desk = _team(request)
    return page(request, "login.html", {"first": not accounts(desk.kept()), "name": ""})


def log_in(request: Request) -> Response:
    """Let somebody in by name and password.

    Parameters
    ----------
    request : Request
    """
    desk, typed = _team(request), form(request)
    store = desk.kept()
    name, password, again = (str(typed.get(key, "")) for key in ("name", "password", "again"))
    first = not accounts(store)
    tries = _tries_of(desk, name)
    try:
        if first:
            _refuse_first(desk, request)
            add_account(store, name.strip(), "practitioner", accepted(password, again), who=name.strip())
        tries.check(desk.clock.now())
        found = check_password(store, name.strip(), password)
        if found is None:
            tries.failed(desk.clock.now())
            remedy = "Type both again; who forgot the password asks a practitioner for a new account."
            raise BadInput(
                Problem("password", "a name and password that do not belong together", "the right two", remedy)
            )
    except BadInput as refused:
        return page(request, "login.html", {"first": first, "name": name}, refused=refused, fields=FIELDS)
    tries.succeeded()
    answer = RedirectResponse("/players", 303)
    give_cookie(answer, request, desk.admit(found.name, "reader" if found.role == "reader" else "practitioner"))
    return answer


def _refuse_first(desk: Desk, request: Request) -> None:
    """The first account is made by who started the app: with the token that was printed there, not by who comes first."""
    import secrets

    given = str(form(request).get("token", ""))
    if not secrets.compare_digest(given.encode(), desk.token.encode()):
        raise BadInput(
            Problem("word from the start", "another word", "the one that was printed where the app was started")
        )


def log_out(request: Request) -> Response:
    """Forget the session.

    Parameters
    ----------
    request : Request
    """
    desk, session = _team(request), session_of(request)
    desk.sessions.pop(session.id, None)
    return RedirectResponse("/login", 303)


def show_accounts(request: Request) -> Response:
    """Who may come in.

    Parameters
    ----------
    request : Request
    """
    desk = _team(request)
    return page(request, "accounts.html", _accounts_page(desk, request))


def _accounts_page(desk: Desk, request: Request, name: str = "") -> dict[str, Any]:
    session = session_of(request)
    return {
        "rows": accounts(desk.kept()),
        "roles": ROLES,
        "name": name,
        "own": session.who,
        "writes": session.role == "practitioner",
    }


def add(request: Request) -> Response:
    """A further account, or a new password for one.

    Parameters
    ----------
    request : Request
    """
    desk, session, typed = _team(request), session_of(request), form(request)
    name, role, password, again = (str(typed.get(key, "")) for key in ("name", "role", "password", "again"))
    try:
        if role not in ("practitioner", "reader"):
            raise BadInput(Problem("role", "nothing chosen", "practitioner or reader"))
        add_account(desk.kept(), name.strip(), role, accepted(password, again), who=session.who)
    except BadInput as refused:
        return page(request, "accounts.html", _accounts_page(desk, request, name), refused=refused, fields=FIELDS)
    _end_sessions(desk, name.strip(), session.id)
    return done(request, "/accounts", f"{name.strip()} may come in, as {role}.")


def close(request: Request) -> Response:
    """Close an account; who is logged in with it is out at once.

    Parameters
    ----------
    request : Request
    """
    desk, session = _team(request), session_of(request)
    name = str(form(request).get("name", ""))
    if name == session.who:
        remedy = "Another practitioner can close it."
        raise BadInput(Problem("name", "your own account", "somebody else's", remedy))
    close_account(desk.kept(), name, who=session.who)
    _end_sessions(desk, name, "")
    return done(request, "/accounts", f"The account of {name} is closed. What {name} did stays in the trail.")


def _end_sessions(desk: Desk, name: str, but: str) -> None:
    for key in [key for key, session in desk.sessions.items() if session.who == name and key != but]:
        desk.sessions.pop(key, None)


def trail_page(store: Store, before: int | None = None) -> dict[str, Any]:
    """Who did what, the last first.

    Parameters
    ----------
    store : Store
    before : int, optional
        Number of an entry: only earlier ones.
    """
    asked = sa.select(act.c.id, act.c.at, act.c.who, act.c.what, player.c.code, act.c.detail)
    asked = asked.join_from(act, player, act.c.player_id == player.c.id, isouter=True).order_by(act.c.id.desc())
    if before is not None:
        asked = asked.where(act.c.id < before)
    with store.read() as connection:
        rows = connection.execute(asked.limit(PER_PAGE + 1)).all()
    shown = rows[:PER_PAGE]
    return {
        "rows": [
            (f"{row.at[:10]} {row.at[11:19]} UTC", row.who, row.what, row.code or "", row.detail) for row in shown
        ],
        "earlier": f"/trail?before={shown[-1].id}" if len(rows) > PER_PAGE else "",
    }


def trail(request: Request) -> Response:
    """Who did what.

    Parameters
    ----------
    request : Request
    """
    before = request.query_params.get("before", "")
    number = int(before) if before.isascii() and before.isdigit() and len(before) < 19 else None
    return page(request, "trail.html", trail_page(desk_of(request).kept(), number))


def _team(request: Request) -> Desk:
    desk = desk_of(request)
    if not desk.team:
        raise HTTPException(404)
    return desk


def _tries_of(desk: Desk, name: str) -> Tries:
    """Counted by name, whether there is such an account or not; forgotten when far too many names were tried."""
    if len(desk.tries_of) > MOST_NAMES:
        desk.tries_of.clear()
    return desk.tries_of.setdefault(name.strip().casefold()[:80], Tries())


ROUTES = (
    Route("/login", login),
    Route("/login", log_in, methods=["POST"]),
    Route("/logout", log_out, methods=["POST"]),
    Route("/accounts", show_accounts),
    Route("/accounts", add, methods=["POST"]),
    Route("/accounts/close", close, methods=["POST"]),
    Route("/trail", trail),
)
