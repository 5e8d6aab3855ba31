"""The sticks of a kit beside each other."""

from __future__ import annotations

import re

from said import said
from stickwright.model.kit import Kit
from stickwright.report.figures_kit import kit_forces, kit_forces_alt

KIT = Kit.model_validate(
    {"stick": [
        {"name": "oak", "start_force_n": 1.0, "full_force_n": 2.5, "travel_mm": 9},
        {"name": "pad", "kind": "touch", "start_force_n": 0, "full_force_n": 0, "travel_mm": 20},
        {"name": "elm", "start_force_n": 0.2, "full_force_n": 0.5, "travel_mm": 6.5},
    ]}
)  # fmt: skip


def test_lightest_first_with_the_travel_beside() -> None:
    """Names from top to bottom by the force at the stop; a touch surface has a place too."""
    texts = re.findall(r">([^<>]+)</text>", kit_forces(KIT))
    assert [text for text in texts if text in ("oak", "pad", "elm")] == ["pad", "elm", "oak"]
    assert {"9.0 mm", "20.0 mm", "6.5 mm"} <= set(texts)


def test_the_same_in_a_sentence() -> None:
    """For who does not see it: how many, and both ends with their force."""
    assert said(kit_forces_alt(KIT)) == (
        "3 sticks from lightest to heaviest: pad with 0 N at full travel, to oak with 2.5 N."
    )


def test_equal_kits_give_equal_bytes() -> None:
    assert kit_forces(KIT) == kit_forces(KIT.model_copy())


def test_one_stick_is_told_with_both_of_its_forces() -> None:
    """By hand: in words as on the chart, from the force that leaves the centre to the one at full travel."""
    kit = Kit.model_validate(
        {"stick": [{"name": "elm", "start_force_n": 0.21, "full_force_n": 0.57, "travel_mm": 6.5}]}
    )
    told = kit_forces_alt(kit)
    assert told.index("elm") < told.index("0.21") < told.index("0.57")


def test_every_stick_has_room_for_its_name() -> None:
    """Names in 9-point type take 4 mm; from 2 to 22 sticks the chart grows by 5 mm or more for each, and not in width."""

    def size_mm(many: int) -> tuple[float, float]:
        sticks = [
            {"name": f"s{n}", "start_force_n": 0.2, "full_force_n": 0.5 + n, "travel_mm": 6.5} for n in range(many)
        ]
        found = re.search(r'<svg[^>]*?\bwidth="([\d.]+)pt"', kit_forces(Kit.model_validate({"stick": sticks})))
        tall = re.search(r'<svg[^>]*?\bheight="([\d.]+)pt"', kit_forces(Kit.model_validate({"stick": sticks})))
        assert found is not None
        assert tall is not None
        return float(found[1]) * 25.4 / 72, float(tall[1]) * 25.4 / 72

    (wide, low), (same, high) = size_mm(2), size_mm(22)
    assert high - low >= 20 * 5
    assert same == wide
