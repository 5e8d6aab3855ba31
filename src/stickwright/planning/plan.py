"""The main job: a case in, a plan out.

`plan` is the one place that calls all the rest. It reads no file, prints nothing, and draws only
from a seeded generator: the same case gives the same plan.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial

import numpy as np
from numpy.typing import NDArray

from stickwright import __version__
from stickwright.allocation.pressing import can_press
from stickwright.allocation.questions import kit_without, wishes_for, wrong_wishes
from stickwright.allocation.wiring import wiring_of
from stickwright.codes.asked import Asked
from stickwright.codes.doing import Doing
from stickwright.codes.estimate import Estimate
from stickwright.codes.file_places import FilePlaces
from stickwright.codes.message import Name, Text, message
from stickwright.codes.setups import Setups
from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.mechanics.capability import EIGHT
from stickwright.mechanics.demand import demand_assumptions, demand_of
from stickwright.mechanics.setups import at_contact
from stickwright.mechanics.site_inputs import Rules
from stickwright.model.case import Case
from stickwright.model.fit import Fit
from stickwright.model.game import Game
from stickwright.model.kit import Controller, Kit, Stick, Switch
from stickwright.model.mounting import SiteMount
from stickwright.model.plan import DeviceNote, Plan, SitePlan
from stickwright.model.player import Player, Site, StickReach
from stickwright.model.recorded import Finding
from stickwright.model.recording import Recording
from stickwright.model.room import Room
from stickwright.model.sharing import Placement, Sharing
from stickwright.model.wishes import Wishes
from stickwright.mounting.cable_way import held_ways
from stickwright.mounting.heights import height_findings
from stickwright.mounting.mount_parts import mount_parts
from stickwright.mounting.on_housing import flats_of, with_flats
from stickwright.planning.cautions import cautions_of
from stickwright.planning.from_recordings import base_turn, without_replayed, without_simulated
from stickwright.planning.games_together import (
    Shared,
    all_actions,
    each_game,
    held_in_all,
    layouts_of,
    shared_out,
    weights_of,
)
from stickwright.planning.mount_requirements import held_together, with_slopes
from stickwright.planning.next_reading import SiteWork, next_reading
from stickwright.planning.sessions import growth_findings, play_blocks, session_findings
from stickwright.planning.site_planning import (
    KnownSite,
    behind_mount,
    judged_for,
    known_site,
    setups_at,
    site_plan_of,
    with_controllers,
)
from stickwright.planning.summary import kit_assumptions, kit_notes, names_used, rule_assumptions
from stickwright.planning.unused import unused_findings
from stickwright.tuning.another_game import settings_in

__all__ = ["DRAWS", "SEED", "plan"]

Array = NDArray[np.float64]
DRAWS = 500
MOST_DRAWS = 20_000
NOTABLE_LOSS = 0.01
"""Share of the throw lost to a mount's give below which nothing is worked out again."""
MOST_ROUNDS = 3
"""How often all is shared out again when what holds the sticks gives."""
SEED = 20260101


