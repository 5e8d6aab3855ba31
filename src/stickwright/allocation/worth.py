"""What one way of doing an action is worth, in points on the player's own scale of 0 to 10.

An action done is worth its importance. Every cost is taken off under its own name, so that a plan can say what it
trades. The prices of leaving an action to a game option or to somebody else are the player's; the rest are weights of
common practice, no source: they rank plans, and a plan that differs by less than half a point is as good.
"""

from __future__ import annotations

import math
from dataclasses import replace

from stickwright.allocation.pressing import HELD_KINDS
from stickwright.mechanics.demand import FALSE_LIMIT_COSTLY_PER_MIN, FALSE_LIMIT_PER_MIN
from stickwright.mechanics.stand_ins import percent
from stickwright.model.estimate import Estimate
from stickwright.model.game import Action
from stickwright.model.kit import Switch
from stickwright.model.parts import NEEDS_CLEARANCE
from stickwright.model.plan import Fit
from stickwright.model.player import Site
from stickwright.model.rates import rate_words
from stickwright.model.sharing import PressFit, Term
from stickwright.units import figures, minutes_words

__all__ = [
    "BUY_POINTS",
    "CLEARANCE_POINTS",
    "HELPER_POINTS",
    "MIND_POINTS",
    "OPTION_POINTS",
    "PART_POINTS",
    "RULE_POINTS",
    "SETUP_POINTS_PER_MIN",
    "SLOWED_POINTS",
    "SOUND_POINTS",
    "SUITS_POINTS",
    "TOGGLE_POINTS",
    "UNCOUNTED_POINTS",
    "device_terms",
    "fineness",
    "left_terms",
    "press_terms",
    "site_terms",
    "sound_terms",
    "stick_terms",
]  # fmt: skip

PRECISION_SHARE = 0.4
"""Share of an action's importance that precise control can add or take, where the game uses every level."""
GOOD_BITS = 3.0
"""Bits in a direction, about eight steps, beyond which more precision is worth nothing: games are made for about that."""
EFFORT_POINTS = 2.0
"""Of working at the whole comfortable force all the time."""
USUAL_PRESSES_PER_MIN = 30.0
"""Presses in the busy minute that count as working all the time."""
FALSE_POINTS = 0.5
"""Of false input right at the limit."""
ALL_OR_NOTHING_SHARE = 0.2
"""Share of importance lost where a switch gives all or nothing and the game uses what lies between."""
PART_POINTS = 0.2
SETUP_POINTS_PER_MIN = 0.1
CLEARANCE_POINTS = 1.0
"""Of a part for which the treating team's word is still to be had."""
MIND_POINTS = 0.3
"""For each step of 0 to 10 by which the player minds using a part."""
TOGGLE_POINTS = 1.0
OPTION_POINTS = 1.0
HELPER_POINTS = 5.0
"""Prices where the player has not said any."""
SUITS_POINTS = 0.3
"""Of a switch whose size or strength is to be tried at the part."""
SOUND_POINTS = {"silent": 0.0, "soft": 0.3, "click": 1.0, None: 0.5}
"""Of the sound of a switch where quiet is wanted; None where it was not noted."""
UNCOUNTED_POINTS = 1.0
"""Of a whole busy minute of presses at a rate that nobody counted."""
RULE_POINTS = 4.0
"""Of a stick that breaks a rule of practice, where none keeps them all."""
BUY_POINTS = 1.5
"""Of a thing that is not there tonight."""
SLOWED_POINTS = 0.5
"""Share of importance lost where another part's effort halves the press rate, and so on in proportion."""


def fineness(action: Action) -> float:
    """How much of the precision of a stick the game uses: 1 for any level, less for few.

    Parameters
    ----------
    action : Action

    Examples
    --------
    >>> fineness(Action(name="steer", kind="two-axis")), fineness(Action(name="menu", kind="two-axis", levels=4))
    (1.0, 0.5)
    """
    return 1.0 if action.levels is None else min(1.0, max(0.25, math.log2(action.levels) / 4))


