"""Results that last: a plan is the same after copying, whatever is missing in it."""

from __future__ import annotations

import copy
import math
from dataclasses import replace
from functools import cache
from pathlib import Path

import numpy as np
import pytest

import worked_cases
import worked_rooms
from lasting import not_finite
from stickwright.model.estimate import Estimate
from stickwright.model.plan import Plan
from stickwright.planning import plan
from stickwright.records.folder import read_case
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


def test_the_check_finds_one() -> None:
    """A NaN in a tuple of a result is found, with its place; another response is another plan."""
    made = planned("demo")
    assert [path for path, _ in not_finite(replace(made, device_notes=(math.nan,)))] == [".device_notes[0]"]  # type: ignore[arg-type]
    tuned = made.sites[0].tunings[0]
    again = replace(tuned, after_xy=tuned.after_xy + 1e-9)
    assert again != tuned
    assert replace(tuned, after_xy=tuned.after_xy.copy()) == tuned
    assert replace(tuned, dead_zone=Estimate.missing("nobody read it")) != tuned
