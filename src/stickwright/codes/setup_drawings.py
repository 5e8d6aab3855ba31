"""What is written on the drawing of a set-up, and the drawing in one sentence."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Label", "SetupDrawings"]

Label = Literal[
    "side_view", "side_view_before_turning", "above", "not_measured", "player_side", "forward", "touch", "forward_arrow", "right",
    "left", "back",
]  # fmt: skip


class SetupDrawings(Topic):
    """Words on the drawing are as short as they can be: it is printed small. `turned` is how far the base is turned from straight
    ahead, or None."""

    @abstractmethod
    def label(self, *, label: Label) -> str:
        """Side view: its title, the same where the base is turned afterwards, a base that nobody measured, the player's side,
        forward, a touch surface. View from above: its title without the sizes of the base, forward with an arrow, right, left,
        back."""

    @abstractmethod
    def above_with_base(self, *, sides_m: tuple[float, ...]) -> str:
        """Title of the view from above: length and width of the base."""

    @abstractmethod
    def scale(self, *, shrink_factor: float, side_only: bool) -> str:
        """How many times smaller than life the drawing is (1: life size); with the view from above also what is only a sign."""

    @abstractmethod
    def travel(self, *, travel_m: float) -> str:
        """How far the contact point moves from the centre."""

    @abstractmethod
    def extension(self, *, extension: Name) -> str:
        """The shaft extension in use."""

    @abstractmethod
    def edge_raised(self, *, edge: Literal["far", "near"], tilt_rad: float) -> str:
        """Which edge of the base is raised, and by how much."""

    @abstractmethod
    def top_slopes(self, *, tilt_rad: float) -> str:
        """How much the top of the base slopes by itself."""

    @abstractmethod
    def crosswise(self) -> str:
        """The base stands across, its front to the left."""

    @abstractmethod
    def base_turned(self, *, turned: Text, before: Literal["crosswise", "side_view", "nothing"]) -> str:
        """How the base is turned: behind `crosswise`, below a side view, with the arrow of the view from above."""

    @abstractmethod
    def notes(self, *, notes: tuple[Text, ...]) -> str:
        """What is written below the stick: notes in a row."""

    @abstractmethod
    def base(self, *, length_m: float, width_m: float, height_m: float, crosswise: bool) -> str:
        """Clause: sizes of the base, and whether it stands across."""

    @abstractmethod
    def touch_alt(self, *, device: Text, base: Text | None, turned: Text | None, side_only: bool) -> str:
        """A touch surface's drawing in one sentence; `base` is None where nobody measured it."""

    @abstractmethod
    def stick_alt(
        self,
        *,
        device: Text,
        base: Text | None,
        tilt_rad: float,
        contact_height_m: float,
        travel_m: float,
        turned: Text | None,
        side_only: bool,
    ) -> str:
        """A stick's drawing in one sentence: its base, how it slopes (plus is towards the player, 0 is level), how high the contact
        point is, and how far it moves."""
