"""The main job: a case in, a plan out.

`plan` is the one place that calls all the rest. It reads no file, prints nothing, and draws only
from a seeded generator: the same case gives the same plan.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import partial

import numpy as np
from numpy.typing import NDArray

from stickwright import __version__
from stickwright.allocation.places import STICK_KINDS
from stickwright.allocation.pressing import can_press
from stickwright.allocation.share import share_out
from stickwright.asking import SiteWork, next_reading
from stickwright.cautions import cautions_of
from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.listening import agreements, recorded_steadiness, trace_of, tunings_of, without_what_others_tell
from stickwright.mechanics.ability import Ability, ability
from stickwright.mechanics.capability import EIGHT
from stickwright.mechanics.demand import demand_assumptions, demand_of, needed_directions
from stickwright.mechanics.explain import Situation, base_fits, best_extensions, helping_change
from stickwright.mechanics.fit import DEAD_ZONES, Evaluated, Rules, SiteInputs, evaluate
from stickwright.mechanics.setups import Setups, at_contact, bench_log_sd, setups_of
from stickwright.mechanics.stand_ins import USUAL_COMFORTABLE_OF_MAXIMAL
from stickwright.mechanics.verdict import fits_of, ranked
from stickwright.model.case import Case
from stickwright.model.game import Game
from stickwright.model.kit import Kit, Stick
from stickwright.model.plan import Demand, Fit, Plan, SitePlan
from stickwright.model.player import Player, Site, StickReach
from stickwright.model.recorded import Finding, TraceReport
from stickwright.model.recording import Recording
from stickwright.model.sharing import Placement, Sharing
from stickwright.model.wishes import Wishes
from stickwright.wording import kit_assumptions, rule_assumptions, site_findings, site_sentence, tired

__all__ = ["DRAWS", "SEED", "plan"]

Array = NDArray[np.float64]
DRAWS = 500
MOST_DRAWS = 20_000
SEED = 20260101
HELPED = 8
"""Sticks for which a helping change is looked for; further down nobody reads."""
CANNOT = 20.0
"""Shortfall of what no tuning mends (a finger that cannot lift, a base too large, a stick that stays where it is
pushed): more than any other can reach."""


def plan(
    case: Case,
    *,
    draws: int = DRAWS,
    seed: int = SEED,
    rules: Rules | None = None,
    wishes: Wishes | None = None,
    why: str | None = None,
    progress: Callable[[str, float], None] | None = None,
) -> Plan:
    """Choose, share out, explain, wire and tune: the whole answer to a case.

    Parameters
    ----------
    case : Case
        Player, kit, game, hubs and recordings.
    draws : int, default 500
        Draws of the readings behind every interval and chance.
    seed : int
        Of the generator.
    rules : Rules, optional
        Limits of practice.
    wishes : Wishes, optional
        What-if: what is not to be used, what is to stay, how much may be spent.
    why : str, optional
        The action for which every other place is priced.
    progress : callable, optional
        Told what is being done and the share done, 0 to 1.

    Returns
    -------
    Plan

    Raises
    ------
    BadInput
        A name does not resolve, weights are all 0, or a reading cannot be used; all problems at once.
    """
    if not 2 <= draws <= MOST_DRAWS:
        raise BadInput(Problem("draws", str(draws), f"2 to {MOST_DRAWS:,}, 500 for a sheet"))
    rules, wishes = rules or Rules(), wishes or Wishes()
    tell = progress or (lambda _what, _share: None)
    findings: list[Finding] = []
    known: list[_Known] = []
    sites = [site for site in case.player.site if _usable(site, findings)]
    case = replace(case, kit=_with_controllers(case.kit))
    problems = [problem for site in sites for problem in _refusals(case, site)]
    if why is not None and why not in {action.name for action in case.game.action}:
        known_names = [action.name for action in case.game.action]
        problems.append(Problem("action", f'"{why}"', "an action of game.toml", did_you_mean(why, known_names)))
    if problems:
        raise BadInput(dict.fromkeys(problems))
    for number, site in enumerate(sites):
        tell(site.name, 0.6 * number / len(sites))
        rng = np.random.default_rng([seed, number])
        try:
            one = _site_known(case, site, rng, draws, findings)
        except BadInput as refused:
            problems.extend(refused.problems)
            continue
        if one is not None:
            known.append(one)
    if problems:
        raise BadInput(problems)
    tell("sharing out the actions", 0.6)
    sharing = _shared(
        case, sites, known, rules, wishes, why, lambda share: tell("sharing out the actions", 0.6 + 0.25 * share)
    )
    works = [_finished(case, one, _action_at(one.site, sharing), rules, wishes, sharing) for one in known]
    tell("next reading", 0.95)
    works.sort(key=lambda work: (not _placed(work.site.name, sharing), *_site_order(work, case.game)))
    following = next_reading(
        works,
        [site.name for site in sites if site.name not in {work.site.name for work in works} and not can_press(site)],
        np.random.default_rng([seed, 999]),
        rules,
    )
    tell("done", 1.0)
    return Plan(
        version=__version__,
        case=case.name,
        made_on=case.made_on,
        player=case.player.code,
        game=case.game.name,
        visit=case.player.visit,
        sites=tuple(work.plan for work in works),
        sentence=_plan_sentence(works, sharing),
        next_reading=following,
        cautions=cautions_of(case.player, _chosen(sites, works, sharing)),
        assumptions=tuple(dict.fromkeys([*rule_assumptions(rules), *(a for work in works for a in work.assumptions)])),
        findings=tuple(findings),
        seed=seed,
        draws=draws,
        sharing=sharing,
    )


def _usable(site: Site, findings: list[Finding]) -> bool:
    if site.cleared == "no":
        findings.append(Finding("note", "not cleared", f"{site.name}: left out, the treating team has said no."))
        return False
    return True


def _refusals(case: Case, site: Site) -> list[Problem]:
    """Names that do not resolve and weights that ask for nothing: all of them, before anything is worked out."""
    tried: list[tuple[str, StickReach | Recording]]
    tried = [(f'player.toml, site "{site.name}", on_stick', entry) for entry in site.on_stick]
    tried += [(recording.name, recording) for recording in case.recordings if recording.site == site.name]
    checks: list[tuple[str, Callable[[], object]]] = [
        (where, partial(at_contact, case.kit, one.stick, one.topper, one.extension))
        for where, one in tried
        if one.stick is not None
    ]
    checks.append(("", partial(demand_of, case.game, site.action, EIGHT, site.name)))
    checks.append(
        (
            "",
            partial(
                setups_of, case.kit, toppers=site.toppers, tilts=_tilts(case.kit, site), site=site.name, part=site.part
            ),
        )
    )
    out: list[Problem] = []
    for where, check in checks:
        try:
            check()
        except BadInput as refused:
            out += refused.inside(where).problems
    return out


def _tilts(kit: Kit, site: Site) -> Sequence[int]:
    """Tilts to try, as places in the kit: all when the slope of the movement is known, else the most level one."""
    if site.movement_tilt_rad is not None:
        return range(len(kit.tilt_rad))
    return sorted(range(len(kit.tilt_rad)), key=lambda place: abs(kit.tilt_rad[place]))[:1]


@dataclass(frozen=True, eq=False)
class _Known:
    """What one site's readings and recordings tell, before any action is asked of it."""

    site: Site
    ability: Ability
    rng: np.random.Generator
    recordings: Sequence[Recording]
    reports: tuple[TraceReport, ...]
    heard: tuple[Finding, ...]
    stick_scale: Array


