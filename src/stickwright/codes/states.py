"""What the states of a player (fresh or tired, supported or not, before or after medication) mean for the choice."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Text, Topic

__all__ = ["States"]


class States(Topic):
    """One site, read in several states; `state` is the practitioner's own words, None for readings without a named state."""

    @abstractmethod
    def site_note(self, *, site: Name, note: Name) -> str:
        """A note of the practitioner about a site."""

    @abstractmethod
    def state_note(self, *, site: Name, state: Name, note: Name) -> str:
        """A note of the practitioner about a site in a state."""

    @abstractmethod
    def judged_in_worst(self, *, site: Name, setup: Text, state: Name | None) -> str:
        """Each set-up is judged in the state it does worst in; which that is for the first one."""

    @abstractmethod
    def compared(
        self, *, state: Name | None, own_state: Name | None, force_change_share: float, setup: Text, weakest_share: float,
        own_weakest_share: float, precision_bits: float, own_precision_bits: float, decides: bool,
    ) -> str:  # fmt: skip
        """A state against the site's own: force (plus is more), travel reached in the weakest direction, precision; whether
        the player will play in it."""

    @abstractmethod
    def does_not_fit(self, *, state: Name | None, setup: Text, site: Name) -> str:
        """The chosen set-up does not fit in a state that the player will not play in."""

    @abstractmethod
    def when_unrecorded(self, *, site: Name, state: Name) -> str:
        """After how much play a tired state was read is not recorded, so no length of play can be derived."""

    @abstractmethod
    def nothing_lost(self, *, site: Name, after_s: float) -> str:
        """No force was lost by then: the usual breaks do."""

    @abstractmethod
    def play_block(self, *, site: Name, block_s: float, lost_share: float, after_s: float) -> str:
        """How long to play at a time, and the loss of force that it is derived from."""
