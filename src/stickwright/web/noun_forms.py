"""A form for any table of a case's files, made from the noun itself: what may be typed, in which unit, with its own words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from stickwright import units
from stickwright.catalogue import say
from stickwright.codes.commands import Commands
from stickwright.codes.form_labels import Also, FormLabels
from stickwright.codes.message import Message, message
from stickwright.errors import BadInput
from stickwright.files.entry import entered, shown
from stickwright.files.fields import FieldShape, fields_of, typed_keys
from stickwright.model.game import Action, Game, SettingsBefore
from stickwright.model.hub import Hub, Socket
from stickwright.model.kit import Controller, Extension, Fastener, HousingFlat, Lead, Mount, Stick, Switch, Topper
from stickwright.model.measured import Measured
from stickwright.model.player import (
    AlongReading,
    DirectionReading,
    Helper,
    Hold,
    Player,
    Press,
    RestForce,
    Site,
    SiteRecording,
    SiteUnder,
    Spasm,
    StickReach,
    Together,
)
from stickwright.model.room import Edge, KeepOut, Landmark, Place, Room, Surface, Tape, Tube
from stickwright.web.render import told_beside

__all__ = ["FIRST", "FormField", "choice_words", "form_fields", "inner_tables", "label_of", "sent_fields"]

FIRST: dict[type[Measured], tuple[str, ...]] = {
    Action: ("name", "kind", "importance", "presses_per_s", "longest_hold_s", "together", "option", "option_price"),
    AlongReading: ("direction_rad", "at_reach_m", "force_n"),
    Controller: ("name", "press_force_n", "plug", "cable_m", "in_stock"),
    DirectionReading: ("direction_rad", "force_n", "reach_m"),
    Edge: ("name", "from_m", "to_m", "thickness_m", "moves_with"),
    Extension: ("name", "length_m"),
    Fastener: ("name", "kind", "shear_pa", "tension_pa", "peel_n_per_m", "test_method"),
    Game: ("name", "hours_per_week", "session_s", "offers"),
    Helper: ("name", "most_actions"),
    Hold: ("duration_s", "effort_share"),
    Hub: ("name", "plug", "current_a"),
    KeepOut: ("name", "kind", "low_m", "high_m", "moves_with"),
    Landmark: ("name", "at_m", "moves_with"),
    Lead: ("name", "kind", "plug", "length_m", "in_stock"),
    Mount: ("name", "kind", "links_m", "holding_nm", "give_n_per_m", "tube_m", "mass_kg", "in_stock"),
    Place: ("site", "at_m", "forward_rad", "moves_with"),
    Player: ("code", "visit", "age_band", "session_s", "course", "alerts", "goals"),
    Press: ("force_n", "rate_per_s", "hold_s", "release_s"),
    RestForce: ("force_n", "direction_rad", "support"),
    Room: ("posture", "tilt_from_rad", "tilt_to_rad", "seat_to_floor_m", "seat_to_armrest_m", "table_height_m"),
    Site: ("name", "part", "support", "action", "minds", "cleared"),
    SettingsBefore: ("stick", "dead_zone_share", "sensitivity_share", "words"),
    SiteRecording: ("task", "stick", "topper", "file"),
    Socket: ("name", "takes", "role"),
    SiteUnder: ("condition", "kind", "plays", "after_s"),
    Spasm: ("peak_n", "rate_per_s"),
    Stick: ("name", "contact_height_m", "start_force_n", "full_force_n", "travel_m", "friction_force_n", "plug", "in_stock"),
    StickReach: ("stick", "direction_rad", "reached_share"),
    Surface: ("name", "kind", "corner_m", "size_m", "material", "moves_with"),
    Switch: ("name", "force_n", "travel_m", "face_m", "plug", "in_stock"),
    Tape: ("landmark", "distance_m"),
    Together: ("sites", "says"),
    Topper: ("name", "form", "height_m", "width_m"),
    Tube: ("name", "from_m", "to_m", "diameter_m", "moves_with", "not_for_clamps"),
}  # fmt: skip
"""What is asked first; all else waits under a heading that can be opened."""


class FormField(NamedTuple):
    """One control of a form.

    `unit_name` is '' where a number has no unit to choose; `choices` are (value, words).
    """

    name: str
    label: str
    kind: str
    value: str
    hint: str
    unit: str
    unit_name: str
    unit_choices: tuple[tuple[str, str], ...]
    choices: tuple[tuple[str, str], ...]
    needed: bool
    problem: str
    first: bool
    many: bool


def label_of(model: type[Measured], name: str) -> Message:
    """A field as pages call it.

    Parameters
    ----------
    model : type
        The noun.
    name : str
        Its field, as declared.
    """
    return message(FormLabels.label, noun=model.__name__, field=name)


def choice_words(shape: FieldShape, text: str) -> str:
    """What was chosen or typed in a field, as pages show it: words that the field offers in the words of the language.

    Parameters
    ----------
    shape : FieldShape
        Of the field.
    text : str
        As typed; several on a line each.
    """
    if shape.kind not in ("choice", "yes-no"):
        return text
    return "\n".join(say(message(FormLabels.choice, word=one)) if one else "" for one in text.split("\n"))


def inner_tables(model: type[Measured]) -> tuple[tuple[str, type[Measured], bool], ...]:
    """The tables inside a table: key, noun, whether there may be many."""
    return tuple(
        (name, shape.model, shape.many)
        for name, shape in fields_of(model).items()
        if shape.kind == "table" and shape.model is not None
    )


def form_fields(
    model: type[Measured],
    table: Mapping[str, Any],
    *,
    typed: Mapping[str, str] | None = None,
    refused: BadInput | None = None,
    wanted_units: Mapping[str, str] | None = None,
    offered: Mapping[str, Sequence[str]] | None = None,
    without: Sequence[str] = (),
) -> tuple[FormField, ...]:
    """The controls of one table, those asked first in front.

    Parameters
    ----------
    model : type
        The noun that the table is.
    table : mapping
        As it stands in the file.
    typed : mapping, optional
        What was sent and refused: shown again as it was typed.
    refused : BadInput, optional
        Its problems stand beside their fields.
    wanted_units : mapping, optional
        Kind of quantity -> unit for numbers not typed yet: {'force': 'gf'}.
    offered : mapping, optional
        Field -> words to choose from, where the noun itself takes any words: the actions of the game, say.
    without : sequence of str
        Fields to leave out.
    """
    first = FIRST.get(model, ())
    fields = []
    for name, shape in fields_of(model).items():
        if shape.kind == "table" or name in without:
            continue
        info = model.model_fields[name]
        key, value = shown(model, name, table)
        keys = typed_keys(model, name)
        ending = key.removeprefix(f"{units.split_key(name)[0]}_") if len(keys) > 1 else ""  # type: ignore[index]
        quantity = units.quantity_of(name) if shape.kind == "number" else None
        if quantity is not None and len(keys) > 1 and not value and quantity.name in (wanted_units or {}):
            ending = (wanted_units or {})[quantity.name]
        if typed is not None:
            value = typed.get(name, value)
            ending = typed.get(f"{name}.unit", ending)
        fields.append(
            FormField(
                name=name,
                label=say(label_of(model, name)),
                kind=_control(shape, (offered or {}).get(name)),
                value=value,
                hint=_hint(model, name, shape),
                unit=quantity.unit(ending or quantity.si).label if quantity else "",
                unit_name=f"{name}.unit" if len(keys) > 1 else "",
                unit_choices=tuple((unit.ending, unit.label) for unit in quantity.units) if quantity and len(keys) > 1 else (),
                choices=_choices(shape, (offered or {}).get(name), value, needed=info.is_required()),
                needed=info.is_required(),
                problem=_problem(refused, keys, name),
                first=name in first or info.is_required(),
                many=shape.many,
            )
        )  # fmt: skip
    order = {name: place for place, name in enumerate(first)}
    return tuple(sorted(fields, key=lambda field: (not field.first, order.get(field.name, len(order)))))


def sent_fields(model: type[Measured], sent: Mapping[str, str], *, where: str = "") -> dict[str, Any]:
    """What a form made by `form_fields` sent, ready for the file.

    Parameters
    ----------
    model : type
    sent : mapping
        Declared field -> text, and ``field.unit`` -> unit.
    where : str
        Said before each field of a problem.

    Raises
    ------
    BadInput
        All fields that cannot be read.
    """
    form: dict[str, str] = {}
    for name, shape in fields_of(model).items():
        if name not in sent or shape.kind == "table":
            continue
        keys = typed_keys(model, name)
        chosen = sent.get(f"{name}.unit", "")
        key = next((one for one in keys if chosen and one == f"{units.split_key(name)[0]}_{chosen}"), name)  # type: ignore[index]
        form[key] = sent[name]
    return entered(model, form, where=(where,) if where else ())


def _control(shape: FieldShape, offered: Sequence[str] | None) -> str:
    if shape.kind in ("choice", "yes-no") and not shape.many:
        return "choice"
    if offered and not shape.many and shape.count is None:
        return "choice"
    if shape.kind in ("words", "choice") and (shape.many or shape.count is not None):
        return "ticks" if shape.kind == "choice" or offered else "lines"
    return "number" if shape.kind in ("number", "whole") else "words"


def _choices(
    shape: FieldShape, offered: Sequence[str] | None, value: str, *, needed: bool
) -> tuple[tuple[str, str], ...]:
    unsaid = ("", say(message(Commands.choose if needed else Commands.not_recorded)))
    if shape.kind == "yes-no":
        return (unsaid, *((word, choice_words(shape, word)) for word in ("yes", "no")))
    words = tuple(offered) if offered else shape.choices
    if not words:
        return ()
    if shape.many or shape.count is not None:
        return tuple((word, choice_words(shape, word)) for word in words)
    other = () if not value or value in words else (value,)
    none = (("none", choice_words(shape, "none")),) if shape.or_none else ()
    listed = ((word, choice_words(shape, word)) for word in (*words, *other))
    return (*(() if needed and value else (unsaid,)), *listed, *none)


def _hint(model: type[Measured], name: str, shape: FieldShape) -> str:
    also: list[Also] = []
    if name == "direction_rad":
        also.append("directions")
    elif name == "base_m":
        also.append("sides")
    elif shape.kind == "number" and shape.count == 3 and (model, name) != (HousingFlat, "at_m"):
        also.append("point")
    elif name.endswith("_share") and not shape.choices:
        also.append("share")
    if shape.kind == "number" and shape.many:
        also.append("repeats")
    if shape.kind == "words" and shape.many:
        also.append("lines")
    return say(message(FormLabels.hint, noun=model.__name__, field=name, also=tuple(also)))


def _problem(refused: BadInput | None, keys: Sequence[str], name: str) -> str:
    if refused is None:
        return ""
    return " ".join(told_beside(one) for one in refused.problems if {*one.where} & {*keys, name})
