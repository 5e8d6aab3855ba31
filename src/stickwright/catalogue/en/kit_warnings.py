"""What is doubtful of a kit, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.kinds import Kind
from stickwright.codes.kit_warnings import KitWarnings
from stickwright.codes.message import Message, Name, Text

__all__ = ["Texts"]


class Texts(KitWarnings):
    """Questions behind their place in the file."""

    w: English

    def name_of_another_kind(self, *, kind: Kind, other: Kind, name: Name, line: int) -> str:
        return f'a {self.w.kind(kind)} with the name of the {self.w.kind(other)} "{self.w.name(name)}" (line {self.w.whole(line)})'

    def one_name_one_device(self) -> str:
        return "a different name for each device, as plans and requests use the name alone"

    def rename_this(self, *, kind: Kind) -> str:
        return f"Choose another name for the {self.w.kind(kind)}."

    def never_used(self, *, devices: tuple[Message, ...]) -> str:
        return (
            f"none in stock and no price, so never used: {self._listed(devices)}. Enter in_stock when there is one, or a price if "
            "one may be bought."
        )

    def to_order(self, *, devices: tuple[Message, ...]) -> str:
        return f"none in stock, so to order: {self._listed(devices)}."

    def nothing_in_stock(self) -> str:
        return (
            "every device is out of stock (in_stock = 0 for all). Is the kit on loan? Whatever is available today needs in_stock = "
            "1 or more."
        )

    def no_plug(self, *, devices: tuple[Message, ...]) -> str:
        return (
            f"no plug is recorded for {self._listed(devices)}. A device without one cannot be connected to a hub. Look at the plug: "
            'plug = "USB", "4-conductor" or "2-conductor".'
        )

    def no_activation_force(self) -> str:
        return (
            'no activation force is recorded, so it counts as none. Measure it, or enter kind = "proximity" if the switch works '
            "without touch."
        )

    def no_distance(self) -> str:
        return "a proximity switch without the distance at which it activates. Add senses_at_mm."

    def setting_named_as_listed(self, *, listed: Text) -> str:
        return f"a setting with the name of the stick's own setting (set_as = {self.clause(listed)})"

    def one_name_one_setting(self) -> str:
        return "a different name for each setting"

    def rename_setting(self) -> str:
        return "Rename one of the two, or delete the setting if it is a duplicate."

    def setting_without_name(self) -> str:
        return (
            "there are several settings, but the one to which the stick's own figures belong has no name. Give it one, for example "
            'set_as = "magnet out".'
        )

    def a_controller(self) -> str:
        return "the name of a controller in kit.toml with the grip to which the stick is fixed"

    def add_controller(self) -> str:
        return "Add that controller, or correct the name."

    def not_weighed(self) -> str:
        return "it is held in the hand but was not weighed, so a usual mass is assumed. Add mass_g."

    def turns_a_crosswise_base(self) -> str:
        return "what turns the output of a base that can stand crosswise"

    def say_crosswise(self) -> str:
        return "Enter crosswise = true, or delete turns_output."

    def output_not_turned(self) -> str:
        return (
            "it can stand crosswise, but what then turns its output is not recorded. Add turns_output = "
            '"itself", "hub" or "game", or describe how it is done.'
        )

    def size_of_base(self) -> str:
        return "whether it must stand crosswise is not known without the size of its base. Add base_mm (length, width, height)."

    def below(self, *, one: Text, other: Text) -> str:
        return f"{self.clause(one)} below {self.clause(other)}"

    def force_at_full_travel(self) -> str:
        return "a force at full travel that is at least the actuation force"

    def swapped_or_units(self) -> str:
        return "Check whether the two are swapped or in different units."

    def travel_within_height(self) -> str:
        return "a travel no longer than the contact height (travel is the height times the sine of the angle)"

    def how_to_measure_travel(self) -> str:
        return (
            "Measure the travel from the centre to the end stop, not from stop to stop, and the height from the pivot."
        )

    def lower_end_first(self) -> str:
        return "the lower end first"

    def outside_interval(self, *, typed: Text, interval: Text) -> str:
        return (
            f"{self.clause(typed)} is outside its own interval, {self.clause(interval)}. Is one of them in another unit or out of "
            "date?"
        )

    def _listed(self, devices: tuple[Message, ...]) -> str:
        return self.w.all_of(tuple(self.clause(one) for one in devices))
