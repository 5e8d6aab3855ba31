"""Ways that no best plan needs: a better device of the same sort is always free for the same action at the same site.

A way is left out when other devices do the same action at the same site at least as well, need nothing more (plugs,
current, seconds of the busy minute), and are there in such number that the other actions cannot take them all: whoever
holds the way could change to one of them and lose nothing. One device more than that is kept, so that it still holds
when one way is forbidden to see what comes second.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from stickwright.allocation.problem import Gear, Question, Way

__all__ = ["needed_ways", "pruned"]


def needed_ways(question: Question) -> tuple[int, ...]:
    """Places of the ways that a best plan, or the best without one of its ways, can need.

    Returns
    -------
    tuple of int
        In the order of the question. Ways named in `Question.keep` or `Question.without` always stay.
    """
    gear = {one.name: one for one in question.gear}
    named = {number for *_, ways in question.keep for number in ways}
    barred = {number for _, ways in question.without for number in ways}
    users: dict[str, set[str]] = {}
    groups: dict[tuple[object, ...], list[int]] = {}
    for number, way in enumerate(question.ways):
        if way.kind in ("stick", "switch") and way.device is not None:
            users.setdefault(way.device, set()).add(way.action)
            groups.setdefault((way.action, way.site, way.kind, way.role, way.toggle), []).append(number)
    left_out: set[int] = set()
    for places in groups.values():
        left_out |= _dominated(question.ways, [n for n in places if n not in barred], gear, users, named)
    return tuple(number for number in range(len(question.ways)) if number not in left_out)


def pruned(question: Question) -> Question:
    """Without the ways that no best plan needs; what is kept or barred is named by its place among those that stay."""
    kept = needed_ways(question)
    place = {old: new for new, old in enumerate(kept)}

    def moved(ways: Sequence[int]) -> tuple[int, ...]:
        return tuple(place[number] for number in ways if number in place)

    return replace(
        question,
        ways=tuple(question.ways[number] for number in kept),
        keep=tuple((what, where, moved(ways)) for what, where, ways in question.keep),
        without=tuple((name, moved(ways)) for name, ways in question.without),
        at_most=tuple((name, most, moved(ways)) for name, most, ways in question.at_most),
    )


def _dominated(
    ways: Sequence[Way],
    places: Sequence[int],
    gear: dict[str, Gear],
    users: dict[str, set[str]],
    named: set[int],
) -> set[int]:
    order = sorted(places, key=lambda number: (-ways[number].points, number))
    kept: list[int] = []
    out: set[int] = set()
    for number in order:
        # a device that is there in several set-ups is one device all the same
        better = {ways[other].device or "" for other in kept if _replaces(ways[other], ways[number], gear)}
        stocks = [gear[device].in_stock for device in better]
        rivals: set[str] = set().union(*(users[device] for device in better))
        enough = bool(stocks) and sum(stocks) - max(stocks) > len(rivals - {ways[number].action})
        if enough and number not in named:
            out.add(number)
        else:
            kept.append(number)
    return out


def _replaces(better: Way, way: Way, gear: dict[str, Gear]) -> bool:
    """Whether one way asks for nothing that the other does not; its points are known to be no fewer."""
    one, other = gear[better.device or ""], gear[way.device or ""]
    return (
        better.device != way.device
        and set(one.plugs) >= set(other.plugs)
        and one.current_a <= other.current_a
        and better.busy_s <= way.busy_s
        and better.near_s <= way.near_s
        and (way.alone or not better.alone)
        and better.fixed_to in ("", way.fixed_to)
    )
