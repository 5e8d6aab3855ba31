"""What is contradictory or half said of mounts and fasteners: ranges the wrong way round, arms without lengths or strength,
fasteners without the figures of their label.

A figure that is missing is asked about and never made up: what nobody knows to hold counts as not holding.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from stickwright.errors import Problem
from stickwright.model.kit import Fastener, Mount
from stickwright.model.recorded import Finding
from stickwright.records.fields import typed_key
from stickwright.records.toml_lines import FieldPath, TomlFile
from stickwright.records.typed_points import typed_row
from stickwright.records.typed_tables import Noticed, number, query, tables
from stickwright.records.typed_values import as_typed
from stickwright.units import spoken

__all__ = ["mount_doubts"]

_ARMS = ("friction arm", "gooseneck")
_RANGES = ("tube_m", "edge_m", "tilts_rad", "release_n")
_STRENGTHS: dict[str, tuple[str, ...]] = {
    "hook-and-loop": ("shear_pa", "tension_pa", "peel_n_per_m"),
    "mushroom-head": ("shear_pa", "tension_pa", "peel_n_per_m"),
    "screw": ("shear_pa", "tension_pa"),
    "suction": ("shear_pa", "tension_pa"),
    "strap": ("shear_pa", "tension_pa"),
    "anti-slip sheet": ("friction",),
}
"""What the label of each kind has to tell before anything is said to hold."""
_JAWS_M = (0.008, 0.2)
"""Between these is what a clamp takes up: common practice, no source."""
_SLOW_S = 300.0
"""Nobody waits so long for a transfer: common practice, no source."""
_LEFT_OUT = ("peel_n_per_m",)
"""Often not on the label: asked for only when the rest is missing too."""


def mount_doubts(kit: TomlFile) -> Iterator[Noticed]:
    """What is doubtful of the mounts and fasteners of a kit.

    Parameters
    ----------
    kit : TomlFile
        The file as parsed.
    """
    for path, mount in tables(kit.data, "mount"):
        yield from _ranges_turned(kit, path, mount)
        yield from _clamp_doubts(kit, path, mount)
        yield from _arm_doubts(kit, path, mount)
        yield from _own_figures(kit, path, mount)
        yield from _sizes_of_clamps(kit, path, mount)
    for path, fastener in tables(kit.data, "fastener"):
        yield from _strength_doubts(kit, path, fastener)


def _has(table: dict[str, Any], model: type[Mount] | type[Fastener], name: str) -> bool:
    key = typed_key(table, model, name)
    return key is not None and table[key] != []


def _ranges_turned(kit: TomlFile, path: FieldPath, mount: dict[str, Any]) -> Iterator[Problem]:
    for name in _RANGES:
        row = typed_row(mount, Mount, name, 2)
        if row and row[1][0] > row[1][1]:
            yield Problem(kit.where((*path, row[0])), as_typed(mount[row[0]]), "the smaller first", "Swap the two.")


def _clamp_doubts(kit: TomlFile, path: FieldPath, mount: dict[str, Any]) -> Iterator[Finding]:
    kind = mount.get("kind")
    wanted = {"table clamp": ("edge_m",), "tube clamp": ("tube_m",)}.get(str(kind), ("tube_m", "edge_m"))
    if kind in ("table clamp", "tube clamp", *_ARMS) and not any(_has(mount, Mount, name) for name in wanted):
        keys = " or ".join(f"{name.removesuffix('_m')}_mm = [thinnest, thickest]" for name in wanted)
        yield query(
            "clamp",
            f"{kit.where(path)}: what its clamp holds is not said, so it is put nowhere. Open it and shut it with a tape "
            f"beside it: {keys}.",
        )


def _sizes_of_clamps(kit: TomlFile, path: FieldPath, mount: dict[str, Any]) -> Iterator[Finding]:
    """Jaws of a few millimetres or as long as a forearm: the wrong side of the tape; and a time that is nobody's."""
    for name, what in (
        ("clamp_width_m", "its clamp takes along a tube or edge"),
        ("jaw_depth_m", "its jaw reaches in"),
    ):
        typed = number(mount, Mount, name)
        if typed is None or typed[1] <= 0 or _JAWS_M[0] <= typed[1] <= _JAWS_M[1]:
            continue
        low, high = (spoken(size, "mm") for size in _JAWS_M)
        unit = " Inches typed as millimetres?" if typed[1] < _JAWS_M[0] else " A slip in typing?"
        yield query(
            "clamp",
            f"{kit.where((*path, typed[0]))}: {spoken(typed[1], 'mm')} is what {what}; {low} to {high} is usual.{unit} If it was "
            "measured so, leave it.",
        )
    time = number(mount, Mount, "take_off_s")
    if time is not None and time[1] > _SLOW_S:
        yield query(
            "take_off",
            f"{kit.where((*path, time[0]))}: {spoken(time[1], 's')} to take it off for a transfer. Is that the time to set it up "
            "(setup_min)? Time it with one hand, from the first grip until the player is free.",
        )


def _arm_doubts(kit: TomlFile, path: FieldPath, mount: dict[str, Any]) -> Iterator[Finding]:
    if mount.get("kind") not in _ARMS:
        return
    missing = [
        f"{what} ({key})"
        for name, what, key in (
            ("links_m", "the lengths of its links", "links_mm"),
            ("holding_nm", "what its joints hold", "holding_nm"),
        )
        if not _has(mount, Mount, name)
    ]
    if missing:
        yield query(
            "arm",
            f"{kit.where(path)}: {' and '.join(missing)} {'is' if len(missing) == 1 and 'what' in missing[0] else 'are'} not "
            "said, so nobody can tell whether it reaches and holds. Measure from joint to joint; stretch it level and hang "
            "weights at its end until a joint slips: kilograms times 9.8 times metres.",
        )


def _own_figures(kit: TomlFile, path: FieldPath, mount: dict[str, Any]) -> Iterator[Finding]:
    if mount.get("kind") == "breakaway coupling" and not _has(mount, Mount, "release_n"):
        yield query(
            "release",
            f"{kit.where(path)}: the force at which it lets go is not said, so it counts as no breakaway. Pull it off with a "
            "gauge at its softest and its firmest: release_n = [least, most].",
        )


def _strength_doubts(kit: TomlFile, path: FieldPath, fastener: dict[str, Any]) -> Iterator[Finding]:
    names = _STRENGTHS.get(str(fastener.get("kind")), ())
    given = [name for name in names if _has(fastener, Fastener, name)]
    missing = [name for name in names if name not in given and name not in _LEFT_OUT]
    shown = {"shear_pa": "shear_kpa", "tension_pa": "tension_kpa", "friction": "friction"}
    if missing:
        yield query(
            "fastener",
            f"{kit.where(path)}: {' and '.join(shown[name] for name in missing)} not given. Read the label; until then it "
            "counts as not holding.",
        )
    strengths = [name for name in given if name != "friction"]
    if strengths and not str(fastener.get("test_method", "")).strip():
        yield Finding(
            "note",
            "fastener",
            f"{kit.where(path)}: strengths without the test method they come from (test_method): figures of different tests "
            "cannot be compared.",
        )
