"""Mounts against worked values from textbooks of statics and strength of materials, and the trade's own by hand.

The trade's own are common practice, without a source.
"""

import math

import pytest

from stickwright.model.kit import Fastener
from stickwright.mounting.base_stability import fastener_checks, sliding_checks, tipping_checks
from stickwright.mounting.compliance import cantilever, force_with_give, in_series_n_per_m, lost_share
from stickwright.mounting.friction import FRICTION, friction_between
from stickwright.mounting.statics import PUSH_COUNTS, Pushes, joint_moment_nm
from stickwright.mounting.support_stability import stability_angle_rad
from stickwright.units import STANDARD_GRAVITY

approx = pytest.approx

BLOCK_KG = 18.0 / STANDARD_GRAVITY
"""A block of 18 N."""


def largest(check_at, wanted=1.0):
    """Largest push that a check still carries with factor 1, from its own load and limit."""
    check = check_at(1.0)
    return PUSH_COUNTS * wanted * check.limit / check.load


class TestSlidingAndTipping:
    """[hibbeler-statics] a block pushed level at a height, by hand, invented figures: W 18 N, mu 0.5, height 150 mm, depth 120 mm."""

    def test_it_slides_at_nine_newton(self):
        """mu W = 9.0 N."""
        assert largest(lambda push: sliding_checks(Pushes(push), BLOCK_KG, 0.5)[0]) == approx(9.0, abs=0.05)

    def test_it_tips_at_7_2_newton(self):
        """W (b/2)/h = 7.2 N: it tips first."""
        assert largest(lambda push: tipping_checks(Pushes(push), 0.15, BLOCK_KG, 0.12)[0]) == approx(7.2, abs=0.05)

    def test_change_over_at_120_mm(self):
        """Both at the same push where h = b/(2 mu) = 0.12 m; below it slides first, above it tips first."""

        def tips(height):
            return largest(lambda push: tipping_checks(Pushes(push), height, BLOCK_KG, 0.12)[0])

        slides = largest(lambda push: sliding_checks(Pushes(push), BLOCK_KG, 0.5)[0])
        assert tips(0.12) == approx(slides, rel=1e-9)
        assert tips(0.119) > slides > tips(0.121)

    def test_the_angle_of_repose(self):
        """mu 0.5: slides by itself at atan(0.5) = 26.565051 degrees, where the slope's pull is all of the friction
        (half a unit of the last digit, 8.7e-9 rad, over sin cos)."""
        check = sliding_checks(Pushes(0.0), BLOCK_KG, 0.5, tilt_rad=math.radians(26.565051))[0]
        assert check.factor == approx(1.0, abs=2.5e-8)


class TestCantilever:
    """[hibbeler-mechanics] 10 N on 400 mm of aluminium tube 19/16 mm, E 69 GPa (computed apart from this program)."""

    def test_droop_slope_stress_and_stiffness(self):
        """0.972222 mm, 0.208891 degrees, 11.949211 MPa, 10285.721 N/m."""
        tube = cantilever(10.0, 0.4, 0.019, 0.016, 69e9)
        assert 1000 * tube.droop_m == approx(0.972222, abs=5e-7)
        assert math.degrees(tube.droop_rad) == approx(0.208891, abs=5e-7)
        assert tube.stress_pa / 1e6 == approx(11.949211, abs=5e-7)
        assert tube.stiffness_n_per_m == approx(10285.721, abs=5e-4)


class TestSpringsInSeries:
    """[hibbeler-mechanics] 150 and 2000 N/m one after the other (computed apart from this program)."""

    def test_stiffness_of_both(self):
        """139.534884 N/m."""
        assert in_series_n_per_m(150.0, 2000.0) == approx(139.534884, abs=5e-7)

    def test_share_of_the_hands_way(self):
        """k_stick/(k_stick + k_mount) = 0.069767 of the hand's way is lost: 10 mm of hand are 9.302326 mm of stick. A stick
        without start force takes F over its travel, so the mount's share of stick and mount together is the same."""
        at_stick = 150.0 * 9.302326e-3
        lost = lost_share(at_stick, 2000.0, 9.302326e-3)
        assert lost / (1 + lost) == approx(0.069767, abs=5e-7)
        assert 9.302326 * (1 + lost) == approx(10.0, abs=5e-6)

    def test_a_limb_and_a_mount_are_springs_too(self):
        """A straight fall-off F(1 - x/d) is a spring of F/d: in series with the mount its stiffness is F'/d."""
        felt = float(force_with_give(3.0, 0.02, 2000.0))
        assert felt / 0.02 == approx(in_series_n_per_m(150.0, 2000.0), rel=1e-12)
        assert felt / 0.02 == approx(139.534884, abs=5e-7)


class TestChairs:
    """[iso-7176-1] the tipping angle: the slope at which the chair starts to tip. Statics of a rigid body; the standard gives no value."""

    @pytest.mark.parametrize(
        ("from_axis", "height", "slope"), [(0.2, 0.2, 45.0), (0.1, 0.1 * math.sqrt(3), 30.0), (0.0, 0.6, 0.0)]
    )
    def test_triangles_that_everybody_knows(self, from_axis, height, slope):
        """45 and 30 degrees by the half square and the half equilateral triangle; over the axis: at once."""
        assert math.degrees(stability_angle_rad(from_axis, height)) == approx(slope, abs=1e-9)

    def test_on_that_slope_the_weight_passes_through_the_axis(self):
        """At the angle told, the weight's moment about the axis is nil: 120 kg, 0.25 m from the axis, 0.62 m high."""
        slope = stability_angle_rad(0.25, 0.62)
        along, across = math.sin(slope), math.cos(slope)
        assert 120 * STANDARD_GRAVITY * (across * 0.25 - along * 0.62) == approx(0.0, abs=1e-9)


class TestByHand:
    """[fitting-practice] cases worked by hand: common practice, no outside source."""

    def test_a_cough_against_an_arm(self):
        """1.8 N m of weight and 25 N at 340 mm: 10.3 N m."""
        weight = [((0.17, 0.0, 0.0), 1.8 / 0.17 / STANDARD_GRAVITY)]
        assert joint_moment_nm((0, 0, 0), (0.34, 0, 0), 25.0, weight) == approx(10.3, abs=0.05)

    def test_a_blow_on_a_base(self):
        """85 N at 75 mm on 140 x 95 mm: 30 kPa at the edge."""
        strong = Fastener(name="f", kind="mushroom-head", shear_pa=1e6, tension_pa=1e6)
        tension = fastener_checks(Pushes(0.0, 85.0), 0.075, strong, (0.14, 0.095))[3]
        assert (tension.what, tension.push) == ("fastener_tension", "involuntary")
        assert tension.load == approx(30, abs=0.5)


@pytest.mark.parametrize(
    ("one", "other", "low", "high"),
    [
        ("steel", "steel", 0.12, 0.60),
        ("wood", "steel", 0.45, 0.75),
        ("wood", "wood", 0.40, 0.75),
        ("steel", "smooth plastic", 0.20, 0.45),
        ("rubber", "wood", 0.7, 0.95),
        ("rubber", "steel", 0.5, 0.8),
    ],
)
def test_friction_of_dry_pairs(one, other, low, high):
    """[handbook-friction] as the tables print them (rubber from memory), whichever is named first."""
    assert friction_between(one, other)[:2] == (low, high)
    assert friction_between(other, one) == friction_between(one, other)


def test_every_range_is_a_range():
    """Low below high, and no friction beyond what dry pairs show."""
    assert all(0.1 < pair.low < pair.high <= 1.0 for pair in FRICTION.values())
