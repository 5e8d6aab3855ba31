"""What is contradictory or half said of mounts and fasteners: ranges the wrong way round, arms without lengths or strength,
fasteners without the figures of their label.

A figure that is missing is asked about and never made up: what nobody knows to hold counts as not holding.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Literal

from stickwright.codes.message import message
from stickwright.codes.mount_warnings import ArmFigure, Held, MountWarnings, Strength
from stickwright.codes.warnings import Warnings
from stickwright.errors import Problem
from stickwright.files.fields import typed_key
from stickwright.files.toml_lines import FieldPath, TomlFile
from stickwright.files.typed_points import typed_row
from stickwright.files.typed_tables import Noticed, number, query, tables, told_at
from stickwright.files.typed_values import as_typed
from stickwright.model.kit import Fastener, Mount
from stickwright.model.recorded import Finding

__all__ = ["mount_warnings"]

_ARMS = ("friction arm", "gooseneck")
_RANGES = ("tube_m", "edge_m", "tilts_rad", "release_n")
_STRENGTHS: dict[str, tuple[Strength, ...]] = {
    "hook-and-loop": ("shear_pa", "tension_pa", "peel_n_per_m"),
    "mushroom-head": ("shear_pa", "tension_pa", "peel_n_per_m"),
    "screw": ("shear_pa", "tension_pa"),
    "suction": ("shear_pa", "tension_pa"),
    "strap": ("shear_pa", "tension_pa"),
    "anti-slip sheet": ("friction",),
}
"""What the label of each kind has to tell before anything is said to hold."""
_CLAMPS: dict[str, tuple[Held, ...]] = {"table clamp": ("edge_m",), "tube clamp": ("tube_m",)}
_JAWS_M = (0.008, 0.2)
"""Between these is what a clamp takes up: common practice, no source."""
_SLOW_S = 300.0
"""Nobody waits so long for a transfer: common practice, no source."""
_LEFT_OUT: tuple[Strength, ...] = ("peel_n_per_m",)
"""Often not on the label: asked for only when the rest is missing too."""


def mount_warnings(kit: TomlFile) -> Iterator[Noticed]:
    """What is doubtful of the mounts and fasteners of a kit.

    Parameters
    ----------
    kit : TomlFile
        The file as parsed.
    """
    for path, mount in tables(kit.data, "mount"):
        yield from _ranges_turned(kit, path, mount)
        yield from _clamp_warnings(kit, path, mount)
        yield from _arm_warnings(kit, path, mount)
        yield from _own_figures(kit, path, mount)
        yield from _sizes_of_clamps(kit, path, mount)
    for path, fastener in tables(kit.data, "fastener"):
        yield from _strength_warnings(kit, path, fastener)


def _has(table: dict[str, Any], model: type[Mount] | type[Fastener], name: str) -> bool:
    key = typed_key(table, model, name)
    return key is not None and table[key] != []


def _ranges_turned(kit: TomlFile, path: FieldPath, mount: dict[str, Any]) -> Iterator[Problem]:
    for name in _RANGES:
        row = typed_row(mount, Mount, name, 2)
        if row and row[1][0] > row[1][1]:
            expected, remedy = message(MountWarnings.smaller_first), message(Warnings.swap)
            yield Problem(kit.where((*path, row[0])), as_typed(mount[row[0]]), expected, remedy)


def _clamp_warnings(kit: TomlFile, path: FieldPath, mount: dict[str, Any]) -> Iterator[Finding]:
    kind = mount.get("kind")
    wanted: tuple[Held, ...] = _CLAMPS.get(str(kind), ("tube_m", "edge_m"))
    if kind in ("table clamp", "tube clamp", *_ARMS) and not any(_has(mount, Mount, name) for name in wanted):
        yield query("clamp", kit.where(path), message(MountWarnings.clamp_range, holds=wanted))


def _sizes_of_clamps(kit: TomlFile, path: FieldPath, mount: dict[str, Any]) -> Iterator[Finding]:
    """Jaws of a few millimetres or as long as a forearm: the wrong side of the tape; and a time that is nobody's."""
    sizes: tuple[Literal["clamp_width", "jaw_depth"], ...] = ("clamp_width", "jaw_depth")
    low, high = _JAWS_M
    for size in sizes:
        typed = number(mount, Mount, f"{size}_m")
        if typed is None or typed[1] <= 0 or low <= typed[1] <= high:
            continue
        told = message(
            MountWarnings.clamp_size, size=size, size_m=typed[1], low_m=low, high_m=high, small=typed[1] < low
        )
        yield query("clamp", kit.where((*path, typed[0])), told)
    time = number(mount, Mount, "take_off_s")
    if time is not None and time[1] > _SLOW_S:
        yield query("take_off", kit.where((*path, time[0])), message(MountWarnings.slow_to_take_off, time_s=time[1]))


def _arm_warnings(kit: TomlFile, path: FieldPath, mount: dict[str, Any]) -> Iterator[Finding]:
    if mount.get("kind") not in _ARMS:
        return
    figures: tuple[tuple[str, ArmFigure], ...] = (("links_m", "links"), ("holding_nm", "holding"))
    missing = tuple(figure for name, figure in figures if not _has(mount, Mount, name))
    if missing:
        yield query("arm", kit.where(path), message(MountWarnings.arm_unknown, missing=missing))


def _own_figures(kit: TomlFile, path: FieldPath, mount: dict[str, Any]) -> Iterator[Finding]:
    if mount.get("kind") == "breakaway coupling" and not _has(mount, Mount, "release_n"):
        yield query("release", kit.where(path), message(MountWarnings.no_release_force))


def _strength_warnings(kit: TomlFile, path: FieldPath, fastener: dict[str, Any]) -> Iterator[Finding]:
    names = _STRENGTHS.get(str(fastener.get("kind")), ())
    given = [name for name in names if _has(fastener, Fastener, name)]
    missing = tuple(name for name in names if name not in given and name not in _LEFT_OUT)
    if missing:
        yield query("fastener", kit.where(path), message(MountWarnings.no_strength, missing=missing))
    strengths = [name for name in given if name != "friction"]
    if strengths and not str(fastener.get("test_method", "")).strip():
        yield Finding("note", "fastener", told_at(kit.where(path), message(MountWarnings.no_test_method)))
