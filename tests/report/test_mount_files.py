"""Files of the mounts for others: the workshop's drawing, the page to turn, and the command that writes them."""

from __future__ import annotations

import base64
import hashlib
import io
import json
import math
import re
import sys
from dataclasses import replace
from html.parser import HTMLParser
from pathlib import Path

import ezdxf
import numpy as np
import pytest
from sample_mounts import chin_mount, mounted_plan, room
from sample_plan import sample_plan

from said import place, said
from stickwright.cli import main
from stickwright.errors import BadInput
from stickwright.files.results import plan_json
from stickwright.report.mount_dxf import LAYERS, all_dxf, mount_dxf
from stickwright.report.mount_scene import place_rows, scene_html
from stickwright.report.mount_shapes import room_shapes


@pytest.fixture(scope="module")
def files() -> dict[str, str]:
    return all_dxf(mounted_plan())


@pytest.fixture(scope="module")
def page() -> str:
    return scene_html(mounted_plan())


def read(text: str) -> ezdxf.document.Drawing:
    return ezdxf.read(io.StringIO(text))  # type: ignore[no-any-return, attr-defined]


def test_dxf_reads_back_without_an_error(files: dict[str, str]) -> None:
    """Another reader of the same library finds nothing to mend; millimetre; layers by what things are."""
    assert list(files) == ["mount-1-right-index-finger", "mount-2-left-fist", "mount-3-chin"]
    for text in files.values():
        drawing = read(text)
        audit = drawing.audit()
        assert (len(audit.errors), len(audit.fixes)) == (0, 0)
        assert drawing.units == 4
        assert set(LAYERS) <= {layer.dxf.name for layer in drawing.layers}
        assert {"TUBES", "KEEP_OUT", "BODY", "STICK"} <= {one.dxf.layer for one in drawing.modelspace()}


def test_dxf_has_true_dimensions(files: dict[str, str]) -> None:
    """Each distance is measured by the drawing program itself, in millimetre, on its own layer."""
    dims = read(files["mount-1-right-index-finger"]).modelspace().query("DIMENSION")
    measured = sorted(round(float(one.get_measurement()), 6) for one in dims)
    assert measured == pytest.approx([12, 55, 75, 185, 185, 205], abs=1e-6)
    assert {one.dxf.layer for one in dims} == {"DIMENSIONS"}


def test_dxf_dimensions_read_from_left_to_right(files: dict[str, str]) -> None:
    """Whichever side of the landmark a point lies on: the figure is upright (or reads upwards) and stands above its line (left of
    an upright one), and the line runs between its two ends, with both arrows at its ends and none outside."""
    seen = set()
    for text in files.values():
        for one in read(text).modelspace().query("DIMENSION"):
            first, last = (np.array(point)[:2] for point in (one.dxf.defpoint2, one.dxf.defpoint3))
            block = list(one.get_geometry_block())
            figure = next(part for part in block if part.dxftype() == "MTEXT")
            lines = [part for part in block if part.dxftype() == "LINE"]
            start, end = (np.array(point)[:2] for point in (lines[-1].dxf.start, lines[-1].dxf.end))
            turn = math.radians(figure.dxf.rotation)
            along, above = np.array([math.cos(turn), math.sin(turn)]), np.array([-math.sin(turn), math.cos(turn)])
            assert -90 < figure.dxf.rotation <= 90
            assert (np.array(figure.dxf.insert)[:2] - start) @ above > 0
            if (end - start) @ along > 1:  # else it is too short, and the arrows stand outside on purpose
                low, high = sorted((first @ along, last @ along))
                assert low <= start @ along < end @ along <= high
                seen.add((bool(turn), "along" in figure.text))
    assert {(False, False), (True, False)} <= seen


def test_dxf_is_at_its_own_size(files: dict[str, str]) -> None:
    """The tray of 360 x 340 mm is an outline of 360 x 340 units in the view from above."""
    outlines = [
        [tuple(point[:2]) for point in one.get_points()]
        for one in read(files["mount-2-left-fist"]).modelspace().query('LWPOLYLINE[layer=="SURFACES"]')
    ]
    above = outlines[0]
    assert max(x for x, _ in above) - min(x for x, _ in above) == pytest.approx(360, abs=1e-3)
    assert max(y for _, y in above) - min(y for _, y in above) == pytest.approx(340, abs=1e-3)
    assert read(files["mount-2-left-fist"]).modelspace().query('HATCH[layer=="KEEP_OUT"]')


def test_dxf_is_the_same_for_the_same_mount() -> None:
    assert mount_dxf(chin_mount(), room()) == mount_dxf(chin_mount(), room())


def test_without_ezdxf_it_says_how_to_get_it(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "ezdxf", None)
    with pytest.raises(BadInput) as refused:
        all_dxf(mounted_plan())
    (problem,) = refused.value.problems
    assert place(problem) == "--dxf"
    assert 'pip install "stickwright[cad]"' in said(problem.remedy)


@pytest.mark.parametrize("write", [all_dxf, scene_html])
def test_nothing_mounted_is_refused_in_a_sentence(write: object) -> None:
    with pytest.raises(BadInput) as refused:
        write(sample_plan())  # type: ignore[operator]
    assert "Describe the room first" in str(refused.value)


class Reader(HTMLParser):
    """What the page is made of."""

    def __init__(self) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.inside: dict[str, list[str]] = {}
        self._open: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))
        kind = dict(attrs).get("type")
        self._open.append(f"{tag} {kind}" if kind and tag == "script" else tag)

    def handle_data(self, data: str) -> None:
        if self._open:
            self.inside.setdefault(self._open[-1], []).append(data)

    def handle_endtag(self, tag: str) -> None:
        while self._open and not self._open.pop().startswith(tag):
            pass