@dataclass(frozen=True, eq=False)
class _Judged:
    """All set-ups at a site, judged for one action."""

    demand: Demand
    setups: Setups
    inputs: SiteInputs
    found: Evaluated
    needed: NDArray[np.bool_]


def _with_controllers(kit: Kit) -> Kit:
    """The kit with the sticks of its two-handed controllers among the sticks, under the controller's own name."""
    sticks = [
        Stick(
            name=one.name, contact_height_m=one.contact_height_m, start_force_n=one.start_force_n,
            full_force_n=one.full_force_n, travel_m=one.travel_m, base_m=one.base_m, mass_kg=one.mass_kg, plug=one.plug,
            current_a=one.current_a, in_stock=one.in_stock, price=one.price, cable_m=one.cable_m, note=one.note,
            takes_toppers=False,
        )
        for one in kit.controller
        if one.start_force_n is not None and one.full_force_n is not None and one.travel_m is not None
        and one.contact_height_m is not None and one.sticks
    ]  # fmt: skip
    return kit.model_copy(update={"stick": (*kit.stick, *sticks)})


def _site_known(case: Case, site: Site, rng: np.random.Generator, draws: int, findings: list[Finding]) -> _Known | None:
    mine = [recording for recording in case.recordings if recording.site == site.name]
    reports = tuple(trace_of(recording, rng) for recording in mine)
    tried = {
        place: at_contact(case.kit, entry.stick, entry.topper, entry.extension)
        for place, entry in enumerate(site.on_stick)
    }
    lightest = min((s for s in case.kit.stick if s.kind == "lever"), key=lambda s: s.full_force_n, default=None)
    steadiness, heard = recorded_steadiness(case.kit, site, mine, reports)
    known = ability(
        site, rng, draws, tried=tried, recorded=steadiness, lightest_stick=lightest.name if lightest else None
    )
    if known is None:
        if not can_press(site) and not site.reaches:
            findings.append(
                Finding(
                    "fault",
                    "no force",
                    f"{site.name}: no force was read, and no stick tried in a named direction, so no stick can be chosen. "
                    "Take the force in four directions, or try two sticks and note how far the player gets, and which way.",
                )
            )
        return None
    return _Known(site, known, rng, mine, reports, tuple(heard), _stick_scale(case.kit, rng, draws))


