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

from stickwright.catalogue import say
from stickwright.codes.message import Message, Name, message
from stickwright.codes.setups import Setups
from stickwright.model.fit import Caution
from stickwright.model.plan import Plan
from stickwright.model.recorded import Finding
from stickwright.report.document import sheet_content, sheet_pdf
from stickwright.report.family import first_page, trouble
from stickwright.report.settings import SETTINGS
from stickwright.report.technical import technical_pages
from stickwright.report.tuned import dead_zones, line_of_tuning, lost, to_type, tuned_elsewhere
from stickwright.report.words import plan_words

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
    """Picture, steps, plug, settings, the five usual causes, stop rules, whom to contact, date and code are on page one."""
    page = flat(sheets["sample"].pages[0].extract_text())
    wanted = ["Set-up for player K7", "12 is straight ahead", "45 mm above its base", "Set it up in this order",
              "wedge under the hand",
              "Put the low dish on dew", "Raise the far edge of the base by 12°",
              "Turn its base 14° anticlockwise from straight ahead",
              "Turn it as its step says", "Keep hands off the sticks while you plug in", "Plug: USB.",
              "dead zone 20%, sensitivity 160%", "Stop for pain", "Keep the chair's own control free", "Contact",
              "25 Nov 2026", *(part for pair in trouble(sample_plan()) for part in pair)]  # fmt: skip
    for words in wanted:
        assert flat(words) in page, words


def sizes_of(page: Any) -> dict[float, int]:
    """Letters by type size in half points, lying letters of charts left out."""
    sizes: dict[float, int] = {}

    def count(text: str, cm: Any, tm: Any, _font: Any, size: float) -> None:
        at = round(2 * abs(size * tm[3] * cm[3])) / 2
        if text.strip() and at:
            sizes[at] = sizes.get(at, 0) + len(text)

    page.extract_text(visitor_text=count)
    return sizes


def test_first_page_is_large_print(sheets: dict[str, PdfReader]) -> None:
    """Running text of page one is 11 to 12 point; only the caption and the foot of the page are smaller. In large type it is 16."""
    sizes = sizes_of(sheets["sample"].pages[0])
    large = sum(letters for size, letters in sizes.items() if size >= 11)
    assert large > 0.75 * sum(sizes.values())
    page = PdfReader(io.BytesIO(sheet_pdf(sample_plan(), large_type=True))).pages[0]
    larger = sizes_of(page)
    assert sum(letters for size, letters in larger.items() if size >= 16) > 0.7 * sum(larger.values())


def test_first_page_when_nothing_fits(sheets: dict[str, PdfReader]) -> None:
    """It says so, says what comes nearest and what would help, and cannot be mistaken for a set-up instruction."""
    page = flat(sheets["nothing fits"].pages[0].extract_text())
    for words in ("No stick fits yet", "Do not set anything up from this page", "What comes nearest", "dew + low dish",
                  "A stick of half the throw would reach 42 % forward.", "Enough is measured"):  # fmt: skip
        assert flat(words) in page, words
    assert flat("Set it up in this order") not in page
    assert flat("12 is straight ahead") not in page


