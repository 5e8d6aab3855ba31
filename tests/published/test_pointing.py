"""Pointing against the published example, and values worked by hand from the definitions (no outside source)."""

import numpy as np
import pytest

from stickwright.files.trial_tables import read_trials
from stickwright.trace.aimed import pointing_report
from stickwright.trace.path import path_accuracy
from stickwright.trace.pointing import index_of_difficulty, throughput
from stickwright.trace.tables import trials_report

SELECTED_X = [218, 529, 195, 533, 209, 607, 231, 540, 231, 560, 207, 524, 239, 515, 180, 501, 215, 571, 215, 521]
SELECTED_Y = [534, 496, 608, 547, 651, 554, 650, 568, 642, 567, 653, 604, 704, 610, 675, 606, 666, 621, 690, 641]
TIMES_MS = [262, 268, 248, 233, 251, 252, 283, 214, 301, 266, 258, 258, 248, 242, 241, 252, 243, 255, 252, 210]
PUBLISHED_DX = [9, -11, 32, -7, 18, 67, -4, 0, -4, 20, 20, -16, -12, -25, 47, -39, 12, 31, 12, -19]

STARTS_2D = np.array(
    [(-200, 0), (200, 0), (0, -200), (0, 200), (-120, -160), (120, 160), (-160, 120), (160, -120)], dtype=float
)
SELECTED_2D = [(206, 5), (-193, 8), (-4, 212), (6, -195), (121, 152), (-128, -163), (150, -118), (-163, 129)]
TIMES_2D = [0.82, 0.76, 0.91, 0.79, 0.88, 0.84, 0.93, 0.87]

PATH = [
    (0, 0), (10, 4), (20, 9), (35, 6), (50, -2), (65, -7), (80, -3), (94, 2), (112, 4), (108, 1), (95, -1), (88, -2),
    (97, 0), (100, 1),
]  # fmt: skip


def published_example() -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray]:
    """To and fro along a level line; the selections lie beside it as recorded."""
    ends = np.where(np.arange(20) % 2 == 0, 227.0, 540.0)
    starts = np.column_stack([767.0 - ends, np.full(20, 592.0)])
    targets = np.column_stack([ends, np.full(20, 592.0)])
    selections = np.column_stack([SELECTED_X, SELECTED_Y]).astype(float)
    return starts, targets, selections, np.array(TIMES_MS) / 1000


@pytest.mark.parametrize(("distance", "width", "bits"), [(512, 64, 3.169925), (300, 20, 4.000000), (100, 30, 2.115477)])
def test_index_of_difficulty(distance, width, bits):
    """Shannon form (MacKenzie 1992; ISO 9241-411 Annex B): log2(A/W + 1), worked out apart from this program."""
    assert index_of_difficulty(distance, width) == pytest.approx(bits, abs=5e-7)


def test_throughput_of_the_published_serial_sequence():
    """Soukoreff & MacKenzie 2004, example of 20 serial movements: Ae 327.1, We 105.7, IDe 2.03, MT 251.9 ms, 8.07 bit/s
    (to six digits 8.074524, worked out apart from this program)."""
    starts, targets, selections, times_s = published_example()
    assert throughput(starts, targets, selections, times_s, serial=True) == pytest.approx(8.07, abs=0.005)
    assert throughput(starts, targets, selections, times_s, serial=True) == pytest.approx(8.074524, abs=5e-7)


def test_published_sequence_read_from_a_table(tmp_path):
    """The same published example as a table of trials (starts are the targets before): read from the file, it gives the
    published 8.07 bit/s, the serial term found by itself; the movement time's middle is the published times' own."""
    starts, targets, selections, times_s = published_example()
    lines = ["start_x,start_y,target_x,target_y,select_x,select_y,duration_s"]
    for row in np.column_stack([starts, targets, selections, times_s]).tolist():
        lines.append(",".join(f"{cell:.10g}" for cell in row))
    path = tmp_path / "published.csv"
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    told = trials_report(read_trials(path)).pointing
    assert told is not None
    assert told.movements == 20
    assert told.serial
    assert told.throughput_bit_per_s.value == pytest.approx(8.07, abs=0.005)
    assert told.movement_time_s.value == pytest.approx(sorted(TIMES_MS)[9] / 1000, abs=0.001)


