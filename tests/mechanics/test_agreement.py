"""Do gauge and stick agree?"""

from __future__ import annotations

import math

import numpy as np
import pytest

from said import said
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name
from stickwright.mechanics import agreement as compared
from stickwright.model.recorded import Finding, ReachReport

EIGHT = np.arange(8) * math.pi / 4
PREDICTED = np.array([1.0, 0.9, 0.5, 0.6, 0.75, 0.8, 0.95, 1.0])


def recorded(share: np.ndarray, turn_rad: float = 0.0) -> ReachReport:
    reach = tuple(Estimate(float(s), float(s) - 0.03, float(s) + 0.03) for s in share)
    return ReachReport(tuple(float(phi + turn_rad) for phi in EIGHT), reach, Estimate(0.7, 0.6, 0.8), 0.0)


def agreement(direction_rad: np.ndarray, predicted: np.ndarray, reach: ReachReport, turn: float, name: str) -> Finding:
    return compared.agreement(
        direction_rad, predicted, reach, turn, setup=Name(name), task="push", recording="push.csv"
    )


def test_agreement_is_a_note() -> None:
    found = agreement(EIGHT, PREDICTED, recorded(PREDICTED + 0.05), 0.0, "dew")
    assert found.level == "note"
    assert "agree on dew" in said(found.text)


def test_a_turned_stick_is_turned_back_first() -> None:
    """Turned 40 degrees, but otherwise as predicted: no disagreement."""
    turn = math.radians(40)
    assert agreement(EIGHT, PREDICTED, recorded(PREDICTED, turn), turn, "dew").level == "note"
    assert agreement(EIGHT, PREDICTED, recorded(PREDICTED, turn), 0.0, "dew").level == "query"


def test_mirrored_readings_are_asked_about() -> None:
    """Left and right swapped at the gauge: the recorded polygon is the mirror image of the predicted one."""
    mirrored = PREDICTED[[4, 3, 2, 1, 0, 7, 6, 5]]
    lopsided = np.array([1.0, 0.95, 0.6, 0.35, 0.3, 0.4, 0.7, 0.95])
    found = agreement(EIGHT, lopsided, recorded(lopsided[[4, 3, 2, 1, 0, 7, 6, 5]]), 0.0, "dew")
    assert (found.level, found.about) == ("query", "mirrored_readings")
    assert "left and right" in said(found.text)
    assert agreement(EIGHT, PREDICTED, recorded(mirrored), 0.0, "dew").level == "query"


@pytest.mark.parametrize("place,words", [(2, "forward"), (5, "back-left")])
def test_the_direction_that_disagrees_is_named(place: int, words: str) -> None:
    share = PREDICTED.copy()
    share[place] -= 0.35
    found = agreement(EIGHT, PREDICTED, recorded(share), 0.0, "dew")
    assert found.level == "query"
    assert words in said(found.text)
    assert "Measure that direction once more" in said(found.text)


def test_beyond_full_output_counts_as_full() -> None:
    """A rim that overshoots full output by a few per cent is no disagreement."""
    full = np.ones(8)
    assert agreement(EIGHT, full, recorded(full * 1.3), 0.0, "dew").level == "note"


def test_directions_without_a_recorded_reach_are_left_out_and_counted() -> None:
    """Two of eight directions were not reached in the recording: the rest is compared, and no 'nan' is printed."""
    share = PREDICTED + 0.05
    share[[1, 6]] = np.nan
    found = agreement(EIGHT, PREDICTED, recorded(share), 0.0, "dew")
    assert found.level == "note"
    assert "the largest difference is 5% of travel" in said(found.text)
    assert "; 2 directions without a recorded travel not compared." in said(found.text)


def test_a_recording_that_tells_no_reach_is_not_compared() -> None:
    """No direction known: said, and no figure made up."""
    found = agreement(EIGHT, PREDICTED, recorded(PREDICTED * np.nan), 0.0, "dew")
    assert found.level == "note"
    assert "could not be compared" in said(found.text)
    assert "nan" not in said(found.text)


def test_both_figures_are_of_the_same_direction_and_say_what_they_are() -> None:
    """Predicted 0.50 forward, recorded 0.58 there and 0.06 less than predicted back-left; the largest and the weakest are told."""
    share = PREDICTED.copy()
    share[2], share[5] = 0.58, 0.74
    found = agreement(EIGHT, PREDICTED, recorded(share), 0.0, "dew")
    assert said(found.text) == (
        "Readings and recording agree on dew: the largest difference is 8% of travel, forward 50% predicted from the "
        "readings, 58% recorded in full pushes, push.csv."
    )
    share[2], share[5] = 0.55, 0.72
    assert said(agreement(EIGHT, PREDICTED, recorded(share), 0.0, "dew").text).endswith(
        "the largest difference is 8% of travel, back-left 80% predicted from the readings, 72% recorded in full pushes, "
        "push.csv. Weakest as predicted: forward 50% predicted from the readings, 55% recorded in full pushes, push.csv."
    )


def test_a_turned_recording_is_told_in_the_directions_of_the_readings() -> None:
    """Recorded 13 degrees round: the direction named is one of the eight that were read, as on every other page."""
    turn = math.radians(13)
    found = agreement(EIGHT, PREDICTED, recorded(PREDICTED - 0.05, turn), turn, "dew")
    assert "°" not in said(found.text)
    assert "predicted from the readings" in said(found.text)
