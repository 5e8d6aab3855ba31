"""What the game asks of the stick: weights round the circle, and which directions count."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from said import place
from stickwright.codes.message import message
from stickwright.codes.stand_ins import StandIns
from stickwright.codes.stick_problems import StickProblems
from stickwright.errors import BadInput
from stickwright.mechanics.demand import (
    FALSE_LIMIT_COSTLY_PER_MIN,
    FALSE_LIMIT_PER_MIN,
    demand_assumptions,
    demand_of,
    needed_directions,
)
from stickwright.model.game import Game

EIGHT = np.arange(8) * math.pi / 4


def game(*actions: dict[str, object]) -> Game:
    return Game.model_validate({"name": "a game", "action": [{"kind": "two-axis", **action} for action in actions]})


def weights(given_game: Game, grid: np.ndarray = EIGHT) -> list[float]:
    return list(demand_of(given_game, None, grid, "here").direction_weights)


def test_directions_not_named_are_all_alike() -> None:
    """Nothing said: eight directions, an eighth each."""
    assert weights(game({"name": "move"})) == pytest.approx([1 / 8] * 8, rel=1e-12)


def test_uneven_angles_weigh_by_their_share_of_the_circle() -> None:
    """Right, 30 degrees and left: the circle nearest to each is 105, 90 and 165 degrees, by hand."""
    grid = np.radians([0.0, 30.0, 180.0])
    assert weights(game({"name": "move"}), grid) == pytest.approx([105 / 360, 90 / 360, 165 / 360], rel=1e-12)


@given(degrees=st.lists(st.integers(0, 359), min_size=2, max_size=12, unique=True))
def test_weights_add_up_to_one(degrees: list[int]) -> None:
    """Law: whatever the angles, in whatever order, the weights add up to 1 and none is negative."""
    told = weights(game({"name": "move"}), np.radians(degrees))
    assert sum(told) == pytest.approx(1.0, rel=1e-9)
    assert min(told) > 0


def test_a_direction_not_named_weighs_as_the_nearest_one_named() -> None:
    """Forward 7 and back 1 named: forward-left goes with forward, back-left with back, left lies between."""
    needs = [{"direction_deg": 90, "weight": 7}, {"direction_deg": 270, "weight": 1}]
    told = np.array(weights(game({"name": "move", "direction": needs})))
    expected = np.array([4, 7, 7, 7, 4, 1, 1, 1])
    assert told == pytest.approx(expected / expected.sum(), rel=1e-12)


def test_directions_are_the_same_a_full_turn_on() -> None:
    """-90 and 270 degrees are one direction."""
    one, other = (
        weights(
            game({"name": "m", "direction": [{"direction_deg": p, "weight": 3}, {"direction_deg": 90, "weight": 1}]})
        )
        for p in (-90, 270)
    )
    assert one == pytest.approx(other, rel=1e-9)


@pytest.mark.parametrize("kind", ["one-axis"])
def test_one_axis_needs_left_and_right_only(kind: str) -> None:
    """Steering alone: half right, half left, nothing else counts."""
    told = demand_of(game({"name": "steer", "kind": kind}), None, EIGHT, "here")
    assert told.direction_weights == pytest.approx([0.5, 0, 0, 0, 0.5, 0, 0, 0], abs=1e-12)
    needed = needed_directions(np.array(told.direction_weights), EIGHT)
    assert needed.tolist() == [True, False, False, False, True, False, False, False]


def test_one_axis_with_directions_named_keeps_them() -> None:
    """A throttle goes forward and back: what is named wins over left and right."""
    needs = [{"direction_deg": p, "weight": w} for p, w in ((90, 1), (270, 1), (0, 0), (180, 0))]
    told = np.array(weights(game({"name": "throttle", "kind": "one-axis", "direction": needs})))
    assert told[2] == told[6] == told.max()
    assert told[0] == told[4] == 0


def test_weights_that_are_all_zero_are_refused() -> None:
    """A game that asks for nothing is a mistake, and the place is named."""
    with pytest.raises(BadInput, match="weights that are all 0") as refused:
        weights(game({"name": "move", "direction": [{"direction_deg": 90, "weight": 0}]}))
    (problem,) = refused.value.problems
    assert place(problem) == 'game.toml, action "move", direction'
    assert problem.remedy == message(StickProblems.remedy, what="give_weights")


def test_an_unknown_action_offers_the_nearest() -> None:
    """'mvoe' was meant to be 'move'."""
    with pytest.raises(BadInput, match="Did you mean 'move'") as refused:
        demand_of(game({"name": "move"}, {"name": "look"}), "mvoe", EIGHT, "left thumb")
    assert place(refused.value.problems[0]) == 'player.toml, site "left thumb", action'


def test_the_most_important_stick_action_is_taken_when_none_is_named() -> None:
    """Presses are not for a stick, however important."""
    told = demand_of(
        game(
            {"name": "jump", "kind": "press", "importance": 10},
            {"name": "move", "importance": 4},
            {"name": "look", "importance": 8, "duty_share": 0.3, "longest_hold_s": 4, "false_input_costly": True},
        ),
        None, EIGHT, "here",
    )  # fmt: skip
    assert told.action == "look"
    assert (told.duty_share, told.longest_hold_s) == (0.3, 4)
    assert told.false_input_limit_per_min == FALSE_LIMIT_COSTLY_PER_MIN == 0.2


def test_no_stick_action_asks_all_directions_alike_and_says_so() -> None:
    """A game without actions gives an even stick, marked as assumed."""
    empty = game()
    told = demand_of(empty, None, EIGHT, "here")
    assert told.direction_weights == pytest.approx([1 / 8] * 8, rel=1e-12)
    assert told.false_input_limit_per_min == FALSE_LIMIT_PER_MIN == 1.0
    (assumed,) = demand_assumptions(empty, told, "here")
    assert assumed.why == message(StandIns.no_action_named)


def test_what_the_game_file_does_not_say_is_an_assumption() -> None:
    """Time in use and usual level are marked until somebody types them."""
    silent, said = game({"name": "move"}), game({"name": "move", "duty_share": 0.5, "usual_level_share": 1.0})
    (assumed,) = demand_assumptions(silent, demand_of(silent, None, EIGHT, "here"), "here")
    assert assumed.value == message(StandIns.use, duty_share=0.5, level_share=1.0, left_right=False)
    assert demand_assumptions(said, demand_of(said, None, EIGHT, "here"), "here") == ()


def test_a_direction_used_half_as_much_as_the_average_still_counts() -> None:
    """Weights 4 and 1 on eight directions: average 1.75; the ones count (above 0.875), a half would not."""
    for low, counts in ((1.0, True), (0.4, False)):
        needs = [{"direction_deg": 45 * k, "weight": 4 if k in (0, 4) else low} for k in range(8)]
        told = np.array(weights(game({"name": "steer", "direction": needs})))
        assert needed_directions(told, EIGHT).tolist() == [k in (0, 4) or counts for k in range(8)]
