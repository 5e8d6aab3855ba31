"""The demo's kit: invented sticks with their truth, and what the kit list holds before and after them."""

from __future__ import annotations

from dataclasses import dataclass

from simulated import SimulatedStick

__all__ = ["KIT_HEAD", "KIT_TAIL", "STICKS", "Benched"]

FOUR = (0, 90, 180, 270)


@dataclass(frozen=True)
class Benched:
    """One invented stick: its truth, how it was read on the bench, and what the kit list says besides."""

    name: str
    start_n: float
    full_n: float
    travel_mm: float
    height_mm: float
    friction_n: float
    base_mm: tuple[int, int, int]
    mass_g: int
    plug: str
    extra: tuple[str, ...] = ()
    cable_m: float = 1.2
    unit: str = "n"
    gauge_step_n: float = 0.005
    directions_deg: tuple[int, ...] = (0,)
    shares: tuple[float, ...] = (0.0, 0.33, 0.67, 1.0)
    back: bool = True
    unequal: tuple[float, ...] | None = None
    slipped: tuple[int, float] | None = None
    comment: str = ""

    @property
    def stick(self) -> SimulatedStick:
        return SimulatedStick.of(
            self.start_n, self.full_n, self.travel_mm / 1e3, self.height_mm / 1e3, self.friction_n
        )  # fmt: skip


SMALL = (54, 50, 30)
STICKS = (
    Benched("small stick 1 N", 0.46, 1.02, 6.5, 16, 0.020, SMALL, 85, "4-conductor", ("in_stock = 3",),
            directions_deg=FOUR, comment="small, full force 1 N"),
    Benched("small stick 0.5 N", 0.23, 0.50, 6.5, 16, 0.012, SMALL, 80, "4-conductor", ("in_stock = 2",),
            directions_deg=FOUR, comment="small, full force 0.5 N"),
    Benched("small sloped stick", 0.15, 0.34, 6.5, 16, 0.008, (46, 40, 34), 70, "4-conductor",
            ("base_tilt_deg = 12",), unit="gf", gauge_step_n=0.001, directions_deg=(0, 90),
            comment="small, full force a third of a newton, base slopes 12 degrees towards the player"),
    Benched("light stick 5 mm", 0.060, 0.165, 5.0, 18, 0.004, (38, 38, 26), 45, "USB",
            ("current_ma = 45", "heaviest_topper_g = 6"), unit="gf", gauge_step_n=0.0005, directions_deg=FOUR,
            comment="small, full force under 0.2 N, travel 5 mm"),
    Benched("tall light stick", 0.028, 0.110, 9.0, 45, 0.003, (40, 40, 62), 110, "USB",
            ("current_ma = 70", "heaviest_topper_g = 8"), unit="gf", gauge_step_n=0.0005, directions_deg=(0, 90),
            comment="tall, full force about 0.1 N"),
    Benched("small stick 4 mm", 0.50, 0.95, 4.0, 14, 0.020, (44, 40, 26), 60, "4-conductor", ("in_stock = 2",),
            back=False, comment="small, travel 4 mm; benched pushing out only, so its friction is not known"),
    Benched("medium stick 11 mm", 0.26, 0.62, 11.0, 28, 0.015, (60, 56, 40), 120, "4-conductor",
            slipped=(5, 1.9), comment="full force 0.6 N, travel 11 mm; the gauge slipped in one reading"),
    Benched("medium sloped stick", 0.32, 0.74, 9.0, 24, 0.015, (62, 58, 38), 130, "4-conductor",
            ("base_tilt_deg = 15",), directions_deg=FOUR, unequal=(1.0, 1.0, 1.0, 1.22),
            comment="base slopes 15 degrees; takes a fifth more force towards the back"),
    Benched("small stick 2 N", 1.10, 2.10, 5.0, 15, 0.050, (54, 50, 30), 90, "4-conductor",
            gauge_step_n=0.01, shares=(0.0, 0.5, 1.0), back=False, comment="small, full force about 2 N; three readings only"),
    Benched("worn stick", 0.24, 0.51, 6.5, 16, 0.175, SMALL, 80, "4-conductor",
            directions_deg=(0, 90), comment="an old stick that no longer self-centres: friction"),
    Benched("large light stick", 0.20, 0.48, 24.0, 60, 0.015, (120, 90, 55), 500, "USB", ("current_ma = 60",),
            comment="large, travel 24 mm, full force 0.5 N"),
    Benched("large sloped stick", 0.70, 1.45, 20.0, 50, 0.030, (160, 120, 75), 750, "USB",
            ("current_ma = 90", "base_tilt_deg = 15"), gauge_step_n=0.01, directions_deg=FOUR,
            comment="large, full force about 1.5 N, base slopes 15 degrees"),
    Benched("large stick 4 N", 1.60, 3.90, 24.0, 60, 0.070, (150, 110, 60), 800, "USB", ("current_ma = 60",),
            gauge_step_n=0.05, comment="large, travel 24 mm, full force about 4 N"),
    Benched("large stick 11 mm", 2.20, 4.60, 11.0, 55, 0.080, (150, 110, 70), 700, "USB", ("current_ma = 60",),
            gauge_step_n=0.05, comment="large, travel 11 mm, full force about 4.6 N"),
    Benched("large stick 8 N", 3.50, 8.00, 22.0, 60, 0.150, (150, 110, 60), 900, "USB", ("current_ma = 60",),
            gauge_step_n=0.05, directions_deg=(0, 90), comment="large, full force 8 N"),
)  # fmt: skip

