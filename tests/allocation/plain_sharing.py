"""The sharing-out reckoned the slow way: every choice is tried, and judged in plain loops by what the words mean.

Nothing here knows of rows or columns. A choice names one way for each action; everything else follows from it, except
which device goes into which socket: all of that is tried too. Sums are in thousandths and whole, so that equal is equal.
"""

from __future__ import annotations

import itertools
from collections import Counter
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from stickwright.allocation.problem import Question, SocketGroup, TogetherNeed, Way

__all__ = ["Plugged", "best_by_trying_all", "every_plan", "points", "refusal", "why_not"]

STICKS = ("left stick", "right stick")
MINUTE_SHARE = 36_000  # six tenths of a minute, in milliseconds

Choice = Mapping[str, int]


def whole(number: float) -> int:
    return round(number * 1000)


@dataclass(frozen=True)
class Plugged:
    """Something with a lead that has to go into a socket."""

    name: str
    feeds: str
    role: str | None
    plugs: tuple[str, ...]
    current: int
    controller: bool = False


@dataclass(frozen=True)
class Lead:
    """One lead in its socket: the way of a splitter, and an adapter, when there are any."""

    group: int
    socket: int
    splitter: int | None
    adapter: int | None
    current: int


def taken(question: Question, choice: Choice) -> list[Way]:
    return [question.ways[number] for number in choice.values()]


def place_of(question: Question, way: Way) -> str:
    return next(site.place for site in question.sites if site.name == way.site)


def controllers(question: Question, choice: Choice) -> list[tuple[str, str, bool]]:
    """Each controller that stands somewhere, once."""
    return sorted(
        {
            (way.device or "", place_of(question, way), way.paired)
            for way in taken(question, choice)
            if way.kind == "controller"
        }
    )


def why_not(question: Question, choice: Choice, undone: Collection[str] = ()) -> str | None:
    """The first thing that speaks against a choice, sockets and money left aside; None when nothing does."""
    ways = taken(question, choice)
    for action in question.actions:
        if action not in choice and action not in undone:
            return f"{action} is not done"
    for chord, members in question.chords:
        if chord in choice and question.ways[choice[chord]].how == "chord":
            for member in members:
                if member not in choice or question.ways[choice[member]].how != "site":
                    return f"{chord} needs {member} played"
    for need in question.together:
        if counts(question, choice, need):
            here, there = held_at(question, choice, need.first), held_at(question, choice, need.second)
            if here is not None and there is not None and (here == there or (here, there) in need.never):
                return f"{need.first} and {need.second} cannot be together"
    for site in question.sites:
        said = site_overburdened(
            [way for way in ways if way.how == "site" and way.site == site.name], site.most_switches
        )
        if said:
            return f"{site.name} {said}"
    return controllers_clash(question, choice) or wishes_unmet(question, choice)


def counts(question: Question, choice: Choice, need: TogetherNeed) -> bool:
    """Whether two actions must be possible at once: always, or only while their chord is played."""
    if need.chord is None:
        return True
    return need.chord in choice and question.ways[choice[need.chord]].how == "chord"


def held_at(question: Question, choice: Choice, action: str) -> str | None:
    """The part that is busy as long as the action lasts."""
    if action not in choice:
        return None
    way = question.ways[choice[action]]
    return way.site if way.how == "site" and not way.toggle else None


def site_overburdened(mine: list[Way], most_switches: int) -> str | None:
    kinds = {way.kind for way in mine}
    if len(kinds) > 1:
        return "works two kinds of device"
    if kinds == {"stick"} and len(mine) > 1:
        return "works two sticks"
    if kinds == {"switch"} and len(mine) > most_switches:
        return "works too many switches"
    if kinds <= {"switch", "controller"} and sum(whole(way.busy_s) for way in mine) > MINUTE_SHARE:
        return "presses too much"
    if kinds == {"switch"} and len(mine) > 1:
        if any(way.alone for way in mine):
            return "has a second switch near one that stands alone"
        if sum(whole(way.near_s) for way in mine) > MINUTE_SHARE:
            return "moves too much between its switches"
    return None


def controllers_clash(question: Question, choice: Choice) -> str | None:
    held = [way for way in taken(question, choice) if way.kind == "controller"]
    controls = Counter((way.device, place_of(question, way), way.paired, way.control) for way in held)
    if any(count > 1 for count in controls.values()):
        return "one control for two actions"
    units = controllers(question, choice)
    places = Counter(place for _, place, _ in units)
    if any(count > 1 for count in places.values()):
        return "two controllers in one place"
    if not question.wired:
        return None
    helper = any(way.how == "helper" for way in taken(question, choice))
    if sum(paired for *_, paired in units) + helper > question.paired:
        return "too many paired controllers"
    return None


