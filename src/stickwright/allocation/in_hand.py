"""Whether a controller can be held in one hand or in two, or has to rest on something: its mass against what a hand holds.

What a hand holds is the player's own (`holds_kg`, `holds_s` at a site of that hand). Nothing here refuses an action: a
controller too heavy to hold is offered resting instead, and what nobody measured only costs.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from stickwright.allocation.concurrency import limb_of
from stickwright.allocation.problem import rounded
from stickwright.codes.holding import Holding
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.scores import Scores
from stickwright.mechanics.effort_curves import endurance_s
from stickwright.model.fit import Assumption
from stickwright.model.kit import Controller, Stick
from stickwright.model.parts import HAND_PARTS
from stickwright.model.player import Player, Site
from stickwright.model.sharing import Term

__all__ = [
    "BLOCK_S", "USUAL_CONTROLLER_KG", "USUAL_HOLDS_KG", "ControllerGrip", "hand_holds", "held_assumptions", "held_for_s", "held_kg",
    "holds_of",
]  # fmt: skip

USUAL_HOLDS_KG = 0.15
"""What a hand holds comfortably through a block of play, where nobody tried (assumed): common practice, no source."""
USUAL_CONTROLLER_KG = 0.28
"""Mass of a controller that nobody weighed (assumed): common practice, no source."""
BLOCK_S = 1800.0
"""Play before the usual pause, through which it has to be held: common practice, no source."""
UNTRIED_POINTS = 0.1
"""Of holding what nobody weighed, or with a hand that nobody tried."""
DOUBTED_POINTS = 0.3
"""Of holding what is too heavy at assumed figures."""
RESTS_POINTS = 0.2
"""Of a controller made to be held that rests on something instead: that too has to be put there."""
_COMFORT_SHARE = 0.3
"""Where on the endurance curve the hold is put: only its ratio counts, which is the same everywhere on a power law."""


@dataclass(frozen=True)
class ControllerGrip:
    """One way to have a controller: in the hand or resting.

    Parameters
    ----------
    how : {'one hand', 'two hands', 'resting', ''}
        Empty where nobody said how it is held: it is put up as any other device.
    place : str
        Key of the hand or hands that hold it; empty for where it rests.
    limbs : tuple of str
        Arms that do nothing else meanwhile.
    why : Text
        Why it rests, though it is made to be held; a clause.
    terms : tuple of Term
        What having it so costs.
    """

    how: Literal["one hand", "two hands", "resting", ""] = ""
    place: str = ""
    limbs: tuple[str, ...] = ()
    why: Text = ""
    terms: tuple[Term, ...] = ()


@dataclass(frozen=True)
class _Hand:
    """What one hand holds, as far as somebody tried."""

    name: Message
    kg: float | None
    s: float | None


def holds_of(
    player: Player, site: Site, controller: Controller, on_grip: Sequence[Stick] = ()
) -> tuple[ControllerGrip, ...]:
    """Every way to have a controller for a site: held where it is not known to be too heavy, and resting.

    Parameters
    ----------
    player : Player
    site : Site
        That works it.
    controller : Controller
    on_grip : sequence of Stick
        Fixed to its grip: the hand holds them too.
    """
    if controller.held is None:
        return (ControllerGrip(),)
    if controller.held == "resting":
        return (ControllerGrip("resting"),)
    if site.part not in HAND_PARTS:
        return (_resting(message(Holding.other_site, site=Name(site.name))),)
    limb = limb_of(site)
    arms = [limb] if controller.held == "one hand" else _arms(player, limb)
    hands = [hand_holds(player, arm) for arm in arms]
    share = 1.0 if controller.held == "one hand" else 0.5
    block_s = None if player.session_s is None else min(player.session_s, BLOCK_S)
    for hand in hands:
        too_much = _too_much(controller, on_grip, share, hand, block_s)
        if too_much is not None:
            return (_resting(too_much),)
    terms = _doubts(controller, on_grip, share, hands, block_s)
    why = message(Holding.reasons, told=tuple(one.words for one in terms)) if terms else ""
    place = f"held:{limb}" if controller.held == "one hand" else "held:both"
    return ControllerGrip(controller.held, place, tuple(arms), "", terms), _resting(why)


def _resting(why: Text) -> ControllerGrip:
    return ControllerGrip("resting", "", (), why, (Term("held", -RESTS_POINTS, message(Scores.rests_anyway)),))


def _arms(player: Player, limb: str) -> list[str]:
    """Both arms; where sides are not told, as many as the sites tell of."""
    told = [limb_of(site) for site in player.site if site.part in HAND_PARTS]
    return list(dict.fromkeys([limb, *told, *(() if limb.startswith("unsaid") else ("left arm", "right arm"))]))


def hand_holds(player: Player, arm: str) -> _Hand:
    """What the hand of one arm holds comfortably and how long: the least that any of its sites says.

    Parameters
    ----------
    player : Player
    arm : str
        As `limb_of` names it.
    """
    sites = [site for site in player.site if site.part in HAND_PARTS and limb_of(site) == arm]
    said = [(site.holds_kg, site.holds_s) for site in sites if site.holds_kg is not None]
    side: Literal["left", "right"] | None = "left" if arm == "left arm" else "right" if arm == "right arm" else None
    name = message(Holding.hand, side=side)
    if not said:
        return _Hand(name, None, None)
    kg, s = min(said, key=lambda one: (one[0], one[1] if one[1] is not None else math.inf))
    return _Hand(name, kg, s)


def held_for_s(load_kg: float, holds_kg: float, holds_s: float) -> float:
    """How long a hand holds a load no heavier than the one that was tried.

    Parameters
    ----------
    load_kg : float
    holds_kg, holds_s : float
        What was tried, and how long that was comfortable.

    Returns
    -------
    float
        The time that was tried, times the ratio of the endurance curve at the two loads.

    Notes
    -----
    Curve for the hand: [frey-law-avin-2010], a power law of effort, so that the ratio depends on the ratio of the loads alone.

    Examples
    --------
    >>> held_for_s(0.2, 0.2, 300.0), round(held_for_s(0.1, 0.2, 300.0))
    (300.0, 916)
    """
    if load_kg <= 0:
        return math.inf
    ratio = min(1.0, load_kg / holds_kg)
    here, there = (float(endurance_s(_COMFORT_SHARE * part, joint="hand")) for part in (ratio, 1.0))
    return holds_s * here / there


def held_kg(controller: Controller, on_grip: Sequence[Stick] = ()) -> float | None:
    """What is held at least: the controller and all that was weighed on its grip; None when the controller was not weighed.

    Parameters
    ----------
    controller : Controller
    on_grip : sequence of Stick
        Fixed to its grip.

    Examples
    --------
    >>> held_kg(Controller(name="pad", mass_kg=0.2))
    0.2
    """
    return None if controller.mass_kg is None else controller.mass_kg + sum(one.mass_kg or 0.0 for one in on_grip)


def _too_much(
    controller: Controller, on_grip: Sequence[Stick], share: float, hand: _Hand, block_s: float | None
) -> Message | None:
    """Why a hand cannot hold it, from measured figures alone; nothing where it can, or nobody tried."""
    whole_kg = held_kg(controller, on_grip)
    if hand.kg is None or whole_kg is None:
        return None
    load = share * whole_kg
    weighed = tuple(Name(one.name) for one in on_grip if one.mass_kg)
    weight = message(Holding.weight, whole_kg=whole_kg, on_grip=weighed, each_kg=None if share == 1.0 else load)
    if load > hand.kg:
        return message(Holding.too_heavy, weight=weight, hand=hand.name, holds_kg=hand.kg)
    if hand.s is None or block_s is None:
        return None
    lasts = held_for_s(load, hand.kg, hand.s)
    if lasts >= block_s:
        return None
    return message(Holding.too_long, weight=weight, hand=hand.name, holds_s=lasts, block_s=block_s)


def _lasts(load_kg: float, hand: _Hand) -> float:
    """How long a hand holds a load, at what is usual where nobody tried: nothing above what it holds comfortably."""
    holds = USUAL_HOLDS_KG if hand.kg is None else hand.kg
    if load_kg > holds:
        return 0.0
    return math.inf if hand.s is None else held_for_s(load_kg, holds, hand.s)


def _doubts(
    controller: Controller, on_grip: Sequence[Stick], share: float, hands: Sequence[_Hand], block_s: float | None
) -> tuple[Term, ...]:
    """What nobody weighed or tried, at the usual figures: it costs, and more where those say that it is too heavy."""
    usual = (
        controller if controller.mass_kg is not None else controller.model_copy(update={"mass_kg": USUAL_CONTROLLER_KG})
    )
    load = share * (held_kg(usual, on_grip) or 0.0)
    unweighed = controller.mass_kg is None or any(one.mass_kg is None for one in on_grip)
    block = BLOCK_S if block_s is None else block_s
    heavy = [hand for hand in hands if _lasts(load, hand) < block]
    unread = [hand for hand in hands if unweighed or hand.kg is None or hand.s is None or hand in heavy]
    if not unread:
        return ()
    points = DOUBTED_POINTS if heavy else UNTRIED_POINTS
    words = message(Scores.hold_untried, hands=tuple(hand.name for hand in unread), heavy=bool(heavy))
    return (Term("held", -rounded(points), words),)


def held_assumptions(
    player: Player, controllers: Sequence[Controller], on_grips: Sequence[Stick] = ()
) -> tuple[Assumption, ...]:
    """What stands in where a controller that is held was not weighed, or no hand was tried.

    Parameters
    ----------
    player : Player
    controllers : sequence of Controller
        Those of a plan that are made to be held.
    on_grips : sequence of Stick
        Fixed to their grips.
    """
    out = [
        Assumption(
            message(Holding.mass_of, device=Name(one.name), on_grip=False),
            message(Holding.mass, mass_kg=USUAL_CONTROLLER_KG),
            message(Holding.not_weighed),
            message(Holding.weigh),
        )
        for one in controllers
        if one.mass_kg is None
    ]
    out += [
        Assumption(
            message(Holding.mass_of, device=Name(one.name), on_grip=True),
            message(Holding.not_counted),
            message(Holding.not_weighed),
            message(Holding.weigh),
        )
        for one in on_grips
        if one.mass_kg is None
    ]
    arms = dict.fromkeys(limb_of(site) for site in player.site if site.part in HAND_PARTS)
    if controllers:
        out += [
            Assumption(
                message(Holding.holds_of, hand=hand.name), message(Holding.holds_usual, mass_kg=USUAL_HOLDS_KG),
                message(Holding.not_tried), message(Holding.try_holding),
            )
            for hand in (hand_holds(player, arm) for arm in arms)
            if hand.kg is None
        ]  # fmt: skip
    return tuple(out)
