"""Bases, trays, stands and clamps: whether they stay, and what would make them."""

import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from said import said
from stickwright.codes.message import Name, message
from stickwright.codes.to_measure import ToMeasure
from stickwright.errors import BadInput
from stickwright.model.kit import Fastener, Mount
from stickwright.model.room import Surface
from stickwright.mounting.base_stability import (
    Foot,
    fastener_checks,
    foot_checks,
    patch_needed_m,
    sliding_checks,
    tipping_checks,
)
from stickwright.mounting.change import ArmChange, Stand, smallest_change, stand_change
from stickwright.mounting.friction import assumed_friction
from stickwright.mounting.statics import Pushes, joint_checks
from stickwright.mounting.support_stability import (
    axis_moment_nm,
    clamp_checks,
    clamp_slip_nm,
    lap_tray_checks,
    stability_angle_rad,
    stand_checks,
    surface_checks,
    tray_checks,
)

approx = pytest.approx

HOOKS = Fastener(name="hook-and-loop", kind="hook-and-loop", shear_pa=60e3, tension_pa=35e3)
MUSHROOMS = Fastener(name="mushroom-head", kind="mushroom-head", shear_pa=210e3, tension_pa=180e3)
UNREAD = Fastener(name="found in the drawer", kind="mushroom-head")
SHEET = Fastener(name="anti-slip sheet", kind="anti-slip sheet", friction=0.9)
BLOW = Pushes(0.0, 85.0)
BASE = (0.150, 0.110)

forces = st.floats(0.1, 200.0)
heights = st.floats(0.01, 0.3)
sides = st.floats(0.03, 0.3)
strengths = st.floats(1e3, 1e6)


def spasm(checks, what):
    (found,) = [check for check in checks if check.what == what and check.push == "involuntary"]
    return found


