"""Tables of aimed movements and of presses: our own headers, named columns, and every mistake in one sentence."""

from pathlib import Path

import numpy as np
import pytest

from said import said
from stickwright.codes.aiming import Aiming
from stickwright.codes.message import message
from stickwright.errors import BadInput
from stickwright.files.trial_tables import TapColumns, TrialColumns, kind_of_table, read_taps, read_trials
from stickwright.trace.pointing import throughput
from stickwright.trace.tables import taps_report, trials_report

OWN = "start_x,start_y,target_x,target_y,select_x,select_y,width,duration_s,hit\n"
CLICKS = Path(__file__).parents[1] / "data" / "pointing" / "reciprocal-person-4.csv"
REAL = TrialColumns(
    ("press1_x_px", "press1_y_px"), ("target_x_px", "target_y_px"), ("press2_x_px", "press2_y_px"), width="width_mm",
    width_times=3.164927, duration="press2_ms", hit="hit",
)  # fmt: skip


def table(folder: Path, text: str) -> Path:
    path = folder / "t.csv"
    path.write_text(text, encoding="utf-8")
    return path


def rows(n: int = 8) -> str:
    rng = np.random.default_rng(3)
    return "".join(f"0,0,100,0,{100 + rng.normal(0, 4):.3f},{rng.normal(0, 4):.3f},20,0.8,1\n" for _ in range(n))


def test_own_headers(tmp_path: Path):
    """Our own headers are known without naming anything; the figures are those of the plain formula."""
    path = table(tmp_path, OWN + rows())
    assert kind_of_table(path) == "trials"
    trials = read_trials(path)
    told = trials_report(trials).pointing
    by_formula = throughput(trials.start_xy, trials.target_xy, trials.selection_xy, trials.times_s)
    assert told.throughput_bit_per_s.value == pytest.approx(by_formula, rel=1e-12)
    assert (told.movements, told.ended_by, told.error_rate.value) == (8, "table", 0.0)


def test_times_of_events_in_place_of_durations(tmp_path: Path):
    """When a movement began and when the target was selected make its duration; targets on one line need no y."""
    text = "start_x,target_x,select_x,start_s,select_s\n" + "".join(
        f"0,100,{97 + 2 * k},{10 + 2 * k},{10.8 + 2 * k}\n" for k in range(6)
    )
    trials = read_trials(table(tmp_path, text))
    assert trials.times_s == pytest.approx(0.8, abs=1e-12)
    assert not trials.target_xy[:, 1].any()
    assert trials.width is None


def test_half_empty_rows_are_kept_out_and_named_by_their_row(tmp_path: Path):
    """A row with an empty cell does not count; it is named as a spreadsheet counts (the header is row 1)."""
    told = trials_report(read_trials(table(tmp_path, OWN + rows(3) + "0,0,100,0,,,20,0.7,1\n" + rows(5))))
    assert told.pointing.left_out == (message(Aiming.rows_out, rows=(5,), why="empty-cell"),)
    assert "1 of 9 rows has an empty cell" in said(told.findings[0].text)


def test_targets_of_the_row_before_as_starts_are_corrected():
    """To and fro, the start given as the target before: said, and each distance corrected by the error before
    [soukoreff-2004]; where the button really went down at the start, nothing is corrected."""
    nominal = TrialColumns(
        ("target_x_px", "target_y_px"),
        ("target_x_px", "target_y_px"),
        ("press2_x_px", "press2_y_px"),
        duration="press2_ms",
    )
    trials = read_trials(CLICKS, nominal)
    trials.start_xy[1:] = trials.target_xy[:-1]
    trials.start_xy[0] = trials.target_xy[1]
    assert trials_report(trials).pointing.serial
    assert not trials_report(read_trials(CLICKS, REAL)).pointing.serial


def test_real_clicks():
    """187 real clicks of one person with a mouse: 21 rows far from their target left out, hits as the table has them."""
    told = trials_report(read_trials(CLICKS, REAL)).pointing
    assert told.movements == 166
    assert 3.0 < told.throughput_bit_per_s.low < told.throughput_bit_per_s.high < 5.0
    assert told.movement_time_s.value == pytest.approx(1.4, abs=0.1)
    assert told.error_rate.value < 0.1


