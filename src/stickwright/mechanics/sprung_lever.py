"""The stick as a sprung lever: preload, stiffness and friction about a pivot.

A stick has one moment curve. How hard and how long it is for the player follows from the height
at which it is touched: an extension divides the force by the factor by which it multiplies the
travel, and the work to the stop stays.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from numbers import Real
from typing import Literal, overload

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.message import message
from stickwright.codes.stick_problems import StickProblems
from stickwright.errors import BadInput, Problem

__all__ = ["Lever"]

Array = NDArray[np.float64]

_LONGEST_M = 2.0  # longer than this is a length in millimetre


@dataclass(frozen=True)
class Lever:
    """A sprung lever with friction, pushed at its contact point.

    Parameters
    ----------
    preload_nm : float
        Moment of the spring at the centre, N m, 0 or more.
    stiffness_nm_per_rad : float
        Growth of the spring's moment with the angle, N m/rad, 0 or more.
    friction_nm : float
        Friction moment, N m, 0 or more: against the movement, whichever way it goes.
    length_m : float
        Contact point above the pivot, m.
    max_angle_rad : float
        The stop, rad, up to a quarter turn.

    Raises
    ------
    BadInput
        A number missing, negative or in the wrong unit; all of them at once.

    Notes
    -----
    Equilibrium of moments about the pivot [hibbeler-statics]. Assumed: a straight spring, friction
    that is the same at every angle (`fit_lever` reports readings that contradict either), and a
    stick without weight.

    Rule of thumb in the trade (common practice, no source): a low-force stick takes about half the
    force of a standard one, the lighter kind about a third; twice the height also halves the force.

    Examples
    --------
    >>> stick = Lever(preload_nm=0.004, stiffness_nm_per_rad=0.020, friction_nm=0.001, length_m=0.018,
    ...               max_angle_rad=0.40)
    >>> round(stick.push(0.35), 3), round(stick.push(0.35, extension_m=0.018), 3)
    (0.667, 0.333)
    """

    preload_nm: float
    stiffness_nm_per_rad: float
    friction_nm: float
    length_m: float
    max_angle_rad: float

    def __post_init__(self) -> None:
        problems = [
            Problem(("stick", name), _number(getattr(self, name)), message(StickProblems.or_more, unit=unit))
            for name, unit in _UNITS
            if not _within(getattr(self, name), 0.0, math.inf)
        ]
        if not _within(self.length_m, 1e-9, _LONGEST_M):
            problems.append(
                Problem(
                    ("stick", "length_m"),
                    f"{_number(self.length_m)} m",
                    message(StickProblems.expected, what="length"),
                    _IF_MILLIMETRE,
                )
            )
        if not _within(self.max_angle_rad, 1e-9, math.pi / 2):
            problems.append(
                Problem(
                    ("stick", "max_angle_rad"), f"{_number(self.max_angle_rad)} rad", message(StickProblems.expected, what="max_angle"),
                    message(StickProblems.remedy, what="in_degrees"),
                )
            )  # fmt: skip
        if problems:
            raise BadInput(problems)

    @overload
    def push(self, angle_rad: float, extension_m: float = 0.0) -> float: ...
    @overload
    def push(self, angle_rad: ArrayLike, extension_m: float = 0.0) -> Array: ...
    def push(self, angle_rad: ArrayLike, extension_m: float = 0.0) -> float | Array:
        """Force at the contact point that deflects the stick outwards to `angle_rad`.

        Balance of moments about the pivot: spring (preload plus stiffness times angle) and
        friction, which opposes the outward movement, are carried by a force at right angles to
        the stick at ``length_m + extension_m`` from the pivot.

        Parameters
        ----------
        angle_rad : float or array, shape (n,)
            Deflection from the centre, rad, 0 to the stop.
        extension_m : float, default 0.0
            Added length, m, 0 or more. Divides the force by the factor by which it multiplies the travel.

        Returns
        -------
        float or array, shape (n,)
            Force, N, 0 or more.

        Raises
        ------
        BadInput
            Angle outside 0 to the stop, or not a number; negative extension.

        Notes
        -----
        Equilibrium of moments [hibbeler-statics].

        Examples
        --------
        >>> stick = Lever(0.008, 0.020, 0.001, 0.022, 0.4363323)
        >>> stick.push([0.0, 0.1745329]).round(3).tolist()
        [0.409, 0.568]
        """
        return self._force(angle_rad, extension_m, self.friction_nm)

    @overload
    def hold(self, angle_rad: float, extension_m: float = 0.0) -> float: ...
    @overload
    def hold(self, angle_rad: ArrayLike, extension_m: float = 0.0) -> Array: ...
    def hold(self, angle_rad: ArrayLike, extension_m: float = 0.0) -> float | Array:
        """Force that balances the spring alone: friction helps or hinders by as much either way.

        Parameters
        ----------
        angle_rad : float or array, shape (n,)
            Deflection from the centre, rad, 0 to the stop.
        extension_m : float, default 0.0
            Added length, m, 0 or more.

        Returns
        -------
        float or array, shape (n,)
            Force, N.

        Raises
        ------
        BadInput
            Angle outside 0 to the stop, or not a number; negative extension.

        Notes
        -----
        Equilibrium of moments [hibbeler-statics].

        Examples
        --------
        >>> round(Lever(0.008, 0.020, 0.001, 0.022, 0.4).hold(0.0), 3)
        0.364
        """
        return self._force(angle_rad, extension_m, 0.0)

    @overload
    def letting_back(self, angle_rad: float, extension_m: float = 0.0) -> float: ...
    @overload
    def letting_back(self, angle_rad: ArrayLike, extension_m: float = 0.0) -> Array: ...
    def letting_back(self, angle_rad: ArrayLike, extension_m: float = 0.0) -> float | Array:
        """Force still felt while the stick is let back through `angle_rad`.

        Parameters
        ----------
        angle_rad : float or array, shape (n,)
            Deflection from the centre, rad, 0 to the stop.
        extension_m : float, default 0.0
            Added length, m, 0 or more.

        Returns
        -------
        float or array, shape (n,)
            Force, N; 0 where friction holds the stick and it stays by itself.

        Raises
        ------
        BadInput
            Angle outside 0 to the stop, or not a number; negative extension.

        Notes
        -----
        Equilibrium of moments [hibbeler-statics].

        Examples
        --------
        >>> round(Lever(0.008, 0.020, 0.001, 0.022, 0.4).letting_back(0.0), 3)
        0.318
        >>> Lever(0.001, 0.020, 0.003, 0.022, 0.4).letting_back(0.05)
        0.0
        """
        force = self._force(angle_rad, extension_m, -self.friction_nm)
        return max(0.0, force) if isinstance(force, float) else np.maximum(0.0, force)

    @overload
    def level_push(self, angle_rad: float, extension_m: float = 0.0) -> float: ...
    @overload
    def level_push(self, angle_rad: ArrayLike, extension_m: float = 0.0) -> Array: ...
    def level_push(self, angle_rad: ArrayLike, extension_m: float = 0.0) -> float | Array:
        """Force outwards when pushed along the base instead of square to the stick.

        Parameters
        ----------
        angle_rad : float or array, shape (n,)
            Deflection from the centre, rad, 0 to the stop.
        extension_m : float, default 0.0
            Added length, m, 0 or more.

        Returns
        -------
        float or array, shape (n,)
            Force, N: `push` divided by the cosine of the angle, 6.4 % more at 20 degrees.

        Raises
        ------
        BadInput
            Angle outside 0 to the stop, or not a number; negative extension.

        Notes
        -----
        Only the part of a level force that is square to the stick turns it [hibbeler-statics].

        Examples
        --------
        >>> round(Lever(0.008, 0.020, 0.001, 0.022, 0.4).level_push(0.349066), 3)
        0.773
        """
        cosine = np.cos(self._angles(angle_rad))
        return _like(angle_rad, np.asarray(self.push(angle_rad, extension_m)) / cosine)

    @overload
    def travel(self, angle_rad: float, extension_m: float = 0.0) -> float: ...
    @overload
    def travel(self, angle_rad: ArrayLike, extension_m: float = 0.0) -> Array: ...
    def travel(self, angle_rad: ArrayLike, extension_m: float = 0.0) -> float | Array:
        """Way of the contact point along the movement plane.

        Parameters
        ----------
        angle_rad : float or array, shape (n,)
            Deflection from the centre, rad, 0 to the stop.
        extension_m : float, default 0.0
            Added length, m, 0 or more.

        Returns
        -------
        float or array, shape (n,)
            Travel, m: height times sine of the angle.

        Raises
        ------
        BadInput
            Angle outside 0 to the stop, or not a number; negative extension.

        Notes
        -----
        Geometry of a straight lever [hibbeler-statics].

        Examples
        --------
        >>> round(1000 * Lever(0.008, 0.020, 0.001, 0.022, 0.4).travel(0.349066), 2)
        7.52
        """
        return _like(angle_rad, self._height_m(extension_m) * np.sin(self._angles(angle_rad)))

    def contact_stiffness_n_per_m(self, extension_m: float = 0.0) -> float:
        """Spring felt at the contact point: falls with the square of the height.

        Parameters
        ----------
        extension_m : float, default 0.0
            Added length, m, 0 or more.

        Returns
        -------
        float
            Stiffness about the centre, N/m.

        Raises
        ------
        BadInput
            Negative extension.

        Notes
        -----
        Force over travel for small angles [hibbeler-statics].

        Examples
        --------
        >>> stick = Lever(0.008, 0.020, 0.001, 0.020, 0.4)
        >>> round(stick.contact_stiffness_n_per_m(), 6), round(stick.contact_stiffness_n_per_m(0.020), 6)
        (50.0, 12.5)
        """
        return self.stiffness_nm_per_rad / self._height_m(extension_m) ** 2

    @property
    def residual_angle_rad(self) -> float:
        """Angle (rad) down to which the stick comes home by itself: 0 when the preload beats friction, the
        stop when it stays wherever it is left."""
        excess_nm = self.friction_nm - self.preload_nm
        if excess_nm <= 0:
            return 0.0
        if excess_nm >= self.stiffness_nm_per_rad * self.max_angle_rad:
            return self.max_angle_rad
        return excess_nm / self.stiffness_nm_per_rad

    def _force(self, angle_rad: ArrayLike, extension_m: float, friction_nm: float) -> float | Array:
        moment = self.preload_nm + friction_nm + self.stiffness_nm_per_rad * self._angles(angle_rad)
        return _like(angle_rad, moment / self._height_m(extension_m))

    def _angles(self, angle_rad: ArrayLike) -> Array:
        angles = np.asarray(angle_rad, dtype=np.float64)
        bad = ~((angles >= 0) & (angles <= self.max_angle_rad * (1 + 1e-9)))  # NaN is caught as well
        if bad.any():
            first = float(angles[bad].flat[0])
            raise BadInput(
                Problem(
                    "angle_rad",
                    f"{_number(first)} rad",
                    message(StickProblems.within_stop, stop_rad=self.max_angle_rad),
                    message(StickProblems.remedy, what="direction_apart"),
                )
            )
        return angles

    def _height_m(self, extension_m: float) -> float:
        if not _within(extension_m, 0.0, _LONGEST_M):
            raise BadInput(
                Problem(
                    "extension_m",
                    f"{_number(extension_m)} m",
                    message(StickProblems.expected, what="extension"),
                    _IF_MILLIMETRE,
                )
            )
        return self.length_m + extension_m


_UNITS: tuple[tuple[str, Literal["N m", "N m/rad"]], ...] = (
    ("preload_nm", "N m"),
    ("stiffness_nm_per_rad", "N m/rad"),
    ("friction_nm", "N m"),
)
_IF_MILLIMETRE = message(StickProblems.remedy, what="in_millimetres")


def _within(value: object, low: float, high: float) -> bool:
    return isinstance(value, Real) and math.isfinite(value) and low <= float(value) <= high


def _number(value: object) -> str:
    return f"{float(value):.4g}" if isinstance(value, Real) else repr(value)


def _like(given: ArrayLike, values: Array) -> float | Array:
    """A float for one number, an array for several."""
    return float(values) if np.ndim(given) == 0 else values
