"""The invented player: late, within reach, trembling at its own rhythm, the same again from the same seed."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stickwright.measure.simulated_player import PretendPlayer, Traits

STILL = Traits(tremor_share=0.0, noise_share=0.0)


def path(player: PretendPlayer, seconds: float, rate_hz: float = 250.0) -> np.ndarray:
    states = [player(number / rate_hz) for number in range(round(seconds * rate_hz))]
    return np.array([(state.axes[0], -state.axes[1]) for state in states])


def test_nothing_before_the_reaction() -> None:
    """Until the reaction time is over the stick lies where it lay; after it, it moves."""
    xy = path(PretendPlayer(lambda: (0.5, 0.5), STILL), 0.4)
    reacts = round(STILL.reaction_s * 250.0)
    assert xy[: reacts - 1] == pytest.approx(np.tile(STILL.rest_xy, (reacts - 1, 1)), abs=1e-12)
    assert xy[-1, 0] > 0.1


@given(st.floats(-1.0, 1.0), st.floats(-1.0, 1.0))
def test_never_beyond_reach(x: float, y: float) -> None:
    """It arrives where it is asked to be when that is within its reach, and on the edge of its reach otherwise."""
    end = path(PretendPlayer(lambda: (x, y), STILL), 2.5, rate_hz=50.0)[-1]
    right, forward, left, back = STILL.reach
    far = math.hypot(x / (right if x >= 0 else left), y / (forward if y >= 0 else back))
    assert end == pytest.approx(np.array([x, y]) / max(far, 1.0), abs=1e-3)


def test_the_same_again() -> None:
    """The same seed gives the same movement, another one another."""
    one, two, three = (path(PretendPlayer(lambda: None, seed=seed), 1.0) for seed in (4, 4, 5))
    assert np.array_equal(one, two)
    assert not np.array_equal(one, three)


def test_its_tremor_is_found() -> None:
    """The program finds the invented tremor at the rhythm and size put in."""
    from stickwright.trace.tremor import dominant_tremor

    found = dominant_tremor(path(PretendPlayer(lambda: None), 20.0), 250.0)
    assert found[0] == pytest.approx(5.2, abs=0.1)