def plan(
    case: Case,
    *,
    draws: int = DRAWS,
    seed: int = SEED,
    rules: Rules | None = None,
    wishes: Wishes | None = None,
    why: str | None = None,
    progress: Callable[[Text, float], None] | None = None,
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
        raise BadInput(Problem("draws", str(draws), message(Asked.simulations, least=2, most=MOST_DRAWS, usual=DRAWS)))
    rules, wishes = rules or Rules(), wishes or Wishes()
    tell = progress or (lambda _what, _share: None)
    findings = list(case.doubts)
    if case.player.note:
        findings.append(Finding("note", "note", case.player.note))
    findings += [*_goals(case.player), *growth_findings(case.player), *height_findings(case.room, case.player)]
    known: list[KnownSite] = []
    described = case.kit
    problems, asked = wrong_wishes(all_actions(case), wishes), wishes
    case = replace(
        case,
        kit=kit_without(with_controllers(case.kit), wishes.without),
        player=with_slopes(case.player, case.room),
        recordings=tuple(_on_its_stick(recording, case.kit) for recording in case.recordings),
    )
    wishes = wishes_for(case, wishes)
    whole = without_replayed(without_simulated(case, findings), findings)
    cases, (weights, hours_assumed) = each_game(whole), weights_of(whole)
    case = cases[0]
    sites = [site for site in case.player.site if _usable(site, findings)]
    findings += unused_findings(described, sites)
    usable = {site.name for site in sites}
    problems = [
        *(
            problem
            for one in cases
            for site in one.player.site
            if site.name in usable
            for problem in _refusals(one, site)
        ),
        *problems,
    ]
    actions = [action.name for action in all_actions(whole).game.action]
    if why is not None and not any(_same(why, action) for action in actions):
        remedy: Text = did_you_mean(why, actions)
        if not actions:
            remedy = message(Asked.no_actions)
        problems.append(Problem("action", message(Asked.typed, typed=Name(why)), message(Asked.action), remedy))
    if problems:
        raise BadInput(dict.fromkeys(problems))
    for number, site in enumerate(sites):
        tell(Name(site.name), 0.6 * number / len(sites))
        rng = np.random.default_rng([seed, number])
        try:
            one = known_site(case, site, rng, draws, findings)
        except BadInput as refused:
            problems.extend(refused.problems)
            continue
        if one is not None:
            known.append(one)
    if problems:
        raise BadInput(problems)
    tell(message(Doing.sharing), 0.6)

    def shared_at(felt: Sequence[KnownSite], told: Callable[[float], None] = lambda _share: None) -> Shared:
        return shared_out(cases, weights, sites, felt, rules, (wishes, why, told))

    shared = shared_at(known, lambda share: tell(message(Doing.sharing), 0.6 + 0.25 * share))
    shared, known, mounts = _mounted(all_actions(whole), known, shared, shared_at, findings)
    room = _with_flats_in_use(whole, mounts)
    ways = held_ways(mounts, room) if room is not None else None
    layouts, together = layouts_of(cases, weights, shared, ways, hours_assumed)
    sharing, in_all = shared.sharing, held_in_all(shared)
    if ways is not None and sharing is not None and sharing.wiring is not None:
        sharing = replace(sharing, wiring=wiring_of(sharing.placements, case, ways))
    if sharing is not None and together is not None and together.wiring is not None:
        sharing = replace(sharing, wiring=together.wiring)
    works = [_in_its_game(cases, one, shared, rules, wishes) for one in known]
    tunings = {work.site.name: work.plan.tunings for work in works}
    layouts = tuple(
        replace(layout, settings=settings_in(layout.sharing, tunings, one.game))
        for layout, one in zip(layouts, cases, strict=False)
    )
    tell(message(Doing.next_reading), 0.95)
    works.sort(key=lambda work: (not _placed(work.site.name, in_all), *_site_order(work, all_actions(whole).game)))
    following = next_reading(
        works,
        [site.name for site in sites if site.name not in {work.site.name for work in works} and not can_press(site)],
        np.random.default_rng([seed, 999]),
        rules,
    )
    used = [work.plan for work in works if _placed(work.site.name, in_all)]
    findings += session_findings(case.player, whole.games, used)
    findings += kit_notes(case.kit, names_used(used, in_all, mounts))
    tell(message(Doing.done), 1.0)
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
        cautions=cautions_of(case.player, _chosen(sites, works, in_all), play_blocks(case.player, whole.games, used)),
        assumptions=tuple(dict.fromkeys([*rule_assumptions(rules), *(a for work in works for a in work.assumptions)])),
        findings=tuple(findings),
        seed=seed,
        draws=draws,
        sharing=sharing,
        mounts=mounts,
        room=room,
        device_notes=_device_notes(case.kit, in_all, works),
        mount_parts=mount_parts(mounts, case.kit),
        wishes=asked,
        layouts=layouts,
        together=together,
    )


