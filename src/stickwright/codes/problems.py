"""What a person can put right: how its parts stand in a sentence, and what is said where a name is not known."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Problems"]


class Problems(Topic):
    """A problem tells where, what was found, what was expected and what to do."""

    @abstractmethod
    def sentence(self, *, where: tuple[Text, ...], found: Text, expected: Text, remedy: Text) -> str:
        """The whole problem. `where` goes from the outside inwards and may be empty; `remedy` may be empty. On a page `found` and
        `expected` are both empty: `remedy` then says what to do, after the label of its field."""

    @abstractmethod
    def sentences(self, *, parts: tuple[Text, ...]) -> str:
        """Whole sentences, one after the other; empty ones are left out."""

    @abstractmethod
    def about(self, *, name: Name, found: Text) -> str:
        """What was found of something that was named: a file that is not there."""

    @abstractmethod
    def did_you_mean(self, *, name: Name) -> str:
        """Of the known names this is nearest to what was typed."""

    @abstractmethod
    def none_to_choose(self) -> str:
        """There is no known name at all."""

    @abstractmethod
    def known(self, *, names: tuple[Name, ...]) -> str:
        """None of the known names is near: these are all."""
