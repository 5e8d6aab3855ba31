"""What a person can put right, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.problems import Problems

__all__ = ["Texts"]


class Texts(Problems):
    """One frame for all problems; remedies are sentences of their own."""

    w: English

    def sentence(self, *, where: tuple[Text, ...], found: Text, expected: Text, remedy: Text) -> str:
        place = ", ".join(said for one in where if (said := self._part(one)))
        if not (found or expected):
            return f"{place}: {self.say(remedy)}" if place else self.say(remedy)
        told = f"{place}: found" if place else "found"
        return f"{told} {self._part(found)}, expected {self._part(expected)}. {self.say(remedy)}".rstrip()

    def _part(self, text: Text) -> str:
        """Within the sentence; what was typed keeps its full stop."""
        return text if isinstance(text, str) else self.clause(text)

    def sentences(self, *, parts: tuple[Text, ...]) -> str:
        return " ".join(said for one in parts if (said := self.say(one)))

    def about(self, *, name: Name, found: Text) -> str:
        return f'"{self.w.name(name)}": {self.say(found)}'

    def did_you_mean(self, *, name: Name) -> str:
        return f"Did you mean '{self.w.name(name)}'?"

    def none_to_choose(self) -> str:
        return "There is none to choose from yet."

    def known(self, *, names: tuple[Name, ...]) -> str:
        return f"Known: {', '.join(self.w.name(one) for one in names)}."
