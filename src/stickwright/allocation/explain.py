"""Why so: second best for each choice and what it would cost, other plans that differ in something that matters, why not
elsewhere.

Every figure is a plan of its own: the solver is asked for the best plan with one choice forbidden or demanded, so that
what else would have to change is counted in.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass, replace

from stickwright.allocation import utility
from stickwright.allocation.integer_model import Group, IntegerModel
from stickwright.allocation.places import Refused
from stickwright.allocation.placing import choice_of, placements_of, signature
from stickwright.allocation.problem import Question
from stickwright.allocation.solve import Answer, Solver
from stickwright.codes.choices import Choices, Traded
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.scores import Scores, TermKind
from stickwright.model.sharing import Alternative, Elsewhere, Placement, Term

__all__ = [
    "SolvedLayout", "elsewhere_of", "explained", "place_words", "refusal_words", "shared_terms", "trade_words",
]  # fmt: skip

_HANDED: tuple[TermKind, ...] = ("importance", "helper", "option", "dropped")
_MORE = 100.0
"""Who does an action is told before anything else."""
_NEAR_SHORTFALLS = 2
"""Rules broken up to which a way is near enough to be named as what comes nearest: common practice, no source."""
_MOST_MOVES = 2
_MOST_CHANGES = 3
"""Changes told one by one; the rest is counted."""
_NOTABLE = 0.05
"""Points below which a difference is not worth a word."""


@dataclass(frozen=True)
class SolvedLayout:
    """The solver, the best plan, and what was given up for it.

    Parameters
    ----------
    solver : Solver
    best : Answer
    freed : collection of tuple
    tell : callable, optional
        Told the share done.
    """

    solver: Solver
    best: Answer
    freed: Collection[Group] = ()
    tell: Callable[[float], None] | None = None

    def without(self, forbid: Collection[int]) -> Answer:
        """The best plan that uses none of these columns."""
        return self.solver.best(forbid=forbid, freed=self.freed)

    def extras(self, answer: Answer) -> dict[TermKind, float]:
        """Points of a plan that belong to no single action."""
        out: dict[TermKind, float] = {}
        for term in shared_terms(self.solver.question, self.solver.model, answer):
            out[term.what] = out.get(term.what, 0.0) + term.points
        return out

    def with_one_of(self, columns: Sequence[int]) -> Answer:
        """The best plan that uses one of these columns."""
        return self.solver.best(demand=[columns], freed=self.freed)


def place_words(placement: Placement | None) -> Message:
    """Where and with what an action is done; left out where there is no placement."""
    if placement is None or placement.how == "dropped":
        return message(Choices.left_out)
    if placement.how == "site":
        return message(
            Choices.at_site, site=Name(placement.site or ""), device=placement.named, toggle=placement.toggle
        )
    if placement.how == "option":
        return message(Choices.by_game, option=Name(placement.label))
    if placement.how == "helper":
        return message(Choices.by_helper, helper=Name(placement.helper) if placement.helper else None)
    return message(Choices.together, actions=tuple(Name(one) for one in placement.together))


def trade_words(
    new: Sequence[Placement],
    old: Sequence[Placement],
    new_extra: Mapping[TermKind, float],
    old_extra: Mapping[TermKind, float],
) -> Message:
    """What a plan loses and gains against another, largest first.

    Parameters
    ----------
    new, old : sequence of Placement
    new_extra, old_extra : mapping
        From `Asked.extras`: what does not belong to one action.
    """
    was = {one.action: one.how for one in old}
    now = {one.action: one.how for one in new}
    totals: dict[Traded, float] = {}
    for placements, extra, sign, there in ((new, new_extra, 1.0, was), (old, old_extra, -1.0, now)):
        for placement in placements:
            # how well the player did what they now leave to somebody else is no gain; what it took of them is
            leaves = sign < 0 and placement.how == "site" and there.get(placement.action, "dropped") != "site"
            for term in placement.terms:
                if term.what in ("effort", "part", "setup") or not (leaves or term.what in _HANDED):
                    totals[term.what] = totals.get(term.what, 0.0) + sign * term.points
        for what, points in extra.items():
            totals[what] = totals.get(what, 0.0) + sign * points
    moved = False
    hows: tuple[utility.Left, ...] = ("dropped", "helper", "option")
    for how in hows:
        more = _count(how, now, was) - _count(how, was, now)
        if more:
            moved = True
            totals[how] = -_MORE * more
    if not moved:
        totals["exchanged"] = _handed_points(new) - _handed_points(old)
    ordered = sorted(totals.items(), key=lambda one: one[1])
    worse = tuple(what for what, points in ordered if points < -_NOTABLE)[:3]
    better = tuple(what for what, points in reversed(ordered) if points > _NOTABLE)[:2]
    return message(Choices.trade, worse=worse, better=better)


def _handed_points(placements: Sequence[Placement]) -> float:
    """What the actions are worth, less the player's own prices for those they leave to others."""
    return sum(term.points for one in placements for term in one.terms if term.what in _HANDED)


