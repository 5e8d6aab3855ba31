"""How the tried stick's output should be shaped: results of `stickwright.tuning`."""

from __future__ import annotations

from dataclasses import dataclass, fields
from typing import Annotated, Any, Literal

import numpy as np
from numpy.typing import NDArray
from pydantic import PlainValidator, WithJsonSchema

from stickwright.codes.estimate import Estimate
from stickwright.codes.filters import FilterKind
from stickwright.codes.message import Message, Text
from stickwright.model.game import SettingsBefore
from stickwright.model.recorded import Finding

__all__ = ["BaseAdvice", "FilterChoice", "FilterTried", "SimpleSettings", "Tuning"]

BaseAdvice = Literal["turn", "stays", "mend_first", "not_known"]
"""What to do with the base of a stick: turn it, leave it, put a mirror or a quarter turn right first, or nothing is known."""


def _numbers(value: Any) -> NDArray[np.float64]:
    return np.asarray(value, dtype=np.float64)


_CELL = {"type": ["number", "null"]}
Row = Annotated[NDArray[np.float64], PlainValidator(_numbers), WithJsonSchema({"type": "array", "items": _CELL})]
"""Numbers in a row; in JSON an empty cell is null."""
Xy = Annotated[
    NDArray[np.float64],
    PlainValidator(lambda value: _numbers(value).reshape(-1, 2)),
    WithJsonSchema({"type": "array", "items": {"type": "array", "items": _CELL, "minItems": 2, "maxItems": 2}}),
]
"""Pairs, shape (n, 2)."""


@dataclass(frozen=True)
class FilterTried:
    """One filter on the recordings not used to choose it."""

    kind: FilterKind
    settings: tuple[tuple[str, float], ...]
    """Name, with its unit, and figure of each setting."""
    lag_s: Estimate
    error: Estimate
    """Rms distance from the target, share of full output."""
    within_budget: bool


@dataclass(frozen=True)
class FilterChoice:
    """The filter kept, and what was tried."""

    chosen: FilterTried
    tried: tuple[FilterTried, ...]
    lag_budget_s: float
    sentence: Text
    """Why it is kept."""


@dataclass(frozen=True)
class SimpleSettings:
    """What to type where the game offers only a dead zone and a sensitivity."""

    dead_zone_percent: float
    sensitivity_percent: float
    """100 leaves the stick as it is; 150 reaches full output at two thirds of the travel."""
    rms_difference: float
    """From our own curve, share of full output."""
    lost: Text
    """What the game's two numbers cannot do, and by how much the output differs."""
    rest_offset_share: float | None = None
    """How far rest lies off centre, share of full output: a game with two numbers takes that off by its dead zone alone."""
    radius_share: float | None = None
    """Dead zone about that rest, share of full output."""
    reach_share: tuple[float, float] | None = None
    """Least and most reach over which the two numbers were fitted, share of full output."""


@dataclass(frozen=True, eq=False)
class Tuning:
    """The whole response, applied in this order: centre, rotation, range, dead zone, curve, filter, outer limit."""

    site: str
    stick: str
    recordings: tuple[str, ...]
    offset_x: Estimate
    """Where the centre lies, share of full output; plus is right."""
    offset_y: Estimate
    """Plus is forward."""
    output_rotation_rad: Estimate
    """To be added to the produced direction: minus the measured error (`BiasReport.error_rotation_rad`)."""
    turn_base: Text
    """What to do with the base before any software, in one sentence; `base` says the same for a program."""
    direction_rad: tuple[float, ...]
    range_share: tuple[Estimate, ...]
    """Reach per direction, share of full output."""
    gain: tuple[float, ...]
    """Multiplier per direction, limited."""
    dead_zone: Estimate
    """Radius, share of full output, after centring."""
    inner_jump: float
    """Output just outside the dead zone: lifts the stick over the game's own dead zone."""
    curve_in: tuple[float, ...]
    """Points of the curve: share of the range past the dead zone, 0 to 1."""
    curve_out: tuple[float, ...]
    """Share of full output at each of them."""
    curve_sentence: Text
    """What the curve does and why, without the name of the step."""
    filter: FilterChoice | None
    outer_limit: float
    """Largest output, share of full."""
    simple: SimpleSettings
    sentences: tuple[Text, ...]
    """What each step does for this player, in order."""
    findings: tuple[Finding, ...]
    before_xy: Xy
    """A recording as it was, shape (n, 2)."""
    after_xy: Xy
    """The same through this response."""
    shown_times_s: Row
    shown_recording: str
    shown_target_xy: Xy | None = None
    setup: Message | None = None
    """What the recordings were made on, as `Fit.named` says it, tilt left out; None when not known."""
    base: BaseAdvice = "not_known"
    turn_base_rad: Estimate | None = None
    """How far the base is to be turned from where it stood, anticlockwise seen from above; None unless `base` is 'turn'."""
    range_task: Literal["rim", "push", ""] = ""
    """What the reach of `range_share` was recorded in; empty when it is not known."""
    own_dead_zone_share: float | None = None
    """Dead zone inside the game, as it was before anything was set; None when nobody found it out."""

    settings_before: SettingsBefore | None = None
    """What was set in the game for this stick before anything was changed; None when nobody wrote it down."""

    def __eq__(self, other: object) -> bool:
        """Whether all fields are equal; arrays number by number, an empty cell equal to an empty cell."""
        if not isinstance(other, Tuning):
            return NotImplemented
        return all(_equal(getattr(self, one.name), getattr(other, one.name)) for one in fields(self))

    __hash__ = None  # type: ignore[assignment]  # it holds arrays

    @property
    def faults(self) -> tuple[Finding, ...]:
        """What makes these settings wrong to use; while there is one, they are printed nowhere as settings."""
        return tuple(finding for finding in self.findings if finding.level == "fault")


def _equal(one: object, other: object) -> bool:
    if isinstance(one, np.ndarray) and isinstance(other, np.ndarray):
        return np.array_equal(one, other, equal_nan=True)
    return bool(one == other)
