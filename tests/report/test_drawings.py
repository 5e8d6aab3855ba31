"""The drawing of the set-up is to the scale it states."""

from __future__ import annotations

import math
import re
import xml.etree.ElementTree as ET
from dataclasses import replace
from itertools import pairwise

import pytest
from sample_plan import finger_site, sample_plan

from stickwright.codes.estimate import Estimate
from stickwright.model.fit import Fit
from stickwright.model.plan import Plan
from stickwright.report.drawings import setup_alt, setup_drawing
from stickwright.report.family import first_page, trouble

SVG = "{http://www.w3.org/2000/svg}"


def chosen() -> Fit:
    choice = finger_site().choice
    assert choice is not None
    return choice


def closed_outlines(svg: str) -> list[list[tuple[float, float]]]:
    paths = [node.get("d", "") for node in ET.fromstring(svg).iter(f"{SVG}path")]
    return [
        [(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+),(-?[\d.]+)", path)]
        for path in paths
        if path.endswith("Z")
    ]


def scale_of(svg: str) -> float:
    said = re.search(r"scale 1 to ([\d.]+)", svg)
    return 1.0 if said is None else 1.0 / float(said[1])


@pytest.mark.parametrize("tilt_deg", [0.0, 12.0, -10.0])
@pytest.mark.parametrize("base_mm", [(40, 40, 62), (160, 120, 75), (54, 50, 30)])
def test_base_is_drawn_to_scale(tilt_deg: float, base_mm: tuple[float, float, float]) -> None:
    """Sides of the base on paper are its sides in millimetre times the scale printed, tilted or level."""
    fit = replace(chosen(), base_m=tuple(side / 1000 for side in base_mm), tilt_rad=math.radians(tilt_deg),
                  built_tilt_rad=math.radians(tilt_deg))  # fmt: skip
    svg = setup_drawing(fit)
    scale = scale_of(svg)
    lengths = [[math.dist(a, b) for a, b in pairwise(o)] for o in closed_outlines(svg) if len(o) == 4]
    side_view = [base_mm[0] * scale, base_mm[2] * scale, base_mm[0] * scale]
    from_above = [base_mm[1] * scale, base_mm[0] * scale, base_mm[1] * scale]
    assert any(sides == pytest.approx(side_view, abs=0.03) for sides in lengths)
    assert any(sides == pytest.approx(from_above, abs=0.03) for sides in lengths)


@pytest.mark.parametrize("height_mm", [42.0, 60.0, 84.0])
def test_nothing_is_drawn_outside_the_paper(height_mm: float) -> None:
    """The largest base, tilted, stays inside the drawing at every height."""
    fit = replace(
        chosen(), base_m=(0.16, 0.12, 0.075), contact_height_m=0.06, travel_m=0.024, tilt_rad=math.radians(20)
    )
    svg = setup_drawing(fit, (184.0, height_mm))
    points = [
        (float(x), float(y))
        for node in ET.fromstring(svg).iter(f"{SVG}path")
        for x, y in re.findall(r"(-?[\d.]+),(-?[\d.]+)", node.get("d", ""))
    ]
    assert all(0 <= x <= 184.0 and 0 <= y <= height_mm for x, y in points)


def test_sizes_and_directions_are_written() -> None:
    """Contact height, base, travel, tilt, topper and which way is forward stand on the drawing."""
    texts = ET.fromstring(setup_drawing(chosen())).iter(f"{SVG}text")
    said = " ".join("".join(node.itertext()) for node in texts).replace("\u00a0", " ")
    for words in ("45 mm", "62 mm", "base 40 × 40 mm", "moves 9.0 mm each way", "far edge raised 12°",
                  "low dish", "forward: this way", "back (player's side)", "left", "right",
                  "pivot drawn at the top of the base"):  # fmt: skip
        assert words in said


def test_unmeasured_base_is_said_and_dashed() -> None:
    """A base nobody measured is not shown as if it were."""
    svg = setup_drawing(replace(chosen(), base_m=None))
    assert "not measured" in svg
    assert "stroke-dasharray" in svg
    assert "base not measured" in setup_alt(replace(chosen(), base_m=None))


def test_touch_surface_has_no_lever() -> None:
    """A touch surface is drawn flat and says that the finger slides."""
    svg = setup_drawing(
        replace(chosen(), kind="touch", tilt_rad=0.0, built_tilt_rad=0.0, base_m=(0.06, 0.06, 0.012), travel_m=0.02)
    )
    assert "the finger slides" in svg
    assert "each way" not in svg


def test_own_slope_of_a_base_is_drawn_without_raising_it() -> None:
    """A base with a slope of 15 degrees of its own stands flat: its top falls length x tan 15 towards the player."""
    fit = replace(chosen(), base_m=(0.16, 0.12, 0.075), tilt_rad=math.radians(15), built_tilt_rad=0.0)
    svg = setup_drawing(fit)
    drop_mm = 160 * math.tan(math.radians(15)) * scale_of(svg)
    side = next(outline for outline in closed_outlines(svg) if len(outline) == 4)
    assert side[0][1] == side[1][1]
    assert side[3][1] - side[2][1] == pytest.approx(drop_mm, abs=0.03)
    assert "raised" not in svg
    assert "top slopes 15°" in svg


def front_of(svg: str) -> float:
    """Where the mark at the front of the base points in the view from above, degrees anticlockwise from straight ahead; read off
    the paper, whose y runs down."""
    corners = next(outline for outline in reversed(closed_outlines(svg)) if len(outline) == 4)
    middle = (sum(x for x, _ in corners) / 4, sum(y for _, y in corners) / 4)
    tip = min((o[0] for o in closed_outlines(svg) if len(o) == 3), key=lambda one: math.dist(one, middle))
    return math.degrees(math.atan2(middle[0] - tip[0], middle[1] - tip[1]))


@pytest.mark.parametrize("turn_deg", [23.0, -14.0, 90.0, 178.0])
def test_base_is_drawn_turned_as_it_is_to_stand(turn_deg: float) -> None:
    """The front of the base and its corners lie where the turn takes them, anticlockwise as seen from above; the size stays, and
    the words beside it say the same."""
    fit = replace(chosen(), base_m=(0.06, 0.05, 0.03))
    svg = setup_drawing(fit, turn_rad=math.radians(turn_deg))
    assert front_of(svg) == pytest.approx(turn_deg, abs=0.2)
    corners = next(outline for outline in reversed(closed_outlines(svg)) if len(outline) == 4)
    sides = [math.dist(a, b) for a, b in pairwise(corners)]
    assert sides == pytest.approx([50 * scale_of(svg), 60 * scale_of(svg), 50 * scale_of(svg)], abs=0.03)
    sense = "anticlockwise" if turn_deg > 0 else "clockwise"
    said = " ".join("".join(node.itertext()) for node in ET.fromstring(svg).iter(f"{SVG}text"))
    assert f"turned {abs(turn_deg):.0f}° {sense}" in said
    assert f"the base is turned {abs(turn_deg):.0f}° {sense}" in setup_alt(fit, math.radians(turn_deg))


def first_drawing(plan: Plan) -> tuple[str, str, str]:
    """Picture, step 2 and the last cause of trouble on the family's pages."""
    page = first_page(plan)
    return page["picture"]["drawing"]["svg"], page["steps"][1]["text"], trouble(plan)[-1][1]


def test_page_one_draws_the_base_as_it_says_it_stands() -> None:
    """A stick whose base is to be turned 14 degrees is drawn so, and step 2 and the trouble list say so; one whose base stays is
    drawn square, and no line sends the reader to a turn that is not there."""
    turned = sample_plan()
    svg, step, slipped = first_drawing(turned)
    assert front_of(svg) == pytest.approx(14.0, abs=0.3)
    assert step.endswith("Turn its base 14° anticlockwise from straight ahead, seen from above.")
    assert slipped == "Put it back as drawn. Turn it as its step says."
    straight = replace(turned, sites=(replace(turned.sites[0], base_turn_rad=None), *turned.sites[1:]))
    svg, step, slipped = first_drawing(straight)
    assert not re.search(r"\b[Tt]urn", svg + step + slipped)
    square = next(outline for outline in reversed(closed_outlines(svg)) if len(outline) == 4)
    assert square[0][1] == square[1][1]
    assert front_of(svg) == pytest.approx(0.0, abs=0.3)
    other = Estimate(math.radians(-9), math.radians(-12), math.radians(-6), assumed="found on dew, not on cedar")
    carried = replace(turned, sites=(replace(turned.sites[0], base_turn_rad=other, tunings=()), *turned.sites[1:]))
    svg, step, _ = first_drawing(carried)
    assert front_of(svg) == pytest.approx(-9.0, abs=0.3)
    assert "9° clockwise" in step


def strokes(svg: str) -> list[tuple[float, tuple[float, float], tuple[float, float]]]:
    """Width, beginning and end of every straight stroke of two points."""
    found = []
    for node in ET.fromstring(svg).iter(f"{SVG}path"):
        ends = [(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+),(-?[\d.]+)", node.get("d", ""))]
        if len(ends) == 2:
            found.append((float(node.get("stroke-width", "nan")), ends[0], ends[1]))
    return found


def circles(svg: str) -> list[tuple[float, float, float]]:
    return [
        (float(node.get("cx", "nan")), float(node.get("cy", "nan")), float(node.get("r", "nan")))
        for node in ET.fromstring(svg).iter(f"{SVG}circle")
    ]


@pytest.mark.parametrize("tilt_deg", [0.0, 12.0, -10.0])
@pytest.mark.parametrize("height_mm, travel_mm", [(45.0, 9.0), (30.0, 6.5)])
def test_the_lever_stands_and_leans_as_it_is(tilt_deg: float, height_mm: float, travel_mm: float) -> None:
    """By hand, from the player's right with the player on the left: pivot to contact is the contact height to scale, leaning towards the
    player by the tilt where that is plus; the two dashed ends lie the travel to either side of it; the shaft begins at the pivot, on
    the middle of the base's top; from above, the circle of travel has the travel for its radius."""
    fit = replace(
        chosen(), base_m=(0.06, 0.05, 0.03), contact_height_m=height_mm / 1000, travel_m=travel_mm / 1000, lever_ratio=1.0,
        tilt_rad=math.radians(tilt_deg), built_tilt_rad=math.radians(tilt_deg),
    )  # fmt: skip
    svg = setup_drawing(fit)
    scale, tilt = scale_of(svg), math.radians(tilt_deg)
    ((_, pivot, contact),) = [one for one in strokes(svg) if one[0] == 1.6]
    top = next(outline for outline in closed_outlines(svg) if len(outline) == 4)[2:]
    assert pivot == pytest.approx([(a + b) / 2 for a, b in zip(*top, strict=True)], abs=0.03)
    along = (-math.sin(tilt), -math.cos(tilt))
    assert contact == pytest.approx([p + height_mm * scale * a for p, a in zip(pivot, along, strict=True)], abs=0.03)
    leaning = [end for width, begin, end in strokes(svg) if width == 0.25 and math.dist(begin, pivot) < 0.02]
    away = [(end[0] - pivot[0]) * along[1] - (end[1] - pivot[1]) * along[0] for end in leaning]
    assert sorted(away) == pytest.approx([-travel_mm * scale, travel_mm * scale], abs=0.05)
    assert [math.dist(end, pivot) for end in leaning] == pytest.approx([height_mm * scale] * 2, abs=0.05)
    base = next(outline for outline in reversed(closed_outlines(svg)) if len(outline) == 4)
    middle = (sum(x for x, _ in base) / 4, sum(y for _, y in base) / 4)
    round_it = [r for x, y, r in circles(svg) if math.dist((x, y), middle) < 0.05]
    assert max(round_it) == pytest.approx(travel_mm * scale, abs=0.02)


def test_what_is_added_is_drawn_above_the_bare_shaft() -> None:
    """An extension that makes the lever half as long again: the bare shaft is two thirds of pivot to contact, the thick piece the rest."""
    fit = replace(chosen(), base_m=(0.06, 0.05, 0.03), contact_height_m=0.045, lever_ratio=1.5)
    svg = setup_drawing(fit)
    ((_, pivot, bare),) = [one for one in strokes(svg) if one[0] == 1.6]
    ((_, below, contact),) = [one for one in strokes(svg) if one[0] == 2.6]
    assert below == bare
    assert math.dist(pivot, bare) == pytest.approx(30 * scale_of(svg), abs=0.03)
    assert math.dist(pivot, contact) == pytest.approx(45 * scale_of(svg), abs=0.03)


def test_the_paper_begins_at_its_corner() -> None:
    """Law: nothing is shifted; the drawing's own corner is the paper's, and it is as large as the paper."""
    root = ET.fromstring(setup_drawing(chosen(), (184.0, 78.0)))
    assert [float(number) for number in root.get("viewBox", "").split()] == [0.0, 0.0, 184.0, 78.0]
    assert (root.get("width"), root.get("height")) == ("184.0mm", "78.0mm")


def test_the_words_for_the_picture_tell_which_side_is_which() -> None:
    """Length first, then width, then height, each as measured."""
    told = setup_alt(replace(chosen(), base_m=(0.061, 0.047, 0.033), crosswise=False)).replace("\u00a0", " ")
    assert "base 61 mm long, 47 mm wide, 33 mm high" in told


def test_rows_of_words_below_the_drawing_do_not_meet() -> None:
    """Also where the words are folded into several rows on a narrow paper: 11-point type is 3.9 mm high."""
    for width_mm in (70.0, 184.0):
        root = ET.fromstring(setup_drawing(chosen(), (width_mm, 78.0), side_only=True))
        rows = [node for node in root.iter(f"{SVG}text") if node.get("text-anchor") == "middle"]
        below = sorted(y for node in rows if (y := float(node.get("y", "nan"))) > 60.0)
        assert all(b - a >= 3.8 for a, b in pairwise(below))
        assert len(below) >= (3 if width_mm == 70.0 else 2)


def placed_words(svg: str) -> dict[str, tuple[float, float]]:
    nodes = ET.fromstring(svg).iter(f"{SVG}text")
    return {"".join(node.itertext()): (float(node.get("x", "nan")), float(node.get("y", "nan"))) for node in nodes}


@pytest.mark.parametrize("tilt_deg", [0.0, 50.0, -50.0])
@pytest.mark.parametrize("base_mm", [(40, 40, 160), (160, 40, 20), (60, 60, 60)])
def test_the_view_from_the_side_stays_on_its_floor(tilt_deg: float, base_mm: tuple[float, float, float]) -> None:
    """Law: base, lever and what supports them stand above the floor drawn for them, so that the two views never meet; also a high
    base that leans far."""
    tilt = math.radians(tilt_deg)
    fit = replace(
        chosen(), base_m=tuple(side / 1000 for side in base_mm), contact_height_m=0.06, travel_m=0.01, tilt_rad=tilt,
        built_tilt_rad=tilt, crosswise=False,
    )  # fmt: skip
    svg = setup_drawing(fit, (184.0, 140.0))
    ((_, left, right),) = [one for one in strokes(svg) if one[1][0] == 6.0 and one[1][1] == one[2][1]]
    outlines = [outline for outline in closed_outlines(svg) if len(outline) == 4]
    of_the_side = [*outlines[0], *(end for width, *ends in strokes(svg) if width in (1.6, 2.6) for end in ends)]
    assert all(left[0] <= x <= right[0] and 4.4 < y <= left[1] + 0.02 for x, y in of_the_side)
    assert right[0] < min(x for x, _ in outlines[-1])


def test_the_contact_height_is_told_beside_the_base() -> None:
    """Its dimension line is as long as the height to scale, and stands clear of the base on the player's side."""
    fit = replace(chosen(), base_m=(0.06, 0.05, 0.03), contact_height_m=0.045, tilt_rad=0.0, built_tilt_rad=0.0)
    svg = setup_drawing(fit)
    base = next(outline for outline in closed_outlines(svg) if len(outline) == 4)
    left = min(x for x, _ in base)
    lines = [(a, b) for _, a, b in strokes(svg) if a[0] == b[0] < left - 2]
    assert [abs(a[1] - b[1]) for a, b in lines] == pytest.approx(
        [30 * scale_of(svg), 45 * scale_of(svg)], abs=0.03
    ) or [abs(a[1] - b[1]) for a, b in lines] == pytest.approx([45 * scale_of(svg), 30 * scale_of(svg)], abs=0.03)


@pytest.mark.parametrize("turn_deg", [0.0, 30.0, 90.0])
def test_directions_are_named_outside_the_base_on_their_own_side(turn_deg: float) -> None:
    """From above: forward above it, the player's side below it, right and left beside it."""
    svg = setup_drawing(replace(chosen(), base_m=(0.09, 0.05, 0.03), crosswise=False), turn_rad=math.radians(turn_deg))
    corners = next(outline for outline in reversed(closed_outlines(svg)) if len(outline) == 4)
    told = placed_words(svg)
    assert told["forward: this way"][1] < min(y for _, y in corners)
    assert told["back (player's side)"][1] > max(y for _, y in corners) + 3.9
    assert told["right"][0] > max(x for x, _ in corners)
    assert told["left"][0] < min(x for x, _ in corners)
    assert told["back (player's side)"][1] < told[next(words for words in told if words.startswith("moves"))][1] - 3.9


def test_a_square_base_is_drawn_as_large_when_it_is_turned_by_a_quarter() -> None:
    """Law: it takes the same room."""
    square = replace(chosen(), base_m=(0.12, 0.12, 0.03), crosswise=False)
    assert len({scale_of(setup_drawing(square, turn_rad=turn)) for turn in (0.0, math.pi / 2, math.pi)}) == 1


@pytest.mark.parametrize("form", ["ball", "dish", "peg"])
def test_only_what_is_not_there_is_dashed(form: str) -> None:
    """Of a measured stick: the two ends of its travel and, from above, the circle of it."""
    svg = setup_drawing(replace(chosen(), topper_form=form, base_m=(0.06, 0.05, 0.03)))
    assert svg.count("stroke-dasharray") == 3


def heads_of(svg: str) -> list[list[tuple[float, float]]]:
    """Arrow heads: tip first, then the two wings."""
    return [outline[:3] for outline in closed_outlines(svg) if len(outline) == 3]


def test_every_arrow_head_is_small_and_pointed() -> None:
    """By hand: 2.2 mm and the width of its line, 3.2 mm at the front of the base, 1.8 mm at a dimension; 0.8 of that across."""
    fit = replace(chosen(), base_m=(0.06, 0.05, 0.03), tilt_rad=0.0, built_tilt_rad=0.0)
    svg = setup_drawing(fit, turn_rad=0.4)
    lengths = []
    for tip, one, other in heads_of(svg):
        foot = ((one[0] + other[0]) / 2, (one[1] + other[1]) / 2)
        lengths.append(math.dist(tip, foot))
        assert math.dist(one, other) == pytest.approx(0.8 * math.dist(tip, foot), abs=0.03)
    assert len(lengths) >= 3
    assert all(1.3 < length < 3.5 for length in lengths)


def test_forward_is_away_from_the_player_in_both_views() -> None:
    """From the side the arrow points right and begins behind its word; from above it goes up from the base, 5.7 mm long."""
    svg = setup_drawing(replace(chosen(), base_m=(0.06, 0.05, 0.03), crosswise=False))
    told = placed_words(svg)
    base = next(outline for outline in reversed(closed_outlines(svg)) if len(outline) == 4)
    far = min(y for _, y in base)
    ((start, end),) = [(a, b) for width, a, b in strokes(svg) if width == 1.2]
    assert start[0] == end[0] == pytest.approx((min(base)[0] + max(base)[0]) / 2, abs=0.05)
    assert end[1] == pytest.approx(start[1] - 5.7, abs=0.03)
    assert start[1] == pytest.approx(far - 1.5, abs=0.03)
    level = [(a, b) for _, a, b in strokes(svg) if a[1] == b[1] and b[0] - a[0] == pytest.approx(11.0, abs=0.02)]
    ((start, end),) = [(a, b) for a, b in level if any(math.dist(b, tip) < 0.02 for tip, *_ in heads_of(svg))]
    (word,) = {at for words, at in told.items() if words == "forward"}
    assert start[0] > word[0]


def test_a_base_that_stands_crosswise_has_its_front_to_the_left() -> None:
    """The mark of its front points left, from the lever to the middle of that side, wherever the base is turned from there."""
    fit = replace(chosen(), base_m=(0.06, 0.05, 0.03), crosswise=True)
    svg = setup_drawing(fit)
    assert front_of(svg) == pytest.approx(90.0, abs=0.2)
    base = next(outline for outline in reversed(closed_outlines(svg)) if len(outline) == 4)
    left = min(x for x, _ in base)
    assert any(tip[0] == pytest.approx(left, abs=0.02) for tip, *_ in heads_of(svg))


@pytest.mark.parametrize("form", ["bar", "peg", "dish", "cup", None])
def test_a_topper_is_alike_on_both_sides(form: str | None) -> None:
    """Law: of a level stick, its outline is its own mirror image about the lever."""
    fit = replace(
        chosen(), topper_form=form, base_m=(0.06, 0.05, 0.03), tilt_rad=0.0, built_tilt_rad=0.0, lever_ratio=1.0
    )
    svg = setup_drawing(fit)
    ((_, pivot, contact),) = [one for one in strokes(svg) if one[0] == 1.6]
    (cap,) = [
        outline
        for outline in closed_outlines(svg)[1:]
        if len(outline) in (4, 6) and min(math.dist(corner, contact) for corner in outline) < 9.1
    ]
    for x, y in cap:
        assert min(math.dist((2 * pivot[0] - x, y), corner) for corner in cap) < 0.03


def test_a_lever_of_no_known_ratio_is_one_plain_shaft() -> None:
    """From the pivot to the contact, with nothing added on it."""
    svg = setup_drawing(replace(chosen(), base_m=(0.06, 0.05, 0.03), contact_height_m=0.045, lever_ratio=0.0))
    ((_, pivot, contact),) = [one for one in strokes(svg) if one[0] == 1.6]
    assert math.dist(pivot, contact) == pytest.approx(45 * scale_of(svg), abs=0.03)
    assert not [one for one in strokes(svg) if one[0] == 2.6]
