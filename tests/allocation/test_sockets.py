"""Hubs as the sharing-out sees them: which sockets are alike, what they feed, what they shut out."""

from __future__ import annotations

from typing import Any

import pytest
from small_cases import action, case, fit, hub, shared, site, stick, switch

from stickwright.allocation.sockets import USB_UNIT_LOAD_A, adapters_of, hub_limits, socket_groups, splitters_of
from stickwright.model.hub import BUTTON_ROLES, STICK_ROLES, Hub
from stickwright.model.kit import Lead
from stickwright.model.sharing import Placement
from stickwright.model.wishes import Wishes


def box(*sockets: dict[str, Any], name: str = "Pier", **more: Any) -> Hub:
    return Hub.model_validate({"name": name, "socket": list(sockets), **more})


def socket(name: str, takes: str = "2-conductor", role: str | None = "assignable", **more: Any) -> dict[str, Any]:
    return {"name": name, "takes": takes, **({} if role is None else {"role": role}), **more}


def lead(name: str, kind: str, plug: str, *sockets: str, **more: Any) -> Lead:
    return Lead.model_validate({"name": name, "kind": kind, "plug": plug, "sockets": list(sockets), **more})


class TestGroups:
    """Sockets that are alike."""

    def test_alike_in_everything_or_apart(self) -> None:
        """Same plug, role and current: one group. Another role, another current, another hub: another."""
        first = box(
            socket("a"),
            socket("b"),
            socket("c", role=BUTTON_ROLES[0]),
            socket("d", "USB"),
            socket("e", "USB", current_ma=100),
        )
        groups = socket_groups([first, box(socket("f"), name="Quay")])
        assert [group.sockets for group in groups] == [("a", "b"), ("c",), ("d",), ("e",), ("f",)]
        assert [group.hub for group in groups] == ["Pier"] * 4 + ["Quay"]
        assert groups[3].limit_a == pytest.approx(0.1)

    def test_what_shuts_out_another_stands_alone(self) -> None:
        """Both sockets of an exclusion stand alone, and the exclusion points to the other."""
        groups = socket_groups([box(socket("a"), socket("b", excludes=["c"]), socket("c"), socket("d"))])
        assert [group.sockets for group in groups] == [("a", "d"), ("b",), ("c",)]
        assert [groups[place].sockets for place in groups[1].excludes] == [("c",)]

    @pytest.mark.parametrize(
        ("takes", "feeds"), [("2-conductor", BUTTON_ROLES), ("4-conductor", STICK_ROLES), ("USB", (*STICK_ROLES, *BUTTON_ROLES))]
    )  # fmt: skip
    def test_an_assignable_socket_feeds_what_its_plug_can_carry(self, takes: str, feeds: tuple[str, ...]) -> None:
        """A switch jack carries a button, a stick jack a stick, USB either."""
        assert socket_groups([box(socket("a", takes))])[0].roles == feeds

    def test_a_socket_without_a_role_feeds_nothing(self) -> None:
        """Nobody said what it does: it is not used."""
        assert socket_groups([box(socket("a", role=None))]) == ()

    def test_left_free_or_not_there(self) -> None:
        """A socket or a hub that is not to be used, and a hub that is not in stock, offer nothing."""
        this = box(socket("a"), socket("b"))
        assert socket_groups([this], ["a"])[0].sockets == ("b",)
        assert socket_groups([this], ["Pier"]) == ()
        assert socket_groups([box(socket("a"), in_stock=0)]) == ()

    def test_limits_of_each_hub(self) -> None:
        """Current and number of devices in all."""
        assert hub_limits([box(current_ma=300, most_devices=4), box(name="Quay")]) == (
            ("Pier", 0.3, 4),
            ("Quay", None, None),
        )


class TestLeads:
    """Adapters and splitters."""

    def test_an_adapter_leads_from_each_plug_it_takes(self) -> None:
        """Thick to thin, from the device to the hub; an extension lead is none."""
        found = adapters_of(
            [lead("thin", "adapter", "2-conductor", "6.3 mm 2-conductor"), lead("long", "extension", "USB")]
        )
        assert [(one.takes, one.plug) for one in found] == [("6.3 mm 2-conductor", "3.5 mm 2-conductor")]

    def test_only_usb_splits(self) -> None:
        """A split round plug gives one input twice: no socket more."""
        jack = lead("y", "splitter", "2-conductor", "2-conductor", "2-conductor")
        assert splitters_of([jack, lead("fork", "splitter", "USB", "USB", "USB")])[0].name == "fork"
        assert len(splitters_of([jack])) == 0

    def test_without_a_supply_a_splitter_gives_one_unit_load_on_each_of_four_ways(self) -> None:
        """USB 2.0 [usb-2]: a bus-powered hub takes one unit load of 100 mA and gives one on at most four ports."""
        found = splitters_of([lead("six", "splitter", "USB", *["USB"] * 6)])[0]
        assert (found.ways, found.current_a, found.way_limit_a, found.powered) == (4, 0.1, 0.1, False)
        assert USB_UNIT_LOAD_A == 0.1

    def test_with_a_supply_it_gives_what_it_says(self) -> None:
        """A powered splitter has all its ways, at its own current."""
        found = splitters_of([lead("six", "splitter", "USB", *["USB"] * 6, port_current_ma=500)])[0]
        assert (found.ways, found.way_limit_a, found.powered) == (6, 0.5, True)

    def test_leads_that_are_not_to_be_used(self) -> None:
        """Without this adapter or splitter there is none."""
        kit = [lead("thin", "adapter", "2-conductor", "6.3 mm 2-conductor"), lead("fork", "splitter", "USB", "USB")]
        assert adapters_of(kit, ["thin"]) == ()
        assert splitters_of(kit, ["fork"]) == ()


