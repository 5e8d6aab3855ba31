"""A room and what holds three sticks in it, made by hand and invented throughout: an arm on a tube, a base fixed to a
tray, and a chin stick that is refused.

The figures that would come from planning are typed, not computed, so that the sheet is tested apart from it. Each distance
can be checked by hand against the points: the clamp lies 185 mm from the front end of the armrest tube, which runs level.
"""

from __future__ import annotations

import math
from dataclasses import replace

from sample_plan import sample_plan, thumb_site

from stickwright.model.fit import Caution
from stickwright.model.mounting import ArmPose, Check, Dimension, Joint, MountFit, Pose, SiteMount
from stickwright.model.plan import Plan
from stickwright.model.recorded import Finding
from stickwright.model.room import Edge, KeepOut, Landmark, Room, Surface, Tube

FINGER, FIST, CHIN = "right index finger", "left fist", "chin"


def room() -> Room:
    """A tilting wheelchair with armrest tubes, a tray, the chair's own control at the right hand."""
    return Room(
        posture="wheelchair", tilt_from_rad=math.radians(10), tilt_to_rad=math.radians(25), tilt_pivot_m=(0.0, 0.1, -0.1),
        seat_to_floor_m=0.50, seat_to_armrest_m=0.22, seat_to_chin_m=0.58, seat_to_eyes_m=0.71, width_m=0.66,
        narrowest_door_m=0.80,
        tube=(
            Tube(name="right armrest tube", from_m=(0.27, 0.40, 0.18), to_m=(0.27, 0.05, 0.18), diameter_m=0.025),
            Tube(name="back tube", from_m=(0.20, -0.09, 0.60), to_m=(0.20, -0.05, 0.05), diameter_m=0.022,
                 not_for_clamps="the headrest is fixed there"),
        ),
        edge=(Edge(name="desk edge", from_m=(-0.60, 0.75, 0.26), to_m=(0.60, 0.75, 0.26), thickness_m=0.028),),
        surface=(
            Surface(name="chair tray", kind="tray", corner_m=(-0.30, 0.18, 0.24), size_m=(0.36, 0.34), material="wood",
                    mass_kg=2.6, fastened=True, rated_kg=5.0, moves_with="seat"),
        ),
        keep_out=(
            KeepOut(name="chair control", kind="chair control", low_m=(0.21, 0.42, 0.20), high_m=(0.33, 0.52, 0.36)),
            KeepOut(name="face", kind="face", low_m=(-0.12, 0.02, 0.54), high_m=(0.12, 0.24, 0.84)),
            KeepOut(name="transfer side", kind="transfer side", low_m=(-0.60, -0.05, -0.10), high_m=(-0.33, 0.55, 0.40),
                    moves_with="room"),
        ),
        landmark=(
            Landmark(name="front end of the right armrest", at_m=(0.27, 0.42, 0.22)),
            Landmark(name="near left corner of the tray", at_m=(-0.30, 0.18, 0.24)),
        ),
    )  # fmt: skip


def check(what: str, push: str, load: float, limit: float, unit: str, wanted: float, **more: str) -> Check:
    factor = limit / load if load else math.inf
    return Check(what, push, load, limit, unit, factor, wanted, factor >= wanted, more.get("words"),  # type: ignore[arg-type]
                 more.get("assumed"))  # fmt: skip


def arm() -> MountFit:
    """A two-link arm from the right armrest tube; 0.40 - 0.185 = 0.215 m forward lies the clamp."""
    clamp, elbow, end = (0.27, 0.215, 0.18), (0.335, 0.330, 0.225), (0.215, 0.345, 0.232)
    return MountFit(
        mount="short arm", kind="friction arm", on="right armrest tube", fastener="mushroom-head", patch_m=(0.040, 0.030),
        arm=ArmPose(
            "right armrest tube", 0.185, (clamp, elbow, end),
            (Joint("lower_link", math.radians(60), "first link forward and out to the right, at 2 o'clock seen from above"),
             Joint("elbow", math.radians(113), "second link back to the left, at 9 o'clock seen from above")),
            0.031, "chair control", 0.62, ranges_m=((0.040, 0.150), (0.170, 0.260)),
            assumed=("'short arm' is taken to be 20 mm thick",),
        ),
        checks=(
            check("joint_1", "working", 1.1, 4.0, "nm", 2.0),
            check("joint_2", "working", 0.5, 4.0, "nm", 2.0),
            check("joint_1", "weight", 0.4, 4.0, "nm", 2.0, assumed="the arm's weight was not measured"),
            check("fastener_shear", "working", 2.2, 210.0, "kpa", 3.0),
            check("width", "", 700.0, 750.0, "mm", 1.0, words="the arm stands out 20 mm beyond the chair"),
        ),
        margin=1.07, give_n_per_m=2200.0, lost_share=0.021, droop_m=0.0018, droop_rad=math.radians(0.4), ringing_hz=9.4,
        parts=("short arm", "plate 120 x 100", "mushroom-head fastener 40 x 30"), take_off_s=6.0, verdict="holds", fails=(),
        refused=(), change=None,
        dimensions=(
            Dimension("front end of the right armrest", "clamp", "back", 0.205),
            Dimension("front end of the right armrest", "base", "left", 0.055),
            Dimension("front end of the right armrest", "base", "back", 0.075),
            Dimension("front end of the right armrest", "base", "up", 0.012),
        ),
        cable_m=0.43, assumed=("friction of the clamp on the tube: taken as painted steel", "'short arm' is taken to be 20 mm thick"),
    )  # fmt: skip


