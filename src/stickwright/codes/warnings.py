"""What is doubtful in any file that a person typed: names that are there twice or point nowhere, repeats that are odd."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.kinds import Kind
from stickwright.codes.message import Message, Name, Text, Topic

__all__ = ["Named", "Warnings"]

Named = Literal["action", "extension", "landmark", "site", "stick", "topper", "topper_or_form"]
"""What a name may refer to."""


class Warnings(Topic):
    """`found`, `expected` and `remedy` of a problem, and questions about a file. Found and expected have no full stop."""

    @abstractmethod
    def place(self, *, where: tuple[Text, ...]) -> str:
        """One of several places of a file, from the outside inwards."""

    @abstractmethod
    def second_called(self, *, kind: Kind, name: Name, line: int) -> str:
        """Found: a thing with the name of another of its kind, which stands at that line."""

    @abstractmethod
    def another_name(self, *, kind: Kind) -> str:
        """Expected: each thing of a kind by its own name."""

    @abstractmethod
    def rename_or_delete(self) -> str:
        """Remedy: choose another name, or delete one of the two."""

    @abstractmethod
    def reserved(self, *, kind: Kind, name: Name) -> str:
        """Found: a thing is called by a word that means something else in a request for a plan."""

    @abstractmethod
    def not_reserved(self, *, words: tuple[Name, ...]) -> str:
        """Expected: a name other than these words, which stand for what becomes of an action."""

    @abstractmethod
    def name_of(self, *, what: Named, file: Name) -> str:
        """Expected: the name of one of the things that a file describes."""

    @abstractmethod
    def condition_of_state(self) -> str:
        """Expected: the condition of one of the states of this site."""

    @abstractmethod
    def delete_one(self) -> str:
        """Remedy: delete one of the two."""

    @abstractmethod
    def swap(self) -> str:
        """Remedy: swap the two."""

    @abstractmethod
    def take_out(self) -> str:
        """Remedy: take a name out of a list."""

    @abstractmethod
    def assigned(self, *, key: Name, value: Text) -> str:
        """A key and its value, as they stand in the file."""

    @abstractmethod
    def beside(self, *, one: Text, other: Text) -> str:
        """Found: one entry together with another that contradicts it."""

    @abstractmethod
    def at_line(self, *, name: Name | None, line: int) -> str:
        """One of several things: its name (None: it has none) and its line."""

    @abstractmethod
    def retired_key(self, *, more: int) -> str:
        """A key that the program no longer uses, here and at so many more places."""

    @abstractmethod
    def repeats_apart(self, *, at: Text, lowest: Name, highest: Name) -> str:
        """Repeats of one direction, or of the press, differ by more than scatter."""

    @abstractmethod
    def identical_repeats(self, *, at: tuple[Message, ...], first_at: tuple[Text, ...], press: bool) -> str:
        """All repeats at these directions are alike; what is done instead: scatter from other directions, or (press) nothing."""

    @abstractmethod
    def at_degrees(self, *, typed: Name) -> str:
        """A direction as typed, in degrees."""

    @abstractmethod
    def at_radians(self, *, typed: Name) -> str:
        """A direction as typed, in radians."""

    @abstractmethod
    def at_first(self) -> str:
        """The first direction, repeated at the end."""

    @abstractmethod
    def at_press(self) -> str:
        """The press of a switch or button."""
