"""Devices held at once: switches, what a press does to what holds them, and one stock for all sites."""

from __future__ import annotations

import math
from collections import Counter
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from said import said
from stickwright.codes.message import message
from stickwright.codes.mount_answers import MountAnswers
from stickwright.model.kit import Kit, Switch
from stickwright.model.mounting import SiteMount
from stickwright.model.player import Player
from stickwright.model.room import Room
from stickwright.mounting.choose import site_mount
from stickwright.mounting.compliance import tip_shares
from stickwright.mounting.held import HeldDevice, held_controller, held_switch
from stickwright.mounting.statics import Pushes
from stickwright.mounting.together import WantedMount, mounts_together

TABLE = {"name": "table", "corner_mm": [-600, 250, 270], "size_mm": [1200, 700], "material": "wood", "mass_kg": 25}
TUBE = {"name": "armrest tube", "from_mm": [250, 100, 200], "to_mm": [250, 400, 200], "diameter_mm": 25}
LEFT = {**TUBE, "name": "left tube", "from_mm": [-250, 100, 200], "to_mm": [-250, 400, 200]}
ARM = {"name": "arm", "kind": "friction arm", "links_mm": [200, 200], "holding_nm": [7], "give_n_per_mm": 2,
       "mass_g": 600, "tube_mm": [16, 40]}  # fmt: skip
SOFT = {**ARM, "name": "soft arm", "give_n_per_mm": 0.4}
TAPE = {
    "name": "tape",
    "kind": "hook-and-loop",
    "shear_kpa": 60,
    "tension_kpa": 35,
    "test_method": "sheet",
    "in_stock": 9,
}
DISC = Switch(name="disc", force_n=0.9, travel_m=0.003, face_m=(0.045,), mass_kg=0.06)
PLAYER = Player.model_validate(
    {"code": "P1", "site": [{"name": name, "part": "hand"} for name in ("right hand", "left hand")]}
)
RIGHT, OTHER = PLAYER.site
PLACES = [{"site": "right hand", "at_mm": [200, 450, 290]}, {"site": "left hand", "at_mm": [-200, 450, 290]}]


def room_of(**data: Any) -> Room:
    return Room.model_validate({"place": PLACES, **data})


def kit_of(*mounts: dict[str, Any], fasteners: tuple[dict[str, Any], ...] = (TAPE,)) -> Kit:
    stick = {"name": "stick", "contact_height_mm": 50, "start_force_n": 0.5, "full_force_n": 2, "travel_mm": 10}
    pad = {"name": "pad", "mass_g": 260, "press_force_n": 0.9}
    return Kit.model_validate({"stick": [stick], "controller": [pad], "mount": mounts, "fastener": fasteners})


def held(room: Room, kit: Kit, push_n: float = 3.0, device: HeldDevice | None = None) -> SiteMount:
    return site_mount(
        RIGHT, device or held_switch(DISC), room, kit, Pushes(push_n), player=PLAYER, direction_rad=(), reach_m=()
    )


def two(room: Room, kit: Kit, right: float = 8.0, left: float = 5.0) -> tuple[SiteMount, ...]:
    each = [
        WantedMount(site, held_switch(DISC), Pushes(3.0), points) for site, points in ((OTHER, left), (RIGHT, right))
    ]
    return mounts_together(each, room, kit, PLAYER)


def test_a_switch_lies_on_the_table() -> None:
    """A switch 20 mm high under a hand 20 mm above the table: on the table, fixed; its base and press are told as counted."""
    result = held(room_of(surface=[TABLE]), kit_of())
    assert result.kind == "switch"
    assert result.choice is not None
    assert said(result.sentence) == "disc for right hand: on the table, fixed with tape."
    assert result.pose is not None
    assert result.pose.base_m == pytest.approx((0.2, 0.45, 0.27))
    assert result.pose.tolerance_m == 0.0225  # half its face
    assert any(
        "base of disc was not measured: taken as 50 × 50 mm, 20 mm high" in said(one) for one in result.choice.assumed
    )


def test_a_measured_base_is_taken() -> None:
    """Its own height decides where it stands; nothing of it is assumed."""
    known = held_switch(DISC.model_copy(update={"base_m": (0.08, 0.07, 0.03)}))
    assert (known.base_m, known.assumed) == ((0.08, 0.07, 0.03), ())
    result = held(room_of(surface=[TABLE]), kit_of(), device=known)
    assert result.pose is not None
    assert result.pose.base_m[2] == pytest.approx(0.290 - 0.030)


