"""Sites, kit, game, hub and room: each a file of tables, listed and edited one table at a time."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial, reduce
from typing import Any

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import BaseRoute, Route

from stickwright.catalogue import book
from stickwright.codes.form_labels import FormLabels
from stickwright.codes.message import Name, Text, message
from stickwright.codes.tables_page import TablesPage
from stickwright.errors import BadInput
from stickwright.files.archetypes import ARCHETYPES
from stickwright.files.editing import with_fields, without_table
from stickwright.files.fields import fields_of, typed_keys
from stickwright.files.toml_lines import FieldPath
from stickwright.model.measured import Measured
from stickwright.model.player import Site
from stickwright.store.documents import Document, documents, save_document, undo_document
from stickwright.web.games import (
    FIRST_GAME,
    GAME_NAME,
    actions_here,
    added_game,
    at_game,
    delete_game,
    games_here,
    is_game,
    title_of_game,
    usual_game,
)
from stickwright.web.issues import noticed_about
from stickwright.web.kit_pictures import kit_picture, stick_picture
from stickwright.web.noun_forms import FIRST, FormField, choice_words, form_fields, inner_tables, sent_fields
from stickwright.web.noun_views import (
    VIEWS,
    FileView,
    TableGroup,
    groups_of,
    in_cell,
    named,
    noun_at,
    path_of,
    path_text,
    plain_tables,
)
from stickwright.web.render import done, form, number_in, page
from stickwright.web.request_context import At, at_shelf, at_visit
from stickwright.web.visit_files import file_here, names_here

__all__ = ["ROUTES", "list_page", "table_page"]


def list_page(here: At, key: str) -> dict[str, Any]:
    """What the page of a file shows: all its tables, what was noticed about it, where to go on.

    Parameters
    ----------
    here : At
    key : str
        One of `VIEWS`.
    """
    view = VIEWS[key]
    document, own = file_here(here, view.name)
    tables = plain_tables(document.says, view.name) if document else {}
    top = form_fields(view.model, tables)
    return {
        "title": title_of_game(here, key, tables) if is_game(key) else view.title,
        "view": view,
        "key": key,
        "base": _base(here, key),
        "games": games_here(here) if is_game(key) else (),
        "kinds": _KINDS,
        "another": ("", ""),
        "own": own,
        "shelf": here.kit_url if key == "kit" and here.visit is not None and not own else "",
        "known": [(field.label, _shown(view, field)) for field in top if field.value],
        "has_top": bool(top),
        "groups": groups_of(view.groups, tables),
        "picture": kit_picture(document.body.decode("utf-8")) if key == "kit" and document else None,
        "noticed": noticed_about(here, view.name) if here.visit is not None else (),
        "archetype_pairs": tuple((name, message(FormLabels.choice, word=name)) for name in ARCHETYPES)
        if is_game(key) and not tables.get("action")
        else (),
        "writes": here.writes,
    }


def table_page(
    here: At, key: str, text: str, *, typed: Mapping[str, str] | None = None, refused: BadInput | None = None
) -> dict[str, Any]:
    """What the form of one table shows.

    Parameters
    ----------
    here : At
    key : str
        One of `VIEWS`.
    text : str
        The table's place, as addresses name it; '' for what stands on top of the file.
    typed : mapping, optional
        What was sent and refused.
    refused : BadInput, optional
        Why.
    """
    view = VIEWS[key]
    document, _ = file_here(here, view.name)
    tables = plain_tables(document.says, view.name) if document else {}
    path = _path(text, view, tables)
    model = noun_at(view.model, path)
    table = _table(tables, path)
    inner = [
        TableGroup(name, noun, _columns(noun))
        for name, noun, _ in inner_tables(model)
        if path and not (model is Site and name in _ELSEWHERE)
    ]
    around = path[:-2] if path and isinstance(path[-1], int) else path[:-1]
    is_new = not table and bool(path)
    heading = title_of_game(here, key, tables) if is_game(key) else view.title
    title = heading if not path else _title(view, path, tables, is_new=is_new)
    return {
        "title": title,
        "view": view,
        "key": key,
        "base": _base(here, key),
        "path": text,
        "fields": form_fields(
            model, table, typed=typed, refused=refused, offered=_offered(here, model, key), without=_WITHOUT.get(key, ()),
            wanted_units=_gauge_units(here),
        ),
        "groups": groups_of(inner, table, path) if table else (),
        "many": {name for name, _, many in inner_tables(model) if many},
        "picture": stick_picture(table, _beside(here)) if path[:1] == ("stick",) else None,
        "based_on": document.number if document else 0,
        "is_new": is_new,
        "back": f"{_base(here, key)}/edit/{path_text(around)}" if around else _base(here, key),
        "writes": here.writes,
    }  # fmt: skip


def _shown(view: FileView, field: FormField) -> str:
    """What a field holds, as the page shows it."""
    if field.name == "visit":
        return book().writer.date(field.value)
    return in_cell(choice_words(fields_of(view.model)[field.name], field.value), field.unit)


_KINDS = (
    ("", message(TablesPage.kind_none)),
    *((name, message(FormLabels.choice, word=name)) for name in ARCHETYPES),
)
_WITHOUT = {"sites": ("gauge_readings",)}
_ELSEWHERE = frozenset({"reading", "recording"})
"""Tables of a site that have pages of their own."""


def show_list(request: Request, key: str, at: Callable[[Request], At]) -> Response:
    """The tables of a file."""
    here = at(request)
    return page(request, "tables.html", list_page(here, key), here=here)


def show_table(request: Request, key: str, at: Callable[[Request], At]) -> Response:
    """The form of one table."""
    here = at(request)
    return page(request, "table.html", table_page(here, key, _asked(request)), here=here)


def save_table(request: Request, key: str, at: Callable[[Request], At]) -> Response:
    """One table written; what cannot be read stays in the form."""
    here, view, text = at(request), VIEWS[key], _asked(request)
    sent = form(request)
    typed = {name: "\n".join(str(one) for one in sent.getlist(name)) for name in sent}
    document, _ = file_here(here, view.name)
    body = document.body.decode("utf-8") if document else ""
    tables = plain_tables(document.says if document else b"", view.name)
    path = _path(text, view, tables)
    model = noun_at(view.model, path)
    try:
        changed = with_fields(body, path, sent_fields(model, typed), name=view.name)
        kept = _save(here, view, changed, based_on=number_in(typed.get("based_on", "")))
    except BadInput as refused:
        data = table_page(here, key, text, typed=typed, refused=refused)
        return page(
            request, "table.html", data, here=here, refused=refused, fields=_keys_of_fields(model, data["fields"])
        )
    what = _title(view, path, plain_tables(kept.says, view.name)) if path else view.title
    onward = f"{_base(here, key)}/edit/{path_text(path)}" if "more" in typed else _way_back(here, key, path)
    return done(request, onward, message(TablesPage.saved, what=what), undo=_undo(here, view))


def remove_table(request: Request, key: str, at: Callable[[Request], At]) -> Response:
    """One table taken away; the message offers it back."""
    here, view, text = at(request), VIEWS[key], _asked(request)
    document, _ = file_here(here, view.name)
    if document is None:
        raise HTTPException(404)
    tables = plain_tables(document.says, view.name)
    path = _path(text, view, tables)
    words = message(TablesPage.deleted, what=_title(view, path, tables))
    changed = without_table(document.body.decode("utf-8"), path, name=view.name)
    _save(here, view, changed, based_on=document.number)
    return done(request, _way_back(here, key, path), words, undo=_undo(here, view))


def add_game(request: Request) -> Response:
    """One more game; what cannot be added stays in the form."""
    here = at_visit(request)
    sent = {name: str(value) for name, value in form(request).items()}
    name, kind = sent.get("game_name", ""), sent.get("kind", "")
    try:
        key = added_game(here, name, kind)
    except BadInput as refused:
        data = list_page(here, FIRST_GAME) | {"another": (name, kind)}
        return page(request, "tables.html", data, here=here, refused=refused, fields={GAME_NAME: "game_name"})
    return done(request, here.url(key), message(TablesPage.game_added, name=Name(name)), undo=_undo(here, VIEWS[key]))


def start_game(request: Request, key: str) -> Response:
    """The actions usual for a kind of game, to change from there; what was said of the game in general stays."""
    here, view = at_visit(request), VIEWS[key]
    kind = str(form(request).get("archetype", ""))
    if kind not in ARCHETYPES:
        raise HTTPException(404)
    document, _ = file_here(here, view.name)
    text = usual_game(kind, plain_tables(document.says, view.name) if document else {})
    save_document(
        here.store, here.visit_id, view.name, text.encode(), who=here.who, why="usual-actions",
        based_on=document.number if document else 0,
    )  # fmt: skip
    return done(request, here.url(key), message(TablesPage.usual_added, kind=message(FormLabels.choice, word=kind)),
                undo=_undo(here, view))  # fmt: skip


def own_kit(request: Request) -> Response:
    """A kit of the visit's own, beginning with what is on the shelf."""
    here, view = at_visit(request), VIEWS["kit"]
    shelf = documents(here.store, None).get(view.name)
    body = shelf.body if shelf else b""
    save_document(here.store, here.visit_id, view.name, body, who=here.who, why="own-kit", based_on=0)
    return done(request, here.url("kit"), message(TablesPage.own_kit_done), undo=_undo(here, view))


