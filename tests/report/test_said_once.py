"""No sentence stands twice on one page: the printed sheet page by page, the terminal block by block, a recording as a whole.

A caution stands beside its number at every site, so that the terminal is looked at a block at a time. Cells of a table (a row's figures;
what would replace an assumption; why each of the other mounts does not hold) are no sentences.
"""

from __future__ import annotations

import io
import re
from collections import Counter
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from pypdf import PdfReader

import worked_cases
from kept import planned
from stickwright.codes.message import message
from stickwright.codes.stand_ins import StandIns
from stickwright.files.folder import read_case
from stickwright.model.fit import Assumption
from stickwright.model.plan import Plan
from stickwright.report.document import sheet_pdf
from stickwright.report.merged import merged_assumptions
from stickwright.report.words import plan_words, trace_words
from stickwright.trace.report import trace_report

DEMO = Path(__file__).parents[2] / "examples" / "demo"
NAMES = ("demo", "tove", "idris", "marit", "joss", "rune")
CELL = re.compile(
    r"^(\d|To confirm: |The only control site|The only part that can; \d)|of the comfortable force for a press"
)

OTHER_MOUNTS = re.compile(r"^  (?:Also passes|May also pass|Fails|REFUSED): ", re.MULTILINE)


@cache
def made(name: str) -> Plan:
    case = read_case(DEMO, "2026-03-14") if name == "demo" else worked_cases.whole_case(name)
    return planned(case, draws=40)


def repeated(text: str) -> list[str]:
    """Sentences of six words or more that stand more than once."""
    sentences = re.split(r"(?<=[.!?:])\s+(?=[A-Z0-9])", " ".join(text.split()))
    said = Counter(one for one in sentences if len(re.findall(r"[A-Za-z]{2,}", one)) >= 6 and not CELL.search(one))
    return [one for one, times in said.items() if times > 1]


@pytest.mark.parametrize("name", NAMES)
def test_on_a_printed_page(name: str) -> None:
    """Every page of the sheet."""
    pages = PdfReader(io.BytesIO(sheet_pdf(made(name)))).pages
    assert {number: found for number, page in enumerate(pages, 1) if (found := repeated(page.extract_text()))} == {}


@pytest.mark.parametrize("name", NAMES)
def test_in_a_block_of_the_terminal(name: str) -> None:
    """Every block of the plan in words."""
    blocks = [OTHER_MOUNTS.split(block)[0] for block in plan_words(made(name)).split("\n\n")]
    assert [found for block in blocks if (found := repeated(block))] == []


@pytest.mark.parametrize("name", ["aim", "follow", "hold", "push", "rest", "rim", "still"])
def test_of_a_recording(name: str) -> None:
    """What one recording tells; with jerks added, the sudden movements are counted in one place."""
    case = read_case(DEMO)
    recording = next(one for one in case.recordings if one.name == f"{name}.csv")
    assert repeated(trace_words(trace_report(recording))) == []
    jerked = recording.xy.copy()
    for start in range(300, len(jerked) - 40, 400):
        jerked[start : start + 12] += 0.4
    said = trace_words(trace_report(replace(recording, xy=jerked)))
    assert repeated(said) == []
    assert len(re.findall(r"\d+(?: sudden movements?|, that is)", " ".join(said.split()))) <= 1


def test_one_value_for_one_reason_stands_once() -> None:
    """The same usual figure of one part at two devices: both named, the figure and its reason once; another value stays apart."""
    one, two = (
        Assumption(f"Weight on {device}", "0.5 N", "it was not measured", "a scale") for device in ("pip", "leaf")
    )
    other = replace(two, what="Weight on disc", value="0.6 N")
    assert merged_assumptions([one, two, other], []) == (
        replace(one, what=message(StandIns.several, labels=("Weight on pip", "Weight on leaf"))),
        other,
    )
