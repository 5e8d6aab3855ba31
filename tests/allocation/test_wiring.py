"""Device by device into the hub: the five worked cases by hand, and what must never pass unsaid."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sample_plan import finger_site

from said import place
from said import said as words
from stickwright.allocation.wiring import wiring_of
from stickwright.codes.message import message
from stickwright.codes.plugs import Plugs
from stickwright.errors import BadInput
from stickwright.model.fit import Fit
from stickwright.model.hub import Hub
from stickwright.model.sharing import HeldWay, Placement, Wiring
from wired_cases import at, case, kit, quay


def rows(wiring: Wiring) -> list[tuple[str, str, str, str]]:
    return [(wire.tag, wire.device, " and ".join(wire.at), wire.socket) for wire in wiring.wires]


def powers(wiring: Wiring) -> list[str]:
    return [words(line.words) for line in wiring.power]


def said(wiring: Wiring, about: str) -> list[tuple[str, str]]:
    return [(finding.level, words(finding.text)) for finding in wiring.findings if finding.about == about]


def steps_of(wiring: Wiring) -> list[str]:
    return [words(step) for step in wiring.steps]


def faults(wiring: Wiring) -> list[str]:
    return [words(finding.text) for finding in wiring.findings if finding.level == "fault"]


TOVE = [
    at("attack", "left index", "pip", "k1"),
    at("jump", "left index", "pip", "k2"),
    at("move", "right index", "dew", "u1", "stick", role="left stick"),
    Placement("look", "option"),
]


def test_tove() -> None:
    """Worked case 1: dew in u1 takes 70 of 100 mA, pips in k1 and k2, q1 stays empty: same stick."""
    wiring = wiring_of(TOVE, case({"right index": {"to_hub_m": 0.8}, "left index": {"to_hub_m": 0.9}}))
    assert rows(wiring) == [
        ("A1", "dew", "right index", "u1"),
        ("A2", "pip", "left index", "k1"),
        ("A3", "pip", "left index", "k2"),
    ]
    assert powers(wiring) == ["70 mA of 100 mA at u1", "70 mA of 300 mA in all at Quay"]
    assert "Leave q1 empty: same stick as u1." in steps_of(wiring)
    assert faults(wiring) == []


def test_idris() -> None:
    """Worked case 2: rowan u1, slab k1; the sister's actions are one paired controller without a cable."""
    left = [Placement(action, "helper", helper="sister") for action in ("shoot", "tackle", "menu")]
    done = [
        at("move", "right fist", "rowan", "u1", "stick", role="left stick"),
        at("pass", "left fist", "slab", "k1"),
        *left,
    ]
    wiring = wiring_of(done, case({"right fist": {"to_hub_m": 0.8}, "left fist": {"to_hub_m": 0.9}}))
    assert rows(wiring) == [
        ("A1", "rowan", "right fist", "u1"),
        ("A2", "slab", "left fist", "k1"),
        ("A3", "plain pad", "sister", ""),
    ]
    pad = wiring.wires[2]
    assert (pad.paired, pad.plug, pad.through, pad.conductors, pad.current_a, pad.needed_m) == (
        True,
        "",
        (),
        (),
        0.0,
        None,
    )
    assert pad.actions == ("shoot", "tackle", "menu")
    assert "A3: pair plain pad (sister) with Quay; no cable." in steps_of(wiring)
    assert powers(wiring) == ["60 mA of 100 mA at u1", "60 mA of 300 mA in all at Quay"]


def test_marit() -> None:
    """Worked case 3: birch q1, wink k1, head sides k2 and k3; leads have slack for the tilt; order of contacts asked."""
    done = [
        at("steer", "chin", "birch", "q1", "stick", role="left stick"),
        at("brake", "cheek", "wink", "k1"),
        at("boost", "head left", "disc", "k2"),
        at("menu", "head right", "disc", "k3"),
    ]
    sites = {name: {"to_hub_m": 1.1, "tilt_slack_m": 0.6} for name in ("chin", "cheek", "head left", "head right")}
    four = {"name": "long four", "plug": "4-conductor", "length_m": 1.0}
    two = {"name": "long two", "plug": "2-conductor", "length_m": 0.5, "in_stock": 3}
    wiring = wiring_of(done, case(sites, kit([two, four])))
    assert [(wire.socket, wire.needed_m, wire.length_m, wire.through) for wire in wiring.wires] == [
        ("q1", 1.85, 2.2, ("long four",)),
        ("k1", 1.85, 2.3, ("long two",)),
        ("k2", 1.85, 2.3, ("long two",)),
        ("k3", 1.85, 2.3, ("long two",)),
    ]
    assert wiring.wires[0].conductors == (
        message(Plugs.carries, contacts=("tip", "ring 1", "ring 2", "sleeve"), carries="axes"),
    )
    assert said(wiring, "conductors") == [
        ("query", "A1 (birch to q1): four-pole plugs (TRRS) come in two orders, with ground on ring 2 or on the sleeve. "
                  "Check both manuals, of hub and stick, before you plug it in.")
    ]  # fmt: skip
    assert "Set no other socket to left stick: only one of them will work, without warning." in steps_of(wiring)
    assert faults(wiring) == []


