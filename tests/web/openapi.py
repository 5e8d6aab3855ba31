"""The app's addresses as an OpenAPI document: what may be asked, with which parts of the address, fields and words.

It is not served: the pages are for people. It is what a program needs that tries every address with values of every kind.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from starlette.routing import BaseRoute, Route

from stickwright.files.game_files import GAME_FILES
from stickwright.web.lazy_routes import Later

__all__ = ["FIELDS", "openapi_document", "plain_routes"]

_PART = re.compile(r"\{(\w+)(?::(\w+))?\}")
_TABLE = ("based_on", "name", "part", "force_n", "more")
_GAMES = tuple(name.removesuffix(".toml") for name in GAME_FILES)
FIELDS: Mapping[str, tuple[str, ...]] = {
    "/start": ("passphrase", "again", "then"),
    "/start/practise": (),
    "/start/strength": ("passphrase",),
    "/lock": (),
    "/undo": ("key",),
    "/demo": (),
    "/players": ("code",),
    "/players/{code}/visits": ("on_date", "like"),
    "/players/{code}/consent": ("scope", "given_on", "until", "given_by", "explained"),
    "/players/{code}/consent/withdraw": (),
    "/players/{code}/unkept": (),
    "/players/{code}/erase": ("code",),
    "/players/{code}/loans": ("item", "on_date", "due", "note"),
    "/players/{code}/loans/{loan:int}/{what}": ("due", "note"),
    "/loans": ("item", "code", "on_date", "due", "note"),
    "/loans/{loan:int}/{what}": ("due", "note"),
    "/import": ("into", "folder"),
    "/settings": ("light", "size", "force", "idle_minutes", "who"),
    "/settings/passphrase": ("old", "new", "again"),
    "/backup": ("file",),
    "/backup/restore": ("from", "place", "passphrase"),
    "/login": ("name", "password", "again", "token"),
    "/logout": (),
    "/accounts": ("name", "role", "password", "again"),
    "/accounts/close": ("name",),
    "/visits/{id}/game/another": ("game_name", "kind"),
    **{f"/visits/{{id}}/{key}/usual": ("archetype",) for key in _GAMES},
    **{f"/visits/{{id}}/{key}/delete": () for key in _GAMES[1:]},
    "/visits/{id}/kit/own": (),
    "/visits/{id}/files/{name:path}": ("text", "based_on"),
    "/visits/{id}/readings": (
        "site", "based_on", "direction.0", "force.0", "force_unit.0", "reach.0", "reach_unit.0", "again", "again_unit",
    ),
    "/visits/{id}/readings/take": ("site",),
    "/visits/{id}/measure": (
        "site", "task", "source", "stick", "short", "directions", "levels", "mapping", "hand", "way", "tuned", "condition",
    ),
    "/visits/{id}/recordings/{number:int}/aside": (),
    "/visits/{id}/recordings/{number:int}/back": (),
    "/visits/{id}/plan": ("without", "keep", "only_kit", "budget", "most_parts"),
    "/visits/{id}/plans/{number:int}/again": (),
    **{f"/visits/{{id}}/{key}/edit{end}": _TABLE for key in ("sites", "kit", *_GAMES, "hub", "room") for end in ("", "/{path:path}")},
    **{f"/visits/{{id}}/{key}/remove/{{path:path}}": () for key in ("sites", "kit", *_GAMES, "hub", "room")},
    "/kit/edit": _TABLE,
    "/kit/edit/{path:path}": _TABLE,
    "/kit/remove/{path:path}": (),
}  # fmt: skip
"""Fields of each form, by its route."""
_ASKED: Mapping[str, tuple[str, ...]] = {
    "/start": ("then", "idle"),
    "/players": ("search", "page"),
    "/import": ("in",),
    "/kit": ("in",),
    "/trail": ("page",),
    "/visits/{id}/readings": ("site",),
    "/visits/{id}/measure": ("site",),
    "/visits/{id}/recordings": ("a", "b"),
    "/visits/{id}/mounts": ("plan",),
    "/visits/{id}/sheet": ("plan",),
    "/visits/{id}/compare": ("a", "b"),
}
"""What a page looks for behind the question mark."""


def plain_routes(routes: Iterable[BaseRoute]) -> tuple[Route, ...]:
    """The pages among an app's routes, those of modules that are loaded later too.

    Parameters
    ----------
    routes : iterable of BaseRoute
    """
    found: list[Route] = []
    for route in routes:
        if isinstance(route, Later):
            found.extend(plain_routes(route.routes()))
        elif isinstance(route, Route):
            found.append(route)
    return tuple(found)


def openapi_document(routes: Iterable[BaseRoute], known: Mapping[str, Sequence[str]] | None = None) -> dict[str, Any]:
    """What may be asked of the app.

    Parameters
    ----------
    routes : iterable of BaseRoute
        ``app.routes``.
    known : mapping of str to sequence of str, optional
        The only words for a part of the address, or for a field, by its name; without, any text.

    Raises
    ------
    KeyError
        A route takes a form whose fields are not named in `FIELDS`.
    """
    words = known or {}
    paths: dict[str, dict[str, Any]] = {}
    for route in plain_routes(routes):
        place = paths.setdefault(_PART.sub(r"{\1}", route.path), {})
        for method in sorted((route.methods or set()) - {"HEAD"}):
            place[method.lower()] = _operation(route.path, method, words)
    return {"openapi": "3.1.0", "info": {"title": "stickwright", "version": "1"}, "paths": paths}


def _operation(path: str, method: str, words: Mapping[str, Sequence[str]]) -> dict[str, Any]:
    parts = [
        {"name": name, "in": "path", "required": True, "schema": _number(name, words) if kind == "int" else _text(name, words, least=1)}
        for name, kind in _PART.findall(path)
    ]  # fmt: skip
    asked = [{"name": name, "in": "query", "schema": _text(name, words)} for name in _ASKED.get(path, ())]
    operation: dict[str, Any] = {
        "parameters": [*parts, *(asked if method == "GET" else [])],
        "responses": {"default": {"description": "answer"}},
    }
    if method == "POST":
        fields = {name: _text(name, words) for name in FIELDS[path]}
        schema = {"type": "object", "properties": fields, "additionalProperties": False}
        operation["requestBody"] = {"content": {"application/x-www-form-urlencoded": {"schema": schema}}}
    return operation


def _number(name: str, words: Mapping[str, Sequence[str]]) -> dict[str, Any]:
    return {"type": "integer", "minimum": 0} | ({"enum": [int(word) for word in words[name]]} if name in words else {})


def _text(name: str, words: Mapping[str, Sequence[str]], *, least: int = 0) -> dict[str, Any]:
    if name in words:
        return {"type": "string", "enum": list(words[name])}
    return {"type": "string", "minLength": least, "maxLength": 300}
