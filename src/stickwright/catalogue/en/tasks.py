"""The guided measuring tasks, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.message import Text
from stickwright.codes.tasks import TaskName, Tasks

__all__ = ["Texts"]

_TITLES: dict[TaskName, str] = {
    "rest": "Rest",
    "rim": "Around the edge",
    "push": "Push and hold",
    "aim": "Reach the targets",
    "follow": "Follow the moving target",
    "hold": "Hold",
    "press": "Press the switch",
    "play": "Free play",
}
_PURPOSES: dict[TaskName, str] = {
    "rest": (
        "Shows where the stick lies when nobody moves it, and whether it returns to the same place. Used for centre and "
        "dead zone."
    ),
    "rim": "Shows how far the stick gets in every direction. Used for sensitivity and to find the weakest direction.",
    "push": (
        "Shows how far and how straight each push is, and how steadily the player holds part of the travel. Used for "
        "sensitivity, rotation and response curve."
    ),
    "aim": (
        "Shows how quickly and accurately the player reaches targets. Used to compare sticks for this player, not to "
        "compare people."
    ),
    "follow": (
        "Shows how far off, how late and how large the movement is. Used to choose a filter and to compare before and after."
    ),
    "hold": "Shows how long a half push is held, and whether it sinks. Used to judge the force of the stick in long play.",
    "press": (
        "Shows how many presses per second are comfortable, how even they are, and how late to a beat. Used for the busiest "
        "minute of the game."
    ),
    "play": (
        "Shows what the player does with the stick when nothing is asked: which directions, how often at full travel, and "
        "which movements come by themselves."
    ),
}
_WATCH: dict[TaskName, str] = {
    "rest": "Nobody leans on the tray. If the limb rests on the stick, let it lie as it will in play.",
    "rim": (
        "Does the limb move, or the whole body? Does the hand slip off the stick? Does the player reach the edge, or cut "
        "a corner?"
    ),
    "push": "Comfortable pushes, not the hardest possible. No breath-holding. Stop for pain, a change of colour or fear.",
    "aim": "Same session and same support for both sticks. If the task is new, count the first circle as practice.",
    "follow": "Eyes on the screen. If the target is too quick, choose the calm pace. Even 20 seconds are useful.",
    "press": "Comfortable presses; this is not a race. Does the hand come off the switch after every press?",
    "play": "Watch the player's face. What they do unprompted tells you most.",
}


class Texts(Tasks):
    """On the page and aloud."""

    w: English

    def stop(self) -> str:
        return "Stop if it hurts or tires you."

    def with_stop(self, *, words: Text) -> str:
        return f"{self.say(words)} {self.stop()}"

    def title(self, *, task: TaskName) -> str:
        return _TITLES[task]

    def purpose(self, *, task: TaskName) -> str:
        return _PURPOSES[task]

    def watch(self, *, task: Literal["rest", "rim", "push", "aim", "follow", "press", "play"]) -> str:
        return _WATCH[task]

    def watch_hold(self, *, cap_s: float) -> str:
        return (
            "Do not count aloud: the player would breathe to the count. No breath-holding. The task ends by itself after "
            f"{self.w.amount(cap_s, 's')}."
        )

    def rest(self, *, rests: int) -> str:
        return f"Leave the stick alone for a few seconds, {self._times(rests)}."

    def rim(self, *, laps: int) -> str:
        return f"Move the stick slowly round its edge, {self._times(laps)} in each direction."

    def push(self) -> str:
        return "Push the way the arrow shows. Then let go."

    def aim(self, *, by_switch: bool) -> str:
        return f"Move to the marked circle. {'Press the switch there.' if by_switch else 'Stay in it for a moment.'}"

    def follow(self) -> str:
        return "Stay with the ring as it moves."

    def hold(self) -> str:
        return "Hold the stick in the ring for as long as it is comfortable. Then let go."

    def press(self) -> str:
        return "Press the switch as often as is comfortable. After that, press with the beat."

    def play(self) -> str:
        return "Move as you like."

    def _times(self, count: int) -> str:
        return {1: "once", 2: "twice"}.get(count, f"{self.w.whole(count)} times")
