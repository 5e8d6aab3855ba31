"""What is wrong with a player's code, a visit, a recording, a consent or an account."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Topic

__all__ = ["PlayerRecords"]


class PlayerRecords(Topic):
    """Found and expected have no full stop; remedies are sentences."""

    @abstractmethod
    def a_players_code(self) -> str:
        """Expected: the code of a player."""

    @abstractmethod
    def new_code(self) -> str:
        """Expected: a code that no player has yet."""

    @abstractmethod
    def open_or_recode(self, *, code: Name) -> str:
        """Remedy: open the player who has this code, or choose another."""

    @abstractmethod
    def like_address(self) -> str:
        """Found: what looks like an e-mail address."""

    @abstractmethod
    def like_birth(self, *, code: Name) -> str:
        """Found: a code that looks like a date of birth."""

    @abstractmethod
    def like_name(self, *, code: Name) -> str:
        """Found: a code that looks like a name."""

    @abstractmethod
    def a_code(self, *, longest: int) -> str:
        """Expected: of what a code may consist, and its greatest length."""

    @abstractmethod
    def use_a_code(self) -> str:
        """Remedy: use a code, keep the list of names elsewhere."""

    @abstractmethod
    def date_of_visit(self) -> str:
        """Where: the date of a visit."""

    @abstractmethod
    def visit_to_copy(self) -> str:
        """Where: the earlier visit from which a new one begins."""

    @abstractmethod
    def visit_of(self, *, code: Name) -> str:
        """Expected: a visit of that player."""

    @abstractmethod
    def choose_from_list(self) -> str:
        """Remedy: choose one of the list."""

    @abstractmethod
    def earlier_player(self) -> str:
        """Where: the player file of the earlier visit."""

    @abstractmethod
    def unreadable(self) -> str:
        """Found: text that cannot be read."""

    @abstractmethod
    def readable_sites(self) -> str:
        """Expected: a file whose sites can be read."""

    @abstractmethod
    def correct_or_new(self) -> str:
        """Remedy: correct that file first, or begin a visit without it."""

    @abstractmethod
    def a_plan(self) -> str:
        """Expected: a plan that is in the records."""

    @abstractmethod
    def restore_or_replan(self) -> str:
        """Remedy: restore the last backup beside these records, or plan again."""

    @abstractmethod
    def a_recording(self) -> str:
        """Expected: a recording that is in the records."""

    @abstractmethod
    def new_recording(self) -> str:
        """Remedy: start a new recording."""

    @abstractmethod
    def sample_number(self, *, number: int) -> str:
        """Found: samples from that number on."""

    @abstractmethod
    def next_sample(self, *, number: int) -> str:
        """Expected: that number, the next one."""

    @abstractmethod
    def send_again(self) -> str:
        """Remedy: send the samples in between again."""

    @abstractmethod
    def more_samples(self, *, count: int) -> str:
        """Found: so many more samples for a recording that has ended."""

    @abstractmethod
    def running_recording(self) -> str:
        """Expected: a recording that is running."""

    @abstractmethod
    def a_scope(self) -> str:
        """Expected: one of the things that a player may agree to."""

    @abstractmethod
    def consent(self) -> str:
        """Where: a consent."""

    @abstractmethod
    def none_to_withdraw(self) -> str:
        """Found: no consent that could be withdrawn."""

    @abstractmethod
    def given_consent(self) -> str:
        """Expected: a consent that was given."""

    @abstractmethod
    def who_gave(self) -> str:
        """Expected: who gave the consent, in what role, in at most 80 letters."""

    @abstractmethod
    def not_asked(self) -> str:
        """State of consent: not asked yet."""

    @abstractmethod
    def withdrawn(self) -> str:
        """State of consent: withdrawn."""

    @abstractmethod
    def ended(self, *, date: Name) -> str:
        """State of consent: it ended on that day, YYYY-MM-DD."""

    @abstractmethod
    def until(self, *, date: Name, keep: bool) -> str:
        """State of consent: valid until that day; `keep`: results may be kept."""

    @abstractmethod
    def account_name(self) -> str:
        """Expected: the name of an account."""

    @abstractmethod
    def a_role(self, *, roles: tuple[Name, ...]) -> str:
        """Expected: one of these roles."""

    @abstractmethod
    def long_password(self, *, least: int) -> str:
        """Expected: a password of at least so many letters."""

    @abstractmethod
    def several_words(self) -> str:
        """Remedy: several words make a good password."""

    @abstractmethod
    def open_account(self) -> str:
        """Expected: an open account."""

    @abstractmethod
    def sign_in(self) -> str:
        """Where: signing in."""

    @abstractmethod
    def refusals(self, *, count: int) -> str:
        """Found: so many refused sign-ins in a quarter of an hour."""

    @abstractmethod
    def a_pause(self) -> str:
        """Expected: a pause."""

    @abstractmethod
    def wait(self) -> str:
        """Remedy: wait a quarter of an hour."""

    @abstractmethod
    def not_together(self) -> str:
        """Found: name and password do not belong together."""

    @abstractmethod
    def of_open_account(self) -> str:
        """Expected: name and password of an open account."""

    @abstractmethod
    def enter_both(self) -> str:
        """Remedy: enter both again."""
