"""The whole job in a real browser: from looking round to the export, readings by keyboard only, a stick in the page and one in
the server, with everything that goes wrong at a kitchen table."""

from __future__ import annotations

import itertools
import re
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
import pytest
from numpy.typing import NDArray
from tests.web.scripted import PAD

from browser import Visit, violations
from stickwright.store.documents import documents
from stickwright.store.opening import Store
from stickwright.store.recordings import recordings, samples_of
from stickwright.web.request_context import RequestContext

if TYPE_CHECKING:
    from playwright.sync_api import Page

PATIENCE_MS = 30_000
LOOK_MS = 50
Array = NDArray[np.float64]


def looking_round(visit: Visit, served: str) -> str:
    """The demo, laid out; the address of its visit."""
    page = visit.page
    page.set_default_timeout(PATIENCE_MS)
    page.goto(served)
    page.click("button:has-text('Look round')")
    page.wait_for_url("**/demo")
    return served.split("?")[0] + "visits/d1"


def ready(page: Page, here: str, source: str, task: str) -> None:
    """A task open, its stick found."""
    page.goto(f"{here}/measure")
    page.check(f"input[name=source][value={source}]")
    page.click(f"button[name=task][value={task}]")
    page.wait_for_selector("[data-do=start]:enabled")


def phase(page: Page, *wanted: str) -> None:
    page.wait_for_selector(", ".join(f"#live[data-phase={one}]" for one in wanted))


def kept(page: Page) -> int:
    """How many samples the page says are kept."""
    words = page.inner_text("#kept").replace(",", "").split()
    return int(words[0]) if words else 0


