"""Why so: second best for each choice and what it would cost, other plans that differ in something that matters, why not
elsewhere.

Every figure is a plan of its own: the solver is asked for the best plan with one choice forbidden or demanded, so that
what else would have to change is counted in.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass, replace

from stickwright.allocation.integer_model import Group, IntegerModel
from stickwright.allocation.places import Refused
from stickwright.allocation.placing import choice_of, placements_of, signature
from stickwright.allocation.problem import Question
from stickwright.allocation.solve import Answer, Solver
from stickwright.model.points import counted
from stickwright.model.sharing import Alternative, Elsewhere, Placement, Term
from stickwright.units import figures

__all__ = ["Asked", "elsewhere_of", "explained", "place_words", "shared_terms", "trade_words"]

_WORSE = {
    "precision": "less precise", "effort": "more effort", "misses": "more presses miss", "false presses": "more false input",
    "toggle": "a press to start and one to stop", "set-up": "more setting up",
    "busy": "more presses at an uncounted rate", "suits": "less sure to suit the part", "sound": "louder",
    "helper": "more left to somebody else",
    "option": "more left to the game", "dropped": "more left out",
    "rule broken": "breaks a rule of practice", "ranked": "ranked lower at its site", "part": "more devices",
    "cost": "more to buy", "slowed": "one part slows another",
    "mind": "more that the player minds", "clearance": "a part that needs the treating team's word",
    "held": "harder to hold or to put up", "exchanged": "others do what the player would rather do",
}  # fmt: skip
_BETTER = {
    "precision": "more precise", "effort": "less effort", "misses": "fewer presses miss",
    "false presses": "less false input", "toggle": "no press to start and stop", "set-up": "less setting up",
    "busy": "fewer presses at an uncounted rate", "suits": "surer to suit the part", "sound": "quieter",
    "helper": "less left to somebody else", "option": "less left to the game", "dropped": "less left out",
    "rule broken": "keeps the rules of practice", "ranked": "ranked higher at its site",
    "part": "fewer devices", "cost": "less to buy", "slowed": "no part slows another",
    "mind": "less that the player minds", "clearance": "no part that needs the treating team's word",
    "held": "easier to hold or to put up", "exchanged": "others do what the player minds less",
}  # fmt: skip
_HANDED = ("importance", "helper", "option", "dropped")
_MORE = 100.0
"""Who does an action is told before anything else."""
_NEAR_SHORTFALLS = 2
"""Rules broken up to which a way is near enough to be named as what comes nearest: common practice, no source."""
_NOTABLE = 0.05
"""Points below which a difference is not worth a word."""


@dataclass(frozen=True)
class Asked:
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
        """The best plan that uses none of these columns.

        Parameters
        ----------
        forbid : collection of int
        """
        return self.solver.best(forbid=forbid, freed=self.freed)

    def extras(self, answer: Answer) -> dict[str, float]:
        """Points of a plan that belong to no single action.

        Parameters
        ----------
        answer : Answer
        """
        out: dict[str, float] = {}
        for term in shared_terms(self.solver.question, self.solver.model, answer):
            out[term.what] = out.get(term.what, 0.0) + term.points
        return out

    def with_one_of(self, columns: Sequence[int]) -> Answer:
        """The best plan that uses one of these columns.

        Parameters
        ----------
        columns : sequence of int
        """
        return self.solver.best(demand=[columns], freed=self.freed)


def place_words(placement: Placement) -> str:
    """Where and with what an action is done, in a few words.

    Parameters
    ----------
    placement : Placement
    """
    if placement.how == "site":
        way = ", a press to start and one to stop" if placement.toggle else ""
        return f"{placement.site} on {placement.label}{way}"
    return {
        "option": f"the game itself ({placement.label})",
        "helper": placement.helper or "a helper",
        "dropped": "left out",
        "chord": f"{placement.label} together",
    }[placement.how]


def trade_words(
    new: Sequence[Placement], old: Sequence[Placement], new_extra: Mapping[str, float], old_extra: Mapping[str, float]
) -> str:
    """What a plan loses and gains against another, largest first.

    Parameters
    ----------
    new, old : sequence of Placement
    new_extra, old_extra : mapping
        From `Asked.extras`: what does not belong to one action.
    """
    was = {one.action: one.how for one in old}
    now = {one.action: one.how for one in new}
    totals: dict[str, float] = {}
    for placements, extra, sign, there in ((new, new_extra, 1.0, was), (old, old_extra, -1.0, now)):
        for placement in placements:
            # how well the player did what they now leave to somebody else is no gain; what it took of them is
            leaves = sign < 0 and placement.how == "site" and there.get(placement.action, "dropped") != "site"
            for term in placement.terms:
                if term.what in ("effort", "part", "set-up") or not (leaves or term.what in _HANDED):
                    totals[term.what] = totals.get(term.what, 0.0) + sign * term.points
        for what, points in extra.items():
            totals[what] = totals.get(what, 0.0) + sign * points
    moved = False
    for how in ("dropped", "helper", "option"):
        more = _count(how, now, was) - _count(how, was, now)
        if more:
            moved = True
            totals[how] = -_MORE * more
    if not moved:
        totals["exchanged"] = _handed_points(new) - _handed_points(old)
    ordered = sorted(totals.items(), key=lambda one: one[1])
    worse = [_WORSE[what] for what, points in ordered if points < -_NOTABLE][:3]
    better = [_BETTER[what] for what, points in reversed(ordered) if points > _NOTABLE][:2]
    if worse and better:
        return f"{', '.join(worse)}, but {' and '.join(better)}"
    return ", ".join(worse or better) or "as good by these figures"


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
            out += site.terms or (Term("set-up", points, f"{site.name}: in use"),)
        else:
            out.append(_once(name, points * number, number, question))
    return tuple(out)


def _once(name: tuple[object, ...], points: float, number: int, question: Question) -> Term:
    """What one column that is no way costs, in words."""
    times = f"{number} × " if number > 1 else ""
    if name[0] == "unit":
        return Term("part", points, f"{name[1]}: one device more")
    if name[0] == "split":
        return Term("part", points, f"{times}{question.splitters[int(str(name[2]))].name}, a splitter")
    if name[0] == "plugged":
        return Term("part", points, f"{times}{question.adapters[int(str(name[3]))].name}, an adapter")
    if name[0] == "bought":
        return Term("cost", points, f"{number} × {name[1]} to order")
    _, first, here, second, there = name
    return Term("slowed", points, f"{first} at {here} and {second} at {there} slow each other")


def _cost(points: float) -> str:
    """What a plan loses, as far as it is worth saying."""
    if points < _NOTABLE:
        return "costs next to nothing"
    return f"costs {counted(points)}"


def explained(
    asked: Asked, placements: Sequence[Placement], refused: Sequence[Refused], *, most: int
) -> tuple[tuple[Placement, ...], tuple[Alternative, ...]]:
    """The placements with their reasons, and the next plans that differ in something that matters.

    Parameters
    ----------
    asked : Asked
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
    as_good = [one for one in plans if one.loss < _NOTABLE]
    sticks = [one for one in as_good if any(p.fit is not None and p.action in one.changed for p in one.placements)]
    first = [one for one in as_good if one not in sticks][:1]
    return tuple(one for one in plans if one.loss >= _NOTABLE or one in sticks or one in first)


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
    asked: Asked,
    refused: Sequence[Refused],
) -> Placement:
    question = asked.solver.question
    sites = _able_sites(question, placement.action)
    told = "; ".join(
        term.words for term in placement.terms if term.what in ("precision", "effort", "false presses", "misses")
    )
    if placement.how == "site":
        only = "the only part that can; " if sites == [placement.site] else ""
        reason = f"{only}{told}" if told else only.rstrip("; ")
        broken = next((term.words for term in placement.terms if term.what == "rule broken"), "")
        if broken:
            reason += f"; it breaks a rule of practice: {broken.rstrip('.')}"
    else:
        price = -next((term.points for term in placement.terms if term.what == placement.how), 0.0)
        nearest = "" if sites else _nearest(placement.action, refused)
        reason = f"no part of the player can: {nearest}" if nearest else ""
        if sites:
            reason = f"the price of {placement.action}, {figures(price)} of 10, is less than any part of the player would cost the whole"
    if not answer.possible:
        nearest = _nearest(placement.action, refused, other_than=placement.site, most=_NEAR_SHORTFALLS)
        second = f"There is no other way. What comes nearest fails: {nearest}." if nearest else "There is no other way."
        return replace(placement, reason=reason, second=second)
    loss = max(0.0, asked.best.points - answer.points)
    there = next((one for one in mine if one.action == placement.action), None)
    words = place_words(there) if there is not None else "left out"
    moved = [one for one in _changed(mine, best) if one != placement.action]
    also = f"; then {_moves(moved, mine)}" if moved else ""
    trade = trade_words(mine, best, asked.extras(answer), asked.extras(asked.best))
    second = f"{words}{also}: {_cost(loss)} ({trade})."
    return replace(placement, reason=reason, second=second, second_cost=loss)


