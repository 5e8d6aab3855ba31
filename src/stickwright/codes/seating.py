"""The chair and the furniture: stability with a mount, heights of table and tray."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Message, Name, Topic
from stickwright.codes.mount_checks import Side

__all__ = ["ElbowFrom", "Furniture", "Seating"]

Furniture = Literal["table", "tray"]
ElbowFrom = Literal["measured", "armrest", "median"]


class Seating(Topic):
    """Each a sentence, except where it says clause."""

    @abstractmethod
    def hangs_out(
        self, *, side: Side, mass_kg: float, out_m: float, added_nm: float, keeps_nm: float | None, before_rad: float | None,
        after_rad: float | None,
    ) -> str:  # fmt: skip
        """What hangs outside the wheels adds a moment; where it is known, the moment that keeps the chair standing, and the slope
        at which it tips before and after."""

    @abstractmethod
    def where_wheels(self, *, mass_kg: float) -> str:
        """Something hangs on the chair; where its wheels touch the floor was not measured: what to measure."""

    @abstractmethod
    def weigh(self) -> str:
        """Weigh chair and player."""

    @abstractmethod
    def ask_slope(self, *, sideways: bool) -> str:
        """Ask the seating clinic for the slope at which the chair tips."""

    @abstractmethod
    def seat_height(self) -> str:
        """Measure from seat to floor: the height of the mount is not known without."""

    @abstractmethod
    def ask(self, *, site: Name, known: Message | None, question: Message) -> str:
        """For the device of a site: what is known of stability, and what to ask or measure."""

    @abstractmethod
    def tips(self, *, site: Name, check: Message) -> str:
        """By statics the chair tips where it stands; the moments, a clause."""

    @abstractmethod
    def height_unknown(self) -> str:
        """The table's height cannot be compared with the elbow."""

    @abstractmethod
    def tray_close(self, *, gap_m: float, least_m: float, tilts: bool) -> str:
        """The tray is too close to the trunk."""

    @abstractmethod
    def height(self, *, what: Furniture, off_m: float, above: bool, elbow: ElbowFrom) -> str:
        """Table or tray is too high above or too low below the elbow, measured or taken from something else."""
