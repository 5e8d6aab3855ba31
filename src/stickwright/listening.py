"""What a case's recordings add to its plan: involuntary force, agreement with the gauge, tuning."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from stickwright.mechanics.ability import Ability
from stickwright.mechanics.agreement import agreement
from stickwright.mechanics.fit import Evaluated
from stickwright.mechanics.setups import Setups, at_contact
from stickwright.model.case import Case
from stickwright.model.estimate import Estimate
from stickwright.model.kit import Kit
from stickwright.model.player import Site
from stickwright.model.recorded import Finding, TraceReport
from stickwright.model.recording import Recording
from stickwright.model.response import Tuning
from stickwright.units import spoken

__all__ = ["agreements", "recorded_involuntary", "trace_of", "tunings_of", "without_what_others_tell"]


def trace_of(recording: Recording, rng: np.random.Generator) -> TraceReport:
    """All that one recording tells.

    Parameters
    ----------
    recording : Recording
    rng : numpy Generator
    """
    from stickwright.trace.report import trace_report

    return trace_report(recording, rng)


def recorded_involuntary(
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


def agreements(
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
