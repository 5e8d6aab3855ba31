"""Recordings, our own and foreign."""

from __future__ import annotations

import math
import subprocess
import sys
import textwrap
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra import numpy as hnp

from said import said
from stickwright.codes.cleaning import Cleaning
from stickwright.codes.message import message
from stickwright.codes.resting import Resting
from stickwright.errors import BadInput
from stickwright.files.recordings import CUES, ColumnChoice, read_recording, write_recording
from stickwright.model.recording import Recording
from stickwright.trace.report import trace_report


def file(tmp_path, content):
    path = tmp_path / "r.csv"
    path.write_bytes(content if isinstance(content, bytes) else content.encode())
    return path


def refusals(path, **options):
    with pytest.raises(BadInput) as refused:
        read_recording(path, **options)
    return [said(problem.sentence) for problem in refused.value.problems]


def test_own_format(tmp_path):
    """time_s,x,y with cue, target and width, a byte order mark, Windows line ends, blanks round numbers, a gap."""
    text = "\ufefftime_s,x,y,cue,cue_x,cue_y,cue_width,extra\r\n0, 0.5,1,rest,,,0.1,a\r\n0.02,,-1,,0.25,0,,b\r\n\r\n"
    found = read_recording(file(tmp_path, text), site="chin", stick="ash", task="aim")
    assert found.times_s.tolist() == [0.0, 0.02]
    np.testing.assert_array_equal(found.xy, [[0.5, 1.0], [np.nan, -1.0]])
    assert found.cue is not None
    assert found.cue.tolist() == ["rest", ""]
    np.testing.assert_array_equal(found.cue_xy, [[np.nan, np.nan], [0.25, 0.0]])
    assert (found.cue_width, found.unit, found.site, found.stick, found.task) == (0.1, "share", "chin", "ash", "aim")
    assert [said(note) for note in found.notes] == ["1 of 2 samples has an empty cell", "columns not read: extra"]


def test_counts_of_a_foreign_device(tmp_path):
    """Frames at 60 a second, unsigned bytes about 128, y growing downwards, full output 127 counts: by hand,
    frame 6 is 0.1 s, 255 is (255 - 128)/127 = 1, and y 0 is +128/127."""
    path = file(tmp_path, "frame,sx,sy,other\n0,128,128,a\n6,255,0,b\n")
    choice = ColumnChoice(
        time="frame", time_unit="frame", rate_hz=60, x="sx", y="sy", full_scale=127, centre=(128, 128), flip_y=True
    )
    found = read_recording(path, columns=choice)
    assert found.times_s == pytest.approx([0, 0.1], rel=1e-12)
    assert found.xy == pytest.approx(np.array([[0, 0], [1, 128 / 127]]), rel=1e-12)


def test_units_targets_and_one_axis(tmp_path):
    """Milliseconds by the column's name; a foreign unit is kept with its name; one axis leaves y not known and says so;
    targets are turned as the stick is."""
    path = file(tmp_path, "time_ms,px,tx,ty\n0,10,10,4\n20,12,14,6\n")
    choice = ColumnChoice(time="time_ms", x="px", y=None, unit="px", cue_x="tx", cue_y="ty", flip_y=True)
    found = read_recording(path, columns=choice)
    assert found.times_s == pytest.approx([0, 0.02], rel=1e-12)
    assert found.xy[:, 0].tolist() == [10, 12]
    assert np.isnan(found.xy[:, 1]).all()
    assert found.cue_xy is not None
    assert found.cue_xy.tolist() == [[10, -4], [14, -6]]
    assert found.unit == "px"
    assert [said(note) for note in found.notes] == ["one axis only: y was not recorded"]


def test_one_axis_is_written_and_read_back(tmp_path):
    """A lever with one axis, written in our own format, reads back with y not recorded; an empty x cell among others
    is counted, y is not."""
    xy = np.column_stack([[0.1, 0.2, np.nan, 0.4], np.full(4, np.nan)])
    write_recording(Recording("lever.csv", np.arange(4) / 50, xy), tmp_path / "lever.csv")
    found = read_recording(tmp_path / "lever.csv")
    np.testing.assert_array_equal(found.xy, xy)
    assert [said(note) for note in found.notes] == [
        "1 of 4 samples has an empty cell",
        "one axis only: y was not recorded",
    ]


