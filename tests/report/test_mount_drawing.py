"""The drawing of a mount: to scale, legible, black on white, and complete."""

from __future__ import annotations

import itertools
import math
import re
import xml.etree.ElementTree as ET
from collections.abc import Callable
from dataclasses import replace
from functools import cache

import pytest
from sample_mounts import chin_mount, finger_mount, fist_mount, mounted_plan, room

from said import said
from stickwright.model.mounting import Dimension, SiteMount
from stickwright.model.room import Landmark
from stickwright.report.figures import all_figures
from stickwright.report.ink import text_mm
from stickwright.report.mount_balloons import crosses
from stickwright.report.mount_distances import along_words, clamp_range_words, dimension_rows, mount_alt
from stickwright.report.mount_drawing import mount_drawing
from stickwright.report.mount_shapes import base_of

SVG = "{http://www.w3.org/2000/svg}"
MOUNTS = {"arm": finger_mount, "tray": fist_mount, "refused": chin_mount}
Spot = tuple[float, float]
Box = tuple[float, float, float, float, str]


@cache
def drawn(make: Callable[[], SiteMount], height_mm: float = 248.0) -> str:
    mount = make()
    return mount_drawing(mount, room(), base_of(mounted_plan(), mount), (184.0, height_mm))


def tree(svg: str) -> ET.Element:
    return ET.fromstring(svg[svg.index("<svg") :])


def words(svg: str) -> list[str]:
    return [node.text or "" for node in tree(svg).iter(f"{SVG}text")]


def lines(svg: str, *kinds: str) -> list[list[Spot]]:
    """Corners of every line of some kinds; of all, without a kind."""
    out = []
    for node in tree(svg).iter(f"{SVG}path"):
        if not kinds or node.get("class") in kinds:
            numbers = [float(number) for number in re.findall(r"-?\d+\.?\d*", node.get("d", ""))]
            out.append(list(zip(numbers[::2], numbers[1::2], strict=True)))
    return out


def stretches(svg: str, *kinds: str) -> list[tuple[Spot, Spot]]:
    """Both ends of every straight stroke."""
    return [pair for line in lines(svg, *kinds) for pair in itertools.pairwise(line)]


def one_to(svg: str) -> float:
    found = re.search(r"Scale 1 to ([\d.]+)", " ".join(words(svg)))
    assert found is not None
    return float(found[1])


def boxes(svg: str) -> list[Box]:
    """Where writing stands: left, top, right, bottom, text; of what leans, the box about it."""
    out = []
    for node in tree(svg).iter(f"{SVG}text"):
        size, text = float(node.get("font-size", 0)), node.text or ""
        wide = text_mm(text, node.get("font-weight") == "bold") * 0.9 * size / 3.1
        x, y = float(node.get("x", 0)), float(node.get("y", 0))
        start = {"middle": -wide / 2, "end": -wide}.get(node.get("text-anchor", ""), 0.0)
        turned = re.match(r"rotate\((-?[\d.]+)", node.get("transform", ""))
        turn = math.radians(float(turned[1])) if turned else 0.0
        corners = [
            (x + a * math.cos(turn) - b * math.sin(turn), y + a * math.sin(turn) + b * math.cos(turn))
            for a in (start, start + wide)
            for b in (0.0, -0.73 * size)
        ]
        columns, rows = zip(*corners, strict=True)
        out.append((min(columns), min(rows), max(columns), max(rows), text))
    return out


def meets(box: Box, line: tuple[Spot, Spot]) -> bool:
    """Whether a stretch of a line runs into a box."""
    left, top, right, bottom, _ = box
    steps = max(2, int(math.dist(*line) / 0.2))
    return any(
        left < a + (c - a) * n / steps < right and top < b + (d - b) * n / steps < bottom
        for (a, b), (c, d) in [line]
        for n in range(steps + 1)
    )


