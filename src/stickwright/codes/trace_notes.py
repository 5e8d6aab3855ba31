"""What one recording cannot tell, and from what part of it something is taken."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.cleaning import Axis
from stickwright.codes.message import Text, Topic

__all__ = ["Part", "TraceNotes"]

Part = Literal["tremor", "smoothness", "pointing", "tracking"]
"""Part of a report that needs one stretch without a gap."""


class TraceNotes(Topic):
    """Findings about a whole recording, and about free play."""

    @abstractmethod
    def third_axis(self, *, flat: tuple[Axis, ...]) -> str:
        """A third axis z was read beside these: what each is used for."""

    @abstractmethod
    def unknown(self, *, part: Part, why: Text) -> str:
        """A part of the report is not known, and why (whole sentences)."""

    @abstractmethod
    def from_a_part(self, *, part: Part, start_s: float, stop_s: float, longest_s: float, asked_s: float) -> str:
        """A part of the report is taken from one stretch without a gap, of so long as was asked for."""

    @abstractmethod
    def no_still_stretch(self) -> str:
        """Tremor is not known: no stretch is long enough."""

    @abstractmethod
    def tremor_zeroed(self) -> str:
        """Tremor is not known: rest was set to zero."""

    @abstractmethod
    def tremor_while_moving(self) -> str:
        """Tremor was looked for in moving parts."""

    @abstractmethod
    def targets_unknown(self, *, missing: Literal["places", "widths"]) -> str:
        """Throughput is not known: no places or no widths of targets."""

    @abstractmethod
    def target_unknown(self) -> str:
        """Following is not known: no place of the target."""

    @abstractmethod
    def play(self, *, played_s: float, full_share: float, longest_s: float, flicks: int, flicks_per_min: float) -> str:
        """Free play: how long at full travel, and flicks."""

    @abstractmethod
    def spring_back(self, *, releases: int, past: Text, one_in_ten: Text) -> str:
        """After quick releases the stick springs past its centre: median, and what one in ten exceeds."""
