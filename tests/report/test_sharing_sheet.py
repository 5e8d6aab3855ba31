"""The pages of the whole controller, read back from the PDF: controls at a glance, wiring and parts, why so."""

from __future__ import annotations

import io
import re
import xml.etree.ElementTree as ET
from dataclasses import replace

import pytest
from pypdf import PdfReader
from sample_plan import sample_plan
from sample_sharing import (
    SHARED,
    clashing_plan,
    paired_plan,
    shared_plan,
    sharing,
    unwired_plan,
)

import kept
from said import said
from stickwright.catalogue import say
from stickwright.codes.message import Name, message
from stickwright.codes.wirings import Wirings
from stickwright.model.fit import Caution
from stickwright.model.sharing import PartLine, Placement, PowerLine
from stickwright.report.document import sheet_pdf
from stickwright.report.family import first_page
from stickwright.report.score import score_of, score_words, terms_words
from stickwright.report.sharing_words import bought, done_by, power_words, socket_name, wire_words
from stickwright.report.technical import technical_pages
from stickwright.report.who import who_page
from stickwright.report.why_so import NO_HUB, why_so
from stickwright.report.wiring_page import wiring_page


@pytest.fixture(scope="module")
def printed() -> dict[str, bytes]:
    return {name: kept.printed(make()) for name, make in SHARED.items()}


@pytest.fixture(scope="module")
def sheets(printed: dict[str, bytes]) -> dict[str, list[str]]:
    """Text of each page, blanks taken out."""
    readers = {name: PdfReader(io.BytesIO(sheet)) for name, sheet in printed.items()}
    return {name: [flat(page.extract_text()) for page in reader.pages] for name, reader in readers.items()}


def flat(text: str) -> str:
    return re.sub(r"\s+", "", text)


@pytest.mark.parametrize("name", SHARED)
def test_at_most_eight_pages_in_their_order(sheets: dict[str, list[str]], name: str) -> None:
    """Family, controls at a glance, wiring and parts when there is any, then the practitioner's pages: eight at most."""
    pages = sheets[name]
    assert len(pages) <= 8
    assert flat("Set it up in this order") in pages[0]
    assert pages[1].startswith(flat("Controls at a glance"))
    assert flat("Contact") not in pages[1], "the family's first page is one page"
    wired = SHARED[name]().sharing.wiring is not None  # type: ignore[union-attr]
    assert pages[2].startswith(flat("Wiring and parts" if wired else "For the practitioner: reasons"))
    why = next(at for at, page in enumerate(pages) if flat("For the practitioner: reasons") in page)
    assert why in ((3, 4) if wired else (2,))


@pytest.mark.parametrize("name", SHARED)
def test_who_presses_what_is_one_page(sheets: dict[str, list[str]], name: str) -> None:
    """Every action, twelve at the most, with what does it; the order of introduction; the cautions: on one page."""
    plan, page = SHARED[name](), sheets[name][1]
    assert plan.sharing is not None
    for one in plan.sharing.placements:
        assert flat(one.action) in page
        assert flat(one.words) in page
    assert flat("Day 1:") in page or name == "switches"
    assert flat("Nobody but the player decides what the helper does.") in page


def test_family_reads_what_does_it(sheets: dict[str, list[str]]) -> None:
    """A part and a device, a toggle, the game, a helper, what is left out with the player's own words; the player's
    own right and left are named on the picture."""
    page = sheets["shared"][1]
    for words in ("the player's right", "the player's left", "seen from the front",
                  "right index finger on dew + low dish", "aim lower lip on leaf: press on, press off",
                  "look the game does it: the camera follows (“it may look by itself”)",
                  "map sister, on the second controller; the player: “She may do the map”", "left out: “I never use it”",
                  "Day 1: move, look, attack and jump.", "From week 2: aim and map.",
                  "Agree with sister who may pause. Agree on a word for stop."):  # fmt: skip
        assert flat(words) in page, words


def test_type_of_the_family_page(printed: dict[str, bytes]) -> None:
    """14 points while it fits; the picture gives way before the type, and the type stays at 11 or more."""

    def sizes(sheet: bytes) -> dict[float, int]:
        page = PdfReader(io.BytesIO(sheet)).pages[1]
        found: dict[float, int] = {}

        def count(text: str, cm: list[float], tm: list[float], _font: object, size: float) -> None:
            at = round(2 * abs(size * tm[3] * cm[3])) / 2
            if text.strip() and at:
                found[at] = found.get(at, 0) + len(text)

        page.extract_text(visitor_text=count)
        return found

    usual, long = sizes(printed["shared"]), sizes(printed["long"])
    assert sum(letters for size, letters in usual.items() if size >= 12) > 0.6 * sum(usual.values())
    assert min(size for size, letters in long.items() if letters > 60) >= 11


