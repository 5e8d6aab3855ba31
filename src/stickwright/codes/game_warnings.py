"""What is doubtful of a game: names, combinations in a ring, costs without what they are the cost of, what is missing."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Message, Name, Text, Topic

__all__ = ["GameWarnings"]


class GameWarnings(Topic):
    """Questions are sentences, told behind their place in the file; found and expected have no full stop."""

    @abstractmethod
    def names_itself(self, *, action: Name, key: Literal["together", "of"]) -> str:
        """Found: an action in its own list of what is needed with it, or of what it is made of."""

    @abstractmethod
    def another_action(self) -> str:
        """Expected: another action."""

    @abstractmethod
    def short_chord(self, *, action: Name | None) -> str:
        """Found: a chord of one action, or (None) of none."""

    @abstractmethod
    def chord_of_actions(self) -> str:
        """Expected: the two or more actions of a chord."""

    @abstractmethod
    def write_of(self) -> str:
        """Remedy: an example of the key `of`."""

    @abstractmethod
    def no_chord(self, *, kind: Name) -> str:
        """A list of the actions of a chord counts only for a chord; this action is of another kind."""

    @abstractmethod
    def chords_in_a_circle(self, *, ring: tuple[Name, ...]) -> str:
        """Found: chords that contain each other; the first is the last again."""

    @abstractmethod
    def chords_of_single_actions(self) -> str:
        """Expected: chords made of single actions."""

    @abstractmethod
    def name_single_actions(self) -> str:
        """Remedy: name in each chord the actions that are pressed."""

    @abstractmethod
    def needed_in_a_circle(self, *, ring: tuple[Name, ...]) -> str:
        """Each action of a ring is needed with the next; counted as pairs; what to do if all must be possible at once."""

    @abstractmethod
    def input_again(self, *, role: Text, action: Name | None, line: int) -> str:
        """Found: an input that another action (None: without a name), at that line, has already."""

    @abstractmethod
    def input_of_its_own(self) -> str:
        """Expected: an input for each action."""

    @abstractmethod
    def look_at_controls(self) -> str:
        """Remedy: look at the game's list of controls, or leave the input out."""

    @abstractmethod
    def cost_without(self, *, key: Name, thing: Literal["option", "toggle"]) -> str:
        """A cost of something that is not described, so it is never used; what to add."""

    @abstractmethod
    def cost_without_helper(self, *, key: Name) -> str:
        """A cost of a helper beside the statement that nobody helps."""

    @abstractmethod
    def fewer_when_busy(self, *, busy: Text, usual: Text) -> str:
        """Fewer presses in the busiest minute than on average; each key with its value."""

    @abstractmethod
    def too_quick(self, *, typed: Text) -> str:
        """A reaction time faster than any person's: seconds?"""

    @abstractmethod
    def stick_action_on_button(self, *, kind: Name, role: Text) -> str:
        """An action of a stick on a button."""

    @abstractmethod
    def press_on_stick(self, *, kind: Name, role: Text) -> str:
        """An action of a button on a stick."""

    @abstractmethod
    def no_importance(self, *, actions: tuple[Message, ...]) -> str:
        """How important these actions are was not recorded: counted as 5 of 10."""

    @abstractmethod
    def no_presses(self, *, actions: tuple[Message, ...]) -> str:
        """How often these actions are pressed was not recorded."""

    @abstractmethod
    def no_hold(self, *, actions: tuple[Message, ...]) -> str:
        """How long these actions are held was not recorded."""

    @abstractmethod
    def game_type(self) -> str:
        """Where: the type of a game to start from."""

    @abstractmethod
    def a_known_type(self) -> str:
        """Expected: one of the types of game that the command 'stickwright games' lists."""
