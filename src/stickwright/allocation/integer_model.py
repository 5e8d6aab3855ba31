"""The question as an integer model: columns, rows, and for each row the wish or the fact it stands for.

Sets: actions, ways, sites, gear, socket groups. Columns, all integer:

- ``way`` (one for each way): the action is done so.
- ``used`` (site, kind): the site works one stick, or switches, or a controller; never two kinds.
- ``single`` (site): it works one switch only, and the part need not move.
- ``unit`` (controller, place, paired or plugged): a controller stands there.
- ``plugged`` (demand, socket group, adapter): so many devices of one demand go into sockets of that group. Devices that
  ask the same of a socket are counted, not told apart, and so are sockets that are alike: one column for each pair of
  device and socket would make the same model a thousand times slower to prove.
- ``split`` (socket group, splitter), ``bought`` (gear), ``slowed`` (pair of sites), ``aid`` (the helper's controller).

Every row carries its group: a wish ('do', 'together', 'keep', 'without', 'budget', 'parts') or a fact ('site', 'presses',
'stock', 'sockets', 'input', 'power', 'paired', 'helper', 'chord'). A clash is told in groups.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from stickwright.allocation.problem import BUSY_LIMIT_SHARE, Connection, PlayingSite, Question, SocketGroup, Splitter
from stickwright.model.hub import BUTTON_ROLES, STICK_ROLES

__all__ = ["ConstraintRow", "Group", "IntegerModel", "Outlet", "SocketColumns", "integer_model", "socket_options"]

Group = tuple[str, ...]
BUSY_LIMIT_S = BUSY_LIMIT_SHARE * 60.0


@dataclass(frozen=True)
class ConstraintRow:
    """One row: low <= values times columns <= high.

    Parameters
    ----------
    group : tuple of str
        The wish or fact that it stands for.
    columns : tuple of int
        Each once.
    values : tuple of float
        One for each column.
    low, high : float
        Infinite where there is no limit.
    """

    group: Group
    columns: tuple[int, ...]
    values: tuple[float, ...]
    low: float
    high: float


@dataclass(frozen=True)
class SocketColumns:
    """Where devices of one demand can be plugged in.

    Parameters
    ----------
    role : str or None
        What a socket must feed; None for any button.
    feeds : str
        'stick' or 'button'.
    plugs : tuple of str
    current_a : float
    device : str, optional
        A controller, whose own columns say how many.
    """

    role: str | None
    feeds: str
    plugs: tuple[str, ...]
    current_a: float
    device: str = ""


@dataclass(frozen=True)
class Outlet:
    """A socket group, or the ways of a splitter in one of its sockets.

    Parameters
    ----------
    group : int
        Place of the socket group in the question.
    splitter : int or None
        Place of the splitter in the question.
    capacity : float
        Sockets of the group; ways of one splitter.
    limit_a : float or None
        Each can supply.
    """

    group: int
    splitter: int | None
    capacity: float
    limit_a: float | None


@dataclass
class IntegerModel:
    """Columns and rows, ready for any solver; the answer is read back through the same numbers.

    Parameters
    ----------
    points : list of float
        Worth of each column; the sum is to be as large as can be.
    upper : list of float
        Each column runs from 0 to this.
    rows : list of ConstraintRow
    names : list of tuple
        What each column is, for reading and for tests.
    outlets : list of Outlet
        What a ``plugged`` column's third entry points to.
    """

    points: list[float] = field(default_factory=list)
    upper: list[float] = field(default_factory=list)
    rows: list[ConstraintRow] = field(default_factory=list)
    names: list[tuple[object, ...]] = field(default_factory=list)
    outlets: list[Outlet] = field(default_factory=list)

    def column(self, name: tuple[object, ...], points: float = 0.0, upper: float = 1.0) -> int:
        """Number of a new column."""
        self.points.append(points)
        self.upper.append(upper)
        self.names.append(name)
        return len(self.points) - 1

    def row(
        self, group: Group, terms: Iterable[tuple[int, float]], low: float = -math.inf, high: float = math.inf
    ) -> None:
        """A new row; left out when it has no columns and holds all the same."""
        kept = [(column, value) for column, value in terms if value]
        if not kept and low <= 0 <= high:
            return
        self.rows.append(ConstraintRow(group, tuple(c for c, _ in kept), tuple(v for _, v in kept), low, high))


def socket_options(
    demand: SocketColumns, sockets: Sequence[SocketGroup], adapters: Sequence[Connection]
) -> list[tuple[int, int | None, float]]:
    """Socket groups that could take a demand: place, adapter used (place or None), current drawn in all."""
    out: list[tuple[int, int | None, float]] = []
    for place, group in enumerate(sockets):
        if not _feeds(group, demand):
            continue
        if group.plug in demand.plugs:
            out.append((place, None, demand.current_a))
        out += [
            (place, number, demand.current_a + adapter.current_a)
            for number, adapter in enumerate(adapters)
            if adapter.plug == group.plug and adapter.takes in demand.plugs and group.plug not in demand.plugs
        ]
    return out


def _feeds(group: SocketGroup, demand: SocketColumns) -> bool:
    if demand.device:  # a controller keeps its own buttons; the role of its stick is a row of its own
        return any(role in STICK_ROLES for role in group.roles)
    if demand.role is not None:
        return demand.role in group.roles
    wanted: Sequence[str] = STICK_ROLES if demand.feeds == "stick" else BUTTON_ROLES
    return any(role in wanted for role in group.roles)


class _Builder:
    """Builds the rows in the order in which a practitioner would say them."""

    def __init__(self, question: Question) -> None:
        self.q = question
        self.model = IntegerModel()
        self.gear = {gear.name: gear for gear in question.gear}
        self.sites = {site.name: site for site in question.sites}
        self.x = [self.model.column(("way", number), way.points) for number, way in enumerate(question.ways)]
        self.by_action: dict[str, list[int]] = {action: [] for action in question.actions}
        self.by_site: dict[tuple[str, str], list[int]] = {}
        for number, way in enumerate(question.ways):
            self.by_action[way.action].append(number)
            if way.how == "site":
                self.by_site.setdefault((way.site or "", way.kind), []).append(number)
        self.uses: dict[str, list[tuple[int, float]]] = {gear.name: [] for gear in question.gear}
        self.devices: list[int] = []
        self.units: dict[tuple[str, str, bool], int] = {}
        self.used: dict[tuple[str, str], int] = {}
        for number, way in enumerate(question.ways):
            if way.kind in ("stick", "switch") and way.device is not None:
                self.uses[way.device].append((self.x[number], 1.0))
                self.devices.append(self.x[number])

    def build(self) -> IntegerModel:
        self.actions_are_done()
        self.what_belongs_together()
        self.sites_work_one_kind()
        self.presses_fit_in_the_minute()
        self.controllers_stand_somewhere()
        if self.q.wired:
            self.devices_are_plugged_in()
        self.stock_and_limits()
        self.choices_that_stay()
        return self.model

    def ways_at(self, action: str, kinds: Sequence[str] = ("stick", "switch", "controller")) -> dict[str, list[int]]:
        """Ways of an action by site; those that free the part between two presses left in."""
        out: dict[str, list[int]] = {}
        for number in self.by_action[action]:
            way = self.q.ways[number]
            if way.how == "site" and way.site is not None and way.kind in kinds:
                out.setdefault(way.site, []).append(number)
        return out

    def actions_are_done(self) -> None:
        for action in self.q.actions:
            self.model.row(("do", action), [(self.x[number], 1.0) for number in self.by_action[action]], 1.0, 1.0)
        for chord, members in self.q.chords:
            whole = [number for number in self.by_action[chord] if self.q.ways[number].how == "chord"]
            for member in members:
                placed = [(self.x[n], -1.0) for n in self.by_action[member] if self.q.ways[n].how == "site"]
                for number in whole:
                    self.model.row(("chord", chord, member), [(self.x[number], 1.0), *placed], high=0.0)

    def what_belongs_together(self) -> None:
        for need in self.q.together:
            gate: list[tuple[int, float]] = []
            if need.chord is not None:
                whole = [n for n in self.by_action[need.chord] if self.q.ways[n].how == "chord"]
                if not whole:  # nobody plays it by its members
                    continue
                gate = [(self.x[n], 1.0) for n in whole]
            most = 2.0 if gate else 1.0
            first, second = self._held(need.first), self._held(need.second)
            for site, mine in first.items():
                other = {t for t in second if t == site or (site, t) in need.never}
                terms = [(self.x[n], 1.0) for n in mine] + [(self.x[n], 1.0) for t in sorted(other) for n in second[t]]
                if other:
                    self.model.row(("together", need.first, need.second), [*terms, *gate], high=most)
            for here, there, points in need.slowed:
                if here in first and there in second:
                    slowed = self.model.column(("slowed", need.first, here, need.second, there), -points)
                    terms = [(self.x[n], 1.0) for n in (*first[here], *second[there])]
                    # pays only when both are there: a column that costs is never larger than it must be
                    self.model.row(("slowed",), [*terms, *gate, (slowed, -1.0)], high=most)

    def _held(self, action: str) -> dict[str, list[int]]:
        return {
            site: kept
            for site, ways in self.ways_at(action).items()
            if (kept := [number for number in ways if not self.q.ways[number].toggle])
        }

    def sites_work_one_kind(self) -> None:
        for site in self.q.sites:
            used: dict[str, int] = {}
            for kind in ("stick", "switch", "controller"):
                ways = self.by_site.get((site.name, kind), [])
                if not ways:
                    continue
                used[kind] = self.model.column(("used", site.name, kind), -site.cost)
                self.used[site.name, kind] = used[kind]
                by_action: dict[str, list[int]] = {}
                for number in ways:
                    by_action.setdefault(self.q.ways[number].action, []).append(number)
                for numbers in by_action.values():
                    terms = [(self.x[n], 1.0) for n in numbers]
                    self.model.row(("site", site.name), [*terms, (used[kind], -1.0)], high=0.0)
                most = {"stick": 1, "switch": site.most_switches}.get(kind)
                if most is not None and len(by_action) > most:
                    terms = [(self.x[n], 1.0) for n in ways]
                    self.model.row(("site", site.name), [*terms, (used[kind], -float(most))], high=0.0)
            if len(used) > 1:
                self.model.row(("site", site.name), [(column, 1.0) for column in used.values()], high=1.0)

    def presses_fit_in_the_minute(self) -> None:
        """Only what a site really works loads it: the limit counts once for the kind of device it works."""
        for site in self.q.sites:
            group = ("presses", site.name)
            for kind in ("switch", "controller"):
                mine = self.by_site.get((site.name, kind), [])
                used = self.used.get((site.name, kind))
                if used is None:
                    continue
                busy = [(self.x[n], self.q.ways[n].busy_s) for n in mine]
                self.model.row(group, [*busy, (used, -BUSY_LIMIT_S)], high=0.0)
                if kind == "switch" and site.most_switches > 1 and len({self.q.ways[n].action for n in mine}) > 1:
                    self._near_each_other(site, mine, used)

    def _near_each_other(self, site: PlayingSite, switches: Sequence[int], used: int) -> None:
        """Several switches at one part: it has to move between them."""
        group = ("presses", site.name)
        near = [(self.x[n], self.q.ways[n].near_s) for n in switches]
        # one switch alone needs no moving, but it always fits in the minute where even moving to it would
        longest = max(seconds for _, seconds in near)
        alone = [n for n in switches if self.q.ways[n].alone]
        if longest <= BUSY_LIMIT_S:
            self.model.row(group, [*near, (used, -BUSY_LIMIT_S)], high=0.0)
            if not alone:
                return
        single = self.model.column(("single", site.name))
        spare = site.most_switches - 1.0
        every = ((self.x[n], 1.0) for n in switches)
        self.model.row(("site", site.name), [*every, (single, spare), (used, -1.0 - spare)], high=0.0)
        if longest > BUSY_LIMIT_S:
            self.model.row(group, [*near, (single, BUSY_LIMIT_S - longest), (used, -BUSY_LIMIT_S)], high=0.0)
        by_action: dict[str, list[int]] = {}
        for number in alone:
            by_action.setdefault(self.q.ways[number].action, []).append(number)
        for numbers in by_action.values():
            self.model.row(group, [*((self.x[n], 1.0) for n in numbers), (single, -1.0)], high=0.0)

    def controllers_stand_somewhere(self) -> None:
        on_them = [n for n, way in enumerate(self.q.ways) if way.kind == "controller"]
        controls: dict[tuple[str, str, bool, str], list[int]] = {}
        for number in on_them:
            way = self.q.ways[number]
            key = (way.device or "", self.q.stands(way), way.paired)
            if key not in self.units:
                self.units[key] = self.model.column(("unit", *key), -self.q.part_points)
                self.uses[key[0]].append((self.units[key], 1.0))
                self.devices.append(self.units[key])
            controls.setdefault((*key, way.control or ""), []).append(number)
        standing: dict[str, list[tuple[int, float]]] = {}
        for (_, place, _), column in self.units.items():
            standing.setdefault(place, []).append((column, 1.0))
        for place, units in standing.items():
            if len(units) > 1:  # whatever holds one has no room for another
                self.model.row(("site", place), units, high=1.0)
        for (device, place, paired, control), numbers in controls.items():
            terms = [(self.x[n], 1.0) for n in numbers]
            unit = self.units[(device, place, paired)]
            self.model.row(("site", f"{device}: {control}"), [*terms, (unit, -1.0)], high=0.0)
        self._hands_that_hold()
        self._sticks_on_grips()
        helped = [self.x[n] for n, way in enumerate(self.q.ways) if way.how == "helper"]
        on_air = [(column, 1.0) for (_, _, paired), column in self.units.items() if paired]
        if not self.q.wired:
            return
        if helped:
            aid = self.model.column(("aid",))
            for column in helped:
                self.model.row(("paired",), [(column, 1.0), (aid, -1.0)], high=0.0)
            on_air.append((aid, 1.0))
        self.model.row(("paired",), on_air, high=float(self.q.paired))

    def _hands_that_hold(self) -> None:
        """A hand that holds a controller works that one, and what is fixed to it, and nothing else."""
        limb = {site.name: site.limb for site in self.q.sites}
        holding = {
            (way.device or "", way.held_in, way.paired): way.holding_limbs for way in self.q.ways if way.holding_limbs
        }
        for (device, place, paired), limbs in holding.items():
            others: dict[tuple[str, str], list[int]] = {}
            for number, way in enumerate(self.q.ways):
                own = (way.device, way.held_in, way.paired) == (device, place, paired) or way.fixed_to == device
                if way.how == "site" and limb[way.site or ""] in limbs and not own:
                    others.setdefault((way.action, limb[way.site or ""]), []).append(number)
            unit = self.units[device, place, paired]
            for (_, arm), numbers in others.items():
                self.model.row(("held", device, arm), [*((self.x[n], 1.0) for n in numbers), (unit, 1.0)], high=1.0)

    def _sticks_on_grips(self) -> None:
        """A stick on a controller's grip needs that controller worked by the same hand, and by no other."""
        limb = {site.name: site.limb for site in self.q.sites}
        for number, fixed in enumerate(self.q.ways):
            if not fixed.fixed_to:
                continue
            on_it = [n for n, way in enumerate(self.q.ways) if (way.kind, way.device) == ("controller", fixed.fixed_to)]
            mine = [n for n in on_it if limb[self.q.ways[n].site or ""] == limb[fixed.site or ""]]
            group = ("fixed", fixed.device or "", fixed.fixed_to)
            self.model.row(group, [(self.x[number], 1.0), *((self.x[n], -1.0) for n in mine)], high=0.0)
            for action in dict.fromkeys(self.q.ways[n].action for n in on_it if n not in mine):
                others = [n for n in on_it if n not in mine and self.q.ways[n].action == action]
                terms = [(self.x[number], 1.0), *((self.x[n], 1.0) for n in others)]
                self.model.row(group, terms, high=1.0)

    def devices_are_plugged_in(self) -> None:
        demands = self._demands()
        outlets = [Outlet(k, None, len(group.sockets), group.limit_a) for k, group in enumerate(self.q.sockets)]
        split: dict[int, int] = {}
        for k, group in enumerate(self.q.sockets):
            for number, splitter in enumerate(self.q.splitters):
                if splitter.plug != group.plug or not _supplies(group, splitter):
                    continue
                # alike as long as each can feed all its ways; otherwise what is in which of them matters
                alone = len(group.sockets) if _short_of_current(group, splitter) else 1
                for _ in range(alone):
                    column = self.model.column(
                        ("split", k, number), -self.q.part_points, float(len(group.sockets) // alone)
                    )
                    self.uses[splitter.name].append((column, 1.0))
                    split[len(outlets)] = column
                    outlets.append(Outlet(k, number, splitter.ways, splitter.way_limit_a))
        filled: dict[int, list[tuple[int, float]]] = {place: [] for place in range(len(outlets))}
        drawn: dict[int, list[tuple[int, float]]] = {place: [] for place in range(len(outlets))}
        arriving: dict[str, list[tuple[int, float]]] = {}
        for demand, members in demands.items():
            options = socket_options(demand, self.q.sockets, self.q.adapters)
            columns = []
            fed: list[tuple[int, int]] = []
            for k, adapter, current in options:
                for place, outlet in enumerate(outlets):
                    if outlet.group != k or (outlet.limit_a is not None and current > outlet.limit_a + 1e-9):
                        continue
                    column = self.model.column(
                        ("plugged", demand, place, adapter), -self.q.part_points if adapter is not None else 0.0,
                        float(len(self.q.sockets[k].sockets)) * (outlet.capacity if outlet.splitter is not None else 1),
                    )  # fmt: skip
                    columns.append((column, -1.0))
                    fed.append((column, k))
                    filled[place].append((column, 1.0))
                    drawn[place].append((column, current))
                    if adapter is not None:
                        self.uses[self.q.adapters[adapter].name].append((column, 1.0))
            name = demand.device or demand.role or f"any_{demand.feeds}"
            self.model.row(("sockets", name, *demand.plugs), [*members, *columns], 0.0, 0.0)
            if demand.device:
                self._controller_roles(demand, fed)
            else:
                for column, k in fed:
                    roles = self.q.sockets[k].roles
                    arrives = roles[0] if len(roles) == 1 else demand.role
                    if arrives is not None:
                        arriving.setdefault(arrives, []).append((column, 1.0))
        self._inputs_once(arriving)
        self.model.outlets += outlets
        self._outlet_rows(outlets, filled, drawn, split)

    def _inputs_once(self, arriving: dict[str, list[tuple[int, float]]]) -> None:
        """What the game sees of two devices that feed the same input cannot be told apart: one silently wins."""
        for number, way in enumerate(self.q.ways):
            if way.kind == "controller":
                arrives = way.role if way.control in STICK_ROLES else way.control
                if arrives is not None:
                    arriving.setdefault(arrives, []).append((self.x[number], 1.0))
        for role, terms in arriving.items():
            if sum(self.model.upper[column] for column, _ in terms) > 1:
                self.model.row(("input", role), terms, high=1.0)

    def _demands(self) -> dict[SocketColumns, list[tuple[int, float]]]:
        out: dict[SocketColumns, list[tuple[int, float]]] = {}
        for number, way in enumerate(self.q.ways):
            if way.kind in ("stick", "switch") and way.device is not None:
                gear = self.gear[way.device]
                feeds = "stick" if way.kind == "stick" else "button"
                key = SocketColumns(way.role, feeds, gear.plugs, gear.current_a)
                out.setdefault(key, []).append((self.x[number], 1.0))
        for (device, _, paired), column in self.units.items():
            if not paired:
                gear = self.gear[device]
                key = SocketColumns(None, "stick", gear.plugs, gear.current_a, device)
                out.setdefault(key, []).append((column, 1.0))
        return out

    def _controller_roles(self, demand: SocketColumns, fed: Sequence[tuple[int, int]]) -> None:
        """Its one stick that a hub passes on takes the role of the socket: as many of each role as sockets that give it."""
        asked: dict[str | None, list[int]] = {}
        of_unit: dict[str, list[int]] = {}
        for number, way in enumerate(self.q.ways):
            if (way.kind, way.device, way.paired) == (
                "controller",
                demand.device,
                False,
            ) and way.control in STICK_ROLES:
                asked.setdefault(way.role, []).append(number)
                of_unit.setdefault(self.q.stands(way), []).append(number)
        for role, numbers in asked.items():
            giving = [(column, -1.0) for column, k in fed if role is None or role in self.q.sockets[k].roles]
            terms = [(self.x[n], 1.0) for n in numbers]
            self.model.row(("sockets", role or "any_stick", *demand.plugs), [*terms, *giving], high=0.0)
        for place, numbers in of_unit.items():
            if len({self.q.ways[n].control for n in numbers}) > 1:
                unit = self.units[demand.device, place, False]
                terms = [(self.x[n], 1.0) for n in numbers]
                self.model.row(("site", f"{demand.device}: stick"), [*terms, (unit, -1.0)], high=0.0)

    def _outlet_rows(
        self,
        outlets: Sequence[Outlet],
        filled: dict[int, list[tuple[int, float]]],
        drawn: dict[int, list[tuple[int, float]]],
        split: dict[int, int],
    ) -> None:
        inside: dict[int, list[tuple[int, float]]] = {}
        of_hub: dict[str, list[tuple[int, float]]] = {}
        count_of_hub: dict[str, list[tuple[int, float]]] = {}
        for place, outlet in enumerate(outlets):
            group = self.q.sockets[outlet.group]
            if outlet.splitter is None:
                splitters = [(column, 1.0) for other, column in split.items() if outlets[other].group == outlet.group]
                inside[outlet.group] = filled[place] + splitters
                self.model.row(("sockets", group.name), inside[outlet.group], high=float(len(group.sockets)))
            else:
                splitter = self.q.splitters[outlet.splitter]
                column = split[place]
                name = ("sockets", f"{group.name} {splitter.name}")
                self.model.row(name, [*filled[place], (column, -float(splitter.ways))], high=0.0)
                if not splitter.powered and group.limit_a is not None:
                    left = group.limit_a - splitter.current_a
                    self.model.row(("power", group.name), [*drawn[place], (column, -left)], high=0.0)
            powered = outlet.splitter is not None and self.q.splitters[outlet.splitter].powered
            of_hub.setdefault(group.hub, []).extend([] if powered else drawn[place])
            count_of_hub.setdefault(group.hub, []).extend(filled[place])
        for k, group in enumerate(self.q.sockets):
            for other in group.excludes:
                self.model.row(
                    ("sockets", group.name, self.q.sockets[other].name), [*inside[k], *inside[other]], high=1.0
                )
        for hub, limit_a, most in self.q.hub_limits:
            own = [
                (column, self.q.splitters[outlets[place].splitter or 0].current_a)
                for place, column in split.items()
                if self.q.sockets[outlets[place].group].hub == hub
            ]
            if limit_a is not None:
                self.model.row(("power", hub), [*of_hub.get(hub, []), *own], high=limit_a + 1e-9)
            if most is not None:
                self.model.row(("sockets", hub), count_of_hub.get(hub, []), high=float(most))

    def stock_and_limits(self) -> None:
        spent = []
        for gear in self.q.gear:
            uses = self.uses[gear.name]
            if not uses:
                continue
            bought = []
            if gear.price is not None:
                column = self.model.column(("bought", gear.name), -self.q.buy_points, float(len(self.q.actions)))
                bought = [(column, -1.0)]
                spent.append((column, gear.price))
            most = sum(self.model.upper[column] for column, _ in uses)
            if gear.price is not None or most > gear.in_stock:
                self.model.row(("stock", gear.name), [*uses, *bought], high=float(gear.in_stock))
        if self.q.budget is not None:
            self.model.row(("budget",), spent, high=self.q.budget + 1e-9)
        if self.q.most_parts is not None:
            self.model.row(("parts",), [(column, 1.0) for column in self.devices], high=float(self.q.most_parts))

    def choices_that_stay(self) -> None:
        for name, most, ways in self.q.at_most:
            self.model.row(("helper", name), [(self.x[n], 1.0) for n in ways], high=float(most))
        for what, where, ways in self.q.keep:
            self.model.row(("keep", what, where), [(self.x[n], 1.0) for n in ways], low=1.0)
        for site, most, ways in self.q.standing:
            self.model.row(("site", site), [(self.x[n], 1.0) for n in ways], high=float(most))
        for name, ways in self.q.without:
            self.model.row(("without", name), [(self.x[n], 1.0) for n in ways], high=0.0)


def _supplies(group: SocketGroup, splitter: Splitter) -> bool:
    """Whether a socket gives what a splitter takes for itself, and something more where that has no supply of its own."""
    if group.limit_a is None:
        return True
    return group.limit_a >= splitter.current_a - 1e-9 if splitter.powered else group.limit_a > splitter.current_a


def _short_of_current(group: SocketGroup, splitter: Splitter) -> bool:
    """Whether a splitter may be asked for more in all than its socket supplies."""
    if splitter.powered or group.limit_a is None:
        return False
    return splitter.ways * splitter.way_limit_a > group.limit_a - splitter.current_a


def integer_model(question: Question) -> IntegerModel:
    """The question as columns and rows.

    Returns
    -------
    IntegerModel
        Column n is way n for the first ones; the others follow.
    """
    return _Builder(question).build()
