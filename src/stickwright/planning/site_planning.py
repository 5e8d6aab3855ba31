"""One control site: what its readings and recordings tell, what would fit for an action, and the site's own page."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stickwright.allocation.pressing import can_press
from stickwright.codes.estimate import Estimate
from stickwright.codes.heard import Heard
from stickwright.codes.message import Name, message
from stickwright.codes.setups import Setups as Words
from stickwright.mechanics.ability import Ability, ability
from stickwright.mechanics.default_values import USUAL_COMFORTABLE_OF_MAXIMAL, Steadiness
from stickwright.mechanics.demand import demand_of, needed_directions
from stickwright.mechanics.explain import SiteSetups, Situation, best_extensions, helping_change
from stickwright.mechanics.fit import DEAD_ZONES, Evaluated, evaluate
from stickwright.mechanics.order_effect import days_of
from stickwright.mechanics.setups import SetupArrays, at_contact, bench_log_sd, setups_of
from stickwright.mechanics.site_inputs import Rules, SiteInputs, central
from stickwright.mechanics.states import SiteState, states_of, worst_of
from stickwright.mechanics.suiting import unsuited_setups
from stickwright.mechanics.to_order import kit_to_order
from stickwright.mechanics.unread import LEAST_COMFORTABLE_SHARE, LEAST_DUTY_SHARE, Figure, Unread
from stickwright.mechanics.verdict import fits_of, ranked, rules_at_duty
from stickwright.model.case import Case
from stickwright.model.fit import Fit
from stickwright.model.game import Game
from stickwright.model.kit import Controller, Kit, Stick
from stickwright.model.parts import USUAL_FORMS
from stickwright.model.plan import Demand, SitePlan, StateFit, ToOrder
from stickwright.model.player import Site
from stickwright.model.recorded import Finding, TraceReport
from stickwright.model.recording import Recording
from stickwright.mounting.compliance import force_with_give
from stickwright.planning.from_recordings import (
    agreements,
    by_condition,
    heard_in_state,
    output_turned,
    recorded_steadiness,
    trace_of,
    tunings_of,
    without_what_others_tell,
)
from stickwright.planning.states import state_findings
from stickwright.planning.summary import site_findings, site_sentence, tired

__all__ = [
    "JudgedSetups",
    "KnownSite",
    "behind_mount",
    "judged_for",
    "known_site",
    "offered",
    "site_plan_of",
    "tilts_to_try",
    "with_controllers",
]

Array = NDArray[np.float64]
HELPED = 8
"""Sticks for which a helping change is looked for; further down nobody reads."""
CANNOT = 20.0
"""Shortfall of what no tuning mends (a finger that cannot lift, a base too large, a stick that stays where it is
pushed): more than any other can reach."""
UNTRIED = 2.0
"""Shortfall of what nobody tried (whether the finger can lift): it refuses nothing, and is worth a third (common practice)."""
UNSUITED = 0.5
"""The same of a size or a strength that is to be tried."""


OF_THE_CONTROLLER = frozenset({"setup_s", "flat"})
"""What a controller has as a stick has, and what counts once, for the whole of it."""


@dataclass(frozen=True, eq=False)
class KnownState:
    """What the player can do at a site in one state it was read in."""

    state: SiteState
    ability: Ability


@dataclass(frozen=True, eq=False)
class KnownSite:
    """What one site's readings and recordings tell, before any action is asked of it.

    Parameters
    ----------
    site : Site
    ability : Ability
    rng : Generator
        The site's own, for what is still drawn.
    recordings : sequence of Recording
    reports : tuple of TraceReport
    heard : tuple of Finding
        What the recordings added.
    stick_scale : array, shape (sticks, draws)
        Factor on each stick's forces in each draw.
    states : tuple of KnownState
        The site in each state it was read in, this one first.
    in_states : tuple of TraceReport
        Of the recordings that were made in those other states: none of `recordings`.
    """

    site: Site
    ability: Ability
    rng: np.random.Generator
    recordings: Sequence[Recording]
    reports: tuple[TraceReport, ...]
    heard: tuple[Finding, ...]
    stick_scale: Array
    states: tuple[KnownState, ...] = ()
    in_states: tuple[TraceReport, ...] = ()


@dataclass(frozen=True, eq=False)
class JudgedState:
    """All set-ups in one state."""

    known: KnownState
    inputs: SiteInputs
    found: Evaluated


@dataclass(frozen=True, eq=False)
class JudgedSetups:
    """All set-ups at a site, judged for one action.

    Parameters
    ----------
    demand : Demand
    setups : SetupArrays
    inputs : SiteInputs
    found : Evaluated
    rules : Rules
        Limits of practice at the action's share of time in use.
    states : tuple of JudgedState
        Each state in which the player will play.
    worst : array of int, shape (s,)
        Which of them each set-up does worst in: `found` holds its figures there.
    """

    demand: Demand
    setups: SetupArrays
    inputs: SiteInputs
    found: Evaluated
    rules: Rules
    states: tuple[JudgedState, ...]
    worst: NDArray[np.int64]

    @property
    def used(self) -> NDArray[np.bool_]:
        """Directions that the game uses at all, however little."""
        used: NDArray[np.bool_] = self.inputs.weight > 0
        return used


def with_controllers(kit: Kit) -> Kit:
    """The kit with the sticks of its two-handed controllers among the sticks, under the controller's own name."""
    same = [name for name in Stick.model_fields if name in Controller.model_fields and name not in OF_THE_CONTROLLER]
    sticks = [
        Stick(**{name: getattr(one, name) for name in same})
        for one in kit.controller
        if one.start_force_n is not None and one.full_force_n is not None and one.travel_m is not None
        and one.contact_height_m is not None and one.sticks
    ]  # fmt: skip
    return kit.model_copy(update={"stick": (*kit.stick, *sticks)})


