"""How wide an aimed movement really is: one figure for the bits of a set-up and the bits of aimed movements."""

from __future__ import annotations

__all__ = ["EFFECTIVE_WIDTHS"]

EFFECTIVE_WIDTHS = 4.133
"""Standard deviations in the effective width: sqrt(2 pi e), the printed digits of ISO 9241-411 [iso-9241-411]."""