def test_joss() -> None:
    """Worked case 4: hazel u1 90 mA, plain pad u2 100 mA, 190 of 300 mA; the pad is one cable for all its actions."""
    done = [
        at("look", "left thumb", "plain pad", "u2", "controller", role="right stick", control="left stick"),
        at("fire", "left thumb", "plain pad", "u2", "controller", control="top left front button"),
        at("aim", "left thumb", "plain pad", "u2", "controller", control="bottom left front button"),
        at("move", "right forearm", "hazel", "u1", "stick", role="left stick"),
        at("jump", "right foot", "dome", "k1"),
        at("crouch", "left foot", "dome", "k2"),
    ]
    sites = {name: {"to_hub_m": 1.0} for name in ("left thumb", "right forearm", "right foot", "left foot")}
    wiring = wiring_of(done, case(sites))
    assert rows(wiring) == [
        ("A1", "hazel", "right forearm", "u1"),
        ("A2", "plain pad", "left thumb", "u2"),
        ("A3", "dome", "right foot", "k1"),
        ("A4", "dome", "left foot", "k2"),
    ]
    assert wiring.wires[1].actions == ("look", "fire", "aim")
    assert powers(wiring) == ["90 mA of 100 mA at u1", "100 mA of 100 mA at u2", "190 mA of 300 mA in all at Quay"]
    assert [line.unit_loads for line in wiring.power] == [1, 1, 2]
    assert wiring.wires[1].role == "right stick"
    assert {part.name: (part.kind, part.count, part.buy) for part in wiring.parts} == {
        "hazel": ("stick", 1, 0), "dome": ("switch", 2, 0), "plain pad": ("controller", 1, 0), "Quay": ("hub", 1, 0),
    }  # fmt: skip
    assert faults(wiring) == []


def test_rune_later() -> None:
    """Worked case 5: cedar in q1 now; when dew comes to u1 as well, both feed the same stick, and that is a fault."""
    sites = {"right index": {"to_hub_m": 0.8}, "right thumb": {"to_hub_m": 0.8}}
    now = [
        at("pointer", "right index", "cedar", "q1", "stick", role="left stick"),
        at("select", "right thumb", "pip", "k1"),
    ]
    wiring = wiring_of(now, case(sites))
    assert rows(wiring) == [("A1", "cedar", "right index", "q1"), ("A2", "pip", "right thumb", "k1")]
    assert powers(wiring) == []
    both = [*now, at("move", "right index", "dew", "u1", "stick", role="left stick")]
    assert faults(wiring_of(both, case(sites))) == [
        "u1 (A1) and q1 (A2) feed the same left stick: only one of them will work, without warning. Use one, or give one of them "
        "another role."
    ]


def test_switch_contacts() -> None:
    """A switch: its contact on the tip, common on the sleeve; USB: its four wires."""
    wiring = wiring_of(TOVE, case({"right index": {}, "left index": {}}))
    assert wiring.wires[1].conductors == (
        message(Plugs.carries, contacts=("tip",), carries="switch_contact"),
        message(Plugs.carries, contacts=("sleeve",), carries="common"),
    )
    usb = [one.param("contacts") for one in wiring.wires[0].conductors]
    assert usb == [("supply",), ("data -",), ("data +",), ("ground",)]


