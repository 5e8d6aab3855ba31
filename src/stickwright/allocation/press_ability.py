"""What a part can press, put together from whatever was read.

Each figure that stands in for a missing reading is an `Assumption` that names the reading which would replace it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from stickwright.allocation.moving import line_of
from stickwright.allocation.press_scatter import TYPED_FACTORS, USUAL_SPREAD, repeat_factors
from stickwright.codes.estimate import Estimate
from stickwright.codes.estimate_notes import EstimateNotes
from stickwright.codes.message import Message, Name, message
from stickwright.codes.stand_ins import StandIns
from stickwright.mechanics.unread import MEASURE
from stickwright.mechanics.usual_forces import USUAL_CROSSING_HZ
from stickwright.model.fit import Assumption
from stickwright.model.hub import Role
from stickwright.model.parts import COMFORT, USUAL, USUAL_FACTOR
from stickwright.model.player import Press, Site

__all__ = [
    "AT_REST_SHARE", "DOWN_S", "USUAL_CYCLE_S", "PressAbility", "can_press",
    "comfortable_force", "press_ability", "press_assumptions",
]  # fmt: skip

DOWN_S = 0.1
"""Time a quick press stays down where the release was timed and the rate was not counted: common practice, no source."""
USUAL_CYCLE_S = 1.0
"""One press and release where neither rate nor release was taken: common practice, no source."""
AT_REST_SHARE = 1 / 3
"""Involuntary force of a part at rest on a switch over that of one that pushes a stick, where neither typed nor recorded:
common practice, no source."""


@dataclass(frozen=True)
class PressAbility:
    """One part's pressing; NaN where a reading is missing and nothing stands in."""

    comfortable_n: Estimate
    rate_per_s: float
    """In ten seconds, as fast as comfortable; presses a second."""
    cycle_s: float
    """One press and release."""
    release_s: float
    slowest_release_s: float
    hold_s: float
    reaction_s: float
    travel_m: float
    landing_m: float
    """The usual one of the part where it was not taken."""
    rest_n: float
    """The usual one of the part where it was not taken."""
    involuntary_n: float
    crossing_hz: float
    rest_taken: bool
    involuntary_taken: bool
    landing_taken: bool
    rest_factors: tuple[float, ...]
    """Times `rest_n`, equally likely: the scatter of its readings, or of the usual figure."""
    involuntary_factors: tuple[float, ...]
    """Times `involuntary_n`, equally likely."""
    sure_cycle_s: float
    """What one press and release takes at least, as far as it was read; 0 where nothing was."""
    force_assumptions: tuple[Assumption, ...]
    """Stand-ins for forces: of no account where nothing is touched."""
    time_assumptions: tuple[Assumption, ...]
    place_assumptions: tuple[Assumption, ...]
    """Stand-ins for where presses land."""


def can_press(site: Site, role: Role | None = None) -> bool:
    """Whether anything is known of pressing at this site.

    Parameters
    ----------
    site : Site
    role : str, optional
        A button of a two-handed controller; then it is enough that the part reaches it.

    Examples
    --------
    >>> can_press(Site(name="left fist", part="hand")), can_press(Site(name="knee", part="knee", press_rate_per_s=0.5))
    (False, True)
    """
    if role is not None and role in site.reaches:
        return True
    return site.press is not None or bool(site.press_rate_per_s) or bool(site.release_s)


def comfortable_force(force_n: Sequence[float]) -> Estimate:
    """Comfortable force of a press from its repeats: their geometric mean, with Student's interval on a log scale.

    Parameters
    ----------
    force_n : sequence of float
        Newton, one or more.

    Notes
    -----
    Errors of a force are proportional, so the scale is logarithmic; Student's t [student-1908] with one degree of
    freedom fewer than repeats. A reading of 0 has no logarithm: then the plain mean, without an interval.

    Examples
    --------
    >>> force = comfortable_force((0.20, 0.22, 0.24))
    >>> round(force.value, 3), round(force.low, 3), round(force.high, 3)
    (0.219, 0.175, 0.275)
    """
    from scipy import stats

    n = len(force_n)
    if min(force_n) <= 0:
        return Estimate.unbounded(math.fsum(force_n) / n, message(EstimateNotes.zero_among), n=n)
    if n == 1:
        return Estimate.unbounded(force_n[0], message(EstimateNotes.read_once), n=1)
    logs = [math.log(one) for one in force_n]
    middle = math.fsum(logs) / n
    sd = math.sqrt(math.fsum((one - middle) ** 2 for one in logs) / (n - 1))
    if sd < 1e-12:
        return Estimate.unbounded(math.exp(middle), message(EstimateNotes.repeats_alike), n=n)
    half = float(stats.t.ppf(0.975, n - 1)) * sd / math.sqrt(n)
    return Estimate(math.exp(middle), math.exp(middle - half), math.exp(middle + half), 0.95, n)


