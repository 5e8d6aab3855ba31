"""The pages of players, visits, consent and settings, as a practitioner goes through them."""

from __future__ import annotations

import re
from html import unescape
from pathlib import Path

import pytest
from starlette.testclient import TestClient
from tests.web.conftest import StandingClock

from stickwright.web.request_context import RequestContext

WORDS = "kettle orbit mossy lantern nine"


def text(html: str) -> str:
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", html)).split())


@pytest.fixture
def unlocked(client: TestClient) -> TestClient:
    client.post("/start", data={"passphrase": WORDS, "again": WORDS})
    return client


def begin(client: TestClient, code: str) -> str:
    return client.post("/players", data={"code": code}).url.path


def consent(client: TestClient, at: str, **changed: object) -> str:
    given = {
        "scope": ["measure", "keep"],
        "given_on": "2026-03-09",
        "until": "2027-03-09",
        "given_by": "player",
    } | changed
    return client.post(at, data=given).url.path


def test_first_start_asks_for_a_passphrase_that_is_worth_it(client: TestClient, desk: RequestContext) -> None:
    """Refused with the very sentence, and never sent back; then the records are made, and open with it again."""
    refused = client.post("/start", data={"passphrase": "hello", "again": "hellp"})
    assert refused.status_code == 422
    assert "This is too easy to guess." in text(refused.text)
    assert "hello" not in refused.text
    assert not desk.place.exists()  # type: ignore[union-attr]
    made = client.post("/start", data={"passphrase": WORDS, "again": WORDS})
    assert made.url.path == "/players"
    assert "Strong. Write it down" in text(made.text)
    client.post("/lock")
    assert desk.store is None
    assert client.get("/players").url.path == "/start"
    assert client.post("/start", data={"passphrase": WORDS, "then": "/settings"}).url.path == "/settings"


def test_a_wrong_passphrase_says_so_and_slows_down(unlocked: TestClient, clock: StandingClock) -> None:
    unlocked.post("/lock")
    for _ in range(3):
        assert "does not open these records" in text(unlocked.post("/start", data={"passphrase": "x"}).text)
    assert "Wait 2 seconds" in text(unlocked.post("/start", data={"passphrase": WORDS}).text)
    clock.go_on(seconds=3)
    assert unlocked.post("/start", data={"passphrase": WORDS}).url.path == "/players"


@pytest.mark.parametrize("elsewhere", ["//evil.example/", "https://evil.example/", "evil"])
def test_after_unlocking_nobody_is_sent_elsewhere(unlocked: TestClient, elsewhere: str) -> None:
    unlocked.post("/lock")
    answer = unlocked.post("/start", data={"passphrase": WORDS, "then": elsewhere}, follow_redirects=False)
    assert answer.headers["location"] == "/players"


def test_it_locks_itself_and_loses_nothing_that_was_typed(
    unlocked: TestClient, desk: RequestContext, clock: StandingClock
) -> None:
    """Twenty minutes without anybody; the entry that comes after is held until the passphrase is given."""
    clock.go_on(minutes=19)
    assert unlocked.get("/players").url.path == "/players"
    clock.go_on(minutes=21)
    assert desk.lock_if_idle()
    assert unlocked.post("/players", data={"code": "R4"}).url.path == "/start"
    held = unlocked.post("/start", data={"passphrase": WORDS})
    assert 'action="/players"' in held.text
    assert 'name="code" value="R4"' in held.text


@pytest.mark.parametrize("name", ["Anna Smith", "anna@example.org", "2011-04-03", ""])
def test_a_name_is_no_code(unlocked: TestClient, name: str) -> None:
    answer = unlocked.post("/players", data={"code": name})
    assert answer.status_code == 422
    assert 'aria-invalid="true"' in answer.text


def test_without_consent_nothing_reaches_the_file(unlocked: TestClient, desk: RequestContext) -> None:
    """In memory, said on each page; the list of kept players stays empty."""
    at = begin(unlocked, "R4")
    assert at == "/players/m~R4/consent"
    page = unlocked.post("/players/m~R4/visits", data={})
    assert page.url.path == "/visits/m1"
    for path in ("/players/m~R4", "/visits/m1", at):
        assert "Not saved. This player's data" in text(unlocked.get(path).text)
    assert "R4" not in text(unlocked.get("/players/R4").text) or unlocked.get("/players/R4").status_code == 404
    with desk.kept().read() as connection:
        assert connection.exec_driver_sql("select count(*) from player").scalar() == 0


def test_no_tick_is_set_beforehand_and_all_that_is_missing_is_said_at_once(unlocked: TestClient) -> None:
    at = begin(unlocked, "R4")
    assert " checked" not in unlocked.get(at).text
    answer = unlocked.post(at, data={"given_on": "2026-03-10", "until": "2026-03-01", "explained": "with pictures"})
    assert answer.status_code == 422
    assert answer.text.count('<p class="problem"') == 4
    assert 'value="with pictures"' in answer.text


