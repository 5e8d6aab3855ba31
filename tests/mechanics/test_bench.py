"""The bench of a stick: all directions, throw, output, and the line for the kit list."""

import math

import numpy as np
import pytest

from said import said
from stickwright.codes.bench_notes import BenchNotes
from stickwright.codes.message import message
from stickwright.errors import BadInput
from stickwright.mechanics.bench import bench_stick, to_stick_fields, wear_findings
from stickwright.model.kit import Stick

approx = pytest.approx

HEIGHT, STOP = 0.022, 0.40
PRELOAD, STIFFNESS, FRICTION = 0.008, 0.020, 0.001
FOUR = (0.0, math.pi / 2, math.pi, 3 * math.pi / 2)
UNEQUAL = (1.0, 1.2, 1.0, 0.8)
START_N, FULL_N = 0.009 / 0.022, 0.017 / 0.022


def bench(*, scatter=0.03, seed=1, factors=(1.0, 1.0, 1.0, 1.0), both_ways=True, places=4):
    """Columns of a bench in four directions, out and back, with the moment curve times a factor in each."""
    rng = np.random.default_rng(seed)
    angles = np.linspace(0.0, STOP, places)
    rows = [
        (direction, angle, way, factor * (PRELOAD + way * FRICTION + STIFFNESS * angle) / HEIGHT)
        for direction, factor in zip(FOUR, factors, strict=True)
        for way in ((1, -1) if both_ways else (1,))
        for angle in angles
    ]
    direction, angle, way, force = (np.array(column) for column in zip(*rows, strict=True))
    return {
        "force_n": force * (1 + scatter * rng.standard_normal(len(force))),
        "angle_rad": angle,
        "direction_rad": direction,
        "outward": way > 0,
    }


def benched(columns=None, **change):
    given = {"name": "ash", "height_m": HEIGHT, "max_angle_rad": STOP, **(columns or bench()), **change}
    return bench_stick(given.pop("force_n"), **given)


def about(findings, key):
    return [finding for finding in findings if finding.about == key]


def test_an_even_stick():
    """Four directions alike: start force, full force, travel and friction with intervals, and no remark."""
    result = benched()
    for estimate, true in (
        (result.pooled.start_force_n, START_N),
        (result.pooled.full_force_n, FULL_N),
        (result.friction_force_n, FRICTION / HEIGHT),
        (result.pooled.stiffness_nm_per_rad, STIFFNESS),
    ):
        assert estimate.low < true < estimate.high
        assert estimate.n == 32
    assert result.travel_m.value == approx(HEIGHT * math.sin(STOP), rel=1e-12)
    assert result.travel_m.why == message(BenchNotes.stop_read_once)
    assert not result.unequal
    assert result.findings == ()
    assert result.returns == message(BenchNotes.returns)
    assert result.residual_share.value == 0.0
    assert [line.direction_rad for line in result.directions] == approx(list(FOUR), abs=1e-4)
    assert result.scatter_share == approx(0.03, abs=0.012)


def test_the_readings_travel_with_the_result():
    """A figure can be drawn from the result alone: every reading as taken."""
    columns = bench()
    result = benched(columns)
    assert [reading.force_n for reading in result.readings] == columns["force_n"].tolist()
    assert [reading.number for reading in result.readings] == list(range(1, 33))
    assert all(reading.used and reading.expected_n is None for reading in result.readings)
    assert result.readings[12].direction_rad == approx(math.pi / 2, abs=1e-4)
    assert not result.readings[12].outward


def test_an_unequal_spring_is_told_with_its_directions():
    """Forward a fifth stiffer, back a fifth softer: told in words, and the pooled interval spans the directions."""
    result = benched(bench(factors=UNEQUAL))
    assert result.unequal
    text = said(about(result.findings, "unequal_directions")[0].text)
    assert "back to" in text
    assert text.count("forward") == 2
    assert result.pooled.full_force_n.low < 0.85 * FULL_N
    assert result.pooled.full_force_n.high > 1.15 * FULL_N
    by_direction = {round(math.degrees(line.direction_rad)): line for line in result.directions}
    for degrees, factor in ((0, 1.0), (90, 1.2), (180, 1.0), (270, 0.8)):
        assert by_direction[degrees].full_force_n.low < factor * FULL_N < by_direction[degrees].full_force_n.high