def test_a_proximity_switch_stays_clear_of_the_part() -> None:
    """It acts at 12 mm: its face stands so far below the resting part, and nothing presses it."""
    near = held_switch(Switch(name="nettle", kind="proximity", senses_at_m=0.012, face_m=(0.025,), mass_kg=0.03))
    result = held(room_of(tube=[TUBE]), kit_of(ARM), 0.0, near)
    assert result.pose is not None
    assert result.pose.base_m[2] == pytest.approx(0.290 - 0.012 - 0.020)
    assert result.choice is not None
    assert result.choice.lost_share == 0.0


def test_a_press_from_above_helps_its_friction_a_spasm_does_not() -> None:
    """2 kg on anti-slip sheet of 0.8 under a press of 10 N: 15 N along it, held by 0.8 x (19.6 + 15) = 27.7 N; a spasm of 15 N
    comes from the side and has 15.7 N against it. A stick is pushed sideways and has that too."""
    sheet = {"name": "sheet", "kind": "anti-slip sheet", "friction": 0.8}
    heavy = held_switch(DISC.model_copy(update={"mass_kg": 2.0, "base_m": (0.3, 0.3, 0.02)}))
    kit = kit_of(fasteners=(sheet,))

    def factors(device: HeldDevice) -> list[float]:
        found = site_mount(
            RIGHT,
            device,
            room_of(surface=[TABLE]),
            kit,
            Pushes(10.0, 15.0),
            player=PLAYER,
            direction_rad=(),
            reach_m=(),
        )
        fit = next(one for one in found.fits if one.fastener == "sheet")
        return [round(check.factor, 3) for check in fit.checks if check.what == "sliding"]

    weight = 2 * 9.80665
    assert factors(heavy) == [round(0.8 * (weight + 15) / 15, 3), round(0.8 * weight / 15, 3)]
    assert factors(replace(heavy, kind="stick")) == [round(0.8 * weight / 15, 3)] * 2


def test_nothing_is_stuck_to_a_floor() -> None:
    """A foot switch on the floor: friction, or a plate to which it is fixed; no tape on the floor itself. The plate is the kit's,
    one for one site."""
    floor = {
        "name": "floor",
        "kind": "floor",
        "corner_mm": [-900, -500, 270],
        "size_mm": [1800, 1800],
        "material": "carpet",
    }
    plate = {"name": "plate", "kind": "floor plate", "size_mm": [400, 300], "mass_g": 4000, "friction": 0.9}
    first, second = two(room_of(surface=[floor]), kit_of(plate))
    assert first.choice is not None
    assert said(first.sentence) == "disc for right hand: on plate on the floor, fixed with tape."
    assert {(fit.mount, fit.fastener) for fit in first.fits} == {("plate", "tape"), ("floor", None)}
    assert "the only plate in the kit is needed at right hand" in said(second.findings[0].text)


def test_two_of_a_kind_weigh_twice_on_an_arm() -> None:
    """A pair on one arm: the first joint carries one more switch; each keeps its own piece of fastener."""
    heavy = replace(held_switch(DISC), mass_kg=0.5)
    one, pair = (held(room_of(tube=[TUBE]), kit_of(ARM), device=replace(heavy, pieces=n)) for n in (1, 2))
    assert one.choice is not None
    assert pair.choice is not None
    assert said(pair.sentence).startswith("2 \N{MULTIPLICATION SIGN} disc for right hand: on arm")
    loads = [
        next(check.load for check in mount.choice.checks if check.what == "joint_1")
        for mount in (one, pair)
        if mount.choice
    ]
    assert loads[1] > loads[0]
    assert message(MountAnswers.pieces, count=2, device="disc") in pair.choice.parts


def test_give_takes_of_the_travel() -> None:
    """0.9 N on 0.4 N/mm is 2.25 mm of the 3 mm that the face moves: three quarters."""
    result = held(room_of(tube=[TUBE]), kit_of(SOFT))
    assert result.choice is not None
    assert result.choice.lost_share == pytest.approx(0.75)
    assert said(result.sentence).endswith("its flex takes 75% of the travel.")


