"""Where a device goes and what holds it: the answer for a site, its parts, and what is noticed beside it."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Message, Name, Text, Topic
from stickwright.codes.mount_checks import CheckName

__all__ = ["MountAnswers"]


class MountAnswers(Topic):
    """Each a sentence, except where it says label or clause."""

    @abstractmethod
    def held(
        self, *, device: Name, pieces: int, site: Name, how: Message, under: tuple[Message, ...], lost_share: float | None,
        confirm: tuple[Message, ...],
    ) -> str:  # fmt: skip
        """A device is held: how; what goes under it; what share of the travel the flex of the mount takes; what to confirm."""

    @abstractmethod
    def row(
        self, *, how: Message, under: tuple[Message, ...], lost_share: float | None, confirm: tuple[Message, ...]
    ) -> str:
        """The same without device and site, for a row that names them."""

    @abstractmethod
    def how(self, *, mount: Name | None, on: Name, clamped: bool, fastener: Name | None) -> str:
        """Clause: on what (a mount of its own or None), clamped or standing, fixed with which fastener."""

    @abstractmethod
    def confirm(self, *, measure: Message, rules: tuple[CheckName, ...]) -> str:
        """One thing to measure, and which checks rest on it."""

    @abstractmethod
    def nothing_near(self, *, device: Name, pieces: int, site: Name) -> str:
        """Nothing in kit or room comes near the place."""

    @abstractmethod
    def not_held(
        self, *, device: Name, pieces: int, site: Name, nearest: Name, why: Message | None, change: Message | None
    ) -> str:
        """Nothing holds a device: the way that comes nearest, why it fails, and the smallest change for it."""

    @abstractmethod
    def no_place(self, *, device: Name, pieces: int, site: Name) -> str:
        """Nobody measured where a site rests."""

    @abstractmethod
    def no_point(self, *, site: Name, why: Text) -> str:
        """The tape distances do not lead to a point; `why`, a refusal in sentences."""

    @abstractmethod
    def may_not_fire(self, *, device: Name, mount: Name, travel_m: float, flex_m: float, presses_in_m: float) -> str:
        """A switch's travel and the flex of the mount together are more than the site pushes in."""

    @abstractmethod
    def flexes(self, *, flex_m: float, travel_m: float, lost_share: float) -> str:
        """How much of a stick's travel the mount's flex takes."""

    @abstractmethod
    def swings(self, *, natural_hz: float, least_hz: float) -> str:
        """The natural frequency of the mount is too low."""

    @abstractmethod
    def flex_unknown(self, *, mount: Name) -> str:
        """Clause: how far a mount flexes was not measured."""

    @abstractmethod
    def flex_stops_switch(self, *, device: Name, mount: Name, force_n: float, flex_m: float, travel_m: float) -> str:
        """Clause: the force that a switch takes flexes the mount by more than its whole travel."""

    @abstractmethod
    def flex_takes_all(self, *, mount: Name, flex_m: float) -> str:
        """Clause: at full push the mount flexes by more than the stick's whole travel."""

    @abstractmethod
    def too_low(self, *, surface: Name, gap_m: float) -> str:
        """Clause: a surface is too far below the base to pack it up."""

    @abstractmethod
    def too_high(self, *, surface: Name, over_m: float, lower_edge: bool) -> str:
        """Clause: the base would stand in a surface, with its lower edge where it is tilted."""

    @abstractmethod
    def overhangs(self, *, surface: Name, sides: tuple[Literal["left", "right", "near", "far"], ...]) -> str:
        """Clause: the base would hang over the edge of a surface on these sides."""

    @abstractmethod
    def nothing_to_clamp(self) -> str:
        """There is nothing to clamp an arm to."""

    @abstractmethod
    def pieces(self, *, count: int, device: Name) -> str:
        """Label: several of a device."""

    @abstractmethod
    def wedge(self, *, angle_rad: float, far: bool, higher_m: float) -> str:
        """Label of a part: a wedge under the whole base, far or near edge higher, by how much."""

    @abstractmethod
    def packing(self, *, height_m: float, under_wedge: bool) -> str:
        """Label of a part: packing under the base or the wedge."""

    @abstractmethod
    def support(self, *, higher_m: float) -> str:
        """Label of a part: a support under the control site."""

    @abstractmethod
    def had_first(
        self, *, site: Name, device: Name, way: Message, lacking: tuple[Name, ...], stock: tuple[int, ...], sites: tuple[Name, ...],
        more: bool, other_way: bool,
    ) -> str:  # fmt: skip
        """What a site would have had, but other sites need the parts: `more`, those matter more, else they came first; `other_way`:
        there is another way, else nothing holds it."""

    @abstractmethod
    def way(self, *, mount: Name, on: Name | None, fastener: Name | None) -> str:
        """Clause: a way of mounting."""

    @abstractmethod
    def flat_not_both(self, *, device: Name, switch: Name, pieces: int) -> str:
        """A device has a flat for a switch, but its mount does not pass with both."""

    @abstractmethod
    def flat_both(self, *, device: Name, switch: Name, pieces: int, flat: Name) -> str:
        """A switch stands on the flat of a device; its mount was checked with both."""

    @abstractmethod
    def on_grip(self, *, device: Name, controller: Name) -> str:
        """A stick is fixed to the grip of a controller."""

    @abstractmethod
    def crosswise(self, *, device: Name) -> str:
        """A stick stands crosswise."""

    @abstractmethod
    def reached_from(self, *, device: Name, site: Name, others: tuple[Name, ...]) -> str:
        """A device stands where one site rests, and other sites must reach it."""

    @abstractmethod
    def side_by_side(self, *, site: Name, devices: tuple[Name, ...]) -> str:
        """One site plays several devices, which stand side by side."""
