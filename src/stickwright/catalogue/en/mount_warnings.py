"""What is doubtful of mounts and fasteners, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.mount_warnings import ArmFigure, Held, MountWarnings, Strength

__all__ = ["Texts"]

_CLAMPS: dict[Held, str] = {
    "tube_m": "tube_mm = [thinnest, thickest]",
    "edge_m": "edge_mm = [thinnest, thickest]",
}
_SIZES = {"clamp_width": "the width of the clamp along a tube or edge", "jaw_depth": "the depth of the jaw"}
_ARM: dict[ArmFigure, str] = {
    "links": "the lengths of its links (links_mm)",
    "holding": "the holding moment of its joints (holding_nm)",
}
_STRENGTHS: dict[Strength, str] = {
    "shear_pa": "shear_kpa",
    "tension_pa": "tension_kpa",
    "peel_n_per_m": "peel_n_per_m",
    "friction": "friction",
}


class Texts(MountWarnings):
    """Questions behind their place in the file."""

    w: English

    def smaller_first(self) -> str:
        return "the smaller first"

    def clamp_range(self, *, holds: tuple[Held, ...]) -> str:
        keys = self.w.any_of(tuple(_CLAMPS[one] for one in holds))
        return (
            "what its clamp holds is not recorded, so it is not used. Open and close the clamp with a tape measure beside it: "
            f"{keys}."
        )

    def clamp_size(
        self, *, size: Literal["clamp_width", "jaw_depth"], size_m: float, low_m: float, high_m: float, small: bool
    ) -> str:
        slip = "Were inches typed as millimetres?" if small else "Is it a typing error?"
        return (
            f"{self.w.amount(size_m, 'mm')} is unusual for {_SIZES[size]}; {self.w.limits(low_m, high_m, 'mm')} is usual. {slip} "
            "If it was measured, leave it unchanged."
        )

    def slow_to_take_off(self, *, time_s: float) -> str:
        return (
            f"{self.w.amount(time_s, 's')} to take it off for a transfer. Is this the time to set it up (setup_min)? Time it with "
            "one hand, from the first grip until the player is free."
        )

    def arm_unknown(self, *, missing: tuple[ArmFigure, ...]) -> str:
        figures = self.w.all_of(tuple(_ARM[one] for one in missing))
        are = "is" if missing == ("holding",) else "are"
        return (
            f"{figures} {are} not recorded, so whether it reaches and holds is not known. Measure the links from joint to joint. For "
            "the joints, stretch the arm out level and hang weights on its end until a joint slips: kilograms times 9.8 times metres."
        )

    def no_release_force(self) -> str:
        return (
            "the release force is not recorded, so it does not count as a breakaway. Pull it off with a gauge at its softest and "
            "firmest setting: release_n = [least, most]."
        )

    def no_strength(self, *, missing: tuple[Strength, ...]) -> str:
        keys = self.w.all_of(tuple(_STRENGTHS[one] for one in missing))
        are = self.w.plural(len(missing), one="is", other="are")
        return f"{keys} {are} not recorded. Read the label; until then it counts as not holding."

    def no_test_method(self) -> str:
        return "strengths without their test method (test_method). Figures from different tests cannot be compared."
