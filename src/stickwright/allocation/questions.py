"""From a case and its wishes to the question put to the solver."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import combinations

from stickwright.allocation import utility
from stickwright.allocation.concurrency import limb_of
from stickwright.allocation.places import PossibleWays, place_of
from stickwright.allocation.pressing import Pressed, press_fit
from stickwright.allocation.problem import Gear, PlayingSite, Question, TogetherNeed, Way, rounded
from stickwright.allocation.sockets import adapters_of, hub_limits, socket_groups, splitters_of
from stickwright.codes.asked import Asked
from stickwright.codes.message import message
from stickwright.errors import BadInput, Problem, did_you_mean, near_name
from stickwright.model.case import Case
from stickwright.model.game import Action
from stickwright.model.hub import BUTTON_ROLES, Role
from stickwright.model.kit import Controller, Extension, Fastener, Kit, Lead, Mount, Stick, Switch, Topper
from stickwright.model.player import Site as PlayerSite
from stickwright.model.plugs import plugs_of
from stickwright.model.sharing import Pair, PressFit
from stickwright.model.wishes import Keep, Wishes

__all__ = ["kit_without", "question_of", "together_pairs", "wishes_for", "wrong_wishes"]

_LEFT = ("option", "helper", "dropped")
_NONE_AT_ALL = ("helper", "option")


def question_of(case: Case, found: PossibleWays, pairs: Sequence[Pair], wishes: Wishes) -> Question:
    """The whole question.

    Parameters
    ----------
    case : Case
    found : PossibleWays
        Every way to do every action.
    pairs : sequence of Pair
        Which sites can act at the same time.
    wishes : Wishes

    Raises
    ------
    BadInput
        A wish names something that is not there, or a limit is negative; all problems at once.
    """
    ways = found.ways
    problems = wrong_wishes(case, wishes)
    if problems:
        raise BadInput(problems)
    used = {way.site for way in ways if way.site is not None}
    gear = _gear(case.kit, wishes)
    return Question(
        actions=tuple(action.name for action in case.game.action),
        importance=tuple(float(action.importance) for action in case.game.action),
        ways=ways,
        gear=gear,
        sites=tuple(_site(site) for site in case.player.site if site.name in used),
        together=tuple(_together(case, ways, pairs)),
        chords=tuple((action.name, action.of) for action in case.game.action if action.kind == "chord"),
        sockets=socket_groups(case.hubs, wishes.without),
        wired=bool(case.hubs),
        hub_limits=hub_limits(case.hubs),
        paired=sum(hub.paired for hub in case.hubs if hub.name not in wishes.without),
        adapters=adapters_of(case.kit.lead, wishes.without),
        splitters=splitters_of(case.kit.lead, wishes.without),
        part_points=utility.PART_POINTS,
        buy_points=utility.BUY_POINTS,
        budget=wishes.budget,
        most_parts=wishes.most_parts,
        at_most=tuple(_helper_limits(case, ways)),
        keep=tuple(_kept(ways, keep) for keep in wishes.keep),
        without=tuple(_barred(case, ways, wishes.without)),
    )


def _site(site: PlayerSite) -> PlayingSite:
    terms = utility.site_terms(site)
    most = site.press.most_switches if site.press is not None else 2
    return PlayingSite(
        site.name, rounded(-sum(term.points for term in terms)), most, place_of(site), terms, limb_of(site)
    )


def _gear(kit: Kit, wishes: Wishes) -> tuple[Gear, ...]:
    out = []
    pads = {
        one.name for one in kit.controller
    }  # a plan lists the sticks of a controller under its name; it is one thing
    sticks = [one for one in kit.stick if one.name not in pads]
    devices: list[Stick | Switch | Controller] = [*sticks, *kit.switch, *kit.controller]
    for one in devices:
        price = None if wishes.only_kit or one.price is None else rounded(one.price)
        out.append(Gear(one.name, plugs_of(one.plug), rounded(one.current_a or 0.0), one.in_stock, price))
    for lead in kit.lead:
        if lead.kind != "extension":
            price = None if wishes.only_kit or lead.price is None else rounded(lead.price)
            out.append(Gear(lead.name, plugs_of(lead.plug), rounded(lead.current_a or 0.0), lead.in_stock, price))
    return tuple(out)


def together_pairs(actions: Sequence[Action]) -> tuple[tuple[str, str, str | None], ...]:
    """Pairs of actions that must be possible at the same time, each once, and the chord that asks for it.

    Examples
    --------
    >>> run, jump = Action(name="run", kind="hold", together=("jump",)), Action(name="jump", kind="press", together=("run",))
    >>> together_pairs((run, jump))
    (('run', 'jump', None),)
    """
    names = [action.name for action in actions]
    seen: dict[tuple[str, str, str | None], None] = {}
    for action in actions:
        wanted: Iterable[tuple[str, str]]
        wanted = combinations(action.of, 2) if action.kind == "chord" else ((action.name, o) for o in action.together)
        chord = action.name if action.kind == "chord" else None
        for pair in wanted:
            if all(name in names for name in pair) and pair[0] != pair[1]:
                first, second = sorted(pair, key=names.index)
                seen[first, second, chord] = None
    return tuple(seen)


def _together(case: Case, ways: Sequence[Way], pairs: Sequence[Pair]) -> list[TogetherNeed]:
    actions = {action.name: action for action in case.game.action}
    never = {both for pair in pairs if pair.says == "no" for both in (pair.sites, pair.sites[::-1])}
    slows = {both: pair for pair in pairs if pair.says == "slows" for both in (pair.sites, pair.sites[::-1])}
    out = []
    for first, second, chord in together_pairs(case.game.action):
        too_slow, slowed = set(), []
        for both, pair in slows.items():
            share = pair.slowed_share
            measured = pair.assumed is None  # a usual share costs, and refuses nothing
            if measured and any(
                _slow_fails(case, ways, actions[name], at, share)
                for name, at in zip((first, second), both, strict=True)
            ):
                too_slow.add(both)
            else:
                least = min(actions[first].importance, actions[second].importance)
                slowed.append((*both, rounded(utility.SLOWED_POINTS * 2 * share * least)))
        out.append(TogetherNeed(first, second, chord, frozenset(never | too_slow), tuple(slowed)))
    return out


def _slow_fails(case: Case, ways: Sequence[Way], action: Action, site: str, share: float) -> bool:
    """Whether an action that is pressed at a site cannot be kept up once another part slows it."""
    pressed = (
        one for one in ways if (one.action, one.site) == (action.name, site) and isinstance(one.detail, PressFit)
    )
    way = next(pressed, None)
    if way is None:
        return False
    part = next(one for one in case.player.site if one.name == site)
    found = press_fit(part, _pressed_on(case.kit, way), action, toggle=way.toggle, slowed_share=share)
    return bool(found.fails)


def _pressed_on(kit: Kit, way: Way) -> Pressed:
    if way.kind == "switch":
        return Pressed.of_switch(next(one for one in kit.switch if one.name == way.device))
    return Pressed.of_button(next(one for one in kit.controller if one.name == way.device), _button(way))


def _button(way: Way) -> Role:
    return next(role for role in BUTTON_ROLES if role == way.control)


def _helper_limits(case: Case, ways: Sequence[Way]) -> Iterable[tuple[str, int, tuple[int, ...]]]:
    for helper in case.player.helper:
        if helper.most_actions is not None:
            mine = tuple(n for n, way in enumerate(ways) if way.how == "helper" and way.label == helper.name)
            yield helper.name, helper.most_actions, mine


def _kept(ways: Sequence[Way], keep: Keep) -> tuple[str, str, tuple[int, ...]]:
    def does(way: Way) -> bool:
        if keep.what == way.action:
            return keep.where in (way.site, way.device, way.how if way.how in _LEFT else None, way.control) or (
                way.how == "helper" and keep.where == way.label
            )
        return keep.what == way.site and keep.where == way.device

    return keep.what, keep.where, tuple(number for number, way in enumerate(ways) if does(way))


def _barred(case: Case, ways: Sequence[Way], without: Sequence[str]) -> Iterable[tuple[str, tuple[int, ...]]]:
    helpers = {helper.name for helper in case.player.helper}
    for name in without:
        mine = tuple(
            number
            for number, way in enumerate(ways)
            if name in (way.device, way.site)
            or (way.how == "helper" and (name == "helper" or (name in helpers and name == way.label)))
            or (way.how == "option" and name == "option")
        )
        if mine:
            yield name, mine


def kit_without(kit: Kit, without: Sequence[str]) -> Kit:
    """The kit without what is not to be used, as far as it is no device: mounts, fasteners and leads go; toppers and
    extensions are out of stock, since recordings may name them. Devices are left to the solver, which says what they are for.

    Parameters
    ----------
    kit : Kit
    without : sequence of str
        Names.
    """
    if not without:
        return kit
    gone = {
        name: tuple(one for one in getattr(kit, name) if one.name not in without)
        for name in ("lead", "mount", "fastener")
    }
    out = {
        name: tuple(
            one.model_copy(update={"in_stock": 0}) if one.name in without else one for one in getattr(kit, name)
        )
        for name in ("topper", "extension")
    }
    return kit.model_copy(update={**gone, **out})


def _names_of(case: Case) -> list[str]:
    """Everything that a plan can do without, by name."""
    kit = case.kit
    items: list[Stick | Switch | Controller | Topper | Extension | Lead | Mount | Fastener]
    items = [
        *kit.stick,
        *kit.switch,
        *kit.controller,
        *kit.topper,
        *kit.extension,
        *kit.lead,
        *kit.mount,
        *kit.fastener,
    ]
    hubs = [name for hub in case.hubs for name in (hub.name, *(socket.name for socket in hub.socket))]
    return [
        *(one.name for one in items),
        *(site.name for site in case.player.site),
        *(one.name for one in case.player.helper),
        *hubs,
    ]


def wishes_for(case: Case, wishes: Wishes) -> Wishes:
    """The wishes that a case can still say no to: what its kit no longer holds needs no wish.

    Parameters
    ----------
    case : Case
        Its kit as `kit_without` leaves it.
    wishes : Wishes
    """
    known = {*_names_of(case), *_NONE_AT_ALL}
    return replace(wishes, without=tuple(name for name in wishes.without if name in known))


def wrong_wishes(case: Case, wishes: Wishes) -> list[Problem]:
    """Wishes that name something that is not there, and limits below 0."""
    sites = [site.name for site in case.player.site]
    actions = [action.name for action in case.game.action]
    kit = case.kit
    devices = [name for part in (kit.stick, kit.switch, kit.controller) for name in (one.name for one in part)]
    controls = {control for pad in kit.controller for control in (*pad.sticks, *pad.buttons)}
    helpers = [helper.name for helper in case.player.helper]
    known = _names_of(case)
    out = [
        Problem("--without", f'"{name}"', message(Asked.excludable),
                did_you_mean(name, [*known, *(word for word in _NONE_AT_ALL if near_name(name, [word]))]))
        for name in wishes.without
        if name not in (*known, *_NONE_AT_ALL)
    ]  # fmt: skip
    if wishes.budget is not None and not 0 <= wishes.budget < 1e6:
        out.append(Problem("--budget", f"{wishes.budget:g}", message(Asked.none_or_more), message(Asked.budget)))
    if wishes.most_parts is not None and wishes.most_parts < 0:
        out.append(Problem("--max-parts", str(wishes.most_parts), message(Asked.none_or_more), message(Asked.devices)))
    for keep in wishes.keep:
        shown = f"{keep.what}={keep.where}"
        if keep.what not in actions and keep.what not in sites:
            remedy = did_you_mean(keep.what, [*actions, *sites])
            out.append(Problem("--keep", f'"{shown}"', message(Asked.pair), remedy))
        elif keep.where not in (*sites, *devices, *helpers, *_LEFT, *controls):
            remedy = did_you_mean(keep.where, [*sites, *devices, *helpers, *_LEFT])
            out.append(Problem("--keep", f'"{shown}"', message(Asked.place), remedy))
    return out
