"""A plan made by hand, invented throughout: two sites, eight directions, one site with a choice and tuning,
one where nothing fits.

The readings follow the first worked example of practice (a finger of 0.26 N forward); the figures that would
come from planning are typed, not computed, so that the sheet is tested apart from it.
"""

from __future__ import annotations

import math
from dataclasses import fields, is_dataclass, replace

import numpy as np

from stickwright.codes.bases import Bases
from stickwright.codes.estimate import Estimate
from stickwright.codes.filters import FilterKind
from stickwright.codes.message import message
from stickwright.codes.tunings import Tunings
from stickwright.model.bench import BenchLine, BenchReading, BenchResult, OutputGain
from stickwright.model.fit import Assumption, Caution, DirectionFit, Fit
from stickwright.model.plan import Capability, Demand, DirectionCapability, NextReading, Plan, SitePlan
from stickwright.model.recorded import (
    BiasReport,
    BurstReport,
    Finding,
    HoldReport,
    PointingReport,
    ReachReport,
    RestReport,
    SmoothnessReport,
    TraceReport,
    TrackingReport,
    TremorReport,
)
from stickwright.model.response import FilterChoice, FilterTried, SimpleSettings, Tuning

DIRECTIONS = tuple(math.radians(45 * step) for step in range(8))
FORCE_N = (0.34, 0.31, 0.26, 0.28, 0.38, 0.36, 0.42, 0.38)
REACH_M = (0.009, 0.007, 0.005, 0.006, 0.010, 0.009, 0.008, 0.009)
WEIGHTS = (0.1, 0.1, 0.3, 0.1, 0.1, 0.1, 0.1, 0.1)


def about(value: float, half: float = 0.2, n: int = 24, **more: str) -> Estimate:
    """An estimate with an interval of so many per cent either side."""
    return Estimate(value, value * (1 - half), value * (1 + half), n=n, **more)


def capability(force_n: tuple[float, ...] = FORCE_N, reach_m: tuple[float, ...] = REACH_M) -> Capability:
    directions = tuple(
        DirectionCapability(
            phi,
            about(force, 0.14),
            about(reach, 0.14),
            about(force, 0.36),
            (force * 0.93, force, force * 1.07) if step != 5 else (),
            (reach * 0.95, reach, reach * 1.05) if step != 5 else (),
            "not measured" if step == 5 else ("nearly" if step == 2 else "enough"),
        )
        for step, (phi, force, reach) in enumerate(zip(DIRECTIONS, force_n, reach_m, strict=True))
    )
    return Capability(
        directions=directions,
        force_scatter_share=about(0.12, n=24),
        reach_scatter_share=about(0.12, n=24),
        tiring_share=Estimate.unbounded(0.18, "the first direction was repeated once only"),
        weakest_rad=DIRECTIONS[2],
        rest_force_n=about(0.015, 0.3, n=3),
        rest_direction_rad=DIRECTIONS[6],
        involuntary_force_n=about(0.008, 0.2, n=1),
        crossing_hz=Estimate.unbounded(1.5, "typed as one figure, without a recording"),
        limb_stiffness_n_per_m=Estimate(30.0, 15.0, 60.0, n=0, assumed="usual for a supported finger"),
        force_noise_share=Estimate(0.05, 0.03, 0.08, n=0, assumed="usual for a steady push"),
        findings=(Finding("query", "tiring", "The first direction, repeated last, was 18 % weaker after 9 minutes."),),
    )


