"""What stays plugged in for all games of a player, worked out by hand on the hub Quay: 300 mA in all, dew draws 70."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from said import said
from stickwright.allocation.replugging import plugged_for_all, replugs_of
from stickwright.allocation.wiring import wiring_of
from stickwright.model.sharing import Placement
from wired_cases import at, case, quay

SITES = {"right index": {"to_hub_m": 0.8}, "left index": {"to_hub_m": 0.9}, "chin": {"to_hub_m": 1.0}}
MOVE = at("move", "right index", "dew", "u1", "stick", role="left stick")
LOOK = at("look", "left index", "dew", "u2", "stick", role="right stick")


@dataclass
class Shared:
    """As much of a sharing as says what is plugged in."""

    placements: Sequence[Placement]


def both(*games: Sequence[Placement], **hub: Any) -> Any:
    return plugged_for_all([Shared(one) for one in games], case(SITES, hubs=(quay(**hub),)))  # type: ignore[misc]


def test_what_has_a_socket_to_itself_stays_plugged_in() -> None:
    """A stick that only the second game uses is counted with the first: 70 + 70 of 300 mA at once, and nothing is unplugged."""
    found = both([MOVE], [MOVE, LOOK])
    wiring = wiring_of(found.placements, case(SITES))
    assert [wire.device for wire in wiring.wires] == ["dew", "dew"]
    assert [said(line.words) for line in wiring.power][-1] == "140 mA of 300 mA in all at Quay"
    assert found.apart == ((), ())
    assert replugs_of(Shared([MOVE]), Shared([MOVE, LOOK]), found.apart[1]) == ()  # type: ignore[arg-type]


def test_too_much_current_for_all_at_once() -> None:
    """A hub of 100 mA feeds one of them, not both (140): each game alone is sound, and it is said what to unplug first."""
    found = both([MOVE], [LOOK], current_ma=100)
    (apart,) = found.apart[1]
    assert "140 mA of 100 mA" in said(apart.why)
    assert found.placements == (MOVE,)
    (told,) = replugs_of(Shared([MOVE]), Shared([LOOK]), found.apart[1])  # type: ignore[arg-type]
    assert said(told.words).startswith("First unplug dew from u1. Plug dew (left index) into u2. Too much current")


def test_two_sticks_of_one_role() -> None:
    """Two devices that feed the left stick at once: one would silently win."""
    other = at("steer", "chin", "dew", "u3", "stick", role="left stick")
    found = both([MOVE], [other])
    (apart,) = found.apart[1]
    assert "only one of them will work" in said(apart.why)
    assert "(A" not in said(apart.why)


def test_sockets_that_shut_each_other_out() -> None:
    """k2 must stay empty while k1 is used."""
    hub = quay()
    sockets = [
        one.model_dump(exclude_defaults=True) | ({"excludes": ["k2"]} if one.name == "k1" else {}) for one in hub.socket
    ]
    found = both([at("jump", "chin", "pip", "k1")], [at("honk", "left index", "pip", "k2")], socket=sockets)
    assert [one.plug for one in found.apart[1]] == [("Quay", "k2")]


def test_the_actions_of_all_games_stand_at_one_cable() -> None:
    """The same stick in the same socket: one cable, with what it does in each game."""
    steer = at("steer", "right index", "dew", "u1", "stick", role="left stick")
    (wire,) = wiring_of(both([MOVE], [steer]).placements, case(SITES)).wires
    assert wire.actions == ("move", "steer")


def test_a_device_that_moves_is_plugged_in_once() -> None:
    """It cannot be in two sockets."""
    there = at("look", "right index", "dew", "u3", "stick", role="right stick")
    assert both([MOVE], [there]).placements == (MOVE,)


def test_a_second_switch_of_the_same_kind() -> None:
    """The second game needs one more at the same site: both are plugged in, the first in one socket."""
    jump, honk = at("jump", "chin", "pip", "k1"), at("honk", "chin", "pip", "k2")
    wires = wiring_of(both([jump], [jump, honk]).placements, case(SITES)).wires
    assert [(wire.at, wire.socket) for wire in wires] == [(("chin",), "k1"), (("chin",), "k2")]
