"""What is wrong with a player's code, a visit, a recording, a consent or an account, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name
from stickwright.codes.player_records import PlayerRecords

__all__ = ["Texts"]


class Texts(PlayerRecords):
    """Found and expected have no full stop; remedies are sentences."""

    w: English

    def a_players_code(self) -> str:
        return "the code of a player"

    def new_code(self) -> str:
        return "a code that no player has yet"

    def open_or_recode(self, *, code: Name) -> str:
        return f"Open '{self.w.name(code)}', or choose another code."

    def like_address(self) -> str:
        return "what looks like an e-mail address"

    def like_birth(self, *, code: Name) -> str:
        return f"'{self.w.name(code)}', which looks like a date of birth"

    def like_name(self, *, code: Name) -> str:
        return f"'{self.w.name(code)}', which looks like a name"

    def a_code(self, *, longest: int) -> str:
        return f"up to {self.w.whole(longest)} letters, digits, dots and hyphens"

    def use_a_code(self) -> str:
        return "Use a code such as K7, and keep the list of names elsewhere."

    def date_of_visit(self) -> str:
        return "visit date"

    def visit_to_copy(self) -> str:
        return "visit to copy from"

    def visit_of(self, *, code: Name) -> str:
        return f"a visit of {self.w.name(code)}"

    def choose_from_list(self) -> str:
        return "Choose one from the list."

    def earlier_player(self) -> str:
        return "player.toml of the earlier visit"

    def unreadable(self) -> str:
        return "text that cannot be read"

    def readable_sites(self) -> str:
        return "a file whose sites can be read"

    def correct_or_new(self) -> str:
        return "Correct that file first, or start with an empty visit."

    def a_plan(self) -> str:
        return "a plan in the records"

    def restore_or_replan(self) -> str:
        return "Restore the last backup beside these records, or plan again."

    def a_recording(self) -> str:
        return "a recording in the records"

    def new_recording(self) -> str:
        return "Start a new recording."

    def sample_number(self, *, number: int) -> str:
        return f"sample number {self.w.whole(number)}"

    def next_sample(self, *, number: int) -> str:
        return f"number {self.w.whole(number)}, the next one"

    def send_again(self) -> str:
        return "Send the samples in between again."

    def more_samples(self, *, count: int) -> str:
        return f"{self.w.whole(count)} more for a recording that has ended"

    def running_recording(self) -> str:
        return "a recording that is running"

    def a_scope(self) -> str:
        return "one of the items that can be agreed to"

    def consent(self) -> str:
        return "consent"

    def none_to_withdraw(self) -> str:
        return "none that could be withdrawn"

    def given_consent(self) -> str:
        return "one that was given"

    def who_gave(self) -> str:
        return "who gave it and in what role, in up to 80 letters"

    def not_asked(self) -> str:
        return "not asked yet"

    def withdrawn(self) -> str:
        return "withdrawn"

    def ended(self, *, date: Name) -> str:
        return f"ended on {self.w.date(date)}"

    def until(self, *, date: Name, keep: bool) -> str:
        return f"until {self.w.date(date)}{'' if keep else ', results not to be saved'}"

    def account_name(self) -> str:
        return "a name of 1 to 80 letters"

    def a_role(self, *, roles: tuple[Name, ...]) -> str:
        return self.w.any_of(tuple(self.w.name(one) for one in roles))

    def long_password(self, *, least: int) -> str:
        return f"{self.w.whole(least)} or more"

    def several_words(self) -> str:
        return "Several words make a good password."

    def open_account(self) -> str:
        return "an open account"

    def sign_in(self) -> str:
        return "sign in"

    def refusals(self, *, count: int) -> str:
        return f"{self.w.whole(count)} refused attempts in 15 minutes"

    def a_pause(self) -> str:
        return "a pause"

    def wait(self) -> str:
        return "Wait 15 minutes, then try again."

    def not_together(self) -> str:
        return "a name and password that do not match"

    def of_open_account(self) -> str:
        return "those of an open account"

    def enter_both(self) -> str:
        return "Enter both again."