def tilts_to_try(kit: Kit, site: Site) -> Sequence[int]:
    """Tilts to try, as places in the kit: all when the slope of the movement is known, else the most level one."""
    if site.movement_tilt_rad is not None:
        return range(len(kit.tilt_rad))
    return sorted(range(len(kit.tilt_rad)), key=lambda place: abs(kit.tilt_rad[place]))[:1]


def setups_at(kit: Kit, site: Site) -> SetupArrays:
    """Every set-up that could be built at a site, without the toppers that are forbidden there.

    Raises
    ------
    BadInput
        A topper that the kit lacks, or nothing left to try.
    """
    forbidden = set(site.forbidden_toppers)
    allowed = tuple(one for one in kit.topper if not {one.name, one.form} & forbidden)
    return setups_of(
        kit.model_copy(update={"topper": allowed}), toppers=site.toppers, part=site.part, site=site.name,
        tilts=tilts_to_try(kit, site), room_m=site.room_m,
    )  # fmt: skip


def known_site(
    case: Case, site: Site, rng: np.random.Generator, draws: int, findings: list[Finding]
) -> KnownSite | None:
    """What is known of a site; None when nothing tells of a stick there.

    Parameters
    ----------
    case : Case
    site : Site
    rng : Generator
    draws : int
    findings : list of Finding
        What is noticed is added here.
    """
    made = [recording for recording in case.recordings if recording.site == site.name]
    usual, by_state = by_condition(site, made)
    mine = list(usual)
    reports = tuple(trace_of(recording, rng) for recording in mine)
    mine, heard = output_turned(case.kit, site, mine, reports)
    if heard:
        reports = tuple(trace_of(recording, rng) for recording in mine)
    tried = {
        place: at_contact(case.kit, entry.stick, entry.topper, entry.extension)
        for place, entry in enumerate(site.on_stick)
    }
    lightest = min((s for s in case.kit.stick if s.kind == "lever"), key=lambda s: s.full_force_n, default=None)

    def recorded(limb_n_per_m: Estimate) -> Steadiness:
        told, noticed = recorded_steadiness(case.kit, site, mine, reports, limb_n_per_m)
        heard.extend(noticed)
        return told

    first, *others = states_of(site)
    days = days_of([read for read in case.forces_read if read.site == site.name])
    known = ability(
        site, rng, draws, tried=tried, recorded=recorded, lightest_stick=lightest.name if lightest else None, days=days
    )
    if known is None:
        if not can_press(site) and not site.reaches:
            findings.append(Finding("fault", "no_force", message(Words.nothing_read, site=Name(site.name))))
        return None
    scale = _stick_scale(case.kit, rng, draws)
    states = [KnownState(first, _under_ceiling(site, known))]
    in_states: list[TraceReport] = []
    for state in others:
        under = next(one for one in site.under if one.condition == state.name)
        told = heard_in_state(case.kit, state.site, under, by_state[state.name], rng)
        also = ability(told.site, rng, draws, tried=tried, recorded=told.steadiness, days=days)
        in_states += told.reports
        heard.extend(
            replace(finding, text=message(Heard.in_state, state=Name(state.name), told=finding.text))
            for finding in told.findings
        )
        if also is not None:
            states.append(KnownState(state, _under_ceiling(site, also)))
    return KnownSite(
        site=site,
        ability=states[0].ability,
        rng=rng,
        recordings=mine,
        reports=reports,
        heard=tuple(heard),
        stick_scale=scale,
        states=tuple(states),
        in_states=tuple(in_states),
    )


