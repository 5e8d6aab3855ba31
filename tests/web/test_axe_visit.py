"""Every page of a visit in a real browser: no fault that axe finds, in three looks; by keyboard; nothing from elsewhere."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from tests.web.scripted import PAD

from browser import Visit, violations
from stickwright.web.request_context import RequestContext

if TYPE_CHECKING:
    from playwright.sync_api import Page

LOOKS = (("light", "no-preference", 1280), ("dark", "no-preference", 640), ("light", "more", 320))
LEAST_PX = 44
SMALL = """() => {
    const inputs = "main input:not([type=hidden]):not([type=radio]):not([type=checkbox])";
    return [...document.querySelectorAll(`main button, main .button, ${inputs}, main select, main textarea, main summary, header a, nav a`)]
        .filter(e => e.getClientRects().length && e.getBoundingClientRect().height < 43.5)
        .map(e => e.outerHTML.slice(0, 90));
}"""
STOPS = """() => [...document.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex='0']")]
    .filter(e => e.type !== "hidden" && !e.disabled && e.checkVisibility())
    .filter(e => e.tagName === "SUMMARY" || !e.closest("details:not([open])")).length"""
BESIDE = """() => {
    const seen = [...document.querySelectorAll("input[type=radio]")].filter(e => e.checkVisibility() && !e.closest("details:not([open])"));
    return seen.length - new Set(seen.map(e => e.name)).size;
}"""
FOCUSED = """() => {
    const e = document.activeElement, box = e.getBoundingClientRect(), look = getComputedStyle(e);
    const mark = e.querySelector("path");
    const outlined = look.outlineStyle !== "none" && parseFloat(look.outlineWidth) >= 2;
    const stroked = mark !== null && parseFloat(getComputedStyle(mark).strokeWidth) >= 3;
    return {
        body: e === document.body, name: e.outerHTML.slice(0, 80), seen: outlined || stroked,
        inside: box.bottom > 0 && box.top < innerHeight,
    };
}"""
PATHS = (
    "", "room", "sites", "sites/edit/site/0", "sites/edit/site/new", "readings", "measure", "kit", "kit/edit/stick/0",
    "game", "game/edit/action/0", "hub", "plan", "mounts", "sheet", "compare", "files", "files/player.toml",
)  # fmt: skip

pytestmark = pytest.mark.usefixtures("each_plan_once")


def faults(page: Page, what: str) -> list[str]:
    """What is wrong with a page in any look."""
    found: list[str] = []
    for scheme, contrast, width in LOOKS:
        page.emulate_media(color_scheme=scheme, contrast=contrast)  # type: ignore[arg-type]
        page.set_viewport_size({"width": width, "height": 800})
        if width == 320:
            page.evaluate("document.documentElement.dataset.size = 'larger'")
        here = f"{what} {scheme} {width}"
        found += [f"{here}: {one}" for one in violations(page)]
        if page.evaluate("document.documentElement.scrollWidth") > width:
            found.append(f"{here}: wider than the window")
        found += [f"{here}: below {LEAST_PX} px: {one}" for one in page.evaluate(SMALL)]
    page.evaluate("document.documentElement.dataset.size = 'usual'")
    page.emulate_media(color_scheme="light", contrast="no-preference")
    page.set_viewport_size({"width": 1280, "height": 900})
    return found


@pytest.fixture
def here(visit: Visit, served: str) -> str:
    """Address of the demo's visit, open in the browser, with a stick in the page."""
    visit.page.set_default_timeout(30_000)
    visit.page.context.add_init_script(PAD)
    visit.page.goto(served)
    visit.page.click("button:has-text('Look round')")
    visit.page.wait_for_url("**/demo")
    return served.split("?")[0] + "visits/d1"


@pytest.mark.slow
def test_every_page_of_a_visit_in_three_looks(visit: Visit, here: str) -> None:
    """Empty where there is no plan yet, with what was refused, while a task runs: zero faults, nothing asked of elsewhere."""
    page = visit.page
    found: list[str] = []
    for path in PATHS:
        page.goto(f"{here}/{path}".rstrip("/"))
        found += faults(page, path or "visit")
    page.goto(f"{here}/readings")
    page.fill("input[name='force.0']", "forty")
    page.click("text=Save readings")
    page.wait_for_selector("[aria-invalid]")
    found += faults(page, "readings, refused")
    page.goto(f"{here}/measure")
    page.check("input[name=source][value=browser]")
    page.click("button[name=task][value=push]")
    page.wait_for_selector("[data-do=start]:enabled")
    found += faults(page, "live, waiting")
    page.click("[data-do=start]")
    page.wait_for_selector("#known:visible")
    found += faults(page, "live, running")
    assert not found, "\n".join(found)
    home = here.split("visits")[0]
    assert [one for one in visit.asked_for if not one.startswith((home, home.replace("http", "ws"), "data:"))] == []
    assert [one for one in visit.errors if "422" not in one] == []


@pytest.mark.slow
def test_the_keyboard_reaches_everything_in_order(visit: Visit, here: str) -> None:
    """Tab goes through every control once, each with a mark that is seen and inside the window; 'Skip' comes first."""
    page = visit.page
    for path in ("measure", "readings", "sites/edit/site/0"):
        page.goto(f"{here}/{path}")
        stops = page.evaluate(STOPS)
        reached: list[str] = []
        for _ in range(stops + 40):
            page.keyboard.press("Tab")
            now = page.evaluate(FOCUSED)
            if now["body"]:
                break
            assert now["seen"], f"{path}: no mark on {now['name']}"
            assert now["inside"], f"{path}: out of sight: {now['name']}"
            reached.append(now["name"])
        assert "Skip" in reached[0] or "skip" in reached[0]
        beside = page.evaluate(BESIDE)  # of one choice the arrows go on, not Tab
        assert len(reached) == stops - beside, f"{path}: {len(reached)} of {stops}"


@pytest.mark.slow
def test_stop_is_always_in_the_window_and_twice_the_size_fits(visit: Visit, here: str, desk: RequestContext) -> None:
    """On a small screen, scrolled to the end, 'Stop' is there; at 200 % zoom (half the width) nothing runs over the edge."""
    page = visit.page
    page.goto(f"{here}/measure")
    page.check("input[name=source][value=browser]")
    page.click("button[name=task][value=rest]")
    page.wait_for_selector("[data-do=start]:enabled")
    page.click("[data-do=start]")
    page.wait_for_selector("[data-do=stop]:enabled")
    for width, height in ((640, 450), (1280, 700), (320, 500)):
        page.set_viewport_size({"width": width, "height": height})
        for place in ("0", "document.getElementById('live').scrollHeight"):
            page.evaluate(f"scrollTo(0, {place})")
            box = page.locator("[data-do=stop]").bounding_box()
            assert box is not None
            assert box["y"] < height, (width, place, box)
            assert box["y"] + box["height"] > 40, (width, place, box)
        assert page.evaluate("document.documentElement.scrollWidth") <= width
    page.keyboard.press("Escape")
    page.wait_for_selector("#live[data-phase=stopped]")
    assert desk.demo is not None
