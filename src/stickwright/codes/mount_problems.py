"""What a person can put right about a mount, its place and its tape distances: what was found, what is expected, what to do."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Topic

__all__ = ["MountPart", "MountProblems"]

MountPart = Literal["arm", "flex", "travel", "tube", "gooseneck", "centre_of_mass", "release"]
"""What a figure is of."""


class MountProblems(Topic):
    """Parts of a problem; remedies are sentences."""

    @abstractmethod
    def part(self, *, part: MountPart) -> str:
        """Where: what the figure is of."""

    @abstractmethod
    def links(self, *, count: int) -> str:
        """Found, or expected: so many links of an arm."""

    @abstractmethod
    def apart(self, *, distance_m: float) -> str:
        """Found: so far from clamp to end."""

    @abstractmethod
    def at_most(self, *, length_m: float) -> str:
        """Expected: no further than an arm is long."""

    @abstractmethod
    def too_short(self, *, missing_m: float) -> str:
        """Remedy: by how much an arm is too short."""

    @abstractmethod
    def at_least(self, *, near_m: float | None) -> str:
        """Expected: no nearer than the difference of an arm's links; None: not at the same point."""

    @abstractmethod
    def further(self) -> str:
        """Remedy: move the clamp away."""

    @abstractmethod
    def without_length(self) -> str:
        """Found: a link without length."""

    @abstractmethod
    def with_length(self) -> str:
        """Expected: links that have a length."""

    @abstractmethod
    def stiffness(self, *, give_n_per_m: float | None) -> str:
        """Found: a stiffness; None: no number."""

    @abstractmethod
    def stiff(self) -> str:
        """Expected: a stiffness above nothing."""

    @abstractmethod
    def hang(self) -> str:
        """Remedy: how stiffness is measured."""

    @abstractmethod
    def length(self, *, length_m: float) -> str:
        """Found: a length."""

    @abstractmethod
    def some_length(self) -> str:
        """Expected: a length above nothing."""

    @abstractmethod
    def wall(self, *, outer_m: float, inner_m: float, length_m: float) -> str:
        """Found: diameters and length of a tube."""

    @abstractmethod
    def some_wall(self) -> str:
        """Expected: a tube that can be calculated."""

    @abstractmethod
    def longer(self, *, distance_m: float) -> str:
        """Expected: a gooseneck longer than the distance that it spans."""

    @abstractmethod
    def one_point(self) -> str:
        """Found: a tube with both ends at one point."""

    @abstractmethod
    def with_direction(self) -> str:
        """Expected: a tube with two ends."""

    @abstractmethod
    def holding(self, *, count: int) -> str:
        """Found: so many figures of what joints hold."""

    @abstractmethod
    def holding_for(self, *, joints: int) -> str:
        """Expected: one figure, or one for each joint."""

    @abstractmethod
    def joint_to_contact(self, *, reach_m: float) -> str:
        """Found: so far from the joint to the contact point."""

    @abstractmethod
    def landmark(self, *, name: Name) -> str:
        """Found: a landmark by its name."""

    @abstractmethod
    def known_landmark(self) -> str:
        """Expected: a landmark of the room."""

    @abstractmethod
    def tapes(self, *, count: int, repeated: bool) -> str:
        """Found: so many tape distances; `repeated`: so many different landmarks."""

    @abstractmethod
    def three_tapes(self) -> str:
        """Expected: three tape distances that fix a point."""

    @abstractmethod
    def one_more(self) -> str:
        """Remedy: measure one more."""

    @abstractmethod
    def in_line(self, *, landmarks: tuple[Name, ...]) -> str:
        """Found: landmarks in one line."""

    @abstractmethod
    def not_in_line(self) -> str:
        """Expected: landmarks that are not."""

    @abstractmethod
    def to_one_side(self) -> str:
        """Remedy: measure to a landmark beside the line."""

    @abstractmethod
    def two_tapes(self, *, first: Name, first_m: float, second: Name, second_m: float, apart_m: float) -> str:
        """Found: two tape distances, and how far their landmarks are apart."""

    @abstractmethod
    def meet(self) -> str:
        """Expected: two distances that can meet."""

    @abstractmethod
    def short_by(self, *, by_m: float) -> str:
        """Remedy: together they are too short."""

    @abstractmethod
    def long_by(self, *, by_m: float) -> str:
        """Remedy: one is too long for the other."""

    @abstractmethod
    def all_tapes(self, *, landmarks: tuple[Name, ...], distances_m: tuple[float, ...]) -> str:
        """Found: three tape distances."""

    @abstractmethod
    def meet_in_point(self) -> str:
        """Expected: three that meet."""

    @abstractmethod
    def missed_by(self, *, by_m: float) -> str:
        """Remedy: by how much they miss."""

    @abstractmethod
    def nothing_placed(self) -> str:
        """Found: a plan without any device that was given a place."""

    @abstractmethod
    def room_and_fit(self) -> str:
        """Expected: a case whose room is described, and a device that fits; room.toml is the room's file."""

    @abstractmethod
    def describe_room(self) -> str:
        """Remedy: describe the room."""

    @abstractmethod
    def no_writer(self, *, package: Name) -> str:
        """Found: an optional package is not installed."""

    @abstractmethod
    def writer(self) -> str:
        """Expected: the optional part that writes DXF files."""

    @abstractmethod
    def install(self, *, command: Name) -> str:
        """Remedy: the command that installs it; what works without."""