def _able_sites(question: Question, action: str) -> list[str]:
    """Parts that can do an action by every rule; those that break one where none can."""
    mine = [way for way in question.ways if way.action == action and way.site is not None]
    keeping = [way for way in mine if not any(term.what == "rule broken" for term in way.terms)]
    return list(dict.fromkeys(way.site for way in keeping or mine if way.site is not None))


def _nearest(action: str, refused: Sequence[Refused], other_than: str | None = None, most: int | None = None) -> str:
    """Of all that is refused elsewhere, what comes nearest to doing."""
    mine = [
        one
        for one in refused
        if one.action == action and one.site != other_than and (most is None or one.shortfalls <= most)
    ]
    if not mine:
        return ""
    one = min(mine, key=lambda refusal: refusal.shortfalls)
    return f"{one.site}{f' on {one.device}' if one.device else ''}: {one.why}"


def _changed(new: Sequence[Placement], old: Sequence[Placement]) -> list[str]:
    was = {one.action: _choice(one) for one in old}
    now = {one.action: _choice(one) for one in new}
    return [action for action in was | now if was.get(action) != now.get(action)]


def _choice(one: Placement) -> tuple[object, ...]:
    return (one.how, one.site, one.device, one.toggle, one.helper)


def _moves(actions: Sequence[str], placements: Sequence[Placement]) -> str:
    by_action = {one.action: one for one in placements}
    parts = [
        f"{action} goes to {place_words(by_action[action])}" if action in by_action else f"{action} is left out"
        for action in actions[:2]
    ]
    more = len(actions) - 2
    return " and ".join(parts) + (f" and {more} more" if more > 0 else "")


