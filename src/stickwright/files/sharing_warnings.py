"""What is doubtful in what a player file says of pressing, of doing two things at once, and of helpers."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from stickwright.codes.message import Name, message
from stickwright.codes.player_warnings import PlayerWarnings
from stickwright.codes.warnings import Warnings
from stickwright.errors import Problem
from stickwright.files.fields import typed_key
from stickwright.files.plausible_ranges import unlikely
from stickwright.files.repeats import list_warnings, typed_lists
from stickwright.files.toml_lines import FieldPath, TomlFile
from stickwright.files.typed_tables import (
    Noticed,
    assigned,
    doubled_names,
    number,
    query,
    shown_name,
    tables,
    texts,
    unknown,
)
from stickwright.files.typed_values import as_typed
from stickwright.model.player import Press, Together
from stickwright.model.recorded import Finding

__all__ = ["press_warnings", "sharing_warnings"]

_SLOWEST_PER_S = 0.1
"""Fewer than six presses a minute, as many as comfortable: hardly a count of a ten-second test."""
_QUICKEST_S = 0.02
"""Nobody answers or lets go faster."""
_MEASURED = ("force_n", "rate_per_s", "hold_s", "reaction_s", "release_s", "travel_m")


def sharing_warnings(
    player: TomlFile, site_names: tuple[str, ...], controllers: tuple[str, ...] | None
) -> list[Noticed]:
    """What is doubtful about pairs of sites, helpers and controllers within reach.

    Parameters
    ----------
    player : TomlFile
        The file as parsed.
    site_names : tuple of str
        Its sites.
    controllers : tuple of str or None
        Controllers of the kit; None when the kit cannot be read.
    """
    noticed: list[Noticed] = [*doubled_names(player, tables(player.data, "helper"), "helper")]
    seen: dict[tuple[str, str], FieldPath] = {}
    for path, pair in tables(player.data, "together"):
        noticed += _pair_warnings(player, path, pair, site_names, seen)
    for path, site in tables(player.data, "site"):
        keys = [key for key in site if key.startswith("holds_")]
        if keys and all(key in ("holds_s", "holds_min", "holds_ms") for key in keys):
            noticed.append(query("holds", player.where((*path, keys[0])), message(PlayerWarnings.holds_what)))
        if controllers == () and texts(site, "reaches"):
            noticed.append(query("reaches", player.where((*path, "reaches")), message(PlayerWarnings.no_controller)))
    return noticed


def _pair_warnings(
    player: TomlFile,
    path: FieldPath,
    pair: dict[str, Any],
    sites: tuple[str, ...],
    seen: dict[tuple[str, str], FieldPath],
) -> Iterator[Noticed]:
    named = texts(pair, "sites")
    for place, name in named:
        yield from unknown(player, (*path, "sites", place), name, sites, "site", player.name)
    if len(named) == 2:
        one, other = (name for _, name in named)
        where = player.where((*path, "sites"))
        if one == other:
            found = message(PlayerWarnings.site_twice, site=shown_name(one))
            yield Problem(where, found, message(PlayerWarnings.two_sites), message(PlayerWarnings.which_first))
        elif (one, other) in seen:
            line = player.lines.line(seen[one, other])
            found = message(PlayerWarnings.pair_again, one=shown_name(one), other=shown_name(other), line=line)
            yield Problem(where, found, message(PlayerWarnings.pair_once), message(Warnings.delete_one))
        seen.setdefault((one, other), path)
    yield from _rate_warnings(player, path, pair)


def _rate_warnings(player: TomlFile, path: FieldPath, pair: dict[str, Any]) -> Iterator[Noticed]:
    alone, both = (number(pair, Together, name) for name in ("alone_per_s", "both_per_s"))
    where = player.where(path)
    if "says" in pair and (alone or both):
        yield Problem(
            player.where((*path, "says")),
            message(PlayerWarnings.word_beside_rates, word=as_typed(pair["says"])),
            message(PlayerWarnings.word_or_rates),
            message(PlayerWarnings.delete_word),
        )
        return
    if "says" in pair:
        return
    if not alone and not both:
        yield query("pair", where, message(PlayerWarnings.empty_pair))
    elif not alone or not both:
        missing, there = ("both_per_s", alone) if alone else ("alone_per_s", both)
        given = Name(there[0] if there else "")
        yield query("pair", where, message(PlayerWarnings.one_rate, given=given, missing=Name(missing)))
    elif alone[1] == 0:
        yield query("pair", player.where((*path, alone[0])), message(PlayerWarnings.no_press_alone))
    elif both[1] > alone[1]:
        told = message(
            PlayerWarnings.more_while_holding,
            both=assigned(both[0], pair[both[0]]),
            alone=assigned(alone[0], pair[alone[0]]),
        )
        yield query("pair", player.where((*path, both[0])), told)


def press_warnings(
    player: TomlFile, path: FieldPath, site: dict[str, Any], gauge_step_n: float | None
) -> Iterator[Noticed]:
    """What is doubtful in the press readings of a site: the same questions as for its other readings, and unit slips.

    Parameters
    ----------
    player : TomlFile
        The file as parsed.
    path : tuple
        Place of the site.
    site : dict
        As typed.
    gauge_step_n : float or None
        Step of the gauge, N.
    """
    press = site.get("press")
    if not isinstance(press, dict):
        return
    spot = (*path, "press")
    where = player.where(spot)
    of_press = message(Warnings.at_press)
    lists = list(typed_lists(player, spot, press, ("force", "travel"), of_press))
    part = site.get("part")
    if isinstance(part, str):
        yield from unlikely(part, where, lists)
    counted = typed_lists(player, spot, press, ("rate", "hold", "release", "reaction"), of_press)
    yield from list_warnings(where, [*lists, *counted], gauge_step_n, press=True)
    yield from _unit_slips(player, spot, press)
    if not any(typed_key(press, Press, name) for name in _MEASURED):
        yield query("empty_press", where, message(PlayerWarnings.empty_press))


def _unit_slips(player: TomlFile, path: FieldPath, press: dict[str, Any]) -> Iterator[Finding]:
    of_press = message(Warnings.at_press)
    for typed in typed_lists(player, path, press, ("rate",), of_press):
        some = [value for value in typed.si if value > 0]
        if some and max(some) < _SLOWEST_PER_S and typed.key.endswith("_per_min"):
            yield query("unit", typed.places[0], message(PlayerWarnings.slow_rate, typed=Name(typed.texts[0])))
    for typed in typed_lists(player, path, press, ("reaction", "release"), of_press):
        if any(0 < value < _QUICKEST_S for value in typed.si):
            told = message(
                PlayerWarnings.too_quick,
                typed=Name(typed.texts[0]),
                unit="ms" if typed.key.endswith("_ms") else "s",
                key=Name(f"{typed.key.rsplit('_', 1)[0]}_s"),
            )
            yield query("unit", typed.places[0], told)
