"""The guided tasks as data, and what is drawn of them."""

import json
import math
from itertools import pairwise

import numpy as np
import pytest

import said
from stickwright.catalogue import say
from stickwright.codes.message import message
from stickwright.codes.recording_faults import RecordingFaults
from stickwright.errors import BadInput
from stickwright.measure.pictures import picture, picture_of
from stickwright.measure.shapes import Arrow, Circle, Dot, Path, Ring, Text, plain_picture
from stickwright.measure.steps import (
    CUE_WORDS,
    RECORDED_COLUMNS,
    STOP,
    cue_code,
    cues_at,
    trace_words,
    unknown_cues,
)
from stickwright.measure.targets import TargetReach, reach_towards
from stickwright.measure.task import PHASES, Start, Tick, advance, begin
from stickwright.measure.tasks import (
    TASKS,
    aim_task,
    follow_task,
    guided_task,
    hold_task,
    press_task,
    push_task,
    rest_task,
    rim_task,
)  # fmt: skip
from stickwright.model.recording import CUE_CODES, Recording
from stickwright.trace.pointing import index_of_difficulty
from stickwright.trace.sensing import CUES

WEAK_LEFT = TargetReach((0.0, math.pi / 2, math.pi, 3 * math.pi / 2), (0.9, 0.8, 0.3, 0.7))
EVERY = [guided_task(name, seed=3) for name in TASKS]


def named(task):
    return task.name


@pytest.mark.parametrize("task", EVERY, ids=named)
def test_every_task_says_what_it_is_and_how_to_stop(task):
    """Words for the player are short and always end with stopping; the practitioner hears the purpose and what to watch."""
    assert say(task.for_player).endswith(say(STOP))
    assert all(0 < len(say(words).split()) <= 12 for step in task.steps for words in (step.words, step.rest_words))
    assert len(say(task.for_practitioner.purpose)) > 40
    assert len(say(task.for_practitioner.watch)) > 40
    assert 0 < task.expected_s <= task.longest_s <= 300


@pytest.mark.parametrize("task", EVERY, ids=named)
def test_kept_settings_make_the_same_task(task):
    """What is kept with a recording, through JSON and back, makes the task again to the last phase and place."""
    again = guided_task(**json.loads(json.dumps(task.asked)))
    assert repr(again) == repr(task)


def test_settings_with_a_reach_make_the_same_task():
    """The player's own reach is among what is kept."""
    for task in (follow_task(3, reach=WEAK_LEFT), aim_task(3, reach=WEAK_LEFT), hold_task(reach=WEAK_LEFT)):
        assert repr(guided_task(**json.loads(json.dumps(task.asked)))) == repr(task)


def test_an_unknown_task_or_setting_is_refused():
    """The nearest name is offered; a setting that does not belong to the task is named with those that do."""
    with pytest.raises(BadInput, match=r"found 'puhs'.*push"):
        guided_task("puhs", seed=1)
    with pytest.raises(BadInput, match="task rim: found 'levels', expected one of laps or lasts_s"):
        guided_task("rim", seed=1, levels=[1.0])
    with pytest.raises(BadInput) as refused:
        push_task(1, directions=5, levels=())
    assert [said.place(each) for each in refused.value.problems] == ["directions", "levels"]


def test_a_cue_word_keeps_its_number():
    """The numbers in recordings that are kept: none may ever change. A new word is added to this list with the next number."""
    assert dict(CUE_CODES) == {
        "": 0, "rest": 1, "still": 2, "rim": 3, "push": 4, "hold": 5, "aim": 6, "follow": 7, "play": 8, "press": 9,
    }  # fmt: skip
    assert [cue_code(word) for word in CUE_WORDS] == list(range(10))


