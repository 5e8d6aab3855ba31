"""How long the player wants to play, against how long a block of play may be; and when to look again."""

from __future__ import annotations

import datetime
import math
from collections.abc import Sequence

from stickwright.codes.cautions import Cautions
from stickwright.codes.message import Text, message
from stickwright.mechanics.stand_ins import percent
from stickwright.model.ages import age_group
from stickwright.model.game import Game
from stickwright.model.plan import SitePlan
from stickwright.model.player import Player
from stickwright.model.recorded import Finding
from stickwright.state_words import play_block_s
from stickwright.units import minutes_words

__all__ = ["growth_findings", "play_sentence", "session_findings", "wished_session_s"]

FIRST_BLOCK_S = (600.0, 900.0)
"""A first block of play, shortest and longest: common practice, no source."""
LONGEST_BLOCK_S = 2700.0
"""Play without a pause, at the longest: common practice, no source."""


def wished_session_s(player: Player, games: Sequence[Game]) -> float | None:
    """How long the player wants to play in one go: the longest that the player's file or a game's says.

    Parameters
    ----------
    player : Player
    games : sequence of Game
    """
    said = [one for one in (player.session_s, *(game.session_s for game in games)) if one is not None]
    return max(said, default=None)


def play_sentence(player: Player, games: Sequence[Game], sites: Sequence[SitePlan]) -> Text:
    """Into what blocks the play that is wished is to be parted at first; the usual words when it is no longer than one.

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
    block = min(_first_block_s(sites), _shortest_read(sites)[0])
    return f"To play {_minutes(wished)}, start with {_blocks(wished, block)}."


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
    text, tiring = [f"The player wants to play {_minutes(wished)} at a time."], _tiring(sites)
    if tiring is not None and tiring.choice is not None:
        text.append(
            f"The first blocks are short since the {tiring.name} pushes {_minutes(wished * tiring.demand.duty_share)} of that, "
            f"at {percent(tiring.choice.effort_share.number)} of its comfortable force."
        )
    text.append(_later(wished, *_shortest_read(sites), _first_block_s(sites)))
    return [Finding("note", "session", " ".join(text))]


def _tiring(sites: Sequence[SitePlan]) -> SitePlan | None:
    """The first site whose effort is above what is acceptable for its share of the time."""
    for one in sites:
        if one.choice is not None and one.choice.effort_share.number > one.choice.duty_effort_limit:
            return one
    return None


def _first_block_s(sites: Sequence[SitePlan]) -> float:
    shortest, longest = FIRST_BLOCK_S
    return longest if _tiring(sites) is None else shortest


def _later(wished_s: float, block_s: float, site: str, first_s: float) -> str:
    """How play may go on once the first blocks go well, and what that rests on."""
    if site:
        most = f"The {site} was read tired: no more than about {_minutes(block_s)} at a time"
        return f"{most}, which makes {_blocks(wished_s, block_s)}." if first_s < block_s < wished_s else f"{most}."
    unread = "Nothing was read tired yet: take the first direction again after a block."
    if wished_s > LONGEST_BLOCK_S:
        return f"When that goes well: {_blocks(wished_s, LONGEST_BLOCK_S)} at the longest. {unread}"
    return f"When that goes well, lengthen the blocks step by step. {unread}"


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


def _blocks(wished_s: float, block_s: float) -> str:
    count = math.ceil(wished_s / block_s - 1e-9)
    return f"{count} blocks of {_minutes(wished_s / count)}, with 5 to 10 min of rest between them"


def _minutes(seconds: float) -> str:
    return minutes_words(60.0 * round(seconds / 60))


def growth_findings(player: Player) -> list[Finding]:
    """That a child grows out of a set-up, and by when to look again.

    Parameters
    ----------
    player : Player
    """
    if age_group(player.age_band) != "child":
        return []
    due = _a_year_on(player.visit)
    when = f"by {due} at the latest" if due else "once a year at least"
    return [
        Finding(
            "note", "growth",
            f"Children grow: force, movement range and the chair change within a year. Measure again and check every mount {when}, "
            "and whenever the chair or its seat is changed.",
        )
    ]  # fmt: skip


def _a_year_on(visit: str) -> str:
    try:
        day = datetime.date.fromisoformat(visit)
    except ValueError:  # no date, or none that can be read, which is told where the file is read
        return ""
    last = (day.month, day.day) == (2, 29)
    return day.replace(year=day.year + 1, day=28 if last else day.day).isoformat()
