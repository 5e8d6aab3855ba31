"""Consent: each thing by itself, none ticked beforehand, until when, and taken back at any time.

A player without a consent to keep is worked with in memory. The day it is given, what was done moves over to the records.
"""

from __future__ import annotations

from datetime import date
from typing import Any, get_args

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from stickwright.codes.commands import Commands
from stickwright.codes.consent_page import ConsentPage, Giver, Thing
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.trail import Trail
from stickwright.errors import BadInput, Problem
from stickwright.store.cases import import_case, tree_of
from stickwright.store.consents import consent_of, give_consent, withdraw
from stickwright.store.export import erase_player
from stickwright.store.players import add_player, add_visit, player_named, visits
from stickwright.store.transfer import carry_player
from stickwright.web.render import done, form, not_a_date, page, put_right
from stickwright.web.request_context import At, at_player, end_measuring

__all__ = [
    "ROUTES",
    "consent_page",
    "consent_words",
    "keep_after_all",
    "show",
    "take_back",
    "work_without_keeping",
    "write_down",
]

THINGS: tuple[Thing, ...] = get_args(Thing)
"""What may be agreed to, as the records name it (`stickwright.store.consents`)."""
GIVERS: dict[str, Giver] = {one: one for one in get_args(Giver)}
"""Who may give it, as it stands in the records; older ones hold words."""
FIELDS: dict[Text, str] = {
    message(ConsentPage.each): "scope",
    message(ConsentPage.given_on): "given_on",
    message(ConsentPage.review_on): "until",
    message(ConsentPage.given_by): "given_by",
}


def consent_words(here: At) -> tuple[Message, bool]:
    """How the consent stands, in a sentence; and whether it lets results be kept today."""
    if here.key == "d":
        return message(ConsentPage.demo), True
    found = consent_of(here.store, here.player_id, here.desk.today())
    if found is None:
        return message(ConsentPage.none_recorded), False
    if found.withdrawn:
        return message(ConsentPage.withdrawn), False
    if not found.valid:
        return message(ConsentPage.ended, until=found.until), False
    role = GIVERS.get(found.given_by)
    giver: Text = Name(found.given_by) if role is None else message(ConsentPage.giver, role=role)
    things = tuple(_thing(key) for key in THINGS if key in found.scope)
    given = message(ConsentPage.given, given_on=found.given_on, giver=giver, until=found.until, things=things)
    return given, "keep" in found.scope


def _thing(key: Thing) -> Message:
    return message(ConsentPage.scope, thing=key)


def _hint(key: Thing) -> Message | str:
    return "" if key == "teach" else message(ConsentPage.scope_hint, thing=key)


def consent_page(here: At, typed: FormData | None = None) -> dict[str, Any]:
    """What is shown of the consent.

    Parameters
    ----------
    here : At
    typed : FormData, optional
        What was sent and refused.
    """
    today = here.desk.today()
    found = consent_of(here.store, here.player_id, today)
    rows = visits(here.store, here.player_id)
    now = None
    if found is not None:
        kept = [key for key in THINGS if key in found.scope and not found.withdrawn]
        now = {
            "sentence": consent_words(here)[0],
            "allowed": [_thing(key) for key in kept],
            "refused": [_thing(key) for key in THINGS if key not in kept],
        }
    return {
        "now": now,
        "withdrawn": found is not None and found.withdrawn,
        "can_give": here.writes and here.key != "d",
        "scopes": [(key, _thing(key), _hint(key)) for key in THINGS],
        "roles": (
            ("", message(Commands.choose)),
            *((role, message(ConsentPage.role, role=role)) for role in GIVERS.values()),
        ),
        "first_visit": here.visit_url(rows[0].id) if rows else "",
        "typed": {
            "scope": [str(value) for value in typed.getlist("scope")] if typed else [],
            "given_on": str(typed.get("given_on", "")) if typed else today.isoformat(),
            "until": str(typed.get("until", "")) if typed else a_year_on(today).isoformat(),
            "given_by": str(typed.get("given_by", "")) if typed else "",
            "explained": str(typed.get("explained", "")) if typed else "",
        },
    }


def a_year_on(day: date) -> date:
    """Twelve months later."""
    try:
        return day.replace(year=day.year + 1)
    except ValueError:  # 29 February
        return day.replace(year=day.year + 1, day=28)


def show(request: Request) -> Response:
    """The consent."""
    here = at_player(request)
    return page(request, "consent.html", consent_page(here), here=here)


