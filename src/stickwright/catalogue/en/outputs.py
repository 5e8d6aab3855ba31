"""Sizes of a stick's output, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.outputs import Outputs

__all__ = ["Texts"]


class Texts(Outputs):
    """Of full output, or in a unit that has no known full output."""

    w: English

    def of_full(self, *, output_share: float) -> str:
        return self.w.fine_share_figures(output_share)

    def own_unit(self, *, output_factor: float) -> str:
        return self.w.number(output_factor, 3)
