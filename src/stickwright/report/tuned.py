"""The tuning part: which recordings it comes from, whether they were made on the chosen set-up, what to type."""

from __future__ import annotations

import math
from typing import Any, Literal

from stickwright.catalogue import book, say
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.stick_settings import StickSettings
from stickwright.mechanics.widening import GAIN_LIMIT
from stickwright.model.fit import Fit
from stickwright.model.game import SettingsBefore
from stickwright.model.plan import SitePlan
from stickwright.model.response import Tuning
from stickwright.report import tables
from stickwright.report.figures_tuning import curve, tuning_before_after
from stickwright.report.paper import width_mm
from stickwright.report.tell import named, names, tell

__all__ = [
    "dead_zones",
    "gain_basis",
    "line_of_tuning",
    "lost",
    "no_settings",
    "set_for",
    "set_in_game",
    "set_unrecorded",
    "settings_told",
    "setup_of",
    "to_type",
    "tuned_elsewhere",
    "tuning_of_choice",
    "tuning_part",
    "typed_basis",
    "undo_words",
    "unrecorded_basis",
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
    return say(_elsewhere(fit, tuning) or "")


def _elsewhere(fit: Fit | None, tuning: Tuning) -> Message | None:
    if fit is None:
        return None
    if tuning.stick != fit.full_name:
        return message(StickSettings.other_stick, tuned=Name(tuning.stick), stick=Name(fit.full_name))
    if tuning.setup is None:
        return None
    chosen, tried = _on_stick(fit.named), _on_stick(tuning.setup)
    without = tuple(part for part in chosen if part not in tried)
    having = tuple(part for part in tried if part not in chosen)
    return message(StickSettings.other_setup, without=without, having=having) if without or having else None


def _on_stick(setup: Message) -> tuple[Text, ...]:
    """Topper and extension of a set-up."""
    extension = setup.param("extension")
    parts = (setup.param("topper"), message(StickSettings.extension, extension=extension) if extension else None)
    return tuple(part for part in parts if part is not None)


def to_type(tuning: Tuning) -> Message:
    """The two numbers, as they are said on every page.

    Parameters
    ----------
    tuning : Tuning
        A finished response.
    """
    simple = tuning.simple
    return message(
        StickSettings.numbers, dead_zone_share=simple.dead_zone_percent / 100,
        sensitivity_share=simple.sensitivity_percent / 100,
    )  # fmt: skip


def set_for(tuning: Tuning) -> str:
    """The two numbers for a practitioner.

    Parameters
    ----------
    tuning : Tuning
        A finished response.
    """
    return tell(StickSettings.set_for, stick=Name(tuning.stick), numbers=to_type(tuning))


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
    zone, least = simple.dead_zone_percent / 100, simple.rest_offset_share + simple.radius_share
    how: Literal["none", "rounded_up", "nearest"] = "nearest"
    if zone < least - 0.0005:
        how = "none"
    elif zone < least + 0.01:
        how = "rounded_up"
    told = (
        message(
            StickSettings.zone_basis, dead_zone_share=zone, off_centre_share=simple.rest_offset_share,
            radius_share=simple.radius_share, how=how,
        ),
        message(
            StickSettings.sensitivity_basis, sensitivity_share=simple.sensitivity_percent / 100,
            low_share=simple.reach_share[0], high_share=simple.reach_share[1], task=tuning.range_task,
        ),
    )  # fmt: skip
    return " ".join(say(one) for one in told)


def no_settings(tuning: Tuning) -> str:
    """Why no settings are printed: the faults of the recordings; empty when there is none.

    Parameters
    ----------
    tuning : Tuning
        A finished response.
    """
    if not tuning.faults:
        return ""
    return tell(StickSettings.no_settings, faults=tuple(dict.fromkeys(fault.text for fault in tuning.faults)))


def set_in_game(tuning: Tuning) -> str:
    """What a family sets in the game, or that it changes nothing yet.

    Parameters
    ----------
    tuning : Tuning
        A finished response.
    """
    return say(_in_game(tuning))


def _in_game(tuning: Tuning) -> Message:
    if tuning.faults:
        return message(StickSettings.nothing_yet)
    return message(StickSettings.in_game, stick=Name(tuning.stick), numbers=to_type(tuning))


def set_unrecorded(fit: Fit) -> str:
    """The gain by direction of a chosen stick that needs its range widened and was not recorded; nothing for any other.

    Parameters
    ----------
    fit : Fit
        The chosen set-up; its reach, and the gain with it, is worked out from the readings.
    """
    return say(_gains(fit) or "")


def _gains(fit: Fit) -> Message | None:
    wide = [(one.direction_rad, one.gain) for one in fit.directions if one.gain is not None]
    if not wide:
        return None
    return message(
        StickSettings.gains, stick=Name(fit.full_name), directions_rad=tuple(phi for phi, _ in wide),
        gains_factor=tuple(gain for _, gain in wide),
    )  # fmt: skip


def settings_told(site: SitePlan) -> tuple[Message, ...]:
    """What to set for the chosen stick of a site, and what the figures were found without; empty where nothing is set.

    Parameters
    ----------
    site : SitePlan
        One site of the plan.
    """
    tuning = tuning_of_choice(site)
    if tuning is None:
        told = [_gains(site.choice) if site.choice is not None else None]
    elif tuning.faults:
        told = [_in_game(tuning)]
    else:
        told = [_in_game(tuning), _elsewhere(site.choice, tuning)]
    return tuple(one for one in told if one is not None)


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
    return tell(
        StickSettings.gains_basis, directions_rad=tuple(one.direction_rad for one in wide),
        reach_share=tuple(one.reach_share.number for one in wide), limit_factor=float(GAIN_LIMIT),
    )  # fmt: skip


def lost(tuning: Tuning) -> str:
    """What the game's two numbers cannot do, and how to undo them.

    Parameters
    ----------
    tuning : Tuning
        A finished response.
    """
    undo = undo_words(tuning.settings_before, tuning.own_dead_zone_share)
    return f"{say(tuning.simple.lost)} {tell(StickSettings.to_undo, told=undo)}".strip()


def undo_words(before: SettingsBefore | None, own_dead_zone_share: float | None) -> Message:
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
    others = named(before.words) if before is not None else None
    return message(StickSettings.undo, dead_zone_share=zone, sensitivity_share=sensitivity, others=others)


def dead_zones(fit: Fit | None, tuning: Tuning) -> str:
    """Which of the dead zones on the page is which.

    Parameters
    ----------
    fit : Fit or None
        The chosen set-up.
    tuning : Tuning
        A finished response.
    """
    off_centre = math.hypot(tuning.offset_x.number, tuning.offset_y.number)
    return tell(
        StickSettings.which_zone,
        counted_share=fit.dead_zone_share if fit is not None and fit.full_name == tuning.stick else None,
        corrected_share=tuning.dead_zone.number,
        typed_share=tuning.simple.dead_zone_percent / 100,
        off_centre_share=off_centre if off_centre > 0.005 else None,
    )


def line_of_tuning(tuning: Tuning) -> str:
    """A further tuning in one line.

    Parameters
    ----------
    tuning : Tuning
        A finished response.
    """
    stick = Name(tuning.stick)
    if tuning.faults:
        return tell(StickSettings.in_short_none, stick=stick, told=no_settings(tuning))
    rotation = message(StickSettings.rotation, turn=tuning.output_rotation_rad)
    return tell(
        StickSettings.in_short, stick=stick, dead_zone=tuning.dead_zone, rotation=rotation, numbers=to_type(tuning)
    )


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
        "heading": tell(StickSettings.tuning_of, setup=setup_of(tuning)),
        "elsewhere": tuned_elsewhere(fit, tuning),
        "from": _found_in(tuning),
        "rows": [list(row) for row in tables.tuning_numbers(tuning).rows],
        "type": set_for(tuning),
        "basis": typed_basis(tuning),
        "lost": lost(tuning),
        "zones": dead_zones(fit, tuning),
        "figure": {
            "svg": before_after, "alt": tables.tuning_before_after(tuning).alt, "width_mm": width_mm(before_after),
            "caption": tell(StickSettings.own_recording, recording=Name(tuning.shown_recording)),
        },
        "curve_figure": {"svg": drawn, "alt": tables.curve(tuning).alt, "width_mm": width_mm(drawn), "caption": ""},
        "curve_in": [tell(StickSettings.row, part="deflection"), *_shares(tuning.curve_in)] if bent else [],
        "curve_out": [tell(StickSettings.row, part="output"), *_shares(tuning.curve_out)] if bent else [],
        "sentences": [say(words) for words in tuning.sentences],
    }  # fmt: skip


