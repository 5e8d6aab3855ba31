"""The report as data: messages only, every action and caution in it, and one screen of it on a terminal."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

import pytest
from sample_plan import empty_plan, nothing_fits_plan, sample_plan
from sample_sharing import SHARED, clashing_plan, shared_plan

from said import said
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Message, Name, message
from stickwright.codes.plan_report import PlanReport
from stickwright.model.plan import Plan
from stickwright.model.wishes import Wishes
from stickwright.report.gather import report_of
from stickwright.report.to_terminal import WIDTH, columns_words, screen_words, table_words
from stickwright.report.view import Bar, Table, texts_in
from stickwright.report.words import plan_words

ALL: dict[str, Callable[[], Plan]] = {
    **SHARED, "sample": sample_plan, "nothing fits": nothing_fits_plan, "empty": empty_plan,
}  # fmt: skip


def flat(text: str) -> str:
    return re.sub(r"\s+", " ", text)


@pytest.mark.parametrize("name", ALL)
def test_one_screen_holds_what_everybody_needs(name: str) -> None:
    """At most 80 columns; the answer, every action, what everybody is warned of; nothing unprintable."""
    plan = ALL[name]()
    text = screen_words(report_of(plan))
    assert max(map(len, text.splitlines())) <= WIDTH
    assert not {"nan", "inf", "None"} & set(re.findall(r"[A-Za-z]+", text))
    for one in plan.cautions:
        if one.site is None:
            assert flat(said(one.text)) in flat(text)
    for placement in plan.sharing.placements if plan.sharing is not None else ():
        assert set(placement.action.split()) <= set(text.split())
    assert flat(said(plan.next_reading.sentence)) in flat(text)


@pytest.mark.parametrize("name", ALL)
def test_the_screen_says_nothing_that_the_whole_does_not(name: str) -> None:
    """Every assumption, way out and alternative of the report stands in the whole text, in the same words."""
    report, text = report_of(ALL[name]()), flat(plan_words(ALL[name]()))
    for section in report.sections:
        if section.code in ("clash", "order", "alternatives", "loads", "together", "current", "parts"):
            for block in section.blocks:
                for one in getattr(block, "texts", ()):
                    assert flat(said(one)).rstrip(".")[1:] in text


def test_what_the_report_adds_is_messages() -> None:
    """Whatever the plan's own texts are, headings, cells and labels are codes; a name is what somebody typed."""
    report = report_of(shared_plan())
    cells = [cell for table in report.tables("controls") for row in table.rows for cell in row]
    told = [
        *(one.title for one in report.sections),
        *cells,
        *(one.title for one in report.tables("controls")[0].columns),
    ]
    assert all(isinstance(one, Message | Name | Bar | None) for one in told)
    assert {type(one) for one in texts_in(cells and tuple(cells))} <= {Message, Name}


def test_effort_of_a_press_has_the_interval_of_the_comfortable_force() -> None:
    """0.10 N of 0.22 N (0.176 to 0.264): 45% (38 to 57); landing was not measured, and the share that lands says so."""
    plan = shared_plan()
    assert plan.sharing is not None
    (table,) = report_of(plan).tables("controls")
    codes = [column.code for column in table.columns]
    place = next(
        number
        for number, one in enumerate(plan.sharing.placements)
        if one.press is not None and one.press.force_n == 0.10 and one.press.comfortable_n.value == 0.22
    )
    effort, chance = (table.rows[place][codes.index(code)] for code in ("effort", "chance"))
    assert isinstance(effort, Bar)
    assert isinstance(chance, Bar)
    assert said(effort.text) == "45% (38 to 57)"
    assert (effort.limit_share, chance.share) == (0.5, 0.97)
    assert said(chance.text) == "97% of presses land, assumed"


def test_more_than_there_is_has_no_figure() -> None:
    over = message(PlanReport.effort, effort=Estimate(1.2, 1.1, 1.3), all_of_it=True)
    assert said(over) == "more than the player has"


def test_a_clash_comes_first_and_its_ways_out_are_numbered() -> None:
    text = screen_words(report_of(clashing_plan()))
    assert text.index("SOME REQUESTS CANNOT BE MET") < text.index("Controls at a glance")
    assert "\n  1. Let attack go to the game's automatic attack (cost 2); this layout takes" in text


def test_a_what_if_is_marked_before_anything_else() -> None:
    plan = replace(sample_plan(), wishes=Wishes(only_kit=True))
    assert screen_words(report_of(plan)).startswith("WHAT IF")


def test_a_table_gives_up_columns_and_width() -> None:
    """Columns by their code; one without any cell is not printed; the widest gives way first, and no room is left idle."""
    (table,) = report_of(shared_plan()).tables("controls")
    assert isinstance(table, Table)
    assert [one.code for one in table.only("effort", "action").columns] == ["effort", "action"]
    empty = replace(table, rows=tuple((*row[:-1], None) for row in table.rows))
    assert "effort" not in [one.code for one in empty.only("action", "effort").columns]
    assert table_words(table, ("action",)).splitlines()[0] == "  action"
    rows = [["a", "b"], ["one two three four five six", "seven eight nine"]]
    assert columns_words(rows, 30).splitlines() == [
        "  a                b", "  one two three    seven eight", "  four five six    nine",
    ]  # fmt: skip