def _save(here: At, view: FileView, text: str, *, based_on: int | None) -> Document:
    visit_id = here.visit.id if here.visit is not None else None
    return save_document(here.store, visit_id, view.name, text.encode("utf-8"), who=here.who, based_on=based_on)


def _undo(here: At, view: FileView) -> Callable[[], object]:
    visit_id = here.visit.id if here.visit is not None else None
    return partial(undo_document, here.store, visit_id, view.name, who=here.who)


def _beside(here: At) -> dict[str, bytes]:
    """Files beside the kit: the visit's own before those of the shelf."""
    own = documents(here.store, here.visit.id) if here.visit is not None else {}
    return {name: one.body for name, one in (documents(here.store, None) | own).items()}


def _base(here: At, key: str) -> str:
    return here.url(key) if here.visit is not None else "/kit"


def _way_back(here: At, key: str, path: FieldPath) -> str:
    """To the table around, or to the list."""
    around = path[:-2] if path and isinstance(path[-1], int) else path[:-1]
    return f"{_base(here, key)}/edit/{path_text(around)}" if around else _base(here, key)


def _path(text: str, view: FileView, tables: Mapping[str, Any]) -> FieldPath:
    try:
        return path_of(text, view.model, tables)
    except KeyError:
        raise HTTPException(404) from None


