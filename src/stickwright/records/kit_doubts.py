"""What is contradictory or half said in a kit: figures of sticks, names, plugs, mounts, stock and prices."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from stickwright import units
from stickwright.errors import Problem
from stickwright.model.kit import Controller, Fastener, Lead, Mount, Stick, StickSetting, Switch
from stickwright.model.measured import Measured
from stickwright.model.recorded import Finding
from stickwright.records.fields import typed_key
from stickwright.records.mount_doubts import mount_doubts
from stickwright.records.toml_lines import FieldPath, TomlFile
from stickwright.records.typed_tables import (
    Noticed,
    doubled_names,
    name_of,
    number,
    placed,
    plug_doubts,
    query,
    tables,
    taken_names,
    texts,
)
from stickwright.records.typed_values import as_typed

__all__ = ["kit_doubts"]

_DEVICES: dict[str, type[Measured]] = {"stick": Stick, "switch": Switch, "controller": Controller, "lead": Lead}
"""What is wired, and is named in a wish: one name must mean one thing."""
_THINGS: dict[str, type[Measured]] = {**_DEVICES, "mount": Mount, "fastener": Fastener}
"""What a plan calls by name and the van has or has not."""
_Table = tuple[FieldPath, dict[str, Any]]


def kit_doubts(kit: TomlFile, *, has_hub: bool = False) -> list[Noticed]:
    """What is doubtful in a kit.

    Parameters
    ----------
    kit : TomlFile
        The file as parsed.
    has_hub : bool
        Whether a hub is described: only then does a missing plug matter.
    """
    noticed: list[Noticed] = []
    for key in (*_THINGS, "topper", "extension"):
        noticed += doubled_names(kit, tables(kit.data, key), key)
    for key in _DEVICES:
        noticed += taken_names(kit, tables(kit.data, key), key)
    noticed += _names_of_two_kinds(kit)
    for path, stick in tables(kit.data, "stick"):
        noticed += _stick_doubts(kit, path, stick)
    for key in _DEVICES:
        for path, device in tables(kit.data, key):
            noticed += plug_doubts(kit, (*path, "plug"), device.get("plug"))
            for place, text in texts(device, "sockets"):
                noticed += plug_doubts(kit, (*path, "sockets", place), text)
            if isinstance(device.get("sockets"), str):
                noticed += plug_doubts(kit, (*path, "sockets"), device["sockets"])
    noticed += _switch_doubts(kit)
    noticed += _hand_doubts(kit)
    noticed += mount_doubts(kit)
    noticed += _stock_doubts(kit)
    if has_hub:
        noticed += _without_plug(kit)
    return noticed


def _things(kit: TomlFile, of: dict[str, type[Measured]]) -> list[tuple[str, _Table]]:
    return [(key, found) for key in of for found in tables(kit.data, key)]


def _names_of_two_kinds(kit: TomlFile) -> Iterator[Problem]:
    first: dict[str, tuple[str, FieldPath]] = {}
    for kind, (path, device) in _things(kit, _THINGS):
        name = name_of(device)
        if name is None:
            continue
        other, there = first.setdefault(name.strip().casefold(), (kind, path))
        if other != kind:
            yield Problem(
                kit.where((*path, "name")),
                f"a {kind} with the name of the {other} {as_typed(name)} (line {kit.lines.line(there)})",
                "one name for one device: plans and wishes call each by its name alone",
                f"Choose another name for the {kind}.",
            )


def _in_stock(device: dict[str, Any], model: type[Measured]) -> float:
    said = number(device, model, "in_stock")
    return said[1] if said else 1.0


def _stock_doubts(kit: TomlFile) -> Iterator[Finding]:
    devices = _things(kit, _DEVICES)
    never: list[_Table] = []
    to_buy: list[_Table] = []
    for kind, found in _things(kit, _THINGS):
        if _in_stock(found[1], _THINGS[kind]) == 0:
            (to_buy if number(found[1], _THINGS[kind], "price") else never).append(found)
    if never:
        yield query(
            "stock",
            f"{kit.name}: none in stock and no price: {placed(kit, never)}. So never used. Give in_stock when one is "
            "there, or a price when one may be bought.",
        )
    if to_buy:
        yield Finding("note", "stock", f"{kit.name}: none in stock, counts as something to buy: {placed(kit, to_buy)}.")
    usable = [kind for kind, (_, device) in devices if _in_stock(device, _DEVICES[kind]) > 0 and kind != "lead"]
    if not usable and any(kind != "lead" for kind, _ in devices):
        yield query(
            "stock",
            f"{kit.name}: every device is out of stock (in_stock = 0 throughout). Is the kit on loan? What is in the "
            "van today needs in_stock = 1 or more.",
        )


def _without_plug(kit: TomlFile) -> Iterator[Finding]:
    bare = [
        found
        for kind, found in _things(kit, _DEVICES)
        if kind in ("stick", "switch") and not found[1].get("plug") and _in_stock(found[1], _DEVICES[kind]) > 0
    ]
    bare += [found for found in tables(kit.data, "controller") if found[1].get("plug") == ""]
    if bare:
        yield query(
            "plug",
            f"{kit.name}: no plug is said for {placed(kit, bare)}. Such a device cannot be wired to a hub. Look at the "
            'plug: plug = "USB", "4-conductor" or "2-conductor".',
        )


def _switch_doubts(kit: TomlFile) -> Iterator[Finding]:
    for path, switch in tables(kit.data, "switch"):
        force, senses = number(switch, Switch, "force_n"), number(switch, Switch, "senses_at_m")
        if switch.get("kind", "press") == "press" and not (force and force[1] > 0):
            yield query(
                "switch",
                f"{kit.where(path)}: no force to operate it is said, so it counts as none. Bench it, or write "
                'kind = "proximity" when it acts without touch.',
            )
        if switch.get("kind") == "proximity" and senses is None:
            yield query(
                "switch",
                f"{kit.where(path)}: a proximity switch without the distance at which it acts. Add senses_at_mm.",
            )


def _stick_doubts(kit: TomlFile, path: FieldPath, stick: dict[str, Any]) -> Iterator[Noticed]:
    settings = list(tables(stick, "setting", path))
    yield from _crosswise_doubts(kit, path, stick)
    yield from _figure_doubts(kit, path, stick, Stick, stick)
    for where, setting in settings:
        yield from _figure_doubts(kit, where, setting, StickSetting, stick)
    yield from doubled_names(kit, settings, "setting")
    listed = stick.get("set_as")
    for where, setting in settings:
        if isinstance(listed, str) and listed and name_of(setting) == listed:
            yield Problem(
                kit.where((*where, "name")),
                f"a setting with the name of the one listed with the stick itself (set_as = {as_typed(listed)})",
                "one name for one setting",
                "Rename one of the two, or delete the setting that stands there twice.",
            )
    if settings and not (isinstance(listed, str) and listed.strip()):
        yield query(
            "setting",
            f"{kit.where(path)}: it can be set in several ways, but the setting that its own figures belong to has no "
            'name. Give it one, e.g. set_as = "magnet out".',
        )


def _hand_doubts(kit: TomlFile) -> Iterator[Noticed]:
    """Sticks on grips that are not there, and controllers to be held that nobody weighed; settings of one name."""
    pads = {name_of(pad) for _, pad in tables(kit.data, "controller")}
    for path, stick in tables(kit.data, "stick"):
        grip = stick.get("fixed_to")
        if isinstance(grip, str) and grip and grip not in pads:
            yield Problem(
                kit.where((*path, "fixed_to")),
                as_typed(grip),
                "the name of a controller of kit.toml, to whose grip the stick is fixed",
                "Add that controller, or correct the name.",
            )
    for path, pad in tables(kit.data, "controller"):
        yield from doubled_names(kit, list(tables(pad, "setting", path)), "setting")
        if pad.get("held") in ("one hand", "two hands") and not any(key.startswith("mass") for key in pad):
            yield query(
                "held",
                f"{kit.where(path)}: it is held in the hand, but nobody weighed it, so a usual mass stands in. Add mass_g.",
            )


def _crosswise_doubts(kit: TomlFile, path: FieldPath, stick: dict[str, Any]) -> Iterator[Noticed]:
    """What is half said of standing crosswise."""
    turns = stick.get("turns_output")
    if stick.get("crosswise") is False and isinstance(turns, str) and turns:
        yield Problem(
            kit.where((*path, "turns_output")),
            f"turns_output = {as_typed(turns)} with crosswise = false",
            "what turns the output of a base that can stand crosswise",
            "Write crosswise = true, or delete turns_output.",
        )
    if stick.get("crosswise") is True and not turns:
        yield query(
            "crosswise",
            f"{kit.where(path)}: it can stand crosswise, but what turns its output then is not recorded. Add turns_output = "
            '"itself", "hub" or "game", or how it is done in words.',
        )
    sides = stick.get("base_mm", stick.get("base_m"))
    if stick.get("crosswise") is True and sides is None:
        yield query(
            "crosswise",
            f"{kit.where(path)}: whether it has to stand crosswise cannot be told without the size of its base. Add base_mm "
            "(length, width, height).",
        )


def _figure_doubts(
    kit: TomlFile, path: FieldPath, table: dict[str, Any], model: type[Measured], stick: dict[str, Any]
) -> Iterator[Noticed]:
    """Figures of a stick, or of one of its settings, that contradict each other."""
    start, full = (number(table, model, name) for name in ("start_force_n", "full_force_n"))
    if start and full and full[1] < start[1]:
        yield Problem(
            kit.where((*path, full[0])),
            f"{full[0]} = {as_typed(table[full[0]])} below {start[0]} = {as_typed(table[start[0]])}",
            "a force at the stop that is at least the force to leave the centre",
            "Look whether the two are swapped, or in different units.",
        )
    height, travel = number(stick, Stick, "contact_height_m"), number(table, model, "travel_m")
    if height and travel and stick.get("kind", "lever") == "lever" and travel[1] > height[1]:
        yield Problem(
            kit.where((*path, travel[0])),
            f"{travel[0]} = {as_typed(table[travel[0]])} with {height[0]} = {as_typed(stick[height[0]])}",
            "a travel no longer than the contact height (travel is height times the sine of the angle)",
            "Measure travel from the centre to the stop, not from stop to stop, and height from the pivot.",
        )
    for name in ("start_force", "full_force", "friction_force"):
        yield from _interval_doubts(kit, path, table, model, name)


def _interval_doubts(
    kit: TomlFile, path: FieldPath, stick: dict[str, Any], model: type[Measured], name: str
) -> Iterator[Noticed]:
    key = typed_key(stick, model, f"{name}_interval_n")
    ends = stick.get(key) if key else None
    if key is None or not isinstance(ends, list) or len(ends) != 2:
        return
    if not all(isinstance(end, int | float) and not isinstance(end, bool) for end in ends):
        return
    if ends[0] > ends[1]:
        yield Problem(kit.where((*path, key)), as_typed(ends), "the lower end first", "Swap the two.")
        return
    value = number(stick, model, f"{name}_n")
    low, high = (units.to_si(float(end), units.ending_of(key)) for end in ends)
    if value and not low <= value[1] <= high:
        yield Finding(
            "query",
            "interval",
            f"{kit.where((*path, value[0]))}: {as_typed(stick[value[0]])} lies outside its own interval "
            f"{key} = {as_typed(ends)}. Was one of them typed in another unit, or not brought up to date?",
        )
