"""One switch, or one button of a controller, under one part, for one action: does it fit, and why not.

A rule is broken only by what was read. One that is broken at figures nobody measured is a doubt: the switch stays in, pays
for it, and carries what is to be measured.
"""

from __future__ import annotations

import math
from collections.abc import Collection
from dataclasses import dataclass, field

import numpy as np

from stickwright.allocation.moving import CATCHES_95_SDS, line_of, movement_time_s, spacing_m
from stickwright.allocation.press_ability import PressAbility, can_press, press_ability, press_assumptions
from stickwright.allocation.press_scatter import most_crossings_per_min, most_spasms_per_min
from stickwright.allocation.pressed import (
    BUDGET_SHARE,
    FREQUENT_EFFORT_SHARE,
    FREQUENT_PER_MIN,
    HELD_KINDS,
    HOLD_SHARE,
    INVOLUNTARY_SDS,
    LEAST_HIT_SHARE,
    MOST_COUNTED,
    OVER,
    PRESSED_KINDS,
    RARE_EFFORT_SHARE,
    REST_FACTOR,
    SLIGHT_SWITCH_SHARE,
    SUSTAINED_SHARE,
    UNKNOWN_HIT_SHARE,
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
from stickwright.mechanics.suiting import face_size_m, outside
from stickwright.mechanics.unread import LEAST_STRONG_SHARE, Figure, Rule, confirm_words
from stickwright.mechanics.usual_forces import USUAL_FACTORS
from stickwright.model.game import Action
from stickwright.model.parts import SIZES
from stickwright.model.plan import Assumption, Doubt
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
    _rest_and_travel(pressed, able, said)
    unintended, most, expected = _unintended(site, pressed, action, able, player_spasms_per_s, said)
    _suits(site, pressed, able, said)
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
        false_per_min=unintended,
        most_false_per_min=most,
        cycle_s=cycle,
        move_s=_move(site, pressed, able, said),
        wanted_face_m=CATCHES_95_SDS * able.landing_m if able.landing_taken else math.nan,
        fails=tuple(said.fails),
        notes=(*said.notes, *(one.sentence for one in said.doubts if not said.fails)),
        doubts=() if said.fails else tuple(said.doubts),
        unintended_share=expected,
        sure_cycle_s=able.sure_cycle_s / (1 - slowed_share) if slowed_share < 1 else math.inf,
        assumed=tuple(
            [f"{one.what}: {one.value} ({one.why})" for one in _stand_ins(able, pressed)]
            + [one for one in (pressed.assumed, uncounted) if one is not None]
            + said.assumed
        ),
    )


TO_TRY: frozenset[Figure] = frozenset({"size"})
NOBODY_COUNTED = "for a press that nobody counted"


@dataclass
class _Said:
    """What the rules have to say so far."""

    fails: list[str] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    assumed: list[str] = field(default_factory=list)
    doubts: list[Doubt] = field(default_factory=list)

    def broken(self, rule: Rule, text: str, assumed: Collection[Figure]) -> None:
        """A rule is broken: a refusal when it hangs on nothing assumed, else a doubt, one for each rule."""
        if assumed and any(one.rule == rule for one in self.doubts):
            return
        if assumed:
            self.doubts.append(Doubt(rule, confirm_words(rule, assumed), text))
        else:
            self.fails.append(text)


def _stand_ins(able: PressAbility, pressed: Pressed) -> tuple[Assumption, ...]:
    told = able.time_assumptions + able.place_assumptions
    return told if pressed.proximity else able.force_assumptions + told


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
    return NOBODY_COUNTED if nobody_counted else None


