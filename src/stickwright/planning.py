"""The main job: a case in, a plan out.

`plan` is the one place that calls all the rest. It reads no file, prints nothing, and draws only
from a seeded generator: the same case gives the same plan.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial

import numpy as np
from numpy.typing import NDArray

from stickwright import __version__
from stickwright.asking import SiteWork, next_reading
from stickwright.cautions import cautions_of
from stickwright.errors import BadInput, Problem
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
from stickwright.model.kit import Kit
from stickwright.model.plan import Demand, Plan, SitePlan
from stickwright.model.player import Site, StickReach
from stickwright.model.recorded import Finding, TraceReport
from stickwright.model.recording import Recording
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
    progress: Callable[[str, float], None] | None = None,
) -> Plan:
    """Choose, explain and tune: the whole answer to a case.

    Parameters
    ----------
    case : Case
        Player, kit, game and recordings.
    draws : int, default 500
        Draws of the readings behind every interval and chance.
    seed : int
        Of the generator.
    rules : Rules, optional
        Limits of practice.
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
    rules = rules or Rules()
    tell = progress or (lambda _what, _share: None)
    findings: list[Finding] = []
    works: list[SiteWork] = []
    sites = [site for site in case.player.site if _usable(site, findings)]
    problems = [problem for site in sites for problem in _refusals(case, site)]
    if problems:
        raise BadInput(dict.fromkeys(problems))
    for number, site in enumerate(sites):
        tell(site.name, 0.95 * number / len(sites))
        rng = np.random.default_rng([seed, number])
        try:
            work = _site_work(case, site, rng, draws, rules, findings)
        except BadInput as refused:
            problems.extend(refused.problems)
            continue
        if work is not None:
            works.append(work)
    if problems:
        raise BadInput(problems)
    tell("next reading", 0.95)
    works.sort(key=lambda work: _site_order(work, case.game))
    following = next_reading(
        works,
        [site.name for site in sites if site.name not in {work.site.name for work in works}],
        np.random.default_rng([seed, 999]),
        rules,
    )
    chosen = [(work.site, work.plan.choice or (work.plan.fits[0] if work.plan.fits else None)) for work in works]
    tell("done", 1.0)
    return Plan(
        version=__version__,
        case=case.name,
        made_on=case.made_on,
        player=case.player.code,
        game=case.game.name,
        visit=case.player.visit,
        sites=tuple(work.plan for work in works),
        sentence=_plan_sentence(works),
        next_reading=following,
        cautions=cautions_of(case.player, chosen),
        assumptions=tuple(dict.fromkeys([*rule_assumptions(rules), *(a for work in works for a in work.assumptions)])),
        findings=tuple(findings),
        seed=seed,
        draws=draws,
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


def _site_work(
    case: Case, site: Site, rng: np.random.Generator, draws: int, rules: Rules, findings: list[Finding]
) -> SiteWork | None:
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
        findings.append(
            Finding(
                "fault",
                "no force",
                f"{site.name}: no force was read, and no stick tried in a named direction, so no stick can be chosen. "
                "Take the force in four directions, or try two sticks and note how far the player gets, and which way.",
            )
        )
        return None
    demand = demand_of(case.game, site.action, known.direction_rad, site.name)
    weights = np.asarray(demand.direction_weights)
    needed = needed_directions(weights, known.direction_rad)
    setups = setups_of(
        case.kit,
        toppers=site.toppers,
        part=site.part,
        tilts=_tilts(case.kit, site),
        site=site.name,
    )
    inputs = replace(
        _inputs(site, setups, known, demand, weights, needed), stick_scale=_stick_scale(case.kit, rng, draws)
    )
    found = evaluate(setups, inputs, rules)
    site_plan = _site_plan(case, site, known, demand, setups, inputs, found, rules, reports, mine, rng)
    site_plan = replace(site_plan, findings=(*heard, *site_plan.findings))
    extra = (*demand_assumptions(case.game, demand, site.name), *kit_assumptions(site_plan, site, case.kit))
    return SiteWork(site, site_plan, known, found.stick_utility, needed, (*known.assumptions, *extra))


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
    situation = Situation(
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


def _site_order(work: SiteWork, game: Game) -> tuple[bool, int, float]:
    """Sites where something fits first, then by what the player wants most, then by what the best stick is worth on
    average over the draws."""
    importance = {action.name: action.importance for action in game.action}.get(work.plan.demand.action, 5)
    return (work.plan.choice is None, -importance, -float(work.stick_utility[:, 1:].max(axis=0).mean()))


def _plan_sentence(works: Sequence[SiteWork]) -> str:
    if not works:
        return "No site could be planned: take the force in four directions at one site, or try two sticks there."
    return works[0].plan.sentence
