"""The gain that lets a player's own reach fill the output."""

from __future__ import annotations

__all__ = ["GAIN_LIMIT", "widening_gain"]

GAIN_LIMIT = 3.0
"""What is stretched carries its noise with it; beyond this, another stick: common practice, no source."""
_WORTH_SETTING = 1.05
"""A smaller gain is not worth setting: judgement."""


def widening_gain(reach_share: float) -> float | None:
    """Multiplier of the output in one direction; None where none is worth setting, or nothing is reached.

    Parameters
    ----------
    reach_share : float
        Share of the travel that the player reaches there.

    Examples
    --------
    >>> widening_gain(0.5), widening_gain(0.25), widening_gain(0.97), widening_gain(0.0)
    (2.0, 3.0, None, None)
    """
    if not 0.0 < reach_share < 1.0 / _WORTH_SETTING:
        return None
    return min(GAIN_LIMIT, 1.0 / reach_share)
