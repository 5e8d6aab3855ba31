"""The best use of a game that offers a dead zone and a sensitivity and nothing else.

Assumed of such a game: inside its dead zone nothing, beyond it the rest of the travel stretched to start
at 0, multiplied by the sensitivity, and cut at full output. Games differ; the page says try and see.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.message import Message, message
from stickwright.codes.tunings import Tunings
from stickwright.model.game import DEAD_ZONE, SENSITIVITY
from stickwright.model.response import SimpleSettings
from stickwright.tuning.shaping import Response, gain_towards, shaped

__all__ = ["game_output", "simple_settings"]

Array = NDArray[np.float64]
_TOP_SENSITIVITY = 4.0


def game_output(deflection: Array, dead_zone: float, sensitivity: float) -> Array:
    """What a game with only a dead zone and a sensitivity makes of a deflection.

    Parameters
    ----------
    deflection : array, shape (n,)
        Share of full output of the stick, 0 or more.
    dead_zone : float
        Share of full output, 0 to below 1.
    sensitivity : float
        1 leaves the stick as it is, dimensionless.

    Returns
    -------
    array, shape (n,)
        0 to 1.

    Examples
    --------
    >>> game_output(np.array([0.1, 0.4, 0.7, 1.0]), 0.1, 1.5).round(2)
    array([0. , 0.5, 1. , 1. ])
    """
    return np.clip(sensitivity * (np.asarray(deflection) - dead_zone) / (1.0 - dead_zone), 0.0, 1.0)


def simple_settings(
    settings: Response, reach_share: tuple[float, ...] = (), offers: Sequence[str] = ()
) -> SimpleSettings:
    """The two numbers that come nearest to the whole response.

    Parameters
    ----------
    settings : Response
        The whole response.
    reach_share : tuple of float
        Reach at each of the response's directions, share of full output; the whole travel when empty.
    offers : sequence of str
        What the game lets you change; when it is only one of 'dead zone' and 'sensitivity', the other stays
        as it is (0 and 100 percent).

    Returns
    -------
    SimpleSettings
        Dead zone and sensitivity in whole percent, by least squares over the player's own range in every
        direction, the dead zone never smaller than rest needs: such a game takes no offset off, so offset and
        radius together; rms difference; what is lost.

    Notes
    -----
    Source: least squares on the response's own curve. The inner jump is left out, since it serves only to
    pass the game's own dead zone, which here is the one being set. Assumed: a game as in `game_output`.

    Examples
    --------
    >>> found = simple_settings(Response(dead_zone=0.10))
    >>> found.dead_zone_percent, found.sensitivity_percent, round(found.rms_difference, 3)
    (10.0, 100.0, 0.0)
    """
    if settings.gain:
        towards = np.linspace(0.0, 2.0 * math.pi, 36, endpoint=False)
        gain = gain_towards(towards, settings.direction_rad, settings.gain)
        reach = np.minimum(
            1.0, gain_towards(towards, settings.direction_rad, reach_share or np.ones(len(settings.gain)))
        )
    else:
        gain, reach = np.ones(1), np.ones(1)
    deflection = (reach[:, None] * np.linspace(0.0, 1.0, 101)[None, :]).ravel()
    stretched = np.repeat(gain, 101) * deflection
    line = np.column_stack([stretched, np.zeros_like(stretched)])
    wanted = np.minimum(shaped(line, settings.dead_zone, 0.0, settings.curve_ratio)[:, 0], 1.0)
    dead_zone, sensitivity = _least_squares(deflection, wanted, _rest_needs(settings), offers)
    off = game_output(deflection, dead_zone, sensitivity) - wanted
    rms = math.sqrt(float((off**2).mean()))
    return SimpleSettings(
        dead_zone_percent=float(round(100.0 * dead_zone)),
        sensitivity_percent=float(round(100.0 * sensitivity)),
        rms_difference=rms,
        lost=_lost(settings, rms),
        rest_offset_share=math.hypot(*settings.centre_xy),
        radius_share=_radius(settings),
        reach_share=(float(reach.min()), float(reach.max())),
    )


def _radius(settings: Response) -> float:
    """The dead zone as a share of full output, where the range is not stretched."""
    return settings.dead_zone / min(settings.gain or (1.0,))


def _rest_needs(settings: Response) -> float:
    """Dead zone about (0, 0), in whole per cent, that covers rest where neither offset nor range can be set."""
    return min(0.9, math.ceil(100.0 * (math.hypot(*settings.centre_xy) + _radius(settings)) - 1e-9) / 100.0)


def _least_squares(deflection: Array, wanted: Array, least_zone: float, offers: Sequence[str]) -> tuple[float, float]:
    """Best pair in steps of one percent: coarse over the whole field, then every step about the best."""
    one_only = (DEAD_ZONE in offers) != (SENSITIVITY in offers)
    keep_zone = one_only and SENSITIVITY in offers
    keep_level = one_only and DEAD_ZONE in offers

    def best(zones: Array, levels: Array) -> tuple[float, float]:
        found = (math.inf, 0.0, 1.0)
        for zone in np.zeros(1) if keep_zone else np.round(zones, 2):
            rows = np.ones(1) if keep_level else levels
            line = np.maximum(deflection - zone, 0.0) / (1.0 - zone)
            off = rows[:, None] * line[None, :]
            np.minimum(off, 1.0, out=off)  # in place: most of a tuning's time was the room for four such tables
            off -= wanted
            off *= off
            square = off.mean(axis=1)
            row = int(np.argmin(square))
            found = min(found, (float(square[row]), float(zone), float(rows[row])))
        return found[1], found[2]

    zone, level = best(np.arange(least_zone, 0.91, 0.03), np.arange(10, 100 * _TOP_SENSITIVITY + 1, 10) / 100)
    near = np.round(zone + np.arange(-5, 6) / 100, 2)
    levels = np.round(level + np.arange(-9, 16) / 100, 2)
    return best(near[(near >= least_zone) & (near < 0.95)], levels[levels <= _TOP_SENSITIVITY])


def _lost(settings: Response, rms: float) -> Message:
    off_centre = math.hypot(*settings.centre_xy) > 0.005
    rotated = abs(math.degrees(settings.output_rotation_rad)) >= 1.0
    varied = bool(settings.gain) and max(settings.gain) - min(settings.gain) > 0.1
    uneven, unfiltered = settings.curve_ratio > 0.0, settings.filter.kind != "none"
    if not (off_centre or rotated or varied or uneven or unfiltered):
        return message(Tunings.nothing_lost, rms_share=rms)
    return message(
        Tunings.lost,
        off_centre=off_centre,
        # The rotation that is not taken off is the error, against the output's own.
        rotated_rad=-settings.output_rotation_rad if rotated else None,
        least_factor=min(settings.gain) if varied else None,
        most_factor=max(settings.gain) if varied else None,
        uneven=uneven,
        unfiltered=unfiltered,
        rms_share=rms,
    )