class TestABlowOf85Newton:
    """Worked by hand: 85 N at 95 mm on 150 x 110 mm is 8.1 N m, and 27 kPa at the edge."""

    def test_hook_and_loop_fails(self):
        """A third of 35 kPa is 12 kPa, less than 27; it would take 198 x 145 mm, which the base has not."""
        tension = spasm(fastener_checks(BLOW, 0.095, HOOKS, BASE, base_m=BASE), "fastener_tension")
        assert tension.load == approx(27, abs=0.5)
        assert tension.limit / 3 == approx(12, abs=0.5)
        assert (tension.holds, tension.wanted) == (False, 3.0)
        assert "A patch of 198 × 145 mm is required; the base is 150 × 110 mm, too small for it." in said(tension.words)

    def test_mushroom_head_holds(self):
        """A third of 180 kPa is 60 kPa: holds; so does its shear, 85 N over 165 cm2 = 5.2 kPa of 210."""
        checks = fastener_checks(BLOW, 0.095, MUSHROOMS, BASE)
        assert spasm(checks, "fastener_tension").limit / 3 == approx(60, abs=0.5)
        assert spasm(checks, "fastener_shear").load == approx(5.15, abs=0.005)
        assert all(check.holds for check in checks)

    def test_a_lower_smaller_base(self):
        """85 N at 75 mm on 140 x 95 mm: 6.4 N m, 30 kPa."""
        tension = spasm(fastener_checks(BLOW, 0.075, MUSHROOMS, (0.14, 0.095)), "fastener_tension")
        assert tension.load == approx(30, abs=0.5)
        assert 1e3 * tension.load * 0.14 * 0.095**2 / 6 == approx(6.4, abs=0.05)

    def test_a_loose_tray_must_be_fastened(self):
        """0.9 x (2.6 + 0.9 + 1.5 kg) x 9.81 = 44 N against 85: does not hold; fastened it does."""
        loose = tray_checks(BLOW, mass_kg=2.6, carried_kg=0.9, resting_kg=1.5, friction=0.9)
        assert spasm(loose, "tray").limit == approx(44, abs=0.5)
        assert not spasm(loose, "tray").holds
        assert said(smallest_change(loose)) == "Fasten the tray with clamps or bolts."
        assert all(c.holds for c in tray_checks(BLOW, mass_kg=2.6, carried_kg=0.9, fastened=True))

    def test_the_smallest_change_is_the_next_fastener(self):
        """The patch already fills the base, so the patch cannot grow; the mushroom heads in the kit hold."""
        foot = Foot(BASE, 0.095, 0.9, fastener=HOOKS)
        change = smallest_change(foot_checks(foot, BLOW), foot=foot, pushes=BLOW, fasteners=(HOOKS, UNREAD, MUSHROOMS))
        assert said(change) == "Fix the base with mushroom-head instead of hook-and-loop."

    def test_what_is_not_in_stock_is_not_offered(self):
        """The mushroom heads are lent out: the stick must come down instead."""
        foot = Foot(BASE, 0.095, 0.9, fastener=HOOKS)
        lent = MUSHROOMS.model_copy(update={"in_stock": 0})
        change = smallest_change(foot_checks(foot, BLOW), foot=foot, pushes=BLOW, fasteners=(lent,))
        assert [one.text for one in change.param("changes")] == ["lower"]

    def test_without_one_the_stick_must_come_down(self):
        """27 to 11.67 kPa: 95 x 11.67 / 26.7 = 41.5 mm, told in whole millimetres and so that it holds."""
        foot = Foot(BASE, 0.095, 0.9, fastener=HOOKS)
        change = smallest_change(foot_checks(foot, BLOW), foot=foot, pushes=BLOW)
        assert said(change) == "Lower the contact point from 95 mm to 41 mm above what the base stands on."
        assert all(check.holds for check in foot_checks(replace(foot, height_m=0.041), BLOW))

    def test_a_small_patch_may_grow(self):
        """Mushroom heads on 80 x 50 mm: (18 x 85 x 0.095 / (1.6 x 180e3))^(1/3) = 79.6 mm by 127.4: 102 cm2."""
        foot = Foot(BASE, 0.095, 0.9, fastener=MUSHROOMS, patch_m=(0.08, 0.05))
        change = smallest_change(foot_checks(foot, BLOW), foot=foot, pushes=BLOW, fasteners=(HOOKS, MUSHROOMS))
        assert said(change) == "Enlarge the patch of mushroom-head from 40 to 102 cm² (127 × 80 mm)."


@given(force=forces, height=heights, long=sides, short=sides)
def test_the_peak_pull_against_a_sum_over_strips(force, height, long, short):
    """Law: a patch of 2000 springy strips that balances the moment has the peak pull of the formula (to the half strip)."""
    long, short = max(long, short), min(long, short)
    strips = (np.arange(2000) + 0.5) / 2000 * short - short / 2
    area = long * short / 2000
    slope = force * height / np.sum(strips**2 * area)
    tension = spasm(fastener_checks(Pushes(0.0, force), height, HOOKS, (long, short)), "fastener_tension")
    assert tension.load * 1e3 == approx(slope * short / 2, rel=1e-3)


@given(
    force=forces,
    more=forces,
    height=heights,
    mass=st.floats(0.05, 5.0),
    mu=st.floats(0.1, 1.2),
    long=sides,
    short=sides,
)
def test_a_heavier_push_never_raises_a_factor(force, more, height, mass, mu, long, short):
    """Law, for a base that lies free and for one that is fixed."""
    for foot in (Foot((long, short), height, mass, friction=mu), Foot((long, short), height, mass, fastener=HOOKS)):
        light, heavy = (foot_checks(foot, Pushes(push, push)) for push in (force, force + more))
        assert all(b.times <= a.times * (1 + 1e-9) for a, b in zip(light, heavy, strict=True))


