"""What is to be measured of a mount, a device or a room before a figure can be trusted: imperatives, without a full stop."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Topic

__all__ = ["ToMeasure"]


class ToMeasure(Topic):
    """Each a clause in the imperative."""

    @abstractmethod
    def weigh(self, *, thing: Name) -> str:
        """Weigh a device, an arm, a tray or a plate."""

    @abstractmethod
    def base(self, *, device: Name) -> str:
        """Length and width of a device's base."""

    @abstractmethod
    def pivot(self, *, device: Name) -> str:
        """From the underside of a stick to its pivot."""

    @abstractmethod
    def pull_sheet(self, *, fastener: Name) -> str:
        """The friction of an anti-slip sheet."""

    @abstractmethod
    def strength(self, *, fastener: Name) -> str:
        """The strength on a fastener's label or data sheet."""

    @abstractmethod
    def test_method(self, *, fastener: Name) -> str:
        """By which method the strength of a fastener was tested."""

    @abstractmethod
    def joints(self, *, mount: Name) -> str:
        """What the joints of an arm hold; no figure is there."""

    @abstractmethod
    def every_joint(self, *, mount: Name) -> str:
        """What every joint of an arm holds; some figures are there."""

    @abstractmethod
    def stand(self, *, mount: Name) -> str:
        """Size and mass of a stand or board."""

    @abstractmethod
    def flex(self, *, mount: Name) -> str:
        """How far a mount bends under a load."""

    @abstractmethod
    def friction_under(self, *, thing: Name) -> str:
        """Friction under a tray, stand or board that has a field for it."""

    @abstractmethod
    def friction_of_base(self, *, device: Name, surface: Name) -> str:
        """Friction of a device's base on a surface; the key is base_friction of that surface in the room's file."""

    @abstractmethod
    def thighs(self) -> str:
        """How far apart the middles of the thighs are under a lap tray."""

    @abstractmethod
    def plate(self, *, long_m: float, short_m: float) -> str:
        """Find or make a plate that the kit does not have, and weigh it."""

    @abstractmethod
    def bend(self, *, mount: Name) -> str:
        """How tightly a gooseneck may be bent."""

    @abstractmethod
    def last_ball(self, *, mount: Name) -> str:
        """From the last ball of an arm to the underside of what it carries."""

    @abstractmethod
    def tilt_pivot(self) -> str:
        """Where the point lies about which the seat tilts."""

    @abstractmethod
    def release(self, *, coupling: Name) -> str:
        """At what force a breakaway coupling lets go."""
