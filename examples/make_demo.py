"""Makes the demo case, examples/demo, byte for byte the same each time.

Everything in it is invented: the player, the sites, the game, every stick and every number. The readings and
recordings come from simulated sticks and a simulated player whose truth is known (tests/simulated.py), so that a
plan made from them can be held against that truth. No person, product or title stands behind any of it.

    python examples/make_demo.py            writes examples/demo
    python examples/make_demo.py FOLDER     writes FOLDER
"""

from __future__ import annotations

import math
import sys
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "tests"))

from simulated import BenchTable, Sensor, SimulatedPlayer, SimulatedStick, Visit, bench_table
from stickwright.mechanics.bench import bench_stick, to_stick_fields
from stickwright.records.benches import append_stick, read_bench
from stickwright.records.recordings import write_recording

SEED = 20260314
BENCHED = "2026-02-20"
GRAM_FORCE_N = 9.80665e-3
FOUR = (0, 90, 180, 270)


@dataclass(frozen=True)
class Benched:
    """One invented stick: its truth, how it was read on the bench, and what the kit list says besides."""

    name: str
    force_class: str
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
    Benched("fennel", "standard", 0.46, 1.02, 6.5, 16, 0.020, SMALL, 85, "4-conductor", ("in_stock = 3",),
            directions_deg=FOUR, comment="small, standard force"),
    Benched("sorrel", "half", 0.23, 0.50, 6.5, 16, 0.012, SMALL, 80, "4-conductor", ("in_stock = 2",),
            directions_deg=FOUR, comment="small, half force"),
    Benched("vetch", "third", 0.15, 0.34, 6.5, 16, 0.008, (46, 40, 34), 70, "4-conductor",
            ("base_tilt_deg = 12",), unit="gf", gauge_step_n=0.001, directions_deg=(0, 90),
            comment="small, third force, base slopes 12 degrees towards the player"),
    Benched("lichen", "hyper-light", 0.060, 0.165, 5.0, 18, 0.004, (38, 38, 26), 45, "USB",
            ("current_ma = 45", "heaviest_topper_g = 6"), unit="gf", gauge_step_n=0.0005, directions_deg=FOUR,
            comment="small, hyper-light, short throw"),
    Benched("moss", "hyper-light", 0.028, 0.110, 9.0, 45, 0.003, (40, 40, 62), 110, "USB",
            ("current_ma = 70", "heaviest_topper_g = 8"), unit="gf", gauge_step_n=0.0005, directions_deg=(0, 90),
            comment="tall, hyper-light"),
    Benched("thistle", "standard", 0.50, 0.95, 4.0, 14, 0.020, (44, 40, 26), 60, "4-conductor", ("in_stock = 2",),
            back=False, comment="small, short throw; benched pushing out only, so its friction is not known"),
    Benched("bracken", "half", 0.26, 0.62, 11.0, 28, 0.015, (60, 56, 40), 120, "4-conductor",
            slipped=(5, 1.9), comment="half force, long throw; the gauge slipped in one reading"),
    Benched("teasel", "light", 0.32, 0.74, 9.0, 24, 0.015, (62, 58, 38), 130, "4-conductor",
            ("base_tilt_deg = 15",), directions_deg=FOUR, unequal=(1.0, 1.0, 1.0, 1.22),
            comment="light, base slopes 15 degrees; firmer towards the back"),
    Benched("chert", "firm", 1.10, 2.10, 5.0, 15, 0.050, (54, 50, 30), 90, "4-conductor",
            gauge_step_n=0.01, shares=(0.0, 0.5, 1.0), back=False, comment="small, firm; three readings only"),
    Benched("marl", "half", 0.24, 0.51, 6.5, 16, 0.175, SMALL, 80, "4-conductor",
            directions_deg=(0, 90), comment="an old half-force stick that no longer comes home: friction"),
    Benched("sedge", "light", 0.20, 0.48, 24.0, 60, 0.015, (120, 90, 55), 500, "USB", ("current_ma = 60",),
            comment="large, long throw, very light"),
    Benched("hawthorn", "light", 0.70, 1.45, 20.0, 50, 0.030, (160, 120, 75), 750, "USB",
            ("current_ma = 90", "base_tilt_deg = 15"), gauge_step_n=0.01, directions_deg=FOUR,
            comment="large, light, base slopes 15 degrees"),
    Benched("mallow", "standard", 1.60, 3.90, 24.0, 60, 0.070, (150, 110, 60), 800, "USB", ("current_ma = 60",),
            gauge_step_n=0.05, comment="large, long throw"),
    Benched("granite", "standard", 2.20, 4.60, 11.0, 55, 0.080, (150, 110, 70), 700, "USB", ("current_ma = 60",),
            gauge_step_n=0.05, comment="large, short throw"),
    Benched("basalt", "firm", 3.50, 8.00, 22.0, 60, 0.150, (150, 110, 60), 900, "USB", ("current_ma = 60",),
            gauge_step_n=0.05, directions_deg=(0, 90), comment="large, firm spring"),
)  # fmt: skip

