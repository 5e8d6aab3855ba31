"""What was assumed for an estimate, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.estimate_notes import EstimateNotes
from stickwright.codes.sites import Part

__all__ = ["Texts"]


class Texts(EstimateNotes):
    """Clauses beside a figure."""

    w: English

    def one_figure(self) -> str:
        return "given as one figure"

    def not_measured(self) -> str:
        return "not measured"

    def usual_stiffness(self) -> str:
        return "0.7 of comfortable force over movement range, not measured"

    def shaken(self) -> str:
        return "from how much the tried sticks moved, and the stiffness of stick and limb"

    def tremor_on_two(self, *, repeated: bool, scatter_share: float) -> str:
        once = "" if repeated else f", each recorded once, with a scatter of {self.w.share(scatter_share)} assumed"
        return f"from tremor on two sticks{once}; indicative above 3 Hz"

    def usual_supported(self, *, part: Part) -> str:
        return f"usual when the {self.w.body_part(part)} is supported, not measured"

    def usual_steady(self, *, part: Part) -> str:
        return f"usual when the {self.w.body_part(part)} is steady, not measured"

    def usual_figure(self) -> str:
        return "usual figure, not measured"

    def all_zero(self) -> str:
        return "every reading was 0"

    def scatter_once(self, *, value_share: float) -> str:
        return f"scatter of {self.w.share(value_share)} assumed, because it was measured once"

    def usual_range(self, *, part: Part) -> str:
        return f"usual range for the {self.w.body_part(part)}, because movement range was not measured"

    def zero_read(self) -> str:
        return "a force of 0 was read there, and a small force stands in"

    def nothing_repeated(self) -> str:
        return "no direction was measured twice"

    def usual_scatter(self) -> str:
        return "usual scatter, not measured"

    def neighbours(self) -> str:
        return "not measured; estimated from the neighbouring directions"

    def zero_among(self) -> str:
        return "a force of 0 was read among them"

    def read_once(self) -> str:
        return "it was measured once"

    def repeats_alike(self) -> str:
        return "all repeats are the same"

    def no_press(self) -> str:
        return "no press was measured"

    def not_all_counted(self) -> str:
        return "not everything that may press it was counted"

    def bracketed(self) -> str:
        return "worked out from sticks measured on the bench, without a gauge"
