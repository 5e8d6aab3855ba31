"""How a device is to be set, which mode it must be in, and what to order: on page one and in the terminal."""

from __future__ import annotations

from dataclasses import replace

from sample_plan import capability, finger_fits, sample_plan

from said import said as plain
from stickwright.model.plan import DeviceNote, Plan, ToOrder
from stickwright.report.device_words import mode_steps, mode_trouble, order_words, setting_step
from stickwright.report.family import first_page, trouble
from stickwright.report.words import plan_words


def with_notes() -> Plan:
    plan = sample_plan()
    site = plan.sites[0]
    fit = replace(site.fits[0], setting="magnet out", how_to_set="pull the magnet out until it clicks.")
    note = DeviceNote(
        fit.stick, "magnet out", fit.how_to_set, "gamepad", "one light is on", "Hold both buttons for 3 s."
    )
    first = replace(site, choice=fit, fits=(fit, *site.fits[1:]))
    return replace(plan, sites=(first, *plan.sites[1:]), device_notes=(note,), sharing=None)


def test_page_one_says_how_to_set_it_and_which_mode() -> None:
    """In the steps where the stick is taken and plugged in, and under what to try when it does not work."""
    steps = [step["text"] for step in first_page(with_notes())["steps"]]
    assert "Set dew to “magnet out”: pull the magnet out until it clicks." in steps[1]
    assert "Check that dew is in mode “gamepad”: one light is on." in steps[3]
    assert trouble(with_notes())[-1] == [
        "Is dew in another mode?", "Hold both buttons for 3 s. It must be in “gamepad”."
    ]  # fmt: skip


def test_the_terminal_says_the_same() -> None:
    """One block, both lines."""
    said = " ".join(plan_words(with_notes()).split())
    assert "Set dew to “magnet out”: pull the magnet out until it clicks." in said
    assert "Check that dew is in mode “gamepad”: one light is on." in said


def test_nothing_is_said_of_plain_devices() -> None:
    """No setting, no mode: no line, and the usual causes alone."""
    plan = sample_plan()
    assert mode_steps(plan) == []
    assert mode_trouble(plan) == []
    assert setting_step(plan.sites[0].fits[0]) is None
    assert "Settings and modes" not in plan_words(plan)


def test_what_to_order_has_every_figure() -> None:
    """Forces, travel, height, time and price; where nothing of the kit fits it says that, not a gain."""
    fit = finger_fits(capability())[0]
    said = plain(order_words(ToOrder("bench-made", fit, 0.96, None, 6.0, 140.0)))
    for words in ("an actuation force of 0.025 N", "0.11 N at full travel", "9.0 mm of travel", "45 mm above the pivot",
                  "about 6 weeks", "140.00", "No stick of this kit fits.", "96% of the simulations"):  # fmt: skip
        assert words in said, words
    better = order_words(ToOrder("bench-made", fit, 0.96, 0.41, None, None))
    assert "about 0.41 bits more than the best stick of this kit." in better
    assert "weeks" not in better
