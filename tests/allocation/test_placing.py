"""From the solver's columns back to places: each device with the socket it goes into."""

from __future__ import annotations

from typing import Any

import pytest
from small_cases import action, case, hub, shared, site, switch

from stickwright.allocation.placing import choice_of, signature
from stickwright.allocation.problem import Question, Way
from stickwright.model.sharing import Placement

FIRST, SECOND = "bottom button in right cluster", "right button in right cluster"
PAD = {"name": "pad", "press_force_n": 0.3, "current_ma": 50}


def placed(this: Any) -> dict[str, Placement]:
    return {one.action: one for one in shared(this).placements}


def test_each_device_has_a_socket_of_its_own() -> None:
    """Four switches, four sockets: none twice."""
    parts = [site("left index"), site("right index")]
    found = placed(case(parts, [action(name) for name in "abcd"], switches=[switch("pip", in_stock=4)], hubs=[hub()]))
    assert sorted(str(one.socket) for one in found.values()) == ["b1", "b2", "b3", "b4"]
    assert {one.connection for one in found.values()} == {"socket"}


def test_a_controller_takes_one_socket_for_all_its_buttons() -> None:
    """Two thumbs on one controller: both actions name the same socket, and each its own button."""
    thumbs = [site("left thumb", "thumb", reaches=[FIRST]), site("right thumb", "thumb", reaches=[SECOND])]
    box = {"name": "Pier", "socket": [{"name": "u1", "takes": "USB", "role": "assignable"}]}
    found = placed(case(thumbs, [action("jump"), action("fire")], controllers=[PAD], hubs=[box]))
    assert {(one.device, one.socket, one.connection) for one in found.values()} == {("pad", "u1", "socket")}
    assert {one.control for one in found.values()} == {FIRST, SECOND}


def test_a_paired_controller_takes_no_socket() -> None:
    """No USB socket, but the hub takes a second controller: it is paired."""
    thumb = site("left thumb", "thumb", reaches=[FIRST])
    found = placed(case([thumb], [action("jump")], controllers=[PAD], hubs=[hub(paired=1)]))["jump"]
    assert (found.connection, found.socket, found.hub) == ("paired", None, None)


def test_what_is_left_to_others_has_neither_part_nor_socket() -> None:
    """Options and helpers: no site, no device, no socket; the helper by name."""
    this = case(
        [site("left index", press=None)], [action("run", option="always run"), action("menu", helper=True)],
        helpers=[{"name": "sister"}], hubs=[hub(paired=1)],
    )  # fmt: skip
    found = placed(this)
    assert [(one.how, one.site, one.device, one.socket, one.helper) for one in found.values()] == [
        ("option", None, None, None, None), ("helper", None, None, None, "sister"),
    ]  # fmt: skip
    assert found["run"].label == "always run"


def test_a_chord_is_done_by_its_members() -> None:
    """Both lanes together: the chord has no device of its own, and its members are at parts that can act together."""
    this = case(
        [site("left index"), site("right index")],
        [action("left lane"), action("right lane"), action("both", "chord", of=["left lane", "right lane"])],
        switches=[switch("pip", in_stock=2)], hubs=[hub()],
    )  # fmt: skip
    found = placed(this)
    assert (found["both"].how, found["both"].device, found["both"].together) == (
        "chord",
        None,
        ("left lane", "right lane"),
    )
    assert found["left lane"].site != found["right lane"].site


def test_in_the_order_of_the_game() -> None:
    """The list reads as the player told it."""
    names = ["menu", "jump", "fire"]
    this = case([site("left index")], [action(name, option="auto", option_price=0) for name in names])
    assert [one.action for one in shared(this).placements] == names


@pytest.mark.parametrize(
    ("other", "same"),
    [
        ({"socket": 1}, True), ({"control": SECOND}, True), ({"paired": True}, True), ({"site": "chin"}, False),
        ({"device": "pip"}, False), ({"toggle": True}, False), ({"how": "helper", "label": "carer"}, False),
    ],
)  # fmt: skip
def test_what_makes_a_choice_another_one(other: dict[str, Any], same: bool) -> None:
    """Who, where, on what and how; not which of several buttons, nor whether paired."""
    other.pop("socket", None)
    plain: dict[str, Any] = {
        "action": "jump",
        "how": "site",
        "points": 1.0,
        "site": "left thumb",
        "device": "pad",
        "kind": "controller",
        "control": FIRST,
    }
    assert (choice_of(Way(**plain)) == choice_of(Way(**{**plain, **other}))) is same


def test_two_plans_are_told_apart_by_their_choices() -> None:
    """An action that is left out is a choice too."""
    ways = (Way("jump", "option", 1.0), Way("jump", "helper", 1.0, label="sister"))
    question = Question(("jump",), (1.0,), ways)
    told = {signature(question, chosen, question.actions) for chosen in ({"jump": 0}, {"jump": 1}, {})}
    assert len(told) == 3