def _under_ceiling(site: Site, known: Ability) -> Ability:
    """No more force than the player may use here, though they could."""
    if site.force_ceiling_n is None:
        return known
    return replace(known, force_n=np.minimum(known.force_n, site.force_ceiling_n))


def behind_mount(one: KnownSite, give_n_per_m: float) -> KnownSite:
    """A site as a stick feels it that stands on something that gives.

    Parameters
    ----------
    one : KnownSite
    give_n_per_m : float
        Stiffness of all that holds the stick.
    """

    def felt(known: Ability) -> Ability:
        behind = force_with_give(known.force_n, known.reach_m, give_n_per_m)
        return replace(known, force_n=behind, firm_force_n=known.force_n[0] if math.isfinite(give_n_per_m) else None)

    states = tuple(replace(state, ability=felt(state.ability)) for state in one.states)
    return replace(one, ability=felt(one.ability), states=states)


def judged_for(case: Case, one: KnownSite, action: str | None, rules: Rules) -> JudgedSetups:
    """Every set-up that could be built at a site, judged for one action.

    Parameters
    ----------
    case : Case
    one : KnownSite
    action : str or None
        The most important stick action when None.
    rules : Rules
    """
    site, known = one.site, one.ability
    demand = demand_of(case.game, action, known.direction_rad, site.name)
    weights = np.asarray(demand.direction_weights)
    needed = needed_directions(weights, known.direction_rad)
    setups = setups_at(case.kit, site)
    basic, rules = rules, rules_at_duty(rules, demand.duty_share, _comfortable_of_maximal(site))
    judged = []
    for known_state in one.states:
        if known_state.state.plays:
            inputs = _inputs(known_state.state.site, setups, known_state.ability, demand, weights, needed)
            unread = _with_use_unsaid(inputs.unread, case.game, demand, site, basic)
            inputs = replace(inputs, stick_scale=one.stick_scale, unread=unread)
            judged.append(JudgedState(known_state, inputs, evaluate(setups, inputs, rules)))
    found, worst = worst_of([state.found for state in judged])
    return JudgedSetups(
        demand=demand,
        setups=setups,
        inputs=judged[0].inputs,
        found=found,
        rules=rules,
        states=tuple(judged),
        worst=worst,
    )


def _fits_where_worst(judged: JudgedSetups, places: Sequence[int], *, helped: int = 0) -> tuple[Fit, ...]:
    """Set-ups as they do in their worst state, the first few with the change that would help them."""
    out: dict[int, Fit] = {}
    for number, state in enumerate(judged.states):
        rows = [row for row, place in enumerate(places) if judged.worst[place] == number]
        if not rows:
            continue
        known, site = state.known.ability, state.known.state.site
        these = SiteSetups(
            setups=judged.setups, found=state.found, inputs=state.inputs, direction_rad=known.direction_rad,
            demand=judged.demand, rules=judged.rules, situation=_situation(site, known, judged.demand),
        )  # fmt: skip
        here = [places[row] for row in rows]
        helps = [helping_change(place, these) if row < helped else None for row, place in zip(rows, here, strict=True)]
        found = replace(state.found, stick_utility=judged.found.stick_utility)
        fits = fits_of(here, replace(these, found=found), site, helps)
        name = state.known.state.name if len(judged.states) > 1 else ""
        out |= {row: replace(fit, worst_in=name) for row, fit in zip(rows, fits, strict=True)}
    return tuple(out[row] for row in range(len(places)))


def _with_use_unsaid(unread: Unread, game: Game, demand: Demand, site: Site, rules: Rules) -> Unread:
    """What was assumed, with what neither the game's file nor a reading says of how hard the stick is used."""
    action = next((one for one in game.action if one.name == demand.action), None)
    said = set() if action is None else action.model_fields_set
    figures: list[Figure] = []
    duty, comfortable = demand.duty_share, _comfortable_of_maximal(site)
    if "usual_level_share" not in said:
        figures.append("level")
    if "duty_share" not in said:
        figures.append("duty")
        duty = min(duty, LEAST_DUTY_SHARE)
    if site.comfortable_of_maximal_share is None:
        figures.append("comfortable")
        comfortable = LEAST_COMFORTABLE_SHARE
    limit = rules_at_duty(rules, duty, comfortable).effort_share
    if limit <= rules_at_duty(rules, demand.duty_share, _comfortable_of_maximal(site)).effort_share:
        figures = [one for one in figures if one == "level"]  # the rest does not matter
    return replace(unread.with_figures(*figures), effort_limit_share=limit if figures else None)