def _count(how: str, hows: Mapping[str, str], others: Mapping[str, str]) -> int:
    """Actions that one plan leaves so, of all that either plan has; what it does not name is left out."""
    return sum(hows.get(action, "dropped") == how for action in {**hows, **others})


def shared_terms(question: Question, model: IntegerModel, answer: Answer) -> tuple[Term, ...]:
    """What a plan costs besides its placements, each with its name; together with the placements it is the whole score.

    Parameters
    ----------
    question : Question
    model : IntegerModel
        Of that question.
    answer : Answer
        With a plan.
    """
    sites = {site.name: site for site in question.sites}
    out: list[Term] = []
    for name, points, value in zip(model.names, model.points, answer.values, strict=True):
        number = int(value)
        if name[0] == "way" or not number or not points:
            continue
        if name[0] == "used":
            site = sites[str(name[1])]
            out += site.terms or (Term("setup", points, message(Scores.in_use, site=Name(site.name))),)
        else:
            out.append(_once(name, points * number, number, question))
    return tuple(out)


def _once(name: tuple[object, ...], points: float, number: int, question: Question) -> Term:
    """What one column that is no way costs, in words."""
    if name[0] == "unit":
        return Term("part", points, message(Scores.device_more, device=Name(str(name[1]))))
    if name[0] == "split":
        splitter = Name(question.splitters[int(str(name[2]))].name)
        return Term("part", points, message(Scores.splitters, count=number, splitter=splitter))
    if name[0] == "plugged":
        adapter = Name(question.adapters[int(str(name[3]))].name)
        return Term("part", points, message(Scores.adapters, count=number, adapter=adapter))
    if name[0] == "bought":
        return Term("cost", points, message(Scores.ordered, count=number, device=Name(str(name[1]))))
    first, here, second, there = (Name(str(one)) for one in name[1:])
    words = message(Scores.slowed, first=first, first_site=here, second=second, second_site=there)
    return Term("slowed", points, words)


def _loss(points: float) -> float | None:
    """How much lower a plan scores, as far as it is worth saying."""
    return None if points < _NOTABLE else points


def explained(
    asked: SolvedLayout, placements: Sequence[Placement], refused: Sequence[Refused], *, most: int
) -> tuple[tuple[Placement, ...], tuple[Alternative, ...]]:
    """The placements with their reasons, and the next plans that differ in something that matters.

    Parameters
    ----------
    asked : SolvedLayout
    placements : sequence of Placement
        Of the best plan.
    refused : sequence of Refused
    most : int
        How many other plans are wanted.

    Returns
    -------
    placements : tuple of Placement
        Each with why it is there, what comes second and what that would cost.
    alternatives : tuple of Alternative
        Fewest points lost first: the best plans in which one choice of the best plan is undone (an action done
        otherwise, a part left out, a device left out, nothing left to a helper or to the game). The first is the second
        best of all; of those that lose next to nothing only some are told.
    """
    question = asked.solver.question
    chosen = asked.best.chosen(question)
    others: dict[tuple[object, ...], tuple[Answer, tuple[Placement, ...]]] = {}
    out = []
    undone = _choices(question, chosen)
    for number, (action, forbid) in enumerate(undone):
        answer = asked.without(forbid)
        if asked.tell is not None:
            asked.tell((number + 1) / len(undone))
        mine = placements_of(question, asked.solver.model, answer) if answer.possible else ()
        if answer.possible:
            key = signature(question, answer.chosen(question), question.actions)
            others.setdefault(key, (answer, mine))
        if action is not None:
            placement = next(one for one in placements if one.action == action)
            out.append(_with_reasons(placement, placements, answer, mine, asked, refused))
    by_loss = sorted(others.values(), key=lambda one: -one[0].points)
    told = [_alternative(answer, mine, placements, asked) for answer, mine in by_loss]
    return tuple(out), _worth_telling(told)[:most]


