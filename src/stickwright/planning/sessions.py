"""How long the player wants to play, against how long a block of play may be; and when to look again."""

from __future__ import annotations

import datetime
import math
from collections.abc import Sequence

from stickwright.codes.cautions import Cautions
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.sessions import Sessions
from stickwright.model.ages import age_group
from stickwright.model.game import Game
from stickwright.model.plan import SitePlan
from stickwright.model.player import Player
from stickwright.model.recorded import Finding
from stickwright.planning.states import play_block_s

__all__ = ["growth_findings", "play_blocks", "session_findings", "wished_session_s"]

FIRST_BLOCK_S = (600.0, 900.0)
"""A first block of play, shortest and longest: common practice, no source."""
LONGEST_BLOCK_S = 2700.0
"""Play without a pause, at the longest: common practice, no source."""


def wished_session_s(player: Player, games: Sequence[Game]) -> float | None:
    """How long the player wants to play in one go: the longest that the player's file or a game's says."""
    said = [one for one in (player.session_s, *(game.session_s for game in games)) if one is not None]
    return max(said, default=None)


def play_blocks(player: Player, games: Sequence[Game], sites: Sequence[SitePlan]) -> Text:
    """Into what blocks the play that is wished is to be parted at first; the usual blocks when it is no longer than one.

    Parameters
    ----------
    player : Player
    games : sequence of Game
    sites : sequence of SitePlan
        Sites with a stick, as chosen.
    """
    wished = wished_session_s(player, games)
    if wished is None or wished <= FIRST_BLOCK_S[1]:
        return message(Cautions.usual_blocks)
    blocks = _blocks(wished, min(_first_block_s(sites), _shortest_read(sites)[0]))
    return message(Sessions.first_blocks, wished_s=wished, blocks=blocks, block_s=wished / blocks)


def session_findings(player: Player, games: Sequence[Game], sites: Sequence[SitePlan]) -> list[Finding]:
    """Why the first blocks are so long, and how play may go on once they go well.

    Parameters
    ----------
    player : Player
    games : sequence of Game
    sites : sequence of SitePlan
        Sites with a stick, as chosen.

    Notes
    -----
    Start with 10 to 15 minutes, pause 5 to 10 in every 30 to 45: common practice, no source. Where the effort of a stick is above
    what is acceptable for its share of the time [potvin-2012], the first block is the shorter one. Where a site was read tired,
    no block is longer than the time in which a tenth of its force is lost.
    """
    wished = wished_session_s(player, games)
    if wished is None or wished <= FIRST_BLOCK_S[1]:
        return []
    return [
        Finding(
            "note",
            "session",
            message(Sessions.wish, wished_s=wished, tiring=_why_short(wished, sites), later=_later(wished, sites)),
        )
    ]


def _why_short(wished_s: float, sites: Sequence[SitePlan]) -> Message | None:
    """Why the first blocks are the shorter ones; None where they are not."""
    tiring = _tiring(sites)
    if tiring is None or tiring.choice is None:
        return None
    return message(
        Sessions.tiring, site=Name(tiring.name), time_s=wished_s * tiring.demand.duty_share,
        effort_share=tiring.choice.effort_share.number,
    )  # fmt: skip


def _tiring(sites: Sequence[SitePlan]) -> SitePlan | None:
    """The first site whose effort is above what is acceptable for its share of the time."""
    for site in sites:
        if site.choice is not None and site.choice.effort_share.number > site.choice.duty_effort_limit:
            return site
    return None


def _first_block_s(sites: Sequence[SitePlan]) -> float:
    shortest, longest = FIRST_BLOCK_S
    return longest if _tiring(sites) is None else shortest


def _later(wished_s: float, sites: Sequence[SitePlan]) -> Message:
    """How play may go on once the first blocks go well, and what that rests on."""
    block_s, site = _shortest_read(sites)
    if site:
        blocks = _blocks(wished_s, block_s) if _first_block_s(sites) < block_s < wished_s else 0
        each = wished_s / blocks if blocks else 0.0
        return message(Sessions.read_tired, site=Name(site), longest_s=block_s, blocks=blocks, block_s=each)
    if wished_s > LONGEST_BLOCK_S:
        blocks = _blocks(wished_s, LONGEST_BLOCK_S)
        return message(Sessions.longest_blocks, blocks=blocks, block_s=wished_s / blocks)
    return message(Sessions.lengthen)


def _shortest_read(sites: Sequence[SitePlan]) -> tuple[float, str]:
    """The shortest block that readings of tired sites allow, and which site; endless when none was read."""
    found = [
        (block, site.name)
        for site in sites
        for state in site.states
        if state.kind == "tiredness" and state.after_s is not None
        for block in (play_block_s(state.force_change_share, state.after_s),)
        if block is not None
    ]
    return min(found, default=(math.inf, ""))


def _blocks(wished_s: float, block_s: float) -> int:
    """Into how many blocks of no more than that length the play is parted."""
    return math.ceil(wished_s / block_s - 1e-9)


def growth_findings(player: Player) -> list[Finding]:
    """That a child grows out of a set-up, and by when to look again."""
    if age_group(player.age_band) != "child":
        return []
    return [Finding("note", "growth", message(Sessions.growth, due=_a_year_on(player.visit)))]


def _a_year_on(visit: str) -> str | None:
    try:
        day = datetime.date.fromisoformat(visit)
    except ValueError:  # no date, or none that can be read, which is told where the file is read
        return None
    last = (day.month, day.day) == (2, 29)
    return day.replace(year=day.year + 1, day=28 if last else day.day).isoformat()