def test_distances_are_drawn_to_the_scale_that_is_written() -> None:
    """205 mm upright and 55 mm level, at 1 to n, are lines of 205/n and 55/n millimetre with their numbers beside them;
    185 mm along the tube likewise."""
    svg = drawn(finger_mount)
    scale = one_to(svg)
    for distance, upright in ((205, True), (75, True), (12, True), (55, False), (185, True)):
        fitting = [
            line for line in stretches(svg, "dimension")
            if math.isclose(math.dist(*line), distance / scale, abs_tol=0.015)
            and abs(line[0][0] - line[1][0] if upright else line[0][1] - line[1][1]) < 0.011
        ]  # fmt: skip
        assert fitting, distance
    assert {"205", "55", "75", "12", "185"} <= set(words(svg))
    assert "along the tube from its front end: 185 mm" in " ".join(words(svg))


@pytest.mark.parametrize("name", MOUNTS)
def test_ends_of_every_dimension_give_its_number(name: str) -> None:
    """Read back from the paper: each dimension's length times the scale of its view is one of the numbers beside it, to the half
    millimetre; nothing is dimensioned without a number."""
    svg = drawn(MOUNTS[name])
    told = tree(svg)
    numbers = [
        (box, float(box[4])) for box, node in zip(boxes(svg), told.iter(f"{SVG}text"), strict=True)
        if node.get("class") == "number" and not any(
            math.dist((float(c.get("cx", 0)), float(c.get("cy", 0))), ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)) < 1.0
            for c in told.iter(f"{SVG}circle")
        )
    ]  # fmt: skip
    dimensions = stretches(svg, "dimension")
    assert len(numbers) == len(dimensions)
    scales = {float(found) for text in words(svg) for found in re.findall(r"1:(\d+)", text)}
    for line in dimensions:
        middle = ((line[0][0] + line[1][0]) / 2, (line[0][1] + line[1][1]) / 2)
        far = math.dist(*line) / 2 + 14.0
        near = [
            number for box, number in numbers
            if math.dist(middle, ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)) < far
        ]  # fmt: skip
        assert any(abs(math.dist(*line) * scale - number) <= 0.5 + 0.011 * scale for number in near for scale in scales)


def test_the_bar_is_to_scale() -> None:
    """Its end is labelled with what its length is at the scale that is written."""
    svg = drawn(finger_mount)
    bars = [line for line in stretches(svg, "thin") if line[0][1] == line[1][1] and line[0][1] > 230.0]
    left = min(min(a[0], b[0]) for a, b in bars)
    right = max(max(a[0], b[0]) for a, b in bars)
    assert f"{round((right - left) * one_to(svg))}" in words(svg)
    assert "all lengths in mm. Print at 100%" in " ".join(words(svg))


@pytest.mark.parametrize("name", MOUNTS)
def test_what_must_stay_free_is_hatched_and_named(name: str) -> None:
    """Every box in sight has its name and its hatching, in the plan at least."""
    svg = drawn(MOUNTS[name])
    assert "keep free: face" in " ".join(words(svg))
    hatched = [line for line in stretches(svg, "hatch") if math.isclose(line[1][0] - line[0][0], line[1][1] - line[0][1], abs_tol=0.02)
               or math.isclose(line[1][0] - line[0][0], line[0][1] - line[1][1], abs_tol=0.02)]  # fmt: skip
    assert len(hatched) > 8


def test_names_of_what_is_set() -> None:
    """Stick, arrow, clamp, joint, cable, tube, tray and the landmark are named; the control is kept free."""
    told = " ".join(words(drawn(finger_mount)))
    for name in ("dew: device", "player's forward", "elbow: second link", "cable", "right armrest tube: 25 mm",
                 "front end of the right", "measure from", "keep free: chair control", "clamp of the short arm"):  # fmt: skip
        assert name in told, name
    assert "chair tray" in " ".join(words(drawn(fist_mount)))
    assert told.index("From above: forward is up, 1:") < told.index("From the player's right: forward is right, 1:")
    assert "12 = straight" in told


@pytest.mark.parametrize("name", MOUNTS)
@pytest.mark.parametrize("height_mm", [230.0, 248.0])
def test_writing_is_legible_and_apart(name: str, height_mm: float) -> None:
    """8.5 points or more, inside the paper, no line of writing over another."""
    svg = drawn(MOUNTS[name], height_mm)
    for node in tree(svg).iter(f"{SVG}text"):
        assert float(node.get("font-size", 0)) / 25.4 * 72 >= 8.5
    for left, top, right, bottom, text in boxes(svg):
        assert left >= -0.1, text
        assert right <= 184.1, text
        assert top >= 0, text
        assert bottom <= height_mm, text
    for a, b in itertools.combinations(boxes(svg), 2):
        assert a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1], (a[4], b[4])