def _importance(action: Action) -> Term:
    return Term("importance", float(action.importance), f"worth {action.importance} to the player")


def stick_terms(fit: Fit, action: Action, *, setup_s: float | None = None) -> tuple[Term, ...]:
    """What an action on a stick is worth.

    Parameters
    ----------
    fit : Fit
        The stick as set up at the site, for this action.
    action : Action
    setup_s : float, optional
        Time to set the stick up each day.
    """
    bits = fit.bits.value if fit.bits.value is not None else 0.0
    lost = PRECISION_SHARE * action.importance * fineness(action) * (1 - min(bits, GOOD_BITS) / GOOD_BITS)
    effort = fit.effort_share.value if fit.effort_share.value is not None else 1.0
    out = [
        _importance(action),
        Term("precision", -lost, f"{figures(bits)} bits in a direction", _precision_basis(action, bits)),
        Term(
            "effort", -EFFORT_POINTS * min(effort, 1.5) * action.duty_share,
            f"{percent(effort)} of the comfortable force, {percent(action.duty_share)} of the time",
            f"{EFFORT_POINTS:g} × {min(effort, 1.5):.2f} × {action.duty_share:.2f}",
        ),
        _false_term(fit.false_per_min, _false_limit(action), "false input", "false inputs"),
    ]  # fmt: skip
    if fit.verdict == "does not fit":
        out.append(Term("rule broken", -RULE_POINTS, fit.fails[0] if fit.fails else fit.limit))
    return (*out, *device_terms(setup_s))


def _precision_basis(action: Action, bits: float) -> str:
    levels = "" if action.levels is None else f" × {fineness(action):.2f} for {action.levels} levels"
    short = 1 - min(bits, GOOD_BITS) / GOOD_BITS
    return f"{PRECISION_SHARE:g} × {action.importance:g}{levels} × {short:.2f} short of {GOOD_BITS:g} bits"


def _press_basis(press: PressFit, effort: float, use: float) -> str:
    presses = min(1.0, press.presses_per_min / USUAL_PRESSES_PER_MIN)
    told = (
        f"{use:.2f} of the time"
        if use > presses
        else f"{use:.2f}, {figures(press.presses_per_min)} of {USUAL_PRESSES_PER_MIN:g} presses a minute"
    )
    return f"{EFFORT_POINTS:g} × {effort:.2f} × {told}"


def press_terms(press: PressFit, action: Action, *, toggle: bool) -> tuple[Term, ...]:
    """What an action on a switch or a controller's button is worth.

    Parameters
    ----------
    press : PressFit
    action : Action
    toggle : bool
        One press starts, one stops.
    """
    held = action.kind in HELD_KINDS and not toggle
    use = action.duty_share if held and "duty_share" in action.model_fields_set else 0.0
    use = max(use, min(1.0, press.presses_per_min / USUAL_PRESSES_PER_MIN))
    effort = 1.0 if press.effort_share is None else press.effort_share
    needs = f"{percent(effort)} of the comfortable force for a press" if press.force_n > 0 else "no force"
    out = [_importance(action), Term("effort", -EFFORT_POINTS * effort * use, needs, _press_basis(press, effort, use))]
    if any(one.rule == "clear" for one in press.doubts):
        untried = "whether the part can rest clear of it was not tried"
        out.append(Term("false presses", -FALSE_POINTS, untried))
    else:
        out.append(_unintended_term(press))
    if math.isfinite(press.hit_share) and press.hit_share < 0.995:
        missed = 1 - press.hit_share
        usual = "" if press.wanted_face_m is not None else " (assumed)"
        basis = f"{action.importance:g} × {missed:.3f}"
        out.append(Term("misses", -action.importance * missed, f"{percent(missed)} of presses miss{usual}", basis))
    unread_s = press.presses_per_min * max(
        0.0, press.cycle_s - (press.cycle_s if press.sure_cycle_s is None else press.sure_cycle_s)
    )
    if math.isfinite(unread_s) and unread_s > 0:
        words = f"{unread_s:.0f} s of the busy minute (assumed)"
        out.append(Term("busy", -UNCOUNTED_POINTS * min(1.0, unread_s / 60), words))
    if action.kind == "trigger" and (action.levels is None or action.levels > 2):
        out.append(Term("precision", -ALL_OR_NOTHING_SHARE * action.importance, "a switch gives all or nothing"))
    to_try = [one.text for one in press.doubts if one.rule in ("size", "strength")]
    if to_try:
        out.append(Term("suits", -SUITS_POINTS * len(to_try), f"to be tried: {to_try[0]}"))
    if toggle:
        price = TOGGLE_POINTS if action.toggle_price is None else action.toggle_price
        out.append(Term("toggle", -price, action.toggle or "a press to start, a press to stop"))
    return tuple(out)


