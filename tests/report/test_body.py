"""The picture of the seated player: markers at the right part and side, labels that do not meet."""

from __future__ import annotations

import itertools
import math
import re
import xml.etree.ElementTree as ET
from typing import get_args

import pytest

from stickwright.model.player import Part
from stickwright.report.body import BodyMark, body_alt, body_drawing, part_named, side_named

SVG = "{http://www.w3.org/2000/svg}"
PARTS = get_args(Part)
SIZE = (184.0, 84.0)


def mark(number: int, part: str, side: str, words: str = "pip") -> BodyMark:
    return BodyMark(number, f"{side} {part}".removeprefix("middle "), part, side, words)


def markers(svg: str) -> dict[str, tuple[float, float]]:
    """Middle of each numbered circle, by its number."""
    nodes = list(ET.fromstring(svg).iter())
    found = {}
    for circle, words in itertools.pairwise(nodes):
        said = "".join(words.itertext())
        if circle.tag == f"{SVG}circle" and words.tag == f"{SVG}text" and said.isdigit():
            found[said] = (float(circle.get("cx", "nan")), float(circle.get("cy", "nan")))
    return found


def label_rows(svg: str) -> list[tuple[float, float, str, str]]:
    """Place, anchor and words of every row of text but the numbers in the markers."""
    rows = []
    for node in ET.fromstring(svg).iter(f"{SVG}text"):
        said = "".join(node.itertext())
        if not said.isdigit():
            rows.append((float(node.get("x", "nan")), float(node.get("y", "nan")), node.get("text-anchor", ""), said))
    return rows


@pytest.mark.parametrize("part", PARTS)
def test_every_part_has_its_place_on_its_own_side(part: str) -> None:
    """Seen from the front, the player's right is on the left of the picture: also where the part is paired."""
    right = markers(body_drawing([mark(1, part, "right")]))["1"]
    left = markers(body_drawing([mark(1, part, "left")]))["1"]
    if part in ("lip", "tongue", "chin", "trunk"):
        assert right == left == (92.0, right[1])
        return
    assert right[0] < 92.0 < left[0]
    assert right[0] + left[0] == pytest.approx(184.0, abs=0.02)
    assert right[1] == left[1]


def test_parts_are_in_the_order_of_a_seated_body() -> None:
    """From the crown down: head, cheek, lip, tongue, chin, shoulder, trunk, elbow, hand, knee, foot, toe."""
    order = (
        "head",
        "cheek",
        "lip",
        "tongue",
        "chin",
        "shoulder",
        "trunk",
        "elbow",
        "forearm",
        "hand",
        "fingertip",
        "foot",
        "toe",
    )
    heights = [markers(body_drawing([mark(1, part, "left")]))["1"][1] for part in order]
    assert heights == sorted(heights)
    assert all(0 < height < SIZE[1] for height in heights)


@pytest.mark.parametrize("height_mm", [52.0, 62.0, 84.0])
def test_crowded_face_and_hand_keep_their_markers_apart(height_mm: float) -> None:
    """Five parts of the face and three of one hand: no two markers overlap, none leaves the paper."""
    face = [mark(n, part, "middle") for n, part in enumerate(("chin", "lip", "tongue", "cheek", "head"), 1)]
    hand = [mark(n, part, "left") for n, part in enumerate(("fingertip", "thumb", "hand"), 6)]
    found = markers(body_drawing([*face, *hand], (184.0, height_mm)))
    assert len(found) == 8
    assert min(math.dist(a, b) for a, b in itertools.combinations(found.values(), 2)) >= 5.8
    assert all(3 <= x <= 181 and 3 <= y <= height_mm - 1 for x, y in found.values())


