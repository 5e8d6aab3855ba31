"""What is doubtful of a room is told with line, thing and what to do; what merely differs is asked about."""

from __future__ import annotations

import pytest

from said import said
from stickwright.errors import Problem
from stickwright.files.room_warnings import room_warnings
from stickwright.files.toml_lines import parse_toml

PLAYER = """code = "K1"
[[site]]
name = "left thumb"
part = "thumb"
press_rate_per_s = 1
[[site]]
name = "chin"
part = "chin"
action = "move"
[[site]]
name = "foot"
part = "foot"
side = "left"
press_rate_per_s = 1
"""
TUBE = '[[tube]]\nname = "back tube"\nfrom_mm = [-190, -70, 280]\nto_mm = [-190, -90, 560]\ndiameter_mm = 22\n'
EDGE = '[[edge]]\nname = "table edge"\nfrom_mm = [-500, 700, 240]\nto_mm = [500, 700, 240]\nthickness_mm = 25\n'
TRAY = '[[surface]]\nname = "tray"\ncorner_mm = [-300, 200, 250]\nsize_mm = [600, 400]\n'
FLOOR = '[[surface]]\nname = "floor"\nkind = "floor"\ncorner_mm = [-2500, -1000, -500]\nsize_mm = [3000, 3000]\n'
FACE = '[[keep_out]]\nname = "face"\nkind = "face"\nlow_mm = [-90, 40, 720]\nhigh_mm = [90, 210, 930]\n'
BOLT = '[[landmark]]\nname = "bolt"\nat_mm = [-260, 100, 200]\n'
CHIN = '[[place]]\nsite = "chin"\nat_mm = [0, 190, 690]\n'
THUMB = '[[place]]\nsite = "left thumb"\nat_mm = [-210, 400, 270]\n'
FOOT = '[[place]]\nsite = "foot"\nat_mm = [-110, 640, -350]\n'
PLACES = CHIN + THUMB + FOOT
WHOLE = TUBE + EDGE + TRAY + FLOOR + FACE + BOLT + PLACES


def told(text, player=PLAYER):
    """Sentences of what is noticed: '!' refused, '?' asked."""
    noticed = room_warnings(parse_toml(text, "room.toml"), parse_toml(player, "player.toml") if player else None)
    assert all(isinstance(one, Problem) or one.level == "query" for one in noticed)
    return [f"! {said(one.sentence)}" if isinstance(one, Problem) else f"? {said(one.text)}" for one in noticed]


def tape(landmark, mm):
    return f'[[place.tape]]\nlandmark = "{landmark}"\ndistance_mm = {mm}\n'


def test_a_whole_room_raises_no_warning():
    """Tube, edge, tray, floor, face, landmark and a place for each site; a foot lower than the tray is where feet are."""
    assert told(WHOLE) == []
    assert (
        told("tilt_from_deg = 5\ntilt_to_deg = 20\ntilt_pivot_mm = [0, 200, -150]\nseat_to_chin_mm = 690\n" + WHOLE)
        == []
    )
    assert told(WHOLE, player="") == []