def left_terms(action: Action, how: str, *, price: float, words: str) -> tuple[Term, ...]:
    """What an action left to the game, to somebody else, or left out is worth.

    Parameters
    ----------
    action : Action
    how : str
        'option', 'helper' or 'dropped'.
    price : float
        The player's, 0 to 10.
    words : str
        Said beside it.
    """
    if how == "dropped":
        return (Term("dropped", -price, words),)
    return (_importance(action), Term(how, -price, words))


def device_terms(setup_s: float | None) -> tuple[Term, ...]:
    """What one device more costs.

    Parameters
    ----------
    setup_s : float or None
        Time to set it up each day.
    """
    part = Term("part", -PART_POINTS, "one device more")
    if not setup_s:
        return (part,)
    return (part, Term("set-up", -SETUP_POINTS_PER_MIN * setup_s / 60, f"{minutes_words(setup_s)} to set up"))


def sound_terms(switch: Switch, *, quiet: bool) -> tuple[Term, ...]:
    """What the sound of a switch costs where quiet is wanted.

    Parameters
    ----------
    switch : Switch
    quiet : bool
        Whether the player wants switches to be quiet.
    """
    price = SOUND_POINTS[switch.sound]
    if not quiet or not price:
        return ()
    heard = {"soft": "is heard softly", "click": "clicks", None: "may be heard: its sound is not recorded (assumed)"}
    return (Term("sound", -price, f"{switch.name} {heard[switch.sound]}, and quiet is wanted"),)


def site_terms(site: Site) -> tuple[Term, ...]:
    """What it costs to use a site at all, whatever it does.

    Parameters
    ----------
    site : Site
    """
    out = []
    if site.setup_s:
        words = f"{minutes_words(site.setup_s)} to set up"
        out.append(Term("set-up", -SETUP_POINTS_PER_MIN * site.setup_s / 60, words))
    if site.minds:
        out.append(Term("mind", -MIND_POINTS * site.minds, f"the player minds using it, {site.minds:g} of 10"))
    if site.part in NEEDS_CLEARANCE and site.cleared != "yes":
        out.append(Term("clearance", -CLEARANCE_POINTS, "the treating team has still to agree"))
    return tuple(replace(one, words=f"{site.name}: {one.words}") for one in out)


def _false_limit(action: Action) -> float:
    return FALSE_LIMIT_COSTLY_PER_MIN if action.false_input_costly else FALSE_LIMIT_PER_MIN


def _unintended_term(press: PressFit) -> Term:
    """What unintended presses cost, as expected over the range of what is assumed."""
    usual = " (in part assumed)" if press.doubts or press.assumed else ""
    if press.false_per_min > 60:
        return Term(
            "false presses", -FALSE_POINTS * press.unintended_share, f"false presses nearly all the time{usual}"
        )
    words = rate_words(press.false_estimate, "false press", "false presses") + usual
    return Term("false presses", -FALSE_POINTS * press.unintended_share, words)


def _false_term(rate: Estimate, limit: float, what: str, many: str) -> Term:
    if rate.value is None or rate.value > 60:
        return Term("false presses", -4 * FALSE_POINTS, f"{many} nearly all the time")
    times = min(4.0, rate.value / limit)
    basis = f"{FALSE_POINTS:g} × {times:.2f} of the limit of {limit:g} a minute"
    return Term("false presses", -FALSE_POINTS * times, rate_words(rate, what, many), basis)