def test_two_conductor_plug_never_goes_into_a_stick_jack() -> None:
    """A switch in a stick jack bridges contacts: a fault that names what is needed, in findings, wire and parts."""
    wiring = wiring_of([at("jump", "left index", "pip", "q2")], case({"left index": {"to_hub_m": 0.5}}))
    adapter = "an adapter from a 3.5 mm mono jack (TS) plug to a 3.5 mm four-pole jack (TRRS) socket"
    assert list(map(words, wiring.wires[0].missing)) == [adapter]
    assert faults(wiring) == [
        "A1 (pip to q2): 3.5 mm mono jack (TS) plug and 3.5 mm four-pole jack (TRRS) socket do not match: the sleeve of the plug "
        f"bridges ring 1, ring 2 and sleeve. Do not plug it in without {adapter}."
    ]
    assert [(words(part.name), part.kind, part.count, part.in_stock, part.buy, part.price) for part in wiring.parts][-1] == (
        adapter.removeprefix("an "), "adapter", 1, 0, 1, None,
    )  # fmt: skip


def test_excluded_socket() -> None:
    """A socket that must stay empty while another is used, and is used, is a fault; unused, it is named to be left."""
    hub = Hub.model_validate({
        "name": "Quay",
        "socket": [
            {"name": "k1", "takes": "2-conductor", "role": "assignable", "excludes": ["k2"]},
            {"name": "k2", "takes": "2-conductor", "role": "assignable"},
        ],
    })  # fmt: skip
    this = case({"hand": {}}, hubs=(hub,))
    one, two = at("jump", "hand", "pip", "k1"), at("fire", "hand", "pip", "k2")
    assert faults(wiring_of([one, two], this)) == ["k2 of Quay must stay empty while k1 is used; both are used."]
    assert "Leave k2 empty: not together with k1." in steps_of(wiring_of([one], this))
    assert "Leave k1 empty: not together with k2." in steps_of(wiring_of([two], this))


def test_unmeasured_way_and_cable() -> None:
    """Nobody took the way or the cable: no length is made up, and it is said what to measure."""
    sticks = [{"name": "reed", "start_force_n": 1, "full_force_n": 2, "travel_mm": 8, "plug": "USB"}]
    lead = {"name": "long", "plug": "USB", "length_m": 2.0}
    this = case({"hand": {}, "foot": {"to_hub_m": 1.5}}, kit([lead], stick=sticks))
    wiring = wiring_of(
        [
            at("move", "hand", "reed", "u1", "stick"),
            at("jump", "hand", "pip", "k1"),
            at("fire", "foot", "reed", "u2", "stick"),
        ],
        this,
    )
    assert [(wire.needed_m, wire.length_m, wire.through) for wire in wiring.wires] == [
        (None, None, ()), (1.65, None, ()), (None, 1.8, ()),
    ]  # fmt: skip
    assert "was not measured for hand: lay a tape" in said(wiring, "way")[0][1]
    assert said(wiring, "cable") == [
        ("note", "The cable of reed was not measured: enter the length with its plug in the kit (cable_mm).")
    ]
    assert "The current of reed is not known: 100 mA is assumed" in said(wiring, "current")[0][1]
    assert [wire.current_a for wire in wiring.wires] == [0.1, 0.1, 0.0]


def test_splitter_way() -> None:
    """u1/1 and u1/2 are two ways of one splitter: one part, its cable counted, each way's current by itself."""
    split = {"name": "fork", "kind": "splitter", "plug": "USB", "sockets": ["USB", "USB"], "length_m": 0.2,
             "port_current_ma": 500, "current_ma": 20}  # fmt: skip
    done = [
        at("move", "hand", "hazel", "u1/1", "stick", role="left stick"),
        at("look", "foot", "dew", "u1/2", "stick", role="right stick"),
    ]
    wiring = wiring_of(done, case({"hand": {"to_hub_m": 1.5}, "foot": {"to_hub_m": 1.0}}, kit([split])))
    assert [(wire.tag, wire.socket, wire.through, wire.length_m) for wire in wiring.wires] == [
        ("A1", "u1/1", ("fork",), 1.7), ("A2", "u1/2", ("fork",), 1.7),
    ]  # fmt: skip
    assert powers(wiring) == [
        "90 mA of 500 mA at u1, way 1", "70 mA of 500 mA at u1, way 2", "20 mA of 100 mA at u1", "20 mA of 300 mA in all at Quay",
    ]  # fmt: skip
    assert [(part.kind, part.count) for part in wiring.parts if part.name == "fork"] == [("splitter", 1)]
    without = wiring_of(done, case({"hand": {}, "foot": {}}))
    assert [words(wire.lacks or "") for wire in without.wires] == ["a splitter, USB-A, with 2 ways"] * 2
    assert [part.count for part in without.parts if part.kind == "splitter"] == [1]


