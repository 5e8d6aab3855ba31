"""Makes the demo case, examples/demo, byte for byte the same each time.

Everything in it is invented: the player, the sites, the game, every stick and every number. The readings and
recordings come from simulated sticks and a simulated player whose truth is known (tests/simulated.py), so that a
plan made from them can be held against that truth. No person, product or title stands behind any of it.

    python examples/make_demo.py            writes examples/demo
    python examples/make_demo.py FOLDER     writes FOLDER
"""

from __future__ import annotations

import math
import shutil
import sys
from dataclasses import replace
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "tests"))

from demo_kit import KIT_HEAD, KIT_TAIL, STICKS, Benched

from simulated import BenchTable, Sensor, SimulatedPlayer, Visit, bench_table
from stickwright.catalogue import say
from stickwright.codes.case_files import CaseFiles
from stickwright.codes.message import Name, message
from stickwright.files.benches import append_stick, read_bench
from stickwright.files.recordings import write_recording
from stickwright.mechanics.bench import bench_stick, to_stick_fields

DEMO = Path(__file__).resolve().parent / "demo"
BY_HAND = ("game.toml", "hub.toml", "room.toml")
"""Written by hand in the demo itself: nothing in them is worked out."""
SEED = 20260314
BENCHED = "2026-02-20"
GRAM_FORCE_N = 9.80665e-3


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
TRIED = "light stick 5 mm"

PLAYER = """\
# The player of the demo case. K7 is nobody: everything here is invented.
# Written by examples/make_demo.py.

code = "K7"
example = true               # invented, for training: recordings of the simulated player count
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
liked = ["light stick 5 mm"]
can_lift = false
room_mm = [110, 90]
to_hub_mm = 700              # from the foot of its base, along the tray's edge, where the cable is tied

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
to_hub_mm = 900              # from the clamp on the back tube, down the back of the chair
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
to_hub_mm = 500              # from the clamp on the left armrest, under the seat

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
to_hub_mm = 1500             # from the clamp on the foot plate hanger
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
    for name in BY_HAND:
        if folder.resolve() != DEMO:
            shutil.copyfile(DEMO / name, folder / name)
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
        readings = folder / "bench" / f"{benched.name.replace(' ', '-')}.csv"
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
    fields = {key: _short(value) for key, value in to_stick_fields(result).items()}
    append_stick(kit, fields, readings, comment=say(message(CaseFiles.benched, note=Name(BENCHED))))
    base = ", ".join(str(side) for side in benched.base_mm)
    lines = [
        f"base_mm = [{base}]", f"mass_g = {benched.mass_g}",
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
    make(Path(sys.argv[1]) if len(sys.argv) > 1 else DEMO)
