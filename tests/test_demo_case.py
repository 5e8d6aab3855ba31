"""The demo case, as somebody who tries the program for the first time meets it; its truth is known."""

from __future__ import annotations

import math
import shlex
import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "examples"))

import make_demo

from stickwright.cli import main
from stickwright.model.case import Case
from stickwright.model.plan import Plan, SitePlan
from stickwright.planning import plan
from stickwright.records.folder import check_case, read_case

DEMO = Path(make_demo.__file__).parent / "demo"


@pytest.fixture(scope="module")
def case() -> Case:
    return read_case(DEMO, made_on="2026-03-14")


@pytest.fixture(scope="module")
def made(case: Case) -> Plan:
    return plan(case, draws=200)


def site(made: Plan, name: str) -> SitePlan:
    return next(one for one in made.sites if one.name == name)


def files(folder: Path) -> dict[str, bytes]:
    """All files of a case but the sheet that a plan leaves there."""
    paths = [path for path in folder.rglob("*") if path.is_file() and path.name != "sheet.pdf"]
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in paths}


def test_demo_is_what_its_maker_makes(tmp_path: Path) -> None:
    """examples/demo is fresh: its maker gives the same files, byte for byte, and no others; all small."""
    make_demo.make(tmp_path / "demo")
    again, there = files(tmp_path / "demo"), files(DEMO)
    assert sorted(again) == sorted(there)
    assert [name for name in again if again[name] != there[name]] == []
    assert sum(map(len, there.values())) < 1_500_000


def test_the_check_finds_nothing() -> None:
    """`stickwright check examples/demo` has no problem to tell and nothing to ask."""
    assert check_case(DEMO, made_on="2026-03-14") == ((), ())


def test_the_kit_spans_the_trade(case: Case) -> None:
    """Fourteen sticks or more: every force class, a touch surface, short and long throw, small and large, sloping
    bases; six forms of topper and three extensions with their masses."""
    sticks = case.kit.stick
    assert len(sticks) >= 14
    assert {stick.force_class for stick in sticks} == {
        "standard", "half", "third", "hyper-light", "light", "firm", "touch"
    }  # fmt: skip
    levers = [stick for stick in sticks if stick.kind == "lever"]
    assert len(levers) == len(sticks) - 1
    assert max(stick.full_force_n for stick in levers) > 50 * min(stick.full_force_n for stick in levers)
    assert max(stick.travel_m for stick in levers) > 5 * min(stick.travel_m for stick in levers)
    assert sum(stick.base_tilt_rad > 0 for stick in levers) >= 2
    assert all(stick.base_m and stick.mass_kg and stick.plug and stick.in_stock for stick in sticks)
    assert {topper.form for topper in case.kit.topper} == {"dish", "ball", "peg", "bar", "cup", "foam"}
    assert [round(1e3 * piece.length_m) for piece in case.kit.extension] == [8, 15, 25]
    assert all(piece.mass_kg > 0 for piece in (*case.kit.topper, *case.kit.extension))


def test_the_bench_finds_the_true_sticks(case: Case) -> None:
    """Every lever comes from bench readings in the case; of the start and full forces in the kit list, at most two of
    thirty miss the truth that the readings were simulated from."""
    truth = {benched.name: benched for benched in make_demo.STICKS}
    hits = []
    for stick in case.kit.stick:
        if stick.kind == "touch":
            continue
        assert stick.bench_readings is not None
        assert (DEMO / stick.bench_readings).is_file()
        assert stick.start_force_interval_n is not None
        assert stick.full_force_interval_n is not None
        true = truth[stick.name]
        hits.append(stick.start_force_interval_n[0] <= true.start_n <= stick.start_force_interval_n[1])
        hits.append(stick.full_force_interval_n[0] <= true.full_n <= stick.full_force_interval_n[1])
    assert len(hits) == 30
    assert sum(hits) >= 28


