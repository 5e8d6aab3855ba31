"""The pages of the mounts, read back from the PDF."""

from __future__ import annotations

import io
import math
import re
from dataclasses import replace

import pytest
from pypdf import PdfReader
from sample_mounts import finger_mount, fist_mount, mounted_plan
from sample_plan import sample_plan
from sample_sharing import sharing

from stickwright.model.mounting import Check
from stickwright.report.document import sheet_content, sheet_pdf
from stickwright.report.mount_page import mount_page, mounted, unmounted_lines


def flat(text: str) -> str:
    return re.sub(r"\s+", "", text)


def pages_of(sheet: bytes) -> list[str]:
    return [flat(page.extract_text()) for page in PdfReader(io.BytesIO(sheet)).pages]


@pytest.fixture(scope="module")
def sheet() -> bytes:
    return sheet_pdf(mounted_plan())


@pytest.fixture(scope="module")
def pages(sheet: bytes) -> list[str]:
    return pages_of(sheet)


def test_a_page_for_each_mounted_stick(pages: list[str]) -> None:
    """A drawing and a page of words each after the family's own, nothing of one on the other's, the refused one as lines; fifteen at
    most."""
    assert len(pages) <= 15
    assert pages[1].startswith(flat("Mounting: dew at the right index finger"))
    assert pages[3].startswith(flat("Mounting: rowan at the left fist"))
    assert pages[5].startswith(flat("For the practitioner"))
    rest = "".join(pages[5:])
    assert flat("Mounting of the other devices") in rest
    assert flat("REFUSED: floor stand on the floor.") in rest
    assert flat("Breakaway tested at each set-up; agree the force with the treating team.") in rest


def test_the_family_can_rebuild_it_from_the_page(pages: list[str]) -> None:
    """Drawing, distances, joints, fastener, what to check monthly and what to photograph; then the checks."""
    for words in ("From above: forward is up, 1:5", "From the player's right: forward is right, 1:5", "Scale 1 to 5", "205",
                  "all lengths in mm. Print at 100%", "measure from", "keep free: chair control"):  # fmt: skip
        assert flat(words) in pages[1], words
    for words in ("front end of the right armrestclamp205 mm back", "2 elbow: second link back to the left",
                  "Mushroom-head, a patch of 40 × 30 mm", "Along the tube from its front end: 185 mm", "Every month, check that",
                  "the clamp does not turn or slide", "Photographs to take on the first day", "2 elbow, straight on",
                  "Never across the chair's own control", "For the practitioner: strength",
                  "fastener shearworking2.2 kPa210 kPa953pass", "Other ways to mount it",
                  "It gives 38 % of the throw away at full push", "the arm's weight was not measured",
                  "friction of the clamp on the tube", "The tube was measured with the seat tilted"):  # fmt: skip
        assert flat(words) in pages[2], words
    assert pages[2].index(flat("Every month, check that")) < pages[2].index(flat("For the practitioner"))


def test_nothing_unprintable(pages: list[str]) -> None:
    for page in pages:
        assert not re.search(r"(?<![a-zA-Z])(nan|inf|None|null)(?![a-zA-Z])", page)


def test_writing_is_legible_on_paper(sheet: bytes) -> None:
    """No writing on the pages of the mounts is below 8.5 points, the drawing's included."""
    small: list[float] = []

    def look(text: str, cm: list[float], tm: list[float], _font: object, size: float) -> None:
        at = abs(size * tm[3] * cm[3])
        if text.strip() and 0.1 < at < 8.45:
            small.append(at)

    for page in PdfReader(io.BytesIO(sheet)).pages[1:5]:
        page.extract_text(visitor_text=look)
    assert small == []


def test_a_plan_without_a_room_prints_as_before() -> None:
    """No page and no heading about mounts, and the pages that there were."""
    plan = sample_plan()
    content = sheet_content(plan)
    assert content["mounts"] == []
    assert content["unmounted"] == []
    assert "Mounting:" not in "".join(pages_of(sheet_pdf(plan)))


def test_four_mounts_are_three_pages_and_a_line() -> None:
    """The fourth is told in lines with all its cautions."""
    more = tuple(replace(finger_mount(), site=f"site {number}") for number in range(3))
    plan = replace(mounted_plan(), mounts=(*more, fist_mount()))
    assert [one.site for one in mounted(plan)] == ["site 0", "site 1", "site 2"]
    ((site, words),) = unmounted_lines(plan)
    assert site == "left fist"
    assert "Pads on all edges" in words
    assert "Middle of the underside of rowan" in words


def test_every_caution_and_failure_is_on_the_page() -> None:
    """Nothing gives way but the size of the drawing and of the type."""
    plan = mounted_plan()
    page = mount_page(plan, plan.mounts[0])
    assert [*page["cautions"], *page["number_cautions"]] == [one.text for one in plan.mounts[0].cautions]
    assert len(page["others"]) == 2
    with pytest.raises(ValueError, match="nothing holds birch at chin"):
        mount_page(plan, plan.mounts[2])


def test_fifteen_pages_with_everything() -> None:
    """Shared out, wired and mounted at once: fifteen pages at most, the family's pages first."""
    pages = pages_of(sheet_pdf(replace(mounted_plan(), sharing=sharing())))
    assert len(pages) <= 15
    heads = [next((at for at, page in enumerate(pages) if page.startswith(flat(words))), None)
             for words in ("Controls at a glance", "Wiring and parts", "Mounting: dew", "For the practitioner: reasons")]  # fmt: skip
    assert None not in heads
    assert heads == sorted(heads)  # type: ignore[type-var]


def test_same_plan_same_bytes(sheet: bytes) -> None:
    assert sheet_pdf(mounted_plan()) == sheet


def test_a_check_without_a_limit_is_a_sentence_in_the_table() -> None:
    """A tray that is bolted down has no limit to divide by: what was found of it stands there, and no number."""
    bolted = Check("tray", "", 0.0, math.inf, "n", math.inf, 1.0, True, "The tray is bolted: try it before play.", None)
    mount = fist_mount()
    assert mount.choice is not None
    held = replace(mount, choice=replace(mount.choice, checks=(bolted,)))
    (row,) = mount_page(mounted_plan(), held)["checks"]
    assert row == ["tray: The tray is bolted: try it before play", "", "", "", "", "1", "pass"]