def test_clash_stands_at_the_top_of_the_family_page(sheets: dict[str, list[str]]) -> None:
    """What could not all be had and what was given up come before the table; the practitioner reads all ways out."""
    family, why = sheets["clash"][1], "".join(sheets["clash"][3:])
    assert family.index(flat("Some requests cannot be met.")) < family.index(flat("actioncontrol"))
    assert flat("Given up so that the rest works: pressing attack by herself.") in family
    for words in ("Requests that clash: move and attack at the same moment; no helper for move; the lip only for aim.",
                  "automatic attack (cost 2); this layout takes it.", "Let the sister move (cost 6).",
                  "Not proven: another plan could have up to 0.8 points more."):  # fmt: skip
        assert flat(words) in why, words
    assert flat("Some requests cannot be met.") not in "".join(sheets["shared"])


def test_page_one_knows_the_socket(sheets: dict[str, list[str]]) -> None:
    """Each cable by its tag, device and socket; without a wiring, the plug with a line to write the socket on."""
    assert flat("Plug each cable into its socket on quay: A1 (dew): u1") in sheets["shared"][0]
    assert first_page(shared_plan())["boxes"][0]["plug"] == ""
    for plan in (unwired_plan(), sample_plan()):
        assert first_page(plan)["boxes"][0]["plug"] == "Plug: USB."
        assert not any(step["rows"] for step in first_page(plan)["steps"])


def test_page_one_follows_what_is_plugged_in() -> None:
    """The stick as the sharing places it is set up, not another that the site alone would have taken; a site that gets
    no stick of its own is not set up as one."""
    plan = shared_plan()
    assert plan.sharing is not None
    placed = plan.sharing.placements[0]
    assert placed.fit is not None
    cedar = replace(placed, device="cedar", fit=replace(placed.fit, stick="cedar", topper=None))
    changed = replace(plan, sharing=replace(plan.sharing, placements=(cedar, *plan.sharing.placements[1:])))
    assert "Take cedar." in first_page(changed)["steps"][1]["text"]
    assert [box["title"] for box in first_page(paired_plan())["boxes"]] == ["Settings for 1: dew (right index finger)"]
    assert technical_pages(paired_plan())["others"][0]["headline"] == "a stick fits here, but this plan uses none"
    assert technical_pages(shared_plan())["others"][0]["headline"] == "", "nothing fits there"


def test_set_up_without_a_stick(sheets: dict[str, list[str]]) -> None:
    """A game of presses: page one sets up switches, and does not say that no stick fits."""
    page = sheets["switches"][0]
    assert flat("This set-up has no stick") in page
    assert flat("No stick fits") not in page
    assert flat("Socket:") not in page
    assert flat("Stop for pain") in page


def test_wiring_page_lists_cables_current_steps_and_parts(sheets: dict[str, list[str]]) -> None:
    """Each cable with its tag, current against its limit, steps in order, what is missing, what it costs."""
    page = sheets["shared"][2]
    for words in ("Missing: cable A4: an adapter from a 6.3 mm mono jack (TS) plug to a 3.5 mm mono jack (TS) socket.",
                  "70 mA of 100 mA at u1", "70 mA of 300 mA in all at quay",
                  "Plug dew (A1) into u1, hands off the stick.", "Keep cables off the neck", "q1 stays empty",
                  "To order: 1 × pip and 1 × adapter 6.3 to 3.5; 51.50 in all", "One is on loan."):  # fmt: skip
        assert flat(words) in page, words
    assert all(tag in page for tag in ("A1", "A2", "A3", "A4"))
    steps = [page.index(flat(words)) for words in ("Plug dew (A1)", "Plug the switches", "Wake the console")]
    assert steps == sorted(steps)


def test_hub_not_described_is_said(sheets: dict[str, list[str]]) -> None:
    """Without a hub there is no page of cables, and the practitioner is told why; parts alone make a page of parts."""
    assert flat(say(NO_HUB)) in "".join(sheets["unwired"])
    assert wiring_page(unwired_plan()) is None
    told = sharing()
    assert told.wiring is not None
    loose = replace(told, wiring=replace(told.wiring, wires=(), power=(), steps=(), hubs=()))
    page = wiring_page(replace(sample_plan(), sharing=loose))
    assert page is not None
    assert page["title"].startswith("Parts")
    assert page["drawing"] is None
    why = why_so(replace(sample_plan(), sharing=loose))
    assert why is not None
    assert why["unwired"] == say(NO_HUB)


@pytest.mark.parametrize("name", SHARED)
def test_practitioner_reads_why(sheets: dict[str, list[str]], name: str) -> None:
    """Every action with its points as a sum, its reason and its second best; the proof; loads, pairs with the assumed
    ones marked, next plans, findings, assumptions and cautions: nothing is left out however close it is set."""
    plan = SHARED[name]()
    assert plan.sharing is not None
    text = "".join(sheets[name])
    told = [plan.sharing.solved, *(one.text for one in (*plan.sharing.findings, *plan.sharing.cautions))]
    told += [part for one in plan.sharing.assumptions for part in (one.what, one.value, one.why, one.replace_by)]
    score = score_of(plan.sharing)
    told.append(say(score_words(score)))
    for one, part in zip(plan.sharing.placements, score.actions, strict=True):
        told += [one.reason.rstrip("."), one.second, say(terms_words(part))]
    told += [one.sentence.rstrip(".") for one in plan.sharing.alternatives]
    told += [load.site for load in plan.sharing.loads]
    told.append("slowed by 35%")
    told.append("assumed: nobody tried it; face and hand are apart")
    for words in told:
        assert flat(words) in text, words


