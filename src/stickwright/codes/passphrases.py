"""How good a passphrase is, and why one is refused."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Topic

__all__ = ["Passphrases"]


class Passphrases(Topic):
    """How good a passphrase is, and why one is refused."""

    @abstractmethod
    def strength(self, *, level: Literal["seconds", "months", "enough", "strong"]) -> str:
        """How hard it is to guess."""

    @abstractmethod
    def too_long(self, *, most: int) -> str:
        """Problem."""

    @abstractmethod
    def too_easy(self) -> str:
        """Problem."""

    @abstractmethod
    def differ(self) -> str:
        """Problem: the two passphrases that were typed are not the same."""

    @abstractmethod
    def too_soon(self, *, seconds: int) -> str:
        """Problem: tried again too soon after several wrong tries."""

    @abstractmethod
    def current_wrong(self) -> str:
        """Problem: the current passphrase was mistyped."""

    @abstractmethod
    def none_needed(self) -> str:
        """Problem: these records have no passphrase."""
