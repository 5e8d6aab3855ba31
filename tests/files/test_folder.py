"""A case on disk: read, checked, begun, written."""

from __future__ import annotations

import shutil
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from noun_strategies import cases
from said import place, said
from stickwright import units
from stickwright.errors import BadInput
from stickwright.files.folder import check_case, new_case, read_case, write_case
from stickwright.model.case import Case
from stickwright.model.player import Player, SiteRecording
from stickwright.model.recording import Recording
from stickwright.model.room import Room

PLAYER = """code = "K1"
[[site]]
name = "right index"
part = "fingertip"
[[site.reading]]
direction_deg = 0
force_n = [0.34, 0.36]
"""
KIT = """[[stick]]
name = "half-force"
contact_height_mm = 16
start_force_n = 0.2
full_force_n = 0.5
travel_mm = 6
plug = "USB"
[[topper]]
name = "low dish"
form = "dish"
height_mm = 0
[[extension]]
name = "plus 8"
length_mm = 8
"""
GAME = """name = "walk"
[[action]]
name = "move"
kind = "two-axis"
importance = 9
"""
HUB = """[[hub]]
name = "tray hub"
[[hub.socket]]
name = "USB 1"
takes = "USB"
role = "assignable"
"""


ROOM = """[[tube]]
name = "armrest tube"
from_mm = [250, 100, 200]
to_mm = [250, 400, 200]
diameter_mm = 25
[[place]]
site = "right index"
at_mm = [200, 400, 280]
"""


@pytest.fixture
def folder(tmp_path):
    """A small case without a problem."""
    case = tmp_path / "k1"
    case.mkdir()
    for name, text in (
        ("player.toml", PLAYER),
        ("kit.toml", KIT),
        ("game.toml", GAME),
        ("hub.toml", HUB),
        ("room.toml", ROOM),
    ):
        (case / name).write_text(text, encoding="utf-8")
    return case


def add(folder, name, text):
    (folder / name).write_text((folder / name).read_text(encoding="utf-8") + text, encoding="utf-8")


def swap(folder, name, old, new):
    text = (folder / name).read_text(encoding="utf-8")
    assert old in text
    (folder / name).write_text(text.replace(old, new), encoding="utf-8")


def problems(folder):
    return [said(problem.sentence) for problem in check_case(folder)[0]]


def queries(folder, made_on=""):
    found, asked = check_case(folder, made_on)
    assert found == ()
    return [(one.level, one.about, said(one.text)) for one in asked]


def test_a_case_is_read(folder):
    """What stands in the files is in the case, with the folder's name and the date given."""
    case = read_case(folder, made_on="2026-03-01")
    assert (case.name, case.made_on, case.player.code, case.game.name) == ("k1", "2026-03-01", "K1", "walk")
    assert case.player.site[0].reading[0].force_n == (0.34, 0.36)
    assert check_case(folder) == ((), ())


def test_gauge_readings_and_recordings_are_in_the_case(folder):
    """Readings from CSV stand beside those of the file, the repeated direction apart; recordings know their site."""
    swap(folder, "player.toml", 'part = "fingertip"', 'part = "fingertip"\ngauge_readings = "readings/a.csv"')
    add(folder, "player.toml", '[[site.recording]]\nfile = "r.csv"\ntask = "rest"\nstick = "half-force"\n')
    (folder / "readings").mkdir()
    (folder / "readings" / "a.csv").write_text("direction_deg,force_n\n90,0.4\n180,0.5\n90,0.3\n")
    (folder / "r.csv").write_text("time_s,x,y\n0,0,0\n0.02,0.1,0\n")
    case = read_case(folder)
    assert [one.force_n for one in case.player.site[0].reading] == [(0.34, 0.36), (0.4,), (0.5,)]
    assert case.player.site[0].again_force_n == (0.3,)
    (recording,) = case.recordings
    assert (recording.site, recording.stick, recording.task, len(recording.times_s)) == (
        "right index",
        "half-force",
        "rest",
        2,
    )


