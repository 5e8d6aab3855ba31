"""What the terminal says of aimed movements, presses, smoothness and the size of a tremor, line by line."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["AimedLines", "Clock", "Figure"]

Clock = Literal["selection", "dwell", "table"]
"""What a movement was timed to: the selection, where the target is entered to stay, or as a table says."""

Figure = Literal[
    "throughput", "missed", "movement_time", "press_time",
    "target_reentries", "task_axis_crossings", "movement_direction_changes", "orthogonal_direction_changes",
    "movement_variability", "movement_error", "movement_offset",
]  # fmt: skip
"""A figure by its name: of the movements, of the presses, of the path."""


class AimedLines(Topic):
    """Lines without a full stop. `told` is a figure with its interval, or why it is not known."""

    @abstractmethod
    def movements(self, *, movements: int, clock: Clock) -> str:
        """How many movements count, and what they were timed to."""

    @abstractmethod
    def serial(self) -> str:
        """Each movement starts where the one before ended: what follows for the distances."""

    @abstractmethod
    def figure(self, *, what: Figure, told: Text, known: bool) -> str:
        """A figure behind its name, with what it is a figure of where it is known."""

    @abstractmethod
    def both(self, *, first: Text, second: Text) -> str:
        """Two figures on one line."""

    @abstractmethod
    def beside(self, *, told: Text) -> str:
        """What is usual, in brackets below a figure."""

    @abstractmethod
    def counts_follow(self) -> str:
        """Heading of the counts for each movement."""

    @abstractmethod
    def lengths_follow(self) -> str:
        """Heading of the lengths about the straight line to the target."""

    @abstractmethod
    def entry(self, *, what: Figure, told: Text) -> str:
        """A line below such a heading."""

    @abstractmethod
    def in_unit(self, *, told: Text, unit: Name) -> str:
        """A figure in the recording's own unit."""

    @abstractmethod
    def counts_assume(self, *, assumed: tuple[Text, ...]) -> str:
        """What the counts assume."""

    @abstractmethod
    def left_out(self, *, what: Text) -> str:
        """What does not count, and why."""

    @abstractmethod
    def smoothness_unknown(self, *, why: Text) -> str:
        """Why smoothness is not known."""

    @abstractmethod
    def smoothness_of(self, *, count: int, strokes: bool, few: bool) -> str:
        """How many movements, or strokes of a drawing, smoothness was taken from; too `few` of them for intervals."""

    @abstractmethod
    def smoothness(self, *, jerk: Text, arc: Text, strokes: bool) -> str:
        """Log dimensionless jerk and spectral arc length, which way is smoother, and what to compare them with: for a
        movement those of a reach without corrections [balasubramanian-2015], for strokes the same drawing."""

    @abstractmethod
    def presses(self, *, presses: int, rate: Text, known: bool) -> str:
        """How many presses, and how many a second, or why that is not `known`."""

    @abstractmethod
    def variation(self, *, told: Text) -> str:
        """How even the presses are: standard deviation of the time from one to the next, as a share."""

    @abstractmethod
    def slowing(self, *, told: Text) -> str:
        """By how much that time changes each second; plus is slowing."""

    @abstractmethod
    def tremor_size(self, *, band: Text, peak: Text | None, excess: Text | None) -> str:
        """Size of a tremor: of the whole band, of the peak's own band, and what of that rises above the background."""

    @abstractmethod
    def in_band(self, *, told: Text, low_hz: float, high_hz: float) -> str:
        """Clause: a size, and the band of frequencies it is of."""

    @abstractmethod
    def axis(self, *, parts_share: tuple[float, ...]) -> str:
        """A line in space by its parts along the recorded axes x, y (and z)."""

    @abstractmethod
    def size(self, *, value: Text, beside: Text, unit: Name | None) -> str:
        """A size with the interval beside it, in the recording's unit: in per cent of full output where that is None."""