HANDS = [site("left index"), site("right index")]


def placed(actions: list[Any], hubs: list[Any], ranking: Any = None, **kit: Any) -> dict[str, Placement]:
    found = shared(case(HANDS, actions, hubs=hubs, **kit), ranking)
    return {one.action: one for one in found.placements}


class TestPluggedIn:
    """Where each device ends up."""

    def test_the_role_decides_the_socket(self) -> None:
        """The game cannot move its buttons: jump goes into the socket that feeds its button, fire into the other."""
        sockets = [
            socket("a", role="right button in right cluster"),
            socket("b", role="bottom button in right cluster"),
        ]
        actions = [
            action("jump", input="bottom button in right cluster"),
            action("fire", input="right button in right cluster"),
        ]
        this = case(
            HANDS,
            actions,
            switches=[switch("pip", in_stock=2)],
            hubs=[{"name": "Pier", "socket": sockets}],
            game={"remaps": False},
        )
        assert {one.action: one.socket for one in shared(this).placements} == {"jump": "b", "fire": "a"}

    def test_left_and_right_stick_have_their_own(self) -> None:
        """Walk is the left stick, look the right one."""
        found = placed(
            [action("walk", "two-axis"), action("look", "two-axis")], [hub()],
            {"left index": [fit("left index", "ash")], "right index": [fit("right index", "ash")]},
            sticks=[stick("ash", in_stock=2)],
        )  # fmt: skip
        assert (found["walk"].socket, found["look"].socket) == ("s1", "s2")

    def test_what_shuts_each_other_out_is_never_both_used(self) -> None:
        """Three sockets, two of which share one input inside: two switches take the free one and one of the pair."""
        sockets = [socket("a"), socket("b", excludes=["a"]), socket("c")]
        found = placed(
            [action("jump"), action("fire")],
            [{"name": "Pier", "socket": sockets}],
            switches=[switch("pip", in_stock=2)],
        )
        used = {one.socket for one in found.values()}
        assert "c" in used
        assert used != {"a", "b"}
        assert len(used) == 2

    @pytest.mark.parametrize(
        ("limit", "how"),
        [({"current_ma": 100}, "dropped"), ({"current_ma": 120}, "site"), ({"most_devices": 1}, "dropped")],
    )
    def test_the_hub_as_a_whole_has_limits(self, limit: dict[str, Any], how: str) -> None:
        """Two USB switches of 60 mA each: a hub of 100 mA feeds one of them, one of 120 mA both."""
        found = placed(
            [action("jump"), action("fire", drop_price=0)],
            [{"name": "Pier", "socket": [socket("u1", "USB"), socket("u2", "USB")], **limit}],
            switches=[switch("pip", plug="USB", current_ma=60, in_stock=2)],
        )  # fmt: skip
        assert found["fire"].how == how

    def test_an_adapter_is_used_where_nothing_else_fits(self) -> None:
        """A thick plug goes through the adapter; without one the action cannot be had."""
        thick = [switch("old", plug="6.3 mm 2-conductor")]
        adapter = [{"name": "thin", "kind": "adapter", "plug": "2-conductor", "sockets": ["6.3 mm 2-conductor"]}]
        jump = [action("jump", drop_price=0)]
        assert placed(jump, [hub()], switches=thick)["jump"].how == "dropped"
        assert placed(jump, [hub()], switches=thick, leads=adapter)["jump"].socket == "b1"
        this = case(HANDS, jump, switches=thick, leads=adapter, hubs=[hub()])
        assert shared(this, wishes=Wishes(without=("thin",))).placements[0].how == "dropped"

    def test_a_splitter_makes_two_sockets_of_one(self) -> None:
        """Two USB switches and one USB socket: the fork takes both, and says which way."""
        found = placed(
            [action("jump"), action("fire")], [{"name": "Pier", "socket": [socket("u1", "USB")]}],
            switches=[switch("pip", plug="USB", in_stock=2)],
            leads=[{"name": "fork", "kind": "splitter", "plug": "USB", "sockets": ["USB", "USB"]}],
        )  # fmt: skip
        assert {one.socket for one in found.values()} == {"u1/1", "u1/2"}

    def test_several_hubs_act_as_one(self) -> None:
        """What the first has no socket for goes into the second."""
        found = placed(
            [action("jump"), action("fire")], [hub(switches=1), hub("Quay", switches=1)], switches=[switch("pip", in_stock=2)]
        )  # fmt: skip
        assert {one.hub for one in found.values()} == {"Pier", "Quay"}

    def test_no_hub_described(self) -> None:
        """Then nothing is plugged in, and everything is shared out all the same."""
        found = placed([action("jump")], [], switches=[switch("pip")])
        assert (found["jump"].how, found["jump"].socket, found["jump"].connection) == ("site", None, "")
