"""Pointing from clicks and from recordings: what is told, what is left out, what is refused."""

import csv
import math
from pathlib import Path

import numpy as np
import pytest

from said import said
from stickwright.codes.aiming import Aiming
from stickwright.codes.message import message
from stickwright.errors import BadInput
from stickwright.trace.aimed import pointing_report
from stickwright.trace.path import path_accuracy
from stickwright.trace.pointing import index_of_difficulty, throughput, throughput_report

DATA = Path(__file__).parents[1] / "data" / "pointing"
PX_PER_MM = 3.164927


def clicks(n: int, rng: np.random.Generator) -> tuple[np.ndarray, ...]:
    """Movements of 100 units in all directions; errors of 5 along and across; 0.8 s on the whole."""
    angle = rng.uniform(0, 2 * np.pi, n)
    targets = 100 * np.column_stack([np.cos(angle), np.sin(angle)])
    return np.zeros((n, 2)), targets, targets + rng.normal(0, 5, (n, 2)), rng.lognormal(math.log(0.8), 0.2, n)


def guided(
    n: int, rng: np.random.Generator, *, scatter: float = 0.02, rate_hz: float = 100.0
) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Cue to and fro every 1.5 s; the player starts 0.2 s later, moves for 0.5 s and stays where they ended."""
    t = np.arange(int(1.5 * n * rate_hz)) / rate_hz
    step = (t // 1.5).astype(int)
    cue = np.where(step % 2 == 0, -0.5, 0.5)
    ends = np.where(np.arange(n) % 2 == 0, -0.5, 0.5) + rng.normal(0, scatter, n)
    before = np.concatenate([ends[:1], ends[:-1]])
    s = np.clip((t - 1.5 * step - 0.2) / 0.5, 0, 1)
    x = before[step] + (ends - before)[step] * (10 * s**3 - 15 * s**4 + 6 * s**5)
    return t, np.column_stack([x, 0 * t]), np.column_stack([cue, 0 * t])


def test_click_report_is_the_plain_arithmetic():
    """One sequence without odd rows: the report's throughput is that of `throughput`."""
    given = clicks(24, np.random.default_rng(1))
    report = throughput_report(*given)
    assert report.left_out == ()
    assert report.throughput_bit_per_s.value == pytest.approx(throughput(*given), rel=1e-12)
    assert report.throughput_bit_per_s.low < throughput(*given) < report.throughput_bit_per_s.high


def test_interval_of_throughput_covers():
    """Of 100 sequences of 16 movements whose true throughput is known, the 95 % interval holds it in 86 or more
    (fewer than 86 would come by chance in 1 of 1000 at 95 %)."""
    rng = np.random.default_rng(5)
    true = math.log2(100 / (4.133 * 5) + 1) / (0.8 * math.exp(0.02))
    held = 0
    for _ in range(100):
        told = throughput_report(*clicks(16, rng)).throughput_bit_per_s
        held += told.low <= true <= told.high
    assert held >= 86


def test_sequences_are_not_pooled():
    """Near and far targets are two sequences: the mean of two throughputs, not one of all movements together."""
    rng = np.random.default_rng(3)
    near, far = clicks(10, rng), clicks(10, rng)
    far = (far[0], 3 * far[1], 3 * far[1] + (far[2] - far[1]), 1.5 * far[3])
    report = throughput_report(*(np.concatenate(both) for both in zip(near, far, strict=True)))
    expected = (throughput(*near) + throughput(*far)) / 2
    assert report.throughput_bit_per_s.value == pytest.approx(expected, rel=1e-12)


def test_serial_term_uses_the_row_before():
    """Starts given as the previous targets' centres: as in the plain arithmetic, when no row is left out."""
    rng = np.random.default_rng(4)
    targets = np.column_stack([np.where(np.arange(20) % 2 == 0, 100.0, 0.0), np.zeros(20)])
    given = (100.0 - targets) * [1, 0], targets, targets + rng.normal(0, 4, (20, 2)), np.full(20, 0.7)
    report = throughput_report(*given, serial=True)
    assert report.throughput_bit_per_s.value == pytest.approx(throughput(*given, serial=True), rel=1e-12)
    assert throughput(*given, serial=True) != pytest.approx(throughput(*given), rel=1e-4)


