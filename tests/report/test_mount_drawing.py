"""The drawing of a mount: to scale, legible, black on white, and complete."""

from __future__ import annotations

import itertools
import math
import re
import xml.etree.ElementTree as ET
from dataclasses import replace

import pytest
from sample_mounts import chin_mount, finger_mount, fist_mount, mounted_plan, room

from said import said
from stickwright.model.mounting import Dimension
from stickwright.model.room import Landmark
from stickwright.report.figures import all_figures
from stickwright.report.ink import text_mm
from stickwright.report.mount_drawing import along_words, clamp_range_words, dimension_rows, mount_alt, mount_drawing
from stickwright.report.mount_shapes import base_of

SVG = "{http://www.w3.org/2000/svg}"
MOUNTS = {"arm": finger_mount, "tray": fist_mount, "refused": chin_mount}


def drawn(make: object, height_mm: float = 100.0) -> str:
    mount = make()  # type: ignore[operator]
    return mount_drawing(mount, room(), base_of(mounted_plan(), mount), (184.0, height_mm))


def tree(svg: str) -> ET.Element:
    return ET.fromstring(svg[svg.index("<svg") :])


def words(svg: str) -> list[str]:
    return [node.text or "" for node in tree(svg).iter(f"{SVG}text")]


def stretches(svg: str) -> list[tuple[tuple[float, float], tuple[float, float]]]:
    """Both ends of every straight stroke."""
    ends = []
    for node in tree(svg).iter(f"{SVG}path"):
        numbers = [float(number) for number in re.findall(r"-?\d+\.?\d*", node.get("d", ""))]
        if len(numbers) == 4:
            ends.append(((numbers[0], numbers[1]), (numbers[2], numbers[3])))
    return ends


def one_to(svg: str) -> float:
    found = re.search(r"Scale 1 to ([\d.]+)", " ".join(words(svg)))
    assert found is not None
    return float(found[1])


def test_distances_are_drawn_to_the_scale_that_is_written() -> None:
    """205 mm upright and 55 mm level, at 1 to n, are lines of 205/n and 55/n millimetre with their numbers beside them;
    185 mm along the tube likewise."""
    svg = drawn(finger_mount)
    scale = one_to(svg)
    lines = stretches(svg)
    for distance, upright in ((205, True), (75, True), (55, False), (185, True)):
        fitting = [
            line for line in lines
            if math.isclose(math.dist(*line), distance / scale, abs_tol=0.015)
            and abs(line[0][0] - line[1][0] if upright else line[0][1] - line[1][1]) < 0.011
        ]  # fmt: skip
        assert fitting, distance
    told = words(svg)
    assert {"clamp 205 mm", "base 55 mm", "base 75 mm", "base 12 mm"} <= set(told)
    assert "clamp: along the tube from its front end: 185 mm" in " ".join(told)


def test_the_bar_is_to_scale() -> None:
    """Three boxes of 100 mm each make 300 mm at the scale written."""
    svg = drawn(finger_mount)
    boxes = [node for node in tree(svg).iter(f"{SVG}rect") if node.get("height") == "1.6"]
    assert sum(float(node.get("width", 0)) for node in boxes) == pytest.approx(300 / one_to(svg), abs=0.03)
    assert "300 mm" in words(svg)


@pytest.mark.parametrize("name", MOUNTS)
def test_what_must_stay_free_is_hatched_and_named(name: str) -> None:
    """Every box in sight has its name and its hatching, in the plan at least."""
    svg = drawn(MOUNTS[name])
    told = " ".join(words(svg))
    assert "keep free: face" in told
    hatched = [line for line in stretches(svg) if math.isclose(line[1][0] - line[0][0], line[1][1] - line[0][1], abs_tol=0.02)
               or math.isclose(line[1][0] - line[0][0], line[0][1] - line[1][1], abs_tol=0.02)]  # fmt: skip
    assert len(hatched) > 8


