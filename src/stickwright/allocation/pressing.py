"""One switch, or one button of a controller, under one part, for one action: does it fit, and why not.

A rule is broken only by what was read, or by a comfortable force that stands in; all else that was not read is a note.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import numpy as np

from stickwright.allocation.moving import CATCHES_95_SDS, line_of, movement_time_s, spacing_m
from stickwright.allocation.press_ability import PressAbility, can_press, press_ability, press_assumptions
from stickwright.allocation.pressed import (
    BUDGET_SHARE,
    FREQUENT_EFFORT_SHARE,
    FREQUENT_PER_MIN,
    HELD_KINDS,
    HOLD_SHARE,
    INVOLUNTARY_SDS,
    LEAST_HIT_SHARE,
    OVER,
    PRESSED_KINDS,
    RARE_EFFORT_SHARE,
    REST_FACTOR,
    SUSTAINED_SHARE,
    USUAL_BUTTON_FORCE_N,
    WANTED_HIT_SHARE,
    Pressed,
    crossings_per_min,
    hit_share,
    presses_per_min,
    spasms_per_s,
    times,
)
from stickwright.mechanics.demand import FALSE_LIMIT_COSTLY_PER_MIN, FALSE_LIMIT_PER_MIN
from stickwright.mechanics.fit import ALWAYS, spasms_above_per_min
from stickwright.mechanics.stand_ins import percent
from stickwright.model.game import Action
from stickwright.model.plan import Assumption
from stickwright.model.player import Site
from stickwright.model.sharing import PressFit
from stickwright.units import figures, spoken

__all__ = [
    "BUDGET_SHARE", "FREQUENT_EFFORT_SHARE", "FREQUENT_PER_MIN", "HELD_KINDS", "HOLD_SHARE", "LEAST_HIT_SHARE",
    "PRESSED_KINDS", "RARE_EFFORT_SHARE", "SUSTAINED_SHARE", "USUAL_BUTTON_FORCE_N", "Pressed", "can_press",
    "crossings_per_min", "hit_share", "press_assumptions", "press_fit", "presses_per_min", "spasms_per_s",
]  # fmt: skip


def press_fit(
    site: Site,
    pressed: Pressed,
    action: Action,
    *,
    toggle: bool = False,
    slowed_share: float = 0.0,
    wait_s: float = 0.0,
    player_spasms_per_s: float | None = None,
) -> PressFit:
    """One switch or button under one part for one action, by every rule.

    Parameters
    ----------
    site : Site
    pressed : Pressed
    action : Action
    toggle : bool, default False
        The game lets a press stand for a hold: one to start, one to stop.
    slowed_share : float, default 0.0
        Part of the press rate lost because another site acts at the same moment.
    wait_s : float, default 0.0
        What must be waited for before the press counts: an accept delay, or the way from another switch.
    player_spasms_per_s : float or None
        Rate of the player's spasms, for a site that has none of its own but goes off with them (`spasms_per_s`).
    """
    able = press_ability(site)
    said = _Said()
    _kind(action, said)
    count, uncounted = presses_per_min(action, toggle=toggle)
    effort, limit = _effort(pressed, able, _often(action, count, uncounted, toggle), said)
    _rest_and_travel(site, pressed, able, said)
    share = _landing(pressed, able, said)
    cycle = able.cycle_s / (1 - slowed_share) if slowed_share < 1 else math.inf
    sustained = math.nan if math.isnan(able.rate_per_s) else SUSTAINED_SHARE * 60 / cycle
    _rate(count, sustained, able, slowed_share, said)
    held = None if toggle or action.kind not in PRESSED_KINDS else action.longest_hold_s
    _hold(action, held, able, toggle, said)
    _reaction(action, able, wait_s, said)
    return PressFit(
        force_n=pressed.force_n,
        comfortable_n=able.comfortable_n,
        effort_share=effort,
        effort_limit_share=limit,
        hit_share=share,
        presses_per_min=count,
        sustained_per_min=sustained,
        hold_s=held,
        hold_limit_s=HOLD_SHARE * able.hold_s,
        false_per_min=_false(site, pressed, action, able, player_spasms_per_s, said),
        cycle_s=cycle,
        move_s=_move(site, pressed, able, said),
        wanted_face_m=CATCHES_95_SDS * able.landing_m,
        fails=tuple(said.fails),
        notes=tuple(said.notes),
        assumed=tuple(
            [f"{one.what}: {one.value} ({one.why})" for one in _stand_ins(able, pressed)]
            + [one for one in (pressed.assumed, uncounted) if one is not None]
            + said.assumed
        ),
    )


@dataclass
class _Said:
    """What the rules have to say so far."""

    fails: list[str] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    assumed: list[str] = field(default_factory=list)


def _stand_ins(able: PressAbility, pressed: Pressed) -> tuple[Assumption, ...]:
    return able.time_assumptions if pressed.proximity else able.force_assumptions + able.time_assumptions


def _kind(action: Action, said: _Said) -> None:
    if action.kind == "two-axis":
        said.fails.append(f"{action.name} needs a stick: it goes two ways at once, and a press has no direction")
    elif action.kind == "one-axis":
        said.fails.append(
            f"{action.name} needs a stick: it goes to and fro, and a press has no direction (two switches, one for each "
            "way, are not worked out)"
        )
    elif action.kind == "chord":
        said.fails.append(f"{action.name} is a chord: it is pressed by the actions it is made of")
    elif action.kind == "trigger" and (action.levels is None or action.levels > 2):
        levels = "the game may use half way" if action.levels is None else f"the game uses {action.levels} levels"
        said.notes.append(f"a switch gives {action.name} all or nothing; {levels}")


def _often(action: Action, count_per_min: float, uncounted: str | None, toggle: bool) -> str | None:
    """Why the stricter limit of effort holds, as the end of a sentence; None for a rare press."""
    if action.kind == "repeat":
        return "for one that is repeated"
    if action.kind in HELD_KINDS and not toggle:
        return "for one that is held"
    if count_per_min > FREQUENT_PER_MIN:
        return "for a frequent press"
    nobody_counted = uncounted is not None and action.presses_per_s is None
    return "for a press that nobody counted" if nobody_counted else None


def _effort(pressed: Pressed, able: PressAbility, often: str | None, said: _Said) -> tuple[float, float]:
    """Operating force over comfortable force, and its limit."""
    limit = FREQUENT_EFFORT_SHARE if often else RARE_EFFORT_SHARE
    if math.isnan(pressed.force_n):
        said.fails.append(f"nobody put {pressed.name} on the gauge, so what it takes is not known")
        return math.nan, limit
    if pressed.force_n == 0:
        return 0.0, limit
    comfortable = able.comfortable_n.value
    share = pressed.force_n / comfortable if comfortable > 0 else math.inf
    if share > limit * OVER:
        needs = f"needs {spoken(pressed.force_n, 'n')}"
        usual = "" if able.comfortable_n.assumed is None else " (assumed)"
        most = "half" if often else percent(RARE_EFFORT_SHARE)
        words = "more than all" if share > 1 else _over(share, limit)
        said.fails.append(
            f"{needs}, {words} of the comfortable {spoken(comfortable, 'n')}{usual}: more than {most} "
            f"{often or 'for a rare press'}"
        )
    return share, limit


def _over(share: float, limit: float) -> str:
    """A share above its limit, never printed as the limit itself."""
    return percent(share) if percent(share) != percent(limit) else f"just over {percent(limit)}"


def _rest_and_travel(site: Site, pressed: Pressed, able: PressAbility, said: _Said) -> None:
    if pressed.proximity:
        _clear_of(pressed, able, said)
        return
    read = INVOLUNTARY_SDS * able.involuntary_n
    wanted = REST_FACTOR * able.rest_n + read
    known = REST_FACTOR * able.rest_n + (read if able.involuntary_taken else 0.0)
    if not math.isnan(pressed.force_n):
        resting = f"resting there brings {spoken(able.rest_n, 'n')}" if able.rest_taken else "not trying"
        shaking = f"{spoken(able.involuntary_n, 'n')} rms of involuntary force"
        words = (
            f"takes {spoken(pressed.force_n, 'n')}; {resting}, with {shaking}: {spoken(wanted, 'n')} or more keeps the "
            "part from pressing it by itself"
        )
        if pressed.force_n * OVER < known:
            said.fails.append(words)
        elif pressed.force_n * OVER < wanted:
            said.notes.append(f"{words} (involuntary force is assumed)")
    if not able.rest_taken and able.involuntary_taken is False:
        said.notes.append(f"neither resting nor involuntary force was read at {site.name}: it may press it by itself")
    if math.isnan(pressed.travel_m) or pressed.travel_m <= 0:
        return
    if pressed.travel_m > able.travel_m * OVER:
        said.fails.append(
            f"must be pushed in {spoken(pressed.travel_m, 'mm')}, and the part pushes {spoken(able.travel_m, 'mm')}"
        )
    elif math.isnan(able.travel_m):
        said.notes.append(f"whether the part pushes in {spoken(pressed.travel_m, 'mm')} was not tried")


def _clear_of(pressed: Pressed, able: PressAbility, said: _Said) -> None:
    """A proximity switch: the part must rest clear of it."""
    if pressed.senses_at_m is None:
        said.notes.append("at what distance it senses is not known: the part must be able to rest clear of it")
    elif math.isnan(able.travel_m):
        said.notes.append(
            f"it senses at {spoken(pressed.senses_at_m, 'mm')}: try whether the part can rest clear of it"
        )
    elif able.travel_m * OVER < pressed.senses_at_m:
        said.fails.append(
            f"it senses at {spoken(pressed.senses_at_m, 'mm')} and the part moves {spoken(able.travel_m, 'mm')}: it "
            "cannot rest clear of it"
        )


def _landing(pressed: Pressed, able: PressAbility, said: _Said) -> float:
    share = hit_share(pressed.face_m, able.landing_m)
    if math.isnan(able.landing_m):
        said.notes.append("where presses land was not taken, so how many would miss is not known")
    elif math.isnan(share):
        said.notes.append(f"the size of {pressed.name} is not known, nor how many presses would miss it")
    if not share < WANTED_HIT_SHARE:
        return share
    face = " x ".join(figures(1000 * side) for side in pressed.face_m)
    few = share * OVER < LEAST_HIT_SHARE
    lands = (
        f"{_under(share) if few else percent(share)} of presses land on {face} mm, with {spoken(able.landing_m, 'mm')} of "
        f"scatter; {spoken(CATCHES_95_SDS * able.landing_m, 'mm')} would catch 95 of 100"
    )
    if few:
        said.fails.append(f"{lands}, and {percent(LEAST_HIT_SHARE)} is the least")
    else:
        said.notes.append(f"{lands}; {percent(1 - share)} miss")
    return share


def _under(share: float) -> str:
    return percent(share) if percent(share) != percent(LEAST_HIT_SHARE) else f"just under {percent(LEAST_HIT_SHARE)}"


def _rate(count_per_min: float, sustained_per_min: float, able: PressAbility, slowed_share: float, said: _Said) -> None:
    needs = f"the busy minute has {times(count_per_min)} presses"
    slowed = f", slowed by {percent(slowed_share)} beside the other part" if slowed_share > 0 else ""
    if math.isnan(sustained_per_min):
        said.notes.append(f"{needs}; how many can be kept up was not counted")
        busy_s = count_per_min * able.release_s
        if busy_s > BUDGET_SHARE * 60 * OVER:
            said.fails.append(
                f"{needs}, and letting go takes {spoken(able.release_s, 's')}: that alone is {busy_s:.0f} of 60 s, more "
                f"than {percent(BUDGET_SHARE)}"
            )
    elif count_per_min > sustained_per_min * OVER:
        fewer = times(sustained_per_min)
        fewer = f"just under {fewer}" if fewer == times(count_per_min) else fewer
        said.fails.append(
            f"{needs}, and {fewer} can be kept up{slowed}: half of {times(able.rate_per_s)} a "
            "second, counted over ten seconds" + _by_release(able)
        )
    if able.slowest_release_s > able.cycle_s:
        said.notes.append(
            f"letting go took up to {spoken(able.slowest_release_s, 's')}: now and then it stays down into the next press"
        )


def _by_release(able: PressAbility) -> str:
    """What slows the cycle further: letting go."""
    if not able.cycle_s * able.rate_per_s > OVER:
        return ""
    return f", less because letting go takes {spoken(able.release_s, 's')}"


def _hold(action: Action, held_s: float | None, able: PressAbility, toggle: bool, said: _Said) -> None:
    if held_s is None:
        if action.kind in HELD_KINDS and not toggle:
            said.notes.append(f"how long {action.name} must be held is not said in game.toml")
        return
    if held_s <= 0:
        return
    asks = f"asks for holds of {spoken(held_s, 's')}"
    if math.isnan(able.hold_s):
        said.notes.append(f"{asks}; how long a press can be held was not taken")
    elif held_s > HOLD_SHARE * able.hold_s * OVER:
        way_out = "; a press to start and a press to stop would do" if action.toggle else ""
        share = "more than all" if held_s > able.hold_s else _over(held_s / max(able.hold_s, 1e-9), HOLD_SHARE)
        said.fails.append(f"{asks}, {share} of the {spoken(able.hold_s, 's')} it can be held: more than half{way_out}")


def _reaction(action: Action, able: PressAbility, wait_s: float, said: _Said) -> None:
    if action.reaction_s is None or action.kind not in PRESSED_KINDS:
        return
    gives = f"the game gives {spoken(action.reaction_s, 's')} for {action.name}"
    if math.isnan(able.reaction_s):
        said.notes.append(f"{gives}; how soon a press comes after its cue was not taken")
    elif able.reaction_s + wait_s > action.reaction_s * OVER:
        waits = f" and must wait {spoken(wait_s, 's')}" if wait_s > 0 else ""
        said.fails.append(f"{gives}, and the press comes after {spoken(able.reaction_s, 's')}{waits}")


def _false(
    site: Site,
    pressed: Pressed,
    action: Action,
    able: PressAbility,
    player_spasms_per_s: float | None,
    said: _Said,
) -> float:
    """False presses a minute: unsteadiness about the resting force, and spasms."""
    unsteady = 0.0
    if not pressed.proximity and not math.isnan(pressed.force_n):
        unsteady = crossings_per_min(pressed.force_n, able.rest_n, able.involuntary_n, able.crossing_hz)
        if not able.involuntary_taken and able.rest_n < pressed.force_n:
            unsteady = min(unsteady, 60 * able.crossing_hz)  # an assumed tremor does not keep a switch pressed for good
    spasms, words = _spasms_per_min(site, pressed, player_spasms_per_s, said)
    counted = unsteady if able.involuntary_taken or able.rest_n >= pressed.force_n else 0.0
    read = counted + spasms
    limit = FALSE_LIMIT_COSTLY_PER_MIN if action.false_input_costly else FALSE_LIMIT_PER_MIN
    if read > limit * OVER:
        costly = ", where a false one is costly" if action.false_input_costly else ""
        allowed = f"{times(limit)} a minute allowed{costly}"
        if read >= ALWAYS:
            said.fails.append(
                f"would be on by itself: involuntary force keeps passing its {spoken(pressed.force_n, 'n')}"
            )
        else:
            why = words if spasms >= counted else "by involuntary force"
            said.fails.append(f"would go off by itself {times(read)} times a minute, {why}; {allowed}")
    return min(ALWAYS, unsteady + spasms)


def _spasms_per_min(site: Site, pressed: Pressed, player_spasms_per_s: float | None, said: _Said) -> tuple[float, str]:
    """Spasms a minute in which it goes off, and that in words: as tried, else by how strong the spasms were."""
    tried = None if site.press is None else site.press.fires_with_spasm_share
    rate = player_spasms_per_s if site.spasm is None else site.spasm.rate_per_s
    if tried is not None:
        if rate is None:
            said.notes.append(f"it goes off in {percent(tried)} of spasms, and nobody counted the spasms")
            return 0.0, ""
        return 60 * rate * tried, f"with {percent(tried)} of {times(60 * rate)} spasms a minute"
    if site.spasm is None:
        if rate:
            said.notes.append(
                f"spasms come {times(60 * rate)} times a minute; whether it goes off with them was not tried"
            )
        return 0.0, ""
    if not site.spasm.peak_n and not pressed.proximity:
        said.notes.append("spasms were noted without their force, so those that would press it are not counted")
        return 0.0, ""
    if math.isnan(pressed.force_n):
        return 0.0, ""
    per_min = 60 * site.spasm.rate_per_s
    fires = per_min
    if not pressed.proximity:
        fires = float(spasms_above_per_min(np.array(pressed.force_n), per_min, site.spasm.peak_n))
    if fires > 0:
        said.assumed.append(
            f"spasms at {site.name}: it goes off in {percent(fires / per_min)} of them (by their force: not tried)"
        )
    return fires, f"with {times(fires)} of {times(per_min)} spasms a minute, by their force"


def _move(site: Site, pressed: Pressed, able: PressAbility, said: _Said) -> float:
    """Time from a second switch like it at the same part, s."""
    line = line_of(site.press)
    if line.assumed is not None:
        said.assumed.append(f"moving between switches at {site.name}: {line.assumed}")
    width = min(pressed.face_m, default=0.0)
    if width <= 0:
        said.assumed.append(f"distance between switches at {site.name}: their own width (size not known)")
        width = distance = 1.0
    else:
        distance = spacing_m(width, width, None if math.isnan(able.landing_m) else able.landing_m)
    return movement_time_s(distance, width, intercept_s=line.intercept_s, slope_s_per_bit=line.slope_s_per_bit)