def fit(
    stick: str,
    *,
    start_n: float,
    full_n: float,
    travel_m: float,
    height_m: float,
    able: Capability,
    verdict: str = "fits",
    bits: float = 2.0,
    chance: float = 0.1,
    dead_zone: float = 0.1,
    false_per_min: Estimate | None = None,
    limit: str = "too heavy forward: needs 0.35 N at the stop, has 0.26 N at the centre and none at 5 mm",
    help_: str = "",
    fails: tuple[str, ...] = (),
    site: str = "right index finger",
    **more: object,
) -> Fit:
    stiffness = (full_n - start_n) / travel_m
    directions = []
    for can in able.directions:
        force, reach = can.force_n.value, can.reach_m.value
        meet_m = min(travel_m, max(0.0, (force - start_n) / (force / reach + stiffness)))
        used = start_n + stiffness * meet_m
        r = meet_m / travel_m
        directions.append(
            DirectionFit(
                can.direction_rad,
                Estimate(r, max(0.0, r * 0.8), min(1.0, r * 1.2), n=2000),
                Estimate(meet_m, meet_m * 0.8, min(travel_m, meet_m * 1.2), n=2000),
                used,
                full_n,
                start_n,
                force,
                about(used / force, 0.15, n=2000),
                about(bits, 0.1, n=2000),
            )
        )
    weakest = min(directions, key=lambda one: one.reach_share.value)
    return Fit(
        site=site,
        stick=stick,
        topper=more.pop("topper", None),  # type: ignore[arg-type]
        extension=more.pop("extension", None),  # type: ignore[arg-type]
        tilt_rad=more.pop("tilt_rad", 0.0),  # type: ignore[arg-type]
        contact_height_m=height_m,
        lever_ratio=1.0,
        start_force_n=start_n,
        full_force_n=full_n,
        travel_m=travel_m,
        stiffness_n_per_m=stiffness,
        returns_share=0.0,
        directions=tuple(directions),
        weakest_rad=weakest.direction_rad,
        weakest_share=weakest.reach_share,
        mean_share=float(np.mean([one.reach_share.value for one in directions])),
        bits=about(bits, 0.1, n=2000),
        effort_share=about(max(one.effort_share.value for one in directions), 0.15, n=2000),
        duty_effort_limit=0.31,
        hold_s=Estimate(25.0, math.nan, math.nan, n=1, why="held once only"),
        hold_model="the player's own hold of 25 s at half force",
        dead_zone_share=dead_zone,
        false_per_min=false_per_min or Estimate(0.0004, 0.0, 0.002, n=2000),
        rest_deflection_share=0.0,
        probability_best=chance,
        verdict=verdict,  # type: ignore[arg-type]
        fails=fails,
        limit=limit,
        help=help_,
        **more,  # type: ignore[arg-type]
    )


def finger_fits(able: Capability) -> tuple[Fit, ...]:
    small = {"base_m": (0.054, 0.050, 0.030), "mass_kg": 0.080, "plug": "four-conductor", "able": able}
    return (
        fit(
            "dew", start_n=0.025, full_n=0.11, travel_m=0.009, height_m=0.045, able=able,
            verdict="fits with its range widened", bits=2.85, chance=0.78, dead_zone=0.25,
            false_per_min=Estimate(0.43, 0.1, 2.6, n=2000), topper="low dish", topper_form="dish",
            tilt_rad=math.radians(12), built_tilt_rad=math.radians(12),
            lever_note="a longer lever would lower the reach forward",
            base_m=(0.040, 0.040, 0.062), mass_kg=0.11, plug="USB", current_a=0.07,
            limit="reach limits it, not force: 5 mm forward of a throw of 9 mm",
            help_="per-direction range with a forward gain of 2.4 fills the output",
        ),
        fit(
            "cedar", start_n=0.107, full_n=0.233, travel_m=0.00975, height_m=0.024, bits=2.24, chance=0.2,
            verdict="does not fit", extension="+8 mm", help_="a wedge under the hand changes nothing here",
            fails=("reaches 24 % of the throw forward; 30 % is the least that a wider range can mend",),
            false_per_min=Estimate(0.0, 0.0, 0.0, n=2000), **small,
        ),
        fit("birch", start_n=0.24, full_n=0.52, travel_m=0.0065, height_m=0.016, bits=1.09, chance=0.02,
            verdict="does not fit", fails=("reaches 3 % of the throw forward",), **small),
        fit("oak", start_n=0.20, full_n=0.48, travel_m=0.024, height_m=0.060, bits=1.46, chance=0.0,
            verdict="does not fit", fails=("reaches 4 % of the throw forward",), base_m=(0.12, 0.09, 0.055), able=able),
        fit("ash", start_n=0.48, full_n=1.05, travel_m=0.0065, height_m=0.016, bits=0.0, chance=0.0,
            verdict="does not fit", fails=("cannot be moved in any direction",), **small),
    )  # fmt: skip


