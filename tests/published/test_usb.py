"""Power and wires of USB 2.0, and the order of the standard gamepad, against the standards.

Sources: Universal Serial Bus Specification, revision 2.0, 6.4.2 and 7.2.1 (from memory; the figures of 7.2.1 held
against pages that quote it) [usb-2]. W3C, Gamepad, section Remapping, table of the standard gamepad, read in the
working group's repository [w3c-gamepad].
"""

from __future__ import annotations

import pytest

from said import said
from stickwright.allocation.power import (
    BUS_POWERED_WAYS,
    HIGH_POWER_LOADS,
    UNIT_LOAD_A,
    power_faults,
    power_lines,
    unit_loads,
)
from stickwright.model.hub import BUTTON_ROLES, STICK_ROLES, Hub, Socket
from stickwright.model.kit import Lead
from stickwright.model.plugs import conductors_of
from stickwright.model.sharing import Wire

STANDARD_BUTTONS = (
    "Bottom button in right cluster", "Right button in right cluster", "Left button in right cluster",
    "Top button in right cluster", "Top left front button", "Top right front button", "Bottom left front button",
    "Bottom right front button", "Left button in center cluster", "Right button in center cluster",
    "Left stick pressed button", "Right stick pressed button", "Top button in left cluster",
    "Bottom button in left cluster", "Left button in left cluster", "Right button in left cluster",
)  # fmt: skip
"""buttons[0] to buttons[15] as the table prints them."""


@pytest.mark.parametrize("current_ma, loads", [(2, 1), (98, 1), (100, 1), (102, 2), (200, 2), (498, 5), (500, 5)])
def test_unit_load(current_ma: int, loads: int) -> None:
    """USB 2.0, 7.2.1: a unit load is 100 mA; low-power is one, high-power up to five. Currents in steps of 2 mA, as a
    device states them (9.6.3; from memory)."""
    assert unit_loads(current_ma / 1000) == loads


def test_every_connected_device_counts() -> None:
    """USB 2.0, 7.2.1.5 (from memory): a device with its own supply may still draw one unit load."""
    assert unit_loads(0.0) == 1


def test_high_power_function() -> None:
    """USB 2.0, 7.2.1.4: a high-power function draws at most five unit loads, 500 mA."""
    assert pytest.approx(0.5, abs=1e-12) == HIGH_POWER_LOADS * UNIT_LOAD_A


def test_bus_powered_hub() -> None:
    """USB 2.0, 7.2.1.1: of five unit loads a bus-powered hub keeps one for itself and gives one to each of at most four
    ports; four low-power devices just use it up."""
    lead = Lead(name="four", kind="splitter", plug="USB", sockets=("USB",) * 4)
    wires = [
        Wire(f"A{way}", "stick", ("hand",), "USB-A", (), "hub", f"u1/{way}", "USB", None, (), None, None, 0.1, ())
        for way in (1, 2, 3, 4)
    ]
    hub = Hub(name="hub", socket=(Socket(name="u1", takes="USB", current_a=0.5),), current_a=0.5)
    lines = {said(line.where): line for line in power_lines(wires, [hub], {("hub", "u1"): lead})}
    assert BUS_POWERED_WAYS == 4
    assert power_faults(list(lines.values()), wires, {("hub", "u1"): lead}) == ()
    five = lead.model_copy(update={"sockets": ("USB",) * 5})
    assert len(power_faults([], [], {("hub", "u1"): five})) == 1
    assert [lines[f"at u1, way {way}"].limit_a for way in (1, 2, 3, 4)] == [0.1] * 4
    whole = lines["at splitter four in u1, 100 mA of it for itself"]
    assert (whole.current_a, whole.limit_a, whole.unit_loads) == (0.5, 0.5, 5)
    assert lines["at u1"].current_a == 0.5


def test_wires_of_a_usb_cable() -> None:
    """USB 2.0, 6.4.2 (from memory): supply, the two data wires, ground, contacts 1 to 4."""
    assert conductors_of("USB-A") == ("supply", "data -", "data +", "ground")


def test_standard_gamepad_buttons() -> None:
    """W3C Gamepad, Remapping: buttons 0 to 15 by place, as the table prints them; 17 in all, the last in the centre
    cluster of three (the name of button 16 from memory)."""
    assert tuple(role.capitalize() for role in BUTTON_ROLES[:16]) == STANDARD_BUTTONS
    assert len(BUTTON_ROLES) == 17
    assert BUTTON_ROLES[16] == "center button in center cluster"


def test_standard_gamepad_sticks() -> None:
    """W3C Gamepad, Remapping: axes 0 and 1 are the left stick, 2 and 3 the right one."""
    assert STICK_ROLES == ("left stick", "right stick")
