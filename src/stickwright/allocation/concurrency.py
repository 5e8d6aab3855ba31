"""Which sites can act at the same time, and which part tires first."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Literal

from stickwright.allocation.pressing import BUDGET_SHARE, FREQUENT_EFFORT_SHARE, HELD_KINDS, HOLD_SHARE
from stickwright.codes.layouts import Layouts
from stickwright.codes.message import Message, Name, Text, message
from stickwright.model.game import Action, Game
from stickwright.model.player import Player, Site, Together
from stickwright.model.sharing import Pair, Placement, SiteLoad

__all__ = [
    "NO_ABOVE_SHARE", "SLOWS_FROM_SHARE", "UNTRIED_SLOWED_SHARE", "USUAL_SLOWED_SHARE", "interference_share", "limb_of",
    "pairs_of", "site_loads", "tiring_order",
]  # fmt: skip

SLOWS_FROM_SHARE, NO_ABOVE_SHARE = 0.2, 0.5
"""Loss of press rate beside the other site: from the first on it slows, above the second they cannot act together.
Common practice, no source."""
USUAL_SLOWED_SHARE = 0.3
"""Loss of press rate where a pair is said to slow and no rate was taken (assumed)."""
UNTRIED_SLOWED_SHARE = 0.5
"""The same of two parts of one limb that nobody tried together: common practice, no source. It costs, and refuses nothing."""

_LIMBS = {
    "arm": ("fingertip", "thumb", "hand", "forearm", "elbow", "shoulder"),
    "leg": ("knee", "thigh", "foot", "toe"),
    "head": ("chin", "lip", "cheek", "tongue", "head"),
    "trunk": ("trunk",),
}
_LIMB_OF_PART = {part: limb for limb, parts in _LIMBS.items() for part in parts}
_SIDED = ("arm", "leg")


def limb_of(site: Site) -> str:
    """The limb a site belongs to: 'right arm', 'left leg', 'head', 'trunk'; 'unsaid arm' when no side is told.

    Parameters
    ----------
    site : Site
        Its side, or else the word left or right in its name.

    Examples
    --------
    >>> limb_of(Site(name="left index", part="fingertip")), limb_of(Site(name="knee", part="knee"))
    ('left arm', 'unsaid leg')
    """
    limb = _LIMB_OF_PART[site.part]
    return f"{_side(site) or 'unsaid'} {limb}" if limb in _SIDED else limb


def _side(site: Site) -> Literal["left", "right"] | None:
    """Left or right, said or by the name; None when neither tells, or the name tells both."""
    if site.side in ("left", "right"):
        return site.side
    named = set(re.findall(r"\b(left|right)\b", site.name.casefold()))
    if site.side is not None or len(named) != 1:
        return None
    return "left" if "left" in named else "right"


def interference_share(alone_per_s: float, both_per_s: float) -> float:
    """Part of the press rate that is lost while another site keeps a hold: 1 - both / alone, never below 0.

    Parameters
    ----------
    alone_per_s, both_per_s : float
        Presses a second in the 20 s test.

    Returns
    -------
    float
        NaN when it presses at no rate alone.

    Examples
    --------
    >>> round(interference_share(1.4, 1.2), 2)
    0.14
    """
    return max(0.0, round(1 - both_per_s / alone_per_s, 9)) if alone_per_s > 0 else math.nan


def pairs_of(player: Player) -> tuple[Pair, ...]:
    """For every two sites whether they can act at the same time.

    Returns
    -------
    tuple of Pair
        In the order of the player's sites. What was tried counts as tried, the worst of several trials; what was not
        slows by a usual share within a limb and is "yes" between limbs, marked.
    """
    return tuple(_pair(player, first, second) for first, second in combinations(player.site, 2))


def _pair(player: Player, first: Site, second: Site) -> Pair:
    names = (first.name, second.name)
    tried = [_tried(one, names) for one in player.together if set(one.sites) == set(names)]
    known = [pair for pair in tried if pair is not None]
    if known:
        return max(known, key=lambda pair: (("yes", "slows", "no").index(pair.says), pair.slowed_share))
    limbs = limb_of(first), limb_of(second)
    sideless = [site.name for site, limb in zip((first, second), limbs, strict=True) if limb.startswith("unsaid")]
    if limbs[0] == limbs[1] and not sideless:
        why = message(Layouts.same_limb, slowed_share=UNTRIED_SLOWED_SHARE)
        return Pair(names, "slows", UNTRIED_SLOWED_SHARE, why)
    if sideless and limbs[0].split()[-1] == limbs[1].split()[-1]:
        return Pair(names, "yes", 0.0, message(Layouts.side_unsaid, sites=tuple(map(Name, sideless))))
    return Pair(names, "yes", 0.0, message(Layouts.different_limbs))


def _tried(together: Together, names: tuple[str, str]) -> Pair | None:
    """What one trial tells; None when it holds neither a word nor two rates."""
    lost = math.nan
    if together.alone_per_s is not None and together.both_per_s is not None:
        lost = interference_share(together.alone_per_s, together.both_per_s)
    says = together.says
    if says is None:
        if math.isnan(lost):
            return None
        says = "no" if lost > NO_ABOVE_SHARE else "slows" if lost >= SLOWS_FROM_SHARE else "yes"
    if not math.isnan(lost):
        return Pair(names, says, lost, None)
    if says == "slows":
        why = message(Layouts.slows_unknown, slowed_share=USUAL_SLOWED_SHARE)
        return Pair(names, says, USUAL_SLOWED_SHARE, why)
    return Pair(names, says, 1.0 if says == "no" else 0.0, None)


@dataclass(frozen=True)
class _Strain:
    """One thing asked of a part, as a share of what may be asked of it."""

    share: float
    why: Message


def tiring_order(strain: Mapping[str, float], tiring_share: Mapping[str, float]) -> dict[str, int]:
    """Rank of each part by how soon it tires: 1 first, 0 when nothing tells.

    Parameters
    ----------
    strain : mapping of str to float
        By site: what is asked as a share of what may be asked, 1 at the limit; NaN when not known.
    tiring_share : mapping of str to float
        By site: share of force lost from the first to the last reading, where it was repeated. What is left carries
        the same load, so the strain grows by 1 / (1 - loss).

    Examples
    --------
    >>> tiring_order({"chin": 0.60, "left index": 0.55, "cheek": math.nan}, {"left index": 0.18})
    {'chin': 2, 'left index': 1, 'cheek': 0}
    """
    raised = {site: _raised(share, tiring_share.get(site, 0.0)) for site, share in strain.items()}
    ranked = sorted((site for site, share in raised.items() if share > 0), key=lambda site: -raised[site])
    return {site: ranked.index(site) + 1 if site in ranked else 0 for site in strain}


def _raised(share: float, lost: float) -> float:
    if not lost > 0:
        return share
    return share / (1 - lost) if lost < 1 else math.inf


def site_loads(
    placements: Sequence[Placement], player: Player, game: Game, tiring_share: Mapping[str, float]
) -> tuple[SiteLoad, ...]:
    """What each part is asked to do, and which tires first.

    Parameters
    ----------
    placements : sequence of Placement
        Those at a site count.
    player : Player
    game : Game
    tiring_share : mapping of str to float
        Share of force lost over the visit, by site, where it was measured.

    Returns
    -------
    tuple of SiteLoad
        In the order of the player's sites; sites with nothing to do are left out. Busy is the share of the busy
        minute that presses take, moving between switches and kept holds counted.
    """
    actions = {action.name: action for action in game.action}
    used = [
        (
            site,
            [
                placement
                for placement in placements
                if placement.how == "site" and placement.site == site.name and placement.action in actions
            ],
        )
        for site in player.site
    ]
    used = [(site, mine) for site, mine in used if mine]
    busy = {site.name: _busy_share(mine, actions) for site, mine in used}
    most = {site.name: _most_strained(mine, actions, busy[site.name]) for site, mine in used}
    order = tiring_order({name: strain.share for name, strain in most.items()}, tiring_share)
    return tuple(
        SiteLoad(
            site=site.name,
            devices=tuple(dict.fromkeys(one.device for one in mine if one.device is not None)),
            actions=tuple(one.action for one in mine),
            busy_share=busy[site.name],
            tires=order[site.name],
            why=message(Layouts.load, why=most[site.name].why, lost_share=_lost(tiring_share.get(site.name, 0.0))),
            part=site.part,
            side=site.side or _side(site) or "",
            busy_basis=_busy_basis(mine, actions),
        )
        for site, mine in used
    )


def _lost(share: float) -> float | None:
    return share if share > 0 else None


def _busy_share(mine: Sequence[Placement], actions: Mapping[str, Action]) -> float:
    return math.fsum(_busy_of(one, actions[one.action], _several(mine)) for one in mine)


def _several(mine: Sequence[Placement]) -> bool:
    """Whether the part moves between switches."""
    return len({(one.device, one.socket, one.control) for one in mine if one.press is not None}) > 1


def _busy_basis(mine: Sequence[Placement], actions: Mapping[str, Action]) -> Text:
    """What the busy share adds up from, each action with its presses and the time of one."""
    several, told = _several(mine), list[Message]()
    for one in mine:
        if one.press is None:
            continue
        name = Name(one.action)
        if _busy_of(one, actions[one.action], several) > _pressing_share(one, several):
            told.append(message(Layouts.busy_held, action=name, duty_share=actions[one.action].duty_share))
            continue
        told.append(
            message(
                Layouts.busy_pressed,
                action=name,
                count_per_min=one.press.presses_per_min,
                cycle_s=one.press.cycle_s,
                move_s=one.press.move_s if several and one.press.move_s > 0 else None,
            )
        )
    busy_s = 60 * _busy_share(mine, actions)
    return message(Layouts.busy_basis, parts=tuple(told), busy_s=busy_s) if told else ""


def _pressing_share(placement: Placement, several: bool) -> float:
    press = placement.press
    if press is None:
        return 0.0
    return press.presses_per_min * (press.cycle_s + (press.move_s if several else 0.0)) / 60


def _busy_of(placement: Placement, action: Action, several: bool) -> float:
    if placement.press is None:
        return 0.0
    presses = _pressing_share(placement, several)
    kept = action.kind in HELD_KINDS and not placement.toggle and "duty_share" in action.model_fields_set
    return max(presses, action.duty_share) if kept else presses


def _most_strained(mine: Sequence[Placement], actions: Mapping[str, Action], busy_share: float) -> _Strain:
    found = [strain for one in mine for strain in _strains(one, actions[one.action])]
    if busy_share > 0:
        found.append(_Strain(busy_share / BUDGET_SHARE, message(Layouts.load_busy, busy_share=busy_share)))
    told = [strain for strain in found if strain.share > 0]
    return max(told, key=lambda strain: strain.share, default=_Strain(math.nan, message(Layouts.load_unknown)))


def _strains(placement: Placement, action: Action) -> list[_Strain]:
    """Effort and hold of one placement."""
    out = []
    if placement.press is not None:
        press = placement.press
        if press.effort_share is not None:
            words = message(
                Layouts.load_press,
                action=Name(action.name),
                effort_share=press.effort_share,
                count_per_min=press.presses_per_min,
            )
            out.append(_Strain(press.effort_share / press.effort_limit_share, words))
        if press.hold_s is not None:
            out += _hold(action, press.hold_s, press.hold_limit_s)
    if placement.fit is not None:
        fit = placement.fit
        limit = min(FREQUENT_EFFORT_SHARE, fit.duty_effort_limit)
        effort = fit.effort_share.number
        words = message(Layouts.load_stick, effort_share=effort, duty_share=action.duty_share)
        out.append(_Strain(effort / limit, words))
        if action.longest_hold_s is not None:
            out += _hold(action, action.longest_hold_s, HOLD_SHARE * fit.hold_s.number)
    return out


def _hold(action: Action, asked_s: float, limit_s: float | None) -> list[_Strain]:
    if not limit_s:
        return []
    words = message(Layouts.load_hold, action=Name(action.name), held_s=asked_s, limit_s=limit_s)
    return [_Strain(asked_s / limit_s, words)]
