"""A team's records: who comes in, who may change anything, and when they are out again."""

from __future__ import annotations

import pytest
from starlette.testclient import TestClient
from tests.web.conftest import ADDRESS, StandingClock

from stickwright.store.opening import memory_store
from stickwright.web.app import make_app
from stickwright.web.request_context import RequestContext

WORDS = "kettle orbit mossy lantern nine"


@pytest.fixture
def team(clock: StandingClock) -> RequestContext:
    desk = RequestContext("the team's server", clock, team=True)
    desk.store = memory_store(clock)
    return desk


def at_the_door(desk: RequestContext) -> TestClient:
    return TestClient(
        make_app(desk), base_url=ADDRESS, raise_server_exceptions=False,
        headers={"origin": ADDRESS, "x-csrf": desk.login_csrf},
    )  # fmt: skip


def logged_in(desk: RequestContext, name: str = "lead", **more: str) -> TestClient:
    client = at_the_door(desk)
    before = set(desk.sessions)
    client.post("/login", data={"name": name, "password": WORDS, **more})
    (new,) = set(desk.sessions) - before
    client.headers["x-csrf"] = desk.sessions[new].csrf
    return client


def first(desk: RequestContext) -> TestClient:
    return logged_in(desk, again=WORDS, token=desk.token)


def test_the_first_account_belongs_to_who_started_the_app(team: RequestContext) -> None:
    """Not to who comes first: the word printed at the start is asked for."""
    client = at_the_door(team)
    assert client.get("/players").url.path == "/login"
    refused = client.post("/login", data={"name": "lead", "password": WORDS, "again": WORDS, "token": "x"})
    assert (refused.status_code, team.sessions) == (422, {})
    assert "where the app was started" in refused.text
    assert first(team).get("/players").url.path == "/players"


def test_the_address_with_a_token_opens_nothing_here(team: RequestContext) -> None:
    assert at_the_door(team).get(f"/players?start={team.token}").url.path == "/login"


def test_a_wrong_password_and_an_unknown_name_are_told_alike(team: RequestContext) -> None:
    first(team)
    told = [
        at_the_door(team).post("/login", data={"name": name, "password": "wrong but long enough"})
        for name in ("lead", "nobody")
    ]
    assert {answer.status_code for answer in told} == {422}
    assert len(team.sessions) == 1


def test_a_session_ends_when_left_alone(team: RequestContext, clock: StandingClock) -> None:
    client = first(team)
    clock.go_on(minutes=19)
    assert client.get("/players").url.path == "/players"
    clock.go_on(minutes=21)
    assert client.get("/players").url.path == "/login"


def test_a_reader_looks_and_changes_nothing_and_a_closed_account_is_out_at_once(team: RequestContext) -> None:
    lead = first(team)
    lead.post("/accounts", data={"name": "visitor", "role": "reader", "password": WORDS, "again": WORDS})
    reader = logged_in(team, "visitor")
    assert reader.get("/players").status_code == 200
    assert "Add a player" not in reader.get("/players").text
    assert reader.post("/players", data={"code": "R4"}).status_code == 403
    assert "account opened" in lead.get("/trail").text or "visitor" in lead.get("/trail").text
    assert lead.post("/accounts/close", data={"name": "lead"}).status_code == 422
    lead.post("/accounts/close", data={"name": "visitor"})
    assert reader.get("/players").url.path == "/login"


def test_the_look_is_ones_own(team: RequestContext) -> None:
    """Set by one, kept for the next time, and not seen by another."""
    lead = first(team)
    lead.post("/settings", data={"light": "dark"})
    lead.post("/accounts", data={"name": "visitor", "role": "practitioner", "password": WORDS, "again": WORDS})
    lead.post("/logout")
    assert 'data-look="dark"' in logged_in(team).get("/players").text
    assert 'data-look="auto"' in logged_in(team, "visitor").get("/players").text
