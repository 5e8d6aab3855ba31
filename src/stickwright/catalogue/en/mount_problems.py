"""What a person can put right about a mount, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name
from stickwright.codes.mount_problems import MountPart, MountProblems

__all__ = ["Texts"]

_PARTS: dict[MountPart, str] = {
    "arm": "arm", "flex": "flex", "travel": "travel", "tube": "tube", "gooseneck": "gooseneck",
    "centre_of_mass": "centre of mass", "release": "release",
}  # fmt: skip


class Texts(MountProblems):
    """Parts of a problem; remedies are sentences."""

    w: English

    def part(self, *, part: MountPart) -> str:
        return _PARTS[part]

    def links(self, *, count: int) -> str:
        return f"{self.w.whole(count)} {self.w.plural(count, one='link', other='links')}"

    def apart(self, *, distance_m: float) -> str:
        return f"{self.w.amount(distance_m, 'mm')} from clamp to end"

    def at_most(self, *, length_m: float) -> str:
        return f"at most {self.w.amount(length_m, 'mm')}, its length"

    def too_short(self, *, missing_m: float) -> str:
        return f"The arm is {self.w.amount(missing_m, 'mm')} too short from here, with a tenth of its length left for adjustment."

    def at_least(self, *, near_m: float | None) -> str:
        if near_m is None:
            return "a clamp away from the end"
        return f"at least {self.w.amount(near_m, 'mm')}, the difference of its links"

    def further(self) -> str:
        return "Move the clamp further away."

    def without_length(self) -> str:
        return "a link without length"

    def with_length(self) -> str:
        return "links that have a length"

    def stiffness(self, *, give_n_per_m: float | None) -> str:
        return "no number" if give_n_per_m is None else self.w.amount(give_n_per_m, "n_per_m")

    def stiff(self) -> str:
        return f"a stiffness above {self.w.amount(0.0, 'n_per_m')}"

    def hang(self) -> str:
        return "Hang a kilogram on the end and measure the drop."

    def length(self, *, length_m: float) -> str:
        return self.w.amount(length_m, "mm")

    def some_length(self) -> str:
        return f"more than {self.w.amount(0.0, 'mm')}"

    def wall(self, *, outer_m: float, inner_m: float, length_m: float) -> str:
        return f"{self.w.amount(outer_m, 'mm')} outside, {self.w.amount(inner_m, 'mm')} inside, {self.w.amount(length_m, 'mm')} long"

    def some_wall(self) -> str:
        return "a tube with a wall, a length and a modulus above 0"

    def longer(self, *, distance_m: float) -> str:
        return f"more than the {self.w.amount(distance_m, 'mm')} from its clamp to the base"

    def one_point(self) -> str:
        return "both ends at one point"

    def with_direction(self) -> str:
        return "two ends that are apart"

    def holding(self, *, count: int) -> str:
        return f"{self.w.whole(count)} {self.w.plural(count, one='figure', other='figures')}"

    def holding_for(self, *, joints: int) -> str:
        return f"one, or one for each of {self.w.whole(joints)} {self.w.plural(joints, one='joint', other='joints')}"

    def joint_to_contact(self, *, reach_m: float) -> str:
        return f"{self.w.amount(reach_m, 'mm')} from joint to contact point"

    def landmark(self, *, name: Name) -> str:
        return f"landmark '{self.w.name(name)}'"

    def known_landmark(self) -> str:
        return "a landmark of the room"

    def tapes(self, *, count: int, repeated: bool) -> str:
        what = (
            self.w.plural(count, one="landmark", other="different landmarks")
            if repeated
            else self.w.plural(count, one="tape distance", other="tape distances")
        )
        return f"{self.w.whole(count)} {what}"

    def three_tapes(self) -> str:
        return "at least three, from landmarks that are not in one line"

    def one_more(self) -> str:
        return "Measure to one more landmark; a fourth gives a check."

    def in_line(self, *, landmarks: tuple[Name, ...]) -> str:
        return f"landmarks {self.w.all_of(tuple(self._quoted(one) for one in landmarks))} in one line"

    def not_in_line(self) -> str:
        return "landmarks that are not in one line"

    def to_one_side(self) -> str:
        return "Measure to a landmark well to one side of the others."

    def two_tapes(self, *, first: Name, first_m: float, second: Name, second_m: float, apart_m: float) -> str:
        return f"{self._from(first_m, first)} and {self._from(second_m, second)}, which are {self.w.amount(apart_m, 'mm')} apart"

    def meet(self) -> str:
        return "distances that meet"

    def short_by(self, *, by_m: float) -> str:
        return f"They miss each other by {self.w.amount(by_m, 'mm')}: measure both again, and between the landmarks."

    def long_by(self, *, by_m: float) -> str:
        return f"The longer one is {self.w.amount(by_m, 'mm')} too long for the other: measure both again, and between the landmarks."

    def all_tapes(self, *, landmarks: tuple[Name, ...], distances_m: tuple[float, ...]) -> str:
        pairs = zip(landmarks, distances_m, strict=False)
        return ", ".join(self._from(far_m, name) for name, far_m in pairs)

    def meet_in_point(self) -> str:
        return "three distances that meet in a point"

    def missed_by(self, *, by_m: float) -> str:
        return f"They miss the nearest point by {self.w.amount(by_m, 'mm')}: measure them again, and add a fourth as a check."

    def _from(self, distance_m: float, landmark: Name) -> str:
        return f"{self.w.amount(distance_m, 'mm')} from {self._quoted(landmark)}"

    def _quoted(self, landmark: Name) -> str:
        return f"'{self.w.name(landmark)}'"

    def nothing_placed(self) -> str:
        return "no device that was given a place"

    def room_and_fit(self) -> str:
        return "a case with a room (room.toml) and a device that fits"

    def describe_room(self) -> str:
        return "Describe the room first: what a mount can hold on to, and where the control site rests."

    def no_writer(self, *, package: Name) -> str:
        return f"no {self.w.name(package)} on this machine"

    def writer(self) -> str:
        return "the optional part that writes DXF files"

    def install(self, *, command: Name) -> str:
        return f"Install it with: {self.w.name(command)}. The sheet and its drawings work without it."
