"""A third axis of a sensor, in the same words and with the same use wherever a recording comes in: folder, app, command."""

from __future__ import annotations

import io
import re
import shutil
import zipfile
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from said import said
from stickwright.cli import main
from stickwright.errors import BadInput
from stickwright.files.folder import read_case
from stickwright.files.recordings import read_recording, write_recording
from stickwright.model.case import Case
from stickwright.planning.plan import plan
from stickwright.report.technical import technical_pages
from stickwright.store.cases import case_of
from stickwright.trace.report import trace_report
from stickwright.web.demo import set_out

DEMO = Path(__file__).parents[2] / "examples" / "demo"
SAID = "x, y and z were recorded."
AT_HZ = 6.5


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo, in whose recording of keeping still the limb also trembles along z, at 6.5 Hz."""
    place = tmp_path_factory.mktemp("third") / "case"
    shutil.copytree(DEMO, place)
    still = read_recording(place / "recordings" / "still.csv", task="still")
    rng = np.random.default_rng(31)
    z = 0.05 * np.sin(2 * np.pi * AT_HZ * still.times_s) + rng.normal(0, 0.004, len(still.times_s))
    write_recording(replace(still, z=z), place / "recordings" / "still.csv")
    return place


def still_of(case: Case):
    return next(one for one in case.recordings if one.task == "still")


def assert_told_from_three(recording) -> None:
    """The tremor that only z shows, along z, and the note that three axes were read, once."""
    report = trace_report(recording)
    assert report.tremor is not None
    assert report.tremor.frequency_hz.value == pytest.approx(AT_HZ, abs=0.1)
    assert len(report.tremor.axis) == 3
    assert abs(report.tremor.axis[2]) > 0.9
    assert [said(one.text).startswith(SAID) for one in report.findings].count(True) == 1


def test_from_a_case_folder(folder):
    """Read from the folder; without z the demo's own tremor, at another frequency, is found."""
    assert_told_from_three(still_of(read_case(folder)))
    flat = trace_report(replace(still_of(read_case(folder)), z=None))
    assert flat.tremor is not None
    assert abs(flat.tremor.frequency_hz.value - AT_HZ) > 1.0 or not flat.tremor.stands_out
    assert not any(one.about == "third_axis" for one in flat.findings)


def test_through_the_app(folder, client, desk):
    """Uploaded on the page, which says what a column z is for: read again from what is kept, tremor is told from three."""
    assert (
        "third axis in a column <code>z</code>: tremor is then measured from all three axes."
        in client.get("/import").text
    )
    set_out(desk)
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w") as archive:
        for path in sorted(folder.rglob("*")):
            if path.is_file():
                archive.write(path, path.relative_to(folder).as_posix())
    sent = {"file": ("case.zip", packed.getvalue(), "application/zip")}
    answer = client.post("/import", data={"into": "d"}, files=sent)
    assert answer.status_code == 200
    visit = int(re.findall(r"\d+", answer.url.path)[-1])
    assert_told_from_three(still_of(case_of(desk.demo, visit)[0]))


def test_on_the_sheet(folder):
    """The sheet's part on recordings says that three axes were read, and along which line the tremor is strongest."""
    case = read_case(folder)
    site = case.player.site[0]
    few = case.player.model_copy(update={"site": [site]})
    kit = case.kit.model_copy(update={"stick": [one for one in case.kit.stick if one.name == "light stick 5 mm"]})
    still = (still_of(case),)
    small = replace(case, player=few, kit=kit, hubs=(), room=None, recordings=still)
    part = technical_pages(plan(small, draws=50))["recordings"]
    assert any(SAID in row[2] for row in part["notes"])
    assert any("of the three axes that were read" in facts for _, facts in part["facts"])


def test_on_the_command_line(folder, tmp_path, capsys):
    """The same words from our own column z and from a named one."""
    path = folder / "recordings" / "still.csv"
    assert main(["trace", str(path), "--task", "still"]) == 0
    own = " ".join(capsys.readouterr().out.split())
    named = tmp_path / "named.csv"
    named.write_text(path.read_text().replace("time_s,x,y,z", "time_s,a,b,c", 1))
    assert main(["trace", str(named), "--task", "still", "--x", "a", "--y", "b", "--z", "c", "--full-scale", "1"]) == 0
    for told in (own, " ".join(capsys.readouterr().out.split())):
        assert told.count(SAID) == 1
        assert f"A rhythm at {AT_HZ:.1f} Hz" in told
        assert "strongest along one line, (x " in told


def test_an_empty_or_impossible_third_axis(tmp_path):
    """An empty z counts as none; counts in z are refused as they are in x and y."""
    path = tmp_path / "still.csv"
    rows = [f"{number / 100},{0.01 * np.sin(number):.4f},0.0" for number in range(600)]
    path.write_text("time_s,x,y,z\n" + "".join(f"{row},\n" for row in rows))
    assert read_recording(path, task="still").z is None
    path.write_text("time_s,x,y,z\n" + "".join(f"{row},512\n" for row in rows))
    with pytest.raises(BadInput, match=r"still\.csv, z: found values from 512 to 512, expected shares of full output"):
        read_recording(path, task="still")


def test_a_lever_with_a_third_axis_names_the_right_ones(tmp_path):
    """y was not recorded: the line lies along x and z, with nothing along y."""
    rng = np.random.default_rng(5)
    times_s = np.arange(3000) / 100
    shake = 0.04 * np.sin(2 * np.pi * 5.0 * times_s)
    path = tmp_path / "still.csv"
    rows = zip(times_s, 0.6 * shake + rng.normal(0, 0.003, 3000), 0.8 * shake, strict=True)
    path.write_text("time_s,x,y,z\n" + "".join(f"{t},{x},,{z}\n" for t, x, z in rows))
    report = trace_report(read_recording(path, task="still"))
    assert report.tremor is not None
    assert report.tremor.axis == pytest.approx((0.6, 0.0, 0.8), abs=0.03)
    assert any(said(one.text).startswith("x and z were recorded.") for one in report.findings)