def filter_tried(kind: FilterKind, lag_s: float, error: float, within: bool = True, **settings: float) -> FilterTried:
    lag = Estimate(0.0, 0.0, 0.0, n=1) if lag_s == 0 else about(lag_s, 0.1)
    return FilterTried(kind, tuple(settings.items()), lag, about(error, 0.1), within)


def tuning(samples: int = 1500) -> Tuning:
    rng = np.random.default_rng(7)
    times_s = np.arange(samples) / 50.0
    angle = 2 * math.pi * times_s / 9.0
    target = np.column_stack([np.cos(angle), np.sin(angle)]) * 0.8
    reach = np.interp(np.mod(angle, 2 * math.pi), [0, math.pi / 2, math.pi, 3 * math.pi / 2, 2 * math.pi],
                      [0.7, 0.42, 0.8, 0.75, 0.7])  # fmt: skip
    before = target * reach[:, None] + np.array([0.03, -0.05]) + rng.normal(0, 0.02, (samples, 2))
    after = target + rng.normal(0, 0.02, (samples, 2))
    none = filter_tried("none", 0.0, 0.21)
    low = filter_tried("low-pass", 0.040, 0.18, cutoff_hz=4.0)
    euro = filter_tried("1-euro", 0.031, 0.16, min_cutoff_hz=1.5, beta=0.8)
    late = filter_tried("butterworth", 0.160, 0.15, within=False, cutoff_hz=1.0)
    curve_in = tuple(np.linspace(0, 1, 11))
    return Tuning(
        site="right index finger", stick="dew", recordings=("rest.csv", "rim.csv", "follow.csv"),
        offset_x=Estimate(0.031, 0.022, 0.040, n=900), offset_y=Estimate(-0.048, -0.060, -0.036, n=900),
        output_rotation_rad=Estimate(math.radians(-14), math.radians(-19), math.radians(-9), n=32),
        turn_base=message(Bases.turn, turn_rad=math.radians(14)),
        base="turn", turn_base_rad=Estimate(math.radians(14), math.radians(9), math.radians(19), n=32),
        direction_rad=DIRECTIONS,
        range_share=tuple(about(r, 0.08) for r in (0.70, 0.55, 0.42, 0.50, 0.80, 0.78, 0.75, 0.72)),
        gain=(1.43, 1.82, 2.38, 2.0, 1.25, 1.28, 1.33, 1.39),
        dead_zone=Estimate(0.22, 0.20, 0.25, n=59), inner_jump=0.15,
        curve_in=curve_in, curve_out=tuple(np.log1p(2 * np.array(curve_in)) / math.log(3)),
        curve_sentence="Gives the middle of the range more room: scatter grows from 2 % to 6 % of full output.",
        filter=FilterChoice(euro, (none, low, euro, late), 0.06,
                            "1-euro follows the target best of those within 60 ms of lag."),
        outer_limit=0.97,
        simple=SimpleSettings(20, 160, 0.09, message(
            Tunings.lost, off_centre=False, rotated_rad=None, least_factor=1.25, most_factor=2.38, uneven=False,
            unfiltered=False, rms_share=0.09)),
        sentences=("The centre lies 5.7 % back and right of the middle.", "Forward is widened 2.4 times.",
                   "The dead zone covers 95 % of rest."),
        findings=(Finding("note", "dead_zone", "The game has 15 % of its own: start just above it."),),
        before_xy=before, after_xy=after, shown_times_s=times_s, shown_recording="follow.csv", shown_target_xy=target,
    )  # fmt: skip


