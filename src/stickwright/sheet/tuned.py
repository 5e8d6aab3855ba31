"""The tuning part: which recordings it comes from, whether they were made on the chosen set-up, what to type."""

from __future__ import annotations

import math
from typing import Any

from stickwright.catalogue import say
from stickwright.mechanics.widening import GAIN_LIMIT
from stickwright.model.game import SettingsBefore
from stickwright.model.plan import Fit, SitePlan, direction_words
from stickwright.model.response import Tuning
from stickwright.sheet import tables
from stickwright.sheet.figures_tuning import curve, tuning_before_after
from stickwright.sheet.paper import width_mm
from stickwright.sheet.printed import listed, percent, plain, sentence, share, sided

__all__ = [
    "dead_zones", "gain_basis", "line_of_tuning", "lost", "no_settings", "set_in_game", "set_unrecorded", "to_type", "tuned_elsewhere",
    "tuning_of_choice", "tuning_part", "typed_basis", "undo_words", "unrecorded_basis",
]  # fmt: skip

_STRAIGHT = 0.02  # share of full output: below that nobody sees a bend


def tuning_of_choice(site: SitePlan) -> Tuning | None:
    """The tuning made on the chosen stick, if a recording was made on it.

    Parameters
    ----------
    site : SitePlan
        One site of the plan.
    """
    if site.choice is None:
        return None
    return next((tuning for tuning in site.tunings if tuning.stick == site.choice.full_name), None)


def tuned_elsewhere(fit: Fit | None, tuning: Tuning) -> str:
    """What the recordings were made without, when that was not the chosen set-up: a sentence, or nothing.

    Parameters
    ----------
    fit : Fit or None
        The chosen set-up.
    tuning : Tuning
        Made from recordings on `tuning.setup`, or on an unknown set-up of `tuning.stick`.

    Returns
    -------
    str
        As 'Tuned without tall peg and extension plus 8, with low dish: tune again.'
    """
    if fit is None:
        return ""
    if tuning.stick != fit.full_name:
        return f"Tuned on {tuning.stick}, not on {fit.full_name}: record and tune again."
    if not tuning.setup:
        return ""
    chosen = [part for part in (fit.topper, f"extension {fit.extension}" if fit.extension else None) if part]
    tried = tuning.setup.split(" + ")[1:]
    missing = [part for part in chosen if part not in tried]
    more = [part for part in tried if part not in chosen]
    parts = [f"{word} {listed(names)}" for word, names in (("without", missing), ("with", more)) if names]
    return f"Tuned {', '.join(parts)}: tune again." if parts else ""


def to_type(tuning: Tuning) -> str:
    """The two numbers, as they are said on every page.

    Parameters
    ----------
    tuning : Tuning
        A finished response.
    """
    simple = tuning.simple
    return f"dead zone {simple.dead_zone_percent:.0f} %, sensitivity {simple.sensitivity_percent:.0f} %"


def typed_basis(tuning: Tuning) -> str:
    """How the two numbers come about, each with its figures.

    Parameters
    ----------
    tuning : Tuning
        A finished response.

    Returns
    -------
    str
        Empty where the tuning does not carry what they come from.
    """
    simple = tuning.simple
    if simple.rest_offset_share is None or simple.radius_share is None or simple.reach_share is None:
        return ""
    least = 100.0 * (simple.rest_offset_share + simple.radius_share)
    needs = (
        f"{_tenth(100 * simple.rest_offset_share)} that rest lies off centre + {_tenth(100 * simple.radius_share)} radius = "
        f"{_tenth(least)} of full output"
    )
    zone = f"Dead zone {simple.dead_zone_percent:.0f} %: "
    if simple.dead_zone_percent < least - 0.05:
        zone += f"the game offers none; rest needs {needs}"
    elif simple.dead_zone_percent < least + 1.0:
        zone += f"{needs}, rounded up to a whole per cent"
    else:
        zone += f"comes nearest to the full response; rest needs at least {needs}"
    low, high = (share(value) for value in simple.reach_share)
    reach = low if low == high else f"{low} to {high}"
    task = {"rim": " in the rim task", "push": " in full pushes", "": ""}[tuning.range_task]
    return (
        f"{zone}. Sensitivity {simple.sensitivity_percent:.0f} %: with output = sensitivity × (deflection − dead zone) ÷ "
        f"(100 % − dead zone), the whole per cent that comes nearest to the full response (least squares) over the player's reach "
        f"of {reach}{task}."
    )