def _with_flats_in_use(case: Case, mounts: Sequence[SiteMount]) -> Room | None:
    """The room with each flat of a housing on which a switch stands."""
    if case.room is None:
        return None
    used = {mount.choice.on for mount in mounts if mount.choice is not None}
    flats = flats_of(mounts, case.room, case.kit).values()
    return with_flats(case.room, [flat for flat in flats if flat.name in used])


def _device_notes(kit: Kit, sharing: Sharing | None, works: Sequence[SiteWork]) -> tuple[DeviceNote, ...]:
    """How each device in use is to be set, where it can be set in several ways or has modes."""
    fits = (
        [placement.fit for placement in sharing.placements if placement.fit is not None] if sharing is not None else []
    )
    if sharing is None:
        fits = [work.plan.choice for work in works if work.plan.choice is not None]
    used = {fit.stick: fit for fit in fits}
    pressed = (
        {placement.device for placement in sharing.placements if placement.device is not None}
        if sharing is not None
        else set()
    )
    devices: list[Stick | Switch | Controller] = [*kit.stick, *kit.switch, *kit.controller]
    out = []
    for device in devices:
        fit = used.get(device.name)
        setting, how = (fit.setting, fit.how_to_set) if fit is not None else ("", "")
        if (fit is not None or device.name in pressed) and (setting or device.mode):
            out.append(DeviceNote(device.name, setting, how, device.mode, device.mode_sign, device.mode_back))
    return tuple(dict.fromkeys(out))


def _on_its_stick(recording: Recording, kit: Kit) -> Recording:
    """A recording under the one name that its stick has as it was set."""
    return recording if recording.stick is None else replace(recording, stick=kit.full_name(recording.stick))


def _goals(player: Player) -> list[Finding]:
    """What the player wants of it, in their own words, so that the plan is read against it."""
    if not player.goals:
        return []
    goals = tuple(Name(goal) for goal in player.goals)
    return [Finding("note", "goals", message(Setups.goals, goals=goals))]


def _same(typed: str, name: str) -> bool:
    return typed.strip().casefold() == name.casefold()


def _usable(site: Site, findings: list[Finding]) -> bool:
    if site.cleared == "no":
        findings.append(Finding("note", "not_cleared", message(Setups.refused_by_team, site=Name(site.name))))
        return False
    return True


def _refusals(case: Case, site: Site) -> list[Problem]:
    """Names that do not resolve and weights that ask for nothing: all of them, before anything is worked out."""
    named = message(FilePlaces.named, key=Name("site"), name=Name(site.name))
    tried: list[tuple[tuple[Text, ...], StickReach | Recording]]
    tried = [(("player.toml", named, "on_stick"), entry) for entry in site.on_stick]
    tried += [((recording.name,), recording) for recording in case.recordings if recording.site == site.name]
    checks: list[tuple[tuple[Text, ...], Callable[[], object]]] = [
        (where, partial(at_contact, case.kit, one.stick, one.topper, one.extension))
        for where, one in tried
        if one.stick is not None
    ]
    checks.append(((), partial(demand_of, case.game, site.action, EIGHT, site.name)))
    if tried or site.reading:  # a part that only presses needs no stick
        setups = partial(setups_at, case.kit, site)
        checks.append(((), setups))
    out: list[Problem] = []
    for where, check in checks:
        try:
            check()
        except BadInput as refused:
            out += refused.inside(where).problems
    return out