def test_give_beyond_the_travel_may_not_fire() -> None:
    """0.9 N on 0.25 N/mm is 3.6 mm, more than the 3 mm of its travel: not held so, and it says why."""
    result = held(room_of(tube=[TUBE]), kit_of({**SOFT, "give_n_per_mm": 0.25}))
    assert result.choice is None
    assert (
        "disc may not activate: its activation force of 0.90 N flexes soft arm by 3.6 mm, more than its whole travel of 3.0 mm"
        in [said(one) for one in result.fits[0].fails]
    )


def test_give_beyond_what_the_part_pushes_may_not_fire() -> None:
    """The part pushes in 5 mm; 3 mm of travel and 2.25 mm of give are more. With 6 mm it is enough."""
    device = held_switch(DISC, presses_in_m=0.005)
    (query,) = [one for one in held(room_of(tube=[TUBE]), kit_of(SOFT), device=device).findings if one.about == "give"]
    assert "disc on soft arm may not activate: its travel of 3.0 mm and the mount's flex of 2.2 mm" in said(query.text)
    enough = held_switch(DISC, presses_in_m=0.006)
    assert held(room_of(tube=[TUBE]), kit_of(SOFT), device=enough).findings == ()


def test_give_of_an_unknown_travel_is_not_known() -> None:
    """Nobody measured how far it moves: no share is made up, and it is held all the same."""
    unknown = held_switch(DISC.model_copy(update={"travel_m": 0.0}))
    result = held(room_of(tube=[TUBE]), kit_of(SOFT), device=unknown)
    assert result.choice is not None
    assert result.choice.lost_share is None


def test_a_controller_for_its_buttons_is_held() -> None:
    """Weighed, not measured: held on the table, with its weight."""
    result = held(room_of(surface=[TABLE]), kit_of(), device=held_controller("pad", kit_of()))
    assert result.kind == "controller"
    assert result.choice is not None
    assert not any("not weighed" in said(one) for one in result.choice.assumed)


@settings(max_examples=25, deadline=None)
@given(press=st.floats(0.1, 20), more=st.floats(1.0, 5.0), arm=st.booleans())
def test_a_harder_press_never_raises_a_factor(press: float, more: float, arm: bool) -> None:
    """Every check of every way, one by one."""
    room, kit = room_of(**({"tube": [TUBE]} if arm else {"surface": [TABLE]})), kit_of(ARM)
    light, heavy = (held(room, kit, force) for force in (press, press * more))
    factors = [
        {(fit.mount, fit.fastener, check.what, check.push): check.times for fit in mount.fits for check in fit.checks}
        for mount in (light, heavy)
    ]
    assert set(factors[0]) == set(factors[1])
    for key, factor in factors[0].items():
        assert factors[1][key] <= factor * (1 + 1e-9) or math.isnan(factor)


def test_the_site_that_matters_most_chooses_first() -> None:
    """One stiff arm and a soft one: the right hand matters more and has the stiff one, the left the soft one, and says so; the
    other way round when the left matters more."""
    room, kit = room_of(tube=[TUBE, LEFT]), kit_of(ARM, SOFT)
    for right, left, names in ((8, 5, ["right hand", "left hand"]), (5, 8, ["left hand", "right hand"])):
        result = two(room, kit, right, left)
        assert [one.site for one in result] == names
        assert [one.choice.mount for one in result if one.choice] == ["arm", "soft arm"]
        (note,) = [one for one in result[1].findings if one.about == "stock"]
        assert said(note.text).startswith(f"{names[1]}: disc would have had arm on the ")
        told = f"the only arm in the kit is needed at {names[0]}, which matters more. This is the next best."
        assert told in said(note.text)
        assert next(fit.taken_by for fit in result[1].fits if fit.mount == "arm" and fit.verdict == "holds") == (
            names[0],
        )


def test_of_equals_the_first_told_chooses() -> None:
    """Both matter as much: the one that the plan tells first, and the sentence does not say that it matters more."""
    result = two(room_of(tube=[TUBE, LEFT]), kit_of(ARM, SOFT), 5, 5)
    assert [one.site for one in result] == ["left hand", "right hand"]
    assert "needed at left hand, which was entered first" in said(result[1].findings[0].text)


def test_with_nothing_left_it_asks_to_borrow() -> None:
    """One arm for two sites: the second is told what it would have had, and that nothing else holds it."""
    first, second = two(room_of(tube=[TUBE, LEFT]), kit_of(ARM))
    assert first.choice is not None
    assert second.choice is None
    (query,) = [one for one in second.findings if one.about == "stock"]
    assert query.level == "query"
    assert said(query.text).endswith("Nothing else in the kit holds it: borrow one more.")


