"""Several games of one player: one set of devices, a layout for each game, and what changes between them.

Points are those of `stickwright.model.sharing`; over several games they are means by the hours that each is played.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from stickwright.codes.games import Games
from stickwright.codes.message import Message, Name, Text, message
from stickwright.model.fit import Assumption
from stickwright.model.game import SettingsBefore
from stickwright.model.recorded import Finding
from stickwright.model.response import SimpleSettings
from stickwright.model.sharing import PartLine, Sharing, Wiring

__all__ = ["GameSettings", "GamesTogether", "Layout", "Refit", "Replug"]


@dataclass(frozen=True)
class Replug:
    """One device to be plugged in elsewhere than for the first game."""

    device: str
    at: str
    """Its control site; of a controller, who plays it."""
    hub: str
    to_socket: str
    from_socket: str | None
    """Where it is for the first game; None when it is not in use then."""
    instead_of: str
    """What is in that socket for the first game; empty when nothing is."""
    unplug_first: tuple[tuple[str, str], ...] = ()
    """What must not stay plugged in beside it, each with its socket."""
    why: Text = ""
    """Why not; a sentence."""

    @property
    def words(self) -> Message:
        """As an instruction."""
        return message(
            Games.replug,
            device=Name(self.device),
            site=Name(self.at),
            socket=Name(self.to_socket),
            old_socket=Name(self.from_socket) if self.from_socket else None,
            instead_of=Name(self.instead_of) if self.instead_of else None,
            first=tuple(message(Games.unplugged, device=Name(one), socket=Name(at)) for one, at in self.unplug_first),
            why=self.why or None,
        )


@dataclass(frozen=True)
class Refit:
    """A device at a control site that is set up otherwise than for the first game, or is another one."""

    site: str
    before: Text
    """As set up for the first game."""
    after: Text
    swapped: bool
    """Whether it is another device: only where no common set was found."""

    @property
    def words(self) -> Message:
        """As an instruction."""
        return message(Games.refit, site=Name(self.site), after=self.after, before=self.before)


@dataclass(frozen=True)
class GameSettings:
    """What to set for one stick in one game."""

    site: str
    stick: str
    """With its setting."""
    simple: SimpleSettings | None
    """The two numbers to type; None when no recording tells."""
    why: Text | None
    """Why there are none, a clause; None when there are."""
    own_dead_zone_share: float | None
    """Dead zone inside the game; None when nobody found it out."""
    settings_before: SettingsBefore | None
    """What was set in this game before anything was changed; None when nobody wrote it down."""
    inner_jump: float | None
    """Output just outside the dead zone, share of full output: lifts the stick over the game's own. None without a recording."""
    settable: tuple[str, ...]
    """Which of 'dead zone' and 'sensitivity' the game lets one change: both where it is not known."""
    too_late_s: float | None
    """By how much the filter found makes this game late, where that is more than the game may be late: it stays off. Else None."""


@dataclass(frozen=True)
class Layout:
    """The control layout of one game."""

    game: str
    hours_per_week: float | None
    """As wished; None when nobody said."""
    weight_share: float
    """What the game counts for among all."""
    sharing: Sharing | None
    """None when the game names no action."""
    points: float | None
    """Of its layout with the common devices."""
    points_alone: float | None
    """With devices chosen for this game only."""
    cost: float | None
    """Points that the common set costs this game."""
    because: tuple[Text, ...]
    """What it does otherwise than it would alone, dearest first."""
    separate: tuple[Text, ...]
    """Devices that its own set-up would need beyond the common ones."""
    separate_price: float | None
    """Of those of them that are not in stock; None when a price is not known."""
    replugs: tuple[Replug, ...]
    refits: tuple[Refit, ...]
    own_dead_zone_share: float | None
    """Dead zone inside this game."""
    settings: tuple[GameSettings, ...] = ()
    """Of each stick in this game."""


@dataclass(frozen=True)
class GamesTogether:
    """How one set of devices serves several games."""

    outcome: Literal["common", "none", "limit"]
    """'none' when no one set lets every game be played, 'limit' when none was found within the limit."""
    points: float | None
    """Mean of the games by hours, less what is bought for no game by itself; None where no game names an action."""
    points_alone: float | None
    """Each game with devices of its own: no common set can be worth more."""
    bound: float
    """No common set can be worth more than this either."""
    proven: bool
    sentence: Text
    headlines: tuple[Text, ...]
    """Games that lose much; told first."""
    findings: tuple[Finding, ...]
    assumptions: tuple[Assumption, ...]
    parts: tuple[PartLine, ...]
    """Parts list for all games."""
    wiring: Wiring | None = None
    """All that stays plugged in for all games at once: sockets and current are checked for all of it. None without a common set."""