def test_everything_wrong_is_told_at_once(folder):
    """Mistakes in four files are one refusal; nothing is told twice."""
    swap(folder, "player.toml", "force_n = [0.34, 0.36]", "force_n = [400, -1]\nforce_gf = 3")
    swap(
        folder,
        "player.toml",
        'part = "fingertip"',
        'part = "fingertip"\ngauge_readings = "a.csv"\nliked = ["halfforce"]',
    )
    add(folder, "player.toml", '[[site.recording]]\nfile = "r.csv"\ntask = "rest"\n')
    swap(folder, "kit.toml", "full_force_n = 0.5", "full_force_n = 0.1")
    swap(folder, "game.toml", "importance = 9", 'importance = "high"')
    (folder / "a.csv").write_text("direction_deg,force_n\n0,x\n")
    with pytest.raises(BadInput) as refused:
        read_case(folder)
    places = [place(problem) for problem in refused.value.problems]
    assert len(places) == len(set(places))
    assert {place.split(",")[0] for place in places} == {"player.toml", "kit.toml", "game.toml", "a.csv"}
    told = " ".join(said(problem.sentence) for problem in refused.value.problems)
    for words in (
        'line 9, site "right index", reading at 0°, force_n, 1st value: found 400 N, expected 0 to 50 N for a finger',
        "force_n, 2nd value: found -1, expected 0 to 500 N, without a sign. Left is a direction, not a minus",
        "found force_gf = 3 with force_n = [400, -1]",
        "liked, 1st value: found \"halfforce\", expected the name of a stick in kit.toml. Did you mean 'half-force'?",
        'recording "r.csv", file: found "r.csv": no such file',
        "found full_force_n = 0.1 below start_force_n = 0.2",
        'importance: found "high", expected a number',
        'a.csv, row 2, force_n: found "x"',
    ):
        assert words in told


PART = 'part = "fingertip"'
FORCE = "force_n = [0.34, 0.36]"
TRAVEL = "travel_mm = 6"
OUTSIDE = "expected a file inside the case folder, e.g. readings/right-index.csv. Copy it into the case folder"


@pytest.mark.parametrize(
    ("name", "old", "more", "words"),
    [
        (
            "player.toml", FORCE, '[[site.on_stick]]\nstick = "halfforce"\nreached_share = 1',
            'on_stick "halfforce", stick: found "halfforce", expected the name of a stick in kit.toml. '
            "Did you mean 'half-force'?",
        ),
        (
            "player.toml", FORCE, '[[site.on_stick]]\nstick = "half-force"\nextension = "plus 9"',
            "expected the name of a shaft extension in kit.toml. Did you mean 'plus 8'?",
        ),
        (
            "player.toml", PART, 'toppers = ["dish", "low dsh"]',
            'toppers, 2nd value: found "low dsh", expected the name of a topper, or a form of topper, in kit.toml. '
            "Did you mean 'low dish'?",
        ),
        (
            "player.toml", PART, 'action = "steer"',
            'action: found "steer", expected the name of an action in game.toml. Known: move.',
        ),
        (
            "player.toml", FORCE, "[[site.reading]]\ndirection_deg = 360\nforce_n = 1",
            "direction_deg: found the direction 360° a second time (the first: line 5), expected each direction once. "
            "Put all repeats of a direction into one list.",
        ),
        ("player.toml", 'code = "K1"', 'visit = "March 2026"', 'found "March 2026", expected a date as YYYY-MM-DD'),
        ("player.toml", PART, 'gauge_readings = "../a.csv"', f'gauge_readings: found "../a.csv", {OUTSIDE}'),
        ("player.toml", PART, 'gauge_readings = "/etc/hosts"', OUTSIDE),
        ("player.toml", PART, 'gauge_readings = "C:/a.csv"', OUTSIDE),
        ("player.toml", PART, "gauge_readings = '..\\a.csv'", OUTSIDE),
        ("player.toml", PART, 'gauge_readings = "a\\u0000.csv"', OUTSIDE),
        (
            "player.toml", PART, 'gauge_readings = "none.csv"',
            'line 5, site "right index", gauge_readings: found "none.csv": no such file',
        ),
        ("player.toml", PART, 'gauge_readings = "."', 'gauge_readings: found ".": a folder'),
        (
            "kit.toml", TRAVEL, 'note = "x"\n[[stick]]\nname = "b"\ncontact_height_mm = 16\nstart_force_n = 0.1\n'
            "full_force_n = 0.2\ntravel_mm = 60",
            'stick "b", travel_mm: found travel_mm = 60 with contact_height_mm = 16, expected a travel no longer than',
        ),
        ("kit.toml", TRAVEL, "start_force_interval_n = [0.3, 0.1]", "expected the lower end first. Swap the two."),
        (
            "kit.toml", TRAVEL, '[[stick]]\nname = "Half-Force"\nstart_force_n=0.1\nfull_force_n=1\ntravel_mm=6',
            'stick "Half-Force", name: found a second stick called "Half-Force" (the first: line 1)',
        ),
        ("game.toml", 'kind = "two-axis"', 'together = ["jmp"]', 'together, 1st value: found "jmp"'),
    ],
)  # fmt: skip
def test_one_contradiction_is_one_sentence(folder, name, old, more, words):
    """Names that point nowhere, figures that contradict each other, files outside the folder."""
    swap(folder, name, old, f"{old}\n{more}")
    (sentence,) = problems(folder)
    assert words in sentence
    assert sentence.startswith(f"{name}, line ")