def press_ability(site: Site) -> PressAbility:
    """Everything that is known of pressing at a site, and what stands in for the rest.

    Parameters
    ----------
    site : Site
        Rate, release, resting force, involuntary force and its frequency are those of the site where its ``press``
        does not say.
    """
    press = site.press or Press()
    forces: list[Assumption] = []
    times: list[Assumption] = []
    force = _force(site, press, forces)
    rate = _mean(press.rate_per_s or site.press_rate_per_s)
    release = press.release_s or site.release_s
    rest = _rest(site, press, forces)
    involuntary, crossing = _unsteady(site, press, forces)
    places: list[Assumption] = []
    landing = _landing(site, press, places)
    read = press.rest_force_n or (site.rest[-1].force_n if site.rest else ())
    shaken_taken = press.involuntary_force_n is not None or site.involuntary_force_n is not None
    return PressAbility(
        comfortable_n=force,
        rate_per_s=rate,
        cycle_s=_cycle(site, rate, _median(release), times),
        release_s=_median(release),
        slowest_release_s=max(release, default=math.nan),
        hold_s=_mean(press.hold_s),
        reaction_s=_mean(press.reaction_s),
        travel_m=_mean(press.travel_m),
        landing_m=landing,
        rest_n=rest,
        involuntary_n=involuntary,
        crossing_hz=crossing,
        rest_taken=bool(read),
        involuntary_taken=shaken_taken,
        landing_taken=press.landing_m is not None,
        rest_factors=repeat_factors(read) if read else USUAL_SPREAD,
        involuntary_factors=TYPED_FACTORS if shaken_taken else USUAL_SPREAD,
        sure_cycle_s=_sure_cycle(rate, _median(release)),
        force_assumptions=tuple(forces),
        time_assumptions=tuple(times),
        place_assumptions=tuple(places),
    )


def press_assumptions(site: Site, *, moves: bool = False) -> tuple[Assumption, ...]:
    """What stands in for readings of pressing that were not taken at this site.

    Parameters
    ----------
    site : Site
    moves : bool, default False
        Whether several switches stand at it, so that the way between them counts.
    """
    able = press_ability(site)
    line = line_of(site.press)
    moving: tuple[Assumption, ...] = ()
    if moves and line.assumed is not None:
        moving = (
            Assumption(
                message(StandIns.switch_moves, sites=(Name(site.name),)),
                message(StandIns.time_per_bit, intercept_s=line.intercept_s, slope_s=line.slope_s_per_bit),
                line.assumed,
                message(StandIns.ten_moves),
            ),
        )
    return able.force_assumptions + able.time_assumptions + able.place_assumptions + moving


def _mean(values: Sequence[float]) -> float:
    return math.fsum(values) / len(values) if values else math.nan


def _median(values: Sequence[float]) -> float:
    if not values:
        return math.nan
    ordered = sorted(values)
    half = len(ordered) // 2
    return ordered[half] if len(ordered) % 2 else (ordered[half - 1] + ordered[half]) / 2


def _force(site: Site, press: Press, assumptions: list[Assumption]) -> Estimate:
    if press.force_n:
        return comfortable_force(press.force_n)
    pushes = [_mean(one.force_n) for one in site.reading if one.force_n]
    if pushes:
        why = message(StandIns.weakest_push)
        assumptions.append(_force_assumption(site, min(pushes), why))
        return Estimate.unbounded(min(pushes), message(EstimateNotes.no_press), n=0, assumed=why)
    band = COMFORT[site.part]
    value = math.sqrt(band.force_low_n * band.force_high_n)
    why = message(StandIns.usual_press, part=site.part, low_n=band.force_low_n, high_n=band.force_high_n)
    assumptions.append(_force_assumption(site, value, why))
    return Estimate(value, band.force_low_n, band.force_high_n, n=0, assumed=why)


