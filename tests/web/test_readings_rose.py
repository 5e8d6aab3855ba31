"""The diagram of directions: each petal on its own side, leading to its own field."""

from __future__ import annotations

import math
from xml.etree import ElementTree

import pytest

from stickwright.web.readings_rose import INNER, OUTER, SIZE, Petal, rose


def petals() -> list[Petal]:
    names = ("right", "forward-right", "forward", "forward-left", "left", "back-left", "back", "back-right")
    return [
        Petal(str(45 * step), name, f"field-{step}", step < 6, step < 3) for step, name in enumerate(names)
    ]  # fmt: skip


def test_each_petal_lies_in_its_direction() -> None:
    """Right of the middle for right, above it for forward, at half the way between the inner and outer edge."""
    links = list(ElementTree.fromstring(str(rose(petals()))).iter("a"))
    assert [link.get("href") for link in links] == [f"#field-{step}" for step in range(8)]
    for step, link in enumerate(links):
        mark = link.find("text")
        path = link.find("path")
        assert mark is not None
        assert path is not None
        angle, middle = math.radians(45 * step), (OUTER + INNER) / 2
        assert float(mark.get("x", "")) == pytest.approx(SIZE / 2 + middle * math.cos(angle), abs=0.5)
        assert float(mark.get("y", "")) - 6 == pytest.approx(SIZE / 2 - middle * math.sin(angle), abs=0.5)
        corner = [float(number) for number in path.get("d", "")[1:].split("L")[0].split()]
        assert math.hypot(corner[0] - SIZE / 2, corner[1] - SIZE / 2) == pytest.approx(INNER, abs=0.1)
        seen = math.atan2(SIZE / 2 - corner[1], corner[0] - SIZE / 2)
        assert abs(math.remainder(seen - angle, math.tau)) < math.radians(22.5)


def test_each_petal_says_what_it_has() -> None:
    """A tick for force and range, a half for one of them, nothing for none; the same in words."""
    links = list(ElementTree.fromstring(str(rose(petals()))).iter("a"))
    assert [link.findtext("text") or "" for link in links] == ["✓"] * 3 + ["½"] * 3 + [""] * 2
    assert links[0].get("aria-label") == "right: force and movement range"
    assert links[3].get("aria-label") == "forward-left: force only"
    assert links[7].get("aria-label") == "back-right: nothing yet"