def test_an_unknown_cue_is_told():
    """A number that no cue word has is read as nothing asked, and that is said with how often it stands there."""
    assert trace_words([4.0, 10.0]).tolist() == ["push", ""]
    assert unknown_cues([4.0, 9.0, math.nan]) == {}
    unknown = unknown_cues([10.0, 4.0, 10.0, 12.0])
    assert unknown == {10: 2, 12: 1}
    cues = tuple(message(RecordingFaults.cue, cue=cue, samples=many) for cue, many in unknown.items())
    told = say(message(RecordingFaults.unknown_cues, cues=cues))
    assert told.startswith("cue 10 (2 samples) and cue 12 (1 sample) are not known to this version of stickwright")


def test_cue_words_are_those_that_stick_traces_know():
    """The words of a stick trace are those of a task but 'press', which is nothing asked of the stick."""
    assert (*CUES, "press") == CUE_WORDS
    assert {step.word for task in EVERY for step in task.steps} <= set(CUE_WORDS)
    assert trace_words([cue_code("press"), math.nan, -1.0, 99.0]).tolist() == ["", "", "", ""]
    assert Recording.__doc__ is not None
    for word in CUES[1:]:
        assert f"'{word}'" in Recording.__doc__
    assert len(RECORDED_COLUMNS) == 11


def test_pushes_are_shuffled_by_the_seed_and_the_first_comes_again_last():
    """Eight directions three times, each round complete, in an order that the seed decides, and the first once more at the end."""
    task = push_task(7)
    keys = [step.key for step in task.steps]
    assert len(keys) == 25
    for k in range(3):
        assert len(set(keys[8 * k : 8 * k + 8])) == 8
    assert keys[-1] == keys[0]
    assert keys[:8] != keys[8:16]
    assert [step.key for step in push_task(7).steps] == keys
    assert [step.key for step in push_task(8).steps] != keys
    assert all(step.rest_s == 5.0 for step in task.steps)
    assert [step.key for step in push_task(1, only_deg=(225.0,)).steps] == ["back-left"] * 3


def test_levels_ask_to_hold_a_share_of_the_own_reach():
    """A level of 0.5 to the left of somebody who reaches 0.3 there asks for 0.15, as 'hold'; level 1 is a push along the direction."""
    task = push_task(2, directions=4, levels=(0.5, 1.0), rounds=1, reach=WEAK_LEFT)
    held = next(step for step in task.steps if step.key == "left" and step.word == "hold")
    assert (held.x, held.y) == pytest.approx((-0.15, 0.0), abs=1e-12)
    pushed = next(step for step in task.steps if step.key == "left" and step.word == "push")
    assert (pushed.x, pushed.y) == (-1.0, 0.0)


@pytest.mark.parametrize("direction_deg, reached", [(0.0, 0.9), (90.0, 0.8), (180.0, 0.3), (270.0, 0.7), (-90.0, 0.7)])
@pytest.mark.parametrize("level, share", [(0.2, 0.2), (0.5, 0.5), (1.0, 1.0), (1.5, 1.0)])
def test_a_hold_asks_for_a_share_of_the_own_reach(direction_deg, reached, level, share):
    """By hand: the ring lies in the direction named, at the level times what the player reaches there; never beyond the reach.
    Nobody's reach is known: a share of full output."""
    angle = math.radians(direction_deg)
    for reach, far in ((WEAK_LEFT, share * reached), (None, share)):
        (step,) = hold_task(direction_deg=direction_deg, level=level, reach=reach).steps
        assert (step.x, step.y) == pytest.approx((far * math.cos(angle), far * math.sin(angle)), abs=1e-12)


def test_aimed_circles_have_the_wanted_bits():
    """Each circle's movements have the wanted index of difficulty, from target to target."""
    task = aim_task(5, bits=(1.6, 2.3), width=0.3)
    for number in (1, 2):
        places = [(s.x, s.y) for s in task.steps if s.round == number]
        bits = {round(index_of_difficulty(math.dist(a, b), 0.3), 9) for a, b in pairwise(places)}
        assert len(bits) == 1
        assert bits <= {1.6, 2.3}


