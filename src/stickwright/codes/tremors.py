"""Whether a rhythm stands out in a movement, in whole sentences; a frequency, never the name of a disease."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Text, Topic

__all__ = ["Tremors"]


class Tremors(Topic):
    """One sentence first, others behind it."""

    @abstractmethod
    def whole(self, *, told: Text, further: tuple[Text, ...]) -> str:
        """The first sentence, and what a reader must know beside it."""

    @abstractmethod
    def too_few(self) -> str:
        """No answer."""

    @abstractmethod
    def too_slow(self, *, rate_hz: float, top_hz: float) -> str:
        """No answer: sampled too slowly; up to where movement can be seen."""

    @abstractmethod
    def too_short(self, *, longest_s: float) -> str:
        """No answer: the longest stretch without a gap is too short."""

    @abstractmethod
    def nothing_fast(self, *, low_hz: float) -> str:
        """No answer: nothing moved faster."""

    @abstractmethod
    def none(self, *, searched: Text) -> str:
        """No peak stands out in the band that was searched."""

    @abstractmethod
    def searched(self, *, low_hz: float, top_hz: float, rate_hz: float, uneven: bool) -> str:
        """Clause behind a sentence: the band that was searched, and how it was sampled."""

    @abstractmethod
    def peak_none(self) -> str:
        """Why a figure of the peak is not known."""

    @abstractmethod
    def rhythm(self, *, frequency: Estimate, share: Estimate, low_hz: float, high_hz: float, searched: Text) -> str:
        """A narrow peak stands out: its frequency, its share of the power, its band."""

    @abstractmethod
    def broad(self, *, frequency: Estimate, share: Estimate, low_hz: float, high_hz: float, searched: Text) -> str:
        """A broad peak stands out: its band, its middle, its share of the power."""

    @abstractmethod
    def below_rounding(self, *, peak_hz: float) -> str:
        """What rises there is no larger than the rounding to steps."""

    @abstractmethod
    def strongest_of(self, *, low_hz: float, high_hz: float) -> str:
        """The peak is the strongest part of a broad rhythm."""

    @abstractmethod
    def may_be_meant(self) -> str:
        """A rhythm as slow as this may be voluntary."""

    @abstractmethod
    def multiples(self, *, times: tuple[int, ...], peaks_hz: tuple[float, ...], pace_hz: float) -> str:
        """Peaks that are harmonics of the movement's own pace."""

    @abstractmethod
    def other(self, *, other_hz: float) -> str:
        """A further rhythm is no harmonic of the pace."""

    @abstractmethod
    def faster(self, *, faster_hz: float, hand_hz: float) -> str:
        """A rhythm faster than any tremor of a hand."""

    @abstractmethod
    def set_aside(self, *, time_s: float, times_factor: float, kind: Literal["violent", "larger", "unlike"]) -> str:
        """Part of the recording was unlike the rest (by how many times its usual rms): not used for the frequency, but counted
        in sizes."""

    @abstractmethod
    def meant(self) -> str:
        """Why the zero-crossing frequency is not known: the movement was voluntary."""

    @abstractmethod
    def at_edge(self, *, edge_hz: float) -> str:
        """Why the frequency has no interval: at the edge of the band."""

    @abstractmethod
    def parts_differ(self) -> str:
        """Why the frequency has no interval."""