@pytest.mark.parametrize(
    ("old", "new", "about", "words"),
    [
        (
            FORCE,
            "force_n = [45, 48]",
            "unit",
            "These look like grams-force (45 would be 0.44 N): if so, name the lists",
        ),
        (FORCE, "reach_mm = [0.4, 0.35]", "unit", "These look like inches (0.35 would be 8.9 mm)"),
        (FORCE, "reach_mm = 0.9", "unit", "This looks like centimetres (0.9 would be 9 mm)"),
        (FORCE, "force_n = [6, 7]", "unusual", "2 values of comfortable force (6 to 7 N) are above the usual range"),
        (FORCE, "force_n = [0.34, 0.34, 0.34]", "identical_repeats", "Were they copied or rounded?"),
        (FORCE, "force_n = [0, 44, 0, 0.3]", "repeats_apart", "a decimal comma (0,44 in a list is two numbers)"),
        (FORCE, "", "empty_reading", "neither force nor movement range"),
        (f"[[site.reading]]\ndirection_deg = 0\n{FORCE}", "", "nothing_measured", "four directions are enough"),
        ('code = "K1"', 'code = "K1"\nage_band = "b. 2014"', "age_band", "not a date of birth"),
        ('code = "K1"', 'code = "K1"\nvisit = 2026-03-09', "date", "(2026-03-09) is after today (2026-03-01)"),
    ],
)
def test_what_looks_odd_is_asked(folder, old, new, about, words):
    """A question does not stop a plan, and nothing is converted behind anybody's back."""
    swap(folder, "player.toml", old, new)
    asked = queries(folder, "2026-03-01")
    assert any(level == "query" and what == about and words in text for level, what, text in asked)
    reading = read_case(folder).player.site[0].reading
    if "force_n = [45" in new:
        assert reading[0].force_n == (45.0, 48.0)


def test_identical_repeats_of_a_coarse_gauge_are_not_asked_about(folder):
    """With steps of 0.05 N three readings of 0.35 N are no wonder."""
    swap(folder, "player.toml", "force_n = [0.34, 0.36]", "force_n = [0.35, 0.35, 0.35]")
    swap(folder, "player.toml", 'part = "fingertip"', 'part = "fingertip"\ngauge_step_n = 0.05')
    assert queries(folder) == []


def test_units_of_a_gauge_file_are_asked_about_too(folder):
    """Grams-force under force_n in the CSV of a site."""
    swap(folder, "player.toml", 'part = "fingertip"', 'part = "fingertip"\ngauge_readings = "a.csv"')
    swap(folder, "player.toml", "[[site.reading]]\ndirection_deg = 0\nforce_n = [0.34, 0.36]\n", "")
    (folder / "a.csv").write_text("direction_deg,force_n\n0,34\n90,26\n180,38\n")
    ((level, about, text),) = queries(folder)
    assert (level, about) == ("query", "unit")
    assert "3 values: 26 to 38 N" in text


