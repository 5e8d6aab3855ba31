"""What is wrong with readings of sticks, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.message import Name
from stickwright.codes.stick_problems import ExpectedStick, FoundStick, StickProblems, StickRemedy, StickStep

__all__ = ["Texts"]

_STEP: dict[StickStep, str] = {
    "bench_readings": "bench readings",
    "limb_stiffness": "limb stiffness from tremor",
}
_FOUND: dict[FoundStick, str] = {
    "no_position": "no position",
    "two_ways": "one angle pushing out and one letting back",
    "no_share": "no share reached",
    "all_zero": "0 in every reading",
    "weights_zero": "weights that are all 0",
    "no_stick": "no stick in stock that could be tried here",
    "nothing": "nothing",
}
_EXPECTED: dict[ExpectedStick, str] = {
    "position": "an angle or a travel with each force (or an output with each force, and the end stop)",
    "turn": "within a turn, -6.28 to 6.28 rad",
    "number_each": "a number for each reading",
    "three": "3 or more, at two angles or more",
    "above_0_n": "more than 0 N pushing outwards",
    "way": "true (pushing out) or false (letting back)",
    "two_angles": "readings at two angles or more, the same way",
    "length": "more than 0, up to 2 m",
    "max_angle": "more than 0, up to 1.57 rad",
    "extension": "0 to 2 m of added length",
    "above_0_s": "more than 0 s",
    "one_force": "at least one force above 0 N",
    "reached": "how far the player got on at least one measured stick, 0 to 1",
    "less_movement": "clearly less movement on the stiffer stick",
    "falls_less": "less movement on the stiffer stick, but by a smaller factor than its stiffness rises",
    "one_above_0": "at least one above 0",
    "action": "an action of game.toml",
    "model": "an endurance model by first author",
    "joint": "a joint with a curve",
    "contact_height": "height of the contact point above the pivot",
    "topper": "a topper's name or form in kit.toml",
    "one": "at least one",
    "stick": "a stick of kit.toml",
    "state_directions": "directions that were read in the usual state as well, so that the states can be compared",
}
_REMEDY: dict[StickRemedy, str] = {
    "force_column": "A direction is not a minus sign. If the gauge shows grams-force or ounces, name the column force_gf "
    "or force_oz.",
    "angle_column": "A direction is not a minus sign. If the angles are in degrees, name the column angle_deg.",
    "height_column": "This is the height of the contact point above the pivot. If it is in millimetres, name it height_mm.",
    "take_more": "Read the force at the start, half way and at the end stop, pushing out, and better also letting "
    "back.",
    "zero_force": "The actuation force is the force at which the stick just leaves the centre. If it was not read, "
    "leave the row out.",
    "measure_stop": "Measure the end stop again.",
    "read_position": "Read the angle with a phone, or the travel of the contact point with a ruler.",
    "output_share": "Output is a share without a sign: 1 is full.",
    "height_in_mm": "Above the pivot. If it is in millimetres, name it height_mm.",
    "angle_in_deg": "If it is in degrees, name it angle_deg.",
    "travel_in_mm": "If it is in millimetres, name it travel_mm.",
    "height_from_pivot": "Height is counted from the pivot inside the stick, not from its base.",
    "direction_column": "If the directions are in degrees, name the column direction_deg.",
    "in_millimetres": "If this is in millimetres, divide by 1000, or use a field that ends in _mm.",
    "in_degrees": "If this is in degrees, give radians, or use a field that ends in _deg.",
    "direction_apart": "A direction is given separately from the angle, never as a minus sign. Convert degrees first.",
    "no_hold": "Leave out a hold that was not made.",
    "gauge_step": "If the gauge cannot show so weak a push, give its step, for example gauge_step_n = 0.01.",
    "sticks_apart": "Repeat both, or use two sticks that differ more in stiffness.",
    "same_posture": "The two recordings differ in more than the stick. Repeat them in the same posture.",
    "give_weights": "Give a weight to the directions that the game needs, for example 1.",
    "other_model": "Use another model for this joint.",
    "neck_or_face": "There is no published endurance curve for the neck or face (chin, lip, cheek, tongue, head). Only "
    "the player's own measured hold counts there.",
    "contact_height": "Measure it with the stick's own cap on, for example contact_height_mm = 16.",
    "stock": "Set in_stock, or allow more toppers.",
    "state_direction": "Read that direction in the usual state too, or delete it here.",
}


class Texts(StickProblems):
    """Parts of problems: where, found, expected, remedy."""

    w: English

    def step(self, *, what: StickStep) -> str:
        return _STEP[what]

    def reading(self, *, number: int) -> str:
        return f"reading {self.w.whole(number)}"

    def found(self, *, what: FoundStick) -> str:
        return _FOUND[what]

    def expected(self, *, what: ExpectedStick) -> str:
        return _EXPECTED[what]

    def remedy(self, *, what: StickRemedy) -> str:
        return _REMEDY[what]

    def count(self, *, count: int, of: Literal["numbers", "entries", "readings", "with_force"]) -> str:
        named = {
            "numbers": ("number", "numbers"),
            "entries": ("entry", "entries"),
            "readings": ("reading", "readings"),
            "with_force": ("reading with a force", "readings with a force"),
        }[of]
        return f"{self.w.whole(count)} {self.w.plural(count, one=named[0], other=named[1])}"

    def one_each(self, *, readings: int) -> str:
        return f"{self.w.whole(readings)}, one for each reading"

    def below_height(self, *, height_m: float) -> str:
        return f"less than the height of the contact point, {self.w.amount(height_m, 'mm')}"

    def up_to(self, *, most_factor: float) -> str:
        return f"more than 0, up to {self.w.trimmed(most_factor, 3)}"

    def angle(self, *, angle_rad: float) -> str:
        return self.w.amount(angle_rad, "deg", 3)

    def travel(self, *, travel_m: float) -> str:
        return self.w.amount(travel_m, "mm")

    def at_most_stop(self, *, stop_rad: float) -> str:
        return f"at most the end stop at {self.w.amount(stop_rad, 'deg', 3)}"

    def all_at(self, *, angle_rad: float) -> str:
        return f"all readings at {self.w.amount(angle_rad, 'deg', 3)}"

    def or_more(self, *, unit: Literal["N m", "N m/rad"]) -> str:
        return f"a number of 0 or more, in {unit}"

    def within_stop(self, *, stop_rad: float) -> str:
        return f"0 to the end stop at {self.w.trimmed(stop_rad, 4)} rad ({self.w.amount(stop_rad, 'deg', 3)})"

    def movements(
        self, *, first_m: float, second_m: float, first_n_per_m: float, second_n_per_m: float, alike: bool
    ) -> str:
        return (
            f"{self.w.amount(first_m, 'mm')} and {self.w.amount(second_m, 'mm')} on sticks of "
            f"{self.w.trimmed_amount(first_n_per_m, 'n_per_mm', 3)} and "
            f"{self.w.trimmed_amount(second_n_per_m, 'n_per_mm', 3)}{', which cannot be told apart' if alike else ''}"
        )

    def shoulder_only(self, *, model: Name) -> str:
        return f"the shoulder, because {self.w.name(model)} gives no other joint"

    def percentage(self, *, value_share: float) -> str:
        return f"If this is a percentage, divide by 100: {self.w.trimmed(value_share, 3)}."

    def share_of(self, *, of: Literal["time", "hold", "force"]) -> str:
        whole = {"time": "time", "hold": "longest hold", "force": "maximal force"}[of]
        return f"a share of the {whole}, more than 0 and up to 1"

    def piece_of_kit(self, *, piece: Literal["topper", "extension"]) -> str:
        return f"a {'topper' if piece == 'topper' else 'shaft extension'} of kit.toml"

    def state_reading(self, *, direction_rad: float) -> str:
        return f"a reading {self.w.direction(direction_rad)}, which was not taken in the usual state"
