"""Force over time at one control site; in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name
from stickwright.codes.trends import Trends

__all__ = ["Texts"]


class Texts(Trends):
    """Force over time at one control site."""

    w: English

    def sentence(self, *, site: Name, unit: Name, directions: int, visits: int, more: int, less: int) -> str:
        dirs = f"{self.w.whole(directions)} {self.w.plural(directions, one='direction', other='directions')}"
        seen = f"{self.w.whole(visits)} {self.w.plural(visits, one='visit', other='visits')}"
        told = f"{self.w.name(site)}: comfortable force in {self.w.name(unit)}, {dirs} at {seen}."
        rest = f"no clear difference in {self.w.whole(max(directions - more - less, 0))}"
        return f"{told} From first to last: more in {self.w.whole(more)}, less in {self.w.whole(less)}, {rest}."

    def not_taken(self) -> str:
        return "not measured"

    def spread(self, *, middle: Name, low: Name, high: Name) -> str:
        return f"{self.w.name(middle)} ({self.w.name(low)} to {self.w.name(high)})"
