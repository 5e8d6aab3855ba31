"""The first page of the demo: an invented player; in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.demo_page import DemoPage, Job
from stickwright.codes.message import Name

__all__ = ["Texts"]

_JOBS: dict[Job, str] = {
    "readings": "Enter force gauge readings, direction by direction.",
    "measure": "Play back a recording as if a stick were plugged in, and see the results.",
    "kit": "Invented sticks, from very light to firm, with their bench curves.",
    "game": "What the game needs: how often, for how long, which actions at the same time.",
    "plan": "Which stick at which control site, who does what, the reasons, and the second choice.",
    "mounts": "Where the sticks go, with dimensions.",
    "sheet": "The pages for the family.",
}


class Texts(DemoPage):
    """The first page of the demo: an invented player."""

    w: English

    def title(self) -> str:
        return "Look round"

    def meet(self, *, code: Name) -> str:
        return f"Meet {self.w.name(code)}"

    def lead(self, *, code: Name) -> str:
        return (
            f"{self.w.name(code)} is an invented player with invented sticks and an invented game. One visit is "
            "filled in, from the first question to the sheet. Change anything you like; nothing is saved when "
            "you close the app."
        )

    def start(self) -> str:
        return "Start with measuring"

    def or_go(self) -> str:
        return "Or open a page"

    def job(self, *, step: Job) -> str:
        return _JOBS[step]