def _judged(case: Case, one: _Known, action: str | None, rules: Rules) -> _Judged:
    site, known = one.site, one.ability
    demand = demand_of(case.game, action, known.direction_rad, site.name)
    weights = np.asarray(demand.direction_weights)
    needed = needed_directions(weights, known.direction_rad)
    setups = setups_of(
        case.kit,
        toppers=site.toppers,
        part=site.part,
        tilts=_tilts(case.kit, site),
        site=site.name,
    )
    inputs = replace(_inputs(site, setups, known, demand, weights, needed), stick_scale=one.stick_scale)
    return _Judged(demand, setups, inputs, evaluate(setups, inputs, rules), needed)


def _offer(one: _Known, judged: _Judged, rules: Rules) -> tuple[Fit, ...]:
    """The best set-up of each stick for one action, best first."""
    order = ranked(judged.setups, judged.found, one.site.liked, rules)
    return fits_of(
        order.best, judged.setups, judged.found, judged.inputs, one.ability.direction_rad, judged.demand, one.site, rules,
        _situation(one.site, one.ability, judged.demand), [""] * len(order.best),
    )  # fmt: skip


def _shared(
    case: Case,
    sites: Sequence[Site],
    known: Sequence[_Known],
    rules: Rules,
    wishes: Wishes,
    why: str | None,
    tell: Callable[[float], None],
) -> Sharing | None:
    actions = [action.name for action in case.game.action if action.kind in STICK_KINDS]
    offers = {
        (one.site.name, action): _offer(one, _judged(case, one, action, rules), rules)
        for one in known
        for action in actions
        if one.site.action in (None, action)
    }
    tiring = {
        one.site.name: one.ability.report.tiring_share.value
        for one in known
        if one.ability.report.tiring_share is not None
    }
    pressing = replace(case, player=_as_recorded(case.player, known))
    return share_out(
        pressing, offers, wishes=wishes, usable=[site.name for site in sites], tiring_share=tiring, why=why, tell=tell
    )


def _as_recorded(player: Player, known: Sequence[_Known]) -> Player:
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


def _placement_at(site: str, sharing: Sharing | None) -> Placement | None:
    """The stick action that a site does in the whole plan."""
    if sharing is None:
        return None
    return next((one for one in sharing.placements if one.site == site and one.fit is not None), None)