KIT_HEAD = """\
# The kit of the demo case. Everything is invented: no stick here is a product of anybody.
# Written by examples/make_demo.py. Forces are at the contact point of the bare stick, pushing out; the figures of each
# stick come from its bench readings (bench/), as `stickwright bench READINGS.csv --kit kit.toml` works them out.

tilt_deg = [0, 10, 20]        # tilts of the base that can be built

# A touch surface has no spring: it was put on a scale once, and needs no bench. Travel is half the pad.
[[stick]]
name = "flint"
kind = "touch"
force_class = "touch"
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
name = "T-bar"
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
name = "daisy"
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
name = "clover"
force_n = 0.35
travel_mm = 3
face_mm = [20, 60]            # a strip
sound = "silent"
plug = "2-conductor"
cable_m = 1.5
mass_g = 25
in_stock = 2

[[switch]]
name = "tansy"
force_n = 0.9
travel_mm = 3
face_mm = 45
sound = "click"
plug = "2-conductor"
cable_m = 1.8
mass_g = 60
in_stock = 2

[[switch]]
name = "burdock"
force_n = 2.2
travel_mm = 6
face_mm = 75
sound = "click"
plug = "2-conductor"
cable_m = 1.8
mass_g = 160
in_stock = 2

[[switch]]
name = "rhubarb"
force_n = 3.8
travel_mm = 8
face_mm = 125
sound = "click"
plug = "6.3 mm 2-conductor"   # an old one with the thick plug
cable_m = 2.5
mass_g = 320

[[switch]]
name = "nettle"
kind = "proximity"            # acts without touch, when something comes near
senses_at_mm = 12
face_mm = 25
sound = "silent"
plug = "2-conductor"
cable_m = 1.5
mass_g = 30

[[controller]]
name = "yarrow"               # two-handed, as sold with consoles: for whoever helps, or for one hand
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
name = "ivy"
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

[[mount]]
name = "bindweed"
kind = "friction arm"
links_mm = [270, 240]
holding_nm = [9, 8]
give_n_per_mm = 0.8
tube_mm = [18, 36]
mass_g = 1050
rated_kg = 2
swings_away = true
setup_min = 3

[[mount]]
name = "tendril"
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
name = "gneiss"
kind = "plate"
size_mm = [180, 140]
tilts_deg = [0, 25]
mass_g = 310
in_stock = 2

[[mount]]
name = "schist"
kind = "lap tray"
size_mm = [420, 300]
mass_g = 1400
rated_kg = 3
friction = 0.6

[[mount]]
name = "dolomite"
kind = "floor plate"
size_mm = [380, 300]
tilts_deg = [0, 25]
mass_g = 3600
friction = 0.85
setup_min = 1

[[mount]]
name = "dandelion"
kind = "breakaway coupling"
release_n = [4, 16]
mass_g = 60

[[fastener]]
name = "burr"
kind = "hook-and-loop"
shear_kpa = 75
tension_kpa = 42
peel_n_per_mm = 0.22
test_method = "invented label, tested after ASTM D5169 and D5170"
openings = 3000
in_stock = 10

[[fastener]]
name = "acorn cup"
kind = "mushroom-head"
shear_kpa = 240
tension_kpa = 195
peel_n_per_mm = 0.9
test_method = "invented label, tested after ASTM D5169 and D5170"
openings = 700
in_stock = 6

[[fastener]]
name = "snail"
kind = "anti-slip sheet"
friction = 0.8
in_stock = 4
"""