def _worth_telling(plans: Sequence[Alternative]) -> tuple[Alternative, ...]:
    """Of plans that are as good, those that give a stick another place and one more: two fingers exchanged twenty times
    would hide what differs."""
    as_good = [plan for plan in plans if plan.loss < _NOTABLE]
    sticks = [one for one in as_good if any(p.fit is not None and p.action in one.changed for p in one.placements)]
    first = [one for one in as_good if one not in sticks][:1]
    return tuple(plan for plan in plans if plan.loss >= _NOTABLE or plan in sticks or plan in first)


def _choices(question: Question, chosen: dict[str, int]) -> list[tuple[str | None, frozenset[int]]]:
    """What can be undone in a plan: for each action its way; then each part, each device, help and options."""
    ways = question.ways
    out: list[tuple[str | None, frozenset[int]]] = []
    for action in question.actions:
        if action in chosen:
            mine = choice_of(ways[chosen[action]])
            same = frozenset(n for n, way in enumerate(ways) if way.action == action and choice_of(way) == mine)
            out.append((action, same))
    taken = [ways[number] for number in chosen.values()]
    sites = dict.fromkeys(way.site for way in taken if way.site)
    devices = dict.fromkeys(way.device for way in taken if way.device)
    more = [frozenset(n for n, way in enumerate(ways) if way.site == site) for site in sites]
    more += [frozenset(n for n, way in enumerate(ways) if way.device == device) for device in devices]
    more += [
        frozenset(n for n, way in enumerate(ways) if way.how == how)
        for how in ("helper", "option", "dropped")
        if any(way.how == how for way in taken)
    ]
    seen = {forbid for _, forbid in out}
    for forbid in more:
        if forbid not in seen:
            seen.add(forbid)
            out.append((None, forbid))
    return out


def _with_reasons(
    placement: Placement,
    best: Sequence[Placement],
    answer: Answer,
    mine: Sequence[Placement],
    asked: SolvedLayout,
    refused: Sequence[Refused],
) -> Placement:
    question = asked.solver.question
    sites = _able_sites(question, placement.action)
    reason: Text = ""
    if placement.how == "site":
        reason = _reason_here(placement, only=sites == [placement.site])
    elif sites:
        price = -next((term.points for term in placement.terms if term.what == placement.how), 0.0)
        reason = message(Choices.cheaper, action=Name(placement.action), cost_points=price)
    else:
        nearest = _nearest(placement.action, refused)
        reason = message(Choices.nobody, nearest=nearest) if nearest is not None else ""
    if not answer.possible:
        nearest = _nearest(placement.action, refused, other_than=placement.site, most=_NEAR_SHORTFALLS)
        return replace(placement, reason=reason, second=message(Choices.no_other, nearest=nearest))
    second, loss = _instead(asked, placement.action, best, answer, mine)
    return replace(placement, reason=reason, second=second, second_cost=loss)


def _reason_here(placement: Placement, *, only: bool) -> Text:
    figures = ("precision", "effort", "unintended", "misses")
    told = tuple(term.words for term in placement.terms if term.what in figures)
    broken = next((term.words for term in placement.terms if term.what == "rule_broken"), None)
    if not (only or told or broken is not None):
        return ""
    return message(Choices.reason, only=only, told=told, broken=broken)


def _instead(
    asked: SolvedLayout, action: str, best: Sequence[Placement], answer: Answer, mine: Sequence[Placement]
) -> tuple[Message, float]:
    """An action done otherwise: what that changes, and how much lower the whole layout scores."""
    loss = max(0.0, asked.best.points - answer.points)
    there = next((one for one in mine if one.action == action), None)
    moved = [one for one in _changed(mine, best) if one != action]
    words = message(
        Choices.instead,
        place=place_words(there),
        then=_moves(moved[:_MOST_MOVES], mine),
        more=max(0, len(moved) - _MOST_MOVES),
        loss_points=_loss(loss),
        trade=trade_words(mine, best, asked.extras(answer), asked.extras(asked.best)),
    )
    return words, loss


def _able_sites(question: Question, action: str) -> list[str]:
    """Parts that can do an action by every rule; those that break one where none can."""
    mine = [way for way in question.ways if way.action == action and way.site is not None]
    keeping = [way for way in mine if not any(term.what == "rule_broken" for term in way.terms)]
    return list(dict.fromkeys(way.site for way in keeping or mine if way.site is not None))


def _nearest(
    action: str, refused: Sequence[Refused], other_than: str | None = None, most: int | None = None
) -> Message | None:
    """Of all that is refused elsewhere, what comes nearest to doing."""
    mine = [
        one
        for one in refused
        if one.action == action and one.site != other_than and (most is None or one.shortfalls <= most)
    ]
    if not mine:
        return None
    return refusal_words(min(mine, key=lambda refusal: refusal.shortfalls))


