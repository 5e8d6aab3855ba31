"""What is usual for an unaffected adult, for the figures that somebody has published; each is told with its source."""

from __future__ import annotations

__all__ = ["TAPPING", "THROUGHPUT", "TREMOR", "TREMOR_ACCELERATION", "TREMOR_ON_A_STICK"]

THROUGHPUT = "usual for an unaffected adult, hand on the device: thumbstick about 2.4, joystick about 1.8, mouse 3.7 to 4.9 bit/s"
"""Means of groups in published trials, of the cursor that each device moved: thumbstick 2.39 and mouse 4.73
[ramcharitar-teather-2017], joystick 1.8 and mouse 4.9 [mackenzie-2001], mouse 3.7 to 4.9 over several studies
[soukoreff-2004]. Not norms for a patient: another body part, device or task has other values."""

TAPPING = "usual for an unaffected adult: 4.5 to 6 taps a second with the index finger, for 10 s"
"""Groups of adults at a key or lever, 10 s at a time: [ruff-parker-1993], [fepsy-tapping]. Other body parts are slower."""

TREMOR = "usual for an unaffected adult, hand held out: a peak between 6 and 12 Hz, mostly about 7 Hz"
"""97 people of 15 to 80 years, 7 Hz to the age of 70 and 6 Hz after [wade-1982]; between 6 and 12 Hz [lakie-2015]."""

TREMOR_ACCELERATION = "with 0.01 to 0.24 m/s2 rms at the peak, mostly about 0.07"
"""0.0015 to 0.035 g peak at the strongest frequency, most often 0.01 g [wade-1982], over the root of 2 for the rms."""

TREMOR_ON_A_STICK = "how large it is on a stick nobody has published"
"""None was found in a search of the literature."""