def offered(one: KnownSite, judged: JudgedSetups) -> tuple[Fit, ...]:
    """The best set-up of each stick for one action, best first."""
    order = ranked(judged.setups, judged.found, one.site.liked, judged.rules, forms=_forms(one.site))
    return _fits_where_worst(judged, order.best)


def _stick_scale(kit: Kit, rng: np.random.Generator, draws: int) -> Array:
    """Factor on each stick's forces in each draw, by what its bench leaves open; 1 in the first."""
    normal = rng.standard_normal((len(kit.stick), draws))
    scale = np.array([bench_log_sd(stick).factors(row) for stick, row in zip(kit.stick, normal, strict=True)])
    scale = scale.reshape(len(kit.stick), draws)
    scale[:, 0] = 1.0
    return scale


def _inputs(
    site: Site, setups: SetupArrays, known: Ability, demand: Demand, weights: Array, needed: NDArray[np.bool_]
) -> SiteInputs:
    plane = np.ones((len(setups.slopes_rad), len(weights)))
    if site.movement_tilt_rad is not None:
        off = np.cos(setups.slopes_rad - site.movement_tilt_rad)[:, None]
        plane = np.hypot(np.cos(known.direction_rad)[None, :], np.sin(known.direction_rad)[None, :] * off)
    static, doubt = np.zeros(len(setups)), np.zeros(len(setups))
    static += np.where(setups.touch & (site.can_lift is False), CANNOT, 0.0)
    doubt += np.where(setups.touch & (site.can_lift is None), UNTRIED, 0.0)
    static += np.where(setups.home_share > DEAD_ZONES[-1], CANNOT, 0.0)
    plain, to_try = unsuited_setups(site.part, setups, float(known.force_n[0, needed].min()))
    static += np.where(plain, CANNOT, 0.0)
    doubt += np.where(to_try & ~plain, UNSUITED, 0.0)
    if site.room_m is not None:
        fits = [stick.stands(site.room_m) != "too large" for stick in setups.kit.stick]
        static += np.where(np.asarray(fits)[setups.stick], 0.0, CANNOT)
    spasm = site.spasm
    return SiteInputs(
        force_n=known.force_n, reach_m=known.reach_m, weight=weights, needed=needed, plane=plane,
        level_share=demand.usual_level_share, rest_n=known.rest_force_n, involuntary_n=known.involuntary_n,
        crossing_hz=known.crossing_hz, limb_n_per_m=known.limb_stiffness_n_per_m, noise_share=known.force_noise_share,
        fall_off=known.fall_off, spasm_per_min=60 * spasm.rate_per_s if spasm else 0.0,
        spasm_peak_n=spasm.peak_n if spasm else (), false_limit_per_min=demand.false_input_limit_per_min, static=static,
        static_doubt=doubt, unread=known.unread, firm_force_n=known.firm_force_n,
    )  # fmt: skip


def site_plan_of(case: Case, one: KnownSite, judged: JudgedSetups) -> SitePlan:
    """The site's own page: ability, ranking, help, tuning."""
    site, known, rng, rules = one.site, one.ability, one.rng, judged.rules
    demand, setups, inputs, found = judged.demand, judged.setups, judged.inputs, judged.found
    recordings, reports = one.recordings, one.reports
    order = ranked(setups, found, site.liked, rules, forms=_forms(site))
    fits = _fits_where_worst(judged, (*order.best, *order.others), helped=HELPED)
    best, others = fits[: len(order.best)], fits[len(order.best) :]
    choice = best[0] if best[0].verdict != "does not fit" else None
    states = _state_lines(one, judged, order.best[0])
    notes = [
        *agreements(known, setups, found, recordings, reports),
        *site_findings(site, demand, best),
        *tired(setups, inputs, order.best[0], known, rules),
        *state_findings(site, states),
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
        sentence=site_sentence(site, demand, best, choice, rules.tie_bits),
        best_extension=best_extensions(setups, order.best[0], inputs, known.direction_rad),
        recordings=without_what_others_tell((*reports, *one.in_states)),
        tunings=tunings_of(case, site, recordings, setups, found, rng),
        findings=tuple(notes),
        to_order=made_to_order(case, one, judged, choice) if case.kit.made_to_order else None,
        states=states,
    )


