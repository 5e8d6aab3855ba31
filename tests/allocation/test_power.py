"""What is drawn at a socket, through a splitter and from a hub, against what each gives."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from said import said
from stickwright.allocation.power import bare_socket, goes_by_usb, power_faults, power_lines, unit_loads
from stickwright.allocation.wiring import wiring_of
from stickwright.errors import BadInput
from stickwright.model.kit import Lead
from stickwright.model.sharing import Wire, Wiring
from wired_cases import at, case, kit, quay

PLAIN = Wire("A1", "dew", ("hand",), "USB-A", (), "Quay", "u1", "USB", None, (), None, None, 0.07, ())


def two_on_a_splitter(**splitter: object) -> Wiring:
    lead = {"name": "fork", "kind": "splitter", "plug": "USB", "sockets": ["USB", "USB"], **splitter}
    done = [at("move", "hand", "hazel", "u1/1", "stick"), at("look", "foot", "dew", "u1/2", "stick")]
    return wiring_of(done, case({"hand": {}, "foot": {}}, kit([lead])))


def test_splitter_without_supply() -> None:
    """Hazel 90 and dew 70 mA on a bus-powered splitter: each way gives 100; with 100 for itself 260 of 500, but the
    hub's socket gives 100."""
    wiring = two_on_a_splitter()
    assert [(said(line.words), line.unit_loads) for line in wiring.power] == [
        ("90 mA of 100 mA at u1, way 1", 1),
        ("70 mA of 100 mA at u1, way 2", 1),
        ("260 mA of 500 mA at splitter fork in u1, 100 mA of it for itself", 3),
        ("260 mA of 100 mA at u1", 3),
        ("260 mA of 300 mA in all at Quay", 3),
    ]
    assert [said(finding.text) for finding in wiring.findings if finding.level == "fault"] == [
        "Too much current: 260 mA of 100 mA at u1. Use another socket, or a splitter with its own power supply."
    ]


def test_splitter_with_supply_spares_the_hub() -> None:
    """With a supply of its own the splitter feeds its ways; the hub feeds only what it draws itself, one unit load."""
    wiring = two_on_a_splitter(port_current_ma=500)
    assert [said(line.words) for line in wiring.power][-2:] == [
        "100 mA of 100 mA at u1",
        "100 mA of 300 mA in all at Quay",
    ]
    assert not [finding for finding in wiring.findings if finding.level == "fault"]


def test_hub_total_over_its_limit() -> None:
    """Three sockets within their own limit, 260 mA in all, at a hub that gives 200: a fault of the hub, not of a socket."""
    pads = kit(controller=[{"name": "plain pad", "current_ma": 100, "in_stock": 3}])
    done = [
        at("look", "hand", "plain pad", "u1", "controller"),
        at("move", "foot", "hazel", "u2", "stick"),
        at("steer", "chin", "dew", "u3", "stick"),
    ]
    wiring = wiring_of(done, case({"hand": {}, "foot": {}, "chin": {}}, pads, (quay(current_ma=200),)))
    assert [said(finding.text) for finding in wiring.findings if finding.level == "fault"] == [
        "Too much current: 260 mA of 200 mA in all at Quay. Use another socket, or a splitter with its own power supply."
    ]


def test_limit_not_known() -> None:
    """Where nobody said what a socket gives, the current stands without a verdict."""
    hub = quay(socket=[{"name": "u1", "takes": "USB", "role": "left stick"}], current_ma=None)
    (line, total) = power_lines([PLAIN], [hub], {})
    assert (said(line.words), line.limit_a) == ("70 mA at u1, limit not known", None)
    assert said(total.words) == "70 mA in all at Quay, limit not known"
    assert power_faults([line, total], [PLAIN], {}) == ()


def test_more_than_any_usb_device_may_draw() -> None:
    """Above five unit loads it is no USB 2.0 device; five are allowed."""
    greedy = replace(PLAIN, current_a=0.501)
    assert [said(finding.text) for finding in power_faults([], [greedy], {})] == [
        "A1: dew draws 501 mA, more than the 500 mA of any USB 2.0 device: see its manual."
    ]
    assert power_faults([], [replace(PLAIN, current_a=0.5)], {}) == ()


def test_splitter_with_too_many_ways() -> None:
    """Five ways without a supply: more than one socket can feed."""
    lead = Lead(name="fork", kind="splitter", plug="USB", sockets=("USB",) * 5)
    assert [finding.about for finding in power_faults([], [], {("Quay", "u1"): lead})] == ["power"]
    fed = lead.model_copy(update={"port_current_a": 0.5})
    assert power_faults([], [], {("Quay", "u1"): fed}) == ()


def test_a_limit_just_passed_shows() -> None:
    """100.4 mA is not printed as 100 of 100."""
    (line, _) = power_lines([replace(PLAIN, current_a=0.1004)], [quay()], {})
    assert said(line.words) == "100.4 mA of 100 mA at u1"
    assert len(power_faults([line], [PLAIN], {})) == 1


def test_no_current_by_mistake() -> None:
    """A current below nothing, or none at all, is refused."""
    for wrong in (-0.1, math.nan, math.inf):
        with pytest.raises(BadInput) as told:
            unit_loads(wrong)
        assert said(told.value.problems[0].expected) == "0 A or more"


def test_adapter_into_a_usb_socket_counts_as_usb() -> None:
    """A round plug that reaches the hub through a USB adapter is a USB device for the hub."""
    assert goes_by_usb("3.5 mm 4-conductor", "USB")
    assert not goes_by_usb("3.5 mm 4-conductor", "USB or 4-conductor")
    assert not goes_by_usb("3.5 mm 4-conductor", "4-conductor")


def test_way_of_a_splitter_by_name() -> None:
    """u1/2 is way 2 in u1, unless the hub has a socket of that very name."""
    assert bare_socket("u1/2", ["u1"]) == ("u1", 2)
    assert bare_socket("u1/2", ["u1", "u1/2"]) == ("u1/2", None)
    assert bare_socket("front/left", ["u1"]) == ("front/left", None)


@given(st.lists(st.tuples(st.sampled_from(["u1", "u2", "u3"]), st.integers(0, 600)), max_size=8))
def test_hub_total_is_the_sum_of_its_devices(drawn: list[tuple[str, int]]) -> None:
    """Law: what the hub gives in all is what its devices draw, and so for each socket."""
    wires = [replace(PLAIN, tag=f"A{n}", socket=socket, current_a=ma / 1000) for n, (socket, ma) in enumerate(drawn)]
    lines = {
        line.where.param("socket" if line.where.text == "at_socket" else "hub"): line
        for line in power_lines(wires, [quay()], {})
    }
    for socket in ("u1", "u2", "u3"):
        here = [ma for name, ma in drawn if name == socket]
        assert (socket in lines) == bool(here)
        if here:
            assert lines[socket].current_a == pytest.approx(sum(here) / 1000, abs=1e-9)
            assert lines[socket].unit_loads == sum(max(1, -(-ma // 100)) for ma in here)
    if drawn:
        assert lines["Quay"].current_a == pytest.approx(sum(ma for _, ma in drawn) / 1000, abs=1e-9)
        over = {
            name for name, line in lines.items() if line.limit_a is not None and line.current_a > line.limit_a + 1e-9
        }
        assert len([one for one in power_faults(list(lines.values()), [], {}) if "Too much" in said(one.text)]) == len(
            over
        )
