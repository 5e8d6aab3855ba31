"""Why a plan that was kept cannot be shown as it was, in English."""

from __future__ import annotations

from stickwright.codes.kept_plans import KeptPlans
from stickwright.codes.message import Name

__all__ = ["Texts"]


class Texts(KeptPlans):
    """Each a whole sentence."""

    def no_plan(self) -> str:
        return "This is not a plan that stickwright wrote."

    def other_format(self, *, kept: int, today: int) -> str:
        version = "an earlier" if kept < today else "a later"
        return f"This plan was kept by {version} version of stickwright, in format {kept}; this version shows format {today}."

    def other_parts(self, *, place: Name) -> str:
        return f"This plan was kept by another version of stickwright, which wrote something else at {place}."
