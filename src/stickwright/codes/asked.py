"""What is asked of a plan, and names that a case does not have: parts of problems."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Topic

__all__ = ["Asked"]


class Asked(Topic):
    """What was found, what is expected; remedies are sentences."""

    @abstractmethod
    def device(self, *, kind: Literal["stick", "switch", "controller", "device"]) -> str:
        """Expected: a device of the kit."""

    @abstractmethod
    def socket(self, *, name: Name) -> str:
        """Found: a socket by its name."""

    @abstractmethod
    def of_hub(self) -> str:
        """Expected: a socket of that hub."""

    @abstractmethod
    def typed(self, *, typed: Name) -> str:
        """Found: a name as it was typed."""

    @abstractmethod
    def action(self) -> str:
        """Expected: an action of the game."""

    @abstractmethod
    def no_actions(self) -> str:
        """Remedy: the game names no action yet."""

    @abstractmethod
    def state(self, *, state: Name) -> str:
        """Found: a state of the player that a recording names."""

    @abstractmethod
    def state_of(self, *, site: Name) -> str:
        """Expected: a state in which the site was read."""

    @abstractmethod
    def add_state(self) -> str:
        """Remedy: a recording names a state in which the site was not read."""

    @abstractmethod
    def simulations(self, *, least: int, most: int, usual: int) -> str:
        """Expected: how many simulations a plan may have, and how many are enough for a sheet."""

    @abstractmethod
    def hub(self) -> str:
        """Expected: a hub of the case."""

    @abstractmethod
    def excludable(self) -> str:
        """Expected: what can be left out of a plan."""

    @abstractmethod
    def none_or_more(self) -> str:
        """Expected: a number that is not below nothing."""

    @abstractmethod
    def budget(self) -> str:
        """Remedy: what the budget is."""

    @abstractmethod
    def devices(self) -> str:
        """Remedy: what the number of devices is."""

    @abstractmethod
    def pair(self) -> str:
        """Expected: an action with its place, or a site with its device, as they are typed."""

    @abstractmethod
    def place(self) -> str:
        """Expected: where an action may be kept, as it is typed."""

    @abstractmethod
    def face_size(self) -> str:
        """Where: two switches side by side."""

    @abstractmethod
    def length(self) -> str:
        """Expected: a length of nothing or more."""