def trace_report(**more: object) -> TraceReport:
    told: dict[str, object] = {
        "name": "rim.csv", "task": "rim", "unit": "share", "samples": 3000, "duration_s": 60.0, "rate_hz": 50.0,
        "findings": (
            Finding("fault", "unplugged", "Both axes were exactly 0 from 12.1 to 12.9 s: the plug came out; "
                    "that stretch is left out."),
            Finding("query", "quarter_turn", "Produced directions lie 14° anticlockwise of the cues."),
        ),
        "site": "right index finger", "stick": "dew",
        "rest": RestReport(Estimate(0.031, 0.022, 0.040, n=900), Estimate(-0.048, -0.060, -0.036, n=900),
                           about(0.012), Estimate(0.002, -0.001, 0.005), ((0.0, 4.0, 0.03, -0.05),),
                           return_scatter=about(0.01)),
        "reach": ReachReport(DIRECTIONS, tuple(about(r, 0.08) for r in (0.70, 0.55, 0.42, 0.5, 0.8, 0.78, 0.75, 0.72)),
                             about(0.41, 0.08), DIRECTIONS[2]),
        "bias": BiasReport(Estimate(math.radians(14), math.radians(9), math.radians(19), n=32), 0.96, 0.001, False, 0,
                           tuple((phi, about(math.radians(14))) for phi in DIRECTIONS), about(0.08)),
        "tremor": TremorReport(False, Estimate.missing("no peak stands out"), about(0.006),
                               *[Estimate.missing("no peak stands out")] * 3, about(1.5),
                               "No peak stands out between 2 and 20 Hz."),
        "bursts": BurstReport(2, about(2.0), about(0.5), about(0.3), (20.2, 41.0)),
        "holds": (HoldReport(DIRECTIONS[2], about(0.4), about(0.02), Estimate(-0.01, -0.02, -0.002), 20.0),),
        "smoothness": SmoothnessReport(24, Estimate(-2.1, -2.4, -1.9), Estimate(-6.2, -6.8, -5.7)),
        "pointing": PointingReport(24, about(1.9), Estimate(0.04, 0.0, 0.12),
                                   (("target re-entries", about(0.6)), ("movement error", about(0.05))),
                                   ("2 movements left out: the plug came out",)),
        "tracking": TrackingReport(about(0.2), about(0.7), about(0.24), about(0.12)),
    }  # fmt: skip
    told.update(more)
    return TraceReport(**told)  # type: ignore[arg-type]


def finger_site(able: Capability | None = None) -> SitePlan:
    able = able or capability()
    fits = finger_fits(able)
    return SitePlan(
        name="right index finger", part="fingertip", support="wedge under the hand", capability=able,
        demand=Demand("move", WEIGHTS, 0.6, 1.0, 20.0, 1.0), choice=fits[0], fits=fits,
        alternatives=(replace(fits[0], extension="+8 mm", bits=about(2.9, 0.1), weakest_share=about(0.38),
                              help="no extension: reach limits it, not force"),),
        tried=64,
        sentence="dew with a low dish fits with its range widened (78 % sure); second is cedar with 8 mm more, "
        "which reaches only 24 % of its throw forward but is quiet without any wedge. The player likes dew.",
        best_extension=((math.pi / 2, 0.71, -0.0130), (0.0, 0.9, -0.0045)),
        recordings=(trace_report(),), tunings=(tuning(),),
        findings=(Finding("note", "liked", "The player said they like dew: it is also the first choice."),),
        base_turn_rad=Estimate(math.radians(14), math.radians(9), math.radians(19), n=32),
    )  # fmt: skip


