"""The set-up from above: every number apart from every other and from the devices, each stick turned as it is to stand."""

from __future__ import annotations

import math
import re
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sample_plan import sample_plan
from sample_sharing import shared_plan

from stickwright.codes.message import Name
from stickwright.model.plan import Plan
from stickwright.report.family import first_page
from stickwright.report.setup_picture import Item, setup_picture

places = st.tuples(st.floats(-0.4, 0.4), st.floats(0.0, 0.8))


def circles(svg: str, radius: float) -> list[tuple[float, float]]:
    """Middles of the circles of one size."""
    found = []
    for tag in re.findall(r"<circle [^>]*>", svg):
        x, y, r = (float(re.search(rf'\b{name}="([\d.]+)"', tag)[1]) for name in ("cx", "cy", "r"))  # type: ignore[index]
        if r == radius:
            found.append((x, y))
    return found


@given(spots=st.lists(places, min_size=1, max_size=6), turn=st.floats(-3, 3))
def test_no_number_is_printed_on_another(spots: list[tuple[float, float]], turn: float) -> None:
    """Wherever the devices are, markers of 3.3 mm keep apart from each other."""
    items = [Item((str(number),), Name("ash"), "stick", at, True, turn) for number, at in enumerate(spots, start=1)]
    marks = circles(setup_picture(sample_plan(), items)["drawing"]["svg"], 3.3)
    assert len(marks) == len(spots)
    assert all(math.dist(one, other) >= 6.6 for one, other in combinations(marks, 2))


@pytest.mark.parametrize("plan", [sample_plan(), shared_plan()], ids=["one stick", "whole controller"])
def test_every_number_of_the_picture_is_in_the_list_beside_it(plan: Plan) -> None:
    """And in its sentence for screen readers; nothing but numbers and the hours of a clock is written on the picture."""
    told = first_page(plan)["picture"]
    written = re.findall(r">([^<>\s][^<>]*)</text>", told["drawing"]["svg"])
    numbers = [number for row in told["rows"] for number in row[0]]
    assert sorted(written) == sorted([*numbers, "12", "3", "6", "9"])
    assert all(row[1] in told["drawing"]["alt"] for row in told["rows"])


def test_a_place_that_nobody_measured_is_said() -> None:
    """Without a room the picture shows the part of the body, and the list and the caption say so."""
    told = first_page(sample_plan())["picture"]
    assert "No place was measured" in told["caption"]
    assert "Its place was not measured." in told["rows"][0][2]
