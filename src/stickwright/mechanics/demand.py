"""What the game asks of the stick at a site, as weights on the directions judged."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.file_places import FilePlaces
from stickwright.codes.message import Name, message
from stickwright.codes.stand_ins import StandIns
from stickwright.codes.stick_problems import StickProblems
from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.model.fit import Assumption
from stickwright.model.game import Action, Game
from stickwright.model.plan import Demand

__all__ = ["FALSE_LIMIT_COSTLY_PER_MIN", "FALSE_LIMIT_PER_MIN", "demand_assumptions", "demand_of", "needed_directions"]

Array = NDArray[np.float64]

FALSE_LIMIT_PER_MIN = 1.0
FALSE_LIMIT_COSTLY_PER_MIN = 0.2
"""False inputs a minute in play, and where a false move is costly: common practice, no source."""
STICK_KINDS = ("two-axis", "one-axis", "trigger")


def demand_of(game: Game, action_name: str | None, direction_rad: Array, site: str) -> Demand:
    """Demand of one action on the stick at a site; an even-use stick when the game names none.

    Parameters
    ----------
    game : Game
    action_name : str or None
        The action this site is to do; the most important stick action when None.
    direction_rad : array, shape (k,)
        Directions judged.
    site : str
        For the sentence.

    Returns
    -------
    Demand
        Weights add up to 1. A direction the action does not name weighs as much as the nearest one named.

    Raises
    ------
    BadInput
        An action that the game lacks, or weights that are all 0.
    """
    action = _action(game, action_name, site)
    if action is None:
        weights = _even(direction_rad)
        return Demand("", tuple(weights), 0.5, 1.0, None, FALSE_LIMIT_PER_MIN)
    if action.direction:
        named = np.array([need.direction_rad for need in action.direction])
        raw = np.array([need.weight for need in action.direction])
        gap = np.abs((direction_rad[:, None] - named[None, :] + math.pi) % (2 * math.pi) - math.pi)
        near = gap <= gap.min(axis=1, keepdims=True) + 1e-9
        weights = (near * raw).sum(axis=1) / near.sum(axis=1) * _even(direction_rad)
    elif action.kind == "one-axis":
        weights = np.maximum(np.abs(np.cos(direction_rad)) - 0.8, 0.0)
    else:
        weights = _even(direction_rad)
    if weights.sum() <= 0:
        raise BadInput(
            Problem(
                ("game.toml", message(FilePlaces.named, key=Name("action"), name=Name(action.name)), "direction"),
                message(StickProblems.found, what="weights_zero"),
                message(StickProblems.expected, what="one_above_0"),
                message(StickProblems.remedy, what="give_weights"),
            )
        )
    weights = weights / weights.sum()
    return Demand(
        action.name,
        tuple(float(weight) for weight in weights),
        action.duty_share,
        action.usual_level_share,
        action.longest_hold_s,
        FALSE_LIMIT_COSTLY_PER_MIN if action.false_input_costly else FALSE_LIMIT_PER_MIN,
    )


def demand_assumptions(game: Game, demand: Demand, site: str) -> tuple[Assumption, ...]:
    """What stands in for things the game file does not say of the action.

    Parameters
    ----------
    game : Game
    demand : Demand
        From `demand_of`.
    site : str
        For the sentence.
    """
    action = next((one for one in game.action if one.name == demand.action), None)
    if action is None:
        return (
            Assumption(
                message(StandIns.game_use, sites=(Name(site),)),
                message(StandIns.even_use, duty_share=demand.duty_share),
                message(StandIns.no_action_named), message(StandIns.name_actions),
            ),
        )  # fmt: skip
    said = action.model_fields_set
    duty = None if "duty_share" in said else action.duty_share
    level = None if "usual_level_share" in said else action.usual_level_share
    left_right = action.kind == "one-axis" and not action.direction
    if duty is None and level is None and not left_right:
        return ()
    return (
        Assumption(
            message(StandIns.action_use, action=Name(action.name), sites=(Name(site),)),
            message(StandIns.use, duty_share=duty, level_share=level, left_right=left_right),
            message(StandIns.game_does_not_say), message(StandIns.watch_play),
        ),
    )  # fmt: skip


def _action(game: Game, name: str | None, site: str) -> Action | None:
    if name is not None:
        for action in game.action:
            if action.name == name:
                return action
        raise BadInput(
            Problem(
                ("player.toml", message(FilePlaces.named, key=Name("site"), name=Name(site)), "action"),
                f'"{name}"',
                message(StickProblems.expected, what="action"),
                did_you_mean(name, [action.name for action in game.action]),
            )
        )
    sticks = [action for action in game.action if action.kind in STICK_KINDS]
    return max(sticks, key=lambda action: action.importance, default=None)


def _even(direction_rad: Array) -> Array:
    """Share of the circle nearest to each direction: even for evenly spaced ones."""
    if len(direction_rad) == 1:
        return np.ones(1)
    order = np.argsort(direction_rad)
    ahead = np.diff(np.append(direction_rad[order], direction_rad[order[0]] + 2 * math.pi))
    share = np.empty(len(direction_rad))
    share[order] = (ahead + np.roll(ahead, 1)) / (4 * math.pi)
    return share


def needed_directions(weights: Array, direction_rad: Array) -> NDArray[np.bool_]:
    """Directions whose reach and effort decide whether a set-up fits: at least half as used as the average.

    The others count by their weight in the bits, and the weakest of all directions is told beside (`Fit.weakest_of_all`).

    Parameters
    ----------
    weights : array, shape (k,)
        From `demand_of`.
    direction_rad : array, shape (k,)

    Returns
    -------
    array of bool, shape (k,)
    """
    needed: NDArray[np.bool_] = weights >= 0.5 * _even(direction_rad) - 1e-12
    return needed
