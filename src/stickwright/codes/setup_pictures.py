"""The whole set-up from above in one picture, and the list of its numbers."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Text, Topic

__all__ = ["SetupPictures"]


class SetupPictures(Topic):
    """The picture has numbers only; what they are stands beside it. Grade 6 or lower."""

    @abstractmethod
    def caption(self, *, measured: bool) -> str:
        """Under the picture: seen from above, 12 on the clock is straight ahead; `measured`: places are to scale, otherwise they
        only show which part of the body."""

    @abstractmethod
    def alt(self, *, items: tuple[Text, ...]) -> str:
        """The picture in a sentence, then each `item`."""

    @abstractmethod
    def item(self, *, numbers: tuple[Name, ...], what: Text, how: tuple[Text, ...]) -> str:
        """Clause: the numbers of a device in the picture, the device, and what is to know about its place."""

    @abstractmethod
    def device(self, *, device: Text, pieces: int) -> str:
        """A device, and how many of it stand side by side."""

    @abstractmethod
    def at_sites(self, *, sites: tuple[Name, ...]) -> str:
        """Which parts of the body work it, by the names that a person typed."""

    @abstractmethod
    def held_by(self, *, mount: Name, on: Name | None) -> str:
        """What holds it, and on what that is clamped."""

    @abstractmethod
    def stands_on(self, *, on: Name) -> str:
        """The tray or table that it stands on."""

    @abstractmethod
    def turned(self, *, turn_rad: float) -> str:
        """How the base is turned from straight ahead, seen from above, anticlockwise."""

    @abstractmethod
    def tall(self, *, height_m: float) -> str:
        """How far the top of the stick is above its base, about."""

    @abstractmethod
    def unplaced(self) -> str:
        """Nobody measured its place: the picture shows the part of the body only."""

    @abstractmethod
    def latching(self, *, actions: tuple[Name, ...]) -> str:
        """A switch that is pressed once to start one of these actions, and once more to stop it."""

    @abstractmethod
    def hub(self, *, hub: Name) -> str:
        """The box that takes the cables."""