@given(
    force=forces,
    height=heights,
    shear=strengths,
    tension=strengths,
    peel=strengths,
    stronger=st.floats(1.0, 10.0),
    tilt=st.floats(0, 1),
)
def test_a_stronger_fastener_never_lowers_one(force, height, shear, tension, peel, stronger, tilt):
    """Law: more of each strength, never a smaller factor."""
    foot = Foot(BASE, height, 0.9, tilt_rad=tilt)
    weak, strong = (
        Fastener(
            name="f",
            kind="mushroom-head",
            shear_pa=min(1e9, k * shear),
            tension_pa=k * tension,
            peel_n_per_m=k * peel / 1e2,
        )
        for k in (1.0, stronger)
    )
    was, now = (foot_checks(replace(foot, fastener=one), Pushes(force, force)) for one in (weak, strong))
    assert all(b.times >= a.times * (1 - 1e-9) for a, b in zip(was, now, strict=True))


@given(force=forces, height=heights, shear=strengths, tension=strengths, long=sides, short=sides)
def test_the_patch_needed_just_holds(force, height, shear, tension, long, short):
    """Law: a patch of the size told has a least factor of exactly 3."""
    fastener = Fastener(name="f", kind="hook-and-loop", shear_pa=shear, tension_pa=tension)
    size = patch_needed_m(force, height, fastener, (long, short))
    checks = fastener_checks(Pushes(0.0, force), height, fastener, size)
    assert min(check.times for check in checks) == approx(3.0, rel=1e-9)


def test_peel_counts_the_edge():
    """85 N at 95 mm over 150 mm of edge, 110 mm from the far one: 489 N for each metre, 0.49 N/mm; a label of 0.35 fails."""
    fastener = HOOKS.model_copy(update={"peel_n_per_m": 350.0})
    peel = spasm(fastener_checks(BLOW, 0.095, fastener, BASE), "fastener_peel")
    assert peel.load == approx(0.489, abs=0.0005)
    assert (peel.unit, peel.limit, peel.holds) == ("n_per_mm", approx(0.35), False)


def test_a_label_that_nobody_read_is_not_trusted():
    """Mushroom heads without figures: 1 N x 1.5 passes, 3 N x 1.5 does not; the check says to read the label."""
    assert all(check.holds for check in fastener_checks(Pushes(1.0), 0.05, UNREAD, BASE))
    checks = fastener_checks(Pushes(3.0), 0.05, UNREAD, BASE)
    assert not any(check.holds for check in checks)
    assert "the strength of found in the drawer is not known: read its label" in said(checks[0].words)
    foot = Foot(BASE, 0.05, 0.9, fastener=UNREAD)
    blow = Pushes(3.0)
    assert (
        said(smallest_change(checks, foot=foot, pushes=blow))
        == "Read the label of found in the drawer and enter its strengths."
    )
    assert patch_needed_m(3.0, 0.05, UNREAD, BASE) is None


def test_a_standing_load_counts_a_tenth():
    """0.9 kg on a slope of 30 degrees: 4.41 N on 165 cm2 = 0.267 kPa for ever; of 60 kPa only 6 count: 22 times."""
    (standing,) = [
        c
        for c in foot_checks(Foot(BASE, 0.06, 0.9, fastener=HOOKS, tilt_rad=math.radians(30)), Pushes(1.0))
        if c.push == "weight"
    ]
    assert standing.load == approx(0.267, abs=0.0005)
    assert standing.limit == approx(6.0)
    assert standing.words.text == "fastener_standing"


def test_a_sheet_grips_only_under_weight():
    """Anti-slip sheet under 0.9 kg: 0.9 x 0.9 x 9.81 = 7.9 N; 3 N x 1.5 = 4.5 N holds 1.8 times, 4 N x 1.5 does not; then mass
    or a fastener is wanted: 1.5 x 6 / (0.9 x 9.81) - 0.9 = 0.12 kg."""
    foot = Foot(BASE, 0.03, 0.9, fastener=SHEET)
    assert foot_checks(foot, Pushes(3.0))[0].factor == approx(1.765, abs=0.0005)
    checks = foot_checks(foot, Pushes(4.0))
    assert [check.holds for check in checks] == [False, True]
    assert said(smallest_change(checks, foot=foot, pushes=Pushes(4.0))) == "Add 0.12 kg to the base."
    assert (
        said(smallest_change(checks, foot=foot, pushes=Pushes(4.0), fasteners=(MUSHROOMS, HOOKS)))
        == "Fix the base with hook-and-loop instead of anti-slip sheet."
    )