KIT_HEAD = """\
# The kit of the demo case. Everything is invented: no stick here is a product of anybody.
# Written by examples/make_demo.py. Forces are at the contact point of the bare stick, pushing out; the figures of each
# stick come from its bench readings (bench/), as `stickwright bench READINGS.csv --kit kit.toml` works them out.

tilt_deg = [0, 10, 20]        # tilts of the base that can be built

# A touch surface has no spring: it was put on a scale once, and needs no bench. Travel is half the pad.
[[stick]]
name = "touch pad"
kind = "touch"
start_force_n = 0.02
full_force_n = 0.02
travel_mm = 20
base_mm = [60, 60, 12]
mass_g = 60
plug = "4-conductor"
cable_m = 1.2
current_ma = 1
note = "finger must lift to start again"
"""

KIT_TAIL = """
[[topper]]
name = "low dish"
form = "dish"
height_mm = 0
mass_g = 2
width_mm = 20
in_stock = 3

[[topper]]
name = "ball"
form = "ball"
height_mm = 10
mass_g = 12
width_mm = 35

[[topper]]
name = "tall peg"
form = "peg"
height_mm = 12
mass_g = 6
width_mm = 10

[[topper]]
name = "cross bar"
form = "bar"
height_mm = 6
mass_g = 14
width_mm = 60

[[topper]]
name = "foam ball"
form = "foam"
height_mm = 8
mass_g = 9
width_mm = 48

[[topper]]
name = "chin cup"
form = "cup"
height_mm = 6
mass_g = 7
width_mm = 34
single_player = true          # washable, and not lent on to another player
in_stock = 2

[[extension]]
name = "plus 8"
length_mm = 8
mass_g = 3

[[extension]]
name = "plus 15"
length_mm = 15
mass_g = 5

[[extension]]
name = "plus 25"
length_mm = 25
mass_g = 8

# Switches, lightest first: force to operate, travel, and the face that is hit.
[[switch]]
name = "small light switch"
force_n = 0.12
travel_mm = 1.5
face_mm = 14
sound = "soft"
plug = "2-conductor"
cable_m = 1.2
mass_g = 12
in_stock = 1                  # a second one would have to be bought
price = 38

[[switch]]
name = "strip switch"
force_n = 0.35
travel_mm = 3
face_mm = [20, 60]            # a strip
sound = "silent"
plug = "2-conductor"
cable_m = 1.5
mass_g = 25
in_stock = 2

[[switch]]
name = "round switch 45 mm"
force_n = 0.9
travel_mm = 3
face_mm = 45
sound = "click"
plug = "2-conductor"
cable_m = 1.8
mass_g = 60
in_stock = 2

[[switch]]
name = "round switch 75 mm"
force_n = 2.2
travel_mm = 6
face_mm = 75
sound = "click"
plug = "2-conductor"
cable_m = 1.8
mass_g = 160
in_stock = 2

[[switch]]
name = "round switch 125 mm"
force_n = 3.8
travel_mm = 8
face_mm = 125
sound = "click"
plug = "6.3 mm 2-conductor"   # an old one with the thick plug
cable_m = 2.5
mass_g = 320

[[switch]]
name = "proximity switch"
kind = "proximity"            # acts without touch, when something comes near
senses_at_mm = 12
face_mm = 25
sound = "silent"
plug = "2-conductor"
cable_m = 1.5
mass_g = 30

[[controller]]
name = "spare controller"               # two-handed, as sold with consoles: for whoever helps, or for one hand
contact_height_mm = 16
start_force_n = 0.46
full_force_n = 1.02
travel_mm = 6.5
press_force_n = 0.9
plug = "USB"
cable_m = 2
current_ma = 100
mass_g = 250

# Leads: from nothing to two metres, one adapter, one splitter.
[[lead]]
name = "switch lead 0.5 m"
plug = "2-conductor"
length_m = 0.5
in_stock = 2

[[lead]]
name = "switch lead 1 m"
plug = "2-conductor"
length_m = 1
in_stock = 3

[[lead]]
name = "switch lead 2 m"
plug = "2-conductor"
length_m = 2

[[lead]]
name = "stick lead 1 m"
plug = "4-conductor"
length_m = 1
price = 9

[[lead]]
name = "USB lead 1 m"
plug = "USB"
length_m = 1
in_stock = 2

[[lead]]
name = "thick to thin"
kind = "adapter"
plug = "2-conductor"          # the end towards the hub
sockets = "6.3 mm 2-conductor"

[[lead]]
name = "USB fork"
kind = "splitter"
plug = "USB"
sockets = ["USB", "USB"]

# What holds things in their place. Figures of joints and couplings were taken with weights, those of fasteners stand on an
# invented label.
[[mount]]
name = "short arm"
kind = "friction arm"
links_mm = [170, 150]
holding_nm = 5.5
give_n_per_mm = 1.7
tube_mm = [18, 36]
edge_mm = [12, 36]
mass_g = 640
rated_kg = 2
swings_away = true
setup_min = 2
in_stock = 2
take_off_s = 6                # timed, with one hand
clamp_width_mm = 40
jaw_depth_mm = 45

[[mount]]
name = "long arm"
kind = "friction arm"
links_mm = [270, 240]
holding_nm = [9, 8]
give_n_per_mm = 0.8
tube_mm = [18, 36]
mass_g = 1050
rated_kg = 2
swings_away = true
setup_min = 3
take_off_s = 9
clamp_width_mm = 50

[[mount]]
name = "gooseneck"
kind = "gooseneck"
links_mm = 300
holding_nm = 0.9
give_n_per_mm = 0.12
tube_mm = [14, 30]
edge_mm = [8, 40]
mass_g = 380
rated_kg = 0.5
setup_min = 1

[[mount]]
name = "mounting plate"
kind = "plate"
size_mm = [180, 140]
tilts_deg = [0, 25]
mass_g = 310
in_stock = 2

[[mount]]
name = "lap tray"
kind = "lap tray"
size_mm = [420, 300]
mass_g = 1400
rated_kg = 3
friction = 0.6

[[mount]]
name = "floor plate"
kind = "floor plate"
size_mm = [380, 300]
tilts_deg = [0, 25]
mass_g = 3600
friction = 0.85
setup_min = 1

[[mount]]
name = "breakaway coupling"
kind = "breakaway coupling"
release_n = [4, 16]
mass_g = 60

[[fastener]]
name = "hook-and-loop patch"
kind = "hook-and-loop"
shear_kpa = 75
tension_kpa = 42
peel_n_per_mm = 0.22
test_method = "invented label, tested after ASTM D5169 and D5170"
openings = 3000
in_stock = 10

[[fastener]]
name = "mushroom-head patch"
kind = "mushroom-head"
shear_kpa = 240
tension_kpa = 195
peel_n_per_mm = 0.9
test_method = "invented label, tested after ASTM D5169 and D5170"
openings = 700
in_stock = 6

[[fastener]]
name = "anti-slip sheet"
kind = "anti-slip sheet"
friction = 0.8
in_stock = 4
"""
