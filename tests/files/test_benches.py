"""Bench readings, and a stick added to the kit."""

from __future__ import annotations

import math
import tomllib

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from noun_strategies import nouns
from said import said
from stickwright.cli import main
from stickwright.errors import BadInput
from stickwright.files.benches import append_stick, read_bench
from stickwright.model.kit import Kit, Stick

KIT = '# my kit\r\n[[stick]] # old\r\nname = "ash"\r\nstart_force_gf = 40\r\nfull_force_n = 1\r\ntravel_mm = 6'


def bench(tmp_path, text):
    path = tmp_path / "bench.csv"
    path.write_text(text, encoding="utf-8")
    return path


def test_bench_readings_in_si(tmp_path):
    """Forces in ounces, angles in degrees, ways in words. By hand: 1 ozf is 0.2780139 N (avoirdupois ounce
    28.349523 g times standard gravity); 90 degrees is pi/2."""
    path = bench(tmp_path, "force_oz,angle_deg,way,direction_deg,height_mm\n1,10,out,90,16\n0.5,-10,Back,0,16\n")
    found = read_bench(path)
    assert found.force_n == pytest.approx([0.2780139, 0.1390069], abs=5e-8)
    assert found.angle_rad == pytest.approx(np.radians([10, -10]), rel=1e-12)
    assert found.outward is not None
    assert found.outward.tolist() == [True, False]
    assert found.direction_rad == pytest.approx([np.pi / 2, 0], rel=1e-12)
    assert found.height_m == pytest.approx([0.016, 0.016], rel=1e-12)
    assert found.travel_m is None
    assert found.output_share is None


def test_output_beside_the_travel(tmp_path):
    """Output read at some of the places only: travel says how far, output is kept, NaN where it was not read."""
    found = read_bench(bench(tmp_path, "force_n,travel_mm,output_share\n0.2,0,\n0.3,2,0.5\n0.4,4,1\n"))
    assert found.travel_m == pytest.approx([0, 0.002, 0.004], rel=1e-12)
    assert found.output_share is not None
    np.testing.assert_array_equal(found.output_share, [np.nan, 0.5, 1.0])


def test_output_beside_the_travel_goes_to_the_kit(tmp_path):
    """From the file to the kit: output begins at 1 mm of 8 and is full at 7 (by hand, in angle at 16 mm height:
    asin(1/16)/asin(8/16) = 0.1194 of the throw and asin(7/16)/asin(8/16) = 0.8648)."""
    rows = ["force_n,travel_mm,output_share,way"]
    for way, friction in (("out", 0.02), ("back", -0.02)):
        for share in (0.0, 0.25, 0.4, 0.6, 0.75, 1.0):
            angle = share * math.asin(0.5)
            output = (share - 0.1194) / (0.8648 - 0.1194)
            force = 0.25 + 0.5 * angle + friction
            rows.append(f"{force:.6f},{16 * math.sin(angle):.6f},{min(1.0, max(0.0, output)):.6f},{way}")
    path, kit = bench(tmp_path, "\n".join(rows) + "\n"), tmp_path / "kit.toml"
    kit.write_bytes(KIT.encode())
    command = ["bench", str(path), "--name", "yew", "--height-mm", "16", "--stop-mm", "8", "--kit", str(kit)]
    assert main(command) == 0
    stick = Kit.model_validate(tomllib.loads(kit.read_bytes().decode())).stick[-1]
    assert stick.full_output_share == pytest.approx(0.8648, abs=0.0005)
    assert stick.start_force_n == pytest.approx(0.27, abs=0.0005)
    assert stick.friction_force_n == pytest.approx(0.02, abs=0.0005)
    assert "full_output_share = 0.86" in kit.read_bytes().decode()


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("force_n\n1\n", "found no column for the deflection, expected angle_deg or travel_mm (or output_share"),
        ("force_n,angle_deg,travel_mm\n1,1,1\n", "found angle_deg and travel_mm, expected only one of the two"),
        ("travel_mm\n1\n", "row 1: found no force column"),
        ("force_n,travel_mm,wey\n1,1,out\n", "Did you mean 'way'?"),
        (
            "force_n,travel_mm,way\n1,1,in\n",
            'row 2, way: found "in", expected out (pushing out) or back (letting back)',
        ),
        ("force_n,travel_mm\n1,1\n,2\n", "row 3, force_n: found an empty cell"),
        ("force_n,travel_mm\n-1,1\n", "Left is a direction, not a minus; letting back is way = back."),
        ("force_n,travel_mm\n1000,1\n", "found 1000, expected 0 to 100 N. Check the unit in the header."),
        ("force_n,travel_mm\n1,6000\n", "found 6000, expected -300 to 300 mm"),
        ("force_n,output_share\n1,50\n", "expected 0 to 1 (a share: 1 is all, 0.5 is half). 50% is 0.5."),
        ("force_n,output_share\n1,\n", "row 2, output_share: found an empty cell"),
        (
            "force_n,output_share,travel_mm,angle_deg\n1,1,1,1\n",
            "found angle_deg and travel_mm, expected only one of the two",
        ),
        ("force_n,travel_mm\n1,two\n", 'row 2, travel_mm: found "two", expected a number in mm'),
    ],
)
def test_each_mistake_has_its_sentence(tmp_path, text, words):
    """File, row, column, and what to do."""
    with pytest.raises(BadInput) as refused:
        read_bench(bench(tmp_path, text))
    assert len(refused.value.problems) == 1
    assert words in " ".join(said(problem.sentence) for problem in refused.value.problems)


