"""Why an action is done so and not otherwise: reasons, second choices, other layouts, places that are out of the question."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic
from stickwright.codes.scores import TermKind

__all__ = ["Choices", "Traded"]

Traded = TermKind | Literal["exchanged"]


class Choices(Topic):
    """Clauses without full stop, unless said otherwise."""

    @abstractmethod
    def at_site(self, *, site: Name, device: Text, toggle: bool) -> str:
        """Which site, on which device; `toggle`: press on, press off."""

    @abstractmethod
    def by_game(self, *, option: Name) -> str:
        """The game does it, by an option."""

    @abstractmethod
    def by_helper(self, *, helper: Name | None) -> str:
        """A helper does it."""

    @abstractmethod
    def left_out(self) -> str:
        """The action is left out."""

    @abstractmethod
    def together(self, *, actions: tuple[Name, ...]) -> str:
        """A chord: its actions are pressed together."""

    @abstractmethod
    def trade(self, *, worse: tuple[Traded, ...], better: tuple[Traded, ...]) -> str:
        """What another layout loses and gains against the best, largest first; nothing: as good by these figures."""

    @abstractmethod
    def moves(self, *, action: Name, place: Text) -> str:
        """An action goes to another place."""

    @abstractmethod
    def moves_out(self, *, action: Name) -> str:
        """An action is left out."""

    @abstractmethod
    def instead(self, *, place: Text, then: tuple[Text, ...], more: int, loss_points: float | None, trade: Text) -> str:
        """Another way to do an action, what else then changes (and so many more), how much lower the whole layout scores (None: almost
        the same), and what is traded. A sentence."""

    @abstractmethod
    def no_other(self, *, nearest: Text | None) -> str:
        """There is no other way; which comes nearest, and why it fails. Sentences."""

    @abstractmethod
    def alternative(self, *, changes: tuple[Text, ...], more: int, loss_points: float | None, trade: Text) -> str:
        """Another layout: what it does otherwise (and so many more), how much lower it scores, and what is traded. A sentence."""

    @abstractmethod
    def change(self, *, action: Name, new: Text, old: Text) -> str:
        """How an action is done in another layout, instead of how it is done in this one."""

    @abstractmethod
    def then_lost(self, *, actions: tuple[Name, ...], more: int) -> str:
        """Possible by itself, but then these actions (and so many more) cannot be done; none: the other requests cannot all be met."""

    @abstractmethod
    def not_used(self) -> str:
        """A site is not used for such an action."""

    @abstractmethod
    def refusal(self, *, site: Name | None, device: Text | None, why: Text) -> str:
        """Why it cannot be: at which site, on which device."""

    @abstractmethod
    def several(self, *, told: tuple[Text, ...]) -> str:
        """Several clauses beside each other."""

    @abstractmethod
    def reason(self, *, only: bool, told: tuple[Text, ...], broken: Text | None) -> str:
        """Why at this site: `only`, no other site can; its figures; the rule of practice that it breaks."""

    @abstractmethod
    def nobody(self, *, nearest: Text) -> str:
        """Why left to others: no site of the player can, and what comes nearest."""

    @abstractmethod
    def cheaper(self, *, action: Name, cost_points: float) -> str:
        """Why left to others: that costs the player less than any site would cost the whole layout."""

    @abstractmethod
    def not_with_rest(self) -> str:
        """Why left out: it cannot be done together with the rest."""

    @abstractmethod
    def nobody_with_kit(self, *, nearest: Text | None) -> str:
        """Why left out: nobody can do it with this kit, and what comes nearest."""

    @abstractmethod
    def on_grip(self, *, controller: Name) -> str:
        """A stick is fixed to the grip of a controller, for a hand."""

    @abstractmethod
    def kept_for(self, *, site: Name, action: Name) -> str:
        """A site is reserved for another action."""

    @abstractmethod
    def no_force_read(self, *, site: Name) -> str:
        """No stick force was measured at a site."""

    @abstractmethod
    def no_press_tried(self, *, site: Name) -> str:
        """No press was tried at a site."""

    @abstractmethod
    def none_in_stock(self) -> str:
        """It would do, but none is in stock, and the kit has no price for it."""

    @abstractmethod
    def no_switch(self) -> str:
        """The kit has no switch."""

    @abstractmethod
    def team_refused(self) -> str:
        """The treating team has not agreed to the site."""

    @abstractmethod
    def either_way(self, *, held: Text, toggled: Text) -> str:
        """Why it fails held down, and why with press on, press off."""

    @abstractmethod
    def not_common(self) -> str:
        """It is not among the devices that are set up for all games."""
