"""The kit: sticks, toppers, extensions, as benched; switches, controllers, leads. Forces are at the contact point of
the bare stick."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from pydantic import Field

from stickwright.codes.inputs import Role, StickRole
from stickwright.codes.stand_ins import Form
from stickwright.model.hub import BUTTON_ROLES
from stickwright.model.measured import ONE_OR_MORE, Measured, Plausible

__all__ = [
    "Controller",
    "Extension",
    "Fastener",
    "Kit",
    "Lead",
    "MadeToOrder",
    "Mount",
    "Stick",
    "StickSetting",
    "Switch",
    "Topper",
]

Newton = Annotated[float, Plausible(0.0, 100.0)]
Interval = tuple[Newton, Newton]
Size = Annotated[float, Plausible(0.0, 1.0)]
Offset = Annotated[float, Plausible(-1.0, 1.0)]
Stock = Annotated[int, Field(ge=0, le=1000)]
Cost = Annotated[float, Field(ge=0, le=100000)]
Cable = Annotated[float, Plausible(0.0, 20.0)]
Ampere = Annotated[float, Plausible(0.0, 3.0)]


class StickSetting(Measured):
    """Another way to set the same stick (a spring, the place of a magnet, a gain), benched like a stick."""

    name: str = Field(min_length=1)
    how: str = ""
    """How to set it, as the family is to read it."""
    start_force_n: Newton
    """Pushing out, to leave the centre (friction included)."""
    full_force_n: Newton
    """Pushing out, at the stop."""
    travel_m: Annotated[float, Plausible(0.0005, 0.3)] | None = None
    """The stick's own when not said."""
    friction_force_n: Newton | None = None
    start_force_interval_n: Interval | None = None
    full_force_interval_n: Interval | None = None
    friction_force_interval_n: Interval | None = None
    full_output_share: Annotated[float, Plausible(0.05, 1.0)] | None = None
    """The stick's own when not said."""
    bench_readings: str | None = None
    """CSV of the readings the figures come from."""


class HousingFlat(Measured):
    """A flat face on top of a housing, large enough for a switch to stand on."""

    at_m: tuple[Offset, Offset, Offset]
    """Its middle from the middle of the underside of the base: right, forward, up."""
    size_m: tuple[Annotated[float, Plausible(0.005, 1.0)], Annotated[float, Plausible(0.005, 1.0)]]
    """Width and depth."""


