"""Consent: each thing by itself, none ticked beforehand, until when, and taken back at any time.

A player without a consent to keep is worked with in memory. The day it is given, what was done moves over to the records.
"""

from __future__ import annotations

from datetime import date
from typing import Any

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from stickwright.errors import BadInput, Problem
from stickwright.store.carrying import carry_player
from stickwright.store.cases import import_case, tree_of
from stickwright.store.consents import SCOPES, consent_of, give_consent, withdraw
from stickwright.store.players import add_player, add_visit, player_named, visits
from stickwright.store.whole import erase_player
from stickwright.web.desk import At, at_player, end_measuring
from stickwright.web.render import done, form, page

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

WORDS = {
    "measure": (
        "Being measured today",
        "How far and how hard, with a gauge or a stick. Stopped at once when it hurts or tires.",
    ),
    "keep": ("Keeping the results", "Here, under the code, for the next visit."),
    "photos": (
        "Photographs of the set-up",
        "Of the hand, the stick and the mount; never of the face unless asked for separately.",
    ),
    "share": (
        "Sharing with named people",
        "Who they are is agreed and written on paper: therapist, school, whoever pays.",
    ),
    "teach": ("Use without name for teaching or research", ""),
    "follow up": ("Being contacted afterwards", "To ask whether it still works."),
}
FIELDS = {"what was agreed to": "scope", "said on": "given_on", "until": "until", "by whom": "given_by"}
ROLES = (
    ("", "Choose"),
    ("the player", "The player"),
    ("a parent, with the player's own agreement", "A parent, with the player's own agreement"),
    ("a guardian or attorney", "A guardian or attorney"),
    ("a best-interest decision", "A best-interest decision, by those entitled to take it"),
)


def consent_words(here: At) -> tuple[str, bool]:
    """How the consent stands, in a sentence; and whether it lets results be kept today.

    Parameters
    ----------
    here : At
    """
    if here.key == "d":
        return "An invented player need not be asked.", True
    found = consent_of(here.store, here.player_id, here.desk.today())
    if found is None:
        return "Nothing is written down yet.", False
    if found.withdrawn:
        return "It was taken back. What is held waits to be handed over and erased.", False
    allowed = [_words(key) for key in SCOPES if key in found.scope]
    sentence = f"Given on {found.given_on} by {found.given_by}, until {found.until}: {'; '.join(allowed).lower()}."
    if not found.valid:
        sentence = (
            f"It ended on {found.until}. What is held can be looked at; nothing is added until it is given again."
        )
    return sentence, found.valid and "keep" in found.scope


def _words(key: str) -> str:
    return WORDS[key][0]


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
        kept = [key for key in SCOPES if key in found.scope and not found.withdrawn]
        now = {
            "sentence": consent_words(here)[0],
            "allowed": [_words(key) for key in kept],
            "refused": [_words(key).lower() for key in SCOPES if key not in kept],
        }
    return {
        "now": now,
        "withdrawn": found is not None and found.withdrawn,
        "can_give": here.writes and here.key != "d",
        "scopes": [(key, *WORDS[key]) for key in SCOPES],
        "roles": ROLES,
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
    """Twelve months later.

    Parameters
    ----------
    day : date
    """
    try:
        return day.replace(year=day.year + 1)
    except ValueError:  # 29 February
        return day.replace(year=day.year + 1, day=28)


def show(request: Request) -> Response:
    """The consent.

    Parameters
    ----------
    request : Request
    """
    here = at_player(request)
    return page(request, "consent.html", consent_page(here), here=here)


def write_down(request: Request) -> Response:
    """A consent, as it was given. With one to keep, a player in memory moves to the records.

    Parameters
    ----------
    request : Request
    """
    here, typed = at_player(request), form(request)
    try:
        given = _given(here, typed)
        if here.key == "m" and "keep" in given["scope"]:
            # what runs in memory ends there, and moves whole
            end_measuring(request, {(here.key, one.id) for one in visits(here.store, here.player_id)})
            here, left = keep_after_all(here, given)
            words = (
                f"It is written down. What was done with {here.player.code if here.player else ''} is kept from now on."
            )
            words = " ".join((words, *left))
            return done(request, here.player_url(), words)
        give_consent(here.store, here.player_id, who=here.who, **given)
    except BadInput as refused:
        return page(request, "consent.html", consent_page(here, typed), here=here, refused=refused, fields=FIELDS)
    return done(request, here.player_url(), "The consent is written down.")


def _given(here: At, typed: FormData) -> dict[str, Any]:
    """What was typed, all problems at once."""
    problems = []
    scope = tuple(key for key in SCOPES if key in typed.getlist("scope"))
    if not scope:
        problems.append(
            Problem(
                "what was agreed to",
                "nothing ticked",
                "at least one",
                "Without any, leave this page: nothing is kept then.",
            )
        )
    days = {}
    for field in ("given_on", "until"):
        text = str(typed.get(field, ""))
        try:
            days[field] = date.fromisoformat(text)
        except ValueError:
            problems.append(
                Problem({"given_on": "said on"}.get(field, field), f'"{text}"', "a date such as 2026-03-09")
            )
    if len(days) == 2 and days["given_on"] > here.desk.today():
        problems.append(
            Problem(
                "said on", f"{days['given_on']}, which is to come", "today or earlier", "Is the computer's date right?"
            )
        )
    if len(days) == 2 and days["until"] <= days["given_on"]:
        problems.append(Problem("until", f"{days['until']}", f"a day after {days['given_on']}"))
    given_by = str(typed.get("given_by", ""))
    if given_by not in {key for key, _ in ROLES if key}:
        problems.append(Problem("by whom", "nothing chosen", "who gave it, in what role"))
    if problems:
        raise BadInput(problems)
    return {
        "given_on": days["given_on"].isoformat(),
        "until": days["until"].isoformat(),
        "given_by": given_by,
        "scope": scope,
        "explained": str(typed.get("explained", "")).strip(),
    }


def keep_after_all(here: At, given: dict[str, Any]) -> tuple[At, tuple[str, ...]]:
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
    with kept.write(here.who, "kept after all"):
        row = add_player(kept, here.player.code, who=here.who)
        give_consent(kept, row.id, who=here.who, **given)
        carried = carry_player(here.store, kept, here.player_id, row.id, who=here.who)
    erase_player(here.store, here.player_id, who=here.who)
    return At(desk, "", kept, here.who, True, player_named(kept, row.code)), carried.left


def work_without_keeping(request: Request) -> Response:
    """Today's help without a consent: the last visit's sites, game and room in memory; the records stay as they are.

    Parameters
    ----------
    request : Request
    """
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
    """The consent is taken back: from now on nothing is added.

    Parameters
    ----------
    request : Request
    """
    here = at_player(request)
    withdraw(here.store, here.player_id, who=here.who)
    return done(
        request, here.player_url("consent"), "The consent is taken back. Hand over what is held, then erase it."
    )


ROUTES = (
    Route("/players/{code}/consent", show),
    Route("/players/{code}/consent", write_down, methods=["POST"]),
    Route("/players/{code}/consent/withdraw", take_back, methods=["POST"]),
    Route("/players/{code}/unkept", work_without_keeping, methods=["POST"]),
)
