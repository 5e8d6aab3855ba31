"""Mounts inside the whole plan: nothing changes without a room, a floppy arm changes the stick, and any room gives a plan."""

from __future__ import annotations

import json
import math
import random
import re
from collections import Counter
from dataclasses import replace
from typing import Any

import pytest

from kept import planned
from said import said
from stickwright.codes.message import Name, message
from stickwright.codes.setups import Setups
from stickwright.files.results import plan_json
from stickwright.model.case import Case
from stickwright.model.game import Game
from stickwright.model.kit import Kit
from stickwright.model.player import Player
from stickwright.model.room import Room
from stickwright.planning.plan import plan
from stickwright.report.document import sheet_pdf
from stickwright.report.words import plan_words
from worked_cases import van_kit, whole_case
from worked_rooms import NAMES, mount_kit, room

TUBE = {"name": "armrest tube", "from_mm": [250, 100, 200], "to_mm": [250, 400, 200], "diameter_mm": 25}
PLACE = {"site": "hand", "at_mm": [200, 450, 300]}
DRAWS = 20


def two_sticks(give_n_per_mm: float, *, rooms: dict[str, Any] | None = None, kit: dict[str, Any] | None = None) -> Case:
    """A hand of 3 N and 30 mm; a firm stick of long throw and a light one; one arm, as stiff as said."""
    sticks = [
        {"name": name, "contact_height_mm": 40, "start_force_n": start, "full_force_n": full, "travel_mm": travel,
         "base_mm": [50, 50, 30], "mass_g": 90}
        for name, start, full, travel in (("firm", 0.5, 1.2, 20), ("light", 0.16, 0.35, 8))
    ]  # fmt: skip
    arm = {"name": "arm", "kind": "friction arm", "links_mm": [200, 200], "holding_nm": [7], "mass_g": 500,
           "give_n_per_mm": give_n_per_mm, "tube_mm": [16, 40]}  # fmt: skip
    mushrooms = {"name": "mushrooms", "kind": "mushroom-head", "shear_kpa": 210, "tension_kpa": 180}
    readings = [{"direction_deg": turn, "force_n": [3.0], "reach_mm": [30]} for turn in (0, 90, 180, 270)]
    hand = {
        "name": "hand",
        "part": "hand",
        "involuntary_force_n": 0.06,
        "rest": [{"force_n": [0.0, 0.0]}],
        "comfortable_of_maximal_share": 0.5,
        "reading": readings,
    }
    return Case(
        name="two sticks",
        player=Player.model_validate({"code": "P1", "site": [hand]}),
        kit=Kit.model_validate({"stick": sticks, "mount": [arm], "fastener": [mushrooms], **(kit or {})}),
        game=Game.model_validate(
            {
                "name": "G",
                "action": [
                    {"name": "move", "kind": "two-axis", "importance": 8, "usual_level_share": 1, "duty_share": 0.5}
                ],
            }
        ),
        made_on="2026-11-25",
        room=Room.model_validate({"tube": [TUBE], "place": [PLACE]} if rooms is None else rooms),
    )


def in_the_van(name: str) -> Case:
    return replace(whole_case(name), kit=van_kit(**mount_kit()), room=room(name))


def test_without_a_room_nothing_is_said_of_mounts() -> None:
    """No room file: no mounts, whatever the kit has; and nothing else differs from the plan of the same kit without any."""
    bare = plan(replace(whole_case("idris"), room=None), draws=DRAWS)
    van = plan(replace(in_the_van("idris"), room=None), draws=DRAWS)
    assert bare.mounts == van.mounts == ()
    assert plan_json(van) == plan_json(bare)
    assert plan_words(van) == plan_words(bare)


def test_on_something_firm_the_room_adds_only_the_mounts() -> None:
    """A tray does not give: the same sticks, sharing, wiring and figures as without a room, and the mounts beside them."""
    case = in_the_van("idris")
    with_room, without = plan(case, draws=DRAWS), plan(replace(case, room=None), draws=DRAWS)
    assert with_room.mounts
    assert plan_json(replace(with_room, mounts=(), mount_parts=(), room=None)) == plan_json(without)


def test_a_floppy_arm_changes_the_stick() -> None:
    """On a stiff arm the firm stick with the long throw is best; on one of 0.2 N/mm its 1.2 N take 6 of its 20 mm and the
    light one wins; the plan says that the arm is why."""
    stiff, floppy = (planned(two_sticks(give), draws=40) for give in (20.0, 0.2))
    assert [one.device for one in stiff.mounts] == ["firm"]
    assert [one.device for one in floppy.mounts] == ["light"]
    assert stiff.sites[0].choice is not None
    assert floppy.sites[0].choice is not None
    assert (stiff.sites[0].choice.stick, floppy.sites[0].choice.stick) == ("firm", "light")
    assert [one.about for one in stiff.findings] == []
    (note,) = [one.text for one in floppy.findings if one.about == "give"]
    assert note == message(Setups.flexing_mount, site=Name("hand"), after=Name("light"), before=Name("firm"))


