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
)
from stickwright.codes.message import Message, Name, message
from stickwright.codes.presses import Often, Presses
from stickwright.mechanics.demand import FALSE_LIMIT_COSTLY_PER_MIN, FALSE_LIMIT_PER_MIN
from stickwright.mechanics.fit import ALWAYS, spasms_above_per_min
from stickwright.mechanics.suiting import face_size_m, outside
from stickwright.mechanics.unread import LEAST_STRONG_SHARE, Figure, Rule, to_confirm
from stickwright.mechanics.usual_forces import USUAL_FACTORS
from stickwright.model.fit import Assumption, Doubt
from stickwright.model.game import Action
from stickwright.model.parts import SIZES
from stickwright.model.player import Site
from stickwright.model.sharing import PressFit

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
        Part of the press rate lost because another site acts at the same time.
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
            [
                message(Presses.assumption, what=one.what, value=one.value, why=one.why)
                for one in _stand_ins(able, pressed)
            ]
            + [one for one in (pressed.assumed, uncounted) if one is not None]
            + said.assumed
        ),
    )


TO_TRY: frozenset[Figure] = frozenset({"size"})


@dataclass
class _Said:
    """What the rules have to say so far."""

    fails: list[Message] = field(default_factory=list)
    notes: list[Message] = field(default_factory=list)
    assumed: list[Message] = field(default_factory=list)
    doubts: list[Doubt] = field(default_factory=list)

    def broken(self, rule: Rule, text: Message, assumed: Collection[Figure]) -> None:
        """A rule is broken: a refusal when it hangs on nothing assumed, else a doubt, one for each rule."""
        if assumed and any(one.rule == rule for one in self.doubts):
            return
        if assumed:
            self.doubts.append(Doubt(rule, to_confirm(rule, assumed), text))
        else:
            self.fails.append(text)


def _stand_ins(able: PressAbility, pressed: Pressed) -> tuple[Assumption, ...]:
    told = able.time_assumptions + able.place_assumptions
    return told if pressed.proximity else able.force_assumptions + told


def _kind(action: Action, said: _Said) -> None:
    name = Name(action.name)
    if action.kind in ("two-axis", "one-axis"):
        said.fails.append(message(Presses.needs_stick, action=name, axes=2 if action.kind == "two-axis" else 1))
    elif action.kind == "chord":
        said.fails.append(message(Presses.chord, action=name))
    elif action.kind == "trigger" and (action.levels is None or action.levels > 2):
        said.notes.append(message(Presses.all_or_nothing, action=name, levels=action.levels))


def _often(action: Action, count_per_min: float, uncounted: Message | None, toggle: bool) -> Often:
    """Why the stricter limit of effort holds; "rare" where it does not."""
    if action.kind == "repeat":
        return "repeated"
    if action.kind in HELD_KINDS and not toggle:
        return "held"
    if count_per_min > FREQUENT_PER_MIN:
        return "frequent"
    nobody_counted = uncounted is not None and action.presses_per_s is None
    return "uncounted" if nobody_counted else "rare"


def _effort(pressed: Pressed, able: PressAbility, often: Often, said: _Said) -> tuple[float, float]:
    """Operating force over comfortable force, and its limit."""
    limit = RARE_EFFORT_SHARE if often == "rare" else FREQUENT_EFFORT_SHARE
    if math.isnan(pressed.force_n):
        said.fails.append(message(Presses.not_benched, pressed=pressed.name))
        return math.nan, limit
    if pressed.force_n == 0:
        return 0.0, limit
    comfortable = able.comfortable_n.number
    share = pressed.force_n / comfortable if comfortable > 0 else math.inf
    if share > limit * OVER:
        text = message(
            Presses.too_heavy,
            force_n=pressed.force_n,
            effort_share=share if math.isfinite(share) else None,
            comfortable_n=comfortable,
            assumed=able.comfortable_n.assumed is not None,
            limit_share=limit,
            often=often,
        )
        assumed: set[Figure] = set()
        if able.comfortable_n.assumed is not None:
            assumed.add("press force")
        if pressed.assumed is not None:
            assumed.add("button")
        if often == "uncounted" and share <= RARE_EFFORT_SHARE * OVER:
            assumed.add("count")
        said.broken("press force", text, assumed)
    return share, limit


