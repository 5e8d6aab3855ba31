"""From recordings on the tried stick to the whole response, with what each step does in words.

Order: centre, rotation, range per direction, dead zone, curve, filter, outer limit. Each step is worked
out on the output of the steps before it. What no recording tells is left alone, and a finding names the
recording that would tell it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import Literal, NamedTuple

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.bases import Bases
from stickwright.codes.estimate import Estimate
from stickwright.codes.filters import Filters
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.tunings import Tunings
from stickwright.model.recorded import Finding
from stickwright.model.recording import Recording
from stickwright.model.response import FilterChoice, Tuning
from stickwright.trace.let_go import while_held
from stickwright.trace.recording import cleaned
from stickwright.trace.release import unsettled_finding
from stickwright.trace.rest import one_release, rest_report
from stickwright.trace.rest_samples import rests_of
from stickwright.trace.return_to_centre import home, step_of_levels
from stickwright.trace.tremor import tremor_report
from stickwright.tuning.asked import AskedStretch, asked_for, usable
from stickwright.tuning.choice import SHORTEST_S, choose_filter, filter_of
from stickwright.tuning.curve import ScatterFit, curve_table, fit_scatter, inner_jump
from stickwright.tuning.dead_zone import dead_zone_estimate
from stickwright.tuning.range_calibration import Span, player_span, push_reaches, rim_reaches
from stickwright.tuning.rotation_calibration import Bearing, bearing, push_direction
from stickwright.tuning.scatter import player_scatter
from stickwright.tuning.shaping import Response, placed, respond, shaped_one_euro
from stickwright.tuning.simple import simple_settings
from stickwright.tuning.words import sentences

__all__ = ["Response", "respond", "response_of", "shaped_one_euro", "tune"]

Array = NDArray[np.float64]
SHOWN_S = 60.0
_MOST_TELLING = ("follow", "rim", "push", "aim", "hold", "play", "still", "rest")
_LARGEST_DEAD_ZONE = 0.9
# A target that goes round draws corrections at multiples of its own rhythm (seen at three times 0.67 and 0.81 Hz).
_FOLLOWING_HZ = 3.0
_REST_FAULTS = ("leaned_on", "dead_zone", "rest_cleaned", "nothing_moves")
_WIDE_DEAD_ZONE = 0.3  # Beyond this more than the noise is wrong: support, or a firmer stick. (Judgement.)


class _Rest(NamedTuple):
    rests: list[Array]
    findings: tuple[Finding, ...]
    why: Text = ""
    """Why there is none."""


def tune(
    recordings: Sequence[Recording],
    *,
    site: str,
    stick: str,
    own_dead_zone_share: float | None = None,
    offers: Sequence[str] = (),
    lag_budget_s: float = 0.06,
    least_dead_zone_share: float = 0.0,
    rng: np.random.Generator | None = None,
) -> Tuning:
    """The response of one stick for one player, from recordings made on it.

    Parameters
    ----------
    recordings : sequence of Recording
        Made at `site` on `stick`: rest, rim, push, hold, aim, follow, in any number, none of them needed.
    site, stick : str
        Names, for the sentences; recordings that name others are left out with a finding.
    own_dead_zone_share : float or None
        Dead zone inside the game, share of the stick's output.
    offers : sequence of str
        What the game or console lets you change: 'dead zone', 'sensitivity', 'curve', 'rotation', 'range'.
    lag_budget_s : float, default 0.06
        By how much a filter may make the game late, seconds.
    least_dead_zone_share : float, default 0
        Dead zone that keeps involuntary movement out in play, share of the travel; the stick's rest may need more.
    rng : numpy.random.Generator or None
        Draws behind the intervals of the scatter; a fixed seed when None.

    Returns
    -------
    Tuning
        Every step with its interval or the reason for none, the nearest two numbers for a simple game, a
        recording before and after, sentences in order, findings.

    Raises
    ------
    BadInput
        A dead zone of the game outside 0 to 0.97, or a negative lag budget.

    Notes
    -----
    Sources: each step's own, see the modules. Assumed: rest and movement as in the recordings.

    Examples
    --------
    >>> times_s = np.arange(1000) * 0.02
    >>> noise = np.random.default_rng(1).normal(0.0, 0.01, (1000, 2))
    >>> tuning = tune([Recording("rest", times_s, noise + [0.05, 0.0], task="rest")], site="thumb", stick="hazel")
    >>> round(tuning.offset_x.value, 2), 0.02 < tuning.dead_zone.value < 0.03, tuning.filter is None
    (0.05, True, True)
    """
    kept, findings = usable(recordings, site, stick)
    kept = _while_held(_with_both_axes(kept, findings), findings)
    rest = _rest(kept)
    offset_x, offset_y = (_centre(rest, axis) for axis in range(2))
    seated = Response(centre_xy=(offset_x.number, offset_y.number))
    seat = _seat(kept, seated)
    turned = replace(seated, output_rotation_rad=seat.output_rotation_rad.number)
    span, range_task = _span(kept, turned)
    ranged = replace(turned, direction_rad=span.direction_rad, gain=span.gain)
    dead, dead_findings = _dead_zone(rest, ranged)
    dead = _held_back(dead, least_dead_zone_share, span)
    quiet = replace(
        ranged, dead_zone=min(dead.number, _LARGEST_DEAD_ZONE), inner_jump=inner_jump(own_dead_zone_share)
    )  # fmt: skip
    fit, scatter_task = _curve(kept, quiet, rng)
    choice, choice_findings = _filter(kept, ranged, lag_budget_s)
    settings = replace(quiet, curve_ratio=fit.ratio, filter=filter_of(choice), outer_limit=1.0)
    simple = simple_settings(settings, tuple(one.number for one in span.reach), offers)
    shown = _shown(kept, settings)
    curve_in, curve_out = curve_table(fit.ratio)
    found = (
        *findings, *rest.findings, *seat.findings, *span.findings, *dead_findings, *fit.findings, *choice_findings
    )  # fmt: skip
    return Tuning(
        site=site,
        stick=stick,
        recordings=tuple(one.name for one in kept),
        offset_x=offset_x,
        offset_y=offset_y,
        output_rotation_rad=seat.output_rotation_rad,
        turn_base=seat.turn_base,
        base=seat.base,
        turn_base_rad=seat.turn_base_rad,
        own_dead_zone_share=own_dead_zone_share,
        direction_rad=span.direction_rad,
        range_share=span.reach,
        gain=span.gain,
        range_task=range_task,
        dead_zone=dead,
        inner_jump=quiet.inner_jump,
        curve_in=curve_in,
        curve_out=curve_out,
        curve_sentence=_curve_sentence(fit, scatter_task),
        filter=choice,
        outer_limit=settings.outer_limit,
        simple=simple,
        sentences=sentences(
            offset=(offset_x, offset_y), rotation_sentence=_rotation_sentence(seat), span=span, dead_zone=dead,
            own_dead_zone_share=own_dead_zone_share, inner_jump=quiet.inner_jump,
            curve_sentence=_curve_sentence(fit, scatter_task), choice=choice, simple=simple, offers=offers,
            at_fault=any(one.level == "fault" for one in found),
        ),
        findings=tuple(found),
        before_xy=shown.before_xy,
        after_xy=shown.after_xy,
        shown_times_s=shown.times_s,
        shown_recording=shown.name,
        shown_target_xy=shown.target_xy,
    )  # fmt: skip


def seat_of(recordings: Sequence[Recording], *, site: str, stick: str) -> Bearing:
    """How a stick stood when it was recorded: the first steps of `tune` alone.

    Parameters
    ----------
    recordings : sequence of Recording
        As for `tune`.
    site, stick : str
        Names, as for `tune`.

    Returns
    -------
    Bearing
        The same turn of output and base that `tune` finds.

    Examples
    --------
    >>> print(seat_of([], site="thumb", stick="hazel").turn_base_rad)
    None
    """
    kept = _with_both_axes(usable(recordings, site, stick)[0], [])
    rest = _rest(kept)
    return _seat(kept, Response(centre_xy=(_centre(rest, 0).number, _centre(rest, 1).number)))


def response_of(tuning: Tuning) -> Response:
    """The settings of a tuning, ready for `respond`.

    Parameters
    ----------
    tuning : Tuning
        As `tune` gives it.

    Returns
    -------
    Response
        The same response.

    Examples
    --------
    >>> response_of(tune([], site="thumb", stick="hazel")) == Response(outer_limit=1.0)
    True
    """
    # One inner point of the table gives the ratio back: output at half way is ln(1 + c/2)/ln(1 + c).
    middle = float(np.interp(0.5, tuning.curve_in, tuning.curve_out))
    return Response(
        centre_xy=(tuning.offset_x.number, tuning.offset_y.number),
        output_rotation_rad=tuning.output_rotation_rad.number,
        direction_rad=tuning.direction_rad,
        gain=tuning.gain,
        dead_zone=min(tuning.dead_zone.number, _LARGEST_DEAD_ZONE),
        inner_jump=tuning.inner_jump,
        curve_ratio=_ratio_from_middle(middle),
        filter=filter_of(tuning.filter),
        outer_limit=tuning.outer_limit,
    )


def _ratio_from_middle(middle: float) -> float:
    from scipy.optimize import brentq

    if middle <= 0.5 + 1e-12:
        return 0.0
    return float(brentq(lambda c: math.log1p(c / 2) / math.log1p(c) - middle, 1e-9, 1e6, xtol=1e-12))


_MISSING: dict[tuple[bool, bool], Literal["x", "y", "both"]] = {
    (False, True): "x",
    (True, False): "y",
    (False, False): "both",
}


def _with_both_axes(recordings: Sequence[Recording], findings: list[Finding]) -> list[Recording]:
    kept = []
    for recording in recordings:
        there = (bool(np.isfinite(recording.xy[:, 0]).any()), bool(np.isfinite(recording.xy[:, 1]).any()))
        if len(recording.xy) == 0 or all(there):
            kept.append(recording)
            continue
        text = message(Tunings.one_axis, recording=Name(recording.name), missing=_MISSING[there])
        findings.append(Finding("query", "one_axis", text))
    return kept


def _while_held(recordings: Sequence[Recording], findings: list[Finding]) -> list[Recording]:
    """Without what the stick did by itself while it was let go."""
    kept = []
    for recording in recordings:
        if recording.cue_xy is None or np.count_nonzero(np.isfinite(recording.xy).all(axis=1)) < 2:
            kept.append(recording)
            continue
        held, said = while_held(recording)
        kept.append(held)
        findings += [
            replace(each, text=message(Tunings.in_recording, recording=Name(recording.name), told=each.text))
            for each in said
        ]
    return kept


def _rest(recordings: Sequence[Recording]) -> _Rest:
    asked = [
        (recording, rests_of(recording.times_s, recording.xy, _rest_cue(recording)))
        for recording in recordings
        if asked_for(recording, "rest")
    ]
    rests = [rest for _, found in asked for rest in found.samples]
    wanted = sum(found.asked for _, found in asked)
    if wanted:
        unsettled = unsettled_finding(sum(found.unsettled for _, found in asked), wanted)
        faults = [fault for one, found in asked if found.samples for fault in _rest_faults(one)]
        return _Rest(rests, (*faults, *unsettled, *one_release(len(rests))), message(Tunings.why_unsettled))
    still = [rest for one in recordings for rest in rests_of(one.times_s, one.xy).samples]
    if still:
        return _Rest(still, (Finding("query", "rest_by_stillness", message(Tunings.rest_by_stillness)),))
    return _Rest([], (Finding("note", "rest", message(Tunings.no_rest)),), message(Tunings.why_no_rest))


def _rest_cue(recording: Recording) -> NDArray[np.str_]:
    if recording.cue is not None and "rest" in recording.cue:
        return recording.cue
    return np.full(len(recording.times_s), "rest")


def _rest_faults(recording: Recording) -> list[Finding]:
    """What makes a rest useless for tuning: touched at switch-on, or set to zero before it was recorded."""
    clean, noticed = cleaned(recording)
    _, said = rest_report(clean)
    return [
        replace(one, text=message(Tunings.in_recording, recording=Name(recording.name), told=one.text))
        for one in (*noticed, *said)
        if one.level == "fault" and one.about in _REST_FAULTS
    ]


def _centre(rest: _Rest, axis: int) -> Estimate:
    if not rest.rests:
        return Estimate.unbounded(0.0, rest.why, n=0, assumed=message(Tunings.assumed_centred))
    every = np.concatenate(rest.rests)
    return home([each[:, axis] for each in rest.rests], step_of_levels(every[:, 0], every[:, 1]))


def _placed_stretches(recordings: Sequence[Recording], settings: Response, *tasks: str) -> list[AskedStretch]:
    return [
        replace(stretch, xy=placed(stretch.xy, settings))
        for one in recordings
        for stretch in asked_for(one, *tasks)
    ]  # fmt: skip


def _seat(recordings: Sequence[Recording], seated: Response) -> Bearing:
    pushes = [push_direction(stretch) for stretch in _placed_stretches(recordings, seated, "push")]
    known = np.array([pair for pair in pushes if pair is not None]).reshape(-1, 2)
    return bearing(known[:, 0], known[:, 1])


def _rotation_sentence(seat: Bearing) -> Message:
    """What to do with the base, and what the software does until that is done."""
    if seat.turn_base_rad is None:
        return seat.turn_base
    output_rad = seat.output_rotation_rad.number
    return message(Bases.turn_until, turn_rad=seat.turn_base_rad.number, output_rad=output_rad)


def _span(recordings: Sequence[Recording], turned: Response) -> tuple[Span, Literal["rim", "push", ""]]:
    """Range from the rim or from pushes, whichever shows more directions, and which it was."""
    rim = player_span(rim_reaches(_placed_stretches(recordings, turned, "rim")))
    push = player_span(push_reaches(_placed_stretches(recordings, turned, "push")))
    if len(rim.direction_rad) > len(push.direction_rad):
        return rim, "rim"
    return push, "push" if push.direction_rad else ""


def _dead_zone(rest: _Rest, ranged: Response) -> tuple[Estimate, tuple[Finding, ...]]:
    if not rest.rests:
        return Estimate.unbounded(0.0, rest.why, n=0, assumed=message(Tunings.assumed_no_zone)), ()
    estimate, findings = dead_zone_estimate([placed(one, ranged) for one in rest.rests])
    if estimate.number > _WIDE_DEAD_ZONE:
        text = message(Tunings.wide_dead_zone, radius_share=estimate.number)
        findings = (*findings, Finding("fault", "wide_dead_zone", text))
    return estimate, findings


def _held_back(dead: Estimate, least_share: float, span: Span) -> Estimate:
    """The dead zone, no smaller than what keeps involuntary movement out in play (a share of the travel)."""
    least = least_share * (float(np.mean(span.gain)) if span.gain else 1.0)
    if not least > dead.number:
        return dead
    why = message(
        Tunings.why_involuntary,
        radius_share=least,
        rest_share=dead.number if dead.n else None,
        rest_why=None if dead.n else dead.why,
    )
    return Estimate.unbounded(least, why, n=dead.n, assumed=message(Tunings.assumed_involuntary))


def _curve(
    recordings: Sequence[Recording], quiet: Response, rng: np.random.Generator | None
) -> tuple[ScatterFit, str]:  # fmt: skip
    scatter, task = player_scatter(recordings, quiet)
    levels, sds, degrees = (tuple(row[part] for row in scatter) for part in range(3))
    return fit_scatter(levels, sds, degrees, rng), task


def _curve_sentence(fit: ScatterFit, task: str) -> Message:
    if fit.ratio == 0.0:
        return message(Tunings.curve_straight, why=fit.b.why or message(Tunings.why_no_increase))
    return message(
        Tunings.curve_bent,
        centre_share=fit.a.number,
        growth_share=fit.b.number,
        task="hold" if task == "hold" else "aim",
        steep_factor=fit.ratio / math.log1p(fit.ratio),
    )


def _filter(
    recordings: Sequence[Recording], ranged: Response, lag_budget_s: float
) -> tuple[FilterChoice | None, tuple[Finding, ...]]:
    followed = [one for each in recordings for one in asked_for(each, "follow") if one.target_xy is not None]
    seconds = sum(float(one.times_s[-1] - one.times_s[0]) for one in followed if len(one.times_s) >= 50)
    if seconds < SHORTEST_S:
        text = message(Filters.too_little_following, followed_s=seconds, least_s=SHORTEST_S)
        return None, (Finding("note", "filter", text),)
    # The player closed the loop on the output as it was, so movement and target stay as recorded; both are
    # brought to the size that the range will give them, since the 1-euro filter goes by speed.
    raw = np.concatenate([one.xy for one in followed])
    about = raw - np.asarray(ranged.centre_xy)
    power = float((about**2).mean())
    scale = math.sqrt(float((placed(raw, ranged) ** 2).mean()) / power) if power > 0.0 else 1.0
    grown = [
        AskedStretch(one.times_s, scale * one.xy, scale * one.target_xy)
        for one in followed
        if one.target_xy is not None
    ]
    return choose_filter(grown, lag_budget_s, _tremor_hz(recordings, followed)), ()


def _tremor_hz(recordings: Sequence[Recording], followed: Sequence[AskedStretch]) -> float | None:
    """Frequency of a tremor that stands out while following, or else while holding or keeping still."""
    away = [AskedStretch(one.times_s, one.xy - one.target_xy) for one in followed if one.target_xy is not None]
    other = [one for each in recordings for one in asked_for(each, "still", "hold")]
    for stretches, least_hz in ((away, _FOLLOWING_HZ), (other, 0.0)):
        if stretches:
            longest = max(stretches, key=lambda one: float(one.times_s[-1] - one.times_s[0]))
            report = tremor_report(longest.times_s, longest.xy)
            if report.stands_out and report.frequency_hz.number > least_hz:
                return report.frequency_hz.value
    return None


class _Shown(NamedTuple):
    name: str
    times_s: Array
    before_xy: Array
    after_xy: Array
    target_xy: Array | None


def _shown(recordings: Sequence[Recording], settings: Response) -> _Shown:
    """Up to a minute of the most telling recording, before and after."""
    for task in _MOST_TELLING:
        spans = [(recording, asked_for(recording, task)) for recording in recordings]
        spans = [(one, stretches) for one, stretches in spans if stretches]
        if not spans:
            continue
        best, stretches = max(spans, key=lambda pair: sum(len(one.times_s) for one in pair[1]))
        start_s = float(stretches[0].times_s[0])
        end_s = min(float(stretches[-1].times_s[-1]), start_s + SHOWN_S)
        rows = (best.times_s >= start_s) & (best.times_s <= end_s)
        times, xy = best.times_s[rows], best.xy[rows]
        target = None if best.cue_xy is None or np.isnan(best.cue_xy[rows]).all() else best.cue_xy[rows]
        return _Shown(best.name, times, xy, respond(xy, times, settings), target)
    return _Shown("", np.empty(0), np.empty((0, 2)), np.empty((0, 2)), None)
