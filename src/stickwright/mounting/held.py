"""The device to be held, and the hardest pushes that it must stand."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.mount_answers import MountAnswers
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.model.fit import Fit
from stickwright.model.kit import Kit, Switch
from stickwright.model.player import Site
from stickwright.mounting.compliance import lost_share
from stickwright.mounting.statics import Pushes

__all__ = [
    "BUTTON_TOLERANCE_M",
    "SWITCH_HEIGHT_M",
    "HeldDevice",
    "held_controller",
    "held_of",
    "held_switch",
    "pushes_of",
]

SWITCH_HEIGHT_M = 0.020
"""Of a switch that nobody measured: common practice, no source."""
SWITCH_BASE_M = (0.05, 0.05)
"""Least base of a switch that nobody measured, by a plate under it: common practice, no source."""
BUTTON_TOLERANCE_M = 0.010
"""How far off buttons may be whose size nobody told: about the width of one."""


@dataclass(frozen=True)
class HeldDevice:
    """The device to be held.

    Parameters
    ----------
    device : str
    base_m : tuple of 3 floats or None
        Length, width, height of the base.
    mass_kg : float or None
        Of one.
    contact_height_m : float
        Contact point above the pivot, with all that stands on it.
    full_force_n : float
        At the stop; of a switch, to operate it.
    travel_m : float
        From centre to stop; of a switch, of its face, 0 when not known.
    tilt_rad : float
        What is built under the base.
    own_slope_rad : float
        Of the stick against its base.
    pivot_height_m : float or None
        Pivot above the underside of the base.
    kind : {"stick", "switch", "controller"}
    pieces : int
        How many stand there side by side.
    tolerance_m : float or None
        How far off it may be; by the player's reach when None.
    presses_in_m : float or None
        How far the part can push in, where somebody tried.
    assumed : tuple of Message
        What was not measured of it, and what stands in.
    """

    device: str
    base_m: tuple[float, float, float] | None
    mass_kg: float | None
    contact_height_m: float
    full_force_n: float
    travel_m: float
    tilt_rad: float = 0.0
    own_slope_rad: float = 0.0
    pivot_height_m: float | None = None
    kind: Literal["stick", "switch", "controller"] = "stick"
    pieces: int = 1
    tolerance_m: float | None = None
    presses_in_m: float | None = None
    assumed: tuple[Message, ...] = ()

    @property
    def pivot_m(self) -> float | None:
        """Pivot above the underside: as measured, else the height of the base."""
        return self.pivot_height_m if self.pivot_height_m is not None else self.base_m[2] if self.base_m else None

    @property
    def named(self) -> Text:
        """The device; with how many of it, where there are several."""
        name = Name(self.device)
        return name if self.pieces == 1 else message(MountAnswers.pieces, count=self.pieces, device=name)

    @property
    def outline_m(self) -> tuple[float, float, float] | None:
        """Length, width and height of all pieces, side by side; None when the base was not measured."""
        return (self.base_m[0], self.pieces * self.base_m[1], self.base_m[2]) if self.base_m else None

    @property
    def whole_kg(self) -> float:
        """Mass of all pieces together; 0 when nobody weighed one."""
        return self.pieces * (self.mass_kg or 0.0)

    def lost_share(self, give_n_per_m: float) -> float:
        """Share of the throw, or of a switch's travel, that goes into what holds it; NaN when the travel is not known.

        Parameters
        ----------
        give_n_per_m : float
            Stiffness of what holds it; infinity when nothing gives.
        """
        if math.isinf(give_n_per_m) or self.full_force_n == 0:
            return 0.0
        return lost_share(self.full_force_n, give_n_per_m, self.travel_m) if self.travel_m > 0 else math.nan


def held_of(fit: Fit, kit: Kit) -> HeldDevice:
    """The stick of a fit as something to be held."""
    pivot = next((stick.pivot_height_m for stick in kit.stick if stick.name == fit.stick), None)
    return HeldDevice(
        device=fit.stick,
        base_m=fit.stands_m,
        mass_kg=fit.mass_kg,
        contact_height_m=fit.contact_height_m,
        full_force_n=fit.full_force_n,
        travel_m=fit.travel_m,
        tilt_rad=fit.built_tilt_rad,
        own_slope_rad=fit.tilt_rad - fit.built_tilt_rad,
        pivot_height_m=pivot,
        kind="controller" if fit.stick in {one.name for one in kit.controller} else "stick",
    )


def held_switch(switch: Switch, pieces: int = 1, presses_in_m: float | None = None) -> HeldDevice:
    """A switch as something to be held: the part meets the middle of its face.

    Parameters
    ----------
    switch : Switch
    pieces : int, default 1
        How many stand there side by side.
    presses_in_m : float, optional
        How far the part can push in.

    Notes
    -----
    Assumed and marked: where nobody measured the base, one as large as the face, 50 mm at least (by a plate under it), and 20 mm
    high; the face of a proximity switch as far from the resting part as it acts.

    Examples
    --------
    >>> held = held_switch(Switch(name="disc", force_n=0.9, travel_m=0.003, face_m=(0.045,)))
    >>> held.base_m, held.tolerance_m, round(held.lost_share(900.0), 2)
    ((0.05, 0.05, 0.02), 0.0225, 0.33)
    """
    assumed: list[Message] = []
    base = switch.base_m
    if base is None:
        wide, long = (switch.face_m[0], switch.face_m[-1]) if switch.face_m else SWITCH_BASE_M
        base = (max(long, SWITCH_BASE_M[0]), max(wide, SWITCH_BASE_M[1]), SWITCH_HEIGHT_M)
        device = Name(switch.name)
        assumed.append(
            message(MountAssumed.switch_base, device=device, long_m=base[0], short_m=base[1], height_m=base[2])
        )
    clear = (switch.senses_at_m or 0.0) if switch.kind == "proximity" else 0.0
    if clear > 0:
        assumed.append(message(MountAssumed.senses, clear_m=clear))
    return HeldDevice(
        switch.name, base, switch.mass_kg, clear, switch.force_n, switch.travel_m, kind="switch", pieces=pieces,
        tolerance_m=min(switch.face_m) / 2 if switch.face_m else BUTTON_TOLERANCE_M, presses_in_m=presses_in_m,
        assumed=tuple(assumed),
    )  # fmt: skip


def held_controller(name: str, kit: Kit) -> HeldDevice:
    """A two-handed controller that is used for its buttons alone.

    Parameters
    ----------
    name : str
        One of the kit's controllers.
    kit : Kit

    Examples
    --------
    >>> kit = Kit.model_validate({"stick": [{"name": "s", "start_force_n": 1, "full_force_n": 2, "travel_m": 0.01}],
    ...                           "controller": [{"name": "pad", "mass_kg": 0.26}]})
    >>> held_controller("pad", kit).kind, held_controller("pad", kit).mass_kg
    ('controller', 0.26)
    """
    one = next(controller for controller in kit.controller if controller.name == name)
    return HeldDevice(
        name, one.base_m, one.mass_kg, 0.0, one.press_force_n or 0.0, 0.0, kind="controller", tolerance_m=BUTTON_TOLERANCE_M
    )  # fmt: skip


def pushes_of(site: Site, force_n: Sequence[float]) -> Pushes:
    """The hardest pushes at a site.

    Parameters
    ----------
    site : Site
    force_n : sequence of float
        Comfortable force in each direction, and of each press.
    """
    spasm = max(site.spasm.peak_n, default=0.0) if site.spasm is not None else 0.0
    return Pushes(max(force_n, default=0.0), spasm)