def _placed(site: str, sharing: Sharing | None) -> bool:
    return sharing is None or _placement_at(site, sharing) is not None


def _action_at(site: Site, sharing: Sharing | None) -> str | None:
    placement = _placement_at(site.name, sharing)
    return site.action if placement is None else placement.action


def _finished(
    case: Case, one: _Known, action: str | None, rules: Rules, wishes: Wishes, sharing: Sharing | None
) -> SiteWork:
    """The site's own page, for the action that it does in the whole plan."""
    site, known = one.site, one.ability
    kept = tuple(stick for stick in case.kit.stick if stick.name not in wishes.without)
    if 0 < len(kept) < len(case.kit.stick):
        scale = one.stick_scale[[stick.name not in wishes.without for stick in case.kit.stick]]
        case, one = replace(case, kit=case.kit.model_copy(update={"stick": kept})), replace(one, stick_scale=scale)
    judged = _judged(case, one, action, rules)
    site_plan = _site_plan(
        case, site, known, judged.demand, judged.setups, judged.inputs, judged.found, rules, one.reports, one.recordings,
        one.rng,
    )  # fmt: skip
    placement = _placement_at(site.name, sharing)
    if placement is not None and placement.fit is not None and placement.fit.verdict != "does not fit":
        site_plan = _as_shared(site_plan, placement.fit)
    site_plan = replace(site_plan, findings=(*one.heard, *site_plan.findings))
    extra = (*demand_assumptions(case.game, judged.demand, site.name), *kit_assumptions(site_plan, site, case.kit))
    return SiteWork(site, site_plan, known, judged.found.stick_utility, judged.needed, (*known.assumptions, *extra))


def _as_shared(site_plan: SitePlan, fit: Fit) -> SitePlan:
    """The page of a site whose stick the whole plan decides."""
    if site_plan.choice is not None and site_plan.choice.stick == fit.stick:
        return site_plan
    first = site_plan.choice.stick if site_plan.choice is not None else "none"
    mine = next((one for one in site_plan.fits if one.stick == fit.stick), fit)
    note = Finding(
        "note", "whole plan",
        f"{site_plan.name}: {mine.label} is used, though {first} ranks first here by itself: the whole controller comes out "
        "better so.",
    )  # fmt: skip
    return replace(
        site_plan,
        choice=mine,
        sentence=f"{site_plan.name}: {mine.label}, for the whole controller. {site_plan.sentence}",
        findings=(note, *site_plan.findings),
    )


def _chosen(sites: Sequence[Site], works: Sequence[SiteWork], sharing: Sharing | None) -> list[tuple[Site, Fit | None]]:
    """Every site that is used, with its stick where it has one."""
    out = [(work.site, work.plan.choice or (work.plan.fits[0] if work.plan.fits else None)) for work in works]
    told = {site.name for site, _ in out}
    pressing = {one.site for one in sharing.placements} if sharing is not None else set()
    return out + [(site, None) for site in sites if site.name in pressing and site.name not in told]


def _stick_scale(kit: Kit, rng: np.random.Generator, draws: int) -> Array:
    """Factor on each stick's forces in each draw, by what its bench leaves open; 1 in the first."""
    sds = np.array([bench_log_sd(stick) for stick in kit.stick])
    scale: Array = np.exp(sds[:, None] * rng.standard_normal((len(sds), draws)))
    scale[:, 0] = 1.0
    return scale