class Stick(Measured):
    """A self-returning lever, or a touch surface (force near zero, no spring, travel = half the pad)."""

    retired: ClassVar[tuple[str, ...]] = ("force_class",)

    name: str = Field(min_length=1)
    kind: Literal["lever", "touch"] = "lever"
    contact_height_m: Annotated[float, Plausible(0.002, 0.5)] | None = None
    """Contact point above the pivot, without topper or extension."""
    start_force_n: Newton
    """Pushing out, to leave the centre (friction included)."""
    full_force_n: Newton
    """Pushing out, at the stop."""
    travel_m: Annotated[float, Plausible(0.0005, 0.3)]
    """Travel of the contact point from centre to stop."""
    friction_force_n: Newton | None = None
    """Half the difference between pushing out and letting back."""
    start_force_interval_n: Interval | None = None
    full_force_interval_n: Interval | None = None
    friction_force_interval_n: Interval | None = None
    bench_readings: str | None = None
    """CSV of the readings the figures come from."""
    benched: str = ""
    """Date, YYYY-MM-DD."""
    base_m: tuple[Size, Size, Size] | None = None
    """Length, width, height."""
    base_tilt_rad: Annotated[float, Plausible(-1.6, 1.6)] = 0.0
    mass_kg: Annotated[float, Plausible(0.0, 20.0)] | None = None
    plug: str = ""
    current_a: Ampere | None = None
    full_output_share: Annotated[float, Plausible(0.05, 1.0)] = 1.0
    """Share of the throw at which the output is already full."""
    heaviest_topper_kg: Annotated[float, Plausible(0.0, 2.0)] | None = None
    """Above this the stick no longer centres well."""
    in_stock: Stock = 1
    note: str = ""
    cable_m: Cable | None = None
    """Its own cable, plug included."""
    price: Cost | None = None
    """What one costs, in any currency but always the same; needed only for what is not in stock."""
    setup_s: Annotated[float, Plausible(0.0, 14400.0)] | None = None
    """Time to set it up each day."""
    takes_toppers: bool = True
    """Whether toppers and extensions fit on it."""
    pivot_height_m: Annotated[float, Plausible(0.0, 0.3)] | None = None
    """Pivot above the underside of the base; the height of the base when not said."""
    mode: str = ""
    """The mode that it has to be in, where it has several."""
    mode_sign: str = ""
    """How to see that it is in that mode, as the family is to read it."""
    mode_back: str = ""
    """How to get it back into that mode, as the family is to read it."""
    set_as: str = ""
    """Name of the setting that the figures above belong to, where it can be set in several ways."""
    set_how: str = ""
    """How to set it so, as the family is to read it."""
    setting: tuple[StickSetting, ...] = ()
    """Other ways to set it."""
    crosswise: bool | None = None
    """Whether its base can stand crosswise, its width pointing forward, with the output turned to match."""
    turns_output: str = ""
    """What turns its output where it stands crosswise: "itself", "hub", "game", or words that the family is to read."""

    fixed_to: str = ""
    """Name of the controller to whose grip it is fixed, for one hand; it then needs no mount of its own."""

    flat: HousingFlat | None = None
    """A flat of its housing that can carry a switch."""

    def as_set(self, place: int) -> Stick:
        """The stick with the figures of one of its settings.

        Parameters
        ----------
        place : int
            In `setting`; -1 for the figures that stand at the stick itself.
        """
        if place < 0:
            return self
        one = self.setting[place]
        figures = {
            name: getattr(one, name)
            for name in (
                "start_force_n", "full_force_n", "friction_force_n", "start_force_interval_n", "full_force_interval_n",
                "friction_force_interval_n", "bench_readings",
            )
        }  # fmt: skip
        own = {name: getattr(one, name) for name in ("travel_m", "full_output_share") if getattr(one, name) is not None}
        return self.model_copy(update={**figures, **own, "set_as": one.name, "set_how": one.how})

    def stands(self, room_m: tuple[float, float] | None) -> Literal["lengthwise", "crosswise", "too large"]:
        """How its base stands in a free place: crosswise only where lengthwise it does not fit.

        Parameters
        ----------
        room_m : tuple of 2 floats or None
            Length (forward) and width of the free place; anything fits where nobody measured it.

        Examples
        --------
        >>> oak = Stick(name="oak", start_force_n=0.1, full_force_n=0.2, travel_m=0.004, base_m=(0.09, 0.05, 0.03))
        >>> [oak.stands(room) for room in ((0.1, 0.06), (0.06, 0.1), (0.06, 0.06))]
        ['lengthwise', 'crosswise', 'too large']
        """
        if room_m is None or self.base_m is None:
            return "lengthwise"
        (length, width), (deep, wide) = self.base_m[:2], room_m
        if length <= deep and width <= wide:
            return "lengthwise"
        return "crosswise" if width <= deep and length <= wide and self.crosswise is not False else "too large"

    @property
    def full_name(self) -> str:
        """Its name, with the setting in brackets where it can be set in several ways."""
        return f"{self.name} ({self.set_as})" if self.set_as else self.name

    @property
    def names(self) -> tuple[str, ...]:
        """What it may be called where a stick is named: its own name, and with each setting in brackets."""
        words = [self.set_as, *(one.name for one in self.setting)]
        return (self.name, *(f"{self.name} ({word})" for word in words if word))


