"""What can happen to a running task, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.message import Text
from stickwright.codes.task_states import Outcome, TaskStates, Why

__all__ = ["Texts"]

_DOES: dict[Outcome, str] = {
    "begins": "the task begins, with the first rest",
    "not-kept": "shown, not kept",
    "nothing": "nothing changes",
    "cannot-start": "noted: the task cannot start without the stick",
    "noted": "noted",
    "stops": "the task stops",
    "stops-and-keeps": "the task stops; everything recorded is kept",
    "drops-rounds": "the rounds after this one are left out",
    "drops-rounds-and-steps": "later rounds are left out, then the steps that are left",
    "drops-rounds-and-the-rest": "later rounds are left out, then what is left of this one",
    "kept-without-a-cue": "kept, marked as nothing asked",
    "kept-with-its-cue": "kept, with what was asked",
    "kept-from-before-the-stop": "those from before the stop are kept",
    "kept-from-before-the-end": "those from before the end are kept",
    "begins-the-step-anew": "a rest, then the same step from its beginning",
    "repeats-steps": "the task again, or the steps named",
    "repeats-this-step": "this step again after a rest, or the steps named at the end",
    "moves-on-in-time": "rests and steps end when their time is over",
    "pauses": "the task pauses",
    "ends-the-step": "the step ends, or the rest",
}
_WHY: dict[Why, str] = {
    "unplugged": "The stick is unplugged. Plug it in first.",
    "waits-for-the-stick": "The stick is unplugged. Plug it in to carry on, or stop the task.",
    "step-begins-anew": "The stick is unplugged. The step starts again when you plug it in.",
    "only-just-resting": "The rest has only just begun.",
    "same-press": "This press came too soon after the last one, so it counts as the same press.",
    "one-round": "There is only one round. Shorten the task while it runs, or stop it.",
    "not-started": "The task has not started. Start it.",
    "nothing-to-repeat": "The task has not started, so there is nothing to repeat.",
    "running": "The task is running.",
    "running-without-a-stick": "The task has started. Plug the stick in to carry on.",
    "stopped": "The task is stopped. Resume it or repeat it.",
    "stopped-nothing-to-shorten": "The task is stopped, so there is nothing to shorten.",
    "finished": "The task is finished. Repeat it if you need more.",
    "finished-nothing-to-shorten": "The task is finished, so there is nothing to shorten.",
    "no-time": "This event has no time.",
}


class Texts(TaskStates):
    """In the handbook and on the page."""

    w: English

    def does(self, *, outcome: Outcome) -> str:
        return _DOES[outcome]

    def refused(self, *, why: Text) -> str:
        return f"not possible: {self.say(why)}"

    def why(self, *, why: Why) -> str:
        return _WHY[why]

    def steps_there_are(self, *, last: int) -> str:
        return f"This task has steps 0 to {self.w.whole(last)}."

    def no_samples(self, *, columns: int) -> str:
        return f"These are not samples: each must have {self.w.whole(columns)} {self.w.plural(columns, one='column', other='columns')}."

    def places_unlike(self, *, samples: int, places: int) -> str:
        counted = self.w.plural(samples, one="sample", other="samples")
        came = self.w.plural(places, one="place", other="places")
        return (
            f"{self.w.whole(samples)} {counted} came with {self.w.number(places)} {came} on the screen. Each sample needs "
            "one place."
        )

    def mark(self, *, about: Literal["unplugged", "plugged-in-again", "one-round", "this-step"]) -> str:
        words = {
            "unplugged": "the stick was unplugged",
            "plugged-in-again": "the stick was plugged in again",
            "one-round": "to one round",
            "this-step": "to this step",
        }
        return words[about]
