"""A switch or a controller's button at one control site, for one action: which rules it breaks, and what was not tried."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.inputs import Role
from stickwright.codes.message import Name, Text, Topic
from stickwright.codes.sites import Part

__all__ = ["Often", "Presses", "Spasms"]

Often = Literal["repeated", "held", "frequent", "uncounted", "rare"]
"""Why the stricter limit of effort holds; `uncounted` where nobody counted the presses."""
Spasms = Literal["tried", "by_force"]
"""How it is known how often a switch goes off with a spasm."""


class Presses(Topic):
    """Clauses about "it", the switch or button, without full stop; they stand behind the name of site and device."""

    @abstractmethod
    def button(self, *, controller: Name, role: Role) -> str:
        """A button of a controller, as the name of what is pressed."""

    @abstractmethod
    def needs_stick(self, *, action: Name, axes: Literal[1, 2]) -> str:
        """The action needs a stick, in one axis or two, and a press has no direction."""

    @abstractmethod
    def chord(self, *, action: Name) -> str:
        """A chord is pressed by the actions that it is made of."""

    @abstractmethod
    def all_or_nothing(self, *, action: Name, levels: int | None) -> str:
        """A switch is on or off, and the game uses levels in between (None: it may)."""

    @abstractmethod
    def not_benched(self, *, pressed: Text) -> str:
        """Nobody measured its force."""

    @abstractmethod
    def too_heavy(
        self,
        *,
        force_n: float,
        effort_share: float | None,
        comfortable_n: float,
        assumed: bool,
        limit_share: float,
        often: Often,
    ) -> str:
        """It needs a share of comfortable force above the limit for such a press (None: there is none); the share is never
        printed as the limit itself."""

    @abstractmethod
    def resting_presses(
        self,
        *,
        force_n: float,
        rest_n: float,
        rest_assumed: bool,
        involuntary_n: float,
        involuntary_assumed: bool,
        wanted_n: float,
    ) -> str:
        """Its force is too near to the resting force and the involuntary force (rms) of the site; so much would do."""

    @abstractmethod
    def travel_short(self, *, travel_m: float, able_m: float) -> str:
        """Travel to activation is more than the site can push in."""

    @abstractmethod
    def travel_untried(self, *, travel_m: float) -> str:
        """Nobody tried whether the site pushes in so far."""

    @abstractmethod
    def senses_unknown(self) -> str:
        """A proximity switch: at what distance it senses is not known; measure it."""

    @abstractmethod
    def clear_unknown(self, *, senses_m: float) -> str:
        """A proximity switch: how far the site moves is not known."""

    @abstractmethod
    def not_clear(self, *, senses_m: float, able_m: float) -> str:
        """A proximity switch: the site cannot move clear of it."""

    @abstractmethod
    def too_small(self, *, part: Part, size_m: float, least_m: float) -> str:
        """Smaller across than usual for this kind of site (common practice)."""

    @abstractmethod
    def too_slight(self, *, part: Part, comfortable_n: float, force_n: float) -> str:
        """Its force is so small against the site's that it may break."""

    @abstractmethod
    def size_assumed(self, *, pressed: Text, hit_share: float) -> str:
        """Its size was not measured: so many presses are taken to land on it."""

    @abstractmethod
    def lands(
        self,
        *,
        hit_share: float,
        face_m: tuple[float, ...],
        landing_m: float,
        assumed: bool,
        wanted_m: float,
        least_share: float | None,
    ) -> str:
        """Share of presses that land on a face (a diameter, or width and length) at that scatter, and the diameter that would catch 95
        of 100; below the least share (`least_share`), which is never printed as the share itself, else how many miss."""

    @abstractmethod
    def uncounted_rate(self, *, count_per_min: float) -> str:
        """How many presses a minute can be kept up was not counted."""

    @abstractmethod
    def release_fills(self, *, count_per_min: float, release_s: float, busy_s: float, most_share: float) -> str:
        """Letting go alone takes too much of the busiest minute."""

    @abstractmethod
    def too_many(
        self,
        *,
        count_per_min: float,
        sustained_per_min: float,
        slowed_share: float,
        fastest_per_s: float,
        release_s: float | None,
    ) -> str:
        """More presses than can be kept up: half of the rate of ten seconds, slowed beside another site (0: not), less because
        letting go takes long (`release_s`)."""

    @abstractmethod
    def slow_release(self, *, release_s: float) -> str:
        """Letting go took up to that long: now and then it stays down into the next press."""

    @abstractmethod
    def hold_unsaid(self, *, action: Name) -> str:
        """How long the action must be held is not in the game's file."""

    @abstractmethod
    def hold_untaken(self, *, held_s: float) -> str:
        """The action needs holds of that length; how long the site can hold was not measured."""

    @abstractmethod
    def hold_too_long(
        self, *, held_s: float, held_share: float, limit_share: float, able_s: float, toggle: bool
    ) -> str:
        """Holds longer than the limit; the share is never printed as the limit itself. `toggle`: the game offers press on, press off."""

    @abstractmethod
    def reaction_untaken(self, *, action: Name, given_s: float) -> str:
        """The game gives so long for the action; how soon a press comes after its cue was not measured."""

    @abstractmethod
    def too_late(self, *, action: Name, given_s: float, reaction_s: float, wait_s: float) -> str:
        """The press comes later than the game allows, the wait before it (0: none) included."""

    @abstractmethod
    def always_on(self, *, force_n: float) -> str:
        """Involuntary force keeps passing its activation force."""

    @abstractmethod
    def goes_off(self, *, rate_per_min: float, cause: Text, limit_per_min: float, costly: bool) -> str:
        """Unintended activations above the limit, and by what; `costly`: one does harm in this game."""

    @abstractmethod
    def by_involuntary(self) -> str:
        """By involuntary force."""

    @abstractmethod
    def by_spasms(self, *, fires_share: float, spasms_per_min: float, how: Spasms) -> str:
        """With such a share of the spasms, as tried or by their force."""

    @abstractmethod
    def spasms_uncounted(self, *, fires_share: float) -> str:
        """It goes off in such a share of spasms, and nobody counted the spasms."""

    @abstractmethod
    def spasms_untried(self, *, spasms_per_min: float) -> str:
        """Whether it goes off with the spasms was not tried."""

    @abstractmethod
    def spasms_no_force(self) -> str:
        """Spasms were noted without their force, so those that would press it are not counted."""

    @abstractmethod
    def spasms_assumed(self, *, site: Name, fires_share: float) -> str:
        """By the force of the spasms it is taken to go off in such a share of them."""

    @abstractmethod
    def assumption(self, *, what: Text, value: Text, why: Text) -> str:
        """An assumed figure: what it is, its value, why it stands in."""

    @abstractmethod
    def count_average(self, *, action: Name, count_per_min: float) -> str:
        """Presses in the busiest minute: the average stands in."""

    @abstractmethod
    def count_usual(self, *, action: Name, count_per_min: float) -> str:
        """Presses in the busiest minute: nobody counted."""

    @abstractmethod
    def button_force(self, *, controller: Name, force_n: float) -> str:
        """Force of a controller's buttons that nobody measured."""

    @abstractmethod
    def moving_assumed(self, *, site: Name, why: Text) -> str:
        """Moving between switches at a site: why a usual figure stands in."""

    @abstractmethod
    def spacing_assumed(self, *, site: Name) -> str:
        """Distance between switches at a site: their own width, since the size is not known."""

    @abstractmethod
    def intercept_usual(self) -> str:
        """The time before a move was not measured; healthy adults' hands stand in."""

    @abstractmethod
    def line_usual(self) -> str:
        """Moving between switches was not timed; healthy adults' hands stand in: good for ranking places,
        not for predicting this player."""

    @abstractmethod
    def in_state(self, *, state: Name, why: Text) -> str:
        """In one state of the player: why it fails."""
