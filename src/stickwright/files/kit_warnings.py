"""What is contradictory or half said in a kit: figures of sticks, names, plugs, mounts, stock and prices."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from stickwright import units
from stickwright.codes.kinds import Kind
from stickwright.codes.kit_warnings import KitWarnings
from stickwright.codes.message import message
from stickwright.codes.warnings import Warnings
from stickwright.errors import Problem
from stickwright.files.fields import typed_key
from stickwright.files.mount_warnings import mount_warnings
from stickwright.files.toml_lines import FieldPath, TomlFile
from stickwright.files.typed_tables import (
    Noticed,
    assigned,
    doubled_names,
    name_of,
    number,
    placed,
    plug_warnings,
    query,
    shown_name,
    tables,
    taken_names,
    texts,
    told_at,
)
from stickwright.files.typed_values import as_typed
from stickwright.model.kit import Controller, Fastener, Lead, Mount, Stick, StickSetting, Switch
from stickwright.model.measured import Measured
from stickwright.model.recorded import Finding

__all__ = ["kit_warnings"]

_DEVICES: dict[Kind, type[Measured]] = {"stick": Stick, "switch": Switch, "controller": Controller, "lead": Lead}
"""What is wired, and is named in a wish: one name must mean one thing."""
_THINGS: dict[Kind, type[Measured]] = {**_DEVICES, "mount": Mount, "fastener": Fastener}
"""What a plan calls by name and the van has or has not."""
_Table = tuple[FieldPath, dict[str, Any]]


def kit_warnings(kit: TomlFile, *, has_hub: bool = False) -> list[Noticed]:
    """What is doubtful in a kit.

    Parameters
    ----------
    kit : TomlFile
        The file as parsed.
    has_hub : bool
        Whether a hub is described: only then does a missing plug matter.
    """
    noticed: list[Noticed] = []
    named: tuple[Kind, ...] = (*_THINGS, "topper", "extension")
    for key in named:
        noticed += doubled_names(kit, tables(kit.data, key), key)
    for key in _DEVICES:
        noticed += taken_names(kit, tables(kit.data, key), key)
    noticed += _names_of_two_kinds(kit)
    for path, stick in tables(kit.data, "stick"):
        noticed += _stick_warnings(kit, path, stick)
    for key in _DEVICES:
        for path, device in tables(kit.data, key):
            noticed += plug_warnings(kit, (*path, "plug"), device.get("plug"))
            for place, text in texts(device, "sockets"):
                noticed += plug_warnings(kit, (*path, "sockets", place), text)
            if isinstance(device.get("sockets"), str):
                noticed += plug_warnings(kit, (*path, "sockets"), device["sockets"])
    noticed += _switch_warnings(kit)
    noticed += _hand_warnings(kit)
    noticed += mount_warnings(kit)
    noticed += _stock_warnings(kit)
    if has_hub:
        noticed += _without_plug(kit)
    return noticed


def _things(kit: TomlFile, of: dict[Kind, type[Measured]]) -> list[tuple[Kind, _Table]]:
    return [(key, found) for key in of for found in tables(kit.data, key)]


def _names_of_two_kinds(kit: TomlFile) -> Iterator[Problem]:
    first: dict[str, tuple[Kind, FieldPath]] = {}
    for kind, (path, device) in _things(kit, _THINGS):
        name = name_of(device)
        if name is None:
            continue
        other, there = first.setdefault(name.strip().casefold(), (kind, path))
        if other != kind:
            line = kit.lines.line(there)
            found = message(KitWarnings.name_of_another_kind, kind=kind, other=other, name=shown_name(name), line=line)
            expected, remedy = message(KitWarnings.one_name_one_device), message(KitWarnings.rename_this, kind=kind)
            yield Problem(kit.where((*path, "name")), found, expected, remedy)


def _in_stock(device: dict[str, Any], model: type[Measured]) -> float:
    said = number(device, model, "in_stock")
    return said[1] if said else 1.0


def _stock_warnings(kit: TomlFile) -> Iterator[Finding]:
    devices = _things(kit, _DEVICES)
    never: list[_Table] = []
    to_buy: list[_Table] = []
    for kind, found in _things(kit, _THINGS):
        if _in_stock(found[1], _THINGS[kind]) == 0:
            (to_buy if number(found[1], _THINGS[kind], "price") else never).append(found)
    if never:
        yield query("stock", kit.name, message(KitWarnings.never_used, devices=placed(kit, never)))
    if to_buy:
        told = message(KitWarnings.to_order, devices=placed(kit, to_buy))
        yield Finding("note", "stock", told_at(kit.name, told))
    usable = [kind for kind, (_, device) in devices if _in_stock(device, _DEVICES[kind]) > 0 and kind != "lead"]
    if not usable and any(kind != "lead" for kind, _ in devices):
        yield query("stock", kit.name, message(KitWarnings.nothing_in_stock))


def _without_plug(kit: TomlFile) -> Iterator[Finding]:
    bare = [
        found
        for kind, found in _things(kit, _DEVICES)
        if kind in ("stick", "switch") and not found[1].get("plug") and _in_stock(found[1], _DEVICES[kind]) > 0
    ]
    bare += [found for found in tables(kit.data, "controller") if found[1].get("plug") == ""]
    if bare:
        yield query("plug", kit.name, message(KitWarnings.no_plug, devices=placed(kit, bare)))


def _switch_warnings(kit: TomlFile) -> Iterator[Finding]:
    for path, switch in tables(kit.data, "switch"):
        force, senses = number(switch, Switch, "force_n"), number(switch, Switch, "senses_at_m")
        if switch.get("kind", "press") == "press" and not (force and force[1] > 0):
            yield query("switch", kit.where(path), message(KitWarnings.no_activation_force))
        if switch.get("kind") == "proximity" and senses is None:
            yield query("switch", kit.where(path), message(KitWarnings.no_distance))


def _stick_warnings(kit: TomlFile, path: FieldPath, stick: dict[str, Any]) -> Iterator[Noticed]:
    settings = list(tables(stick, "setting", path))
    yield from _crosswise_warnings(kit, path, stick)
    yield from _figure_warnings(kit, path, stick, Stick, stick)
    for where, setting in settings:
        yield from _figure_warnings(kit, where, setting, StickSetting, stick)
    yield from doubled_names(kit, settings, "setting")
    listed = stick.get("set_as")
    for where, setting in settings:
        if isinstance(listed, str) and listed and name_of(setting) == listed:
            found = message(KitWarnings.setting_named_as_listed, listed=as_typed(listed))
            expected, remedy = message(KitWarnings.one_name_one_setting), message(KitWarnings.rename_setting)
            yield Problem(kit.where((*where, "name")), found, expected, remedy)
    if settings and not (isinstance(listed, str) and listed.strip()):
        yield query("setting", kit.where(path), message(KitWarnings.setting_without_name))


def _hand_warnings(kit: TomlFile) -> Iterator[Noticed]:
    """Sticks on grips that are not there, and controllers to be held that nobody weighed; settings of one name."""
    pads = {name_of(pad) for _, pad in tables(kit.data, "controller")}
    for path, stick in tables(kit.data, "stick"):
        grip = stick.get("fixed_to")
        if isinstance(grip, str) and grip and grip not in pads:
            yield Problem(
                kit.where((*path, "fixed_to")),
                as_typed(grip),
                message(KitWarnings.a_controller),
                message(KitWarnings.add_controller),
            )
    for path, pad in tables(kit.data, "controller"):
        yield from doubled_names(kit, list(tables(pad, "setting", path)), "setting")
        if pad.get("held") in ("one hand", "two hands") and not any(key.startswith("mass") for key in pad):
            yield query("held", kit.where(path), message(KitWarnings.not_weighed))


def _crosswise_warnings(kit: TomlFile, path: FieldPath, stick: dict[str, Any]) -> Iterator[Noticed]:
    """What is half said of standing crosswise."""
    turns = stick.get("turns_output")
    if stick.get("crosswise") is False and isinstance(turns, str) and turns:
        found = message(Warnings.beside, one=assigned("turns_output", turns), other=assigned("crosswise", False))
        expected, remedy = message(KitWarnings.turns_a_crosswise_base), message(KitWarnings.say_crosswise)
        yield Problem(kit.where((*path, "turns_output")), found, expected, remedy)
    if stick.get("crosswise") is True and not turns:
        yield query("crosswise", kit.where(path), message(KitWarnings.output_not_turned))
    sides = stick.get("base_mm", stick.get("base_m"))
    if stick.get("crosswise") is True and sides is None:
        yield query("crosswise", kit.where(path), message(KitWarnings.size_of_base))


def _figure_warnings(
    kit: TomlFile, path: FieldPath, table: dict[str, Any], model: type[Measured], stick: dict[str, Any]
) -> Iterator[Noticed]:
    """Figures of a stick, or of one of its settings, that contradict each other."""
    start, full = (number(table, model, name) for name in ("start_force_n", "full_force_n"))
    if start and full and full[1] < start[1]:
        yield Problem(
            kit.where((*path, full[0])),
            message(
                KitWarnings.below, one=assigned(full[0], table[full[0]]), other=assigned(start[0], table[start[0]])
            ),
            message(KitWarnings.force_at_full_travel),
            message(KitWarnings.swapped_or_units),
        )
    height, travel = number(stick, Stick, "contact_height_m"), number(table, model, "travel_m")
    if height and travel and stick.get("kind", "lever") == "lever" and travel[1] > height[1]:
        yield Problem(
            kit.where((*path, travel[0])),
            message(
                Warnings.beside, one=assigned(travel[0], table[travel[0]]), other=assigned(height[0], stick[height[0]])
            ),
            message(KitWarnings.travel_within_height),
            message(KitWarnings.how_to_measure_travel),
        )
    for name in ("start_force", "full_force", "friction_force"):
        yield from _interval_warnings(kit, path, table, model, name)


def _interval_warnings(
    kit: TomlFile, path: FieldPath, stick: dict[str, Any], model: type[Measured], name: str
) -> Iterator[Noticed]:
    key = typed_key(stick, model, f"{name}_interval_n")
    ends = stick.get(key) if key else None
    if key is None or not isinstance(ends, list) or len(ends) != 2:
        return
    if not all(isinstance(end, int | float) and not isinstance(end, bool) for end in ends):
        return
    if ends[0] > ends[1]:
        expected, remedy = message(KitWarnings.lower_end_first), message(Warnings.swap)
        yield Problem(kit.where((*path, key)), as_typed(ends), expected, remedy)
        return
    value = number(stick, model, f"{name}_n")
    low, high = (units.to_si(float(end), units.ending_of(key)) for end in ends)
    if value and not low <= value[1] <= high:
        typed = as_typed(stick[value[0]])
        told = message(KitWarnings.outside_interval, typed=typed, interval=assigned(key, ends))
        yield query("interval", kit.where((*path, value[0])), told)