def _tenth(value: float) -> str:
    return f"{value:.1f} %"


def no_settings(tuning: Tuning) -> str:
    """Why no settings are printed: the faults of the recordings; empty when there is none.

    Parameters
    ----------
    tuning : Tuning
        A finished response.
    """
    if not tuning.faults:
        return ""
    return f"No settings are given yet. {' '.join(dict.fromkeys(say(fault.text) for fault in tuning.faults))}"


def set_in_game(tuning: Tuning) -> str:
    """What a family sets in the game, or that it changes nothing yet.

    Parameters
    ----------
    tuning : Tuning
        A finished response.
    """
    if tuning.faults:
        return "Do not change any settings in the game yet. They still have to be measured."
    return f"Set in the game for {tuning.stick}: {to_type(tuning)}."


def set_unrecorded(fit: Fit) -> str:
    """The gain by direction of a chosen stick that needs its range widened and was not recorded; nothing for any other.

    Parameters
    ----------
    fit : Fit
        The chosen set-up; its reach, and the gain with it, is worked out from the readings.
    """
    wide = [(one.direction_rad, one.gain) for one in fit.directions if one.gain is not None]
    if not wide:
        return ""
    gains = listed(f"{direction_words(phi)} {gain:.1f}" for phi, gain in wide)
    return (
        f"Set for {fit.full_name}, in the hub or the game, gain by direction: {gains} (assumed from the readings, not recorded). "
        f"To confirm: record rest, edge and pushes on {fit.full_name}."
    )


def unrecorded_basis(fit: Fit) -> str:
    """`set_unrecorded` for a practitioner: with what each gain is worked out from; nothing where nothing is to be set.

    Parameters
    ----------
    fit : Fit
        The chosen set-up.
    """
    said = set_unrecorded(fit)
    return f"{said} {gain_basis(fit)}" if said else ""


def gain_basis(fit: Fit) -> str:
    """What each gain is worked out from, where `set_unrecorded` stands beside it; nothing where nothing is to be set.

    Parameters
    ----------
    fit : Fit
        The chosen set-up.
    """
    if not set_unrecorded(fit):
        return ""
    wide = [one for one in fit.directions if one.gain is not None]
    sums = listed(f"{direction_words(one.direction_rad)} 1 ÷ {share(one.reach_share.number)}" for one in wide)
    return f"Gain is 1 ÷ the share of the travel that the readings predict, at most {GAIN_LIMIT:g}: {sums}."


def lost(tuning: Tuning) -> str:
    """What the game's two numbers cannot do, and how to undo them.

    Parameters
    ----------
    tuning : Tuning
        A finished response.
    """
    return f"{sentence(tuning.simple.lost)} To undo: {undo_words(tuning.settings_before, tuning.own_dead_zone_share)}.".strip()


def undo_words(before: SettingsBefore | None, own_dead_zone_share: float | None) -> str:
    """What to go back to: only what somebody wrote down, and to note the rest before anything is changed.

    Parameters
    ----------
    before : SettingsBefore or None
    own_dead_zone_share : float or None
        Dead zone inside the game, where that was found out.
    """
    zone = before.dead_zone_share if before is not None else None
    zone = own_dead_zone_share if zone is None else zone
    sensitivity = before.sensitivity_share if before is not None else None
    known = [
        *([f"dead zone {share(zone)}"] if zone is not None else []),
        *([f"sensitivity {share(sensitivity)}"] if sensitivity is not None else []),
        *([before.words] if before is not None and before.words else []),
    ]
    unread = [what for what, value in (("dead zone", zone), ("sensitivity", sensitivity)) if value is None]
    if not unread:
        return ", ".join(known)
    note = f"note the {' and '.join(unread)} set now before you change {'it' if len(unread) == 1 else 'them'}"
    return f"{', '.join(known)}; {note}" if known else note


