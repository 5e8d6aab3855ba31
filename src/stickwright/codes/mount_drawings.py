"""What is written in and about the pictures of a mount: on paper, in a workshop's file, on the page that can be turned."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Message, Name, Text, Topic
from stickwright.codes.mount_poses import Along, End

__all__ = ["FreeKind", "MountDrawings", "Picture", "SceneHead", "Thing"]

FreeKind = Literal[
    "face", "neck", "chest", "chair control", "transfer side", "door", "tubing", "screen", "helper", "other"
]
"""Why a space must stay free."""
Thing = Literal["tube", "edge", "surface", "keep_free", "landmark", "mount", "stick", "cable"]
Picture = Literal["above", "right", "device", "place", "overview"]
SceneHead = Literal["what", "name", "right", "forward", "up", "note", "from", "to", "distance"]


class MountDrawings(Topic):
    """Each a label, except where it says sentence."""

    @abstractmethod
    def view(self, *, view: Picture, one_to: int) -> str:
        """Heading of a view: from where it is seen, which way is forward, the scale (1 to so many). 'device': the device alone, square
        on from its own right; 'place': player and seat from the right; 'overview': from the front right and above."""

    @abstractmethod
    def part(self, *, name: Text, setting: Text) -> str:
        """A row of the list of parts in one column: what it is, how it is set."""

    @abstractmethod
    def list_head(self, *, column: Literal["part", "setting"]) -> str:
        """Heading of a column of the list of parts."""

    @abstractmethod
    def clock(self) -> str:
        """Heading of a clock face that shows which way the links of an arm point from above."""

    @abstractmethod
    def link(self, *, number: int, of: int) -> str:
        """A link of an arm, counted from the clamp, and of how many."""

    @abstractmethod
    def long(self, *, length_m: float) -> str:
        """Note: how long a link is, between the middles of its joints."""

    @abstractmethod
    def long_and_set(self, *, length_m: float, setting: Text) -> str:
        """Note: how long a link is, and how it is set."""

    @abstractmethod
    def noon(self) -> str:
        """Below that heading: what 12 is."""

    @abstractmethod
    def neck(self) -> str:
        """A gooseneck."""

    @abstractmethod
    def neck_length(self, *, length_m: float) -> str:
        """Note: how long a gooseneck is along its curve."""

    @abstractmethod
    def band(self) -> str:
        """Note: by what line the drawing shows it, a thick one of dashes and dots."""

    @abstractmethod
    def front(self) -> str:
        """Note at the player's forward: what the arrow on the device is."""

    @abstractmethod
    def measure_from(self) -> str:
        """Note at a landmark: distances start there."""

    @abstractmethod
    def at_tilt(self, *, tilt_rad: float) -> str:
        """Note: a thing is drawn where it is when the seat is tilted by so much."""

    @abstractmethod
    def sign(self) -> str:
        """Note: it was not measured and is schematic."""

    @abstractmethod
    def view_of(self, *, device: Name, site: Name, view: Literal["above", "right"]) -> str:
        """The same below a view, with what it shows."""

    @abstractmethod
    def foot(self, *, one_to: Text, tilt_rad: float | None) -> str:
        """Sentences below the views: the scale of the views from above and from the right (1 to so many), the unit, how to print, what
        lines mean, what is only a sign, and that the seat and what moves with it are drawn tilted by so much too (None: the seat is
        only used level)."""

    @abstractmethod
    def alt(
        self, *, device: Name, site: Name, mount: Name | None, on: Name | None, along: Text | None, distances: tuple[Message, ...],
        free: tuple[Name, ...],
    ) -> str:  # fmt: skip
        """The drawing in sentences, for those who do not see it: what holds the device (None: nothing yet), where the clamp sits, the
        distances, what must stay free."""

    @abstractmethod
    def forward(self) -> str:
        """At the arrow that shows the player's forward."""

    @abstractmethod
    def clamp_range(self) -> str:
        """A stretch of the tube on which the clamp may sit."""

    @abstractmethod
    def cable(self) -> str:
        """The cable."""

    @abstractmethod
    def cable_to_foot(self, *, length_m: float | None) -> str:
        """Note: its length from the device to the foot of what holds it; None where nobody worked it out."""

    @abstractmethod
    def distance_along(self, *, to: End, distance_m: float, along: Along) -> str:
        """The same with its direction."""

    @abstractmethod
    def measured(self, *, to: End | Literal["along"]) -> str:
        """At a dimension that a drawing program measures: to what, or along the tube; its figure stands where <> is."""

    @abstractmethod
    def keep_free(self, *, name: Name, kind: FreeKind) -> str:
        """A space that must stay free, by its name, with what for where the name does not tell."""

    @abstractmethod
    def with_note(self, *, name: Text, note: Text) -> str:
        """A thing and a note on it."""

    @abstractmethod
    def mattress(self) -> str:
        """The mattress."""

    @abstractmethod
    def seat(self) -> str:
        """The seat."""

    @abstractmethod
    def backrest(self) -> str:
        """The back of the seat."""

    @abstractmethod
    def no_clamp(self) -> str:
        """Note: nothing may be clamped to it."""

    @abstractmethod
    def thick(self, *, thick_m: float) -> str:
        """Note: how thick a tube or edge is."""

    @abstractmethod
    def floor(self) -> str:
        """Note: a surface is the floor."""

    @abstractmethod
    def fastened(self) -> str:
        """Note: a surface is bolted or clamped."""

    @abstractmethod
    def clamp_of(self, *, mount: Name) -> str:
        """The clamp of an arm."""

    @abstractmethod
    def base_unmeasured(self) -> str:
        """Note: the size of the base was not measured."""

    @abstractmethod
    def under_base(self, *, fastener: Name | None) -> str:
        """The fastener under the base; None: one without a name."""

    @abstractmethod
    def contact(self) -> str:
        """The contact point."""

    @abstractmethod
    def kind(self, *, kind: Thing) -> str:
        """What a thing is, in a table."""

    @abstractmethod
    def span(self, *, low_m: float, high_m: float) -> str:
        """From where to where a thing lies along an axis, in whole millimetres without their unit."""

    @abstractmethod
    def head(self, *, head: SceneHead) -> str:
        """Heading of a column."""

    @abstractmethod
    def show(self) -> str:
        """Before a choice of mounts."""

    @abstractmethod
    def caution_mark(self) -> str:
        """Before a caution."""

    @abstractmethod
    def joints(self) -> str:
        """Heading of how the joints are set."""

    @abstractmethod
    def fixed_points(self, *, site: Name) -> str:
        """Heading of the distances from fixed points."""

    @abstractmethod
    def strength(self) -> str:
        """Heading of what a mount must hold."""

    @abstractmethod
    def others(self) -> str:
        """Heading of other ways of mounting, and of those that fail."""

    @abstractmethod
    def positions(self, *, device: Name, site: Name) -> str:
        """Heading of where everything is about a device."""

    @abstractmethod
    def scene_foot(self, *, mark: Text, version: Name, made_on: Name) -> str:
        """Sentences at the foot: a mark of a what-if plan in a sentence (or empty), program and day (YYYY-MM-DD), that it is no
        medical device."""