ROOM = """\
# Where K7 sits, what there is to hold on to, what must stay free. Invented, chair and all.
# Written by examples/make_demo.py. Points are [right, forward, up] from the middle of where the back meets the seat, the seat
# level.

posture = "wheelchair"
tilt_from_deg = 8             # in play
tilt_to_deg = 20
tilt_pivot_mm = [0, 240, -140]
seat_to_floor_mm = 480
seat_to_armrest_mm = 235
armrest_front_mm = 410
armrests_apart_mm = 520
seat_to_tray_mm = 250
seat_to_chin_mm = 690
seat_to_eyes_mm = 800
trunk_to_tray_mm = 40
table_height_mm = 740
width_mm = 650
narrowest_door_mm = 800
floor = "carpet"

[[tube]]
name = "left armrest tube"
from_mm = [-260, 110, 208]
to_mm = [-260, 390, 208]
diameter_mm = 25

[[tube]]
name = "right armrest tube"
from_mm = [260, 110, 208]
to_mm = [260, 390, 208]
diameter_mm = 25

[[tube]]
name = "left back tube"
from_mm = [-190, -70, 280]
to_mm = [-190, -110, 560]
diameter_mm = 22

[[tube]]
name = "right back tube"
from_mm = [190, -70, 280]
to_mm = [190, -110, 560]
diameter_mm = 22
not_for_clamps = "carries the headrest"

[[tube]]
name = "left foot plate hanger"
from_mm = [-180, 480, -60]
to_mm = [-180, 590, -330]
diameter_mm = 25

[[edge]]
name = "edge of the table"
from_mm = [-600, 800, 260]
to_mm = [600, 800, 260]
thickness_mm = 28
depth_mm = 120
moves_with = "room"

[[surface]]
name = "half tray"            # on the right armrest; swings up for getting out
kind = "tray"
corner_mm = [-20, 230, 250]
size_mm = [330, 360]
material = "smooth plastic"
mass_kg = 1.9
fastened = true
rated_kg = 4
moves_with = "seat"

[[surface]]
name = "table"
kind = "table"
corner_mm = [-600, 800, 260]
size_mm = [1200, 600]
material = "wood"
mass_kg = 24
rated_kg = 40
moves_with = "room"

[[surface]]
name = "floor"
kind = "floor"
corner_mm = [-1200, -600, -480]
size_mm = [2400, 2400]
material = "carpet"
moves_with = "room"

[[keep_out]]
name = "face"
kind = "face"
low_mm = [-95, 40, 715]
high_mm = [95, 215, 930]

[[keep_out]]
name = "chair's own control"  # outside the left armrest; K7 drives with the left hand
kind = "chair control"
low_mm = [-370, 360, 200]
high_mm = [-290, 470, 340]

[[keep_out]]
name = "where K7 gets in and out"
kind = "transfer side"
low_mm = [330, -50, -400]
high_mm = [950, 650, 700]
moves_with = "base"

[[landmark]]
name = "left armrest, front end"
at_mm = [-260, 410, 235]

[[landmark]]
name = "right armrest, front end"
at_mm = [260, 410, 235]

[[landmark]]
name = "left armrest, rear bolt"
at_mm = [-285, 90, 170]

[[landmark]]
name = "half tray, far right corner"
at_mm = [310, 590, 250]

[[landmark]]
name = "middle of the seat's front edge"
at_mm = [0, 470, 0]

[[landmark]]
name = "headrest bolt"
at_mm = [0, -95, 600]

[[landmark]]
name = "edge of the table, middle"
at_mm = [0, 800, 260]
moves_with = "room"

[[place]]
site = "right index"
at_mm = [175, 420, 300]
forward_deg = 10

  [[place.tape]]
  landmark = "right armrest, front end"
  distance_mm = 107

  [[place.tape]]
  landmark = "half tray, far right corner"
  distance_mm = 223

[[place]]
site = "chin"
at_mm = [0, 190, 690]

  [[place.tape]]
  landmark = "headrest bolt"
  distance_mm = 299

[[place]]                     # by tape alone: four distances
site = "left thumb"

  [[place.tape]]
  landmark = "left armrest, front end"
  distance_mm = 61

  [[place.tape]]
  landmark = "left armrest, rear bolt"
  distance_mm = 335

  [[place.tape]]
  landmark = "right armrest, front end"
  distance_mm = 477

  [[place.tape]]
  landmark = "middle of the seat's front edge"
  distance_mm = 356

[[place]]
site = "left foot"
at_mm = [-110, 640, -350]
"""