def _rest_and_travel(pressed: Pressed, able: PressAbility, said: _Said) -> None:
    if pressed.proximity:
        _clear_of(pressed, able, said)
        return
    shaken, resting = INVOLUNTARY_SDS * able.involuntary_n, REST_FACTOR * able.rest_n
    known = (resting if able.rest_taken else 0.0) + (shaken if able.involuntary_taken else 0.0)
    wanted = resting + shaken
    if not math.isnan(pressed.force_n) and pressed.force_n * OVER < wanted:
        assumed = _unread(able, pressed) if pressed.force_n * OVER >= known else set()
        text = message(
            Presses.resting_presses,
            force_n=pressed.force_n,
            rest_n=able.rest_n,
            rest_assumed=not able.rest_taken,
            involuntary_n=able.involuntary_n,
            involuntary_assumed=not able.involuntary_taken,
            wanted_n=wanted,
        )
        said.broken("press unintended", text, assumed)
    if math.isnan(pressed.travel_m) or pressed.travel_m <= 0:
        return
    if pressed.travel_m > able.travel_m * OVER:
        said.fails.append(message(Presses.travel_short, travel_m=pressed.travel_m, able_m=able.travel_m))
    elif math.isnan(able.travel_m):
        said.notes.append(message(Presses.travel_untried, travel_m=pressed.travel_m))


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
        said.fails.append(message(Presses.senses_unknown))
    elif math.isnan(able.travel_m):
        said.broken("clear", message(Presses.clear_unknown, senses_m=pressed.senses_at_m), {"clear"})
    elif able.travel_m * OVER < pressed.senses_at_m:
        said.fails.append(message(Presses.not_clear, senses_m=pressed.senses_at_m, able_m=able.travel_m))


def _suits(site: Site, pressed: Pressed, able: PressAbility, said: _Said) -> None:
    """Whether size and strength of a switch suit the part; a controller's button is within reach as the player's file says."""
    if pressed.proximity or pressed.button:
        return
    size, least = face_size_m(pressed.face_m), SIZES[site.part].face_m
    off, plain = outside(size, least, math.inf)
    if off:
        text = message(Presses.too_small, part=site.part, size_m=size, least_m=least)
        said.broken("size", text, frozenset() if plain else TO_TRY)
    comfortable = able.comfortable_n
    if comfortable.assumed is None and pressed.force_n < SLIGHT_SWITCH_SHARE * comfortable.number:
        text = message(Presses.too_slight, part=site.part, comfortable_n=comfortable.number, force_n=pressed.force_n)
        said.broken("strength", text, TO_TRY)


def _landing(pressed: Pressed, able: PressAbility, said: _Said) -> float:
    share = hit_share(pressed.face_m, able.landing_m)
    if math.isnan(share):
        said.assumed.append(message(Presses.size_assumed, pressed=pressed.name, hit_share=UNKNOWN_HIT_SHARE))
        return UNKNOWN_HIT_SHARE
    if not share < WANTED_HIT_SHARE:
        return share
    few = share * OVER < LEAST_HIT_SHARE
    lands = message(
        Presses.lands,
        hit_share=share,
        face_m=tuple(pressed.face_m),
        landing_m=able.landing_m,
        assumed=not able.landing_taken,
        wanted_m=CATCHES_95_SDS * able.landing_m,
        least_share=LEAST_HIT_SHARE if few else None,
    )
    if few:
        unread: set[Figure] = set() if able.landing_taken else {"landing"}
        said.broken("landing", lands, unread)
    else:
        said.notes.append(lands)
    return share


def _rate(count_per_min: float, sustained_per_min: float, able: PressAbility, slowed_share: float, said: _Said) -> None:
    if math.isnan(sustained_per_min):
        said.notes.append(message(Presses.uncounted_rate, count_per_min=count_per_min))
        busy_s = count_per_min * able.release_s
        if busy_s > BUDGET_SHARE * 60 * OVER:
            said.fails.append(
                message(
                    Presses.release_fills,
                    count_per_min=count_per_min,
                    release_s=able.release_s,
                    busy_s=busy_s,
                    most_share=BUDGET_SHARE,
                )
            )
    elif count_per_min > sustained_per_min * OVER:
        by_release = able.cycle_s * able.rate_per_s > OVER  # letting go slows the cycle further
        said.fails.append(
            message(
                Presses.too_many,
                count_per_min=count_per_min,
                sustained_per_min=sustained_per_min,
                slowed_share=slowed_share,
                fastest_per_s=able.rate_per_s,
                release_s=able.release_s if by_release else None,
            )
        )
    if able.slowest_release_s > able.cycle_s:
        said.notes.append(message(Presses.slow_release, release_s=able.slowest_release_s))


