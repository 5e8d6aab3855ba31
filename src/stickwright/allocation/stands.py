"""Which devices stand where: what several games of one player have in common."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from stickwright.allocation.places import PossibleWays, Refused, place_of
from stickwright.allocation.problem import Way
from stickwright.codes.choices import Choices
from stickwright.codes.message import message
from stickwright.model.hub import BUTTON_ROLES
from stickwright.model.player import Player
from stickwright.model.sharing import Placement

__all__ = ["Stand", "Stands", "only_on", "stands_of", "switches_standing", "union_of"]

Stand = tuple[str, str, str]
"""Place, kind and name of a device. The place is the site; of a controller, what holds or carries it ("hands")."""
Stands = Mapping[Stand, int]
"""How many of each there are at a place."""


def _stand(where: dict[str, str], one: Way | Placement) -> Stand:
    site = one.site or ""
    return (where[site] if one.kind == "controller" else site, one.kind, one.device or "")


def stands_of(done: Iterable[Way | Placement], player: Player) -> Counter[Stand]:
    """The devices of one layout, and where they stand.

    Parameters
    ----------
    done : iterable of Way or Placement
        One for each action; those that no device does are passed over.
    player : Player
    """
    where = {site.name: place_of(site) for site in player.site}
    out: Counter[Stand] = Counter()
    for one in done:
        if one.how == "site" and one.device:
            stand = _stand(where, one)
            out[stand] = out[stand] + 1 if one.kind == "switch" else 1  # one switch an action, many on a controller
    return out


def union_of(each: Iterable[Stands]) -> Counter[Stand]:
    """What must be there for all layouts: of each model at a place as many as the layout that uses most.

    Parameters
    ----------
    each : iterable of mapping
        From `stands_of`.

    Examples
    --------
    >>> dict(union_of([{("knee", "switch", "ash"): 2}, {("knee", "switch", "ash"): 1}]))
    {('knee', 'switch', 'ash'): 2}
    """
    out: Counter[Stand] = Counter()
    for stands in each:
        out |= Counter(stands)
    return out


def only_on(found: PossibleWays, stands: Stands, player: Player) -> PossibleWays:
    """What is possible with devices that stand there already; every other device is refused with that reason."""
    where = {site.name: place_of(site) for site in player.site}
    kept = [way for way in found.ways if way.how != "site" or _stand(where, way) in stands]
    gone = dict.fromkeys(
        Refused(way.action, way.site or "", way.device or "", message(Choices.not_common), control=_control(way))
        for way in found.ways
        if way.how == "site" and _stand(where, way) not in stands
    )
    return replace(found, ways=tuple(kept), refused=(*found.refused, *gone))


def _control(way: Way) -> str:
    return way.control or "" if way.kind == "controller" and way.control in BUTTON_ROLES else ""


def switches_standing(ways: Sequence[Way], stands: Stands) -> tuple[tuple[str, int, tuple[int, ...]], ...]:
    """For each model of switch at a site: the site, how many stand there, and the ways on them."""
    out = []
    for (site, kind, device), count in stands.items():
        if kind == "switch":
            mine = tuple(n for n, way in enumerate(ways) if (way.kind, way.site, way.device) == (kind, site, device))
            out.append((site, count, mine))
    return tuple(out)
