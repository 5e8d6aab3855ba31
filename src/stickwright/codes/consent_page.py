"""The page 'Consent': who agreed to what, and until when."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["ConsentPage", "Giver", "Thing"]

Thing = Literal["measure", "keep", "photos", "share", "teach", "follow up"]
Giver = Literal["player", "parent", "guardian", "best_interest"]


class ConsentPage(Topic):
    """The page 'Consent': who agreed to what, and until when."""

    @abstractmethod
    def title_of(self, *, code: Name) -> str:
        """Title of the window."""

    @abstractmethod
    def title(self) -> str:
        """Heading."""

    @abstractmethod
    def current(self) -> str:
        """Heading: the consent as it is recorded."""

    @abstractmethod
    def not_agreed(self, *, things: tuple[Text, ...]) -> str:
        """What the player has not agreed to."""

    @abstractmethod
    def ask_first(self) -> str:
        """The player has no consent on record; first paragraph."""

    @abstractmethod
    def without(self) -> str:
        """The player has no consent on record; second paragraph."""

    @abstractmethod
    def carry_on(self) -> str:
        """Button: go to the visit without a consent."""

    @abstractmethod
    def give(self, *, renew: bool) -> str:
        """Heading of the form; `renew`: there is a consent on record already."""

    @abstractmethod
    def each(self) -> str:
        """Heading of the ticks."""

    @abstractmethod
    def scope(self, *, thing: Thing) -> str:
        """One thing to agree to; also in a sentence."""

    @abstractmethod
    def scope_hint(self, *, thing: Literal["measure", "keep", "photos", "share", "follow up"]) -> str:
        """What it means, under the tick."""

    @abstractmethod
    def given_on(self) -> str:
        """Label: the day on which consent was given."""

    @abstractmethod
    def given_by(self) -> str:
        """Label: in which role somebody gave consent."""

    @abstractmethod
    def given_by_hint(self) -> str:
        """Under the label."""

    @abstractmethod
    def review_on(self) -> str:
        """Label: the day on which consent is to be asked for again."""

    @abstractmethod
    def review_hint(self) -> str:
        """Under the label."""

    @abstractmethod
    def explained(self) -> str:
        """Label: how consent was explained to the player."""

    @abstractmethod
    def explained_hint(self) -> str:
        """Under the label."""

    @abstractmethod
    def record(self) -> str:
        """Button: save the consent."""

    @abstractmethod
    def role(self, *, role: Giver) -> str:
        """Choice: who gave consent."""

    @abstractmethod
    def giver(self, *, role: Giver) -> str:
        """Who gave consent, within a sentence: "by the player"."""

    @abstractmethod
    def withdraw_title(self) -> str:
        """Heading above the button to withdraw consent."""

    @abstractmethod
    def withdraw_more(self) -> str:
        """What withdrawal means."""

    @abstractmethod
    def withdraw(self) -> str:
        """Button."""

    @abstractmethod
    def now(self) -> str:
        """Heading: what to do after consent was withdrawn."""

    @abstractmethod
    def download(self, *, code: Name) -> str:
        """Link: one file with everything that is held, to hand over."""

    @abstractmethod
    def download_more(self) -> str:
        """After the link."""

    @abstractmethod
    def erase(self) -> str:
        """Link to the page that erases."""

    @abstractmethod
    def erase_more(self) -> str:
        """After the link."""

    @abstractmethod
    def demo(self) -> str:
        """The demo player is invented."""

    @abstractmethod
    def none_recorded(self) -> str:
        """There is no consent on record."""

    @abstractmethod
    def withdrawn(self) -> str:
        """Consent was withdrawn."""

    @abstractmethod
    def given(self, *, given_on: str, giver: Text, until: str, things: tuple[Text, ...]) -> str:
        """The consent in one sentence."""

    @abstractmethod
    def ended(self, *, until: str) -> str:
        """The review date has passed."""

    @abstractmethod
    def recorded(self) -> str:
        """Message after saving."""

    @abstractmethod
    def recorded_and_kept(self, *, code: Name, left: tuple[Text, ...]) -> str:
        """Message after saving: what was done before is kept now; `left`: what could not be kept."""

    @abstractmethod
    def withdrawal_recorded(self) -> str:
        """Message after consent was withdrawn."""

    @abstractmethod
    def nothing_ticked(self) -> str:
        """Problem: no tick is set."""

    @abstractmethod
    def review_too_early(self, *, given_on: str) -> str:
        """Problem: the review date is not after the consent date."""

    @abstractmethod
    def choose_role(self) -> str:
        """Problem: nobody is chosen."""
