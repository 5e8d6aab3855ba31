"""A stick that is left alone, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.cleaning import Axis
from stickwright.codes.message import Text
from stickwright.codes.resting import Resting

__all__ = ["Texts"]


class Texts(Resting):
    """Findings about rest, and clauses why something of it is not known."""

    w: English

    def one_release(self) -> str:
        return (
            "The stick was left alone once, so its centre is known for one release only. To see whether it returns to the "
            "same place, let go at least three times, with some seconds of rest after each."
        )

    def unsettled(self, *, unsettled: int, asked: int) -> str:
        which = (
            "The only rest"
            if asked == 1
            else f"{self.w.whole(unsettled)} of {self.w.whole(asked)} rests"
            if unsettled < asked
            else f"All {self.w.whole(asked)} rests"
        )
        return (
            f"{which} never settled: when the time was up, the stick was still on its way back, or still held. This is left "
            "out of centre and noise. Give each rest 3 s or more."
        )

    def zero_throughout(self, *, live: bool) -> str:
        return (
            "The rest is exactly zero throughout. It was set to zero before "
            f"recording{'' if live else ', or nothing was plugged in'}."
        )

    def fixed(self) -> str:
        return "The rest was set to a fixed value by other software, or nothing moved."

    def partly_zero(self, *, zero_share: float) -> str:
        return (
            f"{self.w.share(zero_share)} of the rest is exactly zero: small movements were set to 0 before recording."
        )

    def own_unit(self) -> str:
        return "Rest is not known: none was asked for in this recording, and its unit has no known centre."

    def one_axis(self, *, recorded: Axis) -> str:
        return (
            f"Rest cannot be seen from {recorded} alone, because a push straight "
            f"{'forward or back' if recorded == 'x' else 'sideways'} looks the same. Record the other axis as well, or mark "
            "the rests in a cue column."
        )

    def no_rest(self, *, least_s: float) -> str:
        return f"There is no rest of {self.w.amount(least_s, 's')} or more. Record 10 s with the hand off the stick, three times."

    def not_recorded(self, *, axis: Axis) -> str:
        return f"{axis} was not recorded."

    def leaned_on_first(self, *, x: Text, y: Text, later_s: float) -> str:
        return (
            f"The first rest is at ({self.clause(x)}, {self.clause(y)}). From {self.w.trimmed_amount(later_s, 's', 3)} on, the stick rests "
            "somewhere else. Either it was touched at switch-on, or it moved. Plug it in again with hands off, and use the "
            "later part."
        )

    def leaned_on(self, *, x: Text, y: Text) -> str:
        return (
            f"The stick rests at ({self.clause(x)}, {self.clause(y)}), far from 0. Either it was touched at switch-on, or the "
            "resting limb holds it over. Plug it in with hands off. If it stays there, support the limb before you set an "
            "offset."
        )

    def held_near_centre(self, *, held: int, stretches: int, apart: Text) -> str:
        return (
            f"{self.w.whole(held)} of {self.w.whole(stretches)} quiet stretches {self.w.plural(held, one='is', other='are')} "
            f"more than {self.clause(apart)} away from the others. The stick was probably held there, so they do not count as "
            "rest. Ask for rest to be sure."
        )

    def return_scatter(self, *, scatter: Text, rests: int, farthest: Text) -> str:
        return (
            f"The stick returns to a different place after each release: standard deviation {self.clause(scatter)} over "
            f"{self.w.whole(rests)} rests, at most {self.clause(farthest)} from the middle. Noise within a rest does not explain "
            "that. The dead zone must cover these places as well as the noise. Ask for ten releases in all directions."
        )

    def no_drift(self) -> str:
        return "No rest of 10 s, and fewer than four rests over half a minute: too little to see drift."

    def drift(self, *, drift: Text, low: Text, high: Text, within: bool) -> str:
        return (
            f"The centre drifts by {self.clause(drift)} a minute ({self.clause(low)} to {self.clause(high)}), "
            f"{'within the rests' if within else 'from rest to rest'}. To tell the stick from the posture, record 10 s with "
            "hands off."
        )

    def offset(self, *, axes: tuple[Text, ...]) -> str:
        return (
            f"The stick rests off its centre: {self.w.all_of(tuple(self.clause(one) for one in axes))}. Set an offset."
        )

    def axis_offset(self, *, axis: Axis, offset: Text, low: Text, high: Text) -> str:
        return f"{axis} {self.clause(offset)} ({self.clause(low)} to {self.clause(high)})"

    def let_go(self, *, times: int, away_s: float) -> str:
        often = {1: "once", 2: "twice"}.get(times, f"{self.w.whole(times)} times")
        return (
            f"The player let go {often} while something was asked for, {self.w.amount(away_s, 's')} in all: the stick was "
            "still, at its centre. These moments, with the way to the centre and back, do not count for following, holds, "
            "pushes and sudden movements. If the player was holding on and could not move it, record again with a lighter "
            "stick."
        )
