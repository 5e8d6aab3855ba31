"""Two recordings of one task, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.comparisons import Comparisons, Judgement
from stickwright.codes.message import Text

__all__ = ["Texts"]

_JUDGED: dict[Judgement, str] = {
    "better": "Better",
    "worse": "Worse",
    "changed": "Changed",
    "no-difference": "No clear difference",
    "not-known": "Not known",
}


class Texts(Comparisons):
    """What the difference is, and what it may not be taken for."""

    w: English

    def judged(self, *, judgement: Judgement, label: Text, before: Text, after: Text, difference: Text | None) -> str:
        figures = f"{self.clause(before)} before, {self.clause(after)} after"
        apart = "" if difference is None else f"; difference {self.clause(difference)}"
        return f"{_JUDGED[judgement]}. {self.say(label)}: {figures}{apart}."

    def whole(self, *, told: tuple[Text, ...]) -> str:
        found = " ".join(self.say(one) for one in told) or "There is no clear difference."
        return f"{found} Ask the player which they prefer: their answer counts more than these figures."

    def one_block(self) -> str:
        return (
            "There is one block of each, one after the other, so practice or fatigue may explain the difference. Repeat "
            "them in the other order before you decide."
        )

    def too_little(self, *, runs: Literal["before", "after", "both"]) -> str:
        where = {"before": "before the change", "after": "after the change", "both": "before and after the change"}
        return (
            f"Too little was recorded {where[runs]}. A real difference can be missed, and a chance one can look real."
        )

    def by_chance(self, *, figures: int) -> str:
        return (
            f"{self.w.whole(figures)} {self.w.plural(figures, one='figure was', other='figures were')} compared. One in 20 "
            "differs by chance alone."
        )

    def no_interval(self, *, run: Literal["before", "after"], why: Text) -> str:
        return f"{run}: {self.clause(why)}"
