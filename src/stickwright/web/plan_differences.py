"""Two plans beside each other, in rows: who does what, what holds it, what it takes, and which is better by how much."""

from __future__ import annotations

from typing import NamedTuple

from stickwright.catalogue import say
from stickwright.codes.message import message
from stickwright.codes.setups import Setups
from stickwright.model.plan import Fit, Plan
from stickwright.model.sharing import Placement
from stickwright.sheet.printed import percent
from stickwright.units import figures

__all__ = ["DifferenceRow", "Differences", "differences"]


class DifferenceRow(NamedTuple):
    """One thing in both plans; `differs` says whether it is not the same."""

    what: str
    first: str
    second: str
    differs: bool


class Differences(NamedTuple):
    """Sentence, then who does what, then figures of the sticks."""

    sentence: str
    actions: tuple[DifferenceRow, ...]
    figures: tuple[DifferenceRow, ...]


def differences(first: Plan, second: Plan) -> Differences:
    """What differs between two plans of one visit.

    Parameters
    ----------
    first, second : Plan
    """
    alike = first.game == second.game
    actions = tuple(
        _row(name, _done(_placement(first, name)), _done(_placement(second, name)))
        for name in dict.fromkeys(one.action for plan in (first, second) for one in _placements(plan))
        if alike or (_placement(first, name) is not None and _placement(second, name) is not None)
    )
    sites = dict.fromkeys(site.name for plan in (first, second) for site in plan.sites)
    rows: list[DifferenceRow] = []
    for name in sites:
        one, other = _fit(first, name), _fit(second, name)
        rows.append(_row(f"{name}: stick", one.label if one else "none", other.label if other else "none"))
        if one is not None and other is not None:
            rows += [
                _row(f"{name}: predicted reach in the weakest direction", percent(one.weakest_share), percent(other.weakest_share)),
                _row(f"{name}: predicted effort", percent(one.effort_share), percent(other.effort_share)),
                _row(f"{name}: predicted control", _bits(one), _bits(other)),
                _row(f"{name}: predicted unintended activations", _false(one), _false(other)),
            ]  # fmt: skip
    rows += [_row(f"{name}: held by", _held(first, name), _held(second, name)) for name in _mounted(first, second)]
    told = " ".join(part for part in (_other_basis(first, second), _sentence(first, second, actions)) if part)
    return Differences(told, actions, tuple(rows))


def _row(what: str, first: str, second: str) -> DifferenceRow:
    return DifferenceRow(what, first, second, first != second)


def _placements(plan: Plan) -> tuple[Placement, ...]:
    return plan.sharing.placements if plan.sharing is not None else ()


def _placement(plan: Plan, action: str) -> Placement | None:
    return next((one for one in _placements(plan) if one.action == action), None)


def _done(placement: Placement | None) -> str:
    if placement is None:
        return "not in this plan"
    where = {"option": "the game itself", "dropped": "left out", "chord": "made of others"}.get(placement.how)
    if placement.how == "helper":
        where = placement.helper or "a helper"
    if where is None:
        where = f"{placement.site} on {say(placement.named)}"
    return where


def _fit(plan: Plan, site: str) -> Fit | None:
    return next((one.choice for one in plan.sites if one.name == site), None)


def _bits(fit: Fit) -> str:
    bits = fit.bits
    interval = f" ({figures(bits.lower, 2)} to {figures(bits.upper, 2)})" if bits.has_interval else ""
    return f"{figures(bits.number, 2)}{interval} bit"


def _false(fit: Fit) -> str:
    return say(message(Setups.unintended, rate=fit.false_per_min))


def _mounted(first: Plan, second: Plan) -> tuple[str, ...]:
    return tuple(dict.fromkeys(one.site for plan in (first, second) for one in plan.mounts))


def _held(plan: Plan, site: str) -> str:
    found = next((one for one in plan.mounts if one.site == site), None)
    if found is None:
        return "nothing said"
    return f"{found.choice.mount} on {found.choice.on}" if found.choice is not None else "nothing holds it"


def _sentence(first: Plan, second: Plan, actions: tuple[DifferenceRow, ...]) -> str:
    if first.game != second.game and not actions:
        return "They have no action in common."
    changed = [row.what for row in actions if row.differs]
    told = (
        f"{len(changed)} of {len(actions)} actions are done otherwise"
        if changed
        else "Every action is done the same way"
    )
    if first.sharing is None or second.sharing is None or first.game != second.game:
        return f"{told}."
    gap = first.sharing.points - second.sharing.points
    if abs(gap) < 0.05:
        return f"{told}; both are worth the same to the player."
    better = "first" if gap > 0 else "second"
    return f"{told}; the {better} is worth {figures(abs(gap), 2)} points more on the player's own scale."


def _other_basis(first: Plan, second: Plan) -> str:
    """That the two were made for different games or from different kit, so that the rest is read with care."""
    out = []
    if first.game != second.game:
        out.append(
            f"Made for different games ({first.game}; {second.game}): only actions that both have are compared, and scores are not."
        )
    elif changed := _asked_otherwise(first, second):
        out.append(
            f"The game has the same name but asks otherwise for {', '.join(changed)}: scores are read with that in mind."
        )
    kits = [{fit.stick for site in plan.sites for fit in site.fits} for plan in (first, second)]
    sites = [{site.name for site in plan.sites} for plan in (first, second)]
    if sites[0] == sites[1] and kits[0] != kits[1]:
        parts = [
            f"{', '.join(sorted(mine - other))} only in the {which}"
            for mine, other, which in ((kits[0], kits[1], "first"), (kits[1], kits[0], "second"))
            if mine - other
        ]
        out.append(f"Made from different sticks: {'; '.join(parts)}.")
    used = _parts(first), _parts(second)
    told = [
        f"only in the {which} {', '.join(sorted(mine - other))}"
        for mine, other, which in ((used[0], used[1], "first"), (used[1], used[0], "second"))
        if mine - other
    ]
    if told:
        out.append(f"Parts used {'; '.join(told)}.")
    return " ".join(out)


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