def test_adapter_to_another_size() -> None:
    """A 6.3 mm switch goes into a 3.5 mm jack through an adapter of the stock; a second one has to be bought."""
    switch = {"name": "paddle", "plug": "6.3 mm 2-conductor", "cable_m": 1.0, "in_stock": 2}
    adapter = {
        "name": "small end",
        "kind": "adapter",
        "plug": "2-conductor",
        "sockets": ["6.3 mm 2-conductor"],
        "price": 4,
    }
    this = case({"hand": {"to_hub_m": 0.5}}, kit([adapter], switch=[switch]))
    wiring = wiring_of([at("jump", "hand", "paddle", "k1"), at("fire", "hand", "paddle", "k2")], this)
    assert [wire.through for wire in wiring.wires] == [("small end",), ()]
    assert [words(wire.lacks or "") for wire in wiring.wires] == [
        "", "an adapter from a 6.3 mm mono jack (TS) plug to a 3.5 mm mono jack (TS) socket",
    ]  # fmt: skip
    bought = [part for part in wiring.parts if part.name == "small end"]
    assert [(part.count, part.in_stock, part.buy, part.price) for part in bought] == [(2, 1, 1, 4.0)]


def test_second_controller_for_the_helper_has_to_be_there() -> None:
    """Without a hub that pairs, or with its place taken, the helper's actions have no controller, and that is said."""
    left = Placement("menu", "helper", helper="carer")
    alone = wiring_of([left], case({"hand": {}}, hubs=(quay(paired=0),)))
    assert alone.wires == ()
    assert said(alone, "pairing") == [
        ("query", "carer needs a second controller that acts as the same player, but no hub has room for another "
                  "paired controller.")
    ]  # fmt: skip
    own = Placement("look", "site", site="hand", device="plain pad", kind="controller", connection="paired", hub="Quay",
                    control="right stick", role="right stick")  # fmt: skip
    both = wiring_of([own, left], case({"hand": {}}))
    assert [wire.at for wire in both.wires] == [("hand",)]
    assert len(said(both, "pairing")) == 1


def test_two_hubs_have_their_own_letters() -> None:
    """Tags of a second hub begin with B, and sockets are named with their hub."""
    other = quay(name="Mole", paired=0)
    done = [at("move", "hand", "dew", "u1", "stick", role="left stick"), at("jump", "hand", "pip", "k1", hub="Mole")]
    wiring = wiring_of(done, case({"hand": {}}, hubs=(quay(), other)))
    assert [(wire.tag, wire.hub) for wire in wiring.wires] == [("A1", "Quay"), ("B1", "Mole")]
    assert powers(wiring)[0] == "70 mA of 100 mA at u1 of Quay"
    assert "B1: pip (hand) into k1 of Mole." in steps_of(wiring)


def test_order_of_plugging_in() -> None:
    """Hands off the sticks, cables in the order of their tags, the hub last, then the one-minute test."""
    steps = steps_of(wiring_of(TOVE, case({"right index": {"to_hub_m": 0.8}, "left index": {"to_hub_m": 0.9}})))
    assert steps == [
        "Hands off the sticks until everything is plugged in and on: a stick that is touched at switch-on sets that position as "
        "centre.",
        "A1: dew (right index) into u1.",
        "A2: pip (left index) into k1.",
        "A3: pip (left index) into k2.",
        "Leave q1 empty: same stick as u1.",
        "Set no other socket to left stick: only one of them will work, without warning.",
        "Plug Quay in last, unless its manual says otherwise; then switch it on.",
        "One-minute test: try each action once (move, attack and jump); the screen shows what arrived.",
        'A1: the player says "forward" and pushes forward, then back, left and right; the game must go the way the player '
        "said.",
        "Unplug A1 and plug it in again: does it still do the same?",
    ]


def test_unknown_socket_is_told() -> None:
    """A socket that the hub does not have: where, and what it does have."""
    with pytest.raises(BadInput) as told:
        wiring_of([at("jump", "hand", "pip", "k9")], case({"hand": {}}))
    assert [(place(one), words(one.found)) for one in told.value.problems] == [("hub Quay", 'socket "k9"')]
    assert "k1" in words(told.value.problems[0].remedy)


