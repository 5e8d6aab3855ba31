"""The app killed in the middle of a measurement: what was kept is there at the next start, and that is said."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
import pytest
from tests.web.scripted import PAD

from browser import Visit
from stickwright.store.opening import open_store
from stickwright.store.players import players, visits
from stickwright.store.recordings import recordings, samples_of

if TYPE_CHECKING:
    from playwright.sync_api import Page

OPEN = (sys.executable, "-m", "stickwright", "open", "--no-browser", "--place")


@contextmanager
def begun(place: Path) -> Iterator[tuple[subprocess.Popen[str], str]]:
    with subprocess.Popen([*OPEN, str(place)], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as process:
        assert process.stdout is not None
        try:
            yield process, process.stdout.readline().split()[-1]
        finally:
            process.kill()


def kept_beyond(page: Page, count: int) -> int:
    for _ in range(600):
        words = page.inner_text("#kept").replace(",", "").split()
        if words and int(words[0]) > count:
            return int(words[0])
        page.wait_for_timeout(50)
    raise AssertionError(page.inner_text("#live"))


def player_with_a_site(page: Page) -> str:
    """Practice records with one player, whose consent to keep is written down, and one site; the visit's address."""
    page.click("text=Practise without encryption")
    page.wait_for_url("**/players")
    page.fill("#code", "R4")
    page.keyboard.press("Enter")
    page.wait_for_url("**/consent")
    page.check("#scope-1")
    page.check("#scope-2")
    page.select_option("#given_by", "player")
    page.click("button:has-text('Record consent')")
    page.wait_for_url("**/players/R4")
    page.click("text=Begin the first visit")
    page.wait_for_url("**/visits/*")
    here = page.url
    page.goto(f"{here}/sites/edit/site/new")
    page.fill("#name", "chin")
    page.select_option("#part", "chin")
    page.click("button:has-text('Save') >> nth=0")
    page.wait_for_selector(".message:has-text('chin saved')")
    return here


@pytest.mark.slow
def test_killed_in_the_middle(visit: Visit, tmp_path: Path) -> None:
    """Nothing that the page was told is kept is lost; the next start names the recording that was cut short."""
    page, place = visit.page, tmp_path / "records.db"
    page.set_default_timeout(30_000)
    page.context.add_init_script(PAD)
    with begun(place) as (process, address):
        page.goto(address)
        here = player_with_a_site(page)
        page.goto(f"{here}/measure")
        page.check("input[name=source][value=browser]")
        page.click("button[name=task][value=rim]")
        page.wait_for_selector("[data-do=start]:enabled")
        page.click("[data-do=start]")
        told = kept_beyond(page, 200)
        process.kill()
        process.wait()
    page.wait_for_selector("#notes li:has-text('The connection to the app is lost')")
    read = np.array(page.evaluate("scripted.sent")) * [1.0, -1.0]
    store = open_store(tmp_path / "practice.db")
    try:
        (player,) = players(store).rows
        (row,) = recordings(store, visits(store, player.id)[0].id)
        stored = samples_of(store, row.id)
    finally:
        store.close()
    assert len(stored) >= told
    place_of = {tuple(value): number for number, value in enumerate(read.tolist())}
    first = place_of[tuple(stored[0, 1:3].tolist())]
    assert np.array_equal(stored[:, 1:3], read[first : first + len(stored)])
    with begun(place) as (_, address):
        page.goto(address)
        page.click("text=Practise without encryption")
        page.wait_for_selector(f".message:has-text('Recording {row.name} was interrupted earlier')")
        page.goto(address.split("?")[0] + here.split("/", 3)[3] + "/measure")
        assert f"{len(stored)} samples" in page.inner_text(f".card:has-text('{row.name}')")
