"""The first page: create records, unlock them, or look round without; in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.start_page import StartPage

__all__ = ["Texts"]


class Texts(StartPage):
    """The first page: create records, unlock them, or look round without."""

    w: English

    def title(self, *, kind: Literal["none", "encrypted", "other"]) -> str:
        return {"none": "Create records", "encrypted": "Unlock", "other": "Start"}[kind]

    def locked_itself(self) -> str:
        return "The app locked itself because it was not in use. Nothing is lost."

    def unlock_title(self) -> str:
        return "Unlock your records"

    def passphrase(self) -> str:
        return "Passphrase"

    def wait(self, *, seconds: int) -> str:
        return f"You can try again in {self.w.whole(seconds)} {self.w.plural(seconds, one='second', other='seconds')}."

    def unlock(self) -> str:
        return "Unlock"

    def unlock_more(self, *, place: Name) -> str:
        return (
            f"Stored in {self.w.name(place)}. Without the passphrase nobody can read the records, and it cannot "
            "be recovered."
        )

    def create_title(self) -> str:
        return "Create records for your players"

    def create_lead(self) -> str:
        return "They stay on this computer in one encrypted file. Only your passphrase opens it."

    def new_passphrase(self) -> str:
        return "New passphrase"

    def passphrase_hint(self) -> str:
        return "Use four or five unrelated words. Spaces are allowed."

    def confirm(self) -> str:
        return "Confirm passphrase"

    def no_recovery(self) -> str:
        return "It cannot be recovered."

    def no_recovery_more(self) -> str:
        return (
            "Write it down now. Keep the paper away from this computer, for example in a sealed envelope at the office."
        )

    def create(self) -> str:
        return "Create records"

    def stored_in(self, *, place: Name) -> str:
        return f"Stored in {self.w.name(place)}."

    def other_title(self) -> str:
        return "This file cannot be opened"

    def other_lead(self, *, place: Name) -> str:
        return f"{self.w.name(place)} is not a records file of this app. It has not been changed."

    def other_before(self) -> str:
        return "To use another file, start the app with"

    def other_after(self) -> str:
        return "."

    def without_title(self) -> str:
        return "Try it without records"

    def demo_title(self) -> str:
        return "Look round with an invented player"

    def demo_more(self) -> str:
        return (
            "Everything is filled in, and recordings play back as if a stick were plugged in. Nothing is saved. "
            "No hardware needed."
        )

    def demo(self) -> str:
        return "Look round"

    def practice_title(self) -> str:
        return "Practise"

    def practice_more(self) -> str:
        return "Separate records without a passphrase, not encrypted: for invented players only."

    def practice(self) -> str:
        return "Practise without encryption"

    def created(self, *, strength: Text) -> str:
        return f"Records created. {self.say(strength)}"

    def other_kind(self, *, place: Name) -> str:
        return f"{self.w.name(place)} does not hold practice records. Move it to another folder."

    def cut_short(self, *, recording: Name) -> str:
        return f"Recording {self.w.name(recording)} was interrupted earlier. What it held up to then is kept."

    def unlocked(self) -> str:
        return "Unlocked"

    def unlocked_more(self) -> str:
        return "The app locked itself before your last entry arrived. It has not been lost."

    def send_now(self) -> str:
        return "Save it now"

    def leave(self) -> str:
        return "Discard it and go to the players"
