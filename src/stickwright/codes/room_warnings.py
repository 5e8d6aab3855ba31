"""What is doubtful of a room: places, tape distances, shapes, lengths that look like another unit, what is missing."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.amounts import TypedUnit
from stickwright.codes.message import Message, Name, Text, Topic

__all__ = ["Axis", "BodySize", "RoomWarnings"]

Axis = Literal["x", "y", "z"]
"""Right, forward, up."""
BodySize = Literal[
    "popliteal_height", "elbow_rest_height", "buttock_popliteal_length", "forearm_forearm_breadth", "eye_height_sitting",
]  # fmt: skip
"""Published sizes of the body."""


class RoomWarnings(Topic):
    """Questions are sentences, told behind their place in the file; found and expected have no full stop."""

    @abstractmethod
    def second_place(self, *, site: Name, line: int) -> str:
        """Found: a second place of a site; the first is at that line."""

    @abstractmethod
    def one_place(self) -> str:
        """Expected: one place for each site."""

    @abstractmethod
    def delete_or_join(self) -> str:
        """Remedy: delete one, or give all tape distances in one place."""

    @abstractmethod
    def empty_place(self) -> str:
        """A place has neither a point nor tape distances; what to measure, and the key."""

    @abstractmethod
    def few_landmarks(self, *, count: int, site: Text) -> str:
        """Tape distances to so few landmarks cannot place a site."""

    @abstractmethod
    def landmark_again(self, *, landmark: Name, site: Text, line: int) -> str:
        """A landmark is named a second time for a site; the first is at that line."""

    @abstractmethod
    def tape_against_point(self, *, typed: Text, landmark: Text, apart_m: float) -> str:
        """A tape distance as typed to a landmark differs from the distance of the two points; the point is used."""

    @abstractmethod
    def slopes_differ(self, *, slope_rad: float, movement_rad: float, key: Name) -> str:
        """The slope of a place differs from the one that the player's file gives under a key."""

    @abstractmethod
    def end_at_beginning(self, *, typed: Text, kind: Literal["tube", "edge"]) -> str:
        """Found: the end of a tube or edge is where it begins."""

    @abstractmethod
    def the_other_end(self, *, kind: Literal["tube", "edge"]) -> str:
        """Expected: the other end."""

    @abstractmethod
    def measure_both_ends(self) -> str:
        """Remedy: measure both ends of the free length."""

    @abstractmethod
    def width_and_depth(self) -> str:
        """Expected: a width and a depth above zero."""

    @abstractmethod
    def width_first(self) -> str:
        """Remedy: the width to the right first, then the depth forward."""

    @abstractmethod
    def box_turned(self, *, typed: Text, high: Text, axes: tuple[Axis, ...]) -> str:
        """Found: the low corner of a box is beyond the high one, a key with its value, along these axes."""

    @abstractmethod
    def smallest_of_box(self) -> str:
        """Expected: the smallest coordinates here, the largest in the other corner."""

    @abstractmethod
    def swap_axes(self, *, axes: tuple[Axis, ...]) -> str:
        """Remedy: swap the values along these axes."""

    @abstractmethod
    def flat_box(self, *, typed: Text) -> str:
        """Found: a box without thickness."""

    @abstractmethod
    def more_than(self, *, key: Name) -> str:
        """Expected: along every axis more than the other corner, given by its key."""

    @abstractmethod
    def give_room(self) -> str:
        """Remedy: as large as the room that must stay free."""

    @abstractmethod
    def tilt_turned(self, *, least: Text, most: Text | None) -> str:
        """Found: the least tilt is above the most; each a key with its value, or (None) the most is not given: level."""

    @abstractmethod
    def least_tilt_first(self) -> str:
        """Expected: the least tilt used in play, and the most under tilt_to."""

    @abstractmethod
    def swap_or_give_both(self) -> str:
        """Remedy: swap the two, or give both."""

    @abstractmethod
    def no_pivot(self) -> str:
        """The seat tilts, but its pivot was not measured; how to measure it, and the key."""

    @abstractmethod
    def front_wheels_forward(self) -> str:
        """Expected: the front wheels further forward than the rear ones."""

    @abstractmethod
    def wider_than_chair(self, *, key: Name) -> str:
        """The wheels are further apart than the chair is wide; the key of its width."""

    @abstractmethod
    def heavy(self, *, typed: Text, most_kg: float) -> str:
        """A weight is more than that: pounds?"""

    @abstractmethod
    def below_floor(self, *, site: Text, below_m: float, floor: Text) -> str:
        """Found: a site so far below the floor."""

    @abstractmethod
    def above_floor(self) -> str:
        """Expected: a point above the floor."""

    @abstractmethod
    def heights_from_seat(self) -> str:
        """Remedy: heights are up from the seat."""

    @abstractmethod
    def in_surface(self, *, site: Text, surface: Text, below_m: float) -> str:
        """A site would be inside a table or tray."""

    @abstractmethod
    def under_surface(self, *, site: Text, surface: Text, below_m: float) -> str:
        """A site would be under a table or tray."""

    @abstractmethod
    def main_place_missing(self, *, site: Name, table: Text) -> str:
        """The place of the most important site is not given; what to measure."""

    @abstractmethod
    def nothing_to_hold(self) -> str:
        """Nothing is given that a mount could clamp to or stand on; what to measure."""

    @abstractmethod
    def face_not_kept_free(self, *, site: Name) -> str:
        """A site is near the face, but the face is not entered as a zone to keep free; what to measure."""

    @abstractmethod
    def place_missing(self, *, site: Name, table: Text) -> str:
        """The place of a site is not given; what to measure."""

    @abstractmethod
    def far_away(self, *, points: tuple[Message, ...]) -> str:
        """Points, by where they are typed, that are more than 2 m from the seat reference point."""

    @abstractmethod
    def nearer_or_further(
        self, *, scale_m: float, usual_m: float, near: bool, unit: TypedUnit, typed_unit: TypedUnit, key: Name
    ) -> str:
        """A thing is `near` or far compared with half of the other things in the room; the unit in which it would be as far as they
        are, and the key to use then."""

    @abstractmethod
    def unusual_size(
        self,
        *,
        typed: Text,
        low_m: float,
        high_m: float,
        sizes: tuple[BodySize, ...],
        men_m: float,
        women_m: float,
        unit: TypedUnit | None,
        typed_unit: TypedUnit,
    ) -> str:
        """A length of the posture is outside half to one and a half times the published size of the body, or the sum of two; medians of
        men and women; the unit (None: none fits) in which it would be usual."""

    @abstractmethod
    def chin_above_eyes(self, *, key: Name) -> str:
        """The chin is not below the eyes; the key of the eyes."""

    @abstractmethod
    def wrong_sides(self, *, points: tuple[Message, ...], everywhere: bool) -> str:
        """Things on the other side than their names say: `everywhere`, as if measured while facing the player."""

    @abstractmethod
    def point_on_side(self, *, where: tuple[Text, ...], side: Literal["left", "right"], typed: Text) -> str:
        """One of them: where it is typed, its side by name, its first coordinate as typed."""
