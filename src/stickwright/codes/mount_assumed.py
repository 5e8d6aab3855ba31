"""What nobody measured of a mount and what stands in for it: clauses without a full stop, printed after a mark that they are assumed."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Message, Name, Topic

__all__ = ["Ground", "MountAssumed"]

Ground = Literal["wood", "steel", "smooth plastic", "rough plastic", "cloth", "carpet", "vinyl", "tiles", "skin"]
"""What a surface of the room is of."""


class MountAssumed(Topic):
    """Each a clause."""

    @abstractmethod
    def friction(
        self, *, foot: Literal["rubber", "smooth plastic", "tray"], ground: Ground | None, taken_factor: float, dusty: bool,
        measure: Message,
    ) -> str:  # fmt: skip
        """Friction from a table: of what on what, the coefficient; `dusty`: the pair is unknown, so the lowest; what to measure."""

    @abstractmethod
    def fastening(self) -> str:
        """What fastens a tray was not measured."""

    @abstractmethod
    def test_method(self, *, fastener: Name) -> str:
        """The label of a fastener does not name its test method."""

    @abstractmethod
    def weakest_joint(self, *, held_nm: float) -> str:
        """No figure for one joint: taken as the weakest of the others."""

    @abstractmethod
    def release_limit(self) -> str:
        """The clinic has not said how hard the mount may be pushed before it lets go."""

    @abstractmethod
    def thighs(self, *, apart_m: float) -> str:
        """Distance of the middles of the thighs."""

    @abstractmethod
    def chair_centre(self) -> str:
        """The centre of mass of chair and player is taken in the middle between the wheels."""

    @abstractmethod
    def base(self, *, device: Name, long_m: float, short_m: float) -> str:
        """The size of a base."""

    @abstractmethod
    def weight(self, *, device: Name) -> str:
        """A device was not weighed, so its weight is left out."""

    @abstractmethod
    def loose(self, *, surface: Name) -> str:
        """A loose table was not weighed: whether it slides or tips is not calculated."""

    @abstractmethod
    def switch_base(self, *, device: Name, long_m: float, short_m: float, height_m: float) -> str:
        """Size of a switch with a plate under it."""

    @abstractmethod
    def senses(self, *, clear_m: float) -> str:
        """The face of a proximity switch is kept off the resting site."""

    @abstractmethod
    def flex(self, *, mount: Name) -> str:
        """The flex of a mount was not measured; how to."""

    @abstractmethod
    def mount_weight(self, *, mount: Name) -> str:
        """An arm was not weighed: weight left out, natural frequency not known."""

    @abstractmethod
    def screwed(self, *, device: Name, mount: Name) -> str:
        """The kit has no fastener: taken as screwed on."""

    @abstractmethod
    def facing(self, *, device: Name) -> str:
        """Which way a switch faces is not recorded."""

    @abstractmethod
    def side_by_side(self, *, pieces: int, plate: Name | None, weighed: bool, apart_m: float) -> str:
        """Several devices on one plate (None: the kit has none); how far apart their middles are."""

    @abstractmethod
    def unlevel(self, *, surface: Name, off_m: float, below: bool, allowed_m: float) -> str:
        """A surface is a little too low or high, and nothing is done about it."""

    @abstractmethod
    def take_off(self, *, mount: Name, swings: bool, time_s: float) -> str:
        """Nobody timed how long a mount takes to come off or swing aside."""

    @abstractmethod
    def thickness(self, *, mount: Name, thick_m: float, head_m: float | None) -> str:
        """How thick an arm is taken to be, and how far its last ball is below the base where nobody measured that."""

    @abstractmethod
    def neck_shape(self, *, mount: Name) -> str:
        """How a gooseneck is taken to run."""

    @abstractmethod
    def neck_bend(self, *, mount: Name, radius_m: float) -> str:
        """How tightly a gooseneck may be bent."""

    @abstractmethod
    def base_size(self, *, site: Name) -> str:
        """The size of the base at a site is not known, so only its middle was kept clear."""

    @abstractmethod
    def board(self, *, surface: Name, thick_m: float) -> str:
        """How thick a table or tray is taken to be."""

    @abstractmethod
    def chair_place(self, *, holders: tuple[Name, ...], mount: Name, within_m: float | None) -> str:
        """What is clamped to something that does not move with the chair fits only while the chair stands where it stood."""

    @abstractmethod
    def pivot(self) -> str:
        """Where the tilt pivot is taken to be, and what to measure."""

    @abstractmethod
    def tape(self, *, site: Name, by: Literal["upper", "usual"]) -> str:
        """Tape distances leave two places; which one was taken."""

    @abstractmethod
    def base_height(self, *, site: Name) -> str:
        """The height of the base at a site is not known and left out."""

    @abstractmethod
    def press_along(self, *, device: Name) -> str:
        """A press counts as if it pushed along the face as hard as into it."""

    @abstractmethod
    def press_force(self, *, site: Name, force_n: float) -> str:
        """How hard a site presses was not read."""

    @abstractmethod
    def grip_weight(self, *, device: Name) -> str:
        """A stick on a controller's grip was not weighed."""

    @abstractmethod
    def on_top_weight(self, *, device: Name, pieces: int) -> str:
        """A switch that stands on another device was not weighed."""