@pytest.mark.parametrize("height_mm", [52.0, 84.0])
def test_labels_do_not_meet(height_mm: float) -> None:
    """Rows of one column are a line apart, however many and however long the names are; none leaves the paper."""
    long = "left residual limb just below the elbow, on the padded armrest"
    marks = [
        BodyMark(n, f"{long} {n}", "forearm", "left" if n % 2 else "right", "large switch; small one")
        for n in range(1, 9)
    ]
    rows = label_rows(body_drawing(marks, (184.0, height_mm)))
    for anchor in ("start", "end"):
        heights = sorted(y for _, y, side, _ in rows if side == anchor)
        assert all(b - a >= 4.6 for a, b in itertools.pairwise(heights))
        assert heights[0] > 0
        assert heights[-1] <= height_mm
    assert all(any(f"… armrest {n}" in said or f"armrest {n}" in said for *_, said in rows) for n in range(1, 9))


def test_sides_are_named_and_type_is_11_point() -> None:
    """The picture says whose right it is; 11 points are 3.88 mm."""
    svg = body_drawing([mark(1, "chin", "middle", "birch + soft cup")])
    said = [words for *_, words in label_rows(svg)]
    for words in ("the player's right", "the player's left", "seen from the front", "birch + soft cup"):
        assert words in said
    assert {float(size) for size in re.findall(r'font-size="([\d.]+)"', svg)} == {3.9}


def test_part_that_is_not_known_is_named_without_a_line() -> None:
    """Breath has no place on the picture: it is named, not put somewhere."""
    svg = body_drawing([BodyMark(1, "breath", "", "middle", "puff")])
    assert markers(svg) == {}
    assert "1  breath" in svg
    assert "1 breath: puff" in body_alt([BodyMark(1, "breath", "", "middle", "puff")])


def test_parts_by_their_names() -> None:
    """The words that people use for a site tell its part; the narrower part wins."""
    for name, part in (("right index finger", "fingertip"), ("left thumb", "thumb"), ("left fist", "hand"),
                       ("right forearm end", "forearm"), ("lower lip", "lip"), ("head left", "head"),
                       ("left hand, ring finger", "fingertip"), ("right foot, heel", "foot")):  # fmt: skip
        assert part_named(name) == part
    assert side_named("head left") == "left"
    assert set(PARTS) == {part_named(part) for part in PARTS}


def test_same_marks_same_bytes() -> None:
    """The same parts give the same file."""
    marks = [mark(1, "chin", "middle"), mark(2, "foot", "left")]
    assert body_drawing(marks) == body_drawing(marks)


@pytest.mark.parametrize("side", ["left", "right"])
def test_a_line_leads_from_beside_the_name_to_the_part(side: str) -> None:
    """It begins where the words end, towards the picture, and ends at the dot on the part; nothing of it leaves the paper."""
    svg = body_drawing([mark(1, "hand", side), mark(2, "foot", side)])
    root = ET.fromstring(svg)
    dots = [
        (float(c.get("cx", "nan")), float(c.get("cy", "nan"))) for c in root.iter(f"{SVG}circle") if c.get("r") == "0.7"
    ]
    paths = [[float(x) for x in re.findall(r"-?[\d.]+", node.get("d", ""))] for node in root.iter(f"{SVG}path")]
    ends = {(*p[2:],): (*p[:2],) for p in paths if len(p) == 4 and p[:2] != p[2:]}  # where each line comes from
    assert len(dots) == 2
    for dot in dots:
        start = ends[dot]
        x = ends.get(start, start)[0]
        assert 5 * 2.0 < (x if side == "right" else SIZE[0] - x) < min(dot[0], SIZE[0] - dot[0])


def test_the_player_is_drawn_alike_on_both_sides() -> None:
    """Seen from the front everything has its like across the middle line, but for the nose."""
    nodes = ET.fromstring(body_drawing([])).iter(f"{SVG}path")
    paths = [[float(x) for x in re.findall(r"-?[\d.]+", node.get("d", ""))] for node in nodes]
    points = [{(x, y) for x, y in zip(path[::2], path[1::2], strict=True)} for path in paths]

    def has_its_like(one: set[tuple[float, float]]) -> bool:
        across = [(SIZE[0] - x, y) for x, y in one]
        return any(
            len(one) == len(other) and all(min(math.dist(a, b) for b in other) < 0.03 for a in across)
            for other in points
        )

    alone = [one for one in points if not has_its_like(one)]
    assert len(points) > 20
    assert len(alone) == 1
