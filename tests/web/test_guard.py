"""The door: who may ask, from where, how much at once, and what a browser may do with the answer."""

from __future__ import annotations

import asyncio
from concurrent.futures import ThreadPoolExecutor

import pytest
from starlette.routing import Route
from starlette.testclient import TestClient
from starlette.types import Message
from starlette.websockets import WebSocketDisconnect

from stickwright.web.app import make_app
from stickwright.web.guard import BODY_BYTES, policy
from stickwright.web.request_context import RequestContext

HOME = "http://127.0.0.1:8123"


def test_without_the_address_of_the_start_nobody_comes_in(stranger: TestClient, desk: RequestContext) -> None:
    """Another user of this machine reaches the port, and gets nothing but the program's own files."""
    for path in ("/", "/start", "/players", "/visits/1", "/nowhere", "/?start=", "/?start=" + "x" * 32):
        assert stranger.get(path).status_code == 403, path
    assert stranger.get("/static/style.css").status_code == 200
    assert desk.sessions == {}


def test_the_token_becomes_a_cookie_that_no_other_site_can_use(stranger: TestClient, desk: RequestContext) -> None:
    answer = stranger.get(f"/players?search=K&start={desk.token}", follow_redirects=False)
    cookie = answer.headers["set-cookie"].lower()
    assert (answer.status_code, answer.headers["location"]) == (303, "/players?search=K")
    assert "httponly" in cookie
    assert "samesite=strict" in cookie
    assert desk.token.lower() not in cookie
    assert cookie.startswith("stickwright-8123=")


@pytest.mark.parametrize(
    "host", ["evil.example", "evil.example:8123", "127.0.0.1:9999", "127.0.0.1.evil.example", "", "[::1]:8123"]
)
def test_a_foreign_name_that_points_here_is_refused(client: TestClient, host: str) -> None:
    """DNS rebinding: the browser would send the request here, under a name of somebody else."""
    assert client.get("/start", headers={"host": host}).status_code == 400


@pytest.mark.parametrize(
    "headers",
    [
        {"origin": "http://evil.example"},
        {"origin": "null"},
        {"origin": "http://127.0.0.1:9999"},
        {"origin": HOME, "sec-fetch-site": "cross-site"},
        {"origin": HOME, "sec-fetch-site": "same-site"},
        {"origin": ""},
    ],
)
def test_another_page_cannot_change_anything(client: TestClient, headers: dict[str, str]) -> None:
    """Even with the cookie and the token of the form."""
    assert client.post("/lock", headers=headers).status_code == 403


def test_a_form_without_its_token_is_refused(client: TestClient) -> None:
    for token in ("", "x", "ä"):
        answer = client.post("/lock", headers={"x-csrf": ""}, data={"csrf": token})
        assert answer.status_code == 403
        assert "earlier start" in answer.text
    assert client.post("/lock", follow_redirects=False).status_code == 303


def test_every_answer_says_what_a_browser_may_do(client: TestClient) -> None:
    """Pages, refusals, files, faults: nothing from elsewhere, nothing inline, no frame, nothing kept in the browser's store."""
    answers = [
        client.get("/start"),
        client.get("/nowhere"),
        client.get("/static/style.css"),
        client.post("/lock", headers={"x-csrf": ""}),
    ]
    for answer in answers:
        said = answer.headers["content-security-policy"]
        assert said == policy()
        assert "unsafe" not in said
        assert answer.headers["x-content-type-options"] == "nosniff"
        assert answer.headers["cache-control"] == "no-store"
        assert answer.headers["cross-origin-resource-policy"] == "same-origin"
        assert "server" not in answer.headers


