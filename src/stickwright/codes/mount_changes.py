"""The smallest change that would make a mount pass: each tried on the same checks before it is told."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Message, Name, Topic
from stickwright.codes.mount_checks import CheckName, Thing

__all__ = ["MountChanges"]


class MountChanges(Topic):
    """Each a clause in the imperative; `all_of` makes the sentence."""

    @abstractmethod
    def all_of(self, *, changes: tuple[Message, ...]) -> str:
        """All of these together, in a sentence."""

    @abstractmethod
    def both(self, *, first: Message, second: Message) -> str:
        """Two such sentences: for the base, and for what it stands on."""

    @abstractmethod
    def measure(self, *, mount: Name) -> str:
        """A stand or board must be measured and weighed first."""

    @abstractmethod
    def lay(self, *, sheet: Name, under: Name) -> str:
        """An anti-slip sheet under a board or stand."""

    @abstractmethod
    def lower(self, *, from_m: float, to_m: float, above: Thing | None) -> str:
        """Lower the contact point above what a base stands on, or (None) above the floor."""

    @abstractmethod
    def weigh_down(self, *, mount: Name, more_kg: float) -> str:
        """Weight on a board or stand."""

    @abstractmethod
    def larger_board(self, *, side_m: float, mount: Name) -> str:
        """A larger board in place of this one."""

    @abstractmethod
    def other_surface(self) -> str:
        """A table or the chair's tray instead of a tray on the lap."""

    @abstractmethod
    def fasten(self, *, thing: Thing) -> str:
        """Clamp or bolt a tray or table."""

    @abstractmethod
    def lighten(self, *, over_kg: float) -> str:
        """Take so much off a tray that carries too much."""

    @abstractmethod
    def read_label(self, *, fastener: Name) -> str:
        """The strengths of a fastener are not known."""

    @abstractmethod
    def larger_patch(
        self, *, fastener: Name, from_area: int, to_area: int, long_m: float | None, short_m: float | None
    ) -> str:
        """A larger patch, areas in whole square centimetres, with its sides; None: the whole base."""

    @abstractmethod
    def other_fastener(self, *, fastener: Name, instead: Name | None, whole: bool, thing: Thing) -> str:
        """Another fastener, instead of which; `whole`: under the whole base."""

    @abstractmethod
    def add_mass(self, *, more_kg: float, thing: Thing) -> str:
        """A heavier base."""

    @abstractmethod
    def let_go(self, *, coupling: Name) -> str:
        """A breakaway coupling."""

    @abstractmethod
    def test_joints(self) -> str:
        """What the joints hold is not known."""

    @abstractmethod
    def stronger_joint(self, *, what: CheckName, number: int, needed_nm: float) -> str:
        """An arm with a stronger joint."""

    @abstractmethod
    def shorter_arm(self, *, from_m: float, to_m: float, what: CheckName, number: int, needed_nm: float) -> str:
        """A shorter reach, or an arm with a stronger joint."""