def test_real_lever_says_nothing_of_forward():
    """A real thumbstick of which one axis was logged in counts: trace tells right and left, and of forward only that
    it was not recorded."""
    path = Path(__file__).parents[1] / "data" / "thumbstick" / "play-2-person-D-0-to-30-s.csv"
    read = read_recording(path, columns=ColumnChoice(x="raw_x_count", y=None, full_scale=80.0))
    report = trace_report(read)
    assert report.reach is not None
    assert [round(math.degrees(phi)) for phi in report.reach.direction_rad] == [0, 180]
    assert report.rest is None
    told = [finding.text for finding in report.findings]
    assert message(Cleaning.one_axis, recorded="x") in told
    assert message(Resting.one_axis, recorded="x") in told


def test_equal_times(tmp_path):
    """A clock that stands for a row or two is noted; one that stands throughout is refused, with what to say instead."""
    found = read_recording(file(tmp_path, "time_s,x,y\n0,0,0\n0,1,1\n1,0,0\n1,0,0\n"))
    assert [said(note) for note in found.notes] == ["2 samples have the same time as the one before"]
    assert found.times_s.tolist() == [0, 0, 1, 1]
    with pytest.raises(
        BadInput, match="time_s: found 3 rows that all have the same time, expected time that runs"
    ) as no:
        read_recording(file(tmp_path, "time_s,x,y\n5,0,0\n5,1,1\n5,0,0\n"))
    assert "--time none and --rate" in str(no.value)


def test_rows_at_a_rate(tmp_path):
    """No time column: rows come at the rate."""
    choice = ColumnChoice(time=None, rate_hz=50, x="a", y="b", full_scale=1)
    assert read_recording(file(tmp_path, "a,b\n0,0\n1,1\n"), columns=choice).times_s.tolist() == [0, 0.02]


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "found an empty file"),
        ("time_s,x,y\n", "found a header and no rows"),
        ("time_s,x,y\n\n\n", "found a header and no rows"),
        ("\n0,1,1\n", "row 1: found an empty line, expected the headers time_s,x,y"),
        ("0,1,1\n1,1,1\n", "row 1: found numbers: 0, 1, 1"),
        (
            "frame,stick_x,stick_y\n0,1,1\n",
            "row 1: found the columns frame, stick_x, stick_y, expected the columns time_s, x, y. Name them with "
            "--time, --x, --y",
        ),
        ("time_s,x,x,y\n0,1,1,1\n", 'row 1: found the column "x" twice'),
        ("time_s;x;y\n0;0,5;1\n", "columns separated by semicolons: time_s;x;y"),
        ("time_s\tx\ty\n0\t0\t1\n", "columns separated by tabs"),
        ("time_s,x,y\n0,0,0\n1,0,5,0,5\n", "row 3: found 5 cells, expected 3 (time_s, x, y). A decimal comma"),
        ('time_s,x,y\n0,"0,5",0\n', 'row 2, x: found "0,5", expected a number with a decimal point. Write 0.5.'),
        ("time_s,x,y\n0,nan,0\n", 'row 2, x: found "nan", expected a number. Leave the cell empty'),
        ("time_s,x,y\n0,0,-inf\n", 'row 2, y: found "-inf"'),
        ("time_s,x,y\n0,0,1e300\n", 'row 2, y: found "1e300"'),
        ("time_s,x,y\n0,0,0\n,0,0\n1,0,0\n", "row 3, time_s: found an empty cell"),
        ("time_s,x,y\n0,0,0\n2,0,0\n1,0,0\n", "row 4, time_s: found 1 after 2, expected time that runs forward"),
        ("time_s,x,y\n0,,0\n1,,0\n", "r.csv, x: found only empty cells"),
        ("time_s,x,y\n0,0,-127\n", "x, y: found values from -127 to 0, expected shares of full output, -1 to 1."),
        ("time_s,x,y,cue\n0,0,0,rset\n", "row 2, cue: found \"rset\", expected one of rest, still, rim"),
        ("time_s,x,y,cue_x\n0,0,0,1\n", "found only one of cue_x and cue_y"),
        ("time_s,x,y,cue_width\n0,0,0,.1\n1,0,0,.2\n", "found several widths: 0.1, 0.2"),
        ('time_s,x,y\n0,"1,1\n1,1,1\n', "row 2: found a quote that is not closed"),
        (
            "time_s,x,y,caf\xe9\n0,0,0,a\n".encode("latin-1"),
            "line 1, byte 15: found the byte E9, which is not UTF-8 ('é'",
        ),
        (b"time_s,x,y\n0,0,0\n1,\xb5,1\n", "row 3, byte 3: found the byte B5, which is not UTF-8"),
        ("time_s,x,y\n0,0,0\n".encode("utf-16"), "text in UTF-16"),
        (b"\x00\x01\x02\n", "no lines of text"),
        (b"x" * 70_000, "no lines of text"),
    ],
)  # fmt: skip
def test_each_mistake_has_its_sentence(tmp_path, content, words):
    """File, row as in a spreadsheet, column, what was found, what to do: one sentence for one mistake."""
    (sentence,) = refusals(file(tmp_path, content))
    assert words in sentence


