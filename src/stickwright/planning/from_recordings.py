"""What a case's recordings add to its plan: involuntary force, agreement with the gauge, tuning."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from stickwright.codes.agreements import RecordedTask
from stickwright.codes.asked import Asked
from stickwright.codes.bases import Bases
from stickwright.codes.estimate import Estimate
from stickwright.codes.heard import Heard
from stickwright.codes.message import Message, Name, message
from stickwright.codes.setups import Setups as SetupTexts
from stickwright.errors import BadInput, Problem, nearest
from stickwright.mechanics.ability import Ability
from stickwright.mechanics.agreement import agreement
from stickwright.mechanics.default_values import Steadiness
from stickwright.mechanics.fit import Evaluated
from stickwright.mechanics.force_from_trials import TriedStick
from stickwright.mechanics.setups import SetupArrays, at_contact
from stickwright.model.case import Case
from stickwright.model.kit import Kit
from stickwright.model.player import Site, SiteUnder
from stickwright.model.recorded import Finding, TraceReport
from stickwright.model.recording import Recording
from stickwright.model.response import Tuning

if TYPE_CHECKING:
    from stickwright.tuning.rotation_calibration import Bearing

__all__ = [
    "HeardInState",
    "agreements",
    "base_turn",
    "by_condition",
    "heard_in_state",
    "output_turned",
    "recorded_steadiness",
    "trace_of",
    "tunings_of",
    "without_replayed",
    "without_simulated",
    "without_what_others_tell",
]


def without_simulated(case: Case, findings: list[Finding]) -> Case:
    """The case without what the simulated player recorded, unless the player of the case is invented too.

    Parameters
    ----------
    case : Case
    findings : list of Finding
        What is left out is told here.
    """
    invented = [recording.name for recording in case.recordings if recording.simulated]
    if case.player.example or not invented:
        return case
    text = message(Heard.simulated, player=Name(case.player.code), recordings=tuple(Name(one) for one in invented))
    findings.append(Finding("query", "simulated_player", text))
    return replace(case, recordings=tuple(recording for recording in case.recordings if not recording.simulated))


def without_replayed(case: Case, findings: list[Finding]) -> Case:
    """The case without recordings that are others played back: what they show counts already.

    Parameters
    ----------
    case : Case
    findings : list of Finding
        What is left out is told here.
    """
    again = [recording.name for recording in case.recordings if recording.replayed]
    if not again:
        return case
    text = message(Heard.replayed, recordings=tuple(Name(one) for one in again))
    findings.append(Finding("note", "played_back", text))
    return replace(case, recordings=tuple(recording for recording in case.recordings if not recording.replayed))


def trace_of(recording: Recording, rng: np.random.Generator) -> TraceReport:
    """All that one recording tells."""
    from stickwright.trace.report import trace_report

    return trace_report(recording, rng)


def output_turned(
    kit: Kit, site: Site, recordings: Sequence[Recording], reports: Sequence[TraceReport]
) -> tuple[list[Recording], list[Finding]]:
    """The recordings, those made on a base that stood crosswise as they come once its output is turned.

    Parameters
    ----------
    kit : Kit
    site : Site
    recordings : sequence of Recording
        Of this site.
    reports : sequence of TraceReport
        One for each: only what came out a quarter turn round was made before the output was turned.
    """
    out, findings = [], []
    for recording, report in zip(recordings, reports, strict=True):
        named = kit.stick_named(recording.stick) if recording.stick is not None else None
        turns = report.bias.quarter_turns if report.bias is not None else 0
        if named is None or turns not in (1, 3) or kit.stick[named[0]].stands(site.room_m) != "crosswise":
            out.append(recording)
            continue
        x, y = recording.xy.T
        out.append(replace(recording, xy=np.column_stack([y, -x] if turns == 1 else [-y, x])))
        text = message(
            Heard.crosswise,
            recording=Name(recording.name),
            stick=Name(recording.stick or ""),
            anticlockwise=turns == 1,
        )
        findings.append(Finding("note", "crosswise", text))
    return out, findings


def recorded_steadiness(
    kit: Kit, site: Site, recordings: Sequence[Recording], reports: Sequence[TraceReport], limb_n_per_m: Estimate
) -> tuple[Steadiness, tuple[Finding, ...]]:
    """Involuntary force from keeping still, and how noise grows from holds, on sticks of known stiffness.

    Parameters
    ----------
    kit : Kit
    site : Site
        Typed figures win: what is typed is not read from a recording.
    recordings : sequence of Recording
        Of this site.
    reports : sequence of TraceReport
        One for each.
    limb_n_per_m : Estimate
        The limb's own stiffness, whose interval widens what is told.
    """
    told, findings = Steadiness(), []
    for recording, report in zip(recordings, reports, strict=True):
        if recording.stick is None or recording.unit != "share":
            continue
        stick = at_contact(kit, recording.stick, recording.topper, recording.extension)
        newton = stick.travel_m * (stick.stiffness_n_per_m + limb_n_per_m.number)  # of full output, stick and limb
        if told.force_n is None and site.involuntary_force_n is None and report.tremor is not None:
            force = _kept_still(recording, newton)
            if force is not None:
                force = _with_limb_doubt(force, stick.stiffness_n_per_m, limb_n_per_m)
                crossing = report.tremor.crossing_hz
                crossed = crossing if crossing.value is not None else None
                told = replace(told, force_n=force, crossing_hz=crossed)
                text = message(
                    Heard.involuntary,
                    recording=Name(recording.name),
                    force_n=force.number,
                    crossing_hz=crossed.value if crossed is not None else None,
                    limb_assumed=bool(limb_n_per_m.assumed),
                )
                findings.append(Finding("note", "involuntary_force", text))
        if told.noise_share is None and site.force_noise_share is None and len(report.holds) >= 3:
            noise = _noise(report, stick, newton)
            if noise is not None:
                told = replace(told, noise_share=_with_limb_doubt(noise, stick.stiffness_n_per_m, limb_n_per_m))
    return told, tuple(findings)


def by_condition(
    site: Site, recordings: Sequence[Recording]
) -> tuple[tuple[Recording, ...], dict[str, tuple[Recording, ...]]]:
    """Recordings of a site made in its usual state, and those made in each other one.

    Parameters
    ----------
    site : Site
    recordings : sequence of Recording
        Of this site.

    Raises
    ------
    BadInput
        A recording names a state in which the site was not read.
    """
    usual: list[Recording] = []
    others: dict[str, tuple[Recording, ...]] = {one.condition: () for one in site.under}
    for one in recordings:
        if one.condition in ("", site.condition):
            usual.append(one)
        elif one.condition in others:
            others[one.condition] = (*others[one.condition], one)
        else:
            found = message(Asked.state, state=Name(one.condition))
            expected = message(Asked.state_of, site=Name(site.name))
            remedy = nearest(one.condition, others) or message(Asked.add_state)
            raise BadInput(Problem(one.name, found, expected, remedy))
    return tuple(usual), others


@dataclass(frozen=True, eq=False)
class HeardInState:
    """What recordings made in another state tell.

    Parameters
    ----------
    site : Site
        In that state; figures that were typed for the usual one alone give way to those recorded in this.
    reports : tuple of TraceReport
    findings : list of Finding
        Filled as `steadiness` is asked.
    steadiness : callable
        By the stiffness of the limb.
    """

    site: Site
    reports: tuple[TraceReport, ...]
    findings: list[Finding]
    steadiness: Callable[[Estimate], Steadiness]


def heard_in_state(
    kit: Kit, site: Site, under: SiteUnder, recordings: Sequence[Recording], rng: np.random.Generator
) -> HeardInState:
    """Unsteadiness recorded in one state of a site other than its usual one.

    Parameters
    ----------
    kit : Kit
    site : Site
        As it is in that state (`stickwright.mechanics.states.states_of`).
    under : SiteUnder
        What was typed for that state.
    recordings : sequence of Recording
        Made in it.
    rng : Generator
    """
    reports = tuple(trace_of(recording, rng) for recording in recordings)
    mine, turned = output_turned(kit, site, recordings, reports)
    if turned:
        reports = tuple(trace_of(recording, rng) for recording in mine)
    on_stick = [report for one, report in zip(mine, reports, strict=True) if one.stick is not None]
    fresh: dict[str, None] = {}
    if under.involuntary_force_n is None and any(report.tremor is not None for report in on_stick):
        fresh |= {"involuntary_force_n": None} | ({"crossing_hz": None} if under.crossing_hz is None else {})
    if any(len(report.holds) >= 3 for report in on_stick):
        fresh["force_noise_share"] = None
    there = site.model_copy(update=fresh)
    findings = list(turned)

    def steadiness(limb_n_per_m: Estimate) -> Steadiness:
        told, noticed = recorded_steadiness(kit, there, mine, reports, limb_n_per_m)
        findings.extend(noticed)
        return told

    return HeardInState(there, reports, findings, steadiness)


def _kept_still(recording: Recording, newton: float) -> Estimate | None:
    """Involuntary force per axis, in newton, where keeping still was asked."""
    from stickwright.trace.unsteady import unsteadiness

    if recording.cue is None:
        asked = np.full(len(recording.times_s), recording.task == "still")
    else:
        asked = recording.cue == "still"
    if asked.sum() < 100:
        return None
    rms = unsteadiness(recording.times_s[asked], recording.xy[asked])
    if rms.value is None or rms.value <= 0:
        return None
    return Estimate(
        rms.number * newton, rms.lower * newton, rms.upper * newton, rms.level, rms.n,
        assumed=message(Heard.from_recording, recording=Name(recording.name)), why=rms.why,
    )  # fmt: skip


def _with_limb_doubt(told: Estimate, stick_n_per_m: float, limb_n_per_m: Estimate) -> Estimate:
    """The same, wide enough for a limb as soft or as stiff as its interval allows."""
    if not limb_n_per_m.has_interval:
        return told
    here = stick_n_per_m + limb_n_per_m.number
    soft, stiff = ((stick_n_per_m + limb) / here for limb in (limb_n_per_m.lower, limb_n_per_m.upper))
    return replace(told, low=told.lower * soft, high=told.upper * stiff)


def _noise(report: TraceReport, stick: TriedStick, newton: float) -> Estimate | None:
    """Share of the push that scatters, from holds at several levels."""
    from stickwright.trace.unsteady import growing_noise

    push = [
        stick.start_force_n + (stick.full_force_n - stick.start_force_n) * min(max(hold.level.number, 0.0), 1.0)
        for hold in report.holds
    ]
    _, share = growing_noise(push, [hold.sd.number * newton for hold in report.holds])
    if share.value is None:
        return None
    return replace(share, assumed=message(Heard.from_recording, recording=Name(report.name)))


def _place_of(setups: SetupArrays, recording: Recording) -> int | None:
    """Which set-up a recording was made on; None when it is not among those tried here."""
    kit = setups.kit
    for place in range(len(setups)):
        topper, extension = setups.topper[place], setups.extension[place]
        names = (
            kit.stick[setups.stick[place]].as_set(int(setups.setting[place])).full_name,
            kit.topper[topper].name if topper >= 0 else None,
            kit.extension[extension].name if extension >= 0 else None,
        )
        if names == _tried(recording):
            return place
    return None


_REACH_TASKS: tuple[RecordedTask, ...] = ("push", "rim")
"""What a recorded reach is the reach of; pushes one by one come first."""


def agreements(
    known: Ability,
    setups: SetupArrays,
    found: Evaluated,
    recordings: Sequence[Recording],
    reports: Sequence[TraceReport],
) -> list[Finding]:
    """One finding for each tried set-up: its own pushes where there are some, else its edge.

    Parameters
    ----------
    known, setups, found : Ability, SetupArrays, Evaluated
        What the readings predict.
    recordings, reports : sequence of Recording, of TraceReport
        Of this site, one report for each recording.
    """
    turned = {
        _tried(r): report.bias.error_rotation_rad.value
        for r, report in zip(recordings, reports, strict=True)
        if report.bias is not None
        and report.bias.quarter_turns == 0
        and not report.bias.mirrored
        and report.bias.error_rotation_rad.value is not None
    }
    out: dict[int, Finding] = {}
    for task in _REACH_TASKS:
        for recording, report in zip(recordings, reports, strict=True):
            place = _place_of(setups, recording)
            if report.reach is None or task not in report.task or place is None or place in out:
                continue
            turn = turned.get(_tried(recording), 0.0)
            out[place] = agreement(
                known.direction_rad,
                found.reach_share[place],
                report.reach,
                turn,
                setup=_named(_tried(recording)),
                task=task,
                recording=recording.name,
            )
    return list(out.values())


TOLD_ELSEWHERE = {
    "no_reach": "reach", "reach_in_play": "reach", "no_rest": "rest", "bursts_not_told": "bursts",
    "direction_not_told": "bias", "no_tremor": "tremor", "tremor_while_moving": "tremor",
}  # fmt: skip
"""Notes that one recording cannot tell something, and where another may."""


def without_what_others_tell(reports: Sequence[TraceReport]) -> tuple[TraceReport, ...]:
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


def tunings_of(
    case: Case,
    site: Site,
    recordings: Sequence[Recording],
    setups: SetupArrays,
    found: Evaluated,
    rng: np.random.Generator,
) -> tuple[Tuning, ...]:
    """The tuning of each set-up that was tried and recorded at a site.

    Parameters
    ----------
    case : Case
    site : Site
    recordings : sequence of Recording
        Of this site.
    setups, found : SetupArrays, Evaluated
        For the dead zone that keeps involuntary movement out.
    rng : numpy Generator
    """
    usable = [r for r in recordings if r.stick is not None and r.unit == "share"]
    if not usable:
        return ()
    from stickwright.tuning.another_game import set_before
    from stickwright.tuning.pipeline import tune

    out = []
    for tried in dict.fromkeys(_tried(recording) for recording in usable):
        mine = [recording for recording in usable if _tried(recording) == tried]
        place = _place_of(setups, mine[0])
        tuning = tune(
            mine,
            site=site.name,
            stick=str(tried[0]),
            own_dead_zone_share=case.game.own_dead_zone_share,
            offers=case.game.offers,
            lag_budget_s=case.game.lag_budget_s,
            least_dead_zone_share=float(found.dead_zone[place]) if place is not None else 0.0,
            rng=rng,
        )
        before = set_before(case.game, str(tried[0]))
        out.append(replace(tuning, setup=_named(tried), settings_before=before))
    return tuple(out)


def base_turn(site: Site, recordings: Sequence[Recording], stick: str) -> Estimate | None:
    """How far the base of a stick is to be turned from where it stood when it was recorded, anticlockwise seen from above.

    Parameters
    ----------
    site : Site
    recordings : sequence of Recording
        Of this site.
    stick : str

    Returns
    -------
    Estimate or None
        None when the base is to stay, a mirror or quarter turn must be put right first, or nothing is known. Where nothing
        tells on this stick, what was found on another at this site, by the most pushes, with `assumed` naming that.

    Notes
    -----
    Assumed when it is carried over: the bases stood alike, so that the turn is the player's and not one base's.
    """
    own = _seats(site, recordings, stick)
    if own:
        return _to_turn(own[0][1])
    others = [
        seat
        for other in dict.fromkeys(recording.stick for recording in recordings if recording.stick not in (None, stick))
        for seat in _seats(site, recordings, str(other))
        if _to_turn(seat[1]) is not None
    ]
    if not others:
        return None
    label, seat = max(others, key=lambda one: one[1].output_rotation_rad.n)
    turn = _to_turn(seat)
    found_on = message(Bases.found_on, setup=label, stick=Name(stick))
    return replace(turn, assumed=found_on) if turn is not None else None


def _seats(site: Site, recordings: Sequence[Recording], stick: str) -> list[tuple[Message, Bearing]]:
    """How a stick stood, by each set-up that it was recorded in, where the recordings tell."""
    from stickwright.tuning.pipeline import seat_of

    usable = [recording for recording in recordings if recording.stick == stick and recording.unit == "share"]
    seats = [
        (_named(tried), seat_of([one for one in usable if _tried(one) == tried], site=site.name, stick=stick))
        for tried in dict.fromkeys(_tried(one) for one in usable)
    ]
    return [(label, seat) for label, seat in seats if seat.base != "not_known"]


def _to_turn(seat: Bearing) -> Estimate | None:
    turn = seat.turn_base_rad
    return turn if turn is not None and turn.has_interval else None


def _tried(recording: Recording) -> tuple[str | None, str | None, str | None]:
    return recording.stick, recording.topper, recording.extension


def _named(tried: tuple[str | None, str | None, str | None]) -> Message:
    """As `Fit.named` says it, tilt left out."""
    stick, topper, extension = (Name(part) if part else None for part in tried)
    return message(SetupTexts.named, stick=stick or Name(""), topper=topper, extension=extension, raised_rad=0.0)
