"""Words on the drawing of a set-up, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.setup_drawings import Label, SetupDrawings

__all__ = ["Texts"]

_LABELS: dict[Label, str] = {
    "side_view": "From the player's right",
    "side_view_before_turning": "From the player's right, before turning",
    "above": "From above",
    "not_measured": "not measured",
    "player_side": "player's side",
    "forward": "forward",
    "touch": "touch surface: the finger slides",
    "forward_arrow": "forward: this way",
    "right": "right",
    "left": "left",
    "back": "back (player's side)",
}
_TURNED = {
    "crosswise": "turned",
    "side_view": "base then turned",
    "nothing": "\N{BLACK UP-POINTING TRIANGLE} front of the base, turned",
}


class Texts(SetupDrawings):
    """Words on the drawing, and the drawing in one sentence."""

    w: English

    def label(self, *, label: Label) -> str:
        return _LABELS[label]

    def above_with_base(self, *, sides_m: tuple[float, ...]) -> str:
        return f"{_LABELS['above']}: base {self.w.sizes(sides_m)}"

    def scale(self, *, shrink_factor: float, side_only: bool) -> str:
        scale = "life size" if shrink_factor == 1 else f"scale 1 to {round(shrink_factor, 6):g}"
        return f"{scale}{'' if side_only else '; topper drawn by form, pivot drawn at the top of the base'}"

    def travel(self, *, travel_m: float) -> str:
        return f"moves {self.w.amount(travel_m, 'mm')} each way"

    def extension(self, *, extension: Name) -> str:
        return f"extension {self.w.name(extension)}"

    def edge_raised(self, *, edge: Literal["far", "near"], tilt_rad: float) -> str:
        return f"{edge} edge raised {self.w.amount(tilt_rad, 'deg')}"

    def top_slopes(self, *, tilt_rad: float) -> str:
        return f"top slopes {self.w.amount(tilt_rad, 'deg')}"

    def crosswise(self) -> str:
        return "base crosswise (\N{BLACK UP-POINTING TRIANGLE} left)"

    def base_turned(self, *, turned: Text, before: Literal["crosswise", "side_view", "nothing"]) -> str:
        return f"{_TURNED[before]} {self.say(turned)}"

    def notes(self, *, notes: tuple[Text, ...]) -> str:
        return "; ".join(self.say(one) for one in notes)

    def base(self, *, length_m: float, width_m: float, height_m: float, crosswise: bool) -> str:
        length, width, height = (self.w.amount(side, "mm") for side in (length_m, width_m, height_m))
        across = ", standing crosswise with its front to the left" if crosswise else ""
        return f"base {length} long, {width} wide, {height} high{across}"

    def touch_alt(self, *, device: Text, base: Text | None, turned: Text | None, side_only: bool) -> str:
        views = self._views(side_only)
        return f"{views} of the touch surface {self.say(device)}: {self._base(base)}{self._turned(turned)}; {_ARROW}."

    def stick_alt(
        self,
        *,
        device: Text,
        base: Text | None,
        tilt_rad: float,
        contact_height_m: float,
        travel_m: float,
        turned: Text | None,
        side_only: bool,
    ) -> str:
        height, travel = self.w.amount(contact_height_m, "mm"), self.w.amount(travel_m, "mm")
        return (
            f"{self._views(side_only)} of {self.say(device)}: {self._base(base)}, {self._slope(tilt_rad)}; contact point {height} "
            f"above the pivot, travel {travel} each way{self._turned(turned)}; {_ARROW}."
        )

    def _views(self, side_only: bool) -> str:
        return "Side view" if side_only else "Side view and view from above"

    def _base(self, base: Text | None) -> str:
        return self.say(base) if base is not None else "base not measured"

    def _turned(self, turned: Text | None) -> str:
        return f"; the base is turned {self.say(turned)}, seen from above" if turned is not None else ""

    def _slope(self, tilt_rad: float) -> str:
        if tilt_rad == 0:
            return "level"
        towards = "towards" if tilt_rad > 0 else "away from"
        return f"sloping {self.w.amount(abs(tilt_rad), 'deg')} {towards} the player"


_ARROW = "the arrow points to the player's forward"