@pytest.mark.parametrize("kind", ["tube", "edge", "surface", "keep_out", "landmark"])
def test_each_thing_has_its_own_name(kind):
    """Two tubes, edges, surfaces, keep-outs or landmarks of one name are refused, letter case aside."""
    (thing,) = [one for one in (TUBE, EDGE, TRAY, FACE, BOLT) if one.startswith(f"[[{kind}]]")]
    name = thing.split('"')[1]
    shown = {"keep_out": "keep-out zone"}.get(kind, kind)
    (sentence,) = told(WHOLE + thing.replace(name, name.upper()))
    assert (
        f'! room.toml, line 38, {kind} "{name.upper()}", name: found a second {shown} called "{name.upper()}"'
        in sentence
    )
    assert f"expected a different name for each {shown}. Choose another name, or delete one of the two." in sentence


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (
            WHOLE.replace('site = "chin"', 'site = "chim"') + CHIN,
            "! room.toml, line 29, place \"chim\", site: found \"chim\", expected the name of a site in player.toml. Did you "
            "mean 'chin'?",
        ),
        (
            WHOLE + CHIN,
            '! room.toml, line 38, place "chin", site: found a second place of "chin" (the first: line 28), expected one '
            "place for each site. Delete one, or give all tape distances of this site in one place.",
        ),
        (
            WHOLE.replace("at_mm = [0, 190, 690]\n", ""),
            '? room.toml, line 28, place "chin": neither a point nor tape distances, so this says nothing. '
            "Measure right, forward and up from the point where the middle of the back meets the seat (at_mm = "
            "[...]), or measure four tape distances to landmarks.",
        ),
        (
            TUBE + FACE + BOLT + THUMB + FOOT + '[[place]]\nsite = "chin"\n' + tape("bolt", 500),
            'line 20, place "chin": tape distances to 1 landmark cannot place "chin". Three landmarks '
            "leave two answers; a fourth decides.",
        ),
        (
            WHOLE + tape("bolt", 300),
            # the foot to the bolt, by hand: sqrt(150^2 + 540^2 + 550^2) = 785.2
            '? room.toml, line 39, place "foot", tape "bolt", distance_mm: 300 to "bolt", but the two points '
            "given are 785 mm apart. One of these is wrong; the point is used.",
        ),
        (
            WHOLE + tape("bold", 300),
            "tape \"bold\", landmark: found \"bold\", expected the name of a landmark in room.toml. Did you mean 'bolt'?",
        ),
        (
            WHOLE + tape("bolt", 785) + tape("bolt", 786),
            'tape "bolt", landmark: "bolt" a second time for "foot" (the first: line 37). Was another landmark meant?',
        ),
        (
            WHOLE.replace("to_mm = [-190, -90, 560]", "to_mm = [-190, -70, 280]"),
            '! room.toml, line 4, tube "back tube", to_mm: found [-190, -70, 280], where the tube also begins, '
            "expected the other end of the tube. Measure both ends of the free length.",
        ),
        (WHOLE.replace("to_mm = [500,", "to_mm = [-500,"), 'edge "table edge", to_mm: found [-500, 700, 240], where the edge'),
        (
            WHOLE.replace("low_mm = [-90, 40, 720]", "low_mm = [90.5, 40, 940]"),
            '! room.toml, line 23, keep_out "face", low_mm: found [90.5, 40, 940] beyond high_mm = [90, 210, '
            "930] in x and z, expected the smallest x, y and z of the box here, and the largest in high. Swap "
            "the two values of x and z.",
        ),
        (
            WHOLE.replace("high_mm = [90, 210, 930]", "high_mm = [90, 40, 930]"),
            'keep_out "face", high_mm: found [90, 40, 930], a box without thickness, expected more than low_mm in x, y and z.',
        ),
        (
            WHOLE.replace("size_mm = [600, 400]", "size_mm = [600, 0]"),
            'surface "tray", size_mm: found [600, 0], expected a width and a depth above zero.',
        ),
        (
            "tilt_from_deg = 30\ntilt_to_deg = 10\ntilt_pivot_mm = [0, 0, 0]\n" + WHOLE,
            "! room.toml, line 1, tilt_from_deg: found tilt_from_deg = 30 with tilt_to_deg = 10, expected the "
            "least tilt used in play here, and the most in tilt_to. Swap the two, or give both.",
        ),
        ("tilt_from_deg = 30\n" + WHOLE, "found tilt_from_deg = 30 with no tilt_to, which counts as level"),
        (
            "tilt_from_deg = 5\ntilt_to_deg = 20\n" + WHOLE,
            "? room.toml, line 2, tilt_to_deg: the seat tilts, but tilt_pivot_mm is not recorded, so how far a "
            "place moves away from fixed points is not known. Measure right, forward and up to the axle under "
            "the seat.",
        ),
        (
            WHOLE.replace("[-210, 400, 270]", "[-210, 400, 225]"),
            '? room.toml, line 33, place "left thumb", at_mm: "left thumb" would be inside "tray", 25 mm below '
            "its top. Is one of the heights wrong?",
        ),
        (
            WHOLE.replace("[-210, 400, 270]", "[-210, 400, 100]"),
            '"left thumb" would be under "tray", 150 mm below its top. Is that right while playing?',
        ),
        (
            WHOLE.replace("[-110, 640, -350]", "[-110, 640, -550]"),
            '! room.toml, line 36, place "foot", at_mm: found "foot" 50 mm below the floor "floor", expected a '
            "point above the floor. Heights are measured up from the seat, so points below the seat are "
            "negative. Check the corner of the floor too.",
        ),
        (
            WHOLE.replace("at_mm = [0, 190, 690]", "at_mm = [0, 190, 690]\nslope_deg = 30"),
            'line 31, place "chin", slope_deg: 30°, but player.toml gives 10° (movement_tilt_deg). Which '
            "is right?",
        ),
        (
            WHOLE.replace("[-210, 400, 270]", "[210, 400, 270]"),
            '? room.toml, line 33, place "left thumb", at_mm (left, but x = 210): on the other side than the '
            "name says. x is positive to the player's right. Is a minus sign missing, or were two swapped?",
        ),
        (
            WHOLE + '[[tube]]\nname = "right armrest tube"\nfrom_mm = [-260, 100, 200]\nto_mm = [-260, 390, 200]\n',
            'tube "right armrest tube", from_mm (right, but x = -260): on the other side than the name says.',
        ),
        (
            WHOLE.replace("[-500, 700, 240]", "[-500, 2400, 240]"),
            '? room.toml, line 8, edge "table edge", from_mm: more than 2 m from the seat reference point, so '
            "out of reach. Check the decimal point, and measure from the point where the middle of the back "
            "meets the seat.",
        ),
    ],
)  # fmt: skip
def test_one_warning_is_one_sentence(text, words):
    """Each slip by itself is told once, at its line."""
    player = PLAYER.replace('action = "move"', 'action = "move"\nmovement_tilt_deg = 10')
    (sentence,) = told(text, player)
    assert words in sentence, sentence


