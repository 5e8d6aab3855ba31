"""Sizes of a stick's output within a sentence: shares of full output, or numbers in the recording's own unit."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Topic

__all__ = ["Outputs"]


class Outputs(Topic):
    """Of full output, or in a unit that has no known full output."""

    @abstractmethod
    def of_full(self, *, output_share: float) -> str:
        """A size as a share of full output, minus for left or back; in the middle of a sentence."""

    @abstractmethod
    def own_unit(self, *, output_factor: float) -> str:
        """A size in the recording's own unit, as a bare number."""
