"""What is usual for an unaffected adult, for the figures that somebody has published; each is told with its source."""

from __future__ import annotations

__all__ = ["TAPPING", "THROUGHPUT"]

THROUGHPUT = "usual for an unaffected adult, hand on the device: thumbstick about 2.4, joystick about 1.8, mouse 3.7 to 4.9 bit/s"
"""Means of groups in published trials, of the cursor that each device moved: thumbstick 2.39 and mouse 4.73
[ramcharitar-teather-2017], joystick 1.8 and mouse 4.9 [mackenzie-2001], mouse 3.7 to 4.9 over several studies
[soukoreff-2004]. Not norms for a patient: another body part, device or task has other values."""

TAPPING = "usual for an unaffected adult: 4.5 to 6 taps a second with the index finger, for 10 s"
"""Groups of adults at a key or lever, 10 s at a time: [ruff-parker-1993], [fepsy-tapping]. Other body parts are slower."""
