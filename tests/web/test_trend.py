"""Force through time: the drawing and its table say the same."""

from __future__ import annotations

import math
import re
from xml.etree import ElementTree

import pytest

from stickwright.web.trend import Point, site_trends

SVG = "{http://www.w3.org/2000/svg}"


def points() -> list[Point]:
    def at(day: str, degrees: float, *repeats: float) -> Point:
        return Point(day, "chin", math.radians(degrees), repeats)

    return [
        at("2026-06-01", 0, 0.8, 0.9, 0.7), at("2026-03-01", 0, 1.2, 1.1, 1.3), at("2026-03-01", 90, 1.0),
        at("2026-06-01", 90, 1.05, 0.95), at("2026-06-01", 180, 0.5),
    ]  # fmt: skip


def test_table_holds_the_middle_and_the_ends_of_the_repeats() -> None:
    """Median and extremes by hand; what was not taken is said."""
    (trend,) = site_trends(points())
    assert trend.heads == ("Direction", "1 Mar 2026", "1 Jun 2026")
    assert trend.rows == (
        ("right", "1.2 (1.1 to 1.3)", "0.80 (0.70 to 0.90)"),
        ("forward", "1.0", "1.0 (0.95 to 1.1)"),
        ("left", "not measured", "0.50"),
    )


def test_the_sentence_counts_only_what_differs_beyond_the_repeats() -> None:
    """Right fell from 1.1-1.3 to 0.7-0.9; forward overlaps."""
    (trend,) = site_trends(points())
    assert "more in 0, less in 1" in trend.sentence


def test_the_drawing_has_a_point_for_each_reading_and_its_sentence() -> None:
    (trend,) = site_trends(points())
    root = ElementTree.fromstring(trend.svg)
    assert len(root.findall(f".//{SVG}circle")) == 5
    assert root.get("aria-label") == trend.sentence
    assert "style=" not in trend.svg


def test_units_of_the_gauge() -> None:
    """1.2 N is 122 gf by the standard gravity of 9.80665 m/s2."""
    (trend,) = site_trends(points(), unit="gf")
    assert trend.rows[0][1].startswith("122 (112 to 133)")


def test_one_visit_is_no_trend() -> None:
    assert site_trends([point for point in points() if point.on_date == "2026-03-01"]) == ()


def test_each_point_stands_at_its_date_and_force() -> None:
    """Forces from 0 at the foot of a panel to 2 N at its top, dates from the first to the last of the site: the first visit of
    1.2 N lies at six tenths of the height, and the panel of a direction that was read at the last visit only has the
    same two dates below it as the others."""
    (trend,) = site_trends(points())
    right, forward, left = list(ElementTree.fromstring(trend.svg))
    for panel in (right, forward, left):
        texts = {text.text: text for text in panel.findall(f"{SVG}text")}
        assert {"2026-03", "2026-06", "2.0", "0"} <= set(texts)
        foot, top = (float(texts[end].get("y", "")) for end in ("0", "2.0"))
        axis = [float(number) for number in re.findall(r"[\d.]+", panel.find(f"{SVG}path").get("d", ""))]  # type: ignore[union-attr]
        assert foot > top
        middles = {float(one.get("cx", "")): float(one.get("cy", "")) for one in panel.findall(f"{SVG}circle")}
        force = {"→": {0: 1.2, 1: 0.8}, "↑": {0: 1.0, 1: 1.0}, "←": {1: 0.5}}[panel.find(f"{SVG}text").text[0]]  # type: ignore[union-attr, index]
        _, high, low, wide = axis
        ends = {0: axis[0] + 8, 1: wide - 8}
        for visit, newton in force.items():
            assert middles[ends[visit]] == pytest.approx(low - (low - high) * newton / 2, abs=0.06)
        bars = [[float(number) for number in re.findall(r"[\d.]+", one.get("d", ""))]
                for one in panel.findall(f"{SVG}path[@class='bar']")]  # fmt: skip
        assert sorted(x for x, _, _ in bars) == sorted(middles)
        assert all(weakest >= middles[x] >= strongest for x, weakest, strongest in bars)