def setup_of(tuning: Tuning) -> Text:
    """The set-up that a tuning was recorded on; its stick alone where nobody said.

    Parameters
    ----------
    tuning : Tuning
        A finished response.
    """
    return Name(tuning.stick) if tuning.setup is None else tuning.setup


def _found_in(tuning: Tuning) -> str:
    """Which recordings, by name while they are few."""
    found = tuning.recordings
    if len(found) <= 3:
        return tell(StickSettings.found_in, recordings=names(found))
    return tell(StickSettings.found_in_many, recordings=len(found), setup=setup_of(tuning))


def _bent(tuning: Tuning) -> bool:
    """Whether the curve leaves the straight line between its ends: a straight one needs no table."""
    (x0, x1), (y0, y1) = ((ends[0], ends[-1]) for ends in (tuning.curve_in, tuning.curve_out))
    straight = ((x, y0 + (y1 - y0) * (x - x0) / ((x1 - x0) or 1.0)) for x in tuning.curve_in)
    return any(abs(y - line) > _STRAIGHT for (_, line), y in zip(straight, tuning.curve_out, strict=True))


def _shares(values: tuple[float, ...]) -> list[str]:
    return [book().writer.share(value) for value in _ten(values)]


def _ten(values: tuple[float, ...]) -> tuple[float, ...]:
    """At most eleven points of a curve, both ends among them."""
    if len(values) <= 11:
        return values
    last = len(values) - 1
    return tuple(values[round(step * last / 10)] for step in range(11))
