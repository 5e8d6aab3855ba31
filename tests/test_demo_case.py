"""The demo case, as somebody who tries the program for the first time meets it; its truth is known."""

from __future__ import annotations

import math
import re
import shlex
import statistics
import sys
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "examples"))

import make_demo

import worked_cases
import worked_rooms
from kept import planned
from said import said
from stickwright.cli import main
from stickwright.files.folder import check_case, read_case
from stickwright.model.case import Case
from stickwright.model.plan import Plan, SitePlan
from stickwright.model.sharing import Sharing
from stickwright.model.wishes import Wishes
from stickwright.planning.plan import plan
from stickwright.report.document import MOST_PAGES_MOUNTED, sheet_pdf
from stickwright.report.family import first_page
from stickwright.report.mount_page import mount_page, mounted, switch_rows

DEMO = Path(make_demo.__file__).parent / "demo"


@pytest.fixture(scope="module")
def case() -> Case:
    return read_case(DEMO, made_on="2026-03-14")


@pytest.fixture(scope="module")
def made(case: Case) -> Plan:
    return planned(case, draws=200)


@pytest.fixture(scope="module")
def sharing(made: Plan) -> Sharing:
    assert made.sharing is not None
    return made.sharing


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
    """Fourteen sticks or more: a touch surface, full forces from a tenth of a newton to eight, short and long travel, small
    and large, sloping bases; six forms of topper and three extensions with their masses."""
    sticks = case.kit.stick
    assert len(sticks) >= 14
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
    assert said(made.sentence).startswith(tuple(names))
    assert [one.name for one in made.sites] == ["right index", "chin"]
    for one in made.sites:
        assert said(one.sentence).startswith(tuple(names))
        assert one.choice is not None
        assert one.choice.verdict != "does not fit"
        assert "Second choice: " in said(one.sentence)


def test_the_kit_can_press_and_be_plugged_in(case: Case) -> None:
    """Four switches or more, each with its force and its face, one of them without touch; a two-handed controller; leads
    of several lengths, an adapter and a splitter; and something of which there is one less than wanted, with its price."""
    kit = case.kit
    assert len(kit.switch) >= 4
    assert all(switch.force_n > 0 or switch.kind == "proximity" for switch in kit.switch)
    assert all(switch.face_m and switch.plug and switch.cable_m for switch in kit.switch)
    assert [switch.kind for switch in kit.switch].count("proximity") == 1
    assert len(kit.controller) == 1
    assert {lead.kind for lead in kit.lead} == {"extension", "adapter", "splitter"}
    assert len({lead.length_m for lead in kit.lead if lead.plug == "2-conductor" and lead.kind == "extension"}) == 3
    assert all(stick.plug and stick.cable_m and stick.current_a for stick in kit.stick)
    assert [switch.name for switch in kit.switch if switch.price is not None] == ["small light switch"]


def test_the_whole_controller(sharing: Sharing) -> None:
    """Two sticks, three switches, one action left to the game, one to the cousin; proven, wired, nothing given up."""
    assert sharing.proven
    assert sharing.clash is None
    placed = [(one.action, one.how, one.kind) for one in sharing.placements]
    assert placed == [
        ("move", "site", "stick"), ("look", "site", "stick"), ("dig", "site", "switch"), ("place a block", "site", "switch"),
        ("swap tool", "site", "switch"), ("jump", "option", ""), ("menu", "helper", ""),
    ]  # fmt: skip
    told = {one.action: one for one in sharing.placements}
    assert (told["move"].device, told["move"].role) == ("light stick 5 mm", "left stick")
    assert told["look"].role == "right stick"
    assert told["dig"].toggle
    assert told["menu"].helper == "cousin"
    assert [one.introduce for one in sharing.placements].count("day 1") <= 3
    assert all(one.reason and one.second for one in sharing.placements)
    assert {what for other in sharing.alternatives for what in other.changed} >= {"look", "swap tool"}


def test_dig_is_a_toggle_for_a_reason(case: Case, sharing: Sharing) -> None:
    """Digging takes up to 6 s; the thumb keeps a press for about 6.5 s, of which half is the limit."""
    (thumb,) = [one for one in case.player.site if one.name == "left thumb"]
    assert thumb.press is not None
    dig = next(action for action in case.game.action if action.name == "dig")
    assert dig.longest_hold_s is not None
    assert dig.longest_hold_s > 0.5 * sum(thumb.press.hold_s) / len(thumb.press.hold_s)
    assert any("dig stays on until it is pressed again" in said(caution.text) for caution in sharing.cautions)