def test_the_plan_names_a_stick_of_the_kit(made: Plan, case: Case) -> None:
    """The plan's first sentence begins with a stick of the kit, and so does each site's; a second best is named."""
    names = [stick.name for stick in case.kit.stick]
    assert made.sentence.split()[0] in names
    assert [one.name for one in made.sites] == ["right index", "chin"]
    for one in made.sites:
        assert one.sentence.split()[0] in names
        assert one.choice is not None
        assert one.choice.verdict != "does not fit"
        assert "Second: " in one.sentence


def test_the_plan_is_worth_reading(made: Plan) -> None:
    """A fingertip of 0.3 to 0.6 N: standard sticks do not fit, a firm one is too heavy, the touch surface is refused
    for a finger that cannot lift, the large ones have no room. A chin of 0.8 to 1.6 N that sways by 45 mN: the lightest
    stick is too light, the worn one does not come home, and somebody is helped by an extension."""
    index = {fit.stick: fit for fit in site(made, "right index").fits}
    chin = {fit.stick: fit for fit in site(made, "chin").fits}
    assert index["fennel"].verdict == index["chert"].verdict == "does not fit"
    assert any("too heavy" in reason for reason in index["chert"].fails)
    assert any("touch surface" in reason for reason in index["flint"].fails)
    assert any("too large" in reason for reason in index["basalt"].fails)
    assert any("too light" in reason for reason in chin["moss"].fails)
    assert any("does not come home" in reason for reason in chin["marl"].fails)
    assert any(fit.extension and fit.verdict != "does not fit" for fit in (*chin.values(), *index.values()))
    assert made.next_reading.sentence


def test_a_reading_nobody_took_can_be_the_next(made: Plan) -> None:
    """Back-left and back-right were not read at the chin: the next reading asked for is one of those two, or none."""
    following = made.next_reading
    if not following.enough:
        assert following.site == "chin"
        assert following.direction_rad is not None
        assert round(math.degrees(following.direction_rad)) in (225, 315)


def test_the_tuning_sees_what_was_built_in(made: Plan) -> None:
    """The sensor's offset and the base that was put on turned lie within the tuning's intervals, and the least
    direction is the player's weakest."""
    (tuning,) = site(made, "right index").tunings
    assert tuning.stick == make_demo.TRIED
    assert tuning.offset_x.low <= make_demo.SENSOR.offset[0] <= tuning.offset_x.high
    assert tuning.offset_y.low <= make_demo.SENSOR.offset[1] <= tuning.offset_y.high
    assert tuning.rotation_rad.low <= -make_demo.SENSOR.turn_rad <= tuning.rotation_rad.high
    least = min(zip(tuning.range_share, tuning.direction_rad, strict=True), key=lambda pair: pair[0].value)
    assert abs(math.degrees(least[1]) - 135) <= 22.5


def test_the_recordings_tell_the_tremor(made: Plan) -> None:
    """20 s of keeping still shows the tremor that was built in, to a tenth of a hertz or two."""
    still = next(report for report in site(made, "right index").recordings if report.name == "still.csv")
    assert still.tremor is not None
    assert still.tremor.stands_out
    assert still.tremor.frequency_hz.value == pytest.approx(make_demo.INDEX.tremor_hz, abs=0.2)


def test_the_commands_beside_the_real_recording(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Each command in the readme of the real recording reads it, as typed from the project's folder; the first tells
    the dead zone that was applied before recording, 23 counts of 80."""
    folder = DEMO.parent / "real-thumbstick"
    lines = (folder / "README.md").read_text(encoding="utf-8").splitlines()
    commands = [shlex.split(line)[1:] for line in lines if line.startswith("    stickwright trace ")]
    assert len(commands) == 2
    monkeypatch.chdir(DEMO.parent.parent)
    for command in commands:
        assert main([word.replace("play.svg", str(tmp_path / "play.svg")) for word in command]) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert "A dead zone is already in this recording: no value between 0 and 0.2875" in told
    assert (tmp_path / "play.svg").read_text(encoding="utf-8").startswith("<")
    assert "MIT License" in (folder / "NOTICE").read_text(encoding="utf-8")