def wishes_unmet(question: Question, choice: Choice) -> str | None:
    chosen = set(choice.values())
    for what, where, ways in question.keep:
        if not chosen & set(ways):
            return f"{what} does not stay at {where}"
    for name, ways in question.without:
        if chosen & set(ways):
            return f"{name} is used"
    for name, most, ways in question.at_most:
        if len(chosen & set(ways)) > most:
            return f"{name} is asked too much"
    devices = sum(way.kind in ("stick", "switch") for way in taken(question, choice)) + len(
        controllers(question, choice)
    )
    if question.most_parts is not None and devices > question.most_parts:
        return "too many parts"
    return None


def to_plug(question: Question, choice: Choice) -> list[Plugged]:
    gear = {one.name: one for one in question.gear}
    out = []
    for way in taken(question, choice):
        if way.kind in ("stick", "switch"):
            one = gear[way.device or ""]
            feeds = "stick" if way.kind == "stick" else "button"
            out.append(Plugged(one.name, feeds, way.role, one.plugs, whole(one.current_a)))
    for device, place, paired in controllers(question, choice):
        if paired:
            continue
        played = [
            way
            for way in taken(question, choice)
            if (way.device, way.paired, way.control in STICKS) == (device, False, True)
            and place_of(question, way) == place
        ]
        one = gear[device]
        # a hub passes one stick of a controller on: two of them cannot be told from one lead
        role = played[0].role if len(played) == 1 else "two sticks" if played else None
        out.append(Plugged(device, "controller", role, one.plugs, whole(one.current_a), controller=True))
    return out


def feeds(group: SocketGroup, plugged: Plugged) -> bool:
    if plugged.controller:
        return any(role in STICKS for role in group.roles) and (plugged.role is None or plugged.role in group.roles)
    if plugged.role is not None:
        return plugged.role in group.roles
    return any((role in STICKS) == (plugged.feeds == "stick") for role in group.roles)


def leads(question: Question, plugged: Plugged) -> Iterator[Lead]:
    """Every way to bring one device to one socket."""
    for k, group in enumerate(question.sockets):
        if not feeds(group, plugged):
            continue
        joined: list[tuple[int | None, int]] = []
        if group.plug in plugged.plugs:
            joined.append((None, plugged.current))
        for number, adapter in enumerate(question.adapters):
            if adapter.plug == group.plug and adapter.takes in plugged.plugs:
                joined.append((number, plugged.current + whole(adapter.current_a)))
        for adapter_number, current in joined:
            for socket in range(len(group.sockets)):
                if group.limit_a is None or current <= whole(group.limit_a):
                    yield Lead(k, socket, None, adapter_number, current)
                for number, splitter in enumerate(question.splitters):
                    if splitter.plug == group.plug and current <= whole(splitter.way_limit_a):
                        yield Lead(k, socket, number, adapter_number, current)


def electrics_hold(question: Question, wired: list[Lead]) -> bool:
    """Every socket holds what goes into it, and gives what is drawn from it."""
    by_socket: dict[tuple[int, int], list[Lead]] = {}
    for lead in wired:
        by_socket.setdefault((lead.group, lead.socket), []).append(lead)
    hub_current: Counter[str] = Counter()
    hub_devices: Counter[str] = Counter()
    for (k, _), inside in by_socket.items():
        group = question.sockets[k]
        hub_devices[group.hub] += len(inside)
        if len({lead.splitter for lead in inside}) > 1 or any(
            other in {j for j, _ in by_socket} for other in group.excludes
        ):
            return False
        current = sum(lead.current for lead in inside)
        if inside[0].splitter is None:
            if len(inside) > 1:
                return False
        else:
            splitter = question.splitters[inside[0].splitter]
            if len(inside) > splitter.ways:
                return False
            current = whole(splitter.current_a) + (0 if splitter.powered else current)
            if group.limit_a is not None and current > whole(group.limit_a):
                return False
        hub_current[group.hub] += current
    return all(
        (limit is None or hub_current[hub] <= whole(limit)) and (most is None or hub_devices[hub] <= most)
        for hub, limit, most in question.hub_limits
    )


