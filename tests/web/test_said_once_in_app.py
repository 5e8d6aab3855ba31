"""No sentence stands twice on one page of the app: the first screen and each folded part by itself, each mount by itself.

A caution stands beside its number at every mount. Cells of a table, and why each of several sticks does not fit, are no sentences.
"""

from __future__ import annotations

import re
from collections import Counter
from html.parser import HTMLParser

import pytest
from starlette.testclient import TestClient
from tests.web.conftest import demo_with_plan

from stickwright.web.request_context import RequestContext

UNSPOKEN = {"table", "svg", "script", "style", "select", "textarea", "figcaption"}
ALONE = {"input", "br", "img", "meta", "link", "hr", "col"}
APART = {
    "p", "li", "h1", "h2", "h3", "h4", "div", "section", "dt", "dd", "summary", "details", "label", "button", "ul", "ol",
    "form", "legend",
}  # fmt: skip
PAGES = (
    "",
    "/sites",
    "/readings?site=0",
    "/measure",
    "/kit",
    "/game",
    "/room",
    "/plan",
    "/plans/1",
    "/mounts",
    "/sheet",
)


class Spoken(HTMLParser):
    """Texts of the main part by the block they stand in: the page, a fold, or a mount."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[tuple[str, dict[str, str | None]]] = []
        self.texts: list[tuple[str, str]] = []
        self.text = ""
        self.mount = 0

    def block(self) -> str:
        folds = [given.get("id") or "" for tag, given in self.open if tag == "details" and given.get("class") == "fold"]
        fold = folds[0] if folds else ""
        return f"{fold} {self.mount}"

    def end_text(self) -> None:
        if self.text.strip():
            self.texts.append((self.block(), " ".join(self.text.split())))
        self.text = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in ALONE:
            return
        if tag in APART:
            self.end_text()
        if tag in ("h2", "h3"):
            self.mount += 1  # a part of its own begins
        self.open.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        if tag in ALONE:
            return
        if tag in APART:
            self.end_text()
        while self.open and self.open.pop()[0] != tag:
            pass

    def handle_data(self, data: str) -> None:
        others = any(
            tag == "details" and given.get("class") != "fold" for tag, given in self.open
        )  # each with its reason
        if (
            not others
            and any(tag == "main" for tag, _ in self.open)
            and not any(tag in UNSPOKEN or "sr" in (given.get("class") or "").split() for tag, given in self.open)
        ):
            self.text += data


def repeated(html: str) -> list[str]:
    """Sentences of six words or more that stand more than once in one block."""
    page = Spoken()
    page.feed(html)
    page.end_text()
    said = Counter(
        (block, sentence)
        for block, text in page.texts
        if not block.startswith("numbers ")  # of each stick, what rules it out
        for sentence in re.split(r"(?<=[.!?:])\s+(?=[A-Z0-9])", text)
        if len(re.findall(r"[A-Za-z]{2,}", sentence)) >= 6
    )
    return [sentence for (_, sentence), times in said.items() if times > 1]


def test_repeats_are_seen() -> None:
    """The check itself: twice in one part, but not once in each of two, and not in a table."""
    twice = "<p>Put the stick where the hand can rest.</p>"
    assert repeated(f"<main>{twice}{twice}</main>") == ["Put the stick where the hand can rest."]
    assert repeated(f"<main>{twice}<h2>Mount</h2>{twice}<table><tr><td>{twice}</td></tr></table></main>") == []


@pytest.mark.usefixtures("each_plan_once")
def test_on_every_page_of_a_visit(client: TestClient, desk: RequestContext) -> None:
    """The demo with a plan of it."""
    visit_id = demo_with_plan(desk)
    answers = {page: client.get(f"/visits/{visit_id}{page}") for page in PAGES}
    assert {page: answer.status_code for page, answer in answers.items()} == dict.fromkeys(PAGES, 200)
    assert {page: found for page, answer in answers.items() if (found := repeated(answer.text))} == {}