def _hold(action: Action, held_s: float | None, able: PressAbility, toggle: bool, said: _Said) -> None:
    if held_s is None:
        if action.kind in HELD_KINDS and not toggle:
            said.notes.append(message(Presses.hold_unsaid, action=Name(action.name)))
        return
    if held_s <= 0:
        return
    if math.isnan(able.hold_s):
        said.notes.append(message(Presses.hold_untaken, held_s=held_s))
    elif held_s > HOLD_SHARE * able.hold_s * OVER:
        said.fails.append(
            message(
                Presses.hold_too_long,
                held_s=held_s,
                held_share=held_s / max(able.hold_s, 1e-9),
                limit_share=HOLD_SHARE,
                able_s=able.hold_s,
                toggle=bool(action.toggle),
            )
        )


def _reaction(action: Action, able: PressAbility, wait_s: float, said: _Said) -> None:
    if action.reaction_s is None or action.kind not in PRESSED_KINDS:
        return
    name = Name(action.name)
    if math.isnan(able.reaction_s):
        said.notes.append(message(Presses.reaction_untaken, action=name, given_s=action.reaction_s))
    elif able.reaction_s + wait_s > action.reaction_s * OVER:
        said.fails.append(
            message(
                Presses.too_late,
                action=name,
                given_s=action.reaction_s,
                reaction_s=able.reaction_s,
                wait_s=wait_s,
            )
        )


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
    told, doubted = (sure, False) if sure > limit * OVER else (min(ALWAYS, at_usual + spasms), True)
    if told > limit * OVER:
        if told >= ALWAYS:
            text = message(Presses.always_on, force_n=pressed.force_n)
        else:
            by_spasms = spasms > 0 and told - spasms <= spasms
            cause = words if by_spasms and words is not None else message(Presses.by_involuntary)
            text = message(
                Presses.goes_off,
                rate_per_min=told,
                cause=cause,
                limit_per_min=limit,
                costly=bool(action.false_input_costly),
            )
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
) -> tuple[float, float, Message | None]:
    """Spasms a minute in which it goes off, those that are sure, and how that is known: as tried, else by their strength."""
    tried = None if site.press is None else site.press.fires_with_spasm_share
    rate = player_spasms_per_s if site.spasm is None else site.spasm.rate_per_s
    if tried is not None:
        if rate is None:
            said.notes.append(message(Presses.spasms_uncounted, fires_share=tried))
            return 0.0, 0.0, None
        cause = message(Presses.by_spasms, fires_share=tried, spasms_per_min=60 * rate, how="tried")
        return 60 * rate * tried, 60 * rate * tried, cause
    if site.spasm is None:
        if rate:
            said.notes.append(message(Presses.spasms_untried, spasms_per_min=60 * rate))
        return 0.0, 0.0, None
    if not site.spasm.peak_n and not pressed.proximity:
        said.notes.append(message(Presses.spasms_no_force))
        return 0.0, 0.0, None
    if math.isnan(pressed.force_n):
        return 0.0, 0.0, None
    per_min = 60 * site.spasm.rate_per_s
    fires = per_min
    if not pressed.proximity:
        fires = float(spasms_above_per_min(np.array(pressed.force_n), per_min, site.spasm.peak_n))
    if fires > 0:
        said.assumed.append(message(Presses.spasms_assumed, site=Name(site.name), fires_share=fires / per_min))
    guessed = pressed.proximity or len(site.spasm.peak_n) == 1
    sure = LEAST_STRONG_SHARE * fires if guessed else fires
    share = fires / per_min if per_min > 0 else 0.0
    return fires, sure, message(Presses.by_spasms, fires_share=share, spasms_per_min=per_min, how="by_force")


def _move(site: Site, pressed: Pressed, able: PressAbility, said: _Said) -> float:
    """Time from a second switch like it at the same part, s."""
    line, name = line_of(site.press), Name(site.name)
    if line.assumed is not None:
        said.assumed.append(message(Presses.moving_assumed, site=name, why=line.assumed))
    width = min(pressed.face_m, default=0.0)
    if width <= 0:
        said.assumed.append(message(Presses.spacing_assumed, site=name))
        width = distance = 1.0
    else:
        distance = spacing_m(width, width, able.landing_m if able.landing_taken else None)
    return movement_time_s(distance, width, intercept_s=line.intercept_s, slope_s_per_bit=line.slope_s_per_bit)