def test_without_a_game_the_stick_is_used_evenly(folder):
    """No game.toml: a note, and an action for what the site names."""
    (folder / "game.toml").unlink()
    assert [(level, about) for level, about, _ in queries(folder)] == [("note", "game")]
    assert [action.name for action in read_case(folder).game.action] == ["move"]
    swap(folder, "player.toml", 'part = "fingertip"', 'part = "fingertip"\naction = "steer"')
    assert [action.name for action in read_case(folder).game.action] == ["steer"]


def test_hubs_are_in_the_case(folder):
    """Every hub with its sockets, in the order of the file."""
    add(folder, "hub.toml", '[[hub]]\nname = "box"\n[[hub.socket]]\nname = "1"\ntakes = "USB"\nrole = "left stick"\n')
    hubs = read_case(folder).hubs
    assert [(hub.name, [socket.name for socket in hub.socket]) for hub in hubs] == [
        ("tray hub", ["USB 1"]),
        ("box", ["1"]),
    ]


def test_without_a_hub_nothing_is_wired(folder):
    """No hub.toml: a note, no hub, and no question about plugs."""
    (folder / "hub.toml").unlink()
    swap(folder, "kit.toml", 'plug = "USB"\n', "")
    assert queries(folder) == [
        (
            "note",
            "hub",
            "There is no hub.toml: controls are assigned, but no sockets are chosen and no cables are planned.",
        )
    ]
    assert read_case(folder).hubs == ()
    (folder / "hub.toml").write_text("# to come\n", encoding="utf-8")
    assert [about for _, about, _ in queries(folder)] == ["plug", "hub"]


def test_another_hub_does_not_stay_behind(folder):
    """A case without hubs written over one with a hub reads back without."""
    case = read_case(folder)
    write_case(replace(case, hubs=()), folder)
    assert read_case(folder).hubs == ()
    write_case(case, folder)
    assert read_case(folder).hubs == case.hubs


def test_the_room_is_in_the_case(folder):
    """Lengths in metre, what moves with what as usual; without the file a note and no room; an empty one is asked about."""
    room = read_case(folder).room
    assert room is not None
    assert room.place[0].at_m == (0.2, 0.4, 0.28)
    assert (room.tube[0].diameter_m, room.tube[0].moves_with) == (0.025, "seat")
    (folder / "room.toml").unlink()
    assert queries(folder) == [("note", "room", "There is no room.toml: nothing is said about mounting.")]
    assert read_case(folder).room is None
    (folder / "room.toml").write_text("# to come\n", encoding="utf-8")
    ((level, about, text),) = queries(folder)
    assert (level, about) == ("query", "missing_distance")
    assert text.startswith('room.toml: the place of "right index" is the most useful distance still needed')
    assert read_case(folder).room == Room()


def test_another_room_does_not_stay_behind(folder):
    """A case without a room written over one with a room leaves no room.toml; a room of which nothing is known stays one."""
    case = read_case(folder)
    write_case(replace(case, room=None), folder)
    assert not (folder / "room.toml").exists()
    for room in (Room(), case.room):
        write_case(replace(case, room=room), folder)
        assert read_case(folder).room == room
    (folder / "room.toml").unlink()
    (folder / "room.toml").mkdir()
    with pytest.raises(BadInput, match=r"found a file that cannot be deleted \(.+\), expected no file of another case"):
        write_case(replace(case, room=None), folder)


def test_what_is_wrong_with_the_room_is_told_with_the_rest(folder):
    """A minus, a length without its unit, a site nobody has: told file by file, beside a slip in the kit."""
    swap(folder, "kit.toml", 'plug = "USB"', 'plug = "wire"')
    swap(folder, "room.toml", "diameter_mm = 25", "diameter_mm = -25")
    swap(folder, "room.toml", 'site = "right index"', 'site = "right indx"')
    add(folder, "room.toml", '[[landmark]]\nname = "bolt"\nat = [1, 2, 3]\n')
    told = problems(folder)
    assert [one.split(",")[0] for one in told] == ["kit.toml", *["room.toml"] * 3]
    for words in (
        'room.toml, line 5, tube "armrest tube", diameter_mm: found -25, expected 1 to 300 mm, without a sign. Leave out the minus sign.',
        'place "right indx", site: found "right indx", expected the name of a site in player.toml. Did you mean \'right '
        "index'?",
        'landmark "bolt", at: found at without a unit, expected at_m, at_cm, at_mm or at_inch. Add the unit.',
    ):
        assert any(words in one for one in told), told


