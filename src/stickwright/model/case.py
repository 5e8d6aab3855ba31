"""A case: everything that goes into a plan."""

from __future__ import annotations

from dataclasses import dataclass, replace

from stickwright.model.game import Game
from stickwright.model.hub import Hub
from stickwright.model.kit import Kit
from stickwright.model.player import Player
from stickwright.model.recorded import Finding
from stickwright.model.recording import Recording
from stickwright.model.room import Room

__all__ = ["Case", "ForceRead"]


@dataclass(frozen=True)
class ForceRead:
    """Comfortable force in one direction, as it was read at one visit.

    Parameters
    ----------
    on_date : str
        Date of the visit, YYYY-MM-DD.
    site : str
    direction_rad : float
    force_n : tuple of float
        Repeats, newton.
    """

    on_date: str
    site: str
    direction_rad: float
    force_n: tuple[float, ...]


@dataclass(frozen=True, eq=False)
class Case:
    """One player, one kit, the games to be played, and the recordings made.

    Parameters
    ----------
    name : str
        Name of the case folder.
    player, kit, game : Player, Kit, Game
        As read and validated; gauge readings from CSV are already among the player's readings.
    recordings : tuple of Recording
        Each names its site.
    made_on : str
        Date to print, YYYY-MM-DD; the core does not read the clock.
    hubs : tuple of Hub
        What devices are plugged into; none when not described.
    room : Room, optional
        Where the player sits and what a mount can hold on to.
    usual_prices : frozenset of pairs of str
        Action, and how it may be left to others ('option', 'helper', 'dropped', 'toggle'): prices of the kind of game that
        nobody changed.
    doubts : tuple of Finding
        What looks odd in the files, and what was done without: the plan says it first.
    further_games : tuple of Game
        What the player wants to play besides `game`, with the same devices; no two of all the games have the same name.
    further_usual_prices : tuple of frozenset
        The same as `usual_prices` for each of these.
    forces_read : tuple of ForceRead
        Forces of all visits of the player up to this one, from the records; none when a case folder is all there is.
    """

    name: str
    player: Player
    kit: Kit
    game: Game
    recordings: tuple[Recording, ...] = ()
    made_on: str = ""
    hubs: tuple[Hub, ...] = ()
    room: Room | None = None
    usual_prices: frozenset[tuple[str, str]] = frozenset()
    doubts: tuple[Finding, ...] = ()
    further_games: tuple[Game, ...] = ()
    further_usual_prices: tuple[frozenset[tuple[str, str]], ...] = ()
    forces_read: tuple[ForceRead, ...] = ()

    @property
    def games(self) -> tuple[Game, ...]:
        """All games, the first one first."""
        return (self.game, *self.further_games)

    def with_each_game(self) -> tuple[Case, ...]:
        """For each game the case as if it were the only one."""
        prices = (self.usual_prices, *self.further_usual_prices)
        prices += (frozenset(),) * (len(self.games) - len(prices))
        return tuple(
            replace(self, game=game, usual_prices=usual, further_games=(), further_usual_prices=())
            for game, usual in zip(self.games, prices, strict=True)
        )