def test_clock_stops_at_the_selection_in_a_recording():
    """ISO 9241-411: from the target's appearance to the selection. Eight movements in eight directions as a recording
    with a button, straight ways sampled at 1 kHz, the button at the printed times: 4.314345 bit/s, as worked out apart
    from this program from points and times."""
    rate_hz, times, places, cues, down = 1000.0, [], [], [], []
    # each movement begins at its start, so a jump of the place comes with each jump of the cue; the first is a lead-in
    moves = [((0.0, 0.0), (300.0, 300.0), (300.0, 300.0), 0.5)]
    moves += list(zip(STARTS_2D.tolist(), (-STARTS_2D).tolist(), SELECTED_2D, TIMES_2D, strict=True))
    for start, target, selected, duration_s in moves:
        n = round(duration_s * rate_hz)
        way = np.linspace(0.0, 1.0, n + 1)[:, None]
        # the sample of the press is the last of its movement; the next cue comes with the sample after it
        places.append(np.array(start) + way * (np.array(selected) - np.array(start)))
        cues.append(np.tile(target, (n + 1, 1)))
        down.append(np.arange(n + 1) == n)
    times = np.arange(sum(len(each) for each in places)) / rate_hz
    told = pointing_report(
        times, np.concatenate(places), np.concatenate(cues), 40.0, selected=np.concatenate(down), hysteresis=0.0
    )
    assert (told.movements, told.ended_by) == (8, "selection")
    assert told.throughput_bit_per_s.value == pytest.approx(4.314345, abs=5e-7)


def test_throughput_without_the_serial_term():
    """The same movements taken as beginning at the targets' centres: 7.97 bit/s, not 8.07: the difference is the
    serial term alone (worked out apart from this program)."""
    assert throughput(*published_example()) == pytest.approx(7.974374, abs=5e-7)


def test_throughput_takes_the_error_along_the_way_alone():
    """Soukoreff & MacKenzie 2004: the published errors are along the way; how far a selection lies beside it does not
    matter, by the law of cosines."""
    starts, targets, selections, times_s = published_example()
    way = np.sign(targets[:, 0] - starts[:, 0])
    assert (way * (selections[:, 0] - targets[:, 0])).tolist() == PUBLISHED_DX
    beside = selections + np.array([0.0, 40.0])
    assert throughput(starts, targets, beside, times_s) == pytest.approx(
        throughput(starts, targets, selections, times_s), rel=1e-12
    )


def test_throughput_in_two_dimensions():
    """Eight movements in eight directions, worked out apart from this program by the formulas of Soukoreff & MacKenzie
    2004: 4.314345 bit/s. Population sd would give 4.419015, the mean of single throughputs 4.332587, the
    nominal distance and width 4.069920."""
    found = throughput(STARTS_2D, -STARTS_2D, SELECTED_2D, TIMES_2D)
    assert found == pytest.approx(4.314345, abs=5e-7)
    for wrong in (4.419015, 4.332587, 4.069920):
        assert abs(found - wrong) > 0.01


def test_seven_path_measures():
    """MacKenzie, Kauppinen & Silfverberg 2001, definitions without thresholds, on a path of 14 samples worked out
    apart from this program: TRE 2, TAC 4, MDC 4, ODC 2, MV 4.035556, ME 3.000000, MO 0.857143."""
    told = path_accuracy(PATH, (0, 0), (100, 0), 20.0)
    assert told.target_reentries == 2
    assert told.task_axis_crossings == 4
    assert told.movement_direction_changes == 4
    assert told.orthogonal_direction_changes == 2
    assert told.movement_variability == pytest.approx(4.035556, abs=5e-7)
    assert told.movement_error == pytest.approx(3.000000, abs=5e-7)
    assert told.movement_offset == pytest.approx(0.857143, abs=5e-7)
