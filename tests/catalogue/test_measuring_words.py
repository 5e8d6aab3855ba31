"""What is said while a player measures, word for word, against sentences written by hand."""

from __future__ import annotations

import pytest

from stickwright.catalogue import say
from stickwright.codes.comparisons import Comparisons
from stickwright.codes.devices import Devices
from stickwright.codes.estimate import Estimate
from stickwright.codes.live_figures import LiveFigures
from stickwright.codes.live_notes import LiveNotes
from stickwright.codes.message import Name, message
from stickwright.codes.steps import Steps
from stickwright.codes.tasks import Tasks
from stickwright.measure.devices import Device
from stickwright.measure.lines import Line
from stickwright.measure.progress import verdict


@pytest.mark.parametrize(
    "value, unit, said",
    [
        (Estimate(0.723, 0.65, 0.79), "share", "72% (65 to 79%)"),
        (Estimate(0.0042, -0.003, 0.0123), "share", "0.42% (-0.30 to 1.2%)"),
        (Estimate(0.21, 0.18, 0.24), "s", "0.21\N{NO-BREAK SPACE}s (0.18 to 0.24\N{NO-BREAK SPACE}s)"),
        (Estimate(0.2, 0.1, 0.3), "rad", "11° (5.7 to 17°)"),
        (Estimate(-0.0054, -0.006, -0.005), "share/s", "-0.54% per second (-0.60 to -0.50% per second)"),
        (Estimate(2.5, 2.0, float("inf")), "per-s", "2.5 presses per second (at least 2.0 presses per second)"),
        (Estimate.unbounded(0.5, "All alike.", n=3), "share", "50%, no interval (All alike)"),
        (Estimate.missing(message(LiveFigures.reason, reason="not-tried")), "share", "not known (not tried yet)"),
    ],
)
def test_a_figure_keeps_its_digits_and_its_interval(value, unit, said):
    """Two digits each, also below one per cent; no interval, no end and no value are said with what is known."""
    assert say(message(LiveFigures.figure, value=value, unit=unit)) == said


def test_a_verdict_asks_for_what_is_missing():
    """Three more pushes, to the left: what it is now, and what is wanted."""
    line = Line(message(LiveFigures.reach, way="left"), Estimate(0.6, 0.4, 0.8, n=3), 0.1, "push", "left", (4,))
    said = (
        "Not enough yet. Ask for 3 more pushes to the left. Furthest deflection, left: 60% (40 to 80%); wanted: ±10%."
    )
    assert say(verdict([line])[1]) == said


@pytest.mark.parametrize(
    "text, said",
    [
        (message(LiveFigures.more, count=1, what="push", way="back-left"), "1 more push back-left"),
        (message(LiveFigures.more, count=2, what="rest", way=None), "2 more rests, each after a small movement"),
        (message(LiveFigures.so_far, verdict="enough", steps=1), "Enough so far. You may leave out the last step."),
        (message(LiveFigures.so_far, verdict="nearly", steps=9), "Nearly enough so far. Carry on: 9 steps to go."),
        (message(LiveNotes.waiting, samples=1), "1 sample is not saved yet. It is held here, and saving will be tried again."),
        (
            message(LiveNotes.stamps_back, device=Name("pad"), back_s=0.026),
            "The times of 'pad' went back by 26\N{NO-BREAK SPACE}ms. The last time was used instead.",
        ),
        (
            message(LiveNotes.lag, lag_s=0.0796, low_s=None, high_s=None),
            "The tuning delays the game by about 80\N{NO-BREAK SPACE}ms (worked out from the filter, not measured).",
        ),
        (message(Steps.rim, clockwise=True), "Go slowly round the edge, clockwise."),
        (message(Tasks.with_stop, words=message(Tasks.push)), "Push the way the arrow shows. Then let go. Stop if it hurts or tires you."),
        (
            message(Comparisons.whole, told=()),
            "There is no clear difference. Ask the player which they prefer: their answer counts more than these figures.",
        ),
        (
            message(Devices.confirm_switch, button=message(Devices.button, place=0), device=Device("a", "", (), (), "browser").called),
            "Confirm switch: bottom face button of stick without a name.",
        ),
    ],
    ids=lambda each: each.code if hasattr(each, "code") else "",
)  # fmt: skip
def test_sentences_of_the_measuring_page(text, said):
    """Plurals, units and names stand where a person would say them."""
    assert say(text) == said
