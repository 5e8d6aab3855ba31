"""Our arm held against ikpy [ikpy], a general-purpose library for chains of links: it knows nothing of ours."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from ikpy.chain import Chain
from ikpy.link import OriginLink, URDFLink

from stickwright.mounting.arm import JointAngles, forward, inverse, joint_angles, reaches
from stickwright.mounting.statics import arm_weights, joint_moment_nm, weight_moment_nm
from stickwright.units import STANDARD_GRAVITY

LINKS = (0.22, 0.20)
CLAMP = (0.27, 0.21, 0.18)
RIGHT, FORWARD, UP = (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)


def chain(*joints: tuple[Sequence[float], Sequence[float] | None]) -> Chain:
    """Joints one after the other: how far each lies from the one before, and the axis that it turns about."""
    links = [OriginLink()]
    for number, (way, axis) in enumerate(joints):
        kind = "fixed" if axis is None else "revolute"
        links.append(URDFLink(f"{number}", way, (0, 0, 0), rotation=axis, joint_type=kind, use_symbolic_matrix=False))
    return Chain(links, active_links_mask=[link.joint_type == "revolute" for link in links])


def arm(clamp: Sequence[float] = CLAMP, links: Sequence[float] = LINKS) -> Chain:
    """The arm as a robot: a ball at the clamp as three axes, a hinge at the elbow, the end. Turning about the left raises."""
    here = (0.0, 0.0, 0.0)
    ball = ((clamp, UP), (here, (0.0, -1.0, 0.0)), (here, RIGHT))
    return chain(*ball, ((links[0], 0.0, 0.0), UP), ((links[1], 0.0, 0.0), None))


def settings(angles: JointAngles) -> list[float]:
    """What ikpy's joints are set to: none for its origin and its end."""
    return [0.0, angles.azimuth_rad, angles.elevation_rad, angles.roll_rad, angles.bend_rad, 0.0]


@given(
    swivel=st.floats(-3.1, 3.1), way=st.tuples(*[st.floats(-1.0, 1.0)] * 3), share=st.floats(0.1, 0.9),
    links=st.tuples(st.floats(0.05, 0.4), st.floats(0.05, 0.4)),
)  # fmt: skip
def test_its_forward_kinematics_of_our_joints_reaches_our_end(
    swivel: float, way: tuple[float, ...], share: float, links: tuple[float, float]
) -> None:
    """Joints that we tell, set in ikpy's chain, put its elbow and its end where we wanted them, to 1e-9 m."""
    near, far = abs(links[0] - links[1]), sum(links)
    line = np.array(way) if np.linalg.norm(way) > 0.1 else np.array(UP)
    end = np.array(CLAMP) + line / np.linalg.norm(line) * (near + share * (far - near))
    points = inverse(CLAMP, end, links, swivel)
    frames = arm(CLAMP, links).forward_kinematics(settings(joint_angles(points)), full_kinematics=True)
    assert frames[4][:3, 3] == pytest.approx(np.array(points[1]), abs=1e-9)
    assert frames[5][:3, 3] == pytest.approx(end, abs=1e-9)


@pytest.mark.parametrize("seed", range(6))
def test_its_inverse_kinematics_finds_poses_that_ours_accepts(seed: int) -> None:
    """ikpy's numerical inverse, from a start of its own, reaches an end that we say is reached; its joints, read as ours, put
    our end there too, and its elbow is one of our elbows: the swivel that leads to it exists."""
    rng = np.random.default_rng(seed)
    line = rng.normal(size=3)
    end = np.array(CLAMP) + rng.uniform(0.08, 0.36) * line / np.linalg.norm(line)
    assert reaches(float(np.linalg.norm(end - CLAMP)), LINKS)
    robot = arm()
    found = robot.inverse_kinematics(end, initial_position=[0.0, *rng.uniform(-0.5, 0.5, 3), 1.0, 0.0])
    theirs = robot.forward_kinematics(found, full_kinematics=True)
    assert theirs[5][:3, 3] == pytest.approx(end, abs=1e-6)
    points = forward(CLAMP, LINKS, JointAngles(*found[1:5]))
    assert np.array(points[1:]) == pytest.approx(np.array([theirs[4][:3, 3], theirs[5][:3, 3]]), abs=1e-9)
    nearest = min(
        math.dist(inverse(CLAMP, points[2], LINKS, swivel)[1], points[1])
        for swivel in np.linspace(-math.pi, math.pi, 7201)
    )
    assert nearest < math.pi / 7200 * LINKS[0] + 1e-9


