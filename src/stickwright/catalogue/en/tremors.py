"""Rhythms in a movement, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.catalogue.writer import GAP
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Text
from stickwright.codes.tremors import Tremors

__all__ = ["Texts"]


class Texts(Tremors):
    """One sentence first, others behind it."""

    w: English

    def whole(self, *, told: Text, further: tuple[Text, ...]) -> str:
        return " ".join((self.say(told), *(self.say(one) for one in further)))

    def too_few(self) -> str:
        return "There are too few samples in a row to look for a tremor."

    def too_slow(self, *, rate_hz: float, top_hz: float) -> str:
        return (
            f"The recording has {self.w.trimmed(rate_hz, 3)} samples a second, which shows movement up to "
            f"{self.w.amount(top_hz, 'hz')}: too slow to look for a tremor. Record again at 50 or more samples a second."
        )

    def too_short(self, *, longest_s: float) -> str:
        return (
            f"The longest stretch without a gap is {self.w.amount(longest_s, 's')}: too short to look for a tremor. Record 20 "
            "s without a break."
        )

    def nothing_fast(self, *, low_hz: float) -> str:
        return f"Nothing moved faster than {self.w.amount(low_hz, 'hz', 1)}, so no tremor peak stands out."

    def none(self, *, searched: Text) -> str:
        return f"No tremor peak stands out {self.clause(searched)}."

    def searched(self, *, low_hz: float, top_hz: float, rate_hz: float, uneven: bool) -> str:
        return (
            f"between {self.w.trimmed(low_hz)} and {self.w.amount(top_hz, 'hz')} ({self.w.trimmed(rate_hz, 3)} samples a "
            f"second{', uneven' if uneven else ''})"
        )

    def peak_none(self) -> str:
        return "No tremor peak stands out."

    def rhythm(self, *, frequency: Estimate, share: Estimate, low_hz: float, high_hz: float, searched: Text) -> str:
        return (
            f"A rhythm at {self._hertz(frequency)} stands out. {self._share(share)} of the movement {self.clause(searched)} is "
            f"{self._band(low_hz, high_hz)}."
        )

    def broad(self, *, frequency: Estimate, share: Estimate, low_hz: float, high_hz: float, searched: Text) -> str:
        return (
            f"A broad rhythm {self._band(low_hz, high_hz)} stands out, with its middle at {self._hertz(frequency)}. It is "
            f"{self._share(share, start=False)} of the movement {self.clause(searched)}."
        )

    def below_rounding(self, *, peak_hz: float) -> str:
        return (
            f"What rises at {self.w.amount(peak_hz, 'hz')} is no larger than the rounding to the steps of the output."
        )

    def strongest_of(self, *, low_hz: float, high_hz: float) -> str:
        return f"It is the strongest part of a broad rhythm {self._band(low_hz, high_hz)}."

    def may_be_meant(self) -> str:
        return "A rhythm as slow as this may be voluntary. Look at the task, or record while the player keeps still."

    def multiples(self, *, times: tuple[int, ...], peaks_hz: tuple[float, ...], pace_hz: float) -> str:
        one = len(times) == 1
        at = self.w.all_of(tuple(self.w.number(each) for each in peaks_hz))
        many = self.w.all_of(tuple(self.w.whole(each) for each in times))
        return (
            f"The {'peak' if one else 'peaks'} at {at} Hz {'is' if one else 'are'} {many} times the pace of the movement "
            f"({self.w.amount(pace_hz, 'hz')}): harmonics of that movement, not a tremor."
        )

    def other(self, *, other_hz: float) -> str:
        return f"A further rhythm at {self.w.amount(other_hz, 'hz')} is not a harmonic of it."

    def faster(self, *, faster_hz: float, hand_hz: float) -> str:
        return (
            f"The rhythm at {self.w.trimmed_amount(faster_hz, 'hz', 3)} is not a tremor of the hand, which is slower than "
            f"{self.w.trimmed(hand_hz)} Hz. Look for its cause in the device, its reports, a motor close by, or the shape of "
            "quick flicks."
        )

    def set_aside(self, *, time_s: float, times_factor: float, kind: Literal["violent", "larger", "unlike"]) -> str:
        times = f"{self.w.number(times_factor)} times its usual rms"
        unlike = {
            "violent": f"violent, {times}",
            "larger": f"unlike the rest, {times}",
            "unlike": "unlike the rest, but no larger",
        }[kind]
        return (
            f"For {self.w.amount(time_s, 's')}, the movement was {unlike}. That part is not used to find the rhythm, but it "
            "counts in every size."
        )

    def meant(self) -> str:
        return (
            "The movement was voluntary. Record 20 s of keeping still for the zero-crossing frequency of the involuntary "
            "part."
        )

    def at_edge(self, *, edge_hz: float) -> str:
        return f"The peak is at the edge of the band that was searched, {self.w.amount(edge_hz, 'hz')}, and may be beyond it."

    def parts_differ(self) -> str:
        return "Parts of the recording do not agree where the peak is."

    def _hertz(self, frequency: Estimate) -> str:
        ends = frequency.interval
        between = "" if ends is None else f" ({self._figure(ends[0])} to {self._figure(ends[1])})"
        return f"{self._figure(frequency.number)}{GAP}Hz{between}"

    def _figure(self, frequency_hz: float) -> str:
        return self.w.fixed(frequency_hz, 1)

    def _band(self, low_hz: float, high_hz: float) -> str:
        return f"from {self._figure(low_hz)} to {self._figure(high_hz)}{GAP}Hz"

    def _share(self, share: Estimate, *, start: bool = True) -> str:
        if share.number >= 0.01:
            return self.w.share(share.number)
        return f"{'L' if start else 'l'}ess than {self.w.share(0.01)}"
