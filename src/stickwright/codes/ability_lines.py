"""The ability of a site in a run of text, and the readings behind it."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Text, Topic

__all__ = ["AbilityLines"]


class AbilityLines(Topic):
    """Whole sentences, and one clause."""

    @abstractmethod
    def smoothed(self) -> str:
        """The figures are smoothed round the circle; where the readings themselves are."""

    @abstractmethod
    def readings(self, *, directions: tuple[Text, ...]) -> str:
        """The figures are smoothed; means of the readings, by `direction`."""

    @abstractmethod
    def direction(self, *, direction_rad: float, figures: tuple[Text, ...]) -> str:
        """Clause: a direction with its force, its movement range, or both."""

    @abstractmethod
    def ability(self, *, directions: tuple[Text, ...]) -> str:
        """Comfortable force and movement range, by `direction`."""
