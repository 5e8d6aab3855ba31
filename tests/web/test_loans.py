"""Kit on loan, as it is lent and taken back on the pages."""

from __future__ import annotations

import re

import pytest
from starlette.testclient import TestClient
from tests.web.conftest import StandingClock
from tests.web.test_pages import WORDS, begin, consent, text

from stickwright.store.documents import save_document
from stickwright.web.request_context import RequestContext

KIT = b"""
[[stick]]
name = "ash"
start_force_n = 0.1
full_force_n = 0.5
travel_mm = 10
in_stock = 1
[[topper]]
name = "chin cup"
form = "cup"
height_mm = 10
single_player = true
in_stock = 1
"""


@pytest.fixture
def shelf(client: TestClient, desk: RequestContext) -> TestClient:
    """Records open, a kit on the shelf, and two players who are kept."""
    client.post("/start", data={"passphrase": WORDS, "again": WORDS})
    save_document(desk.kept(), None, "kit.toml", KIT, who="ot")
    for code in ("R4", "S2"):
        consent(client, begin(client, code))
    return client


def lent(client: TestClient, at: str, item: str, **more: str) -> object:
    return client.post(at, data={"item": item, "on_date": "2026-03-09", "due": "2026-03-20", "note": ""} | more)


def test_lent_overdue_back_and_cleaned(shelf: TestClient, clock: StandingClock) -> None:
    """Each step on the page of the player or of all loans, with its condition; each can be taken back."""
    page = lent(shelf, "/players/R4/loans", "ash")
    assert "ash lent to R4, due 20 Mar 2026." in text(page.text)
    (key,) = re.findall(r'name="key" value="([^"]+)"', page.text)
    assert "Nothing is on loan." in text(shelf.post("/undo", data={"key": key}).text)
    assert "ash R4 9 Mar 2026 20 Mar 2026" in text(lent(shelf, "/loans", "ash", code="R4").text)
    assert "none left of 1; on loan: R4 (due 20 Mar 2026)" in text(lent(shelf, "/players/S2/loans", "ash").text)
    clock.go_on(days=12)
    shelf.post("/start", data={"passphrase": WORDS})
    assert "Overdue ash: lent to R4, due 20 Mar 2026" in text(shelf.get("/loans").text)
    (number,) = re.findall(r'action="/players/R4/loans/(\d+)/back"', shelf.get("/players/R4").text)
    back = shelf.post(f"/players/R4/loans/{number}/back", data={"note": "cap worn"})
    assert "ash returned by R4. Has it been cleaned?" in text(back.text)
    assert "cap worn" in back.text
    assert "ash cleaned." in text(shelf.post(f"/loans/{number}/cleaned", data={}).text)
    assert shelf.post(f"/players/S2/loans/{number}/back", data={}).status_code == 404


def test_a_part_for_one_player_is_refused_with_the_sentence_of_the_records(shelf: TestClient) -> None:
    """The cup that touched R4's chin does not go to S2, lent or back."""
    lent(shelf, "/players/R4/loans", "chin cup")
    refused = lent(shelf, "/players/S2/loans", "chin cup", note="by post")
    assert refused.status_code == 422
    assert "it touches the face or mouth and stays with one player" in text(refused.text)
    assert 'value="by post"' in refused.text


@pytest.mark.parametrize("at", ["/loans", "/players/R4/loans"])
def test_it_may_stay_longer(shelf: TestClient, at: str) -> None:
    """The day proposed is weeks after it was due; it can be taken back; a wrong day is told beside its own field, as typed."""
    page = lent(shelf, at, "ash", code="R4")
    (number,) = re.findall(rf'action="{at}/(\d+)/longer"', page.text)
    assert f'id="longer-{number}" name="due" type="date" value="2026-05-01"' in page.text
    refused = shelf.post(f"{at}/{number}/longer", data={"due": "2026-02-30"})
    assert refused.status_code == 422
    assert f'<a href="#longer-{number}">due: found 2026-02-30, expected a date' in refused.text
    assert f'id="longer-{number}" name="due" type="date" value="2026-02-30" aria-invalid="true"' in refused.text
    later = shelf.post(f"{at}/{number}/longer", data={"due": "2026-04-10"})
    assert "Loan of ash to R4 extended to 10 Apr 2026." in text(later.text)
    assert "ash R4 9 Mar 2026 10 Apr 2026" in text(later.text)
    (key,) = re.findall(r'name="key" value="([^"]+)"', later.text)
    assert "ash R4 9 Mar 2026 20 Mar 2026" in text(shelf.post("/undo", data={"key": key}).text)
