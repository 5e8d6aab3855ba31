"""An age band as people write it, read as far as it matters: whether the player may be a child."""

from __future__ import annotations

import re
from typing import Literal

__all__ = ["AgeGroup", "age_group"]

AgeGroup = Literal["child", "adult", "not understood"]

_OF_AGE = 18
_OLDEST = 120
_CHILD = frozenset(
    ["adolescent", "adolescents", "baby", "boy", "child", "children", "girl", "infant", "kid", "minor", "pupil", "school",
     "teen", "teenage", "teenager", "teenagers", "teens", "toddler"]
)  # fmt: skip
_ADULT = frozenset(["adult", "adults", "elder", "elderly", "grown", "retired", "senior", "seniors"])
_MONTHS = frozenset(["month", "months"])
_BELOW = frozenset(["below", "to", "under", "younger"])


def age_group(band: str) -> AgeGroup | None:
    """Whether somebody of this band may be a child; None when no band is given.

    Parameters
    ----------
    band : str
        A word ("child", "teenager", "older adult") or ages in years ("6-11", "under 12", "40s", "18+").

    Notes
    -----
    A band that reaches below 18 counts as a child's: the cautions for a child do an adult no harm.

    Examples
    --------
    >>> [age_group(band) for band in ("adult", "6-11", "16 to 25", "40s", "born 2014")]
    ['adult', 'child', 'child', 'adult', 'not understood']
    >>> age_group("") is None
    True
    """
    if not band.strip():
        return None
    words = set(re.findall(r"[a-z]+", band.casefold()))
    ages = [int(digits) for digits in re.findall(r"\d+", band)]
    if any(age > _OLDEST for age in ages):
        return "not understood"
    if words & _MONTHS:
        return "child"
    if ages:
        open_below = len(ages) == 1 and bool(words & _BELOW)
        return "child" if min(ages) < _OF_AGE or open_below else "adult"
    child, adult = bool(words & _CHILD), bool(words & _ADULT)
    if child == adult:
        return "not understood"
    return "child" if child else "adult"