def thumb_site() -> SitePlan:
    able = capability(tuple(0.4 * force for force in FORCE_N), tuple(0.4 * reach for reach in REACH_M))
    fits = tuple(
        replace(one, site="left thumb", verdict="does not fit", dead_zone_share=0.3, probability_best=0.0,
                fails=one.fails or ("reaches 21 % of the throw forward",),
                help="a stick of half the throw would reach 42 % forward")
        for one in finger_fits(able)
    )  # fmt: skip
    return SitePlan(
        name="left thumb", part="thumb", support="", capability=able,
        demand=Demand("look", (0.125,) * 8, 0.4, 0.5, None, 1.0), choice=None, fits=fits, alternatives=(), tried=64,
        sentence="Nothing in this kit fits the left thumb; dew comes nearest and reaches 17 % of its throw forward.",
        best_extension=(), recordings=(), tunings=(),
        findings=(Finding("query", "coarse gauge", "The gauge reads in steps of 0.01 N, which is coarse here."),),
    )  # fmt: skip


CAUTIONS = (
    Caution("session", None, "Stop for pain, new numbness, colour change, breathlessness or distress. "
            "Start with 10 minutes, then rest."),
    Caution("site", "right index finger", "Keep the chair's own control free and its drive switched off while "
            "playing."),
    Caution("effort", "right index finger", "No training with heavier sticks: agree any change of effort with the "
            "treating team."),
    Caution("false_input", "right index finger", "Without the wedge the resting hand keeps this stick deflected."),
    Caution("force", "left thumb", "Comfortable force only; no maximal pushes at a joint that hurts."),
)  # fmt: skip
ASSUMPTIONS = (
    Assumption("limb stiffness, right index finger", "0.03 N/mm", "nobody measured it",
               "holding still on two sticks of different stiffness"),
    Assumption("fall-off of force with reach", "straight line to the free reach", "no reading along the reach",
               "force at half and at full reach in two directions"),
    Assumption("comfortable force as a share of maximal", "50 %", "a maximal push was not taken",
               "the treating team's word, never a maximal push for its own sake"),
)  # fmt: skip


def sample_plan() -> Plan:
    return Plan(
        version="0.1.0", case="demo", made_on="2026-11-25", player="K7", game="adventure at her own pace",
        visit="2026-11-20", sites=(finger_site(), thumb_site()),
        sentence="Right index finger on dew with a low dish, no extension, with the wedge.",
        next_reading=NextReading(
            False, "right index finger", DIRECTIONS[2], "reach", 0.78, 0.86,
            "Three more reach readings forward at the right index finger would raise the chance that dew is right "
            "from 78 to 86 %.",
            (("right index finger", DIRECTIONS[2], "reach", 0.86),
             ("right index finger", DIRECTIONS[1], "force", 0.80)),
        ),
        cautions=CAUTIONS, assumptions=ASSUMPTIONS,
        findings=(Finding("note", "stock", "One dew is in stock."),), seed=20261125, draws=2000,
    )  # fmt: skip


def nothing_fits_plan() -> Plan:
    return replace(
        sample_plan(), sites=(thumb_site(),), sentence="Nothing in this kit fits yet.",
        next_reading=NextReading(True, None, None, "", 0.9, 0.9,
                                 "Enough is measured: another reading would not change it."),
        cautions=(CAUTIONS[0], CAUTIONS[4]),
    )  # fmt: skip


def crowded_plan() -> Plan:
    """Twelve sticks, long names, a caution about every number: what must still fit on four pages."""
    long_name = "left residual limb just below the elbow, resting on the padded armrest of the powered chair"
    site = finger_site()
    assert site.choice is not None
    rename = {"site": long_name, "stick": "small third-force stick with the sloped base and the long lead"}
    fits = tuple(
        replace(site.fits[step % 5], **rename, topper="foam ball of 48 mm, washable, single player")
        for step in range(12)
    )
    crowded = replace(
        site, name=long_name, fits=fits, choice=fits[0], support="two towels and a wedge under the forearm"
    )
    cautions = tuple(
        Caution(about_, long_name, f"{about_.replace('_', ' ').capitalize()} caution in a long sentence: agree it with the treating "
                "team, follow local rules and the seating clinic, and look at the skin after 10 and then 30 minutes.")
        for about_ in ("effort", "hold", "force", "site", "false_input", "session", "dead zone")
    )  # fmt: skip
    return replace(
        sample_plan(), player="K7-second-visit-after-re", sites=(crowded, thumb_site()), cautions=cautions,
        assumptions=ASSUMPTIONS * 2,
    )  # fmt: skip