def test_keep_after_all_moves_the_player_with_the_visits(unlocked: TestClient) -> None:
    at = begin(unlocked, "R4")
    unlocked.post("/players/m~R4/visits", data={})
    assert consent(unlocked, at) == "/players/R4"
    assert "1 visit, the last on 9 Mar 2026." in text(unlocked.get("/players/R4").text)
    assert unlocked.get("/players/m~R4").status_code == 404


def test_when_the_consent_ends_nothing_is_added_and_today_goes_on_without(
    unlocked: TestClient, clock: StandingClock
) -> None:
    at = begin(unlocked, "R4")
    unlocked.post("/players/m~R4/visits", data={})
    consent(unlocked, at)
    clock.go_on(days=366)
    unlocked.post("/start", data={"passphrase": WORDS})
    visit = re.findall(r"/visits/\d+", unlocked.get("/players/R4").text)[0]
    assert "Read-only." in text(unlocked.get(visit).text)
    refused = unlocked.post("/players/R4/visits", data={})
    assert refused.status_code == 422
    assert "There is no valid consent to keep new entries." in text(refused.text)
    assert unlocked.post("/players/R4/unkept").url.path == "/players/m~R4"


def test_erasing_shows_first_and_wants_the_code(unlocked: TestClient) -> None:
    at = begin(unlocked, "R4")
    consent(unlocked, at)
    assert "Nothing is kept." in text(unlocked.get("/players/R4/erase").text)
    assert "Nothing was erased" in text(unlocked.post("/players/R4/erase", data={"code": "R5"}).text)
    gone = unlocked.post("/players/R4/erase", data={"code": "r4"})
    assert "R4 is erased" in text(gone.text)
    assert unlocked.get("/players/R4").status_code == 404


def test_after_erasing_no_page_that_is_still_open_changes_anything(unlocked: TestClient, desk: RequestContext) -> None:
    """The next player may get the erased one's numbers: an old tab must not write into somebody else's visit."""
    at = begin(unlocked, "R4")
    consent(unlocked, at)
    changed = unlocked.post("/settings", data={"light": "dark", "who": "OT"})
    (key,) = re.findall(r'name="key" value="([^"]+)"', changed.text)
    unlocked.post("/players/R4/erase", data={"code": "R4"})
    assert unlocked.post("/players", data={"code": "R5"}).status_code == 403
    (session,) = desk.sessions.values()
    unlocked.headers["x-csrf"] = session.csrf
    assert "already been undone" in text(unlocked.post("/undo", data={"key": key}).text)


def test_what_was_changed_can_be_taken_back_and_brought_again(unlocked: TestClient, desk: RequestContext) -> None:
    """Undo, and undo of that; the button works once."""
    page = unlocked.post("/settings", data={"light": "dark", "who": "OT"})
    for wanted in ("auto", "dark"):
        (key,) = re.findall(r'name="key" value="([^"]+)"', page.text)
        page = unlocked.post("/undo", data={"key": key})
        assert desk.preferences.light == wanted
    assert "already been undone" in text(unlocked.post("/undo", data={"key": key}).text)


def test_what_is_typed_is_shown_as_text(unlocked: TestClient) -> None:
    for path, field in (("/players?search=", ""), ("/import", "folder"), ("/backup", "file")):
        evil = '"><script>alert(1)</script>'
        answer = unlocked.post(path, data={field: evil}) if field else unlocked.get(path + evil)
        assert "<script>alert" not in answer.text, path


def test_a_backup_wants_all_its_folders_named(unlocked: TestClient) -> None:
    """A name alone would lie wherever the app was started, and nobody would find it again."""
    answer = unlocked.post("/backup", data={"file": "records.backup"})
    assert answer.status_code == 422
    assert "with its full path" in text(answer.text)
    assert not Path("records.backup").exists()


def test_a_visit_shows_its_steps_and_one_next(unlocked: TestClient) -> None:
    begin(unlocked, "R4")
    page = unlocked.post("/players/m~R4/visits", data={"on_date": "2026-03-08"})
    assert text(page.text).count("nothing yet") >= 8
    assert page.text.count('class="button"') == 1
    assert 'class="button" href="/visits/m1/sites"' in page.text


def test_the_demo_needs_no_passphrase(client: TestClient, desk: RequestContext) -> None:
    """Everything but its plan is there, nothing is kept, and its player cannot be mixed up with one's own."""
    page = client.post("/demo")
    assert "Meet K7" in text(page.text)
    visit = re.findall(r"/visits/d\d+", page.text)[0]
    shown = client.get(visit)
    assert "right index: 8 of 8 directions, 3 times each" in text(shown.text)
    assert "Make the plan" in text(shown.text)
    assert desk.store is None
    assert client.get("/players/K7").url.path == "/start"