HUB = """\
# The hub of the demo case: the box that takes sticks and switches and acts as one controller. Invented: no hub of
# anybody has these sockets. Written by examples/make_demo.py.

[[hub]]
name = "Hedgerow"
current_ma = 250              # what all its sockets together can supply
paired = 1                    # a second controller can act as the same player
plug = "USB-C"                # its own, towards the console
cable_m = 1.5

  [[hub.socket]]
  name = "gate 1"
  takes = "USB"
  role = "assignable"
  current_ma = 120

  [[hub.socket]]
  name = "gate 2"
  takes = "USB"
  role = "assignable"
  current_ma = 120

  [[hub.socket]]
  name = "stile left"
  takes = "4-conductor"
  role = "left stick"
  excludes = ["gate 1"]       # the two share one input inside

  [[hub.socket]]
  name = "stile right"
  takes = "4-conductor"
  role = "right stick"

  [[hub.socket]]
  name = "post 1"
  takes = "2-conductor"
  role = "bottom button in right cluster"

  [[hub.socket]]
  name = "post 2"
  takes = "2-conductor"
  role = "right button in right cluster"

  [[hub.socket]]
  name = "post 3"
  takes = "2-conductor"
  role = "assignable"

  [[hub.socket]]
  name = "post 4"
  takes = "2-conductor"
  role = "assignable"

  [[hub.socket]]
  name = "post 5"
  takes = "2-conductor"
  role = "assignable"
"""

GAME = """\
# The game as K7 wants to play it, in K7's own words. Invented.

name = "cave building with my cousin"
archetype = "third person, own pace: walking, digging and building, nothing hurries you"
session_min = 35
own_dead_zone_share = 0.12              # inside the game, found by pushing slowly until something moved
offers = ["dead zone", "sensitivity"]
lag_budget_ms = 60

[[action]]
name = "move"
kind = "two-axis"
importance = 9
duty_share = 0.55
usual_level_share = 0.8
longest_hold_s = 12
levels = 3
input = "left stick"
together = ["dig"]
helper = false
helper_words = "I steer myself"

  [[action.direction]]
  direction_deg = 90
  weight = 3

  [[action.direction]]
  direction_deg = 45
  weight = 1.5

  [[action.direction]]
  direction_deg = 135
  weight = 1.5

  [[action.direction]]
  direction_deg = 0
  weight = 1

  [[action.direction]]
  direction_deg = 180
  weight = 1

  [[action.direction]]
  direction_deg = 270
  weight = 0.8

[[action]]
name = "look"
kind = "two-axis"
importance = 7
duty_share = 0.3
usual_level_share = 0.5
longest_hold_s = 4
input = "right stick"
option = "the camera follows by itself"
option_price = 3
option_words = "it never looks where I want to look"
helper = false

  [[action.direction]]
  direction_deg = 0
  weight = 3

  [[action.direction]]
  direction_deg = 180
  weight = 3

  [[action.direction]]
  direction_deg = 90
  weight = 1

  [[action.direction]]
  direction_deg = 270
  weight = 1

[[action]]
name = "dig"
kind = "hold"
importance = 8
duty_share = 0.2
longest_hold_s = 6
presses_per_min = 4
busy_presses_per_min = 8
toggle = "press once to start, once to stop"
toggle_price = 1
helper_price = 7
helper_words = "digging is my part"

[[action]]
name = "place a block"
kind = "press"
importance = 7
duty_share = 0.05
presses_per_min = 6
busy_presses_per_min = 18
helper_price = 6

[[action]]
name = "swap tool"
kind = "press"
importance = 5
duty_share = 0.02
presses_per_min = 3
busy_presses_per_min = 8
helper_price = 4

[[action]]
name = "jump"
kind = "press"
importance = 4
duty_share = 0.02
presses_per_min = 3
busy_presses_per_min = 6
option = "steps up low walls by itself"
option_price = 0.5
option_words = "fine, I only jump at walls"

[[action]]
name = "menu"
kind = "press"
importance = 2
duty_share = 0.02
presses_per_min = 0.5
busy_presses_per_min = 1
false_input_costly = true
helper_price = 0.5
helper_words = "my cousin can do the menus"
"""

