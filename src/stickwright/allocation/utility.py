"""What one way of doing an action is worth, in points on the player's own scale of 0 to 10.

An action done is worth its importance. Every cost is taken off under its own name, so that a plan can say what it
trades. The prices of leaving an action to a game option or to somebody else are the player's; the rest are weights of
common practice, no source: they rank plans, and a plan that differs by less than half a point is as good.
"""

from __future__ import annotations

import math
from typing import Literal

from stickwright.allocation.pressing import HELD_KINDS
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.scores import Scores
from stickwright.mechanics.demand import FALSE_LIMIT_COSTLY_PER_MIN, FALSE_LIMIT_PER_MIN
from stickwright.model.fit import Fit
from stickwright.model.game import Action
from stickwright.model.kit import Switch
from stickwright.model.parts import NEEDS_CLEARANCE
from stickwright.model.player import Site
from stickwright.model.sharing import PressFit, Term

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
    "Left",
    "device_terms",
    "fineness",
    "importance_term",
    "left_terms",
    "press_terms",
    "site_terms",
    "sound_terms",
    "stick_terms",
]  # fmt: skip

Left = Literal["option", "helper", "dropped"]
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
"""Of a part to which the treating team has still to agree."""
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

    Examples
    --------
    >>> fineness(Action(name="steer", kind="two-axis")), fineness(Action(name="menu", kind="two-axis", levels=4))
    (1.0, 0.5)
    """
    return 1.0 if action.levels is None else min(1.0, max(0.25, math.log2(action.levels) / 4))


def importance_term(action: Action) -> Term:
    """What an action is worth to the player, done in whatever way."""
    importance = float(action.importance)
    return Term("importance", importance, message(Scores.importance, importance_points=importance))


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
    duty, counted = action.duty_share, min(effort, 1.5)
    out = [
        importance_term(action),
        Term("precision", -lost, message(Scores.precision, precision_bits=bits), _precision_basis(action, bits)),
        Term(
            "effort", -EFFORT_POINTS * counted * duty,
            message(Scores.stick_effort, effort_share=effort, duty_share=duty),
            message(Scores.stick_effort_basis, weight_points=EFFORT_POINTS, effort_share=counted, duty_share=duty),
        ),
        _false_term(fit.false_per_min, _false_limit(action)),
    ]  # fmt: skip
    if fit.verdict == "does not fit":
        out.append(Term("rule_broken", -RULE_POINTS, fit.fails[0] if fit.fails else fit.limit))
    return (*out, *device_terms(setup_s))


def _precision_basis(action: Action, bits: float) -> Message:
    return message(
        Scores.precision_basis,
        weight_share=PRECISION_SHARE,
        importance_points=float(action.importance),
        levels=action.levels,
        fineness_share=fineness(action),
        short_share=1 - min(bits, GOOD_BITS) / GOOD_BITS,
        good_bits=GOOD_BITS,
    )


def _press_basis(press: PressFit, effort: float, use: float) -> Message:
    by_time = use > min(1.0, press.presses_per_min / USUAL_PRESSES_PER_MIN)
    return message(
        Scores.press_effort_basis,
        weight_points=EFFORT_POINTS,
        effort_share=effort,
        use_share=use,
        count_per_min=None if by_time else press.presses_per_min,
        whole_per_min=USUAL_PRESSES_PER_MIN,
    )


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
    needs = message(Scores.press_effort, effort_share=effort if press.force_n > 0 else None)
    out = [
        importance_term(action),
        Term("effort", -EFFORT_POINTS * effort * use, needs, _press_basis(press, effort, use)),
    ]
    if any(one.rule == "clear" for one in press.doubts):
        out.append(Term("unintended", -FALSE_POINTS, message(Scores.clear_untried)))
    else:
        out.append(_unintended_term(press))
    if math.isfinite(press.hit_share) and press.hit_share < 0.995:
        missed = 1 - press.hit_share
        words = message(Scores.misses, missed_share=missed, assumed=press.wanted_face_m is None)
        basis = message(Scores.misses_basis, importance_points=float(action.importance), missed_share=missed)
        out.append(Term("misses", -action.importance * missed, words, basis))
    unread_s = press.presses_per_min * max(
        0.0, press.cycle_s - (press.cycle_s if press.sure_cycle_s is None else press.sure_cycle_s)
    )
    if math.isfinite(unread_s) and unread_s > 0:
        out.append(Term("busy", -UNCOUNTED_POINTS * min(1.0, unread_s / 60), message(Scores.busy, time_s=unread_s)))
    if action.kind == "trigger" and (action.levels is None or action.levels > 2):
        out.append(Term("precision", -ALL_OR_NOTHING_SHARE * action.importance, message(Scores.all_or_nothing)))
    to_try = [one.text for one in press.doubts if one.rule in ("size", "strength")]
    if to_try:
        out.append(Term("suits", -SUITS_POINTS * len(to_try), message(Scores.to_try, doubt=to_try[0])))
    if toggle:
        price = TOGGLE_POINTS if action.toggle_price is None else action.toggle_price
        own = message(Scores.own_words, words=Name(action.toggle)) if action.toggle else message(Scores.toggle)
        out.append(Term("toggle", -price, own))
    return tuple(out)


def left_terms(action: Action, how: Left, *, price: float, words: Text) -> tuple[Term, ...]:
    """What an action left to the game, to somebody else, or left out is worth.

    Parameters
    ----------
    action : Action
    how : str
        'option', 'helper' or 'dropped'.
    price : float
        The player's, 0 to 10.
    words : Message
        Said beside it.
    """
    if how == "dropped":
        return (Term("dropped", -price, words),)
    return (importance_term(action), Term(how, -price, words))


def device_terms(setup_s: float | None) -> tuple[Term, ...]:
    """What one device more costs.

    Parameters
    ----------
    setup_s : float or None
        Time to set it up each day.
    """
    part = Term("part", -PART_POINTS, message(Scores.device_more, device=None))
    if not setup_s:
        return (part,)
    return (part, _setup_term(setup_s, None))


def _setup_term(setup_s: float, site: Name | None) -> Term:
    return Term("setup", -SETUP_POINTS_PER_MIN * setup_s / 60, message(Scores.setup, site=site, time_s=setup_s))


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
    sound: Literal["soft", "click", "unrecorded"] = (
        "unrecorded" if switch.sound is None else "soft" if switch.sound == "soft" else "click"
    )
    return (Term("sound", -price, message(Scores.sound, switch=Name(switch.name), sound=sound)),)


def site_terms(site: Site) -> tuple[Term, ...]:
    """What it costs to use a site at all, whatever it does."""
    out, name = [], Name(site.name)
    if site.setup_s:
        out.append(_setup_term(site.setup_s, name))
    if site.minds:
        words = message(Scores.minds, site=name, dislike_points=float(site.minds))
        out.append(Term("mind", -MIND_POINTS * site.minds, words))
    if site.part in NEEDS_CLEARANCE and site.cleared != "yes":
        out.append(Term("clearance", -CLEARANCE_POINTS, message(Scores.clearance, site=name)))
    return tuple(out)


def _false_limit(action: Action) -> float:
    return FALSE_LIMIT_COSTLY_PER_MIN if action.false_input_costly else FALSE_LIMIT_PER_MIN


def _unintended_term(press: PressFit) -> Term:
    """What unintended presses cost, as expected over the range of what is assumed."""
    assumed = bool(press.doubts or press.assumed)
    words = message(Scores.unintended, rate=press.false_estimate, assumed=assumed)
    if press.false_per_min > 60:
        words = message(Scores.always, assumed=assumed)
    return Term("unintended", -FALSE_POINTS * press.unintended_share, words)


def _false_term(rate: Estimate, limit: float) -> Term:
    if rate.value is None or rate.value > 60:
        return Term("unintended", -4 * FALSE_POINTS, message(Scores.always, assumed=False))
    times = min(4.0, rate.value / limit)
    basis = message(Scores.unintended_basis, weight_points=FALSE_POINTS, over_factor=times, limit_per_min=limit)
    return Term("unintended", -FALSE_POINTS * times, message(Scores.unintended, rate=rate, assumed=False), basis)
