"""What each step of the response does for this player, in sentences, in the order in which the steps act."""

from __future__ import annotations

from collections.abc import Sequence

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Message, Text, message
from stickwright.codes.tunings import Setting, Tunings
from stickwright.mechanics.widening import GAIN_LIMIT
from stickwright.model.game import DEAD_ZONE, SENSITIVITY
from stickwright.model.response import FilterChoice, SimpleSettings
from stickwright.tuning.range_calibration import Span

__all__ = ["sentences"]

_BEYOND: tuple[Setting, ...] = ("rotation", "range", "curve")
"""What makes a game more than one with two numbers."""


def sentences(
    *,
    offset: tuple[Estimate, Estimate],
    rotation_sentence: Text,
    span: Span,
    dead_zone: Estimate,
    own_dead_zone_share: float | None,
    inner_jump: float,
    curve_sentence: Text,
    choice: FilterChoice | None,
    simple: SimpleSettings,
    offers: Sequence[str],
    at_fault: bool = False,
) -> tuple[Text, ...]:
    """One sentence or two for each step of the response.

    Parameters
    ----------
    offset : tuple of Estimate
        Rest output, x and y, share of full output.
    rotation_sentence, curve_sentence : Message
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
    tuple of Message
        Centre, rotation, range, dead zone, curve, filter, outer limit, what to type in the game.
    """
    return (
        _centre(*offset),
        rotation_sentence,
        _range(span),
        _dead_zone(dead_zone, own_dead_zone_share, inner_jump),
        message(Tunings.curve, curve=curve_sentence),
        message(Tunings.no_filter) if choice is None else choice.sentence,
        message(Tunings.outer_limit),
        message(Tunings.game_not_yet) if at_fault else _in_the_game(simple, offers),
    )


def _centre(x: Estimate, y: Estimate) -> Message:
    if x.n == 0:
        return message(Tunings.centre_left, why=x.why or message(Tunings.why_no_rest))
    return message(Tunings.centre, right_share=x.number, forward_share=y.number)


def _range(span: Span) -> Message:
    if not span.gain:
        return message(Tunings.range_left)
    weak = min(range(len(span.gain)), key=lambda i: span.reach[i].number)
    strong = max(range(len(span.gain)), key=lambda i: span.reach[i].number)
    return message(
        Tunings.range,
        least_share=span.reach[weak].number,
        least_rad=span.direction_rad[weak],
        most_share=span.reach[strong].number,
        most_rad=span.direction_rad[strong],
        least_factor=min(span.gain),
        most_factor=max(span.gain),
        limit_factor=GAIN_LIMIT if max(span.gain) >= GAIN_LIMIT else None,
    )


def _dead_zone(radius: Estimate, own_share: float | None, jump: float) -> Message:
    if radius.number > 0 and radius.assumed:
        size = message(Tunings.zone_assumed, radius_share=radius.number, why=radius.why or radius.assumed)
    elif radius.n == 0:
        size = message(Tunings.zone_none, why=radius.why or message(Tunings.why_no_rest))
    else:
        size = message(Tunings.zone_measured, radius_share=radius.number, samples=radius.n)
    return message(Tunings.dead_zone, size=size, own_share=own_share, jump_share=jump if jump > 0.0 else None)


def _in_the_game(simple: SimpleSettings, offers: Sequence[str]) -> Message:
    zone, sensitivity = simple.dead_zone_percent / 100, simple.sensitivity_percent / 100
    if not offers:
        return message(Tunings.game_unknown, dead_zone_share=zone, sensitivity_share=sensitivity, lost=simple.lost)
    if any(one in offers for one in _BEYOND):
        also: tuple[Setting, ...] = ("dead_zone",) if DEAD_ZONE in offers else ()
        settings = (*(one for one in _BEYOND if one in offers), *also)
        return message(Tunings.game_beyond, settings=settings, flat=SENSITIVITY in offers)
    return message(
        Tunings.game,
        dead_zone_share=zone if DEAD_ZONE in offers else None,
        sensitivity_share=sensitivity if SENSITIVITY in offers else None,
        lost=simple.lost,
    )