def test_what_is_wrong_with_playing_is_told_at_once(folder):
    """Circular demands, sockets without a role, devices of one name, unknown plugs and sites: one refusal."""
    add(
        folder,
        "game.toml",
        '[[action]]\nname="x"\nkind="chord"\nof=["y","move"]\n[[action]]\nname="y"\nkind="chord"\nof=["x"]\n',
    )
    add(folder, "game.toml", '[[action]]\nname = "dig"\nkind = "press"\noption_price = -1\ntogether = ["dig"]\n')
    add(
        folder, "kit.toml", '[[switch]]\nname = "half-force"\nforce_n = 0.1\nplug = "bolt"\nprice = -3\nin_stock = -1\n'
    )
    add(folder, "hub.toml", '[[hub]]\nname = "TRAY HUB"\n[[hub.socket]]\nname = "1"\ntakes = "USB"\nexcludes = ["2"]\n')
    add(folder, "player.toml", '[[together]]\nsites = ["right index", "left"]\nsays = "no"\n')
    with pytest.raises(BadInput) as refused:
        read_case(folder)
    told = [said(problem.sentence) for problem in refused.value.problems]
    assert len(told) == 12
    for words in (
        'player.toml, line 9, 1st together, sites, 2nd value: found "left", expected the name of a site in player.toml',
        'switch "half-force", name: found a switch with the name of the stick',
        'switch "half-force", plug: found "bolt"',
        "price: found -3, expected 0 to 100,000. Leave out the minus sign.",
        "in_stock: found -1, expected 0 to 1,000. Leave out the minus sign.",
        "chords that contain each other",
        'action "y", of: found a chord of "x" alone',
        "option_price: found -1, expected 0 to 10. Leave out the minus sign.",
        'together, 1st value: found "dig", needed together with itself',
        'found a second hub called "TRAY HUB"',
        'socket "1": found no role',
        'excludes, 1st value: found "2", expected the name of a socket of the same hub',
    ):
        assert any(words in sentence for sentence in told), words
    queries_told = [one.about for one in check_case(folder)[1]]
    assert {"importance", "presses"} <= set(queries_told)


def test_missing_bench_readings_are_asked_about(folder):
    """The figures of a stick stand by themselves; without its readings they cannot be checked."""
    swap(folder, "kit.toml", "travel_mm = 6", 'travel_mm = 6\nbench_readings = "bench.csv"')
    ((level, about, _),) = queries(folder)
    assert (level, about) == ("query", "bench_readings")


def test_the_folder_itself_may_be_wrong(folder, tmp_path):
    """No folder, a file in its place, no kit in it, a wrong date."""
    assert "found no such folder, expected a case folder" in problems(tmp_path / "none")[0]
    assert "found a file, expected a case folder" in problems(folder / "player.toml")[0]
    (folder / "kit.toml").unlink()
    assert problems(folder) == [
        "kit.toml: found no such file, expected a file with the kit. Check the spelling and the folder, "
        "or take the name out."
    ]
    with pytest.raises(BadInput, match="expected a date as YYYY-MM-DD"):
        read_case(folder, made_on="1.3.2026")


def test_checking_writes_nothing(folder):
    """Reading and checking leave the folder as it was, to the byte."""
    before = {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()}
    check_case(folder)
    read_case(folder)
    assert {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()} == before


def test_a_new_case_passes_the_check(tmp_path):
    """The starter is a whole case: no problem and no question, and its repeated direction shows tiring."""
    written = new_case(tmp_path / "k2")
    assert all(path.is_file() for path in written)
    assert check_case(tmp_path / "k2", "2026-03-02") == ((), ())
    assert read_case(tmp_path / "k2").player.site[0].again_force_n == (0.30, 0.29)


def test_a_new_case_overwrites_nothing(folder):
    """A file of the same name stops it before anything is written."""
    shutil.rmtree(folder)
    folder.mkdir()
    (folder / "kit.toml").write_text(KIT)
    with pytest.raises(BadInput, match=r"found kit\.toml in it already, expected a new or an empty folder"):
        new_case(folder)
    assert [path.name for path in folder.iterdir()] == ["kit.toml"]
    with pytest.raises(BadInput, match="found a file with this name"):
        new_case(folder / "kit.toml")


