"""What is doubtful of mounts and fasteners: figures that are missing, or look like another unit."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Topic

__all__ = ["ArmFigure", "Held", "MountWarnings", "Strength"]

ArmFigure = Literal["links", "holding"]
"""The lengths of an arm's links, what its joints hold."""
Held = Literal["tube_m", "edge_m"]
"""What a clamp takes up."""
Strength = Literal["shear_pa", "tension_pa", "peel_n_per_m", "friction"]


class MountWarnings(Topic):
    """Questions are sentences, told behind their place in the file; expected has no full stop."""

    @abstractmethod
    def smaller_first(self) -> str:
        """Expected: the smaller of two ends first."""

    @abstractmethod
    def clamp_range(self, *, holds: tuple[Held, ...]) -> str:
        """What a clamp holds was not recorded; how to measure it, and the keys."""

    @abstractmethod
    def clamp_size(
        self, *, size: Literal["clamp_width", "jaw_depth"], size_m: float, low_m: float, high_m: float, small: bool
    ) -> str:
        """How wide a clamp is along a tube, or how deep its jaw: unusual; what is usual; `small` looks like inches."""

    @abstractmethod
    def slow_to_take_off(self, *, time_s: float) -> str:
        """It takes very long to take a mount off for a transfer: is that the time to set it up?"""

    @abstractmethod
    def arm_unknown(self, *, missing: tuple[ArmFigure, ...]) -> str:
        """Figures of an arm without which nobody knows whether it reaches and holds; how to measure them."""

    @abstractmethod
    def no_release_force(self) -> str:
        """The release force of a breakaway coupling was not recorded, so it does not count as one."""

    @abstractmethod
    def no_strength(self, *, missing: tuple[Strength, ...]) -> str:
        """Strengths of a fastener that were not recorded: until then it counts as not holding."""

    @abstractmethod
    def no_test_method(self) -> str:
        """Strengths of a fastener without the test method that they come from."""