def _inputs(
    site: Site, setups: Setups, known: Ability, demand: Demand, weights: Array, needed: NDArray[np.bool_]
) -> SiteInputs:
    plane = np.ones((len(setups.slopes_rad), len(weights)))
    if site.movement_tilt_rad is not None:
        off = np.cos(setups.slopes_rad - site.movement_tilt_rad)[:, None]
        plane = np.hypot(np.cos(known.direction_rad)[None, :], np.sin(known.direction_rad)[None, :] * off)
    static = np.zeros(len(setups))
    static += np.where(setups.touch & (site.can_lift is not True), CANNOT, 0.0)
    static += np.where(setups.home_share > DEAD_ZONES[-1], CANNOT, 0.0)
    if site.room_m is not None:
        fits = [stick.base_m is None or base_fits(stick.base_m, site.room_m) for stick in setups.kit.stick]
        static += np.where(np.asarray(fits)[setups.stick], 0.0, CANNOT)
    spasm = site.spasm
    return SiteInputs(
        force_n=known.force_n, reach_m=known.reach_m, weight=weights, needed=needed, plane=plane,
        level_share=demand.usual_level_share, rest_n=known.rest_force_n, involuntary_n=known.involuntary_n,
        crossing_hz=known.crossing_hz, limb_n_per_m=known.limb_stiffness_n_per_m, noise_share=known.force_noise_share,
        fall_off=known.fall_off, spasm_per_min=60 * spasm.rate_per_s if spasm else 0.0,
        spasm_peak_n=spasm.peak_n if spasm else (), false_limit_per_min=demand.false_input_limit_per_min, static=static,
    )  # fmt: skip


def _site_plan(
    case: Case,
    site: Site,
    known: Ability,
    demand: Demand,
    setups: Setups,
    inputs: SiteInputs,
    found: Evaluated,
    rules: Rules,
    reports: tuple[TraceReport, ...],
    recordings: Sequence[Recording],
    rng: np.random.Generator,
) -> SitePlan:
    order = ranked(setups, found, site.liked, rules)
    situation = _situation(site, known, demand)
    places = (*order.best, *order.others)
    helps = [
        helping_change(place, setups, found, inputs, known.direction_rad, rules, situation) if row < HELPED else ""
        for row, place in enumerate(places)
    ]
    fits = fits_of(places, setups, found, inputs, known.direction_rad, demand, site, rules, situation, helps)
    best, others = fits[: len(order.best)], fits[len(order.best) :]
    choice = best[0] if best[0].verdict != "does not fit" else None
    notes = [
        *agreements(known, setups, found, recordings, reports),
        *site_findings(site, demand, best),
        *tired(setups, inputs, order.best[0], known, rules),
    ]
    return SitePlan(
        name=site.name,
        part=site.part,
        support=site.support or (site.rest[-1].support if site.rest else ""),
        capability=known.report,
        demand=demand,
        choice=choice,
        fits=best,
        alternatives=others,
        tried=len(setups),
        sentence=site_sentence(site, best, choice, rules.tie_bits),
        best_extension=best_extensions(setups, order.best[0], inputs, known.direction_rad),
        recordings=without_what_others_tell(reports),
        tunings=tunings_of(case, site, recordings, setups, found, rng),
        findings=tuple(notes),
    )


def _situation(site: Site, known: Ability, demand: Demand) -> Situation:
    return Situation(
        site=site.name,
        rest_n=float(known.rest_force_n[0]),
        involuntary_n=float(known.involuntary_n[0]),
        comfortable_of_maximal=site.comfortable_of_maximal_share or USUAL_COMFORTABLE_OF_MAXIMAL,
        can_lift=site.can_lift,
        room_m=site.room_m,
        longest_hold_s=demand.longest_hold_s,
        supported=bool(site.rest and site.rest[-1].support),
        part="finger" if site.part in ("fingertip", "thumb") else site.part,
    )


def _site_order(work: SiteWork, game: Game) -> tuple[bool, int, float]:
    """Sites where something fits first, then by what the player wants most, then by what the best stick is worth on
    average over the draws."""
    importance = {action.name: action.importance for action in game.action}.get(work.plan.demand.action, 5)
    return (work.plan.choice is None, -importance, -float(work.stick_utility[:, 1:].max(axis=0).mean()))


def _plan_sentence(works: Sequence[SiteWork], sharing: Sharing | None) -> str:
    if not works:
        if sharing is not None and sharing.placements:
            return sharing.sentence
        return "No site could be planned: take the force in four directions at one site, or try two sticks there."
    return works[0].plan.sentence