@given(case=cases())
@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
def test_a_written_case_reads_back_equal(tmp_path_factory, case):
    """Law: player, kit, game, hubs and room read back equal, whether readings stand in the file or in a CSV beside it."""
    folder = tmp_path_factory.mktemp("case")
    write_case(case, folder)
    found = read_case(folder)
    assert found.kit == case.kit
    assert found.game == case.game
    assert found.hubs == case.hubs
    assert found.room == case.room
    without_source = [site.model_copy(update={"gauge_readings": None}) for site in found.player.site]
    assert without_source == [site.model_copy(update={"gauge_readings": None}) for site in case.player.site]
    for site in found.player.site:
        assert site.gauge_readings is None or (folder / site.gauge_readings).is_file()


def test_recordings_are_written_with_their_case(folder, tmp_path):
    """A recording goes where its site lists it; one that no site lists is refused."""
    case = read_case(folder)
    listed = case.player.site[0].model_copy(update={"recording": (SiteRecording(file="rec/a.csv", task="rest"),)})
    made = Recording("a.csv", np.array([0.0, 0.1]), np.array([[0, 0.1], [np.nan, 1]]), task="rest", site="right index")
    whole = Case("x", Player.model_copy(case.player, update={"site": (listed,)}), case.kit, case.game, (made,))
    write_case(whole, tmp_path / "copy")
    (found,) = read_case(tmp_path / "copy").recordings
    np.testing.assert_array_equal(found.xy, made.xy)
    with pytest.raises(BadInput, match="found 1 recording with 0 listed"):
        write_case(Case("x", case.player, case.kit, case.game, (made,)), tmp_path / "other")
    assert not (tmp_path / "other" / "player.toml").exists()


@given(
    forces=st.lists(st.floats(0.1, 5), min_size=1, max_size=4),
    reaches=st.lists(st.floats(3, 25), min_size=1, max_size=4),
)
@settings(max_examples=30, deadline=None)
def test_units_change_nothing(tmp_path_factory, forces, reaches):
    """Law: the same case typed in newton and millimetres, or in grams-force and inches, is the same case to 1e-12."""
    found = []
    for force_unit, length_unit in (("n", "mm"), ("gf", "inch")):
        folder = tmp_path_factory.mktemp("units")
        typed = [force / units.to_si(1, force_unit) for force in forces]
        length = [units.to_si(reach, "mm") / units.to_si(1, length_unit) for reach in reaches]
        (folder / "player.toml").write_text(
            'code = "K1"\n[[site]]\nname = "a"\npart = "fingertip"\n[[site.reading]]\ndirection_deg = 0\n'
            f"force_{force_unit} = {typed!r}\nreach_{length_unit} = {length!r}\n"
        )
        (folder / "kit.toml").write_text(KIT)
        found.append(read_case(folder).player.site[0].reading[0])
    assert found[0].force_n == pytest.approx(found[1].force_n, rel=1e-12)
    assert found[0].reach_m == pytest.approx(found[1].reach_m, rel=1e-12)


rubbish = st.one_of(
    st.binary(max_size=80),
    st.text(max_size=60).map(str.encode),
    st.lists(
        st.sampled_from(
            [*PLAYER.splitlines(), *KIT.splitlines(), *HUB.splitlines(), *ROOM.splitlines(), "[[place.tape]]", "from_mm = 3",
             "[[mount]]", "links_mm = [1, 'x']", "at_mm = [0, 0]", "at_mm = [1, 2, nan]", "landmark = 4", "[[keep_out]]",
             "low_mm = [1, 2, 3]", "high_mm = [0, 0, 0]", "tilt_from_deg = 5", "size_mm = [0, 0]", "[[surface]]",
             "[fastener]", "site = [1]", "of = [1, 'move']", "kind = 'chord'",
             "[[together]]", "sites = ['a', 1]", "alone_per_s = 'x'", "[site.press]", "rate_per_min = [1]", "press = 1",
             "plug = 'x'", "role = 3", "excludes = ['west', 2]", "socket = 1", "in_stock = 0", "input = []",
             "helper = [1]", "reaches = 'x'", "option_price = 3", "says = 1", "hub = 2",
             "force_n = nan", "force_gf = -1e999", "reach = [[1]]", "name = 3",
             "site = 1", "[site]", "[stick]", "part = []", "visit = 2026-01-01T00:00:00Z", "gauge_readings = '..'",
             "liked = [1]", "alerts = {a = 1}", "action = true", "[[action]]", "together = 'x'", "base_mm = 1",
             "start_force_interval_n = ['a', 1]", "[[site.recording]]", "file = 'player.toml'", "spasm = []"]
        ),
        max_size=14,
    ).map(lambda lines: "\n".join(lines).encode()),
)  # fmt: skip


