"""Why a message of the measuring page is refused: parts of a problem. Only somebody who writes such a page meets most of them."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Topic

__all__ = ["BatchKind", "Batches", "ExpectedBatch", "FoundBatch"]

BatchKind = Literal["samples", "appeared", "gone", "alive"]

FoundBatch = Literal["large_number", "other_letters", "bad_time", "unknown_buttons", "bad_axis", "bad_text"]
"""What was found: a number too large for its place, bytes that do not begin as they must, a sample without a time or later
than it was sent, buttons that the device does not have, an axis that is no number or far out, a name that is no text."""
ExpectedBatch = Literal["table", "page", "milliseconds", "milliseconds_to_sent", "axis", "utf8"]
"""What would have been accepted."""


class Batches(Topic):
    """Parts of a problem: where, found, expected, remedy."""

    @abstractmethod
    def where(self) -> str:
        """Where: a message that the page sent to the program."""

    @abstractmethod
    def remedy(self) -> str:
        """What to do, whatever is wrong."""

    @abstractmethod
    def found(self, *, what: FoundBatch) -> str:
        """Found, without figures."""

    @abstractmethod
    def expected(self, *, what: ExpectedBatch) -> str:
        """Expected, without figures."""

    @abstractmethod
    def length(self, *, count: int) -> str:
        """Found: so many bytes."""

    @abstractmethod
    def lengths(self, *, least: int, most: int) -> str:
        """Expected: so many bytes."""

    @abstractmethod
    def version(self, *, version: int) -> str:
        """Found or expected: the version of the format."""

    @abstractmethod
    def kind(self, *, kind: int) -> str:
        """Found: the number of a kind that there is not."""

    @abstractmethod
    def kinds(self, *, least: int, most: int) -> str:
        """Expected: numbers of kinds."""

    @abstractmethod
    def body(self, *, count: int) -> str:
        """Found: so many bytes behind the head."""

    @abstractmethod
    def body_expected(self, *, count: int) -> str:
        """Expected: as many as the head says."""

    @abstractmethod
    def field(self, *, key: Name, value: int, kind: BatchKind) -> str:
        """Found: the value of a field of the head, in a message of a kind."""

    @abstractmethod
    def limits(self, *, least: int, most: int) -> str:
        """Expected: a number from one limit to the other."""

    @abstractmethod
    def clock(self, *, key: Name, value: Name) -> str:
        """Found: the value of a clock, as it was sent."""

    @abstractmethod
    def mask(self, *, buttons: int) -> str:
        """Expected: the bit mask of so many buttons."""
