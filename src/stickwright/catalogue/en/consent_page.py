"""The page 'Consent': who agreed to what, and until when; in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.consent_page import ConsentPage, Giver, Thing
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_SCOPES = {
    "measure": (
        "Being measured today",
        "Movement and force, with a gauge or a stick. Testing stops at once if it hurts or tires.",
    ),
    "keep": ("Keeping the results", "On this computer, under the code, for the next visit."),
    "photos": (
        "Photographs of the set-up",
        "Of the hand, the stick and the mount. Never of the face unless agreed separately.",
    ),
    "share": ("Sharing with named people", "Therapist, school, funder: agree who they are and write it on paper."),
    "teach": ("Anonymous use for teaching or research", ""),
    "follow up": ("Being contacted afterwards", "To ask whether the set-up still works."),
}
_ROLES = {
    "player": "The player",
    "parent": "A parent, with the player's own agreement",
    "guardian": "A guardian or attorney",
    "best_interest": "A best-interest decision, made by those entitled to make it",
}
_GIVERS = {
    "player": "the player",
    "parent": "a parent, with the player's own agreement",
    "guardian": "a guardian or attorney",
    "best_interest": "a best-interest decision",
}


class Texts(ConsentPage):
    """The page 'Consent': who agreed to what, and until when."""

    w: English

    def title_of(self, *, code: Name) -> str:
        return f"Consent of {self.w.name(code)}"

    def title(self) -> str:
        return "Consent"

    def current(self) -> str:
        return "Current consent"

    def not_agreed(self, *, things: tuple[Text, ...]) -> str:
        return f"Not agreed: {self.w.all_of(tuple(self.clause(one) for one in things))}."

    def ask_first(self) -> str:
        return (
            "You need only the player's agreement to help today. To have the results at the next visit, ask "
            "whether they may be kept and record the answer here."
        )

    def without(self) -> str:
        return "Without consent everything works, but nothing is kept after you close the app."

    def carry_on(self) -> str:
        return "Continue without saving"

    def give(self, *, renew: bool) -> str:
        return "Record a new consent" if renew else "What the player agrees to"

    def each(self) -> str:
        return "Tick only what was agreed"

    def scope(self, *, thing: Thing) -> str:
        return _SCOPES[thing][0]

    def scope_hint(self, *, thing: Literal["measure", "keep", "photos", "share", "follow up"]) -> str:
        return _SCOPES[thing][1]

    def given_on(self) -> str:
        return "Consent date"

    def given_by(self) -> str:
        return "Given by"

    def given_by_hint(self) -> str:
        return "Enter the role, never a name."

    def review_on(self) -> str:
        return "Review date"

    def review_hint(self) -> str:
        return "12 months is usual."

    def explained(self) -> str:
        return "How it was explained"

    def explained_hint(self) -> str:
        return "For example in words, with pictures, by signing, twice."

    def record(self) -> str:
        return "Record consent"

    def role(self, *, role: Giver) -> str:
        return _ROLES[role]

    def giver(self, *, role: Giver) -> str:
        return _GIVERS[role]

    def withdraw_title(self) -> str:
        return "Withdraw consent"

    def withdraw_more(self) -> str:
        return (
            "Whoever gave consent can withdraw it at any time, without a reason. Nothing is added from then on. "
            "Give them a copy of what is held, then erase it."
        )

    def withdraw(self) -> str:
        return "Withdraw consent"

    def now(self) -> str:
        return "What to do now"

    def download(self, *, code: Name) -> str:
        return f"Download everything about {self.w.name(code)}"

    def download_more(self) -> str:
        return "to hand over."

    def erase(self) -> str:
        return "Erase it from this computer"

    def erase_more(self) -> str:
        return "You will see first what will be erased."

    def demo(self) -> str:
        return "An invented player does not need to consent."

    def none_recorded(self) -> str:
        return "No consent is recorded yet."

    def withdrawn(self) -> str:
        return "Consent has been withdrawn. Hand over what is held, then erase it."

    def given(self, *, given_on: str, giver: Text, until: str, things: tuple[Text, ...]) -> str:
        agreed = self.w.all_of(tuple(said[:1].lower() + said[1:] for one in things if (said := self.clause(one))))
        return f"Given on {self.w.date(given_on)} by {self.say(giver)} for {agreed}. Review date: {self.w.date(until)}."

    def ended(self, *, until: str) -> str:
        return (
            f"Consent expired on {self.w.date(until)}. What is held can be viewed; nothing can be added until "
            "consent is recorded again."
        )

    def recorded(self) -> str:
        return "Consent recorded."

    def recorded_and_kept(self, *, code: Name, left: tuple[Text, ...]) -> str:
        return " ".join(
            (f"Consent recorded. The data of {self.w.name(code)} are now kept.", *(self.say(one) for one in left))
        )

    def withdrawal_recorded(self) -> str:
        return "Consent withdrawn. Hand over what is held, then erase it."

    def nothing_ticked(self) -> str:
        return "Tick at least one. If nothing was agreed, leave this page: nothing is kept then."

    def review_too_early(self, *, given_on: str) -> str:
        return f"Enter a date after {self.w.date(given_on)}."

    def choose_role(self) -> str:
        return "Choose who gave consent."