def _force_assumption(site: Site, force_n: float, why: Message) -> Assumption:
    what = message(StandIns.press_force, sites=(Name(site.name),))
    return Assumption(what, message(StandIns.force, force_n=force_n), why, MEASURE["press force"])


def _cycle(site: Site, rate_per_s: float, release_s: float, assumptions: list[Assumption]) -> float:
    """One press and release: as fast as the burst, and no faster than the release lets it."""
    down = DOWN_S + release_s
    if rate_per_s > 0:
        return 1 / rate_per_s if math.isnan(down) else max(1 / rate_per_s, down)
    if rate_per_s == 0:
        return math.inf
    value = USUAL_CYCLE_S if math.isnan(down) else down
    assumptions.append(
        Assumption(
            message(StandIns.press_time, sites=(Name(site.name),)),
            message(StandIns.time, time_s=value),
            message(StandIns.presses_not_counted, down_s=None if math.isnan(down) else DOWN_S),
            MEASURE["press rate"],
        )
    )
    return value


def _sure_cycle(rate_per_s: float, release_s: float) -> float:
    """What was read of one press and release, without anything that stands in."""
    if math.isnan(rate_per_s):
        return 0.0 if math.isnan(release_s) else release_s
    fastest = 1 / rate_per_s if rate_per_s > 0 else math.inf
    return fastest if math.isnan(release_s) else max(fastest, release_s)


def _landing(site: Site, press: Press, assumptions: list[Assumption]) -> float:
    """Where presses land: rms per axis."""
    if press.landing_m is not None:
        return press.landing_m
    usual = USUAL[site.part].landing_m
    assumptions.append(
        Assumption(
            message(StandIns.press_landing, sites=(Name(site.name),)),
            message(StandIns.usual_length, length_m=usual, within_factor=USUAL_FACTOR),
            message(StandIns.usual_landing, part=site.part),
            MEASURE["landing"],
        )
    )
    return usual


def _rest(site: Site, press: Press, assumptions: list[Assumption]) -> float:
    if press.rest_force_n:
        return _mean(press.rest_force_n)
    last = site.rest[-1].force_n if site.rest else ()
    if last:
        value = _mean(last)
        assumptions.append(
            Assumption(
                message(StandIns.resting_on_switch, sites=(Name(site.name),)),
                message(StandIns.force, force_n=value),
                message(StandIns.all_on_switch),
                MEASURE["weight"],
            )
        )
        return value
    usual = USUAL[site.part].weight_n
    assumptions.append(
        Assumption(
            message(StandIns.resting_on_switch, sites=(Name(site.name),)),
            message(StandIns.usual_force, force_n=usual, within_factor=USUAL_FACTOR, rms=False),
            message(StandIns.usual_supported, part=site.part),
            MEASURE["weight"],
        )
    )
    return usual


def _unsteady(site: Site, press: Press, assumptions: list[Assumption]) -> tuple[float, float]:
    """Involuntary force, rms along the press, and its zero-crossing frequency."""
    force = press.involuntary_force_n if press.involuntary_force_n is not None else site.involuntary_force_n
    if force is None:
        force = AT_REST_SHARE * USUAL[site.part].steady_n
        assumptions.append(
            Assumption(
                message(StandIns.involuntary_on_switch, sites=(Name(site.name),)),
                message(StandIns.usual_force, force_n=force, within_factor=USUAL_FACTOR, rms=True),
                message(StandIns.usual_steady, part=site.part),
                MEASURE["press steadiness"],
            )
        )
    crossing = site.crossing_hz
    if crossing is None:
        crossing = USUAL_CROSSING_HZ
        assumptions.append(
            Assumption(
                message(StandIns.crossing_frequency, sites=(Name(site.name),)),
                message(StandIns.frequency, frequency_hz=crossing),
                message(StandIns.not_recorded),
                MEASURE["frequency"],
            )
        )
    return force, crossing