@pytest.mark.parametrize(("distance_m", "there"), [(0.37, True), (0.43, False), (0.019, False), (0.021, True)])
def test_where_it_finds_nothing_we_say_so(distance_m: float, there: bool) -> None:
    """Links of 220 and 200 mm: ikpy comes to 21 and 370 mm (within 0.01 mm), not to 19 or 430; neither do we."""
    end = (CLAMP[0] + distance_m, CLAMP[1], CLAMP[2])
    robot = arm()
    misses = [
        math.dist(robot.forward_kinematics(robot.inverse_kinematics(end, initial_position=start))[:3, 3], end)
        for start in ([0.0, 0.1, 0.2, 0.3, 0.5, 0.0], [0.0, 0.1, 0.2, 0.3, 2.9, 0.0])
    ]
    assert (min(misses) < 1e-5) is there
    assert bool(reaches(distance_m, LINKS)) is there


def virtual_moment(joint: Sequence[float], loads: Sequence[tuple[Sequence[float], Sequence[float]]]) -> np.ndarray:
    """Moment about a ball joint by virtual work alone: how far ikpy's chain moves each loaded point when an axis of the ball
    turns a little, times the force there."""
    out = np.zeros(3)
    little = 1e-5
    for point, force in loads:
        robot = chain((joint, RIGHT), ((0, 0, 0), FORWARD), ((0, 0, 0), UP), (np.subtract(point, joint), None))
        for axis in range(3):
            turned = np.zeros(5)
            turned[1 + axis] = little
            there, back = (robot.forward_kinematics(sign * turned)[:3, 3] for sign in (1.0, -1.0))
            out[axis] += (there - back) @ np.asarray(force) / (2 * little)
    return out


@pytest.mark.parametrize("tilt_deg", [0.0, 25.0])
@pytest.mark.parametrize("joint", [0, 1])
def test_joint_moments_are_those_of_virtual_work(joint: int, tilt_deg: float) -> None:
    """Weights about clamp and elbow, and the hardest side for a push of 12 N: tried every 2 degrees all round, ikpy's moments by
    virtual work never exceed ours and come within 0.1 % of it (the cosine of 2 degrees is 0.9994)."""
    tilt = math.radians(tilt_deg)
    points = inverse(CLAMP, (0.10, 0.42, 0.31), LINKS, 0.7)
    contact = np.add(points[2], (0.01, 0.02, 0.06))
    carried = arm_weights(points, 0.9, points[2], 0.35)[joint:]
    down = np.array([0.0, -math.sin(tilt), -math.cos(tilt)]) * STANDARD_GRAVITY
    hanging = virtual_moment(points[joint], [(point, mass * down) for point, mass in carried])
    assert weight_moment_nm(points[joint], carried, tilt) == pytest.approx(hanging, abs=1e-8)
    lever = np.array([virtual_moment(points[joint], [(contact, force)]) for force in np.eye(3)])
    azimuth, height = np.meshgrid(np.radians(np.arange(0, 360, 2)), np.radians(np.arange(-90, 91, 2)))
    sides = np.stack([np.cos(height) * np.cos(azimuth), np.cos(height) * np.sin(azimuth), np.sin(height)], axis=-1)
    tried = np.linalg.norm(hanging + 12.0 * sides.reshape(-1, 3) @ lever, axis=1).max()
    ours = joint_moment_nm(points[joint], contact, 12.0, carried, tilt)
    assert tried <= ours * (1 + 1e-8)
    assert tried == pytest.approx(ours, rel=1e-3)