def test_odd_rows_are_left_out_and_named():
    """A press back at the start, a double click elsewhere, an empty cell and a coffee break are named by row; the
    rest is told as if they had never been."""
    rng = np.random.default_rng(6)
    starts, targets, selections, times_s = clicks(30, rng)
    good = np.ones(30, dtype=bool)
    good[[4, 11, 17, 25]] = False
    expected = throughput(starts[good], targets[good], selections[good], times_s[good])
    selections[4] = 0.1 * targets[4]
    selections[11] = 1.6 * targets[11]
    selections[17] = math.nan
    times_s[25] = 45.0
    report = throughput_report(starts, targets, selections, times_s, widths=20.0)
    assert [(entry.param("rows"), entry.param("why")) for entry in report.left_out] == [
        ((5,), "selected-nearer-start"),
        ((12,), "far-from-target"),
        ((18,), "empty-cell"),
        ((26,), "time-apart"),
    ]
    assert report.movements == 26
    assert report.throughput_bit_per_s.value == pytest.approx(expected, rel=1e-12)


def test_error_rate_has_wilsons_interval():
    """Wilson 1927, worked by hand for 2 misses in 10: 0.0567 to 0.5098."""
    targets = np.tile([100.0, 0.0], (10, 1))
    selections = targets + np.array([[d, 0.0] for d in (1, -2, 3, -1, 2, -3, 1, -2, 12, -14)])
    told = throughput_report(np.zeros((10, 2)), targets, selections, np.full(10, 0.8), widths=20.0).error_rate
    assert told.value == pytest.approx(0.2, rel=1e-12)
    assert told.low == pytest.approx(0.0567, abs=5e-5)
    assert told.high == pytest.approx(0.5098, abs=5e-5)


def test_too_few_movements_give_no_figure():
    """Two movements: no throughput, and a sentence why."""
    report = throughput_report([[0, 0], [0, 0]], [[9, 0], [9, 0]], [[8, 0], [9.5, 0]], [1.0, 1.1])
    assert report.throughput_bit_per_s.value is None
    assert "too few" in said(report.throughput_bit_per_s.why)
    assert "widths" in said(report.error_rate.why)


def test_real_clicks_to_and_fro():
    """One person with a mouse, 187 rows: all 21 with a press more than 100 px off (the others: 25 at most) are
    left out and named, nothing else is; the interval of the effective throughput lies between 3
    and 5 bit/s (a mouse usually gives 4 to 5, from memory; small targets give less)."""
    with (DATA / "reciprocal-person-4.csv").open() as file:
        rows = list(csv.DictReader(file))

    def columns(*names: str) -> np.ndarray:
        return np.array([[float(row[name]) for name in names] for row in rows])

    starts, targets = columns("press1_x_px", "press1_y_px"), columns("target_x_px", "target_y_px")
    selections, times_s = columns("press2_x_px", "press2_y_px"), columns("press2_ms")[:, 0] / 1000
    widths = PX_PER_MM * columns("width_mm", "height_mm").min(axis=1)
    missed = np.hypot(*(selections - targets).T)
    absurd = np.flatnonzero(missed > 100) + 1
    report = throughput_report(starts, targets, selections, times_s, widths)
    assert absurd.size == 21
    named = [row for entry in report.left_out for row in entry.param("rows")]
    assert sorted(named) == absurd.tolist()
    assert len(report.left_out) == 2  # each reason once
    assert 3.0 < report.throughput_bit_per_s.low < report.throughput_bit_per_s.high < 5.0