def parsed(page: str) -> Reader:
    reader = Reader()
    reader.feed(page)
    return reader


def test_scene_lets_nothing_in(page: str) -> None:
    """The policy allows this very script and style alone (their SHA-256), nothing else is fetched, no inline handler."""
    reader = parsed(page)
    (policy,) = (tag["content"] or "" for name, tag in reader.tags if name == "meta" and "http-equiv" in tag)
    assert policy.startswith("default-src 'none'")
    for kind in ("script", "style"):
        digest = base64.b64encode(hashlib.sha256("".join(reader.inside[kind]).encode()).digest()).decode()
        assert f"{kind}-src 'sha256-{digest}'" in policy
    names = {attribute for _, tag in reader.tags for attribute in tag}
    assert not {name for name in names if name.startswith("on")} | (names & {"src", "href", "style", "action"})
    assert not re.search(r"https?://|\bfetch\(|XMLHttpRequest|import\(|url\(", page)


def test_scene_can_be_worked_by_keyboard_and_heard(page: str) -> None:
    """The picture takes the focus and is named and described; every control is a button with words, 44 px or more."""
    reader = parsed(page)
    (canvas,) = (tag for name, tag in reader.tags if name == "canvas")
    assert canvas["tabindex"] == "0"
    assert canvas["aria-describedby"] == "help"
    script, style = "".join(reader.inside["script"]), "".join(reader.inside["style"])
    for key in (
        "ArrowLeft",
        "ArrowRight",
        "ArrowUp",
        "ArrowDown",
        '"+"',
        '"-"',
        "prefers-reduced-motion",
        "wheel",
        "pointermove",
    ):
        assert key in script
    buttons = [" ".join(words.split()) for words in reader.inside["button"]]
    assert {"from above", "from the side", "from the front", "turn left", "turn right", "+", "−"} <= set(buttons)
    found = re.search(r"button, select \{[^}]*min-height: (\d+)px; min-width: (\d+)px", style)
    assert found is not None
    assert min(map(int, found.groups())) >= 44
    assert {"role": "status"}.items() <= next(tag for _, tag in reader.tags if tag.get("id") == "view").items()


def test_scene_data_are_the_tables_data(page: str) -> None:
    """Every named thing in the picture stands in a table, with its place; the picture's numbers are millimetre."""
    reader = parsed(page)
    mounts = json.loads("".join(reader.inside["script application/json"]))
    cells = set(reader.inside["td"])
    assert len(mounts) == 3
    for mount in mounts:
        for shape in mount["shapes"]:
            assert shape["layer"] in ("BODY", "SEAT") or not shape["name"] or shape["name"] in cells
            assert all(math.isfinite(number) and abs(number) < 3000 for point in shape["points"] for number in point)
    assert mounts[0]["distances"][0]["text"] == "clamp 205 mm back"
    assert mounts[0]["distances"][0]["to"] == [270.0, 215.0, 220.0]
    start, end = mounts[0]["forward"]
    assert math.degrees(math.atan2(end[0] - start[0], end[1] - start[1])) == pytest.approx(10, abs=0.1)


def test_what_stands_where() -> None:
    """Rows from the seat reference point: the control from 210 to 330 mm right, 420 to 520 forward, 200 to 360 up."""
    rows = place_rows(room_shapes(room()))
    assert ["keep free", "keep free: chair control", "210 to 330", "420 to 520", "200 to 360", ""] in rows
    assert not [row for row in rows if not row[1]]


def test_a_name_cannot_break_out_of_the_page() -> None:
    """A site named like a tag stays a name."""
    plan = mounted_plan()
    hostile = replace(plan.mounts[0], device="</script><b>x", site="<img>")
    page = scene_html(replace(plan, mounts=(hostile,)))
    assert not {"b", "img"} & {name for name, _ in parsed(page).tags}
    assert page.count("</script>") == 2


def test_json_holds_mounts_and_room() -> None:
    """Everything for other programs: poses, checks and the room, infinity as null."""
    told = json.loads(plan_json(mounted_plan()))
    assert told["mounts"][0]["choice"]["arm"]["along_m"] == 0.185
    assert told["mounts"][1]["choice"]["give_n_per_m"] is None
    assert told["room"]["tube"][0]["from_m"] == [0.27, 0.40, 0.18]


def test_command_writes_both(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """`plan --dxf FOLDER --scene OUT.html` writes them and says where; with --no-pdf no sheet."""
    import stickwright.files.folder
    import stickwright.planning.plan

    monkeypatch.setattr(stickwright.files.folder, "case_and_queries", lambda *_: (None, ()))
    monkeypatch.setattr(stickwright.planning.plan, "plan", lambda *_, **__: mounted_plan())
    folder, scene = tmp_path / "dxf", tmp_path / "scene.html"
    assert main(["plan", str(tmp_path), "--dxf", str(folder), "--scene", str(scene), "--no-pdf"]) == 0
    assert sorted(path.name for path in folder.iterdir())[0] == "mount-1-right-index-finger.dxf"
    assert scene.read_text(encoding="utf-8").startswith("<!DOCTYPE html>")
    assert not (tmp_path / "sheet.pdf").exists()
    out = capsys.readouterr().out
    assert f"Mounts in 3-D: {scene}" in out
    assert f"Drawings: {folder}" in out
    monkeypatch.setattr(stickwright.planning.plan, "plan", lambda *_, **__: sample_plan())
    assert main(["plan", str(tmp_path), "--scene", str(tmp_path / "none.html"), "--no-pdf"]) == 2
    assert "Describe the room first" in capsys.readouterr().err
    assert not (tmp_path / "none.html").exists()
