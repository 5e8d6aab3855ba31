"""The kit: sticks, toppers, extensions, as benched. Forces are at the contact point of the bare stick."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from stickwright.model.measured import Measured, Plausible

__all__ = ["Extension", "Kit", "Stick", "Topper"]

Newton = Annotated[float, Plausible(0.0, 100.0)]
Interval = tuple[Newton, Newton]
Size = Annotated[float, Plausible(0.0, 1.0)]


class Stick(Measured):
    """A self-returning lever, or a touch surface (force near zero, no spring, travel = half the pad)."""

    name: str = Field(min_length=1)
    kind: Literal["lever", "touch"] = "lever"
    force_class: Literal["standard", "half", "third", "hyper-light", "light", "firm", "touch"] | None = None
    contact_height_m: Annotated[float, Plausible(0.002, 0.5)] | None = None
    """Contact point above the pivot, without topper or extension."""
    start_force_n: Newton
    """Pushing out, to leave the centre (friction included)."""
    full_force_n: Newton
    """Pushing out, at the stop."""
    travel_m: Annotated[float, Plausible(0.0005, 0.3)]
    """Travel of the contact point from centre to stop."""
    friction_force_n: Newton | None = None
    """Half the difference between pushing out and letting back."""
    start_force_interval_n: Interval | None = None
    full_force_interval_n: Interval | None = None
    friction_force_interval_n: Interval | None = None
    bench_readings: str | None = None
    """CSV of the readings the figures come from."""
    benched: str = ""
    """Date, YYYY-MM-DD."""
    base_m: tuple[Size, Size, Size] | None = None
    """Length, width, height."""
    base_tilt_rad: Annotated[float, Plausible(-1.6, 1.6)] = 0.0
    mass_kg: Annotated[float, Plausible(0.0, 20.0)] | None = None
    plug: str = ""
    current_a: Annotated[float, Plausible(0.0, 3.0)] | None = None
    full_output_share: Annotated[float, Plausible(0.05, 1.0)] = 1.0
    """Share of the throw at which the output is already full."""
    heaviest_topper_kg: Annotated[float, Plausible(0.0, 2.0)] | None = None
    """Above this the stick no longer centres well."""
    in_stock: Annotated[int, Field(ge=0, le=1000)] = 1
    note: str = ""


class Topper(Measured):
    """What the player touches: adds height and mass."""

    name: str = Field(min_length=1)
    form: Literal["dish", "ball", "peg", "bar", "cup", "foam"]
    height_m: Annotated[float, Plausible(-0.02, 0.2)]
    mass_kg: Annotated[float, Plausible(0.0, 1.0)] = 0.0
    width_m: Annotated[float, Plausible(0.0, 0.3)] | None = None
    single_player: bool = False
    in_stock: Annotated[int, Field(ge=0, le=1000)] = 1
    note: str = ""


class Extension(Measured):
    """A piece that lengthens the lever."""

    name: str = Field(min_length=1)
    length_m: Annotated[float, Plausible(0.0, 0.5)]
    mass_kg: Annotated[float, Plausible(0.0, 1.0)] = 0.0
    in_stock: Annotated[int, Field(ge=0, le=1000)] = 1


class Kit(Measured):
    """All that is in the van."""

    stick: tuple[Stick, ...] = Field(min_length=1)
    topper: tuple[Topper, ...] = ()
    extension: tuple[Extension, ...] = ()
    tilt_rad: tuple[Annotated[float, Plausible(-1.0, 1.0)], ...] = (0.0,)
    """Tilts of the base that can be built, besides the stick's own."""