def _effort(pressed: Pressed, able: PressAbility, often: str | None, said: _Said) -> tuple[float, float]:
    """Operating force over comfortable force, and its limit."""
    limit = FREQUENT_EFFORT_SHARE if often else RARE_EFFORT_SHARE
    if math.isnan(pressed.force_n):
        said.fails.append(f"nobody put {pressed.name} on the gauge, so what it takes is not known")
        return math.nan, limit
    if pressed.force_n == 0:
        return 0.0, limit
    comfortable = able.comfortable_n.number
    share = pressed.force_n / comfortable if comfortable > 0 else math.inf
    if share > limit * OVER:
        needs = f"needs {spoken(pressed.force_n, 'n')}"
        usual = "" if able.comfortable_n.assumed is None else " (assumed)"
        most = "half" if often else percent(RARE_EFFORT_SHARE)
        words = "more than all" if share > 1 else _over(share, limit)
        text = (
            f"{needs}, {words} of the comfortable {spoken(comfortable, 'n')}{usual}: more than {most} "
            f"{often or 'for a rare press'}"
        )
        assumed: set[Figure] = set()
        if able.comfortable_n.assumed is not None:
            assumed.add("press force")
        if pressed.assumed is not None:
            assumed.add("button")
        if often == NOBODY_COUNTED and share <= RARE_EFFORT_SHARE * OVER:
            assumed.add("count")
        said.broken("press force", text, assumed)
    return share, limit


def _over(share: float, limit: float) -> str:
    """A share above its limit, never printed as the limit itself."""
    return percent(share) if percent(share) != percent(limit) else f"just over {percent(limit)}"


def _rest_and_travel(pressed: Pressed, able: PressAbility, said: _Said) -> None:
    if pressed.proximity:
        _clear_of(pressed, able, said)
        return
    shaken, resting = INVOLUNTARY_SDS * able.involuntary_n, REST_FACTOR * able.rest_n
    known = (resting if able.rest_taken else 0.0) + (shaken if able.involuntary_taken else 0.0)
    wanted = resting + shaken
    if not math.isnan(pressed.force_n) and pressed.force_n * OVER < wanted:
        assumed = _unread(able, pressed) if pressed.force_n * OVER >= known else set()
        marks = ("" if able.rest_taken else " (assumed)", "" if able.involuntary_taken else " (assumed)")
        text = (
            f"takes {spoken(pressed.force_n, 'n')}; resting there brings {spoken(able.rest_n, 'n')}{marks[0]}, with "
            f"{spoken(able.involuntary_n, 'n')} rms of involuntary force{marks[1]}: {spoken(wanted, 'n')} or more keeps the "
            "part from pressing it by itself"
        )
        said.broken("press unintended", text, assumed)
    if math.isnan(pressed.travel_m) or pressed.travel_m <= 0:
        return
    if pressed.travel_m > able.travel_m * OVER:
        said.fails.append(
            f"must be pushed in {spoken(pressed.travel_m, 'mm')}, and the part pushes {spoken(able.travel_m, 'mm')}"
        )
    elif math.isnan(able.travel_m):
        said.notes.append(f"whether the part pushes in {spoken(pressed.travel_m, 'mm')} was not tried")


def _unread(able: PressAbility, pressed: Pressed) -> set[Figure]:
    """What was assumed of how a part rests on what is pressed."""
    out: set[Figure] = set()
    if not able.rest_taken:
        out.add("weight")
    if not able.involuntary_taken:
        out |= {"press steadiness", "frequency"}
    if pressed.assumed is not None:
        out.add("button")
    return out


def _clear_of(pressed: Pressed, able: PressAbility, said: _Said) -> None:
    """A proximity switch: the part must rest clear of it."""
    if pressed.senses_at_m is None:
        said.fails.append(
            "at what distance it senses is not known, so nobody can say whether the part can rest clear of it: measure it"
        )
    elif math.isnan(able.travel_m):
        said.broken(
            "clear",
            f"it senses at {spoken(pressed.senses_at_m, 'mm')}, and how far the part moves is not known",
            {"clear"},
        )
    elif able.travel_m * OVER < pressed.senses_at_m:
        said.fails.append(
            f"it senses at {spoken(pressed.senses_at_m, 'mm')} and the part moves {spoken(able.travel_m, 'mm')}: it "
            "cannot rest clear of it"
        )


