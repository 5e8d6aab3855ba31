"""How long a push can be held, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.holds import Holds, Joint
from stickwright.codes.message import Text

__all__ = ["Texts"]

_NONE = (
    "no published endurance curve exists for the neck and face (chin, lip, cheek, tongue, head), where only the player's own "
    "measured hold counts"
)
_CURVE = "Frey Law and Avin 2010"


class Texts(Holds):
    """Reasons beside a time."""

    w: English

    def _joint(self, joint: Joint) -> str:
        return "all joints" if joint == "general" else joint

    def published(self, *, joint: Joint) -> str:
        return f"{_CURVE}, {self._joint(joint)}, healthy adults"

    def own(self) -> str:
        return "the player's own hold"

    def own_carried(self, *, joint: Joint) -> str:
        return f"the player's own hold, carried to this effort along {_CURVE}, {self._joint(joint)}"

    def over_an_hour(self) -> str:
        return "over an hour, which is more than any game needs"

    def no_curve(self) -> str:
        return f"{_NONE}: measure one hold at the force that the game needs"

    def one_hold(self) -> str:
        return "one hold was measured; a second one would give an interval"

    def same_holds(self) -> str:
        return "all holds were of the same length: stopped by the clock, or copied"

    def by_curve(self, *, joint: Joint, models: int, note: Text | None) -> str:
        more = f". {self.clause(note)}" if note else ""
        return (
            f"no hold was measured: curve of {_CURVE} ({self._joint(joint)}, healthy adults); the interval is the spread between "
            f"{models} published models{more}"
        )

    def below_tenth(self) -> str:
        return (
            "Below 10% of maximal force the curves were not measured and run to hours: read the time as 'long', and measure "
            "a hold."
        )

    def below_quarter(self) -> str:
        return (
            "Most measurements lie above 25% of maximal force; below that the models differ up to fourfold: measure a "
            "hold."
        )

    def harder_than_measured(self, *, measured_share: float, effort_share: float) -> str:
        return (
            f"the hold was measured at {self.w.share(measured_share)} effort, this needs {self.w.share(effort_share)}, and "
            f"{_NONE}: measure a hold at this effort"
        )

    def at_least(self, *, measured_share: float) -> str:
        return f"at least as long as the hold measured at the higher effort of {self.w.share(measured_share)}"

    def carried(self, *, measured_share: float, effort_share: float, joint: Joint) -> str:
        return (
            f"the player's own hold at {self.w.share(measured_share)} effort, carried to {self.w.share(effort_share)} along the "
            f"curve of {_CURVE} ({self._joint(joint)}); the interval comes from the spread between published models"
        )

    def few_simulations(self) -> str:
        return "too few simulations for an interval"
