"""Hard safety rules, each broken and kept, and the cautions of what passes."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from said import said
from stickwright.codes.message import message
from stickwright.codes.mount_rules import MountRules
from stickwright.model.kit import Mount
from stickwright.model.player import Player, Site
from stickwright.model.room import Edge, KeepOut, Room, Surface, Tube
from stickwright.mounting.rules import broken_rules, cautions_for_mount, overhang_nm, parts_company_m, width_finding
from stickwright.mounting.statics import release_window

approx = pytest.approx

ARM = Mount(name="long arm", kind="friction arm")
STAND = Mount(name="stand", kind="floor stand")
BACK_TUBE = Tube(name="back tube", from_m=(0.2, 0, 0.3), to_m=(0.2, 0, 0.6), diameter_m=0.025)
FLOOR = Surface(name="floor", kind="floor", corner_m=(-1, -1, -0.5), size_m=(3, 3))
TABLE = Edge(name="table edge", from_m=(-0.5, 0.5, 0.2), to_m=(0.5, 0.5, 0.2), thickness_m=0.03)
TILTING = Room(tilt_from_rad=math.radians(5), tilt_to_rad=math.radians(45), tilt_pivot_m=(0, 0, 0))
WINDOW = release_window(1.8, 2.4, 0.34, 12.0)
CHIN_M = (0.0, 0.0, 0.9)


def site(part="hand", **more):
    return Site.model_validate({"name": part, "part": part, **more})


def player(**more):
    return Player.model_validate({"code": "P1", "site": [{"name": "hand", "part": "hand"}], **more})


def box(kind, name="it"):
    return KeepOut(name=name, kind=kind, low_m=(0, 0, 0), high_m=(0.1, 0.1, 0.1))


def broken(who=None, mount=ARM, on=BACK_TUBE, room=TILTING, **more):
    return broken_rules(who or site(), mount, on, room, contact_m=more.pop("contact_m", CHIN_M), **more)


def test_a_chin_stick_that_keeps_every_rule():
    """Cleared, on the back tube that tilts with her, with a coupling whose window is open: nothing to refuse."""
    assert broken(site("chin", cleared="yes"), breakaway=True, release=WINDOW) == ()


def test_a_barred_part_is_never_clamped():
    """What the maker forbids stays forbidden, with the reason of the room's own file, whatever the clinic says."""
    barred = BACK_TUBE.model_copy(update={"not_for_clamps": "quick release"})
    assert broken(on=barred) == (message(MountRules.barred, holder="back tube", why="quick release"),)
    assert broken(on=barred, seating_agrees=True) == broken(on=barred)


@pytest.mark.parametrize("name", ["Headrest stem", "left leg rest", "recline strut", "head support bracket"])
def test_a_headrest_or_moving_part_needs_the_clinics_word(name):
    """Refused until the seating clinic agrees; then it is not."""
    moving = BACK_TUBE.model_copy(update={"name": name})
    (told,) = broken(on=moving)
    assert told == message(MountRules.seating_part, holder=name)
    assert broken(on=moving, seating_agrees=True) == ()


def test_the_room_says_what_is_part_of_the_seat() -> None:
    """In any language a tube may be said to be one, and one that only sounds like it not to be."""
    named = BACK_TUBE.model_copy(update={"name": "Kopfstütze", "seating_part": True})
    assert broken(on=named) == (message(MountRules.seating_part, holder="Kopfstütze"),)
    assert broken(on=named, seating_agrees=True) == ()
    assert broken(on=BACK_TUBE.model_copy(update={"name": "tube by the legrest", "seating_part": False})) == ()


@pytest.mark.parametrize(
    ("kind", "words"),
    [
        ("face", "the space in front of the face"),
        ("neck", "the space around the neck"),
        ("chest", "the space in front of the chest"),
        ("chair control", "the space of the chair's own control"),
        ("tubing", "the space of the tubing"),
    ],
)
def test_spaces_of_body_and_chair_stay_free(kind, words):
    """Entering one is refused, once however often it is entered."""
    (told,) = broken(entered=[box(kind), box(kind)])
    assert said(told) == f"it: the mount enters {words}."


