"""Results that last: a plan is the same after copying, and after it was written and read, whatever is missing in it."""

from __future__ import annotations

import copy
import json
import math
from dataclasses import replace
from functools import cache
from pathlib import Path

import jsonschema
import numpy as np
import pytest

import worked_cases
import worked_rooms
from lasting import not_finite
from stickwright.codes.cautions import Cautions
from stickwright.codes.estimate import Estimate
from stickwright.codes.kept_plans import KeptPlans
from stickwright.codes.message import Message, Name, message
from stickwright.errors import BadInput
from stickwright.files.benches import read_bench
from stickwright.files.folder import read_case
from stickwright.files.plan_schema import plan_schema
from stickwright.files.results import UnreadPlan, plan_from_json, plan_json
from stickwright.mechanics.bench import bench_stick
from stickwright.model.plan import Plan
from stickwright.planning.plan import plan
from stickwright.trace.report import trace_report
from test_claims import random_case

DEMO = Path(__file__).parents[1] / "examples" / "demo"
NAMES = ("demo", *worked_rooms.NAMES, *(f"random {seed}" for seed in range(8)))


@cache
def planned(name: str) -> Plan:
    """The demo, the five worked cases with their rooms, and random ones in which most things are missing."""
    if name == "demo":
        return plan(read_case(DEMO), draws=30)
    if name.startswith("random"):
        return plan(random_case(np.random.default_rng([13, int(name.split()[1])])), draws=24)
    kit = worked_cases.van_kit(**worked_rooms.mount_kit())
    return plan(replace(worked_cases.whole_case(name), kit=kit, room=worked_rooms.room(name)), draws=30)


@pytest.mark.parametrize("name", NAMES)
def test_a_plan_holds_nothing_that_json_cannot(name: str) -> None:
    """Nowhere in it is a NaN or an infinity, and it equals its copy."""
    made = planned(name)
    assert list(not_finite(made)) == []
    assert copy.deepcopy(made) == made


@pytest.mark.parametrize("name", NAMES)
def test_a_plan_is_read_back_equal(name: str) -> None:
    """What was written is read back as an equal plan, and that is written again as the same text; it obeys the schema."""
    made = planned(name)
    text = plan_json(made)
    again = plan_from_json(text)
    assert again == made
    assert plan_json(again) == text
    check = jsonschema.Draft202012Validator(plan_schema())
    assert [f"{error.json_path}: {error.message[:80]}" for error in check.iter_errors(json.loads(text))] == []


def test_messages_are_read_back_with_their_types() -> None:
    """Names, counts and nested messages: a name is a name again, not any text."""
    note = message(Cautions.forbidden_grip, site=Name("chin"), note=Name("no pinching"))
    nested = message(Cautions.session, blocks=message(Cautions.usual_blocks))
    made = planned("demo")
    cautions = (replace(made.cautions[0], text=note), replace(made.cautions[0], text=nested))
    again = plan_from_json(plan_json(replace(made, cautions=cautions)))
    assert again.cautions == cautions
    assert isinstance(again.cautions[0].text, Message)
    assert isinstance(again.cautions[0].text.param("site"), Name)


def test_what_is_no_plan_of_today_is_refused() -> None:
    """Another format, another text, a message or a part that is not known: said in one sentence, with where it is."""
    data = json.loads(plan_json(planned("rune")))
    gone = {"about": "effort", "site": None, "text": {"code": "Cautions.gone"}}
    more = {"about": "effort", "site": None, "text": {"code": "Cautions.pain", "force_n": 1.0}}

    def place(where: str) -> Message:
        return message(KeptPlans.other_parts, place=Name(where))

    for wrong, said in (
        ([1], message(KeptPlans.no_plan)),
        ({}, message(KeptPlans.no_plan)),
        (data | {"format": 2}, message(KeptPlans.other_format, kept=2, today=3)),
        (data | {"seed": "many"}, place("seed")),
        ({key: value for key, value in data.items() if key != "sites"}, place("sites")),
    ):
        with pytest.raises(UnreadPlan) as refused:
            plan_from_json(json.dumps(wrong))
        assert refused.value.why == said
    for caution in (gone, more):
        with pytest.raises(UnreadPlan) as refused:
            plan_from_json(json.dumps(data | {"cautions": [caution]}))
        assert str(refused.value.why.param("place")).startswith("cautions.0.text")


@pytest.mark.parametrize("samples", [2, 10, 400, 100_000])
def test_what_a_recording_told_lasts(samples: int) -> None:
    """Cut short, without one axis, without any movement, in a foreign unit: no NaN in what is told, and it equals its copy."""
    for whole in read_case(DEMO).recordings:
        first = slice(samples)
        cut = replace(
            whole, times_s=whole.times_s[first], xy=whole.xy[first],
            **{name: None if kept is None else kept[first] for name in ("cue", "cue_xy") for kept in [getattr(whole, name)]},
        )  # fmt: skip
        one_axis = np.column_stack([cut.xy[:, 0], np.full(len(cut.xy), np.nan)])
        for made in (cut, replace(cut, xy=one_axis), replace(cut, xy=np.zeros_like(cut.xy)), replace(cut, unit="volt")):
            try:
                told = trace_report(made)
            except BadInput:
                continue
            assert list(not_finite(told)) == [], made.name
            assert copy.deepcopy(told) == told


@pytest.mark.parametrize("path", sorted((DEMO / "bench").glob("*.csv")), ids=lambda path: path.stem)
def test_what_the_bench_told_lasts(path: Path) -> None:
    """Every bench of the demo: no NaN in what is told, and it equals its copy."""
    read = read_bench(path)
    height_m = 0.1 if read.height_m is None else read.height_m
    told = bench_stick(
        read.force_n, name=path.stem, height_m=height_m, angle_rad=read.angle_rad, travel_m=read.travel_m,
        output_share=read.output_share, direction_rad=read.direction_rad, outward=read.outward,
    )  # fmt: skip
    assert list(not_finite(told)) == []
    assert copy.deepcopy(told) == told


def test_the_check_finds_one() -> None:
    """A NaN in a tuple of a result is found, with its place; another response is another plan."""
    made = planned("demo")
    assert [path for path, _ in not_finite(replace(made, device_notes=(math.nan,)))] == [".device_notes[0]"]  # type: ignore[arg-type]
    tuned = made.sites[0].tunings[0]
    again = replace(tuned, after_xy=tuned.after_xy + 1e-9)
    assert again != tuned
    assert replace(tuned, after_xy=tuned.after_xy.copy()) == tuned
    assert replace(tuned, dead_zone=Estimate.missing("nobody read it")) != tuned