@pytest.mark.parametrize(
    ("thing", "typed", "words"),
    [
        # 280 and 560 mm read off the other side of the tape: 11.0 and 22.0 inches
        (
            TUBE, TUBE.replace("-190, -70, 280", "-7.5, -2.8, 11").replace("-190, -90, 560", "-7.5, -3.5, 22"),
            "all of it is within 22 mm of the seat, but half of the other things in the room are beyond 665 mm. "
            "Were inches typed as millimetres? If so, name the key from_inch, and change its other lengths too. "
            "Nothing was converted.",
        ),
        (
            TUBE, TUBE.replace("-190, -70, 280", "-19, -7, 28").replace("-190, -90, 560", "-19, -9, 56"),
            "Were centimetres typed as millimetres? If so, name the key from_cm, and change its other lengths "
            "too.",
        ),
        (EDGE, EDGE.replace("-500, 700, 240", "-20, 28, 9.5").replace("500, 700, 240", "20, 28, 9.5"), "name the key from_inch"),
        (CHIN, CHIN.replace("0, 190, 690", "0, 7.5, 27"), 'place "chin", at_mm: all of it is within 27 mm of the seat'),
    ],
)  # fmt: skip
def test_a_tape_read_in_another_unit(thing, typed, words):
    """All distances of a thing 0.04 (inches) or 0.1 (centimetres) times what its neighbours have: asked, never converted."""
    assert told(TUBE + EDGE + TRAY + FACE + PLACES) == []
    sentences = told((TUBE + EDGE + TRAY + FACE + PLACES).replace(thing, typed))
    (sentence,) = [one for one in sentences if "Nothing was converted" in one]
    assert words in sentence, sentence


@pytest.mark.parametrize(
    ("line", "words"),
    [
        # ANSUR II medians (Gordon et al. 2014, from the public data file): elbow rest height 246 and 233 mm, eye height sitting
        # 804 and 748, popliteal height 430 and 387; half of the smaller, one and a half times the larger, by hand
        (
            "seat_to_armrest_mm = 24",
            "? room.toml, line 1, seat_to_armrest_mm: 24 is outside 116 to 369 mm, half to one and a half times "
            "the published elbow rest height (246 mm men, 233 mm women). Were centimetres typed as millimetres? "
            "Bodies and chairs differ: if it was measured, leave it unchanged.",
        ),
        ("seat_to_eyes_mm = 30", "30 is outside 374 to 1,206 mm, half to one and a half times the published eye height, sitting (804 "
            "mm men, 748 mm women)."),
        ("seat_to_eyes_mm = 30", "Were inches typed as millimetres?"),
        ("seat_to_eyes_mm = 360", "Is it a typing error?"),
        ("seat_to_floor_mm = 700", "700 is outside 194 to 645 mm, half to one and a half times the published popliteal height (430 mm "
            "men, 387 mm women)."),
        ("table_height_mm = 1100", "1100 is outside 310 to 1,014 mm, half to one and a half times the published popliteal height plus "
            "elbow rest height (676 mm men, 620 mm women)."),
        ("seat_to_chin_mm = 800\nseat_to_eyes_mm = 790", "line 1, seat_to_chin_mm: the chin is not below the eyes"),
    ],
)  # fmt: skip
def test_bodies_differ_and_are_asked_about(line, words):
    """Outside half to one and a half times the published median: a question, never a refusal."""
    (sentence,) = told(f"{line}\n{WHOLE}")
    assert sentence.startswith("? room.toml, line 1, ")
    assert words in sentence