def test_nothing_to_change_when_all_holds():
    """No failing check, no sentence; and none where no change of this kind would do."""
    foot = Foot(BASE, 0.03, 0.9, friction=0.9)
    assert smallest_change(foot_checks(foot, Pushes(1.0)), foot=foot, pushes=Pushes(1.0)) is None
    huge = Pushes(900.0)
    assert smallest_change(foot_checks(foot, huge), foot=foot, pushes=huge) is None


def test_an_arm_that_fails():
    """7 N m against 10.3 from a cough (1.3 wanted): a coupling, or 340 x 0.68 / 1.3 = 177 mm, or a joint of 13 N m."""
    checks = joint_checks([(0, 0, 0)], [7.0], Pushes(2.4, 25.0), [((0.17, 0, 0), 1.08)], contact_m=(0.34, 0, 0))
    assert (
        said(smallest_change(checks, arm=ArmChange(0.34, "the coupling"))) == "Let it go on purpose: fit the coupling."
    )
    change = smallest_change(checks, arm=ArmChange(0.34))
    assert said(change) == "Shorten the arm from 340 mm to 177 mm, or use one whose joint 1 holds 13 N m."
    s = 177 / 340
    short = joint_checks([(0, 0, 0)], [7.0], Pushes(2.4, 25.0), [((0.17 * s, 0, 0), 1.08)], contact_m=(0.177, 0, 0))
    assert all(check.holds for check in short)


class TestTrays:
    """What the base stands on."""

    def test_a_lap_tray_is_for_light_pushes(self):
        """2 N of push pass the limit of 3 N; 4 N do not; and 1.6 kg tip at 1.6 x 9.81 x 0.09 = 1.41 N m."""
        light, heavy = (lap_tray_checks(Pushes(push), 0.1, 1.6) for push in (2.0, 4.0))
        assert light[0].holds
        assert not heavy[0].holds
        assert (
            said(heavy[0].words)
            == "A lap tray is for pushes up to 3.0 N; the hardest here is 4.0 N: use a table or the tray of the chair."
        )
        assert light[1].limit == approx(1.41, abs=0.005)
        assert light[1].assumed is not None
        assert lap_tray_checks(Pushes(2.0), 0.1, 1.6, 0.1)[1].assumed is None
        assert said(smallest_change(heavy)) == "Use a table or the tray of the chair."
        assert said(lap_tray_checks(Pushes(2.0), 0.1, None)[1].words).startswith(
            "Tipping: 0.30 N m from a push of 3.0 N"
        )

    def test_the_rating(self):
        """0.9 kg of stick and 2.5 kg of arm on a tray for 3 kg: 0.4 kg too much."""
        tray = Surface(name="tray", kind="tray", corner_m=(0, 0, 0), size_m=(0.5, 0.4), fastened=True, rated_kg=3.0)
        checks = surface_checks(tray, Pushes(1.0), 0.06, 0.9, 2.5)
        assert [(check.what, check.holds) for check in checks] == [("tray", True), ("rating", False)]
        assert said(smallest_change(checks)) == "Take 0.40 kg off."

    def test_a_loose_tray_without_figures(self):
        """Not weighed: not trusted above 3 N. Weighed, friction unknown: taken as dusty, and said."""
        tray = Surface(name="tray", kind="tray", corner_m=(0, 0, 0), size_m=(0.5, 0.4))
        assert not surface_checks(tray, Pushes(3.0), 0.06, 0.9)[0].holds
        weighed = tray.model_copy(update={"mass_kg": 2.6})
        (slid,) = surface_checks(weighed, Pushes(3.0), 0.06, 0.9)
        assert slid.limit == approx(0.2 * 3.5 * 9.80665, abs=0.005)
        assert "friction not measured" in said(slid.assumed)

    def test_floors_and_tables(self):
        """A floor stays; a table that nobody weighed is not doubted."""
        floor = Surface(name="floor", kind="floor", corner_m=(0, 0, 0), size_m=(3, 3))
        table = Surface(name="desk", kind="table", corner_m=(0, 0, 0), size_m=(1, 1), rated_kg=20.0)
        assert surface_checks(floor, Pushes(90.0), 0.06, 0.9) == ()
        assert [check.what for check in surface_checks(table, Pushes(90.0), 0.06, 0.9)] == ["rating"]
        lap = Surface(
            name="lap tray", kind="lap tray", corner_m=(0, 0, 0), size_m=(0.5, 0.4), mass_kg=1.1, rated_kg=2.0
        )
        assert [check.what for check in surface_checks(lap, Pushes(1.0), 0.06, 0.5)] == [
            "lap_tray",
            "tipping",
            "rating",
        ]


