"""Every address with values of every kind: an answer each time, and never a fault of the program."""

from __future__ import annotations

import warnings
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from tests.web.conftest import ADDRESS, TestClient

from stickwright.store.consents import give_consent
from stickwright.store.opening import Store, memory_store
from stickwright.store.players import add_player, add_visit
from stickwright.web.app import make_app
from stickwright.web.request_context import RequestContext
from web.openapi import FIELDS, openapi_document, plain_routes

with warnings.catch_warnings():  # on the way in it names things of its own libraries that are older than they are
    warnings.simplefilter("ignore")
    import schemathesis

EXAMPLES = 6
KNOWN = {
    "id": ("1", "d1", "zz"),
    "code": ("R4", "d~K7", "nobody"),
    "number": ("1", "2"), "page": ("1", "2"), "loan": ("1", "2"),
    "path": ("site/0", "site/new", "site/0/reading/0", "stick/0", "stick/new", "action/0", "place/0", "tube/new"),
    "name": ("player.toml", "kit.toml", "notes/typed.txt"),
    "site": ("0", "1", "right index", "chin"),
    "task": ("rest", "rim", "push", "aim", "follow", "hold", "press", "play"),
    "source": ("browser", "replay"),
    "what": ("back", "extend", "undo"),
    "based_on": ("0", "1", "2"),
    "direction.0": ("0", "90", "nan"), "force.0": ("41 45 38", "1e400", "-3"), "force_unit.0": ("gf", "n"),
    "archetype": ("driving", "running and jumping"),
    "in": ("d", "m", ""),
    "on_date": ("2026-03-09", "0000-00-00"), "due": ("2026-04-09", "9999-12-31"),
    "like": ("0", "1"), "a": ("1", "2"), "b": ("1", "2"), "plan": ("1",), "idle_minutes": ("20",),
    "scope": ("measure", "keep"), "given_by": ("player",), "given_on": ("2026-03-09",), "until": ("2027-03-09",),
}  # fmt: skip
STRAY = ("", "x", "-1", "1e400", "9" * 25, "<b>&amp;", "\u0000", "ü" * 60, "a\nb", "../../etc", "[[x]]", '"', "nan")
"""What no field wants."""
OFFERED = {
    name: words if name in ("id", "code", "number", "page", "loan") else (*words, *STRAY[1:]) for name, words in KNOWN.items()
}  # fmt: skip
NOT_TRIED = (
    "/backup",
    "/backup/restore",
    "/import",
    "/settings/passphrase",
    "/start",
    "/start/practise",
    "/players/{code}/erase",
)
"""Forms with places on the disk, since no test writes wherever a string points, and the end of a player. They have tests of their own."""
BEGINS_WORK = ("/visits/{id}/plan", "/visits/{id}/plans/{number}/again")
"""Making a plan takes seconds of its own."""


class OneDay:
    def now(self) -> datetime:
        return datetime(2026, 3, 9, 10, 0, tzinfo=UTC)


def _records() -> Store:
    """One player whose consent holds, and one visit."""
    store = memory_store(OneDay())
    row = add_player(store, "R4", who="test")
    give_consent(
        store, row.id, scope=("measure", "keep"), given_on="2026-03-09", until="2027-03-09", given_by="the player",
        who="test",
    )  # fmt: skip
    add_visit(store, row.id, "2026-03-09", who="test")
    return store


@pytest.fixture(scope="module")
def asked(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[TestClient, RequestContext]]:
    desk = RequestContext(tmp_path_factory.mktemp("shapes") / "records.db", OneDay())
    desk.store = _records()
    client = TestClient(make_app(desk), base_url=ADDRESS, raise_server_exceptions=True)
    client.get(f"/?start={desk.token}")
    client.headers["origin"] = ADDRESS
    (session,) = desk.sessions.values()
    client.headers["x-csrf"] = session.csrf
    client.post("/demo")
    yield client, desk
    desk.close()


ROUTES = make_app(RequestContext(Path("nowhere.db"))).routes
DOCUMENT = openapi_document(ROUTES, OFFERED)
OPERATIONS = [
    (path, method)
    for path, methods in DOCUMENT["paths"].items()
    for method in methods
    if not (method == "post" and path in (*NOT_TRIED, *BEGINS_WORK))
]
SCHEMA = schemathesis.openapi.from_dict(DOCUMENT)


def test_every_form_names_its_fields() -> None:
    """No route is left out of the document, and none stands there that is gone."""
    forms = {route.path for route in plain_routes(ROUTES) if "POST" in (route.methods or ())}
    assert forms == set(FIELDS)


@pytest.mark.parametrize(("path", "method"), OPERATIONS, ids=[f"{method} {path}" for path, method in OPERATIONS])
def test_no_value_is_a_fault_of_the_program(asked: tuple[TestClient, RequestContext], path: str, method: str) -> None:
    """A page, a file, or one of the refusals that say why; a fault would come through as the exception itself."""
    client, desk = asked

    @settings(
        max_examples=EXAMPLES, deadline=None, database=None, phases=(Phase.generate,),
        suppress_health_check=list(HealthCheck),
    )  # fmt: skip
    @given(case=SCHEMA[path][method.upper()].as_strategy())
    def tried(case: Any) -> None:
        if desk.store is None:  # it was locked
            desk.store = _records()
        body = case.body if isinstance(case.body, dict) else {}
        query = {name: str(value) for name, value in (case.query or {}).items()}
        answer = client.request(
            method.upper(), case.formatted_path, params=query, follow_redirects=False,
            **({"data": {name: str(value) for name, value in body.items()}} if method == "post" else {}),
        )  # fmt: skip
        assert answer.status_code in (200, 303, 307, 400, 403, 404, 405, 409, 413, 422), answer.text[:400]

    tried()
