"""Usual static friction of dry pairs: ranges with their source, for what nobody measured. A pull of five seconds beats them."""

from __future__ import annotations

from typing import NamedTuple

__all__ = ["DUSTY", "FRICTION", "FrictionRange", "assumed_friction", "friction_between", "friction_range"]


class FrictionRange(NamedTuple):
    """Static friction of a pair of materials."""

    low: float
    """Share of the weight; design with this one."""
    high: float
    """Share of the weight."""
    from_memory: bool


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


def friction_range(material: str | None, foot: str = "rubber") -> tuple[float, float]:
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


def assumed_friction(material: str | None, foot: str = "rubber") -> tuple[float, str]:
    """The low end of what a foot on a material usually has, and the assumption in words.

    Parameters
    ----------
    material : str or None
        What it stands on; None when nobody said.
    foot : str, default 'rubber'
        Of the foot.

    Returns
    -------
    tuple of (float, str)
        A share of the weight, and what was assumed.

    Examples
    --------
    >>> assumed_friction("wood")[0], assumed_friction(None)[0]
    (0.7, 0.2)
    """
    known = friction_between(foot, material) if material else None
    pull = "pull it for five seconds with the gauge and enter friction = pull over weight"
    if known is None:
        what = f"{foot} on {material}" if material else f"{foot} on an unknown surface"
        return DUSTY.low, f"friction not measured: {what} taken as {DUSTY.low}, as when dusty; {pull}"
    return known.low, f"friction not measured: clean, dry {foot} on {material} taken as {known.low}; {pull}"