@pytest.mark.parametrize("name", MOUNTS)
def test_no_writing_lies_on_the_drawing(name: str) -> None:
    """No word and no number meets an outline, an axis, a hidden line or a hatching."""
    svg = drawn(MOUNTS[name])
    told = stretches(svg, "seen", "hidden", "phantom", "hatch", "axis", "band", "cable", "break", "extension", "sign")
    clock = [box for box in boxes(svg) if box[0] > 130.0 and box[4].isdigit()]  # its hands end in their numbers
    for box in boxes(svg):
        if box not in clock:
            assert not [line for line in told if meets(box, line)], box[4]


@pytest.mark.parametrize("name", MOUNTS)
def test_no_two_leaders_cross(name: str) -> None:
    for a, b in itertools.combinations(stretches(drawn(MOUNTS[name]), "leader"), 2):
        assert not crosses(*a, *b)


@pytest.mark.parametrize("name", MOUNTS)
def test_every_number_is_in_the_list_and_in_a_view(name: str) -> None:
    """The list counts from 1; each of its numbers stands in a balloon, at most once in each of the two views and on the clock."""
    svg = drawn(MOUNTS[name])
    rows = [int(node.text or 0) for node in tree(svg).iter(f"{SVG}text") if node.get("class") == "row"]
    assert rows == list(range(1, len(rows) + 1))
    at = [
        (float(one.get("cx", 0)), float(one.get("cy", 0)))
        for one in tree(svg).iter(f"{SVG}circle")
        if one.get("class") == "leader"
    ]
    balloons = [
        int(box[4]) for box in boxes(svg)
        if any(math.dist(((box[0] + box[2]) / 2, (box[1] + box[3]) / 2), spot) < 1.0 for spot in at)
    ]  # fmt: skip
    assert set(balloons) == set(rows)
    assert max(balloons.count(row) for row in rows) <= 3


def test_the_mount_has_its_numbers_in_both_views() -> None:
    """Links, elbow, clamp, device and tube are shown by both views, and numbered in both."""
    svg = drawn(finger_mount)
    at = [
        (float(one.get("cx", 0)), float(one.get("cy", 0)))
        for one in tree(svg).iter(f"{SVG}circle")
        if one.get("class") == "leader"
    ]
    told = [int(box[4]) for box in boxes(svg) if box[4].isdigit() and box[2] < 130.0
            and any(math.dist(((box[0] + box[2]) / 2, (box[1] + box[3]) / 2), spot) < 1.0 for spot in at)]  # fmt: skip
    names = " ".join(words(svg))
    for number, name in (
        (1, "lower link"),
        (2, "elbow"),
        (3, "upper link"),
        (4, "clamp of"),
        (6, "dew"),
        (10, "right armrest tube"),
    ):
        assert name in names
        assert told.count(number) == 2, name


def test_hidden_edges_are_dashed_and_narrow() -> None:
    """Two widths, 2 to 1 (ISO 128-2): what is seen 0.5 mm, what is hidden, axes, neighbours and distances 0.25."""
    told = list(tree(drawn(finger_mount)).iter(f"{SVG}path"))
    for kind, width in (
        ("hidden", "0.25"),
        ("axis", "0.25"),
        ("phantom", "0.25"),
        ("dimension", "0.25"),
        ("leader", "0.25"),
    ):
        assert {node.get("stroke-width") for node in told if node.get("class") == kind} == {width}, kind
    assert {"0.5"} <= {node.get("stroke-width") for node in told if node.get("class") == "seen"} <= {"0.5", "0.35"}
    assert all(node.get("stroke-dasharray") for node in told if node.get("class") in ("hidden", "axis", "phantom"))