def refusal_words(one: Refused, *, named: bool = True) -> Message:
    """Why it cannot be, with the device; and with the site where it is not told already.

    Parameters
    ----------
    one : Refused
    named : bool, default True
        Whether the site is named.
    """
    site = Name(one.site) if named and one.site else None
    return message(Choices.refusal, site=site, device=one.named, why=one.why)


def _changed(new: Sequence[Placement], old: Sequence[Placement]) -> list[str]:
    was = {one.action: _choice(one) for one in old}
    now = {one.action: _choice(one) for one in new}
    return [action for action in was | now if was.get(action) != now.get(action)]


def _choice(one: Placement) -> tuple[object, ...]:
    return (one.how, one.site, one.device, one.toggle, one.helper)


def _moves(actions: Sequence[str], placements: Sequence[Placement]) -> tuple[Message, ...]:
    by_action = {placement.action: placement for placement in placements}
    return tuple(
        message(Choices.moves, action=Name(action), place=place_words(by_action[action]))
        if action in by_action
        else message(Choices.moves_out, action=Name(action))
        for action in actions
    )


def _alternative(
    answer: Answer, mine: Sequence[Placement], best: Sequence[Placement], asked: SolvedLayout
) -> Alternative:
    changed = _changed(mine, best)
    now = {one.action: one for one in mine}
    was = {one.action: one for one in best}
    changes = tuple(
        message(Choices.change, action=Name(one), new=place_words(now.get(one)), old=place_words(was.get(one)))
        for one in changed[:_MOST_CHANGES]
    )
    loss = max(0.0, asked.best.points - answer.points)
    words = message(
        Choices.alternative,
        changes=changes,
        more=max(0, len(changed) - _MOST_CHANGES),
        loss_points=_loss(loss),
        trade=trade_words(mine, best, asked.extras(answer), asked.extras(asked.best)),
    )
    return Alternative(tuple(mine), answer.points, loss, tuple(changed), words)


def elsewhere_of(
    asked: SolvedLayout, action: str, sites: Sequence[str], refused: Sequence[Refused], *, priced: bool
) -> tuple[Elsewhere, ...]:
    """Every other place for an action, with what it would cost the whole plan, or why it cannot be.

    Parameters
    ----------
    asked : SolvedLayout
    action : str
    sites : sequence of str
        All sites of the player.
    refused : sequence of Refused
    priced : bool
        Ask the solver what each possible place would cost; otherwise only the impossible ones are told.
    """
    question = asked.solver.question
    chosen = asked.best.chosen(question)
    here = question.ways[chosen[action]] if action in chosen else None
    best = placements_of(question, asked.solver.model, asked.best)
    out = []
    places: list[tuple[str, list[int]]] = [
        (site, [n for n, way in enumerate(question.ways) if way.action == action and way.site == site])
        for site in sites
        if here is None or here.site != site
    ]
    places += [
        (how, [n for n, way in enumerate(question.ways) if way.action == action and way.how == how])
        for how in ("option", "helper", "dropped")
        if here is None or here.how != how
    ]
    for where, ways in places:
        if not ways:
            if where in sites:
                out.append(Elsewhere(where, None, _why_not(action, where, refused)))
            continue
        if not priced:
            continue
        answer = asked.with_one_of(ways)
        if not answer.possible:
            out.append(Elsewhere(where, None, _then_not(asked, action, ways)))
            continue
        mine = placements_of(question, asked.solver.model, answer)
        words, loss = _instead(asked, action, best, answer, mine)
        out.append(Elsewhere(where, loss, words))
    return tuple(sorted(out, key=lambda one: (one.cost is None, one.cost or 0.0)))


def _then_not(asked: SolvedLayout, action: str, ways: Sequence[int]) -> Message:
    """What could not be had with an action done in one of these ways."""
    question = asked.solver.question
    others = {("do", name) for name in question.actions if name != action}
    answer = asked.solver.best(demand=[ways], freed={*asked.freed, *others})
    lost = [name for name in question.actions if name not in answer.chosen(question)] if answer.possible else []
    names = tuple(Name(one) for one in lost[:_MOST_MOVES])
    return message(Choices.then_lost, actions=names, more=max(0, len(lost) - _MOST_MOVES))


def _why_not(action: str, site: str, refused: Sequence[Refused]) -> Message:
    mine = [one for one in refused if one.action == action and one.site == site]
    if not mine:
        return message(Choices.not_used)
    return refusal_words(min(mine, key=lambda refusal: refusal.shortfalls), named=False)
