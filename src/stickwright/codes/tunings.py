"""The tuning of a stick: what each step of the response does, and what the recordings cannot tell."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Setting", "Tunings"]

Setting = Literal["rotation", "range", "curve", "dead_zone"]
"""What a game may let one set besides the sensitivity."""


class Tunings(Topic):
    """Steps in the order in which they act: centre, rotation (see `Bases`), range, dead zone, curve, filter, outer limit."""

    @abstractmethod
    def centre_left(self, *, why: Text) -> str:
        """Step: the centre is not changed, and why (a clause)."""

    @abstractmethod
    def centre(self, *, right_share: float, forward_share: float) -> str:
        """Step: what the stick gives at rest (plus is right, forward) is subtracted."""

    @abstractmethod
    def range_left(self) -> str:
        """Step: the range is not changed, since reach is not known all round."""

    @abstractmethod
    def range(
        self, *, least_share: float, least_rad: float, most_share: float, most_rad: float,
        least_factor: float, most_factor: float, limit_factor: float | None,
    ) -> str:  # fmt: skip
        """Step: least and greatest deflection reached (share of full output) and where; the sensitivities by direction that let
        the player's own range fill the output, and the limit where they meet it."""

    @abstractmethod
    def dead_zone(self, *, size: Text, own_share: float | None, jump_share: float | None) -> str:
        """Step: the dead zone (`size`, one of the next three), the game's own (None: not known), and where the output starts
        above it (None: it starts at 0)."""

    @abstractmethod
    def zone_assumed(self, *, radius_share: float, why: Text) -> str:
        """A dead zone that was not taken from a recording, and what sets it (a clause)."""

    @abstractmethod
    def zone_none(self, *, why: Text) -> str:
        """No dead zone is set, and why (a clause)."""

    @abstractmethod
    def zone_measured(self, *, radius_share: float, samples: int) -> str:
        """A dead zone as a tolerance limit: 95% of rest inside, at 95% confidence, from so many independent samples."""

    @abstractmethod
    def curve_straight(self, *, why: Text) -> str:
        """The response curve is a straight line, and why (a clause); begins a table cell or stands after "Curve:"."""

    @abstractmethod
    def curve_bent(
        self, *, centre_share: float, growth_share: float, task: Literal["hold", "aim"], steep_factor: float
    ) -> str:
        """The response curve: scatter at the centre and its increase up to full deflection, the task it was recorded in, how many
        times as steep as a straight line it starts; begins a table cell or stands after "Curve:"."""

    @abstractmethod
    def curve(self, *, curve: Text) -> str:
        """Step: the curve (one of the two above)."""

    @abstractmethod
    def no_filter(self) -> str:
        """Step: no filter is chosen, since no following was recorded."""

    @abstractmethod
    def outer_limit(self) -> str:
        """Step: the output stays inside the circle of full output."""

    @abstractmethod
    def game_not_yet(self) -> str:
        """Step: nothing is to be set in the game yet, since the recordings have a fault."""

    @abstractmethod
    def game_unknown(self, *, dead_zone_share: float, sensitivity_share: float, lost: Text) -> str:
        """Step: what the game lets one set is not known; the two numbers in case it is these two."""

    @abstractmethod
    def game_beyond(self, *, settings: tuple[Setting, ...], flat: bool) -> str:
        """Step: what to set in a game that offers more than two numbers; `flat`: its sensitivity stays at 100%."""

    @abstractmethod
    def game(self, *, dead_zone_share: float | None, sensitivity_share: float | None, lost: Text) -> str:
        """Step: the two numbers to set in the game; None for one that it does not offer."""

    @abstractmethod
    def lost(
        self, *, off_centre: bool, rotated_rad: float | None, least_factor: float | None, most_factor: float | None,
        uneven: bool, unfiltered: bool, rms_share: float,
    ) -> str:  # fmt: skip
        """What a game with two numbers cannot do: rest stays off centre, the output stays rotated, one sensitivity in all
        directions, precision differs along the range, nothing is filtered; the difference of the output (rms)."""

    @abstractmethod
    def nothing_lost(self, *, rms_share: float) -> str:
        """Two numbers do all that is needed but for rounding; the difference of the output (rms)."""

    @abstractmethod
    def foreign_unit(self, *, recording: Name, unit: Name) -> str:
        """Finding: a recording in another unit than share of full output was not used."""

    @abstractmethod
    def other_stick(
        self, *, recording: Name, its_site: Name | None, its_stick: Name | None, site: Name, stick: Name
    ) -> str:
        """Finding: a recording made at another site or on another stick (None: the same) was not used."""

    @abstractmethod
    def clock(self, *, recording: Name, left_out: int, samples: int) -> str:
        """Finding: samples without a time, or with one not later than before, were left out."""

    @abstractmethod
    def one_axis(self, *, recording: Name, missing: Literal["x", "y", "both"]) -> str:
        """Finding: a recording without an axis of the stick was not used."""

    @abstractmethod
    def in_recording(self, *, recording: Name, told: Text) -> str:
        """Finding: what was noticed in one recording."""

    @abstractmethod
    def rest_by_stillness(self) -> str:
        """Finding: no rest was asked for; moments in which the stick lay still were used instead."""

    @abstractmethod
    def no_rest(self) -> str:
        """Finding: no rest was recorded, so centre and dead zone are not changed."""

    @abstractmethod
    def wide_dead_zone(self, *, radius_share: float) -> str:
        """Finding: the dead zone would be so large that something else must be wrong."""

    @abstractmethod
    def short_rest(self, *, why: Text, largest_share: float, longer_factor: float) -> str:
        """Finding: no dead zone can be set (`why` is a clause); the largest distance seen; how many times as long to record."""

    @abstractmethod
    def frozen_rest(self) -> str:
        """Finding: the stick gave exactly the same at every sample of rest."""

    @abstractmethod
    def straight_curve(self) -> str:
        """Finding: no clear increase in scatter with deflection, so the curve stays straight."""

    @abstractmethod
    def few_levels(self, *, why: Text) -> str:
        """Finding: scatter at too few levels (`why` is a clause), so the curve stays straight; what to record."""

    @abstractmethod
    def curve_limited(self) -> str:
        """Finding: the curve would start more than three times as steep as a straight line, and is limited to three."""

    @abstractmethod
    def no_range(self, *, directions: int) -> str:
        """Finding: reach is known in so few directions that the range is not changed; what to record."""

    @abstractmethod
    def gain_limit(self, *, directions_rad: tuple[float, ...], reach_share: tuple[float, ...]) -> str:
        """Finding: reach in these directions is below a third of full output; sensitivity is limited to three."""

    @abstractmethod
    def why_no_rest(self) -> str:
        """Clause, why centre or dead zone are not set: no rest was recorded."""

    @abstractmethod
    def why_unsettled(self) -> str:
        """Clause, why centre or dead zone are not set: in no rest did the stick settle."""

    @abstractmethod
    def why_short_rest(self, *, samples: int, needed: int, coverage_share: float, confidence_share: float) -> str:
        """Clause, why no dead zone is set: the rest is worth so few independent samples."""

    @abstractmethod
    def why_involuntary(self, *, radius_share: float, rest_share: float | None, rest_why: Text | None) -> str:
        """Clause, what sets the dead zone: involuntary movement in play; what rest needs, or why that is not known."""

    @abstractmethod
    def why_few_levels(self, *, levels: int) -> str:
        """Clause, why there is no curve: scatter was recorded at so few levels of deflection."""

    @abstractmethod
    def why_no_increase(self) -> str:
        """Clause, why the curve is straight: no clear increase in scatter with deflection."""

    @abstractmethod
    def why_one_each(self) -> str:
        """Clause, why a reach has no interval: one reading in each direction."""

    @abstractmethod
    def assumed_centred(self) -> str:
        """Clause, what is assumed where no rest tells."""

    @abstractmethod
    def assumed_no_zone(self) -> str:
        """Clause, what is assumed where no rest tells."""

    @abstractmethod
    def assumed_involuntary(self) -> str:
        """Clause, what is assumed: the dead zone is worked out from the involuntary force."""

    @abstractmethod
    def assumed_even(self) -> str:
        """Clause, what is assumed where scatter is known at too few levels: the same at every deflection."""

    @abstractmethod
    def not_recorded(self, *, stick: Name) -> str:
        """Clause, why nothing is to be set in a game for a stick: no recording on it."""

    @abstractmethod
    def not_usable(self, *, stick: Name) -> str:
        """Clause, why nothing is to be set in a game for a stick: its recordings cannot be used yet."""