def _table(tables: Any, path: FieldPath) -> dict[str, Any]:
    for step in path:
        try:
            tables = tables[step]
        except (KeyError, IndexError):
            return {}
    return tables if isinstance(tables, dict) else {}


def _title(view: FileView, path: FieldPath, tables: Mapping[str, Any], *, is_new: bool = False) -> Text:
    """'right index', or 'right index: resting force 2'."""
    words: list[Text] = []
    here, model = tables, view.model
    known = {group.key: group for group in view.groups}
    for place, step in enumerate(path):
        if isinstance(step, int):
            continue
        model = {key: noun for key, noun, _ in inner_tables(model)}[step]
        group = known.get(step) or TableGroup(step, model, ())
        number = path[place + 1] if place + 1 < len(path) else None
        here = _table(here, path[place : place + 2] if isinstance(number, int) else path[place : place + 1])
        last = place + (2 if isinstance(number, int) else 1) >= len(path)
        if last and is_new:
            words.append(message(FormLabels.new, table=group.key))
        else:
            words.append(Name(named(here, group, number if isinstance(number, int) else 0)))
        known = {}
    return reduce(lambda outer, inner: message(TablesPage.inside, outer=outer, inner=inner), words)


def _columns(noun: type[Measured]) -> tuple[str, ...]:
    return tuple(name for name in FIRST.get(noun, ()) if name != "name")[:4]


def _offered(here: At, model: Any, key: str) -> dict[str, tuple[str, ...]]:
    """Words from the other files of the visit: actions of the game at hand or of all games, sites, sticks of its kit."""
    if here.visit is None:
        return {}
    names = {
        key: names_here(here, VIEWS[key].name, table)
        for key, table in (("game", "action"), ("sites", "site"), ("kit", "stick"))
    }
    mine = names_here(here, VIEWS[key].name, "action") if is_game(key) else names["game"]
    words = {"together": mine, "of": mine, "action": actions_here(here), "site": names["sites"],
             "sites": names["sites"], "stick": names["kit"], "liked": names["kit"]}  # fmt: skip
    own = {"together": ()} if model is VIEWS["sites"].model else {}
    return {field: found for field, found in (words | own).items() if found and field in model.model_fields}


def _gauge_units(here: At) -> dict[str, str]:
    return {"force": here.desk.preferences.force}


def _keys_of_fields(model: type[Measured], fields: tuple[FormField, ...]) -> dict[Text, str]:
    """Each key that may be typed in the file, to the name of its field on the page."""
    return {key: field.name for field in fields for key in (field.name, *typed_keys(model, field.name))}


def _asked(request: Request) -> str:
    return str(request.path_params.get("path", ""))


def _routes(key: str, base: str, at: Callable[[Request], At]) -> tuple[BaseRoute, ...]:
    return (
        Route(base, partial(show_list, key=key, at=at)),
        Route(f"{base}/edit", partial(show_table, key=key, at=at)),
        Route(f"{base}/edit/{{path:path}}", partial(show_table, key=key, at=at)),
        Route(f"{base}/edit", partial(save_table, key=key, at=at), methods=["POST"]),
        Route(f"{base}/edit/{{path:path}}", partial(save_table, key=key, at=at), methods=["POST"]),
        Route(f"{base}/remove/{{path:path}}", partial(remove_table, key=key, at=at), methods=["POST"]),
    )


ROUTES: tuple[BaseRoute, ...] = (
    Route("/visits/{id}/game/another", add_game, methods=["POST"]),
    *(
        Route(f"/visits/{{id}}/{key}/usual", partial(start_game, key=key), methods=["POST"])
        for key in VIEWS
        if is_game(key)
    ),
    *(
        Route(f"/visits/{{id}}/{key}/delete", partial(delete_game, key=key), methods=["POST"])
        for key in VIEWS
        if is_game(key) and key != FIRST_GAME
    ),
    Route("/visits/{id}/kit/own", own_kit, methods=["POST"]),
    *(
        route
        for key in VIEWS
        for route in _routes(key, f"/visits/{{id}}/{key}", partial(at_game, key=key) if is_game(key) else at_visit)
    ),
    *_routes("kit", "/kit", at_shelf),
)