def test_a_table_serves_many() -> None:
    """What belongs to the room is no stock: both switches lie on the same table, with a piece of tape each."""
    result = two(room_of(surface=[TABLE]), kit_of())
    assert [one.choice.on for one in result if one.choice] == ["table", "table"]
    assert [one.about for mount in result for one in mount.findings] == []


def test_a_single_piece_of_fastener_is_used_once() -> None:
    """One piece of strong fastener, plenty of tape: the second site has the tape."""
    strong = {**TAPE, "name": "a strong one", "tension_kpa": 200, "shear_kpa": 300, "in_stock": 1}
    first, second = two(room_of(surface=[TABLE]), kit_of(fasteners=(strong, TAPE)))
    assert first.choice is not None
    assert second.choice is not None
    assert (first.choice.fastener, second.choice.fastener) == ("a strong one", "tape")


@settings(max_examples=20, deadline=None)
@given(
    stock=st.tuples(*[st.integers(0, 2)] * 3), right=st.integers(0, 10), left=st.integers(0, 10), table=st.booleans()
)
def test_two_sites_never_share_one(stock: tuple[int, int, int], right: int, left: int, table: bool) -> None:
    """Whatever there is and whoever matters more: no more is chosen of anything than there is."""
    arm, soft, tape = ({**part, "in_stock": count} for part, count in zip((ARM, SOFT, TAPE), stock, strict=True))
    kit = kit_of(arm, soft, fasteners=(tape,))
    room = room_of(tube=[TUBE, LEFT], **({"surface": [TABLE]} if table else {}))
    used: Counter[str] = Counter()
    for mount in two(room, kit, right, left):
        if mount.choice is not None:
            used.update([mount.choice.mount, *([mount.choice.fastener] if mount.choice.fastener else [])])
    limits = dict(zip(("arm", "soft arm", "tape"), stock, strict=True))
    assert all(count <= limits.get(name, 2) for name, count in used.items())


@settings(max_examples=15, deadline=None)
@given(x=st.integers(-300, 300), y=st.integers(-100, 300), z=st.integers(-200, 300))
def test_all_moved_together_nothing_changes(x: int, y: int, z: int) -> None:
    """Places, tubes and table moved by the same way: the same mounts, fasteners, verdicts and factors."""

    def moved(point: list[int]) -> list[int]:
        return [at + by for at, by in zip(point, (x, y, z), strict=True)]

    tubes = [{**tube, "from_mm": moved(tube["from_mm"]), "to_mm": moved(tube["to_mm"])} for tube in (TUBE, LEFT)]  # type: ignore[arg-type]
    places = [{**place, "at_mm": moved(place["at_mm"])} for place in PLACES]  # type: ignore[arg-type]
    table = {**TABLE, "corner_mm": moved(TABLE["corner_mm"])}  # type: ignore[arg-type]
    kit = kit_of(ARM, SOFT)
    here = two(room_of(tube=[TUBE, LEFT], surface=[TABLE]), kit)
    there = two(room_of(tube=tubes, place=places, surface=[table]), kit)
    for one, other in zip(here, there, strict=True):
        assert (one.site, said(one.sentence)) == (other.site, said(other.sentence))
        assert [(fit.mount, fit.verdict, fit.taken_by) for fit in one.fits] == [
            (fit.mount, fit.verdict, fit.taken_by) for fit in other.fits
        ]
        for fit, same in zip(one.fits, other.fits, strict=True):
            assert [check.factor for check in fit.checks] == pytest.approx(
                [check.factor for check in same.checks], rel=1e-6
            )


def test_how_a_switch_on_an_arm_swings() -> None:
    """Spring and mass: 2 N/mm under what is held, 60 g, and the share of the arm's 600 g that swings with its end; not known where
    the arm was not weighed."""
    (fit,) = [one for one in held(room_of(tube=[TUBE]), kit_of(ARM)).fits if one.kind == "friction arm"][:1]
    swings = tip_shares((0.2, 0.2)).swings
    assert fit.ringing_hz == pytest.approx(math.sqrt(2000 / (0.06 + swings * 0.6)) / (2 * math.pi), rel=1e-6)
    unweighed = {key: value for key, value in ARM.items() if key != "mass_g"}
    assert held(room_of(tube=[TUBE]), kit_of(unweighed)).fits[0].ringing_hz is None
