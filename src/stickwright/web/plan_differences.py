"""Two plans beside each other, in rows: who does what, what holds it, what it takes, and which is better by how much."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from stickwright.catalogue import say
from stickwright.codes.commands import Commands
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.plan_differences import ComparedRow, PlanDifferences
from stickwright.codes.problems import Problems
from stickwright.codes.setups import Setups
from stickwright.model.fit import Fit
from stickwright.model.plan import Plan
from stickwright.model.sharing import Placement
from stickwright.report.printed import percent

__all__ = ["DifferenceRow", "Differences", "differences"]


class DifferenceRow(NamedTuple):
    """One thing in both plans; `differs` says whether it is not the same."""

    what: Text
    first: Text
    second: Text
    differs: bool


class Differences(NamedTuple):
    """Sentence, then who does what, then figures of the sticks."""

    sentence: Message
    actions: tuple[DifferenceRow, ...]
    figures: tuple[DifferenceRow, ...]


def differences(first: Plan, second: Plan) -> Differences:
    """What differs between two plans of one visit."""
    alike = first.game == second.game
    actions = tuple(
        _row(name, _done(_placement(first, name)), _done(_placement(second, name)))
        for name in dict.fromkeys(one.action for plan in (first, second) for one in _placements(plan))
        if alike or (_placement(first, name) is not None and _placement(second, name) is not None)
    )
    sites = dict.fromkeys(site.name for plan in (first, second) for site in plan.sites)
    rows: list[DifferenceRow] = []
    none = message(Commands.none)
    for name in sites:
        one, other = _fit(first, name), _fit(second, name)
        rows.append(_row(_of(name, "stick"), say(one.named) if one else none, say(other.named) if other else none))
        if one is not None and other is not None:
            rows += [
                _row(_of(name, "deflection"), percent(one.weakest_share), percent(other.weakest_share)),
                _row(_of(name, "effort"), percent(one.effort_share), percent(other.effort_share)),
                _row(_of(name, "control"), _bits(one), _bits(other)),
                _row(_of(name, "unintended"), _unintended(one), _unintended(other)),
            ]
    rows += [_row(_of(name, "mount"), _held(first, name), _held(second, name)) for name in _mounted(first, second)]
    told = message(Problems.sentences, parts=(*_other_basis(first, second), _sentence(first, second, actions)))
    return Differences(told, actions, tuple(rows))


def _row(what: Text, first: Text, second: Text) -> DifferenceRow:
    return DifferenceRow(what, first, second, first != second)


def _of(site: str, what: ComparedRow) -> Message:
    return message(PlanDifferences.row, site=Name(site), what=what)


def _placements(plan: Plan) -> tuple[Placement, ...]:
    return plan.sharing.placements if plan.sharing is not None else ()


def _placement(plan: Plan, action: str) -> Placement | None:
    return next((one for one in _placements(plan) if one.action == action), None)


def _done(placement: Placement | None) -> Text:
    if placement is None:
        return message(PlanDifferences.not_in_plan)
    if placement.how == "helper" and placement.helper:
        return Name(placement.helper)
    if placement.how in ("option", "dropped", "chord", "helper"):
        return message(PlanDifferences.done_by, how=placement.how)
    device = placement.label or placement.device or ""
    return message(PlanDifferences.site_on, site=Name(placement.site or ""), device=device)


def _fit(plan: Plan, site: str) -> Fit | None:
    return next((one.choice for one in plan.sites if one.name == site), None)


def _bits(fit: Fit) -> Message:
    return message(PlanDifferences.bits, value=fit.bits)


def _unintended(fit: Fit) -> Message:
    return message(Setups.unintended, rate=fit.false_per_min)


def _mounted(first: Plan, second: Plan) -> tuple[str, ...]:
    return tuple(dict.fromkeys(one.site for plan in (first, second) for one in plan.mounts))


def _held(plan: Plan, site: str) -> Message:
    found = next((one for one in plan.mounts if one.site == site), None)
    if found is None:
        return message(PlanDifferences.nothing_said)
    if found.choice is None:
        return message(PlanDifferences.nothing_holds)
    return message(PlanDifferences.mounted, mount=Name(found.choice.mount), on=Name(found.choice.on))


def _sentence(first: Plan, second: Plan, actions: tuple[DifferenceRow, ...]) -> Message:
    if first.game != second.game and not actions:
        return message(PlanDifferences.none_common)
    told = message(PlanDifferences.actions_changed, changed=sum(row.differs for row in actions), of=len(actions))
    if first.sharing is None or second.sharing is None or first.game != second.game:
        return message(PlanDifferences.whole, actions=told)
    gap = first.sharing.points - second.sharing.points
    if abs(gap) < 0.05:
        return message(PlanDifferences.same_score, actions=told)
    return message(PlanDifferences.better, actions=told, first=gap > 0, gap_points=abs(gap))


def _other_basis(first: Plan, second: Plan) -> Iterator[Message]:
    """That the two were made for different games or from different kit, so that the rest is read with care."""
    if first.game != second.game:
        yield message(PlanDifferences.other_games, first=Name(first.game), second=Name(second.game))
    elif changed := _asked_otherwise(first, second):
        yield message(PlanDifferences.asked_otherwise, actions=tuple(map(Name, changed)))
    kits = [{fit.stick for site in plan.sites for fit in site.fits} for plan in (first, second)]
    sites = [{site.name for site in plan.sites} for plan in (first, second)]
    if sites[0] == sites[1] and kits[0] != kits[1]:
        mine, other = (tuple(map(Name, sorted(one - rest))) for one, rest in (kits, reversed(kits)))
        yield message(PlanDifferences.other_sticks, first=mine, second=other)
    used = _parts(first), _parts(second)
    if used[0] != used[1]:
        parts = (tuple(sorted(one - rest)) for one, rest in (used, reversed(used)))
        first_only, second_only = parts
        yield message(PlanDifferences.other_parts, first=first_only, second=second_only)


def _asked_otherwise(first: Plan, second: Plan) -> tuple[str, ...]:
    """Actions of two games of one name that are not asked alike: another importance, or other weights, times or levels."""
    worth = [
        {one.action: term.points for one in _placements(plan) for term in one.terms if term.what == "importance"}
        for plan in (first, second)
    ]
    changed = [name for name, points in worth[0].items() if worth[1].get(name, points) != points]
    asked = [{(site.name, site.demand.action): site.demand for site in plan.sites} for plan in (first, second)]
    changed += [key[1] for key, demand in asked[0].items() if asked[1].get(key, demand) != demand]
    names = [{one.action for one in _placements(plan)} for plan in (first, second)]
    changed += sorted(names[0] ^ names[1]) if all(names) else []
    return tuple(dict.fromkeys(changed))


def _parts(plan: Plan) -> set[str]:
    """Names of all that a plan takes from the kit: devices, toppers, leads, mounts."""
    wired = plan.sharing.wiring.parts if plan.sharing is not None and plan.sharing.wiring is not None else ()
    return {say(one.name) for one in (*wired, *plan.mount_parts)}
