"""Several games of one player: who does what in each, with one set of devices, and what changes between the games."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from stickwright.allocation.allocate import allocate
from stickwright.allocation.explain import place_words
from stickwright.allocation.games import GameAsked, GamesShared, extra_points, share_games, weighted
from stickwright.allocation.places import STICK_KINDS
from stickwright.allocation.replugging import plugged_for_all, refits_of, replugs_of, sockets_kept
from stickwright.allocation.stands import Stand, stands_of
from stickwright.allocation.wiring import wiring_of
from stickwright.codes.choices import Choices
from stickwright.codes.clashes import LIMBS, limb_named
from stickwright.codes.games import Games
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.part_kinds import PartKind
from stickwright.mechanics.site_inputs import Rules
from stickwright.model.case import Case
from stickwright.model.fit import Assumption
from stickwright.model.kit import Controller, Stick, Switch
from stickwright.model.layouts import GamesTogether, Layout
from stickwright.model.player import Player, Site
from stickwright.model.recorded import Finding
from stickwright.model.sharing import HeldWay, PartLine, Placement, Sharing, Wiring
from stickwright.model.wishes import Wishes
from stickwright.planning.site_planning import KnownSite, judged_for, offered

__all__ = ["MUCH_SHARE", "Shared", "all_actions", "each_game", "held_in_all", "layouts_of", "shared_out", "weights_of"]

MUCH_SHARE = 0.10
"""Share of its own points beyond which a game loses much by the common set: common practice, no source."""
_NOTABLE = 0.05
"""Points below which a difference is not worth a word."""
_FINEST_WEIGHT = 100


@dataclass(frozen=True, eq=False)
class Shared:
    """Who does what: in the first game, and in all of them where there are several.

    Parameters
    ----------
    sharing : Sharing or None
        Of the first game.
    games : GamesShared or None
        None for one game alone.
    """

    sharing: Sharing | None
    games: GamesShared | None = None

    @property
    def placements(self) -> tuple[tuple[Placement, ...], ...]:
        """Of each game."""
        sharings = (self.sharing,) if self.games is None else self.games.sharings
        return tuple(one.placements if one is not None else () for one in sharings)


def each_game(case: Case) -> tuple[Case, ...]:
    """For each game the case as if it were the only one; a site is kept for an action only in games that have it."""
    if not case.further_games:
        return (case,)
    every = {action.name for game in case.games for action in game.action}
    out = []
    for one in case.with_each_game():
        mine = {action.name for action in one.game.action}
        sites = tuple(
            site.model_copy(update={"action": None}) if site.action in every - mine else site
            for site in one.player.site
        )
        out.append(replace(one, player=one.player.model_copy(update={"site": sites})))
    return tuple(out)


def all_actions(case: Case) -> Case:
    """The case with one game that has the actions of all, each name once, at what it is worth most."""
    if not case.further_games:
        return case
    actions = {}
    for action in sorted((one for game in case.games for one in game.action), key=lambda one: one.importance):
        actions[action.name] = action
    order = dict.fromkeys(action.name for game in case.games for action in game.action)
    game = case.game.model_copy(update={"action": tuple(actions[name] for name in order)})
    return replace(case, game=game, further_games=())


def weights_of(case: Case) -> tuple[tuple[int, ...], tuple[Assumption, ...]]:
    """What each game counts for, by the hours wished, as small whole numbers; and what is assumed.

    Returns
    -------
    weights : tuple of int
        Equal where nobody gave hours; a game without hours among others counts as their mean.
    assumptions : tuple of Assumption
    """
    hours = [game.hours_per_week for game in case.games]
    told = [one for one in hours if one is not None]
    usual = sum(told) / len(told) if told else 1.0
    filled = [usual if one is None else one for one in hours]
    longest = max(filled)
    tenth = [round(one * 10) for one in filled]
    whole = tenth if max(tenth) <= _FINEST_WEIGHT else [max(1, round(_FINEST_WEIGHT * one / longest)) for one in filled]
    common = math.gcd(*whole)
    untold = [game.name for game in case.games if game.hours_per_week is None]
    assumed = (
        Assumption(
            message(Games.hours_of, games=tuple(map(Name, untold))),
            message(Games.hours_usual, each_week_s=3600 * usual if told else None),
            message(Games.hours_untold),
            message(Games.hours_confirm),
        ),
    )
    return tuple(one // common for one in whole), assumed if untold and len(hours) > 1 else ()


def shared_out(
    cases: Sequence[Case],
    weights: Sequence[int],
    sites: Sequence[Site],
    known: Sequence[KnownSite],
    rules: Rules,
    asked: tuple[Wishes, str | None, Callable[[float], None]],
) -> Shared:
    """Who does what in each game.

    Parameters
    ----------
    cases : sequence of Case
        From `each_game`.
    weights : sequence of int
    sites : sequence of Site
        That may be used.
    known : sequence of KnownSite
    rules : Rules
    asked : tuple
        Wishes, the action for which every place is priced, and who is told the share done.
    """
    wishes, why, tell = asked
    games = [
        _asked(case, weight, sites, known, rules, (wishes, why)) for case, weight in zip(cases, weights, strict=True)
    ]
    if len(games) > 1:
        found = share_games(games)
        return Shared(found.sharings[0], replace(found, sharings=sockets_kept(found.sharings, cases, wishes)))
    (one,) = games
    return Shared(
        allocate(
            one.case,
            one.offers,
            wishes=one.wishes,
            usable=one.usable,
            tiring_share=one.tiring_share,
            why=one.why,
            tell=tell,
        )
    )


def _asked(
    case: Case, weight: int, sites: Sequence[Site], known: Sequence[KnownSite], rules: Rules,
    asked: tuple[Wishes, str | None],
) -> GameAsked:  # fmt: skip
    wishes, why = asked
    actions = [action.name for action in case.game.action if action.kind in STICK_KINDS]
    kept_for = {site.name: site.action for site in case.player.site}
    offers = {
        (one.site.name, action): offered(one, judged_for(case, one, action, rules))
        for one in known
        for action in actions
        if kept_for[one.site.name] in (None, action)
    }
    tiring = {
        one.site.name: one.ability.report.tiring_share.number
        for one in known
        if one.ability.report.tiring_share is not None
    }
    names = {action.name for action in case.game.action}
    mine = replace(wishes, keep=tuple(one for one in wishes.keep if one.what in names or one.what in kept_for))
    why = next((name for name in names if why is not None and name.casefold() == why.strip().casefold()), None)
    pressing = replace(case, player=_as_recorded(case.player, known))
    return GameAsked(
        case=pressing,
        offers=offers,
        weight=weight,
        wishes=mine,
        usable=[site.name for site in sites],
        tiring_share=tiring,
        why=why,
    )


def _as_recorded(player: Player, known: Sequence[KnownSite]) -> Player:
    """The player with the unsteadiness that was recorded at a site, where nobody typed one."""
    found = {
        one.site.name: one.ability.report.involuntary_force_n
        for one in known
        if one.site.involuntary_force_n is None and one.ability.report.involuntary_force_n.assumed is None
    }
    sites = tuple(
        site.model_copy(update={"involuntary_force_n": found[site.name].value}) if site.name in found else site
        for site in player.site
    )
    return player.model_copy(update={"site": sites})


# ---- what is held, and the parts


def held_in_all(shared: Shared) -> Sharing | None:
    """The sharing of the first game with the placements of all games in which a device is used most: what must be held."""
    if shared.sharing is None or shared.games is None:
        return shared.sharing
    most: dict[tuple[str, str], list[Placement]] = {}
    for placements in shared.placements:
        mine: dict[tuple[str, str], list[Placement]] = {}
        for one in placements:
            if one.how == "site" and one.device:
                mine.setdefault(("" if one.kind == "controller" else one.site or "", one.device), []).append(one)
        for unit, group in mine.items():
            if len(group) > len(most.get(unit, [])):
                most[unit] = group
    return replace(shared.sharing, placements=tuple(one for group in most.values() for one in group))


def _parts_for_all(
    wirings: Sequence[Wiring], stands: Mapping[Stand, int], kit_price: Mapping[str, float | None]
) -> tuple[PartLine, ...]:
    """Devices as many as stand there for all games; all else as many as the game that needs most, or all plugged in at once."""
    devices: Counter[str] = Counter()
    for (_, _, device), number in stands.items():
        devices[device] += number
    out: dict[tuple[PartKind, Text], PartLine] = {}
    for wiring in wirings:
        for line in wiring.parts:
            key = (line.kind, line.name)
            if key not in out or line.count > out[key].count:
                out[key] = line
    for key, line in out.items():
        name = line.name if isinstance(line.name, str) else ""  # what is wired has a name of its own
        count = max(line.count, devices[name])
        if count > line.count:
            buy, each = max(0, count - line.in_stock), kit_price.get(name)
            price = 0.0 if not buy else None if each is None else round(each * buy, 2)
            out[key] = replace(line, count=count, buy=buy, price=price)
    return tuple(out.values())


# ---- the layouts


def layouts_of(
    cases: Sequence[Case], weights: Sequence[int], shared: Shared, ways: Sequence[HeldWay] | None,
    assumed: tuple[Assumption, ...],
) -> tuple[tuple[Layout, ...], GamesTogether | None]:  # fmt: skip
    """A layout for each game, and how one set of devices serves them all; nothing for one game alone.

    Parameters
    ----------
    cases : sequence of Case
    weights : sequence of int
    shared : Shared
    ways : sequence of HeldWay or None
        The way of each cable along what holds its device; None when the room is not described.
    assumed : tuple of Assumption
        From `weights_of`.
    """
    games = shared.games
    if games is None:
        return (), None
    sharings = tuple(_with_cables(one, case, ways) for one, case in zip(games.sharings, cases, strict=True))
    kit = cases[0].kit
    devices: list[Stick | Switch | Controller] = [*kit.stick, *kit.switch, *kit.controller]
    prices = {device.name: device.price for device in devices}
    stock = Counter({device.name: device.in_stock for device in devices})
    plugged = plugged_for_all(sharings, cases[0], ways or ()) if games.outcome == "common" else None
    layouts = []
    for number, case in enumerate(cases):
        extra, price = _separate(games, number, cases, prices, stock)
        here, alone = sharings[number], games.alone[number]
        points, own = _points(here), _points(alone)
        cost = None if points is None or own is None else max(0.0, round(own - points, 3))
        first, apart = sharings[0], plugged.apart[number] if plugged is not None else ()
        layouts.append(
            Layout(
                game=case.game.name, hours_per_week=case.game.hours_per_week, weight_share=weights[number] / sum(weights),
                sharing=here, points=points, points_alone=own, cost=cost,
                because=_because(alone, here) if cost and alone is not None and here is not None else (),
                separate=extra, separate_price=price,
                replugs=replugs_of(first, here, apart) if number and first is not None and here is not None else (),
                refits=refits_of(first, here) if number and first is not None and here is not None else (),
                own_dead_zone_share=case.game.own_dead_zone_share,
            )
        )  # fmt: skip
    at_once = wiring_of(plugged.placements, cases[0], ways or ()) if plugged is not None else None
    more = (assumed, prices, at_once)
    return tuple(layouts), _together(cases, weights, replace(games, sharings=sharings), layouts, more)


def _with_cables(sharing: Sharing | None, case: Case, ways: Sequence[HeldWay] | None) -> Sharing | None:
    if sharing is None or sharing.wiring is None or ways is None:
        return sharing
    return replace(sharing, wiring=wiring_of(sharing.placements, case, ways))


def _points(sharing: Sharing | None) -> float | None:
    return sharing.points if sharing is not None and math.isfinite(sharing.points) else None


def _because(alone: Sharing, here: Sharing) -> tuple[Message, ...]:
    """Actions done otherwise than with devices for this game only, dearest first."""
    own = {placement.action: placement for placement in alone.placements}
    changed = []
    for one in here.placements:
        before = own.get(one.action)
        if before is None or place_words(before) == place_words(one):
            continue
        lost = before.points - one.points
        words = message(
            Games.otherwise,
            change=message(Choices.change, action=Name(one.action), new=place_words(one), old=place_words(before)),
            lost_points=lost if abs(lost) > _NOTABLE else None,
        )
        changed.append((lost, words))
    return tuple(words for _, words in sorted(changed, key=lambda pair: -pair[0]))


def _separate(
    games: GamesShared, number: int, cases: Sequence[Case], prices: Mapping[str, float | None], stock: Counter[str]
) -> tuple[tuple[Message, ...], float | None]:
    """What a set-up for this game only would need beyond what stands there, and what is to be bought for that."""
    alone = games.alone[number]
    if alone is None:
        return (), 0.0
    more = stands_of(alone.placements, cases[number].player) - games.stands
    counts: Counter[str] = Counter()
    for (_, _, device), many in (games.stands + more).items():
        counts[device] += many
    wanted = {device for _, _, device in more}
    buy = {device: max(0, counts[device] - stock[device]) for device in wanted}
    costs = [None if prices[device] is None else (prices[device] or 0.0) * many for device, many in buy.items() if many]
    known = [one for one in costs if one is not None]
    at = tuple(message(Games.device_at, device=Name(device), place=_place(place)) for place, _, device in more)
    return at, sum(known) if len(known) == len(costs) else None


def _place(place: str) -> Text:
    """A site, or a limb that holds a controller."""
    limb = place.removeprefix("unsaid ")
    return message(Games.limb, limb=limb_named(limb)) if limb in LIMBS else Name(place)


def _together(
    cases: Sequence[Case], weights: Sequence[int], games: GamesShared, layouts: Sequence[Layout],
    more: tuple[tuple[Assumption, ...], Mapping[str, float | None], Wiring | None],
) -> GamesTogether:  # fmt: skip
    assumed, prices, at_once = more
    wirings = [one.wiring for one in games.sharings if one is not None and one.wiring is not None]
    wirings += [at_once] if at_once is not None else []
    told = [(one, weight) for one, weight in zip(layouts, weights, strict=True) if one.points is not None]
    points: float | None = None
    alone: float | None = None
    if told:
        points = weighted([one.points or 0.0 for one, _ in told], [weight for _, weight in told])
        points -= extra_points(cases[0], games.sharings, games.stands)
        alone = weighted([one.points_alone or 0.0 for one, _ in told], [weight for _, weight in told])
    headlines = tuple(_loses_much(layout) for layout in layouts if _much(layout))
    findings = []
    if games.outcome != "common":
        swaps = tuple(
            message(Games.swap, game=Name(layout.game), refits=tuple(refit.words for refit in layout.refits))
            for layout in layouts
            if layout.refits
        )
        text = message(Games.not_common, found_none=games.outcome == "none", swaps=swaps)
        findings.append(Finding("query", "games", text))
    return GamesTogether(
        outcome=games.outcome, points=points, points_alone=alone, bound=games.bound, proven=games.proven,  # type: ignore[arg-type]
        sentence=_sentence(games, layouts, points, alone), headlines=headlines, findings=tuple(findings),
        assumptions=assumed, parts=_parts_for_all(wirings, games.stands, prices), wiring=at_once,
    )  # fmt: skip


def _much(one: Layout) -> bool:
    return bool(one.cost and one.points_alone and one.cost > MUCH_SHARE * abs(one.points_alone))


def _loses_much(one: Layout) -> Message:
    """A game that pays much for the others, and what would spare it that."""
    return message(
        Games.loses,
        game=Name(one.game),
        score_points=one.points or 0.0,
        alone_points=one.points_alone or 0.0,
        more=one.separate,
        to_order_price=one.separate_price,
    )


def _sentence(games: GamesShared, layouts: Sequence[Layout], points: float | None, alone: float | None) -> Message:
    if games.outcome != "common" or points is None or alone is None:
        return message(Games.separate, games=len(layouts))
    if alone - points < _NOTABLE:
        return message(Games.common_free, games=len(layouts), score_points=points)
    return message(
        Games.common,
        games=len(layouts),
        score_points=points,
        alone_points=alone,
        bound_points=None if games.proven else games.bound,
    )