@pytest.mark.parametrize("row", ['"', '0,0,"', '"",', '0,"0",0"', '\n"\n'])
def test_quotes_that_are_not_closed(tmp_path, row):
    """A stray quote is refused by its row."""
    assert (
        "a quote that is not closed"
        in refusals(file(tmp_path, f"time_s,x,y\n0,0,0\n{row}x\n".replace('"",x', '",x')))[0]
    )


def test_quoted_numbers_are_numbers(tmp_path):
    """Some programs put every cell into quotes, and remarks with commas beside them."""
    found = read_recording(file(tmp_path, 'time_s,x,note,y\n"0","0.5","a, b","1"\n'))
    assert found.xy.tolist() == [[0.5, 1]]


def test_a_folder_and_a_missing_file(tmp_path):
    """A folder in place of a file, and no file."""
    assert "found a folder" in refusals(tmp_path)[0]
    assert "found no such file" in refusals(tmp_path / "none.csv")[0]


@pytest.mark.parametrize(
    ("choice", "words"),
    [
        (
            {"time": "t", "full_scale": 1},
            "found times without a unit, expected a name that ends in _s, _ms or _min",
        ),
        ({"time": "t", "time_unit": "frame", "full_scale": 1}, "found frames and no rate"),
        ({"time": "t", "time_unit": "s"}, "expected the value at full output. Add --full-scale (1 if"),
        ({"time": "t", "time_unit": "s", "full_scale": 0}, "found a full scale of 0"),
        ({"time": "t", "time_unit": "s", "full_scale": 1, "unit": "px"}, "both a full scale and a unit"),
        ({"time": "t", "time_unit": "s", "full_scale": 1, "x": "ex"}, "expected the columns ex"),
        (
            {"time": "t", "time_unit": "s", "full_scale": 1, "centre": (float("nan"), 0)},
            "a centre that is not a number",
        ),
        ({"time": "t", "time_unit": "s", "full_scale": 1, "y": "stik_y"}, "Did you mean 'stick_y'?"),
    ],
)
def test_each_wrong_choice_has_its_sentence(tmp_path, choice, words):
    """A choice of columns that does not fit the file, or itself."""
    path = file(tmp_path, "t,x,y,stick_y\n0,0,0,0\n1,1,1,1\n")
    (sentence,) = refusals(path, columns=ColumnChoice(**choice))
    assert words in sentence


def test_all_bad_cells_are_counted_and_ten_are_told(tmp_path):
    """A column of words: ten rows by number, in order, then how many more."""
    rows = "".join(f"{place},a,{'b' if place % 2 else 0}\n" for place in range(1000))
    found = refusals(file(tmp_path, "time_s,x,y\n" + rows))
    assert len(found) == 11
    assert found[0].startswith('r.csv, row 2, x: found "a"')
    assert found[2].startswith('r.csv, row 3, y: found "b"')
    assert "found 1,490 more problems like these" in found[-1]


finite = st.floats(-2, 2)


@given(
    data=hnp.arrays(np.float64, st.tuples(st.integers(1, 12), st.just(6)), elements=st.one_of(finite, st.just(np.nan))),
    cue=st.lists(st.sampled_from(CUES), min_size=12, max_size=12),
    width=st.none() | st.floats(0.01, 2),
)
@settings(max_examples=60, deadline=None)
def test_a_written_recording_reads_back(tmp_path_factory, data, cue, width):
    """Law: what is written in our own format reads back to the same bits, gaps included."""
    data[0, 1:3] = 0.5
    times_s = np.sort(np.nan_to_num(data[:, 0]))
    times_s[-1] += 1.0  # a clock that stands throughout is refused
    made = Recording("r.csv", times_s, data[:, 1:3], np.array(cue[: len(data)]), data[:, 3:5], width)
    path = tmp_path_factory.getbasetemp() / "r.csv"
    write_recording(made, path)
    found = read_recording(path)
    np.testing.assert_array_equal(found.times_s, made.times_s)
    np.testing.assert_array_equal(found.xy, made.xy)
    np.testing.assert_array_equal(found.cue_xy, made.cue_xy)
    assert found.cue is not None
    assert found.cue.tolist() == cue[: len(data)]
    assert found.cue_width == width