def test_names_of_what_is_set() -> None:
    """Stick, arrow, clamp, joint, cable, tube, tray and the landmark are named; the control is kept free."""
    told = " ".join(words(drawn(finger_mount)))
    for name in ("dew", "player's forward", "2 elbow", "cable", "right armrest tube, 25 mm thick",
                 "front end of the right armrest", "keep free: chair control", "no clamp here"):  # fmt: skip
        assert name in told, name
    assert "chair tray" in " ".join(words(drawn(fist_mount)))
    assert told.index("From above: forward is up") < told.index("From the player's right: forward is right")


@pytest.mark.parametrize("name", MOUNTS)
@pytest.mark.parametrize("height_mm", [80.0, 100.0])
def test_writing_is_legible_and_apart(name: str, height_mm: float) -> None:
    """8.5 points or more, inside the paper, no line of writing over another."""
    svg = drawn(MOUNTS[name], height_mm)
    boxes = []
    for node in tree(svg).iter(f"{SVG}text"):
        size, text = float(node.get("font-size", 0)), node.text or ""
        assert size / 25.4 * 72 >= 8.5
        wide, x, y = (
            text_mm(text, node.get("font-weight") == "bold") * 0.9,
            float(node.get("x", 0)),
            float(node.get("y", 0)),
        )
        start = {"middle": -wide / 2, "end": -wide}.get(node.get("text-anchor", ""), 0.0)
        if node.get("transform"):
            boxes.append((x - 2.3, y - wide / 2, x, y + wide / 2, text))
        else:
            boxes.append((x + start, y - 2.3, x + start + wide, y, text))
    for left, top, right, bottom, text in boxes:
        assert left >= -0.1, text
        assert right <= 184.1, text
        assert top >= 0, text
        assert bottom <= height_mm, text
    for a, b in itertools.combinations(boxes, 2):
        assert a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1], (a[4], b[4])


@pytest.mark.parametrize("name", MOUNTS)
def test_black_white_and_grey_only(name: str) -> None:
    """No colour carries meaning: there is none."""
    colours = set(re.findall(r'(?:fill|stroke)="([^"]+)"', drawn(MOUNTS[name])))
    assert colours <= {"black", "white", "none", "#8c8c8c"}


@pytest.mark.parametrize("name", MOUNTS)
def test_same_mount_same_bytes(name: str) -> None:
    assert drawn(MOUNTS[name]) == drawn(MOUNTS[name])


def test_arrow_points_to_the_players_forward() -> None:
    """Turned 10 degrees clockwise, the arrow leans to the right by tan 10 degrees."""
    svg = drawn(finger_mount)
    thick = [node for node in tree(svg).iter(f"{SVG}path") if node.get("stroke-width") == "0.9"]
    (numbers,) = [[float(n) for n in re.findall(r"-?\d+\.?\d*", node.get("d", ""))] for node in thick]
    assert (numbers[2] - numbers[0]) / (numbers[1] - numbers[3]) == pytest.approx(math.tan(math.radians(10)), abs=0.003)


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
    assert any(math.isclose(math.dist(*line), 1470 / one_to(svg), abs_tol=0.015) for line in stretches(svg))


def test_every_mount_is_among_the_figures() -> None:
    names = [name for name in all_figures(mounted_plan()) if name.startswith("mount-")]
    assert names == ["mount-1-right-index-finger", "mount-2-left-fist", "mount-3-chin"]


def test_where_the_clamp_may_sit_is_a_band_on_its_tube() -> None:
    """From 40 to 150 and 170 to 260 mm of the tube's front end: bands of 110/n and 90/n millimetre at 1 to n in both views, named
    in the one that shows the tube's length; in words for those who do not see it. No band where there is no choice."""
    svg = drawn(finger_mount)
    scale = one_to(svg)
    bands = [
        sum(abs(float(a) - float(b)) for a, b in zip(spots[:2], spots[2:], strict=True))
        for line in tree(svg).iter("{http://www.w3.org/2000/svg}path")
        if line.get("stroke-width") == "1.1"
        for spots in [re.findall(r"-?[\d.]+", line.get("d") or "")]
    ]
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