def test_circles_shrink_into_reach_with_their_bits_kept():
    """For a player who reaches 0.3 to the left circle and targets shrink together: all within reach, bits unchanged."""
    task = aim_task(5, bits=(2.3,), width=0.3, reach=WEAK_LEFT)
    places = np.array([(s.x, s.y) for s in task.steps])
    assert (np.hypot(*places.T) <= 0.9 * reach_towards(WEAK_LEFT, np.arctan2(*places.T[::-1])) + 1e-9).all()
    width = task.steps[0].width
    assert width < 0.3
    assert index_of_difficulty(math.dist(places[0], places[1]), width) == pytest.approx(2.3, abs=1e-9)


def test_a_moving_target_is_written_beside_every_sample():
    """While following, the cue's place is the path at that moment; in the rest before it nothing is asked."""
    task = follow_task(9)
    rows = cues_at(task, 0, False, [0.0, 1.0, 2.5])
    np.testing.assert_array_equal(rows[:, :2], task.path.at([0.0, 1.0, 2.5]))
    np.testing.assert_array_equal(rows[:, 3], cue_code("follow"))
    before = cues_at(task, 0, True, [0.5])
    assert before[0, 3] == cue_code("")
    assert np.isnan(before[0, :3]).all()


def test_steps_are_as_long_as_the_visit_allows():
    """By hand: rest 3 x 3.5 + 2 x 3 s; four pushes once with the first again 5 x 7 s; two free rounds and sixteen beats with rests."""
    assert rest_task().longest_s == pytest.approx(16.5, abs=1e-9)
    assert push_task(1, directions=4, rounds=1).longest_s == pytest.approx(35.0, abs=1e-9)
    assert press_task().longest_s == pytest.approx(3 * 10 + 2 * 10 + 16, abs=1e-9)
    assert rim_task().steps[0].laps == -rim_task().steps[1].laps == -2


# What is drawn.


def shown(task, times=(0.0, 0.7, 1.9)):
    for step in range(len(task.steps)):
        for phase in PHASES:
            for into_s in times:
                for reduced in (False, True):
                    yield picture(task, step, phase, into_s, left_s=2.0, player_xy=(0.1, 0.2), reduced_motion=reduced)


@pytest.mark.parametrize("task", EVERY, ids=named)
def test_every_picture_fits_says_itself_and_how_to_stop(task):
    """At every step, state and time: shapes lie in the field, the words on stopping are among them, and the text alternative says
    what is asked."""
    for each in shown(task):
        assert [s.words for s in each.shapes if isinstance(s, Text)].count(STOP) == 1
        assert say(each.words).endswith(say(STOP))
        assert len(say(each.words)) > len(say(STOP)) + 3
        for shape in each.shapes:
            radius = getattr(shape, "radius", 0.0)
            if not isinstance(shape, Text):
                places = getattr(shape, "points", None) or ((shape.x, shape.y),)
                assert all(math.hypot(x, y) + radius <= 1.3 for x, y in places)
        assert json.loads(json.dumps(plain_picture(each, say)))["words"] == say(each.words)


@pytest.mark.parametrize("task", EVERY, ids=named)
def test_with_reduced_motion_only_what_is_followed_moves(task):
    """Between two moments of one step nothing moves by itself but the target that is to be followed, and the count of a beat."""
    for step in range(len(task.steps)):
        early, late = (picture(task, step, "asking", t, left_s=9.0, reduced_motion=True) for t in (0.1, 0.4))
        if task.steps[step].word != "follow":
            assert early == late


def test_nothing_flashes():
    """Over a whole beat the closing ring moves evenly by a frame at a time, and shapes neither come nor go."""
    task = press_task(beat_s=1.0)
    frames = [picture(task, 2, "asking", k / 30, left_s=9.0).shapes for k in range(30)]
    assert len({tuple(type(each) for each in shapes) for shapes in frames}) == 1
    radii = [next(each.radius for each in shapes if isinstance(each, Ring)) for shapes in frames]
    assert np.abs(np.diff(radii)).max() < 0.03