def test_plan_without_a_site_says_what_to_measure(sheets: dict[str, PdfReader]) -> None:
    """No site could be planned: the sheet says what to take next, and sets nothing up."""
    text = said(sheets["empty"])
    assert flat("take the force in four directions") in text
    assert flat("Take the force forward, three times.") in text
    assert flat("Set it up in this order") not in text


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
    beside the tuning: not at the end. (The picture of force and sticks goes to the head or foot of a page.)"""
    text = said(sheets["crowded"])
    start = text.index("Forthepractitioner")
    places = {
        words: text.index(flat(words), start)
        for words in ("Chosen set-up", "What the player can do here", "Next reading worth",
                      "Sticks ranked", "Tuning of dew", "Recording results")
    }  # fmt: skip
    between = {
        "Effort": ("Chosen set-up", "What the player can do here"),
        "Hold": ("Chosen set-up", "What the player can do here"),
        "Force": ("What the player can do here", "Next reading worth"), "False input": ("Sticks ranked", "Tuning of dew"),
        "Dead zone": ("Tuning of dew", "Recording results"),
    }  # fmt: skip
    for about, (after, before) in between.items():
        at = text.index(flat(f"Caution. {about} caution in a long sentence"), start)
        assert places[after] < at < places[before], about


def test_technical_pages_hold_the_numbers_with_intervals(sheets: dict[str, PdfReader]) -> None:
    """Values with intervals, assumed ones marked, tuning in order, what to type, next reading, version and seed."""
    text = said(sheets["sample"])
    for words in ("0.26 N (0.22 to 0.30)", "0.030 N/mm (0.015 to", "0.060), assumed", "42% (34 to 51)", "Second best",
                  "0.43 /min (0.10 to 2.60) at 25%", "output turned 14° (9 to 19) clockwise", "lag 31 ms (28 to 34) of 60 ms allowed",
                  "minimum cut-off 1.5 Hz", "In the game, for dew: dead zone 20%", "likes dew", "stickwright 0.1.0",
                  "seed 20261125", "to confirm", "from 78 to 86 %", "forward reached 42% (39 to 45), times 2.38",
                  "Best or as good", "3.1% (2.2 to 4.0) right, 4.8% (3.6 to 6.0) back",
                  "Another control site: left thumb", "no interval: held once only", "2.38"):  # fmt: skip
        assert flat(words).lower() in text.lower(), words


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
    page = first_page(plan)
    assert [row[:2] for row in page["picture"]["rows"]] == [
        [["1"], "dew + low dish + base raised 12°"], [["2"], "dew + low dish + base raised 12°"]
    ]  # fmt: skip
    assert "left thumb" in page["steps"][2]["text"]
    assert [box["title"] for box in page["boxes"]][1] == "Settings for 2: dew (left thumb)"
    part = technical_pages(plan)["others"][0]["set_up"]
    assert "From the player's right" in part["drawing"]["svg"]
    assert "From above" not in part["drawing"]["svg"]
    assert any("Put the low dish on dew" in line for line in part["lines"])
    assert "Plug: USB." in part["lines"]
    spare = replace(thumb, demand=finger_site().demand)
    assert len(first_page(replace(plan, sites=(finger_site(), spare)))["boxes"]) == 1


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
    before = {text for text in content["family"]["stop"] if text not in texts}
    assert len(texts) == len(set(texts))
    assert set(texts) | before == {one.text for one in crowded_plan().cautions}


def test_caution_of_an_unknown_kind_is_not_lost() -> None:
    """A caution about a number this sheet has no block for stands beside the answer, one for everybody on page one."""
    plan: Plan = sample_plan()
    new = replace(plan.cautions[0], about="something new", text="A caution of a new kind.")
    own = replace(new, site=plan.sites[0].name)
    assert technical_pages(replace(plan, cautions=(own,)))["answer"]["site_cautions"] == ["A caution of a new kind."]
    assert first_page(replace(plan, cautions=(new,)))["stop"] == ["A caution of a new kind."]


def test_caution_about_face_and_head_is_on_page_one() -> None:
    """A second stick for the chin is set up by the same hands: what to take care of there is on page one; a site that
    only was looked at puts nothing there."""
    plan = sample_plan()
    chin = replace(thumb_site(), name="chin", part="chin", choice=thumb_site().fits[0])
    face = Caution("site", "chin", "Chin: only with the treating team's word.")
    assert face.text in first_page(replace(plan, sites=(finger_site(), chin), cautions=(face,)))["stop"]
    looked_at = replace(chin, choice=None)
    assert first_page(replace(plan, sites=(finger_site(), looked_at), cautions=(face,)))["stop"] == []


def test_caution_said_for_the_first_site_is_not_repeated_for_the_second() -> None:
    """'Changing ability' holds for both sites: once is enough; what is the second site's own stays with it."""
    plan = sample_plan()
    same = tuple(Caution("effort", site.name, "No training with heavier sticks.") for site in plan.sites)
    own = Caution("effort", plan.sites[1].name, "Thumb: comfortable effort only.")
    told = technical_pages(replace(plan, cautions=(*same, own)))
    assert told["answer"]["cautions"] == ["No training with heavier sticks."]
    assert told["others"][0]["cautions"] == ["Thumb: comfortable effort only."]


@pytest.mark.parametrize("level", range(7))
def test_type_stays_legible(level: int) -> None:
    """Running text of the technical pages is 10.5 point or more, tables and notes 9 or more, down to the seventh
    setting; only a case of very many words goes below."""
    assert SETTINGS[level].body_pt >= 10.5
    assert SETTINGS[level].small_pt >= 9