@pytest.mark.parametrize("name", MOUNTS)
def test_black_white_and_grey_only(name: str) -> None:
    """No colour carries meaning: there is none."""
    colours = set(re.findall(r'(?:fill|stroke)="([^"]+)"', drawn(MOUNTS[name])))
    assert colours <= {"black", "white", "none", "#8c8c8c"}


@pytest.mark.parametrize("name", MOUNTS)
def test_same_mount_same_bytes(name: str) -> None:
    again = drawn.__wrapped__(MOUNTS[name])
    assert (drawn.__wrapped__(MOUNTS[name]) == again) is True  # a difference of long texts is not worth its time


def test_arrow_points_to_the_players_forward() -> None:
    """Turned 10 degrees clockwise, the arrow leans to the right by tan 10 degrees."""
    svg = drawn(finger_mount)
    (((x0, y0), (x1, y1)),) = lines(svg, "front")
    assert (x1 - x0) / (y0 - y1) == pytest.approx(math.tan(math.radians(10)), abs=0.003)


def test_table_and_words_hold_what_the_drawing_holds() -> None:
    """The same for those who do not see it: each distance, the clamp, what stays free."""
    assert [said(cell) for cell in dimension_rows(finger_mount())[0]] == [
        "front end of the right armrest", "clamp", "205 mm back",
    ]  # fmt: skip
    assert dimension_rows(chin_mount()) == ()
    assert said(along_words(finger_mount(), room())) == "along the tube from its front end: 185 mm"
    assert along_words(fist_mount(), room()) == ""
    alt = said(mount_alt(finger_mount(), room()))
    for words_there in (
        "dew at the right index finger",
        "185 mm",
        "to middle of the base: 55 mm left, 75 mm back and 12 mm up",
        "chair control, face and transfer side",
    ):
        assert words_there in alt
    assert "held by nothing yet" in mount_alt(chin_mount(), room())


def test_a_far_landmark_makes_the_scale_smaller() -> None:
    """Everything that is measured stays in sight: a landmark 1.2 m away gives a smaller scale, not a cut line."""
    near = finger_mount()
    assert near.choice is not None
    far = Dimension("door frame", "clamp", "right", 1.47)
    wide = replace(near, choice=replace(near.choice, dimensions=(*near.choice.dimensions, far)))
    hall = room().model_copy(
        update={"landmark": (*room().landmark, Landmark(name="door frame", at_m=(-1.2, 0.3, 0.2)))}
    )
    svg = mount_drawing(wide, hall, (0.04, 0.04, 0.06))
    assert one_to(svg) > one_to(drawn(finger_mount))
    assert any(
        math.isclose(math.dist(*line), 1470 / one_to(svg), abs_tol=0.015) for line in stretches(svg, "dimension")
    )


def test_every_mount_is_among_the_figures() -> None:
    names = [name for name in all_figures(mounted_plan()) if name.startswith("mount-")]
    assert names == ["mount-1-right-index-finger", "mount-2-left-fist", "mount-3-chin"]


def test_where_the_clamp_may_sit_is_a_band_on_its_tube() -> None:
    """From 40 to 150 and 170 to 260 mm of the tube's front end: bands of 110/n and 90/n millimetre at 1 to n in both views, named
    in the one that shows the tube's length; in words for those who do not see it. No band where there is no choice."""
    svg = drawn(finger_mount)
    scale = one_to(svg)
    bands = [math.dist(*line) for line in stretches(svg, "band")]
    assert sorted(bands) == pytest.approx(sorted(2 * [110 / scale, 90 / scale]), abs=0.02)
    assert "where the clamp may sit" in " ".join(words(svg))
    assert said(clamp_range_words(finger_mount(), room())).startswith(
        "The clamp may sit 40 to 150 mm and 170 to 260 mm from the front end of the right armrest tube;"
    )
    choice = finger_mount().choice
    assert choice is not None
    assert choice.arm is not None
    for ranges, told in (
        ((), ""),
        (((0.185, 0.185),), "The clamp fits in no other place here: set the distance exactly."),
    ):
        bare = replace(finger_mount(), choice=replace(choice, arm=replace(choice.arm, ranges_m=ranges)))
        assert clamp_range_words(bare, room()) == told
