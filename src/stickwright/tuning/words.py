"""What each step of the response does for this player, in sentences, in the order in which the steps act."""

from __future__ import annotations

import math
from collections.abc import Sequence

from stickwright.mechanics.widening import GAIN_LIMIT
from stickwright.model.estimate import Estimate
from stickwright.model.response import FilterChoice, SimpleSettings
from stickwright.tuning.span import Span

__all__ = ["sentences"]

_NOTHING_YET = (
    "In the game: change nothing yet. These recordings have a fault, told under what limits them; put it right and "
    "record again."
)
_NAMED = ("right", "forward right", "forward", "forward left", "left", "back left", "back", "back right")


def _towards(direction_rad: float) -> str:
    """Nearest of eight directions in words."""
    return _NAMED[round(direction_rad / (math.pi / 4)) % 8]


def sentences(
    offset: tuple[Estimate, Estimate],
    rotation_sentence: str,
    span: Span,
    dead_zone: Estimate,
    own_dead_zone_share: float | None,
    inner_jump: float,
    curve_sentence: str,
    choice: FilterChoice | None,
    simple: SimpleSettings,
    offers: Sequence[str],
    *,
    at_fault: bool = False,
) -> tuple[str, ...]:
    """One sentence or two for each step of the response.

    Parameters
    ----------
    offset : tuple of Estimate
        Rest output, x and y, share of full output.
    rotation_sentence, curve_sentence : str
        Rotation and curve, said where they are worked out.
    span : Span
        Reach and gain by direction.
    dead_zone : Estimate
        Radius, share of the player's range.
    own_dead_zone_share : float or None
        Dead zone inside the game, share of full output.
    inner_jump : float
        Output just outside our dead zone, share of full output.
    choice : FilterChoice or None
        Filter kept.
    simple : SimpleSettings
        The nearest two numbers.
    offers : sequence of str
        What the game lets you change.
    at_fault : bool, default False
        The recordings carry a fault: then nothing is said that could be typed in.

    Returns
    -------
    tuple of str
        Centre, rotation, range, dead zone, curve, filter, outer limit, what to type in the game.
    """
    return (
        _centre(*offset),
        rotation_sentence,
        _range(span),
        _dead_zone(dead_zone, own_dead_zone_share, inner_jump),
        curve_sentence,
        "Filter: none chosen, no following was recorded." if choice is None else choice.sentence,
        "Outer limit: the output is held inside the circle of full output.",
        _NOTHING_YET if at_fault else _in_the_game(simple, offers),
    )


def _centre(x: Estimate, y: Estimate) -> str:
    if x.n == 0:
        return f"Centre: left alone ({x.why})."
    sides = f"{100 * abs(x.number):.1f} % {'right' if x.number >= 0 else 'left'}"
    ends = f"{100 * abs(y.number):.1f} % {'forward' if y.number >= 0 else 'back'}"
    return f"Centre: at rest the stick gives {sides} and {ends}; that is taken off."


def _range(span: Span) -> str:
    if not span.gain:
        return "Range: left alone (reach is not known all round)."
    weak = min(range(len(span.gain)), key=lambda i: span.reach[i].number)
    strong = max(range(len(span.gain)), key=lambda i: span.reach[i].number)
    text = (
        f"Range: reach is {100 * span.reach[weak].number:.0f} % of full output {_towards(span.direction_rad[weak])} and "
        f"{100 * span.reach[strong].number:.0f} % {_towards(span.direction_rad[strong])}; a gain of "
        f"{min(span.gain):.1f} to {max(span.gain):.1f} lets the player's own reach fill the output"
    )
    limited = max(span.gain) >= GAIN_LIMIT
    return text + (", as far as a limit of 3 allows." if limited else ".")


def _dead_zone(radius: Estimate, own_share: float | None, jump: float) -> str:
    if radius.number > 0 and radius.assumed:
        text = f"Dead zone: {100 * radius.number:.0f} % of the player's range, {radius.why}."
    elif radius.n == 0:
        text = f"Dead zone: none set ({radius.why})."
    else:
        text = (
            f"Dead zone: {100 * radius.number:.1f} % of the player's range; 95 % of rest stays inside, at 95 % "
            f"confidence ({radius.n} independent samples)."
        )
    if jump > 0.0 and own_share is not None:
        text += (
            f" The game has {100 * own_share:.0f} % of its own: output starts at {100 * jump:.0f} %, just above it, "
            "and ours stays as small as rest allows, so that the two do not add up."
        )
    elif own_share is None:
        text += " Find out the game's own dead zone: two of them add up."
    return text


def _in_the_game(simple: SimpleSettings, offers: Sequence[str]) -> str:
    type_in = {
        "dead zone": f"dead zone {simple.dead_zone_percent:.0f} %",
        "sensitivity": f"sensitivity {simple.sensitivity_percent:.0f} %",
    }
    if not offers:
        return (
            "In the game: what it offers is not known; if it is a dead zone and a sensitivity only, type "
            f"{' and '.join(type_in.values())}. {simple.lost}"
        )
    beyond = [name for name in ("rotation", "range", "curve") if name in offers]
    if beyond:
        flat = ", with the sensitivity at 100 %" if "sensitivity" in offers else ""
        zone = ["dead zone"] if "dead zone" in offers else []
        return f"In the game: set {', '.join(beyond + zone)} from the figures above{flat}."
    typed = " and ".join(words for name, words in type_in.items() if name in offers)
    return f"In the game: type {typed}. {simple.lost}"
