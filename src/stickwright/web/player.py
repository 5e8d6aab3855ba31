"""One player through time: visits, force, consent, loans, and everything that is held."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import Any

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from stickwright.errors import BadInput, Problem
from stickwright.store.players import add_visit, readings_through_time, visits
from stickwright.units import QUANTITIES
from stickwright.web.consent import consent_words
from stickwright.web.desk import At, at_player
from stickwright.web.loans import loans_part
from stickwright.web.render import done, form, page
from stickwright.web.trend import Point, site_trends

__all__ = ["ROUTES", "begin_visit", "player_page", "show"]

NOTHING = ("0", "Nothing: begin afresh")


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
        "likes": (*((str(row.id), f"visit {row.number}, {row.on_date or 'no date'}") for row in rows), NOTHING),
        "trends": site_trends(points, unit),
        "unit": QUANTITIES["force"].unit(unit).label,
        "consent": consent,
        "has_consent": has_consent,
        "loan": loans_part(here, lent),
        "plans": _plans(here, rows),
    }


def _plans(here: At, rows: Any) -> list[tuple[str, str, str, str]]:
    """All plans through all visits, the last first: address, which, made on, by whom."""
    from stickwright.store.plans import plans  # planning is slow to load: only where there is a plan

    return [
        (f"{here.visit_url(row.id)}/plans/{one.number}", f"visit {row.number}, plan {one.number}", one.at[:10], one.who)
        for row in rows
        if row.plans
        for one in reversed(plans(here.store, row.id))
    ]


def _sentence(rows: Any) -> str:
    if not rows:
        return "No visit yet."
    number = "One visit" if len(rows) == 1 else f"{len(rows)} visits"
    return f"{number}, the last on {rows[0].on_date}." if rows[0].on_date else f"{number}."


def _next(here: At, rows: Any, has_consent: bool) -> dict[str, Any]:
    """The one obvious thing to do."""
    if not rows and here.writes:
        return {"post": True, "address": here.player_url("visits"), "words": "Begin the first visit"}
    if not rows:
        return {"post": False, "address": "/players", "words": "Back to the players"}
    if here.key == "" and here.writes and not has_consent:
        return {"post": False, "address": here.player_url("consent"), "words": "Ask again for consent"}
    today = here.desk.today().isoformat()
    words = "Go on with today's visit" if rows[0].on_date == today else f"Open visit {rows[0].number}"
    return {"post": False, "address": here.visit_url(rows[0].id), "words": words}


def show(request: Request) -> Response:
    """The player's page.

    Parameters
    ----------
    request : Request
    """
    here = at_player(request)
    return page(request, "player.html", player_page(here), here=here)


def begin_visit(request: Request) -> Response:
    """A new visit, with what is carried over from an earlier one.

    Parameters
    ----------
    request : Request
    """
    here, typed = at_player(request, adds=True), form(request)
    on_date = str(typed.get("on_date", "")).strip() or here.desk.today().isoformat()
    like = str(typed.get("like", "0"))
    try:
        checked_date(on_date, "on_date")
        known = {str(row.id): row.id for row in visits(here.store, here.player_id)}
        row = add_visit(here.store, here.player_id, on_date, who=here.who, like=known.get(like))
    except BadInput as refused:
        return page(
            request, "player.html", player_page(here, on_date), here=here, refused=refused, fields={"": "on_date"}
        )
    return done(request, here.visit_url(row.id), f"Visit {row.number} is begun.")


def checked_date(text: str, field: str) -> date:
    """A date as a browser sends it.

    Parameters
    ----------
    text : str
    field : str
        Whose it is.

    Raises
    ------
    BadInput
    """
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise BadInput(Problem(field, f'"{text}"', "a date such as 2026-03-09")) from None


ROUTES = (
    Route("/players/{code}", show),
    Route("/players/{code}/visits", begin_visit, methods=["POST"]),
)
