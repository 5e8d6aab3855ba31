"""The games of a visit: one or several, each a file of its own that is edited as the first one is."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response

from stickwright.catalogue import say
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.tables_page import TablesPage
from stickwright.errors import BadInput
from stickwright.files.archetypes import ARCHETYPES, archetype_text
from stickwright.files.editing import Numeral, with_fields
from stickwright.files.game_files import FURTHER_GAMES, GAME_FILES, games_among
from stickwright.files.plain_text import shortened
from stickwright.store.documents import documents, remove_document, save_document
from stickwright.web.noun_views import VIEWS, plain_tables
from stickwright.web.render import done, put_right, undo_of
from stickwright.web.request_context import At, at_visit
from stickwright.web.visit_files import names_here

__all__ = [
    "FIRST_GAME", "GAME_NAME", "GameRow", "actions_here", "added_game", "at_game", "delete_game", "games_here", "is_game",
    "title_of_game", "usual_game",
]  # fmt: skip

FIRST_GAME = "game"
GAME_NAME = message(TablesPage.game_name)
"""Of the field, as its page calls it."""
LONGEST_NAME = 100


class GameRow(NamedTuple):
    """One game of a visit in the list of all."""

    key: str
    name: str
    hours: Text
    actions: int


def is_game(key: str) -> bool:
    """Whether a page is one of a game.

    Parameters
    ----------
    key : str
        One of `VIEWS`.
    """
    return VIEWS[key].name in GAME_FILES


def at_game(request: Request, key: str) -> At:
    """Where a page of a game is: the first game may have no file yet, a further one is there or it is not.

    Parameters
    ----------
    request : Request
    key : str
        One of `VIEWS`.
    """
    here = at_visit(request)
    if key != FIRST_GAME and VIEWS[key].name not in documents(here.store, here.visit_id):
        raise HTTPException(404)
    return here


def games_here(here: At) -> tuple[GameRow, ...]:
    """The games of a visit, the first one first."""
    if here.visit is None:
        return ()
    held = documents(here.store, here.visit.id)
    out = []
    for name in games_among(held):
        try:
            tables = plain_tables(held[name].says, name)
        except BadInput:  # its own page says so
            tables = {}
        key = name.removesuffix(".toml")
        hours = tables.get("hours_per_week")
        actions = tables.get("action")
        out.append(GameRow(key, _name(tables, key), "" if hours is None else message(TablesPage.hours_a_week, hours=Name(str(hours))),
                           len(actions) if isinstance(actions, list) else 0))  # fmt: skip
    return tuple(out)


def title_of_game(here: At, key: str, tables: Mapping[str, Any]) -> Message:
    """Heading of the page of a game: with its name where there are several.

    Parameters
    ----------
    here : At
    key : str
    tables : mapping
        Of its file.
    """
    several = len(games_here(here)) > 1
    return message(TablesPage.game_of, name=Name(_name(tables, key))) if several else VIEWS[key].title


def _name(tables: Mapping[str, Any], key: str) -> str:
    number = GAME_FILES.index(VIEWS[key].name) + 1
    return str(tables.get("name") or say(message(TablesPage.game_number, number=number)))


def actions_here(here: At) -> tuple[str, ...]:
    """Names of the actions of all games."""
    return tuple(
        dict.fromkeys(name for row in games_here(here) for name in names_here(here, VIEWS[row.key].name, "action"))
    )


def usual_game(kind: str, told: Mapping[str, Any]) -> str:
    """The actions usual for a kind of game, with what was said of this game in general.

    Parameters
    ----------
    kind : str
        One of `ARCHETYPES`.
    told : mapping
        What stands in its file.
    """
    said = {key: value for key, value in told.items() if key not in ("action", "archetype")}
    plain = {
        key: Numeral(str(value)) if isinstance(value, int | float) and not isinstance(value, bool) else value
        for key, value in said.items()
    }
    return with_fields(archetype_text(kind), (), plain)


def added_game(here: At, name: str, kind: str) -> str:
    """One more game in the visit, with the actions usual for its kind where one was chosen; its key.

    Parameters
    ----------
    here : At
    name : str
        As typed.
    kind : str
        One of `ARCHETYPES`, or ''.

    Raises
    ------
    BadInput
        There is no name, another game has it, or there are as many games as a visit may have.
    """
    name = " ".join(name.split())
    rows = games_here(here)
    taken = {row.key for row in rows}
    free = [key for key in (one.removesuffix(".toml") for one in GAME_FILES) if key not in taken]
    _refuse(name, kind, [row.name for row in rows], full=not free)
    text = usual_game(kind, {"name": name}) if kind else with_fields("", (), {"name": name})
    file = VIEWS[free[0]].name
    save_document(here.store, here.visit_id, file, text.encode(), who=here.who, why="game-added", based_on=0)
    return free[0]


def _refuse(name: str, kind: str, names: list[str], *, full: bool) -> None:
    if full:
        raise BadInput(put_right(GAME_NAME, message(TablesPage.most_games, most=len(GAME_FILES))))
    if not name or len(name) > LONGEST_NAME:
        raise BadInput(put_right(GAME_NAME, message(TablesPage.no_game_name, most=LONGEST_NAME)))
    if name in names:
        raise BadInput(put_right(GAME_NAME, message(TablesPage.game_name_taken, name=Name(shortened(name)))))
    if kind and kind not in ARCHETYPES:
        raise HTTPException(404)


def delete_game(request: Request, key: str) -> Response:
    """A further game taken out of the visit; the message offers it back."""
    here = at_visit(request)
    row = next((one for one in games_here(here) if one.key == key), None)
    if row is None or VIEWS[key].name not in FURTHER_GAMES:
        raise HTTPException(404)
    remove_document(here.store, here.visit_id, VIEWS[key].name, who=here.who, why="game-deleted")
    return done(
        request,
        here.url(FIRST_GAME),
        message(TablesPage.game_deleted, name=Name(row.name)),
        undo=undo_of(here, VIEWS[key].name),
    )