def test_rows_of_one_person_alone(tmp_path: Path):
    """--only keeps the rows whose cell is that, as text or as a number."""
    text = "who," + OWN + "".join(f"{1 + k % 2}.0,{line}\n" for k, line in enumerate(rows(10).splitlines()))
    trials = read_trials(table(tmp_path, text), only=(("who", "2"),))
    assert trials.row.tolist() == [3, 5, 7, 9, 11]


@pytest.mark.parametrize(
    ("text", "columns", "words"),
    [
        (OWN + rows(), TrialColumns(duration="duratoin_s"), "expected the columns duratoin_s. Did you mean 'duration_s'?"),
        (OWN + rows(), TrialColumns(), "no column with the duration of each movement"),
        (OWN.replace("_s,", ",") + rows(), TrialColumns(duration="duration"), "duration: found times without a unit"),
        (OWN + rows(), TrialColumns(duration="duration_s", hit="width"), "row 2, width: found 20, expected 1 for a hit"),
        (OWN + rows().replace("0.8,", "0.8 s,"), None, 'row 2, duration_s: found "0.8 s"'),
        (OWN + rows().replace(",20,", ",,"), None, "width: found only empty cells, expected a number"),
        (OWN.replace("width", "width_mm").replace("target_x", "target_x_px") + rows(),
         TrialColumns(target=("target_x_px", "target_y"), width="width_mm", duration="duration_s"),
         "a width in mm and positions in px"),
        (OWN + rows(), TrialColumns(duration="duration_s", only=(("hit", "7"),)), 'no row with "7" (there are 1)'),
        (OWN, None, "a header and no row"),
    ],
)  # fmt: skip
def test_each_mistake_has_its_sentence(tmp_path: Path, text: str, columns: TrialColumns | None, words: str):
    """A wrong column, a missing one, a unit that is not said, an empty one: one clear sentence, with what to do."""
    with pytest.raises(BadInput) as refusal:
        read_trials(table(tmp_path, text), columns)
    assert words in " ".join(said(problem.sentence) for problem in refusal.value.problems)


def test_presses_with_own_headers(tmp_path: Path):
    """down_s and up_s; a row without a time of press is left out and counted."""
    text = "down_s,up_s\n" + "".join(f"{0.25 * k},{0.25 * k + 0.1}\n" for k in range(12)) + ",9\n"
    path = table(tmp_path, text)
    assert kind_of_table(path) == "taps"
    told = taps_report(read_taps(path))
    assert told.taps.rate_hz.value == pytest.approx(4.0, rel=1e-9)
    assert told.taps.held_s.value == pytest.approx(0.1, abs=1e-9)
    assert "1 of 13 rows has no time of press" in said(told.findings[0].text)


def test_presses_as_events(tmp_path: Path):
    """A row for each event: 0 stands for down, the next other event is its end; of the last press the end is missing."""
    text = "t_ms,action\n" + "".join(f"{200 * k},0\n{200 * k + 60},1\n" for k in range(10)) + "2000,0\n"
    taps = read_taps(table(tmp_path, text), TapColumns("t_ms", event="action", down_cell="0", time_unit="ms"))
    assert taps.down_s == pytest.approx(np.arange(11) * 0.2, abs=1e-12)
    assert taps.up_s[:10] - taps.down_s[:10] == pytest.approx(0.06, abs=1e-12)
    assert np.isnan(taps.up_s[10])
    with pytest.raises(BadInput, match=r'no row with "2" \(there are 0, 1\)'):
        read_taps(table(tmp_path, text), TapColumns("t_ms", event="action", down_cell="2", time_unit="ms"))


def test_how_long_each_press_lasted_is_no_time_of_press(tmp_path: Path):
    """A column of durations read as times of presses: said so, with the table's name."""
    taps = read_taps(table(tmp_path, "down_s\n0.3\n0.2\n0.4\n0.3\n0.3\n0.2\n"))
    with pytest.raises(BadInput, match=r"t\.csv, presses: .*not how long it lasted"):
        taps_report(taps)
