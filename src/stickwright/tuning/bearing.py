"""Whether the stick sits turned, mirrored or a quarter round under the player's hand.

Signs: an error is produced minus cued direction, plus is anticlockwise as the player sees the stick.
The base is turned by the same angle in the same sense as the error; software turns the output by the
opposite angle. An error in some directions only is missing reach there, not rotation.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy.special import stdtrit

from stickwright.model.estimate import Estimate
from stickwright.model.recorded import Finding
from stickwright.trace.reach import circular_mean
from stickwright.tuning.asked import Stretch

__all__ = ["Bearing", "bearing", "push_direction"]

Array = NDArray[np.float64]
QUARTER = math.pi / 2
NEAR = math.radians(20)  # "Near" a quarter or half turn; a base is seldom put on 20 degrees askew unseen. (Judgement.)
WORTH_TURNING = math.radians(3)  # Below this a base cannot be turned by hand with any accuracy. (Judgement.)


@dataclass(frozen=True)
class Bearing:
    """How the output must be turned.

    Parameters
    ----------
    rotation_rad : Estimate
        To be added to the produced direction; 0 with a reason when it cannot be told.
    mirrored : bool
        One axis runs the wrong way.
    turn_base : str
        What to do with the base first, one sentence.
    findings : tuple of Finding
        Mirror, quarter turn, reach taken for rotation, no pushes.
    """

    rotation_rad: Estimate
    mirrored: bool
    turn_base: str
    findings: tuple[Finding, ...] = ()


def push_direction(stretch: Stretch) -> tuple[float, float] | None:
    """Produced and cued direction of one push.

    Parameters
    ----------
    stretch : Stretch
        Output about the centre, with the place asked for.

    Returns
    -------
    produced_rad, cued_rad : float, or None
        Direction of the mean of those samples that lie beyond half of the push's own peak; None when no
        direction was asked for, or the stick hardly moved (0.02 of full output).

    Examples
    --------
    >>> out = np.linspace(0.0, 0.8, 9)[:, None]
    >>> push = Stretch(np.arange(9) * 0.1, out * [0.0, 1.0], np.tile([0.0, 1.0], (9, 1)))
    >>> [round(float(np.degrees(angle))) for angle in push_direction(push)]
    [90, 90]
    """
    if stretch.target_xy is None or len(stretch.xy) == 0:
        return None
    cued = stretch.target_xy[0]
    length = np.hypot(stretch.xy[:, 0], stretch.xy[:, 1])
    peak = float(length.max())
    if math.hypot(*cued) < 1e-6 or peak < 0.02:
        return None
    x, y = stretch.xy[length >= 0.5 * peak].mean(axis=0)
    return math.atan2(y, x), math.atan2(cued[1], cued[0])


def _wrapped(angle_rad: Array | float) -> Array:
    return np.asarray((np.asarray(angle_rad) + math.pi) % (2 * math.pi) - math.pi, dtype=np.float64)


def _by_direction(errors: Array, cued: Array) -> Array:
    """Mean error for each cued direction; directions within 15 degrees are one."""
    step = math.radians(15)
    place = np.round(np.mod(cued, 2 * math.pi) / step).astype(int) % 24
    return np.array([circular_mean(errors[place == one]).mean_rad for one in np.unique(place)])


def _map_determinant(produced: Array, cued: Array) -> float:
    """Determinant of the 2x2 map from cued to produced unit vectors; NaN when the cues lie on one line."""
    asked = np.column_stack([np.cos(cued), np.sin(cued)])
    if float(np.linalg.eigvalsh(asked.T @ asked / len(asked))[0]) < 0.05:
        return math.nan
    got = np.column_stack([np.cos(produced), np.sin(produced)])
    return float(np.linalg.det(np.linalg.lstsq(asked, got, rcond=None)[0]))


def bearing(produced_rad: ArrayLike, cued_rad: ArrayLike) -> Bearing:
    """Rotation of the output from pushes with a cued direction.

    Parameters
    ----------
    produced_rad, cued_rad : array, shape (n,)
        Direction of each push as it came and as it was asked for, radians.

    Returns
    -------
    Bearing
        Minus the circular mean of produced minus cued, with a 95 % interval from the directions as units
        (from the pushes when there are fewer than three directions), or the reason why none is set.

    Notes
    -----
    Source: circular mean [zar-circular]. Assumed: errors spread over much less than a half turn, so that
    Student's t holds for their mean.

    Examples
    --------
    >>> cued = np.radians([0, 90, 180, 270])
    >>> found = bearing(cued + np.radians([19, 21, 20, 20]), cued)
    >>> round(float(np.degrees(found.rotation_rad.value)))
    -20
    >>> found.turn_base.split(",")[0]
    'Turn the stick base 20 deg anticlockwise first'
    """
    produced, cued = (np.asarray(values, dtype=np.float64).ravel() for values in (produced_rad, cued_rad))
    if len(produced) == 0:
        why = "no push with a cued direction"
        text = f"Rotation is left alone: {why}. Record pushes with their cues, at least right, forward, left and back."
        return _left_alone(why, 0, f"Base: not known, {why} was recorded.", Finding("note", "rotation", text))
    if _map_determinant(produced, cued) < 0.0:
        return _mirrored(produced, cued)
    errors = _wrapped(produced - cued)
    mean = circular_mean(errors)
    if mean.resultant_length < 0.7:
        text = (
            "The pushes went in directions that do not follow their cues (resultant length "
            f"{mean.resultant_length:.2f}); no rotation was set. Check that the cues belong to this recording."
        )
        finding = Finding("query", "rotation", text)
        return _left_alone("directions do not follow the cues", len(errors), "Base: not known.", finding)
    groups = _by_direction(errors, cued)
    away = np.sign(mean.mean_rad) * groups
    if len(groups) >= 3 and abs(mean.mean_rad) > WORTH_TURNING and _one_sided(away, abs(mean.mean_rad)):
        text = (
            f"Only {int((away >= 0.5 * abs(mean.mean_rad)).sum())} of {len(groups)} cued directions come out turned: "
            "that is missing reach there, not a turned stick. No rotation was set; the range per direction helps."
        )
        return _left_alone(
            "the error is in some directions only", len(errors), "Leave the base as it is: the error is one of reach, "
            "in some directions only.", Finding("query", "reach, not rotation", text),
        )  # fmt: skip
    return _turned(mean.mean_rad, errors, groups)


def _one_sided(away: Array, size_rad: float) -> bool:
    return int((away >= 0.5 * size_rad).sum()) < 2 / 3 * len(away)


def _left_alone(why: str, n: int, turn_base: str, finding: Finding, mirrored: bool = False) -> Bearing:
    rotation = Estimate.unbounded(0.0, why, n=n, assumed="stick mounted straight")
    return Bearing(rotation, mirrored, turn_base, (finding,))


def _mirrored(produced: Array, cued: Array) -> Bearing:
    # A mirror sends direction c to 2m - c, m the line that stays: produced plus cued is the same for all pushes.
    line = float(np.mod(circular_mean(produced + cued).mean_rad, 2 * math.pi)) / 2
    what = (
        ("forward and back are swapped: the sign of the y axis is wrong", 0.0),
        ("x and y are swapped", math.pi / 4),
        ("left and right are swapped: the sign of the x axis is wrong", math.pi / 2),
        ("x and y are swapped and both signs are wrong", 3 * math.pi / 4),
    )
    words = min(what, key=lambda pair: abs(math.remainder(line - pair[1], math.pi)))[0]
    text = (
        f"The output is mirrored; {words}. Turning cannot put that right: correct the axis in the driver, the hub or "
        "the game, then record again."
    )
    turn = "Do not turn the base: the output is mirrored, correct the axis first."
    return _left_alone("the output is mirrored", len(cued), turn, Finding("fault", "mirror", text), mirrored=True)


def _turned(error_rad: float, errors: Array, groups: Array) -> Bearing:
    units = groups if len(groups) >= 3 else errors
    about = _wrapped(units - error_rad)
    n = len(errors)
    if len(units) < 2:
        rotation = Estimate.unbounded(-error_rad, "one push only", n=n)
    else:
        half = float(stdtrit(len(units) - 1, 0.975)) * float(np.std(about, ddof=1)) / math.sqrt(len(units))
        rotation = Estimate(-error_rad, -error_rad - half, -error_rad + half, n=n)
    degrees = f"{abs(math.degrees(error_rad)):.0f} deg"
    sense, against = ("anticlockwise", "clockwise") if error_rad > 0 else ("clockwise", "anticlockwise")
    quarters = round(error_rad / QUARTER)
    if quarters != 0 and abs(error_rad - quarters * QUARTER) <= NEAR:
        seat = "half a turn round" if abs(quarters) == 2 else f"turned a quarter {sense}"
        cause = "it is mounted back to front" if abs(quarters) == 2 else "look at its mounting, or for swapped axes"
        text = (
            f"Every push comes out {degrees} {sense} of its cue: the stick is {seat}; {cause}. Put the base right "
            "before anything else is tuned, and record again."
        )
        turn = f"The stick is {seat}: turn the base {degrees} {sense} first, or correct the axes."
        return Bearing(rotation, False, turn, (Finding("fault", "quarter turn", text),))
    unsure = rotation.has_interval and rotation.low <= 0.0 <= rotation.high
    if abs(error_rad) < WORTH_TURNING or unsure:
        return Bearing(
            rotation, False, f"Leave the base as it is: pushes come within {degrees} of their cue on average."
        )
    turn = (
        f"Turn the stick base {degrees} {sense} first, the same way as the player's error, and record the pushes "
        f"again; until then the output is turned {degrees} {against}."
    )
    return Bearing(rotation, False, turn)