@pytest.mark.parametrize(("left_s", "shown"), [(2.4, "3"), (3.0, "3"), (0.2, "1")])
def test_the_seconds_that_are_left_count_down_to_one(left_s: float, shown: str):
    """A second that has begun still counts: nobody starts at 0; with reduced motion no number changes."""
    texts = [
        each.words for each in picture(aim_task(5), 0, "resting", 0.0, left_s=left_s).shapes if isinstance(each, Text)
    ]
    assert shown in texts
    calm = picture(aim_task(5), 0, "resting", 0.0, left_s=left_s, reduced_motion=True).shapes
    assert shown not in [each.words for each in calm if isinstance(each, Text)]


def test_the_asked_target_is_the_filled_one():
    """Of all circles the one asked is filled, at its place and size, and the player's dot lies on top of it."""
    task = aim_task(5)
    drawn = picture(task, 3, "asking", 0.0, player_xy=(0.3, 0.4))
    (filled,) = [each for each in drawn.shapes if isinstance(each, Circle)]
    assert (filled.x, filled.y, filled.radius) == (task.steps[3].x, task.steps[3].y, task.steps[3].width / 2)
    assert sum(isinstance(each, Ring) and each.role == "quiet" for each in drawn.shapes) == 8
    order = [type(each) for each in drawn.shapes]
    assert order.index(Dot) > order.index(Circle)


def test_a_push_shows_its_arrow_already_while_resting():
    """In the rest the next direction is shown, marked as next, so that the player can make ready."""
    state, _ = advance(begin(push_task(5)), Start(0.0))
    arrows = [each for each in picture_of(state).shapes if isinstance(each, Arrow)]
    assert [each.role for each in arrows] == ["next"]
    state, _ = advance(state, Tick(5.0))
    (arrow,) = [each for each in picture_of(state).shapes if isinstance(each, Arrow)]
    assert math.atan2(arrow.to_y, arrow.to_x) == pytest.approx(math.atan2(state.asked.y, state.asked.x), abs=1e-12)
    assert arrow.role == "asked"


# Where it is drawn: x is to the right on the page and y is up, which is forward; the page flips y once.

WAYS = {"right": (1, 0), "forward": (0, 1), "left": (-1, 0), "back": (0, -1)}


def asked_shapes(task, step, phase="asking", **more):
    return picture(task, step, phase, 0.0, left_s=9.0, **more).shapes


@pytest.mark.parametrize("way", WAYS)
def test_a_push_and_a_hold_point_their_own_way(way):
    """The arrow begins in the middle and points right for right and up for forward, asked for or next; the ring of a hold lies where its
    share of full output is."""
    x, y = WAYS[way]
    degrees = math.degrees(math.atan2(y, x))
    task = push_task(1, only_deg=(degrees,))
    for phase, role in (("asking", "asked"), ("resting", "next")):
        (arrow,) = [each for each in asked_shapes(task, 0, phase) if isinstance(each, Arrow)]
        assert (arrow.x, arrow.y, arrow.role) == (0.0, 0.0, role)
        assert math.hypot(arrow.to_x, arrow.to_y) > 0.5
        assert (round(arrow.to_x, 9), round(arrow.to_y, 9)) == pytest.approx((0.85 * x, 0.85 * y), abs=1e-9)
    (ring,) = [
        e
        for e in asked_shapes(hold_task(direction_deg=degrees, level=0.6), 0)
        if isinstance(e, Ring) and e.role == "asked"
    ]
    assert (ring.x, ring.y) == pytest.approx((0.6 * x, 0.6 * y), abs=1e-9)
    (line,) = [e for e in asked_shapes(hold_task(direction_deg=degrees, level=0.6), 0) if isinstance(e, Path)]
    assert np.allclose(line.points, [(0.0, 0.0), (0.6 * x, 0.6 * y)])