@pytest.mark.parametrize("kind", ["door", "screen", "helper", "other", "transfer side"])
def test_other_spaces_are_no_matter_of_refusal(kind):
    """They count when places are compared."""
    assert broken(entered=[box(kind)]) == ()


@pytest.mark.parametrize("part", ["chin", "lip", "head", "cheek", "tongue"])
def test_at_the_face_it_must_let_go(part):
    """No coupling, or one that no setting suits: refused. A limit that nobody asked for yet is not an empty window."""
    who = site(part)
    assert broken(who) == (message(MountRules.must_release, site=part),)
    (told,) = broken(who, breakaway=True, release=release_window(1.8, 2.4, 0.34, 6.0))
    assert said(told).startswith(
        f"{part}: No release setting is possible: it must carry 3.9 N m in play, and the clinic's limit of 6.0 N"
    )
    assert broken(who, breakaway=True, release=release_window(1.8, 2.4, 0.34, None)) == ()


def test_a_site_that_the_team_refused():
    """No is no; 'ask' and nothing are the cautions' matter."""
    assert broken(site("chin", cleared="no"), breakaway=True) == (message(MountRules.not_cleared, site="chin"),)
    assert broken(site("chin", cleared="ask"), breakaway=True) == ()


class TestTilt:
    """40 degrees of tilt at 900 mm from the pivot: 2 x 900 x sin 20 = 616 mm, worked by hand."""

    def test_a_floor_stand_for_a_tilting_chair(self):
        """Refused, with the figure."""
        (told,) = broken(site("chin"), mount=STAND, on=FLOOR, breakaway=True)
        assert (told.text, round(1000 * told.param("shift_m"))) == ("tilt_stand", 616)
        assert "tilting from 5.0° to 45° moves chin by 616 mm away from the stick" in said(told)

    def test_anything_else_that_stays_behind(self):
        """An arm on the table while the seat tilts; a foot on the floor with a mount on the seat."""
        (told,) = broken(on=TABLE)
        assert said(told).startswith(
            "hand moves with the seat and the mount does not: tilting from 5.0° to 45° moves hand by 616 mm"
        )
        (told,) = broken(site("foot"), site_moves_with="room")
        assert (told.text, told.param("with_seat")) == ("tilt_apart", False)

    def test_where_nothing_tilts_or_hardly(self):
        """A chair that stays, or a shift within the pose's own tolerance, is let pass; both sides of 10 mm."""
        assert broken(on=TABLE, room=Room()) == ()
        assert broken(on=TABLE, contact_m=(0, 0, 0.0146)) == ()
        assert len(broken(on=TABLE, contact_m=(0, 0, 0.0147))) == 1
        assert len(broken(on=TABLE, contact_m=(0, 0, 0.0146), tolerance_m=0.004)) == 1

    @given(x=st.floats(-0.5, 0.5), y=st.floats(-0.5, 1.0), z=st.floats(-0.5, 1.0))
    def test_what_tilts_together_stays_together(self, x, y, z):
        """Law: nothing parts company on the same frame, and the side does not matter."""
        assert parts_company_m((x, y, z), "seat", "seat", TILTING) == 0.0
        assert parts_company_m((x, y, z), "base", "room", TILTING) == 0.0
        apart = parts_company_m((x, y, z), "seat", "base", TILTING)
        assert apart == approx(parts_company_m((-x, y, z), "room", "seat", TILTING), abs=1e-12)


def test_all_broken_rules_are_told_at_once():
    """A floor stand at the chin of a tilting chair, without a coupling, in the neck's space, against the team's word."""
    told = broken(site("chin", cleared="no"), mount=STAND, on=FLOOR, entered=[box("neck")])
    assert len(told) == 4


def test_the_door_is_a_query():
    """Door 750 mm: 700 mm passes, 701 mm is asked about; no door measured, no word."""
    room = Room(narrowest_door_m=0.75)
    assert width_finding(0.700, room) is None
    found = width_finding(0.701, room)
    assert (found.level, found.about) == ("query", "width")
    assert "701 mm wide; the narrowest door of 750 mm takes at most 700 mm" in said(found.text)
    assert width_finding(2.0, Room()) is None