def test_two_plugs_for_one_socket() -> None:
    """Two devices cannot share a socket without a splitter."""
    done = [at("jump", "hand", "pip", "k1"), at("fire", "hand", "disc", "k1")]
    assert faults(wiring_of(done, case({"hand": {}}))) == ["2 plugs for k1 of Quay: it takes one."]


def test_stick_in_the_socket_of_the_other_stick() -> None:
    """Move in the jack that feeds the right stick would turn the camera: a fault before anybody plays."""
    wiring = wiring_of([at("move", "hand", "birch", "q2", "stick", role="left stick")], case({"hand": {}}))
    assert faults(wiring) == ["q2 (A1) feeds the right stick, but birch is to be the left stick."]


def test_two_switches_for_one_button() -> None:
    """Two switches that the game hears as the same button are asked about; a controller's buttons count as well."""
    button = "bottom button in right cluster"
    done = [
        at("jump", "hand", "pip", "k1", role=button),
        at("look", "foot", "plain pad", "u1", "controller", role="right stick"),
        at("fire", "foot", "plain pad", "u1", "controller", role=button),
    ]
    told = said(wiring_of(done, case({"hand": {}, "foot": {}})), "same_role")
    assert told == [("query", "u1 (A1) and k1 (A2) feed the same bottom face button: the game cannot tell them apart.")]


def test_socket_that_does_not_say_what_it_feeds() -> None:
    """A socket without a role is told, with what to do."""
    hub = quay(socket=[{"name": "k1", "takes": "2-conductor"}])
    told = said(wiring_of([at("jump", "hand", "pip", "k1")], case({"hand": {}}, hubs=(hub,))), "role")
    assert told == [("query", "What k1 feeds is not recorded: press, and see what arrives.")]


def test_more_devices_than_the_hub_takes() -> None:
    """A hub that takes one device, and two are plugged in."""
    done = [at("jump", "hand", "pip", "k1"), at("fire", "hand", "pip", "k2")]
    wiring = wiring_of(done, case({"hand": {}}, hubs=(quay(most_devices=1),)))
    assert faults(wiring) == ["2 devices are plugged into Quay, which takes 1."]


def test_no_hub() -> None:
    """Without a hub the parts are still listed, each device by itself."""
    done = [Placement("jump", "site", site="hand", device="pip", kind="switch"),
            Placement("fire", "site", site="hand", device="pip", kind="switch")]  # fmt: skip
    wiring = wiring_of(done, case({"hand": {}}, hubs=()))
    assert wiring.wires == ()
    assert [(part.name, part.count) for part in wiring.parts] == [("pip", 2)]
    assert [finding.about for finding in wiring.findings] == ["hub"]


def test_device_without_a_socket_is_told() -> None:
    """Hubs are described, and yet nothing says where a device goes."""
    loose = Placement("jump", "site", site="hand", device="pip", kind="switch")
    assert said(wiring_of([loose], case({"hand": {}})), "hub") == [("query", "No socket was chosen for pip (hand).")]


def test_controller_that_two_parts_share_is_one_cable() -> None:
    """Thumb and fingers of one hand play the same controller: one wire, both sites on it, the longer way counts."""
    done = [
        at("look", "left thumb", "plain pad", "u2", "controller", role="right stick"),
        at("fire", "left fingers", "plain pad", "u2", "controller", control="top left front button"),
    ]
    sites = {"left thumb": {"part": "thumb", "to_hub_m": 1.0}, "left fingers": {"part": "fingertip", "to_hub_m": 1.2}}
    (wire,) = wiring_of(done, case(sites)).wires
    assert (wire.at, wire.actions, wire.needed_m) == (("left thumb", "left fingers"), ("look", "fire"), 1.35)
    air = [
        Placement(
            one.action, "site", site=one.site, device="plain pad", kind="controller", connection="paired", hub="Quay"
        )
        for one in done
    ]
    (pad,) = wiring_of(air, case(sites)).wires
    assert (pad.at, pad.paired) == (("left thumb", "left fingers"), True)