INDEX = SimulatedPlayer(
    force_n=(0.52, 0.47, 0.41, 0.34, 0.50, 0.55, 0.60, 0.58),
    reach_m=(0.0095, 0.0080, 0.0068, 0.0060, 0.0090, 0.0100, 0.0092, 0.0095),
    rest_n=(0.0, -0.030),
    sway_n=0.0055,
    crossing_hz=1.3,
    tremor_hz=5.4,
    tremor_n=0.005,
    limb_n_per_m=42.0,
    noise_share=0.06,
    tiring_per_min=0.016,
    aim_scatter=0.05,
    lag_s=0.32,
    follow_gain=0.88,
)
CHIN = SimulatedPlayer(
    force_n=(1.25, 1.30, 1.60, 1.35, 1.30, 0.95, 0.80, 0.90),
    reach_m=(0.0110, 0.0100, 0.0080, 0.0095, 0.0115, 0.0080, 0.0065, 0.0080),
    sway_n=0.045,
    crossing_hz=1.1,
)
SENSOR = Sensor(offset=(0.035, -0.022), noise=0.003, bits=12, rate_hz=100.0, turn_rad=math.radians(12))
TRIED = "lichen"

PLAYER = """\
# The player of the demo case. K7 is nobody: everything here is invented.
# Written by examples/make_demo.py.

code = "K7"
age_band = "adult"
visit = "2026-03-14"
session_min = 35
course = "progressive"
alerts = ["drives-chair"]
independence = 6             # what it costs K7 to leave an action to somebody else, by their own word
most_new_controls = 3
goals = [
    "dig out the great hall with my cousin, steering by myself",
    "play for half an hour and still be able to eat after",
]

[[site]]
name = "right index"
part = "fingertip"
support = "wedge under the hand"
action = "move"
gauge_readings = "readings/right-index.csv"    # first direction (forward) taken again at the end
gauge_step_n = 0.005
gauge_no_load_n = 0.0
press_rate_per_s = [1.5, 1.4]
toppers = ["low dish", "tall peg"]
liked = ["lichen"]
can_lift = false
room_mm = [110, 90]
to_hub_mm = 700              # along the tray's edge, where the cable is tied

  [[site.rest]]
  force_n = {rest_before}
  direction_deg = 270
  support = ""

  [[site.rest]]
  force_n = {rest_after}
  direction_deg = 270
  support = "wedge under the hand"

  [[site.hold]]
  duration_s = [24, 19]
  effort_share = 0.5

{recordings}
[[site]]
name = "chin"
part = "chin"
support = "head on the headrest"
action = "look"
gauge_step_n = 0.01
involuntary_force_n = 0.045
crossing_hz = 1.1
toppers = ["cup"]
cleared = "yes"              # the treating team agreed, 20 minutes at a time
room_mm = [180, 140]
setup_min = 3
to_hub_mm = 1500             # down the back of the chair
tilt_slack_mm = 300

  [[site.rest]]
  force_n = [0.02, 0.01, 0.02]
  direction_deg = 270
  support = "head on the headrest"

{chin}
[[site]]
name = "left thumb"
part = "thumb"
support = "hand on the armrest"
gauge_step_n = 0.005
crossing_hz = 1.3
to_hub_mm = 900

  [site.press]
  force_n = [0.71, 0.64, 0.68]
  rate_per_s = [1.3, 1.2]
  hold_s = [7, 6]
  release_s = [0.30, 0.35, 0.30]
  landing_mm = 2.5
  travel_mm = 8
  rest_force_n = [0.03, 0.02, 0.03]
  involuntary_force_n = 0.008

[[site]]
name = "left foot"
part = "foot"
support = "heel on the foot plate"
gauge_step_n = 0.1
crossing_hz = 1.2
minds = 1                    # shoes off first
setup_min = 2
to_hub_mm = 1900
tilt_slack_mm = 200

  [site.press]
  force_n = [7.5, 6.9, 7.8]
  rate_per_s = [0.55, 0.50]
  hold_s = [4, 5]
  landing_mm = 11
  travel_mm = 25
  rest_force_n = [0.4, 0.5, 0.4]
  involuntary_force_n = 0.10
  most_switches = 1

[[together]]                 # 20 s each: the first keeps a hold, the second presses
sites = ["right index", "left thumb"]
alone_per_s = 1.25
both_per_s = 1.10

[[together]]
sites = ["chin", "left thumb"]
says = "yes"

[[together]]
sites = ["right index", "chin"]
says = "yes"

[[together]]
sites = ["right index", "left foot"]
alone_per_s = 0.50
both_per_s = 0.45

[[helper]]
name = "cousin"
most_actions = 3
"""


