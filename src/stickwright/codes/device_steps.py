"""How a device is set, held and switched to the right mode: steps of a set-up, and what to order where nothing of the kit does as well."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name, Text, Topic

__all__ = ["DeviceSteps", "TurnedBy"]

TurnedBy = Literal["itself", "hub", "game"]
"""Whose settings turn the output of a stick."""


class DeviceSteps(Topic):
    """Grade 6 or lower, second person, one instruction a sentence; what is typed in the kit's file stands as it is."""

    @abstractmethod
    def set_to(self, *, device: Name, setting: Name, how: Name | None) -> str:
        """Set a device to one of its settings, and how."""

    @abstractmethod
    def crosswise(self, *, turned_by: TurnedBy | None) -> str:
        """Stand a base with its front to the player's left and turn its output to match: in whose settings (None: not
        known)."""

    @abstractmethod
    def crosswise_told(self, *, told: Name) -> str:
        """The same, and how its output is turned, as somebody noted it."""

    @abstractmethod
    def hold_in_one_hand(self, *, device: Name, sites: tuple[Name, ...]) -> str:
        """Hold a controller in one hand: the one of the sites that work it."""

    @abstractmethod
    def hold_in_two_hands(self, *, device: Name) -> str:
        """Hold a controller in both hands."""

    @abstractmethod
    def rest_it(self, *, device: Name, why: Text | None) -> str:
        """Put a controller down instead of holding it, and why (a clause)."""

    @abstractmethod
    def fix_to_grip(self, *, stick: Name, controller: Name) -> str:
        """Fix a stick to the grip of a controller; one hand works both."""

    @abstractmethod
    def check_mode(self, *, device: Name, mode: Name, sign: Name | None) -> str:
        """Check that a device is in a mode, and by what one sees it."""

    @abstractmethod
    def other_mode(self, *, device: Name) -> str:
        """A cause of trouble, as a short question: the device is in another mode."""

    @abstractmethod
    def mode_back(self, *, mode: Name, back: Name | None) -> str:
        """What to do about it: how the mode is got back (None: not noted), and which it must be."""

    @abstractmethod
    def to_order(
        self,
        *,
        offer: Name,
        start_force_n: float,
        full_force_n: float,
        travel_m: float,
        height_m: float,
        topper: Name | None,
        delivery_s: float | None,
        order_price: float | None,
        better_bits: float | None,
        weakest: Estimate,
        chance_share: float,
    ) -> str:
        """A stick to be made to measure: what to ask for, how long it takes and costs, by how many bits it does better
        (None: no stick of the kit fits), share of travel in the weakest direction, share of simulations in which it
        keeps every rule. For a practitioner."""