def test_guided_recording():
    """Twenty jumps, the first before anything was known: 19 movements, each 0.2 s of noticing and the way into the
    target; no error; nothing crosses the line twice."""
    report = pointing_report(*guided(20, np.random.default_rng(7)), 0.2)
    assert report.movements == 19
    assert report.left_out == (message(Aiming.movement_out, number=1, at_s=0.0, why="before-start"),)
    assert report.error_rate.value == 0
    measures = dict(report.path_measures)
    assert list(measures) == [
        "target_reentries", "task_axis_crossings", "movement_direction_changes", "orthogonal_direction_changes",
        "movement_variability", "movement_error", "movement_offset",
    ]  # fmt: skip
    assert measures["target_reentries"].value == 0
    assert "0.01" in said(measures["movement_error"].assumed)
    # Effective width 4.133 x 0.02 (x sqrt 2: the start scatters too only in the distance), time about 0.55 s.
    assert (
        report.throughput_bit_per_s.low < math.log2(1.0 / (4.133 * 0.02) + 1) / 0.55 < report.throughput_bit_per_s.high
    )


def test_who_drifts_in_the_target_has_chosen_the_middle_of_the_drift():
    """By hand: in the target 0.5 s after each jump, drifting evenly for 0.2 s by up to 0.08 to either side of a place of its own and
    staying then. The time is 0.5 s, the selection that place; throughput by the formula from both."""
    rng = np.random.default_rng(12)
    n = 16
    targets = np.where(np.arange(n) % 2, 0.5, -0.5)
    chosen, drift = targets + rng.uniform(-0.01, 0.01, n), rng.uniform(-0.08, 0.08, n)
    t = np.arange(150 * n) / 100
    step = np.arange(150 * n) // 150
    since = np.arange(150 * n) % 150
    ended = chosen + drift
    x = np.where(
        since < 50,
        np.concatenate([[0.0], ended[:-1]])[step],
        chosen[step] + drift[step] * np.clip((since - 60) / 10, -1, 1),
    )
    report = pointing_report(t, np.column_stack([x, 0 * t]), np.column_stack([targets[step], 0 * t]), 0.2)
    places = [np.column_stack([one, 0 * one]) for one in (ended[:-1], targets[1:], chosen[1:])]
    assert report.movements == n - 1
    assert report.throughput_bit_per_s.value == pytest.approx(throughput(*places, np.full(n - 1, 0.5)), rel=1e-9)


