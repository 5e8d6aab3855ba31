"""The page 'Readings': force and movement range of one control site, direction by direction; in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.readings_page import AlsoTaken, Enough, PetalState, ReadingsPage

__all__ = ["Texts"]

_PETALS: dict[PetalState, str] = {
    "both": "force and movement range",
    "force": "force only",
    "range": "movement range only",
    "nothing": "nothing yet",
}
_ENOUGH: dict[Enough, str] = {
    "enough": "yes",
    "nearly": "nearly",
    "not enough": "no: take three more",
    "not measured": "not measured",
}
_ALSO: dict[AlsoTaken, str] = {
    "rest": "Resting force",
    "hold": "Hold",
    "press": "Presses",
    "spasm": "Spasms",
    "along": "Force along the movement range",
    "on_stick": "Deflection reached on a stick (no gauge needed)",
}


class Texts(ReadingsPage):
    """The page 'Readings': force and movement range of one control site, direction by direction."""

    w: English

    def title(self) -> str:
        return "Readings"

    def no_site(self) -> str:
        return "Add a control site first."

    def add_site(self) -> str:
        return "Add a control site"

    def sites(self) -> str:
        return "Control sites"

    def site_number(self, *, number: int) -> str:
        return f"control site {self.w.whole(number)}"

    def how(self) -> str:
        return (
            "Measure comfortable force at the contact point, level with the movement, and movement range without "
            "load. Take three repeats, directions in any order, and the first direction once more at the end. "
            "Stop at pain, colour change, held breath or fatigue: what you have counts."
        )

    def spaces(self) -> str:
        return "Separate repeats with spaces: 41 45 38"

    def direction(self) -> str:
        return "Direction"

    def force(self) -> str:
        return "Force"

    def range_(self) -> str:
        return "Movement range"

    def force_of(self, *, direction: Text) -> str:
        return f"Force {self.say(direction)}"

    def range_of(self, *, direction: Text) -> str:
        return f"Movement range {self.say(direction)}"

    def degrees(self) -> str:
        return "Direction in degrees"

    def again(self) -> str:
        return "First direction repeated"

    def again_label(self) -> str:
        return "Force of the first direction, repeated"

    def no_direction(self) -> str:
        return "no direction"

    def save(self) -> str:
        return "Save readings"

    def diagram(self) -> str:
        return "Directions, seen from above: forward is up"

    def directions(self) -> str:
        return "Directions"

    def diagram_hint(self) -> str:
        return "Select a direction to go to its field. ✓ force and movement range, ½ one of them."

    def petal(self, *, direction: Text, state: PetalState) -> str:
        return f"{self.say(direction)}: {_PETALS[state]}"

    def forward(self) -> str:
        return "forward"

    def from_file(self, *, file: Name) -> str:
        return f"Readings from {self.w.name(file)} are included"

    def in_file(self, *, file: Name) -> str:
        return f"Readings from {self.w.name(file)}"

    def copy(self) -> str:
        return "Copy to the form above"

    def copied(self, *, file: Name) -> str:
        return f"Readings of {self.w.name(file)} copied to the form. The file has not been changed."

    def also_title(self) -> str:
        return "Other useful readings"

    def also(self, *, what: AlsoTaken) -> str:
        return _ALSO[what]

    def entered(self) -> str:
        return "entered"

    def entered_count(self, *, count: int) -> str:
        return f"{self.w.whole(count)} entered" if count else "none yet"

    def results(self) -> str:
        return "Results so far"

    def results_table(self) -> str:
        return "Estimates with 95% intervals, from these fields and from files"

    def sufficient(self) -> str:
        return "Force readings sufficient?"

    def enough(self, *, state: Enough) -> str:
        return _ENOUGH[state]

    def counts(self) -> str:
        return "Readings"

    def taken(self, *, force: int, reach: int) -> str:
        return f"{self.w.whole(force)} force, {self.w.whole(reach)} range"

    def towards(self, *, direction_rad: float) -> str:
        return self.w.direction(direction_rad)

    def weakest(self, *, direction_rad: float) -> str:
        return f"Weakest direction: {self.w.direction(direction_rad)}."

    def more_at(self, *, directions_rad: tuple[float, ...]) -> str:
        return f"More readings would help most at {self.w.directions(directions_rad)}."

    def known_within(self, *, share_share: float) -> str:
        return f"Where it was measured, force is known to within about {self.w.share(share_share)}."

    def unread(self, *, directions_rad: tuple[float, ...]) -> str:
        return (
            f"Force at {self.w.directions(directions_rad)} was not measured. It is estimated from the other directions."
        )

    def no_range(self) -> str:
        return "Movement range was not measured."

    def unread_range(self, *, directions_rad: tuple[float, ...]) -> str:
        return f"Movement range at {self.w.directions(directions_rad)} was not measured. It is estimated from the other directions."

    def saved(self, *, site: Name) -> str:
        return f"Readings of {self.w.name(site)} saved."

    def direction_missing(self) -> str:
        return "Enter the direction: 0 to 360°, 90 is forward."

    def not_utf8(self) -> str:
        return "This file is not in UTF-8. Save it again as CSV in UTF-8, or type its readings into the form."
