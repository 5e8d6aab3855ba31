"""The order of a visit: what is done one after the other, and what comes next."""

from __future__ import annotations

from typing import NamedTuple, get_args

from stickwright.codes.message import Message, message
from stickwright.codes.visit_page import StepKey, VisitPage

__all__ = ["STEPS", "VisitStep", "step_after", "step_of"]


class VisitStep(NamedTuple):
    """One page of a visit; `key` ends its address."""

    key: StepKey

    @property
    def title(self) -> Message:
        """What menus call it."""
        return message(VisitPage.title, step=self.key)

    @property
    def doing(self) -> Message:
        """What stands on the button that leads to it."""
        return message(VisitPage.doing, step=self.key)


STEPS = tuple(VisitStep(key) for key in get_args(StepKey))


_BELOW = {
    "plans": "plan", "compare": "plan", "making": "plan", "live": "measure", "recordings": "measure", "sheet.pdf": "sheet",
    **{f"game-{number}": "game" for number in range(2, 10)},
}  # fmt: skip
"""Pages that belong to a step under another name."""


def step_of(path: str) -> str:
    """Key of the step that an address belongs to; '' for none.

    Parameters
    ----------
    path : str
        ``/visits/12/readings`` or deeper.
    """
    parts = path.strip("/").split("/")
    key = parts[2] if len(parts) > 2 and parts[0] == "visits" else ""
    key = _BELOW.get(key, key)
    return key if key in {step.key for step in STEPS} else ""


def step_after(path: str) -> VisitStep | None:
    """The step that follows the one at this address; None after the last, and outside of the steps."""
    keys = [step.key for step in STEPS]
    here = step_of(path)
    if here not in keys or here == keys[-1]:
        return None
    return STEPS[keys.index(here) + 1]
