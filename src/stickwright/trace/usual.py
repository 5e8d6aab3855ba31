"""What is usual for an unaffected adult, for the figures that somebody has published; each is told with its source."""

from __future__ import annotations

from stickwright.codes.message import Message, message
from stickwright.codes.usual import Usual

__all__ = ["TAPPING", "THROUGHPUT", "usual_tremor"]

THROUGHPUT = message(Usual.throughput, thumbstick_bits=2.4, joystick_bits=1.8, mouse_bits=(3.7, 4.9))
"""Bits a second: means of groups in published trials, of the cursor that each device moved: thumbstick 2.39 and mouse 4.73
[ramcharitar-teather-2017], joystick 1.8 and mouse 4.9 [mackenzie-2001], mouse 3.7 to 4.9 over several studies
[soukoreff-2004]. Not norms for a patient: another body part, device or task has other values."""

TAPPING = message(Usual.tapping, low_hz=4.5, high_hz=6.0, time_s=10.0)
"""Groups of adults at a key or lever, 10 s at a time: [ruff-parker-1993], [fepsy-tapping]. Other body parts are slower."""

_ACCELERATIONS = ("m/s2", "m/s^2", "m/s²", "m s-2")


def usual_tremor(unit: str) -> Message:
    """What is usual for an unaffected adult, as far as it is published for this unit.

    Parameters
    ----------
    unit : str
        'share' of full output, or the recording's own.

    Notes
    -----
    97 people of 15 to 80 years, 7 Hz to the age of 70 and 6 Hz after [wade-1982]; between 6 and 12 Hz [lakie-2015]. As an
    acceleration 0.0015 to 0.035 g peak at the strongest frequency, most often 0.01 g [wade-1982], over the root of 2
    for the rms. For a stick none was found in a search of the literature.

    Examples
    --------
    >>> dict(usual_tremor("px").params)["low_hz"]
    6.0
    """
    return message(
        Usual.tremor,
        low_hz=6.0,
        high_hz=12.0,
        mostly_hz=7.0,
        of="acceleration" if unit in _ACCELERATIONS else "stick" if unit == "share" else "other",
    )
