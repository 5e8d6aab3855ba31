"""What tests of verdicts and sentences share: one site, in numbers, on a small kit."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from said import said
from stickwright.codes.message import Message
from stickwright.mechanics.explain import SiteSetups, Situation, broken_rules, helping_change, limit_of, weakest_place
from stickwright.mechanics.fit import Evaluated, evaluate
from stickwright.mechanics.setups import SetupArrays, setups_of
from stickwright.mechanics.site_inputs import Rules, SiteInputs
from stickwright.model.kit import Kit
from stickwright.model.plan import Demand

EIGHT = np.arange(8) * math.pi / 4


def stick(name: str = "elder", **more: Any) -> dict[str, Any]:
    """A small stick of half force, unless said otherwise."""
    plain = {
        "name": name, "contact_height_mm": 16, "start_force_n": 0.24, "full_force_n": 0.52, "travel_mm": 6.5,
        "base_mm": (54, 50, 30),
    }  # fmt: skip
    return plain | more


@dataclass(frozen=True)
class Fitting:
    """One site and a kit, worked out."""

    setups: SetupArrays
    inputs: SiteInputs
    found: Evaluated
    situation: Situation
    demand: Demand
    rules: Rules

    @property
    def here(self) -> SiteSetups:
        """As the rules and the reasons take it."""
        return SiteSetups(
            setups=self.setups, found=self.found, inputs=self.inputs, direction_rad=EIGHT, demand=self.demand,
            rules=self.rules, situation=self.situation,
        )  # fmt: skip

    def reasons(self, place: int = 0) -> tuple[Message, ...]:
        return tuple(one.text for one in broken_rules(place, self.here))

    def fails(self, place: int = 0) -> str:
        """All reasons in words."""
        return "; ".join(said(one) for one in self.reasons(place))

    def help(self, place: int = 0) -> str:
        """The change that helps in words; nothing where none does."""
        change = helping_change(place, self.here)
        return said(change) if change is not None else ""

    def limit(self, place: int = 0) -> str:
        needed = np.flatnonzero(self.inputs.needed)
        weakest = weakest_place(needed, self.found.reach_share[place], self.inputs)
        fails = self.reasons(place)
        return said(limit_of(place, self.here, weakest, fails))


def fitting(
    sticks: Sequence[dict[str, Any]],
    *,
    force: float | Sequence[float] = 2.0,
    reach_mm: float | Sequence[float] = 15.0,
    needed: Sequence[int] = tuple(range(8)),
    rest: float = 0.0,
    involuntary: float = 0.01,
    supported: bool = False,
    can_lift: bool | None = False,
    room_m: tuple[float, float] | None = None,
    spasm_per_min: float = 0.0,
    spasm_peak_n: tuple[float, ...] = (),
    duty: float = 0.6,
    level: float = 1.0,
    rules: Rules | None = None,
    **kit: Any,
) -> Fitting:
    """A player's best single figures against a kit."""
    setups = setups_of(Kit.model_validate({"stick": list(sticks), **kit}))
    weight = np.zeros(8)
    weight[list(needed)] = 1 / len(needed)
    inputs = SiteInputs(
        force_n=np.broadcast_to(np.asarray(force, dtype=float), (1, 8)).copy(),
        reach_m=np.broadcast_to(np.asarray(reach_mm, dtype=float) / 1e3, (1, 8)).copy(),
        weight=weight, needed=weight > 0, plane=np.ones((len(setups.slopes_rad), 8)), level_share=level,
        rest_n=np.full(1, rest), involuntary_n=np.full(1, involuntary), crossing_hz=np.full(1, 1.5),
        limb_n_per_m=np.full(1, 50.0), noise_share=0.05, fall_off=1.0, spasm_per_min=spasm_per_min,
        spasm_peak_n=spasm_peak_n, false_limit_per_min=1.0,
    )  # fmt: skip
    rules = rules or Rules()
    situation = Situation("here", rest, involuntary, 0.5, can_lift, room_m, None, supported)
    demand = Demand("move", tuple(weight.tolist()), duty, level, None, 1.0)
    return Fitting(setups, inputs, evaluate(setups, inputs, rules), situation, demand, rules)