def _suits(site: Site, pressed: Pressed, able: PressAbility, said: _Said) -> None:
    """Whether size and strength of a switch suit the part; a controller's button is within reach as the player's file says."""
    if pressed.proximity or pressed.button:
        return
    size, least = face_size_m(pressed.face_m), SIZES[site.part].face_m
    off, plain = outside(size, least, math.inf)
    if off:
        text = f"too small for a {site.part}: {spoken(size, 'mm')} across, {spoken(least, 'mm')} or more is usual (common practice)"
        said.broken("size", text, frozenset() if plain else TO_TRY)
    comfortable = able.comfortable_n
    if comfortable.assumed is None and pressed.force_n < SLIGHT_SWITCH_SHARE * comfortable.number:
        text = (
            f"too slight for a {site.part} that presses with {spoken(comfortable.number, 'n')}: it takes "
            f"{spoken(pressed.force_n, 'n')}, and may break"
        )
        said.broken("strength", text, TO_TRY)


def _landing(pressed: Pressed, able: PressAbility, said: _Said) -> float:
    share = hit_share(pressed.face_m, able.landing_m)
    if math.isnan(share):
        said.assumed.append(
            f"size of {pressed.name}: {percent(UNKNOWN_HIT_SHARE)} of presses land on it (not measured)"
        )
        return UNKNOWN_HIT_SHARE
    if not share < WANTED_HIT_SHARE:
        return share
    face = " x ".join(figures(1000 * side) for side in pressed.face_m)
    few = share * OVER < LEAST_HIT_SHARE
    usual = "" if able.landing_taken else " (assumed)"
    lands = (
        f"{_under(share) if few else percent(share)} of presses land on {face} mm, with {spoken(able.landing_m, 'mm')} of "
        f"scatter{usual}; {spoken(CATCHES_95_SDS * able.landing_m, 'mm')} would catch 95 of 100"
    )
    if few:
        unread: set[Figure] = set() if able.landing_taken else {"landing"}
        said.broken("landing", f"{lands}, and {percent(LEAST_HIT_SHARE)} is the least", unread)
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


def _unintended(
    site: Site,
    pressed: Pressed,
    action: Action,
    able: PressAbility,
    player_spasms_per_s: float | None,
    said: _Said,
) -> tuple[float, float | None, float]:
    """Unintended presses a minute at the figures read or assumed, their upper end, and what they cost over the range of those
    assumed, in limits (`PressFit.unintended_share`): unsteadiness about the resting force, and spasms."""
    limit = FALSE_LIMIT_COSTLY_PER_MIN if action.false_input_costly else FALSE_LIMIT_PER_MIN
    spasms, sure_spasms, words = _spasms_per_min(site, pressed, player_spasms_per_s, said)
    pressing = not pressed.proximity and not math.isnan(pressed.force_n)
    at_usual = _unsteady_per_min(pressed, able, 1.0) if pressing else 0.0
    factors = USUAL_FACTORS if pressing and not (able.rest_taken and able.involuntary_taken) else (1.0,)
    rates = [_unsteady_per_min(pressed, able, factor) if pressing else 0.0 for factor in factors]
    expected = math.fsum(min(MOST_COUNTED, (rate + spasms) / limit) for rate in rates) / len(rates)
    sure = (_sure_per_min(pressed, able) if pressing else 0.0) + sure_spasms
    costly = ", where a false one is costly" if action.false_input_costly else ""
    allowed = f"{times(limit)} a minute allowed{costly}"
    told, doubted = (sure, False) if sure > limit * OVER else (min(ALWAYS, at_usual + spasms), True)
    if told > limit * OVER:
        if told >= ALWAYS:
            text = f"would be on by itself: involuntary force keeps passing its {spoken(pressed.force_n, 'n')}"
        else:
            by_spasms = spasms > 0 and told - spasms <= spasms
            why = words if by_spasms else "by involuntary force"
            text = f"would go off by itself {times(told)} times a minute, {why}; {allowed}"
        unread: set[Figure] = set()
        if doubted:
            unread = _unread(able, pressed) if pressing else set()
            if spasms > sure_spasms:
                unread.add("spasms")
        said.broken("press unintended", text, unread)
    most = most_spasms_per_min(site, pressed.force_n, player_spasms_per_s, proximity=pressed.proximity)
    if pressing and most is not None:
        most = min(ALWAYS, most + _most_unsteady_per_min(pressed, able))
    return min(ALWAYS, at_usual + spasms), None if math.isnan(pressed.force_n) else most, expected


