"""The page of a plan in a real browser: the answer on the first screen, everything else folded, and found again."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from tests.web.conftest import demo_with_plan, serving

from browser import Visit, violations
from stickwright.web.request_context import RequestContext

TALLEST_PX = 2500
HEIGHT = "document.documentElement.scrollHeight"
OPEN = "[...document.querySelectorAll('details.fold[open]')].map(one => one.id)"


@pytest.fixture
def plan_page(visit: Visit, desk: RequestContext) -> Iterator[str]:
    """Address of a kept plan of the demo, with its browser let in."""
    demo_with_plan(desk)
    assert desk.store is not None
    with serving(desk) as started:
        visit.page.goto(started)
        yield f"{started.split('?')[0].rstrip('/')}/visits/1/plans/1"
    desk.store.close()


def fold_of(visit: Visit, name: str) -> str:
    """What a folded part says once it is open, in small letters."""
    return visit.page.locator(f"#{name}").inner_text().lower()


def test_first_screen_and_folds(visit: Visit, plan_page: str) -> None:
    """Short at once; every action with its bars; parts open by key, by link and by the address, and are open on paper."""
    page = visit.page
    page.goto(plan_page)
    assert page.evaluate(HEIGHT) < TALLEST_PX
    assert page.evaluate(OPEN) == []
    for action in ("move", "look", "dig", "place a block", "swap tool", "jump", "menu"):
        assert page.get_by_role("rowheader", name=action, exact=True).is_visible()
    assert page.locator("text=Stop for pain").first.is_visible()
    assert page.evaluate(
        "[...document.querySelectorAll('summary')].every(e => !e.getClientRects().length || e.offsetHeight >= 44)"
    )
    assert violations(page) == []

    page.locator("#tuning > summary").focus()
    page.keyboard.press("Enter")
    page.wait_for_url("**#tuning")
    page.locator("#assumed > summary").focus()
    page.keyboard.press("Space")
    page.wait_for_url("**#tuning,assumed")
    page.reload()
    assert page.evaluate(OPEN) == ["tuning", "assumed"]
    assert "to confirm" in fold_of(visit, "assumed")

    page.goto(plan_page)
    page.reload()
    page.click("a[href='#mounts']")
    page.wait_for_selector("#mounts[open]")
    page.wait_for_url("**#mounts")
    page.goto("about:blank")  # a fresh visit, not a step within the page, which leaves open what is open
    page.goto(f"{plan_page}#assumed")
    page.wait_for_selector("#assumed[open]")
    assert page.evaluate(OPEN) == ["assumed"]

    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    assert page.evaluate("[...document.querySelectorAll('details')].every(one => one.open)")
    assert violations(page) == []
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    assert page.evaluate(OPEN) == ["assumed"]
    assert visit.errors == []


def test_on_a_telephone(visit: Visit, plan_page: str) -> None:
    """As wide as the screen and no wider; the picture's writing can be read; nothing that axe finds."""
    page = visit.page
    page.set_viewport_size({"width": 390, "height": 844})
    page.goto(plan_page)
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    assert page.evaluate(OPEN) == []
    assert violations(page) == []
