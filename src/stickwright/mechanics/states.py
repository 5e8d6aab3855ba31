"""The states in which a site was read, and the worst of those that the player will play in."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, fields

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.file_places import FilePlaces
from stickwright.codes.message import Name, message
from stickwright.codes.stand_ins import StandIns
from stickwright.codes.stick_problems import StickProblems
from stickwright.errors import BadInput, Problem
from stickwright.mechanics.fit import Evaluated
from stickwright.model.fit import Assumption
from stickwright.model.player import DirectionReading, Site, SiteUnder

__all__ = ["SiteState", "played", "states_of", "worst_of"]

_SAME_RAD = 1e-5
_READ_AGAIN = ("rest", "involuntary_force_n", "crossing_hz", "spasm", "hold", "press")
"""What a state replaces as a whole where it was read again."""


@dataclass(frozen=True, eq=False)
class SiteState:
    """A site as it is in one state.

    Parameters
    ----------
    name : str
        In words; empty for the site's own readings where nobody named their state.
    kind : str
        "support", "tiredness", ...; empty for the site's own readings.
    plays : bool
        Whether the player will play in it.
    site : Site
        With the readings of that state.
    assumptions : tuple of Assumption
        What was carried over from the site's own readings.
    after_s : float or None
        Of tiredness: after how much play it was read.
    """

    name: str
    kind: str
    plays: bool
    site: Site
    assumptions: tuple[Assumption, ...] = ()
    after_s: float | None = None


def states_of(site: Site) -> tuple[SiteState, ...]:
    """The site in each state it was read in, its own readings first.

    Raises
    ------
    BadInput
        A direction was read in a state, but not at the site itself.

    Notes
    -----
    A direction that was not read again in a state is taken to change by the same factor as the median of those that
    were (assumed: support, tiredness and medicine act on the whole part).
    """
    own = SiteState(site.condition, "", site.plays_so or not any(one.plays for one in site.under), site)
    for under in site.under:
        _refuse_new_directions(site, under)
    return (own, *(_state(site, under) for under in site.under))


def played(site: Site) -> tuple[SiteState, ...]:
    """Those states of a site that the player will play in, at least one."""
    return tuple(state for state in states_of(site) if state.plays)


def _refuse_new_directions(site: Site, under: SiteUnder) -> None:
    own = [one.direction_rad for one in site.reading]
    new = [one.direction_rad for one in under.reading if all(_apart(one.direction_rad, phi) > _SAME_RAD for phi in own)]
    if new:
        raise BadInput(
            Problem(
                (
                    message(FilePlaces.named, key=Name("site"), name=Name(site.name)),
                    message(FilePlaces.named, key=Name("under"), name=Name(str(under.condition))),
                ),
                message(StickProblems.state_reading, direction_rad=new[0]),
                message(StickProblems.expected, what="state_directions"),
                message(StickProblems.remedy, what="state_direction"),
            )
        )


def _state(site: Site, under: SiteUnder) -> SiteState:
    again = {name: getattr(under, name) for name in _READ_AGAIN if getattr(under, name) not in ((), None)}
    readings, assumptions = site.reading, []
    if under.reading:
        readings, carried = _carried(site, under)
        if carried:
            assumptions.append(carried)
    changed = site.model_copy(
        update={
            **again,
            "reading": readings,
            "along": (),  # read at the state of the site itself
            "again_force_n": () if under.reading else site.again_force_n,
            "under": (),
            "condition": under.condition,
        }
    )
    return SiteState(under.condition, under.kind, under.plays, changed, tuple(assumptions), under.after_s)


def _carried(site: Site, under: SiteUnder) -> tuple[tuple[DirectionReading, ...], Assumption | None]:
    """The readings of a state, those of other directions carried over by the factor of the directions read in both."""
    force = _ratio([(_mean(one.force_n), _mean(two.force_n)) for one, two in _both(site, under)])
    reach = _ratio([(_mean(one.reach_m), _mean(two.reach_m)) for one, two in _both(site, under)])
    new = [one.direction_rad for one in under.reading]
    left = [one for one in site.reading if all(_apart(one.direction_rad, phi) > _SAME_RAD for phi in new)]
    scaled = [
        one.model_copy(
            update={
                "force_n": tuple(value * force for value in one.force_n),
                "reach_m": tuple(value * reach for value in one.reach_m),
            }
        )
        for one in left
    ]
    completed = [_with_reach(one, site, reach) for one in under.reading]
    if not left:
        return tuple(completed), None
    assumption = Assumption(
        message(StandIns.state_directions, state=Name(under.condition), sites=(Name(site.name),)),
        message(StandIns.carried_over, force_share=force, reach_share=reach),
        message(StandIns.as_others_changed),
        message(StandIns.one_each_in_state, state=Name(under.condition)),
    )
    return (*completed, *scaled), assumption


def _with_reach(one: DirectionReading, site: Site, factor: float) -> DirectionReading:
    """A reading of force alone keeps the movement range of the site's own reading there, by the common factor."""
    if one.reach_m:
        return one
    own = next((two for two in site.reading if _apart(one.direction_rad, two.direction_rad) <= _SAME_RAD), None)
    if own is None:
        return one
    return one.model_copy(update={"reach_m": tuple(value * factor for value in own.reach_m)})


def _both(site: Site, under: SiteUnder) -> list[tuple[DirectionReading, DirectionReading]]:
    return [
        (one, two)
        for two in under.reading
        for one in site.reading
        if _apart(one.direction_rad, two.direction_rad) <= _SAME_RAD
    ]


def _apart(one_rad: float, other_rad: float) -> float:
    return abs(math.remainder(one_rad - other_rad, math.tau))


def _mean(values: Sequence[float]) -> float | None:
    return sum(values) / len(values) if values else None


def _ratio(pairs: Sequence[tuple[float | None, float | None]]) -> float:
    """Median of later over earlier where both are there; 1 where none is."""
    ratios = [after / before for before, after in pairs if before and after is not None]
    return float(np.median(ratios)) if ratios else 1.0


def worst_of(found: Sequence[Evaluated]) -> tuple[Evaluated, NDArray[np.int64]]:
    """Each set-up as it does in the state where it does worst.

    Parameters
    ----------
    found : sequence of Evaluated
        The same set-ups, one entry for each state.

    Returns
    -------
    Evaluated
        Figures of each set-up from its worst state; the utility of a stick in a draw is the least over the states.
    worst : array of int, shape (s,)
        Which state that is.
    """
    mean = np.stack([one.mean_utility for one in found])
    worst = mean.argmin(axis=0)
    if len(found) == 1:
        return found[0], worst
    rows = np.arange(len(worst))
    picked = {
        field.name: np.stack([getattr(one, field.name) for one in found])[worst, rows]
        for field in fields(Evaluated)
        if field.name != "stick_utility"
    }
    return Evaluated(**picked, stick_utility=np.minimum.reduce([one.stick_utility for one in found])), worst