class TestCautions:
    """Beside the number they belong to, and only where they apply."""

    def told(self, who=None, whose=None, room=None, **more):
        given = {"mount": ARM, "on": BACK_TUBE, **more}
        cautions = cautions_for_mount(who or site(), whose or player(), room or Room(), **given)
        assert {caution.site for caution in cautions} == {(who or site()).name}
        return {caution.about: said(caution.text) for caution in reversed(cautions)}, [
            said(caution.text) for caution in cautions
        ]

    def test_near_the_face(self):
        """Soft parts, release with its window, nothing across the neck."""
        about, _ = self.told(site("chin", cleared="yes"), release=WINDOW)
        assert "Set the release between 3.9 N m and 5.9 N m" in about["release"]
        assert "nothing rigid towards eye or throat" in about["mount"]
        assert "none across neck, chest or tubing" in about["cable"]
        far, _ = self.told()
        assert "release" not in far
        assert "neck" not in far["cable"]
        unset, _ = self.told(site("chin"))
        assert "Test at every set-up that it lets go." in unset["release"]

    def test_airway_and_slack(self):
        """Tubing keeps cables away; slack for tilting is told in millimetres."""
        about, _ = self.told(site(tilt_slack_m=0.3), player(alerts=["airway"]))
        assert about["cable"].endswith("a lead that pulls apart; leave 300 mm to spare for tilting.")

    def test_pinching_gaps(self):
        """8 to 25 mm take a finger: both ends count, 7 and 26 mm do not; a bare tray without gaps has no word of it."""
        _, texts = self.told(gaps_m=(0.026, 0.025, 0.008, 0.007))
        assert any("Found: 8.0 mm and 25 mm; cover it." in text for text in texts)
        tray = Surface(name="tray", kind="tray", corner_m=(0, 0, 0), size_m=(0.5, 0.4), moves_with="seat")
        _, texts = self.told(mount=None, on=tray)
        assert not any(text.startswith("Fingers") for text in texts)
        _, texts = self.told(mount=None, on=tray, gaps_m=(0.012,))
        assert any(text.startswith("Fingers") for text in texts)

    def test_added_overhang(self):
        """1.2 kg, 250 mm outside: 1.2 x 9.81 x 0.25 = 2.9 N m, and the seating clinic's word; not for a table."""
        assert overhang_nm(0.25, 1.2) == approx(2.94, abs=0.005)
        assert overhang_nm(-0.1, 1.2) == 0.0
        about, _ = self.told(out_m=0.25, mass_kg=1.2)
        assert "1.2 kg at 250 mm outside the frame add 2.9 N m; ask the wheelchair service" in about["stability"]
        assert "stability" not in self.told(on=TABLE, out_m=0.25, mass_kg=1.2)[0]
        assert "stability" not in self.told(room=Room(posture="bed"), out_m=0.25, mass_kg=1.2)[0]
        assert "stability" not in self.told()[0]

    def test_transfers_spasms_skin_and_local_rules(self):
        """How it comes away; pads where there are spasms; skin; and always the maker's papers and local rules."""
        swings = ARM.model_copy(update={"swings_away": True})
        assert "swings aside and comes back to its mark" in self.told(mount=swings)[0]["transfer"]
        assert "comes off in 8.0 s" in self.told(take_off_s=8.0)[0]["transfer"]
        assert (
            "comes off in about 20 s (assumed; time it)"
            in self.told(take_off_s=20.0, take_off_assumed=True)[0]["transfer"]
        )
        assert "longer than the 10 s acceptable in an emergency" in self.told(take_off_s=12.0)[0]["transfer"]
        assert "acceptable in an emergency" not in self.told(take_off_s=10.0)[0]["transfer"]
        _, texts = self.told(whose=player(alerts=["startle", "skin"]))
        assert any(text.startswith("Pad edges") for text in texts)
        assert any(text.startswith("Skin:") for text in texts)
        _, plain = self.told()
        assert not any(text.startswith(("Pad edges", "Skin:")) for text in plain)
        assert any("local rules" in text for text in plain)
        spasm = site(spasm={"peak_n": [85.0], "rate_per_s": 0.07})
        assert any(text.startswith("Pad edges") for text in self.told(spasm)[1])