def without_intervals(part: object) -> object:
    """The same result with every interval missing and a reason given: what one reading of everything leaves."""
    if isinstance(part, Estimate):
        return Estimate.unbounded(part.value, part.why or "one reading only", assumed=part.assumed)
    if isinstance(part, tuple):
        return tuple(without_intervals(one) for one in part)
    if is_dataclass(part) and not isinstance(part, type):
        return replace(part, **{field.name: without_intervals(getattr(part, field.name)) for field in fields(part)})
    return part


def bare_plan() -> Plan:
    """Readings only: no interval anywhere, no recording, no tuning, no topper, no sizes, nothing liked."""
    site = finger_site()
    assert site.choice is not None
    bare = replace(site.choice, topper=None, topper_form="", tilt_rad=0.0, built_tilt_rad=0.0,
                   lever_note="", base_m=None, mass_kg=None, plug="",
                   current_a=None, hold_s=Estimate.missing("never held"))  # fmt: skip
    plan = replace(
        sample_plan(), made_on="", visit="", cautions=(), assumptions=(), findings=(),
        sites=(replace(site, choice=bare, fits=(bare,), alternatives=(), best_extension=(), recordings=(), tunings=(),
                       findings=(), support=""),),
        next_reading=NextReading(False, None, None, "recording", 0.5, 0.6, "Record a minute of holding still.",
                                 (("right index finger", None, "recording", 0.6),)),
    )  # fmt: skip
    stripped = without_intervals(plan)
    assert isinstance(stripped, Plan)
    return stripped


def empty_plan() -> Plan:
    """No site could be planned."""
    return replace(
        sample_plan(), sites=(), sentence="No site could be planned: take the force in four directions.",
        next_reading=NextReading(False, None, math.pi / 2, "force", 0.0, 0.0, "Take the force forward, three times."),
        cautions=CAUTIONS[:1], assumptions=(), findings=(),
    )  # fmt: skip


def bench_result(**more: object) -> BenchResult:
    """Six readings out, four back, one of them contradicted; friction told apart."""
    line = BenchLine(
        None, about(0.0076), about(0.022), about(0.0008), about(0.52, 0.1), about(1.06, 0.08),
    )  # fmt: skip
    angles = (0.05, 0.15, 0.25, 0.32, 0.38, 0.40)
    readings = [
        BenchReading(step, 0.0, angle, (0.0076 + 0.022 * angle + way * 0.0008) / 0.016, way > 0, 0.016, None, True)
        for step, (angle, way) in enumerate([*((a, 1) for a in angles), *((a, -1) for a in angles[:4])], start=1)
    ]
    readings.append(BenchReading(11, 0.0, 0.2, 2.4, True, 0.016, None, False, about(0.8)))
    measured: dict[str, object] = {
        "name": "ash", "height_m": 0.016, "max_angle_rad": 0.40, "travel_m": about(0.0062, 0.02), "pooled": line,
        "directions": (replace(line, direction_rad=0.0), replace(line, direction_rad=math.pi / 2)), "unequal": False,
        "friction_force_n": about(0.05), "residual_share": Estimate(0.0, 0.0, 0.01, n=10),
        "returns": "returns by itself: yes", "scatter_share": 0.04,
        "output": OutputGain(about(0.8, 0.05), about(0.04)), "readings": tuple(readings),
        "findings": (Finding("query", "contradicted", "Reading 11 says 2.4 N; the others say 0.80 N: take it again."),),
        "benched": "2026-11-20",
    }  # fmt: skip
    measured.update(more)
    return BenchResult(**measured)  # type: ignore[arg-type]