class TestStandsAndClamps:
    """Floor stand, floor plate, clamp on a tube."""

    def test_what_hangs_out_counts(self):
        """Foot 0.5 x 0.4 m, 6 kg: keeps 11.8 N m; 1 kg 0.5 m out adds 9.81 x 0.3 = 2.9 N m to 2 N x 1.5 at 1.1 m."""
        stand = Mount(name="stand", kind="floor stand", size_m=(0.5, 0.4), mass_kg=6.0, friction=0.6)
        tips = stand_checks(stand, Pushes(2.0), 1.1, 1.0, 0.5)[1]
        assert tips.load == approx(3 * 1.1 + 9.80665 * 0.3, abs=0.005)
        assert tips.limit == approx(6 * 9.80665 * 0.2, abs=0.005)
        assert tips.holds
        assert not stand_checks(stand, Pushes(5.0), 1.1, 1.0, 0.5)[1].holds

    @pytest.mark.parametrize("size_m", [(0.3, 0.06), (0.06, 0.3)])
    def test_a_larger_board_by_hand(self, size_m):
        """150 N x 1.5, 20 mm up: 4.5 N m less what 0.4 kg in the middle keep, and 3 kg must keep 1.5 times as much: a side of 390 mm
        does, 380 mm do not, nor do 10 kg more on 60 mm; which side was the longer makes no difference."""
        board = Mount(name="board", kind="floor plate", size_m=size_m, mass_kg=3.0, friction=1.8)
        stand, pushes = Stand(board, 0.02, 0.4, "wood", pressed=True), Pushes(150.0)
        told = stand_change(stand, pushes, ())
        assert told is not None
        (change,) = told.param("changes")
        assert (change.code, change.param("side_m")) == ("MountChanges.larger_board", approx(0.39))
        for side_m, holds in ((0.39, True), (0.38, False)):
            kept, load = 3 * 9.80665 * side_m / 2, 4.5 - 0.4 * 9.80665 * side_m / 2
            assert (kept >= 1.5 * load) is holds
            larger = replace(stand, mount=board.model_copy(update={"size_m": (side_m, side_m)}))
            assert larger.holds(pushes) is holds

    def test_a_stand_that_nobody_weighed(self):
        """Says what is missing; the floor's friction is assumed from its material."""
        stand = Mount(name="stand", kind="floor stand")
        assert "size and mass of stand are not known" in said(stand_checks(stand, Pushes(5.0), 1.0, 1.0)[0].words)
        plate = Mount(name="plate", kind="floor plate", size_m=(0.45, 0.35), mass_kg=4.2)
        slid = stand_checks(plate, Pushes(5.0), 0.05, 0.7, floor="wood")[0]
        assert slid.limit == approx(0.7 * 4.9 * 9.80665, abs=0.005)
        assert said(slid.assumed).startswith("friction not measured: clean, dry rubber on wood taken as 0.70")

    @given(push=st.floats(0.0, 50.0), seed=st.integers(0, 200))
    def test_the_turning_moment_against_many_directions(self, push, seed):
        """Against 20 000 directions of push, for an arm, a tube and a weight drawn at random."""
        rng = np.random.default_rng(seed)
        axis, contact, point = rng.normal(size=(3, 3)) * 0.3
        direction = rng.normal(size=(20_000, 3))
        direction /= np.linalg.norm(direction, axis=1, keepdims=True)
        moment = np.cross(point, [0, 0, -2 * 9.80665]) + np.cross(contact, push * direction)
        tried = np.abs(moment @ axis).max() / np.linalg.norm(axis)
        worst = axis_moment_nm((0, 0, 0), axis, contact, push, [(point, 2.0)])
        assert tried <= worst + 1e-9
        assert worst <= tried + 0.02 * push * np.linalg.norm(contact) + 1e-9

    def test_a_clamp_by_friction(self):
        """400 N of jaws at 0.5 on a 25 mm tube: 5 N m; 10 N at 0.3 m turn it with 4.5 (x 1.5): 1.1 times, 2 wanted."""
        slips = clamp_slip_nm(400.0, 0.5, 0.025)
        assert slips == approx(5.0, abs=0.005)
        checks = clamp_checks((0, 0, 0), (0, 1, 0), (0.3, 0, 0), Pushes(10.0, 25.0), [], slips)
        assert checks[0].load == approx(4.5, abs=0.005)
        assert [check.holds for check in checks] == [False, False]
        gives = clamp_checks((0, 0, 0), (0, 1, 0), (0.3, 0, 0), Pushes(5.0, 25.0), [], slips, lets_go=True)
        assert [check.holds for check in gives] == [True, True]
        assert "lets go on purpose" in said(gives[1].words)
        assert not clamp_checks((0, 0, 0), (0, 1, 0), (0.3, 0, 0), Pushes(10.0), [], None)[0].holds
        with pytest.raises(BadInput, match="tube: found both ends at one point"):
            clamp_checks((0, 0, 0), (0, 0, 0), (0.3, 0, 0), Pushes(10.0), [], None)

    def test_what_hangs_from_a_clamp_turns_it_too(self):
        """By hand: 2 kg 0.2 m beside a level tube are 3.92 N m, besides the push of 15 N at 0.3 m."""
        beside = [((0.2, 0.0, 0.0), 2.0)]
        (alone,) = clamp_checks((0, 0, 0), (0, 1, 0), (0.3, 0, 0), Pushes(10.0), beside, 9.0)
        assert alone.load == approx(10.0 * 1.5 * 0.3 + 2 * 9.80665 * 0.2, abs=0.005)


def test_friction_not_known_is_said():
    """No friction, no verdict for more than a light push; dusty stands in where the tables know nothing."""
    assert not sliding_checks(Pushes(5.0), 0.9, None)[0].holds
    assert sliding_checks(Pushes(1.0), 0.9, None)[0].holds
    friction, assumed = assumed_friction("carpet", measure=message(ToMeasure.friction_under, thing=Name("box")))
    assert friction == 0.2
    assert said(assumed) == (
        "friction not measured: rubber on carpet taken as 0.20, as when dusty; to confirm: pull box sideways with the force gauge for "
        "five seconds, and divide by its weight (friction)"
    )


def test_no_push_loads_nothing():
    """Without a push the factor is infinite, and the words stay plain."""
    check = tipping_checks(Pushes(0.0), 0.1, 1.0, 0.1)[0]
    assert check.unloaded
    assert said(check.words).endswith("nothing loads it.")


def test_a_centre_of_mass_on_the_ground_is_refused():
    """Height 0 makes no angle."""
    with pytest.raises(BadInput, match=r"centre of mass: found 0\smm, expected more than 0\smm"):
        stability_angle_rad(0.2, 0.0)
