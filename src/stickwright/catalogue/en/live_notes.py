"""What is noticed between a stick and its recording, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.live_notes import LiveNotes
from stickwright.codes.message import Text

__all__ = ["Texts"]

_GAP = "The recording has a gap there."


class Texts(LiveNotes):
    """While a task runs, and kept with the recording."""

    w: English

    def messages_lost(self, *, messages: int) -> str:
        lost = self.w.plural(messages, one="message from the page was", other="messages from the page were")
        return f"{self.w.whole(messages)} {lost} lost. The recording may have a gap there."

    def samples_lost(self, *, samples: int, device: Text) -> str:
        lost = self.w.plural(samples, one="was", other="were")
        return f"{self._samples(samples)} from '{self.say(device)}' {lost} lost on the way. {_GAP}"

    def samples_without_a_stick(self, *, samples: int) -> str:
        return f"{self._samples(samples)} left out: the stick that sent them had not given its name."

    def overflow(self, *, samples: int, device: Text | None) -> str:
        of = "" if device is None else f" from '{self.say(device)}'"
        lost = self.w.plural(samples, one="was", other="were")
        return f"{self._samples(samples)}{of} {lost} lost: samples came faster than they could be taken. {_GAP}"

    def slept(self, *, time_s: float) -> str:
        return f"The computer was asleep, or its clock was put forward, for about {self.w.amount(time_s, 's')}. {_GAP}"

    def clock_back(self, *, back_s: float) -> str:
        return (
            f"The computer's clock was put back by about {self.w.amount(back_s, 's')}. The times in the recording are not "
            "affected."
        )

    def page_clock_back(self, *, back_s: float) -> str:
        return (
            f"The page's clock went back by {self.w.amount(back_s, 's')}. The recording carries on from where it was."
        )

    def stamps_back(self, *, device: Text, back_s: float) -> str:
        return f"The times of '{self.say(device)}' went back by {self.w.amount(back_s, 'ms')}. The last time was used instead."

    def page_silent(self, *, time_s: float) -> str:
        return (
            f"Nothing came from the page for {self.w.amount(time_s, 's')}. It may have been asleep, hidden behind another "
            "page, or busy."
        )

    def computer_busy(self, *, time_s: float) -> str:
        return f"The computer was too busy to read the stick for {self.w.amount(time_s, 's')}. {_GAP}"

    def waiting(self, *, samples: int) -> str:
        waits = self.w.plural(samples, one="is not saved yet. It is", other="are not saved yet. They are")
        return f"{self._samples(samples)} {waits} held here, and saving will be tried again."

    def no_lag(self) -> str:
        return "The tuning adds no delay: it has no filter."

    def lag_reason(self) -> str:
        return "worked out from the filter, not measured"

    def lag_assumed(self) -> str:
        return "slow movement"

    def lag(self, *, lag_s: float, low_s: float | None, high_s: float | None) -> str:
        span = self.lag_reason()
        if low_s is not None and high_s is not None:
            span = f"{self.w.number(1000 * low_s)} to {self.w.amount(high_s, 'ms')}"
        return f"The tuning delays the game by about {self.w.amount(lag_s, 'ms')} ({span})."

    def _samples(self, count: int) -> str:
        return f"{self.w.whole(count)} {self.w.plural(count, one='sample', other='samples')}"