def wirings(question: Question, left: list[Plugged], wired: list[Lead]) -> Iterator[list[Lead]]:
    if not electrics_hold(question, wired):  # one more lead never helps
        return
    if not left:
        yield wired
        return
    for lead in leads(question, left[0]):
        used = {one.socket for one in wired if one.group == lead.group}
        if lead.socket <= max(used, default=-1) + 1:  # sockets of a group are alike: the first empty one will do
            yield from wirings(question, left[1:], [*wired, lead])


def hardware_cost(question: Question, choice: Choice, wired: list[Lead]) -> int | None:
    """Points that controllers, adapters, splitters and what must be bought cost; None when it cannot be had."""
    need: Counter[str] = Counter()
    for way in taken(question, choice):
        if way.kind in ("stick", "switch"):
            need[way.device or ""] += 1
    extra = [device for device, *_ in controllers(question, choice)]
    extra += [question.adapters[lead.adapter].name for lead in wired if lead.adapter is not None]
    splitters = {(lead.group, lead.socket): lead.splitter for lead in wired if lead.splitter is not None}
    extra += [question.splitters[number].name for number in splitters.values()]
    need.update(extra)
    bought, price = 0, 0
    for gear in question.gear:
        short = max(0, need[gear.name] - gear.in_stock)
        if short and gear.price is None:
            return None
        bought += short
        price += short * whole(gear.price or 0.0)
    if question.budget is not None and price > whole(question.budget):
        return None
    return len(extra) * whole(question.part_points) + bought * whole(question.buy_points)


def inputs_differ(question: Question, choice: Choice, plugged: list[Plugged], wired: list[Lead]) -> bool:
    """No two devices arrive at the game as the same input."""
    arriving: list[str | None] = []
    for one, lead in zip(plugged, wired, strict=True):
        roles = question.sockets[lead.group].roles
        if not one.controller:
            arriving.append(roles[0] if len(roles) == 1 else one.role)
    for way in taken(question, choice):
        if way.kind == "controller":
            arriving.append(way.role if way.control in STICKS else way.control)
    known = [role for role in arriving if role is not None]
    return len(known) == len(set(known))


def worth(question: Question, choice: Choice) -> int | None:
    """Thousandths of a point of a choice that nothing else speaks against; None when no wiring of it can be had."""
    plugged = to_plug(question, choice) if question.wired else []
    costs = [
        hardware_cost(question, choice, wired)
        for wired in wirings(question, plugged, [])
        if not question.wired or inputs_differ(question, choice, plugged, wired)
    ]
    cheapest = min((cost for cost in costs if cost is not None), default=None)
    if cheapest is None:
        return None
    total = sum(whole(way.points) for way in taken(question, choice)) - cheapest
    total -= sum(
        whole(site.cost) for site in question.sites if any(way.site == site.name for way in taken(question, choice))
    )
    for need in question.together:
        if counts(question, choice, need):
            met = (held_at(question, choice, need.first), held_at(question, choice, need.second))
            total -= sum(whole(price) for here, there, price in need.slowed if met == (here, there))
    return total


def refusal(question: Question, choice: Choice, undone: Collection[str] = ()) -> str | None:
    """Why a choice cannot be; None when it can."""
    said = why_not(question, choice, undone)
    if said is None and worth(question, choice) is None:
        return "no wiring of it can be had"
    return said


def points(question: Question, choice: Choice) -> float | None:
    """What a choice that can be is worth, wired as cheaply as can be."""
    found = worth(question, choice)
    return None if found is None else found / 1000


def every_plan(question: Question, undone: Collection[str] = ()) -> list[tuple[int, dict[str, int]]]:
    """All plans that can be, with their worth in thousandths; some actions may be left undone."""
    of_action: list[list[int | None]] = [
        [n for n, way in enumerate(question.ways) if way.action == action] + ([None] if action in undone else [])
        for action in question.actions
    ]
    out = []
    for picked in itertools.product(*of_action):
        choice = {action: n for action, n in zip(question.actions, picked, strict=True) if n is not None}
        if why_not(question, choice, undone) is None and (found := worth(question, choice)) is not None:
            out.append((found, choice))
    return out


def best_by_trying_all(question: Question) -> tuple[float, dict[str, int]] | None:
    """The best plan and its points; None when there is none."""
    plans = every_plan(question)
    if not plans:
        return None
    found, choice = max(plans, key=lambda plan: plan[0])
    return found / 1000, choice