def make(folder: Path) -> None:
    """Write the whole case; files of the same names are written over, nothing else is touched."""
    for part in ("bench", "readings", "recordings"):
        (folder / part).mkdir(parents=True, exist_ok=True)
    _write_kit(folder)
    (folder / "game.toml").write_text(GAME, encoding="utf-8", newline="\n")
    (folder / "hub.toml").write_text(HUB, encoding="utf-8", newline="\n")
    (folder / "room.toml").write_text(ROOM, encoding="utf-8", newline="\n")
    recordings = _write_recordings(folder)
    _write_player(folder, recordings)


def _write_kit(folder: Path) -> None:
    kit = folder / "kit.toml"
    kit.write_text(KIT_HEAD, encoding="utf-8", newline="\n")
    for number, benched in enumerate(STICKS):
        rng = np.random.default_rng([SEED, 1, number])
        table = bench_table(
            benched.stick,
            rng,
            directions_rad=tuple(math.radians(phi) for phi in benched.directions_deg),
            shares=benched.shares,
            back=benched.back,
            gauge_step_n=benched.gauge_step_n,
            unequal=benched.unequal,
            slipped=benched.slipped,
        )
        readings = folder / "bench" / f"{benched.name}.csv"
        readings.write_text(_bench_text(table, benched), encoding="utf-8", newline="\n")
        _append(kit, readings, benched)
    with kit.open("a", encoding="utf-8", newline="\n") as file:
        file.write(KIT_TAIL)


def _bench_text(table: BenchTable, benched: Benched) -> str:
    several = len(benched.directions_deg) > 1
    factor, decimals = (1 / GRAM_FORCE_N, 2) if benched.unit == "gf" else (1.0, 4)
    lines = [f"{'direction_deg,' if several else ''}travel_mm,way,force_{benched.unit}"]
    for phi, travel, out, force in zip(table.direction_rad, table.travel_m, table.outward, table.force_n, strict=True):
        cells = [f"{math.degrees(phi):.0f}"] if several else []
        cells += [f"{1e3 * travel:.2f}", "out" if out else "back", f"{factor * force:.{decimals}f}"]
        lines.append(",".join(cells))
    return "\n".join(lines) + "\n"


def _append(kit: Path, readings: Path, benched: Benched) -> None:
    """What `stickwright bench` does, with the figures rounded to what a bench by hand can tell."""
    read = read_bench(readings)
    result = bench_stick(
        read.force_n, name=benched.name, height_m=benched.height_mm / 1e3, travel_m=read.travel_m,
        direction_rad=read.direction_rad, outward=read.outward, max_travel_m=benched.travel_mm / 1e3,
        gauge_step_n=benched.gauge_step_n, benched=BENCHED,
    )  # fmt: skip
    append_stick(kit, {key: _short(value) for key, value in to_stick_fields(result).items()}, readings)
    base = ", ".join(str(side) for side in benched.base_mm)
    lines = [
        f'force_class = "{benched.force_class}"', f"base_mm = [{base}]", f"mass_g = {benched.mass_g}",
        f'plug = "{benched.plug}"', f"cable_m = {benched.cable_m}", *([] if "USB" in benched.plug else ["current_ma = 1"]),
        *benched.extra, f'note = "{benched.comment}"',
    ]  # fmt: skip
    with kit.open("a", encoding="utf-8", newline="\n") as file:
        file.write("\n".join(lines) + "\n")


