"""Usual static friction of dry pairs: ranges with their source, for what nobody measured. A pull of five seconds beats them."""

from __future__ import annotations

from typing import Literal, NamedTuple

from stickwright.codes.message import Message, message
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.model.room import Material

__all__ = ["DUSTY", "FRICTION", "FrictionRange", "assumed_friction", "friction_between", "friction_range"]


class FrictionRange(NamedTuple):
    """Static friction of a pair of materials."""

    low: float
    """Share of the weight; design with this one."""
    high: float
    """Share of the weight."""
    from_memory: bool


Foot = Literal["rubber", "smooth plastic", "tray"]
"""What a thing stands on the ground with."""
_RUBBER_HARD = FrictionRange(0.5, 0.8, True)
FRICTION: dict[frozenset[str], FrictionRange] = {
    frozenset({"steel"}): FrictionRange(0.12, 0.60, False),
    frozenset({"wood", "steel"}): FrictionRange(0.45, 0.75, False),
    frozenset({"wood"}): FrictionRange(0.40, 0.75, False),
    frozenset({"steel", "smooth plastic"}): FrictionRange(0.20, 0.45, False),
    frozenset({"steel", "rough plastic"}): FrictionRange(0.20, 0.45, False),
    frozenset({"rubber", "wood"}): FrictionRange(0.7, 0.95, True),
    frozenset({"rubber", "steel"}): _RUBBER_HARD,
    frozenset({"rubber", "smooth plastic"}): _RUBBER_HARD,
    frozenset({"rubber", "rough plastic"}): _RUBBER_HARD,
}
"""Pairs that the tables know; one material alone is that material on itself [handbook-friction]."""
DUSTY = FrictionRange(0.2, 0.5, True)
"""Any of them wet or dusty, and every pair that the tables do not know [handbook-friction]."""


def friction_between(one: str, other: str) -> FrictionRange | None:
    """The usual range for a pair of materials; None when the tables do not know it.

    Parameters
    ----------
    one, other : str
        Materials, in the words of the room; 'rubber' for feet.

    Notes
    -----
    Source: dry pairs [handbook-friction].

    Examples
    --------
    >>> friction_between("steel", "wood").low, friction_between("skin", "wood") is None
    (0.45, True)
    """
    return FRICTION.get(frozenset({one, other}))


def friction_range(material: Material | None, foot: Foot = "rubber") -> tuple[float, float]:
    """Between what ends the friction lies that nobody measured.

    Parameters
    ----------
    material : str or None
        What it stands on; None when nobody said.
    foot : str, default 'rubber'
        Of the foot.

    Examples
    --------
    >>> friction_range("wood"), friction_range(None)
    ((0.7, 0.95), (0.2, 0.5))
    """
    known = (friction_between(foot, material) if material else None) or DUSTY
    return known.low, known.high


def assumed_friction(material: Material | None, foot: Foot = "rubber", *, measure: Message) -> tuple[float, Message]:
    """The low end of what a foot on a material usually has, and the assumption in words.

    Parameters
    ----------
    material : str or None
        What it stands on; None when nobody said.
    foot : str, default 'rubber'
        Of the foot.
    measure : Message
        What to pull with the gauge, and where the figure is entered.

    Returns
    -------
    tuple of (float, Message)
        A share of the weight, and what was assumed.

    Examples
    --------
    >>> from stickwright.codes.to_measure import ToMeasure
    >>> pull = message(ToMeasure.thighs)
    >>> assumed_friction("wood", measure=pull)[0], assumed_friction(None, measure=pull)[0]
    (0.7, 0.2)
    """
    known = friction_between(foot, material) if material else None
    low = (known or DUSTY).low
    return low, message(
        MountAssumed.friction, foot=foot, ground=material, taken_factor=low, dusty=known is None, measure=measure
    )
