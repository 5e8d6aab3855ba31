"""The main job: a case in, a plan out.

`plan` is the one place that calls all the rest. It reads no file, prints nothing, and draws only
from a seeded generator: the same case gives the same plan.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stickwright import __version__
from stickwright.cautions import cautions_of
from stickwright.errors import BadInput
from stickwright.mechanics.ability import Ability, ability
from stickwright.mechanics.agreement import agreement
from stickwright.mechanics.answer import answer_sentence, site_findings, tired_findings
from stickwright.mechanics.demand import demand_of, needed_directions
from stickwright.mechanics.explain import Situation, base_fits, best_extensions, helping_change
from stickwright.mechanics.fit import DEAD_ZONES, Evaluated, Rules, SiteInputs, evaluate
from stickwright.mechanics.next_reading import Candidate, chance_after, chance_now, right_choice
from stickwright.mechanics.setups import Setups, at_contact, setups_of
from stickwright.mechanics.verdict import fits_of, ranked
from stickwright.model.case import Case
from stickwright.model.estimate import Estimate
from stickwright.model.kit import Kit
from stickwright.model.plan import Assumption, Demand, NextReading, Plan, SitePlan, direction_words
from stickwright.model.player import Site
from stickwright.model.recorded import Finding, TraceReport
from stickwright.model.recording import Recording
from stickwright.model.response import Tuning
from stickwright.units import spoken

__all__ = ["DRAWS", "SEED", "plan"]

Array = NDArray[np.float64]
DRAWS = 500
SEED = 20260101
ENOUGH_CHANCE = 0.90
"""Chance that the chosen stick is right above which more readings are not asked for: common practice."""
WORTH_GAIN = 0.02
"""Gain of that chance below which a reading is not worth the player's effort: common practice."""
HELPED = 8
"""Sticks for which a helping change is looked for; further down nobody reads."""
CANNOT = 20.0
"""Shortfall of what no tuning mends (a finger that cannot lift, a base too large, a stick that stays where it is pushed):
more than any other can reach."""


@dataclass(frozen=True, eq=False)
class _SiteWork:
    """One site on its way to a `SitePlan`."""

    site: Site
    plan: SitePlan
    known: Ability
    stick_utility: Array
    needed: NDArray[np.bool_]
    assumptions: tuple[Assumption, ...]


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
    rules = rules or Rules()
    tell = progress or (lambda _what, _share: None)
    findings: list[Finding] = []
    works: list[_SiteWork] = []
    problems: list[BadInput] = []
    sites = [site for site in case.player.site if _usable(site, findings)]
    for number, site in enumerate(sites):
        tell(site.name, 0.95 * number / len(sites))
        rng = np.random.default_rng([seed, number])
        try:
            work = _site_work(case, site, rng, draws, rules, findings)
        except BadInput as refused:
            problems.append(refused)
            continue
        if work is not None:
            works.append(work)
    if problems:
        raise BadInput([problem for refused in problems for problem in refused.problems])
    tell("next reading", 0.95)
    works.sort(key=lambda work: _site_order(work, rules))
    following = _next_reading(works, sites, np.random.default_rng([seed, 999]), rules)
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
        assumptions=tuple(dict.fromkeys([*_rule_assumptions(rules), *(a for work in works for a in work.assumptions)])),
        findings=tuple(findings),
        seed=seed,
        draws=draws,
    )


def _usable(site: Site, findings: list[Finding]) -> bool:
    if site.cleared == "no":
        findings.append(Finding("note", "not cleared", f"{site.name}: left out, the treating team has said no."))
        return False
    return True


