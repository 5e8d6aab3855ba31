"""Every page in a real browser: no fault that axe finds, in each look, wide and narrow; nothing from elsewhere."""

from __future__ import annotations

import tomllib

import pytest
from tests.web.conftest import StandingClock, serving
from tests.web.test_loans import KIT

from browser import Visit, violations
from stickwright.model.kit import Kit
from stickwright.store.consents import give_consent
from stickwright.store.documents import save_document
from stickwright.store.loans import give_back, lend
from stickwright.store.opening import memory_store
from stickwright.store.players import add_player
from stickwright.web.request_context import RequestContext

WORDS = "kettle orbit mossy lantern nine"
LEAST_PX = 44
SMALL = """() => {
    const inputs = "main input:not([type=hidden]):not([type=radio]):not([type=checkbox])";
    return [...document.querySelectorAll(`main button, main .button, ${inputs}, main select, header a, header button`)]
        .filter(e => e.getClientRects().length && e.getBoundingClientRect().height < 43.5)
        .map(e => e.outerHTML.slice(0, 90));
}"""

pytestmark = pytest.mark.usefixtures("each_plan_once")


def looked_at(visit: Visit, path: str) -> None:
    """The page that is shown has no fault, in any look and width."""
    page = visit.page
    for scheme, contrast, width in (
        ("light", "no-preference", 1280),
        ("dark", "no-preference", 640),
        ("light", "more", 320),
    ):
        page.emulate_media(color_scheme=scheme, contrast=contrast)  # type: ignore[arg-type]
        page.set_viewport_size({"width": width, "height": 800})
        assert violations(page) == [], f"{path} {scheme} {width}"
        assert page.evaluate("document.documentElement.scrollWidth") <= width, f"{path} is wider than {width}"
        assert page.evaluate(SMALL) == [], f"{path}: targets below {LEAST_PX} px"
    page.emulate_media(color_scheme="light", contrast="no-preference")
    page.set_viewport_size({"width": 1280, "height": 900})
    assert page.locator("h1").count() == 1, path


@pytest.mark.slow
def test_every_page_by_keyboard_and_eye(visit: Visit, served: str) -> None:
    """From the first start to erasing: each page is scanned as it is met, its errors included."""
    page, home = visit.page, served.split("?")[0].rstrip("/")
    page.goto(served)
    looked_at(visit, "start")
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.textContent") == "Skip to content"
    page.fill("#passphrase", "hello")
    page.click("button:has-text('Create records')")
    looked_at(visit, "start, refused")
    page.fill("#passphrase", WORDS)
    page.fill("#again", WORDS)
    page.keyboard.press("Enter")
    page.wait_for_url("**/players")
    looked_at(visit, "players, none yet")
    page.fill("#code", "R4")
    page.keyboard.press("Enter")
    page.wait_for_url("**/consent")
    looked_at(visit, "consent, in memory")
    page.click("button:has-text('Record consent')")
    looked_at(visit, "consent, refused")
    page.check("#scope-2")
    page.select_option("#given_by", "player")
    page.click("button:has-text('Record consent')")
    page.wait_for_url("**/players/R4")
    looked_at(visit, "player, no visit")
    page.click("text=Begin the first visit")
    page.wait_for_url("**/visits/*")
    looked_at(visit, "visit")
    for path in (
        "/players",
        "/players/R4",
        "/players/R4/consent",
        "/players/R4/erase",
        "/import",
        "/settings",
        "/backup",
        "/nowhere",
    ):
        page.goto(home + path)
        looked_at(visit, path)
    page.click("button:has-text('Lock')")
    looked_at(visit, "locked")
    page.click("button:has-text('Look round')")
    page.wait_for_url("**/demo")
    looked_at(visit, "demo")
    page.click("text=K7")
    looked_at(visit, "the demo's player")
    assert all(asked.startswith((home, "data:")) for asked in visit.asked_for), visit.asked_for
    wrong = [words for words in visit.errors if "422" not in words and "404" not in words]
    assert wrong == []


@pytest.mark.slow
def test_kit_on_loan_by_eye_and_touch(visit: Visit, served: str, desk: RequestContext) -> None:
    """What is out, late and back, and a day that was refused: on the page of all loans and on the player's."""
    page, home = visit.page, served.split("?")[0].rstrip("/")
    page.goto(served)
    page.fill("#passphrase", WORDS)
    page.fill("#again", WORDS)
    page.keyboard.press("Enter")
    page.wait_for_url("**/players")
    with_loans(desk)
    page.goto(f"{home}/loans")
    looked_at(visit, "/loans")
    page.fill("#longer-1", "2026-01-01")
    page.click("button:has-text('Extend the loan of ash')")
    page.wait_for_selector("#problems")
    looked_at(visit, "/loans, refused")
    page.goto(f"{home}/players/R4")
    looked_at(visit, "/players/R4, with loans")
    page.fill("#longer-1", "2026-01-01")
    page.click("button:has-text('Extend the loan of ash')")
    page.wait_for_selector("#problems")
    assert page.url == f"{home}/players/R4/loans/1/longer"
    looked_at(visit, "/players/R4/loans, refused")
    page.fill("#longer-1", "2026-05-30")
    page.click("button:has-text('Extend the loan of ash')")
    page.wait_for_url("**/players/R4")
    assert page.locator("text=Loan of ash to R4 extended to 30 May 2026.").count()


def with_loans(desk: RequestContext) -> None:
    """R4 has a stick for too long already, and a second one came back."""
    store = desk.kept()
    save_document(store, None, "kit.toml", KIT, who="ot")
    player = add_player(store, "R4", who="ot").id
    give_consent(
        store, player, given_on="2026-03-01", until="2027-03-01", given_by="the player", scope=("keep",), who="ot"
    )
    kit = Kit.model_validate(tomllib.loads(KIT.decode()))
    lend(store, player, "ash", kit=kit, on_date="2026-03-02", due="2026-03-08", note="by post", who="ot")
    back = lend(store, player, "chin cup", kit=kit, on_date="2026-03-02", due="2026-03-20", who="ot")
    give_back(store, back.loan, on_date="2026-03-05", who="ot", note="cap worn")


@pytest.mark.slow
def test_the_pages_of_a_team(visit: Visit, clock: StandingClock) -> None:
    """The way in, accounts and trail are scanned like all others."""
    desk = RequestContext("the team's server", clock, team=True)
    desk.store = memory_store(clock)
    with serving(desk) as printed:
        page, home = visit.page, printed.rstrip("/")
        page.goto(home)
        looked_at(visit, "first account")
        page.fill("#name", "lead")
        page.fill("#password", WORDS)
        page.fill("#again", WORDS)
        page.fill("#token", desk.token)
        page.keyboard.press("Enter")
        page.wait_for_url("**/players")
        for path in ("/accounts", "/trail"):
            page.goto(home + path)
            looked_at(visit, path)
        page.click("button:has-text('Log out')")
        looked_at(visit, "login")
    desk.close()