def test_a_foreign_unit_is_not_written(tmp_path):
    """Our own format holds shares of full output only."""
    made = Recording("r.csv", np.zeros(1), np.zeros((1, 2)), unit="px")
    with pytest.raises(BadInput, match="found a recording in px, expected shares of full output"):
        write_recording(made, tmp_path / "r.csv")


cells = st.sampled_from(["", "0", "1", "-1", ".5", "nan", '"', "a", "1e400", "\r", "0,5"])
rows = st.lists(st.lists(cells, max_size=4).map(",".join), max_size=5).map("\n".join)
rubbish = st.one_of(
    st.binary(max_size=60),
    st.text(max_size=40).map(lambda text: f"time_s,x,y,cue\n{text}".encode()),
    rows.map(lambda text: f"time_s,x,y\n{text}".encode()),
)


@given(rubbish)
@settings(max_examples=400, deadline=None)
def test_nothing_but_a_sentence_comes_of_rubbish(tmp_path_factory, data):
    """Law: whatever a file holds, it is read or refused in words, each with what was found and expected."""
    path = tmp_path_factory.getbasetemp() / "rubbish.csv"
    path.write_bytes(data)
    found, problems = None, ()
    try:
        found = read_recording(path)
    except BadInput as refused:
        problems = refused.problems
    assert all(problem.found and problem.expected for problem in problems)
    assert (found is None) == bool(problems)
    assert found is None or np.isfinite(found.times_s).all()


@pytest.mark.slow
def test_an_hour_at_a_thousand_a_second_needs_modest_memory(tmp_path):
    """3.6 million samples are read with at most about four times the memory of their numbers (3 x 8 bytes a sample),
    measured as the growth of the process's peak."""
    script = textwrap.dedent(
        """
        import resource, sys
        from pathlib import Path
        import numpy as np
        from stickwright.files.recordings import read_recording
        samples, path = 3_600_000, Path(sys.argv[1])
        path.write_text("time_s,x,y\\n0,0,0\\n")
        read_recording(path)  # whatever is loaded once
        line = b"%d.000,0.12345,-0.54321\\n"
        with path.open("wb") as file:
            file.write(b"time_s,x,y\\n")
            for second in range(samples // 1000):
                file.write((line % second) * 1000)
        before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
        found = read_recording(path)
        grown = (resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before) * 1024
        assert len(found.times_s) == samples
        print(grown / (samples * 3 * 8))
        """
    )
    done = subprocess.run(
        [sys.executable, "-c", script, str(tmp_path / "hour.csv")], capture_output=True, text=True, check=True
    )
    assert float(done.stdout) < 4.5


def test_selections_and_strokes(tmp_path):
    """A button (0, 1, a bit mask), an event in words, and numbers of strokes; written in our own format they read back."""
    text = "t_s,x,y,mask,event,line\n0,0,0,0,,7\n1,1,1,256,,7\n2,1,0,0,click,\n3,0,0,0,up,9\n"
    button = read_recording(
        file(tmp_path, text), columns=ColumnChoice("t_s", full_scale=1.0, select="mask", stroke="line")
    )
    assert button.selected.tolist() == [False, True, False, False]
    assert button.stroke.tolist() == [0, 0, -1, 1]
    event = read_recording(file(tmp_path, text), columns=ColumnChoice("t_s", full_scale=1.0, select="event"))
    assert event.selected.tolist() == [False, False, True, False]
    write_recording(button, tmp_path / "own.csv")
    again = read_recording(tmp_path / "own.csv")
    assert again.selected.tolist() == button.selected.tolist()
    assert again.stroke.tolist() == button.stroke.tolist()
    with pytest.raises(BadInput, match="line: found the same in every row, expected a button that goes down and up"):
        read_recording(
            file(tmp_path, text.replace(",\n", ",7\n")), columns=ColumnChoice("t_s", full_scale=1.0, select="line")
        )


def test_a_column_of_durations_is_not_to_be_sorted(tmp_path):
    """Times that go up and down in many rows are durations: one sentence, and never the advice to sort them."""
    text = "time_s,x,y\n" + "".join(f"{0.8 + 0.1 * (k % 3)},0.1,0.2\n" for k in range(18))
    with pytest.raises(BadInput) as refusal:
        read_recording(file(tmp_path, text))
    assert len(refusal.value.problems) == 1
    assert "Is it how long each row took?" in str(refusal.value)
    assert "--duration" in str(refusal.value)
    assert "ort the rows" not in str(refusal.value)