def _short(value: object) -> object:
    """Four digits after the point in SI: a tenth of a millinewton, a tenth of a millimetre."""
    if isinstance(value, float):
        return round(value, 4)
    return tuple(round(each, 4) for each in value) if isinstance(value, tuple) else value


def _write_recordings(folder: Path) -> str:
    truth = next(benched.stick for benched in STICKS if benched.name == TRIED)
    visit = Visit(INDEX, truth, SENSOR, site="right index", name=TRIED)
    rng = [np.random.default_rng([SEED, 2, number]) for number in range(7)]
    made = (
        visit.rest(rng[0], seconds=20),
        visit.still(rng[1], seconds=20),
        visit.rim(rng[2], laps=5, lap_s=5.0),
        visit.push(rng[3]),
        visit.hold(rng[4], hold_s=5.0, sinking_per_s=0.004),
        visit.aim(rng[5], targets=24),
        visit.follow(rng[6], seconds=45),
    )
    entries = []
    for recording in made:
        rounded = replace(
            recording, times_s=np.round(recording.times_s, 4), xy=np.round(recording.xy, 5),
            cue_xy=None if recording.cue_xy is None else np.round(recording.cue_xy, 3),
        )  # fmt: skip
        write_recording(rounded, folder / "recordings" / recording.name)
        file, task = f"recordings/{recording.name}", recording.task
        entries.append(
            f'  [[site.recording]]\n  file = "{file}"\n  task = "{task}"\n  stick = "{TRIED}"\n  topper = "low dish"\n'
        )
    return "\n".join(entries)


def _write_player(folder: Path, recordings: str) -> None:
    rng = np.random.default_rng([SEED, 3])
    order = np.radians([90, 0, 225, 135, 270, 45, 180, 315])
    taken = INDEX.gauge_readings(
        rng, directions_rad=order, gauge_step_n=0.005, tape_step_m=0.0001, minutes=9.0
    )  # fmt: skip
    lines = ["direction_deg,force_n,reach_mm"]
    for phi, forces, reaches in taken:
        pairs = zip(forces, reaches, strict=True)
        lines += [f"{math.degrees(phi):.0f},{force:.3f},{1e3 * reach:.1f}" for force, reach in pairs]
    again = INDEX.force_at(math.pi / 2, 9.5) * np.exp(rng.normal(0, 0.12, 3))
    lines += [f"90,{round(float(force) / 0.005) * 0.005:.3f}," for force in again]
    (folder / "readings" / "right-index.csv").write_text("\n".join(lines) + "\n", encoding="utf-8", newline="\n")
    chin = []
    for phi, forces, reaches in CHIN.gauge_readings(
        rng, directions_rad=np.radians([0, 180, 90, 270, 45, 135]), gauge_step_n=0.01, tape_step_m=0.0001
    ):
        chin.append(
            f"  [[site.reading]]\n  direction_deg = {math.degrees(phi):.0f}\n"
            f"  force_n = [{', '.join(f'{force:.2f}' for force in forces)}]\n"
            f"  reach_mm = [{', '.join(f'{1e3 * reach:.1f}' for reach in reaches)}]\n"
        )
    resting = [
        f"[{', '.join(f'{usual * math.exp(rng.normal(0, 0.1)):.3f}' for _ in range(3))}]" for usual in (0.140, 0.030)
    ]
    text = PLAYER.format(
        rest_before=resting[0], rest_after=resting[1], recordings=recordings, chin="\n".join(chin)
    )  # fmt: skip
    (folder / "player.toml").write_text(text, encoding="utf-8", newline="\n")


if __name__ == "__main__":
    make(Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).resolve().parent / "demo")
