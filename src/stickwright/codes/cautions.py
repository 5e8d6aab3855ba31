"""The usual cautions: common practice unless a source is named; they defer to local rules, the seating clinic and the team."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Cautions", "Cleared"]

Cleared = Literal["yes", "no", "ask", "unrecorded"]


class Cautions(Topic):
    """Said beside the number they belong to."""

    @abstractmethod
    def session(self, *, blocks: Text) -> str:
        """When to stop; in what blocks to play (`blocks`, whole sentences); how long soreness may last."""

    @abstractmethod
    def usual_blocks(self) -> str:
        """How long to play and pause where nothing was read or wished."""

    @abstractmethod
    def child_adult(self) -> str:
        """A child: who is present, which rule holds."""

    @abstractmethod
    def child_small_parts(self) -> str:
        """A child: nothing small within reach."""

    @abstractmethod
    def neck(self) -> str:
        """The player's neck is at risk: who has to agree, what ends the session."""

    @abstractmethod
    def airway(self) -> str:
        """The player breathes by a tube or a ventilator."""

    @abstractmethod
    def skin(self) -> str:
        """The player's skin breaks down under pressure."""

    @abstractmethod
    def dysreflexia(self) -> str:
        """Spinal cord injury at or above T6: signs of autonomic dysreflexia, and what to do."""

    @abstractmethod
    def seizures(self) -> str:
        """The player has seizures."""

    @abstractmethod
    def pain(self) -> str:
        """The player has pain."""

    @abstractmethod
    def startle(self) -> str:
        """The player has strong involuntary movement."""

    @abstractmethod
    def magnets(self) -> str:
        """The player has an implant that magnets may disturb."""

    @abstractmethod
    def arthritis(self) -> str:
        """The player's joints are to be spared."""

    @abstractmethod
    def powered_chair(self) -> str:
        """The player drives a powered chair."""

    @abstractmethod
    def heart(self) -> str:
        """Heart or blood pressure."""

    @abstractmethod
    def forbidden_grip(self, *, site: Name, note: Name) -> str:
        """What the player's file forbids at a site; `note` is the practitioner's own words."""

    @abstractmethod
    def force_ceiling(self, *, site: Name, force_n: float, why: Name | None) -> str:
        """The largest force allowed at a site; `why` is the practitioner's own words."""

    @abstractmethod
    def face(self, *, cleared: Cleared) -> str:
        """Chin, lip, cheek, tongue or head: what must hold, and whether the treating team has agreed."""

    @abstractmethod
    def no_curve(self) -> str:
        """Neck and face: no published endurance curve."""

    @abstractmethod
    def mouth(self) -> str:
        """What goes in or near the mouth."""

    @abstractmethod
    def effort(self) -> str:
        """Over a third of the comfortable force at the game's usual level."""

    @abstractmethod
    def large_dead_zone(self) -> str:
        """The dead zone takes a fifth of the travel or more."""

    @abstractmethod
    def one_player(self) -> str:
        """A topper that touches face or mouth."""

    @abstractmethod
    def progressive(self) -> str:
        """The player's condition progresses."""
