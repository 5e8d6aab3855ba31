"""Settings: how the app looks, who sits here, the gauge's unit, when it locks, the passphrase, where the file lies."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from stickwright.errors import BadInput, Problem
from stickwright.store.opening import change_passphrase, open_store
from stickwright.web.desk import Desk, Session, desk_of, session_of
from stickwright.web.passphrase import accepted
from stickwright.web.preferences import FORCE_UNITS, IDLE_MINUTES, LIGHTS, SIZES
from stickwright.web.render import done, form, page

__all__ = ["ROUTES", "change", "prefer", "settings", "settings_page"]

FIELDS = {
    "passphrase now": "old", "the same again": "again", "passphrase": "new", "who sits here": "who", "light and dark": "light",
    "unit of the gauge": "force", "minutes until it locks": "idle_minutes", "size": "size",
}  # fmt: skip
PREFERENCES = ("light", "size", "who", "force", "idle_minutes")


def settings_page(desk: Desk, session: Session) -> dict[str, Any]:
    """What the settings show.

    Parameters
    ----------
    desk : Desk
    session : Session
    """
    store = desk.store
    kinds = {
        "encrypted": "one file on this machine, encrypted",
        "plain": "one file on this machine, not encrypted: practice",
        "postgresql": "the team's server",
        "memory": "memory only",
    }
    return {
        "set": desk.preferences_of(session),
        "lights": LIGHTS,
        "sizes": SIZES,
        "force_units": FORCE_UNITS,
        "idle_choices": tuple((str(minutes), f"{minutes} minutes") for minutes in IDLE_MINUTES),
        "place": store.place if store else str(desk.place),
        "kind": kinds[store.kind] if store else "closed",
        "can_change": store is not None and store.kind == "encrypted",
    }


def settings(request: Request) -> Response:
    """The settings.

    Parameters
    ----------
    request : Request
    """
    return page(request, "settings.html", settings_page(desk_of(request), session_of(request)))


def prefer(request: Request) -> Response:
    """Set how the app looks and behaves.

    Parameters
    ----------
    request : Request
    """
    desk, session, typed = desk_of(request), session_of(request), form(request)
    before = desk.preferences_of(session)
    try:
        after = before.changed(**{name: str(typed[name]) for name in PREFERENCES if name in typed})
    except BadInput as refused:
        return page(request, "settings.html", settings_page(desk, session), refused=refused, fields=FIELDS)
    desk.prefer(after, session)
    state = [before, after]

    def back() -> None:
        desk.prefer(state[0], session)
        state.reverse()

    return done(request, "/settings", "The settings are changed.", undo=back)


def change(request: Request) -> Response:
    """Change the passphrase: the old one once, the new one twice.

    Parameters
    ----------
    request : Request
    """
    desk, typed = desk_of(request), form(request)
    store = desk.kept()
    old, new, again = (str(typed.get(name, "")) for name in ("old", "new", "again"))
    try:
        if store.kind != "encrypted" or not isinstance(desk.place, Path):
            raise BadInput(Problem("passphrase", "records without a passphrase", "encrypted records"))
        desk.tries.check(desk.clock.now())
        try:
            open_store(desk.place, passphrase=old, clock=desk.clock).close()
        except BadInput:
            desk.tries.failed(desk.clock.now())
            raise BadInput(Problem("passphrase now", "another passphrase", "the one that opened the records")) from None
        desk.tries.succeeded()
        change_passphrase(store, new=accepted(new, again))
    except BadInput as refused:
        return page(request, "settings.html", settings_page(desk, session_of(request)), refused=refused, fields=FIELDS)
    return done(request, "/settings", "The passphrase is changed. Earlier backups still open with the earlier one.")


ROUTES = (
    Route("/settings", settings),
    Route("/settings", prefer, methods=["POST"]),
    Route("/settings/passphrase", change, methods=["POST"]),
)