def test_the_force_behind_the_mount_stands_beside_the_force_on_something_firm() -> None:
    """Springs in series, by hand: of F newton over d metres a mount of k newton a metre leaves F k d/(k d + F)."""
    result = planned(two_sticks(0.2), draws=40)
    (mount,) = result.mounts
    assert mount.choice is not None
    k = mount.choice.give_n_per_m
    able = {one.direction_rad: one for one in result.sites[0].capability.directions}
    for fit in result.sites[0].fits:
        for one in fit.directions:
            firm_n, reach_m = able[one.direction_rad].force_n.value, able[one.direction_rad].reach_m.value
            assert one.firm_force_n == pytest.approx(firm_n, rel=1e-9)
            assert one.available_force_n == pytest.approx(firm_n * k * reach_m / (k * reach_m + firm_n), rel=1e-9)


def test_stick_and_mount_that_chase_each_other_are_told() -> None:
    """The firm stick weighs 2 kg and only the floppy arm carries it; behind that the light one is better, and the weak stiff arm
    carries it; on the stiff arm the firm one would be better again. Three rounds, then the plan keeps the light stick, which
    does not count on more than its mount gives, and says so."""
    case = two_sticks(0.2)
    firm, light = case.kit.stick
    floppy = case.kit.mount[0].model_copy(update={"name": "floppy", "holding_nm": (30.0,)})
    stiff = floppy.model_copy(update={"name": "stiff", "holding_nm": (3.5,), "give_n_per_m": 20000.0})
    kit = case.kit.model_copy(
        update={"stick": (firm.model_copy(update={"mass_kg": 2.0}), light), "mount": (floppy, stiff)}
    )
    result = plan(replace(case, kit=kit), draws=40)
    assert [(one.device, one.choice.mount) for one in result.mounts if one.choice] == [("light", "stiff")]
    assert [one.choice.stick for one in result.sites if one.choice] == ["light"]
    (query,) = [one for one in result.findings if one.level == "query" and one.about == "give"]
    assert (query.text.code, query.text.param("sites"), query.text.param("safe")) == (
        "Setups.unsettled",
        ("hand",),
        True,
    )
    clauses = re.split(r"[:;,.] ", said(query.text))
    assert len(clauses) == len(set(clauses))


def test_one_more_round_follows_when_the_stick_changes() -> None:
    """As above, but the light stick too is carried by the floppy arm alone: a second round finds the same again, and nothing
    is left to settle."""
    result = planned(two_sticks(0.2), draws=40)
    assert result.mounts[0].choice is not None
    assert [one.level for one in result.findings if one.about == "give"] == ["note"]


def test_the_same_room_gives_the_same_plan() -> None:
    """Twice the same case, twice the same bytes, give and all."""
    assert plan_json(plan(two_sticks(0.2), draws=DRAWS)) == plan_json(plan(two_sticks(0.2), draws=DRAWS))


@pytest.mark.parametrize("name", NAMES)
def test_every_device_in_use_is_mounted_once(name: str) -> None:
    """A mount for each device at each site that plays it, sticks and switches alike; a two-handed controller once, whoever
    plays it."""
    result = planned(in_the_van(name), draws=DRAWS)
    assert result.sharing is not None
    played = [one for one in result.sharing.placements if one.how == "site" and one.device]
    mounted = [(one.site, one.device) for one in result.mounts]
    assert len(mounted) == len(set(mounted))
    assert set(mounted) <= {(one.site, one.device) for one in played}
    assert {one.device for one in result.mounts} == {one.device for one in played}
    others = {(one.site, one.device) for one in played if one.kind != "controller"}
    assert others <= set(mounted)
    for one in result.mounts:
        same = [each for each in played if (each.site, each.device) == (one.site, one.device)]
        assert one.pieces == (len(same) if one.kind == "switch" else 1)


def test_a_controller_is_held_once_where_its_stick_is_played() -> None:
    """Thumb, index and middle finger play the same pad: held once, at the thumb, and the others are named."""
    result = planned(in_the_van("joss"), draws=DRAWS)
    (pad,) = [one for one in result.mounts if one.device == "plain pad"]
    assert (pad.site, pad.kind) == ("left thumb", "controller")
    assert "left index and left middle finger must reach it from there" in said(pad.findings[0].text)


