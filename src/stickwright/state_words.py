"""What the states of a player mean for the choice: what support brings, how long a block of play may be."""

from __future__ import annotations

import math
from collections.abc import Sequence

from stickwright.model.plan import StateFit
from stickwright.model.player import Site
from stickwright.model.recorded import Finding
from stickwright.units import figures, spoken

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
    out = [Finding("note", "note", f"{site.name}: {site.note}")] if site.note else []
    out += [Finding("note", "note", f"{site.name}, {one.condition}: {one.note}") for one in site.under if one.note]
    if not states:
        return out
    own, *others = states
    if sum(one.plays for one in states) > 1:
        worst = min((one for one in states if one.plays), key=lambda one: one.fit.bits.number)
        out.append(
            Finding(
                "note", "state",
                f"{site.name}: each set-up is judged in the state it does worst in of those the player will play in; for "
                f"{worst.fit.label} that is: {worst.condition or 'as first read'}.",
            )
        )  # fmt: skip
    for one in others:
        out.append(Finding("note", "state", _compared(own, one)))
        if not one.plays and one.fit.verdict == "does not fit":
            out.append(
                Finding("query", "state",
                        f"{_named(one)}, {one.fit.label} does not fit at {site.name}: keep to the state it was chosen for.")
            )  # fmt: skip
        if one.kind == "tiredness":
            out.append(_blocks(site, one))
    return out


def _named(one: StateFit) -> str:
    words = one.condition or "as first read"
    return f"{words[:1].upper()}{words[1:]}"


def _compared(own: StateFit, one: StateFit) -> str:
    more = "more" if one.force_change_share >= 0 else "less"
    bits = (own.fit.bits.number, one.fit.bits.number)
    steps = " to ".join(f"{max(1, round(2**value))}" for value in bits)
    decides = "" if one.plays else " The player will not play so: it does not decide."
    return (
        f"{_named(one)}: {100 * abs(one.force_change_share):.0f} % {more} force than {own.condition or 'as first read'}; "
        f"{one.fit.label} is predicted to reach {100 * one.fit.weakest_share.number:.0f} % of its travel in the weakest direction (against "
        f"{100 * own.fit.weakest_share.number:.0f} %) and to go from {figures(bits[0])} to {figures(bits[1])} bits (from about "
        f"{steps} steps that can be told apart).{decides}"
    )


def _blocks(site: Site, one: StateFit) -> Finding:
    if one.after_s is None:
        return Finding(
            "query", "play blocks",
            f"{site.name}, {one.condition}: after how much play it was read is not recorded, so no length of play can be "
            "derived. Add after_min.",
        )  # fmt: skip
    block_s = play_block_s(one.force_change_share, one.after_s)
    if block_s is None:
        return Finding(
            "note", "play blocks",
            f"{site.name}: no force was lost after {spoken(one.after_s, 'min')} of play, so the usual breaks do.",
        )  # fmt: skip
    return Finding(
        "note", "play blocks",
        f"{site.name}: play about {spoken(60 * round(block_s / 60), 'min')} at a time, then rest: {100 * -one.force_change_share:.0f} % "
        f"of the force was lost in {spoken(one.after_s, 'min')} of play. If that grows, bring the review forward.",
    )  # fmt: skip