def test_more_than_a_form_needs_is_refused_before_it_is_read(client: TestClient, desk: RequestContext) -> None:
    """By the length that is declared, and by the bytes that come when the length lies."""
    assert client.post("/lock", content=b"x" * (BODY_BYTES + 1)).status_code == 413
    assert client.post("/lock", content=b"", headers={"content-length": "9" * 30}).status_code == 413
    taken: list[int] = []

    async def endless() -> Message:
        taken.append(65536)
        return {"type": "http.request", "body": b"x" * 65536, "more_body": True}

    answers: list[Message] = []

    async def answer(message: Message) -> None:
        answers.append(message)

    (session,) = desk.sessions.values()
    headers = {
        "host": "127.0.0.1:8123",
        "origin": HOME,
        "cookie": f"stickwright-8123={session.id}",
        "content-length": "5",
    }
    scope = {
        "type": "http", "method": "POST", "path": "/lock", "raw_path": b"/lock", "query_string": b"", "scheme": "http",
        "server": ("127.0.0.1", 8123), "headers": [(name.encode(), value.encode()) for name, value in headers.items()],
    }  # fmt: skip
    asyncio.run(make_app(desk)(scope, endless, answer))
    assert answers[0]["status"] == 413
    assert sum(taken) <= BODY_BYTES + 2 * 65536


@pytest.mark.parametrize(
    ("kind", "body"),
    [
        ("multipart/form-data", b"x"),
        ("multipart/form-data; boundary=", b"x"),
        ("multipart/form-data; boundary=a", b"--a\r\nContent-Disposition: form-data\r\n\r\n"),
        ("multipart/form-data; boundary=a", b"--a\r\nContent-Disposition: form-data; name=csrf\r\n\r\n"),
        ("application/x-www-form-urlencoded", b"a=1&" * 3000),
        ("application/x-www-form-urlencoded", b"%ff%fe=%00"),
        (
            "multipart/form-data; boundary=a",
            b"".join(b'--a\r\nContent-Disposition: form-data; name="x"\r\n\r\n1\r\n' for _ in range(2100)),
        ),
    ],
)
def test_damaged_forms_are_refused_in_a_sentence(client: TestClient, kind: str, body: bytes) -> None:
    answer = client.post("/lock", content=body, headers={"content-type": kind}, follow_redirects=False)
    assert answer.status_code in (303, 400), answer.text


def test_a_reader_changes_nothing_on_any_page(desk: RequestContext) -> None:
    """Every address of the app that takes anything but a question is tried: 403 for a reader; and no GET route takes both."""
    app = make_app(desk)
    session = desk.admit("somebody", "reader")
    reader = TestClient(
        app, base_url=HOME, headers={"origin": HOME, "x-csrf": session.csrf}, cookies={"stickwright-8123": session.id}
    )
    routes = [route for route in app.routes if isinstance(route, Route) and route.methods]
    writing = [route for route in routes if route.methods - {"GET", "HEAD"}]
    assert len(writing) > 10
    for route in writing:
        assert not route.methods & {"GET", "HEAD"}, f"{route.path} both shows and changes"
        if route.path == "/logout":
            continue
        path = route.path.replace("{id}", "1").replace("{code}", "K1")
        path = path.split("{")[0] + "x" if "{" in path else path
        for method in route.methods:
            assert reader.request(method, path).status_code == 403, (method, path)


def test_sockets_are_guarded_like_pages(client: TestClient) -> None:
    for headers in ({"origin": "http://evil.example"}, {"origin": HOME, "cookie": ""}):
        with (
            pytest.raises(WebSocketDisconnect) as refused,
            client.websocket_connect("ws://127.0.0.1:8123/visits/1/live", headers=headers),
        ):
            raise AssertionError("it was let in")
        assert refused.value.code in (1008, 403)


def test_a_fault_of_ours_shows_nothing_of_itself(desk: RequestContext) -> None:
    app = make_app(desk)

    def broken(_: object) -> None:
        raise RuntimeError("a secret in a traceback")

    app.router.routes.insert(0, Route("/broken", broken))
    client = TestClient(app, base_url=HOME, raise_server_exceptions=False)
    client.get(f"/?start={desk.token}")
    answer = client.get("/broken")
    assert answer.status_code == 500
    assert "secret" not in answer.text
    assert "Nothing that was saved is lost" in answer.text
    assert answer.headers["content-security-policy"] == policy()


def test_many_at_once_share_one_desk(client: TestClient, desk: RequestContext) -> None:
    with ThreadPoolExecutor(8) as pool:
        codes = list(pool.map(lambda _: client.get("/start").status_code, range(40)))
    assert set(codes) == {200}
    assert len(desk.sessions) == 1
