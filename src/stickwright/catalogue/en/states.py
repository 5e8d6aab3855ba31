"""States of a player, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.states import States

__all__ = ["Texts"]


class Texts(States):
    """One site, read in several states."""

    w: English

    def _state(self, state: Name | None) -> str:
        return self.w.name(state) if state else "as first read"

    def _headed(self, state: Name | None) -> str:
        words = self._state(state)
        return f"{words[:1].upper()}{words[1:]}"

    def site_note(self, *, site: Name, note: Name) -> str:
        return f"{self.w.name(site)}: {self.w.typed(note)}."

    def state_note(self, *, site: Name, state: Name, note: Name) -> str:
        return f"{self.w.name(site)}, {self.w.name(state)}: {self.w.typed(note)}."

    def judged_in_worst(self, *, site: Name, setup: Text, state: Name | None) -> str:
        return (
            f"{self.w.name(site)}: each set-up is judged in the state in which it does worst, among those the player will play "
            f"in. For {self.say(setup)} that is: {self._state(state)}."
        )

    def compared(
        self, *, state: Name | None, own_state: Name | None, force_change_share: float, setup: Text, weakest_share: float,
        own_weakest_share: float, precision_bits: float, own_precision_bits: float, decides: bool,
    ) -> str:  # fmt: skip
        more = "more" if force_change_share >= 0 else "less"
        bits = (own_precision_bits, precision_bits)
        steps = [f"{max(1, round(2**one))}" for one in bits]
        out = (
            f"{self._headed(state)}: {self.w.share(abs(force_change_share))} {more} force than {self._state(own_state)}. "
            f"{self.say(setup)} then reaches {self.w.share(weakest_share)} of its travel in the weakest direction (instead of "
            f"{self.w.share(own_weakest_share)}), and its precision changes from {self.w.number(bits[0])} to "
            f"{self.w.number(bits[1])} bits (from about {steps[0]} to {steps[1]} steps that can be told apart)."
        )
        return out if decides else f"{out} The player will not play in this state, so it does not decide."

    def does_not_fit(self, *, state: Name | None, setup: Text, site: Name) -> str:
        return (
            f"{self._headed(state)}, {self.say(setup)} does not fit at the {self.w.name(site)}: play only in the state it was "
            "chosen for."
        )

    def when_unrecorded(self, *, site: Name, state: Name) -> str:
        return (
            f"{self.w.name(site)}, {self.w.name(state)}: it is not recorded after how much play this was read, so no length of "
            "play can be derived. Add the minutes of play."
        )

    def nothing_lost(self, *, site: Name, after_s: float) -> str:
        return f"{self.w.name(site)}: no force was lost after {self.w.minutes(after_s)} of play, so the usual breaks are enough."

    def play_block(self, *, site: Name, block_s: float, lost_share: float, after_s: float) -> str:
        return (
            f"{self.w.name(site)}: play for about {self.w.minutes(60 * round(block_s / 60))} at a time, then rest. "
            f"{self.w.share(lost_share)} of the force was lost in {self.w.minutes(after_s)} of play. If that loss grows, bring "
            "the review forward."
        )