def test_friction_of_unequal_directions_covers():
    """100 benches with 3 % scatter, forward a fifth stiffer, back a fifth softer, each with the same friction: its
    95 % interval holds it in 91 of 100 or more, at most 1.6 times as wide as on an even stick: what lies between the
    directions is not taken for scatter, which would make it several times as wide."""
    truth = FRICTION / HEIGHT
    found = []
    for seed in range(100):
        columns = bench(seed=seed, factors=UNEQUAL)
        factor = np.array([UNEQUAL[FOUR.index(direction)] for direction in columns["direction_rad"]])
        columns["force_n"] += np.where(columns["outward"], 1, -1) * (1 - factor) * truth
        found.append(benched(columns))
    assert all(result.unequal for result in found)
    assert np.mean([r.friction_force_n.low <= truth <= r.friction_force_n.high for r in found]) >= 0.91
    wide = float(np.mean([r.friction_force_n.high - r.friction_force_n.low for r in found]))
    even = [benched(bench(seed=seed)).friction_force_n for seed in range(100)]
    assert wide < 1.6 * float(np.mean([one.high - one.low for one in even]))


def test_even_sticks_are_rarely_called_unequal():
    """Of 100 even sticks benched with 5 % scatter at most 4 are called unequal (1 expected at p < 0.01)."""
    assert sum(benched(bench(scatter=0.05, seed=seed)).unequal for seed in range(100)) <= 4


def test_direction_lines_cover():
    """100 benches with 5 % scatter: the four directions' 95 % intervals hold the full force in 92 of 100 or more
    (they allow for drift and a gauge off square, of which there is none here)."""
    held = sum(
        line.full_force_n.low <= FULL_N <= line.full_force_n.high
        for seed in range(100)
        for line in benched(bench(scatter=0.05, seed=seed)).directions
    )
    assert 0.92 <= held / 400 <= 0.995


@pytest.mark.parametrize("seed", range(12))
@pytest.mark.parametrize("slip", [4, 5])
def test_a_slip_is_found_where_a_direction_has_only_three_readings(seed, slip):
    """All directions share one scatter: the slip is found, told, and marked in the readings. Of three readings of a line any may be the
    wrong one; the other directions say which. (One at the start is taken up by the direction's own line, and is not seen.)"""
    columns = bench(places=3, both_ways=False, seed=seed)
    columns["force_n"][slip] *= 1.7
    result = benched(columns)
    assert [reading.number for reading in result.readings if not reading.used] == [slip + 1]
    assert f"Reading {slip + 1} (" in said(about(result.findings, "reading_out_of_line")[0].text)


def test_too_few_readings_to_compare_directions():
    """One or two readings a direction: pooled only, and it is said."""
    result = bench_stick(
        [0.41, 0.57, 0.74, 0.40, 0.73], name="ash", height_m=HEIGHT, angle_rad=[0.0, 0.1745, 0.3491, 0.0, 0.3491],
        direction_rad=[0.0, 0.0, 0.0, math.pi, math.pi], outward=[True] * 5, max_angle_rad=0.3491,
    )  # fmt: skip
    assert result.directions == ()
    assert about(result.findings, "directions_not_compared")
    assert result.pooled.start_force_n.has_interval


def test_travel_read_with_a_ruler_is_as_good_as_an_angle():
    """Travel is height times sine of the angle: both give the same lever, the stop from the travel as well."""
    columns = bench()
    by_angle = benched(columns)
    travel = HEIGHT * np.sin(columns.pop("angle_rad"))
    by_travel = benched(columns, travel_m=travel, max_angle_rad=None, max_travel_m=HEIGHT * math.sin(STOP))
    assert by_travel.pooled.start_force_n.value == approx(by_angle.pooled.start_force_n.value, rel=1e-9)
    assert by_travel.max_angle_rad == approx(STOP, rel=1e-12)


def test_output_in_place_of_the_angle_is_asked_about():
    """Without angle or travel the output stands for it; that is an assumption, and it is said."""
    columns = bench()
    output = columns.pop("angle_rad") / STOP
    result = benched(columns, output_share=output)
    assert result.pooled.full_force_n.value == approx(benched().pooled.full_force_n.value, rel=1e-9)
    query = about(result.findings, "output_for_angle")[0]
    assert query.level == "query"
    assert query.text == message(BenchNotes.output_for_angle)
    assert result.output is None


def test_output_full_at_half_the_throw():
    """Output begins at 6 % of the throw and is full at 60 %: both are found, with intervals, and said."""
    columns = bench(places=12)
    share = columns["angle_rad"] / STOP
    noise = 0.01 * np.random.default_rng(6).standard_normal(len(share))
    output = np.clip((share - 0.06) / (0.60 - 0.06) + noise, 0.0, 1.0)
    result = benched(columns, output_share=output)
    assert result.output.full_output_share.low < 0.60 < result.output.full_output_share.high
    assert result.output.dead_share.low < 0.06 < result.output.dead_share.high
    assert "full at 60% of travel" in said(about(result.findings, "full_early")[0].text)
    assert "first 6% of travel" in said(about(result.findings, "dead_centre")[0].text)
    assert to_stick_fields(result)["full_output_share"] == approx(0.60, abs=0.01)