def _site_work(
    case: Case, site: Site, rng: np.random.Generator, draws: int, rules: Rules, findings: list[Finding]
) -> _SiteWork | None:
    mine = [recording for recording in case.recordings if recording.site == site.name]
    reports = tuple(_trace(recording, rng) for recording in mine)
    tried = {
        place: at_contact(case.kit, entry.stick, entry.topper, entry.extension)
        for place, entry in enumerate(site.on_stick)
    }
    lightest = min((s for s in case.kit.stick if s.kind == "lever"), key=lambda s: s.full_force_n, default=None)
    shaken, shaken_note = _recorded_involuntary(case.kit, site, mine, reports)
    known = ability(
        site, rng, draws, tried=tried, recorded_involuntary=shaken, lightest_stick=lightest.name if lightest else None
    )
    if known is None:
        findings.append(
            Finding(
                "fault", "no force",
                f"{site.name}: neither a force reading nor a stick tried there, so no stick can be chosen. Take the force in four "
                "directions, or try two sticks and note how far the player gets.",
            )
        )  # fmt: skip
        return None
    demand = demand_of(case.game, site.action, known.direction_rad, site.name)
    weights = np.asarray(demand.direction_weights)
    needed = needed_directions(weights, known.direction_rad)
    setups = setups_of(
        case.kit,
        toppers=site.toppers,
        tilts=range(len(case.kit.tilt_rad)) if site.movement_tilt_rad is not None else (0,),
        site=site.name,
    )
    inputs = _inputs(site, setups, known, demand, weights, needed)
    found = evaluate(setups, inputs, rules)
    site_plan = _site_plan(case, site, known, demand, setups, inputs, found, rules, reports, mine, rng)
    if shaken_note is not None:
        site_plan = replace(site_plan, findings=(shaken_note, *site_plan.findings))
    extra = _kit_assumptions(site_plan, case.kit)
    return _SiteWork(site, site_plan, known, found.stick_utility, needed, (*known.assumptions, *extra))


def _trace(recording: Recording, rng: np.random.Generator) -> TraceReport:
    from stickwright.trace.report import trace_report

    return trace_report(recording, rng)


def _recorded_involuntary(
    kit: Kit, site: Site, recordings: Sequence[Recording], reports: Sequence[TraceReport]
) -> tuple[tuple[Estimate, Estimate] | None, Finding | None]:
    """Involuntary force from a recording of holding still on a stick of known stiffness."""
    if site.involuntary_force_n is not None:
        return None, None
    for task in ("still", "hold"):
        for recording, report in zip(recordings, reports, strict=True):
            if recording.stick is None or report.tremor is None or recording.unit != "share":
                continue
            words = set(np.unique(recording.cue).tolist()) if recording.cue is not None else {recording.task}
            if task not in words:
                continue
            stick = at_contact(kit, recording.stick, recording.topper, recording.extension)
            limb = site.limb_stiffness_n_per_m or _usual_limb(site)
            if limb is None:
                continue
            factor = stick.travel_m * (stick.stiffness_n_per_m + limb) / math.sqrt(2)  # vector rms to one axis
            rms = report.tremor.rms
            force = Estimate(
                rms.value * factor, rms.low * factor, rms.high * factor, rms.level, rms.n,
                assumed=f"from the recording {recording.name} and the stiffness of stick and limb",
            )  # fmt: skip
            note = Finding(
                "note", "involuntary force",
                f"Involuntary force taken from {recording.name}: {spoken(force.value, 'n')} rms per axis at "
                f"{report.tremor.crossing_hz.value:.1f} Hz.",
            )  # fmt: skip
            return (force, report.tremor.crossing_hz), note
    return None, None


def _usual_limb(site: Site) -> float | None:
    forces = [f for reading in site.reading for f in reading.force_n if f > 0]
    reaches = [d for reading in site.reading for d in reading.reach_m if d > 0]
    return 0.7 * float(np.median(forces)) / float(np.median(reaches)) if forces and reaches else None


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
        fall_off=known.fall_off, spasm_per_min=60 * spasm.rate_per_s if spasm else 0.0, spasm_peak_n=spasm.peak_n if spasm else (),
        false_limit_per_min=demand.false_input_limit_per_min, static=static,
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
        site.name, float(known.rest_force_n[0]), float(known.involuntary_n[0]), site.comfortable_of_maximal_share or 0.5,
        site.can_lift, site.room_m, demand.longest_hold_s, bool(site.rest and site.rest[-1].support),
    )  # fmt: skip
    places = (*order.best, *order.others)
    helps = [
        helping_change(place, setups, found, inputs, known.direction_rad, rules, situation) if row < HELPED else ""
        for row, place in enumerate(places)
    ]
    fits = fits_of(places, setups, found, inputs, known.direction_rad, demand, site, rules, situation, helps)
    best, others = fits[: len(order.best)], fits[len(order.best) :]
    choice = best[0] if best[0].verdict != "does not fit" else None
    notes = [
        *_agreements(known, setups, found, recordings, reports),
        *site_findings(site, demand, best[0]),
        *tired_findings(known.report.tiring_share, setups, inputs, order.best[0], choice is not None, rules),
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
        sentence=answer_sentence(site, best, rules.tie_bits),
        best_extension=best_extensions(setups, order.best[0], inputs, known.direction_rad),
        recordings=_without_what_others_tell(reports),
        tunings=_tunings(case, site, recordings, setups, found, rng),
        findings=tuple(notes),
    )