def test_caution_of_a_site_stands_at_its_action() -> None:
    """The finger's caution stands at the first action done there, once; what concerns cables is with the cables."""
    told = why_so(shared_plan())
    assert told is not None
    at = {one["action"]: one["cautions"] for one in told["actions"] if one["cautions"]}
    assert at == {"attack": ["Rest the finger after ten minutes: no training by pressing."]}
    assert told["cautions"] == []
    cables = wiring_page(shared_plan())
    assert cables is not None
    assert cables["cautions"] == ["Keep cables off the neck, the breathing tube and the walkway."]
    new = Caution("something new", None, "A caution of a new kind.")
    other = replace(sharing(), cautions=(new,))
    assert who_page(replace(sample_plan(), sharing=other))["cautions"] == [new.text]


def test_points_add_up_as_written() -> None:
    """By hand: 8 for importance, less 0.9 for effort and 0.5 for misses, is 6.6."""
    attack = score_of(sharing()).actions[2]
    assert say(terms_words(attack)) == (
        "6.6 = 8 importance − 0.9 effort (45 % of the comfortable force) − 0.5 misses (3 of 100 presses miss)"
    )


def test_total_is_told_only_when_known() -> None:
    """Two parts with a price: their sum; a part without one: no total is made up; nothing lacking: said so."""
    priced = (PartLine("pip", "switch", 2, 1, 1, 45.0), PartLine("lead", "extension", 1, 0, 1, 6.5))
    assert "51.50 in all" in said(bought(priced)[0])
    unknown = said(bought((*priced, PartLine("leaf", "switch", 1, 0, 1, None)))[0])
    assert " in all" not in unknown
    assert "51.50 for those with a price" in unknown
    assert "total is not known" in unknown
    told = wiring_page(shared_plan())
    assert told is not None
    price = told["parts"]["columns"].index("price")
    assert [row[price] for row in told["parts"]["rows"]] == ["", "45.00", "", "6.50", ""]
    assert [said(one) for one in bought((PartLine("dew", "stick", 1, 1, 0, None),))] == ["Everything is in stock."]


def test_words_of_places() -> None:
    """A controller's control, a chord, a way of a splitter, a limit nobody knows."""
    pad = Placement("look", "site", site="left thumb", device="plain pad", kind="controller", control="left stick")
    assert done_by(pad) == "left thumb on plain pad, left stick"
    assert done_by(Placement("roll", "chord", together=("jump", "attack"))) == "pressed together: jump and attack"
    assert done_by(Placement("menu", "dropped")) == "left out"
    assert say(socket_name("u1/2")) == "socket 2 of the splitter in u1"
    assert (
        said(power_words(PowerLine(message(Wirings.at_socket, socket=Name("u1"), hub=None, way=None), 0.07, None, 1)))
        == "70 mA at u1, limit not known"
    )


def test_paired_controller_has_no_cable() -> None:
    """The second controller is told with the hub it is paired with; a question keeps its mark."""
    told = sharing().wiring
    assert told is not None
    pad = replace(told.wires[0], tag="A5", device="plain pad", at=("sister",), through=(), socket="", paired=True)
    assert wire_words(pad) == "A5: plain pad (sister), paired with quay, no cable"
    asked = replace(told, steps=("Unplug A1 and plug it in again: does it still do the same?",))
    page = wiring_page(replace(sample_plan(), sharing=replace(sharing(), wiring=asked)))
    assert page is not None
    assert page["steps"] == list(asked.steps)


def test_what_is_assumed_of_a_press_is_said_once() -> None:
    """The same assumption behind three presses stands at the first, the others refer to it."""
    told = why_so(shared_plan())
    assert told is not None
    pressed = [one["press"] for one in told["actions"] if one["press"]]
    assert [words.count("assumed: release") for words in pressed] == [1, 0, 0]
    assert all("in part assumed, as above" in words for words in pressed[1:])


@pytest.mark.parametrize("name", SHARED)
def test_drawings_are_black_white_and_grey(name: str) -> None:
    """Nothing on the family's page and in the wiring is told by colour."""
    plan = SHARED[name]()
    pages = [who_page(plan), wiring_page(plan)]
    for page in pages:
        if page is None or page["drawing"] is None:
            continue
        svg = page["drawing"]["svg"]
        ET.fromstring(svg)
        assert len(page["drawing"]["alt"]) > 40
        colours = set(re.findall(r"#[0-9a-fA-F]{3,6}\b", svg))
        assert all(len({code[at : at + 2] for at in range(1, len(code), 2)}) == 1 for code in colours), colours
        assert set(re.findall(r'(?:fill|stroke)="([a-z]+)"', svg)) <= {"black", "white", "none"}


def test_same_plan_same_bytes(printed: dict[str, bytes]) -> None:
    """The sheet with all pages is the same file every time."""
    assert sheet_pdf(clashing_plan()) == printed["clash"]