class Topper(Measured):
    """What the player touches: adds height and mass."""

    name: str = Field(min_length=1)
    form: Form
    height_m: Annotated[float, Plausible(-0.02, 0.2)]
    mass_kg: Annotated[float, Plausible(0.0, 1.0)] = 0.0
    width_m: Annotated[float, Plausible(0.0, 0.3)] | None = None
    single_player: bool = False
    in_stock: Stock = 1
    note: str = ""


class Extension(Measured):
    """A piece that lengthens the lever."""

    name: str = Field(min_length=1)
    length_m: Annotated[float, Plausible(0.0, 0.5)]
    mass_kg: Annotated[float, Plausible(0.0, 1.0)] = 0.0
    in_stock: Stock = 1


class Switch(Measured):
    """A switch: pressed, or sensing without touch."""

    name: str = Field(min_length=1)
    kind: Literal["press", "proximity"] = "press"
    force_n: Newton = 0.0
    """To operate it; 0 for a proximity switch."""
    travel_m: Annotated[float, Plausible(0.0, 0.1)] = 0.0
    senses_at_m: Annotated[float, Plausible(0.0, 0.5)] | None = None
    """Distance at which a proximity switch acts."""
    face_m: Annotated[tuple[Size, ...], ONE_OR_MORE, Field(max_length=2)] = ()
    """Diameter of a round face; width and length of a strip."""
    sound: Literal["silent", "soft", "click"] | None = None
    """What is heard when it is pressed; costs points where the player wants it quiet."""
    plug: str = ""
    cable_m: Cable | None = None
    current_a: Ampere | None = None
    mass_kg: Annotated[float, Plausible(0.0, 20.0)] | None = None
    in_stock: Stock = 1
    price: Cost | None = None
    setup_s: Annotated[float, Plausible(0.0, 14400.0)] | None = None
    note: str = ""
    base_m: tuple[Size, Size, Size] | None = None
    """Length, width, height."""
    mode: str = ""
    """The mode that it has to be in, where it has several."""
    mode_sign: str = ""
    """How to see that it is in that mode, as the family is to read it."""
    mode_back: str = ""
    """How to get it back into that mode, as the family is to read it."""


class Controller(Measured):
    """A two-handed controller with sticks and buttons of its own, used whole: paired, or by USB through a hub."""

    name: str = Field(min_length=1)
    contact_height_m: Annotated[float, Plausible(0.002, 0.5)] | None = None
    """Of its sticks, as for a stick."""
    start_force_n: Newton | None = None
    full_force_n: Newton | None = None
    travel_m: Annotated[float, Plausible(0.0005, 0.3)] | None = None
    press_force_n: Newton | None = None
    """Of its buttons."""
    sticks: tuple[StickRole, ...] = ("left stick", "right stick")
    buttons: tuple[Role, ...] = BUTTON_ROLES[:-1]
    usb_stick: StickRole | None = "left stick"
    """The one stick that a hub passes on when it is plugged in by USB, under the role of that socket."""
    usb_buttons: bool = True
    """Whether a hub passes its buttons on."""
    pairs: bool = True
    """Whether it can be paired as second controller; its sticks then keep their own roles."""
    plug: str = "USB"
    cable_m: Cable | None = None
    current_a: Ampere | None = None
    mass_kg: Annotated[float, Plausible(0.0, 20.0)] | None = None
    base_m: tuple[Size, Size, Size] | None = None
    in_stock: Stock = 1
    price: Cost | None = None
    setup_s: Annotated[float, Plausible(0.0, 14400.0)] | None = None
    note: str = ""
    mode: str = ""
    """The mode that it has to be in, where it has several."""
    mode_sign: str = ""
    """How to see that it is in that mode, as the family is to read it."""
    mode_back: str = ""
    """How to get it back into that mode, as the family is to read it."""
    flat: HousingFlat | None = None
    """A flat of its housing that can carry a switch."""
    held: Literal["one hand", "two hands", "resting"] | None = None
    """How it is held while it is played; put up as any other device where nobody says."""
    takes_toppers: bool = False
    """Whether toppers and extensions fit on its sticks."""
    heaviest_topper_kg: Annotated[float, Plausible(0.0, 2.0)] | None = None
    """Above this its sticks no longer centre well."""
    friction_force_n: Newton | None = None
    """Of its sticks: half the difference between pushing out and letting back."""
    set_as: str = ""
    """Name of the setting that the forces of its sticks belong to, where they can be set in several ways."""
    set_how: str = ""
    """How to set it so, as the family is to read it."""
    setting: tuple[StickSetting, ...] = ()
    """Other ways to set its sticks: lighter springs."""