def _place_of(setups: Setups, recording: Recording) -> int | None:
    """Which set-up a recording was made on; None when it is not among those tried here."""
    kit = setups.kit
    for place in range(len(setups)):
        topper, extension = setups.topper[place], setups.extension[place]
        names = (
            kit.stick[setups.stick[place]].name,
            kit.topper[topper].name if topper >= 0 else None,
            kit.extension[extension].name if extension >= 0 else None,
        )
        if names == (recording.stick, recording.topper, recording.extension):
            return place
    return None


def _agreements(
    known: Ability, setups: Setups, found: Evaluated, recordings: Sequence[Recording], reports: Sequence[TraceReport]
) -> list[Finding]:
    """One finding for each tried set-up: its own pushes where there are some, else its edge."""
    turned = {
        (r.stick, r.topper, r.extension): report.bias.rotation_rad.value
        for r, report in zip(recordings, reports, strict=True)
        if report.bias is not None and report.bias.quarter_turns == 0 and not report.bias.mirrored
    }
    out: dict[int, Finding] = {}
    for task in ("push", "rim"):
        for recording, report in zip(recordings, reports, strict=True):
            place = _place_of(setups, recording)
            if report.reach is None or task not in report.task or place is None or place in out:
                continue
            turn = turned.get((recording.stick, recording.topper, recording.extension), 0.0)
            name = " + ".join(part for part in (recording.stick, recording.topper, recording.extension) if part)
            out[place] = agreement(known.direction_rad, found.reach_share[place], report.reach, turn, name)
    return list(out.values())


TOLD_ELSEWHERE = {
    "no reach": "reach", "reach in play": "reach", "no rest": "rest", "bursts not told": "bursts",
    "direction not told": "bias", "no tremor": "tremor", "tremor while moving": "tremor",
}  # fmt: skip
"""Notes that one recording cannot tell something, and where another may."""


def _without_what_others_tell(reports: Sequence[TraceReport]) -> tuple[TraceReport, ...]:
    """Reports without 'cannot tell' notes on what another recording of the same stick does tell."""
    told = {
        (report.stick, part)
        for report in reports
        for part in set(TOLD_ELSEWHERE.values())
        if getattr(report, part) is not None
    }
    return tuple(
        replace(
            report,
            findings=tuple(
                f
                for f in report.findings
                if (report.stick, TOLD_ELSEWHERE.get(f.about, "")) not in told or f.level != "note"
            ),
        )
        for report in reports
    )


def _tunings(
    case: Case,
    site: Site,
    recordings: Sequence[Recording],
    setups: Setups,
    found: Evaluated,
    rng: np.random.Generator,
) -> tuple[Tuning, ...]:
    sticks = list(dict.fromkeys(r.stick for r in recordings if r.stick is not None and r.unit == "share"))
    if not sticks:
        return ()
    from stickwright.tuning.pipeline import tune

    return tuple(
        tune(
            [r for r in recordings if r.stick == stick],
            site=site.name,
            stick=stick,
            own_dead_zone_share=case.game.own_dead_zone_share,
            offers=case.game.offers,
            lag_budget_s=case.game.lag_budget_s,
            least_dead_zone_share=max(
                (
                    float(found.dead_zone[place])
                    for place in (_place_of(setups, r) for r in recordings if r.stick == stick)
                    if place is not None
                ),
                default=0.0,
            ),
            rng=rng,
        )
        for stick in sticks
    )


def _site_order(work: _SiteWork, rules: Rules) -> tuple[bool, float]:
    best = work.plan.fits[0]
    return (work.plan.choice is None, -best.bits.value if work.plan.choice else len(best.fails))


def _plan_sentence(works: Sequence[_SiteWork]) -> str:
    if not works:
        return "No site could be planned: take the force in four directions at one site, or try two sticks there."
    return works[0].plan.sentence


