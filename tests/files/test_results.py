"""The plan as JSON: everything, finite, in order."""

from __future__ import annotations

import json
import math
from dataclasses import fields, is_dataclass, replace
from typing import Any

import numpy as np
import pytest
from sample_plan import bare_plan, empty_plan, sample_plan, tuning

from stickwright.codes.estimate import Estimate
from stickwright.codes.kept_plans import KeptPlans
from stickwright.codes.message import Message, message, message_of
from stickwright.files.results import FORMAT, as_data, plan_json, read_json
from stickwright.model.recorded import Finding


def refuse(word: str) -> Any:
    raise AssertionError(f"{word} is not JSON")


def same(result: Any, data: Any, where: str = "plan") -> None:
    """Walk result and JSON side by side: nothing lost, nothing altered. A message's parameters stand beside its code."""
    if isinstance(result, Message):
        same({"code": result.code} | dict(result.params), data, where)
        return
    if isinstance(result, dict):
        assert result.keys() == data.keys(), where
        for key, value in result.items():
            same(value, data[key], f"{where}.{key}")
        return
    if is_dataclass(result) and not isinstance(result, type):
        for field in fields(result):
            if not (isinstance(result, Estimate) and field.name == "why"):
                same(getattr(result, field.name), data[field.name], f"{where}.{field.name}")
        return
    if isinstance(result, np.ndarray):
        result = result.tolist()
    if isinstance(result, tuple | list):
        assert len(result) == len(data), where
        for place, (one, other) in enumerate(zip(result, data, strict=True)):
            same(one, other, f"{where}[{place}]")
        return
    if isinstance(result, float) and not math.isfinite(result):
        assert data is None, where
        return
    assert data == result, where


@pytest.mark.parametrize("make", [sample_plan, bare_plan, empty_plan])
def test_everything_is_written_and_reads_back(make: Any) -> None:
    """Each number of the plan reads back as it was; not-a-number reads back as null."""
    plan = make()
    data = json.loads(plan_json(plan), parse_constant=refuse)
    assert data["format"] == FORMAT
    same(plan, data)


def test_null_estimate_says_why() -> None:
    """Wherever an estimate has a null, a sentence stands beside it."""

    def walk(data: Any) -> int:
        if isinstance(data, dict):
            if {"value", "low", "high", "why"} <= data.keys():
                missing = None in (data["value"], data["low"], data["high"])
                assert not missing or data["why"]
                return int(missing)
            return sum(walk(one) for one in data.values())
        return sum(walk(one) for one in data) if isinstance(data, list) else 0

    assert walk(json.loads(plan_json(bare_plan()))) > 50
    endless = as_data(Estimate(2.0, 1.0, math.inf))
    assert (endless["low"], endless["high"], endless["endless"]) == (1.0, None, True)


def test_equal_plans_are_equal_text_in_field_order() -> None:
    """The same plan is the same text, keys in the order in which the plan declares them."""
    assert plan_json(sample_plan()) == plan_json(sample_plan())
    keys = list(json.loads(plan_json(sample_plan())))
    assert keys[keys.index("version") :] == [field.name for field in fields(sample_plan())]


def test_set_up_has_its_name() -> None:
    """Each fit carries its set-up in words, as on the sheet."""
    data = json.loads(plan_json(sample_plan()))
    assert data["sites"][0]["choice"]["label"] == "dew + low dish + base raised 12°"


def test_plan_kept_under_the_earlier_names_is_read_under_todays() -> None:
    """Format 1 had one key, `rotation_rad`, for the measured error and for its correction; each is read under its own name,
    and nothing else is touched."""
    bias, tuning = (
        {"rotation_rad": {"value": 0.2}, "mirrored": False},
        {"rotation_rad": {"value": -0.2}, "stick": "yew"},
    )
    kept = {"format": 1, "sites": [{"recordings": [{"bias": bias}, {"bias": None}], "tunings": [tuning]}]}
    (site,) = read_json(json.dumps(kept))["sites"]
    assert site["recordings"] == [{"bias": {"error_rotation_rad": {"value": 0.2}, "mirrored": False}}, {"bias": None}]
    assert site["tunings"] == [{"output_rotation_rad": {"value": -0.2}, "stick": "yew"}]
    assert read_json(json.dumps({"format": FORMAT, "bias": {"rotation_rad": 1}})) == {
        "format": FORMAT,
        "bias": {"rotation_rad": 1},
    }


def test_settings_with_a_fault_are_marked() -> None:
    """A program that reads the file need not look through the findings; a query is no fault."""
    good = replace(tuning(), findings=(Finding("query", "gain limit", "Far."),))
    bad = replace(good, findings=(*good.findings, Finding("fault", "wide dead zone", "Too wide.")))
    assert [as_data(one)["at_fault"] for one in (good, bad)] == [False, True]  # type: ignore[index,call-overload]


@pytest.mark.parametrize("kept_format", [1, 2])
def test_a_tremor_kept_with_its_earlier_size_is_read_without_a_size(kept_format: int) -> None:
    """The earlier size was that of the calm windows, which is none of today's: those read null with the reason, the frequency
    as it was, and a tremor of today is left alone."""
    tremor = {"stands_out": True, "frequency_hz": {"value": 5.1}, "rms": {"value": 0.03, "low": 0.02, "high": 0.04}}
    kept = {"format": kept_format, "sites": [{"recordings": [{"tremor": tremor}, {"tremor": None}]}]}
    first, second = read_json(json.dumps(kept))["sites"][0]["recordings"]
    assert second == {"tremor": None}
    assert "rms" not in first["tremor"]
    assert first["tremor"]["frequency_hz"] == {"value": 5.1}
    for size in ("band_rms", "peak_rms", "excess_rms"):
        assert first["tremor"][size]["value"] is None
        assert message_of(first["tremor"][size]["why"]) == message(KeptPlans.other_tremor)
    today = {"format": FORMAT, "tremor": {"band_rms": {"value": 0.03}}}
    assert read_json(json.dumps(today)) == today