def test_every_target_of_a_round_is_drawn_at_its_place():
    """Filled and empty circles together are the round's targets, each where the task has it and as large; in the rest the next one is a
    ring at its place."""
    task = aim_task(5)
    for place, step in enumerate(task.steps[:9]):
        drawn = asked_shapes(task, place)
        seen = {
            (each.x, each.y, each.radius)
            for each in drawn
            if isinstance(each, Circle) or (isinstance(each, Ring) and each.role == "quiet")
        }
        assert seen == {(one.x, one.y, one.width / 2) for one in task.steps if one.round == step.round}
        rings = [
            each for each in asked_shapes(task, place, "resting") if isinstance(each, Ring) and each.role == "next"
        ]
        assert [(ring.x, ring.y, ring.radius) for ring in rings] == [(step.x, step.y, step.width / 2)]


@pytest.mark.parametrize("into_s", [0.0, 1.3, 4.2])
def test_what_is_followed_is_drawn_on_its_path(into_s):
    """The ring is where the path is at that moment, and before the start where it begins."""
    task = follow_task(9)
    (ring,) = [e for e in picture(task, 0, "asking", into_s).shapes if isinstance(e, Ring) and e.role == "asked"]
    assert (ring.x, ring.y) == pytest.approx(task.path.at(into_s)[0])
    (ring,) = [e for e in asked_shapes(task, 0, "resting") if isinstance(e, Ring) and e.role == "next"]
    assert (ring.x, ring.y) == pytest.approx(task.path.at(0.0)[0])


def test_the_player_is_where_the_stick_is_and_laps_go_the_way_asked():
    """The dot lies at the cursor's own place; the arrow round the edge begins at the top and turns anticlockwise for laps with a plus,
    by the sign of the area it sweeps."""
    for place in ((0.3, -0.4), (-0.7, 0.1)):
        (dot,) = [e for e in asked_shapes(push_task(1), 0, player_xy=place) if isinstance(e, Dot)]
        assert (dot.x, dot.y) == place
    task = rim_task()
    for number, step in enumerate(task.steps[:2]):
        (round_it,) = [e for e in asked_shapes(task, number) if isinstance(e, Path)]
        swept = sum(a[0] * b[1] - a[1] * b[0] for a, b in pairwise(round_it.points))
        assert round_it.arrow
        assert math.copysign(1.0, swept) == math.copysign(1.0, step.laps)
        assert round_it.points[0][1] > 0.8
        assert all(math.hypot(*point) == pytest.approx(0.85) for point in round_it.points)


def test_the_ring_closes_on_the_disc_with_the_beat():
    """By hand: at the beat it is half a field wider than the disc of 0.35, half way to the next beat a quarter, and just before it is
    down to the disc; with reduced motion the beats are counted one to four."""
    task = press_task(beat_s=1.0)
    for into_s, radius in ((0.0, 0.85), (0.5, 0.60), (0.999, 0.3505), (3.25, 0.725)):
        (ring,) = [e for e in picture(task, 2, "asking", into_s).shapes if isinstance(e, Ring)]
        assert (ring.x, ring.y, ring.radius) == pytest.approx((0.0, 0.0, radius), abs=1e-9)
    told = [
        next(
            e.words
            for e in picture(task, 2, "asking", k + 0.5, reduced_motion=True).shapes
            if isinstance(e, Text) and isinstance(e.words, str)
        )
        for k in range(5)
    ]
    assert told == ["1", "2", "3", "4", "1"]
    quick = press_task(beat_s=0.4)
    for into_s, radius in ((0.4, 0.85), (0.6, 0.60), (1.1, 0.475)):
        (ring,) = [e for e in picture(quick, 2, "asking", into_s).shapes if isinstance(e, Ring)]
        assert ring.radius == pytest.approx(radius, abs=1e-9)


@pytest.mark.parametrize("phase", ["ready", "asking", "resting", "paused", "stopped", "done"])
def test_what_is_asked_stands_above_the_rim_and_how_to_stop_below_it(phase):
    """Neither on the other, nor on what is drawn within the rim, which has the radius 1."""
    asked, stop = [
        e for e in picture(press_task(beat_s=1.0), 2, phase, 0.1).shapes if isinstance(e, Text) and abs(e.y) > 1
    ]
    assert asked.y > 1.0
    assert stop.y < -1.0
    assert stop.words == STOP
