"""What is doubtful of a kit: figures of sticks, names, plugs, stock and costs."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.kinds import Kind
from stickwright.codes.message import Message, Name, Text, Topic

__all__ = ["KitWarnings"]


class KitWarnings(Topic):
    """Questions are sentences, told behind their place in the file; found and expected have no full stop."""

    @abstractmethod
    def name_of_another_kind(self, *, kind: Kind, other: Kind, name: Name, line: int) -> str:
        """Found: a thing with the name of a thing of another kind, which stands at that line."""

    @abstractmethod
    def one_name_one_device(self) -> str:
        """Expected: one name for one device, as plans and requests call each by its name alone."""

    @abstractmethod
    def rename_this(self, *, kind: Kind) -> str:
        """Remedy: another name for this thing."""

    @abstractmethod
    def never_used(self, *, devices: tuple[Message, ...]) -> str:
        """None in stock and no price, so never used; what to add."""

    @abstractmethod
    def to_order(self, *, devices: tuple[Message, ...]) -> str:
        """None in stock: counts as something to order."""

    @abstractmethod
    def nothing_in_stock(self) -> str:
        """Every device is out of stock: is the kit on loan?"""

    @abstractmethod
    def no_plug(self, *, devices: tuple[Message, ...]) -> str:
        """The plug of these devices was not recorded; what to look at."""

    @abstractmethod
    def no_activation_force(self) -> str:
        """The activation force of a switch was not recorded, so it counts as none."""

    @abstractmethod
    def no_distance(self) -> str:
        """A proximity switch without the distance at which it acts; the key is senses_at_mm."""

    @abstractmethod
    def setting_named_as_listed(self, *, listed: Text) -> str:
        """Found: a setting with the name of the one that the stick itself is listed with."""

    @abstractmethod
    def one_name_one_setting(self) -> str:
        """Expected: one name for one setting."""

    @abstractmethod
    def rename_setting(self) -> str:
        """Remedy: rename one, or delete the setting that is there twice."""

    @abstractmethod
    def setting_without_name(self) -> str:
        """A stick has several settings, but the one of its own figures has no name; the key is set_as."""

    @abstractmethod
    def a_controller(self) -> str:
        """Expected: the name of a controller of the kit, on whose grip the stick is fixed."""

    @abstractmethod
    def add_controller(self) -> str:
        """Remedy: add that controller, or correct the name."""

    @abstractmethod
    def not_weighed(self) -> str:
        """A controller that is held in the hand was not weighed, so a usual mass is assumed."""

    @abstractmethod
    def turns_a_crosswise_base(self) -> str:
        """Expected: what turns the output of a base that can stand crosswise."""

    @abstractmethod
    def say_crosswise(self) -> str:
        """Remedy: say that it can stand crosswise, or delete what turns its output."""

    @abstractmethod
    def output_not_turned(self) -> str:
        """A stick can stand crosswise, but what turns its output then was not recorded."""

    @abstractmethod
    def size_of_base(self) -> str:
        """Whether a stick must stand crosswise cannot be known without the size of its base."""

    @abstractmethod
    def below(self, *, one: Text, other: Text) -> str:
        """Found: one figure below another that it may not be below; each a key with its value."""

    @abstractmethod
    def force_at_full_travel(self) -> str:
        """Expected: a force at full travel that is at least the actuation force."""

    @abstractmethod
    def swapped_or_units(self) -> str:
        """Remedy: check whether the two are swapped or in different units."""

    @abstractmethod
    def travel_within_height(self) -> str:
        """Expected: a travel no longer than the contact height."""

    @abstractmethod
    def how_to_measure_travel(self) -> str:
        """Remedy: travel from the centre, height from the pivot."""

    @abstractmethod
    def lower_end_first(self) -> str:
        """Expected: the lower end of an interval first."""

    @abstractmethod
    def outside_interval(self, *, typed: Text, interval: Text) -> str:
        """A figure lies outside its own interval, which is a key with its value."""
