"""What the states of a player mean for the choice: what support brings, how long a block of play may be."""

from __future__ import annotations

import math
from collections.abc import Sequence

from stickwright.codes.message import Message, Name, message
from stickwright.codes.states import States
from stickwright.model.plan import StateFit
from stickwright.model.player import Site
from stickwright.model.recorded import Finding

__all__ = ["play_block_s", "state_findings"]

LOST_SHARE = 0.1
"""Share of the force that may be lost in a block of play: common practice, no source."""
SHORTEST_BLOCK_S, LONGEST_BLOCK_S = 300.0, 2700.0
"""Ends between which a block is kept: common practice, no source."""


def play_block_s(change_share: float, after_s: float) -> float | None:
    """How long a block of play may be before a tenth of the force is lost; None when nothing was lost.

    Parameters
    ----------
    change_share : float
        Force after that time against the start, minus is a loss.
    after_s : float
        Time between the two readings.

    Notes
    -----
    Assumed: the same share of the force that is left is lost in each minute. Ends of 5 and 45 minutes, and the tenth, are
    common practice without a source.

    Examples
    --------
    >>> round(play_block_s(-0.19, 2400.0))
    1200
    """
    if change_share >= 0 or after_s <= 0:
        return None
    lasts = after_s * math.log(1 - LOST_SHARE) / math.log(max(1 + change_share, 1e-6))
    return min(max(lasts, SHORTEST_BLOCK_S), LONGEST_BLOCK_S)


def state_findings(site: Site, states: Sequence[StateFit]) -> list[Finding]:
    """What differs between the states of a site, in sentences; and what must not be passed there.

    Parameters
    ----------
    site : Site
    states : sequence of StateFit
        The first stick in each state, the site's own readings first.
    """
    name = Name(site.name)
    out = [Finding("note", "note", message(States.site_note, site=name, note=Name(site.note)))] if site.note else []
    out += [
        Finding("note", "note", message(States.state_note, site=name, state=Name(one.condition), note=Name(one.note)))
        for one in site.under
        if one.note
    ]
    if not states:
        return out
    own, *others = states
    if sum(state.plays for state in states) > 1:
        worst = min((state for state in states if state.plays), key=lambda one: one.fit.bits.number)
        text = message(States.judged_in_worst, site=name, setup=worst.fit.named, state=_state(worst))
        out.append(Finding("note", "state", text))
    for one in others:
        out.append(Finding("note", "state", _compared(own, one)))
        if not one.plays and one.fit.verdict == "does not fit":
            text = message(States.does_not_fit, state=_state(one), setup=one.fit.named, site=name)
            out.append(Finding("query", "state", text))
        if one.kind == "tiredness":
            out.append(_blocks(name, one))
    return out


def _state(one: StateFit) -> Name | None:
    return Name(one.condition) if one.condition else None


def _compared(own: StateFit, one: StateFit) -> Message:
    return message(
        States.compared,
        state=_state(one),
        own_state=_state(own),
        force_change_share=one.force_change_share,
        setup=one.fit.named,
        weakest_share=one.fit.weakest_share.number,
        own_weakest_share=own.fit.weakest_share.number,
        precision_bits=one.fit.bits.number,
        own_precision_bits=own.fit.bits.number,
        decides=one.plays,
    )


def _blocks(site: Name, one: StateFit) -> Finding:
    if one.after_s is None:
        return Finding("query", "play_blocks", message(States.when_unrecorded, site=site, state=Name(one.condition)))
    block_s = play_block_s(one.force_change_share, one.after_s)
    if block_s is None:
        return Finding("note", "play_blocks", message(States.nothing_lost, site=site, after_s=one.after_s))
    text = message(
        States.play_block, site=site, block_s=block_s, lost_share=-one.force_change_share, after_s=one.after_s
    )
    return Finding("note", "play_blocks", text)
