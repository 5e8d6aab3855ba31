"""The device to be held, and the hardest pushes that it must stand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from stickwright.model.kit import Kit
from stickwright.model.plan import Fit
from stickwright.model.player import Site
from stickwright.mounting.statics import Pushes

__all__ = ["Held", "held_of", "pushes_of"]


@dataclass(frozen=True)
class Held:
    """The device to be held.

    Parameters
    ----------
    device : str
    base_m : tuple of 3 floats or None
        Length, width, height of the base.
    mass_kg : float or None
    contact_height_m : float
        Contact point above the pivot, with all that stands on it.
    full_force_n : float
        At the stop.
    travel_m : float
        From centre to stop.
    tilt_rad : float
        What is built under the base.
    own_slope_rad : float
        Of the stick against its base.
    pivot_height_m : float or None
        Pivot above the underside of the base.
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

    @property
    def pivot_m(self) -> float | None:
        """Pivot above the underside: as measured, else the height of the base."""
        return self.pivot_height_m if self.pivot_height_m is not None else self.base_m[2] if self.base_m else None


def held_of(fit: Fit, kit: Kit) -> Held:
    """The stick of a fit as something to be held.

    Parameters
    ----------
    fit : Fit
    kit : Kit
    """
    pivot = next((stick.pivot_height_m for stick in kit.stick if stick.name == fit.stick), None)
    return Held(
        fit.stick, fit.base_m, fit.mass_kg, fit.contact_height_m, fit.full_force_n, fit.travel_m, fit.built_tilt_rad,
        fit.tilt_rad - fit.built_tilt_rad, pivot,
    )  # fmt: skip


def pushes_of(site: Site, force_n: Sequence[float]) -> Pushes:
    """The hardest pushes at a site.

    Parameters
    ----------
    site : Site
    force_n : sequence of float
        Comfortable force in each direction.
    """
    spasm = max(site.spasm.peak_n, default=0.0) if site.spasm is not None else 0.0
    return Pushes(max(force_n, default=0.0), spasm)
