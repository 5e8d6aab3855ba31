"""Figures in the unit in which a person typed them."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal, get_args

from stickwright.codes.message import Name, Topic

__all__ = ["TYPED_UNITS", "Amounts", "TypedUnit"]

TypedUnit = Literal["gf", "n", "kgf", "lb", "oz", "mn", "cn", "mm", "cm", "inch", "m"]
"""By the ending of its keys."""
TYPED_UNITS: tuple[TypedUnit, ...] = get_args(TypedUnit)


class Amounts(Topic):
    """Each a figure, or two with the word between them."""

    @abstractmethod
    def force(self, *, force_n: float, unit: TypedUnit) -> str:
        """A force, in that unit."""

    @abstractmethod
    def forces(self, *, low_n: float, high_n: float, unit: TypedUnit) -> str:
        """From one force to another."""

    @abstractmethod
    def length(self, *, length_m: float, unit: TypedUnit) -> str:
        """A length, in that unit."""

    @abstractmethod
    def lengths(self, *, low_m: float, high_m: float, unit: TypedUnit) -> str:
        """From one length to another."""

    @abstractmethod
    def typed(self, *, lowest: Name, highest: Name, unit: TypedUnit) -> str:
        """Figures as they were typed: one where both are equal, else from the lowest to the highest."""
