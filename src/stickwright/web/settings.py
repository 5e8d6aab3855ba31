"""Settings: how the app looks, initials, the gauge's unit, when it locks, the passphrase, where the file lies."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from stickwright.codes.message import Text, message
from stickwright.codes.passphrases import Passphrases
from stickwright.codes.settings_page import SettingsPage
from stickwright.codes.start_page import StartPage
from stickwright.errors import BadInput
from stickwright.store.opening import change_passphrase, open_store
from stickwright.web.passphrase import accepted
from stickwright.web.preferences import FORCE_UNITS, IDLE_MINUTES, LABELS, LIGHTS, SIZES
from stickwright.web.render import done, form, page, put_right
from stickwright.web.request_context import RequestContext, Session, desk_of, session_of

__all__ = ["ROUTES", "change", "prefer", "settings", "settings_page"]

FIELDS: dict[Text, str] = {
    message(SettingsPage.current): "old",
    message(StartPage.confirm): "again",
    message(StartPage.passphrase): "new",
    **{label: name for name, label in LABELS.items()},
}


def settings_page(desk: RequestContext, session: Session) -> dict[str, Any]:
    """What the settings show."""
    store = desk.store
    return {
        "set": desk.preferences_of(session),
        "lights": tuple((light, message(SettingsPage.light_choice, light=light)) for light in LIGHTS),
        "sizes": tuple((size, message(SettingsPage.size_choice, size=size)) for size in SIZES),
        "force_units": FORCE_UNITS,
        "idle_choices": tuple(
            (str(minutes), message(SettingsPage.idle_choice, minutes=minutes)) for minutes in IDLE_MINUTES
        ),
        "place": store.place if store else str(desk.place),
        "kind": message(SettingsPage.kind_of, kind=store.kind if store else "closed"),
        "can_change": store is not None and store.kind == "encrypted",
    }


def settings(request: Request) -> Response:
    """The settings."""
    return page(request, "settings.html", settings_page(desk_of(request), session_of(request)))


def prefer(request: Request) -> Response:
    """Set how the app looks and behaves."""
    desk, session, typed = desk_of(request), session_of(request), form(request)
    before = desk.preferences_of(session)
    try:
        after = before.changed(**{name: str(typed[name]) for name in LABELS if name in typed})
    except BadInput as refused:
        return page(request, "settings.html", settings_page(desk, session), refused=refused, fields=FIELDS)
    desk.prefer(after, session)
    state = [before, after]

    def back() -> None:
        desk.prefer(state[0], session)
        state.reverse()

    return done(request, "/settings", message(SettingsPage.saved), undo=back)


def change(request: Request) -> Response:
    """Change the passphrase: the old one once, the new one twice."""
    desk, typed = desk_of(request), form(request)
    store = desk.kept()
    old, new, again = (str(typed.get(name, "")) for name in ("old", "new", "again"))
    try:
        if store.kind != "encrypted" or not isinstance(desk.place, Path):
            raise BadInput(put_right(message(StartPage.passphrase), message(Passphrases.none_needed)))
        desk.tries.check(desk.clock.now())
        try:
            open_store(desk.place, passphrase=old, clock=desk.clock).close()
        except BadInput:
            desk.tries.failed(desk.clock.now())
            raise BadInput(put_right(message(SettingsPage.current), message(Passphrases.current_wrong))) from None
        desk.tries.succeeded()
        change_passphrase(store, new=accepted(new, again))
    except BadInput as refused:
        return page(request, "settings.html", settings_page(desk, session_of(request)), refused=refused, fields=FIELDS)
    return done(request, "/settings", message(SettingsPage.changed))


ROUTES = (
    Route("/settings", settings),
    Route("/settings", prefer, methods=["POST"]),
    Route("/settings/passphrase", change, methods=["POST"]),
)