def _alternative(answer: Answer, mine: Sequence[Placement], best: Sequence[Placement], asked: Asked) -> Alternative:
    changed = _changed(mine, best)
    now = {one.action: one for one in mine}
    was = {one.action: one for one in best}
    parts = []
    for action in changed[:3]:
        new = place_words(now[action]) if action in now else "left out"
        old = place_words(was[action]) if action in was else "left out"
        parts.append(f"{action}: {new} instead of {old}")
    more = f" and {len(changed) - 3} more" if len(changed) > 3 else ""
    loss = max(0.0, asked.best.points - answer.points)
    trade = trade_words(mine, best, asked.extras(answer), asked.extras(asked.best))
    return Alternative(
        tuple(mine), answer.points, loss, tuple(changed), f"{'; '.join(parts)}{more}: {_cost(loss)} ({trade})."
    )


def elsewhere_of(
    asked: Asked, action: str, sites: Sequence[str], refused: Sequence[Refused], *, priced: bool
) -> tuple[Elsewhere, ...]:
    """Every other place for an action, with what it would cost the whole plan, or why it cannot be.

    Parameters
    ----------
    asked : Asked
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
                out.append(Elsewhere(where, None, f"{_why_not(action, where, refused)}."))
            continue
        if not priced:
            continue
        answer = asked.with_one_of(ways)
        if not answer.possible:
            out.append(Elsewhere(where, None, f"possible by itself, but {_then_not(asked, action, ways)}."))
            continue
        loss = max(0.0, asked.best.points - answer.points)
        mine = placements_of(question, asked.solver.model, answer)
        there = next(one for one in mine if one.action == action)
        moved = [one for one in _changed(mine, best) if one != action]
        also = f"; then {_moves(moved, mine)}" if moved else ""
        trade = trade_words(mine, best, asked.extras(answer), asked.extras(asked.best))
        out.append(Elsewhere(where, loss, f"{place_words(there)}{also}: {_cost(loss)} ({trade})."))
    return tuple(sorted(out, key=lambda one: (one.cost is None, one.cost or 0.0)))


def _then_not(asked: Asked, action: str, ways: Sequence[int]) -> str:
    """What could not be had with an action done in one of these ways."""
    question = asked.solver.question
    others = {("do", name) for name in question.actions if name != action}
    answer = asked.solver.best(demand=[ways], freed={*asked.freed, *others})
    lost = [name for name in question.actions if name not in answer.chosen(question)] if answer.possible else []
    if not lost:
        return "then the other wishes cannot all be met"
    told = " and ".join(lost[:2]) + (f" and {len(lost) - 2} more" if len(lost) > 2 else "")
    return f"then {told} could not be done"


def _why_not(action: str, site: str, refused: Sequence[Refused]) -> str:
    mine = [one for one in refused if one.action == action and one.site == site]
    if not mine:
        return "not used for such an action"
    one = min(mine, key=lambda refusal: refusal.shortfalls)
    return f"{one.device}: {one.why}" if one.device else one.why
