"""The printed sheet, read back from its own PDF."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest
from pypdf import PdfReader
from sample_plan import (
    bare_plan,
    crowded_plan,
    empty_plan,
    finger_site,
    nothing_fits_plan,
    sample_plan,
    thumb_site,
)

from stickwright.model.plan import Plan
from stickwright.sheet.document import sheet_content, sheet_pdf
from stickwright.sheet.family import TROUBLE, first_page
from stickwright.sheet.technical import technical_pages

PLANS = {"sample": sample_plan, "nothing fits": nothing_fits_plan, "crowded": crowded_plan, "bare": bare_plan,
         "empty": empty_plan}  # fmt: skip


@pytest.fixture(scope="module")
def sheets() -> dict[str, PdfReader]:
    return {name: PdfReader(io.BytesIO(sheet_pdf(make()))) for name, make in PLANS.items()}


def flat(text: str) -> str:
    return re.sub(r"\s+", "", text)


def said(reader: PdfReader) -> str:
    return flat("".join(page.extract_text() for page in reader.pages))


def elements(node: Any) -> Iterator[Any]:
    """The structure tree, every element."""
    node = node.get_object() if hasattr(node, "get_object") else node
    if isinstance(node, list):
        for one in node:
            yield from elements(one)
    elif isinstance(node, dict):
        if "/S" in node:
            yield node
        if "/K" in node:
            yield from elements(node["/K"])


@pytest.mark.parametrize("name", PLANS)
def test_two_to_four_pages_of_a4(sheets: dict[str, PdfReader], name: str) -> None:
    """A4, two to four pages, whether little or much is known."""
    reader = sheets[name]
    assert 2 <= len(reader.pages) <= 4
    assert [round(float(side)) for side in reader.pages[0].mediabox[2:]] == [595, 842]


@pytest.mark.parametrize("name", PLANS)
def test_tagged_titled_and_in_english(sheets: dict[str, PdfReader], name: str) -> None:
    """ISO 14289-1 (from memory) asks for tags, a shown title, a language and alternative texts."""
    reader = sheets[name]
    root = reader.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]
    assert root["/Lang"] == "en"
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]
    assert reader.metadata is not None
    assert PLANS[name]().player in str(reader.metadata.title)
    figures = [node for node in elements(root["/StructTreeRoot"]) if node["/S"] == "/Figure"]
    assert all(len(str(node.get("/Alt", ""))) > 40 for node in figures)
    assert bool(figures) == (name != "empty")


def test_headings_and_tables_are_tagged(sheets: dict[str, PdfReader]) -> None:
    """A screen reader finds headings and table headers."""
    kinds = [str(node["/S"]) for node in elements(sheets["sample"].trailer["/Root"]["/StructTreeRoot"])]
    assert {"/H1", "/H2", "/Table", "/TH", "/TD", "/Figure", "/L"} <= set(kinds)


@pytest.mark.parametrize("name", PLANS)
def test_all_type_is_embedded(sheets: dict[str, PdfReader], name: str) -> None:
    """Every font is in the file, so that it prints the same everywhere."""
    for page in sheets[name].pages:
        for font in page["/Resources"]["/Font"].values():
            descriptor = font.get_object()["/DescendantFonts"][0].get_object()["/FontDescriptor"].get_object()
            assert "/FontFile2" in descriptor or "/FontFile3" in descriptor


@pytest.mark.parametrize("name", PLANS)
def test_nothing_unprintable_is_printed(sheets: dict[str, PdfReader], name: str) -> None:
    """No nan, inf, None or plus-minus zero anywhere, figures included; no score and no name of a person's worth."""
    words = {word.strip("(),.;:") for page in sheets[name].pages for word in page.extract_text().split()}
    assert not {"nan", "NaN", "inf", "None", "null"} & words
    assert "±" not in said(sheets[name])
    assert "score" not in said(sheets[name]).casefold()


def test_first_page_sets_it_up(sheets: dict[str, PdfReader]) -> None:
    """Drawing, three steps, plug, the five usual causes, stop rules, who to ring, date and code are on page one."""
    page = flat(sheets["sample"].pages[0].extract_text())
    wanted = ["Stick set-up for player K7", "forward: this way", "45 mm", "Set up in three steps",
              "wedge under the hand",
              "Put the low dish on dew", "Raise the far edge of the base by 12°",
              "Turn the base 14° clockwise", "Nobody touches the stick", "Plug: USB.",
              "dead zone 20 %, sensitivity 160 %", "Stop for pain", "Keep the chair's own control free", "Who to ring",
              "2026-11-25", *(part for pair in TROUBLE for part in pair)]  # fmt: skip
    for words in wanted:
        assert flat(words) in page, words


def test_first_page_is_large_print(sheets: dict[str, PdfReader]) -> None:
    """Running text of page one is 14 point; only the drawing and the foot of the page are smaller."""
    sizes: dict[int, int] = {}

    def count(text: str, _cm: Any, tm: Any, _font: Any, size: float) -> None:
        if text.strip():
            at = round(abs(size * tm[3]))
            sizes[at] = sizes.get(at, 0) + len(text)

    sheets["sample"].pages[0].extract_text(visitor_text=count)
    large = sum(letters for size, letters in sizes.items() if size >= 14)
    assert large > 0.75 * sum(sizes.values())


def test_first_page_when_nothing_fits(sheets: dict[str, PdfReader]) -> None:
    """It says so, says what comes nearest and what would help, and cannot be mistaken for a set-up instruction."""
    page = flat(sheets["nothing fits"].pages[0].extract_text())
    for words in ("No stick fits yet", "not a set-up instruction", "What comes nearest", "dew + low dish",
                  "A stick of half the throw would reach 42 % forward.", "Enough is measured"):  # fmt: skip
        assert flat(words) in page, words
    assert flat("Set up in three steps") not in page
    assert flat("forward: this way") not in page


