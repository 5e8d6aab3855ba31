"""Why an arm or gooseneck cannot hold a device from a tube or an edge."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Message, Name, Topic

__all__ = ["ArmReasons", "Line"]

Line = Literal["tube", "edge"]


class ArmReasons(Topic):
    """Each a sentence, except what is in the way."""

    @abstractmethod
    def no_links(self, *, mount: Name) -> str:
        """The mount is no arm."""

    @abstractmethod
    def no_clamp(self, *, mount: Name) -> str:
        """Nobody recorded what the clamp holds."""

    @abstractmethod
    def nothing(self) -> str:
        """The room names neither tube nor edge."""

    @abstractmethod
    def barred(self, *, line: Line, holder: Name, why: Name) -> str:
        """A tube that nothing may be clamped to; why, in the words of the room's file."""

    @abstractmethod
    def wrong_line(self, *, line: Line, holder: Name, mount: Name) -> str:
        """The clamp holds no tubes, or no edges."""

    @abstractmethod
    def wrong_size(self, *, line: Line, holder: Name, mount: Name, size_m: float, low_m: float, high_m: float) -> str:
        """Tube or edge is too thick or too thin."""

    @abstractmethod
    def no_room(self, *, line: Line, holder: Name, mount: Name, free_m: float, needs_m: float) -> str:
        """The clamp is wider than tube or edge is long."""

    @abstractmethod
    def no_depth(self, *, holder: Name, mount: Name, free_m: float, needs_m: float) -> str:
        """The jaw reaches further in than an edge has room behind it."""

    @abstractmethod
    def moves_apart(self, *, line: Line, holder: Name, site: Name, shift_m: float, allowed_m: float | None) -> str:
        """The tilt carries tube or edge and site apart; None: how much is acceptable is not known."""

    @abstractmethod
    def too_tight(
        self, *, line: Line, holder: Name, mount: Name, radius_m: float | None, least_m: float, assumed: bool
    ) -> str:
        """A gooseneck would have to be bent too tightly; None: back on itself."""

    @abstractmethod
    def base_in(self, *, box: Name) -> str:
        """The base itself would stand in a space that must stay free."""

    @abstractmethod
    def runs_through(self, *, line: Line, holder: Name, mount: Name) -> str:
        """It is long enough, but would run through what it carries or the control site."""

    @abstractmethod
    def blocked(self, *, line: Line, holder: Name, mount: Name, by: Message) -> str:
        """It is long enough, but something is in the way."""

    @abstractmethod
    def too_short(self, *, line: Line, holder: Name, mount: Name, missing_m: float) -> str:
        """How much too short it is, a tenth of it left for adjustment."""

    @abstractmethod
    def no_point(self, *, line: Line, holder: Name, mount: Name) -> str:
        """From no clamp point does it end there."""

    @abstractmethod
    def too_near(self, *, line: Line, holder: Name, mount: Name, near_m: float) -> str:
        """It cannot fold so far."""

    @abstractmethod
    def keep_out(self, *, box: Name) -> str:
        """In the way: a space that must stay free."""

    @abstractmethod
    def surface(self, *, surface: Name) -> str:
        """In the way: a table, tray or floor."""

    @abstractmethod
    def tube(self, *, tube: Name) -> str:
        """In the way: a tube."""

    @abstractmethod
    def edge(self, *, edge: Name) -> str:
        """In the way: an edge."""

    @abstractmethod
    def other_site(self, *, site: Name) -> str:
        """In the way: the control site that rests at another place."""

    @abstractmethod
    def itself(self) -> str:
        """In the way: the device that is carried, or the arm itself."""
