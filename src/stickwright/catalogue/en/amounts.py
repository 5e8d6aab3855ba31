"""Figures as they were typed, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.catalogue.writer import GAP
from stickwright.codes.amounts import Amounts, TypedUnit
from stickwright.codes.message import Name
from stickwright.units import unit_named

__all__ = ["Texts"]


class Texts(Amounts):
    """Number and unit."""

    w: English

    def force(self, *, force_n: float, unit: TypedUnit) -> str:
        return self.w.trimmed_amount(force_n, unit)

    def forces(self, *, low_n: float, high_n: float, unit: TypedUnit) -> str:
        return self.w.limits(low_n, high_n, unit)

    def length(self, *, length_m: float, unit: TypedUnit) -> str:
        return self.w.trimmed_amount(length_m, unit)

    def lengths(self, *, low_m: float, high_m: float, unit: TypedUnit) -> str:
        return self.w.limits(low_m, high_m, unit)

    def typed(self, *, lowest: Name, highest: Name, unit: TypedUnit) -> str:
        span = self.w.name(lowest) if lowest == highest else f"{self.w.name(lowest)} to {self.w.name(highest)}"
        return f"{span}{GAP}{unit_named(unit).label}"
