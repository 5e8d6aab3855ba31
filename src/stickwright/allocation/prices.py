"""Prices that nobody stated: a usual one taken, or one of the kind of game that was left as it stood.

They rank plans like any other price, so they are listed among what is assumed; and where one of them decides that an action
central to the game is not the player's own, that is said before anything else.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from stickwright.allocation import utility
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.scores import Scores
from stickwright.model.case import Case
from stickwright.model.fit import Assumption
from stickwright.model.game import Action
from stickwright.model.sharing import Placement

__all__ = ["MOST_PRICE", "UnstatedPrice", "decided_by_prices", "price_assumptions", "unstated_prices"]

MOST_PRICE = 10.0
"""End of the player's scale."""
CENTRAL_SHARE = 0.7
"""Of the most important action, from which on an action is central to the game (common practice)."""


@dataclass(frozen=True)
class UnstatedPrice:
    """What leaving an action to somebody or something else is taken to cost the player.

    Parameters
    ----------
    action : str
    how : str
        'option', 'helper', 'dropped' or 'toggle'.
    price : float
        0 to 10.
    why : Message
    """

    action: str
    how: Literal["option", "helper", "dropped", "toggle"]
    price: float
    why: Message


def unstated_prices(case: Case) -> tuple[UnstatedPrice, ...]:
    """Every price that counts in the plan and that nobody stated."""
    return tuple(one for action in case.game.action for one in _of(case, action))


def _of(case: Case, action: Action) -> Iterator[UnstatedPrice]:
    own = case.player.independence
    taken: tuple[tuple[Literal["option", "helper", "dropped", "toggle"], bool, float | None, float | None], ...] = (
        ("option", bool(action.option), action.option_price, utility.OPTION_POINTS),
        ("helper", action.helper and bool(case.player.helper), action.helper_price, utility.HELPER_POINTS if own is None else None),
        ("dropped", action.drop_price is not None, action.drop_price, None),
        ("toggle", bool(action.toggle), action.toggle_price, utility.TOGGLE_POINTS),
    )  # fmt: skip
    for how, counts, price, usual in taken:
        if not counts:
            continue
        if price is None and usual is not None:
            yield UnstatedPrice(action.name, how, usual, message(Scores.unstated_usual))
        elif price is not None and (action.name, how) in case.usual_prices:
            why = message(Scores.unstated_archetype, archetype=Name(case.game.archetype))
            yield UnstatedPrice(action.name, how, price, why)


def price_assumptions(prices: Sequence[UnstatedPrice]) -> tuple[Assumption, ...]:
    """The prices that nobody stated, as assumptions."""
    return tuple(
        Assumption(
            message(Scores.cost_of, action=Name(one.action), how=one.how),
            message(Scores.cost_value, cost_points=one.price, most_points=MOST_PRICE),
            one.why,
            message(Scores.cost_confirm),
        )
        for one in prices
    )


def decided_by_prices(
    case: Case, placements: Sequence[Placement], prices: Sequence[UnstatedPrice], can: Collection[str]
) -> Text:
    """Actions central to the game that a price nobody stated leaves to others or out; empty when none.

    Parameters
    ----------
    case : Case
    placements : sequence of Placement
        Of the plan, each with what its second best would cost.
    prices : sequence of UnstatedPrice
    can : collection of str
        Actions that some part of the player can do.
    """
    unstated: dict[tuple[str, str], UnstatedPrice] = {(one.action, one.how): one for one in prices}
    most = max((action.importance for action in case.game.action), default=0)
    central = {action.name for action in case.game.action if action.importance >= CENTRAL_SHARE * most}
    told = []
    for one in placements:
        price = unstated.get((one.action, one.how))
        if price is None or one.action not in central or one.action not in can or one.second_cost is None:
            continue
        turns = price.price + one.second_cost
        if turns <= MOST_PRICE and price.how != "toggle":
            told.append(
                message(
                    Scores.decided_by_cost,
                    action=Name(one.action),
                    how=price.how,
                    cost_points=price.price,
                    most_points=MOST_PRICE,
                    turns_points=round(turns, 1),
                )
            )
    return message(Scores.decided_by_costs, told=tuple(told)) if told else ""
