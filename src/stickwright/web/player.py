"""One player through time: visits, force, consent, loans, and everything that is held."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import Any

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from stickwright.codes.message import Message, Name, message
from stickwright.codes.player_page import PlayerPage
from stickwright.errors import BadInput
from stickwright.store.players import add_visit, readings_through_time, visits
from stickwright.units import QUANTITIES
from stickwright.web.consent import consent_words
from stickwright.web.loans_part import loans_part
from stickwright.web.render import done, form, not_a_date, page, put_right
from stickwright.web.request_context import At, at_player
from stickwright.web.trend import Point, site_trends

__all__ = ["ROUTES", "begin_visit", "player_page", "show"]

NOTHING = ("0", message(PlayerPage.like_nothing))


def player_page(here: At, on_date: str = "", lent: Mapping[str, str] | None = None) -> dict[str, Any]:
    """What is shown of a player.

    Parameters
    ----------
    here : At
    on_date : str
        Date of a new visit, as typed so far.
    lent : mapping, optional
        A loan, as typed and refused.
    """
    rows = visits(here.store, here.player_id)
    unit = here.desk.preferences.force
    points = (
        Point(row.on_date, row.site, row.direction_rad, tuple(row.repeats))
        for row in readings_through_time(here.store, here.player_id)
        if row.kind == "force" and row.direction_rad is not None
    )
    consent, has_consent = consent_words(here)
    return {
        "sentence": _sentence(rows),
        "next": _next(here, rows, has_consent),
        "visits": [(here.visit_url(row.id), row) for row in rows],
        "today": on_date or here.desk.today().isoformat(),
        "likes": (
            *(
                (str(row.id), message(PlayerPage.like_visit, number=row.number, on_date=row.on_date or ""))
                for row in rows
            ),
            NOTHING,
        ),
        "trends": site_trends(points, unit),
        "unit": QUANTITIES["force"].unit(unit).label,
        "consent": consent,
        "has_consent": has_consent,
        "loan": loans_part(here, lent),
        "plans": _plans(here, rows),
    }


def _plans(here: At, rows: Any) -> list[tuple[str, Message, Message]]:
    """All plans through all visits, the last first: address, which, when and by whom."""
    from stickwright.store.plans import plans  # planning is slow to load: only where there is a plan

    return [
        (
            f"{here.visit_url(row.id)}/plans/{one.number}",
            message(PlayerPage.plan_of, visit=row.number, plan=one.number),
            message(PlayerPage.made, on_date=one.at[:10], who=Name(one.who)),
        )
        for row in rows
        if row.plans
        for one in reversed(plans(here.store, row.id))
    ]


def _sentence(rows: Any) -> Message:
    if not rows:
        return message(PlayerPage.no_visit)
    return message(PlayerPage.visits_so_far, visits=len(rows), last_on=rows[0].on_date or "")


def _next(here: At, rows: Any, has_consent: bool) -> dict[str, Any]:
    """The one obvious thing to do."""
    if not rows and here.writes:
        return {"post": True, "address": here.player_url("visits"), "words": message(PlayerPage.first_visit)}
    if not rows:
        return {"post": False, "address": "/players", "words": message(PlayerPage.to_players)}
    if here.key == "" and here.writes and not has_consent:
        return {"post": False, "address": here.player_url("consent"), "words": message(PlayerPage.ask_again)}
    today = here.desk.today().isoformat()
    later = message(PlayerPage.open_visit, number=rows[0].number)
    words = message(PlayerPage.today) if rows[0].on_date == today else later
    return {"post": False, "address": here.visit_url(rows[0].id), "words": words}


def show(request: Request) -> Response:
    """The player's page."""
    here = at_player(request)
    return page(request, "player.html", player_page(here), here=here)


def begin_visit(request: Request) -> Response:
    """A new visit, with what is carried over from an earlier one."""
    here, typed = at_player(request, adds=True), form(request)
    on_date = str(typed.get("on_date", "")).strip() or here.desk.today().isoformat()
    like = str(typed.get("like", "0"))
    try:
        checked_date(on_date, message(PlayerPage.new_date))
        known = {str(row.id): row.id for row in visits(here.store, here.player_id)}
        row = add_visit(here.store, here.player_id, on_date, who=here.who, like=known.get(like))
    except BadInput as refused:
        return page(
            request, "player.html", player_page(here, on_date), here=here, refused=refused, fields={"": "on_date"}
        )
    return done(request, here.visit_url(row.id), message(PlayerPage.begun, number=row.number))


def checked_date(text: str, label: Message) -> date:
    """A date as a browser sends it.

    Parameters
    ----------
    text : str
    label : Message
        Of the field.

    Raises
    ------
    BadInput
    """
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise BadInput(put_right(label, not_a_date(text))) from None


ROUTES = (
    Route("/players/{code}", show),
    Route("/players/{code}/visits", begin_visit, methods=["POST"]),
)
