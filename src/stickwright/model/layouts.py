"""Several games of one player: one set of devices, a layout for each game, and what changes between them.

Points are those of `stickwright.model.sharing`; over several games they are means by the hours that each is played.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from stickwright.model.plan import Assumption
from stickwright.model.recorded import Finding
from stickwright.model.sharing import PartLine, Sharing

__all__ = ["GamesTogether", "Layout", "Refit", "Replug"]


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

    @property
    def words(self) -> str:
        """As an instruction."""
        out = f"Unplug {self.instead_of} from {self.to_socket}. " if self.instead_of else ""
        moved = f" from {self.from_socket}" if self.from_socket else ""
        return f"{out}Plug {self.device} ({self.at}){moved} into {self.to_socket}."


@dataclass(frozen=True)
class Refit:
    """A device at a control site that is set up otherwise than for the first game, or is another one."""

    site: str
    before: str
    """As set up for the first game."""
    after: str
    swapped: bool
    """Whether it is another device: only where no common set was found."""

    @property
    def words(self) -> str:
        """As an instruction."""
        return f"At {self.site}: {self.after} instead of {self.before}."


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
    because: tuple[str, ...]
    """What it does otherwise than it would alone, dearest first."""
    separate: tuple[str, ...]
    """Devices that its own set-up would need beyond the common ones."""
    separate_price: float | None
    """Of those of them that are not in stock; None when a price is not known."""
    replugs: tuple[Replug, ...]
    refits: tuple[Refit, ...]
    own_dead_zone_share: float | None
    """Dead zone inside this game."""


@dataclass(frozen=True)
class GamesTogether:
    """How one set of devices serves several games."""

    outcome: Literal["common", "none", "limit"]
    """'none' when no one set lets every game be played, 'limit' when none was found within the limit."""
    points: float
    """Mean of the games by hours, less what is bought for no game by itself."""
    points_alone: float
    """Each game with devices of its own: no common set can be worth more."""
    bound: float
    """No common set can be worth more than this either."""
    proven: bool
    sentence: str
    headlines: tuple[str, ...]
    """Games that lose much; told first."""
    findings: tuple[Finding, ...]
    assumptions: tuple[Assumption, ...]
    parts: tuple[PartLine, ...]
    """Parts list for all games."""
