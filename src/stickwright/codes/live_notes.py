"""What is noticed between a stick and its recording: gaps, clocks that jump, samples that wait; how late a tuning is."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Text, Topic

__all__ = ["LiveNotes"]


class LiveNotes(Topic):
    """Said to the practitioner while a task runs, and kept with the recording."""

    @abstractmethod
    def messages_lost(self, *, messages: int) -> str:
        """Messages of the measuring page did not arrive and will not."""

    @abstractmethod
    def samples_lost(self, *, samples: int, device: Text) -> str:
        """Samples of a stick did not arrive."""

    @abstractmethod
    def samples_without_a_stick(self, *, samples: int) -> str:
        """Samples came from a stick that the page had not announced."""

    @abstractmethod
    def overflow(self, *, samples: int, device: Text | None) -> str:
        """Samples came faster than they were taken and found no room."""

    @abstractmethod
    def slept(self, *, time_s: float) -> str:
        """The computer slept, or its clock was put forward."""

    @abstractmethod
    def clock_back(self, *, back_s: float) -> str:
        """The clock of the day was put back; the recording's time is not touched."""

    @abstractmethod
    def page_clock_back(self, *, back_s: float) -> str:
        """The page's own clock went back; the recording's time goes on."""

    @abstractmethod
    def stamps_back(self, *, device: Text, back_s: float) -> str:
        """Time stamps of a stick went back and were held at the last one."""

    @abstractmethod
    def page_silent(self, *, time_s: float) -> str:
        """Nothing came from the page for so long."""

    @abstractmethod
    def computer_busy(self, *, time_s: float) -> str:
        """The computer did not read the stick for so long."""

    @abstractmethod
    def waiting(self, *, samples: int) -> str:
        """So many samples could not be saved yet and are tried again."""

    @abstractmethod
    def no_lag(self) -> str:
        """The tuning has no filter and makes nothing late."""

    @abstractmethod
    def lag_reason(self) -> str:
        """Why the delay of a tuning has no interval: by the filter's formula (in brackets)."""

    @abstractmethod
    def lag_assumed(self) -> str:
        """What the formula assumes of the movement (in brackets)."""

    @abstractmethod
    def lag(self, *, lag_s: float, low_s: float | None, high_s: float | None) -> str:
        """By how much the tuning makes the game late; without ends it is worked out, not measured."""