def write_down(request: Request) -> Response:
    """A consent, as it was given. With one to keep, a player in memory moves to the records."""
    here, typed = at_player(request), form(request)
    try:
        given = _given(here, typed)
        if here.key == "m" and "keep" in given["scope"]:
            # what runs in memory ends there, and moves whole
            end_measuring(request, {(here.key, one.id) for one in visits(here.store, here.player_id)})
            here, left = keep_after_all(here, given)
            code = Name(here.player.code if here.player else "")
            return done(request, here.player_url(), message(ConsentPage.recorded_and_kept, code=code, left=left))
        give_consent(here.store, here.player_id, who=here.who, **given)
    except BadInput as refused:
        return page(request, "consent.html", consent_page(here, typed), here=here, refused=refused, fields=FIELDS)
    return done(request, here.player_url(), message(ConsentPage.recorded))


def _given(here: At, typed: FormData) -> dict[str, Any]:
    """What was typed, all problems at once."""
    problems: list[Problem] = []
    scope = tuple(key for key in THINGS if key in typed.getlist("scope"))
    if not scope:
        problems.append(put_right(message(ConsentPage.each), message(ConsentPage.nothing_ticked)))
    given_on, review_on = message(ConsentPage.given_on), message(ConsentPage.review_on)
    days = {}
    for field, label in (("given_on", given_on), ("until", review_on)):
        text = str(typed.get(field, ""))
        try:
            days[field] = date.fromisoformat(text)
        except ValueError:
            problems.append(put_right(label, not_a_date(text)))
    if len(days) == 2 and days["given_on"] > here.desk.today():
        problems.append(put_right(given_on, message(Commands.is_in_future, day=days["given_on"].isoformat())))
    if len(days) == 2 and days["until"] <= days["given_on"]:
        too_early = message(ConsentPage.review_too_early, given_on=days["given_on"].isoformat())
        problems.append(put_right(review_on, too_early))
    given_by = str(typed.get("given_by", ""))
    if given_by not in GIVERS:
        problems.append(put_right(message(ConsentPage.given_by), message(ConsentPage.choose_role)))
    if problems:
        raise BadInput(problems)
    return {
        "given_on": days["given_on"].isoformat(),
        "until": days["until"].isoformat(),
        "given_by": given_by,
        "scope": scope,
        "explained": str(typed.get("explained", "")).strip(),
    }


def keep_after_all(here: At, given: dict[str, Any]) -> tuple[At, tuple[Message, ...]]:
    """Move a player from memory to the records, with all visits; and say what could not be moved.

    Parameters
    ----------
    here : At
        The player in memory.
    given : dict
        The consent to keep, as `give_consent` takes it.
    """
    assert here.player is not None
    desk, kept = here.desk, here.desk.kept()
    with kept.write(here.who, message(Trail.kept_after_all)):
        row = add_player(kept, here.player.code, who=here.who)
        give_consent(kept, row.id, who=here.who, **given)
        carried = carry_player(here.store, kept, here.player_id, row.id, who=here.who)
    erase_player(here.store, here.player_id, who=here.who)
    return At(desk, "", kept, here.who, True, player_named(kept, row.code)), carried.left


def work_without_keeping(request: Request) -> Response:
    """Today's help without a consent: the last visit's sites, game and room in memory; the records stay as they are."""
    here = at_player(request)
    assert here.player is not None
    desk = here.desk
    memory = desk.unkept()
    rows = visits(here.store, here.player_id)
    if here.key == "" and rows:
        earlier = import_case(memory, tree_of(here.store, rows[0].id), who=here.who)
        add_visit(memory, earlier.player_id, desk.today().isoformat(), who=here.who, like=earlier.id)
    elif here.key == "":
        add_player(memory, here.player.code, who=here.who)
    return RedirectResponse(
        At(desk, "m", memory, here.who, True, player_named(memory, here.player.code)).player_url(), 303
    )


def take_back(request: Request) -> Response:
    """The consent is withdrawn: from now on nothing is added."""
    here = at_player(request)
    withdraw(here.store, here.player_id, who=here.who)
    return done(request, here.player_url("consent"), message(ConsentPage.withdrawal_recorded))


ROUTES = (
    Route("/players/{code}/consent", show),
    Route("/players/{code}/consent", write_down, methods=["POST"]),
    Route("/players/{code}/consent/withdraw", take_back, methods=["POST"]),
    Route("/players/{code}/unkept", work_without_keeping, methods=["POST"]),
)
