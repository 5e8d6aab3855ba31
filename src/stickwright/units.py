"""Units at the edges: every factor of the project stands in this one file.

Inside, numbers are SI (newton, metre, radian, second, kilogram). A file key, a column
header or a form field names its unit by its ending (``force_gf``, ``reach_mm``), and is
converted once [si-brochure]. The same table gives the labels that people read.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

__all__ = [
    "QUANTITIES",
    "Quantity",
    "Unit",
    "ending_of",
    "figures",
    "quantity_of",
    "split_key",
    "to_si",
    "unit_named",
    "units_of",
]

STANDARD_GRAVITY = 9.80665  # m/s2, CGPM 1901: turns gram-force, ounce-force and pound-force into newton
POUND_KG = 0.45359237  # exact, International Yard and Pound Agreement 1959
INCH_M = 0.0254  # exact, the same


@dataclass(frozen=True)
class Unit:
    """One unit as it is typed and read.

    Parameters
    ----------
    ending : str
        What a key ends in, without the underscore: ``gf``.
    factor : float
        SI value of one such unit.
    label : str
        How it is printed beside a number.
    """

    ending: str
    factor: float
    label: str


@dataclass(frozen=True)
class Quantity:
    """A kind of number: its SI ending, the unit people read, and all that may be typed."""

    name: str
    si: str
    shown: str
    units: tuple[Unit, ...]

    def unit(self, ending: str) -> Unit:
        return next(unit for unit in self.units if unit.ending == ending)


def _quantity(name: str, si: str, shown: str, *units: tuple[str, float, str]) -> Quantity:
    return Quantity(name, si, shown, tuple(Unit(*unit) for unit in units))


_GRAM_FORCE = STANDARD_GRAVITY / 1000
_POUND_FORCE = STANDARD_GRAVITY * POUND_KG

# fmt: off
QUANTITIES: dict[str, Quantity] = {
    quantity.name: quantity
    for quantity in (
        _quantity("force", "n", "n", ("n", 1.0, "N"), ("mn", 1e-3, "mN"), ("cn", 1e-2, "cN"),
                  ("gf", _GRAM_FORCE, "gf"), ("kgf", STANDARD_GRAVITY, "kgf"),
                  ("oz", _POUND_FORCE / 16, "ozf"), ("lb", _POUND_FORCE, "lbf")),
        _quantity("length", "m", "mm", ("m", 1.0, "m"), ("cm", 1e-2, "cm"), ("mm", 1e-3, "mm"),
                  ("inch", INCH_M, "inch")),
        _quantity("angle", "rad", "deg", ("rad", 1.0, "rad"), ("deg", math.pi / 180, "°")),
        _quantity("time", "s", "s", ("s", 1.0, "s"), ("ms", 1e-3, "ms"), ("min", 60.0, "min")),
        _quantity("mass", "kg", "g", ("kg", 1.0, "kg"), ("g", 1e-3, "g")),
        _quantity("rate", "per_s", "per_min", ("per_s", 1.0, "/s"), ("per_min", 1 / 60, "/min")),
        _quantity("frequency", "hz", "hz", ("hz", 1.0, "Hz")),
        _quantity("linear_stiffness", "n_per_m", "n_per_mm", ("n_per_m", 1.0, "N/m"), ("n_per_mm", 1e3, "N/mm"),
                  ("gf_per_mm", _GRAM_FORCE * 1e3, "gf/mm"), ("oz_per_inch", _POUND_FORCE / 16 / INCH_M, "ozf/inch")),
        _quantity("moment", "nm", "mnm", ("nm", 1.0, "N m"), ("mnm", 1e-3, "mN m")),
        _quantity("angular_stiffness", "nm_per_rad", "mnm_per_rad", ("nm_per_rad", 1.0, "N m/rad"),
                  ("mnm_per_rad", 1e-3, "mN m/rad")),
        _quantity("pressure", "pa", "kpa", ("pa", 1.0, "Pa"), ("kpa", 1e3, "kPa"), ("mpa", 1e6, "MPa")),
        _quantity("current", "a", "ma", ("a", 1.0, "A"), ("ma", 1e-3, "mA")),
    )
}
# fmt: on

_BY_ENDING = {unit.ending: (quantity, unit) for quantity in QUANTITIES.values() for unit in quantity.units}
_ENDINGS = sorted(_BY_ENDING, key=len, reverse=True)


def split_key(key: str) -> tuple[str, str] | None:
    """Stem and unit ending of a key, or None when it ends in no unit.

    Parameters
    ----------
    key : str
        As typed: ``force_gf``.

    Examples
    --------
    >>> split_key("resting_force_gf")
    ('resting_force', 'gf')
    >>> split_key("stiffness_n_per_mm")
    ('stiffness', 'n_per_mm')
    >>> split_key("name") is None
    True
    """
    for ending in _ENDINGS:
        if key.endswith("_" + ending):
            return key[: -len(ending) - 1], ending
    return None


def ending_of(key: str) -> str:
    """Unit ending of a key that has one; raises KeyError otherwise.

    Parameters
    ----------
    key : str
        As typed.
    """
    parts = split_key(key)
    if parts is None:
        raise KeyError(f"{key} ends in no unit")
    return parts[1]


def quantity_of(key: str) -> Quantity | None:
    """What kind of number a key holds, by its ending; None when it ends in no unit.

    Parameters
    ----------
    key : str
        As typed.
    """
    parts = split_key(key)
    return None if parts is None else _BY_ENDING[parts[1]][0]


def units_of(key: str) -> tuple[str, ...]:
    """All keys that would mean the same as `key`, in other units, SI first.

    Parameters
    ----------
    key : str
        As typed.

    Examples
    --------
    >>> units_of("reach_m")
    ('reach_m', 'reach_cm', 'reach_mm', 'reach_inch')
    """
    parts = split_key(key)
    if parts is None:
        return (key,)
    return tuple(f"{parts[0]}_{unit.ending}" for unit in _BY_ENDING[parts[1]][0].units)


def to_si(value: float, ending: str) -> float:
    """`value` of the unit `ending`, in SI.

    Parameters
    ----------
    value : float
        The number as typed.
    ending : str
        Unit ending, e.g. ``gf``, ``mm``, ``deg``.

    Returns
    -------
    float
        The same in newton, metre, radian, second, kilogram and so on.
    """
    return value * _BY_ENDING[ending][1].factor


def unit_named(ending: str) -> Unit:
    """The unit that a key's ending means.

    Parameters
    ----------
    ending : str
        ``mm``, ``n``, ``per_min``.
    """
    return _BY_ENDING[ending][1]


def figures(value: float, digits: int = 2) -> str:
    """A bare number with so many significant digits and never a power of ten: ``132``, ``1.3``, ``0.013``.

    Parameters
    ----------
    value : float
        Finite.
    digits : int, default 2
        Significant digits of numbers below ten to that power; larger ones are whole.

    Examples
    --------
    >>> figures(131.7), figures(1.317), figures(0.01317), figures(0.0), figures(1000.0, 3)
    ('132', '1.3', '0.013', '0', '1000')
    """
    if value == 0:
        return "0"
    decimals = max(0, digits - 1 - math.floor(math.log10(abs(value)) + 1e-9))
    return f"{value:.{decimals}f}"
