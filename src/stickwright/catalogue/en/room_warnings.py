"""What is doubtful of a room, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.amounts import TypedUnit
from stickwright.codes.message import Message, Name, Text
from stickwright.codes.room_warnings import Axis, BodySize, RoomWarnings

__all__ = ["Texts"]

_MEASURE = "right, forward and up from the point where the middle of the back meets the seat to where the site rests"
_SIZES: dict[BodySize, str] = {
    "popliteal_height": "popliteal height",
    "elbow_rest_height": "elbow rest height",
    "buttock_popliteal_length": "buttock-popliteal length",
    "forearm_forearm_breadth": "forearm-forearm breadth",
    "eye_height_sitting": "eye height, sitting",
}


class Texts(RoomWarnings):
    """Questions behind their place in the file."""

    w: English

    def second_place(self, *, site: Name, line: int) -> str:
        return f'a second place of "{self.w.name(site)}" (the first: line {self.w.whole(line)})'

    def one_place(self) -> str:
        return "one place for each site"

    def delete_or_join(self) -> str:
        return "Delete one, or give all tape distances of this site in one place."

    def empty_place(self) -> str:
        return (
            "neither a point nor tape distances, so this says nothing. Measure right, forward and up from the point where the "
            "middle of the back meets the seat (at_mm = [...]), or measure four tape distances to landmarks."
        )

    def few_landmarks(self, *, count: int, site: Text) -> str:
        landmarks = self.w.plural(count, one="landmark", other="landmarks")
        return (
            f"tape distances to {self.w.whole(count)} {landmarks} cannot place {self.clause(site)}. Three landmarks leave two "
            "answers; a fourth decides."
        )

    def landmark_again(self, *, landmark: Name, site: Text, line: int) -> str:
        return (
            f'"{self.w.name(landmark)}" a second time for {self.clause(site)} (the first: line {self.w.whole(line)}). Was another '
            "landmark meant?"
        )

    def tape_against_point(self, *, typed: Text, landmark: Text, apart_m: float) -> str:
        return (
            f"{self.clause(typed)} to {self.clause(landmark)}, but the two points given are {self.w.amount(apart_m, 'mm')} apart. "
            "One of these is wrong; the point is used."
        )

    def slopes_differ(self, *, slope_rad: float, movement_rad: float, key: Name) -> str:
        return (
            f"{self.w.amount(slope_rad, 'deg')}, but player.toml gives {self.w.amount(movement_rad, 'deg')} ({self.w.name(key)}). "
            "Which is right?"
        )

    def end_at_beginning(self, *, typed: Text, kind: Literal["tube", "edge"]) -> str:
        return f"{self.clause(typed)}, where the {kind} also begins"

    def the_other_end(self, *, kind: Literal["tube", "edge"]) -> str:
        return f"the other end of the {kind}"

    def measure_both_ends(self) -> str:
        return "Measure both ends of the free length."

    def width_and_depth(self) -> str:
        return "a width and a depth above zero"

    def width_first(self) -> str:
        return "Width (to the right) first, then depth (forward)."

    def box_turned(self, *, typed: Text, high: Text, axes: tuple[Axis, ...]) -> str:
        return f"{self.clause(typed)} beyond {self.clause(high)} in {self.w.all_of(axes)}"

    def smallest_of_box(self) -> str:
        return "the smallest x, y and z of the box here, and the largest in high"

    def swap_axes(self, *, axes: tuple[Axis, ...]) -> str:
        return f"Swap the two values of {self.w.all_of(axes)}."

    def flat_box(self, *, typed: Text) -> str:
        return f"{self.clause(typed)}, a box without thickness"

    def more_than(self, *, key: Name) -> str:
        return f"more than {self.w.name(key)} in x, y and z"

    def give_room(self) -> str:
        return "Make the box as large as the space that must stay free."

    def tilt_turned(self, *, least: Text, most: Text | None) -> str:
        other = self.clause(most) if most is not None else "no tilt_to, which counts as level"
        return f"{self.clause(least)} with {other}"

    def least_tilt_first(self) -> str:
        return "the least tilt used in play here, and the most in tilt_to"

    def swap_or_give_both(self) -> str:
        return "Swap the two, or give both."

    def no_pivot(self) -> str:
        return (
            "the seat tilts, but tilt_pivot_mm is not recorded, so how far a place moves away from fixed points is not known. "
            "Measure right, forward and up to the axle under the seat."
        )

    def front_wheels_forward(self) -> str:
        return "the front wheels further forward than the rear wheels"

    def wider_than_chair(self, *, key: Name) -> str:
        return (
            f"the wheels are further apart than the chair is wide ({self.w.name(key)}). Were the two swapped, or is one in another "
            "unit?"
        )

    def heavy(self, *, typed: Text, most_kg: float) -> str:
        most = self.w.trimmed_amount(most_kg, "kg", 3)
        return f"{self.clause(typed)} is more than {most}. Were pounds typed as kilograms? If it was weighed, leave it unchanged."

    def below_floor(self, *, site: Text, below_m: float, floor: Text) -> str:
        return f"{self.clause(site)} {self.w.amount(below_m, 'mm')} below the floor {self.clause(floor)}"

    def above_floor(self) -> str:
        return "a point above the floor"

    def heights_from_seat(self) -> str:
        return "Heights are measured up from the seat, so points below the seat are negative. Check the corner of the floor too."

    def in_surface(self, *, site: Text, surface: Text, below_m: float) -> str:
        return (
            f"{self.clause(site)} would be inside {self.clause(surface)}, {self.w.amount(below_m, 'mm')} below its top. Is one of "
            "the heights wrong?"
        )

    def under_surface(self, *, site: Text, surface: Text, below_m: float) -> str:
        return (
            f"{self.clause(site)} would be under {self.clause(surface)}, {self.w.amount(below_m, 'mm')} below its top. Is that "
            "right while playing?"
        )

    def main_place_missing(self, *, site: Name, table: Text) -> str:
        needed = f'the place of "{self.w.name(site)}" is the most useful distance still needed.'
        return f"{needed} Measure {_MEASURE}: {self.clause(table)} with site and at_mm."

    def nothing_to_hold(self) -> str:
        return (
            "nothing is entered for a mount to clamp to or stand on. Measure the nearest tube, both ends of its free length and its "
            "diameter ([[tube]]), or the nearest tray or table ([[surface]])."
        )

    def face_not_kept_free(self, *, site: Name) -> str:
        return (
            f'"{self.w.name(site)}" is near the face, but no [[keep_out]] of kind "face" says what must stay free. Measure from '
            "below the chin to above the eyebrows, and both cheeks."
        )

    def place_missing(self, *, site: Name, table: Text) -> str:
        return f'the place of "{self.w.name(site)}" is still needed. Measure {_MEASURE}: {self.clause(table)} with site and at_mm.'

    def far_away(self, *, points: tuple[Message, ...]) -> str:
        listed = "; ".join(self.clause(one) for one in points)
        return (
            f"{listed}: more than 2 m from the seat reference point, so out of reach. Check the decimal point, and measure from the "
            "point where the middle of the back meets the seat."
        )

    def nearer_or_further(
        self, *, scale_m: float, usual_m: float, near: bool, unit: TypedUnit, typed_unit: TypedUnit, key: Name
    ) -> str:
        scale, usual = self.w.amount(scale_m, "mm"), self.w.amount(usual_m, "mm")
        seen = (
            f"all of it is within {scale} of the seat, but half of the other things in the room are beyond {usual}"
            if near
            else f"it is {scale} from the seat, but half of the other things in the room are within {usual}"
        )
        return (
            f"{seen}. {self._slip(unit, typed_unit)} If so, name the key {self.w.name(key)}, and change its other lengths too. "
            "Nothing was converted."
        )

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
        published = " plus ".join(_SIZES[one] for one in sizes)
        slip = self._slip(unit, typed_unit) if unit is not None else "Is it a typing error?"
        return (
            f"{self.clause(typed)} is outside {self.w.limits(low_m, high_m, 'mm')}, half to one and a half times the published "
            f"{published} ({self.w.amount(men_m, 'mm')} men, {self.w.amount(women_m, 'mm')} women). {slip} Bodies and chairs differ: "
            "if it was measured, leave it unchanged."
        )

    def chin_above_eyes(self, *, key: Name) -> str:
        return f"the chin is not below the eyes ({self.w.name(key)}). Were the two swapped?"

    def wrong_sides(self, *, points: tuple[Message, ...], everywhere: bool) -> str:
        listed = "; ".join(self.clause(one) for one in points)
        question = (
            "Was all of it measured while facing the player?"
            if everywhere
            else "Is a minus sign missing, or were two swapped?"
        )
        return f"{listed}: on the other side than the name says. x is positive to the player's right. {question}"

    def point_on_side(self, *, where: tuple[Text, ...], side: Literal["left", "right"], typed: Text) -> str:
        return f"{', '.join(self.clause(step) for step in where)} ({side}, but x = {self.clause(typed)})"

    def _slip(self, unit: TypedUnit, typed_unit: TypedUnit) -> str:
        return f"Were {self.w.long_unit(unit)} typed as {self.w.long_unit(typed_unit)}?"