@given(
    st.one_of(
        st.binary(max_size=60),
        st.text('01,;"\n.-ef', max_size=60).map(lambda rows: f"force_n,travel_mm\n{rows}".encode()),
    )
)
@settings(max_examples=200, deadline=None)
def test_nothing_but_a_sentence_comes_of_rubbish(tmp_path_factory, data):
    """Law: whatever a file holds, it is read or refused in words."""
    path = tmp_path_factory.getbasetemp() / "rubbish-bench.csv"
    path.write_bytes(data)
    problems = None
    try:
        read_bench(path)
    except BadInput as refused:
        problems = refused.problems
    assert problems is None or all(problem.found and problem.expected for problem in problems)
    assert problems != ()


def test_a_stick_is_added_and_nothing_else_is_touched(tmp_path):
    """What stood in the kit stays to the last byte; the stick is there in newton and millimetres, with its readings."""
    kit, readings = tmp_path / "kit.toml", bench(tmp_path, "force_n,travel_mm\n1,1\n")
    kit.write_bytes(KIT.encode())
    stick = append_stick(
        kit,
        {"name": "birch", "start_force_n": 0.25, "full_force_n": 0.5, "travel_m": 0.0065},
        readings,
        comment="Benched: forces at the contact point, pushing out.",
    )
    after = kit.read_bytes().decode()
    assert after.startswith(KIT)
    assert "# Benched: forces at the contact point, pushing out." in after
    assert "travel_mm = 6.5\r\n" in after
    read = Kit.model_validate(tomllib.loads(after))
    assert [one.name for one in read.stick] == ["ash", "birch"]
    assert read.stick[1] == stick
    assert stick.bench_readings == "bench.csv"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["bench.csv", "kit.toml"]


@given(nouns(Stick))
@settings(max_examples=60, deadline=None)
def test_any_stick_reads_back_equal(tmp_path_factory, stick):
    """Law: whatever the figures, the stick read from the kit is the stick that was added, to eleven digits."""
    kit = tmp_path_factory.getbasetemp() / "kit.toml"
    kit.write_bytes(KIT.encode())
    if stick.name.casefold() == "ash":
        return
    added = append_stick(kit, {name: value for name, value in stick.model_dump().items() if value is not None})
    assert Kit.model_validate(tomllib.loads(kit.read_bytes().decode())).stick[-1] == added
    for here, there in ((stick, added), *zip(stick.setting, added.setting, strict=True)):
        for name, value in here.model_dump(exclude={"setting"}).items():
            typed = getattr(there, name)
            if name == "flat" and value is not None:
                assert typed.at_m == pytest.approx(value["at_m"], rel=1e-11)
                assert typed.size_m == pytest.approx(value["size_m"], rel=1e-11)
                continue
            assert typed == (pytest.approx(value, rel=1e-11) if isinstance(value, float | tuple) else value)


@pytest.mark.parametrize(
    ("text", "fields", "words"),
    [
        (KIT, {"name": "Ash"}, 'found a stick "Ash" that is there already'),
        (KIT, {"name": "b", "travel_mm": 4000}, "expected 0.5 to 300 mm"),
        (KIT + "\r\ntravel_mm = 7", {"name": "b"}, "kit.toml, line 7"),
        ('stick = [{name = "a", start_force_n = 0.1, full_force_n = 1, travel_mm = 6}]', {"name": "b"}, "in one list"),
    ],
)
def test_a_refused_stick_leaves_the_kit_as_it_was(tmp_path, text, fields, words):
    """A name twice, absurd figures, a kit with mistakes of its own: a sentence, and the file unchanged."""
    kit = tmp_path / "kit.toml"
    kit.write_bytes(text.encode())
    whole = {"start_force_n": 0.2, "full_force_n": 0.5} | ({} if "travel_mm" in fields else {"travel_mm": 6}) | fields
    with pytest.raises(BadInput) as refused:
        append_stick(kit, whole)
    assert words in " ".join(said(problem.sentence) for problem in refused.value.problems)
    assert kit.read_bytes() == text.encode()


def test_readings_outside_the_case_folder(tmp_path):
    """Readings from elsewhere are copied into the case, so that they travel with it; a kit that is not there is refused."""
    folder = tmp_path / "case"
    folder.mkdir()
    fields = {"name": "b", "start_force_n": 0.2, "full_force_n": 0.5, "travel_mm": 6}
    with pytest.raises(BadInput, match=r"kit\.toml: found no such file"):
        append_stick(folder / "kit.toml", fields)
    (folder / "kit.toml").write_bytes(KIT.encode())
    elsewhere = bench(tmp_path, "force_n,travel_mm\n1,1\n")
    stick = append_stick(folder / "kit.toml", fields, elsewhere)
    assert stick.bench_readings == f"bench/{elsewhere.name}"
    assert (folder / "bench" / elsewhere.name).read_bytes() == elsewhere.read_bytes()