def dead_zones(fit: Fit | None, tuning: Tuning) -> str:
    """Which of the dead zones on the page is which.

    Parameters
    ----------
    fit : Fit or None
        The chosen set-up.
    tuning : Tuning
        A finished response.
    """
    counted = ""
    if fit is not None and fit.full_name == tuning.stick:
        counted = f"{share(fit.dead_zone_share)} of the throw is what the choice counts on against false input; "
    off_centre = math.hypot(tuning.offset_x.number, tuning.offset_y.number)
    why = f"rest lies {plain(off_centre, 'percent')} off the middle, and a game alone does not take that off"
    typed = f"{tuning.simple.dead_zone_percent:.0f} % is the one to type"
    return (
        f"Which dead zone is which: {counted}{share(tuning.dead_zone.number)} of the range is for software that first takes "
        f"the centre off; {typed}{f', since {why}' if off_centre > 0.005 else ''}."
    )


def line_of_tuning(tuning: Tuning) -> str:
    """A further tuning in one line.

    Parameters
    ----------
    tuning : Tuning
        A finished response.
    """
    if tuning.faults:
        return f"{tuning.stick}: {no_settings(tuning)}"
    turned = sided(tuning.output_rotation_rad, "deg", "anticlockwise", "clockwise")
    return f"{tuning.stick}: dead zone {percent(tuning.dead_zone)}, turned {turned}; in the game {to_type(tuning)}."


def tuning_part(fit: Fit | None, tuning: Tuning) -> dict[str, Any]:
    """Everything printed about one tuning.

    Parameters
    ----------
    fit : Fit or None
        The chosen set-up.
    tuning : Tuning
        The response shown.

    Returns
    -------
    dict
        Texts, tables and figures, for the template; of a tuning with a fault only why there are none.
    """
    if tuning.faults:
        asked = [say(one.text) for one in tuning.findings if one.level == "query"]
        return {"why": " ".join([no_settings(tuning), *asked])}
    before_after = tuning_before_after(tuning)
    bent = _bent(tuning)
    drawn = curve(tuning)
    return {
        "why": "",
        "heading": f"Tuning of {tuning.setup or tuning.stick}",
        "elsewhere": tuned_elsewhere(fit, tuning),
        "from": f"From {_recordings(tuning)}, in this order:",
        "rows": [list(row) for row in tables.tuning_numbers(tuning).rows],
        "type": f"What to type in the game for {tuning.stick}: {to_type(tuning)}.",
        "basis": typed_basis(tuning),
        "lost": lost(tuning),
        "zones": dead_zones(fit, tuning),
        "figure": {
            "svg": before_after, "alt": tables.tuning_before_after(tuning).alt, "width_mm": width_mm(before_after),
            "caption": f"The player's own {tuning.shown_recording}.",
        },
        "curve_figure": {"svg": drawn, "alt": tables.curve(tuning).alt, "width_mm": width_mm(drawn), "caption": ""},
        "curve_in": ["deflection", *(share(value) for value in _ten(tuning.curve_in))] if bent else [],
        "curve_out": ["output", *(share(value) for value in _ten(tuning.curve_out))] if bent else [],
        "sentences": [say(words) for words in tuning.sentences],
    }  # fmt: skip


def _recordings(tuning: Tuning) -> str:
    """Which recordings, by name while they are few."""
    names = tuning.recordings
    return listed(names) if len(names) <= 3 else f"{len(names)} recordings on {tuning.setup or tuning.stick}"


def _bent(tuning: Tuning) -> bool:
    """Whether the curve leaves the straight line between its ends: a straight one needs no table."""
    (x0, x1), (y0, y1) = ((ends[0], ends[-1]) for ends in (tuning.curve_in, tuning.curve_out))
    straight = ((x, y0 + (y1 - y0) * (x - x0) / ((x1 - x0) or 1.0)) for x in tuning.curve_in)
    return any(abs(y - line) > _STRAIGHT for (_, line), y in zip(straight, tuning.curve_out, strict=True))


def _ten(values: tuple[float, ...]) -> tuple[float, ...]:
    """At most eleven points of a curve, both ends among them."""
    if len(values) <= 11:
        return values
    last = len(values) - 1
    return tuple(values[round(step * last / 10)] for step in range(11))