@pytest.mark.parametrize(
    "line", ["seat_to_floor_mm = 640", 'posture = "bed"\nseat_to_floor_mm = 900', "seat_to_chin_mm = 400"]
)
def test_small_and_tall_people_are_not_asked(line):
    """Inside the range, or lying in a bed of any height: nothing is asked."""
    assert told(f"{line}\n{WHOLE}") == []


MARKS = (
    "".join(
        f'[[landmark]]\nname = "{name}"\nat_mm = {at}\n'
        for name, at in (("seat", [0, 0, 0]), ("right", [300, 0, 0]), ("front", [0, 400, 0]), ("further", [600, 0, 0]))
    )
    + '[[landmark]]\nname = "top"\nat_mm = [0, 0, 840]\n'
)
"""The origin, and points along the axes: distances by Pythagoras."""
TAPED = WHOLE.replace("at_mm = [0, 190, 690]\n", "{}")


@pytest.mark.parametrize(
    ("distances", "words"),
    [
        # the point (0, 0, 500): by hand sqrt(500^2 + 300^2) is 583, sqrt(500^2 + 400^2) is 640, 840 - 500 is 340
        ({"seat": 500, "right": 583, "front": 640, "top": 340}, None),
        ({"seat": 500, "right": 583, "front": 640}, '? room.toml, line 28, place "chin": Three distances leave two answers, '),
        (
            {"seat": 100, "right": 100, "front": 400, "top": 800},
            '! room.toml, line 28, place "chin": found 100 mm from \'seat\' and 100 mm from \'right\', which are 300 mm apart, '
            "expected distances that meet. They miss each other by 100 mm",
        ),
        (
            {"seat": 500, "right": 500, "further": 500},
            "! room.toml, line 28, place \"chin\": found landmarks 'seat', 'right' and 'further' in one line, expected",
        ),
        ({"seat": 500, "right": 583, "front": 640, "top": 440}, "disagree by up to"),
    ],
)  # fmt: skip
def test_tapes_that_do_not_meet(distances, words):
    """A point by tape alone: four distances that meet are silent, three leave two answers; what cannot meet is refused at its
    line, what meets only about is asked."""
    tapes = "".join(tape(name, mm) for name, mm in distances.items())
    told_of = told(TAPED.replace("{}", tapes) + MARKS)
    if words is None:
        assert told_of == []
    else:
        (sentence,) = told_of
        assert words in sentence


def test_further_than_its_neighbours():
    """Millimetres typed as centimetres: ten times as far as the others, told as such."""
    far = '[[tube]]\nname = "post"\nfrom_cm = [40, 280, 20]\nto_cm = [40, 280, 30]\ndiameter_mm = 20\n'
    near = TUBE + FACE.replace("930", "800") + CHIN.replace("690", "290") + THUMB + FOOT
    sentences = [one for one in told(near + far) if "converted" in one]
    assert len(sentences) == 0  # 2.8 m beside a median of 0.6 m is far, and told as far away, but five times is no unit
    small = "".join(
        f'[[tube]]\nname = "t{x}"\nfrom_mm = [{x}, 100, 90]\nto_mm = [{x}, 200, 90]\ndiameter_mm = 20\n'
        for x in (1, 2, 3)
    )
    sentences = [one for one in told(small + far) if "converted" in one]
    assert any(
        "it is 2,800 mm from the seat, but half of the other things in the room are within 200 mm. Were millimetres typed as "
        "centimetres? If so, name the key from_mm" in one
        for one in sentences
    )


