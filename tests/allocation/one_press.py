"""One switch under one part: the switches of the worked cases, and how a press is judged."""

from typing import Any

from said import said
from stickwright.allocation.pressing import (
    Pressed,
    press_fit,
)
from stickwright.codes.message import Text
from stickwright.model.game import Action
from stickwright.model.kit import Switch
from stickwright.model.player import Press, Site

PIP = Switch(name="pip", force_n=0.10, travel_m=0.0015, face_m=(0.012,))
LEAF = Switch(name="leaf", force_n=0.35, travel_m=0.003, face_m=(0.020, 0.060))
DOME = Switch(name="dome", force_n=1.8, travel_m=0.006, face_m=(0.070,))
SLAB = Switch(name="slab", force_n=3.5, travel_m=0.008, face_m=(0.130,))
FEATHER = Switch(name="feather", force_n=0.10, travel_m=0.0015, face_m=(0.070,))
WINK = Switch(name="wink", kind="proximity", senses_at_m=0.006, face_m=(0.025,))


def action(name: str = "jump", kind: str = "press", busy_per_min: float | None = 4.0, **more: Any) -> Action:
    busy = {} if busy_per_min is None else {"busy_presses_per_s": busy_per_min / 60}
    return Action.model_validate({"name": name, "kind": kind, **busy, **more})


def fit(press: Press | None, switch: Switch, wanted: Action, *, part: str = "fingertip", site: Any = (), **named: Any):
    found = Site.model_validate({"name": "left index", "part": part, "press": press, **dict(site)})
    return press_fit(found, Pressed.of_switch(switch), wanted, **named)


def told(texts: tuple[Text, ...]) -> list[str]:
    """Their words."""
    return [said(one) for one in texts]