def test_output_that_never_gets_full():
    """At the stop the output is 80 %: said, and the kit list gets 1."""
    columns = bench()
    result = benched(columns, output_share=0.8 * columns["angle_rad"] / STOP)
    assert "only about 80%" in said(about(result.findings, "output_short_of_full")[0].text)
    assert to_stick_fields(result)["full_output_share"] == 1.0


def test_output_read_at_the_ends_only():
    """Output read at centre and stop only does not tell where it gets full."""
    columns = bench(places=2)
    result = benched(columns, output_share=np.round(columns["angle_rad"] / STOP))
    assert result.output is None
    assert about(result.findings, "output_not_known")[0].text == message(BenchNotes.output_unknown)


def test_the_kit_list_takes_the_fields():
    """The fields make a stick of the kit, intervals and date with them."""
    result = benched(benched="2031-04-02")
    stick = Stick.model_validate(to_stick_fields(result))
    assert stick.name == "ash"
    assert stick.contact_height_m == HEIGHT
    assert stick.start_force_n == result.pooled.start_force_n.value
    assert stick.full_force_interval_n == (result.pooled.full_force_n.low, result.pooled.full_force_n.high)
    assert stick.friction_force_n == result.friction_force_n.value
    assert stick.benched == "2031-04-02"


def test_friction_not_read_is_not_in_the_kit_list():
    """Outward readings only: no friction in the kit list rather than a friction of nothing."""
    fields = to_stick_fields(benched(bench(both_ways=False)))
    assert "friction_force_n" not in fields
    assert "friction_force_interval_n" not in fields
    assert Stick.model_validate(fields).friction_force_n is None


def test_a_worn_spring():
    """Start force down by more than a fifth since the last bench (common practice): retire or tune again."""
    now = benched()
    assert wear_findings(now, START_N, now.height_m) == ()
    assert (
        wear_findings(now, START_N / 2, 2 * now.height_m) == ()
    )  # half the force at twice the height is the same spring
    text = said(wear_findings(now, START_N / 0.7, now.height_m)[0].text)
    assert "fallen by 3" in text
    assert "retire the stick, or tune again" in text


@pytest.mark.parametrize(
    "change, parts",
    [
        ({"angle_rad": None}, ["no position", "an angle or a travel with each force"]),
        (
            {"angle_rad": None, "travel_m": [0.0, 0.03, 0.004, 0.002]},
            ["reading 2, travel_m", "30 mm", "22 mm", "pivot"],
        ),
        ({"angle_rad": None, "travel_m": [0.0, 4.0, 0.004, 0.002]}, ["reading 2, travel_m", "4 m", "travel_mm"]),
        ({"max_angle_rad": None, "max_travel_m": 0.03}, ["max_travel_m", "30 mm", "22 mm"]),
        ({"output_share": [0.0, 50.0, 1.0, 0.2]}, ["reading 2, output_share", "50", "1 is full"]),
        ({"output_share": [0.0, 1.0]}, ["output_share", "2 numbers", "4, one for each reading"]),
        ({"direction_rad": [0.0, 90.0, 180.0, 270.0]}, ["reading 2, direction_rad", "90 rad", "direction_deg"]),
        ({"direction_rad": [0.0, 1.0]}, ["direction_rad", "2 numbers", "4"]),
        ({"height_m": 22.0}, ["height_m", "22 m", "height_mm"]),
        ({"angle_rad": [0.0, 0.1, 0.2]}, ["angle_rad", "3 numbers", "4, one for each reading"]),
    ],
)
def test_bench_readings_that_cannot_be_are_refused(change, parts):
    """Every wrong reading is named by its number, what stands there, and what was expected."""
    given = {"name": "ash", "height_m": HEIGHT, "angle_rad": [0.0, 0.1, 0.2, 0.3], "max_angle_rad": STOP}
    with pytest.raises(BadInput) as refused:
        bench_stick([0.4, 0.5, 0.6, 0.7], **{**given, **change})
    told = str(refused.value).replace("\N{NO-BREAK SPACE}", " ")
    assert all(part in told for part in parts), told


def test_directions_missing_in_part_are_pooled():
    """A direction not written, as NaN or None, does not stop the bench."""
    given = {"name": "ash", "height_m": HEIGHT, "angle_rad": [0.0, 0.1, 0.2, 0.3], "outward": True}
    result = bench_stick([0.41, 0.50, 0.59, 0.68], direction_rad=[0.0, None, math.nan, 0.0], **given)
    assert [reading.direction_rad for reading in result.readings] == [0.0, None, None, 0.0]
    assert result.directions == ()
