"""Why a plan that was kept cannot be shown as it was."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Topic

__all__ = ["KeptPlans"]


class KeptPlans(Topic):
    """Said on the page of a kept plan, and where a file is read."""

    @abstractmethod
    def no_plan(self) -> str:
        """The text that was read is no plan at all."""

    @abstractmethod
    def other_format(self, *, kept: int, today: int) -> str:
        """It was written in another format than is read today; both are running numbers."""

    @abstractmethod
    def other_parts(self, *, place: Name) -> str:
        """A part of it is not as it is written today; `place` is where, in the keys of the JSON."""
