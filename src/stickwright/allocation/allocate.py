"""The whole controller: every action with its place, proven best for the stated wishes, explained and wired."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from stickwright.allocation.concurrency import pairs_of, site_loads
from stickwright.allocation.dominance import pruned
from stickwright.allocation.explain import SolvedLayout, elsewhere_of, explained, shared_terms
from stickwright.allocation.in_hand import held_assumptions
from stickwright.allocation.infeasible_core import clash_of, further_clashes, raised, smallest_clash, ways_out
from stickwright.allocation.integer_model import Group
from stickwright.allocation.places import PossibleWays, Refused, places
from stickwright.allocation.placing import placements_of
from stickwright.allocation.pressed import BUDGET_SHARE, OVER
from stickwright.allocation.pressing import press_assumptions
from stickwright.allocation.prices import decided_by_prices, price_assumptions, unstated_prices
from stickwright.allocation.problem import Question
from stickwright.allocation.questions import question_of, together_pairs
from stickwright.allocation.relaxations import nearest_words
from stickwright.allocation.solve import Answer, Solver
from stickwright.allocation.stands import Stands, only_on, switches_standing
from stickwright.allocation.wiring import wiring_of
from stickwright.codes.choices import Choices
from stickwright.codes.inputs import StickRole
from stickwright.codes.layouts import Layouts
from stickwright.codes.message import Message, Name, Text, message
from stickwright.mechanics.unread import MEASURE
from stickwright.model.case import Case
from stickwright.model.fit import Assumption, Caution, Fit
from stickwright.model.hub import STICK_ROLES
from stickwright.model.points import tenths
from stickwright.model.recorded import Finding
from stickwright.model.sharing import Clash, Pair, Placement, Sharing, SiteLoad
from stickwright.model.wishes import Wishes

__all__ = ["allocate", "asked_of", "best_of"]

COARSE_BITS = 1.0
"""Bits in a direction below which two steps cannot be told apart surely: common practice, no source."""


def allocate(
    case: Case,
    offers: Mapping[tuple[str, str], Sequence[Fit]],
    *,
    wishes: Wishes | None = None,
    usable: Sequence[str] | None = None,
    tiring_share: Mapping[str, float] | None = None,
    why: str | None = None,
    tell: Callable[[float], None] | None = None,
    only: Stands | None = None,
) -> Sharing | None:
    """Share the game's actions out among sites, devices, sockets, game options and helpers.

    Parameters
    ----------
    case : Case
    offers : mapping
        For a site and a stick action, the set-ups of the sticks there, best first.
    wishes : Wishes, optional
    usable : sequence of str, optional
        Sites that may be used; all when not given.
    tiring_share : mapping, optional
        Share of force lost over the visit, by site, where it was measured.
    why : str, optional
        The action for which every other place is priced.
    tell : callable, optional
        Told the share done, 0 to 1.
    only : mapping, optional
        The devices that stand there for all games of the player: no other is used.

    Returns
    -------
    Sharing or None
        None when the game names no action. Where not everything can be had, the plan is that of the cheapest way out.

    Raises
    ------
    BadInput
        A wish names something that is not there.
    """
    if not case.game.action:
        return None
    wishes = wishes or Wishes()
    found, pairs, whole = asked_of(case, offers, wishes, usable, only)
    solver = Solver(pruned(whole))
    solver, best, freed, clash = best_of(solver, found)
    asked = SolvedLayout(solver, best, freed, tell)
    placements = placements_of(solver.question, solver.model, best) if best.possible else ()
    placements, alternatives = (
        explained(asked, placements, _still_there(found.refused, wishes), most=wishes.alternatives)
        if placements
        else ((), ())
    )
    placements = (*placements, *_given_up(case, placements, found, best.possible))
    placements = _introduced(_in_order(case, placements), case.player.most_new_controls)
    sites = [site.name for site in case.player.site]
    elsewhere = tuple(
        (action.name, elsewhere_of(asked, action.name, sites, found.refused, priced=action.name == why))
        for action in case.game.action
        if best.possible
    )
    wiring = wiring_of(placements, case) if best.possible else None
    prices = unstated_prices(case)
    loads = site_loads(placements, case.player, case.game, tiring_share or {})
    return Sharing(
        placements=placements,
        points=best.points,
        bound=best.bound,
        proven=best.proven,
        solved=_solved_words(best, bool(clash)),
        alternatives=alternatives,
        clash=clash,
        pairs=pairs,
        loads=loads,
        elsewhere=elsewhere,
        wiring=wiring,
        sentence=_sentence(placements, clash),
        findings=(*_findings(case, placements, found), *_overfull(loads)),
        assumptions=(*_assumptions(case, placements, found), *_held(case, placements), *price_assumptions(prices)),
        cautions=_cautions(placements),
        shared=shared_terms(solver.question, solver.model, best) if best.possible else (),
        ask_first=decided_by_prices(case, placements, prices, {way.action for way in found.ways if way.how == "site"}),
    )


def _held(case: Case, placements: Sequence[Placement]) -> tuple[Assumption, ...]:
    names = {placement.device for placement in placements if placement.holding}
    held = [one for one in case.kit.controller if one.name in names and one.held in ("one hand", "two hands")]
    return held_assumptions(case.player, held, [stick for one in held for stick in case.kit.on_grip(one.name)])


def _still_there(refused: Sequence[Refused], wishes: Wishes) -> tuple[Refused, ...]:
    """Refusals at sites and on devices that are not themselves done without: only these can come nearest."""
    return tuple(one for one in refused if one.site not in wishes.without and one.device not in wishes.without)


def asked_of(
    case: Case,
    offers: Mapping[tuple[str, str], Sequence[Fit]],
    wishes: Wishes,
    usable: Sequence[str] | None,
    only: Stands | None = None,
) -> tuple[PossibleWays, tuple[Pair, ...], Question]:
    """All that is possible in a game, which sites act at the same time, and the question put to the solver.

    Parameters
    ----------
    case : Case
    offers : mapping
    wishes : Wishes
    usable : sequence of str or None
    only : mapping, optional
        As in `allocate`.
    """
    found = places(case, offers, usable=usable)
    if only is not None:
        found = only_on(found, only, case.player)
    pairs = pairs_of(case.player)
    whole = question_of(case, found, pairs, wishes)
    return found, pairs, whole if only is None else replace(whole, standing=switches_standing(whole.ways, only))


def best_of(solver: Solver, found: PossibleWays) -> tuple[Solver, Answer, frozenset[Group], Clash | None]:
    """The best plan; where none meets every wish, the best one once the cheapest way out is taken, and the clash."""
    answer = solver.best()
    if answer.possible is not False:
        return solver, answer, frozenset(), None
    core = smallest_clash(solver)
    out = ways_out(solver, core)
    further = further_clashes(solver, core, out[0]) if out else ()
    clash = clash_of(solver.question, core, out, found.refused, further)
    if not out:
        return solver, answer, frozenset(), clash
    question, freed, limits = raised(solver.question, out[0].freed)
    if limits:
        solver = Solver(question)
    return solver, solver.best(freed=freed), freed, clash


def _given_up(
    case: Case, placements: Sequence[Placement], found: PossibleWays, possible: bool | None
) -> list[Placement]:
    """Actions that the way out leaves out; none where no plan was found."""
    can = {way.action for way in found.ways}
    done = {placement.action for placement in placements}
    return [
        Placement(
            action=action.name,
            how="dropped",
            reason=(
                message(Choices.not_with_rest)
                if action.name in can
                else message(Choices.nobody_with_kit, nearest=nearest_words(action.name, found.refused))
            ),
            words=action.drop_words,
        )
        for action in case.game.action
        if action.name not in done and possible
    ]


def _in_order(case: Case, placements: Sequence[Placement]) -> tuple[Placement, ...]:
    order = {action.name: number for number, action in enumerate(case.game.action)}
    words = {
        action.name: {"option": action.option_words, "helper": action.helper_words, "dropped": action.drop_words}
        for action in case.game.action
    }
    told = [
        replace(placement, words=words[placement.action].get(placement.how, "") or placement.words)
        for placement in placements
    ]
    return tuple(sorted(told, key=lambda one: order[one.action]))


def _introduced(placements: Sequence[Placement], most: int) -> tuple[Placement, ...]:
    """New controls a few at a time, what the player wants most first: more at once are not found by feel."""
    worth = {
        placement.action: sum(t.points for t in placement.terms if t.what == "importance") for placement in placements
    }
    order = sorted(
        (placement for placement in placements if placement.how == "site"),
        key=lambda one: (-worth[one.action], placements.index(one)),
    )
    when: dict[str, str] = {}
    for place, one in enumerate(order):  # each switch, stick and button does one action
        when[one.action] = "day 1" if place < most else "week 2" if place < 2 * most else "later"
    return tuple(replace(placement, introduce=when.get(placement.action, "")) for placement in placements)  # type: ignore[arg-type]


def _solved_words(best: Answer, clashed: bool) -> Message:
    if best.possible is None:
        return message(Layouts.not_found)
    if best.possible is False:
        return message(Layouts.impossible)
    if best.proven:
        return message(Layouts.proven, score_points=best.points, clashed=clashed)
    gap = (tenths(best.bound) - tenths(best.points)) / 10
    return message(Layouts.unproven, score_points=best.points, bound_points=best.bound, gap_points=gap)


def _sentence(placements: Sequence[Placement], clash: Clash | None) -> Message:
    hows = Counter(placement.how for placement in placements)
    return message(
        Layouts.done_by,
        actions=len(placements),
        player=hows["site"] + hows["chord"],
        game=hows["option"],
        others=hows["helper"],
        left_out=hows["dropped"],
        clashed=clash is not None,
    )


def _findings(case: Case, placements: Sequence[Placement], found: PossibleWays) -> tuple[Finding, ...]:
    out = []
    possible = {way.action for way in found.ways}
    for number, action in enumerate(case.game.action, start=1):
        if action.name in possible:
            continue
        nearest = nearest_words(action.name, found.refused)
        text = message(Layouts.nobody_can, number=number, action=Name(action.name), nearest=nearest)
        out.append(Finding("fault", "nobody", text))
    roles: dict[StickRole, list[Name]] = {}
    for one in placements:
        role = next((stick for stick in STICK_ROLES if stick == one.role), None)
        if one.how == "site" and role is not None:
            roles.setdefault(role, []).append(Name(one.action))
    out += [
        Finding("fault", "same_stick", message(Layouts.same_stick, actions=tuple(names), role=role))
        for role, names in roles.items()
        if len(names) > 1
    ]
    out += [
        Finding(
            "query", "coarse",
            message(
                Layouts.coarse, action=Name(placement.action), site=Name(placement.site or ""), setup=placement.fit.named,
                precision_bits=placement.fit.bits.number,
            ),
        )
        for placement in placements
        if placement.fit is not None and placement.fit.bits.number < COARSE_BITS
    ]  # fmt: skip
    return (*out, *_to_try_at_once(case, placements), *_press_notes(placements), *_sound_notes(case, placements))


def _to_try_at_once(case: Case, placements: Sequence[Placement]) -> list[Finding]:
    """Actions that must be possible at the same time, at parts of which only a usual figure says how they slow each other."""
    placed = {placement.action: placement for placement in placements}
    pairs = {frozenset(pair.sites): pair for pair in pairs_of(case.player) if pair.says == "slows" and pair.assumed}
    out = []
    for first, second, chord in together_pairs(case.game.action):
        one, other = placed.get(first), placed.get(second)
        if one is None or other is None or one.toggle or other.toggle or (chord and placed[chord].how != "chord"):
            continue
        pair = pairs.get(frozenset((one.site or "", other.site or "")))
        if pair is not None and pair.assumed:
            text = message(
                Layouts.try_together, first=Name(first), second=Name(second), first_site=Name(one.site or ""),
                second_site=Name(other.site or ""), why=pair.assumed,
            )  # fmt: skip
            out.append(Finding("query", "together", text))
    return out


def _overfull(loads: Sequence[SiteLoad]) -> list[Finding]:
    """Parts whose presses would fill too much of the busy minute at a rate that nobody counted."""
    return [
        Finding(
            "query", "busy",
            message(
                Layouts.busy_site, site=Name(one.site), confirm=MEASURE["press rate"], busy_share=one.busy_share,
                most_share=BUDGET_SHARE,
            ),
        )
        for one in loads
        if one.busy_share > BUDGET_SHARE * OVER
    ]  # fmt: skip


def _sound_notes(case: Case, placements: Sequence[Placement]) -> list[Finding]:
    """Switches that click; where quiet is wanted the points have told it of those chosen all the same."""
    used = {placement.device for placement in placements if placement.how == "site" and placement.kind == "switch"}
    loud = tuple(Name(one.name) for one in case.kit.switch if one.name in used and one.sound == "click")
    if not loud:
        return []
    if case.player.quiet:
        return [Finding("query", "sound", message(Layouts.clicks_unwanted, switches=loud))]
    return [Finding("note", "sound", message(Layouts.clicks, switches=loud))]


def _press_notes(placements: Sequence[Placement]) -> list[Finding]:
    """What was not tried at each part that presses, each thing once."""
    notes: dict[str, dict[Text, None]] = {}
    for placement in placements:
        if placement.press is not None and placement.site is not None:
            notes.setdefault(placement.site, {}).update(dict.fromkeys(placement.press.notes))
    return [
        Finding("note", "press", message(Layouts.press_notes, site=Name(site), notes=tuple(told)))
        for site, told in notes.items()
        if told
    ]


def _assumptions(case: Case, placements: Sequence[Placement], found: PossibleWays) -> tuple[Assumption, ...]:
    out = list(found.assumptions)
    pressed: dict[str, int] = {}
    for one in placements:
        if one.press is not None and one.site is not None:
            pressed[one.site] = pressed.get(one.site, 0) + 1
    for site in case.player.site:
        if site.name in pressed:
            out += press_assumptions(site, moves=pressed[site.name] > 1)
    used = {placement.site for placement in placements if placement.site is not None}
    out += [
        Assumption(
            message(Layouts.at_once, sites=tuple(map(Name, pair.sites))),
            message(Layouts.pair_says, says=pair.says),
            pair.assumed,
            message(Layouts.pair_confirm),
        )
        for pair in pairs_of(case.player)
        if pair.assumed is not None and set(pair.sites) <= used
    ]
    return tuple(dict.fromkeys(out))


def _cautions(placements: Sequence[Placement]) -> tuple[Caution, ...]:
    out = []
    if any(placement.socket for placement in placements):
        out.append(Caution("cable", None, message(Layouts.cables)))
    if any(placement.how == "helper" or placement.connection == "paired" for placement in placements):
        out.append(Caution("sharing", None, message(Layouts.two_controllers)))
    for one in placements:
        name = Name(one.action)
        if one.toggle:
            out.append(Caution("press", one.site, message(Layouts.stays_on, action=name)))
        if one.press is not None and one.press.presses_per_min > 30:
            text = message(Layouts.many_presses, action=name, count_per_min=one.press.presses_per_min)
            out.append(Caution("press", one.site, text))
    return tuple(dict.fromkeys(out))