@given(player=rubbish, kit=rubbish, game=rubbish, hub=rubbish, room=rubbish)
@settings(max_examples=250, deadline=None)
def test_nothing_but_sentences_come_of_rubbish(tmp_path_factory, player, kit, game, hub, room):
    """Law: whatever the files hold, the case is read or refused in words; check and read agree."""
    folder = tmp_path_factory.getbasetemp() / "rubbish-case"
    folder.mkdir(exist_ok=True)
    files = {"player.toml": player, "kit.toml": kit, "game.toml": game, "hub.toml": hub, "room.toml": room}
    for name, data in files.items():
        (folder / name).write_bytes(data)
    told, _ = check_case(folder)
    assert all(problem.found and problem.expected for problem in told)
    refused: tuple = ()
    try:
        read_case(folder)
    except BadInput as error:
        refused = error.problems
    assert refused == told
    assert check_case(files) == check_case(folder), "the same files in memory are told in the same words"


def further(folder, name, text):
    (folder / name).write_text(text, encoding="utf-8")


def test_further_games_are_in_the_case(folder, tmp_path):
    """Each file is one game with its hours, in the order of the numbers; a written case reads back the same, and leaves no other
    case's games behind."""
    further(folder, "game-3.toml", 'name = "race"\narchetype = "racing"\n')
    further(folder, "game-2.toml", 'name = "quiz"\nhours_per_week = 2\n[[action]]\nname = "answer"\nkind = "press"\n')
    case = read_case(folder)
    assert [(game.name, game.hours_per_week) for game in case.games] == [("walk", None), ("quiz", 2.0), ("race", None)]
    assert case.games[2].action
    write_case(case, tmp_path / "again")
    assert read_case(tmp_path / "again").games == case.games
    write_case(replace(case, further_games=case.further_games[:1]), tmp_path / "again")
    assert read_case(tmp_path / "again").games == case.games[:2]


def test_what_is_wrong_with_a_further_game_is_told_with_its_file(folder):
    """A doubt names the file that it is in; a second game under the same name, or without a first, is refused."""
    further(
        folder,
        "game-2.toml",
        'name = "Walk"\n[[action]]\nname = "a"\nkind = "press"\ntogether = ["b"]\nimportance = 11\n',
    )
    found, _ = check_case(folder)
    assert {place(problem).split(",")[0] for problem in found} == {"game-2.toml"}
    assert len(found) == 3
    further(folder, "game-2.toml", 'name = "quiz"\n[[action]]\nname = "a"\nkind = "press"\n')
    (folder / "game.toml").unlink()
    assert [place(problem) for problem in check_case(folder)[0]] == ["game-2.toml"]


def test_a_site_may_be_kept_for_an_action_of_any_game(folder):
    """The action that a site is kept for is looked for in all games."""
    swap(folder, "player.toml", 'part = "fingertip"', 'part = "fingertip"\naction = "dribble"')
    assert any("dribble" in problem.found for problem in check_case(folder)[0])
    further(folder, "game-2.toml", 'name = "ball"\n[[action]]\nname = "dribble"\nkind = "two-axis"\n')
    assert check_case(folder)[0] == ()


def test_a_game_under_a_wrong_file_name_is_asked_about(folder):
    """Nothing is ignored in silence."""
    further(folder, "game-10.toml", 'name = "quiz"\n')
    assert any("game-10.toml is not read" in text for _, _, text in queries(folder))
