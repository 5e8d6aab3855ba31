"""Why a set-up does not fit, what limits one that does, and the one change that would help."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic
from stickwright.codes.sites import Part
from stickwright.codes.stand_ins import Form

__all__ = ["FitReasons", "Others"]

Others = Literal["none", "listed", "every", "every_needed"]
"""Which further directions: none, those listed, every other, every other that the game needs."""


class FitReasons(Topic):
    """Clauses that follow the name of a set-up or stand as a line of their own: no capital letter, no full stop."""

    @abstractmethod
    def cannot_lift(self, *, part: Part | None, tried: bool) -> str:
        """A touch surface: the control site cannot lift off it, or nobody has tried whether it can; resting there is input."""

    @abstractmethod
    def base_too_large(self, *, base_m: tuple[float, float], room_m: tuple[float, float], crosswise: bool) -> str:
        """The base is larger than the free space; `crosswise`: it would fit crosswise, but cannot be used that way."""

    @abstractmethod
    def stays_off_centre(self, *, stays_share: float) -> str:
        """It does not return to centre: how far out it stays by itself, as a share of its travel."""

    @abstractmethod
    def too_stiff_to_move(
        self, *, direction_rad: float, start_n: float, available_n: float, firm_n: float | None
    ) -> str:
        """The player cannot move it off its centre; `firm_n`: comfortable force without the flex of the mount."""

    @abstractmethod
    def too_stiff(
        self, *, direction_rad: float, full_n: float, start_n: float, available_n: float, firm_n: float | None, reach_m: float,
        reached_share: float,
    ) -> str:  # fmt: skip
        """Force limits: at full travel, off the centre, what the player has at the centre (none at the end of the movement
        range), and the share of travel reached."""

    @abstractmethod
    def travel_too_long(self, *, direction_rad: float, travel_m: float, reached_m: float, reached_share: float) -> str:
        """Movement range limits, not force."""

    @abstractmethod
    def short_in_others(self, *, reason: Text, others: Others, others_rad: tuple[float, ...]) -> str:
        """The reason in the weakest direction, and in which others it falls short too."""

    @abstractmethod
    def widened(self, *, reason: Text, gain_factor: float) -> str:
        """The reason in the weakest direction, and the sensitivity that makes up for it."""

    @abstractmethod
    def too_tiring(
        self, *, direction_rad: float, others: Others, others_rad: tuple[float, ...], effort_share: float, limit_share: float,
        duty_share: float,
    ) -> str:  # fmt: skip
        """Effort at the game's usual deflection over its limit; how much of the time the stick is used."""

    @abstractmethod
    def resting_force_holds(
        self,
        *,
        rest_n: float,
        lies_m: float | None,
        lies_share: float | None,
        remain_per_min: float | None,
        limit_per_min: float,
    ) -> str:
        """Too light: how far the resting force holds it off centre (None: at full travel), and what unintended activation
        remains (None: it is always on)."""

    @abstractmethod
    def always_on(self, *, involuntary_n: float, dead_zone_share: float, edge_n: float) -> str:
        """Too light: involuntary movement (rms) is about as strong as the stick even with the largest dead zone, whose edge is
        at `edge_n`."""

    @abstractmethod
    def spasms_pass(self, *, dead_zone_share: float, edge_n: float, often_per_min: float, limit_per_min: float) -> str:
        """Spasms get past the largest dead zone so often."""

    @abstractmethod
    def movement_passes(
        self, *, involuntary_n: float, dead_zone_share: float, edge_n: float, often_per_min: float, limit_per_min: float
    ) -> str:
        """Too light: involuntary movement (rms) gets past the largest dead zone so often."""

    @abstractmethod
    def too_low(self, *, part: Part, height_m: float, usual_m: float) -> str:
        """Too small for the control site: its contact point stands lower above the pivot than is usual."""

    @abstractmethod
    def topper_size(
        self, *, part: Part, topper: Name, width_m: float, usual_of: Form | None, low_m: float, high_m: float
    ) -> str:
        """A topper narrower or wider than is usual for the control site; `usual_of`: its width was not measured and is taken as
        that of its form."""

    @abstractmethod
    def too_delicate(self, *, part: Part, comfortable_n: float, full_n: float) -> str:
        """Much weaker than the control site: it may break."""

    @abstractmethod
    def limiting_direction(self, *, direction_rad: float, reached_share: float) -> str:
        """Nothing is broken; this direction comes nearest to its limit."""

    @abstractmethod
    def unsure_steadiness(self, *, most_per_min: float | None, dead_zone_share: float, limit_per_min: float) -> str:
        """Unintended activation could be up to so much (None: all the time); measure 60 s at rest."""

    @abstractmethod
    def steadiness(self, *, often_per_min: float, dead_zone_share: float) -> str:
        """Nothing is broken; unintended activation comes nearest to its limit."""

    @abstractmethod
    def effort(self, *, direction_rad: float, effort_share: float) -> str:
        """Nothing is broken; effort comes nearest to its limit."""

    @abstractmethod
    def nothing_near(self) -> str:
        """No rule comes near to its limit."""

    @abstractmethod
    def support_helps(self, *, rest_n: float, more: bool) -> str:
        """A support for the limb's weight (`more`: one that takes more of it) would make it fit; its resting force now."""

    @abstractmethod
    def filter_helps(self) -> str:
        """Software that fades out spasms would make it fit."""

    @abstractmethod
    def steadying_helps(self) -> str:
        """A support at the nearer joint that halves involuntary movement would make it fit."""

    @abstractmethod
    def version_helps(self, *, softer: bool, start_n: float, full_n: float) -> str:
        """A softer or stiffer version of the same stick would fit: force off the centre, force at full travel."""

    @abstractmethod
    def fewer_directions_help(self, *, directions_rad: tuple[float, ...]) -> str:
        """It would fit if the game did not need these directions."""

    @abstractmethod
    def longer_is_worse(self, *, direction_rad: float, best_factor: float) -> str:
        """A longer lever would lower the travel reached: movement range limits; the best lever ratio."""

    @abstractmethod
    def longer_is_same(self, *, direction_rad: float, best_factor: float) -> str:
        """A longer lever would hardly change the travel reached; the best lever ratio."""

    @abstractmethod
    def longer_is_better(
        self,
        *,
        direction_rad: float,
        further: bool,
        extra_m: float,
        from_share: float,
        to_share: float,
        best_factor: float,
    ) -> str:
        """The best shaft extension (`further`: beyond what is on it already), what it brings by the small-angle formula, and by
        how much travel grows."""