def _mounted(
    case: Case,
    known: list[KnownSite],
    shared: Shared,
    shared_at: Callable[[Sequence[KnownSite]], Shared],
    findings: list[Finding],
) -> tuple[Shared, list[KnownSite], tuple[SiteMount, ...]]:
    """What holds each stick; and where that gives, everything again as the stick behind it feels the player, until what is
    chosen and what holds it go together."""
    if case.room is None or shared.sharing is None:
        return shared, known, ()
    first = shared
    felt, counted = known, dict[str, float]()
    tried: list[_Round] = []
    for number in range(MOST_ROUNDS + 1):
        in_all = held_in_all(shared)
        assert in_all is not None
        mounts = held_together(case, felt, in_all)
        gives = _gives(mounts, counted)
        tried.append(_Round(shared, felt, mounts, counted, gives))
        if gives == counted or number == MOST_ROUNDS:
            break
        felt, counted = [behind_mount(one, gives.get(one.site.name, math.inf)) for one in known], gives
        again = shared_at(felt)
        if again.sharing is None:
            break
        shared = again
    settled = tried[-1].counted == tried[-1].gives
    kept = tried[-1] if settled else next((one for one in reversed(tried) if one.on_the_safe_side), tried[-1])
    findings += _given_way(first, kept)
    if not settled:
        findings.append(_unsettled(tried, kept))
    return kept.shared, kept.known, kept.mounts


@dataclass(frozen=True, eq=False)
class _Round:
    """One sharing out with what holds it: the give it counted on, and the give of what then holds the sticks."""

    shared: Shared
    known: list[KnownSite]
    mounts: tuple[SiteMount, ...]
    counted: Mapping[str, float]
    gives: Mapping[str, float]

    @property
    def on_the_safe_side(self) -> bool:
        """Whether nothing gives more than was counted on."""
        return all(give >= self.counted.get(site, math.inf) for site, give in self.gives.items())


def _gives(mounts: Sequence[SiteMount], counted: Mapping[str, float]) -> dict[str, float]:
    """Stiffness of what holds the stick at each site where that costs anything worth speaking of, or was counted on."""
    return {
        mount.site: mount.choice.stiffness_n_per_m
        for mount in mounts
        if mount.choice is not None
        and mount.kind != "switch"
        and (
            (mount.choice.lost_share or 0.0) >= NOTABLE_LOSS
            or (mount.site in counted and mount.choice.give_n_per_m is not None)
        )
    }


def _given_way(first: Shared, kept: _Round) -> list[Finding]:
    """Where a stick was changed because what holds it gives."""
    out = []
    for site in kept.counted:
        before, after = _placement_at(site, held_in_all(first)), _placement_at(site, held_in_all(kept.shared))
        if before is not None and after is not None and before.device != after.device:
            text = message(
                Setups.flexing_mount, site=Name(site), after=Name(after.device or ""), before=Name(before.device or "")
            )
            out.append(Finding("note", "give", text))
    return out


def _unsettled(tried: Sequence[_Round], kept: _Round) -> Finding:
    """That stick and mount go on changing each other, where, and what was kept."""
    sites = [
        site
        for site in {**tried[-2].gives, **tried[-1].gives}
        if tried[-2].gives.get(site) != tried[-1].gives.get(site)
    ]
    text = message(Setups.unsettled, sites=tuple(map(Name, sites)), rounds=MOST_ROUNDS, safe=kept.on_the_safe_side)
    return Finding("query", "give", text)


def _placement_at(site: str, sharing: Sharing | None) -> Placement | None:
    """The stick action that a site does in the whole plan."""
    if sharing is None:
        return None
    return next(
        (placement for placement in sharing.placements if placement.site == site and placement.fit is not None), None
    )


def _placed(site: str, sharing: Sharing | None) -> bool:
    return sharing is None or _placement_at(site, sharing) is not None


def _action_at(site: Site, sharing: Sharing | None) -> str | None:
    placement = _placement_at(site.name, sharing)
    return site.action if placement is None else placement.action


def _in_its_game(cases: Sequence[Case], one: KnownSite, shared: Shared, rules: Rules, wishes: Wishes) -> SiteWork:
    """The site's own page, for the first game in which it works a stick."""
    sharings = shared.games.sharings if shared.games is not None else (shared.sharing,)
    used = (number for number, sharing in enumerate(sharings) if _placement_at(one.site.name, sharing) is not None)
    number = next(used, 0)
    return _finished(cases[number], one, _action_at(one.site, sharings[number]), rules, wishes, sharings[number])


