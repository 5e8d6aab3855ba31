"""The drawing of the wiring: everything named, nothing crossed out, legible on A4 in black and white."""

from __future__ import annotations

import itertools
import re
import xml.etree.ElementTree as ET
from functools import lru_cache
from typing import Any

import pytest

from said import said as words
from stickwright.allocation.netlist import is_paired
from stickwright.allocation.wiring import wiring_of
from stickwright.model.case import Case
from stickwright.model.hub import BUTTON_ROLES, Hub
from stickwright.model.sharing import HeldWay, Placement, Wiring
from stickwright.report.paper import font_folder
from stickwright.report.wiring_drawing import way_parts, wiring_alt, wiring_drawing, wiring_rows
from wired_cases import at, case, kit, quay

SVG = "{http://www.w3.org/2000/svg}"
Box = tuple[float, float, float, float]

SITES = {
    "right index": {"to_hub_m": 0.8}, "left index": {"to_hub_m": 2.4}, "left thumb beside the wedge": {"to_hub_m": 1.9},
    "right foot on the floor plate": {"to_hub_m": 4.1}, "head rest, right side": {"to_hub_m": 2.6}, "chin": {},
}  # fmt: skip
LEADS: list[dict[str, Any]] = [
    {"name": "grey extension 1 m", "plug": "2-conductor", "length_m": 1.0, "in_stock": 5},
    {"name": "black extension 0.5 m", "plug": "2-conductor", "length_m": 0.5, "in_stock": 2},
    {"name": "fork with its own supply", "kind": "splitter", "plug": "USB", "sockets": ["USB", "USB"],
     "port_current_ma": 500, "length_m": 0.2},
    {"name": "adapter big to small jack plug", "kind": "adapter", "plug": "2-conductor", "sockets": ["6.3 mm 2-conductor"]},
]  # fmt: skip
LONG = [
    {"name": f"{name} switch with a long name", "plug": plug, "cable_m": 1.8, "in_stock": 5}
    for name, plug in (("pip", "2-conductor"), ("dome", "6.3 mm 2-conductor"), ("slab", "2-conductor"))
]
STICK = at("move", "right index", "dew", "u1", "stick", role="left stick")
SISTER = [Placement(action, "helper", helper="sister") for action in ("map", "menu", "pause")]


def three() -> tuple[list[Placement], Case]:
    pips = [at("attack", "left index", "pip", "k1"), at("jump", "left index", "pip", "k2")]
    return [STICK, *pips], case(SITES, kit(LEADS))


def eight() -> tuple[list[Placement], Case]:
    pad = {"site": "left thumb beside the wedge", "device": "plain pad", "socket": "u2", "kind": "controller"}
    done = [
        STICK,
        at("look", **pad, role="right stick"),
        at("fire", **pad),
        at("jump over obstacles", "right foot on the floor plate", "dome", "k1", role=BUTTON_ROLES[0]),
        at("crouch", "right foot on the floor plate", "dome", "k2", role=BUTTON_ROLES[11]),
        at("reload", "head rest, right side", "disc", "k3"),
        at("swap", "chin", "wink", "k4"),
        at("attack", "left index", "pip", "k6"),
        *SISTER,
    ]
    return done, case(SITES, kit(LEADS))


def sixteen() -> tuple[list[Placement], Case]:
    """Long names, a splitter, adapters, leads joined and leads missing."""
    sockets = [{"name": f"u{n}", "takes": "USB", "role": "assignable", "current_ma": 100} for n in (1, 2, 3)]
    sockets += [{"name": "q1", "takes": "4-conductor", "role": "left stick"}]
    sockets += [{"name": f"k{n}", "takes": "2-conductor", "role": "assignable"} for n in range(1, 15)]
    names = list(SITES)
    done = [
        at("move forwards and sideways", "right index", "dew", "u1/1", "stick", role="left stick"),
        at("look around", "chin", "hazel", "u1/2", "stick", role="right stick"),
        *(
            at(f"thing number {n} of the game", names[n % 6], str(LONG[n % 3]["name"]), f"k{n}", role=BUTTON_ROLES[n])
            for n in range(1, 14)
        ),
        *SISTER,
    ]
    return done, case(SITES, kit(LEADS, switch=LONG), (quay(socket=sockets),))


SAMPLES = {"3": three, "8": eight, "16": sixteen}


@lru_cache
def drawn(name: str) -> tuple[Wiring, str]:
    placements, this = SAMPLES[name]()
    wiring = wiring_of(placements, this)
    return wiring, wiring_drawing(wiring, this.hubs)


def texts(svg: str) -> list[str]:
    return ["".join(node.itertext()) for node in ET.fromstring(svg).iter(f"{SVG}text")]


