"""A real browser for the pages: Chromium, started once for the whole run; each test gets a page of its own in it.

Chromium runs as a process of its own and each test connects to it. Were the library's own start shared through the run, its
event loop would count as running in every other test, and those that start a loop themselves would fail.
"""

from __future__ import annotations

import shutil
import subprocess
import time
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from playwright.sync_api import Page

CHROMIUM = ("chromium", "chromium-browser", "google-chrome", "chrome")
FLAGS = (
    "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-dev-shm-usage",
    "--disable-background-networking", "--disable-component-update", "--disable-sync", "--disable-extensions",
)  # fmt: skip
PATIENCE_S = 60.0
"""For a start on a machine that is busy with other things; past it the browser is taken to be broken."""


@dataclass
class Visit:
    """A page, and what went on in it that a page must not do."""

    page: Page
    errors: list[str] = field(default_factory=list)
    """What the console and the scripts complained of."""
    asked_for: list[str] = field(default_factory=list)
    """Every address that anything on the page asked for."""


def find_chromium() -> str:
    """Where Chromium is; a machine without it fails the tests, for a page that nobody opened proves nothing."""
    found = next((path for name in CHROMIUM if (path := shutil.which(name))), None)
    assert found is not None, "the tests of the pages need Chromium: apt-get install chromium, or the like elsewhere"
    return found


@pytest.fixture(scope="session")
def chromium(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Address of the one Chromium of this run."""
    home = tmp_path_factory.mktemp("chromium")
    command = [find_chromium(), *FLAGS, "--remote-debugging-port=0", f"--user-data-dir={home}", "about:blank"]
    with subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL) as running:
        try:
            yield f"http://127.0.0.1:{_port(home / 'DevToolsActivePort', running)}"
        finally:
            running.terminate()


def _port(told: Path, running: subprocess.Popen[bytes]) -> int:
    """The port that Chromium chose: it writes it down once it listens."""
    until = time.monotonic() + PATIENCE_S
    while time.monotonic() < until:
        lines = told.read_text(encoding="ascii").splitlines() if told.exists() else []
        if len(lines) > 1:
            return int(lines[0])
        assert running.poll() is None, f"Chromium ended at once, with status {running.returncode}"
        time.sleep(0.05)
    raise AssertionError(f"Chromium did not listen within {PATIENCE_S:g} s")


@pytest.fixture
def visit(chromium: str) -> Iterator[Visit]:
    """A page without cookies or history, in a window of 1280 x 900, that notes errors and requests."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as library:
        browser = library.chromium.connect_over_cdp(chromium)
        context = browser.new_context(viewport={"width": 1280, "height": 900}, reduced_motion="reduce")
        seen = Visit(context.new_page())
        seen.page.on(
            "console", lambda said: seen.errors.append(said.text) if said.type in ("error", "warning") else None
        )
        seen.page.on("pageerror", lambda fault: seen.errors.append(str(fault)))
        seen.page.on("request", lambda asked: seen.asked_for.append(asked.url))
        try:
            yield seen
        finally:
            context.close()
            browser.close()


def violations(page: Page) -> list[str]:
    """What axe finds against the accessibility of a page as it stands: rule, and the elements that break it."""
    from axe_playwright_python.base import AXE_SCRIPT

    if not page.evaluate("'axe' in window"):  # half a megabyte: put into a page once, however often it is looked at
        page.evaluate(AXE_SCRIPT)
    found = page.evaluate("axe.run({resultTypes: ['violations']}).then(told => told.violations)")
    return [f"{one['id']}: {one['help']}: {[node['html'][:120] for node in one['nodes']]}" for one in found]
