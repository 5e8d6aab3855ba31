"""Gauge readings of a site, one reading a row."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from said import said
from stickwright.errors import BadInput
from stickwright.files.gauge import gauge_of, gauge_text, read_gauge
from stickwright.model.player import DirectionReading


def refusals(text):
    with pytest.raises(BadInput) as refused:
        gauge_of(text, "readings/a.csv")
    return [said(problem.sentence) for problem in refused.value.problems]


def test_rows_of_a_direction_are_its_repeats_and_the_last_block_shows_tiring():
    """Taken in the order 0, 90, 0, 90, 0: the last 0 comes after others and is kept apart, not pooled.
    Figures by hand: 1 gf is 0.00980665 N (standard gravity)."""
    text = "direction_deg,force_gf,reach_mm\n0,40,9\n90,30,\n0,44,\n90,,5\n0,35,8\n"
    found = gauge_of(text, "a.csv")
    assert [math.degrees(one.direction_rad) for one in found.reading] == pytest.approx([0, 90], abs=1e-12)
    assert found.reading[0].force_n == pytest.approx((0.392266, 0.4314926), rel=1e-12)
    assert found.reading[0].reach_m == pytest.approx((0.009, 0.008), rel=1e-12)
    assert found.reading[1].force_n == pytest.approx((0.2941995,), rel=1e-12)
    assert found.again_force_n == pytest.approx((0.34323275,), rel=1e-12)


def test_one_direction_alone_is_never_taken_apart():
    """Six rows of one direction are six repeats: nothing came between."""
    found = gauge_of("direction_deg,force_n\n" + "0,1\n" * 6, "a.csv")
    assert found.reading[0].force_n == (1.0,) * 6
    assert found.again_force_n == ()


def test_a_whole_turn_is_the_same_direction():
    """0 and 360 degrees are repeats of one direction."""
    assert len(gauge_of("direction_deg,force_n\n0,1\n360,2\n90,1\n", "a.csv").reading) == 2


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("direction,force_n\n0,1\n", "Write direction_rad or direction_deg."),
        ("direction_deg,force\n0,1\n", "headers such as direction_deg,force_n,reach_mm. Write force_n, force_mn"),
        ("direction_deg,forse_n\n0,1\n", "Did you mean 'force_n'?"),
        ("direction_deg,force_mm\n0,1\n", 'row 1: found the column "force_mm"'),
        ("force_n\n1\n", "readings/a.csv, row 1: found no direction"),
        ("direction_deg\n1\n", "found neither force nor reach"),
        ("direction_deg,force_n,force_gf\n0,1,1\n", "found force_n and force_gf, expected only one force column"),
        ("0,1\n90,2\n", "row 1: found numbers: 0, 1, expected headers such as"),
        ("direction_deg;force_n\n0;0,4\n", "columns separated by semicolons"),
        ("direction_deg,force_n\n", "a header and no row"),
        ("direction_deg,force_n\n0,0,44\n", "row 2: found 3 cells, expected 2"),
        (
            'direction_deg,force_n\n0,"0,44"\n',
            'row 2, force_n: found "0,44", expected a number in N with a decimal point.',
        ),
        ("direction_deg,force_n\n0,12 N\n", "the unit goes in the header."),
        ("direction_deg,force_n\n0,nan\n", 'row 2, force_n: found "nan"'),
        (
            "direction_deg,force_n\n0,1\n\n90,-2\n",
            "row 4, force_n: found -2, expected 0 to 500 N, without a sign. Left is",
        ),
        ("direction_deg,force_n\n0,4000\n", "expected 0 to 500 N. Check the unit in the header."),
        ("direction_deg,force_n\n,4\n", "row 2, direction_deg: found an empty cell"),
        ("direction_deg,force_n\n0,\n", "row 2: found a direction and nothing measured"),
        ("direction_deg,force_n\n700,1\n", "found 700, expected 0 to 360°"),
        ("direction_deg,force_n\n" + "0,1\n" * 10_001, "This looks like a recording"),
    ],
)
def test_each_mistake_has_its_sentence(text, words):
    """File, row as in a spreadsheet, column, and what to do."""
    (sentence,) = refusals(text)
    assert words in sentence


def test_many_bad_cells_are_ten_sentences_and_a_count():
    """All bad cells are counted; ten are told."""
    found = refusals("direction_deg,force_n\n" + "0,x\n" * 25)
    assert len(found) == 11
    assert "found 15 more problems like these" in found[-1]


def test_missing_folder_and_encoding(tmp_path):
    """The file itself may be wrong."""
    with pytest.raises(BadInput, match="found a folder, expected a file with gauge readings"):
        read_gauge(tmp_path)
    with pytest.raises(BadInput, match="found no such file"):
        read_gauge(tmp_path / "none.csv")
    (tmp_path / "a.csv").write_bytes(b"direction_deg,force_n\n0,1\n90,\xb52\n")
    with pytest.raises(BadInput, match=r"a\.csv, line 3, byte 4: found the byte B5, which is not UTF-8"):
        read_gauge(tmp_path / "a.csv")


repeats = st.lists(st.floats(0, 400), min_size=1, max_size=3).map(tuple)


@given(
    forces=st.lists(repeats, min_size=2, max_size=4),
    reaches=st.lists(st.lists(st.floats(0, 1), max_size=4).map(tuple), min_size=4, max_size=4),
    again=st.lists(st.floats(0, 400), max_size=3).map(tuple),
)
@settings(max_examples=100, deadline=None)
def test_written_readings_read_back(forces, reaches, again):
    """Law: what is written as a gauge file reads back to the same bits."""
    reading = tuple(
        DirectionReading(direction_rad=0.7 * place, force_n=force, reach_m=reach)
        for place, (force, reach) in enumerate(zip(forces, reaches, strict=False))
    )
    found = gauge_of(gauge_text(reading, again), "a.csv")
    assert (found.reading, found.again_force_n) == (reading, again)


@given(st.one_of(st.text(max_size=80), st.text('0123,;"\n.-ef', max_size=60).map("direction_deg,force_n\n{}".format)))
@settings(max_examples=300, deadline=None)
def test_nothing_but_a_sentence_comes_of_rubbish(text):
    """Law: whatever a file holds, it is read or refused in words."""
    problems = None
    try:
        gauge_of(text, "a.csv")
    except BadInput as refused:
        problems = refused.problems
    assert problems is None or all(problem.found and problem.expected for problem in problems)
    assert problems != ()
