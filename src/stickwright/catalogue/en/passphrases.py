"""How good a passphrase is, and why one is refused; in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.passphrases import Passphrases

__all__ = ["Texts"]

_LEVELS = {
    "seconds": "Too easy: anyone who has the file could open it within seconds.",
    "months": "Too easy: anyone who has the file could open it within months. Add one or two words.",
    "enough": "Good enough if the computer is looked after. One more word makes it strong.",
    "strong": "Strong. Write it down all the same, and keep the paper away from the computer.",
}


class Texts(Passphrases):
    """How good a passphrase is, and why one is refused."""

    w: English

    def strength(self, *, level: Literal["seconds", "months", "enough", "strong"]) -> str:
        return _LEVELS[level]

    def too_long(self, *, most: int) -> str:
        return f"Use at most {self.w.whole(most)} characters."

    def too_easy(self) -> str:
        return "This is too easy to guess. Use four or more unrelated words: they are easy to type and hard to guess."

    def differ(self) -> str:
        return "The two do not match. Type both again."

    def too_soon(self, *, seconds: int) -> str:
        counted = f"{self.w.whole(seconds)} {self.w.plural(seconds, one='second', other='seconds')}"
        return f"Wait {counted}, then try again. Check whether Caps Lock is on."

    def current_wrong(self) -> str:
        return "This is not the current passphrase."

    def none_needed(self) -> str:
        return "These records have no passphrase."