class Lead(Measured):
    """An extension lead, an adapter from one plug to another, or a splitter."""

    name: str = Field(min_length=1)
    kind: Literal["extension", "adapter", "splitter"] = "extension"
    plug: str = Field(min_length=1)
    """The end that goes towards the hub."""
    sockets: Annotated[tuple[str, ...], ONE_OR_MORE] = ()
    """What the other end takes, one for each way; the same as the plug when not said."""
    length_m: Cable | None = None
    current_a: Ampere | None = None
    """What it draws itself."""
    port_current_a: Ampere | None = None
    """What each way can supply when it has a power supply of its own."""
    in_stock: Stock = 1
    price: Cost | None = None
    note: str = ""


class Mount(Measured):
    """What holds a stick or a switch in its place, with the figures of its own papers or of a test with a weight."""

    name: str = Field(min_length=1)
    kind: Literal[
        "tray", "lap tray", "table clamp", "tube clamp", "friction arm", "gooseneck", "plate", "floor plate",
        "floor stand", "strap", "breakaway coupling",
    ]  # fmt: skip
    links_m: Annotated[tuple[Size, ...], ONE_OR_MORE, Field(max_length=4)] = ()
    """Lengths of its links, from the clamp."""
    holding_nm: Annotated[tuple[Annotated[float, Plausible(0.0, 1000.0)], ...], ONE_OR_MORE] = ()
    """Moment that each joint holds, from the clamp; one figure for all."""
    give_n_per_m: Annotated[float, Plausible(1.0, 1e7)] | None = None
    """Stiffness at its end: hang a kilogram, measure the drop."""
    tube_m: tuple[Size, Size] | None = None
    """Thinnest and thickest tube that its clamp holds."""
    edge_m: tuple[Size, Size] | None = None
    """Thinnest and thickest edge that its clamp holds."""
    size_m: tuple[Size, Size] | None = None
    """Of the plate or tray: width and depth."""
    tilts_rad: tuple[Annotated[float, Plausible(-1.6, 1.6)], Annotated[float, Plausible(-1.6, 1.6)]] | None = None
    """Tilts that a plate can be set to: least and most."""
    mass_kg: Annotated[float, Plausible(0.0, 100.0)] | None = None
    rated_kg: Annotated[float, Plausible(0.0, 500.0)] | None = None
    release_n: tuple[Newton, Newton] | None = None
    """Force at which a breakaway coupling lets go: least and most that it can be set to."""
    friction: Annotated[float, Field(ge=0, le=2)] | None = None
    """Of its foot on what it stands on, with its own anti-slip sheet."""
    swings_away: bool = False
    """Whether it swings aside for a transfer and comes back to the same place."""
    setup_s: Annotated[float, Plausible(0.0, 14400.0)] | None = None
    in_stock: Stock = 1
    price: Cost | None = None
    note: str = ""
    least_bend_m: Annotated[float, Plausible(0.005, 1.0)] | None = None
    """Least radius that a gooseneck may be bent to."""
    take_off_s: Annotated[float, Plausible(0.2, 3600.0)] | None = None
    """Timed: to take it off or swing it aside for a transfer, with one hand."""
    clamp_width_m: Annotated[float, Plausible(0.001, 0.5)] | None = None
    """Along the tube or edge, that its clamp takes."""
    jaw_depth_m: Annotated[float, Plausible(0.001, 0.5)] | None = None
    """In from the edge, that its jaw reaches under a table or tray."""
    head_m: Annotated[float, Plausible(0.01, 0.2)] | None = None
    """Of an arm: from the middle of its last ball to the underside of what it carries, plate included."""