def finger_mount() -> SiteMount:
    long_arm = replace(
        arm(), mount="long arm", margin=0.8, verdict="does_not_hold", lost_share=0.05, parts=("long arm",), dimensions=(),
        checks=(check("joint_1", "working", 2.4, 4.0, "nm", 2.0),),
        fails=("Joint 1 carries 2.4 of 4 N m: factor 1.7, wanted 2.",),
        change="Clamp it 60 mm nearer to the front end of the armrest.",
    )  # fmt: skip
    gooseneck = replace(
        long_arm, mount="gooseneck", kind="gooseneck", arm=None, margin=0.3, lost_share=0.38, change=None,
        fails=("It gives 38 % of the throw away at full push.",),
    )  # fmt: skip
    return SiteMount(
        site=FINGER, device="dew",
        pose=Pose(FINGER, (0.215, 0.338, 0.308), (0.215, 0.345, 0.232), math.radians(-10), math.radians(12), 0.004,
                  math.radians(8), ("slope of the plane the finger moves in: taken as the tray's",)),
        choice=arm(), fits=(arm(), long_arm, gooseneck),
        sentence="Dew goes on the short arm, clamped to the right armrest tube; it holds the strongest push 3.6 times over.",
        cautions=(Caution("chair control", FINGER, "Never across the chair's own control: ask the seating clinic."),
                  Caution("clamp", FINGER, "Not over a quick release; take it off for transport.")),
        findings=(Finding("query", "tilt", "The tube was measured with the seat tilted; check the height of the clamp."),),
    )  # fmt: skip


def fist_mount() -> SiteMount:
    """A base straight on the tray, with a fastener."""
    fixed = MountFit(
        mount="chair tray", kind="tray", on="chair tray", fastener="mushroom-head", patch_m=(0.150, 0.110), arm=None,
        checks=(
            check("fastener_tension", "involuntary", 27.0, 180.0, "kpa", 3.0),
            check("fastener_shear", "involuntary", 5.15, 210.0, "kpa", 3.0),
            check("tray", "weight", 3.1, 5.0, "kg", 1.0),
        ),
        margin=1.6, give_n_per_m=math.inf, lost_share=0.0, droop_m=0.0, droop_rad=0.0, ringing_hz=math.nan,
        parts=("mushroom-head fastener 150 x 110",), take_off_s=None, verdict="holds", fails=(), refused=(), change=None,
        dimensions=(Dimension("near left corner of the tray", "base", "right", 0.120),
                    Dimension("near left corner of the tray", "base", "forward", 0.150)),
        cable_m=None,
    )  # fmt: skip
    hook = replace(
        fixed, fastener="hook-and-loop", margin=0.43, verdict="does_not_hold", change="Take the mushroom-head fastener.",
        fails=("Hook-and-loop pulls off: 27 of 35 kPa, factor 1.3, wanted 3.",),
    )  # fmt: skip
    return SiteMount(
        site=FIST, device="rowan",
        pose=Pose(FIST, (-0.18, 0.34, 0.335), (-0.18, 0.33, 0.24), 0.0, 0.0, 0.006, math.radians(10)),
        choice=fixed, fits=(fixed, hook),
        sentence="Rowan goes straight on the chair tray with mushroom-head fastener.",
        cautions=(Caution("involuntary", FIST, "Pads on all edges; stability of the chair: ask the seating clinic."),),
        findings=(),
    )  # fmt: skip


def chin_mount() -> SiteMount:
    """A floor stand for a chin stick on a tilting chair: refused."""
    stand = MountFit(
        mount="floor stand", kind="floor stand", on="floor", fastener=None, patch_m=None, arm=None,
        checks=(check("tilt", "", 230.0, 10.0, "mm", 1.0),), margin=0.04, give_n_per_m=math.nan, lost_share=math.nan,
        droop_m=0.0, droop_rad=0.0, ringing_hz=math.nan, parts=("floor stand",), take_off_s=None,
        verdict="refused", fails=(), refused=("A stand on the floor does not tilt with the seat: the chin moves 230 mm away.",),
        change="Take an arm clamped to the back tube, which tilts with the seat.", dimensions=(), cable_m=None,
    )  # fmt: skip
    return SiteMount(
        site=CHIN, device="birch",
        pose=Pose(CHIN, (0.0, 0.16, 0.57), (0.0, 0.17, 0.52), 0.0, math.radians(25), 0.003, math.radians(7)),
        choice=None, fits=(stand,), sentence="Nothing in stock may hold birch at the chin.",
        cautions=(Caution("release", CHIN, "Breakaway tested at each set-up; agree the force with the treating team."),),
        findings=(),
    )  # fmt: skip


def mounted_plan() -> Plan:
    """Two sticks that are held and one that may not be."""
    plan = sample_plan()
    fist = replace(thumb_site(), name=FIST, part="hand", choice=replace(thumb_site().fits[0], stick="rowan", site=FIST,
                   base_m=(0.150, 0.110, 0.060), topper=None, built_tilt_rad=0.0, tilt_rad=0.0))  # fmt: skip
    return replace(plan, sites=(*plan.sites, fist), mounts=(finger_mount(), fist_mount(), chin_mount()), room=room())
