"""Several games of one player: one set of devices for all, and what changes between the games."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.clashes import Limb
from stickwright.codes.message import Name, Text, Topic

__all__ = ["Games"]


class Games(Topic):
    """Sentences, unless said otherwise. Scores of several games are means by the hours that each is played."""

    @abstractmethod
    def replug(
        self, *, device: Name, site: Name, socket: Name, old_socket: Name | None, instead_of: Name | None, first: tuple[Text, ...],
        why: Text | None,
    ) -> str:  # fmt: skip
        """Plug a device of a site into another socket: what to unplug from it before, what else first, and why it cannot stay."""

    @abstractmethod
    def unplugged(self, *, device: Name, socket: Name) -> str:
        """A device that is unplugged from its socket; an object of "unplug"."""

    @abstractmethod
    def refit(self, *, site: Name, after: Text, before: Text) -> str:
        """A site has another set-up than for the first game."""

    @abstractmethod
    def hours_of(self, *, games: tuple[Name, ...]) -> str:
        """Name of an assumed figure: how long these games are played."""

    @abstractmethod
    def hours_usual(self, *, each_week_s: float | None) -> str:
        """So many hours a week each, as the other games on average; None: the same for all games."""

    @abstractmethod
    def hours_untold(self) -> str:
        """Why it is assumed: no hours are entered for the game. A clause."""

    @abstractmethod
    def hours_confirm(self) -> str:
        """What replaces it: the hours a week, entered for the game. A clause."""

    @abstractmethod
    def otherwise(self, *, change: Text, lost_points: float | None) -> str:
        """A change that the common devices make in this game, and how much lower (minus: higher) it scores. A clause."""

    @abstractmethod
    def swap(self, *, game: Name, refits: tuple[Text, ...]) -> str:
        """What is changed for a game."""

    @abstractmethod
    def not_common(self, *, found_none: bool, swaps: tuple[Text, ...]) -> str:
        """The games do not share their devices: no set lets all be played (`found_none`), or none was found in time."""

    @abstractmethod
    def loses(
        self,
        *,
        game: Name,
        score_points: float,
        alone_points: float,
        more: tuple[Text, ...],
        to_order_price: float | None,
    ) -> str:
        """A game that scores much lower with the common devices, and which devices more would spare it that, at what price
        (0: all in stock, None: not known)."""

    @abstractmethod
    def device_at(self, *, device: Name, place: Text) -> str:
        """A device at a place. A clause."""

    @abstractmethod
    def limb(self, *, limb: Limb) -> str:
        """A limb, or both hands, as a place of a controller. A clause."""

    @abstractmethod
    def separate(self, *, games: int) -> str:
        """So many games, each with its own devices."""

    @abstractmethod
    def common_free(self, *, games: int, score_points: float) -> str:
        """One set of devices for so many games, and no game scores lower for it."""

    @abstractmethod
    def common(self, *, games: int, score_points: float, alone_points: float, bound_points: float | None) -> str:
        """One set of devices; what the games would score with devices of their own; None: proven that no common set scores higher, else
        the bound."""