def test_plan_without_a_site_says_what_to_measure(sheets: dict[str, PdfReader]) -> None:
    """No site could be planned: the sheet says what to take next, and sets nothing up."""
    text = said(sheets["empty"])
    assert flat("take the force in four directions") in text
    assert flat("Take the force forward, three times.") in text
    assert flat("Set up in three steps") not in text


@pytest.mark.parametrize("name", ["sample", "nothing fits", "crowded"])
def test_every_caution_assumption_and_finding_is_printed(sheets: dict[str, PdfReader], name: str) -> None:
    """However close the page is set, no caution, assumption or finding is left out."""
    plan, text = PLANS[name](), said(sheets[name])
    told = [one.text for one in (*plan.cautions, *plan.findings)]
    told += [part for one in plan.assumptions for part in (one.what, one.value, one.why, one.replace_by)]
    for site in plan.sites:
        told += [one.text for one in (*site.findings, *site.capability.findings)]
        told += [one.text for report in site.recordings for one in report.findings]
    for words in told:
        assert flat(words) in text, words


def test_cautions_stand_beside_their_numbers(sheets: dict[str, PdfReader]) -> None:
    """Effort and hold beside the chosen set-up, force beside the ability, false input beside the ranking, dead zone
    beside the tuning: not at the end."""
    text = said(sheets["crowded"])
    start = text.index("Forthepractitioner")
    places = {
        words: text.index(flat(words), start)
        for words in ("Chosen set-up", "What the player can do here", "Where the player", "Sticks ranked",
                      "Tuning of dew", "What the recordings told")
    }  # fmt: skip
    between = {
        "Effort": ("Chosen set-up", "What the player can do here"),
        "Hold": ("Chosen set-up", "What the player can do here"),
        "Force": ("What the player can do here", "Where the player"), "False input": ("Sticks ranked", "Tuning of dew"),
        "Dead zone": ("Tuning of dew", "What the recordings told"),
    }  # fmt: skip
    for about, (after, before) in between.items():
        at = text.index(flat(f"Caution. {about} caution in a long sentence"), start)
        assert places[after] < at < places[before], about


def test_technical_pages_hold_the_numbers_with_intervals(sheets: dict[str, PdfReader]) -> None:
    """Values with intervals, assumed ones marked, tuning in order, what to type, next reading, version and seed."""
    text = said(sheets["sample"])
    for words in ("0.26 N (0.22 to 0.30)", "0.030 N/mm (0.015 to 0.060), assumed", "42 % (34 to 51)", "Second best",
                  "0.43 /min (0.10 to 2.60) at 25 %", "-14° (-19 to -9) added", "lag 31 ms (28 to 34) of 60 ms allowed",
                  "min cutoff 1.5 Hz", "What to type in the game: dead zone 20 %", "likes dew", "stickwright 0.1.0",
                  "seed 20261125", "replace by", "78 % now, 86 % expected",
                  "Another site: left thumb", "no interval: held once only", "2.38"):  # fmt: skip
        assert flat(words) in text, words


def test_missing_parts_are_said(sheets: dict[str, PdfReader]) -> None:
    """No recording, no tuning, no interval: each is a sentence."""
    text = said(sheets["bare"])
    for words in ("No recording was made on this set-up", "No recording was made at this site",
                  "no interval: one reading only", "not known (never held)", "not dated"):  # fmt: skip
        assert flat(words) in text, words


def test_second_stick_for_another_action_is_named_on_page_one() -> None:
    """Two sticks to set up: page one must not hide the second; a spare for the same action is not one."""
    thumb = replace(thumb_site(), choice=thumb_site().fits[0])
    plan = replace(sample_plan(), sites=(finger_site(), thumb))
    assert "left thumb" in " ".join(first_page(plan)["also"])
    spare = replace(thumb, demand=finger_site().demand)
    assert first_page(replace(plan, sites=(finger_site(), spare)))["also"] == []


def test_same_plan_same_bytes() -> None:
    """The sheet of a plan is the same file every time; its date is the plan's."""
    plan = nothing_fits_plan()
    first, again = sheet_pdf(plan), sheet_pdf(plan)
    assert first == again
    created = PdfReader(io.BytesIO(first)).metadata
    assert created is not None
    assert created.creation_date is not None
    assert created.creation_date.strftime("%Y-%m-%d") == plan.made_on


def test_dictionary_of_the_page_is_made_of_texts() -> None:
    """The template is handed texts, lists and figures only, and a caution appears in one block of a site alone."""
    content = sheet_content(crowded_plan())
    technical = technical_pages(crowded_plan())
    assert content["technical"] == technical
    boxes = [technical["answer"]["site_cautions"], technical["answer"]["cautions"], technical["ability"]["cautions"],
             technical["ranking"]["cautions"], technical["tuning"]["cautions"]]  # fmt: skip
    texts = [text for box in boxes for text in box]
    assert len(texts) == len(set(texts)) == len(crowded_plan().cautions)


def test_caution_of_an_unknown_kind_is_not_lost() -> None:
    """A caution about a number this sheet has no block for stands beside the answer."""
    plan: Plan = sample_plan()
    new = replace(plan.cautions[0], about="something new", text="A caution of a new kind.")
    answer = technical_pages(replace(plan, cautions=(new,)))["answer"]
    assert answer["site_cautions"] == ["A caution of a new kind."]