def _rule_assumptions(rules: Rules) -> tuple[Assumption, ...]:
    return (
        Assumption(
            "Limits of practice",
            f"weakest direction {100 * rules.weakest_share:.0f} % of the throw (or {100 * rules.widened_share:.0f} % and "
            f"{rules.widened_travel_m * 1e3:.0f} mm, widened), effort {100 * rules.effort_share:.0f} % of comfortable",
            "common practice, no source", "the player's own trial",
        ),
    )  # fmt: skip


def _kit_assumptions(site_plan: SitePlan, kit: Kit) -> tuple[Assumption, ...]:
    first = site_plan.fits[0]
    stick = next(stick for stick in kit.stick if stick.name == first.stick)
    if stick.kind == "lever" and stick.friction_force_n is None:
        return (
            Assumption(
                f"Friction of {stick.name}", "none: comes home by itself", "only pushing out was benched", "bench it out and back",
            ),
        )  # fmt: skip
    return ()


def _next_reading(
    works: Sequence[_SiteWork], sites: Sequence[Site], rng: np.random.Generator, rules: Rules
) -> NextReading:
    unread = [site.name for site in sites if site.name not in {work.site.name for work in works}]
    if not works:
        name = unread[0] if unread else None
        return NextReading(
            False,
            name,
            math.pi / 2,
            "force",
            0.0,
            0.0,
            "Take the comfortable force forward, right, left and back, three times each.",
        )
    ranks: list[tuple[str, float, str, float]] = []
    now_of_first, best = 0.0, (0.0, "", math.nan, "", 0.0, 0.0)
    for action in dict.fromkeys(work.plan.demand.action for work in works):
        group = [work for work in works if work.plan.demand.action == action]
        utility = np.concatenate([work.stick_utility[:, 1:] for work in group])
        right = right_choice(utility, rules.tie_bits)
        now = chance_now(right)
        if group[0] is works[0]:
            now_of_first = now
        candidates = [candidate for work in group for candidate in _candidates(work)]
        after = chance_after(right, candidates, rng)
        for place, chance in sorted(after.items(), key=lambda item: (-item[1], item[0])):
            candidate = candidates[place]
            ranks.append((candidate.site, candidate.direction_rad, candidate.what, chance))
            if now < ENOUGH_CHANCE and chance - now > max(best[0], WORTH_GAIN):
                best = (chance - now, candidate.site, candidate.direction_rad, candidate.what, now, chance)
    ranks.sort(key=lambda rank: -rank[3])
    if best[0] == 0.0:
        why = (
            f"the chosen stick is right with a chance of {100 * now_of_first:.0f} %"
            if now_of_first >= ENOUGH_CHANCE
            else f"no single reading raises the chance of {100 * now_of_first:.0f} % by more than {100 * WORTH_GAIN:.0f} %; try the first two sticks instead"
        )
        return NextReading(
            True,
            None,
            None,
            "",
            now_of_first,
            now_of_first,
            f"Enough: more readings would not change the choice; {why}.",
            tuple(ranks[:8]),
        )
    _, site, phi, what, now, then = best
    where = f" {direction_words(phi)}" if math.isfinite(phi) else ""
    sentence = (
        f"Most worth the player's effort: {what}{where} at {site}, three times. It would raise the chance that the chosen stick is the right "
        f"one from {100 * now:.0f} % to about {100 * then:.0f} %."
    )
    return NextReading(False, site, phi if math.isfinite(phi) else None, what, now, then, sentence, tuple(ranks[:8]))  # type: ignore[arg-type]


def _candidates(work: _SiteWork) -> list[Candidate]:
    """Readings that could be taken at a site, three repeats each."""
    known, name = work.known, work.site.name
    out = []
    for k in np.flatnonzero(work.needed):
        phi = float(known.direction_rad[k])
        for what, values, scatter in (
            ("force", known.force_n, known.report.force_scatter_share.value),
            ("reach", known.reach_m, known.report.reach_scatter_share.value),
        ):
            out.append(Candidate(name, what, phi, np.log(values[1:, k]), max(scatter, 0.03) / math.sqrt(3)))
    rest = known.rest_force_n[1:]
    if rest.std() > 0:
        out.append(Candidate(name, "rest force", math.nan, np.log(np.maximum(rest, 1e-6)), 0.15 / math.sqrt(3)))
    shaken = known.involuntary_n[1:]
    if work.site.involuntary_force_n is None and shaken.std() > 0:
        out.append(Candidate(name, "recording", math.nan, np.log(shaken), 0.10))
    return out