def test_no_piece_is_proposed_twice() -> None:
    """Tove's short arm goes to the site that matters most; the other gets its next best and names what it would have had."""
    result = planned(in_the_van("tove"), draws=DRAWS)
    first, second = result.mounts[:2]
    assert first.choice is not None
    assert second.choice is not None
    assert (first.site, first.choice.mount) == ("right index", "short arm")
    assert (second.site, second.choice.mount) == ("left index", "long arm")
    (note,) = [one for one in second.findings if one.about == "stock"]
    assert said(note.text) == (
        "left index: pip would have had short arm on the left armrest tube with mushroom-head fastener, but the only short arm in "
        "the kit is needed at right index, which matters more. This is the next best."
    )
    assert {fit.taken_by for fit in second.fits if fit.mount == "short arm" and fit.verdict == "holds"} == {
        ("right index",)
    }
    assert "; but what it needs is used for right index." in " ".join(plan_words(result).split())


def test_a_slope_of_the_room_is_the_players_where_their_file_has_none() -> None:
    """The hand moves on a slope of 50 degrees: told in the room or in the player's file, the same stick, raised the same; where
    both tell, the player's counts."""

    def with_slopes(room_deg: float | None, player_deg: float | None) -> Case:
        case = two_sticks(
            20.0, rooms={"tube": [TUBE], "place": [{**PLACE, **({} if room_deg is None else {"slope_deg": room_deg})}]}
        )
        rad = None if player_deg is None else math.radians(player_deg)
        site = case.player.site[0].model_copy(update={"movement_tilt_rad": rad})
        kit = case.kit.model_copy(update={"tilt_rad": (0.0, math.radians(50))})
        return replace(case, kit=kit, player=case.player.model_copy(update={"site": (site,)}))

    def raised(room_deg: float | None, player_deg: float | None) -> tuple[float, float]:
        result = plan(with_slopes(room_deg, player_deg), draws=DRAWS)
        (choice,) = [one.choice for one in result.sites if one.choice is not None]
        (pose,) = [one.pose for one in result.mounts if one.pose is not None]
        return round(math.degrees(choice.built_tilt_rad)), round(math.degrees(pose.tilt_rad))

    assert raised(None, None) == (0, 0)
    assert raised(50, None) == raised(None, 50) == (50, 50)
    assert raised(50, 0) == (0, 0)


def test_two_sites_never_share_a_stock_of_one() -> None:
    """Over all five cases: arms, stands, couplings and pieces of fastener are counted on no oftener than the van has them."""
    for name in NAMES:
        case = in_the_van(name)
        used: Counter[str] = Counter()
        for one in plan(case, draws=DRAWS).mounts:
            if one.choice is not None:
                used.update(part for part in one.choice.parts if part in {each.name for each in case.kit.mount})
                used[str(one.choice.fastener)] += one.pieces
        stock = {one.name: one.in_stock for one in (*case.kit.mount, *case.kit.fastener)}
        assert {part: count for part, count in used.items() if count > stock.get(part, 1000)} == {}


def test_with_one_coupling_only_one_site_at_the_face_is_held() -> None:
    """Marit's chin takes the one coupling; cheek and head sides stay without, and say whose it is. With four, all are held."""
    case = in_the_van("marit")
    alone = {one.site: one.choice is not None for one in planned(case, draws=DRAWS).mounts}
    assert alone == {"chin": True, "cheek": False, "left head side": False, "right head side": False}
    many = tuple(one.model_copy(update={"in_stock": 4}) for one in case.kit.mount)
    kit = case.kit.model_copy(update={"mount": many})
    assert all(one.choice is not None for one in plan(replace(case, kit=kit), draws=DRAWS).mounts)


def test_the_pages_tell_what_holds_the_stick() -> None:
    """Words and JSON have the mount, where it is clamped and its cautions."""
    result = planned(in_the_van("marit"), draws=DRAWS)
    words = plan_words(result)
    assert "long arm" in words
    assert "right back tube" in words
    assert "lets go" in words
    told = json.loads(plan_json(result))
    assert told["mounts"][0]["choice"]["on"] == "right back tube"