def text_boxes(svg: str) -> list[tuple[str, Box]]:
    """Where words stand, measured with the type itself: left, top, right, bottom."""
    out = []
    for node in ET.fromstring(svg).iter(f"{SVG}text"):
        said, size, x, y = "".join(node.itertext()), float(node.get("font-size", "0")), *at_of(node)
        wide = measured_em(said, node.get("font-weight") == "bold") * size
        left = {"end": x - wide, "middle": x - wide / 2}.get(node.get("text-anchor", "start"), x)
        out.append((said, (left, y - 0.73 * size, left + wide, y + 0.21 * size)))
    return out


def at_of(node: ET.Element) -> tuple[float, float]:
    return float(node.get("x", "0")), float(node.get("y", "0"))


@lru_cache
def measured_em(said: str, bold: bool) -> float:
    from matplotlib.ft2font import FT2Font

    font = FT2Font(f"{font_folder()}/DejaVuSans{'-Bold' if bold else ''}.ttf")
    font.set_size(100, 72)
    font.set_text(said, 0.0)
    return float(font.get_width_height()[0]) / 64 / 100


def segments(svg: str) -> list[Box]:
    """Straight strokes that are cables, joints and rules."""
    out = []
    for node in ET.fromstring(svg).iter(f"{SVG}path"):
        points = [(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+),(-?[\d.]+)", node.get("d", ""))]
        out += [(*a, *b) for a, b in itertools.pairwise(points)]
    return out


@pytest.mark.parametrize("name", SAMPLES)
def test_no_line_runs_through_words(name: str) -> None:
    """Words stay clear of every line, measured with the type that is printed."""
    svg = drawn(name)[1]
    assert len(segments(svg)) > 3
    for said, (left, top, right, bottom) in text_boxes(svg):
        for x1, y1, x2, y2 in segments(svg):
            across = min(x1, x2) < right - 0.1 and max(x1, x2) > left + 0.1
            along = min(y1, y2) < bottom - 0.1 and max(y1, y2) > top + 0.1
            assert not (across and along), f"{said!r} is crossed at {x1, y1, x2, y2}"


@pytest.mark.parametrize("name", SAMPLES)
def test_words_do_not_meet_and_stay_on_the_paper(name: str) -> None:
    """No two pieces of text overlap, and none leaves the drawing."""
    svg = drawn(name)[1]
    height = float(re.search(r'height="([\d.]+)mm"', svg)[1])  # type: ignore[index]
    boxes = text_boxes(svg)
    for said, (left, top, right, bottom) in boxes:
        assert -0.01 <= left <= right <= 184.01, said
        assert 0 <= top <= bottom <= height, said
    for (one, a), (other, b) in itertools.combinations(boxes, 2):
        assert a[2] <= b[0] + 0.05 or b[2] <= a[0] + 0.05 or a[3] <= b[1] + 0.05 or b[3] <= a[1] + 0.05, (one, other)


@pytest.mark.parametrize("name", SAMPLES)
def test_words_stay_inside_their_boxes(name: str) -> None:
    """A name is never wider than the box it stands in: no text begins inside a box and ends outside of it."""
    svg = drawn(name)[1]
    frames = [
        (*at_of(node), at_of(node)[0] + float(node.get("width", "0")), at_of(node)[1] + float(node.get("height", "0")))
        for node in ET.fromstring(svg).iter(f"{SVG}rect")
    ]
    for said, (left, top, right, bottom) in text_boxes(svg):
        for x1, y1, x2, y2 in frames:
            if x1 <= left <= x2 and y1 <= (top + bottom) / 2 <= y2:
                assert right <= x2, said
                assert y1 - 0.2 <= top <= bottom <= y2 + 0.2, said


@pytest.mark.parametrize("name", SAMPLES)
def test_legible_on_a4(name: str) -> None:
    """Text of 8.5 points or more, in black; 16 cables with long names fit the 297 mm of A4."""
    svg = drawn(name)[1]
    sizes = [float(node.get("font-size", "0")) / 25.4 * 72 for node in ET.fromstring(svg).iter(f"{SVG}text")]
    assert min(sizes) >= 8.5
    assert float(re.search(r'height="([\d.]+)mm"', svg)[1]) < 280  # type: ignore[index]
    assert set(re.findall(r'(?:stroke|fill)="([^"]+)"', svg)) <= {"black", "white", "none"}


@pytest.mark.parametrize("name", SAMPLES)
def test_every_tag_stands_at_both_ends(name: str) -> None:
    """A flag with the tag at the device and one at the hub, for every cable; one for what has no cable."""
    wiring, svg = drawn(name)
    for wire in wiring.wires:
        assert texts(svg).count(wire.tag) == (1 if is_paired(wire) else 2)


def test_cables_differ_by_dashes() -> None:
    """Eight neighbours have eight dash patterns, so that no colour is needed."""
    svg = drawn("8")[1]
    cables = [node for node in ET.fromstring(svg).iter(f"{SVG}path") if node.get("stroke-width") == "0.6"]
    assert len({node.get("stroke-dasharray", "") for node in cables}) == 7  # the eighth is paired


def test_empty_sockets_are_said() -> None:
    """Unused sockets are there, in the hub's order; one that would feed the same stick is to stay empty, and why."""
    said = " ".join(texts(drawn("3")[1]))
    assert "u2, u3: empty" in said
    assert "q1: keep empty: same stick as u1" in said
    assert said.index("u1: USB-A") < said.index("u2, u3") < said.index("q1:") < said.index("k1: 3.5 mm TS")


def test_plugs_are_drawn_by_their_rings() -> None:
    """A round plug has a ring less than contacts; a USB plug is flat. Each is told below the drawing."""
    said = " ".join(texts(drawn("16")[1]))
    assert "3.5 mm mono jack (TS): 1 ring" in said
    assert "6.3 mm mono jack (TS): 1 ring" in said
    assert "USB-A" in said
    birch = wiring_of([at("move", "chin", "birch", "q1", "stick", role="left stick")], case({"chin": {}}))
    assert "3.5 mm four-pole jack (TRRS): 3 rings" in " ".join(texts(wiring_drawing(birch, birch.hubs)))


def test_missing_lead_and_paired_controller_are_drawn() -> None:
    """What is missing stands on the line in a dashed box; a paired controller has no line, and says so."""
    said = " ".join(texts(drawn("8")[1]))
    assert "missing: extension lead of 2.5 m" in said
    assert "paired, no cable" in said


def test_equal_input_gives_equal_bytes() -> None:
    """Drawn twice, byte for byte the same."""
    placements, this = eight()
    first, second = (wiring_drawing(wiring_of(placements, this), this.hubs) for _ in range(2))
    assert first == second


def test_hub_that_is_not_described_is_our_fault() -> None:
    """A wiring is never drawn without some of its cables."""
    wiring, _ = drawn("3")
    with pytest.raises(ValueError, match="the hubs to draw lack Quay"):
        wiring_drawing(wiring, (Hub(name="Mole"),))


def test_table_and_sentence_say_the_same() -> None:
    """Beside the drawing: a table row a cable, and one sentence for those who cannot see it."""
    wiring, svg = drawn("3")
    assert tuple(tuple(words(cell) for cell in row) for row in wiring_rows(wiring)) == (
        ("A1", "dew at right index", "USB-A", "", "Quay, u1", "left stick: move", "1.50 m; 0.95 m needed"),
        ("A2", "pip at left index", "3.5 mm mono jack (TS)", "grey extension 1 m", "Quay, k1", "attack", "2.80 m; 2.55 m needed"),
        ("A3", "pip at left index", "3.5 mm mono jack (TS)", "grey extension 1 m", "Quay, k2", "jump", "2.80 m; 2.55 m needed"),
    )  # fmt: skip
    assert wiring_alt(wiring) == (
        "Wiring, one line for each cable: A1, dew at right index, into u1 of Quay; A2, pip at left index, through grey extension "
        "1 m into k1 of Quay; A3, pip at left index, through grey extension 1 m into k2 of Quay."
    )
    title = ET.fromstring(svg).find(f"{SVG}title")
    assert title is not None
    assert title.text == wiring_alt(wiring)
    assert [words(row[6]) for row in wiring_rows(drawn("8")[0]) if row[0] in ("A6", "A8")] == [
        "1.80 m; way not measured",
        "",
    ]


def test_the_way_is_told_part_by_part() -> None:
    """By hand: 0.8 m tied, 0.5 m along the arm and 0.15 m loop are 1.45 m; without an arm the parts are not told; a way that
    nobody taped is marked."""
    placements, this_case = three()
    held = [HeldWay("right index", "dew", 0.5, "arm")]
    told = tuple(map(words, way_parts(wiring_of(placements, this_case, held))))
    assert told == ("A1: 0.80 m tied + 0.50 m along the mount + 0.15 m loop = 1.45 m",)
    assert way_parts(wiring_of(placements, this_case)) == ()
    untaped = case({"right index": {}, "left index": {}}, kit(LEADS))
    ways = [HeldWay("right index", "dew", 0.0, "tray", to_hub_m=0.9)]
    told = tuple(map(words, way_parts(wiring_of(placements, untaped, ways))))
    assert told == ("A1: 0.90 m tied (assumed) + 0.15 m loop = 1.05 m",)