def pressed(
    n: int, rng: np.random.Generator, *, after_s: float = 0.3, beside: float = 0.0
) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray]:
    """As `guided`, and a press of 0.1 s so long after each movement, in the sample in which the next cue comes."""
    t, xy, cue = guided(n, rng)
    step = (t // 1.5).astype(int)
    # the press brings the next cue: from 1.5 s the time from jump to press is 0.2 + 0.5 + after
    moved_s = 0.7 + after_s
    kept = t - 1.5 * step <= moved_s + 1e-9
    since = (t - 1.5 * step)[kept]
    again = np.arange(int(kept.sum())) / 100.0
    down = (since < 0.1) & (step[kept] > 0)
    return again, xy[kept] + [0.0, beside], cue[kept], down


def test_the_clock_stops_at_the_press():
    """ISO 9241-411: the time runs to the selection. Noticing 0.2 s, moving 0.5 s, pressing 0.3 s later: 1.0 s each, where
    entering to stay would have been told about 0.5 s; throughput follows from it, by the formula, from the places."""
    t, xy, cue, down = pressed(20, np.random.default_rng(7))
    told, dwelt = pointing_report(t, xy, cue, 0.2, selected=down), pointing_report(t, xy, cue, 0.2)
    assert (told.ended_by, dwelt.ended_by) == ("selection", "dwell")
    jumps = np.flatnonzero(np.diff(cue[:, 0]) != 0) + 1
    starts, targets, selections = xy[jumps[:-1]], cue[jumps[:-1]], xy[jumps[1:]]
    by_hand = throughput(starts, targets, selections, np.diff(t[jumps]))
    assert np.diff(t[jumps]) == pytest.approx(1.01, abs=1e-9)
    assert told.throughput_bit_per_s.value == pytest.approx(by_hand, rel=1e-9)
    assert dwelt.throughput_bit_per_s.value > 1.5 * by_hand
    assert told.left_out[-1].param("why") == "no-selection"  # the last target was never pressed


def test_a_press_outside_the_target_is_an_error_and_not_left_out():
    """Every press 0.15 beside a target of diameter 0.2: all are misses; staying is not needed."""
    t, xy, cue, down = pressed(12, np.random.default_rng(9), beside=0.15)
    report = pointing_report(t, xy, cue, 0.2, selected=down)
    assert report.error_rate.value == 1.0
    assert report.movements == 10


def test_a_few_stray_presses_do_not_make_a_task_of_pressing():
    """Two presses in twenty targets: the targets were chosen by staying, and every movement counts."""
    t, xy, cue = guided(20, np.random.default_rng(7))
    down = np.zeros(t.size, dtype=bool)
    down[[450, 1200]] = True
    report = pointing_report(t, xy, cue, 0.2, selected=down)
    assert (report.ended_by, report.movements) == ("dwell", 19)
    with pytest.raises(BadInput, match="one row for each time"):
        pointing_report(t, xy, cue, 0.2, selected=down[:-1])


def test_reentries_are_means():
    """Half of the movements leave the target once and come back: 0.5 a movement, where a median would say 0 or 1."""
    t, xy, cue = guided(21, np.random.default_rng(7), scatter=0.0)
    step = (t // 1.5).astype(int)
    out = (step % 2 == 1) & (t - 1.5 * step > 0.68) & (t - 1.5 * step < 0.74)
    xy[out, 1] += 0.3
    measures = dict(pointing_report(t, xy, cue, 0.2).path_measures)
    found = measures["target_reentries"]
    assert found.value == pytest.approx(0.5, abs=1e-12)
    assert found.low > 0
    assert found.high < 1.2


def test_guided_recording_with_misses():
    """Who stops outside the target is taken at the last sample before the next jump: an error, not left out."""
    t, xy, cue = guided(20, np.random.default_rng(8), scatter=0.0)
    short = (t > 15.2) & (t < 16.5)
    xy[short, 0] *= 0.7
    report = pointing_report(t, xy, cue, 0.2)
    assert report.movements == 19
    assert report.error_rate.value == pytest.approx(1 / 19, rel=1e-12)


def test_guided_recording_names_what_is_left_out():
    """A break, a jump that was not answered, a stop half a way short: left out, each with its time and reason."""
    t, xy, cue = guided(20, np.random.default_rng(9))
    xy[(t >= 4.5) & (t < 6.0)] = xy[np.searchsorted(t, 4.5)]
    xy[(t >= 6.0) & (t < 6.01)] = xy[np.searchsorted(t, 5.99)]
    whole = (t < 15.3) | (t > 15.9)
    report = pointing_report(t[whole], xy[whole], cue[whole], 0.2)
    text = " | ".join(said(one) for one in report.left_out)
    assert "movement 4 at 4.5 s: no movement" in text
    assert "at 15 s: a break in the recording" in text


def test_a_target_that_moves_all_the_time_is_refused():
    """Following is not pointing: the sentence says what to use."""
    t = np.arange(500) / 100
    cue = np.column_stack([np.sin(t), np.cos(t)])
    with pytest.raises(BadInput, match="use tracking"):
        pointing_report(t, cue, cue, 0.2)
    with pytest.raises(BadInput, match="no target"):
        pointing_report(t, cue, np.full((500, 2), math.nan), 0.2)
    with pytest.raises(BadInput, match="a width above 0"):
        pointing_report(t, cue, cue, 0.0)


def test_hysteresis_forgives_jitter():
    """A straight path with jitter of 0.4 to either side: many crossings and reversals, none beyond 0.5."""
    rng = np.random.default_rng(10)
    x = np.linspace(0, 100, 400)
    path = np.column_stack([x + rng.uniform(-0.4, 0.4, 400), rng.uniform(-0.4, 0.4, 400)])
    plain = path_accuracy(path, (0, 0), (100, 0), 10.0)
    calm = path_accuracy(path, (0, 0), (100, 0), 10.0, hysteresis=0.5)
    assert plain.task_axis_crossings > 100
    assert plain.movement_direction_changes > 100
    assert plain.orthogonal_direction_changes > 50
    assert calm[:4] == (0, 0, 0, 0)
    assert calm[4:] == plain[4:]


@pytest.mark.parametrize(
    ("x", "reentries"), [([98, 99, 100], 0), ([98, 90, 99, 100], 1), ([0, 50, 99, 100], 0), ([0, 98, 90, 99, 100], 1)]
)
def test_reentries_count_from_the_first_time_inside(x: list[float], reentries: int):
    """By hand, target 100 of width 10: a way that begins inside and leaves has come back once, as one that arrived has."""
    path = np.column_stack([np.array(x, dtype=float), np.zeros(len(x))])
    assert path_accuracy(path, (0, 0), (100, 0), 10.0).target_reentries == reentries


def test_hysteresis_keeps_real_reversals():
    """Out 10, back 3, out again: one backing up and one more reversal, at any hysteresis below half of 3."""
    x = np.concatenate([np.linspace(0, 10, 50), np.linspace(10, 7, 20), np.linspace(7, 20, 60)])
    path = np.column_stack([x, 0 * x])
    for hysteresis in (0.0, 0.5, 1.4):
        told = path_accuracy(path, (0, 0), (20, 0), 2.0, hysteresis=hysteresis)
        assert told.orthogonal_direction_changes == 2
    assert path_accuracy(path, (0, 0), (20, 0), 2.0, hysteresis=1.6).orthogonal_direction_changes == 0


@pytest.mark.parametrize("turn", [0.0, 1.1, -2.5])
def test_path_measures_do_not_depend_on_direction(turn):
    """Law: turning start, target and path together changes no measure."""
    rng = np.random.default_rng(11)
    path = np.column_stack([np.linspace(0, 100, 80), np.cumsum(rng.normal(0, 1, 80))])
    spin = np.array([[math.cos(turn), -math.sin(turn)], [math.sin(turn), math.cos(turn)]])
    plain = path_accuracy(path, (0, 0), (100, 0), 20.0)
    turned = path_accuracy(path @ spin.T, (0, 0), spin @ (100, 0), 20.0)
    assert turned == pytest.approx(plain, rel=1e-9)


def test_what_cannot_be_worked_out_is_refused():
    """Class and words of each refusal."""
    line = [[0.0, 0.0], [100.0, 0.0]]
    ends = [[100.0, 0.0], [0.0, 0.0]]
    with pytest.raises(BadInput, match="no scatter at all"):
        throughput(line, ends, ends, [1.0, 1.0])
    with pytest.raises(BadInput, match="durations above 0"):
        throughput(line, ends, [[98, 0], [1, 0]], [1.0, 0.0])
    with pytest.raises(BadInput, match="at least two"):
        throughput(line[:1], ends[:1], ends[:1], [1.0])
    with pytest.raises(BadInput, match="a start on its target"):
        throughput(line, [[0, 0], [0, 0]], [[98, 0], [1, 0]], [1.0, 1.0])
    with pytest.raises(BadInput, match="targets: found shape"):
        throughput(line, [[0, 0]], [[98, 0], [1, 0]], [1.0, 1.0])
    with pytest.raises(BadInput, match="a length above 0"):
        index_of_difficulty(10.0, 0.0)
    with pytest.raises(BadInput, match="two different places"):
        path_accuracy(line, (0, 0), (0, 0), 10.0)
    with pytest.raises(BadInput, match="hysteresis: found -1"):
        path_accuracy(line, (0, 0), (100, 0), 10.0, hysteresis=-1.0)
