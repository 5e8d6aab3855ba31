"""What is doubtful of a game, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.game_warnings import GameWarnings
from stickwright.codes.message import Message, Name, Text

__all__ = ["Texts"]

_DESCRIBE = {
    "option": 'what the game itself can do, for example option = "the camera follows"',
    "toggle": 'how the game does it, for example toggle = "press on, press off"',
}


class Texts(GameWarnings):
    """Questions behind their place in the file."""

    w: English

    def names_itself(self, *, action: Name, key: Literal["together", "of"]) -> str:
        named = f'"{self.w.name(action)}"'
        return f"{named}, needed together with itself" if key == "together" else f"{named}, part of itself"

    def another_action(self) -> str:
        return "another action"

    def short_chord(self, *, action: Name | None) -> str:
        return f'a chord of "{self.w.name(action)}" alone' if action is not None else "a chord without its actions"

    def chord_of_actions(self) -> str:
        return "the two or more actions of which it is made"

    def write_of(self) -> str:
        return 'Use the names of actions in this file, for example of = ["lane 1", "lane 2"].'

    def no_chord(self, *, kind: Name) -> str:
        return (
            f'this list is used only with kind = "chord", and the kind is {self.w.name(kind)}. Is it a chord, or are the '
            "actions needed together?"
        )

    def chords_in_a_circle(self, *, ring: tuple[Name, ...]) -> str:
        return f"chords that contain each other: {self._chain(ring, 'contains')}"

    def chords_of_single_actions(self) -> str:
        return "chords made of single actions"

    def name_single_actions(self) -> str:
        return "Name in each chord the actions that are pressed, not another chord."

    def needed_in_a_circle(self, *, ring: tuple[Name, ...]) -> str:
        return (
            f"the actions form a circle: {self._chain(ring, 'is needed with')}. They are counted as pairs, not as all at once. "
            'If all must be possible at once, add an action of kind = "chord" with all of them in its list of.'
        )

    def input_again(self, *, role: Text, action: Name | None, line: int) -> str:
        other = f'"{self.w.name(action)}"' if action is not None else "another action"
        return f"{self.clause(role)}, which already does {other} (line {self.w.whole(line)})"

    def input_of_its_own(self) -> str:
        return "a different input for each action, as pressing one would also do the other"

    def look_at_controls(self) -> str:
        return "Check the game's list of controls, or leave input out if any input will do."

    def cost_without(self, *, key: Name, thing: Literal["option", "toggle"]) -> str:
        return f"{self.w.name(key)} without {thing}, so it is never used. Add {_DESCRIBE[thing]}."

    def cost_without_helper(self, *, key: Name) -> str:
        return f"{self.w.name(key)} with helper = false, so it is never used. Which is right?"

    def fewer_when_busy(self, *, busy: Text, usual: Text) -> str:
        return (
            f"fewer presses in the busiest minute ({self.clause(busy)}) than on average ({self.clause(usual)}). Were they swapped, "
            "or is one in another unit?"
        )

    def too_quick(self, *, typed: Text) -> str:
        return f"{self.clause(typed)} is faster than anyone can be. If it was seconds, name the key reaction_s. Nothing was converted."

    def stick_action_on_button(self, *, kind: Name, role: Text) -> str:
        return f"a {self.w.name(kind)} action on {self.clause(role)}. Is it a press?"

    def press_on_stick(self, *, kind: Name, role: Text) -> str:
        return f"a {self.w.name(kind)} on {self.clause(role)}. Is it two-axis?"

    def no_importance(self, *, actions: tuple[Message, ...]) -> str:
        return (
            f"importance is not recorded for {self._listed(actions)}, so it is taken as 5. Ask the player how important each action "
            "is, from 0 to 10: importance = 8."
        )

    def no_presses(self, *, actions: tuple[Message, ...]) -> str:
        return (
            f"presses a minute are not recorded for {self._listed(actions)}, so it is not known whether a site can keep up. Watch "
            "for ten minutes and count: presses_per_min = 12, busy_presses_per_min = 25."
        )

    def no_hold(self, *, actions: tuple[Message, ...]) -> str:
        return (
            f"the longest hold is not recorded for {self._listed(actions)}, so it cannot be compared with how long the player can "
            "hold. Watch and time it: longest_hold_s = 6."
        )

    def game_type(self) -> str:
        return "game type"

    def a_known_type(self) -> str:
        return "one of the types that 'stickwright games' lists"

    def _chain(self, ring: tuple[Name, ...], verb: str) -> str:
        return f" {verb} ".join(f'"{self.w.name(one)}"' for one in ring)

    def _listed(self, actions: tuple[Message, ...]) -> str:
        return self.w.all_of(tuple(self.clause(one) for one in actions))