@pytest.mark.parametrize("name", ["sample", "nothing fits", "bare"])
def test_sheet_of_a_usual_case_is_legible(sheets: dict[str, PdfReader], name: str) -> None:
    """Measured on the page: what is smaller than 9 point is writing in charts, at least 8, and a fifth at most."""
    for page in sheets[name].pages[1:]:
        sizes = sizes_of(page)
        assert min(sizes) >= 8
        assert sum(letters for size, letters in sizes.items() if size < 9) < 0.2 * sum(sizes.values())


def setup_with(topper: str) -> Message:
    return message(Setups.named, stick=Name("dew"), topper=Name(topper), extension=None, raised_rad=0.0)


def test_tuning_from_another_set_up_says_so() -> None:
    """Recorded without the extension: page one and the tuning say so beside the numbers to type."""
    plan = sample_plan()
    site = finger_site()
    assert site.choice is not None
    chosen = replace(site.choice, extension="+8 mm")
    made = replace(site.tunings[0], setup=setup_with("low dish"))
    other = replace(plan, sites=(replace(site, choice=chosen, tunings=(made,)),))
    assert first_page(other)["boxes"][0]["game"] == (
        "Set in the game for dew: dead zone 20%, sensitivity 160%. Tuned without extension +8 mm: tune again."
    )
    assert technical_pages(other)["tuning"]["elsewhere"] == "Tuned without extension +8 mm: tune again."
    assert technical_pages(plan)["tuning"]["elsewhere"] == ""
    bare = replace(made, setup=setup_with("tall peg"))
    assert tuned_elsewhere(chosen, bare) == "Tuned without low dish and extension +8 mm, with tall peg: tune again."
    assert tuned_elsewhere(chosen, replace(made, stick="ash")) == "Tuned on ash, not on dew: record and tune again."


def test_a_tuning_with_a_fault_gives_no_settings() -> None:
    """A rest too short to set anything: the fault is told on every page, and no number to type stands on any."""
    plan, site = sample_plan(), finger_site()
    short = Finding("fault", "short rest", "No dead zone can be set: the rest was too short.")
    doubt = Finding("query", "rest by stillness", "No rest was asked for.")
    made = replace(site.tunings[0], findings=(short, doubt))
    other = replace(plan, sites=(replace(site, tunings=(made,)),))
    assert first_page(other)["boxes"][0]["game"] == (
        "Do not change any settings in the game yet. They still have to be measured."
    )
    why = technical_pages(other)["tuning"]["why"]
    assert why == f"No settings are given yet. {short.text} {doubt.text}"
    told = " ".join(plan_words(other).split())
    assert short.text in told
    assert line_of_tuning(made) == f"{made.stick}: No settings are given yet. {short.text}"
    for pages in (str(first_page(other)), str(technical_pages(other)["tuning"]), told):
        assert say(to_type(made)) not in pages
        assert "sensitivity 160" not in pages
    printed = said(PdfReader(io.BytesIO(sheet_pdf(other))))
    assert "sensitivity160" not in printed
    assert flat(short.text) in printed


def test_dead_zones_are_told_apart() -> None:
    """Three dead zones stand on the page: one sentence says which is which, and why the one to type is larger.
    Rest 3.1 % right and 4.8 % back lies 5.7 % off the middle (Pythagoras)."""
    said = dead_zones(finger_site().choice, finger_site().tunings[0])
    for words in ("25% of travel is what the choice of the stick counts on", "22% of the range is for software",
                  "20% is the one to set in the game, because rest lies 5.7% off centre"):  # fmt: skip
        assert words in said


def test_said_once() -> None:
    """The chance stands in the sentence on the next reading, the difference in that on the two numbers; the set-up in
    the headline: none is repeated."""
    told = technical_pages(sample_plan())
    assert told["next"]["sentence"] == say(sample_plan().next_reading.sentence)
    assert lost(finger_site().tunings[0]).count("differs") == 1
    performance = "reaches 42%"
    answer = message(
        Setups.chosen, setup=finger_site().choice.named, site=Name("right index finger"), performance=performance,
        to_confirm=(), limit=None, second=None, liked=(),
    )  # fmt: skip
    named = replace(finger_site(), sentence=answer)
    answer = technical_pages(replace(sample_plan(), sites=(named,)))["answer"]
    assert answer["sentences"][-1] == "Reaches 42%."