def test_toppers_and_extensions_are_parts() -> None:
    """What is fitted on a stick stands in the parts list; what is not in stock is to be bought, price unknown."""
    fit = sample_fit(topper="dish", extension="+8 mm")
    this = case({"hand": {}}, kit(topper=[{"name": "dish", "form": "dish", "height_mm": 0, "in_stock": 0}]))
    parts = wiring_of([at("move", "hand", "dew", "u1", "stick", fit=fit)], this).parts
    assert [(part.name, part.kind, part.count, part.buy, part.price) for part in parts] == [
        ("dew", "stick", 1, 0, 0.0), ("dish", "topper", 1, 1, None), ("+8 mm", "extension", 1, 0, 0.0), ("Quay", "hub", 1, 0, 0.0),
    ]  # fmt: skip


def sample_fit(**changes: Any) -> Fit:
    choice = finger_site().choice
    assert choice is not None
    return replace(choice, **changes)


@given(st.lists(st.sampled_from(["u1", "u2", "u3", "k1", "k2", "q1", "q2"]), min_size=1, unique=True), st.data())
def test_each_device_has_its_wire_and_its_current(sockets: list[str], data: st.DataObject) -> None:
    """Law: a wire for each socket used, in the hub's order, tags without a gap; currents add up to those of the devices."""
    kinds = {"u": ("dew", "stick"), "q": ("birch", "stick"), "k": ("pip", "switch")}
    done = [at(f"do {socket}", "hand", *_of(kinds, socket)) for socket in data.draw(st.permutations(sockets))]
    wiring = wiring_of(done, case({"hand": {"to_hub_m": 1.0}}))
    order = [socket for socket in ("u1", "u2", "u3", "q1", "q2", "k1", "k2") if socket in sockets]
    assert [(wire.tag, wire.socket) for wire in wiring.wires] == [(f"A{n}", one) for n, one in enumerate(order, 1)]
    usb = sum(socket.startswith("u") for socket in sockets)
    assert sum(line.current_a for line in wiring.power if words(line.where) == "in all at Quay") == pytest.approx(
        0.07 * usb, abs=1e-9
    )
    assert {part.name: part.count for part in wiring.parts if part.kind == "stick"}.get("dew", 0) == usb


def _of(kinds: dict[str, tuple[str, str]], socket: str) -> tuple[str, str, str]:
    device, kind = kinds[socket[0]]
    return device, socket, kind


def test_an_arm_makes_the_lead_longer() -> None:
    """By hand: dew at 0.9 m tied needs 1.05 m and its own 1.2 m do; 0.5 m along an arm make it 1.55 m, 0.35 m short: the 0.5 m
    lead, and where there is none it is missing and said why; who does what stays."""
    lead = {"name": "half", "plug": "USB", "length_m": 0.5}
    placements = [at("move", "right index", "dew", "u1", "stick", role="left stick")]
    site = {"right index": {"to_hub_m": 0.9}}
    held = [HeldWay("right index", "dew", 0.5, "long arm")]
    own = next(stick.cable_m for stick in kit().stick if stick.name == "dew") or 0.0
    assert 1.05 <= own < 1.55
    bare, arm = (wiring_of(placements, case(site, kit([lead])), ways) for ways in ((), held))
    assert [wire.through for wire in (*bare.wires, *arm.wires)] == [(), ("half",)]
    assert arm.wires[0].needed_m == pytest.approx(1.55, abs=1e-9)
    assert (arm.wires[0].tied_m, arm.wires[0].along_m) == (0.9, 0.5)
    none = wiring_of(placements, case(site, kit([])), held)
    assert words(none.wires[0].missing[0]).startswith("an extension lead, USB")
    assert any("0.50 m along long arm make the lead missing" in text for _, text in said(none, "missing"))
    short = wiring_of(placements, case({"right index": {"to_hub_m": 1.5}}, kit([])), held)
    assert not any("make the lead missing" in text for _, text in said(short, "missing"))


def test_a_reckoned_way_is_asked_about() -> None:
    """Where nobody laid a tape, the place of the hub stands in, a lead is chosen, and the page asks for the tape."""
    placements = [at("move", "right index", "dew", "u1", "stick", role="left stick")]
    held = [HeldWay("right index", "dew", 0.0, "tray", to_hub_m=0.8)]
    wiring = wiring_of(placements, case({"right index": {}}, kit([])), held)
    assert wiring.wires[0].needed_m == pytest.approx(0.95, abs=1e-9)
    assert [(level, "to_hub_mm" in text) for level, text in said(wiring, "way")] == [("query", True)]