def test_every_cable_is_there_and_one_switch_is_bought(sharing: Sharing) -> None:
    """Each cable reaches, two through a lead of the kit; the thumb wants two daisies and there is one: 38 for the other."""
    wiring = sharing.wiring
    assert wiring is not None
    assert [wire.missing for wire in wiring.wires if wire.missing] == []
    cables = [wire for wire in wiring.wires if not wire.paired]
    assert all(wire.needed_m and wire.length_m and wire.needed_m <= wire.length_m for wire in cables)
    assert {wire.at: wire.through for wire in cables if wire.through} == {
        ("chin",): ("stick lead 1 m",), ("left foot",): ("switch lead 1 m",)
    }  # fmt: skip
    assert [(part.name, part.count, part.buy, part.price) for part in wiring.parts if part.buy] == [
        ("small light switch", 2, 1, 38.0)
    ]
    assert [finding.text for finding in (*wiring.findings, *sharing.findings) if finding.level == "fault"] == []
    limits = [line for line in wiring.power if line.limit_a is not None]
    assert limits
    assert all(line.current_a <= line.limit_a for line in limits if line.limit_a is not None)


def test_what_if_nothing_is_bought(case: Case, sharing: Sharing) -> None:
    """With what is in the van alone the thumb has one small light switch, and something it did goes to the cousin at a loss."""
    without = plan(case, draws=50, wishes=Wishes(only_kit=True)).sharing
    assert without is not None
    assert without.clash is None
    assert without.points < sharing.points
    assert without.wiring is not None
    assert [part.name for part in without.wiring.parts if part.buy] == []
    assert [part.count for part in without.wiring.parts if part.name == "small light switch"] == [1]
    left = {one.action for one in without.placements if one.helper == "cousin"}
    assert left & {"dig", "place a block"}


def test_the_hub_is_the_demos_own(case: Case) -> None:
    """One row of numbered sockets, no two that share an input, every role set in the hub's own menu: unlike the hub of the
    worked cases, which has fixed roles."""
    (hub,) = case.hubs
    other = worked_cases.quay()
    assert {one.name for one in hub.socket}.isdisjoint(one.name for one in other.socket)
    assert [int(one.name.split()[-1]) for one in hub.socket] == list(range(1, len(hub.socket) + 1))
    assert not any(one.excludes for one in hub.socket)
    assert {one.role for one in hub.socket} == {"assignable"}
    assert {one.role for one in other.socket} > {"left stick", "right stick"}


def test_the_room_has_what_mounts_need(case: Case) -> None:
    """K7 tilts 8 to 20 degrees; clamps find tubes and a table's edge, but not the tube that carries the headrest; the face, the
    chair's own control (K7 drives) and the side for getting out stay free; every site has its place."""
    room = case.room
    assert room is not None
    assert [round(math.degrees(tilt)) for tilt in (room.tilt_from_rad, room.tilt_to_rad)] == [8, 20]
    assert room.tilt_pivot_m is not None
    assert [tube.name for tube in room.tube if tube.not_for_clamps] == ["right back tube"]
    assert len(room.tube) > 3
    assert len(room.edge) == 1
    assert {box.kind for box in room.keep_out} == {"face", "chair control", "transfer side"}
    assert {place.site for place in room.place} == {site.name for site in case.player.site}
    assert len(room.landmark) > 5


def test_the_kit_can_hold_things(case: Case) -> None:
    """Two lengths of arm, a gooseneck, a plate, trays and a coupling that lets go; three fasteners with the test behind their
    figures; none with the figures of the worked cases."""
    assert {mount.kind for mount in case.kit.mount} == {
        "friction arm", "gooseneck", "plate", "lap tray", "floor plate", "breakaway coupling",
    }  # fmt: skip
    arms = [mount for mount in case.kit.mount if mount.kind == "friction arm"]
    assert all(arm.links_m and arm.holding_nm and arm.give_n_per_m and arm.tube_m and arm.swings_away for arm in arms)
    assert [fastener.kind for fastener in case.kit.fastener] == ["hook-and-loop", "mushroom-head", "anti-slip sheet"]
    assert all(fastener.test_method for fastener in case.kit.fastener if fastener.shear_pa)
    theirs = worked_cases.van_kit(**worked_rooms.mount_kit())
    assert {mount.holding_nm for mount in arms}.isdisjoint(mount.holding_nm for mount in theirs.mount)
    strengths = {(one.shear_pa, one.tension_pa, one.friction) for one in case.kit.fastener}
    assert strengths.isdisjoint((one.shear_pa, one.tension_pa, one.friction) for one in theirs.fastener)


