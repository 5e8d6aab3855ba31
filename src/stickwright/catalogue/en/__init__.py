"""English, as practitioners in Britain write it."""

from __future__ import annotations

from stickwright.catalogue.writer import Writer

__all__ = ["English", "writer"]


class English(Writer):
    """Numbers, plurals and lists of British English."""

    tag = "en-GB"
    unknown = "not known"
    up_to = "to"
    assumed = "assumed"

    def plural(self, count: float, *, one: str, other: str) -> str:
        """The form that goes with a count.

        Parameters
        ----------
        count : float
            As printed: 1.0 is "other".
        one, other : str
            "1 file", "2 files".
        """
        return one if self.form(count) == "one" else other


writer = English()