def _finished(
    case: Case, one: KnownSite, action: str | None, rules: Rules, wishes: Wishes, sharing: Sharing | None
) -> SiteWork:
    """The site's own page, for the action that it does in the whole plan."""
    site, known = one.site, one.ability
    kept = tuple(stick for stick in case.kit.stick if stick.name not in wishes.without)
    if 0 < len(kept) < len(case.kit.stick):
        scale = one.stick_scale[[stick.name not in wishes.without for stick in case.kit.stick]]
        case, one = replace(case, kit=case.kit.model_copy(update={"stick": kept})), replace(one, stick_scale=scale)
    judged = judged_for(case, one, action, rules)
    site_plan = site_plan_of(case, one, judged)
    placement = _placement_at(site.name, sharing)
    if placement is not None and placement.fit is not None and placement.fit.verdict != "does not fit":
        site_plan = _as_shared(site_plan, placement.fit)
    fit = placement.fit if placement is not None else site_plan.choice
    turn = base_turn(site, one.recordings, fit.full_name) if fit is not None else None
    carried = _turn_carried_over(site.name, turn)
    site_plan = replace(site_plan, findings=(*one.heard, *carried, *site_plan.findings), base_turn_rad=turn)
    extra = (*demand_assumptions(case.game, judged.demand, site.name), *kit_assumptions(site_plan, site, case.kit))
    names = tuple(stick.name for stick in judged.setups.kit.stick)
    return SiteWork(
        site=site,
        plan=site_plan,
        known=known,
        stick_utility=judged.found.stick_utility,
        used=judged.used,
        assumptions=(*known.assumptions, *extra),
        sticks=names,
    )


def _turn_carried_over(site: str, turn: Estimate | None) -> tuple[Finding, ...]:
    """That the turn of a base comes from another stick's recordings, and what would make it sure."""
    if turn is None or turn.assumed is None:
        return ()
    text = message(Setups.turn_carried_over, site=Name(site), turn_rad=turn.number, source=turn.assumed)
    return (Finding("query", "base_turn", text),)


def _as_shared(site_plan: SitePlan, fit: Fit) -> SitePlan:
    """The page of a site whose stick the whole plan decides."""
    if site_plan.choice is not None and site_plan.choice.stick == fit.stick:
        return site_plan
    name = Name(site_plan.name)
    first = Name(site_plan.choice.stick) if site_plan.choice is not None else None
    mine = next((one for one in site_plan.fits if one.stick == fit.stick), fit)
    note = message(Setups.whole_controller, site=name, setup=mine.named, first=first)
    return replace(
        site_plan,
        choice=mine,
        sentence=message(Setups.for_whole, site=name, setup=mine.named, own=site_plan.sentence),
        findings=(Finding("note", "whole_plan", note), *site_plan.findings),
    )


def _chosen(sites: Sequence[Site], works: Sequence[SiteWork], sharing: Sharing | None) -> list[tuple[Site, Fit | None]]:
    """Every site that is used, with its stick where it has one."""
    out = [(work.site, work.plan.choice or (work.plan.fits[0] if work.plan.fits else None)) for work in works]
    told = {site.name for site, _ in out}
    pressing = {placement.site for placement in sharing.placements} if sharing is not None else set()
    return out + [(site, None) for site in sites if site.name in pressing and site.name not in told]


def _site_order(work: SiteWork, game: Game) -> tuple[bool, int, float]:
    """Sites where something fits first, then by what the player wants most, then by what the best stick is worth on
    average over the draws."""
    importance = {action.name: action.importance for action in game.action}.get(work.plan.demand.action, 5)
    return (work.plan.choice is None, -importance, -float(work.stick_utility[:, 1:].max(axis=0).mean()))


def _plan_sentence(works: Sequence[SiteWork], sharing: Sharing | None) -> Text:
    if not works:
        if sharing is not None and any(placement.how != "dropped" for placement in sharing.placements):
            return sharing.sentence
        return message(Setups.nothing_planned)
    return works[0].plan.sentence
