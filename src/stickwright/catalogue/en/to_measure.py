"""What is to be measured, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name
from stickwright.codes.to_measure import ToMeasure

__all__ = ["Texts"]


class Texts(ToMeasure):
    """Each a clause in the imperative."""

    w: English

    def weigh(self, *, thing: Name) -> str:
        return f"weigh {self.w.name(thing)}"

    def base(self, *, device: Name) -> str:
        return f"measure the base of {self.w.name(device)}, length and width"

    def pivot(self, *, device: Name) -> str:
        return f"measure from the underside of {self.w.name(device)} up to its pivot"

    def pull_sheet(self, *, fastener: Name) -> str:
        return f"pull on {self.w.name(fastener)} with the force gauge, and divide by the weight that lies on it"

    def strength(self, *, fastener: Name) -> str:
        return f"read the label or data sheet of {self.w.name(fastener)} for its strength"

    def test_method(self, *, fastener: Name) -> str:
        return f"read the data sheet of {self.w.name(fastener)} for its test method"

    def joints(self, *, mount: Name) -> str:
        return f"read in the manual of {self.w.name(mount)} what its joints hold, or hang weights on it until one slips"

    def every_joint(self, *, mount: Name) -> str:
        return f"read what every joint of {self.w.name(mount)} holds, or hang weights on it until one slips"

    def stand(self, *, mount: Name) -> str:
        return f"measure and weigh {self.w.name(mount)}"

    def flex(self, *, mount: Name) -> str:
        return f"measure the flex of {self.w.name(mount)}: hang a kilogram on its end and measure the drop"

    def friction_under(self, *, thing: Name) -> str:
        return f"pull {self.w.name(thing)} sideways with the force gauge for five seconds, and divide by its weight (friction)"

    def friction_of_base(self, *, device: Name, surface: Name) -> str:
        return (
            f"pull {self.w.name(device)} sideways on the {self.w.name(surface)} with the force gauge for five seconds, and divide "
            "by its weight (base_friction of that surface)"
        )

    def thighs(self) -> str:
        return "measure how far apart the middles of the thighs are under the lap tray"

    def plate(self, *, long_m: float, short_m: float) -> str:
        return f"find or make a plate of at least {self.w.sizes((long_m, short_m))}, and weigh it"

    def bend(self, *, mount: Name) -> str:
        return f"try how tightly {self.w.name(mount)} may be bent (least_bend_mm)"

    def last_ball(self, *, mount: Name) -> str:
        return f"measure from the middle of the last ball of {self.w.name(mount)} to the underside of what it carries (head_mm)"

    def tilt_pivot(self) -> str:
        return (
            "measure the tilt pivot: tilt the chair, find the point that stays where it is, and measure how far forward of the "
            "seat and how far below it that point lies"
        )

    def release(self, *, coupling: Name) -> str:
        return f"measure with the force gauge at what force {self.w.name(coupling)} lets go, at its softest and firmest (release_n)"
