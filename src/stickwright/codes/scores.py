"""What a score is made of: each gain and cost with its figures, all on the player's own scale of 0 to 10."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name, Text, Topic

__all__ = ["Scores", "TermKind"]

TermKind = Literal[
    "importance", "precision", "effort", "misses", "unintended", "busy", "suits", "toggle", "sound", "part", "setup", "helper",
    "option", "dropped", "rule_broken", "ranked", "cost", "slowed", "mind", "clearance", "held",
]  # fmt: skip


class Scores(Topic):
    """The terms of a score. What stands beside a figure is a clause without its full stop."""

    @abstractmethod
    def kind(self, *, what: TermKind) -> str:
        """Name of a term, behind its figure in a sum: "0.5 effort". `part` is one device more, `held` how a controller is held."""

    @abstractmethod
    def importance(self, *, importance_points: float) -> str:
        """How important an action is to the player, 0 to 10."""

    @abstractmethod
    def precision(self, *, precision_bits: float) -> str:
        """Precision of a stick in one direction."""

    @abstractmethod
    def precision_basis(
        self, *, weight_share: float, importance_points: float, levels: int | None, fineness_share: float, short_share: float,
        good_bits: float,
    ) -> str:  # fmt: skip
        """The product that a lack of precision costs: weight, importance, how much of it a game with so many levels uses (None: any
        level), by how much it falls short of what games are made for."""

    @abstractmethod
    def stick_effort(self, *, effort_share: float, duty_share: float) -> str:
        """Share of comfortable force, and of the time."""

    @abstractmethod
    def stick_effort_basis(self, *, weight_points: float, effort_share: float, duty_share: float) -> str:
        """The product of the same."""

    @abstractmethod
    def press_effort(self, *, effort_share: float | None) -> str:
        """Share of comfortable force that a press needs; None where it needs no force."""

    @abstractmethod
    def press_effort_basis(
        self,
        *,
        weight_points: float,
        effort_share: float,
        use_share: float,
        count_per_min: float | None,
        whole_per_min: float,
    ) -> str:
        """The product of effort and use: share of the time held, or presses a minute (`count_per_min`) out of so many that count
        as working all the time."""

    @abstractmethod
    def unintended(self, *, rate: Estimate, assumed: bool) -> str:
        """Unintended activations, a minute; `assumed` where it rests in part on assumed figures."""

    @abstractmethod
    def always(self, *, assumed: bool) -> str:
        """Unintended activations nearly all the time."""

    @abstractmethod
    def unintended_basis(self, *, weight_points: float, over_factor: float, limit_per_min: float) -> str:
        """The product that they cost: weight, times over the limit."""

    @abstractmethod
    def clear_untried(self) -> str:
        """Nobody tried whether the control site can rest clear of a proximity switch."""

    @abstractmethod
    def misses(self, *, missed_share: float, assumed: bool) -> str:
        """Share of presses that miss the switch."""

    @abstractmethod
    def misses_basis(self, *, importance_points: float, missed_share: float) -> str:
        """The product that misses cost."""

    @abstractmethod
    def busy(self, *, time_s: float) -> str:
        """Presses at an assumed rate fill so much of the busy minute."""

    @abstractmethod
    def all_or_nothing(self) -> str:
        """A switch has no levels between on and off."""

    @abstractmethod
    def to_try(self, *, doubt: Text) -> str:
        """A switch whose size or strength has to be tried, and why."""

    @abstractmethod
    def toggle(self) -> str:
        """Latching: press on, press off."""

    @abstractmethod
    def own_words(self, *, words: Name) -> str:
        """The player's own words, or those of the game's file."""

    @abstractmethod
    def helper_does_it(self, *, helper: Name) -> str:
        """A helper does an action."""

    @abstractmethod
    def goes_without(self) -> str:
        """An action is left out."""

    @abstractmethod
    def device_more(self, *, device: Name | None) -> str:
        """One device more; which, where it is counted once for the whole layout."""

    @abstractmethod
    def setup(self, *, site: Name | None, time_s: float) -> str:
        """Time to set up each day: a device, or the site named."""

    @abstractmethod
    def sound(self, *, switch: Name, sound: Literal["soft", "click", "unrecorded"]) -> str:
        """A switch is heard, and quiet is wanted."""

    @abstractmethod
    def minds(self, *, site: Name, dislike_points: float) -> str:
        """How much the player minds using a site, 0 to 10."""

    @abstractmethod
    def clearance(self, *, site: Name) -> str:
        """The treating team has still to agree to a site."""

    @abstractmethod
    def in_use(self, *, site: Name) -> str:
        """A site is used at all."""

    @abstractmethod
    def ranked(self, *, stick: Name) -> str:
        """A stick is ranked behind another at the same site."""

    @abstractmethod
    def splitters(self, *, count: int, splitter: Name) -> str:
        """So many splitters are needed."""

    @abstractmethod
    def adapters(self, *, count: int, adapter: Name) -> str:
        """So many adapters are needed."""

    @abstractmethod
    def ordered(self, *, count: int, device: Name) -> str:
        """So many of a device have to be ordered."""

    @abstractmethod
    def slowed(self, *, first: Name, first_site: Name, second: Name, second_site: Name) -> str:
        """Two actions at two sites slow each other."""

    @abstractmethod
    def rests_anyway(self) -> str:
        """A controller that is made to be held rests on something, which has to be put there."""

    @abstractmethod
    def hold_untried(self, *, hands: tuple[Text, ...], heavy: bool) -> str:
        """Nobody tried how long these hands can hold a controller; `heavy`: more than hands usually hold."""

    @abstractmethod
    def unstated_usual(self) -> str:
        """Why a cost is assumed: nobody stated it; common practice, no source."""

    @abstractmethod
    def unstated_archetype(self, *, archetype: Name) -> str:
        """Why a cost is assumed: it stands for games of that kind in general, and nobody changed it."""

    @abstractmethod
    def cost_of(self, *, action: Name, how: Literal["option", "helper", "dropped", "toggle"]) -> str:
        """Name of an assumed figure: what it costs the player to leave an action to the game, to somebody else or out, or to press
        on and off."""

    @abstractmethod
    def cost_value(self, *, cost_points: float, most_points: float) -> str:
        """Such a cost, of 10."""

    @abstractmethod
    def cost_confirm(self) -> str:
        """What replaces an assumed cost: the player's own answer."""

    @abstractmethod
    def decided_by_cost(
        self,
        *,
        action: Name,
        how: Literal["option", "helper", "dropped"],
        cost_points: float,
        most_points: float,
        turns_points: float,
    ) -> str:
        """An action central to the game is left to others by a cost that nobody stated; from `turns_points` on the layout would be
        another: ask the player first. A clause; several are joined by semicolons."""

    @abstractmethod
    def decided_by_costs(self, *, told: tuple[Text, ...]) -> str:
        """Several of the same."""
