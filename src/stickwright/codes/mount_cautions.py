"""The usual cautions for one mount: common practice unless a source is named; they defer to team, seating clinic and local rules."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Message, Topic

__all__ = ["MountCautions"]


class MountCautions(Topic):
    """Each whole sentences."""

    @abstractmethod
    def face(self) -> str:
        """Near the face."""

    @abstractmethod
    def release(self, *, setting: Message | None) -> str:
        """When it lets go: the setting in sentences, None where none is known."""

    @abstractmethod
    def skin(self) -> str:
        """The player's skin breaks down under pressure."""

    @abstractmethod
    def pinch(self, *, low_m: float, high_m: float, found_m: tuple[float, ...]) -> str:
        """Gaps that take a finger; those that were found here."""

    @abstractmethod
    def cable(self, *, head: bool, slack_m: float | None) -> str:
        """The cable along the mount; `head`: near face or airway; what is left loose for tilting."""

    @abstractmethod
    def stability(self, *, mass_kg: float, out_m: float, added_nm: float) -> str:
        """Stability of the chair where only the moment is known."""

    @abstractmethod
    def stability_known(self, *, known: Message) -> str:
        """Stability of the chair, with what is known of it."""

    @abstractmethod
    def transfer(self, *, swings: bool, time_s: float | None, assumed: bool, aim_s: float, slow: bool) -> str:
        """Transfers and emergencies: how it gets out of the way, in what time (None: not known), what to aim for, too slow or not."""

    @abstractmethod
    def startle(self) -> str:
        """The player has strong involuntary movement."""

    @abstractmethod
    def upkeep(self) -> str:
        """The maker's papers, the local rules, the monthly check."""