def kept_beyond(page: Page, count: int) -> int:
    """Wait until more are kept; asked from outside, since the page's policy lets no test's code in."""
    for _ in range(PATIENCE_MS // LOOK_MS):
        if (now := kept(page)) > count:
            return now
        page.wait_for_timeout(LOOK_MS)
    raise AssertionError(f"no more than {count} samples kept: {page.inner_text('#live')}")


def no_complaint(visit: Visit, served: str) -> None:
    """Nothing was asked of anybody but the app, and no script or console complained."""
    home = served.split("?")[0]
    sockets = home.replace("http:", "ws:")
    assert [one for one in visit.asked_for if not one.startswith((home, sockets, "data:", "blob:"))] == []
    assert [one for one in visit.errors if "422" not in one] == []


def runs(stored: Array, sent: Array) -> list[tuple[int, int]]:
    """Stored samples as stretches of what the page read; each must be bit for bit one of those, in order."""
    place = {value.tobytes(): number for number, value in enumerate(np.ascontiguousarray(sent))}
    numbers = [place[value.tobytes()] for value in np.ascontiguousarray(stored)]
    cuts = [0, *(k for k in range(1, len(numbers)) if numbers[k] != numbers[k - 1] + 1), len(numbers)]
    assert numbers == sorted(numbers)
    return [(numbers[start], numbers[end - 1]) for start, end in itertools.pairwise(cuts)]


@pytest.mark.slow
def test_a_stick_in_the_page(visit: Visit, served: str, desk: RequestContext) -> None:
    """Unplugged, plugged in, reloaded, stopped, gone on with, repeated: one recording, its time never falls, and every sample
    that the page was told is kept stands in the records, bit for bit as the page read it."""
    page = visit.page
    page.context.add_init_script(PAD)
    here = looking_round(visit, served)
    ready(page, here, "browser", "rest")
    assert page.locator("#devices button").first.inner_text() == "Scripted pad: left stick"
    page.click("[data-do=start]")
    phase(page, "asking", "resting")
    count = kept_beyond(page, 150)
    page.evaluate("scripted.unplug()")
    phase(page, "paused")
    assert "The stick was unplugged, so the task is paused." in page.inner_text("#notes")
    page.evaluate("scripted.plug()")
    phase(page, "asking", "resting")
    count = kept_beyond(page, count + 50)
    page.reload()
    page.wait_for_selector("#notes li:has-text('is plugged in')")
    phase(page, "asking", "resting")
    count = kept_beyond(page, count + 50)
    page.keyboard.press("Escape")
    phase(page, "stopped")
    page.click("[data-do=resume]")
    phase(page, "asking", "resting")
    count = kept_beyond(page, count + 50)
    page.click("[data-do=repeat]")
    count = kept_beyond(page, count + 50)
    page.click("[data-do=stop]")
    phase(page, "stopped")
    page.wait_for_selector("#known:visible")
    told = kept(page)
    assert desk.demo is not None
    (row,) = recordings(desk.demo, 1)
    stored = samples_of(desk.demo, row.id)
    assert (row.task, row.source, row.device) == ("rest", "browser", "Scripted pad")
    assert len(stored) >= told >= count
    assert np.all(np.diff(stored[:, 0]) >= 0)
    read = np.array(page.evaluate("scripted.sent")) * [1.0, -1.0]  # y of a pad points to the player, ours away
    stretches = runs(stored[:, 1:3] + 0.0, read + 0.0)
    assert 2 <= len(stretches) <= 5, stretches  # cut by unplugging, by the reload, by the stop; whole between
    page.click("text=Back to measuring")
    page.wait_for_selector("h3:has-text('rest-right-index-1')")
    no_complaint(visit, served)


def typed_by_keyboard(page: Page, here: str, desk: RequestContext) -> None:
    """A new site, its readings from the gauge typed with Enter between; a slip of the unit caught; taken back."""
    page.goto(f"{here}/sites")
    page.click("text=Add control site")
    page.fill("#name", "right knee")
    page.select_option("#part", index=1)
    page.keyboard.press("Enter")
    page.wait_for_selector(".message:has-text('right knee saved')")
    page.goto(f"{here}/readings")
    page.click("a:has-text('right knee')")
    page.wait_for_selector("h2:has-text('right knee')")
    page.focus("input[name='force.0']")
    for words in ("11 12 11.5", "9 9 10", "8 8.5", "8", "3900"):
        page.keyboard.type(words)
        page.keyboard.press("Enter")
    for _ in range(12):  # past the fields left empty, to the button
        page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.textContent") == "Save readings"
    page.keyboard.press("Enter")
    page.wait_for_selector(".message:has-text('Readings of right knee saved')")
    assert "found 3900\xa0N" in page.inner_text(".problems")
    page.click(".message button:has-text('Undo')")
    page.wait_for_selector(".message:has-text('Undone')")
    assert desk.demo is not None
    assert b"3900" not in documents(desk.demo, 1)["player.toml"].body
    page.click(".message button:has-text('Undo')")  # of the undoing
    page.wait_for_selector("input[name='force.2'][value='3900']")
    page.fill("input[name='force.2']", "7 7.5 7")
    page.click("text=Save readings")
    page.wait_for_selector("#ability-title")
    assert page.locator("text=found 3900\xa0N").count() == 0


def on_the_made_up_stick(page: Page, here: str, store: Store) -> None:
    """Moved by the program, read by SDL: found at once, results while it runs, kept when its page is left."""
    ready(page, here, "practice", "aim")
    page.click("[data-do=start]")
    page.wait_for_selector("#sentence:has-text('Not enough so far')")
    page.click("[data-do=stop]")
    phase(page, "stopped")
    told = kept(page)
    page.click("text=Back to measuring")
    page.wait_for_selector("h3:has-text('aim-right-index-1')")
    (row,) = recordings(store, 1)
    stored = samples_of(store, row.id)
    assert len(stored) >= told > 500
    assert row.source == "practice"
    assert 0.3 < np.nanmax(np.abs(stored[:, 1:3])) <= 1.01


@pytest.mark.slow
def test_from_looking_round_to_the_export(visit: Visit, served: str, desk: RequestContext, tmp_path: Path) -> None:
    """Site, readings, measuring, two plans, what differs, mounts, the sheet, everything as one file."""
    page = visit.page
    here = looking_round(visit, served)
    assert desk.demo is not None
    typed_by_keyboard(page, here, desk)
    on_the_made_up_stick(page, here, desk.demo)
    page.goto(f"{here}/plan")
    page.click("button:has-text('Make the plan')")
    page.wait_for_url("**/plans/1")
    assert page.locator("h1:has-text('Plan 1')").count() == 1
    page.goto(f"{here}/plan")
    page.click("summary:has-text('What if')")
    page.fill("#without", "no such thing")
    page.click("button:has-text('Make another plan')")
    page.wait_for_selector("#without[aria-invalid]")
    assert "no such thing" in page.inner_text("#without-problem")
    assert page.input_value("#without") == "no such thing"
    page.fill("#without", "light stick 5 mm")
    page.click("button:has-text('Make another plan')")
    page.wait_for_url("**/plans/2")
    assert "WHAT IF: without light stick 5 mm." in page.inner_text("main")
    page.click("text=Compare with another plan")
    page.wait_for_selector("table:has-text('Control layout')")
    assert "differs" in page.inner_text("main")
    page.goto(f"{here}/mounts")
    assert page.locator("h1:has-text('Mounts')").count() == 1
    assert page.locator("figure img").count() >= 1
    for path in ("plan", "plans/1", "mounts", "compare", "sheet"):
        page.goto(f"{here}/{path}")
        assert violations(page) == [], path
    pages = page.locator(".sheet-pages img")
    assert pages.count() >= 2
    page.wait_for_load_state("networkidle")
    assert pages.first.evaluate("picture => picture.complete && picture.naturalWidth > 0")
    with page.expect_download() as asked:
        page.click("text=Download the PDF to print")
    saved = tmp_path / "sheet.pdf"
    asked.value.save_as(saved)
    assert saved.read_bytes().startswith(b"%PDF")
    assert re.fullmatch(r"K7-visit-1-plan-2\.pdf", asked.value.suggested_filename)
    page.goto(here)
    with page.expect_download() as asked:
        page.click("text=Download this visit as a case folder")
    saved = tmp_path / "case.zip"
    asked.value.save_as(saved)
    assert b"aim-right-index-1.csv" in saved.read_bytes()
    no_complaint(visit, served)
