"""A diagram of the directions to click: each petal leads to the field of its direction and says whether it is filled."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from markupsafe import Markup, escape

from stickwright.catalogue import say
from stickwright.codes.message import message
from stickwright.codes.readings_page import PetalState, ReadingsPage

__all__ = ["Petal", "rose"]

SIZE, OUTER, INNER = 320, 140, 46
HALF_RAD = math.radians(20)
STATES: dict[tuple[bool, bool], PetalState] = {
    (True, True): "both",
    (True, False): "force",
    (False, True): "range",
    (False, False): "nothing",
}
"""By whether force and movement range are there."""


class Petal(NamedTuple):
    """One direction; `field` is the id of the control that it leads to."""

    degrees: str
    words: str
    field: str
    has_force: bool
    has_reach: bool


def rose(petals: Sequence[Petal]) -> Markup:
    """The diagram as SVG, seen from above: forward is up."""
    parts = [
        Markup('<svg class="rose" viewBox="0 0 {0} {0}" width="{0}" height="{0}" role="group" aria-label="{1}">').format(
            SIZE, say(message(ReadingsPage.diagram))
        )
    ]  # fmt: skip
    for petal in petals:
        angle = math.radians(float(petal.degrees))
        state = STATES[petal.has_force, petal.has_reach]
        mark = {"both": "✓", "nothing": ""}.get(state, "½")
        x, y = _at(angle, (OUTER + INNER) / 2)
        label = say(message(ReadingsPage.petal, direction=petal.words, state=state))
        parts.append(
            Markup(
                '<a href="#{field}" class="petal {state}" aria-label="{label}"><path d="{path}"/>'
                '<text x="{x:.0f}" y="{y:.0f}">{mark}</text></a>'
            ).format(
                field=petal.field, state="full" if mark == "✓" else "half" if mark else "open", label=label, path=_path(angle),
                x=x, y=y + 6, mark=mark,
            )
        )  # fmt: skip
    middle = SIZE / 2
    parts.append(
        Markup('<text class="way" x="{:.0f}" y="14">{}</text>').format(middle, say(message(ReadingsPage.forward)))
    )
    parts.append(Markup('<circle class="hub" cx="{0:.0f}" cy="{0:.0f}" r="12"/></svg>').format(middle))
    return Markup("").join(Markup(escape(part)) for part in parts)


def _at(angle: float, radius: float) -> tuple[float, float]:
    return SIZE / 2 + radius * math.cos(angle), SIZE / 2 - radius * math.sin(angle)


def _path(angle: float) -> str:
    left_in, left_out = _at(angle + HALF_RAD, INNER), _at(angle + HALF_RAD, OUTER)
    right_out, right_in = _at(angle - HALF_RAD, OUTER), _at(angle - HALF_RAD, INNER)
    return (
        f"M{left_in[0]:.1f} {left_in[1]:.1f}L{left_out[0]:.1f} {left_out[1]:.1f}"
        f"A{OUTER} {OUTER} 0 0 1 {right_out[0]:.1f} {right_out[1]:.1f}L{right_in[0]:.1f} {right_in[1]:.1f}"
        f"A{INNER} {INNER} 0 0 0 {left_in[0]:.1f} {left_in[1]:.1f}Z"
    )