def _unsteady_per_min(pressed: Pressed, able: PressAbility, factor: float) -> float:
    """Presses a minute by unsteadiness, with what is assumed so many times its usual figure."""
    rest = able.rest_n * (1.0 if able.rest_taken else factor)
    shaken = able.involuntary_n * (1.0 if able.involuntary_taken else factor)
    rate = crossings_per_min(pressed.force_n, rest, shaken, able.crossing_hz)
    if able.rest_taken and (able.involuntary_taken or able.rest_n >= pressed.force_n):
        return rate
    return min(rate, 60 * able.crossing_hz)  # what is assumed does not keep a switch pressed for good


def _most_unsteady_per_min(pressed: Pressed, able: PressAbility) -> float:
    """Upper end of the same, by the scatter of what was read and of what is assumed."""
    rests = [able.rest_n * factor for factor in able.rest_factors]
    shaken = [able.involuntary_n * factor for factor in able.involuntary_factors]
    return most_crossings_per_min(pressed.force_n, rests, shaken, able.crossing_hz)


def _sure_per_min(pressed: Pressed, able: PressAbility) -> float:
    """The same by what was read alone."""
    rest = able.rest_n if able.rest_taken else 0.0
    if not able.involuntary_taken:
        return ALWAYS if rest > 0 and rest >= pressed.force_n else 0.0
    return crossings_per_min(pressed.force_n, rest, able.involuntary_n, able.crossing_hz)


def _spasms_per_min(
    site: Site, pressed: Pressed, player_spasms_per_s: float | None, said: _Said
) -> tuple[float, float, str]:
    """Spasms a minute in which it goes off, those that are sure, and that in words: as tried, else by their strength."""
    tried = None if site.press is None else site.press.fires_with_spasm_share
    rate = player_spasms_per_s if site.spasm is None else site.spasm.rate_per_s
    if tried is not None:
        if rate is None:
            said.notes.append(f"it goes off in {percent(tried)} of spasms, and nobody counted the spasms")
            return 0.0, 0.0, ""
        return 60 * rate * tried, 60 * rate * tried, f"with {percent(tried)} of {times(60 * rate)} spasms a minute"
    if site.spasm is None:
        if rate:
            said.notes.append(
                f"spasms come {times(60 * rate)} times a minute; whether it goes off with them was not tried"
            )
        return 0.0, 0.0, ""
    if not site.spasm.peak_n and not pressed.proximity:
        said.notes.append("spasms were noted without their force, so those that would press it are not counted")
        return 0.0, 0.0, ""
    if math.isnan(pressed.force_n):
        return 0.0, 0.0, ""
    per_min = 60 * site.spasm.rate_per_s
    fires = per_min
    if not pressed.proximity:
        fires = float(spasms_above_per_min(np.array(pressed.force_n), per_min, site.spasm.peak_n))
    if fires > 0:
        said.assumed.append(
            f"spasms at {site.name}: it goes off in {percent(fires / per_min)} of them (by their force: not tried)"
        )
    guessed = pressed.proximity or len(site.spasm.peak_n) == 1
    sure = LEAST_STRONG_SHARE * fires if guessed else fires
    return fires, sure, f"with {times(fires)} of {times(per_min)} spasms a minute, by their force"


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
        distance = spacing_m(width, width, able.landing_m if able.landing_taken else None)
    return movement_time_s(distance, width, intercept_s=line.intercept_s, slope_s_per_bit=line.slope_s_per_bit)
