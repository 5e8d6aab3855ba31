"""What to measure or try, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Text
from stickwright.codes.to_confirm import ToConfirm

__all__ = ["Texts"]


class Texts(ToConfirm):
    """Readings that would replace assumed figures."""

    w: English

    def doubt(self, *, confirm: Text, assumed: Text) -> str:
        return f"to confirm: {self.clause(confirm)} (as assumed: {self.clause(assumed)})"

    def steps(self, *, trials: tuple[Text, ...], readings: tuple[Text, ...]) -> str:
        verbs = (("try", trials), ("measure", readings))
        return "; ".join(f"{verb} {'; '.join(self.say(one) for one in some)}" for verb, some in verbs if some)

    def hold_still(self) -> str:
        return "20 s of holding still on a stick of known stiffness"

    def resting_force(self) -> str:
        return "the limb at rest on a postal scale or the gauge, for 10 s, three times"

    def movement_range(self) -> str:
        return "the movement range in the main directions, by tape or with dots on paper (two minutes)"

    def other_directions(self) -> str:
        return "force and movement range in the directions not yet measured, three times each"

    def half_way_force(self) -> str:
        return "the force at half the movement range, in the two main directions"

    def usual_deflection(self) -> str:
        return "how far the game needs the stick pushed, by watching five minutes of play"

    def time_in_use(self) -> str:
        return "how much of the time the stick is in use, by watching five minutes of play"

    def comfortable_share(self) -> str:
        return "comfortable force as a share of the largest force, by asking the treating team"

    def spasm_peaks(self) -> str:
        return "the highest gauge reading of each of ten spasms"

    def lifts_off(self) -> str:
        return "whether the control site can lift off by itself"

    def stays_on(self) -> str:
        return "whether the control site stays on it"

    def resting_weight(self) -> str:
        return "the control site at rest on the gauge where the switch will be, for 10 s, three times"

    def rest_steadiness(self) -> str:
        return "20 s of resting on the gauge where the switch will be"

    def press_force(self) -> str:
        return "a press that can be repeated ten times without strain, on the gauge, three times"

    def press_rate(self) -> str:
        return "as many presses as are comfortable in ten seconds, twice"

    def landing(self) -> str:
        return "where ten presses land, with dots on paper"

    def press_count(self) -> str:
        return "presses in the busiest minute, by watching five minutes of play"

    def rests_clear(self) -> str:
        return "whether the control site can rest clear of it"

    def button_force(self) -> str:
        return "the force of the controller's buttons, on the gauge"

    def bench(self) -> str:
        return "the stick's forces and travel on the bench (eight readings, ten minutes)"
