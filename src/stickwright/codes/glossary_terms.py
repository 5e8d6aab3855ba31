"""The terms of the trade that pages, sheet and terminal use, as they stand in the glossary."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Topic

__all__ = ["GlossaryTerms"]


class GlossaryTerms(Topic):
    """One term, or two that are explained together."""

    @abstractmethod
    def control_site(self) -> str:
        """Control site."""

    @abstractmethod
    def movement_range(self) -> str:
        """Movement range."""

    @abstractmethod
    def comfortable_force(self) -> str:
        """Comfortable force."""

    @abstractmethod
    def resting_force(self) -> str:
        """Resting force."""

    @abstractmethod
    def fatigue_order(self) -> str:
        """Fatigue order."""

    @abstractmethod
    def involuntary_movement(self) -> str:
        """Involuntary movement."""

    @abstractmethod
    def tremor(self) -> str:
        """Tremor."""

    @abstractmethod
    def stick(self) -> str:
        """Stick."""

    @abstractmethod
    def topper(self) -> str:
        """Topper."""

    @abstractmethod
    def shaft_extension(self) -> str:
        """Shaft extension."""

    @abstractmethod
    def travel(self) -> str:
        """Travel."""

    @abstractmethod
    def deflection(self) -> str:
        """Deflection."""

    @abstractmethod
    def actuation_force(self) -> str:
        """Actuation force."""

    @abstractmethod
    def force_at_full_travel(self) -> str:
        """Force at full travel."""

    @abstractmethod
    def activation_force(self) -> str:
        """Activation force."""

    @abstractmethod
    def self_centring(self) -> str:
        """Self-centring, centre error."""

    @abstractmethod
    def dead_zone(self) -> str:
        """Dead zone."""

    @abstractmethod
    def response_curve(self) -> str:
        """Response curve."""

    @abstractmethod
    def sensitivity(self) -> str:
        """Sensitivity (gain)."""

    @abstractmethod
    def rotation(self) -> str:
        """Rotation."""

    @abstractmethod
    def filter(self) -> str:
        """Filter."""

    @abstractmethod
    def unintended_activation(self) -> str:
        """Unintended activation."""

    @abstractmethod
    def switch(self) -> str:
        """Switch."""

    @abstractmethod
    def controller(self) -> str:
        """Controller."""

    @abstractmethod
    def hub(self) -> str:
        """Hub, socket."""

    @abstractmethod
    def mono_jack(self) -> str:
        """3.5 mm mono jack (TS)."""

    @abstractmethod
    def four_pole_jack(self) -> str:
        """3.5 mm four-pole jack (TRRS)."""

    @abstractmethod
    def mounting_arm(self) -> str:
        """Mounting arm, joint, clamp."""

    @abstractmethod
    def mounting_plate(self) -> str:
        """Mounting plate."""

    @abstractmethod
    def reclosable_fastener(self) -> str:
        """Reclosable fastener."""

    @abstractmethod
    def breakaway(self) -> str:
        """Breakaway, quick release."""

    @abstractmethod
    def flex(self) -> str:
        """Flex."""

    @abstractmethod
    def safety_factor(self) -> str:
        """Safety factor."""

    @abstractmethod
    def minimum_clearance(self) -> str:
        """Minimum clearance."""

    @abstractmethod
    def control_layout(self) -> str:
        """Control layout."""

    @abstractmethod
    def game_option(self) -> str:
        """Option of the game."""

    @abstractmethod
    def score(self) -> str:
        """Score."""

    @abstractmethod
    def cost_to_the_player(self) -> str:
        """Cost to the player."""

    @abstractmethod
    def effort(self) -> str:
        """Effort."""

    @abstractmethod
    def bits(self) -> str:
        """Bits."""

    @abstractmethod
    def interval(self) -> str:
        """95% interval."""

    @abstractmethod
    def assumed(self) -> str:
        """Assumed."""

    @abstractmethod
    def simulation(self) -> str:
        """Simulation."""

    @abstractmethod
    def assessment(self) -> str:
        """Assessment, visit."""

    @abstractmethod
    def simulated_player(self) -> str:
        """Simulated player."""

    @abstractmethod
    def practice_records(self) -> str:
        """Practice records."""