class Fastener(Measured):
    """What fixes a base to a plate or a tray, with the figures of its data sheet and the test method they come from."""

    name: str = Field(min_length=1)
    kind: Literal["hook-and-loop", "mushroom-head", "screw", "suction", "anti-slip sheet", "strap"]
    shear_pa: Annotated[float, Plausible(0.0, 1e9)] | None = None
    tension_pa: Annotated[float, Plausible(0.0, 1e9)] | None = None
    peel_n_per_m: Annotated[float, Plausible(0.0, 1e6)] | None = None
    """Force for each metre of width."""
    friction: Annotated[float, Field(ge=0, le=2)] | None = None
    test_method: str = ""
    """ASTM D5169 and D5170, say."""
    openings: Annotated[int, Field(ge=0, le=1000000)] | None = None
    """After how many openings it is half as strong."""
    in_stock: Stock = 1
    price: Cost | None = None
    note: str = ""


class MadeToOrder(Measured):
    """Sticks that somebody makes to measure: what may be asked for, and how long it takes."""

    name: str = Field(min_length=1)
    """Of the kind, as it is to be ordered."""
    start_force_n: Interval
    """Least and most force to leave the centre that can be had."""
    full_force_n: Interval
    """Least and most force at the stop that can be had."""
    travel_m: tuple[Annotated[float, Plausible(0.0005, 0.3)], Annotated[float, Plausible(0.0005, 0.3)]]
    """Least and most travel that can be had."""
    contact_height_m: tuple[Annotated[float, Plausible(0.002, 0.5)], Annotated[float, Plausible(0.002, 0.5)]]
    """Least and most height of the contact point above the pivot that can be had."""
    base_m: tuple[Size, Size, Size] | None = None
    weeks: Annotated[float, Field(ge=0, le=520)] | None = None
    """From the order until it is there."""
    price: Cost | None = None
    plug: str = ""
    note: str = ""


class Kit(Measured):
    """All that is in the van."""

    stick: tuple[Stick, ...] = Field(min_length=1)
    topper: tuple[Topper, ...] = ()
    extension: tuple[Extension, ...] = ()
    switch: tuple[Switch, ...] = ()
    controller: tuple[Controller, ...] = ()
    lead: tuple[Lead, ...] = ()
    mount: tuple[Mount, ...] = ()
    fastener: tuple[Fastener, ...] = ()
    made_to_order: tuple[MadeToOrder, ...] = ()
    tilt_rad: tuple[Annotated[float, Plausible(-1.0, 1.0)], ...] = (0.0,)

    def stick_named(self, name: str) -> tuple[int, int] | None:
        """Place of the stick and of its setting that a name means; -1 for the setting listed with the stick itself.

        Parameters
        ----------
        name : str
            "light stick", or with a setting "light stick (magnet out)".
        """
        for place, stick in enumerate(self.stick):
            if name in (stick.name, stick.full_name):
                return place, -1
            for number, one in enumerate(stick.setting):
                if name == f"{stick.name} ({one.name})":
                    return place, number
        return None

    def on_grip(self, controller: str) -> tuple[Stick, ...]:
        """The sticks that are fixed to a controller's grip."""
        return tuple(one for one in self.stick if one.fixed_to == controller and one.in_stock > 0)

    def full_name(self, name: str) -> str:
        """The one name of a stick as it was set, whichever of its names was used; any other word as it is."""
        found = self.stick_named(name)
        return name if found is None else self.stick[found[0]].as_set(found[1]).full_name

    """Tilts of the base that can be built, besides the stick's own."""
