"""What is written in and about the pictures of a mount: on paper, in a workshop's file, on the page that can be turned."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Message, Name, Text, Topic
from stickwright.codes.mount_poses import Along, End

__all__ = ["FreeKind", "MountDrawings", "SceneHead", "Thing"]

FreeKind = Literal[
    "face", "neck", "chest", "chair control", "transfer side", "door", "tubing", "screen", "helper", "other"
]
"""Why a space must stay free."""
Thing = Literal["tube", "edge", "surface", "keep_free", "landmark", "mount", "stick", "cable"]
SceneHead = Literal["what", "name", "right", "forward", "up", "note", "from", "to", "distance"]


class MountDrawings(Topic):
    """Each a label, except where it says sentence."""

    @abstractmethod
    def view(self, *, view: Literal["above", "right"]) -> str:
        """Heading of a view, with which way is forward."""

    @abstractmethod
    def view_of(self, *, device: Name, site: Name, view: Literal["above", "right"]) -> str:
        """The same below a view, with what it shows."""

    @abstractmethod
    def foot(self, *, one_to: Text, tilt_rad: float | None) -> str:
        """Sentences below the views: the scale (1 to so many), what lines mean, and that thin dashes show seat and what moves with it
        tilted by so much (None: the seat is only used level)."""

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
    def clamp(self, *, along: Text | None) -> str:
        """The clamp, and where it sits on its tube or edge."""

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
    def distance(self, *, to: End, distance_m: float) -> str:
        """At a dimension line: to what, how far."""

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
    def tilted(self, *, name: Name, tilt_rad: float) -> str:
        """A space that must stay free, where it is when the seat is tilted."""

    @abstractmethod
    def seat_tilted(self, *, tilt_rad: float) -> str:
        """The seat, drawn in dashes, when it is tilted."""

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
