"""What is doubtful in what a player file says of pressing, of doing two things at once, and of helpers."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from stickwright.errors import Problem
from stickwright.model.player import Press, Together
from stickwright.model.recorded import Finding
from stickwright.records.bands import unlikely
from stickwright.records.fields import typed_key
from stickwright.records.repeats import list_doubts, typed_lists
from stickwright.records.toml_lines import FieldPath, TomlFile
from stickwright.records.typed_tables import Noticed, doubled_names, number, query, tables, texts, unknown
from stickwright.records.typed_values import as_typed

__all__ = ["press_doubts", "sharing_doubts"]

_SLOWEST_PER_S = 0.1
"""Fewer than six presses a minute, as many as comfortable: hardly a count of a ten-second test."""
_QUICKEST_S = 0.02
"""Nobody answers or lets go faster."""
_MEASURED = ("force_n", "rate_per_s", "hold_s", "reaction_s", "release_s", "travel_m")


def sharing_doubts(player: TomlFile, site_names: tuple[str, ...], controllers: tuple[str, ...] | None) -> list[Noticed]:
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
        noticed += _pair_doubts(player, path, pair, site_names, seen)
    for path, site in tables(player.data, "site"):
        keys = [key for key in site if key.startswith("holds_")]
        if keys and all(key in ("holds_s", "holds_min", "holds_ms") for key in keys):
            noticed.append(
                query(
                    "holds",
                    f"{player.where((*path, keys[0]))}: how long the hand holds something, but not what. Add holds_g, the mass "
                    "that it held comfortably for that time.",
                )
            )
        if controllers == () and texts(site, "reaches"):
            noticed.append(
                query(
                    "reaches",
                    f"{player.where((*path, 'reaches'))}: buttons within reach, but kit.toml has no [[controller]], so "
                    "none is used. Add the controller that was tried.",
                )
            )
    return noticed


def _pair_doubts(
    player: TomlFile,
    path: FieldPath,
    pair: dict[str, Any],
    sites: tuple[str, ...],
    seen: dict[tuple[str, str], FieldPath],
) -> Iterator[Noticed]:
    named = texts(pair, "sites")
    for place, name in named:
        yield from unknown(player, (*path, "sites", place), name, sites, "a site", player.name)
    if len(named) == 2:
        one, other = (name for _, name in named)
        if one == other:
            yield Problem(
                player.where((*path, "sites")),
                f"{as_typed(one)} twice",
                "two sites",
                "Name the site that keeps the hold first, and the one that presses second.",
            )
        elif (one, other) in seen:
            yield Problem(
                player.where((*path, "sites")),
                f"{as_typed(one)} with {as_typed(other)} a second time (the first: line "
                f"{player.lines.line(seen[one, other])})",
                "each pair once in this order",
                "Delete one of the two.",
            )
        seen.setdefault((one, other), path)
    yield from _rate_doubts(player, path, pair)


def _rate_doubts(player: TomlFile, path: FieldPath, pair: dict[str, Any]) -> Iterator[Noticed]:
    alone, both = (number(pair, Together, name) for name in ("alone_per_s", "both_per_s"))
    where = player.where(path)
    if "says" in pair and (alone or both):
        yield Problem(
            player.where((*path, "says")),
            f"says = {as_typed(pair['says'])} beside press rates",
            "a word or the two rates, not both: one would have to give way",
            "Delete the word when the rates were counted.",
        )
        return
    if "says" in pair:
        return
    if not alone and not both:
        yield query(
            "pair",
            f'{where}: neither a word nor press rates, so it tells nothing. Try both at once for 20 s: says = "yes", '
            '"slows" or "no", or alone_per_s and both_per_s.',
        )
    elif not alone or not both:
        missing, there = ("both_per_s", alone) if alone else ("alone_per_s", both)
        yield query(
            "pair",
            f"{where}: {there[0] if there else ''} without {missing}, so the two cannot be compared. Count the other one "
            "too: 20 s each.",
        )
    elif alone[1] == 0:
        yield query(
            "pair",
            f"{player.where((*path, alone[0]))}: no press at the second site even alone, so the two cannot be compared. "
            "Can this site press?",
        )
    elif both[1] > alone[1]:
        yield query(
            "pair",
            f"{player.where((*path, both[0]))}: more presses with the first site held ({both[0]} = "
            f"{as_typed(pair[both[0]])}) than without ({alone[0]} = {as_typed(pair[alone[0]])}). Swapped, or warmed up "
            "in between?",
        )


def press_doubts(
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
    lists = list(typed_lists(player, spot, press, ("force", "travel"), "the press"))
    part = site.get("part")
    if isinstance(part, str):
        yield from unlikely(part, where, lists)
    counted = typed_lists(player, spot, press, ("rate", "hold", "release", "reaction"), "the press")
    yield from list_doubts(where, [*lists, *counted], gauge_step_n, "If copied, take it again.")
    yield from _unit_slips(player, spot, press)
    if not any(typed_key(press, Press, name) for name in _MEASURED):
        yield query(
            "empty_press",
            f"{where}: nothing was measured of the press. Add force_n (can be repeated ten times without strain) and "
            "rate_per_s (ten seconds, as many as comfortable).",
        )


def _unit_slips(player: TomlFile, path: FieldPath, press: dict[str, Any]) -> Iterator[Finding]:
    for typed in typed_lists(player, path, press, ("rate",), "the press"):
        some = [value for value in typed.si if value > 0]
        if some and max(some) < _SLOWEST_PER_S and typed.key.endswith("_per_min"):
            yield query(
                "unit",
                f"{typed.places[0]}: {typed.texts[0]} a minute is hardly a press rate. A second? Then name it rate_per_s. "
                "Nothing was converted.",
            )
    for typed in typed_lists(player, path, press, ("reaction", "release"), "the press"):
        if any(0 < value < _QUICKEST_S for value in typed.si):
            stem = typed.key.rsplit("_", 1)[0]
            yield query(
                "unit",
                f"{typed.places[0]}: {typed.texts[0]} {'ms' if typed.key.endswith('_ms') else 's'} is faster than anybody. "
                f"Seconds? Then name it {stem}_s. Nothing was converted.",
            )
