"""A set-up at a site: what it is made of, how it does, what limits it."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name, Text, Topic

__all__ = ["Setups"]


class Setups(Topic):
    """The answer for one site, and what to look at before it is trusted."""

    @abstractmethod
    def named(self, *, stick: Name, topper: Name | None, extension: Name | None, raised_rad: float) -> str:
        """Stick (with its setting), and what is on it: topper, extension, slope built under the base (0: none)."""

    @abstractmethod
    def performance(
        self, *, weakest_share: float, weakest_rad: float, least_share: float | None, least_rad: float | None, least_used: bool,
        effort_share: float, unintended: Estimate, dead_zone_share: float,
    ) -> str:  # fmt: skip
        """How a set-up does, as the end of a sentence after its name: predicted share of travel in the weakest direction needed
        (1: full travel everywhere) and, where it is worse, in a direction that the game hardly uses (`least_used`) or does not
        use; effort; unintended activations a minute; dead zone (0: none)."""

    @abstractmethod
    def unintended(self, *, rate: Estimate) -> str:
        """Unintended activations a minute, with the upper end, by themselves: in a table."""

    @abstractmethod
    def chosen(
        self, *, setup: Text, site: Name, performance: Text, to_confirm: tuple[Text, ...], limit: Text | None, second: Text | None,
        liked: tuple[Text, ...],
    ) -> str:  # fmt: skip
        """The first choice; what is to be confirmed, or what limits it; the second choice; sticks that the player likes."""

    @abstractmethod
    def beside_headline(
        self,
        *,
        performance: Text,
        to_confirm: tuple[Text, ...],
        limit: Text | None,
        second: Text | None,
        liked: tuple[Text, ...],
    ) -> str:
        """As `chosen`, under a headline that names the set-up and the site."""

    @abstractmethod
    def none_fits(self, *, site: Name, nearest: Text, fails: tuple[Text, ...], helps: Text | None) -> str:
        """Nothing in the kit fits; the nearest, why it does not fit, and the one change that would help."""

    @abstractmethod
    def would_help(self, *, change: Text) -> str:
        """The one change that would help, as a sentence."""

    @abstractmethod
    def no_second(self, *, nearest: Text, limit: Text) -> str:
        """No other stick fits; which comes nearest, and what limits it."""

    @abstractmethod
    def second(self, *, setup: Text, performance: Text, more_bits: float, tie: bool) -> str:
        """The second choice: how it does, and how many bits more (minus: fewer) it has; `tie` where that counts as equal."""

    @abstractmethod
    def liked(self, *, stick: Name, setup: Text, fits: bool, limit: Text | None) -> str:
        """A stick that the player likes and that is not chosen: whether it fits, and what limits it."""

    @abstractmethod
    def whole_controller(self, *, site: Name, setup: Text, first: Name | None) -> str:
        """A set-up that is not the site's first by itself (`first`, None for none) is used, because the whole layout is better."""

    @abstractmethod
    def for_whole(self, *, site: Name, setup: Text, own: Text) -> str:
        """The set-up for the whole layout, then the site's own answer."""

    @abstractmethod
    def clearance(self, *, site: Name, asked: bool) -> str:
        """The treating team's agreement is still to be asked for (`asked`), or not recorded."""

    @abstractmethod
    def coarse(self, *, setup: Text, precision_bits: float) -> str:
        """Direction and speed will be coarse: what to do instead."""

    @abstractmethod
    def support(self, *, support: Name | None, before_n: float, after_n: float) -> str:
        """A support takes the resting force down; the plan counts on it."""

    @abstractmethod
    def long_hold(self, *, setup: Text, longest_s: float, hold_s: float, model: Text) -> str:
        """The game asks a longer hold than is to be expected, by which model."""

    @abstractmethod
    def duty(self, *, setup: Text, effort_share: float, duty_share: float, limit_share: float) -> str:
        """Effort above what is acceptable for that share of the time (Potvin 2012, Rohmert 1973)."""

    @abstractmethod
    def tired(
        self,
        *,
        stick: Name,
        lost_share: float,
        weakest_share: float,
        effort_share: float,
        fits: Literal["yes", "no", "unsaid"],
    ) -> str:
        """After as much tiring as was seen: travel in the weakest direction needed, effort, whether it would still fit."""

    @abstractmethod
    def kit_note(self, *, device: Name, note: Name) -> str:
        """What the kit notes of a device, in the practitioner's own words."""

    @abstractmethod
    def goals(self, *, goals: tuple[Name, ...]) -> str:
        """What the player wants, in their own words."""

    @abstractmethod
    def refused_by_team(self, *, site: Name) -> str:
        """A site that is left out because the treating team has not agreed to it."""

    @abstractmethod
    def nothing_planned(self) -> str:
        """No site could be planned: what to measure."""

    @abstractmethod
    def flexing_mount(self, *, site: Name, after: Name, before: Name) -> str:
        """Another stick does better because the mount flexes."""

    @abstractmethod
    def unsettled(self, *, sites: tuple[Name, ...], rounds: int, safe: bool) -> str:
        """Stick and mount go on changing each other; `safe`: the plan counts on a mount that flexes no less than the real one."""

    @abstractmethod
    def turn_carried_over(self, *, site: Name, turn_rad: float, source: Text) -> str:
        """The turn of the base (anticlockwise from above) comes from another stick's recordings."""

    @abstractmethod
    def nothing_read(self, *, site: Name) -> str:
        """No force was read at a site, and no stick tried in a named direction."""