def _random_room(rng: random.Random) -> dict[str, Any]:
    """Anything that a room file may hold, likely or not."""

    def point() -> list[int]:
        return [rng.randint(-500, 500), rng.randint(-200, 800), rng.randint(-500, 800)]

    def some(most: int, make: Any) -> list[dict[str, Any]]:
        return [make(number) for number in range(rng.randint(0, most))]

    def maybe(**fields: Any) -> dict[str, Any]:
        return {name: value for name, value in fields.items() if rng.random() < 0.5}

    def moves() -> str:
        return rng.choice(["seat", "base", "room"])

    def tube(number: int) -> dict[str, Any]:
        start = point()
        end = start if rng.random() < 0.2 else point()
        return {"name": f"tube {number}", "from_mm": start, "to_mm": end, "diameter_mm": rng.randint(10, 50),
                "moves_with": moves(), **maybe(not_for_clamps="a quick release")}  # fmt: skip

    def edge(number: int) -> dict[str, Any]:
        return {"name": f"edge {number}", "from_mm": point(), "to_mm": point(), "thickness_mm": rng.randint(5, 60),
                "moves_with": moves(), **maybe(depth_mm=100)}  # fmt: skip

    def surface(number: int) -> dict[str, Any]:
        return {"name": f"surface {number}", "kind": rng.choice(["table", "tray", "lap tray", "floor", "bed table"]),
                "corner_mm": [rng.randint(-600, 0), rng.randint(0, 400), rng.randint(-480, 260)],
                "size_mm": [rng.randint(0, 1500), rng.randint(0, 900)], "moves_with": moves(), "fastened": rng.random() < 0.3,
                **maybe(material="wood", mass_kg=3, rated_kg=5, friction=0.4)}  # fmt: skip

    def keep_out(number: int) -> dict[str, Any]:
        low = point()
        return {"name": f"box {number}", "kind": rng.choice(["face", "chair control", "door", "other"]), "low_mm": low,
                "high_mm": [at + rng.randint(1, 300) for at in low], "moves_with": moves()}  # fmt: skip

    tilts = sorted(rng.randint(0, 45) for _ in range(2))
    return {
        "tube": some(3, tube) + rng.choice([[], [TUBE]]), "edge": some(2, edge), "surface": some(3, surface), "keep_out": some(3, keep_out),
        "landmark": some(2, lambda number: {"name": f"mark {number}", "at_mm": point(), "moves_with": moves()}),
        "place": rng.choice([[], [PLACE], [PLACE], [PLACE], [{**PLACE, "at_mm": point(), "moves_with": moves()}]]),
        **maybe(posture=rng.choice(["wheelchair", "chair", "armchair", "bed", "floor"]), tilt_from_deg=tilts[0],
                width_mm=650, narrowest_door_mm=700, seat_to_armrest_mm=235, armrest_front_mm=400),
        "tilt_to_deg": tilts[1], **maybe(tilt_pivot_mm=[0, 150, -200]),
    }  # fmt: skip


def _random_kit(rng: random.Random) -> dict[str, Any]:
    def maybe(**fields: Any) -> dict[str, Any]:
        return {name: value for name, value in fields.items() if rng.random() < 0.6}

    arms = [
        {"name": f"arm {number}", "kind": rng.choice(["friction arm", "gooseneck", "floor stand", "tray"]),
         **maybe(links_mm=[rng.randint(50, 300) for _ in range(rng.randint(1, 3))], holding_nm=[rng.randint(1, 9)],
                 give_n_per_mm=rng.choice([0.05, 0.5, 5]), mass_g=500, tube_mm=[10, 50], edge_mm=[5, 60],
                 size_mm=[400, 400], in_stock=rng.randint(0, 2))}
        for number in range(rng.randint(0, 4))
    ]  # fmt: skip
    if rng.random() < 0.5:
        arms.append({"name": "known arm", "kind": "friction arm", "links_mm": [180, 180], "holding_nm": [8, 6, 5],
                     "give_n_per_mm": rng.choice([0.05, 0.5, 5]), "mass_g": 500, "tube_mm": [10, 50]})  # fmt: skip
    kinds = ["hook-and-loop", "mushroom-head", "screw", "suction", "anti-slip sheet", "strap"]
    fasteners = [
        {"name": f"fastener {number}", "kind": rng.choice(kinds),
         **maybe(shear_kpa=60, tension_kpa=40, peel_n_per_m=300, friction=0.8)}
        for number in range(rng.randint(0, 3))
    ]  # fmt: skip
    sticks = [
        {"name": name, "contact_height_mm": 40, "start_force_n": full / 2, "full_force_n": full, "travel_mm": 12,
         **maybe(base_mm=[90, 70, 40], mass_g=200, pivot_height_mm=20)}
        for name, full in (("firm", 1.2), ("light", 0.35))
    ]  # fmt: skip
    return {"mount": arms, "fastener": fasteners, "stick": sticks}


@pytest.mark.parametrize("number", range(30))
def test_any_room_gives_a_plan(number: int) -> None:
    """Thirty rooms put together at random, with kits of which half was never measured: a plan, in words, JSON and print."""
    rng = random.Random(number)
    case = two_sticks(1.0, rooms=_random_room(rng), kit=_random_kit(rng))
    result = plan(case, draws=DRAWS)
    words = plan_words(result)
    assert len(result.mounts) == 1
    (mount,) = result.mounts
    sentence = said(mount.sentence)
    assert ".." not in sentence
    assert " ".join(sentence.casefold().split()) in " ".join(
        words.replace("\N{NO-BREAK SPACE}", " ").casefold().split()
    )
    assert json.loads(plan_json(result))["mounts"][0]["device"] == mount.device
    assert "nan" not in words.lower().split()
    if number % 3 == 0:
        assert sheet_pdf(result).startswith(b"%PDF")