def _state_lines(one: KnownSite, judged: JudgedSetups, place: int) -> tuple[StateFit, ...]:
    """The first set-up in every state the site was read in, those that the player will not play in too."""
    if len(one.states) < 2:
        return ()
    own = float(one.states[0].ability.force_n[0].mean())
    lines = []
    some = judged.setups.take([place])
    for known in one.states:
        inputs = _inputs(
            known.state.site, some, known.ability, judged.demand, judged.inputs.weight, judged.inputs.needed
        )
        use = judged.inputs.unread  # what the game's file leaves open of the use is the same in every state
        figures = inputs.unread.figures | (use.figures & {"level", "duty", "comfortable"})
        unread = replace(inputs.unread, figures=figures, effort_limit_share=use.effort_limit_share)
        inputs = replace(inputs, stick_scale=one.stick_scale, unread=unread)
        found = evaluate(some, inputs, judged.rules)
        these = SiteSetups(
            setups=some, found=found, inputs=inputs, direction_rad=known.ability.direction_rad, demand=judged.demand,
            rules=judged.rules, situation=_situation(known.state.site, known.ability, judged.demand),
        )  # fmt: skip
        (fit,) = fits_of([0], these, known.state.site, [None])
        change = float(known.ability.force_n[0].mean()) / own - 1.0
        lines.append(StateFit(known.state.name, known.state.kind, known.state.plays, change, fit, known.state.after_s))
    return tuple(lines)


def _forms(site: Site) -> tuple[str, ...]:
    """Forms of topper in the order in which they are usual, where the player's file names none."""
    return () if site.toppers else USUAL_FORMS[site.part]


def _comfortable_of_maximal(site: Site) -> float:
    return site.comfortable_of_maximal_share or USUAL_COMFORTABLE_OF_MAXIMAL


DRAWN_TO_ORDER = 30
"""Sticks to order that are judged on every draw: the best by the single figures."""


def made_to_order(case: Case, one: KnownSite, judged: JudgedSetups, choice: Fit | None) -> ToOrder | None:
    """The stick to have made for a site, when it would do better than the kit by more than a tie; None otherwise.

    Parameters
    ----------
    case : Case
    one : KnownSite
    judged : JudgedSetups
        The site with the kit as it is.
    choice : Fit or None
        What is chosen there.
    """
    best, best_mean = None, -math.inf
    kit_best = float(judged.found.mean_utility.max())
    for offer in case.kit.made_to_order:
        kit = kit_to_order(case.kit, offer)
        found = None if kit is None else _best_to_order(replace(case, kit=kit), one, judged)
        if found is None:
            continue
        fit, mean, chance = found
        gain = None if choice is None else mean - kit_best
        better = gain is None or gain > judged.rules.tie_bits
        if fit.verdict != "does not fit" and better and mean > best_mean:
            best, best_mean = ToOrder(offer.name, fit, chance, gain, offer.weeks, offer.price), mean
    return best


def _best_to_order(case: Case, one: KnownSite, judged: JudgedSetups) -> tuple[Fit, float, float] | None:
    """The best stick of a kit that could be made: its fit, mean utility and chance of keeping every rule."""
    site, known, demand, rules = one.site, one.ability, judged.demand, judged.rules
    setups = setups_at(case.kit, site)
    weights = np.asarray(demand.direction_weights)
    inputs = _inputs(site, setups, known, demand, weights, judged.inputs.needed)
    first = evaluate(setups, replace(central(inputs), static=inputs.static), rules)
    kept = np.argsort(-first.utility, kind="stable")[:DRAWN_TO_ORDER]
    some = setups.take(kept)
    inputs = replace(inputs, static=None if inputs.static is None else inputs.static[kept])
    found = evaluate(some, inputs, rules)
    place = int(found.mean_utility.argmax())
    these = SiteSetups(
        setups=some, found=found, inputs=inputs, direction_rad=known.direction_rad, demand=demand, rules=rules,
        situation=_situation(site, known, demand),
    )  # fmt: skip
    (fit,) = fits_of([place], these, site, [None])
    return fit, float(found.mean_utility[place]), float(found.admissible[place])


def _situation(site: Site, known: Ability, demand: Demand) -> Situation:
    return Situation(
        site=site.name,
        rest_n=float(known.rest_force_n[0]),
        involuntary_n=float(known.involuntary_n[0]),
        comfortable_of_maximal=_comfortable_of_maximal(site),
        can_lift=site.can_lift,
        room_m=site.room_m,
        longest_hold_s=demand.longest_hold_s,
        supported=bool(site.rest and site.rest[-1].support),
        body_part=site.part,
    )