def test_the_plan_is_worth_reading(made: Plan) -> None:
    """A fingertip of 0.3 to 0.6 N: standard sticks do not fit, a firm one is too heavy, the touch surface is refused
    for a finger that cannot lift, the large ones have no room. A chin of 0.8 to 1.6 N that sways by 45 mN: the lightest
    stick is too light, the worn one does not come home, and somebody is helped by an extension."""
    index = {fit.stick: fit for fit in site(made, "right index").fits}
    chin = {fit.stick: fit for fit in site(made, "chin").fits}
    assert index["small stick 1 N"].verdict == index["small stick 2 N"].verdict == "does not fit"
    assert any("too stiff" in said(reason) for reason in index["small stick 2 N"].fails)
    assert any("touch surface" in said(reason) for reason in index["touch pad"].fails)
    assert any("too large" in said(reason) for reason in index["large stick 8 N"].fails)
    assert any("too light" in said(reason) for reason in chin["tall light stick"].fails)
    assert any(reason.text == "stays_off_centre" for reason in chin["worn stick"].fails)
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
    assert tuning.output_rotation_rad.low <= -make_demo.SENSOR.turn_rad <= tuning.output_rotation_rad.high
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
    assert "This recording already has a dead zone: there is no value between 0 and 29% (23 steps of 1.2%)" in told
    assert (tmp_path / "play.svg").read_text(encoding="utf-8").startswith("<")
    assert "MIT License" in (folder / "NOTICE").read_text(encoding="utf-8")


def test_both_pages_give_the_same_turn(case: Case, made: Plan) -> None:
    """The room file turns the base by 10 degrees; the recorded pushes come out turned by 13 more. Page one and the page of the
    mount say 23, the second with both parts; without recordings both say 10."""
    bare = plan(replace(case, recordings=()), draws=40)
    for result, turn in ((made, 23), (bare, 10)):
        steps = " ".join(step["text"] for step in first_page(result)["steps"])
        mount = next(one for one in result.mounts if one.site == "right index")
        settings = dict(mount_page(result, mount)["settings"])
        assert re.findall(r"(\d+)° anticlockwise", steps) == [str(turn)]
        assert settings["Rotation"].startswith(f"Its base is turned {turn}° anticlockwise, seen from above")
    (tuning,) = next(site for site in made.sites if site.name == "right index").tunings
    assert round(-math.degrees(tuning.output_rotation_rad.value)) == 13
    (turned,) = (one.pose.turn_words for one in made.mounts if one.site == "right index" and one.pose)
    assert "and 13° anticlockwise (10 to 16°)" in said(turned)


def test_switches_of_the_demo_have_a_row_each(made: Plan) -> None:
    """Thumb and foot switch on an arm each, a row each; the sticks keep their pages."""
    assert [one.site for one in mounted(made)] == ["right index", "chin"]
    rows = switch_rows(made)["rows"]
    assert [said(row[0]) for row in rows] == [
        "2 × small light switch at the left thumb",
        "round switch 75 mm at the left foot",
    ]
    notes = switch_rows(made)["notes"]
    assert any(
        level == "Assumed" and "how hard" not in text and "counts as if it pushed" in text for level, text in notes
    )
    assert all("Clamp along the tube" in said(row[1]) and "to clamp:" in said(row[2]) for row in rows)


def test_what_tires_first_counts_the_measured_loss(case: Case, sharing: Sharing) -> None:
    """Worked out from the readings as typed: the first direction against the same read again at the end, by the mean of logarithms. The
    loss stands with the part it was measured at, and no other."""
    lost = {}
    for one in case.player.site:
        if one.again_force_n and one.reading:
            first, again = (statistics.geometric_mean(values) for values in (one.reading[0].force_n, one.again_force_n))
            lost[one.name] = 1 - again / first
    loads = {one.site: one.why for one in sharing.loads}
    assert any(lost.get(name, 0) > 0 for name in loads)
    for name, why in loads.items():
        found = re.search(r"it lost ([\d.]+) ?% of its force over the visit", said(why))
        if lost.get(name, 0) > 0:
            assert found is not None
            assert float(found[1]) == pytest.approx(100 * lost[name], abs=0.6)
        else:
            assert found is None


def test_the_familys_first_page_is_one_page(made: Plan) -> None:
    """From the title to whom to call and the date, with every caution; the second page has the controls."""
    pages = sheet_pages_text(made)
    assert "Set-up for player" in pages[0]
    assert "Contact:" in pages[0]
    assert "Never use it while travelling." in pages[0]
    assert pages[1].lstrip().startswith("Controls at a glance")
    assert len(pages) <= MOST_PAGES_MOUNTED


def sheet_pages_text(made: Plan) -> list[str]:
    """What each printed page says."""
    return [" ".join(page.extract_text().split()) for page in PdfReader(BytesIO(sheet_pdf(made))).pages]