def test_everything_on_the_other_side_is_one_question():
    """Whoever measures while facing the player has left and right the wrong way round everywhere."""
    text = WHOLE.replace("[-210, 400, 270]", "[210, 400, 270]").replace("[-110, 640, -350]", "[110, 640, -350]")
    (sentence,) = told(text)
    assert sentence.count("(left, but x = ") == 2
    assert sentence.endswith("x is positive to the player's right. Was all of it measured while facing the player?")


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", 'room.toml: the place of "chin" is the most useful distance still needed. Measure right, forward and '
            "up from the point where the middle of the back meets the seat to where the site rests: a [[place]] "
            "with site and at_mm."),
        (THUMB, 'room.toml: the place of "chin" is the most useful distance still needed.'),
        (CHIN, "nothing is entered for a mount to clamp to or stand on. Measure the nearest tube, both ends of its "
            "free length and its diameter ([[tube]]), or the nearest tray or table ([[surface]])."),
        (CHIN + TUBE, '"chin" is near the face, but no [[keep_out]] of kind "face" says what must stay free.'),
        (CHIN + TUBE + FACE, 'the place of "left thumb" is still needed.'),
        (CHIN + TUBE + FACE + THUMB, 'the place of "foot" is still needed.'),
    ],
)  # fmt: skip
def test_the_one_distance_most_missed(text, words):
    """One question at a time: the main stick's place, something to hold on to, the face, then the other places."""
    (sentence,) = told(text)
    assert sentence.startswith("? room.toml: ")
    assert words in sentence


def test_all_warnings_at_once():
    """A refusal hides no question, and the other way round."""
    text = (
        "tilt_from_deg = 9\n"
        + WHOLE.replace("to_mm = [-190, -90, 560]", "to_mm = [-190, -70, 280]").replace(
            "size_mm = [600, 400]", "size_mm = [0, 0]"
        )
        + CHIN
        + tape("screw", 2)
        + FACE
    )
    assert [one[0] for one in told(text)].count("!") == 6


def test_a_bolt_may_be_beside_the_seat():
    """A landmark close to the origin is no slip of a unit; a tube there would be asked about."""
    assert told(WHOLE + '[[landmark]]\nname = "seat bolt"\nat_mm = [20, 5, -10]\n') == []


def test_feet_and_knees_go_under_tables():
    """A foot or knee under the tray is where it belongs; a hand beside the tray is not under it, however low."""
    player = PLAYER + '[[site]]\nname = "knee"\npart = "knee"\n'
    knee = '[[place]]\nsite = "knee"\nat_mm = [-100, 450, 120]\n'
    assert told(WHOLE + knee, player) == []
    (sentence,) = told(WHOLE + knee, player.replace('part = "knee"', 'part = "hand"'))
    assert '"knee" would be under "tray", 130 mm below its top' in sentence
    for beside in ("[-310, 400, 120]", "[-210, 190, 120]", "[-210, 610, 120]"):
        assert told(WHOLE.replace("[-210, 400, 270]", beside)) == []


def test_a_site_with_stick_readings_is_missed_before_one_that_presses():
    """Without an action named, the site that was measured for a stick comes first."""
    player = PLAYER.replace('action = "move"\n', "[[site.reading]]\ndirection_deg = 0\nforce_n = 1\n")
    (sentence,) = told(TUBE + FACE + FOOT, player)
    assert 'the place of "chin" is the most useful distance still needed' in sentence


@pytest.mark.parametrize(
    ("lines", "words"),
    [
        (
            "rear_wheel_mm = 420\nfront_wheel_mm = -40\n",
            "the front wheels further forward than the rear wheels. Swap the two.",
        ),
        ("track_mm = 660\nwidth_mm = 560\n", "the wheels are further apart than the chair is wide (width_mm)."),
        ("player_kg = 250\n", "250 is more than 200 kg. Were pounds typed as kilograms?"),
        ("chair_kg = 300\n", "300 is more than 220 kg. Were pounds typed as kilograms?"),
    ],
)
def test_wheels_and_weights_of_the_chair(lines, words):
    """Front and rear swapped is refused; a track wider than the chair and weights of nobody are asked about."""
    assert any(words in sentence for sentence in told(lines)), told(lines)
