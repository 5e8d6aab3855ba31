"""Accounts of a team, logging in, and the log of what was done; in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.message import Name
from stickwright.codes.team_page import TeamPage

__all__ = ["Texts"]


class Texts(TeamPage):
    """Accounts of a team, logging in, and the log of what was done."""

    w: English

    def accounts(self) -> str:
        return "Accounts"

    def caption(self) -> str:
        return "Who has access"

    def role(self) -> str:
        return "Role"

    def role_of(self, *, role: Literal["practitioner", "reader"]) -> str:
        return {"practitioner": "Practitioner", "reader": "Reader"}[role]

    def role_hint(self, *, role: Literal["practitioner", "reader"]) -> str:
        return {
            "practitioner": "Can enter, measure, plan and erase.",
            "reader": "Can view everything and change nothing.",
        }[role]

    def close(self) -> str:
        return "Close"

    def close_more(self, *, name: Name) -> str:
        return f"the account of {self.w.name(name)}"

    def you(self) -> str:
        return "you"

    def add_title(self) -> str:
        return "Add an account"

    def name_hint(self) -> str:
        return "If the name already has an account, it gets the new password and role."

    def password(self) -> str:
        return "Password"

    def confirm(self) -> str:
        return "Confirm password"

    def add(self) -> str:
        return "Add account"

    def first(self) -> str:
        return "First account"

    def log_in(self) -> str:
        return "Log in"

    def first_lead(self) -> str:
        return "There are no accounts yet. The first is for a practitioner, who adds the others."

    def token(self) -> str:
        return "Start code"

    def token_hint(self) -> str:
        return "It was printed where the app was started."

    def make_first(self) -> str:
        return "Create account"

    def wrong_token(self) -> str:
        return "Enter the code that was printed where the app was started."

    def choose_role(self) -> str:
        return "Choose practitioner or reader."

    def added(self, *, name: Name, role: Literal["practitioner", "reader"]) -> str:
        return f"{self.w.name(name)} now has access as a {role}."

    def own_account(self) -> str:
        return "You cannot close your own account. Ask another practitioner."

    def closed(self, *, name: Name) -> str:
        return f"The account of {self.w.name(name)} is closed. What {self.w.name(name)} did stays in the activity log."

    def trail(self) -> str:
        return "Activity log"

    def trail_caption(self) -> str:
        return "Most recent first"

    def when(self) -> str:
        return "When"

    def who(self) -> str:
        return "Who"

    def what(self) -> str:
        return "Action"

    def player(self) -> str:
        return "Player"

    def details(self) -> str:
        return "Details"

    def pages(self) -> str:
        return "Pages of the log"

    def later(self) -> str:
        return "Newer"

    def earlier(self) -> str:
        return "Older"

    def at(self, *, at: str) -> str:
        return f"{self.w.moment(at, seconds=True)} UTC"
